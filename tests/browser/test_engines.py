"""The main job, the offline reload and the kernel's numbers in the engines beside Chromium.

An engine that a machine lacks is said at the end of the run; where EVENKELVIN_ENGINES is
"required", as on the machines of the project, it is a failure.
"""

from __future__ import annotations

import contextlib
import json
import os
import sys
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from conftest import ROOT, Site

from engines import DEMAND, ENGINES, Elsewhere, Engine, not_run, until
from evenkelvin import desk

sys.path += [str(ROOT / "tests/kernel"), str(ROOT / "tests/bench")]
from plain_server import make_server
from test_golden import FOLDER, differences, read

#: What the meter shows of the HMI through the doorway of the invented shoot.
READING = {"x": "0.4215", "y": "0.4022"}
WHITE = 5600


@pytest.fixture(scope="module")
def elsewhere() -> Iterator[Elsewhere]:
    made = Elsewhere()
    yield made
    made.close()


@pytest.fixture(scope="module", params=ENGINES, ids=lambda engine: engine.name)
def started(
    request: pytest.FixtureRequest,
    elsewhere: Elsewhere,
    tmp_path_factory: pytest.TempPathFactory,
) -> Iterator[Callable[[], Engine]]:
    """Gives an engine that lives: the one there is, or a new one in its place."""
    why = not_run(request.param)
    if why and os.environ.get(DEMAND) == "required":
        pytest.fail(why)
    if why:
        pytest.skip(why)
    running: list[Engine] = []

    def living() -> Engine:
        if not running or not running[-1].lives():
            running.append(request.param(elsewhere, tmp_path_factory.mktemp("engine")))
        return running[-1]

    yield living
    for fallen in running[:-1]:
        with contextlib.suppress(Exception):
            fallen.close()
    if running:
        running[-1].close()


@pytest.fixture
def engine(started: Callable[[], Engine]) -> Engine:
    return started()


@pytest.fixture
def nothing_leaves(elsewhere: Elsewhere) -> Iterator[None]:
    elsewhere.asked.clear()
    yield
    assert elsewhere.asked == []


@pytest.mark.usefixtures("nothing_leaves")
def test_the_main_job_and_a_reload_with_the_server_dead(engine: Engine, site: Site) -> None:
    question = {"ask": "fix", "reading": READING, "target": {"cct_K": WHITE, "duv": 0}}
    natively = desk.answer({**question, "tolerance": "normal"})
    assert abs(natively["reading"]["cct_K"] - 3262) < 1
    assert "a touch green" in natively["offset"]["words"]

    engine.open(site.url)
    engine.wait_for_kernel()
    engine.find("//summary[.//text()[normalize-space() = 'Match']]").click()
    engine.button(f"{WHITE} K").click()
    fix_is_shown(engine, natively, name="practical by the door")
    engine.button("Keep").click()
    assert "practical by the door kept at" in engine.find("//*[@class = 'kept']").text

    engine.wait_until_kept()
    site.stop()
    engine.reload()
    assert engine.run("return navigator.serviceWorker.controller !== null")
    engine.wait_for_kernel()
    engine.find("//nav//a[starts-with(normalize-space(), 'Book')]").click()
    engine.find("//a[contains(normalize-space(), 'Setup 1')]").click()
    kept = engine.find("//ek-setup[.//h1]")
    until(lambda: "practical by the door" in kept.text)
    until(lambda: " K, Duv " in kept.text)
    engine.find("//nav//a[starts-with(normalize-space(), 'Light')]").click()
    fix_is_shown(engine, natively, name="its neighbour")


def fix_is_shown(engine: Engine, natively: dict[str, Any], name: str) -> None:
    """Type the reading; the screen then says what the kernel says outside of a browser."""
    for label, value in [("x", READING["x"]), ("y", READING["y"]), ("Name", name)]:
        engine.labelled(label).send_keys(value)
    headline = engine.find("//*[@data-testid = 'headline']")
    until(lambda: headline.text == natively["packs"][0]["words"])
    answer = engine.find("//*[contains(@class, 'answer')]")
    until(lambda: natively["offset"]["words"] in answer.text)


#: A page of the app's own, under its policy, that puts questions to the worker.
ASKING_PAGE = "<!doctype html><title>asking</title><script src=./asking.js></script><pre></pre>"
ASKING_SCRIPT = """
const policy = globalThis.trustedTypes?.createPolicy("evenkelvin", {createScriptURL: a => a});
const worker = new Worker(policy ? policy.createScriptURL("./worker.js") : "./worker.js");
const answers = [];
let questions;
const next = () => worker.postMessage({
    id: answers.length, request: JSON.stringify(questions[answers.length])
});
const end = words => { document.querySelector("pre").textContent = words; };
worker.onerror = event => end(event.message || "the worker is lost");
worker.onmessage = async ({data}) => {
    if (data.fatal) end(data.fatal);
    if (data.stage === "ready") {
        questions = await (await fetch("./questions.json")).json();
        next();
    }
    if (data.answer === undefined) return;
    answers.push(JSON.parse(data.answer));
    if (answers.length < questions.length) next(); else end(JSON.stringify(answers));
};
"""


@pytest.mark.usefixtures("nothing_leaves")
def test_the_kernel_answers_as_it_does_elsewhere(engine: Engine, own_dist: Path) -> None:
    """The first golden question of every ask (`tests/kernel/golden`)."""
    cases = [read(file)[0] for file in sorted(FOLDER.glob("*.json"))]
    (own_dist / "asking.html").write_text(ASKING_PAGE)
    (own_dist / "asking.js").write_text(ASKING_SCRIPT)
    (own_dist / "questions.json").write_text(json.dumps([case["request"] for case in cases]))
    site = Site(own_dist)
    try:
        engine.open(f"{site.url}asking.html")
        said = until(lambda: engine.run("return document.querySelector('pre').textContent"))
    finally:
        site.stop()
    answers = json.loads(said)
    assert len(answers) == len(cases) >= 30
    for case, answer in zip(cases, answers, strict=True):
        assert differences(case["answer"], answer) == [], case["request"]["ask"]


#: Asks one other host each from a page, a worker and a service worker.
LEAVING = {
    "leaving.html": "<!doctype html><script src=./leaving.js></script>",
    "leaving.js": """
        fetch("http://page.example/", {mode: "no-cors"}).catch(() => {});
        new Worker("./worker.js");
        navigator.serviceWorker.register("./sw.js");
    """,
    "worker.js": 'fetch("http://worker.example/", {mode: "no-cors"}).catch(() => {});',
    "sw.js": 'fetch("http://service-worker.example/", {mode: "no-cors"}).catch(() => {});',
}


def test_the_proxy_sees_what_leaves(engine: Engine, elsewhere: Elsewhere, tmp_path: Path) -> None:
    """On a host that sends no policy, which would have refused it before."""
    for name, text in LEAVING.items():
        (tmp_path / name).write_text(text)
    server = make_server(tmp_path)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    try:
        engine.open(f"http://localhost:{server.server_address[1]}/leaving.html")
        wanted = {f"GET http://{name}.example/" for name in ("page", "worker", "service-worker")}
        until(lambda: wanted <= set(elsewhere.asked))
    finally:
        server.shutdown()
        server.server_close()
