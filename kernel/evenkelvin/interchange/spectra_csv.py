"""Spectra written as comma-separated text that any spreadsheet and :mod:`table` reads."""

from __future__ import annotations

from evenkelvin.interchange.contents import WAVELENGTH_DECIMALS, FoundSpectrum
from evenkelvin.interchange.csv_text import Figure, as_csv


def write_spectra_csv(spectra: list[FoundSpectrum]) -> str:
    """Return one table: wavelengths in nm down the first column, a spectrum in each other one.

    A heading is the spectrum's name with its kind or, for a light, its unit in brackets. Where a
    spectrum has no sample at a wavelength of another its cell is empty. Wavelengths are written
    to 0.0001 nm.
    """
    columns = [
        {
            round(nm, WAVELENGTH_DECIMALS): value
            for nm, value in zip(found.wavelengths, found.values, strict=True)
        }
        for found in spectra
    ]
    rows: list[list[str]] = [["wavelength (nm)", *(_heading(found) for found in spectra)]]
    for nm in sorted(set().union(*columns)):
        cells = (column.get(nm) for column in columns)
        figures = ("" if value is None else Figure(repr(value)) for value in cells)
        rows.append([Figure(repr(nm)), *figures])
    return as_csv(rows, line_end="\n")


def _heading(found: FoundSpectrum) -> str:
    what = (found.unit or "light") if found.kind == "light" else found.kind
    return f"{' '.join(found.name.split())} [{what}]"
