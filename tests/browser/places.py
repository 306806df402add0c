"""Every place of the app, read from its table of views and from its own links."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Literal

from conftest import ROOT
from playwright.sync_api import Page, expect

TABLE = (ROOT / "webapp" / "src" / "shell" / "views.js").read_text()

#: The views by name. "demo" is left out: it only leads to the set of the invented shoot.
VIEWS = [
    name
    for name in re.findall(r"^  (\w+): \{", TABLE.partition("export const VIEWS")[2], re.MULTILINE)
    if name != "demo"
]
assert {"light", "set", "book", "kit"} <= set(VIEWS)


def visit(page: Page, address: str) -> None:
    """Go to an address within the app, and wait until what it shows has come to rest."""
    page.evaluate("address => { location.hash = address; }", address)
    name = address.partition("/")[0]
    expect(page.locator(f"main ek-{name} h1").first).to_be_visible()
    expect(page.locator("main [aria-busy=true]")).to_have_count(0)


def wear(page: Page, scheme: Literal["dark", "light"]) -> None:
    """Have the system ask for dark or light, and wait until the app has put it on."""
    page.emulate_media(color_scheme=scheme)
    theme = {"dark": "dark", "light": "daylight"}[scheme]
    expect(page.locator(f"html[data-theme={theme}]")).to_be_attached()


def open_all(page: Page) -> None:
    """Unfold everything that is folded."""
    page.evaluate("for (const one of document.querySelectorAll('main details')) one.open = true")


def addresses(page: Page, look: Callable[[str], None] = lambda _: None) -> dict[str, list[str]]:
    """Each view's addresses: bare, and one with what follows where the app itself links to it.

    `look` is called at each, as it opens.
    """
    found = {name: [name] for name in VIEWS}
    seen: set[str] = set()
    while unseen := [one for all_ in found.values() for one in all_ if one not in seen]:
        for address in unseen:
            seen.add(address)
            visit(page, address)
            look(address)
            open_all(page)
            links = page.locator("main a[href^='#']").evaluate_all(
                "links => links.map(link => link.getAttribute('href').slice(1))"
            )
            for link in links:
                name = link.partition("/")[0]
                if "/" in link and len(found.get(name, [1, 2])) < 2:
                    found[name].append(link)
    return found
