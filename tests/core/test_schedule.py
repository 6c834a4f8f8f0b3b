"""The schedule against plans reckoned by hand, and its laws."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.schedule import Ceilings, Lot, pressing, schedule


def test_a_big_pile_is_begun_before_a_small_one_that_falls_due_sooner() -> None:
    # 30 servings of beans due in week 9 under 3 a week fill every week from the first on; peas
    # due in week 2 can wait. Together they may take 4 a week.
    lots = [Lot("beans", "vegetable", 30, 9), Lot("peas", "vegetable", 2, 5)]
    weeks, lost = schedule(lots, Ceilings({"beans": 3, "peas": 3}, {"vegetable": 4}))
    assert lost == 0
    assert [week.get("beans", 0) for week in weeks[:10]] == [3] * 10
    assert weeks[5]["peas"] == 1 and weeks[4]["peas"] == 1
    assert pressing(lots, Ceilings({"beans": 3, "peas": 3}, {"vegetable": 4})) == {"beans": 12}


def test_what_no_week_can_hold_is_lost_and_said() -> None:
    _, lost = schedule([Lot("beans", "vegetable", 30, 4)], Ceilings({"beans": 3}, {}))
    assert lost == 15


def test_what_comes_later_is_not_eaten_before() -> None:
    lots = [Lot("beans", "vegetable", 6, 7, first=6)]
    weeks, lost = schedule(lots, Ceilings({"beans": 2}, {}))
    assert lost == 2 and weeks[6] == weeks[7] == {"beans": 2}


lots = st.lists(
    st.builds(
        Lot,
        st.sampled_from(["beans", "peas", "jam"]),
        st.just("vegetable"),
        st.floats(0.5, 30),
        st.one_of(st.none(), st.integers(0, 30)),
    ),
    max_size=8,
)


@given(lots, st.floats(0.5, 6), st.floats(0.5, 10))
def test_no_ceiling_is_broken_and_nothing_vanishes(
    piles: list[Lot], food: float, group: float
) -> None:
    ceilings = Ceilings({"beans": food, "peas": food, "jam": food}, {"vegetable": group})
    weeks, lost = schedule(piles, ceilings)
    for week in weeks:
        assert all(servings <= food + 1e-6 for servings in week.values())
        assert sum(week.values()) <= group + 1e-6
    due = sum(lot.servings for lot in piles if lot.last is not None)
    assert sum(sum(week.values()) for week in weeks) + lost == pytest.approx(due)
    for name in ("beans", "peas", "jam"):
        for number in range(31):
            late = sum(week.get(name, 0.0) for week in weeks[number + 1 :])
            after = sum(
                lot.servings for lot in piles
                if lot.food == name and lot.last is not None and lot.last > number
            )  # fmt: skip
            assert late <= after + 1e-6, "eaten after its date"


@given(lots, st.floats(0.5, 6))
def test_a_higher_ceiling_never_loses_more(piles: list[Lot], food: float) -> None:
    def lost(by: float) -> float:
        return schedule(piles, Ceilings({n: by for n in ("beans", "peas", "jam")}, {}))[1]

    assert lost(food * 2) <= lost(food) + 1e-6
