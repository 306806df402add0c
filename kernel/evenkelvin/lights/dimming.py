"""A filament dimmed: how much light is left at which colour, and the way back.

A filament is a grey radiator, so its light is Planck's law weighed by V(λ). What a reading shows
beyond the black body (glass, diffusion, gel) stays when the lamp is dimmed: the spectrum as read
is multiplied by the black body that the filament becomes over the one that it was. Volts follow
a published exponent. Readings of the same lamp at known settings correct both laws. All of it is
an estimate until the light is read again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_uv,
    xy_to_uv_prime,
    xyz_to_uv_prime,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.illuminant import C2_NM_K
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.colorimetry.temperature import uv_to_cct, xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.reading import READING_K, Reading, pack_transmittance
from evenkelvin.lights.tolerance import Verdict, verdict

#: Tungsten melts here, in K: no filament reads more without a filter before it.
MELTS_K = 3695.0
#: Light goes with this power of the volts (gas-filled lamps; IES Lighting Handbook, from memory).
VOLTS_EXPONENT = 3.4
#: Least part of its light that is reckoned with: below, a filament glows but lights nothing.
LEAST_LIGHT = 0.001
#: Coolest filament that is reckoned with, in K.
_COOLEST_K = 1000.0
_ROWS = 401
#: A smaller difference in amount is none, in stops.
_SAME_STOPS = 0.15


@dataclass(frozen=True, eq=False)
class Setting:
    """A lamp at one setting, all as parts of what was read: its light, its volts, its filament."""

    light: float
    volts: float
    kelvin: float


@dataclass(frozen=True, eq=False)
class Taught:
    """The same lamp read at a known setting: its filament in K, and its light and volts if known.

    Light and volts are parts of what they were in the first reading.
    """

    kelvin: float
    light: float | None = None
    volts: float | None = None


@dataclass(frozen=True, eq=False)
class _Bend:
    """What a lamp did against what the law says: a broken line from nothing through each pair."""

    law: Floats
    own: Floats

    def of(self, law: float | Floats) -> Floats:
        return _along(law, self.law, self.own)

    def back(self, own: float | Floats) -> Floats:
        return _along(own, self.own, self.law)


def _along(x: float | Floats, xs: Floats, ys: Floats) -> Floats:
    beyond = np.asarray(x) * ys[-1] / xs[-1]
    return np.where(np.asarray(x) > xs[-1], beyond, np.interp(x, xs, ys))


def _bend(points: Sequence[tuple[float, float]]) -> _Bend:
    if not points:
        return _Bend(np.array([0.0, 1.0]), np.array([0.0, 1.0]))
    law, own = np.array([(0.0, 0.0), *sorted(points)]).T
    if np.any(np.diff(law) <= 0.0) or np.any(np.diff(own) <= 0.0):
        raise ValueError("the readings contradict each other")
    return _Bend(law, own)


def filament_k(reading: Reading) -> float:
    """Return the colour temperature of a filament in K, without the gels before it; may be NaN."""
    bare = reading.spectra[0] / pack_transmittance(reading.pack)
    return float(_cct((bare @ observer_grid())[np.newaxis])[0])


def _cct(xyz: Floats) -> Floats:
    return uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(xyz)))[:, 0]


def _glow(wavelengths: Floats, kelvin: float | Floats, was_k: float) -> Floats:
    """Return a black body over another at each wavelength: (n,), or (m, n) for m temperatures."""
    now = np.asarray(kelvin, dtype=np.float64)[..., np.newaxis]
    return np.asarray(
        np.expm1(C2_NM_K / (wavelengths * was_k)) / np.expm1(C2_NM_K / (wavelengths * now))
    )


@dataclass(frozen=True, eq=False)
class Filament:
    """A tungsten light as read, and how it dims.

    ``kelvins`` falls from the filament as read, ``lights`` is the part of its light that the law
    gives there, ``uv_prime`` where it then lands, each a row.
    """

    reading: Reading
    kelvins: Floats
    lights: Floats
    uv_prime: Floats
    warmth: _Bend
    volts: _Bend

    def at_light(self, light: float) -> Setting:
        """Return the setting that leaves a part of the light, 0.001 to 1."""
        lost = -np.log(light)
        # Both rise along the rows.
        fallen = np.interp(lost, -np.log(self.lights), np.log(self.kelvins[0] / self.kelvins))
        kelvin = self.kelvins[0] * np.exp(-self.warmth.of(fallen))
        volts = np.exp(-self.volts.of(lost / VOLTS_EXPONENT))
        return Setting(light, float(volts), float(kelvin))

    def at_volts(self, volts: float) -> Setting:
        """Return the setting at a part of the volts; its light may be less than is reckoned."""
        lost = VOLTS_EXPONENT * self.volts.back(-np.log(volts))
        return self.at_light(float(np.exp(-lost)))

    def nearest(self, target_uv: Floats) -> Setting:
        """Return the setting whose colour comes closest to u′ v′, shape (2,)."""
        start, along = self.uv_prime[:-1], np.diff(self.uv_prime, axis=0)
        part = np.sum((target_uv - start) * along, axis=1) / np.sum(along**2, axis=1)
        part = np.clip(part, 0.0, 1.0)
        away = np.hypot(*(start + part[:, np.newaxis] * along - target_uv).T)
        row = int(np.argmin(away))
        fallen = np.interp(
            row + part[row], np.arange(_ROWS), np.log(self.kelvins[0] / self.kelvins)
        )
        law = self.warmth.back(fallen)
        lost = np.interp(law, np.log(self.kelvins[0] / self.kelvins), -np.log(self.lights))
        return self.at_light(float(np.clip(np.exp(-lost), LEAST_LIGHT, 1.0)))

    def landed(self, setting: Setting) -> Reading:
        """Return the light at a setting as a reading: its colour, and its amount if it was read."""
        return _glowing(self.reading, self.kelvins[0], setting)


def _glowing(reading: Reading, was_k: float, setting: Setting) -> Reading:
    xyz = (reading.spectra[0] * _glow(GRID, setting.kelvin, was_k)) @ observer_grid()
    # The grid sees a colour; what a spectrum was read as may lie a hair beside it.
    xy = reading.xy if setting.kelvin == was_k else xyz_to_xy(xyz)
    cct_k, duv = xy_to_cct(xy)
    spectrum = reading.spectrum
    if spectrum is not None:
        glow = _glow(spectrum.wavelengths, setting.kelvin, was_k)
        spectrum = Spectrum(spectrum.wavelengths, spectrum.values * glow)
    lux, flash = reading.illuminance_lx, reading.exposure_lx_s
    spectra = reading.spectra * _glow(GRID, setting.kelvin, was_k)
    return replace(
        reading,
        xy=xy,
        cct_k=cct_k,
        duv=duv,
        spectra=spectra / spectra.max(axis=1, keepdims=True),
        spectrum=spectrum,
        illuminance_lx=None if lux is None else lux * setting.light,
        exposure_lx_s=None if flash is None else flash * setting.light,
    )


def filament(reading: Reading, taught: Sequence[Taught] = ()) -> Filament:
    """Return how a tungsten light dims.

    Parameters
    ----------
    reading
        As read, gels included; its filament (:func:`filament_k`) between 1000 K and
        :data:`MELTS_K`.
    taught
        The same lamp at known settings.

    Raises
    ------
    ValueError
        When the settings contradict each other: less light or fewer volts but not warmer.
    """
    was_k = filament_k(reading)
    kelvins = np.geomspace(was_k, min(_COOLEST_K, 0.9 * was_k), _ROWS)
    xyz = (reading.spectra[0] * _glow(GRID, kelvins, was_k)) @ observer_grid()
    lights = xyz[:, 1] / xyz[0, 1]
    uv_prime = xyz_to_uv_prime(xyz)
    alone = Filament(reading, kelvins, lights, uv_prime, _bend(()), _bend(()))
    warmth, volts = [], []
    for one in taught:
        fallen = float(np.log(was_k / one.kelvin))
        lost = np.interp(fallen, np.log(was_k / kelvins), -np.log(lights))
        if one.light is not None:
            lost = -np.log(one.light)
            law = float(np.log(was_k / alone.at_light(one.light).kelvin))
            warmth.append((law, fallen))
        if one.volts is not None:
            volts.append((float(lost) / VOLTS_EXPONENT, float(-np.log(one.volts))))
    return replace(alone, warmth=_bend(warmth), volts=_bend(volts))


def dimmed(reading: Reading, light: float) -> Reading:
    """Return a tungsten light left with a part of its light, 0.001 to 1, by the law alone."""
    lamp = filament(reading)
    return lamp.landed(lamp.at_light(light))


@dataclass(frozen=True, eq=False)
class Dimming:
    """A tungsten light dimmed to what it is meant to be: the setting, and where it lands.

    ``before_gel`` tells that this comes before any gel: a practical that holds by its dimmer.
    """

    setting: Setting
    landed: Reading
    delta_uv: float
    verdict: Verdict
    before_gel: bool


def may_dim(light: Reading) -> bool:
    """Tell whether a light is a filament whose dimming can be reckoned."""
    if light.lamp != "tungsten" or not len(light.spectra):
        return False
    kelvin = filament_k(light)
    return bool(np.isfinite(kelvin)) and READING_K[0] <= kelvin <= MELTS_K


def dimming(light: Reading, target: Reading, radius: float) -> Dimming | None:
    """Return the setting of a dimmer that helps a light, None where none does.

    Where it does not hold, the setting whose colour comes closest, if that is more than a step
    closer; where it holds but is brighter than a target of known amount, that amount.

    Parameters
    ----------
    light, target
        The reading and what it is meant to be.
    radius
        Tolerance in steps.
    """
    if not may_dim(light):
        return None
    aim = xy_to_uv_prime(target.xy)
    now = float(delta_uv_prime(xy_to_uv_prime(light.xy), aim))
    lamp = filament(light)
    if verdict(now / STEP_UV, radius) != "holds":
        setting = lamp.nearest(aim)
        landed = lamp.landed(setting)
        delta = float(delta_uv_prime(xy_to_uv_prime(landed.xy), aim))
        if now - delta < STEP_UV:
            return None
    else:
        part = _part_wanted(light, target)
        if part is None or part > 2.0**-_SAME_STOPS:
            return None
        setting = lamp.at_light(max(part, LEAST_LIGHT))
        landed = lamp.landed(setting)
        delta = float(delta_uv_prime(xy_to_uv_prime(landed.xy), aim))
    word = verdict(delta / STEP_UV, radius)
    return Dimming(setting, landed, delta, word, word == "holds" and light.role == "practical")


def _part_wanted(light: Reading, target: Reading) -> float | None:
    for mine, wanted in (
        (light.illuminance_lx, target.illuminance_lx),
        (light.exposure_lx_s, target.exposure_lx_s),
    ):
        if mine is not None and wanted is not None:
            return wanted / mine
    return None
