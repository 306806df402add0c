"""How each of many logged readings stood against the white it was meant for.

``{"ask": "judge", "readings": [R + {"target": T, "meant"?: M}…], "tolerance"?, "own_gels"?}``

M as :mod:`evenkelvin.requests.meant` has it; a light of another day that it is like is given as a
reading.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.book.logged import logged_cct, logged_xy
from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.lights.tolerance import verdict
from evenkelvin.replies.plain import tolerance_plain
from evenkelvin.replies.seen import greys_by_eye
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.meant import MEANT, LoggedTargets
from evenkelvin.requests.reading import READING, TARGET
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.shapes import Group, Many

_LOGGED: Group = {**READING, **TARGET, "meant": MEANT}
FIELDS: Group = {"readings": Many(_LOGGED), **TOLERANCE, **OWN_GELS}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``verdicts`` ("holds", "near", "out") and ``steps``, in the order asked.

    None where a reading, its target or its meaning says no colour: a log does not stop at a typo.
    ``cct_K`` and ``duv`` are what each reads, None where that is no white.
    ``found`` lists the readings of lights that are meant as found, which are not judged. ``greys``
    are what a grey card looks like in each, to an eye adapted to its ``target``.
    """
    fields.refuse_unknown("ask", *FIELDS)
    radius = read_tolerance(fields)
    readings = [raw if isinstance(raw, dict) else {} for raw in fields.items("readings", most=5000)]
    whites = [raw["target"] if isinstance(raw.get("target"), dict) else {} for raw in readings]
    aims = logged_xy(whites)
    known = LoggedTargets(read_kit(fields.without("kit")))
    white_xy = aims.copy()
    found = []
    for index, raw in enumerate(readings):
        if not raw.get("meant"):
            continue
        meant, target = known.of(raw, whites[index])
        aims[index] = np.nan if target is None else target.xy
        if meant is not None and not meant.judged:
            found.append(index)
    xy = logged_xy(readings)
    apart = delta_uv_prime(xy_to_uv_prime(xy), xy_to_uv_prime(aims))
    steps = _plain(apart / STEP_UV)
    whites_read = logged_cct(xy)
    return {
        "verdicts": [None if each is None else verdict(each, radius) for each in steps],
        "steps": steps,
        "cct_K": _plain(whites_read[:, 0]),
        "duv": _plain(whites_read[:, 1]),
        "found": found,
        "greys": greys_by_eye(xy, white_xy),
        "tolerance": tolerance_plain(radius),
    }


def _plain(values: Floats) -> list[float | None]:
    return [float(each) if np.isfinite(each) else None for each in values]
