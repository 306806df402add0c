"""The licences of everything that dist/ carries, in one text."""

from __future__ import annotations

import json
import re
import zipfile
from email import message_from_string
from pathlib import Path
from typing import Any

from steps import ROOT, VENV, WEBAPP, BuildError

LICENCE_FILE = re.compile(r"(LICEN[CS]E|COPYING|NOTICE)[^/]*", re.IGNORECASE)


#: Texts that come with no package: what is compiled into Pyodide, and the data. First line: title.
TEXTS = WEBAPP / "licences"

#: Needed by what is bundled, but never in the bundle: types, and what lit needs on a server. The
#: reader's data come without a text of their own: it is among TEXTS.
NOT_BUNDLED = {
    "node_modules/@types/trusted-types",
    "node_modules/@lit-labs/ssr-dom-shim",
    "node_modules/@tesseract.js-data/eng",
}


def all_licences(wheels: list[Path], python_version: str) -> str:
    """What each part is called, under which licence it comes, and that licence's text."""
    parts = [
        ("Evenkelvin, MIT", (ROOT / "LICENSE").read_text()),
        (f"Python {python_version}, PSF-2.0", python_licence()),
        *(npm_part(WEBAPP / folder) for folder in bundled()),
        *(wheel_part(wheel) for wheel in wheels),
        *(kept_text(file) for file in sorted(TEXTS.glob("*.txt"))),
    ]
    for title, text in parts:
        if len(text) < 400:  # the shortest licence is twice as long
            raise BuildError(f"The licence of {title} is missing: put its text into {TEXTS}.")
    return "\n\n".join(f"=== {title} ===\n\n{text}".rstrip() for title, text in parts)


def bundled() -> list[str]:
    """The folders of the npm packages that the app is bundled from, those they need included."""
    packages = json.loads((WEBAPP / "package-lock.json").read_text())["packages"]
    needed = {name for name, about in packages.items() if name and not about.get("dev")}
    return sorted(needed - NOT_BUNDLED)


def kept_text(file: Path) -> tuple[str, str]:
    title, _, text = file.read_text(encoding="utf-8").partition("\n\n")
    return title, text


def python_licence() -> str:
    """Python's own licence, which comes word for word with a package cut out of its library."""
    found = sorted(VENV.glob("**/typing_extensions-*.dist-info/licenses/LICENSE"))
    if not found:
        raise BuildError("Python's licence is missing in .venv: delete .venv and run again.")
    return found[-1].read_text()


def npm_part(folder: Path) -> tuple[str, str]:
    about: dict[str, Any] = json.loads((folder / "package.json").read_text())
    texts = [p.read_text() for p in sorted(folder.iterdir()) if LICENCE_FILE.fullmatch(p.name)]
    return f"{about['name']} {about['version']}, {about['license']}", "\n".join(texts)


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
