"""The imports of the kernel run one way, as DEVELOPERS.md draws them.

The drawing is the block fenced as ``layers``: a package or module imports only what stands on a
line below its own. No source: it is our own promise, checked against the files as they are.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
KERNEL = ROOT / "kernel" / "evenkelvin"


def drawing() -> dict[str, int]:
    """Each package or module of the kernel, and the line it stands on, the lowest being 0."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
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


def test_no_two_modules_need_each_other() -> None:
    arrows = {name: set(imports(file)) for name, file in modules().items()}
    while free := [name for name, to in arrows.items() if not to & arrows.keys()]:
        for name in free:
            del arrows[name]
    assert not arrows, f"These import each other in a circle: {', '.join(arrows)}"
