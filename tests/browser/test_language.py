"""The app in another language: every word from one catalogue, numbers as people write them."""

from __future__ import annotations

import json
import re

from conftest import ROOT, Site, wait_for_kernel
from hands import go, open_demo
from playwright.sync_api import Page, expect

WORDS = ROOT / "webapp" / "src" / "words"
ENTRY = re.compile(r'^  (?:"([^"]+)"|(\w+)):((?:.|\n)*?),\n(?=  ["\w]|\};|\n)', re.MULTILINE)
PLACE = re.compile(r"\{(\w+)\}")
#: Words of English that no German sentence has, but names may.
ENGLISH = re.compile(
    r"\b(the|of|is|are|and|with|not|take|hang|stops?|no|each|reads|from|its|at|or|about|than)\b"
)


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
    page.get_by_label("x", exact=True).fill("0,4215")
    page.get_by_label("y", exact=True).fill("0,4022")
    expect(page.locator(".now")).to_contain_text(re.compile(r"mired zu (warm|kühl)"))
    page.get_by_label("x", exact=True).fill("0,9")
    expect(page.locator(".problem").first).to_contain_text(re.compile("Prüfe|ist"))
    page.get_by_label("x", exact=True).fill("0,4215")
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
