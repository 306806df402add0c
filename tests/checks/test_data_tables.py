"""The committed tables are what their maker makes from colour-science."""

from __future__ import annotations

import importlib.util
from pathlib import Path

import pytest

KERNEL = Path(__file__).parents[2] / "kernel"
DATA = KERNEL / "evenkelvin" / "data"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    spec = importlib.util.spec_from_file_location("make_data", KERNEL / "make_data.py")
    assert spec
    assert spec.loader
    maker = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(maker)
    folder = tmp_path_factory.mktemp("data")
    maker.main(folder)
    return folder


def test_every_made_table_equals_the_committed_one(made: Path) -> None:
    names = sorted(path.name for path in made.iterdir())
    assert {"cie1931_2deg.csv", "cie_daylight.csv", "cie_illuminants.csv"} <= set(names)
    for name in names:
        assert (made / name).read_bytes() == (DATA / name).read_bytes(), name


def test_every_committed_table_names_its_source() -> None:
    tables = sorted(DATA.glob("*.csv"))
    assert tables
    for table in tables:
        assert table.read_text(encoding="utf-8").startswith("# "), table.name
