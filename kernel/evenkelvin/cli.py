"""The command line: arguments in, text out. Files and streams are `__main__`'s business.

Lights are put to the desk, so that a script and a phone give the same numbers.
"""

from __future__ import annotations

import argparse
import base64
import json
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any

from evenkelvin import __version__
from evenkelvin.book.entries import Book, merge
from evenkelvin.book.file import as_plain, as_text, read_book
from evenkelvin.book.link import make_link
from evenkelvin.book.meaning import Thing, above, below, part_of, summary, things
from evenkelvin.book.sheet import STYLES, write_csv
from evenkelvin.desk import answer
from evenkelvin.interchange.kinds import recognise
from evenkelvin.interchange.text import decoded
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: Reads a file by its name, "-" meaning standard input; raises OSError.
Read = Callable[[str], bytes]
Plain = dict[str, Any]

#: Packs that are listed when none comes close.
_FEW = 3
_OVER = """\
A FILE may be a spectrum or readings in any format that the app reads, and "-" is standard input.
Numbers take a decimal comma too; write a negative one as --duv=-0,003.
Exit code 0: all done. 1: nothing could be done. 2: wrong arguments. 3: done, but something was left
out, as standard error says line by line.
"""


#: Exit code of a command that was done, though not with all that it was given.
LEFT_OUT = 3


@dataclass
class Outcome:
    """What a command gives: text for standard output, files to write, and the exit code.

    ``notes`` are for standard error: what was left out, and what was taken where a file leaves it
    open.
    """

    text: str = ""
    files: dict[str, str] = field(default_factory=dict)
    code: int = 0
    notes: list[str] = field(default_factory=list)


def run(arguments: Sequence[str], read: Read) -> Outcome:
    """Run one command.

    Raises
    ------
    Problem
        When it cannot be answered as it stands.
    OSError
        When a file cannot be read.
    SystemExit
        From argparse, for wrong arguments and for --help.
    """
    options = _parser().parse_args(list(arguments))
    options.noted = _Noted()
    outcome: Outcome = options.command(options, read)
    outcome.notes = options.noted.notes
    outcome.code = outcome.code or (LEFT_OUT if options.noted.left_out else 0)
    if outcome.text and not outcome.text.endswith("\n"):
        outcome.text += "\n"
    return outcome


@dataclass
class _Noted:
    """What is to be said of the files that a command read."""

    notes: list[str] = field(default_factory=list)
    left_out: bool = False

    def add(self, name: str, found: Plain) -> None:
        """Note what the desk said of one file beside what it holds."""
        where = "" if name == "-" else f"{name}: "
        for problem in found["problems"]:
            self.left_out = True
            line = f"line {problem['line']}: " if problem.get("line") is not None else ""
            self.notes.append(f"{where}{line}{problem['message']}")
        for question in found["questions"]:
            options = ", ".join(question["options"])
            self.notes.append(
                f"{where}{question['message']} Taken: {question['taken']}. "
                f"Say it with --choose {question['field']}=CHOICE, of {options}."
            )


#: What a field of the desk's is called on the command line.
_OPTIONS = {
    "meant": "--meant",
    "meant.warmer_mired": "--meant",
    "meant.cooler_mired": "--meant",
    "meant.cct_K": "--meant",
    "meant.x": "--meant",
    "meant.y": "--meant",
    "meant.as_through": "--meant",
    "target": "--target or --match",
    "target.cct_K": "--target",
    "target.duv": "--target-duv",
    "target.x": "--match",
    "target.y": "--match",
    "tolerance": "--tolerance",
    "kit": "--kit",
    "depth": "--depth",
    "hero": "--hero",
    "reading.x": "X",
    "reading.y": "Y",
    "reading.cct_K": "--cct",
    "reading.duv": "--duv",
    "reading.illuminance_lx": "--lux",
    "reading.lamp": "--lamp",
    "reading.pack": "--on",
}


def complaint(problem: Problem) -> str:
    """Return a problem as a line of text, the option named where one is at fault."""
    place = f" (line {problem.line})" if problem.line is not None else ""
    option = _OPTIONS.get(re.sub(r"\.\d+$", "", problem.field), problem.field)
    return f"{option}: {problem.message}{place}" if option else f"{problem.message}{place}"


def _told(text: str) -> Said:
    # What only the command line says is said in English.
    return Said("{text}", text=text)


