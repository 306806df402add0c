"""The app in another language: every word from one catalogue, numbers as people write them."""

from __future__ import annotations

import ast
import json
import re
import shutil
import subprocess
from collections.abc import Callable
from typing import Any

import pytest
from conftest import ROOT, Site, wait_for_kernel
from hands import go, open_demo
from playwright.sync_api import Page, expect

from evenkelvin.filters.kit import nominal_kit

WORDS = ROOT / "webapp" / "src" / "words"
ENTRY = re.compile(r'^  (?:"([^"]+)"|(\w+)):((?:.|\n)*?),\n(?=  ["\w]|\};|\n)', re.MULTILINE)
PLACE = re.compile(r"\{(\w+)\}")


def catalogue(language: str) -> dict[str, str]:
    text = (WORDS / f"{language}.js").read_text()
    return {quoted or bare: words for quoted, bare, words in ENTRY.findall(text)}


def test_a_translation_keeps_the_places_for_names_and_numbers() -> None:
    english, german = catalogue("en"), catalogue("de")
    # What is missing is said in English; a few words may be newer than the translation.
    assert len(german.keys() & english.keys()) > 0.95 * len(english)
    for key, words in german.items():
        assert set(PLACE.findall(words)) <= set(PLACE.findall(english[key])) | {"n"}, key


def test_german_is_spoken_at_once_and_after_a_reload(page: Page, site: Site) -> None:
    page.goto(site.url)
    wait_for_kernel(page)
    open_demo(page)
    go(page, "Kit")
    page.get_by_role("radio", name="Deutsch").check()
    expect(page.get_by_role("heading", name="Weiß der Kamera")).to_be_visible()
    expect(page.locator("html")).to_have_attribute("lang", "de")
    page.reload()
    wait_for_kernel(page)
    page.get_by_role("navigation").get_by_role("link", name="Buch").click()
    expect(page.get_by_role("link", name="Das ganze Buch teilen")).to_be_visible()
    page.get_by_role("navigation").get_by_role("link", name="Licht").click()
    page.get_by_label("x", exact=True).fill("0,4349")
    page.get_by_label("y", exact=True).fill("0,4024")
    expect(page.locator(".now")).to_contain_text(re.compile(r"mired zu (warm|kühl)"))
    page.get_by_label("x", exact=True).fill("0,9")
    expect(page.locator(".problem").first).to_contain_text(re.compile("Prüfe|ist"))
    page.get_by_label("x", exact=True).fill("0,4349")
    expect(page.locator(".figures").first).to_contain_text(re.compile(r"\d,\d Blende"))
    check_that_no_english_is_left(page)
    page.get_by_role("navigation").get_by_role("link", name="Koffer").click()
    page.get_by_role("radio", name="English").check()
    expect(page.get_by_role("heading", name="White of the camera")).to_be_visible()


def check_that_no_english_is_left(page: Page) -> None:
    """Go through the places of the demo with everything open; only names may be English."""
    demo = json.loads((ROOT / "demo_readings" / "night_ferry.json").read_text())
    typed = {
        value
        for entry in demo["entries"]
        for value in entry["data"].values()
        if isinstance(value, str) and " " in value
    }
    here = demo["settings"]["here"]
    things = {entry["of"]: entry for entry in demo["entries"]}
    lights = [id_ for id_, entry in things.items() if entry["parent"] == here]
    place = things[here]["parent"]
    for address in (
        "set", "balance", "mix", f"report/{here}", f"sun/{place}", f"windows/{place}",
        f"spectrum/{lights[0]}", f"pair/{lights[0]}/{lights[1]}", f"dial/{lights[0]}",
        f"since/{lights[0]}", "order", "flicker", "unmix",
    ):  # fmt: skip
        page.evaluate("address => { location.hash = address; }", address)
        view = page.locator(f"ek-{address.split('/')[0]}")
        expect(view.locator("h1").first).to_be_visible()
        expect(view.locator("[aria-busy=true]")).to_have_count(0)
        page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true; })")
        lines = view.inner_text().splitlines()
        for name in sorted(typed, key=len, reverse=True):
            lines = [line.replace(name, "…") for line in lines]
        assert [line for line in lines if ENGLISH.search(line)] == [], address


def is_text(node: ast.AST) -> bool:
    return isinstance(node, ast.Constant) and isinstance(node.value, str)


def said_by_the_kernel() -> set[str]:
    """Every text of the kernel's source, `{}` where a value goes, without the docstrings."""
    said = set()
    for path in (ROOT / "kernel" / "evenkelvin").rglob("*.py"):
        if path.name == "cli.py":
            continue  # speaks in a terminal
        tree = ast.parse(path.read_text())
        apart = set()
        for node in ast.walk(tree):
            if isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef)):
                first = node.body[0] if node.body else None
                if isinstance(first, ast.Expr) and is_text(first.value):
                    apart.add(first.value)
            elif isinstance(node, ast.JoinedStr):
                apart |= {part for part in node.values if isinstance(part, ast.Constant)}
        for node in ast.walk(tree):
            if node in apart:
                continue
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                said.add(node.value)
            elif isinstance(node, ast.JoinedStr):
                parts = (p.value if isinstance(p, ast.Constant) else "{}" for p in node.values)
                said.add("".join(map(str, parts)))
    return said


def said_by_the_worker() -> set[str]:
    text = (ROOT / "webapp" / "src" / "kernel" / "worker.js").read_text()
    found = re.findall(r'"([^"\n]+)"|`([^`]+)`', text)
    return {re.sub(r"\$\{\w+\}", "{}", plain or filled) for plain, filled in found}


