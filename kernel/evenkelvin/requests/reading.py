"""One reading: what was typed or measured, checked and made canonical."""

from __future__ import annotations

from typing import Literal

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import is_real, xy_to_uv_prime, xyz_to_xy
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import (
    Spectrum,
    checked_spectrum,
    on_grid,
    tristimulus,
)
from evenkelvin.colorimetry.temperature import (
    DOUBTFUL_DUV,
    LARGEST_DUV,
    cct_to_xy,
    xy_to_cct,
)
from evenkelvin.data import Floats
from evenkelvin.exposure.stops import FLASH_BOUNDS, LIGHT_BOUNDS
from evenkelvin.fields import Fields, decimals
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.before import Before, KnownShift, KnownSpectrum
from evenkelvin.lights.evidence import IMPLAUSIBLE
from evenkelvin.lights.reading import (
    LX_PER_FC,
    READING_K,
    TARGET_K,
    Reading,
    moved,
    pack_transmittance,
)
from evenkelvin.lights.stand_in import LAMPS, guess
from evenkelvin.problem import Problem
from evenkelvin.requests.forms import FORMS, in_usual_form
from evenkelvin.requests.kit import GEL, OWN_GEL, find_gel, read_own_gel
from evenkelvin.said import Said, joined
from evenkelvin.shapes import Choice, Group, Many, Number, OneOf, Text

#: Whether a bare x y gets a stand-in for its spectrum.
StandIn = Literal["must", "may", "none"]


#: Direct sun at noon is about 100 000 to 130 000 lx; beyond this a reading is doubtful.
_BRIGHTEST_LX = 200_000.0
#: How much of a lamp's past is looked at.
_MOST_BEFORE = 8


#: The ways to give a light's colour, and its amount.
_WAYS = {"x y": Said("x y"), "CCT": Said("CCT"), "spectrum": Said("spectrum")}
_AMOUNTS = {
    "illuminance_lx": Said("lux"),
    "illuminance_fc": Said("foot-candles"),
    "exposure_lx_s": Said("lux·s"),
}
_SPECTRUM: Group = {"wavelengths_nm": Many(Number(380, 780)), "values": Many(Number(0, 1000))}
#: What else a meter shows, each optional: it tells what lamp it may be.
EVIDENCE: Group = {
    "ra": Number(0, 100),
    "r9": Number(-100, 100),
    "rf": Number(0, 100),
    "rg": Number(60, 140),
    "ssi": Number(0, 100),
}
_EVIDENCE_WORDS = {"ra": "Ra", "r9": "R9", "rf": "Rf", "rg": "Rg", "ssi": "SSI"}
#: Between what each may be typed.
_EVIDENCE_BOUNDS = {
    "ra": (-100.0, 100.0), "r9": (-500.0, 100.0), "rf": (0.0, 100.0), "rg": (0.0, 200.0),
    "ssi": (-100.0, 100.0),
}  # fmt: skip
_PLAIN_READING: Group = {
    "x": Number(0.2, 0.6), "y": Number(0.2, 0.5), "cct_K": Number(*READING_K),
    "duv": Number(-0.05, 0.05), "spectrum": _SPECTRUM, "illuminance_lx": Number(*LIGHT_BOUNDS),
    "illuminance_fc": Number(1e-3, 1e5), "exposure_lx_s": Number(*FLASH_BOUNDS),
    "lamp": Choice(tuple(LAMPS)), "name": Text(), "note": Text(), "pack": Many(GEL),
    "own_gels": Many(OWN_GEL), "role": Text(), **EVIDENCE, **FORMS,
}  # fmt: skip
_BEFORE: Group = {"reading": _PLAIN_READING, "next": _PLAIN_READING}
#: What a light reads, and what its lamp did before: a reading with a spectrum, or a reading and
#: the ``next`` of the same light, behind other gels.
READING: Group = {**_PLAIN_READING, "before": Many(_BEFORE)}
_WHITE: Group = {"cct_K": Number(*TARGET_K), "duv": Number(-0.02, 0.02)}
#: The white to match.
TARGET: Group = {"target": OneOf((_WHITE, READING))}


