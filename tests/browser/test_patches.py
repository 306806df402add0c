"""The small patch stands wherever a light is listed, and it is that light's: book, search, report,
paper, hang cards, visitor's copy. Samples in pairs and the band of wavelengths on Spectrum, the
strip of many lights, and the picture or number of each view on its first screen.

Colours are held against the kernel's own answers, which test_seen_published.py and
test_pairs_published.py hold against colour-science.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import pytest
from hands import (
    copied_link,
    go,
    keep_light,
    open_demo,
    open_setup,
    open_slip,
    share_by_clipboard,
    visitor,
)
from playwright.sync_api import Locator, Page, expect

from evenkelvin.desk import answer

WHITE = {"cct_K": "5600", "duv": "0"}
LIGHTS = {"key": ("0.3320", "0.3480"), "low": ("0.4476", "0.4075")}


def rgb(colour: dict[str, Any]) -> str:
    return f"rgb({', '.join(map(str, colour['srgb']))})"


def grey(x: str, y: str, **more: Any) -> dict[str, Any]:
    (light,) = answer(
        {"ask": "seen", "white": WHITE, "lights": [{"reading": {"x": x, "y": y}, **more}]}
    )["lights"]
    return dict(light)


def as_read(name: str) -> str:
    return rgb(grey(*LIGHTS[name])["as_read"]["grey"])


def fills(drawn: Locator) -> list[str | None]:
    return [one.get_attribute("fill") for one in drawn.all()]


def shows(drawn: Locator, *colours: str) -> None:
    """Wait until patches are there, then hold them to their colours."""
    expect(drawn).to_have_count(len(colours))
    assert fills(drawn) == list(colours)


@pytest.fixture
def kept(app: Page) -> Page:
    for name, (x, y) in LIGHTS.items():
        keep_light(app, name, x, y)
    return app


def test_each_row_of_the_book_has_its_own(kept: Page) -> None:
    open_setup(kept, "Setup 1")
    for name in LIGHTS:
        light = kept.locator(
            "ek-setup .lights > li", has=kept.get_by_role("heading", name=name, exact=True)
        )
        shows(light.locator(".reading .patch rect"), as_read(name))
    go(kept, "Book")
    kept.locator("#find-text").fill("low")
    expect(kept.locator("ek-book .found > li")).to_have_count(1)
    shows(kept.locator("ek-book .found .patch rect"), as_read("low"))
    # The reading itself begins with what it read, in large, and with the same patch.
    kept.locator("ek-book .found a.reading").click()
    shows(kept.locator("ek-reading .head .patch rect"), as_read("low"))
    x, y = LIGHTS["low"]
    cct = answer({"ask": "describe", "reading": {"x": x, "y": y}})["cct_K"]
    expect(kept.locator("ek-reading .headline")).to_have_text(f"{round(cct, -1):.0f} K")


def test_report_and_paper_carry_it_in_full(kept: Page) -> None:
    kept.emulate_media(color_scheme="dark")
    open_setup(kept, "Setup 1")
    kept.locator("ek-setup a[href^='#report/']").first.evaluate("link => link.click()")
    shows(kept.locator("ek-report .slip .patch rect"), *map(as_read, LIGHTS))
    patch = kept.locator("ek-report .slip .patch rect").first
    opacity = "e => Number(getComputedStyle(e).fillOpacity)"
    assert patch.evaluate(opacity) < 1
    kept.emulate_media(media="print")
    assert patch.evaluate(opacity) == 1


def test_a_hang_card_shows_the_light_as_it_is_and_with_what_is_to_hang(kept: Page) -> None:
    go(kept, "Set")
    kept.get_by_role("link", name="Hang cards").click()
    card = kept.locator(".card", has=kept.get_by_role("heading", name="low", exact=True))
    expect(card.locator(".patch rect")).to_have_count(2)
    x, y = LIGHTS["low"]
    light = {"x": x, "y": y, "name": "low"}
    pack = answer({"ask": "agree", "lights": [light], "target": WHITE})["lights"][0]["pack"]["gels"]
    look = grey(x, y, pack=pack)
    shows(card.locator(".patch rect"), *(rgb(look[k]["grey"]) for k in ("as_read", "with_pack")))


def test_a_visitor_sees_it_too(kept: Page) -> None:
    share_by_clipboard(kept)
    open_setup(kept, "Setup 1")
    kept.locator("ek-setup a[href^='#share/']").first.evaluate("link => link.click()")
    with visitor(kept, copied_link(kept)) as page:
        shows(page.locator("ek-copy .lights .patch rect"), *map(as_read, LIGHTS))


def test_samples_and_hue_bins_stand_in_pairs_over_the_band_of_wavelengths(app: Page) -> None:
    open_demo(app)
    open_slip(app, "batten 2").get_by_role("link", name="Spectrum of batten 2").click()
    expect(app.locator("ek-spectrum .bars .patch")).to_have_count(15)
    told = answer(
        {
            "ask": "render",
            "reading": app.evaluate(
                """() => {
                    const {curves} = document.querySelector("ek-spectrum").rendering.answer;
                    return {spectrum: {wavelengths_nm: curves.wavelengths_nm,
                                       values: curves.light}};
                }"""
            ),
        }
    )
    for place, row in enumerate(app.locator("ek-spectrum .bars tbody tr").all()):
        drawn = [
            [*map(int, (fill or "")[4:-1].split(","))] for fill in fills(row.locator("th rect"))
        ]
        wanted = [side["srgb"] for side in told["cri"]["pairs"][place]]
        for one, other in zip(drawn, wanted, strict=True):
            assert one == pytest.approx(other, abs=1), place
    app.locator("ek-spectrum .vectors summary").click()
    bins = app.locator("ek-spectrum .vectors .patch")
    expect(bins).to_have_count(16)
    expect(bins.first.locator("rect")).to_have_count(2)
    band = app.locator("ek-spectrum .spectrum .pure")
    expect(band).to_have_count(len(told["curves"]["band"]["srgb"]))
    assert fills(band) == [rgb({"srgb": code}) for code in told["curves"]["band"]["srgb"]]
    # It lies under the curve, from end to end.
    places = app.locator("ek-spectrum .spectrum .pure").evaluate_all(
        "all => all.map(one => [Number(one.getAttribute('x')), Number(one.getAttribute('width'))])"
    )
    assert all(a[0] + a[1] == pytest.approx(b[0]) for a, b in pairwise(places))


def test_a_strip_of_many_lights_moves_by_itself_and_leads_to_each(app: Page) -> None:
    count = 26
    for n in range(count):
        keep_light(app, f"lamp {n + 1}", f"{0.33 + 0.004 * n:.4f}", f"{0.345 + 0.002 * n:.4f}")
    go(app, "Set")
    tiles = app.locator("ek-set .strip .tile")
    expect(tiles).to_have_count(count)
    expect(app.locator("ek-set .strip .notch")).to_have_count(count)
    strip = app.locator("ek-set .strip")
    wide, room = strip.evaluate("e => [e.scrollWidth, e.clientWidth]")
    assert wide > room
    assert app.evaluate("document.documentElement.scrollWidth <= innerWidth")
    # By keyboard it can be brought to its end; a touch on a tile opens the slip of that light.
    strip.focus()
    expect(strip).to_be_focused()
    last = tiles.nth(count - 1).locator(".fill")
    last.scroll_into_view_if_needed()
    last.click()
    expect(app.locator("ek-set .slip > details").nth(count - 1)).to_have_attribute("open", "")
    assert app.locator("ek-set .slip > details[open]").count() == 1


@pytest.mark.parametrize(
    ("address", "chief"),
    {
        "set": ".strip svg",
        "balance": ".plan",
        "hang": ".card .hang",
        "dim": ".answer, .empty, form",
        "flash": "[data-testid=headline]",
        "unmix": "[data-testid=headline]",
        "spectrum": ".spectrum svg",
        "pair": ".looks .patch",
        "kit": ".segments, .chip",
        "order": "h1",
        "cameras": ".file-button",
        "exposure": "[data-testid=headline], .figures, output, .answer",
        "flicker": "[data-testid=headline], .answer",
        "book": ".location",
        "setup": ".reading .patch",
        "reading": ".head .patch",
        "since": "svg, h2",
        "report": ".chart svg, .slip .patch",
    }.items(),
)
def test_the_chief_thing_is_in_sight_without_scrolling(app: Page, address: str, chief: str) -> None:
    """One screen height at 390×844, less the thumb bar: our own promise."""
    open_demo(app)
    of = ""
    if address in ("spectrum", "pair"):
        ids = app.evaluate(
            """document.querySelector("ek-set").asked
                .filter(({reading}) => reading.data.spectrum).map(({light}) => light.id)"""
        )
        of = "/" + "/".join(ids[: 1 + (address == "pair")])
    if address in ("setup", "reading", "since", "report"):
        app.evaluate("location.hash = '#book'")
        setup = app.locator("ek-book a.setup").first.get_attribute("href")
        assert setup
        of = "/" + setup.split("/")[1]
        if address in ("reading", "since"):
            app.evaluate("of => { location.hash = `setup${of}`; }", of)
            link = app.locator(f"ek-setup a[href^='#{address}/']").first.get_attribute("href")
            assert link
            of = "/" + link.split("/")[1]
    app.evaluate("address => { location.hash = address; }", address + of)
    if address in ("unmix", "flash"):
        app.get_by_label("x", exact=True).first.fill("0.3700")
        app.get_by_label("y", exact=True).first.fill("0.3720")
    if address == "flash":
        app.get_by_label("Exposure").fill("12")
        app.get_by_label("Reading of the ambient").select_option("batten 1")
    thing = app.locator(f"ek-{address}").locator(chief).first
    expect(thing).to_be_visible()
    expect(app.locator("main [aria-busy=true]")).to_have_count(0)
    box = thing.bounding_box()
    assert box
    app.evaluate("scrollTo(0, 0)")
    top = thing.evaluate("e => e.getBoundingClientRect().top + scrollY")
    assert 0 <= top < 844 - 64, (address, top)


#: Frame by frame, once the strip is there: whether the field is, and where the slips begin.
WATCH_THE_SLIPS = """() => {
    window.seen = [];
    const look = () => {
        const set = document.querySelector("ek-set");
        if (set?.querySelector(".strip")) {
            const top = set.querySelector(".slips").getBoundingClientRect().top + scrollY;
            seen.push([Boolean(set.querySelector(".chart")), top]);
        }
        requestAnimationFrame(look);
    };
    look();
}"""


def test_slips_stay_where_they_are_as_the_balance_field_comes(app: Page) -> None:
    open_demo(app)
    go(app, "Book")
    app.evaluate(WATCH_THE_SLIPS)
    go(app, "Set")
    expect(app.get_by_role("img", name="Balance field")).to_be_visible()
    seen = app.evaluate("seen")
    assert all(room for room, _ in seen)
    tops = [top for _, top in seen]
    # A line or two of what stands below the field may be more or less than was foreseen.
    assert max(tops) - min(tops) < 48
