"""What a place is, held and was read at, from all that was said of it."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.log.fold_place import fold_place, learnt, path_of
from pantry_tui.core.log.moments import moment
from pantry_tui.core.model import DAY_MIN, EVER, Cut, Held, Place, Read
from pantry_tui.core.words import Climate
from tests.core.log.book import MADE, Book, day, moved

START = MADE.toordinal() * DAY_MIN


def cellar(**more: object) -> said.PlaceAdded:
    return said.PlaceAdded("p", "cellar", Climate.CELLAR, **more)  # type: ignore[arg-type]


def change(**what: object) -> said.PlaceChanged:
    return said.PlaceChanged("p", **what)  # type: ignore[arg-type]


def held(book: Book) -> list[tuple[int, Climate, float]]:
    """(days after `MADE`, climate, °F) of all that the place was meant to hold; -1: ever."""
    facts = [one for one in book.place().facts if isinstance(one, Held)]
    return [
        (-1 if one.when == EVER else (one.when.first - START) // DAY_MIN, one.climate, one.target_f)
        for one in facts
    ]


def test_a_place_is_what_was_said_of_it() -> None:
    place = Book().says(cellar(parent="house", target_f=50.0, capacity=12)).place()
    assert (place.id, place.name, place.climate) == ("p", "cellar", Climate.CELLAR)
    assert (place.parent, place.target_f, place.capacity) == ("house", 50.0, 12)
    assert (place.gone, place.checked) == (False, None)
    assert place.facts == (Held(EVER, Climate.CELLAR, 50.0),)


def test_without_a_target_its_climate_speaks() -> None:
    assert held(Book().says(cellar())) == [(-1, Climate.CELLAR, 40.0)]


def test_nothing_is_known_of_a_place_whose_adding_was_taken_back() -> None:
    book = Book().says(cellar()).says(said.Reading("p", 50.0)).says(change(name="vault"))
    book.says(said.PlaceRemoved("p")).says(said.Count("p"))
    book.says(said.Undo((book.events[0].id,)))
    assert fold_place(standing(book.events)) is None


@pytest.mark.parametrize(
    ("payload", "name", "parent", "capacity"),
    [
        (change(name="vault"), "vault", "house", 12),
        (change(parent="barn"), "cellar", "barn", 12),
        (change(parent=""), "cellar", None, 12),
        (change(capacity=0), "cellar", "house", 0),
        (change(name=""), "cellar", "house", 12),
        (change(climate=Climate.ROOM), "cellar", "house", 12),
    ],
)
def test_a_change_says_only_what_it_changed(
    payload: said.PlaceChanged, name: str, parent: str | None, capacity: int
) -> None:
    place = Book().says(cellar(parent="house", capacity=12)).says(payload, on=1).place()
    assert (place.name, place.parent, place.capacity) == (name, parent, capacity)


def test_renaming_a_place_does_not_forget_how_warm_it_was_read() -> None:
    book = Book().says(cellar()).says(said.Reading("p", 61.0), on=1)
    book.says(change(name="vault"), on=2).says(change(capacity=9), on=3)
    assert book.place().temperature_f == 61.0
    assert held(book) == [(-1, Climate.CELLAR, 40.0)]
    assert book.says(change(target_f=45.0), on=4).place().temperature_f == 45.0


def test_a_removed_place_is_still_told_of() -> None:
    place = Book().says(cellar()).says(said.PlaceRemoved("p", "q"), on=9).place()
    assert place.gone
    assert place.name == "cellar"


def test_what_it_held_changes_on_the_day_it_is_said_to_have_changed() -> None:
    book = Book().says(cellar(target_f=50.0))
    book.says(change(climate=Climate.FRIDGE), on=5).says(change(forget_target=True), on=7)
    book.says(change(target_f=33.0), on=9)
    assert held(book) == [
        (-1, Climate.CELLAR, 50.0), (5, Climate.FRIDGE, 50.0), (7, Climate.FRIDGE, 38.0),
        (9, Climate.FRIDGE, 33.0),
    ]  # fmt: skip
    assert (book.place().climate, book.place().target_f) == (Climate.FRIDGE, 33.0)


def test_a_change_that_changes_nothing_leaves_the_reading_standing() -> None:
    book = Book().says(cellar(target_f=50.0)).says(said.Reading("p", 61.0), on=1)
    book.says(change(target_f=50.0), on=2)
    assert held(book) == [(-1, Climate.CELLAR, 50.0)]
    assert book.place().temperature_f == 61.0


HOURS = [(2, "08:00", change(climate=Climate.FRIDGE)), (3, "08:00", change(target_f=36.0)),
         (4, "08:00", change(climate=Climate.PANTRY)), (5, "08:00", change(forget_target=True)),
         (6, "08:00", said.Reading("p", 59.0)), (7, "08:00", said.Reading("p", 63.0))]  # fmt: skip


@given(st.permutations(HOURS))
def test_a_place_is_the_same_in_whatever_order_it_was_told(
    told: list[tuple[int, str, said.Payload]],
) -> None:
    book = Book().says(cellar())
    for on, at, payload in told:
        book.says(payload, on, at, booked="2026-05-01T10:00:00+00:00")
    assert held(book) == [
        (-1, Climate.CELLAR, 40.0), (2, Climate.FRIDGE, 38.0), (3, Climate.FRIDGE, 36.0),
        (4, Climate.PANTRY, 36.0), (5, Climate.PANTRY, 60.0),
    ]  # fmt: skip
    assert book.place().temperature_f == 63.0


def test_two_changes_in_hours_that_nobody_knows_may_have_come_either_way_round() -> None:
    late = "2026-05-01T10:00:00+00:00"
    book = Book().says(cellar())
    book.says(change(climate=Climate.FRIDGE, target_f=34.0), on=2, booked=late)
    book.says(change(climate=Climate.ROOM, target_f=75.0), on=2, booked=late)
    found = {(climate, target) for on, climate, target in held(book) if on == 2}
    assert found == {(Climate.FRIDGE, 34.0), (Climate.ROOM, 75.0)}


def test_what_may_have_come_between_rests_on_each_that_may_have_come_before() -> None:
    """A target alone, set at an unknown hour of the day on which the climate changed: it was set
    for the cellar, or for the fridge."""
    late = "2026-05-01T10:00:00+00:00"
    book = Book().says(cellar())
    book.says(change(climate=Climate.FRIDGE), on=2, at="12:00", booked=late)
    book.says(change(target_f=34.0), on=2, booked=late)
    facts = [one for one in book.place().facts if isinstance(one, Held) and one.when != EVER]
    assert {(one.when.known, one.climate, one.target_f) for one in facts} == {
        # The target, at its unknown hour, of a cellar or already of a fridge.
        (False, Climate.CELLAR, 34.0), (False, Climate.FRIDGE, 34.0),
        # The fridge, at noon, with the target or still without.
        (True, Climate.FRIDGE, 38.0), (True, Climate.FRIDGE, 34.0),
    }  # fmt: skip


def test_what_was_said_of_it_in_the_minute_in_which_it_was_added_counts_at_once() -> None:
    book = Book().says(cellar(), on=3, at="10:00")
    book.says(change(climate=Climate.ROOM), on=3, at="10:00").says(change(target_f=65.0), on=5)
    assert held(book) == [
        (-1, Climate.CELLAR, 40.0), (3, Climate.ROOM, 70.0), (5, Climate.ROOM, 65.0),
    ]  # fmt: skip


def test_of_two_changes_in_one_minute_either_may_have_come_first() -> None:
    book = Book().says(cellar())
    book.says(change(climate=Climate.FRIDGE), on=2, at="12:00")
    book.says(change(target_f=34.0), on=2, at="12:00")
    assert {(climate, target) for on, climate, target in held(book) if on == 2} == {
        (Climate.FRIDGE, 38.0), (Climate.FRIDGE, 34.0), (Climate.CELLAR, 34.0),
    }  # fmt: skip
    assert (book.place().climate, book.place().target_f) == (Climate.FRIDGE, 34.0)


def test_a_target_that_was_set_and_forgotten_in_one_minute_is_set() -> None:
    book = Book().says(cellar())
    book.says(change(target_f=34.0), on=2, at="12:00")
    assert book.says(change(forget_target=True), on=2, at="12:00").place().target_f == 34.0


CHANGES = st.lists(
    st.tuples(
        st.sampled_from([2, 3]),
        st.sampled_from(["08:00", "08:00", "12:00", None]),
        st.builds(
            lambda climate, target: change(climate=climate, target_f=target),
            st.sampled_from([None, Climate.FRIDGE, Climate.ROOM]),
            st.sampled_from([None, 34.0, 65.0]),
        ),
    ),
    max_size=4,
)


@given(CHANGES, st.randoms(use_true_random=False))
def test_not_even_within_one_minute_does_the_order_of_booking_count(
    told: list[tuple[int, str | None, said.PlaceChanged]], random: Random
) -> None:
    def as_told(changes: list[tuple[int, str | None, said.PlaceChanged]]) -> Place:
        book = Book().says(cellar(), on=2, at="08:00")
        for on, at, payload in changes:
            book.says(payload, on, at, booked="2026-05-01T10:00:00+00:00")
        return book.place()

    other = told[:]
    random.shuffle(other)
    assert as_told(told) == as_told(other)


def test_a_change_dated_before_the_place_was_there_counts_beside_what_was_said_then() -> None:
    """A clock was wrong: nobody knows which of the two was meant."""
    book = Book().says(cellar(), on=3, at="10:00")
    book.says(change(climate=Climate.ROOM), on=1, at="10:00", booked="2026-05-01T10:00:00+00:00")
    then = {(on, climate) for on, climate, _ in held(book)}
    assert then == {
        (-1, Climate.CELLAR), (1, Climate.CELLAR), (1, Climate.ROOM), (3, Climate.CELLAR),
        (3, Climate.ROOM),
    }  # fmt: skip


def test_readings_and_cuts_stand_in_the_order_of_their_moments() -> None:
    book = Book().says(cellar())
    book.says(said.Reading("p", 50.0, 80.0, 90), on=5, at="12:00")
    begun, over = "2026-03-03T08:00+00:00", "2026-03-03T12:00+00:00"
    book.says(said.Outage("p", begun, over, 4.0, True, 44.0, False), on=6)
    book.says(said.Reading("p", 47.0), on=1, at="12:00", booked="2026-05-01T10:00:00+00:00")
    first, low, off, high = book.place().facts
    assert first == Held(EVER, Climate.CELLAR, 40.0, told=False)
    assert isinstance(low, Read)
    assert low.temp_f == 47.0
    assert off == Cut(moment(begun), moment(over), True, 44.0, False)
    assert isinstance(high, Read)
    assert (high.temp_f, high.humidity, high.since) == (50.0, 80.0, 90)
    assert high.when.day == day(5)


def test_a_cut_since_nobody_knows_when_began_before_anything_that_was_booked() -> None:
    book = Book().says(cellar())
    book.says(said.Outage("p", "", "2026-03-03T12:00+00:00"), on=2)
    (off,) = (one for one in book.place().facts if isinstance(one, Cut))
    assert off.start == EVER
    assert off.full is None


def test_a_cut_of_an_older_log_that_has_only_its_hours_is_no_fact_of_the_place() -> None:
    book = Book().says(cellar()).says(said.Outage("p", hours=9.0), on=2)
    assert len(book.place().facts) == 1


def test_read_off_in_the_minute_it_was_set_the_reading_counts() -> None:
    book = Book().says(cellar())
    book.says(said.Reading("p", 61.0), on=2, at="12:00")
    book.says(change(climate=Climate.FRIDGE), on=2, at="12:00")
    assert book.place().temperature_f == 61.0


@pytest.mark.parametrize(
    ("first", "second", "order"),
    [
        (None, "00:00", [45.0, 50.0]), ("12:00", None, [45.0, 50.0]),
        ("12:00", "12:00", [50.0, 45.0]), ("08:00", "12:00", [50.0, 45.0]),
    ],
)  # fmt: skip
def test_of_two_readings_of_one_day_the_one_that_may_have_come_first_stands_first(
    first: str | None, second: str | None, order: list[float]
) -> None:
    late = "2026-05-01T10:00:00+00:00"
    book = Book().says(cellar()).says(said.Reading("p", 50.0), 2, first, late)
    facts = book.says(said.Reading("p", 45.0), 2, second, late).place().facts
    assert [one.temp_f for one in facts if isinstance(one, Read)] == order


def test_when_it_was_last_counted() -> None:
    book = Book().says(cellar()).says(said.Count("p"), on=2).says(said.Count("p"), on=8)
    assert book.place().checked == day(8)


def test_what_is_no_fact_of_a_place_teaches_nothing_of_it() -> None:
    place = Place("p", "cellar", Climate.CELLAR)
    (event,) = Book().says(moved("p")).events
    assert learnt(place, event) == place


def test_the_way_to_a_place_is_read_from_outside_in() -> None:
    places = {
        "a": Place("a", "basement", Climate.CELLAR),
        "b": Place("b", "north wall", Climate.CELLAR, "a"),
        "c": Place("c", "shelf 2", Climate.CELLAR, "b"),
        "d": Place("d", "drawer", Climate.CELLAR, "nowhere"),
    }
    assert path_of(places, "c") == "basement › north wall › shelf 2"
    assert path_of(places, "a") == "basement"
    assert path_of(places, "d") == "drawer"
    assert path_of(places, "nowhere") == ""


def test_places_that_stand_in_each_other_still_have_a_name() -> None:
    """Two logs put together may say so."""
    round_ = {"a": Place("a", "box", Climate.ROOM, "b"), "b": Place("b", "bag", Climate.ROOM, "a")}
    assert path_of(round_, "a").endswith("bag › box")
    assert path_of(round_, "a").count("›") == 19
