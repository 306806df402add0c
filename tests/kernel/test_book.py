"""The book is checked, brought up to date, merged without loss, and read as it stands."""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.book import entries as in_entries
from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import VERSION, _twin, book_hash, merge
from evenkelvin.book.file import as_plain, as_text, parse_json, read_book
from evenkelvin.book.meaning import below, conflicts, part_of, summary, things
from evenkelvin.book.migrations import MIGRATIONS, migrate
from evenkelvin.book.schema import compile_schema
from evenkelvin.problem import Problem
from examples import examples

AT = "2026-11-25T19:42:10.123+01:00"


def entry(id_: str, thing: str = "light", **more: Any) -> dict[str, Any]:
    plain = {
        "id": id_,
        "at": AT,
        "thing": thing,
        "of": id_,
        "parent": None,
        "after": [],
        "data": {"name": id_},
    }
    return {**plain, **more}


def file_of(*entries: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"format": "evenkelvin-book", "version": 2, "entries": list(entries), **more}


def problem_of(raw: object) -> Problem:
    with pytest.raises(Problem) as caught:
        read_book(raw)
    return caught.value


def test_an_empty_book_is_a_book() -> None:
    assert read_book(file_of()).entries == ()


def test_what_is_written_out_reads_back_the_same() -> None:
    first = read_book(file_of(entry("b"), entry("a", who="best boy")))
    text = as_text(first)
    again = read_book(text)
    assert again == first
    assert as_text(again) == text
    assert json.loads(text) == as_plain(first)


def test_the_hash_ignores_the_order_and_spelling_of_the_file() -> None:
    one, two = entry("a", data={"name": "key", "n": 1.0}), entry("b")
    shuffled = dict(reversed(list(one.items())))
    shuffled["data"] = {"n": 1, "name": "key"}
    first, second = read_book(file_of(one, two)), read_book(file_of(two, shuffled))
    assert book_hash(first.entries) == book_hash(second.entries)


def test_a_stated_hash_that_does_not_fit_is_told_and_nothing_is_lost() -> None:
    text = as_text(read_book(file_of(entry("a", data={"name": "key"}))))
    assert read_book(text).warnings == ()
    changed = read_book(text.replace("key", "fill"))
    assert "changed after it was written" in changed.warnings[0]
    assert changed.entries[0]["data"]["name"] == "fill"


def test_a_field_this_version_does_not_know_is_kept() -> None:
    data = {"name": "key", "barnDoors": {"left": [1, "half", None, True]}}
    assert read_book(file_of(entry("a", data=data))).entries[0]["data"] == data


def test_a_kind_of_thing_this_version_does_not_know_is_kept_and_handed_on() -> None:
    above = [
        entry("p", thing="production"), entry("l", thing="location", parent="p"),
        entry("s", thing="setup", parent="l"), entry("w", thing="surface", parent="s"),
    ]  # fmt: skip
    stranger = entry("k", thing="kite", parent="s", data={"name": 7, "tail": {"m": 2}})
    replaced = entry("k2", thing="kite", of="k", parent="s", after=["k"], data={"name": 8})
    elsewhere = entry("e", thing="kite", parent="another")
    book = read_book(as_text(read_book(file_of(*above, stranger, replaced, elsewhere))))
    assert len(book.entries) == 7
    handed = part_of(book.entries, "s").entries
    assert {each["id"] for each in handed} == {"p", "l", "s", "w", "k2"}
    assert summary(book)["things"]["surface"] == 1


