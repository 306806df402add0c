"""What the metrics of a light mean on a set, in plain words.

The metrics are published; the lines drawn here through them are not, unless a source is named.
They are common practice and meant to make a person look, not to pass or fail a lamp.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.temperature import LARGEST_DUV
from evenkelvin.rendering.camera import PATCHES
from evenkelvin.rendering.cri import SAMPLES, TOLERANCE_UV, ColourRenderingIndex
from evenkelvin.rendering.metamerism import SKIN, Metamerism
from evenkelvin.rendering.ssi import Similarity
from evenkelvin.rendering.tlci import TelevisionConsistency
from evenkelvin.rendering.tm30 import ColourRendition
from evenkelvin.said import Figure, Said, joined, listed

Weight = Literal["serious", "look", "fine"]

#: R9 below which deep red loses some, and all, of its strength (common practice, no source).
DULL_RED, FLAT_RED = 50.0, 0.0
#: Any other special index below which the colour is named (common practice, no source).
LOW_R, VERY_LOW_R = 70.0, 50.0
#: Skin samples R13 and R15 below which skin is named (common practice, no source).
LOW_SKIN_R = 80.0
#: Ra from which the eye is content with a light (common practice, no source).
GOOD_RA = 90.0
#: Chroma shift of the red bin in per cent within which people still like what they see, and
#: within which they bear it: priority levels P2 and P3 of the design intent Preference
#: (ANSI/IES TM-30-20, annex E).
RED_CHROMA, RED_CHROMA_WIDEST = (-7.0, 19.0), (-12.0, 23.0)
#: Gamut below which all colours go pale, priority level P3, and above which they are vivid, level
#: V2 of the design intent Vividness (ANSI/IES TM-30-20, annex E).
PALE_RG, VIVID_RG = 89.0, 110.0
#: Q_a from which no correction is needed, and below which correcting is hard (the bands EBU gives
#: with TLCI-2012; from memory).
CAMERA_FINE, CAMERA_HARD = 85.0, 50.0
#: SSI from which lights mix unseen, and below which colours are unlike (common practice, no
#: source).
ALIKE_SSI, UNLIKE_SSI = 90, 70
#: ΔE₀₀ that is seen side by side, and that is plain to see (common practice, no source).
SEEN_DELTA_E, PLAIN_DELTA_E = 1.0, 3.0
#: How many times as far as to the eye two whites must be apart to a camera before it is named.
TIMES_THE_EYE = 2.0


@dataclass(frozen=True)
class Flag:
    """One remark: how much it weighs, in words, and the numbers that it rests on."""

    weight: Weight
    words: Said
    because: str


_ORDER: dict[str, int] = {"serious": 0, "look": 1, "fine": 2}


def low_words(value: float) -> str:
    """Return the word for a special index: empty when it needs none."""
    if value < FLAT_RED:
        return Said("very wrong")
    if value < VERY_LOW_R:
        return Said("poor")
    return Said("low") if value < LOW_R else ""


def _signed(value: float, digits: int = 0) -> Figure:
    text = f"{value:+.{digits}f}" if digits else f"{value:.0f}"
    return Figure(text.replace("-", "−"))


def _index(number: int, value: float) -> Said:
    return Said("R{number} {value}", number=number, value=_signed(value))


def _ssi(found: Similarity) -> Said:
    return Said("SSI {value}", value=_signed(found.value))


def _because(words: Said, because: Said) -> Said:
    return Said("{words} ({because}).", words=words, because=because)


def judge(
    duv: float,
    cri: ColourRenderingIndex | None,
    tm30: ColourRendition | None,
    tlci: TelevisionConsistency | None,
    ssi: Similarity | None,
) -> list[Flag]:
    """Return remarks on one light, the weightiest first; metrics that could not be had are None."""
    seen = Said("Duv {signed}", signed=_signed(duv, 4))
    if abs(duv) > LARGEST_DUV:
        words = Said("A coloured light, not a white one: colour rendering says little about it")
        return [Flag("look", _because(words, seen), seen)]
    flags: list[Flag] = []
    if cri is not None:
        flags += _of_cri(cri)
    if tm30 is not None:
        flags += _of_tm30(tm30)
    if tlci is not None:
        flags += _of_tlci(tlci, cri, duv)
    elif abs(duv) > TOLERANCE_UV:
        flags.append(
            Flag(
                "look", Said("The eye will see {tint} ({seen}).", tint=_tint(duv), seen=seen), seen
            )
        )
    if ssi is not None and ssi.value < UNLIKE_SSI:
        flags.append(
            Flag(
                "look",
                Said(
                    "The spectrum is unlike its reference ({reference}): cameras and film stocks "
                    "may disagree about it.",
                    reference=ssi.reference,
                ),
                _ssi(ssi),
            )
        )
    if not flags:
        flags.append(Flag("fine", Said("Nothing stands out: colours stay as they are."), ""))
    return sorted(flags, key=lambda flag: _ORDER[flag.weight])


def _tint(duv: float) -> Said:
    return Said("green") if duv > 0 else Said("magenta")


def _of_cri(cri: ColourRenderingIndex) -> list[Flag]:
    flags: list[Flag] = []
    r9 = float(cri.r[8])
    if r9 < FLAT_RED:
        words = Said("Deep reds go dull: skin will look flat")
        flags.append(Flag("serious", _because(words, _index(9, r9)), _index(9, r9)))
    elif r9 < DULL_RED:
        words = Said("Deep reds lose strength: watch lips and skin")
        flags.append(Flag("look", _because(words, _index(9, r9)), _index(9, r9)))
    for number in (13, 15):
        value = float(cri.r[number - 1])
        if value < LOW_SKIN_R:
            weight: Weight = "serious" if value < VERY_LOW_R else "look"
            name = SAMPLES[number - 1]
            flags.append(
                Flag(
                    weight,
                    Said(
                        "{Name} shifts in colour ({index}).",
                        Name=name,
                        index=_index(number, value),
                    ),
                    _index(number, value),
                )
            )
    poor = [
        (float(cri.r[k]), k) for k in (9, 10, 11, 13) if cri.r[k] < VERY_LOW_R
    ]  # strong yellow, green, blue and leaf green
    if poor:
        named = joined(
            Said("{colour} ({index})", colour=SAMPLES[k], index=_index(k + 1, value))
            for value, k in sorted(poor)
        )
        flags.append(
            Flag("look", Said("Colours that come out wrong: {named}.", named=named), named)
        )
    if cri.doubtful:
        flags.append(
            Flag(
                "look",
                Said(
                    "The light is too far from its reference white for CRI to be trusted: take Ra "
                    "and R1–R15 as doubtful."
                ),
                Said(
                    "ΔC {distance:.4f} in u v, tolerance {tolerance_uv} (CIE 13.3-1995)",
                    distance=cri.distance,
                    tolerance_uv=TOLERANCE_UV,
                ),
            )
        )
    return flags


def _of_tm30(tm30: ColourRendition) -> list[Flag]:
    flags: list[Flag] = []
    red = float(tm30.chroma_shift[0])
    because = Said("Rcs,h1 {red} %", red=Figure(f"{red:+.0f}".replace("-", "−")))
    if np.isfinite(red):
        if red < RED_CHROMA_WIDEST[0]:
            words = Said("Reds lose a lot of chroma: faces go pale and grey")
            flags.append(Flag("serious", _because(words, because), because))
        elif red < RED_CHROMA[0]:
            words = Said("Reds lose some chroma: faces a little pale")
            flags.append(Flag("look", _because(words, because), because))
        elif red > RED_CHROMA[1]:
            weight: Weight = "serious" if red > RED_CHROMA_WIDEST[1] else "look"
            words = Said("Reds are pushed: faces go ruddy")
            flags.append(Flag(weight, _because(words, because), because))
    if tm30.rg < PALE_RG:
        flags.append(
            Flag(
                "look",
                Said("Colours go pale overall (Rg {rg:.0f}).", rg=tm30.rg),
                Said("Rg {rg:.0f}", rg=tm30.rg),
            )
        )
    elif tm30.rg > VIVID_RG:
        flags.append(
            Flag(
                "look",
                Said("Colours come out too vivid (Rg {rg:.0f}).", rg=tm30.rg),
                Said("Rg {rg:.0f}", rg=tm30.rg),
            )
        )
    return flags


def _of_tlci(
    tlci: TelevisionConsistency, cri: ColourRenderingIndex | None, duv: float
) -> list[Flag]:
    flags: list[Flag] = []
    because = Said("TLCI {qa:.0f}", qa=tlci.qa)
    tinted = abs(duv) > TOLERANCE_UV
    seen = Said("Duv {signed}", signed=_signed(duv, 4))
    if tlci.qa >= CAMERA_FINE:
        if tinted:
            flags.append(
                Flag(
                    "look",
                    Said(
                        "Fine for a camera balanced to it (TLCI {qa:.0f}), but the eye will see "
                        "{tint}, and so will a camera balanced elsewhere.",
                        qa=tlci.qa,
                        tint=_tint(duv),
                    ),
                    joined([because, seen]),
                )
            )
        else:
            flags.append(
                Flag(
                    "fine",
                    Said("Fine for camera: no correction needed ({because}).", because=because),
                    because,
                )
            )
    else:
        if tinted:
            flags.append(
                Flag(
                    "look",
                    Said("The eye will see {tint} ({seen}).", tint=_tint(duv), seen=seen),
                    seen,
                )
            )
        order = np.argsort(-np.nan_to_num(tlci.delta_e, nan=0.0))
        worst = listed(PATCHES[k] for k in order[:2])
        if tlci.qa < CAMERA_HARD:
            flags.append(
                Flag(
                    "serious",
                    Said(
                        "Hard to grade back ({because}): worst are {worst}.",
                        because=because,
                        worst=worst,
                    ),
                    because,
                )
            )
        else:
            flags.append(
                Flag(
                    "look",
                    Said(
                        "Needs a grade ({because}): worst are {worst}.",
                        because=because,
                        worst=worst,
                    ),
                    because,
                )
            )
        if cri is not None and cri.ra >= GOOD_RA and not cri.doubtful:
            flags.append(
                Flag(
                    "look",
                    Said(
                        "Fine for the eye (Ra {ra:.0f}), but the camera will see it differently.",
                        ra=cri.ra,
                    ),
                    joined([Said("Ra {ra:.0f}", ra=cri.ra), because]),
                )
            )
    if tlci.left_out:
        flags.append(
            Flag(
                "look",
                Said(
                    "Left out of TLCI, since the standard camera cannot hold them: {listing}.",
                    listing=joined(tlci.left_out),
                ),
                Said("{count} of 18 patches", count=len(tlci.left_out)),
            )
        )
    return flags


def compare(
    steps: float, agree_within: float, ssi: Similarity | None, seen: Metamerism | None
) -> list[Flag]:
    """Return remarks on two lights side by side; ``steps`` apart in u′ v′, the weightiest first."""
    flags = _of_metamerism(steps, steps <= agree_within, seen) if seen else []
    if ssi is not None and ssi.value >= ALIKE_SSI:
        flags.append(Flag("fine", Said("The spectra are alike: they mix unseen."), _ssi(ssi)))
    elif ssi is not None and ssi.value < UNLIKE_SSI:
        flags.append(
            Flag(
                "look",
                Said("The spectra are unlike: a match by x y will not hold for every camera."),
                _ssi(ssi),
            )
        )
    if not flags and seen:
        flags.append(Flag("fine", Said("Nothing stands out: they show colours alike."), ""))
    return sorted(flags, key=lambda flag: _ORDER[flag.weight])


def _of_metamerism(steps: float, agree: bool, seen: Metamerism) -> list[Flag]:
    flags: list[Flag] = []
    skin = float(np.max(seen.eye[SKIN]))
    worst = int(np.argmax(seen.eye))
    most = float(seen.eye[worst])
    camera_most = float(np.nanmax(seen.camera)) if np.any(np.isfinite(seen.camera)) else np.nan
    if agree and most > PLAIN_DELTA_E:
        flags.append(
            Flag(
                "serious" if skin > PLAIN_DELTA_E else "look",
                Said(
                    "A metameric pair: the lights agree in x y, but colours do not. The eye sees "
                    "{patches} differ most.",
                    patches=PATCHES[worst],
                ),
                Said("ΔE00 {most:.1f} at {steps:.1f} colour steps", most=most, steps=steps),
            )
        )
    if skin > PLAIN_DELTA_E:
        flags.append(
            Flag(
                "serious",
                Said("Skin will look plainly different."),
                Said("skin ΔE00 {skin:.1f}", skin=skin),
            )
        )
    elif skin > SEEN_DELTA_E:
        flags.append(
            Flag(
                "look",
                Said("Skin will look a little different side by side."),
                Said("skin ΔE00 {skin:.1f}", skin=skin),
            )
        )
    if np.isfinite(camera_most) and camera_most > PLAIN_DELTA_E >= most:
        flags.append(
            Flag(
                "look",
                Said("The eye sees them alike, a camera does not."),
                Said(
                    "ΔE00 eye {most:.1f}, camera {camera_most:.1f}",
                    most=most,
                    camera_most=camera_most,
                ),
            )
        )
    if agree and seen.grey > max(PLAIN_DELTA_E, TIMES_THE_EYE * seen.eye_grey):
        flags.append(
            Flag(
                "serious",
                Said(
                    "On one camera balance the second light goes {shift_words}, though the eye "
                    "sees nearly the same white.",
                    shift_words=_shift_words(seen.grey_shift),
                ),
                Said(
                    "grey card ΔE00 camera {grey:.1f}, eye {eye_grey:.1f}",
                    grey=seen.grey,
                    eye_grey=seen.eye_grey,
                ),
            )
        )
    return flags


def _shift_words(shift: tuple[float, float]) -> Said:
    a, b = shift
    if abs(a) >= abs(b):
        return Said("magenta") if a > 0 else Said("green")
    return Said("warm") if b > 0 else Said("cool")
