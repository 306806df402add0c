"""A file that a question brings, and what the person decided about it."""

from __future__ import annotations

import base64
import binascii
from collections.abc import Mapping

from evenkelvin.fields import Fields
from evenkelvin.interchange.contents import CHOICES, MAX_BYTES, Contents
from evenkelvin.interchange.recognise import read_bytes, read_text
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Text

#: How many characters of base64 the largest file has, with room for line breaks.
_MOST_BASE64 = MAX_BYTES * 3 // 2

_CHOICES: Group = {name: Choice(known) for name, known in CHOICES.items()}
#: A file, and what the person decided about it.
FILE: Group = {
    "file_name": Text(("key.csv",)), "bytes_base64": Text(("bm0sdg==",)),
    "text": Text(("nm,key\n400,1\n", "x;y\n0,4;0,39\n")), "choices": _CHOICES,
}  # fmt: skip


def read_contents(fields: Fields, choices: Mapping[str, str]) -> Contents:
    """Return what the file in the fields ``bytes_base64`` or ``text`` holds."""
    try:
        if fields.given("bytes_base64") or not fields.given("text"):
            return read_bytes(read_base64(fields, _MOST_BASE64), choices)
        return read_text(fields.text("text", longest=MAX_BYTES), choices)
    except Problem as problem:
        if problem.field in ("bytes_base64", "text"):
            raise
        return Contents(Said("not recognised"), problems=[problem])


def read_choices(fields: Fields) -> dict[str, str]:
    """Return what the person decided about a file."""
    if not fields.given("choices"):
        return {}
    group = fields.group("choices")
    group.refuse_unknown(*_CHOICES)
    return {name: group.choice(name, CHOICES[name]) for name in CHOICES if group.given(name)}


def read_base64(fields: Fields, longest: int) -> bytes:
    """Return the bytes in the field ``bytes_base64``, where none means an empty file."""
    if not fields.given("bytes_base64"):
        return b""
    text = fields.text("bytes_base64", longest=10 * _MOST_BASE64)
    if len(text) > longest:
        raise Problem(
            "bytes_base64",
            Said(
                "The file has {count:.1f} MB; at most {max_bytes:g} MB are read.",
                count=len(text) * 0.75 / 1e6,
                max_bytes=MAX_BYTES / 1e6,
            ),
        )
    try:
        return base64.b64decode("".join(text.split()), validate=True)
    except (binascii.Error, ValueError):
        raise Problem(
            "bytes_base64", Said("The file did not arrive whole; choose it again.")
        ) from None


def stem_of(file_name: str) -> str:
    """Return the name of a file without its folders and ending."""
    name = file_name.replace("\\", "/").rpartition("/")[2]
    return name.rpartition(".")[0] or name


def name_spectra(contents: Contents, file_name: str) -> None:
    """Name what the file leaves without a name after the file, and tell equal names apart."""
    stem = stem_of(file_name) or "spectrum"
    nameless = [found for found in contents.spectra if not found.name]
    for number, found in enumerate(nameless, 1):
        found.name = stem if len(nameless) == 1 else f"{stem} {number}"
    seen: dict[str, int] = {}
    for found in contents.spectra:
        seen[found.name] = seen.get(found.name, 0) + 1
        if seen[found.name] > 1:
            found.name = f"{found.name} ({seen[found.name]})"
