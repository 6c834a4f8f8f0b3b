"""What an act changes beside the batch that it names is said, and no advice is given in vain."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from pantry_tui.core.amounts import Amount
from pantry_tui.core.words import Method, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.batchwork.repack import repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, correct, moving, places, undo
from pantry_tui.services.stock.view import note_aside
from pantry_tui.store import log


def up(p: Pantry, line: str) -> str:
    return put_up(p, read(p, line)).code


def test_what_is_left_keeps_its_share_in_another_size(larder: Pantry) -> None:
    code = up(larder, "3 quart jars dill pickles, vinegar pickle, larder")
    act.use(larder, f"{code}/1", amount="half")
    correct.correct(larder, code, size="pint")
    batch = next(iter(larder.stock.batches.values()))
    begun, whole, _ = sorted(larder.containers_of(batch), key=lambda one: one.number)
    assert (begun.first, begun.left) == (
        Amount(Fraction(1), "pint"),
        Amount(Fraction(1, 2), "pint"),
    )
    assert whole.left == whole.first == Amount(Fraction(1), "pint")


def test_a_correction_names_what_was_made_of_it_and_is_judged_otherwise(larder: Pantry) -> None:
    places.add(larder, "chest", "freezer")
    soup = up(larder, "2 boxes chicken soup, cooked meal, fridge, 2026-11-24")
    frozen = repack(larder, f"{soup}/1", "1 box, chest").code
    told = correct.correct(larder, soup, made="2026-11-18").message
    assert f"{frozen} chicken soup, which was made of it, is discard" in told
    assert "until now sound" in told
    assert frozen not in correct.correct(larder, soup, note="with leeks").message


def test_a_cure_is_not_told_to_go_where_it_stands(larder: Pantry) -> None:
    code = up(larder, "1 pack bacon, salted, fridge, 2026-11-01")
    done = act.ready(larder, code)
    assert not [one for one in done.warnings if one.startswith("Move it")]


def test_a_place_in_which_something_stood_says_what_to_do_with_it(larder: Pantry) -> None:
    places.add(larder, "shed", "room")
    code = up(larder, "1 pack salt, bought in, shed")
    event = next(
        one
        for one in log.select(larder.store.db, "WHERE 1")
        if getattr(one.payload, "name", "") == "shed"
    )
    with pytest.raises(Refused, match="move what stands there first"):
        undo.undo(larder, event.id)
    moving.move(larder, code, "larder")
    with pytest.raises(Refused, match="place remove shed"):
        undo.undo(larder, event.id)
    places.remove(larder, "shed")


def test_the_one_way_in_which_a_food_is_kept_is_taken(larder: Pantry) -> None:
    reading = read(larder, "6 hard-boiled eggs, fridge")
    assert (reading.method, reading.problems) == (Method.FRESH, ())


def test_a_note_that_went_into_the_record_does_not_say_that_it_changes_nothing(
    larder: Pantry,
) -> None:
    line = "1 pack trout, hot smoked, fridge, note={}"
    for note, silent in (("vacuum packed", True), ("for the feast", False)):
        code = up(larder, line.format(note))
        batch = next(one for one in larder.stock.batches.values() if one.code == code)
        assert (note_aside(larder, batch) == "") is silent
        judged = larder.judge(larder.containers_of(batch)[0])
        assert judged.verdict is Verdict.SOUND
        if silent:
            assert judged.discard_after == date(2026, 11, 30)


def test_of_several_batches_each_is_named(larder: Pantry) -> None:
    codes = [
        put_up(larder, read(larder, line)).code
        for line in (
            "2 jars strawberry jam, jam, larder",
            "2 pint jars peaches, boiling-water canned, larder, minutes=30",
            "2 jars raspberry jam, jam, larder",
        )
    ]
    two = act.several(larder, codes[:2], lambda ref: act.use(larder, ref))
    assert f"Used {codes[0]}/1 strawberry jam" in two.message
    assert f"Used {codes[1]}/1 peaches" in two.message
    three = act.several(larder, codes, lambda ref: act.use(larder, ref))
    assert three.message.startswith(f"3 times: {codes[0]}/2, {codes[1]}/2, {codes[2]}/1. The last:")
    undo.undo(larder)
    more = [codes[2], codes[2]]
    assert act.several(larder, more, lambda ref: act.use(larder, ref)).message.startswith(
        "2 times."
    )
