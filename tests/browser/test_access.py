"""Everybody can use it, over every place of the app: axe, measured contrast, keyboard, spoken
words, room for large text, right to left, forced colours, reach and size of targets.

The limits are those of WCAG 2.2 (W3C Recommendation, 2023), AA; 44 px and 48 px are from its
2.5.5 (AAA) and from common practice for gloves.
"""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from conftest import PHONE, ROOT, Site, Watch, wait_for_kernel
from hands import headline, open_demo, type_xy
from places import VIEWS, addresses, open_all, visit, wear
from playwright.sync_api import Browser, BrowserContext, Page, expect

AXE = ROOT / "webapp" / "node_modules" / "axe-core" / "axe.min.js"
LOOKING = Path(__file__).parent / "looking.js"


def fill(page: Page, place: str) -> None:
    """Give a place something to show; the page stands there."""
    name, _, of = place.partition("/")
    if name in ("dial", "windows", "sun") and not of:
        return
    if name == "light":
        type_xy(page, "0.44758", "0.40745", name="practical")
        expect(page.get_by_role("img", name="Balance field")).to_be_visible()
    if name == "rolls":
        page.get_by_role("button", name="Add to the stock").click()
    if name == "balance":
        expect(page.locator(".plan").first).to_be_visible()
    if name in ("unmix", "flash"):
        page.get_by_label("x", exact=True).first.fill("0.3700")
        page.get_by_label("y", exact=True).first.fill("0.3720")
    if name == "flash":
        page.get_by_label("Exposure").fill("12")
        page.get_by_label("Reading of the ambient").select_option("batten 1")
    if name in ("mix", "unmix", "flash", "dial"):
        expect(headline(page)).to_be_visible()
    if name == "windows":
        page.get_by_label("Width").fill("2.4")
        page.get_by_label("Height").fill("1.8")
        expect(headline(page)).to_be_visible()
    if name == "sun":
        page.get_by_label("Latitude").fill("53.55")
        page.get_by_label("Longitude").fill("9.99")
        page.get_by_label("The window looks").fill("200")
        expect(page.get_by_role("img", name="Height of the sun")).to_be_visible()


def violations(page: Page) -> list[str]:
    """What axe-core finds against WCAG 2.2 A and AA and best practice."""
    found = page.evaluate(
        """async () => (await axe.run(document, {
            runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        })).violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html} ${n.failureSummary}`))""",
    )
    return list(found)


def violations_in_both(page: Page) -> list[str]:
    """What axe finds in the dark theme and in the one for daylight."""
    found = []
    for scheme in ("dark", "light"):
        wear(page, scheme)
        found += violations(page)
    return found


def at_last_nothing(page: Page, look: Callable[[], list[str]]) -> list[str]:
    """What is found, looked for again and again until it has gone, for some seconds at most."""
    give_up = time.monotonic() + 5
    while (found := look()) and time.monotonic() < give_up:
        page.wait_for_timeout(50)
    return found


#: Each behaviour that every place has: how the page is set for it, and what then finds faults.
#: What moves, and what a hand reaches, is looked at as a place opens; the rest all unfolded.
AS_IT_OPENS = {"targets": "[...looking.targets(), ...looking.reach(), ...looking.motion()]"}
CONTRAST = "[...looking.text().complaints, ...looking.parts().complaints]"
UNFOLDED = {
    "axe": "axe",
    "contrast dark": CONTRAST,
    "contrast light": CONTRAST,
    "contrast forced": CONTRAST,
    "room 390 px": "looking.room()",
    "room 320 px": "looking.room()",
    "room right to left": "looking.room()",
    "room text at 200 %": "looking.room()",
}


