"""Spectra as curves side by side, to be drawn: on one grid, at equal luminance."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import (
    STEP_NOISE,
    SUMMED_STEP,
    Spectrum,
    interpolate,
    on_1nm,
    tristimulus,
)
from evenkelvin.data import Floats

#: Wavelengths in nm at which finely sampled lights are drawn; others on the search grid.
FINE: Floats = np.arange(GRID[0], GRID[-1] + 1.0)
#: How far a peak stands out on both sides to be named, and how many are named at most.
PROMINENT, MOST_PEAKS = 0.05, 8


def wavelengths_for(spectra: Sequence[Spectrum]) -> Floats:
    """Return the grid in nm on which these spectra are drawn, as fine as the finest of them."""
    step = min(float(np.median(np.diff(spectrum.wavelengths))) for spectrum in spectra)
    return FINE if step < SUMMED_STEP - STEP_NOISE else GRID


def _sampled(spectrum: Spectrum, nm: Floats) -> Floats:
    """Return values at ``nm``, shape (n,); NaN where the spectrum does not reach."""
    fine = nm[1] - nm[0] < SUMMED_STEP - STEP_NOISE
    found = on_1nm(spectrum, nm, beyond="nearest") if fine else interpolate(spectrum, nm)
    low, high = spectrum.wavelengths[0] - STEP_NOISE, spectrum.wavelengths[-1] + STEP_NOISE
    return np.where((nm < low) | (nm > high), np.nan, found)


def level(spectrum: Spectrum, nm: Floats) -> float:
    """Return the luminance, in the unit of :func:`curve`, at which this light peaks at 1."""
    return float(tristimulus(spectrum)[1] / np.nanmax(_sampled(spectrum, nm)))


def curve(spectrum: Spectrum, nm: Floats, luminance: float) -> Floats:
    """Return a spectrum at ``nm``, shape (n,), scaled to a luminance; NaN where it has none."""
    own = float(tristimulus(spectrum)[1])
    return np.asarray(_sampled(spectrum, nm) * (luminance / own))


def peaks(values: Floats) -> list[int]:
    """Return the indices of the peaks that stand out most, rising.

    A peak stands out by its prominence: how far one has to go down from it, on the shallower
    side, before going up to anything higher.
    """
    known = np.nan_to_num(values, nan=0.0)
    least = PROMINENT * float(known.max())
    found: list[tuple[float, int]] = []
    for k in range(1, len(known) - 1):
        if not known[k - 1] < known[k] >= known[k + 1]:
            continue
        drops = []
        for side in (known[k::-1], known[k:]):
            higher = np.flatnonzero(side > known[k])
            drops.append(known[k] - side[: higher[0] if len(higher) else len(side)].min())
        if min(drops) >= least:
            found.append((float(min(drops)), k))
    return sorted(k for _, k in sorted(found, reverse=True)[:MOST_PEAKS])
