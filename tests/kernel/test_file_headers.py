"""What a file says beside its spectrum: 40 forms of our own in eight languages, 40 damaged ones.

The forms are invented; no instrument writes them. The light in each is an equal-energy spectrum
(CIE 15:2018: x = y = 1/3) unless it says otherwise.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any
from xml.sax.saxutils import escape, quoteattr

import numpy as np
import pytest

from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.desk import answer
from evenkelvin.interchange.moments import read_moment

NM = list(range(380, 781, 5))


def samples(delimiter: str = ";", mark: str = ".") -> str:
    return "\n".join(f"{nm}{delimiter}{0.5}".replace(".", mark) for nm in NM)


def read(text: str, **choices: str) -> dict[str, Any]:
    found = answer({"ask": "import", "text": text, "file_name": "a.csv", "choices": choices})
    assert "problem" not in found
    return found


def the_one(text: str, **choices: str) -> dict[str, Any]:
    found = read(text, **choices)
    assert found["problems"] == []
    assert len(found["spectra"]) == 1
    one: dict[str, Any] = found["spectra"][0]
    assert one["wavelengths_nm"] == NM
    return one


HOBART = {"latitude": -42.88, "longitude": 147.33}
DAY = {"date": "2026-11-25", "time": "17:10:05"}
FORMS: list[tuple[str, str, dict[str, Any]]] = [
    # English
    ("Title: Bow\nIlluminance: 1234.5 lx\nCCT: 5455 K\nDuv: -0.0044\n", ";",
     {"name": "Bow", "illuminance_lx": 1234.5}),
    ("# Measured: 2026-11-25 17:10:05\n# Lux = 88\n# x = 0.3333\n# y = 0.3334\n", ",",
     {**DAY, "illuminance_lx": 88}),
    ("Name\tBow\nLux\t1,234.5\nTime\t5:10:05 PM\nDate\tNov 25, 2026\n", "\t",
     {"name": "Bow", "illuminance_lx": 1234.5, **DAY}),
    ("Illuminance (fc);12.5\nIntegration time;200 ms\n", ";",
     {"illuminance_fc": 12.5, "integration_s": 0.2}),
    ("Light exposure: 12.25 lx·s\nTimestamp: 2026-11-25T17:10:05+11:00\n", ";",
     {"exposure_lx_s": 12.25, **DAY, "zone": "+11:00"}),
    ("Date;Time;Lux;Title\n2026-11-25;17:10:05;640;Stern\nnm;value\n", ";",
     {**DAY, "illuminance_lx": 640, "name": "Stern"}),
    ("GPS position: 42.88 S 147.33 E\nPlace: Engine room\n", ";",
     {"position": HOBART, "place": "Engine room"}),
    ("Latitude;-42.88\nLongitude;147.33\nCIE 1931 x;0.3333\nCIE 1931 y;0.3333\n", ";",
     {"position": HOBART}),
    # German
    ("Titel: Bug\nBeleuchtungsstärke: 1.234,5 lx\nÄhnlichste Farbtemperatur: 5455 K\n", ";",
     {"name": "Bug", "illuminance_lx": 1234.5}),
    ("Datum;25.11.2026\nUhrzeit;17:10:05 Uhr\nBeleuchtungsstärke [lx];88,5\n", ";",
     {**DAY, "illuminance_lx": 88.5}),
    ("Bezeichnung\tBug\nBelichtung\t12,25 lx s\nIntegrationszeit\t0,2 s\n", "\t",
     {"name": "Bug", "exposure_lx_s": 12.25, "integration_s": 0.2}),
    ("Zeitpunkt: 25. November 2026, 17:10:05\nBreite: 42,88 S\nLänge: 147,33\nOrt: Deck 3\n", ";",
     {**DAY, "position": HOBART, "place": "Deck 3"}),
    ("gemessen am: Mittwoch, 25.11.2026 um 17.10 Uhr\nFarbort xy: 0,3333; 0,3334\n", "\t",
     {"date": "2026-11-25", "time": "17:10:00"}),
    # French
    ("Titre : Proue\nÉclairement : 1 234,5 lx\nTempérature de couleur : 5455 K\n", ";",
     {"name": "Proue", "illuminance_lx": 1234.5}),
    ("Date;25/11/2026\nHeure;17h10\nÉclairement (lux);88,5\n", ";",
     {"date": "2026-11-25", "time": "17:10:00", "illuminance_lx": 88.5}),
    ("Date et heure = 25 novembre 2026 à 17:10:05\nTemps d'intégration = 200 ms\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Exposition lumineuse;12,25 lx.s\nLieu;Pont 3\nCoordonnées;42,88 sud 147,33 est\n", ";",
     {"exposure_lx_s": 12.25, "place": "Pont 3", "position": HOBART}),
    ("Mesure: Proue\nChromaticité: 0,3333 / 0,3334\nLux: 640\n", ";",
     {"name": "Proue", "illuminance_lx": 640}),
    # Spanish
    ("Título: Proa\nIluminancia: 1234,5 lx\nTemperatura de color: 5455 K\n", ";",
     {"name": "Proa", "illuminance_lx": 1234.5}),
    ("Fecha;25/11/2026\nHora;17:10:05\nIluminancia (lx);88,5\nLugar;Cubierta 3\n", ";",
     {**DAY, "illuminance_lx": 88.5, "place": "Cubierta 3"}),
    ("Fecha y hora: 25 de noviembre de 2026 17:10:05\nTiempo de integración: 200 ms\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Exposición luminosa\t12,25 lux·s\nCoordenadas\t42,88 sur, 147,33 este\n", "\t",
     {"exposure_lx_s": 12.25, "position": HOBART}),
    ("Medición;Proa\nLatitud;-42,88\nLongitud;147,33\nLux;640\n", ";",
     {"name": "Proa", "position": HOBART, "illuminance_lx": 640}),
    # Italian
    ("Titolo: Prua\nIlluminamento: 1.234,5 lx\nTemperatura di colore: 5455 K\n", ";",
     {"name": "Prua", "illuminance_lx": 1234.5}),
    ("Data;25/11/2026\nOra;17:10:05\nIlluminamento (lx);88,5\nLuogo;Ponte 3\n", ";",
     {**DAY, "illuminance_lx": 88.5, "place": "Ponte 3"}),
    ("Data e ora: 25 nov 2026 17:10:05\nTempo di integrazione: 200 ms\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Esposizione luminosa\t12,25 lx·s\nPosizione\t42.88 sud 147.33 est\n", "\t",
     {"exposure_lx_s": 12.25, "position": HOBART}),
    # Portuguese
    ("Título: Proa\nIluminância: 1234,5 lx\nTemperatura de cor: 5455 K\n", ";",
     {"name": "Proa", "illuminance_lx": 1234.5}),
    ("Data;25/11/2026\nHora;17h10\nIluminância [lux];88,5\nLocal;Convés 3\n", ";",
     {"date": "2026-11-25", "time": "17:10:00", "illuminance_lx": 88.5, "place": "Convés 3"}),
    ("Data e hora: 25 de novembro de 2026, 17:10:05\nTempo de integração: 0,2 s\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Exposição luminosa\t12,25 lx·s\nPosição\t42,88 sul; 147,33 leste\n", "\t",
     {"exposure_lx_s": 12.25, "position": HOBART}),
    # Dutch
    ("Titel: Boeg\nVerlichtingssterkte: 1.234,5 lx\nKleurtemperatuur: 5455 K\n", ";",
     {"name": "Boeg", "illuminance_lx": 1234.5}),
    ("Datum;25-11-2026\nTijd;17:10:05\nVerlichtingssterkte (lx);88,5\nPlaats;Dek 3\n", ";",
     {**DAY, "illuminance_lx": 88.5, "place": "Dek 3"}),
    ("Datum en tijd: 25 november 2026 om 17:10:05\nIntegratietijd: 200 ms\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Belichting\t12,25 lx·s\nPositie\t42,88 zuid 147,33 oost\nNaam\tBoeg\n", "\t",
     {"exposure_lx_s": 12.25, "position": HOBART, "name": "Boeg"}),
    # Polish
    ("Tytuł: Dziób\nNatężenie oświetlenia: 1 234,5 lx\nTemperatura barwowa: 5455 K\n", ";",
     {"name": "Dziób", "illuminance_lx": 1234.5}),
    ("Data;25.11.2026\nGodzina;17:10:05\nNatężenie oświetlenia (lx);88,5\n", ";",
     {**DAY, "illuminance_lx": 88.5}),
    ("Data i godzina: 25 listopada 2026 17:10:05\nCzas całkowania: 200 ms\n", "\t",
     {**DAY, "integration_s": 0.2}),
    ("Naświetlenie\t12,25 lx·s\nWspółrzędne\t-42,88; 147,33\nMiejsce\tPokład 3\n", "\t",
     {"exposure_lx_s": 12.25, "position": HOBART, "place": "Pokład 3"}),
    # Below the spectrum, in the order that nobody expects.
    ("", ";", {"illuminance_lx": 1234.5, **DAY, "name": "Bow"}),
]  # fmt: skip
BELOW = "\nTime;17:10:05\nDate;2026/11/25\nLux;1234.5\nTitle;Bow\n"


@pytest.mark.parametrize(("head", "delimiter", "told"), FORMS)
def test_a_header_is_read_to_the_digit(head: str, delimiter: str, told: dict[str, Any]) -> None:
    mark = "," if "," in head and delimiter != "," and "1,234.5" not in head else "."
    one = the_one(head + samples(delimiter, mark) + ("" if head else BELOW))
    stated = dict(one["stated"])
    assert stated.pop("title", None) == told.get("name")
    if "name" in told:
        assert one["name"] == told["name"]
    wanted = {name: value for name, value in told.items() if name != "name"}
    assert stated == wanted
    assert not [note for note in one["understood"]["notes"] if "scatter" in note]


def test_there_are_forty_forms() -> None:
    assert len(FORMS) == 40
    assert len(DAMAGED) == 40


#: What is wrong, and what the answer must not take from it.
DAMAGED: list[tuple[str, str]] = [
    ("Lux: 12..5", "illuminance_lx"),
    ("Lux: 1,2,3", "illuminance_lx"),
    ("Lux: about 100", "illuminance_lx"),
    ("Lux: 100 cd", "illuminance_lx"),
    ("Lux: -5 lx", "illuminance_lx"),
    ("Lux: 1e12 lx", "illuminance_lx"),
    ("Lux: 0", "illuminance_lx"),
    ("Lux: ?", "illuminance_lx"),
    ("Lux;100;200", "illuminance_lx"),
    ("Lux: 100\nIlluminance: 120 lx", "illuminance_lx"),
    ("Beleuchtungsstärke: 1.23.4 lx", "illuminance_lx"),
    ("Éclairement: 12 W/m²", "illuminance_lx"),
    ("Iluminancia: 100 20 lx", "illuminance_lx"),
    ("Illuminamento: n/a 1", "illuminance_lx"),
    ("Natężenie oświetlenia: 10O lx", "illuminance_lx"),
    ("Light exposure: 5 cd·s", "exposure_lx_s"),
    ("Belichtung: 1e9 lx·s", "exposure_lx_s"),
    ("Exposition lumineuse: -1 lx·s", "exposure_lx_s"),
    ("Integration time: 200", "integration_s"),
    ("Integrationszeit: 200 m", "integration_s"),
    ("Temps d'intégration: -1 ms", "integration_s"),
    ("Date: 2026-13-01", "date"),
    ("Date: 31.02.2026", "date"),
    ("Datum: 45.11.2026", "date"),
    ("Fecha: 25 de foo de 2026", "date"),
    ("Date: 2026-11-25 x7", "date"),
    ("Date: 25.11.1826", "date"),
    ("Time: 25:10", "time"),
    ("Uhrzeit: 17:75", "time"),
    ("Heure: 13:10 PM", "time"),
    ("Hora: 17", "time"),
    ("Time: 17:10\nTime: 17:20", "time"),
    ("Latitude: 95\nLongitude: 5", "position"),
    ("Latitude: 42 S 3 N\nLongitude: 5", "position"),
    ("Position: 42.88 S", "position"),
    ("Koordinaten: 42,88 N 9,9 O", "position"),
    ("Coordonnées: 91 N 3 E", "position"),
    ("CCT: 32 K", "cct_K"),
    ("Duv: 3.2 %", "duv"),
    ("CIE x: 1.7", "x"),
]  # fmt: skip


@pytest.mark.parametrize(("head", "field"), DAMAGED)
def test_a_damaged_header_is_said_by_its_line_and_the_spectrum_stays(head: str, field: str) -> None:
    found = read(f"{head}\n{samples()}")
    assert [one["wavelengths_nm"] for one in found["spectra"]] == [NM]
    assert field not in found["spectra"][0]["stated"]
    assert found["problems"]
    assert all(problem["line"] in (1, 2) for problem in found["problems"])
    assert all("left out" in problem["message"] for problem in found["problems"])


def statements(head: str) -> list[tuple[str, str]]:
    """The labels and values of a header of :data:`FORMS`, whatever its columns are."""
    lines = [line.lstrip("# ") for line in head.splitlines()]
    if lines[-1] == "nm;value":
        return list(zip(*(line.split(";") for line in lines[:-1]), strict=True))
    pairs = [re.split(r"\s*[:=]\s*|\t|;", line, maxsplit=1) for line in lines if line]
    # Some values hold a colon of their own, but no label holds a semicolon or a tab.
    return [
        (label, value)
        for line, (label, value) in zip(lines, pairs, strict=False)
        for label, value in [
            re.split(r"\t|;", line, maxsplit=1)
            if re.match(r"[^:=]+?(\t|;)", line)
            else (label, value)
        ]
    ]


def in_tm27(pairs: list[tuple[str, str]]) -> str:
    """IES TM-27-14: what is said stands in the header's comments."""
    said = escape("\n".join(f"{label}: {value}" for label, value in pairs))
    data = "".join(f'<SpectralData wavelength="{nm}">0.5</SpectralData>' for nm in NM)
    return (
        f"<IESTM2714><Header><Comments>{said}</Comments></Header><SpectralDistribution>"
        f"<SpectralQuantity>relative</SpectralQuantity>{data}</SpectralDistribution></IESTM2714>"
    )


