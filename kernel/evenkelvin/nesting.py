"""How deep a JSON text nests, told before it is parsed: a parser in the browser dies of depth."""

from __future__ import annotations

import re

# Ends at the end of the text too, so that a quote left open costs one pass and not one each.
_QUOTED = re.compile(r'"[^"\\]*+(?:\\.[^"\\]*+)*+(?:"|\\?\Z)', re.DOTALL)
_NO_BRACKETS = re.compile(r"[^][{}]+")


def brackets_beyond(text: str, depth: int) -> int:
    """Return how many brackets of a JSON text are left when `depth` levels are taken away.

    None for a whole text that nests no deeper. A few for a text that was cut: its parser goes no
    deeper than that count.
    """
    brackets = _NO_BRACKETS.sub("", _QUOTED.sub("", text))
    for _ in range(depth):
        brackets = brackets.replace("[]", "").replace("{}", "")
    return len(brackets)
