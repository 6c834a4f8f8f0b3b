"""The minutes that food of the cold was not in it, and by whose clock its days are told."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.warm import Warm, charged, made_with, passed, westmost
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


def test_what_it_was_made_from_brings_the_minutes_that_it_was_out_of_the_cold() -> None:
    """Two hours in all (USDA FSIS), as if those minutes came just before."""
    kitchen, fridge = stay(Climate.ROOM, 70.0, 500, 600), stay(Climate.FRIDGE, 38.0, 600, 900)
    (one,) = made_with(60, [kitchen, fridge])
    assert (one.start, one.end, one.day, one.temperature_f) == (440, 500, kitchen.day, 70.0)
    assert charged([one]) == 60
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
