"""Real lamps as the referee of guesses: what a bare x y promises against the lamp's own spectrum.

The spectra are the measured ones of the library of ANSI/IES TM-30, as luxpy carries it: for tests
only, never shipped. They are split in two halves by a seed. One half fits how often each member of
a lamp family is met, and by what the region has to be widened; the other half checks it.

    python tests/real_lamps.py        fits, writes both tables of the kernel, and prints the measure
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import product
from pathlib import Path

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_xy,
    xy_to_uv_prime,
    xyz_to_uv_prime,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.spectrum import Spectrum, on_grid
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.kit import NOMINAL_SCATTER, nominal_kit
from evenkelvin.filters.scatter import LEARNED_SCATTER, smooth
from evenkelvin.lights import stand_in
from evenkelvin.lights.before import Before, KnownShift, KnownSpectrum
from evenkelvin.lights.fixing import FLOOR_STEPS, land
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.region import CHI_2, LIKELY, SURE
from evenkelvin.rendering.cri import colour_rendering_index

SEED = 2026
DATA = Path(stand_in.__file__).parent.parent / "data"
GELS = ("1/2 CTO", "full CTO", "1/2 CTB", "full CTB", "1/2 minus green")
KINDS = ("led", "led rgb", "fluorescent", "hmi", "mercury", "sodium", "tungsten")
#: Kinds of which there are lamps enough to learn what is met how often.
FITTED = ("led", "led rgb", "fluorescent")
#: A member of a family less often met than this, on average, is left out.
_LEAST_SHARE = 0.004
#: So few lamps say little of how far a kind scatters.
_FEW = 20
_COLUMNS = [kind.replace(" ", "_") for kind in KINDS]
_MADE = f"fitted by 'tests/real_lamps.py', seed {SEED}, on half of the lamps of ANSI/IES TM-30"
#: How often the region shall hold the truth on the half that fits; more where few lamps speak.
_AIM, _AIM_OF_FEW = 0.91, 0.95


@dataclass(frozen=True, eq=False)
class Lamp:
    """A measured lamp: its kind, its spectrum on the search grid, x y and Ra (None: not rated)."""

    kind: str
    spectrum: Floats
    xy: Floats
    ra: float | None


def _kind(name: str, group: str) -> str | None:
    if group.startswith("Fluorescent"):
        # The illuminants of CIE 15 stand in themselves: they are no referee.
        return None if "CIE" in name else "fluorescent"
    if group == "High Intensity Discharge":
        return "sodium" if "HPS" in name else "mercury" if "Mercury" in name else "hmi"
    return {
        "LED Phosphor": "led", "LED Hybrid": "led", "LED Mixed": "led rgb",
        "Incandescent/Filament": "tungsten",
    }.get(group)  # fmt: skip


@cache
def halves() -> tuple[tuple[Lamp, ...], tuple[Lamp, ...]]:
    """Return the half that fits and the half that checks."""
    import luxpy

    table = luxpy._IESTM3018["S"]
    nm, rows = table["data"][0], table["data"][1:]
    rng = np.random.default_rng(SEED)
    fits: list[Lamp] = []
    checks: list[Lamp] = []
    # Each make of lamp that the library tells apart is split by itself, so that no half has most
    # of the rare ones.
    makes: dict[tuple[str, str], list[int]] = {}
    kinds: list[str | None] = []
    for k, info in enumerate(table["info"]):
        kinds.append(_kind(str(info[1]), str(info[2])))
        if kinds[k] is not None:
            make = "hmi" if kinds[k] == "mercury" else str(kinds[k])
            makes.setdefault((make, str(info[2])), []).append(k)
    for which in makes.values():
        order = rng.permutation(which)
        middle = (len(order) + 1) // 2
        for place, k in enumerate(order):
            own = Spectrum(nm, np.clip(rows[k], 0.0, None))
            spectrum = on_grid(own)
            xy = xyz_to_xy(spectrum @ observer_grid())
            cct, duv = xy_to_cct(xy)
            rated = np.isfinite(cct) and abs(duv) < 0.05
            ra = float(round(colour_rendering_index(own).ra)) if rated else None
            kind = str(kinds[k])
            (fits if place < middle else checks).append(Lamp(kind, spectrum, xy, ra))
    return tuple(fits), tuple(checks)


def _gels(vary: float, rng: np.random.Generator) -> list[tuple[Gel, Floats]]:
    """Return each gel as it is thought to be, and as it is: a smooth deviation of σ ``vary``."""
    kit = {gel.name: gel for gel in nominal_kit()}
    root = np.linalg.cholesky(smooth() + 1e-9 * np.eye(len(GRID)))
    return [
        (kit[name], kit[name].transmittance * np.exp(vary * (root @ rng.normal(size=len(GRID)))))
        for name in GELS
    ]


@dataclass(frozen=True, eq=False)
class Measure:
    """Of many landings: how far off in u′ v′ (n, 2), the covariance of the region (n, 2, 2), the
    odds (n,), and whether it held (n,).
    """

    away: Floats
    covariance: Floats
    odds: Floats
    held: Floats

    @property
    def inside(self) -> float:
        """How often the 90 % region holds the truth."""
        return inside(self.away, self.covariance)

    def off(self, share: float) -> float:
        """Return the steps off that this share stays below."""
        return float(np.quantile(np.hypot(*self.away.T), share) / STEP_UV)


def inside(away: Floats, covariance: Floats) -> float:
    """Return how many of these (n, 2) lie in the 90 % regions of these covariances (n, 2, 2)."""
    scaled = np.linalg.solve(covariance, away[..., np.newaxis])[..., 0]
    return float(np.mean(np.sum(away * scaled, axis=1) <= CHI_2))


def own_spectrum(lamp: Lamp, rng: np.random.Generator) -> tuple[Before, ...]:
    """Return the lamp's own spectrum of another day, when it read some 2 steps (1 σ) otherwise."""
    drift = 2.0 * STEP_UV * rng.normal(size=2)
    then = bend(lamp.spectrum[np.newaxis], uv_prime_to_xy(xy_to_uv_prime(lamp.xy) + drift))
    return tuple(KnownSpectrum("key", tuple(one.tolist())) for one in then)


