"""Several lights on one spot: what they make together, and which share is whose.

Light adds: X, Y, Z of a mixture are the sums of those of its parts, Y in proportion to the
illuminance (CIE 15:2018, 7). Taking a sum apart is the same equation solved the other way round,
with no negative share.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from evenkelvin.colorimetry.chromaticity import is_real, xy_to_uv_prime, xyz_to_xy
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid, wavelengths_1nm
from evenkelvin.colorimetry.spectrum import Spectrum, interpolate, tristimulus
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.nonnegative import nonnegative_least_squares
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.stand_in import stand_ins
from evenkelvin.problem import Problem

#: Luminous efficacy of radiation at 540 THz in lm/W (SI).
LUMENS_PER_WATT = 683.0
#: How well a hand-held meter tells x and y (standard uncertainty; common practice, no source).
XY_UNCERTAINTY = 0.0015
#: How well it tells a spectral sample, as a part of the mean (common practice, no source).
_SAMPLE_UNCERTAINTY = 0.02
#: A share is certain when its uncertainty is below this part of the sum.
CERTAIN_PART = 0.1
#: A sum is explained when the fit comes this close: in steps, and in parts of the spectrum.
_EXPLAINED_STEPS, _EXPLAINED_PART = 4.0, 0.08
#: How well it tells lux (common practice, no source).
_LUX_UNCERTAINTY = 0.03
#: X, Y, Z as they are weighed: the lux of the sum are held, its chromaticity is approached.
_HELD = np.diag([1.0, 100.0, 1.0])
#: Least part of the sum that is called missing, given that lux are read to a few percent.
_MISSING_PART = 0.08


def xyz_per_lux(xy: Floats) -> Floats:
    """Return X, Y, Z of a chromaticity at Y = 1: (..., 2) to (..., 3)."""
    x, y = xy[..., 0], xy[..., 1]
    return np.stack([x / y, np.ones_like(y), (1.0 - x - y) / y], axis=-1)


def mixed_spectrum(lights: Sequence[Reading], amounts: Floats) -> Spectrum | None:
    """Return the sum of measured spectra in mW/(m² nm) for lux; None unless all are measured.

    On the samples of the spectra where these are the same for all, otherwise every nanometre.
    """
    spectra = [light.spectrum for light in lights]
    measured = [one for one in spectra if one is not None]
    if not measured or len(measured) < len(spectra):
        return None
    nm = measured[0].wavelengths
    if not all(np.array_equal(one.wavelengths, nm) for one in measured):
        fine = wavelengths_1nm()
        nm = fine[(fine >= GRID[0]) & (fine <= GRID[-1])]
    total = np.zeros(len(nm))
    for one, amount in zip(measured, amounts, strict=True):
        values = one.values if one.wavelengths is nm else interpolate(one, nm)
        total += values * amount * 1e3 / (LUMENS_PER_WATT * tristimulus(one)[1])
    return Spectrum(nm, total)


def mix(lights: Sequence[Reading], amounts: Floats, unit: str = "lx") -> Reading:
    """Return the mixture of lights as a reading.

    Parameters
    ----------
    lights
        One or more.
    amounts
        Illuminance of each in lx (or exposure in lx·s), shape (n,), none negative, not all zero.
    unit
        "lx", "lx s", or "" for amounts that say only the proportion.
    """
    xyz = amounts @ xyz_per_lux(np.stack([light.xy for light in lights]))
    xy = xyz_to_xy(xyz)
    luminance = observer_grid()[:, 1]
    if all(len(light.spectra) for light in lights):
        # What the mixture may be: the first guess at every part, then the second, and so on.
        count = max(len(light.spectra) for light in lights)
        spectra = np.zeros((count, len(GRID)))
        for light, amount in zip(lights, amounts, strict=True):
            per_lux = light.spectra / (light.spectra @ luminance)[:, np.newaxis]
            spectra += amount * per_lux[np.arange(count) % len(light.spectra)]
        spectra /= spectra.max(axis=1, keepdims=True)
    else:
        try:
            spectra = stand_ins("led rgb", xy)
        except Problem:
            # A mixture as deep as its primaries: no spectrum stands in for it either.
            spectra = np.empty((0, len(GRID)))
    lit = [light for light, amount in zip(lights, amounts, strict=True) if amount > 0.0]
    spectrum = mixed_spectrum(lit, amounts[amounts > 0.0])
    cct_k, duv = xy_to_cct(xy)
    total = float(amounts.sum())
    return Reading(
        xy=xy,
        cct_k=cct_k,
        duv=duv,
        spectra=spectra[:1] if spectrum is not None else spectra,
        spectrum=spectrum,
        illuminance_lx=total if unit == "lx" else None,
        exposure_lx_s=total if unit == "lx s" else None,
    )


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

    ``uncertainty`` is standard; ``least`` and ``most`` are what each share can be when several
    splits explain the sum equally well. ``alike`` names groups of lights that cannot be told
    apart. ``residual_steps`` is the distance of the fit from the sum, ``residual_part`` what the
    fit leaves of the readings it was made on.
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
        total = max(float(self.amounts.sum()), 1e-300)
        doubt = np.maximum(self.uncertainty, (self.most - self.least) / 2.0)
        return bool(np.all(doubt <= CERTAIN_PART * total)) and self.missing is None


def _columns(lights: Sequence[Reading]) -> Floats:
    """Return the spectra of measured lights, a lux each, shape (81, n)."""
    spectra = np.stack([light.spectra[0] for light in lights])
    return np.asarray((spectra / (spectra @ observer_grid()[:, 1])[:, np.newaxis]).T)


def _bounds(a: Floats, shares: Floats) -> tuple[Floats, Floats]:
    """Return the least and most of each share among all splits with the same sum.

    The splits form a polytope; each of its corners has no more shares than the rank.
    """
    least, most = shares.copy(), shares.copy()
    sizes = np.linalg.svd(a, compute_uv=False)
    rank = int(np.sum(sizes > 1e-9 * sizes[0]))
    if rank == a.shape[1]:
        return least, most
    total = a @ shares
    for corner in combinations(range(a.shape[1]), rank):
        part = a[:, corner]
        found, _, found_rank, _ = np.linalg.lstsq(part, total, rcond=1e-9)
        fits = np.linalg.norm(part @ found - total) <= 1e-9 * np.linalg.norm(total)
        if found_rank == rank and fits and np.all(found >= -1e-12 * shares.sum()):
            every = np.zeros(len(shares))
            every[list(corner)] = np.maximum(found, 0.0)
            least, most = np.minimum(least, every), np.maximum(most, every)
    return least, most


def _alike(a: Floats, uncertainty: Floats, total: float) -> tuple[tuple[int, ...], ...]:
    """Return groups of lights that trade against each other in the split."""
    doubtful = uncertainty > CERTAIN_PART * total
    if not doubtful.any():
        return ()
    units = a / np.linalg.norm(a, axis=0)
    _, sizes, turns = np.linalg.svd(units, full_matrices=True)
    weakest = turns[-1] if len(sizes) < a.shape[1] else turns[int(np.argmin(sizes))]
    group = tuple(int(i) for i in np.nonzero(np.abs(weakest) > 0.2)[0] if doubtful[i])
    return (group,) if len(group) > 1 else ()


def unmix(lights: Sequence[Reading], total: Reading) -> Shares:
    """Take a measured sum apart into known lights.

    By spectra when all of them were measured, otherwise by X, Y, Z, which tells three lights
    apart at most. Uncertainties come from those of the readings (JCGM 100:2008, 5.1), assumed
    independent.

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
    per_lux = xyz_per_lux(xy).T
    if spectral:
        a, b = _columns(lights), _columns([total])[:, 0] * amount
    else:
        a, b = _HELD @ per_lux, _HELD @ xyz_per_lux(total.xy) * amount
    shares, norm = nonnegative_least_squares(a, b)
    if not spectral:
        shares *= amount / shares.sum()
    residual_part = norm / float(np.linalg.norm(b if spectral else xyz_per_lux(total.xy) * amount))
    least, most = (shares, shares) if spectral else _bounds(a, shares)

    if spectral:
        noise = max(norm / np.sqrt(max(len(b) - len(shares), 1)), _SAMPLE_UNCERTAINTY * b.mean())
        spread = np.diag(np.linalg.pinv(a.T @ a, rcond=1e-12, hermitian=True))
        uncertainty = noise * np.sqrt(np.maximum(spread, 0.0))
        if np.linalg.matrix_rank(a, tol=1e-9 * float(np.linalg.norm(a, 2))) < len(shares):
            least, most = _bounds(a, shares)
    else:
        uncertainty = _propagated(xy, total.xy, amount)
    uncertainty = np.minimum(uncertainty, amount)
    doubt = np.maximum(uncertainty, (most - least) / 2.0)

    fit = xyz_to_xy(per_lux @ shares) if shares.any() else xy[0]
    steps = float(delta_uv_prime(xy_to_uv_prime(fit), xy_to_uv_prime(total.xy)) / STEP_UV)
    left_over = _left_over(lights, total, fit)
    if left_over is not None:
        shares = least = most = np.array([_amount(light) or 0.0 for light in lights])
        doubt = uncertainty = _LUX_UNCERTAINTY * shares
    return Shares(
        shares,
        uncertainty,
        least,
        most,
        steps,
        residual_part,
        spectral,
        _alike(a, doubt, amount),
        left_over or _unexplained(b - a @ shares if spectral else None, fit, steps, residual_part),
    )


