"""The imports of the kernel and of the app run one way, as DEVELOPERS.md and webapp/README.md draw.

The drawings are the blocks fenced as ``layers``: a package, a folder or a module imports only what
stands on a line below its own. No source: it is our own promise, checked against the files as they
are.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
KERNEL = ROOT / "kernel" / "evenkelvin"
APP = ROOT / "webapp" / "src"


@cache
def drawing(page: str = "DEVELOPERS.md") -> dict[str, int]:
    """Each package or module that a page draws, and the line it stands on, the lowest being 0."""
    text = (ROOT / page).read_text(encoding="utf-8")
    (block,) = [part.partition("\n```")[0] for part in text.split("```layers\n")[1:]]
    lines = [line.split() for line in reversed(block.splitlines())]
    return {name: height for height, names in enumerate(lines) for name in names}


def part_of(name: str) -> str:
    """The package or module right below ``evenkelvin`` that a dotted name belongs to."""
    return (name.split(".") + ["evenkelvin"])[1]


def imports(file: Path) -> Iterator[str]:
    """Every module of the kernel that a file imports, wherever in the file."""
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (each.name for each in node.names if each.name.startswith("evenkelvin"))
        elif isinstance(node, ast.ImportFrom):
            module = node.module or ""
            assert node.level == 0, f"{file.name} imports relatively: name the module in full"
            if module == "evenkelvin":
                yield from (
                    f"evenkelvin.{each.name}"
                    for each in node.names
                    if not each.name.startswith("__")
                )
            elif module.startswith("evenkelvin."):
                for each in node.names:
                    below = KERNEL.joinpath(*module.split(".")[1:], f"{each.name}.py")
                    yield f"{module}.{each.name}" if below.exists() else module


def modules() -> dict[str, Path]:
    """Every module of the kernel by its dotted name; a package by its own."""
    return {
        ".".join(file.relative_to(KERNEL.parent).with_suffix("").parts).removesuffix(
            ".__init__"
        ): file
        for file in sorted(KERNEL.rglob("*.py"))
    }


def test_the_drawing_names_everything_there_is() -> None:
    there = {part_of(name) for name in modules()} - {"evenkelvin"}
    assert set(drawing()) == there


@pytest.mark.parametrize("name", modules())
def test_no_arrow_runs_back_up(name: str) -> None:
    height = drawing()
    own = part_of(name)
    for other in imports(modules()[name]):
        to = part_of(other)
        if to == own:
            assert own != "asks", f"{name} takes {other}: no ask is a library of another"
        else:
            assert height[to] < height[own], (
                f"{name} takes {other}, which stands above or beside it"
            )


def circle(arrows: dict[str, set[str]]) -> list[str]:
    """The modules that need each other, and those that need them; none is as it should be."""
    left = dict(arrows)
    while free := [name for name, to in left.items() if not to & left.keys()]:
        for name in free:
            del left[name]
    return sorted(left)


def test_no_two_modules_need_each_other() -> None:
    assert not circle({name: set(imports(file)) for name, file in modules().items()})


# ------------------------------------------------------------------------------------- the app

#: An import or export as our formatter writes it, or one that is read later; types in comments,
#: which no browser follows, are none.
IMPORT = re.compile(
    r"""^(?:import|export)\b[^;"]*?"(\.[^"]+)";|^[^/*\n]*?\bimport\("(\.[^"]+)"\)""", re.MULTILINE
)


@cache
def scripts() -> dict[str, set[str]]:
    """Every script of the app by its path, and those it imports."""
    found = {}
    for file in sorted(APP.rglob("*.js")):
        text = file.read_text(encoding="utf-8")
        addresses = (once or later for once, later in IMPORT.findall(text))
        there = {(file.parent / address).resolve().relative_to(APP) for address in addresses}
        found[file.relative_to(APP).as_posix()] = {path.as_posix() for path in there}
    return found


def layer_of(path: str) -> str:
    """The folder or file right below ``src`` that a script belongs to."""
    return path.partition("/")[0].removesuffix(".js")


def test_the_scripts_are_read_as_they_stand() -> None:
    found = scripts()
    assert "shell/others.js" in found["shell/views.js"]  # read later
    assert "places/set/balance.js" in found["shell/others.js"]  # for its own sake
    assert "store/log/entries.js" in found["store/log/book.js"]
    assert {path for to in found.values() for path in to} <= set(found)


def test_the_drawing_names_every_part_of_the_app() -> None:
    assert set(drawing("webapp/README.md")) == {layer_of(path) for path in scripts()}


@pytest.mark.parametrize("path", scripts())
def test_no_arrow_of_the_app_runs_back_up(path: str) -> None:
    height = drawing("webapp/README.md")
    for to in scripts()[path]:
        own, other = layer_of(path), layer_of(to)
        if own != other:
            assert height[other] < height[own], (
                f"{path} takes {to}, which stands above or beside it"
            )
        elif own == "places":
            assert path.split("/")[1] == to.split("/")[1], (
                f"{path} takes {to}: what two places share stands in parts"
            )


def test_no_two_scripts_need_each_other() -> None:
    assert not circle(scripts())
