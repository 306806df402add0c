"""An hour of typing and a book of 20 000 readings: the tab stays as small as it was.

`build.py bench` measures the same at full length.
"""

from __future__ import annotations

from conftest import Site, wait_for_kernel
from endurance import Gauge, ids_of_the_long_book, tour, type_for_long
from long_book import fill_with_readings
from playwright.sync_api import Page

#: What may come and go between two readings of the gauge: compiled code, caches of the browser.
#: One of the long book's places that stayed behind would hold 1000 nodes and more.
SLACK_MB, SLACK_NODES, SLACK_LISTENERS = 2.0, 400, 40
#: A phone lays out so many elements without a pause; a place that lists all readings has 100 000.
MOST_ELEMENTS = 4000


def test_typing_for_long_leaves_nothing_behind(app: Page) -> None:
    gauge = Gauge(app)
    type_for_long(app, first=0, strokes=400)
    before = gauge.read()
    type_for_long(app, first=100, strokes=400)
    after = gauge.read()
    assert after.heap_mb < before.heap_mb + SLACK_MB
    assert after.nodes < before.nodes + SLACK_NODES
    assert after.listeners < before.listeners + SLACK_LISTENERS


def test_going_through_a_long_book_leaves_nothing_behind(page: Page, site: Site) -> None:
    page.goto(site.url)
    fill_with_readings(page)
    page.reload()
    wait_for_kernel(page)
    ids = ids_of_the_long_book(page)
    gauge = Gauge(page)
    seen = tour(page, ids)
    # Verdicts and patches of 20 000 readings are remembered as they are seen, up to some 3 MB.
    tour(page, ids)
    before = gauge.read()
    assert {place: n for place, n in seen.items() if n > MOST_ELEMENTS} == {}
    tour(page, ids)
    after = gauge.read()
    assert after.heap_mb < before.heap_mb + SLACK_MB
    assert after.nodes < before.nodes + SLACK_NODES
    assert after.listeners < before.listeners + SLACK_LISTENERS
