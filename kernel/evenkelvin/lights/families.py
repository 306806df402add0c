"""Lamps by their physics: what each kind of lamp is put together from.

A light is a sum of three parts, such as pump, phosphor and red phosphor, and three parts have one
mixture of any x y within them. The lines are those of the elements (NIST Atomic Spectra Database,
from memory, rounded to 1 nm); centres and widths of phosphors and LEDs are typical values
(common practice, no source). How often each member is met is fitted: ``lamp_families``.
"""

from __future__ import annotations

from functools import cache
from itertools import product
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.data import Floats

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Full width in nm of a spectral line as a hand-held meter shows it.
_LINE_NM = 8.0


@cache  # most are asked for several times, at the first answer after a start
def _band(centre: float, width: float) -> Floats:
    """Return a band by its centre and full width at half maximum in nm, peaking at 1; read-only."""
    band: Floats = np.exp(-4.0 * np.log(2.0) * ((GRID - centre) / width) ** 2)
    band.setflags(write=False)
    return band


def _lines(*lines: tuple[float, float]) -> Floats:
    """Return spectral lines, each by its wavelength in nm and its height."""
    return np.asarray(sum(height * _band(nm, _LINE_NM) for nm, height in lines))


_Parts = list[tuple[Floats, Floats, Floats]]


def _white_led() -> _Parts:
    """A blue or violet pump, a yellow or green phosphor, and a red phosphor or red LED."""
    found: _Parts = []
    narrow = _lines((613, 0.5), (631, 1.0), (648, 0.3)) + 0.15 * _band(620, 90)
    for nm, width in ((405, 16), (444, 20), (450, 20), (456, 22), (463, 24)):
        pump = _band(nm, width)
        if nm < 420:
            pump = 0.5 * pump + 0.7 * _band(455, 50)
        yellows = ((515, 90), (525, 100), (535, 105), (545, 110), (555, 120), (562, 130))
        reds = ((595, 80), (605, 85), (618, 85), (632, 90), (650, 100))
        found += [(pump, _band(*yellow), _band(*red)) for yellow, red in product(yellows, reds)]
        found += [(pump, _band(*yellow), narrow) for yellow in ((530, 100), (545, 110))]
        for yellow, red_nm in product(((535, 105), (550, 115)), (612, 628)):
            found.append((pump, _band(*yellow), _band(red_nm, 20)))
    return found


def _mixed_led() -> _Parts:
    """Blue, green and red; the red with amber, or the green of two primaries."""
    found: _Parts = []
    greens = ((505, 30), (520, 34), (532, 34), (546, 36), (546, 60))
    for blue_nm, green in product((446, 456, 465, 473), greens):
        blue = _band(blue_nm, 22)
        found += [(blue, _band(*green), _band(red, 20)) for red in (605, 618, 634)]
        if green[0] > 510:
            for amber, share in product((576, 592), (0.25, 0.6, 1.2)):
                found.append((blue, _band(*green), _band(632, 20) + share * _band(amber, 16)))
    # Four for colour rendering: the gap between green and red is filled from the green side.
    for blue_nm, cyan, lime, share, red in product(
        (446, 458), (500, 516), (556, 574), (0.5, 1.0, 2.0), (614, 628)
    ):
        middle = _band(cyan, 28) + share * _band(lime, 20)
        found.append((_band(blue_nm, 22), middle, _band(red, 20)))
    return found


def _tube() -> _Parts:
    """Lines of mercury, and phosphors: three bands, halophosphate, de luxe, and between."""
    found: _Parts = []
    mercury = _lines((405, 0.35), (436, 0.8), (546, 0.45), (578, 0.1))
    terbium = _lines((545, 1.0), (488, 0.25), (585, 0.2), (620, 0.1))
    europium = _lines((611, 1.0), (593, 0.25), (630, 0.2), (650, 0.08), (705, 0.1))
    blues = (_band(450, 55), _band(485, 75), 0.6 * _band(450, 50) + 0.5 * _band(490, 25))
    greens = (terbium, _band(575, 80), 0.5 * terbium + 0.5 * _band(560, 90))
    reds = (europium, _band(590, 85), _band(635, 110), 0.5 * europium + 0.35 * _band(610, 90))
    for share, blue, green, red in product((0.0, 0.1, 0.25), blues, greens, reds):
        if green is greens[1] and red is reds[1]:
            continue
        glow = share * _band(560, 180)
        found.append(
            (0.6 * blue + 0.5 * mercury + 0.3 * glow, green + 0.15 * mercury + glow, red + glow)
        )
    return found


