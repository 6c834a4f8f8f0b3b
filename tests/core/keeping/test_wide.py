"""The one wide table speaks only where nothing closer, newer or stricter does."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.quality import Spent, Stretch, spending
from pantry_tui.core.keeping.reckoning import Limit, Reckoning
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.keeping.shopfood import wide_ends, wide_limit
from pantry_tui.core.keeping.warmth import Case, Life
from pantry_tui.core.keeping.wide import wide_life
from pantry_tui.core.model import DAY_MIN, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from tests.core.keeping.told import MADE, Told, when

FRIDGE, PANTRY, FREEZER = Climate.FRIDGE, Climate.PANTRY, Climate.FREEZER
DILL = FoodFacts("dill", Group.HERB, Acidity.LOW_ACID)


def figure(
    days: float | None,
    *climates: Climate,
    food: str = "dill",
    method: Method = Method.BOUGHT,
    state: State = State.SEALED,
    source: str = "wide",
) -> Rule:
    return Rule(
        f"{food}-{days}", method, food, state, frozenset(climates), Kind.QUALITY, days, days, days,
        "days", None, Status.CURRENT, "As published.", source, Trust.READ,
    )  # fmt: skip


def case(climate: Climate = PANTRY, food: FoodFacts = DILL, state: State = State.SEALED) -> Case:
    return Case(food, Method.BOUGHT, state, climate, 38.0 if climate is FRIDGE else 60.0)


def said(
    wide: Sequence[Rule],
    one: Case | None = None,
    usual: Rule | None = None,
    rules: Sequence[Rule] = (),
) -> float | None:
    """The days that the table gives, None where it does not speak."""
    book = Rulebook(
        {Method.BOUGHT: list(rules)},
        wide=lambda name: wide if name == "dill" else [],
        older=lambda source: source == "old",
    )
    found = wide_life(one or case(), None if usual is None else Life(usual), book)
    return None if found is None else found.rule.use


def test_it_speaks_of_just_that_food_method_state_and_climate() -> None:
    assert said([figure(90, PANTRY)]) == 90
    assert said([figure(90, PANTRY, FRIDGE)]) == 90
    for other in (
        figure(90, FRIDGE), figure(90, PANTRY, method=Method.FRESH),
        figure(90, PANTRY, state=State.OPEN), figure(None, PANTRY),
    ):  # fmt: skip
        assert said([other]) is None
    mint = FoodFacts("mint", Group.HERB, Acidity.LOW_ACID)
    assert said([figure(90, PANTRY)], case(food=mint)) is None


def test_a_row_without_a_figure_says_nothing() -> None:
    usual = figure(90, PANTRY, food="group:herb", source="old")
    assert said([figure(None, PANTRY), figure(60, PANTRY)], usual=usual) == 60


def test_a_safe_day_for_the_same_place_leaves_it_a_best_by() -> None:
    """Of that place it is the limit; only a cooler one tells that it is of another product."""
    safe = replace(figure(7, PANTRY), kind=Kind.SAFETY)
    assert said([figure(60, PANTRY)], rules=[safe]) == 60


def test_it_speaks_of_whole_crops() -> None:
    cut = FoodFacts("dill", Group.HERB, Acidity.LOW_ACID, frozenset({"cut"}))
    assert said([figure(90, PANTRY)], case(food=cut)) is None


def test_of_several_figures_the_shortest_counts() -> None:
    assert said([figure(90, PANTRY), figure(60, PANTRY), figure(70, PANTRY)]) == 60


@pytest.mark.parametrize(
    ("usual", "days"),
    [
        # Another figure stands where it is as short, of that very food, or newer.
        (figure(61, PANTRY, food="group:herb", source="old"), 60),
        (figure(60, PANTRY, food="group:herb", source="old"), None),
        (figure(59, PANTRY, food="group:herb", source="old"), None),
        (figure(90, PANTRY, food="dill", source="old"), None),
        (figure(90, PANTRY, food="group:herb", source="new"), None),
    ],
)
def test_it_never_stands_against_a_stricter_closer_or_newer_figure(
    usual: Rule, days: float | None
) -> None:
    assert said([figure(60, PANTRY)], usual=usual) == days


def test_of_several_figures_one_that_is_longer_than_the_usual_is_enough_to_silence_it() -> None:
    """Then it speaks of several products, and nobody knows which of them this is."""
    usual = figure(70, PANTRY, food="group:herb", source="old")
    assert said([figure(60, PANTRY), figure(90, PANTRY)], usual=usual) is None
    assert said([figure(60, PANTRY), figure(65, PANTRY)], usual=usual) == 60


@pytest.mark.parametrize(
    ("cooler", "days"),
    [
        # Dill, dried in a pantry and fresh in a fridge: nobody knows which this is.
        (figure(7, FRIDGE), None), (figure(59, FREEZER), None), (figure(7, Climate.CELLAR), None),
        (figure(60, FRIDGE), 60), (figure(90, FRIDGE), 60), (figure(7, Climate.ROOM), 60),
        (figure(None, FRIDGE), 60),
    ],
)  # fmt: skip
def test_a_shorter_figure_for_a_cooler_place_is_of_another_product(
    cooler: Rule, days: float | None
) -> None:
    assert said([figure(60, PANTRY), cooler]) == days
    assert said([figure(60, PANTRY)], rules=[cooler]) == days
    longer = figure(400, FREEZER)
    assert said([figure(60, PANTRY), cooler, longer]) == days


# -- its end ---------------------------------------------------------------------------------------


def ends(life: Told) -> list[tuple[int | float | None, date]]:
    """The figures that end it, each with its day."""
    wide = [figure(60, PANTRY), figure(90, FRIDGE), figure(7, FRIDGE, state=State.OPEN)]
    book = Rulebook({}, wide=lambda _: wide)
    now = when(9, 12)
    spans = exposures(life.batch, life.box, life.places, now)
    return [(one.rule.use, one.day) for one in wide_ends(Reckoning(life.batch, spans, book, now))]


def test_each_state_and_place_has_its_end_and_nothing_where_the_table_is_silent() -> None:
    def told(**more: object) -> Told:
        life = Told(DILL, Method.BOUGHT, "kitchen", **more)  # type: ignore[arg-type]
        return life.at(1).move("larder").at(3).move("fridge").at(6).open()

    shelf, cold = (60, MADE + timedelta(61)), (90, MADE + timedelta(93))
    opened = (7, MADE + timedelta(13))
    assert ends(told()) == [shelf, cold, opened]
    # The date on its pack counts instead, until it is opened.
    assert ends(told(printed=MADE + timedelta(40))) == [opened]


def spent(days: float) -> Spent:
    start = MADE.toordinal() * DAY_MIN
    life = Life(figure(days, PANTRY))
    (one,) = spending([Stretch(start, start + 999 * DAY_MIN, MADE, life)])
    return one


def test_its_end_is_no_later_than_the_last_safe_day() -> None:
    alone = wide_limit(spent(60), None)
    assert alone == Limit(
        MADE + timedelta(60), MADE, spent(60).rule, "60 days from Sun 1 Mar 2026. As published."
    )
    for later in (60, 61):
        assert wide_limit(spent(60), Limit(MADE + timedelta(later), MADE, None)) == alone
    sooner = wide_limit(spent(60), Limit(MADE + timedelta(59), MADE, None))
    assert sooner == Limit(
        MADE + timedelta(59), MADE, spent(60).rule, "no later than its last day. As published."
    )
