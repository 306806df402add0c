"""Sweep against closed forms, scipy and contourpy."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from contourpy import contour_generator
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.interpolate import RBFInterpolator
from scipy.optimize import linprog, minimize

from evenkelvin.data import Floats
from evenkelvin.desk import answer
from evenkelvin.sweep.contours import contour
from evenkelvin.sweep.simplex import maximise
from evenkelvin.sweep.surface import Sheet
from evenkelvin.sweep.trimming import _FREE, _WEIGHT, Rig, trim
from examples import examples


def grid(across: int, up: int) -> Floats:
    """The middles of a grid's cells, row by row from the lower left."""
    x, y = np.meshgrid((np.arange(across) + 0.5) / across, (np.arange(up) + 0.5) / up)
    return np.column_stack([x.ravel(), y.ravel()])


def lamp(places: Floats, at: tuple[float, float], away: float, intensity: float) -> Floats:
    """A small source before a surface that spreads as a flat one does: I·cos θ each way, so
    E = I·cos⁴ θ / d² (Walsh, 'Photometry' (1958), the cosine-to-the-fourth law).
    """
    squares = np.sum((places - at) ** 2, axis=1) + away**2
    level: Floats = intensity * away**2 / squares**2
    return level


def rigs(draws: np.random.Generator, most_lamps: int = 12) -> Rig:
    places = grid(int(draws.integers(2, 9)), int(draws.integers(2, 6)))
    lamps = int(draws.integers(1, most_lamps + 1))
    each = np.column_stack(
        [
            lamp(
                places,
                (draws.uniform(-0.3, 1.3), draws.uniform(-0.3, 1.3)),
                draws.uniform(0.3, 1.5),
                draws.uniform(50, 800),
            )
            for _ in range(lamps)
        ]
    )
    ambient = draws.choice([0.0, 0.0, 0.2]) * each.sum(axis=1).mean()
    return Rig(places, each.sum(axis=1) + ambient, each)


def batten_rigs(draws: np.random.Generator) -> Rig:
    """Two to six lamps in turn above and below a wall, as they are hung."""
    places = grid(int(draws.integers(3, 9)), int(draws.integers(3, 6)))
    lamps = int(draws.integers(2, 7))
    each = np.column_stack(
        [
            lamp(
                places,
                ((k + 0.5) / lamps + draws.normal(0, 0.05), 1.15 if k % 2 == 0 else -0.15),
                draws.uniform(0.35, 0.7),
                draws.uniform(300, 1000),
            )
            for k in range(lamps)
        ]
    )
    return Rig(places, each.sum(axis=1), each)


def spread(levels: Floats) -> float:
    return float(np.log2(levels.max() / levels.min()))


# ------------------------------------------------------------------ closed forms


def test_one_lamp_on_the_axis_falls_off_as_the_fourth_power_of_the_cosine() -> None:
    away, places = 0.8, grid(5, 5)
    levels = lamp(places, (0.5, 0.5), away, 500.0)
    points = [
        {"across": x, "up": y, "illuminance_lx": level}
        for (x, y), level in zip(places.tolist(), levels.tolist(), strict=True)
    ]
    got = answer({"ask": "even", "points": points, "aim": {"point": 12}})
    for (x, y), point in zip(places, got["points"], strict=True):
        cosine = away / np.sqrt((x - 0.5) ** 2 + (y - 0.5) ** 2 + away**2)
        assert point["stops"] == pytest.approx(4.0 * np.log2(cosine), abs=1e-12)
    corner = away / np.sqrt(0.32 + away**2)
    assert got["least_to_greatest"] == pytest.approx(corner**4, rel=1e-12)
    # U0 is the least over the mean (EN 12464-1:2021, 3.19, from memory).
    assert got["uniformity"] == pytest.approx(levels.min() / levels.mean(), rel=1e-12)


def test_lines_of_one_level_about_one_lamp_are_circles() -> None:
    """By definition of the cos⁴ law (Walsh (1958)), solved for the radius."""
    places, away = grid(9, 9), 1.0
    levels = lamp(places, (0.5, 0.5), away, 500.0)
    points = [
        {"across": x, "up": y, "illuminance_lx": level}
        for (x, y), level in zip(places.tolist(), levels.tolist(), strict=True)
    ]
    got = answer({"ask": "even", "points": points, "aim": {"illuminance_lx": 500.0}})
    assert len(got["map"]["lines"]) >= 3
    for line in got["map"]["lines"]:
        # From 4·log2(cos θ) = stops to the circle's radius.
        radius = away * np.sqrt(2.0 ** (-line["stops"] / 2.0) - 1.0)
        for path in line["paths"]:
            distance = np.linalg.norm(np.array(path) - 0.5, axis=1)
            assert distance == pytest.approx(radius, abs=0.008)


