"""What signs, looks, ratings, corrections and counts say of what stands on the shelf."""

from __future__ import annotations

from typing import Any

import pytest

from pantry_tui.core.amounts import amount_of
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import DAY_MIN, Seen
from pantry_tui.core.words import Rating, State, Verdict
from tests.core.log.book import MADE, Book, crate, day, put_up, use


def noon(number: int) -> int:
    return day(number).toordinal() * DAY_MIN + 720


def sign(suspect: str = "", *numbers: int) -> said.Sign:
    ids = tuple(f"b.{n}" for n in numbers or (1,))
    return said.Sign("b", ids, "bulging", "the lid bulges", Verdict.DO_NOT_TASTE, suspect)


def look(*numbers: int) -> said.Sign:
    ids = tuple(f"b.{n}" for n in numbers)
    return said.Sign("b", ids, "looked", "looks sound", Verdict.SOUND)


def test_a_sign_stands_on_what_showed_it_and_puts_its_sisters_under_suspicion() -> None:
    batch, boxes = Book().says(put_up(1, 2)).says(sign("b.1 bulges"), on=4).batch()
    assert boxes["b.1"].signs == (Seen(day(4), "the lid bulges", Verdict.DO_NOT_TASTE, noon(4)),)
    assert boxes["b.2"].signs == ()
    assert batch.suspect == "b.1 bulges"
    quiet, _ = Book().says(put_up(1, 2)).says(sign(), on=4).batch()
    assert quiet.suspect == ""


def test_a_second_sign_does_not_hide_the_first() -> None:
    foam = said.Sign("b", ("b.1",), "foam", "foam", Verdict.DISCARD)
    box = Book().says(put_up(1)).says(foam, on=1).says(sign(), on=2).box()
    assert [(one.sign, one.day) for one in box.signs] == [
        ("foam", day(1)), ("the lid bulges", day(2)),
    ]  # fmt: skip


def test_looked_at_before_the_sign_does_not_count_and_after_it_does() -> None:
    book = Book().says(put_up(1, 2, 3)).says(look(2), on=1).says(sign("b.1 bulges"), on=2)
    assert {box.looked for box in book.batch()[1].values()} == {None}
    _, boxes = book.says(look(3), on=3).batch()
    assert [boxes[f"b.{n}"].looked for n in (1, 2, 3)] == [None, None, day(3)]
    assert boxes["b.3"].signs == (), "a look that shows nothing is no sign"
    _, boxes = book.says(sign("", 2), on=4).batch()
    assert boxes["b.3"].looked == day(3), "a sign that says nothing of the others"


@pytest.mark.parametrize(
    ("looked", "seen", "counts"),
    [
        ("14:00", "12:00", True), ("11:00", "12:00", False),
        # Booked late, each at any hour of that day: the look may have come first.
        (None, "12:00", False), ("12:00", None, False), (None, None, False),
    ],
)  # fmt: skip
@pytest.mark.parametrize("sign_first", [True, False])
def test_a_look_that_may_have_come_before_the_sign_does_not_count(
    looked: str | None, seen: str | None, counts: bool, sign_first: bool
) -> None:
    book = Book().says(put_up(1, 2))
    told = [(sign("b.1 bulges"), seen), (look(2), looked)]
    for payload, at in told if sign_first else told[::-1]:
        book.says(payload, on=5, at=at, booked=f"{day(9)}T12:00:00+00:00")
    looked_on = book.batch()[1]["b.2"].looked
    assert looked_on == (day(5) if counts else None)


def test_a_sign_may_be_found_on_what_is_gone_already() -> None:
    box = Book().says(put_up(1)).says(use(), on=1).says(sign(), on=2).box()
    assert [one.verdict for one in box.signs] == [Verdict.DO_NOT_TASTE]
    assert box.state is State.GONE


def test_signs_and_acts_on_unknown_containers_are_passed_over() -> None:
    stray = ("b.9",)
    book = Book().says(put_up(1))
    for payload in (sign("", 9), look(9), use(None, 9), said.Reserved("b", stray, "x")):
        book.says(payload)
    assert list(book.batch()[1]) == ["b.1"]
    assert book.box() == Book().says(put_up(1)).box()


def test_what_was_said_at_table_is_kept_in_its_order() -> None:
    book = Book().says(put_up(1))
    book.says(said.Rated("b", Rating.CHANGE, "less salt"), on=5)
    book.says(said.Rated("b", Rating.AGAIN), on=9)
    rated = book.batch()[0].rated
    assert [(one.day, str(one)) for one in rated] == [
        (day(5), "change: less salt"), (day(9), "again"),
    ]  # fmt: skip


