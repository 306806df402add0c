"""Spectra in the app, with the server dead: real files through the real file chooser."""

from __future__ import annotations

import base64
import re
from pathlib import Path
from typing import Any

from conftest import PHONE, ROOT, Site, wait_for_kernel
from hands import go, headline, keep, open_demo, open_setup, open_slip, type_xy
from playwright.sync_api import Browser, Page, expect
from test_access import AXE, violations_in_both

from evenkelvin.desk import answer

SPECTRA = ROOT / "demo_readings" / "spectra"
#: CIE illuminant LED-B3: CCT 4103 K (CIE 15:2018, table 12.1); the file's name for it.
LED_B3 = ("Panel left", "4100 K")


def choose(page: Page, label: str, *files: Path | str) -> None:
    """Choose files as a person does: the button opens the chooser."""
    with page.expect_file_chooser() as chooser:
        page.get_by_label(label, exact=True).click()
    assert chooser.value.is_multiple()
    chooser.value.set_files([str(SPECTRA / file) for file in files])


def load(page: Page, *files: Path | str) -> None:
    """Load files from Light and wait until all are understood."""
    go(page, "Light")
    page.get_by_role("radio", name="Spectrum").check()
    choose(page, "Load another" if page.get_by_label("Load another").count() else "Load a file",
           *files)  # fmt: skip
    settled(page, len(files))


def settled(page: Page, count: int) -> None:
    expect(page.locator(".in-file[aria-busy=false]")).to_have_count(count)


def take(page: Page, name: str) -> None:
    """Of the light in the preview, choose one only and put it on Light."""
    for box in page.get_by_role("checkbox").all():
        if not box.is_disabled():
            box.uncheck()
    page.get_by_role("checkbox", name=name).check()
    page.get_by_role("button", name="Show its fix").click()
    expect(headline(page)).not_to_be_empty()


def imported(name: str) -> list[dict[str, Any]]:
    raw = base64.b64encode((SPECTRA / name).read_bytes()).decode()
    found: list[dict[str, Any]] = answer({"ask": "import", "bytes_base64": raw})["spectra"]
    return found


def as_reading(found: dict[str, Any]) -> dict[str, Any]:
    return {"spectrum": {key: found[key] for key in ("wavelengths_nm", "values")}}


def test_several_files_at_once_and_the_good_ones_are_taken(demo: Page, tmp_path: Path) -> None:
    bad = tmp_path / "cut off.csv"
    bad.write_text("nm;W\n" + "".join(f"{nm};1\n" for nm in range(380, 600, 5)))
    files = [path.name for path in sorted(SPECTRA.iterdir()) if path.suffix not in (".py", ".md")]
    load(demo, *files, bad, SPECTRA / "README.md")
    first = demo.locator(".in-file", has_text="led_panels.cgats")
    expect(first).to_contain_text("CGATS.17 (ISO 28178)")
    expect(first.locator("li", has_text=LED_B3[0]).first).to_contain_text(LED_B3[1])
    wrong = demo.locator(".in-file", has_text="cut off.csv")
    expect(wrong.locator(".problem")).to_contain_text("380–595 nm")
    expect(wrong.locator(".problem")).to_contain_text("Line")
    expect(demo.locator(".in-file", has_text="README.md").locator(".problem")).to_be_visible()
    demo.get_by_role("checkbox", name="Practical").uncheck()
    count = sum(len(imported(file)) for file in files) - 1
    demo.get_by_role("button", name=f"Keep all {count}", exact=True).click()
    expect(demo.get_by_role("checkbox")).to_have_count(1)  # the one that was not wanted is left
    go(demo, "Set")
    expect(demo.locator(".slip")).to_have_count(6 + count - 1)  # the gel is no light
    expect(demo.locator(".slip", has_text=LED_B3[0])).to_contain_text(LED_B3[1])
    go(demo, "Kit")
    expect(demo.locator(".own-gel")).to_contain_text("faded_quarter_amber")


