"""Spectral Similarity Index: how like two spectra are, whatever eye or camera looks.

SMPTE ST 2122:2020; J. Holm et al., 'A cinematographic spectral similarity index', SMPTE 2016;
Academy of Motion Picture Arts and Sciences, 'Academy Spectral Similarity Index (SSI): Overview'
(2020).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from evenkelvin.colorimetry.illuminant import daylight, planck
from evenkelvin.colorimetry.spectrum import Spectrum, on_1nm, tristimulus
from evenkelvin.data import Floats
from evenkelvin.rendering.reference import Unrated, rated_cct
from evenkelvin.said import Said, Value

OBSERVER = Said("none (spectra are compared)")
EDITION = "SMPTE ST 2122:2020"

#: From here on the matching reference is CIE daylight, below it the black body.
DAYLIGHT_FROM_K = 4000.0

_NM: Floats = np.arange(375.0, 676.0, dtype=np.float64)
#: Weight of each 10 nm band, 380 to 670 nm.
_BAND_WEIGHTS: Floats = np.concatenate(
    [np.array([12.0, 22.0, 32.0, 40.0, 44.0]) / 45.0, np.ones(23), np.array([11.0, 3.0]) / 15.0]
)


@dataclass(frozen=True)
class Similarity:
    """SSI as it is to be printed, the same before rounding, and the reference in words.

    ``edition`` names the standard, and the choice that was made where a spectrum is too short.
    """

    value: int
    unrounded: float
    reference: str
    edition: Value = EDITION


def band_sums(spectrum: Spectrum) -> Floats:
    """Return the sums over 10 nm bands centred at 380 to 670 nm, shape (30,)."""
    fine = on_1nm(spectrum, _NM, beyond="zero")
    # A band's edge belongs half to it and half to its neighbour.
    return np.asarray(fine[:-1].reshape(30, 10).sum(axis=1) + 0.5 * (fine[10::10] - fine[:-1:10]))


def difference_matrix(reference: Floats) -> Floats:
    """Return what weighs and smooths a difference in band sums, shape (30, 30).

    Parameters
    ----------
    reference
        Band sums of the reference light, adding up to 1, shape (30,).
    """
    smooth = 0.56 * np.eye(30) + 0.22 * (np.eye(30, k=1) + np.eye(30, k=-1))
    return np.asarray(smooth * (_BAND_WEIGHTS / (reference + 1.0 / 30.0)))


def spectral_similarity(test: Spectrum, reference: Spectrum, words: str) -> Similarity:
    """Return the SSI of a light against a reference light; 100 is the same, below 0 is possible.

    The standard sums from 375 to 675 nm. We have not its words for spectra that begin or end
    within, as many do at 380 nm: published implementations count zero there, but a light is not
    to lose points for what was not measured. So where one of the two does not reach, neither
    counts; the answer says so, and what other ways of filling the gap would give.

    Raises
    ------
    Unrated
        When either spectrum is dark over 375–675 nm.
    """
    low, high = _common(test, reference)
    first, second = (band_sums(_cut(each, low, high)) for each in (test, reference))
    found = _similarity(first, second, words)
    if low <= _NM[0] and high >= _NM[-1]:
        return found
    return replace(found, edition=_choice(found, test, reference, low, high))


def _choice(
    found: Similarity, test: Spectrum, reference: Spectrum, low: float, high: float
) -> Said:
    """Return the edition with what was done about a gap, and what other ways would give."""
    filled = [
        _similarity(band_sums(fill(test)), band_sums(fill(reference)), "").value
        for fill in (lambda spectrum: spectrum, _held)
    ]
    if all(value == found.value for value in filled):
        return Said(
            "{edition}; compared from {low:g} to {high:g} nm, where both spectra reach; filling "
            "up to 375–675 nm gives the same",
            edition=EDITION,
            low=low,
            high=high,
        )
    return Said(
        "{edition}; compared from {low:g} to {high:g} nm, where both spectra reach; filled up to "
        "375–675 nm it is {zero:.0f} with zeros, {held:.0f} with the last value held",
        edition=EDITION,
        low=low,
        high=high,
        zero=filled[0],
        held=filled[1],
    )


def _held(spectrum: Spectrum) -> Spectrum:
    """Return a spectrum on 375–675 nm with its end values held beyond its ends."""
    nm, values = spectrum.wavelengths, spectrum.values
    inside = nm[(nm > _NM[0]) & (nm < _NM[-1])]
    kept = np.concatenate([_NM[:1], inside, _NM[-1:]])
    return Spectrum(kept, np.interp(kept, nm, values))


def _common(test: Spectrum, reference: Spectrum) -> tuple[float, float]:
    """Return the range in nm that both spectra cover within 375–675 nm."""
    return (
        float(max(test.wavelengths[0], reference.wavelengths[0], _NM[0])),
        float(min(test.wavelengths[-1], reference.wavelengths[-1], _NM[-1])),
    )


def _similarity(first: Floats, second: Floats, words: str) -> Similarity:
    """Return the SSI of two lights by their bands, the second being the reference."""
    if first.sum() <= 0.0 or second.sum() <= 0.0:
        raise Unrated(Said("Not rated: there is no light between 375 and 675 nm to compare."))
    first, second = first / first.sum(), second / second.sum()
    smoothed = difference_matrix(second) @ (first - second)
    unrounded = 100.0 - 32.0 * float(np.sqrt(np.sum(smoothed**2)))
    return Similarity(value=round(unrounded), unrounded=unrounded, reference=words)


class Comparer:
    """SSI of many pairs out of one set of lights, each light's bands summed once a range."""

    def __init__(self, lights: Sequence[Spectrum]) -> None:
        self._lights = lights
        self._known: dict[tuple[int, float, float], Floats] = {}

    def similarity(self, test: int, reference: int) -> Similarity | None:
        """Return the SSI of one light against another, by index; None where it is not rated."""
        low, high = _common(self._lights[test], self._lights[reference])
        first, second = (self._bands(k, low, high) for k in (test, reference))
        try:
            return _similarity(first, second, "")
        except Unrated:
            return None

    def _bands(self, index: int, low: float, high: float) -> Floats:
        key = (index, low, high)
        if key not in self._known:
            self._known[key] = band_sums(_cut(self._lights[index], low, high))
        return self._known[key]


