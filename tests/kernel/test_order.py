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
    assert enough["words"] == "Nothing to order: there is enough in stock"


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


#: On a roll of 1.22 × 7.62 m lie 2 pieces of 0.6 m across and 12 along (12 × 0.6 = 7.2): 24.
LAMP = {"width_m": 0.6, "height_m": 0.6, "on": "lamp"}


def test_every_layer_of_a_stack_is_a_sheet_of_its_gel():
    stack = ["1/2 CTO", "1/4 CTO", "1/2 CTO"]
    reply = ask([LAMP | {"gels": stack, "where": "key"}, LAMP | {"gels": ["1/2 CTO"]}])
    half, quarter = reply["gels"]
    assert (half["gel"], quarter["gel"]) == ("1/2 CTO", "1/4 CTO")
    assert [half["pieces"][0]["count"], quarter["pieces"][0]["count"]] == [3, 1]
    assert half["cut_m2"] == pytest.approx(3 * 0.36)
    assert quarter["cut_m2"] == pytest.approx(0.36)


@pytest.mark.parametrize(
    ("lamps", "layers", "per_layer", "rolls"),
    [(12, 2, 1, 1), (13, 2, 1, 2), (6, 1, 4, 1), (6, 2, 4, 2), (1, 1, 24, 1), (1, 1, 25, 2)],
)
def test_pieces_are_lamps_by_layers_by_pieces_a_layer_takes(lamps, layers, per_layer, rolls):
    hang = LAMP | {"gels": ["full CTO"] * layers, "count": per_layer}
    gel = ask([hang] * lamps, spare_percent=0)["gels"][0]
    assert gel["pieces"][0]["count"] == lamps * layers * per_layer
    assert gel["order"] == [ROLL | {"count": rolls}]


def test_pieces_that_are_cut_already_go_off_what_must_be_bought():
    hangs = [LAMP | {"gels": ["full CTO", "full CTO"], "count": 13}]
    assert ask(hangs, spare_percent=0)["gels"][0]["order"] == [ROLL | {"count": 2}]
    some = ask(hangs, spare_percent=0, ready={"full CTO": "2", "1/8 CTB": 5})["gels"][0]
    # 26 less 2 are 24: a roll full.
    assert (some["ready"], some["order"]) == (2, [ROLL | {"count": 1}])
    assert some["pieces"][0]["count"] == 26
    assert some["cut_m2"] == pytest.approx(24 * 0.36)
    every = ask(hangs, ready={"full CTO": 40})
    assert (every["gels"][0]["ready"], every["gels"][0]["order"]) == (26, [])
    assert every["words"] == "Nothing to order: there is enough in stock"
    assert every["gels"][0]["words"] == "full CTO: enough in stock"


def test_what_hangs_already_is_told_and_still_counted():
    reply = ask(
        [
            LAMP | {"gels": ["1/2 CTO", "1/2 CTO"], "hung": ["1/2 CTO", "full CTB"], "count": 4},
            LAMP | {"gels": ["1/2 CTO"], "hung": ["1/2 CTO", "1/2 CTO"]},
            LAMP | {"gels": ["full CTO"]},
        ]
    )
    half, full = reply["gels"]
    assert (half["hung"], half["pieces"][0]["count"]) == (4 * 1 + 1, 4 * 2 + 1)
    assert full["hung"] == 0


def test_ready_pieces_go_off_first_and_rolls_after_them():
    hangs = [LAMP | {"gel": "full CTO", "count": 50}]
    stock = [ROLL | {"gel": "full CTO", "count": 1}]
    gel = ask(hangs, spare_percent=0, stock=stock, ready={"full CTO": 2})["gels"][0]
    # 50 less 2 are 48: 24 from the roll at hand, 24 from one to buy.
    assert gel["have"] == [ROLL | {"count": 1}]
    assert gel["order"] == [ROLL | {"count": 1}]
    assert ask(hangs, spare_percent=0, stock=stock)["gels"][0]["order"] == [ROLL | {"count": 2}]


def test_a_ready_piece_covers_the_smallest_lamp_and_no_glass():
    hangs = [
        {"gel": "ND 0.3", "width_m": 0.1, "height_m": 0.1},
        LAMP | {"gel": "ND 0.3"},
        LAMP | {"gel": "ND 0.3", "width_m": 1.2, "height_m": 1.2},
        {"gel": "ND 0.3", "on": "lamp"},
    ]
    areas = {n: ask(hangs, ready={"ND 0.3": n})["gels"][0] for n in range(5)}
    whole = 0.01 + 0.36 + 1.44
    left = [whole, whole - 0.36, 0.01, 0.01, 0.01]
    assert [areas[n]["cut_m2"] for n in range(5)] == pytest.approx(left)
    # The lamp of unknown size comes last, and then needs none.
    assert [areas[n]["unsized"] for n in range(5)] == [1, 1, 1, 0, 0]
    assert [areas[n]["ready"] for n in range(5)] == [0, 1, 2, 3, 3]


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
        ({"hangs": [{"gel": "ND 0.3", "on": "wall"}]}, "hangs.0.on"),
        ({"hangs": [{"gel": "ND 0.3", "on": "lamp"}], "ready": {"ND 0.3": -1}}, "ready.ND 0.3"),
        ({"ready": 3}, "ready"),
        ({"hangs": [{"gel": "ND 0.3", "hung": "ND 0.3"}]}, "hangs.0.hung"),
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
