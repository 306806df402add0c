"""Gels from a file of transmittances.

``{"ask": "import_gel", "bytes_base64" | "text": "…", "file_name"?, "name"?, "choices"?: {…}}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.colorimetry.spectrum import checked_spectrum
from evenkelvin.fields import Fields
from evenkelvin.filters.learned import gel_from_transmittance
from evenkelvin.interchange.headings import kind_of
from evenkelvin.problem import Problem
from evenkelvin.replies.gel import learned_plain
from evenkelvin.requests.file import FILE, name_spectra, read_choices, read_contents
from evenkelvin.requests.kit import GEL, read_gel_name
from evenkelvin.said import Said
from evenkelvin.shapes import Group

FIELDS: Group = {**FILE, "name": GEL}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with every gel of the file, each as ``learn_gel`` answers, and what was wrong.

    ``name`` replaces the name in the file where it holds one gel only.
    """
    fields.refuse_unknown("ask", *FIELDS)
    file = fields.text("file_name", "", longest=400)
    choices = read_choices(fields)
    if choices.get("quantity", "transmittance") != "transmittance":
        raise Problem("choices.quantity", Said("A gel is read from a transmittance, nothing else."))
    as_is = read_contents(fields, choices)
    lights = {found.line for found in as_is.spectra if found.kind == kind_of(found.unit) == "light"}
    contents = read_contents(fields, {**choices, "quantity": "transmittance"})
    name_spectra(contents, file)
    if fields.given("name") and len(contents.spectra) == 1:
        contents.spectra[0].name = read_gel_name(fields)
    gels = []
    for found in contents.spectra:
        try:
            if found.line in lights:
                raise Problem(
                    "values",
                    Said(
                        "{name} is a light by its unit, not a transmittance. To learn a gel "
                        "from two "
                        "lights, load them as the bare and the gelled reading.",
                        name=found.name,
                    ),
                )
            spectrum = checked_spectrum(found.wavelengths, found.values, "")
            learned = gel_from_transmittance(found.name, spectrum)
        except Problem as problem:
            contents.complain(Problem(problem.field.strip("."), problem.message, found.line))
        else:
            learned.warnings.extend(found.notes)
            gels.append(learned_plain(learned, None))
    return {
        "format": contents.format,
        "gels": gels,
        "questions": [q.as_dict() for q in contents.questions if q.field != "quantity"],
        "problems": [{"file": file, **problem.as_dict()} for problem in contents.problems],
    }
