"""Reading spectra from any file, and writing them."""

from __future__ import annotations

import base64
import math

import numpy as np
import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from evenkelvin import desk
from evenkelvin.colorimetry.spectrum import LOWEST_PEAK
from evenkelvin.interchange import contents as bounds
from examples import examples
from kernel import fuzz_interchange

NM = list(range(380, 781, 5))
KEY = [round(3.0 * math.exp(-(((nm - 560) / 90.0) ** 2)) + 0.01, 5) for nm in NM]
FILL = [round(2.0 * value, 5) for value in KEY]
GEL = [round(0.1 + 0.8 * (nm - 380) / 400, 5) for nm in NM]


def comma(number: float) -> str:
    return str(number).replace(".", ",")


def read(raw: bytes | str, **more: object) -> dict:
    body = (
        {"bytes_base64": base64.b64encode(raw).decode()}
        if isinstance(raw, bytes)
        else {"text": raw}
    )
    return desk.answer({"ask": "import", "file_name": "dusk.txt", **body, **more})


def down(delimiter: str, head: str, *columns: list[float], mark: str = ".") -> str:
    rows = zip(NM, *columns, strict=True)
    body = [delimiter.join(str(cell).replace(".", mark) for cell in row) for row in rows]
    return "\n".join([head, *body])


def the_one(answer: dict) -> dict:
    assert answer["problems"] == []
    assert len(answer["spectra"]) == 1
    return answer["spectra"][0]


@pytest.mark.parametrize(
    "text",
    [
        down(",", "wavelength,value", KEY),
        down(";", "Wellenlänge [nm];Wert", KEY, mark=","),
        down(";", "nm;v", KEY),
        down("\t", "nm\tvalue", KEY, mark=","),
        down("|", "nm|value", KEY),
        down(" ", "nm value", KEY),
        down("   ", "nm   value", KEY, mark=","),
        down(", ", "nm, value", KEY),
        down(",", "nm,value", KEY, mark=","),
        "nm,value\n" + "\n".join(f'"{nm},0","{comma(v)}"' for nm, v in zip(NM, KEY, strict=True)),
        "\n".join(f"{nm}nm: {v}" for nm, v in zip(NM, KEY, strict=True)),
        "\r\n".join(f"{nm};{v:e}" for nm, v in zip(NM, KEY, strict=True)),
        "\r".join(f"{nm};{v}" for nm, v in zip(NM, KEY, strict=True)),
        "# numpy\n# nm power\n" + down(" ", "", KEY),
        "wavelength;" + ";".join(map(str, NM)) + "\nvalue;" + ";".join(map(comma, KEY)),
        ",".join(f"SPD_{nm}nm" for nm in NM) + "\n" + ",".join(map(str, KEY)),
        "\n".join(f"{i},{nm},{v}" for i, (nm, v) in enumerate(zip(NM, KEY, strict=True))),
    ],
)
def test_one_spectrum_is_read_from_every_way_of_writing_it(text: str) -> None:
    found = the_one(read(text))
    assert found["wavelengths_nm"] == NM
    assert found["values"] == pytest.approx(KEY, rel=1e-6)
    assert found["quantity"] == "light"


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "latin-1"]
)
def test_every_encoding_is_read(encoding: str) -> None:
    text = down(";", "Wellenlänge [nm];Fülllicht", KEY, mark=",")
    found = the_one(read(text.encode(encoding)))
    assert found["name"] == "Fülllicht"
    assert found["values"] == KEY


@pytest.mark.parametrize(
    "heading",
    [
        "Longueur d'onde (nm)",
        "Longitud de onda [nm]",
        "Lunghezza d’onda, nm",
        "波長 (nm)",
        "Длина волны, нм",
        "λ / nm",
    ],
)
def test_headings_in_any_language_name_the_lights_beside_them(heading: str) -> None:
    text = "Gerät;Nr. 7\nDatum;12.03.2026\n\n" + down(";", f"{heading};Key;Fill", KEY, FILL)
    answer = read(text.encode())
    assert [found["name"] for found in answer["spectra"]] == ["Key", "Fill"]
    assert answer["spectra"][1]["values"] == FILL


