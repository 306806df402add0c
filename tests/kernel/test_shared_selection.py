"""What is left out of a shared part is nowhere in it, and a copy never changes the book."""

from __future__ import annotations

import json
from itertools import combinations
from pathlib import Path

import pytest

from evenkelvin.book.entries import merge
from evenkelvin.book.meaning import part_of, things
from evenkelvin.book.selected import LEAVABLE, copy_without, holds
from evenkelvin.desk import answer

FIELDS = {"photos": '"photo"', "position": '"position"', "notes": '"note"', "who": '"who"'}
CHOICES = [some for n in range(1, 5) for some in combinations(LEAVABLE, n)]


DEMO = Path(__file__).parents[2] / "demo_readings" / "night_ferry.json"


@pytest.fixture(scope="module")
def entries():
    """The invented shoot, with something of each kind on one of its readings."""
    some = json.loads(DEMO.read_text("utf-8"))["entries"]
    reading = next(each for each in some if each["thing"] == "reading")
    reading["who"] = "night crew"
    reading["data"] |= {
        "photo": "data:image/jpeg;base64," + "".join(f"{n * n:x}" for n in range(500)),
        "note": "behind the pillar",
        "position": {"latitude": 54.32, "longitude": 10.13},
    }
    return some


@pytest.fixture(scope="module")
def production(entries):
    return next(each["of"] for each in entries if each["thing"] == "production")


@pytest.mark.parametrize("left_out", CHOICES, ids="+".join)
def test_nothing_of_it_is_in_the_copy_and_all_else_is(entries, production, left_out):
    part = part_of(entries, production)
    copy = copy_without(part.entries, left_out)
    text = json.dumps(copy.entries)
    for name, field in FIELDS.items():
        assert holds(part.entries, name)
        assert (field in text) == (name not in left_out)
        assert holds(copy.entries, name) == (name not in left_out)
    assert len(copy.entries) == len(part.entries)
    # No id of the book is left anywhere, so that every reference leads into the copy.
    old = {id_ for each in part.entries for id_ in (each["id"], each["of"])}
    assert not [id_ for id_ in old if f'"{id_}"' in text]
    names = lambda some: sorted(t.name for each in things(some).values() for t in each.values())  # noqa: E731
    assert names(copy.entries) == names(part.entries)


def test_a_copy_merges_with_itself_and_takes_nothing_from_the_book(entries, production):
    part = part_of(entries, production)
    copy = copy_without(part.entries, ["photos"])
    again = copy_without(part.entries, ["photos"])
    assert merge(copy.entries, again.entries).entries == copy.entries
    both = merge(entries, copy.entries)
    assert {each["id"] for each in entries} <= {each["id"] for each in both.entries}
    assert both.warnings == merge(entries).warnings
    replaced = {id_ for each in copy.entries for id_ in each["after"]}
    assert not replaced


def test_the_link_says_how_much_each_takes(entries, production):
    book = {"format": "evenkelvin-book", "version": 2, "entries": entries}
    whole = answer({"ask": "book_link", "book": book, "of": production})
    assert set(whole["takes"]) == set(LEAVABLE)
    less = answer({"ask": "book_link", "book": book, "of": production, "without": ["photos"]})
    assert "photos" not in less["takes"]
    saved = whole["size"]["kB"] - less["size"]["kB"]
    assert saved == pytest.approx(whole["takes"]["photos"]["kB"], abs=1e-9)
    assert less["size"]["codes"] == -(-len(less["link"]) // 900)
    opened = answer({"ask": "open_link", "link": less["link"]})
    assert opened["things"] == answer({"ask": "open_link", "link": whole["link"]})["things"]
    wrong = answer({"ask": "book_link", "book": book, "of": production, "without": ["lamps"]})
    assert wrong["problem"]["field"] == "without.0"
    assert (
        answer({"ask": "book_link", "book": book, "without": ["who"]})["problem"]["field"] == "of"
    )
