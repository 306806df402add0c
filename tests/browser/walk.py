"""A walk over the app by chance: taps, typed nonsense, sliders, every view.

As a script:  python tests/browser/walk.py [minutes] [seed]
A bounded part of it runs with the other tests. The same seed takes the same decisions; what it
meets may differ by when the kernel answers.

After every step: no error of page or console, no value that shows as the program's own
('[object', 'undefined', 'NaN'), nothing wider than the screen.
"""

from __future__ import annotations

import random
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Browser, Error, Page

#: What nobody means to type, and everybody does once; none of it is what must not be shown.
NONSENSE = [
    "", " ", "0", "-0", "-1", "0.38", "0,377", "3200", "5600 K", "1,500", "1e308", "1e-320",
    "Infinity", "½", "1/2 CTO", "key", "0x1F", "٣٢٠٠", "9" * 60, "lamp" * 40, "a\u202eb", "\u0000",
    "<b>2</b>", "__proto__", "constructor", "💡", "{}", "[]", "null", "4' 6\"", "42.88 S", "NE",
]  # fmt: skip

#: One step in the page: it is told what to do by numbers from 0 to 1, and says what it did.
STEP = """([kind, which, what, text]) => {
    const pick = (list, by) => list[Math.floor(by * list.length)];
    const seen = (selector) => [...document.querySelectorAll(selector)].filter(
        (each) => each.checkVisibility() && !each.disabled);
    const told = (each) => `${each.tagName.toLowerCase()} `
        + `${each.id || each.getAttribute("aria-label") || each.innerText || each.name}`
        .replace(/\\s+/g, " ").slice(0, 60);
    const type = (each, value) => {
        each.focus();
        each.value = value;
        each.dispatchEvent(new InputEvent("input", {bubbles: true}));
        each.dispatchEvent(new Event("change", {bubbles: true}));
    };
    if (kind === "type") {
        const fields = "main input[type=text], main textarea, main input:not([type])";
        const each = pick(seen(fields), which);
        if (!each) return "";
        type(each, text);
        return `type ${JSON.stringify(text)} into ${told(each)}`;
    }
    if (kind === "slide") {
        const each = pick(seen("main input[type=range]"), which);
        if (!each) return "";
        const [low, high] = [Number(each.min || 0), Number(each.max || 100)];
        type(each, String(low + what * (high - low)));
        return `slide ${told(each)} to ${each.value}`;
    }
    if (kind === "choose") {
        const each = pick(seen("main select"), which);
        const option = each && pick([...each.options], what);
        if (!option) return "";
        each.value = option.value;
        each.dispatchEvent(new Event("change", {bubbles: true}));
        return `choose ${option.text.slice(0, 40)} in ${told(each)}`;
    }
    if (kind === "submit") {
        const each = pick(seen("main form"), which);
        if (!each) return "";
        each.requestSubmit();
        return "submit";
    }
    // A file button opens what only the system can close; a link elsewhere leaves the app.
    const all = "button, summary, a[href^='#'], input[type=radio], input[type=checkbox]";
    const each = pick(seen(all), which);
    if (!each) return "";
    const words = `tap ${told(each)}`;
    each.click();
    return words;
}"""

#: What must not be there after a step.
LOOK = """() => {
    const wrong = [];
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth + 1) {
        const widest = [...document.querySelectorAll("main *")].filter((each) =>
            each.getBoundingClientRect().right > root.clientWidth + 1)
            .map((each) => each.outerHTML.slice(0, 120));
        wrong.push(`${root.scrollWidth} px wide: ${widest[0]}`);
    }
    const words = document.body.innerText;
    for (const word of [/\\[object/, /\\bundefined\\b/, /\\bNaN\\b/]) {
        const at = words.search(word);
        if (at >= 0) wrong.push(`it shows ${words.slice(Math.max(0, at - 60), at + 40)}`);
    }
    if (!document.querySelector("main h1")) wrong.push("no heading: the view is not there");
    return wrong;
}"""


