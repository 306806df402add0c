"""What a person does with the app, for the tests."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from native_kernel import answer_natively
from playwright.sync_api import Locator, Page, expect

#: Six lights of our own scenario with x, y and lux, as a hall is read from the key outward.
HALL = [
    ("key", "0.3810", "0.3770", "611"),
    ("fill", "0.3850", "0.3800", "305"),
    ("batten 1", "0.3760", "0.3860", "118"),
    ("batten 2", "0.3740", "0.3870", "110"),
    ("practical", "0.4590", "0.4100", "23"),
    ("window", "0.3050", "0.3230", "83"),
]


def wait_for_kernel(page: Page) -> None:
    """Wait until the kernel answers: the app says so on its root element."""
    page.locator("html[data-kernel=ready]").wait_for(state="attached", timeout=60_000)


def go(page: Page, place: str) -> None:
    """Go to one of the four places by the thumb bar."""
    page.get_by_role("navigation").get_by_role("link", name=place).click()
    expect(page.locator("main h1")).to_be_visible()


def type_xy(page: Page, x: str, y: str, name: str = "") -> None:
    page.get_by_label("x", exact=True).fill(x)
    page.get_by_label("y", exact=True).fill(y)
    if name:
        page.get_by_label("Name", exact=True).fill(name)


def headline(page: Page) -> Locator:
    return page.get_by_test_id("headline")


def keep(page: Page) -> None:
    page.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator(".kept")).to_be_visible()


def keep_light(page: Page, name: str, x: str, y: str) -> None:
    """Read a light on Light, keep it, and have the form ready for the next."""
    type_xy(page, x, y, name)
    keep(page)


def until_on_disk(page: Page, words: str) -> None:
    """Wait until what was typed last, and is not kept yet, stands in the database."""
    page.evaluate(
        """async words => {
            const done = request => new Promise((resolve, reject) => {
                request.onsuccess = () => resolve(request.result);
                request.onerror = () => reject(request.error);
            });
            const all = await indexedDB.databases();
            const opened = await Promise.all(all.map(({name}) => done(indexedDB.open(name))));
            const drafts = database => done(
                database.transaction("drafts").objectStore("drafts").getAll());
            const end = Date.now() + 10_000;
            while (!JSON.stringify(await Promise.all(opened.map(drafts))).includes(words)) {
                if (Date.now() > end) throw new Error(`${words} was not written`);
                await new Promise(resolve => setTimeout(resolve, 10));
            }
            for (const database of opened) database.close();
        }""",
        words,
    )


def open_demo(page: Page) -> None:
    page.evaluate("location.hash = '#demo'")
    expect(page.get_by_text("Demo: The Night Ferry")).to_be_visible()
    expect(headline(page)).to_be_visible()


def open_slip(page: Page, name: str) -> Locator:
    """Unfold the slip of a light on Set."""
    slip = page.locator("ek-set .slip", has=page.get_by_role("heading", name=name, exact=True))
    if slip.locator("> details").get_attribute("open") is None:
        slip.locator("> details > summary").click()
    return slip


def open_setup(page: Page, name: str) -> None:
    """Go to a setup of the book."""
    go(page, "Book")
    page.get_by_role("link", name=name).click()
    expect(page.locator("ek-setup h1")).to_be_visible()


def work_here(page: Page, name: str) -> None:
    """In a setup of the book, make it the one that is worked in, which leads to Light."""
    page.get_by_role("button", name=f"Work here: {name}").click()
    expect(page.get_by_label("x", exact=True)).to_be_visible()


def chip(where_: Page | Locator) -> Locator:
    """What a light is meant to be, to be tapped for the choices."""
    return where_.locator("ek-meant summary")


def choose(where_: Page | Locator, way: str) -> Locator:
    """Open the choices if need be, take one; returns the row."""
    row = where_.locator("ek-meant")
    if not row.locator(".panel").is_visible():
        chip(where_).click()
    row.get_by_role("button", name=way, exact=True).click()
    return row


def mean_white(page: Page, name: str) -> None:
    """On Set, mean a light to be the camera's white."""
    slip = open_slip(page, name)
    choose(slip, "White")
    # Kept half a second after the last tap, then asked about.
    expect(slip.locator("> details > summary")).not_to_contain_text("meant", timeout=30_000)


def share_by_clipboard(page: Page) -> None:
    """Let what is shared be copied: the share sheet of a phone can be pressed by no test."""
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    page.evaluate("delete Navigator.prototype.share")


def copied_link(page: Page) -> str:
    """What follows the # of the link, where something is shared."""
    page.get_by_role("button", name="Send the link").click()
    expect(page.get_by_text("The link is copied")).to_be_visible()
    return str(page.evaluate("navigator.clipboard.readText()")).partition("#")[2]


@contextmanager
def visitor(page: Page, link: str) -> Iterator[Page]:
    """What follows the # of a link, opened on a phone that has never had the app."""
    assert page.context.browser is not None
    phone = page.context.browser.new_context(viewport={"width": 390, "height": 844})
    answer_natively(phone)
    opened = phone.new_page()
    opened.goto(f"{page.url.partition('#')[0]}#{link}")
    wait_for_kernel(opened)
    yield opened
    phone.close()
