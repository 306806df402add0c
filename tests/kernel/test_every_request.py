"""Whatever is asked, nothing raises, and the answer is JSON without NaN."""

from __future__ import annotations

from importlib import import_module

import pytest

from evenkelvin.desk import ASKS
from examples import examples
from kernel import fuzz_asks


@pytest.mark.parametrize("ask", ASKS)
def test_no_request_of_an_ask_gets_through_without_an_answer(ask: str) -> None:
    found = fuzz_asks.run(ask, examples(60), start=7)
    assert set(found) <= {"answered", "refused"}
    # Inside Pyodide too few are drawn to have some of each.
    assert found["refused"]
    assert found["answered"] or found.total() < 60


@pytest.mark.parametrize("ask", ASKS)
def test_an_ask_reads_what_it_declares_and_nothing_else(ask: str) -> None:
    from evenkelvin.desk import answer

    declared = import_module(f"evenkelvin.asks.{ASKS[ask]}").FIELDS
    refused = answer({"ask": ask, "stranger": 1})["problem"]
    assert refused["field"] == "stranger"
    for name in declared:
        problem = answer({"ask": ask, name: None}).get("problem", {})
        assert "is not a field here" not in problem.get("message", "")
