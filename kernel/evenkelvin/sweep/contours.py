"""Lines of one height across a grid, by marching squares.

After Lorensen and Cline (1987), in the plane: each cell of four heights is crossed by no line, by
one, or by two where opposite corners are alike; the mean of the four then tells which corners
hang together. Lines run straight within a cell, from edge to edge.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

_Edge = tuple[int, int, bool]


def contour(across: Floats, up: Floats, heights: Floats, level: float) -> list[Floats]:
    """Return the lines at one height.

    Parameters
    ----------
    across, up
        The grid's columns and rows, shapes (m,) and (n,).
    heights
        Shape (n, m).
    level
        The height of the lines.

    Returns
    -------
    list of arrays
        Each a line's points, shape (k, 2), across and up; a closed one ends where it begins.
    """
    above = heights > level
    corners = above[:-1, :-1].astype(int) + above[:-1, 1:] + above[1:, 1:] + above[1:, :-1]
    links: dict[_Edge, list[_Edge]] = {}
    for row, column in np.argwhere((corners > 0) & (corners < 4)):
        for one, other in _crossings(heights, level, int(row), int(column)):
            links.setdefault(one, []).append(other)
            links.setdefault(other, []).append(one)
    place = _Place(across, up, heights, level)
    return [np.array([place(edge) for edge in chain]) for chain in _chains(links)]


class _Place:
    """Where a line crosses an edge of the grid."""

    def __init__(self, across: Floats, up: Floats, heights: Floats, level: float) -> None:
        self.across, self.up, self.heights, self.level = across, up, heights, level

    def __call__(self, edge: _Edge) -> tuple[float, float]:
        row, column, along_row = edge
        far = (row, column + 1) if along_row else (row + 1, column)
        low, high = self.heights[row, column], self.heights[far]
        part = (self.level - low) / (high - low)
        return (
            float(self.across[column] + part * (self.across[far[1]] - self.across[column])),
            float(self.up[row] + part * (self.up[far[0]] - self.up[row])),
        )


def _crossings(heights: Floats, level: float, row: int, column: int) -> list[tuple[_Edge, _Edge]]:
    """Return the pairs of edges of a cell that a line joins."""
    above = heights[row : row + 2, column : column + 2] > level
    bottom, top = (row, column, True), (row + 1, column, True)
    left, right = (row, column, False), (row, column + 1, False)
    ring = [above[0, 0], above[0, 1], above[1, 1], above[1, 0]]
    edges = [bottom, right, top, left]
    crossed = [edge for k, edge in enumerate(edges) if ring[k] != ring[(k + 1) % 4]]
    if len(crossed) == 2:
        return [(crossed[0], crossed[1])]
    middle = heights[row : row + 2, column : column + 2].mean() > level
    # The first corner goes with the middle: the lines cut off the other two, or else itself.
    if middle == ring[0]:
        return [(bottom, right), (top, left)]
    return [(left, bottom), (right, top)]


def _chains(links: dict[_Edge, list[_Edge]]) -> list[list[_Edge]]:
    """Return the lines as chains of edges, open ones first, each from an end."""
    waiting = dict.fromkeys(sorted(links, key=lambda edge: (len(links[edge]), edge)))
    chains = []
    while waiting:
        edge: _Edge | None = next(iter(waiting))
        chain: list[_Edge] = []
        while edge is not None:
            chain.append(edge)
            waiting.pop(edge)
            edge = next((other for other in links[edge] if other in waiting), None)
        if len(chain) > 2 and chain[0] in links[chain[-1]]:
            chain.append(chain[0])
        chains.append(chain)
    return chains
