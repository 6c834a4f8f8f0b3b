"""What each day gives a ferment, minute by minute, and what is said where the days are too few."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.unripe import unripe
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, Batch, FoodFacts
from pantry_tui.core.words import (
    ASSUMED_F,
    Climate,
    Kind,
    Method,
    State,
    Trust,
)
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, facts_of

BOOK = load_tables().book
ROOM, FRIDGE, FREEZER = Climate.ROOM, Climate.FRIDGE, Climate.FREEZER


def span(first: float, last: float, climate: Climate, warm: float | None = None) -> Span:
    """At work from one day to another, counted from the day made, in minutes of UTC."""
    day = MADE.toordinal() * DAY_MIN
    at = ASSUMED_F[climate] if warm is None else warm
    on = MADE + timedelta(int(first))
    return Span(
        day + round(first * DAY_MIN), day + round(last * DAY_MIN), on, "place", climate, at,
        False, True, False, None, False, False, False,
    )  # fmt: skip


def finished(first: float, climate: Climate = FRIDGE) -> Span:
    one = span(first, first, climate)
    return one._replace(end=FOREVER, in_progress=False)


def batch(
    food: str | FoodFacts, method: Method = Method.LACTIC, ph_day: date | None = None, **record: str
) -> Batch:
    facts = facts_of(food) if isinstance(food, str) else food
    return Batch("b", "2A", facts, method, MADE, "", tuple(record.items()), ph_day=ph_day)


def said(
    one: Batch | str, *spans: Span, zone: int = 0, book: Rulebook = BOOK
) -> str:  # fmt: skip
    """Why it may not be done, or ""."""
    found = unripe(batch(one) if isinstance(one, str) else one, spans, zone, book)
    return "" if found is None else found.text


# -- which minutes a day has -----------------------------------------------------------------------


def test_a_day_ends_at_midnight_and_the_next_begins_there() -> None:
    """Kimchi takes a day at room warmth (Colorado State University Extension): the one between two
    in a freezer, and no minute of theirs is in it."""
    assert not said(
        "kimchi", span(0, 1, FREEZER), span(1, 2, ROOM), span(2, 3, FREEZER), finished(3)
    )
    late = span(1, 1.999, ROOM), span(1.999, 3, FREEZER)
    assert said("kimchi", span(0, 1, FREEZER), *late, finished(3))
    soon = span(0, 1.001, FREEZER), span(1.001, 2, ROOM)
    assert said("kimchi", *soon, span(2, 3, FREEZER), finished(3))


@pytest.mark.parametrize("zone", [12 * 60, -10 * 60, 0])
def test_midnight_is_that_of_the_household(zone: int) -> None:
    """Twenty-one local days in the kitchen, then a freezer until noon."""
    early = zone / DAY_MIN
    spans = [span(-early, 21 - early, ROOM), span(21 - early, 21.5 - early, FREEZER)]
    spans[0] = spans[0]._replace(day=MADE)
    done = finished(21.5 - early)._replace(day=MADE + timedelta(21))
    assert not said("sauerkraut", *spans, done, zone=zone)
    spans[0] = spans[0]._replace(end=spans[0].end - 1)
    spans[1] = spans[1]._replace(start=spans[1].start - 1)
    assert said("sauerkraut", *spans, done, zone=zone)


def test_a_day_of_which_nothing_is_known_gives_nothing_and_takes_nothing() -> None:
    gap = span(0, 1, FREEZER), span(4, 5, ROOM)
    assert not said("kimchi", *gap, finished(5))
    assert said("kimchi", gap[0], span(4, 5, FREEZER), finished(5))
    assert said("kimchi", gap[0], finished(5))


def test_the_days_end_where_it_was_first_called_ready() -> None:
    moved = span(0, 5, ROOM), finished(5, ROOM)._replace(end=span(20, 20, ROOM).end), finished(20)
    assert "after 5 days;" in said("carrots", *moved)
    assert "after 5 days;" in said("carrots", moved[0], moved[2], moved[1])
    late = batch("carrots", ph="3.9", ph_day=MADE + timedelta(3))
    assert said(late, *moved) == ""
    assert said(batch("carrots", ph="3.9", ph_day=MADE + timedelta(2)), *moved)


# -- where it works --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("food", "warm", "works"),
    [
        # What is published for a refrigerator works in one that is not frozen.
        ("kimchi", 38.0, True), ("kimchi", 32.1, True), ("kimchi", 32.0, False),
        ("kimchi", 80.0, True), ("kimchi", 80.1, False),
        # What is published for a room does not work in one, whatever is read there.
        ("sauerkraut", 72.0, False), ("sauerkraut", 38.0, False),
    ],
)  # fmt: skip
def test_a_refrigerator_is_no_room(food: str, warm: float, works: bool) -> None:
    assert (said(food, span(0, 40, FRIDGE, warm), finished(40)) == "") is works


@pytest.mark.parametrize(
    ("food", "warm", "works"),
    [
        # USDA AIB 539, fermented dill pickles: five to six weeks at 55 to 65 F; sauerkraut and all
        # else at 60 to 65 F.
        ("dill pickles", 55.0, True), ("dill pickles", 54.0, False), ("cucumbers", 55.0, True),
        ("sauerkraut", 60.0, True), ("sauerkraut", 59.0, False), ("carrots", 59.0, False),
    ],
)  # fmt: skip
def test_how_cool_it_may_be(food: str, warm: float, works: bool) -> None:
    assert (said(food, span(0, 35, Climate.PANTRY, warm), finished(35)) == "") is works
    assert said(food, span(0, 34, Climate.PANTRY, warm), finished(34))


@pytest.mark.parametrize(
    "food",
    ["cabbages", "red cabbages", "savoy cabbages", "pointed cabbages", "cucumbers",
     "pickling cucumbers", "fermented dill pickles", "dill pickles", "sauerkraut"],
)  # fmt: skip
def test_what_works_as_kraut_or_dill_pickles_takes_their_three_weeks(food: str) -> None:
    assert said(food, span(0, 20, ROOM), finished(20))
    assert said(food, span(0, 21, ROOM), finished(21)) == ""


def test_in_a_freezer_nothing_works_however_warm_it_is_set() -> None:
    assert said("kimchi", span(0, 40, FREEZER, 70.0), finished(40))


# -- what is said ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("food", "spans", "text"),
    [
        ("sauerkraut", [span(0, 1, ROOM), finished(1)],
         "Called ready after 1 day; the shortest published time is 21 days at 70 F, 35 days at"
         " 60 F. "),
        ("sauerkraut", [span(0, 0.2, ROOM), finished(0.2)], "Called ready after 0 days; "),
        ("sauerkraut", [span(0, 2, ROOM), finished(2)], "Called ready after 2 days; "),
        ("sauerkraut", [span(0, 4, ROOM), span(4, 10, FRIDGE), finished(10)],
         "Called ready after 10 days, 4 of them where it works; "),
        ("kimchi", [span(0, 0.2, ROOM), finished(0.2)],
         "the shortest published time is 1 day at 70 F, 3 days in a fridge. Measure it"),
        ("carrots", [span(0, 1, ROOM), finished(1)],
         "the shortest published time is 14 days at 70 F, 35 days at 60 F. Measure it"),
    ],
)  # fmt: skip
def test_how_long_it_worked_and_how_long_is_published(
    food: str, spans: list[Span], text: str
) -> None:
    assert text in said(food, *spans)


def test_the_warmth_of_its_record_is_named_where_days_do_not_count_by_it() -> None:
    spans = span(0, 4, ROOM), span(4, 10, FRIDGE), finished(10)
    found = said(batch("sauerkraut", temperature="68 to 72 degrees F by day"), *spans)
    assert "4 of them where it works (its record says 68 to 72 degrees F b);" in found
    assert "its record" not in said("sauerkraut", *spans)
    warm = said(batch("sauerkraut", temperature="70F"), span(0, 4, ROOM), finished(4))
    assert "after 4 days;" in warm
    asked = said(batch("sauerkraut", temperature="unknown"), *spans)
    assert "where it works;" in asked


def test_what_still_works_at_a_warmth_that_nobody_publishes() -> None:
    working = span(0, 3, ROOM)._replace(end=FOREVER)
    found = said(batch("sauerkraut", temperature="85 to 90 degrees F by day"), working)
    assert found == (
        "Its record says 85 to 90 degrees F b: no publication ferments it at that; published are "
        "21 days at 70 F, 35 days at 60 F."
    )
    # Yogurt is made warm: no time is published here, so none is held against it.
    assert said(batch("yogurt", temperature="110F"), working) == ""


def test_a_rule_that_was_not_reached_is_named() -> None:
    found = unripe(batch("kimchi"), [span(0, 0.2, ROOM), finished(0.2)], 0, BOOK)
    assert found is not None
    assert [rule.food for rule in found.rules] == ["kimchi", "kimchi"]
    (room, cold) = found.rules
    assert (room.climates, cold.climates) == (frozenset({ROOM}), frozenset({FRIDGE}))
    plain = unripe(batch("carrots"), [span(0, 1, ROOM), finished(1)], 0, BOOK)
    assert isinstance(plain, Trouble)
    assert plain.rules == ()


# -- of which food ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("food", "days", "salt", "done"),
    [
        ("dill pickles", 20, "2.5%", False), ("dill pickles", 21, "2.5%", True),
        ("fermented dill pickles", 20, "2.5%", False), ("tomatoes", 13, "2.5%", False),
        ("tomatoes", 14, "2.5%", True), ("melons", 13, "2.5%", False),
        # Acid as they grew, or made so: nothing has to work.
        ("plums", 1, "", True), ("olives", 1, "", True), ("lemons", 1, "", True),
        ("preserved lemons", 1, "", True),
        # Pastes and grains are no vegetables, and turn alkaline as easily as sour.
        ("rice", 40, "", False), ("ajvar", 40, "", False), ("ajvar", 40, "25%", True),
        # Cures have rules of their own.
        ("pork", 6, "", False), ("pork", 7, "", True), ("eggs", 1, "", True),
        ("trout", 1, "", True),
    ],
)  # fmt: skip
def test_what_lies_under_salt(food: str, days: int, salt: str, done: bool) -> None:
    record = {"salt": salt} if salt else {}
    one = batch(food, Method.SALTED, None, **record)
    assert (said(one, span(0, days, ROOM), finished(days)) == "") is done


@pytest.mark.parametrize("method", [one for one in Method if one is not Method.LACTIC])
def test_only_what_ferments_has_to_work(method: Method) -> None:
    heavy = batch("snap beans", method, salt="25%", ph="5.8")
    assert said(heavy, span(0, 1, ROOM), finished(1)) == ""


@pytest.mark.parametrize(
    ("food", "least"),
    # Drinks of vegetables in brine, and sour relishes, are held to the time for vegetables.
    [("beet kvass", 14), ("carrots", 14), ("salsa", 14), ("basil", 14), ("melons", 14)],
)
def test_what_works_as_vegetables_do(food: str, least: int) -> None:
    assert said(food, span(0, least - 1, ROOM), finished(least - 1))
    assert said(food, span(0, least, ROOM), finished(least)) == ""


@pytest.mark.parametrize("food", ["kombucha", "kvass", "hummus", "ajvar", "mushrooms"])
def test_what_does_not_work_as_vegetables_do_has_no_time(food: str) -> None:
    found = said(food, span(0, 60, ROOM), finished(60))
    assert "no working time is published" in found


def test_what_was_put_up_finished() -> None:
    """Taken at its word where it is acid, or a publication ferments it."""
    assert said("kombucha", finished(0)) == said("carrots", finished(0)) == ""
    assert said("natto", finished(0)).startswith("No publication ferments natto. Measure it")
    # Eaten while it worked: nobody called it ready.
    assert said("natto", span(0, 5, ROOM)).startswith("No publication ferments natto. Measure it")


def test_a_ph_of_25_is_the_sourest_that_is_believed() -> None:
    """Kraut is published at 3.4 to 3.6 (FDA, Bad Bug Book)."""
    days = span(0, 5, ROOM), finished(5)
    on = MADE + timedelta(5)
    assert said(batch("carrots", ph="2.5", ph_day=on), *days) == ""
    assert said(batch("carrots", ph="2.4", ph_day=on), *days)


# -- other figures ---------------------------------------------------------------------------------


def rule(least: float, unit: str, *climates: Climate, food: str = "group:vegetable") -> Rule:
    return Rule(
        "own", Method.LACTIC, food, State.IN_PROGRESS, frozenset(climates), Kind.QUALITY, least,
        least, None, unit, None, Status.CURRENT, "As published.", "typed", Trust.READ,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("least", "unit", "days"),
    [(48, "hours", 2), (5, "days", 5), (2, "weeks", 14)],
)
def test_a_working_time_in_any_unit(least: float, unit: str, days: int) -> None:
    book = Rulebook({Method.LACTIC: [rule(least, unit, ROOM)]})
    assert said("carrots", span(0, days, ROOM), finished(days), book=book) == ""
    short = said("carrots", span(0, days - 1, ROOM), finished(days - 1), book=book)
    assert f"published time is {days} days at 70 F. Measure" in short


def test_a_month_is_that_of_the_day_on_which_it_began() -> None:
    """March has 31 days, April 30: those of the day put up count, wherever it stands since."""
    book = Rulebook({Method.LACTIC: [rule(1, "months", ROOM)]})
    moved = span(0, 31, ROOM), span(31, 32, ROOM)._replace(end=FOREVER)
    hot = batch("carrots", temperature="95F")
    assert said(hot, *moved, book=book).endswith("published are 31 days at 70 F.")
    assert said(hot, *moved[::-1], book=book) == said(hot, *moved, book=book)
    assert said("carrots", span(0, 31, ROOM), finished(31), book=book) == ""
    assert said("carrots", span(0, 30, ROOM), finished(30), book=book)


def test_a_time_for_a_room_and_a_fridge_alike_is_none_for_the_cold() -> None:
    """Which of both it was measured in nobody knows: the warmer is the stricter reading."""
    book = Rulebook({Method.LACTIC: [rule(3, "days", ROOM, FRIDGE)]})
    assert said("carrots", span(0, 3, ROOM), finished(3), book=book) == ""
    assert said("carrots", span(0, 30, FRIDGE), finished(30), book=book)
    assert said("carrots", span(0, 30, ROOM, 69.0), finished(30), book=book)
