"""Nobody gets in and nothing gets out: the policy, hostile content, what is shipped.

Sources: Content Security Policy Level 3 and Trusted Types (W3C working drafts), Subresource
Integrity (W3C); the hostile content follows common practice, no source.
"""

from __future__ import annotations

import functools
import http.server
import json
import re
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from conftest import PHONE, ROOT, Site, Watch, wait_for_kernel, wait_until_kept
from hands import go, keep_light
from places import VIEWS, addresses, open_all, visit
from playwright.sync_api import Browser, BrowserContext, Page, expect
from static_server import CSP
from test_boot_and_offline import build_again

ELSEWHERE = "http://elsewhere.invalid/"
#: Runs in a page, a worker or a service worker; tells whether the other host was reached for.
REACH = f"fetch('{ELSEWHERE}').then(() => 'reached', () => 'refused')"
RUN_ME = "window.executed = 1"
STRANGE = "main :is(script, iframe, object, embed, base, form[action], img[onerror], [onload])"
HOSTILE = [
    f'<img src=x onerror="{RUN_ME}">',
    f"<script>{RUN_ME}</script>",
    f'"><svg onload="{RUN_ME}"><a xlink:href="javascript:{RUN_ME}">x</a></svg>',
    f"${{{RUN_ME}}}{{{{constructor.constructor('{RUN_ME}')()}}}}",
    f"javascript:{RUN_ME}",
    "=HYPERLINK(1)\u202e\u2028\u0000constructor",
]


def directives(policy: str) -> dict[str, str]:
    pairs = (part.strip().partition(" ") for part in policy.split(";") if part.strip())
    return {name: value for name, _, value in pairs}


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the module, its book full of hostile words."""
    seen = Watch()
    context = phone_browser.new_context(viewport=PHONE, has_touch=True)
    seen.follow(context)
    site = Site(dist)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    yield page
    context.close()
    site.stop()
    assert seen.faults == []


@pytest.fixture
def hostile(shared: Page) -> Iterator[Page]:
    """The page, which must not have run or loaded anything of what it was given."""
    yield shared
    assert shared.evaluate("window.executed") is None
    expect(shared.locator(STRANGE)).to_have_count(0)


class Bare(http.server.SimpleHTTPRequestHandler):
    """A static host that sends no headers of ours."""

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing about ordinary requests."""


@pytest.fixture
def bare_host(own_dist: Path) -> Iterator[str]:
    handler = functools.partial(Bare, directory=str(own_dist))
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://localhost:{server.server_address[1]}/"
    server.shutdown()
    server.server_close()


# ---------------------------------------------------------------------------- the guard itself


def test_the_guard_sees_what_leaves_from_page_worker_and_service_worker(
    phone_browser: Browser, own_dist: Path, bare_host: str
) -> None:
    """Without any policy, so that requests really go out to be seen."""
    script = own_dist / "worker.js"
    script.write_text(f"{REACH};\n{script.read_text()}")
    build_again(own_dist)
    seen = Watch()
    context = phone_browser.new_context(viewport=PHONE, bypass_csp=True)
    seen.follow(context)

    def count() -> int:
        return sum(ELSEWHERE in fault for fault in seen.faults)

    page = context.new_page()
    page.goto(bare_host)
    wait_for_kernel(page)
    before = count()
    assert before >= 1, "a request from the worker goes unseen"
    assert page.evaluate(REACH) == "refused"
    assert count() > before, "a request from the page goes unseen"
    wait_until_kept(page)
    before = count()
    context.service_workers[0].evaluate(REACH)
    assert count() > before, "a request from the service worker goes unseen"
    context.close()


# ---------------------------------------------------------------------------- the policy


