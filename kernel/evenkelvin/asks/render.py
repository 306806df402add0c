"""How a light shows colours: ``{"ask": "render", "reading": R, "against"?: R | [R…]}``."""

from __future__ import annotations

from functools import partial
from typing import Any

from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.fields import Fields
from evenkelvin.rendering import cri, curves, ssi, tlci, tm30, verdict
from evenkelvin.rendering.camera import PATCHES
from evenkelvin.rendering.reference import rated
from evenkelvin.replies.plain import white
from evenkelvin.replies.rendering import (
    curves_plain,
    flags_plain,
    numbers,
    similarity_plain,
    warnings_of,
)
from evenkelvin.replies.seen import pairs_by_eye
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, read_spectral
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, OneOf

_MOST_AGAINST = 50

FIELDS: Group = {"reading": READING, "against": OneOf((READING, Many(READING))), **OWN_GELS}


def _against_reference(spectrum: Spectrum) -> ssi.Similarity:
    return ssi.spectral_similarity(spectrum, *ssi.matching_reference(spectrum))


def _cri_plain(found: cri.ColourRenderingIndex) -> dict[str, Any]:
    return {
        "ra": found.ra,
        "r": numbers(found.r),
        "r_names": list(cri.SAMPLES),
        "r_words": [verdict.low_words(float(value)) for value in found.r],
        "pairs": pairs_by_eye(found.xyz),
        "cct_K": found.cct,
        "distance_uv": found.distance,
        "tolerance_uv": cri.TOLERANCE_UV,
        "doubtful": found.doubtful,
        "reference": found.reference,
    }


def _tm30_plain(found: tm30.ColourRendition) -> dict[str, Any]:
    circle = [numbers(place) for place in found.circle]
    polygon = [numbers(place) for place in found.polygon]
    return {
        "rf": found.rf,
        "rg": found.rg,
        "samples": numbers(found.samples),
        "bins": numbers(found.bin_rf),
        "chroma_shift": numbers(found.chroma_shift),
        "hue_shift": numbers(found.hue_shift),
        "pairs": pairs_by_eye(found.xyz),
        "graphic": {
            "circle": circle,
            "polygon": polygon,
            "arrows": [list(arrow) for arrow in zip(circle, polygon, strict=True)],
            "bin_edges_deg": [edge * 360.0 / tm30.BINS for edge in range(tm30.BINS)],
        },
        "cct_K": found.cct,
        "reference": found.reference,
    }


def _tlci_plain(found: tlci.TelevisionConsistency) -> dict[str, Any]:
    return {
        "qa": found.qa,
        "delta_e_a": found.delta_e_a,
        "delta_e": numbers(found.delta_e),
        "patches": list(PATCHES),
        "left_out": list(found.left_out),
        "cct_K": found.temperature.cct,
        "offset": found.temperature.offset,
        "doubtful": found.doubtful,
        "reference": found.reference,
    }


def _row(name: str, value: float, source: dict[str, Any]) -> dict[str, Any]:
    return {
        "name": name,
        "value": value,
        **{key: source[key] for key in ("observer", "reference", "edition")},
    }


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with CRI, TM-30, SSI and TLCI of a light and what they mean in words.

    Each metric names its observer, reference and edition; ``numbers`` holds the chief ones as
    rows of one table. A metric that cannot rate the light has ``unrated``, a sentence, and null
    values. ``against`` are further lights whose SSI is wanted, as the reference. ``curves`` holds
    what is to be drawn (see :func:`curves_plain`). ``pairs`` of CRI are the samples, those of TM-30
    the means of the hue bins as its 10° observer has them: each as a screen shows it in the light
    and in its reference, the eye adapted (CAT16) to either; null for a bin without samples.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    reading, spectrum = read_spectral(fields.group("reading"), kit)
    raw = fields.raw("against")
    groups = (
        fields.groups("against", _MOST_AGAINST)
        if isinstance(raw, (list, tuple)) or raw is None
        else [fields.group("against")]
    )
    against = [read_spectral(group, kit) for group in groups]

    found_cri, no_cri = rated(lambda: cri.colour_rendering_index(spectrum))
    found_tm30, no_tm30 = rated(lambda: tm30.colour_rendition(spectrum))
    found_ssi, no_ssi = rated(lambda: _against_reference(spectrum))
    found_tlci, no_tlci = rated(lambda: tlci.television_consistency(spectrum))

    in_cri: dict[str, Any] = {
        "observer": cri.OBSERVER,
        "edition": cri.EDITION,
        "edition_r15": cri.EDITION_R15,
        **(_cri_plain(found_cri) if found_cri else {"ra": None, "r": [], "unrated": no_cri}),
    }
    in_tm30: dict[str, Any] = {
        "observer": tm30.OBSERVER,
        "edition": tm30.EDITION,
        "edition_rf": tm30.EDITION_RF,
        **(_tm30_plain(found_tm30) if found_tm30 else {"rf": None, "rg": None, "unrated": no_tm30}),
    }
    in_tlci: dict[str, Any] = {
        "observer": tlci.OBSERVER,
        "edition": tlci.EDITION,
        **(_tlci_plain(found_tlci) if found_tlci else {"qa": None, "unrated": no_tlci}),
    }
    named = [
        (light, other.name or Said("light {n}", n=k + 1))
        for k, (other, light) in enumerate(against)
    ]
    others = [
        (Said("SSI, black body 3200 K"), *ssi.planck_reference(3200.0)),
        (Said("SSI, D55"), *ssi.d55_reference()),
        *((Said("SSI, {light}", light=name), light, name) for light, name in named),
    ]
    further = [
        similarity_plain(name, rated(partial(ssi.spectral_similarity, spectrum, light, words)))
        for name, light, words in others
    ]
    in_ssi = similarity_plain(Said("SSI, matching reference"), (found_ssi, no_ssi))
    in_ssi["others"] = further

    rows: list[dict[str, Any]] = []
    if found_cri:
        rows.append(_row("Ra", found_cri.ra, in_cri))
        for k, value in enumerate(found_cri.r):
            edition = cri.EDITION_R15 if k == 14 else cri.EDITION
            row = _row(Said("R{n}, {colour}", n=k + 1, colour=cri.SAMPLES[k]), float(value), in_cri)
            rows.append({**row, "edition": edition})
    if found_tm30:
        row = _row("Rf", found_tm30.rf, in_tm30)
        rows.append({**row, "edition": tm30.EDITION_RF})
        rows.append(_row("Rg", found_tm30.rg, in_tm30))
    for similarity in (in_ssi, *further):
        if similarity["value"] is not None:
            rows.append(_row(similarity["name"], similarity["value"], similarity))
    if found_tlci:
        rows.append(_row("TLCI", found_tlci.qa, in_tlci))

    return {
        "light": {"name": reading.name, **white(reading.xy)},
        "cri": in_cri,
        "tm30": in_tm30,
        "ssi": in_ssi,
        "tlci": in_tlci,
        "numbers": rows,
        "curves": curves_plain(
            spectrum,
            rated(lambda: ssi.matching_reference(spectrum, curves.FINE))[0],
            named,
        ),
        **flags_plain(verdict.judge(reading.duv, found_cri, found_tm30, found_tlci, found_ssi)),
        "warnings": warnings_of(reading, spectrum),
    }
