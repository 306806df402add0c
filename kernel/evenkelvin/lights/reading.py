"""One reading: what was typed or measured, checked and made canonical."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.colorimetry.temperature import LARGEST_DUV
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel

#: CCT in K that a reading may have, and that a target white may have (common practice).
READING_K = (1000.0, 25_000.0)
TARGET_K = (2500.0, 10_000.0)
#: Lux in a foot-candle (one lumen on a square foot of 0.3048 m sides).
LX_PER_FC = 1.0 / 0.3048**2


@dataclass(frozen=True, eq=False)
class Reading:
    """A light as measured.

    ``xy`` has shape (2,). ``spectra`` holds what the light may be on the search grid, shape
    (n, 81), the mean first; n is 1 when a spectrum was measured. ``weights`` (n,) is how likely
    each is, None where all are alike, and ``widen`` by what real lamps scatter beyond them.
    ``evidence`` is what else the meter showed, ``after`` names the lamps whose past has told
    something of it. ``pack`` names the gels that were on it.
    ``warnings`` are sentences for the person, ``assumed`` what figures in another form were taken
    for; ``role`` is what the light is on the set, such as
    "key" or "practical".
    """

    xy: Floats
    cct_k: float
    duv: float
    spectra: Floats
    spectrum: Spectrum | None = None
    illuminance_lx: float | None = None
    exposure_lx_s: float | None = None
    lamp: str = "unknown"
    name: str = ""
    pack: tuple[Gel, ...] = ()
    warnings: list[str] = field(default_factory=list)
    role: str = ""
    weights: Floats | None = None
    widen: float = 1.0
    evidence: tuple[tuple[str, float], ...] = ()
    after: tuple[str, ...] = ()
    assumed: tuple[str, ...] = ()

    @property
    def is_colour(self) -> bool:
        """Whether it is too far from white for a CCT to mean anything."""
        return abs(self.duv) > LARGEST_DUV


def pack_transmittance(pack: tuple[Gel, ...]) -> Floats:
    """Return the transmittance of stacked gels on the search grid, shape (81,)."""
    through = np.ones(81)
    for gel in pack:
        through = through * gel.transmittance
    return through


def difference(many: tuple[Gel, ...], less: tuple[Gel, ...]) -> tuple[Gel, ...]:
    """Return the gels of a stack that are not in another."""
    left = list(many)
    for gel in less:
        if gel in left:
            left.remove(gel)
    return tuple(left)


def moved(first: tuple[Gel, ...], then: tuple[Gel, ...]) -> tuple[Gel, ...]:
    """Return every gel that is put on or taken off from one stack to another."""
    return difference(then, first) + difference(first, then)
