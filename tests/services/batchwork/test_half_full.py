"""Half a jar is an open one, and how much is in it has to be said."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import State
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import view


@pytest.mark.parametrize(
    "line",
    [
        "half a jar of plum jam, fridge",
        "half a bag of rice, larder",
        "half a wheel of cheddar, fridge",
        "half of an onion, fridge",
        "half an onion, fridge",
    ],
)
def test_half_of_what_nobody_weighed_is_asked_about(larder: Pantry, line: str) -> None:
    assert any(ask.about == "contents" for ask in putup.read(larder, line).asks)


@pytest.mark.parametrize(
    ("line", "state"),
    [
        ("half a jar of plum jam, 6 oz, fridge", State.OPEN),
        ("a quarter of a bottle of ketchup, bought, 4 oz, fridge", State.OPEN),
        ("half a bag of rice, 1 lb, larder", State.SEALED),  # what is dry is as it was
        ("half a sack of potatoes, cellar-stored, larder", State.SEALED),
    ],
)
def test_half_a_closed_vessel_was_opened(larder: Pantry, line: str, state: State) -> None:
    putup.put_up(larder, putup.read(larder, line))
    (row,) = view.due(larder)
    assert row.state is state


def test_what_is_fresh_may_be_kept_so(larder: Pantry) -> None:
    (problem,) = putup.read(larder, "2 lb carrots, fridge").problems
    assert problem.startswith("Say how it is kept, for example: fresh")


def test_last_november_said_in_november_is_asked_about(larder: Pantry) -> None:
    """It is the 25th of November."""
    reading = putup.read(larder, "1 4 lb venison roast, frozen, larder, last nov")
    (ask,) = (one for one in reading.asks if one.about == "made")
    assert ask.choices == ("november 2026", "november 2025")
    earlier = putup.read(larder, "1 4 lb venison roast, frozen, larder, last october")
    assert earlier.made is not None
    assert (earlier.made.year, earlier.made.month) == (2026, 10)
