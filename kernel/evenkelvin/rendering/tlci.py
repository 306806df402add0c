"""Television Lighting Consistency Index: does a camera, balanced for a light, show true colours?

EBU Tech 3355 (TLCI-2012), edition 2013. The figures are those that the open colour-science project
carries of it; the camera and display are in :mod:`evenkelvin.rendering.camera`.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv, xyz_to_xy
from evenkelvin.colorimetry.difference import delta_e_2000
from evenkelvin.colorimetry.illuminant import daylight_xy, planck
from evenkelvin.colorimetry.observer import observer_at
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.data import Floats, load_table
from evenkelvin.rendering.camera import NM, PATCHES, chart, sampled, seen_by_camera
from evenkelvin.rendering.reference import Unrated
from evenkelvin.said import Said

OBSERVER = Said("TLCI-2012 standard camera and BT.709 display")
EDITION = "EBU Tech 3355 (TLCI-2012), 2013"

#: c₂ in nm·K as the standard has it, older than CIE 15's of today.
_C2_NM_K = 1.435e7
#: The black body is the reference up to here, CIE daylight from there on, a blend between.
BLEND_K = (3400.0, 5000.0)
#: Unit of the offset from the locus in CIE 1960 u v; beyond one the CCT is doubtful.
OFFSET_UNIT_UV = 0.0054

Line = Literal["black body", "daylight"]


@dataclass(frozen=True)
class Temperature:
    """CCT as TLCI-2012 defines it.

    ``distance`` is that from the locus in units of :data:`OFFSET_UNIT_UV`, negative when the light
    lies on the side of the lower u (green); ``offset`` is the same as the standard prints it,
    shifted between 4000 and 5000 K. Neither enters the score.
    """

    cct: float
    line: Line
    distance: float
    offset: float


@dataclass(frozen=True)
class TelevisionConsistency:
    """Q_a with what it rests on; ``delta_e`` of shape (18,) is NaN where a patch is left out."""

    qa: float
    delta_e_a: float
    delta_e: Floats
    temperature: Temperature
    doubtful: bool
    left_out: tuple[str, ...]
    reference: str


@cache
def _locus(line: Line) -> tuple[Floats, Floats]:
    table = load_table(
        "tlci2012_daylight_locus" if line == "daylight" else "tlci2012_planckian_locus"
    )
    return table["cct_k"], xy_to_uv(np.column_stack([table["x"], table["y"]]))


def temperature(uv: Floats) -> Temperature:
    """Return the CCT of CIE 1960 u v, shape (2,): the nearest point of two tabulated lines."""
    lines: tuple[Line, ...] = ("black body", "daylight")
    feet: list[tuple[float, float, float, Line]] = []
    points: list[tuple[float, float, float, Line]] = []
    for line in lines:
        kelvin, locus = _locus(line)
        along = np.diff(locus, axis=0)
        f = np.sum((uv - locus[:-1]) * along, axis=-1) / np.sum(along**2, axis=-1)
        counts = (f >= 0.0) & (f <= 1.0)
        foot = locus[:-1] + f[:, np.newaxis] * along
        apart = np.where(counts, np.hypot(*(uv - foot).T), np.inf)
        k = int(np.argmin(apart))
        if counts[k]:
            cct = kelvin[k] + f[k] * (kelvin[k + 1] - kelvin[k])
            feet.append((float(apart[k]), float(cct), float(foot[k, 0]), line))
        apart = np.hypot(*(uv - locus).T)
        k = int(np.argmin(apart))
        points.append((float(apart[k]), float(kelvin[k]), float(locus[k, 0]), line))
    apart_least, cct, u_foot, line = min(feet or points, key=lambda found: found[0])
    distance = float(np.copysign(apart_least, uv[0] - u_foot)) / OFFSET_UNIT_UV
    offset = distance
    if 4000.0 <= cct < 5000.0:
        offset += 0.9 * (5000.0 - cct) / 1000.0 if distance > 0 else -0.9 * (cct - 4000.0) / 1000.0
    return Temperature(cct=cct, line=line, distance=distance, offset=offset)


def black_body(nm: Floats, cct: float) -> Floats:
    """Return the black body with the standard's own c₂, 100 at 560 nm, shape (n,)."""
    return 100.0 * planck(nm, cct, _C2_NM_K)


def daylight(cct: float) -> Floats:
    """Return daylight at :data:`NM` from the standard's own components and constants, (77,)."""
    x, y = daylight_xy(cct)
    m = 0.02387 + 0.25539 * x - 0.73217 * y
    m1 = (-1.34674 - 1.77861 * x + 5.90757 * y) / m
    m2 = (0.03638 - 31.44464 * x + 30.06400 * y) / m
    table = load_table("tlci2012_daylight")
    return np.asarray(table["s0"] + m1 * table["s1"] + m2 * table["s2"])


def reference_light(found: Temperature) -> tuple[Floats, str]:
    """Return the reference light at :data:`NM`, shape (77,), and its name in words."""
    low, high = BLEND_K
    if found.line == "daylight":
        return daylight(found.cct), Said("daylight {cct:.0f} K", cct=found.cct)
    if found.cct < low:
        return black_body(NM, found.cct), Said("black body {cct:.0f} K", cct=found.cct)
    share = (found.cct - low) / (high - low)
    blend = (1.0 - share) * black_body(NM, low) + share * daylight(high)
    return blend, Said(
        "{share:.0%} black body {low:.0f} K and {share_2:.0%} daylight {high:.0f} K",
        share=1.0 - share,
        low=low,
        share_2=share,
        high=high,
    )


def television_consistency(spectrum: Spectrum) -> TelevisionConsistency:
    """Return the TLCI-2012 of a light, summed over 380–760 nm at 5 nm.

    Finer samples are averaged over 5 nm, where the standard is silent; with narrow lines the
    score depends on that.

    Raises
    ------
    Unrated
        When the camera cannot be balanced for the light, or can hold none of the patches.
    """
    test = sampled(spectrum)
    xyz = test @ observer_at(NM)
    if xyz[1] <= 0.0:
        raise Unrated(Said("No score: there is no light between 380 and 760 nm."))
    found = temperature(xy_to_uv(xyz_to_xy(xyz)))
    reference, words = reference_light(found)
    lab, held = seen_by_camera(test, chart())
    lab_reference, held_reference = seen_by_camera(reference, chart())
    kept = held & held_reference
    if not np.any(kept):
        raise Unrated(
            Said("No score: no patch of the chart stays within what the standard camera can hold.")
        )
    delta_e = np.where(kept, delta_e_2000(lab, lab_reference), np.nan)
    delta_e_a = float(np.mean(delta_e[kept] ** 4) ** 0.25)
    return TelevisionConsistency(
        qa=100.0 / (1.0 + (delta_e_a / 3.16) ** 2.4),
        delta_e_a=delta_e_a,
        delta_e=delta_e,
        temperature=found,
        doubtful=abs(found.distance) > 1.0,
        left_out=tuple(name for name, keep in zip(PATCHES, kept, strict=True) if not keep),
        reference=words,
    )
