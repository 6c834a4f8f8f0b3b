"""The first evening takes no more keys than it may, and is read as it was meant."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Method
from pantry_tui.services.pantry import create, open_pantry
from tests.benchmarks.first_evening import MOST, TODAY, Typed, batches, play


def test_there_are_forty_batches() -> None:
    assert len(batches()) == 40


@pytest.mark.parametrize("one", batches(), ids=lambda one: one.keys)
def test_no_batch_takes_more_keys_than_its_name_and_a_dozen(one: Typed) -> None:
    assert one.more <= MOST


def test_all_of_it_is_read_as_it_was_meant(tmp_path: Path) -> None:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as p:
        for one, read in play(p):
            count = read.count
            if read.contents is not None and not read.contents.unit and count == 1:
                count = int(read.contents.number)
            found: tuple[str, int, Method | None, str, date | None] = (
                read.food, count, read.method, read.place, read.made,
            )  # fmt: skip
            assert found == (one.food, one.count, one.method, one.place, one.made), one.keys
