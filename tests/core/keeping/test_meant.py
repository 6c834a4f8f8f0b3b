"""What a place is meant to hold where nobody said so: what it stands in is."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.weather import FOREVER, Fact, Weather, warmth_f, weather
from pantry_tui.core.model import DAY_MIN, EVER, Held, Place
from pantry_tui.core.words import ASSUMED_F, Climate
from tests.core.keeping.test_weather import NOW, held, place, read
from tests.core.keeping.told import when

PANTRY, CELLAR, FRIDGE, FREEZER = Climate.PANTRY, Climate.CELLAR, Climate.FRIDGE, Climate.FREEZER


def unsaid(climate: Climate = PANTRY, day: int | None = None, hour: float | None = 8) -> Held:
    then = EVER if day is None else when(day, hour)
    return Held(then, climate, ASSUMED_F[climate], told=False)


def of_inner(inner: Place, outer: Place, *more: Place) -> tuple[Weather, ...]:
    places = {one.id: one for one in (inner, outer, *more)}
    return weather(inner.id, places, NOW)


def upper(*facts: Fact) -> Place:
    return place(*(facts or (unsaid(),)), name="upper", parent="p")


def warm_at(found: tuple[Weather, ...], day: int, hour: float = 12) -> set[float]:
    minute = when(day, hour).first
    return {one.temperature_f for one in found if one.start <= minute < one.end}


@pytest.mark.parametrize("climate", Climate)
def test_it_is_as_warm_as_the_place_around_it_is_told_to_be(climate: Climate) -> None:
    for more in (-3.0, 0.0, 8.0):
        outer = place(Held(EVER, climate, ASSUMED_F[climate] + more))
        (found,) = of_inner(upper(unsaid(climate)), outer)
        assert found.temperature_f == ASSUMED_F[climate] + more
        assert (found.start, found.end, found.measured) == (EVER.first, FOREVER, False)


def test_what_was_said_of_it_counts_also_where_it_is_what_is_assumed() -> None:
    outer = place(Held(EVER, PANTRY, 68.0))
    assert warm_at(of_inner(upper(Held(EVER, PANTRY, 60.0)), outer), 1) == {60.0}
    assert warm_at(of_inner(upper(Held(EVER, PANTRY, 50.0)), outer), 1) == {50.0}


def test_a_place_of_another_climate_around_it_says_nothing() -> None:
    assert warm_at(of_inner(upper(unsaid(CELLAR)), place(Held(EVER, PANTRY, 68.0))), 1) == {40.0}


def test_of_several_around_it_the_nearest_that_was_told() -> None:
    hall = replace(place(Held(EVER, PANTRY, 75.0)), id="hall")
    rack = replace(place(unsaid()), parent="hall")
    assert warm_at(of_inner(upper(), rack, hall), 1) == {75.0}
    told = replace(place(Held(EVER, PANTRY, 66.0)), parent="hall")
    assert warm_at(of_inner(upper(), told, hall), 1) == {66.0}


def test_from_the_moment_on_at_which_the_outer_one_is_told_otherwise() -> None:
    outer = place(Held(EVER, PANTRY, 62.0), held(4, 8, PANTRY, 72.0), held(9, 8, PANTRY, 50.0))
    found = of_inner(upper(), outer)
    assert [warm_at(found, day) for day in (1, 5, 10)] == [{62.0}, {72.0}, {50.0}]


def test_what_the_outer_one_held_before_it_became_another_stays() -> None:
    outer = place(Held(EVER, PANTRY, 72.0), unsaid(CELLAR, 4))
    found = of_inner(upper(), outer)
    assert [warm_at(found, day) for day in (1, 5)] == [{72.0}, {60.0}]


def test_only_while_it_has_that_climate_and_no_word_of_its_own() -> None:
    outer = place(Held(EVER, PANTRY, 68.0), held(6, 8, PANTRY, 74.0), held(12, 8, PANTRY, 80.0))
    own = upper(Held(EVER, CELLAR, 40.0), unsaid(PANTRY, 3), held(9, 8, PANTRY, 55.0))
    found = of_inner(own, outer)
    assert [warm_at(found, day) for day in (1, 4, 7, 10, 13)] == [
        {40.0}, {68.0}, {74.0}, {55.0}, {55.0},
    ]  # fmt: skip


def test_of_a_day_without_an_hour_both_may_be_so() -> None:
    outer = place(Held(EVER, PANTRY, 62.0), held(4, None, PANTRY, 72.0))
    found = of_inner(upper(), outer)
    assert [warm_at(found, day) for day in (3, 4, 5)] == [{62.0}, {62.0, 72.0}, {72.0}]


def test_what_was_read_of_it_stands_beside_what_is_said_around_it_later() -> None:
    outer = place(Held(EVER, PANTRY, 68.0), held(6, 8, PANTRY, 74.0))
    found = of_inner(upper(unsaid(), read(4, 8, 63.0)), outer)
    assert [warm_at(found, day) for day in (1, 5, 7)] == [{68.0}, {63.0}, {63.0, 74.0}]


def test_what_was_read_of_the_place_around_it_stands_beside_what_is_said_of_that() -> None:
    outer = place(Held(EVER, PANTRY, 62.0), read(4, 8, 75.0), held(6, 8, PANTRY, 68.0))
    found = of_inner(upper(), outer)
    assert [max(warm_at(found, day)) for day in (1, 5, 7)] == [62.0, 75.0, 75.0]
    hotter = place(Held(EVER, PANTRY, 62.0), read(4, 8, 65.0), held(6, 8, PANTRY, 72.0))
    assert max(warm_at(of_inner(upper(), hotter), 7)) == 72.0


def test_a_refrigerator_that_is_set_too_warm_has_warm_shelves() -> None:
    outer = place(Held(EVER, FRIDGE, 46.0))
    assert warm_at(of_inner(upper(unsaid(FRIDGE)), outer), 1) == {46.0}
    assert warm_at(of_inner(upper(unsaid(FREEZER)), place(Held(EVER, FREEZER, 31.0))), 1) == {31.0}


def test_what_is_shown_is_what_is_reckoned() -> None:
    outer = replace(place(Held(EVER, PANTRY, 68.0)), target_f=68.0)
    assert warmth_f("upper", {"upper": upper(), "p": outer}) == 68.0
    low = replace(outer, target_f=50.0)
    assert warmth_f("upper", {"upper": upper(), "p": low}) == 50.0
    own = replace(upper(), target_f=55.0)
    assert warmth_f("upper", {"upper": own, "p": outer}) == 55.0
    was_read = upper(unsaid(), read(4, 8, 63.0))
    assert warmth_f("upper", {"upper": was_read, "p": outer}) == 63.0


outer_facts = st.lists(
    st.builds(
        held,
        st.integers(1, 6),
        st.sampled_from([8.0, 12.0, None]),
        st.sampled_from([PANTRY, CELLAR]),
        st.sampled_from([45.0, 60.0, 66.0, 72.0]),
    ),
    max_size=4,
)


@given(outer_facts, st.sampled_from([None, 2, 5]))
def test_never_cooler_than_the_place_around_it_or_than_if_nothing_were_said_there(
    facts: list[Held], since: int | None
) -> None:
    outer = place(Held(EVER, PANTRY, 64.0), *facts)
    own = [unsaid(CELLAR), unsaid(PANTRY, since)] if since else [unsaid()]
    inner = upper(*own)
    alone = weather("upper", {"upper": inner}, NOW)
    found = of_inner(inner, outer)
    meant = weather("p", {"p": outer}, NOW)
    for day in range(9):
        for hour in (4, 8, 10, 12, 16):
            if day == since:
                continue
            minute, mine = when(day, hour).first, CELLAR if since and day < since else PANTRY
            around = [
                one.temperature_f
                for one in meant
                if one.start <= minute < one.end and one.climate is mine
            ]
            least = max(around or warm_at(alone, day, hour))
            assert max(warm_at(found, day, hour)) >= least


def climates_at(found: tuple[Weather, ...], day: int, hour: float = 12) -> set[Climate]:
    minute = when(day, hour).first
    return {one.climate for one in found if one.start <= minute < one.end}


def test_a_box_is_what_the_place_around_it_becomes() -> None:
    """Until that is what the box is said to be again, or the box itself is said to be something."""
    room, again = held(4, 8, Climate.ROOM, 70.0), held(9, 8, FRIDGE, 38.0)
    outer = place(unsaid(FRIDGE), room, again)
    found = of_inner(upper(unsaid(FRIDGE)), outer)
    assert [climates_at(found, day) for day in (1, 5, 10)] == [{FRIDGE}, {Climate.ROOM}, {FRIDGE}]
    said = upper(unsaid(FRIDGE), held(6, 8, FRIDGE, 38.0))
    assert [climates_at(of_inner(said, outer), day) for day in (5, 7)] == [{Climate.ROOM}, {FRIDGE}]


def test_a_cold_place_in_a_room_stays_cold_whatever_the_room_becomes() -> None:
    outer = place(unsaid(PANTRY), held(4, 8, Climate.ROOM, 75.0))
    assert climates_at(of_inner(upper(unsaid(FRIDGE)), outer), 5) == {FRIDGE}


@pytest.mark.parametrize("became", [Climate.ROOM, FREEZER])
def test_what_was_read_around_it_stays_when_that_becomes_another(became: Climate) -> None:
    """What was too warm was so for the box as well, whatever was made of the place afterwards."""
    outer = place(unsaid(FRIDGE), read(3, 0, 45.0), held(3, 5, became, ASSUMED_F[became]))
    found = of_inner(upper(unsaid(FRIDGE)), outer)
    assert 45.0 in warm_at(found, 3, 4)


@pytest.mark.parametrize("became", [Climate.ROOM, FREEZER, CELLAR])
@pytest.mark.parametrize("since", [None, 4 * DAY_MIN])
def test_what_is_read_around_it_later_was_so_while_the_two_were_one(
    became: Climate, since: int | None
) -> None:
    """A drawer of a refrigerator that is something else by now was as warm as it until then."""
    drawer = upper(unsaid(FRIDGE), held(4, 8, became, ASSUMED_F[became]))
    found = of_inner(drawer, place(unsaid(FRIDGE), read(6, 8, 60.0, since)))
    assert 60.0 in warm_at(found, 3), "before they parted"
    assert warm_at(found, 5) == {ASSUMED_F[became]}, "not after"


def test_not_before_it_was_read_cold_or_what_is_told_of_it_began() -> None:
    drawer = upper(unsaid(FRIDGE), held(4, 8, FREEZER, 0.0))
    for outer in (
        place(unsaid(FRIDGE), read(2, 8, 37.0), read(6, 8, 60.0)),
        place(unsaid(FRIDGE), read(6, 8, 60.0, 4 * DAY_MIN)),
    ):
        found = of_inner(drawer, outer)
        assert 60.0 not in warm_at(found, 1)
        assert 60.0 in warm_at(found, 3)
    found = of_inner(drawer, place(unsaid(FRIDGE), read(5, 8, 37.0), read(6, 8, 60.0)))
    assert 60.0 not in warm_at(found, 3), "it was cold after they parted"
