"""What the entries of a book say now.

The present state of a thing is its *heads*: the entries that no other replaces. Edited in two
places, a thing has two heads, and both are kept. A thing is gone only if every head is a delete:
a delete takes away what it has seen, and an edit made elsewhere meanwhile outlives it. Shown is
the latest head that is not a delete; at the same instant the greater id is the later.

Things are sorted by when they were first written, a reading by when it was taken, so that an
edit moves nothing. A reading kept while the clock stood before the reading it came after names
that one in ``follows``, and stands right behind it.

The app's own store (``webapp/src/store/log/book.js``) means the same: both run the cases of
``tests/book_cases``.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from evenkelvin.book.entries import (
    ABOVE,
    KIND_WORDS,
    VERSION,
    Book,
    Entry,
    Plain,
    book_hash,
    merge,
    moment,
)
from evenkelvin.problem import Problem
from evenkelvin.said import Said, chosen


@dataclass(frozen=True)
class Thing:
    """One thing of the book: what it is, its id, its heads, the oldest first, and when the entry
    that made it was written, None where that is not in the book."""

    kind: str
    id: str
    heads: tuple[Entry, ...]
    made: str | None = None

    @property
    def present(self) -> Entry:
        """Its latest head that is not a delete, or its latest where every head is one."""
        standing = [head for head in self.heads if not head.get("gone", False)]
        return (standing or self.heads)[-1]

    @property
    def at(self) -> str:
        """When it was first written, or taken where an edited reading says so."""
        present = self.present
        stated = taken_at(present)
        return stated if stated != present["at"] or self.made is None else self.made

    @property
    def gone(self) -> bool:
        """Whether every head says that it was deleted."""
        return all(head.get("gone", False) for head in self.heads)

    @property
    def name(self) -> str:
        """Its name, or its kind where it has none."""
        return str(self.present["data"].get("name") or "") or Said(
            "unnamed {kind}", kind=KIND_WORDS[self.kind]
        )


class Found(dict[str, dict[str, Thing]]):
    """Every thing by kind and by id."""

    @cached_property
    def inside(self) -> dict[tuple[str, str | None], list[Thing]]:
        """By their kind and what they belong to, those that were not deleted, the oldest first.

        The lights of a setup by their order in it, whatever their times became on the way here.
        """
        listed: dict[tuple[str, str | None], list[Thing]] = {}
        for kind, each in self.items():
            for thing in each.values():
                if not thing.gone:
                    listed.setdefault((kind, thing.present["parent"]), []).append(thing)
        return {key: _in_order(group) for key, group in listed.items()}


def things(entries: Iterable[Entry]) -> Found:
    """Return every thing with its heads, by kind and by id.

    Entries that replace each other in a circle, as only a made-up book has them, all count as
    heads: nothing is hidden.
    """
    listed = list(entries)
    replaced = {id_ for entry in listed for id_ in entry["after"]}
    groups: dict[tuple[str, str], list[Entry]] = {}
    for entry in listed:
        if entry["thing"] in ABOVE:
            groups.setdefault((entry["thing"], entry["of"]), []).append(entry)
    found = Found({kind: {} for kind in ABOVE})
    for (kind, id_), group in groups.items():
        heads = [entry for entry in group if entry["id"] not in replaced] or group
        heads.sort(key=lambda entry: (moment(entry["at"]), entry["id"]))
        made = next((entry["at"] for entry in group if entry["id"] == id_), None)
        found[kind][id_] = Thing(kind, id_, tuple(heads), made)
    return found


def taken_at(entry: Entry) -> str:
    """Return when a reading was taken: an entry that edits one says so in ``read_at``."""
    stated = entry["data"].get("read_at")
    try:
        moment(str(stated))
    except Problem:
        return str(entry["at"])
    return str(stated)


def places(
    entries: Sequence[Entry], at: Callable[[Entry], str] = taken_at
) -> dict[str, tuple[float, int]]:
    """Return what to sort entries by, each of another thing, for each entry id.

    One that names another in ``follows`` is sorted right behind it, whatever its clock says.
    """
    by_thing = {entry["of"]: entry for entry in entries}
    found: dict[str, tuple[float, int]] = {}
    for entry in entries:
        # Back to one whose place is known, or to the start; a circle, which only a made-up book
        # has, is cut where it closes.
        chain: list[Entry] = []
        walked: set[str] = set()
        each: Entry | None = entry
        while each is not None and each["id"] not in found and each["id"] not in walked:
            walked.add(each["id"])
            chain.append(each)
            each = by_thing.get(str(each["data"].get("follows")))
        place = found.get(each["id"], (-math.inf, 0)) if each is not None else (-math.inf, 0)
        for link in reversed(chain):
            place = max((moment(at(link)), 0), (place[0], place[1] + 1))
            found[link["id"]] = place
    return found


def _in_order(group: list[Thing]) -> list[Thing]:
    at = {thing.id: thing.at for thing in group}
    found = places([thing.present for thing in group], lambda entry: at[entry["of"]])
    return sorted(group, key=lambda thing: (_order(thing), *found[thing.present["id"]], thing.id))


def _order(thing: Thing) -> float:
    """Return a light's place in its setup; those of books that kept none come first."""
    order = thing.present["data"].get("order") if thing.kind == "light" else None
    return float(order) if isinstance(order, int | float) else 0.0


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
    raise Problem(
        "of",
        Said(
            "The book has no {kinds} with the id “{id}”.",
            kinds=chosen(KIND_WORDS[kind] for kind in kinds),
            id=id_[:40],
        ),
    )


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
    meant = data.get("meant")
    plans += [meant] if isinstance(meant, dict) else []
    plans += [each for each in data.get("windows") or () if isinstance(each, dict)]
    named = [data.get("gel_ids"), data.get("window_gel_ids"), *(p.get("gel_ids") for p in plans)]
    return [id_ for ids in named for id_ in ids or () if isinstance(id_, str)]


