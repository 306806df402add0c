"""What the first questions would wait for, done a little at a time while nobody asks."""

from __future__ import annotations

import json
from collections.abc import Iterator
from importlib import import_module
from typing import Any

from evenkelvin.data import load_table
from evenkelvin.desk import answer

#: The modules that the questions below read, each after those it needs.
MODULES = """
colorimetry.spectrum colorimetry.illuminant colorimetry.temperature filters.gel lights.reading
filters.kit lights.tint replies.plain replies.reading filters.scatter shapes requests.kit
exposure.stops rendering.reference rendering.cri rendering.ssi colorimetry.appearance rendering.tm30
lights.evidence lights.families lights.stand_in requests.reading asks.describe filters.pack
lights.dimming lights.region lights.fixing lights.meant replies.dim replies.fix requests.meant
asks.fix lights.field requests.each requests.lit asks.field colorimetry.display rendering.camera
rendering.metamerism rendering.tlci rendering.verdict rendering.curves replies.rendering
lights.showing rendering.seen replies.seen asks.render lights.agreement lights.camera_agreement
lights.similarity requests.judge asks.agree lights.mixing requests.units asks.mix
"""

TABLES = """
cie1931_2deg cie1964_10deg cie_daylight cie_illuminants lamp_families lamp_regions cie_test_colours
ces tlci2012_patches tlci2012_camera tlci2012_daylight
"""

_LIGHT = {"x": "0.4", "y": "0.39"}
_CURVE = {"spectrum": {"wavelengths_nm": list(range(380, 781, 20)), "values": list(range(5, 26))}}
_WHITE = {"cct_K": "5600"}

#: What a person asks soon after the first reading.
QUESTIONS: list[dict[str, Any]] = [
    {"ask": "describe", "reading": _LIGHT},
    {"ask": "describe", "reading": _CURVE},
    {"ask": "fix", "reading": _LIGHT, "target": _WHITE, "depth": 1},
    {"ask": "fix", "reading": _LIGHT, "target": _WHITE},
    {"ask": "field", "lights": [_LIGHT], "target": _WHITE},
    {"ask": "agree", "lights": [_LIGHT], "target": _WHITE},
    {"ask": "mix", "lights": [{"reading": _LIGHT}, {"reading": _WHITE}]},
    {"ask": "render", "reading": _CURVE},
]


def steps() -> Iterator[None]:
    """Practise, one short step for each turn of the iterator.

    Anything may be asked between two steps, and the iterator may be left at any of them.
    """
    for name in MODULES.split():
        import_module(f"evenkelvin.{name}")
        yield
    for name in TABLES.split():
        load_table(name)
        yield
    for question in QUESTIONS:
        json.dumps(answer(question))
        yield
