"""Chromaticities, CCT and illuminance in a table: a reading a row, or a label and value a row."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_xy
from evenkelvin.interchange.contents import Contents
from evenkelvin.interchange.csv_text import as_typed
from evenkelvin.interchange.dialect import Dialect
from evenkelvin.interchange.headings import names_wavelength
from evenkelvin.interchange.layout import Row, is_even
from evenkelvin.interchange.stated import (
    NAMES,
    TEXTS,
    WORDS,
    field_of,
    read_alone,
    read_texts,
    word_of,
)
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: What may stand in several columns: the first of each is taken.
_BESIDE = TEXTS - WORDS | {"place"}
#: What is said about a reading, beside its colour and level.
_ABOUT = ("date", "time", "zone", "place", "position", "integration_s")
_AMOUNTS = ("illuminance_lx", "illuminance_fc", "exposure_lx_s")
#: Figures of colour rendering, as the heads of their columns have them.
_FIGURES = ("ra", "r9", "rf", "rg", "ssi")


def _field(cell: str) -> str:
    return word if (word := word_of(cell)) in _FIGURES else field_of(cell)


def _fields(row: Row) -> dict[int, str]:
    """Return which field each column of a heading is; none where two are the same."""
    fields = {place: name for place, cell in enumerate(row.cells) if (name := _field(cell))}
    rank = {word: place for place, word in enumerate(NAMES)}
    naming = [place for place, name in fields.items() if name in ("name", "lamp")]
    naming.sort(key=lambda place: rank.get(word_of(row.cell(place)), 0))
    for place in naming[1:]:
        if fields[place] == "name":
            del fields[place]
    if naming:
        fields[naming[0]] = "name"
    for place, name in list(fields.items()):
        if name in _BESIDE and place != min(at for at, other in fields.items() if other == name):
            del fields[place]
    return fields if len(set(fields.values())) == len(fields) else {}


def _head(row: Row) -> dict[int, str]:
    """Return the fields of a row that may be a heading: one of numbers is none."""
    return {} if any(number is not None for number in row.numbers) else _fields(row)


def _suffices(fields: set[str]) -> bool:
    return {"x", "y"} <= fields or {"u_prime", "v_prime"} <= fields or "cct_K" in fields


def heads_readings(rows: list[Row]) -> Literal["sure", "likely"] | None:
    """Tell whether a table has a heading of readings, and no column of wavelengths.

    Such a table holds no spectra, whatever a column of CCT looks like. Only "likely" where the
    heading says no more than x and y, which may be the axes of a plot.
    """
    for place, row in enumerate(rows):
        if _suffices(set((fields := _head(row)).values())):
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


def find_readings(rows: list[Row], dialect: Dialect, alone: bool, contents: Contents) -> None:
    """Take readings from rows below a heading, or else the one that labels and values state.

    Parameters
    ----------
    rows, dialect
        The table and how it is written.
    alone
        Whether labels and values may be a reading: not those of a spectrum that is at fault.
    contents
        Where the readings go.
    """
    heads: dict[int, str] | None = None
    for row in rows:
        if _suffices(set((fields := _head(row)).values())):
            heads = fields
        elif heads is not None:
            _take_row(row, heads, contents)
    if heads is not None or not alone:
        return
    stated = read_alone(rows, dialect, other := Contents("", choices=contents.choices))
    if _suffices(set(stated)):
        contents.problems.extend(other.problems)
        for question in other.questions:
            contents.ask(question)
        line = next(row.line for row in rows)
        take_stated(stated, line, contents)


def _take_row(row: Row, heads: dict[int, str], contents: Contents) -> None:
    given: dict[str, float | str] = {}
    for place, name in heads.items():
        number = row.number(place)
        if name in TEXTS:
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
    if not TEXTS.issuperset(given):
        about = {name: str(value) for name, value in given.items() if name in _BESIDE}
        _take(given, read_texts(about, row.line, contents), row.line, contents)


def take_stated(stated: Mapping[str, Any], line: int, contents: Contents) -> None:
    """Keep a reading by what is stated of it (:func:`stated.state_readings`)."""
    _take(stated, {name: stated[name] for name in _ABOUT if name in stated}, line, contents)


def _take(given: Mapping[str, Any], about: dict[str, Any], line: int, contents: Contents) -> None:
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
    reading |= {name: given[name] for name in (*_AMOUNTS, *_FIGURES) if name in given}
    if given.get("lamp") in LAMPS:
        reading["lamp"] = given["lamp"]
    if "gels" in given:
        reading["pack"] = [gel.strip() for gel in str(given["gels"]).split(" + ") if gel.strip()]
    if about:
        reading["stated"] = about
    try:
        contents.take_reading(reading)
    except Problem as problem:
        contents.complain(Problem(problem.field, problem.message, line))
