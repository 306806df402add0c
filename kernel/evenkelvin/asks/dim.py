"""What dimming does to the colour of a tungsten light.

``{"ask": "dim", "reading": R, "to": T | "percent_light": p | "stops": s | "percent_volts": v,
"target"?: T, "pairs"?: [{"percent_light" | "percent_volts", "measured": R}…], "tolerance"?,
"own_gels"?}``

The reading, of lamp "tungsten", is 100 %; ``stops`` counts + brighter, so −1 is a stop down. With
an amount, ``target`` is what the landing is compared with. ``pairs`` are readings of the same lamp
at known settings: they correct the law.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.dimming import (
    LEAST_LIGHT,
    MELTS_K,
    Filament,
    Setting,
    Taught,
    filament,
    filament_k,
)
from evenkelvin.lights.reading import READING_K, Reading
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.replies.dim import setting_plain, setting_words
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, TARGET, read_reading
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, Number

_WAYS = ("to", "percent_light", "stops", "percent_volts")
_MOST_PAIRS = 20
ESTIMATE = Said("This is an estimate until the light is read again at that setting.")

_PAIR: Group = {
    "percent_light": Number(0.1, 200), "percent_volts": Number(1, 120), "measured": READING,
}  # fmt: skip
FIELDS: Group = {
    "to": READING, "percent_light": Number(0.1, 200), "stops": Number(-10, 1),
    "percent_volts": Number(1, 120), "reading": READING, **TARGET, "pairs": Many(_PAIR),
    **TOLERANCE, **OWN_GELS,
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the setting and where the light then lands.

    ``percent_light``, ``percent_volts``, ``stops`` (negative: darker); the landing as ``x``, ``y``,
    ``u_prime``, ``v_prime``, ``cct_K``, ``duv``, ``mired``, and ``illuminance_lx`` where it was
    read; ``delta_uv``, ``steps`` and ``verdict`` against ``to`` or ``target``, else None;
    ``unreached``, a sentence where dimming cannot give what was asked (the answer is then as close
    as it comes), else None; ``words``, ``tolerance``, ``warnings``.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields.without("kit"))
    reading = _read_filament(fields.group("reading"), kit)
    lamp = _taught(fields, reading, kit)
    radius = read_tolerance(fields)
    given = [name for name in _WAYS if fields.given(name)]
    if len(given) != 1:
        raise Problem(
            fields.at(given[1] if given else "to"),
            Said("Ask one thing: a colour, a part of the light, stops, or a part of the volts."),
        )
    way = given[0]
    if way == "to" and fields.given("target"):
        raise Problem(fields.at("target"), Said("The colour asked for is the target already."))
    aim = "to" if way == "to" else "target"
    target = None
    if fields.given(aim):
        target = read_reading(fields.group(aim), kit, stand_in="none")
    setting, unreached = _setting(fields, way, lamp, target)
    landed = lamp.landed(setting)
    apart = None
    if target is not None:
        apart = float(delta_uv_prime(xy_to_uv_prime(landed.xy), xy_to_uv_prime(target.xy)))
        if way == "to" and verdict(apart / STEP_UV, radius) != "holds":
            unreached = _short(lamp, setting, landed, target, apart / STEP_UV)
    return {
        **white(landed.xy),
        **setting_plain(setting),
        "illuminance_lx": landed.illuminance_lx,
        "exposure_lx_s": landed.exposure_lx_s,
        "delta_uv": apart,
        "steps": None if apart is None else apart / STEP_UV,
        "verdict": None if apart is None else verdict(apart / STEP_UV, radius),
        "unreached": unreached,
        "words": setting_words(setting, landed),
        "tolerance": tolerance_plain(radius),
        "warnings": [*reading.warnings, ESTIMATE],
    }


def _read_filament(fields: Fields, kit: tuple[Gel, ...]) -> Reading:
    reading = read_reading(fields, kit)
    if reading.lamp != "tungsten":
        raise Problem(
            fields.at("lamp"),
            Said(
                "Only a filament turns warmer as it is dimmed: if this is tungsten, say so as "
                "its lamp."
            ),
        )
    kelvin = filament_k(reading)
    if np.isfinite(kelvin) and READING_K[0] <= kelvin <= MELTS_K:
        return reading
    shown = f"{kelvin:.0f} K" if np.isfinite(kelvin) else "no CCT"
    raise Problem(
        fields.at("pack"),
        Said(
            "No filament gives this light: {shown} without the gels that are named, and "
            "tungsten melts at {melts_k:.0f} K. Name the gels that are on it, or choose "
            "another lamp type.",
            shown=shown,
            melts_k=MELTS_K,
        ),
    )


def _taught(fields: Fields, reading: Reading, kit: tuple[Gel, ...]) -> Filament:
    taught = []
    for group in fields.groups("pairs", most=_MOST_PAIRS):
        group.refuse_unknown(*_PAIR)
        given = [name for name in ("percent_light", "percent_volts") if group.given(name)]
        if len(given) != 1:
            raise Problem(
                group.at("percent_light"),
                Said(
                    "Give the setting of this reading in percent of light or of volts, one of them."
                ),
            )
        part = _percent(group, given[0], 99.9)
        measured = _read_filament(group.group("measured"), kit)
        kelvin = filament_k(measured)
        if kelvin >= filament_k(reading):
            raise Problem(
                group.at("measured"),
                Said(
                    "At {part:g} % the filament reads {kelvin:.0f} K, no warmer than at 100 %: "
                    "check which reading is which.",
                    part=100.0 * part,
                    kelvin=kelvin,
                ),
            )
        if given[0] == "percent_light":
            taught.append(Taught(kelvin, light=part))
        else:
            taught.append(Taught(kelvin, _lux_part(measured, reading), part))
    try:
        return filament(reading, taught)
    except ValueError:
        raise Problem(
            fields.at("pairs"),
            Said(
                "These readings contradict each other: less must always read warmer. Check "
                "which setting belongs to which reading."
            ),
        ) from None


def _lux_part(measured: Reading, reading: Reading) -> float | None:
    now, was = measured.illuminance_lx, reading.illuminance_lx
    if now is None or was is None or measured.pack != reading.pack:
        return None
    return now / was if LEAST_LIGHT <= now / was < 1.0 else None


def _percent(fields: Fields, name: str, most: float = 100.0) -> float:
    label = (
        Said("the light in percent") if name == "percent_light" else Said("the volts in percent")
    )
    return fields.number(name, low=100.0 * LEAST_LIGHT, high=most, label=label) / 100.0


def _setting(
    fields: Fields, way: str, lamp: Filament, target: Reading | None
) -> tuple[Setting, str | None]:
    """Return the setting asked for, and what cannot be reached of it."""
    if way == "to":
        assert target is not None
        return lamp.nearest(xy_to_uv_prime(target.xy)), None
    if way == "percent_light":
        return lamp.at_light(_percent(fields, way)), None
    if way == "percent_volts":
        setting = lamp.at_volts(_percent(fields, way))
    else:
        stops = fields.number(way, low=-20.0, high=20.0)
        if stops > 0.0:
            return lamp.at_light(1.0), (
                Said(
                    "A dimmer only takes light away: it cannot be brighter than it was read. If it "
                    "was dimmed then, read it at full."
                )
            )
        setting = lamp.at_light(2.0**stops)
    if setting.light < LEAST_LIGHT * (1.0 - 1e-9):
        return lamp.at_light(LEAST_LIGHT), _TOO_LOW
    return setting, None


_TOO_LOW = Said("Below 0.1 % of its light a filament only glows: that is as far as this goes.")


def _short(lamp: Filament, setting: Setting, landed: Reading, target: Reading, steps: float) -> str:
    """Return why a colour is not reached."""
    as_read = lamp.reading
    if setting.light > 0.999:
        if np.isfinite(as_read.cct_k) and np.isfinite(target.cct_k):
            return Said(
                "Dimming only makes it warmer: at full it reads {full:.0f} K, and "
                "{wanted:.0f} K is cooler.",
                full=as_read.cct_k,
                wanted=target.cct_k,
            )
        return Said("Dimming brings it no closer: it only makes it warmer.")
    if setting.light <= LEAST_LIGHT * (1.0 + 1e-9):
        return Said(
            "Even at 0.1 % of its light it is still {steps:.1f} colour steps away.", steps=steps
        )
    side = Said("green") if landed.duv > target.duv else Said("magenta")
    return Said(
        "Dimming leaves it {steps:.1f} colour steps away, too {side}: that is for gel.",
        steps=steps,
        side=side,
    )
