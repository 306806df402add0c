"""The kernel's door as types: ``webapp/src/kernel/answers.d.ts`` and ``evenkelvin/asking.pyi``.

The answers are declared once, in ``evenkelvin/replies/answers.py``, the fields of a question in
the ``FIELDS`` of its ask. Run this after a change of either:

    .venv/bin/python webapp/tools/answer_types.py
"""

from __future__ import annotations

import sys
from collections.abc import Mapping
from importlib import import_module
from pathlib import Path
from types import NoneType, UnionType
from typing import (
    Any,
    Literal,
    NotRequired,
    Union,
    get_args,
    get_origin,
    get_type_hints,
    is_typeddict,
)

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "kernel"))

from evenkelvin.shapes import (  # noqa: E402 - the path comes first
    ByName,
    Checked,
    Choice,
    Many,
    Number,
    OneOf,
    Text,
    Truth,
    Whole,
)

FILE = ROOT / "webapp" / "src" / "kernel" / "answers.d.ts"
STUB = ROOT / "kernel" / "evenkelvin" / "asking.pyi"
HEAD = """\
// Made by webapp/tools/answer_types.py from kernel/evenkelvin/replies/answers.py and the FIELDS of
// kernel/evenkelvin/asks: change those.

"""
FOOT = """
export type Ask = keyof Answers;

/** A number as it was typed, or reckoned. */
type Figure = number | string;

/** A question: which it is, and its fields. What is null or undefined counts as not given. */
export type Question<A extends Ask> = { ask: A } & Questions[A];

/** What a question is answered with where it cannot be answered as it stands. */
export type Refused<A extends Ask> = { problem: Problem } & {
  [field in Exclude<keyof Answers[A], "problem">]?: undefined;
};

/** An answer that is no refusal. */
export type Answered<A extends Ask> = Answers[A] & { problem?: undefined };

/** What the kernel sends back. */
export type Reply<A extends Ask> = Answered<A> | Refused<A>;
"""


def in_typescript(hint: Any, found: dict[str, Any]) -> str:
    """Return a type as TypeScript writes it; the groups it names are added to ``found``."""
    if is_typeddict(hint):
        if hint.__name__ not in found:
            found[hint.__name__] = hint
            for inner in get_type_hints(hint, include_extras=True).values():
                in_typescript(inner, found)
        return str(hint.__name__)
    origin, inner = get_origin(hint), get_args(hint)
    if origin is NotRequired:
        return in_typescript(inner[0], found)
    if origin in (Union, UnionType):
        return " | ".join(in_typescript(one, found) for one in inner)
    if origin is Literal:
        return " | ".join(f'"{one}"' for one in inner)
    if origin is list:
        one = in_typescript(inner[0], found)
        return f"({one})[]" if " | " in one else f"{one}[]"
    if origin is dict:
        return f"Record<string, {in_typescript(inner[1], found)}>"
    plain = {str: "string", float: "number", int: "number", bool: "boolean", NoneType: "null"}
    return "unknown" if hint is object else plain[hint]


def camel(constant: str) -> str:
    """Return the name of a constant as a type is called."""
    return "".join(word.capitalize() for word in constant.strip("_").split("_"))


def groups_by_name() -> dict[int, str]:
    """Return what the groups of fields that several questions share are called, by identity."""
    found: dict[int, str] = {}
    for name, module in sorted(sys.modules.items()):
        if name.startswith("evenkelvin.requests."):
            for constant, value in vars(module).items():
                if constant.isupper() and isinstance(value, Mapping):
                    found.setdefault(id(value), camel(constant) + "Fields")
    return found


def shape_in_typescript(shape: Any, names: dict[int, str], found: dict[str, Any]) -> str:
    """Return what a field can hold as TypeScript writes it; shared groups go to ``found``."""

    def inner(one: Any) -> str:
        return shape_in_typescript(one, names, found)

    if isinstance(shape, Number | Whole):
        return "Figure"
    if isinstance(shape, Text | Choice):
        return "string"
    if isinstance(shape, Truth):
        return "boolean"
    if isinstance(shape, Many):
        # A list of lists may leave one out.
        each = inner(shape.of) + (" | null" if isinstance(shape.of, Many) else "")
        return f"{each}[]" if each.isidentifier() else f"({each})[]"
    if isinstance(shape, ByName):
        return f"Record<string, {inner(shape.of)}>"
    if isinstance(shape, OneOf):
        return " | ".join(dict.fromkeys(inner(way) for way in shape.ways))
    if isinstance(shape, Checked):
        return "unknown"
    fields = [f"{name}?: {inner(one)} | null;" for name, one in shape.items()]
    if id(shape) not in names:
        return "{ " + " ".join(fields) + " }"
    found[names[id(shape)]] = "{\n  " + "\n  ".join(fields) + "\n}"
    return names[id(shape)]


def questions(asks: dict[str, Any]) -> str:
    """Return ``Questions``: what fields each question has."""
    names, found = groups_by_name(), {}
    tops = []
    for ask, group in asks.items():
        fields = [
            f"    {name}?: {shape_in_typescript(one, names, found)} | null;\n"
            for name, one in group.items()
        ]
        tops.append(f"  {ask}: {{\n{''.join(fields)}  }};")
    shared = [f"type {name} = {fields};\n" for name, fields in found.items()]
    return "\n".join(shared) + "\nexport type Questions = {\n" + "\n".join(tops) + "\n};\n"


def declarations(answers: dict[str, Any], asks: dict[str, Any]) -> str:
    """Return the file: a type for each group, ``Answers`` and ``Questions`` by the ask's name."""
    found: dict[str, Any] = {}
    tops = [f"  {ask}: {in_typescript(hint, found)};" for ask, hint in answers.items()]
    parts = []
    for name, hint in found.items():
        fields = []
        for field, inner in get_type_hints(hint, include_extras=True).items():
            mark = "?" if get_origin(inner) is NotRequired else ""
            fields.append(f"  {field}{mark}: {in_typescript(inner, found)};")
        parts.append(f"export type {name} = {{\n" + "\n".join(fields) + "\n};\n")
    return (
        HEAD
        + "\n".join(parts)
        + "\nexport type Answers = {\n"
        + "\n".join(tops)
        + "\n};\n\n"
        + questions(asks)
        + FOOT
    )


def stub(answers: dict[str, Any]) -> str:
    """Return ``asking.pyi``: what ``ask`` answers to each question, for whoever checks types."""
    ways = [
        f'@overload\ndef ask(question: Literal["{ask}"], /, **fields: Any)'
        f" -> answers.{hint.__name__}: ..."
        for ask, hint in answers.items()
    ]
    ways.append("@overload\ndef ask(question: str, /, **fields: Any) -> dict[str, Any]: ...")
    return (
        "# Made by webapp/tools/answer_types.py from replies/answers.py: change that.\n"
        "from typing import Any, Literal, overload\n\n"
        "from evenkelvin.replies import answers\n\n" + "\n".join(ways) + "\n"
    )


def fields_of_asks() -> dict[str, Any]:
    """Return what each ask declares of its question's fields."""
    from evenkelvin.desk import ASKS

    return {ask: import_module(f"evenkelvin.asks.{module}").FIELDS for ask, module in ASKS.items()}


if __name__ == "__main__":
    from evenkelvin.replies.answers import ANSWERS

    FILE.write_text(declarations(ANSWERS, fields_of_asks()), encoding="utf-8")
    STUB.write_text(stub(ANSWERS), encoding="utf-8")
