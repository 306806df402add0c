"""What the browser tests share: one build, a server that can be stopped, a phone-size page.

Every page fails its test on a console error and on any request that leaves the app's own host.
`build.py test` names the Chromium to use in EVENKELVIN_CHROMIUM.
"""

from __future__ import annotations

import json
import os
import shutil
import threading
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
import traces
from hands import open_demo, wait_for_kernel
from machine import find_chromium
from native_kernel import answer_natively
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, Request, expect
from static_server import make_server

ROOT = Path(__file__).parents[2]
PHONE = {"width": 390, "height": 844}
#: A machine that does other work besides may need so long; nothing waits longer than it must.
expect.set_options(timeout=15_000)
#: For each window Chromium gets two pages of its own ready, for its line of addresses.
NO_PAGES_OF_ITS_OWN = "--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup"
#: Pages of one phone share a process, which has read the app's script already.
SHARED = "--process-per-site"
LAUNCH = {"args": ["--no-sandbox", "--disable-dev-shm-usage", NO_PAGES_OF_ITS_OWN, SHARED]}
#: Compiled once and quickly: most pages of the tests are closed before better code would pay.
#: Tests of long work take `profile`; Firefox, WebKitGTK, Node and the bench run it as it comes.
QUICK = {"args": [*LAUNCH["args"], "--js-flags=--liftoff-only"]}


class Site:
    """A folder on a local server that can be stopped and started at the same address."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.port = 0
        self.server: Any = None
        self.start()

    def start(self) -> None:
        self.server = make_server(self.folder, self.port)
        self.port = self.server.server_address[1]
        threading.Thread(target=self.server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        """Refuse every connection from now on."""
        if self.server:
            self.server.shutdown()
            self.server.server_close()
        self.server = None

    @property
    def url(self) -> str:
        return f"http://localhost:{self.port}/"


#: The page makes worker addresses by a policy of its own; tests that ask the kernel borrow it.
BORROW_POLICY = """{
    const {createPolicy} = TrustedTypePolicyFactory.prototype;
    TrustedTypePolicyFactory.prototype.createPolicy = function (name, rules) {
        const policy = createPolicy.call(this, name, rules);
        if (name === "evenkelvin") window.borrowedPolicy = policy;
        return policy;
    };
}"""


class Watch:
    """Collects what must not happen on the pages of a test."""

    def __init__(self) -> None:
        self.faults: list[str] = []
        #: Words of console errors that a test provokes on purpose. A page that is left or opened
        #: anew while its worker loads always may: a kernel that does not start shows elsewhere.
        self.expected: list[str] = ["Failed to execute 'importScripts'"]

    def follow(self, context: BrowserContext) -> None:
        context.on("page", self.follow_page)
        context.on("request", self.check_request)
        context.add_init_script(BORROW_POLICY)
        traces.trace(context)

    def follow_page(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.faults.append(f"error: {error}"))
        page.on("console", lambda message: self.check_console(message.type, message.text))

    def check_console(self, kind: str, text: str) -> None:
        if kind == "error" and not any(words in text for words in self.expected):
            self.faults.append(f"console: {text}")

    def check_request(self, request: Request) -> None:
        address = urlsplit(request.url)
        if address.scheme in ("http", "https") and address.hostname != "localhost":
            self.faults.append(f"request to another host: {request.url}")


@pytest.fixture(autouse=True)
def traced_alone() -> None:
    traces.begin_anew()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item: pytest.Item, call: pytest.CallInfo[None]) -> Iterator[None]:
    """At the moment of a failure, when its pages are still open."""
    report: Any = yield
    if report.failed and (left := traces.leave(item.nodeid)):
        report.sections.append(("What it looked like", "\n".join(left)))
    return report


@pytest.fixture(scope="session")
def chromium_path() -> str:
    return os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium(for_tests=True)


@pytest.fixture(scope="session")
def phone_browser(playwright: Playwright, chromium_path: str) -> Iterator[Browser]:
    browser = playwright.chromium.launch(executable_path=chromium_path, **QUICK)
    yield browser
    browser.close()


@contextmanager
def phone_with(
    browser: Browser, dist: Path, book: dict[str, Any], setup: str, **more: Any
) -> Iterator[Page]:
    """The app on a phone of its own with a book, brought in by the door for books, and work begun
    in one of its setups. ``more`` goes to the browser's context."""
    seen = Watch()
    context = browser.new_context(viewport=PHONE, bypass_csp=True, **more)
    seen.follow(context)
    site = Site(dist)
    page = context.new_page()
    page.goto(site.url + "#receive")
    wait_for_kernel(page)
    file = {
        "name": "book.json",
        "mimeType": "application/json",
        "buffer": json.dumps(book).encode(),
    }
    page.locator("#receive-file").set_input_files(file)
    page.get_by_role("button", name="Add to my book").click()
    page.evaluate(f"location.hash = '#setup/{setup}'")
    page.get_by_role("button", name="Work here").first.click()
    yield page
    context.close()
    site.stop()
    assert seen.faults == []


@pytest.fixture
def site(dist: Path) -> Iterator[Site]:
    """The built app on a server of its own."""
    served = Site(dist)
    yield served
    served.stop()


@pytest.fixture
def own_dist(dist: Path, tmp_path: Path) -> Path:
    """A copy of the built app that a test may change."""
    return Path(shutil.copytree(dist, tmp_path / "dist"))


@pytest.fixture
def watch() -> Iterator[Watch]:
    seen = Watch()
    yield seen
    assert seen.faults == []


@pytest.fixture
def context(phone_browser: Browser, watch: Watch, site: Site) -> Iterator[BrowserContext]:
    """A fresh browser profile of phone size, closed before the site that it reads stops.

    Its kernel is the browser's own; a test that is not about that calls ``answer_natively``.
    """
    made = phone_browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
    watch.follow(made)
    yield made
    made.close()


