"""Lint and types of everything that is written here (`build.py check` alone)."""

from __future__ import annotations

import pytest
from steps import run

from checks import SOURCES


@pytest.mark.parametrize("name", SOURCES)
def test_lint_and_types(name: str) -> None:
    command, folder = SOURCES[name]
    run(command, cwd=folder)
