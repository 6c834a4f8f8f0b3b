"""What was ready before and is filled into another jar is no jar that was processed, whatever it is
called: as long as no process is told, it is judged as what it was, out of its jar."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import act, correct, places, view
from pantry_tui.services.stock.rows import DueRow

JAM = "4 half-pint jars strawberry jam, larder"
JAM_IN_WATER = "4 half-pint jars strawberry jam, boiling-water canned, minutes=10, larder"
SHELVED = (
    "plum jam",
    "plums, boiling-water canned",
    "tomatoes, boiling-water canned, vinegar=5%",
    "apple butter, boiling-water canned",
    "tomato sauce, pressure canned, sugar=yes",
    "plums, vinegar pickle",
)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    household.change(larder, altitude_ft=500)
    places.add(larder, "kitchen", "room")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> PutUp:
    return putup.put_up(p, putup.read(p, line))


def row(p: Pantry, code: str) -> DueRow:
    return next(one for one in view.due(p) if one.code == code)


@pytest.mark.parametrize("jam", [JAM, JAM_IN_WATER, "4 half-pint boxes plum freezer jam, chest"])
@pytest.mark.parametrize("named", SHELVED)
@pytest.mark.parametrize("before", ["", "opened", "moved"])
def test_jam_under_another_name_is_no_jar_for_a_year(
    p: Pantry, jam: str, named: str, before: str
) -> None:
    code = up(p, jam).code
    if before == "opened":
        act.open_(p, f"{code}/1")
    elif before == "moved":
        act.move(p, f"{code}/1", "fridge" if "freezer" in jam else "kitchen")
    p.today += timedelta(days=9)
    said = repack.repack(p, f"{code}/1", f"1 pint jar {named}, larder")
    assert said.verdict in (Verdict.UNKNOWN, Verdict.DISCARD), said


@pytest.mark.parametrize(
    "kept",
    [
        "4 pint jars peaches, boiling-water canned, minutes=25, larder",
        "4 pint jars dill pickles, vinegar pickle, larder, minutes=10",
        "4 pint jars cucumbers, fridge pickle, fridge",
        "4 jars strawberry jam, bought in, larder",
        "4 half-pint boxes strawberry jam, frozen, chest",
    ],
)
def test_nor_is_anything_else_that_was_ready(p: Pantry, kept: str) -> None:
    code = up(p, kept).code
    said = up(p, f"1 pint jar plum jam, larder, from {code}/1")
    assert said.verdict in (Verdict.UNKNOWN, Verdict.DISCARD)
    assert any("No process recorded" in one for one in said.reasons)


def test_nor_is_it_one_by_way_of_something_that_no_process_made(p: Pantry) -> None:
    code = up(p, JAM).code
    through = up(p, f"1 pint jar strawberries, sugar preserve, larder, from {code}/1").code
    said = up(p, f"1 pint jar plum jam, larder, from {through}")
    assert said.verdict is Verdict.UNKNOWN
    assert any("No process recorded" in one for one in said.reasons)


def test_in_the_refrigerator_it_keeps_as_what_it_was(p: Pantry) -> None:
    code = up(p, JAM_IN_WATER).code
    act.open_(p, f"{code}/1")
    opened = row(p, code)
    p.today += timedelta(days=9)
    for named in ("plum jam", "plums, boiling-water canned", "plums, freezer jam"):
        part = f"half of {code}/1" if named == "plum jam" else "0.1 cup of " + f"{code}/1"
        said = up(p, f"1 pint jar {named}, fridge, from {part}")
        assert said.best_by is not None
        assert opened.best_by is None or said.best_by <= opened.best_by


def test_told_how_it_was_processed_it_is_a_jar_of_its_own(p: Pantry) -> None:
    code = up(p, JAM).code
    new = up(p, f"1 pint jar plums, boiling-water canned, larder, from {code}/1").code
    assert row(p, new).verdict is Verdict.UNKNOWN
    correct.correct(p, new, process=[("minutes", "20")])
    assert not any("No process recorded" in one for one in row(p, new).reasons)


@pytest.mark.parametrize(
    ("part", "line"),
    [
        ("6 lb strawberries, fresh, fridge", "4 half-pint jars strawberry jam, larder"),
        ("4 pint boxes strawberries, frozen, chest", "4 half-pint jars strawberry jam, larder"),
        ("2 bags apricots, dried, larder", "4 half-pint jars apricot jam, larder"),
        ("2 bottles lemon juice, bought in, larder", "4 half-pint jars strawberry jam, larder"),
        ("2 jars honey, bought in, larder", "4 half-pint jars strawberry jam, larder"),
        ("2 bottles wine, bought in, larder", "4 half-pint jars plum jam, larder"),
        ("2 bottles vinegar, bought in, larder", "4 pint jars cucumbers, vinegar pickle, larder"),
        ("9 lb plums, fresh, fridge", "4 pint jars plums, boiling-water canned, larder"),
    ],
)
def test_what_is_made_of_raw_food_or_with_an_ingredient_stays_what_it_was(
    p: Pantry, part: str, line: str
) -> None:
    code = up(p, part).code
    said = up(p, f"{line}, from {code}")
    assert said.verdict is Verdict.SOUND
    assert said.best_by is not None


def test_what_is_called_bought_is_still_what_it_was_taken_out_of(p: Pantry) -> None:
    code = up(p, "2 jars maple syrup, sugar preserve, fridge").code
    act.open_(p, f"{code}/1")
    said = up(p, f"1 jar mustard, bought in, larder, from {code}/1")
    assert said.verdict is Verdict.UNKNOWN
    jam = up(p, f"1 jar honey, bought in, larder, from {up(p, JAM).code}/1")
    assert jam.verdict is Verdict.UNKNOWN


def test_crops_that_go_from_the_refrigerator_to_the_cellar_are_crops_of_a_cellar(
    p: Pantry,
) -> None:
    places.add(p, "vault", "cellar")
    code = up(p, "9 lb apples, fresh, fridge").code
    assert up(p, f"1 crate apples, cellar-stored, vault, from {code}").verdict is Verdict.SOUND
