"""Files against other readers and writers, and learned gels against published chromaticities.

Sources: colour-science's TM-27-14 reader and writer and its sample files; luxpy's D65 in TM-27;
colour-cxf, generated from the CxF3 schema (ISO 17972-1); CIE 15:2018 for illuminants A and D65.
"""

from __future__ import annotations

import base64
from pathlib import Path

import colour
import colour_cxf
import luxpy
import numpy as np
import pytest
from colour_cxf import cxf3

from evenkelvin import desk
from evenkelvin.colorimetry.illuminant import illuminant, illuminant_names, planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.interchange.contents import MAX_PROBLEMS

RESOURCES = Path(colour.__file__).parent


def read(raw: bytes) -> dict:
    request = {"ask": "import", "file_name": "file", "bytes_base64": base64.b64encode(raw).decode()}
    return desk.answer(request)


def spectrum(values: np.ndarray) -> dict:
    return {"spectrum": {"wavelengths_nm": GRID.tolist(), "values": values.tolist()}}


@pytest.mark.parametrize("name", illuminant_names())
def test_tm27_of_ours_is_read_by_colour_science_and_theirs_by_us(name: str, tmp_path: Path) -> None:
    values = illuminant(name).tolist()
    (file,) = desk.answer(
        {
            "ask": "write",
            "format": "tm27",
            "spectra": [{"name": name, "wavelengths_nm": GRID.tolist(), "values": values}],
        }
    )["files"]
    ours = tmp_path / "ours.spdx"
    ours.write_text(file["text"], encoding="utf-8")
    theirs = colour.SpectralDistribution_IESTM2714(ours).read()
    assert theirs.header.description == name
    assert theirs.spectral_quantity == "relative"
    assert np.array_equal(theirs.wavelengths, GRID)
    assert np.array_equal(theirs.values, values)

    back = tmp_path / "theirs.spdx"
    theirs.path = back
    theirs.write()
    (found,) = read(back.read_bytes())["spectra"]
    assert found["name"] == name
    assert found["wavelengths_nm"] == GRID.tolist()
    assert found["values"] == values


@pytest.mark.parametrize(
    ("quantity", "kind", "unit"),
    [
        ("flux", "light", "W/nm"),
        ("radiance", "light", "W/m²/sr/nm"),
        ("irradiance", "light", "W/m²/nm"),
        ("transmittance", "transmittance", None),
        ("R-Factor", "reflectance", None),
    ],
)
def test_tm27_quantities_keep_their_meaning(
    quantity: str, kind: str, unit: str | None, tmp_path: Path
) -> None:
    data = dict(zip(GRID.tolist(), (illuminant("A") / 300.0).tolist(), strict=True))
    theirs = colour.SpectralDistribution_IESTM2714(
        tmp_path / "q.spdx", data=data, spectral_quantity=quantity
    )
    theirs.write()
    (found,) = read((tmp_path / "q.spdx").read_bytes())["spectra"]
    assert (found["quantity"], found["understood"]["unit"] or None) == (kind, unit)


def test_the_d65_that_luxpy_carries_in_tm27_is_read() -> None:
    (found,) = read(
        (Path(luxpy.__file__).parent / "spectrum/cie_d65_5nm.spdx").read_bytes()
    )["spectra"]  # fmt: skip
    inside = [nm in set(GRID.tolist()) for nm in found["wavelengths_nm"]]
    assert np.array(found["values"])[inside] == pytest.approx(illuminant("D65"), abs=1e-3)


@pytest.mark.parametrize(
    ("path", "words"),
    [
        ("examples/io/resources/TM27 Sample Spectral Data.spdx", "400–650 nm"),
        ("io/tests/resources/Fluorescent.spdx", "44.9 nm apart"),
        ("io/tests/resources/Invalid.spdx", "“item” document"),
    ],
)
def test_sample_files_that_no_colour_can_be_had_from_say_why(path: str, words: str) -> None:
    """The sample files of colour-science."""
    answer = read((RESOURCES / path).read_bytes())
    assert answer["spectra"] == []
    assert words in answer["problems"][0]["message"]


@pytest.mark.parametrize(
    ("theirs", "kind"),
    [
        (cxf3.EmissiveSpectrum, "light"),
        (cxf3.TransmittanceSpectrum, "transmittance"),
        (cxf3.ReflectanceSpectrum, "reflectance"),
    ],
)
def test_cxf3_written_by_its_schema_is_read(theirs: type, kind: str) -> None:
    values = [round(value, 6) for value in (illuminant("LED-B3") / 200.0 + 0.01).tolist()]
    document = cxf3.CxF(
        resources=cxf3.Resources(
            object_collection=cxf3.ObjectCollection(
                object_value=[
                    cxf3.Object(
                        name="Key",
                        id="k",
                        object_type="Target",
                        color_values=cxf3.ColorValues(
                            choice=[theirs(value=values, color_specification="s", start_wl=380)]
                        ),
                    )
                ]
            ),
            color_specification_collection=cxf3.ColorSpecificationCollection(
                color_specification=[
                    cxf3.ColorSpecification(
                        id="s",
                        measurement_spec=cxf3.MeasurementSpec(
                            wavelength_range=cxf3.WavelengthRange(start_wl=380, increment=5)
                        ),
                    )
                ]
            ),
        )
    )
    answer = read(colour_cxf.write_cxf(document))
    assert answer["problems"] == []
    (found,) = answer["spectra"]
    assert (found["name"], found["quantity"]) == ("Key", kind)
    assert found["wavelengths_nm"] == GRID.tolist()
    assert found["values"] == values