def strangers_spectrum(lamp: Lamp, _: np.random.Generator) -> tuple[Before, ...]:
    """Return the spectrum of that other lamp of the kind that reads nearest to this one."""
    others = [one for half in halves() for one in half if one.kind == lamp.kind and one is not lamp]
    uv = xy_to_uv_prime(np.stack([one.xy for one in others]))
    nearest = others[int(np.argmin(delta_uv_prime(uv, xy_to_uv_prime(lamp.xy))))]
    return (KnownSpectrum("key", tuple((nearest.spectrum / nearest.spectrum.max()).tolist())),)


def earlier_gel(lamp: Lamp, rng: np.random.Generator) -> tuple[Before, ...]:
    """Return what 1/4 CTO, learned in x y, did to the lamp, read to 0.3 steps (1 σ)."""
    gel = next(gel for gel in nominal_kit() if gel.name == "1/4 CTO")
    gel = replace(gel, scatter=LEARNED_SCATTER)
    root = np.linalg.cholesky(smooth() + 1e-9 * np.eye(len(GRID)))
    curve = gel.transmittance * np.exp(gel.scatter * (root @ rng.normal(size=len(GRID))))
    first = xy_to_uv_prime(lamp.xy)
    then = xyz_to_uv_prime((lamp.spectrum * curve) @ observer_grid())
    then = then + 0.3 * STEP_UV * rng.normal(size=2)
    (u_0, v_0), (u_1, v_1) = first.tolist(), then.tolist()
    return (KnownShift("key", (u_0, v_0), (u_1, v_1), (), (gel,), (gel.scatter,)),)


def _nothing(_: Lamp, __: np.random.Generator) -> tuple[Before, ...]:
    return ()


