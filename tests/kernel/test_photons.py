"""Files that count photons: asked about where the unit leaves it open, and power left alone."""

from __future__ import annotations

import base64

import numpy as np
import pytest

from evenkelvin import desk
from evenkelvin.colorimetry.observer import GRID


def read(raw: bytes) -> dict:
    request = {"ask": "import", "file_name": "file", "bytes_base64": base64.b64encode(raw).decode()}
    return desk.answer(request)


@pytest.mark.parametrize(
    "heading", ["nm,PPFD", "nm,Photon flux [W/m2/nm]", "wavelength (nm),Key (PFD)"]
)
def test_photons_are_asked_about_where_the_unit_does_not_settle_it(heading: str) -> None:
    rows = [f"{nm:g},{nm / 1000 + 1:.6g}" for nm in GRID]
    raw = "\n".join([heading, *rows]).encode()
    answer = read(raw)
    (question,) = (one for one in answer["questions"] if one["field"] == "counted")
    assert question["options"] == ["power", "photons"]
    request = {"ask": "import", "bytes_base64": base64.b64encode(raw).decode()}
    power, photons = (
        np.array(desk.answer(request | {"choices": {"counted": choice}})["spectra"][0]["values"])
        for choice in ("power", "photons")
    )
    assert power == pytest.approx(GRID / 1000 + 1, rel=1e-5)
    assert photons * GRID / power == pytest.approx(np.full(GRID.shape, (photons * GRID / power)[0]))


@pytest.mark.parametrize("heading", ["nm,Irradiance [W/m2/nm]", "nm,Key", "nm,mW/m²/nm", "nm,SPD"])
def test_power_stays_power(heading: str) -> None:
    rows = [f"{nm:g},{nm / 1000 + 1:.6g}" for nm in GRID]
    (found,) = read("\n".join([heading, *rows]).encode())["spectra"]
    assert found["values"] == pytest.approx(GRID / 1000 + 1, rel=1e-5)
    assert not any("photons" in note for note in found["understood"]["notes"])
