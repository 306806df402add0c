"""Check plain data against a JSON Schema, each complaint naming its place in a plain sentence.

The schema file is the standard's (JSON Schema draft 2020-12); this knows the keywords that the
kernel's own schemas use and refuses to compile any other. The usual validators do not fit a
phone: `jsonschema` needs a native extension that the browser's Python has no build of, and
`fastjsonschema` adds its own code generator to the first start and reports a Python expression
instead of a sentence. The former is the referee in the tests.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

from evenkelvin.said import Said, chosen

Check = Callable[[Any], None]
Plain = Mapping[str, Any]
Compile = Callable[[Plain], Check]

#: The types that JSON has, as Python's reader gives them, and the words for them.
_WORDS: dict[str, Said] = {
    "null": Said("nothing"),
    "boolean": Said("true or false"),
    "integer": Said("a whole number"),
    "number": Said("a number"),
    "string": Said("text"),
    "array": Said("a list"),
    "object": Said("a group of values"),
}
_NAMES: dict[type, str] = {
    type(None): "null",
    bool: "boolean",
    int: "number",
    float: "number",
    str: "string",
    list: "array",
    dict: "object",
}
_NOTES = {"$schema", "$defs", "title", "description"}


class Flaw(Exception):
    """What is wrong, and the steps that lead to it, outermost first."""

    def __init__(self, message: Said) -> None:
        super().__init__(message)
        self.message = message
        self.path: list[str | int] = []


def _same(first: object, second: object) -> bool:
    # Python holds True and 1 for equal; JSON does not.
    return first == second and isinstance(first, bool) == isinstance(second, bool)


def _passes(check: Check, value: Any) -> bool:
    try:
        check(value)
    except Flaw:
        return False
    return True


def compile_schema(schema: Plain) -> Check:
    """Return a function that raises :class:`Flaw` at the first departure from ``schema``.

    Raises
    ------
    ValueError
        When the schema uses a keyword or a reference that is not known here.
    """
    compiled: dict[str, Check] = {}

    def referred(pointer: str) -> Check:
        if pointer not in compiled:
            if not pointer.startswith("#/$defs/"):
                raise ValueError(f"{pointer} does not point into $defs")
            # A definition may refer to itself: what it becomes is looked up when it is used.
            compiled[pointer] = lambda value: compiled[pointer](value)
            compiled[pointer] = whole(schema["$defs"][pointer.removeprefix("#/$defs/")])
        return compiled[pointer]

    def whole(part: Plain) -> Check:
        unknown = set(part) - _KNOWN
        if unknown:
            raise ValueError(f"keywords not known here: {sorted(unknown)}")
        if set(part) - _NOTES == {"$ref"}:
            return referred(part["$ref"])
        # Most keywords speak of one type only, so each type of value has its own list of checks.
        lists: dict[type, list[Check]] = {kind: [] for kind in _NAMES}
        for words, types, make in _KEYWORDS:
            if any(word in part for word in words):
                check = make(part, whole)
                for kind in types:
                    lists[kind].append(check)
        if "$ref" in part:
            check = referred(part["$ref"])
            for checks in lists.values():
                checks.append(check)
        of_type = {kind: tuple(checks) for kind, checks in lists.items()}

        def every(value: Any) -> None:
            checks = of_type.get(type(value))
            if checks is None:
                raise Flaw(Said("must be plain data, not {kind}", kind=type(value).__name__))
            for check in checks:
                check(value)

        return every

    return whole(schema)


def _type(part: Plain, _: Compile) -> Check:
    names = [part["type"]] if isinstance(part["type"], str) else part["type"]
    wanted = chosen(_WORDS[name] for name in names if name != "null")
    types = {kind for kind, name in _NAMES.items() if name in names}
    whole_numbers = "integer" in names and "number" not in names

    def check(value: Any) -> None:
        kind = type(value)
        if kind in types or (whole_numbers and _NAMES[kind] == "number" and value % 1 == 0):
            return
        raise Flaw(Said("must be {wanted}, not {kind}", wanted=wanted, kind=_WORDS[_NAMES[kind]]))

    return check


def _enum(part: Plain, _: Compile) -> Check:
    allowed = [part["const"]] if "const" in part else part["enum"]
    words = chosen(str(item).lower() if item is True else str(item) for item in allowed)

    def check(value: Any) -> None:
        if not any(_same(value, item) for item in allowed):
            raise Flaw(Said("must be {words}", words=words))

    return check


def _wanted(part: Plain) -> Said:
    """Return what a value must be: the schema itself says it."""
    return Said(part["description"]) if "description" in part else Said("of the right form")


def _pattern(part: Plain, _: Compile) -> Check:
    # JSON Schema reads patterns as ECMA-262 does, where $ is the very end of the text.
    search = re.compile(part["pattern"].replace("$", r"\Z")).search
    wanted = _wanted(part)

    def check(value: str) -> None:
        if not search(value):
            raise Flaw(Said("“{value}” is not {wanted}", value=value[:40], wanted=wanted))

    return check


def _bounds(part: Plain, _: Compile) -> Check:
    low, high = part.get("minimum", -float("inf")), part.get("maximum", float("inf"))

    def check(value: float) -> None:
        if not low <= value <= high:
            raise Flaw(
                Said(
                    "is out of bounds: it must be between {low:g} and {high:g}", low=low, high=high
                )
            )

    return check


def _too_long(count: int, most: int) -> Said:
    return Said("has {count} characters; at most {most} fit", count=count, most=most)


def _too_many_items(count: int, most: int) -> Said:
    return Said("has {count} items; at most {most} fit", count=count, most=most)


def _too_many_fields(count: int, most: int) -> Said:
    return Said("has {count} fields; at most {most} fit", count=count, most=most)


def _at_most(keyword: str, words: Callable[[int, int], Said]) -> Callable[[Plain, Compile], Check]:
    def make(part: Plain, _: Compile) -> Check:
        most = part[keyword]

        def check(value: Any) -> None:
            if len(value) > most:
                raise Flaw(words(len(value), most))

        return check

    return make


def _required(part: Plain, _: Compile) -> Check:
    names = part["required"]

    def check(value: Plain) -> None:
        for name in names:
            if name not in value:
                raise Flaw(Said("lacks the field {name}", name=name))

    return check


def _items(part: Plain, whole: Compile) -> Check:
    inner = whole(part["items"])

    def check(value: list[Any]) -> None:
        index = 0
        try:
            for index, item in enumerate(value):  # noqa: B007
                inner(item)
        except Flaw as flaw:
            flaw.path.insert(0, index)
            raise

    return check


def _properties(part: Plain, whole: Compile) -> Check:
    known = {name: whole(inner) for name, inner in part.get("properties", {}).items()}
    others = part.get("additionalProperties", True)
    rest = whole(others) if isinstance(others, dict) else None

    def check(value: Plain) -> None:
        name = ""
        try:
            for name, item in value.items():
                inner = known.get(name, rest)
                if inner is not None:
                    inner(item)
                elif others is False:
                    break
            else:
                return
        except Flaw as flaw:
            flaw.path.insert(0, name)
            raise
        raise Flaw(Said("has a field “{name}” that does not belong there", name=name[:40]))

    return check


def _property_names(part: Plain, whole: Compile) -> Check:
    inner = whole(part["propertyNames"])

    def check(value: Plain) -> None:
        for name in value:
            inner(name)

    return check


def _any_of(part: Plain, whole: Compile) -> Check:
    choices = [whole(choice) for choice in part["anyOf"]]
    wanted = _wanted(part)

    def check(value: Any) -> None:
        if not any(_passes(choice, value) for choice in choices):
            raise Flaw(Said("must be {wanted}", wanted=wanted))

    return check


def _if(part: Plain, whole: Compile) -> Check:
    condition = whole(part["if"])
    then, otherwise = whole(part.get("then", {})), whole(part.get("else", {}))

    def check(value: Any) -> None:
        (then if _passes(condition, value) else otherwise)(value)

    return check


_ANY = tuple(_NAMES)
_NUMBERS = (int, float)
#: The keywords known here, those that share one check together, the types of value that they
#: speak of, and what makes the check.
_KEYWORDS: tuple[
    tuple[tuple[str, ...], tuple[type, ...], Callable[[Plain, Compile], Check]], ...
] = (
    (("type",), _ANY, _type),
    (("const", "enum"), _ANY, _enum),
    (("pattern",), (str,), _pattern),
    (("minimum", "maximum"), _NUMBERS, _bounds),
    (("maxLength",), (str,), _at_most("maxLength", _too_long)),
    (("maxItems",), (list,), _at_most("maxItems", _too_many_items)),
    (("maxProperties",), (dict,), _at_most("maxProperties", _too_many_fields)),
    (("required",), (dict,), _required),
    (("items",), (list,), _items),
    (("properties", "additionalProperties"), (dict,), _properties),
    (("propertyNames",), (dict,), _property_names),
    (("anyOf",), _ANY, _any_of),
    (("if", "then", "else"), _ANY, _if),
)
_KNOWN = {word for words, _, _ in _KEYWORDS for word in words} | _NOTES | {"$ref"}
