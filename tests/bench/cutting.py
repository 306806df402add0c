"""The shortest length of roll that cuts holds, by trying every way: a referee for few pieces."""

from __future__ import annotations

from functools import cache
from itertools import combinations

Size = tuple[float, float]


def shortest_length(pieces: tuple[Size, ...], width: float) -> float:
    """Return the shortest length of a roll that holds all pieces, cut right across each time.

    Every partition by every guillotine cut of any depth, every piece either way. The work grows
    as 3ⁿ: for up to five pieces.
    """

    @cache
    def widths(members: tuple[int, ...]) -> tuple[float, ...]:
        """Return every width that a stack of some members side by side can have."""
        sums = {0.0}
        for member in members:
            sums |= {round(old + side, 6) for old in sums for side in pieces[member]}
        return tuple(sorted(sums - {0.0}))

    @cache
    def height(members: tuple[int, ...], room: float) -> float:
        if len(members) == 1:
            sides = pieces[members[0]]
            ways = [sides, sides[::-1]]
            return min((h for w, h in ways if w <= room + 1e-9), default=float("inf"))
        best = float("inf")
        first, rest = members[0], members[1:]
        for size in range(len(rest)):
            for chosen in combinations(rest, size):
                one = (first, *chosen)
                two = tuple(member for member in rest if member not in chosen)
                best = min(best, height(one, room) + height(two, room))
                for slit in widths(one):
                    if slit < room - 1e-9:
                        left = round(room - slit, 6)
                        best = min(best, max(height(one, slit), height(two, left)))
        return best

    return height(tuple(range(len(pieces))), width)
