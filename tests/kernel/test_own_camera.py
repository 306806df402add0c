"""A camera of one's own as the judge, two side by side, and the file that brings it."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from evenkelvin.colorimetry.illuminant import illuminant
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer

NM = np.arange(400.0, 701.0, 10.0)
WHITE = {"cct_K": 4300, "duv": 0}


def bell(centre: float, width: float) -> list[float]:
    return np.exp(-(((NM - centre) / width) ** 2)).round(5).tolist()


def camera(name: str = "A", red: float = 600, **more: Any) -> dict[str, Any]:
    curves = {"red": bell(red, 45), "green": bell(540, 50), "blue": bell(460, 40)}
    return {"name": name, "wavelengths_nm": NM.tolist(), **curves, **more}


def lamp(name: str, **more: Any) -> dict[str, Any]:
    curve = {"wavelengths_nm": GRID.tolist(), "values": illuminant(name).tolist()}
    return {"spectrum": curve, "name": name, **more}


def ask(name: str, **fields: Any) -> dict[str, Any]:
    got = answer({"ask": name, **fields})
    assert "problem" not in got, got
    return got


def test_the_level_of_its_channels_says_nothing() -> None:
    plain = camera()
    other = camera(blue=[v / 9 for v in plain["blue"]])
    other["red"] = [7.5 * v for v in plain["red"]]
    lights = [lamp("FL2"), lamp("LED-B3")]
    one, two = (
        ask("agree", lights=lights, target=WHITE, judge="camera", camera=each)
        for each in (plain, other)
    )
    for mine, theirs in zip(one["lights"], two["lights"], strict=True):
        assert mine["camera"]["steps"] == pytest.approx(theirs["camera"]["steps"], abs=1e-9)
        assert mine["verdict"] == theirs["verdict"]


def test_every_judge_goes_by_it() -> None:
    own = {"judge": "camera", "camera": camera(red=630)}
    lights = [lamp("FL11"), lamp("LED-B3")]
    standard = ask("agree", lights=lights, target=WHITE, judge="camera")
    got = ask("agree", lights=lights, target=WHITE, **own)
    assert got["camera"] == "A"
    assert standard["camera"] == "the standard camera"
    steps = [one["camera"]["steps"] for one in got["lights"]]
    assert steps != [one["camera"]["steps"] for one in standard["lights"]]
    looks = [ask("seen", lights=lights, white=WHITE, **more)["lights"] for more in (own, {})]
    assert looks[0] != looks[1]
    pair = ask("compare", first=lights[0], second=lights[1], camera=own["camera"])
    assert pair["camera"] != ask("compare", first=lights[0], second=lights[1])["camera"]
    assert pair["camera"]["observer"] == "A and BT.709 display"
    whites = {"from_K": 4300, "to_K": 4300}
    plan = ask("balance", lights=[{"reading": one} for one in lights], whites=whites, kit=[], **own)
    for mine, part in zip(steps, plan["front"][0]["per_light"], strict=True):
        assert part["camera"]["steps"] == pytest.approx(mine, abs=1e-6)
    out = [k for k, one in enumerate(got["lights"]) if one["camera"]["verdict"] != "holds"]
    assert plan["front"][0]["camera_out"] == out


def test_two_cameras_differ_with_the_sign_turned_round_and_not_from_themselves() -> None:
    lights = [lamp("A"), lamp("FL2"), lamp("FL11"), {"x": 0.41, "y": 0.4, "name": "bench"}]
    first, second = camera("A"), camera("B", red=635)
    there = ask("cameras", lights=lights, white=WHITE, first=first, second=second)
    back = ask("cameras", lights=lights, white=WHITE, first=second, second=first)
    assert there["lights"][3]["apart"] is None
    assert any("bench" in words for words in there["warnings"])
    for one, other in zip(there["lights"][:3], back["lights"][:3], strict=True):
        assert one["first"] == other["second"]
        assert one["apart"]["up"] == pytest.approx(-other["apart"]["up"], abs=1e-9)
        assert one["apart"]["across"] == pytest.approx(-other["apart"]["across"], abs=1e-9)
    assert there["edge"]["steps"] == pytest.approx(back["edge"]["steps"])
    assert there["edge"]["words"].startswith("A sees ")
    assert there["edge"]["words"].endswith(" than B does.")
    same = ask("cameras", lights=lights, white=WHITE, first=first, second=camera("C"))
    assert same["edge"]["words"] == "A and C see every edge alike."
    assert same["lights"][0]["apart"]["words"] == "A and C see A alike."


def test_a_lone_light_has_no_edge_and_a_typo_stands_beside() -> None:
    got = ask("cameras", lights=[{"x": "q", "y": 1}, lamp("A")], white=WHITE, first=camera())
    assert got["edge"] is None
    assert got["lights"][0]["problem"]["field"] == "x"
    assert got["second"] == "the standard camera"


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"name": " "}, "camera.name"),
        ({"wavelengths_nm": NM[:20].tolist()}, "camera.wavelengths_nm"),
        ({"wavelengths_nm": NM[::-1].tolist()}, "camera.wavelengths_nm"),
        ({"wavelengths_nm": []}, "camera.wavelengths_nm"),
        ({"wavelengths_nm": [400, *range(430, 730, 10)]}, "camera.wavelengths_nm"),
        ({"red": [1.0]}, "camera.red"),
        ({"green": [0.0] * 31}, "camera.green"),
        ({"blue": [-1.0] + [1.0] * 30}, "camera.blue"),
        ({"blue": bell(540, 50)}, "camera.blue"),
        ({"red": ["a"] * 31}, "camera.red.0"),
        ({"make": "x"}, "camera.make"),
    ],
)
def test_what_is_no_camera_names_the_field(change: dict[str, Any], field: str) -> None:
    for question in (
        {"ask": "agree", "lights": [lamp("A")], "target": WHITE, "judge": "camera"},
        {"ask": "seen", "lights": [lamp("A")], "white": WHITE, "judge": "camera"},
        {"ask": "compare", "first": lamp("A"), "second": lamp("A")},
        {"ask": "balance", "lights": [{"reading": lamp("A")}], "judge": "camera"},
    ):
        got = answer(question | {"camera": camera() | change})
        assert got["problem"]["field"] == field, got


def test_a_camera_needs_to_be_asked_and_two_need_two_names() -> None:
    for question in (
        {"ask": "agree", "lights": [lamp("A")], "target": WHITE},
        {"ask": "seen", "lights": [lamp("A")], "white": WHITE},
    ):
        assert answer(question | {"camera": camera()})["problem"]["field"] == "judge"
    both = {"ask": "cameras", "lights": [lamp("A")], "white": WHITE}
    assert answer(both)["problem"]["field"] == "first"
    twice = answer(both | {"first": camera(), "second": camera(red=620)})
    assert twice["problem"]["field"] == "second.name"
    bare = answer(both | {"first": camera(), "white": {"x": 0.4, "y": 0.4}})
    assert bare["problem"]["field"] == "white"


def table(heads: str, delimiter: str = ";", comma: bool = False, **more: Any) -> dict[str, Any]:
    own = camera()
    rows = [
        delimiter.join(str(value).replace(".", ",") if comma else str(value) for value in row)
        for row in zip(NM, own["red"], own["green"], own["blue"], strict=True)
    ]
    return answer({"ask": "import", "text": "\n".join([heads, *rows]), **more})


@pytest.mark.parametrize(
    ("heads", "more"),
    [
        ("nm;red sensitivity;green sensitivity;blue sensitivity", {}),
        ("nm;Empfindlichkeit Rot;Empfindlichkeit Grün;Empfindlichkeit Blau", {"comma": True}),
        ("nm;R;G;B", {"choices": {"columns": "camera"}}),
        ("nm;one;two;three", {"choices": {"columns": "camera"}}),
        ("nm\tRed\tGreen\tBlue", {"delimiter": "\t", "file_name": "my qe.txt"}),
    ],
)  # fmt: skip
def test_a_file_brings_a_camera_that_a_question_takes(heads: str, more: dict[str, Any]) -> None:
    got = table(heads, **({"file_name": "stage.csv"} | more))
    assert got["spectra"] == []
    (found,) = got["cameras"]
    assert found.pop("problem") is None
    assert found["name"]
    for channel in ("red", "green", "blue"):
        assert found[channel] == camera()[channel]
    ask("seen", lights=[lamp("A")], white=WHITE, judge="camera", camera=found)


def test_columns_in_another_order_are_told_by_their_heads_or_their_wavelengths() -> None:
    own = camera()
    rows = zip(NM, own["blue"], own["green"], own["red"], strict=True)
    text = "\n".join(";".join(map(str, row)) for row in rows)
    for heads in ("nm;B;G;R", "nm;1;2;3"):
        got = answer(
            {"ask": "import", "text": f"{heads}\n{text}", "choices": {"columns": "camera"}}
        )
        assert got["cameras"][0]["red"] == own["red"], got


def test_three_lights_headed_red_green_blue_stay_lights_but_it_is_asked() -> None:
    got = table("nm;red;green;blue", file_name="primaries.csv")
    assert [one["name"] for one in got["spectra"]] == ["red", "green", "blue"]
    assert got["cameras"] == []
    question = next(one for one in got["questions"] if one["field"] == "columns")
    assert (question["taken"], question["options"]) == ("lights", ["lights", "camera"])
    kept = table("nm;red sensitivity;green;blue", choices={"columns": "lights"})
    assert len(kept["spectra"]) == 3
    (question,) = (one for one in kept["questions"] if one["field"] == "columns")
    assert question["taken"] == "lights"
    # Whoever chose wrongly can choose again.
    back = table("nm;red;green;blue", choices={"columns": "camera"})
    assert [one["taken"] for one in back["questions"]] == ["camera"]


def test_a_file_that_is_no_camera_says_so_and_keeps_its_lights() -> None:
    text = "nm;1;2\n" + "\n".join(f"{nm:g};1;2" for nm in NM)
    got = answer({"ask": "import", "text": text, "choices": {"columns": "camera"}})
    assert got["cameras"] == []
    assert got["problems"][0]["field"] == "columns"
    assert len(got["spectra"]) == 2
