"""What a meter shows beside x y, held against the spectra that a light may have."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.data import Floats
from evenkelvin.rendering.cri import indices_of_one_white
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


def _tm30(spectra: Floats) -> Floats:
    """Return Rf and Rg of each, shape (n, 2)."""
    every = [colour_rendition(Spectrum(GRID, spectrum)) for spectrum in spectra]
    return np.array([(one.rf, one.rg) for one in every])


def _ssi(spectra: Floats) -> Floats:
    """Return the SSI of each, shape (n, 1)."""
    every = [Spectrum(GRID, spectrum) for spectrum in spectra]
    rated = [spectral_similarity(one, *matching_reference(one)).unrounded for one in every]
    return np.array(rated)[:, np.newaxis]


#: What is worked out of the spectra for each figure, and how the figure is read off it.
_FIGURES: dict[str, tuple[Callable[[Floats], Floats], Callable[[Floats], Floats]]] = {
    "ra": (indices_of_one_white, lambda r: r[:, :8].mean(axis=1)),
    "r9": (indices_of_one_white, lambda r: r[:, 8]),
    "rf": (_tm30, lambda both: both[:, 0]),
    "rg": (_tm30, lambda both: both[:, 1]),
    "ssi": (_ssi, lambda ssi: ssi[:, 0]),
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
    metrics = {_FIGURES[name][0] for name, _ in evidence}
    try:
        told = {metric: metric(spectra) for metric in metrics}
    except Unrated:
        return np.ones(len(spectra)), 0.0
    for name, typed in evidence:
        metric, read = _FIGURES[name]
        off += ((read(told[metric]) - typed) / SCATTER[name]) ** 2
    off = np.sqrt(off)
    width = max(1.0, float(np.sort(off)[:_LEAST_LEFT][-1]))
    return np.exp(-0.5 * (off**2 - off.min() ** 2) / width**2), float(off.min())
