"""A camera of one's own: its sensitivities from a file, by name, as the judge, and beside another.

The curves are bells, made up. What is shown is held against what the kernel says.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from conftest import offline_page
from hands import go, headline, open_demo, open_slip
from playwright.sync_api import Browser, Page, expect
from test_access import AXE, LOOKING, at_last_nothing, violations

from evenkelvin.desk import answer

NM = list(range(400, 701, 10))


def bell(centre: float, width: float) -> list[float]:
    return [round(math.exp(-(((nm - centre) / width) ** 2)), 5) for nm in NM]


def camera(red: float) -> dict[str, list[float]]:
    return {"red": bell(red, 45), "green": bell(540, 50), "blue": bell(460, 40)}


def write(folder: Path, name: str, red: float, head: str = "nm,R,G,B") -> Path:
    file = folder / f"{name}.csv"
    rows = zip(NM, *camera(red).values(), strict=True)
    file.write_text("\n".join([head, *(",".join(map(str, row)) for row in rows)]) + "\n")
    return file


def as_asked(name: str, red: float) -> dict[str, Any]:
    return {"name": name, "wavelengths_nm": NM, **camera(red)}


def load(page: Page, *files: Path) -> None:
    """Load cameras in Kit and keep them."""
    page.evaluate("location.hash = '#cameras'")
    with page.expect_file_chooser() as chooser:
        page.get_by_label("Load a camera", exact=True).click()
    chooser.value.set_files([str(file) for file in files])
    expect(page.locator(".in-file[aria-busy=false]")).to_have_count(len(files))
    label = "Keep it in the kit" if len(files) == 1 else f"Keep all {len(files)} in the kit"
    page.get_by_role("button", name=label).click()
    expect(page.locator("ek-cameras h1")).to_be_visible()


def spectra(page: Page) -> list[dict[str, Any]]:
    """The lights of the demo that have a spectrum, as the app asks about them."""
    asked: list[dict[str, Any]] = page.evaluate(
        "document.querySelector('ek-cameras').lights.map(light => ({...light}))"
    )
    assert len(asked) > 1
    return asked


def test_two_cameras_are_kept_by_name_and_told_side_by_side(demo: Page, tmp_path: Path) -> None:
    load(demo, write(tmp_path, "camera A", 600), write(tmp_path, "camera B", 640))
    lights = spectra(demo)
    expect(headline(demo)).to_be_visible()
    white = demo.evaluate("document.querySelector('ek-cameras').apart.answer.white")
    white = {"cct_K": white["cct_K"], "duv": white["duv"]}
    one, other = as_asked("camera A", 600), as_asked("camera B", 640)
    demo.get_by_label("One camera").select_option("camera A")
    demo.get_by_label("The other").select_option("camera B")
    told = answer(
        {"ask": "cameras", "lights": lights, "white": white, "first": one, "second": other}
    )
    expect(headline(demo)).to_have_text(told["edge"]["words"])
    assert "steps" in told["edge"]["words"]
    for light in told["lights"]:
        expect(demo.locator("ek-cameras .readings")).to_contain_text(light["apart"]["words"])
    # The picture of the edge is what each camera shows of the pair.
    for place, eyes in enumerate((one, other)):
        looks = answer(
            {"ask": "seen", "lights": lights, "white": white, "judge": "camera", "camera": eyes}
        )["lights"]
        drawn = demo.locator("ek-cameras .edge-by").nth(place).locator("rect")
        for at, k in enumerate(told["edge"]["pair"]):
            code = looks[k]["as_read"]["grey"]["srgb"]
            expect(drawn.nth(at)).to_have_attribute("fill", f"rgb({', '.join(map(str, code))})")
    # The words stand on the first screen.
    box = headline(demo).bounding_box()
    assert box
    assert box["y"] + box["height"] < 844 - 64


def test_another_of_the_same_name_stands_beside_it(demo: Page, tmp_path: Path) -> None:
    load(demo, write(tmp_path, "twin", 600))
    load(demo, write(tmp_path, "twin", 620))
    names = demo.locator("ek-cameras h2")
    expect(names.filter(has_text="twin")).to_have_text(["twin", "twin 2"])
    demo.locator("summary", has_text="twin 2").click()
    field = demo.locator("ek-cameras details[open]").get_by_label("Name", exact=True)
    field.fill("twin")
    expect(demo.get_by_text("Another camera has this name.")).to_be_visible()
    field.fill("B body")
    field.press("Tab")
    expect(names.filter(has_text="B body")).to_have_count(1)
    expect(names.filter(has_text="twin 2")).to_have_count(0)
    demo.get_by_role("button", name="Remove B body").click()
    expect(names.filter(has_text="B body")).to_have_count(0)
    demo.get_by_role("button", name="Undo").click()
    expect(names.filter(has_text="B body")).to_have_count(1)


def test_the_set_the_pair_and_the_balance_go_by_it(demo: Page, tmp_path: Path) -> None:
    load(demo, write(tmp_path, "warm body", 650))
    demo.get_by_label("Camera that judges").select_option("warm body")
    go(demo, "Set")
    demo.get_by_role("radio", name="The camera").check()
    asked = demo.evaluate_handle("document.querySelector('ek-set')")
    demo.wait_for_function("set => set.agree.answer?.camera === 'warm body'", arg=asked)
    demo.wait_for_function("set => set.seen.answer?.camera === 'warm body'", arg=asked)
    slip = open_slip(demo, "batten 2")
    expect(demo.get_by_text("The camera is warm body")).to_be_visible()
    steps = demo.evaluate(
        "set => set.agree.answer.lights.find(({name}) => name === 'batten 2').camera.steps", asked
    )
    assert steps > 10  # told in whole steps then
    expect(slip.locator(".inside")).to_contain_text(f"To the camera {steps:.0f} colour steps")
    demo.evaluate("location.hash = '#balance'")
    expect(demo.locator("ek-balance .plan").first).to_be_visible()
    expect(demo.locator("ek-balance .hanging")).to_contain_text("To the camera")
    expect(demo.locator("ek-balance").get_by_text("The camera is warm body")).to_be_visible()
    demo.evaluate(
        """() => {
            const [one, other] = document.querySelector("ek-balance").lights
                .filter(({reading}) => reading.data.spectrum).map(({light}) => light.id);
            location.hash = `pair/${one}/${other}`;
        }"""
    )
    expect(demo.locator("ek-pair")).to_contain_text("to warm body.")
    # Taken out of the kit, the standard one judges again.
    demo.evaluate("location.hash = '#cameras'")
    demo.locator("summary", has_text="warm body").last.click()
    demo.get_by_role("button", name="Remove warm body").click()
    go(demo, "Set")
    expect(demo.get_by_text("The camera is the standard one")).to_be_visible()


def test_a_file_that_does_not_say_is_asked_about_and_a_bad_one_is_told(
    demo: Page, tmp_path: Path
) -> None:
    unclear = write(tmp_path, "three", 600, head="nm,red,green,blue")
    go(demo, "Light")
    demo.evaluate("location.hash = '#files'")
    with demo.expect_file_chooser() as chooser:
        demo.get_by_label("Load files", exact=True).click()
    chooser.value.set_files([str(unclear)])
    question = demo.get_by_label("Three columns are headed")
    expect(question).to_be_visible()
    question.select_option("What a camera sees")
    expect(demo.locator(".found")).to_contain_text("What a camera sees in red, green and blue")
    expect(demo.locator(".found .sketch polyline")).to_have_count(3)
    demo.get_by_role("button", name="Set aside").first.click()
    two = tmp_path / "two.csv"
    two.write_text("nm,a,b\n" + "".join(f"{nm},{nm / 1000},{1 - nm / 1000}\n" for nm in NM))
    demo.evaluate("location.hash = '#cameras'")
    with demo.expect_file_chooser() as chooser:
        demo.get_by_label("Load a camera", exact=True).click()
    chooser.value.set_files([str(two)])
    expect(demo.locator(".in-file .problem").first).to_contain_text("three columns")


@pytest.fixture(scope="module")
def looked_at(
    phone_browser: Browser, dist: Path, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Page]:
    """The page of cameras with one in it; the policy is lifted to put axe and looking.js in."""
    with offline_page(phone_browser, dist, bypass_csp=True) as page:
        page.evaluate(AXE.read_text())
        page.evaluate(LOOKING.read_text())
        open_demo(page)
        folder = tmp_path_factory.mktemp("camera")
        load(page, write(folder, "camera A with a long name of its own", 600))
        yield page


@pytest.mark.parametrize("width", [390, 820, 1280])
@pytest.mark.parametrize("theme", ["dark", "light"])
def test_everybody_can_use_the_page(looked_at: Page, width: int, theme: str) -> None:
    page = looked_at
    page.emulate_media(color_scheme=theme)  # type: ignore[arg-type]
    page.set_viewport_size({"width": width, "height": 844})
    expect(headline(page)).to_be_visible()
    for look in (
        lambda: violations(page),
        lambda: page.evaluate("looking.text().complaints"),
        lambda: page.evaluate("looking.room()"),
        lambda: page.evaluate("looking.targets()"),
    ):
        assert at_last_nothing(page, look) == []
