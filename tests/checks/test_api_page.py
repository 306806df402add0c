"""The page of the kernel's questions is made of their docstrings, each question of its own.

No source: our own promise.
"""

from __future__ import annotations

import re

import api_page
import pytest

from evenkelvin.desk import ASKS

PAGE = api_page.page()


@pytest.mark.parametrize("ask", ASKS)
def test_every_question_is_on_the_page_and_linked(ask: str) -> None:
    assert f'<a href="#{ask}">' in PAGE
    (part,) = re.findall(rf'<section id="{ask}">(.*?)</section>', PAGE, re.DOTALL)
    assert len(part) > 150, f"asks/{ASKS[ask]}.py says too little of its question"


def test_every_question_is_told_what_it_answers() -> None:
    silent = [
        ask for ask, module in ASKS.items() if not api_page.docstring(f"asks.{module}", "reply")
    ]
    assert not silent


def test_the_page_holds_no_markup_of_docstrings_and_no_script() -> None:
    assert not re.search(r":(mod|func|data|class):|<script|style=|https?://", PAGE)
    assert len(re.findall(r'id="([^"]+)"', PAGE)) == len(set(re.findall(r'id="([^"]+)"', PAGE)))
