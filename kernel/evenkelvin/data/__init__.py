"""Published tables, each a small text file whose first line names its source."""

from __future__ import annotations

import os
from functools import cache
from typing import TYPE_CHECKING, cast

import numpy as np

if TYPE_CHECKING:  # at run time these would bring in a third of the library, at every start
    from importlib.abc import FileLoader

    from numpy.typing import NDArray

    Floats = NDArray[np.float64]
else:
    Floats = np.ndarray


def load_text(name: str) -> str:
    """Return a file of this folder as text.

    Read through the package's loader, so that it works from a folder and from an archive alike.
    """
    loader = cast("FileLoader", globals()["__loader__"])
    return loader.get_data(os.path.join(os.path.dirname(__file__), name)).decode("utf-8")


@cache
def load_table(name: str) -> dict[str, Floats]:
    """Return the columns of a table by their header names.

    The arrays are read-only: they are shared by every caller.
    """
    lines = [line for line in load_text(f"{name}.csv").splitlines() if not line.startswith("#")]
    header = lines[0].split(",")
    # Python's own float reads faster than an array of words can be converted.
    cells = [float(cell) for line in lines[1:] for cell in line.split(",")]
    body = np.array(cells).reshape(-1, len(header))
    body.setflags(write=False)
    return {column: body[:, index] for index, column in enumerate(header)}
