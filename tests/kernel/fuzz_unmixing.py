"""Take thousands of simulated sums apart: what is called certain must be, and limits must hold.

As a script:  python tests/kernel/fuzz_unmixing.py [sums] [seed]
A bounded part of it runs with the other tests.

The readings, of the lights as well as of their sum, have the scatter of a hand-held meter: 0.0015
in x and in y, or 2 % of the mean in every sample of a spectrum (common practice, no source).
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

XY, SAMPLE = 0.0015, 0.02
#: Off by more than this part of the sum is wrong.
WRONG = 0.1


@dataclass
class Tally:
    """What came of the sums."""

    sums: int = 0
    certain: int = 0
    certain_but_wrong: int = 0
    shares: int = 0
    held: int = 0
    all_held: int = 0
    twins: int = 0
    twins_named: int = 0
    missing: int = 0

    def __str__(self) -> str:
        return (
            f"{self.sums} sums: {self.certain} called certain, {self.certain_but_wrong} of them "
            f"wrong; limits hold {self.held} of {self.shares} shares, all shares of "
            f"{self.all_held} sums; {self.twins} sums with lights that cannot be told apart, "
            f"named in {self.twins_named}; {self.missing} said to miss a light"
        )


def _split(rng: np.random.Generator, n: int) -> Any:
    """Return true shares: any, or with lights that are off."""
    shares = rng.dirichlet(np.full(n, rng.choice([0.5, 1.0, 3.0])))
    if n > 1 and rng.random() < 0.3:
        shares[rng.integers(n)] = 0.0
    return shares / shares.sum()


def by_x_y(rng: np.random.Generator) -> tuple[list[Any], Any, Any, bool]:
    """Return lights as read, the sum as read, the true shares, and whether two are twins."""
    from evenkelvin.colorimetry.chromaticity import xy_to_xyz
    from evenkelvin.colorimetry.temperature import cct_to_xy, xy_to_cct
    from evenkelvin.lights.reading import Reading

    n = int(rng.choice([2, 2, 3, 3, 4]))
    mired = rng.uniform(120, 380, n)
    tint = rng.normal(scale=rng.choice([0.002, 0.008, 0.015]), size=n)
    twin = n > 1 and rng.random() < 0.2
    if twin:
        mired[1], tint[1] = mired[0], tint[0]
    xy = np.array([cct_to_xy(1e6 / m, d) for m, d in zip(mired, tint, strict=True)])
    shares = _split(rng, n)
    xyz = shares @ xy_to_xyz(xy)

    def read(true: Any) -> Any:
        seen = true + rng.normal(scale=XY, size=2)
        return Reading(seen, *xy_to_cct(seen), np.empty((0, 81)))

    return [read(one) for one in xy], read(xyz[:2] / xyz.sum()), shares, twin


def by_spectra(rng: np.random.Generator) -> tuple[list[Any], Any, Any, bool]:
    """The same with spectra; a light may also be a mixture of two others."""
    from evenkelvin.colorimetry.illuminant import illuminant, planck
    from evenkelvin.colorimetry.observer import GRID, observer_grid
    from evenkelvin.colorimetry.spectrum import Spectrum
    from evenkelvin.lights.reading import Reading

    names = ("A", "D50", "D65", "FL2", "FL4", "FL7", "FL11", "FL12", "HP1", "LED-B1", "LED-B3")

    def lamp() -> Any:
        kind = rng.integers(3)
        if kind == 0:
            return planck(GRID, float(rng.uniform(2500, 7000)))
        if kind == 1:
            return np.array(illuminant(str(rng.choice(names))))
        blue = np.exp(-(((GRID - rng.uniform(440, 460)) / 14) ** 2))
        return rng.uniform(0.3, 1.2) * blue + np.exp(
            -(((GRID - rng.uniform(560, 610)) / rng.uniform(50, 75)) ** 2)
        )

    n = int(rng.choice([2, 3, 3, 4, 5]))
    lux = observer_grid()[:, 1]
    curves = np.stack([(curve := lamp()) / (curve @ lux) for _ in range(n)])
    twin = rng.random() < 0.25
    if twin:
        part = rng.uniform(0.3, 0.7) if n > 2 else 1.0
        curves[-1] = part * curves[0] + (1.0 - part) * curves[1]
    shares = _split(rng, n)

    def read(true: Any) -> Any:
        seen = np.maximum(true + rng.normal(scale=SAMPLE * true.mean(), size=len(GRID)), 0.0)
        xyz = seen @ observer_grid()
        return Reading(
            xyz[:2] / xyz.sum(), 5000.0, 0.0, seen[np.newaxis], spectrum=Spectrum(GRID, seen)
        )

    return [read(one) for one in curves], read(shares @ curves), shares, twin


def check(sums: Iterator[tuple[list[Any], Any, Any, bool]], count: int) -> Tally:
    """Take sums apart and count what is right."""
    from evenkelvin.lights.unmixing import unmix

    tally = Tally()
    for _ in range(count):
        lights, total, true, twin = next(sums)
        found = unmix(lights, total)
        wrong = bool(np.max(np.abs(found.amounts - true)) > WRONG)
        held = (found.least - 1e-9 <= true) & (true <= found.most + 1e-9)
        tally.sums += 1
        tally.certain += found.certain
        tally.certain_but_wrong += found.certain and wrong
        tally.shares += len(true)
        tally.held += int(held.sum())
        tally.all_held += bool(held.all())
        tally.missing += found.missing is not None
        # Twins of which there is little in the sum do not matter.
        alike = true[0] + (true[1] if len(true) > 2 or not found.spectral else 0.0) + true[-1]
        if twin and not found.certain and alike > 0.5 and wrong:
            tally.twins += 1
            tally.twins_named += bool(found.alike)
    return tally


def many(kind: str, seed: int) -> Iterator[tuple[list[Any], Any, Any, bool]]:
    """Yield simulated sums of a kind, "x y" or "spectra", without end."""
    rng = np.random.default_rng(seed)
    while True:
        yield by_x_y(rng) if kind == "x y" else by_spectra(rng)


def main() -> None:
    """Simulate as many sums as asked, of both kinds, and tell what came of them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 2026
    for kind in ("x y", "spectra"):
        start = time.process_time()
        tally = check(many(kind, seed), count)
        print(f"by {kind}, {(time.process_time() - start) / count * 1e3:.0f} ms each: {tally}")


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[2] / "kernel"))
    main()