def _read_xy(fields: Fields, warnings: list[str]) -> Floats:
    for name in ("x", "y"):
        if not fields.given(name):
            other = "y" if name == "x" else "x"
            raise Problem(
                fields.at(name),
                Said("{name} is missing: {other} alone says no colour.", name=name, other=other),
            )
    x = fields.number("x", low=0.0, high=1.0)
    y = fields.number("y", low=0.0, high=1.0)
    if x + y > 1.0:
        raise Problem(
            fields.at("y"),
            Said("x + y is {x:.4g}; it cannot exceed 1. Check both for a typo.", x=x + y),
        )
    xy = np.array([x, y])
    if not is_real(xy):
        raise Problem(
            fields.at("x"),
            Said(
                "No light has x {x:g}, y {y:g}: it lies outside the colours the eye can see. "
                "Check both, and that these are x y and not u′ v′.",
                x=x,
                y=y,
            ),
        )
    coarse = [decimals(fields.raw(name)) for name in ("x", "y")]
    if all(places is not None and places <= 3 for places in coarse):
        warnings.append(
            Said(
                "x y with three decimals leaves the CCT open by some 14 K; type four if the "
                "meter shows them."
            )
        )
    return xy


def _read_cct(fields: Fields, warnings: list[str]) -> Floats:
    kelvin = fields.number("cct_K", label="CCT")
    low, high = READING_K
    if not low <= kelvin <= high:
        meant = None
        for slip in (kelvin / 10.0, kelvin * 10.0):
            if TARGET_K[0] <= slip <= TARGET_K[1]:
                meant = slip
        if meant is None:
            outside = Said(
                "A CCT of {kelvin:g} K is outside {low:.0f}–{high:.0f} K.",
                kelvin=kelvin,
                low=low,
                high=high,
            )
        else:
            outside = Said(
                "A CCT of {kelvin:g} K is outside {low:.0f}–{high:.0f} K. "
                "Did you mean {slip:.0f} K?",
                kelvin=kelvin,
                low=low,
                high=high,
                slip=meant,
            )
        raise Problem(fields.at("cct_K"), outside)
    if not fields.given("duv"):
        warnings.append(
            Said(
                "No green-magenta given, so Duv 0 is assumed; a CCT alone cannot tell green "
                "from magenta. Type the Duv, or x y."
            )
        )
    duv = fields.number("duv", 0.0, label="Duv")
    if abs(duv) > LARGEST_DUV:
        raise Problem(
            fields.at("duv"),
            Said(
                "A Duv of {duv:g} is beyond ±{largest_duv:g}, where a CCT has no meaning. Type "
                "x y instead; if the meter shows CC, choose CC in Kit.",
                duv=duv,
                largest_duv=LARGEST_DUV,
            ),
        )
    return cct_to_xy(kelvin, duv)


def read_pack(fields: Fields, kit: tuple[Gel, ...]) -> tuple[Gel, ...]:
    """Return the gels that the field ``pack`` names.

    Those that ``own_gels`` brings along come first: a reading means the gel it was taken through,
    whatever the kit has under that name.
    """
    known = {gel.name: gel for gel in kit}
    known |= {gel.name: gel for gel in map(read_own_gel, fields.groups("own_gels", most=200))}
    names = fields.texts("pack")
    return tuple(find_gel(known, name, f"{fields.at('pack')}.{i}") for i, name in enumerate(names))


def _read_amount(fields: Fields, warnings: list[str]) -> tuple[float | None, float | None]:
    given = [
        name for name in ("illuminance_lx", "illuminance_fc", "exposure_lx_s") if fields.given(name)
    ]
    if len(given) > 1:
        raise Problem(
            fields.at(given[1]),
            Said(
                "Give {one} or {other}, not both: they are one amount.",
                one=_AMOUNTS[given[0]],
                other=_AMOUNTS[given[1]],
            ),
        )
    if not given:
        return None, None
    amount = fields.number(given[0], label=_AMOUNTS[given[0]])
    if amount <= 0.0:
        raise Problem(
            fields.at(given[0]),
            Said(
                "{Name} is {amount:g}; a light that can be read gives more than zero.",
                Name=_AMOUNTS[given[0]],
                amount=amount,
            ),
        )
    low, high = FLASH_BOUNDS if given[0] == "exposure_lx_s" else LIGHT_BOUNDS
    size = LX_PER_FC if given[0] == "illuminance_fc" else 1.0
    fields.number(given[0], low=low / size, high=high / size, label=_AMOUNTS[given[0]])
    if given[0] == "exposure_lx_s":
        return None, amount
    lux = amount * LX_PER_FC if given[0] == "illuminance_fc" else amount
    if lux > _BRIGHTEST_LX:
        warnings.append(
            Said(
                "{lux:,.0f} lx is more than direct sun at noon gives; check the number and its "
                "unit.",
                lux=lux,
            )
        )
    return lux, None


