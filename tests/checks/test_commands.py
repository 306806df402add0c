"""Each command of the command line: its own examples are run, and `--json` is the desk's answer.

No source: our own promise. The numbers themselves are checked where the kernel is.
"""

from __future__ import annotations

import json
import re
import shlex
import subprocess
from pathlib import Path
from typing import Any

import pytest

from evenkelvin.cli import complaint, run
from evenkelvin.cli.arguments import make_parser
from evenkelvin.desk import ASKS, answer
from evenkelvin.problem import Problem

ROOT = Path(__file__).parents[2]
NM = range(380, 781, 5)
SET = b"name;x;y\nkey;0,3279;0,3402\nfill;0,3671;0,3668\nback;0,4401;0,4052\n"
LIGHTS = [
    {"name": "key", "x": "0,3279", "y": "0,3402"},
    {"name": "fill", "x": "0,3671", "y": "0,3668"},
    {"name": "back", "x": "0,4401", "y": "0,4052"},
]
BOOK = (ROOT / "demo_readings" / "night_ferry.json").read_bytes()
SPECTRUM = ("nm,panel [light]\n" + "".join(f"{n},{(n - 300) / 480:.4f}\n" for n in NM)).encode()
#: What the examples of `--help` read.
FILES = {
    "set.csv": SET,
    "alone.csv": SET,
    "window.csv": b"name;x;y\nbeyond;0,3131;0,3291\n",
    "sum.csv": b"name;x;y\nall;0,3701;0,3690\n",
    "panel.csv": SPECTRUM,
    "key.csv": SPECTRUM.replace(b"panel", b"key"),
    "fill.csv": SPECTRUM.replace(b"panel", b"fill"),
    "day.csv": b"time;name;x;y;lux\n14:10;sill;0,3302;0,3441;4100\n16:40;sill;0,3454;0,3560;2300\n",
    "days.csv": b"date;time;x;y\n2026-06-21;14:10;0,33;0,344\n2026-06-22;9:00;0,34;0,35\n",
    "question.json": b'{"ask": "flicker", "mains_hz": 50, "fps": 24}',
    "shoot.json": BOOK,
    "a.json": BOOK,
    "b.json": BOOK,
}
#: Every command, as its `--help` shows it.
COMMANDS: dict[str, Any] = next(
    action.choices for action in make_parser()._actions if isinstance(action.choices, dict)
)
EXAMPLES = [
    line.strip().removeprefix("evenkelvin ").partition(" > ")[0]
    for made in COMMANDS.values()
    for line in made.format_help().splitlines()
    if line.startswith("  evenkelvin ")
]


def give(*arguments: str) -> str:
    return run(arguments, FILES.__getitem__).text


def asked(request: dict[str, Any]) -> Any:
    return json.loads(json.dumps(answer(request)))


def test_every_command_shows_an_example() -> None:
    assert {example.split()[0] for example in EXAMPLES} == set(COMMANDS)


@pytest.mark.parametrize("example", EXAMPLES)
def test_an_example_of_the_help_answers(example: str) -> None:
    done = run(shlex.split(example), FILES.__getitem__)
    assert (done.code, done.notes) == (0, [])
    assert done.text.strip() or done.files
    if not example.startswith(("ask", "completion")):
        assert not re.search(r"\b(None|nan)\b|\{|-0\.0+ ", done.text)


