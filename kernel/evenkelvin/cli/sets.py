"""Sets and lamps: balance, mix, unmix, dial, dim, seen, render, kit."""

from __future__ import annotations

import argparse
import re

from evenkelvin.cli.lights import (
    aim,
    beside,
    is_number,
    lights_in,
    lights_of,
    meaning,
    meanings,
    numbered,
    reading,
)
from evenkelvin.cli.outcome import Outcome, Plain, Read, asked, given, shown, told
from evenkelvin.cli.tables import table, white
from evenkelvin.problem import Problem

_WAYS = {"gel": ["gel"], "dial": ["dial"], "none": []}


def _note_unusable(options: argparse.Namespace, lights: list[Plain]) -> None:
    """Say which of the lights of an answer are left out, and why."""
    for index, light in enumerate(lights, 1):
        if light["problem"] is not None:
            options.noted.left_out = True
            message = light["problem"]["message"]
            options.noted.notes.append(f"{light['name'] or f'light {index}'}: {message}")


def _each(lights: list[Plain]) -> list[Plain]:
    """The lights, each as a group that holds its reading."""
    each = [dict(light) if "reading" in light else {"reading": light} for light in lights]
    for light in each:
        if isinstance(light["reading"], dict) and "meant" in light["reading"]:
            light["reading"] = dict(light["reading"])
            light["meant"] = light["reading"].pop("meant")
    return each


