"""Flash and the light that is there already, on one frame.

``{"ask": "flash_mix", "flash": R with exposure_lx_s, "ambient": R with illuminance_lx, "time_s" |
"shutter_deg" with "fps", "tolerance"?, "kit"?, "own_gels"?, "depth"?, "most"?: 6}``

The flash gives its lx·s whatever the shutter (as long as it is open for the whole burst), the
ambient its lx times the time the shutter is open: so the shutter sets the mixture.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.exposure.stops import ratio_stops, ratio_words, time_words
from evenkelvin.fields import Fields
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.fixing import landings, offset
from evenkelvin.lights.mixing import mix
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.replies.fix import landing_plain, offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.replies.reading import described
from evenkelvin.requests.camera import SHUTTER, read_shutter
from evenkelvin.requests.kit import KIT, read_kit
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Whole

#: Other shutter times that are shown, in stops.
_OTHER_STOPS = (-2, -1, 0, 1, 2)
_BURST = 1.0 / 250.0

FIELDS: Group = {
    "flash": READING, "ambient": READING, **SHUTTER, **TOLERANCE, **KIT, "depth": Whole(1, 3),
    "most": Whole(1, 100),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the ratio, the colour of the mixture, and packs that match flash to ambient.

    ``ratio_stops`` is flash over ambient, ``ratio_words``; ``flash_part``; ``mix`` as by
    describe, with ``exposure_lx_s``; ``offset`` of the flash from the ambient, ``verdict``;
    ``packs`` as in fix, for the flash, each with ``ratio_stops`` and ``mix`` after it;
    ``shutters`` [{"time_s", "words", "ratio_stops", "mix"}] up to two stops either side.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    flash_fields, ambient_fields = fields.group("flash"), fields.group("ambient")
    flash = read_reading(flash_fields, every)
    ambient = read_reading(ambient_fields, every)
    if flash.exposure_lx_s is None:
        raise Problem(
            flash_fields.at("exposure_lx_s"),
            Said("How much the flash gives is missing: read it in lux·s, without the ambient."),
        )
    if ambient.illuminance_lx is None:
        raise Problem(
            ambient_fields.at("illuminance_lx"),
            Said("How much the ambient gives is missing: read it in lux, without the flash."),
        )
    _, _, time = read_shutter(fields)
    if time is None:
        raise Problem(
            fields.at("time_s"),
            Said(
                "The shutter is missing: give its time, such as 1/60, or its angle with the "
                "frame rate."
            ),
        )
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)
    most = fields.whole("most", 6, 1, 100)

    burst, lux = flash.exposure_lx_s, ambient.illuminance_lx
    made = mix([flash, ambient], np.array([burst, lux * time]), "lx s")
    ratio = ratio_stops(burst, lux * time)
    away = offset(flash, ambient)
    packs = []
    for landing in landings(flash, ambient, kit, radius, depth, most):
        through = burst * 2.0**-landing.stops_lost
        gelled = Reading(landing.xy, *xy_to_cct(landing.xy), flash.spectra)
        after = mix([gelled, ambient], np.array([through, lux * time]), "lx s")
        packs.append(
            landing_plain(landing)
            | {"ratio_stops": ratio_stops(through, lux * time), "mix": white(after.xy)}
        )
    shutters = []
    for stops in _OTHER_STOPS:
        other = time * 2.0**stops
        amounts = np.array([burst, lux * other])
        shutters.append(
            {
                "time_s": other,
                "words": time_words(other),
                "ratio_stops": ratio_stops(*amounts.tolist()),
                "mix": white(mix([flash, ambient], amounts, "lx s").xy),
            }
        )
    warnings = [*flash.warnings, *ambient.warnings]
    if time < _BURST:
        warnings.append(
            Said(
                "At so short a time the shutter may cut the burst or not sync with it: check "
                "the sync speed and read the flash at this setting."
            )
        )
    return {
        "time_s": time,
        "ratio_stops": ratio,
        "ratio_words": ratio_words(ratio),
        "flash_part": burst / (burst + lux * time),
        "mix": described(made),
        "offset": offset_plain(away),
        "verdict": verdict(away.steps, radius),
        "tolerance": tolerance_plain(radius),
        "packs": packs,
        "shutters": shutters,
        "warnings": warnings,
    }