def test_units_come_from_a_bracket_or_a_row_of_units() -> None:
    bracket = the_one(read(down(";", "nm;Key [W/m²/nm]", KEY)))
    row = the_one(read(down(";", "wavelength;Key\nnm;W/m²/nm", KEY)))
    assert (
        (bracket["name"], bracket["understood"]["unit"])
        == (row["name"], row["understood"]["unit"])
        == ("Key", "W/m²/nm")
    )


@pytest.mark.parametrize(
    ("heading", "factor", "asks"),
    [("Å", 10, False), ("λ (Å)", 10, False), ("", 10, True), ("micron", 0.001, False)],
)
def test_angstrom_and_micrometre_become_nanometre(heading: str, factor: float, asks: bool) -> None:
    rows = [f"{nm * factor:.6g};{v}" for nm, v in zip(NM, KEY, strict=True)]
    answer = read("\n".join([f"{heading};Key", *rows]))
    assert the_one(answer)["wavelengths_nm"] == NM
    assert ("wavelength_unit" in [q["field"] for q in answer["questions"]]) is asks


def test_a_unit_that_cannot_be_is_questioned() -> None:
    rows = [f"{nm * 10};{v}" for nm, v in zip(NM, KEY, strict=True)]
    answer = read("\n".join(["wavelength (nm);Key", *rows]))
    assert answer["questions"][0]["taken"] == "angstrom"
    assert the_one(answer)["wavelengths_nm"] == NM


def test_float_noise_on_a_fine_grid_is_taken_off() -> None:
    fine = np.arange(380.0, 780.1, 0.4)
    noisy = fine.astype(np.float32).astype(float)
    text = "\n".join(f"{nm!r}\t{v!r}" for nm, v in zip(noisy.tolist(), fine.tolist(), strict=True))
    found = the_one(read("nm\tKey\n" + text))
    assert found["wavelengths_nm"] == [round(nm, 1) for nm in fine.tolist()]


def test_falling_and_repeated_wavelengths_are_put_right_and_said() -> None:
    rows = [f"{nm};{v}\n{nm};{v}" for nm, v in zip(NM[::-1], KEY[::-1], strict=True)]
    found = the_one(read("\n".join(rows)))
    assert (found["wavelengths_nm"], found["values"]) == (NM, KEY)
    assert "long to short" in found["understood"]["notes"][0]
    assert "repeated" in found["understood"]["notes"][1]


@pytest.mark.parametrize(
    ("choice", "more"), [({}, 0), ({"repeated": "last"}, 1), ({"repeated": "mean"}, 0.5)]
)
@pytest.mark.parametrize("way", [1, -1])
def test_which_of_two_values_for_a_wavelength_holds_is_asked(
    way: int, choice: dict[str, str], more: float
) -> None:
    pairs = list(zip(NM, KEY, strict=True))[::way]
    answer = read("\n".join(f"{nm};{v}\n{nm};{v + 1}" for nm, v in pairs), choices=choice)
    assert the_one(answer)["values"] == pytest.approx([v + more for v in KEY])
    (question,) = answer["questions"]
    assert (question["field"], question["options"]) == ("repeated", ["first", "last", "mean"])
    assert f"such as {NM[0]} nm" in question["message"]


READINGS = [
    "name,x,y,CCT\n" + "".join(f"l{n},0.3{n},0.37,{3000 + 100 * n}\n" for n in range(1, 10)),
    "light;CCT (K);Duv\n" + "".join(f"l{n};{3000 + 100 * n};0,001\n" for n in range(1, 10)),
    "x y\n" + "".join(f"0.3{n} 0.37\n" for n in range(1, 10)),
    "CCT\tlux\n" + "".join(f"{2700 + 100 * n}\t{100 * n}\n" for n in range(1, 10)),
    "source,peak wavelength (nm),x,y\n"
    + "".join(f"l{n},{450 + n * n},0.3{n},0.37\n" for n in range(1, 10)),
]