def test_page_and_header_state_one_policy(dist: Path) -> None:
    (meta,) = re.findall(
        r'http-equiv="Content-Security-Policy" content="([^"]*)"', (dist / "index.html").read_text()
    )
    wanted = directives(CSP)
    assert wanted.pop("frame-ancestors") == "'none'"  # a page cannot say this of itself
    assert directives(meta) == wanted
    assert "unsafe-inline" not in CSP
    assert "'unsafe-eval'" not in CSP
    assert wanted["require-trusted-types-for"] == "'script'"
    listed = re.match(r"self.EVENKELVIN_BUILD=(.*);\n", (dist / "sw.js").read_text())
    assert listed
    assert json.loads(listed[1])["policy"] == CSP


def test_the_policy_holds_in_page_and_worker_where_the_host_sends_none(
    context: BrowserContext, watch: Watch, bare_host: str
) -> None:
    watch.expected += ["Content Security Policy", "TrustedScriptURL"]
    violated = """() => new Promise(resolve => {
        addEventListener("securitypolicyviolation", event => resolve(event.effectiveDirective));
        setTimeout(() => resolve("nothing"), 5000);
        fetch("http://127.0.0.1:1/").catch(() => {});
    })"""
    page = context.new_page()
    page.goto(bare_host)
    wait_until_kept(page)
    page.reload()
    wait_for_kernel(page)
    assert page.evaluate(violated) == "connect-src"
    worker = next(one for one in page.workers if one.url.endswith("/worker.js"))
    assert worker.evaluate(violated) == "connect-src"
    address = "() => { try { importScripts('./worker.js'); } catch (e) { return e.name; } }"
    assert worker.evaluate(address) == "TypeError"


def test_nothing_but_our_own_script_runs(page: Page, site: Site, watch: Watch) -> None:
    watch.expected += ["Content Security Policy", "Trusted"]
    page.goto(site.url)
    expect(page.locator("main h1")).to_be_visible()
    ways = {
        "markup": "document.body.insertAdjacentHTML('beforeend', '<img src=x onerror=hit()>')",
        "inner": "document.createElement('div').innerHTML = '<img src=x onerror=hit()>'",
        "frame": "document.body.append(Object.assign(document.createElement('iframe'),"
        " {srcdoc: '<script>parent.hit()</script>'}))",
        "inline": "const s = document.createElement('script'); s.append('hit()');"
        "document.body.append(s)",
        "blob": "import(URL.createObjectURL(new Blob(['hit()'], {type: 'text/javascript'})))",
        "data": "import('data:text/javascript,hit()')",
        "handler": "document.body.setAttribute('onclick', 'hit()'); document.body.click()",
        "eval": "eval('hit()')",
        "function": "new Function('hit()')()",
        "timer": "setTimeout('hit()')",
        "worker": "new Worker('./worker.js')",
        "link": "const a = document.createElement('a'); a.href = 'javascript:hit()';"
        "document.body.append(a); a.click(); a.remove()",
        "style": "document.body.setAttribute('style', 'color: rgb(1, 2, 3)');"
        "if (getComputedStyle(document.body).color === 'rgb(1, 2, 3)') hit()",
        "policy": "trustedTypes.createPolicy('other', {createHTML: x => x}); hit()",
        "again": "trustedTypes.createPolicy('evenkelvin', {createHTML: x => x}); hit()",
        "borrowed": "borrowedPolicy.createScriptURL('data:text/javascript,hit()'); hit()",
        "form": "const f = document.createElement('form'); f.action = './hit';"
        "document.body.append(f); f.submit(); f.remove()",
    }
    # From a timer, because what a test evaluates is exempt from the ban on eval.
    run = """([ways, code]) => new Promise(resolve => {
        window.hits = [];
        let way = "";
        window.hit = () => hits.push(way);
        setTimeout(async () => {
            %s
            setTimeout(() => resolve(hits), 500);
        });
    })"""
    steps = "\n".join(
        f"way = {json.dumps(name)}; try {{ {code} }} catch {{}}"
        if "import(" not in code
        else f"way = {json.dumps(name)}; await {code}.catch(() => {{}});"
        for name, code in ways.items()
    )
    before = page.url
    assert page.evaluate(run.replace("%s", steps).replace("[ways, code]", "")) == []
    assert page.url == before


