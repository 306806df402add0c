"""What the entries of a book say now.

The present state of a thing is its *heads*: the entries that no other replaces. Edited in two
places, a thing has two heads, and both are kept.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from evenkelvin.book.entries import ABOVE, VERSION, Book, Entry, Plain, book_hash, merge, moment
from evenkelvin.problem import Problem


@dataclass(frozen=True)
class Thing:
    """One thing of the book: what it is, its id and its heads, the oldest first."""

    kind: str
    id: str
    heads: tuple[Entry, ...]

    @property
    def present(self) -> Entry:
        """Its latest head."""
        return self.heads[-1]

    @property
    def gone(self) -> bool:
        """Whether every head says that it was deleted."""
        return all(head.get("gone", False) for head in self.heads)

    @property
    def name(self) -> str:
        """Its name, or its kind where it has none."""
        return str(self.present["data"].get("name") or f"unnamed {self.kind}")


class Found(dict[str, dict[str, Thing]]):
    """Every thing by kind and by id."""

    @cached_property
    def inside(self) -> dict[tuple[str, str | None], list[Thing]]:
        """By their kind and what they belong to, those that were not deleted, the oldest first."""
        listed: dict[tuple[str, str | None], list[Thing]] = {}
        for kind, each in self.items():
            for thing in each.values():
                if not thing.gone:
                    listed.setdefault((kind, thing.present["parent"]), []).append(thing)
        for group in listed.values():
            group.sort(key=lambda thing: (moment(thing.heads[0]["at"]), thing.id))
        return listed


def things(entries: Iterable[Entry]) -> Found:
    """Return every thing with its heads, by kind and by id.

    Entries that replace each other in a circle, as only a made-up book has them, all count as
    heads: nothing is hidden.
    """
    listed = list(entries)
    replaced = {id_ for entry in listed for id_ in entry["after"]}
    groups: dict[tuple[str, str], list[Entry]] = {}
    for entry in listed:
        groups.setdefault((entry["thing"], entry["of"]), []).append(entry)
    found = Found({kind: {} for kind in ABOVE})
    for (kind, id_), group in groups.items():
        heads = [entry for entry in group if entry["id"] not in replaced] or group
        heads.sort(key=lambda entry: (moment(entry["at"]), entry["id"]))
        found[kind][id_] = Thing(kind, id_, tuple(heads))
    return found


def taken_at(entry: Entry) -> str:
    """Return when a reading was taken: an entry that edits one says so in ``read_at``."""
    stated = entry["data"].get("read_at")
    try:
        moment(str(stated))
    except Problem:
        return str(entry["at"])
    return str(stated)


def conflicts(entries: Iterable[Entry]) -> list[Thing]:
    """Return the things that were edited in two places, in the order of their ids."""
    found = [
        thing for kind in things(entries).values() for thing in kind.values() if thing.heads[1:]
    ]
    return sorted(found, key=lambda thing: (list(ABOVE).index(thing.kind), thing.id))


def below(found: Found, kind: str, id_: str) -> list[Thing]:
    """Return what belongs to a thing and was not deleted, the oldest first."""
    lower = next((name for name, above in ABOVE.items() if above == kind), None)
    return list(found.inside.get((lower, id_), ())) if lower else []


def find(found: Mapping[str, Mapping[str, Thing]], id_: str, kinds: Sequence[str]) -> Thing:
    """Return the thing of one of these kinds with this id.

    Raises
    ------
    Problem
        When the book has none.
    """
    for kind in kinds:
        if id_ in found[kind]:
            return found[kind][id_]
    raise Problem("of", f"The book has no {' or '.join(kinds)} with the id “{id_[:40]}”.")


def above(found: Mapping[str, Mapping[str, Thing]], thing: Thing) -> list[Thing]:
    """Return the things that one belongs to, from the top; those not in the book are left out."""
    chain: list[Thing] = []
    kind, id_ = ABOVE[thing.kind], thing.present["parent"]
    while kind is not None and id_ in found[kind]:
        each = found[kind][id_]
        chain.insert(0, each)
        kind, id_ = ABOVE[kind], each.present["parent"]
    return chain


def gel_ids(data: Mapping[str, Any]) -> list[str]:
    """Return the ids of the measured gels that the data of a thing names."""
    planned = data.get("planned")
    plans = [planned] if isinstance(planned, dict) else []
    named = [data.get("gel_ids"), data.get("window_gel_ids"), *(p.get("gel_ids") for p in plans)]
    return [id_ for ids in named for id_ in ids or () if isinstance(id_, str)]


def part_of(entries: Iterable[Entry], id_: str) -> Book:
    """Return a book of one thing as it stands: what it belongs to, itself and all below it, and
    the measured gels that these name.

    Only heads, without the history before them: short enough for a link. It merges with the whole
    book without loss, because the entries are the same.
    """
    found = things(entries)
    thing = find(found, id_, tuple(ABOVE))
    wanted, queue = [*above(found, thing)], [thing]
    while queue:
        each = queue.pop()
        wanted.append(each)
        queue.extend(below(found, each.kind, each.id))
    heads = [head for each in wanted for head in each.heads]
    named = dict.fromkeys(gel for head in heads for gel in gel_ids(head["data"]))
    gels = [found["gel"][gel] for gel in named if gel in found["gel"]]
    return merge(heads, (head for gel in gels for head in gel.heads))


def summary(book: Book) -> Plain:
    """Return count, hash, how many of each thing, and what was edited in two places."""
    found = things(book.entries)
    alive = {kind: sum(not thing.gone for thing in each.values()) for kind, each in found.items()}
    return {
        "version": VERSION,
        "migrated_from": book.migrated_from,
        "count": len(book.entries),
        "sha256": book_hash(book.entries),
        "things": alive,
        "conflicts": [
            {
                "thing": thing.kind,
                "of": thing.id,
                "name": thing.name,
                "heads": [head["id"] for head in thing.heads],
            }
            for thing in conflicts(book.entries)
        ],
        "warnings": list(book.warnings),
    }