class Tour:
    """The app with the invented shoot open, and what is found at every address in it.

    Each address is gone to once, and the page set there for one behaviour after the other.
    """

    def __init__(self, page: Page) -> None:
        self.page = page
        self.fonts = page.context.new_cdp_session(page)
        self.found: dict[str, dict[str, list[str]]] = {}
        found = addresses(page, self.look_at)
        self.addresses = [address for of_view in found.values() for address in of_view]

    def look_at(self, address: str) -> None:
        fill(self.page, address)
        self.page.evaluate("scrollTo(0, 0)")
        visit(self.page, address)  # once what was filled in is answered
        for behaviour, look in AS_IT_OPENS.items():
            with self.set_for(behaviour):
                self.look(address, behaviour, look)
        self.note(address, "keyboard", walked_through(self.page))
        open_all(self.page)
        for behaviour, look in UNFOLDED.items():
            with self.set_for(behaviour):
                self.look(address, behaviour, look)

    def look(self, address: str, behaviour: str, look: str) -> None:
        """Whatever axe or functions of looking.js find."""

        def once() -> list[str]:
            return violations(self.page) if look == "axe" else self.page.evaluate(look)

        # An answer that comes meanwhile moves the page; what is wrong stays wrong.
        self.note(address, behaviour, at_last_nothing(self.page, once))

    def note(self, address: str, behaviour: str, told: list[str]) -> None:
        of_all = self.found.setdefault(behaviour, {})
        if told:
            of_all[address] = told

    @contextmanager
    def set_for(self, behaviour: str) -> Iterator[None]:
        """The page as this behaviour is looked at, and back as it was."""
        page = self.page
        match behaviour:
            case "targets":
                page.emulate_media(reduced_motion="reduce")
                yield
                page.emulate_media(reduced_motion="no-preference")
            case "axe":
                # All in sight: else a bar lies across whatever happens to be at its edge.
                high = int(page.evaluate("document.documentElement.scrollHeight"))
                page.set_viewport_size({"width": PHONE["width"], "height": high + 200})
                yield
                page.set_viewport_size(PHONE)  # type: ignore[arg-type]
            case "contrast light":
                wear(page, "light")
                yield
                wear(page, "dark")
            case "contrast forced":
                page.emulate_media(forced_colors="active")
                yield
                page.emulate_media(forced_colors="none")
            case "room 320 px":
                page.set_viewport_size({"width": 320, "height": 844})
                yield
                page.set_viewport_size(PHONE)  # type: ignore[arg-type]
            case "room right to left":
                page.evaluate("document.documentElement.dir = 'rtl'")
                yield
                page.evaluate("document.documentElement.dir = ''")
            case "room text at 200 %":
                self.letters(32, 26)
                size = page.evaluate("getComputedStyle(document.documentElement).fontSize")
                assert size == "32px"
                yield
                self.letters(16, 13)
            case _:
                yield

    def letters(self, standard: int, fixed: int) -> None:
        sizes = {"standard": standard, "fixed": fixed}
        self.fonts.send("Page.setFontSizes", {"fontSizes": sizes})


#: What Tab should reach; of a group of radio buttons it reaches one.
TOUCHABLE = "a[href], button, input:not([type=radio]), select, textarea, summary"


def walked_through(page: Page) -> list[str]:
    """Tab reaches everything, shows where it is, hides it under no bar, and gets out again."""

    def focus_once_more() -> list[str]:
        """Come here again: an answer that came just now may have moved the page."""
        page.keyboard.press("Shift+Tab")
        page.keyboard.press("Tab")
        return list(page.evaluate("looking.focus()"))

    there = page.evaluate(
        """touchable => {
            document.querySelector(".skip").focus();
            window.walked = new Set();
            return [...document.querySelectorAll(touchable)]
                .filter(e => e.checkVisibility() && !e.disabled).length;
        }""",
        TOUCHABLE,
    )
    told: list[str] = []
    for _ in range(3 * there):
        page.keyboard.press("Tab")
        wrong, back = page.evaluate(
            """() => {
                const wrong = looking.focus().length > 0;
                const back = document.activeElement.matches(".skip");
                if (!back) walked.add(document.activeElement);
                return [wrong, back];
            }"""
        )
        if wrong:
            told += at_last_nothing(page, focus_once_more)
        if back:
            break
    walked = page.evaluate(
        "touchable => [...walked].filter(e => e.matches(touchable)).length", TOUCHABLE
    )
    if walked < there - 1:  # the skip link, where the walk began
        told.append(f"Tab reaches {walked} of {there - 1}")
    return told


