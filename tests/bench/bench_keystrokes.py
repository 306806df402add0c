"""What a keystroke costs the kernel, in the browser's own Python and in its worker.

Every question that a screen asks while somebody types, in turn with one digit after the other, so
that nothing typed was asked before; what stands beside it (other lights, the kit) stays, as on a
screen. The yardstick is the most common question of all, what a bare x y says, asked in between.
The promise is 50 ms of kernel time at desk speed; the detail gives the times.
"""

from __future__ import annotations

import json
import statistics
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from app_browser import app_in_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))
ROUNDS = 12
PROMISE_MS = 50

WHITE = {"cct_K": "4300", "duv": "0"}
STOCK = {
    "full CTO": 4,
    "1/2 CTO": 4,
    "1/4 CTO": 6,
    "full CTB": 2,
    "1/2 CTB": 4,
    "1/4 plus green": 3,
}
LAMPS = ("tungsten", "daylight", "fluorescent", "led")


def light(n: int, **more: Any) -> dict[str, Any]:
    """The nth light of an invented set."""
    x, y = 0.3300 + 0.0093 * n, 0.3420 + 0.0051 * n
    return {"x": f"{x:.4f}", "y": f"{y:.4f}", "lamp": LAMPS[n % 4], "name": f"light {n}", **more}


SET = [light(n, illuminance_lx=str(100 + 40 * n)) for n in range(12)]
CAMERA = {"iso": "800", "fps": "24", "shutter_deg": "180"}
PIECE = {"width_m": "1.2", "height_m": "0.9"}
ROLL = {"width_m": "1.22", "length_m": "7.62"}


