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
