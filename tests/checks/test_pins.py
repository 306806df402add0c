"""What is fetched to build and test is pinned by version and hash."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from steps import BUILD_LOCK, TEST_LOCK, WEBAPP, project


def test_npm_packages_are_pinned_by_hash() -> None:
    lock = json.loads((WEBAPP / "package-lock.json").read_text())
    fetched = {name: entry for name, entry in lock["packages"].items() if name}
    assert fetched
    for name, entry in fetched.items():
        assert entry["integrity"].startswith("sha512-"), name
    wanted = json.loads((WEBAPP / "package.json").read_text())
    for pin in [*wanted["dependencies"].values(), *wanted["devDependencies"].values()]:
        assert re.fullmatch(r"[\d.]+", pin), pin


@pytest.mark.parametrize("file", [BUILD_LOCK, TEST_LOCK], ids=lambda file: file.stem)
def test_python_packages_are_pinned_by_hash(file: Path) -> None:
    lock = file.read_text()
    assert "://" not in lock
    blocks = re.findall(
        r"^(\S+==\S+)(.*\n(?:    --hash=sha256:[0-9a-f]{64}.*\n)*)", lock, re.MULTILINE
    )
    locked = {pin for pin, hashes in blocks if "--hash" in hashes}
    assert len(locked) == len(blocks) > 0
    pins = [pin for pin in project()["dependency-groups"][file.stem] if isinstance(pin, str)]
    # If this fails, make the locks anew as DEVELOPERS.md says.
    assert {pin.replace("_", "-") for pin in pins} <= locked
