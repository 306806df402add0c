"""The kernel on other machines than this one, and the app's own modules under Node."""

from __future__ import annotations

from pathlib import Path

import pytest
from steps import run

from checks import TESTS, golden_answers_on, is_for_node, kernel_tests_in_pyodide


def test_the_kernels_tests_inside_pyodide(dist: Path) -> None:
    kernel_tests_in_pyodide()


@pytest.mark.parametrize("file", [*filter(is_for_node, sorted(TESTS.glob("app/**/*")))], ids=str)
def test_under_node(file: Path) -> None:
    run(["node", "--test", file])


@pytest.mark.parametrize("version", ["2.0.2", "2.4.6"])  # Pyodide's, and the newest
def test_golden_answers_on_numpy(version: str) -> None:
    golden_answers_on(version)
