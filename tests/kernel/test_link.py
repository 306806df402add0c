"""A link holds a book whole, or is refused with a sentence; a series joins in any order."""

from __future__ import annotations

import base64
import contextlib
import random
import zlib
from hashlib import sha256
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.book import link
from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import FORMAT, VERSION, Book, Entry, merge
from evenkelvin.book.meaning import part_of
from evenkelvin.book.selected import hang_cards
from evenkelvin.problem import Problem
from examples import examples


def entry(id_: str, name: str = "key") -> dict[str, Any]:
    return {
        "id": id_,
        "at": "2026-11-25T19:42:10.123+01:00",
        "thing": "light",
        "of": id_,
        "parent": None,
        "after": [],
        "data": {"name": name},
    }


BOOK = merge([entry(f"light-{n}", f"batten {n} — north, “tired”") for n in range(40)])
LINK = link.make_link(BOOK)


def sealed(raw: bytes, scheme: str = "d") -> str:
    """A link as someone could make it by hand, with a right check."""
    before = link.WORDS if scheme == "z" else b""
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15, zdict=before)
    body = raw if scheme == "j" else squeezer.compress(raw) + squeezer.flush()
    check = base64.urlsafe_b64encode(sha256(raw).digest()).decode()[:8]
    return scheme + check + base64.urlsafe_b64encode(body).decode().rstrip("=")


def complete_set() -> Book:
    """A production, a location, a setup, and six lights with a reading each."""
    chance = random.Random(20261126)

    def made(thing: str, parent: str | None, minute: int, **data: Any) -> dict[str, Any]:
        id_ = base64.urlsafe_b64encode(chance.randbytes(16)).decode().rstrip("=")
        at = (
            f"2026-11-26T19:{minute:02}:{chance.randrange(60):02}.{chance.randrange(1000):03}+01:00"
        )
        return {
            "id": id_, "at": at, "thing": thing, "of": id_, "parent": parent, "after": [],
            "data": data,
        }  # fmt: skip

    above = [made("production", None, 1, name="The Night Ferry")]
    above.append(made("location", above[-1]["id"], 2, name="Ticket hall"))
    above.append(made("setup", above[-1]["id"], 3, name="The last sailing"))
    entries = list(above)
    for n, name in enumerate(("key", "fill", "batten 1", "batten 2", "practical", "window"), 1):
        light = made("light", above[-1]["id"], 10 + n, name=name, lamp="led", order=n)
        reading = made(
            "reading", light["id"], 20 + n, x=f"{chance.uniform(0.3, 0.45):.4f}",
            y=f"{chance.uniform(0.3, 0.41):.4f}", illuminance_lx=str(chance.randrange(20, 900)),
            lamp="led", pack=["1/4 CTO"], stage="gelled", target={"cct_K": "4300", "duv": "0"},
        )  # fmt: skip
        entries += [light, reading]
    return merge(entries)


def refusal(text: str) -> str:
    with pytest.raises(Problem) as caught:
        link.open_link(text)
    assert caught.value.field.startswith("link")
    return caught.value.message


def test_a_book_comes_out_of_its_link_the_same() -> None:
    assert link.open_link(LINK) == BOOK
    assert LINK.startswith("z")
    assert len(LINK) < 1500


def test_a_link_of_the_old_form_still_opens() -> None:
    raw = canonical({"format": FORMAT, "version": VERSION, "entries": list(BOOK.entries)})
    assert link.open_link(sealed(raw.encode())) == BOOK


def test_six_lights_without_spectra_fit_two_codes() -> None:
    book = complete_set()
    assert len(link.split_link(link.make_link(book))) <= 2


#: Characters that one code holds on a phone 390 px wide, beside an address of 40: version 23 at
#: error correction L holds 1091 bytes (ISO/IEC 18004).
ON_A_PHONE = 1091 - 40


def planned_set() -> tuple[Book, str]:
    """The set above with a plan kept, other gels on each light, and the id of its setup."""
    book = complete_set()
    gels = [
        ["1/2 CTO", "1/4 minus green"],
        ["1/4 CTB"],
        ["full CTO", "1/8 plus green"],
        ["1/8 CTO"],
        ["3/4 CTB", "1/2 minus green"],
        ["1/2 CTB", "1/4 plus green"],
    ]
    chance = random.Random(7)
    entries: list[Entry] = []
    setup = ""
    white = {"cct_K": "4300", "duv": "0"}
    for one in book.entries:
        data: dict[str, Any]
        if one["thing"] == "setup":
            setup = one["of"]
            data = {"plan": {
                "at": one["at"], "white": white, "words": "9 pieces, 0.7 stop", "exact": True,
                "at_least_stops": 0.5, "stops_lost": 0.7, "pieces": 9, "out": [],
                "reached": {"by": "balance", "tolerance": "normal", "stock": [], "kit": None},
            }}  # fmt: skip
        elif one["thing"] == "light":
            own = gels[one["data"]["order"] - 1]
            (reading,) = [each for each in book.entries if each["parent"] == one["of"]]
            data = {"planned": {
                "does": "gel", "words": f"hang {' + '.join(own)}", "gels": own, "dial": None,
                "lands": {"x": 0.3672, "y": 0.3691, "cct_K": chance.randrange(4200, 4400),
                          "duv": chance.randrange(-9, 9) / 1e4},
                "steps": chance.randrange(30) / 10, "verdict": "holds", "promise": "holds",
                "stops_lost": chance.randrange(10) / 10, "from": reading["of"],
            }}  # fmt: skip
        else:
            if one["thing"] == "reading":
                one["data"] |= {"place": f"{chance.choice('NSEW')} wall", "note": "hazer on"}
            continue
        id_ = base64.urlsafe_b64encode(chance.randbytes(16)).decode().rstrip("=")
        data = {**one["data"], **data}
        entries.append({**one, "id": id_, "after": [one["id"]], "data": data})
    return merge(book.entries, entries), setup


