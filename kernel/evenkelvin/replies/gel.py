"""A gel as the answers of several asks hold it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel, shifts_of
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.filters.learned import Learned
from evenkelvin.replies.plain import number


def learned_plain(learned: Learned, light: Floats | None) -> dict[str, Any]:
    """Return a learned gel as plain data, with the nominal gel of its name if there is one."""
    gel = learned.gel
    plain = gel_plain(gel, light)
    plain["unknown"] = learned.unknown_ranges()
    plain["source"] = learned.source
    answer: dict[str, Any] = {"gel": plain, "warnings": list(learned.warnings)}
    for nominal in nominal_kit():
        if nominal.name == gel.name:
            answer["nominal"] = gel_plain(replace(nominal, reference_k=gel.reference_k), light)
    return answer


def gel_plain(gel: Gel, light: Floats | None) -> dict[str, Any]:
    """Return a gel as plain data; its shift on a light, or on its own reference."""
    (shift,) = shifts_of([gel], light)
    return {
        "name": gel.name,
        "wavelengths_nm": GRID.tolist(),
        "transmittance": gel.transmittance.tolist(),
        "mired": number(shift.mired),
        "duv": number(shift.duv),
        "stops": number(shift.stops),
        "reference_K": gel.reference_k,
    }
