"""Stops: incident-light exposure, ratios and the inverse square.

Incident light after ISO 2720:1974: N²/t = E·S/C, with N the f-number, t the time in s, E the
illuminance in lx, S the ISO speed and C the constant of the receptor. Whatever stands before the
sensor (filters, the glass of the lens) divides E by 2 to the power of its stops.
"""

from __future__ import annotations

import math
import re

from evenkelvin.said import Figure, Said, counted

#: Constants C in lx·s usual for the two receptors. ISO 2720 allows 240 to 400 for a flat and
#: 320 to 540 for a domed one; each maker states its own, so C can always be typed.
CONSTANTS = {"flat": 250.0, "dome": 340.0}

#: Lux in a foot-candle: a lumen on a square foot, the foot being 0.3048 m exactly.
LX_PER_FC = 1.0 / 0.3048**2
M_PER_FT = 0.3048
#: Widest bounds within which a light is taken for real: steady in lx, a flash in lx·s.
LIGHT_BOUNDS = (1e-3, 1e7)
FLASH_BOUNDS = (1e-4, 1e6)

#: f-numbers as engraved, by whole stops from f/1; the exact series is √2 to that power.
_MARKS = {
    -2: "0.5", -1: "0.7", 0: "1", 1: "1.4", 2: "2", 3: "2.8", 4: "4", 5: "5.6", 6: "8",
    7: "11", 8: "16", 9: "22", 10: "32", 11: "45", 12: "64", 13: "90", 14: "128",
}  # fmt: skip
_THIRDS = ("", "⅓", "⅔")
_FRACTIONS = {"¼": 1 / 4, "⅓": 1 / 3, "½": 1 / 2, "⅔": 2 / 3, "¾": 3 / 4}
_STOP = re.compile(
    r"(?:[fF]\s*/?|[tT]\s*/?)?\s*(?P<mark>\d+(?:[.,]\d*)?|[.,]\d+)"
    r"\s*(?:(?P<fraction>[¼⅓½⅔¾])|(?:and|\+)?\s*(?P<tenths>\d)\s*(?:tenths?|/10))?"
)


def light_needed(f_number: float, iso: float, constant: float, loss_stops: float = 0.0) -> float:
    """Return E·t in lx·s that an f-number needs."""
    return f_number**2 * constant * math.exp2(loss_stops) / iso


def f_number_for(light_lx_s: float, iso: float, constant: float, loss_stops: float = 0.0) -> float:
    """Return the f-number that E·t in lx·s gives."""
    return math.sqrt(light_lx_s * iso / constant / math.exp2(loss_stops))


def iso_for(light_lx_s: float, f_number: float, constant: float, loss_stops: float = 0.0) -> float:
    """Return the ISO speed at which E·t in lx·s gives an f-number."""
    return f_number**2 * constant * math.exp2(loss_stops) / light_lx_s


def over_stops(light_lx_s: float, f_number: float, iso: float, constant: float) -> float:
    """Return the stops by which E·t in lx·s is over for an f-number; negative: too dark."""
    return math.log2(light_lx_s / light_needed(f_number, iso, constant))


def t_number(f_number: float, lens_stops: float) -> float:
    """Return the T-number of a lens that loses ``lens_stops`` in its glass (ISO 517)."""
    return f_number * math.exp2(lens_stops / 2.0)


def ratio_stops(light: float, against: float) -> float:
    """Return how many stops brighter one illuminance is than another."""
    return math.log2(light / against)


def lux_at(illuminance_lx: float, distance_m: float, at_m: float) -> float:
    """Return illuminance at another distance, by the inverse square of a small source."""
    return illuminance_lx * (distance_m / at_m) ** 2


def distance_for(illuminance_lx: float, distance_m: float, wanted_lx: float) -> float:
    """Return the distance at which a small source gives the wanted illuminance."""
    return distance_m * math.sqrt(illuminance_lx / wanted_lx)


def distance_to_lose(distance_m: float, stops: float) -> float:
    """Return the distance from the lamp at which its light has lost that many stops."""
    return distance_m * math.exp2(stops / 2.0)


