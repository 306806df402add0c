"""The desk for Python: one call a question, its answer typed, a refusal raised.

>>> from evenkelvin.asking import ask
>>> ask("fix", target={"cct_K": 3200}, reading={"x": 0.3302, "y": 0.3441})["verdict"]
'out'

:func:`evenkelvin.desk.answer` is the same for plain data, and never raises.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.desk import answer
from evenkelvin.problem import Problem


def ask(question: str, /, **fields: Any) -> dict[str, Any]:
    """Put one question to the kernel.

    Parameters
    ----------
    question
        Its name, such as ``"fix"``: one of :data:`evenkelvin.desk.ASKS`.
    fields
        Its fields, as the module of that name in :mod:`evenkelvin.asks` tells them.

    Returns
    -------
    dict
        The answer, of the type that :mod:`evenkelvin.replies.answers` declares for it.

    Raises
    ------
    Problem
        When it cannot be answered as it stands.

    >>> ask("describe", reading={"x": 2, "y": 3})
    Traceback (most recent call last):
    evenkelvin.problem.Problem: x is 2; it must be between 0 and 1.
    """
    found = answer({"ask": question, **fields})
    if "problem" in found:
        raise Problem(**found["problem"])
    return found
