"""What a jar takes at the least, where no row of the tables says it: of acid, and of time where a
food has no process of its own. The figures are typed from the publications."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.process import doubt
from pantry_tui.core.words import Method
from pantry_tui.reference.process import load_not_recommended
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork.checked import processes_of


def problems(method: Method, food: str, size: str, ft: int = 0, **record: str) -> str:
    facts = load_tables().facts(food)
    assert facts is not None, food
    rows, advice = processes_of(method, facts), load_not_recommended()
    found = doubt(method, facts, size, record, ft, rows, advice)
    return " ".join(found.problems) if found is not None else ""


#: USDA AIB 539, guide 3 (read): bottled lemon juice, citric acid, or 5 % vinegar in a jar of
#: tomatoes.
ACID = """
    pint  | 1 tbsp bottled lemon juice   | 2 tsp bottled lemon juice
    quart | 2 tbsp bottled lemon juice   | 1 tbsp bottled lemon juice
    pint  | 1/4 tsp citric acid          | 1/8 tsp citric acid
    quart | 1/2 tsp citric acid          | 1/4 tsp citric acid
    quart | 4 tbsp vinegar 5%            | 3 tbsp vinegar 5%
    quart | 4 tbsp vinegar 5%            | 4 tbsp vinegar 4%
"""


@pytest.mark.parametrize("line", ACID.strip().splitlines())
def test_the_acid_of_a_jar_of_tomatoes(line: str) -> None:
    jar, enough, less = (part.strip() for part in line.split("|"))
    for method in (Method.BOILING_WATER, Method.PRESSURE):
        assert problems(method, "tomatoes", f"{jar} jars", acid=enough) == ""
        assert "too" in problems(method, "tomatoes", f"{jar} jars", acid=less)


#: USDA HG 56 (jams, in half-pints and pints) and USDA AIB 539 of 1994, guide 6 (relishes and most
#: pickles, in no more than a quart), both read in copies: minutes up to 1,000 ft, to 6,000 ft, and
#: above.
SHORTEST = """
    jam            | pepper jelly   | pint  | quart       | 5, 10, 15
    vinegar pickle | tomato chutney | quart | half-gallon | 10, 15, 20
"""


@pytest.mark.parametrize("line", SHORTEST.strip().splitlines())
def test_what_has_no_process_of_its_own_takes_the_fewest_minutes_that_any_has(line: str) -> None:
    method, food, jar, larger, times = (part.strip() for part in line.split("|"))
    way, edges = Method(method), ((0, 1000), (1001, 6000), (6001, 9000))
    for minutes, band in zip(map(int, times.split(",")), edges, strict=True):
        for ft in band:
            assert problems(way, food, f"{jar} jars", ft, minutes=str(minutes)) == ""
            assert "fewer than" in problems(way, food, f"{jar} jars", ft, minutes=f"{minutes - 1}")
    assert f"larger than a {jar}" in problems(way, food, f"{larger} jars")
