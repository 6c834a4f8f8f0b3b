"""An hour that is told is one of the clock of its own day, also where that was changed since."""

from __future__ import annotations

import time
from collections.abc import Iterator
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from pantry_tui.core.log.moments import when
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.moments import offset
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import act, correct, moving, places, view
from pantry_tui.services.stock.places_ever import begins_at
from pantry_tui.services.stock.seen import At

BACK, ON = date(2026, 10, 25), date(2026, 3, 29)  # 03:00 was 02:00 again; 02:00 was 03:00


@pytest.fixture
def p(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Pantry]:
    monkeypatch.setenv("TZ", "Europe/Berlin")
    time.tzset()
    try:
        create(tmp_path / "home.db")
        with open_pantry(tmp_path / "home.db", Clock(date(2026, 10, 24), 8 * 60)) as here:
            for name, climate in (("fridge", "fridge"), ("kitchen", "room")):
                places.add(here, name, climate)
            reading = putup.from_flags(
                here, food="beef stew", method="cooked meal", place="fridge", made="2026-10-24"
            )
            putup.put_up(here, reading)
        with open_pantry(tmp_path / "home.db", Clock(BACK, 12 * 60)) as here:
            yield here
    finally:
        monkeypatch.undo()
        time.tzset()


def _moved(p: Pantry, out: At, back: At) -> Verdict:
    code = p.stock.batches[next(iter(p.stock.batches))].code
    moving.move(p, code, "kitchen", at=out)
    moving.move(p, code, "fridge", at=back)
    (row,) = view.due(p)
    return row.verdict


def test_an_hour_and_three_quarters_over_the_change_is_nearly_three(p: Pantry) -> None:
    assert _moved(p, At(BACK, 90), At(BACK, 195)) is Verdict.DISCARD


def test_the_same_by_one_clock_is_within_the_two_hours(p: Pantry) -> None:
    assert _moved(p, At(BACK, 195), At(BACK, 300)) is not Verdict.DISCARD


def test_an_hour_that_came_twice_is_asked_about_and_an_offset_says_which(p: Pantry) -> None:
    with pytest.raises(Unclear) as asked:
        _moved(p, At(BACK, 150), At(BACK, 195))
    assert asked.value.choices == ("02:30+02:00", "02:30+01:00")
    typed, zone = offset(f"2026-10-25 {asked.value.choices[0]}")
    assert (typed, zone) == ("2026-10-25 02:30", 120)
    event = p.book(p.events[-1].payload, day=BACK, at=150, zone=zone)
    assert datetime.fromisoformat(event.recorded).tzinfo is not None
    assert when(event).first - begins_at(p, At(BACK, 195)) == -105


@pytest.mark.parametrize(("day", "minute", "zone"), [(ON, 150, None), (BACK, 60, 0)])
def test_an_hour_that_never_was_is_none(p: Pantry, day: date, minute: int, zone: int) -> None:
    with pytest.raises(BadInput):
        p.book(p.events[-1].payload, day=day, at=minute, zone=zone)


@pytest.mark.parametrize("day", [date(2026, 7, 1), date(2026, 10, 24), BACK])
@pytest.mark.parametrize("minute", [0, 12 * 60, 23 * 60 + 59])
def test_a_told_minute_is_that_minute_in_greenwich(p: Pantry, day: date, minute: int) -> None:
    if (day, minute) > (BACK, 720):
        day = date(2026, 10, 24)
    there = datetime(day.year, day.month, day.day, minute // 60, minute % 60).astimezone(UTC)
    event = p.book(p.events[0].payload, day=day, at=minute)
    in_minutes = there.toordinal() * 1440 + there.hour * 60 + there.minute
    assert when(event).first == in_minutes == begins_at(p, At(day, minute))
    assert when(event).day == day


def test_a_day_before_the_change_begins_by_its_own_clock(p: Pantry) -> None:
    code = p.stock.batches[next(iter(p.stock.batches))].code
    act.open_(p, code, at=At(date(2026, 10, 24)))
    opened = when(p.events[-1])
    # On that Saturday some clocks are put back in the morning, and others at its end.
    assert opened.first == begins_at(p, At(opened.day)) - 60
    assert opened.last - opened.first == 1439 + 120
    assert opened.zone == 120


@pytest.fixture
def noon(tmp_path: Path) -> Iterator[Pantry]:
    """Chicken that was booked at noon, no hour of it told; it is 15:00."""
    create(tmp_path / "home.db")
    with open_pantry(tmp_path / "home.db", Clock(BACK, 12 * 60)) as here:
        for name, climate in (("fridge", "fridge"), ("kitchen", "room"), ("freezer", "freezer")):
            places.add(here, name, climate)
        putup.put_up(here, putup.read(here, "2 lb chicken breast, fresh, fridge"))
    with open_pantry(tmp_path / "home.db", Clock(BACK, 15 * 60)) as here:
        yield here


def test_an_hour_before_it_was_put_up_is_refused_and_says_what_to_do(noon: Pantry) -> None:
    """Two and a half hours in the kitchen would be none if both were counted from noon on."""
    (batch,) = noon.stock.batches.values()
    before = len(noon.events)
    early = At(BACK, 8 * 60)
    for do in (
        lambda: moving.move(noon, batch.code, "kitchen", at=early),
        lambda: act.use(noon, batch.code, "all", at=early),
        lambda: act.discard(noon, batch.code, "all", why="other", at=early),
        lambda: putup.put_up(
            noon, putup.read(noon, f"1 pack chicken breast, frozen, freezer, from {batch.code}"),
            at=early,
        ),
    ):  # fmt: skip
        with pytest.raises(Refused, match=r"at 12:00, and this is said of 08:00: give an hour"):
            do()
    assert len(noon.events) == before
    moving.move(noon, batch.code, "kitchen", at=At(BACK, 12 * 60))
    moving.move(noon, batch.code, "fridge", at=At(BACK, 12 * 60 + 150))
    (row,) = view.due(noon)
    assert row.verdict is Verdict.DISCARD


def test_of_the_day_before_it_was_made_any_hour_is_told(noon: Pantry) -> None:
    (batch,) = noon.stock.batches.values()
    correct.correct(noon, batch.code, made="2026-10-24")
    moving.move(noon, batch.code, "kitchen", at=At(BACK, 8 * 60))
    moving.move(noon, batch.code, "fridge", at=At(BACK, 10 * 60 + 30))
    (row,) = view.due(noon)
    assert row.verdict is Verdict.DISCARD
    with pytest.raises(BadInput, match="after something that was done to it already"):
        correct.correct(noon, batch.code, made="2026-10-25")  # noon again, and they count as noon