# -------------------------------------------------------------------------------- arguments


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="python -m evenkelvin", description="Every light on the set, one white.", epilog=_OVER
    )
    parser.add_argument("--version", action="version", version=f"evenkelvin {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")

    def command(name: str, act: Callable[..., Outcome], words: str) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=words, description=words, epilog=_OVER)
        made.set_defaults(command=act)
        return made

    def light(made: argparse.ArgumentParser) -> None:
        made.add_argument("light", nargs="*", metavar="X Y | FILE", help="x and y, or one file")
        made.add_argument("--cct", metavar="K", help="instead of x y: the CCT")
        made.add_argument("--duv", metavar="DUV", help="with --cct: its Duv, + green")
        made.add_argument("--lux", metavar="LX", help="illuminance")
        made.add_argument("--lamp", choices=list(LAMPS), help="kind of lamp")
        made.add_argument(
            "--on", action="append", default=[], metavar="GEL", help="a gel already on it"
        )

    def target(made: argparse.ArgumentParser) -> None:
        made.add_argument("--target", metavar="K", help="the white to match, as a CCT")
        made.add_argument("--target-duv", metavar="DUV", help="its Duv, 0 if not given")
        made.add_argument(
            "--match", nargs=2, metavar=("X", "Y"), help="instead: the light to match"
        )
        made.add_argument(
            "--meant", action="append", default=[], metavar="MEANING",
            help="what the light is meant to be beside it: white, found, +60 or =-60 (mired), "
            "2700K, 'X Y', or gels to be seen through such as '1/2 CTB + 1/8 plus green'; "
            "with agree N=MEANING (repeat), N the light's number",
        )  # fmt: skip
        made.add_argument("--tolerance", metavar="STEPS", help="tight, normal, loose, or steps")
        made.add_argument("--kit", action="append", metavar="GEL", help="a gel in stock (repeat)")
        made.add_argument("--depth", metavar="N", help="most gels stacked, 1 to 3")

    def choosing(made: argparse.ArgumentParser) -> None:
        made.add_argument(
            "--choose", action="append", default=[], metavar="FIELD=CHOICE",
            help="answer what a file leaves open, such as decimal=comma (repeat)",
        )  # fmt: skip

    def as_json(made: argparse.ArgumentParser) -> None:
        made.add_argument("--json", action="store_true", help="the whole answer as JSON")

    describe = command("describe", _describe, "say what one light is")
    light(describe)
    choosing(describe)
    as_json(describe)
    fix = command("fix", _fix, "say what brings one light to a white")
    light(fix)
    target(fix)
    choosing(fix)
    as_json(fix)
    agree = command("agree", _agree, "say how several lights agree")
    agree.add_argument("file", help="JSON list of lights, or readings or spectra in a file")
    agree.add_argument("--hero", metavar="N", help="match the N-th light, counted from 1")
    target(agree)
    choosing(agree)
    as_json(agree)
    convert = command("convert", _convert, "read spectra and write them in another format")
    convert.add_argument("file")
    choosing(convert)
    convert.add_argument("--to", choices=["tm27", "csv", "json"], default="csv")
    convert.add_argument("-o", "--out", metavar="FILE", help="write here (a folder for several)")
    book = command("book", _book, "open one book, or merge several")
    book.add_argument("file", nargs="+")
    book.add_argument("--of", metavar="ID", help="only this production, location, setup or light")
    book.add_argument(
        "--to", choices=["list", "json", *STYLES, "link", "report"], default="list",
        help="list; the book's file; CSV with comma or semicolon; a link; the report as JSON",
    )  # fmt: skip
    book.add_argument("-o", "--out", metavar="FILE", help="write here, not to the screen")
    ask = command("ask", _ask, "put any question to the kernel: JSON in, JSON out")
    ask.add_argument("file", nargs="?", default="-")
    return parser


def _given(**fields: Any) -> Plain:
    return {name: value for name, value in fields.items() if value not in (None, "", [])}


def _asked(**request: Any) -> Plain:
    found = answer(request)
    if "problem" in found:
        raise Problem(**found["problem"])
    return found