def measure(
    lamps: Sequence[Lamp],
    kind: str,
    told: bool,
    vary: float = 0.0,
    seed: int = SEED,
    past: Callable[[Lamp, np.random.Generator], tuple[Before, ...]] = _nothing,
) -> Measure:
    """Return how guesses stand the test on real lamps.

    Parameters
    ----------
    lamps
        The lamps.
    kind
        As what they are taken; empty for what they are.
    told
        Whether their Ra is typed beside x y.
    vary
        How far the gels are from their curves, as the σ of the log of transmittance.
    seed
        Of the gels, and of the targets, which lie 1.6 steps (1 σ) from where the light is thought
        to land.
    past
        What is known that the lamp did before.
    """
    rng = np.random.default_rng(seed)
    found = []
    for lamp in lamps:
        evidence = (("ra", lamp.ra),) if told and lamp.ra is not None else ()
        taken = kind or lamp.kind
        may_be = stand_in.guess(taken, lamp.xy, None, evidence, past(lamp, rng))
        cct, duv = xy_to_cct(lamp.xy)
        light = Reading(
            lamp.xy, cct, duv, may_be.spectra, lamp=taken, weights=may_be.weights,
            widen=may_be.widen,
        )  # fmt: skip
        for gel, curve in _gels(vary, rng):
            gel = Gel(gel.name, gel.family, gel.transmittance, gel.reference_k, scatter=vary)
            truth = xyz_to_uv_prime((lamp.spectrum * curve) @ observer_grid())
            mean = xyz_to_uv_prime((light.spectra[0] * gel.transmittance) @ observer_grid())
            wanted = mean + 1.6 * STEP_UV * rng.normal(size=2) / np.sqrt(2.0)
            landing = land(light, uv_prime_to_xy(wanted), (gel,), 4.0)
            away = truth - mean
            found.append(
                (
                    away,
                    landing.region.covariance,
                    landing.odds,
                    float(delta_uv_prime(truth, wanted)) <= 4.0 * STEP_UV,
                )
            )
    away, covariance, odds, held = zip(*found, strict=True)
    return Measure(np.array(away), np.array(covariance), np.array(odds), np.array(held))


def _shares(kind: str, lamps: Sequence[Lamp]) -> dict[int, int]:
    """Return how often each member is met, in thousandths, by expectation and maximisation.

    A lamp is taken for a member by how near the two land behind the five gels (1.5 steps, 1 σ);
    what is seen in few lamps is drawn towards all members alike.
    """
    landed = [gel.transmittance for gel, _ in _gels(0.0, np.random.default_rng(0))]
    rows: list[dict[int, float]] = []
    seen: set[int] = set()
    for lamp in lamps:
        spectra, numbers = stand_in.members(kind, lamp.xy, np.ones(len(GRID)), None)
        off = np.zeros(len(spectra))
        for curve in landed:
            uv = xyz_to_uv_prime((spectra * curve) @ observer_grid())
            truth = xyz_to_uv_prime((lamp.spectrum * curve) @ observer_grid())
            off += (delta_uv_prime(uv, truth) / STEP_UV) ** 2 / len(landed)
        likely = np.exp(-0.5 * (off - off.min()) / 1.5**2)
        rows.append({int(k): float(v) for k, v in zip(numbers, likely, strict=True)})
        seen |= set(rows[-1])
    every = sorted(seen)
    place = {number: k for k, number in enumerate(every)}
    likely = np.zeros((len(rows), len(every)))
    for k, row in enumerate(rows):
        likely[k, [place[number] for number in row]] = list(row.values())
    share = np.full(len(every), 1.0 / len(every))
    for _ in range(80):
        taken = likely * share
        taken /= taken.sum(axis=1, keepdims=True)
        share = taken.sum(axis=0) + 0.3 * len(rows) / len(every)
        share /= share.sum()
    return {
        number: round(1000 * part)
        for number, part in zip(every, share, strict=True)
        if part >= _LEAST_SHARE
    }


def _write(name: str, comment: str, header: list[str], rows: list[list[float]]) -> None:
    lines = [f"# {comment}", ",".join(header)]
    lines += [",".join(f"{value:g}" for value in row) for row in rows]
    (DATA / f"{name}.csv").write_text("\n".join(lines) + "\n", encoding="utf-8")


def _forget() -> None:
    stand_in.load_table.cache_clear()
    stand_in.weights_of.cache_clear()
    stand_in._guess.cache_clear()