@pytest.mark.parametrize("text", READINGS)
def test_a_table_with_columns_of_x_y_or_cct_is_readings(text: str) -> None:
    answer = read(text)
    assert (answer["spectra"], answer["problems"]) == ([], [])
    assert len(answer["readings"]) == 9


@pytest.mark.parametrize(
    "text",
    [
        "CCT;3020\nlux;900\n" + down(";", "nm;Key", KEY),
        "x,y\n" + down(",", "", KEY).lstrip(),
        down(";", "Wavelength (nm);x;y", KEY, KEY),
    ],
)
def test_a_spectrum_beside_x_y_or_cct_stays_a_spectrum(text: str) -> None:
    assert all(found["wavelengths_nm"] == NM for found in read(text)["spectra"])
    assert read(text)["spectra"]


def test_rows_in_no_order_are_sorted() -> None:
    order = np.random.default_rng(3).permutation(len(NM))
    found = the_one(read("nm;Key\n" + "\n".join(f"{NM[i]};{KEY[i]}" for i in order)))
    assert (found["wavelengths_nm"], found["values"]) == (NM, KEY)


def test_several_spectra_are_read_side_by_side_stacked_paired_and_across() -> None:
    side = read(down(";", "nm;Key;Fill", KEY, FILL))
    stacked = read(
        "Name;Key\n" + down(";", "nm;W", KEY) + "\n\nName;Fill\n" + down(";", "nm;W", FILL)
    )
    paired = read(
        "nm;Key;nm;Fill\n"
        + "\n".join(f"{a};{b};{a};{c}" for a, b, c in zip(NM, KEY, FILL, strict=True))
    )
    across = read(
        "Name;" + ";".join(f"{nm} nm" for nm in NM)
        + "\nKey;" + ";".join(map(comma, KEY)) + "\nFill;" + ";".join(map(comma, FILL))
    )  # fmt: skip
    for answer in (side, stacked, paired, across):
        assert [found["name"] for found in answer["spectra"]] == ["Key", "Fill"]
        assert [found["values"] for found in answer["spectra"]] == [KEY, FILL]


def test_percent_is_told_from_a_heading_or_asked() -> None:
    percent = [round(v * 25, 3) for v in KEY]
    said = read(down(";", "nm;Transmission %", percent))
    assert the_one(said)["quantity"] == "transmittance"
    assert the_one(said)["values"] == pytest.approx([v / 100 for v in percent])
    unsaid = read(down(";", "nm;Transmittance", percent))
    assert the_one(unsaid)["values"] == pytest.approx([v / 100 for v in percent])
    assert [q["field"] for q in unsaid["questions"]] == ["values"]
    refused = read(down(";", "nm;Transmittance", percent), choices={"values": "fraction"})
    assert "cannot add light" in refused["problems"][0]["message"]


def test_what_was_measured_is_asked_when_it_could_be_a_gel_and_a_choice_is_kept() -> None:
    text = down(";", "nm;a", [v / 4 for v in KEY])
    answer = read(text)
    assert the_one(answer)["quantity"] == "light"
    assert [q["field"] for q in answer["questions"]] == ["quantity"]
    again = read(text, choices={"quantity": "transmittance"})
    assert the_one(again)["quantity"] == "transmittance"


