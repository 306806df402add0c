"""A measured sum of lights taken apart: which share is whose, and how far that can be trusted.

The equation of a mixture solved the other way round, with no negative share. Every reading has
its scatter, that of the lights as well as that of the sum, so the answer is a region: all splits
that agree with the readings. What a share can be is read off its edge. Lights that can take each
other's place within it cannot be told apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    is_real,
    xy_to_uv_prime,
    xy_to_xyz,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import observer_grid
from evenkelvin.data import Floats
from evenkelvin.lights.nonnegative import nonnegative_least_squares
from evenkelvin.lights.reading import Reading

#: How well a hand-held meter tells x and y (standard uncertainty; common practice, no source).
XY_UNCERTAINTY = 0.0015
#: How well it tells a spectral sample, as a part of the mean (common practice, no source).
SAMPLE_UNCERTAINTY = 0.02
#: How well it tells lux (common practice, no source).
_LUX_UNCERTAINTY = 0.03
#: A share is certain when no more than this part of the sum lies between it and what it can be.
CERTAIN_PART = 0.1
#: A sum is explained when the fit comes this close: in steps, and in parts of the spectrum.
_EXPLAINED_STEPS, _EXPLAINED_PART = 4.0, 0.08
#: Least part of the sum that is called missing, given that lux are read to a few percent.
_MISSING_PART = 0.08
#: How strictly the shares by x y are held to add up, against a meter's scatter.
_HELD = 1e4
#: How often the interval in which a share's limit lies is halved.
_HALVINGS = 10


@dataclass(frozen=True, eq=False)
class Missing:
    """Light in a sum that none of the known lights give.

    ``xy`` is None when only its direction can be told: it then lies beyond the sum, seen from
    ``nearest``, the closest that the known lights come. ``amount`` is in the unit of the sum.
    """

    xy: Floats | None
    amount: float | None
    nearest: Floats


@dataclass(frozen=True, eq=False)
class Shares:
    """A sum taken apart, all by light, shape (n,); amounts in the unit of the sum.

    ``least`` and ``most`` are what each share can be: in 95 sums of 100 they hold all of the true
    ones. ``uncertainty`` is half the farther of the two from the share (expanded with k = 2,
    JCGM 100:2008, 6.2). ``alike`` names groups of lights that cannot be told apart.
    ``residual_steps`` is the distance of the fit from the sum, ``residual_part`` what the fit
    leaves of the readings it was made on.
    """

    amounts: Floats
    uncertainty: Floats
    least: Floats
    most: Floats
    residual_steps: float
    residual_part: float
    spectral: bool
    alike: tuple[tuple[int, ...], ...]
    missing: Missing | None

    @property
    def certain(self) -> bool:
        """Whether every share is known well enough to act on."""
        doubt = np.maximum(self.most - self.amounts, self.amounts - self.least)
        return bool(np.all(doubt <= CERTAIN_PART * self.amounts.sum())) and self.missing is None


@dataclass(frozen=True, eq=False)
class _Region:
    """Splits that agree with the readings: |rows·s − values|² ≤ limit · scatter(s), s ≥ 0.

    The sum's reading scatters by ``own``, that of each light by ``each`` times its share.
    """

    rows: Floats
    values: Floats
    own: float
    each: Floats
    limit: float

    def scatter(self, split: Floats) -> float:
        """Return the variance with which a split's readings miss each other."""
        return float(self.own**2 + np.sum((split * self.each) ** 2))

    def held(self, light: int, share: float) -> tuple[float, Floats]:
        """Return how badly the best split with this share of a light agrees, and that split."""
        others = np.arange(self.rows.shape[1]) != light
        rest, norm = nonnegative_least_squares(
            self.rows[:, others], self.values - self.rows[:, light] * share
        )
        split = np.full(len(others), share)
        split[others] = rest
        return norm**2 / self.scatter(split), split

    def edge(self, light: int, inside: float, outside: float) -> tuple[float, Floats]:
        """Return how far a share can go from one that agrees towards another, and that split."""
        found, split = self.held(light, outside)
        if found <= self.limit:
            return outside, split
        for _ in range(_HALVINGS):
            half = (inside + outside) / 2.0
            found, split = self.held(light, half)
            inside, outside = (half, outside) if found <= self.limit else (inside, half)
        return outside, split


