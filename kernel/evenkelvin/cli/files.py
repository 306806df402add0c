"""Files and books: convert, book, and any question as JSON."""

from __future__ import annotations

import argparse
import json

from evenkelvin.book.entries import Book, merge
from evenkelvin.book.file import as_plain, as_text, read_book
from evenkelvin.book.link import make_link
from evenkelvin.book.meaning import Thing, above, below, part_of, summary, things
from evenkelvin.book.sheet import STYLES, write_csv
from evenkelvin.cli.lights import file, plain_json
from evenkelvin.cli.outcome import Outcome, Plain, Read, asked, told, warned
from evenkelvin.cli.tables import table
from evenkelvin.desk import answer
from evenkelvin.interchange.kinds import recognise
from evenkelvin.interchange.text import decoded
from evenkelvin.problem import Problem


def convert(options: argparse.Namespace, read: Read) -> Outcome:
    spectra: list[Plain] = []
    readings = 0
    for name in options.file:
        found = file(options, read(name), name)
        spectra += found["spectra"]
        readings += len(found.get("readings", []))
    if not spectra:
        raise Problem(
            "",
            told(
                f"The file holds {readings} readings and no spectrum, so there is nothing to "
                "convert: ask 'agree', or 'describe' for a single one."
            ),
        )
    if readings:
        options.noted.left_out = True
        options.noted.notes.append(f"{readings} readings without a spectrum are left out.")
    if options.to == "json":
        return _out(options, json.dumps(spectra, indent=1, ensure_ascii=False))
    files = asked("write", format=options.to, spectra=spectra)["files"]
    if len(files) > 1:
        folder = f"{options.out}/" if options.out else ""
        written = {folder + each["name"]: each["text"] for each in files}
        return Outcome("\n".join(written), written)
    return _out(options, files[0]["text"])


def _out(options: argparse.Namespace, text: str) -> Outcome:
    return Outcome("", {options.out: text}) if options.out else Outcome(text)


def book(options: argparse.Namespace, read: Read) -> Outcome:
    raws = {name: read(name) for name in options.file}
    for name, raw in raws.items():
        if (what := recognise(raw).what) is not None:
            raise Problem("book", told(f"{name} is {what}, not a book of Evenkelvin."))
    texts = [decoded(raws[name]) for name in options.file]
    book = read_book(texts[0]) if len(texts) == 1 else merge(*(read_book(t).entries for t in texts))
    if options.to == "report":
        if not options.of:
            raise Problem(
                "of", told("Say with --of which setup, location or production to report on.")
            )
        report = asked("report", book=as_plain(book), of=options.of)
        return _out(options, json.dumps(report, indent=1, ensure_ascii=False))
    if options.of:
        book = part_of(book.entries, options.of)
    if options.to in STYLES:
        return _out(options, write_csv(book.entries, options.to))
    if options.to == "link":
        return _out(options, make_link(book))
    if options.to == "json":
        return _out(options, as_text(book))
    return _out(options, warned(_listing(book), *book.warnings))


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
        if number or kind not in ("gel", "surface")
    )
    return f"{table(rows)}\n{counts}\n{found['count']} entries, SHA-256 {found['sha256']}"


def ask(options: argparse.Namespace, read: Read) -> Outcome:
    found = answer(plain_json(read(options.file)))
    return Outcome(json.dumps(found, indent=2, ensure_ascii=False), code=int("problem" in found))
