"""What a person is told beside the verdict: every date with its reason, and what to do at once."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.explain import chain
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from tests.core.keeping.told import MADE, Told, when


def said(judged: Judgement) -> str:
    return " / ".join(judged.reasons)


def explained(life: Told, day: int) -> list[str]:
    def cite(rule: Rule | OutageRule) -> str:
        return rule.source

    return chain(life.batch, life.box, life.places, life.book, when(day, 12), str.upper, cite)


def stew() -> Told:
    return Told("stew", Method.MEAL, "fridge")


# -- reasons ---------------------------------------------------------------------------------------


def test_each_date_is_said_with_its_figure_and_the_day_it_counts_from() -> None:
    jam = Told("strawberry jam", Method.JAM, "larder").judged(0)
    assert "Best by Mon 1 Mar 2027: 12 months from Sun 1 Mar 2026." in said(jam)
    meal = stew().judged(0)
    assert "Discard after Wed 4 Mar 2026: 3 days from Sun 1 Mar 2026." in said(meal)


def test_an_estimate_is_called_one() -> None:
    warm = Told("peas", Method.FROZEN, "freezer").at(0, 10).read("freezer", 10).judged(0)
    assert "an estimate" in said(warm)
    assert "an estimate" not in said(Told("peas", Method.FROZEN, "freezer").judged(0))


def test_a_temperature_that_nobody_read_is_said_to_be_assumed() -> None:
    assert "38 F is assumed for its place, not measured." in said(stew().judged(0))
    read = stew().at(0, 11).read("fridge", 38)
    assert "assumed" not in said(read.judged(0))


def test_how_much_of_the_two_hours_is_gone_is_said_while_it_may_be_eaten() -> None:
    life = stew().at(1, 12).read("fridge", 45, 90).at(1, 12.1).read("fridge", 38)
    assert "96 of the 120 minutes" in said(life.judged(2))
    gone = life.judged(9)
    assert "120 minutes" not in said(gone)
    assert "120 minutes" not in said(stew().judged(2))


def test_what_stands_too_warm_is_to_be_eaten_or_put_in_the_cold_within_minutes() -> None:
    life = stew().at(1, 12).read("fridge", 45, 60)
    assert "within 60 minutes" in said(life.judged(1, 12))
    hot = stew().at(1, 12).read("fridge", 95, 20)
    assert "within 40 minutes" in said(hot.judged(1, 12))


def test_at_41_f_it_is_said_whose_rule_that_is() -> None:
    life = stew().at(0, 12).read("fridge", 41)
    assert "the stricter day count of both" in said(life.judged(1))
    assert "day count" not in said(stew().at(0, 12).read("fridge", 40).judged(1))


def test_what_still_works_is_to_be_marked_when_it_is_ready() -> None:
    kraut = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS)
    assert "mark it ready" in said(kraut.judged(3))
    assert "mark it ready" not in said(kraut.at(20).ready().judged(21))


def test_a_sealed_jar_of_over_two_years_is_looked_at_closely() -> None:
    jar = Told("runner beans", Method.PRESSURE, "larder", minutes="20", psi="11")
    assert "Over two years old" not in said(jar.judged(731))
    assert "Over two years old" in said(jar.judged(732))
    opened = Told("runner beans", Method.PRESSURE, "larder", minutes="20").at(5).open("fridge")
    assert "Over two years old" not in said(opened.judged(732))
    assert "Over two years old" not in said(Told("peas", Method.FROZEN, "freezer").judged(732))


def test_what_a_cut_did_is_said_with_its_hours_and_its_day() -> None:
    life = stew().at(1, 8).cut("fridge", 9)
    assert "Power cut of 9 h (Mon 2 Mar 2026): discard." in said(life.judged(1, 20))


def test_no_figure_for_a_place_is_said_in_its_words() -> None:
    jar = Told("runner beans", Method.FRESH, "kitchen").judged(0)
    assert "No published figure for runner beans (fresh), sealed in a room." in said(jar)


# -- what no figure covers -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("warm", "word"),
    [(95.0, ""), (96.0, "above 95 F canned food may spoil"), (32.0, ""),
     (31.0, "frozen jars may lose their seal")],
)  # fmt: skip
def test_canned_food_stands_between_frost_and_great_heat(warm: float, word: str) -> None:
    """USDA AIB 539, storing canned food."""
    jar = Told("peaches", Method.BOILING_WATER, "larder", minutes="30")
    judged = jar.at(1, 12).read("larder", warm).judged(2)
    assert (judged.verdict is Verdict.UNKNOWN) is bool(word)
    assert word in said(judged)


def test_a_crop_that_froze_or_was_chilled_has_no_figure() -> None:
    crops = Told("carrots", Method.CELLAR, "vault").book.crops
    frozen = crops["carrots"].freezing_f
    assert frozen is not None
    for warm, freezes in ((frozen - 1, True), (frozen + 1, False)):
        carrots = Told("carrots", Method.CELLAR, "vault").at(1, 12).read("vault", warm)
        assert ("it freezes" in said(carrots.judged(2))) is freezes
    name, hurt = next(
        (one.food, one.chilling_f) for one in crops.values() if one.chilling_f is not None
    )
    chilled = Told(name, Method.CELLAR, "vault").at(1, 12).read("vault", hurt - 1)
    assert "it is hurt by cold" in said(chilled.judged(2))


# -- doubt, signs, days that nobody knows ----------------------------------------------------------


def doubtful(low_acid: bool = True) -> Told:
    food = "runner beans" if low_acid else "peaches"
    method = Method.PRESSURE if low_acid else Method.BOILING_WATER
    life = Told(food, method, "larder")
    life.batch = replace(life.batch, doubt=("5 minutes is too little",), possible="Within 24 hours")
    return life


@pytest.mark.parametrize(("low_acid", "then"), [(True, "do not taste"), (False, "discard")])
def test_a_doubtful_jar_has_a_day_and_then_none(low_acid: bool, then: str) -> None:
    life = doubtful(low_acid)
    words = [life.judged(day).verdict.value for day in (0, 1, 2)]
    assert words == ["unknown", "unknown", then]
    assert not life.judged(0).usable
    assert said(life.judged(0)) == "5 minutes is too little / Within 24 hours"
    assert life.judged(0).why_no_discard == "process in doubt"
    life.batch = replace(life.batch, possible="")
    assert said(life.judged(0)) == "5 minutes is too little"


def test_it_is_saved_by_the_cold_within_a_day_and_lost_with_it() -> None:
    saved = doubtful().at(0, 20).move("fridge")
    assert saved.last(1) == 3, "as an opened jar"
    assert saved.judged(1).usable
    lost = doubtful().at(0, 20).move("fridge").at(1).move("larder")
    assert lost.judged(1, 14).verdict is Verdict.DO_NOT_TASTE
    assert lost.last(1, 14) == -1
    late = doubtful().at(2).move("fridge")
    assert late.judged(2, 14).verdict is Verdict.DO_NOT_TASTE


def test_a_doubtful_jar_of_an_unknown_day_is_lost() -> None:
    life = doubtful()
    life.batch = replace(life.batch, made=None)
    assert life.judged(0).verdict is Verdict.DO_NOT_TASTE


def test_signs_stand_first_and_a_harmless_one_changes_nothing() -> None:
    life = stew().at(1).sign("white film", Verdict.SOUND)
    assert life.judged(1).verdict is stew().judged(1).verdict
    assert "Harmless: White film (Mon 2 Mar 2026)." in said(life.judged(1))
    bad = life.sign("mould", Verdict.DISCARD).judged(1)
    assert bad.verdict is Verdict.DISCARD
    assert bad.reasons[0] == "Mould (Mon 2 Mar 2026)."


def test_what_wants_a_look_wants_none_once_it_was_looked_at() -> None:
    life = stew().at(1).sign("one soft piece", Verdict.NEEDS_CARE)
    assert life.judged(1).reasons[0] == "One soft piece (Mon 2 Mar 2026)."
    for day, hour, since in ((0, 12, False), (1, 11, False), (1, 12, True), (1, 13, True),
                             (1, None, False), (2, None, True)):  # fmt: skip
        assert ("Looked at since" in said(life.at(day, hour).look().judged(3))) is since


def test_a_look_of_that_day_says_nothing_of_what_was_seen_at_an_unknown_hour_of_it() -> None:
    life = stew().at(1, None).sign("one soft piece", Verdict.NEEDS_CARE)
    assert life.at(1, 12).look().judged(1, 13).verdict is Verdict.NEEDS_CARE
    assert life.at(2, 0).look().judged(2).verdict is not Verdict.NEEDS_CARE


@pytest.mark.parametrize("verdict", [Verdict.DISCARD, Verdict.DO_NOT_TASTE, Verdict.UNKNOWN])
def test_no_look_takes_back_a_sign_that_throws_food_away(verdict: Verdict) -> None:
    life = stew().at(1).sign("mould", verdict)
    life.box = replace(life.box, looked=MADE + timedelta(days=2))
    assert life.judged(2).verdict is verdict
    assert not life.judged(2).usable


def test_a_ladder_rests_on_its_signs_and_looks_too() -> None:
    jar = Told("peas", Method.FROZEN, "freezer").at(5).sign("white film", Verdict.SOUND)
    assert jar.assessed(9).facts_to == MADE + timedelta(days=5)
    jar.box = replace(jar.box, looked=MADE + timedelta(days=7))
    assert jar.assessed(9).facts_to == MADE + timedelta(days=7)


def test_a_printed_date_says_nothing_of_what_was_put_up_at_home() -> None:
    printed = MADE + timedelta(days=4)
    assert Told("chickens", Method.FROZEN, "freezer", printed=printed).last(0) is None


def test_a_suspect_batch_is_looked_at_jar_by_jar() -> None:
    jar = Told("runner beans", Method.PRESSURE, "larder", minutes="20", psi="11")
    jar.batch = replace(jar.batch, suspect="2A/1 bulges")
    judged = jar.judged(3)
    assert judged.verdict is Verdict.UNKNOWN
    assert not judged.usable
    assert judged.reasons[0] == "Look at every container of this batch: 2A/1 bulges."
    jar.box = replace(jar.box, looked=MADE)
    assert jar.judged(3).verdict is Verdict.SOUND
    jar.box = replace(jar.box, looked=None)
    bad = jar.sign("bulging", Verdict.DO_NOT_TASTE).judged(3)
    assert "Look at every container" not in said(bad), "it is the one that showed it"


def test_a_day_that_nobody_knows_is_judged_as_past_a_limit_and_unknown_without_one() -> None:
    meal = Told("stew", Method.MEAL, "fridge", made=None).judged(3)
    assert meal.verdict is Verdict.DISCARD
    assert "judged as past it" in meal.reasons[0]
    assert meal.rules
    peas = Told("peas", Method.FROZEN, "freezer", made=None).judged(3)
    assert peas.verdict is Verdict.UNKNOWN
    assert "no date can be given" in peas.reasons[0]


def test_lime_keeps_nothing_wherever_it_stands() -> None:
    eggs = Told("eggs", Method.LIME, "fridge").judged(0)
    assert eggs.verdict is Verdict.DISCARD
    assert eggs.rules
    assert eggs.reasons == (eggs.rules[0].wording,)  # type: ignore[union-attr]


def test_somebody_else_s_low_acid_jar_of_an_unknown_process_is_not_offered() -> None:
    jar = Told("runner beans", Method.PRESSURE, "larder", by="Sunniva").judged(3)
    assert "somebody else canned" in jar.reasons[0]


# -- the chain -------------------------------------------------------------------------------------


def test_the_chain_says_where_it_stood_in_which_state_and_how_warm() -> None:
    life = Told("ground beef", Method.FROZEN, "freezer").at(5).thaw("fridge", "cold water")
    lines = explained(life, 6)
    assert lines[0] == "From Sun 1 Mar 2026: sealed in FREEZER (freezer, 0 F assumed)."
    assert lines[1] == (
        "From Fri 6 Mar 2026: thawed in FRIDGE (fridge, 38 F assumed), not thawed in a "
        "refrigerator."
    )


def test_open_and_in_progress_are_both_said() -> None:
    kraut = Told("sauerkraut", Method.LACTIC, "kitchen", State.IN_PROGRESS).at(2).open()
    assert any("in progress and open in KITCHEN" in line for line in explained(kraut, 3))


def test_the_chain_gives_every_limit_and_every_life_with_its_source() -> None:
    lines = explained(stew().at(1).open(), 2)
    safety = [line for line in lines if line.startswith("Safety: ")]
    assert safety
    assert all(line.endswith("]") for line in safety)
    assert len(set(safety)) == len(safety)
    dried = explained(Told("apples", Method.DRIED, "kitchen").at(50).move("larder"), 60)
    quality = [line for line in dried if line.startswith("Quality, sealed from ")]
    assert len(quality) == 2
    assert "of it spent before" not in quality[0]
    assert "% of it spent before" in quality[1]


def test_the_chain_of_a_doubtful_jar_says_what_is_in_doubt() -> None:
    assert "Process: 5 minutes is too little" in explained(doubtful(), 1)
    saved = explained(doubtful().at(0, 20).move("fridge"), 1)
    assert any(line.startswith("Safety: 3 days from Sun 1 Mar 2026") for line in saved)


def test_the_chain_names_cuts_and_refusals() -> None:
    cut = explained(stew().at(1, 8).cut("fridge", 9), 2)
    assert any("Power cut of 9 h" in line for line in cut)
    out = explained(stew().at(1, 8).move("kitchen"), 2)
    assert any(line.startswith("Safety: ") and "hours" in line for line in out)


def test_a_stay_told_twice_is_said_once() -> None:
    life = stew().at(1).move("fridge").at(2).move("fridge")
    stays = [line for line in explained(life, 3) if line.startswith("From ")]
    assert len(stays) == len(set(stays))


def test_an_unknown_crop_in_a_room_is_said_to_have_no_figure() -> None:
    odd = FoodFacts("oca", Group.VEGETABLE, Acidity.LOW_ACID, known=False)
    judged = Told(odd, Method.FRESH, "kitchen").judged(0)
    assert Climate.ROOM.value in said(judged)
    assert judged.usable


def test_each_stay_of_its_own_day_place_or_state_is_a_line() -> None:
    life = stew().at(1, 8).move("second fridge").at(1, 9).open().at(3, 8).move("fridge")
    life.at(4, 8).move("second fridge")
    lines = [line for line in explained(life, 5) if line.startswith("From ")]
    assert [line.split(" (")[0] for line in lines] == [
        "From Sun 1 Mar 2026: sealed in FRIDGE",
        "From Mon 2 Mar 2026: sealed in SECOND FRIDGE",
        "From Mon 2 Mar 2026: open in SECOND FRIDGE",
        "From Wed 4 Mar 2026: open in FRIDGE",
        "From Thu 5 Mar 2026: open in SECOND FRIDGE",
    ]


def test_the_chain_tells_an_estimate_and_nothing_where_there_is_none() -> None:
    warm = Told("peas", Method.FROZEN, "freezer").at(0, 10).read("freezer", 10)
    (line,) = [one for one in explained(warm, 1) if "10 F" in one and one.startswith("Quality")]
    assert " published, at 10 F a quarter per 10 F above 0 F, so until " in line
    (plain,) = [
        one for one in explained(Told("peas", Method.FROZEN, "freezer"), 1)
        if one.startswith("Quality")
    ]  # fmt: skip
    assert "months published, so until " in plain


def test_the_chain_says_what_was_too_warm() -> None:
    lines = explained(stew().at(1, 12).read("fridge", 45, 180), 2)
    (line,) = [one for one in lines if "two hours" in one]
    assert line.startswith("Safety: Read at 45 F, above 41 F, for over two hours in all: discard.")
    late = Told("stew", Method.MEAL, "fridge", hour=16).at(0, 15).cut("fridge", 2)
    dark = explained(late.at(0, 20).cut("fridge", 1.25), 1)
    assert "Safety: Without power, for over two hours in all: discard." in dark


def test_the_chain_of_a_lid_that_never_sealed_is_that_of_an_opened_jar() -> None:
    jar = Told("runner beans", Method.PRESSURE, "fridge", minutes="20", psi="11")
    assert not any(line.startswith("Safety: ") for line in explained(jar, 1))
    loose = jar.sign("unsealed within a day", Verdict.EAT_SOON)
    assert any(
        line.startswith("Safety: 3 days from Sun 1 Mar 2026") for line in explained(loose, 1)
    )


def test_the_chain_of_what_the_cold_does_not_save_gives_no_day() -> None:
    butter = Told("butter", Method.PRESSURE, "fridge")
    butter.batch = replace(butter.batch, doubt=("No tested process.",))
    assert butter.judged(1).verdict is Verdict.DO_NOT_TASTE
    lines = explained(butter, 1)
    assert lines[1:] == ["Process: No tested process."]


def test_what_may_still_be_done_is_said_while_it_may_be() -> None:
    life = doubtful()
    assert said(life.judged(1)) == "5 minutes is too little / Within 24 hours"
    assert said(life.judged(2)) == said(life.judged(40)) == "5 minutes is too little"
    again = life.assessed(1).again_at
    assert again is not None
    assert again == when(2, 0).first, "then it is looked at again although nothing happened"
    assert life.assessed(2).again_at is None
    unknown = doubtful()
    unknown.batch = replace(unknown.batch, made=None)
    assert said(unknown.judged(0)) == "5 minutes is too little"
    assert said(doubtful().at(2).move("fridge").judged(2, 14)) == "5 minutes is too little"
