"""Check plain data against a JSON Schema, each complaint naming its place in a plain sentence.

The schema file is the standard's (JSON Schema draft 2020-12); this knows the keywords that the
kernel's own schemas use and refuses to compile any other. The usual validators do not fit a
phone: `jsonschema` needs a native extension that the browser's Python has no build of, and
`fastjsonschema` adds its own code generator to the first start and reports a Python expression
instead of a sentence. The former is the referee in the tests.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sized
from typing import Any

Check = Callable[[Any], None]
Plain = Mapping[str, Any]

_KINDS: dict[str, tuple[str, Callable[[Any], bool]]] = {
    "null": ("nothing", lambda value: value is None),
    "boolean": ("true or false", lambda value: isinstance(value, bool)),
    "number": ("a number", lambda value: _is_number(value)),
    "integer": ("a whole number", lambda value: _is_number(value) and value % 1 == 0),
    "string": ("text", lambda value: isinstance(value, str)),
    "array": ("a list", lambda value: isinstance(value, list)),
    "object": ("a group of fields", lambda value: isinstance(value, dict)),
}
_NOTES = {"$schema", "$defs", "title", "description"}


class Flaw(Exception):
    """What is wrong, and the steps that lead to it, outermost first."""

    def __init__(self, message: str) -> None:
        super().__init__(message)
        self.message = message
        self.path: list[str | int] = []


def _is_number(value: object) -> bool:
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def _same(first: object, second: object) -> bool:
    # Python holds True and 1 for equal; JSON does not.
    return first == second and isinstance(first, bool) == isinstance(second, bool)


def _at(step: str | int, check: Check, value: Any) -> None:
    try:
        check(value)
    except Flaw as flaw:
        flaw.path.insert(0, step)
        raise


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
        checks = [make(part, whole) for words, make in _KEYWORDS if any(w in part for w in words)]
        if "$ref" in part:
            checks.append(referred(part["$ref"]))
        if "if" in part:
            checks.append(_when(whole(part["if"]), whole(part["then"])))
        if len(checks) == 1:
            return checks[0]

        def every(value: Any) -> None:
            for check in checks:
                check(value)

        return every

    return whole(schema)


Compile = Callable[[Plain], Check]


def _when(condition: Check, then: Check) -> Check:
    def check(value: Any) -> None:
        try:
            condition(value)
        except Flaw:
            return
        then(value)

    return check


def _type(part: Plain, _: Compile) -> Check:
    names = [part["type"]] if isinstance(part["type"], str) else part["type"]
    tests = [_KINDS[name][1] for name in names]
    wanted = " or ".join(_KINDS[name][0] for name in names if name != "null")

    def check(value: Any) -> None:
        if not any(test(value) for test in tests):
            found = next(words for words, test in _KINDS.values() if test(value))
            raise Flaw(f"must be {wanted}, not {found}")

    return check


def _enum(part: Plain, _: Compile) -> Check:
    allowed = [part["const"]] if "const" in part else part["enum"]
    words = " or ".join(str(item).lower() if item is True else str(item) for item in allowed)

    def check(value: Any) -> None:
        if not any(_same(value, item) for item in allowed):
            raise Flaw(f"must be {words}")

    return check


def _pattern(part: Plain, _: Compile) -> Check:
    # JSON Schema reads patterns as ECMA-262 does, where $ is the very end of the text.
    search = re.compile(part["pattern"].replace("$", r"\Z")).search
    wanted = part.get("description", "of the right form")

    def check(value: Any) -> None:
        if isinstance(value, str) and not search(value):
            raise Flaw(f"“{value[:40]}” is not {wanted}")

    return check


def _bounds(part: Plain, _: Compile) -> Check:
    low, high = part.get("minimum", -float("inf")), part.get("maximum", float("inf"))

    def check(value: Any) -> None:
        if _is_number(value) and not low <= value <= high:
            raise Flaw(f"is out of bounds: it must be between {low:g} and {high:g}")

    return check


def _at_most(keyword: str, kind: type[Sized], unit: str) -> Callable[[Plain, Compile], Check]:
    def make(part: Plain, _: Compile) -> Check:
        most = part[keyword]

        def check(value: Any) -> None:
            if isinstance(value, kind) and len(value) > most:
                raise Flaw(f"has {len(value)} {unit}; at most {most} fit")

        return check

    return make


def _required(part: Plain, _: Compile) -> Check:
    names = part["required"]

    def check(value: Any) -> None:
        if isinstance(value, dict):
            for name in names:
                if name not in value:
                    raise Flaw(f"lacks the field {name}")

    return check


def _items(part: Plain, whole: Compile) -> Check:
    inner = whole(part["items"])

    def check(value: Any) -> None:
        if isinstance(value, list):
            for index, item in enumerate(value):
                _at(index, inner, item)

    return check


def _properties(part: Plain, whole: Compile) -> Check:
    known = {name: whole(inner) for name, inner in part.get("properties", {}).items()}
    others = part.get("additionalProperties", True)
    inner = whole(others) if isinstance(others, dict) else None

    def check(value: Any) -> None:
        if isinstance(value, dict):
            for name, item in value.items():
                if name in known:
                    _at(name, known[name], item)
                elif inner is not None:
                    _at(name, inner, item)
                elif others is False:
                    raise Flaw(f"has a field “{name[:40]}” that does not belong there")

    return check


def _property_names(part: Plain, whole: Compile) -> Check:
    inner = whole(part["propertyNames"])

    def check(value: Any) -> None:
        if isinstance(value, dict):
            for name in value:
                inner(name)

    return check


def _any_of(part: Plain, whole: Compile) -> Check:
    choices = [whole(choice) for choice in part["anyOf"]]
    wanted = part.get("description", "of the right form")

    def check(value: Any) -> None:
        for choice in choices:
            try:
                choice(value)
            except Flaw:
                continue
            return
        raise Flaw(f"must be {wanted}")

    return check


def _all_of(part: Plain, whole: Compile) -> Check:
    checks = [whole(each) for each in part["allOf"]]

    def check(value: Any) -> None:
        for each in checks:
            each(value)

    return check


#: The keywords known here, those that share one check together, and what makes the check.
_KEYWORDS: tuple[tuple[tuple[str, ...], Callable[[Plain, Compile], Check]], ...] = (
    (("type",), _type),
    (("const", "enum"), _enum),
    (("pattern",), _pattern),
    (("minimum", "maximum"), _bounds),
    (("maxLength",), _at_most("maxLength", str, "characters")),
    (("maxItems",), _at_most("maxItems", list, "items")),
    (("maxProperties",), _at_most("maxProperties", dict, "fields")),
    (("required",), _required),
    (("items",), _items),
    (("properties", "additionalProperties"), _properties),
    (("propertyNames",), _property_names),
    (("anyOf",), _any_of),
    (("allOf",), _all_of),
)
_KNOWN = {word for words, _ in _KEYWORDS for word in words} | _NOTES | {"$ref", "if", "then"}
