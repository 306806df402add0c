"""Published lights: the black body, CIE daylight, and the tabulated CIE illuminants."""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import Floats, load_table

#: Second radiation constant in nm·K (CIE 15:2018: 1.4388e-2 m·K).
C2_NM_K = 1.4388e7


def planck(wavelengths: Floats, temperature: float | Floats, c2_nm_k: float = C2_NM_K) -> Floats:
    """Return the relative spectral radiance of a black body, 1 at 560 nm (CIE 15:2018, 3.1).

    Parameters
    ----------
    wavelengths
        In nm, shape (n,).
    temperature
        In K: one number, or shape (m,).
    c2_nm_k
        Second radiation constant in nm·K, where a standard has kept an older one.

    Returns
    -------
    array
        Shape (n,) for one temperature, otherwise (m, n).
    """
    kelvin = np.asarray(temperature, dtype=np.float64)[..., np.newaxis]
    reference = np.expm1(c2_nm_k / (560.0 * kelvin))
    radiance: Floats = (
        (560.0 / wavelengths) ** 5 * reference / np.expm1(c2_nm_k / (wavelengths * kelvin))
    )
    return radiance


def daylight_xy(cct: float) -> Floats:
    """Return x, y of CIE daylight, shape (2,), for 4000 to 25 000 K (CIE 15:2018, 4.1.2).

    Raises
    ------
    ValueError
        Outside that range.
    """
    if not 4000.0 <= cct <= 25000.0:
        raise ValueError(f"CIE daylight is defined from 4000 to 25 000 K, not at {cct:g} K")
    if cct <= 7000.0:
        x = 0.244063 + 0.09911e3 / cct + 2.9678e6 / cct**2 - 4.6070e9 / cct**3
    else:
        x = 0.237040 + 0.24748e3 / cct + 1.9018e6 / cct**2 - 2.0064e9 / cct**3
    return np.array([x, -3.0 * x**2 + 2.870 * x - 0.275])


def daylight(wavelengths: Floats, cct: float, rounded: bool = False) -> Floats:
    """Return the relative power of CIE daylight, 100 at 560 nm, shape (n,).

    Parameters
    ----------
    wavelengths
        In nm, shape (n,); linear between the 5 nm of the tabulated components.
    cct
        Correlated colour temperature in K, 4000 to 25 000.
    rounded
        Round M1 and M2 to three decimals, as CIE 15:2018, 4.1.2 does for its own tables.

    Raises
    ------
    ValueError
        Outside 4000 to 25 000 K.
    """
    x, y = daylight_xy(cct)
    m = 0.0241 + 0.2562 * x - 0.7341 * y
    m1 = (-1.3515 - 1.7703 * x + 5.9114 * y) / m
    m2 = (0.0300 - 31.4424 * x + 30.0717 * y) / m
    if rounded:
        m1, m2 = np.round(m1, 3), np.round(m2, 3)
    table = load_table("cie_daylight")
    s0, s1, s2 = (
        np.interp(wavelengths, table["wavelength_nm"], table[k]) for k in ("s0", "s1", "s2")
    )
    power: Floats = s0 + m1 * s1 + m2 * s2
    return power


def illuminant_names() -> list[str]:
    """Return the names of the tabulated CIE illuminants, as CIE 15:2018 writes them."""
    return list(load_table("cie_illuminants"))[1:]


def illuminant(name: str) -> Floats:
    """Return a tabulated CIE illuminant on the search grid, relative power, shape (81,).

    Raises
    ------
    KeyError
        When there is no such illuminant.
    """
    table = load_table("cie_illuminants")
    assert np.array_equal(table["wavelength_nm"], GRID)
    return table[name]
