"""A line that says what it is taken out of, in front: half of 6A, freezer."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.words import Method, State
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, places, view

TODAY = date(2026, 11, 25)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 12 * 60)) as pantry:
        for line in ("fridge, fridge", "freezer, freezer", "cellar, cellar"):
            places.add_line(pantry, line)
        for line in (
            "3 1 lb packs ground beef, frozen, freezer, 2026-10-01",
            "2 tubs chicken soup, cooked meal, fridge",
            "30 lb potatoes, cellar",
        ):
            putup.put_up(pantry, putup.read(pantry, line))
        yield pantry


@pytest.mark.parametrize(
    ("line", "food", "source", "put"),
    [
        ("half of 2A, freezer", "ground beef", ("2A", "half"), (1, "pack")),
        ("half of 2a/1, freezer", "ground beef", ("2A/1", "half"), (1, "pack")),
        ("freezer, half of 2A", "ground beef", ("2A", "half"), (1, "pack")),
        ("half 2A, freezer", "ground beef", ("2A", "half"), (1, "pack")),
        ("half a pack of 2A, freezer", "ground beef", ("2A", "half"), (1, "pack")),
        ("a third of 3A, freezer", "chicken soup", ("3A", "a third"), (1, "tub")),
        ("a tub of 3A, freezer", "chicken soup", ("3A", ""), (1, "tub")),
        ("2 tubs of 3A, freezer", "chicken soup", ("3A", "2"), (2, "tubs")),
        ("the rest of 3A, freezer", "chicken soup", ("3A", "all"), (1, "tub")),
        ("4 lb of 4A in 2 bags, freezer", "potatoes", ("4A", "4 lb"), (2, "bags")),
        ("2 bags potatoes, freezer, 4 lb of 4A", "potatoes", ("4A", "4 lb"), (2, "bags")),
    ],
)
def test_it_is_read_as_it_would_be_behind_from(
    p: Pantry, line: str, food: str, source: tuple[str, str], put: tuple[int, str]
) -> None:
    read = putup.read(p, line)
    assert not read.problems
    assert not read.unread
    assert (read.food, read.method) == (food, Method.FROZEN)
    assert [(one.ref, one.amount) for one in read.sources] == [source]
    assert (read.count, read.container) == put


@pytest.mark.parametrize(
    "line",
    [
        "2 packs pork, frozen, freezer, note=half of 2A was better",
        "half a lamb, freezer",
        "half a pint jar honey, cellar",
        "30 lb potatoes, cellar, 2 of 8 rotten",
        "12 eggs, fridge",
        "1 pack ground beef, freezer, from half of 2A/1",
        "2 packs of 6 sausages, freezer",
        "1 of 12 eggs, fridge",
    ],
)
def test_what_names_no_batch_so_is_read_as_ever(p: Pantry, line: str) -> None:
    assert not putup.read(p, line.partition(", from")[0]).sources


def test_a_code_that_nothing_has_is_named_and_a_half_of_nobody_knows_which_says_how(
    p: Pantry,
) -> None:
    assert "No batch has the lid code '9H'" in putup.read(p, "half of 9H, freezer").problems[0]
    (asked,) = putup.read(p, "half a pack ground beef, freezer").problems
    assert "half of 2A" in asked
    (asked,) = putup.read(p, "half a pack pork, freezer").problems
    assert "half of" not in asked


@pytest.mark.parametrize("how", ["use", "freeze"])
def test_the_rest_of_a_thawed_pack_is_thawed_still(p: Pantry, how: str) -> None:
    act.thaw(p, "2A/1")
    p.clock = Clock(TODAY, 13 * 60)
    before = next(row for row in view.due(p) if "2A/1" in row.container_ids)
    if how == "use":
        act.use(p, "2A/1", "half")
    else:
        putup.put_up(p, putup.read(p, "half of 2A/1, freezer"))
    rest = next(row for row in view.due(p) if "2A/1" in row.container_ids)
    assert (rest.state, rest.amount) == (State.THAWED, "0.5 lb")
    assert rest.discard_after == before.discard_after


def test_what_is_opened_or_drawn_from_otherwise_is_open(p: Pantry) -> None:
    act.use(p, "3A/1", "half")
    assert {row.state for row in view.due(p) if row.code == "3A"} == {State.OPEN, State.SEALED}
