"""What stands in the log, and in which order, whoever wrote it and whatever their clock said."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.log.events import Did, Event, made_at, new_id, standing, undone
from pantry_tui.core.log.payloads import (
    BY_NAME,
    Count,
    Missing,
    Open,
    Payload,
    Reading,
    Redo,
    Undo,
    Use,
)

NOON = datetime(2026, 11, 25, 12, 0, 0, 123_000, tzinfo=UTC)
#: What a clock may say from one act to the next: on, standing still, set back by a day.
clocks = st.lists(st.integers(-86_400_000, 86_400_000) | st.just(0), max_size=30)


def event(number: int, payload: Payload) -> Event:
    return Event(f"{number:026}", NOON.isoformat(), NOON.date(), payload)


def used(number: int) -> Event:
    return event(number, Use("b", (f"b.{number}",)))


@given(clocks)
def test_what_is_booked_later_sorts_later_whatever_the_clock_says(steps: list[int]) -> None:
    ids, now = [new_id(NOON)], NOON
    for step in steps:
        now += timedelta(milliseconds=step)
        ids.append(new_id(now, ids[-1]))
    assert ids == sorted(ids)
    assert len(set(ids)) == len(ids)


def test_ids_of_two_machines_never_meet_and_sort_by_their_moment() -> None:
    here = [new_id(NOON + timedelta(milliseconds=n)) for n in range(50)]
    there = [new_id(NOON + timedelta(milliseconds=n)) for n in range(50)]
    both = sorted(here + there)
    assert len(set(both)) == 100
    assert [set(both[n : n + 2]) for n in range(0, 100, 2)] == [
        set(pair) for pair in zip(here, there, strict=True)
    ]


def test_ids_count_within_one_moment_and_begin_anew_in_the_next() -> None:
    first = new_id(NOON)
    second = new_id(NOON, first)
    third = new_id(NOON, second)
    later = new_id(NOON + timedelta(milliseconds=1), third)
    assert [one[13:18] for one in (first, second, third, later)] == [
        "00000", "00001", "00002", "00000",
    ]  # fmt: skip
    assert {one[:13] for one in (first, second, third)} == {f"{NOON.timestamp() * 1000:013.0f}"}
    assert {len(one) for one in (first, second, third, later)} == {26}


def test_an_id_tells_what_the_clock_said_and_whether_it_said_so_itself() -> None:
    last = new_id(NOON)
    assert made_at(last) == (int(NOON.timestamp() * 1000), True)
    assert made_at(new_id(NOON - timedelta(days=400), last)) == (made_at(last)[0], False)


def test_a_clock_set_back_counts_on_from_the_last_act() -> None:
    last = new_id(NOON, new_id(NOON))
    back = new_id(NOON - timedelta(days=400), last)
    assert back[:18] == f"{last[:13]}00002"
    busy = f"{last[:13]}12345{last[18:]}"  # so many acts since, under one moment
    assert new_id(NOON - timedelta(days=400), busy)[:18] == f"{last[:13]}12346"


def test_an_undo_takes_back_what_it_names_and_a_redo_brings_it_again() -> None:
    log = [used(1), used(2), event(3, Undo((f"{1:026}", f"{2:026}")))]
    assert undone(log) == {f"{1:026}", f"{2:026}"}
    assert standing(log) == []
    log.append(event(4, Redo(f"{3:026}", (f"{2:026}",))))
    assert undone(log) == {f"{1:026}"}
    assert standing(log) == [used(2)]
    log.append(event(5, Undo((f"{2:026}",))))
    assert standing(log) == []


@given(st.permutations([used(1), event(2, Undo((f"{1:026}",))), used(3), used(4)]))
def test_logs_put_together_in_any_order_say_the_same(log: list[Event]) -> None:
    assert standing(log) == [used(3), used(4)]


@given(st.permutations(
    [used(1), event(2, Undo((f"{1:026}",))), event(3, Redo(f"{2:026}", (f"{1:026}",)))]
))  # fmt: skip
def test_the_later_of_undo_and_redo_counts_in_whatever_order_they_are_read(
    log: list[Event],
) -> None:
    assert standing(log) == [used(1)]
    assert undone(log) == set()


def test_an_event_names_what_it_is_about() -> None:
    opened = event(1, Open("b", ("b.1", "b.2"), "fridge"))
    assert (opened.did, opened.batch, opened.containers) == (Did.OPEN, "b", ("b.1", "b.2"))
    lost = event(2, Missing("c", ("c.1",)))
    assert (lost.did, lost.batch, lost.containers) == (Did.MISSING, "c", ("c.1",))
    for of_places in (Reading("fridge", 38.0), Count("fridge")):
        assert (event(3, of_places).batch, event(3, of_places).containers) == ("", ())


@pytest.mark.parametrize("name", list(BY_NAME))
def test_every_payload_has_a_word_of_its_own(name: str) -> None:
    assert Did(name).value == name
    assert len(Did) == len(BY_NAME)


def test_an_event_knows_its_hour_only_where_it_was_said() -> None:
    assert used(1).at is None
    assert used(1).together == ""
    assert used(1).day == date(2026, 11, 25)
