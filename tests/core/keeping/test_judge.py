"""What the judge puts together: which of several reasons is said, on which rules it rests."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.doubt import UNKNOWN_ORIGIN
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.limits import as_packed, judge_fresh
from pantry_tui.core.keeping.misdated import WRONG_CLOCK
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust, Verdict
from tests.core.keeping.told import MADE, Told

CARROTS = FoodFacts("carrots", Group.VEGETABLE, Acidity.LOW_ACID)
ODD = FoodFacts("something", Group.MEAT, Acidity.LOW_ACID, known=False)


def rule(use: float | None, *climates: Climate, **more: object) -> Rule:
    plain = Rule(
        f"r{use}", Method.FRESH, "*", State.SEALED, frozenset(climates), Kind.QUALITY, use, use,
        use, "days", None, Status.CURRENT, f"Words {use}.", "", Trust.READ,
    )  # fmt: skip
    return replace(plain, **more)  # type: ignore[arg-type]


def by(*rules: Rule) -> Rulebook:
    return Rulebook({Method.FRESH: rules, Method.DRIED: rules})


def stew(**more: object) -> Told:
    return Told("stew", Method.MEAL, "fridge", **more)  # type: ignore[arg-type]


def day(number: int) -> object:
    return MADE + timedelta(days=number)


# -- what nobody knows the day of ------------------------------------------------------------------


def test_of_an_unknown_day_it_says_why_and_what_the_limit_is() -> None:
    meal = stew(made=None).judged(3)
    assert meal.reasons == (
        "Nobody knows when it was made, and a safety limit runs on it: judged as past it.",
        meal.rules[0].wording,  # type: ignore[union-attr]
    )
    assert not meal.usable
    dark = stew(made=None).at(1, 8).cut("fridge", 9).judged(1, 20)
    assert dark.reasons[1].startswith("Power cut of 9 h")
    printed = Told(
        "chickens", Method.BOUGHT, "fridge", made=None, printed=day(4), dated="use-by"
    ).judged(9)
    assert (printed.reasons[1:], printed.rules) == (("The printed date.",), ())


def test_of_an_unknown_day_it_rests_on_the_rules_of_where_it_stands() -> None:
    peas = Told("peas", Method.FROZEN, "freezer", made=None).judged(3)
    assert peas.rules
    assert {one.climates for one in peas.rules} == {frozenset({Climate.FREEZER})}  # type: ignore[union-attr]
    moved = Told("carrots", Method.CELLAR, "fridge", made=None).at(1).move("vault").judged(3)
    stayed = Told("carrots", Method.CELLAR, "vault", made=None).judged(3)
    assert moved.rules == stayed.rules


def test_a_crop_of_an_unknown_day_cannot_hurt_and_is_offered() -> None:
    crop = Told("carrots", Method.CELLAR, "vault", made=None).judged(3)
    assert (crop.verdict, crop.usable) == (Verdict.UNKNOWN, True)
    assert not Told("peas", Method.FROZEN, "freezer", made=None).judged(3).usable


def test_made_on_a_day_still_to_come_is_made_nobody_knows_when() -> None:
    ahead = stew(made=day(5)).judged(1)
    assert (ahead.verdict, ahead.why_no_discard) == (Verdict.DISCARD, "day unknown")
    assert stew(made=day(1)).judged(1).usable


# -- which doubt is said ---------------------------------------------------------------------------


def hot_jar(**process: str) -> Told:
    life = Told("runner beans", Method.PRESSURE, "kitchen", **process)  # type: ignore[arg-type]
    return life.at(0, 11).read("kitchen", 99)


def test_of_several_doubts_the_gravest_is_said() -> None:
    assert hot_jar(minutes="20", psi="11").judged(1).reasons[0].startswith("Stood at 99 F")
    theirs = hot_jar(by="Sunniva")
    assert theirs.judged(1).reasons[0] == UNKNOWN_ORIGIN
    assert theirs.at(700).move("larder").judged(1).reasons[0] == WRONG_CLOCK


def test_what_nobody_knows_after_a_cut_is_unknown_and_says_so() -> None:
    fat = Told("lard", Method.RENDERED_FAT, "fridge").at(1, 8).cut("fridge", 9).judged(2)
    assert fat.verdict is Verdict.UNKNOWN
    assert fat.reasons[0].startswith("Power cut of 9 h (Mon 2 Mar 2026): look at it.")


def test_the_words_that_are_published_without_a_number_are_said() -> None:
    words = rule(None, Climate.ROOM)
    life = Told(CARROTS, Method.FRESH, "kitchen")
    judged = life.assessed(1, book=by(words)).on(MADE)
    assert judged.rules == (words,)
    assert judged.reasons[0] == "No published figure for carrots (fresh), sealed in a room."
    assert "Words None." in judged.reasons
    guess = rule(3, Climate.ROOM, food="class:poultry", kind=Kind.SAFETY)
    odd = Told(ODD, Method.FRESH, "kitchen").assessed(1, book=by(guess, words)).on(MADE)
    assert odd.rules == (guess, words), "each once"
    assert odd.discard_after == day(3)


# -- dates and their rules -------------------------------------------------------------------------


def test_a_date_rests_on_its_rule() -> None:
    figure = rule(9, Climate.ROOM)
    judged = Told(CARROTS, Method.FRESH, "kitchen").assessed(1, book=by(figure)).on(MADE)
    assert (judged.best_by, judged.rules) == (day(9), (figure,))
    bought = Told("chickens", Method.BOUGHT, "fridge", printed=day(4), dated="use-by").judged(1)
    assert bought.rules == (), "a printed date is no rule"
    assert bought.discard_after == bought.best_by == day(4)


def test_a_printed_date_is_the_best_one_of_bought_food_and_of_no_other() -> None:
    crackers = Told("oats", Method.BOUGHT, "kitchen", printed=day(4)).judged(1)
    assert (crackers.best_by, crackers.discard_after) == (day(4), None)
    dried = Told("apples", Method.DRIED, "larder").judged(1).best_by
    assert Told("apples", Method.DRIED, "larder", printed=day(4)).judged(1).best_by == dried


@pytest.mark.parametrize(("own", "best"), [(5, 5), (12, 9), (9, 9)])
def test_of_the_published_and_the_household_s_own_quality_the_earlier_counts(
    own: int, best: int
) -> None:
    ours = rule(own, Climate.ROOM, id="ours")
    book = replace(by(rule(9, Climate.ROOM)), own=(ours,))
    judged = Told(CARROTS, Method.FRESH, "kitchen").assessed(1, book=book).on(MADE)
    assert judged.best_by == day(best)
    alone = Told(CARROTS, Method.FRESH, "kitchen").assessed(1, book=replace(by(), own=(ours,)))
    assert (alone.best_by, alone.on(MADE).verdict) == (day(own), Verdict.UNKNOWN)


def test_the_household_s_own_safety_limit_runs_beside_the_published_one() -> None:
    ours = rule(2, Climate.ROOM, id="ours", kind=Kind.SAFETY)
    book = replace(by(rule(9, Climate.ROOM, kind=Kind.SAFETY)), own=(ours,))
    life = Told(CARROTS, Method.FRESH, "kitchen")
    assert life.assessed(1, book=book).discard_after == day(2)
    longer = replace(book, own=(replace(ours, use=20.0),))
    assert life.assessed(1, book=longer).discard_after == day(9)


def test_it_is_eaten_first_in_the_last_quarter_of_the_life_it_has_in_its_state() -> None:
    assert stew().assessed(0).soon_from == day(0), "a last day of safety: three days before it"
    jam = Told("strawberry jam", Method.JAM, "larder").at(100).open("fridge").assessed(101)
    assert jam.best_by is not None
    assert jam.soon_from is not None
    life = (jam.best_by - MADE).days - 100
    assert (jam.best_by - jam.soon_from).days == max(1, life // 4)


def test_of_food_in_several_states_the_life_of_the_last_begun_counts() -> None:
    """Thawed on day 11 for three weeks, opened on day 20: of its last eleven days the last two."""
    jam = Told("strawberry jam", Method.FREEZER_JAM, "freezer").at(10).thaw().at(20).open()
    ladder = jam.assessed(21)
    assert (ladder.best_by, ladder.soon_from) == (day(31), day(29))


def test_it_is_said_where_it_may_not_stand() -> None:
    assert stew().at(1).move("kitchen").judged(1, 13).refused != ""
    assert stew().judged(1).refused == ""
    back = stew().at(1).move("kitchen").at(1, 12.5).move("fridge").judged(1, 13)
    assert back.refused == "", "only where it stands now"


# -- signs and looks -------------------------------------------------------------------------------


def test_what_a_sign_says_stands_beside_the_rest() -> None:
    plain = stew().judged(1).reasons
    film = stew().at(1).sign("white film", Verdict.SOUND).judged(1)
    assert film.reasons == (*plain, "Harmless: White film (Mon 2 Mar 2026).")
    mould = stew().at(1).sign("mould", Verdict.DISCARD).judged(1)
    # Of what must go no day is told, neither the best nor the last.
    assert mould.reasons == ("Mould (Mon 2 Mar 2026).", plain[-1])
    assert not any(one.startswith(("Best by", "Discard after")) for one in mould.reasons)
    soft = stew().at(1).sign("one soft piece", Verdict.NEEDS_CARE).look()
    assert soft.judged(1).reasons == (*plain, "Looked at since: One soft piece (Mon 2 Mar 2026).")


def test_of_a_suspect_batch_nothing_is_offered_whatever_it_is() -> None:
    life = Told("apples", Method.DRIED, "larder")
    assert life.judged(1).usable
    life.batch = replace(life.batch, suspect="2A/1 is mouldy")
    assert (life.judged(1).verdict, life.judged(1).usable) == (Verdict.UNKNOWN, False)
    told = "Look at every container of this batch"
    for verdict, own in ((Verdict.UNKNOWN, True), (Verdict.DISCARD, True), (Verdict.SOUND, False)):
        seen = Told("apples", Method.DRIED, "larder").at(1).sign("odd", verdict)
        seen.batch = life.batch
        assert any(told in one for one in seen.judged(1).reasons) is not own, verdict


# -- how far back it reaches -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("life", "last"),
    [
        (stew(), 0), (stew().at(3).move("chest"), 3), (stew().at(3).read("fridge", 38), 3),
        (stew().at(2, 8).cut("fridge", 30), 2), (stew().at(3).read("freezer", 0), 0),
        (stew().at(1).move("chest").at(3).read("fridge", 38), 3), (stew(made=day(6)), 6),
    ],
)  # fmt: skip
def test_a_ladder_rests_on_the_last_of_all_its_facts(life: Told, last: int) -> None:
    assert life.assessed(9).facts_to == day(last)


# -- what is only thought of -----------------------------------------------------------------------


def test_what_came_into_a_place_today_has_its_whole_life_before_it() -> None:
    life = stew()
    judged = judge_fresh(life.batch, State.SEALED, imagined(Climate.FRIDGE), MADE, life.book)
    assert judged.discard_after == day(3)
    assert judged.verdict is Verdict.EAT_SOON


def test_a_pack_without_air_is_one_until_it_is_opened() -> None:
    fish = Told("salmon", Method.HOT_SMOKED, "fridge", vacuum="yes").batch
    plain = fish.food.classes
    assert as_packed(fish, opened=False).food.classes == plain | {"vacuum-packed", "vacuum-fish"}
    assert as_packed(fish, opened=True).food.classes == plain
    beef = Told("beef", Method.FRESH, "fridge", vacuum="yes").batch
    assert as_packed(beef, opened=False).food.classes == beef.food.classes | {"vacuum-packed"}
    loose = Told("beef", Method.FRESH, "fridge").batch
    assert as_packed(loose, opened=False) == loose


# -- the date on a pack ----------------------------------------------------------------------------


def test_only_a_use_by_stands_for_the_published_days() -> None:
    """A sell-by or a best-before on raw poultry counts beside the published day; whichever date it
    is, a quality date behind the last safe day is not shown."""
    sell_by = Told("chickens", Method.BOUGHT, "fridge", printed=day(6)).judged(0)
    assert (sell_by.discard_after, sell_by.best_by) == (day(1), None)
    assert any("record dated=use-by" in one for one in sell_by.reasons)
    use_by = Told("chickens", Method.BOUGHT, "fridge", printed=day(6), dated="use-by").judged(0)
    assert (use_by.discard_after, use_by.best_by) == (day(6), day(6))
    assert not any("dated=use-by" in one for one in use_by.reasons)
