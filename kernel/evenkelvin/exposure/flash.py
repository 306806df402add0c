"""Flash: exposure from a burst metered in lx·s.

A burst is shorter than the shutter, so E·t of ISO 2720 is the metered exposure H itself:
N² = H·S/C, whatever the shutter, as long as it is open for the whole burst.
"""

from __future__ import annotations

import math


def total(exposure_lx_s: float, bursts: int) -> float:
    """Return H in lx·s of several equal bursts on one frame: they add."""
    return exposure_lx_s * bursts


def bursts_needed(exposure_lx_s: float, needed_lx_s: float) -> int:
    """Return how many equal bursts on one frame reach the exposure, to within a hundredth."""
    return max(1, math.ceil(needed_lx_s / exposure_lx_s - 0.01))