def test_a_damaged_line_is_named_and_the_rest_is_taken() -> None:
    lines = down(";", "nm;Key;Fill", KEY, FILL).splitlines()
    lines[20] = "48O;0.1;0.2"
    lines[30] = f"525;abc;{FILL[29]}"
    lines[40] = "58;0.3;0.4"
    answer = read("\n".join(lines))
    assert [len(found["values"]) for found in answer["spectra"]] == [78, 79]
    told = {problem["line"]: problem["message"] for problem in answer["problems"]}
    assert set(told) == {21, 31, 41}
    assert "“48O”" in told[21]
    assert "525 nm" in told[31]
    assert all(problem["file"] == "dusk.txt" for problem in answer["problems"])


def test_good_spectra_are_taken_beside_one_that_is_not() -> None:
    text = down(";", "nm;Key;Broken;Fill", KEY, [-v for v in KEY], FILL)
    answer = read(text)
    assert [found["name"] for found in answer["spectra"]] == ["Key", "Fill"]
    assert "Broken" in answer["problems"][0]["message"]


def test_a_spectrum_that_covers_too_little_is_refused_with_its_range() -> None:
    answer = read("nm;Key\n" + "\n".join(f"{nm};1" for nm in range(400, 501, 5)))
    assert answer["spectra"] == []
    assert "400–500 nm" in answer["problems"][0]["message"]


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b"PK\x03\x04....", "workbook"),
        (b"\x89PNG....", "picture"),
        (b"   \n", "empty"),
        (bytes(range(256)) * 4, "not a text file"),
        (b"hello\nworld", "No spectrum was found"),
        (b"<html><body>x</body></html>", "web page"),
        (b"<IESTM2714><Header>", "broken"),
        (b"1/cm;Key\n" + b"\n".join(b"%d;1" % n for n in range(4000, 7000, 50)), "wavenumber"),
        (b"0" * (bounds.MAX_BYTES + 1), "MB"),
        (b"1\n" * (bounds.MAX_LINES + 1), "lines"),
        (b"1;" * (bounds.MAX_COLUMNS + 1) + b"1", "columns"),
        ((b"1;" * 3000 + b"\n") * 200, "values"),
    ],
)
def test_a_file_that_cannot_be_read_says_why(raw: bytes, words: str) -> None:
    answer = read(raw)
    assert answer["spectra"] == []
    assert any(words in problem["message"] for problem in answer["problems"])


@pytest.mark.parametrize(
    "xml",
    [
        '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY b "c">]><IESTM2714>&b;</IESTM2714>',
        '<!DOCTYPE a SYSTEM "file:///etc/passwd"><CxF/>',
        "<IESTM2714>&b;</IESTM2714>",
        "<a>" * 40,
        "<a>" + "<b/>" * 100_001 + "</a>",
    ],
)
def test_xml_that_could_harm_is_refused_by_line(xml: str) -> None:
    answer = read(xml)
    assert answer["spectra"] == []
    assert answer["problems"][0]["line"] == 1


def test_readings_are_taken_where_a_file_holds_no_spectrum() -> None:
    answer = read("name;x;y;CCT;lux\nKey;0,4215;0,4022;3262;1200\nBad;0,9;0,9;;\nFill;;;3200;")
    told = [{k: v for k, v in each.items() if k != "white"} for each in answer["readings"]]
    assert told == [
        {
            "name": "Key", "line": 2, "x": 0.4215, "y": 0.4022, "illuminance_lx": 1200.0,
            "problem": None,
        },
        {"name": "Fill", "line": 4, "cct_K": 3200.0, "problem": None},
    ]  # fmt: skip
    assert answer["problems"][0]["line"] == 3


