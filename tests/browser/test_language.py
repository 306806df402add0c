"""The app in another language: every word from one catalogue, numbers as people write them."""

from __future__ import annotations

import ast
import re

from conftest import ROOT, Site, wait_for_kernel
from hands import go, open_demo
from playwright.sync_api import Page, expect

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
    page.get_by_role("navigation").get_by_role("link", name="Koffer").click()
    page.get_by_role("radio", name="English").check()
    expect(page.get_by_role("heading", name="White of the camera")).to_be_visible()


def said_by_the_kernel() -> set[str]:
    """Every text of the kernel's source, `{}` where a value goes, without the docstrings."""
    said = set()
    for path in (ROOT / "kernel" / "evenkelvin").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                said.add(node.value)
            elif isinstance(node, ast.JoinedStr):
                parts = (p.value if isinstance(p, ast.Constant) else "{}" for p in node.values)
                said.add("".join(map(str, parts)))
    return said


def test_translated_sentences_are_sentences_of_the_kernel() -> None:
    """A sentence that the kernel no longer says would never be translated again."""
    source = (WORDS / "kernel-de.js").read_text().split("export const PHRASES")[0]
    pairs = re.findall(r'\[\s*"((?:[^"\\]|\\.)*)",\s*"((?:[^"\\]|\\.)*)",?\s*\]', source)
    assert len(pairs) >= 30
    said = said_by_the_kernel()
    for english, german in pairs:
        assert english in said, english
        assert german.count("{}") == english.count("{}"), german
