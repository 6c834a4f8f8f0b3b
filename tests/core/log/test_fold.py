"""From what was booked to what stands on the shelf."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pantry_tui.core.amounts import Amount, amount_of
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.whole import fold
from pantry_tui.core.model import DAY_MIN
from pantry_tui.core.words import Climate, Method, State
from tests.core.log.book import BEANS, MADE, Book, crate, day, jar, moved, put_up, use

LARDER = said.PlaceAdded("larder", "larder", Climate.PANTRY)


# -- put up --------------------------------------------------------------------------------------


def test_a_batch_is_as_it_was_put_up() -> None:
    payload = said.PutUp(
        "b", "7C", ("b.1", "b.2"), BEANS, Method.PRESSURE, "larder", State.SEALED, MADE,
        "pint jars", None, (("minutes", "20"),), "less salt", day(9), ("too short",), "redo it",
        (said.Part("a.1"), said.Part("a.2", Amount(Fraction(1), "lb"))),
    )  # fmt: skip
    batch, boxes = Book().says(payload, on=2).batch()
    assert (batch.code, batch.food, batch.method, batch.made) == (
        "7C",
        BEANS,
        Method.PRESSURE,
        MADE,
    )
    assert (batch.size, batch.process, batch.note) == (
        "pint jars",
        (("minutes", "20"),),
        "less salt",
    )
    assert (batch.printed, batch.doubt, batch.possible) == (day(9), ("too short",), "redo it")
    assert batch.parts == ("a.1", "a.2")
    assert batch.booked == day(2)
    assert list(boxes) == ["b.1", "b.2"]
    assert [(box.number, box.place, box.state) for box in boxes.values()] == [
        (1, "larder", State.SEALED), (2, "larder", State.SEALED),
    ]  # fmt: skip


def test_its_life_begins_on_the_day_it_was_made_not_when_it_was_booked() -> None:
    late = Book().says(put_up(1), on=5).box()
    assert late.turns[0].when.day == MADE
    assert not late.turns[0].when.known
    assert late.turns[0].when.first == MADE.toordinal() * DAY_MIN
    same = Book().says(put_up(1)).box()
    assert same.turns[0].when.known
    unknown = Book().says(put_up(1, made=None), on=5).box()
    assert unknown.turns[0].when.day == day(5), "nobody knows: it is there since it was booked"


def test_what_was_never_put_up_or_was_taken_back_is_not_there() -> None:
    assert fold_batch("b", []) is None
    other = Book().says(put_up(1, batch="c"))
    assert fold_batch("b", other.events) is None


# -- moving, opening, thawing ----------------------------------------------------------------------


def test_a_container_stands_where_it_was_last_moved_and_the_others_stay() -> None:
    book = Book().says(put_up(1, 2)).says(moved("cellar", 1), on=1).says(moved("fridge", 1), on=2)
    _, boxes = book.batch()
    assert [boxes[f"b.{n}"].place for n in (1, 2)] == ["fridge", "larder"]
    assert [turn.place for turn in boxes["b.1"].turns] == ["larder", "cellar", "fridge"]


@given(st.permutations([(1, "cellar"), (2, "fridge"), (3, "freezer")]))
def test_the_order_of_booking_does_not_matter_where_the_days_are_known(
    acts: list[tuple[int, str]],
) -> None:
    book = Book().says(put_up(1))
    for on, place in acts:
        book.says(moved(place), on, at="12:00", booked="2026-04-01T10:00:00+00:00")
    box = book.box()
    assert box.place == "freezer"
    assert [turn.place for turn in box.turns] == ["larder", "cellar", "fridge", "freezer"]


LATE = "2026-04-01T10:00:00+00:00"


@pytest.mark.parametrize(
    ("first", "second", "order"),
    [
        # At any hour of a day: not before what was done at midnight, nor after what was at noon.
        (None, "00:00", ["cellar", "fridge"]),
        ("12:00", None, ["cellar", "fridge"]),
        # In the same minute: as they were booked.
        ("12:00", "12:00", ["fridge", "cellar"]),
        (None, None, ["fridge", "cellar"]),
    ],
)
def test_of_two_acts_on_one_day_the_one_that_may_have_come_first_stands_first(
    first: str | None, second: str | None, order: list[str]
) -> None:
    book = Book().says(put_up(1)).says(moved("fridge"), 2, first, LATE)
    box = book.says(moved("cellar"), 2, second, LATE).box()
    assert [turn.place for turn in box.turns[1:]] == order
    assert box.place == "cellar", "of those that may have come last, what was said at last"


@pytest.mark.parametrize(
    ("payload", "state", "place"),
    [
        (said.Open("b", ("b.1",)), State.OPEN, "larder"),
        (said.Open("b", ("b.1",), "fridge"), State.OPEN, "fridge"),
        (said.Thaw("b", ("b.1",), "fridge"), State.THAWED, "fridge"),
        (said.Ready("b", ("b.1",)), State.SEALED, "larder"),
        (moved("cellar"), State.IN_PROGRESS, "cellar"),
        (moved("fridge", state=State.THAWED), State.THAWED, "fridge"),
    ],
)
def test_what_an_act_makes_of_a_container(payload: said.Payload, state: State, place: str) -> None:
    box = Book().says(put_up(1, state=State.IN_PROGRESS)).says(payload, on=1).box()
    assert (box.state, box.place) == (state, place)


def test_how_it_was_thawed_is_kept_whatever_happens_to_it_afterwards() -> None:
    book = (
        Book()
        .says(put_up(1, place="freezer"))
        .says(said.Thaw("b", ("b.1",), "fridge", "cold water"), on=1)
    )
    book.says(moved("other fridge"), on=2)
    assert [turn.how for turn in book.box().turns] == ["", "cold water", ""]
    assert book.box().state is State.THAWED


def test_moved_out_of_the_freezer_without_a_word_it_counts_as_thawed_already() -> None:
    book = Book().says(put_up(1, place="freezer")).says(moved("fridge", state=State.THAWED), on=1)
    assert book.box().turns[-1].how == "done"
    opened = Book().says(put_up(1)).says(moved("fridge", state=State.OPEN), on=1)
    assert opened.box().turns[-1].how == ""


def test_a_gift_that_is_begun_is_no_gift_any_more() -> None:
    for begun in (said.Open("b", ("b.1",)), said.Thaw("b", ("b.1",))):
        book = Book().says(put_up(1, 2)).says(said.Reserved("b", ("b.1", "b.2"), "Ines"))
        assert book.box().reserved == "Ines"
        _, boxes = book.says(begun, on=1).batch()
        assert [boxes[f"b.{n}"].reserved for n in (1, 2)] == ["", "Ines"]
    still = Book().says(put_up(1)).says(said.Reserved("b", ("b.1",), "Ines")).says(moved("cellar"))
    assert still.box().reserved == "Ines"
    assert still.says(said.Reserved("b", ("b.1",))).box().reserved == ""


# -- eating and leaving ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("payload", "fate"),
    [
        (said.Use("b", ("b.1",)), "used"),
        (said.Discard("b", ("b.1",)), "discarded"),
        (said.Give("b", ("b.1",), None, "Ines"), "given"),
        (said.Missing("b", ("b.1",)), "missing"),
    ],
)
def test_how_and_when_a_container_left(payload: said.Payload, fate: str) -> None:
    _, boxes = Book().says(put_up(1, 2)).says(payload, on=3).batch()
    assert (boxes["b.1"].state, boxes["b.1"].fate, boxes["b.1"].ended) == (State.GONE, fate, day(3))
    assert not boxes["b.1"].here
    assert boxes["b.2"].here


def test_what_left_does_not_leave_twice() -> None:
    book = Book().says(put_up(1)).says(use(), on=1).says(said.Discard("b", ("b.1",)), on=2)
    assert (book.box().fate, book.box().ended) == ("used", day(1))


def test_small_draws_lessen_a_crate_exactly() -> None:
    book = crate()
    for _ in range(9):
        book.says(use("1/3 lb"))
    assert book.box().left == Amount(Fraction(37), "lb")
    assert book.box().first == Amount(Fraction(40), "lb")
    assert book.box().amount == "37 lb"


def test_a_crate_is_drawn_from_and_never_opened_and_a_jar_is_opened_by_the_first_draw() -> None:
    drawn = crate().says(use("1 lb"), on=1).box()
    assert drawn.state is State.SEALED
    opened = jar().says(use("0.5 lb"), on=1).says(use("0.1 lb"), on=2).box()
    assert opened.state is State.OPEN
    assert opened.left == amount_of("0.4 lb")
    first_draw = next(turn for turn in opened.turns if turn.state is State.OPEN)
    assert first_draw.when.day == day(1)
    assert first_draw.place is None, "it stays where it stands"


@pytest.mark.parametrize(
    ("drawn", "empty"),
    [("40 lb", True), ("39.99 lb", False), ("39.99005 lb", True), ("41 lb", True)],
)
def test_a_crumb_is_no_rest(drawn: str, empty: bool) -> None:
    """Less than a hundredth of its unit."""
    box = crate().says(use(drawn), on=1).box()
    assert box.here is not empty
    assert (box.ended == day(1)) is empty


def test_a_whole_container_has_no_amount_to_draw_from() -> None:
    box = Book().says(put_up(1)).says(use("1 lb"), on=1).box()
    assert box.fate == "used"


def test_what_goes_into_another_batch_leaves_this_one() -> None:
    into = said.PutUp(
        "j", "3A", ("j.1",), BEANS, Method.JAM, "larder", State.SEALED, day(2),
        parts=(said.Part("b.1"), said.Part("b.2", amount_of("10 lb")), said.Part("c.1")),
    )  # fmt: skip
    book = Book().says(put_up(1, 2, method=Method.CELLAR, size="crate", holding="40 lb"))
    _, boxes = book.says(into, on=2).batch()
    assert list(boxes) == ["b.1", "b.2"]
    assert (boxes["b.1"].fate, boxes["b.1"].ended) == ("repacked", day(2))
    assert boxes["b.2"].left == amount_of("30 lb")


# -- the whole log ---------------------------------------------------------------------------------


def household() -> list[Event]:
    into = said.PutUp(
        "j", "3A", ("j.1",), BEANS, Method.JAM, "larder", State.SEALED, day(2),
        parts=(said.Part("b.1", amount_of("10 lb")),),
    )  # fmt: skip
    book = Book().says(LARDER).says(put_up(1, method=Method.CELLAR, size="crate", holding="40 lb"))
    book.says(put_up(1, batch="c")).says(into, on=2)
    book.says(said.Count("larder", gone=(said.Gone("c.1", said.Fate.MISSING),)), on=3)
    book.says(said.Reading("larder", 58.0), on=3, at="09:00")
    book.says(said.Household(people=3)).says(said.Open("j", ("j.1",)), on=4)
    return book.events


def test_the_stock_is_every_batch_and_place_folded_by_itself() -> None:
    stock = fold(household())
    assert set(stock.batches) == {"b", "c", "j"}
    assert {one.code for one in stock.batches.values()} == {"2A", "3A"}
    assert set(stock.containers) == {"b.1", "c.1", "j.1"}
    assert set(stock.places) == {"larder"}
    assert stock.containers["b.1"].left == amount_of("30 lb")
    assert stock.containers["c.1"].fate == "missing"
    assert stock.containers["j.1"].state is State.OPEN
    assert stock.places["larder"].temperature_f == 58.0
    assert stock.places["larder"].checked == day(3)


@given(st.permutations(household()))
def test_a_log_folds_to_one_stock_in_whatever_order_it_is_handed_over(log: list[Event]) -> None:
    assert fold(log) == fold(household())


def test_a_put_up_that_was_taken_back_leaves_nothing_and_gives_back_what_it_took() -> None:
    log = household()
    made = next(e.id for e in log if e.batch == "j")
    undo = Event(f"{99:026}", log[-1].recorded, date(2026, 3, 9), said.Undo((made,)))
    stock = fold([*log, undo])
    assert "j" not in stock.batches
    assert stock.containers["b.1"].left == amount_of("40 lb")
    redo = Event(f"{100:026}", log[-1].recorded, date(2026, 3, 9), said.Redo(undo.id, (made,)))
    assert fold([*log, undo, redo]) == fold(log)


def test_a_day_made_that_was_still_to_come_is_the_day_it_was_told() -> None:
    """A wrong clock: food that stands there was not made tomorrow."""
    told = Book().says(put_up(1)).says(said.Correct("b", made=day(9)), on=4)
    assert told.batch()[0].made == day(4)
    earlier = Book().says(put_up(1)).says(said.Correct("b", made=day(-3)), on=4)
    assert earlier.batch()[0].made == day(-3)


def test_of_two_days_made_that_a_wrong_clock_has_in_doubt_the_earlier_counts() -> None:
    """The first was put right by a clock that ran two years ahead: by the moments of writing it is
    the later word. With right clocks the last word counts, and an undo clears the doubt."""
    told = Book().says(put_up(1))
    told.says(said.Correct("b", made=day(-9)), on=4, booked="2028-03-05T12:00:00+00:00")
    told.says(said.Correct("b", made=day(-2)), on=5)
    assert told.batch()[0].made == day(-9)
    right = Book().says(put_up(1)).says(said.Correct("b", made=day(-9)), on=4)
    right.says(said.Correct("b", made=day(-2)), on=5)
    assert right.batch()[0].made == day(-2)
    told.says(said.Undo((told.events[1].id,)), on=5)
    assert told.batch()[0].made == day(-2)
