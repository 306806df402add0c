"""How each of many logged readings stood against the white it was meant for.

``{"ask": "judge", "readings": [R + {"target": T}…], "tolerance"?}``
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.book.logged import logged_xy
from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.fields import Fields
from evenkelvin.lights.tolerance import verdict
from evenkelvin.replies.plain import tolerance_plain
from evenkelvin.requests.tolerance import read_tolerance


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``verdicts`` ("holds", "near", "out") and ``steps``, in the order asked.

    None where a reading or its target says no colour: a log does not stop at a typo.
    """
    fields.refuse_unknown("ask", "readings", "tolerance")
    radius = read_tolerance(fields)
    readings = [raw if isinstance(raw, dict) else {} for raw in fields.items("readings", most=5000)]
    targets = [raw["target"] if isinstance(raw.get("target"), dict) else {} for raw in readings]
    apart = delta_uv_prime(xy_to_uv_prime(logged_xy(readings)), xy_to_uv_prime(logged_xy(targets)))
    steps = [float(each) if np.isfinite(each) else None for each in apart / STEP_UV]
    return {
        "verdicts": [None if each is None else verdict(each, radius) for each in steps],
        "steps": steps,
        "tolerance": tolerance_plain(radius),
    }
