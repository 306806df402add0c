"""The kit: ``{"ask": "kit", "own_gels"?: […]}``."""

from __future__ import annotations

from typing import Any

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import shifts_of
from evenkelvin.filters.kit import NOTE
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.lights.tolerance import PRESETS
from evenkelvin.replies.plain import number
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.shapes import Group

FIELDS: Group = {**OWN_GELS}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the gels, their shift on their reference and their curves."""
    fields.refuse_unknown("ask", *FIELDS)
    gels = read_kit(fields)
    return {
        "gels": [
            {
                "name": gel.name,
                "family": gel.family,
                "cut": gel.cut,
                "mired": number(shift.mired),
                "duv": shift.duv,
                "cc": gel.cc,
                "stops": shift.stops,
                "reference_K": gel.reference_k,
                "nominal": gel.nominal,
                "wavelengths_nm": GRID.tolist(),
                "transmittance": gel.transmittance.tolist(),
            }
            for gel, shift in zip(gels, shifts_of(gels), strict=True)
        ],
        "tolerances": PRESETS,
        "lamps": [{"kind": kind, "words": words} for kind, words in LAMPS.items()],
        "note": NOTE,
    }
