"""What stands against a batch or its record: who made it, what the cold saved, clocks ahead."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

import pytest

from pantry_tui.core.amounts import Amount
from pantry_tui.core.keeping.doubt import (
    OWN_WORD,
    PICKLE_NOT_CHECKED,
    UNKNOWN_ORIGIN,
    by_others,
    cut_hurts,
    cut_off,
    not_checked,
    rescued,
    still_to_come,
    taken_whole,
    unknown_origin,
    unsealed,
)
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.log.own import told_food
from pantry_tui.core.model import (
    DAY_MIN,
    EVER,
    Batch,
    Container,
    Cut,
    Held,
    Place,
    Read,
    Seen,
    Turn,
    When,
)
from pantry_tui.core.safety.acid import NOT_CHECKED as NO_ACID
from pantry_tui.core.safety.metric_jars import LITRE
from pantry_tui.core.safety.record import NOT_CHECKED as NO_PROCESS
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, facts_of, when

BOOK = load_tables().book
START = MADE.toordinal() * DAY_MIN


def jar(food: str = "runner beans", method: Method = Method.PRESSURE, **process: str) -> Batch:
    return Batch("b", "2A", facts_of(food), method, MADE, "", tuple(process.items()))


@pytest.mark.parametrize(
    "by", ["", "me", "us", "ours", "own", "myself", "home", "household", "Household", "ME"]
)
def test_these_words_mean_the_household(by: str) -> None:
    assert not by_others(jar(by=by))


# -- what the cold saved ---------------------------------------------------------------------------


def span(begin: float, end: float | None, climate: Climate, **more: object) -> Span:
    """Hours from midnight of the day made; None has no end yet."""
    first = START + round(begin * 60)
    last = FOREVER if end is None else START + round(end * 60)
    day = MADE + timedelta(days=int(begin // 24))
    plain = Span(first, last, day, "p", climate, 40.0, True, False, False, None, False,
                 False, True)  # fmt: skip
    return plain._replace(**more)  # type: ignore[arg-type]


ROOM, PANTRY, FRIDGE = Climate.ROOM, Climate.PANTRY, Climate.FRIDGE
FREEZER = Climate.FREEZER


@pytest.mark.parametrize(
    ("spans", "saved"),
    [
        # It stayed in the cold, and left it for no hour of that first day either.
        ([span(10, 12, ROOM), span(12, 14, FRIDGE), span(14, None, FREEZER)], True),
        ([span(10, 12, ROOM), span(12, 14, FRIDGE), span(14, 15, ROOM), span(15, None, FRIDGE)],
         False),
        ([span(10, 12, ROOM), span(12, 14, FRIDGE), span(14, 14, ROOM), span(14, None, FRIDGE)],
         False),
        # 24 hours in all, in whatever rooms.
        ([span(10, 12, ROOM), span(12, 34, PANTRY), span(34, None, FRIDGE)], True),
        ([span(10, 12, ROOM), span(12, 34.5, PANTRY), span(34.5, None, FRIDGE)], False),
        # On the next day, and 24 hours after it was made; on the day after that, whatever hour.
        ([span(24, 30, ROOM, day=MADE + timedelta(1)), span(30, None, FRIDGE)], True),
    ],
)  # fmt: skip
def test_24_hours_out_of_the_cold_and_not_one_more(spans: list[Span], saved: bool) -> None:
    """USDA AIB 539, as the services repeat it."""
    assert (rescued(jar(), spans, BOOK) is not None) is saved


def test_what_it_was_saved_from_counts_from_the_day_it_was_made() -> None:
    found = rescued(jar(), [span(10, 30, ROOM), span(30, 50, FRIDGE), span(50, None, FREEZER)],
                    BOOK)  # fmt: skip
    assert found is not None
    assert [one.day for one in found] == [MADE, MADE + timedelta(days=2)]
    assert all(one.opened for one in found)


def test_the_cold_saves_no_food_that_nobody_cans_and_that_can_hurt() -> None:
    """Of figs in boiling water a process is published; of butter in a jar none."""
    cold = [span(10, 12, ROOM), span(12, None, FRIDGE)]
    assert rescued(jar("figs", Method.BOILING_WATER), cold, BOOK) is not None
    assert rescued(jar("butter", Method.PRESSURE), cold, BOOK) is None
    nobody_knows = replace(BOOK, rules={})
    assert rescued(jar(), cold, nobody_knows) is None, "no figure for its sealed jars"
    assert rescued(jar("figs", Method.BOILING_WATER), cold, nobody_knows) is not None, "no harm"


def test_a_lid_that_never_sealed_or_a_process_in_doubt_leaves_it_unsealed() -> None:
    box = Container("b.1", "b", 1, State.SEALED, "p", ())
    seen = Seen(MADE, "unsealed within a day of canning", Verdict.EAT_SOON)
    other = Seen(MADE, "white film", Verdict.SOUND)
    assert unsealed(jar(), replace(box, signs=(other, seen)))
    assert not unsealed(jar(method=Method.FROZEN), replace(box, signs=(seen,)))
    assert not unsealed(jar(), replace(box, signs=(other,)))
    assert unsealed(replace(jar(), doubt=("too short",)), box)


# -- clocks that ran ahead -------------------------------------------------------------------------

NOW = when(5, 12)


def turned(*moments: When) -> Container:
    turns = tuple(Turn(moment, f"e{n}", "p") for n, moment in enumerate((when(0, 10), *moments)))
    return Container("b.1", "b", 1, State.SEALED, "p", turns)


def coming(box: Container, *facts: Held | Read | Cut, parent: bool = False) -> tuple[str, ...]:
    first = Held(EVER, FRIDGE, 38.0)
    places = {"p": Place("p", "p", FRIDGE, facts=(first, *facts))}
    if parent:
        places = {
            "p": Place("p", "p", FRIDGE, "outer", facts=(first,)),
            "outer": Place("outer", "outer", FRIDGE, facts=(first, *facts)),
        }
    return still_to_come(box, places, NOW)


def said(day: str) -> tuple[str, ...]:
    counts = "as now. Put its hour right." if " at " in day else "as today. Put its day right."
    return (f"Something is booked for {day}, which is still to come: it counts {counts}",)


def cut(start: When, end: When) -> Cut:
    return Cut(start, end)


SUNDAY, MONDAY = "Sun 8 Mar 2026", "Mon 9 Mar 2026"
TODAY = "Fri 6 Mar 2026 at 12:30"


@pytest.mark.parametrize(
    ("box", "facts", "told"),
    [
        (turned(), (), ()),
        (turned(when(4, 8), when(5, 12)), (), ()),
        (turned(when(5, 12.5)), (), said(TODAY)),
        (turned(when(7, 8)), (), said(SUNDAY)),
        (turned(), (Read(when(5, 12), 38.0), cut(when(5, 9), when(5, 12))), ()),
        (turned(), (Read(when(7, 8), 38.0),), said(SUNDAY)),
        # A cut that has begun and is not over is booked for its end.
        (turned(), (cut(when(5, 9), when(7, 8)),), said(SUNDAY)),
        (turned(), (cut(when(5, 9), when(5, None)),), ()),
        # The first of them is named.
        (turned(when(8, 8)), (Read(when(7, 8), 38.0),), said(SUNDAY)),
        (turned(when(8, 8), when(9, 8)), (), said(MONDAY)),
        (turned(when(7, 8), when(7, 9)), (), said(SUNDAY)),
    ],
)
def test_what_is_still_to_come_is_named_by_its_first_day(
    box: Container, facts: tuple[Read | Cut, ...], told: tuple[str, ...]
) -> None:
    assert coming(box, *facts) == told
    assert coming(box, *facts, parent=True) == told


def test_days_are_those_of_the_calendar() -> None:
    assert (date(2026, 3, 8) - MADE).days == 7


@pytest.mark.parametrize(
    ("record", "said"),
    [
        ({}, (PICKLE_NOT_CHECKED,)), ({"vinegar": "5%"}, (PICKLE_NOT_CHECKED,)),
        # Said to have been processed, and not for how long.
        ({"process": "boiling-water"}, (NO_PROCESS,)),
        ({"process": "Boiling water"}, (NO_PROCESS,)),
        ({"process": "water bath"}, (NO_PROCESS,)), ({"process": "steam"}, (NO_PROCESS,)),
        ({"process": "pressure"}, (NO_PROCESS,)), ({"process": "tested"}, ()),
        ({"process": "USDA recipe"}, ()), ({"process": "steam", "minutes": "10"}, ()),
        ({"minutes": "10"}, ()), ({"process": "boiling-water", "minutes": "10"}, ()),
    ],
)  # fmt: skip
def test_a_pickle_on_a_shelf_was_processed_for_a_time(
    record: dict[str, str], said: tuple[str, ...]
) -> None:
    """Unprocessed pickles keep in the refrigerator (USDA AIB 539, guide 6)."""
    one = jar("dill pickles", Method.VINEGAR_PICKLE, **record)
    shelf, cold = span(0, None, Climate.PANTRY), span(0, None, Climate.FRIDGE)
    assert not_checked(one, (cold, shelf)) == said
    assert not_checked(one, (cold,)) == not_checked(one) == ()
    assert not_checked(replace(one, doubt=("Too short.",)), (shelf,)) == ()


@pytest.mark.parametrize(
    ("size", "typed", "method", "food", "said"),
    [
        ("1 litre", "", Method.PRESSURE, "runner beans", (LITRE,)),
        ("", "1 litre", Method.PRESSURE, "runner beans", (LITRE,)),
        # Of two sizes of one jar the larger counts.
        ("1 quart", "1 litre", Method.PRESSURE, "runner beans", (LITRE,)),
        ("1 litre", "quart", Method.PRESSURE, "runner beans", (LITRE,)),
        ("500 ml", "", Method.PRESSURE, "runner beans", ()),
        ("1 litre", "", Method.BOILING_WATER, "peaches", ()),
        ("1 litre", "", Method.PRESSURE, "peaches", ()),
        # Of tomatoes it is the acid that is asked for.
        ("1 litre", "", Method.BOILING_WATER, "tomatoes", (NO_ACID,)),
    ],
)
def test_a_litre_of_low_acid_food_says_whose_time_it_had(
    size: str, typed: str, method: Method, food: str, said: tuple[str, ...]
) -> None:
    """The federal guide (USDA AIB 539) has pints and quarts."""
    record = {"minutes": "25", "psi": "11"} | ({"jar": typed} if typed else {})
    assert not_checked(replace(jar(food, method, **record), size=size)) == said


@pytest.mark.parametrize(
    ("acidity", "method", "said"),
    [
        (Acidity.ACID, Method.JAM, OWN_WORD), (Acidity.ACIDIFIED, Method.VINEGAR_PICKLE, OWN_WORD),
        # Without acid it is judged as low-acid food is, and what no lid keeps needs none.
        (Acidity.LOW_ACID, Method.JAM, ""), (Acidity.ACID, Method.FROZEN, ""),
        (Acidity.ACID, Method.DRIED, ""), (Acidity.ACID, Method.PRESSURE, ""),
    ],
)  # fmt: skip
def test_of_acid_there_is_more_than_a_word_where_nothing_else_keeps_food_under_a_lid(
    acidity: Acidity, method: Method, said: str
) -> None:
    told = told_food("fiddleheads", Group.VEGETABLE, acidity)
    assert unknown_origin(Batch("b", "2A", told, method, MADE)) == said
    assert unknown_origin(jar("peaches", method)) == "", "a table says that it is acid"


def test_a_jar_from_somebody_else_needs_the_whole_of_its_record() -> None:
    assert unknown_origin(jar(by="Sunniva", minutes="25")) == UNKNOWN_ORIGIN
    assert unknown_origin(jar(by="Sunniva", minutes="25", psi="11")) == ""
    assert unknown_origin(jar(minutes="25")) == "", "our own stands beside its verdict instead"


def test_the_cold_saves_nothing_but_what_is_under_a_lid() -> None:
    cold = [span(10, 12, ROOM), span(12, None, FRIDGE)]
    for food, method in (("salmon", Method.COLD_SMOKED), ("apples", Method.DRIED),
                         ("herb vinegar", Method.FLAVOURED_VINEGAR)):  # fmt: skip
        assert rescued(jar(food, method), cold, BOOK) is None
    assert rescued(jar("apples", Method.JAM), cold, BOOK) is not None


# -- a part of one ---------------------------------------------------------------------------------


def crate(
    food: str,
    method: Method,
    left: Amount | None,
    first: Amount | None = None,
    /,
    size: str = "",
    **record: str,
) -> tuple[Batch, Container]:
    box = Container("b.1", "b", 1, State.SEALED, "p", (), left, first)
    return replace(jar(food, method, **record), size=size), box


def pieces(number: str) -> Amount:
    return Amount(Fraction(number))


def pounds(number: int) -> Amount:
    return Amount(Fraction(number), "lb")


RAW = (Method.CELLAR, Method.FRESH, Method.BOUGHT)


@pytest.mark.parametrize("method", RAW)
def test_of_raw_crops_that_are_counted_half_a_one_was_cut(method: Method) -> None:
    for food in ("pumpkins", "apples"):
        for left, cut in (("5/2", True), ("1/2", True), ("1/3", True), ("2", False), ("1", False)):
            assert cut_off(*crate(food, method, pieces(left))) is cut, (food, left)
    assert cut_off(*crate("pumpkins", method, None)) is False


@pytest.mark.parametrize("method", RAW)
def test_of_a_weight_nobody_knows_whether_a_large_crop_was_cut(method: Method) -> None:
    some, all_ = pounds(5), pounds(8)
    assert cut_off(*crate("pumpkins", method, some, all_)) is True
    assert cut_off(*crate("pumpkins", method, all_, all_)) is False, "nothing was taken"
    assert cut_off(*crate("pumpkins", method, some, all_, size="crate")) is False, "whole ones"
    assert cut_off(*crate("carrots", method, some, all_)) is False, "of them several are taken"


@pytest.mark.parametrize(
    ("food", "method", "more"),
    [
        # What is no raw crop, or was cut when it came, is no whole one to begin with.
        ("pumpkins", Method.FROZEN, {}), ("pumpkins", Method.DRIED, {}),
        ("eggs", Method.FRESH, {}), ("cheese", Method.BOUGHT, {}),
        ("pumpkins", Method.FRESH, {"form": "sliced"}),
    ],
)  # fmt: skip
def test_half_of_what_is_no_whole_crop_is_no_cut_one(
    food: str, method: Method, more: dict[str, str]
) -> None:
    assert cut_off(*crate(food, method, pieces("1/2"), **more)) is False
    assert taken_whole(*crate(food, method, pieces("2"), **more)) is False


@pytest.mark.parametrize("method", RAW)
def test_what_is_counted_in_raw_crops_is_taken_in_whole_ones(method: Method) -> None:
    assert taken_whole(*crate("cabbages", method, pieces("2"))) is True
    assert taken_whole(*crate("cabbages", method, pounds(2))) is False
    assert taken_whole(*crate("cabbages", method, None)) is False


@pytest.mark.parametrize(
    ("food", "spans", "hurts"),
    [
        # A crop that is cut is chilled within two hours (US FDA, produce).
        ("pumpkins", [span(0, None, ROOM)], True),
        ("pumpkins", [span(0, 4, FRIDGE), span(4, None, Climate.CELLAR)], True),
        ("pumpkins", [span(0, None, FRIDGE)], False), ("pumpkins", [span(0, None, FREEZER)], False),
        # Where it was while it was whole says nothing.
        ("pumpkins", [span(0, 4, ROOM), span(4, None, FRIDGE)], False),
        ("tomatoes", [span(0, None, FRIDGE)], True), ("lettuces", [span(0, None, FRIDGE)], True),
        ("melons", [span(0, None, FRIDGE)], True), ("watermelons", [span(0, None, FRIDGE)], True),
        ("cantaloupes", [span(0, None, FRIDGE)], True),
        ("cabbages", [span(0, None, FRIDGE)], True), ("apples", [span(0, None, FRIDGE)], False),
    ],
)  # fmt: skip
def test_what_is_cut_can_hurt_out_of_the_cold_and_some_of_it_in_the_cold_too(
    food: str, spans: list[Span], hurts: bool
) -> None:
    """US FDA, Food Code: cut melons, cut tomatoes, cut leafy greens; from memory."""
    assert cut_hurts(jar(food, Method.FRESH), spans) is hurts
