"""The pace and the alarms in words, against sentences written by hand."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.outlook import ahead
from pantry_tui.core.plan.pace import Portion
from pantry_tui.core.plan.pace_words import (
    SERVINGS,
    Unit,
    a_week,
    beyond,
    containers,
    hoarding,
    pace_in_words,
    pressing,
    rationing,
    too_much,
)

TODAY = date(2026, 11, 25)
JARS = Unit(4.0, "jars")


def by(weeks: int) -> date:
    return TODAY + timedelta(days=7 * weeks - 1)


def test_two_jars_a_week_or_so_many_pass_their_best() -> None:
    # Ten jars due in 5 weeks, the harvest in 20.
    parts = [Portion(40, by(5))]
    found = ahead(parts, by(20), TODAY)
    said = pace_in_words("peaches", parts, found, JARS, by(20), TODAY, "pass their best")
    assert said == "Peaches: two jars a week, or some pass their best on Tue 29 Dec 2026."
    assert (
        pressing(found.pace, JARS) == "two jars a week, or some pass their date on Tue 29 Dec 2026"
    )


def test_where_nothing_hurries_the_pace_says_how_long_it_lasts() -> None:
    parts = [Portion(20, None)]
    found = ahead(parts, by(10), TODAY)
    said = pace_in_words("plums", parts, found, JARS, by(10), TODAY)
    assert said == "Plums: one jar every two weeks lasts to February; nothing hurries."
    one = [Portion(4, None)]
    said = pace_in_words("plums", one, ahead(one, by(10), TODAY), JARS, by(10), TODAY)
    assert said == "Plums: one jar must last to February; nothing hurries."
    none = pace_in_words("plums", [], ahead([], by(10), TODAY), JARS, by(10), TODAY)
    assert none == "Plums: none left; the next harvest is in February."


@pytest.mark.parametrize(
    ("rate", "said"),
    [(8, "two jars a week"), (4, "one jar a week"), (9, "2.2 jars a week"),
     (2, "one jar every two weeks"), (60, "15 jars a week"), (0, "no jars")],
)  # fmt: skip
def test_a_rate_in_jars(rate: float, said: str) -> None:
    assert a_week(rate, JARS) == said


_WORDS = "two three four five six seven eight nine ten eleven twelve"
_NUMBERS = {word: number for number, word in enumerate(_WORDS.split(" "), start=2)}


def weeks_each(said: str) -> float:
    """ "one jar every three weeks" -> 3."""
    if said == "one jar a week":
        return 1
    number = said.removeprefix("one jar every ").removesuffix(" weeks")
    return float(_NUMBERS.get(number, 0) or number)


@given(st.floats(0.05, 3.79))
def test_rounding_never_falls_short_of_the_need_nor_outruns_the_stock(rate: float) -> None:
    """Below a jar a week the rate is rounded to whole weeks, each time to the safe side."""
    assert 4 / weeks_each(a_week(rate, JARS)) >= rate * 0.9
    assert 4 / weeks_each(a_week(rate, JARS, at_most=True)) <= rate * 1.1


def test_a_jar_or_two_is_no_alarm() -> None:
    two = ahead([Portion(8, by(2))], by(40), TODAY, eaten=0)
    three = ahead([Portion(12, by(2))], by(40), TODAY, eaten=0)
    assert hoarding("peaches", two, JARS, by(40), TODAY) == ""
    assert "three jars pass their date" in hoarding("peaches", three, JARS, by(40), TODAY)
    left = ahead([Portion(48, None)], by(10), TODAY, eaten=1)
    assert "about ten jars left over" in hoarding("plums", left, JARS, by(10), TODAY)
    few = ahead([Portion(8, None)], by(40), TODAY, eaten=4)
    assert rationing("plums", few, JARS, by(40), TODAY) == ""
    many = ahead([Portion(40, None)], by(40), TODAY, eaten=4)
    assert rationing("plums", many, JARS, by(40), TODAY).startswith("Plums: gone about")
    nearly = ahead([Portion(40, None)], by(11), TODAY, eaten=4)
    assert rationing("plums", nearly, JARS, by(11), TODAY) == "", "a jar short is no alarm"


def test_what_must_be_eaten_fast_is_not_to_be_rationed() -> None:
    found = ahead([Portion(40, by(4))], by(40), TODAY, eaten=10)
    assert found.runs_out is not None
    assert rationing("plums", found, JARS, by(40), TODAY) == ""


def test_containers_are_counted_in_the_words_of_the_batch() -> None:
    assert containers(1, "half-pint jars") == "1 half-pint jar"
    assert containers(3, "quart bag") == "3 quart bags"
    assert containers(2, "1 lb packs") == "2 x 1 lb packs"
    assert containers(2, "box of 12") == "2 boxes of 12"
    assert containers(0, "") == "0 containers"
    assert SERVINGS.some(1) == "one serving"


def test_what_is_lost_is_one_figure_wherever_it_is_told() -> None:
    parts = [Portion(40, by(5)), Portion(40, by(9))]
    found = ahead(parts, by(20), TODAY, eaten=2)
    told = f"as you eat it now about {JARS.some(found.lost)} pass their date."
    assert hoarding("peaches", found, JARS, by(20), TODAY).endswith(told)
    assert pace_in_words("peaches", parts, found, JARS, by(20), TODAY).endswith(told)
    over = too_much(found, 3, JARS)
    assert f"give about {JARS.some(found.lost)} away" in over
    one = ahead([Portion(8, by(1))], by(20), TODAY, eaten=4)
    assert "give about one jar away, or keep it in another way, or it" in too_much(one, 4, JARS)


def test_a_pace_that_nobody_can_keep_says_how_much_to_give_away() -> None:
    # 200 servings in two weeks, and this household eats 14 a week.
    parts = [Portion(200, by(2))]
    found = ahead(parts, by(40), TODAY, ceiling=14)
    said = pace_in_words("beef", parts, found, JARS, by(40), TODAY, most=14)
    assert said == (
        "Beef: more falls due than this household eats (at most 3.5 jars a week): give about 43 "
        "jars away, or keep them in another way, or they pass their date, the first of them by Tue "
        "8 Dec 2026."
    )
    over = too_much(found, 14, JARS)
    assert hoarding("beef", found, JARS, by(40), TODAY, over) == said
    assert "none of it" in beyond(found.pace, 0, JARS)
    assert beyond(found.pace, 100, JARS) == too_much(found, 100, JARS) == "", "so much can be eaten"
