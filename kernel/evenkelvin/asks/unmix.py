"""Which share of a sum is whose: ``{"ask": "unmix", "lights": [R…], "sum": R, "own_gels"?}``.

Each light read alone, and all of them together. With spectra of all, any number of lights; by x y
alone, three at most can be told apart.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.fixing import offset, offset_words
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.unmixing import Missing, Shares, unmix
from evenkelvin.problem import Problem
from evenkelvin.replies.fix import offset_plain
from evenkelvin.replies.plain import white
from evenkelvin.requests.each import name_of, read_each
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.said import Said, joined, listed
from evenkelvin.shapes import Group, Many

_MOST_LIGHTS = 12

FIELDS: Group = {"lights": Many(READING), "sum": READING, **OWN_GELS}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each light's share of the sum, and how far it can be trusted.

    ``shares_lx`` (null without lux), ``shares`` [{"name", "part", "lx" | null, "uncertainty_part",
    "least_part", "most_part"}], ``residual`` {"steps", "part"}, ``by`` "spectra" | "x y",
    ``certain``, ``missing`` null | {"lx" | null, "white" | null, "words"}, ``words``. For flash,
    lx stands for lx·s.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    groups = fields.groups("lights", most=_MOST_LIGHTS)
    if not groups:
        raise Problem(fields.at("lights"), Said("Give the reading of each light alone."))
    lights = _read_lights(groups, kit)
    total = read_reading(fields.group("sum"), kit, stand_in="none")
    names = [light.name or Said("light {n}", n=index + 1) for index, light in enumerate(lights)]
    found = unmix(lights, total)
    amount = total.illuminance_lx or total.exposure_lx_s
    whole = amount or 1.0
    unit = "lx·s" if total.exposure_lx_s is not None else "lx"
    shown = [
        {
            "name": name,
            "part": float(share) / whole,
            "lx": float(share) if amount is not None else None,
            "uncertainty_part": float(doubt) / whole,
            "least_part": float(least) / whole,
            "most_part": float(most) / whole,
        }
        for name, share, doubt, least, most in zip(
            names, found.amounts, found.uncertainty, found.least, found.most, strict=True
        )
    ]
    missing = found.missing and _missing_plain(found.missing, total, unit)
    return {
        "shares_lx": [one["lx"] for one in shown],
        "shares": shown,
        "residual": {"steps": found.residual_steps, "part": found.residual_part},
        "by": "spectra" if found.spectral else "x y",
        "certain": found.certain,
        "missing": missing,
        "words": _words(found, names, found.amounts / whole)
        + ([missing["words"]] if missing else []),
        "warnings": total.warnings,
    }


def _read_lights(groups: list[Fields], kit: tuple[Gel, ...]) -> list[Reading]:
    """Return the lights; name one that cannot be used, as nobody's share is known without it."""
    read = read_each(groups, lambda group: read_reading(group, kit, stand_in="none"))
    lights = []
    for index, (group, one) in enumerate(zip(groups, read, strict=True)):
        if isinstance(one, Problem):
            named = Said("{name}: {message}", name=name_of(group, index), message=one.message)
            where = group.at(one.field) if one.field else group.path
            raise Problem(where, named, one.line, one.choices)
        lights.append(one)
    return lights


def _missing_plain(missing: Missing, total: Reading, unit: str) -> dict[str, Any]:
    if missing.xy is None:
        nearest = Reading(missing.nearest, *xy_to_cct(missing.nearest), total.spectra)
        away = offset(total, nearest)
        return {
            "lx": missing.amount,
            "white": None,
            "offset": offset_plain(away),
            "words": (
                Said(
                    "The sum has light that none of these give: it is {offset} against their "
                    "closest mixture. Look for a source that pulls that way.",
                    offset=offset_words(away),
                )
            ),
        }
    shown = white(missing.xy)
    colour = (
        Said("x {x:.3f}, y {y:.3f}", x=shown["x"], y=shown["y"])
        if shown["cct_K"] is None
        else Said(
            "x {x:.3f}, y {y:.3f}, about {kelvin:.0f} K",
            x=shown["x"],
            y=shown["y"],
            kelvin=shown["cct_K"],
        )
    )
    much = missing.amount is not None and (total.illuminance_lx or total.exposure_lx_s)
    return {
        "lx": missing.amount if much else None,
        "white": shown,
        "words": (
            Said(
                "The sum has {amount:.3g} {unit} of light that none of these give: {colour}.",
                amount=missing.amount or 0.0,
                unit=unit,
                colour=colour,
            )
            if much
            else Said("The sum has light that none of these give: {colour}.", colour=colour)
        ),
    }


def _words(found: Shares, names: list[str], parts: Floats) -> list[Said]:
    shares = joined(
        Said("{name} {part:.0%}", name=name, part=part)
        for name, part in zip(names, parts, strict=True)
    )
    words = [Said("{shares}.", shares=shares)]
    if len(names) > 3 and not found.spectral and not found.certain:
        words.append(
            Said(
                "{count} lights cannot be told apart by x y and lux: three at most. Load their "
                "spectra, or switch some off and read again.",
                count=len(names),
            )
        )
    else:
        for group in found.alike:
            together = float(sum(parts[index] for index in group))
            words.append(
                Said(
                    "{lights} are too much alike to tell their shares apart; "
                    "together they give {together:.0%}.",
                    lights=listed(names[index] for index in group),
                    together=together,
                )
            )
    if found.certain:
        words.append(Said("The readings tell these lights apart."))
    elif not found.alike and found.missing is None:
        words.append(
            Said("Take these shares as a rough guess: a small error of a reading moves them.")
        )
    return words
