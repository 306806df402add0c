"""Gel on glass: pieces cover, never overlap, stay on the roll; and what is refused."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer
from evenkelvin.scouting import windows
from evenkelvin.scouting.windows import Pane, Stock
from examples import examples
from kernel import fuzz_cutting

ROLL = {"width_m": 1.22, "length_m": 7.62}
sizes = st.floats(0.05, 4.0).map(lambda size: round(size, 3))


def without_size_words(reply):
    """Leave out how sizes are said, which a test of its own looks at."""
    if isinstance(reply, list):
        return [without_size_words(each) for each in reply]
    if not isinstance(reply, dict):
        return reply
    left = reply.keys() - ({"words"} if "width_m" in reply else set())
    return {key: without_size_words(reply[key]) for key in reply if key in left}


def ask(glass=None, **fields):
    if glass is not None:
        fields["windows"] = glass
    return without_size_words(answer({"ask": "windows"} | fields))


@settings(max_examples=examples(25), deadline=None)
@given(
    panes=st.lists(st.tuples(sizes, sizes), min_size=1, max_size=8),
    width=st.floats(0.5, 2.0),
    length=st.floats(1.0, 10.0),
    overlap=st.floats(0, 0.1),
    direction=st.sampled_from(["any", "upright", "across"]),
    turn=st.booleans(),
)
def test_pieces_never_overlap_nor_leave_the_roll_and_all_are_cut(
    panes, width, length, overlap, direction, turn
):
    rolls = [(width, length, None)] + ([(0.61, 0.61, None)] if turn else [])
    plan = fuzz_cutting.check_windows(fuzz_cutting.Job(panes, rolls, overlap, direction))
    assert plan.left_out == ()


@pytest.mark.parametrize("seed", range(4))
def test_random_jobs_are_cut_as_scissors_could(seed):
    jobs = fuzz_cutting.jobs(examples(6), seed)
    assert {fuzz_cutting.check(job) for job in jobs} & {"one roll", "more than one roll"}


def test_the_geometry_sees_a_piece_that_lies_on_another():
    piece = windows.Piece(0, 0.5, 1.0, True)
    roll = windows.Roll(Stock(1.2, 2.4), [windows.Placed(piece, 0.0, 0.0)], used=1.4)
    for place, wrong in [
        ((0.4, 0.0), "each other"),
        ((0.5, 0.5), "cut off"),
        ((0.8, 0.0), "wider"),
        ((-0.1, 1.4), "outside"),
    ]:
        roll.placed[1:] = [windows.Placed(piece, *place)]
        plan = windows.Plan((roll,), (), 0)
        with pytest.raises(AssertionError, match=wrong):
            fuzz_cutting.check_plan(plan, [piece, piece], [roll.stock])


@pytest.mark.parametrize(
    ("glass", "rolls"),
    [
        ([(0.6, 1.0, 2), (0.7, 0.2, 3)], [{"width_m": 1.2, "length_m": 2.4}]),
        ([(0.4, 0.8, 2), (0.6, 0.4, 4)], [ROLL]),
    ],
)
def test_offcuts_are_never_less_than_nothing(glass, rolls):
    # A length cut longer once gave the same gel to two rests, one beyond the other.
    panes = [{"width_m": w, "height_m": h, "count": n} for w, h, n in glass]
    reply = ask(panes, rolls=rolls)
    assert reply["waste"]["area_m2"] == pytest.approx(
        sum(roll["width_m"] * roll["used_m"] for roll in reply["rolls"])
        - sum(w * h * n for w, h, n in glass)
    )
    assert reply["waste"]["area_m2"] >= 0


@settings(max_examples=examples(80), deadline=None)
@given(width=sizes, height=sizes, roll=st.floats(0.3, 2.0), overlap=st.floats(0, 0.1))
def test_strips_reach_over_the_whole_pane(width, height, roll, overlap):
    stock = Stock(roll, 100.0)
    pieces = windows.cover(Pane(0, width, height), stock, overlap, "upright")
    assert pieces is not None
    covered = sum(piece.across for piece in pieces) - overlap * (len(pieces) - 1)
    assert covered >= width - 1e-6
    assert all(piece.across <= roll + 1e-3 for piece in pieces)
    assert all(piece.along == height for piece in pieces)
    # One strip fewer would not reach.
    assert len(pieces) == 1 or (len(pieces) - 1) * (roll - overlap) + overlap < width + 1e-3


def test_the_direction_with_fewer_seams_is_taken():
    pane = Pane(0, 2.4, 1.0)
    stock = Stock(1.22, 7.62)
    assert len(windows.cover(pane, stock)) == 1
    assert len(windows.cover(pane, stock, direction="upright")) == 3


def test_a_cut_list_in_words_and_numbers():
    reply = ask(
        [{"name": "north", "width_m": "2,4", "height_m": 1.8, "count": 2}],
        rolls=[ROLL],
        gels=["full CTO", "ND 0.6"],
    )
    north = {"window": 0, "name": "north", "gels": ["full CTO", "ND 0.6"], "length_m": 2.4}
    assert reply["cuts"] == [
        {**north, "width_m": 0.63, "count": 2},
        {**north, "width_m": 1.22, "count": 2},
    ]
    assert reply["seams"] == 2
    assert reply["layers"] == 2
    assert reply["needed"] == [ROLL | {"rolls": 4}]
    assert reply["words"].startswith("4 rolls of 1.22 × 7.62 m, 2 layers; 2 seams; ")
    assert reply["bound"]["rolls"] <= len(reply["rolls"])
    assert 0 <= reply["waste"]["percent"] < 100
    joined = " ".join(reply["cautions"])
    for word in ("ladder", "Wind", "traps heat", "asking the building", "local codes"):
        assert word in joined


def test_panes_are_covered_one_by_one_without_seams():
    whole = ask([{"width_m": 2.4, "height_m": 2.7}], rolls=[ROLL])
    panes = ask(
        [{"width_m": 2.4, "height_m": 2.7, "panes_across": 2, "panes_down": 3}], rolls=[ROLL]
    )
    assert whole["seams"] > 0
    assert panes["seams"] == 0
    (cut,) = panes["cuts"]
    assert (cut["name"], cut["gels"]) == ("window 1", [])
    assert (cut["width_m"], cut["length_m"], cut["count"]) == (0.9, 1.2, 6)


def test_a_margin_widens_every_piece():
    reply = ask([{"width_m": 1.0, "height_m": 0.5}], rolls=[ROLL], margin_m=0.03)
    assert reply["cuts"][0]["width_m"] == pytest.approx(0.56)
    assert reply["cuts"][0]["length_m"] == pytest.approx(1.06)


def test_scarce_rolls_leave_pieces_over_and_say_so():
    reply = ask([{"width_m": 1.2, "height_m": 3, "count": 4}], rolls=[ROLL | {"count": 1}])
    assert reply["left_out"][0]["count"] == 2
    assert "2 pieces are left to cut" in reply["warnings"][0]
    topped_up = ask(
        [{"width_m": 1.2, "height_m": 3, "count": 4}],
        rolls=[ROLL | {"count": 1}, {"width_m": 1.3, "length_m": 3.1}],
    )
    assert topped_up["left_out"] == []


def test_rolls_listed_one_by_one_are_all_used():
    reply = ask([{"width_m": 1.2, "height_m": 7, "count": 2}], rolls=[ROLL | {"count": 1}] * 2)
    assert reply["left_out"] == []
    assert len(reply["rolls"]) == 2


def test_sheets_serve_small_panes():
    reply = ask(
        [{"width_m": 0.5, "height_m": 0.5, "count": 3}],
        rolls=[ROLL, {"width_m": 0.53, "length_m": 1.22}],
    )
    assert reply["needed"] == [{"width_m": 0.53, "length_m": 1.22, "rolls": 2}]


def test_the_largest_cut_list_is_answered():
    reply = ask([{"width_m": 0.9, "height_m": 1.1, "count": 600}], rolls=[ROLL])
    assert sum(cut["count"] for cut in reply["cuts"]) == 600


def test_neutral_density_beside_the_colour():
    nd = ask(nd={"measured_lx": 8000, "wanted_lx": 1000, "gel_stops": "0.8"})["nd"]
    assert nd["stops"] == pytest.approx(2.2)
    assert nd["gels"] == ["ND 0.6"]
    assert nd["words"] == "ND 0.6, then ⅓ stop over"
    assert ask(nd={"stops": 0})["nd"]["words"] == "No ND, then right"
    assert ask(nd={"stops": 5})["nd"]["gels"] == ["ND 0.9", "ND 0.6"]
    assert "under" in ask(nd={"stops": -1})["nd"]["words"]


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({}, "windows"),
        ({"windows": []}, "windows"),
        ({"windows": [{"height_m": 1}]}, "windows.0.width_m"),
        ({"windows": [{"width_m": "wide", "height_m": 1}]}, "windows.0.width_m"),
        ({"windows": [{"width_m": 1, "height_m": 0}]}, "windows.0.height_m"),
        ({"windows": [{"width_m": 1, "height_m": 1, "count": 1.5}]}, "windows.0.count"),
        ({"windows": [{"width_m": 1, "height_m": 1, "count": 0}]}, "windows.0.count"),
        (
            {"windows": [{"width_m": 1, "height_m": 1, "count": 600, "panes_down": 2}]},
            "windows.0.count",
        ),
        ({"windows": [{"width_m": 1, "height_m": 1, "depth_m": 1}]}, "windows.0.depth_m"),
        ({"rolls": [{"width_m": 1.22}]}, "rolls.0.length_m"),
        ({"rolls": [ROLL | {"count": 0}]}, "rolls.0.count"),
        ({"rolls": [{"width_m": 0.1, "length_m": 0.1}], "overlap_m": 0.1}, "rolls.0.width_m"),
        ({"windows": [{"width_m": 99, "height_m": 99, "count": 9}]}, "rolls.0.width_m"),
        ({"overlap_m": 2}, "overlap_m"),
        ({"margin_m": -1}, "margin_m"),
        ({"direction": "diagonal"}, "direction"),
        ({"gels": [3]}, "gels.0"),
        ({"nd": {}}, "nd.measured_lx"),
        ({"nd": {"measured_lx": 100}}, "nd.wanted_lx"),
        ({"nd": {"measured_lx": 100, "stops": 1}}, "nd.stops"),
        ({"nd": {"stops": "many"}}, "nd.stops"),
    ],
)
def test_bad_window_fields_are_named(fields, field):
    glass = [] if not fields or "nd" in fields else [{"width_m": 1, "height_m": 1}]
    problem = answer({"ask": "windows", "windows": glass} | fields)["problem"]
    assert problem["field"] == field
    assert problem["message"].endswith(".")


def test_feet_and_inches_give_the_same_plan_as_metres():
    metric = answer({"ask": "windows", "windows": [{"width_m": 1.2192, "height_m": 1.8288}]})
    imperial = answer(
        {
            "ask": "windows",
            "windows": [{"width_ft": "4", "height_ft": "6' 0\""}],
            "rolls": [{"width_ft": "48in", "length_ft": "25"}],
            "length_unit": "ft",
        }
    )
    assert imperial["cuts"][0]["words"] == "4′ × 6′"
    assert imperial["needed"][0]["words"] == "4′ × 25′"
    assert imperial["rolls"][0]["words"] == "4′ × 25′, 6′ used"
    assert metric["cuts"][0]["width_m"] == pytest.approx(imperial["cuts"][0]["width_m"])
    assert metric["cuts"][0]["words"] == "1.22 × 1.829 m"


@pytest.mark.parametrize("typed", ["4' 6", "4'6\"", "4′ 6″", "4 ft 6 in", "4,5", "54 in", '54"'])
def test_a_length_in_feet_is_read_as_people_type_it(typed):
    reply = ask([{"width_ft": typed, "height_m": 1}])
    assert sorted((reply["cuts"][0]["width_m"], reply["cuts"][0]["length_m"])) == pytest.approx(
        [1, 1.3716]
    )


@pytest.mark.parametrize(
    ("window", "field"),
    [
        ({"width_ft": "900'", "height_m": 1}, "windows.0.width_ft"),
        ({"width_ft": "four", "height_m": 1}, "windows.0.width_ft"),
        ({"width_m": 1, "width_ft": 1, "height_m": 1}, "windows.0.width_ft"),
        ({"width_m": 1}, "windows.0.height_m"),
    ],
)
def test_a_bad_length_is_named(window, field):
    assert ask([window])["problem"]["field"] == field


def test_windows_that_hang_otherwise_are_cut_from_rolls_of_their_own():
    size = {"width_m": 0.6, "height_m": 1.0}
    warm, grey = ["1/2 CTO"], ["1/2 CTO", "ND 0.6"]
    some = [
        {"name": "left", **size},
        {"name": "right", **size, "gels": grey},
        {"name": "roof", **size, "gels": []},
        {"name": "stairs", **size, "gels": grey[::-1]},
    ]
    mixed = ask(some, gels=warm, rolls=[ROLL])
    assert {cut["name"]: cut["gels"] for cut in mixed["cuts"]} == {
        "left": warm, "right": grey, "roof": [], "stairs": grey,
    }  # fmt: skip
    by_gels = {}
    for roll in mixed["rolls"]:
        names = {piece["name"] for piece in roll["pieces"]}
        by_gels.setdefault(tuple(roll["gels"]), set()).update(names)
    assert by_gels == {tuple(warm): {"left"}, tuple(grey): {"right", "stairs"}, (): {"roof"}}
    # One roll of each stack, two layers of one of them.
    assert mixed["needed"][0]["rolls"] == 1 + 2 + 1
    assert not mixed["alike"]
    assert mixed["gels"] == ["1/2 CTO", "ND 0.6"]
    alone = [ask([one], gels=warm, rolls=[ROLL]) for one in some[:1]]
    together = ask([some[1], some[3]], rolls=[ROLL])
    bare = ask([some[2]], rolls=[ROLL])
    parts = [*alone, together, bare]
    assert mixed["used_m"] == pytest.approx(sum(part["used_m"] for part in parts))
    assert mixed["waste"]["area_m2"] == pytest.approx(sum(p["waste"]["area_m2"] for p in parts))
    assert all(part["alike"] for part in parts)
