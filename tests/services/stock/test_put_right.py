"""A reading or a power cut that was booked wrongly is put right by its id."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.log.events import Did
from pantry_tui.core.model import Read
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.services.stock import cut_hours, outage, places, put_right, readings, undo
from pantry_tui.services.stock.put_right import Hours
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At
from pantry_tui.services.stock.view import due
from pantry_tui.store import log

DAY = date(2026, 11, 20)


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    """A ham that came into the fridge at eight; it is three in the afternoon."""
    store = tmp_path / "store.db"
    create(store, people=2, clock=Clock(DAY, 480))
    with open_pantry(store, Clock(DAY, 480)) as morning:
        places.add(morning, "fridge", "fridge")
        putup.put_up(morning, putup.read(morning, "2 lb ham, bought, fridge"))
    with open_pantry(store, Clock(DAY, 15 * 60)) as afternoon:
        yield afternoon


def ham(p: Pantry) -> DueRow:
    (found,) = due(p)
    return found


def newest(p: Pantry) -> str:
    return log.select(p.store.db, "")[-1].id


def reading(p: Pantry) -> Read:
    return next(one for one in p.find_place("fridge").facts if isinstance(one, Read))


def cut(p: Pantry, start: str, end: str) -> str:
    place = p.find_place("fridge")
    first, last = cut_hours.times(start, end, p.today)
    outage.book(p, place, outage.cut_of(p, place, first, last))
    return newest(p)


def read_warm(p: Pantry) -> str:
    readings.read_typed(p, "fridge", "60F", at=At(DAY, 12 * 60), since="3h")
    return newest(p)


def test_a_reading_is_put_right_and_says_what_that_makes_milder(p: Pantry) -> None:
    sound = ham(p)
    wrong = read_warm(p)
    assert ham(p).verdict is Verdict.DISCARD
    done = put_right.reading(p, wrong, "36F")
    assert done.message == "Put right: measured 60 F in fridge before, measured 36 F in fridge now."
    assert "is sound" in done.warnings[0]
    assert "until now discard" in done.warnings[0]
    assert "Never taste" in done.warnings[-1]
    assert (ham(p).verdict, ham(p).discard_after) == (sound.verdict, sound.discard_after)
    assert len(p.find_place("fridge").facts) == 2, "what it holds, and one reading"


def test_the_old_word_counts_again_where_the_new_one_is_taken_back(p: Pantry) -> None:
    wrong = read_warm(p)
    discarded = ham(p)
    put_right.reading(p, wrong, "36F")
    right = ham(p)
    undo.undo(p)
    assert ham(p) == discarded
    undo.redo(p)
    assert ham(p) == right
    assert verify(p.path, p.today).ok


def test_what_is_not_said_of_a_reading_stays(p: Pantry) -> None:
    wrong = read_warm(p)
    readings.read_typed(p, "fridge", "38F", at=At(DAY, 12 * 60 + 10))
    put_right.reading(p, wrong, since="60m")
    first = newest(p)
    fact = reading(p)
    assert (fact.temp_f, fact.since) == (60.0, 60)
    assert (fact.when.first + fact.when.zone) % 1440 == 12 * 60
    assert ham(p).verdict is not Verdict.DISCARD, "an hour alone"
    put_right.reading(p, first, at=At(DAY, 9 * 60))
    fact = reading(p)
    assert (fact.when.first + fact.when.zone) % 1440 == 9 * 60
    assert (fact.temp_f, fact.since) == (60.0, 60)


def test_a_reading_of_an_hour_that_nobody_knows_stays_so(p: Pantry) -> None:
    readings.read_typed(p, "fridge", "38F", at=At(DAY.replace(day=19)))
    put_right.reading(p, newest(p), "39F")
    fact = reading(p)
    assert fact.when.last - fact.when.first == 1439


def test_what_is_put_right_already_is_put_right_by_what_stands_there_now(p: Pantry) -> None:
    wrong = read_warm(p)
    put_right.reading(p, wrong, "50F")
    second = newest(p)
    with pytest.raises(Refused, match=f"correct {second}"):
        put_right.reading(p, wrong, "36F")
    put_right.reading(p, second, "36F")
    assert ham(p).verdict is Verdict.SOUND
    undo.undo(p)
    assert ham(p).verdict is Verdict.DISCARD


def test_a_power_cut_is_put_right(p: Pantry) -> None:
    sound = ham(p)
    long = cut(p, "09:30", "14:30")
    assert ham(p).verdict is Verdict.DISCARD
    done = put_right.power_cut(p, long, Hours(end="10:00"))
    assert done.message.startswith("Put right: power cut of 5 h in fridge before, power cut of 0.5")
    assert ham(p) == sound
    put_right.power_cut(p, newest(p), Hours(start="unknown", end="13:00"))
    assert ham(p).verdict is Verdict.DISCARD
    put_right.power_cut(p, newest(p), Hours(max_temp="39F"))
    assert ham(p) == sound, "it was read cold all the time"
    assert verify(p.path, p.today).ok


def test_what_was_seen_at_another_end_is_said_again(p: Pantry) -> None:
    place = p.find_place("fridge")
    first, last = cut_hours.times("12:00", "12:30", p.today)
    outage.book(p, place, outage.cut_of(p, place, first, last, ice=True, max_temp_f=39.0))
    wrong, before = newest(p), ham(p)
    with pytest.raises(BadInput, match="--ice or --no-ice; --max-temp"):
        put_right.power_cut(p, wrong, Hours(start="09:00"))
    with pytest.raises(BadInput, match="--max-temp"):
        put_right.power_cut(p, wrong, Hours(start="09:00", ice=True))
    assert ham(p) == before
    put_right.power_cut(p, wrong, Hours(start="09:00", end="14:30", ice=False, max_temp="unknown"))
    assert ham(p).verdict is Verdict.DISCARD


def test_only_a_reading_or_a_power_cut_has_such_words(p: Pantry) -> None:
    (put_up,) = (one.id for one in log.select(p.store.db, "") if one.did is Did.PUT_UP)
    warm, off = read_warm(p), cut(p, "13:00", "13:30")
    with pytest.raises(BadInput, match="by its lid code"):
        put_right.reading(p, put_up, "36F")
    with pytest.raises(BadInput, match="of a power cut"):
        put_right.reading(p, off, "36F")
    with pytest.raises(BadInput, match="of a reading"):
        put_right.power_cut(p, warm, Hours(end="10:00"))
    wrong: list[Callable[[], object]] = [
        lambda: put_right.reading(p, warm),
        lambda: put_right.power_cut(p, off, Hours()),
        lambda: put_right.reading(p, "2A", "36F"),
        lambda: put_right.reading(p, warm, humidity=130),
        lambda: put_right.reading(p, warm, since="90 days"),
        lambda: put_right.reading(p, warm, at=At(DAY.replace(day=30))),
    ]
    for do in wrong:
        with pytest.raises(BadInput):
            do()
    events = log.select(p.store.db, "")
    assert not any(getattr(one.payload, "instead_of", "") for one in events)


def test_what_is_put_right_hides_no_warmer_reading_of_the_same_minute(p: Pantry) -> None:
    readings.read(p, "fridge", 50.0, since=300)
    first = newest(p)
    readings.read(p, "fridge", 45.0, since=10)
    done = put_right.reading(p, first, "38F")
    last = p.find_place("fridge").reading
    assert last is not None
    assert last.temp_f == 45.0
    assert readings.notices(p)
    assert any("45 F was measured there in the same minute" in one for one in done.warnings)


def test_nor_does_what_is_taken_back(p: Pantry) -> None:
    readings.read(p, "fridge", 50.0)
    undo.undo(p)
    done = readings.read(p, "fridge", 45.0, since=10)
    assert ham(p).verdict is Verdict.EAT_SOON
    assert not any("same minute" in one for one in done.warnings)


def test_a_warm_reading_names_the_cold_one_since_which_it_counts(p: Pantry) -> None:
    """Not the one that was put right in the same minute, which may have come after it."""
    readings.read(p, "fridge", 38.0, at=At(DAY, 600))
    readings.read(p, "fridge", 50.0)
    put_right.reading(p, newest(p), "38F")
    done = readings.read(p, "fridge", 45.0)
    assert "it counts since the reading of Fri 20 Nov 2026 10:00" in done.warnings[0]
    assert "38 F was measured there in the same minute" in done.warnings[1]
    assert ham(p).verdict is Verdict.DISCARD


def test_of_the_same_temperature_in_the_same_minute_nothing_is_said(p: Pantry) -> None:
    readings.read(p, "fridge", 38.0)
    done = readings.read(p, "fridge", 38.0)
    assert not any("same minute" in one for one in done.warnings)