def _file(options: argparse.Namespace, raw: bytes, name: str) -> Plain:
    """What a file of spectra or readings holds, told by the desk; the rest is noted."""
    if recognise(raw).door == "book":
        raise Problem("", _told(f"{name} is no light: a book is opened with 'book'."))
    choices = {}
    for choice in options.choose:
        field_, sign, value = choice.partition("=")
        if not sign:
            raise Problem(
                "", _told(f"--choose takes FIELD=CHOICE, such as decimal=comma, not “{choice}”.")
            )
        choices[field_] = value
    found = _asked(
        ask="import",
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


def _lights(options: argparse.Namespace, name: str, read: Read) -> list[Plain]:
    """The lights of a file: a JSON list, readings, or else each of its spectra."""
    raw = read(name)
    if raw.lstrip()[:1] in (b"[", b"{"):
        plain = _json(raw)
        if isinstance(plain, dict) and "entries" in plain:
            raise Problem("", _told(f"{name} is a book, not a light: open it with 'book'."))
        lights = plain.get("lights") if isinstance(plain, dict) else plain
        if not isinstance(lights, list):
            raise Problem("lights", _told(f"{name} holds no list of lights."))
        return lights
    found = _file(options, raw, name)
    if found.get("readings"):
        return [
            {
                field: value
                for field, value in each.items()
                if field not in ("line", "white", "problem")
            }
            for each in found["readings"]
        ]
    lights = [each for each in found["spectra"] if each["quantity"] == "light"]
    for each in found["spectra"]:
        if each["quantity"] != "light":
            options.noted.left_out = True
            options.noted.notes.append(f"{each['name']}: a {each['quantity']} is no light.")
    if not lights:
        raise Problem("", _told("The file holds no light, only gels or surfaces."))
    return [
        {
            "name": each["name"],
            "spectrum": {"wavelengths_nm": each["wavelengths_nm"], "values": each["values"]},
        }
        for each in lights
    ]


def _reading(options: argparse.Namespace, read: Read) -> Plain:
    more = _given(
        cct_K=options.cct,
        duv=options.duv,
        illuminance_lx=options.lux,
        lamp=options.lamp,
        pack=options.on,
    )
    if len(options.light) == 2:
        return {"x": options.light[0], "y": options.light[1], **more}
    if len(options.light) == 1:
        lights = _lights(options, options.light[0], read)
        if len(lights) != 1:
            raise Problem("", _told(f"The file holds {len(lights)} lights, not one: ask 'agree'."))
        return {**lights[0], **more}
    if options.light:
        raise Problem("", _told("Give x and y, or one file, or --cct with --duv."))
    return more


def _aim(options: argparse.Namespace) -> Plain:
    aim = _given(tolerance=options.tolerance, kit=options.kit, depth=options.depth)
    if options.match:
        aim["target"] = {"x": options.match[0], "y": options.match[1]}
    elif options.target:
        aim["target"] = _given(cct_K=options.target, duv=options.target_duv)
    return aim


_NUMBER = r"\d+(?:[.,]\d*)?|[.,]\d+"


def _meaning(text: str) -> Plain:
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


def _meanings(options: argparse.Namespace, lights: list[Plain]) -> list[Plain]:
    """The lights with what ``--meant N=MEANING`` says of each."""
    meant = [dict(light) for light in lights]
    for text in options.meant:
        number, equals, words = text.partition("=")
        if not equals or not number.isdecimal() or not 1 <= int(number) <= len(meant):
            raise Problem(
                "meant", _told("--meant of several lights is N=MEANING, N counted from 1.")
            )
        meant[int(number) - 1]["meant"] = _meaning(words)
    return meant


def _json(raw: bytes) -> Any:
    try:
        return json.loads(raw)
    except (ValueError, RecursionError) as error:
        raise Problem("", _told(f"This is not JSON: {error}.")) from None


# ----------------------------------------------------------------------------------- tables


def _table(rows: Sequence[Sequence[str]]) -> str:
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    )


def _white(found: Plain) -> list[str]:
    kelvin = f"{found['cct_K']:.0f} K" if found["cct_K"] is not None else "no CCT"
    # Adding zero turns a rounded −0 into 0.
    return [kelvin, f"{round(found['duv'], 4) + 0.0:+.4f}"]


def _warned(text: str, *warnings: str) -> str:
    return "\n".join([text, *(f"Note: {words}" for words in warnings)])


def _shown(options: argparse.Namespace, found: Plain, text: str) -> Outcome:
    return Outcome(json.dumps(found, indent=2, ensure_ascii=False) if options.json else text)


def _describe(options: argparse.Namespace, read: Read) -> Outcome:
    found = _asked(ask="describe", reading=_reading(options, read))
    kelvin, duv = _white(found)
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
    return _shown(options, found, _warned(_table(rows), *found["warnings"]))


def _fix(options: argparse.Namespace, read: Read) -> Outcome:
    request = {"reading": _reading(options, read), **_aim(options)}
    if options.meant:
        request["meant"] = _meaning(options.meant[-1])
    found = _asked(ask="fix", **request)
    if found["offset"] is None:
        return _shown(options, found, _warned("as found: not judged", *found["warnings"]))
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
            (pack["words"], *_white(pack["lands"]), f"{pack['steps']:.1f}", pack["verdict"],
             f"{pack['stops_lost']:.1f}")
        )  # fmt: skip
    lines.append(_table(rows) if found["packs"] else "no gel of the kit helps")
    if found["dim"]:
        lines.append(f"or {found['dim']['words']}: {found['dim']['verdict']}")
    return _shown(options, found, _warned("\n".join(lines), *found["warnings"]))


