"""What the balance field shows.

``{"ask": "field", "target": T, "lights": [R…], "packs"?: [[gel names] | null…], "tolerance"?,
"own_gels"?, "gel_scatter_percent"?}``

Each R may carry ``meant`` (see :mod:`evenkelvin.requests.meant`).
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
from evenkelvin.lights.fixing import landing_regions
from evenkelvin.lights.meant import groups_alike, meant_words
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.problem import Problem
from evenkelvin.replies.each import unusable_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import GEL, KIT, OWN_GELS, find_gel, read_kit, read_own_gel
from evenkelvin.requests.lit import LitSet
from evenkelvin.requests.meant import MEANT
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many

#: Angles of a ring's outline.
_TURNS = np.linspace(0.0, 2.0 * np.pi, 73)

FIELDS: Group = {
    **TARGET, "lights": Many({**READING, "meant": MEANT}), "packs": Many(Many(GEL)), **TOLERANCE,
    **OWN_GELS, "gel_scatter_percent": KIT["gel_scatter_percent"],
}  # fmt: skip


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

    A light that cannot be used has only its ``name`` and a ``problem``, its field named within
    the light; ``problem`` is null for the others.

    ``tolerance.outline`` is a closed polyline about the white; ``targets`` are the colours that
    lights are meant to be, the white first where one is meant so: each with its place, its own
    ``outline``, ``lights`` (indices; lights meant alike share one) and ``words``. Each light names
    its ``target`` by index, null where it is not judged. ``locus`` holds the black-body line with
    mired and K at each point. ``region`` is the edge of where a light lands with its pack in 9 of
    10, empty where there is none to tell.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    known = {gel.name: gel for gel in kit}
    target = read_target(fields.group("target"), kit)
    groups = fields.groups("lights", most=200)
    lit = LitSet(groups, kit, lambda group: read_reading(group, kit, ("meant",)))
    targets = lit.targets(target)
    places, meant = lit.places, lit.meant
    radius = read_tolerance(fields)
    packs = fields.items("packs") or [None] * len(groups)
    if len(packs) != len(groups):
        raise Problem(fields.at("packs"), Said("Give one list of gels, or none, for each light."))
    view = frame(target.xy, target.cct_k)
    circle = radius * np.column_stack([np.cos(_TURNS), np.sin(_TURNS)])
    rings = []
    ring_of: dict[int, int] = {}
    # The white first, whichever light is meant so.
    for ring, group in enumerate(
        sorted(groups_alike(targets), key=lambda some: meant[some[0]].way != "white")
    ):
        aim = targets[group[0]]
        assert aim is not None
        centre = place(view, xy_to_uv_prime(aim.xy))
        rings.append(
            {
                "across": float(centre[0]),
                "up": float(centre[1]),
                "outline": (centre + circle).tolist(),
                "lights": [places[index] for index in group],
                **white(aim.xy),
                "words": meant_words(meant[group[0]]),
            }
        )
        ring_of |= dict.fromkeys((places[index] for index in group), ring)
    shown: list[dict[str, Any]] = []
    for index, light in zip(places, lit.lights, strict=True):
        pack = packs[index]
        across, up = place(view, xy_to_uv_prime(light.xy))
        path: list[list[float]] = []
        region: list[list[float]] = []
        if pack is not None:
            at = f"packs.{index}"
            if not isinstance(pack, list):
                raise Problem(at, Said("The gels of a light are a list of their names."))
            brought = map(read_own_gel, groups[index].groups("own_gels"))
            here = known | {gel.name: gel for gel in brought}
            gels = tuple(find_gel(here, str(name), f"{at}.{i}") for i, name in enumerate(pack))
            path = _path(view, light, gels).tolist()
            landed, _ = landing_regions(light, [gels])[0]
            if np.any(landed.covariance):
                region = place(view, landed.edge).tolist()
        shown.append(
            {
                "name": light.name,
                "problem": None,
                "across": float(across),
                "up": float(up),
                "path": path,
                "region": region,
                "target": ring_of.get(index),
            }
        )
    for where, problem in sorted(lit.problems.items()):
        shown.insert(where, unusable_plain(lit.name_at(where), problem))
    mireds, line = locus(view, target.cct_k)
    return {
        "unit": "steps",
        "axes": {"left": "warm", "right": "cool", "up": "green", "down": "magenta"},
        "tolerance": {
            **tolerance_plain(radius),
            "outline": circle.tolist(),
        },
        "targets": rings,
        "locus": [
            {"across": float(a), "up": float(u), "mired": float(m), "cct_K": float(1e6 / m)}
            for m, (a, u) in zip(mireds, line, strict=True)
        ],
        "lights": shown,
    }
