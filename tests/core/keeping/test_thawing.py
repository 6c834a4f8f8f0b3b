"""How long food thaws: by what was in it when that began, and no longer than what is left of it."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import pytest

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.keeping.thawing import Draw, parted, weighed
from pantry_tui.core.model import Container, Turn
from pantry_tui.core.words import State
from tests.core.keeping.told import when

BEGAN = Turn(when(10, 9), "e1", "fridge", State.THAWED)


def days(first: str | None, *draws: tuple[float, float | None, str], turn: Turn = BEGAN) -> object:
    """How long it thaws from day 10 on, with these draws of (day, hour, how much)."""
    taken = [Draw(when(int(day), hour), amount_of(much)) for day, hour, much in draws]
    held = None if first is None else amount_of(first)
    return weighed((turn,), "", held, taken)[0].thaws


@pytest.mark.parametrize(
    ("draws", "thaws"),
    [
        ((), 3),
        # once it is thawed nothing that is eaten of it was thawed sooner
        (((14, 18, "12 lb"),), 3),
        (((13, 18, "6 lb"), (14, 18, "7 lb")), 3),
        # what was cut off before it began was not in it
        (((8, 9, "5 lb"),), 2),
        (((8, 9, "5 lb"), (14, 9, "7 lb")), 2),
        # while it thaws, what is left is thawed as a piece of its weight
        (((10, 18, "12 lb"),), 1),
        (((11, 18, "12 lb"),), 2),
        (((11, 18, "1 lb"),), 3),
        # on the day itself, at an hour that nobody knows: it may have been before
        (((10, None, "12 lb"),), 1),
    ],
)
def test_the_weight_at_its_begin_counts(
    draws: tuple[tuple[float, float | None, str], ...], thaws: int
) -> None:
    """USDA FSIS, the big thaw: a day for each 4 to 5 lb, so 14 lb take three days."""
    assert days("14 lb", *draws) == thaws


def test_what_is_no_thaw_and_what_nobody_weighed_says_nothing() -> None:
    assert days(None) is None
    assert days("14 lb", turn=BEGAN._replace(state=State.OPEN)) is None


def test_a_piece_that_is_parted_while_it_thaws_is_thawed_as_its_weight() -> None:
    whole = BEGAN._replace(thaws=3)
    for day, thaws in ((10, 1), (11, 2), (12, 3), (13, 3), (20, 3)):
        assert parted((whole,), when(day, 9), amount_of("4 lb"))[0].thaws == thaws
    assert parted((whole,), when(10, 9), None) == (whole,)
    assert parted((BEGAN,), when(10, 9), amount_of("4 lb")) == (BEGAN,)


@pytest.mark.parametrize("seed", range(40))
def test_no_draw_ever_lengthens_it_in_whichever_order_they_are_booked(seed: int) -> None:
    r = random.Random(seed)
    draws: list[Draw] = []
    last = 5
    for _ in range(8):
        much = Amount(Fraction(r.randint(1, 3)), "lb")
        draws.append(Draw(when(r.randint(6, 16), r.choice((None, 8, 20))), much))
        found = weighed((BEGAN,), "", amount_of("24 lb"), draws)[0].thaws
        assert found is not None
        assert 1 <= found <= last
        r.shuffle(draws)
        assert weighed((BEGAN,), "", amount_of("24 lb"), draws)[0].thaws == found
        last = found


def test_two_that_thaw_for_other_times_lived_other_lives() -> None:
    """As one they would show the date of whichever came first. Who booked it is no part of it."""
    piece = Container("c1", "b1", 1, State.THAWED, "fridge", (BEGAN._replace(thaws=3),))
    other = replace(piece, id="c2", number=2, turns=(BEGAN._replace(thaws=3, event="e2"),))
    assert other.lived == piece.lived
    assert replace(other, turns=(BEGAN._replace(thaws=1),)).lived != piece.lived
