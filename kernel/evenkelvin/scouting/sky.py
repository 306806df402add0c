"""An estimate of the colour of daylight from the altitude of the sun.

A clear sky in one layer, after Bird and Riordan (1986), 'Simple solar spectral model for direct
and diffuse irradiance on horizontal and tilted planes at the Earth's surface for cloudless
atmospheres', J. Climate Appl. Meteor. 25: Rayleigh scattering, aerosol by Ångström's law and
ozone, along the air mass of Kasten and Young (1989). Simplified: sunlight before the air is a
black body of 5900 K; light scattered from the ground back to the sky, and water and oxygen bands,
are left out. It is an estimate. Cloud, smoke, walls and trees change daylight by more than its
own error, so it plans a day and never replaces a reading.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv, xyz_to_xy
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.data import Floats

#: Ångström's turbidity: optical depth of the aerosol at 1 µm. Clear country air, and a hazy town.
TURBIDITY = {"clear": 0.05, "hazy": 0.15}
#: An even cloud cover is taken as CIE D65, average daylight.
OVERCAST_K = 6504.0
#: Altitudes in degrees below which one flat layer of air no longer describes the sun's own
#: colour, and that of the sky.
LOWEST_SUN_DEG, LOWEST_SKY_DEG = 5.0, 10.0

_SUN_K = 5900.0
#: Ångström's exponent, single-scattering albedo and asymmetry of a rural aerosol.
_EXPONENT, _ALBEDO, _ASYMMETRY = 1.3, 0.945, 0.65
#: Ozone in atm·cm, and its absorption in 1/(atm·cm) over the visible (Bird and Riordan 1986,
#: table 1, from memory; the Chappuis band).
_OZONE = 0.344
_OZONE_NM = np.array(
    [440, 450, 460, 470, 480, 490, 500, 510, 520, 530, 540, 550, 570, 593, 610, 630, 656, 668,
     690, 710, 718, 724, 740, 758, 780], dtype=np.float64,
)  # fmt: skip
_OZONE_ABSORBS = np.array(
    [0, 3, 6, 9, 14, 21, 30, 40, 48, 63, 75, 85, 120, 119, 120, 90, 65, 51, 28, 18, 15, 12, 10, 7,
     0], dtype=np.float64,
) * 1e-3  # fmt: skip


@dataclass(frozen=True)
class Daylight:
    """Spectra on the search grid, each of shape (81,), in one relative unit.

    Attributes
    ----------
    sun
        The sun alone, on a surface that faces it.
    shade
        The sky alone, on level ground.
    open_sky
        Both together, on level ground.
    """

    sun: Floats
    shade: Floats
    open_sky: Floats


def air_mass(altitude_deg: float) -> float:
    """Return the relative air mass at an apparent altitude above 0° (Kasten and Young 1989)."""
    sine = np.sin(np.radians(altitude_deg))
    return float(1.0 / (sine + 0.50572 * (altitude_deg + 6.07995) ** -1.6364))


def daylight(altitude_deg: float, turbidity: float) -> Daylight:
    """Return clear-sky daylight for a sun at an altitude of 5° or more."""
    um = GRID * 1e-3
    mass = air_mass(altitude_deg)
    sine = float(np.sin(np.radians(altitude_deg)))
    aerosol = turbidity * um**-_EXPONENT * mass
    rayleigh = np.exp(-mass / (um**4 * (115.6406 - 1.335 / um**2)))
    ozone = np.exp(-mass * _OZONE * np.interp(GRID, _OZONE_NM, _OZONE_ABSORBS))
    scattered = np.exp(-_ALBEDO * aerosol)
    absorbed = np.exp(-(1.0 - _ALBEDO) * aerosol)
    above = planck(GRID, _SUN_K) * ozone
    sun = above * rayleigh * scattered * absorbed
    # Half of what molecules scatter comes down; of the aerosol's share, the forward part Fs.
    g = np.log(1.0 - _ASYMMETRY)
    a = g * (1.459 + g * (0.1595 + g * 0.4129))
    b = g * (0.0783 + g * (-0.3824 - g * 0.5874))
    forward = 1.0 - 0.5 * np.exp((a + b * sine) * sine)
    by_air = 0.5 * (1.0 - rayleigh**0.95)
    by_aerosol = forward * rayleigh**1.5 * (1.0 - scattered)
    shade = above * absorbed * sine * (by_air + by_aerosol)
    return Daylight(sun, shade, sun * sine + shade)


def cct(powers: Floats) -> Floats:
    """Return the CCT in K of spectra on the search grid, shape (n, 81) to (n,)."""
    return uv_to_cct(xy_to_uv(xyz_to_xy(powers @ observer_grid())))[:, 0]
