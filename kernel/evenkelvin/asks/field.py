"""What the balance field shows.

``{"ask": "field", "target": T, "lights": [R…], "packs"?: [[gel names] | null…], "tolerance"?,
"own_gels"?}``
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.observer import observer_grid
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.field import Frame, frame, locus, place
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.problem import Problem
from evenkelvin.replies.plain import tolerance_plain
from evenkelvin.requests.kit import find_gel, read_kit, read_own_gel
from evenkelvin.requests.reading import read_reading, read_target
from evenkelvin.requests.tolerance import read_tolerance
from evenkelvin.said import Said


def _path(view: Frame, light: Reading, gels: tuple[Gel, ...]) -> Floats:
    """Return the light as it is, then after each gel of a pack, (1 + n, 2)."""
    bare = light.spectra[0] / pack_transmittance(light.pack)
    kept = [gel for gel in gels if gel in light.pack]
    order = kept + [gel for gel in gels if gel not in light.pack]
    # Taking gels off is the first leg of the way; without it the way starts where the light is.
    first = len(kept) + (len(kept) == len(light.pack))
    stacks = [pack_transmittance(tuple(order[:n])) for n in range(first, len(order) + 1)]
    seen = np.stack([light.spectra[0], *(bare * stack for stack in stacks)])
    return place(view, xyz_to_uv_prime(seen @ observer_grid()))


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with positions in steps: the lights, their way through a pack, the black-body line.

    ``tolerance.outline`` is a closed polyline; ``locus`` holds the black-body line with mired and
    K at each point.
    """
    fields.refuse_unknown("ask", "target", "lights", "packs", "tolerance", "own_gels")
    kit = read_kit(fields)
    known = {gel.name: gel for gel in kit}
    target = read_target(fields.group("target"), kit)
    groups = fields.groups("lights", most=200)
    lights = [read_reading(group, kit) for group in groups]
    radius = read_tolerance(fields)
    packs = fields.items("packs") or [None] * len(lights)
    if len(packs) != len(lights):
        raise Problem(fields.at("packs"), Said("Give one pack, or none, for each light."))
    view = frame(target.xy, target.cct_k)
    shown = []
    for index, (light, pack) in enumerate(zip(lights, packs, strict=True)):
        across, up = place(view, xy_to_uv_prime(light.xy))
        path: list[list[float]] = []
        if pack is not None:
            at = f"packs.{index}"
            if not isinstance(pack, list):
                raise Problem(at, Said("A pack is a list of gel names."))
            brought = map(read_own_gel, groups[index].groups("own_gels"))
            here = known | {gel.name: gel for gel in brought}
            gels = tuple(find_gel(here, str(name), f"{at}.{i}") for i, name in enumerate(pack))
            path = _path(view, light, gels).tolist()
        shown.append({"name": light.name, "across": float(across), "up": float(up), "path": path})
    mireds, line = locus(view, target.cct_k)
    turns = np.linspace(0.0, 2.0 * np.pi, 73)
    return {
        "unit": "steps",
        "axes": {"left": "warm", "right": "cool", "up": "green", "down": "magenta"},
        "tolerance": {
            **tolerance_plain(radius),
            "outline": (radius * np.column_stack([np.cos(turns), np.sin(turns)])).tolist(),
        },
        "locus": [
            {"across": float(a), "up": float(u), "mired": float(m), "cct_K": float(1e6 / m)}
            for m, (a, u) in zip(mireds, line, strict=True)
        ],
        "lights": shown,
    }
