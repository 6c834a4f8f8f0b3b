"""The minutes that food of the cold was not in it, and by whose clock its days are told."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.keeping.rules import BOUGHT_OUT, THAWED_ONE_DAY
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.warm import (
    HOT_F,
    HOT_MIN,
    WARM_MIN,
    Warm,
    charged,
    made_with,
    passed,
    westmost,
)
from pantry_tui.core.model import EVER, Container, Turn, When
from pantry_tui.core.words import Climate, State

DAY = date(2026, 3, 1)


def warm(start: int, end: int) -> Warm:
    return Warm(start, end, DAY, 70.0, None, "kitchen")


def stay(climate: Climate, temp_f: float, start: int, end: int) -> Span:
    return Span(start, end, DAY, "p", climate, temp_f, True, False, False, None, False, False, True)


def test_what_came_first_is_named_in_whatever_order_it_is_told() -> None:
    first, second = warm(0, 200), warm(10, 200)
    cool = second._replace(temperature_f=50.0)
    for some in ([first, second], [second, first]):
        assert passed(some, 120) == (first, 120)
    assert passed([second, cool], 120) == passed([cool, second], 120)


def test_two_that_begin_alike_are_told_by_whatever_rule() -> None:
    """Each rule throws it away; neither of them comes before the other."""
    some = [warm(0, 200)._replace(rule=rule) for rule in (THAWED_ONE_DAY, BOUGHT_OUT, None)]
    assert passed(some, 120) == (some[2], 120)
    assert charged(some) == 200


def test_a_moment_without_length_takes_no_minutes() -> None:
    assert charged([warm(100, 100), warm(200, 260)]) == 60
    assert charged([warm(100, 100), warm(100, 130)]) == 30
    assert passed([warm(100, 100), warm(300, 420)], 120) is None


@pytest.mark.parametrize(("temp_f", "counts"), [(40.1, 1), (90.0, 1), (90.1, 2), (100.0, 2)])
def test_above_ninety_degrees_a_minute_counts_twice(temp_f: float, counts: int) -> None:
    """USDA FSIS, Freezing and Food Safety: two hours out, above 90 °F one."""
    hot = warm(0, 60)._replace(temperature_f=temp_f)
    assert charged([hot]) == counts * 60
    assert (WARM_MIN, HOT_MIN, HOT_F) == (120, 60, 90.0)


def test_what_it_was_made_from_brings_the_minutes_that_it_was_out_of_the_cold() -> None:
    """Two hours in all (USDA FSIS), as if those minutes came just before."""
    kitchen, fridge = stay(Climate.ROOM, 70.0, 500, 600), stay(Climate.FRIDGE, 38.0, 600, 900)
    fridge = fridge._replace(day=date(2026, 3, 2))
    (one,) = made_with(60, [kitchen, fridge])
    assert (one.start, one.end, one.day, one.temperature_f) == (440, 500, kitchen.day, 70.0)
    assert charged([one]) == 60
    assert made_with(60, [kitchen]) == [one]
    assert made_with(0, [kitchen]) == made_with(60, []) == []


@pytest.mark.parametrize(
    ("now", "zones", "found"),
    [(60, [], 60), (60, [-300], -300), (60, [540], 60), (-300, [60, -480], -480), (0, [0], 0)],
)
def test_the_westmost_clock_by_which_its_life_was_told(
    now: int, zones: list[int], found: int
) -> None:
    turns = tuple(Turn(When(9, 9, DAY, zone), "e", "p", State.SEALED) for zone in zones)
    ever = Turn(EVER._replace(zone=-900), "e", "p", State.SEALED)
    box = Container("b.1", "b", 1, State.SEALED, "p", (ever, *turns))
    then = When(99, 99, DAY, now)
    assert westmost(box, then) == then._replace(zone=found)