def _propagated(xy: Floats, total_xy: Floats, amount: float) -> Floats:
    """Return the uncertainty of shares from that of every x and y, one after the other."""
    points = np.vstack([xy, total_xy])
    squares = np.zeros(len(xy))
    for index in np.ndindex(points.shape):
        ends = []
        for side in (-1.0, 1.0):
            moved = points.copy()
            moved[index] += side * XY_UNCERTAINTY
            columns = _HELD @ xyz_per_lux(moved).T
            found, _ = nonnegative_least_squares(columns[:, :-1], columns[:, -1])
            ends.append(found * amount / found.sum())
        squares += ((ends[1] - ends[0]) / 2.0) ** 2
    return np.sqrt(squares)


def _amount(light: Reading) -> float | None:
    return light.illuminance_lx or light.exposure_lx_s


def _left_over(lights: Sequence[Reading], total: Reading, fit: Floats) -> Missing | None:
    """Return what is left of the sum when every light was read alone in the same unit."""
    amount = _amount(total)
    same = all((one.illuminance_lx is None) == (total.illuminance_lx is None) for one in lights)
    if amount is None or not same or any(_amount(light) is None for light in lights):
        return None
    rest = amount * xyz_per_lux(total.xy)
    for light in lights:
        rest = rest - (_amount(light) or 0.0) * xyz_per_lux(light.xy)
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
