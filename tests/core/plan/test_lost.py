"""What must be discarded within the week comes to the table, whatever else stands."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate, Menu, Needs, Wishes
from pantry_tui.core.plan.room import keeps
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Group, Role
from tests.core.plan.test_week_meals import laid

START = date(2026, 11, 25)
FOUR = Appetite(4)


def day(number: int) -> date:
    return START + timedelta(days=number)


def one(
    name: str, servings: float, safe: int, best: int | None = None, **more: object
) -> Candidate:
    """Of a food of its own, to be discarded after day `safe`, at its best until day `best`."""
    facts = {"food": name, "group": Group.MEAT, "opened": keeps(7), **more}
    last = day(safe if best is None else best)
    return Candidate(name, servings=servings, last=last, safe_until=day(safe), **facts)  # type: ignore[arg-type]


def days(found: Menu) -> dict[str, date]:
    return {pick.candidate.container: pick.day for pick in found.picks}


def test_no_pile_that_keeps_longer_pushes_out_what_must_go_tomorrow() -> None:
    """Two packs for two days each fill what the charts give a household of meat."""
    packs = [one(f"pack {n}", 8, 6, 3, food="bacon") for n in range(2)]
    stock = [*packs, one("mince", 4, 1), one("roast", 4, 1)]
    found = plan(stock, FOUR, START, Needs())
    assert days(found)["mince"] != days(found)["roast"]
    assert max(days(found)["mince"], days(found)["roast"]) == day(1)
    assert {pick.candidate.container for pick in found.picks} >= {"pack 0", "pack 1"}
    assert max(laid(found, Role.MAIN).values()) <= 4


def test_where_all_of_it_is_too_much_the_nearest_last_day_goes_first() -> None:
    stock = [one(f"{n}", 4, n // 2) for n in range(7)]
    found = days(plan(stock, Appetite(4, table={day(1): 0}), START, Needs()))
    assert found["0"] == day(0), "of one day the first in the order of eating"
    assert "1" not in found, "four cannot eat twice as much on that day"
    assert "2" not in found, "nobody is there on the next"
    assert {found["4"], found["6"]} == {day(2), day(3)}


def test_half_as_much_again_is_eaten_rather_than_lost() -> None:
    for servings, all_of_it in ((2, True), (3, False)):
        found = plan([one("a", 4, 0), one("b", servings, 0)], FOUR, START, Needs())
        assert ("b" in days(found)) is all_of_it


@pytest.mark.parametrize(
    "eats",
    [
        Appetite(4, groups={"meat": 0.5}),
        Appetite(4, foods={"mince": 0.25}),
        Appetite(4, learned={"meat": 0.5, "mince": 0.25}),
    ],
)
def test_no_ceiling_keeps_it_back_but_what_is_never_eaten_stays_out(eats: Appetite) -> None:
    stock = [one(f"{n}", 4, 3, food="mince") for n in range(3)]
    assert len(plan(stock, eats, START, Needs()).picks) == 3
    assert not plan(stock, Appetite(4, foods={"mince": 0.0}), START, Needs()).picks


def test_what_only_passes_its_best_makes_room_for_it() -> None:
    stock = [one(f"best {n}", 4, 300, 0) for n in range(2)]
    found = plan([*stock, *[one(f"safe {n}", 4, 1) for n in range(2)]], FOUR, START, Needs())
    lies = days(found)
    assert {lies["safe 0"], lies["safe 1"]} == {day(0), day(1)}
    assert {lies["best 0"], lies["best 1"]} == {day(2), day(3)}
    assert max(laid(found, Role.MAIN).values()) <= 4
    calm = days(plan([stock[0], one("safe", 4, 1)], FOUR, START, Needs()))
    assert calm == {"best 0": day(0), "safe": day(1)}, "where there is room for both, both in time"


def test_what_is_past_its_best_before_its_last_safe_day_leaves_its_day_to_the_other() -> None:
    stock = [one("best", 4, 3, 0), one("safe", 4, 0)]
    assert days(plan(stock, FOUR, START, Needs())) == {"best": day(1), "safe": day(0)}


def test_what_is_open_and_keeps_on_or_lies_on_a_later_day_leaves_room_for_it() -> None:
    stew = one("stew", 4, 20, must=True)
    pinned = one("pinned", 8, 40)
    asked = Wishes(pins=(("pinned", day(4)),))
    found = days(plan([stew, pinned, one("mince", 4, 0)], FOUR, START, Needs(), asked))
    assert found["mince"] == START
    gone = one("stew", 4, 0, must=True)
    assert "mince" not in days(plan([gone, one("mince", 4, 0)], FOUR, START, Needs()))


def test_more_of_it_than_the_charts_give_takes_the_place_of_other_mains() -> None:
    lost = [one(f"lost {n}", 4, 6, food="bacon") for n in range(6)]
    others = [one(f"egg {n}", 4, 300, food="eggs", group=Group.EGG) for n in range(9)]
    found = plan([*lost, *others], FOUR, START, Needs())
    assert sum(laid(found, Role.MAIN).values()) <= 28


def test_nobody_counts_heads_for_a_relish_or_what_is_used_up_in_the_kitchen() -> None:
    for group in (Group.RELISH, Group.DAIRY):
        tubs = [one(f"{n}", 8, 1, food="cream", group=group) for n in range(3)]
        assert len(plan(tubs, Appetite(2), START, Needs()).picks) == 3


def test_a_meal_out_of_bulk_does_not_move_for_what_is_added_later() -> None:
    """Two packs of mince and of fish that must go by tomorrow are a day each."""
    bulk = [one(name, 3, 1, bulk=True, opened=keeps(1)) for name in ("fish", "mince")]
    packs = [one(f"egg {n}", 1, 30, 20, food="eggs", group=Group.EGG) for n in range(12)]
    found = plan([*bulk, *packs], FOUR, START, Needs())
    assert {days(found)["fish"], days(found)["mince"]} == {day(0), day(1)}


def test_a_little_of_a_main_comes_with_more_of_the_same() -> None:
    eggs = [one(f"{n}", 1, 300, 6, food="eggs", group=Group.EGG) for n in range(8)]
    found = plan(eggs, FOUR, START, Needs())
    assert sorted(laid(found, Role.MAIN).values()) == [4, 4]
    tubs = [one(f"{n}", 3, 300, 6, food="soup") for n in range(2)]
    assert len(laid(plan(tubs, FOUR, START, Needs()), Role.MAIN)) == 2, "no little at all"


@given(
    st.lists(st.tuples(st.integers(1, 6), st.integers(0, 6), st.integers(0, 6)), max_size=7),
    st.integers(0, 8),
    st.dictionaries(st.integers(0, 6), st.sampled_from([0, 4, 8]), max_size=3),
)
def test_what_those_at_table_can_eat_in_time_is_never_lost(
    lost: list[tuple[int, int, int]], others: int, table: dict[int, int]
) -> None:
    """Held against a count by hand, day by day, of what one meal each can take."""
    eats = Appetite(4, table={day(n): heads for n, heads in table.items()})
    mains = [one(f"{n}", size, safe, min(best, safe)) for n, (size, safe, best) in enumerate(lost)]
    room = [sum(eats.sit(day(n)) for n in range(last + 1)) for last in range(7)]
    need = [sum(s for s, safe, _ in lost if safe <= last) for last in range(7)]
    keep = [one(f"keeps {n}", 4, 200, 100, food="stew") for n in range(others)]
    found = days(plan([*keep, *mains], eats, START, Needs()))
    if all(much <= there for much, there in zip(need, room, strict=True)):
        assert {f"{n}" for n in range(len(lost))} <= found.keys()
    assert all(found[f"{n}"] <= day(safe) for n, (_, safe, _) in enumerate(lost) if f"{n}" in found)


def test_what_has_its_last_day_while_all_are_away_goes_before_they_leave() -> None:
    stock = [
        *(one(f"trout {n}", 1, 10, food="trout", group=Group.FISH) for n in range(6)),
        *(one(f"chicken {n}", 1, 180, food="chicken") for n in range(8)),
    ]
    away = Appetite(2, table={day(n): 0 for n in range(3, 14)})
    eaten = [*days(plan(stock, away, START, Needs()))]
    assert eaten == [f"trout {n}" for n in range(6)]
    back = Appetite(2, table={day(n): 0 for n in range(3, 9)})
    others = [*days(plan(stock, back, START, Needs()))]
    assert any(name.startswith("chicken") for name in others), "they are back by its last day"
