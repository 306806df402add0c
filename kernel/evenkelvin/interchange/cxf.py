"""CxF3, Color Exchange Format (ISO 17972-1): XML."""

from __future__ import annotations

from collections.abc import Mapping

from evenkelvin.fields import parse_number
from evenkelvin.interchange.contents import (
    CHOICES,
    Contents,
    FoundSpectrum,
    Question,
    to_fraction,
)
from evenkelvin.interchange.safe_xml import Node
from evenkelvin.problem import Problem
from evenkelvin.said import Said

_KINDS = {
    "EmissiveSpectrum": "light",
    "TransmittanceSpectrum": "transmittance",
    "ReflectanceSpectrum": "reflectance",
    "CustomSpectrum": "",
}
#: ISO 17972-1: EmissiveSpectrum is spectral radiance.
_EMISSIVE_UNIT = "W/m²/sr/nm"


def is_cxf(root: Node) -> bool:
    """Tell whether an XML document is of this format."""
    return root.name == "CxF"


def read_cxf(root: Node, choices: Mapping[str, str]) -> Contents:
    """Return the spectra of a CxF3 document, and the emissive chromaticities beside them.

    Where the samples begin and how far they are apart is an attribute of the spectrum or of the
    colour specification that it refers to.
    """
    contents = Contents("CxF3 (ISO 17972)", choices=choices)
    specifications = {
        node.attributes.get("Id", ""): node for node in root.all("ColorSpecification")
    }
    for thing in root.all("Object"):
        name = thing.attributes.get("Name", "") or thing.attributes.get("Id", "")
        for values in thing.all("ColorValues"):
            for node in values.children:
                if node.name in _KINDS:
                    specification = specifications.get(
                        node.attributes.get("ColorSpecification", "")
                    )
                    _read_spectrum(node, specification, name, contents, choices)
                elif node.name in ("ColorEmissiveCIExyY", "ColorEmissiveCIEXYZ"):
                    _read_chromaticity(node, name, contents)
    if not contents.spectra and not contents.readings and not contents.problems:
        contents.complain(
            Problem(
                "", Said("The CxF file holds no spectrum and no emissive chromaticity."), root.line
            )
        )
    return contents


def _read_spectrum(
    node: Node,
    specification: Node | None,
    name: str,
    contents: Contents,
    choices: Mapping[str, str],
) -> None:
    kind = _KINDS[node.name]
    if not kind:
        stated = specification.text_of("MeasurementType").lower() if specification else ""
        kind = next((k for k in ("transmittance", "reflectance") if k in stated), "light")
    found = FoundSpectrum(name, [], [], kind, line=node.line)
    if node.name == "EmissiveSpectrum":
        found.unit = _EMISSIVE_UNIT
    damaged = 0
    try:
        if node.name == "CustomSpectrum":
            samples: list[tuple[object, str, int]] = [
                (point.attributes.get("WL", ""), point.text, point.line)
                for point in node.all("SpectralPoint")
            ]
        else:
            samples = _listed(node, specification, contents, choices)
    except Problem as problem:
        contents.complain(problem)
        return
    for wavelength, value, line in samples:
        try:
            number = parse_number(wavelength, "WL", Said("the wavelength"))
            found.values.append(
                parse_number(value, node.name, Said("The value at {number:g} nm", number=number))
            )
            found.wavelengths.append(number)
        except Problem as problem:
            damaged += 1
            contents.complain(
                Problem(
                    problem.field, Said("{message} It is left out.", message=problem.message), line
                )
            )
    to_fraction(found, contents, False, choices.get("values", ""))
    contents.take(found, damaged)


def _listed(
    node: Node, specification: Node | None, contents: Contents, choices: Mapping[str, str]
) -> list[tuple[object, str, int]]:
    """Return wavelength, value and line of a spectrum that is a list of values."""
    reach = specification.first("WavelengthRange") if specification else None
    stated = reach.attributes if reach else {}
    values = node.text.split()
    begin = node.attributes.get("StartWL") or stated.get("StartWL") or ""
    step = node.attributes.get("Increment") or stated.get("Increment") or ""
    if not begin:
        raise Problem(
            "StartWL",
            Said(
                "The {name} does not say at which wavelength it begins; expected is a StartWL.",
                name=node.name,
            ),
            node.line,
        )
    first = parse_number(begin, "StartWL")
    if not step:
        step = choices.get("step") or _likely_step(first, len(values))
        contents.ask(
            Question(
                "step",
                Said(
                    "The file does not say how many nm its {count} samples are apart.",
                    count=len(values),
                ),
                CHOICES["step"],
                step,
            )
        )
    apart = parse_number(step, "Increment")
    return [(first + apart * place, value, node.line) for place, value in enumerate(values)]


def _likely_step(first: float, samples: int) -> str:
    """Return the step that ends the samples nearest to 730 nm."""
    steps = CHOICES["step"]
    return min(steps, key=lambda step: abs(first + float(step) * (samples - 1) - 730.0))


def _read_chromaticity(node: Node, name: str, contents: Contents) -> None:
    try:
        if node.name == "ColorEmissiveCIExyY":
            x, y = (parse_number(node.text_of(part), part) for part in ("x", "y"))
        else:
            big = [parse_number(node.text_of(part), part) for part in ("X", "Y", "Z")]
            total = sum(big)
            if total <= 0:
                raise Problem("X", Said("X, Y and Z add up to nothing."))
            x, y = big[0] / total, big[1] / total
        contents.take_reading({"name": name, "x": x, "y": y, "line": node.line})
    except Problem as problem:
        contents.complain(
            Problem(
                problem.field,
                Said("{name}: {message}", name=name, message=problem.message),
                node.line,
            )
        )
