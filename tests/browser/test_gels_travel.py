"""A person's measured gels go with what they share, and never take the place of the receiver's."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from conftest import ROOT, offline_page, wait_for_kernel
from hands import go, headline, keep, open_setup, type_xy
from playwright.sync_api import Browser, Page, expect
from test_the_book import downloaded, empty_own_book, link_of, share_page, to

from evenkelvin.desk import answer

FILE = ROOT / "demo_readings" / "spectra" / "faded_quarter_amber.txt"
NAME = "faded_quarter_amber"
#: What the light reads through the gel.
X, Y = "0.4100", "0.3960"


@pytest.fixture(scope="module")
def page(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the whole module, its server stopped."""
    with offline_page(phone_browser, dist, locale="en-GB") as page:
        yield page


def curve_of(file: Path) -> dict[str, Any]:
    """The gel as the kernel reads it from its file, to the digits that the app keeps."""
    found = answer({"ask": "import_gel", "text": file.read_text(), "name": NAME})
    gel = found["gels"][0]["gel"]
    return {
        "name": NAME,
        "wavelengths_nm": gel["wavelengths_nm"],
        "transmittance": [round(value, 5) for value in gel["transmittance"]],
        "reference_K": gel["reference_K"],
    }


def put_into_kit(page: Page, file: Path) -> None:
    go(page, "Kit")
    page.get_by_label("Load a gel").set_input_files(file)
    page.get_by_role("button", name=re.compile("^Keep")).click()
    expect(page.locator(".own-gel", has_text=NAME)).to_have_count(1)


def read_through_it(page: Page) -> None:
    go(page, "Light")
    type_xy(page, X, Y, "key")
    page.get_by_label("Gel already on it").select_option(NAME)
    expect(headline(page)).not_to_be_empty()
    keep(page)


def gels_of(plain: dict[str, Any]) -> list[dict[str, Any]]:
    return [entry for entry in plain["entries"] if entry["thing"] == "gel"]


def changes(gel: dict[str, Any]) -> list[str]:
    """What the kernel would put on and take off, by words that must be told."""
    reading = {"x": X, "y": Y, "pack": [gel["name"]], "own_gels": [gel]}
    fix = answer({"ask": "fix", "reading": reading, "target": {"cct_K": 5600}})
    best = fix["packs"][0]
    return [*best["take_off"], *best["add"]]


@pytest.fixture(scope="module")
def sent(page: Page) -> dict[str, str]:
    """A reading through an own gel, shared as a link, as codes and as a file."""
    empty_own_book(page)
    put_into_kit(page, FILE)
    read_through_it(page)
    link = link_of(page, "Setup 1")
    _, setup = downloaded(page, "Share the file")
    to(page, "share")
    expect(page.get_by_test_id("read-back")).to_contain_text("Written and read back")
    _, whole = downloaded(page, "Share the file")
    return {"link": link, "setup": setup, "whole": whole}


def test_what_is_shared_holds_the_gel_that_was_read_through_and_no_other(
    sent: dict[str, str],
) -> None:
    opened = answer({"ask": "open_link", "link": sent["link"]})
    (gel,) = gels_of(opened["book"])
    for name, value in curve_of(FILE).items():
        assert gel["data"][name] == value
    for text in (sent["setup"], sent["whole"]):
        assert gels_of(json.loads(text)) == [gel]


@pytest.mark.parametrize("way", ["link", "setup", "whole"])
def test_another_phone_answers_a_reading_through_a_gel_it_never_had(
    page: Page, sent: dict[str, str], way: str
) -> None:
    empty_own_book(page)
    if way == "link":
        to(page, sent["link"].split("#", 1)[1])
    else:
        to(page, "receive")
        page.get_by_label("Choose a book's file").set_input_files(
            [{"name": "b.json", "mimeType": "application/json", "buffer": sent[way].encode()}]
        )
    expect(page.locator("ek-copy, ek-receive").last).to_contain_text("1 measured gel comes along")
    page.get_by_role("button", name="Add to my book").click()
    expect(page.locator(".kept")).to_be_visible()
    open_setup(page, "Setup 1")
    page.get_by_role("button", name="Work here").click()
    go(page, "Set")
    slip = page.locator(".slip", has_text="key")
    expect(slip).to_contain_text(f"on it: {NAME}")
    expect(slip.locator(".problem")).to_have_count(0)
    for words in changes(curve_of(FILE)):
        expect(slip.locator(".hang")).to_contain_text(words)
    # It is known, but not advised: this phone has none of it.
    go(page, "Kit")
    expect(page.locator(".own-gel")).to_have_count(0)
    page.get_by_text("1 gel that only the book knows").click()
    page.get_by_role("button", name=f"Add {NAME} to my kit").click()
    expect(page.locator(".own-gel", has_text=NAME)).to_have_count(1)
    expect(page.get_by_text("gel that only the book knows")).to_have_count(0)


