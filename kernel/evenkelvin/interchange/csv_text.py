"""Spectra written as comma-separated text that any spreadsheet and :mod:`table` reads."""

from __future__ import annotations

import csv
import io

from evenkelvin.interchange.contents import WAVELENGTH_DECIMALS, FoundSpectrum


def write_csv(spectra: list[FoundSpectrum]) -> str:
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
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(["wavelength (nm)", *(_heading(found) for found in spectra)])
    for nm in sorted(set().union(*columns)):
        cells = (column.get(nm) for column in columns)
        writer.writerow([repr(nm), *("" if value is None else repr(value) for value in cells)])
    return text.getvalue()


def _heading(found: FoundSpectrum) -> str:
    what = (found.unit or "light") if found.kind == "light" else found.kind
    return f"{found.name} [{what}]"
