"""What each light is meant to be, as a question states it beside the light.

``{"as": "white"} | {"as": "found"} | {"warmer_mired": n, "duv"?} | {"cooler_mired": n, "duv"?} |
{"as_through": [gel names]} | {"cct_K": T, "duv"?} | {"x", "y"} | {"like": index | R}``
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from evenkelvin.colorimetry.temperature import LARGEST_DUV
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.meant import AS_WHITE, Meant, NoTarget, targets
from evenkelvin.lights.reading import Reading
from evenkelvin.problem import Problem
from evenkelvin.requests.kit import GEL, find_gel, read_own_gel
from evenkelvin.requests.reading import READING, read_reading, read_target
from evenkelvin.said import Said, listed
from evenkelvin.shapes import Choice, Group, Many, Number, OneOf, Whole

_WAYS = ("as", "warmer_mired", "cooler_mired", "as_through", "cct_K", "x", "like")
#: Farthest that a light is meant beside the white, in mired: 2500 K and 25 000 K are 360 apart.
_FARTHEST_MIRED = 900.0
_MOST_GELS = 10

Plain = Mapping[str, Any]

#: What a light is meant to be.
MEANT: Group = {
    "as": Choice(("white", "found")), "warmer_mired": Number(0, 300),
    "cooler_mired": Number(0, 300), "as_through": Many(GEL), "cct_K": Number(2500, 10000),
    "duv": Number(-0.02, 0.02), "x": Number(0.2, 0.6), "y": Number(0.2, 0.5),
    "like": OneOf((Whole(0, 3), READING)),
}  # fmt: skip


def read_meant(fields: Fields, kit: tuple[Gel, ...], others: int = 0) -> Meant:
    """Return what the field ``meant`` of a light says; as the white where it is not given.

    Parameters
    ----------
    fields
        Of the light, or of the question where it has one light.
    kit
        Gels that may be named, beside those that the light's own ``own_gels`` bring.
    others
        How many lights the question has, which ``like`` may name by index.

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    if not fields.given("meant"):
        return AS_WHITE
    group = fields.group("meant")
    group.refuse_unknown(*MEANT)
    ways = [name for name in _WAYS if group.given(name)]
    # A y alone is a colour with its x forgotten.
    if group.given("y") and "x" not in ways:
        ways.append("x")
    if len(ways) != 1:
        raise Problem(
            group.at(ways[1]) if ways else group.path,
            Said(
                "Say one thing that the light is meant to be: as the white, warmer or cooler than "
                "it, as through gels, a colour of its own, like another light, or as found."
            ),
        )
    way = ways[0]
    if group.given("duv") and way not in ("warmer_mired", "cooler_mired", "cct_K"):
        raise Problem(
            group.at("duv"), Said("A Duv goes with warmer, cooler or a CCT: leave it out here.")
        )
    if way == "as":
        word = group.choice("as", ("white", "found"))
        return Meant("found") if word == "found" else AS_WHITE
    if way in ("warmer_mired", "cooler_mired"):
        size = group.number(way, low=0.0, high=_FARTHEST_MIRED, label=Said("the offset in mired"))
        duv = group.number("duv", 0.0, -LARGEST_DUV, LARGEST_DUV, Said("the Duv beside the white"))
        return Meant("beside", size if way == "warmer_mired" else -size, duv)
    if way == "as_through":
        known = {gel.name: gel for gel in kit}
        # Where the reading is a field of its own, that is what brings gels along.
        brings = fields.group("reading") if isinstance(fields.raw("reading"), dict) else fields
        known |= {gel.name: gel for gel in map(read_own_gel, brings.groups("own_gels", most=200))}
        names = group.texts("as_through")
        if len(names) > _MOST_GELS:
            raise Problem(
                group.at("as_through"),
                Said("{n} gels are named; at most {most} fit.", n=len(names), most=_MOST_GELS),
            )
        gels = tuple(find_gel(known, n, f"{group.at(way)}.{i}") for i, n in enumerate(names))
        return Meant("through", gels=gels)
    if way == "like":
        return _like(group, kit, others)
    colour = {name: group.raw(name) for name in ("x", "y", "cct_K", "duv") if group.given(name)}
    if way == "cct_K":
        colour.setdefault("duv", 0.0)
    return Meant("own", colour=read_reading(Fields(colour, group.path), kit, stand_in="none"))


def _like(group: Fields, kit: tuple[Gel, ...], others: int) -> Meant:
    if isinstance(group.raw("like"), dict):
        was = read_reading(group.group("like"), kit, stand_in="may")
        return Meant("like", colour=was, name=was.name)
    if not others:
        raise Problem(
            group.at("like"),
            Said("There is no other light in this question: give the reading itself."),
        )
    return Meant("like", other=group.whole("like", -1, 0, others - 1))


def circles(others: Mapping[int, int | None]) -> list[list[int]]:
    """Return every light that is meant like itself, over others or not: the chain from it on.

    ``others`` says for each light which one it is meant like, None where like no other.
    """
    found = []
    for start in others:
        chain, at = [start], others[start]
        while at is not None and at not in chain:
            chain.append(at)
            at = others.get(at)
        if at == start:
            found.append(chain)
    return found


def circle_words(names: Sequence[str]) -> Said:
    """Return why lights that are meant like each other have no target."""
    if len(names) == 1:
        return Said("{name} is meant like itself: choose another light.", name=names[0])
    return Said(
        "{names} are meant like each other in a circle: say of one of them what it is meant to be.",
        names=listed(names),
    )


def read_targets(
    white: Reading, meant: Sequence[Meant], lights: Sequence[Reading], groups: Sequence[Fields]
) -> list[Reading | None]:
    """Return the target of each light beside one white, None where it is not judged.

    Raises
    ------
    Problem
        When there is no such colour beside this white.
    """
    try:
        return targets(white, meant, lights)
    except NoTarget as why:
        index, words = why.args
        raise Problem(groups[index].at("meant"), words) from None


def read_aim(fields: Fields, kit: tuple[Gel, ...]) -> Reading:
    """Return the colour that one lamp is to have: ``target``, or what it is ``meant`` beside that.

    A light that is meant as found is matched to the target by whoever asks for it.

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    target = read_target(fields.group("target"), kit)
    (aim,) = read_targets(target, [read_meant(fields, kit)], [target], [fields])
    return target if aim is None else aim


class LoggedTargets:
    """What many logged lights are meant to be, each looked up once.

    A log does not stop at a typo: what cannot be read has no target.
    """

    def __init__(self, kit: tuple[Gel, ...]) -> None:
        self._kit = kit
        self._known: dict[str, tuple[Meant | None, Reading | None]] = {}

    def of(self, light: Mapping[str, Any], white: Any) -> tuple[Meant | None, Reading | None]:
        """Return what a light is meant to be, and its target beside a white.

        The meaning is None where it cannot be read; the target also where there is none.
        """
        plain = {"meant": light.get("meant"), "own_gels": light.get("own_gels") or []}
        key = repr((plain, white))
        if key not in self._known:
            self._known[key] = self._read(plain, white)
        return self._known[key]

    def _read(self, plain: Plain, white: Any) -> tuple[Meant | None, Reading | None]:
        try:
            meant = read_meant(Fields(plain), self._kit)
        except Problem:
            return None, None
        if meant.colour is not None or not meant.judged:
            return meant, meant.colour
        try:
            centre = read_target(Fields(white), self._kit)
            (target,) = targets(centre, [meant], [centre])
        except (Problem, NoTarget):
            return meant, None
        return meant, target
