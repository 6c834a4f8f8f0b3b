"""A bird is judged by its weight when its thaw began, however much of it is eaten after that."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.words import State, Verdict
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, places, view


@pytest.fixture
def bird(larder: Pantry) -> str:
    places.add(larder, "chest", "freezer")
    line = "1 14 lb turkey, frozen, chest"
    return putup.put_up(larder, putup.read(larder, line)).code


def last(p: Pantry, code: str) -> date | None:
    (row,) = (one for one in view.due(p) if one.code == code)
    return row.discard_after


def test_what_is_eaten_of_it_makes_the_rest_no_older(larder: Pantry, bird: str) -> None:
    """USDA FSIS: 14 lb thaw for three days; thawed poultry has a day after that."""
    p, began = larder, larder.today
    act.thaw(p, bird)
    assert last(p, bird) == began + timedelta(days=4)
    p.today = began + timedelta(days=4)
    for much in ("8 lb", "4 lb"):
        act.use(p, bird, much)
        assert last(p, bird) == began + timedelta(days=4)
    (row,) = (one for one in view.due(p) if one.code == bird)
    assert row.verdict is Verdict.EAT_SOON
    p.today += timedelta(days=1)
    assert view.due(p)[0].verdict is Verdict.DISCARD


def test_what_was_cut_off_frozen_was_not_in_it(larder: Pantry, bird: str) -> None:
    act.use(larder, bird, "10 lb")
    act.thaw(larder, bird)
    assert last(larder, bird) == larder.today + timedelta(days=2)


def test_a_part_goes_on_as_the_bird_and_is_no_fresher(larder: Pantry, bird: str) -> None:
    p, began = larder, larder.today
    act.thaw(p, bird)
    p.today = began + timedelta(days=4)
    part = repack.repack(p, bird, "1 4 lb pack, fridge", "4 lb")
    assert part.discard_after == last(p, bird) == began + timedelta(days=4)


def test_a_part_that_was_cut_off_while_it_thawed_has_no_longer(larder: Pantry, bird: str) -> None:
    p, began = larder, larder.today
    act.thaw(p, bird)
    p.today = began + timedelta(days=1)
    part = repack.repack(p, bird, "1 2 lb pack, fridge", "2 lb")
    assert part.discard_after == began + timedelta(days=2), "it is thawed as it is cut off"
    (row,) = (one for one in view.due(p) if one.code == part.code)
    assert row.state is State.THAWED
