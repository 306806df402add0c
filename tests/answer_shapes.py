"""Whether an answer has the shape that is declared for it in ``evenkelvin/replies/answers.py``."""

from __future__ import annotations

from functools import cache
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

from evenkelvin.replies.answers import ANSWERS

_PLAIN = {str: (str,), float: (int, float), int: (int,), bool: (bool,), NoneType: (NoneType,)}


@cache
def _fields(group: Any) -> dict[str, tuple[Any, bool]]:
    hints = get_type_hints(group, include_extras=True)
    return {
        name: (get_args(hint)[0], False) if get_origin(hint) is NotRequired else (hint, True)
        for name, hint in hints.items()
    }


def misfits(value: Any, hint: Any, where: str) -> list[str]:
    """Say every place where a value is not of the type; the first few of a list are looked at."""
    if hint is object:
        return []
    if is_typeddict(hint):
        if not isinstance(value, dict):
            return [f"{where} is {value!r:.40}, not {hint.__name__}"]
        fields = _fields(hint)
        found = [
            f"{where}.{name} is not declared in {hint.__name__}"
            for name in value.keys() - fields.keys()
        ]
        for name, (inner, required) in fields.items():
            if name in value:
                found += misfits(value[name], inner, f"{where}.{name}")
            elif required:
                found.append(f"{where}.{name} is missing of {hint.__name__}")
        return found
    origin, inner = get_origin(hint), get_args(hint)
    if origin in (Union, UnionType):
        tried = [misfits(value, one, where) for one in inner]
        return [] if not all(tried) else min(tried, key=len)
    if origin is Literal:
        return [] if value in inner else [f"{where} is {value!r}, none of {inner}"]
    if origin is list:
        if not isinstance(value, list):
            return [f"{where} is {value!r:.40}, no list"]
        return [
            bad
            for i, one in enumerate(value[:20])
            for bad in misfits(one, inner[0], f"{where}[{i}]")
        ]
    if origin is dict:
        if not isinstance(value, dict):
            return [f"{where} is {value!r:.40}, no group"]
        return [
            bad for key, one in value.items() for bad in misfits(one, inner[1], f"{where}.{key}")
        ]
    fits = isinstance(value, _PLAIN[hint]) and (hint is bool or not isinstance(value, bool))
    return [] if fits else [f"{where} is {value!r:.40}, not {hint.__name__}"]


def check(request: Any, answer: Any) -> None:
    """Fail where an answer is not as declared."""
    ask = request.get("ask") if isinstance(request, dict) else None
    if not isinstance(ask, str) or ask not in ANSWERS or set(answer) == {"problem"}:
        return
    found = misfits(answer, ANSWERS[ask], ask)
    assert not found, "\n".join(found)
