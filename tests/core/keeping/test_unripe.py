"""A ferment that was called ready before any publication would call it so."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

import pytest

from pantry_tui.core.keeping.unripe import paces_of
from pantry_tui.core.words import Climate, Method, State, Verdict
from pantry_tui.reference.tables import load_tables
from tests.core.keeping.told import MADE, Told


def ferment(
    food: str,
    days: float,
    place: str = "kitchen",
    ph: str = "",
    *,
    measured: int | None = None,
    method: Method = Method.LACTIC,
    **more: str,
) -> Told:
    """In a place for so many days, then called ready and moved to the fridge; its pH was recorded
    on day `measured`, else when it was called ready."""
    record = {**more, **({"ph": ph} if ph else {})}
    told = Told(food, method, place, State.IN_PROGRESS, 10, **record)
    day = days if measured is None else measured
    told.batch = replace(told.batch, ph_day=MADE + timedelta(days=day))
    return told.at(int(days), 12).ready().at(int(days), 13).move("fridge")


@pytest.mark.parametrize(
    ("food", "place", "least"),
    [
        # Michigan State University Extension, sauerkraut: three to four weeks at 70 to 75 F, five
        # to six at 60 to 65 F, which a pantry is taken to hold.
        ("sauerkraut", "kitchen", 21),
        ("sauerkraut", "larder", 35),
        ("cabbages", "kitchen", 21),
        ("red cabbages", "larder", 35),
        # USDA AIB 539, fermented dill pickles: three to four weeks at 70 to 75 F.
        ("dill pickles", "kitchen", 21),
        ("cucumbers", "kitchen", 21),
        # Colorado State University Extension, kimchi: a day or two at room warmth, three or four
        # in a refrigerator; cooler than a room it is no quicker than there.
        ("kimchi", "kitchen", 1),
        ("kimchi", "fridge", 3),
        ("kimchi", "vault", 3),
        # UC Master Food Preservers, vegetables: two to seven weeks.
        ("carrots", "kitchen", 14),
        ("carrots", "larder", 35),
    ],
)
def test_no_sooner_than_the_shortest_published_time(food: str, place: str, least: int) -> None:
    soon = ferment(food, least - 1, place).judged(least)
    assert not soon.usable
    assert "Called ready after" in soon.reasons[0]
    done = ferment(food, least, place).judged(least + 1)
    assert done.usable
    assert not any("Called ready" in one for one in done.reasons)


def test_what_is_still_working_is_told_nothing_of_it() -> None:
    told = Told("sauerkraut", Method.LACTIC, "kitchen", state=State.IN_PROGRESS)
    assert not any("Called ready" in one for one in told.judged(3).reasons)


def test_what_was_put_up_finished_is_taken_at_its_word() -> None:
    assert Told("sauerkraut", Method.LACTIC, "fridge").judged(1).usable


@pytest.mark.parametrize("state", [State.SEALED, State.OPEN])
@pytest.mark.parametrize(
    ("food", "days", "usable"),
    [
        # The same times as for what is called ready: Michigan State, Colorado State, UC.
        ("sauerkraut", 1, False), ("sauerkraut", 20, False), ("sauerkraut", 21, True),
        ("kimchi", 0, False), ("kimchi", 3, True), ("carrots", 13, False), ("carrots", 14, True),
    ],
)  # fmt: skip
def test_finished_when_it_was_put_up_needs_the_time_that_ready_needs(
    food: str, days: int, usable: bool, state: State
) -> None:
    told = Told(food, Method.LACTIC, "fridge", state, 10)
    told.batch = replace(told.batch, booked=MADE + timedelta(days))
    assert told.judged(days).usable is usable
    # It does not become ripe by waiting.
    assert told.judged(days + 4).usable is usable


@pytest.mark.parametrize(("measured", "usable"), [(0, False), (1, True), (5, True)])
def test_a_ph_of_the_day_it_was_made_is_measured_too_soon(measured: int, usable: bool) -> None:
    told = Told("sauerkraut", Method.LACTIC, "fridge", State.SEALED, 10, ph="3.9")
    day = MADE + timedelta(measured)
    told.batch = replace(told.batch, booked=MADE, ph_day=day)
    assert told.judged(6).usable is usable


@pytest.mark.parametrize(("days", "usable"), [(0, False), (6, False), (7, True)])
def test_meat_put_up_as_cured_needs_the_time_of_a_cure(days: int, usable: bool) -> None:
    # NCHFP, Curing and Smoking Meats for Home Food Preservation: 7 days for each inch.
    told = Told("hams", Method.SALTED, "fridge", State.SEALED, 10)
    told.batch = replace(told.batch, booked=MADE + timedelta(days))
    assert any("a cure takes" in one for one in told.judged(days).reasons) is not usable


# -- where it worked -------------------------------------------------------------------------------


@pytest.mark.parametrize("cold", ["fridge", "freezer", "vault"])
@pytest.mark.parametrize("hour", [11, None])
def test_days_in_the_cold_are_no_days_of_fermenting(cold: str, hour: float | None) -> None:
    """An hour in the kitchen, then 24 days where it does not work: nothing was fermented."""
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 10)
    told.at(0, hour).move(cold).at(24, 12).ready().at(24, 13).move("fridge")
    found = told.judged(25)
    assert not found.usable
    assert found.verdict is Verdict.UNKNOWN
    assert "after 24 days, 0 of them where it works" in found.reasons[0]


@pytest.mark.parametrize(("back", "usable"), [(30, False), (31, True)])
def test_what_went_to_the_cold_goes_on_when_it_comes_back(back: int, usable: bool) -> None:
    """Ten days, ten in the fridge, and what is wanting of 21 days at 70 F."""
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 10)
    told.at(10, 9).move("fridge").at(19, 23).move("kitchen").at(back, 12).ready()
    assert told.at(back, 13).move("fridge").judged(back + 1).usable is usable


@pytest.mark.parametrize(
    ("warm", "least"), [(60.0, 35), (65.0, 35), (69.0, 35), (70.0, 21), (75.0, 21)]
)
def test_each_day_counts_at_its_warmth(warm: float, least: int) -> None:
    for days, usable in ((least - 1, False), (least, True)):
        told = Told("sauerkraut", Method.LACTIC, "larder", State.IN_PROGRESS, 10)
        told.at(-1).hold("larder", Climate.PANTRY, warm)
        told.at(days, 12).ready().at(days, 13).move("fridge")
        assert told.judged(days + 1).usable is usable, days


def test_warm_and_cool_days_are_added_up() -> None:
    """Seven days at 70 F are a third of it; 24 at 60 F are two thirds and a little more."""
    for last, usable in ((29, False), (31, True)):
        told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 0)
        told.at(7, 0).move("larder").at(last, 12).ready().at(last, 13).move("fridge")
        assert told.judged(last + 1).usable is usable, last


@pytest.mark.parametrize("warm", [59.0, 50.0])
def test_below_the_published_range_no_day_counts(warm: float) -> None:
    told = Told("sauerkraut", Method.LACTIC, "larder", State.IN_PROGRESS, 10)
    told.at(-1).hold("larder", Climate.PANTRY, warm)
    told.at(80, 12).ready().at(80, 13).move("fridge")
    assert not told.judged(81).usable


def test_in_a_freezer_nothing_works_not_even_what_works_in_a_fridge() -> None:
    assert not ferment("kimchi", 30, "freezer").judged(31).usable


def test_in_the_cold_only_what_is_published_to_work_there_does() -> None:
    assert ferment("kimchi", 3, "fridge").judged(4).usable
    assert not ferment("sauerkraut", 40, "fridge").judged(41).usable


def test_it_does_not_become_ripe_by_waiting_in_the_cold() -> None:
    assert not ferment("sauerkraut", 2).judged(60).usable


# -- a measured pH ---------------------------------------------------------------------------------


def test_a_measured_ph_says_more_than_the_days() -> None:
    assert ferment("carrots", 5, ph="3.8").judged(6).usable
    assert ferment("carrots", 5, ph="4.6").judged(6).usable
    assert not ferment("carrots", 5, ph="4.7").judged(6).usable
    assert not ferment("carrots", 5, ph="unknown").judged(6).usable


@pytest.mark.parametrize(("warmth", "usable"), [(69.8, True), (69.5, True), (69.4, False)])
def test_seventy_fahrenheit_is_21_celsius(warmth: float, usable: bool) -> None:
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS)
    told.at(0, 10).read("kitchen", warmth)
    told.at(21, 12).ready().at(21, 13).move("fridge")
    assert told.judged(22).usable is usable


@pytest.mark.parametrize(("measured", "usable"), [(0, False), (2, False), (3, True), (9, True)])
def test_a_ph_counts_from_two_days_before_it_was_called_ready(measured: int, usable: bool) -> None:
    assert ferment("carrots", 5, ph="3.9", measured=measured).judged(9).usable is usable


@pytest.mark.parametrize(("days", "usable"), [(0, False), (1, True), (2, True)])
def test_a_ph_of_the_day_it_was_made_calls_nothing_ready(days: int, usable: bool) -> None:
    assert ferment("carrots", days, ph="3.9", measured=days).judged(days).usable is usable
    # What was measured on that first day is no more true for being called ready later.
    assert not ferment("carrots", days, ph="3.9", measured=0).judged(days + 1).usable


def test_a_ph_that_nobody_knows_the_day_of_does_not_count() -> None:
    told = ferment("carrots", 5, ph="3.9")
    told.batch = replace(told.batch, ph_day=None)
    assert not told.judged(6).usable


@pytest.mark.parametrize("ph", ["0", "1.2", "2.4", "3.9 to 4.9"])
def test_a_ph_that_no_ferment_has_frees_nothing(ph: str) -> None:
    assert not ferment("carrots", 5, ph=ph).judged(6).usable


# -- what is no vegetable --------------------------------------------------------------------------


@pytest.mark.parametrize(
    "food",
    [
        "natto",
        "tempeh",
        "mushrooms",
        "shiitake",
        "yogurt",
        "kefir",
        "water kefir",
        "kombucha",
        "chickpeas",
        "dry beans",
        "soybeans",
        "miso",
    ],
)
def test_of_what_no_time_is_published_none_is_said(food: str) -> None:
    found = ferment(food, 40).judged(41)
    assert not found.usable
    assert found.verdict is Verdict.UNKNOWN
    assert "no working time is published" in found.reasons[0]
    assert "14" not in found.reasons[0]


@pytest.mark.parametrize(
    "food", ["natto", "tempeh", "mushrooms", "soybeans", "chickpeas", "yogurt"]
)
def test_what_nobody_publishes_a_ferment_of_is_not_taken_at_its_word(food: str) -> None:
    found = Told(food, Method.LACTIC, "fridge").judged(1)
    assert found.verdict is Verdict.UNKNOWN
    assert not found.usable
    assert found.best_by is None
    assert Told("carrots", Method.LACTIC, "fridge").judged(1).usable


# -- under salt ------------------------------------------------------------------------------------


def salted(food: str, days: int, salt: str = "", ph: str = "") -> Told:
    more = {"salt": salt} if salt else {}
    return ferment(food, days, "kitchen", ph, measured=None, method=Method.SALTED, **more)


@pytest.mark.parametrize("salt", ["2.5%", "5%"])
@pytest.mark.parametrize(
    ("food", "least"), [("snap beans", 14), ("cabbages", 21), ("sauerkraut", 21), ("garlic", 14)]
)
def test_lightly_salted_vegetables_are_ferments(food: str, least: int, salt: str) -> None:
    assert not salted(food, 1, salt).judged(2).usable
    assert not salted(food, least - 1, salt).judged(least).usable
    assert salted(food, least, salt).judged(least + 1).usable
    assert salted(food, 3, salt, ph="3.9").judged(4).usable


@pytest.mark.parametrize("salt", ["", "unknown", "3 tbsp", "25% brine", "1 lb to 1 l water"])
def test_of_salt_that_nobody_knows_nothing_is_offered(salt: str) -> None:
    found = salted("snap beans", 60, salt).judged(61)
    assert not found.usable
    assert "how much salt" in found.reasons[0]


@pytest.mark.parametrize(
    ("salt", "ph", "usable"),
    [("", "", False), ("12%", "", False), ("2.5%", "", True), ("25%", "", True), ("", "3.9", True)],
)
def test_what_was_put_up_finished_under_salt_needs_its_salt_too(
    salt: str, ph: str, usable: bool
) -> None:
    record = {key: value for key, value in (("salt", salt), ("ph", ph)) if value}
    told = Told("snap beans", Method.SALTED, "fridge", State.SEALED, 10, **record)
    assert told.judged(1).usable is usable


@pytest.mark.parametrize("salt", ["6%", "12%", "19%", "3 tbsp per lb", "1 lb to 5 lb"])
def test_between_fermenting_and_keeping_nothing_is_published(salt: str) -> None:
    assert not salted("snap beans", 60, salt).judged(61).usable


@pytest.mark.parametrize("salt", ["20%", "25 %", "1 lb to 4 lb", "250 g per kg", "1 cup per lb"])
def test_what_salt_alone_keeps_needs_no_working(salt: str) -> None:
    """One part of salt to four of vegetables keeps them without fermenting (Cruess 1918)."""
    assert salted("snap beans", 1, salt).judged(2).usable


@pytest.mark.parametrize("food", ["preserved lemons", "lemons", "olives", "trout"])
def test_what_is_acid_as_it_grew_and_what_is_cured_have_their_own_rules(food: str) -> None:
    found = salted(food, 2).judged(3)
    assert not any("Called ready" in one or "how much salt" in one for one in found.reasons)


# -- how warm its record says that it was ----------------------------------------------------------


@pytest.mark.parametrize(
    ("said", "least"),
    [
        ("70F", 21),
        ("72 F", 21),
        ("20C", 35),
        ("21C", 21),  # 69.8 F
        ("62F", 35),
        ("80F", 21),
        ("60-72F", 35),
    ],
)
def test_of_place_and_record_the_slower_warmth_counts(said: str, least: int) -> None:
    for days, usable in ((least - 1, False), (least, True)):
        told = ferment("sauerkraut", days, temperature=said)
        assert told.judged(days + 1).usable is usable, days
    assert not ferment("sauerkraut", 30, "larder", temperature=said).judged(31).usable


@pytest.mark.parametrize("said", ["50F", "81F", "40C", "300F", "0F", "70-90F"])
def test_no_day_counts_at_a_warmth_that_nobody_ferments_at(said: str) -> None:
    found = ferment("sauerkraut", 60, temperature=said).judged(61)
    assert not found.usable
    assert "0 of them where it works" in found.reasons[0]


@pytest.mark.parametrize(
    ("food", "said", "doubted"),
    [
        ("sauerkraut", "50F", True),
        ("sauerkraut", "90F", True),
        ("sauerkraut", "62-85F", True),
        ("sauerkraut", "62F", False),
        ("kimchi", "38F", False),
        ("carrots", "55F", True),
        ("sauerkraut", "", False),
    ],
)
def test_what_works_at_a_warmth_that_nobody_ferments_at_is_doubted_while_it_works(
    food: str, said: str, doubted: bool
) -> None:
    more = {"temperature": said} if said else {}
    found = Told(food, Method.LACTIC, "kitchen", State.IN_PROGRESS, 10, **more).judged(3)
    assert (found.verdict is Verdict.UNKNOWN) is doubted
    assert any("its record says" in one.lower() for one in found.reasons) is doubted


def test_a_place_that_is_too_hot_counts_no_day() -> None:
    told = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS, 10)
    told.at(-1).hold("kitchen", Climate.ROOM, 95.0)
    assert not told.at(60, 12).ready().at(60, 13).move("fridge").judged(61).usable


@pytest.mark.parametrize(
    ("put_up", "hour", "usable"), [(23, 1, False), (23, 12, True), (8, 8, True), (None, 8, True)]
)
def test_a_night_is_no_day(put_up: float | None, hour: float, usable: bool) -> None:
    """Kimchi: a day or two at room warmth (Colorado State University Extension)."""
    told = Told("kimchi", Method.LACTIC, "kitchen", State.IN_PROGRESS, put_up)
    told.at(1, hour).ready().at(1, hour + 1).move("fridge")
    assert told.judged(2).usable is usable


@pytest.mark.parametrize(
    ("least", "unit", "began", "days"),
    [
        (1, "months", date(2026, 1, 31), 28),
        (2, "months", date(2026, 7, 1), 62),
        (2, "months", date(2026, 1, 1), 59),
        (1, "years", date(2026, 3, 1), 365),
        (1, "years", date(2027, 6, 1), 366),
        (0.5, "months", date(2026, 3, 1), Fraction(31, 2)),
        (36, "hours", date(2026, 3, 1), Fraction(3, 2)),
        (3, "weeks", date(2026, 3, 1), 21),
    ],
)
def test_months_and_years_of_work_run_by_calendar(
    least: float, unit: str, began: date, days: int | Fraction
) -> None:
    book = load_tables().book
    rows = book.of(Method.LACTIC)
    kraut = next(one for one in rows if one.id == "lactic-ferment-sauerkraut-working-room-q")
    changed = replace(kraut, least=least, most=least, unit=unit)
    others = [one for one in rows if one.state is not State.IN_PROGRESS]
    shown = replace(book, rules={**book.rules, Method.LACTIC: [*others, changed]})
    told = ferment("sauerkraut", 10_000)
    paces = paces_of(told.batch.food, began, shown)
    assert [pace.days for pace in paces] == [days]
