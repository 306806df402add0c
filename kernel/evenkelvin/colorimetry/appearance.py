"""CIECAM02 and its uniform colour space CAM02-UCS, for surface colours in an average surround.

CIE 159:2004, 'A colour appearance model for colour management systems: CIECAM02'; Luo, Cui and Li
(2006), 'Uniform colour spaces based on CIECAM02 colour appearance model', Color Research and
Application 31:4.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

#: Average surround (CIE 159:2004, table 1).
_F, _C, _N_C = 1.0, 0.69, 1.0

_CAT02 = np.array([[0.7328, 0.4296, -0.1624], [-0.7036, 1.6975, 0.0061], [0.0030, 0.0136, 0.9834]])
_HUNT_POINTER_ESTEVEZ = np.array(
    [[0.38971, 0.68898, -0.07868], [-0.22981, 1.18340, 0.04641], [0.0, 0.0, 1.0]]
)
_CAT02_TO_HPE = _HUNT_POINTER_ESTEVEZ @ np.linalg.inv(_CAT02)


def _signed_power(base: Floats, exponent: float | Floats) -> Floats:
    # Very saturated light can drive a response below zero; the model's powers keep its sign.
    power: Floats = np.sign(base) * np.abs(base) ** exponent
    return power


def ciecam02(
    xyz: Floats,
    white: Floats,
    adapting_luminance: float = 100.0,
    background: float = 20.0,
    fully_adapted: bool = True,
) -> Floats:
    """Return lightness J, colourfulness M and hue angle h in degrees (CIE 159:2004).

    Parameters
    ----------
    xyz
        X, Y, Z of the samples, shape (..., 3), on the scale of ``white``.
    white
        X, Y, Z of the adopted white, Y about 100, shape broadcast against ``xyz``.
    adapting_luminance
        L_A in cd/m².
    background
        Y_b, the luminance factor of the background in per cent.
    fully_adapted
        Discount the illuminant (D = 1), as CIE 224:2017 does; else D follows L_A.

    Returns
    -------
    array
        Shape (..., 3): J, M, h.
    """
    n = background / white[..., 1]
    k = 1.0 / (5.0 * adapting_luminance + 1.0)
    f_l = 0.2 * k**4 * 5.0 * adapting_luminance
    f_l += 0.1 * (1.0 - k**4) ** 2 * np.cbrt(5.0 * adapting_luminance)
    n_bb = 0.725 * (1.0 / n) ** 0.2
    z = 1.48 + np.sqrt(n)
    d = 1.0 if fully_adapted else _F * (1.0 - np.exp((-adapting_luminance - 42.0) / 92.0) / 3.6)

    rgb, rgb_w = xyz @ _CAT02.T, white @ _CAT02.T
    gain = white[..., 1:2] * d / rgb_w + 1.0 - d

    def compressed(cones: Floats) -> Floats:
        strength = (f_l * np.abs(cones @ _CAT02_TO_HPE.T) / 100.0) ** 0.42
        sign = np.sign(cones @ _CAT02_TO_HPE.T)
        return np.asarray(400.0 * sign * strength / (27.13 + strength) + 0.1)

    response, response_w = compressed(rgb * gain), compressed(rgb_w * gain)
    r, g, b_ = np.moveaxis(response, -1, 0)
    a = r - 12.0 * g / 11.0 + b_ / 11.0
    b = (r + g - 2.0 * b_) / 9.0
    hue = np.degrees(np.arctan2(b, a)) % 360.0
    eccentricity = (np.cos(np.radians(hue) + 2.0) + 3.8) / 4.0
    to_achromatic = np.array([2.0, 1.0, 1.0 / 20.0])
    achromatic = (response @ to_achromatic - 0.305) * n_bb
    achromatic_w = (response_w @ to_achromatic - 0.305) * n_bb
    lightness = 100.0 * _signed_power(achromatic / achromatic_w, _C * z)
    t = 50_000.0 / 13.0 * _N_C * n_bb * eccentricity * np.hypot(a, b)
    t = t / (r + g + 21.0 * b_ / 20.0)
    chroma = _signed_power(t, 0.9) * _signed_power(lightness / 100.0, 0.5)
    chroma = chroma * (1.64 - 0.29**n) ** 0.73
    return np.stack(np.broadcast_arrays(lightness, chroma * f_l**0.25, hue), axis=-1)


def cam02_ucs(jmh: Floats) -> Floats:
    """Return J′, a′, b′ of CAM02-UCS from J, M, h: (..., 3) to (..., 3) (Luo et al., 2006)."""
    lightness, colourfulness, hue = np.moveaxis(jmh, -1, 0)
    j = 1.7 * lightness / (1.0 + 0.007 * lightness)
    m = np.log1p(0.0228 * colourfulness) / 0.0228
    angle = np.radians(hue)
    return np.stack([j, m * np.cos(angle), m * np.sin(angle)], axis=-1)
