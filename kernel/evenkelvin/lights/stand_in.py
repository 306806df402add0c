"""A spectrum for a bare x y.

Many spectra have one chromaticity. The published illuminants of the stated kind of lamp are bent
by exp(b·t + c·t²), t linear in wavelength, until each has exactly the wanted x y; the nearest
stands in for the light, and all of them together show how far a prediction can be trusted.
"""

from __future__ import annotations

from functools import cache, lru_cache

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import daylight, illuminant, planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.problem import Problem
from evenkelvin.said import Said

_FLUORESCENT = (*(f"FL{i}" for i in range(1, 13)), *(f"FL3.{i}" for i in range(1, 16)))
_LED = (*(f"LED-B{i}" for i in range(1, 6)), "LED-BH1", "LED-V1", "LED-V2")

#: Lamp kinds: in words, whether a black body and daylight may stand in, and CIE illuminants.
LAMPS: dict[str, tuple[Said, tuple[str, ...], tuple[str, ...]]] = {
    "unknown": (
        Said("not known"),
        ("planck", "daylight"),
        ("FL2", "FL7", "FL11", "FL12", "HP4", "LED-B1", "LED-B3", "LED-B5", "LED-V1", "LED-RGB1"),
    ),
    "tungsten": (Said("tungsten, halogen"), ("planck",), ("A",)),
    "daylight": (Said("daylight, window"), ("daylight",), ("C",)),
    "hmi": (Said("HMI, metal halide"), ("daylight",), ("HP3", "HP4", "HP5")),
    "fluorescent": (Said("fluorescent tube"), (), _FLUORESCENT),
    "led": (Said("LED, white or bi-colour"), (), _LED),
    "led rgb": (Said("LED, mixed colours"), (), ("LED-RGB1", "LED-BH1", "LED-V2")),
    "plasma": (Said("plasma"), ("daylight", "planck"), ("HP4",)),
    "sodium": (Said("sodium"), (), ("HP1", "HP2")),
    "flash": (Said("flash, xenon"), ("daylight", "planck"), ()),
}
#: At most this many tabulated illuminants of a kind, the nearest in u′ v′, are thought plausible.
_MOST_TABULATED = 4


@cache
def _tabulated(names: tuple[str, ...]) -> tuple[Floats, Floats]:
    spectra = np.stack([illuminant(name) / illuminant(name).max() for name in names])
    return spectra, xyz_to_uv_prime(spectra @ observer_grid())


def stand_ins(lamp: str, xy: Floats, pack: Floats | None = None) -> Floats:
    """Return the spectra that a light of this chromaticity may have, the likeliest first.

    Parameters
    ----------
    lamp
        A kind of :data:`LAMPS`.
    xy
        Measured chromaticity, shape (2,).
    pack
        Transmittance, shape (81,), of the gels through which it was measured.

    Returns
    -------
    array
        Shape (n, 81), n ≥ 1, as measured (through the pack), each peaking at 1.

    Raises
    ------
    Problem
        When no spectrum can be found, field ``x``.
    """
    through = None if pack is None else np.asarray(pack, dtype=np.float64).tobytes()
    return _stand_ins(lamp, float(xy[0]), float(xy[1]), through)


@lru_cache(maxsize=256)
def _stand_ins(lamp: str, x: float, y: float, pack: bytes | None) -> Floats:
    """Return the stand-ins; the same readings come again with every question about a set."""
    xy = np.array([x, y])
    through = np.ones(GRID.shape) if pack is None else np.frombuffer(pack)
    _, smooth, tabulated = LAMPS[lamp]
    cct, _ = xy_to_cct(xy)
    kelvin = 3000.0 if np.isnan(cct) else float(np.clip(cct, 1000.0, 25000.0))
    candidates = [
        planck(GRID, kelvin) if kind == "planck" else daylight(GRID, max(kelvin, 4000.0))
        for kind in smooth
    ]
    if tabulated:
        spectra, uv = _tabulated(tabulated)
        apart = np.hypot(*(uv - xy_to_uv_prime(xy)).T)
        candidates += list(spectra[np.argsort(apart, kind="stable")[:_MOST_TABULATED]])
    bent = bend(np.stack(candidates) * through, xy)
    if not len(bent):
        bent = bend((planck(GRID, kelvin) * through)[np.newaxis], xy)
    if not len(bent):
        raise Problem(
            "x",
            Said(
                "No spectrum of a lamp reaches x {xy:.4f}, y {xy_2:.4f}: it is close to a "
                "single wavelength. Measure a spectrum to go on.",
                xy=xy[0],
                xy_2=xy[1],
            ),
        )
    bent.setflags(write=False)
    return bent
