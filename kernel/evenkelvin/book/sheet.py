"""The book as a table for spreadsheets: a reading a row, of a surface a point a row (RFC 4180)."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Mapping
from typing import Any

from evenkelvin.book.entries import Entry, moment
from evenkelvin.book.gel_names import GelNames
from evenkelvin.book.logged import amount, light_amounts, logged_cct, logged_position, logged_xy
from evenkelvin.book.meaning import Thing, above, taken_at, things
from evenkelvin.book.meant import Aims
from evenkelvin.interchange.csv_text import Figure, as_csv
from evenkelvin.lights.meant import meant_words

#: Separator between cells and decimal sign, by the convention of the place.
STYLES: dict[str, tuple[str, str]] = {"comma": (",", "."), "semicolon": (";", ",")}
COLUMNS = (
    "date", "time", "zone", "production", "location", "setup", "light", "lamp", "stage",
    "x", "y", "CCT (K)", "Duv", "Ra", "R9", "Rf", "Rg", "SSI",
    "illuminance (lx)", "exposure (lx s)",
    "gels", "dialled", "dimmer", "target", "meant", "place", "latitude", "longitude",
    "note", "by", "edited in two places", "id",
)  # fmt: skip
#: A byte order mark, without which some spreadsheets misread everything beyond ASCII.
_MARK = "\ufeff"


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, dict):
        return ", ".join(f"{name} {_text(item)}" for name, item in value.items())
    if isinstance(value, list):
        return ", ".join(map(_text, value))
    return str(value)


def _meant(light: Thing | None, aims: Aims) -> str:
    """Return what a light is meant to be, in words; nothing where it is the white itself."""
    if light is None or not light.present["data"].get("meant"):
        return ""
    meant = aims.of(light, None).meant
    return _text(light.present["data"]["meant"]) if meant is None else meant_words(meant)


def write_csv(entries: Iterable[Entry], style: str = "comma") -> str:
    """Return every reading that was not deleted as CSV, the oldest first.

    Numbers that were logged as a CCT or a spectrum also get their x y, and the other way round.
    Text cells that a spreadsheet could run are defused; numbers are only ever written by the
    kernel, so a negative Duv stays a number.

    Parameters
    ----------
    entries
        Of a checked book.
    style
        A name of :data:`STYLES`: "comma" with decimal points, "semicolon" with decimal commas.
    """
    separator, decimal = STYLES[style]
    found = things(entries)
    rows: list[tuple[Thing, Entry]] = [
        (thing, head)
        for thing in found["reading"].values()
        for head in thing.heads
        if not head.get("gone", False)
    ]
    rows.sort(key=lambda row: (moment(taken_at(row[1])), row[1]["id"]))
    gels = GelNames(found)
    gels.learn((head["data"].get("pack"), head["data"].get("gel_ids")) for _, head in rows)
    aims = Aims(found)
    xys = logged_xy([head["data"] for _, head in rows])
    whites = logged_cct(xys)

    def number(value: float, shape: str) -> Figure:
        if not math.isfinite(value):
            return Figure("")
        # z: a rounded −0 is 0.
        return Figure(format(value, f"z{shape}").replace(".", decimal))

    table: list[list[str]] = [list(COLUMNS)]
    for (thing, head), xy, white in zip(rows, xys, whites, strict=True):
        data = head["data"]
        over = {each.kind: each for each in above(found, thing)}
        names = [over[k].name if k in over else "" for k in ("production", "location", "setup")]
        lamp = data.get("lamp") or (over["light"].present["data"].get("lamp") if over else "")
        lux, flash = light_amounts(data)
        stamp = re.fullmatch(r"(.{10})T(.{8})[.\d]*(Z|.{6})", taken_at(head))
        date, time, zone = stamp.groups() if stamp else (taken_at(head), "", "")
        table.append(
            [
                date,
                time,
                f"UTC{zone}" if zone != "Z" else "UTC",
                *names,
                over["light"].name if "light" in over else "",
                _text(lamp),
                _text(data.get("stage")),
                number(xy[0], ".4f"),
                number(xy[1], ".4f"),
                number(white[0], ".0f"),
                number(white[1], ".4f"),
                *(number(amount(data, name), ".6g") for name in ("ra", "r9", "rf", "rg", "ssi")),
                number(lux, ".6g"),
                number(flash, ".6g"),
                " + ".join(gels.called(data.get("pack"), data.get("gel_ids"))),
                _text(data.get("dialled")),
                _text(data.get("dimmer")),
                _text(data.get("target")),
                _meant(over.get("light"), aims),
                _text(data.get("place")),
                *(number(degrees, ".5f") for degrees in logged_position(data)),
                _text(data.get("note")),
                _text(head.get("who")),
                "yes" if thing.heads[1:] else "",
                head["id"],
            ]
        )
    return _MARK + as_csv(table, separator)


def write_surface_csv(surface: Thing, style: str = "comma") -> tuple[list[str], str]:
    """Return the columns and the text of a surface as CSV, a point a row: where it is, its level,
    what each lamp gave, and what was read again.

    ``style`` is a name of :data:`STYLES`.
    """
    separator, decimal = STYLES[style]
    data = surface.present["data"]

    def number(group: Mapping[str, Any], name: str) -> Figure:
        value = amount(group, name)
        return Figure(f"{value:.6g}".replace(".", decimal) if math.isfinite(value) else "")

    lamps = data.get("lamps") or []
    columns = [lamp.get("without") or lamp.get("points") or [] for lamp in lamps]
    columns.append(data.get("again") or [])
    fields = ("across", "up", "x", "y", "illuminance_lx", "illuminance_fc")
    head = ["point", "across", "up", "x", "y", "illuminance (lx)", "illuminance (fc)"]
    for lamp in lamps:
        way = "without" if lamp.get("without") else "alone"
        head.append(f"{_text(lamp.get('name'))} ({way})")
    table: list[list[str]] = [[*head, "again"]]
    for index, point in enumerate(data.get("points") or []):
        levels = [column[index] if index < len(column) else None for column in columns]
        table.append(
            [
                Figure(str(index + 1)),
                *(number(point, name) for name in fields),
                *(number({"level": level}, "level") for level in levels),
            ]
        )
    return table[0], _MARK + as_csv(table, separator)
