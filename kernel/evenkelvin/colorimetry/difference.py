"""How far two colours are apart: chromaticities in u′ v′, surfaces in CIEDE2000."""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

#: Radius in u′ v′ of a circle of one step (CIE TN 001:2014).
STEP_UV = 0.0011


def delta_uv_prime(first: Floats, second: Floats) -> Floats:
    """Return the distance in CIE 1976 u′ v′: (..., 2) and (..., 2) to (...)."""
    apart = np.asarray(first) - np.asarray(second)
    return np.asarray(np.hypot(apart[..., 0], apart[..., 1]))


def xyz_to_lab(xyz: Floats, white: Floats) -> Floats:
    """Return CIE 1976 L*, a*, b* (ISO/CIE 11664-4) of X, Y, Z seen in a white: (..., 3) both."""
    t = xyz / white
    f = np.where(t > (24.0 / 116.0) ** 3, np.cbrt(t), 841.0 / 108.0 * t + 16.0 / 116.0)
    x, y, z = np.moveaxis(f, -1, 0)
    return np.stack([116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)], axis=-1)


def delta_e_2000(first: Floats, second: Floats) -> Floats:
    """Return the CIEDE2000 colour difference of two L*, a*, b*: (..., 3) twice to (...).

    ISO/CIE 11664-6 with k_L = k_C = k_H = 1; steps and symbols as in Sharma, Wu and Dalal (2005),
    'The CIEDE2000 color-difference formula', Color Research and Application 30:1.
    """
    l1, a1, b1 = np.moveaxis(first, -1, 0)
    l2, a2, b2 = np.moveaxis(second, -1, 0)
    c7 = ((np.hypot(a1, b1) + np.hypot(a2, b2)) / 2.0) ** 7
    g = 0.5 * (1.0 - np.sqrt(c7 / (c7 + 25.0**7)))
    c1, c2 = np.hypot((1.0 + g) * a1, b1), np.hypot((1.0 + g) * a2, b2)
    h1 = np.degrees(np.arctan2(b1, (1.0 + g) * a1)) % 360.0
    h2 = np.degrees(np.arctan2(b2, (1.0 + g) * a2)) % 360.0

    neutral = c1 * c2 == 0.0
    turn = h2 - h1
    # Around the circle the short way; the sum of hues goes round with it.
    dh = np.where(neutral, 0.0, (turn + 180.0) % 360.0 - 180.0)
    dh = np.where(turn == 180.0, 180.0, dh)
    total = h1 + h2
    far = np.abs(turn) > 180.0
    h_mean = np.where(far, np.where(total < 360.0, total + 360.0, total - 360.0), total) / 2.0
    h_mean = np.where(neutral, total, h_mean)

    d_l, d_c = l2 - l1, c2 - c1
    d_h = 2.0 * np.sqrt(c1 * c2) * np.sin(np.radians(dh) / 2.0)
    l_mean, c_mean = (l1 + l2) / 2.0, (c1 + c2) / 2.0
    t = (
        1.0
        - 0.17 * np.cos(np.radians(h_mean - 30.0))
        + 0.24 * np.cos(np.radians(2.0 * h_mean))
        + 0.32 * np.cos(np.radians(3.0 * h_mean + 6.0))
        - 0.20 * np.cos(np.radians(4.0 * h_mean - 63.0))
    )
    s_l = 1.0 + 0.015 * (l_mean - 50.0) ** 2 / np.sqrt(20.0 + (l_mean - 50.0) ** 2)
    s_c = 1.0 + 0.045 * c_mean
    s_h = 1.0 + 0.015 * c_mean * t
    d_theta = 30.0 * np.exp(-(((h_mean - 275.0) / 25.0) ** 2))
    r_c = 2.0 * np.sqrt(c_mean**7 / (c_mean**7 + 25.0**7))
    r_t = -np.sin(np.radians(2.0 * d_theta)) * r_c
    chroma, hue = d_c / s_c, d_h / s_h
    squared = (d_l / s_l) ** 2 + chroma**2 + hue**2 + r_t * chroma * hue
    return np.asarray(np.sqrt(np.maximum(squared, 0.0)))
