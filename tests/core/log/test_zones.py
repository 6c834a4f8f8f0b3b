"""The clocks of the world: an hour that is told means what the clock of that place showed, and a
day without an hour is never shorter than it was there."""

from __future__ import annotations

import time
from datetime import UTC, date, datetime, timedelta
from datetime import time as clock_time
from zoneinfo import ZoneInfo, available_timezones

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from pantry_tui.core.log.moments import some_time
from pantry_tui.core.model import DAY_MIN
from pantry_tui.services.clock import Clock, local_times
from tests.examples import many

#: By another calendar (before and after Ramadan), by two hours at once, or once for all.
UNRULY = {
    "Africa/Casablanca", "Africa/El_Aaiun", "Antarctica/Troll", "Asia/Almaty", "Asia/Qostanay",
}  # fmt: skip
ZONES = sorted(available_timezones() - UNRULY - {"localtime", "Factory"})
YEARS = st.dates(date(2025, 1, 1), date(2031, 12, 30))
_BEGAN = datetime(1, 1, 1, tzinfo=UTC)


def minute(moment: datetime) -> int:
    return DAY_MIN + int((moment - _BEGAN).total_seconds()) // 60


def changes(name: str) -> list[date]:
    """The days of 2026 to 2030 at whose end another offset holds than at their begin."""
    zone, found, day = ZoneInfo(name), [], date(2026, 1, 1)
    while day < date(2030, 12, 31):
        ends = (datetime(d.year, d.month, d.day, tzinfo=zone) for d in (day, day + timedelta(1)))
        if len({one.utcoffset() for one in ends}) > 1:
            found.append(day)
        day += timedelta(days=1)
    return found


@pytest.mark.parametrize(
    "name",
    [
        "Africa/Cairo", "Asia/Beirut", "America/Santiago", "Pacific/Easter", "Europe/Berlin",
        "America/New_York", "America/Havana", "Asia/Jerusalem", "Asia/Gaza", "America/Nuuk",
        "Australia/Lord_Howe", "Pacific/Auckland", "Pacific/Chatham", "Asia/Kolkata",
    ],
)  # fmt: skip
def test_a_day_without_an_hour_is_as_long_as_it_was_there(name: str) -> None:
    zone = ZoneInfo(name)
    days = {day + timedelta(n) for day in changes(name) for n in (-1, 0, 1)}
    for day in days or {date(2026, 6, 1)}:
        for told in (day, day + timedelta(1), day + timedelta(3)):
            noon = datetime(told.year, told.month, told.day, 12, tzinfo=zone)
            span = some_time(day, noon, told)
            begin = datetime(day.year, day.month, day.day, tzinfo=zone).astimezone(UTC)
            for n in range(-8, 26 * 4):
                moment = begin + timedelta(minutes=15 * n)
                if moment.astimezone(zone).date() == day:
                    assert span.first <= minute(moment) <= span.last, (day, told, moment)


def told_there(name: str, day: date, told: int) -> None:
    """Hold what an hour is taken for, in that zone, against the table of zones."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("TZ", name)
        time.tzset()
        try:
            zone = ZoneInfo(name)
            then = datetime.combine(day, clock_time()) + timedelta(minutes=told)
            real = {
                moment
                for fold in (0, 1)
                if (moment := then.replace(tzinfo=zone, fold=fold).astimezone(UTC))
                .astimezone(zone)
                .replace(tzinfo=None)
                == then
            }
            found = Clock(day, told).told(day, told)
            assert {one.astimezone(UTC) for one in found} == real
            first, last = local_times(then)
            assert first <= last
            assert all(first <= one <= last for one in found)
            now = Clock(day, told).now
            assert min(map(minute, real), default=now.first) <= now.first
            assert now.last <= minute(last.astimezone(UTC))
        finally:
            patch.undo()
            time.tzset()


@given(st.sampled_from(ZONES), YEARS, st.integers(0, DAY_MIN - 1))
@settings(max_examples=many(150), deadline=None)
def test_a_told_hour_is_every_moment_at_which_that_clock_showed_it(
    name: str, day: date, told: int
) -> None:
    told_there(name, day, told)


@given(st.sampled_from(ZONES), st.data())
@settings(max_examples=many(60), deadline=None)
def test_the_same_about_a_change(name: str, data: st.DataObject) -> None:
    days = changes(name)
    assume(days)
    day = data.draw(st.sampled_from(days))
    for told in (0, 30, 90, 150, 23 * 60 + 30):
        told_there(name, day, told)
