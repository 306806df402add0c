"""One light and a set: describe, fix, agree."""

from __future__ import annotations

import argparse

from evenkelvin.cli.lights import aim, lights_in, meaning, meanings, reading
from evenkelvin.cli.outcome import Outcome, Read, asked, shown, told
from evenkelvin.cli.tables import table, white
from evenkelvin.problem import Problem

#: Packs that are listed when none comes close.
_FEW = 3


def describe(options: argparse.Namespace, read: Read) -> Outcome:
    found = asked("describe", reading=reading(options, read))
    kelvin, duv = white(found)
    mired = f"{found['mired']:.0f}" if found["mired"] is not None else "–"
    rows = [
        ("x y", f"{found['x']:.4f} {found['y']:.4f}"),
        ("u′ v′", f"{found['u_prime']:.4f} {found['v_prime']:.4f}"),
        ("CCT", kelvin),
        ("Duv", duv),
        ("mired", mired),
        ("tint", found["cc_words"]),
    ]
    if "illuminance_lx" in found:
        rows.append(("lux", f"{found['illuminance_lx']:.4g} ({found['illuminance_fc']:.3g} fc)"))
    return shown(found, table(rows), options.json)


def fix(options: argparse.Namespace, read: Read) -> Outcome:
    request = {"reading": reading(options, read), **aim(options)}
    if options.meant:
        request["meant"] = meaning(options.meant[-1])
    found = asked("fix", **request)
    if found["offset"] is None:
        return shown(found, "as found: not judged", options.json)
    offset, dial = found["offset"], found["dial"]
    leave = ", leave it alone" if found["verdict"] == "holds" else ""
    lines = [
        f"{offset['words']} ({offset['steps']:.1f} steps): {found['verdict']}{leave}",
        f"dial x {dial['x']:.4f} y {dial['y']:.4f}",
    ]
    rows = [("hang", "lands", "Duv", "steps", "", "stops")]
    close = [pack for pack in found["packs"] if pack["verdict"] != "out"]
    for pack in close or found["packs"][:_FEW]:
        rows.append(
            (pack["words"], *white(pack["lands"]), f"{pack['steps']:.1f}",
             pack["promise"].replace("_", " "), f"{pack['stops_lost']:.1f}")
        )  # fmt: skip
    lines.append(table(rows) if found["packs"] else "no gel of the kit helps")
    if found["dim"]:
        lines.append(f"or {found['dim']['words']}: {found['dim']['verdict']}")
    return shown(found, "\n".join(lines), options.json)


def agree(options: argparse.Namespace, read: Read) -> Outcome:
    lights = meanings(options, lights_in(options, options.file, read))
    request = {"lights": lights, **aim(options)}
    if options.hero is not None:
        if not options.hero.isdecimal() or options.hero == "0":
            raise Problem("hero", told("--hero is the number of a light, counted from 1."))
        request["hero"] = int(options.hero) - 1
    found = asked("agree", **request)
    rows = [("light", "CCT", "Duv", "steps", "", "hang", "lands")]
    for index, light in enumerate(found["lights"], 1):
        if light["problem"] is not None:
            options.noted.left_out = True
            options.noted.notes.append(
                f"{light['name'] or f'light {index}'}: {light['problem']['message']}"
            )
            continue
        pack = light["pack"]
        kelvin, duv = white(light)
        steps = "" if light["steps"] is None else f"{light['steps']:.1f}"
        hang, lands = (pack["words"], white(pack["lands"])[0]) if pack else ("", "")
        name, word = light["name"] or f"light {index}", light["verdict"] or "as found"
        rows.append((name, kelvin, duv, steps, word, hang, lands))
    text = f"{found['work']['words']}\n{table(rows)}"
    return shown(found, text, options.json)