@pytest.mark.parametrize(
    ("command", "request_"),
    [
        (
            "balance set.csv --from 3200 --to 5600 --stock '1/2 CTO=4' --may 3=dial --may 2=none "
            "--meant 1=+20",
            {
                "ask": "balance",
                "lights": [
                    {"reading": LIGHTS[0], "meant": {"warmer_mired": "20"}},
                    {"reading": LIGHTS[1], "may": []},
                    {"reading": LIGHTS[2], "may": ["dial"]},
                ],
                "whites": {"from_K": "3200", "to_K": "5600"},
                "stock": {"1/2 CTO": "4"},
            },
        ),
        (
            "mix set.csv --dimmer 1=50 --stops 2=-1 --beside window.csv",
            {
                "ask": "mix",
                "lights": [
                    {"reading": LIGHTS[0], "dimmer": "50"},
                    {"reading": LIGHTS[1], "stops": "-1"},
                    {"reading": LIGHTS[2]},
                ],
                "beside": [{"reading": {"name": "beyond", "x": "0,3131", "y": "0,3291"}}],
            },
        ),
        (
            "unmix alone.csv 0.3810 0.3742 --lux 500",
            {
                "ask": "unmix",
                "lights": LIGHTS,
                "sum": {"x": "0.3810", "y": "0.3742", "illuminance_lx": "500"},
            },
        ),
        (
            "dial --target 4300 --tried 0.368 0.369 0.3725 0.379 --range 2700 6500 --meant=-20",
            {
                "ask": "dial",
                "target": {"cct_K": "4300"},
                "meant": {"cooler_mired": "20"},
                "range": {"from_K": "2700", "to_K": "6500"},
                "history": [
                    {
                        "dialled": {"x": "0.368", "y": "0.369"},
                        "measured": {"x": "0.3725", "y": "0.379"},
                    }
                ],
            },
        ),
        (
            "dim 0.4287 0.4019 --to 2700",
            {
                "ask": "dim",
                "reading": {"x": "0.4287", "y": "0.4019", "lamp": "tungsten"},
                "to": {"cct_K": "2700"},
            },
        ),
        (
            "seen set.csv --white 4300 --white-duv 0,001 --judge camera",
            {
                "ask": "seen",
                "lights": LIGHTS,
                "white": {"cct_K": "4300", "duv": "0,001"},
                "judge": "camera",
            },
        ),
        ("kit", {"ask": "kit"}),
        (
            "expose --fc 60 --iso 800 --fps 24 --shutter 172.8 --nd 0.6 --dome --tenths",
            {
                "ask": "expose",
                "known": {
                    "illuminance_fc": "60",
                    "iso": "800",
                    "fps": "24",
                    "shutter_deg": "172.8",
                    "filter_stops": "0.6",
                    "receptor": "dome",
                },
                "say": "tenths",
            },
        ),
        (
            "flicker --mains 60 --fps 25 --time 1/50 --modulation 40",
            {
                "ask": "flicker",
                "mains_hz": "60",
                "fps": "25",
                "time_s": "1/50",
                "modulation_percent": "40",
            },
        ),
        (
            "windows 2,4x1.8:3 1x1 --gel 'full CTO' --roll 1.22x7.62:2 --overlap 0.1",
            {
                "ask": "windows",
                "windows": [
                    {"width_m": "2,4", "height_m": "1.8", "count": "3"},
                    {"width_m": "1", "height_m": "1"},
                ],
                "gels": ["full CTO"],
                "rolls": [{"width_m": "1.22", "length_m": "7.62", "count": "2"}],
                "overlap_m": "0.1",
                "length_unit": "m",
            },
        ),
        (
            "sun 42.88S 147.3 --date 2026-11-17 --utc 10:30 --facing 20 --sky hazy",
            {
                "ask": "sun",
                "lat_deg": "42.88S",
                "lon_deg": "147.3",
                "date": "2026-11-17",
                "utc_offset_h": "10:30",
                "facing_deg": "20",
                "sky": "hazy",
            },
        ),
        (
            "hold days.csv --at 15:00 --gel 'full CTO' --target 3200 --tolerance 7 --wanted 800 "
            "--where 53.55N 9.99E --date 2026-06-21 --utc 2 --facing W --horizon 12 --sky hazy",
            {
                "ask": "hold",
                "time": "15:00",
                "target": {"cct_K": "3200"},
                "tolerance": "7",
                "wanted_lx": "800",
                "lat_deg": "53.55N",
                "lon_deg": "9.99E",
                "date": "2026-06-21",
                "utc_offset_h": "2",
                "sky": "hazy",
                "windows": [
                    {
                        "gels": ["full CTO"],
                        "facing_deg": "W",
                        "horizon_deg": "12",
                        "readings": [{"time": "14:10", "x": "0,33", "y": "0,344"}],
                    }
                ],
            },
        ),
        (
            "even 0:0:310 1:0,5:345 --within 0.2",
            {
                "ask": "even",
                "points": [
                    {"across": "0", "up": "0", "illuminance_lx": "310"},
                    {"across": "1", "up": "0,5", "illuminance_lx": "345"},
                ],
                "within_stops": "0.2",
            },
        ),
        (
            "falloff --lux 800 --distance 3 --wanted 400",
            {
                "ask": "falloff",
                "illuminance_lx": "800",
                "distance_m": "3",
                "wanted_lx": "400",
            },
        ),
    ],
    ids=lambda value: value.split()[0] if isinstance(value, str) else "",
)
def test_json_is_what_the_desk_answers(command: str, request_: dict[str, Any]) -> None:
    found = asked(request_)
    assert "problem" not in found
    assert json.loads(give(*shlex.split(command), "--json")) == found
    assert give(*shlex.split(command))


