"""A book that holds every kind of thing and every field, under names that are hard to show.

Invented. To extend it, add the field to the thing that bears it; `kernel/test_complete_book.py`
says which fields of the book's format are still missing here.
"""

from __future__ import annotations

import base64
from typing import Any

Plain = dict[str, Any]

PRODUCTION, HALL, DECK, SETUP, PICK_UP = "prod", "hall", "deck", "setup", "pickup"
KEY, PANEL, FLASH, WINDOW, TORN = "key", "panel", "flash", "window", "torn"

#: A file name as meters make them, with nothing to break at.
UNBROKEN = "2026_10_28_20_36_00_tickethall_ledpanel2_measurement_0007_averaged_of_9x"
#: RIGHT-TO-LEFT OVERRIDE, which turns round whatever follows it where it is not isolated.
OVERRIDE = "panel \u202ered nac uoy siht"
ARABIC = "لوحة LED 2 (يسار)"
NAMES = [UNBROKEN, OVERRIDE, ARABIC, "'key' & \"fill\" <b>2</b>", "Norden", "Panel 1.5", "red"]

#: The smallest picture that there is: one grey pixel, as PNG.
PHOTO = "data:image/png;base64," + base64.b64encode(
    bytes.fromhex(
        "89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b55"
        "0000000a49444154789c6368000000820081dd436af40000000049454e44ae426082"
    )
).decode("ascii")

POSITION = {"latitude": 54.00021, "longitude": 8.50043, "accuracy_m": 12}
NM = list(range(380, 781, 10))
SPECTRUM = {"wavelengths_nm": NM, "values": [round(0.2 + (n - 380) / 500, 4) for n in NM]}
GEL_CURVE = [round(0.35 + (n - 380) / 800, 4) for n in NM]
WHITE = {"cct_K": "3200", "duv": "0"}
SPECTRUM_WHITE = {"spectrum": SPECTRUM, "name": UNBROKEN}


def _entry(thing: str, id_: str, parent: str | None, minute: int, **data: Any) -> Plain:
    return {
        "id": id_, "at": f"2026-10-28T{20 + minute // 60:02d}:{minute % 60:02d}:00.000+01:00",
        "thing": thing, "of": id_, "parent": parent, "after": [], "data": data, "who": UNBROKEN,
    }  # fmt: skip


def _edit(entry: Plain, id_: str, minute: int, **data: Any) -> Plain:
    again = _entry(entry["thing"], id_, entry["parent"], minute, **{**entry["data"], **data})
    return {**again, "of": entry["of"], "after": [entry["id"]]}


