"""What came into the store open since an earlier day: a line says both days, and its opened days
are counted from the one on which it was opened."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import State
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, undo, view
from pantry_tui.services.stock.seen import At

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("larder", "pantry"), ("fridge", "fridge"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        yield pantry


def test_half_a_jar_of_which_the_day_of_opening_is_known_asks_for_the_rest_and_is_booked(
    p: Pantry,
) -> None:
    asked = putup.read(p, "half a jar of salsa, fridge, opened 10 days ago")
    assert (asked.opened, asked.made) == (date(2026, 11, 15), None)
    assert "say also when it was made or bought" in asked.problems[0]
    line = "half a jar of salsa, 8 oz, bought 3 weeks ago, fridge, opened 10 days ago"
    made = putup.put_up(p, putup.read(p, line))
    (row,) = view.due(p)
    assert (row.state, row.amount, row.container_ids) == (State.OPEN, "8 oz", (f"{made.code}/1",))
    batch = next(iter(p.stock.batches.values()))
    (jar,) = p.containers_of(batch)
    assert [(one.state, one.when.day) for one in jar.turns][-1] == (
        State.OPEN, date(2026, 11, 15),
    )  # fmt: skip
    undo.undo(p)
    assert view.due(p) == [], "one undo takes both back"


@pytest.mark.parametrize(
    "line",
    [
        "1 carton milk, bought {}, opened {}, fridge",
        "1 pint jar peaches, boiling-water canned, 25 minutes, fridge, {}, opened {}",
    ],
)
def test_it_is_judged_as_one_that_was_opened_here_on_that_day(p: Pantry, line: str) -> None:
    bought, opened = "2026-11-20", "2026-11-23"
    told = putup.read(p, line.format(bought, opened))
    shown = putup.preview(p, told)
    new = putup.put_up(p, told)
    before = f", opened {opened}"
    shut = putup.put_up(p, putup.read(p, line.format(bought, opened).replace(before, "")))
    act.open_(p, f"{shut.code}/1", at=At(date(2026, 11, 23)))
    rows = {row.code: row for row in view.due(p)}
    mine, theirs = rows[new.code], rows[shut.code]
    assert (mine.state, mine.verdict, mine.discard_after) == (
        theirs.state, theirs.verdict, theirs.discard_after,
    )  # fmt: skip
    assert (shown.verdict, shown.discard_after) == (mine.verdict, mine.discard_after)


def test_a_day_of_opening_says_nothing_of_when_it_was_made(p: Pantry) -> None:
    unknown = putup.read(p, "1 carton milk, fridge, bought unknown, opened yesterday, bought in")
    assert (unknown.made, unknown.problems) == (None, ())
    before = putup.read(p, "1 jar ketchup, bought yesterday, fridge, opened 10 days ago")
    assert "but made or bought on" in before.problems[0]
    crock = putup.read(p, "1 crock sauerkraut, cellar, 2026-10-10, opened yesterday")
    assert "is never opened" in crock.problems[0]
    with pytest.raises(BadInput):
        putup.put_up(p, crock)


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("1 jar opened mayonnaise, bought in, fridge", TODAY),
        ("1 jar mayonnaise, opened, bought 3 days ago, fridge", date(2026, 11, 22)),
        ("2 unopened jars mayonnaise, bought in, larder", TODAY),
    ],
)
def test_opened_without_a_day_is_only_its_state(p: Pantry, line: str, made: date) -> None:
    read = putup.read(p, line)
    assert (read.opened, read.made, read.problems) == (None, made, ())
