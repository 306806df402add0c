"""A part of a book without what its owner keeps to themselves, as a copy of its own.

What is left out must not look like an edit: a copy has other ids than the book it was made from,
the same ones whenever the same is left out, so that a copy merges with itself and never takes
anything from the book.
"""

from __future__ import annotations

import base64
from collections.abc import Collection, Iterable
from hashlib import sha256
from typing import Any

from evenkelvin.book.entries import Book, Entry, merge

#: What can be left out, and the fields that hold it; ``who`` stands beside the data.
LEAVABLE: dict[str, tuple[str, ...]] = {
    "photos": ("photo",),
    "position": ("position", "place", "lat_deg", "lon_deg"),
    "notes": ("note",),
    "who": (),
}


def holds(entries: Iterable[Entry], name: str) -> bool:
    """Tell whether entries hold any of what goes by a name of :data:`LEAVABLE`."""
    fields = LEAVABLE[name]
    return any(
        entry.get("who") if name == "who" else any(entry["data"].get(field) for field in fields)
        for entry in entries
    )


def copy_without(entries: Iterable[Entry], left_out: Collection[str]) -> Book:
    """Return a copy of entries without what is left out, without history.

    Parameters
    ----------
    entries
        The heads of a part, as :func:`meaning.part_of` gives them.
    left_out
        Names of :data:`LEAVABLE`; with none, the entries are returned as they are.
    """
    entries = list(entries)
    if not left_out:
        return merge(entries)
    fields = {field for name in left_out for field in LEAVABLE[name]}
    salt = ",".join(sorted(left_out))
    known = {id_ for entry in entries for id_ in (entry["id"], entry["of"])}
    copies = {id_: _copy_id(id_, salt) for id_ in known}
    return merge(_copied(entry, copies, fields, "who" in left_out) for entry in entries)


def _copied(entry: Entry, copies: dict[str, str], fields: set[str], nobody: bool) -> Entry:
    data = {name: value for name, value in entry["data"].items() if name not in fields}
    copy: Any = {
        **entry,
        "id": copies[entry["id"]],
        "of": copies[entry["of"]],
        "parent": copies.get(entry["parent"] or ""),
        "after": [],
        "data": _renamed(data, copies),
    }
    copy.pop("twin", None)
    if nobody:
        copy.pop("who", None)
    return copy  # type: ignore[no-any-return]


def _renamed(plain: Any, copies: dict[str, str]) -> Any:
    """Return plain data in which every id is that of the copy."""
    if isinstance(plain, dict):
        return {name: _renamed(value, copies) for name, value in plain.items()}
    if isinstance(plain, list):
        return [_renamed(value, copies) for value in plain]
    return copies.get(plain, plain) if isinstance(plain, str) else plain


def _copy_id(id_: str, salt: str) -> str:
    name = sha256(f"{salt}\n{id_}".encode()).digest()[:16]
    return base64.urlsafe_b64encode(name).decode("ascii").rstrip("=")
