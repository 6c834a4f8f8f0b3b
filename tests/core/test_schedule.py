"""What to open this week, against plans reckoned by hand, and the laws."""

from __future__ import annotations

from collections import defaultdict, deque
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.schedule import Ceilings, Lot, choose, pressing, schedule

EACH_THREE = Ceilings({"beans": 3, "peas": 3}, {"vegetable": 4})


def jars(food: str, number: int, last: int | None, servings: float = 1) -> list[Lot]:
    return [Lot(food, "vegetable", servings, last)] * number


def names(lots: list[Lot], chosen: list[int]) -> list[str]:
    return [lots[i].food for i in chosen]


def test_a_big_pile_is_begun_before_a_small_one_that_falls_due_sooner() -> None:
    lots = [*jars("peas", 2, 5), *jars("beans", 30, 11)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "beans"


def test_a_pile_that_fills_every_week_until_its_date_is_saved_whole() -> None:
    lots = [Lot("beans", "vegetable", 30, 9), Lot("peas", "vegetable", 2, 5)]
    weeks, lost = schedule(lots, EACH_THREE)
    assert lost == 0
    assert [week.get("beans", 0) for week in weeks[:10]] == [3] * 10
    assert pressing(lots, EACH_THREE) == {"beans": 3, "peas": 1}


def test_with_time_enough_the_nearer_date_comes_first() -> None:
    lots = [*jars("beans", 3, 11), *jars("peas", 2, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "peas"


def test_of_one_food_the_earliest_date_comes_first() -> None:
    lots = [*jars("beans", 2, None), *jars("beans", 2, 9), *jars("beans", 2, 3)]
    assert choose(lots, EACH_THREE) == [4, 5, 2]


def test_two_piles_alike_share_the_week() -> None:
    lots = [*jars("beans", 10, 20), *jars("peas", 10, 20)]
    assert sorted(names(lots, choose(lots, EACH_THREE))) == ["beans", "beans", "peas", "peas"]


def test_what_is_open_takes_its_room() -> None:
    lots = jars("beans", 5, 20)
    opened = [Lot("peas", "vegetable", 2, 0), Lot("beans", "vegetable", 1, 0)]
    assert choose(lots, EACH_THREE, already=opened) == [0]


def test_nothing_is_opened_when_nobody_is_there() -> None:
    assert choose(jars("beans", 5, 0), EACH_THREE, coming=[0]) == []


def test_a_big_jar_waits_when_its_rest_would_spoil_while_all_are_away() -> None:
    big = [Lot("beans", "vegetable", 4, 20)]
    assert choose(big, EACH_THREE, coming=[1, 1]) == [0]
    assert choose(big, EACH_THREE, coming=[1, 0]) == []
    assert choose([replace(big[0], days=30)], EACH_THREE, coming=[1, 0]) == [0]
    assert choose([replace(big[0], last=0)], EACH_THREE, coming=[1, 0]) == [0]


def test_a_third_of_what_keeps_three_days_must_find_room_this_week() -> None:
    coming = [1, 1.5]
    opened = [Lot("peas", "vegetable", 2, 0)]
    big = Lot("beans", "vegetable", 6, 20)
    assert choose([big], EACH_THREE, coming, opened) == [0]
    assert choose([replace(big, days=2)], EACH_THREE, coming, opened) == []
    assert choose([big], EACH_THREE, coming, [replace(opened[0], servings=2.5)]) == []


def test_days_away_bring_a_date_nearer() -> None:
    # Three weeks of beans by week 5; of peas one serving by week 4. Away in weeks 1 to 3, the
    # beans have 3 - 2 weeks to spare, the peas 2 - 2/9.
    lots = [*jars("peas", 1, 4), *jars("beans", 9, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "beans"
    lots = [*jars("peas", 1, 2), *jars("beans", 9, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "peas"
    assert names(lots, choose(lots, EACH_THREE, coming=[1, 1, 1, 0, 0, 0]))[0] == "beans"


def test_what_has_to_last_to_the_harvest_is_kept_back_but_never_below_three_fifths() -> None:
    ceilings = Ceilings({}, {"vegetable": 10})
    lots = jars("beans", 80, 50)
    harvest = [Lot("beans", "vegetable", 100, 70, first=10)]
    assert len(choose(lots, ceilings)) == 10
    assert len(choose(lots, ceilings, expected=harvest)) == 8
    assert len(choose(lots[:30], ceilings, expected=harvest)) == 6
    assert len(choose(jars("beans", 80, 3), ceilings, expected=harvest)) == 10, "these cannot wait"


def test_what_no_week_can_hold_is_lost_and_said() -> None:
    _, lost = schedule([Lot("beans", "vegetable", 30, 4)], Ceilings({"beans": 3}, {}))
    assert lost == 15


def test_what_comes_later_is_not_eaten_before() -> None:
    lots = [Lot("beans", "vegetable", 6, 7, first=6)]
    weeks, lost = schedule(lots, Ceilings({"beans": 2}, {}))
    assert lost == 2 and weeks[6] == weeks[7] == {"beans": 2}
    assert choose(lots, Ceilings({}, {})) == []


FOODS = ["beans", "peas", "jam"]
piles = st.lists(
    st.builds(
        Lot,
        st.sampled_from(FOODS),
        st.just("vegetable"),
        st.integers(1, 12),
        st.one_of(st.none(), st.integers(0, 12)),
        st.integers(0, 6),
        st.sampled_from([1, 2, 3, 7, 30]),
    ),
    max_size=10,
)
tables = st.builds(
    lambda food, group: Ceilings({name: food for name in FOODS}, {"vegetable": group}),
    st.integers(0, 6),
    st.integers(0, 9),
)
calendars = st.lists(st.sampled_from([0.0, 0.5, 1.0, 1.5]), max_size=4)


def least_lost(lots: list[Lot], ceilings: Ceilings, horizon: int) -> float:
    """What must be lost by any plan: the whole less the largest flow from lots through the weeks
    of their foods to the weeks of the group, along shortest ways (whole numbers only)."""
    room: dict[tuple[object, object], float] = defaultdict(float)
    ways: dict[object, set[object]] = defaultdict(set)

    def way(a: object, b: object, most: float) -> None:
        room[a, b] = most
        ways[a].add(b)
        ways[b].add(a)

    due = [lot for lot in lots if lot.last is not None and lot.last < horizon]
    for i, lot in enumerate(due):
        assert lot.last is not None
        way("shelf", i, lot.servings)
        for week in range(lot.first, lot.last + 1):
            way(i, (lot.food, week), lot.servings)
            way((lot.food, week), week + 0.5, ceilings.of_food(lot.food))
            way(week + 0.5, "table", ceilings.of_group(lot.group))
    eaten = 0.0
    while True:
        come: dict[object, object] = {"shelf": "shelf"}
        queue = deque(["shelf"])
        while queue and "table" not in come:
            here = queue.popleft()
            for there in ways[here]:
                if there not in come and room[here, there] > 0:
                    come[there] = here
                    queue.append(there)  # type: ignore[arg-type]
        if "table" not in come:
            return sum(lot.servings for lot in due) - eaten
        steps: list[tuple[object, object]] = []
        at: object = "table"
        while at != "shelf":
            steps.append((come[at], at))
            at = come[at]
        by = min(room[step] for step in steps)
        for a, b in steps:
            room[a, b] -= by
            room[b, a] += by
        eaten += by


@given(piles, tables, calendars)
def test_the_schedule_keeps_the_ceilings_and_nothing_vanishes(
    lots: list[Lot], ceilings: Ceilings, coming: list[float]
) -> None:
    weeks, lost = schedule(lots, ceilings, 15, coming)
    for number, week in enumerate(weeks):
        factor = coming[number] if number < len(coming) else 1.0
        assert all(n <= ceilings.of_food(food) * factor + 1e-6 for food, n in week.items())
        assert sum(week.values()) <= ceilings.of_group("vegetable") * factor + 1e-6
    eaten = sum(sum(week.values()) for week in weeks)
    due = sum(lot.servings for lot in lots if lot.last is not None)
    assert due - 1e-6 <= eaten + lost <= sum(lot.servings for lot in lots) + 1e-6


@given(piles, tables)
def test_the_schedule_eats_nothing_before_it_is_there_or_after_its_last_week(
    lots: list[Lot], ceilings: Ceilings
) -> None:
    weeks, _ = schedule(lots, ceilings, 15)
    for food in FOODS:
        own = [lot for lot in lots if lot.food == food]
        for number in range(16):
            sooner = sum(week.get(food, 0.0) for week in weeks[:number])
            later = sum(week.get(food, 0.0) for week in weeks[number:])
            there = sum(lot.servings for lot in own if lot.first < number)
            good = sum(lot.servings for lot in own if lot.last is None or lot.last >= number)
            assert sooner <= there + 1e-6 and later <= good + 1e-6


@given(piles, tables)
def test_no_plan_loses_less_than_must_be_lost(lots: list[Lot], ceilings: Ceilings) -> None:
    _, lost = schedule(lots, ceilings, 15)
    assert lost >= least_lost(lots, ceilings, 15) - 1e-6


@given(piles, st.integers(1, 6))
def test_where_only_the_foods_have_ceilings_nothing_more_is_lost_than_must_be(
    lots: list[Lot], food: int
) -> None:
    ceilings = Ceilings(dict.fromkeys(FOODS, food), {})
    _, lost = schedule(lots, ceilings, 15)
    assert lost == pytest.approx(least_lost(lots, ceilings, 15))
    higher = Ceilings(dict.fromkeys(FOODS, food + 1), {})
    assert schedule(lots, higher, 15)[1] <= lost + 1e-6


@given(piles, tables, calendars, piles)
def test_only_what_is_there_and_good_is_opened_and_only_while_its_share_fits(
    lots: list[Lot], ceilings: Ceilings, coming: list[float], already: list[Lot]
) -> None:
    chosen = choose(lots, ceilings, coming, already)
    factor = coming[0] if coming else 1.0
    food: dict[str, float] = defaultdict(float)
    group = 0.0
    for lot in already:
        taken = min(lot.servings, ceilings.of_food(lot.food) * factor - food[lot.food],
                    ceilings.of_group("vegetable") * factor - group)  # fmt: skip
        food[lot.food] += taken
        group += taken
    assert len(set(chosen)) == len(chosen)
    for i in chosen:
        one = lots[i]
        assert one.first == 0 and (one.last is None or one.last >= 0)
        food[one.food] += one.servings
        group += one.servings
        beyond = one.servings * (1 - 1 / max(2, one.days))
        assert food[one.food] - beyond <= ceilings.of_food(one.food) * factor + 1e-6
        assert group - beyond <= ceilings.of_group("vegetable") * factor + 1e-6


@given(piles, tables)
def test_no_container_is_left_that_the_week_has_room_for(
    lots: list[Lot], ceilings: Ceilings
) -> None:
    lots = [replace(lot, days=30) for lot in lots]
    chosen = choose(lots, ceilings)
    food: dict[str, float] = defaultdict(float)
    for i in chosen:
        food[lots[i].food] += lots[i].servings
    for i, lot in enumerate(lots):
        if i not in chosen and lot.first == 0:
            free = min(ceilings.of_food(lot.food) - food[lot.food],
                       ceilings.of_group("vegetable") - sum(food.values()))  # fmt: skip
            assert free <= 0 or free < lot.servings / 30


@given(piles, tables, calendars, st.randoms(use_true_random=False))
def test_the_order_on_the_shelf_does_not_matter(
    lots: list[Lot], ceilings: Ceilings, coming: list[float], random: object
) -> None:
    def kinds(some: list[Lot]) -> list[tuple[str, float, int | None]]:
        lots = [replace(lot, days=3) for lot in some]
        return [(lots[i].food, lots[i].servings, lots[i].last)
                for i in choose(lots, ceilings, coming)]  # fmt: skip

    other = list(lots)
    random.shuffle(other)  # type: ignore[attr-defined]
    assert kinds(lots) == kinds(other)