def _tell(lamps: Sequence[Lamp]) -> None:
    """Fit the families on these lamps and write their table."""
    shares = {kind: _shares(kind, [one for one in lamps if one.kind == kind]) for kind in FITTED}
    numbers = sorted({number for share in shares.values() for number in share})
    _write(
        "lamp_families",
        f"How often each member of a lamp family is met, in thousandths; {_MADE}",
        ["member", *(kind.replace(" ", "_") for kind in FITTED)],
        [[k, *(shares[kind].get(k, 0) for kind in FITTED)] for k in numbers],
    )
    _forget()


def fit() -> None:
    """Fit both tables on the first half and write them.

    The factors are found crosswise: families fitted on every other lamp of the half, and the
    region tried on those between, so that no lamp vouches for itself.
    """
    fits, _ = halves()
    comment = f"By what the scatter of stand-ins is widened, without and with Ra; {_MADE}"
    header = ["told", *_COLUMNS, "unknown"]
    _write("lamp_regions", comment, header, [[told, *(1.0 for _ in header[1:])] for told in (0, 1)])
    found: dict[tuple[bool, str], list[Measure]] = {}
    for first, second in ((0, 1), (1, 0)):
        _tell(fits[first::2])
        for told, kind in product((False, True), (*KINDS, "unknown")):
            some = _of(fits[second::2], kind)
            found.setdefault((told, kind), [])
            found[told, kind] += [measure(some, kind, told)] if some else []
    rows = [
        [float(told), *(_factor(found[told, kind]) for kind in (*KINDS, "unknown"))]
        for told in (False, True)
    ]
    _tell(fits)
    _write("lamp_regions", comment, header, rows)
    _forget()


def _of(lamps: Sequence[Lamp], kind: str) -> list[Lamp]:
    """Return the lamps that are taken for a kind: LEDs of either make for an unknown one."""
    return [
        one
        for one in lamps
        if one.kind == kind or (kind == "unknown" and one.kind in ("led", "led rgb"))
    ]


def _factor(found: Sequence[Measure]) -> float:
    """Return the factor with which the 90 % region holds the truth often enough.

    Where only a few lamps speak, the region is not made smaller than the stand-ins have it.
    """
    if not found:
        return 1.0
    away = np.concatenate([one.away for one in found])
    floor = np.eye(2) * (FLOOR_STEPS * STEP_UV) ** 2
    # The tables say 1 as yet: what is not the floor is the scatter itself.
    scatter = np.concatenate([one.covariance for one in found]) - floor
    few = len(away) < _FEW * len(GELS)
    least, aim = (1.0, _AIM_OF_FEW) if few else (0.4, _AIM)
    for factor in np.arange(least, 6.0, 0.01):
        if inside(away, factor**2 * scatter + floor) >= aim:
            return round(float(factor), 2)
    return 6.0


def table() -> str:
    """Return the measure on the half that was not fitted, as a table."""
    _, checks = halves()
    lines = [
        "| lamp | n | steps off, median / 9 in 10 | region holds | with Ra | region holds |",
        "|---|---|---|---|---|---|",
    ]
    for kind in (*KINDS, "unknown"):
        of_kind = _of(checks, kind)
        cells = [kind, str(len(of_kind))]
        for told in (False, True):
            found = measure(of_kind, kind, told)
            cells += [f"{found.off(0.5):.1f} / {found.off(0.9):.1f}", f"{100 * found.inside:.0f} %"]
        lines.append(f"| {' | '.join(cells)} |")
    for vary in (0.0, NOMINAL_SCATTER):
        for told in (False, True):
            found = measure(checks, "", told, vary)
            said = {"holds": found.odds >= SURE}
            said["should hold"] = (found.odds >= LIKELY) & ~said["holds"]
            words = [
                f"'{word}' said {which.sum()} times"
                + (f", true {np.mean(found.held[which]):.2f}" if which.any() else "")
                for word, which in said.items()
            ]
            lines.append(
                f"gels vary {vary:g}, {'with' if told else 'without'} Ra, {len(found.odds)} "
                f"landings: off {found.off(0.5):.1f} / {found.off(0.9):.1f}, region holds "
                f"{100 * found.inside:.0f} %, {'; '.join(words)}"
            )
    return "\n".join(lines)


if __name__ == "__main__":
    if "--measure" not in sys.argv:
        fit()
    print(table())