def in_cgats(pairs: list[tuple[str, str]], comments: bool) -> str:
    """CGATS.17: as keywords of its own, or as comments."""
    said = "\n".join(
        f"# {label}: {value}" if comments else f'{label.replace(" ", "_")} "{value}"'
        for label, value in pairs
    )
    rows = "\n".join(f"{nm} 0.5" for nm in NM)
    return (
        f'CGATS.17\nMEASUREMENT "radiance of a light"\n{said}\nBEGIN_DATA_FORMAT\nSPECTRAL_NM '
        f"SPECTRAL_VALUE\nEND_DATA_FORMAT\nBEGIN_DATA\n{rows}\nEND_DATA\n"
    )


def in_cxf(pairs: list[tuple[str, str]], tags: bool) -> str:
    """CxF3 (ISO 17972-1): as tags of the object, or in its comment."""
    said = (
        "<TagCollection>"
        + "".join(f"<Tag Name={quoteattr(a)} Value={quoteattr(b)}/>" for a, b in pairs)
        + "</TagCollection>"
        if tags
        else f"<Comment>{escape('; '.join(f'{a} = {b}' for a, b in pairs))}</Comment>"
    )
    return (
        f'<CxF><Resources><ObjectCollection><Object Id="o1">{said}<ColorValues>'
        f'<EmissiveSpectrum StartWL="380" Increment="5">{"0.5 " * len(NM)}</EmissiveSpectrum>'
        "</ColorValues></Object></ObjectCollection></Resources></CxF>"
    )


