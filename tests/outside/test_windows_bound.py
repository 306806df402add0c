"""The cut list against every way of cutting few pieces, and against the area bound."""

import random
import sys
from pathlib import Path

import pytest

from evenkelvin.desk import answer
from evenkelvin.scouting import windows

sys.path.insert(0, str(Path(__file__).parents[1] / "bench"))
from cutting import shortest_length

ROLL = windows.Stock(1.22, 30.0)


def few_pieces(seed):
    chance = random.Random(seed)
    return tuple(
        (round(chance.uniform(0.2, 1.2), 2), round(chance.uniform(0.2, 2.2), 2))
        for _ in range(chance.randint(2, 5))
    )


def cut(sizes):
    pieces = [windows.Piece(i, a, b, True) for i, (a, b) in enumerate(sizes)]
    plan = windows.pack(pieces, [ROLL])
    return sum(roll.used for roll in plan.rolls), windows.area_bound(pieces, ROLL)[0]


def test_few_pieces_come_close_to_the_shortest_length_there_is():
    """Brute force, in the manner of Gilmore and Gomory (1965)."""
    # The referee tries every partition by every guillotine cut (dynamic programming over subsets
    # in the manner of Gilmore and Gomory, 1965).
    ratios = []
    for seed in range(40):
        sizes = few_pieces(seed)
        ours, bound = cut(sizes)
        best = shortest_length(sizes, ROLL.width)
        assert best >= bound - 1e-6
        assert ours >= best - 1e-6
        ratios.append(ours / best)
    assert sum(ratio < 1 + 1e-6 for ratio in ratios) >= 36
    assert sum(ratios) / len(ratios) < 1.005
    assert max(ratios) < 1.05


def test_pieces_that_tile_the_roll_meet_the_area_bound():
    """By definition no cut list is shorter than its area."""
    reply = answer(
        {
            "ask": "windows",
            "windows": [{"width_m": 0.61, "height_m": 1.27, "count": 12}],
            "rolls": [{"width_m": 1.22, "length_m": 7.62}],
        }
    )
    assert reply["used_m"] == pytest.approx(7.62)
    assert reply["bound"]["length_m"] == pytest.approx(7.62)
    assert reply["bound"]["rolls"] == 1
    assert reply["waste"]["area_m2"] == pytest.approx(0.0, abs=1e-9)
    assert len(reply["rolls"]) == 1


@pytest.mark.parametrize("seed", range(6))
def test_many_windows_stay_near_the_area_bound(seed):
    """By definition no cut list is shorter than its area; 1.35 of it: from memory."""
    chance = random.Random(seed)
    sizes = [
        (round(chance.uniform(0.3, 1.2), 2), round(chance.uniform(0.4, 2.2), 2)) for _ in range(40)
    ]
    ours, bound = cut(sizes)
    # Pieces wider than half the roll cannot lie side by side, which the area bound does not know.
    assert bound <= ours <= 1.35 * bound


def test_neutral_density_is_tenths_of_stops_by_definition():
    # Density is log₁₀(1/τ) (ISO 5-1), so ND 0.3 halves the light and ND 0.9 leaves an eighth.
    for lux, name in ((2000, "ND 0.3"), (4000, "ND 0.6"), (8000, "ND 0.9"), (16000, "ND 1.2")):
        nd = answer({"ask": "windows", "nd": {"measured_lx": lux, "wanted_lx": 1000}})["nd"]
        assert nd["gels"] == [name]
        assert nd["left_stops"] == pytest.approx(0.0, abs=0.02)
