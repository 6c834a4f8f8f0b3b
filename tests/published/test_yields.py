"""Pounds of fresh crop a quart canned or a pint frozen, typed by hand under their publication."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Method, Trust
from pantry_tui.reference.yields import load_yields

CANNED, PRESSURE, FROZEN = Method.BOILING_WATER, Method.PRESSURE, Method.FROZEN

#: USDA Complete Guide to Home Canning, quantities (tabulated reprint), pounds a quart.
USDA = [
    ("asparagus", PRESSURE, 3.5), ("dry beans", PRESSURE, 0.75), ("okra", PRESSURE, 1.5),
    ("peas", PRESSURE, 4.5), ("peppers", PRESSURE, 2), ("potatoes", PRESSURE, 2.75),
    ("sweet potatoes", PRESSURE, 2.5), ("winter squash", PRESSURE, 2.25),
    ("tomato juice", CANNED, 3.25), ("crushed tomatoes", CANNED, 2.75),
    ("tomato sauce", CANNED, 5), ("tomatoes", CANNED, 3), ("pears", CANNED, 2.5),
    ("plums", CANNED, 2), ("apples", CANNED, 2.75), ("dill pickles", Method.VINEGAR_PICKLE, 2),
]  # fmt: skip

#: Michigan State University Extension, Preserving Food Safely (copies), pounds a quart.
MSU = [
    ("lima beans", PRESSURE, 4), ("beets", PRESSURE, 3), ("carrots", PRESSURE, 2.5),
    ("sweet corn", PRESSURE, 4.5), ("spinach", PRESSURE, 4), ("cherries", CANNED, 2.5),
    ("peaches", CANNED, 2.5), ("sauerkraut", Method.LACTIC, 2.8),
]  # fmt: skip

#: University of Wyoming Extension, Preserving Green Beans.
WYOMING = [("snap beans", PRESSURE, 2)]

#: Pounds a pint frozen, least and most: University of Georgia Extension, Weights and Processed
#: Yields; Michigan State University Extension 01701369 and E-1886; USDA Home and Garden Bulletin
#: 10 (from memory).
FROZEN_RANGE = [
    ("apples", 1.25, 1.5), ("blueberries", 0.75, 1), ("peaches", 1, 1.5), ("pears", 1, 1.5),
    ("strawberries", 1, 1), ("asparagus", 1, 1.5), ("beets", 1.25, 1.5), ("carrots", 1.25, 1.5),
    ("peas", 2, 2.5), ("sweet corn", 2, 2.5), ("lima beans", 2, 2.5), ("broccoli", 1, 1),
    ("spinach", 1, 1.5), ("zucchini", 1, 1.25), ("rhubarb", 0.67, 1),
]  # fmt: skip


@pytest.mark.parametrize(("food", "method", "pounds"), [*USDA, *MSU, *WYOMING])
def test_pounds_a_quart_are_as_published(food: str, method: Method, pounds: float) -> None:
    found = load_yields()[food, method]
    assert (found.unit, found.use) == ("quart", pounds)
    assert found.per_pint == pytest.approx(pounds / 2)


@pytest.mark.parametrize(("food", "least", "most"), FROZEN_RANGE)
def test_pounds_a_frozen_pint_lie_in_the_published_range(
    food: str, least: float, most: float
) -> None:
    found = load_yields()[food, FROZEN]
    assert (found.unit, found.least, found.most) == ("pint", least, most)
    assert least <= found.use <= most


def test_canner_loads_agree_with_pounds_a_quart() -> None:
    """Seven quarts: 14 lb of snap beans, 17.5 of peaches, 35 for a thin tomato sauce (USDA)."""
    for food, method, load in (
        ("snap beans", PRESSURE, 14),
        ("peaches", CANNED, 17.5),
        ("tomato sauce", CANNED, 35),
    ):
        assert load_yields()[food, method].use * 7 == pytest.approx(load, rel=0.05)


def test_dried_yields_are_estimates_from_memory() -> None:
    dried = [one for (_, method), one in load_yields().items() if method is Method.DRIED]
    assert len(dried) > 10
    assert all(one.weak and one.trust is Trust.MEMORY for one in dried)
    # Virginia and Ohio extension table: 12 lb of apples give 3 pints.
    assert load_yields()["apples", Method.DRIED].per_pint == 4
