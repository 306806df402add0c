"""Light: from what the meter shows to what to hang, kept."""

from __future__ import annotations

import re

from conftest import Site, Watch, ask, wait_for_kernel
from hands import go, headline, keep, keep_light, open_setup, type_xy
from playwright.sync_api import BrowserContext, Page, expect

# CIE standard illuminant A: x 0.44758, y 0.40745, CCT 2855.5 K (CIE 15; Ohno 2013).
ILLUMINANT_A = ("0.44758", "0.40745")
# CIE illuminant D55: x 0.33243, y 0.34744, CCT 5502 K (CIE 15; Ohno 2013).
D55 = ("0.33243", "0.34744")


def test_the_main_job_from_typing_to_kept(app: Page) -> None:
    app.get_by_label("Match").or_(app.get_by_text("Match", exact=True)).click()
    app.get_by_role("button", name="3200 K").click()
    type_xy(app, *D55, name="window")
    # Full CTO takes 5500 K daylight to about 3200 K: common practice, no source.
    expect(headline(app)).to_contain_text("CTO")
    lands = app.locator(".answer .figures").inner_text()
    cct = int(re.search(r"(\d{4}) K", lands)[1])  # type: ignore[index]
    assert abs(cct - 3200) <= 100
    expect(app.locator(".answer")).to_contain_text("mired too cool")
    expect(app.locator(".answer")).to_contain_text(re.compile(r"\d\.\d stop"))
    expect(app.locator(".caution")).to_contain_text("ignite")
    expect(app.get_by_role("img", name="Balance field")).to_be_visible()
    # What is seen is also said, once the typing rests.
    expect(app.get_by_role("status").filter(has_text="Lands")).to_contain_text(str(cct))
    keep(app)
    expect(app.locator(".kept")).to_contain_text("window kept at")
    open_setup(app, "Setup 1")
    expect(app.locator("ek-setup")).to_contain_text("window")
    expect(app.locator("ek-setup")).to_contain_text("5500 K, Duv +0.0033")
    app.locator("ek-setup .reading").click()
    expect(app.locator("ek-reading .facts")).to_contain_text("x 0.33243 y 0.34744")


def test_the_screen_and_the_kernel_say_the_same(app: Page) -> None:
    type_xy(app, *ILLUMINANT_A)
    expect(headline(app)).not_to_be_empty()
    answer = ask(
        app,
        {
            "ask": "fix",
            "reading": {"x": ILLUMINANT_A[0], "y": ILLUMINANT_A[1]},
            "target": {"cct_K": 5600, "duv": 0},
            "tolerance": "normal",
        },
    )
    expect(headline(app)).to_have_text(answer["packs"][0]["words"])
    expect(app.locator(".answer")).to_contain_text(answer["offset"]["words"])
    assert abs(answer["reading"]["cct_K"] - 2855.5) < 0.5


def test_cct_and_duv_with_a_decimal_comma(app: Page) -> None:
    app.get_by_role("radio", name="CCT and Duv").check()
    app.get_by_label("CCT", exact=True).fill("3200")
    app.get_by_label("Duv", exact=True).fill("0,0050")
    expect(app.locator(".answer")).to_contain_text("too warm")
    expect(app.locator(".answer")).to_contain_text("green")
    expect(app.locator(".problem")).to_have_count(0)


