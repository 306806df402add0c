"""The kernel's answers as types: ``webapp/src/kernel/answers.d.ts`` and ``evenkelvin/asking.pyi``.

The answers are declared once, in ``evenkelvin/replies/answers.py``. Run this after a change there:

    .venv/bin/python webapp/tools/answer_types.py
"""

from __future__ import annotations

import sys
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
FILE = ROOT / "webapp" / "src" / "kernel" / "answers.d.ts"
STUB = ROOT / "kernel" / "evenkelvin" / "asking.pyi"
HEAD = """\
// Made by webapp/tools/answer_types.py from kernel/evenkelvin/replies/answers.py: change that.

"""
FOOT = """
export type Ask = keyof Answers;

/** A question: which it is, and its fields. */
export type Question<A extends Ask> = { ask: A; [field: string]: unknown };

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


def declarations(answers: dict[str, Any]) -> str:
    """Return the file: a type for each group, and ``Answers`` by the name of the question."""
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
        HEAD + "\n".join(parts) + "\nexport type Answers = {\n" + "\n".join(tops) + "\n};\n" + FOOT
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


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT / "kernel"))
    from evenkelvin.replies.answers import ANSWERS

    FILE.write_text(declarations(ANSWERS), encoding="utf-8")
    STUB.write_text(stub(ANSWERS), encoding="utf-8")
