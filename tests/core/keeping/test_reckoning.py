"""Clocks, limits and what no figure covers, by rules made up for it and by lives worked by hand.

Food above 40 °F for over two hours in all, or above 90 °F for over one, is thrown away (USDA FSIS).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.reckoning import Reckoning
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from tests.core.keeping.told import MADE, Told, when

ROOM, CELLAR, FRIDGE, FREEZER = Climate.ROOM, Climate.CELLAR, Climate.FRIDGE, Climate.FREEZER
SEALED, OPEN, THAWED, WORKING = State.SEALED, State.OPEN, State.THAWED, State.IN_PROGRESS
SAFETY, QUALITY, REFUSE = Kind.SAFETY, Kind.QUALITY, Kind.REFUSE
MEAT = FoodFacts("beef", Group.MEAT, Acidity.LOW_ACID)
CROP = FoodFacts("carrots", Group.VEGETABLE, Acidity.LOW_ACID)
Rows = Mapping[tuple[State, Climate], tuple[Kind, float | None]]


def book(rows: Rows, *own: Rule) -> Rulebook:
    """A figure in days, or words without one, for each state and climate; nothing else is known."""
    rules = [
        Rule(
            f"{state} {climate} {kind}", Method.FRESH, "*", state, frozenset({climate}), kind, use,
            use, use, "days", None, Status.CURRENT, f"{state} in a {climate}.", "", Trust.READ,
        )
        for (state, climate), (kind, use) in rows.items()
    ]  # fmt: skip
    return Rulebook(dict.fromkeys(Method, rules), own=own)


def reckoned(life: Told, day: int = 9, hour: float = 12, *, unsealed: bool = False) -> Reckoning:
    now = when(day, hour)
    spans = exposures(life.batch, life.box, life.places, now)
    return Reckoning(life.batch, spans, life.book, now, unsealed)


def life(
    rows: Rows, place: str = "fridge", food: FoodFacts = MEAT, method: Method = Method.FRESH,
    state: State = SEALED, **more: object,
) -> Told:  # fmt: skip
    told = Told(food, method, place, state, **more)  # type: ignore[arg-type]
    told.book = book(rows)
    return told


def limits(told: Told, *, unsealed: bool = False) -> list[int]:
    """The last days that ever started to run, counted from the day made."""
    found = reckoned(told, unsealed=unsealed)
    over = found.over(found.now.last)
    days = [*found.limits, *([over] if over else [])]
    return sorted({(one.day - MADE).days for one in days})


# -- clocks ----------------------------------------------------------------------------------------

FRIDGE_DAYS: Rows = {(SEALED, FRIDGE): (SAFETY, 5), (OPEN, FRIDGE): (SAFETY, 9)}


def test_what_is_opened_elsewhere_goes_on_with_its_day_made() -> None:
    assert limits(life(FRIDGE_DAYS)) == [5]
    # In the cellar no limit ran; in the refrigerator that of sealed food counts from the day made.
    assert limits(life(FRIDGE_DAYS, "vault").at(3).open("fridge")) == [5, 12]
    assert limits(life(FRIDGE_DAYS).at(3).open()) == [5, 12]


def test_what_never_froze_is_not_younger_for_being_called_thawed() -> None:
    rows = {**FRIDGE_DAYS, (THAWED, FRIDGE): (SAFETY, 2)}
    assert limits(life(rows, "vault").at(3).thaw("fridge")) == [5], "day 0 of it is day 3"
    assert limits(life(rows, "vault").at(3, 12).thaw("fridge").at(5).open()) == [5, 14]
    froze = life(rows, "freezer", method=Method.FROZEN).at(3, 12).thaw("fridge")
    assert limits(froze) == [6], "frozen until then: day 0 is day 4"
    assert limits(froze.at(6).move("chest")) == [6], "nor does a freezer bring it back"


def test_what_left_the_freezer_without_a_word_has_its_days_in_a_freezer_too() -> None:
    rows = {(THAWED, FRIDGE): (SAFETY, 2), (THAWED, CELLAR): (SAFETY, 7)}
    cellar = life(rows, "freezer", method=Method.FROZEN).at(3, 12).move("vault")
    assert limits(cellar) == [5, 10], "in a cellar no longer than in a refrigerator"


def test_a_dry_thing_counts_from_the_day_made_also_after_the_freezer() -> None:
    rows = {(SEALED, ROOM): (SAFETY, 14)}
    dry = life(rows, "freezer", CROP, Method.DRIED).at(6).move("kitchen")
    assert limits(dry) == [14]


def test_opened_while_frozen_it_goes_on_as_frozen_until_it_is_out() -> None:
    rows = {(OPEN, FRIDGE): (SAFETY, 4), (OPEN, FREEZER): (SAFETY, 90)}
    frozen = life(rows, "freezer", CROP, Method.DRIED).at(1).open()
    assert limits(frozen) == [91]
    assert limits(frozen.at(6).move("fridge")) == [10, 96]


def test_one_figure_runs_once_for_each_state() -> None:
    moved = life(FRIDGE_DAYS).at(1).move("second fridge").at(2).open().at(3).move("fridge")
    assert len(reckoned(moved).limits) == 2
    own = replace(book({(SEALED, FRIDGE): (SAFETY, 3)}).rules[Method.FRESH][0], id="own")
    told = life(FRIDGE_DAYS)
    told.book = replace(told.book, own=(own,))
    assert limits(told) == [3, 5]


def test_own_words_without_a_number_set_no_limit() -> None:
    told = life(FRIDGE_DAYS)
    words = replace(told.book.rules[Method.FRESH][0], id="own", use=None)
    told.book = replace(told.book, own=(words, replace(words, kind=QUALITY)))
    assert limits(told) == [5]
    assert reckoned(told).own_quality() is None


def test_of_own_figures_of_quality_the_earliest_counts_and_none_is_of_safety() -> None:
    told = life({}, "vault", CROP)
    plain = book({(SEALED, CELLAR): (QUALITY, 9)}).rules[Method.FRESH][0]
    told.book = replace(told.book, own=(replace(plain, id="a"), replace(plain, id="b", use=4)))
    found = reckoned(told).own_quality()
    assert found is not None
    assert (found.day, found.start) == (MADE + timedelta(days=4), MADE)
    assert limits(told) == []
    safe = replace(told.book, own=(replace(plain, kind=SAFETY),))
    told.book = safe
    assert reckoned(told).own_quality() is None
    assert limits(told) == [9]


# -- lids that never sealed ------------------------------------------------------------------------

JAR: Rows = {
    (OPEN, FRIDGE): (SAFETY, 3), (WORKING, ROOM): (SAFETY, 1), (SEALED, ROOM): (QUALITY, 99),
}  # fmt: skip


def test_a_lid_that_never_sealed_has_a_day_on_the_shelf_and_is_open_in_the_cold() -> None:
    def jar(place: str) -> Told:
        return life(JAR, place, method=Method.PRESSURE)

    assert limits(jar("fridge"), unsealed=True) == [1, 3], "no longer than on the shelf"
    assert limits(jar("kitchen"), unsealed=True) == [1]
    # Its days in the cold count from the day it was made, and not from the day it came there.
    assert limits(jar("kitchen").at(1).move("fridge"), unsealed=True) == [1, 3]
    assert limits(jar("kitchen").at(1).move("fridge").at(2).open(), unsealed=True) == [1, 3]
    assert limits(jar("fridge")) == []


def test_nor_does_it_stand_where_a_sealed_one_may_not() -> None:
    """Eggs in vinegar grew botulism at room temperature (US disease agency): in the cold only."""
    rows: Rows = {(SEALED, ROOM): (REFUSE, None), (WORKING, ROOM): (SAFETY, 1)}
    eggs = life(rows, "kitchen", method=Method.VINEGAR_PICKLE)
    assert limits(eggs, unsealed=True) == [-1, 1]
    # To open it there makes it no better.
    begun = life({**rows, (OPEN, ROOM): (SAFETY, 7)}, "fridge", method=Method.VINEGAR_PICKLE)
    assert limits(begun.at(1).open("kitchen"), unsealed=True) == [0, 1, 7]


def test_in_the_cold_what_a_working_jar_has_there_runs_too() -> None:
    rows: Rows = {(OPEN, FRIDGE): (SAFETY, 9), (WORKING, FRIDGE): (SAFETY, 2)}
    assert limits(life(rows, method=Method.PRESSURE), unsealed=True) == [2, 9]
    opened = life(rows, method=Method.PRESSURE).at(1).open()
    assert limits(opened, unsealed=True) == [2, 9]
    assert limits(opened) == [10]
    warm: Rows = {(OPEN, ROOM): (SAFETY, 9), (WORKING, ROOM): (SAFETY, 2)}
    shelf = life(warm, "kitchen", method=Method.PRESSURE).at(0, 11).open()
    assert 2 in limits(shelf, unsealed=True), "for the hour before"


# -- refusals --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("rows", "told", "over"),
    [
        # In the warm two hours, and a minute is too much.
        ({(SEALED, ROOM): (REFUSE, None)}, lambda one: one.at(1, 8).move("kitchen").at(1, 10)
         .move("fridge"), []),
        ({(SEALED, ROOM): (REFUSE, None)}, lambda one: one.at(1, 8).move("kitchen")
         .at(1, 10 + 1 / 60).move("fridge"), [0]),
        # What is refused in the cold is refused at once, whether or not it is in the warm as well.
        ({(SEALED, FREEZER): (REFUSE, None)}, lambda one: one.at(1, 8).move("freezer").at(1, 9)
         .move("fridge"), [0, 2]),  # and thawed, it has a day
        ({(SEALED, FREEZER): (REFUSE, None)}, lambda one: one.at(1, 8).move("second fridge"), []),
        # Nor may it stand in a freezer that is too warm.
        ({(SEALED, FREEZER): (REFUSE, None), (SEALED, FRIDGE): (QUALITY, 9)},
         lambda one: one.hold("freezer", FREEZER, 33).at(1, 8).move("freezer"), [0]),
        # Opened where sealed food may not stand.
        ({(SEALED, ROOM): (REFUSE, None), (OPEN, ROOM): (QUALITY, 9)},
         lambda one: one.at(1, 8).open("kitchen"), [0]),
        ({(SEALED, FRIDGE): (REFUSE, None), (OPEN, FRIDGE): (QUALITY, 9)},
         lambda one: Told.move(one, "fridge"), [-1]),
    ],
)  # fmt: skip
def test_where_it_may_not_stand(rows: Rows, told: Callable[[Told], Told], over: list[int]) -> None:
    one = life(rows, method=Method.CELLAR)
    assert limits(told(one.at(0, 10))) == over


def test_what_is_refused_everywhere_is_over_at_once() -> None:
    rule = replace(book({(SEALED, ROOM): (REFUSE, None)}).rules[Method.FRESH][0],
                   climates=frozenset({ROOM, FRIDGE}))  # fmt: skip
    one = Told(MEAT, Method.FRESH, "vault").at(1, 8).move("kitchen").at(1, 8.1).move("vault")
    one.book = Rulebook({Method.FRESH: [rule]})
    assert limits(one) == [0]


@pytest.mark.parametrize("method", [Method.HOT_SMOKED, Method.COLD_SMOKED])
def test_smoked_fish_on_a_shelf_is_over_at_once_and_smoked_meat_in_two_hours(
    method: Method,
) -> None:
    fish = Told("salmon", method, "fridge").at(1, 8).move("kitchen").at(1, 8.1).move("fridge")
    assert fish.last(2) == 0
    meat = Told("beef", method, "fridge").at(1, 8).move("kitchen").at(1, 9).move("fridge")
    assert meat.last(2) != 0
    no_time = Told("salmon", method, "fridge").at(1, 8).hold("fridge", ROOM).move("second fridge")
    assert no_time.last(2) == 0, "not a minute of it"


def test_a_refusal_is_said_in_its_own_words_and_covers_what_it_speaks_of() -> None:
    out = life({(SEALED, ROOM): (REFUSE, None), (SEALED, FRIDGE): (SAFETY, 5)})
    found = reckoned(out.at(1, 8).move("kitchen"), 1, 12)
    over = found.over(found.now.last)
    assert over is not None
    assert (over.text, over.rule and over.rule.id) == ("", "sealed room refuse")
    assert found.troubles() == []


# -- too warm --------------------------------------------------------------------------------------

WARM: Rows = {(SEALED, FRIDGE): (SAFETY, 9), (OPEN, FRIDGE): (SAFETY, 9)}


@pytest.mark.parametrize(
    ("read", "over"),
    [
        # A day and an hour, so many °F, for so many minutes.
        ([(1, 14, 41, 600)], None), ([(1, 14, 41.5, 120)], None), ([(1, 14, 41.5, 121)], 0),
        ([(1, 14, 90, 120)], None), ([(1, 14, 90.5, 60)], None), ([(1, 14, 90.5, 61)], 0),
        # Half an hour of heat and an hour of warmth are two hours.
        ([(1, 14, 95, 30), (2, 12, 45, 60)], None), ([(1, 14, 95, 30), (2, 12, 45, 61)], 1),
        ([(1, 14, 95, 60), (2, 12, 45, 1)], 1),
        # It is over on the day on which the minutes are too many.
        ([(2, 1, 45, 150)], 1), ([(2, 3, 45, 300)], 1), ([(2, 0.5, 45, 240)], 0),
    ],
)  # fmt: skip
def test_two_hours_in_all(read: list[tuple[int, float, float, int]], over: int | None) -> None:
    one = life(WARM).at(0, 11).read("fridge", 38)
    for day, hour, warm, minutes in read:
        one.at(day, hour).read("fridge", warm, minutes - 1)
        one.at(day, hour + 1 / 60).read("fridge", 38)
    found = reckoned(one)
    limit = found.over(found.now.last)
    assert (None if limit is None else (limit.day - MADE).days) == over
    assert found.runs_out(found.now.last) is None, "it stands in the cold"
    counted = sum(n * (1 + (warm > 90)) for _, _, warm, n in read if warm > 41)
    assert found.charged(found.now.last) == counted


def test_what_has_no_figure_of_safety_in_the_cold_is_charged_with_nothing() -> None:
    crop = life({(SEALED, FRIDGE): (QUALITY, 9)}, food=CROP).at(1, 12).read("fridge", 60, 600)
    crop.book = replace(crop.book, cuts=Told("beef", Method.FRESH, "fridge").book.cuts)
    found = reckoned(crop)
    assert (found.warm, found.over(found.now.last)) == ([], None)
    assert [one.text for one in found.troubles()] == [
        "Read at 60 F, above 41 F: warmer than the published figures."
    ]
    meat = life({(SEALED, FRIDGE): (QUALITY, 9)}).at(1, 12).read("fridge", 60, 600)
    meat.book = crop.book
    assert reckoned(meat).over(reckoned(meat).now.last) is not None, "the table of cuts says so"


def test_it_is_said_whether_it_was_read_or_set_so_and_by_which_rule() -> None:
    for warm, how in (
        (life(WARM).at(0, 11).read("fridge", 45, 60), "Read"),
        (life(WARM).at(0, 11).hold("fridge", FRIDGE, 45), "Set"),
    ):
        (charge,) = {(one.where, one.rule and one.rule.id) for one in reckoned(warm).warm}
        assert charge == (f"{how} at 45 F, above 41 F", "sealed fridge safety")


def test_a_sealed_figure_holds_opened_food_to_the_cold_as_well() -> None:
    rows: Rows = {(SEALED, FRIDGE): (SAFETY, 9), (OPEN, FRIDGE): (QUALITY, 9)}
    opened = life(rows, "vault", CROP).at(1, 8).open("fridge").at(2, 12).read("fridge", 45, 300)
    found = reckoned(opened)
    assert found.over(found.now.last) is not None


def test_frozen_food_with_a_figure_of_safety_is_not_too_warm_where_it_freezes() -> None:
    frozen = life({(SEALED, FREEZER): (SAFETY, 90)}, "freezer", method=Method.FROZEN)
    assert limits(frozen.at(1).read("freezer", 28, 600)) == [90]


def test_while_it_stands_too_warm_it_says_when_the_hours_run_out() -> None:
    def left(told: Told) -> int | None:
        found = reckoned(told, 1, 12)
        out = found.runs_out(found.now.last)
        return None if out is None else out - found.now.last - 1

    one = life(WARM).at(1, 8).read("fridge", 38).at(1, 12)
    assert left(one) is None
    assert left(deep(one).read("fridge", 45, 30)) == 90
    assert left(deep(one).read("fridge", 90, 30)) == 90
    assert left(deep(one).read("fridge", 95, 30)) == 30
    both = deep(one).read("fridge", 45, 30).read("fridge", 95, 20)
    assert left(both) == (120 - 10 - 2 * 20) // 2, "of both the hotter"
    assert left(deep(one).read("fridge", 45, 120)) == 0
    gone = deep(one).at(1, 9).read("fridge", 45, 30).at(1, 9.1).read("fridge", 38)
    assert left(gone) is None
    assert left(gone.at(1, 12).read("fridge", 45, 30)) == 54, "36 minutes of it are gone before"


def deep(one: Told) -> Told:
    """Another of the same life."""
    other = Told(MEAT, Method.FRESH, "fridge")
    other.book, other.places, other.box = one.book, dict(one.places), one.box
    return other.at(one._day, one._hour)


# -- thawed food and lids --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("food", "method", "last"),
    [
        # Out of a jar, frozen and thawed: a day where it can hurt; dry food and jam do not thaw.
        ("runner beans", Method.PRESSURE, 10), ("strawberry jam", Method.JAM, None),
    ],
)  # fmt: skip
def test_what_was_taken_out_of_a_jar_and_frozen_thaws(
    food: str, method: Method, last: int | None
) -> None:
    one = Told(food, method, "larder", minutes="20", psi="11")
    assert one.at(1, 12).open("freezer").at(9, 12).move("fridge").last(10) == last


def test_dry_food_does_not_thaw() -> None:
    rows: Rows = {(OPEN, FRIDGE): (SAFETY, 30), (SEALED, FREEZER): (QUALITY, 300)}
    jerky = life(rows, "freezer", method=Method.DRIED).at(1).open().at(9).move("fridge")
    assert limits(jerky) == [39]
    apples = Told("apples", Method.DRIED, "freezer").at(5).thaw("larder", "microwave")
    assert apples.last(6) is None


def test_a_printed_date_stands_for_bought_food_alone() -> None:
    fresh = Told("chickens", Method.FRESH, "fridge", printed=MADE + timedelta(days=9))
    assert fresh.last(0) == Told("chickens", Method.FRESH, "fridge").last(0)
    eggs = Told("eggs", Method.BOUGHT, "fridge", printed=MADE + timedelta(days=30)).judged(0)
    assert eggs.best_by == MADE + timedelta(days=30), "and for its quality as well"
