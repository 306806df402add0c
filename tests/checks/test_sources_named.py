"""What tests/README.md says of tests/outside: each check there names what it is held against."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from steps import ROOT

#: A standard with its number, an author with the year, a general-purpose package that judges, or
#: where the check comes from when nothing is published.
SOURCE = re.compile(
    r"\b(?:CIE|ISO|IEC|ANSI|IES|SMPTE|EBU|ASTM|NIST|FIPS|RFC|JCGM|ITU-R|EN|SI)\b[ /\w.-]{0,12}\d"
    r"|\b[A-Z]\w+(?: and [A-Z]\w+| et al\.)? \(\d{4}\)"
    r"|\b(?:colour|luxpy|cxf3|scipy|SciPy|linprog|nnls|minimize|astral|jsonschema|rfc8785)\b"
    r"|\b[Cc]ommon practice, no source|\b[Ff]rom memory|\b[Bb]rute force|\b[Bb]y definition"
)
OUTSIDE = sorted((ROOT / "tests" / "outside").glob("test_*.py"))


def checks(file: Path) -> Iterator[tuple[str, str]]:
    """The name and the text of each test of a file, with the comment that stands above it."""
    text = file.read_text(encoding="utf-8")
    lines = text.splitlines()
    for node in ast.parse(text).body:
        if isinstance(node, ast.FunctionDef) and node.name.startswith("test_"):
            start = min([node.lineno, *(one.lineno for one in node.decorator_list)]) - 1
            while start and lines[start - 1].startswith("#"):
                start -= 1
            yield node.name, "\n".join(lines[start : node.end_lineno])


@pytest.mark.parametrize("file", OUTSIDE, ids=lambda file: file.stem)
def test_each_check_names_its_source(file: Path) -> None:
    assert [name for name, text in checks(file) if not SOURCE.search(text)] == []


def test_facts_of_the_trade_stand_nowhere_else() -> None:
    """What a handbook reading is said to show belongs among the checks, marked; not in examples."""
    fact = re.compile(r"\b0?[.,]4349\b")
    places = ["README.md", "DEVELOPERS.md", "kernel", "demo_readings", "tests", "webapp"]
    kinds = {".py", ".js", ".mjs", ".md", ".json", ".html", ".txt"}
    left_out = {"node_modules", "outside", "data", "dist"}
    found = [
        path.relative_to(ROOT).as_posix()
        for place in places
        for path in [ROOT / place, *(ROOT / place).rglob("*")]
        if path.suffix in kinds
        and not left_out & set(path.parts)
        and path != Path(__file__)
        and path.is_file()
        and fact.search(path.read_text(encoding="utf-8", errors="replace"))
    ]
    assert found == []
