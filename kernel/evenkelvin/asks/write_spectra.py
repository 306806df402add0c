"""Spectra as the text of files that others can read.

``{"ask": "write", "format": "tm27" | "csv", "spectrum": S | "spectra": [S…], "created"?:
"2026-11-25T19:42:10"}`` with S = ``{"name"?, "wavelengths_nm", "values", "quantity"?,
"understood"?: {"unit"?, "notes"?}}``, as ``import`` gives it
"""

from __future__ import annotations

import re
from typing import Any

from evenkelvin.colorimetry.spectrum import checked_spectrum
from evenkelvin.fields import Fields
from evenkelvin.interchange.contents import (
    KINDS,
    LONGEST_NAME,
    MAX_SPECTRA,
    WAVELENGTH_DECIMALS,
    FoundSpectrum,
)
from evenkelvin.interchange.spectra_csv import write_spectra_csv
from evenkelvin.interchange.tm27 import write_tm27
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Choice, Group, Many, Number, Text

#: What a name loses on its way to a file name on any system.
_UNFIT = re.compile(r'[\x00-\x1f<>:"/\\|?*]+')

_DATE_TIME = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?(Z|[+-]\d\d:\d\d)?", re.ASCII)

_UNDERSTOOD: Group = {"unit": Text(("W/m²/nm",)), "notes": Many(Text())}
_SPECTRUM: Group = {
    "name": Text(), "wavelengths_nm": Many(Number(380, 780)), "values": Many(Number(0, 1000)),
    "quantity": Choice(KINDS), "understood": _UNDERSTOOD, "white": Checked(), "gel": Checked(),
    "problem": Checked(), "stated": Checked(),
}  # fmt: skip
FIELDS: Group = {
    "format": Choice(("tm27", "csv")), "spectrum": _SPECTRUM, "spectra": Many(_SPECTRUM),
    "created": Text(("2026-10-27T17:04:00",)),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer ``write``: one table of all spectra, or one TM-27 document for each."""
    fields.refuse_unknown("ask", *FIELDS)
    style = fields.choice("format", ("tm27", "csv"))
    groups = fields.groups("spectra", most=MAX_SPECTRA)
    if fields.given("spectrum"):
        groups = [fields.group("spectrum"), *groups]
    if not groups:
        raise Problem("spectra", Said("There is no spectrum to write; choose at least one."))
    spectra = [_spectrum(group, number) for number, group in enumerate(groups, 1)]
    if style == "csv":
        name = spectra[0].name if len(spectra) == 1 else "spectra"
        return {"files": [_file(name, "csv", "text/csv", write_spectra_csv(spectra))]}
    created = fields.text("created", "", longest=40)
    if created and not _DATE_TIME.fullmatch(created):
        raise Problem(
            "created", Said("“created” must be a date and time, such as 2026-11-25T19:42:10.")
        )
    names: dict[str, int] = {}
    files = []
    for found in spectra:
        names[found.name] = names.get(found.name, 0) + 1
        again = f" {names[found.name]}" if names[found.name] > 1 else ""
        files.append(
            _file(found.name + again, "spdx", "application/xml", write_tm27(found, created))
        )
    return {"files": files}


def _file(name: str, ending: str, media_type: str, text: str) -> dict[str, str]:
    fit = " ".join(_UNFIT.sub(" ", name).split()).strip(".") or "spectrum"
    return {"name": f"{fit}.{ending}", "media_type": media_type, "text": text}


def _spectrum(fields: Fields, number: int) -> FoundSpectrum:
    fields.refuse_unknown(*_SPECTRUM)
    understood = fields.group("understood") if fields.given("understood") else Fields({})
    understood.refuse_unknown(*_UNDERSTOOD)
    wavelengths, values = fields.numbers("wavelengths_nm"), fields.numbers("values")
    checked_spectrum(wavelengths, values, fields.path)
    near = [
        index
        for index in range(1, len(wavelengths))
        if wavelengths[index] - wavelengths[index - 1] < 10.0**-WAVELENGTH_DECIMALS
    ]
    if near:
        raise Problem(
            f"{fields.at('wavelengths_nm')}.{near[0]}",
            Said(
                "The wavelengths at {nm:g} nm are closer than a file can hold.",
                nm=wavelengths[near[0]],
            ),
        )
    return FoundSpectrum(
        fields.text("name", f"spectrum {number}", longest=LONGEST_NAME),
        wavelengths,
        values,
        fields.choice("quantity", KINDS, "light"),
        understood.text("unit", "", longest=40),
        understood.texts("notes"),
    )
