"""CGATS.17 and ISO 28178, 'Exchange format for colour and process control data': keyword text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, field

from evenkelvin.fields import parse_number
from evenkelvin.interchange.contents import (
    CHOICES,
    FEWEST_SAMPLES,
    MAX_CELLS,
    MAX_COLUMNS,
    MAX_LINES,
    Contents,
    FoundSpectrum,
    Question,
    to_fraction,
)
from evenkelvin.interchange.headings import kind_of
from evenkelvin.interchange.photons import to_power
from evenkelvin.interchange.readings import take_stated
from evenkelvin.interchange.stated import (
    Statement,
    field_of,
    noted,
    state_readings,
    state_spectra,
    statement,
)
from evenkelvin.problem import Problem
from evenkelvin.said import Said

_BEGINS = re.compile(r"^\s*BEGIN_DATA_FORMAT\b", re.IGNORECASE | re.MULTILINE)
_TOKEN = re.compile(r'"((?:[^"]|"")*)"|(#.*)|([^\s"#]\S*)|(")')
#: A field whose name carries its wavelength: SPECTRAL_380, SPECTRAL_NM380, nm380, SPECTRAL_PCT_380.
_AT_WAVELENGTH = re.compile(
    r"(?:SPECTRAL|SPEC|LAMBDA|NM|R|T)_?(?:NM|PCT|DEC)?_?(\d{3,4}(?:\.\d{1,4})?)(?:NM)?",
    re.IGNORECASE,
)

#: Header lines that may say what was measured.
_DESCRIBES = re.compile(r"\s*(DESCRIPTOR|FILE_DESCRIPTOR|MEASUREMENT|TARGET_TYPE|SPECTRAL)", re.I)


#: Keywords that tell of the format or of the instrument, and none of the light's figures.
_OWN = frozenset({"KEYWORD", "DESCRIPTOR", "MEASUREMENT", "FILTER", "SAMPLE_ID", "ID"})


@dataclass
class _Table:
    line: int
    fields: list[str] = field(default_factory=list)
    rows: list[tuple[int, list[str]]] = field(default_factory=list)
    #: All lines of the file's heads, how many of them stand above it, and what these state.
    heads: list[tuple[int, str]] = field(default_factory=list)
    above: int = 0
    said: list[Statement] = field(default_factory=list)

    @property
    def header(self) -> str:
        """Return all the text above the table."""
        return "\n".join(line for _, line in self.heads[: self.above])


def is_cgats(text: str) -> bool:
    """Tell whether a text is of this format: it declares the format of its data."""
    return bool(_BEGINS.search(text))


def _tokens(line: str) -> list[str]:
    found = []
    for quoted, comment, word, _ in _TOKEN.findall(line):
        if not comment:
            found.append(word or quoted.replace('""', '"'))
    return found


def _stated(head: list[tuple[int, str]]) -> Iterator[Statement]:
    """Yield what lines above a table state of its lights."""
    for number, line in head:
        _, mark, comment = line.partition("#")
        tokens = _tokens(line)
        told = noted(comment, number) if mark and not tokens else iter(())
        if tokens and tokens[0].upper() not in _OWN:
            label = "measured" if tokens[0].upper() == "CREATED" else tokens[0]
            told = iter([statement(label, " ".join(tokens[1:]), number)])
        yield from (one for one in told if field_of(one.label))


class _Heads:
    """What stands above the tables of a file: it holds until it is stated anew."""

    def __init__(self) -> None:
        self.lines: list[tuple[int, str]] = []
        self._read = 0
        self._known: dict[str, Statement] = {}

    def give(self, table: _Table) -> _Table:
        """Return a table with what stands above it."""
        new = list(_stated(self.lines[self._read :]))
        self._read = len(self.lines)
        anew = {field_of(told.label): told for told in new}
        table.said = [told for name, told in self._known.items() if name not in anew] + new
        self._known |= anew
        table.heads, table.above = self.lines, self._read
        return table


def _tables(text: str, contents: Contents) -> Iterator[_Table]:
    """Yield each data table with all that stands above it."""
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
    state = "header"
    heads = _Heads()
    table = _Table(1)
    cells = 0
    for number, line in enumerate(lines, 1):
        tokens = _tokens(line)
        if not tokens:
            if line.strip() and state == "header":
                heads.lines.append((number, line))
            continue
        keyword = tokens[0].upper()
        if keyword == "BEGIN_DATA_FORMAT":
            state, table = "format", _Table(number)
            table.fields += tokens[1:]
        elif keyword == "END_DATA_FORMAT":
            state = "header"
        elif keyword == "BEGIN_DATA":
            state, table.line = "data", number
        elif keyword == "END_DATA":
            yield heads.give(table)
            state, table = "header", _Table(number, table.fields)
        elif state == "format":
            table.fields += tokens
        elif state == "data":
            table.rows.append((number, tokens))
            cells += len(tokens)
        else:
            heads.lines.append((number, line))
        if len(table.fields) > MAX_COLUMNS or cells > MAX_CELLS:
            raise Problem(
                "",
                Said(
                    "The table is too large: at most {max_columns} fields and {max_cells} values "
                    "are read.",
                    max_columns=MAX_COLUMNS,
                    max_cells=MAX_CELLS,
                ),
                number,
            )
    if state == "data":
        contents.complain(
            Problem(
                "", Said("The data has no END_DATA; the file may have been cut short."), len(lines)
            )
        )
        yield heads.give(table)


def _records(table: _Table, contents: Contents) -> Iterator[tuple[int, list[str]]]:
    """Yield the records of a table; one may run over several lines."""
    width = len(table.fields)
    if not width:
        contents.complain(
            Problem("", Said("BEGIN_DATA comes without fields in BEGIN_DATA_FORMAT."), table.line)
        )
        return
    if all(len(tokens) == width for _, tokens in table.rows):
        yield from table.rows
        return
    if all(len(tokens) < width for _, tokens in table.rows):
        flat = [(line, token) for line, tokens in table.rows for token in tokens]
        if len(flat) % width == 0:
            for start in range(0, len(flat), width):
                yield flat[start][0], [token for _, token in flat[start : start + width]]
            return
    for line, tokens in table.rows:
        if len(tokens) == width:
            yield line, tokens
        else:
            contents.complain(
                Problem(
                    "",
                    Said(
                        "Expected {width} values, one for each field, but found {count}; the "
                        "line is "
                        "left out.",
                        width=width,
                        count=len(tokens),
                    ),
                    line,
                )
            )


def read_cgats(text: str, choices: Mapping[str, str]) -> Contents:
    """Return the spectra of every data table of a CGATS text.

    Wavelengths are in the field names (SPECTRAL_380 …), in pairs of SPECTRAL_NM with SPECTRAL_PCT
    or SPECTRAL_DEC within a record, or in such a pair with one wavelength to a record. What other
    fields of a record say, and keywords and comments above the table, is stated of its light.

    Raises
    ------
    Problem
        When the file is beyond the bounds.
    """
    contents = Contents("CGATS.17 (ISO 28178)", choices=choices)
    for table in _tables(text, contents):
        _read_table(table, contents, choices)
    if not contents.spectra and not contents.readings and not contents.problems:
        contents.complain(
            Problem(
                "",
                Said("The CGATS file has no spectral fields, such as SPECTRAL_380, and no XYY_X."),
            )
        )
    return contents


def _read_table(table: _Table, contents: Contents, choices: Mapping[str, str]) -> None:
    fields = [name.upper() for name in table.fields]
    name_at = next(
        (fields.index(name) for name in ("SAMPLE_NAME", "SAMPLE_ID") if name in fields), None
    )
    named = [
        (place, match.group(1))
        for place, name in enumerate(fields)
        if (match := _AT_WAVELENGTH.fullmatch(name))
    ]
    pairs = [
        (place, place + 1)
        for place, name in enumerate(fields[:-1])
        if name in ("SPECTRAL_NM", "NM", "WAVELENGTH")
        and fields[place + 1] in ("SPECTRAL_PCT", "SPECTRAL_DEC", "SPECTRAL_VALUE", "VALUE")
    ]
    percent: bool | None = None
    if any("PCT" in name for name in fields):
        percent = True
    elif any("DEC" in name for name in fields):
        percent = False
    if len(named) < FEWEST_SAMPLES and not pairs:
        _read_readings(table, fields, contents)
        return
    header = table.header
    kind = _kind(header, percent, contents, choices)
    column = FoundSpectrum("", [], [], kind, line=table.line)
    column_damaged = 0
    lights: list[tuple[FoundSpectrum, list[Statement]]] = []
    # One wavelength to a record: no record has figures of its own.
    samples_of = {place for place, _ in named} | {place for pair in pairs for place in pair}
    for line, tokens in _records(table, contents):
        found, damaged = column, 0
        if len(named) >= FEWEST_SAMPLES or len(pairs) > 1:
            found = FoundSpectrum("", [], [], kind, line=line)
        if name_at is not None and not found.name:
            found.name = tokens[name_at]
        samples = (
            [(nm, tokens[place]) for place, nm in named]
            if len(named) >= FEWEST_SAMPLES
            else [(tokens[at], tokens[value]) for at, value in pairs]
        )
        for nm, value in samples:
            try:
                number = parse_number(nm, "SPECTRAL_NM", Said("the wavelength"))
                found.values.append(
                    parse_number(value, "DATA", Said("the value at {number:g} nm", number=number))
                )
                found.wavelengths.append(number)
            except Problem as problem:
                damaged += 1
                contents.complain(
                    Problem(
                        problem.field,
                        Said("{message} It is left out.", message=problem.message),
                        line,
                    )
                )
        if found is column:
            column_damaged += damaged
        elif _take(found, header, contents, percent, choices, damaged):
            lights.append((found, _own(fields, tokens, line, samples_of)))
    if column.values:
        column.name = _descriptor(header)
        if _take(column, header, contents, percent, choices, column_damaged):
            lights.append((column, [Statement("DESCRIPTOR", column.name, table.line, "name")]))
    lights = [(found, own) for found, own in lights if found.kind == "light"]
    state_spectra(table.said, lights, contents)


def _own(fields: list[str], tokens: list[str], line: int, without: Set[int]) -> list[Statement]:
    """Return what the cells of a record state, by the names of their fields."""
    found = []
    for place, (name, token) in enumerate(zip(fields, tokens, strict=True)):
        if place in without or name in _OWN:
            continue
        known = {"SAMPLE_NAME": "name", "XYY_X": "x", "XYY_Y": "y"}.get(name, "")
        told = statement(name, token, line)
        found.append(told._replace(label=name, field=known) if known else told)
    return found


def _take(
    found: FoundSpectrum,
    header: str,
    contents: Contents,
    percent: bool | None,
    choices: Mapping[str, str],
    damaged: int,
) -> bool:
    to_power(found, contents, [line for line in header.splitlines() if _DESCRIBES.match(line)])
    to_fraction(found, contents, percent, choices.get("values", ""))
    return contents.take(found, damaged)


def _kind(header: str, percent: bool | None, contents: Contents, choices: Mapping[str, str]) -> str:
    """Return what was measured: as chosen, as the header says, or as is likely."""
    # The standard has no keyword for it: the format began with reflecting samples.
    said = (line for line in header.splitlines() if _DESCRIBES.match(line))
    likely = next((kind for line in said if (kind := kind_of(line))), "")
    if likely and "quantity" not in choices:
        return likely
    taken = choices.get("quantity") or ("light" if percent is None else "reflectance")
    contents.ask(
        Question(
            "quantity",
            Said("The file does not say what was measured. What is it?"),
            CHOICES["quantity"],
            taken,
        )
    )
    return taken


def _descriptor(header: str) -> str:
    """Return the text of the last DESCRIPTOR before a table."""
    for line in reversed(header.splitlines()):
        tokens = _tokens(line)
        if tokens and tokens[0].upper() == "DESCRIPTOR":
            return " ".join(tokens[1:])
    return ""


def _read_readings(table: _Table, fields: list[str], contents: Contents) -> None:
    """Take a reading from each record that has x and y, or a colour temperature."""
    named = {field_of(statement(name, "", 0).label) for name in fields}
    if not ({"XYY_X", "XYY_Y"} <= set(fields) or "cct_K" in named):
        return
    records = list(_records(table, contents))
    own = [_own(fields, tokens, line, set()) for line, tokens in records]
    names = fields.index("SAMPLE_ID") if "SAMPLE_ID" in fields else None
    stated = state_readings(table.said, own, contents)
    for (line, tokens), one in zip(records, stated, strict=True):
        fallback = {} if names is None else {"name": tokens[names]}
        take_stated({**fallback, **one}, line, contents)
