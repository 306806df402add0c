"""No text holds the reader up: the time it takes grows with its length, not with its square.

Common practice, no source: an expression that backtracks makes a small file take minutes.
"""

from __future__ import annotations

import string
import sys
import time

import pytest

from evenkelvin.desk import answer

#: What a cell, a label, a number, a heading or a line can begin with, over and over.
AGAIN = [
    *string.punctuation,
    *" \t\n1aé\u00a0’",
    *("1.", "1,", "1 ", "(a", "[a", "1'", "1:", "1-", "1/", ":1", "=1", "1a", '"a', "<a"),
    *("\n(", "\n[", "\n1", "\n#", "# ", "<!", "a,", "1;", ";;", "((a)", "nm ", "x:1", "x 0.3 "),
]
#: Inside Pyodide, some ten times slower, less of it shows the same.
SHORT, TIMES = (1_000 if sys.platform == "emscripten" else 8_000), 8


@pytest.mark.parametrize(
    ("ask", "field"),
    [("import", "text"), ("import_gel", "text"), ("book_check", "text"), ("open_link", "link")],
)
def test_no_sign_over_and_over_takes_more_than_its_share(ask: str, field: str) -> None:
    for sign in AGAIN:
        text = (sign * SHORT * TIMES)[: SHORT * TIMES]
        short = measured({"ask": ask, field: text[:SHORT]})
        whole = measured({"ask": ask, field: text})
        # By the square it would be 64 times as long; what is done at once counts as a hundredth.
        assert whole < 3 * TIMES * max(short, 0.01), (sign, short, whole)


def measured(question: dict[str, str]) -> float:
    before = time.process_time()
    answer(question)
    return time.process_time() - before
