"""Two phones that join: what each shows is a picture to the other."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Locator, Page, expect


def show_code(page: Page, tmp_path: Path, name: str) -> Path:
    """What the other phone's camera sees."""
    code = page.locator("ek-join svg.code")
    expect(code).to_be_visible()
    picture = tmp_path / f"{name}.png"
    code.screenshot(path=picture)
    return picture


def read_code(page: Page, picture: Path) -> None:
    page.locator("ek-join input[type=file]").set_input_files(picture)


def join(host: Page, guest: Page, tmp_path: Path, *, wait: bool = True) -> None:
    """The guest is invited by the host's screen, and answers by its own.

    Both then hold the same; without ``wait`` they begin to.
    """
    for page in (host, guest):
        page.evaluate("location.hash = '#join'")
    host.get_by_role("button", name="Invite a phone").click()
    read_code(guest, show_code(host, tmp_path, "invitation"))
    read_code(host, show_code(guest, tmp_path, "answer"))
    for page in (host, guest) if wait else ():
        expect(status(page)).to_contain_text("all sent")


def status(page: Page) -> Locator:
    return page.locator("ek-joined-line")


def entries(page: Page) -> list[str]:
    """The ids of what is durable in this phone's book."""
    return page.evaluate(
        """async () => {
            const done = request => new Promise((resolve, reject) => {
                request.onsuccess = () => resolve(request.result);
                request.onerror = () => reject(request.error);
            });
            const database = await done(indexedDB.open("evenkelvin"));
            const store = database.transaction("entries").objectStore("entries");
            const keys = await done(store.getAllKeys());
            database.close();
            return keys.sort();
        }"""
    )
