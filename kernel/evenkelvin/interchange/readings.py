"""Chromaticities, CCT and illuminance in a table that holds no spectrum."""

from __future__ import annotations

import re

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_xy
from evenkelvin.interchange.contents import Contents
from evenkelvin.interchange.layout import Row
from evenkelvin.problem import Problem

_FIELDS = (
    ("x", re.compile(r"(cie\s*)?(1931\s*)?(chromaticity\s*)?x(\s*(cie\s*)?1931)?")),
    ("y", re.compile(r"(cie\s*)?(1931\s*)?(chromaticity\s*)?y(\s*(cie\s*)?1931)?")),
    ("u_prime", re.compile(r"(cie\s*)?(1976\s*)?u\s*['′’](\s*1976)?")),
    ("v_prime", re.compile(r"(cie\s*)?(1976\s*)?v\s*['′’](\s*1976)?")),
    ("duv", re.compile(r"(duv|d_uv|δuv|delta\s*uv)")),
    ("illuminance_lx", re.compile(
        r"(lux|lx|e?v?|illuminance|beleuchtungsstärke|éclairement|iluminancia|illuminamento|照度)"
    )),
    ("cct_K", re.compile(
        r"(cct|tcp|tn|kelvin|(correlated\s*)?colou?r\s*temp(erature)?|(ähnlichste\s*)?"
        r"farbtemperatur|température\s*de\s*couleur|temperatura\s*(de|di)\s*col(or|ore)|色温度?)"
    )),
    ("name", re.compile(r"(name|light|lamp|source|label|nom|nombre|nome|bezeichnung|leuchte|id)")),
)  # fmt: skip
_BRACKET = re.compile(r"[\[(][^\])]*[\])]")


def _field(cell: str) -> str:
    """Return which field a heading names, or an empty text."""
    if not cell or len(cell) > 60:
        return ""
    # X and Y in capitals are tristimulus values, not chromaticities.
    if cell.strip() in ("X", "Y"):
        return ""
    word = _BRACKET.sub("", cell).strip(" :=\t").lower().replace(",", " ").replace("  ", " ")
    return next((name for name, pattern in _FIELDS if word and pattern.fullmatch(word)), "")


def _suffices(fields: set[str]) -> bool:
    return {"x", "y"} <= fields or {"u_prime", "v_prime"} <= fields or "cct_K" in fields


def find_readings(rows: list[Row], contents: Contents) -> None:
    """Take readings from rows below a heading, or from one label and value to a row."""
    heads: dict[int, str] | None = None
    single: dict[str, tuple[float | str, int]] = {}
    for row in rows:
        fields = {place: name for place, cell in enumerate(row.cells) if (name := _field(cell))}
        heading = all(number is None for number in row.numbers)
        if heading and _suffices(set(fields.values())) and len(set(fields.values())) == len(fields):
            heads = fields
            continue
        if heads is not None:
            _take_row(row, heads, contents)
        elif list(fields) == [0] and len(row.cells) >= 2:
            number = row.number(1)
            if fields[0] == "name":
                single[fields[0]] = (row.cell(1), row.line)
            elif number is not None:
                single[fields[0]] = (number, row.line)
    if heads is None and _suffices(set(single)):
        line = min(line for _, line in single.values())
        _take({name: value for name, (value, _) in single.items()}, line, contents)


def _take_row(row: Row, heads: dict[int, str], contents: Contents) -> None:
    given: dict[str, float | str] = {}
    for place, name in heads.items():
        number = row.number(place)
        if name == "name":
            given[name] = row.cell(place)
        elif number is not None:
            given[name] = number
        elif row.cell(place) and any(value is not None for value in row.numbers):
            contents.complain(
                Problem(
                    name,
                    f"Expected a number for {name} but found “{row.cell(place)[:24]}”.",
                    row.line,
                )
            )
    if any(name != "name" for name in given):
        _take(given, row.line, contents)


def _take(given: dict[str, float | str], line: int, contents: Contents) -> None:
    reading: dict[str, object] = {"name": given.get("name", ""), "line": line}
    if "x" in given and "y" in given:
        reading |= {"x": given["x"], "y": given["y"]}
    elif "u_prime" in given and "v_prime" in given:
        pair = np.array([given["u_prime"], given["v_prime"]], dtype=float)
        with np.errstate(all="ignore"):
            x, y = uv_prime_to_xy(pair).tolist()
        reading |= {"x": x, "y": y}
    elif "cct_K" in given:
        reading["cct_K"] = given["cct_K"]
        if "duv" in given:
            reading["duv"] = given["duv"]
    else:
        contents.complain(
            Problem("", "The line has neither x and y nor a colour temperature.", line)
        )
        return
    if "illuminance_lx" in given:
        reading["illuminance_lx"] = given["illuminance_lx"]
    try:
        contents.take_reading(reading)
    except Problem as problem:
        contents.complain(Problem(problem.field, problem.message, line))
