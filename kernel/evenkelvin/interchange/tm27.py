"""IES TM-27-14, 'IES Standard Format for the Electronic Transfer of Spectral Data': XML."""

from __future__ import annotations

import re
from collections.abc import Mapping

from evenkelvin.fields import parse_number
from evenkelvin.interchange.contents import (
    CHOICES,
    WAVELENGTH_DECIMALS,
    Contents,
    FoundSpectrum,
    Question,
    to_fraction,
)
from evenkelvin.interchange.headings import kind_of
from evenkelvin.interchange.photons import to_power
from evenkelvin.interchange.safe_xml import Node
from evenkelvin.interchange.stated import Statement, elements, state_spectra
from evenkelvin.problem import Problem
from evenkelvin.said import Said

# What the standard's spectral quantities are here, and the unit each is in (TM-27-14, 4.2).
_QUANTITIES = {
    "flux": ("light", "W/nm"),
    "intensity": ("light", "W/sr/nm"),
    "irradiance": ("light", "W/m²/nm"),
    "radiance": ("light", "W/m²/sr/nm"),
    "exitance": ("light", "W/m²/nm"),
    "relative": ("light", ""),
    "other": ("light", ""),
    "transmittance": ("transmittance", ""),
    "t-factor": ("transmittance", ""),
    "reflectance": ("reflectance", ""),
    "r-factor": ("reflectance", ""),
}
#: The namespace that the standard gives its elements.
NAMESPACE = "http://www.ies.org/iestm2714"
#: Elements of the standard that name the document or the spectrum, and none of its figures.
_OWN = frozenset({"Description", "UniqueIdentifier", "SpectralQuantity"})
# Characters that XML 1.0 cannot hold, even escaped.
_FORBIDDEN = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def is_tm27(root: Node) -> bool:
    """Tell whether an XML document is of this format, whatever its edition."""
    return root.name.upper().startswith("IESTM27")


def read_tm27(root: Node, choices: Mapping[str, str]) -> Contents:
    """Return the spectra of a TM-27 document.

    Each ``SpectralDistribution`` is one spectrum, named by the description in the header. What
    elements of the header and of the distribution, and their comments, say beside is stated of it.
    """
    contents = Contents("IES TM-27-14", choices=choices)
    header = root.first("Header") or root
    name = header.text_of("Description") or header.text_of("UniqueIdentifier")
    distributions = list(root.all("SpectralDistribution"))
    if not distributions:
        contents.complain(
            Problem(
                "",
                Said("The TM-27 file has no SpectralDistribution, so no spectrum in it."),
                root.line,
            )
        )
    common = list(elements(header, _OWN)) if header is not root else []
    common += elements(root, {*_OWN, "Header", "SpectralDistribution"})
    lights: list[tuple[FoundSpectrum, list[Statement]]] = []
    described = bool(header.text_of("Description"))
    for number, node in enumerate(distributions, 1):
        several = len(distributions) > 1
        called = f"{name} {number}".strip() if several else name
        found = _read_one(node, called, contents, choices)
        if found is not None and found.kind == "light":
            own = list(elements(node, {*_OWN, "SpectralData"}))
            if described:
                own.append(Statement("Description", found.name, node.line, "name"))
            lights.append((found, own))
    state_spectra(common, lights, contents)
    return contents


def _read_one(
    node: Node, name: str, contents: Contents, choices: Mapping[str, str]
) -> FoundSpectrum | None:
    quantity = node.text_of("SpectralQuantity")
    kind, unit = _QUANTITIES.get(quantity.lower(), ("", ""))
    if quantity.lower() == "absorptance":
        contents.complain(
            Problem(
                "SpectralQuantity", Said("Absorptance is not a light, gel or surface."), node.line
            )
        )
        return None
    if not kind and "quantity" not in choices:
        kind = kind_of(quantity)
    if not kind:
        kind = choices.get("quantity", "light")
        contents.ask(
            Question(
                "quantity",
                Said(
                    "The file calls its quantity “{quantity}”. What was measured?",
                    quantity=quantity[:40],
                ),
                CHOICES["quantity"],
                kind,
            )
        )
    found = FoundSpectrum(name, [], [], kind, unit, line=node.line)
    damaged = 0
    for sample in node.all("SpectralData"):
        try:
            wavelength = parse_number(
                sample.attributes.get("wavelength", ""), "wavelength", Said("the wavelength")
            )
            value = parse_number(
                sample.text,
                "SpectralData",
                Said("the value at {wavelength:g} nm", wavelength=wavelength),
            )
        except Problem as problem:
            damaged += 1
            contents.complain(
                Problem(
                    problem.field,
                    Said("{message} It is left out.", message=problem.message),
                    sample.line,
                )
            )
        else:
            found.wavelengths.append(wavelength)
            found.values.append(value)
    to_power(found, contents, (quantity,))
    to_fraction(found, contents, False, choices.get("values", ""))
    return found if contents.take(found, damaged) else None


def write_tm27(found: FoundSpectrum, created: str = "") -> str:
    """Return a TM-27-14 document of one spectrum.

    The quantity is the standard's word for the spectrum's unit; 'relative' where there is none.
    Wavelengths are written to 0.0001 nm. The standard asks for the time of writing, ``created``
    (XML dateTime); the kernel has no clock, so without it the element is left out.
    """
    quantity = found.kind
    if found.kind == "light":
        quantity = next(
            (word for word, (_, unit) in _QUANTITIES.items() if unit and unit == found.unit),
            "relative",
        )
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<IESTM2714 xmlns="{NAMESPACE}" version="1.0">',
        "  <Header>",
        f"    <Description>{_text(found.name)}</Description>",
        "    <DocumentCreator>Evenkelvin</DocumentCreator>",
        *([f"    <DocumentCreationDate>{created}</DocumentCreationDate>"] if created else []),
        *(f"    <Comments>{_text(note)}</Comments>" for note in [" ".join(found.notes)] if note),
        "  </Header>",
        "  <SpectralDistribution>",
        f"    <SpectralQuantity>{quantity}</SpectralQuantity>",
        *(
            f'    <SpectralData wavelength="{round(nm, WAVELENGTH_DECIMALS)!r}">{value!r}'
            "</SpectralData>"
            for nm, value in zip(found.wavelengths, found.values, strict=True)
        ),
        "  </SpectralDistribution>",
        "</IESTM2714>",
    ]
    return "\n".join(lines) + "\n"


def _text(raw: str) -> str:
    safe = _FORBIDDEN.sub(" ", raw)
    return safe.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