def test_six_lights_with_a_plan_fit_two_codes_and_their_hang_cards_one() -> None:
    book, setup = planned_set()
    part = part_of(book.entries, setup)
    whole = link.make_link(part)
    assert len(link.split_link(whole, ON_A_PHONE)) == link.codes_for(len(whole), ON_A_PHONE) == 2
    cards = link.make_link(hang_cards(part.entries))
    assert len(cards) <= ON_A_PHONE
    assert link.codes_for(len(cards), ON_A_PHONE) == 1


def test_hang_cards_say_what_hangs_and_what_shall_and_nothing_private() -> None:
    book, setup = planned_set()
    part = part_of(book.entries, setup)
    cards = hang_cards(part.entries)
    assert link.open_link(link.make_link(cards)) == cards
    kinds = [entry["thing"] for entry in cards.entries]
    assert (kinds.count("light"), kinds.count("reading"), kinds.count("setup")) == (6, 6, 1)
    readings = {each["of"]: each for each in cards.entries if each["thing"] == "reading"}
    for light in (each for each in cards.entries if each["thing"] == "light"):
        plan = light["data"]["planned"]
        assert plan["words"].startswith("hang ")
        assert readings[plan["from"]]["parent"] == light["of"]
    assert all(
        each["data"]["pack"] == ["1/4 CTO"] and each["data"]["place"] for each in readings.values()
    )
    assert "hazer" not in canonical(list(cards.entries))
    # A copy is the same whenever it is made, and takes nothing from the book.
    assert hang_cards(part.entries) == cards
    assert not {each["of"] for each in cards.entries} & {each["of"] for each in book.entries}


def test_hang_cards_of_a_spectrum_hold_its_x_y() -> None:
    book, setup = planned_set()
    nm = list(range(380, 785, 5))
    spectrum = {"wavelengths_nm": nm, "values": [1.0] * len(nm)}
    for one in book.entries:
        if one["thing"] == "reading":
            for name in ("x", "y"):
                del one["data"][name]
            one["data"]["spectrum"] = spectrum
    cards = hang_cards(part_of(book.entries, setup).entries)
    (x, y), *_ = {
        (each["data"]["x"], each["data"]["y"])
        for each in cards.entries
        if each["thing"] == "reading"
    }
    # CIE 15: illuminant E.
    assert (float(x), float(y)) == pytest.approx((1 / 3, 1 / 3), abs=2e-4)


def test_the_words_that_links_leave_out_are_those_of_all_links_before() -> None:
    # Another text would make every link that was sent unreadable.
    assert sha256(link.WORDS).hexdigest().startswith("d72175c180a39fcc")


def test_an_empty_book_fits_a_link() -> None:
    assert link.open_link(link.make_link(Book(()))).entries == ()


@pytest.mark.parametrize(
    "around", ["https://host.example/app/#{}", "http://h/#/shared/{}", "x?b={}", "  {}\n", "{}"]
)
def test_the_address_before_it_does_not_matter(around: str) -> None:
    assert link.open_link(around.format(LINK)) == BOOK


def test_line_breaks_that_a_messenger_put_in_do_not_matter() -> None:
    wrapped = "\r\n".join(LINK[at : at + 70] for at in range(0, len(LINK), 70))
    assert link.open_link(wrapped) == BOOK


def test_the_same_book_always_gives_the_same_link() -> None:
    assert link.make_link(merge(reversed(BOOK.entries))) == LINK


@pytest.mark.parametrize("length", [1, 5, 9, 10, 11, 50, len(LINK) - 1])
def test_a_cut_link_is_refused(length: int) -> None:
    assert refusal(LINK[:length]).endswith("Ask for it again, or for the file.")


def test_every_single_changed_character_is_noticed() -> None:
    rng = random.Random(4)
    alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
    for place in range(len(LINK)):
        other = rng.choice(alphabet.replace(LINK[place], ""))
        changed = LINK[:place] + other + LINK[place + 1 :]
        # The last bits may be padding that says nothing.
        if place < len(LINK) - 3:
            refusal(changed)
        else:
            with contextlib.suppress(Problem):
                assert link.open_link(changed) == BOOK


