"""The kernel in German, without a browser: every form has its German, and people's words stay."""

from __future__ import annotations

import ast
import json
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

from evenkelvin import desk
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.said import with_forms

ROOT = Path(__file__).resolve().parents[2]
KERNEL = ROOT / "kernel" / "evenkelvin"
GOLDEN = ROOT / "tests" / "kernel" / "golden"
PLACE = re.compile(r"\{(\w+)(?::[^{}]*)?\}")
#: Words of English that no German sentence has, but names may.
ENGLISH = re.compile(
    r"\b(the|of|is|are|and|with|not|take|hang|stops?|no|each|reads|from|its|at|or|about|than)\b"
)


def in_node(script: str, given: Any = None) -> Any:
    """What a script of the app's words prints as JSON, its standard input being JSON."""
    done = subprocess.run(
        ["node", "--input-type=module", "-e", script],
        cwd=ROOT / "webapp" / "src" / "words",
        input=json.dumps(given), capture_output=True, text=True, check=True,
    )  # fmt: skip
    return json.loads(done.stdout)


def in_german(answers: Any) -> Any:
    """What the app makes of answers that came as forms."""
    return in_node(
        """import { readFileSync } from "node:fs";
        import { said } from "./kernel.js";
        import * as german from "./german.js";
        console.log(JSON.stringify(said(JSON.parse(readFileSync(0, "utf8")), german)));""",
        answers,
    )


def literals(node: ast.expr) -> list[str]:
    """The texts that an argument may be; fails where it is put together."""
    if isinstance(node, ast.IfExp):
        return literals(node.body) + literals(node.orelse)
    assert isinstance(node, ast.Constant), ast.unparse(node)
    return [str(node.value)]


def descriptions() -> set[str]:
    """What the schema of the book says a value must be."""
    found = set()

    def gather(part: Any) -> None:
        for inner in part.values() if isinstance(part, dict) else part:
            if isinstance(inner, (dict, list)):
                gather(inner)
        if isinstance(part, dict) and part.keys() & {"pattern", "anyOf"} and "description" in part:
            found.add(part["description"])

    gather(json.loads((KERNEL / "data" / "book.schema.json").read_text(encoding="utf-8")))
    return found


def forms() -> set[str]:
    """Every form of the kernel's source, its places bare."""
    found: set[str] = set()
    for path in KERNEL.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
                continue
            if node.func.id == "Said" and path.name != "said.py":
                described = ast.unparse(node.args[0]) == "part['description']"
                found |= descriptions() if described else set(literals(node.args[0]))
            elif node.func.id == "counted":
                found |= {form for given in node.args[1:3] for form in literals(given)}
    # The two that said.py itself has: a list and a choice.
    found |= {"{most} and {last}", "{most} or {last}"}
    return {PLACE.sub(r"{\1}", form) for form in found}


@pytest.fixture(scope="module")
def german() -> dict[str, str]:
    return dict(
        in_node(
            'import table from "./kernel-de.js"; console.log(JSON.stringify(table));',
        )
    )


def test_every_form_has_its_german(german: dict[str, str]) -> None:
    worded = {form for form in forms() if re.search("[A-Za-z]", PLACE.sub("", form))}
    assert len(worded) > 300
    assert sorted(worded - german.keys()) == []
    assert sorted(german.keys() - worded) == [], "these are no longer said"
    for form, words in german.items():
        assert set(PLACE.findall(words)) <= set(PLACE.findall(form)), form
        assert not ENGLISH.search(PLACE.sub("", words)), words


def golden() -> list[tuple[str, dict[str, Any]]]:
    return [
        (f"{file.stem} {index}", case["request"])
        for file in sorted(GOLDEN.glob("*.json"))
        for index, case in enumerate(json.loads(file.read_text(encoding="utf-8")))
    ]


def test_forms_and_values_say_what_the_plain_text_says() -> None:
    plain = [json.loads(desk.answer_json(json.dumps(request))) for _, request in golden()]
    forms = [json.loads(desk.answer_json(json.dumps(request), True)) for _, request in golden()]
    assert forms != plain
    english = in_node(
        """import { readFileSync } from "node:fs";
        import { said } from "./kernel.js";
        console.log(JSON.stringify(said(JSON.parse(readFileSync(0, "utf8")))));""",
        forms,
    )
    assert english == plain


def test_a_group_with_a_field_of_that_name_comes_through() -> None:
    theirs = {"data": {"said": "{name}", "with": {"name": "x"}, "deep": [{"said": 1}]}}
    assert in_german(with_forms(theirs)) == theirs


#: Fields that hold data for programs, names, and texts of files.
DATA = {
    "scale",
    "model",
    "text",
    "data",
    "name",
    "hangs",
    "pack",
    "gels",
    "files",
    "work",
    "columns",
    "kind",
}


def plain_sentences(answer: Any, given: str) -> list[str]:
    """The texts of an answer with forms that read like words, are not said and were not given."""
    found: list[str] = []

    def gather(value: Any, key: str) -> None:
        if isinstance(value, str) and key not in DATA:
            gel = value in GELS
            if re.search(r"[A-Za-z]{2,} [a-z]{2,}", value) and value not in given and not gel:
                found.append(f"{key}: {value}")
        elif isinstance(value, dict):
            for name, inner in value.items():
                if name not in ("said", "number"):
                    gather(inner, name)
        elif isinstance(value, list):
            for inner in value:
                gather(inner, key)

    gather(answer, "")
    return found


