"""Words that head a column: wavelength, its unit, and what was measured, in many languages."""

from __future__ import annotations

import re
from collections.abc import Iterable

from evenkelvin.interchange.contents import KINDS
from evenkelvin.interchange.csv_text import as_typed

_WAVELENGTH = re.compile(
    r"wave\s*-?len|lambda|λ|wellenl|longueurs?\s+d.onde|longitud(es)?\s+de\s+onda|"
    r"lunghezz[ae]\s+d.onda|comprimentos?\s+de\s+onda|golflengte|våglängd|bølgel|aallonpit|"
    r"długość\s+fali|vlnov|dalga\s*boyu|длина\s+волны|波長|波长|파장|^\W*wl\b|"
    r"^\W*(nm|[åÅ]|[µμ]m|um)\W*$",
    re.IGNORECASE,
)
_UNITS = (
    ("nm", re.compile(r"(?<![^\W_])nm(?![^\W_])|nanom", re.IGNORECASE)),
    ("micrometre", re.compile(r"[µμ]m(?![^\W_])|\bum\b|micron|mi[ck]rom", re.IGNORECASE)),
    ("angstrom", re.compile(r"[ÅÅ]|[aå]ngstr|[(\[]\s*A\s*[)\]]|^Å$", re.IGNORECASE)),
)
_KINDS = (
    (
        "transmittance",
        re.compile(
            r"transmittan|transmission|trasmittan|trasmission|transmitan|transmitân|"
            r"transmisi|透過率|透过率|пропускан",
            re.IGNORECASE,
        ),
    ),
    (
        "reflectance",
        re.compile(
            r"reflectan|refle[xk]ionsgrad|remission|réflectan|riflettan|refletân|反射率|отражен",
            re.IGNORECASE,
        ),
    ),
    (
        "light",
        re.compile(
            r"light|irradian|radian|strahl|power|spd|flux|intens|éclair|illumin|emissi|"
            r"(?<![^\W_])[mµμu]?w(?![^\W_])|photon|quanta|ppfd|(?<![^\W_])[mµμu]?mol|counts|luz|licht|lumi|leistung|puissance|potencia|"
            r"potenza|energ|放射|輝度|照度|光",
            re.IGNORECASE,
        ),
    ),
)
_PERCENT = re.compile(r"%|percent|prozent|pour\s*cent|por\s*ciento|per\s*cento|pct", re.IGNORECASE)
#: An amount of photons a second; micromoles are the usual unit of it.
_PHOTONS = re.compile(
    r"(?<![^\W_])[nmµμu]?mol(?![a-z])|(?<![^\W_])(mole?s|photons?|quanta)(?=\s*[/·*(⁻^-])",
    re.IGNORECASE,
)
_MICROMOLES = re.compile(r"(?<![^\W_])[µμu]mol(?![a-z])", re.IGNORECASE)
_SPEAKS_OF_PHOTONS = re.compile(r"photon|quanta|quantum|(?<![^\W_])s?p?pfd", re.IGNORECASE)
_POWER = re.compile(r"(?<![^\W_])[mµμu]?w(?![^\W_])|watt", re.IGNORECASE)
_PER_AREA = re.compile(r"(?<![^\W_])m\s*\^?\s*[-⁻]?\s*[2²]")
_BRACKET = re.compile(r"\s*[\[(]([^\[\]()]*(?:\([^()]*\)[^\[\]()]*)*)[\])]\s*$")
_QUANTITY = re.compile(
    r"(relative\s+|spectral\s+|spektrale\s+)*(values?|werte?|valeurs?|valor(es)?|valor[ei]|data|"
    r"intensity|intensität|intensité|intensidad|intensità|spd|power|y|s|e|i|ir?radiance|"
    r"(spectral\s+)?photon\s+flux(\s+density)?|photons?|sppfd|ppfd|pfd|"
    r"transmittance|transmission|reflectance|relative|counts|amplitude|spectrum|spektrum|"
    r"leistung|bestrahlungsstärke|strahldichte|t|r|%|%t|t%|w/m2?|a\.?u\.?)[\W_]*",
    re.IGNORECASE,
)
_UNIT_ROW = re.compile(
    r"\W*((?:[mµμu]?w|lm|lx|cd|photons)\s*[/·*(].*|[mµμu]mol(?![a-z]).*|nm|%|a\.?\s?u\.?|counts|1|-|w|rel\.?)\W*",
    re.IGNORECASE,
)


def names_wavelength(heading: str) -> bool:
    """Tell whether a heading is that of wavelengths."""
    return len(heading) <= 200 and bool(_WAVELENGTH.search(heading))


def wavelength_unit(heading: str) -> str:
    """Return the unit of wavelength that a heading states, or an empty text."""
    short = heading[:200]
    return next((unit for unit, word in _UNITS if word.search(short)), "")


def kind_of(heading: str) -> str:
    """Return what a heading says was measured, or an empty text."""
    short = heading[:500]
    return next((kind for kind, word in _KINDS if word.search(short)), "")


def names_percent(heading: str) -> bool:
    """Tell whether a heading speaks of percent."""
    return bool(_PERCENT.search(heading[:500]))


def photons_told(unit: str, words: Iterable[str]) -> bool | None:
    """Tell whether values count photons: True by their unit; None where it is not clear.

    Not clear is what speaks of photons and has no unit, or one of power.
    """
    told = unit[:200]
    other = [word[:500] for word in words if word]
    if _POWER.search(told):
        return None if any(_SPEAKS_OF_PHOTONS.search(word) for word in (told, *other)) else False
    if _PHOTONS.search(told) or (not told and any(_PHOTONS.search(word) for word in other)):
        return True
    return None if any(_SPEAKS_OF_PHOTONS.search(word) for word in (told, *other)) else False


def is_micromoles(unit: str) -> bool:
    """Tell whether a unit is micromoles of photons a second on an area."""
    return bool(_MICROMOLES.search(unit[:200])) and bool(_PER_AREA.search(unit[:200]))


def is_unit(heading: str) -> bool:
    """Tell whether a cell holds nothing but a unit."""
    return len(heading) <= 40 and bool(_UNIT_ROW.fullmatch(heading))


def split_heading(heading: str) -> tuple[str, str]:
    """Return the name in a heading and the unit in its last bracket, either may be empty.

    A heading that only names the quantity ('Irradiance') names no light, unless its bracket says
    what was measured, as :mod:`spectra_csv` writes it.
    """
    short = as_typed(heading[:200].strip())
    bracket = _BRACKET.search(short)
    unit = bracket.group(1).strip() if bracket else ""
    name = short[: bracket.start()].strip() if bracket else short
    if (unit not in KINDS and _QUANTITY.fullmatch(name)) or (bracket is None and is_unit(name)):
        name = ""
    return name, unit
