"""How many examples a property test draws."""

from __future__ import annotations

import sys


def examples(natively: int) -> int:
    """Return ``natively``; inside Pyodide, some ten times slower, a twentieth of it."""
    return max(5, natively // 20) if sys.platform == "emscripten" else natively
