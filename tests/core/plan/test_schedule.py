"""What to open this week, against plans reckoned by hand, and the laws."""

from __future__ import annotations

from collections import defaultdict, deque
from random import Random

from hypothesis import example, given
from hypothesis import strategies as st

from pantry_tui.core.plan.pace import Credit
from pantry_tui.core.plan.room import Ceilings, Lot, keeps
from pantry_tui.core.plan.schedule import choose as choose_with_spare

EACH_THREE = Ceilings({"beans": 3, "peas": 3}, {"vegetable": 4})


def jars(food: str, number: int, last: int | None, servings: float = 1) -> list[Lot]:
    return [Lot(food, "vegetable", servings, last)] * number


def choose(lots: list[Lot], ceilings: Ceilings, *more: object, **named: object) -> list[int]:
    found, _ = choose_with_spare(lots, ceilings, *more, **named)  # type: ignore[arg-type]
    return [opening.lot for opening in found]


def names(lots: list[Lot], chosen: list[int]) -> list[str]:
    return [lots[i].food for i in chosen]


def test_a_big_pile_is_begun_before_a_small_one_that_falls_due_sooner() -> None:
    lots = [*jars("peas", 2, 5), *jars("beans", 30, 11)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "beans"


def test_a_pile_that_fills_every_week_until_its_date_is_saved_whole() -> None:
    lots = [*jars("beans", 30, 9), *jars("peas", 2, 5)]
    weeks, lost = run(lots, EACH_THREE, 10)
    assert lost == 0
    assert [week["beans"] for week in weeks] == [3] * 10


def test_how_many_weeks_a_food_has_to_spare() -> None:
    (opening,), _ = choose_with_spare([Lot("beans", "vegetable", 3, 8)], EACH_THREE)
    assert opening.spare == 8  # nine weeks less the one that it takes


def test_a_food_behind_its_pace_comes_first_where_nothing_presses() -> None:
    lots = [*jars("beans", 3, 20), *jars("peas", 3, 30)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "beans"
    assert names(lots, choose(lots, EACH_THREE, credits={"peas": Credit(12, 1)}))[0] == "peas"
    assert names(lots, choose(lots, EACH_THREE, credits={"beans": Credit(-11, 1)}))[0] == "peas"
    lots = [*jars("beans", 3, 3), *jars("peas", 3, 30)]
    assert names(lots, choose(lots, EACH_THREE, credits={"peas": Credit(99, 1)}))[0] == "beans"


def test_of_one_size_the_first_in_is_the_first_out_though_it_has_no_date_any_more() -> None:
    crate, old, young = Lot("apples", "fruit", 3, 12), Lot("apples", "fruit", 2, None), 44
    lots = [old, *[crate] * 13, Lot("apples", "fruit", 2, young)]
    three = Ceilings({"apples": 3}, {"fruit": 9})
    assert choose(lots, three)[0] == 1, "the crate, which presses"
    lots = [old, *[Lot("apples", "fruit", 2, young)] * 80]
    assert choose(lots, three)[0] == 0
    assert choose([old, *[Lot("apples", "fruit", 4, young)] * 40], three)[0] == 1, "another size"
    near = [old, *[Lot("apples", "fruit", 2, 4)] * 9]
    assert choose(near, three)[0] == 1, "what must go within weeks is saved"


def test_what_has_no_date_has_its_turn_before_there_is_more_of_it() -> None:
    """Onions that nothing hurries, and beans that keep well beyond the onion harvest."""
    lots = [*jars("beans", 2, 40), *jars("peas", 2, None)]
    onions = {"peas": Credit(0, 0.1, harvest=20)}
    assert names(lots, choose(lots, EACH_THREE, credits=onions))[0] == "peas"
    assert names(lots, choose(lots, EACH_THREE, credits={"peas": Credit(0, 0.1)}))[0] == "beans"
    pressed = [*jars("beans", 3, 1), *jars("peas", 9, None)]
    assert names(pressed, choose(pressed, EACH_THREE, credits=onions))[0] == "beans"


def test_what_a_group_needs_to_last_comes_last_and_says_so() -> None:
    lots = [*jars("beans", 4, 40), *jars("peas", 2, 1), Lot("pears", "fruit", 1, 40)]
    many = Ceilings({"beans": 3, "peas": 3, "pears": 3}, {"vegetable": 2, "fruit": 4})
    week, more = choose_with_spare(lots, many, shares={"vegetable": 1})
    assert [lots[one.lot].food for one in week] == ["peas", "peas", "pears"]
    assert [(lots[one.lot].food, one.kept) for one in more] == [("beans", True)] * 4
    week, more = choose_with_spare(lots, many)
    assert not any(one.kept for one in [*week, *more]), "where no group has a share"


def test_with_time_enough_the_nearer_date_comes_first() -> None:
    lots = [*jars("beans", 3, 11), *jars("peas", 2, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "peas"


def test_of_one_food_the_order_given_holds_and_its_nearest_date_still_counts() -> None:
    old = jars("beans", 2, None)  # past their best: nothing hurries them, but they are the oldest
    lots = [*jars("peas", 3, 9), *old, *jars("beans", 9, 3)]
    assert names(lots, choose(lots, EACH_THREE))[:2] == ["beans", "beans"]
    assert choose(lots, EACH_THREE)[:3] == [3, 4, 5]
    lots = [*old, *jars("beans", 12, 3)]  # four weeks' worth in four weeks: the old ones wait
    assert choose(lots, EACH_THREE) == [2, 3, 4]


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
    assert choose([big[0]._replace(opened=keeps(30))], EACH_THREE, coming=[1, 0]) == [0]
    assert choose([big[0]._replace(last=0)], EACH_THREE, coming=[1, 0]) == [0]


def test_a_third_of_what_keeps_three_days_must_find_room_this_week() -> None:
    coming = [1, 1.5]
    opened = [Lot("peas", "vegetable", 2, 0)]
    big = Lot("beans", "vegetable", 6, 20)
    assert choose([big], EACH_THREE, coming, opened) == [0]
    assert choose([big._replace(opened=keeps(2))], EACH_THREE, coming, opened) == []
    assert choose([big], EACH_THREE, coming, [opened[0]._replace(servings=2.5)]) == []


def test_days_away_bring_a_date_nearer() -> None:
    # Three weeks of beans by week 5; of peas one serving by week 4. Away in weeks 1 to 3, the
    # beans have 3 - 2 weeks to spare, the peas 2 - 2/9.
    lots = [*jars("peas", 1, 4), *jars("beans", 9, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "beans"
    lots = [*jars("peas", 1, 2), *jars("beans", 9, 5)]
    assert names(lots, choose(lots, EACH_THREE))[0] == "peas"
    assert names(lots, choose(lots, EACH_THREE, coming=[1, 1, 1, 0, 0, 0]))[0] == "beans"


def test_while_nothing_presses_a_group_gives_its_share_to_the_nearest_container() -> None:
    lots = [*jars("beans", 40, 50, servings=4)]
    wide = Ceilings({}, {"vegetable": 40})
    assert len(choose(lots, wide)) == 10
    for share, containers in ((9.0, 2), (10.0, 3), (1.9, 0), (2.0, 1)):
        assert len(choose(lots, wide, shares={"vegetable": share})) == containers
    due = jars("beans", 40, 1, servings=4)
    assert len(choose(due, wide, shares={"vegetable": 2.0})) == 10, "these cannot wait"


def test_a_jar_that_two_weeks_could_not_finish_is_opened_all_the_same() -> None:
    big = [Lot("beans", "vegetable", 16, 40)] * 2
    assert choose(big, EACH_THREE) == [0]
    assert choose(big, EACH_THREE, already=[Lot("beans", "vegetable", 1, 0)]) == []


FOODS = ["beans", "peas", "jam"]
piles = st.lists(
    st.builds(
        Lot,
        st.sampled_from(FOODS),
        st.just("vegetable"),
        st.integers(1, 12),
        st.one_of(st.none(), st.integers(0, 12)),
        st.sampled_from([1, 2, 3, 7, 30]).map(keeps),
    ),
    max_size=10,
)


def _table(food: int, group: int) -> Ceilings:
    return Ceilings(dict.fromkeys(FOODS, float(food)), {"vegetable": group})


tables = st.builds(_table, st.integers(0, 6), st.integers(0, 9))
calendars = st.lists(st.sampled_from([0.0, 0.5, 1.0, 1.5]), max_size=4)


def run(
    lots: list[Lot], ceilings: Ceilings, horizon: int, coming: list[float] | None = None
) -> tuple[list[dict[str, float]], float]:
    """Servings of each food by week when every week is chosen so, all in containers of one serving,
    and how many pass their date."""
    left = [lot._replace(servings=1) for lot in lots for _ in range(int(lot.servings))]
    weeks, lost = [], 0
    for week in range(horizon):
        chosen = set(choose(left, ceilings, (coming or [])[week:]))
        eaten: dict[str, float] = defaultdict(float)
        for i in chosen:
            eaten[left[i].food] += 1
        weeks.append(eaten)
        left = [lot for i, lot in enumerate(left) if i not in chosen]
        lost += sum(lot.last == 0 for lot in left)
        left = [lot._replace(last=lot.last and lot.last - 1) for lot in left if lot.last != 0]
    return weeks, lost


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
        for week in range(lot.last + 1):
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


@given(piles, tables)
def test_no_plan_loses_less_than_must_be_lost(lots: list[Lot], ceilings: Ceilings) -> None:
    _, lost = run(lots, ceilings, 13)
    assert lost >= least_lost(lots, ceilings, 13)


@given(piles, st.integers(1, 6))
def test_where_only_the_foods_have_ceilings_nothing_more_is_lost_than_must_be(
    lots: list[Lot], food: int
) -> None:
    """Of lots that are alike one without a date that came in first goes first while no date is
    near, whatever that may lose months ahead (above): here none is like one with a date."""
    ceilings = Ceilings(dict.fromkeys(FOODS, food), {})
    lots = [
        lot._replace(opened=keeps(30), role="side" if lot.last is None else "main") for lot in lots
    ]
    _, lost = run(lots, ceilings, 13)
    assert lost == least_lost(lots, ceilings, 13)
    higher = Ceilings(dict.fromkeys(FOODS, food + 1), {})
    assert run(lots, higher, 13)[1] <= lost


#: Three servings of beans of which a week takes two: the third waits for the next week, and leaves
#: its room to the peas.
TWO_WEEKS = [
    Lot("beans", "vegetable", 3, None, keeps(1)),
    Lot("peas", "vegetable", 1, None, keeps(1)),
]


class Eaten:
    """What is on the table in a week, and the room that is left."""

    def __init__(self, ceilings: Ceilings, coming: list[float], week: int) -> None:
        self.ceilings = ceilings
        self.factor = coming[week] if len(coming) > week else 1.0
        self.food: dict[str, float] = defaultdict(float)

    def room(self, lot: Lot) -> float:
        of_food = self.ceilings.of_food(lot.food) * self.factor - self.food[lot.food]
        of_group = self.ceilings.of_group(lot.group) * self.factor - sum(self.food.values())
        return max(0.0, min(of_food, of_group))

    def eat(self, lot: Lot, servings: float) -> float:
        taken = min(servings, self.room(lot))
        self.food[lot.food] += taken
        return taken


@given(piles, tables, calendars, piles)
@example(TWO_WEEKS, Ceilings(dict.fromkeys(FOODS, 2.0), {"vegetable": 3}), [], [])
def test_only_what_is_there_is_opened_while_its_share_fits_and_the_rest_fits_the_next_week(
    lots: list[Lot], ceilings: Ceilings, coming: list[float], already: list[Lot]
) -> None:
    chosen = choose(lots, ceilings, coming, already)
    this, after = Eaten(ceilings, coming, 0), Eaten(ceilings, coming, 1)
    for lot in already:
        after.eat(lot, lot.servings - this.eat(lot, lot.servings))
    assert len(set(chosen)) == len(chosen)
    for i in chosen:
        one, free = lots[i], this.room(lots[i])
        if one.servings > 2 * min(ceilings.of_food(one.food), ceilings.of_group(one.group)):
            assert not this.food[one.food], "one that no two weeks could finish, and none beside it"
            assert free > 0
        else:
            assert free >= one.servings / max(2, one.days) - 1e-6
            waits = max(0.0, one.servings - free)
            assert waits <= after.room(one) + 1e-6 or one.last == 0 or one.days >= 14
        after.eat(one, one.servings - this.eat(one, one.servings))


@given(piles, tables)
def test_no_container_is_left_that_the_week_has_room_for(
    lots: list[Lot], ceilings: Ceilings
) -> None:
    lots = [lot._replace(opened=keeps(30), meals=0.0) for lot in lots]
    chosen = choose(lots, ceilings)
    food: dict[str, float] = defaultdict(float)
    for i in chosen:
        food[lots[i].food] += lots[i].servings
    for i, lot in enumerate(lots):
        usual = min(ceilings.of_food(lot.food), ceilings.of_group("vegetable"))
        if i not in chosen and lot.servings <= 2 * usual:
            free = min(
                ceilings.of_food(lot.food) - food[lot.food],
                ceilings.of_group("vegetable") - sum(food.values()),
            )
            assert free <= 0 or free < lot.servings / 30


@given(piles, tables, calendars, st.randoms(use_true_random=False))
def test_the_order_of_the_foods_does_not_matter(
    lots: list[Lot], ceilings: Ceilings, coming: list[float], random: Random
) -> None:
    def kinds(some: list[Lot]) -> list[tuple[str, float, int | None]]:
        lots = [lot._replace(opened=keeps(3)) for lot in some]
        return [
            (lots[i].food, lots[i].servings, lots[i].last) for i in choose(lots, ceilings, coming)
        ]

    foods = list(FOODS)
    random.shuffle(foods)
    other = [lot for food in foods for lot in lots if lot.food == food]
    assert kinds(lots) == kinds(other)


def test_a_bird_for_weeks_waits_for_guests_until_its_date_is_near() -> None:
    mains = Ceilings({"turkeys": 12}, {}, {"main": 21.0})

    def begun(servings: float, last: int | None) -> list[int]:
        return choose([Lot("turkeys", "meat", servings, last, role="main")], mains)

    assert begun(80, 20) == []
    assert begun(80, None) == []
    assert begun(80, 4) == [0]
    assert begun(42, 20) == [0]
    _, more = choose_with_spare([Lot("turkeys", "meat", 80, 20, role="main")], mains)
    assert [opening.lot for opening in more] == [0], "it is named for whoever wants it"
