"""Mixing, unmixing, flash and ambient: worked out, kept with how it was reached, offline."""

from __future__ import annotations

from hands import go, headline, keep_light, open_slip
from playwright.sync_api import Page, expect

# CIE 15 illuminants A and D55.
ILLUMINANT_A = ("0.44758", "0.40745")
D55 = ("0.33243", "0.34744")


def read_two(page: Page) -> None:
    """Two lights of 400 and 100 lx."""
    for name, xy, lux in (("key", D55, "400"), ("practical", ILLUMINANT_A, "100")):
        page.get_by_label("Illuminance").fill(lux)
        keep_light(page, name, *xy)


def test_lights_are_mixed_by_sliders_and_the_edge_beside_them_is_told(
    offline: Page,
) -> None:
    app = offline
    read_two(app)
    go(app, "Set")
    open_slip(app, "practical")
    app.get_by_role("link", name="Mix practical with others").click()
    mixture = app.get_by_role("region", name="What they make together")
    key = app.locator(".may > li", has_text="key")
    practical = app.locator(".may > li", has_text="practical")
    expect(mixture).to_contain_text("500 lx")
    expect(key).to_contain_text("80 %, 400 lx")
    alone = headline(app).inner_text()

    # By keys: two stops down leaves a quarter of it.
    slider = key.get_by_role("slider", name="Brighter or darker")
    slider.focus()
    for _ in range(20):
        app.keyboard.press("ArrowLeft")
    expect(slider).to_have_attribute("aria-valuetext", "2 stops darker")
    expect(mixture).to_contain_text("200 lx")
    expect(key).to_contain_text("50 %, 100 lx")
    expect(headline(app)).not_to_have_text(alone)

    app.get_by_label("Change key by").select_option("Distance")
    expect(mixture).to_contain_text("500 lx")
    stands = key.get_by_role("slider", name="Stands at")
    stands.focus()
    for _ in range(4):  # from 2.8 m to 5.6 m: a quarter by the inverse square
        app.keyboard.press("ArrowRight")
    expect(stands).to_have_attribute("aria-valuetext", "5.6 m")
    expect(key).to_contain_text("100 lx")

    app.get_by_label("Change key by").select_option("Its level")
    level = key.get_by_role("slider", name="Gives on this spot")
    expect(level).to_have_attribute("aria-valuetext", "100 lx")
    app.get_by_label("Change practical by").select_option("Dimmer")
    dimmer = practical.get_by_role("slider", name="Dimmer")
    dimmer.focus()
    dimmer.press("Home")
    expect(practical).to_contain_text("0 %")
    expect(headline(app)).to_have_text("5500 K")

    # A zone beside it with the practical alone: far from daylight.
    app.get_by_role("button", name="Add a zone").click()
    key.get_by_role("checkbox").uncheck()
    expect(app.locator(".problem")).to_contain_text("zero")
    dimmer.press("End")
    expect(app.locator(".boundary")).to_contain_text("a strong edge in colour")
    expect(headline(app)).to_have_text("2860 K")

    app.get_by_role("button", name="Keep in the book").click()
    expect(app.locator(".toast")).to_contain_text("Kept")
    go(app, "Set")
    app.locator("summary", has_text="1 result kept here").click()
    kept = app.locator("ek-findings li")
    expect(kept).to_contain_text("2860 K: practical 100 %. a strong edge")
    app.get_by_role("button", name="Delete the result").click()
    expect(kept).to_have_count(0)
    app.get_by_role("button", name="Undo").click()
    expect(kept).to_have_count(1)
    app.reload()
    app.locator("summary", has_text="1 result kept here").click()
    expect(kept).to_have_count(1)


def test_shares_of_a_sum_are_told_and_flash_is_weighed_against_ambient(app: Page) -> None:
    read_two(app)
    app.evaluate("location.hash = '#unmix'")
    # Half the light of each: X Y Z add, so x y lies between them, weighted by Y / y.
    a, d = [(float(x), float(y)) for x, y in (ILLUMINANT_A, D55)]
    weight = (1 / a[1], 1 / d[1])
    x, y = [(weight[0] * a[i] + weight[1] * d[i]) / sum(weight) for i in range(2)]
    app.get_by_label("x", exact=True).fill(f"{x:.5f}")
    app.get_by_label("y", exact=True).fill(f"{y:.5f}")
    app.get_by_label("Illuminance").fill("200")
    expect(headline(app)).to_have_text("The shares are told")
    table = app.get_by_role("table", name="Share of each light")
    expect(table.get_by_role("row", name="key")).to_contain_text("50 %")
    expect(table.get_by_role("row", name="practical")).to_contain_text("100")
    app.reload()  # what is half typed is still there
    expect(app.get_by_label("y", exact=True)).to_have_value(f"{y:.5f}")
    app.get_by_label("y", exact=True).fill("0.43")
    expect(headline(app)).to_have_text("Some light is missing", timeout=20_000)
    expect(app.locator("ek-unmix .answer")).to_contain_text("light that none of these give")
    app.get_by_role("button", name="Keep in the book").click()
    expect(app.locator("ek-findings")).to_contain_text("1 result")
    app.get_by_label("y", exact=True).fill("4.3")
    expect(app.locator("#sum-y-problem")).to_be_visible()

    app.evaluate("location.hash = '#flash'")
    app.get_by_label("Reading of the ambient").select_option("practical")
    app.get_by_label("x", exact=True).fill(D55[0])
    app.get_by_label("y", exact=True).fill(D55[1])
    app.get_by_label("Exposure").fill("4")
    app.get_by_label("Shutter").fill("1/50")
    # 4 lx·s against 100 lx for 1/50 s: one stop over.
    expect(headline(app)).to_contain_text("2:1")
    expect(headline(app)).to_contain_text("1 stop")
    expect(app.locator(".pack").first).to_contain_text("CTO")
    table = app.get_by_role("table", name="Other shutters")
    expect(table.get_by_role("row", name="1/25 s")).to_contain_text("0.0 stops")
    app.get_by_label("Shutter").fill("often")
    expect(app.locator("#flash-time-problem")).to_be_visible()
    app.get_by_label("Shutter").fill("1/50")
    app.get_by_role("button", name="Keep in the book").click()
    expect(app.locator("ek-findings")).to_contain_text("2 results")
