"""The book's format against the standards it is written in.

JSON Schema draft 2020-12: the `jsonschema` package as the referee. RFC 8785 (JCS): the `rfc8785`
package and the standard's own examples. RFC 8259: JSON as Python's reader takes it.
"""

from __future__ import annotations

import copy
import json
import struct
from typing import Any

import pytest
import rfc8785
from hypothesis import given, settings
from hypothesis import strategies as st
from jsonschema import Draft202012Validator

from evenkelvin.book.canonical import canonical, digest
from evenkelvin.book.schema import Flaw, compile_schema
from evenkelvin.data import load_text

SCHEMA = json.loads(load_text("book.schema.json"))
REFEREE = Draft202012Validator(SCHEMA)
CHECK = compile_schema(SCHEMA)

READING = {
    "stage": "gelled",
    "x": "0,4215",
    "y": 0.4022,
    "illuminance_lx": "941",
    "pack": ["1/2 CTO"],
    "gel_ids": [None, "g1"],
    "target": {"cct_K": 3200, "duv": 0},
    "spectrum": {"wavelengths_nm": [400, 405.0], "values": ["1", 2e-3]},
    "dialled": {"x": 0.4, "list": [1, None, {"deep": True}]},
}
ENTRY = {
    "id": "r1",
    "at": "2026-11-25T19:42:10.123+01:00",
    "thing": "reading",
    "of": "r1",
    "parent": "k",
    "after": ["r0"],
    "data": READING,
    "who": "best boy",
}
BOOK = {"format": "evenkelvin-book", "version": 2, "count": 1, "entries": [ENTRY]}

#: Values that the schema takes in one place and refuses in another.
_VALUES = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-2, 3),
    st.sampled_from([1.0, 1e15, 1.1e15, -1e16, 200_000, 200_001]),
    st.sampled_from(
        ["", "a", "light", "bare", "a b", "x" * 41, "x" * 201, "x" * 4001, ENTRY["at"]]
    ),
    st.sampled_from(["2026-11-25T25:00:00Z", "data:image/png;base64,AAAA", "data:text/html,x"]),
    st.sampled_from([[], {}, ["a"], [1], [[]], {"x": 1}, {"": 1}, {"a-b": 1}, ["a"] * 201]),
    st.sampled_from([{"wavelengths_nm": [1], "values": [2]}, {"wavelengths_nm": [1]}]),
)


def places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    inner = value.items() if isinstance(value, dict) else enumerate(value)
    found = [path]
    for step, item in inner if isinstance(value, (dict, list)) else ():
        found += places(item, (*path, step)) if isinstance(item, (dict, list)) else [(*path, step)]
    return found


_PLACES = [path for path in places(BOOK) if path]
_NAMES = st.sampled_from(
    [*SCHEMA["$defs"]["entry"]["properties"], *SCHEMA["$defs"]["reading"]["properties"]]
    + ["name", "hero", "mains_hz", "sha256", "whatever", "not-a-name"]
)


def mine(value: Any) -> bool:
    try:
        CHECK(value)
    except Flaw:
        return False
    return True


def test_the_schema_file_is_itself_valid() -> None:
    """The meta-schema of JSON Schema 2020-12, by the jsonschema package."""
    Draft202012Validator.check_schema(SCHEMA)


def test_the_plain_book_is_taken_by_both() -> None:
    """The jsonschema package as the referee."""
    assert REFEREE.is_valid(BOOK)
    assert mine(BOOK)


@settings(deadline=None, max_examples=500)
@given(st.data())
def test_the_kernel_takes_and_refuses_what_the_jsonschema_package_does(data: Any) -> None:
    """The jsonschema package as the referee."""
    changed: Any = copy.deepcopy(BOOK)
    for _ in range(data.draw(st.integers(1, 3))):
        path = data.draw(st.sampled_from(_PLACES))
        group: Any = changed
        try:
            for step in path[:-1]:
                group = group[step]
            action = data.draw(st.sampled_from(["set", "remove", "add"]))
            if action == "set":
                group[path[-1]] = copy.deepcopy(data.draw(_VALUES))
            elif action == "remove":
                del group[path[-1]]
            elif isinstance(group, dict):
                group[data.draw(_NAMES)] = copy.deepcopy(data.draw(_VALUES))
        except (KeyError, IndexError, TypeError):
            continue  # An earlier change took the place away.
    if mine(changed) != REFEREE.is_valid(changed):
        raise AssertionError([error.message for error in REFEREE.iter_errors(changed)] or changed)


