"""What the lights of a book are meant to be, as a question states it.

In a book a light names another by its id and measured gels by theirs; a question has no book, so
it gets the other's latest reading and the gels themselves.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from evenkelvin.book.meaning import Found, Thing
from evenkelvin.book.setup_log import light_log
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.meant import AS_WHITE, Meant
from evenkelvin.lights.reading import Reading
from evenkelvin.requests.meant import LoggedTargets

_CURVE = ("name", "wavelengths_nm", "transmittance", "reference_K")


def asked_meant(found: Found, light: Thing) -> dict[str, Any]:
    """Return the fields ``meant`` and ``own_gels`` of a light; empty where it is as the white.

    A pick-up's light of which nothing is said is meant to be as it was.
    """
    meant = light.present["data"].get("meant")
    if not isinstance(meant, dict) or not meant:
        then = _as_it_was(found, light)
        return {"meant": {"like": then}} if then else {}
    asked = {name: value for name, value in meant.items() if name != "gel_ids"}
    if isinstance(meant.get("like"), str):
        asked["like"] = _latest(found, meant["like"])
    gels = []
    for name, id_ in zip(meant.get("as_through") or (), meant.get("gel_ids") or (), strict=False):
        gel = found["gel"].get(str(id_)) if id_ else None
        if gel is not None:
            curve = {field: gel.present["data"].get(field) for field in _CURVE}
            gels.append(curve | {"name": name})
    return {"meant": asked} | ({"own_gels": gels} if gels else {})


def _latest(found: Found, id_: str) -> dict[str, Any]:
    """Return the latest reading of a light that says a colour; one without any where none does."""
    other = found["light"].get(id_)
    read = _read(found, other) if other is not None and not other.gone else None
    return read or {"name": id_}


def _as_it_was(found: Found, light: Thing) -> dict[str, Any] | None:
    """Return a pick-up's light as last read on an earlier day; None where it was not."""
    seen = {light.id}
    of = light.present["data"].get("pickup_of")
    while isinstance(of, str) and of in found["light"] and of not in seen:
        seen.add(of)
        before = found["light"][of]
        read = _read(found, before)
        if read:
            return read
        of = before.present["data"].get("pickup_of")
    return None


def _read(found: Found, light: Thing) -> dict[str, Any] | None:
    now = light_log(found, light).now
    if now is None:
        return None
    x, y = now.state.xy
    return {"x": float(x), "y": float(y), "name": light.name}


@dataclass(frozen=True, eq=False)
class Aim:
    """What a light is meant to be, its target, and both as a question states them.

    ``meant`` is None where it cannot be read; ``target`` also where there is none.
    """

    meant: Meant | None
    target: Reading | None
    asked: dict[str, Any]

    @property
    def usable(self) -> bool:
        """Whether a question about its light can carry what is meant."""
        return self.target is not None or (self.meant is not None and not self.meant.judged)


class Aims:
    """What the lights of a book are meant to be, each looked up once."""

    def __init__(self, found: Found) -> None:
        self._found = found
        self._targets = LoggedTargets(nominal_kit())

    def of(self, light: Thing, white: dict[str, Any] | None) -> Aim:
        """Return what a light is meant to be beside a white."""
        asked = asked_meant(self._found, light)
        if not asked and white is None:
            return Aim(AS_WHITE, None, asked)
        return Aim(*self._targets.of(asked, white), asked)
