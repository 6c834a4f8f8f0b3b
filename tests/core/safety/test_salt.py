"""How much salt a record says, as a share of all together.

Grams of a spoon are those of data/figures.csv: table salt 6 g a teaspoon, of coarse salt as light
as it comes 2.8 g; an ounce is 28.35 g and a pound 453.6 g.
"""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.salt import HEAVY_PERCENT, MOST_PERCENT, read_salt


@pytest.mark.parametrize(
    ("typed", "percent"),
    [
        ("2.5%", 2.5), ("2,5 %", 2.5), ("25%", 25.0), ("2 to 3 %", 2.0), ("3% or 2%", 2.0),
        ("two percent", 2.0), ("1/2 %", 0.5), ("1 1/2 %", 1.5),
        ("½%", 0.5), ("1½%", 1.5), ("2 ½ %", 2.5), ("2⅜ %", 2.375), ("1⁄2 %", 0.5),
        # Of two weights: 20 g are 2.0 % of 1,020 g.
        ("20 g to 1 kg", 2.0), ("20g per kg", 2.0), ("250 g per kg", 20.0), ("1 lb to 4 lb", 20.0),
        ("1 lb per 4 pounds", 20.0), ("2 oz to 5 lb", 2.4), ("1 oz to 16 oz", 5.9),
        ("2 ounces to 80 oz", 2.4), ("1 lb to 1 kg", 31.2), ("one pound to ten pounds", 9.1),
        # Of spoons: three tablespoons are 54 g to 2,268 g.
        ("3 tbsp to 5 lb", 2.3), ("3 tablespoons to 5 lb", 2.3), ("9 tsp to 5 lb", 2.3),
        ("9 teaspoons to 5 lb", 2.3), ("1 cup to 5 lb", 11.4), ("1 tsp to 1 oz", 17.5),
        ("1 g to 1 g", 50.0), ("cup per lb", 39.2), ("2 cups to 5 lb", 20.5),
        # Of coarse salt as light as it comes.
        ("9 tsp kosher to 5 lb", 1.1),
        ("3 tbsp coarse to 5 lb", 1.1), ("1 cup kosher to 5 lb", 5.6),
    ],
)  # fmt: skip
def test_the_share_that_is_salt(typed: str, percent: float) -> None:
    assert read_salt(typed) == percent
    assert read_salt(typed.upper()) == percent


@pytest.mark.parametrize(
    ("typed", "percent"),
    [
        # The smaller of two weights is the salt, whichever is said first: nobody salts one pound
        # of beans with forty.
        ("1 kg to 25 g", 2.4), ("4 lb to 1 lb", 20.0),
        # Nobody writes a thousandth of a gram; a kilogram has its decimals.
        ("25 g to 1,000 g", 2.4), ("25 g per 1.000 g", 2.4),
        ("50 g to 2,5 kg", 2.0), ("50 g to 2.500 kg", 2.0), ("0,500 g to 10 g", 4.8),
    ],
)  # fmt: skip
def test_no_way_to_write_two_weights_makes_more_salt_of_them(typed: str, percent: float) -> None:
    assert read_salt(typed) == percent


@pytest.mark.parametrize(
    "typed",
    [
        "", "unknown", "3 tbsp", "20 g", "3 tbsp and 1 tsp", "1 lb to 2 cups", "2 lb, 1 lb, 1 lb",
        "1 lb to 0 lb", "1/4 cup to 5 lb", "6% brine", "5% brine", "2.5% of the water",
        "25% of the water", "10% per litre",
        "20 g per 1 l water", "20 g to 1 l and 1 kg", "3 tbsp per quart and 1 lb",
        "20 g per 500 ml and 1 kg", "6% in 1 pint", "3 oz in liters of 4 lb",
    ],
)  # fmt: skip
def test_what_says_no_share_of_the_food(typed: str) -> None:
    assert read_salt(typed) is None


def test_where_it_ferments_and_where_salt_alone_keeps_it() -> None:
    """Kimchi holds 2 to 5 % (Colorado State University Extension); one part to four keeps
    vegetables without fermenting (Cruess 1918, a reprint)."""
    assert MOST_PERCENT == 5
    assert read_salt("1 lb to 4 lb") == HEAVY_PERCENT
