"""The command line: arguments in, text out. Files and streams are `__main__`'s business.

Lights are put to the desk, so that a script and a phone give the same numbers.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from evenkelvin.cli.arguments import make_parser
from evenkelvin.cli.outcome import LEFT_OUT, Noted, Outcome, Read
from evenkelvin.problem import Problem

__all__ = ["Outcome", "complaint", "run"]


def run(arguments: Sequence[str], read: Read) -> Outcome:
    """Run one command.

    Raises
    ------
    Problem
        When it cannot be answered as it stands.
    OSError
        When a file cannot be read.
    SystemExit
        From argparse, for wrong arguments and for --help.
    """
    options = make_parser().parse_args(list(arguments))
    options.noted = Noted()
    outcome: Outcome = options.command(options, read)
    outcome.notes = options.noted.notes
    outcome.code = outcome.code or (LEFT_OUT if options.noted.left_out else 0)
    if outcome.text and not outcome.text.endswith("\n"):
        outcome.text += "\n"
    return outcome


#: What a field of the desk's is called on the command line; the longest path that fits wins.
_OPTIONS = {
    "meant": "--meant",
    "target": "--target or --match",
    "target.cct_K": "--target",
    "target.duv": "--target-duv",
    "target.x": "--match",
    "target.y": "--match",
    "white": "--white",
    "whites.from_K": "--from",
    "whites.to_K": "--to",
    "stock": "--stock",
    "tolerance": "--tolerance",
    "kit": "--kit",
    "depth": "--depth",
    "hero": "--hero",
    "reading.x": "X",
    "reading.y": "Y",
    "reading.cct_K": "--cct",
    "reading.duv": "--duv",
    "reading.illuminance_lx": "--lux",
    "reading.lamp": "--lamp",
    "reading.pack": "--on",
    "sum.x": "X",
    "sum.y": "Y",
    "sum.cct_K": "--cct",
    "sum.duv": "--duv",
    "sum.illuminance_lx": "--lux",
    "to.cct_K": "--to",
    "percent_light": "--percent",
    "percent_volts": "--volts",
    "stops": "--stops",
    "range": "--range",
    "history": "--tried",
    "known.illuminance_lx": "--lux",
    "known.illuminance_fc": "--fc",
    "known.exposure_lx_s": "--flash",
    "known.bursts": "--bursts",
    "known.iso": "--iso",
    "known.fps": "--fps",
    "known.shutter_deg": "--shutter",
    "known.time_s": "--time",
    "known.f_number": "--stop",
    "known.t_number": "--t-stop",
    "known.filter_stops": "--nd",
    "known.lens_stops": "--lens",
    "fps": "--fps",
    "shutter_deg": "--shutter",
    "time_s": "--time",
    "time": "--at",
    "windows.readings": "FILE",
    "windows.gels": "--gel",
    "windows.facing_deg": "--facing",
    "windows.horizon_deg": "--horizon",
    "sky": "--sky",
    "most": "--most",
    "mains_hz": "--mains",
    "light_hz": "--pulses",
    "modulation_percent": "--modulation",
    "windows": "PANE",
    "rolls": "--roll",
    "gels": "--gel",
    "overlap_m": "--overlap",
    "overlap_ft": "--overlap",
    "points": "POINT",
    "within_stops": "--within",
    "lat_deg": "LAT",
    "lon_deg": "LON",
    "date": "--date",
    "utc_offset_h": "--utc",
    "facing_deg": "--facing",
    "horizon_deg": "--horizon",
    "illuminance_lx": "--lux",
    "illuminance_fc": "--fc",
    "distance_m": "--distance",
    "distance_ft": "--distance",
    "at_m": "--at",
    "at_ft": "--at",
    "wanted_lx": "--wanted",
    "wanted_fc": "--wanted",
    "lose_stops": "--lose",
    "source_m": "--source",
    "source_ft": "--source",
}


def complaint(problem: Problem) -> str:
    """Return a problem as a line of text, the option named where one is at fault."""
    place = f" (line {problem.line})" if problem.line is not None else ""
    option = _option(problem.field)
    return f"{option}: {problem.message}{place}" if option else f"{problem.message}{place}"


def _option(field: str) -> str:
    """Return the option that a field of the question came from, or the field itself."""
    path = re.sub(r"\.\d+(?=\.|$)", "", field)
    while path:
        if path in _OPTIONS:
            return _OPTIONS[path]
        path = path.rpartition(".")[0]
    return field
