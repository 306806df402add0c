"""What a screen with pictures costs: Set with 12 lights, and a slider of Mix with its ribbon.

Times are taken in the page itself: of the kernel, from the question to its answer; of drawing, from
the answer to the frame that shows it. The ratios are to what is promised.
"""

from __future__ import annotations

import sys
from pathlib import Path

from app_browser import app_in_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

LIGHTS = 12
MOVES = 12
DRAWN_MS, MOVE_MS = 100, 50

#: Notes when each answer came and when it was drawn.
CLOCK = """{
    const Plain = Worker;
    window.answered = [];
    window.Worker = class extends Plain {
        constructor(...given) {
            super(...given);
            this.addEventListener("message", ({data}) => {
                if (!data.id) return;
                const came = performance.now();
                const kernel = came - this.asked;
                requestAnimationFrame(() => setTimeout(() =>
                    answered.push({kernel, drawn: performance.now() - came})));
            });
        }
        postMessage(...given) {
            this.asked = performance.now();
            super.postMessage(...given);
        }
    };
}"""


def run() -> list[tuple[str, float | None, str]]:
    from conftest import wait_for_kernel
    from hands import go, keep_light

    with app_in_browser() as (browser, address, _):
        page = browser.new_page(viewport={"width": 390, "height": 844})
        page.add_init_script(CLOCK)
        page.goto(address)
        wait_for_kernel(page)
        for n in range(LIGHTS):
            x, y = 0.3300 + 0.0093 * n, 0.3420 + 0.0051 * n
            keep_light(page, f"light {n + 1}", f"{x:.4f}", f"{y:.4f}")
        page.wait_for_timeout(1000)
        page.evaluate("answered.length = 0")
        go(page, "Set")
        page.locator("ek-set .strip .notch").nth(LIGHTS - 1).wait_for()
        page.get_by_role("img", name="Balance field").wait_for()
        page.wait_for_timeout(500)
        drawn = max(one["drawn"] for one in page.evaluate("answered"))
        page.evaluate("location.hash = 'mix'")
        page.get_by_role("button", name="zone beside").click()
        page.locator("ek-mix input[type=checkbox]").nth(1).uncheck()
        page.locator("ek-ribbon svg").wait_for()
        page.wait_for_timeout(1000)
        slider = page.locator("ek-mix input[type=range]").first
        kernel: list[float] = []
        frames: list[float] = []
        for move in range(MOVES):
            page.evaluate("answered.length = 0")
            slider.fill(str(round(-1 + move / 5, 1)))
            page.wait_for_timeout(600)
            answers = page.evaluate("answered")
            kernel.append(answers[0]["kernel"])
            frames += [one["drawn"] for one in answers]
        middle = sorted(kernel)[MOVES // 2]
    return [
        (
            f"Set with {LIGHTS} lights drawn, of {DRAWN_MS} ms",
            drawn / DRAWN_MS,
            f"{drawn:.0f} ms from an answer to its frame, at worst",
        ),
        (
            f"a slider of Mix with the ribbon, of {MOVE_MS} ms",
            middle / MOVE_MS,
            f"{middle:.0f} ms of kernel, drawn {max(frames):.0f} ms later at worst",
        ),
    ]
