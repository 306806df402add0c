"""Readings as a log keeps them: many at once, whatever can be told of each.

A log must not stop at one reading with a typo in it, as a question about one light does. Here
what cannot be read is NaN.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_to_xy, xy_to_uv, xyz_to_xy
from evenkelvin.colorimetry.spectrum import checked_spectrum, tristimulus
from evenkelvin.colorimetry.temperature import LARGEST_DUV, cct_to_uv, uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.exposure.stops import FLASH_BOUNDS, LIGHT_BOUNDS
from evenkelvin.fields import Fields, parse_number
from evenkelvin.lights.reading import LX_PER_FC, READING_K
from evenkelvin.problem import Problem
from evenkelvin.requests.forms import logged_in_usual_form

#: Rows whose CCT is looked for together: bounds the memory, not the result.
_TOGETHER = 256


def amount(plain: Mapping[str, Any], name: str) -> float:
    """Return a number as it was logged, NaN where there is none or it is not one."""
    raw = plain.get(name)
    if raw is None or (isinstance(raw, str) and not raw.strip()):
        return np.nan
    try:
        return parse_number(raw, name)
    except Problem:
        return np.nan


def light_amounts(plain: Mapping[str, Any]) -> tuple[float, float]:
    """Return illuminance in lx and flash exposure in lx·s, NaN where not logged or not real."""
    plain = logged_in_usual_form(plain)
    lux, foot_candles = amount(plain, "illuminance_lx"), amount(plain, "illuminance_fc")
    lux = lux if np.isfinite(lux) else foot_candles * LX_PER_FC
    flash = amount(plain, "exposure_lx_s")
    return _within(lux, LIGHT_BOUNDS), _within(flash, FLASH_BOUNDS)


def _within(value: float, bounds: tuple[float, float]) -> float:
    return value if bounds[0] <= value <= bounds[1] else np.nan


def _spectrum_xy(raw: Any) -> tuple[float, float]:
    try:
        group = Fields(raw, "spectrum")
        spectrum = checked_spectrum(group.numbers("wavelengths_nm"), group.numbers("values"))
    except Problem:
        return np.nan, np.nan
    x, y = xyz_to_xy(tristimulus(spectrum))
    return float(x), float(y)


def logged_xy(readings: Sequence[Mapping[str, Any]]) -> Floats:
    """Return x, y of each reading, (n, 2), from its x y, its CCT and Duv, or its spectrum.

    NaN where it has none of them or they cannot be a light.
    """
    xy = np.full((len(readings), 2), np.nan)
    white = np.full((len(readings), 2), np.nan)
    for row, plain in enumerate(readings):
        if plain.get("spectrum"):
            xy[row] = _spectrum_xy(plain["spectrum"])
            continue
        xy[row] = amount(plain, "x"), amount(plain, "y")
        plain = logged_in_usual_form(plain)
        duv = amount(plain, "duv")
        white[row] = amount(plain, "cct_K"), 0.0 if np.isnan(duv) else duv
    with np.errstate(invalid="ignore"):
        given = np.isnan(xy).any(axis=1) & (np.abs(white[:, 1]) <= LARGEST_DUV)
        given &= (white[:, 0] >= READING_K[0]) & (white[:, 0] <= READING_K[1])
        for rows in np.array_split(np.flatnonzero(given), -(-given.sum() // _TOGETHER) or 1):
            if len(rows):
                xy[rows] = uv_to_xy(cct_to_uv(white[rows, 0], white[rows, 1]))
        possible = (xy[:, 0] > 0.0) & (xy[:, 1] > 0.0) & (xy.sum(axis=1) < 1.0)
    xy[~possible] = np.nan
    return xy


def logged_cct(xy: Floats) -> Floats:
    """Return CCT in K and Duv of x, y that may be NaN: (n, 2) to (n, 2)."""
    found = np.full(xy.shape, np.nan)
    known = np.flatnonzero(np.isfinite(xy).all(axis=1))
    for rows in np.array_split(known, -(-len(known) // _TOGETHER) or 1):
        if len(rows):
            found[rows] = uv_to_cct(xy_to_uv(xy[rows]))
    return found


def logged_position(data: Mapping[str, Any]) -> tuple[float, float]:
    """Return the latitude and longitude of a reading in degrees; NaN where it has none."""
    where = data.get("position")
    if not isinstance(where, Mapping):
        return math.nan, math.nan
    stated = [where.get(name) for name in ("latitude", "longitude")]
    north, east = (
        float(value) if isinstance(value, (int, float)) else math.nan for value in stated
    )
    return (north, east) if abs(north) <= 90.0 and abs(east) <= 180.0 else (math.nan, math.nan)