def test_a_fix_is_computed_on_the_spectrum_and_kept_with_it(demo: Page) -> None:
    load(demo, "hmi_doorway.csv")
    take(demo, "HMI through the doorway")
    (found,) = imported("hmi_doorway.csv")
    request = {"ask": "fix", "reading": as_reading(found), "target": {"cct_K": 4300}}
    fix = answer(request)
    expect(headline(demo)).to_have_text(fix["packs"][0]["words"])
    demo.get_by_text("Why, and what to dial").click()
    expect(demo.locator(".answer")).not_to_contain_text("the spectrum is a guess")
    expect(demo.get_by_label("Name", exact=True)).to_have_value("HMI through the doorway")
    keep(demo)
    demo.reload()
    wait_for_kernel(demo)
    open_setup(demo, "here")
    light = demo.locator(".lights > li", has_text="HMI through the doorway")
    light.locator("a[href^='#reading/']").first.click()
    demo.get_by_role("link", name="See how it shows colours").click()
    expect(demo.get_by_role("heading", name="HMI through the doorway")).to_be_visible()


def test_an_earlier_spectrum_is_gone_by_where_only_x_y_is_read_again(demo: Page) -> None:
    load(demo, "hmi_doorway.csv")
    take(demo, "HMI through the doorway")
    keep(demo)
    demo.get_by_role("button", name="Read again", exact=True).click()
    (found,) = imported("hmi_doorway.csv")
    was = answer({"ask": "describe", "reading": as_reading(found)})
    # Nothing was hung after all.
    for chip in demo.locator(".chips button").all():
        chip.click()
    demo.get_by_role("radio", name="x y").check()
    type_xy(demo, f"{was['x'] + 0.001:.4f}", f"{was['y'] + 0.001:.4f}")
    words = "Based on what HMI through the doorway did before."
    expect(demo.get_by_test_id("after")).to_have_text(words)
    # Far from what it read then it is another lamp, or dialled otherwise.
    type_xy(demo, "0.4300", "0.4050")
    expect(demo.locator(".answer")).to_contain_text("too warm")
    expect(demo.get_by_test_id("after")).to_have_count(0)
    type_xy(demo, f"{was['x'] + 0.001:.4f}", f"{was['y'] + 0.001:.4f}")
    expect(demo.get_by_test_id("after")).to_have_text(words)
    keep(demo)
    go(demo, "Set")
    expect(open_slip(demo, "HMI through the doorway")).to_contain_text(words)


def test_what_the_file_leaves_open_is_asked(demo: Page, tmp_path: Path) -> None:
    open_one = tmp_path / "gel or light.txt"
    open_one.write_text("nm %\n" + "".join(f"{n} {90 - n / 20}\n" for n in range(380, 790, 10)))
    load(demo, open_one)
    item = demo.locator(".found li")
    expect(item).to_contain_text("Duv")
    demo.get_by_label("The file does not say").select_option("A gel's transmittance")
    expect(item).to_contain_text("A gel:")
    demo.get_by_label("Name", exact=True).fill("1/4 CTB")
    expect(item).to_contain_text("Takes the place of the nominal 1/4 CTB")
    demo.get_by_role("button", name="Keep it in the kit").click()
    expect(demo.locator("ek-kit .own-gel")).to_contain_text("1/4 CTB")


def test_text_is_pasted_and_a_file_is_dropped(demo: Page) -> None:
    text = (SPECTRA / "practical.txt").read_text()
    demo.evaluate("location.hash = '#files'")
    demo.evaluate("text => navigator.clipboard.writeText(text)", text)
    demo.get_by_label("Paste the text of a file here").press("ControlOrMeta+v")
    settled(demo, 1)
    expect(demo.locator(".found")).to_contain_text("2730 K")
    demo.evaluate(
        """text => {
            const data = new DataTransfer();
            data.items.add(new File([text], "dropped.txt"));
            document.body.dispatchEvent(new DragEvent("drop", {dataTransfer: data, bubbles: true}));
        }""",
        text,
    )
    settled(demo, 2)
    expect(demo.get_by_role("heading", name="dropped.txt")).to_be_visible()
    for _ in range(2):
        demo.get_by_role("button", name="Set aside").first.click()
    settled(demo, 0)