GELS = {gel.name for gel in nominal_kit()}


@pytest.mark.parametrize("request_", [case for _, case in golden()], ids=[n for n, _ in golden()])
def test_whatever_reads_like_words_is_said(request_: dict[str, Any]) -> None:
    answer = json.loads(desk.answer_json(json.dumps(request_), True))
    given = json.dumps(request_, ensure_ascii=False)
    # A title is made of names alone.
    answer.pop("title", None)
    assert plain_sentences(answer, given) == []


def test_golden_answers_are_german_throughout() -> None:
    asked = [case for _, case in golden()]
    forms = [json.loads(desk.answer_json(json.dumps(case), True)) for case in asked]
    left: list[str] = []

    def gather(form: Any, told: Any, given: str) -> None:
        if isinstance(form, dict) and "said" in form:
            for value in GELS | set(re.findall(r'"([^"]+)"', given)):
                told = told.replace(value, "…")
            if ENGLISH.search(told):
                left.append(told)
        elif isinstance(form, dict):
            for key, inner in form.items():
                if key != "title":  # made of names
                    gather(inner, told[key], given)
        elif isinstance(form, list):
            for inner, other in zip(form, told, strict=True):
                gather(inner, other, given)

    for case, form, told in zip(asked, forms, in_german(forms), strict=True):
        gather(form, told, json.dumps(case, ensure_ascii=False))
    assert left == []


#: What people call their lights, and a translation or a number format might lay hands on.
NAMES = ("north", "red", "Panel 1.5", "1.500", "{name}", "holds")


def reading(index: int, **more: Any) -> dict[str, Any]:
    """A light of the invented shoot, another for each index."""
    whites = ((0.2988, 0.3151), (0.4201, 0.3942), (0.5209, 0.4183), (0.3355, 0.3407))
    x, y = whites[index % 4]
    return {"x": x + 0.0007 * (index // 4), "y": y, "name": f"<{index % 6}>", **more}


def spectrum(first: float, last: float) -> dict[str, Any]:
    nm = list(range(380, 785, 5))
    slope = (last - first) / (len(nm) - 1)
    return {"wavelengths_nm": nm, "values": [first + slope * k for k in range(len(nm))]}


def asks_with_names() -> list[dict[str, Any]]:
    """Questions whose answers repeat names; the name of light 2 is written <2>."""
    lights = [reading(k, illuminance_lx=100 + 10 * k) for k in range(6)]
    named = [{"reading": light, "name": light["name"], "may": ["gel", "dial"]} for light in lights]
    mixed = [{"reading": light} for light in lights]
    spectral = [
        {"name": f"<{k}>", "spectrum": spectrum(1.0, 1.0 + 0.1 * k), "illuminance_lx": 100}
        for k in range(6)
    ]
    filed = [
        {"name": f"<{k}>", "wavelengths_nm": [380, 780], "transmittance": [1, -1]} for k in range(2)
    ]
    return [
        {"ask": "agree", "hero": 0, "lights": lights},
        {"ask": "agree", "judge": "camera", "target": {"cct_K": 5600},
         "lights": [*lights, *spectral]},
        {"ask": "agree", "target": {"cct_K": 5600}, "tolerance": "loose", "lights": spectral},
        {"ask": "balance", "lights": named, "most": 3, "depth": 1, "kit": ["full CTO", "1/2 CTB"],
         "tolerance": {"steps": 1}},
        {"ask": "mix", "lights": [*mixed[:3], {"reading": reading(3, lamp="tungsten"),
         "dimmer": 50, "share_lx": 40}]},
        {"ask": "mix", "lights": [*mixed[:3], {"reading": reading(5)}]},
        {"ask": "unmix", "lights": lights[:3], "sum": {"x": 0.40, "y": 0.38}},
        {"ask": "unmix", "lights": spectral[:4], "sum": {"spectrum": spectrum(1.0, 1.2)}},
        {"ask": "compare", "first": spectral[4], "second": spectral[3]},
        {"ask": "render", "reading": spectral[0], "against": spectral[1:]},
        {"ask": "flicker", "fps": 24, "mains_hz": 50, "shutter_deg": 180, "place": "<4>"},
        {"ask": "windows", "windows": [{"width_m": 1, "height_m": 2, "name": f"<{k}>"}
         for k in range(6)], "gels": ["<1>", "<3>"]},
        {"ask": "order", "hangs": [{"gel": f"<{k}>", "width_m": 1, "height_m": 1}
         for k in range(6)]},
        {"ask": "kit", "own_gels": filed},
        {"ask": "fix", "reading": reading(0, pack=["<5>"]), "target": {"cct_K": 3200}},
    ]  # fmt: skip


@pytest.mark.parametrize("index", range(len(asks_with_names())))
def test_peoples_own_words_stay_as_typed(index: int) -> None:
    def told(names: tuple[str, ...]) -> str:
        asked = json.dumps(asks_with_names()[index])
        for number, name in enumerate(names):
            asked = asked.replace(f"<{number}>", name)
        answer = json.loads(desk.answer_json(asked, True))
        return json.dumps(in_german(answer), ensure_ascii=False)

    # In the same order where an answer sorts by name.
    unlike = tuple(f"Q{sorted(NAMES).index(name)}q" for name in NAMES)
    expected = told(unlike)
    assert any(name in expected for name in unlike)
    for plain, name in zip(unlike, NAMES, strict=True):
        expected = expected.replace(plain, name)
    assert told(NAMES) == expected
