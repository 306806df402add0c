"""What is seen on the screen is what the kernel says, of the right light, and can be read without
seeing it: strip, patches, ribbon and swatches."""

from __future__ import annotations

from typing import Any

import pytest
from conftest import Site, wait_for_kernel
from hands import go, headline, keep_light, open_demo, type_xy
from playwright.sync_api import BrowserContext, Locator, Page, Route, expect

from evenkelvin.desk import answer

WHITE = {"cct_K": "5600", "duv": "0"}
KEY, LOW = ("0.3320", "0.3480"), ("0.4476", "0.4075")
TILES = "ek-set .strip .tile"


def rgb(colour: dict[str, Any]) -> str:
    return f"rgb({', '.join(map(str, colour['srgb']))})"


def seen(*lights: dict[str, Any]) -> list[dict[str, Any]]:
    found = answer({"ask": "seen", "white": WHITE, "lights": list(lights)})
    assert "problem" not in found
    return list(found["lights"])


def fills(drawn: Locator) -> list[str]:
    return [str(one.get_attribute("fill")) for one in drawn.all()]


def test_the_patch_on_light_is_as_read_with_the_gels_and_as_meant(app: Page) -> None:
    type_xy(app, "0.44758", "0.40745")
    expect(headline(app)).to_contain_text("CTB")
    patch = app.locator("ek-light .seen rect")
    expect(patch).to_have_count(3)
    reading = {"x": "0.44758", "y": "0.40745", "lamp": "unknown"}
    fix = answer({"ask": "fix", "reading": reading, "target": WHITE})
    (look,) = seen({"reading": reading, "pack": fix["packs"][0]["gels"]})
    assert fills(patch) == [
        rgb(look[state]["grey"]) for state in ("as_read", "with_pack", "as_meant")
    ]
    # A touch opens the map by it, above all else, and again closes it.
    app.get_by_role("button", name="open the map").click()
    field = app.get_by_role("img", name="Balance field")
    expect(field).to_have_count(1)
    above = "e => e.compareDocumentPosition(document.querySelector('ek-light form'))"
    assert field.evaluate(above) == 4  # the form follows


def test_each_tile_is_of_its_own_light_also_beside_one_that_cannot_be(
    page: Page, site: Site, context: BrowserContext
) -> None:
    # While the kernel is not there yet, whatever is typed is kept.
    held: list[Route] = []
    context.route("**/kernel.pack", lambda route: held.append(route))
    page.goto(site.url)
    good, bad, low = ("key", *KEY), ("bad", "0.3810", "3.770"), ("low", *LOW)
    readings = [good, bad, low]
    for name, x, y in readings:
        keep_light(page, name, x, y)
    for route in held:
        route.continue_()
    go(page, "Set")
    wait_for_kernel(page)
    expect(page.locator(f"{TILES} .notch")).to_have_count(2)
    first, last = (seen({"x": x, "y": y})[0]["as_read"]["grey"] for _, x, y in (good, low))
    assert fills(page.locator(f"{TILES} .fill")) == [rgb(first), "none", rgb(last)]


def test_the_strip_is_as_high_as_its_lights_are_bright_and_shows_them_with_gels(app: Page) -> None:
    open_demo(app)
    expect(app.locator(f"{TILES} .notch").first).to_be_visible()
    before = fills(app.locator(f"{TILES} .fill"))
    words = app.locator("ek-set .strip svg").get_attribute("aria-label") or ""
    assert "1 key: out, the key's level." in words
    heights = [
        float(one.get_attribute("height") or 0) for one in app.locator(f"{TILES} .fill").all()
    ]
    assert max(heights) == heights[0]
    app.get_by_role("radio", name="With gels").check()
    expect(app.locator(f"{TILES} .verdict.out")).to_have_count(0)
    after = fills(app.locator(f"{TILES} .fill"))
    changed = [i for i, (one, other) in enumerate(zip(before, after, strict=True)) if one != other]
    packs = app.locator("ek-set .slip .hang").all_inner_texts()
    assert changed == [i for i, words in enumerate(packs) if "CT" in words or "green" in words]
    # A touch on a tile opens its slip.
    app.locator(f"{TILES} .fill").nth(3).click()
    expect(app.locator("ek-set .slip > details").nth(3)).to_have_attribute("open", "")


@pytest.mark.parametrize("width", [390, 820])
def test_the_strip_stays_in_sight_above_what_is_scrolled(app: Page, width: int) -> None:
    app.set_viewport_size({"width": width, "height": 844})
    open_demo(app)
    low = app.locator("ek-set .strip.low")
    full = app.locator("ek-set .strip:not(.low)")
    expect(full.locator(".notch").first).to_be_visible()
    expect(low).to_have_count(0)
    last = app.locator("ek-set .slip").last
    place = last.evaluate("e => { e.scrollIntoView(); return e.getBoundingClientRect().top }")
    expect(low).to_be_visible()
    # It takes no room in the page, and what has the focus is not under it.
    assert last.evaluate("e => e.getBoundingClientRect().top") == pytest.approx(place, abs=1)
    box, top = low.bounding_box(), app.locator("main").bounding_box()
    assert box
    assert top
    assert box["y"] + box["height"] <= place
    assert box["y"] - max(0, top["y"]) < 64
    fill, verdict = low.locator(".tile .fill"), low.locator(".tile .verdict.out")
    assert fills(fill) == fills(full.locator(".tile .fill"))
    before, out = fills(fill), verdict.count()
    app.get_by_role("button", name="With gels").click()
    expect(verdict).to_have_count(0)
    assert out
    assert fills(fill) == fills(full.locator(".tile .fill")) != before
    fill.nth(1).click()
    slip = app.locator("ek-set .slip > details").nth(1)
    expect(slip).to_have_attribute("open", "")
    assert app.locator("ek-set .slip > details[open]").count() == 1
    full.evaluate("e => e.scrollIntoView({block: 'center'})")
    expect(low).to_have_count(0)