def test_a_lamp_twice_as_far_gives_two_stops_less_by_the_inverse_square() -> None:
    """The inverse square, by definition of a small source."""
    near, far = (
        {"across": x, "up": 0.5, "illuminance_lx": lx} for x, lx in ((0.2, 800), (0.8, 200))
    )
    got = answer({"ask": "even", "points": [near, far]})
    assert got["spread_stops"] == pytest.approx(2.0)


# ------------------------------------------------------------------ the sheet and its lines


@pytest.mark.parametrize("seed", range(20))
def test_the_sheet_is_scipys_thin_plate_spline(seed: int) -> None:
    """scipy's RBFInterpolator."""
    draws = np.random.default_rng(seed)
    places, values = draws.uniform(size=(draws.integers(4, 41), 2)), draws.normal(size=41)
    values = values[: len(places)]
    elsewhere = draws.uniform(size=(50, 2))
    scipys = RBFInterpolator(places, values, kernel="thin_plate_spline", degree=1)
    sheet = Sheet(places, values)
    assert sheet.at(elsewhere) == pytest.approx(scipys(elsewhere), abs=1e-7)
    assert sheet.at(places) == pytest.approx(values, abs=1e-7)
    step = 1e-6
    for axis, way in enumerate(np.eye(2) * step):
        rise = (sheet.at(elsewhere + way) - sheet.at(elsewhere - way)) / (2 * step)
        assert sheet.slope(elsewhere)[:, axis] == pytest.approx(rise, abs=1e-3)


@pytest.mark.parametrize("seed", range(20))
def test_lines_are_as_long_as_contourpys(seed: int) -> None:
    """contourpy, a general-purpose package; by definition both are marching squares."""
    draws = np.random.default_rng(seed)
    across, up = np.linspace(0, 1, 14), np.linspace(0, 1, 9)
    heights = draws.normal(size=(9, 14))
    for level in (-0.6, 0.0, 0.7):
        ours = contour(across, up, heights, level)
        theirs = contour_generator(across, up, heights, quad_as_tri=False).lines(level)

        def length(lines: Any) -> float:
            return sum(float(np.linalg.norm(np.diff(line, axis=0), axis=1).sum()) for line in lines)

        assert length(ours) == pytest.approx(length(theirs), rel=1e-9)
        assert len(ours) == len(theirs)


# ------------------------------------------------------------------ the programme


@settings(max_examples=examples(100), deadline=None)
@given(seed=st.integers(0, 10**6))
def test_the_simplex_finds_what_scipys_linprog_finds(seed: int) -> None:
    """scipy's linprog (HiGHS), and the duality theorem."""
    draws = np.random.default_rng(seed)
    rows = draws.normal(size=(draws.integers(1, 8), draws.integers(1, 12)))
    # Some limits of zero, where the method may run in circles.
    limits = np.maximum(draws.normal(size=len(rows)), 0.0)
    gain = draws.normal(size=rows.shape[1])
    theirs = linprog(-gain, A_ub=rows, b_ub=limits, method="highs")
    if theirs.status == 3:
        with pytest.raises(OverflowError):
            maximise(gain, rows, limits)
        return
    most, q, worth = maximise(gain, rows, limits)
    assert most == pytest.approx(-theirs.fun, abs=1e-8)
    assert np.all(rows @ q <= limits + 1e-8)
    assert np.all(q >= 0)
    # The dual programme has the same value.
    assert limits @ worth == pytest.approx(most, abs=1e-8)
    assert np.all(worth >= -1e-9)
    assert np.all(worth @ rows >= gain - 1e-7)


def least_spread(rig: Rig) -> float:
    """The least spread by scipy: least t with 1 ≤ L·y + a·z ≤ t, y ≤ z."""
    places, lamps = rig.each.shape
    ambient = rig.ambient[:, None]
    one, none = np.ones((places, 1)), np.zeros((places, 1))
    rows = np.vstack(
        [
            np.hstack([-rig.each, -ambient, none]),
            np.hstack([rig.each, ambient, -one]),
            np.hstack([np.eye(lamps), -np.ones((lamps, 1)), np.zeros((lamps, 1))]),
        ]
    )
    limits = np.concatenate([-np.ones(places), np.zeros(places + lamps)])
    found = linprog([0.0] * (lamps + 1) + [1.0], A_ub=rows, b_ub=limits, method="highs")
    return float(np.log2(found.fun))


