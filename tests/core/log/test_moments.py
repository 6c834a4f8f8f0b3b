"""When a thing happened, from what a person said and when they said it."""

from __future__ import annotations

from datetime import date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.log.moments import moment, some_time, when
from pantry_tui.core.model import DAY_MIN, When
from tests.core.log.book import MADE, Book, day, moved

START = MADE.toordinal() * DAY_MIN  # midnight of that day by a clock in Greenwich


def told(on: int, at: str | None, booked: str) -> When:
    return when(Book().says(moved("fridge"), on, at, booked).events[0])


def minute(day_: int, hour: int, minute_: int = 0) -> int:
    return START + day_ * DAY_MIN + hour * 60 + minute_


def test_what_is_booked_on_its_own_day_happened_when_it_was_booked() -> None:
    found = told(0, None, "2026-03-01T14:35:50+00:00")
    assert found == When(minute(0, 14, 35), minute(0, 14, 35), MADE)
    assert found.known


def test_what_is_booked_for_another_day_may_have_happened_at_any_hour_of_it() -> None:
    found = told(0, None, "2026-03-03T14:35:00+00:00")
    assert (found.first, found.last) == (minute(0, 0), minute(1, 0) - 1)
    assert found.day == MADE
    assert not found.known


def test_an_hour_that_was_said_counts_and_not_that_of_the_booking() -> None:
    same, late = (told(0, "08:10", f"2026-03-0{n}T14:35:00+00:00") for n in (1, 3))
    assert same == late == When(minute(0, 8, 10), minute(0, 8, 10), MADE)


def test_midnight_is_an_hour_and_the_first_minute_of_its_day() -> None:
    assert told(0, "00:00", "2026-03-03T14:35:00+00:00").first == minute(0, 0)
    assert told(0, "00:01", "2026-03-03T14:35:00+00:00").first == minute(0, 0, 1)


def test_things_told_of_a_day_by_name_come_at_its_end_in_the_order_they_were_told() -> None:
    """`at` -1, -2 ...: after all that is told of that day by the hour, never on the next day."""

    def nth(n: int) -> When:
        event = Book().says(moved("fridge"), 0, None, "2026-03-03T09:00:00+00:00").events[0]
        return when(type(event)(event.id, event.recorded, event.day, event.payload, -n))

    assert nth(1).first == minute(0, 23, 0)
    assert nth(2).first == minute(0, 23, 1)
    assert nth(60).first == nth(61).first == nth(500).first == minute(0, 23, 59)
    assert all(nth(n).known for n in (1, 60, 500))


@given(st.integers(-14, 14), st.integers(0, 23), st.integers(0, 59))
def test_the_day_is_the_local_one_and_the_minute_that_of_one_clock_for_all(
    ahead: int, hour: int, minute_: int
) -> None:
    offset = f"{'-' if ahead < 0 else '+'}{abs(ahead):02}:00"
    found = told(0, None, f"2026-03-01T{hour:02}:{minute_:02}:00{offset}")
    assert found.day == MADE
    assert found.first == minute(0, hour, minute_) - 60 * ahead
    assert found.zone == 60 * ahead
    assert found.day_of(found.first) == MADE
    assert moment(f"2026-03-01T{hour:02}:{minute_:02}{offset}") == found


def test_the_hour_that_comes_twice_in_autumn_comes_in_its_order() -> None:
    summer = moment("2026-10-25T02:30+02:00")
    winter = moment("2026-10-25T02:10+01:00")
    assert winter.first - summer.first == 40


def test_a_log_without_offsets_is_read_by_the_clock_it_was_written_by() -> None:
    assert told(0, None, "2026-03-01T14:35:00").first == minute(0, 14, 35)
    assert moment("2026-03-01T14:35").zone == 0


def test_any_hour_of_a_day_is_all_of_its_minutes() -> None:
    like = datetime.fromisoformat("2026-06-01T10:00:00+05:30")
    found = some_time(MADE, like)
    assert found.last - found.first == DAY_MIN - 1
    assert found.first == minute(0, 0) - 330
    assert {found.day_of(found.first), found.day_of(found.last)} == {MADE}
    assert found.day_of(found.last + 1) == MADE + timedelta(days=1)


def at_of(text: str) -> int:
    return moment(text).first


@pytest.mark.parametrize(
    ("day_", "start", "noon", "end"),
    [
        ("2026-10-25", "+02:00", "+01:00", "+01:00"),  # Berlin, 25 hours
        ("2026-11-01", "-04:00", "-05:00", "-05:00"),  # New York, 25 hours
        ("2027-04-04", "+11:00", "+10:00", "+10:00"),  # Sydney, 25 hours
        ("2027-03-28", "+01:00", "+02:00", "+02:00"),  # Berlin, 23 hours
        ("2026-06-03", "+02:00", "+02:00", "+02:00"),
    ],
)
def test_any_hour_of_a_day_is_each_hour_that_the_clock_showed_on_it(
    day_: str, start: str, noon: str, end: str
) -> None:
    """Clocks by the law of each place (European directive 2000/84/EC, 15 USC 260a; from memory)."""
    found = some_time(date.fromisoformat(day_), datetime.fromisoformat(f"{day_}T12:00{noon}"))
    assert found.first <= at_of(f"{day_}T00:00{start}")
    assert found.last >= at_of(f"{day_}T23:59{end}")
    assert found.last - found.first < DAY_MIN + 60


@pytest.mark.parametrize(
    ("made", "then", "told_on", "now"),
    [
        ("2026-10-01", "+02:00", "2026-11-25", "+01:00"),
        ("2026-10-20", "-04:00", "2026-11-25", "-05:00"),
        ("2026-02-10", "+01:00", "2026-06-01", "+02:00"),
        ("2025-12-24", "-05:00", "2026-07-04", "-04:00"),
        ("2019-10-20", "+02:00", "2026-11-25", "+01:00"),
        ("2026-11-20", "+01:00", "2026-11-25", "+01:00"),
    ],
)
def test_a_day_told_by_the_clock_of_another_season_is_whole_all_the_same(
    made: str, then: str, told_on: str, now: str
) -> None:
    like = datetime.fromisoformat(f"{told_on}T18:00{now}")
    found = some_time(date.fromisoformat(made), like, date.fromisoformat(told_on))
    assert found.first <= at_of(f"{made}T00:00{then}")
    assert found.last >= at_of(f"{made}T23:59{then}")


def test_no_hour_is_added_where_no_clock_was_changed_between() -> None:
    like = datetime.fromisoformat("2026-02-20T18:00:00+01:00")
    found = some_time(date(2026, 1, 5), like, date(2026, 2, 20))
    assert found.last - found.first == DAY_MIN - 1


def test_the_day_of_a_minute_before_all_calendars_is_the_first_one() -> None:
    assert When(0, 0, date.min).day_of(-5000) == date.min


def test_what_is_no_moment_is_refused() -> None:
    with pytest.raises(ValueError, match="Invalid isoformat"):
        moment("yesterday evening")
    assert day(1) == date(2026, 3, 2)
