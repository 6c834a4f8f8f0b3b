"""A day is booked as eaten: all that can be, and by name what cannot."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from pantry_tui.cli.printing import week as printing
from pantry_tui.core.dataclass import replace
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.done import Done
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import appetite, weekdraft, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.stock import act, places, undo, view
from tests.services.plan.putting_up import up

TODAY, DAY = date(2026, 11, 5), timedelta(days=1)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db", people=2)
    with open_pantry(tmp_path / "store.db", TODAY) as pantry:
        for name, climate in (
            ("larder", "pantry"),
            ("kitchen", "room"),
            ("fridge", "fridge"),
            ("bins", "cellar"),
        ):
            places.add(pantry, name, climate)
        yield pantry


def amounts(p: Pantry) -> dict[str, str]:
    return {row.code: row.amount for row in view.due(p)}


def test_from_a_crock_beside_the_days_a_meal_is_taken(p: Pantry) -> None:
    p.today = date(2026, 9, 1)
    crock = up(p, "1 crock dill pickles, fermented, kitchen, amount=4lb")
    p.today = date(2026, 11, 1)
    act.ready(p, crock)
    act.move(p, crock, "fridge")
    p.today = TODAY
    potatoes = up(p, "1 crate potatoes, cellar-stored, bins, 2026-10-01, amount=40lb")
    wishes.pin(p, f"{crock}/1", TODAY)
    wishes.pin(p, f"{potatoes}/1", TODAY)
    weeks.accept(p)
    done = weeks.eaten(p, TODAY)
    assert {f"{crock}/1", f"{potatoes}/1"} == set(done.containers)
    assert amounts(p)[crock] not in ("", "4 lb")
    assert not any("Not booked" in said for said in done.warnings)


def test_what_cannot_be_booked_holds_up_none_of_the_rest(
    p: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    beef, chicken = (
        up(p, f"2 pint jars {food}, pressure canned, larder, 2026-10-10")
        for food in ("beef", "chicken")
    )
    for code in (beef, chicken):
        wishes.pin(p, f"{code}/1", TODAY)
    weeks.accept(p)
    held_up, really = f"{chicken}/1", {"use": act.use, "open_": act.open_}

    def hold_up(name: str) -> None:
        def doing(p: Pantry, ref: str, *args: Any, **named: Any) -> Done:
            if ref == held_up:
                raise Refused("Look at its lid first.")
            return really[name](p, ref, *args, **named)

        monkeypatch.setattr(act, name, doing)

    hold_up("use")
    hold_up("open_")
    done = weeks.eaten(p, TODAY)
    assert done.containers == (f"{beef}/1",)
    assert any(held_up in said and "Look at its lid first." in said for said in done.warnings)
    assert any("mark Thu 5 Nov 2026 eaten once more" in said for said in done.warnings)
    (left,) = [take for take in weeks.week(p).take if take.day == TODAY]
    assert left.containers == (held_up,), "what is not booked stays on its day"
    with pytest.raises(Refused, match="Look at its lid first"):
        weeks.eaten(p, TODAY)  # nothing else is left to book
    monkeypatch.undo()
    assert weeks.eaten(p, TODAY).containers == (held_up,)
    undo.undo(p)
    undo.undo(p)
    assert all(row.state is State.SEALED for row in view.due(p)), "each is one undo"


def test_what_went_off_is_named_beside_what_is_booked(p: Pantry) -> None:
    good = up(p, "1 crate potatoes, cellar-stored, bins, 2026-10-01, amount=40lb")
    bad = up(p, "2 pint jars beef, pressure canned, larder, 2026-10-10")
    for code in (good, bad):
        wishes.pin(p, f"{code}/1", TODAY)
    weeks.accept(p)
    signs.mark(p, f"{bad}/1", "bulging lid")
    done = weeks.eaten(p, TODAY)
    assert done.containers == (f"{good}/1",)
    assert any(f"{bad}/1 beef" in said for said in done.warnings)
    with pytest.raises(Refused, match=f"{bad}/1 beef"):
        weeks.eaten(p, TODAY)
    with pytest.raises(Refused):
        weeks.eaten(p, TODAY + timedelta(days=30))


def test_what_is_left_of_a_jar_comes_into_the_next_week_as_it_stands(p: Pantry) -> None:
    soup = "6 quart jars vegetable soup, pressure canned minutes=90 psi=11, larder, 2026-10-10"
    jar = f"{up(p, soup)}/1"
    wishes.pin(p, jar, TODAY + timedelta(days=6))  # of four days the last one is in this week
    (whole,) = [take.servings for take in weeks.week(p).take if jar in take.containers]
    weeks.accept(p)
    for ahead in range(7):
        p.today = TODAY + timedelta(days=ahead)
        try:
            weeks.eaten(p, p.today)
        except Refused:
            continue
    p.today = TODAY + timedelta(days=7)
    carried = [take for take in weeks.week(p).take if jar in take.containers]
    assert [take.servings for take in carried] == [whole - 2], "both have eaten of it once"


def test_no_second_relish_is_opened_beside_and_the_open_one_is_asked_about(p: Pantry) -> None:
    code = up(p, "6 half-pint jars peach jam, jam, larder, 2026-10-01")
    act.open_(p, f"{code}/1")
    for ahead in (0, 60):
        p.today = TODAY + timedelta(days=ahead)
        found = weeks.week(p)
        assert [take.containers for take in found.beside] == [(f"{code}/1",)]
        asked = [said for said in found.notes if f"use {code}/1 all" in said]
        assert bool(asked) is (ahead > 0)
    act.use(p, f"{code}/1", "all")
    assert f"{code}/1" not in {name for take in weeks.week(p).beside for name in take.containers}


def test_of_many_heads_a_day_eats_whole_ones_and_no_half_of_them_all(p: Pantry) -> None:
    cabbages = up(p, "8 heads cabbage, cellar-stored, bins, 2026-10-25")
    weeks.accept(p)
    planned = next(take for take in weeks.week(p).take if take.code == cabbages)
    assert planned.amount == "1"
    weeks.eaten(p, planned.day)
    row = next(row for row in view.due(p) if row.code == cabbages)
    assert (row.amount, row.usable) == ("7", True)


def test_a_part_of_a_head_that_was_planned_is_that_part_of_one(p: Pantry) -> None:
    cabbages = up(p, "8 heads cabbage, cellar-stored, bins, 2026-10-25")
    weeks.accept(p)
    draft = weekdraft.load(p)
    assert draft.plan is not None
    halves = tuple(entry._replace(amount="1/2") for entry in draft.plan)
    with p.writing():
        weekdraft.save(p, replace(draft, plan=halves))
    weeks.eaten(p, halves[0].days[0])
    assert amounts(p)[cabbages] == "7 1/2"


@pytest.fixture
def fish(p: Pantry) -> Pantry:
    """Two smoked trout of two meals each, frozen peas in bags, and a turkey that must thaw."""
    places.add(p, "freezer", "freezer")
    for line in (
        "2 hot smoked trout, fridge, 2026-11-03",
        "3 bags of frozen peas (1 lb each), freezer, 2026-09-01",
        "14 lb turkey, freezer, frozen 2026-10-20",
    ):
        up(p, line)
    weeks.accept(p)
    return p


def test_of_what_is_never_opened_or_stays_frozen_each_day_takes_its_meal(fish: Pantry) -> None:
    for ahead in range(2):
        today = fish.today = TODAY + timedelta(days=ahead)
        lay = [one for one in weeks.week(fish).take if one.day == today and not one.thaw_by]
        before = amounts_by_name(fish)
        done = weeks.eaten(fish, today)
        after = amounts_by_name(fish)
        assert lay
        for name in (name for take in lay for name in take.containers):
            assert after.get(name, "gone") != before[name]
            assert name in done.message
        with pytest.raises(Refused, match="has nothing more for"):
            weeks.eaten(fish, today)
    undo.undo(fish)
    assert amounts_by_name(fish) == before


def amounts_by_name(p: Pantry) -> dict[str, str]:
    return {name: f"{row.state} {row.amount}" for row in view.due(p) for name in row.container_ids}


def test_what_is_open_already_is_named_and_its_day_is_eaten(p: Pantry) -> None:
    appetite.set_people(p, 1)
    soup = up(
        p, "1 quart jar vegetable soup, pressure canned minutes=90 psi=11, larder, 2026-10-10"
    )
    wishes.pin(p, f"{soup}/1", TODAY)
    weeks.accept(p)
    (take,) = weeks.week(p).take
    assert len(take.days) > 2
    weeks.eaten(p, TODAY)
    p.today = take.days[1]
    said = weeks.eaten(p, p.today).message
    assert f"Open already: {soup}/1 vegetable soup" in said
    assert p.today in dict(weeks.week(p).eaten)


def test_no_note_speaks_of_a_day_that_is_gone_or_eaten(fish: Pantry) -> None:
    start = fish.today
    for ahead in range(1, 7):
        fish.today = start + timedelta(days=ahead)
        found = weeks.week(fish)
        assert all(one.day >= fish.today for one in found.no_thaw)
        assert all(take.day >= fish.today for take in found.take if take.thaw_by)
    fish.today = start
    weeks.eaten(fish, start)
    assert start not in {one.day for one in weeks.week(fish).no_thaw}


def test_a_swap_out_of_a_crate_is_for_the_day_that_is_meant(p: Pantry) -> None:
    eggs = up(p, "18 eggs, fresh, fridge, 2026-11-01")
    weeks.accept(p)
    meals = [take for take in weeks.week(p).take if take.code == eggs]
    tray, first, last = meals[0].containers[0], meals[0].day, meals[-1].day
    assert first < last, "the same tray lies on several days"
    trout = up(p, "1 hot smoked trout, fridge, 2026-10-27")
    beef = up(p, "4 pint jars beef, pressure canned, larder, 2026-10-10")
    assert f"{trout}/1" in wishes.swaps(p, tray, first)
    assert wishes.swaps(p, tray, last) == [f"{beef}/1"], "the trout is to be eaten before"
    wishes.swap(p, tray, "beef", last)
    assert [take.day for take in weeks.week(p).take if take.code == beef] == [last]


@pytest.mark.parametrize(
    "line",
    [
        "1 quart jar vegetable soup, pressure canned minutes=90 psi=11, larder, 2026-10-10",
        "14 lb turkey, freezer, frozen 2026-10-20",
    ],
)
def test_a_day_that_is_marked_later_counts_from_that_day(p: Pantry, line: str) -> None:
    """What was opened or set to thaw for it has been so since then."""
    appetite.set_people(p, 1)
    places.add(p, "freezer", "freezer")
    code = up(p, line)
    wishes.pin(p, f"{code}/1", TODAY + timedelta(days=3))
    weeks.accept(p)
    (take,) = weeks.week(p).take
    assert len(take.days) > 1

    def marked(day: date) -> date | None:
        p.today = day
        assert weeks.eaten(p, take.day).containers == (f"{code}/1",)
        (row,) = view.due(p)
        undo.undo(p)
        return row.discard_after

    on_its_day = marked(take.day)
    assert on_its_day is not None
    assert marked(take.day + timedelta(days=2)) == on_its_day


def test_a_bird_on_the_last_day_was_thawed_as_told_and_its_meal_is_taken(p: Pantry) -> None:
    """Its rest is for the next week: it is no raw bird that only begins to thaw."""
    places.add(p, "freezer", "freezer")
    sunday = TODAY + timedelta(days=6)
    code = up(p, "1 16 lb bag turkey, freezer, frozen 2026-10-20")
    appetite.set_table(p, 7, sunday)
    wishes.pin(p, f"{code}/1", sunday)
    weeks.accept(p)
    (take,) = weeks.week(p).take
    assert take.days == (sunday,)
    assert take.thaw_by is not None
    assert take.thaw_by < sunday
    p.today = sunday
    weeks.eaten(p, sunday)
    (row,) = view.due(p)
    assert (row.amount, row.state) == ("9 lb", State.THAWED)
    late = row.discard_after
    assert late is not None
    assert late > sunday
    undo.undo(p)
    p.today = take.thaw_by
    act.thaw(p, f"{code}/1")
    p.today = sunday
    (row,) = view.due(p)
    assert row.discard_after == late, "as if it had been booked on its day"


def test_what_was_only_set_to_thaw_is_not_told_as_eaten(fish: Pantry) -> None:
    """Of the turkey nothing is eaten on the day on which it is taken out."""
    draft = weekdraft.load(fish)
    assert draft.plan is not None
    turkey, rest = next((e, [o for o in draft.plan if o is not e]) for e in draft.plan if e.thaw_by)
    fish.today = turkey.days[0]
    late = turkey._replace(thaw_by=turkey.days[0], days=(*turkey.days, turkey.days[-1] + DAY))
    with fish.writing():
        weekdraft.save(fish, replace(draft, plan=(late, *rest)))
    weeks.eaten(fish, turkey.days[0])
    told = dict(weeks.week(fish).eaten)[turkey.days[0]]
    eaten, _, thawing = told.partition("; set to thaw: ")
    name = fish.stock.batches[fish.stock.containers[turkey.containers[0]].batch].food.name
    assert name in thawing
    assert name not in eaten
    undo.undo(fish)
    assert not weeks.week(fish).eaten


def test_a_day_of_eating_out_stays_in_the_accepted_week_when_it_is_gone(p: Pantry) -> None:
    up(p, "20 lb potatoes, cellar-stored, bins, 2026-10-01")
    wishes.out(p, TODAY)
    weeks.accept(p)
    p.today = TODAY + 2 * DAY
    found = weeks.week(p)
    assert found.bare[TODAY] == "you eat out"
    assert any("you eat out" in line for line in printing.week(found))


def test_of_a_proposed_week_only_days_to_come_are_told(p: Pantry) -> None:
    up(p, "20 lb potatoes, cellar-stored, bins, 2026-10-01")
    wishes.out(p, TODAY)
    p.today = TODAY + DAY
    assert TODAY not in weeks.week(p).bare


def test_an_open_jar_is_in_the_week_as_what_is_left_of_it(p: Pantry) -> None:
    beans = up(p, "3 pint jars runner beans, pressure canned, larder, 2026-10-01")
    act.use(p, beans, "half")
    whole = up(p, "2 pint jars carrots, pressure canned, larder, 2026-10-01")
    act.open_(p, whole)
    for code in (beans, whole):
        wishes.pin(p, f"{code}/1", TODAY)
    found = {take.containers[0]: take.rest_of_one for take in weeks.week(p).take}
    assert found[f"{beans}/1"] == "1/2 pint"
    assert found[f"{whole}/1"] == "1 open"
    assert not any(left for name, left in found.items() if name.endswith(("/2", "/3")))
    rows = [line.split() for line in printing.week(weeks.week(p))]
    assert any(row[4:5] == [beans] and "1/2" in row for row in rows)


def test_where_nothing_more_is_planned_it_is_said_what_to_do(p: Pantry) -> None:
    up(p, "20 lb potatoes, cellar-stored, bins, 2026-10-01")
    weeks.accept(p)
    draft = weekdraft.load(p)
    with p.writing():
        weekdraft.save(p, replace(draft, plan=()))
    with pytest.raises(Refused, match=r"nothing more for Thu 5 Nov 2026\. .*`week --accept`"):
        weeks.eaten(p, TODAY)
    assert "`week --accept`" in weeks.week(p).nothing
    p.today = TODAY + 6 * DAY
    assert "a new week begins tomorrow" in weeks.week(p).nothing


def test_what_was_in_date_on_a_day_that_is_gone_is_booked_as_eaten_then(p: Pantry) -> None:
    soup = up(p, "1 tub bean soup, cooked meal, fridge, 2026-11-03")
    wishes.pin(p, f"{soup}/1", TODAY)
    weeks.accept(p)
    p.today = TODAY + 4 * DAY
    assert view.everything(p)[0].verdict is Verdict.DISCARD
    done = weeks.eaten(p, TODAY)
    assert done.containers == (f"{soup}/1",)
    assert soup not in {row.code for row in view.due(p)}
    assert soup in dict(weeks.week(p).eaten)[TODAY]


def test_what_was_past_its_date_on_that_day_is_not(p: Pantry) -> None:
    soup = up(p, "1 tub bean soup, cooked meal, fridge, 2026-11-03")
    wishes.pin(p, f"{soup}/1", TODAY)
    weeks.accept(p)
    draft = weekdraft.load(p)
    assert draft.plan is not None
    late = TODAY + 3 * DAY
    with p.writing():
        plan = tuple(entry._replace(days=(late,)) for entry in draft.plan)
        weekdraft.save(p, replace(draft, plan=plan))
    p.today = TODAY + 4 * DAY
    with pytest.raises(Refused, match="discard"):
        weeks.eaten(p, late)


def test_what_is_told_of_a_day_is_what_was_told_when_it_was_booked(p: Pantry) -> None:
    """A relish that was open before is on no day's list; what was opened is not eaten up."""
    jam = up(p, "6 half-pint jars peach jam, jam, larder, 2026-10-01")
    act.open_(p, f"{jam}/1")
    soup = up(p, "2 quart jars vegetable soup, pressure canned minutes=90 psi=11, larder")
    wishes.pin(p, f"{soup}/1", TODAY)
    weeks.accept(p)
    done = weeks.eaten(p, TODAY)
    assert f"Opened: {soup}/1" in done.message
    told = dict(weeks.week(p).eaten)[TODAY]
    assert f"opened: {soup} " in told
    assert jam not in told