def test_bad_input_is_told_at_its_field_and_nothing_is_lost(app: Page) -> None:
    type_xy(app, "0.4x", "0.4022", name="key")
    field = app.get_by_label("x", exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    sentence = app.locator(f"#{field.get_attribute('aria-describedby')}")
    expect(sentence).to_contain_text("0.4x")
    expect(app.get_by_role("button", name="Keep", exact=True)).to_be_disabled()
    app.reload()
    expect(field).to_have_value("0.4x")
    expect(app.get_by_label("Name", exact=True)).to_have_value("key")
    wait_for_kernel(app)
    field.fill("0.4215")
    expect(headline(app)).not_to_be_empty()
    expect(field).to_have_attribute("aria-invalid", "false")


def test_a_doubtful_comma_is_settled_by_a_tap(app: Page) -> None:
    type_xy(app, "0.3810", "0.3770")
    lux = app.get_by_label("Illuminance", exact=True)
    for said, typed in (("1500 lx", "1500"), ("1.5 lx", "1.500")):
        lux.fill("1,500")
        expect(app.get_by_text("can be read in two ways")).to_be_visible()
        app.get_by_role("button", name=said, exact=True).click()
        expect(lux).to_have_value(typed)
        expect(app.get_by_text("can be read in two ways")).to_have_count(0)
        expect(headline(app)).to_be_visible()


def test_an_impossible_chromaticity_is_told(app: Page) -> None:
    type_xy(app, "0.7", "0.7")
    expect(app.locator("ek-light .problem").first).to_be_visible()
    expect(headline(app)).to_have_count(0)


def test_foot_candles_are_kept_as_typed(app: Page) -> None:
    go(app, "Kit")
    app.get_by_role("radio", name="Foot-candle").check()
    go(app, "Light")
    type_xy(app, *D55, name="key")
    app.get_by_label("Illuminance").fill("87")
    keep(app)
    open_setup(app, "Setup 1")
    expect(app.locator("ek-setup")).to_contain_text("87 fc")


def test_a_light_is_read_again_after_the_fix(app: Page) -> None:
    type_xy(app, *ILLUMINANT_A, name="practical")
    expect(headline(app)).not_to_be_empty()
    hung = headline(app).inner_text().split(" + ")
    keep(app)
    app.get_by_role("button", name="Read again", exact=True).click()
    for gel in hung:
        name = gel.removeprefix("2 × ")
        expect(app.locator(".chips")).to_contain_text(name, ignore_case=True)
    type_xy(app, "0.3310", "0.3420")
    table = app.get_by_role("table", name="Before and after")
    expect(table.get_by_role("row", name="Before")).to_contain_text("2860 K")
    expect(table.get_by_role("row", name="After")).to_contain_text("holds")
    assert app.locator(".answer").inner_text().lower().count("leave it alone") == 1
    keep(app)
    open_setup(app, "Setup 1")
    expect(app.locator(".readings li")).to_have_count(2)
    expect(app.locator(".readings li").first).to_contain_text("gelled")


def test_another_light_can_be_the_white_to_match(app: Page) -> None:
    keep_light(app, "key", "0.4215", "0.4022")
    app.get_by_text("Match", exact=True).click()
    app.get_by_label("Or match another light").select_option("key")
    expect(app.locator(".against summary")).to_contain_text("key")
    type_xy(app, "0.4215", "0.4022", name="fill")
    expect(headline(app)).to_have_text("Leave it alone")


def test_what_is_half_typed_can_be_brought_back(app: Page) -> None:
    type_xy(app, *D55, name="key")
    app.get_by_role("button", name="Clear").click()
    expect(app.get_by_label("x", exact=True)).to_have_value("")
    app.get_by_role("button", name="Undo").click()
    expect(app.get_by_label("x", exact=True)).to_have_value(D55[0])
    expect(app.get_by_label("Name", exact=True)).to_have_value("key")


def test_the_line_that_offers_undo_never_lies_over_an_action(app: Page) -> None:
    type_xy(app, *D55, name="key")
    app.get_by_role("button", name="Clear").click()
    undo = app.get_by_role("button", name="Undo")
    expect(undo).to_be_visible()
    type_xy(app, *D55, name="fill")
    expect(headline(app)).not_to_be_empty()
    toast = app.locator(".toast").bounding_box()
    assert toast
    for part in (".bar", ".thumb"):
        box = app.locator(part).bounding_box()
        assert box
        assert box["y"] + box["height"] <= toast["y"] or box["y"] >= toast["y"] + toast["height"]
    # Every control can be brought clear of it: what is at its middle is the control itself.
    covered = app.evaluate("""() => [...document.querySelectorAll("main button, main a, main input,"
        + "main select, main summary")].filter((each) => {
            if (!each.checkVisibility()) return false;
            each.focus();
            each.scrollIntoView({block: "nearest"});
            const {left, width, top, height} = each.getBoundingClientRect();
            const there = document.elementFromPoint(left + width / 2, top + height / 2);
            return there?.closest(".toast");
        }).map((each) => each.outerHTML.slice(0, 80))""")
    assert covered == []
    undo.click()
    expect(undo).to_have_count(0)
    app.get_by_role("button", name="Keep", exact=True).click()
    expect(app.locator(".kept")).to_be_visible()


def test_a_camera_that_cannot_be_is_told_within_the_page(app: Page) -> None:
    go(app, "Kit")
    app.get_by_label("Frame rate").fill("as the last unit had it")
    go(app, "Light")
    type_xy(app, *D55)
    app.get_by_label("Illuminance").fill("400")
    expect(app.locator(".stop-line")).to_contain_text("is not a number")
    assert app.evaluate("document.documentElement.scrollWidth") <= 390


def test_a_near_light_may_be_left_and_what_is_to_be_done_comes_first(app: Page) -> None:
    app.get_by_text("Match", exact=True).click()
    app.get_by_role("button", name="3200 K").click()
    app.get_by_role("radio", name="CCT and Duv").check()
    app.get_by_label("CCT", exact=True).fill("3350")
    app.get_by_label("Duv", exact=True).fill("0.001")
    app.get_by_label("Lamp type").select_option("fluorescent")
    expect(headline(app)).to_have_text("1/8 CTO")
    expect(app.locator(".answer")).to_contain_text("Or leave it: near, 4.6 colour steps away")
    # With the gels told that it was read through, it is no more work.
    for gel in ("1/2 CTO", "1/4 minus green"):
        app.get_by_label("Gel already on it").select_option(gel)
    expect(headline(app)).to_have_text(re.compile("^(Add|Take off|Swap) "))
    expect(app.locator(".answer")).to_contain_text("Then on it:")
    expect(app.locator(".answer")).to_contain_text("Or leave it")


def test_typing_need_not_wait_for_the_kernel(
    page: Page, site: Site, context: BrowserContext
) -> None:
    held = []
    context.route("**/kernel.pack", lambda route: held.append(route))
    page.goto(site.url)
    type_xy(page, *D55, name="window")
    expect(page.get_by_role("progressbar")).to_be_visible()
    expect(headline(page)).to_have_count(0)
    keep(page)  # a reading is kept even before it is answered
    for route in held:
        route.continue_()
    expect(headline(page)).not_to_be_empty(timeout=60_000)
    expect(page.locator(".whose")).to_have_text("window")


def test_a_kernel_that_cannot_start_is_told_once_and_tried_again(
    page: Page,
    site: Site,
    context: BrowserContext,
    watch: Watch,
) -> None:
    watch.expected += ["Failed to load", "Failed to fetch"]
    context.route("**/kernel.pack", lambda route: route.abort())
    page.goto(site.url)
    type_xy(page, *D55)
    page.locator("html[data-kernel=failed]").wait_for(state="attached", timeout=60_000)
    expect(page.get_by_text("Answers cannot be worked out now")).to_have_count(1)
    context.unroute("**/kernel.pack")
    page.get_by_role("button", name="Try again").click()
    expect(headline(page)).not_to_be_empty(timeout=60_000)
