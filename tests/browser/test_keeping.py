"""What is kept stays kept: reload, killed tab, two tabs, refused storage, undo."""

from __future__ import annotations

from conftest import Site, wait_for_kernel
from hands import go, headline, keep, keep_light, open_demo, type_xy, until_on_disk
from playwright.sync_api import BrowserContext, Page, expect


def test_a_reload_loses_neither_the_kept_nor_the_typed(app: Page) -> None:
    keep_light(app, "key", "0.3810", "0.3770")
    type_xy(app, "0.4215", "0.40", name="fill")
    until_on_disk(app, '"fill"')
    app.reload()
    expect(app.get_by_label("y", exact=True)).to_have_value("0.40")
    expect(app.get_by_label("Name", exact=True)).to_have_value("fill")
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(1)


def test_a_killed_tab_loses_neither(app: Page, context: BrowserContext, site: Site) -> None:
    keep_light(app, "key", "0.3810", "0.3770")
    type_xy(app, "0.4215", "0.40", name="fill")
    until_on_disk(app, '"fill"')
    other = context.new_page()
    app.close(run_before_unload=False)
    other.goto(site.url)
    expect(other.get_by_label("y", exact=True)).to_have_value("0.40")
    expect(other.get_by_label("Name", exact=True)).to_have_value("fill")
    wait_for_kernel(other)
    go(other, "Set")
    expect(other.locator(".slip")).to_contain_text("key")


def another_tab(page: Page) -> Page:
    other = page.context.new_page()
    other.goto(page.url)
    return other


def test_two_tabs_lose_nothing_of_each_other(app: Page) -> None:
    keep_light(app, "key", "0.3810", "0.3770")
    other = another_tab(app)
    type_xy(app, "0.4215", "0.4022", name="practical")
    type_xy(other, "0.3127", "0.3290", name="window")
    keep(other)
    # The first tab still has its own half-typed reading, and sees the other's light.
    expect(app.get_by_label("Name", exact=True)).to_have_value("practical")
    keep(app)
    for tab in (app, other):
        go(tab, "Set")
        expect(tab.locator(".slip")).to_have_count(3)
        expect(tab.locator(".slips")).to_contain_text("window")
        expect(tab.locator(".slips")).to_contain_text("practical")


def test_a_white_set_in_one_tab_is_seen_in_the_other(app: Page) -> None:
    other = another_tab(app)
    go(app, "Kit")
    app.get_by_role("button", name="4300 K").click()
    expect(other.locator(".against summary")).to_contain_text("4300 K")


def test_the_database_closed_under_the_app_is_opened_again(app: Page) -> None:
    # Deleting needs every connection closed: the app gives way, and must come back.
    app.evaluate(
        """() => new Promise((resolve, reject) => {
            const request = indexedDB.deleteDatabase("evenkelvin");
            request.onsuccess = resolve;
            request.onerror = reject;
        })"""
    )
    keep_light(app, "key", "0.3810", "0.3770")
    app.reload()
    go(app, "Set")
    expect(app.locator(".slip")).to_contain_text("key")


def test_refused_storage_is_told_and_the_typed_stays(page: Page, site: Site) -> None:
    page.add_init_script(
        """IDBFactory.prototype.open = () => {
            throw new DOMException("denied", "SecurityError");
        };"""
    )
    page.goto(site.url)
    expect(page.get_by_role("alert")).to_contain_text("refused to store")
    type_xy(page, "0.3810", "0.3770", name="key")
    wait_for_kernel(page)
    expect(headline(page)).not_to_be_empty()
    page.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator("ek-light .problem")).to_contain_text("not kept")
    expect(page.get_by_label("Name", exact=True)).to_have_value("key")
    expect(page.locator(".kept")).to_have_count(0)


def test_full_storage_is_told_and_the_typed_stays(app: Page) -> None:
    app.evaluate(
        """() => {
            const put = IDBObjectStore.prototype.put;
            IDBObjectStore.prototype.put = function (value, key) {
                if (this.name !== "entries") return put.call(this, value, key);
                throw new DOMException("full", "QuotaExceededError");
            };
        }"""
    )
    type_xy(app, "0.3810", "0.3770", name="key")
    app.get_by_role("button", name="Keep", exact=True).click()
    expect(app.locator("ek-light .problem")).to_contain_text("full")
    expect(app.locator(".kept")).to_have_count(0)
    app.reload()
    expect(app.get_by_label("Name", exact=True)).to_have_value("key")


def test_the_demo_never_mixes_with_the_own_book(app: Page) -> None:
    keep_light(app, "my key", "0.3810", "0.3770")
    type_xy(app, "0.4215", "0.40", name="half typed")
    open_demo(app)
    expect(app.locator(".slips")).not_to_contain_text("my key")
    go(app, "Light")
    expect(app.get_by_label("Name", exact=True)).to_have_value("")
    keep_light(app, "in the demo", "0.3127", "0.3290")
    app.reload()
    expect(app.get_by_text("Demo: The Night Ferry")).to_be_visible()
    app.get_by_role("button", name="Leave the demo").click()
    expect(app.get_by_label("Name", exact=True)).to_have_value("half typed")
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(1)
    expect(app.locator(".slip")).to_contain_text("my key")
