"""Spectra that count photons, brought to power.

A photon has the energy hc/λ, so power per nm is in proportion to photons per nm divided by λ.
"""

from __future__ import annotations

from collections.abc import Iterable

from evenkelvin.interchange.contents import CHOICES, Contents, FoundSpectrum, Question
from evenkelvin.interchange.headings import is_micromoles, photons_told
from evenkelvin.said import Said

#: Power in W of one micromole of photons a second, times its wavelength in nm: N_A·h·c (SI, 2019).
_W_NM = 6.02214076e23 * 6.62607015e-34 * 299_792_458.0 * 1e9 * 1e-6


def to_power(found: FoundSpectrum, contents: Contents, words: Iterable[str]) -> None:
    """Divide the values of a light by λ where they count photons, and say so.

    Parameters
    ----------
    found
        Its values are changed in place, and its unit.
    contents
        Has what the person decided; where the file is not clear, the question goes there.
    words
        What the file says about the values, beside the unit.
    """
    if found.kind != "light":
        return
    told = photons_told(found.unit, words)
    chosen = contents.choices.get("counted")
    if told is None or chosen:
        taken = chosen or "photons"
        contents.ask(
            Question(
                "counted",
                Said(
                    "The file speaks of photons, but its unit does not settle it. "
                    "Are its values power or numbers of photons?"
                ),
                CHOICES["counted"],
                taken,
            )
        )
        if taken == "power":
            return
    elif not told:
        return
    # A damaged wavelength of 0 is refused later, with its line.
    factor = _W_NM if is_micromoles(found.unit) else 1.0
    found.values = [
        value * factor / nm if nm else value
        for nm, value in zip(found.wavelengths, found.values, strict=True)
    ]
    found.unit = "W/m²/nm" if factor != 1.0 else ""
    found.notes.append(
        Said("The values count photons; each is divided by its wavelength to give power.")
    )
