"""Days, spans, amounts, temperatures and lid codes, as people write them."""

from __future__ import annotations

from datetime import date, timedelta
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import read_altitude, read_amount, read_temperature
from pantry_tui.core.dates import add, read_date, read_span, say
from pantry_tui.core.lidcode import next_code, normal_code
from pantry_tui.errors import BadInput

WED = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("start", "n", "unit", "end"),
    [
        (date(2026, 8, 31), 6, "months", date(2027, 2, 28)),
        (date(2027, 8, 31), 6, "months", date(2028, 2, 29)),
        (date(2028, 2, 29), 1, "years", date(2029, 2, 28)),
        (date(2028, 2, 29), 12, "months", date(2029, 2, 28)),
        (date(2026, 1, 31), 1, "months", date(2026, 2, 28)),
        (date(2026, 1, 31), 2, "months", date(2026, 3, 31)),
        (date(2026, 12, 30), 2, "months", date(2027, 2, 28)),
        (date(2026, 2, 28), 1, "days", date(2026, 3, 1)),
        (date(2028, 2, 28), 1, "days", date(2028, 2, 29)),
        (date(2026, 11, 25), 36, "hours", date(2026, 11, 26)),
        (date(2026, 11, 25), 0.5, "weeks", date(2026, 11, 28)),
        (date(2026, 11, 25), 0, "days", date(2026, 11, 25)),
    ],
)
def test_a_life_is_added_by_calendar(start: date, n: float, unit: str, end: date) -> None:
    assert add(start, n, unit) == end


@given(st.dates(date(1990, 1, 1), date(2090, 1, 1)), st.integers(0, 60))
def test_more_months_never_end_earlier(day: date, months: int) -> None:
    assert add(day, months, "months") <= add(day, months + 1, "months")
    assert add(day, months, "months") <= add(day + timedelta(days=1), months, "months")


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("today", WED), ("yesterday", date(2026, 11, 24)), ("3 days ago", date(2026, 11, 22)),
        ("2 weeks ago", date(2026, 11, 11)), ("1 month ago", date(2026, 10, 25)),
        ("2026-08-31", date(2026, 8, 31)), ("31 aug 2026", date(2026, 8, 31)),
        ("Aug 31, 2026", date(2026, 8, 31)), ("4th july 2026", date(2026, 7, 4)),
        ("31 dec", date(2025, 12, 31)), ("aug 2026", date(2026, 8, 1)),
        ("wednesday", date(2026, 11, 18)), ("last sunday", date(2026, 11, 22)),
        ("+10d", date(2026, 12, 5)),
    ],
)  # fmt: skip
def test_a_day_is_read_as_people_say_it(said: str, day: date) -> None:
    assert read_date(said, WED) == day


@pytest.mark.parametrize(
    "said", ["", "3", "1.5", "10", "2027", "04/27", "1 jar", "may contain nuts", "2026-02-30",
             "30 feb 2026", "20261125", "1800-01-01", "soon", "٣ days ago", "99999 days ago"]
)  # fmt: skip
def test_what_is_no_day_is_refused(said: str) -> None:
    with pytest.raises(BadInput):
        read_date(said, WED)


def test_a_day_that_can_be_read_two_ways_names_both() -> None:
    with pytest.raises(BadInput, match=r"1 Feb 2026.*2 Jan 2026"):
        read_date("01/02/2026", WED)


@given(st.text(max_size=30))
def test_no_text_breaks_the_readers(text: str) -> None:
    for read in (
        lambda t: read_date(t, WED),
        read_amount,
        read_span,
        read_temperature,
        read_altitude,
    ):
        try:
            read(text)
        except BadInput as error:
            assert error.message


@given(st.dates(date(1990, 1, 1), date(2090, 1, 1)))
def test_a_day_as_said_reads_back(day: date) -> None:
    assert read_date(say(day).split(" ", 1)[1], WED) == day


@pytest.mark.parametrize(
    ("said", "number", "unit"),
    [
        ("2", Fraction(2), ""), ("2 lb", Fraction(2), "lb"), ("1½ lb", Fraction(3, 2), "lb"),
        ("1 1/2 cups", Fraction(3, 2), "cup"), ("1.5kg", Fraction(3, 2), "kg"),
        ("½ pint", Fraction(1, 2), "pint"), ("12 fl oz", Fraction(12), "fl oz"),
    ],
)  # fmt: skip
def test_an_amount_is_exact(said: str, number: Fraction, unit: str) -> None:
    assert read_amount(said) == (number, unit)


@pytest.mark.parametrize("said", ["1,5 kg", "-3 g", "nan g", "1e400 g", "3 pinches", "0", "1/0 lb"])
def test_an_impossible_amount_is_refused(said: str) -> None:
    with pytest.raises(BadInput):
        read_amount(said)


def test_temperatures_and_altitudes_carry_their_units() -> None:
    assert read_temperature("55F") == 55
    assert read_temperature("-18 °C") == pytest.approx(-0.4)
    assert read_temperature("13", "C") == pytest.approx(55.4)
    assert read_altitude("1800ft") == 1800
    assert read_altitude("550 m") == 1804
    assert read_span("2w") == 14
    for bad in ("900F", "warm", "5K"):
        with pytest.raises(BadInput):
            read_temperature(bad)


def test_lid_codes_are_short_unlike_one_another_and_never_given_twice() -> None:
    given_out: set[str] = set()
    for _ in range(600):
        code = next_code(given_out)
        assert code not in given_out
        assert code[0].isdigit()
        assert not set(code) & set("01ILOSBGQUVZ8")
        assert len(code) <= 4
        given_out.add(code)
    assert normal_code(" 7 c ") == "7C"


@pytest.mark.parametrize("word", ["fridge", "monkfish", "sunflower", "3 marrows", "2 mayo"])
def test_a_word_that_only_begins_like_a_day_or_month_is_no_date(word: str) -> None:
    with pytest.raises(BadInput):
        read_date(word, date(2026, 11, 25))


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("fri", date(2026, 11, 20)), ("Friday", date(2026, 11, 20)),
        ("last thurs", date(2026, 11, 19)), ("weds", date(2026, 11, 18)),
        ("12 sept", date(2026, 9, 12)), ("3 March", date(2026, 3, 3)),
    ],
)  # fmt: skip
def test_days_and_months_are_known_by_their_usual_short_forms(said: str, day: date) -> None:
    assert read_date(said, date(2026, 11, 25)) == day
