"""What a file says of a spectrum beside its samples: level, colour, title, time and place.

Labels of many languages, in any order, above, below or beside the spectrum; with the value in the
next cell, after a colon or an equals sign, or in the line below; as keywords, elements and comments
of the other formats too. What a label is, :func:`field_of`
says, for tables of readings too. What cannot be read is complained of by its line and left out;
the spectrum stays.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from functools import lru_cache
from itertools import zip_longest
from typing import Any, NamedTuple

import numpy as np

from evenkelvin.colorimetry.chromaticity import is_real, uv_prime_to_xy, xyz_to_xy
from evenkelvin.colorimetry.spectrum import checked_spectrum, tristimulus
from evenkelvin.colorimetry.temperature import (
    HIGHEST_K,
    LARGEST_DUV,
    LOWEST_K,
    cct_to_xy,
    xy_to_cct,
)
from evenkelvin.data import Floats
from evenkelvin.exposure.stops import FLASH_BOUNDS, LIGHT_BOUNDS
from evenkelvin.interchange.contents import (
    CHOICES,
    DATE_ORDERS,
    FEWEST_SAMPLES,
    LONGEST_NAME,
    Contents,
    FoundSpectrum,
    Question,
)
from evenkelvin.interchange.csv_text import as_typed
from evenkelvin.interchange.dialect import Dialect
from evenkelvin.interchange.layout import Row
from evenkelvin.interchange.moments import read_moment, read_zone
from evenkelvin.interchange.safe_xml import Node
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.scouting.coordinates import read_angle, read_position

#: Labels in small letters, brackets aside: English, German, French, Spanish, Italian, Portuguese,
#: Dutch and Polish, and what is usual in Japanese and Chinese.
_FIELDS = (
    ("x", r"(cie\s*)?(1931\s*)?(chromaticity\s*)?x(\s*(cie\s*)?1931)?"),
    ("y", r"(cie\s*)?(1931\s*)?(chromaticity\s*)?y(\s*(cie\s*)?1931)?"),
    ("xy", r"(cie\s*)?(1931\s*)?(chromaticity|farbort|chromaticité|cromaticidad|cromaticità|"
           r"cromaticidade|kleurpunt|chromatyczność)?\s*x\W{0,2}y(\s*(cie\s*)?1931)?|"
           r"chromaticity|farbort|chromaticité|cromaticidad|cromaticità|cromaticidade|kleurpunt|"
           r"chromatyczność"),
    ("u_prime", r"(cie\s*)?(1976\s*)?u\s*['′’](\s*1976)?"),
    ("v_prime", r"(cie\s*)?(1976\s*)?v\s*['′’](\s*1976)?"),
    ("duv", r"duv|d_uv|δuv|delta\s*uv"),
    ("illuminance_lx", r"lux|lx|ev?|illuminance|beleuchtungsstärke|éclairement|iluminancia|"
                       r"illuminamento|iluminância|verlichtingssterkte|natężenie\s*oświetlenia|照度"),
    ("exposure_lx_s", r"(light|luminous|flash)?\s*exposure|belichtung|lichtmenge|exposition"
                      r"(\s*lumineuse)?|exposición(\s*luminosa)?|esposizione(\s*luminosa)?|"
                      r"exposição(\s*luminosa)?|belichting|naświetlenie"),
    ("cct_K", r"cct|tcp|tn|kelvin|(correlated\s*)?colou?r\s*temp(erature)?|(ähnlichste\s*)?"
              r"farbtemperatur|température\s*de\s*couleur(\s*proximale)?|"
              r"temperatura\s*(de|di|da)\s*(col(or|ore)|cor)(\s*correlat?[ai]?d?a?)?|"
              r"kleurtemperatuur|temperatura\s*barwowa|色温度?"),
    ("gels", r"gels?|filters?|filtres?|filtros?|filtri|folien?"),
    ("lamp", r"lamp"),
    ("integration_s", r"integration(\s*time)?|integrationszeit|temps\s*d.intégration|"
                      r"tiempo\s*de\s*integración|tempo\s*d[i’']?\s*integrazione|"
                      r"tempo\s*de\s*integração|integratietijd|czas\s*(całkowania|integracji)"),
    ("moment", r"(date\s*(and|/|,|&)?\s*time|datetime|timestamp|measured(\s*(at|on))?|"
               r"taken(\s*at)?|zeitpunkt|datum\s*(und|/|,)\s*(uhr)?zeit|gemessen(\s*am)?|"
               r"date\s*et\s*heure|fecha\s*y\s*hora|data\s*e\s*(ora|hora)|datum\s*en\s*tijd|"
               r"data\s*i\s*(godzina|czas)|日時)"),
    ("date", r"date|day|datum|tag|jour|fecha|día|data|giorno|dia|dzień|日付|日期"),
    ("time", r"time(\s*of\s*day)?|uhrzeit|zeit|heure|hora|ora|tijd|godzina|czas|時刻|时间"),
    ("zone", r"(time\s*)?zone|utc(\s*offset)?|zeitzone|fuseau(\s*horaire)?|zona\s*horaria|"
             r"fuso(\s*(orario|horário))?|tijdzone|strefa(\s*czasowa)?"),
    ("latitude", r"lat(itude)?|(geogr\w*\s*)?breite|latitud|latitudine|breedtegraad|"
                 r"szerokość(\s*geograficzna)?|緯度"),
    ("longitude", r"lon(g|gitude)?|(geogr\w*\s*)?länge|longitud|longitudine|lengtegraad|"
                  r"długość(\s*geograficzna)?|経度"),
    ("position", r"(gps(\s*position)?|position|coordinates|koordinaten|standort|coordonnées|"
                 r"coordenadas|posición|coordinate|posizione|posição|coördinaten|positie|"
                 r"współrzędne|pozycja|geo)"),
    ("place", r"place|location|site|ort|lieu|lugar|luogo|local|plaats|miejsce|場所"),
    ("name", r"name|light|lamp|source|label|title|sample|reading|measurement|nom|nombre|nome|"
             r"bezeichnung|leuchte|titel|titre|título|titolo|tytuł|nazwa|naam|messung|probe|"
             r"mesure|medición|misura|medição|meting|pomiar|題名|名前|id"),
)  # fmt: skip
_PATTERNS = tuple((name, re.compile(pattern)) for name, pattern in _FIELDS)
#: Of several labels that could name a light, the first of these does.
NAMES = ("name", "title", "light", "source", "label", "lamp", "id")
#: A flash: illuminance times time.
_LUX_SECONDS = r"l(?:x|ux)\s*[·.*⋅-]?\s*(?:s|sec|seconds?)"
_EXPOSURE = re.compile(rf"[^\[(]{{0,40}}[\[(]\s*{_LUX_SECONDS}\s*[\])]")
#: What stands in brackets; of any length, a file of open ones alone would take minutes.
_BRACKET = re.compile(r"[\[(]([^\])]{0,60})[\])]")
#: Fields that hold words, and those that hold a time or a place.
WORDS = frozenset({"name", "lamp", "gels", "place"})
_TIMES = frozenset({"moment", "date", "time", "zone"})
TEXTS = WORDS | _TIMES | {"latitude", "longitude", "position"}
_COLOURS = frozenset({"x", "y", "u_prime", "v_prime", "cct_K", "duv"})
_AMOUNTS = frozenset({"illuminance_lx", "illuminance_fc", "exposure_lx_s"})
#: Fields whose label heads no column of samples.
BESIDE = (TEXTS | _AMOUNTS | {"cct_K", "duv", "xy", "integration_s"}) - {"name", "lamp", "gels"}
_MOST_WORDS = 5
_LONGEST = 200

_FIGURE = re.compile(
    r"([+−-]?\s*[\d.,'’\u00a0\u202f\u2009 ]*\d(?:[.,](?!\d))?(?:[eE][+-]?\d{1,2})?)\s*(.*)",
    re.DOTALL,
)
_GROUPS = re.compile(r"(?<=\d)['’\u00a0\u202f\u2009 ](?=\d{3}(?!\d))")
#: By what a field's value is multiplied for the unit it is written in; None: no other is known.
_UNITS: Mapping[str, Mapping[str, tuple[str, float]]] = {
    "illuminance_lx": {
        "": ("illuminance_lx", 1.0), "lx": ("illuminance_lx", 1.0), "lux": ("illuminance_lx", 1.0),
        "lm/m2": ("illuminance_lx", 1.0), "lm/m²": ("illuminance_lx", 1.0),
        "klx": ("illuminance_lx", 1000.0), "klux": ("illuminance_lx", 1000.0),
        "fc": ("illuminance_fc", 1.0), "ftcd": ("illuminance_fc", 1.0),
    },
    "exposure_lx_s": {"": ("exposure_lx_s", 1.0)},
    "cct_K": {"": ("cct_K", 1.0), "k": ("cct_K", 1.0), "°k": ("cct_K", 1.0),
              "kelvin": ("cct_K", 1.0)},
    "integration_s": {
        "s": ("integration_s", 1.0), "sec": ("integration_s", 1.0), "ms": ("integration_s", 1e-3),
        "msec": ("integration_s", 1e-3), "µs": ("integration_s", 1e-6),
        "μs": ("integration_s", 1e-6), "us": ("integration_s", 1e-6),
    },
}  # fmt: skip
_BOUNDS = {
    "illuminance_lx": LIGHT_BOUNDS, "illuminance_fc": LIGHT_BOUNDS, "exposure_lx_s": FLASH_BOUNDS,
    "cct_K": (LOWEST_K, HIGHEST_K), "duv": (-0.1, 0.1), "x": (0.0, 1.0), "y": (0.0, 1.0),
    "u_prime": (0.0, 1.0), "v_prime": (0.0, 1.0), "integration_s": (1e-6, 3600.0),
}  # fmt: skip
#: A meter's scatter in x and y (common practice, no source), and how many of it are a disagreement.
_SCATTER, _BEYOND = 0.0015, 3.0
_SHOWN = 24
#: Where a new word begins inside a name: ColorTemperature.
_INNER = re.compile(r"(?<=[a-zäöü0-9])(?=[A-Z])")
#: Units that end the name of a keyword.
_UNIT_WORDS = frozenset({"lx", "lux", "fc", "klx", "k", "kelvin", "s", "ms"})
_LONGEST_NOTE = 20_000
#: How the cells of samples begin, in which no label stands: a number, or nothing.
_BEGINS_NUMBER = frozenset(["", *"0123456789+-−.,"])
#: A number grouped by plain spaces, or several: 100 200.
_APART = re.compile(r"\s*[+-]?\d{3}(?: \d{3})+\s*")
#: Elements that hold what somebody wrote.
_NOTES = frozenset({"Comment", "Comments", "Note", "Notes"})


def word_of(cell: str) -> str:
    """Return a label as it is compared: small letters, no bracket, no colon."""
    return " ".join(_BRACKET.sub("", cell).strip(" :=\t").lower().replace(",", " ").split())


@lru_cache(maxsize=4000)
def field_of(cell: str) -> str:
    """Return which field a label names, or an empty text."""
    # Most cells of a file are numbers.
    if not cell or len(cell) > 60 or cell[0].isdigit():
        return ""
    # X and Y in capitals are tristimulus values, not chromaticities.
    if cell.strip(" :=") in ("X", "Y"):
        return ""
    if _EXPOSURE.fullmatch(cell.strip(" :=").lower()):
        return "exposure_lx_s"
    word = word_of(cell)
    return next((name for name, pattern in _PATTERNS if word and pattern.fullmatch(word)), "")


def read_stated(rows: Sequence[Row], dialect: Dialect, contents: Contents) -> None:
    """Give each spectrum of a table what the file says of it beside its samples.

    Parameters
    ----------
    rows
        All lines of the table.
    dialect
        How it is written.
    contents
        Its lights get ``stated``, their name and notes; what is wrong is complained of, and the
        order of day and month is asked where it is open.
    """
    blocks: dict[int, list[FoundSpectrum]] = {}
    for found in contents.spectra:
        if found.kind == "light":
            blocks.setdefault(found.line or 0, []).append(found)
    starts = sorted(blocks)
    for index, start in enumerate(starts):
        some = blocks[start]
        reader = _Reader(dialect, contents, len(some))
        if some[0].column is None:
            head = next((row for row in rows if len(row.cells) >= FEWEST_SAMPLES), None)
            above = [row for row in rows if head and row.line < head.line]
            if head is not None:
                own = next(row for row in rows if row.line == start)
                reader.take_row(head, own, 0)
            reader.several = reader.several if len(starts) == 1 else len(starts)
            reader.read(above, some)
        else:
            # Above the spectrum, from the end of the one before; of the last one below it too.
            after = starts[index - 1] if index else -1
            before = start if index + 1 < len(starts) else float("inf")
            near = [
                row
                for row in rows
                if after < row.line < start or (start < row.line < before and row.number(0) is None)
            ]
            if index:
                # What stands in the block before are its samples.
                near = [row for row in near if row.number(0) is None or row.line > start]
            reader.read(near, some)
        for place, found in enumerate(some):
            reader.give(found, place)


class Statement(NamedTuple):
    """A label and its value, as keyword text and XML have them; ``field`` where it is known."""

    label: str
    value: str
    line: int
    field: str = ""


def statement(label: str, value: str, line: int) -> Statement:
    """Return a statement by the name of an element or keyword: ColorTemperature, ILLUMINANCE_LX."""
    words = _INNER.sub(" ", label.replace("_", " ").strip())
    head, _, unit = words.rpartition(" ")
    if not field_of(words) and unit.lower() in _UNIT_WORDS and field_of(head):
        words = f"{head} ({unit})"
    return Statement(words, value, line)


def noted(text: str, line: int) -> Iterator[Statement]:
    """Yield what a comment states: a label, a colon or equals sign and a value, or several.

    What else a comment says is its own business.
    """
    for place, part in enumerate(re.split(r"\r\n|\r|\n", text[:_LONGEST_NOTE])):
        label, value = "", ""
        for piece in re.split(r"([;\t|]|,\s)", part):
            sign = re.search(r"[:=]", piece)
            if sign and field_of(head := piece[: sign.start()].strip(" #")):
                if label:
                    yield Statement(label, value.strip(" ;,|\t"), line + place)
                label, value = head, piece[sign.end() :]
            else:
                value += piece
        if label:
            yield Statement(label, value.strip(" ;,|\t"), line + place)


def elements(node: Node, without: Set[str] = frozenset()) -> Iterator[Statement]:
    """Yield what the elements below one state: by their names, as tags, or in comments.

    A tag has attributes ``Name`` and ``Value``; a unit may be an attribute beside the text.
    """
    for child in node.children:
        if child.name in without:
            continue
        attributes = child.attributes
        if child.name == "Tag":
            yield statement(attributes.get("Name", ""), attributes.get("Value", ""), child.line)
        elif child.name in _NOTES:
            yield from noted(child.text, child.line)
        elif child.children:
            yield from elements(child, without)
        elif child.text:
            unit = attributes.get("unit") or attributes.get("units") or ""
            yield statement(child.name, f"{child.text} {unit}".strip(), child.line)


def state_spectra(
    common: Iterable[Statement],
    own: Sequence[tuple[FoundSpectrum, Iterable[Statement]]],
    contents: Contents,
) -> None:
    """Give lights what is stated of all of them and of each, as :func:`read_stated` does."""
    reader = _Reader(Dialect(";", "."), contents, len(own))
    reader.say(common, [some for _, some in own])
    for which, (found, _) in enumerate(own):
        reader.give(found, which)


def state_readings(
    common: Iterable[Statement], own: Sequence[Iterable[Statement]], contents: Contents
) -> list[dict[str, Any]]:
    """Return what is stated of each reading, of all of them and of itself."""
    reader = _Reader(Dialect(";", "."), contents, len(own))
    reader.say(common, own)
    return [reader.plain(which) for which in range(len(own))]


def read_alone(rows: Sequence[Row], dialect: Dialect, contents: Contents) -> dict[str, Any]:
    """Return what the lines of a file without a spectrum state: a reading, as far as it goes."""
    reader = _Reader(dialect, contents, 1)
    reader.read(rows, [])
    return reader.all


def read_texts(texts: Mapping[str, str], line: int, contents: Contents) -> dict[str, Any]:
    """Return what cells of one row, by their fields, say of time and place."""
    reader = _Reader(Dialect(";", "."), contents, 1)
    for field, text in texts.items():
        reader.take(None, field, [text], line, field)
    return reader.all


def _is_head(row: Row, fields: Sequence[str], below: Row) -> bool:
    """Tell whether every cell of a line is a label, and none of the cells below is one."""
    cells = [cell for cell in row.cells if cell]
    if sum(map(bool, fields)) < max(2, len(cells)) or not 2 <= len(below.cells) <= len(row.cells):
        return False
    return not any(map(field_of, below.cells))


def _pairs(row: Row, delimiter: str) -> Iterator[tuple[str, list[str], int, str]]:
    """Yield (field, values, line, label) of a line of labels with their values."""
    cells = [as_typed(cell) for cell in row.cells]
    if delimiter == " ":
        cells = [" ".join(cells)]
    place = 0
    while place < len(cells):
        cell = cells[place]
        place += 1
        if not cell or len(cell) > _LONGEST:
            continue
        if field := field_of(cell):
            values: list[str] = []
            while place < len(cells) and (not values or not _begins(cells[place])):
                if cells[place]:
                    values.append(cells[place])
                place += 1
            if values:
                yield field, values, row.line, cell
            continue
        field, label, value = _split(cell)
        if field:
            yield field, [value], row.line, label


def _begins(cell: str) -> bool:
    return bool(field_of(cell) or _split(cell)[0])


def _split(cell: str) -> tuple[str, str, str]:
    """Return the field, the label and the value in one cell; the field empty where it is none."""
    if sign := re.search(r"[:=]", cell):
        label, value = cell[: sign.start()].strip(), cell[sign.end() :].strip()
        if value and (field := field_of(label)):
            return field, label, value
    words = cell.split()
    for count in range(min(_MOST_WORDS, len(words) - 1), 0, -1):
        label, value = " ".join(words[:count]), " ".join(words[count:]).lstrip(":= ")
        field = field_of(label)
        # Words after words may be any sentence.
        if field and value and field not in WORDS and re.search(r"\d", value):
            return field, label, value
    return "", "", ""


class _Reader:
    """Reads what is stated of the spectra of one block."""

    def __init__(self, dialect: Dialect, contents: Contents, several: int) -> None:
        self._dialect = dialect
        self._contents = contents
        #: How many spectra what is said of all is said of.
        self.several = several
        #: By spectrum (None: all of the block) and field.
        self._stated: dict[tuple[int | None, str], tuple[Any, int]] = {}

    @property
    def all(self) -> dict[str, Any]:
        """Return what is stated of all, plainly."""
        return self.plain(None)

    def read(self, rows: Sequence[Row], some: Sequence[FoundSpectrum]) -> None:
        """Read lines: labels with their values, or a line of labels above one of values."""
        columns = [found.column or 0 for found in some]
        done = -1
        for row, below in zip_longest(rows, rows[1:]):
            if row.line == done or all(cell[:1] in _BEGINS_NUMBER for cell in row.cells):
                continue
            fields = [field_of(cell) for cell in row.cells]
            if below is not None and _is_head(row, fields, below):
                done = below.line
                self.take_row(row, below)
                continue
            cells = [row.cell(column) for column in columns]
            if fields and fields[0] and len(columns) > 1 and sum(map(bool, cells)) > 1:
                for which, cell in enumerate(cells):
                    if cell:
                        self.take(which, fields[0], [cell], row.line, row.cells[0])
                continue
            for pair in _pairs(row, self._dialect.delimiter):
                self.take(None, *pair)

    def say(self, common: Iterable[Statement], own: Sequence[Iterable[Statement]]) -> None:
        """Read statements of all, then those of each."""
        for told in common:
            field = told.field or field_of(told.label)
            # What several are called together is none's own name.
            if field and told.value and not (field == "name" and self.several > 1):
                self.take(None, field, [told.value], told.line, told.label)
        if self.several > 1:
            self._leave_single()
        for which, some in enumerate(own):
            for told in some:
                if told.value and (field := told.field or field_of(told.label)):
                    self.take(which, field, [told.value], told.line, told.label)

    def take_row(self, head: Row, values: Row, which: int | None = None) -> None:
        """Read a line of values below one of labels."""
        for label, cell in zip(head.cells, values.cells, strict=False):
            if cell and (field := field_of(label)):
                self.take(which, field, [as_typed(cell)], values.line, label)

    def take(self, which: int | None, field: str, values: list[str], line: int, label: str) -> None:
        """Read one statement; complain of one that cannot be read."""
        try:
            read = self._read(field, values, label)
        except Problem as problem:
            self._contents.complain(Problem("", problem.message, line))
            return
        for name, value in read.items():
            known = self._stated.get((which, name))
            if known is None:
                self._stated[which, name] = (value, line)
            elif known[0] != value and name != "name":
                self._contents.complain(
                    Problem(
                        "",
                        Said(
                            "“{label}” says something else than line {earlier}; both are left out.",
                            label=label[:_SHOWN],
                            earlier=str(known[1]),
                        ),
                        line,
                    )
                )
                self._stated[which, name] = (None, line)

    def _read(self, field: str, values: list[str], label: str) -> dict[str, Any]:
        text = " ".join(values).strip()
        if field in ("x", "y") and len(values) == 1 and re.search(r"\by\b\s*[:=]", text):
            # x = 0.31 y = 0.33 in one cell.
            one, _, two = re.split(r"\b(y)\b\s*[:=]", text, maxsplit=1)
            return self._read("x", [one], label) | self._read("y", [two], label)
        if field in WORDS:
            if field == "place" and (where := read_position(text)):
                return {"position": where}
            return {} if field in ("lamp", "gels") else {field: text}
        if field in _TIMES:
            return self._moment(field, text, label)
        if field == "position":
            where = read_position(text)
            if where is None:
                if not re.search(r"\d", text):
                    return {"place": text}
                raise _unreadable(label, text)
            return {"position": where}
        if field in ("latitude", "longitude"):
            angle = read_angle(text, *(("N", "S") if field == "latitude" else ("E", "W")))
            if angle is None or abs(angle) > (90.0 if field == "latitude" else 180.0):
                raise _unreadable(label, text)
            return {field: angle}
        if field == "xy":
            two = [part for part in re.split(r"[;/|\s]+|,\s+", text.strip("() ")) if part]
            if len(two) == 1 and text.count(",") == 1 and "." in text:
                two = text.split(",")
            if len(two) != 2:
                raise _unreadable(label, text)
            return self._read("x", two[:1], label) | self._read("y", two[1:], label)
        return self._figure(field, values, label)

    def _figure(self, field: str, values: list[str], label: str) -> dict[str, Any]:
        text = " ".join(values).strip()
        numbers = [value for value in values if re.search(r"\d", value)]
        if len(numbers) > 1:
            raise _several(label, numbers)
        found = _FIGURE.fullmatch(text)
        if not found:
            raise _unreadable(label, text)
        bracket = _BRACKET.search(label)
        unit = (found[2] or (bracket[1] if bracket else "")).strip(" .[]()").lower()
        if not unit and field == "illuminance_lx" and word_of(label) in ("lx", "lux"):
            unit = "lx"
        if re.fullmatch(_LUX_SECONDS, unit) and field in ("illuminance_lx", "exposure_lx_s"):
            field, unit = "exposure_lx_s", ""
        units = _UNITS.get(field, {"": (field, 1.0), "-": (field, 1.0)})
        if field == "exposure_lx_s" and unit in _UNITS["integration_s"]:
            # Some call the time of the exposure by that name.
            field, units = "integration_s", _UNITS["integration_s"]
        if unit not in units:
            raise Problem(
                "",
                Said(
                    "The unit of “{label}” ({unit}) is not known here; it is left out.",
                    label=label[:_SHOWN],
                    unit=unit[:_SHOWN] or "–",
                ),
            )
        if _APART.fullmatch(found[1]) and not self._grouped(label, found[1].strip()):
            raise _several(label, found[1].split())
        name, factor = units[unit]
        low, high = _BOUNDS[name]
        readings = [value * factor for value in self._numbers(found[1])]
        within = next((value for value in readings if low <= value <= high), None)
        if within is None:
            raise _unreadable(label, text)
        return {name: within}

    def _grouped(self, label: str, text: str) -> bool:
        """Ask whether 100 200 is one number; it is taken for several until that is said."""
        taken = self._contents.choices.get("grouped", "apart")
        self._contents.ask(
            Question(
                "grouped",
                Said(
                    "“{label}” says {text}: is that one number, or several readings?",
                    label=label[:_SHOWN],
                    text=text[:_SHOWN],
                ),
                CHOICES["grouped"],
                taken,
            )
        )
        return taken == "together"

    def _numbers(self, text: str) -> list[float]:
        """Return what a written number can be, the likeliest first."""
        plain = _GROUPS.sub(
            "", text.replace("−", "-").replace("+ ", "+").replace("- ", "-")
        ).strip()
        marks = [mark for mark in plain if mark in ".,"]
        ways: list[str] = []
        if not marks:
            ways = [plain]
        elif len(set(marks)) == 2:
            if marks.count(marks[-1]) == 1 and _grouped(plain.rpartition(marks[-1])[0], marks[0]):
                ways = [plain.replace(marks[0], "").replace(marks[-1], ".")]
        elif len(marks) > 1:
            ways = [plain.replace(marks[0], "")] if _grouped(plain, marks[0]) else []
        else:
            [mark] = marks
            ways = [plain.replace(mark, ".")]
            if _grouped(plain, mark):
                ways.append(plain.replace(mark, ""))
                if mark != self._dialect.decimal:
                    ways.reverse()
        try:
            return [float(way) for way in ways]
        except ValueError:
            return []

    def _moment(self, field: str, text: str, label: str) -> dict[str, Any]:
        if field == "zone":
            if (zone := read_zone(text)) is None:
                raise _unreadable(label, text)
            return {"zone": zone}
        order = self._contents.choices.get("date", "")
        if not re.search(r"\d", text) and label.lower().startswith("data"):
            # 'Data' heads the samples in English, and a date in four languages.
            return {}
        moment = read_moment(text, order or DATE_ORDERS[0])
        if moment is None or (field == "date" and moment.date is None):
            raise _unreadable(label, text)
        if moment.open:
            self._contents.ask(
                Question(
                    "date",
                    Said("“{text}”: is the day first, or the month?", text=text[:_SHOWN]),
                    DATE_ORDERS,
                    order or DATE_ORDERS[0],
                )
            )
        told = {"date": moment.date, "time": moment.time, "zone": moment.zone}
        return {name: value for name, value in told.items() if value is not None}

    def plain(self, which: int | None) -> dict[str, Any]:
        """Return what is stated of one spectrum, the place as one."""
        stated = {
            name: value
            for (place, name), (value, _) in self._stated.items()
            if place in (None, which) and value is not None
        }
        where = stated.pop("position", None)
        halves = (stated.pop("latitude", None), stated.pop("longitude", None))
        if where is None and None not in halves:
            where = halves
        if where is not None:
            stated["position"] = {"latitude": where[0], "longitude": where[1]}
        return stated

    def give(self, found: FoundSpectrum, which: int) -> None:
        """Give a spectrum what is stated of it or of all."""
        if self.several > 1:
            self._leave_single()
        stated = self.plain(which)
        if title := _name(stated):
            found.name = found.name or title
            stated["title"] = title
        stated.pop("name", None)
        _compare(found, stated)
        found.stated = {name: value for name, value in stated.items() if name not in _COLOURS}

    def _leave_single(self) -> None:
        """Leave out a level or colour that the file states once for several spectra."""
        for (which, name), (value, line) in list(self._stated.items()):
            if which is None and value is not None and (name in _COLOURS or name in _AMOUNTS):
                self._stated[which, name] = (None, line)
                self._contents.complain(
                    Problem(
                        "",
                        Said(
                            "This is stated once for {n} spectra; it is left out.",
                            n=str(self.several),
                        ),
                        line,
                    )
                )


def _name(stated: Mapping[str, Any]) -> str:
    return " ".join(str(stated.get("name", "")).split())[:LONGEST_NAME]


def _several(label: str, numbers: Sequence[str]) -> Problem:
    return Problem(
        "",
        Said(
            "“{label}” has several values ({values}); it is left out.",
            label=label[:_SHOWN],
            values=", ".join(numbers)[:_SHOWN],
        ),
    )


def _unreadable(label: str, text: str) -> Problem:
    return Problem(
        "",
        Said(
            "“{label}” cannot be “{text}”; it is left out.",
            label=label[:_SHOWN],
            text=text[:_SHOWN],
        ),
    )


def _grouped(text: str, mark: str) -> bool:
    first, *others = text.lstrip("+-").split(mark)
    return (
        first.isdigit()
        and len(first) <= 3
        and first[0] != "0"
        and bool(others)
        and all(len(part) == 3 and part.isdigit() for part in others)
    )


def _compare(found: FoundSpectrum, stated: Mapping[str, Any]) -> None:
    """Say where the colour that the file states is not that of its spectrum."""
    curve = checked_spectrum(found.wavelengths, found.values, "")
    xy = xyz_to_xy(tristimulus(curve))
    told: Floats | None = None
    if {"x", "y"} <= stated.keys():
        told = np.array([stated["x"], stated["y"]])
    elif {"u_prime", "v_prime"} <= stated.keys():
        told = uv_prime_to_xy(np.array([stated["u_prime"], stated["v_prime"]]))
    if told is not None and is_real(told) and _apart(told, xy):
        found.notes.append(
            Said(
                "The file says x {x:.4f} y {y:.4f}, its spectrum is x {own_x:.4f} y {own_y:.4f}: "
                "that is more than a meter's scatter. The spectrum is used, as gels and metrics "
                "are computed on it.",
                x=told[0], y=told[1], own_x=xy[0], own_y=xy[1],
            )
        )  # fmt: skip
        return
    cct, duv = xy_to_cct(xy)
    if "cct_K" not in stated and "duv" not in stated:
        return
    kelvin, tint = stated.get("cct_K", cct), stated.get("duv", duv)
    if not np.isfinite([kelvin, tint]).all() or abs(tint) > LARGEST_DUV:
        return
    if _apart(cct_to_xy(kelvin, tint), xy):
        found.notes.append(
            Said(
                "The file says {kelvin:.0f} K, Duv {tint:+.4f}, its spectrum is {cct:.0f} K, "
                "Duv {duv:+.4f}: that is more than a meter's scatter. The spectrum is used, as "
                "gels and metrics are computed on it.",
                kelvin=kelvin, tint=tint, cct=cct, duv=duv,
            )
        )  # fmt: skip


def _apart(one: Floats, other: Floats) -> bool:
    return bool(np.hypot(*(one - other)) > _BEYOND * _SCATTER)
