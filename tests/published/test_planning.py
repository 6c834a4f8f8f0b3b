"""Planning charts: quarts a person from servings a week, weeks and cups, as printed.

Annual Preserving Plan, per person (reprint of an extension chart); One-year canned-food supply on
the USDA Daily Food Guide (reprint); budget method worked example (reprint). Printed figures are
rounded to half a quart or pint, so that is how closely they are held.
"""

from __future__ import annotations

import pytest

from pantry_tui.core.outlook import quarts

ROWS = [
    # food, servings a week, weeks, cups a serving, printed quarts a person
    ("citrus fruit", 3, 30, 1, 22),
    ("tomatoes", 4, 40, 1, 40),
    ("tomato juice", 4, 40, 1, 40),
    ("apples", 2, 15, 0.5, 4),
    ("berries", 2 / 3, 40, 0.5, 3.5),
    ("cherries", 2 / 3, 40, 0.5, 3.5),
    ("fruit juices", 2, 30, 1, 15),
    ("peaches", 2, 40, 0.5, 10),
    ("pears", 0.5, 32, 0.5, 2),
    ("plums", 0.5, 40, 0.5, 2.5),
    ("asparagus", 0.5, 30, 0.5, 2),
    ("green beans", 2, 36, 0.5, 9),
    ("lima beans", 0.5, 36, 0.5, 2.25),
    ("beets", 1, 30, 0.5, 4),
    ("carrots", 2, 12, 0.5, 3),
    ("greens", 2, 16, 0.5, 4),
    ("peas, 5 pints", 1, 38, 0.25, 2.5),
    ("sauerkraut", 0.5, 40, 0.5, 2.5),
    ("citrus and tomatoes", 7, 36, 1, 63),
    ("dark green and deep yellow vegetables, 36 pints", 4, 36, 0.5, 18),
    ("other fruit and vegetables, 152 pints", 17, 36, 0.5, 76),
    ("meat, poultry, seafood, 36 pints", 4, 36, 0.5, 18),
    ("soups", 2, 36, 1, 18),
    ("tomatoes, three meals a week", 3, 34, 0.5, 12.75),
]


@pytest.mark.parametrize(("food", "servings", "weeks", "cups", "printed"), ROWS)
def test_a_planning_chart_row_comes_out_as_printed(
    food: str, servings: float, weeks: float, cups: float, printed: float
) -> None:
    assert quarts(servings, weeks, 1, cups) == pytest.approx(printed, abs=0.5)


@pytest.mark.parametrize(
    ("servings", "weeks", "cups", "people", "printed"),
    [(4, 40, 1, 5, 200), (2, 30, 1, 5, 75), (2, 40, 0.5, 5, 50), (2, 36, 0.5, 5, 45),
     (7, 36, 1, 4, 252), (2, 36, 1, 4, 72), (3, 34, 0.5, 4, 51)],
)  # fmt: skip
def test_a_family_needs_so_many_times_more(
    servings: float, weeks: float, cups: float, people: int, printed: float
) -> None:
    assert quarts(servings, weeks, people, cups) == printed