@pytest.fixture
def page(context: BrowserContext) -> Page:
    return context.new_page()


class Settled:
    """A phone on which the app is kept for offline use, handed on from test to test.

    Each test finds the app opened anew with nothing kept. What the browser keeps of the program
    stays: that is most of the work of an opening. Tests of the opening take phones of their own.
    """

    def __init__(self, browser: Browser, dist: Path) -> None:
        self.site = Site(dist)
        self.watch = Watch()
        self.context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
        self.watch.follow(self.context)
        answer_natively(self.context)
        page = self.open()
        wait_until_kept(page)
        page.close()
        # Of no test: it keeps the process going from page to page.
        self.warm = self.context.new_page()
        self.warm.goto(self.site.url + "icon.svg")

    def open(self) -> Page:
        page = self.context.new_page()
        session = self.context.new_cdp_session(page)
        kinds = "cookies,file_systems,indexeddb,local_storage"
        what = {"origin": self.site.url.rstrip("/"), "storageTypes": kinds}
        session.send("Storage.clearDataForOrigin", what)
        session.detach()
        page.goto(self.site.url)
        wait_for_kernel(page)
        # All of Light is drawn: nobody types within the first tenth of a second.
        page.locator("#light-illuminance").wait_for(state="attached")
        return page

    def close_pages(self) -> list[str]:
        """What went wrong on the pages that are closed."""
        for page in self.context.pages:
            if page is not self.warm:
                page.close()
        faults, self.watch.faults = self.watch.faults, []
        return faults

    def close(self) -> None:
        self.context.close()
        self.site.stop()


@pytest.fixture(scope="session")
def settled(phone_browser: Browser, dist: Path) -> Iterator[Settled]:
    made = Settled(phone_browser, dist)
    yield made
    made.close()


#: Who asks for one of these beside `app` may change it, and so gets a phone of its own.
OWN = {"context", "page", "site", "watch"}


@pytest.fixture
def app(request: pytest.FixtureRequest) -> Iterator[Page]:
    """The app, opened and with its kernel ready."""
    if OWN & set(request.fixturenames):
        page: Page = request.getfixturevalue("page")
        page.goto(request.getfixturevalue("site").url)
        wait_for_kernel(page)
        yield page
        return
    phone: Settled = request.getfixturevalue("settled")
    yield phone.open()
    assert phone.close_pages() == []


@pytest.fixture
def offline(settled: Settled, app: Page) -> Iterator[Page]:
    """The app, opened and with its kernel ready, and the server dead from then on."""
    settled.site.stop()
    yield app
    settled.site.start()


@pytest.fixture
def profile(
    playwright: Playwright, chromium_path: str, watch: Watch, tmp_path: Path
) -> Iterator[Callable[[], BrowserContext]]:
    """Call it to start a browser on the same profile again, as after a relaunch."""
    with ExitStack() as open_ones:

        def launch() -> BrowserContext:
            made = playwright.chromium.launch_persistent_context(
                tmp_path / "profile", executable_path=chromium_path, viewport=PHONE, **LAUNCH
            )
            open_ones.callback(made.close)
            watch.follow(made)
            for page in made.pages:
                watch.follow_page(page)
            return made

        yield launch


@contextmanager
def offline_page(
    browser: Browser, dist: Path, permissions: tuple[str, ...] = (), **options: Any
) -> Iterator[Page]:
    """One page for a whole module: the app kept for offline use, its server stopped.

    Without the share sheet of a phone, which no test can press.
    """
    seen = Watch()
    context = browser.new_context(viewport=PHONE, has_touch=True, **options)
    context.grant_permissions(["clipboard-read", "clipboard-write", *permissions])
    context.add_init_script("delete Navigator.prototype.share; delete Navigator.prototype.canShare")
    seen.follow(context)
    site = Site(dist)
    answer_natively(context)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    wait_until_kept(page)
    site.stop()
    yield page
    context.close()
    assert seen.faults == []


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the module, its server stopped; a module that wants another has its own."""
    with offline_page(phone_browser, dist) as page:
        yield page


@pytest.fixture
def demo(shared: Page) -> Page:
    """The page that the module shares, with the demo opened afresh."""
    open_demo(shared)
    return shared


def wait_until_kept(page: Page) -> None:
    """Wait until the app would open without a network."""
    page.locator("html[data-offline=ready]").wait_for(state="attached", timeout=60_000)


def until_nothing_installs(page: Page) -> None:
    """Wait until a service worker that is being installed has come to be, or has given up."""
    page.evaluate(
        """async () => {
            const {serviceWorker} = navigator;
            const installing = async () => (await serviceWorker.getRegistration())?.installing;
            while (await installing()) await new Promise(resolve => setTimeout(resolve, 20));
        }"""
    )


def ask(page: Page, request: dict[str, Any]) -> dict[str, Any]:
    """Ask the kernel directly, past the screens, over a worker of the test's own.

    The page's script is sealed, so the test speaks the worker's own few messages.
    """
    script = """request => new Promise((resolve, reject) => {
        const worker = new Worker(borrowedPolicy.createScriptURL("./worker.js"));
        worker.onerror = event => reject(new Error(event.message));
        worker.onmessage = ({data}) => {
            if (data.stage === "ready")
                worker.postMessage({id: 1, request: JSON.stringify(request)});
            if (data.fatal) reject(new Error(data.fatal));
            if (data.id === 1) { worker.terminate(); resolve(JSON.parse(data.answer)); }
        };
    })"""
    answer: dict[str, Any] = page.evaluate(script, request)
    return answer