def _discharge() -> _Parts:
    """Lines of mercury and metals on a hot continuum."""
    found: _Parts = []
    violet, green = _lines((405, 0.5), (436, 1.0)), _lines((546, 1.0), (578, 0.6))
    blues = (
        violet,
        0.5 * violet + _lines((451, 0.8), (410, 0.4)),
        0.4 * violet + 0.5 * _band(440, 80) + _lines((421, 0.3), (475, 0.3)),
    )
    thallium = _lines((535, 1.0))
    rare = _lines((500, 0.5), (560, 0.6), (568, 0.6), (546, 0.6))
    greens = (green, thallium + 0.4 * green, 0.5 * thallium + 0.5 * rare)
    reds = (
        _band(589, 18) + 0.3 * _lines((617, 0.6), (671, 0.8)),
        0.6 * _band(592, 40) + 0.3 * _band(640, 90) + 0.3 * _lines((671, 1.0)),
        0.6 * _band(620, 70) + 0.4 * _lines((620, 1.0), (650, 0.5)),
    )
    for share, a, b, c in product((0.08, 0.2, 0.45), blues, greens, reds):
        found.append(
            (
                a + share * _band(450, 140),
                b + share * _band(540, 160),
                c + share * _band(630, 170),
            )
        )
    return found


def _mercury() -> _Parts:
    """Lines of mercury, in a clear bulb or with a red phosphor, on what little glows between."""
    found: _Parts = []
    violet, yellow = _lines((405, 0.5), (436, 1.0)), _lines((578, 1.0))
    red = _lines((619, 1.0), (608, 0.2), (594, 0.15), (702, 0.3))
    for share in (0.003, 0.01, 0.03):
        glow = share * _band(560, 250)
        found.append((violet + glow, _lines((546, 1.0)) + glow, yellow + glow))
        for part in (0.4, 0.8):
            green = _lines((546, 1.0)) + part * yellow
            found += [
                (violet + glow, green + glow, each + glow)
                for each in (red, red + 0.15 * _band(600, 150))
            ]
    return found


def _sodium() -> _Parts:
    """Sodium, broadened and reversed by its own pressure, and its weaker lines."""
    found: _Parts = []
    for (width, dip), share in product(
        ((12, 0.0), (30, 0.4), (55, 0.7), (80, 0.8)), (0.05, 0.2, 0.5)
    ):
        core = _band(592, width) - dip * _band(589, width / 4.0)
        found.append(
            (
                _lines((467, 0.3), (498, 0.6), (450, 0.2)) + share * _band(470, 120),
                _lines((568, 0.6), (515, 0.1), (546, 0.1)) + share * _band(550, 100),
                core + _lines((615, 0.3), (670, 0.1)) + share * _band(640, 140),
            )
        )
    return found


_MADE = {
    "led": _white_led,
    "led rgb": _mixed_led,
    "fluorescent": _tube,
    "hmi": _discharge,
    "mercury": _mercury,
    "sodium": _sodium,
}


@cache
def family(lamp: str) -> Floats:
    """Return the three parts of every member of a kind, shape (m, 3, 81); none for other kinds."""
    if lamp not in _MADE:
        return np.empty((0, 3, len(GRID)))
    return np.array(_MADE[lamp]())


def mixtures(parts: Floats, xy: Floats) -> tuple[Floats, NDArray[np.intp]]:
    """Return the mixtures of three parts that have exactly the chromaticity x, y.

    Parameters
    ----------
    parts
        Shape (m, 3, 81).
    xy
        Wanted chromaticity, shape (2,).

    Returns
    -------
    spectra, reached
        Shape (k, 81), k ≤ m, of luminance 1; and which members those are, shape (k,).
    """
    wanted = np.array([xy[0], xy[1], 1.0 - xy[0] - xy[1]]) / xy[1]
    of_parts = np.swapaxes(parts @ observer_grid(), 1, 2)
    # Three parts on one line have no mixture that is theirs alone.
    sound = np.nonzero(np.abs(np.linalg.det(of_parts)) > 1e-9)[0]
    right = np.broadcast_to(wanted[:, np.newaxis], (len(sound), 3, 1))
    amounts = np.linalg.solve(of_parts[sound], right)[..., 0]
    inside = np.all(amounts >= 0.0, axis=1)
    reached = sound[inside]
    return np.einsum("ms,msl->ml", amounts[inside], parts[reached]), reached