def _region_by_xy(xy: Floats, total_xy: Floats) -> _Region:
    """Return the splits that agree with chromaticities, all read with the same scatter.

    A mixture lies at the mean of its lights' x y, weighed by w = s/y. Seen from the sum, that
    mean scatters by σ²(1 + Σw²) in x and in y, however near to each other the lights lie.
    """
    weights = total_xy[1] / xy[:, 1]
    rows = ((xy - total_xy) * weights[:, np.newaxis]).T / XY_UNCERTAINTY
    rows = np.vstack([rows, np.full(len(xy), _HELD)])
    values = np.array([0.0, 0.0, _HELD])
    _, norm = nonnegative_least_squares(rows, values)
    return _Region(rows, values, 1.0, weights, max(_chi_square(2), norm**2 + _chi_square(1)))


def _region_by_spectra(a: Floats, b: Floats) -> _Region:
    """Return the splits that agree with spectra a (m, n) of lights and b (m,) of their sum.

    The scatter of the lights makes even equal ones look different: of the sum of squares along
    any direction, m are scatter. What is left tells lights apart (errors in variables, method of
    moments: Fuller, 'Measurement Error Models' (1987), 2.2); a direction in which little is left
    is open.
    """
    m, n = a.shape
    scale = SAMPLE_UNCERTAINTY * a.mean(axis=0)
    own = SAMPLE_UNCERTAINTY * b.mean()
    split, norm = nonnegative_least_squares(a, b)
    expected = np.sqrt((own**2 + np.sum((split * scale) ** 2)) * max(m - n, 1))
    rough = max(1.0, norm / float(expected))
    scale, own = scale * rough, own * rough
    unit = a / scale
    squares, turns = np.linalg.eigh(unit.T @ unit)
    told = squares > m + 2.0 * np.sqrt(2.0 * m)
    squares, turns = squares[told], turns[:, told]
    centre = turns.T @ (unit.T @ b) / (squares - m)
    sharp = (squares - m) / np.sqrt(squares)
    rows = sharp[:, np.newaxis] * turns.T * scale
    region = _Region(rows, sharp * centre, float(own), scale, _chi_square(n))
    best, norm = nonnegative_least_squares(rows, sharp * centre)
    return replace(region, limit=max(region.limit, norm**2 / region.scatter(best) + _chi_square(1)))


def _chi_square(n: int) -> float:
    """Return what χ² with n degrees of freedom stays below in 95 of 100 (Wilson–Hilferty)."""
    part = 2.0 / (9.0 * n)
    return float(n * (1.0 - part + 1.6449 * np.sqrt(part)) ** 3)


def _limits(region: _Region, shares: Floats) -> tuple[Floats, Floats, tuple[tuple[int, ...], ...]]:
    """Return the least and most of each share, and the groups of lights that cannot be told apart.

    A group hangs together by lights of which one falls as another rises.
    """
    n = len(shares)
    least, most = np.empty(n), np.empty(n)
    trades = np.zeros((n, n), dtype=bool)
    for light, share in enumerate(shares):
        least[light], low = region.edge(light, share, 0.0)
        most[light], high = region.edge(light, share, max(1.0, share))
        trades[light] = low - high > 0.25 * (most[light] - least[light])
    doubtful = np.maximum(most - shares, shares - least) > CERTAIN_PART
    linked = (trades | trades.T) & doubtful & doubtful[:, np.newaxis]
    for _ in range(n):
        linked = linked | (linked.astype(int) @ linked.astype(int) > 0)
    groups = {tuple(int(i) for i in np.nonzero(row)[0]) for row in linked}
    return least, most, tuple(sorted(group for group in groups if len(group) > 1))


