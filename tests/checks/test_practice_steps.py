"""Practice has a step of its own for each module that its questions read."""

from __future__ import annotations

import os
import subprocess
import sys

from steps import ROOT

#: Tells what is imported by a question after the modules of practice were, one by one.
LEFT_OVER = """
import sys
from evenkelvin import practice
steps = practice.steps()
for name in practice.MODULES.split():
    before = {m for m in sys.modules if m.startswith("evenkelvin.")}
    next(steps)
    assert f"evenkelvin.{name}" not in before, f"{name} had come with another"
before = set(sys.modules)
for _ in steps:
    pass
print([m for m in sys.modules if m.startswith("evenkelvin.") and m not in before])
"""


def test_no_question_of_practice_reads_a_module_without_a_step_of_its_own() -> None:
    done = subprocess.run(
        [sys.executable, "-c", LEFT_OVER],
        env={**os.environ, "PYTHONPATH": str(ROOT / "kernel")},
        capture_output=True,
        text=True,
    )
    assert done.stdout.strip() == "[]", done.stdout + done.stderr