@pytest.mark.parametrize(
    ("broken", "field", "words"),
    [
        ({"id": "no spaces please"}, "book.entries.0.id", "is not an id"),
        ({"id": "a\n"}, "book.entries.0.id", "is not an id"),
        ({"at": "2026-11-25 19:42"}, "book.entries.0.at", "is not a date and time with its zone"),
        ({"at": "2026-02-30T10:00:00Z"}, "book.entries.0.at", "is not a date and time"),
        ({"thing": "Flag!"}, "book.entries.0.thing", "a kind of thing in small letters"),
        ({"after": "a"}, "book.entries.0.after", "must be a list, not text"),
        ({"gone": False}, "book.entries.0.gone", "must be true"),
        ({"gone": 1}, "book.entries.0.gone", "must be true"),
        ({"data": []}, "book.entries.0.data", "must be a group of values, not a list"),
        ({"data": {"name": 7}}, "book.entries.0.data.name", "must be text, not a number"),
        ({"data": {"name": "n" * 201}}, "book.entries.0.data.name", "has 201 characters"),
        ({"data": {"photo": "javascript:x"}}, "book.entries.0.data.photo", "is not a small JPEG"),
        ({"data": {"big": 1e16}}, "book.entries.0.data.big", "is out of bounds"),
        ({"data": {"a b": 1}}, "book.entries.0.data", "is not the name of a field"),
        ({"script": 1}, "book.entries.0", "“script” that does not belong there"),
    ],
)
def test_a_flaw_is_named_by_entry_and_field(broken: dict[str, Any], field: str, words: str) -> None:
    problem = problem_of(file_of(entry("a", **broken)))
    assert problem.field == field
    assert words in problem.message
    assert "Entry 1" in problem.message


def test_a_missing_field_is_named() -> None:
    broken = entry("b")
    del broken["after"]
    problem = problem_of(file_of(entry("a"), broken))
    assert problem.field == "book.entries.1"
    assert "Entry 2 (a light): lacks the field after" in problem.message


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        ("", "nothing in it"),
        ("{", "ends too early"),
        ('{"format": "evenkel', "ends too early"),
        ("not json", "is not JSON"),
        ("[1, NaN]", "NaN"),
        ("[" + "9" * 5000 + "]", "thousands of digits"),
        ("[" * 100_000, "nested more than 8 deep"),
        ("[" * 9 + "]" * 9, "nested more than 8 deep"),
        ('{"a":' * 60_000 + "1" + "}" * 60_000, "nested more than 8 deep"),
        ('"' + '\\"' * 200_000, "ends too early"),
        ("[]", "not a book"),
        ('{"format": "evenkelvin-book"}', "does not say its version"),
        ('{"format": "evenkelvin-book", "version": 3}', "newer Evenkelvin"),
        ('{"format": "evenkelvin-book", "version": -1}', "never in use"),
        ('{"format": "evenkelvin-book", "version": true}', "does not say its version"),
        ('{"format": "evenkelvin-book", "version": 2}', "lacks the field entries"),
    ],
    ids=lambda text: text[:40],
)
def test_a_text_that_is_no_book_is_refused_with_a_sentence(raw: str, words: str) -> None:
    problem = problem_of(raw)
    assert words in problem.message
    assert problem.field.startswith("book")


def test_the_line_of_a_broken_file_is_named() -> None:
    text = as_text(read_book(file_of(entry("a"), entry("b"))))
    broken = text.replace('"id":"b"', '"id":b')
    assert problem_of(broken).line == 3


def test_half_a_character_is_refused() -> None:
    text = '{"format":"evenkelvin-book","version":1,"sha256":"' + "0" * 64 + '","entries":['
    text += json.dumps(entry("a", data={"name": "\ud800"})) + "]}"
    assert "half a character" in problem_of(text).message


def test_plain_data_nested_too_deep_is_refused() -> None:
    deep: Any = 1
    for _ in range(50):
        deep = [deep]
    assert "nested more than 8" in problem_of(file_of(entry("a", data={"d": deep}))).message


def test_a_file_beyond_the_limit_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(in_entries, "MOST_ENTRIES", 2)
    with pytest.raises(Problem, match="at most 2"):
        merge([entry("a"), entry("b")], [entry("c")])
    with pytest.raises(Problem, match="at most 10 fit"):
        parse_json("[1,2,3,4,5,6]", longest=10)


# ---------------------------------------------------------------------------------- migration


