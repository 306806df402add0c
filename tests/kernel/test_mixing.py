"""mix, unmix and flash_mix: what is asked, what is answered, and what is refused."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.colorimetry.illuminant import illuminant
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer
from examples import examples

TUNGSTEN = {"cct_K": 3200, "duv": 0, "lamp": "tungsten", "name": "key"}
DAYLIGHT = {"cct_K": 5600, "duv": 0.002, "lamp": "daylight", "name": "window"}
GREEN = {"cct_K": 4200, "duv": 0.012, "lamp": "fluorescent", "name": "batten"}


def lit(reading, lux):
    return reading | {"illuminance_lx": lux}


def measured(name, **more):
    curve = {"wavelengths_nm": GRID.tolist(), "values": illuminant(name).tolist()}
    return {"spectrum": curve} | more


def mix(*lights, **more):
    return answer({"ask": "mix", "lights": list(lights)} | more)


def test_shares_follow_stops_dimmer_and_distance():
    got = mix(
        {"reading": lit(TUNGSTEN, 800), "stops": -1},
        {"reading": lit(DAYLIGHT, "400"), "dimmer": "25"},
        {"reading": lit(GREEN, 100), "measured_at_m": "2", "distance_ft": 2 / 0.3048 * 2},
        {"reading": TUNGSTEN, "share_fc": 10, "name": "practical"},
    )
    assert [one["lx"] for one in got["shares"]] == pytest.approx([400, 100, 25, 107.639], rel=1e-5)
    assert got["illuminance_lx"] == pytest.approx(632.639, rel=1e-5)
    assert got["shares"][3]["name"] == "practical"
    assert sum(one["part"] for one in got["shares"]) == pytest.approx(1.0)


def test_a_light_alone_stays_what_it_is_and_order_does_not_matter():
    alone = mix({"reading": lit(GREEN, 50)})
    assert alone["cct_K"] == pytest.approx(4200)
    assert alone["duv"] == pytest.approx(0.012)
    one = mix({"reading": lit(GREEN, 50)}, {"reading": lit(DAYLIGHT, 70)})
    other = mix({"reading": lit(DAYLIGHT, 70)}, {"reading": lit(GREEN, 50)})
    assert one["x"] == pytest.approx(other["x"], abs=1e-15)


@settings(max_examples=examples(40), deadline=None)
@given(a=st.floats(0.1, 1e4), b=st.floats(0.1, 1e4), scale=st.floats(0.01, 10))
def test_a_mixture_lies_between_its_parts_and_keeps_its_colour_when_all_is_dimmed(a, b, scale):
    got = mix({"reading": lit(TUNGSTEN, a)}, {"reading": lit(DAYLIGHT, b)})
    assert 3200 < got["cct_K"] < 5600
    scaled = mix({"reading": lit(TUNGSTEN, a * scale)}, {"reading": lit(DAYLIGHT, b * scale)})
    assert scaled["x"] == pytest.approx(got["x"], abs=1e-12)


def test_without_lux_all_count_as_equal():
    got = mix({"reading": TUNGSTEN}, {"reading": DAYLIGHT})
    assert got["relative"] is True
    assert "illuminance_lx" not in got
    assert [one["part"] for one in got["shares"]] == [0.5, 0.5]


def flashed(reading, lux_seconds):
    return reading | {"exposure_lx_s": lux_seconds}


def test_flashes_are_weighed_by_their_lux_seconds():
    got = mix({"reading": flashed(TUNGSTEN, 10)}, {"reading": flashed(DAYLIGHT, 1000)})
    assert [one["part"] for one in got["shares"]] == pytest.approx([10 / 1010, 1000 / 1010])
    assert [one["lx_s"] for one in got["shares"]] == [10, 1000]
    assert [one["lx"] for one in got["shares"]] == [None, None]
    assert (got["relative"], got["exposure_lx_s"]) == (False, 1010)
    assert "illuminance_lx" not in got
    dimmed = mix({"reading": flashed(TUNGSTEN, 10), "stops": 1}, {"reading": flashed(DAYLIGHT, 20)})
    assert [one["part"] for one in dimmed["shares"]] == [0.5, 0.5]


def test_lights_of_different_units_or_of_none_are_refused_by_name():
    both = mix({"reading": flashed(TUNGSTEN, 10)}, {"reading": lit(DAYLIGHT, 20)})["problem"]
    assert both["field"] == "lights.0.share_lx"
    assert both["message"].startswith("key is read in lux·s and window in lux")
    one = mix({"reading": flashed(TUNGSTEN, 10)}, {"reading": DAYLIGHT})["problem"]
    assert one["field"] == "lights.1.share_lx"
    assert one["message"].startswith("window has no lux")
    # A share that is typed in lux counts, whatever was read.
    typed = mix({"reading": flashed(TUNGSTEN, 10), "share_lx": 20}, {"reading": lit(DAYLIGHT, 20)})
    assert [one["part"] for one in typed["shares"]] == [0.5, 0.5]


def test_the_edge_between_lux_and_lux_seconds_has_no_stops():
    got = mix({"reading": lit(TUNGSTEN, 5)}, beside=[{"reading": flashed(TUNGSTEN, 5)}])
    assert got["boundary"]["stops"] is None


@settings(max_examples=examples(40), deadline=None)
@given(
    amounts=st.lists(st.floats(0.01, 1e5), min_size=1, max_size=5),
    unit=st.sampled_from(["illuminance_lx", "exposure_lx_s"]),
)
def test_parts_are_the_amounts_whatever_the_unit(amounts, unit):
    got = mix(*({"reading": TUNGSTEN | {unit: amount}} for amount in amounts))
    parts = [one["part"] for one in got["shares"]]
    assert parts == pytest.approx([amount / sum(amounts) for amount in amounts])


def test_spectrum_comes_back_when_all_are_measured_and_can_be_asked_about_again():
    got = mix(
        {"reading": measured("A", illuminance_lx=300)},
        {"reading": measured("D65", illuminance_lx=200)},
    )
    again = answer({"ask": "describe", "reading": {"spectrum": got["spectrum"]}})
    assert again["x"] == pytest.approx(got["x"], abs=1e-9)
    assert got["spectrum_unit"] == "mW/(m² nm)"
    assert "spectrum" not in mix(
        {"reading": lit(TUNGSTEN, 1)}, {"reading": measured("A") | {"illuminance_lx": 2}}
    )


def test_deep_primaries_mix_to_a_white_although_no_lamp_spectrum_reaches_them():
    deep = ((0.69, 0.30, 280), (0.17, 0.70, 650), (0.14, 0.05, 75))
    got = mix(*({"reading": {"x": x, "y": y, "illuminance_lx": lux}} for x, y, lux in deep))
    assert got["illuminance_lx"] == pytest.approx(1005)
    assert got["cct_K"] is not None
    blue = mix({"reading": {"x": 0.166, "y": 0.0095, "illuminance_lx": 75}})
    assert blue["cct_K"] is None
    assert blue["cc"] is None


def test_boundary_between_two_zones():
    zone = [{"reading": lit(TUNGSTEN, 400)}, {"reading": lit(DAYLIGHT, 100)}]
    same = mix(*zone, beside=zone)["boundary"]
    assert same["steps"] == pytest.approx(0.0, abs=1e-9)
    assert same["stops"] == pytest.approx(0.0)
    assert same["words"] == "no edge in colour to be seen"
    apart = mix(*zone, beside=[{"reading": lit(DAYLIGHT, 250)}])["boundary"]
    assert apart["steps"] > 20
    assert "strong edge" in apart["words"]
    assert apart["stops"] == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("lights", "field"),
    [
        ([], "lights"),
        ([{"reading": TUNGSTEN, "share_lx": -1}], "lights.0.share_lx"),
        ([{"reading": TUNGSTEN, "share_lx": 0}], "lights"),
        ([{"reading": TUNGSTEN, "share_lx": 1e-310}], "lights.0.share_lx"),
        ([{"reading": TUNGSTEN, "share_fc": 1e-310}], "lights.0.share_fc"),
        ([{"reading": TUNGSTEN, "dimmer": 5e-324}], "lights.0.dimmer"),
        ([{"reading": TUNGSTEN, "share_lx": 5}, {"reading": DAYLIGHT}], "lights.1.share_lx"),
        ([{"reading": TUNGSTEN, "share_lx": 5, "share_fc": 5}], "lights.0.share_fc"),
        ([{"reading": TUNGSTEN, "dimmer": 130}], "lights.0.dimmer"),
        ([{"reading": TUNGSTEN, "distance_m": 3}], "lights.0.measured_at_m"),
        ([{"reading": TUNGSTEN, "measured_at_m": 3}], "lights.0.distance_m"),
        ([{"reading": {"x": 0.4}}], "lights.0.reading.y"),
        ([{"light": TUNGSTEN}], "lights.0.light"),
    ],
)
def test_bad_mixtures_are_named(lights, field):
    assert mix(*lights)["problem"]["field"] == field


def test_a_dimmed_filament_turns_warmer_and_that_is_an_estimate():
    got = mix({"reading": lit(TUNGSTEN, 100), "dimmer": 40})
    asked = answer({"ask": "dim", "reading": TUNGSTEN, "percent_light": 40})
    assert got["cct_K"] == pytest.approx(asked["cct_K"], abs=1e-6)
    assert got["shares"][0]["cct_K"] == pytest.approx(asked["cct_K"], abs=1e-6)
    assert got["illuminance_lx"] == pytest.approx(40)
    assert any("estimate" in warning for warning in got["warnings"])
    down = mix({"reading": lit(TUNGSTEN, 100), "stops": -1, "dimmer": 80})
    assert down["cct_K"] == pytest.approx(got["cct_K"], abs=1e-6)
    by_curve = mix({"reading": lit(measured("A", lamp="tungsten"), 100), "dimmer": 40})
    assert by_curve["cct_K"] < 2856 - 150
    assert by_curve["spectrum_unit"] == "mW/(m² nm)"


@pytest.mark.parametrize(
    "light",
    [
        {"reading": lit(DAYLIGHT, 100), "dimmer": 40},
        {"reading": lit(TUNGSTEN, 100), "stops": 1},
        {"reading": lit(TUNGSTEN, 100), "measured_at_m": 2, "distance_m": 4},
    ],
)
def test_nothing_else_moves_a_colour(light):
    plain = mix({"reading": light["reading"]})
    got = mix(light)
    assert got["cct_K"] == pytest.approx(plain["cct_K"])
    assert not any("estimate" in warning for warning in got["warnings"])


def test_a_dimmed_light_that_no_filament_gives_is_warned_about():
    odd = lit({"cct_K": 5600, "duv": 0, "lamp": "tungsten", "name": "practical"}, 100)
    got = mix({"reading": odd, "dimmer": 40})
    assert got["cct_K"] == pytest.approx(5600)
    assert any("read it again" in warning for warning in got["warnings"])


def unmix(*lights, total):
    return answer({"ask": "unmix", "lights": list(lights), "sum": total})


def test_two_unlike_lights_are_told_apart():
    got = unmix(TUNGSTEN, DAYLIGHT, total={"cct_K": 4000, "duv": -0.004, "illuminance_lx": 500})
    assert sum(got["shares_lx"]) == pytest.approx(500, rel=1e-6)
    assert got["certain"] is True
    assert got["missing"] is None
    assert got["by"] == "x y"


def test_three_lights_along_the_locus_are_not_called_certain():
    # The third lies between the other two: 9 % of the first, or 42 %, fit the readings as well.
    places = ((0.44, 0.405), (0.332, 0.347), (0.38, 0.376))
    lights = [{"x": x, "y": y, "name": name} for (x, y), name in zip(places, "abc", strict=True)]
    got = unmix(*lights, total={"x": 0.384, "y": 0.381})
    assert got["certain"] is False
    assert any("too much alike" in words and "a, b and c" in words for words in got["words"])
    assert all(one["most_part"] - one["least_part"] > 0.3 for one in got["shares"])
    # A share at zero is as uncertain as any other.
    assert all(one["uncertainty_part"] > 0.1 for one in got["shares"])


def test_a_light_that_is_a_mixture_of_two_others_is_not_told_apart_by_spectra():
    made = mix(*({"reading": measured(n, illuminance_lx=100)} for n in ("A", "D65")))
    third = {"spectrum": made["spectrum"], "name": "both"}
    lights = [measured("A") | {"name": "key"}, measured("D65") | {"name": "window"}, third]
    total = mix(*({"reading": one | {"illuminance_lx": 100}} for one in lights))
    got = unmix(*lights, total={"spectrum": total["spectrum"]})
    assert got["by"] == "spectra"
    assert got["certain"] is False
    assert any("key, window and both" in words for words in got["words"])
    for one in got["shares"]:
        assert one["least_part"] <= 1 / 3 <= one["most_part"]


def test_alike_lights_get_an_honest_word():
    twin = TUNGSTEN | {"cct_K": 3220, "name": "fill"}
    got = unmix(TUNGSTEN, twin, DAYLIGHT, total=mix_of(TUNGSTEN, twin, DAYLIGHT))
    assert got["certain"] is False
    assert any("too much alike" in word and "key and fill" in word for word in got["words"])
    assert got["shares"][2]["uncertainty_part"] < 0.05


def mix_of(*readings):
    made = mix(*({"reading": lit(one, 100)} for one in readings))
    return {"x": made["x"], "y": made["y"], "illuminance_lx": made["illuminance_lx"]}


def test_four_lights_by_x_y_alone_show_how_wide_each_share_is_open():
    deep = {"x": 0.30, "y": 0.30, "name": "blue"}
    lights = (TUNGSTEN, DAYLIGHT, GREEN, deep)
    got = unmix(*lights, total=mix_of(*lights))
    assert got["certain"] is False
    for one in got["shares"]:
        assert one["least_part"] - 1e-9 <= 0.25 <= one["most_part"] + 1e-9
    assert any("three at most" in word for word in got["words"])


def test_what_is_missing_is_named_with_its_colour_when_lux_are_known():
    made = mix_of(TUNGSTEN, DAYLIGHT, GREEN)
    got = unmix(lit(TUNGSTEN, 100), lit(DAYLIGHT, 100), total=made)
    assert got["missing"]["lx"] == pytest.approx(100, rel=1e-6)
    assert got["missing"]["white"]["cct_K"] == pytest.approx(4200, rel=1e-3)
    assert got["missing"]["white"]["duv"] == pytest.approx(0.012, abs=1e-5)
    assert got["shares_lx"] == pytest.approx([100, 100])
    assert got["certain"] is False


def test_what_is_missing_is_pointed_at_when_only_x_y_are_known():
    total = {"cct_K": 4300, "duv": 0.015}
    got = unmix(TUNGSTEN, DAYLIGHT, total=total)
    assert got["missing"]["white"] is None
    assert "green" in got["missing"]["words"]
    assert got["shares_lx"] == [None, None]


def test_what_is_missing_is_seen_in_the_spectrum():
    lights = [measured("A"), measured("D65")]
    made = mix(*({"reading": measured(n, illuminance_lx=100)} for n in ("A", "D65", "FL11")))
    got = unmix(*lights, total={"spectrum": made["spectrum"], "illuminance_lx": 300})
    assert got["by"] == "spectra"
    assert got["missing"] is not None
    assert 0 < got["missing"]["lx"] < 100


def test_unmix_refuses_bad_input():
    assert unmix(total=TUNGSTEN)["problem"]["field"] == "lights"
    assert unmix(TUNGSTEN, total={"cct_K": 0})["problem"]["field"] == "sum.cct_K"
    got = answer({"ask": "unmix", "lights": [TUNGSTEN]})
    assert got["problem"]["field"] == "sum"


def test_unmix_names_the_light_that_cannot_be_used():
    typo = {"x": "0.4q", "y": 0.4, "name": "bench"}
    problem = unmix(TUNGSTEN, typo, total=TUNGSTEN)["problem"]
    assert problem["field"] == "lights.1.x"
    assert problem["message"].startswith("bench: ")
    nameless = unmix(TUNGSTEN, {}, total=TUNGSTEN)["problem"]
    assert nameless["field"] == "lights.1.x"
    assert nameless["message"].startswith("light 2: ")


FLASH = {"cct_K": 5600, "duv": 0.001, "lamp": "flash", "exposure_lx_s": "40"}
ROOM = {"cct_K": 2900, "duv": 0.002, "lamp": "tungsten", "illuminance_lx": 600}


def flash_mix(**more):
    return answer({"ask": "flash_mix", "flash": FLASH, "ambient": ROOM, "time_s": "1/60"} | more)


def test_flash_against_ambient_by_the_shutter():
    got = flash_mix()
    assert got["ratio_stops"] == pytest.approx(np.log2(40 / 10))
    assert got["flash_part"] == pytest.approx(0.8)
    assert got["mix"]["exposure_lx_s"] == pytest.approx(50)
    assert [one["ratio_stops"] for one in got["shutters"]] == pytest.approx([4, 3, 2, 1, 0])
    kelvins = [one["mix"]["cct_K"] for one in got["shutters"]]
    assert kelvins == sorted(kelvins, reverse=True)


def test_the_best_pack_on_the_flash_brings_it_to_the_ambient():
    got = flash_mix()
    best = got["packs"][0]
    assert best["verdict"] == "holds"
    assert best["ratio_stops"] == pytest.approx(got["ratio_stops"] - best["stops_lost"])
    assert best["mix"]["cct_K"] == pytest.approx(2900, abs=60)


def test_a_shutter_angle_serves_as_well():
    assert flash_mix(time_s=None, shutter_deg=180, fps=24)["time_s"] == pytest.approx(1 / 48)


@pytest.mark.parametrize(
    ("more", "field"),
    [
        ({"time_s": ""}, "time_s"),
        ({"time_s": "1/0"}, "time_s"),
        ({"flash": ROOM}, "flash.exposure_lx_s"),
        ({"ambient": FLASH}, "ambient.illuminance_lx"),
        ({"ambient": None}, "ambient"),
        ({"sync": 1}, "sync"),
    ],
)
def test_flash_mix_refuses_bad_input(more, field):
    assert flash_mix(**more)["problem"]["field"] == field


def test_a_ribbon_needs_two_zones_and_a_number_of_places() -> None:
    zone = [{"reading": {"cct_K": 3200, "duv": 0}}]
    white = {"cct_K": 5600}
    for more, field in (
        ({"ribbon": 5}, "beside"),
        ({"beside": zone, "ribbon": 1}, "ribbon"),
        ({"beside": zone, "ribbon": 2.5}, "ribbon"),
        ({"beside": zone, "white": white}, "ribbon"),
        ({"beside": zone, "ribbon": 5, "white": {"cct_K": 1}}, "white.cct_K"),
    ):
        got = answer({"ask": "mix", "lights": zone, **more})
        assert got["problem"]["field"] == field, got


def test_a_ribbon_between_like_zones_has_no_worst_place_and_turns_round_with_them() -> None:
    warm = [{"reading": {"cct_K": 3200, "duv": 0, "illuminance_lx": 500}}]
    cool = [{"reading": {"cct_K": 5600, "duv": 0.004, "illuminance_lx": 100}}]
    white = {"cct_K": 4300}
    same = answer({"ask": "mix", "lights": warm, "beside": warm, "ribbon": 4})["ribbon"]
    assert same["worst"] is None
    assert {tuple(one["srgb"]) for one in same["colours"]} == {(118, 118, 118)}
    there, back = (
        answer({"ask": "mix", "lights": one, "beside": other, "ribbon": 6, "white": white})
        for one, other in ((warm, cool), (cool, warm))
    )
    colours = [one["srgb"] for one in there["ribbon"]["colours"]]
    assert colours == [one["srgb"] for one in back["ribbon"]["colours"]][::-1]
    assert there["ribbon"]["worst"]["at"] == 1 - back["ribbon"]["worst"]["at"]
    even = answer(
        {
            "ask": "mix",
            "lights": [{"reading": {"cct_K": 3200, "duv": 0}}],
            "beside": [{"reading": {"cct_K": 5600, "duv": 0}}],
            "ribbon": 5,
        }
    )["ribbon"]
    assert even["worst"]["at"] == 0.5
    assert [one["stops"] for one in even["colours"]] == [0.0] * 5
