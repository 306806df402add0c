"""What a camera sees, in a file: three columns over wavelength, for red, green and blue."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

import numpy as np

from evenkelvin.interchange.contents import CHOICES, LONGEST_NAME, Contents, FoundSpectrum, Question
from evenkelvin.problem import Problem
from evenkelvin.said import Said

CHANNELS = ("red", "green", "blue")
_WORDS = {
    "red": r"r|red|rot|rouge|rojo|rosso|vermelho|röd|rød|rood",
    "green": r"g|gr|green|grün|gruen|vert|verde|grön|grøn|grønn|groen",
    "blue": r"b|blue|blau|bleu|azul|blu|blå|blauw",
}
#: Words that only what a camera sees is headed with.
_SENSITIVITY = re.compile(
    r"(spectral\s+|spektrale\s+)?(sensitiv\w*|responsiv\w*|empfindlich\w*|sensibilit\w*|"
    r"sensibilidad\w*)|spectral\s+response|quantum\s+eff\w*|(?<![^\W_])qe(?![^\W_])",
    re.IGNORECASE,
)
_SAYS = {
    channel: re.compile(rf"(?<![^\W_\d])({words})(?![^\W_\d])", re.IGNORECASE)
    for channel, words in _WORDS.items()
}


def find_cameras(contents: Contents, file_stem: str, chosen: str) -> list[dict[str, Any]]:
    """Take the cameras out of what a file held.

    Parameters
    ----------
    contents
        Of whose spectra those of cameras are taken; a question is put where it is unclear.
    file_stem
        Names a camera that the file leaves without a name.
    chosen
        "lights" or "camera", as the person decided; empty where they did not.

    Returns
    -------
    list
        ``{"name", "wavelengths_nm", "red", "green", "blue"}`` each.
    """
    found = [one for one in contents.spectra if one.kind != "reflectance"]
    threes = [found[k : k + 3] for k in range(0, len(found) - len(found) % 3, 3)]
    threes = [three for three in threes if _alike(three)]
    told = [three for three in threes if _by_name(three)]
    if not told and not chosen:
        return []
    taken = chosen or ("camera" if _speaks_of_sensitivity(told, file_stem) else "lights")
    if told:
        contents.ask(
            Question(
                "columns",
                Said(
                    "Three columns are headed as red, green and blue. Is it what a camera sees, "
                    "or three lights?"
                ),
                CHOICES["columns"],
                taken,
            )
        )
    if taken == "lights":
        return []
    if chosen == "camera" and not threes:
        contents.complain(
            Problem(
                "columns",
                Said(
                    "What a camera sees is three columns on the same wavelengths, for red, green "
                    "and blue; this file has no such columns."
                ),
            )
        )
        return []
    cameras = []
    for three in threes if chosen == "camera" else told:
        channels = _by_name(three) or _by_wavelength(three)
        contents.spectra = [one for one in contents.spectra if one not in three]
        cameras.append(
            {
                "name": _name(three) or file_stem or "camera",
                "wavelengths_nm": list(three[0].wavelengths),
                **{channel: list(channels[channel].values) for channel in CHANNELS},
            }
        )
    if not contents.spectra:
        # What was measured is answered.
        contents.questions = [one for one in contents.questions if one.field != "quantity"]
    return cameras


def _speaks_of_sensitivity(threes: Sequence[Sequence[FoundSpectrum]], file_stem: str) -> bool:
    words = [f"{one.heading} {one.name} {one.unit}" for three in threes for one in three]
    return any(_SENSITIVITY.search(word) for word in (*words, file_stem))


def _alike(three: Sequence[FoundSpectrum]) -> bool:
    return all(one.wavelengths == three[0].wavelengths for one in three)


def _by_name(three: Sequence[FoundSpectrum]) -> dict[str, FoundSpectrum] | None:
    """Return the three by the channel that their names say; None unless each says another."""
    named: dict[str, FoundSpectrum] = {}
    for one in three:
        says = [channel for channel in CHANNELS if _SAYS[channel].search(one.heading or one.name)]
        if len(says) == 1:
            named[says[0]] = one
    return named if len(named) == len(CHANNELS) else None


def _by_wavelength(three: Sequence[FoundSpectrum]) -> dict[str, FoundSpectrum]:
    def middle(one: FoundSpectrum) -> float:
        values = np.clip(one.values, 0.0, None)
        return float(np.average(one.wavelengths, weights=values / np.max(values)))

    return dict(zip(CHANNELS, sorted(three, key=middle, reverse=True), strict=True))


def _name(three: Sequence[FoundSpectrum]) -> str:
    """Return what the names of the three have in common when their channels are left out."""
    bare = set()
    for one in three:
        name = one.heading or one.name
        for says in (*_SAYS.values(), _SENSITIVITY):
            name = says.sub(" ", name)
        bare.add(" ".join(re.sub(r"[\W_]+", " ", name).split()))
    return bare.pop()[:LONGEST_NAME] if len(bare) == 1 else ""
