"""Make the spectra of The Night Ferry, the invented shoot: python demo_readings/spectra/make.py

None of them was measured. Each is a published CIE illuminant or a law of physics, aged, dimmed or
coloured a little, and written the way some meters and laboratories write files. Those in the book
are bent until they have the x y that the story wants.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.illuminant import daylight, illuminant, planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import Floats
from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit

FOLDER = Path(__file__).parent
BOOK = FOLDER.parent / "night_ferry.json"
INVENTED = "The Night Ferry, invented; no light was measured"


def _comma(number: float, digits: int = 5) -> str:
    return f"{number:.{digits}g}".replace(".", ",")


def _window() -> bytes:
    """North window at dusk: CIE daylight 9300 K through old, faintly green glass. Latin-1."""
    glass = np.exp(-(((GRID - 545.0) / 400.0) ** 2))
    power = daylight(GRID, 9300.0) * glass * 4.2e-5
    lines = [
        f"Remarque;{INVENTED} (D9300, vitre verdâtre)",
        "Lieu;Hall des billets",
        "",
        "Longueur d'onde (nm);Fenêtre nord, crépuscule [W/m²/nm]",
        *(f"{nm:.0f};{_comma(value)}" for nm, value in zip(GRID, power, strict=True)),
    ]
    return "\r\n".join(lines).encode("latin-1")


def _batten() -> bytes:
    """Batten 2, a tired fluorescent tube: CIE FL4, its blue phosphor faded. TM-27."""
    faded = illuminant("FL4") * (1.0 - 0.25 * np.exp(-(((GRID - 480.0) / 60.0) ** 2)))
    spectrum = {
        "name": "Batten 2, tired",
        "wavelengths_nm": GRID.tolist(),
        "values": [round(value, 4) for value in faded.tolist()],
        "understood": {"notes": [f"{INVENTED} (CIE FL4, faded)."]},
    }
    (file,) = answer({"ask": "write", "format": "tm27", "spectra": [spectrum]})["files"]
    return file["text"].encode()


def _practical() -> bytes:
    """Tungsten practical: a black body of 2730 K on a 0.4 nm grid kept in single precision."""
    nm = (380.0 + 0.4 * np.arange(1001)).astype(np.float32).astype(float)
    noise = np.random.default_rng(1912).normal(0.0, 0.001, len(nm))
    power = (planck(nm, 2730.0) * 0.011 + noise * 0.004).astype(np.float32).astype(float)
    lines = [f"# {INVENTED} (Planck 2730 K)", "Wavelength (nm)\tPractical (mW/m2/nm)"]
    lines += [f"{a!r}\t{b!r}" for a, b in zip(nm.tolist(), power.tolist(), strict=True)]
    return "\n".join(lines).encode()


def _panels() -> bytes:
    """Two LED panels: CIE LED-B3 and LED-B4, keyword text with wavelengths in the fields."""
    fields = " ".join(f"SPECTRAL_{nm:.0f}" for nm in GRID)
    records = [
        f'{number} "{name}" ' + " ".join(f"{value:.5g}" for value in illuminant(source))
        for number, (name, source) in enumerate(
            {"Panel left": "LED-B3", "Panel right": "LED-B4"}.items(), 1
        )
    ]
    lines = [
        "CGATS.17",
        'ORIGINATOR "The Night Ferry"',
        'DESCRIPTOR "Light of two LED panels, invented from CIE LED-B3 and LED-B4"',
        f"NUMBER_OF_FIELDS {len(GRID) + 2}",
        "BEGIN_DATA_FORMAT",
        f"SAMPLE_ID SAMPLE_NAME {fields}",
        "END_DATA_FORMAT",
        f"NUMBER_OF_SETS {len(records)}",
        "BEGIN_DATA",
        *records,
        "END_DATA",
    ]
    return "\n".join(lines).encode()


def _sodium() -> bytes:
    """Sodium spill on the car deck: CIE HP1, wavelengths falling, UTF-16 as some systems save."""
    lines = [f"Hinweis\t{INVENTED} (CIE HP1)", "Wellenlänge [nm]\tNatrium, Wagendeck"]
    values = illuminant("HP1")
    lines += [f"{_comma(a)}\t{_comma(b)}" for a, b in zip(GRID[::-1], values[::-1], strict=True)]
    return "\r\n".join(lines).encode("utf-16")


def _hmi() -> bytes:
    """HMI through the doorway: CIE HP4 in ångström, wavelengths across."""
    lines = [
        f"# {INVENTED} (CIE HP4)",
        ",".join(["wavelength (Å)", *(f"{10 * nm:.0f}" for nm in GRID)]),
        ",".join(["HMI through the doorway", *(f"{value:.5g}" for value in illuminant("HP4"))]),
    ]
    return "\n".join(lines).encode()


def _key() -> bytes:
    """The key, a black body of 3180 K, bare and through a half CTB a little paler than nominal."""
    half = next(gel.transmittance for gel in nominal_kit() if gel.name == "1/2 CTB")
    bare = planck(GRID, 3180.0) * 0.0123
    chance = np.random.default_rng(1913)
    gelled = bare * half**0.93 + chance.normal(0.0, 2e-5, len(GRID))
    lines = [f"{INVENTED} (Planck 3180 K; half CTB, paler)", ""]
    lines += ["wavelength;Key bare;Key with half CTB", "nm;W/m²/nm;W/m²/nm"]
    lines += [
        f"{nm:.0f};{_comma(a)};{_comma(b)}" for nm, a, b in zip(GRID, bare, gelled, strict=True)
    ]
    return ("\ufeff" + "\r\n".join(lines)).encode()


def _fill() -> bytes:
    """The fill, mixed colours: CIE LED-RGB1 as an emissive spectrum in CxF3."""
    values = " ".join(f"{value:.5g}" for value in illuminant("LED-RGB1") + 0.01)
    return f"""<?xml version="1.0" encoding="UTF-8"?>
