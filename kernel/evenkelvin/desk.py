"""The only door of the kernel: one plain question in, one plain answer out."""

from __future__ import annotations

import json
from collections.abc import Callable
from importlib import import_module
from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.nesting import brackets_beyond
from evenkelvin.problem import Problem
from evenkelvin.said import Said, with_forms

#: What can be asked, and the module of :mod:`evenkelvin.asks` that answers it. A module is
#: imported when it is first asked, so that the first answer does not wait for the others.
ASKS: dict[str, str] = {
    "describe": "describe",
    "fix": "fix",
    "agree": "agree",
    "kit": "kit",
    "recognise": "recognise",
    "import": "import_spectra",
    "group": "group",
    "write": "write_spectra",
    "learn_gel": "learn_gel",
    "import_gel": "import_gel",
    "field": "field",
    "expose": "expose",
    "levels": "levels",
    "falloff": "falloff",
    "flicker": "flicker",
    "sun": "sun",
    "hold": "hold",
    "units": "units",
    "seen": "seen",
    "cameras": "cameras",
    "render": "render",
    "compare": "compare",
    "book_check": "book_check",
    "book_merge": "book_merge",
    "book_csv": "book_csv",
    "book_link": "book_link",
    "open_link": "open_link",
    "book_parts": "book_parts",
    "join_parts": "join_parts",
    "since": "since",
    "judge": "judge",
    "continuity": "continuity",
    "report": "report",
    "balance": "balance",
    "windows": "windows",
    "order": "order",
    "mix": "mix",
    "unmix": "unmix",
    "flash_mix": "flash_mix",
    "dial": "dial",
    "drive": "drive",
    "dim": "dim",
    "even": "even",
    "trim": "trim",
    "display": "display",
}


#: How deep a request given as JSON text may nest.
DEEPEST = 20


def answer(request: dict[str, Any]) -> dict[str, Any]:
    """Answer one question.

    Parameters
    ----------
    request
        Plain data (what JSON can hold) with an ``ask`` field that names the question.

    Returns
    -------
    dict
        Plain data; ``{"problem": {"field", "line"?, "message"}}`` when the request cannot be
        answered as it stands.
    """
    try:
        fields = Fields(request)
        ask = fields.choice("ask", tuple(ASKS))
        reply: Callable[[Fields], dict[str, Any]] = import_module(
            f"evenkelvin.asks.{ASKS[ask]}"
        ).reply
        return reply(fields)
    except Problem as problem:
        return {"problem": problem.as_dict()}


def answer_json(request: str, forms: bool = False) -> str:
    """Answer one question given as JSON text, as JSON text (see :func:`answer`).

    With ``forms``, whatever is said to people comes as ``{"said": form, "with": values}`` instead
    of plain English, to be said in another language (see :mod:`evenkelvin.said`).
    """
    try:
        if brackets_beyond(request, DEEPEST) > 100:
            raise ValueError(f"nested more than {DEEPEST} deep")
        plain = json.loads(request)
    except ValueError as error:
        words = Said("The request is not JSON: {reason}.", reason=str(error))
        answered: dict[str, Any] = {"problem": Problem("", words).as_dict()}
    else:
        answered = answer(plain)
    return json.dumps(with_forms(answered) if forms else answered, allow_nan=False)
