"""What every step of the build uses: where things are, saying, running, hashing, caching."""

from __future__ import annotations

import hashlib
import os
import re
import shutil
import subprocess
import tempfile
import tomllib
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
WEBAPP = ROOT / "webapp"
TOOLS = WEBAPP / "tools"
DIST = ROOT / "dist"
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
PYODIDE = WEBAPP / "node_modules" / "pyodide"
#: What building needs, and what testing needs besides.
BUILD_LOCK, TEST_LOCK = ROOT / ".ci" / "build.txt", ROOT / ".ci" / "test.txt"
VENV_PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


class BuildError(Exception):
    """What went wrong and what to do, in a sentence for the person at the terminal."""


def say(words: str) -> None:
    print(f"· {words}", flush=True)


def run(
    command: Iterable[str | Path], *, cwd: Path = ROOT, env: dict[str, str] | None = None
) -> None:
    """Run a program; a failure ends the build with the program's own words."""
    words = [str(word) for word in command]
    done = subprocess.run(words, cwd=cwd, env={**os.environ, **(env or {})}, check=False)
    if done.returncode:
        raise BuildError(f"`{' '.join(words[:4])} …` failed; its message is above.")


def in_pyodide(script: Path, *arguments: str, options: Iterable[str | Path] = ()) -> None:
    """Run a Python script inside Pyodide under Node."""
    tool = TOOLS / "in_pyodide.mjs"
    run(["node", tool, *options, script, *arguments], cwd=WEBAPP)


def sha256(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


def key_of(*parts: object) -> str:
    """A short key for cached work, from everything that it depends on."""
    return sha256("\0".join(str(part) for part in parts).encode())[:20]


def tree_hash(folder: Path) -> str:
    """One hash for the names and bytes of all files below a folder."""
    found = hashlib.sha256()
    for path in files_below(folder):
        found.update(
            f"{path.relative_to(folder).as_posix()}\0{sha256(path.read_bytes())}\n".encode()
        )
    return found.hexdigest()


def files_below(folder: Path) -> list[Path]:
    return sorted(p for p in folder.rglob("*") if p.is_file() and "__pycache__" not in p.parts)


@contextmanager
def scratch() -> Iterator[Path]:
    """A temporary folder inside the cache, on the same disk as what it will be renamed to."""
    CACHE.mkdir(exist_ok=True)
    folder = Path(tempfile.mkdtemp(prefix="work-", dir=CACHE))
    try:
        yield folder
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def cached(name: str, make: Callable[[Path], None]) -> Path:
    """The cached file `name`, made first if it is missing; safe when several builds run at once."""
    target = CACHE / name
    if not target.exists():
        with scratch() as folder:
            make(folder / "made")
            target.parent.mkdir(parents=True, exist_ok=True)
            os.replace(folder / "made", target)
    return target


def locked(name: str) -> tuple[str, str]:
    """The version of a package in the build's lock, and the lines there with its files' hashes."""
    found = re.search(
        rf"^{re.escape(name)}==(\S+).*\n(?:    --hash=.*\n?)+", BUILD_LOCK.read_text(), re.MULTILINE
    )
    if not found:
        raise BuildError(f"{name} is not in {BUILD_LOCK.relative_to(ROOT)}: see DEVELOPERS.md.")
    return found[1], found[0]


def project() -> dict[str, Any]:
    return tomllib.loads((ROOT / "pyproject.toml").read_text())
