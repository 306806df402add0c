"""`python -m evenkelvin` as a person and a script use it; kernel/README.md's examples are run."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from evenkelvin.cli import run
from evenkelvin.desk import answer
from evenkelvin.problem import Problem

ROOT = Path(__file__).parents[2]
DEMO = "demo_readings/night_ferry.json"
README = ROOT / "kernel" / "README.md"
SECTION = README.read_text("utf-8").split("## On the command line", 1)[1].split("\n## ", 1)[0]
EXAMPLES = re.findall(r"^    \$ (.+)\n((?:    (?!\$ ).*\n)*)", SECTION.split("\n## ")[0], re.M)


def shell(command: str, text: str = "") -> subprocess.CompletedProcess[str]:
    environment = {**os.environ, "PYTHONPATH": "kernel", "PY": sys.executable}
    return subprocess.run(
        ["bash", "-c", f'python() {{ "$PY" "$@"; }}\n{command}'],
        cwd=ROOT, env=environment, input=text, capture_output=True, encoding="utf-8", timeout=60,
    )  # fmt: skip


def give(*arguments: str, **files: bytes) -> str:
    def read(name: str) -> bytes:
        return files["stdin"] if name == "-" else (ROOT / name).read_bytes()

    return run(arguments, read).text


def test_the_readme_has_examples() -> None:
    assert len(EXAMPLES) >= 5
    for name in ("describe", "fix", "agree", "book", "ask"):
        assert any(f"evenkelvin {name}" in command for command, _ in EXAMPLES)


@pytest.mark.parametrize(("command", "shown"), EXAMPLES, ids=[c[:60] for c, _ in EXAMPLES])
def test_an_example_of_the_readme_gives_what_it_shows(command: str, shown: str) -> None:
    done = shell(command)
    assert done.stderr == ""
    assert done.stdout == re.sub(r"^    ", "", shown, flags=re.M)


def test_json_is_the_desks_own_answer() -> None:
    found = json.loads(give("fix", "0,4215", "0.4022", "--target", "3200", "--json"))
    asked = {"ask": "fix", "reading": {"x": "0,4215", "y": "0.4022"}, "target": {"cct_K": "3200"}}
    assert found == answer(asked)


@pytest.mark.parametrize(
    ("lights", "names"),
    [
        (b'[{"name": "key", "x": 0.35, "y": 0.36}, {"x": 0.36, "y": 0.36}]', ["key", "light 2"]),
        (b'{"lights": [{"name": "k", "x": 0.35, "y": 0.36}]}', ["k"]),
        ("\ufeffname;x;y\nkey;0,35;0,36\nfill;0,36;0,36\n".encode(), ["key", "fill"]),
    ],
)
def test_lights_come_as_json_or_as_a_table(lights: bytes, names: list[str]) -> None:
    text = give("agree", "-", "--target", "4300", stdin=lights)
    assert [line.split("  ")[0] for line in text.splitlines()[2:]] == names


def test_a_hero_is_counted_from_one() -> None:
    lights = b'[{"x": 0.35, "y": 0.36}, {"x": 0.36, "y": 0.36}]'
    found = json.loads(give("agree", "-", "--hero", "2", "--json", stdin=lights))
    assert found["lights"][1]["delta_uv"] == 0
    with pytest.raises(Problem, match="counted from 1"):
        give("agree", "-", "--hero", "0", stdin=lights)


def test_a_spectrum_goes_through_every_format_unchanged() -> None:
    nm = range(380, 781, 5)
    table = "nm,key\n" + "".join(f"{n},{(n - 300) / 480:.4f}\n" for n in nm)
    first = give("describe", "-", stdin=table.encode())
    for style in ("tm27", "csv"):
        made = give("convert", "-", "--to", style, stdin=table.encode())
        assert give("describe", "-", stdin=made.encode()) == first
    (plain,) = json.loads(give("convert", "-", "--to", "json", stdin=table.encode()))
    assert plain["wavelengths_nm"] == list(nm)


def test_several_spectra_become_several_files() -> None:
    table = "nm,key,fill\n" + "".join(f"{n},1,{n / 780:.4f}\n" for n in range(380, 781, 5))
    made = run(["convert", "-", "--to", "tm27", "-o", "out"], lambda _: table.encode())
    assert sorted(made.files) == ["out/fill.spdx", "out/key.spdx"]


def test_a_book_written_out_reads_back_as_the_same_book() -> None:
    first = give("book", DEMO)
    made = run(["book", DEMO, "--to", "json", "-o", "copy.json"], lambda n: (ROOT / n).read_bytes())
    assert give("book", "-", stdin=made.files["copy.json"].encode()) == first
    assert give("book", DEMO, DEMO) == first


def test_a_part_of_a_book_goes_into_every_form() -> None:
    part = ("--of", "VHmmpe44uzfeHhwTX_AJtA")
    assert "Ticket hall" not in give("book", DEMO, *part)
    assert give("book", DEMO, *part, "--to", "comma").count("\n") == 8
    link = give("book", DEMO, *part, "--to", "link").strip()
    assert answer({"ask": "open_link", "link": link})["title"].endswith("3 Between the cars")
    assert json.loads(give("book", DEMO, *part, "--to", "report"))["name"] == "3 Between the cars"
    with pytest.raises(Problem, match="--of"):
        give("book", DEMO, "--to", "report")


@pytest.mark.parametrize(
    ("command", "words"),
    [
        ("describe 2 3", "X: x is 2"),
        ("describe 0.3 0.3 0.3", "Give x and y"),
        ("describe", "Type x and y"),
        ("describe nowhere.csv", "nowhere.csv: No such file"),
        ("describe kernel", "Is a directory"),
        ("book pyproject.toml", "is not JSON"),
        ("book demo_readings/night_ferry.json --of x", "The book has no"),
        ("ask pyproject.toml", "This is not JSON"),
        ("describe README.md", "README.md"),
    ],
)
def test_what_is_wrong_is_said_in_one_sentence(command: str, words: str) -> None:
    done = shell(f"python -m evenkelvin {command}")
    assert done.returncode == 1
    assert done.stdout == ""
    assert len(done.stderr.strip().splitlines()) == 1
    assert "Traceback" not in done.stderr
    if words != "README.md":
        assert words in done.stderr


NM = range(380, 781, 5)
#: What is wrong with a file, what of it is left, and the words that say so.
PARTLY = {
    "one damaged column of two": (
        "nm,key,fill\n" + "".join(f"{n},1,{'?' if n % 20 else 0.5}\n" for n in NM), "Column 3"
    ),
    "one damaged sample": (
        "nm,key\n" + "".join(f"{n},{'oops' if n == 500 else 1}\n" for n in NM), "line 26"
    ),
    "a gel that adds light": (
        "nm,key,gel [transmittance]\n" + "".join(f"{n},1,{-1 if n > 500 else 1}\n" for n in NM),
        "gel",
    ),
}  # fmt: skip


@pytest.mark.parametrize("case", PARTLY)
def test_what_is_left_out_is_said_and_shown_by_the_exit_code(case: str) -> None:
    text, words = PARTLY[case]
    done = shell("python -m evenkelvin convert - --to csv", text)
    assert done.returncode == 3
    assert done.stdout.startswith("wavelength (nm),key [")
    assert words in done.stderr
    # Whatever the app would show of this file is said.
    shown = answer({"ask": "import", "text": text})["problems"]
    assert shown
    for problem in shown:
        assert problem["message"] in done.stderr


def test_what_a_file_leaves_open_is_said_and_can_be_chosen() -> None:
    text = "".join(f"{n};1\n{n};2\n" for n in NM)
    done = shell("python -m evenkelvin convert - --to json", text)
    assert (done.returncode, json.loads(done.stdout)[0]["values"][0]) == (0, 1)
    assert "Which holds? Taken: first." in done.stderr
    done = shell("python -m evenkelvin convert - --to json --choose repeated=last", text)
    assert json.loads(done.stdout)[0]["values"][0] == 2
    done = shell("python -m evenkelvin convert - --choose repeated=best", text)
    assert (done.returncode, done.stdout) == (1, "")
    assert "Choose: first, last, mean" in done.stderr


def test_a_file_that_is_whole_says_nothing() -> None:
    text = "nm,key [light]\n" + "".join(f"{n},{n / 780:.4f}\n" for n in NM)
    done = shell("python -m evenkelvin convert - --to tm27", text)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize("style", ["comma", "semicolon"])
def test_readings_are_not_converted_but_refused(style: str) -> None:
    table = f"python -m evenkelvin book {DEMO} --to {style}"
    done = shell(f"{table} | python -m evenkelvin convert - --to csv")
    assert (done.returncode, done.stdout) == (1, "")
    assert "27 readings and no spectrum" in done.stderr
    done = shell(f"{table} | python -m evenkelvin agree - --target 3200")
    assert (done.returncode, len(done.stdout.splitlines())) == (0, 29)


def test_a_heading_that_a_spreadsheet_would_run_is_defused() -> None:
    text = "nm,=1+1\n" + "".join(f"{n},1\n" for n in NM)
    first = give("convert", "-", "--to", "csv", stdin=text.encode())
    assert first.startswith("wavelength (nm),'=1+1 [")
    assert give("convert", "-", "--to", "csv", stdin=first.encode()) == first


def test_wrong_arguments_show_the_usage() -> None:
    done = shell("python -m evenkelvin shine")
    assert done.returncode == 2
    assert "usage: evenkelvin" in done.stderr


def test_a_problem_asked_as_json_is_an_answer_and_a_failure() -> None:
    done = shell("python -m evenkelvin ask", text='{"ask": "nothing"}')
    assert done.returncode == 1
    assert json.loads(done.stdout)["problem"]["field"] == "ask"


def test_a_reader_that_stops_early_is_no_error() -> None:
    done = shell('python -m evenkelvin ask <<< \'{"ask": "kit"}\' | head -1')
    assert (done.stdout, done.stderr) == ("{\n", "")


def test_a_file_is_written_where_it_was_asked_for(tmp_path: Path) -> None:
    done = shell(f"python -m evenkelvin book {DEMO} --to semicolon -o {tmp_path / 'book.csv'}")
    assert (done.returncode, done.stdout) == (0, "")
    written: Any = (tmp_path / "book.csv").read_bytes()
    assert written.startswith(b"\xef\xbb\xbfdate;time")
    assert written.count(b"\r\n") == written.count(b"\n") == 28


@pytest.mark.parametrize(
    ("meant", "asked"),
    [
        ("+60", {"warmer_mired": "60"}),
        ("-12,5", {"cooler_mired": "12,5"}),
        ("2700K", {"cct_K": "2700"}),
        ("0.44 0.405", {"x": "0.44", "y": "0.405"}),
        ("1/2 CTO + 1/8 plus green", {"as_through": ["1/2 CTO", "1/8 plus green"]}),
        ("white", {"as": "white"}),
        ("found", {"as": "found"}),
    ],
)
def test_what_a_light_is_meant_to_be_is_said_in_one_word(meant: str, asked: Any) -> None:
    light = ("0.4287", "0.4019", "--lamp", "tungsten", "--target", "4300", f"--meant={meant}")
    found = json.loads(give("fix", *light, "--json"))
    reading = {"x": "0.4287", "y": "0.4019", "lamp": "tungsten"}
    assert found == answer(
        {"ask": "fix", "reading": reading, "target": {"cct_K": "4300"}, "meant": asked}
    )
    assert give("fix", *light)


def test_each_light_of_a_set_may_be_meant_otherwise() -> None:
    lights = b'[{"x": 0.3302, "y": 0.3411}, {"x": 0.4587, "y": 0.4119}, {"x": 0.53, "y": 0.415}]'
    set_ = ("agree", "-", "--target", "5600", "--meant", "2=+190", "--meant", "3=found")
    text = give(*set_, stdin=lights)
    assert text.startswith("All 2 lights are where they are meant to be. 1 as found.")
    assert "as found" in text.splitlines()[-1]
    for wrong in ("4=found", "found", "0=found"):
        with pytest.raises(Problem, match="N counted from 1"):
            give("agree", "-", "--target", "5600", "--meant", wrong, stdin=lights)


def test_a_light_that_cannot_be_used_is_said_beside_the_others() -> None:
    lights = '[{"x": 0.33, "y": 0.34, "name": "key"}, {"x": 0.33, "name": "odd"}]'
    done = shell("python -m evenkelvin agree - --target 5600", lights)
    assert done.returncode == 3
    assert "odd: y is missing" in done.stderr
    assert [line.split()[0] for line in done.stdout.splitlines()[1:3]] == ["light", "key"]


def test_a_dimmer_is_offered_to_a_filament() -> None:
    text = give("fix", "0.4287", "0.4019", "--lamp", "tungsten", "--target", "2700")
    assert "or dim to" in text.splitlines()[-1]