@pytest.mark.parametrize("line", [
    "1 crate potatoes, cellar-stored, bins, 2026-10-01, amount=40lb",
    "1 box of 12 eggs, fresh, fridge, 2026-11-04",
])  # fmt: skip
def test_what_was_used_by_hand_on_its_day_is_not_booked_once_more(p: Pantry, line: str) -> None:
    code = up(p, line)
    weeks.accept(p)
    entry = next(one for one in weekdraft.load(p).plan or () if TODAY in one.days)
    act.use(p, code, entry.amount or "2")
    after = amounts(p)[code]
    told = weeks.eaten(p, TODAY).message
    assert f"Used already: {code}/1" in told
    assert amounts(p)[code] == after
    undo.undo(p)
    undo.undo(p)
    weeks.eaten(p, TODAY)
    assert amounts(p)[code] == after, "one meal, by either way"


def test_a_day_takes_one_meal_out_of_bulk_however_often_it_is_asked_for(p: Pantry) -> None:
    code = up(p, "1 crate potatoes, cellar-stored, bins, 2026-10-01, amount=40lb")
    weeks.accept(p)

    def lies() -> dict[date, int]:
        found: dict[date, int] = {}
        for take in weeks.week(p).take:
            found[take.day] = found.get(take.day, 0) + (take.code == code)
        return found

    before = lies()
    day = max(before)
    wishes.pin(p, code, day)
    assert lies() == before


def test_what_is_opened_on_its_last_safe_day_is_said(demo: Pantry) -> None:
    accept_all = weeks.week(demo)
    pesto = next(one for one in accept_all.beside if one.food == "pesto")
    weeks.accept(demo)
    done = weeks.eaten(demo, demo.today)
    assert f"Opened: {pesto.containers[0]} pesto" in done.message
    last = f"{pesto.containers[0]} pesto: this is its last safe day, eat it today or discard it."
    assert last in done.warnings
    assert sum("last safe day" in one for one in done.warnings) == 1, "of nothing else"