def test_every_command_that_asks_something_gives_json() -> None:
    with_json = {name for name, made in COMMANDS.items() if "--json" in made.format_help()}
    assert set(COMMANDS) - with_json == {"ask", "book", "convert", "completion"}
    assert with_json <= set(ASKS)


@pytest.mark.parametrize(
    ("command", "words"),
    [
        ("sun 99 9 --date 2026-11-17 --utc 1", r"^LAT: The latitude is 99"),
        ("sun 53 9 --date today --utc 1", r"^--date: "),
        ("expose --lux=-5 --iso 800", r"^--lux: "),
        ("flicker --mains=-50", r"^--mains: "),
        ("windows 2", r"^A size is WIDTHxHEIGHT"),
        ("windows ax2", r"^PANE: "),
        ("windows 2x2 --roll 1", r"^A size is WIDTHxLENGTH"),
        ("balance set.csv --may 9=gel", r"^--may takes N=VALUE, N from 1 to 3"),
        ("balance set.csv --may 1=paint", r"^--may takes gel, dial or none"),
        ("balance set.csv --stock CTO", r"^--stock takes GEL=CUTS"),
        ("balance set.csv --from 99", r"^--from: "),
        ("mix set.csv --dimmer 50", r"^--dimmer takes N=VALUE"),
        ("unmix alone.csv", r"Type x and y"),
        ("dial --target 4300 --tried 2 2 2 2", r"^--tried: "),
        ("even 0:0", r"^A point is ACROSS:UP:LUX"),
        ("falloff --lux 800 --distance 3", r"."),
        ("hold day.csv --at 25:00 --target 3200", r"^--at: “25:00” is not a time"),
        ("hold day.csv --at 15:00 --target 3200 --gel blanket", r"^--gel: There is no gel"),
        ("hold days.csv --at 9:00 --target 3200", r"^--date: The readings are of 2026-06-21, 2026"),
        ("render 0.33 0.34", r"spectrum"),
        ("seen set.csv --white 3", r"^--white: "),
    ],
)
def test_what_is_wrong_is_said_in_one_sentence_and_where(command: str, words: str) -> None:
    with pytest.raises(Problem) as caught:
        give(*shlex.split(command))
    told = complaint(caught.value)
    assert re.search(words, told), told
    assert "\n" not in told


def test_a_light_that_is_left_out_is_told_and_shown_by_the_exit_code() -> None:
    lights = json.dumps([*LIGHTS, {"name": "odd", "x": 0.3}]).encode()
    for command in (["balance", "-"], ["seen", "-", "--white", "4300"]):
        done = run(command, lambda _: lights)
        assert done.code == 3
        assert any(note.startswith("odd: ") for note in done.notes)


def test_readings_of_no_hour_or_another_day_are_told() -> None:
    asked = ("--at", "14:30", "--target", "3200")
    done = run(["hold", "day.csv", "set.csv", *asked], FILES.__getitem__)
    assert done.code == 3
    assert next(one for one in done.notes if "no time of day" in one).startswith("set.csv: ")
    done = run(["hold", "days.csv", *asked, "--date", "2026-06-22"], FILES.__getitem__)
    assert done.notes == ["1 of 2 readings are of another day; left out."]


@pytest.mark.parametrize("shell", ["bash", "zsh", "tcsh"])
def test_completion_is_made_for_a_shell(shell: str) -> None:
    script = give("completion", shell)
    for name in COMMANDS:
        assert name in script


def test_bash_completes_a_command_and_its_options() -> None:
    script = give("completion", "bash")
    ask = (
        "COMP_WORDS=({}); COMP_CWORD={}; COMPREPLY=(); _shtab_evenkelvin; echo ${{COMPREPLY[@]}}\n"
    )
    typed = ask.format("evenkelvin bal", 1) + ask.format("evenkelvin balance --st", 2)
    done = subprocess.run(
        ["bash", "-c", script + typed], capture_output=True, encoding="utf-8", timeout=30
    )
    assert done.stdout.splitlines() == ["balance", "--stock"], done.stderr


def test_several_files_are_answered_in_their_order() -> None:
    both = json.loads(give("render", "key.csv", "fill.csv", "--json"))
    assert both == [json.loads(give("render", name, "--json")) for name in ("key.csv", "fill.csv")]
    assert give("convert", "key.csv", "fill.csv").splitlines()[0] == (
        "wavelength (nm),key [light],fill [light]"
    )
    rows = give("agree", "key.csv", "fill.csv", "set.csv", "--target", "4300").splitlines()[2:]
    assert [row.split()[0] for row in rows] == ["key", "fill", "key", "fill", "back"]
