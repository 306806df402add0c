"""The report of a setup, a location or a production, as plain data to be printed.

``{"ask": "report", "book": text | plain, "of": id, "tolerance"?, "most"?}``
"""

from __future__ import annotations

from math import isfinite
from typing import Any

import numpy as np

from evenkelvin.book.entries import MOST_ENTRIES, book_hash, moment
from evenkelvin.book.given import book_field
from evenkelvin.book.logged import logged_position, logged_xy
from evenkelvin.book.report import Report, SetupReport, Slip, hangs, make_report
from evenkelvin.book.setup_log import ReadingLog
from evenkelvin.exposure.stops import ratio_words
from evenkelvin.fields import Fields
from evenkelvin.lights.meant import meant_words
from evenkelvin.replies.book import state_plain
from evenkelvin.replies.fix import offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.replies.seen import greys_by_eye
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Group, Many, Text, Whole

FIELDS: Group = {
    "book": Checked(), "of": Text(), **TOLERANCE, "most": Whole(1, 1000),
    "tell_apart": Many(Text()),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with what the report says; every list is in the order to print.

    - ``thing``, ``name``, ``path`` (names above it), ``note``, ``place``, ``mains_hz``
    - ``setups``: ``[{"id", "name", "path", "note", "hero", "first", "last"`` (times), ``"target"``
      (T or None), ``"target_words", "slips", "field", "spectra"}]``
      - ``slips``: ``[{"light", "name", "lamp", "role", "note", "hero", "readings", "hangs",
        "meant"`` (in words; None where it is the white itself or cannot be read), ``"target",
        "offset"`` (as ``fix`` answers), ``"verdict", "stops_to_hero", "ratio_words", "grey"}]``
        (what a grey card in it looks like at the white of the setup);
        ``readings``: ``[{"id", "stage", "at", "x", "y", "cct_K", "duv", "mired",
        "illuminance_lx", "exposure_lx_s",
        "pack", "dialled", "dimmer", "place", "position", "photo", "note", "who",
        "edited_twice", "has_spectrum"}]``
      - ``field``: the request that gives the balance field, or None where no white is known
      - ``spectra``: ``[{"name", "at", "wavelengths_nm", "values"}]`` as they were logged
      - with ``most``, setups after so many readings are only ``{"id", "name", "path",
        "readings"}`` (how many): each can be asked for by its id, so that a long book comes in
        parts
    - ``windows``: ``[{"id", "location", "gels", "lines"}]``, the glass of each location to be
      gelled, a line a size
    - ``gels``: ``[{"name", "pieces", "lights", "measured"}]`` that hang now; a measured gel is
      called by who measured it and when wherever its name alone could mean another:
      ``tell_apart`` holds those names, to be asked for with a part of the report
    - ``cautions``: sentences; ``tolerance``; ``book``: ``{"count", "sha256"}``
    """
    fields.refuse_unknown("ask", *FIELDS)
    radius = read_tolerance(fields)
    most = fields.whole("most", MOST_ENTRIES, 1, MOST_ENTRIES)
    book = book_field(fields)
    of, apart = fields.text("of", longest=64), fields.texts("tell_apart")
    report = make_report(book.entries, of, radius, apart)
    data = report.thing.present["data"]
    return {
        "thing": report.thing.kind,
        "name": report.thing.name,
        "path": list(report.path),
        "note": data.get("note"),
        "place": data.get("place"),
        "mains_hz": data.get("mains_hz"),
        "setups": _setups(report, most, fields.raw("tolerance")),
        "windows": [
            {
                "id": each.id,
                "location": each.name,
                "gels": list(each.gels),
                "lines": list(each.lines),
            }
            for each in report.windows
        ],
        "gels": [
            {
                "name": name,
                "pieces": len(lights),
                "lights": list(dict.fromkeys(lights)),
                "measured": name in report.measured,
            }
            for name, lights in report.gels.items()
        ],
        "tell_apart": report.names.several,
        "cautions": list(report.cautions),
        "tolerance": tolerance_plain(radius),
        "book": {"count": len(book.entries), "sha256": book_hash(book.entries)},
    }


def _setups(whole: Report, most: int, tolerance: Any) -> list[dict[str, Any]]:
    """Return whole setups until there are ``most`` readings, then what the others are called."""
    listed = []
    before = 0
    for each in whole.setups:
        readings = sum(len(slip.light.readings) for slip in each.slips)
        outline = {
            "id": each.log.thing.id,
            "name": each.log.thing.name,
            "path": list(each.path),
            "readings": readings,
        }
        listed.append(_setup(whole, each, tolerance) if before < most else outline)
        before += readings
    return listed


def _setup(whole: Report, report: SetupReport, tolerance: Any) -> dict[str, Any]:
    thing = report.log.thing
    hero = report.log.hero.thing.id if report.log.hero else None
    times = sorted((each.at for slip in report.slips for each in slip.light.readings), key=moment)
    field: dict[str, Any] | None = None
    if report.white is not None:
        lights = [
            {
                "x": float(slip.light.now.state.xy[0]),
                "y": float(slip.light.now.state.xy[1]),
                "name": slip.light.thing.name,
                "lamp": slip.light.lamp,
                **(slip.aim.asked if slip.aim.usable else {}),
            }
            for slip in report.slips
            if slip.light.now is not None
        ]
        field = {"ask": "field", "target": report.white.target, "lights": lights}
        if tolerance is not None:
            field["tolerance"] = tolerance
    return {
        "id": thing.id,
        "name": thing.name,
        "path": list(report.path),
        "note": thing.present["data"].get("note"),
        "hero": hero,
        "first": times[0] if times else None,
        "last": times[-1] if times else None,
        "target": report.white.target if report.white else None,
        "target_words": report.white.words if report.white else Said("no white was kept"),
        "slips": [
            _slip(whole, slip, hero, grey)
            for slip, grey in zip(report.slips, _greys(report), strict=True)
        ],
        "field": field,
        "spectra": [
            {"name": slip.light.thing.name, "at": each.at, **each.data["spectrum"]}
            for slip in report.slips
            for each in slip.light.readings
            if each.data.get("spectrum") and each.has_colour
        ],
    }


def _greys(report: SetupReport) -> list[dict[str, Any] | None]:
    unknown = np.full(2, np.nan)
    white_xy = logged_xy([report.white.target])[0] if report.white else unknown
    lights = [each.light.now.state.xy if each.light.now else unknown for each in report.slips]
    return greys_by_eye(np.reshape(lights, (-1, 2)), np.tile(white_xy, (len(lights), 1)))


def _slip(
    whole: Report, slip: Slip, hero: str | None, grey: dict[str, Any] | None
) -> dict[str, Any]:
    data = slip.light.thing.present["data"]
    return {
        "light": slip.light.thing.id,
        "name": slip.light.thing.name,
        "lamp": slip.light.lamp,
        "role": data.get("role"),
        "note": data.get("note"),
        "hero": slip.light.thing.id == hero,
        "readings": [_reading(whole, each) for each in slip.light.readings],
        "hangs": list(slip.hangs),
        "meant": None
        if slip.aim.meant is None or slip.aim.meant.way == "white"
        else meant_words(slip.aim.meant),
        "target": None if slip.aim.target is None else white(slip.aim.target.xy),
        "offset": None
        if slip.offset is None or slip.aim.meant is None
        else offset_plain(slip.offset, slip.aim.meant.way == "white"),
        "verdict": slip.verdict,
        "stops_to_hero": slip.stops_to_hero,
        "ratio_words": None if slip.stops_to_hero is None else ratio_words(slip.stops_to_hero),
        "grey": grey,
    }


def _reading(whole: Report, log: ReadingLog) -> dict[str, Any]:
    return {
        "id": log.entry["id"],
        "stage": log.data.get("stage"),
        "at": log.at,
        **state_plain(log.state),
        "pack": list(hangs(log, whole.names)),
        "dialled": log.data.get("dialled"),
        "dimmer": log.data.get("dimmer"),
        "place": log.data.get("place"),
        "position": log.data.get("position") if isfinite(logged_position(log.data)[0]) else None,
        "photo": log.data.get("photo"),
        "note": log.data.get("note"),
        "who": log.entry.get("who"),
        "edited_twice": log.edited_twice,
        "has_spectrum": bool(log.data.get("spectrum")),
    }
