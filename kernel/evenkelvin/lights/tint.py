"""Green and magenta: the CC filter that takes a light's tint away, and the words for it."""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.filters.kit import CUTS, cc_transmittance
from evenkelvin.said import Said

#: Densest correction that is looked for, in CC.
_DENSEST_CC = 120.0
#: ΔDuv from which each word holds; common practice, no source.
_WORDS = (
    (0.008, Said("strongly green"), Said("strongly magenta")),
    (0.003, Said("clearly green"), Said("clearly magenta")),
    (0.001, Said("a touch green"), Said("a touch magenta")),
    (0.0002, Said("a hair green"), Said("a hair magenta")),
)
NO_TINT = Said("no tint")


def _duv_through(light: Floats, cc: float) -> float:
    xyz = (light * cc_transmittance(cc)) @ observer_grid()
    return float(uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(xyz))[np.newaxis])[0, 1])


def neutralising_cc(light: Floats, duv: float = 0.0) -> float | None:
    """Return the CC density that brings a light to a Duv: green positive, magenta negative.

    Parameters
    ----------
    light
        On the search grid, shape (81,).
    duv
        Wanted Duv.

    Returns
    -------
    float or None
        In CC units (30 is a density of 0.30), base of the gel left aside; None when no density up
        to CC120 does it.
    """
    now = _duv_through(light, 0.0)
    if abs(now - duv) < 1e-7:
        return 0.0
    # Duv rises steadily with the density of green: a bracketed secant (Illinois) finds it.
    low, high = (0.0, _DENSEST_CC) if now < duv else (-_DENSEST_CC, 0.0)
    f_low, f_high = _duv_through(light, low) - duv, _duv_through(light, high) - duv
    if f_low * f_high > 0.0:
        return None
    side = 0
    cc = 0.0
    for _ in range(40):
        cc = (low * f_high - high * f_low) / (f_high - f_low)
        f = _duv_through(light, cc) - duv
        if abs(f) < 1e-8:
            break
        if f * f_high > 0.0:
            high, f_high = cc, f
            f_low, side = (f_low / 2.0, -1) if side == -1 else (f_low, -1)
        else:
            low, f_low = cc, f
            f_high, side = (f_high / 2.0, 1) if side == 1 else (f_high, 1)
    return cc


def duv_of_cc(cct_k: float, cc: float) -> float:
    """Return the Duv that a black body has through a CC filter: green positive, magenta negative.

    The way back from :func:`neutralising_cc`, for meters that give green and magenta in CC.
    """
    return _duv_through(planck(GRID, cct_k), cc) if cc else 0.0


def cc_words(cc: float | None) -> Said:
    """Return a CC correction as an instruction."""
    if cc is None:
        return Said("more than any CC gel can take away")
    if abs(cc) < 0.5:
        return Said("no green or magenta needed")
    if cc > 0:
        return Said("add {cc:.0f} CC green", cc=cc)
    return Said("add {cc:.0f} CC magenta", cc=-cc)


def cut_words(cct_k: float, duv: float) -> Said | None:
    """Return the tint of a white as lamps and meters give it: in cuts of plus or minus green.

    The cut is the one nearest to the CC that brings a black body of that CCT to that Duv, for
    lamps whose green goes in cuts; None where there is no CCT, or no density does it.
    """
    if not np.isfinite(cct_k):
        return None
    cc = 0.0 if abs(duv) < _WORDS[-1][0] else neutralising_cc(planck(GRID, cct_k), duv)
    if cc is None:
        return None
    deepest = CUTS["full"][1]
    if abs(cc) < CUTS["1/8"][1] / 2.0:
        return Said("no plus or minus green")
    if abs(cc) > 1.25 * deepest:
        times = abs(cc) / deepest
        if cc > 0:
            return Said("{times:.1f} × full plus green", times=times)
        return Said("{times:.1f} × full minus green", times=times)
    cut = min(CUTS, key=lambda name: abs(CUTS[name][1] - abs(cc)))
    if cc > 0:
        return Said("{cut} plus green", cut=cut)
    return Said("{cut} minus green", cut=cut)


def tint_words(duv: float) -> Said:
    """Return a difference in Duv as people say it: 'a hair magenta'.

    The word goes by the four digits that are shown, so that figure and word never disagree.
    """
    size = round(abs(duv), 4)
    for limit, green, magenta in _WORDS:
        if size >= limit:
            return green if duv > 0 else magenta
    return NO_TINT