@pytest.mark.parametrize(
    "thing", ["production", "location", "setup", "light", "reading", "gel", "kit"]
)
@pytest.mark.parametrize(
    "name",
    ["name", "note", "photo", "hero", "mains_hz", "lamp", "stage", "x", "gel_ids", "planned",
     "pieces"],
)  # fmt: skip
@pytest.mark.parametrize("value", [None, 5, "bare", "x" * 300, [], {}, True])
def test_every_field_of_every_thing_is_judged_as_the_referee_does(
    thing: str, name: str, value: Any
) -> None:
    """The jsonschema package as the referee."""
    changed = {**BOOK, "entries": [{**ENTRY, "thing": thing, "data": {name: value}}]}
    assert mine(changed) == REFEREE.is_valid(changed)


# ----------------------------------------------------------------------- RFC 8785, RFC 8259


@pytest.mark.parametrize(
    ("bits", "text"),
    [
        # RFC 8785, appendix B: IEEE 754 patterns and their text.
        ("0000000000000000", "0"),
        ("8000000000000000", "0"),
        ("0000000000000001", "5e-324"),
        ("8000000000000001", "-5e-324"),
        ("7fefffffffffffff", "1.7976931348623157e+308"),
        ("4340000000000000", "9007199254740992"),
        ("4430000000000000", "295147905179352830000"),
        ("44b52d02c7e14af5", "9.999999999999997e+22"),
        ("44b52d02c7e14af6", "1e+23"),
        ("444b1ae4d6e2ef4f", "999999999999999900000"),
        ("444b1ae4d6e2ef50", "1e+21"),
        ("3eb0c6f7a0b5ed8d", "0.000001"),
        ("3eb0c6f7a0b5ed8c", "9.999999999999997e-7"),
        ("41b3de4355555553", "333333333.3333332"),
        ("becbf647612f3696", "-0.0000033333333333333333"),
    ],
)
def test_numbers_are_spelled_as_appendix_b_of_rfc_8785(bits: str, text: str) -> None:
    (value,) = struct.unpack(">d", bytes.fromhex(bits))
    assert canonical(value) == text
    assert canonical([value]) == f"[{text}]"


def test_the_example_of_rfc_8785_section_3_2_2() -> None:
    """RFC 8785, section 3.2.2."""
    given_text = (
        r'{"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],'
        r'"string": "\u20ac$\u000F\u000aA\u0027\u0042\u0022\u005c\\\"\/",'
        r'"literals": [null, true, false]}'
    )
    assert canonical(json.loads(given_text)) == (
        '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
        r'"string":"€$\u000f\nA' + "'" + r'B\"\\\\\"/"}'
    )


_JSON = st.recursive(
    st.one_of(
        st.none(),
        st.booleans(),
        st.integers(-(2**53) + 1, 2**53 - 1),
        st.floats(allow_nan=False, allow_infinity=False),
        st.floats(-1e-4, 1e-4),
        st.text(),
        st.sampled_from(["1e-05", '"1.0,', "[1.0]", ":1e-07}", "\\", '\\"', "\x7f\x1f\u2028"]),
    ),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4),
        st.dictionaries(st.text(st.characters(max_codepoint=126), max_size=5), inner, max_size=4),
    ),
    max_leaves=12,
)


@settings(deadline=None, max_examples=500)
@given(_JSON)
def test_canonical_text_is_that_of_the_rfc8785_package(plain: Any) -> None:
    text = canonical(plain)
    assert text.encode("utf-8") == rfc8785.dumps(plain)
    assert canonical(json.loads(text)) == text


def test_the_hash_is_that_of_fips_180_4() -> None:
    """FIPS 180-4."""
    # NIST's example for SHA-256, one block: the message 'abc'.
    expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert digest("abc") == expected
