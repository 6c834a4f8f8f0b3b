"""What stands against a batch or its record: who made it, what the cold saved, clocks ahead."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.doubt import (
    PICKLE_NOT_CHECKED,
    by_others,
    not_checked,
    of_wrong_clock,
    rescued,
    still_to_come,
    unsealed,
)
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.weather import FOREVER
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
from pantry_tui.core.safety.record import NOT_CHECKED as NO_PROCESS
from pantry_tui.core.words import Climate, Method, State, Verdict
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


@pytest.mark.parametrize(
    ("moment", "wrong"),
    [
        (when(5, 12), False), (when(5, 13), False), (when(6, 0), True), (when(700, 8), True),
        (when(5, None), False), (when(4, 8), False),
        # Its clock was in a zone where it was the next day already.
        (When(NOW.first, NOW.last, NOW.day + timedelta(days=1), DAY_MIN), False),
        (When(NOW.first - 1, NOW.last - 1, NOW.day + timedelta(days=1), DAY_MIN), False),
    ],
)  # fmt: skip
def test_what_was_booked_by_a_clock_days_ahead_happened_nobody_knows_when(
    moment: When, wrong: bool
) -> None:
    assert of_wrong_clock(turned(moment), NOW) is wrong


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
    return (
        f"Something is booked for {day}, which is still to come: it counts as today. Put its day "
        "right.",
    )


def cut(start: When, end: When) -> Cut:
    return Cut(start, end)


SUNDAY, MONDAY = "Sun 8 Mar 2026", "Mon 9 Mar 2026"
TODAY = "Fri 6 Mar 2026"


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