def sentences() -> list[tuple[str, str]]:
    """The pairs of the list of sentences, English and German."""
    source = (WORDS / "kernel-de.js").read_text().split("];", 1)[0]
    text = r'"((?:[^"\\]|\\.)*)"'
    pairs = re.findall(rf"\[\s*{text},\s*{text},?\s*\]", source)
    return [(english.replace('\\"', '"'), german) for english, german in pairs]


@pytest.fixture(scope="module")
def in_german(tmp_path_factory: pytest.TempPathFactory) -> Callable[[list[str]], list[str]]:
    """What the app makes of texts of the kernel, without a browser."""
    folder = tmp_path_factory.mktemp("german")
    for name in ("in-german.js", "kernel-de.js"):
        shutil.copy(WORDS / name, folder)
    (folder / "package.json").write_text('{"type": "module"}')
    (folder / "all.js").write_text(
        """import { readFileSync } from "node:fs";
        import { inGerman } from "./in-german.js";
        const texts = JSON.parse(readFileSync(0, "utf8"));
        console.log(JSON.stringify(texts.map(inGerman)));"""
    )

    def translate(texts: list[str]) -> list[str]:
        done = subprocess.run(
            ["node", "all.js"],
            cwd=folder, input=json.dumps(texts), capture_output=True, text=True, check=True,
        )  # fmt: skip
        translated: list[str] = json.loads(done.stdout)
        return translated

    return translate


def test_translated_sentences_are_sentences_of_the_kernel() -> None:
    """A sentence that the kernel no longer says would never be translated again."""
    said = "\n".join(said_by_the_kernel() | said_by_the_worker())
    pairs = sentences()
    assert len(pairs) > 400
    for english, german in pairs:
        assert english in said, english
        places = re.findall(r"\{(\d?)\}", german)
        count = english.count("{}")
        # In the order of the English, or by number where German wants another.
        assert all(not p for p in places) or all(int(p or -1) in range(count) for p in places)
        assert len(places) == count or all(places), german
    assert len({english for english, _ in pairs}) == len(pairs)


#: Sentences that no screen shows: of requests that the app cannot make, and rules for reading.
UNSHOWN = re.compile(r"created must be a date|The request is not JSON|\(\?:|\\s\*")
#: What the kernel puts together from pieces; those of the golden answers are looked at whole.
PIECES = {
    ", {} still not within tolerance.",
    "{}; every light holds.",
    "{}{}; {}° high at most.",
    "Direct sun in {} {}.",
    "Estimate, not a reading. {} Cloud and walls change it.",
    "{} It stands {}° high at most.",
    "{} It is left out.",
}


def test_no_sentence_of_the_kernel_stays_english(
    in_german: Callable[[list[str]], list[str]],
) -> None:
    whole = sorted(
        text.strip().replace("{}", "7")
        for text in said_by_the_kernel()
        if text not in PIECES
        and re.search(r"[.?!]$", text.strip())
        and len(re.findall("[a-z]{2,}", text)) >= 3
        and not UNSHOWN.search(text)
    )
    assert len(whole) > 300
    told = in_german(whole)
    assert [text for text, german in zip(whole, told, strict=True) if text == german] == []


#: Fields of an answer that hold texts, as the app has them.
SAID = set(re.findall(r'^  "(\w+)",$', (WORDS / "kernel.js").read_text(), re.MULTILINE))
#: Words of English that no German sentence has, but names may.
ENGLISH = re.compile(
    r"\b(the|of|is|are|and|with|not|take|hang|stops?|no|each|reads|from|its|at|or|about|than)\b"
)


def golden_texts() -> set[str]:
    found: set[str] = set()

    def gather(value: Any, said: bool) -> None:
        if isinstance(value, str) and said:
            found.add(value)
        elif isinstance(value, dict):
            for key, inner in value.items():
                # The kinds of lamp are said in the app's own words.
                if key not in ("book", "data", "lamps"):
                    gather(inner, key in SAID)
        elif isinstance(value, list):
            for inner in value:
                gather(inner, said)

    for file in (ROOT / "tests" / "kernel" / "golden").glob("*.json"):
        for case in json.loads(file.read_text()):
            gather(case["answer"], False)
    return found


def test_no_golden_answer_stays_english(in_german: Callable[[list[str]], list[str]]) -> None:
    names = [gel.name for gel in nominal_kit()] + ["amber"]
    gel = rf"(\d+ × )?({'|'.join(map(re.escape, names))})"
    stack = re.compile(rf"{gel}( \+ {gel})*")
    texts = sorted(
        text for text in golden_texts() if re.search("[a-z]{2}", text) and not stack.fullmatch(text)
    )
    assert len(texts) > 150
    told = in_german(texts)
    same = {text for text, german in zip(texts, told, strict=True) if text == german}
    # Lights that are the reference of others, a standard, and the name of a setup.
    assert same == {
        "fill",
        "key",
        "panel",
        "EBU Tech 3355 (TLCI-2012), 2013",
        "The Night Ferry · Car deck · 3 Between the cars",
    }
    assert [german for german in told if german not in same and ENGLISH.search(german)] == []


def test_what_a_person_wrote_is_not_translated(
    in_german: Callable[[list[str]], list[str]],
) -> None:
    same = ["1/2 CTO + 1/8 minus green", "The Night Ferry", "f/2.8⅓", "key", "12 lx"]
    assert in_german(same) == same
    assert "note" not in SAID
    assert "name" not in SAID
    named = "north “7. The door” has no lux while others have: type its share, or leave lux out "
    (told,) = in_german([named + "for all of them to count as equal."])
    assert told.startswith("north “7. The door” hat keine Lux")
