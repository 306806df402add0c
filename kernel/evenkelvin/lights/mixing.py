"""Several lights on one spot: what they make together.

Light adds: X, Y, Z of a mixture are the sums of those of its parts, Y in proportion to the
illuminance (CIE 15:2018, 7).
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_xyz, xyz_to_xy
from evenkelvin.colorimetry.observer import GRID, observer_grid, wavelengths_1nm
from evenkelvin.colorimetry.spectrum import Spectrum, interpolate, tristimulus
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.stand_in import stand_ins
from evenkelvin.problem import Problem

#: Luminous efficacy of radiation at 540 THz in lm/W (SI).
LUMENS_PER_WATT = 683.0


def mixed_spectrum(lights: Sequence[Reading], amounts: Floats) -> Spectrum | None:
    """Return the sum of measured spectra in mW/(m² nm) for lux; None unless all are measured.

    On the samples of the spectra where these are the same for all, otherwise every nanometre.
    """
    spectra = [light.spectrum for light in lights]
    measured = [one for one in spectra if one is not None]
    if not measured or len(measured) < len(spectra):
        return None
    nm = measured[0].wavelengths
    if not all(np.array_equal(one.wavelengths, nm) for one in measured):
        fine = wavelengths_1nm()
        nm = fine[(fine >= GRID[0]) & (fine <= GRID[-1])]
    total = np.zeros(len(nm))
    for one, amount in zip(measured, amounts, strict=True):
        values = one.values if one.wavelengths is nm else interpolate(one, nm)
        total += values * amount * 1e3 / (LUMENS_PER_WATT * tristimulus(one)[1])
    return Spectrum(nm, total)


def mix(lights: Sequence[Reading], amounts: Floats, unit: str = "lx") -> Reading:
    """Return the mixture of lights as a reading.

    Parameters
    ----------
    lights
        One or more.
    amounts
        Illuminance of each in lx (or exposure in lx·s), shape (n,), none negative, not all zero.
    unit
        "lx", "lx s", or "" for amounts that say only the proportion.
    """
    xyz = amounts @ xy_to_xyz(np.stack([light.xy for light in lights]))
    xy = xyz_to_xy(xyz)
    luminance = observer_grid()[:, 1]
    if all(len(light.spectra) for light in lights):
        # What the mixture may be: the first guess at every part, then the second, and so on.
        count = max(len(light.spectra) for light in lights)
        spectra = np.zeros((count, len(GRID)))
        for light, amount in zip(lights, amounts, strict=True):
            per_lux = light.spectra / (light.spectra @ luminance)[:, np.newaxis]
            spectra += amount * per_lux[np.arange(count) % len(light.spectra)]
        spectra /= spectra.max(axis=1, keepdims=True)
    else:
        try:
            spectra = stand_ins("led rgb", xy)
        except Problem:
            # A mixture as deep as its primaries: no spectrum stands in for it either.
            spectra = np.empty((0, len(GRID)))
    lit = [light for light, amount in zip(lights, amounts, strict=True) if amount > 0.0]
    spectrum = mixed_spectrum(lit, amounts[amounts > 0.0])
    cct_k, duv = xy_to_cct(xy)
    total = float(amounts.sum())
    return Reading(
        xy=xy,
        cct_k=cct_k,
        duv=duv,
        spectra=spectra[:1] if spectrum is not None else spectra,
        spectrum=spectrum,
        illuminance_lx=total if unit == "lx" else None,
        exposure_lx_s=total if unit == "lx s" else None,
    )
