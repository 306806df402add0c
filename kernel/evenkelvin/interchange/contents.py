"""What a file held: its spectra and readings, what was unclear, and what was wrong."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import is_real
from evenkelvin.colorimetry.spectrum import CAMERA_NEEDED, NEEDED, checked_spectrum
from evenkelvin.colorimetry.temperature import HIGHEST_K, LOWEST_K
from evenkelvin.data import Floats
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: Bounds on what is read. A day's readings stay far below; a phone must not choke on the rest.
MAX_BYTES = 4_000_000
MAX_LINES = 20_000
MAX_COLUMNS = 4_000
MAX_CELLS = 250_000
MAX_SPECTRA = 200
MAX_READINGS = 1_000
#: Complaints that are listed one by one; a file with more is wrong as a whole.
MAX_PROBLEMS = 50
#: Fewest samples in which a spectrum is looked for.
FEWEST_SAMPLES = 8
#: What is measured as a factor of 1, in a sentence.
_KINDS = {"transmittance": Said("transmittance"), "reflectance": Said("reflectance")}
#: Share of damaged samples up to which a spectrum is taken without them.
MOST_DAMAGED = 0.1
#: Shortest and longest wavelength that a file may hold, in nm; others are no wavelengths.
SHORTEST_NM, LONGEST_NM = 150.0, 20_000.0
#: Decimals of a wavelength in nm that are kept: finer ones are floating-point noise.
WAVELENGTH_DECIMALS = 4
#: Longest name of a spectrum, in characters.
LONGEST_NAME = 80

#: Which comes first in a date where both could: 05/06/2026.
DATE_ORDERS = ("day_first", "month_first")
KINDS = ("light", "transmittance", "reflectance")
#: What the person can decide where a file leaves it open.
CHOICES: dict[str, tuple[str, ...]] = {
    "delimiter": ("tab", "semicolon", "comma", "bar", "space"),
    "decimal": ("point", "comma"),
    "layout": ("down", "across"),
    "wavelength_unit": ("nm", "angstrom", "micrometre"),
    "quantity": KINDS,
    "values": ("fraction", "percent"),
    "step": ("1", "2", "5", "10", "20"),
    "repeated": ("first", "last", "mean"),
    "counted": ("power", "photons"),
    "columns": ("lights", "camera"),
    "date": DATE_ORDERS,
    "grouped": ("apart", "together"),
}
#: What each choice is worth: the factor from the unit of a wavelength to nm.
TO_NM = {"nm": 1.0, "angstrom": 0.1, "micrometre": 1000.0}


@dataclass
class FoundSpectrum:
    """One spectrum of a file, its wavelengths rising, in nm.

    Transmittance and reflectance are factors of 1 (not percent); a light is in ``unit``, empty
    where it is relative or not stated. ``line`` is where it begins in the file, ``heading`` what
    stands above its ``column`` (None where it runs across). ``stated`` is what the file says of it
    beside: ``title``, ``illuminance_lx`` | ``illuminance_fc``, ``exposure_lx_s``, ``date``,
    ``time``, ``zone``, ``place``, ``position`` and ``integration_s``.
    """

    name: str
    wavelengths: list[float]
    values: list[float]
    kind: str = "light"
    unit: str = ""
    notes: list[str] = field(default_factory=list)
    line: int | None = None
    heading: str = ""
    column: int | None = None
    stated: dict[str, Any] = field(default_factory=dict)

    def as_dict(self) -> dict[str, object]:
        """Return the plain form that the desk answers with."""
        return {
            "name": self.name,
            "wavelengths_nm": self.wavelengths,
            "values": self.values,
            "quantity": self.kind,
            "understood": {"unit": self.unit, "notes": self.notes},
            "stated": self.stated,
        }


@dataclass
class Question:
    """What a file leaves open, the options, and the one that was taken."""

    field: str
    message: str
    options: Sequence[str]
    taken: str

    def as_dict(self) -> dict[str, object]:
        """Return the plain form that the desk answers with."""
        return {
            "field": self.field,
            "message": self.message,
            "options": list(self.options),
            "taken": self.taken,
        }


@dataclass
class Contents:
    """All that was understood of one file, with what the person decided about it."""

    format: str
    spectra: list[FoundSpectrum] = field(default_factory=list)
    readings: list[dict[str, object]] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    choices: Mapping[str, str] = field(default_factory=dict)

    def complain(self, problem: Problem) -> None:
        """Note what is wrong, up to :data:`MAX_PROBLEMS`."""
        if len(self.problems) < MAX_PROBLEMS:
            self.problems.append(problem)
        elif len(self.problems) == MAX_PROBLEMS:
            self.problems.append(
                Problem("", Said("There are more faults like these; only the first are listed."))
            )

    def ask(self, question: Question) -> None:
        """Note a question once."""
        if all(known.field != question.field for known in self.questions):
            self.questions.append(question)

    def take_reading(self, reading: dict[str, object]) -> None:
        """Keep a reading after checking that it can be one.

        It has a ``name`` (may be empty), a ``line``, either ``x`` and ``y`` or ``cct_K`` and
        perhaps ``duv``, and perhaps ``illuminance_lx``, ``exposure_lx_s``, ``lamp``, ``pack`` and
        ``stated`` (as :class:`FoundSpectrum` has it).

        Raises
        ------
        Problem
            When x and y are no light, or the CCT is none, or there are too many readings.
        """
        if len(self.readings) >= MAX_READINGS:
            raise Problem(
                "",
                Said(
                    "At most {max_readings} readings are read from one file.",
                    max_readings=MAX_READINGS,
                ),
            )
        if "x" in reading:
            xy = np.array([reading["x"], reading["y"]], dtype=float)
            if not (np.all((xy >= 0.0) & (xy <= 1.0)) and is_real(xy)):
                raise Problem(
                    "x",
                    Said(
                        "x {xy:g}, y {xy_2:g} is not a colour that a light can have.",
                        xy=xy[0],
                        xy_2=xy[1],
                    ),
                )
        elif not LOWEST_K <= float(str(reading["cct_K"])) <= HIGHEST_K:
            raise Problem(
                "cct_K",
                Said(
                    "{cct_k:g} K is not a colour temperature that a light can have.",
                    cct_k=float(str(reading["cct_K"])),
                ),
            )
        reading["name"] = " ".join(str(reading["name"]).split())[:LONGEST_NAME]
        self.readings.append(reading)

    def take(self, found: FoundSpectrum, damaged: int = 0) -> bool:
        """Keep a spectrum after settling its samples, or say why it cannot be kept.

        Returns
        -------
        bool
            Whether it was kept.
        """
        if len(self.spectra) >= MAX_SPECTRA:
            self.complain(
                Problem(
                    "",
                    Said(
                        "At most {max_spectra} spectra are read from one file.",
                        max_spectra=MAX_SPECTRA,
                    ),
                    found.line,
                )
            )
            return False
        try:
            if damaged > MOST_DAMAGED * (damaged + len(found.values)):
                raise Problem(
                    "values",
                    Said(
                        "{damaged} of its {damaged_2} samples are damaged, too many to do without.",
                        damaged=damaged,
                        damaged_2=damaged + len(found.values),
                    ),
                )
            settle(found, self)
        except Problem as problem:
            message = problem.message
            if found.name:
                message = Said("{name}: {message}", name=found.name, message=message)
            field = problem.field.strip(".")
            line = problem.line or found.line
            self.complain(Problem(field, message, line))
            return False
        self.spectra.append(found)
        return True


def settle(found: FoundSpectrum, contents: Contents) -> None:
    """Bring samples into order: rounded, rising, one for each wavelength; and check them.

    Which of two values for one wavelength holds is asked in ``contents``.

    Raises
    ------
    Problem
        When the samples cannot be the spectrum of a light, or of a gel or surface.
    """
    found.name = " ".join(found.name.split())[:LONGEST_NAME]
    stated = np.asarray(found.wavelengths, dtype=float)
    if np.any(np.abs(stated) > LONGEST_NM):
        raise Problem(
            "wavelengths_nm",
            Said(
                "{stated:g} nm is not a wavelength of light.",
                stated=stated[np.argmax(np.abs(stated))],
            ),
        )
    nm = np.round(stated, WAVELENGTH_DECIMALS)
    values = np.asarray(found.values, dtype=float)
    steps = np.diff(nm)
    if np.any(steps < 0):
        fell = bool(np.all(steps <= 0))
        # Stable: which of two values for one wavelength came first is still known.
        order = np.argsort(nm, kind="stable")
        nm, values = nm[order], values[order]
        found.notes.append(
            Said("The wavelengths ran from long to short; they are turned round.")
            if fell
            else Said("The wavelengths were out of order; they are sorted.")
        )
    nm, values = _single(nm, values, found, contents)
    found.wavelengths, found.values = nm.tolist(), values.tolist()
    camera = contents.choices.get("columns") == "camera"
    checked_spectrum(found.wavelengths, found.values, "", CAMERA_NEEDED if camera else NEEDED)
    if found.kind == "transmittance" and np.max(values) > 1.0:
        where = int(np.argmax(values))
        raise Problem(
            "values",
            Said(
                "The transmittance at {nm:g} nm is {values:g}; a gel cannot add light. Are the "
                "values in percent?",
                nm=nm[where],
                values=values[where],
            ),
        )


def _single(
    nm: Floats, values: Floats, found: FoundSpectrum, contents: Contents
) -> tuple[Floats, Floats]:
    """Return rising samples with one for each wavelength; of different values one is chosen."""
    single, place, counts = np.unique(nm, return_inverse=True, return_counts=True)
    if len(single) == len(nm):
        return nm, values
    # Scaled, so that the sum of huge values stays finite.
    mean: Floats = np.bincount(place, weights=values / counts[place]).astype(np.float64)
    repeated = int(np.sum(counts > 1))
    if not np.any(np.abs(values - mean[place]) > 1e-9 * np.max(np.abs(values))):
        found.notes.append(Said("{repeated} wavelengths were repeated.", repeated=repeated))
        return single, mean
    taken = contents.choices.get("repeated", "first")
    first = nm[np.flatnonzero(counts[place] > 1)[0]]
    question = Said(
        "{repeated} wavelengths, such as {first:g} nm, have several values. Which holds?",
        repeated=repeated,
        first=first,
    )
    if found.name:
        question = Said("{name}: {question}", name=found.name, question=question)
    contents.ask(Question("repeated", question, CHOICES["repeated"], taken))
    if taken == "mean":
        return single, mean
    # Of the samples of one wavelength the last that is put in stays.
    order = slice(None, None, -1) if taken == "first" else slice(None)
    chosen = np.empty(len(single))
    chosen[place[order]] = values[order]
    return single, chosen


def to_fraction(
    found: FoundSpectrum, contents: Contents, percent: bool | None, chosen: str
) -> None:
    """Bring a transmittance or reflectance to factors of 1.

    Parameters
    ----------
    found
        Its values are divided by 100 in place where they are percent.
    contents
        Where the question goes, when the file does not say.
    percent
        What the file says; None where it says nothing.
    chosen
        ``"fraction"``, ``"percent"``, or empty where the person has not decided.
    """
    if found.kind == "light" or not found.values:
        return
    peak = max(found.values)
    taken = chosen or ("percent" if percent or (percent is None and peak > 1.5) else "fraction")
    if (percent is None and peak > 1.0) or (percent and peak <= 1.0):
        contents.ask(
            Question(
                "values",
                Said(
                    "The {kind} of {name} reaches {peak:g}. Are its values factors (at most 1) or "
                    "percent?",
                    kind=_KINDS[found.kind],
                    name=found.name or Said("the spectrum"),
                    peak=peak,
                ),
                CHOICES["values"],
                taken,
            )
        )
    if taken == "percent":
        found.values = [value / 100.0 for value in found.values]