@settings(max_examples=examples(150), deadline=None)
@given(seed=st.integers(0, 10**6))
def test_no_dimmers_make_a_surface_more_even(seed: int) -> None:
    """scipy's linprog on the same programme, written anew."""
    rig = rigs(np.random.default_rng(seed))
    found = trim(rig, steady=False)
    assert found.least_spread_stops == pytest.approx(least_spread(rig), abs=1e-6)
    assert spread(found.levels) == pytest.approx(found.least_spread_stops, abs=1e-6)
    assert np.all((found.dimmers >= 0) & (found.dimmers <= 1 + 1e-12))
    assert found.levels == pytest.approx(rig.each @ found.dimmers + rig.ambient)


@pytest.mark.parametrize("seed", range(6))
def test_steady_dimmers_are_what_scipys_minimiser_finds(seed: int) -> None:
    """scipy's minimize on the two squares."""
    rig = batten_rigs(np.random.default_rng(seed))
    scale = (rig.each.sum(axis=1) + rig.ambient).mean()
    each, ambient = rig.each / scale, rig.ambient / scale
    found = trim(rig, steady=True)
    ratio = 2.0**found.least_spread_stops

    def penalty(guess: Floats) -> float:
        dimmers, low = guess[:-1], guess[-1]
        levels = each @ dimmers + ambient
        under, over = np.maximum(low - levels, 0.0), np.maximum(levels - ratio * low, 0.0)
        return float(
            np.sum((1 - dimmers) ** 2) + _WEIGHT * np.sum(under**2 + over**2) + (_FREE * low) ** 2
        )

    start = np.append(found.dimmers, 0.7)
    best = minimize(
        penalty, start, bounds=[(0, 1)] * len(found.dimmers) + [(0, None)],
        options={"maxiter": 5000, "ftol": 1e-14, "gtol": 1e-10}, method="L-BFGS-B",
    )  # fmt: skip
    assert found.dimmers == pytest.approx(best.x[:-1], abs=2e-3)


def test_readings_off_by_two_percent_move_no_dimmer_by_five() -> None:
    """A meter's scatter of 2 %: common practice, no source."""
    draws = np.random.default_rng(77)
    moved, lost = [], []
    for _ in range(examples(200)):
        rig = batten_rigs(draws)
        off = 1 + 0.02 * draws.uniform(-1, 1, size=rig.each.shape)
        read = Rig(rig.places, (rig.each * off).sum(axis=1), rig.each * off)
        found, again = trim(rig, steady=True), trim(read, steady=True)
        moved.append(np.abs(found.dimmers - again.dimmers).max())
        # What the advice from readings that are off does to the true surface.
        lost.append(spread(rig.each @ again.dimmers) - found.least_spread_stops)
    assert max(moved) < 0.05
    assert np.percentile(lost, 90) < 0.35


# ------------------------------------------------------------------ which lamp to move


def test_moves_are_the_slope_of_the_least_spread() -> None:
    """Brute force: each lamp's light moved a little, and the programme solved again."""
    draws = np.random.default_rng(5)
    for _ in range(10):
        rig = batten_rigs(draws)
        moves = trim(rig, steady=False).moves
        for which in range(rig.each.shape[1]):
            sheet = Sheet(rig.places, rig.each[:, which])
            for way in np.eye(2) * 1e-4:
                either = []
                for sign in (1, -1):
                    each = rig.each.copy()
                    each[:, which] = sheet.at(rig.places - sign * way)
                    # Together as before: what the shift adds or takes is the lamp's own.
                    shifted = Rig(rig.places, each.sum(axis=1), each)
                    either.append(trim(shifted, steady=False).least_spread_stops)
                slope = (either[0] - either[1]) / 2e-4
                assert moves[which] @ way / 1e-4 == pytest.approx(-slope, abs=1e-3)


def test_a_lamp_that_stands_too_far_to_one_side_is_sent_to_the_other() -> None:
    """Brute force: light to the left, dark to the right (cos⁴ law, Walsh (1958))."""
    places = grid(5, 3)
    pair = [lamp(places, (0.25, 0.5), 0.6, 500), lamp(places, (0.3, 0.5), 0.6, 500)]
    points = [
        {"across": x, "up": y, "illuminance_lx": lx}
        for (x, y), lx in zip(places.tolist(), sum(pair).tolist(), strict=True)
    ]
    lamps = [{"name": f"head {k + 1}", "points": one.tolist()} for k, one in enumerate(pair)]
    got = answer({"ask": "trim", "points": points, "lamps": lamps})
    assert "right" in got["moves"][0]["words"]
