"""A spectrum: samples over wavelength, their tristimulus values, and the step to a grid."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.observer import GRID, observer_at
from evenkelvin.data import Floats
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: A light is judged only when it was sampled at least over this range, in nm.
NEEDED = (400.0, 700.0)
#: What a camera sees is published over this range at least, in nm; beyond it hardly sees.
CAMERA_NEEDED = (420.0, 680.0)
#: Widest step between samples that still says something about colour, in nm (ASTM E308).
WIDEST_STEP = 20.0
#: Widest step whose samples may be summed as they stand, in nm (CIE 15:2018, 7.1).
SUMMED_STEP = 5.0
#: Meters write wavelengths with noise in their last digits; a step is what it is to within this.
STEP_NOISE = 0.05
_MOST_SAMPLES = 20_000
#: What the highest sample may be, in whatever unit: photons a second are the largest numbers.
HIGHEST_SAMPLE, LOWEST_PEAK = 1e30, 1e-30


@dataclass(frozen=True)
class Spectrum:
    """Relative or absolute spectral values at rising wavelengths in nm, both of shape (n,)."""

    wavelengths: Floats
    values: Floats


def checked_spectrum(
    wavelengths: list[float],
    values: list[float],
    path: str = "spectrum",
    needed: tuple[float, float] = NEEDED,
) -> Spectrum:
    """Return a spectrum of a light after checking that it can be one.

    Small negative samples, which meters report as noise about zero, are taken as zero when they
    stay above −2 % of the peak. ``needed`` is the range in nm that must be covered.

    Raises
    ------
    Problem
        Naming the list at fault below ``path``.
    """
    at_nm, at_values = f"{path}.wavelengths_nm", f"{path}.values"
    if not wavelengths:
        raise Problem(
            at_nm, Said("The spectrum is empty: give at least its wavelengths and values.")
        )
    if len(wavelengths) != len(values):
        raise Problem(
            at_values,
            Said(
                "The spectrum has {count} wavelengths but {count_2} values; each wavelength "
                "needs one value.",
                count=len(wavelengths),
                count_2=len(values),
            ),
        )
    if len(wavelengths) > _MOST_SAMPLES:
        raise Problem(
            at_nm,
            Said(
                "The spectrum has {count} samples; at most {most_samples} fit.",
                count=len(wavelengths),
                most_samples=_MOST_SAMPLES,
            ),
        )
    nm, power = np.asarray(wavelengths, dtype=float), np.asarray(values, dtype=float)
    steps = np.diff(nm)
    if np.any(steps <= 0):
        where = int(np.argmax(steps <= 0)) + 1
        raise Problem(
            at_nm,
            Said(
                "Wavelength {where} ({nm:g} nm) does not rise above the one before it "
                "({nm_2:g} nm); sort them from short to long.",
                where=where + 1,
                nm=nm[where],
                nm_2=nm[where - 1],
            ),
        )
    if nm[0] > needed[0] or nm[-1] < needed[1]:
        raise Problem(
            at_nm,
            Said(
                "The spectrum covers {nm:g}–{nm_2:g} nm; colour needs at least "
                "{needed:g}–{needed_2:g} nm.",
                nm=nm[0],
                nm_2=nm[-1],
                needed=needed[0],
                needed_2=needed[1],
            ),
        )
    inside = (nm[:-1] < GRID[-1]) & (nm[1:] > GRID[0])
    if np.max(steps[inside]) > WIDEST_STEP + STEP_NOISE:
        raise Problem(
            at_nm,
            Said(
                "The samples are up to {np:g} nm apart; colour needs {widest_step:g} nm or less.",
                np=np.max(steps[inside]),
                widest_step=WIDEST_STEP,
            ),
        )
    peak = float(np.max(power))
    if peak > HIGHEST_SAMPLE or 0.0 < peak < LOWEST_PEAK:
        raise Problem(
            at_values,
            Said(
                "The highest value of the spectrum is {peak:g}: no meter gives that. Check its "
                "numbers.",
                peak=peak,
            ),
        )
    if peak <= 0:
        raise Problem(at_values, Said("The spectrum holds no light: every value is zero or less."))
    if np.max(power[(nm >= GRID[0]) & (nm <= GRID[-1])]) <= 0:
        raise Problem(
            at_values,
            Said(
                "All of its light lies outside {grid:g}–{grid_2:g} nm, where the eye sees.",
                grid=GRID[0],
                grid_2=GRID[-1],
            ),
        )
    if np.min(power) < -0.02 * peak:
        where = int(np.argmin(power))
        raise Problem(
            at_values,
            Said(
                "The value at {nm:g} nm is {power:g}; light cannot be negative.",
                nm=nm[where],
                power=power[where],
            ),
        )
    return Spectrum(nm, np.clip(power, 0.0, None))


def sprague(wavelengths: Floats, values: Floats, wanted: Floats) -> Floats:
    """Interpolate evenly spaced samples by Sprague's fifth-order method (CIE 167:2005).

    Parameters
    ----------
    wavelengths
        In nm, shape (n,), at least six.
    values
        Shape (n,), or (n, m) for m sets of samples at once.
    wanted
        In nm, shape (k,), within the range of ``wavelengths``.

    Returns
    -------
    array
        Shape (k,) or (k, m).
    """
    edge = np.array(
        [
            [884, -1960, 3033, -2648, 1080, -180],
            [508, -540, 488, -367, 144, -24],
            [-24, 144, -367, 488, -540, 508],
            [-180, 1080, -2648, 3033, -1960, 884],
        ]
    )
    ends = edge / 209.0
    padded = np.concatenate([ends[:2] @ values[:6], values, ends[2:] @ values[-6:]])
    step = (wavelengths[-1] - wavelengths[0]) / (len(wavelengths) - 1)
    place = np.clip((wanted - wavelengths[0]) / step, 0.0, len(wavelengths) - 1.0)
    left = np.minimum(place.astype(int), len(wavelengths) - 2)
    x = (place - left).reshape(-1, *[1] * (values.ndim - 1))
    r = [padded[left + k] for k in range(6)]
    a1 = (2 * r[0] - 16 * r[1] + 16 * r[3] - 2 * r[4]) / 24
    a2 = (-r[0] + 16 * r[1] - 30 * r[2] + 16 * r[3] - r[4]) / 24
    a3 = (-9 * r[0] + 39 * r[1] - 70 * r[2] + 66 * r[3] - 33 * r[4] + 7 * r[5]) / 24
    a4 = (13 * r[0] - 64 * r[1] + 126 * r[2] - 124 * r[3] + 61 * r[4] - 12 * r[5]) / 24
    a5 = (-5 * r[0] + 25 * r[1] - 50 * r[2] + 50 * r[3] - 25 * r[4] + 5 * r[5]) / 24
    result: Floats = ((((a5 * x + a4) * x + a3) * x + a2) * x + a1) * x + r[2]
    return result


def _is_even(wavelengths: Floats) -> bool:
    steps = np.diff(wavelengths)
    return bool(np.ptp(steps) <= 0.01 * np.mean(steps))


def interpolate(spectrum: Spectrum, wanted: Floats) -> Floats:
    """Return the spectrum at other wavelengths in nm, shape (n,).

    Evenly spaced samples wider than 1 nm by Sprague's method as CIE 167:2005 recommends, never
    below zero; others linearly. Beyond the ends the nearest sample holds (CIE 15:2018, 7.2.3).
    """
    nm, values = spectrum.wavelengths, spectrum.values
    if len(nm) >= 6 and _is_even(nm) and nm[1] - nm[0] > 1.0:
        smooth = np.clip(sprague(nm, values, wanted), 0.0, None)
        held = np.where(wanted < nm[0], values[0], np.where(wanted > nm[-1], values[-1], smooth))
        return held
    return np.interp(wanted, nm, values)


def tristimulus(spectrum: Spectrum) -> Floats:
    """Return X, Y, Z of the relative spectrum, shape (3,), unscaled.

    Steps up to 5 nm are summed as they stand, each sample weighing the wavelengths nearest to it
    (CIE 15:2018, 7.1); wider ones are first interpolated to 1 nm (ASTM E308). Where the samples
    do not reach 380 or 780 nm the nearest one holds up to there; beyond, they count as zero.
    """
    nm, values = spectrum.wavelengths, spectrum.values
    inner = (nm >= 360.0) & (nm <= 830.0)
    wide = np.max(np.diff(nm[inner])) > SUMMED_STEP + STEP_NOISE
    if wide or nm[0] > GRID[0] or nm[-1] < GRID[-1]:
        fine = np.arange(min(nm[inner][0], GRID[0]), max(nm[inner][-1], GRID[-1]) + 0.5)
        values = interpolate(spectrum, fine)
        nm = fine
    widths = np.gradient(nm)
    total: Floats = (values * widths) @ observer_at(nm)
    return total


def on_grid(spectrum: Spectrum) -> Floats:
    """Return the spectrum on the search grid, shape (81,).

    Finer samples are averaged over a triangle 5 nm wide at half its height, so that a narrow line
    is neither missed nor counted twice (the bandpass that CIE 15:2018 assumes of 5 nm data).
    """
    nm, values = spectrum.wavelengths, spectrum.values
    if np.max(np.diff(nm)) >= SUMMED_STEP - STEP_NOISE:
        return interpolate(spectrum, GRID)
    fine = np.arange(GRID[0] - 5.0, GRID[-1] + 5.25, 0.25)
    near = np.interp(fine, nm, values)
    kernel = 1.0 - np.abs(np.arange(-5.0, 5.01, 0.25)) / 5.0
    smooth = np.convolve(near, kernel / kernel.sum(), mode="same")
    return np.interp(GRID, fine, smooth)


def on_1nm(spectrum: Spectrum, wanted: Floats, beyond: Literal["nearest", "zero"]) -> Floats:
    """Return the spectrum at whole nanometres, shape (n,), as the rendering metrics take it.

    Finer samples are averaged over the nanometre about each, so that no line is lost; steps up to
    5 nm are interpolated linearly, which spreads a line over the band it was measured in and never
    goes below zero; wider ones as :func:`interpolate` does. Beyond the ends the nearest sample
    holds, or nothing is there.
    """
    nm, values = spectrum.wavelengths, spectrum.values
    widest = np.max(np.diff(nm))
    if widest > SUMMED_STEP + STEP_NOISE:
        found = interpolate(spectrum, wanted)
    elif widest > 1.0 - STEP_NOISE:
        found = np.interp(wanted, nm, values)
    else:
        edges = np.concatenate([wanted - 0.5, wanted + 0.5])
        fine = np.union1d(nm, edges)
        height = np.interp(fine, nm, values)
        area = np.concatenate([[0.0], np.cumsum(np.diff(fine) * (height[1:] + height[:-1]) / 2)])
        low, high = np.split(np.interp(edges, fine, area), 2)
        found = high - low
    if beyond == "zero":
        found = np.where((wanted < nm[0] - STEP_NOISE) | (wanted > nm[-1] + STEP_NOISE), 0.0, found)
    return found
