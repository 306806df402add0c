"""How many examples a property test draws."""

from __future__ import annotations

import sys


def examples(natively: int) -> int:
    """Return ``natively``; inside Pyodide, some ten times slower, an eighth of it."""
    return max(5, natively // 8) if sys.platform == "emscripten" else natively
