"""The lights of a set: those that can be used, each with what it is meant to be, and the others."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Generic, Protocol, TypeVar

from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.meant import Meant, NoTarget, targets
from evenkelvin.lights.reading import Reading
from evenkelvin.problem import Problem
from evenkelvin.requests.each import name_of, read_each
from evenkelvin.requests.meant import circle_words, circles, read_meant
from evenkelvin.said import Said


class _Named(Protocol):
    @property
    def name(self) -> str: ...


_Light = TypeVar("_Light", bound=_Named)


class LitSet(Generic[_Light]):
    """The lights that a question names, read one by one.

    ``problems`` says what is wrong with those that cannot be used, by their place in the question,
    the field named within the light. Everything else is about the usable ones, in their order;
    ``places`` says where each stands in the question.
    """

    def __init__(
        self, groups: list[Fields], kit: tuple[Gel, ...], read_light: Callable[[Fields], _Light]
    ) -> None:
        def read(group: Fields) -> tuple[_Light, Meant]:
            return read_light(group), read_meant(group, kit, len(groups))

        self.problems: dict[int, Problem] = {}
        self._all_names = [name_of(group, index) for index, group in enumerate(groups)]
        self._usable: dict[int, tuple[_Light, Meant]] = {}
        for place, one in enumerate(read_each(groups, read)):
            if isinstance(one, Problem):
                self.problems[place] = one
            else:
                self._usable[place] = one
                self._all_names[place] = one[0].name or self._all_names[place]
        self._leave_out_circles()
        self._leave_out_followers()

    @property
    def places(self) -> list[int]:
        return list(self._usable)

    @property
    def names(self) -> list[str]:
        return [self._all_names[place] for place in self._usable]

    @property
    def lights(self) -> list[_Light]:
        return [light for light, _ in self._usable.values()]

    @property
    def meant(self) -> list[Meant]:
        """What each is meant to be; ``other`` counts the usable lights."""
        order = {place: index for index, place in enumerate(self._usable)}
        return [
            meant
            if meant.other is None
            else replace(meant, other=order[meant.other], name=self._all_names[meant.other])
            for _, meant in self._usable.values()
        ]

    def hero(self, fields: Fields) -> _Light | None:
        """Return the light that the field ``hero`` names by its place, None without one.

        Raises
        ------
        Problem
            When that light cannot be used: there is nothing then to match the others to.
        """
        if not fields.given("hero"):
            return None
        place = fields.whole("hero", -1, 0, len(self._all_names) - 1)
        if place in self.problems:
            why = self.problems[place].message
            raise Problem(
                fields.at("hero"),
                Said("The reference cannot be used to match the others: {why}", why=why),
            )
        return self._usable[place][0]

    def targets(self: LitSet[Reading], white: Reading) -> list[Reading | None]:
        """Return the target of each light beside one white, None where it is not judged.

        A light that has no such colour beside this white is left out from here on.
        """
        while True:
            try:
                return targets(white, self.meant, self.lights)
            except NoTarget as why:
                index, words = why.args
                self.leave_out(index, Problem("meant", words))

    def leave_out(self, index: int, problem: Problem) -> None:
        """Leave a usable light out, by its index, and those that are meant like it."""
        self._leave_out(self.places[index], problem)
        self._leave_out_followers()

    def left_out(self) -> list[str]:
        """Return the names of the lights that cannot be used."""
        return [self._all_names[place] for place in sorted(self.problems)]

    def name_at(self, place: int) -> str:
        """Return the name of any light, by its place in the question."""
        return self._all_names[place]

    def _leave_out(self, place: int, problem: Problem) -> None:
        del self._usable[place]
        self.problems[place] = problem

    def _leave_out_circles(self) -> None:
        others = {place: meant.other for place, (_, meant) in self._usable.items()}
        for chain in circles(others):
            words = circle_words([self._all_names[place] for place in chain])
            self._leave_out(chain[0], Problem("meant.like", words))

    def _leave_out_followers(self) -> None:
        """Leave out what is meant like a light that is left out."""
        while lost := [
            (place, meant.other)
            for place, (_, meant) in self._usable.items()
            if meant.other is not None and meant.other in self.problems
        ]:
            for place, other in lost:
                words = Said(
                    "It is meant like {other}, which cannot be used.", other=self._all_names[other]
                )
                self._leave_out(place, Problem("meant.like", words))