@pytest.mark.parametrize(
    ("place", "picture"),
    [("set", "ek-set .strip svg"), ("light", "ek-light .seen svg"), ("mix", "ek-mix .ribbon svg")],
)
def test_the_picture_is_in_sight_without_scrolling(app: Page, place: str, picture: str) -> None:
    open_demo(app)
    app.evaluate("place => { location.hash = place; }", place)
    if place == "light":
        type_xy(app, "0.44758", "0.40745")
    if place == "mix":
        app.get_by_role("button", name="zone beside").click()
    box = app.locator(picture).bounding_box()
    assert box
    assert box["y"] >= 0
    assert box["y"] + box["height"] < 844 - 64


def test_patches_are_dim_in_the_dark_until_they_are_asked_for(app: Page) -> None:
    app.emulate_media(color_scheme="dark")
    open_demo(app)
    fill = app.locator(f"{TILES} .fill").first
    opacity = "e => Number(getComputedStyle(e).fillOpacity)"
    expect(fill).to_be_visible()
    assert fill.evaluate(opacity) < 1
    app.get_by_role("button", name="Full patches").click()
    expect(app.get_by_text("is not a monitor")).to_be_visible()
    assert fill.evaluate(opacity) == 1
    app.get_by_role("button", name="Dim patches").click()
    assert fill.evaluate(opacity) < 1
    app.emulate_media(color_scheme="light")
    expect(app.get_by_role("button", name="Full patches")).to_have_count(0)
    assert fill.evaluate(opacity) == 1


def test_a_place_on_the_ribbon_is_read_off(app: Page) -> None:
    keep_light(app, "key", "0.3320", "0.3480")
    keep_light(app, "window", "0.4476", "0.4075")
    app.evaluate("location.hash = 'mix'")
    app.get_by_label("window").first.uncheck()
    app.get_by_role("button", name="zone beside").click()
    app.get_by_label("window").first.check()
    app.get_by_label("key", exact=False).first.uncheck()
    ribbon = app.get_by_role("slider", name="From one zone")
    expect(ribbon).to_be_visible()
    one, other = (
        {"reading": {"x": x, "y": y}} for x, y in (("0.3320", "0.3480"), ("0.4476", "0.4075"))
    )
    places = 41
    mixed = answer(
        {"ask": "mix", "lights": [one], "beside": [other], "ribbon": places, "white": WHITE}
    )["ribbon"]
    drawn = ribbon.locator(".place")
    expect(drawn.nth(places - 1)).to_have_attribute("fill", rgb(mixed["colours"][-1]))
    assert fills(drawn) == [rgb(colour) for colour in mixed["colours"]]
    # In small it stays beside the figure that does not scroll away.
    assert fills(app.locator("ek-mix .sum .patch rect")) == fills(drawn)
    ribbon.press("End")
    expect(ribbon).to_have_attribute("aria-valuenow", str(places - 1))
    last = f"{round(mixed['colours'][-1]['cct_K'], -1):.0f} K"
    expect(app.locator("ek-ribbon .read-off")).to_contain_text(last)
    box = ribbon.bounding_box()
    assert box
    app.mouse.click(box["x"] + box["width"] / 2, box["y"] + 20)
    expect(ribbon).to_have_attribute("aria-valuenow", "20")


def test_each_gel_of_the_kit_has_the_colour_that_it_makes(app: Page) -> None:
    gels = {gel["name"]: gel for gel in answer({"ask": "kit"})["gels"]}
    go(app, "Kit")
    for summary in app.locator(".family > summary").all():
        summary.click()
    expect(app.locator(".stock .patch")).to_have_count(len(gels))
    for row in app.locator(".stock li").all():
        name = row.locator(".pieces").get_attribute("aria-label") or ""
        gel = next(gel for known, gel in gels.items() if name.endswith(known) or known in name)
        white = {"cct_K": gel["reference_K"], "duv": 0}
        look = answer(
            {"ask": "seen", "white": white, "lights": [{"reading": white, "pack": [gel["name"]]}]}
        )["lights"][0]
        if "full" in gel["name"]:
            assert fills(row.locator("rect")) == [rgb(look["with_pack"]["grey"])], name


def test_two_lights_are_seen_on_the_same_things_to_the_eye_and_to_the_camera(app: Page) -> None:
    open_demo(app)
    readings: list[dict[str, Any]] = app.evaluate(
        """() => {
            const some = document.querySelector("ek-set").asked
                .filter(({reading}) => reading.data.spectrum);
            location.hash = `pair/${some[0].light.id}/${some[1].light.id}`;
            return some.map(({reading}) => ({...reading.data}));
        }"""
    )
    rows = app.locator("ek-pair .looks tbody tr")
    expect(rows).to_have_count(5)
    expect(rows.locator("td rect")).to_have_count(20)
    assert len(readings) > 1
    for place, judge in enumerate(("eye", "camera")):
        first, second = (
            {key: each[key] for key in ("spectrum", "pack") if each.get(key)}
            for each in readings[:2]
        )
        told = answer(
            {
                "ask": "seen",
                "lights": [{"reading": first}, {"reading": second}],
                "white": first,
                "judge": judge,
            }
        )
        assert "problem" not in told
        for row, thing in enumerate(("grey", "skin_light", "skin_dark", "red", "foliage")):
            drawn = fills(rows.nth(row).locator("td").nth(place).locator("rect"))
            assert drawn == [rgb(light["as_read"][thing]) for light in told["lights"]], thing
