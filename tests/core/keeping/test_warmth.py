"""How the warmth of a place shortens a quality life: figures reckoned by hand, and laws."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.keeping.power import united
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.keeping.spans import Span
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.keeping.warm import Warm, charged, passed
from pantry_tui.core.keeping.warmth import Case, Life, life
from pantry_tui.core.model import Batch, Crop, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust

FOOD = FoodFacts("quinces", Group.FRUIT, Acidity.ACID)
DAY = date(2026, 3, 1)


def rule(use: float | None, warm: float | None, **more: object) -> Rule:
    plain = Rule(
        f"r{use}", Method.DRIED, "*", State.SEALED, frozenset({Climate.PANTRY, Climate.ROOM}),
        Kind.QUALITY, use, use, use, "months", warm, Status.CURRENT, "", "", Trust.READ,
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


def kept(
    warm: float,
    method: Method,
    climate: Climate,
    rules: Sequence[Rule],
    crop: Crop | None = None,
) -> Life | None:
    """By the rules of the method, of which those for this climate speak."""
    book = Rulebook({method: rules}, crops={"quinces": crop} if crop else {})
    found = [one for one in rules if climate in one.climates] or rules
    return life(Case(FOOD, method, State.SEALED, climate, warm), found, book)


def days(found: Life | None) -> float:
    assert found is not None
    return found.rule.days * found.share


# -- frozen ----------------------------------------------------------------------------------------


def frozen(warm: float) -> float:
    return days(kept(warm, Method.FROZEN, Climate.FREEZER, [rule(12, 0.0)]))


def test_frozen_food_keeps_a_quarter_as_long_for_each_ten_degrees_above_nought() -> None:
    whole = frozen(0.0)
    assert frozen(10.0) == pytest.approx(whole / 4)
    assert frozen(20.0) == pytest.approx(whole / 16)
    assert frozen(5.0) == pytest.approx(whole / 2)
    assert frozen(1.0) == pytest.approx(whole * 0.25**0.1)
    assert frozen(-10.0) == whole, "colder than published keeps no longer"


def test_a_shortened_life_says_how_it_was_reckoned_and_a_published_one_needs_no_word() -> None:
    cold = kept(0.0, Method.FROZEN, Climate.FREEZER, [rule(12, 0.0)])
    warm = kept(10.0, Method.FROZEN, Climate.FREEZER, [rule(12, 0.0)])
    assert cold is not None
    assert warm is not None
    assert cold.note == ""
    coolest = kept(60.0, Method.DRIED, Climate.PANTRY, [rule(12, 60.0), rule(6, 80.0)])
    assert coolest is not None
    assert coolest.note == ""
    assert "10 F" in warm.note


# -- dried -----------------------------------------------------------------------------------------

#: Dried fruit: a year at 60 °F, six months at 80 °F (the shape of published pairs).
PAIR = [rule(12, 60.0), rule(6, 80.0)]


def dried(warm: float, rules: Sequence[Rule] = PAIR, climate: Climate = Climate.PANTRY) -> float:
    return days(kept(warm, Method.DRIED, climate, rules))


@pytest.mark.parametrize("rules", [PAIR, PAIR[::-1]])
def test_dried_food_between_two_published_temperatures_is_in_between(rules: list[Rule]) -> None:
    year, half = 12 * 30.4375, 6 * 30.4375
    assert dried(60.0, rules) == year
    assert dried(50.0, rules) == year
    assert dried(80.0, rules) == half
    assert dried(70.0, rules) == pytest.approx((year * half) ** 0.5)
    assert dried(90.0, rules) == pytest.approx(half / 2)
    assert dried(100.0, rules) == pytest.approx(half / 4)


def test_of_three_published_temperatures_the_ends_count() -> None:
    three = [rule(12, 60.0), rule(9, 65.0), rule(6, 80.0)]
    assert dried(60.0, three) == dried(60.0)
    assert dried(80.0, three) == dried(80.0)


def test_one_published_temperature_is_halved_above_it() -> None:
    one = [rule(6, 80.0)]
    assert dried(90.0, one) == pytest.approx(dried(80.0, one) / 2)
    assert dried(60.0, one) == dried(80.0, one)


def test_without_a_published_temperature_nothing_is_reckoned() -> None:
    assert dried(99.0, [rule(6, None)]) == 6 * 30.4375


def test_only_the_figures_in_use_for_the_same_food_and_state_are_reckoned_with() -> None:
    others = [
        rule(1, 80.0, food="pears"),
        rule(1, 80.0, state=State.OPEN),
        rule(1, 80.0, kind=Kind.SAFETY),
        rule(1, 80.0, status=Status.SUPERSEDED),
        rule(1, 80.0, climates=frozenset({Climate.FREEZER})),
        rule(None, 85.0),
    ]
    book = Rulebook({Method.DRIED: [*PAIR, *others]})
    case = Case(FOOD, Method.DRIED, State.SEALED, Climate.PANTRY, 80.0)
    assert days(life(case, PAIR, book)) == dried(80.0)


def test_dried_food_in_the_cold_keeps_its_published_life() -> None:
    chilled = [rule(12, 40.0, climates=frozenset({Climate.FRIDGE}))]
    assert dried(45.0, chilled, Climate.FRIDGE) == 12 * 30.4375
    longer = [rule(18, 40.0, climates=frozenset({Climate.FRIDGE})), *PAIR]
    assert dried(45.0, longer, Climate.FRIDGE) == 18 * 30.4375, "the figure for that place"


@pytest.mark.parametrize("climate", [Climate.ROOM, Climate.PANTRY, Climate.CELLAR])
def test_dried_food_lives_by_the_warmth_of_any_place_out_of_the_cold(climate: Climate) -> None:
    here = [replace(one, climates=frozenset({climate})) for one in PAIR]
    assert dried(90.0, here, climate) == pytest.approx(6 * 30.4375 / 2)
    assert dried(50.0, here, climate) == 12 * 30.4375


def test_at_a_published_temperature_its_own_figure_stands_and_above_it_says_how_far() -> None:
    cool, hot = PAIR
    at = {warm: kept(warm, Method.DRIED, Climate.PANTRY, PAIR) for warm in (60.0, 70.0, 80.0, 90.0)}
    assert [one.rule for one in at.values() if one] == [cool, cool, hot, hot]
    assert [one.note for one in at.values() if one] == [
        "", "at 70 F between 60 and 80 F in log time", "",
        "at 90 F half per 10 F above 80 F",
    ]  # fmt: skip


@given(st.floats(30, 130), st.floats(0, 60))
def test_warmer_never_keeps_longer(warm: float, more: float) -> None:
    assert dried(warm + more) <= dried(warm) * (1 + 1e-9)
    assert frozen(warm - 40 + more) <= frozen(warm - 40) * (1 + 1e-9)
    assert cellared(warm + more) <= cellared(warm) * (1 + 1e-9)


# -- crops -----------------------------------------------------------------------------------------

CROP = [rule(4, 40.0, climates=frozenset({Climate.CELLAR}))]


def crop(q10: float) -> Crop:
    return Crop("quinces", 32, 40, 28, None, q10, "", "", "", Trust.READ)


def cellared(warm: float, of: Crop | None = None, rules: Sequence[Rule] = CROP) -> float:
    return days(kept(warm, Method.CELLAR, Climate.CELLAR, rules, of))


def test_a_crop_lives_faster_by_its_own_factor_for_each_eighteen_degrees() -> None:
    whole = cellared(40.0)
    assert whole == 4 * 30.4375
    assert cellared(58.0, crop(2.0)) == pytest.approx(whole / 2)
    assert cellared(76.0, crop(2.0)) == pytest.approx(whole / 4)
    assert cellared(58.0) == pytest.approx(whole / 3), "one that nobody tabled: the faster end"
    assert cellared(33.0, crop(2.0)) == whole, "cooler keeps no longer than published"


def test_a_figure_published_for_a_warmer_place_is_not_outlived() -> None:
    both = [*CROP, rule(0.5, 58.0, climates=frozenset({Climate.ROOM}))]
    assert cellared(58.0, crop(2.0), both) == 0.5 * 30.4375
    assert cellared(76.0, crop(2.0), both) == pytest.approx(0.5 * 30.4375 / 2)
    assert cellared(57.0, crop(2.0), both) > 30.4375, "not reached yet"
    warmest = [*CROP, rule(0.5, 94.0, climates=frozenset({Climate.ROOM}))]
    assert cellared(94.0, crop(3.0), warmest) == pytest.approx(4 * 30.4375 / 27), "the shorter"


def test_at_its_published_temperature_a_crop_keeps_as_published() -> None:
    cooler = [*CROP, rule(5, 32.0, climates=frozenset({Climate.FRIDGE}))]
    assert cellared(40.0, crop(3.0), cooler) == 4 * 30.4375
    colder = kept(40.0, Method.CELLAR, Climate.CELLAR, CROP, crop(3.0))
    assert colder is not None
    assert colder.note == ""


def test_a_crop_without_a_published_temperature_is_not_reckoned_with() -> None:
    assert cellared(90.0, crop(2.0), [rule(4, None)]) == 4 * 30.4375


# -- others ----------------------------------------------------------------------------------------


def test_what_is_no_estimate_of_ours_keeps_its_published_life() -> None:
    jam = [rule(12, 70.0)]
    assert days(kept(90.0, Method.JAM, Climate.ROOM, jam)) == 12 * 30.4375


def test_without_a_figure_there_is_no_life() -> None:
    assert kept(60.0, Method.DRIED, Climate.ROOM, []) is None
    assert kept(60.0, Method.DRIED, Climate.ROOM, [rule(None, 60.0)]) is None
    assert kept(60.0, Method.DRIED, Climate.ROOM, [rule(6, 60.0, kind=Kind.SAFETY)]) is None


# -- thawing ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("weight", "days_"),
    [
        ("1 lb", 1), ("5 lb", 1), ("5.01 lb", 2), ("10 lb", 2), ("20 lb", 4), ("80 oz", 1),
        ("81 oz", 2), ("2267 g", 1), ("2300 g", 2), ("2.2 kg", 1), ("9 kg", 4), ("3 quart", 1),
        ("20 quart", 1), ("0.1 lb", 1), ("15 lb", 3), ("20.1 lb", 5), ("24 lb", 5),
        # USDA, turkey thawing times, as quoted: none for more than 24 lb.
        ("25.1 lb", 5), ("40 lb", 5), ("4000 kg", 5),
    ],
)  # fmt: skip
def test_a_day_in_the_refrigerator_thaws_five_pounds(weight: str, days_: int) -> None:
    """USDA FSIS and the services that carry it: a day for each 5 lb begun, at least one."""
    batch = Batch("b", "2A", FOOD, Method.FROZEN, DAY, "")
    assert thaw_days(batch.size, amount_of(weight)) == days_


@pytest.mark.parametrize(
    ("size", "days_"),
    [("20 lb bag", 4), ("12-lb bird", 3), ("2.5 kg packs", 2), ("quart bag", 1), ("", 1),
     ("6 LBS", 2), ("96oz", 2), ("20", 1), ("9999999 kg bag", 5)],
)  # fmt: skip
def test_without_an_amount_the_size_may_say_its_weight(size: str, days_: int) -> None:
    assert thaw_days(size, None) == days_


def test_what_is_left_of_it_thaws_and_not_what_it_was() -> None:
    batch = Batch("b", "2A", FOOD, Method.FROZEN, DAY, "20 lb bag")
    assert thaw_days(batch.size, Amount(Fraction(4), "lb")) == 1


# -- minutes out of the cold -----------------------------------------------------------------------


def warm(start: int, end: int) -> Warm:
    return Warm(start, end, DAY, 70.0, None, "kitchen")


@pytest.mark.parametrize(
    ("times", "found"),
    [
        ([], None),
        ([(0, 120)], None),
        ([(0, 121)], ((0, 121), 120)),
        ([(0, 60), (100, 160)], None),
        ([(0, 60), (100, 161)], ((100, 161), 160)),
        ([(100, 161), (0, 60)], ((100, 161), 160)),
        # What overlaps counts once.
        ([(0, 90), (30, 120)], None),
        ([(0, 90), (30, 125)], ((30, 125), 120)),
        ([(0, 100), (20, 50), (90, 130)], ((90, 130), 120)),
        ([(10, 10), (0, 121)], ((0, 121), 120)),
    ],
)
def test_two_hours_in_all_each_minute_counted_once(
    times: list[tuple[int, int]], found: tuple[tuple[int, int], int] | None
) -> None:
    answer = passed([warm(*one) for one in times], 120)
    if found is None:
        assert answer is None
    else:
        assert answer is not None
        assert ((answer[0].start, answer[0].end), answer[1]) == found


def test_above_90_f_a_minute_counts_twice() -> None:
    """One hour instead of two (USDA FSIS); what was warm before is taken off both."""
    hot = warm(30, 90)._replace(temperature_f=95.0)
    assert charged([hot]) == 120
    assert charged([warm(0, 60), hot]) == 30 + 2 * 60
    assert passed([hot], 120) is None
    assert passed([hot._replace(end=91)], 120) == (hot._replace(end=91), 90)
    early = passed([warm(0, 30), hot], 120)
    assert early is not None
    assert early[1] == 30 + (120 - 30) // 2


times = st.lists(st.tuples(st.integers(0, 300), st.integers(0, 90)), max_size=6)


@given(times)
def test_minutes_are_counted_as_one_would_on_a_clock(begun: list[tuple[int, int]]) -> None:
    spells = [(start, start + length) for start, length in begun]
    minutes = {minute for start, end in spells for minute in range(start, end)}
    assert united(spells) == len(minutes)
    answer = passed([warm(*one) for one in spells], 120)
    assert (answer is not None) is (len(minutes) > 120)
    if answer is not None:
        assert sum(minute < answer[1] for minute in minutes) == 120


# -- spans -----------------------------------------------------------------------------------------


def span(climate: Climate, warm_f: float, *, measured: bool = True, steady: bool = True) -> Span:
    return Span(
        0, 10, DAY, "p", climate, warm_f, measured, False, False, None, False, False, steady
    )


def test_a_refrigerator_is_no_colder_than_most_unless_it_was_set_and_read_so() -> None:
    assert span(Climate.FRIDGE, 34.0).taken_f == 34.0
    assert span(Climate.FRIDGE, 34.0, measured=False).taken_f == 38.0
    assert span(Climate.FRIDGE, 34.0, steady=False).taken_f == 38.0
    assert span(Climate.FRIDGE, 45.0, measured=False).taken_f == 45.0
    assert span(Climate.CELLAR, 34.0, measured=False).taken_f == 34.0


def test_a_freezer_that_does_not_freeze_keeps_nothing_frozen() -> None:
    assert span(Climate.FREEZER, 0.0).frozen
    assert span(Climate.FREEZER, 28.0).frozen
    assert not span(Climate.FREEZER, 29.0).frozen
    assert not span(Climate.FRIDGE, 20.0).frozen
