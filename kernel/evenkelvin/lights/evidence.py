"""What a meter shows beside x y, held against the spectra that a light may have."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.data import Floats
from evenkelvin.rendering.cri import colour_rendering_index
from evenkelvin.rendering.reference import Unrated
from evenkelvin.rendering.ssi import matching_reference, spectral_similarity
from evenkelvin.rendering.tm30 import colour_rendition

#: How far a hand-held meter, and a stand-in of the right make, may be off (1 σ; common practice,
#: no source).
SCATTER = {"ra": 2.0, "r9": 8.0, "rf": 2.0, "rg": 3.0, "ssi": 4.0}
#: The stand-in nearest to what was typed, in σ, beyond which no lamp is thought to have it.
IMPLAUSIBLE = 6.0
#: So many stand-ins are always left to speak: one alone would be taken for certain.
_LEAST_LEFT = 4


def _ssi(spectrum: Spectrum) -> float:
    return spectral_similarity(spectrum, *matching_reference(spectrum)).unrounded


_FIGURES: dict[str, Callable[[Spectrum], float]] = {
    "ra": lambda spectrum: colour_rendering_index(spectrum).ra,
    "r9": lambda spectrum: float(colour_rendering_index(spectrum).r[8]),
    "rf": lambda spectrum: colour_rendition(spectrum).rf,
    "rg": lambda spectrum: colour_rendition(spectrum).rg,
    "ssi": _ssi,
}


def weighed(spectra: Floats, evidence: tuple[tuple[str, float], ...]) -> tuple[Floats, float]:
    """Return how well each spectrum agrees with what was typed, and how far the best is off.

    Parameters
    ----------
    spectra
        Shape (n, 81), all of one chromaticity.
    evidence
        Names of :data:`SCATTER` with the figures of the meter.

    Returns
    -------
    weights, off
        Shape (n,), the largest 1; and the distance of the best in σ. All 1 where the light has
        no such figure, as a colour has none.
    """
    off = np.zeros(len(spectra))
    try:
        for name, typed in evidence:
            found = [_FIGURES[name](Spectrum(GRID, spectrum)) for spectrum in spectra]
            off += ((np.array(found) - typed) / SCATTER[name]) ** 2
    except Unrated:
        return np.ones(len(spectra)), 0.0
    off = np.sqrt(off)
    width = max(1.0, float(np.sort(off)[:_LEAST_LEFT][-1]))
    return np.exp(-0.5 * (off**2 - off.min() ** 2) / width**2), float(off.min())
