"""A part of a book without what its owner keeps to themselves, or its hang cards alone, as a copy.

What is left out must not look like an edit: a copy has other ids than the book it was made from,
the same ones whenever the same is left out, so that a copy merges with itself and never takes
anything from the book.
"""

from __future__ import annotations

import base64
import math
from collections.abc import Collection, Iterable, Mapping
from hashlib import sha256
from typing import Any

from evenkelvin.book.entries import Book, Entry, merge, moment
from evenkelvin.book.logged import logged_xy
from evenkelvin.book.meaning import below, things
from evenkelvin.requests.forms import COLOUR_FORMS

#: What can be left out, and the fields that hold it; ``who`` stands beside the data.
LEAVABLE: dict[str, tuple[str, ...]] = {
    "photos": ("photo",),
    "position": ("position", "place", "lat_deg", "lon_deg"),
    "notes": ("note",),
    "who": (),
}

#: What hang cards are made of: the fields that stay of each kind of thing, and of a plan.
_ON_CARDS: dict[str, tuple[str, ...]] = {
    "production": ("name",),
    "location": ("name",),
    "setup": ("name", "hero", "target", "plan"),
    "light": ("name", "lamp", "order", "meant", "cuts", "planned"),
    "reading": (
        "x", "y", "cct_K", "duv", *COLOUR_FORMS, "lamp", "pack", "gel_ids", "place", "target",
    ),
}  # fmt: skip
_OF_PLANS: dict[str, tuple[str, ...]] = {
    "plan": ("at", "white", "words"),
    "planned": (
        "does", "words", "gels", "gel_ids", "dial", "lands", "verdict", "from",
    ),
    "lands": ("cct_K",),
}  # fmt: skip
#: Bytes of an id of a copy, and of one that has to fit a code beside many.
_ID_BYTES, _SHORT_ID_BYTES = 16, 5


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


def hang_cards(entries: Iterable[Entry]) -> Book:
    """Return a copy of a part that holds its hang cards: what hangs, what shall hang and where, and
    the latest reading of each light, of a spectrum its x y.

    Six lights fit one QR code. Times are those of the minute, and ids are short.
    """
    found = things(entries)
    standing = {
        kind: [thing for thing in found[kind].values() if not thing.gone] for kind in _ON_CARDS
    }
    standing["reading"] = [
        reading for light in standing["light"] for reading in below(found, "light", light.id)[-1:]
    ]
    every = [thing for each in standing.values() for thing in each]
    copies = {thing.id: _copy_id(thing.id, "hang", _SHORT_ID_BYTES) for thing in every}
    # One target of all readings is said once, with the setup; and but for a reading's own time all
    # say the latest.
    targets = [reading.present["data"].get("target") for reading in standing["reading"]]
    target = targets[0] if targets and all(each == targets[0] for each in targets) else None
    latest = max((thing.present["at"] for thing in every), key=moment, default="")
    cards = []
    for thing in every:
        entry = thing.present
        data = _only(entry["data"], _ON_CARDS[thing.kind])
        if target and thing.kind == "reading":
            del data["target"]
        elif target and thing.kind == "setup":
            data.setdefault("target", target)
        if thing.kind == "reading" and entry["data"].get("spectrum"):
            data |= _plain_xy(entry["data"])
        at = entry["at"] if thing.kind == "reading" else latest
        cards.append(_card({**entry, "at": at, "data": data}, copies))
    return merge(cards)


def _plain_xy(data: Mapping[str, Any]) -> dict[str, str]:
    x, y = logged_xy([data])[0]
    return {} if math.isnan(x) else {"x": f"{x:.4f}", "y": f"{y:.4f}"}


def _card(entry: Entry, copies: dict[str, str]) -> Entry:
    id_, at = copies[entry["of"]], entry["at"]
    zone = "Z" if at.endswith("Z") else at[-6:]
    return {
        "id": id_, "at": f"{at[:16]}:00{zone}", "thing": entry["thing"], "of": id_,
        "parent": copies.get(entry["parent"] or ""), "after": [],
        "data": _renamed(entry["data"], copies),
    }  # fmt: skip


def _only(data: Mapping[str, Any], names: tuple[str, ...]) -> dict[str, Any]:
    """Return some fields of plain data, those of plans within them cut down likewise."""
    return {
        name: _only(data[name], _OF_PLANS[name])
        if name in _OF_PLANS and isinstance(data[name], dict)
        else data[name]
        for name in names
        if data.get(name) not in (None, "", [])
    }


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


def _copy_id(id_: str, salt: str, length: int = _ID_BYTES) -> str:
    name = sha256(f"{salt}\n{id_}".encode()).digest()[:length]
    return base64.urlsafe_b64encode(name).decode("ascii").rstrip("=")
