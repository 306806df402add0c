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

#: Densities that are tried first, in CC, the bare light in the middle.
_TRIED_CC = np.array([-120.0, -80.0, -50.0, -30.0, -18.0, -10.0, -5.0, 0.0,
                      5.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0])  # fmt: skip
#: How many are tried between the two where Duv passes what is wanted, and how often, each time
#: between the two that are nearest: from 40 CC to 0.03.
_FINELY, _TIMES = 12, 3
#: Two so near that are so far apart lie on either side of a leap.
_LEAP_DUV = 1e-4
#: ΔDuv from which each word holds; common practice, no source.
_WORDS = (
    (0.008, Said("strongly green"), Said("strongly magenta")),
    (0.003, Said("clearly green"), Said("clearly magenta")),
    (0.001, Said("a touch green"), Said("a touch magenta")),
    (0.0002, Said("a hair green"), Said("a hair magenta")),
)
NO_TINT = Said("no tint")


def _duv_through(light: Floats, ccs: Floats) -> Floats:
    """Return the Duv of a light through CC filters of these densities, (n,) to (n,)."""
    xyz = (light * cc_transmittance(ccs[:, np.newaxis])) @ observer_grid()
    return uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(xyz)))[:, 1]


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
    # A Duv costs nearly as much as a dozen at once, so a dozen densities are tried at a time. Duv
    # rises with the density of green, and it lies between the first two where it passes.
    apart = _duv_through(light, _TRIED_CC) - duv
    bare = len(_TRIED_CC) // 2
    if abs(apart[bare]) < 1e-7:
        return 0.0
    greener = apart[bare] < 0.0
    beyond = np.nonzero(apart[bare:] >= 0.0 if greener else apart[: bare + 1] <= 0.0)[0]
    if not len(beyond):
        return None
    low = bare + int(beyond[0]) - 1 if greener else int(beyond[-1])
    tried = _TRIED_CC
    for _ in range(_TIMES):
        tried = np.linspace(tried[low], tried[low + 1], _FINELY)
        apart = _duv_through(light, tried) - duv
        # The last is beyond, though rounding may tell otherwise by now.
        low = int(np.argmax([*(apart[1:-1] >= 0.0), True]))
    (below, above), (less, more) = apart[low : low + 2], tried[low : low + 2]
    # Round about the blue end of the line a deep colour leaps from one side of it to the other.
    if not above - below < _LEAP_DUV:
        return None
    return float(less - below * (more - less) / (above - below))


def duv_of_cc(cct_k: float, cc: float) -> float:
    """Return the Duv that a black body has through a CC filter: green positive, magenta negative.

    The way back from :func:`neutralising_cc`, for meters that give green and magenta in CC.
    """
    return float(_duv_through(planck(GRID, cct_k), np.array([cc]))[0]) if cc else 0.0


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