def _read_evidence(fields: Fields) -> tuple[tuple[str, float], ...]:
    """Return the figures that the meter shows beside the colour; a spectrum needs none."""
    return tuple(
        (name, fields.number(name, low=low, high=high, label=_EVIDENCE_WORDS[name]))
        for name, (low, high) in _EVIDENCE_BOUNDS.items()
        if fields.given(name)
    )


def _read_before(
    fields: Fields, kit: tuple[Gel, ...], lamp: str, warnings: list[str]
) -> tuple[Before, ...]:
    """Return what the lamp did before; what of it cannot be used is told and left out."""
    found: list[Before] = []
    for group in fields.groups("before", most=_MOST_BEFORE):
        group.refuse_unknown(*_BEFORE)
        past = [group.group("reading")]
        past += [group.group("next")] if group.given("next") else []
        for one in past:
            one.refuse_unknown(*_PLAIN_READING)
        name = past[0].text("name", "", longest=200) or Said("this lamp")
        try:
            read = [read_reading(one, kit, stand_in="none") for one in past]
        except Problem as why:
            words = Said("What {name} did before is left out: {why}", name=name, why=why.message)
            warnings.append(words)
            continue
        if any(lamp != one.lamp and "unknown" not in (lamp, one.lamp) for one in read):
            continue
        first, then = read[0], read[-1]
        if first.spectrum is not None:
            bare = first.spectra[0] / pack_transmittance(first.pack)
            found.append(KnownSpectrum(name, tuple((bare / bare.max()).tolist())))
        if gels := moved(first.pack, then.pack):
            uv = [xy_to_uv_prime(one.xy) for one in (first, then)]
            found.append(
                KnownShift(
                    name,
                    (float(uv[0][0]), float(uv[0][1])),
                    (float(uv[1][0]), float(uv[1][1])),
                    first.pack,
                    then.pack,
                    tuple(gel.scatter for gel in gels),
                )
            )
    return tuple(found)


def _implausible(evidence: tuple[tuple[str, float], ...]) -> Said:
    """Return that no lamp of the kind has these figures."""
    figures = joined(
        Said("{metric} {value:g}", metric=_EVIDENCE_WORDS[name], value=value)
        for name, value in evidence
    )
    return Said(
        "No lamp of this type is known that reads this colour and has {figures}. Check the "
        "figures and the lamp type.",
        figures=figures,
    )


def _far_from_locus(duv: float, cct_k: float) -> list[str]:
    if np.isnan(cct_k) and abs(duv) <= LARGEST_DUV:
        return [Said("This light is warmer or cooler than any white: no CCT can be given for it.")]
    if np.isnan(cct_k):
        return [
            Said(
                "So far from the black-body line (Duv {duv:+.4f}) a light has no CCT; it is a "
                "colour, and gel for white will not do.",
                duv=duv,
            )
        ]
    if abs(duv) > DOUBTFUL_DUV:
        return [
            Said(
                "Duv {duv:+.4f} is far off the black-body line; the CCT says little there, "
                "trust x y and your eyes.",
                duv=duv,
            )
        ]
    return []


