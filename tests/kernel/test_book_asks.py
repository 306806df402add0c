"""What the desk answers about a book, on the invented shoot and on what is wrong."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer, answer_json
from examples import examples

AT = "2026-10-27T16:00:00+01:00"
T32 = {"cct_K": "3200", "duv": "0"}


def entry(id_: str, thing: str, parent: str | None, at: str = AT, **data: Any) -> dict[str, Any]:
    return {
        "id": id_, "at": at, "thing": thing, "of": id_, "parent": parent, "after": [], "data": data,
    }  # fmt: skip


def file_of(*entries: dict[str, Any]) -> dict[str, Any]:
    return {"format": "evenkelvin-book", "version": 2, "entries": list(entries)}


BOOK = file_of(
    entry("p", "production", None, name="The Night Ferry"),
    entry("l", "location", "p", name="Car deck", mains_hz=50, place="berth 2"),
    entry("s", "setup", "l", name="3 Between the cars", hero="h", note="night"),
    entry("h", "light", "s", name="HMI through the doorway", lamp="hmi"),
    entry("b", "light", "s", "2026-10-27T16:30:00+01:00", name="bounce", lamp="led", role="fill"),
    entry("r1", "reading", "h", x="0.3302", y="0.3441", illuminance_lx="220", stage="bare",
          lamp="hmi", target=T32),
    entry("r2", "reading", "h", "2026-10-27T17:00:00+01:00", x="0.4214", y="0.4022",
          illuminance_lx="110", stage="gelled", lamp="hmi", target=T32, pack=["full CTO"]),
    entry("r3", "reading", "h", "2026-10-27T18:30:00+01:00", x="0.4255", y="0.4035",
          illuminance_lx="55", stage="re-checked", target=T32, pack=["full CTO"], note="warm"),
    entry("r4", "reading", "b", cct_K="3300", duv="-0.001", illuminance_lx="27.5"),
    entry("r5", "reading", "b", "2026-10-27T19:00:00+01:00", illuminance_lx="30", note="lux only"),
)  # fmt: skip


def problem_of(**request: Any) -> dict[str, Any]:
    problem: dict[str, Any] = answer(request)["problem"]
    return problem


def test_a_book_is_counted_and_hashed_alike_as_text_and_as_data() -> None:
    data = answer({"ask": "book_check", "book": BOOK})
    text = answer({"ask": "book_check", "book": json.dumps(BOOK, indent=2)})
    assert data == text
    assert (data["count"], data["version"], data["migrated_from"]) == (10, 2, None)
    assert data["things"] == {
        "production": 1, "location": 1, "setup": 1, "light": 2, "reading": 5, "surface": 0,
        "gel": 0, "kit": 0,
    }  # fmt: skip


def test_an_export_reads_back_with_the_same_count_and_hash() -> None:
    exported = answer({"ask": "book_check", "book": BOOK, "give": "text"})
    again = answer({"ask": "book_check", "book": exported["text"], "give": "book"})
    assert (again["count"], again["sha256"]) == (exported["count"], exported["sha256"])
    assert again["book"]["sha256"] == exported["sha256"]


def test_a_flaw_in_a_book_is_a_problem_with_its_place() -> None:
    broken = file_of(entry("a", "light", None, name=5))
    assert problem_of(ask="book_check", book=broken)["field"] == "book.entries.0.data.name"
    assert "There is no book here" in problem_of(ask="book_check")["message"]
    assert problem_of(ask="book_check", book="{\n\n")["line"] == 3


def test_merging_says_what_is_new_and_what_changed() -> None:
    mine = file_of(entry("a", "light", None, name="key"), entry("b", "light", None, name="fill"))
    theirs = file_of(entry("c", "light", None, name="rim"), entry("a", "light", None, name="hero"))
    found = answer({"ask": "book_merge", "books": [mine, theirs]})
    (twin,) = (each for each in found["book"]["entries"] if "twin" in each)
    assert sorted(found["new"]) == sorted(["c", twin["id"]])
    assert found["changed"] == ["a"]
    assert found["count"] == 4
    swapped = answer({"ask": "book_merge", "books": [theirs, mine]})
    assert swapped["sha256"] == found["sha256"]
    assert swapped["changed"] == []
    assert problem_of(ask="book_merge", books=[])["field"] == "books"
    assert problem_of(ask="book_merge", books=[mine, "x"])["field"] == "books.1"


def test_the_table_is_given_for_the_whole_or_a_part() -> None:
    whole = answer({"ask": "book_csv", "book": BOOK, "style": "semicolon"})
    part = answer({"ask": "book_csv", "book": BOOK, "of": "b"})
    assert whole["text"].count("\r\n") == 6
    assert part["text"].count("\r\n") == 3
    assert ";0,4214;0,4022;" in whole["text"]
    assert "style" in problem_of(ask="book_csv", book=BOOK, style="tabs")["message"]
    assert problem_of(ask="book_csv", book=BOOK, of="nowhere")["field"] == "of"


def test_a_setup_travels_in_a_link() -> None:
    made = answer({"ask": "book_link", "book": BOOK, "of": "s"})
    assert made["title"] == "The Night Ferry · Car deck · 3 Between the cars"
    opened = answer({"ask": "open_link", "link": f"https://host.example/app/#{made['link']}"})
    assert (opened["title"], opened["sha256"]) == (made["title"], made["sha256"])
    assert len(opened["book"]["entries"]) == opened["count"] == 10
    assert problem_of(ask="open_link", link=made["link"][:-9])["field"] == "link"
    assert "paste the whole address" in problem_of(ask="open_link", link=" ")["message"]


def test_a_long_link_comes_with_a_warning() -> None:
    many = [entry(f"{n:08x}{n * 7919:08x}", "light", None, name=f"{n}") for n in range(2000)]
    assert (
        "some messengers cut it"
        in answer({"ask": "book_link", "book": file_of(*many)})["warnings"][0]
    )


def test_a_book_travels_in_a_series_of_codes() -> None:
    made = answer({"ask": "book_parts", "book": BOOK, "size": 150})
    assert made["total"] == len(made["parts"]) > 2
    some = answer({"ask": "join_parts", "parts": [made["parts"][2], made["parts"][0]]})
    assert some["have"] == [1, 3]
    assert 2 in some["missing"]
    assert some["words"].startswith(f"2 of {made['total']} scanned; still missing: 2")
    whole = answer({"ask": "join_parts", "parts": [*reversed(made["parts"]), made["parts"][0]]})
    assert whole["missing"] == []
    assert whole["sha256"] == answer({"ask": "book_check", "book": BOOK})["sha256"]
    assert problem_of(ask="join_parts", parts=["x"])["field"] == "parts.0"


def test_what_fits_one_code_is_a_plain_link() -> None:
    (only,) = answer({"ask": "book_parts", "book": file_of(), "size": 600})["parts"]
    assert answer({"ask": "open_link", "link": only})["count"] == 0


def test_a_light_is_followed_since_it_was_first_read_with_the_same_gels() -> None:
    found = answer({"ask": "since", "book": BOOK, "lights": ["h"], "tolerance": "tight"})
    bare, gelled = found["series"]
    assert (bare["pack"], gelled["pack"]) == ([], ["full CTO"])
    then, now = gelled["points"]
    assert (then["drift"]["mired"], then["drift"]["stops"]) == (0.0, 0.0)
    assert now["hours"] == 1.5
    assert now["drift"]["stops"] == -1.0
    assert now["drift"]["mired"] == pytest.approx(now["mired"] - then["mired"])
    assert now["drift"]["mired"] > 0
    assert now["drift"]["verdict"] == "near"
    assert "warmer" in now["drift"]["words"]
    assert now["drift"]["words"].endswith("1.0 stop darker")


def test_readings_are_followed_without_a_book() -> None:
    readings = [
        {"at": "2026-11-18T10:00:00+01:00", "cct_K": "5600", "duv": "0", "exposure_lx_s": 10},
        {"at": "2026-10-28T10:00:00Z", "cct_K": "5500", "duv": "0,004", "exposure_lx_s": 5},
        {"at": "2026-10-28T11:00:00Z", "x": "oops", "y": ""},
    ]
    (series,) = answer({"ask": "since", "readings": readings})["series"]
    first, odd, last = series["points"]
    assert first["cct_K"] == pytest.approx(5500, abs=0.1)
    assert odd["drift"] == {
        "mired": None, "duv": None, "delta_uv": None, "steps": None, "verdict": None,
        "stops": None, "words": "nothing to compare",
    }  # fmt: skip
    assert last["hours"] == pytest.approx(21 * 24 - 1)
    assert last["drift"]["mired"] == pytest.approx(1e6 / 5600 - 1e6 / 5500, abs=1e-3)
    assert last["drift"]["duv"] == pytest.approx(-0.004, abs=1e-6)
    assert last["drift"]["stops"] == 1.0
    assert "magenta" in last["drift"]["words"]


def since(*readings: tuple[int, int, float | None]) -> dict[str, Any]:
    """One light over a day: hour, CCT (0 where none was read) and lux."""
    plain = [
        {"at": f"2026-10-28T{hour:02d}:00:00+01:00", "illuminance_lx": lux}
        | ({"cct_K": kelvin, "duv": 0} if kelvin else {})
        for hour, kelvin, lux in readings
    ]
    (series,) = answer({"ask": "since", "readings": plain})["series"]
    found: dict[str, Any] = series
    return found


def test_a_day_is_told_by_where_it_went_farthest() -> None:
    day = since((7, 5600, 100), (12, 4300, 2800), (16, 5570, 102))
    assert day["greatest"] == [1]
    drift = day["points"][1]["drift"]
    assert drift["words"].startswith("54 mired warmer")
    assert drift["words"].endswith("4.8 stops brighter")
    assert drift["verdict"] == "out"


def test_colour_and_light_may_go_farthest_at_different_times() -> None:
    assert since((7, 5600, 100), (9, 5000, 90), (12, 5500, 900), (16, 5600, 100))["greatest"] == [
        1, 2,
    ]  # fmt: skip
    assert since((7, 5600, 100))["greatest"] == []
    assert since((7, 0, 100), (8, 0, 50), (9, 0, 90))["greatest"] == [1]
    assert since((7, 5600, None), (8, 5000, None))["greatest"] == [1]


@settings(deadline=None, max_examples=examples(50))
@given(
    st.lists(
        st.tuples(st.sampled_from([0, 2700, 3000, 4300, 5600, 7500]), st.floats(1, 20_000)),
        min_size=2,
        max_size=9,
    )
)
def test_no_reading_lies_farther_than_those_in_the_headline(
    drawn: list[tuple[int, float]],
) -> None:
    series = since(*((7 + hour, kelvin, lux) for hour, (kelvin, lux) in enumerate(drawn)))
    for name in ("steps", "stops"):
        known = [
            abs(point["drift"][name])
            for point in series["points"]
            if point["drift"][name] is not None
        ]
        if len(known) > 1:
            told = [series["points"][place]["drift"][name] for place in series["greatest"]]
            assert max(abs(one) for one in told if one is not None) == max(known)


@pytest.mark.parametrize(
    ("request_", "field"),
    [
        ({"readings": []}, "readings"),
        ({"readings": [{"x": 0.3, "y": 0.3}]}, "readings.0.at"),
        ({"readings": [{"at": "yesterday"}]}, "readings.0.at"),
        ({"readings": [{"at": "2026-11-18T10:00:00"}]}, "readings.0.at"),
        ({"book": BOOK, "lights": []}, "lights"),
        ({"book": BOOK, "lights": ["s"]}, "of"),
    ],
)
def test_a_drift_that_cannot_be_told_names_the_field(request_: Any, field: str) -> None:
    assert problem_of(ask="since", **request_)["field"] == field


def test_a_setup_becomes_the_target_of_another_day() -> None:
    found = answer({"ask": "continuity", "book": BOOK, "setup": "s"})
    assert found["target"] == T32
    assert found["words"] == "the target of its latest reading"
    hero, bounce = found["lights"]
    assert hero["target"] == {"x": 0.4255, "y": 0.4035}
    assert (hero["stage"], hero["pack"], hero["lamp"]) == ("re-checked", ["full CTO"], "hmi")
    assert bounce["cct_K"] == pytest.approx(3300, abs=0.1)
    assert "problem" not in answer({"ask": "fix", "reading": {"x": 0.33, "y": 0.34, "lamp": "hmi"},
                                    "target": hero["target"]})  # fmt: skip


def test_without_a_target_the_hero_is_the_white() -> None:
    plain = file_of(
        entry("s", "setup", None, name="1", hero="k"),
        entry("k", "light", "s", name="key"),
        entry("r", "reading", "k", x="0.3457", y="0.3585", target={"cct_K": "900"}),
    )
    found = answer({"ask": "continuity", "book": plain, "setup": "s"})
    assert found["target"] == {"x": 0.3457, "y": 0.3585}
    bare = file_of(entry("s", "setup", None, name="1"))
    assert "no white" in problem_of(ask="continuity", book=bare, setup="s")["message"]


def test_a_book_in_slices_is_the_whole_book() -> None:
    entries = [entry(f"p{n:04}", "production", None, name=f"{n}") for n in range(1234)]
    sliced = answer({"ask": "book_check", "book": file_of(*entries), "give": "slices"})
    assert len(sliced["slices"]) == 3
    assert [each for text in sliced["slices"] for each in json.loads(text)] == entries
    whole = answer({"ask": "book_check", "book": file_of(*entries)})
    assert {**sliced, "slices": 0} == {**whole, "slices": 0}


def test_the_report_says_what_hangs_and_what_to_mind() -> None:
    report = answer({"ask": "report", "book": BOOK, "of": "l"})
    assert (report["thing"], report["name"], report["path"]) == (
        "location", "Car deck", ["The Night Ferry"],
    )  # fmt: skip
    assert report["mains_hz"] == 50
    assert report["gels"] == [
        {
            "name": "full CTO",
            "pieces": 1,
            "lights": ["HMI through the doorway"],
            "measured": False,
        }
    ]
    (setup,) = report["setups"]
    assert setup["path"] == ["The Night Ferry", "Car deck"]
    assert (setup["first"], setup["last"]) == (AT, "2026-10-27T19:00:00+01:00")
    hero, bounce = setup["slips"]
    assert hero["hero"]
    assert hero["hangs"] == ["full CTO"]
    assert [each["stage"] for each in hero["readings"]] == ["bare", "gelled", "re-checked"]
    assert hero["offset"]["mired"] == pytest.approx(hero["readings"][-1]["mired"] - 312.5, abs=1e-3)
    assert bounce["stops_to_hero"] == pytest.approx(-0.874, abs=1e-3)
    assert bounce["readings"][-1]["x"] is None
    assert any("UV" in words for words in report["cautions"])
    assert any("local code" in words for words in report["cautions"])
    assert "problem" not in answer(setup["field"])
    whole = answer({"ask": "report", "book": BOOK, "of": "p"})
    assert whole["setups"] == report["setups"]


def test_a_long_report_comes_in_parts_that_add_up() -> None:
    numbers = range(4)
    book = file_of(
        entry("l", "location", None, name="Hall"),
        *(entry(f"s{n}", "setup", "l", f"2026-10-2{n}T09:00:00Z", name=f"{n}") for n in numbers),
        *(entry(f"h{n}", "light", f"s{n}", name="key", lamp="led") for n in numbers),
        *(
            entry(
                f"r{n}{k}", "reading", f"h{n}", cct_K="3300", duv="0", target=T32, pack=["ND 0.3"]
            )
            for n in numbers
            for k in range(3)
        ),
    )
    whole = answer({"ask": "report", "book": book, "of": "l"})
    parted = answer({"ask": "report", "book": book, "of": "l", "most": 4})
    # The second setup goes beyond four readings; it is told whole.
    assert parted["setups"][:2] == whole["setups"][:2]
    assert parted["setups"][2:] == [
        {"id": f"s{n}", "name": f"{n}", "path": ["Hall"], "readings": 3} for n in (2, 3)
    ]
    assert {**parted, "setups": 0} == {**whole, "setups": 0}
    for n in (2, 3):
        (alone,) = answer({"ask": "report", "book": book, "of": f"s{n}"})["setups"]
        assert alone == whole["setups"][n]


@pytest.mark.parametrize("most", [0, 1.5, "many"])
def test_a_part_of_a_report_that_cannot_be_made_is_refused(most: Any) -> None:
    assert problem_of(ask="report", book=BOOK, of="l", most=most)["field"] == "most"
    assert problem_of(ask="report", book=BOOK, of="h")["field"] == "of"


def amber(id_: str, passes: float, who: str, name: str = "amber") -> dict[str, Any]:
    curve = {"wavelengths_nm": [400, 700], "transmittance": [0.1, passes]}
    return {**entry(id_, "gel", None, name=name, **curve), "who": who}


def test_a_report_tells_measured_gels_of_one_name_apart() -> None:
    def light(id_: str, pack: list[str], ids: list[Any]) -> list[dict[str, Any]]:
        reading = {"cct_K": "3300", "duv": "0", "pack": pack, "gel_ids": ids}
        return [
            entry(id_, "light", "s", name=id_),
            entry(f"r{id_}", "reading", id_, **reading),
        ]

    book = file_of(
        entry("p", "production", None, name="The Night Ferry"),
        entry("l", "location", "p", name="Hall", windows=[{"width_m": 1, "height_m": 2}],
              window_gels=["amber"], window_gel_ids=["g1"]),
        entry("s", "setup", "l", name="wide"),
        *light("key", ["amber", "full CTO"], ["g1", None]),
        *light("fill", ["amber"], ["g2"]),
        *light("rim", ["rust"], ["g3"]),
        # The same film, measured once and written down twice.
        *light("kicker", ["rust"], ["g4"]),
        amber("g1", 0.5, "gaffer"),
        amber("g2", 0.8, "best boy"),
        amber("g3", 0.7, "gaffer", "rust"),
        amber("g4", 0.7, "best boy", "rust"),
    )  # fmt: skip
    report = answer({"ask": "report", "book": book, "of": "s"})
    mine, theirs = "amber (gaffer, 2026-10-27 16:00)", "amber (best boy, 2026-10-27 16:00)"
    assert {gel["name"]: (gel["lights"], gel["measured"]) for gel in report["gels"]} == {
        mine: (["key"], True),
        theirs: (["fill"], True),
        "full CTO": (["key"], False),
        "rust": (["kicker", "rim"], True),
    }
    slips = {slip["name"]: slip for slip in report["setups"][0]["slips"]}
    assert slips["key"]["hangs"] == [mine, "full CTO"]
    assert slips["fill"]["readings"][0]["pack"] == [theirs]
    assert report["windows"][0]["gels"] == [mine]
    table = answer({"ask": "book_csv", "book": book})["text"]
    assert f"{mine} + full CTO" in table
    assert theirs in table
    assert "rust" in table
    assert "rust (" not in table
    # A part of it tells them apart as the whole does.
    assert report["tell_apart"] == ["amber"]
    one = {**book, "entries": [e for e in book["entries"] if e["id"] not in ("fill", "rfill")]}
    part = answer({"ask": "report", "book": one, "of": "s", "tell_apart": ["amber"]})
    assert {gel["name"] for gel in part["gels"]} == {mine, "full CTO", "rust"}
    # Where only one of them hangs, its name says enough.
    alone = answer({"ask": "report", "book": {**book, "entries": book["entries"][:5] + [
        amber("g1", 0.5, "gaffer")]}, "of": "s"})  # fmt: skip
    assert [gel["name"] for gel in alone["gels"]] == ["amber", "full CTO"]


def test_a_setup_in_a_link_brings_the_gels_it_was_read_through() -> None:
    gelled = entry("r9", "reading", "b", cct_K="3300", duv="0", pack=["amber"], gel_ids=["g1"])
    entries = [*BOOK["entries"], gelled, amber("g1", 0.5, "gaffer"), amber("g2", 0.9, "gaffer")]
    made = answer({"ask": "book_link", "book": file_of(*entries), "of": "s"})
    opened = answer({"ask": "open_link", "link": made["link"]})
    assert opened["things"]["gel"] == 1
    gels = [each for each in opened["book"]["entries"] if each["thing"] == "gel"]
    assert gels == [amber("g1", 0.5, "gaffer")]
    asked = {"ask": "book_parts", "book": file_of(*entries), "of": "s", "size": 200}
    codes = answer(asked)["parts"]
    assert answer({"ask": "join_parts", "parts": codes})["sha256"] == opened["sha256"]


def test_a_report_of_an_empty_location_is_empty_but_whole() -> None:
    report = answer({"ask": "report", "book": file_of(entry("l", "location", None)), "of": "l"})
    assert (report["setups"], report["gels"], report["name"]) == ([], [], "unnamed location")
    assert report["cautions"]


def test_every_answer_is_json() -> None:
    for request in (
        {"ask": "report", "book": BOOK, "of": "s"},
        {"ask": "since", "book": BOOK, "lights": ["b", "h"]},
        {"ask": "book_csv", "book": BOOK},
    ):
        assert "problem" not in json.loads(answer_json(json.dumps(request)))


def test_many_readings_are_judged_each_against_its_own_white() -> None:
    readings = [
        {"cct_K": "3200", "target": T32},
        {"x": "0,4300", "y": "0.4050", "target": T32},
        {"cct_K": "5600", "target": {"x": "0.4234", "y": "0.3990"}},
        {"x": "4255", "y": "0.4", "target": T32},
        {"x": "0.4", "y": "0.4"},
    ]
    judged = answer({"ask": "judge", "readings": readings, "tolerance": "tight"})
    assert judged["verdicts"] == ["holds", "near", "out", None, None]
    for reading, verdict in zip(readings[:3], judged["verdicts"], strict=False):
        white = {key: value for key, value in reading.items() if key != "target"}
        fix = answer(
            {"ask": "fix", "reading": white, "target": reading["target"], "tolerance": "tight"}
        )
        assert fix["verdict"] == verdict


def grey_of(reading: dict[str, Any], white: dict[str, Any]) -> Any:
    (light,) = answer({"ask": "seen", "lights": [reading], "white": white})["lights"]
    return light["as_read"]["grey"]


def test_logged_readings_look_as_they_do_elsewhere_each_at_its_own_white() -> None:
    cool = {"cct_K": 5600, "duv": 0}
    readings = [{"x": "0.43", "y": "0.405"}, {"cct_K": 4300, "duv": 0.002}, {"cct_K": 3000}]
    whites = [T32, cool, T32]
    logged = [one | {"target": white} for one, white in zip(readings, whites, strict=True)]
    typo, bare = {"x": "4255", "y": "0.4", "target": T32}, {"x": "0.4", "y": "0.4"}
    greys = answer({"ask": "judge", "readings": [*logged, typo, bare]})["greys"]
    assert greys[3:] == [None, None]
    assert greys[:3] == [grey_of(*each) for each in zip(readings, whites, strict=True)]
    assert answer({"ask": "judge", "readings": []})["greys"] == []


def test_a_slip_of_the_report_shows_the_latest_reading_at_the_white_of_its_setup() -> None:
    report = answer({"ask": "report", "book": BOOK, "of": "s"})
    (setup,) = report["setups"]
    shown = [slip for slip in setup["slips"] if slip["readings"]]
    assert shown
    for slip in shown:
        # A reading of a level alone tells no colour.
        coloured = [one for one in slip["readings"] if one["x"] is not None]
        now = {axis: coloured[-1][axis] for axis in "xy"}
        assert slip["grey"] == grey_of(now, setup["target"])
    unread = file_of(*BOOK["entries"][:3], entry("dark", "light", "s", name="unread"))
    (setup,) = answer({"ask": "report", "book": unread, "of": "s"})["setups"]
    assert [slip["grey"] for slip in setup["slips"]] == [None]


def test_readings_taken_with_a_clock_set_back_stay_in_order() -> None:
    late, early = "2026-10-27T20:00:00+01:00", "2026-10-27T08:00:00+01:00"
    book = file_of(
        *BOOK["entries"][:4],
        entry("a", "reading", "h", late, cct_K="3300"),
        entry("b", "reading", "h", early, cct_K="3200", follows="a"),
        entry("c", "reading", "h", "2026-10-27T09:00:00+01:00", cct_K="3100", follows="b"),
        entry("d", "reading", "h", "2026-10-27T21:00:00+01:00", cct_K="3000", follows="gone"),
        # A made-up circle is cut, not walked for ever.
        entry("e", "reading", "h", "2026-10-27T07:00:00+01:00", cct_K="5000", follows="f"),
        entry("f", "reading", "h", "2026-10-27T06:00:00+01:00", cct_K="5000", follows="e"),
    )
    report = answer({"ask": "report", "book": book, "of": "s"})
    read = [each["id"] for each in report["setups"][0]["slips"][0]["readings"]]
    assert read[2:] == ["a", "b", "c", "d"]
    assert set(read[:2]) == {"e", "f"}


def test_the_report_lists_the_windows_of_its_locations() -> None:
    windows = [
        {"name": "north", "width_m": "2,4", "height_ft": "6' 2\"", "count": "3"},
        {"width_m": 1.2, "height_m": 2, "panes_across": "2"},
        {"width_m": "1", "note": "height not measured yet"},
        {"width_m": "1", "height_m": "2", "facing_deg": "NW", "gels": ["1/2 CTO", "ND 0.6"]},
        {"width_m": "1", "height_m": "2", "gels": []},
    ]
    glazed = {**BOOK["entries"][1], "data": {"name": "Car deck", "windows": windows,
                                             "window_gels": ["full CTO"]}}  # fmt: skip
    book = file_of(*[glazed if each["id"] == "l" else each for each in BOOK["entries"]])
    expected = [
        {
            "id": "l",
            "location": "Car deck",
            "gels": ["full CTO"],
            "lines": [
                "3 of 2,4 m × 6' 2\", north",
                "1 of 1.2 m × 2 m, 2 × 1 panes each",
                "1 of 1 m × ?",
                "1 of 1 m × 2 m, facing NW, hangs 1/2 CTO + ND 0.6",
                "1 of 1 m × 2 m, no gel",
            ],
        }
    ]
    for of in ("s", "l", "p"):
        report = answer({"ask": "report", "book": book, "of": of})
        assert report["windows"] == expected
        assert any("traps heat" in words for words in report["cautions"])
    bare = answer({"ask": "report", "book": BOOK, "of": "l"})
    assert bare["windows"] == []
    assert not any("traps heat" in words for words in bare["cautions"])
    bounce = next(slip for slip in bare["setups"][0]["slips"] if slip["name"] == "bounce")
    # 30 lx against the 55 lx of the hero's latest reading.
    assert bounce["ratio_words"] == "1:1.83, 1 stop under"


def test_an_edit_does_not_change_when_a_reading_was_taken() -> None:
    edited = entry("r1b", "reading", "h", "2026-11-20T10:00:00+01:00", cct_K="5600", read_at=AT)
    edited |= {"of": "r1", "after": ["r1"]}
    book = file_of(*BOOK["entries"], edited)
    slips = answer({"ask": "report", "book": book, "of": "s"})["setups"][0]["slips"]
    assert [each["id"] for each in slips[0]["readings"]] == ["r1b", "r2", "r3"]
    assert slips[0]["readings"][0]["at"] == AT
    since = answer({"ask": "since", "book": book, "lights": ["h"]})
    assert since["series"][0]["points"][0]["at"] == AT
    assert "2026-10-27,16:00:00" in answer({"ask": "book_csv", "book": book})["text"]


def with_kit(*more: dict[str, Any]) -> dict[str, Any]:
    kit = entry("kit", "kit", None, name="hall truck", gels=["full CTO", "1/4 CTO"], pieces=["2"])
    return file_of(*BOOK["entries"], kit, *more)


def test_a_kit_goes_with_a_part_only_where_it_is_chosen() -> None:
    book = with_kit()
    part = {"ask": "book_link", "book": book, "of": "s"}
    opened = answer({"ask": "open_link", "link": answer(part)["link"]})
    assert opened["things"]["kit"] == 0
    opened = answer({"ask": "open_link", "link": answer({**part, "kits": ["kit"]})["link"]})
    assert opened["things"]["kit"] == 1
    (kit,) = [each for each in opened["book"]["entries"] if each["thing"] == "kit"]
    assert kit["data"]["gels"] == ["full CTO", "1/4 CTO"]
    # Whatever else is left out, the kit is whole.
    copy = answer({**part, "kits": ["kit"], "without": ["notes"]})
    opened = answer({"ask": "open_link", "link": copy["link"]})
    assert opened["things"]["kit"] == 1


def test_a_kit_is_shared_by_itself_and_is_in_the_books_file() -> None:
    book = with_kit()
    alone = answer({"ask": "book_link", "book": book, "of": "kit"})
    assert (alone["title"], alone["things"]["kit"], alone["count"]) == ("hall truck", 1, 1)
    file = answer({"ask": "book_check", "book": book, "give": "text"})
    assert answer({"ask": "book_check", "book": file["text"]})["things"]["kit"] == 1


def test_a_kit_that_two_changed_keeps_both_until_one_is_chosen() -> None:
    mine = {**entry("kit-2", "kit", None, name="hall truck", gels=["full CTO"]), "of": "kit"}
    theirs = {**entry("kit-3", "kit", None, name="hall truck", gels=["full CTB"]), "of": "kit"}
    both = [with_kit({**each, "after": ["kit"]}) for each in (mine, theirs)]
    for books in (both, both[::-1]):
        merged = answer({"ask": "book_merge", "books": books})
        assert merged["things"]["kit"] == 1
        assert [one["name"] for one in merged["conflicts"]] == ["hall truck"]


def test_a_kit_that_is_not_there_is_told_by_its_id() -> None:
    problem = problem_of(ask="book_link", book=with_kit(), of="s", kits=["lost"])
    assert "no kit with the id" in problem["message"]
