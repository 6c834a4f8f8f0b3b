"""Lines of strangers: at least 95 in 100 read whole or asked as they should be, and none wrong."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.services.batchwork.kitchen import kitchen
from pantry_tui.services.batchwork.line import read_line
from pantry_tui.services.batchwork.understood import read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places
from tests.lines.say_line import say_line
from tests.lines.strangers import PLACES, SHELVES, Case, Read, cases, judged

TODAY = date(2026, 11, 25)


def household(path: Path) -> Pantry:
    """The home that the lines were written for."""
    create(path)
    p = open_pantry(path, TODAY)
    for name, climate in PLACES.items():
        places.add(p, name, climate)
    for name in SHELVES:
        places.add(p, name, "pantry", inside="pantry")
    return p


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    with household(tmp_path_factory.mktemp("home") / "store.db") as p:
        yield p


@pytest.mark.parametrize("case", cases(), ids=lambda case: case.line)
def test_nothing_is_read_cleanly_and_wrongly(home: Pantry, case: Case) -> None:
    came, why = judged(case, read(home, case.line))
    assert came is not Read.WRONG, why


def test_95_in_100_are_read_whole_or_asked_as_they_should_be(home: Pantry) -> None:
    missed = {}
    for case in cases():
        came, why = judged(case, read(home, case.line))
        if came is not Read.RIGHT:
            missed[case.line] = (came.name, why)
    assert len(cases()) >= 600
    assert len(missed) <= 0.05 * len(cases()), missed


def test_a_reading_as_a_line_reads_the_same(home: Pantry) -> None:
    where, seen, other = kitchen(home), 0, {}
    for case in cases():
        # A month is typed again as its first day, and is said as that.
        found = replace(read_line(case.line, where)[0], unread=(), problems=(), made_in="")
        if found.asks or not found.food or found.method is None:
            continue  # it has open questions
        seen += 1
        again = replace(read_line(say_line(found), where)[0], problems=())
        if again != found:
            other[case.line] = (found, again)
    assert other == {}
    assert seen > 100


LONG = ["x" * 40_000, "ä" * 40_000, "." * 40_000, ".5" * 20_000, "1.1." * 10_000,
        "'26 " * 10_000, "in brine " * 5_000, "à 400 g " * 5_000,
        "malt vinegar " * 3_000]  # fmt: skip


@pytest.mark.parametrize("text", LONG, ids=[text[:12] for text in LONG])
def test_a_long_line_is_named_as_too_long(home: Pantry, text: str) -> None:
    found = read(home, text)
    assert found.unread
    assert found.problems
