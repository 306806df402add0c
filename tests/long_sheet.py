"""A book that fills several sheets of paper: long names, many lights, notes of several lines.

Of our own scenario. Its readings have other lengths from light to light, so that every kind of
thing comes to stand at the foot of some page.
"""

from __future__ import annotations

from typing import Any

Plain = dict[str, Any]

PRODUCTION, HALL = "prod", "hall"
SETUPS = ("queue", "sailing")
NAMES = (
    "Key through the north windows above the ticket counter", "Fill", "Batten 1 over the queue",
    "Batten 2 over the queue, flickers when the ventilation starts", "Practical on the counter",
    "Panel behind the glass door to the car deck", "Sodium spill from the ramp", "Edge",
    "Back light on the balcony", "Clock", "Timetable, lit from inside", "Stairwell",
    "Bounce off the ceiling between the second and the third beam", "Vending machine",
)  # fmt: skip
NOTE = "Rigged to the second beam.\nThe house electrician has the key.\nRead at head height."


def _entry(thing: str, id_: str, parent: str | None, minute: int, **data: Any) -> Plain:
    return {
        "id": id_, "at": f"2026-10-28T{12 + minute // 60:02d}:{minute % 60:02d}:00.000+01:00",
        "thing": thing, "of": id_, "parent": parent, "after": [], "data": data, "who": "gaffer",
    }  # fmt: skip


def _reading(light: int, number: int) -> Plain:
    """Return the nth reading of a light; every third bears a gel and a note."""
    warm = 0.37 + 0.004 * light + 0.0007 * number
    bare = {
        "x": f"{warm:.4f}", "y": f"{warm - 0.002:.4f}", "illuminance_lx": str(900 - 31 * light),
        "lamp": "led", "stage": "bare", "pack": [],
    }  # fmt: skip
    if number % 3 == 2:
        return {**bare, "stage": "gelled", "pack": ["1/4 CTO", "1/8 plus green"], "note": NOTE}
    return bare


def entries(lights: int = len(NAMES)) -> list[Plain]:
    """Return the entries of the book, with so many lights in each of its two setups."""
    white = {"cct_K": "3200", "duv": "0"}
    windows = [
        {"name": f"{NAMES[n % len(NAMES)]}, pane {n + 1}", "width_m": "2.4", "height_m": "1.8",
         "count": "4", "panes_across": "2", "panes_down": "1", "facing_deg": str(30 * n),
         "gels": ["full CTO", "ND 0.6"]}
        for n in range(9)
    ]  # fmt: skip
    found = [
        _entry("production", PRODUCTION, None, 0, name="The Night Ferry"),
        _entry(
            "location", HALL, PRODUCTION, 1, name="Ticket hall of the disused ferry terminal",
            place="Pier 4", mains_hz="50", lat_deg="54.0", lon_deg="8.5", utc_offset_h="1",
            windows=windows, window_gels=["full CTO"], note=NOTE,
        ),
    ]  # fmt: skip
    for at, setup in enumerate(SETUPS):
        found.append(
            _entry("setup", setup, HALL, 2 + at, name=f"{at + 1} {setup}", target=white, note=NOTE)
        )
        for n in range(lights):
            light = f"{setup}-{n}"
            note = {"note": NOTE} if n % 4 == 3 else {}
            found.append(
                _entry("light", light, setup, 5 + n, name=NAMES[n], lamp="led", order=n, **note)
            )
            found += [
                _entry("reading", f"{light}-{r}", light, 30 + 9 * r + n, target=white,
                       **_reading(n, r))
                for r in range(1 + (5 * n + at) % 9)
            ]  # fmt: skip
    return found


def book(lights: int = len(NAMES)) -> Plain:
    """Return the book as a file holds it."""
    return {
        "format": "evenkelvin-book", "version": 2, "entries": entries(lights),
        "settings": {"here": SETUPS[0], "white": {"cct_K": "3200", "duv": "0"},
                     "tolerance": "normal"},
    }  # fmt: skip