def _cut(spectrum: Spectrum, low: float, high: float) -> Spectrum:
    nm, values = spectrum.wavelengths, spectrum.values
    inside = nm[(nm > low) & (nm < high)]
    kept = np.concatenate([[low], inside, [high]])
    return Spectrum(kept, np.interp(kept, nm, values))


def planck_reference(cct: float, nm: Floats = _NM) -> tuple[Spectrum, str]:
    """Return a black body as a reference, and its name in words."""
    return Spectrum(nm, planck(nm, cct)), Said("black body {cct:.0f} K", cct=cct)


def daylight_reference(cct: float, nm: Floats = _NM) -> tuple[Spectrum, str]:
    """Return CIE daylight as a reference, and its name in words."""
    return Spectrum(nm, daylight(nm, cct)), Said("CIE daylight {cct:.0f} K", cct=cct)


def d55_reference() -> tuple[Spectrum, str]:
    """Return CIE illuminant D55 as a reference, and its name in words.

    Its nominal 5500 K was set with an older c₂, so its chromaticity is taken at 5503 K.
    """
    cct = 5500.0 * 1.4388 / 1.4380
    return Spectrum(_NM, daylight(_NM, cct, rounded=True)), Said("CIE illuminant D55")


def matching_reference(test: Spectrum, nm: Floats = _NM) -> tuple[Spectrum, str]:
    """Return the reference that ST 2122 takes when none is named: by the light's own CCT.

    ``nm`` are the wavelengths at which it is wanted, shape (n,).

    Raises
    ------
    Unrated
        When the light has no reference (see :func:`rated_cct`).
    """
    cct = rated_cct(tristimulus(test))
    return planck_reference(cct, nm) if cct < DAYLIGHT_FROM_K else daylight_reference(cct, nm)
