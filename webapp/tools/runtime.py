"""The Python that the browser gets, whole: Pyodide without what nothing calls, and the packs."""

from __future__ import annotations

import json
import shutil
import zipfile
from pathlib import Path
from typing import Any

from licences import all_licences
from python_packs import compress, kernel_pack, library_packs
from slim_runtime import asked_of_script, edited, with_wanted_exports
from steps import PYODIDE, TOOLS, WEBAPP, cached, key_of, run, say, sha256
from wheels import (
    KERNEL_NEEDS,
    ensure_wheels,
    frozen_lock,
    kernel_wheel,
    pyodide_lock,
    verified_wheel,
)


def slim_runtime(wheels: Path, lock: dict[str, Any]) -> Path:
    """A folder with Pyodide's machine code, compressed, and its script, minified."""
    code, script = PYODIDE / "pyodide.asm.wasm", PYODIDE / "pyodide.asm.js"
    callers = [PYODIDE / "pyodide.mjs", *(WEBAPP / "src" / "kernel").glob("*.js")]
    packages = [verified_wheel(wheels, lock["packages"][name]) for name in sorted(KERNEL_NEEDS)]
    key = key_of(
        *(sha256(path.read_bytes()) for path in (code, script, *callers, *packages)),
        *((TOOLS / name).read_text() for name in ("slim_runtime.py", "unused_script.mjs")),
    )

    def make(target: Path) -> None:
        say("Leaving out of Pyodide what nothing calls (once)")
        extensions = []
        for package in packages:
            with zipfile.ZipFile(package) as wheel:
                # Also those that are left out of the pack: the kernel's tests use numpy.random.
                names = [n for n in wheel.namelist() if n.endswith(".so")]
                extensions += [wheel.read(name) for name in names]
        target.mkdir()
        whole, used = target / "whole.js", target / "used.js"
        asked = target / "asked.json"
        whole.write_text(edited(script.read_text()))
        asked.write_text(json.dumps(sorted(asked_of_script([code.read_bytes(), *extensions]))))
        run(["node", TOOLS / "unused_script.mjs", whole, used, asked, *callers], cwd=WEBAPP)
        slim_code, slim_script = with_wanted_exports(
            code.read_bytes(), used.read_text(), [c.read_text() for c in callers], extensions
        )
        compress(target / "runtime.wasm.pack", slim_code)
        used.write_text(slim_script)
        esbuild = ["npx", "--no-install", "esbuild", "--minify", "--log-level=warning"]
        run([*esbuild, used, f"--outfile={target / 'pyodide.asm.js'}"], cwd=WEBAPP)
        for path in (whole, used, asked):
            path.unlink()

    return cached(f"runtime-{key}", make)


def put_runtime(target: Path, wheels_folder: Path | None) -> None:
    """Pyodide and the packs."""
    wheels = ensure_wheels(["numpy", "micropip", "packaging"], wheels_folder)
    wheel = kernel_wheel()
    lock = frozen_lock(wheels, wheel)
    shutil.copytree(slim_runtime(wheels, lock), target, dirs_exist_ok=True)
    shutil.copytree(library_packs(wheels, lock), target, dirs_exist_ok=True)
    shutil.copyfile(kernel_pack(wheel), target / "kernel.pack")
    (target / "pyodide-lock.json").write_text(json.dumps(lock))
    # Pyodide insists on an archive for its library, which lies in library.pack.
    with zipfile.ZipFile(target / "python_stdlib.zip", "w"):
        pass
    shipped = [verified_wheel(wheels, lock["packages"][name]) for name in sorted(KERNEL_NEEDS)]
    python_version = pyodide_lock()["info"]["python"]
    (target / "licences.txt").write_text(all_licences(shipped, python_version))
