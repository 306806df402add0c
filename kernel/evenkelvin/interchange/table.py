"""Delimited text in all its forms: any delimiter, decimal mark, unit, order and heading."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby, pairwise
from typing import cast

from evenkelvin.interchange.contents import (
    CHOICES,
    FEWEST_SAMPLES,
    KINDS,
    MAX_CELLS,
    MAX_COLUMNS,
    MAX_LINES,
    TO_NM,
    WAVELENGTH_DECIMALS,
    Contents,
    FoundSpectrum,
    Question,
    to_fraction,
)
from evenkelvin.interchange.dialect import DECIMALS, DELIMITERS, Dialect, candidates
from evenkelvin.interchange.headings import (
    is_unit,
    kind_of,
    names_percent,
    names_wavelength,
    split_heading,
    wavelength_unit,
)
from evenkelvin.interchange.layout import Axis, Row, axes_across, axes_down, likely_unit
from evenkelvin.interchange.photons import to_power
from evenkelvin.interchange.readings import find_readings, heads_readings
from evenkelvin.interchange.stated import BESIDE, field_of, read_stated
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: How much of a file is read, in characters, to find out how it is written.
_GLANCE = 30_000
#: Share of a column or row that must be numbers for it to be a spectrum.
_MOSTLY = 0.5
#: Rows above the wavelengths in which headings are looked for.
_HEADING_ROWS = 4
#: Most lines that one quoted cell may run over.
_MOST_LINES_OF_A_CELL = 60
_COMMENT = re.compile(r"\s*(#|//|!|%)+\s*")
_TITLE = re.compile(
    r"\W*(name|title|sample|description|titel|bezeichnung|probe|nom|nombre|nome|light|lamp)\W*",
    re.IGNORECASE,
)
_WAVENUMBER = re.compile(r"cm\s*\^?\s*[-−⁻]\s*[1¹]|1\s*/\s*cm|wave\s*number|wellenzahl", re.I)
_ZERO_FIRST = re.compile(r"0\d+")


def read_table(text: str, choices: Mapping[str, str]) -> Contents:
    """Return the spectra, or failing these the readings, of a delimited text.

    Parameters
    ----------
    text
        The decoded file.
    choices
        What the person decided, by the names in :data:`contents.CHOICES`.

    Raises
    ------
    Problem
        When the file is beyond the bounds, or nothing in it is a spectrum or reading.
    """
    lines = re.split(r"\r\n|\r|\n", text)
    if len(lines) > MAX_LINES:
        raise Problem(
            "",
            Said(
                "The file has {count} lines; at most {max_lines} are read.",
                count=len(lines),
                max_lines=MAX_LINES,
            ),
        )
    glance = _glance(lines)
    ranked = _ranked(glance, _allowed(text, choices), choices)
    if not ranked:
        raise Problem(
            "delimiter", Said("The file does not contain the delimiter or decimal chosen.")
        )
    best = ranked[0]
    contents = best.contents
    rows = list(_rows(lines, best.dialect))
    if len(glance) < len(lines):
        contents = _extract(rows, best.dialect, choices)
    if contents.spectra:
        read_stated(rows, best.dialect, contents)
    contents.format = Said("table ({words})", words=best.dialect.words)
    _ask_decimal(ranked, contents)
    if not contents.spectra and not contents.readings and not contents.problems:
        raise Problem(
            "",
            Said(
                "No spectrum was found. It needs a column or a row of wavelengths, such as "
                "380, 385 … 780 nm ({fewest_samples} or more), with a value for each.",
                fewest_samples=FEWEST_SAMPLES,
            ),
        )
    return contents


def _ranked(
    lines: list[str], dialects: list[Dialect], choices: Mapping[str, str]
) -> list[_Attempt]:
    """Return how well each dialect fits, best first; after a perfect fit no more are tried."""
    attempts: list[_Attempt] = []
    for _, same in groupby(dialects, key=lambda dialect: dialect.delimiter):
        attempts += [_Attempt.of(lines, dialect, choices) for dialect in same]
        if any(attempt.is_perfect for attempt in attempts):
            break
    return sorted(attempts, key=lambda attempt: attempt.rank, reverse=True)


def _glance(lines: list[str]) -> list[str]:
    total = 0
    for count, line in enumerate(lines):
        total += len(line)
        # Enough lines for a spectrum down a column, however long each is.
        if total > _GLANCE and count >= 2 * FEWEST_SAMPLES:
            return lines[:count]
    return lines


def _allowed(text: str, choices: Mapping[str, str]) -> list[Dialect]:
    found = candidates(text[: 4 * _GLANCE])
    if "delimiter" in choices:
        found = [d for d in found if d.delimiter == DELIMITERS[choices["delimiter"]]]
    if "decimal" in choices:
        found = [d for d in found if d.decimal == DECIMALS[choices["decimal"]]]
    return found


def _rows(lines: Iterable[str], dialect: Dialect) -> Iterator[Row]:
    """Yield the lines that hold anything; comments are kept, as headings without numbers."""
    count = 0
    for number, line in _joined(lines, dialect.delimiter):
        if not line.strip(" \t\x1a\f\ufeff"):
            continue
        comment = _COMMENT.match(line)
        cells = dialect.cells(line[comment.end() :] if comment else line)
        while cells and not cells[-1]:
            cells.pop()
        if not cells:
            continue
        count += len(cells)
        if len(cells) > MAX_COLUMNS:
            raise Problem(
                "",
                Said(
                    "The line has {count} columns; at most {max_columns} are read.",
                    count=len(cells),
                    max_columns=MAX_COLUMNS,
                ),
                number,
            )
        if count > MAX_CELLS:
            raise Problem(
                "",
                Said("At most {max_cells} values are read from one file.", max_cells=MAX_CELLS),
                number,
            )
        if comment:
            yield Row(number, cells, [None] * len(cells))
        else:
            yield Row(number, cells, [dialect.number(cell) for cell in cells])


def _joined(lines: Iterable[str], delimiter: str) -> Iterator[tuple[int, str]]:
    """Yield numbered lines; those that one quoted cell runs over, such as a note, are one."""
    numbered = list(enumerate(lines, 1))
    place = 0
    while place < len(numbered):
        number, line = numbered[place]
        place += 1
        if delimiter != " " and line.count('"') % 2:
            # A lost quotation mark must not swallow what follows: the one that closes stands at
            # the end of a cell.
            for end in range(place, min(place + _MOST_LINES_OF_A_CELL, len(numbered))):
                part = numbered[end][1]
                if part.count('"') % 2:
                    closing = part.partition('"')[2].lstrip(" ")
                    if not closing or closing.startswith(delimiter):
                        line = "\n".join(text for _, text in numbered[place - 1 : end + 1])
                        place = end + 1
                    break
        yield number, line


@dataclass
class _Attempt:
    """A reading of the file in one dialect, and how well it went."""

    dialect: Dialect
    contents: Contents
    score: float

    @classmethod
    def of(cls, lines: list[str], dialect: Dialect, choices: Mapping[str, str]) -> _Attempt:
        rows = list(_rows(lines, dialect))
        contents = _extract(rows, dialect, choices)
        score = float(sum(len(found.values) for found in contents.spectra))
        score += 4.0 * len(contents.readings) - 4.0 * len(contents.problems)
        # Text beside numbers, and whole numbers such as 0123, are signs of a wrong parting.
        for row in rows:
            numbers = [n is not None for n in row.numbers]
            if any(numbers):
                score -= 0.5 * sum(
                    bool(c) and not n for c, n in zip(row.cells, numbers, strict=True)
                )
                score -= 0.5 * sum(bool(_ZERO_FIRST.fullmatch(cell)) for cell in row.cells)
        if dialect == Dialect(",", "."):
            score -= _torn(rows)
        return cls(dialect, contents, score)

    @property
    def is_perfect(self) -> bool:
        """Tell whether all that looks like data was taken, and without complaint."""
        samples = _samples(self.contents)
        return samples > 0 and not self.contents.problems and self.score > 0.9 * samples

    @property
    def rank(self) -> tuple[int, float]:
        """Return what to sort by: something found, then something refused, then the score."""
        found = bool(self.contents.spectra or self.contents.readings)
        return (2 if found else 1 if self.contents.problems else 0), self.score


def _torn(rows: list[Row]) -> int:
    """Count rows of whole numbers that a decimal comma seems to have torn apart.

    They have twice as many cells as the heading, or one fewer.
    """
    heading, torn = 0, 0
    for row in rows:
        if all(number is None for number in row.numbers):
            heading = len(row.cells)
        elif heading >= 2 and len(row.cells) in (2 * heading, 2 * heading - 1):
            torn += all(cell.isdigit() for cell in row.cells)
    return torn * heading


def _ask_decimal(ranked: list[_Attempt], contents: Contents) -> None:
    best = ranked[0]
    for other in ranked[1:]:
        if (
            other.dialect.delimiter == best.dialect.delimiter
            and other.contents.spectra
            and other.score > 0.4 * best.score
            and [f.values for f in other.contents.spectra]
            != [f.values for f in best.contents.spectra]
        ):
            taken = "comma" if best.dialect.decimal == "," else "point"
            message = Said("The numbers can be read in two ways. What is the decimal mark?")
            contents.ask(Question("decimal", message, CHOICES["decimal"], taken))


def _extract(rows: list[Row], dialect: Dialect, choices: Mapping[str, str]) -> Contents:
    contents, other = Contents("", choices=choices), Contents("", choices=choices)
    layout = choices.get("layout")
    readings = heads_readings(rows) if layout is None else None
    if layout != "across" and readings != "sure":
        _Down(rows, dialect, choices, contents).read()
    if layout != "down":
        _Across(rows, dialect, choices, other).read()
    if contents.spectra and other.spectra:
        taken, lost = (contents, other)
        if _samples(other) > _samples(contents):
            taken, lost = other, contents
        taken.ask(
            Question(
                "layout",
                Said(
                    "The table can be read in two ways: {count} spectra with wavelengths down a "
                    "column or {count_2} with wavelengths across a row.",
                    count=len(contents.spectra),
                    count_2=len(other.spectra),
                ),
                CHOICES["layout"],
                "down" if taken is contents else "across",
            )
        )
        del lost
        contents = taken
    elif other.spectra or (other.problems and not contents.spectra and not contents.problems):
        contents = other
    if layout is None and (readings or not contents.spectra) and not other.spectra:
        found = Contents("", choices=choices)
        find_readings(rows, dialect, not contents.problems, found)
        if found.readings or (readings == "sure" and found.problems):
            contents = found
    return contents


def _samples(contents: Contents) -> int:
    return sum(len(found.values) for found in contents.spectra)


@dataclass
class _Reader:
    """What both layouts share."""

    rows: list[Row]
    dialect: Dialect
    choices: Mapping[str, str]
    contents: Contents

    def unit(self, stated: str, axis: Axis, line: int) -> float:
        """Return the factor that brings the wavelengths of an axis to nm."""
        values = [mark.value for mark in axis.marks]
        if _WAVENUMBER.search(stated[:200]):
            raise Problem(
                "wavelength_unit",
                Said(
                    "The spectrum is given over wavenumber (1/cm); export it over wavelength in nm."
                ),
                line,
            )
        said, likely = wavelength_unit(stated), likely_unit(values)
        taken = self.choices.get("wavelength_unit") or likely
        if (said and said != likely) or (not said and likely != "nm"):
            reach = Said("{values:g} to {values_2:g}", values=min(values), values_2=max(values))
            claim = (
                Said("calls them {said}", said=said) if said else Said("does not say in which unit")
            )
            self.contents.ask(
                Question(
                    "wavelength_unit",
                    Said(
                        "The wavelengths run from {reach}; the file {claim}.",
                        reach=reach,
                        claim=claim,
                    ),
                    CHOICES["wavelength_unit"],
                    taken,
                )
            )
        return TO_NM[taken]

    def finish(self, found: FoundSpectrum, words: Sequence[str], percent: bool, bad: int) -> None:
        """Decide what was measured, from the nearest words that say so, and take the spectrum."""
        stated = next((kind for word in words if (kind := kind_of(word))), "")
        found.kind = self.choices.get("quantity") or stated or "light"
        factor_like = percent or max(found.values, default=2.0) <= 1.0
        if "quantity" in self.choices or (not stated and factor_like):
            self.contents.ask(
                Question(
                    "quantity",
                    Said("The file does not say what was measured. What is it?"),
                    CHOICES["quantity"],
                    found.kind,
                )
            )
        if found.kind == "light":
            found.unit = found.unit if found.unit.lower() not in ("light", "relative") else ""
            to_power(found, self.contents, words)
        else:
            found.unit = ""
        to_fraction(found, self.contents, percent or None, self.choices.get("values", ""))
        self.contents.take(found, bad)

    def samples(
        self, rows: list[Row], column: int, wavelengths: list[float], found: FoundSpectrum
    ) -> int:
        """Add the samples of a column; return how many cells are damaged."""
        values = [row.number(column) for row in rows]
        if None not in values:
            found.wavelengths, found.values = wavelengths, cast(list[float], values)
            return 0
        pairs = zip(rows, wavelengths, strict=True)
        return sum(self.sample(row, column, nm, found) for row, nm in pairs)

    def sample(self, row: Row, column: int, nm: float, found: FoundSpectrum) -> int:
        """Add the sample in a cell; return 1 where the cell is damaged, else 0."""
        cell, value = row.cell(column), row.number(column)
        if value is not None:
            found.wavelengths.append(nm)
            found.values.append(value)
        elif cell:
            self.contents.complain(
                Problem(
                    "values",
                    Said(
                        "Expected a number at {nm:g} nm but found “{cell}”; the sample is "
                        "left out.",
                        nm=round(nm, WAVELENGTH_DECIMALS),
                        cell=cell[:24],
                    ),
                    row.line,
                )
            )
            return 1
        return 0


class _Down(_Reader):
    """Wavelengths down a column, a spectrum in each column beside it."""

    def read(self) -> None:
        """Take every spectrum."""
        axes = axes_down(self.rows, self.dialect)
        for axis in axes:
            beside = [a for a in axes if a.first <= axis.last and axis.first <= a.last]
            above = max((a.last + 1 for a in axes if a.last < axis.first), default=0)
            try:
                self._read_axis(axis, beside, above)
            except Problem as problem:
                self.contents.complain(problem)

    def _read_axis(self, axis: Axis, beside: list[Axis], above: int) -> None:
        rows = [self.rows[mark.place] for mark in axis.marks]
        width = max(len(row.cells) for row in rows)
        end = min((a.at for a in beside if a.at > axis.at), default=width)
        columns = self._value_columns(rows, range(axis.at + 1, end))
        if not columns and len(beside) == 1:
            columns = [
                column
                for column in self._value_columns(rows, range(axis.at))
                if not _counts(rows, column)
            ]
        if not columns:
            return
        heading = self._headings(axis, above, width)
        factor = self.unit(
            f"{heading.of(axis.at)} {heading.text} {axis.marks[0].label}", axis, rows[0].line
        )
        self._complain_of_lines(axis, columns)
        for column in columns:
            words = heading.of(column)
            name, unit = split_heading(words)
            if len(columns) == 1:
                name = name or heading.title
            elif heading.title and name:
                name = f"{heading.title} {name}"
            found = FoundSpectrum(
                name, [], [], "light", unit, line=rows[0].line, heading=words, column=column
            )
            found.unit = unit or heading.unit_of(column)
            bad = self.samples(rows, column, [mark.value * factor for mark in axis.marks], found)
            told = unit if unit in KINDS else words
            percent = names_percent(f"{told} {heading.unit_of(column)}") or any(
                row.cell(column).endswith("%") for row in rows[:3]
            )
            stated = (unit, words, heading.text, heading.unit_of(column), heading.title)
            self.finish(found, stated, percent, bad)

    def _value_columns(self, rows: list[Row], columns: range) -> list[int]:
        """Return the columns that are mostly numbers over these rows."""
        chosen = []
        for column in columns:
            numbers = sum(row.number(column) is not None for row in rows)
            filled = sum(bool(row.cell(column)) for row in rows)
            if numbers >= FEWEST_SAMPLES and numbers >= _MOSTLY * filled:
                chosen.append(column)
            elif numbers >= FEWEST_SAMPLES:
                self.contents.complain(
                    Problem(
                        "values",
                        Said(
                            "Column {column} has numbers in only {numbers} of {filled} lines; "
                            "it is left "
                            "out.",
                            column=column + 1,
                            numbers=numbers,
                            filled=filled,
                        ),
                        rows[0].line,
                    )
                )
        return chosen

    def _complain_of_lines(self, axis: Axis, columns: list[int]) -> None:
        for mark in axis.stray:
            self.contents.complain(
                Problem(
                    "wavelengths",
                    Said(
                        "The wavelength {value:g} does not fit between its neighbours; the line is "
                        "left out.",
                        value=mark.value,
                    ),
                    self.rows[mark.place].line,
                )
            )
        known = {mark.place for mark in axis.marks} | {mark.place for mark in axis.stray}
        for place in range(axis.first, axis.last):
            row = self.rows[place]
            if place not in known and any(row.number(column) is not None for column in columns):
                self.contents.complain(
                    Problem(
                        "wavelengths",
                        Said(
                            "Expected a wavelength but found “{cell}”; the line is left out.",
                            cell=row.cell(axis.at)[:24],
                        ),
                        row.line,
                    )
                )

    def _headings(self, axis: Axis, above: int, width: int) -> _Headings:
        before = self.rows[max(above, axis.first - _HEADING_ROWS) : axis.first]
        names = units = None
        for row in reversed(before):
            texts = [cell for cell in row.cells if cell]
            if len(texts) < 2 and width > 1 and not names_wavelength(row.cell(axis.at)):
                continue
            if field_of(row.cell(axis.at)) in BESIDE:
                # A label with its value is no heading.
                continue
            if units is None and all(is_unit(text) for text in texts):
                units = row
            elif names_wavelength(row.cell(axis.at)) or names_wavelength(" ".join(row.cells)):
                names = row
                break
            elif names is None and all(number is None for number in row.numbers):
                names = row
        title = _title(self.rows[above : axis.first], names)
        return _Headings(names, units, width, title)


def _counts(rows: list[Row], column: int) -> bool:
    """Tell whether a column merely numbers the rows."""
    numbers = [number for row in rows if (number := row.number(column)) is not None]
    return all(abs(after - before) == 1.0 for before, after in pairwise(numbers))


@dataclass
class _Headings:
    """What stands above a column of wavelengths."""

    names: Row | None
    units: Row | None
    width: int
    title: str

    @property
    def text(self) -> str:
        """Return the whole heading where it cannot be told by columns, else an empty text."""
        if self.names is None or self._aligned(self.names):
            return ""
        return " ".join(self.names.cells)

    def _aligned(self, row: Row) -> bool:
        # Headings parted by white space have words of their own.
        return len(row.cells) <= self.width

    def of(self, column: int) -> str:
        """Return the heading of a column, or an empty text."""
        return self.names.cell(column) if self.names and self._aligned(self.names) else ""

    def unit_of(self, column: int) -> str:
        """Return the unit of a column from a row of units, or an empty text."""
        return self.units.cell(column) if self.units and self._aligned(self.units) else ""


def _title(rows: list[Row], names: Row | None) -> str:
    """Return the name that a line above a table gives it, or an empty text."""
    for row in reversed(rows):
        if row is names:
            continue
        texts = [cell for cell in row.cells if cell]
        if len(texts) >= 2 and _TITLE.fullmatch(texts[0]):
            return texts[1]
    return ""


class _Across(_Reader):
    """Wavelengths across a row, a spectrum in each row below it."""

    def read(self) -> None:
        """Take every spectrum."""
        axes = axes_across(self.rows, self.dialect)
        ends = [axis.at for axis in axes[1:]] + [len(self.rows)]
        for axis, end in zip(axes, ends, strict=False):
            try:
                self._read_axis(axis, end)
            except Problem as problem:
                self.contents.complain(problem)

    def _read_axis(self, axis: Axis, end: int) -> None:
        head = self.rows[axis.at]
        stated = " ".join([*head.cells[: axis.first], axis.marks[0].label])
        factor: float | None = None
        for row in self.rows[axis.at + 1 : end]:
            # Names parted by white space push the numbers to the right.
            shift = len(row.cells) - len(head.cells) if self.dialect.delimiter == " " else 0
            numbers = sum(row.number(mark.place + shift) is not None for mark in axis.marks)
            filled = sum(bool(row.cell(mark.place + shift)) for mark in axis.marks)
            if numbers < FEWEST_SAMPLES or numbers < _MOSTLY * filled:
                continue
            if factor is None:
                factor = self.unit(stated, axis, head.line)
            outside = row.cells[: max(axis.first + shift, 0)] + row.cells[axis.last + shift + 1 :]
            texts = [cell for cell in outside if cell and self.dialect.number(cell) is None]
            if self.dialect.delimiter == " ":
                texts = [" ".join(texts)]
            name, unit = next((split_heading(text) for text in texts if text), ("", ""))
            found = FoundSpectrum(name, [], [], "light", unit, line=row.line)
            bad = sum(
                self.sample(row, mark.place + shift, mark.value * factor, found)
                for mark in axis.marks
            )
            words = " ".join(texts)
            percent = names_percent(f"{words} {stated}") or row.cell(axis.first + shift).endswith(
                "%"
            )
            self.finish(found, (words, stated), percent, bad)