def part_of(entries: Iterable[Entry], id_: str) -> Book:
    """Return a book of one thing as it stands: what it belongs to, itself and all below it, the
    lights that its lights are meant to be like, and the measured gels that these name.

    Only heads, without the history before them: short enough for a link. It merges with the whole
    book without loss, because the entries are the same.
    """
    entries = list(entries)
    found = things(entries)
    thing = find(found, id_, tuple(ABOVE))
    wanted, queue = [*above(found, thing)], [thing]
    while queue:
        each = queue.pop()
        wanted.append(each)
        for kind, over in ABOVE.items():
            if over == each.kind:
                queue.extend(found.inside.get((kind, each.id), ()))
    wanted += _matched(found, wanted)
    heads = [head for each in wanted for head in each.heads]
    heads += _unknown_below(entries, {each.id for each in wanted})
    named = dict.fromkeys(gel for head in heads for gel in gel_ids(head["data"]))
    gels = [found["gel"][gel] for gel in named if gel in found["gel"]]
    return merge(heads, (head for gel in gels for head in gel.heads))


def _unknown_below(entries: Sequence[Entry], ids: set[str]) -> list[Entry]:
    """Return what belongs to things and is of a kind that only newer versions know."""
    replaced = {id_ for entry in entries for id_ in entry["after"]}
    return [
        entry
        for entry in entries
        if entry["thing"] not in ABOVE and entry["parent"] in ids and entry["id"] not in replaced
    ]


def _matched(found: Found, part: Sequence[Thing]) -> list[Thing]:
    """Return the lights that those of a part are meant to be like, each with its latest reading.

    Without the setups they stand in: nothing else of these goes along.
    """
    seen = {thing.id for thing in part}
    queue = [thing for thing in part if thing.kind == "light"]
    matched: list[Thing] = []
    while queue:
        data = queue.pop().present["data"]
        meant = data.get("meant")
        like = meant.get("like") if isinstance(meant, dict) else None
        for id_ in (data.get("pickup_of"), like):
            light = found["light"].get(id_) if isinstance(id_, str) else None
            if light is None or light.id in seen:
                continue
            seen.add(light.id)
            queue.append(light)
            matched += [light, *below(found, "light", light.id)[-1:]]
    return matched


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
