"""How far to drive each primary of a lamp for a white.

``{"ask": "drive", "primaries": [R with illuminance_lx…], "target": T, "meant"?: M, "prefer"?:
"light" | "similarity", "tolerance"?, "kit"?, "own_gels"?}``; M as
:mod:`evenkelvin.requests.meant` has it.

Each primary read alone at full level from the same place. "light" (default) gives the most light
at the target's chromaticity, "similarity" the spectrum most like the reference of that CCT
(SMPTE ST 2122), for which every primary needs its spectrum.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_xy,
    xy_to_uv_prime,
    xy_to_xyz,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.lights.driving import brightest, most_similar
from evenkelvin.lights.fixing import closing_pack
from evenkelvin.lights.gamut import Polygon, hull, reached
from evenkelvin.lights.mixing import mixed_spectrum
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.rendering import ssi
from evenkelvin.replies.fix import landing_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import KIT, read_kit
from evenkelvin.requests.meant import MEANT, read_aim
from evenkelvin.requests.reading import READING, TARGET, read_reading
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Many

_MOST_PRIMARIES = 12

FIELDS: Group = {
    "primaries": Many(READING), **TARGET, "meant": MEANT,
    "prefer": Choice(("light", "similarity")), **TOLERANCE, **KIT,
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the levels, 0 to 1 of full light, and where they land.

    ``levels``, ``primaries`` [{"name", "level", "lx"}], ``lands`` (a white), ``lux``, ``steps``
    and ``verdict`` against the target, ``reachable``, ``remains_steps``, ``gel`` (the pack that
    closes what remains, or null), ``ssi`` and ``ssi_reference`` (null unless all are spectra).
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    prefer = fields.choice("prefer", ("light", "similarity"), "light")
    groups = fields.groups("primaries", most=_MOST_PRIMARIES)
    primaries = [read_reading(group, every, stand_in="none") for group in groups]
    if not primaries:
        raise Problem(fields.at("primaries"), Said("Read each primary alone at full level first."))
    for group, light in zip(groups, primaries, strict=True):
        if light.illuminance_lx is None:
            raise Problem(
                group.at("illuminance_lx"),
                Said("How much this primary gives is missing: read its lux at full level."),
            )
        if prefer == "similarity" and light.spectrum is None:
            raise Problem(
                group.at("spectrum"),
                Said(
                    "Spectral similarity needs the spectrum of every primary; by x y and lux only "
                    "the most light can be found."
                ),
            )
    target = read_aim(fields, every)
    radius = read_tolerance(fields)

    lux = np.array([light.illuminance_lx for light in primaries])
    xyz = xy_to_xyz(np.stack([light.xy for light in primaries])) * lux[:, np.newaxis]
    wanted = xy_to_uv_prime(target.xy)
    gamut = Polygon(hull(xy_to_uv_prime(np.stack([light.xy for light in primaries]))))
    aim, remains = reached(gamut, wanted)
    levels = (
        _similar(primaries, xyz, aim, target, fields)
        if prefer == "similarity"
        else brightest(xyz, aim)
    )
    landed = xyz_to_xy(levels @ xyz)
    spectrum = mixed_spectrum(primaries, levels * lux)
    steps = float(delta_uv_prime(xy_to_uv_prime(landed), wanted) / STEP_UV)
    rated = None
    if spectrum is not None and np.isfinite(target.cct_k):
        rated = ssi.spectral_similarity(spectrum, *_reference(target))
    closing = closing_pack(aim, wanted, "led rgb", kit, radius) if remains > 0.0 else None
    return {
        "levels": levels.tolist(),
        "primaries": [
            {
                "name": light.name or Said("primary {n}", n=index + 1),
                "level": float(level),
                "lx": float(level * full),
            }
            for index, (light, level, full) in enumerate(zip(primaries, levels, lux, strict=True))
        ],
        "lands": white(landed),
        "target": white(target.xy),
        "lux": float(levels @ lux),
        "steps": steps,
        "verdict": verdict(steps, radius),
        "reachable": remains == 0.0,
        "nearest": white(uv_prime_to_xy(aim)),
        "remains_steps": remains,
        "gel": landing_plain(closing) if closing is not None else None,
        "ssi": rated.value if rated else None,
        "ssi_reference": rated.reference if rated else None,
        "tolerance": tolerance_plain(radius),
        "warnings": [
            Said(
                "Levels are parts of the full light of each primary; a lamp whose dial does "
                "not follow its light needs them read at these settings."
            )
        ],
    }


def _reference(target: Reading) -> tuple[Spectrum, str]:
    if target.cct_k < ssi.DAYLIGHT_FROM_K:
        return ssi.planck_reference(target.cct_k)
    return ssi.daylight_reference(target.cct_k)


def _similar(
    primaries: list[Reading], xyz: Floats, aim: Floats, target: Reading, fields: Fields
) -> Floats:
    if not np.isfinite(target.cct_k):
        raise Problem(
            fields.at("target"),
            Said(
                "A target without a CCT has no reference to be like: ask for the most light "
                "instead."
            ),
        )
    spectra = [light.spectrum for light in primaries if light.spectrum is not None]
    return most_similar(xyz, spectra, aim, _reference(target)[0])