<cc:CxF xmlns:cc="http://colorexchangeformat.com/CxF3-core">
  <cc:FileInformation>
    <cc:Creator>The Night Ferry</cc:Creator>
    <cc:CreationDate>2026-11-25T19:00:00+01:00</cc:CreationDate>
    <cc:Description>{INVENTED} (CIE LED-RGB1)</cc:Description>
  </cc:FileInformation>
  <cc:Resources>
    <cc:ObjectCollection>
      <cc:Object ObjectType="Target" Name="Fill, mixed colours" Id="fill">
        <cc:CreationDate>2026-11-25T19:00:00+01:00</cc:CreationDate>
        <cc:ColorValues>
          <cc:EmissiveSpectrum ColorSpecification="meter" StartWL="380">
            {values}
          </cc:EmissiveSpectrum>
        </cc:ColorValues>
      </cc:Object>
    </cc:ObjectCollection>
    <cc:ColorSpecificationCollection>
      <cc:ColorSpecification Id="meter">
        <cc:MeasurementSpec>
          <cc:MeasurementType>Spectrum_Emissive</cc:MeasurementType>
          <cc:GeometryChoice>
            <cc:EmissiveMode>EmissiveMode_Diffuser</cc:EmissiveMode>
          </cc:GeometryChoice>
          <cc:WavelengthRange StartWL="380" Increment="5"/>
        </cc:MeasurementSpec>
      </cc:ColorSpecification>
    </cc:ColorSpecificationCollection>
  </cc:Resources>
