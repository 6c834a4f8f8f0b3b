"""What must be eaten within the week is on the door and in the list, however much is only later;
and papers say each thing once, in the words of the screen."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.app.main import PantryApp
from pantry_tui.services.batchwork import putup
from pantry_tui.services.output import paper
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite
from pantry_tui.services.stock import places
from pantry_tui.services.stock.lines import lines
from tests.app.screens import painted

TODAY = date(2026, 10, 3)
FRUITS = (
    "apricot", "blackberry", "cherry", "damson", "fig", "gooseberry", "grape", "peach", "pear",
    "plum", "raspberry", "strawberry", "blueberry",
)  # fmt: skip


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", altitude_ft=900)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (("fridge", "fridge"), ("larder", "pantry"), ("cellar", "cellar")):
            places.add(pantry, name, climate)
        for fruit in FRUITS:
            up(pantry, f"2 half-pint jars {fruit} jam, larder, 1 sept")
        up(pantry, "1 jar garlic in oil, fridge, today")
        up(pantry, "1 kg bacon, hot smoked, fridge, today")
        up(pantry, "3 kg kimchi, fridge, 1 oct")
        yield pantry


def up(p: Pantry, line: str) -> tuple[str, ...]:
    return putup.put_up(p, putup.read(p, line)).cautions


async def test_what_must_be_eaten_within_a_week_is_not_folded_away(p: Pantry) -> None:
    folded = lines(p, folded=True)
    assert {"garlic in oil", "bacon"} <= {row.food for row in folded.rows(0, folded.total)}
    assert "plum jam" not in {row.food for row in folded.rows(0, folded.total)}
    async with PantryApp(p).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        shown = painted(pilot)
        assert "folded after a week, Enter shows all" in shown
        assert "garlic in oil" in shown
        assert "plum jam" not in shown
        await pilot.resize_terminal(40, 20)
        await pilot.pause()
        assert "folded, Enter shows them" in painted(pilot)


def test_the_door_lists_what_must_be_eaten_within_a_week(p: Pantry) -> None:
    page = paper.sheet_text(paper.sheet(p, "due"))
    assert "garlic in oil" in page
    assert "bacon" in page
    assert "plum jam" not in page
    assert "Later, not listed: 26 containers." in page


def test_the_door_has_the_heads_of_the_screen(p: Pantry) -> None:
    heads = [head.partition(":")[0] for head, _ in paper.sheet(p, "due").parts]
    assert "Needs care" in heads


def test_a_day_with_guests_is_named_once_on_the_week(p: Pantry) -> None:
    appetite.read_table(p, "6 on monday")
    page = paper.sheet_text(paper.sheet(p, "week"))
    assert "Mon 5 Oct 2026: 6 at the table" in page
    assert "Mon 5 Oct 2026: Mon 5 Oct 2026" not in page


def test_a_crop_that_comes_beside_what_spoils_it_says_so_at_once(p: Pantry) -> None:
    """As it does where it is moved there."""
    assert not any("beside" in one for one in up(p, "12 kg apples, cellar"))
    assert any(one.startswith("Apples beside carrots") for one in up(p, "4 kg carrots, cellar"))
