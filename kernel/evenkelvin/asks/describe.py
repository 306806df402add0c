"""What a reading says: ``{"ask": "describe", "reading": R, "own_gels"?: […]}``."""

from __future__ import annotations

from typing import Any

from evenkelvin.asks.plain import white
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import read_kit
from evenkelvin.lights.reading import LX_PER_FC, Reading, read_reading
from evenkelvin.lights.tint import cc_words, neutralising_cc


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with x, y, u′, v′, CCT, Duv, mired, CC (green +, magenta −) and warnings.

    ``cc`` is the CC density that would neutralise this light, on its spectrum or its stand-in;
    None where no density does.
    """
    fields.refuse_unknown("ask", "reading", "own_gels")
    return described(read_reading(fields.group("reading"), read_kit(fields)))


def described(reading: Reading) -> dict[str, Any]:
    """Return what a reading says as plain data."""
    cc = neutralising_cc(reading.spectra[0]) if len(reading.spectra) else None
    answer = white(reading.xy)
    answer["cc"] = cc
    answer["cc_words"] = cc_words(cc)
    if reading.illuminance_lx is not None:
        answer["illuminance_lx"] = reading.illuminance_lx
        answer["illuminance_fc"] = reading.illuminance_lx / LX_PER_FC
    if reading.exposure_lx_s is not None:
        answer["exposure_lx_s"] = reading.exposure_lx_s
    answer["warnings"] = reading.warnings
    return answer