def _position(f_number: float) -> float:
    """Return the f-number's place in the series, in stops from f/1, an engraved one exactly."""
    for whole, mark in _MARKS.items():
        if math.isclose(f_number, float(mark), rel_tol=0.004):
            return float(whole)
    return 2.0 * math.log2(f_number)


def _mark(whole: int) -> str:
    return _MARKS.get(whole) or f"{float(f'{math.exp2(whole / 2.0):.2g}'):g}"


def stop_in_thirds(f_number: float, prefix: str = "f/") -> Said:
    """Return an f-number as said in thirds: ``f/2.8⅓`` is a third of a stop past f/2.8."""
    whole, third = divmod(round(_position(f_number) * 3.0), 3)
    return Said("{mark}", mark=f"{prefix}{_mark(whole)}{_THIRDS[third]}")


def stop_in_tenths(f_number: float, prefix: str = "f/") -> Said:
    """Return an f-number as said in tenths: ``f/2.8 and 3 tenths``."""
    whole, tenth = divmod(round(_position(f_number) * 10.0), 10)
    mark = f"{prefix}{_mark(whole)}"
    if not tenth:
        return Said("{mark}", mark=mark)
    return counted(tenth, "{mark} and 1 tenth", "{mark} and {n} tenths", mark=mark)


def parse_stop(text: str) -> float | None:
    """Return the f-number of a stop as said, ``2.8⅓`` or ``f/2.8 and 3 tenths``; None if none."""
    found = _STOP.fullmatch(text.strip())
    if not found:
        return None
    number = float(found["mark"].replace(",", "."))
    if found["fraction"]:
        return number * math.exp2(_FRACTIONS[found["fraction"]] / 2.0)
    return number * math.exp2(int(found["tenths"] or 0) / 20.0)


def amount_in_thirds(stops: float) -> Said:
    """Return a number of stops, unsigned, as said in thirds: ``2⅓ stops``, ``⅔ stop``."""
    whole, third = divmod(round(abs(stops) * 3.0), 3)
    if not whole and not third:
        return Said("no stop")
    amount = f"{whole or ''}{_THIRDS[third]}"
    many = whole > 1 or (whole == 1 and third)
    return Said("{amount} stops", amount=amount) if many else Said("{amount} stop", amount=amount)


def amount_in_tenths(stops: float) -> Said:
    """Return a number of stops, unsigned, in tenths: ``2.3 stops``."""
    amount = Figure(f"{abs(stops):.1f}")
    if amount == "1.0":
        return Said("{amount} stop", amount=amount)
    return Said("{amount} stops", amount=amount)


def stop_words(f_number: float, say: str) -> Said:
    """Return an f-number as said in "thirds" or "tenths"."""
    return stop_in_tenths(f_number) if say == "tenths" else stop_in_thirds(f_number)


def amount_words(stops: float, say: str) -> Said:
    """Return a number of stops, unsigned, as said in "thirds" or "tenths"."""
    return amount_in_tenths(stops) if say == "tenths" else amount_in_thirds(stops)


def ratio_words(stops: float, say: str = "thirds") -> Said:
    """Return a ratio of lights as said: ``4:1, 2 stops over``."""
    if round(abs(stops) * (10.0 if say == "tenths" else 3.0)) == 0:
        return Said("1:1, level")
    times = math.exp2(abs(stops))
    amount = amount_words(stops, say)
    if stops > 0:
        return Said("{times:.3g}:1, {amount} over", times=times, amount=amount)
    return Said("1:{times:.3g}, {amount} under", times=times, amount=amount)


def time_words(time_s: float) -> Said:
    """Return a shutter time as said: ``1/48 s``, ``0.5 s``."""
    if time_s >= 0.3:
        return Said("{time:.3g} s", time=time_s)
    speed = 1.0 / time_s
    # Four figures keep 1/47.95 apart from 1/48.
    if speed < 1000.0:
        return Said("1/{speed:.4g} s", speed=speed)
    return Said("1/{speed:.0f} s", speed=speed)
