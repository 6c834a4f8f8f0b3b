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


@pytest.mark.parametrize("width", [30, 40, 67, 80, 120])
@pytest.mark.parametrize("longest", [0, 2, 4, 5, 7])
@pytest.mark.parametrize("columns", [due_columns, take_columns, count_columns])
def test_the_longest_code_fits_and_the_list_is_no_wider(
    columns: Callable[..., tuple[Column, ...]], longest: int, width: int
) -> None:
    found = columns(width, longest=longest)
    (code,) = [column for column in found if column.field == "code"]
    assert code.width > longest
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


async def test_a_numbered_one_of_a_batch_is_shown_with_the_keys_for_it(larder: Pantry) -> None:
    line = "4 pint jars peaches, boiling-water canned, larder, 20 dec 2025, minutes=30"
    code = putup.put_up(larder, putup.read(larder, line)).code
    act.open_(larder, f"{code}/2")
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*code.lower(), "slash", "3", "enter")
        shown = table(pilot)
        opened, closed = shown.source.find(f"{code}/2"), shown.source.find(f"{code}/3")
        assert opened != closed == shown.cursor_row


# -- a code that is half typed --------------------------------------------------------------------


@pytest.fixture
def codes(larder: Pantry) -> list[str]:
    """The lid codes of peaches, beans and jam, in that order."""
    lines = (
        "4 pint jars peaches, boiling-water canned, larder, minutes=30",
        "6 pint jars runner beans, pressure canned, larder",
        "5 half-pint jars strawberry jam, jam, larder",
    )
    return [putup.put_up(larder, putup.read(larder, line)).code for line in lines]


def left(p: Pantry, code: str) -> int:
    batch = p.batch(code)
    assert batch is not None
    return sum(not one.fate for one in p.containers_of(batch))


@pytest.mark.parametrize("size", [(80, 24), (120, 40), (40, 20)])
async def test_half_a_code_stands_on_the_screen_and_backspace_takes_one_back(
    larder: Pantry, codes: list[str], size: tuple[int, int]
) -> None:
    async with PantryApp(larder).run_test(size=size) as pilot:
        await pilot.press(*codes[1].lower())
        assert f"Lid code {codes[1]} runner beans" in painted(pilot)
        assert "u use" in painted(pilot).replace("\u00a0", " ")
        await pilot.press("backspace")
        assert f"Lid code {codes[1][0]}_" in painted(pilot)
        assert "Backspace takes one back" in painted(pilot).replace("\u00a0", " ")
        await pilot.press("backspace")
        assert "Lid code" not in painted(pilot)
        assert pilot.app.focused is table(pilot)


@pytest.mark.parametrize("key", ["u", "z", "W", "q", "slash", "space"])
async def test_a_key_that_goes_on_with_no_code_is_refused_by_name_and_ends_the_code(
    larder: Pantry, codes: list[str], key: str
) -> None:
    booked, half = len(larder.events), codes[1][0]
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        here = pilot.app.screen
        await pilot.press(half, key)
        await pilot.pause()
        assert f"Not done: No lid code begins with {half}" in painted(pilot)
        assert "Lid code _ no code is typed" in painted(pilot)
        assert "Esc back to the list" in painted(pilot).replace("\u00a0", " ")
        await pilot.press(codes[1][1].lower(), "u", "d", "enter", "backspace", "space")
        await pilot.pause()
        assert "No lid code is typed" in painted(pilot), "nothing acts on a half or on the cursor"
        assert pilot.app.screen is here
        assert len(larder.events) == booked
        await pilot.press(*codes[1].lower(), "u")
        assert left(larder, codes[1]) == 5, "typed whole, it acts"
    assert len(larder.events) == booked + 1


async def test_a_digit_that_is_refused_begins_the_code_that_begins_with_it(
    larder: Pantry, codes: list[str]
) -> None:
    first, other = codes[0], codes[2]
    assert first[0] != other[0]
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(first[0], other[0])
        said = f"No lid code begins with {first[0]}{other[0]}: begun anew with {other[0]}"
        assert said in painted(pilot)
        assert f"Lid code {other[0]}_" in painted(pilot)
        await pilot.press(other[1].lower(), "u")
        assert [left(larder, code) for code in codes] == [4, 6, 4]