def entries() -> list[Plain]:
    """Return the entries of the book."""
    gel = _entry(
        "gel", "gel", None, 0, name=UNBROKEN[:60], wavelengths_nm=NM, transmittance=GEL_CURVE,
        reference_K=3200, mired=41, duv=0.0004, stops=0.6, source=ARABIC,
        unknown={"from_nm": 380, "to_nm": 390},
    )  # fmt: skip
    hung = {"pack": ["1/4 CTO", UNBROKEN[:60]], "gel_ids": [None, "gel"]}
    window = {
        "name": OVERRIDE, "width_m": "2.4", "height_m": "1.8", "count": "4", "panes_across": "2",
        "panes_down": "1", "facing_deg": "NW", "horizon_deg": "7", "light": WINDOW,
        "gels": hung["pack"], "gel_ids": hung["gel_ids"],
    }  # fmt: skip
    in_feet = {"name": UNBROKEN, "width_ft": "4' 6\"", "height_ft": "3"}
    lands = {"x": 0.4231, "y": 0.3992, "cct_K": 3205, "duv": 0.0003}
    found = [
        _entry("production", PRODUCTION, None, 0, name=OVERRIDE, note=ARABIC, photo=PHOTO),
        _entry(
            "location", HALL, PRODUCTION, 1, name=UNBROKEN, place=UNBROKEN, mains_hz="50",
            lat_deg="54.0", lon_deg="8.5", utc_offset_h="1", facing_deg="350", horizon_deg="5",
            horizon=[{"azimuth_deg": "NE", "altitude_deg": "12,5"}],
            windows=[window, in_feet], window_gels=hung["pack"], window_gel_ids=hung["gel_ids"],
            note=UNBROKEN, photo=PHOTO,
        ),
        _entry("location", DECK, PRODUCTION, 2, name=ARABIC),
        _entry(
            "setup", SETUP, HALL, 3, name=UNBROKEN, hero=KEY, key=PANEL, target=WHITE,
            note=OVERRIDE, photo=PHOTO, plan={
                "at": "2026-10-28T20:30:00.000+01:00", "white": WHITE, "words": "2 pieces",
                "exact": True, "at_least_stops": 1.0, "stops_lost": 1.2, "pieces": 2,
                "off": [TORN], "reached": {
                    "by": "balance", "whites": [WHITE], "tolerance": "normal",
                    "stock": [{"gel": "1/4 CTO", "count": "3"}], "kit": None,
                },
            },
            findings=[
                {"at": "2026-10-28T20:40:00.000+01:00", "by": by, "words": f"{by}: {UNBROKEN}",
                 "from": {"lights": [KEY, PANEL]}, "beside": None, "found": {"cct_K": 3900}}
                for by in ("mix", "unmix", "flash", "drive")
            ],
        ),
        _entry("setup", PICK_UP, DECK, 90, name=ARABIC, pickup_of=SETUP, target=SPECTRUM_WHITE),
        _entry(
            "light", KEY, SETUP, 4, name=UNBROKEN, lamp="tungsten", order=1, role=OVERRIDE,
            note=ARABIC, photo=PHOTO, gel_width_m="0.6", gel_height_m="0.6", cuts="2",
            may=["gel", "dim"], meant={"warmer_mired": "20", "duv": "0.001"},
        ),
        _entry(
            "light", PANEL, SETUP, 5, name=OVERRIDE, lamp="led", gel_width_ft="2",
            gel_height_ft="2' 6\"", fixture=ARABIC, may=["dial"],
            meant={"as_through": hung["pack"], "gel_ids": hung["gel_ids"]}, planned={
                "does": "dial", "words": "dial x 0.4231 y 0.3992", "gels": hung["pack"],
                "gel_ids": hung["gel_ids"], "dial": {"x": 0.4231, "y": 0.3992, "cct_K": 3205},
                "lands": lands, "steps": 0.8, "verdict": "holds", "stops_lost": 0.4,
                "from": "panel-2",
            },
        ),
        _entry(
            "light", FLASH, SETUP, 6, name='\'key\' & "fill" <b>2</b>', lamp="flash",
            meant={"like": KEY},
        ),
        _entry("light", WINDOW, SETUP, 7, name=ARABIC, lamp="daylight", meant={"as": "white"}),
        _entry(
            "light", TORN, SETUP, 8, name="Panel 1.5", lamp="unknown",
            meant={"x": "0.4512", "y": "0.4080"},
        ),
        _entry("light", "key-again", PICK_UP, 91, name=UNBROKEN, lamp="tungsten", pickup_of=KEY),
        _entry("light", "unread", PICK_UP, 92, name="red", lamp="led", meant={"cct_K": "2700"}),
        _entry("light", "blue", PICK_UP, 92, name="blue", lamp="led", meant={"cooler_mired": "60"}),
        _entry("light", "sodium", PICK_UP, 93, name="spill", lamp="sodium", meant={"as": "found"}),
        gel,
        _entry("kit", "kit", None, 1, name=UNBROKEN, gels=["1/4 CTO", OVERRIDE], pieces=["3", ""]),
        _entry(
            "reading", "key-1", KEY, 10, stage="bare", x="0.4476", y="0.4075", lamp="tungsten",
            illuminance_lx="941", target=WHITE, pack=[], place=UNBROKEN, position=POSITION,
            photo=PHOTO, note=f"{UNBROKEN}\nsecond line, \"quoted\"; and more\n=1+1",
            dimmer="70 %", dialled="3200 K on its display",
        ),
        _entry(
            "reading", "key-2", KEY, 11, stage="gelled", cct_K="3900", duv="0.0021",
            lamp="tungsten", illuminance_fc="62", target={"x": "0.4231", "y": "0.3992"},
            dimmed={"from": "key-1", "percent_light": 62.5}, **hung,
        ),
        _entry(
            "reading", "key-3", KEY, 12, stage="re-checked", spectrum=SPECTRUM, lamp="tungsten",
            file=UNBROKEN + ".csv", target=WHITE, follows="key-2", **hung,
        ),
        _entry(
            "reading", "panel-1", PANEL, 13, stage="re-checked", x="0.4229", y="0.3986",
            illuminance_lx="72", lamp="led", pack=[], target=WHITE,
            dialled={"x": "0.4238", "y": "0.3998"},
            position={"latitude": 54.0, "longitude": 8.5},
        ),
        _entry(
            "reading", "panel-2", PANEL, 14, stage="re-checked", x="0.4233", y="0.3991",
            illuminance_lx="70", ra="92", r9="55", rf="90", rg="101", ssi="78", lamp="led",
            pack=[], target={**WHITE, "name": ARABIC},
            dialled={"cct_K": "3210", "duv": "-0.001"}, dimmer="100 %",
        ),
        _entry(
            "reading", "flash-1", FLASH, 15, stage="bare", x="0.3321", y="0.3474",
            exposure_lx_s="31", lamp="flash", pack=[], target=WHITE,
        ),
        _entry(
            "reading", "window-1", WINDOW, 16, stage="bare", cct_K="7200", lamp="daylight",
            illuminance_lx="640", pack=[],
        ),
        # As meters of other forms give them.
        _entry(
            "reading", "window-3", WINDOW, 24, stage="bare", cct_mired="139", tint_cc="2.5",
            tint_says="filter", lamp="daylight", illuminance_lx="610", pack=[],
        ),
        _entry(
            "reading", "flash-3", FLASH, 25, stage="bare", cct_K="5610", tint_cuts="1/8",
            tint_says="light", flash_f_number="5.6", flash_iso="100", flash_receptor="dome",
            flash_constant="330", lamp="flash", pack=[], target=WHITE,
        ),
        _entry(
            "kit", "hall-kit", None, 26, name="hall truck", gels=["full CTO", "1/4 CTO"],
            pieces=["2", ""],
        ),
        # A level without a colour: the meter was read in the dark.
        _entry("reading", "torn-1", TORN, 17, stage="bare", illuminance_lx="3", lamp="unknown"),
        _entry(
            "reading", "again-1", "key-again", 93, stage="bare", x="0.4492", y="0.4081",
            lamp="tungsten", illuminance_lx="930", target=WHITE, pack=[],
        ),
        _entry(
            "surface", "screen", SETUP, 30, name=UNBROKEN, width_m="4", width_ft="13' 1\"",
            height_m="3", height_ft="10", columns=2, rows=1, note=ARABIC, photo=PHOTO,
            points=[
                {"across": 0.25, "up": 0.5, "x": "0.2912", "y": "0.5804", "illuminance_lx": "412"},
                {"across": 0.75, "up": 0.5, "illuminance_fc": "48"},
            ],
            lamps=[
                {"name": OVERRIDE, "points": ["300", "120"], "dimmer_now": "80"},
                {"name": ARABIC, "without": ["290", "110"]},
            ],
            again=["398", ""], aim={"point": 0, "illuminance_lx": "400", "illuminance_fc": "37"},
        ),
        _entry("light", "lost", SETUP, 18, name="deleted light", lamp="led"),
        {**_entry("light", "lost-2", SETUP, 19, name="deleted light"), "of": "lost",
         "after": ["lost"], "gone": True},
    ]  # fmt: skip
    known = {each["id"]: each for each in found}
    # Edited one after the other, and edited in two places.
    found.append(_edit(known["window-1"], "window-2", 20, note="mended"))
    found.append(_edit(known["torn-1"], "torn-2", 21, note="read on one phone"))
    found.append(_edit(known["torn-1"], "torn-3", 22, note="read on the other"))
    found.append({**_edit(known["flash-1"], "flash-2", 23), "twin": "flash-1"})
    return found


def book(**settings: Any) -> Plain:
    """Return the book as a file holds it, with the settings that it opens with."""
    return {
        "format": "evenkelvin-book", "version": 2, "entries": entries(),
        "settings": {"here": SETUP, "white": WHITE, "tolerance": "normal", **settings},
    }  # fmt: skip
