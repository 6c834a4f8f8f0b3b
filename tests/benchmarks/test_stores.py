"""The stores of the benchmark are what their sizes say, and the program reads them."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli import main
from tests.benchmarks.history import TODAY, Household, Size
from tests.benchmarks.stores import codes, length, store

SMALL, LONG = Size(40, readings=30), Size(40, 400, readings=30)


@pytest.fixture
def due(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[[Size], Any]:
    def ask(size: Size) -> Any:
        path = store(size, tmp_path)
        capsys.readouterr()
        assert main(["--store", str(path), "--today", TODAY.isoformat(), "--json", "due"]) == 0
        return json.loads(capsys.readouterr().out)

    return ask


@pytest.mark.parametrize("size", [SMALL, LONG], ids=str)
def test_as_many_jars_are_in_store_as_asked_for(due: Callable[[Size], Any], size: Size) -> None:
    rows = due(size)
    assert sum(row["count"] for row in rows) == 40
    # Nobody has looked yet at the seals of what was canned last.
    assert {row["verdict"] for row in rows} <= {"sound", "eat soon", "past best", "needs care"}


def test_the_log_is_as_long_as_asked_for(tmp_path: Path) -> None:
    assert length(store(LONG, tmp_path)) == 400 + 30 + 1, "and what household it is"


def test_most_of_what_was_ever_put_up_is_gone() -> None:
    facts = Household(Size(1_000)).live_through()
    put_up = sum(fact.batch.count for fact in facts if fact.what == "put_up" and fact.batch)
    assert 0.55 < 1 - 1_000 / put_up < 0.65


def test_a_store_is_made_once(tmp_path: Path) -> None:
    first = store(SMALL, tmp_path)
    made = first.stat().st_mtime_ns
    assert store(SMALL, tmp_path) == first
    assert first.stat().st_mtime_ns == made


def test_lid_codes_are_those_that_the_program_gives() -> None:
    given = codes()
    assert [next(given) for _ in range(8)] == ["2A", "3A", "4A", "5A", "6A", "7A", "9A", "2C"]
    assert len({next(given) for _ in range(30_000)}) == 30_000
