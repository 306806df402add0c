"""Flicker: which shutters and frame rates see every pulse of a light alike.

A lamp on the mains brightens twice a cycle; a dimmed LED pulses at its PWM frequency. A frame
that is open for a whole number of pulses collects the same light whenever it starts; and frames
that start a whole number of pulses apart collect the same light whatever their length.

Depth, where neither holds: the light is taken as a + b·|sin(πft)|, the full-wave rectified sine
of pulse frequency f, or as a square wave of a stated duty. Its modulation is the percent flicker
of the IES, (max − min)/(max + min) = b/(2a + b). A frame of n + r pulses, n whole, collects most
when the odd part r is centred on a crest and least when it is centred on a trough, so that both
integrals are closed:

    crest   a·(n + r) + b·(2/π)·(n + sin(πr/2))
    trough  a·(n + r) + b·(2/π)·(n + 1 − cos(πr/2))

in units of one pulse's length.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

#: Largest ripple, (max − min)/(max + min) of what frames collect, that is called safe: half a
#: percent, a seventieth of a stop between the brightest frame and the darkest. Our own choice.
SAFE_RIPPLE = 0.005
#: How closely a shutter found by eye is known, as a part of its length. Our own choice.
BY_EYE = 0.003
#: Most pulses within one found shutter time that an unknown frequency is told from.
MOST_PULSES = 12
#: Slowest rate listed, and how many of anything are.
SLOWEST_FPS, ROOM = 12.0, 24


@dataclass(frozen=True)
class Wave:
    """A pulsing light.

    Attributes
    ----------
    hz
        Pulses of light a second.
    modulation
        (max − min)/(max + min), 0 to 1.
    duty
        Part of each pulse that is on, for a square wave; None for a rectified sine.
    """

    hz: float
    modulation: float = 1.0
    duty: float | None = None


@dataclass(frozen=True)
class Inferred:
    """An unknown pulse frequency, told from shutter times at which no flicker was seen.

    Attributes
    ----------
    hz
        The lowest frequency that fits. Its whole multiples fit too, and what is safe for it is
        safe for them.
    pulses
        How many pulses each shutter time then holds.
    """

    hz: float
    pulses: tuple[int, ...]


def pulses_of_mains(mains_hz: float) -> float:
    """Return pulses of light a second of a lamp on alternating mains: one each half cycle."""
    return 2.0 * mains_hz


def exact_rate(fps: float) -> float:
    """Return the exact rate behind a rounded one: 23.976 is 24000/1001, 29.97 is 30000/1001.

    The rates of 60·1000/1001 television (SMPTE ST 318; ITU-R BT.709 lists them as 24/1.001 and
    30/1.001). Whole rates, and those that are near no such rate, come back as they are.
    """
    if fps == round(fps):
        return fps
    ntsc = round(fps * 1.001) * 1000.0 / 1001.0
    return ntsc if abs(fps - ntsc) < 0.0045 else fps


def shutter_time(fps: float, shutter_deg: float) -> float:
    """Return the time in s that a shutter angle is open for."""
    return shutter_deg / (360.0 * fps)


def shutter_angle(fps: float, time_s: float) -> float:
    """Return the shutter angle in degrees of a time in s."""
    return 360.0 * fps * time_s


def _counts(least: int, most: int, near: float, room: int) -> range:
    """Return the whole numbers from least to most, or the ``room`` of them about ``near``."""
    if most - least < room:
        return range(least, most + 1)
    first = min(max(least, round(near) - room // 2), most - room + 1)
    return range(first, first + room)


def safe_times(hz: float, longest_s: float, near_s: float | None = None) -> list[float]:
    """Return times in s, rising, that hold whole pulses, up to ``longest_s``.

    Where there are more than two dozen, those about ``near_s`` (default: half the longest).
    """
    near = longest_s / 2.0 if near_s is None else near_s
    return [n / hz for n in _counts(1, math.floor(longest_s * hz + 1e-9), near * hz, ROOM)]


def safe_rates(hz: float, near_fps: float = 24.0) -> list[float]:
    """Return frame rates, falling, at which every frame starts at the same point of a pulse.

    They are safe from frame to frame with any shutter. Down to 12 frames a second, and where
    there are more than two dozen, those about ``near_fps``.
    """
    slowest = math.floor(hz / SLOWEST_FPS + 1e-9)
    return [hz / k for k in _counts(1, slowest, hz / near_fps, ROOM)]


def safe_rates_at_angle(hz: float, shutter_deg: float, near_fps: float = 24.0) -> list[float]:
    """Return frame rates, falling, at which a shutter angle holds whole pulses."""
    return safe_rates(shutter_deg * hz / 360.0, near_fps)


def collected(wave: Wave, time_s: float) -> tuple[float, float]:
    """Return the most and the least that a frame collects, relative to its mean light."""
    whole, part = divmod(time_s * wave.hz, 1.0)
    if wave.duty is None:
        mean = 2.0 / math.pi
        crest = mean * math.sin(math.pi * part / 2.0)
        trough = mean * (1.0 - math.cos(math.pi * part / 2.0))
    else:
        mean = wave.duty
        crest = min(part, wave.duty)
        trough = max(0.0, part + wave.duty - 1.0)
    # floor a and swing b with a + b = 1: modulation = b/(2a + b).
    b = 2.0 * wave.modulation / (1.0 + wave.modulation)
    a = 1.0 - b
    held = a * (whole + part) + b * mean * whole
    average = (a + b * mean) * (whole + part)
    return (held + b * crest) / average, (held + b * trough) / average


def ripple(wave: Wave, time_s: float, fps: float | None = None) -> float:
    """Return the depth of flicker, (max − min)/(max + min) of what frames collect.

    Over every phase that a frame can start at; none where ``fps`` is given and frames start a
    whole number of pulses apart.
    """
    if fps is not None and beat(wave.hz, fps) < 1e-9 * wave.hz:
        return 0.0
    most, least = collected(wave, time_s)
    return (most - least) / (most + least)


def ripple_stops(depth: float) -> float:
    """Return stops between the brightest and the darkest frame; infinite where one is black."""
    return math.inf if depth >= 1.0 else math.log2((1.0 + depth) / (1.0 - depth))


def beat(hz: float, fps: float) -> float:
    """Return how many times a second the picture pulses: the alias of ``hz`` at ``fps``."""
    return abs(hz - fps * round(hz / fps))


def infer(clean_s: list[float], seen_s: list[float] | None = None) -> Inferred | None:
    """Infer an unknown pulse frequency from two or more shutter times.

    Parameters
    ----------
    clean_s
        Times in s at which no flicker was seen: each holds a whole number of pulses.
    seen_s
        Times in s at which flicker was seen: none holds a whole number.

    Returns
    -------
    Inferred or None
        The longest common pulse, refined by least squares, or None when none fits that has at
        most twelve pulses in the shortest time.
    """
    shortest = min(clean_s)
    for n in range(1, MOST_PULSES + 1):
        counts = [round(time * n / shortest) for time in clean_s]
        hz = sum(k * k for k in counts) / sum(k * t for k, t in zip(counts, clean_s, strict=True))
        fits = all(
            abs(t * hz - k) <= min(0.1, BY_EYE * k) for k, t in zip(counts, clean_s, strict=True)
        )
        if fits and not any(_whole(time * hz) for time in seen_s or ()):
            return Inferred(hz, tuple(counts))
    return None


def _whole(pulses: float) -> bool:
    nearest = max(1, round(pulses))
    return abs(pulses - nearest) <= BY_EYE * nearest