</cc:CxF>
""".encode()


def _gel() -> bytes:
    """A gel by its transmittance in percent: the nominal quarter CTO, washed out by heat."""
    quarter = next(gel.transmittance for gel in nominal_kit() if gel.name == "1/4 CTO")
    lines = [f"# {INVENTED} (quarter CTO, bleached)", "nm   transmittance_%"]
    lines += [
        f"{nm:5.0f}   {100.0 * value**0.8:6.2f}" for nm, value in zip(GRID, quarter, strict=True)
    ]
    return "\n".join(lines).encode()


FILES = {
    "north_window_dusk.csv": _window,
    "batten_2.spdx": _batten,
    "practical.txt": _practical,
    "led_panels.cgats": _panels,
    "sodium_car_deck.txt": _sodium,
    "hmi_doorway.csv": _hmi,
    "key_bare_and_gelled.csv": _key,
    "fill.cxf": _fill,
    "faded_quarter_amber.txt": _gel,
}


def _colours_mixed() -> Floats:
    """Return a lamp of three colours, about as much of each as for 4300 K."""
    colours = {457.0: 0.62, 530.0: 0.5, 622.0: 1.0}
    return np.asarray(
        sum(share * np.exp(-(((GRID - nm) / 15.0) ** 2)) for nm, share in colours.items())
    )


def _through(name: str) -> Floats:
    return next(gel.transmittance for gel in nominal_kit() if gel.name == name)


def book_spectra() -> dict[str, tuple[Floats, tuple[float, float]]]:
    """Return, by the id of a reading in the book, a spectrum and the x y it is to have."""
    panel, tube = illuminant("LED-B5"), illuminant("FL2")
    return {
        # 2 The last sailing
        "kCHCOyAmgQ5NJhoGuC7nXg": (panel, (0.3279, 0.3402)),  # key
        "EKUKKCAkizLJn0261mxeWA": (panel * _through("1/4 CTO"), (0.3531, 0.3589)),  # key, gelled
        "0viZRDwXnFCE22j1o7jMjw": (illuminant("LED-V2"), (0.3671, 0.3668)),  # fill
        "w8ZpNf5HdUe1Jt6KcXo3Vg": (
            _colours_mixed(),
            (0.3668, 0.3672),
        ),  # edge, dialled to match the fill
        "E7eGAC3yGDZSzLVTuo9Huw": (tube, (0.3768, 0.3881)),  # batten 1
        "M-tUSQdQdbDlReMA65qbrg": (tube, (0.3842, 0.3998)),  # batten 2
        "GE2EW2o2S3YG0y8avILcqg": (
            planck(GRID, 2690.0),
            (0.4608, 0.4112),
        ),  # practical on the counter
        # 3 Between the cars
        "UuPfMxP8iokiedeTPdkq9w": (illuminant("HP1"), (0.5212, 0.4180)),  # sodium spill
        "ze9IajStCT9B0ZeSeLGCPQ": (illuminant("HP4"), (0.3302, 0.3441)),  # HMI through the doorway
    }


def spectrum_of(shape: Floats, xy: tuple[float, float]) -> dict[str, list[float]]:
    """Return a shape bent to an x y, as a reading holds it: the peak is 1, four digits."""
    (bent,) = bend(shape[np.newaxis], np.array(xy))
    return {
        "wavelengths_nm": [int(nm) for nm in GRID],
        "values": [float(f"{value:.4g}") for value in bent / bent.max()],
    }


def with_spectra(book: dict[str, Any]) -> str:
    """Return the book as text, its spectra made again."""
    wanted = book_spectra()
    for entry in book["entries"]:
        if entry["id"] not in wanted:
            continue
        data = entry["data"]
        spectrum = spectrum_of(*wanted[entry["id"]])
        entry["data"] = {
            "stage": data["stage"],
            "spectrum": spectrum,
            **{key: data[key] for key in data if key not in ("stage", "x", "y", "spectrum")},
        }
    text = json.dumps(book, indent=1, ensure_ascii=False)
    numbers = re.compile(r"\[\s*(-?[\d.][^\[\]\"{}]*?)\s*\]")
    return numbers.sub(lambda m: f"[{' '.join(m[1].split())}]", text) + "\n"


def made() -> dict[str, bytes]:
    """Return the bytes of every file by its name."""
    return {name: make() for name, make in FILES.items()}


if __name__ == "__main__":
    for file, raw in made().items():
        (FOLDER / file).write_bytes(raw)
    BOOK.write_text(with_spectra(json.loads(BOOK.read_text("utf-8"))), "utf-8")
