"""What a reading says, as the answers of several asks hold it."""

from __future__ import annotations

from typing import Any

from evenkelvin.lights.reading import LX_PER_FC, Reading
from evenkelvin.lights.tint import cc_words, neutralising_cc
from evenkelvin.replies.plain import white


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
    if reading.assumed:
        answer["assumed"] = list(reading.assumed)
    return answer
