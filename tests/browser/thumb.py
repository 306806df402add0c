"""What jobs of a night cost the hand: a thumb that counts its taps, and what each job may cost.

A tap is each press on the screen, the keyboard's own Next and Done among them; a character is each
key that writes one. The bench measures by it (tests/bench/bench_hand.py), a test holds it
(test_taps.py). The figures are our own; common practice has no source for them.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from hands import HALL, headline
from playwright.sync_api import Locator, Page, expect


class Thumb:
    """One thumb on one page."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.taps = 0
        self.characters = 0

    def tap(self, target: Locator) -> None:
        target.click()
        self.taps += 1

    def press(self, role: str, name: str) -> None:
        """Tap a button, or whatever has that role, by its whole name."""
        self.tap(self.page.get_by_role(role, name=name, exact=True))  # type: ignore[arg-type]

    def type(self, text: str) -> None:
        self.page.keyboard.type(text)
        self.characters += len(text)

    def done(self) -> None:
        """The keyboard's own key: Next, or Done after the last field."""
        self.page.keyboard.press("Enter")
        self.taps += 1


def field(page: Page, label: str) -> Locator:
    return page.get_by_label(label, exact=True)


def type_reading(thumb: Thumb, x: str, y: str, lux: str, where: str = "light") -> None:
    """Digit after digit, the caret in x: the fields hand over by themselves."""
    page = thumb.page
    for text, here in ((x, "x"), (y, "y"), (lux, "illuminance")):
        expect(page.locator(f"#{where}-{here}")).to_be_focused()
        thumb.type(text)


def first_answer(thumb: Thumb) -> None:
    """The app has just been opened, for the first time."""
    thumb.tap(field(thumb.page, "x"))
    thumb.type("4012")
    thumb.done()
    thumb.type("3991")
    expect(headline(thumb.page)).to_be_visible()


def six_lights(thumb: Thumb) -> None:
    """Each with its lux and its name, in a book that is empty."""
    page = thumb.page
    for n, (name, *xy, lux) in enumerate(HALL):
        x, y = (number.removeprefix("0.") for number in xy)
        thumb.tap(field(page, "x"))
        if n == 0:  # How many digits this meter gives is not known yet.
            thumb.type(x)
            thumb.done()
            thumb.type(y)
            thumb.done()
            thumb.type(lux)
        else:
            type_reading(thumb, x, y, lux)
        name_and_keep(thumb, name)


def name_and_keep(thumb: Thumb, name: str) -> None:
    page = thumb.page
    offered = page.get_by_role("group", name="Names for it").get_by_role(
        "button", name=name, exact=True
    )
    if offered.count():
        thumb.tap(offered)
    else:
        thumb.tap(field(page, "Name"))
        thumb.type(name)
    thumb.press("button", "Keep")
    expect(page.locator(".kept")).to_contain_text(f"{name} kept")


def six_lights_by_camera(thumb: Thumb) -> None:
    """Each with its lux and its name; the reader of displays is there, and the camera sees one."""
    for name, *_ in HALL:
        thumb.press("button", "Read the meter's display")
        expect(thumb.page.locator(".from-display")).to_be_visible(timeout=30_000)
        name_and_keep(thumb, name)


def hang_and_read_again(thumb: Thumb) -> None:
    """Three lights, from Set, by their hang cards."""
    page = thumb.page
    thumb.press("link", "Hang cards")
    for name, *numbers in [("key", "3305", "3410", "420"), ("fill", "3315", "3420", "210"),
                           ("batten 1", "3310", "3405", "118")]:  # fmt: skip
        card = page.locator(".card", has=page.get_by_role("heading", name=name, exact=True))
        expect(card.locator(".hang")).not_to_be_empty()
        thumb.tap(card.get_by_role("button", name=re.compile("read it now$|^Read again")))
        type_reading(thumb, *numbers, where="hang")  # type: ignore[arg-type]
        thumb.done()
        expect(card.locator("input")).to_have_count(0)


def pick_up(thumb: Thumb) -> None:
    """Three lights of an earlier day, from Book; the figure is for taps, what is read is typed."""
    page = thumb.page
    thumb.press("link", "Book")
    thumb.tap(page.get_by_role("link", name="Setup 1"))
    thumb.press("button", "Duplicate for a pick-up")
    thumb.press("button", "Read key")
    for name, *numbers in [("key", "3812", "3771", "600"), ("fill", "3880", "3805", "300"),
                           ("batten 1", "3761", "3859", "118")]:  # fmt: skip
        type_reading(thumb, *numbers)  # type: ignore[arg-type]
        expect(headline(page)).to_be_visible()
        thumb.done()
        expect(page.locator(".kept")).to_contain_text(f"{name} kept")
        expect(page.locator(".whose")).to_have_text(name)


def share_a_link(thumb: Thumb) -> None:
    """The setup on Set, to a message."""
    thumb.press("link", "Share this setup")
    thumb.press("button", "Send the link")
    expect(thumb.page.get_by_text("The link is copied")).to_be_visible()


@dataclass(frozen=True)
class Job:
    """One job: what it may cost, and how many of the hall's lights are kept on Set before it."""

    name: str
    does: Callable[[Thumb], None]
    taps: int
    characters: int | None
    lights_before: int = 0


JOBS = [
    Job("first answer", first_answer, 2, 8),
    Job("six lights with lux and names", six_lights, 36, 110),
    Job("hang and read again three lights", hang_and_read_again, 9, 36, lights_before=3),
    Job("a pick-up of three lights", pick_up, 8, None, lights_before=3),
    Job("share a link", share_a_link, 2, 0, lights_before=3),
]
#: On a page whose camera sees a display, and that has the reader.
BY_CAMERA = Job("six lights by the camera", six_lights_by_camera, 36, 45)
