"""Long work in one tab: what is done there, and what the browser then says of its memory."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import astuple, dataclass

from hands import go
from playwright.sync_api import CDPSession, Page, expect

#: Types into the fields of Light as a hurried person would, without the wait between keystrokes:
#: one character each, with a turn for the screen after it and a pause in which the kernel is asked
#: after each reading. Every reading is new.
TYPE = """async ({first, strokes}) => {
    const texts = (n) => ({
        "light-x": `0.38${String(n % 1000).padStart(3, "0")}`,
        "light-y": "0.3770",
        "light-illuminance": String(100 + (n % 900)),
        "light-name": `light ${n}`,
    });
    const turn = (ms) => new Promise((done) => setTimeout(done, ms));
    let typed = 0;
    for (let n = first; typed < strokes; n += 1) {
        for (const [id, text] of Object.entries(texts(n))) {
            const field = document.getElementById(id);
            for (let end = 0; end <= text.length; end += 1) {
                field.value = text.slice(0, end);
                field.dispatchEvent(new Event("input", {bubbles: true}));
                typed += 1;
                await turn(0);
            }
        }
        await turn(70);
        while (document.querySelector("main [aria-busy=true]")) await turn(5);
    }
}"""


@dataclass(frozen=True)
class Memory:
    """What is alive in a tab after its rubbish was taken out."""

    heap_mb: float
    nodes: int
    listeners: int


class Gauge:
    """Reads the memory of a page's own thread."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.session: CDPSession = page.context.new_cdp_session(page)
        self.session.send("Performance.enable")

    def read(self) -> Memory:
        """The least of several readings, until five more find nothing set free."""
        least, without_less = self.read_once(), 0
        while without_less < 5:
            now = self.read_once()
            both = [*zip(astuple(least), astuple(now), strict=True)]
            without_less = 0 if any(new < old for old, new in both) else without_less + 1
            least = Memory(*(min(pair) for pair in both))
        return least

    def read_once(self) -> Memory:
        self.page.wait_for_timeout(100)
        self.session.send("HeapProfiler.collectGarbage")
        found = self.session.send("Performance.getMetrics")["metrics"]
        metrics = {each["name"]: each["value"] for each in found}
        return Memory(
            metrics["JSHeapUsedSize"] / 1e6,
            int(metrics["Nodes"]),
            int(metrics["JSEventListeners"]),
        )


def type_for_long(page: Page, first: int, strokes: int) -> None:
    """Type so many characters on Light, each reading another."""
    page.evaluate(TYPE, {"first": first, "strokes": strokes})


def elements(page: Page) -> int:
    return int(page.evaluate("document.querySelectorAll('*').length"))


def ids_of_the_long_book(page: Page) -> dict[str, str]:
    """The first of each kind of thing in the book, by kind."""
    found: dict[str, str] = page.evaluate(
        """() => new Promise((resolve, reject) => {
            const opening = indexedDB.open("evenkelvin");
            opening.onerror = reject;
            opening.onsuccess = () => {
                const found = {};
                const store = opening.result.transaction("entries").objectStore("entries");
                const walk = store.openCursor();
                walk.onsuccess = () => {
                    const {thing, of} = walk.result.value;
                    found[thing] ??= of;
                    if (Object.keys(found).length < 5) return walk.result.continue();
                    opening.result.close();
                    resolve(found);
                };
            };
        })"""
    )
    return found


def tour(
    page: Page, ids: dict[str, str], seen_to: Callable[[str], None] = lambda step: None
) -> dict[str, int]:
    """Search, browse and hand out a long book; how many elements each place put on the page.

    One location of it is reported on and shared. ``seen_to`` is called after each step.
    """
    seen: dict[str, int] = {}

    def look(address: str, there: str) -> None:
        page.evaluate("address => { location.hash = address; }", address)
        expect(page.locator(f"main {there}").first).to_be_visible(timeout=120_000)
        name = address.partition("/")[0]
        seen[name] = elements(page)
        seen_to(f"the book's place {name}")

    look("book", "a.setup")
    for text in ("l", "li", "light 7", "light 7 set"):
        page.get_by_label("Search the readings").fill(text)
        expect(page.locator(".found > li").first).to_be_visible()
    seen_to("a search typed")
    page.get_by_role("button", name="more").last.click()
    expect(page.locator(".found > li")).to_have_count(40)
    page.locator("main summary").filter(has_text="By place").click()
    page.locator("#find-verdict").select_option("near")
    expect(page.locator(".found .verdict").first).to_be_visible()
    page.get_by_role("button", name="Show the whole book").click()
    seen["search"] = elements(page)
    seen_to("a search by verdict")
    look(f"setup/{ids['setup']}", ".lights > li")
    look(f"reading/{ids['reading']}", ".facts")
    look(f"since/{ids['light']}", "table")
    look(f"report/{ids['location']}", ".sheet table")
    page.get_by_role("button", name="more setup").click()
    look(f"share/{ids['location']}", "[data-testid=read-back]")
    look("order/shoot", "h1")
    go(page, "Light")
    return seen
