"""Figures of one light, as another library works them out, agree on a display."""

from __future__ import annotations

import random

import colour
import numpy as np

from evenkelvin.desk import answer


def test_figures_of_colour_science_agree() -> None:
    """Source: colour-science 0.4.7, CCT and Duv by Ohno (2013)."""
    chance = random.Random(11)
    for _ in range(200):
        cct, duv = chance.uniform(2300, 9000), chance.uniform(-0.008, 0.008)
        uv = colour.temperature.CCT_to_uv(np.array([cct, duv]), method="Ohno 2013")
        x, y = colour.UCS_uv_to_xy(uv)
        texts = ["CCT", f"{cct:.0f}", "K", "Duv", f"{duv:+.4f}", "x", f"{x:.4f}", "y", f"{y:.4f}"]
        got = answer({"ask": "display", "words": [{"text": text} for text in texts]})
        (way,) = got["ways"]
        assert way["sure"] == "agrees", (texts, way)
        assert way["reading"] == {"x": f"{x:.4f}", "y": f"{y:.4f}"}
