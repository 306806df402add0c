"""Lights as the command line takes them, turned into what a question carries."""

from __future__ import annotations

import argparse
import base64
import json
import re
from typing import Any

from evenkelvin.cli.outcome import Plain, Read, asked, given, told
from evenkelvin.interchange.kinds import recognise
from evenkelvin.problem import Problem

#: Of what a file states beside its spectrum, what a light is.
_LEVELS = ("illuminance_lx", "illuminance_fc", "exposure_lx_s")


def file(options: argparse.Namespace, raw: bytes, name: str) -> Plain:
    """What a file of spectra or readings holds, told by the desk; the rest is noted."""
    if recognise(raw).door == "book":
        raise Problem("", told(f"{name} is no light: a book is opened with 'book'."))
    choices = {}
    for choice in options.choose:
        field_, sign, value = choice.partition("=")
        if not sign:
            raise Problem(
                "", told(f"--choose takes FIELD=CHOICE, such as decimal=comma, not “{choice}”.")
            )
        choices[field_] = value
    found = asked(
        "import",
        file_name="" if name == "-" else name,
        bytes_base64=base64.b64encode(raw).decode("ascii"),
        choices=choices,
    )
    if found["problems"] and not found["spectra"] and not found.get("readings"):
        first, *others = found["problems"]
        options.noted.add(name, {"problems": others, "questions": []})
        raise Problem(first["field"], first["message"], first.get("line"))
    options.noted.add(name, found)
    return found


def lights_of(options: argparse.Namespace, name: str, read: Read) -> list[Plain]:
    """The lights of a file: a JSON list, readings, or else each of its spectra."""
    return [light for light, _ in stated_lights(options, name, read)]


def stated_lights(options: argparse.Namespace, name: str, read: Read) -> list[tuple[Plain, Plain]]:
    """The lights of a file, and what it states beside each: its date, its time of day."""
    raw = read(name)
    if raw.lstrip()[:1] in (b"[", b"{"):
        plain = plain_json(raw)
        if isinstance(plain, dict) and "entries" in plain:
            raise Problem("", told(f"{name} is a book, not a light: open it with 'book'."))
        lights = plain.get("lights") if isinstance(plain, dict) else plain
        if not isinstance(lights, list):
            raise Problem("lights", told(f"{name} holds no list of lights."))
        return [(light, {}) for light in lights]
    found = file(options, raw, name)
    if found.get("readings"):
        return [
            (
                {
                    field: value
                    for field, value in each.items()
                    if field not in ("line", "white", "problem", "stated")
                },
                each.get("stated", {}),
            )
            for each in found["readings"]
        ]
    lights = [each for each in found["spectra"] if each["quantity"] == "light"]
    for each in found["spectra"]:
        if each["quantity"] != "light":
            options.noted.left_out = True
            options.noted.notes.append(f"{each['name']}: a {each['quantity']} is no light.")
    if not lights:
        raise Problem("", told("The file holds no light, only gels or surfaces."))
    return [
        (
            {
                "name": each["name"],
                "spectrum": {"wavelengths_nm": each["wavelengths_nm"], "values": each["values"]},
                **given(**{name: each["stated"].get(name) for name in _LEVELS}),
            },
            each["stated"],
        )
        for each in lights
    ]


def lights_in(options: argparse.Namespace, names: list[str], read: Read) -> list[Plain]:
    """The lights of several files, one after the other."""
    return [light for name in names for light in lights_of(options, name, read)]


def beside(options: argparse.Namespace) -> Plain:
    """Return what the options say of a light, beside its place in x and y or its file."""
    return given(
        cct_K=options.cct,
        duv=options.duv,
        illuminance_lx=options.lux,
        lamp=options.lamp,
        pack=options.on,
    )


def is_number(text: str) -> bool:
    """Tell whether an argument is a number and not a file."""
    return bool(re.fullmatch(_NUMBER, text))


def reading(options: argparse.Namespace, read: Read) -> Plain:
    """Return the one light that the arguments state."""
    more = beside(options)
    if len(options.light) == 2:
        return {"x": options.light[0], "y": options.light[1], **more}
    if len(options.light) == 1:
        lights = lights_of(options, options.light[0], read)
        if len(lights) != 1:
            raise Problem("", told(f"The file holds {len(lights)} lights, not one: ask 'agree'."))
        return {**lights[0], **more}
    if options.light:
        raise Problem("", told("Give x and y, or one file, or --cct with --duv."))
    return more


def aim(options: argparse.Namespace) -> Plain:
    """Return the target, the tolerance and the kit."""
    sought = given(tolerance=options.tolerance, kit=options.kit, depth=options.depth)
    if options.match:
        sought["target"] = {"x": options.match[0], "y": options.match[1]}
    elif options.target:
        sought["target"] = given(cct_K=options.target, duv=options.target_duv)
    return sought


_NUMBER = r"\d+(?:[.,]\d*)?|[.,]\d+"


def meaning(text: str) -> Plain:
    """What ``--meant`` says, as a question has it."""
    word = text.strip().replace("−", "-")
    if word in ("white", "found"):
        return {"as": word}
    if re.fullmatch(rf"[+-]({_NUMBER})", word):
        return {"warmer_mired" if word[0] == "+" else "cooler_mired": word[1:]}
    if own := re.fullmatch(rf"({_NUMBER}) ?K", word):
        return {"cct_K": own[1]}
    if colour := re.fullmatch(rf"({_NUMBER})\s+({_NUMBER})", word):
        return {"x": colour[1], "y": colour[2]}
    return {"as_through": [gel.strip() for gel in word.split(" + ")]}


def meanings(options: argparse.Namespace, lights: list[Plain]) -> list[Plain]:
    """The lights with what ``--meant N=MEANING`` says of each."""
    meant = [dict(light) for light in lights]
    for text in options.meant:
        number, equals, words = text.partition("=")
        if not equals or not number.isdecimal() or not 1 <= int(number) <= len(meant):
            raise Problem(
                "meant", told("--meant of several lights is N=MEANING, N counted from 1.")
            )
        meant[int(number) - 1]["meant"] = meaning(words)
    return meant


def numbered(texts: list[str], lights: list[Plain], option: str) -> dict[int, str]:
    """Return what ``N=VALUE`` says of each light, N counted from 1, by its index."""
    found = {}
    for text in texts:
        number, equals, value = text.partition("=")
        if not equals or not number.isdecimal() or not 1 <= int(number) <= len(lights):
            raise Problem(
                "",
                told(f"{option} takes N=VALUE, N from 1 to {len(lights)}, not “{text}”."),
            )
        found[int(number) - 1] = value
    return found


def plain_json(raw: bytes) -> Any:
    """Return what JSON text holds."""
    try:
        return json.loads(raw)
    except (ValueError, RecursionError) as error:
        raise Problem("", told(f"This is not JSON: {error}.")) from None