def _columns(lights: Sequence[Reading]) -> Floats:
    """Return the spectra of measured lights, a lux each, shape (81, n)."""
    spectra = np.stack([light.spectra[0] for light in lights])
    return np.asarray((spectra / (spectra @ observer_grid()[:, 1])[:, np.newaxis]).T)


def unmix(lights: Sequence[Reading], total: Reading) -> Shares:
    """Take a measured sum apart into known lights.

    By spectra when all of them were measured, otherwise by x y, which tells three lights apart at
    most.

    Parameters
    ----------
    lights
        One or more, each read alone.
    total
        Their sum; shares come in its lx (or lx·s), or as parts of 1 when it has none. When it
        and every light have lx, what is missing follows from the amounts.
    """
    amount = total.illuminance_lx or total.exposure_lx_s or 1.0
    spectral = total.spectrum is not None and all(one.spectrum is not None for one in lights)
    xy = np.stack([light.xy for light in lights])
    per_lux = xy_to_xyz(xy).T
    if spectral:
        a, b = _columns(lights), _columns([total])[:, 0]
        region = _region_by_spectra(a, b)
        shares, norm = nonnegative_least_squares(a, b)
        residual_part = norm / float(np.linalg.norm(b))
    else:
        region = _region_by_xy(xy, total.xy)
        shares, _ = nonnegative_least_squares(region.rows, region.values)
        shares /= shares.sum()
        target = xy_to_xyz(total.xy)
        residual_part = float(np.linalg.norm(per_lux @ shares - target) / np.linalg.norm(target))
    least, most, alike = _limits(region, shares)

    fit = xyz_to_xy(per_lux @ shares) if shares.any() else xy[0]
    steps = float(delta_uv_prime(xy_to_uv_prime(fit), xy_to_uv_prime(total.xy)) / STEP_UV)
    left_over = _left_over(lights, total, fit)
    if left_over is not None:
        # Every light was read in lux: these tell, and the sum's own lux scatter too.
        shares = np.array([_amount(light) or 0.0 for light in lights]) / amount
        doubt = 2.0 * np.sqrt(2.0) * _LUX_UNCERTAINTY * shares
        least, most, alike = shares - doubt, shares + doubt, ()
    missing = left_over
    if missing is None:
        residual = (b - a @ shares) * amount if spectral else None
        missing = _unexplained(residual, fit, steps, residual_part)
    return Shares(
        shares * amount,
        np.maximum(most - shares, shares - least) / 2.0 * amount,
        least * amount,
        most * amount,
        steps,
        residual_part,
        spectral,
        alike,
        missing,
    )


def _amount(light: Reading) -> float | None:
    return light.illuminance_lx or light.exposure_lx_s


def _left_over(lights: Sequence[Reading], total: Reading, fit: Floats) -> Missing | None:
    """Return what is left of the sum when every light was read alone in the same unit."""
    amount = _amount(total)
    same = all((one.illuminance_lx is None) == (total.illuminance_lx is None) for one in lights)
    if amount is None or not same or any(_amount(light) is None for light in lights):
        return None
    rest = amount * xy_to_xyz(total.xy)
    for light in lights:
        rest = rest - (_amount(light) or 0.0) * xy_to_xyz(light.xy)
    if rest[1] <= _MISSING_PART * amount or np.any(rest <= 0.0) or not is_real(xyz_to_xy(rest)):
        return None
    return Missing(xyz_to_xy(rest), float(rest[1]), fit)


def _unexplained(
    residual: Floats | None, fit: Floats, steps: float, residual_part: float
) -> Missing | None:
    """Return what the best fit leaves, by spectra (a residual) or by x y alone."""
    if residual is None:
        return Missing(None, None, fit) if steps > _EXPLAINED_STEPS else None
    if residual_part <= _EXPLAINED_PART:
        return None
    xyz = np.maximum(residual, 0.0) @ observer_grid()
    return Missing(xyz_to_xy(xyz), float(xyz[1]), fit)