def test_what_a_file_holds_is_ready_for_use() -> None:
    """One question says what several used to: what a light is, what a gel does, what is wrong."""
    columns = "\n".join(f"{nm};{k};{g}" for nm, k, g in zip(NM, KEY, GEL, strict=True))
    light, gel = read(f"nm;key [W/m²/nm];amber [transmittance]\n{columns}")["spectra"]
    curve = {"wavelengths_nm": light["wavelengths_nm"], "values": light["values"]}
    assert light["white"] == desk.answer({"ask": "describe", "reading": {"spectrum": curve}})
    assert (light["gel"], light["problem"]) == (None, None)
    assert (gel["white"], gel["problem"]) == (None, None)
    only = "\n".join(f"{nm};{g}" for nm, g in zip(NM, GEL, strict=True))
    text = f"nm;amber [transmittance]\n{only}"
    (learned,) = desk.answer({"ask": "import_gel", "text": text})["gels"]
    assert gel["gel"]["gel"]["transmittance"] == learned["gel"]["transmittance"]
    (reading,) = read("name;x;y\nbench;0,4215;0,4022")["readings"]
    described = desk.answer({"ask": "describe", "reading": {"x": 0.4215, "y": 0.4022}})
    assert (reading["white"], reading["problem"]) == (described, None)
    (laser,) = read("name;x;y\nlaser;0,0800;0,8300")["readings"]
    assert laser["white"] is None
    assert "close to a single wavelength" in laser["problem"]["message"]


def test_one_reading_is_taken_from_labels_and_values() -> None:
    answer = read("x: 0.4215\ny: 0.4022\nCCT: 3262")
    assert answer["readings"][0]["x"] == 0.4215
    primes = read("u';v'\n0,2500;0,5200")
    assert primes["readings"][0]["x"] == pytest.approx(9 * 0.25 / (6 * 0.25 - 16 * 0.52 + 12))


CGATS = (
    'CGATS.17\nORIGINATOR "Night Ferry"\nDESCRIPTOR "transmittance of gels"\n'
    "BEGIN_DATA_FORMAT\nSAMPLE_ID SAMPLE_NAME {fields}\nEND_DATA_FORMAT\n"
    "BEGIN_DATA\n{records}\nEND_DATA\n"
)


def test_cgats_records_hold_wavelengths_in_their_field_names() -> None:
    text = CGATS.format(
        fields=" ".join(f"SPECTRAL_{nm}" for nm in NM),
        records='1 "Gel one" ' + " ".join(str(v / 4) for v in KEY) + " # a comment\n2 short 1",
    )
    answer = read(text)
    (found,) = answer["spectra"]
    assert (found["name"], found["quantity"]) == ("Gel one", "transmittance")
    assert found["values"] == [v / 4 for v in KEY]
    assert answer["problems"][0]["line"] == 9
    assert "83" in answer["problems"][0]["message"]


def test_cgats_percent_pairs_and_records_over_several_lines_are_read() -> None:
    pairs = " ".join("SPECTRAL_NM SPECTRAL_PCT" for _ in NM)
    record = "\n".join(f"{nm} {v}" for nm, v in zip(NM, KEY, strict=True))
    found = the_one(read(CGATS.format(fields=pairs, records=f'1 "Gel"\n{record}')))
    assert found["values"] == pytest.approx([v / 100 for v in KEY])
    column = "\n".join(f"{i} k {nm} {v}" for i, (nm, v) in enumerate(zip(NM, KEY, strict=True)))
    one = the_one(read(CGATS.format(fields="SPECTRAL_NM SPECTRAL_DEC", records=column),
                       choices={"quantity": "reflectance"}))  # fmt: skip
    assert (one["quantity"], one["values"]) == ("reflectance", KEY)


CXF = """<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core"><cc:Resources>
<cc:ObjectCollection><cc:Object Name="Key" Id="1"><cc:ColorValues>
{values}</cc:ColorValues></cc:Object></cc:ObjectCollection>
<cc:ColorSpecificationCollection><cc:ColorSpecification Id="s"><cc:MeasurementSpec>
<cc:WavelengthRange StartWL="380" Increment="5"/></cc:MeasurementSpec></cc:ColorSpecification>
</cc:ColorSpecificationCollection></cc:Resources></cc:CxF>"""


