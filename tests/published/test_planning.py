"""Planning charts: quarts a person from servings a week, weeks and cups, as printed.

Annual Preserving Plan, per person and for a family of five (reprint of an extension chart);
one-year canned-food supply on the USDA Daily Food Guide, family of four (reprint; weekly
frequencies marked "inferred" were not printed); canning-budget method, worked example of the
1940s (reprint). Three lines of the first chart do not agree with its own arithmetic (yellow
corn, jellies, preserves) and are left out; "occasional" lines have none.

The charts round, each line in its own way; the step to which a line is rounded stands beside it.
"""

from __future__ import annotations

from math import floor

import pytest

from pantry_tui.core.plan.outlook import quarts, to_put_up

UP, DOWN = "up", "down"

#: food, servings a week, weeks, cups a serving, printed amount, its unit in quarts, the step to
#: which the chart rounds (in that unit), where to a tie goes.
ROWS = [
    ("citrus fruit", 3, 30, 1, 22, 1, 1, DOWN),
    ("tomatoes", 4, 40, 1, 40, 1, 1, UP),
    ("tomato juice", 4, 40, 1, 40, 1, 1, UP),
    ("apples", 2, 15, 0.5, 4, 1, 1, UP),
    ("berries", 2 / 3, 40, 0.5, 3.5, 1, 0.5, UP),
    ("cherries", 2 / 3, 40, 0.5, 3.5, 1, 0.5, UP),
    ("fruit juices", 2, 30, 1, 15, 1, 1, UP),
    ("peaches", 2, 40, 0.5, 10, 1, 1, UP),
    ("pears", 0.5, 32, 0.5, 2, 1, 1, UP),
    ("plums", 0.5, 40, 0.5, 2.5, 1, 0.5, UP),
    ("asparagus", 0.5, 30, 0.5, 2, 1, 1, UP),
    ("green beans", 2, 36, 0.5, 9, 1, 1, UP),
    ("lima beans", 0.5, 36, 0.5, 2.25, 1, 0.25, UP),
    ("beets", 1, 30, 0.5, 4, 1, 1, UP),
    ("carrots", 2, 12, 0.5, 3, 1, 1, UP),
    ("greens", 2, 16, 0.5, 4, 1, 1, UP),
    ("peas", 1, 38, 0.25, 5, 0.5, 1, UP),
    ("sauerkraut", 0.5, 40, 0.5, 2.5, 1, 0.5, UP),
    ("citrus and tomatoes, inferred", 7, 36, 1, 63, 1, 1, UP),
    ("dark green and deep yellow vegetables, inferred", 4, 36, 0.5, 36, 0.5, 1, UP),
    ("meat, poultry, seafood", 4, 36, 0.5, 36, 0.5, 1, UP),
    ("soups", 2, 36, 1, 18, 1, 1, UP),
    ("tomatoes, three meals a week", 3, 34, 0.5, 12.75, 1, 0.25, UP),
]


def rounded(amount: float, step: float, tie: str) -> float:
    steps = amount / step
    whole = floor(steps + 0.5 + 1e-9)
    if tie == DOWN and abs(steps - floor(steps) - 0.5) < 1e-9:
        whole = floor(steps)
    return whole * step


@pytest.mark.parametrize(
    ("food", "servings", "weeks", "cups", "printed", "unit", "step", "tie"), ROWS
)
def test_a_planning_chart_row_comes_out_as_printed(
    food: str, servings: float, weeks: float, cups: float, printed: float, unit: float,
    step: float, tie: str,
) -> None:  # fmt: skip
    assert rounded(quarts(servings, weeks, 1, cups) / unit, step, tie) == printed, food


def test_other_fruit_and_vegetables_are_a_pint_off_by_the_inferred_frequency() -> None:
    """The chart prints 152 pints a person and 608 for four, but no frequency: 17 a week, the
    nearest whole number, gives 153."""
    assert quarts(17, 36, 1, 0.5) * 2 == 153


#: food, printed a person, people, printed for the family. The first chart multiplies what it has
#: rounded, and rounds half quarts again, now up and now down.
FAMILIES = [
    ("citrus fruit", 22, 5, 110), ("tomatoes", 40, 5, 200), ("tomato juice", 40, 5, 200),
    ("apples", 4, 5, 20), ("berries", 3.5, 5, 17), ("cherries", 3.5, 5, 17),
    ("fruit juices", 15, 5, 75), ("peaches", 10, 5, 50), ("pears", 2, 5, 10),
    ("plums", 2.5, 5, 12), ("asparagus", 2, 5, 10), ("green beans", 9, 5, 45),
    ("lima beans", 2.25, 5, 11), ("beets", 4, 5, 20), ("carrots", 3, 5, 15), ("greens", 4, 5, 20),
    ("peas, pints", 5, 5, 25), ("sauerkraut", 2.5, 5, 13),
    ("citrus and tomatoes", 63, 4, 252), ("dark green and deep yellow, pints", 36, 4, 144),
    ("other fruit and vegetables, pints", 152, 4, 608), ("meat, pints", 36, 4, 144),
    ("soups", 18, 4, 72), ("tomatoes, three meals", 12.75, 4, 51),
]  # fmt: skip


@pytest.mark.parametrize(("food", "each", "people", "printed"), FAMILIES)
def test_a_family_is_so_many_times_a_person(
    food: str, each: float, people: int, printed: float
) -> None:
    assert printed in (floor(each * people), floor(each * people + 0.5)), food


@pytest.mark.parametrize(
    ("servings", "weeks", "cups", "people", "printed"),
    [(4, 40, 1, 5, 200), (2, 30, 1, 5, 75), (2, 40, 0.5, 5, 50), (2, 36, 0.5, 5, 45),
     (2, 12, 0.5, 5, 15), (2, 16, 0.5, 5, 20), (7, 36, 1, 4, 252), (2, 36, 1, 4, 72),
     (3, 34, 0.5, 4, 51)],
)  # fmt: skip
def test_whole_quarts_for_a_family_are_what_is_put_up(
    servings: float, weeks: float, cups: float, people: int, printed: float
) -> None:
    assert quarts(servings, weeks, people, cups) == printed
    assert to_put_up(servings, weeks, people, 4 / cups) == printed


@pytest.mark.parametrize(("jar", "servings"), [("quart", 8), ("pint", 4), ("half-pint", 2)])
def test_a_jar_holds_so_many_half_cups(jar: str, servings: int) -> None:
    """Four cups to a quart (US customary measure): eight half-cup servings."""
    cups = {"quart": 4, "pint": 2, "half-pint": 1}[jar]
    assert to_put_up(servings, 1, 1, cups / 0.5) == 1
    assert to_put_up(servings + 1, 1, 1, cups / 0.5) == 2
