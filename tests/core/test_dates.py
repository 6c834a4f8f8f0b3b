"""Days and spans as people say them; a life is added by calendar."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import read_altitude, read_amount, read_temperature
from pantry_tui.core.dates import (
    add,
    iso,
    read_coming,
    read_date,
    read_lately,
    read_span,
    say,
    span,
)
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


@pytest.mark.parametrize("read", [read_date, read_coming, read_lately])
def test_a_date_on_another_day_of_the_week_is_asked_about(read: Callable[..., date]) -> None:
    with pytest.raises(BadInput, match=r"Wed 2 Dec 2026 is no Thursday"):
        read("thu 2 dec 2026", WED)
    with pytest.raises(BadInput, match="is no "):
        read("fri 2 dec", WED)  # neither the last nor the next


@given(st.text(max_size=30))
def test_no_text_breaks_the_readers(text: str) -> None:
    for read in (
        lambda t: read_date(t, WED),
        lambda t: read_coming(t, WED),
        read_amount,
        read_span,
        read_temperature,
        read_altitude,
    ):
        said = "read"
        try:
            read(text)
        except BadInput as error:
            said = error.message
        assert said, "refused without a word"


@given(st.dates(date(1990, 1, 1), date(2090, 1, 1)))
def test_a_day_as_said_reads_back(day: date) -> None:
    assert read_date(say(day), WED) == read_date(say(day).split(" ", 1)[1], WED) == day


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


@pytest.mark.parametrize(
    ("n", "unit", "end"),
    [
        (47, "hours", date(2026, 11, 26)), (48, "hours", date(2026, 11, 27)),
        (2, "weeks", date(2026, 12, 9)), (1.5, "months", date(2027, 1, 9)),
        (0.5, "months", date(2026, 12, 10)), (0.1, "months", date(2026, 11, 28)),
        (1.5, "years", date(2028, 5, 25)), (0.25, "years", date(2027, 2, 25)),
        (2.9, "days", date(2026, 11, 27)),
    ],
)  # fmt: skip
def test_a_part_of_a_month_is_of_thirty_days_and_a_part_of_a_day_is_dropped(
    n: float, unit: str, end: date
) -> None:
    assert add(WED, n, unit) == end


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("today", WED), ("tomorrow", date(2026, 11, 26)), ("friday", date(2026, 11, 27)),
        ("wednesday", WED), ("next tue", date(2026, 12, 1)),
        ("next wednesday", date(2026, 12, 2)), ("next friday", date(2026, 11, 27)),
        ("24 dec", date(2026, 12, 24)),
        ("25 nov", WED), ("24 nov", date(2027, 11, 24)), ("1 jun", date(2027, 6, 1)),
        ("24 nov 2026", date(2026, 11, 24)), ("2026-11-24", date(2026, 11, 24)),
        ("3 days ago", date(2026, 11, 22)), ("+10d", date(2026, 12, 5)),
        ("1 jan", date(2027, 1, 1)), ("Tomorrow", date(2026, 11, 26)),
        ("Wed 2 Dec 2026", date(2026, 12, 2)), ("wed 2 dec", date(2026, 12, 2)),
        ("Wed, 2 Dec", date(2026, 12, 2)), ("wed 2026-12-02", date(2026, 12, 2)),
        ("the 2nd", date(2026, 12, 2)), ("25th", WED), ("this friday", date(2026, 11, 27)),
        ("friday evening", date(2026, 11, 27)), ("tonight", WED), ("on fri", date(2026, 11, 27)),
        ("day after tomorrow", date(2026, 11, 27)), ("boxing day", date(2026, 12, 26)),
    ],
)  # fmt: skip
def test_a_day_that_lies_ahead(said: str, day: date) -> None:
    assert read_coming(said, WED) == day


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("monday", date(2026, 11, 23)), ("tuesday", date(2026, 11, 24)),
        ("thursday", date(2026, 11, 19)), ("12 months ago", date(2025, 11, 25)),
        ("1 year ago", date(2025, 11, 25)), ("1 week ago", date(2026, 11, 18)),
        ("0 days ago", WED), ("1200 days ago", date(2023, 8, 13)), ("+3w", date(2026, 12, 16)),
        ("+1m", date(2026, 12, 25)), ("+1y", date(2027, 11, 25)), ("25 nov", WED),
        ("26 nov", date(2025, 11, 26)), ("1st sept", date(2026, 9, 1)),
        ("22nd nov", date(2026, 11, 22)), ("nov 3rd", date(2026, 11, 3)),
        ("1900-01-01", date(1900, 1, 1)), ("2100-12-31", date(2100, 12, 31)),
        ("december 2025", date(2025, 12, 1)), ("wed 25 nov", WED),
        ("Tue 24 Nov 2026", date(2026, 11, 24)),
        ("sunday evening", date(2026, 11, 22)), ("last night", date(2026, 11, 24)),
        ("this morning", WED), ("boxing day", date(2025, 12, 26)),
        ("on monday", date(2026, 11, 23)),
    ],
)  # fmt: skip
def test_a_day_that_lies_behind(said: str, day: date) -> None:
    assert read_date(said, WED) == day


@pytest.mark.parametrize(
    ("said", "day"),
    [("nov 2026", date(2026, 11, 30)), ("feb 2028", date(2028, 2, 29)),
     ("dec 2026", date(2026, 12, 31)), ("3 nov 2026", date(2026, 11, 3))],
)  # fmt: skip
def test_a_printed_month_is_its_last_day(said: str, day: date) -> None:
    assert read_date(said, WED, strict_first=False) == day


@pytest.mark.parametrize(
    ("said", "why"),
    [
        ("1201 days ago", "too long ago"), ("1899-12-31", "too far away"),
        ("2101-01-01", "too far away"), ("2026-02-30", "no day of the calendar"),
        ("31 nov", "no day of the calendar"), ("03/04/26", "3 Apr 2026 or"),
        ("13/04/2026", "could be Mon 13 Apr 2026: "), ("04.13.2026", "could be Mon 13 Apr 2026: "),
        ("13/13/2026", "is no date"), ("5/5/2026", "could be Tue 5 May 2026: "),
        ("nov nov", "is no date"), ("3 4 nov", "is no date"), ("nov 2026 2027", "is no date"),
        ("3 nov 2026 x", "is no date"), ("3 nov 126", "is no date"), ("x nov", "is no date"),
        ("nov", "is no date"), ("+1000d", "is no date"), ("mo", "is no date"),
    ],
)  # fmt: skip
def test_what_is_refused_says_why(said: str, why: str) -> None:
    with pytest.raises(BadInput, match=why) as refused:
        read_date(said, WED)
    assert str(refused.value).endswith(".")


@pytest.mark.parametrize(
    ("said", "days"),
    [("30d", 30), ("30", 30), ("2w", 14), ("2 weeks", 14), ("1m", 30), ("3 months", 90),
     (" 9999 Days ", 9999), ("0d", 0), ("1y", 365), ("2 years", 730), ("1 day", 1)],
)  # fmt: skip
def test_a_span_in_days(said: str, days: int) -> None:
    assert read_span(said) == days


@pytest.mark.parametrize("said", ["", "d", "1 fortnight", "2dozen", "1.5w", "10000d", "-3d"])
def test_what_is_no_span_is_refused(said: str) -> None:
    with pytest.raises(BadInput, match="is no span of time"):
        read_span(said)


def test_days_and_spans_are_said_in_english_whatever_the_machine_speaks() -> None:
    assert say(WED) == "Wed 25 Nov 2026"
    assert say(date(2027, 1, 3)) == "Sun 3 Jan 2027"
    assert [span(1, "days"), span(3, "months"), span(0.5, "years")] == [
        "1 day", "3 months", "0.5 years",
    ]  # fmt: skip
    assert iso("2027-03-31") == date(2027, 3, 31)
    with pytest.raises(ValueError, match="Invalid isoformat"):
        iso("31 mar")


def test_a_weekday_said_on_that_day_is_today_where_what_is_over_is_meant() -> None:
    wednesday = date(2026, 11, 25)
    for said, day in (
        ("wednesday", wednesday),
        ("Wed", wednesday),
        ("last wednesday", wednesday - timedelta(days=7)),
        ("tuesday", wednesday - timedelta(days=1)),
        ("thursday", wednesday - timedelta(days=6)),
        ("yesterday", wednesday - timedelta(days=1)),
        ("today", wednesday),
        ("2026-11-20", date(2026, 11, 20)),
    ):
        assert read_lately(said, wednesday) == day, said


@given(st.dates(date(1900, 1, 1), date(2100, 12, 31)), st.integers(-1200, 1200))
def test_months_run_as_dateutil_has_them(day: date, months: int) -> None:
    assert add(day, months, "months") == day + relativedelta(months=months)


@pytest.mark.parametrize("months", [12 * 7974, -12 * 2026])
def test_a_year_that_no_calendar_has_is_no_day(months: int) -> None:
    with pytest.raises(ValueError, match="year"):
        add(WED, months, "months")