def test_a_lights_colour_rendering_is_told_in_words_then_numbers(demo: Page) -> None:
    load(demo, "batten_2.spdx")
    take(demo, "Batten 2")
    demo.get_by_role("link", name="See how it shows colours").click()
    (found,) = imported("batten_2.spdx")
    rendered = answer({"ask": "render", "reading": as_reading(found)})
    flags = demo.locator(".flags li")
    expect(flags).to_have_text(rendered["words"])
    figures = demo.locator(".figures").inner_text().split()
    for name, value in (
        ("TLCI", rendered["tlci"]["qa"]),
        ("Ra", rendered["cri"]["ra"]),
        ("Rf", rendered["tm30"]["rf"]),
        ("SSI", rendered["ssi"]["value"]),
    ):
        assert int(figures[figures.index(name) + 1]) == round(value), name
    bars = demo.get_by_role("table", name="Special colour rendering indices")
    strong_red = bars.get_by_role("row", name=re.compile("^R9 "))
    expect(strong_red).to_contain_text("−116")
    expect(strong_red).to_contain_text("very wrong")
    demo.locator("summary", has_text=re.compile("^SSI, matching")).click()
    rests = demo.locator("details.number[open]")
    expect(rests).to_contain_text(rendered["ssi"]["reference"])
    expect(rests).to_contain_text("SMPTE ST 2122:2020")


def test_the_curve_is_read_off_by_key_by_finger_and_at_its_peaks(demo: Page) -> None:
    demo.evaluate("location.hash = '#set'")
    open_slip(demo, "batten 2")
    demo.get_by_role("link", name="Spectrum of batten 2").click()
    line = demo.get_by_role("slider")
    # CIE FL2 has its strongest line, mercury's at 435.8 nm, in the sample at 435 nm (CIE 15:2018).
    expect(line).to_have_attribute("aria-valuetext", re.compile("^At 435 nm: 1.00, "))
    line.press("ArrowRight")
    expect(line).to_have_attribute("aria-valuenow", "440")
    line.press("Home")
    expect(demo.locator(".read-off")).to_contain_text("At 380 nm")
    demo.get_by_role("button", name="545 nm").click()
    expect(line).to_have_attribute("aria-valuenow", "545")
    box = line.bounding_box()
    assert box
    demo.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    middle = int(line.get_attribute("aria-valuenow") or 0)
    assert 550 <= middle <= 580
    demo.get_by_text("The curve as a table").click()
    rows = demo.locator("ek-spectrum details[open] tbody tr")
    expect(rows).to_have_count(81)
    expect(rows.filter(has_text="435 nm")).to_contain_text("1.00")
    demo.get_by_label("Beside it").select_option("practical on the counter")
    expect(demo.locator(".read-off")).to_contain_text("practical on the counter")


def test_everything_is_copied_and_saved(demo: Page, tmp_path: Path) -> None:
    open_slip(demo, "edge")
    demo.get_by_role("link", name="Spectrum of edge").click()
    demo.get_by_role("button", name="Copy table").click()
    expect(demo.locator(".toast")).to_contain_text("Copied")
    copied = demo.evaluate("navigator.clipboard.readText()")
    assert re.search(r"^Ra\t\d+\t", copied, re.MULTILINE)
    assert re.search(r"^620\t1\t", copied, re.MULTILINE)
    for button, ending in (("Save as CSV", "csv"), ("Save as TM-27", "spdx")):
        with demo.expect_download() as download:
            demo.get_by_role("button", name=button).click()
        assert download.value.suggested_filename == f"edge.{ending}"
        path = tmp_path / f"edge.{ending}"
        download.value.save_as(path)
        raw = base64.b64encode(path.read_bytes()).decode()
        (found,) = answer({"ask": "import", "bytes_base64": raw})["spectra"]
        assert found["wavelengths_nm"] == list(range(380, 785, 5))
        assert max(found["values"]) == 1.0


def test_lights_that_agree_in_x_y_but_not_in_spectrum_are_told(demo: Page) -> None:
    warning = demo.locator("ek-set .warnings", has_text="agree in x y but not in spectrum")
    expect(warning).to_contain_text("fill and edge")
    ssi = re.search(r"SSI (\d+)", warning.inner_text())
    assert ssi
    warning.get_by_role("link", name="See both").click()
    expect(demo.get_by_role("heading", name="fill and edge")).to_be_visible()
    expect(demo.locator(".figures")).to_contain_text(ssi[1])
    expect(demo.locator(".flags")).to_contain_text("A metameric pair")
    demo.get_by_text("Patch by patch").click()
    skin = demo.locator("ek-pair details").get_by_role("row", name="light skin")
    expect(skin).to_have_count(1)
    assert all(float(cell) > 0 for cell in skin.locator("td").all_inner_texts())


