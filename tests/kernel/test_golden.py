"""The same questions get the same answers everywhere.

`golden/` holds a file of questions, and the answers the kernel gave, for each ask. This test runs
natively on the current numpy, natively on the newest and on the release that Pyodide carries, and
inside Pyodide on the files that the browser gets (`build.py test` does all), so that a number on
the phone is the number in the notebook. Whether the numbers are right is for the other tests.

After a deliberate change of answers, or for a new ask (write a file of `{"request": …}` lines in a
JSON list first):  python tests/kernel/test_golden.py ASK
"""

from __future__ import annotations

import json
import math
import sys
from pathlib import Path
from typing import Any

import pytest

from evenkelvin import desk

FOLDER = Path(__file__).with_name("golden")


def read(file: Path) -> list[dict[str, Any]]:
    cases: list[dict[str, Any]] = json.loads(file.read_text(encoding="utf-8"))
    return cases


CASES = [
    (f"{file.stem} {index}", case)
    for file in sorted(FOLDER.glob("*.json"))
    for index, case in enumerate(read(file))
]

#: Sums are taken in another order by another processor, hence not the last bits.
RELATIVE = 1e-9
#: For what is zero but for rounding, such as a Duv on the locus.
ABSOLUTE = 1e-11


def differences(expected: Any, got: Any, where: str = "answer") -> list[str]:
    """Say every place where two answers differ beyond rounding."""
    if isinstance(expected, dict) and isinstance(got, dict):
        found = [f"{where}.{key} is in only one" for key in sorted(expected.keys() ^ got.keys())]
        for key in expected.keys() & got.keys():
            found += differences(expected[key], got[key], f"{where}.{key}")
        return found
    if isinstance(expected, list) and isinstance(got, list):
        found = [] if len(expected) == len(got) else [f"{where} has another length"]
        for index, pair in enumerate(zip(expected, got, strict=False)):
            found += differences(*pair, f"{where}[{index}]")
        return found
    plain = (bool, str, type(None))
    if isinstance(expected, plain) or isinstance(got, plain):
        return [] if expected == got else [f"{where}: {expected!r} became {got!r}"]
    if math.isclose(expected, got, rel_tol=RELATIVE, abs_tol=ABSOLUTE):
        return []
    return [f"{where}: {expected!r} became {got!r}"]


@pytest.mark.parametrize("case", [case for _, case in CASES], ids=[name for name, _ in CASES])
def test_answer_is_the_same_everywhere(case: dict[str, Any]) -> None:
    got = json.loads(desk.answer_json(json.dumps(case["request"])))
    assert differences(case["answer"], got) == []


def test_every_question_of_the_desk_has_golden_cases() -> None:
    assert set(desk.ASKS) <= {file.stem for file in FOLDER.glob("*.json")}
    assert all(name.split()[0] == case["request"].get("ask") for name, case in CASES)


def test_a_difference_beyond_rounding_is_seen() -> None:
    assert differences({"x": [0.3]}, {"x": [0.3001]}) == ["answer.x[0]: 0.3 became 0.3001"]
    assert differences({"x": [0.3]}, {"x": [0.3 * (1 + 1e-8)]}) != []
    assert differences({"x": [0.3]}, {"y": [0.3]}) != []
    assert differences({"x": [0.3]}, {"x": [0.3 * (1 + 1e-12)]}) == []


def write(file: Path) -> None:
    """Ask a file's questions again and keep the answers."""
    cases = read(file)
    for case in cases:
        case["answer"] = json.loads(desk.answer_json(json.dumps(case["request"])))
    lines = ",\n".join(json.dumps(case, ensure_ascii=False) for case in cases)
    file.write_text(f"[\n{lines}\n]\n", encoding="utf-8")


if __name__ == "__main__":
    for ask in sys.argv[1:]:
        write(FOLDER / f"{ask}.json")