def test_marks_of_a_power_cut_in_older_logs_stand_as_signs() -> None:
    marks = tuple(said.Mark(id_, Verdict.DISCARD, "warm for 9 h") for id_ in ("b.2", "c.1"))
    _, boxes = Book().says(put_up(1, 2)).says(said.Outage("fridge", marks=marks), on=3).batch()
    assert boxes["b.1"].signs == ()
    assert boxes["b.2"].signs == (Seen(day(3), "warm for 9 h", Verdict.DISCARD, noon(3)),)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("made", day(-9)), ("size", "quart jars"), ("note", ""), ("process", (("psi", "10"),)),
        ("doubt", ("too short", "too cool")), ("possible", ""), ("printed", day(30)),
    ],
)  # fmt: skip
def test_a_correction_changes_what_it_names_and_nothing_else(name: str, value: object) -> None:
    payload = put_up(1)._replace(
        note="old", doubt=("too short",), possible="redo", process=(("psi", "5"),)
    )
    before, _ = Book().says(payload).batch()
    after, _ = Book().says(payload).says(said.Correct("b", **{name: value}), on=1).batch()  # type: ignore[arg-type]
    changed = {f for f in before.__slots__ if getattr(before, f) != getattr(after, f)}
    since = {"noted"} if name == "note" else set()  # when that was
    assert changed == {name} | since
    assert getattr(after, name) == value


@pytest.mark.parametrize("name", ["size", "note", "process", "made", "printed", None])
def test_only_what_a_process_is_judged_by_lifts_a_doubt(name: str | None) -> None:
    told = {"size": "quart", "process": (("psi", "11"),), "note": "x", "made": day(-9)}
    changes: dict[str, Any] = {} if name is None else {name: told.get(name, day(30))}
    book = Book().says(put_up(1)._replace(doubt=("too short",), possible="redo"))
    batch, _ = book.says(said.Correct("b", doubt=(), possible="", **changes), on=1).batch()
    lifted = name in ("size", "process")
    assert (batch.doubt, batch.possible) == (((), "") if lifted else (("too short",), "redo"))


def test_the_day_made_may_be_put_right_and_may_be_nobody_s_to_know() -> None:
    book = Book().says(put_up(1)).says(said.Correct("b", made=day(-9)), on=1)
    assert book.box().turns[0].when.day == day(-9)
    book.says(said.Correct("b", unknown_day=True), on=2)
    assert book.batch()[0].made is None
    assert book.box().turns[0].when.day == MADE, "since it was booked, at the latest"


# -- counts ----------------------------------------------------------------------------------------


def test_a_count_takes_out_what_it_missed_and_brings_back_what_it_found() -> None:
    book = crate().says(put_up(1, batch="c")).says(use("40 lb"), on=1)
    count = said.Count(
        "fridge",
        gone=(said.Gone("c.1", said.Fate.MISSING),),
        back=(said.Back("b.1", "fridge"),),
    )
    book.says(count, on=2)
    back = book.box()
    assert (back.fate, back.ended, back.place, back.state) == ("", None, "fridge", State.SEALED)
    assert back.left == amount_of("40 lb"), "what was in it when it went stays known"
    gone = book.box("c.1")
    assert (gone.fate, gone.ended, gone.state) == ("missing", day(2), State.GONE)


def test_a_count_speaks_only_of_what_it_names() -> None:
    count = said.Count(
        "larder",
        gone=(said.Gone("c.1", said.Fate.MISSING),),
        back=(said.Back("c.2", "larder"),),
        new=(said.Found("c", "larder", State.SEALED, ("c.3",)),),
    )
    book = Book().says(put_up(1)).says(count, on=1)
    assert list(book.batch()[1]) == ["b.1"]
    assert book.box().here
    assert [turn.place for turn in book.box().turns] == ["larder"]


def test_a_count_may_find_more_of_a_batch_than_anybody_booked() -> None:
    count = said.Count("cellar", new=(said.Found("b", "cellar", State.OPEN, ("b.2", "b.3")),))
    _, boxes = Book().says(put_up(1)).says(count, on=3).batch()
    assert list(boxes) == ["b.1", "b.2", "b.3"]
    third = boxes["b.3"]
    assert (third.number, third.place, third.state) == (3, "cellar", State.OPEN)
    assert third.turns[0].when.day == MADE, "it is as old as its batch"
    assert third.left == amount_of("1 pint")