@pytest.mark.parametrize("typed", ["{0}u", "u", "{0}y", "y"])
async def test_no_key_acts_after_a_first_digit_that_begins_no_code(
    larder: Pantry, codes: list[str], typed: str
) -> None:
    (none, *_) = set("123456789") - {code[0] for code in codes}
    booked = len(larder.events)
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        here = pilot.app.screen
        await pilot.press(none, *typed.format(none))
        await pilot.pause()
        assert pilot.app.screen is here
        assert len(larder.events) == booked
        await pilot.press("escape")
        assert "Lid code" not in painted(pilot)
        assert pilot.app.focused is table(pilot)


async def test_a_letter_refused_behind_a_whole_code_ends_it_too(
    larder: Pantry, codes: list[str]
) -> None:
    booked = len(larder.events)
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*codes[1].lower(), "O", "u")
        await pilot.pause()
        assert "No lid code is typed" in painted(pilot)
    assert len(larder.events) == booked


@pytest.mark.parametrize(("key", "room"), [("W", "week"), ("f3", "shelves"), ("y", "outlook")])
async def test_behind_a_whole_code_a_key_means_what_it_always_means(
    larder: Pantry, codes: list[str], key: str, room: str
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*codes[2].lower(), key)
        await pilot.pause()
        assert getattr(pilot.app.screen, "here", "") == room
        await pilot.press("D")
        assert "Lid code" not in painted(pilot), "it was let go"


async def test_the_cursor_keys_let_a_code_go(larder: Pantry, codes: list[str]) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(codes[1][0], "down")
        assert "Lid code" not in painted(pilot)
        assert pilot.app.focused is table(pilot)


async def test_what_is_marked_is_not_what_a_code_is_typed_for(
    larder: Pantry, codes: list[str]
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*codes[0].lower(), "space", *codes[1].lower(), "u")
        assert [left(larder, code) for code in codes] == [4, 5, 5]


async def test_a_container_that_is_named_is_the_one_that_is_used(
    larder: Pantry, codes: list[str]
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*codes[1].lower(), "slash", "3", "u")
        batch = larder.batch(codes[1])
        assert batch is not None
        gone = [one.number for one in larder.containers_of(batch) if one.fate]
        assert gone == [3], painted(pilot)
        await pilot.press(*codes[1].lower(), "slash", "9")
        assert f"No lid code begins with {codes[1]}/9" in painted(pilot)
        booked = len(larder.events)
        await pilot.press("u")
        assert len(larder.events) == booked, "nor any other container of it"


@pytest.mark.parametrize("room", ["enter", "W"])
async def test_what_this_list_does_not_hold_is_acted_on_where_it_stands(
    larder: Pantry, codes: list[str], room: str
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(*codes[0].lower(), "enter", room)
        await pilot.pause()
        shown = {line.ref.partition("/")[0] for line in all_lines(pilot)}
        other = next((code for code in codes if code not in shown), None)
        if other is None:  # the week has all of them
            other = codes[2]
        before = left(larder, other)
        await pilot.press(*other.lower(), "u")
        await pilot.pause()
        assert left(larder, other) == before - 1, painted(pilot)
        assert "Used" in painted(pilot)


async def test_enter_behind_half_a_code_shows_no_batch(larder: Pantry, codes: list[str]) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press(codes[0][0], "enter")
        assert "only the beginning of a lid code" in painted(pilot)
        await pilot.press("1")
        await pilot.press("escape", "1")
        assert "No lid code begins with 1" in painted(pilot)
        assert "Lid code _ no code is typed" in painted(pilot)


async def test_where_nothing_of_stock_is_listed_a_key_behind_a_code_acts_on_its_page(
    larder: Pantry, codes: list[str]
) -> None:
    async with PantryApp(larder).run_test(size=(80, 24)) as pilot:
        await pilot.press("y", *codes[1].lower(), "o")
        await pilot.pause()
        batch = larder.batch(codes[1])
        assert batch is not None
        opened = [c for c in larder.containers_of(batch) if c.state is State.OPEN]
        assert len(opened) == 1, painted(pilot)
        await pilot.press("escape", *codes[1].lower(), "O")
        await pilot.pause()
        assert "Type one from its first digit" in " ".join(painted(pilot).split())
        await pilot.press(*codes[1].lower(), "u")
        await pilot.pause()
        assert left(larder, codes[1]) == 5
