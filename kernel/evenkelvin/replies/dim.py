"""A dimmer's setting and where a lamp then lands, as several answers hold it."""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.exposure.stops import amount_in_tenths
from evenkelvin.lights.dimming import Dimming, Setting
from evenkelvin.lights.reading import Reading
from evenkelvin.replies.plain import white
from evenkelvin.said import Figure, Said


def dimming_plain(found: Dimming | None) -> dict[str, Any] | None:
    """Return what dimming does for a light; None where it does nothing."""
    if found is None:
        return None
    return {
        **setting_plain(found.setting),
        "lands": white(found.landed.xy),
        "delta_uv": found.delta_uv,
        "steps": found.delta_uv / STEP_UV,
        "verdict": found.verdict,
        "before_gel": found.before_gel,
        "words": setting_words(found.setting, found.landed),
    }


def setting_plain(setting: Setting) -> dict[str, float]:
    """Return a setting of a dimmer."""
    return {
        "percent_light": 100.0 * setting.light,
        "percent_volts": 100.0 * setting.volts,
        "stops": float(np.log2(setting.light)),
    }


def setting_words(setting: Setting, landed: Reading) -> Said:
    """Return a setting as it is called out: 'dim to 16 % of its light, 2.6 stops; then 2500 K'."""
    then = Said("no CCT")
    if np.isfinite(landed.cct_k):
        then = Said("{kelvin:.0f} K", kelvin=landed.cct_k)
    percent = 100.0 * setting.light
    if percent > 99.5:
        return Said("leave it at full: {then}", then=then)
    return Said(
        "dim to {percent} % of its light, {stops}; then {then}",
        percent=Figure(f"{percent:.0f}" if percent >= 10.0 else f"{percent:.2g}"),
        stops=amount_in_tenths(np.log2(setting.light)),
        then=then,
    )
