"""The app's types of the kernel's answers are made from the kernel's own declarations.

No source: our own promise. That every answer is as declared is held by the golden questions here,
and by whatever ``fuzz_asks`` asks at random.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import answer_types
import pytest

from answer_shapes import check, misfits
from evenkelvin.desk import ASKS
from evenkelvin.replies.answers import ANSWERS, Fix, Point

ROOT = Path(__file__).parents[2]
GOLDEN = sorted((ROOT / "tests" / "kernel" / "golden").glob("*.json"))


def test_the_types_of_the_app_are_those_of_the_kernel() -> None:
    made = answer_types.declarations(ANSWERS, answer_types.fields_of_asks())
    assert answer_types.FILE.read_text(encoding="utf-8") == made, (
        "run .venv/bin/python webapp/tools/answer_types.py"
    )


def test_python_is_told_the_same_types() -> None:
    assert answer_types.STUB.read_text(encoding="utf-8") == answer_types.stub(ANSWERS), (
        "run .venv/bin/python webapp/tools/answer_types.py"
    )


def test_every_ask_has_an_answer_declared() -> None:
    assert set(ANSWERS) == set(ASKS)


@pytest.mark.parametrize("file", GOLDEN, ids=lambda file: file.stem)
def test_golden_answers_are_as_declared(file: Path) -> None:
    for case in json.loads(file.read_text(encoding="utf-8")):
        check(case["request"], case["answer"])


@pytest.mark.parametrize(
    ("value", "told"),
    [
        ({"x": 1.0}, "y is missing"),
        ({"x": 1.0, "y": 2.0, "z": 3.0}, "z is not declared"),
        ({"x": "1", "y": 2.0}, "x is '1', not float"),
        ({"x": True, "y": 2.0}, "x is True, not float"),
        ([1.0, 2.0], "not Point"),
    ],
)
def test_what_is_not_as_declared_is_seen(value: Any, told: str) -> None:
    (found,) = misfits(value, Point, "point")
    assert told in found


def test_a_field_that_is_renamed_is_seen() -> None:
    answer = json.loads((ROOT / "tests/kernel/golden/fix.json").read_text())[0]["answer"]
    answer["packs"][0]["loss"] = answer["packs"][0].pop("stops_lost")
    assert len(misfits(answer, Fix, "fix")) == 2
