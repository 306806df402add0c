"""Daylight through one day: between its readings, and beyond them by the sun's estimate.

Between two readings the light is the two mixed, at equal luminance, in proportion of time: sun,
sky and what throws them back come and go, and their mixture lies on the straight line between.
Its level goes in even stops. Before the first and after the last reading the nearest one is changed
as the sky's estimate changes from that moment on (:mod:`evenkelvin.scouting.sky`): by a clear sky,
by a hazy one, and not at all, which is what an even cloud does. The three are the spread.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cache, lru_cache
from itertools import pairwise
from typing import TYPE_CHECKING, Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime, xyz_to_xy
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.tolerance import NEAR_RADII, Verdict, verdict
from evenkelvin.scouting import sky, sun

if TYPE_CHECKING:
    from numpy.typing import NDArray

SKIES = (*sky.TURBIDITY, "overcast")
#: What the light of a minute rests on.
Basis = Literal["reading", "between", "estimate", "unknown"]

#: Altitudes for which the sky is computed once, in degrees.
_ALTITUDES = np.arange(sky.LOWEST_SKY_DEG, 90.01, 0.5)
_MINUTES = np.arange(sun.MINUTES)


@dataclass(frozen=True)
class Stretch:
    """Minutes from ``first`` to ``last``, both included, of one verdict; None: not known."""

    first: int
    last: int
    verdict: Verdict | None


@cache
def _skies(turbidity: float) -> Floats:
    """Return log spectra of shade and of the open for each altitude, shape (2, n, 81)."""
    lights = [sky.daylight(float(altitude), turbidity) for altitude in _ALTITUDES]
    both = [[one.shade for one in lights], [one.open_sky for one in lights]]
    return np.asarray(np.log(np.array(both)))


class Estimate:
    """How the sky's estimate changes daylight from one minute of a day to another.

    ``view`` is the window's: while the sun shines in, its light is sun and sky, else sky alone.
    None is the open.
    """

    def __init__(self, day: sun.Day, view: sun.Window | None) -> None:
        curve = day.curve(sun.STEP)
        altitudes = [where.altitude_deg for _, where in curve]
        self._altitude = np.interp(_MINUTES, [minute for minute, _ in curve], altitudes)
        self._open = np.ones(sun.MINUTES, dtype=np.intp)
        if view is not None:
            self._open[:] = 0
            for span in day.spans(view.direct):
                start = 0.0 if span.start is None else span.start
                end = float(sun.MINUTES) if span.end is None else span.end
                self._open[(start <= _MINUTES) & (end >= _MINUTES)] = 1
        #: Minutes for which there is an estimate, shape (1440,).
        self.known: NDArray[np.bool_] = self._altitude >= sky.LOWEST_SKY_DEG

    def change(self, start: int, minutes: NDArray[np.intp], turbidity: float) -> Floats:
        """Return what a spectrum is multiplied by from one known minute to others, (n, 81)."""
        return np.asarray(
            np.exp(self._log(minutes, turbidity) - self._log(np.array([start]), turbidity))
        )

    def _log(self, minutes: NDArray[np.intp], turbidity: float) -> Floats:
        place = np.interp(self._altitude[minutes], _ALTITUDES, np.arange(len(_ALTITUDES)))
        low = np.minimum(place.astype(np.intp), len(_ALTITUDES) - 2)
        part = (place - low)[:, np.newaxis]
        table = _skies(turbidity)
        lit = self._open[minutes]
        return np.asarray((1.0 - part) * table[lit, low] + part * table[lit, low + 1])


class Daylight:
    """The light of one window through a day.

    Parameters
    ----------
    readings
        (minute of the day, reading), one at least; of two at one minute the later in the list
        counts. Gels on a reading are divided out.
    estimate
        None where the place is not known: then nothing is known beyond the readings.
    over
        The sky that the estimate goes by, "clear", "hazy" or "overcast".
    """

    def __init__(
        self, readings: Sequence[tuple[int, Reading]], estimate: Estimate | None, over: str
    ) -> None:
        last = dict(readings)
        self.minutes = sorted(last)
        self._readings = [_bare(last[minute]) for minute in self.minutes]
        self._means = np.stack([light.spectra[0] for light in self._readings])
        self._estimate = estimate
        #: Turbidities that the light may change by, the chosen one first; None: not at all.
        changes = [*sky.TURBIDITY.values(), None]
        chosen = changes[SKIES.index(over)]
        self._changes = [chosen, *(one for one in changes if one is not chosen)]

    @property
    def first(self) -> int:
        """Minute of the first reading."""
        return self.minutes[0]

    @property
    def last(self) -> int:
        """Minute of the last reading."""
        return self.minutes[-1]

    def basis(self, minute: int) -> Basis:
        """Return what the light of a minute rests on."""
        if minute in self.minutes:
            return "reading"
        if self.first < minute < self.last:
            return "between"
        return "estimate" if self._estimated(self._nearest(minute))[minute] else "unknown"

    def _nearest(self, minute: int) -> int:
        """Return the index of the reading beyond which a minute lies."""
        return 0 if minute < self.first else len(self.minutes) - 1

    def _estimated(self, index: int) -> NDArray[np.bool_]:
        """Return for which minutes a reading can be carried on, shape (1440,)."""
        if self._estimate is None or not self._estimate.known[self.minutes[index]]:
            return np.zeros(sun.MINUTES, dtype=bool)
        return self._estimate.known

    def _carried(self, index: int, minutes: NDArray[np.intp], turbidity: float | None) -> Floats:
        if turbidity is None or self._estimate is None:
            return np.ones((len(minutes), len(GRID)))
        return self._estimate.change(self.minutes[index], minutes, turbidity)

    def at(self, minute: int) -> Reading | None:
        """Return the light of a minute as a reading without gels; None where it is not known.

        What it may be holds what each of the two readings may be, or under each of the skies.
        """
        basis = self.basis(minute)
        if basis == "unknown":
            return None
        if basis == "reading":
            return self._readings[self.minutes.index(minute)]
        if basis == "between":
            after = int(np.searchsorted(self.minutes, minute))
            one, two = self._readings[after - 1], self._readings[after]
            start, end = self.minutes[after - 1], self.minutes[after]
            part = (minute - start) / (end - start)
            mean = (1.0 - part) * one.spectra[0] + part * two.spectra[0]
            shares = [(one, one.spectra[0], 1.0 - part), (two, two.spectra[0], part)]
            return _joined(mean, shares, _between(one.illuminance_lx, two.illuminance_lx, part))
        index = self._nearest(minute)
        read = self._readings[index]
        when = np.array([minute])
        skies = [read.spectra * self._carried(index, when, one)[0] for one in self._changes]
        skies = [_level(spectra) for spectra in skies]
        lights = [replace(read, spectra=spectra) for spectra in skies]
        mean = skies[0][0]
        # Under another sky the mean itself lies elsewhere.
        return _joined(mean, [(light, mean, 1.0 / len(lights)) for light in lights], None)

    def skies(self, minute: int) -> Floats:
        """Return the chromaticity of a minute under each sky, shape (k, 2), the chosen first."""
        index = self._nearest(minute)
        when = np.array([minute])
        spectra = [self._means[index] * self._carried(index, when, one)[0] for one in self._changes]
        return xyz_to_xy(np.array(spectra) @ observer_grid())

    def steps(self, through: Floats, target_xy: Floats) -> Floats:
        """Return how far the light lands from a target behind gels, minute by minute.

        Returns
        -------
        ndarray, shape (k, 1440)
            In steps of CIE TN 001:2014, a row for each sky, the chosen first; NaN where it is not
            known. Between readings all rows agree.
        """
        bars = observer_grid() * through[:, np.newaxis]
        read = self._means @ bars
        xyz = np.full((len(self._changes), sun.MINUTES, 3), np.nan)
        inside = (self.first <= _MINUTES) & (self.last >= _MINUTES)
        for axis in range(3):
            xyz[:, inside, axis] = np.interp(_MINUTES[inside], self.minutes, read[:, axis])
        for index, outside in ((0, self.first > _MINUTES), (-1, self.last < _MINUTES)):
            index %= len(self.minutes)
            minutes = _MINUTES[outside & self._estimated(index)]
            for row, turbidity in enumerate(self._changes):
                carried = self._means[index] * self._carried(index, minutes, turbidity)
                xyz[row, minutes] = carried @ bars
        known = np.isfinite(xyz[..., 0])
        steps = np.full(known.shape, np.nan)
        landed = xyz_to_uv_prime(xyz[known])
        steps[known] = delta_uv_prime(landed, xy_to_uv_prime(target_xy)) / STEP_UV
        return steps

    def stretches(self, through: Floats, target_xy: Floats, radius: float) -> list[Stretch]:
        """Return the day as stretches of one verdict: beyond the readings that of the worst sky."""
        worst = self.steps(through, target_xy).max(axis=0)
        starts = [0, *(np.flatnonzero(np.diff(_ranks(worst, radius))) + 1).tolist(), sun.MINUTES]
        return [
            Stretch(
                start,
                after - 1,
                None if np.isnan(worst[start]) else verdict(float(worst[start]), radius),
            )
            for start, after in pairwise(starts)
        ]


def _ranks(steps: Floats, radius: float) -> NDArray[np.intp]:
    """Return which minutes have one verdict: each its own number, 0 where it is not known."""
    near, out = steps > radius, steps > NEAR_RADII * radius
    return np.where(np.isnan(steps), 0, 1 + near.astype(np.intp) + out)


@lru_cache(maxsize=64)
def estimate(place: sun.Place, day: date, view: sun.Window | None) -> Estimate:
    """Return the estimate of a window on one day; a move of the slider asks for it again."""
    return Estimate(_sun(place, day), view)


@lru_cache(maxsize=4)
def _sun(place: sun.Place, day: date) -> sun.Day:
    return sun.Day(place, day)


def _level(spectra: Floats) -> Floats:
    """Return spectra of luminance 1 each."""
    return np.asarray(spectra / (spectra @ observer_grid()[:, 1])[:, np.newaxis])


def _bare(read: Reading) -> Reading:
    """Return a reading as it is without its gels, each of its spectra of luminance 1."""
    if not read.pack:
        return replace(read, spectra=_level(read.spectra))
    off = read.spectra / pack_transmittance(read.pack)
    bars = observer_grid()
    gain = float((off[0] @ bars)[1] / (read.spectra[0] @ bars)[1])
    lux = None if read.illuminance_lx is None else read.illuminance_lx * gain
    xy = xyz_to_xy(off[0] @ bars)
    cct_k, duv = xy_to_cct(xy)
    return replace(
        read, xy=xy, cct_k=cct_k, duv=duv, spectra=_level(off), spectrum=None, pack=(),
        illuminance_lx=lux,
    )  # fmt: skip


def _between(one: float | None, two: float | None, part: float) -> float | None:
    """Return a level between two, in even stops."""
    return None if one is None or two is None else float(one ** (1.0 - part) * two**part)


def _joined(
    mean: Floats, shares: list[tuple[Reading, Floats, float]], lux: float | None
) -> Reading:
    """Return a light that may be any of several, each about its own middle, as one reading."""
    members, weights = [], []
    for light, middle, share in shares:
        count = len(light.spectra)
        known = np.full(count, 1.0 / count) if light.weights is None else light.weights
        members.append(np.clip(light.widen * (light.spectra - middle) + mean, 0.0, None))
        weights.append(share * known)
    xy = xyz_to_xy(mean @ observer_grid())
    spectra = np.concatenate([mean[np.newaxis], *members])
    return Reading(
        xy, *xy_to_cct(xy), spectra, lamp=shares[0][0].lamp, illuminance_lx=lux,
        weights=np.concatenate([[0.0], *weights]),
    )  # fmt: skip