FORMATS: dict[str, Callable[[list[tuple[str, str]]], str]] = {
    "TM-27 comments": in_tm27,
    "CGATS comments": lambda pairs: in_cgats(pairs, comments=True),
    "CGATS keywords": lambda pairs: in_cgats(pairs, comments=False),
    "CxF3 tags": lambda pairs: in_cxf(pairs, tags=True),
    "CxF3 comment": lambda pairs: in_cxf(pairs, tags=False),
}


@pytest.mark.parametrize("written", FORMATS)
@pytest.mark.parametrize(("head", "told"), [(head or BELOW[1:], told) for head, _, told in FORMS])
def test_the_same_header_is_read_in_every_format(
    written: str, head: str, told: dict[str, Any]
) -> None:
    one = the_one(FORMATS[written](statements(head)))
    stated = dict(one["stated"])
    assert stated.pop("title", None) == told.get("name")
    assert stated == {name: value for name, value in told.items() if name != "name"}
    assert not [note for note in one["understood"]["notes"] if "scatter" in note]


@pytest.mark.parametrize("written", FORMATS)
@pytest.mark.parametrize(("head", "field"), DAMAGED)
def test_the_same_damage_is_said_in_every_format(written: str, head: str, field: str) -> None:
    found = read(FORMATS[written](statements(head)))
    assert [one["wavelengths_nm"] for one in found["spectra"]] == [NM]
    assert field not in found["spectra"][0]["stated"]
    assert found["problems"]
    assert all("left out" in problem["message"] for problem in found["problems"])


