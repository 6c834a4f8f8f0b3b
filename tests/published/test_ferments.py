"""When a ferment may be called ready, and what salt alone keeps, against the publications."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from pantry_tui.core.words import Climate, Method, State
from tests.core.keeping.told import Told

#: publication -> food | where it stands, °F | the shortest days that it takes there.
TYPED = {
    "Michigan State University Extension, sauerkraut (1997)": """
        sauerkraut | kitchen 70 | 21
        sauerkraut | kitchen 75 | 21
        sauerkraut | larder 60 | 35
        sauerkraut | larder 65 | 35
    """,
    "USDA AIB 539 (2015), fermented dill pickles": """
        dill pickles | kitchen 70 | 21
        dill pickles | kitchen 75 | 21
        dill pickles | vault 55 | 35
        dill pickles | larder 65 | 35
    """,
    "Colorado State University Extension, kimchi": """
        kimchi | kitchen 70 | 1
        kimchi | fridge 38 | 3
    """,
    "UC Master Food Preservers, Ferment: vegetables take two to seven weeks": """
        carrots | kitchen 70 | 14
        beets | kitchen 70 | 14
    """,
}
#: Where it does not ferment: MSU (kraut below 60 °F), USDA AIB 539 (pickles above 80 °F, below 55
#: °F no time is published).
NEVER = """
    sauerkraut | larder 59
    sauerkraut | fridge 38
    sauerkraut | freezer 0
    dill pickles | vault 54
    dill pickles | kitchen 81
    kimchi | freezer 0
"""
#: Per cent of all together: ferments hold 2 to 5 (Colorado State University Extension); from a
#: fifth on salt alone keeps vegetables (Cruess 1918, one part to four).
SALT = [(2.5, True), (5, True), (6, False), (19, False), (20, True), (25, True)]
CLIMATE = {
    "kitchen": Climate.ROOM,
    "larder": Climate.PANTRY,
    "vault": Climate.CELLAR,
    "fridge": Climate.FRIDGE,
    "freezer": Climate.FREEZER,
}


def lines(block: str) -> Iterator[list[str]]:
    for line in block.strip().splitlines():
        yield [part.strip() for part in line.split("|")]


def called_ready(food: str, where: str, days: int) -> bool:
    """Whether it is offered after so many days there, in the fridge since."""
    place, warm = where.split()
    told = Told(food, Method.LACTIC, place, State.IN_PROGRESS, 10)
    told.at(-1).hold(place, CLIMATE[place], float(warm))
    told.at(days, 12).ready().at(days, 13).move("second fridge")
    return told.judged(days + 1).usable


@pytest.mark.parametrize(
    ("publication", "food", "where", "days"),
    [(name, *line) for name, block in TYPED.items() for line in lines(block)],
)
def test_it_is_ready_after_the_published_days_and_no_sooner(
    publication: str, food: str, where: str, days: str
) -> None:
    assert called_ready(food, where, int(days)), publication
    assert not called_ready(food, where, int(days) - 1), publication


@pytest.mark.parametrize(("food", "where"), list(lines(NEVER)))
def test_where_nobody_publishes_that_it_ferments_no_day_counts(food: str, where: str) -> None:
    assert not called_ready(food, where, 120)


@pytest.mark.parametrize(("percent", "keeps"), SALT)
def test_salt_ferments_or_keeps_by_the_published_shares(percent: float, keeps: bool) -> None:
    record = {"salt": f"{percent:g}%"}
    told = Told("snap beans", Method.SALTED, "kitchen", State.IN_PROGRESS, 10, **record)
    told.at(30, 12).ready().at(30, 13).move("fridge")
    assert told.judged(31).usable is keeps


@pytest.mark.parametrize(("ph", "done"), [("3.4", True), ("4.6", True), ("4.7", False)])
def test_a_ph_of_4_6_is_the_line(ph: str, done: bool) -> None:
    """USDA AIB 539 and US FDA 21 CFR 114: at or below 4.6 the spores of botulism do not grow."""
    assert Told("carrots", Method.LACTIC, "fridge", ph=ph).judged(1).usable is done