def test_cxf_spectra_are_placed_by_their_specification() -> None:
    numbers = " ".join(map(str, KEY))
    values = f'<cc:EmissiveSpectrum ColorSpecification="s">{numbers}</cc:EmissiveSpectrum>'
    found = the_one(read(CXF.format(values=values)))
    assert (found["name"], found["quantity"], found["understood"]["unit"]) == (
        "Key",
        "light",
        "W/m²/sr/nm",
    )
    assert (found["wavelengths_nm"], found["values"]) == (NM, KEY)


def test_cxf_without_a_step_is_questioned_and_points_are_read() -> None:
    numbers = " ".join(map(str, KEY))
    answer = read(CXF.format(
        values=f'<cc:TransmittanceSpectrum StartWL="380">{" ".join(["0.5"] * 36)}'
        "</cc:TransmittanceSpectrum>"
    ))  # fmt: skip
    assert answer["questions"][0] == {
        "field": "step",
        "message": "The file does not say how many nm its 36 samples are apart.",
        "options": ["1", "2", "5", "10", "20"],
        "taken": "10",
    }
    points = "".join(f'<cc:SpectralPoint WL="{nm}">{v}</cc:SpectralPoint>'
                     for nm, v in zip(NM, KEY, strict=True))  # fmt: skip
    custom = f'<cc:CustomSpectrum ColorSpecification="s">{points}</cc:CustomSpectrum>'
    assert the_one(read(CXF.format(values=custom)))["values"] == KEY
    lost = read(CXF.format(values=f"<cc:EmissiveSpectrum>{numbers}</cc:EmissiveSpectrum>"))
    assert "StartWL" in lost["problems"][0]["message"]


def test_a_damaged_xml_sample_is_named_by_line() -> None:
    rows = [f'<SpectralData wavelength="{n}">{v}</SpectralData>'
            for n, v in zip(NM, KEY, strict=True)]  # fmt: skip
    rows[3] = '<SpectralData wavelength="395">none</SpectralData>'
    text = "<IESTM2714><SpectralDistribution><SpectralQuantity>radiance</SpectralQuantity>\n"
    answer = read(text + "\n".join(rows) + "</SpectralDistribution></IESTM2714>")
    assert len(answer["spectra"][0]["values"]) == len(NM) - 1
    assert answer["problems"][0]["line"] == 5


def test_a_wavelength_that_is_none_is_refused() -> None:
    rows = [f'<SpectralData wavelength="{n}">1</SpectralData>' for n in (*NM, "1e308")]
    text = "<IESTM2714><SpectralDistribution><SpectralQuantity>radiance</SpectralQuantity>"
    answer = read(text + "\n".join(rows) + "</SpectralDistribution></IESTM2714>")
    assert "1e+308 nm is not a wavelength" in answer["problems"][0]["message"]


names = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Zl", "Zp")), min_size=1,
    max_size=40,
).map(lambda text: " ".join(text.split())).filter(bool)  # fmt: skip
#: A light that is called by the symbol of a quantity ('R', 'E') cannot be told from it in a table.
names = names.filter(lambda text: len(text) > 1 or not text.isalpha())
measured = st.lists(
    st.floats(0.0, 1e6, allow_nan=False).map(lambda v: float(f"{v:.9g}")), min_size=81, max_size=81
).filter(lambda values: max(values) >= LOWEST_PEAK)


@settings(max_examples=examples(60), deadline=None, suppress_health_check=list(HealthCheck))
@example(name="1", values=[1.0] * 81, style="csv")
@given(name=names, values=measured, style=st.sampled_from(["tm27", "csv"]))
def test_what_is_written_is_read_back(name: str, values: list[float], style: str) -> None:
    spectrum = {
        "name": name,
        "wavelengths_nm": NM,
        "values": values,
        "understood": {"unit": "W/m²/nm"},
    }
    (file,) = desk.answer({"ask": "write", "format": style, "spectra": [spectrum]})["files"]
    found = the_one(read(file["text"].encode()))
    assert (found["name"], found["wavelengths_nm"]) == (name, NM)
    assert found["values"] == values
    assert found["understood"]["unit"] == "W/m²/nm"