def test_what_is_shipped_holds_no_inline_script_and_no_eval(dist: Path) -> None:
    page = (dist / "index.html").read_text()
    assert re.findall(r"<script(?![^>]*\bsrc=)", page) == []
    assert re.findall(r"""\s(?:style|on\w+)=""", page) == []
    ours = list(dist.glob("*.js"))
    assert {"main.js", "worker.js", "unpack.js", "sw.js"} <= {path.name for path in ours}
    for path in ours:
        found = re.findall(r"\beval\(|\bFunction\(|document\.write|unsafeHTML", path.read_text())
        assert found == [], path.name
    for path in (ROOT / "webapp" / "src").rglob("*.js"):
        text = path.read_text()
        assert not re.search(r"\b(inner|outer)HTML\b|insertAdjacentHTML|\sstyle=", text), path


# ---------------------------------------------------------------------------- hostile content


def test_hostile_names_are_only_words(hostile: Page) -> None:
    for number, words in enumerate(HOSTILE):
        keep_light(hostile, words, f"0.4{number}", "0.40")
    go(hostile, "Set")
    expect(hostile.locator(".slip")).to_have_count(len(HOSTILE))
    expect(hostile.locator(".slip").first).to_contain_text(HOSTILE[0])


def test_a_hostile_address_is_only_an_address(hostile: Page) -> None:
    rests = [
        "__proto__",
        "constructor/toString",
        "<img src=x onerror=executed=1>",
        "%00%",
        "a" * 9999,
    ]
    for name in [
        "",
        "constructor",
        "__proto__",
        "toString",
        "javascript:executed=1",
        *HOSTILE,
        *rests,
    ]:
        hostile.evaluate("address => { location.hash = address; }", name)
        expect(hostile.locator("main ek-light h1")).to_be_visible()
    for name in VIEWS:
        for rest in rests:
            hostile.evaluate("address => { location.hash = address; }", f"{name}/{rest}")
            expect(hostile.locator(f"main ek-{name} h1").first).to_be_visible()


ENTITY = '<!DOCTYPE t [<!ENTITY e SYSTEM "%s">]>'
XML = """<?xml version="1.0"?>%s<IESTM2714 xmlns="iestm2714">
<Header><Description>&e;</Description></Header></IESTM2714>"""
NESTED = "".join(f"<!ENTITY e{n + 1} '{f'&e{n};' * 10}'>" for n in range(9))
BOMB = f"<!DOCTYPE t [<!ENTITY e0 'boom'>{NESTED}]>"
ROWS = "".join(f"{nm};1\n" for nm in range(380, 785, 5))
FILES = {
    "drawing.svg": f'<svg xmlns="http://www.w3.org/2000/svg" onload="{RUN_ME}">'
    f'<script>{RUN_ME}</script><image href="{ELSEWHERE}a.png"/></svg>',
    "page.html": f"<html><script>{RUN_ME}</script><img src='{ELSEWHERE}b.png'></html>",
    "outside.xml": XML % (ENTITY % f"{ELSEWHERE}c"),
    "inside.xml": XML % (ENTITY % "file:///etc/passwd"),
    "bomb.xml": XML.replace("&e;", "&e9;") % BOMB,
    "formula.csv": f"nm;=cmd|' /C calc'!A0\n{ROWS}",
    "named.csv": f"nm;{HOSTILE[0]}\n{ROWS}",
    "proto.json": '{"__proto__": {"executed": 1}, "constructor": {"prototype": {"executed": 1}}}',
    "nul.csv": "\x00\x01\x02" * 100,
    "deep.json": "[" * 100_000,
    "<img src=x onerror=executed=1>.csv": f"nm;W\n{ROWS}",
}


