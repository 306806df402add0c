"""What can be typed: the commands, their arguments, and examples of each."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from evenkelvin import __version__
from evenkelvin.asks.sun import SKIES
from evenkelvin.book.sheet import STYLES
from evenkelvin.cli import files, judging, location, sets
from evenkelvin.cli.completion import SHELLS, completion
from evenkelvin.cli.outcome import Outcome
from evenkelvin.lights.stand_in import LAMPS

_NOTES = """\
A FILE may be a spectrum or readings in any format that the app reads, and "-" is standard input.
Numbers take a decimal comma too; write a negative one as --duv=-0,003.
Exit code 0: all done. 1: nothing could be done. 2: wrong arguments. 3: done, but something was left
out, as standard error says line by line.
"""


def make_parser() -> argparse.ArgumentParser:
    """Return the parser; ``command`` of what it parses is the function to run."""
    parser = argparse.ArgumentParser(
        prog="evenkelvin",
        description="Every light on the set, one white.",
        epilog=_NOTES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"evenkelvin {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")

    def command(
        name: str, act: Callable[..., Outcome], words: str, *examples: str, json: bool = True
    ) -> argparse.ArgumentParser:
        shown = "\n".join(f"  evenkelvin {name} {example}".rstrip() for example in examples)
        made: argparse.ArgumentParser = commands.add_parser(
            name,
            help=words,
            description=f"{words[0].upper()}{words[1:]}.",
            epilog=f"examples:\n{shown}\n\n{_NOTES}",
            formatter_class=argparse.RawDescriptionHelpFormatter,
        )
        made.set_defaults(command=act)
        if json:
            made.add_argument("--json", action="store_true", help="the whole answer as JSON")
        return made

    _judging(command)
    _sets(command)
    _location(command)
    _files(command)
    made = command(
        "completion", completion, "print what a shell needs to complete these commands",
        "bash > ~/.local/share/bash-completion/completions/evenkelvin", json=False,
    )  # fmt: skip
    made.add_argument("shell", choices=SHELLS)
    made.set_defaults(parser=parser)
    return parser


_Command = Callable[..., argparse.ArgumentParser]


def _light(made: argparse.ArgumentParser) -> None:
    made.add_argument("light", nargs="*", metavar="X Y | FILE", help="x and y, or one file")
    _lit(made)


def _lit(made: argparse.ArgumentParser) -> None:
    made.add_argument("--cct", metavar="K", help="instead of x y: the CCT")
    made.add_argument("--duv", metavar="DUV", help="with --cct: its Duv, + green")
    made.add_argument("--lux", metavar="LX", help="illuminance")
    made.add_argument("--lamp", choices=list(LAMPS), help="lamp type")
    made.add_argument(
        "--on", action="append", default=[], metavar="GEL", help="a gel already on it"
    )
    _choosing(made)


def _lights(made: argparse.ArgumentParser) -> None:
    made.add_argument("file", help="JSON list of lights, or readings or spectra in a file")
    _choosing(made)


def _choosing(made: argparse.ArgumentParser) -> None:
    made.add_argument(
        "--choose", action="append", default=[], metavar="FIELD=CHOICE",
        help="answer what a file leaves open, such as decimal=comma (repeat)",
    )  # fmt: skip


def _white(made: argparse.ArgumentParser) -> None:
    made.add_argument("--target", metavar="K", help="the white to match, as a CCT")
    made.add_argument("--target-duv", metavar="DUV", help="its Duv, 0 if not given")
    made.add_argument("--match", nargs=2, metavar=("X", "Y"), help="instead: the light to match")


def _meant(made: argparse.ArgumentParser) -> None:
    made.add_argument(
        "--meant", action="append", default=[], metavar="MEANING",
        help="what the light is meant to be beside it: white, found, +60 or =-60 (mired), "
        "2700K, 'X Y', or gels to be seen through such as '1/2 CTB + 1/8 plus green'; "
        "of several lights N=MEANING (repeat), N the light's number",
    )  # fmt: skip


def _within(made: argparse.ArgumentParser) -> None:
    made.add_argument("--tolerance", metavar="STEPS", help="tight, normal, loose, or steps")


def _kit(made: argparse.ArgumentParser) -> None:
    made.add_argument("--kit", action="append", metavar="GEL", help="a gel in stock (repeat)")
    made.add_argument("--depth", metavar="N", help="most gels stacked, 1 to 3")


def _shutter(made: argparse.ArgumentParser) -> None:
    made.add_argument("--fps", metavar="FPS", help="frames a second")
    made.add_argument("--shutter", metavar="DEG", help="shutter angle")
    made.add_argument("--time", metavar="S", help="instead: shutter time, such as 1/48")


def _judging(command: _Command) -> None:
    made = command(
        "describe", judging.describe, "say what one light is", "0.3761 0.3868 --lux 210",
        "panel.csv",
    )  # fmt: skip
    _light(made)
    made = command(
        "fix", judging.fix, "say what brings one light to a white",
        "0.3302 0.3441 --lamp hmi --target 3200", "panel.csv --target 4300 --kit '1/2 CTO'",
    )  # fmt: skip
    _light(made)
    for part in (_white, _meant, _within, _kit):
        part(made)
    made = command(
        "agree", judging.agree, "say how several lights agree", "set.csv --target 4300",
        "key.csv fill.csv --hero 1",
    )  # fmt: skip
    made.add_argument(
        "file", nargs="+", help="JSON list of lights, or readings or spectra; of several files all"
    )
    _choosing(made)
    made.add_argument("--hero", metavar="N", help="match the N-th light, counted from 1")
    for part in (_white, _meant, _within, _kit):
        part(made)


def _sets(command: _Command) -> None:
    made = command(
        "balance", sets.balance, "choose the camera's white and each light's gels together",
        "set.csv", "set.csv --from 3200 --to 5600 --stock '1/2 CTO=4' --may 3=dial",
    )  # fmt: skip
    _lights(made)
    made.add_argument("--from", dest="from_k", metavar="K", help="lowest white, 2500 if not given")
    made.add_argument("--to", dest="to_k", metavar="K", help="highest white, 10000 if not given")
    made.add_argument(
        "--may", action="append", default=[], metavar="N=WAY",
        help="gel, dial or none: what may be done to the N-th light (repeat)",
    )  # fmt: skip
    made.add_argument(
        "--stock", action="append", default=[], metavar="GEL=CUTS",
        help="so many cuts of a gel are at hand (repeat)",
    )  # fmt: skip
    made.add_argument("--most", metavar="N", help="most plans to list, 12 if not given")
    for part in (_meant, _within, _kit):
        part(made)
    made = command(
        "mix", sets.mix, "say what lights make together on one spot", "set.csv",
        "set.csv --dimmer 1=50 --beside window.csv",
    )  # fmt: skip
    _lights(made)
    made.add_argument("--beside", metavar="FILE", help="the lights of the zone beside it")
    for name, words in (("dimmer", "percent of its light"), ("stops", "stops, + brighter")):
        made.add_argument(
            f"--{name}", action="append", default=[], metavar="N=VALUE",
            help=f"the N-th light at so many {words} (repeat)",
        )  # fmt: skip
    made = command(
        "unmix", sets.unmix, "say whose share of a sum is which, each light read alone",
        "alone.csv 0.3810 0.3742 --lux 500", "alone.csv sum.csv",
    )  # fmt: skip
    made.add_argument("alone", metavar="FILE", help="the lights, each read alone")
    _light(made)
    made = command(
        "dial", sets.dial, "say what to dial next on a tunable lamp", "--target 4300",
        "--target 4300 --tried 0.3680 0.3690 0.3725 0.3790 --range 2700 6500",
    )  # fmt: skip
    _white(made)
    made.add_argument(
        "--tried", nargs=4, action="append", default=[], metavar=("DX", "DY", "X", "Y"),
        help="x y that was dialled, then x y that was measured (repeat)",
    )  # fmt: skip
    made.add_argument("--range", nargs=2, metavar=("FROM", "TO"), help="what it reaches, in K")
    _meant(made)
    _within(made)
    made = command(
        "dim", sets.dim, "say what dimming does to a tungsten lamp's colour",
        "0.4287 0.4019 --to 2700", "0.4287 0.4019 --stops=-1",
    )  # fmt: skip
    _light(made)
    made.add_argument("--to", metavar="K", help="the CCT to dim to")
    made.add_argument("--percent", metavar="P", help="instead: to so much of its light")
    made.add_argument("--stops", metavar="STOPS", help="instead: by stops, such as --stops=-1")
    made.add_argument("--volts", metavar="P", help="instead: to so much of its volts, in percent")
    made = command(
        "seen", sets.seen, "say what cards and skin look like in each light at a white",
        "set.csv --white 4300", "set.csv --white 4300 --judge camera",
    )  # fmt: skip
    _lights(made)
    made.add_argument("--white", required=True, metavar="K", help="the camera's white")
    made.add_argument("--white-duv", metavar="DUV", help="its Duv, 0 if not given")
    made.add_argument("--judge", choices=["eye", "camera"], default="eye")
    made = command(
        "render", sets.render, "say how lights show colours, from their spectra", "panel.csv",
        "key.csv fill.csv",
    )  # fmt: skip
    made.add_argument("light", nargs="*", metavar="FILE", help="files with a spectrum or several")
    _lit(made)
    command("kit", sets.kit, "list the nominal gels and the kinds of lamp", "")


def _location(command: _Command) -> None:
    made = command(
        "expose", location.expose, "say the one open figure of an exposure",
        "--lux 1280 --iso 800 --fps 24 --shutter 180",
        "--iso 800 --fps 24 --shutter 180 --stop 2.8",
    )  # fmt: skip
    made.add_argument("--lux", metavar="LX")
    made.add_argument("--fc", metavar="FC", help="instead: foot-candles")
    made.add_argument("--flash", metavar="LX_S", help="instead: a flash, in lux seconds")
    made.add_argument("--bursts", metavar="N", help="how often it flashes")
    made.add_argument("--iso", metavar="ISO")
    _shutter(made)
    made.add_argument("--stop", metavar="F", help="the f-number, such as 2.8")
    made.add_argument("--t-stop", metavar="T", help="instead: the T-number")
    made.add_argument("--nd", metavar="STOPS", help="what filters take, in stops")
    made.add_argument("--lens", metavar="STOPS", help="what the glass takes, in stops")
    made.add_argument("--dome", action="store_true", help="C for a dome: 340, not 250")
    made.add_argument("--tenths", action="store_true", help="stops in tenths, not thirds")
    made = command(
        "flicker", location.flicker, "say which shutters and frame rates do not flicker",
        "--mains 50 --fps 24 --shutter 180", "--pulses 1200 --fps 50",
    )  # fmt: skip
    made.add_argument("--mains", metavar="HZ", help="50, 60 or as measured")
    made.add_argument("--pulses", metavar="HZ", help="instead: pulses of light a second")
    made.add_argument("--modulation", metavar="PERCENT", help="how deep the light pulses")
    _shutter(made)
    made = command(
        "windows", location.windows, "cut gel for windows from rolls",
        "2.4x1.8:3 0.9x1.2 --gel '1/2 CTO'", "8x6 --unit ft --roll 4x25",
    )  # fmt: skip
    made.add_argument("pane", nargs="+", metavar="WxH[:N]", help="width, height, how many")
    made.add_argument("--unit", choices=["m", "ft"], default="m", help="of every length")
    made.add_argument(
        "--roll", action="append", default=[], metavar="WxL[:N]",
        help="width, length, how many are there (repeat)",
    )  # fmt: skip
    made.add_argument("--gel", action="append", default=[], metavar="GEL", help="one layer of it")
    made.add_argument("--overlap", metavar="LENGTH", help="at a seam, 0.05 m if not given")
    made = command(
        "hold", location.hold, "say what a window needs at one time, and how long its gel holds",
        "day.csv --at 16:00 --gel 'full CTO' --target 3200",
        "day.csv --at 18:30 --gel 'full CTO' --target 3200 --where 53.55N 9.99E --date 2026-06-21 "
        "--utc 2 --facing W",
    )  # fmt: skip
    made.add_argument(
        "file", nargs="+", help="readings of one window with their times, or spectra that state it"
    )
    _choosing(made)
    made.add_argument("--at", required=True, metavar="HH:MM", help="the time that is asked about")
    made.add_argument(
        "--gel", action="append", default=[], metavar="GEL", help="a gel that hangs (repeat)"
    )
    made.add_argument("--wanted", metavar="LX", help="illuminance wanted behind the glass")
    made.add_argument(
        "--where", nargs=2, metavar=("LAT", "LON"),
        help="where it is, to estimate beyond the readings; needs --utc too",
    )  # fmt: skip
    made.add_argument("--date", metavar="YYYY-MM-DD", help="if the readings are of several days")
    made.add_argument("--utc", metavar="H", help="hours from UTC, such as 1 or 10:30")
    made.add_argument("--facing", metavar="DEG", help="where the window looks")
    made.add_argument("--horizon", metavar="DEG", help="how high what stands before it reaches")
    made.add_argument("--sky", choices=SKIES)
    made.add_argument("--most", metavar="N", help="most packs to list, 3 if not given")
    for part in (_white, _within, _kit):
        part(made)
    made = command(
        "sun", location.sun, "say where the sun stands through a day, and when in a window",
        "53.55N 9.99E --date 2026-11-17 --utc 1 --facing 200",
    )  # fmt: skip
    made.add_argument("lat", metavar="LAT", help="degrees, north positive, or 42.88S")
    made.add_argument("lon", metavar="LON", help="degrees, east positive, or 9.99E")
    made.add_argument("--date", required=True, metavar="YYYY-MM-DD")
    made.add_argument(
        "--utc", required=True, metavar="H", help="hours from UTC, such as 1 or 10:30"
    )
    made.add_argument("--facing", metavar="DEG", help="where the window looks")
    made.add_argument("--horizon", metavar="DEG", help="how high what stands before it reaches")
    made.add_argument("--sky", choices=SKIES)
    made = command(
        "even", location.even, "say how even the light on a surface is",
        "0:0:310 0.5:0:345 1:0:300 0:1:280 0.5:1:330 1:1:290",
    )  # fmt: skip
    made.add_argument(
        "point", nargs="+", metavar="ACROSS:UP:LUX", help="0 to 1 from the lower left corner"
    )
    made.add_argument("--within", metavar="STOPS", help="how far off it may be, 1/3 if not given")
    made = command(
        "falloff", location.falloff, "say what distance does to a small lamp",
        "--lux 800 --distance 3 --at 5", "--lux 800 --distance 3 --lose 1",
    )  # fmt: skip
    made.add_argument("--lux", required=True, metavar="LX", help="as read")
    made.add_argument("--distance", required=True, metavar="M", help="where it was read")
    made.add_argument("--at", metavar="M", help="what does it read there?")
    made.add_argument("--wanted", metavar="LX", help="where must it go for that?")
    made.add_argument("--lose", metavar="STOPS", help="how far to lose that much?")
    made.add_argument("--source", metavar="M", help="widest measure of the lamp or frame")


def _files(command: _Command) -> None:
    made = command(
        "convert", files.convert, "read spectra and write them in another format",
        "panel.csv --to tm27", "key.csv fill.csv --to csv -o set.csv", json=False,
    )  # fmt: skip
    made.add_argument("file", nargs="+")
    _choosing(made)
    made.add_argument("--to", choices=["tm27", "csv", "json"], default="csv")
    made.add_argument("-o", "--out", metavar="FILE", help="write here (a folder for several)")
    made = command(
        "book", files.book, "open one book, or merge several", "shoot.json",
        "a.json b.json --to json -o both.json", json=False,
    )  # fmt: skip
    made.add_argument("file", nargs="+")
    made.add_argument("--of", metavar="ID", help="only this production, location, setup or light")
    made.add_argument(
        "--to", choices=["list", "json", *STYLES, "link", "report"], default="list",
        help="list; the book's file; CSV with comma or semicolon; a link; the report as JSON",
    )  # fmt: skip
    made.add_argument("-o", "--out", metavar="FILE", help="write here, not to the screen")
    made = command(
        "ask", files.ask, "put any question to the kernel: JSON in, JSON out", "question.json",
        json=False,
    )  # fmt: skip
    made.add_argument("file", nargs="?", default="-")
