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
#: Cosine of the angle from which two pulls count as straight against each other: within 23° of
#: it, so that straw, which is a little green, and blue do.
_STRAIGHT = -0.92


@dataclass(frozen=True, eq=False)
class Gel:
    """A gel as it hangs: its name and transmittance, 0 to 1, shape (81,).

    ``reference_k`` is the black body on which its nominal shift is stated. Two gels of one name
    and one curve are the same gel, wherever each was read. ``scatter`` is how far its true curve
    may be from this one, as the σ of the log of its transmittance.
    """

    name: str
    family: Family
    transmittance: Floats
    reference_k: float
    cut: str | None = None
    cc: float | None = None
    nominal: bool = True
    scatter: float = 0.0

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
def cancels(gels: tuple[Gel, ...]) -> NDArray[np.bool_]:
    """Return which gels cancel each other, shape (n, n): nobody hangs both.

    Two gels do when they pull straight against each other, as amber and blue do. A gel that pulls
    along two axes, such as amber with a green cast, does not cancel with what takes its cast away.
    What changes the light by a step or less cancels nothing.
    """
    pulls = np.array(
        [(shift.mired * _STEPS_PER_MIRED, 1.5 * shift.duv / STEP_UV) for shift in shifts_of(gels)]
    )
    sizes = np.hypot(*pulls.T)
    # A gel so deep that the light has no CCT left compares as false and cancels nothing.
    strong = sizes > 1.0
    straight = pulls @ pulls.T < _STRAIGHT * sizes[:, np.newaxis] * sizes
    return np.asarray(straight & strong & strong[:, np.newaxis])
