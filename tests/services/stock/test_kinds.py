"""A place is asked about by what a place of its name may be like."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.line.kinds import sensible
from pantry_tui.core.words import Climate
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.putup import read
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

VARY = [
    "attic", "loft", "garage", "shed", "porch", "hall", "utility room", "under the stairs",
    "barn", "conservatory",
]  # fmt: skip
WARM = (Climate.ROOM, Climate.PANTRY, Climate.CELLAR)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 25)) as pantry:
        for name, climate in (("kitchen", "room"), ("larder", "pantry"), ("spare room", "room")):
            places.add(pantry, name, climate)
        yield pantry


@pytest.mark.parametrize("name", VARY)
def test_no_attic_is_a_kitchen_and_what_varies_is_asked_with_climates_that_it_may_have(
    p: Pantry, name: str
) -> None:
    (ask,) = [one for one in read(p, f"1 crate apples, cellar-stored, {name}").asks if
              one.about == "place"]  # fmt: skip
    assert ask.choices == ()
    assert sensible(name) == WARM
    with pytest.raises(BadInput, match="one of room, pantry, cellar:"):
        places.add_line(p, name)
    with pytest.raises(BadInput, match=r"one of room, pantry, cellar\."):
        places.climate_of(p, name, None, None)


def test_another_word_for_the_same_kind_of_place_is_still_offered(p: Pantry) -> None:
    (ask,) = [one for one in read(p, "1 jar honey, bought in, pantry").asks if one.about == "place"]
    assert ask.choices == ("larder",)


def test_a_kitchen_is_no_spare_room(p: Pantry) -> None:
    places.remove(p, "kitchen", "larder")
    asks = read(p, "1 jar honey, bought in, kitchen").asks
    assert [one.choices for one in asks if one.about == "place"] == [()]


def test_a_name_that_says_nothing_may_be_anything(p: Pantry) -> None:
    with pytest.raises(BadInput, match="one of room, pantry, cellar, fridge, freezer: shelf 3"):
        places.add_line(p, "shelf 3")
