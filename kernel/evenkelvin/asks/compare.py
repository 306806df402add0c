"""Two lights side by side.

``{"ask": "compare", "first": R, "second": R, "tolerance"?, "camera"?: C, "own_gels"?}``
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.rendering import metamerism, ssi, verdict
from evenkelvin.rendering.camera import PATCHES, Camera
from evenkelvin.rendering.reference import rated
from evenkelvin.replies.plain import number, white
from evenkelvin.replies.rendering import curves_plain, flags_plain, similarity_plain, warnings_of
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, read_spectral
from evenkelvin.requests.sensitivities import CAMERA, read_own_camera
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Group

_UNSEEN: dict[str, Any] = {"patches": [], "eye": None, "camera": None, "grey_card": None}

FIELDS: Group = {
    "first": READING, "second": READING, **CAMERA, **TOLERANCE, **OWN_GELS,
}  # fmt: skip


def _differences(values: Floats, observer: str) -> dict[str, Any]:
    """Return ΔE₀₀ of the patches in short; null where the camera can hold none of them."""
    known = np.isfinite(values)
    skin = values[metamerism.SKIN]
    worst = int(np.argmax(np.where(known, values, -1.0)))
    return {
        "skin": number(float(np.max(skin))),
        "mean": float(np.mean(values[known])) if known.any() else None,
        "worst": number(float(values[worst])),
        "worst_patch": PATCHES[worst] if known.any() else None,
        "observer": observer,
        "edition": metamerism.EDITION,
    }


def _seen_plain(seen: metamerism.Metamerism, camera: Camera | None) -> dict[str, Any]:
    whose = metamerism.CAMERA
    if camera is not None:
        whose = Said("{camera} and BT.709 display", camera=camera.name)
    return {
        "patches": [
            {"name": name, "eye": float(eye), "camera": number(float(camera))}
            for name, eye, camera in zip(PATCHES, seen.eye, seen.camera, strict=True)
        ],
        "eye": _differences(seen.eye, metamerism.EYE),
        "camera": _differences(seen.camera, whose),
        "grey_card": {
            "camera": seen.grey,
            "eye": seen.eye_grey,
            "a_shift": seen.grey_shift[0],
            "b_shift": seen.grey_shift[1],
            "observer": Said("both adapted to, or balanced for, the first light"),
            "edition": metamerism.EDITION,
        },
    }


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the distance of two lights in u′ v′, their SSI, and what they do to a chart.

    The camera is the standard one of EBU Tech 3355, or C (see
    :mod:`evenkelvin.requests.sensitivities`).
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    first, light_1 = read_spectral(fields.group("first"), kit)
    second, light_2 = read_spectral(fields.group("second"), kit)
    camera = read_own_camera(fields)
    tolerance = read_tolerance(fields)
    name_1, name_2 = first.name or Said("the first light"), second.name or Said("the second light")

    apart = float(delta_uv_prime(xy_to_uv_prime(first.xy), xy_to_uv_prime(second.xy)))
    seen, why = rated(lambda: metamerism.metamerism(light_1, light_2, camera))
    forth = rated(lambda: ssi.spectral_similarity(light_2, light_1, name_1))
    back = rated(lambda: ssi.spectral_similarity(light_1, light_2, name_2))
    return {
        "first": {"name": first.name, **white(first.xy)},
        "second": {"name": second.name, **white(second.xy)},
        "delta_uv": apart,
        "steps": apart / STEP_UV,
        "ssi": {
            **similarity_plain(
                Said("SSI of {light} against {reference}", light=name_2, reference=name_1), forth
            ),
            "back": similarity_plain(
                Said("SSI of {light} against {reference}", light=name_1, reference=name_2), back
            ),
        },
        **(_seen_plain(seen, camera) if seen else {**_UNSEEN, "unrated": why}),
        "curves": curves_plain(light_1, None, [(light_2, name_2)]),
        **flags_plain(verdict.compare(apart / STEP_UV, tolerance, forth[0], seen)),
        "warnings": [
            Said("{name}: {warning}", name=name, warning=warning)
            for name, reading, light in ((name_1, first, light_1), (name_2, second, light_2))
            for warning in warnings_of(reading, light)
        ],
    }