@pytest.fixture(scope="module")
def tour(phone_browser: Browser, dist: Path) -> Iterator[Tour]:
    """One page for the module; the policy is lifted so that axe and looking.js can be put in."""
    seen = Watch()
    context = phone_browser.new_context(
        viewport=PHONE, has_touch=True, bypass_csp=True, color_scheme="dark"
    )
    seen.follow(context)
    context.add_init_script(path=AXE)
    context.add_init_script(path=LOOKING)
    site = Site(dist)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    open_demo(page)
    yield Tour(page)
    context.close()
    site.stop()
    assert seen.faults == []


def test_axe_finds_nothing_in_the_shoot(tour: Tour) -> None:
    assert tour.found["axe"] == {}


def test_axe_finds_nothing_where_nothing_is_kept_or_what_is_typed_is_wrong(
    phone_browser: Browser, site: Site
) -> None:
    context = phone_browser.new_context(viewport=PHONE, bypass_csp=True, color_scheme="light")
    context.add_init_script(path=AXE)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    found = {}
    for name in VIEWS:
        visit(page, name)
        found[name] = violations(page)
    visit(page, "light")
    type_xy(page, "0.4x", "0.40")
    expect(page.locator(".problem")).to_be_visible()
    found["a problem"] = violations(page)
    assert {name: told for name, told in found.items() if told} == {}
    context.close()


@pytest.mark.parametrize("look", ["dark", "light", "forced"])
def test_contrast_is_enough_as_rendered(tour: Tour, look: str) -> None:
    """Text 4.5:1, large text and all that carries meaning 3:1 (WCAG 2.2, 1.4.3 and 1.4.11)."""
    visit(tour.page, "light")
    assert tour.page.evaluate("[looking.text().count > 9, looking.parts().count > 9]") == [True] * 2
    assert tour.found[f"contrast {look}"] == {}


def test_forced_colours_still_show_what_is_chosen(tour: Tour) -> None:
    page = tour.page
    page.emulate_media(forced_colors="active")
    visit(page, "kit")
    style = "e => { const s = getComputedStyle(e); return s.backgroundColor + s.borderTopColor; }"
    chosen = page.locator(".segments input:checked + span").first.evaluate(style)
    other = page.locator(".segments input:not(:checked) + span").first.evaluate(style)
    assert chosen != other
    here = page.locator(".thumb a[aria-current=page]").evaluate(style)
    there = page.locator(".thumb a:not([aria-current=page])").first.evaluate(style)
    assert here != there
    page.emulate_media(forced_colors="none")


@pytest.mark.parametrize("room", ["390 px", "320 px", "right to left", "text at 200 %"])
def test_nothing_is_cut_off_or_scrolls_sideways(tour: Tour, room: str) -> None:
    assert tour.found[f"room {room}"] == {}


def test_right_to_left_turns_no_number_and_no_name_around(tour: Tour) -> None:
    page = tour.page
    page.evaluate("document.documentElement.dir = 'rtl'")
    visit(page, "light")
    fill(page, "light")
    edges = """([first, last]) => {
        const nodes = document.createTreeWalker(document.querySelector("section.answer"), 4);
        for (let node = nodes.nextNode(); node; node = nodes.nextNode()) {
            const at = [node.data.indexOf(first), node.data.lastIndexOf(last)];
            if (at.includes(-1)) continue;
            return at.map(i => {
                const range = new Range();
                range.setStart(node, i);
                range.setEnd(node, i + 1);
                return range.getBoundingClientRect().left;
            });
        }
    }"""
    for pair in ["3/", "4K", "1s"]:  # 3/4 CTB, 4300 K, 1.7 stops
        first, last = page.evaluate(edges, list(pair))
        assert first < last, pair
    page.evaluate("document.documentElement.dir = ''")


