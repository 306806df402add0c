"""Readings in the other forms that meters give, turned into CCT, Duv and lux·s.

A meter may show mired in place of kelvin; green and magenta in CC or in cuts of plus and minus
green in place of a Duv; and a flash as an f-number at an ISO in place of lux·s. What such a figure
leaves open is taken for granted here and said.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from evenkelvin.colorimetry.temperature import LARGEST_DUV
from evenkelvin.exposure import stops
from evenkelvin.field_names import field_name, only_one_of
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import CUTS
from evenkelvin.lights.reading import READING_K
from evenkelvin.lights.tint import duv_of_cc
from evenkelvin.problem import Problem
from evenkelvin.requests.camera import read_stop
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Number, OneOf, Text

#: Whether a plus sign tells of the light, or of the gel that it wants.
_SAYS = ("light", "filter")
#: CCT in mired (10⁶/K, CIE S 017 'reciprocal colour temperature'), and green and magenta in CC or
#: in cuts: + is a green light, or with "filter" that plus green is wanted on it.
COLOUR_FORMS: Group = {
    "cct_mired": Number(1e6 / READING_K[1], 1e6 / READING_K[0]), "tint_cc": Number(-60, 60),
    "tint_cuts": OneOf((Number(-2, 2), Text(("1/4", "-1/8", "½", "full")))),
    "tint_says": Choice(_SAYS),
}  # fmt: skip
#: A flash as the f-number that its meter shows, at which ISO, and the meter's constant C.
FLASH_FORMS: Group = {
    "flash_f_number": OneOf((Number(0.7, 90), Text(("5.6⅓", "f/8 and 3 tenths")))),
    "flash_iso": Number(25, 6400), "flash_constant": Number(100, 1000),
    "flash_receptor": Choice(tuple(stops.CONSTANTS)),
}  # fmt: skip
FORMS: Group = {**COLOUR_FORMS, **FLASH_FORMS}

_TINTS = ("duv", "tint_cc", "tint_cuts")
_MOST_CC = 60.0
_FRACTIONS = {"⅛": "1/8", "¼": "1/4", "½": "1/2", "¾": "3/4"}
#: A part that has a cut is that cut: 0.125 means the eighth that hangs.
_PARTS = {0.125: "1/8", 0.25: "1/4", 0.5: "1/2", 0.75: "3/4", 1.0: "full"}
_CUT = re.compile(r"(?P<sign>[+-]?)\s*(?P<cut>full|\d/\d)")


def in_usual_form(fields: Fields) -> tuple[Fields, tuple[Said, ...]]:
    """Return a reading's fields as CCT, Duv and lux·s, and what was taken for granted.

    Raises
    ------
    Problem
        Naming the field as it was given.
    """
    said: list[Said] = []
    usual: dict[str, Any] = {}
    if any(fields.given(name) for name in COLOUR_FORMS):
        usual |= _colour(fields, said)
    if any(fields.given(name) for name in FLASH_FORMS):
        usual |= _flash(fields, said)
    return fields.without(*FORMS, *usual).along(usual), tuple(said)


def logged_in_usual_form(plain: Mapping[str, Any]) -> Mapping[str, Any]:
    """Return a logged reading as CCT, Duv and lux·s; one that cannot be read stays as it is."""
    if not plain.keys() & FORMS.keys():
        return plain
    usual = dict(plain)
    readers = ((COLOUR_FORMS, _colour), (FLASH_FORMS, _flash))
    for read in (read for forms, read in readers if plain.keys() & forms.keys()):
        try:
            usual |= read(Fields(plain), [])
        except Problem:
            continue
    return usual


def _only_one(fields: Fields, *names: str) -> str | None:
    given = [name for name in names if fields.given(name)]
    if len(given) > 1:
        raise Problem(fields.at(given[1]), only_one_of(given))
    return given[0] if given else None


def _colour(fields: Fields, said: list[Said]) -> dict[str, Any]:
    usual: dict[str, Any] = {}
    cct = _only_one(fields, "cct_K", "cct_mired")
    tint = _only_one(fields, *_TINTS)
    if cct == "cct_mired":
        low, high = (1e6 / kelvin for kelvin in reversed(READING_K))
        mired = fields.number(cct, low=low, high=high)
        usual["cct_K"] = 1e6 / mired
        said.append(Said("{mired:g} mired is {cct:.0f} K.", mired=mired, cct=usual["cct_K"]))
    if tint in ("tint_cc", "tint_cuts"):
        if cct is None:
            raise Problem(
                fields.at(tint),
                Said("{Name} goes with a CCT: type that too.", Name=field_name(tint)),
            )
        kelvin = usual.get("cct_K") or fields.number("cct_K", low=READING_K[0], high=READING_K[1])
        usual["duv"] = _duv(fields, tint, kelvin, said)
    return usual


def _duv(fields: Fields, tint: str, kelvin: float, said: list[Said]) -> float:
    """Return the Duv of a light whose green or magenta was read in CC or in cuts."""
    if tint == "tint_cuts":
        cc, what = _cuts(fields, tint)
    else:
        cc = fields.number(tint, low=-_MOST_CC, high=_MOST_CC)
        what = Said("{cc:g} CC green", cc=cc) if cc >= 0 else Said("{cc:g} CC magenta", cc=abs(cc))
    wanted = fields.choice("tint_says", _SAYS, "light") == "filter"
    duv = duv_of_cc(kelvin, -cc if wanted else cc)
    if abs(duv) > LARGEST_DUV:
        raise Problem(
            fields.at(tint),
            Said(
                "{What} is more than any white has, Duv {duv:+.4f}. Check the number, or type x y.",
                What=what,
                duv=duv,
            ),
        )
    if wanted:
        said.append(
            Said(
                "{What} wanted is taken as Duv {duv:+.4f}: as far the other way as that gel moves "
                "a black body of {cct:.0f} K.",
                What=what,
                duv=duv,
                cct=kelvin,
            )
        )
    else:
        said.append(
            Said(
                "{What} in the light is taken as Duv {duv:+.4f}: as far as that gel moves a black "
                "body of {cct:.0f} K.",
                What=what,
                duv=duv,
                cct=kelvin,
            )
        )
    return duv


def _cuts(fields: Fields, name: str) -> tuple[float, Said]:
    """Return cuts of plus green (minus: of minus green) in CC, and in words."""
    raw = fields.raw(name)
    text = raw.strip().replace("−", "-").lower() if isinstance(raw, str) else ""
    for sign, ascii_form in _FRACTIONS.items():
        text = text.replace(sign, ascii_form)
    found = _CUT.fullmatch(text)
    if found:
        cut, minus = found["cut"], found["sign"] == "-"
        if cut not in CUTS:
            raise Problem(
                fields.at(name),
                Said(
                    "{Name}: there is no {cut} cut. Type 1/8, 1/4, 1/2, 3/4 or 1.",
                    Name=field_name(name),
                    cut=cut,
                ),
            )
    else:
        full = CUTS["full"][1]
        times = fields.number(name, low=-_MOST_CC / full, high=_MOST_CC / full)
        minus = times < 0
        if abs(times) not in _PARTS:
            cc = abs(times) * full
            if minus:
                return -cc, Said("{times:.1f} × full minus green", times=abs(times))
            return cc, Said("{times:.1f} × full plus green", times=times)
        cut = _PARTS[abs(times)]
    cc = CUTS[cut][1]
    if minus:
        return -cc, Said("{cut} minus green", cut=cut)
    return cc, Said("{cut} plus green", cut=cut)


def _flash(fields: Fields, said: list[Said]) -> dict[str, Any]:
    """Return the exposure in lx·s that an f-number at an ISO stands for (ISO 2720: H = N²·C/S)."""
    if not fields.given("flash_f_number"):
        return {}
    other = [
        name for name in ("illuminance_lx", "illuminance_fc", "exposure_lx_s") if fields.given(name)
    ]
    if other:
        raise Problem(fields.at("flash_f_number"), only_one_of([other[0], "flash_f_number"]))
    n = read_stop(fields, "flash_f_number")
    iso = fields.number("flash_iso", low=1.0, high=1e6)
    receptor = fields.choice("flash_receptor", tuple(stops.CONSTANTS), "flat")
    constant = fields.number("flash_constant", stops.CONSTANTS[receptor], 100.0, 1000.0)
    exposure = stops.light_needed(n, iso, constant)
    low, high = stops.FLASH_BOUNDS
    if not low <= exposure <= high:
        raise Problem(
            fields.at("flash_f_number"),
            Said(
                "f/{n:.3g} at ISO {iso:g} would be {exposure:.3g} lx·s, which no flash gives. "
                "Check both.",
                n=n,
                iso=iso,
                exposure=exposure,
            ),
        )
    said.append(
        Said(
            "f/{n:.3g} at ISO {iso:g} is taken as {exposure:.3g} lx·s, with the meter's C of "
            "{constant:g} lx·s.",
            n=n,
            iso=iso,
            exposure=exposure,
            constant=constant,
        )
    )
    return {"exposure_lx_s": exposure}
