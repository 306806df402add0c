"""What a file from a meter holds: spectra, or failing these readings.

``{"ask": "import", "text": … | "bytes_base64": …, "file_name"?: …, "choices"?: {…}}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.requests.file import name_spectra, read_choices, read_contents


def reply(fields: Fields) -> dict[str, Any]:
    """Answer ``import``: what the bytes of one file, or a pasted text, hold.

    A file that cannot be read at all is an answer with its problems, so that the others of a
    batch are still taken.
    """
    fields.refuse_unknown("ask", "file_name", "bytes_base64", "text", "choices")
    name = fields.text("file_name", "", longest=400)
    choices = read_choices(fields)
    contents = read_contents(fields, choices)
    name_spectra(contents, name)
    answer: dict[str, Any] = {
        "format": contents.format,
        "spectra": [found.as_dict() for found in contents.spectra],
        "questions": [question.as_dict() for question in contents.questions],
        "problems": [{"file": name, **problem.as_dict()} for problem in contents.problems],
    }
    if contents.readings:
        answer["readings"] = contents.readings
    return answer
