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
from evenkelvin.interchange.readings import take_stated
from evenkelvin.interchange.safe_xml import Node
from evenkelvin.interchange.stated import Statement, elements, state_readings, state_spectra
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
    colour specification that it refers to. What an object's tags, comments and other elements say
    is stated of its light, and so is a chromaticity beside its spectrum.
    """
    contents = Contents("CxF3 (ISO 17972)", choices=choices)
    specifications = {
        node.attributes.get("Id", ""): node for node in root.all("ColorSpecification")
    }
    about = root.first("FileInformation")
    common = list(elements(about, {"CreationDate"})) if about else []
    lights: list[tuple[FoundSpectrum, list[Statement]]] = []
    alone: list[tuple[int, list[Statement]]] = []
    for thing in root.all("Object"):
        named = thing.attributes.get("Name", "")
        name = named or thing.attributes.get("Id", "")
        said = [
            Statement("Name", named, thing.line, "name"),
            Statement("CreationDate", thing.text_of("CreationDate"), thing.line, "moment"),
            *elements(thing, {"CreationDate", "ColorValues", "DeviceColorValues"}),
        ]
        spectra: list[FoundSpectrum] = []
        colours: list[tuple[int, list[Statement]]] = []
        for values in thing.all("ColorValues"):
            for node in values.children:
                if node.name in _KINDS:
                    specification = specifications.get(
                        node.attributes.get("ColorSpecification", "")
                    )
                    found = _read_spectrum(node, specification, name, contents, choices)
                    spectra += [found] if found else []
                elif node.name in ("ColorEmissiveCIExyY", "ColorEmissiveCIEXYZ"):
                    colour = _chromaticity(node, name, contents)
                    colours += [(node.line, colour)] if colour else []
        # A colour beside a spectrum is that of the spectrum.
        beside = [each for _, colour in colours[:1] for each in colour] if spectra else []
        lights += [(each, said + beside) for each in spectra if each.kind == "light"]
        if not spectra:
            alone += [
                (line, [Statement("Name", name, line, "name"), *said[1:], *colour])
                for line, colour in colours
            ]
    state_spectra(common, lights, contents)
    stated = state_readings(common, [some for _, some in alone], contents)
    for (line, _), one in zip(alone, stated, strict=True):
        take_stated(one, line, contents)
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
) -> FoundSpectrum | None:
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
        return None
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
    return found if contents.take(found, damaged) else None


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
                "The {name} does not say at which wavelength it begins; it needs a StartWL.",
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


def _chromaticity(node: Node, name: str, contents: Contents) -> list[Statement]:
    """Return x and y as they are stated; nothing, and a complaint, where they cannot be."""
    try:
        if node.name == "ColorEmissiveCIExyY":
            x, y = (parse_number(node.text_of(part), part) for part in ("x", "y"))
        else:
            big = [parse_number(node.text_of(part), part) for part in ("X", "Y", "Z")]
            total = sum(big)
            if total <= 0:
                raise Problem("X", Said("X, Y and Z add up to nothing."))
            x, y = big[0] / total, big[1] / total
    except Problem as problem:
        contents.complain(
            Problem(
                problem.field,
                Said("{name}: {message}", name=name, message=problem.message),
                node.line,
            )
        )
        return []
    return [Statement("x", repr(x), node.line, "x"), Statement("y", repr(y), node.line, "y")]