def _agree(options: argparse.Namespace, read: Read) -> Outcome:
    lights = _meanings(options, _lights(options, options.file, read))
    request = {"lights": lights, **_aim(options)}
    if options.hero is not None:
        if not options.hero.isdecimal() or options.hero == "0":
            raise Problem("hero", _told("--hero is the number of a light, counted from 1."))
        request["hero"] = int(options.hero) - 1
    found = _asked(ask="agree", **request)
    rows = [("light", "CCT", "Duv", "steps", "", "hang", "lands")]
    for index, light in enumerate(found["lights"], 1):
        if light["problem"] is not None:
            options.noted.left_out = True
            options.noted.notes.append(
                f"{light['name'] or f'light {index}'}: {light['problem']['message']}"
            )
            continue
        pack = light["pack"]
        kelvin, duv = _white(light)
        steps = "" if light["steps"] is None else f"{light['steps']:.1f}"
        hang, lands = (pack["words"], _white(pack["lands"])[0]) if pack else ("", "")
        name, word = light["name"] or f"light {index}", light["verdict"] or "as found"
        rows.append((name, kelvin, duv, steps, word, hang, lands))
    text = f"{found['work']['words']}\n{_table(rows)}"
    return _shown(options, found, _warned(text, *found["warnings"]))


def _convert(options: argparse.Namespace, read: Read) -> Outcome:
    found = _file(options, read(options.file), options.file)
    spectra, readings = found["spectra"], found.get("readings", [])
    if not spectra:
        raise Problem(
            "",
            _told(
                f"The file holds {len(readings)} readings and no spectrum, so there is nothing to "
                "convert: ask 'agree', or 'describe' for a single one."
            ),
        )
    if readings:
        options.noted.left_out = True
        options.noted.notes.append(f"{len(readings)} readings without a spectrum are left out.")
    if options.to == "json":
        return _out(options, json.dumps(spectra, indent=1, ensure_ascii=False))
    files = _asked(ask="write", format=options.to, spectra=spectra)["files"]
    if len(files) > 1:
        folder = f"{options.out}/" if options.out else ""
        written = {folder + each["name"]: each["text"] for each in files}
        return Outcome("\n".join(written), written)
    return _out(options, files[0]["text"])


def _out(options: argparse.Namespace, text: str) -> Outcome:
    return Outcome("", {options.out: text}) if options.out else Outcome(text)


def _book(options: argparse.Namespace, read: Read) -> Outcome:
    raws = {name: read(name) for name in options.file}
    for name, raw in raws.items():
        if (what := recognise(raw).what) is not None:
            raise Problem("book", _told(f"{name} is {what}, not a book of Evenkelvin."))
    texts = [decoded(raws[name]) for name in options.file]
    book = read_book(texts[0]) if len(texts) == 1 else merge(*(read_book(t).entries for t in texts))
    if options.to == "report":
        if not options.of:
            raise Problem(
                "of", _told("Say with --of which setup, location or production to report on.")
            )
        report = _asked(ask="report", book=as_plain(book), of=options.of)
        return _out(options, json.dumps(report, indent=1, ensure_ascii=False))
    if options.of:
        book = part_of(book.entries, options.of)
    if options.to in STYLES:
        return _out(options, write_csv(book.entries, options.to))
    if options.to == "link":
        return _out(options, make_link(book))
    if options.to == "json":
        return _out(options, as_text(book))
    return _out(options, _warned(_listing(book), *book.warnings))


def _listing(book: Book) -> str:
    found, standing = summary(book), things(book.entries)
    rows = [("id", "", "readings", "latest")]

    def add(thing: Thing, depth: int) -> None:
        lights = below(standing, "setup", thing.id) if thing.kind == "setup" else []
        readings = [each for light in lights for each in below(standing, "light", light.id)]
        latest = max((each.present["at"][:16].replace("T", " ") for each in readings), default="")
        twice = " (edited in two places)" if thing.heads[1:] else ""
        count = str(len(readings)) if thing.kind == "setup" else ""
        rows.append((thing.id, f"{'  ' * depth}{thing.name}{twice}", count, latest))
        for each in [] if thing.kind == "setup" else below(standing, thing.kind, thing.id):
            add(each, depth + 1)

    for kind in ("production", "location", "setup"):
        for thing in standing[kind].values():
            if not thing.gone and not above(standing, thing):
                add(thing, 0)
    counts = ", ".join(
        f"{number} {kind}{'' if number == 1 else 's'}"
        for kind, number in found["things"].items()
        # A book without measured gels need not say so.
        if number or kind != "gel"
    )
    return f"{_table(rows)}\n{counts}\n{found['count']} entries, SHA-256 {found['sha256']}"


def _ask(options: argparse.Namespace, read: Read) -> Outcome:
    found = answer(_json(read(options.file)))
    return Outcome(json.dumps(found, indent=2, ensure_ascii=False), code=int("problem" in found))