def test_two_readings_teach_a_gel_that_is_used_from_then_on(demo: Page) -> None:
    load(demo, "key_bare_and_gelled.csv")
    take(demo, "Key bare")
    demo.get_by_label("Name", exact=True).fill("tungsten key")
    keep(demo)
    demo.get_by_role("button", name="Read again", exact=True).click()
    for chip in demo.locator(".chips .chip").all()[::-1]:
        chip.click()
    demo.get_by_label("Gel already on it").select_option("1/2 CTB")
    load(demo, "key_bare_and_gelled.csv")
    take(demo, "Key with half CTB")
    demo.get_by_text("Learn this gel").click()
    bare, gelled = map(as_reading, imported("key_bare_and_gelled.csv"))
    learned = answer({"ask": "learn_gel", "bare": bare, "gelled": gelled, "name": "1/2 CTB"})
    table = demo.locator("ek-learn-gel table")
    for row, gel in (("Measured", learned["gel"]), ("Nominal", learned["nominal"])):
        shown = f"−{abs(round(gel['mired']))} mired"
        expect(table.get_by_role("row", name=row)).to_contain_text(shown)
    demo.get_by_role("button", name="Keep it in the kit").click()
    expect(demo.locator(".toast")).to_contain_text("1/2 CTB is in the kit")
    keep(demo)

    # The next advice is given with it: the same as the kernel's with the gel sent along.
    load(demo, "key_bare_and_gelled.csv")
    take(demo, "Key bare")
    own = {key: learned["gel"][key] for key in ("name", "wavelengths_nm", "transmittance")}
    request = {"ask": "fix", "reading": bare, "target": {"cct_K": 4300}}
    best = answer({**request, "own_gels": [own]})["packs"][0]
    assert best["lands"] != answer(request)["packs"][0]["lands"]
    expect(headline(demo)).to_have_text(best["words"])

    go(demo, "Kit")
    gel = demo.locator(".own-gel")
    gel.locator("summary").click()
    expect(gel).to_contain_text("Nominal")
    gel.get_by_role("button", name="Remove 1/2 CTB").click()
    expect(gel).to_have_count(0)
    demo.locator(".toast").get_by_role("button", name="Undo").click()
    expect(gel).to_have_count(1)


def test_what_is_not_there_is_told(demo: Page) -> None:
    for place in ("spectrum/gone", "pair/gone/too"):
        demo.evaluate(f"location.hash = '#{place}'")
        expect(demo.locator(".empty")).to_contain_text("spectrum")


def test_everybody_can_use_it(phone_browser: Browser, site: Site) -> None:
    context = phone_browser.new_context(viewport=PHONE, bypass_csp=True)
    context.add_init_script(AXE.read_text())
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    open_demo(page)
    page.evaluate("location.hash = '#files'")
    expect(page.locator("ek-files h1")).to_be_visible()
    assert violations_in_both(page) == []
    load(page, "led_panels.cgats", "faded_quarter_amber.txt", SPECTRA / "README.md")
    check(page, "ek-files")
    go(page, "Set")
    open_slip(page, "edge")
    page.get_by_role("link", name="Spectrum of edge").click()
    expect(page.locator(".bars")).to_be_visible()
    check(page, "ek-spectrum")
    go(page, "Set")
    page.get_by_role("link", name="See both").click()
    expect(page.locator(".figures")).to_be_visible()
    check(page, "ek-pair")
    context.close()


def check(page: Page, view: str) -> None:
    """Everything open: axe finds nothing, nothing scrolls sideways, targets are large."""
    for summary in page.locator(f"{view} summary").all():
        if summary.is_visible():
            summary.click()
    assert violations_in_both(page) == [], view
    for width in (320, 390):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate("document.documentElement.scrollWidth") <= width, view
        small = page.evaluate(
            """view => [...document.querySelectorAll(
                    `${view} :is(button, select, summary, input, textarea, a[href])`)]
                .filter(e => e.checkVisibility() && !e.closest("p, .warnings"))
                .map(e => e.type === "checkbox" ? e.closest("label") : e)
                .map(e => [e.outerHTML.slice(0, 90), e.getBoundingClientRect()])
                .filter(([, r]) => r.height < 44 || r.width < 44)
                .map(([html, r]) => `${html} ${r.width}×${r.height}`)""",
            view,
        )
        assert small == [], view