def wall(n: int) -> list[dict[str, Any]]:
    """Forty points of a wall, the last of them typed as far as its nth digit."""
    levels = [400 + 17 * (k % 9) + 31 * (k // 8) for k in range(39)] + [300 + n]
    return [
        {"across": (k % 8 + 0.5) / 8, "up": (k // 8 + 0.5) / 5, "illuminance_lx": str(level)}
        for k, level in enumerate(levels)
    ]


#: Twelve battens, each brightest at its own place.
BATTENS = [
    {
        "name": f"batten {j + 1}",
        "points": [
            18 / (0.3 + (k % 8 / 8 - j % 6 / 6) ** 2 + (k // 8 / 5 - j // 6) ** 2)
            for k in range(40)
        ],
    }
    for j in range(12)
]


#: A day of three windows, each with six readings: what the slider over the day asks.
DAY = {"lat_deg": 53.55, "lon_deg": 9.99, "date": "2026-06-21", "utc_offset_h": 2}
WINDOWS = [
    {
        "name": f"window {w + 1}",
        "gels": ["full CTO"],
        "facing_deg": 90 * w,
        "readings": [
            {**light(0, y=f"0.34{w}{k}", lamp="daylight"), "time": f"{9 + 2 * k}:00"}
            for k in range(6)
        ],
    }
    for w in range(3)
]


def golden(ask: str, case: int) -> dict[str, Any]:
    file = Path(__file__).parents[1] / "kernel" / "golden" / f"{ask}.json"
    request: dict[str, Any] = json.loads(file.read_text())[case]["request"]
    return request


def keystrokes(n: int) -> Iterator[tuple[str, dict[str, Any]]]:
    """Every kind of question asked while typing, with its nth digit, under a name."""
    typed = light(2, x=f"0.38{n:02d}")
    bare = {"x": f"0.43{n:02d}", "y": "0.4022"}
    yield "describe", {"ask": "describe", "reading": bare}
    yield "even, 40 points", {"ask": "even", "points": wall(n)}
    yield "trim, 12 lamps × 40 points", {"ask": "trim", "points": wall(n), "lamps": BATTENS}
    yield "fix", {"ask": "fix", "reading": typed, "target": WHITE}
    yield "fix, before and after", {"ask": "fix", "reading": typed, "target": bare, "depth": 1}
    yield "field", {"ask": "field", "lights": [typed], "packs": [["1/4 CTO"]], "target": WHITE}
    yield "levels", {"ask": "levels", "lights": [{"illuminance_lx": f"9{n:02d}"}], "camera": CAMERA}
    yield "judge 20 readings", {"ask": "judge", "readings": [{**typed, "target": WHITE}] * 20}
    yield "expose", {"ask": "expose", "known": {**CAMERA, "illuminance_lx": f"9{n:02d}"}}
    yield "falloff", {**golden("falloff", 0), "distance_m": f"2.{n:02d}"}
    yield "flicker", {"ask": "flicker", "fps": f"24.{n:02d}", "light_hz": 100}
    yield "mix of 12", {"ask": "mix", "lights": [{"reading": one, "dimmer": 50 + n} for one in SET]}
    yield "unmix", {**golden("unmix", 1), "sum": {**typed, "illuminance_lx": "800"}}
    yield "flash_mix", {**golden("flash_mix", 0), "flash": {**typed, "exposure_lx_s": "40"}}
    yield "dial", {**golden("dial", 0), "target": {"cct_K": f"43{n:02d}", "duv": "0"}}
    yield "drive", {**golden("drive", 0), "target": {"cct_K": f"43{n:02d}", "duv": "0"}}
    yield "learn_gel", {**golden("learn_gel", 1), "name": f"mine {n}"}
    yield "learn_gel, a shift", {**golden("learn_gel", 4), "shift": {"mired": f"1{n:02d}"}}
    yield "sun, polar day", {**golden("sun", 1), "lon_deg": f"18.{n:02d}"}
    yield "sun", {**golden("sun", 0), "lon_deg": f"9.{n:02d}"}
    yield "windows", {**golden("windows", 0), "windows": [{**PIECE, "width_m": f"2.{n:02d}"}]}
    hold = {"ask": "hold", "target": WHITE, "windows": WINDOWS, **DAY}
    yield "hold, 3 windows of 6 readings", {**hold, "time": f"14:{n}"}
    yield "order", {**golden("order", 0), "spare_percent": f"{n}"}
    yield "check of a size", {"ask": "order", "hangs": [], "rolls": [{**ROLL, "width_m": f"1.{n}"}]}


def presses(n: int) -> Iterator[tuple[str, dict[str, Any]]]:
    """What follows a press or a visit, not a keystroke, for a set of twelve lights."""
    target = {"cct_K": f"43{n:02d}", "duv": "0"}
    yield "agree, 12 lights", {"ask": "agree", "lights": SET, "target": target}
    yield "field, 12 lights", {"ask": "field", "lights": SET, "target": target}
    balance = {"ask": "balance", "lights": [{"reading": one} for one in SET], "stock": STOCK}
    yield "balance, 12 lights, 6 gels", {**balance, "whites": {"from_K": f"32{n:02d}"}}


RUN = """({requests, rounds}) => new Promise((resolve, reject) => {
    const worker = new Worker(borrowedPolicy.createScriptURL("./worker.js"));
    const times = [], answers = [];
    let at = 0, start;
    const send = () => {
        start = performance.now();
        worker.postMessage({id: 1, request: requests[at]});
    };
    worker.onmessage = ({data}) => {
        if (data.fatal) reject(new Error(data.fatal));
        if (data.stage === "ready") send();
        if (data.id !== 1) return;
        times.push(performance.now() - start);
        answers.push(data.answer.slice(0, 120));
        at += 1;
        if (at < requests.length) return send();
        worker.terminate();
        resolve({times, answers});
    };
})"""


def run() -> list[tuple[str, float | None, str]]:
    from conftest import BORROW_POLICY

    asked = [pair for n in range(10, 10 + ROUNDS) for pair in (*keystrokes(n), *presses(n))]
    with app_in_browser() as (browser, address, _):
        context = browser.new_context()
        context.add_init_script(BORROW_POLICY)
        # The page's own kernel would be measured with ours.
        page = context.new_page()
        page.goto(address)
        page.locator("html[data-kernel=ready]").wait_for(state="attached", timeout=60_000)
        requests = [json.dumps(request) for _, request in asked]
        found = page.evaluate(RUN, {"requests": requests, "rounds": ROUNDS})
    taken: dict[str, list[float]] = {}
    for (name, _), ms, answer in zip(asked, found["times"], found["answers"], strict=True):
        if answer.startswith('{"problem"'):
            raise RuntimeError(f"{name}: {answer}")
        taken.setdefault(name, []).append(ms)
    typed = [name for name, _ in keystrokes(10)]
    first = {name: times[0] for name, times in taken.items()}
    usual = {name: statistics.median(times[1:]) for name, times in taken.items()}
    yardstick = usual["describe"]
    rows: list[tuple[str, float | None, str]] = []
    for name, ms in usual.items():
        kind = "keystroke" if name in typed else "press"
        over = f", over {PROMISE_MS} ms" if kind == "keystroke" and ms > PROMISE_MS else ""
        detail = f"{ms:.1f} ms, the first {first[name]:.1f} ms{over}"
        rows.append((f"{kind}: {name}", ms / yardstick, detail))
    slow = sum(usual[name] > PROMISE_MS for name in typed)
    rows.append((f"kinds of keystroke over {PROMISE_MS} ms", float(slow), f"of {len(typed)}"))
    return rows
