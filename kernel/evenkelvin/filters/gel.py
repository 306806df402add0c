"""One gel: a spectral transmittance on the search grid, surface loss included."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xyz_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import mired, uv_to_cct
from evenkelvin.data import Floats

if TYPE_CHECKING:
    from numpy.typing import NDArray

Family = Literal["conversion", "straw", "green", "neutral", "cc", "own"]

#: Least transmittance that is reckoned with, so that log transmittances stay finite.
FLOOR = 1e-4
#: One mired is about this many steps on the locus between 2800 and 6500 K.
_STEPS_PER_MIRED = 1.0 / 2.7


@dataclass(frozen=True, eq=False)
class Gel:
    """A gel as it hangs: its name and transmittance, 0 to 1, shape (81,).

    ``reference_k`` is the black body on which its nominal shift is stated. Two gels of one name
    and one curve are the same gel, wherever each was read.
    """

    name: str
    family: Family
    transmittance: Floats
    reference_k: float
    cut: str | None = None
    cc: float | None = None
    nominal: bool = True

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Gel):
            return NotImplemented
        return self.name == other.name and np.array_equal(self.transmittance, other.transmittance)

    def __hash__(self) -> int:
        return hash(self.name)


@dataclass(frozen=True)
class Shift:
    """What a gel does to a light: mired (+ warmer), Duv (+ green), stops lost, steps moved."""

    mired: float
    duv: float
    stops: float
    steps: float


def shifts_of(gels: Sequence[Gel], light: Floats | None = None) -> list[Shift]:
    """Return what each gel does to a light on the search grid; by default to its reference."""
    curves = np.stack([gel.transmittance for gel in gels])
    if light is None:
        bare = planck(GRID, np.array([gel.reference_k for gel in gels]))
    else:
        bare = np.broadcast_to(light, curves.shape)
    before, after = bare @ observer_grid(), (bare * curves) @ observer_grid()
    uv_0, uv_1 = xyz_to_uv_prime(before), xyz_to_uv_prime(after)
    white_0, white_1 = uv_to_cct(uv_prime_to_uv(uv_0)), uv_to_cct(uv_prime_to_uv(uv_1))
    return [
        Shift(*(float(value) for value in row))
        for row in zip(
            mired(white_1[:, 0]) - mired(white_0[:, 0]),
            white_1[:, 1] - white_0[:, 1],
            np.log2(before[:, 1] / after[:, 1]),
            delta_uv_prime(uv_1, uv_0) / STEP_UV,
            strict=True,
        )
    ]


@lru_cache(maxsize=8)
def pulls(gels: tuple[Gel, ...]) -> NDArray[np.int8]:
    """Return which way each gel pulls, shape (n, 2).

    +1 warm or −1 cool, then +1 green or −1 magenta; 0 neither. Two gels that pull opposite ways
    along the same axis cancel: nobody hangs both. A pull counts when it is at least half of what
    the gel does and more than one step.
    """
    ways = np.zeros((len(gels), 2), dtype=np.int8)
    for row, shift in zip(ways, shifts_of(gels), strict=True):
        moves = np.array([shift.mired * _STEPS_PER_MIRED, 1.5 * shift.duv / STEP_UV])
        whole = np.hypot(*moves)
        if whole > 1.0:
            row[:] = np.sign(moves) * (np.abs(moves) >= 0.5 * whole)
    return ways
