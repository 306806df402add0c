"""What a reading says: ``{"ask": "describe", "reading": R, "own_gels"?: […]}``."""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.replies.reading import described
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.shapes import Group

#: The fields of the question.
FIELDS: Group = {"reading": READING, **OWN_GELS}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with x, y, u′, v′, CCT, Duv, mired, CC (green +, magenta −) and warnings.

    ``cc`` is the CC density that would neutralise this light, on its spectrum or its stand-in;
    None where no density does.
    """
    fields.refuse_unknown("ask", *FIELDS)
    return described(read_reading(fields.group("reading"), read_kit(fields)))