def balance(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with plans from many gels to none, each with its price."""
    lights = _each(meanings(options, lights_of(options, options.file, read)))
    for index, way in numbered(options.may, lights, "--may").items():
        if way not in _WAYS:
            raise Problem("", told(f"--may takes gel, dial or none, not “{way}”."))
        lights[index]["may"] = _WAYS[way]
    stock = {}
    for text in options.stock:
        gel, equals, cuts = text.rpartition("=")
        if not equals:
            raise Problem("", told(f"--stock takes GEL=CUTS, such as '1/2 CTO=4', not “{text}”."))
        stock[gel] = cuts
    found = asked(
        "balance",
        lights=lights,
        **given(
            kit=options.kit,
            depth=options.depth,
            tolerance=options.tolerance,
            most=options.most,
            whites=given(from_K=options.from_k, to_K=options.to_k) or None,
        ),
        **({"stock": stock} if stock else {}),
    )
    _note_unusable(options, found["lights"])
    lines = []
    for number, plan in enumerate(found["front"], 1):
        lines.append(f"{number}. {plan['words']}")
        rows = [("light", "does", "lands", "Duv", "steps", "", "stops")]
        for part in plan["per_light"]:
            steps = "" if part["steps"] is None else f"{part['steps']:.1f}"
            rows.append(
                (part["name"], part["words"], *white(part["lands"]), steps,
                 part["verdict"] or "as found", f"{part['stops_lost']:.1f}")
            )  # fmt: skip
        lines += [f"   {line}" for line in table(rows).splitlines()]
    text = "\n".join([found["words"], *lines] if found["words"] else lines)
    return shown(found, text or "No light of these can be balanced.", options.json)


def mix(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the sum and each light's part, and the edge to the zone beside it."""
    lights = _each(lights_of(options, options.file, read))
    for name in ("dimmer", "stops"):
        for index, value in numbered(getattr(options, name), lights, f"--{name}").items():
            lights[index][name] = value
    beside = _each(lights_of(options, options.beside, read)) if options.beside else None
    found = asked("mix", lights=lights, **given(beside=beside))
    text = _mixture(found)
    if "beside" in found:
        text += f"\nbeside\n{_mixture(found['beside'])}\n{found['boundary']['words']}"
    return shown(found, text, options.json)


def _mixture(found: Plain) -> str:
    kelvin, duv = white(found)
    level = f"  {found['illuminance_lx']:.4g} lx" if "illuminance_lx" in found else ""
    rows = [("light", "part", "lx", "CCT")]
    for share in found["shares"]:
        lux = "–" if share["lx"] is None else f"{share['lx']:.4g}"
        cct = "–" if share["cct_K"] is None else f"{share['cct_K']:.0f} K"
        rows.append((share["name"], f"{share['part']:.0%}", lux, cct))
    return f"{found['x']:.4f} {found['y']:.4f}  {kelvin}  {duv}{level}\n{table(rows)}"


def unmix(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with each light's share and how sure it is."""
    lights = lights_of(options, options.alone, read)
    found = asked("unmix", lights=lights, sum=reading(options, read))
    rows = [("light", "part", "from", "to", "lx")]
    for share in found["shares"]:
        lux = "–" if share["lx"] is None else f"{share['lx']:.4g}"
        rows.append(
            (share["name"], f"{share['part']:.0%}", f"{share['least_part']:.0%}",
             f"{share['most_part']:.0%}", lux)
        )  # fmt: skip
    return shown(found, "\n".join([table(rows), *found["words"]]), options.json)


def dial(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the x y to dial next."""
    request = aim(argparse.Namespace(**vars(options), kit=None, depth=None))
    if options.meant:
        request["meant"] = meaning(options.meant[-1])
    if options.range:
        request["range"] = {"from_K": options.range[0], "to_K": options.range[1]}
    history = [
        {"dialled": {"x": dialled_x, "y": dialled_y}, "measured": {"x": x, "y": y}}
        for dialled_x, dialled_y, x, y in options.tried
    ]
    found = asked("dial", history=history, **request)
    following = found["next"]
    kelvin, duv = white(following)
    lines = [f"dial x {following['x']:.4f} y {following['y']:.4f} ({kelvin}, Duv {duv})"]
    if found["verdict"] is not None:
        lines.append(f"now {found['steps']:.1f} steps off: {found['verdict']}")
    lines.append(found["words"])
    if found["gel"] is not None:
        lines.append(f"and hang {found['gel']['words']}")
    return shown(found, "\n".join(lines), options.json)


def dim(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the setting, and the colour that the lamp then has."""
    light = {"lamp": "tungsten", **reading(options, read)}
    found = asked(
        "dim",
        reading=light,
        **given(
            to={"cct_K": options.to} if options.to else None,
            percent_light=options.percent,
            stops=options.stops,
            percent_volts=options.volts,
        ),
    )
    text = f"{found['words']}\n{found['percent_volts']:.0f} % of its volts"
    return shown(found, text, options.json)


def seen(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the colours of cards, skin, red and foliage as a screen shows them."""
    found = asked(
        "seen",
        lights=lights_of(options, options.file, read),
        white=given(cct_K=options.white, duv=options.white_duv),
        judge=options.judge,
    )
    _note_unusable(options, found["lights"])
    usable = [light for light in found["lights"] if light["problem"] is None]
    looks = [light for light in usable if light["as_read"] is not None]
    names = list(looks[0]["as_read"]) if looks else []
    rows = [("light", *(re.sub("_", " ", name) for name in names))]
    for light in looks:
        colours = (light["as_read"][name] for name in names)
        rows.append(
            (light["name"],
             *(_hex(colour["srgb"]) + ("*" if colour["guess"] else "") for colour in colours))
        )  # fmt: skip
    text = table(rows)
    if any("*" in cell for row in rows for cell in row):
        text += "\n* a guess: no spectrum was measured"
    return shown(found, text, options.json)


def _hex(srgb: list[int]) -> str:
    return "#" + "".join(f"{value:02x}" for value in srgb)


def render(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with every published figure, and the words for them; of several lights each."""
    colour = len(options.light) == 2 and all(map(is_number, options.light))
    if colour or not options.light:
        return _rendered(options, reading(options, read), "")
    more = beside(options)
    lights = [light | more for light in lights_in(options, options.light, read)]
    if len(lights) == 1:
        return _rendered(options, lights[0], "")
    texts = [_rendered(options, light, light.get("name", "")).text for light in lights]
    return Outcome(f"[{', '.join(texts)}]" if options.json else "\n\n".join(texts))


def _rendered(options: argparse.Namespace, light: Plain, name: str) -> Outcome:
    found = asked("render", reading=light)
    rows = [("figure", "value", "reference", "edition")]
    for one in found["numbers"]:
        value = "–" if one["value"] is None else f"{one['value']:.1f}"
        rows.append((one["name"], value, one["reference"] or "", one.get("edition", "")))
    head = [name] if name else []
    return shown(found, "\n".join([*head, *found["words"], table(rows)]), options.json)


def kit(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the gels and what each does to daylight of 5500 K."""
    found = asked("kit")
    rows = [("gel", "mired", "Duv", "stops")]
    for gel in found["gels"]:
        mired = "–" if gel["mired"] is None else f"{round(gel['mired']) + 0:+d}"
        duv = "–" if gel["duv"] is None else f"{round(gel['duv'], 4) + 0.0:+.4f}"
        rows.append((gel["name"], mired, duv, f"{gel['stops']:.1f}"))
    lamps = [("lamp", ""), *((lamp["kind"], lamp["words"]) for lamp in found["lamps"])]
    return shown(found, f"{table(rows)}\n\n{table(lamps)}\n{found['note']}", options.json)
