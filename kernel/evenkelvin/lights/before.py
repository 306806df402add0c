"""What a lamp did before: a spectrum of it, or what gel did to it, held against a bare x y.

A name on a call sheet is no proof that the lamp is still the one that hung there, or that it is
dialled as it was. So what was measured before is believed by how near the lamp read then to what it
reads now, and never wholly: even were it always another lamp's, that nearest in x y of its kind,
'holds' would still be true of 88 in 100 (``tests/outside/test_honest_guesses.py``).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import observer_grid
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.scatter import landing_scatter
from evenkelvin.lights.reading import moved, pack_transmittance
from evenkelvin.said import Said, joined

#: How far a lamp drifts between two days, and two meters differ, in steps (1 σ; common practice,
#: no source).
DRIFT_STEPS = 4.0
#: How much an earlier spectrum counts for beside all that the lamp may be otherwise.
_SHARE = 0.7
#: Scatter of the shift between two readings of one meter, in steps (1 σ in each direction).
SHIFT_STEPS = 0.5
#: Of how far a lamp reads from what it read before, what the shift by a gel may differ by.
_SHIFT_OF_DRIFT = 0.2
#: Beyond this squared distance from every stand-in a shift is thought to be another lamp's.
_IMPLAUSIBLE = 12.0
#: The odds are one in ten that a shift is another lamp's, however well it fits.
_OTHERS = 0.1
#: What moves the odds by less than this has not told anything.
_TELLING = 0.1


@dataclass(frozen=True)
class KnownSpectrum:
    """A spectrum of the lamp, without gel, on the search grid."""

    name: str
    bare: tuple[float, ...]


@dataclass(frozen=True)
class KnownShift:
    """Two readings of the lamp in u′ v′, between which gels were hung or taken off.

    ``scatter`` is that of the gels, which are told apart by name and curve alone.
    """

    name: str
    first: tuple[float, float]
    then: tuple[float, float]
    on_first: tuple[Gel, ...]
    on_then: tuple[Gel, ...]
    scatter: tuple[float, ...]


Before = KnownSpectrum | KnownShift


def after_words(names: Sequence[str]) -> Said | None:
    """Return whose past has told something of a light; None where none has."""
    if not names:
        return None
    return Said("Based on what {names} did before.", names=joined(names))


def with_spectra(
    spectra: Floats,
    weights: Floats,
    known: Sequence[KnownSpectrum],
    xy: Floats,
    through: Floats,
) -> tuple[Floats, Floats]:
    """Return what a light may be, with the spectra that it had before among it.

    Parameters
    ----------
    spectra, weights
        Stand-ins of the x y and of luminance 1, shape (n, 81), and how likely each is, (n,).
    known
        The earlier spectra. Each is bent to the x y of today.
    xy, through
        What is read now, shape (2,), through gels of this transmittance, (81,).

    Returns
    -------
    spectra, weights
        Those of the stand-ins, and after them the earlier ones that could be bent to this x y.
    """
    bars = observer_grid()
    shaped, fits = [], []
    for one in known:
        seen = np.array(one.bare) * through
        away = delta_uv_prime(xyz_to_uv_prime(seen @ bars), xy_to_uv_prime(xy)) / STEP_UV
        found = bend(seen[np.newaxis], xy)
        if len(found):
            shaped.append(found[0] / (found[0] @ bars[:, 1]))
            fits.append(float(np.exp(-0.5 * (away / DRIFT_STEPS) ** 2)))
    if not shaped or max(fits) < 1e-6:
        return spectra, weights
    odds = max(fits) * _SHARE / (1.0 - _SHARE)
    share = odds / (1.0 + odds) if len(spectra) else 1.0
    own = share * np.array(fits) / sum(fits)
    return np.concatenate([spectra, shaped]), np.concatenate([(1.0 - share) * weights, own])


def with_shift(
    spectra: Floats, weights: Floats, known: KnownShift, through: Floats
) -> tuple[Floats, bool]:
    """Return the weights of stand-ins by what gel did to the lamp before.

    Parameters
    ----------
    spectra, weights
        Shape (n, 81), as measured through gels of transmittance ``through``, (81,); and (n,).
    known
        What was seen.
    through
        As above.

    Returns
    -------
    weights, told
        Shape (n,), adding up to 1, and whether it told anything.
    """
    bare = spectra / through
    mean = weights @ bare
    first, then = pack_transmittance(known.on_first), pack_transmittance(known.on_then)

    def seen(light: Floats, curve: Floats) -> Floats:
        return xyz_to_uv_prime((light * curve) @ observer_grid())

    off = seen(bare, then) - seen(bare, first) - np.subtract(known.then, known.first)
    away = float(delta_uv_prime(seen(mean, first), np.array(known.first)))
    of_gels, _ = landing_scatter(mean * then, moved(known.on_first, known.on_then))
    spread = (SHIFT_STEPS * STEP_UV) ** 2 + (_SHIFT_OF_DRIFT * away) ** 2
    far = np.sum(off * np.linalg.solve(of_gels + spread * np.eye(2), off.T).T, axis=1)
    if far.min() > _IMPLAUSIBLE:
        return weights, False
    likely = np.exp(-0.5 * (far - far.min()))
    agreeing = weights * (_OTHERS + (1.0 - _OTHERS) * likely)
    agreeing /= agreeing.sum()
    return agreeing, bool(0.5 * np.abs(agreeing - weights).sum() >= _TELLING)