def test_hostile_files_are_only_read(hostile: Page) -> None:
    visit(hostile, "files")
    payloads = [
        {"name": name, "mimeType": "text/plain", "buffer": text.encode()}
        for name, text in FILES.items()
    ]
    hostile.locator("#more-files").set_input_files(payloads)  # type: ignore[arg-type]
    expect(hostile.locator(".in-file")).to_have_count(len(FILES))
    expect(hostile.locator(".in-file[aria-busy=false]")).to_have_count(len(FILES), timeout=30_000)
    for name in FILES:
        told = hostile.locator(
            ".in-file", has=hostile.get_by_role("heading", name=name, exact=True)
        )
        expect(told).to_have_count(1)
        if name not in ("formula.csv", "named.csv", "<img src=x onerror=executed=1>.csv"):
            expect(told.locator(".problem").first).not_to_be_empty()
    assert "root:" not in hostile.locator("main").inner_text()
    expect(hostile.locator("main")).not_to_contain_text("boomboom")
    assert hostile.evaluate("({}).executed") is None
    hostile.get_by_role("button", name=re.compile("^Keep")).click()
    go(hostile, "Set")
    expect(hostile.locator("main")).to_contain_text(HOSTILE[0])


def hostile_book() -> dict[str, Any]:
    """The invented shoot with hostile words wherever a person may write."""
    shoot = json.loads((ROOT / "demo_readings" / "night_ferry.json").read_text())
    for number, entry in enumerate(shoot["entries"]):
        for field in ("name", "note"):
            entry["data"][field] = HOSTILE[number % len(HOSTILE)].replace("\0", "")
        entry["who"] = HOSTILE[0]
    return {"format": "evenkelvin-book", "version": 1, "entries": shoot["entries"]}


def test_a_hostile_book_is_only_read(hostile: Page) -> None:
    visit(hostile, "receive")
    text = json.dumps(hostile_book())
    hostile.locator("#receive-file").set_input_files(
        {"name": "book.json", "mimeType": "application/json", "buffer": text.encode()}
    )
    expect(hostile.locator("main")).to_contain_text(HOSTILE[1])
    hostile.get_by_role("button", name="Add to my book").click()
    expect(hostile.locator("main .kept")).to_be_visible()
    visit(hostile, "book")
    expect(hostile.locator("main")).to_contain_text(HOSTILE[1])

    def look(address: str) -> None:
        open_all(hostile)
        assert hostile.locator(STRANGE).count() == 0, address
        assert hostile.evaluate("window.executed") is None, address

    addresses(hostile, look)  # with the names of the test above as well


def test_hostile_links_and_codes_are_refused_in_a_sentence(hostile: Page) -> None:
    visit(hostile, "receive")
    for text in (
        f"javascript:{RUN_ME}",
        f"{ELSEWHERE}#copy/d{'A' * 60}",
        f"p1.2.AAAAAAAA.{HOSTILE[0]}",
        '{"format": "evenkelvin-book", "version": 1, "entries": [{"__proto__": {"executed": 1}}]}',
        HOSTILE[0],
    ):
        hostile.locator("#receive-text").fill(text)
        hostile.get_by_role("button", name="Open it", exact=True).click()
        expect(hostile.locator("main .problem").first).not_to_be_empty()
    assert hostile.evaluate("({}).executed") is None


# ---------------------------------------------------------------------------- what it is made of


def test_licences_are_told_in_the_app(shared: Page) -> None:
    visit(shared, "about")
    parts = shared.locator(".licence")
    expect(parts.filter(has_text="Evenkelvin, MIT")).to_have_count(1)
    for name in ("Python 3.12.7", "pyodide 0.27.8", "numpy 2.0.2"):
        expect(parts.filter(has=shared.get_by_text(name)).locator("pre")).not_to_be_empty()
    parts.filter(has_text="lit 3").locator("summary").click()
    expect(parts.filter(has_text="lit 3").locator("pre")).to_contain_text("Redistribution")
