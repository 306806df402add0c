"""A gel learned from two readings of one lamp, or read from a file."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin import desk
from evenkelvin.colorimetry.chromaticity import xyz_to_xy
from evenkelvin.colorimetry.illuminant import illuminant, planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.filters.learned import filled
from examples import examples

CURVES = {gel.name: gel.transmittance for gel in nominal_kit()}
TUNGSTEN = planck(GRID, 3200.0)


def spectrum(values: np.ndarray, nm: np.ndarray = GRID) -> dict:
    return {"spectrum": {"wavelengths_nm": nm.tolist(), "values": values.tolist()}}


def learn(bare: dict, gelled: dict, name: str = "full CTB", **more: object) -> dict:
    return desk.answer({"ask": "learn_gel", "bare": bare, "gelled": gelled, "name": name, **more})


def white(values: np.ndarray) -> tuple[dict, float]:
    xyz = values @ observer_grid()
    x, y = xyz_to_xy(xyz)
    return {"x": float(x), "y": float(y)}, float(xyz[1])


@pytest.mark.parametrize("name", list(CURVES))
def test_the_ratio_of_two_spectra_gives_the_gel_back(name: str) -> None:
    answer = learn(spectrum(TUNGSTEN), spectrum(TUNGSTEN * CURVES[name]), name)
    gel = answer["gel"]
    assert gel["source"] == "spectra"
    assert gel["unknown"] == []
    assert gel["transmittance"] == pytest.approx(CURVES[name].tolist(), abs=2e-3)
    for number in ("mired", "duv", "stops"):
        assert gel[number] == pytest.approx(answer["nominal"][number], abs=1e-3)


def own(name: str, curve: np.ndarray) -> dict:
    nm = GRID.tolist()
    return {"name": name, "wavelengths_nm": nm, "transmittance": curve.tolist()}


def test_a_reading_means_the_gel_it_brings_whatever_the_kit_has_under_that_name() -> None:
    theirs, mine = CURVES["1/2 CTO"], CURVES["1/4 CTB"]
    gelled, _ = white(TUNGSTEN * theirs)
    ask = {
        "ask": "fix",
        "reading": {**gelled, "lamp": "tungsten", "pack": ["amber"]},
        "target": {"cct_K": 3200, "duv": 0},
        "kit": ["full CTO"],
    }
    assert "no gel named" in desk.answer(ask)["problem"]["message"]
    brings = {**ask["reading"], "own_gels": [own("amber", theirs)]}
    answer = desk.answer({**ask, "reading": brings, "own_gels": [own("amber", mine)]})
    # The bare lamp is 3200 K: taking the gel off brings it home, as no gel of the kit could.
    best = answer["packs"][0]
    assert (best["take_off"], best["add"]) == (["amber"], [])
    assert best["lands"]["cct_K"] == pytest.approx(3200.0, abs=15.0)
    where = desk.answer({**ask, "reading": {**brings, "own_gels": [{"name": "amber"}]}})["problem"]
    assert where["field"] == "reading.own_gels.0.transmittance"


def taking_readings() -> list[tuple[str, dict]]:
    """The golden questions, each reading of theirs through a gel that it brings along."""
    amber = own("amber", CURVES["1/4 CTO"])
    keys = {"reading", "lights", "first", "second", "bare", "gelled", "flash", "ambient", "sum",
            "measured", "primaries", "beside", "against"}  # fmt: skip

    def gelled(value: object, key: str) -> object:
        if isinstance(value, list):
            return [gelled(each, key) for each in value]
        if not isinstance(value, dict):
            return value
        if key in keys and value.keys() & {"x", "cct_K", "spectrum"}:
            return {**value, "pack": ["amber"], "own_gels": [amber]}
        return {name: gelled(each, name) for name, each in value.items()}

    found = []
    for file in sorted((Path(__file__).parent / "golden").glob("*.json")):
        for case in json.loads(file.read_text(encoding="utf-8")):
            request = gelled(case["request"], "")
            about_books = "book" in case["request"] or file.stem in ("judge", "since", "levels")
            if request != case["request"] and not about_books and "problem" not in case["answer"]:
                found.append((file.stem, request))
    return found


TAKING = taking_readings()


def test_most_questions_take_readings() -> None:
    assert len({ask for ask, _ in TAKING}) >= 13


@pytest.mark.parametrize("request_", [each for _, each in TAKING], ids=[ask for ask, _ in TAKING])
def test_every_question_takes_the_gels_that_a_reading_brings(request_: dict) -> None:
    assert "problem" not in desk.answer(request_)


def test_an_own_gel_that_hangs_is_the_one_in_the_kit() -> None:
    amber = own("amber", CURVES["1/2 CTO"])
    gelled, _ = white(planck(GRID, 5600.0) * CURVES["1/2 CTO"])
    reading = {**gelled, "lamp": "daylight", "pack": ["amber"], "own_gels": [amber]}
    answer = desk.answer(
        {
            "ask": "fix",
            "reading": reading,
            "target": {"cct_K": 3200, "duv": 0},
            "own_gels": [amber],
            "kit": ["amber", "1/2 CTO", "1/4 CTO", "1/8 CTO"],
        }
    )
    assert answer["packs"]
    assert all(not set(pack["take_off"]) & set(pack["add"]) for pack in answer["packs"]), (
        "a gel is not swapped for itself"
    )
    assert any("amber" in pack["gels"] and pack["add"] for pack in answer["packs"])


def test_the_field_follows_a_light_through_the_gels_it_brings() -> None:
    amber = own("amber", CURVES["1/2 CTO"])
    gelled, _ = white(TUNGSTEN * CURVES["1/2 CTO"])
    answer = desk.answer(
        {
            "ask": "field",
            "target": {"cct_K": 3200, "duv": 0},
            "lights": [{**gelled, "pack": ["amber"], "own_gels": [amber]}],
            "packs": [["amber", "1/2 CTB"]],
        }
    )
    assert len(answer["lights"][0]["path"]) == 2


def test_the_level_comes_from_the_lux_when_the_spectra_are_relative() -> None:
    _, bare_y = white(TUNGSTEN)
    through = TUNGSTEN * CURVES["full CTB"]
    _, gelled_y = white(through)
    bare = spectrum(TUNGSTEN / TUNGSTEN.max()) | {"illuminance_lx": 1000.0}
    gelled = spectrum(through / through.max())
    guessed = learn(bare, gelled)
    assert "not on one scale" in guessed["warnings"][0]
    known = learn(bare, gelled | {"illuminance_lx": 1000.0 * gelled_y / bare_y})
    assert known["warnings"] == []
    assert known["gel"]["transmittance"] == pytest.approx(CURVES["full CTB"].tolist(), abs=1e-3)
    assert known["gel"]["stops"] == pytest.approx(np.log2(bare_y / gelled_y), abs=1e-4)


def test_where_the_lamp_gives_nothing_the_gel_is_unknown_and_filled_smoothly() -> None:
    lamp = illuminant("FL11")
    noise = np.random.default_rng(5).normal(0.0, 2e-4 * lamp.max(), (2, 81))
    through = lamp * CURVES["1/2 CTO"]
    answer = learn(
        spectrum(np.clip(lamp + noise[0], 0, None)),
        spectrum(np.clip(through + noise[1], 0, None)),
        "1/2 CTO",
    )
    gel = answer["gel"]
    curve, real = np.array(gel["transmittance"]), CURVES["1/2 CTO"]
    hidden = np.zeros(81, dtype=bool)
    for low, high in gel["unknown"]:
        hidden |= (low <= GRID) & (high >= GRID)
    assert np.array_equal(hidden, ~(lamp + noise[0] >= 0.01 * (lamp + noise[0]).max()))
    assert 0 < hidden.sum() < 60
    assert curve[~hidden] == pytest.approx(real[~hidden], abs=0.03)
    # Between what is known the guess is close; nowhere does it leave 0 to 1.
    between = hidden & (GRID > 420) & (GRID < 700)
    assert curve[between] == pytest.approx(real[between], abs=0.08)
    assert gel["mired"] == pytest.approx(answer["nominal"]["mired"], abs=2.0)


def test_beyond_the_measured_range_the_gel_is_unknown_and_level() -> None:
    short = (GRID >= 400.0) & (GRID <= 700.0)
    answer = learn(
        spectrum(TUNGSTEN[short], GRID[short]),
        spectrum((TUNGSTEN * CURVES["full CTO"])[short], GRID[short]),
        "full CTO",
    )
    gel = answer["gel"]
    assert gel["unknown"] == [[380.0, 395.0], [705.0, 780.0]]
    edge = np.array(gel["transmittance"])[-17:]
    assert np.ptp(edge[-8:]) < 0.01


def test_a_lamp_of_few_lines_is_refused_with_advice() -> None:
    lines = np.exp(-(((GRID - 589.0) / 8.0) ** 2))
    problem = learn(spectrum(lines), spectrum(lines * 0.5))["problem"]
    assert problem["field"] == "bare"
    assert "tungsten or daylight" in problem["message"]


@pytest.mark.parametrize("amount", ["illuminance_lx", "exposure_lx_s"])
def test_readings_that_are_swapped_are_told(amount: str) -> None:
    bare, _ = white(TUNGSTEN)
    gelled, _ = white(TUNGSTEN * CURVES["1/2 CTB"])
    problem = learn(bare | {amount: 500}, gelled | {amount: 900})["problem"]
    assert problem["field"] == f"gelled.{amount}"
    assert "swapped" in problem["message"]
    spectral = learn(spectrum(TUNGSTEN * CURVES["1/2 CTB"]), spectrum(TUNGSTEN))
    assert "not on one scale" in spectral["warnings"][0] or "problem" in spectral


@settings(max_examples=examples(60), deadline=None)
@given(
    name=st.sampled_from([name for name in CURVES if not name.startswith("ND")]),
    own=st.booleans(),
    kelvin=st.sampled_from([2700.0, 3200.0, 4500.0, 5600.0]),
    lamp=st.sampled_from(["tungsten", "led", "unknown", "fluorescent", "hmi"]),
    lux=st.booleans(),
)
def test_a_shift_gel_has_exactly_that_shift_on_that_lamp(
    name: str, own: bool, kelvin: float, lamp: str, lux: bool
) -> None:
    light = planck(GRID, kelvin)
    (bare, before), (gelled, after) = white(light), white(light * CURVES[name])
    bare, gelled = bare | {"lamp": lamp}, gelled | {"lamp": lamp}
    if lux:
        bare["illuminance_lx"], gelled["illuminance_lx"] = 1000.0, 1000.0 * after / before
    answer = learn(bare, gelled, "mine" if own else name)
    gel = answer["gel"]
    assert gel["source"] == "shift"
    assert ("nominal" in answer) is not own
    curve = np.array(gel["transmittance"])
    assert 0.0 < curve.min() <= curve.max() <= 1.0 + 1e-12
    lit = desk.answer({"ask": "describe", "reading": gelled})
    start = desk.answer({"ask": "describe", "reading": bare})
    if lit["mired"] is not None and start["mired"] is not None:
        assert gel["mired"] == pytest.approx(lit["mired"] - start["mired"], abs=1e-3)
        assert gel["duv"] == pytest.approx(lit["duv"] - start["duv"], abs=1e-6)
    if lux and not any("as much light" in warning for warning in answer["warnings"]):
        assert gel["stops"] == pytest.approx(np.log2(before / after), abs=1e-6)


@pytest.mark.parametrize(
    "shift",
    [
        {"mired": "131", "stops": "0,8"},
        {"mired": -120, "duv": 0.001, "stops": 1.6},
        {"mired": 0, "duv": -0.006},
        {"mired": 60, "reference_K": 3200},
    ],
)
def test_a_gel_known_by_its_numbers_gets_exactly_these(shift: dict) -> None:
    answer = desk.answer({"ask": "learn_gel", "name": "from the box", "shift": shift})
    gel = answer["gel"]
    wanted = {key: float(str(value).replace(",", ".")) for key, value in shift.items()}
    assert gel["mired"] == pytest.approx(wanted["mired"], abs=1e-3)
    assert gel["duv"] == pytest.approx(wanted.get("duv", 0.0), abs=1e-6)
    if "stops" in wanted:
        assert gel["stops"] == pytest.approx(wanted["stops"], abs=1e-6)
    kit = desk.answer({"ask": "kit", "own_gels": [gel]})["gels"][-1]
    assert kit["mired"] == pytest.approx(wanted["mired"], abs=0.05)


def test_a_shift_that_no_gel_makes_is_refused() -> None:
    for shift, field in (
        ({"mired": -200}, "shift.mired"),
        ({"mired": 900}, "shift.mired"),
        ({"stops": 1}, "shift.mired"),
        ({"mired": 20, "stops": -1}, "shift.stops"),
    ):
        answer = desk.answer(
            {"ask": "learn_gel", "name": "n", "shift": shift | {"reference_K": 5600}}
        )
        assert answer["problem"]["field"] == field
    both = {"ask": "learn_gel", "name": "n", "shift": {"mired": 1}, "bare": {"cct_K": 3200}}
    assert desk.answer(both)["problem"]["field"] == "shift"


def test_what_is_learned_goes_straight_back_into_the_kit_and_takes_over() -> None:
    bare, _ = white(TUNGSTEN)
    gelled, _ = white(TUNGSTEN * CURVES["3/4 CTB"])
    gel = learn(bare | {"lamp": "tungsten"}, gelled | {"lamp": "tungsten"})["gel"]
    assert gel["name"] == "full CTB"
    kit = desk.answer({"ask": "kit", "own_gels": [gel]})["gels"]
    (mine,) = [entry for entry in kit if entry["name"] == "full CTB"]
    assert mine["nominal"] is False
    assert mine["transmittance"] == pytest.approx(gel["transmittance"])
    fixed = desk.answer(
        {
            "ask": "fix", "reading": bare | {"lamp": "tungsten"}, "target": gelled,
            "kit": ["full CTB"], "own_gels": [gel], "tolerance": "tight",
        }
    )  # fmt: skip
    assert fixed["packs"][0]["words"] == "full CTB"
    assert fixed["packs"][0]["steps"] < 0.01


def test_the_fill_keeps_what_is_known_and_is_exact_for_a_gap_in_a_straight_density() -> None:
    straight = np.exp(-(GRID - 380.0) / 400.0)
    known = (GRID < 500.0) | (GRID > 540.0)
    result = filled(straight, known)
    assert result[known] == pytest.approx(straight[known])
    assert result == pytest.approx(straight, rel=2e-3)


def table(values: np.ndarray, heading: str) -> str:
    rows = [f"{nm:g};{v:.6f}" for nm, v in zip(GRID, values, strict=True)]
    return "\n".join([heading, *rows])


@pytest.mark.parametrize(
    ("factor", "heading"), [(1.0, "nm;Amber"), (100.0, "nm;Amber"), (100.0, "nm;Amber (%)")]
)
def test_a_gel_is_read_from_fractions_or_percent(factor: float, heading: str) -> None:
    text = table(CURVES["full CTO"] * factor, heading)
    answer = desk.answer({"ask": "import_gel", "file_name": "amber.txt", "text": text})
    (entry,) = answer["gels"]
    assert entry["gel"]["name"] == "Amber"
    assert entry["gel"]["source"] == "file"
    assert entry["gel"]["reference_K"] == 5500.0
    assert entry["gel"]["transmittance"] == pytest.approx(CURVES["full CTO"].tolist(), abs=1e-5)
    named = desk.answer({"ask": "import_gel", "text": text, "name": "full CTO"})
    assert named["gels"][0]["nominal"]["mired"] == pytest.approx(131.0, abs=0.1)


def test_a_file_that_holds_no_gel_is_refused() -> None:
    above = desk.answer({"ask": "import_gel", "text": table(CURVES["full CTO"] * 1.4, "nm;A")})
    assert above["gels"] == []
    assert "cannot add light" in above["problems"][0]["message"]
    light = desk.answer({"ask": "import_gel", "text": table(TUNGSTEN / 4, "nm;Key [W/m²/nm]")})
    assert light["gels"] == []
    assert "by its unit" in light["problems"][0]["message"]


def test_a_gel_needs_a_name() -> None:
    bare, _ = white(TUNGSTEN)
    assert learn(bare, bare, "  ")["problem"]["field"] == "name"
