"""Whether a light can be rated at all: most metrics need a reference of the same CCT."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv, xyz_to_xy
from evenkelvin.colorimetry.temperature import LARGEST_DUV, uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.said import Said

#: CIE daylight, hence every reference, ends here.
HOTTEST_K = 25_000.0


class Unrated(Exception):
    """Says in a sentence why a published metric cannot rate a light; nothing was typed wrong."""

    def __init__(self, words: Said) -> None:
        super().__init__(words)
        self.words = words


def rated_cct(xyz: Floats) -> float:
    """Return the CCT in K by which the reference of a light of X, Y, Z, shape (3,), is chosen.

    Raises
    ------
    Unrated
        When there is none, or no reference for it.
    """
    cct, duv = uv_to_cct(xy_to_uv(xyz_to_xy(xyz))[np.newaxis])[0]
    if abs(duv) > LARGEST_DUV:
        raise Unrated(
            Said(
                "Not rated: the light is too far from white (Duv {duv:+.3f}) to have a "
                "reference light to be judged against.",
                duv=duv,
            )
        )
    if not cct <= HOTTEST_K:
        raise Unrated(
            Said(
                "Not rated: reference lights reach from 1000 to {hottest_k:.0f} K, and this "
                "light lies outside.",
                hottest_k=HOTTEST_K,
            )
        )
    return float(cct)


_T = TypeVar("_T")


def rated(metric: Callable[[], _T]) -> tuple[_T | None, str]:
    """Return what a metric gives and nothing, or None and why it cannot rate the light."""
    try:
        return metric(), ""
    except Unrated as why:
        return None, str(why)
