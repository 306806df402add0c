"""The kernel as an ordinary package: what the wheel holds, its command, its doctests, its types.

No source: our own promise.
"""

from __future__ import annotations

import doctest
import importlib
import os
import pkgutil
import subprocess
import sys
import zipfile
from email import message_from_string
from pathlib import Path

import pytest

import evenkelvin

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    made = [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--no-build-isolation"]
    subprocess.run([*made, "--no-index", "-w", folder, ROOT], check=True, timeout=120)
    (built,) = folder.glob("*.whl")
    return built


def test_the_wheel_is_small_and_says_what_it_is(wheel: Path) -> None:
    assert wheel.stat().st_size < 1_000_000
    with zipfile.ZipFile(wheel) as opened:
        names = opened.namelist()
        (about,) = [name for name in names if name.endswith(".dist-info/METADATA")]
        told = message_from_string(opened.read(about).decode())
    assert {"evenkelvin/py.typed", "evenkelvin/asking.pyi", "evenkelvin/data/ces.csv"} < set(names)
    assert any(name.endswith("licenses/LICENSE") for name in names)
    assert told["Description-Content-Type"] == "text/markdown"
    assert "## On the command line" in str(told.get_payload())
    assert "Typing :: Typed" in told.get_all("Classifier", [])
    for need in told.get_all("Requires-Dist", []):
        assert "==" not in need.partition(";")[0]
        assert "<" in need


def test_the_command_is_installed_with_it(wheel: Path, tmp_path: Path) -> None:
    install = [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--no-index"]
    subprocess.run([*install, "--target", tmp_path, wheel], check=True, timeout=120)
    done = subprocess.run(
        [tmp_path / "bin" / "evenkelvin", "expose", "--lux", "1280", "--iso", "100", "--fps", "24",
         "--shutter", "180"],
        env={**os.environ, "PYTHONPATH": str(tmp_path)}, cwd=tmp_path, capture_output=True,
        encoding="utf-8", timeout=60,
    )  # fmt: skip
    # N = √(E·S·t/C) = √(1280·100/48/250) = 3.27 (ISO 2720:1974).
    assert (done.stdout, done.stderr, done.returncode) == ("f/2.8⅓\n", "", 0)


def test_the_doctests_hold() -> None:
    tried = 0
    for module in pkgutil.walk_packages(evenkelvin.__path__, "evenkelvin."):
        if not module.name.endswith("__main__"):
            found = doctest.testmod(
                importlib.import_module(module.name), optionflags=doctest.IGNORE_EXCEPTION_DETAIL
            )
            assert not found.failed, module.name
            tried += found.attempted
    found = doctest.testfile(str(ROOT / "kernel" / "README.md"), module_relative=False)
    assert not found.failed
    assert tried >= 3
    assert found.attempted >= 4


#: What a checker of types is to find in this text, and where.
TYPED = """\
from evenkelvin.asking import ask

found = ask("fix", reading={"x": 0.33, "y": 0.34}, target={"cct_K": 3200})
reveal_type(found["packs"])
found["paks"]
"""


def test_an_answer_is_typed_for_whoever_uses_it(tmp_path: Path) -> None:
    (tmp_path / "use.py").write_text(TYPED, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "mypy", "--config-file=", "--strict", "use.py"],
        cwd=tmp_path, env={**os.environ, "MYPYPATH": str(ROOT / "kernel")}, capture_output=True,
        encoding="utf-8", timeout=300,
    )  # fmt: skip
    told = done.stdout.splitlines()
    assert any(line.startswith("use.py:4: note:") and "Pack" in line for line in told), told
    assert any(line.startswith("use.py:5: error:") and "paks" in line for line in told), told
