"""What a file from a meter holds: spectra, or failing these readings.

``{"ask": "import", "text": … | "bytes_base64": …, "file_name"?: …, "choices"?: {…}}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.colorimetry.spectrum import checked_spectrum
from evenkelvin.fields import Fields
from evenkelvin.filters.learned import gel_from_transmittance
from evenkelvin.interchange.cameras import find_cameras
from evenkelvin.interchange.contents import FoundSpectrum
from evenkelvin.problem import Problem
from evenkelvin.replies.gel import learned_plain
from evenkelvin.replies.reading import described
from evenkelvin.requests.file import FILE, name_spectra, read_choices, read_contents, stem_of
from evenkelvin.requests.reading import read_reading
from evenkelvin.requests.sensitivities import read_camera_eyes
from evenkelvin.shapes import Group

FIELDS: Group = {**FILE}
_LEVELS = ("illuminance_lx", "illuminance_fc", "exposure_lx_s")


def reply(fields: Fields) -> dict[str, Any]:
    """Answer ``import``: what the bytes of one file, or a pasted text, hold.

    A file that cannot be read at all is an answer with its problems, so that the others of a
    batch are still taken.

    Each of ``spectra`` and ``readings`` is ready for use: ``white`` is what "describe" answers of
    a light, ``gel`` what "learn_gel" answers of a transmittance, ``problem`` why it can be neither;
    each null where it does not apply.

    ``stated`` is what the file says beside, as far as it does: ``title``, the level, ``date``,
    ``time``, ``zone``, ``place``, ``position`` and ``integration_s``. Where it states a colour that
    is not that of its spectrum, the notes say so.

    ``cameras`` are what cameras see: {"name", "wavelengths_nm", "red", "green", "blue"} as a
    question takes it, and a ``problem``, null or why it cannot be one. Three columns that are
    headed as red, green and blue may be a camera's or three lights: the question ``columns`` asks,
    and they are taken for lights unless the file speaks of sensitivity. With the choice "camera"
    any three of a file are a camera's, the longest wavelengths being red. What is a camera's is not
    among the ``spectra``.
    """
    fields.refuse_unknown("ask", *FIELDS)
    name = fields.text("file_name", "", longest=400)
    choices = read_choices(fields)
    contents = read_contents(fields, choices)
    cameras = find_cameras(contents, stem_of(name), choices.get("columns", ""))
    name_spectra(contents, name)
    answer: dict[str, Any] = {
        "format": contents.format,
        "spectra": [_finished(found) for found in contents.spectra],
        "cameras": [_checked(camera) for camera in cameras],
        "questions": [question.as_dict() for question in contents.questions],
        "problems": [{"file": name, **problem.as_dict()} for problem in contents.problems],
    }
    if contents.readings:
        answer["readings"] = [{**reading, **_told(reading)} for reading in contents.readings]
    return answer


def _checked(camera: dict[str, Any]) -> dict[str, Any]:
    try:
        read_camera_eyes(Fields(camera))
    except Problem as problem:
        return {**camera, "problem": problem.as_dict()}
    return {**camera, "problem": None}


def _finished(found: FoundSpectrum) -> dict[str, Any]:
    plain = found.as_dict()
    if found.kind == "light":
        spectrum = {"wavelengths_nm": found.wavelengths, "values": found.values}
        level = {name: found.stated[name] for name in _LEVELS if name in found.stated}
        return {**plain, "gel": None, **_told({"spectrum": spectrum, **level})}
    told: dict[str, Any] = {"gel": None, "white": None, "problem": None}
    if found.kind == "transmittance":
        try:
            curve = checked_spectrum(found.wavelengths, found.values, "")
            learned = gel_from_transmittance(found.name, curve)
        except Problem as problem:
            told["problem"] = problem.as_dict()
        else:
            learned.warnings.extend(found.notes)
            told["gel"] = learned_plain(learned, None)
    return {**plain, **told}


def _told(reading: dict[str, Any]) -> dict[str, Any]:
    """Return what a light of a file says, or why it cannot be used."""
    # What a light reads does not hang on the gel before it, and only the kit knows that gel.
    beside = ("name", "line", "pack", "stated")
    known = {name: value for name, value in reading.items() if name not in beside}
    try:
        return {"white": described(read_reading(Fields(known), ())), "problem": None}
    except Problem as problem:
        return {"white": None, "problem": problem.as_dict()}