def test_the_sample_of_cxf3_is_understood_to_the_end() -> None:
    raw = (Path(colour_cxf.__file__).parent / "tests/resources/sample.cxf").read_bytes()
    theirs = colour_cxf.read_cxf(raw)
    spectra = [
        value
        for thing in theirs.resources.object_collection.object_value
        for value in (thing.color_values.choice if thing.color_values else [])
        if isinstance(value, cxf3.ReflectanceSpectrum)
    ]
    answer = read(raw)
    # It ends at 680 nm, too early for colour: each is named up to a limit, none dropped in silence.
    *named, last = answer["problems"]
    assert len(named) == MAX_PROBLEMS < len(spectra)
    assert all("380–680 nm" in problem["message"] for problem in named)
    assert "more faults" in last["message"]


def test_a_gel_that_turns_a_into_d65_is_learned_from_their_spectra() -> None:
    """CIE 15:2018: D65 has x 0.31272, y 0.32903; A has x 0.44758, y 0.40745."""
    a, d65 = illuminant("A"), illuminant("D65")
    through = a * (d65 / a) / np.max(d65 / a)
    gel = desk.answer(
        {"ask": "learn_gel", "bare": spectrum(a), "gelled": spectrum(through), "name": "A to D65"}
    )["gel"]
    lit = desk.answer({"ask": "describe", "reading": spectrum(a * gel["transmittance"])})
    assert (lit["x"], lit["y"]) == pytest.approx((0.31272, 0.32903), abs=5e-4)
    assert gel["mired"] == pytest.approx(1e6 / 6504.3 - 1e6 / 2855.5, abs=0.6)


@pytest.mark.parametrize("kelvin", [3200.0, 5600.0])
def test_a_shift_of_black_bodies_is_their_difference_in_mired(kelvin: float) -> None:
    """By definition mired is 10⁶/K; both readings on the locus, so no green or magenta."""
    other = 8800.0 - kelvin
    gel = desk.answer(
        {
            "ask": "learn_gel",
            "bare": {"cct_K": kelvin, "duv": 0, "lamp": "tungsten"},
            "gelled": {"cct_K": other, "duv": 0, "lamp": "tungsten"},
            "name": "mine",
        }
    )["gel"]
    assert gel["mired"] == pytest.approx(1e6 / other - 1e6 / kelvin, abs=1e-3)
    assert gel["duv"] == pytest.approx(0.0, abs=1e-7)
    # On black bodies the ideal converter is the ratio of two Planck curves: ours is like it.
    ratio = planck(GRID, other) / planck(GRID, kelvin)
    middle = (GRID >= 430.0) & (GRID <= 650.0)
    near = np.log(np.array(gel["transmittance"]) / ratio)[middle]
    assert np.ptp(near) < 0.35


#: Photons of a light: E = hc/λ, so photons per nm are in proportion to power per nm times λ, and
#: one W at λ nm is λ/119.627 µmol/s (SI 2019: N_A·h·c = 0.119627 J·m/mol).
@pytest.mark.parametrize(
    "heading",
    [
        "wavelength (nm),PPFD [umol/m2/s/nm]",
        "nm,Key (µmol m⁻² s⁻¹ nm⁻¹)",
        "nm,Spectral photon flux density [μmol/(m^2 s nm)]",
        "Wavelength,Photons [photons/s/cm2/nm]",
        "nm,Key\nnm,umol/m2/s/nm",
    ],
)
def test_photons_are_brought_to_power(heading: str) -> None:
    power = planck(GRID, 3623.0)
    power = power / power.max()
    rows = [f"{nm:g},{watt * nm / 119.627:.8g}" for nm, watt in zip(GRID, power, strict=True)]
    answer = read("\n".join([heading, *rows]).encode())
    (found,) = answer["spectra"]
    scale = 1.0 if "mol" in heading else 119.627
    assert np.array(found["values"]) * scale == pytest.approx(power, rel=1e-5)
    assert any("count photons" in note for note in found["understood"]["notes"])
    assert found["understood"]["unit"] == ("W/m²/nm" if "mol" in heading else "")
    described = desk.answer({"ask": "describe", "reading": {"spectrum": {
        "wavelengths_nm": found["wavelengths_nm"], "values": found["values"]}}})  # fmt: skip
    assert described["cct_K"] == pytest.approx(3623, abs=1)
    assert not [question for question in answer["questions"] if question["field"] == "counted"]
