"""What several lights make on one spot.

``{"ask": "mix", "lights": [L…], "beside"?: [L…], "ribbon"?: n, "white"?: T, "own_gels"?}`` with L
``{"reading": R, "share_lx"? | "share_fc"?, "stops"?, "dimmer"?, "distance_m"? | "distance_ft"?,
"measured_at_m"? | "measured_at_ft"?, "name"?}``

A light's amount is its share, or what its reading says; it is changed by ``stops`` (+ brighter),
by ``dimmer`` (percent of the light) and by the inverse square from ``measured_at`` to
``distance``. Less light by ``stops`` or ``dimmer`` moves the colour of a tungsten lamp along, as
ask dim has it. All amounts are in lx, or all in lx·s for flashes; when no light has any, all count
as equal and the answer is relative. ``beside`` is another mixture next to this one: the answer
then tells the boundary between the two, and with ``ribbon`` how it looks in so many places.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv, xy_to_uv_prime, xy_to_xyz, xyz_to_xy
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.display import adaptation, on_display
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.exposure.stops import LIGHT_BOUNDS, amount_in_tenths, lux_at
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.dimming import LEAST_LIGHT, dimmed, may_dim
from evenkelvin.lights.mixing import mix
from evenkelvin.lights.reading import LX_PER_FC, Reading
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import GREY_CARD
from evenkelvin.replies.plain import number
from evenkelvin.replies.plain import white as white_plain
from evenkelvin.replies.reading import described
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.units import LENGTH, LENGTH_BOUNDS, either, length_fields
from evenkelvin.said import Said, Value
from evenkelvin.shapes import Group, Many, Number, Text, Whole

#: From how many steps an edge between two whites is what; common practice, no source. One step
#: is about the least difference that is noticed at all (CIE TN 001:2014).
_EDGES = (
    (1.2, Said("no edge in colour to be seen")),
    (4.0, Said("an edge in colour that a careful eye finds")),
    (10.0, Said("a clear edge in colour")),
)
_STRONG_EDGE = Said("a strong edge in colour")
_MOST_LIGHTS = 40
#: What a mixed spectrum is in, by the unit of the amounts.
_SPECTRUM_UNITS = {"lx": "mW/(m² nm)", "lx s": "mJ/(m² nm)", "": "relative"}


@dataclass(frozen=True, eq=False)
class Mixture:
    """Lights with their amounts, and what they make.

    ``unit`` is that of the amounts, "lx" or "lx s", or empty where only proportions are known.
    """

    lights: list[Reading]
    names: list[str]
    amounts: Floats
    unit: str
    made: Reading
    warnings: list[Said]


_LIGHT: Group = {
    "reading": READING, "share_lx": Number(0, 1e7), "share_fc": Number(0, 1e6),
    "stops": Number(-20, 20), "dimmer": Number(0, 100), **length_fields("distance", 0.1, 100),
    **length_fields("measured_at", 0.1, 100), "name": Text(),
}  # fmt: skip
#: How few and how many places a ribbon has.
_PLACES = (2, 201)
FIELDS: Group = {
    "lights": Many(_LIGHT), "beside": Many(_LIGHT), "ribbon": Whole(*_PLACES),
    "white": TARGET["target"], **OWN_GELS,
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the mixture described as by describe, and each light's share.

    ``shares`` [{"name", "lx" | null, "lx_s" | null, "part", "x", "y", "cct_K"}], the colour being
    that of a filament as it is then dimmed; ``relative`` when neither lux nor
    lux·s are known; ``spectrum`` (a spectrum that a reading may hold) when all were measured, in
    ``spectrum_unit``; with ``beside``: the same of the other mixture, and ``boundary``
    {"delta_uv", "steps", "stops" | null, "words"}, stops being how much brighter the first is,
    null where the two are not in the same unit.

    With ``ribbon`` (2 to 201 places) also ``ribbon``, the edge from the first mixture to the
    second: {"white", "colours": [{"at", "stops", "srgb", "p3", "clipped", "x", "y", "cct_K" | null,
    "duv", "steps"}], "worst": {"at", "index", "halfway", "words"} | null}. ``white`` is what the
    camera is set to: the first mixture, unless the question says. Across the edge the light changes
    evenly, from the first alone at 0 to the second alone at 1, each weighed by its lux (as equals
    where the two are not in the same unit). Each colour is that of a grey card at its own exposure,
    by eye as seen has it; ``stops`` (0 or below) is how much less light there is than at the
    brighter end, for whoever shows that too; ``steps`` is how far the place is from the white.
    ``worst`` is where the colour changes fastest: the end of the dimmer mixture, or the middle
    where both are about as bright; ``halfway`` is where it is as far from the one as from the
    other. It is null where there is no edge in colour to be seen.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    first = read_mixture(fields, "lights", kit)
    answer = mixture_plain(first)
    if fields.given("beside"):
        second = read_mixture(fields, "beside", kit)
        answer["beside"] = mixture_plain(second)
        answer["boundary"] = _boundary(first, second)
    for name in ("ribbon", "white"):
        needs = "beside" if name == "ribbon" else "ribbon"
        if fields.given(name) and not fields.given(needs):
            raise Problem(
                fields.at(needs),
                Said("A ribbon shows the edge between two mixtures: give the one beside too.")
                if name == "ribbon"
                else Said("The white is for the ribbon: say in how many places to show it."),
            )
    if fields.given("ribbon"):
        count = fields.whole("ribbon", 0, *_PLACES)
        white = read_target(fields.group("white"), kit).xy if fields.given("white") else None
        answer["ribbon"] = _ribbon(first, second, count, white)
    return answer


def read_mixture(fields: Fields, name: str, kit: tuple[Gel, ...]) -> Mixture:
    """Return the mixture of a list of lights with shares."""
    groups = fields.groups(name, most=_MOST_LIGHTS)
    if not groups:
        raise Problem(fields.at(name), Said("There are no lights to mix yet: give one or more."))
    lights, names, amounts, warnings = [], [], [], []
    for index, group in enumerate(groups):
        group.refuse_unknown(*_LIGHT)
        light = read_reading(group.group("reading"), kit, stand_in="may")
        names.append(group.text("name", light.name, longest=200) or Said("light {n}", n=index + 1))
        amounts.append(_read_amount(group, light))
        part = _part_of_light(group)
        if light.lamp == "tungsten" and 0.0 < part < 1.0:
            warnings.append(_dimmed_words(names[-1], may_dim(light)))
            if may_dim(light):
                light = dimmed(light, max(part, LEAST_LIGHT))
        lights.append(light)
        warnings += [
            Said("{name}: {warning}", name=names[-1], warning=warning) for warning in light.warnings
        ]
    unit = _common_unit(groups, names, [known for known, _ in amounts])
    values = np.array([(known[unit] if unit else 1.0) * factor for known, factor in amounts])
    if not np.any(values > 0.0):
        raise Problem(fields.at(name), Said("Every light is at zero: nothing is left to mix."))
    return Mixture(lights, names, values, unit, mix(lights, values, unit), warnings)


def _common_unit(
    groups: Sequence[Fields], names: Sequence[Value], known: Sequence[dict[str, float]]
) -> str:
    """Return the unit in which every amount is known; empty where none is known at all."""
    if not any(known):
        return ""
    if not all(known):
        missing = [bool(each) for each in known].index(False)
        raise Problem(
            groups[missing].at("share_lx"),
            Said(
                "{name} has no lux while others have: type its share, or leave lux out for "
                "all of them to count as equal.",
                name=names[missing],
            ),
        )
    for unit in ("lx", "lx s"):
        if all(unit in each for each in known):
            return unit
    flash = ["lx" in each for each in known].index(False)
    other = ["lx s" in each for each in known].index(False)
    raise Problem(
        groups[flash].at("share_lx"),
        Said(
            "{flash} is read in lux·s and {other} in lux: these cannot be weighed together. Type "
            "the share of each in lux, or use the mixture of flash and ambient.",
            flash=names[flash],
            other=names[other],
        ),
    )


def _read_amount(group: Fields, light: Reading) -> tuple[dict[str, float], float]:
    """Return what a light gives, by unit, as far as it is known, and what changes it."""
    read = {"lx": light.illuminance_lx, "lx s": light.exposure_lx_s}
    known = {unit: amount for unit, amount in read.items() if amount is not None}
    if group.given("share_lx") and group.given("share_fc"):
        raise Problem(
            group.at("share_fc"),
            Said("Give the share in lux or in foot-candles, not both of them."),
        )
    low, high = LIGHT_BOUNDS
    if group.given("share_lx"):
        known = {"lx": _nothing_or(group, "share_lx", low, high, Said("the share in lux"))}
    elif group.given("share_fc"):
        label = Said("the share in foot-candles")
        share = _nothing_or(group, "share_fc", low / LX_PER_FC, high / LX_PER_FC, label)
        known = {"lx": share * LX_PER_FC}
    factor = _part_of_light(group)
    there = either(group, "distance", LENGTH, LENGTH_BOUNDS)
    here = either(group, "measured_at", LENGTH, LENGTH_BOUNDS)
    if (there is None) != (here is None):
        lacking = "measured_at_m" if here is None else "distance_m"
        raise Problem(
            group.at(lacking),
            Said(
                "The inverse square needs two distances: where the light was read and where it "
                "stands now."
            ),
        )
    if there is not None and here is not None:
        factor *= lux_at(1.0, here, there)
    return known, factor


def _nothing_or(group: Fields, name: str, low: float, high: float, label: Said) -> float:
    """Return a number that is zero, where a light is out, or within bounds that are real."""
    if group.number(name, 100.0, 0.0, high, label) == 0.0:
        return 0.0
    return group.number(name, 100.0, low, high, label)


def _part_of_light(group: Fields) -> float:
    """Return what stops and dimmer leave of a light; above 1 it is brighter than it was read."""
    stops = group.number("stops", 0.0, -20.0, 20.0)
    percent = _nothing_or(group, "dimmer", 1e-3, 100.0, Said("the dimmer in percent"))
    return float(2.0**stops * percent / 100.0)


def _dimmed_words(name: Value, known: bool) -> Said:
    if known:
        return Said(
            "{name}: a dimmed filament turns warmer; its colour is an estimate until it is read "
            "again at that setting.",
            name=name,
        )
    return Said(
        "{name}: a dimmed tungsten lamp turns warmer than it was read; read it again at that "
        "setting.",
        name=name,
    )


def mixture_plain(mixture: Mixture) -> dict[str, Any]:
    """Return a mixture as plain data."""
    answer = described(mixture.made)
    total = float(mixture.amounts.sum())
    answer["relative"] = not mixture.unit
    answer["shares"] = [
        {
            "name": name,
            "lx": float(amount) if mixture.unit == "lx" else None,
            "lx_s": float(amount) if mixture.unit == "lx s" else None,
            "part": float(amount) / total,
            "x": float(light.xy[0]),
            "y": float(light.xy[1]),
            "cct_K": number(light.cct_k),
        }
        for name, amount, light in zip(mixture.names, mixture.amounts, mixture.lights, strict=True)
    ]
    spectrum = mixture.made.spectrum
    if spectrum is not None:
        answer["spectrum"] = {
            "wavelengths_nm": spectrum.wavelengths.tolist(),
            "values": spectrum.values.tolist(),
        }
        answer["spectrum_unit"] = _SPECTRUM_UNITS[mixture.unit]
    answer["warnings"] = mixture.warnings
    return answer


def _ribbon(first: Mixture, second: Mixture, count: int, white_xy: Floats | None) -> dict[str, Any]:
    """Return the edge from one mixture to the other in so many places."""
    white_xy = first.made.xy if white_xy is None else white_xy
    adapt = adaptation(white_xy)
    places = np.linspace(0.0, 1.0, count)
    ends = xy_to_xyz(np.stack([first.made.xy, second.made.xy]))
    if first.unit == second.unit:
        ends = ends * np.array([[first.amounts.sum()], [second.amounts.sum()]])
    xyz = (1.0 - places)[:, np.newaxis] * ends[0] + places[:, np.newaxis] * ends[1]
    cards = xyz @ adapt.T
    cards = cards * (GREY_CARD / cards[:, 1:2])
    codes, drawn_in = on_display(cards, "srgb")
    wide, _ = on_display(cards, "p3")
    xy = xyz_to_xy(xyz)
    steps = delta_uv_prime(xy_to_uv_prime(xy), xy_to_uv_prime(white_xy)) / STEP_UV
    stops = np.log2(xyz[:, 1] / xyz[:, 1].max())
    colours = [
        {
            "at": float(at),
            "stops": float(stop),
            "srgb": code.tolist(),
            "p3": wide_code.tolist(),
            "clipped": bool(clipped),
            "x": float(here[0]),
            "y": float(here[1]),
            "cct_K": number(float(cct)),
            "duv": float(duv),
            "steps": float(step),
        }
        for at, stop, code, wide_code, clipped, here, (cct, duv), step in zip(
            places, stops, codes, wide, drawn_in, xy, uv_to_cct(xy_to_uv(xy)), steps, strict=True
        )
    ]
    apart = _boundary(first, second)["steps"]
    worst = _worst(ends, count) if apart >= _EDGES[0][0] else None
    return {"white": white_plain(white_xy), "colours": colours, "worst": worst}


def _worst(ends: Floats, count: int) -> dict[str, Any]:
    """Return where the colour changes fastest between two mixtures, X, Y, Z of shape (2, 3)."""
    # On the way u′ v′ is a ratio of straight lines, whose change is in inverse proportion to the
    # square of what is below; so the place halfway in colour divides the edge as those are.
    first, second = ends @ np.array([1.0, 15.0, 3.0])
    halfway = float(first / (first + second))
    near = min(halfway, 1.0 - halfway)
    if abs(halfway - 0.5) < 0.05:
        words = Said("The colour changes evenly across the edge.")
        at = 0.5
    elif halfway > 0.5:
        words = Said(
            "The edge is hardest beside the second zone: half of the change in colour is in its "
            "last {near:.0%}.",
            near=near,
        )
        at = 1.0
    else:
        words = Said(
            "The edge is hardest beside the first zone: half of the change in colour is in its "
            "first {near:.0%}.",
            near=near,
        )
        at = 0.0
    return {"at": at, "index": round(at * (count - 1)), "halfway": halfway, "words": words}


def _boundary(first: Mixture, second: Mixture) -> dict[str, Any]:
    apart = float(delta_uv_prime(xy_to_uv_prime(first.made.xy), xy_to_uv_prime(second.made.xy)))
    steps = apart / STEP_UV
    words = next((words for limit, words in _EDGES if steps < limit), _STRONG_EDGE)
    stops = None
    if first.unit == second.unit:
        stops = float(np.log2(first.amounts.sum() / second.amounts.sum()))
        if abs(stops) >= 0.05:
            words = Said(
                "{edge}, and {stops} between them", edge=words, stops=amount_in_tenths(stops)
            )
    return {"delta_uv": apart, "steps": steps, "stops": stops, "words": words}
