"""The invented shoot is a sound book, and its lights are what such lamps could be."""

from __future__ import annotations

import json
from pathlib import Path

from evenkelvin.desk import answer

PATH = Path(__file__).parents[2] / "demo_readings" / "night_ferry.json"
TEXT = PATH.read_text("utf-8")
#: CCT in K and |Duv| that each kind of lamp plausibly has, gels off; common practice, no source.
PLAUSIBLE = {
    "daylight": (4500, 12_000, 0.006),
    "fluorescent": (2600, 6800, 0.012),
    "led": (2400, 7000, 0.006),
    "led rgb": (2000, 10_000, 0.02),
    "tungsten": (2500, 3450, 0.003),
    "hmi": (4800, 6500, 0.006),
    "sodium": (1900, 2300, 0.004),
}


def test_every_bare_light_is_plausible_for_its_lamp() -> None:
    """Common practice, no source."""
    production = next(
        each["of"] for each in json.loads(TEXT)["entries"] if each["thing"] == "production"
    )
    report = answer({"ask": "report", "book": TEXT, "of": production})
    readings = [
        (slip["lamp"], reading)
        for setup in report["setups"]
        for slip in setup["slips"]
        for reading in slip["readings"]
        if not reading["pack"]
    ]
    assert len(readings) > 15
    for lamp, reading in readings:
        low, high, duv = PLAUSIBLE[lamp]
        assert low <= reading["cct_K"] <= high, (lamp, reading)
        assert abs(reading["duv"]) <= duv, (lamp, reading)