def test_elements_of_their_own_are_read_by_their_names() -> None:
    text = in_tm27([]).replace(
        "<Comments></Comments>",
        "<Description>Bow</Description><Illuminance unit='klx'>1.2345</Illuminance>"
        "<ColorTemperature>5455</ColorTemperature><Place>Deck 3</Place>"
        "<DocumentCreationDate>2020-01-01T00:00:00Z</DocumentCreationDate>"
        "<Comments>The sun, low. Seen: nothing, x of y.</Comments>",
    )
    one = the_one(text)
    assert one["stated"] == {"title": "Bow", "illuminance_lx": 1234.5, "place": "Deck 3"}


def test_a_cxf_object_has_its_own_date_and_the_colour_beside_its_spectrum_is_compared() -> None:
    whole = in_cxf([("Lux", "640")], tags=True)
    for x, beyond in ((0.3333, False), (0.35, True)):
        colour = f"<ColorEmissiveCIExyY><x>{x}</x><y>0.3333</y><Y>1</Y></ColorEmissiveCIExyY>"
        text = whole.replace("</ColorValues>", f"{colour}</ColorValues>").replace(
            '<Object Id="o1">',
            '<Object Id="o1" Name="Bow"><CreationDate>2026-11-25T17:10:05+11:00</CreationDate>',
        )
        one = the_one(text)
        assert one["stated"] == {"title": "Bow", "illuminance_lx": 640, **DAY, "zone": "+11:00"}
        assert bool([note for note in one["understood"]["notes"] if "scatter" in note]) == beyond
        assert "readings" not in read(text)
    objects = "".join(
        f'<Object Name="{n}"><TagCollection><Tag Name="Lux" Value="{n}00"/></TagCollection>'
        f"<ColorValues><ColorEmissiveCIExyY><x>0.33</x><y>0.34</y></ColorEmissiveCIExyY>"
        "</ColorValues></Object>"
        for n in (1, 2)
    )
    found = read(
        f"<CxF><FileInformation><Comment>Place: deck</Comment></FileInformation>{objects}</CxF>"
    )
    assert [(one["name"], one["illuminance_lx"]) for one in found["readings"]] == [
        ("1", 100),
        ("2", 200),
    ]
    assert [one["stated"] for one in found["readings"]] == [{"place": "deck"}] * 2