def test_a_gel_of_the_same_name_is_not_overwritten_and_not_taken_for_it(
    page: Page, sent: dict[str, str], tmp_path: Path
) -> None:
    empty_own_book(page)
    other = tmp_path / f"{NAME}.txt"
    blue = [(nm, 80 - (nm - 380) / 8) for nm in range(380, 785, 5)]
    other.write_text("nm transmittance_%\n" + "".join(f"{n} {t:.2f}\n" for n, t in blue))
    put_into_kit(page, other)
    read_through_it(page)
    mine, theirs = curve_of(other), curve_of(FILE)
    assert changes(mine) != changes(theirs)
    to(page, sent["link"].split("#", 1)[1])
    page.get_by_role("button", name="Add to my book").click()
    expect(page.locator(".kept")).to_be_visible()

    # Their reading means their gel, called by when it was measured; mine is what it was.
    full = re.compile(rf"{NAME} \(\d{{4}}-\d\d-\d\d \d\d:\d\d\)")
    to(page, "book")
    rows = page.get_by_role("link", name="Setup 1")
    expect(rows).to_have_count(2)
    seen = []
    for index in range(2):
        to(page, "book")
        rows.nth(index).click()
        page.get_by_role("button", name="Work here").click()
        go(page, "Set")
        slip = page.locator(".slip", has_text="key")
        expect(slip.locator(".hang")).not_to_be_empty()
        seen.append((slip.inner_text(), slip.locator(".hang").inner_text()))
    hang = {bool(full.search(text)): words for text, words in seen}
    assert all(words in hang[False] for words in changes(mine))
    assert all(words in hang[True] for words in changes(theirs))
    # A reading that is mended keeps its gel.
    to(page, "book")
    rows.nth([bool(full.search(text)) for text, _ in seen].index(True)).click()
    page.locator(".readings a").first.click()
    facts = page.locator("ek-reading .facts")
    expect(facts).to_contain_text(full)
    page.get_by_role("button", name="Change", exact=True).click()
    page.get_by_label("Note").fill("checked")
    page.get_by_role("button", name="Save").click()
    expect(facts).to_contain_text("checked")
    expect(facts).to_contain_text(full)

    go(page, "Kit")
    expect(page.locator(".own-gel", has_text=NAME)).to_have_count(1)
    page.get_by_text("1 gel that only the book knows").click()
    expect(page.locator("ek-kit")).to_contain_text(full)


def test_a_plan_and_a_window_keep_their_gel_as_well(page: Page) -> None:
    empty_own_book(page)
    put_into_kit(page, FILE)
    read_through_it(page)
    go(page, "Set")
    page.get_by_role("link", name="Balance everything").click()
    # A light that is left alone keeps what hangs on it.
    page.locator("summary", has_text="What may be done").click()
    page.get_by_role("group", name="key", exact=True).get_by_role("radio", name="Leave").check()
    expect(page.locator(".hanging")).to_contain_text(re.compile("leave as it is", re.IGNORECASE))
    page.get_by_role("button", name="Keep this plan").click()
    expect(page.locator(".toast")).to_contain_text("Plan kept")
    page.get_by_role("button", name="Dismiss").click()
    go(page, "Book")
    page.get_by_role("link", name="Windows of").first.click()
    page.get_by_label("Width").fill("2")
    page.get_by_label("Height").fill("1")
    page.locator("#windows-gels").select_option(NAME)
    page.get_by_role("button", name="Keep with the location").click()
    expect(page.locator(".toast")).to_contain_text("Kept with")
    to(page, "share")
    expect(page.get_by_test_id("read-back")).to_contain_text("Written and read back")
    _, text = downloaded(page, "Share the file")
    entries = json.loads(text)["entries"]
    (gel,) = gels_of({"entries": entries})
    (light,) = (e for e in entries if e["data"].get("planned"))
    assert light["data"]["planned"]["gels"] == [NAME]
    assert light["data"]["planned"]["gel_ids"] == [gel["id"]]
    (place,) = (e for e in entries if e["data"].get("window_gels"))
    assert place["data"]["window_gel_ids"] == [gel["id"]]


def test_readings_kept_before_gels_travelled_are_tied_to_theirs_once(page: Page) -> None:
    """The store as an earlier version left it: names only, one of its gels since removed."""
    empty_own_book(page)
    curve = {**curve_of(FILE), "mired": 30, "duv": 0.001, "stops": 0.3}
    at = "2026-10-27T16:00:00+01:00"

    def entry(id_: str, thing: str, parent: str | None, **data: Any) -> dict[str, Any]:
        return {
            "id": id_, "at": at, "thing": thing, "of": id_,
            "parent": parent, "after": [], "data": data,
        }  # fmt: skip

    old = [
        entry("p", "production", None, name="The Night Ferry"),
        entry("l", "location", "p", name="Hall"),
        entry("s", "setup", "l", name="Old setup"),
        entry("k", "light", "s", name="key"),
        entry("r", "reading", "k", x=X, y=Y, pack=["rust", "1/4 CTO"], stage="gelled"),
        entry("f", "light", "s", name="fill"),
        # Somebody else's: through a gel of theirs.
        {**entry("q", "reading", "f", x=X, y=Y, pack=["rust"], stage="gelled"), "who": "best boy"},
    ]
    page.evaluate(
        """async ([entries, own]) => {
            const open = indexedDB.open("evenkelvin");
            const db = await new Promise(done => { open.onsuccess = () => done(open.result); });
            const all = db.transaction(["entries", "settings"], "readwrite");
            for (const entry of entries) all.objectStore("entries").put(entry);
            all.objectStore("settings").put(own, "ownGels");
            await new Promise(done => { all.oncomplete = done; });
            db.close();
        }""",
        [old, [{**curve, "name": "rust", "retired": True}]],
    )
    for _ in range(2):
        page.reload()
        wait_for_kernel(page)
    share_page(page, "Old setup")
    _, text = downloaded(page, "Share the file")
    shared = json.loads(text)
    (gel,) = gels_of(shared)
    assert gel["data"]["name"] == "rust"
    heads = {e["of"]: e for e in shared["entries"] if e["thing"] == "reading"}
    (tied,) = (e for e in shared["entries"] if e["of"] == "r" and e["after"])
    assert tied["data"]["gel_ids"] == [gel["id"], None]
    assert tied["data"]["read_at"] == at
    assert "gel_ids" not in heads["q"]["data"]
    go(page, "Kit")
    expect(page.locator(".own-gel")).to_have_count(0)
