"""One thing turned into another: the line of descent, its dates, suspicion and recall both ways."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

import pytest

from pantry_tui.app.texts import reading_text
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import BadInput, PantryError, Refused
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.lookup import signs
from pantry_tui.services.lookup.recall import recall
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, count, cut_hours, outage, places, readings, undo, view
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.seen import At


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "cellar", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def rows(p: Pantry, code: str) -> list[DueRow]:
    return [row for row in view.due(p) if row.code == code]


def wait(p: Pantry, days: int) -> None:
    p.today += timedelta(days=days)


@pytest.mark.parametrize(
    ("bought", "into", "days"),
    [
        # University of Missouri Extension MP557: canned fish, once opened, two days.
        ("1 tin tuna, bought in, larder", "1 box, fridge", 2),
        ("1 pouch tuna, bought in, larder, sold=shelf", "1 box, fridge", 2),
        ("1 jar tomatoes, bought in, larder", "1 box, fridge", 5),
        ("1 jar chickpeas, bought in, larder", "1 tub, fridge", 3),
        # What was never in a tin is none by the box that it is put into.
        ("1 lb tuna, bought in, fridge", "1 tin, fridge", 1),
        ("1 bag carrots, bought in, larder", "1 jar, fridge", None),
    ],
)
def test_the_rest_of_a_tin_is_food_of_a_tin_in_any_box(
    p: Pantry, bought: str, into: str, days: int | None
) -> None:
    new = repack.repack(p, up(p, bought), into).code
    (row,) = rows(p, new)
    assert row.discard_after == (None if days is None else p.today + timedelta(days=days))
    assert (row.verdict is Verdict.UNKNOWN) is (days is None)


def test_what_happened_before_it_was_repacked_is_booked_as_the_refusal_says(p: Pantry) -> None:
    jar = up(p, "1 jar honey, bought in, larder, 9 days ago")
    new = repack.repack(p, jar, "1 tub, larder").code
    before = At(day=p.today - timedelta(days=3))
    for ref in (jar, f"{jar}/1"):
        with pytest.raises(Refused, match=rf"it goes on as {new}\. To book what happened") as told:
            act.open_(p, ref, at=before)
    event = str(told.value).partition("`undo ")[2].partition("`")[0]
    undo.undo(p, event)
    act.open_(p, jar, at=before)
    again = repack.repack(p, jar, "1 tub, larder").code
    act.use(p, again, "all")
    with pytest.raises(Refused) as gone:
        act.use(p, again)
    assert "goes on" not in str(gone.value), "what was eaten went into nothing"


def test_a_crock_that_is_ready_goes_into_jars_and_one_undo_takes_it_back(p: Pantry) -> None:
    crock = up(p, "1 20 l crock sauerkraut, lactic ferment, larder, salt=2.25%")
    made = p.today
    wait(p, 36)
    with pytest.raises(Refused, match="still in progress"):
        repack.repack(p, crock, "6 quart jars, fridge")
    with pytest.raises(Refused):
        act.use(p, crock)
    jars = repack.ready_into(p, crock, "6 quart jars, fridge").containers
    assert len(jars) == 6
    (row,) = rows(p, jars[0].partition("/")[0])
    assert (row.count, row.place, row.state) == (6, "fridge", State.SEALED)
    batch = p.batch(row.code)
    assert batch is not None
    assert batch.made == made, "it goes on with the day on which it was made"
    assert not rows(p, crock)
    undo.undo(p)
    (row,) = rows(p, crock)
    assert row.state is State.IN_PROGRESS
    undo.redo(p)
    assert not rows(p, crock)


def test_a_big_pack_is_split_and_keeps_its_dates(p: Pantry) -> None:
    old = up(p, "1 9 lb bag beef roast, frozen, chest")
    best = rows(p, old)[0].best_by
    wait(p, 60)
    new = repack.repack(p, old, "9 1 lb packs, chest")
    assert (new.best_by, new.discard_after) == (best, None)
    assert new.made_from[0].took == "9 lb"
    assert not rows(p, old)


def test_a_part_is_taken_and_the_rest_stays(p: Pantry) -> None:
    old = up(p, "1 40 lb sack apples, cellar-stored, cellar")
    made = putup.put_up(
        p, putup.read(p, f"5 quart jars apples, dried, larder, from 10 lb of {old}")
    )
    assert made.made_from[0] == (old, f"{old}/1", "10 lb", "30 lb")
    assert rows(p, old)[0].amount == "30 lb"
    year = made.best_by
    assert year is not None
    assert year > p.today + timedelta(days=100), "dried apples have a life of their own"
    undo.undo(p)
    assert rows(p, old)[0].amount == "40 lb"
    assert not rows(p, made.code)


def test_jam_of_strawberries_a_year_in_the_freezer_has_its_own_year(p: Pantry) -> None:
    berries = up(p, "8 quart bags strawberries, frozen, chest")
    wait(p, 400)
    fresh = up(p, "6 half-pint jars strawberry jam, jam, larder")
    line = f"6 half-pint jars strawberry jam, jam, larder, from {berries}, {berries}/2"
    jam = putup.put_up(p, putup.read(p, line))
    assert jam.best_by == rows(p, fresh)[0].best_by
    assert [one.container for one in jam.made_from] == [f"{berries}/1", f"{berries}/2"]
    assert rows(p, berries)[0].count == 6


def test_thawed_beef_becomes_a_stew_with_the_days_of_a_cooked_meal(p: Pantry) -> None:
    beef = up(p, "2 1 lb packs ground beef, frozen, chest")
    act.thaw(p, f"{beef}/1")
    wait(p, 1)
    plain = up(p, "1 tub stew, cooked meal, fridge")
    stew = putup.put_up(p, putup.read(p, f"1 tub stew, cooked meal, fridge, from {beef}/1"))
    assert stew.discard_after == rows(p, plain)[0].discard_after is not None
    wait(p, 5)
    act.thaw(p, f"{beef}/2")
    wait(p, 9)
    with pytest.raises(Refused):
        putup.put_up(p, putup.read(p, f"1 tub stew, cooked meal, fridge, from {beef}/2"))


def test_what_is_out_of_an_opened_jar_goes_on_as_opened(p: Pantry) -> None:
    jar = up(p, "2 quart jars peaches, boiling-water canned, larder, minutes=30")
    act.open_(p, f"{jar}/1")
    last = next(r.discard_after or r.best_by for r in rows(p, jar) if r.state is State.OPEN)
    wait(p, 1)
    box = repack.repack(p, f"{jar}/1", "2 half-pint jars, fridge")
    assert (box.discard_after or box.best_by) == last
    assert rows(p, box.code)[0].state is State.OPEN


def test_dried_tops_become_a_jar_of_powder(p: Pantry) -> None:
    tray = up(p, "1 tray onions, dried, larder")
    best = rows(p, tray)[0].best_by
    wait(p, 30)
    powder = repack.repack(p, tray, "1 half-pint jar, larder")
    assert (powder.best_by, powder.verdict) == (best, Verdict.SOUND)


def test_a_power_cut_that_is_booked_late_strikes_what_was_made_of_it(p: Pantry) -> None:
    beef = up(p, "1 1 lb pack ground beef, frozen, chest")
    wait(p, 10)
    stew = putup.put_up(p, putup.read(p, f"1 tub stew, frozen, chest, from {beef}"))
    assert rows(p, stew.code)[0].verdict in (Verdict.SOUND, Verdict.EAT_SOON)
    start = (p.today - timedelta(days=8)).isoformat()
    end = (p.today - timedelta(days=4)).isoformat()
    chest = p.find_place("chest")
    first, last = cut_hours.times(f"{start} 06:00", f"{end} 06:00", p.today)
    outage.book(p, chest, outage.cut_of(p, chest, first, last, ice=False))
    (row,) = rows(p, stew.code)
    assert row.verdict is Verdict.DISCARD, row.reasons
    assert "Made from" in row.reasons[0]


def test_suspicion_goes_down_and_up_the_line(p: Pantry) -> None:
    crock = up(p, "3 quart jars dill pickles, vinegar pickle, larder, vinegar=5%")
    half = repack.repack(p, f"{crock}/1", "2 half-pint jars, fridge").code
    signs.mark(p, f"{crock}/2", "bulging lid")
    (row,) = rows(p, half)
    assert row.verdict is Verdict.UNKNOWN, row.reasons
    assert not row.usable
    undo.undo(p)
    assert rows(p, half)[0].verdict is not Verdict.UNKNOWN
    other = repack.repack(p, f"{crock}/2", "2 half-pint jars, fridge").code
    signs.mark(p, f"{other}/1", "bulging lid")
    (row,) = rows(p, crock)
    assert (row.verdict, row.usable) == (Verdict.UNKNOWN, False)
    signs.mark(p, f"{crock}/3", "looks sound")
    assert rows(p, crock)[0].verdict is Verdict.SOUND


def test_a_look_before_the_filling_went_bad_says_nothing_of_it(p: Pantry) -> None:
    crock = up(p, "3 quart jars dill pickles, vinegar pickle, larder, vinegar=5%")
    signs.mark(p, f"{crock}/2", "looks sound")
    half = repack.repack(p, f"{crock}/1", "2 half-pint jars, fridge").code
    signs.mark(p, f"{half}/2", "looks sound")
    wait(p, 1)
    signs.mark(p, f"{half}/1", "bulging lid")
    assert {row.verdict for row in rows(p, crock)} == {Verdict.UNKNOWN}
    undo.undo(p)
    signs.mark(p, f"{crock}/3", "bulging lid")
    assert {row.verdict for row in rows(p, half)} == {Verdict.UNKNOWN}


def test_recall_names_what_it_came_from_and_what_it_became(p: Pantry) -> None:
    berries = up(p, "2 quart bags strawberries, frozen, chest")
    line = f"6 half-pint jars strawberry jam, jam, larder, from {berries}/1"
    jam = putup.put_up(p, putup.read(p, line)).code
    act.give(p, jam, 1, "Aunt Sunniva")
    up_, down = recall(p, jam), recall(p, berries)
    assert {one.container for one in up_} == {one.container for one in down}
    went = next(one for one in down if one.container == f"{berries}/1")
    assert (went.state, went.to) == ("repacked", f"{jam} strawberry jam")
    assert any(one.to == "Aunt Sunniva" for one in down)


@pytest.mark.parametrize(
    "line",
    [
        "2 pint jars stew, pressure canned, larder, from {gone}",
        "2 pint jars stew, cooked meal, fridge, from 9 lb of {beef}",
        "2 tubs stew, cooked meal, fridge, from 9ZZ",
    ],
)
def test_what_is_not_there_is_refused_and_nothing_booked(p: Pantry, line: str) -> None:
    beef = up(p, "2 1 lb packs ground beef, frozen, chest")
    gone = up(p, "1 1 lb pack ground beef, frozen, chest")
    act.use(p, gone)
    events = len(p.events)
    with pytest.raises(PantryError):
        putup.put_up(p, putup.read(p, line.format(beef=beef, gone=gone)))
    assert len(p.events) == events


def test_two_women_buy_from_maren(p: Pantry) -> None:
    """ "from" is no word of descent unless a lid code stands behind it."""
    reading = putup.read(p, "4 quart jars plums, boiling-water canned, larder, note=from Maren")
    assert (reading.sources, reading.note) == ((), "from Maren")


Do = Callable[[Pantry, str], object]


def test_dates_are_never_later_than_those_of_the_part(p: Pantry) -> None:
    """Whatever was done to it before: split on any day, it ends no later than it would have."""
    befores: tuple[Do, ...] = (
        act.open_,
        act.thaw,
        lambda p, ref: act.move(p, ref, "fridge"),
        lambda p, ref: act.use(p, ref, "half"),
    )
    for before in befores:
        code = up(p, "2 4 lb packs ground beef, frozen, chest")
        before(p, f"{code}/1")
        then = next(r for r in rows(p, code) if f"{code}/1" in r.container_ids)
        try:
            new = repack.repack(p, f"{code}/1", f"4 1 lb packs, {then.place}")
        except Refused:
            continue
        for name in ("best_by", "discard_after"):
            was: date | None = getattr(then, name)
            now: date | None = getattr(new, name)
            assert was is None or (now is not None and now <= was), (before, name, was, now)


# -- what is found out later ----------------------------------------------------------------------

BEANS = "6 pint jars runner beans, pressure canned, larder, minutes=20, psi=11, canner=dial"


def test_a_warm_fridge_that_is_found_out_later_strikes_what_was_frozen_out_of_it(p: Pantry) -> None:
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    wait(p, 1)
    frozen = repack.repack(p, f"{beans}/1", "1 pint tub, chest").code
    assert rows(p, frozen)[0].usable
    readings.read(p, "fridge", 52.0, since=20 * 60)
    assert rows(p, frozen)[0].verdict is Verdict.DISCARD


def test_what_a_count_finds_more_of_a_filling_is_as_old_as_the_filling(p: Pantry) -> None:
    beans = up(p, BEANS)
    halves = repack.repack(p, f"{beans}/1", "2 half-pint jars, fridge").code
    wait(p, 8)
    fridge = p.find_place("fridge")
    count.from_counts(p, fridge, {halves: 3})
    count.finish(p, fridge)
    assert {row.verdict for row in rows(p, halves)} == {Verdict.DISCARD}


def test_the_opening_under_a_filling_is_not_taken_back_alone(p: Pantry) -> None:
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    opened = undo.newest(p)
    assert opened is not None
    repack.repack(p, f"{beans}/1", "1 pint jar, fridge")
    with pytest.raises(Refused, match="came after it"):
        undo.undo(p, opened.id)


def test_looks_do_not_clear_the_other_half_of_a_jar_that_must_not_be_tasted(p: Pantry) -> None:
    beans = up(p, BEANS)
    halves = repack.repack(p, f"{beans}/1", "2 half-pint jars, fridge").code
    signs.mark(p, f"{halves}/1", "foul or musty smell")
    with pytest.raises(Refused, match="same food"):
        signs.mark(p, f"{halves}/2", "looks sound")


@pytest.mark.parametrize("late", [0, 2, 3])
def test_the_freezer_holds_the_days_of_what_was_opened_back(p: Pantry, late: int) -> None:
    """USDA FSIS, Freezing and Food Safety: out of the can, food may be frozen, and frozen in time
    it stays safe. The three days of opened vegetables run on once it is thawed."""
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    last = next(row for row in rows(p, beans) if row.state is State.OPEN).discard_after
    assert last == p.today + timedelta(days=3)
    wait(p, late)
    frozen = repack.repack(p, f"{beans}/1", "1 pint tub, chest")
    assert frozen.discard_after is None
    wait(p, 60)
    assert rows(p, frozen.code)[0].usable
    act.thaw(p, frozen.code)
    (row,) = rows(p, frozen.code)
    assert row.discard_after is not None
    assert row.discard_after <= p.today + timedelta(days=1 + 3 - late)


def test_what_was_opened_too_long_ago_is_not_saved_by_freezing_it(p: Pantry) -> None:
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    wait(p, 4)
    with pytest.raises(Refused):
        repack.repack(p, f"{beans}/1", "1 pint tub, chest")


@pytest.mark.parametrize(
    ("line", "much"),
    [
        ("2 2-lb packs ground beef, fresh, fridge", "1 lb"),
        ("2 2-lb packs pork chops, fresh, fridge", "half"),
        ("2 quart tubs chicken soup, cooked meal, fridge", "1 pint"),
        ("2 500 g packs butter, fresh, fridge", "half"),
        ("2 quart cartons milk, fresh, fridge", "1 pint"),
    ],
)
@pytest.mark.parametrize("how", ["half", "whole", "opened"])
def test_half_a_pack_is_frozen_food_as_a_whole_one_is(
    p: Pantry, line: str, much: str, how: str
) -> None:
    code = up(p, line)
    if how == "opened":
        act.open_(p, f"{code}/1")
    new = repack.repack(p, f"{code}/1", "1 box, frozen, chest", much if how == "half" else "")
    assert (new.verdict, new.discard_after) == (Verdict.SOUND, None)
    wait(p, 30)
    assert rows(p, new.code)[0].usable


def test_what_becomes_of_the_rest_of_a_pack_is_not_what_became_of_the_frozen_half(
    p: Pantry,
) -> None:
    code = up(p, "1 2-lb pack ground beef, fresh, fridge")
    half = repack.repack(p, code, "1 bag, frozen, chest", "1 lb").code
    wait(p, 1)
    act.move(p, code, "chest")
    act.move(p, code, "fridge")
    wait(p, 5)
    assert rows(p, code)[0].verdict is Verdict.DISCARD
    assert rows(p, half)[0].usable


def test_what_was_thawed_and_opened_since_is_not_frozen_anew(p: Pantry) -> None:
    """However it was parted between, the last day of what thawed stays."""
    code = up(p, "1 4-lb pack ground beef, frozen, chest")
    act.thaw(p, code)
    wait(p, 1)
    pack = repack.repack(p, code, "2 2-lb packs, fridge").code
    last = rows(p, pack)[0].discard_after
    assert last is not None
    act.use(p, pack, "half")
    (begun,) = (row for row in rows(p, pack) if row.amount)
    again = repack.repack(p, begun.container_ids[0], "1 bag, frozen, chest")
    assert again.discard_after is not None
    assert again.discard_after <= last


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("2 packs ground beef, fresh, fridge", 1), ("2 tubs chicken soup, cooked meal, fridge", 3),
        ("2 packs salmon, fresh, fridge", 1), ("2 boxes cooked rice, cooked meal, fridge", 1),
    ],
)  # fmt: skip
def test_to_repack_in_time_is_to_freeze_and_to_move_keeps_the_date(
    p: Pantry, line: str, days: int
) -> None:
    """USDA FSIS, Freezing and Food Safety: food frozen in time stays safe. That it was frozen is
    said by repacking it; no move and no cooler place moves `discard after` later."""
    code, last = up(p, line), p.today + timedelta(days=days)
    assert rows(p, code)[0].discard_after == last
    act.move(p, f"{code}/1", "chest")
    assert rows(p, code)[0].discard_after == last
    frozen = repack.repack(p, f"{code}/2", "1 bag, chest")
    assert frozen.discard_after is None
    wait(p, days + 1)
    assert rows(p, code)[0].verdict is Verdict.DISCARD
    assert rows(p, frozen.code)[0].usable


def test_what_is_past_its_day_is_not_saved_by_freezing_it(p: Pantry) -> None:
    code = up(p, "2 packs ground beef, fresh, fridge")
    act.move(p, f"{code}/1", "chest")
    wait(p, 2)
    for one in (f"{code}/1", f"{code}/2"):
        with pytest.raises(Refused):
            repack.repack(p, one, "1 bag frozen, chest")


def test_what_is_cooked_or_has_no_limit_begins_anew(p: Pantry) -> None:
    """A crop has no last day, and a stew of mince is another thing."""
    berries = up(p, "4 lb strawberries, fresh, fridge")
    assert repack.repack(p, berries, "2 bags frozen, chest").discard_after is None
    mince = up(p, "1 pack ground beef, fresh, fridge")
    wait(p, 1)
    stew = repack.repack(p, mince, "1 pot beef stew, cooked meal, fridge")
    assert stew.discard_after == p.today + timedelta(days=3)


@pytest.mark.parametrize("method", ["fresh", "in oil"])
def test_what_is_only_kept_in_another_way_keeps_the_limit_that_ran(p: Pantry, method: str) -> None:
    tub = up(p, "1 tub chicken soup, cooked meal, fridge")
    last = rows(p, tub)[0].discard_after
    assert last is not None
    made = repack.repack(p, tub, f"1 jar, {method}, fridge")
    # In doubt as it is, it has no day of its own; the one that ran is said.
    assert made.discard_after is None
    assert any(f"Discard after {last:%a} {last.day} {last:%b}" in why for why in made.reasons)


def test_what_was_filled_from_a_canned_jar_may_show_what_the_jar_may(p: Pantry) -> None:
    beans = up(p, BEANS)
    frozen = repack.repack(p, f"{beans}/1", "1 pint tub, chest").code
    assert signs.mark(p, frozen, "foul or musty smell").verdict is Verdict.DO_NOT_TASTE
    assert rows(p, beans)[0].verdict is Verdict.UNKNOWN


def test_a_cut_names_what_was_filled_from_what_stood_there(p: Pantry) -> None:
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    wait(p, 2)
    frozen = repack.repack(p, f"{beans}/1", "1 pint tub, chest").code
    day = (p.today - timedelta(days=1)).isoformat()
    fridge = p.find_place("fridge")
    first, last = cut_hours.times(f"{day} 06:00", f"{day} 18:00", p.today)
    found = outage.judge_all(p, fridge, outage.cut_of(p, fridge, first, last))
    assert (frozen, Verdict.DISCARD) in {(row.code, row.verdict) for row in found}


def test_a_line_of_repack_need_say_no_more_than_what_changes(p: Pantry) -> None:
    butter = up(p, "3 500 g packs butter, fresh, fridge")
    said = repack.repack(p, butter, "2 250 g packs, fridge").reading
    short = repack.repack(p, butter, "2 250 g packs, note=for the cake").reading
    for one in (said, short):
        assert (one.count, str(one.contents), one.container) == (2, "250 g", "packs")
        assert (one.food, one.method, one.place) == ("butter", "fresh", "fridge")
    assert short.note == "for the cake"


def test_frozen_food_is_thawed_before_it_is_parted_in_the_fridge(p: Pantry) -> None:
    beef = up(p, "2 2 lb packs ground beef, frozen, chest")
    with pytest.raises(Refused, match="thaw it first"):
        repack.repack(p, beef, "2 1 lb packs, fridge")
    act.thaw(p, f"{beef}/1")
    (thawed,) = (row for row in rows(p, beef) if row.state is State.THAWED)
    wait(p, 1)
    parted = repack.repack(p, f"{beef}/1", "2 1 lb packs")
    assert parted.reading.place == "fridge"
    assert thawed.discard_after is not None
    assert parted.discard_after is not None
    assert parted.discard_after <= thawed.discard_after
    with pytest.raises(Refused):
        repack.repack(p, parted.code, "1 1 lb pack, larder")


def test_nothing_is_filled_out_of_nothing(p: Pantry) -> None:
    carrots = up(p, "1 20 lb crate carrots, cellar-stored, cellar")
    told = repack.repack(p, carrots, "10 5-lb bags, cellar", "2 lb").cautions
    assert any(one.startswith("50 lb came out of 2 lb") for one in told)
    told = repack.repack(p, carrots, "2 5-lb bags, cellar", "10 lb").cautions
    assert not any("came out of" in one for one in told)


@pytest.mark.parametrize("line", ["2 5-lb bags, cellar", "2 5-lb bags, frozen, freezer"])
def test_nothing_vanishes_unsaid(p: Pantry, line: str) -> None:
    """What was taken and is in no vessel is named, but for what a jar is measured to."""
    carrots = up(p, "1 40 lb crate carrots, cellar-stored, cellar")
    told = repack.repack(p, carrots, line, "20 lb").cautions
    assert any("10 lb of it is booked nowhere" in one for one in told)
    told = repack.repack(p, carrots, line, "10.5 lb").cautions
    assert not any("booked nowhere" in one for one in told)


def test_what_dries_weighs_less(p: Pantry) -> None:
    carrots = up(p, "1 40 lb crate carrots, cellar-stored, cellar")
    told = repack.repack(p, carrots, "2 1-lb bags, dried, larder", "20 lb").cautions
    assert not any("booked nowhere" in one for one in told)


@pytest.mark.parametrize("words", ["bulged", "it was swollen", "leaking", "foul smell"])
def test_a_reason_in_ones_own_words_speaks_for_the_sisters(p: Pantry, words: str) -> None:
    beans = up(p, BEANS)
    act.discard(p, f"{beans}/6", why=words)
    assert rows(p, beans)[0].verdict is Verdict.UNKNOWN
    undo.undo(p)
    act.discard(p, f"{beans}/6", why="nobody liked it")
    assert rows(p, beans)[0].usable


def test_a_line_that_changed_since_it_was_counted_is_counted_again(p: Pantry) -> None:
    beans = up(p, BEANS)
    larder = p.find_place("larder")
    count.from_counts(p, larder, {beans: 6})
    act.use(p, beans)
    with pytest.raises(Refused, match="6 stood there then, 5 now"):
        count.finish(p, larder)
    count.from_counts(p, larder, {beans: 5})
    assert "all as expected" in count.finish(p, larder).message


def test_a_letter_or_two_names_no_act(p: Pantry) -> None:
    up(p, BEANS)
    newest = undo.newest(p)
    assert newest is not None
    with pytest.raises(BadInput, match="names no act"):
        undo.undo(p, newest.id[-1])
    assert undo.undo(p, newest.id[-6:]).message.startswith("Took back")


def test_what_is_begun_is_not_sealed_again_by_a_word(p: Pantry) -> None:
    mince = up(p, "2 packs ground beef, frozen, chest")
    act.thaw(p, f"{mince}/1")
    parted = repack.repack(p, f"{mince}/1", "1 bag frozen, fridge, state=sealed")
    assert [one.state for one in rows(p, parted.code)] == [State.THAWED]
    # To say that it is worse than its source is heeded.
    again = repack.repack(p, f"{mince}/2", "1 bag frozen, chest, state=thawed")
    assert rows(p, again.code)[0].state is not State.SEALED


def test_a_state_that_nothing_put_up_is_in_is_refused(p: Pantry) -> None:
    with pytest.raises(BadInput):
        up(p, "1 jar mayonnaise, bought in, fridge, state=gone")


# -- no process ends a limit unless it begins with such food ---------------------------------------

OIL = "1 pint jar garlic, in oil, fridge"


@pytest.mark.parametrize(
    ("line", "into", "days"),
    [
        (OIL, "1 jar garlic, dried, larder", 4),
        (OIL, "1 jar garlic, salted, fridge", 4),
        ("1 jug milk, fresh, fridge", "4 cups custard, cooked meal, fridge", 5),
        ("2 lb pork, fresh, fridge", "2 lb pork, cold smoked, fridge", 3),
        ("12 hard-cooked eggs, fresh, fridge", "1 jar eggs, fridge pickle, fridge, vinegar=5%", 7),
        ("2 lb cooked meat, bought in, fridge", "1 pot curry, cooked meal, fridge", 3),
    ],
)
def test_a_method_does_not_wipe_the_limit_that_ran(
    p: Pantry, line: str, into: str, days: int
) -> None:
    old, last = up(p, line), p.today + timedelta(days=days)
    assert rows(p, old)[0].discard_after == last
    wait(p, days - 1)
    made = repack.repack(p, old, into, "all").code
    (found,) = {row.discard_after for row in rows(p, made)}
    assert found == last
    wait(p, 2)
    assert rows(p, made)[0].verdict is Verdict.DISCARD


def test_two_steps_end_no_limit_that_one_does_not_end(p: Pantry) -> None:
    oil, last = up(p, OIL), p.today + timedelta(days=4)
    plain = repack.repack(p, oil, "1 tub garlic, fresh, fridge").code
    dried = repack.repack(p, plain, "1 jar garlic, dried, larder")
    assert dried.discard_after == last
    beans = up(p, BEANS)
    act.open_(p, f"{beans}/1")
    frozen = repack.repack(p, f"{beans}/1", "1 pint tub, chest")
    act.thaw(p, frozen.code)
    thawed = rows(p, frozen.code)[0].discard_after
    assert thawed is not None
    dried = repack.repack(p, frozen.code, "1 jar runner beans, dried, larder")
    assert dried.discard_after is not None
    assert dried.discard_after <= thawed


def test_a_jar_that_is_filled_over_is_opened_by_that(p: Pantry) -> None:
    beans = up(p, BEANS)
    last = p.today + timedelta(days=3)
    for into in ("1 bag runner beans, dried, larder", "1 pot bean soup, cooked meal, fridge"):
        assert repack.repack(p, f"{beans}/{1 + ('soup' in into)}", into).discard_after == last
    warm = repack.repack(p, f"{beans}/3", "1 tub runner beans, fresh, larder")
    assert warm.verdict is Verdict.DISCARD
    # Chilled and frozen in time it is frozen food.
    assert repack.repack(p, f"{beans}/4", "1 tub, chest").discard_after is None


def test_the_freezer_holds_the_days_in_oil_back_and_gives_none_anew(p: Pantry) -> None:
    """National Center for Home Food Preservation, Freezing: Garlic-in-Oil: four days from mixing,
    or into the freezer."""
    oil = up(p, OIL)
    wait(p, 4)
    frozen = repack.repack(p, oil, "1 bag garlic, frozen, chest")
    assert frozen.discard_after is None
    wait(p, 30)
    assert rows(p, frozen.code)[0].usable
    act.thaw(p, frozen.code)
    thawed = p.today + timedelta(days=1)
    assert rows(p, frozen.code)[0].discard_after == thawed, "it had no day left but that"
    dried = repack.repack(p, frozen.code, "1 jar garlic, dried, larder")
    assert dried.discard_after == thawed


def test_what_was_made_of_leftovers_is_as_old_as_they_are_once_it_is_thawed(p: Pantry) -> None:
    code = up(p, "1 box roast chicken, cooked meal, fridge, 2 lb")
    ends = rows(p, code)[0].discard_after
    wait(p, 2)
    soup = repack.repack(p, code, "1 box chicken soup, cooked meal, fridge").code
    frozen = repack.repack(p, soup, "1 box, chest").code
    at_once = up(p, "1 box roast chicken, cooked meal, fridge, 2 lb")
    assert rows(p, at_once)[0].discard_after != ends
    wait(p, 30)
    act.thaw(p, frozen)
    (row,) = rows(p, frozen)
    assert ends is not None
    assert row.discard_after is not None
    # A day in which it thaws, and the one that was left.
    assert (row.discard_after - p.today).days <= 2


def test_another_dish_out_of_leftovers_that_is_frozen_at_once_gains_nothing(p: Pantry) -> None:
    code = up(p, "1 box roast chicken, cooked meal, fridge, 2 lb")
    wait(p, 2)
    frozen = repack.repack(p, code, "1 box chicken soup, frozen, chest").code
    wait(p, 30)
    act.thaw(p, frozen)
    (row,) = rows(p, frozen)
    assert row.discard_after is not None
    assert (row.discard_after - p.today).days <= 2


def test_jars_whose_process_is_in_doubt_keep_the_days_of_what_is_in_them(p: Pantry) -> None:
    fish = up(p, "4 lb salmon, frozen, chest")
    wait(p, 3)
    act.thaw(p, fish)
    wait(p, 2)
    line = "4 half-pint jars salmon, pressure canned, {}, minutes=100, psi={}, canner=dial"
    good = putup.put_up(p, putup.read(p, line.format("larder", 11) + f", from 2 lb of {fish}"))
    assert (good.verdict, good.discard_after) == (Verdict.SOUND, None)
    weak = putup.put_up(p, putup.read(p, line.format("fridge", 5) + f", from {fish}"))
    (last,) = {row.discard_after for row in rows(p, weak.code)}
    assert last is not None
    assert last <= p.today


def test_where_nothing_is_published_for_the_new_the_old_limit_runs_on(p: Pantry) -> None:
    """Thawed seafood is cooked within a day (USDA FSIS, the big thaw); for shrimp that are dried
    no figure is published, so nothing says that it ended."""
    old, began = up(p, "1 1-lb pack shrimp, frozen, chest"), p.today
    new = repack.repack(p, old, "1 bag dried, larder").code
    (row,) = rows(p, new)
    assert (row.verdict, row.discard_after) == (Verdict.UNKNOWN, began + timedelta(days=1))
    wait(p, 2)
    assert rows(p, new)[0].verdict is Verdict.DISCARD


def test_what_is_frozen_in_time_is_no_older_for_want_of_a_figure(p: Pantry) -> None:
    """USDA FSIS, Freezing and Food Safety: frozen, food stays safe."""
    old = up(p, "1 half-pint jar sun-dried tomatoes, in oil, fridge")
    new = repack.repack(p, old, "1 half-pint jar, frozen, chest").code
    wait(p, 60)
    (row,) = rows(p, new)
    assert row.verdict is not Verdict.DISCARD
    assert row.discard_after is None


def test_what_was_cooked_on_a_day_that_is_over_counts_from_that_day(p: Pantry) -> None:
    beef = up(p, "2 1-lb packs ground beef, frozen, chest")
    wait(p, 5)
    cooked = p.today - timedelta(days=2)
    stew = repack.repack(p, beef, "2 boxes stew, cooked meal, fridge", at=At(cooked)).code
    batch = p.batch(stew)
    assert batch is not None
    assert batch.made == cooked
    split = repack.repack(p, stew, "1 box stew, cooked meal, fridge", at=At(p.today)).code
    part = p.batch(split)
    assert part is not None
    assert part.made == cooked, "the same food goes on"


def test_before_it_is_booked_it_is_said_of_what_half_is_taken_and_what_that_opens(
    larder: Pantry,
) -> None:
    p = larder
    beans = putup.put_up(p, putup.read(p, "3 pint jars runner beans, pressure canned, larder")).code
    line = f"1 tub bean soup, cooked meal, fridge, from half of {beans}"
    before = len(p.events)
    seen = putup.preview(p, putup.read(p, line))
    assert len(p.events) == before
    assert seen.made_from == ((beans, f"{beans}/1", "1/2 pint", "1/2 pint"),)
    assert seen.cautions[0] == (
        f"{beans}/1 runner beans, pint jar in larder, is shut: this opens it, and what is left "
        "stands in fridge then."
    )
    shown = reading_text(putup.read(p, line), seen)
    assert f"1/2 pint of {beans}/1; 1/2 pint left in it" in shown
    assert putup.put_up(p, putup.read(p, line)).made_from == seen.made_from


def test_nothing_is_opened_by_taking_all_of_it_nor_of_what_is_open(larder: Pantry) -> None:
    p = larder
    beans = putup.put_up(p, putup.read(p, "2 pint jars runner beans, pressure canned, larder")).code
    sack = putup.put_up(p, putup.read(p, "20 lb potatoes, cellar-stored, larder")).code
    act.open_(p, beans)
    for part in (f"half of {beans}", f"{beans}/2", f"2 lb of {sack}"):
        seen = putup.preview(p, putup.read(p, f"1 tub bean soup, cooked meal, fridge, from {part}"))
        assert seen.made_from
        assert not any("opens it" in one for one in seen.cautions), part