def test_the_records_of_a_cgats_table_have_figures_of_their_own() -> None:
    head = 'CGATS.17\nCREATED "2026-11-25"\nPLACE "deck"\nLUX 5\nBEGIN_DATA_FORMAT\n'
    fields = f"SAMPLE_NAME LUX TIME {' '.join(f'SPECTRAL_{nm}' for nm in NM)}"
    rows = "\n".join(f'"{n}" {n}00 17:1{n} {"0.5 " * len(NM)}' for n in (1, 2))
    table = "{}{}\nEND_DATA_FORMAT\nBEGIN_DATA\n{}\nEND_DATA\n"
    found = read(table.format(head, fields, rows), quantity="light")
    assert [one["stated"] for one in found["spectra"]] == [
        {"title": f"{n}", "date": "2026-11-25", "place": "deck", "time": f"17:1{n}:00",
         "illuminance_lx": 100 * n}
        for n in (1, 2)
    ]  # fmt: skip
    assert "for 2 spectra" in found["problems"][0]["message"]
    colours = table.format(
        head.replace("LUX 5\n", ""), "SAMPLE_NAME XYY_X XYY_Y XYY_CAPY LUX TIME",
        '"key" 0.33 0.34 1 640 17:10\n"fill" 0.36 0.37 1 88 17:12',
    )  # fmt: skip
    readings = read(colours)["readings"]
    assert [(one["name"], one["x"], one["illuminance_lx"]) for one in readings] == [
        ("key", 0.33, 640),
        ("fill", 0.36, 88),
    ]
    assert readings[1]["stated"] == {"date": "2026-11-25", "place": "deck", "time": "17:12:00"}


