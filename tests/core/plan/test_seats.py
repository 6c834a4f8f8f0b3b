"""Who sits at table when, as people type it; nothing typed is dropped."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.plan.seats import read_days, read_people, read_seats
from pantry_tui.errors import BadInput, Unclear

FRI = date(2026, 11, 27)
SUN = date(2026, 11, 29)


def d(day: int) -> date:
    return date(2026, 12, day)


@pytest.mark.parametrize(
    ("line", "seats", "first", "last"),
    [
        ("away wed 2 dec to thu 3 dec", 0, d(2), d(3)), ("away Wed 2 Dec 2026", 0, d(2), d(2)),
        ("away wed 2 to thu 3 dec", 0, d(2), d(3)), ("away 2026-12-02 2026-12-04", 0, d(2), d(4)),
        ("away 2-4 dec", 0, d(2), d(4)),
        ("away from fri to sun", 0, FRI, SUN), ("6 fri-sun", 6, FRI, SUN),
        ("away the 2nd to the 4th", 0, d(2), d(4)), ("away until sunday", 0, FRI, SUN),
        ("away Fri, 4 Dec to Sun, 6 Dec", 0, d(4), d(6)), ("nobody home on sunday", 0, SUN, SUN),
        ("away 2026-12-01 to 2026-12-03", 0, d(1), d(3)), ("6 tonight", 6, FRI, FRI),
        # Guests come beside the household, whose table it is.
        ("8 guests on sunday", 10, SUN, SUN), ("1 visitor sun", 3, SUN, SUN),
        ("8 guests for sunday dinner", 10, SUN, SUN), ("eight at table, sunday", 8, SUN, SUN),
        ("8 guests in all on sunday", 8, SUN, SUN), ("8 people on sunday", 8, SUN, SUN),
        ("6 more on sunday", 8, SUN, SUN), ("us and six guests on sunday", 8, SUN, SUN),
        ("as usual on sunday", None, SUN, SUN), ("usual from fri to sun", None, FRI, SUN),
        ("away this weekend", 0, date(2026, 11, 28), SUN), ("6 on christmas eve", 6, d(24), d(24)),
        ("6 on sunday and monday", 6, SUN, date(2026, 11, 30)),
        ("away 24 dec to 2 jan", 0, d(24), date(2027, 1, 2)),
    ],
)  # fmt: skip
def test_who_eats_when(line: str, seats: int | None, first: date, last: date) -> None:
    assert read_seats(line, 2, FRI) == (seats, (first, last))


@pytest.mark.parametrize(
    ("line", "seats"),
    [("6 on sunday", 8), ("6 guests on sunday", 8), ("6 in all on sunday", 6),
     ("6 people on sunday", 6), ("6 at the table on sunday", 6), ("usual on sunday", None)],
)  # fmt: skip
def test_where_guests_are_asked_for_a_number_alone_is_of_them(line: str, seats: int | None) -> None:
    assert read_seats(line, 2, FRI, guests=True)[0] == seats


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("2 and a toddler on sunday", "a toddler"), ("away fri and sun", "days between"),
        ("away next weekend", "could be"), ("away wed 3 dec", "no Wednesday"),
        ("6 plums on sunday", "plums"), ("6", "Say when"), ("away", "Say when"),
        ("plums", "write away"), ("6 on friday to thursday of never", "never"),
    ],
)  # fmt: skip
def test_what_could_be_either_is_asked_and_an_unknown_word_named(line: str, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        read_seats(line, 2, FRI)


@pytest.mark.parametrize(("typed", "people"), [("4", 4), ("4 people", 4), ("two adults", 2)])
def test_how_many_eat(typed: str, people: int) -> None:
    assert read_people(typed) == people


@pytest.mark.parametrize("typed", ["", "many", "4 cats", "2 more"])
def test_what_is_no_number_of_people_is_refused(typed: str) -> None:
    with pytest.raises(BadInput):
        read_people(typed)


def test_a_small_eater_beside_is_asked_about() -> None:
    with pytest.raises(Unclear, match="a toddler") as asked:
        read_people("2 and a toddler")
    assert asked.value.choices == ("2", "3")


def test_on_a_weekend_this_weekend_may_be_the_next() -> None:
    with pytest.raises(Unclear, match=r"28 Nov 2026.*5 Dec 2026"):
        read_days("this weekend", date(2026, 11, 28))


@given(st.text(alphabet="0123456789 aefgilmnorstuwy-,", max_size=30))
def test_no_text_breaks_the_reader(text: str) -> None:
    said = "read"
    try:
        read_seats(text, 2, FRI)
    except BadInput as error:
        said = error.message
    assert said, "refused without a word"
