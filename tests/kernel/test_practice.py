"""Practice asks what the first questions of a person are, a little at a time."""

from __future__ import annotations

from evenkelvin import practice
from evenkelvin.desk import answer


def test_what_is_practised_is_answered() -> None:
    for question in practice.QUESTIONS:
        assert "problem" not in answer(question), question["ask"]


def test_a_question_may_come_between_any_two_steps() -> None:
    question = {"ask": "describe", "reading": {"x": "0.4215", "y": "0.4022"}}
    alone = answer(question)
    count = 0
    for _ in practice.steps():
        count += 1
        assert answer(question) == alone
    names = [*practice.MODULES.split(), *practice.TABLES.split()]
    assert count == len(names) + len(practice.QUESTIONS)
