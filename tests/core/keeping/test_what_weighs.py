"""What is weighed into a verdict beside a row of the table: minutes out of the cold that came with
it, whose day it is, what was cut, a printed date, guesses, and a look after a sign."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.doubt import CUT_OFF
from pantry_tui.core.keeping.limits import PRINTED, assess
from pantry_tui.core.keeping.rules import BOUGHT_OUT
from pantry_tui.core.log.own import told_food
from pantry_tui.core.words import Acidity, Group, Kind, Method, State, Verdict
from tests.core.keeping.told import MADE, Told, facts_of, when


def out_of_the_cold(used: int, minutes: int) -> Verdict:
    """A stew that was made with so many minutes used, after so many more in the kitchen."""
    stew = Told("stew", Method.MEAL, "fridge").at(0, 12).move("kitchen")
    now = when(0, 12 + minutes / 60)
    found = assess(stew.batch, stew.box, stew.places, stew.book, now, used)
    assert found.warm_used == used + minutes
    return found.on(now.day).verdict


def test_minutes_it_was_made_with_count_to_its_two_hours() -> None:
    assert out_of_the_cold(0, 60) is not Verdict.DISCARD
    assert out_of_the_cold(59, 60) is not Verdict.DISCARD
    assert out_of_the_cold(90, 60) is Verdict.DISCARD
    assert out_of_the_cold(0, 150) is Verdict.DISCARD


def test_while_its_two_hours_run_no_later_day_is_said() -> None:
    stew = Told("stew", Method.MEAL, "fridge").at(0, 12).move("kitchen")
    found = stew.assessed(0, 13)
    assert any("within" in one for one in found.reasons)
    assert not any(one.startswith(("Best by", "Discard after")) for one in found.reasons)
    back = stew.at(0, 13).move("fridge").assessed(0, 14)
    assert any(one.startswith("Discard after") for one in back.reasons)
    # What ended before that day, and on that very day, is said all the same.
    oil = Told("garlic", Method.IN_OIL, "fridge").at(4, 12).move("kitchen").assessed(4, 12.5)
    assert any(one.startswith("Discard after") for one in oil.reasons)


def test_a_day_is_lost_by_the_westmost_clock_that_told_its_life() -> None:
    """Of the two days on which garlic in oil ends, in a house and further east, the first counts:
    a person who travels west wins none."""
    at_home = Told("garlic", Method.IN_OIL, "fridge", hour=10)
    west = at_home.box.turns[0].when._replace(zone=-10 * 60)
    at_home.box = replace(at_home.box, turns=(at_home.box.turns[0]._replace(when=west),))
    now = when(0, 15)._replace(zone=10 * 60)
    found = assess(at_home.batch, at_home.box, at_home.places, at_home.book, now)
    assert found.spans[0].start == west.first
    assert found.discard_after is not None
    assert found.discard_after <= MADE + timedelta(days=4)


# -- what was cut ----------------------------------------------------------------------------------


def pumpkin(place: str, left: str = "3/2") -> Told:
    return Told("pumpkins", Method.CELLAR, place).holding("2", left)


def test_what_is_left_of_a_crop_that_was_cut_is_unknown_and_hurts_out_of_the_cold() -> None:
    whole = pumpkin("larder", "2").assessed(1)
    assert not whole.doubt
    cut = pumpkin("larder").assessed(1)
    assert cut.doubt
    assert CUT_OFF in cut.reasons
    assert not cut.harmless


def test_in_the_cold_a_cut_crop_hurts_only_where_germs_grow_in_it() -> None:
    squash = Told("pumpkins", Method.CELLAR, "fridge").holding("2", "3/2").assessed(1)
    assert CUT_OFF in squash.reasons
    assert squash.harmless
    leafy = Told("cabbages", Method.CELLAR, "fridge").holding("2", "3/2").assessed(1)
    assert not leafy.harmless


# -- a doubtful process ----------------------------------------------------------------------------


def test_only_what_is_under_a_lid_is_lost_once_it_left_the_cold() -> None:
    """A jar that came too late into the cold has no day; what is under no lid keeps its day."""
    jam = Told("strawberry jam", Method.JAM, "larder").at(3).move("fridge")
    jam.batch = replace(jam.batch, doubt=("Open-kettle.",))
    assert jam.assessed(4).discard_after == MADE - timedelta(days=1)
    kraut = Told("sauerkraut", Method.LACTIC, "fridge")
    kraut.batch = replace(kraut.batch, doubt=("Too little salt.",))
    assert kraut.assessed(0).discard_after is None
    assert kraut.judged(0).verdict is Verdict.UNKNOWN


# -- a printed date --------------------------------------------------------------------------------


def bought(food: str, days: int) -> Told:
    return Told(food, Method.BOUGHT, "fridge", printed=MADE + timedelta(days=days))


def test_a_printed_date_that_cannot_be_makes_it_harmful_where_it_is_the_last_day() -> None:
    near, far = bought("feta", 60).assessed(1), bought("feta", 400).assessed(1)
    assert not any("further ahead" in one for one in near.reasons)
    assert any("further ahead" in one for one in far.reasons)
    assert far.doubt
    assert not far.harmless


def test_a_printed_date_behind_another_last_day_is_not_spoken_of() -> None:
    ham = bought("ham", 400).assessed(1)
    assert ham.discard_after is not None
    assert ham.discard_after < MADE + timedelta(days=30)
    assert not any(PRINTED in one or "further ahead" in one for one in ham.reasons)


# -- guesses ---------------------------------------------------------------------------------------


def test_where_the_strictest_of_a_group_is_taken_the_page_says_so_of_either_date() -> None:
    pulp = told_food("tonka pulp", Group.FRUIT, Acidity.LOW_ACID)
    mince = told_food("tonka roast", Group.MEAT, Acidity.LOW_ACID)
    best, last = Told(pulp, Method.DRIED, "larder"), Told(mince, Method.BOUGHT, "fridge")
    assert best.assessed(0).discard_after is None
    assert last.assessed(0).discard_after is not None
    for told in (best, last):
        assert any(one.startswith("No row names tonka") for one in told.assessed(0).reasons)
    oil = Told("garlic", Method.IN_OIL, "fridge").assessed(0)
    assert not any(one.startswith("No row names") for one in oil.reasons)


def test_the_rules_of_both_dates_are_cited() -> None:
    jerky = Told("jerky", Method.DRIED, "kitchen").assessed(0)
    assert jerky.discard_after is not None
    assert any(getattr(rule, "kind", None) is Kind.SAFETY for rule in jerky.rules)


# -- signs -----------------------------------------------------------------------------------------


def test_a_look_settles_what_needs_care_and_nothing_worse() -> None:
    for verdict, settled in ((Verdict.NEEDS_CARE, True), (Verdict.DISCARD, False)):
        apples = Told("apples", Method.CELLAR, "vault").at(1).sign("soft", verdict)
        assert apples.judged(2).verdict is verdict
        looked = apples.at(2).look().judged(2)
        assert (looked.verdict is not verdict) is settled


def test_a_look_before_a_sign_or_none_says_nothing_of_it() -> None:
    apples = Told("apples", Method.CELLAR, "vault").at(1).look().at(2)
    apples.sign("soft", Verdict.NEEDS_CARE)
    assert apples.judged(2).verdict is Verdict.NEEDS_CARE
    never = Told("apples", Method.CELLAR, "vault").at(1).sign("soft", Verdict.NEEDS_CARE)
    never.box = replace(never.box, looked=None, looked_at=10**12)
    assert never.judged(2).verdict is Verdict.NEEDS_CARE


def test_what_is_asked_of_a_state_reads_the_clock_of_its_first_day() -> None:
    kraut = Told("sauerkraut", Method.LACTIC, "larder", State.IN_PROGRESS).at(2).ready()
    last = kraut.box.turns[-1]
    kraut.box = replace(
        kraut.box, turns=(kraut.box.turns[0], last._replace(when=last.when._replace(zone=-600)))
    )
    assert not kraut.judged(3).usable
    assert facts_of("sauerkraut").name == kraut.batch.food.name


# -- quality where no figure speaks, and by the clock of the house ---------------------------------


def test_a_stay_of_which_no_figure_speaks_gives_no_time_back() -> None:
    stayed = Told("apples", Method.DRIED, "kitchen").judged(101).best_by
    frozen = Told("apples", Method.DRIED, "kitchen").at(20).move("freezer").at(100).move("kitchen")
    assert stayed is not None
    assert frozen.judged(101).best_by == stayed


@pytest.mark.parametrize("zone", [-600, 600])
def test_a_life_counts_days_of_the_clock_at_home(zone: int) -> None:
    """Moved at ten in the morning, wherever that is; the last day is the same day there."""
    here = Told("apples", Method.DRIED, "kitchen").at(100, 10).move("larder")
    there = Told("apples", Method.DRIED, "kitchen").at(100, 10).move("larder")
    turns = (
        one._replace(
            when=one.when._replace(
                first=one.when.first - zone, last=one.when.last - zone, zone=zone
            )
        )
        for one in there.box.turns
    )
    there.box = replace(there.box, turns=tuple(turns))
    noon = when(101, 12)
    now = noon._replace(first=noon.first - zone, last=noon.last - zone, zone=zone)
    found = assess(there.batch, there.box, there.places, there.book, now)
    assert found.best_by == here.assessed(101).best_by


# -- what was bought cold --------------------------------------------------------------------------


def test_what_was_bought_cold_and_moist_has_two_hours_out_of_it() -> None:
    def out(food: str, place: str = "kitchen", sold: str = "fridge") -> Told:
        return Told(food, Method.BOUGHT, "fridge", sold=sold).at(1, 10).move(place)

    for food in ("hummus", "guacamole", "apple juice"):
        late = out(food).assessed(1, 13)
        assert late.on(late.now).verdict is Verdict.DISCARD, food
        assert BOUGHT_OUT in late.rules, food
        soon = out(food).assessed(1, 11)
        assert soon.on(soon.now).verdict is not Verdict.DISCARD, food
        cold = out(food, "second fridge").assessed(1, 13)
        assert BOUGHT_OUT not in cold.rules, food
    for dry in ("bread", "rice"):
        late = out(dry).assessed(1, 13)
        assert late.on(late.now).verdict is not Verdict.DISCARD, dry
    shelf = out("apple juice", sold="shelf").assessed(1, 13)
    assert BOUGHT_OUT not in shelf.rules


def test_beside_a_date_that_stands_alone_no_published_days_count() -> None:
    plain = Told(
        "yogurt", Method.BOUGHT, "fridge", printed=MADE + timedelta(days=30), sold="fridge"
    )
    dated = Told(
        "yogurt", Method.BOUGHT, "fridge", printed=MADE + timedelta(days=30), sold="fridge",
        dated="use-by",
    )  # fmt: skip
    assert dated.assessed(0).discard_after == MADE + timedelta(days=30)
    last = plain.assessed(0).discard_after
    assert last is not None
    assert last < MADE + timedelta(days=30)
