"""A batch alone is named as what went into a dish, and what a cook takes first of it is over."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.errors import Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, leaving, places

SAUCE = "1 box bolognese, cooked meal, fridge, from {}"


def beef(p: Pantry, days: int) -> str:
    """Two bags, of which one thawed so many days ago."""
    places.add(p, "chest", "freezer")
    code = putup.put_up(p, putup.read(p, "2 bags ground beef, frozen, chest")).code
    act.thaw(p, f"{code}/1")
    p.today += timedelta(days=days)
    return code


def took(p: Pantry, ref: str) -> list[str]:
    made = putup.put_up(p, putup.read(p, SAUCE.format(ref)))
    return [one.container for one in made.made_from]


def test_what_thawed_and_is_over_is_not_passed_over_in_silence(larder: Pantry) -> None:
    code = beef(larder, 20)
    with pytest.raises(Refused, match=rf"{code}/1 is thawed .* from {code}/2\."):
        took(larder, code)
    assert took(larder, f"{code}/2") == [f"{code}/2"]


def test_what_thawed_and_is_fit_is_taken_first(larder: Pantry) -> None:
    code = beef(larder, 1)
    assert took(larder, code) == [f"{code}/1"]


def test_what_was_thrown_away_asks_nothing(larder: Pantry) -> None:
    code = beef(larder, 20)
    leaving.discard(larder, f"{code}/1", why="too old")
    assert took(larder, code) == [f"{code}/2"]
