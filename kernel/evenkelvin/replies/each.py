"""Those of many lights that cannot be used, beside the answers of the others."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from evenkelvin.problem import Problem
from evenkelvin.said import Said, counted, joined


def unusable_plain(name: str, problem: Problem) -> dict[str, Any]:
    """Return one light that cannot be used: its name and its problem, told within the light."""
    return {"name": name, "problem": problem.as_dict()}


def left_out_words(names: Sequence[str]) -> list[Said]:
    """Return a sentence that counts and names the lights that were left out, if there are any."""
    if not names:
        return []
    return [
        counted(
            len(names),
            "{n} light is left out, what was typed of it cannot be used: {names}.",
            "{n} lights are left out, what was typed of them cannot be used: {names}.",
            names=joined(names),
        )
    ]
