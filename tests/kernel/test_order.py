"""The order: everything that hangs, by gel and size, against the stock, with a spare."""

import pytest

from evenkelvin.desk import answer

ROLL = {"width_m": 1.22, "length_m": 7.62}


def without_size_words(reply):
    """Leave out how sizes are said, which a test of its own looks at."""
    if isinstance(reply, list):
        return [without_size_words(each) for each in reply]
    if not isinstance(reply, dict):
        return reply
    left = reply.keys() - ({"words"} if "width_m" in reply else set())
    return {key: without_size_words(reply[key]) for key in reply if key in left}


def ask(hangs, **fields):
    return without_size_words(answer({"ask": "order", "hangs": hangs} | fields))


def test_pieces_are_gathered_by_gel_and_size():
    reply = ask(
        [
            {
                "gels": ["1/2 CTO", "1/8 minus green"],
                "width_m": 0.6,
                "height_m": 0.6,
                "where": "key",
            },
            {"gel": "1/2 CTO", "width_m": 0.6, "height_m": 0.6, "count": 2, "where": "fill"},
            {"gel": "1/2 CTO", "width_m": 0.3, "height_m": 0.3, "where": "batten 2"},
        ]
    )
    half = reply["gels"][0]
    assert half["gel"] == "1/2 CTO"
    assert half["pieces"] == [
        {"width_m": 0.3, "height_m": 0.3, "count": 1, "where": ["batten 2"]},
        {"width_m": 0.6, "height_m": 0.6, "count": 3, "where": ["key", "fill"]},
    ]
    assert half["order"] == [ROLL | {"count": 1}]
    assert half["cut_m2"] == pytest.approx(3 * 0.36 + 0.09)
    assert reply["gels"][1]["gel"] == "1/8 minus green"
    assert reply["words"].startswith("Order 1/2 CTO: 1 of 1.22 × 7.62 m; 1/8 minus green: ")


def test_the_stock_is_used_before_anything_is_bought():
    hangs = [{"gel": "full CTO", "width_m": 1.2, "height_m": 2.4, "count": 4}]
    bare = ask(hangs, spare_percent=0)
    assert bare["gels"][0]["order"] == [ROLL | {"count": 2}]
    stocked = ask(hangs, spare_percent=0, stock=[ROLL | {"gel": "full CTO", "count": 1}])
    assert stocked["gels"][0]["have"] == [ROLL | {"count": 1}]
    assert stocked["gels"][0]["order"] == [ROLL | {"count": 1}]
    enough = ask(hangs, spare_percent=0, stock=[ROLL | {"gel": "full CTO", "count": 3}])
    assert enough["gels"][0]["order"] == []
    assert enough["words"] == "Nothing to order: the stock suffices"


def test_another_gel_in_stock_does_not_count():
    hangs = [{"gel": "full CTO", "width_m": 0.5, "height_m": 0.5}]
    reply = ask(hangs, stock=[ROLL | {"gel": "1/4 CTO", "count": 5}])
    assert reply["gels"][0]["order"] == [ROLL | {"count": 1}]


def test_the_spare_buys_another_roll_where_little_would_be_left():
    hangs = [{"gel": "full CTO", "width_m": 1.22, "height_m": 7.5}]
    assert ask(hangs, spare_percent=0)["gels"][0]["order"] == [ROLL | {"count": 1}]
    spared = ask(hangs, spare_percent=15)["gels"][0]
    assert spared["order"] == [ROLL | {"count": 2}]
    assert spared["spare_m2"] >= 0.15 * spared["cut_m2"]


def test_offcuts_are_no_spare_but_the_rest_of_the_stock_is():
    hangs = [{"gel": "full CTO", "width_m": 1.22, "height_m": 7.5}]
    stock = [ROLL | {"gel": "full CTO", "count": 2}]
    assert ask(hangs, stock=stock)["gels"][0]["order"] == []


def test_a_size_not_known_yet_is_said_and_not_lost():
    reply = ask([{"gel": "1/4 CTB", "count": 3, "where": "practical"}])
    assert reply["gels"][0]["unsized"] == 3
    assert reply["gels"][0]["order"] == []
    assert reply["warnings"] == ["No size yet for some 1/4 CTB: it is not in the order."]


def test_the_size_that_buys_least_is_chosen():
    hangs = [{"gel": "1/4 CTO", "width_m": 0.5, "height_m": 0.5}]
    reply = ask(hangs, rolls=[ROLL, {"width_m": 0.53, "length_m": 1.22}])
    assert reply["gels"][0]["order"] == [{"width_m": 0.53, "length_m": 1.22, "count": 1}]


def test_nothing_hangs_yet():
    assert ask([]) == {"gels": [], "words": "Nothing hangs yet", "warnings": []}


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"hangs": [{"width_m": 1, "height_m": 1}]}, "hangs.0.gels"),
        ({"hangs": [{"gel": "ND 0.3", "width_m": 1}]}, "hangs.0.height_m"),
        ({"hangs": [{"gel": "ND 0.3", "width_m": "w", "height_m": 1}]}, "hangs.0.width_m"),
        ({"hangs": [{"gel": "ND 0.3", "count": 0}]}, "hangs.0.count"),
        ({"hangs": [{"gel": 3}]}, "hangs.0.gel"),
        ({"hangs": [{"gel": "ND 0.3", "colour": "x"}]}, "hangs.0.colour"),
        ({"hangs": {}}, "hangs"),
        ({"stock": [ROLL]}, "stock.0.gel"),
        ({"stock": [{"gel": "ND 0.3", "width_m": 1}]}, "stock.0.length_m"),
        ({"rolls": [ROLL | {"count": 2}]}, "rolls.0.count"),
        ({"rolls": [{"width_m": 0.1, "length_m": 2}]}, "rolls.0.width_m"),
        ({"spare_percent": -1}, "spare_percent"),
        ({"overlap_m": "x"}, "overlap_m"),
        ({"budget": 3}, "budget"),
    ],
)
def test_bad_order_fields_are_named(fields, field):
    problem = answer({"ask": "order"} | fields)["problem"]
    assert problem["field"] == field
    assert problem["message"].endswith(".")


def test_sizes_are_said_in_the_unit_that_was_asked_for():
    hangs = [{"gel": "full CTO", "width_ft": "1' 9\"", "height_ft": "2", "count": 2}]
    rolls = [{"width_ft": "4", "length_ft": "25"}]
    reply = answer({"ask": "order", "hangs": hangs, "rolls": rolls, "length_unit": "ft"})
    assert reply["gels"][0]["pieces"][0]["words"] == "2 of 1′ 9″ × 2′"
    assert reply["gels"][0]["order"][0]["words"] == "1 of 4′ × 25′"
    assert reply["words"] == "Order full CTO: 1 of 4′ × 25′"
    assert reply["gels"][0]["cut_m2"] == pytest.approx(2 * 1.75 * 2 * 0.3048**2)


def test_gel_of_no_known_size_is_not_called_enough():
    reply = ask([{"gel": "1/4 CTB"}])
    assert reply["words"] == "No size is known yet"
    assert reply["gels"][0]["words"] == "1/4 CTB: no size yet"


def test_a_window_is_ordered_pane_by_pane():
    hangs = [{"gel": "1/2 CTO", "width_m": 3.6, "height_m": 1.8, "count": 2, "panes_across": 3}]
    assert ask(hangs)["gels"][0]["pieces"] == [
        {"width_m": pytest.approx(1.2), "height_m": 1.8, "count": 6, "where": []}
    ]
