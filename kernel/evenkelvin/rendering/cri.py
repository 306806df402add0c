"""CIE colour rendering index Ra and the special indices R1 to R15.

CIE 13.3-1995, 'Method of measuring and specifying colour rendering properties of light sources';
symbols as there. R15, Japanese skin, is the sample that JIS Z 8726 adds and CIE has published as
data set 10.25039/CIE.DS.7chm7z5h.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv, xyz_to_xy
from evenkelvin.colorimetry.illuminant import daylight, planck
from evenkelvin.colorimetry.observer import GRID, observer_at
from evenkelvin.colorimetry.spectrum import Spectrum, on_1nm, sprague
from evenkelvin.data import Floats, load_table
from evenkelvin.rendering.reference import rated_cct
from evenkelvin.said import Said

OBSERVER = "CIE 1931 2°"
EDITION = "CIE 13.3-1995"
EDITION_R15 = Said("CIE 13.3-1995 with the skin sample of JIS Z 8726")

#: Largest ΔC in CIE 1960 u v between a light and its reference (CIE 13.3-1995, 5.3).
TOLERANCE_UV = 5.4e-3
#: From here on the reference is CIE daylight, below it the black body (CIE 13.3-1995, 5.2).
DAYLIGHT_FROM_K = 5000.0

#: The test colours as they look in daylight (CIE 13.3-1995, table 1).
SAMPLES = (
    Said("light greyish red"), Said("dark greyish yellow"), Said("strong yellow green"),
    Said("moderate yellowish green"), Said("light bluish green"), Said("light blue"),
    Said("light violet"), Said("light reddish purple"), Said("strong red"),
    Said("strong yellow"), Said("strong green"), Said("strong blue"),
    Said("light skin"), Said("leaf green"), Said("Japanese skin"),
)  # fmt: skip

_NM: Floats = np.arange(360.0, 781.0, dtype=np.float64)


@dataclass(frozen=True)
class ColourRenderingIndex:
    """Ra, R1–R15 of shape (15,), and what they rest on.

    ``xyz`` are white and the fifteen samples in the light, and in its reference, (2, 16, 3).
    ``distance`` is ΔC, the distance in CIE 1960 u v between the light and its reference; beyond
    :data:`TOLERANCE_UV` the indices are ``doubtful``.
    """

    ra: float
    r: Floats
    cct: float
    distance: float
    doubtful: bool
    reference: str
    xyz: Floats


@cache
def _weights() -> Floats:
    """Return ρ·(x̄, ȳ, z̄) of a perfect white and the fifteen samples, shape (421, 16, 3)."""
    table = load_table("cie_test_colours")
    samples = np.column_stack([table[f"r{number}"] for number in range(1, 16)])
    factors = np.column_stack([np.ones(len(_NM)), sprague(table["wavelength_nm"], samples, _NM)])
    return np.asarray(factors[:, :, np.newaxis] * observer_at(_NM)[:, np.newaxis, :])


def _c_and_d(uv: Floats) -> tuple[Floats, Floats]:
    u, v = uv[..., 0], uv[..., 1]
    return (4.0 - u - 10.0 * v) / v, (1.708 * v + 0.404 - 1.481 * u) / v


def colour_rendering_index(spectrum: Spectrum) -> ColourRenderingIndex:
    """Return Ra and R1–R15 of a light (CIE 13.3-1995), summed over 360–780 nm at 1 nm.

    Where the spectrum does not reach that far its nearest sample holds.

    Raises
    ------
    Unrated
        When the light has no reference (see :func:`rated_cct`).
    """
    test = on_1nm(spectrum, _NM, beyond="nearest")
    cct = rated_cct(test @ _weights()[:, 0])
    reference, words = _reference(cct)
    xyz = np.asarray(np.tensordot(np.stack([test, reference]), _weights(), axes=1), np.float64)
    r, xyz, distance = _indices(xyz)
    return ColourRenderingIndex(
        ra=float(np.mean(r[0, :8])),
        r=r[0],
        cct=cct,
        distance=float(distance[0]),
        doubtful=bool(distance[0] > TOLERANCE_UV),
        reference=words,
        xyz=xyz,
    )


def indices_of_one_white(spectra: Floats) -> Floats:
    """Return R1–R15 of many lights of one chromaticity, which have one reference: (n, 81) on the
    search grid to (n, 15).

    At 1 nm their chromaticities part a little: Ra is that of :func:`colour_rendering_index` to 0.1,
    and R9 to 0.5.

    Raises
    ------
    Unrated
        When they have none (see :func:`rated_cct`).
    """
    xyz = np.tensordot(spectra, _weights_on_grid(), axes=1)
    reference, _ = _reference(rated_cct(xyz[0, 0]))
    of_reference = np.tensordot(reference, _weights(), axes=1)[np.newaxis]
    return _indices(np.concatenate([xyz, of_reference]))[0]


@cache
def _weights_on_grid() -> Floats:
    """Return :func:`_weights` for what is given on the search grid, shape (81, 16, 3)."""
    joined = [on_1nm(Spectrum(GRID, one), _NM, beyond="nearest") for one in np.eye(len(GRID))]
    return np.asarray(np.tensordot(np.stack(joined), _weights(), axes=1))


def _reference(cct: float) -> tuple[Floats, Said]:
    """Return the reference of a CCT at 1 nm, and its name."""
    if cct < DAYLIGHT_FROM_K:
        return planck(_NM, cct), Said("black body {cct:.0f} K", cct=cct)
    # M1 and M2 to three decimals, as CIE 15 has its daylight computed.
    return daylight(_NM, cct, rounded=True), Said("CIE daylight {cct:.0f} K", cct=cct)


def _indices(xyz: Floats) -> tuple[Floats, Floats, Floats]:
    """Return R1–R15 of lights, (n, 15), by X, Y, Z of white and samples in each and, at the end, in
    their reference, (n + 1, 16, 3); these with each white at 100; and ΔC, (n,).
    """
    xyz = 100.0 * xyz / xyz[:, :1, 1:2]
    uv = xy_to_uv(xyz_to_xy(xyz))
    light, ref = uv[:-1, :1], uv[-1, 0]
    # Adaptation of the samples under the light to the reference (5.7).
    (c_k, d_k), (c_r, d_r), (c_ki, d_ki) = map(_c_and_d, (light, ref, uv[:-1, 1:]))
    c, d = c_r / c_k * c_ki, d_r / d_k * d_ki
    below = 16.518 + 1.481 * c - d
    adapted = np.stack([(10.872 + 0.404 * c - 4.0 * d) / below, 5.520 / below], axis=-1)
    w = 25.0 * np.cbrt(xyz[:, 1:, 1]) - 17.0
    shift = np.concatenate([adapted, uv[-1:, 1:]]) - ref
    uvw = np.concatenate([13.0 * w[..., np.newaxis] * shift, w[..., np.newaxis]], axis=-1)
    r = 100.0 - 4.6 * np.linalg.norm(uvw[:-1] - uvw[-1], axis=-1)
    return r, xyz, np.hypot(*(light[:, 0] - ref).T)