def test_an_earlier_version_is_brought_up_step_by_step() -> None:
    # An invented version 0 in which entries had no 'after', and a −1 that called them 'log'.
    def from_0(plain: dict[str, Any]) -> dict[str, Any]:
        return {**plain, "entries": [{"after": [], **each} for each in plain["entries"]]}

    def from_minus_1(plain: dict[str, Any]) -> dict[str, Any]:
        return {"format": plain["format"], "entries": plain["log"]}

    old = entry("a")
    del old["after"]
    oldest = {"format": "evenkelvin-book", "version": -1, "log": [old]}
    now = migrate(oldest, 1, {0: from_0, -1: from_minus_1})
    assert now == {**file_of(entry("a")), "version": 1}
    assert oldest["log"] == [old]


def test_a_migrated_book_says_where_it_came_from(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(MIGRATIONS, 0, lambda plain: {**plain, "entries": []})
    read = read_book({"format": "evenkelvin-book", "version": 0})
    assert (read.migrated_from, read.entries) == (0, ())


def test_every_earlier_version_has_a_migration() -> None:
    assert sorted(MIGRATIONS) == list(range(1, VERSION))


def test_a_book_of_version_1_still_opens_whole() -> None:
    # As this app wrote it when a book held no gels of its own.
    text = Path(__file__).with_name("book_version_1.json").read_text(encoding="utf-8")
    old = json.loads(text)
    read = read_book(text)
    assert (old["version"], read.migrated_from, read.warnings) == (1, 1, ())
    assert list(read.entries) == old["entries"]
    assert book_hash(read.entries) == old["sha256"]
    assert read_book(as_text(read)).entries == read.entries
    (warning,) = read_book(text.replace("bounce", "kicker")).warnings
    assert "changed after it was written" in warning


# ------------------------------------------------------------------------------ measured gels


def gel(id_: str, name: str = "amber", *, passes: float = 0.5, **more: Any) -> dict[str, Any]:
    curve = {"wavelengths_nm": [400, 700], "transmittance": [0.1, passes]}
    return entry(id_, "gel", data={"name": name, **curve}, **more)


def test_a_part_brings_the_measured_gels_it_names_and_no_others() -> None:
    entries = [
        entry("l", "location", data={"window_gels": ["amber"], "window_gel_ids": ["g3"]}),
        entry("w", "location", data={"windows": [{"gels": ["amber"], "gel_ids": ["g5"]}]}),
        entry("s", "setup", parent="l"),
        entry("k", parent="s", data={"planned": {"gels": ["amber"], "gel_ids": ["g2"]}}),
        entry("r", "reading", parent="k", data={"pack": ["CTO", "amber"], "gel_ids": [None, "g1"]}),
        entry("far", "light", parent="elsewhere", data={"gel_ids": ["g4"]}),
        *(gel(f"g{n}") for n in range(1, 6)),
        gel("g1b", of="g1", after=["g1"], passes=0.6),
    ]
    part = part_of(entries, "s")
    ids = {each["id"] for each in part.entries}
    assert ids == {"l", "s", "k", "r", "g1b", "g2", "g3"}
    assert merge(entries, part.entries).entries == merge(entries).entries
    # One that is named but missing, as in a file that was cut by hand, is no reason to refuse.
    glazed = {each["id"] for each in part_of(entries, "w").entries}
    assert glazed == {"w", "g5"}
    assert {each["id"] for each in part_of(entries[:5], "s").entries} == {
        "l",
        "s",
        "k",
        "r",
    }


def test_two_gels_of_one_name_both_survive_a_merge() -> None:
    mine = [gel("g1"), entry("r1", "reading", data={"pack": ["amber"], "gel_ids": ["g1"]})]
    theirs = [gel("g2", passes=0.8), entry("r2", "reading", data={"gel_ids": ["g2"]})]
    both = merge(mine, theirs)
    assert both == merge(theirs, mine, theirs)
    assert set(things(both.entries)["gel"]) == {"g1", "g2"}


@pytest.mark.parametrize(
    ("thing", "data", "where"),
    [
        ("reading", {"gel_ids": "g1"}, "gel_ids"),
        ("reading", {"gel_ids": ["no spaces please"]}, "gel_ids.0"),
        ("light", {"planned": {"gel_ids": [5]}}, "planned.gel_ids.0"),
        ("location", {"window_gel_ids": {"a": 1}}, "window_gel_ids"),
        ("gel", {"transmittance": [0.5, True]}, "transmittance.1"),
        ("gel", {"name": ["amber"]}, "name"),
    ],
)
def test_a_flaw_in_what_names_a_gel_is_told(thing: str, data: Any, where: str) -> None:
    assert problem_of(file_of(entry("a", thing, data=data))).field == f"book.entries.0.data.{where}"


# -------------------------------------------------------------------------------------- merge

#: Few ids and few contents, so that the same id meets different contents all the time.
_IDS = st.sampled_from(["a", "b", "c"])
_ENTRIES = st.builds(
    lambda id_, name, after, twin: {
        **entry(id_, data={"name": name}, after=after),
        **({"twin": twin} if twin else {}),
    },
    _IDS,
    st.sampled_from(["key", "fill", 1, True, 1.0]),
    st.lists(_IDS, max_size=2),
    st.sampled_from([None, None, "z"]),
)
#: Also entries that claim the very id that a twin would be given.
_TWINS = st.builds(lambda each: _twin(each, canonical(each)), _ENTRIES)
_CLAIMS = st.builds(lambda each, twin: {**each, "id": twin["id"]}, _ENTRIES, _TWINS)
_BOOKS = st.lists(st.one_of(_ENTRIES, _TWINS, _CLAIMS), max_size=6)


def merged(*books: Any) -> str:
    return canonical(list(merge(*books).entries))


@settings(deadline=None, max_examples=examples(200))
@given(_BOOKS, _BOOKS, _BOOKS)
def test_merging_is_commutative_associative_and_idempotent(a: Any, b: Any, c: Any) -> None:
    assert merged(a, b) == merged(b, a)
    left, right = merge(a, b).entries, merge(b, c).entries
    assert merged(left, c) == merged(a, right) == merged(a, b, c)
    assert merged(left, a) == merged(left) == merged(b, left, left)


@settings(deadline=None, max_examples=examples(200))
@given(_BOOKS, _BOOKS)
def test_merging_loses_nothing_and_invents_nothing(a: Any, b: Any) -> None:
    def contents(entries: Any) -> set[str]:
        return {
            canonical({k: v for k, v in each.items() if k not in ("id", "twin")})
            for each in entries
        }

    result = merge(a, b).entries
    assert contents(result) == contents([*a, *b])
    assert {each["id"] for each in (*a, *b)} <= {each["id"] for each in result}
    assert len({each["id"] for each in result}) == len(result)


def test_one_id_with_two_contents_keeps_both_and_marks_the_second() -> None:
    result = merge([entry("a", data={"name": "key"})], [entry("a", data={"name": "fill"})])
    by_id = {each["id"]: each for each in result.entries}
    assert by_id["a"]["data"]["name"] == "fill"
    (twin,) = (each for each in result.entries if "twin" in each)
    assert (twin["twin"], twin["data"]["name"], len(twin["id"])) == ("a", "key", 22)
    assert "both are kept" in result.warnings[0]


# ------------------------------------------------------------------------- what stands now


def test_the_heads_are_what_no_other_entry_replaces() -> None:
    first = entry("a", data={"name": "key"})
    here = entry("b", of="a", after=["a"], data={"name": "key left"})
    there = entry("c", of="a", after=["a"], data={"name": "key right"})
    found = things([first, here, there])["light"]["a"]
    assert [head["id"] for head in found.heads] == ["b", "c"]
    assert [thing.id for thing in conflicts([first, here, there])] == ["a"]
    settled = entry("d", of="a", after=["b", "c"], data={"name": "key"})
    assert conflicts([first, here, there, settled]) == []


def test_the_latest_head_counts_across_time_zones() -> None:
    early = entry("b", of="a", at="2026-11-25T20:00:00+02:00", data={"name": "early"})
    late = entry("a", of="a", at="2026-11-25T19:00:00+00:00", data={"name": "late"})
    assert things([late, early])["light"]["a"].name == "late"


def test_entries_that_replace_each_other_in_a_circle_are_all_shown() -> None:
    one, two = entry("a", after=["b"]), entry("b", of="a", after=["a"])
    assert len(things([one, two])["light"]["a"].heads) == 2


def test_a_deleted_thing_and_its_undo() -> None:
    made = entry("a", parent="s")
    deleted = entry("b", of="a", parent="s", after=["a"], gone=True)
    undone = entry("c", of="a", parent="s", after=["b"], data={"name": "a"})
    assert below(things([made, deleted]), "setup", "s") == []
    assert [t.id for t in below(things([made, deleted, undone]), "setup", "s")] == ["a"]


def test_a_part_is_the_thing_what_it_belongs_to_and_all_below() -> None:
    entries = [
        entry("p", "production"),
        entry("l1", "location", parent="p"),
        entry("l2", "location", parent="p"),
        entry("s1", "setup", parent="l1"),
        entry("s2", "setup", parent="l1"),
        entry("k", "light", parent="s1"),
        entry("k2", "light", of="k", parent="s1", after=["k"]),
        entry("r", "reading", parent="k"),
        entry("gone", "light", parent="s1", gone=True),
        entry("other", "light", parent="s2"),
    ]
    part = part_of(entries, "s1")
    assert [each["id"] for each in part.entries] == ["k2", "l1", "p", "r", "s1"]
    assert merge(entries, part.entries).entries == merge(entries).entries
    with pytest.raises(Problem, match="has no"):
        part_of(entries, "nowhere")


def test_reading_a_book_leaves_what_was_given_untouched() -> None:
    plain = file_of(entry("b"), entry("a"))
    before = copy.deepcopy(plain)
    read_book(plain)
    assert plain == before


def test_a_schema_with_a_keyword_unknown_here_is_not_compiled() -> None:
    with pytest.raises(ValueError, match="multipleOf"):
        compile_schema({"type": "number", "multipleOf": 2})
    with pytest.raises(ValueError, match="defs"):
        compile_schema({"$ref": "elsewhere.json"})


# ------------------------------------------------------------------------------ damaged files

_WHOLE = as_text(
    merge(
        [
            entry("s", "setup", note="“north”"),
            entry("k", parent="s", data={"name": "key", "target": {"cct_K": 3200, "duv": 0}}),
            entry("r", "reading", parent="k", data={"x": "0,4215", "pack": ["1/2 CTO"]}),
        ]
    )
)
_PIECES = st.sampled_from(
    ["", "{", "}", "[", "]", '"', "\\", ",", ":", "null", "1e999", "-", "\x00", "é", "\ud800"]
)


@settings(deadline=None, max_examples=examples(400))
@given(st.data())
def test_a_damaged_file_is_a_book_or_refused_with_a_sentence(data: Any) -> None:
    text = _WHOLE
    for _ in range(data.draw(st.integers(1, 3))):
        start = data.draw(st.integers(0, len(text)))
        end = min(len(text), start + data.draw(st.integers(0, 12)))
        text = text[:start] + data.draw(_PIECES) + text[end:]
    try:
        read = read_book(text)
    except Problem as problem:
        refusal = problem.message
    else:
        refusal = ""
    if refusal:
        assert refusal.endswith(".")
        return
    # What is taken can be written out and read again.
    assert read_book(as_text(read)).entries == read.entries


def test_a_location_keeps_its_windows_and_where_it_lies() -> None:
    windows = [{"name": "north", "width_m": "2.4", "height_ft": "6' 2\"", "count": "3"}]
    data = {"name": "Hall", "windows": windows, "window_gels": ["1/2 CTO"], "lat_deg": "53,55"}
    made = entry("hall", thing="location", data=data)
    assert read_book(file_of(made)).entries[0]["data"] == data
    crooked = copy.deepcopy(made)
    crooked["data"]["windows"][0]["width_m"] = [2.4]
    assert problem_of(file_of(crooked)).field == "book.entries.0.data.windows.0.width_m"
