"""Where the spectra are in a table: wavelengths down a column or across a row."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import islice, pairwise, zip_longest
from operator import gt

from evenkelvin.interchange.contents import (
    FEWEST_SAMPLES,
    LONGEST_NM,
    MAX_SPECTRA,
    SHORTEST_NM,
    TO_NM,
)
from evenkelvin.interchange.dialect import Dialect
from evenkelvin.interchange.headings import names_wavelength, wavelength_unit

#: What a spectrum must touch to be one of visible light, in nm.
_VISIBLE = (400.0, 700.0)
#: Most lines that may interrupt a column of wavelengths before it counts as ended.
_MOST_BETWEEN = 3
#: Share of stray samples up to which the orderly runs around them are taken.
_MOST_STRAY = 0.2

_LABELLED = re.compile(r"([^\d+.,-]{0,24})(\d{3,5}(?:[.,]\d{1,6})?)([^\d]{0,12})")


@dataclass
class Row:
    """A line of the file: its number, its cells, and the numbers in them (None for others)."""

    line: int
    cells: list[str]
    numbers: list[float | None]

    def number(self, column: int) -> float | None:
        """Return the number in a column, or None where there is none."""
        return self.numbers[column] if 0 <= column < len(self.numbers) else None

    def cell(self, column: int) -> str:
        """Return the text in a column, empty beyond the last."""
        return self.cells[column] if 0 <= column < len(self.cells) else ""


@dataclass(frozen=True)
class Mark:
    """A wavelength as the file writes it: where it is, its number, and the text around it."""

    place: int
    value: float
    label: str


@dataclass
class Axis:
    """Wavelengths down one column or across one row: the marks, in order of place."""

    at: int
    marks: list[Mark]
    stray: list[Mark] = field(default_factory=list)

    @property
    def first(self) -> int:
        """Return the place of the first mark."""
        return self.marks[0].place

    @property
    def last(self) -> int:
        """Return the place of the last mark."""
        return self.marks[-1].place


def likely_unit(values: Sequence[float]) -> str:
    """Return the unit in which wavelengths fall on visible light, or an empty text."""
    low, high = min(values), max(values)
    for unit, factor in TO_NM.items():
        if (
            low * factor <= _VISIBLE[1]
            and high * factor >= _VISIBLE[0]
            and low * factor >= SHORTEST_NM
            and high * factor <= LONGEST_NM
        ):
            return unit
    return ""


def is_even(values: Sequence[float]) -> bool:
    """Tell whether the steps between values are about equal, repeated values aside."""
    steps = [abs(b - a) for a, b in pairwise(values) if a != b]
    return bool(steps) and max(steps) <= 1.5 * min(steps)


def mark_of(place: int, cell: str, number: float | None, dialect: Dialect) -> Mark | None:
    """Return a cell as a wavelength, plain or with text around it ('380 nm', 'SPECTRAL_380')."""
    if number is not None:
        return Mark(place, number, "") if 0.1 <= number <= 2e5 else None
    if not 3 <= len(cell) <= 40:
        return None
    match = _LABELLED.fullmatch(cell)
    if not match:
        return None
    value = dialect.number(match.group(2))
    if value is None:
        return None
    return Mark(place, value, f"{match.group(1)}|{match.group(3)}".lower())


def _sign(change: float) -> int:
    return (change > 0) - (change < 0)


def _continues(marks: list[Mark], mark: Mark) -> bool:
    """Tell whether a mark goes on in the direction and about the step of those before."""
    if len(marks) < 2:
        return True
    whole = marks[-1].value - marks[0].value
    step = mark.value - marks[-1].value
    between = mark.place - marks[-1].place
    typical = abs(whole) / (len(marks) - 1)
    return _sign(step) == _sign(whole) and abs(step) <= 4.0 * typical * between


def _stretches(marks: list[Mark]) -> Iterator[list[Mark]]:
    """Part marks where the text around them changes or other lines come between."""
    current: list[Mark] = []
    for mark in marks:
        if current:
            between = mark.place - current[-1].place - 1
            ended = mark.label != current[-1].label or between > _MOST_BETWEEN
            if ended or (between and not _continues(current, mark)):
                yield current
                current = []
        current.append(mark)
    if current:
        yield current


def _without_outliers(marks: list[Mark]) -> tuple[list[Mark], list[Mark]]:
    """Take out single wavelengths that do not fit between their neighbours."""
    kept: list[Mark] = []
    stray: list[Mark] = []
    for index, mark in enumerate(marks):
        if len(kept) >= 2 and index + 1 < len(marks):
            whole = _sign(kept[-1].value - kept[0].value)
            back = _sign(mark.value - kept[-1].value) == -whole
            far = abs(mark.value - kept[-1].value) > 8.0 * abs(kept[-1].value - kept[0].value) / (
                len(kept) - 1
            )
            after = marks[index + 1]
            if whole and (back or far) and _continues(kept, after):
                stray.append(mark)
                continue
        kept.append(mark)
    return kept, stray


def _runs(marks: list[Mark]) -> list[list[Mark]]:
    """Part marks where their direction turns."""
    runs = [[marks[0]]]
    direction = 0
    for before, mark in pairwise(marks):
        turn = _sign(mark.value - before.value)
        if turn and direction and turn != direction:
            runs.append([mark])
            direction = 0
            continue
        direction = direction or turn
        runs[-1].append(mark)
    return runs


def _may_be_axis(values: Sequence[float]) -> bool:
    """Tell quickly whether numbers are worth a closer look: mostly in one direction, or large."""
    if len(values) < FEWEST_SAMPLES:
        return False
    rising = sum(map(gt, values[1:], values))
    large = sum(value >= SHORTEST_NM for value in values)
    return large >= FEWEST_SAMPLES or not 0.2 < rising / len(values) < 0.8


def _marks(cells: Sequence[str], numbers: Sequence[float | None], dialect: Dialect) -> list[Mark]:
    """Return the marks of a column or row, or none where a glance shows that it is no axis."""
    plain = [number for number in numbers if number is not None]
    if 2 * len(plain) > len(cells) and not _may_be_axis(plain):
        return []
    pairs = zip(cells, numbers, strict=True)
    return [
        mark
        for place, (cell, number) in enumerate(pairs)
        if (mark := mark_of(place, cell, number, dialect))
    ]


def _axes(at: int, marks: list[Mark]) -> Iterator[Axis]:
    """Yield the axes among the marks of one column or row."""
    if not _may_be_axis([mark.value for mark in marks]):
        return
    for stretch in _stretches(marks):
        if len(stretch) < FEWEST_SAMPLES:
            continue
        kept, stray = _without_outliers(stretch)
        runs = _runs(kept)
        if stray and min(map(len, runs)) < FEWEST_SAMPLES:
            # No slips in an orderly scan, but another order.
            kept, stray, runs = stretch, [], _runs(stretch)
        long = [run for run in runs if len({mark.value for mark in run}) >= FEWEST_SAMPLES]
        lost = len(kept) - sum(map(len, long))
        if lost > _MOST_STRAY * len(kept):
            # Neither one orderly scan nor several: rows in no order, to be sorted.
            long = [kept] if len({mark.value for mark in kept}) >= FEWEST_SAMPLES else []
        for run in long:
            if likely_unit([mark.value for mark in run]):
                inside = [m for m in stray if run[0].place < m.place < run[-1].place]
                yield Axis(at, run, inside)


def axes_down(rows: list[Row], dialect: Dialect) -> list[Axis]:
    """Return the columns of wavelengths that head spectra, in the order of the file."""
    width = max((len(row.cells) for row in rows), default=0)
    if width < 2:
        return []
    columns = zip(
        zip_longest(*(row.cells for row in rows), fillvalue=""),
        zip_longest(*(row.numbers for row in rows)),
        strict=True,
    )
    found = (
        axis
        for column, (cells, numbers) in enumerate(columns)
        for axis in _axes(column, _marks(cells, numbers, dialect))
    )
    return _without_look_alikes(list(islice(found, 2 * MAX_SPECTRA)), rows)


def _without_look_alikes(axes: list[Axis], rows: list[Row]) -> list[Axis]:
    """Drop columns of values that merely look like wavelengths beside a real column of them."""
    kept: list[Axis] = []
    for axis in sorted(
        axes, key=lambda axis: (not _is_headed(axis, rows), not _is_plain(axis, rows))
    ):
        beside = [other for other in kept if other.first <= axis.last and axis.first <= other.last]
        # Any values about one look like micrometres, those of even steps beside a real column too.
        doubtful = not _is_plain(axis, rows) or (beside and not _is_headed(axis, rows))
        if doubtful and _unit(axis) == "micrometre":
            continue
        if beside and not (_is_plain(axis, rows) and _heads_values(axis, beside, rows)):
            continue
        kept.append(axis)
    return sorted(kept, key=lambda axis: (axis.first, axis.at))


def _is_plain(axis: Axis, rows: list[Row]) -> bool:
    """Tell whether an axis is beyond doubt: of even steps, or headed as one."""
    return is_even([mark.value for mark in axis.marks]) or _is_headed(axis, rows)


def _is_headed(axis: Axis, rows: list[Row]) -> bool:
    above = [row.cell(axis.at) for row in rows[max(axis.first - 3, 0) : axis.first]]
    return any(names_wavelength(cell) or wavelength_unit(cell) for cell in above)


def _unit(axis: Axis) -> str:
    return likely_unit([mark.value for mark in axis.marks])


def _heads_values(axis: Axis, beside: list[Axis], rows: list[Row]) -> bool:
    """Tell whether numbers that are no axis follow this axis, and part it from the others."""
    row = rows[axis.first]
    if row.number(axis.at + 1) is None or any(other.at == axis.at + 1 for other in beside):
        return False
    return all(abs(other.at - axis.at) > 1 for other in beside)


def axes_across(rows: list[Row], dialect: Dialect) -> list[Axis]:
    """Return the rows of wavelengths that head spectra, in the order of the file."""
    found = []
    for place, row in enumerate(rows):
        if len(row.cells) < FEWEST_SAMPLES:
            continue
        axes = list(_axes(place, _marks(row.cells, row.numbers, dialect)))
        best = max(axes, key=lambda axis: len(axis.marks), default=None)
        if best and (best.marks[0].label or is_even([mark.value for mark in best.marks])):
            found.append(best)
    return found
