"""The CIE standard observers, and the grid the search works on.

Everything sees by the CIE 1931 2-degree observer, but for the colour samples of CIE 224.
"""

from __future__ import annotations

from functools import cache

import numpy as np

from evenkelvin.data import Floats, load_table

#: Wavelengths of the search grid in nm, shape (81,): 380 to 780 in steps of 5.
GRID: Floats = np.arange(380.0, 781.0, 5.0, dtype=np.float64)
GRID.setflags(write=False)


@cache
def _table() -> tuple[Floats, Floats]:
    table = load_table("cie1931_2deg")
    bars = np.column_stack([table["x_bar"], table["y_bar"], table["z_bar"]])
    bars.setflags(write=False)
    return table["wavelength_nm"], bars


def wavelengths_1nm() -> Floats:
    """Return the wavelengths of the published table in nm, shape (471,): 360 to 830."""
    return _table()[0]


def observer_1nm() -> Floats:
    """Return the published table of x̄, ȳ, z̄ (ISO/CIE 11664-1), shape (471, 3)."""
    return _table()[1]


def observer_at(wavelengths: Floats) -> Floats:
    """Return x̄, ȳ, z̄ at any wavelengths in nm, shape (n, 3); zero outside 360–830 nm.

    Linear between the whole nanometres of the table, as ISO/CIE 11664-1 allows.
    """
    known, bars = _table()
    columns = [np.interp(wavelengths, known, bars[:, k], left=0.0, right=0.0) for k in range(3)]
    return np.column_stack(columns)


@cache
def observer_grid() -> Floats:
    """Return x̄, ȳ, z̄ on :data:`GRID`, shape (81, 3)."""
    bars = observer_at(GRID)
    bars.setflags(write=False)
    return bars


def observer_10deg_at(wavelengths: Floats) -> Floats:
    """Return x̄₁₀, ȳ₁₀, z̄₁₀ (CIE 1964, ISO/CIE 11664-1) at 380 to 780 nm, shape (n, 3)."""
    table = load_table("cie1964_10deg")
    names = ("x10_bar", "y10_bar", "z10_bar")
    columns = [np.interp(wavelengths, table["wavelength_nm"], table[name]) for name in names]
    return np.column_stack(columns)
