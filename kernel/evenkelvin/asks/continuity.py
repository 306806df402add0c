"""A setup of the book as the target of today's set.

``{"ask": "continuity", "book": text | plain, "setup": id}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import book_field
from evenkelvin.book.meaning import find, things
from evenkelvin.book.setup_log import setup_log, white_of
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.book import state_plain
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Group, Text

FIELDS: Group = {"book": Checked(), "setup": Text()}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the white to set the camera to, and each light as it was last read.

    ``name``; ``target`` (T) and ``words``, where the book has it from; ``lights``: ``[{"light":
    id, "name", "lamp", "stage", "at", "pack", "target": {"x", "y"} | None, "x", "y", "cct_K",
    "duv", "mired", "illuminance_lx", "exposure_lx_s"}]``, the light's own ``target`` being what
    its pick-up must match.
    """
    fields.refuse_unknown("ask", *FIELDS)
    found = things(book_field(fields).entries)
    setup = setup_log(found, find(found, fields.text("setup", longest=64), ("setup",)))
    white = white_of(setup)
    if white is None:
        raise Problem(
            fields.at("setup"),
            Said(
                "The book has no white for “{name}”: no target was kept with it, and its reference "
                "has no reading.",
                name=setup.thing.name,
            ),
        )
    lights = []
    for light in setup.lights:
        now = light.now
        if now is None:
            continue
        state = state_plain(now.state)
        lights.append(
            {
                "light": light.thing.id,
                "name": light.thing.name,
                "lamp": light.lamp,
                "stage": now.data.get("stage"),
                "at": now.at,
                "pack": list(now.data.get("pack") or []),
                "target": {"x": state["x"], "y": state["y"]},
                **state,
            }
        )
    return {
        "name": setup.thing.name,
        "target": white.target,
        "words": white.words,
        "lights": lights,
    }
