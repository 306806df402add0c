"""What a meter shows beside x y, held against the spectra that a light may have."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

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


#: What is worked out of a spectrum for each figure, and how the figure is read off it.
_FIGURES: dict[str, tuple[Callable[[Spectrum], Any], Callable[[Any], float]]] = {
    "ra": (colour_rendering_index, lambda index: index.ra),
    "r9": (colour_rendering_index, lambda index: index.r[8]),
    "rf": (colour_rendition, lambda rendition: rendition.rf),
    "rg": (colour_rendition, lambda rendition: rendition.rg),
    "ssi": (_ssi, float),
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
    lights = [Spectrum(GRID, spectrum) for spectrum in spectra]
    metrics = {_FIGURES[name][0] for name, _ in evidence}
    try:
        told = {metric: [metric(light) for light in lights] for metric in metrics}
    except Unrated:
        return np.ones(len(spectra)), 0.0
    for name, typed in evidence:
        metric, read = _FIGURES[name]
        off += ((np.array([read(one) for one in told[metric]]) - typed) / SCATTER[name]) ** 2
    off = np.sqrt(off)
    width = max(1.0, float(np.sort(off)[:_LEAST_LEFT][-1]))
    return np.exp(-0.5 * (off**2 - off.min() ** 2) / width**2), float(off.min())
