"""Run every measurement of this folder and print one table:  python3 build.py bench

A measurement is a module with `run()`, which gives rows. Each row is a ratio of two things taken
in the same run, because a time alone says more about the machine than about the code.
"""

from __future__ import annotations

import importlib
import sys
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = map(str, [HERE, ROOT / "kernel", ROOT / "tests", ROOT / "webapp/tools"])


def main() -> int:
    rows: list[tuple[str, float | None, str]] = []
    for path in sorted(HERE.glob("bench_*.py")):
        print(f"· measuring {path.stem.removeprefix('bench_')}", flush=True)
        rows += importlib.import_module(path.stem).run()
    width = max(len(name) for name, _, _ in rows)
    print(f"\n{'':{width}}   ratio")
    for name, ratio, detail in rows:
        shown = "     –" if ratio is None else f"{ratio:6.3g}"
        print(f"{name:{width}}  {shown}   {detail}")
    return 0


sys.exit(main())