def test_styles_know_start_and_end_not_left_and_right() -> None:
    styles = (ROOT / "webapp" / "src" / "styles.css").read_text()
    sides = r"(?:margin|padding|border)-(?:left|right)|(?:text-align|float|clear): *(?:left|right)"
    assert re.findall(rf"{sides}|^\s*(?:left|right):", styles, re.MULTILINE) == []


def test_targets_suit_gloves_and_one_hand_and_nothing_moves(tour: Tour) -> None:
    """44 px, and 48 px where the work is done; what a bar offers lies in the lower half."""
    assert tour.found["targets"] == {}


def test_every_place_is_walked_through_by_keyboard(tour: Tour) -> None:
    """Tab reaches everything, shows where it is, hides it under no bar, and gets out again."""
    assert tour.found["keyboard"] == {}


def test_answers_and_what_is_kept_are_announced_once(app: Page, context: BrowserContext) -> None:
    # The app's clock stands still while somebody types, however slow the machine is.
    app.clock.install(time=0)
    app.clock.pause_at(1000)
    app.evaluate(
        """() => {
            window.heard = [];
            const live = "[role=status], [role=alert], [aria-live]";
            const last = new Map();
            new MutationObserver(() => {
                for (const region of document.querySelectorAll(live)) {
                    const words = region.textContent.trim().replace(/\\s+/g, " ");
                    // Said once, whenever every file has been kept.
                    if (words === "Ready for flight mode") continue;
                    if (words && last.get(region) !== words) heard.push(words);
                    last.set(region, words);
                }
            }).observe(document.body, {childList: true, characterData: true, subtree: true});
        }"""
    )
    app.get_by_label("x", exact=True).press_sequentially("0.44758", delay=20)
    app.get_by_label("y", exact=True).press_sequentially("0.40745", delay=20)
    app.get_by_label("Name", exact=True).press_sequentially("key", delay=20)
    app.clock.run_for(100)
    expect(headline(app)).to_contain_text("CTB")
    app.clock.run_for(1200)  # whatever waits a second to be said is said now
    expect(app.locator(".spoken[role=status]").first).to_contain_text("CTB")
    assert [words for words in app.evaluate("heard") if "Lands" in words] == app.evaluate("heard")
    assert len(app.evaluate("heard")) == 1
    app.clock.resume()
    app.get_by_role("button", name="Keep", exact=True).click()
    expect(app.locator(".spoken[role=status]").first).to_contain_text("key kept")
    app.clock.run_for(1200)  # the app's clock: whatever waits a second to be said is said now
    assert len(app.evaluate("heard")) == 2


def test_the_main_job_by_keyboard_alone(app: Page) -> None:
    def tab_to(role: str, name: str) -> None:
        target = app.get_by_role(role, name=name, exact=True)  # type: ignore[arg-type]
        for _ in range(40):
            if target.evaluate("e => e === document.activeElement"):
                return
            app.keyboard.press("Tab")
        raise AssertionError(f"Tab never reaches {name}")

    tab_to("textbox", "x")
    app.keyboard.type("0.44758")
    tab_to("textbox", "y")
    app.keyboard.type("0.40745")
    tab_to("textbox", "Name")
    app.keyboard.type("practical")
    expect(headline(app)).to_contain_text("CTB")
    app.keyboard.press("Enter")  # Enter in a field keeps
    expect(app.locator(".kept")).to_be_visible()
    tab_to("link", "Set")
    app.keyboard.press("Enter")
    expect(app.locator("ek-set h1")).to_be_focused()
    expect(app.locator(".slip")).to_contain_text("practical")


def test_one_tap_changes_the_theme_and_it_stays(app: Page) -> None:
    before = app.get_attribute("html", "data-theme")
    app.get_by_role("button", name=re.compile("(Dark|Bright) screen")).click()
    expect(app.locator("html")).not_to_have_attribute("data-theme", before or "")
    after = app.get_attribute("html", "data-theme")
    app.reload()
    expect(app.locator("html")).to_have_attribute("data-theme", after or "")
