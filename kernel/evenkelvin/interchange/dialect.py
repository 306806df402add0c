"""How a delimited table is written: what parts its cells, and which mark is the decimal one."""

from __future__ import annotations

import csv
import re
from dataclasses import dataclass

from evenkelvin.said import Said

#: The delimiters by the names a person chooses them by, the most telling first.
DELIMITERS = {"tab": "\t", "semicolon": ";", "bar": "|", "comma": ",", "space": " "}
DECIMALS = {"point": ".", "comma": ","}
_LONGEST_NUMBER = 40

_PLAIN = {
    mark: re.compile(rf"[+-]?(?:[0-9]+{re.escape(mark)}?[0-9]*|{re.escape(mark)}[0-9]+)"
                     r"(?:[eE][+-]?[0-9]{1,3})?")
    for mark in ".,"
}  # fmt: skip
# Thousands in groups: by the other mark, an apostrophe or a narrow or no-break space.
_GROUPED = {
    ".": re.compile(r"[+-]?[0-9]{1,3}(?:[,'’\u00a0\u202f\u2009 ][0-9]{3})+\.[0-9]*"),
    ",": re.compile(r"[+-]?[0-9]{1,3}(?:[.'’\u00a0\u202f\u2009 ][0-9]{3})+,[0-9]*"),
}
_GROUPS = {
    ".": re.compile(r"[,'’\u00a0\u202f\u2009 ]"),
    ",": re.compile(r"[.'’\u00a0\u202f\u2009 ]"),
}
_WORDS = re.compile(r'"[^"]*"|\S+')


@dataclass(frozen=True)
class Dialect:
    """One way of writing a table. The delimiter ``" "`` stands for any run of white space."""

    delimiter: str
    decimal: str

    @property
    def words(self) -> Said:
        """Return how the table is written, for the person."""
        names = {
            "\t": Said("tabs"),
            ";": Said("semicolons"),
            "|": Said("bars"),
            ",": Said("commas"),
            " ": Said("spaces"),
        }
        if self.decimal == ".":
            return Said("{separators}, decimal point", separators=names[self.delimiter])
        return Said("{separators}, decimal comma", separators=names[self.delimiter])

    def cells(self, line: str) -> list[str]:
        """Return the cells of a line without the white space around them."""
        if self.delimiter == " ":
            if '"' not in line:
                return line.split()
            return [word.strip('"') for word in _WORDS.findall(line)]
        if '"' in line:
            # A line at a time: a lost quotation mark then spoils its own line only.
            try:
                cells = next(csv.reader([line], delimiter=self.delimiter, skipinitialspace=True))
            except (csv.Error, StopIteration):
                cells = line.split(self.delimiter)
        else:
            cells = line.split(self.delimiter)
            if self.delimiter == self.decimal:
                cells = _rejoined(cells)
        return [cell.strip() for cell in cells]

    def number(self, cell: str) -> float | None:
        """Return the number in a cell, a trailing % aside, or None where there is none."""
        if not cell or len(cell) > _LONGEST_NUMBER:
            return None
        if not _PLAIN[self.decimal].fullmatch(cell):
            cell = cell.replace("−", "-").removesuffix("%").rstrip()
            if not _PLAIN[self.decimal].fullmatch(cell):
                if not _GROUPED[self.decimal].fullmatch(cell):
                    return None
                cell = _GROUPS[self.decimal].sub("", cell)
        value = float(cell.replace(",", "."))
        return value if abs(value) < 1e300 else None


def _rejoined(cells: list[str]) -> list[str]:
    """Join whole and decimal parts that one comma parted: 380,0,12 is 380 and 0,12.

    An odd count leaves the first, a whole wavelength, alone.
    """
    if len(cells) < 3 or not all(cell.strip().lstrip("+-").isdigit() for cell in cells):
        return cells
    odd = len(cells) % 2
    pairs = zip(cells[odd::2], cells[odd + 1 :: 2], strict=True)
    return cells[:odd] + [f"{whole},{part}" for whole, part in pairs]


def candidates(text: str) -> list[Dialect]:
    """Return the dialects in which a text could be written, the most telling first."""
    found = []
    for delimiter in DELIMITERS.values():
        if delimiter == " " or delimiter in text:
            for decimal in DECIMALS.values():
                if decimal == "." or "," in text:
                    found.append(Dialect(delimiter, decimal))
    return found
