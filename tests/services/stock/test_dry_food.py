"""Dry food and spirits from a shop: opened, moved and packed anew they stand where they stood."""

from __future__ import annotations

import pytest

from pantry_tui.core.model import Container
from pantry_tui.core.words import Climate
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.batchwork.repack import repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act

_DRY = (
    "1 tin crackers", "1 tin oats", "1 tin walnuts", "1 tin cookies", "1 tin flour", "1 tin cocoa",
    "1 bag coffee", "1 jar instant coffee",
    "1 box tea", "1 tub salt", "1 jar cinnamon", "1 jar spices", "1 jar black pepper",
    "1 box potato flakes", "1 bottle vodka", "1 bag dry beans", "1 bag lentils", "1 bag raisins",
    "1 jar pumpkin seeds", "1 bag dried mushrooms", "1 bag rice",
)  # fmt: skip
#: Sold wet in such packs, or nobody can know.
_WET = (
    "1 tin tomatoes", "1 tin dry beans", "1 tin chickpeas", "1 tin rice", "1 tin pasta",
    "1 tin coffee", "1 carton tea", "1 tin sweet corn", "1 tin tuna", "1 tin cakes", "1 tin bread",
    "1 tin raisins", "1 pouch rice", "1 jar dry beans", "1 tin instant potatoes",
    "1 tin evaporated milk", "1 tin condensed milk", "1 jar tomatoes", "1 jar carrots",
    "1 jar olives", "1 tin infant formula", "1 jar salsa", "1 tin cranberry sauce",
)  # fmt: skip


def opened(p: Pantry, line: str) -> str:
    """The code of what was bought so and opened at once."""
    code = put_up(p, read(p, f"{line}, bought in, larder")).code
    act.open_(p, code)
    return code


def container(p: Pantry, code: str) -> Container:
    batch = next(one for one in p.stock.batches.values() if one.code == code)
    return p.containers_of(batch)[0]


def climate(p: Pantry, code: str) -> Climate:
    return p.stock.places[container(p, code).place].climate


@pytest.mark.parametrize("line", _DRY)
def test_dry_food_and_spirits_are_opened_where_they_stand_and_stay_usable(
    larder: Pantry, line: str
) -> None:
    code = opened(larder, line)
    assert climate(larder, code) is Climate.PANTRY
    found = larder.judge(container(larder, code))
    assert found.usable
    assert found.discard_after is None


@pytest.mark.parametrize(
    "line", ["1 bag powdered milk", "1 tin powdered milk", "1 packet soup mix"]
)
def test_what_is_sold_as_a_powder_is_opened_where_it_stands_and_ends_with_its_months(
    larder: Pantry, line: str
) -> None:
    """Food storage data of 2018: milk powder three months open in a pantry, soup mix a year."""
    code = opened(larder, line)
    assert climate(larder, code) is Climate.PANTRY
    found = larder.judge(container(larder, code))
    assert found.usable
    assert found.discard_after is not None


@pytest.mark.parametrize("line", _WET)
def test_what_is_wet_in_its_pack_or_may_be_goes_into_the_cold(larder: Pantry, line: str) -> None:
    assert climate(larder, opened(larder, line)) is Climate.FRIDGE


@pytest.mark.parametrize(
    ("bought", "into"),
    [
        ("1 bag rice", "1 tin"), ("1 bag lentils", "1 jar"), ("1 bag dry beans", "1 tin"),
        ("1 bag coffee", "1 tin"), ("1 bag walnuts", "1 jar"), ("1 bag pasta", "1 tin"),
    ],
)  # fmt: skip
def test_a_household_packs_dry_food_into_any_vessel(larder: Pantry, bought: str, into: str) -> None:
    code = put_up(larder, read(larder, f"{bought}, bought in, larder")).code
    again = repack(larder, code, f"{into}, larder").code
    found = larder.judge(container(larder, again))
    assert (found.usable, found.discard_after) == (True, None)


@pytest.mark.parametrize("into", ["1 tub", "1 jar", "1 tin"])
def test_what_came_wet_out_of_a_tin_is_wet_in_any_vessel(larder: Pantry, into: str) -> None:
    code = put_up(larder, read(larder, "1 tin dry beans, bought in, larder")).code
    again = repack(larder, code, f"{into}, larder").code
    batch = next(one for one in larder.stock.batches.values() if one.code == again)
    assert not larder.judge(larder.containers_of(batch)[0]).usable  # it stands in the warm
