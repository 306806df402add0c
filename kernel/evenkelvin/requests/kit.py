"""The gels that a question may choose from."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import numpy as np

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import FLOOR, Gel
from evenkelvin.filters.kit import BETWEEN_K, NOMINAL_SCATTER, nominal_kit
from evenkelvin.filters.scatter import LEARNED_SCATTER
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, Number, Text

_GELS = ("1/4 CTO", "full CTB", "1/8 minus green", "ND 0.3")
#: A gel by its name.
GEL = Text(_GELS)
#: A measured gel; what else it carries is for people: its curve says it all.
OWN_GEL: Group = {
    "name": GEL, "wavelengths_nm": Many(Number(380, 780)), "transmittance": Many(Number(0, 1)),
    "reference_K": Number(1000, 25000), "mired": Number(-200, 200), "duv": Number(-0.05, 0.05),
    "stops": Number(0, 5), "source": Text(), "unknown": Many(Number(380, 780)),
}  # fmt: skip
#: What may be hung.
OWN_GELS: Group = {"own_gels": Many(OWN_GEL)}
KIT: Group = {"kit": Many(GEL), **OWN_GELS, "gel_scatter_percent": Number(0, 30)}


def read_own_gel(fields: Fields) -> Gel:
    """Return a measured gel from its fields.

    Raises
    ------
    Problem
        When it has no name, or its curve cannot be a gel's.
    """
    fields.refuse_unknown(*OWN_GEL)
    name = fields.text("name", longest=80).strip()
    if not name:
        raise Problem(fields.at("name"), Said("The gel needs a name."))
    nm, curve = fields.numbers("wavelengths_nm"), fields.numbers("transmittance")
    if len(nm) != len(curve) or len(nm) < 2:
        raise Problem(
            fields.at("transmittance"),
            Said(
                "“{name}” has {count} wavelengths and {count_2} transmittances; it needs two "
                "or more, one for each wavelength.",
                name=name,
                count=len(nm),
                count_2=len(curve),
            ),
        )
    if np.any(np.diff(nm) <= 0):
        raise Problem(
            fields.at("wavelengths_nm"), Said("The wavelengths of “{name}” must rise.", name=name)
        )
    if nm[0] > 420 or nm[-1] < 680:
        raise Problem(
            fields.at("wavelengths_nm"),
            Said(
                "“{name}” covers {nm:g}–{nm_2:g} nm; a gel needs at least 420–680 nm.",
                name=name,
                nm=nm[0],
                nm_2=nm[-1],
            ),
        )
    if min(curve) < 0 or max(curve) > 1.0 or max(curve) < FLOOR:
        raise Problem(
            fields.at("transmittance"),
            Said(
                "The transmittances of “{name}” must lie between 0 and 1 (percent divided by 100).",
                name=name,
            ),
        )
    values = np.clip(np.interp(GRID, nm, curve), FLOOR, 1.0)
    reference = fields.number("reference_K", BETWEEN_K, 1000.0, 25000.0)
    # A gel learned in x y has the right shift, not the right curve.
    by_shift = fields.text("source", "", longest=200) == "shift"
    scatter = LEARNED_SCATTER if by_shift else 0.0
    return Gel(name, "own", values, reference, nominal=False, scatter=scatter)


@lru_cache(maxsize=4)
def _nominal(percent: float) -> tuple[Gel, ...]:
    """Return the nominal gels as they vary by so much: the same ones again, for what is remembered
    of a kit.
    """
    share = percent / (100.0 * NOMINAL_SCATTER)
    return tuple(replace(gel, scatter=gel.scatter * share) for gel in nominal_kit())


def read_kit(fields: Fields) -> tuple[Gel, ...]:
    """Return the gels to choose from, by the fields ``kit`` (names) and ``own_gels``.

    An own gel takes the place of the nominal one of the same name. Without ``kit``, all.

    Raises
    ------
    Problem
        When a name is not known or an own gel cannot be one.
    """
    percent = fields.number(
        "gel_scatter_percent", 100.0 * NOMINAL_SCATTER, 0.0, 30.0, label=Said("how far gels vary")
    )
    known = {gel.name: gel for gel in _nominal(percent)}
    for group in fields.groups("own_gels", most=100):
        gel = read_own_gel(group)
        known[gel.name] = gel
    if fields.raw("kit") is None:
        return tuple(known.values())
    names = fields.texts("kit")
    return tuple(find_gel(known, name, f"{fields.at('kit')}.{i}") for i, name in enumerate(names))


def find_gel(known: dict[str, Gel], name: str, path: str) -> Gel:
    """Return a gel by name; capitals and spaces need not be as the kit has them.

    Raises
    ------
    Problem
        When there is none of that name.
    """
    if name in known:
        return known[name]
    alike = [gel for each, gel in known.items() if _plain(each) == _plain(name)]
    if len(alike) != 1:
        raise Problem(
            path,
            Said(
                "There is no gel named “{name}” in the kit. Pick one from Kit, or add it there.",
                name=name[:40],
            ),
        )
    return alike[0]


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


#: Longest name of a gel, as the kit takes it back.
LONGEST_GEL_NAME = 80


def read_gel_name(fields: Fields) -> str:
    """Return the name that a gel is to have."""
    name = " ".join(fields.text("name", longest=LONGEST_GEL_NAME).split())
    if not name:
        raise Problem(fields.at("name"), Said("The gel needs a name."))
    return name
