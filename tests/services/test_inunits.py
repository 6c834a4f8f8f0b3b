"""What was drawn of metric vessels is told in pints and pounds where a household uses those."""

from __future__ import annotations

import pytest

from pantry_tui.services.inunits import Units
from tests.twin import metric


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("Used 0.5 l of 2A/1 kraut; 4.5 l left in it.", "Used 1 pint of 2A/1 kraut; 4 3/4 quart"),
        ("Gave away 250 g of 4A/1 beef; 250 g left in it.", "Gave away 9 oz of 4A/1 beef; 9 oz"),
        ("2A/1 held 0.9 l, and 1 l is more: undo it.", "2A/1 held 2 pint, and 1 quart is more"),
        ("took 1 l of 2A/1; 0.9 l left in it", "took 1 quart of 2A/1; 2 pint left in it"),
    ],
)
def test_a_us_household_reads_what_was_drawn_in_its_own_measures(said: str, told: str) -> None:
    shown = Units(metric=False).text(said)
    assert shown.startswith(told)
    assert metric(shown) == []


def test_what_was_typed_of_a_vessel_stays_as_it_was_typed() -> None:
    said = "Put up 6 of 500 g packs, 2 of 3C in a 5 l crock."
    assert Units(metric=False).text(said) == said
    assert Units(metric=True).text("0.5 l of 2A/1; 4.5 l left in it.") == (
        "500 ml of 2A/1; 4.5 l left in it."
    )