def read_reading(
    fields: Fields,
    kit: tuple[Gel, ...],
    extra: tuple[str, ...] = (),
    stand_in: StandIn = "must",
) -> Reading:
    """Return a reading from its fields.

    Parameters
    ----------
    fields
        One of x and y, cct_K and duv, or spectrum; and what else a reading may hold. CCT, Duv and
        lux·s may be in another form (:mod:`evenkelvin.requests.forms`).
    kit
        Gels that ``pack`` may name.
    extra
        Further fields that the caller reads for itself.
    stand_in
        Whether a bare x y must have one, may (a colour so deep that none reaches it, such as one
        primary of a lamp, is taken too), or needs none; without, ``spectra`` has shape (0, 81).

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    fields.refuse_unknown(*READING, *extra)
    fields, assumed = in_usual_form(fields)
    warnings: list[str] = []
    ways = [
        way
        for way, names in {
            "x y": ("x", "y"),
            "CCT": ("cct_K", "duv"),
            "spectrum": ("spectrum",),
        }.items()
        if any(fields.given(name) for name in names)
    ]
    if not ways:
        raise Problem(
            fields.at("x"), Said("Type x and y, or a CCT with its Duv, or load a spectrum.")
        )
    if len(ways) > 1:
        raise Problem(
            fields.at({"x y": "x", "CCT": "cct_K", "spectrum": "spectrum"}[ways[1]]),
            Said(
                "Both {one} and {other} are given; one of them must be left out.",
                one=_WAYS[ways[0]],
                other=_WAYS[ways[1]],
            ),
        )
    spectrum: Spectrum | None = None
    if ways == ["spectrum"]:
        group = fields.group("spectrum")
        group.refuse_unknown(*_SPECTRUM)
        spectrum = checked_spectrum(
            group.numbers("wavelengths_nm"), group.numbers("values"), group.path
        )
        xy = xyz_to_xy(tristimulus(spectrum))
        if spectrum.wavelengths[0] > 380.0 or spectrum.wavelengths[-1] < 780.0:
            warnings.append(
                Said(
                    "The spectrum covers {low:g}–{high:g} nm; towards 380 and 780 "
                    "nm its last values are carried on.",
                    low=spectrum.wavelengths[0],
                    high=spectrum.wavelengths[-1],
                )
            )
    elif ways == ["x y"]:
        xy = _read_xy(fields, warnings)
    else:
        xy = _read_cct(fields, warnings)

    lamp = fields.choice("lamp", tuple(LAMPS), "unknown")
    name = fields.text("name", "", longest=200)
    role = fields.text("role", "", longest=200).strip().lower()
    fields.text("note", "", longest=5000)
    pack = read_pack(fields, kit)
    illuminance_lx, exposure_lx_s = _read_amount(fields, warnings)
    cct_k, duv = xy_to_cct(xy)
    warnings += _far_from_locus(duv, cct_k)

    evidence = _read_evidence(fields)
    before = _read_before(fields, kit, lamp, warnings) if spectrum is None else ()
    weights, widen = None, 1.0
    after: tuple[str, ...] = ()
    # On the grid a measured spectrum lands a hair beside its own x y; bending puts it back.
    if spectrum is not None:
        gridded = on_grid(spectrum)[np.newaxis]
        bent = bend(gridded, xy)
        spectra = bent if len(bent) else gridded / gridded.max()
    elif stand_in == "none":
        spectra = np.empty((0, len(GRID)))
    else:
        try:
            through = pack_transmittance(pack) if pack else None
            may_be = guess(lamp, xy, through, evidence, before)
            spectra, weights, widen = may_be.spectra, may_be.weights, may_be.widen
            after = may_be.after
            if may_be.off > IMPLAUSIBLE:
                warnings.append(_implausible(evidence))
        except Problem as problem:
            if stand_in == "must":
                raise Problem(fields.at(problem.field), problem.message) from None
            spectra = np.empty((0, len(GRID)))
    return Reading(
        xy, cct_k, duv, spectra, spectrum, illuminance_lx, exposure_lx_s, lamp, name, pack,
        warnings, role, weights, widen, evidence, after, assumed,
    )  # fmt: skip


def read_target(fields: Fields, kit: tuple[Gel, ...]) -> Reading:
    """Return the white to match: a CCT of 2500 to 10 000 K with its Duv, or any reading.

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    if fields.given("cct_K") and not any(
        fields.given(name) for name in ("x", "y", "spectrum", "lamp", "illuminance_lx", "name")
    ):
        fields.refuse_unknown(*_WHITE)
        fields.number("cct_K", low=TARGET_K[0], high=TARGET_K[1], label=Said("the target CCT"))
        fields.number("duv", 0.0, -0.02, 0.02, label=Said("the target Duv"))
        plain = {"cct_K": fields.raw("cct_K"), "duv": fields.raw("duv") or 0.0}
        return read_reading(Fields(plain, fields.path), kit)
    return read_reading(fields, kit)


def read_spectral(fields: Fields, kit: tuple[Gel, ...]) -> tuple[Reading, Spectrum]:
    """Return a reading and its spectrum.

    Raises
    ------
    Problem
        Also when the reading holds no spectrum.
    """
    reading = read_reading(fields, kit)
    if reading.spectrum is None:
        raise Problem(
            fields.at("spectrum"),
            Said(
                "Colour rendering needs a spectrum: x y or a CCT alone cannot tell how a light "
                "shows colours. Load the spectrum file that the meter saved, or paste it."
            ),
        )
    return reading, reading.spectrum
