"""The app carries the text of the licence of everything that it is made of."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from licences import bundled
from steps import ROOT

#: What the licence of each part says; a name and an address would not do.
WORDS = {
    "Evenkelvin, MIT": "Permission is hereby granted, free of charge",
    "Python 3": "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2",
    "Software that Python incorporates": "Mersenne Twister",
    "Pyodide ": "Mozilla Public License Version 2.0",
    "numpy ": "Redistributions of source code must retain",
    "astral ": "Licensed under the Apache License|Apache License",
    "Emscripten": "Permission is hereby granted, free of charge",
    "musl": "Permission is hereby granted, free of charge",
    "LLVM": "embedded into an Object form",
    "zlib": "This software is provided 'as-is'",
    "bzip2": "Redistribution and use in source and binary forms",
    "Expat": "Permission is hereby granted, free of charge",
    "libffi": "Permission is hereby granted, free of charge",
    "libmpdec": "Redistribution and use in source and binary forms",
    "error-stack-parser": "Permission is hereby granted, free of charge",
    "colour-science": "Redistribution and use in source and binary forms",
    "The reader's data": "Apache License",
    "Leptonica": "Redistribution and use in source and binary forms",
    "libtiff": "Permission to use, copy, modify",
    "libpng": 'Permission is hereby granted|provided "AS IS"|without warranty of any kind',
    "The Independent JPEG Group": "based in part on the work of the Independent JPEG Group",
    "Data of the CIE": "Attribution-ShareAlike 4.0 International Public License",
}
#: How the licences of npm packages begin to grant.
NPM = (
    r"Apache License|Permission is hereby granted|Redistribution and use|"
    r"Permission to use, copy, modify"
)


@pytest.fixture(scope="module")
def parts(dist: Path) -> dict[str, str]:
    text = (dist / "pyodide" / "licences.txt").read_text(encoding="utf-8")
    titles_and_texts = re.split(r"^=== (.*) ===$", text, flags=re.MULTILINE)[1:]
    return dict(zip(titles_and_texts[::2], titles_and_texts[1::2], strict=True))


@pytest.mark.parametrize("title", WORDS)
def test_the_text_of_a_licence_is_there(parts: dict[str, str], title: str) -> None:
    found = [text for name, text in parts.items() if name.startswith(title)]
    assert len(found) == 1
    assert re.search(WORDS[title], re.sub(r"\s+", " ", found[0]))


def test_every_npm_package_of_the_bundle_brings_its_licence(parts: dict[str, str]) -> None:
    assert len(bundled()) >= 5
    for folder in bundled():
        name = folder.removeprefix("node_modules/")
        (text,) = (t for title, t in parts.items() if title.startswith(f"{name} "))
        assert re.search(NPM, text), name


def test_pyodides_source_is_named(parts: dict[str, str]) -> None:
    (text,) = (text for title, text in parts.items() if title.startswith("Pyodide "))
    assert "github.com/pyodide/pyodide, tag 0.27.8" in text


def test_the_readme_names_the_licence_of_the_project() -> None:
    assert re.search(r"MIT\b.*\bLICENSE\b", (ROOT / "README.md").read_text())
