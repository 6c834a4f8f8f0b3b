"""What is taken of a container, and what is left in it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from pantry_tui.core.amounts import Amount
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, PantryError, Refused, Unclear
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import left_in
from pantry_tui.services.stock import act, places, undo, view
from pantry_tui.services.stock.rows import Left


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "cellar", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> str:
    return putup.put_up(p, putup.read(p, line)).code


def left(p: Pantry, name: str) -> str:
    """What is left in "7C/1"."""
    code, _, number = name.partition("/")
    batch = p.batch(code)
    assert batch is not None
    found = next(c for c in p.containers_of(batch) if c.number == int(number))
    return str(found.left) if found.here else "gone"


CRATES = "3 40 lb crates potatoes, cellar-stored, cellar"
SQUASH = "10 winter squash, cellar-stored, larder"
JARS = "4 pint jars peaches, boiling-water canned, larder, minutes=30"
PACKS = "4 1 lb packs ground beef, frozen, chest"


@pytest.mark.parametrize(
    ("line", "typed", "after"),
    [
        (CRATES, "2 lb", ["38 lb", "40 lb", "40 lb"]),
        (CRATES, "1 kg", ["37.8 lb", "40 lb", "40 lb"]),
        (CRATES, "half", ["20 lb", "40 lb", "40 lb"]),
        (CRATES, "45 lb", ["gone", "35 lb", "40 lb"]),
        (CRATES, "2 servings", ["39.25 lb", "40 lb", "40 lb"]),
        (CRATES, "all", ["gone", "gone", "gone"]),
        (SQUASH, None, ["9"]),
        (SQUASH, "3", ["7"]),
        (SQUASH, "3 pieces", ["7"]),
        (SQUASH, "1 1/2 pieces", ["8 1/2"]),
        (SQUASH, "1/2 piece", ["9 1/2"]),
        (SQUASH, "half", ["5"]),
        (SQUASH, "all", ["gone"]),
        (JARS, None, ["gone", "1 pint", "1 pint", "1 pint"]),
        (JARS, "2", ["gone", "gone", "1 pint", "1 pint"]),
        (JARS, "1 cup", ["1/2 pint", "1 pint", "1 pint", "1 pint"]),
        (JARS, "a quarter", ["3/4 pint", "1 pint", "1 pint", "1 pint"]),
        (JARS, "1 1/2 pints", ["gone", "1/2 pint", "1 pint", "1 pint"]),
        (PACKS, "1/2", ["0.5 lb", "1 lb", "1 lb", "1 lb"]),
        (PACKS, "2 lb", ["gone", "gone", "1 lb", "1 lb"]),
    ],
)
def test_so_much_leaves_and_the_rest_stays(
    p: Pantry, line: str, typed: str | None, after: list[str]
) -> None:
    code = up(p, line)
    before = [left(p, f"{code}/{n}") for n in range(1, len(after) + 1)]
    act.use(p, code, typed)
    assert [left(p, f"{code}/{n}") for n in range(1, len(after) + 1)] == after
    undo.undo(p)
    assert [left(p, f"{code}/{n}") for n in range(1, len(after) + 1)] == before
    undo.redo(p)
    assert [left(p, f"{code}/{n}") for n in range(1, len(after) + 1)] == after


@pytest.mark.parametrize("typed", [None, "", "2"])
def test_how_much_of_a_crate_must_be_said(p: Pantry, typed: str | None) -> None:
    code = up(p, CRATES)
    with pytest.raises(Unclear, match="How much") as asked:
        act.use(p, code, typed)
    assert asked.value.about == "amount"
    assert "all" in asked.value.choices
    assert left(p, f"{code}/1") == "40 lb"


@pytest.mark.parametrize(
    ("line", "typed"),
    [
        (CRATES, "121 lb"),
        (CRATES, "2 pints"),
        (SQUASH, "11"),
        (SQUASH, "2 lb"),
        (JARS, "5"),
        (JARS, "2 lb"),
        (JARS, "0"),
        (JARS, "120%"),
        (JARS, "some of it"),
    ],
)
def test_what_cannot_be_taken_is_refused_and_nothing_booked(
    p: Pantry, line: str, typed: str
) -> None:
    code = up(p, line)
    events = len(p.events)
    with pytest.raises(PantryError):
        act.use(p, code, typed)
    assert len(p.events) == events


def test_what_was_begun_goes_first_and_stays_begun(p: Pantry) -> None:
    code = up(p, CRATES)
    act.use(p, f"{code}/2", "5 lb")
    told = act.use(p, code, "1 lb").message
    assert f"1 lb of {code}/2 potatoes; 34 lb left in it" in told
    rows = {row.amount: row for row in view.due(p)}
    assert rows["34 lb"].held == "34 lb"
    assert rows["40 lb"].held == "2×40 lb"
    assert rows["34 lb"].left == Left(34, "lb")


def test_the_first_draw_opens_a_jar_and_puts_it_where_open_ones_stand(p: Pantry) -> None:
    code = up(p, JARS)
    act.use(p, code, "half")
    row = next(row for row in view.due(p) if row.state is State.OPEN)
    assert (row.place, row.amount, row.discard_after is not None) == ("fridge", "1/2 pint", True)


def test_frozen_food_that_is_drawn_from_goes_on_as_frozen(p: Pantry) -> None:
    code = up(p, PACKS)
    act.use(p, code, "half")
    row = next(row for row in view.due(p) if row.amount)
    assert (row.place, row.discard_after) == ("chest", None)


def test_honey_is_opened_where_it_stands(p: Pantry) -> None:
    code = up(p, "2 1 lb jars honey, bought in, larder")
    act.use(p, code, "2 oz")
    assert next(row.place for row in view.due(p) if row.amount) == "larder"


def test_a_crate_is_never_opened(p: Pantry) -> None:
    code = up(p, CRATES)
    with pytest.raises(Refused, match="never opened"):
        act.open_(p, code)
    act.use(p, code, "2 lb")
    assert {row.state for row in view.due(p)} == {State.SEALED}


def test_a_part_given_or_thrown_away_leaves_the_rest(p: Pantry) -> None:
    code = up(p, CRATES)
    act.give(p, code, "10 lb", "Aunt Sunniva")
    act.discard(p, f"{code}/1", "half", "soft, slimy or rotten")
    assert left(p, f"{code}/1") == "15 lb"
    with pytest.raises(Unclear):
        act.discard(p, code, why="mould")
    act.missing(p, f"{code}/2")
    assert left(p, f"{code}/2") == "gone", "a crate that is not there is missing whole"


def test_servings_reckon_with_what_is_left(p: Pantry) -> None:
    code = up(p, "1 1 lb pack ground beef, frozen, chest")
    batch = p.batch(code)
    assert batch is not None
    (pack,) = p.containers_of(batch)
    assert left_in(p, pack) == 4
    act.use(p, code, "2 servings")
    (pack,) = p.containers_of(batch)
    assert pack.left == Amount(Fraction(1, 2), "lb")
    assert left_in(p, pack) == 2


def test_a_jar_of_which_nobody_said_the_size_is_halved(p: Pantry) -> None:
    code = up(p, "2 jars thyme, dried, larder")
    act.use(p, code, "half")
    assert left(p, f"{code}/1") == "1/2"
    with pytest.raises(Refused, match="Nobody said"):
        act.use(p, code, "2 oz")
    with pytest.raises(BadInput):
        act.use(p, code, "1.5")


def test_too_little_to_be_seen_in_its_unit_is_refused_and_not_booked_as_nothing(p: Pantry) -> None:
    code = up(p, CRATES)
    with pytest.raises(Refused, match=r"1 g is too little .* at least 0\.01 lb"):
        act.use(p, code, "1 gram")
    assert left(p, f"{code}/1") == "40 lb"


def test_refusals_write_the_code_as_it_stands_on_the_lid(p: Pantry) -> None:
    code = up(p, CRATES)
    with pytest.raises(Unclear, match=f"`{code} 2 lb`"):
        act.use(p, code.lower())
    with pytest.raises(BadInput, match="lid code '9Y9'"):
        act.use(p, "9y9")
