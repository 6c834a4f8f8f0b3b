"""Numbers that no kitchen reaches are refused by name, where a batch is put up and where its record
is written into, by its method."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.possible import impossible, with_degrees
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places
from pantry_tui.services.stock.correct import correct

CROCK = "1 crock sauerkraut, lactic ferment, larder"
BAGS = "2 bags strawberries, frozen, icebox"
JAM = "4 half-pint jars strawberry jam, larder"


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        (CROCK, "temperature=300F"),
        (CROCK, "temperature=0F"),
        (CROCK, "temperature=70-300F"),
        (CROCK, "temperature=150C"),
        (CROCK, "ph=0"),
        (CROCK, "ph=14"),
        (CROCK, "ph=10.5"),
        ("1 crock snap beans, salted, larder", "temperature=400F"),
        (BAGS, "temperature=300F"),
        (BAGS, "temperature=50F"),
        (BAGS, "temperature=10C"),
        ("10 lb carrots, cellar-stored, larder", "temperature=300F"),
        (JAM, "headspace=40in"),
        (JAM, "headspace=1m"),
    ],
)
def test_what_cannot_be_is_refused_by_its_name_wherever_it_is_typed(
    larder: Pantry, line: str, typed: str
) -> None:
    places.add(larder, "icebox", "freezer")
    key, _, value = typed.partition("=")
    with pytest.raises(BadInput, match=key):
        put_up(larder, read(larder, f"{line}, {typed}"))
    code = put_up(larder, read(larder, line)).code
    with pytest.raises(BadInput, match=key):
        correct(larder, code, process=[(key, value)])


@pytest.mark.parametrize(
    ("method", "typed", "fine"),
    [
        (Method.LACTIC, "110F", True),  # yogurt
        (Method.LACTIC, "68-72F", True),
        (Method.LACTIC, "20-22C", True),
        (Method.LACTIC, "unknown", True),
        (Method.HOT_SMOKED, "165F", True),
        (Method.FROZEN, "-18C", True),
        (Method.FROZEN, "1F", False),
        (Method.PRESSURE, "240F", True),
    ],
)
def test_what_a_kitchen_reaches_may_be_written(method: Method, typed: str, fine: bool) -> None:
    assert (not impossible(method, [("temperature", typed)])) is fine


def test_degrees_without_a_letter_are_those_of_the_household() -> None:
    pairs = [("temperature", "20"), ("ph", "3.9"), ("temperature", "68F")]
    assert dict(with_degrees(pairs[:2], "C")) == {"temperature": "20 C", "ph": "3.9"}
    assert with_degrees(pairs, "F") == tuple(pairs)
    height = [("altitude", "1500")]
    assert dict(with_degrees(height, "C")) == {"altitude": "1500m"}
    assert dict(with_degrees(height, "F")) == {"altitude": "1500ft"}
    assert with_degrees(pairs[2:], "C") == (("temperature", "68F"),)
