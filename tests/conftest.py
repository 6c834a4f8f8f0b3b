"""No test may see or touch the files of the person who runs it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from tests.examples import load_profile

load_profile()


@pytest.fixture(autouse=True)
def away_from_home(
    tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> Path:
    """A home of its own for every test; no store and no day taken from the environment."""
    home = tmp_path_factory.mktemp("home")
    monkeypatch.setenv("HOME", str(home))
    monkeypatch.setenv("USERPROFILE", str(home))
    monkeypatch.setenv("XDG_DATA_HOME", str(home / "data"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(home / "config"))
    monkeypatch.setenv("XDG_STATE_HOME", str(home / "state"))
    monkeypatch.delenv("PANTRY_STORE", raising=False)
    monkeypatch.delenv("PANTRY_TODAY", raising=False)
    monkeypatch.setenv("PANTRY_NO_BACKUP", "1")  # but where backups are what is tested
    return home


@pytest.fixture(scope="session")
def demo_file(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """The demo store of 25 November 2026."""
    path = tmp_path_factory.mktemp("demo") / "demo.db"
    build_demo(path, date(2026, 11, 25))
    return path.read_bytes()


@pytest.fixture
def demo(tmp_path: Path, demo_file: bytes) -> Iterator[Pantry]:
    """It, open on that day, for one test alone."""
    path = tmp_path / "demo.db"
    path.write_bytes(demo_file)
    with open_pantry(path, date(2026, 11, 25)) as p:
        yield p


@pytest.fixture
def larder(tmp_path: Path) -> Iterator[Pantry]:
    """A store of that day with a larder and a fridge, and nothing in them."""
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 25)) as p:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge")):
            places.add(p, name, climate)
        yield p


def pytest_configure(config: pytest.Config) -> None:
    """A cache folder for this run alone, before anything can load a reference table."""
    import os
    import shutil
    import tempfile

    folder = tempfile.mkdtemp(prefix="pantry-tui-cache-")
    os.environ["XDG_CACHE_HOME"] = folder
    config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))
