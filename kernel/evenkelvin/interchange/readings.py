"""Chromaticities, CCT and illuminance in a table: a reading a row, or a label and value a row."""

from __future__ import annotations

import re
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_xy
from evenkelvin.interchange.contents import Contents
from evenkelvin.interchange.csv_text import as_typed
from evenkelvin.interchange.headings import names_wavelength
from evenkelvin.interchange.layout import Row, is_even
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.problem import Problem
from evenkelvin.said import Said

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
    ("gels", re.compile(r"(gels?|filters?|filtres?|filtros?|filtri|folien?)")),
    ("lamp", re.compile(r"lamp")),
    ("name", re.compile(r"(name|light|lamp|source|label|nom|nombre|nome|bezeichnung|leuchte|id)")),
)  # fmt: skip
#: Of several columns that could name a light, the first of these does.
_NAMES = ("name", "light", "source", "label", "lamp", "id")
#: A flash: illuminance times time.
_EXPOSURE = re.compile(r"[^\[(]{0,40}[\[(]\s*l(x|ux)\s*[·.*]?\s*s(ec)?\s*[\])]")
#: Fields that hold words.
_WORDS = frozenset({"name", "lamp", "gels"})
_BRACKET = re.compile(r"[\[(][^\])]*[\])]")


def _field(cell: str) -> str:
    """Return which field a heading names, or an empty text."""
    if not cell or len(cell) > 60:
        return ""
    # X and Y in capitals are tristimulus values, not chromaticities.
    if cell.strip() in ("X", "Y"):
        return ""
    if _EXPOSURE.fullmatch(cell.strip().lower()):
        return "exposure_lx_s"
    word = _word(cell)
    return next((name for name, pattern in _FIELDS if word and pattern.fullmatch(word)), "")


def _word(cell: str) -> str:
    return _BRACKET.sub("", cell).strip(" :=\t").lower().replace(",", " ").replace("  ", " ")


def _fields(row: Row) -> dict[int, str]:
    """Return which field each column of a heading is; none where two are the same."""
    fields = {place: name for place, cell in enumerate(row.cells) if (name := _field(cell))}
    rank = {word: place for place, word in enumerate(_NAMES)}
    naming = [place for place, name in fields.items() if name in ("name", "lamp")]
    naming.sort(key=lambda place: rank.get(_word(row.cell(place)), 0))
    for place in naming[1:]:
        if fields[place] == "name":
            del fields[place]
    if naming:
        fields[naming[0]] = "name"
    return fields if len(set(fields.values())) == len(fields) else {}


def _suffices(fields: set[str]) -> bool:
    return {"x", "y"} <= fields or {"u_prime", "v_prime"} <= fields or "cct_K" in fields


def heads_readings(rows: list[Row]) -> Literal["sure", "likely"] | None:
    """Tell whether a table has a heading of readings, and no column of wavelengths.

    Such a table holds no spectra, whatever a column of CCT looks like. Only "likely" where the
    heading says no more than x and y, which may be the axes of a plot.
    """
    for place, row in enumerate(rows):
        fields = _fields(row)
        if _is_heading(row, fields):
            wavelengths = any(
                names_wavelength(cell) and _rises(rows[place + 1 :], column)
                for column, cell in enumerate(row.cells)
            )
            if wavelengths:
                return None
            return "sure" if set(fields.values()) - {"x", "y"} else "likely"
    return None


def _rises(rows: list[Row], column: int) -> bool:
    numbers = [number for row in rows if (number := row.number(column)) is not None]
    return is_even(numbers)


def _is_heading(row: Row, fields: dict[int, str]) -> bool:
    return all(number is None for number in row.numbers) and _suffices(set(fields.values()))


def find_readings(rows: list[Row], contents: Contents) -> None:
    """Take readings from rows below a heading, or from one label and value to a row."""
    heads: dict[int, str] | None = None
    single: dict[str, tuple[float | str, int]] = {}
    for row in rows:
        fields = _fields(row)
        if _is_heading(row, fields):
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
        if name in _WORDS:
            if row.cell(place):
                given[name] = as_typed(row.cell(place))
        elif number is not None:
            given[name] = number
        elif row.cell(place) and any(value is not None for value in row.numbers):
            contents.complain(
                Problem(
                    name,
                    Said(
                        "Expected a number for {name} but found “{cell}”.",
                        name=name,
                        cell=row.cell(place)[:24],
                    ),
                    row.line,
                )
            )
    if not _WORDS.issuperset(given):
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
            Problem("", Said("The line has neither x and y nor a colour temperature."), line)
        )
        return
    amounts = [name for name in ("illuminance_lx", "exposure_lx_s") if name in given]
    reading |= {name: given[name] for name in amounts}
    if given.get("lamp") in LAMPS:
        reading["lamp"] = given["lamp"]
    if "gels" in given:
        reading["pack"] = [gel.strip() for gel in str(given["gels"]).split(" + ") if gel.strip()]
    try:
        contents.take_reading(reading)
    except Problem as problem:
        contents.complain(Problem(problem.field, problem.message, line))
