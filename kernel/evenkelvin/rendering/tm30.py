"""Colour fidelity Rf, gamut Rg and local shifts, from the 99 colour evaluation samples.

CIE 224:2017, 'CIE 2017 colour fidelity index for accurate scientific use' (Rf), and ANSI/IES
TM-30-20, 'IES method for evaluating light source color rendition', whose Rf is the same and which
adds Rg, the sixteen hue bins and the colour vector graphic.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from evenkelvin.colorimetry.appearance import cam02_ucs, ciecam02
from evenkelvin.colorimetry.illuminant import daylight, planck
from evenkelvin.colorimetry.observer import GRID, observer_10deg_at, observer_at
from evenkelvin.colorimetry.spectrum import STEP_NOISE, Spectrum, on_1nm, sprague
from evenkelvin.data import Floats, load_table
from evenkelvin.rendering.reference import rated_cct
from evenkelvin.said import Said

OBSERVER = Said("CIE 1964 10° (colour temperature: CIE 1931 2°)")
EDITION_RF = Said("CIE 224:2017, the same in ANSI/IES TM-30-20")
EDITION = "ANSI/IES TM-30-20"

#: Between these the reference blends from the black body into CIE daylight (CIE 224:2017, 4.2).
BLEND_K = (4000.0, 5000.0)
#: Scale of colour difference to fidelity (CIE 224:2017, equation 21).
_C_F = 6.73
#: Hue bins, each 22.5° wide, counted from red (positive a′) over yellow.
BINS = 16

_NM: Floats = np.arange(380.0, 781.0, dtype=np.float64)


@dataclass(frozen=True)
class ColourRendition:
    """Rf, Rg and everything per sample and per hue bin.

    ``samples`` is Rf of each of the 99 samples. Of the bins, each of shape (16,): ``bin_rf``
    local fidelity, ``chroma_shift`` in per cent, ``hue_shift`` as a fraction of chroma (radians
    for small shifts), NaN where no sample falls. ``circle`` and ``polygon``, each (16, 2), are the
    bins' places in the colour vector graphic, the reference on a circle of radius 1; an arrow
    runs from each place on the first to the same on the second. ``xyz`` are white and the means of
    the bins in the light, and in its reference, (2, 17, 3).
    """

    rf: float
    rg: float
    samples: Floats
    bin_rf: Floats
    chroma_shift: Floats
    hue_shift: Floats
    circle: Floats
    polygon: Floats
    cct: float
    reference: str
    xyz: Floats


def _fidelity(difference: Floats) -> Floats:
    """Return Rf of a colour difference in CAM02-UCS, never below zero (equations 21 and 22)."""
    return np.asarray(10.0 * np.logaddexp(0.0, (100.0 - _C_F * difference) / 10.0))


@cache
def _weights(step: int) -> Floats:
    """Return ρ·(x̄₁₀, ȳ₁₀, z̄₁₀) of white and the 99 samples at 1 or 5 nm, shape (n, 100, 3)."""
    table = load_table("ces")
    nm = _NM[::step]
    samples = np.column_stack([table[f"ces{number}"] for number in range(1, 100)])
    factors = np.column_stack([np.ones(len(nm)), sprague(GRID, samples, nm)])
    return np.asarray(factors[:, :, np.newaxis] * observer_10deg_at(nm)[:, np.newaxis, :])


def reference_light(nm: Floats, cct: float) -> tuple[Floats, str]:
    """Return the reference light at ``nm``, shape (n,), and its name in words (CIE 224, 4.2)."""
    low, high = BLEND_K
    if cct <= low:
        return planck(nm, cct), Said("black body {cct:.0f} K", cct=cct)
    day = daylight(nm, cct, rounded=True)
    if cct >= high:
        return day, Said("CIE daylight {cct:.0f} K", cct=cct)
    # Each with the same luminance first, so that the blend leans to neither.
    y_bar = observer_at(nm)[:, 1]
    black = planck(nm, cct)
    share = (cct - low) / (high - low)
    blend = (1.0 - share) * black / (black @ y_bar) + share * day / (day @ y_bar)
    return blend, Said(
        "{share:.0%} black body and {share_2:.0%} CIE daylight at {cct:.0f} K",
        share=1.0 - share,
        share_2=share,
        cct=cct,
    )


def _is_on_grid(spectrum: Spectrum) -> bool:
    inside = spectrum.wavelengths[(spectrum.wavelengths > 377.5) & (spectrum.wavelengths < 782.5)]
    return len(inside) == len(GRID) and bool(np.allclose(inside, GRID, atol=STEP_NOISE))


def colour_rendition(spectrum: Spectrum) -> ColourRendition:
    """Return fidelity, gamut and local shifts of a light (CIE 224:2017, ANSI/IES TM-30-20).

    A spectrum at 380, 385 … 780 nm is summed as it stands, any other at 1 nm; missing ends count
    as zero, as CIE 224:2017 recommends.

    Raises
    ------
    Unrated
        When the light has no reference (see :func:`rated_cct`).
    """
    step = 5 if _is_on_grid(spectrum) else 1
    nm = _NM[::step]
    if step == 5:
        test = np.interp(nm, spectrum.wavelengths, spectrum.values)
    else:
        test = on_1nm(spectrum, nm, beyond="zero")
    cct = rated_cct(test @ observer_at(nm))
    reference, words = reference_light(nm, cct)

    xyz = np.asarray(np.tensordot(np.stack([test, reference]), _weights(step), axes=1), np.float64)
    xyz = 100.0 * xyz / xyz[:, :1, 1:2]
    ucs = cam02_ucs(ciecam02(xyz[:, 1:], xyz[:, :1]))
    difference = np.linalg.norm(ucs[0] - ucs[1], axis=-1)

    ab = ucs[:, :, 1:]
    hue = np.degrees(np.arctan2(ab[1, :, 1], ab[1, :, 0])) % 360.0
    members = (hue // (360.0 / BINS))[:, np.newaxis] == np.arange(BINS)
    with np.errstate(invalid="ignore", divide="ignore"):
        share = members / members.sum(axis=0)
        means, colours = (np.einsum("sb,lsc->lbc", share, each) for each in (ab, xyz[:, 1:]))
        bin_rf = _fidelity(difference @ share)
        radius = np.linalg.norm(means[1], axis=-1, keepdims=True)
        shift = (means[0] - means[1]) / radius
        middle = np.radians((np.arange(BINS) + 0.5) * 360.0 / BINS)
        outward = np.column_stack([np.cos(middle), np.sin(middle)])
        along = np.column_stack([-np.sin(middle), np.cos(middle)])
        average_hue = np.radians(hue @ share)
        circle = np.column_stack([np.cos(average_hue), np.sin(average_hue)])
    return ColourRendition(
        rf=float(_fidelity(np.mean(difference))),
        rg=100.0 * _area(means[0]) / _area(means[1]),
        samples=_fidelity(difference),
        bin_rf=bin_rf,
        chroma_shift=100.0 * np.sum(shift * outward, axis=-1),
        hue_shift=np.sum(shift * along, axis=-1),
        circle=circle,
        polygon=circle + shift,
        cct=cct,
        reference=words,
        xyz=np.concatenate([xyz[:, :1], colours], axis=1),
    )


def _area(corners: Floats) -> float:
    corners = corners[np.all(np.isfinite(corners), axis=-1)]
    following = np.roll(corners, -1, axis=0)
    return float(np.sum(corners[:, 0] * following[:, 1] - corners[:, 1] * following[:, 0]) / 2.0)
