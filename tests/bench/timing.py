"""How long a job takes, as the benches weigh it: ratios of these, never seconds alone."""

from __future__ import annotations

import time
from collections.abc import Callable
from statistics import median
from typing import Any


def seconds(job: Callable[[], Any], runs: int = 9) -> float:
    """The median of some runs, after one that counts for nothing."""
    job()
    taken = []
    for _ in range(runs):
        start = time.perf_counter()
        job()
        taken.append(time.perf_counter() - start)
    return median(taken)
