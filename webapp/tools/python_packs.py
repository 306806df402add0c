"""Packs: Python's library, packages and the kernel as bytecode, machine code apart.

What a browser's worker cannot use is left out, the rest is compiled, and put into two packs: one
that seldom changes, one of the kernel alone. Machine code comes in packs of its own.
"""

from __future__ import annotations

import json
import os
import shutil
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

from steps import (
    PYODIDE,
    TOOLS,
    VENV_PYTHON,
    cached,
    files_below,
    in_pyodide,
    key_of,
    run,
    say,
    scratch,
    sha256,
)
from strip_lists import (
    ADDED,
    EMPTIED,
    KEPT_ENCODINGS,
    LATER,
    REPLACED,
    STRIPPED_LIBRARY,
    STRIPPED_PACKAGES,
    stripped_from_library,
)
from wheels import KERNEL_NEEDS, verified_wheel

#: Where the browser's Python keeps its library and packages.
LIBRARY_HOME = "/lib/python3.12"
PACKAGES_HOME = f"{LIBRARY_HOME}/site-packages"


def unpack(archive: Path, folder: Path, stripped: Callable[[str], Any]) -> None:
    with zipfile.ZipFile(archive) as opened:
        wanted = [n for n in opened.namelist() if not n.endswith("/") and not stripped(n)]
        opened.extractall(folder, wanted)


def compiler() -> str:
    """What packs of bytecode depend on besides its source."""
    tools = ("bytecode.py", "in_pyodide.mjs", "compress.py")
    return "".join((TOOLS / name).read_text() for name in tools)


def compile_tree(folder: Path, home: str) -> None:
    """Turn every .py below a folder into bytecode of the browser's Python."""
    options = ["--mount", f"{folder}=/tree"]
    in_pyodide(TOOLS / "bytecode.py", "/tree", home, options=options)


def compress(target: Path, plain: bytes) -> None:
    """Write a pack; webapp/src/kernel/python-packs.js tells its form and reads it."""
    with scratch() as folder:
        (folder / "plain").write_bytes(plain)
        run([VENV_PYTHON, TOOLS / "compress.py", folder / "plain", target])


def write_pack(target: Path, trees: dict[str, Path]) -> None:
    """Write the files of some folders, each with its home in the browser, as one pack."""
    listed, bodies = [], []
    for home, folder in trees.items():
        for path in files_below(folder):
            body = path.read_bytes()
            listed.append([f"{home}/{path.relative_to(folder).as_posix()}", len(body)])
            bodies.append(body)
    head = json.dumps(listed, separators=(",", ":")).encode()
    compress(target, len(head).to_bytes(4, "big") + head + b"".join(bodies))


def take_out_machine_code(packages: Path, target: Path) -> None:
    """Put each extension module into a pack of its own, and leave an empty file for it.

    Python only looks whether the file is there; the browser compiles the code while Python starts.
    """
    for path in packages.rglob("*.so"):
        module = ".".join(path.relative_to(packages).parts).partition(".cpython-")[0]
        compress(target / f"{module}.wasm.pack", path.read_bytes())
        path.write_bytes(b"")


def put_off(module: Path, constants: str) -> None:
    """Let a module be read when it is first used, not when it is imported."""
    os.replace(module, module.with_stem(f"{module.stem}_later"))
    module.write_text(constants + (TOOLS / "browser_later.py").read_text())


def library_packs(wheels: Path, lock: dict[str, Any]) -> Path:
    """A folder with Python's library and the packages the kernel needs, as bytecode, and with the
    packages' machine code."""
    packages = [lock["packages"][name] for name in sorted(KERNEL_NEEDS)]
    library = PYODIDE / "python_stdlib.zip"
    key = key_of(
        sha256(library.read_bytes()),
        *(package["sha256"] for package in packages),
        STRIPPED_LIBRARY,
        KEPT_ENCODINGS.pattern,
        STRIPPED_PACKAGES.pattern,
        EMPTIED,
        *REPLACED,
        *ADDED,
        LATER,
        (TOOLS / "browser_later.py").read_text(),
        *((TOOLS / name).read_text() for name in [*REPLACED.values(), *ADDED.values()]),
        compiler(),
    )

    def make(target: Path) -> None:
        say("Compiling Python's library and packages for the browser (once)")
        with scratch() as folder:
            unpack(library, folder / "library", stripped_from_library)
            for package in packages:
                wheel = verified_wheel(wheels, package)
                unpack(wheel, folder / "packages", STRIPPED_PACKAGES.fullmatch)
            for emptied in EMPTIED:
                (folder / "packages" / emptied).write_text("")
            for name, ours in REPLACED.items():
                shutil.copyfile(TOOLS / ours, folder / name)
            for name, ours in ADDED.items():
                with (folder / name).open("a") as module:
                    module.write((TOOLS / ours).read_text())
            for name, constants in LATER.items():
                put_off(folder / "library" / name, constants)
            compile_tree(folder / "library", LIBRARY_HOME)
            compile_tree(folder / "packages", PACKAGES_HOME)
            target.mkdir()
            take_out_machine_code(folder / "packages", target)
            trees = {LIBRARY_HOME: folder / "library", PACKAGES_HOME: folder / "packages"}
            write_pack(target / "library.pack", trees)

    return cached(f"packs/library-{key}", make)


def kernel_pack(wheel: Path) -> Path:
    key = key_of(sha256(wheel.read_bytes()), STRIPPED_PACKAGES.pattern, compiler())

    def make(target: Path) -> None:
        say("Compiling the kernel for the browser")
        with scratch() as folder:
            unpack(wheel, folder / "kernel", STRIPPED_PACKAGES.fullmatch)
            compile_tree(folder / "kernel", PACKAGES_HOME)
            write_pack(target, {PACKAGES_HOME: folder / "kernel"})

    return cached(f"packs/kernel-{key}.pack", make)