@dataclass
class Walk:
    """One walk: what was done so far, the latest last, and what went wrong."""

    page: Page
    views: list[str]
    seed: int
    faults: list[str]
    done: list[str] = field(default_factory=list)
    steps: int = 0

    def start(self) -> None:
        self.chance = random.Random(self.seed)
        self.ids: list[str] = []

    def address(self) -> str:
        """A view, mostly with something to show: an id that the app itself links to."""
        links = self.page.locator("main a[href^='#']").evaluate_all(
            "links => links.map(link => link.getAttribute('href').slice(1))"
        )
        self.ids = [*self.ids, *(link for link in links if "/" in link and len(link) < 200)][-60:]
        if self.ids and self.chance.random() < 0.5:
            return self.chance.choice(self.ids)
        name = self.chance.choice(self.views)
        odd = ["", "", "", "/", "/nothing", "/setup", "/draft", "/%E0%A4%A", "/a/b/c"]
        return name + self.chance.choice(odd)

    def step(self) -> list[str]:
        """Do one thing, and say what is wrong then."""
        kind = self.chance.choices(
            ["go", "tap", "type", "slide", "choose", "submit", "reload"],
            [10, 40, 28, 8, 10, 3, 1],
        )[0]
        self.steps += 1
        if kind == "go":
            address = self.address()
            self.page.evaluate("address => { location.hash = address; }", address)
            said = f"go to #{address}"
        elif kind == "reload":
            self.page.reload()
            self.page.locator("main h1").first.wait_for()
            said = "reload"
        else:
            numbers = [self.chance.random(), self.chance.random()]
            said = self.page.evaluate(STEP, [kind, *numbers, self.chance.choice(NONSENSE)])
        if said:
            self.done.append(f"{self.page.evaluate('location.hash')[:60]}: {said}")
        self.page.wait_for_timeout(self.chance.choice([0, 0, 20, 120]))
        return self.look()

    def look(self) -> list[str]:
        wrong: list[str] = self.page.evaluate(LOOK)
        if wrong and wrong[-1].startswith("no heading"):
            # A view that is just being drawn has none yet.
            self.page.wait_for_timeout(1000)
            wrong = self.page.evaluate(LOOK)
        return wrong + self.faults

    def tell(self, wrong: list[str]) -> str:
        """What went wrong, and the way there."""
        way = "\n  ".join(self.done[-25:])
        return f"seed {self.seed}, step {self.steps}: {wrong}\n  {way}"

    def for_seconds(self, seconds: float) -> None:
        """Walk on. Raises AssertionError at the first thing that is wrong."""
        self.start()
        until = time.monotonic() + seconds
        while time.monotonic() < until:
            try:
                wrong = self.step()
            except Error as error:
                raise AssertionError(self.tell([str(error)])) from error
            assert not wrong, self.tell(wrong)


def fill(page: Page) -> None:
    """Put a book with every kind of thing into the app, past its screens."""
    from complete_book import SETUP, book

    page.evaluate(
        """([entries, here]) => new Promise((resolve, reject) => {
            const opening = indexedDB.open("evenkelvin");
            opening.onerror = reject;
            opening.onsuccess = () => {
                const tx = opening.result.transaction(["entries", "settings"], "readwrite");
                for (const entry of entries) tx.objectStore("entries").put(entry);
                tx.objectStore("settings").put(here, "here");
                tx.oncomplete = () => { opening.result.close(); resolve(); };
                tx.onerror = reject;
            };
        })""",
        [book()["entries"], SETUP],
    )
    page.reload()
    page.locator("html[data-kernel=ready]").wait_for(state="attached", timeout=120_000)


def _minutes(browser: Browser, dist: Path, minutes: float, seed: int) -> int:
    """Walk after walk, each on a book of its own; say every fault, and how many there were."""
    from conftest import PHONE, Site, Watch
    from places import VIEWS

    found = 0
    until = time.monotonic() + 60 * minutes
    while time.monotonic() < until:
        watch, site = Watch(), Site(dist)
        context = browser.new_context(viewport=PHONE, has_touch=True)
        watch.follow(context)
        page = context.new_page()
        page.goto(site.url)
        page.locator("h1").first.wait_for()
        fill(page)
        walk = Walk(page, VIEWS, seed, watch.faults)
        try:
            walk.for_seconds(min(60.0, until - time.monotonic()))
        except AssertionError as fault:
            found += 1
            print(fault, flush=True)
        print(f"seed {seed}: {walk.steps} steps", flush=True)
        context.close()
        site.stop()
        seed += 1
    return found


if __name__ == "__main__":
    from playwright.sync_api import sync_playwright

    here = Path(__file__).parent
    sys.path[:0] = [str(each) for each in (here, here.parent, here.parents[1] / "webapp/tools")]
    from conftest import LAUNCH
    from machine import find_chromium
    from steps import DIST

    minutes = float(sys.argv[1]) if len(sys.argv) > 1 else 5.0
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=find_chromium(), **LAUNCH)
        bad = _minutes(chromium, DIST, minutes, first)
        chromium.close()
    print(f"{bad} faults")
    sys.exit(bool(bad))
