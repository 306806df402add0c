"""How lights show colours, as the answers of several asks hold it."""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.display import brightest
from evenkelvin.colorimetry.observer import observer_at
from evenkelvin.colorimetry.spectrum import STEP_NOISE, SUMMED_STEP, Spectrum
from evenkelvin.data import Floats
from evenkelvin.lights.reading import Reading
from evenkelvin.rendering import curves, ssi, verdict
from evenkelvin.replies.plain import number
from evenkelvin.said import Said


def warnings_of(reading: Reading, spectrum: Spectrum) -> list[str]:
    """Return the reading's warnings, and one where its samples are wider than the metrics ask."""
    nm = spectrum.wavelengths
    step = float(np.max(np.diff(nm[(nm >= 375.0) & (nm <= 785.0)])))
    if step <= SUMMED_STEP + STEP_NOISE:
        return reading.warnings
    return [
        *reading.warnings,
        Said(
            "The samples are {step:g} nm apart; the published metrics ask for 5 nm or "
            "finer. They were interpolated: take the numbers as approximate.",
            step=step,
        ),
    ]


def numbers(values: Floats) -> list[float | None]:
    """Return an array as plain numbers, None where there is none."""
    return [number(float(value)) for value in values]


def flags_plain(flags: list[verdict.Flag]) -> dict[str, Any]:
    """Return remarks as data and as sentences."""
    return {
        "flags": [
            {"weight": flag.weight, "words": flag.words, "because": flag.because} for flag in flags
        ],
        "words": [flag.words for flag in flags],
    }


def similarity_plain(name: str, found: tuple[ssi.Similarity | None, str]) -> dict[str, Any]:
    """Return an SSI with what it rests on, or why there is none."""
    similarity, why = found
    if similarity is None:
        return {"name": name, "value": None, "unrounded": None, "reference": None, "unrated": why}
    return {
        "name": name,
        "value": similarity.value,
        "unrounded": similarity.unrounded,
        "observer": ssi.OBSERVER,
        "reference": similarity.reference,
        "edition": similarity.edition,
    }


#: Where the band of wavelengths changes its colour, in nm.
_BAND: Floats = np.arange(380.0, 781.0, 10.0, dtype=np.float64)


def curves_plain(
    light: Spectrum, reference: tuple[Spectrum, str] | None, against: list[tuple[Spectrum, str]]
) -> dict[str, Any]:
    """Return a light's curve with its peaks, and beside it those of a reference and other lights.

    All are of equal luminance, and the light's own highest value is 1; null where a spectrum does
    not reach. ``band`` are the colours of the wavelengths, as near as a screen comes to them.
    """
    nm = curves.wavelengths_for([light, *(other for other, _ in against)])
    level = curves.level(light, nm)

    def drawn(spectrum: Spectrum) -> list[float | None]:
        return numbers(curves.curve(spectrum, nm, level))

    own = curves.curve(light, nm, level)
    pure = observer_at(_BAND)
    return {
        "wavelengths_nm": nm.tolist(),
        "light": numbers(own),
        "peaks": [
            {"wavelength_nm": float(nm[k]), "value": float(own[k])} for k in curves.peaks(own)
        ],
        "reference": {"name": reference[1], "values": drawn(reference[0])} if reference else None,
        "against": [{"name": name, "values": drawn(other)} for other, name in against],
        "scale": "equal luminance; the highest value of the light is 1",
        "band": {
            "wavelengths_nm": _BAND.tolist(),
            "srgb": brightest(pure, "srgb").tolist(),
            "p3": brightest(pure, "p3").tolist(),
        },
    }
