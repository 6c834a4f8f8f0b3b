"""A lid code is what is typed to find a thing: no list cuts it, however many batches there were."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

import pytest

from pantry_tui.app.format import Column, count_columns, take_columns
from pantry_tui.app.main import PantryApp
from pantry_tui.app.rowtext import due_columns
from pantry_tui.core.words import State
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act
from tests.app.screens import all_lines, painted, table


@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize("longest", [0, 2, 4, 5, 7])
@pytest.mark.parametrize("columns", [due_columns, take_columns, count_columns])
def test_the_longest_code_fits_and_the_list_is_no_wider(
    columns: Callable[..., tuple[Column, ...]], longest: int, width: int
) -> None:
    found = columns(width, longest=longest)
    codes = [column for column in found if column.field == "code"]
    # A very narrow list of stock has none: the sentence under it says the code of its line.
    assert codes or (columns is due_columns and width < 60)
    assert all(code.width > longest for code in codes)
    assert sum(column.width for column in found) <= width - 2


@pytest.fixture
def many(larder: Pantry) -> Pantry:
    """A larder whose next lid codes are those of a household with a hundred thousand batches."""
    with larder.writing():
        larder.store.set_meta("codes", "60000")
    for line in (
        "40 pint jars peaches, boiling-water canned, larder, 20 dec 2025, minutes=30",
        "12 half-pint jars strawberry jam, jam, larder",
    ):
        putup.put_up(larder, putup.read(larder, line))
    return larder


@pytest.mark.parametrize("size", [(80, 24), (40, 24), (120, 40)])
@pytest.mark.parametrize("keys", ["", "S", "W", "c1"])
async def test_every_list_shows_a_long_code_whole(
    many: Pantry, keys: str, size: tuple[int, int]
) -> None:
    codes = {batch.code for batch in many.batches()}
    assert {len(code) for code in codes} == {5}
    async with PantryApp(many).run_test(size=size) as pilot:
        await pilot.press(*keys)
        shown = {line.ref.partition("/")[0] for line in all_lines(pilot)} & codes
        assert shown
        if size[0] < 60 and not keys:
            # What, where, until when; the sentence below says the code of the line.
            current = table(pilot).current
            assert current is not None
            shown = {current.ref.partition("/")[0]}
            assert all(f"{code}." in painted(pilot) for code in shown)
            return
        assert all(f"{code} " in painted(pilot) for code in shown)


async def test_the_batch_of_a_long_code_is_found_by_typing_it(many: Pantry) -> None:
    code = min(batch.code for batch in many.batches())
    async with PantryApp(many).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code.lower(), "enter", "enter")
        assert f"{code} " in painted(pilot)


def test_the_longest_code_is_of_all_that_were_ever_given(many: Pantry) -> None:
    from pantry_tui.services.stock.undo import undo

    assert many.longest_code == 5
    undo(many)
    undo(many)
    assert many.longest_code == 5, "it may still stand on a lid"


def test_an_empty_store_has_no_code(larder: Pantry) -> None:
    assert larder.longest_code == 0
    assert larder.today == date(2026, 11, 25)


async def test_a_code_with_the_key_of_opening_opens_a_closed_one_beside_an_open_one(
    larder: Pantry,
) -> None:
    line = "4 pint jars peaches, boiling-water canned, larder, 20 dec 2025, minutes=30"
    code = putup.put_up(larder, putup.read(larder, line)).code
    act.open_(larder, code)
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code.lower(), "o")
        await pilot.pause()
        opened = [c for c in larder.containers_of(larder.batch(code)) if c.state is State.OPEN]  # type: ignore[arg-type]
        assert len(opened) == 2, painted(pilot)
