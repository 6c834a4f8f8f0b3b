"""Lives worked out by hand: what struck a container, and what it may still be used for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta

import pytest

from pantry_tui.core.keeping.exposure import as_if, exposures
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import EVER, Cut, FoodFacts, Turn
from pantry_tui.core.words import Acidity, Climate, Group, Method, State, Verdict
from tests.core.keeping.told import MADE, Told, when


def beef(size: str = "") -> Told:
    return Told("ground beef", Method.FROZEN, "freezer", size=size)


def stew() -> Told:
    return Told("stew", Method.MEAL, "fridge")


def jar() -> Told:
    return Told("runner beans", Method.PRESSURE, "larder", minutes="20")


#: What happened, the last day counted from the day made, and whether it is usable when asked.
LIVES: list[tuple[str, Callable[[], tuple[Told, float]], int | None, bool]] = [
    ("frozen at 0 F: no limit", lambda: (beef(), 900), None, True),
    # Thawing: USDA FSIS, the big thaw; a day for each 5 lb begun; ground meat 1 day then.
    ("a pack thaws in a day", lambda: (beef().at(5).thaw(), 6), 7, True),
    ("12 lb thaw in three", lambda: (beef("12 lb bag").at(5).thaw(), 6), 9, True),
    ("thawed sooner", lambda: (beef("12 lb").at(5).thaw().at(6).thaw(None, "done"), 6), 7, True),
    ("thawed by a second word", lambda: (beef("12 lb").at(5).thaw().at(6).thaw(None), 6), 7, True),
    ("moved without a word", lambda: (beef("12 lb").at(5).move("fridge"), 5.9), 6, True),
    ("cold water: cook at once", lambda: (beef().at(5).thaw("fridge", "cold water"), 5.9), 5, True),
    ("the cold does not bring it back", lambda: (beef().at(5).thaw().move("chest"), 30), 7, False),
    # Opened while frozen goes on as frozen, and is thawed once it is out.
    ("opened frozen", lambda: (beef().at(5).open(), 300), None, True),
    ("opened frozen, then out", lambda: (beef().at(5).open().at(9).move("fridge"), 40), 10, False),
    # Readings: FSIS, two hours above 40 F in all.
    ("90 minutes", lambda: (
        stew().at(1, 12).read("fridge", 45, 90).at(1, 12.1).read("fridge", 38), 2), 3, True),
    ("two hours and a minute", lambda: (stew().at(1, 13).read("fridge", 45, 121), 1.6), 0, False),
    ("twice 90 minutes", lambda: (
        stew().at(1, 8).read("fridge", 45, 90).at(1, 8.1).read("fridge", 38)
        .at(2, 8).read("fridge", 45, 90).at(2, 8.1).read("fridge", 38), 2.5), 1, False),
    ("above 90 F one hour", lambda: (
        stew().at(1, 12).read("fridge", 95, 61).at(1, 12.1).read("fridge", 38), 2), 0, False),
    ("since nobody knows when", lambda: (
        stew().at(1, 8).read("fridge", 38).at(1, 12).read("fridge", 45), 1.6), 0, False),
    ("since nobody knows when, set colder in between", lambda: (
        stew().at(1, 8).read("fridge", 38).at(1, 11).hold("fridge", Climate.FRIDGE, 36)
        .at(1, 12).read("fridge", 45), 1.6), 0, False),
    ("read warm, and the thermostat set colder", lambda: (
        stew().at(1, 8).read("fridge", 38).at(1, 12).read("fridge", 45, 30)
        .at(1, 12.1).hold("fridge", Climate.FRIDGE, 36), 1.7), 0, False),
    ("read warm, set colder, and read cold", lambda: (
        stew().at(1, 8).read("fridge", 38).at(1, 12).read("fridge", 45, 30)
        .at(1, 12.1).hold("fridge", Climate.FRIDGE, 36).at(1, 13).read("fridge", 38), 1.7), 3,
     True),
    ("moved away the same day, after it was warm", lambda: (
        beef().at(5, 8).read("freezer", 0).at(5, 12).read("freezer", 50)
        .at(5, 12.5).move("chest"), 30), 4, False),
    ("moved away before, told after", lambda: (
        stew().at(1, 16).move("second fridge").at(1, 15).read("fridge", 60, 180), 2), 0, False),
    ("put in after it was cold again", lambda: (
        Told("stew", Method.MEAL, "fridge", hour=18).at(0, 8).read("fridge", 60)
        .at(0, 12).read("fridge", 38), 1), 3, True),
    ("at any hour of the day of the reading", lambda: (
        stew().at(1, None).move("second fridge").at(1, 12).read("fridge", 60, 180), 2), 0, False),
    # After a warm reading a freezer may freeze again: thawed then, fish has a day.
    ("into a freezer that was read too warm, and out", lambda: (
        Told("trout", Method.HOT_SMOKED, "fridge").at(1, 8).read("freezer", 38, 600)
        .at(1, 18).move("freezer").at(1, 21).move("fridge"), 2), 2, True),
    # Put up on the minute on which the freezer became a fridge: it may never have been frozen.
    ("a freezer that was one no more", lambda: (
        Told("milk", Method.FROZEN, "freezer").at(0, 10).hold("freezer", Climate.FRIDGE), 1), 1,
     False),
    ("a freezer that was one no more, and on to a fridge", lambda: (
        Told("butter", Method.FROZEN, "freezer").at(0, 10).hold("freezer", Climate.CELLAR)
        .move("fridge"), 0.5), 1, False),
    # 41 F: the stricter of both worlds' day counts (Food Standards Scotland, leftovers 2 days).
    ("a fridge at 41 F", lambda: (stew().at(0, 12).read("fridge", 41), 1), 2, True),
    ("a fridge at 40 F", lambda: (stew().at(0, 12).read("fridge", 40), 1), 3, True),
    # Power cuts: 4 h in a fridge, 48 h in a full freezer, 24 in a half full one.
    ("four hours", lambda: (stew().at(1, 8).cut("fridge", 4), 1.9), 3, True),
    ("a quarter more", lambda: (stew().at(1, 8).cut("fridge", 4.25), 1.9), 0, False),
    ("3.5 and 3.5 with half an hour between", lambda: (
        stew().at(1, 8).cut("fridge", 3.5).at(1, 12).cut("fridge", 3.5), 1.9), 0, False),
    ("the same, the air read cold between", lambda: (
        stew().at(1, 8).cut("fridge", 3.5).at(1, 11.75).read("fridge", 38)
        .at(1, 12).cut("fridge", 3.5), 1.9), 0, False),
    ("an hour between, read cold", lambda: (
        stew().at(1, 8).cut("fridge", 3.5).at(1, 12.1).read("fridge", 38)
        .at(1, 12.5).cut("fridge", 3.5), 1.9), 3, True),
    ("overlapping ones count once", lambda: (
        stew().at(1, 8).cut("fridge", 3).at(1, 9).cut("fridge", 3), 1.9), 3, True),
    # What lies between two cuts is no time without power, and a shut door held both.
    ("two hours and one, with six between", lambda: (
        stew().at(1, 8).cut("fridge", 2).at(1, 16).cut("fridge", 1), 1.9), 3, True),
    ("two hours and two and a quarter, with six between", lambda: (
        stew().at(1, 8).cut("fridge", 2).at(1, 16).cut("fridge", 2.25), 1.9), 0, False),
    ("put in while it was off, and off again", lambda: (
        Told("stew", Method.MEAL, "fridge", hour=16).at(0, 15).cut("fridge", 2)
        .at(0, 20).cut("fridge", 1.25), 1), -1, False),
    ("put in while it was off, and off again for less", lambda: (
        Told("stew", Method.MEAL, "fridge", hour=16).at(0, 15).cut("fridge", 2)
        .at(0, 20).cut("fridge", 0.75), 1), 3, True),
    ("put in the day after", lambda: (
        Told("stew", Method.MEAL, "fridge").at(-1, 8).cut("fridge", 9), 1), 3, True),
    ("put in while it was off, for an hour", lambda: (
        Told("stew", Method.MEAL, "fridge", hour=16).at(0, 8).cut("fridge", 9), 1), 3, True),
    ("48 h, full", lambda: (beef().at(2, 8).cut("freezer", 48, True), 30), None, True),
    ("48 h, nobody knows how full", lambda: (beef().at(2, 8).cut("freezer", 48), 30), 1, False),
    ("60 h, ice left", lambda: (
        beef().at(2, 8).cut("freezer", 60, True, None, True), 30), None, True),
    # Opened: each state has a clock of its own.
    ("opened jar", lambda: (jar().at(9).open("fridge"), 10), 12, True),
    ("opened on the shelf", lambda: (jar().at(9, 12).open(), 9.7), 8, False),
    ("opened on the shelf, in the fridge an hour later", lambda: (
        jar().at(9, 12).open().at(9, 13).move("fridge"), 10), 12, True),
    # README, defaults: anything thawed without a closer figure, one day.
    ("what was taken out of a jar, frozen and thawed", lambda: (
        jar().at(1, 12).open("freezer").at(9, 12).move("fridge"), 10), 10, True),
    ("half of it drawn, nobody says when", lambda: (jar().holding("1 l", "0.5 l"), 1), -1, False),
    ("a vacuum pack opened", lambda: (
        Told("salmon", Method.HOT_SMOKED, "fridge", vacuum="yes").at(1).open(), 2), 5, True),
    ("smoked fish on a shelf", lambda: (
        Told("salmon", Method.COLD_SMOKED, "freezer").at(3, 12).move("kitchen"), 3.6), 2, False),
    # Closed, it may grow botulism while it thaws; opened first in the same minute it may not.
    ("vacuum-packed fish thawed shut", lambda: (
        Told("salmon", Method.FROZEN, "freezer", vacuum="yes").at(3, 12).thaw(), 3.6), 2, False),
    ("and opened first", lambda: (
        Told("salmon", Method.FROZEN, "freezer", vacuum="yes").at(3, 12).open().thaw(), 3.6), 5,
     True),
    # Bought food: the date on the pack stands for its figures while it is shut.
    ("printed", lambda: (
        Told("chickens", Method.BOUGHT, "fridge", printed=MADE + timedelta(4), dated="use-by"), 1),
     4, True),
    ("printed, but no use-by: the published day counts too", lambda: (
        Told("chickens", Method.BOUGHT, "fridge", printed=MADE + timedelta(4)), 1), 1, True),
    ("printed, no use-by, and sooner than the published day", lambda: (
        Told("chickens", Method.BOUGHT, "fridge", printed=MADE), 0.9), 0, True),
    ("a use-by so far ahead was misread", lambda: (
        Told("chickens", Method.BOUGHT, "fridge", printed=MADE + timedelta(22), dated="use-by"),
        1), 1, True),
    ("the furthest use-by", lambda: (
        Told("chickens", Method.BOUGHT, "fridge", printed=MADE + timedelta(21), dated="use-by"),
        1), 21, True),
    ("printed, on a shelf", lambda: (
        Told("chickens", Method.BOUGHT, "kitchen", printed=MADE + timedelta(4)), 1), -1, False),
    ("printed, opened, and called thawed though it never froze", lambda: (
        Told("hard cheese", Method.BOUGHT, "fridge", printed=MADE + timedelta(20))
        .at(9, 11).thaw().at(9, 19).open(), 9.9), 10, True),
    ("printed, packed without air, on a shelf", lambda: (
        Told("carrots", Method.BOUGHT, "fridge", vacuum="yes", printed=MADE + timedelta(9))
        .at(1).move("kitchen"), 1.6), 0, False),
    ("printed, pesto in a tub, on a shelf", lambda: (
        Told("pesto", Method.BOUGHT, "fridge", size="tub", printed=MADE + timedelta(9))
        .at(1, 12).move("kitchen"), 1.6), 0, False),
    ("printed, pesto in a tub, in a fridge", lambda: (
        Told("pesto", Method.BOUGHT, "fridge", size="tub", printed=MADE + timedelta(9)), 1), 9,
     False),
    ("a use-by, pesto in a tub, in a fridge", lambda: (
        Told("pesto", Method.BOUGHT, "fridge", size="tub", printed=MADE + timedelta(9),
             dated="use-by"), 1), 9, True),
    ("a use-by, pesto in a jar, in a kitchen: nobody knows", lambda: (
        Told("pesto", Method.BOUGHT, "kitchen", size="jar", printed=MADE + timedelta(9),
             dated="use-by"), 1), 9, False),
    ("pesto in a jar, from a shelf", lambda: (
        Told("pesto", Method.BOUGHT, "kitchen", size="jar", printed=MADE + timedelta(9),
             sold="shelf"), 1), None, True),
    ("printed, a tin that froze", lambda: (
        Told("runner beans", Method.BOUGHT, "freezer", size="tin", printed=MADE + timedelta(900))
        .at(1, 12).move("larder"), 3), None, False),
    ("printed, beans in a jar, on a shelf", lambda: (
        Told("runner beans", Method.BOUGHT, "kitchen", size="jar", printed=MADE + timedelta(9)),
        3), None, True),
    # A moment still to come counts as now, and so would every day: not usable until put right.
    ("a clock in 2028", lambda: (beef().at(700).thaw("fridge", "microwave"), 6), 6, False),
    ("a clock an hour ahead", lambda: (beef().at(6, 13).thaw("fridge", "microwave"), 6), 6, True),
]  # fmt: skip


@pytest.mark.parametrize(
    ("told", "last", "usable"), [one[1:] for one in LIVES], ids=[one[0] for one in LIVES]
)
def test_a_life(told: Callable[[], tuple[Told, float]], last: int | None, usable: bool) -> None:
    life, asked = told()
    day, hour = int(asked), 24 * (asked % 1) if asked % 1 else 12.0
    judged = life.judged(day, hour)
    assert life.last(day, hour) == last, judged.reasons
    assert judged.usable is usable, judged
    assert (judged.verdict in UNFIT) <= (not usable)


def test_up_to_two_hours_it_says_how_many_minutes_are_left() -> None:
    life = stew().at(1, 12).read("fridge", 45, 90)
    found = life.assessed(1, 12)
    assert found.on(when(1, 12).day).verdict is Verdict.EAT_SOON
    assert "within 30 minutes" in " ".join(found.reasons)
    assert found.again_at == when(1, 12).first + 31
    assert found.steps()[-1] == (MADE + timedelta(days=2), Verdict.DISCARD)
    assert life.judged(1, 12.55).verdict is Verdict.DISCARD


def test_what_cannot_hurt_is_offered_where_nothing_is_published_and_what_can_is_not() -> None:
    crop = Told("carrots", Method.FRESH, "kitchen").judged(60)
    assert crop.verdict is Verdict.UNKNOWN
    assert crop.usable
    milk = Told("milk", Method.FRESH, "fridge").at(1).open("kitchen").judged(1, 13)
    assert not milk.usable or milk.verdict is Verdict.EAT_SOON
    cure = Told("hams", Method.SALTED, "fridge", State.IN_PROGRESS).judged(30)
    assert cure.verdict is Verdict.UNKNOWN, "dates or a refusal, and no care for ever"
    assert not cure.usable


def test_sprouts_can_hurt_also_where_no_table_knows_them() -> None:
    odd = FoodFacts("alfalfa sprouts", Group.VEGETABLE, Acidity.LOW_ACID, frozenset(), known=False)
    assert not Told(odd, Method.FRESH, "fridge").judged(1).usable
    assert Told("brussels sprouts", Method.FRESH, "fridge").judged(1).usable


def test_ones_own_jar_without_a_record_is_usable_and_says_so_for_ever() -> None:
    own = Told("runner beans", Method.PRESSURE, "larder").judged(100)
    assert own.usable
    assert any("not checked" in one for one in own.standing)
    assert not jar().judged(100).standing or "No process" not in jar().judged(100).standing[0]
    theirs = Told("runner beans", Method.PRESSURE, "larder", by="a neighbour").judged(100)
    assert theirs.verdict is Verdict.UNKNOWN
    assert not theirs.usable
    sour = Told("peaches", Method.BOILING_WATER, "larder", by="a neighbour").judged(100)
    assert sour.usable


def test_a_household_that_follows_the_strictest_advice_has_the_shorter_days() -> None:
    """Food Standards Scotland: leftovers within two days; foodsafety.gov: three to four."""
    assert stew().last(0) == 3
    assert stew().strictest().last(0) == 2


def test_what_if_appends_a_turn_and_leaves_the_container_as_it_was() -> None:
    life = beef()
    moved = as_if(life.box, Turn(when(3, 12), "x", "kitchen", State.OPEN))
    assert (moved.place, moved.state, len(moved.turns)) == ("kitchen", State.OPEN, 2)
    assert (life.box.place, len(life.box.turns)) == ("freezer", 1)


def test_a_shelf_in_a_freezer_lives_by_the_readings_and_cuts_of_the_freezer() -> None:
    life = Told("ground beef", Method.FROZEN, "chest")
    shelf = life.places["chest"].__class__("drawer", "drawer", Climate.FREEZER, parent="chest")
    life.places["drawer"] = shelf.__class__(
        "drawer", "drawer", Climate.FREEZER, parent="chest", facts=life.places["chest"].facts
    )
    life.at(1).move("drawer").at(4, 12).read("chest", 50, 600)
    assert life.judged(6).verdict is Verdict.DISCARD
    other = Told("ground beef", Method.FROZEN, "chest")
    other.places = {**life.places, "chest": Told("peas", Method.FROZEN, "chest").places["chest"]}
    other.at(1).move("drawer").at(4, 12).cut("chest", 60)
    assert other.judged(7).verdict is Verdict.DISCARD


def test_an_ice_box_is_without_power_with_its_refrigerator() -> None:
    life = Told("ground beef", Method.FROZEN, "chest")
    life.places["chest"] = life.places["chest"].__class__(
        "chest", "ice box", Climate.FREEZER, parent="fridge", facts=life.places["chest"].facts
    )
    life.at(1, 8).cut("fridge", 50, full=True, max_temp_f=38)
    assert life.judged(5).verdict is Verdict.DISCARD, "38 F was read in the refrigerator"
    assert "50 h" in life.judged(5).reasons[0]


def test_a_cut_over_which_a_refrigerator_was_made_a_freezer_is_judged_as_both() -> None:
    """Raw mushrooms keep in a warm refrigerator; thawed vegetables go after six hours."""
    life = Told("mushrooms", Method.FRESH, "fridge").at(2, 12).hold("fridge", Climate.FREEZER)
    life.at(2, 9).cut("fridge", 60)
    assert life.judged(6).verdict is Verdict.DISCARD


def test_a_cut_since_nobody_knows_when_has_no_length() -> None:
    life = stew()
    end = when(1, 12)
    life.places["fridge"] = replace(
        life.places["fridge"], facts=(*life.places["fridge"].facts, Cut(EVER, end))
    )
    said = life.judged(1, 13).reasons[0]
    assert said.startswith("Power cut of unknown length (Sun 1 Mar 2026): discard.")


def test_more_acts_in_an_unknown_hour_than_can_be_put_in_order_count_as_all_of_them() -> None:
    life = Told("ground beef", Method.FROZEN, "freezer")
    for place in ("chest", "freezer", "kitchen", "chest", "freezer", "chest", "freezer"):
        life.at(2, None).move(place)
    spans = exposures(life.batch, life.box, life.places, when(9, 12))
    assert {span.place for span in spans if span.end > when(8, 0).first} == {
        "chest", "freezer", "kitchen",
    }  # fmt: skip
    assert life.judged(9).verdict is Verdict.DISCARD


@pytest.mark.parametrize("group", list(Group))
def test_what_nobody_knows_in_a_place_without_a_figure_is_never_called_sound(group: Group) -> None:
    odd = FoodFacts("something", group, Acidity.LOW_ACID, frozenset(), known=False)
    for method in Method:
        for climate, place in ((Climate.ROOM, "kitchen"), (Climate.FRIDGE, "fridge")):
            judged = Told(odd, method, place).judged(40)
            figures = judged.best_by or judged.discard_after
            if not figures and not judged.rules:
                assert judged.verdict is not Verdict.SOUND, (method, climate, judged)
