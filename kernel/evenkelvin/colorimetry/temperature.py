"""Correlated colour temperature, Duv and mired.

CCT and Duv as Ohno (2013), 'Practical use and calculation of CCT and Duv', LEUKOS 10:1, defines
them: the temperature of the black body nearest in CIE 1960 u v, and the distance to it, positive
above the locus (green). Ohno interpolates in a table; here the foot of the perpendicular is found
on the locus itself by Newton's method, to which his solution is the approximation.
"""

from __future__ import annotations

from functools import cache, lru_cache

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_to_xy, xy_to_uv
from evenkelvin.colorimetry.illuminant import C2_NM_K
from evenkelvin.colorimetry.observer import observer_1nm, wavelengths_1nm
from evenkelvin.data import Floats

#: Temperatures in K within which a CCT is looked for.
LOWEST_K, HIGHEST_K = 1000.0, 100_000.0
#: |Duv| beyond which a CCT says little, and beyond which none is given (CIE 15:2018, 9.5).
DOUBTFUL_DUV, LARGEST_DUV = 0.02, 0.05


def mired(cct: float | Floats) -> Floats:
    """Return reciprocal megakelvin, 10⁶/CCT; its own inverse."""
    return np.asarray(1e6 / np.asarray(cct, dtype=np.float64))


@cache
def _moments() -> tuple[Floats, Floats, Floats, Floats]:
    """Return k = c2/λ per mired, and what sums a black body and its derivatives to 4X, 6Y and
    X + 15Y + 3Z, each (471, 3).
    """
    nm = wavelengths_1nm()
    k = C2_NM_K / nm * 1e-6
    basis = observer_1nm() @ np.array([[4.0, 0.0, 1.0], [0.0, 6.0, 15.0], [0.0, 0.0, 3.0]])
    basis *= ((560.0 / nm) ** 5)[:, np.newaxis]
    by_k = k[:, np.newaxis]
    return k, basis, -by_k * basis, by_k**2 * basis


def _locus(mireds: Floats) -> tuple[Floats, Floats, Floats]:
    """Return u v of black bodies and the first and second derivative by mired, each (n, 2)."""
    k, of_value, of_first, of_second = _moments()
    # Planck's law in x = c2/(λT) = k·mired; dx/dmired = k; derivatives of 1/(eˣ−1) follow, in
    # q = 1/(1−e⁻ˣ) and in place, as this is the inmost loop of every answer.
    value = -k * np.asarray(mireds)[:, np.newaxis]
    np.exp(value, out=value)
    q = 1.0 - value
    np.reciprocal(q, out=q)
    value *= q
    first = value * q
    second = np.multiply(2.0, q, out=q)
    second -= 1.0
    second *= first
    n0, n1, n2 = value @ of_value, first @ of_first, second @ of_second
    w0, w1, w2 = n0[:, 2:], n1[:, 2:], n2[:, 2:]
    uv = n0[:, :2] / w0
    d1 = (n1[:, :2] - uv * w1) / w0
    d2 = (n2[:, :2] - 2.0 * d1 * w1 - uv * w2) / w0
    return uv, d1, d2


#: In mired; the line bends within hundreds of them.
_SHORT_STEP = 1e-4


@cache
def _coarse() -> tuple[Floats, tuple[Floats, Floats, Floats]]:
    mireds = np.concatenate([np.arange(10.0, 60.0, 1.0), np.arange(60.0, 1001.0, 4.0)])
    return mireds, _locus(mireds)


def uv_to_cct(uv: Floats) -> Floats:
    """Return CCT in K and Duv of CIE 1960 u v: (n, 2) to (n, 2).

    CCT is NaN where |Duv| exceeds 0.05 or where the nearest black body is cooler than 1000 K or
    hotter than 100 000 K; Duv is then the distance to the nearest point of that range.
    """
    points = np.asarray(uv, dtype=np.float64)
    table, coarse = _coarse()
    # The square of the distance, but for what is the same for all of the table.
    best = np.argmin(np.sum(coarse[0] ** 2, axis=-1) - 2.0 * points @ coarse[0].T, axis=-1)
    at = table[best]
    low, high = table[0], table[-1]
    for nth in range(6):
        foot, d1, d2 = _locus(at) if nth else [each[best] for each in coarse]
        away = points - foot
        slope = np.sum(d1 * d1, axis=-1) - np.sum(away * d2, axis=-1)
        slope = np.where(slope > 0.0, slope, np.sum(d1 * d1, axis=-1))
        step = np.sum(away * d1, axis=-1) / slope
        nearer = np.clip(at + np.clip(step, -8.0, 8.0), low, high)
        step, at = (nearer - at)[:, np.newaxis], nearer
        # Newton squares the distance: after so short a step there is nothing left to gain.
        if np.all(np.abs(step) < _SHORT_STEP):
            break
    else:
        foot, d1, d2 = _locus(at)
        step = np.zeros_like(step)
    foot = foot + step * d1 + 0.5 * step**2 * d2
    d1 = d1 + step * d2
    away = points - foot
    # Above the locus: to the left of the direction of falling temperature (rising u).
    side = d1[:, 0] * away[:, 1] - d1[:, 1] * away[:, 0]
    duv = np.copysign(np.hypot(away[:, 0], away[:, 1]), side)
    ended = (at <= low) | (at >= high)
    cct = np.where(ended | (np.abs(duv) > LARGEST_DUV), np.nan, 1e6 / at)
    return np.column_stack([cct, duv])


def cct_to_uv(cct: Floats, duv: Floats) -> Floats:
    """Return CIE 1960 u v of CCT in K and Duv, each (n,), to (n, 2).

    The exact inverse of :func:`uv_to_cct`: along the normal of the black-body locus (Ohno 2013).
    """
    foot, d1, _ = _locus(mired(np.atleast_1d(cct)))
    normal = np.column_stack([-d1[:, 1], d1[:, 0]])
    normal /= np.hypot(normal[:, 0], normal[:, 1])[:, np.newaxis]
    uv: Floats = foot + np.atleast_1d(duv)[:, np.newaxis] * normal
    return uv


def xy_to_cct(xy: Floats) -> tuple[float, float]:
    """Return CCT in K (NaN where none can be given) and Duv of one x, y of shape (2,)."""
    x, y = xy
    return _cct_of(float(x), float(y))


@lru_cache(maxsize=1024)
def _cct_of(x: float, y: float) -> tuple[float, float]:
    # Every move of a slider asks about the same lights again.
    cct, duv = uv_to_cct(xy_to_uv(np.array([x, y]))[np.newaxis])[0]
    return float(cct), float(duv)


def cct_to_xy(cct: float, duv: float = 0.0) -> Floats:
    """Return x, y, shape (2,), of a CCT in K and a Duv."""
    return np.asarray(uv_to_xy(cct_to_uv(np.array([cct]), np.array([duv])))[0])