@settings(max_examples=examples(120), deadline=None, suppress_health_check=list(HealthCheck))
@given(
    spectra=st.lists(measured, min_size=1, max_size=3),
    delimiter=st.sampled_from([",", ";", "\t", "  ", "|"]),
    mark=st.sampled_from([".", ","]),
    encoding=st.sampled_from(["utf-8-sig", "utf-16", "latin-1"]),
    ending=st.sampled_from(["\n", "\r\n"]),
    falling=st.booleans(),
    angstrom=st.booleans(),
    across=st.booleans(),
)
def test_a_table_in_any_dialect_reads_to_the_same_numbers(
    spectra: list[list[float]], delimiter: str, mark: str, encoding: str, ending: str,
    falling: bool, angstrom: bool, across: bool,
) -> None:  # fmt: skip
    if delimiter == mark == ",":
        mark = "."
    scale, unit = (10, "Å") if angstrom else (1, "nm")
    table = [
        [f"wavelength[{unit}]", *(str(nm * scale) for nm in NM)],
        *([f"light{i}", *(repr(v).replace(".", mark) for v in s)] for i, s in enumerate(spectra)),
    ]
    if falling:
        table = [[row[0], *row[:0:-1]] for row in table]
    rows = table if across else list(map(list, zip(*table, strict=True)))
    answer = read(ending.join(delimiter.join(row) for row in rows).encode(encoding))
    assert answer["problems"] == []
    assert [found["values"] for found in answer["spectra"]] == spectra
    assert all(found["wavelengths_nm"] == NM for found in answer["spectra"])
    assert [found["name"] for found in answer["spectra"]] == [
        f"light{i}" for i in range(len(spectra))
    ]


def test_writing_refuses_what_no_file_can_hold() -> None:
    assert desk.answer({"ask": "write", "format": "csv", "spectra": []})["problem"]
    near = {"wavelengths_nm": [*NM, 780.00001], "values": [*KEY, 1.0]}
    problem = desk.answer({"ask": "write", "format": "tm27", "spectra": [near]})["problem"]
    assert problem["field"] == "spectra.0.wavelengths_nm.81"


def test_the_time_of_writing_is_put_into_tm27_and_checked() -> None:
    request = {
        "ask": "write",
        "format": "tm27",
        "spectra": [{"wavelengths_nm": NM, "values": KEY}],
    }
    (file,) = desk.answer({**request, "created": "2026-11-25T19:42:10.123+01:00"})["files"]
    assert "<DocumentCreationDate>2026-11-25T19:42:10.123+01:00</DocumentC" in file["text"]
    assert desk.answer({**request, "created": "today"})["problem"]["field"] == "created"


def test_file_names_fit_any_system() -> None:
    spectrum = {"name": 'a/b:c"', "wavelengths_nm": NM, "values": KEY}
    files = desk.answer({"ask": "write", "format": "tm27", "spectra": [spectrum, spectrum]})
    assert [file["name"] for file in files["files"]] == ["a b c.spdx", "a b c 2.spdx"]


def test_unknown_choices_are_refused_by_name() -> None:
    assert read("x", choices={"units": "nm"})["problem"]["field"] == "choices.units"
    assert read("x", choices={"layout": "sideways"})["problem"]["field"] == "choices.layout"
    broken = desk.answer({"ask": "import", "file_name": "a", "bytes_base64": "%%%"})
    assert broken["problem"]["field"] == "bytes_base64"


@pytest.mark.parametrize("part", range(5))
def test_damaged_files_never_crash_hang_or_answer_nonsense(part: int) -> None:
    # A thousand files reach 3909 of the 4000 lines that five thousand do; the script reads more.
    for raw, choices in fuzz_interchange.cases(examples(200), seed=part):
        fuzz_interchange.check(raw, choices)