@settings(deadline=None, max_examples=examples(300))
@given(st.one_of(st.text(max_size=60), st.from_regex(r"\A[zdjp][A-Za-z0-9_-]{0,80}\Z")))
def test_whatever_else_is_pasted_is_refused_with_a_sentence(text: str) -> None:
    assert refusal(text).endswith((".", "too."))


@settings(deadline=None, max_examples=examples(300))
@given(st.binary(max_size=80), st.sampled_from("zdj"))
def test_a_sealed_body_that_is_no_book_is_refused(raw: bytes, scheme: str) -> None:
    assert refusal(sealed(raw, scheme))


def test_a_small_link_that_unfolds_to_gigabytes_is_refused() -> None:
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15)
    bomb = b"".join(squeezer.compress(bytes(10_000_000)) for _ in range(20)) + squeezer.flush()
    text = "dAAAAAAAA" + base64.urlsafe_b64encode(bomb).decode().rstrip("=")
    assert "unfolds to more than" in refusal(text)


@pytest.mark.parametrize("size", [15_000_000, 16_000_001])
def test_a_link_of_sheer_depth_or_size_is_refused(size: int) -> None:
    assert refusal(sealed(b"[" * size))
    assert refusal(sealed(b'{"a":' * 100_000))


def test_something_added_behind_is_refused() -> None:
    raw = base64.urlsafe_b64decode(LINK[9:] + "=" * (-len(LINK[9:]) % 4)) + b"more"
    text = LINK[:9] + base64.urlsafe_b64encode(raw).decode().rstrip("=")
    assert "added" in refusal(text)


def test_a_book_of_a_newer_version_asks_for_an_update() -> None:
    raw = b'{"entries":[],"format":"evenkelvin-book","version":3}'
    assert "newer Evenkelvin" in refusal(sealed(raw))


def test_a_flaw_inside_is_named_by_entry() -> None:
    raw = b'{"entries":[{"id":1}],"format":"evenkelvin-book","version":1}'
    with pytest.raises(Problem, match="Entry 1") as caught:
        link.open_link(sealed(raw))
    assert caught.value.field.startswith("link.entries.0")


def test_a_link_too_long_is_refused_both_ways(monkeypatch: pytest.MonkeyPatch) -> None:
    assert "longer than" in refusal("d" + "A" * 3_000_000)
    monkeypatch.setattr(link, "LONGEST_LINK", 100)
    with pytest.raises(Problem, match="too large for a link"):
        link.make_link(BOOK)


# ------------------------------------------------------------------------------------- series


@settings(deadline=None, max_examples=examples(50))
@given(st.integers(100, 3000), st.randoms(use_true_random=False))
def test_a_series_joins_in_any_order_with_repeats(size: int, rng: random.Random) -> None:
    parts = link.split_link(LINK, size)
    assert all(len(part) <= size for part in parts)
    scanned = [*parts, *rng.choices(parts, k=3)]
    rng.shuffle(scanned)
    series = link.join_parts(f"https://host.example/#{part}" for part in scanned)
    assert (series.total, series.missing, series.link) == (len(parts), (), LINK)


def test_missing_codes_are_named() -> None:
    parts = link.split_link(LINK, 200)
    series = link.join_parts([parts[3], parts[0]])
    assert series.have == (1, 4)
    assert series.missing == tuple(n for n in range(1, len(parts) + 1) if n not in (1, 4))
    assert series.link is None


def test_a_code_alone_is_not_a_link() -> None:
    assert "one code of a series" in refusal(link.split_link(LINK, 200)[0])


@pytest.mark.parametrize(
    ("spoil", "words"),
    [
        (lambda parts, other: [parts[0], other[1]], "another series"),
        (lambda parts, other: [parts[0], "hello"], "not a code"),
        (lambda parts, other: [parts[0], parts[0][:-1] + "!"], "not a code"),
        (lambda parts, other: [parts[0], "p9.2.AAAAAAAA.xx"], "number 9 of 2"),
        (lambda parts, other: [parts[0], parts[0] + "A"], "read twice and differs"),
        (lambda parts, other: [], "No code"),
    ],
)
def test_what_does_not_belong_to_the_series_is_named(spoil: Any, words: str) -> None:
    parts = link.split_link(LINK, 200)
    other = link.split_link(link.make_link(merge([entry("x")])), 60)
    with pytest.raises(Problem, match=words):
        link.join_parts(spoil(parts, other))


def test_codes_of_two_series_with_one_check_do_not_pass_for_a_book() -> None:
    parts = link.split_link(LINK, 200)
    forged = [parts[0], *(part[:-4] + "AAAA" for part in parts[1:])]
    joined = link.join_parts(forged).link
    assert joined is not None
    assert refusal(joined)


def test_a_book_that_would_take_too_many_codes_is_refused() -> None:
    with pytest.raises(Problem, match="at most 99"):
        link.split_link("z" + "A" * 100_000)
