"""The week's keys: what could come instead is shown before it does, what is refused has no key."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot

from pantry_tui.app.lines import Heading
from pantry_tui.app.main import PantryApp
from pantry_tui.app.weeklines import DayKey, DishKey, FallenKey, RestKey, TakeKey, ThawKey
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Line
from pantry_tui.core.log.payloads import JarsCounted, Undo
from pantry_tui.services.lookup import signs
from pantry_tui.services.output.kitchen import kitchen
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite, dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.rows import by_day
from pantry_tui.services.stock.pick import batch_named
from tests.app.screens import painted, table


async def to_swap(pilot: Pilot[None], demo: Pantry) -> tuple[str, str, list[str]]:
    """The cursor on something that several foods could take the place of: its container, its food,
    and theirs."""
    for take in weeks.week(demo).take:
        found = wishes.swaps(demo, take.containers[0])
        foods = [batch_named(demo, one).food.name for one in found]
        if len(foods) > 2:
            at = table(pilot).source.where(_key(pilot, take.containers[0]))
            assert at is not None
            table(pilot).move_cursor(at)
            return take.containers[0], take.food, foods
    raise AssertionError("nothing could be swapped")


def rows(pilot: Pilot[None]) -> list[Line]:
    source = table(pilot).source
    return list(source.lines(0, source.total))


def _key(pilot: Pilot[None], container: str) -> TakeKey:
    source = table(pilot).source
    return next(
        line.key
        for line in source.lines(0, source.total)
        if isinstance(line.key, TakeKey) and line.key.container == container
    )


@pytest.mark.parametrize(("keys", "at"), [(("enter",), 0), (("2",), 1)])
async def test_a_swap_shows_what_could_come_in_order_and_takes_what_is_chosen(
    demo: Pantry, keys: tuple[str, ...], at: int
) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        _, old, foods = await to_swap(pilot, demo)
        await pilot.press("r")
        shown = painted(pilot)
        assert f"Instead of {old}" in shown
        options = [shown.index(f"{n}  {food}, ") for n, food in enumerate(foods[:3], start=1)]
        assert options == sorted(options)
        assert all(take.food != foods[at] for take in weeks.week(demo).take)
        await pilot.press(*keys)
        after = {take.food for take in weeks.week(demo).take}
        assert foods[at] in after
        assert old not in after


async def test_a_swap_that_is_left_changes_nothing(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        await to_swap(pilot, demo)
        before = weeks.week(demo).take
        await pilot.press("r", "escape")
        assert weeks.week(demo).take == before


@pytest.mark.parametrize("picture", [False, True])
async def test_an_accepted_week_has_the_key_to_pin_too(demo: Pantry, picture: bool) -> None:
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        await pilot.press("W", *("v" for _ in range(picture)))

        async def named() -> tuple[bool, bool]:
            foot = str(pilot.app.screen.query_one(KeyLine).content).replace("\u00a0", " ")
            await pilot.press("question_mark")
            helped = "Pin it to its day" in painted(pilot)
            await pilot.press("escape")
            return "k pin" in foot, helped

        assert await named() == (True, True)
        await pilot.press("a")
        assert weeks.accepted(demo) is not None
        assert await named() == (True, True)


async def test_the_week_begins_with_food_and_its_notes_stand_below(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        source = table(pilot).source
        keys = [line.key for line in source.lines(0, source.total)]
        food = [at for at, key in enumerate(keys) if isinstance(key, TakeKey)]
        assert max(food) < keys.index(Heading("To know of this week"))
        found = weeks.week(demo)
        assert found.later, "and there are some"
        assert (*found.urgent, *found.later) == found.notes
        above = [key for key in keys[: food[0]] if isinstance(key, Heading)]
        assert bool(above) == bool(found.urgent), "but for what must be eaten today"


async def test_the_rest_of_what_was_opened_stands_on_its_days_as_on_the_page_for_the_kitchen(
    demo: Pantry,
) -> None:
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        await pilot.press("W")
        source = table(pilot).source
        keys = [line.key for line in source.lines(0, source.total)]
        rests = [(key.container, key.day) for key in keys if isinstance(key, RestKey)]
        found = weeks.week(demo)
        wanted = [(one.take.containers[0], one.day) for one in by_day(found.take) if one.rest]
        assert rests == wanted
        assert len(rests) > 1
        assert [row[3] for row in kitchen(demo).rows].count("rest") == len(rests)
        at = next(n for n, key in enumerate(keys) if isinstance(key, RestKey))
        table(pilot).move_cursor(at)
        await pilot.press("x")
        food = next(t.food for t in found.take if t.containers[0] == rests[0][0])
        assert food in weeks.week(demo).left_out, "a key for it is for what was opened"


async def test_after_a_refused_key_undo_takes_back_nothing(demo: Pantry) -> None:
    """The act before it stays until z is pressed once more; nor was the week accepted by it."""
    async with PantryApp(demo).run_test(size=(100, 30)) as pilot:
        await pilot.press("W")
        source = table(pilot).source
        lines = source.lines(0, source.total)
        thaw = next((n for n, one in enumerate(lines) if isinstance(one.key, ThawKey)), None)
        later = [n for n, one in enumerate(lines) if isinstance(one.key, TakeKey)][-1]
        demo.book(JarsCounted("pint", 7))
        for at in (one for one in (thaw, later) if one is not None):
            booked = len(demo.events)
            table(pilot).move_cursor(at)
            await pilot.press("e")
            assert "still to come" in painted(pilot)
            assert ("takes it out to thaw" in painted(pilot)) == (at == thaw)
            await pilot.press("z")
            assert "it did nothing" in " ".join(painted(pilot).split())
            assert len(demo.events) == booked
        assert weeks.accepted(demo) is None
        await pilot.press("z")
        assert isinstance(demo.events[-1].payload, Undo)


async def test_what_is_not_sound_by_now_stands_on_its_day_and_a_key_acts_on_it(
    demo: Pantry,
) -> None:
    weeks.accept(demo)
    name = next(one.containers[0] for one in weeks.week(demo).take if one.food == "applesauce")
    signs.mark(demo, name, "bulging lid")
    async with PantryApp(demo).run_test(size=(120, 40)) as pilot:
        await pilot.press("W")
        shown = painted(pilot)
        assert f"{name} applesauce is left out: do not taste it" in shown
        source = table(pilot).source
        lines = source.lines(0, source.total)
        at = next(i for i, line in enumerate(lines) if isinstance(line.key, FallenKey))
        key = lines[at].key
        assert isinstance(key, FallenKey)
        below = next(one.key for one in lines[at:] if isinstance(one.key, TakeKey))
        above = [one.key for one in lines[:at] if isinstance(one.key, TakeKey)]
        days = {one.containers[0]: one.day for one in weeks.week(demo).take}
        assert days[below.container] >= key.day
        assert all(days[one.container] < key.day for one in above if one.day is None)
        assert lines[at].ref == name


async def test_a_day_away_has_a_row_in_its_place(demo: Pantry) -> None:
    day = demo.today + timedelta(days=2)
    wishes.out(demo, day)
    appetite.read_table(demo, f"away {(day + timedelta(days=1)).isoformat()}")
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        source = table(pilot).source
        lines = source.lines(0, source.total)
        at = [n for n, line in enumerate(lines) if isinstance(line.key, DayKey)]
        assert [lines[n].cells[0][0] for n in at] == [
            "Fri 27 Nov you eat out",
            "Sat 28 Nov away: nobody at home",
        ]
        assert at[1] == at[0] + 1
        before, after = lines[at[0] - 1].key, lines[at[1] + 1].key
        assert isinstance(before, TakeKey | RestKey)
        assert isinstance(after, TakeKey | RestKey | DishKey)
        table(pilot).move_cursor(at[0])
        await pilot.press("h")
        assert day not in weeks.week(demo).bare


async def test_an_empty_week_says_what_to_do_next(tmp_path: Path) -> None:
    create(tmp_path / "empty.db", altitude_ft=0, people=2)
    with open_pantry(tmp_path / "empty.db", date(2026, 11, 25)) as p:
        async with PantryApp(p).run_test(size=(80, 24)) as pilot:
            await pilot.press("W")
            shown = " ".join(painted(pilot).split())
            assert "Nothing to propose: put something up with p (put up)." in shown


async def test_a_day_of_eating_out_is_gone_from_no_week_and_seats_nobody(demo: Pantry) -> None:
    today = demo.today
    wishes.out(demo, today)
    weeks.accept(demo)
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W", "v")
        await pilot.pause()
        head = next(line for line in painted(pilot).splitlines() if line.startswith(" Wed 25 Nov"))
        assert head.split()[3:] == ["away"]
        await pilot.press("v")
        demo.today = today + timedelta(days=1)
        await pilot.press("D", "W")
        await pilot.pause()
        shown = [line for line in painted(pilot).splitlines() if "Wed 25 Nov you eat out" in line]
        assert len(shown) == 1


async def test_a_dish_that_is_written_down_on_a_day_is_put_on_that_day(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        await pilot.press("W")
        at = max(n for n, line in enumerate(rows(pilot)) if isinstance(line.key, TakeKey))
        table(pilot).move_cursor(at)
        day = max(take.day for take in weeks.week(demo).take)
        await pilot.press("i", *"a new dish", "enter", *"apple pot = 2 apples", "enter")
        assert "apple pot" in painted(pilot)
        assert {take.day for take in weeks.week(demo).take if take.dish == "apple pot"} == {day}
        await pilot.press("z")
        assert not any(take.dish == "apple pot" for take in weeks.week(demo).take)
        assert "apple pot" not in {one.name for one in dishes.dishes(demo)}, "one undo for both"


async def test_a_dish_that_cannot_be_made_is_written_down_and_says_why(demo: Pantry) -> None:
    day = demo.today + timedelta(days=2)
    done = wishes.cook_new(demo, "big roast = 150 venison", day)
    assert "Added the dish big roast" in done.message
    assert "cannot be made" in done.warnings[0]
    assert "big roast" in {one.name for one in dishes.dishes(demo)}
    wishes.cook_new(demo, "apple pot = 2 apples", day)
    wishes.cook_new(demo, "apple pot = 3 apples", day)  # said in other words, it stays there
    assert {take.day for take in weeks.week(demo).take if take.dish == "apple pot"} == {day}


async def test_what_may_not_be_given_is_refused_before_anybody_is_asked_for(demo: Pantry) -> None:
    async with PantryApp(demo).run_test(size=(80, 24)) as pilot:
        at = next(n for n, line in enumerate(rows(pilot)) if line.row and line.row.food == "jerky")
        table(pilot).move_cursor(at)
        await pilot.press("g")
        shown = " ".join(painted(pilot).split())
        assert "to whom" not in shown
        assert "Not done: " in shown