def test_each_table_of_a_cgats_file_has_what_stands_above_it_last() -> None:
    rows = "\n".join(f"{nm} 0.5" for nm in NM)
    form = "BEGIN_DATA_FORMAT\nSPECTRAL_NM SPECTRAL_VALUE\nEND_DATA_FORMAT\n"
    part = '{}DESCRIPTOR "{}"\nLUX {}\n' + form + f"BEGIN_DATA\n{rows}\nEND_DATA\n"
    text = "CGATS.17\n" + part.format('PLACE "deck"\n', "Bow", 640) + part.format("", "Stern", 88)
    found = read(text, quantity="light")
    assert found["problems"] == []
    assert [one["stated"] for one in found["spectra"]] == [
        {"place": "deck", "title": "Bow", "illuminance_lx": 640},
        {"place": "deck", "title": "Stern", "illuminance_lx": 88},
    ]


def test_the_order_of_day_and_month_is_asked_where_it_is_open() -> None:
    head = "Date: 05/06/2026\n"
    found = read(head + samples())
    [question] = [one for one in found["questions"] if one["field"] == "date"]
    assert (question["field"], question["taken"]) == ("date", "day_first")
    assert found["spectra"][0]["stated"]["date"] == "2026-06-05"
    assert read(head + samples(), date="month_first")["spectra"][0]["stated"]["date"] == (
        "2026-05-06"
    )
    sure = read("Date: 25/06/2026\n" + samples())["questions"]
    assert "date" not in [one["field"] for one in sure]


@pytest.mark.parametrize("head", ["Lux: 100 200", "lux 100 200", "Illuminance: 100 200 lx"])
def test_two_numbers_or_one_is_asked(head: str) -> None:
    found = read(f"{head}\n{samples()}")
    [question] = [one for one in found["questions"] if one["field"] == "grouped"]
    assert (question["taken"], question["options"]) == ("apart", ["apart", "together"])
    assert "several values" in found["problems"][0]["message"]
    assert found["spectra"][0]["stated"] == {}
    whole = read(f"{head}\n{samples()}", grouped="together")
    assert whole["problems"] == []
    assert whole["spectra"][0]["stated"] == {"illuminance_lx": 100200}
    # Nobody is asked about what is plain.
    for plain, lux in (("Lux: 1 234", 1234), ("Lux: 100 200,5", 100200.5)):
        sure = read(f"{plain}\n{samples()}")
        assert sure["spectra"][0]["stated"] == {"illuminance_lx": lux}
        assert "grouped" not in [one["field"] for one in sure["questions"]]


