"""The licences of everything that dist/ carries, in one text."""

from __future__ import annotations

import json
import re
import zipfile
from email import message_from_string
from pathlib import Path
from typing import Any

from steps import PYODIDE, ROOT, VENV, WEBAPP, BuildError

LICENCE_FILE = re.compile(r"(LICEN[CS]E|COPYING|NOTICE)[^/]*", re.IGNORECASE)


def all_licences(wheels: list[Path], python_version: str) -> str:
    """What each part is called, under which licence it comes, and that licence where it came."""
    modules = WEBAPP / "node_modules"
    needs = json.loads((WEBAPP / "package.json").read_text()).get("dependencies", {})
    parts = [
        ("Evenkelvin, MIT", (ROOT / "LICENSE").read_text()),
        (f"Python {python_version}, PSF-2.0", python_licence()),
        npm_part(PYODIDE),
        *(npm_part(modules / name) for name in sorted(needs)),
        *(wheel_part(wheel) for wheel in wheels),
    ]
    return "\n\n".join(f"=== {title} ===\n\n{text}".rstrip() for title, text in parts)


def python_licence() -> str:
    """Python's own licence, which comes word for word with a package cut out of its library."""
    found = sorted(VENV.glob("**/typing_extensions-*.dist-info/licenses/LICENSE"))
    if not found:
        raise BuildError("Python's licence is missing in .venv: delete .venv and run again.")
    return found[-1].read_text()


def npm_part(folder: Path) -> tuple[str, str]:
    about: dict[str, Any] = json.loads((folder / "package.json").read_text())
    texts = [p.read_text() for p in sorted(folder.iterdir()) if LICENCE_FILE.fullmatch(p.name)]
    home = about.get("homepage", "")
    return f"{about['name']} {about['version']}, {about['license']}", "\n".join([home, *texts])


def wheel_part(wheel: Path) -> tuple[str, str]:
    with zipfile.ZipFile(wheel) as opened:
        names = [name for name in opened.namelist() if ".dist-info/" in name]
        about = message_from_string(
            opened.read(next(n for n in names if n.endswith("/METADATA"))).decode()
        )
        texts = [opened.read(n).decode() for n in names if LICENCE_FILE.fullmatch(Path(n).name)]
    licence = about["License-Expression"] or about["License"] or ""
    if not licence or "\n" in licence:
        licence = "under the licence below"
    return f"{about['Name']} {about['Version']}, {licence}", "\n".join(texts)