@pytest.mark.parametrize(
    ("said", "beyond"),
    [
        ("CCT: 3200 K", False),
        ("CCT: 3230 K", False),
        ("CCT: 3600 K", True),
        ("x: 0.4234\ny: 0.3990", False),
        ("x: 0.4334\ny: 0.3990", True),
        ("CCT: 3200 K\nDuv: 0.02", True),
        ("u': 0.2438\nv': 0.5170", False),
        ("u': 0.2538\nv': 0.5170", True),
    ],
)
def test_a_colour_that_is_not_the_spectrum_s_is_said(said: str, beyond: bool) -> None:
    """A black body of 3200 K: x 0.4234 y 0.3990, u′ 0.2438 v′ 0.5170 (from memory)."""
    body = planck(np.array(NM, dtype=float), 3200.0)
    lines = "\n".join(f"{nm};{value / body.max():.6f}" for nm, value in zip(NM, body, strict=True))
    one = read(f"{said}\n{lines}")["spectra"][0]
    notes = [note for note in one["understood"]["notes"] if "scatter" in note]
    assert bool(notes) == beyond
    if beyond:
        assert "The spectrum is used" in notes[0]
    assert one["white"]["cct_K"] == pytest.approx(3200, abs=3)


def test_spectra_beside_each_other_have_values_of_their_own() -> None:
    head = "Lux;640;88\nCCT;5455;5455\nDate;2026-11-25\nnm;key;fill\n"
    rows = "\n".join(f"{nm};0.5;0.6" for nm in NM)
    found = read(head + rows)
    assert [one["stated"] for one in found["spectra"]] == [
        {"illuminance_lx": 640, "date": "2026-11-25"},
        {"illuminance_lx": 88, "date": "2026-11-25"},
    ]
    assert found["problems"] == []
    once = read("Lux;640\nDate;2026-11-25\nnm;key;fill\n" + rows)
    assert "for 2 spectra" in once["problems"][0]["message"]
    assert [one["stated"] for one in once["spectra"]] == [{"date": "2026-11-25"}] * 2


def test_spectra_below_each_other_have_headers_of_their_own() -> None:
    text = "\n\n".join(f"Title;{n}\nLux;{100 * n}\n{samples()}" for n in (1, 2))
    found = read(text)
    assert [one["stated"]["illuminance_lx"] for one in found["spectra"]] == [100, 200]
    assert found["problems"] == []


def test_spectra_in_rows_have_their_columns() -> None:
    head = ";".join(["name", "lux", "date", "time", *map(str, NM)])
    rows = [
        ";".join([name, lux, "2026-11-25", time, *["0.5"] * len(NM)])
        for name, lux, time in (("key", "640", "17:10"), ("fill", "88", "17:12"))
    ]
    found = read("\n".join([head, *rows]))
    for one in found["spectra"]:
        assert one["stated"].pop("title") == one["name"]
    assert [(one["name"], one["stated"]) for one in found["spectra"]] == [
        ("key", {"illuminance_lx": 640, "date": "2026-11-25", "time": "17:10:00"}),
        ("fill", {"illuminance_lx": 88, "date": "2026-11-25", "time": "17:12:00"}),
    ]


def test_readings_in_a_table_have_time_and_place() -> None:
    table = "name;x;y;date;time;place\nkey;0.33;0.34;25.11.2026;17:10;deck\n"
    [reading] = read(table)["readings"]
    assert reading["stated"] == {"date": "2026-11-25", "time": "17:10:00", "place": "deck"}
    single = "Title: Key\nCCT: 3200 K\nLux: 640 lx\nTime: 17:10\n"
    [reading] = read(single)["readings"]
    assert (reading["name"], reading["cct_K"], reading["illuminance_lx"]) == ("Key", 3200, 640)
    assert reading["stated"] == {"time": "17:10:00"}


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("20261125T171005Z", ("2026-11-25", "17:10:05", "+00:00")),
        ("2026-11-25 17:10 UTC+10:30", ("2026-11-25", "17:10:00", "+10:30")),
        ("2026年11月25日 17時10分", ("2026-11-25", "17:10:00", None)),
        ("12:05 am", (None, "00:05:00", None)),
        ("12:05 p.m.", (None, "12:05:00", None)),
        ("25.11.26", ("2026-11-25", None, None)),
        ("11/25/2026 5:10 PM", ("2026-11-25", "17:10:00", None)),
    ],
)
def test_moments(text: str, told: tuple[str | None, ...]) -> None:
    moment = read_moment(text, "day_first")
    assert moment is not None
    assert tuple(moment[:3]) == told
