"""Animal food, or what is low in acid, in what acid and sugar keep: no place makes that good, told
by a part of an older batch or by a note."""

from __future__ import annotations

from datetime import timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock import places, view

JAM = "2 half-pint jars strawberry jam, fridge"
SOUR = (
    JAM,
    "2 pint boxes strawberry freezer jam, fridge",
    "2 pint jars cucumbers, fridge pickle, fridge",
    "2 pint jars dill pickles, vinegar pickle, fridge",
    "2 bottles raspberry vinegar, flavoured vinegar, fridge",
)
KRAUT = "1 crock cabbages, lactic ferment, cellar, salt=2.5%"
ANIMAL = (
    "4 lb trout, hot smoked, fridge",
    "4 lb trout, fresh, fridge",
    "4 lb beef, fresh, fridge",
    "4 lb eggs, fresh, fridge",
    "4 lb milk, fresh, fridge",
    "4 lb shrimp, frozen, chest",
)


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    places.add(larder, "cellar", "cellar")
    places.add(larder, "chest", "freezer")
    return larder


def up(p: Pantry, line: str) -> PutUp:
    return putup.put_up(p, putup.read(p, line))


def is_offered(p: Pantry, code: str) -> bool:
    return next(row.usable for row in view.due(p) if row.code == code)


@pytest.mark.parametrize("line", SOUR)
@pytest.mark.parametrize("part", ANIMAL)
def test_out_of_an_older_batch(p: Pantry, line: str, part: str) -> None:
    code = up(p, part).code
    made = up(p, f"{line}, from 1 lb of {code}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)
    p.today += timedelta(days=3)
    assert not is_offered(p, made.code)


@pytest.mark.parametrize("part", ["potatoes", "carrots", "garlic", "mushrooms"])
@pytest.mark.parametrize("line", [JAM, "2 pint boxes strawberry freezer jam, fridge"])
def test_what_is_low_in_acid_takes_a_jam_out_of_its_figures(
    p: Pantry, line: str, part: str
) -> None:
    made = up(p, f"{line}, from 1 lb of {up(p, f'4 lb {part}, fresh, fridge').code}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)


@pytest.mark.parametrize("line", [*SOUR, KRAUT])
@pytest.mark.parametrize(
    "note",
    [
        "with smoked trout in it",
        "added bits of smoked haddock",
        "kippers and onions stirred in the jar",
        "with bacon",
        "hard boiled eggs in it",
        "with goose meat mixed in",
    ],
)
def test_told_by_a_note(p: Pantry, line: str, note: str) -> None:
    made = up(p, f"{line}, note={note}")
    assert made.verdict is Verdict.UNKNOWN
    assert not is_offered(p, made.code)


@pytest.mark.parametrize("line", [JAM, "2 pint jars cucumbers, fridge pickle, fridge"])
@pytest.mark.parametrize(
    "note",
    [
        "goes well with ham",
        "for the Easter ham",
        "bought with the eggs",
        "served with smoked trout",
        "with beef tomatoes",
        "with a turkey baster",
        "with a knob of butter",
        "no fish in it",
        "without ham",
        "kept beside the ham",
        "eat with cheese",
        "tastes like ham",
        "with crab apples",
        "from the fish crate",
        "with lamb's lettuce",
        "the cat got the trout",
        "with Aunt Hen",
        "with cream of tartar",
    ],
)
def test_what_only_names_an_animal_stays_quiet(p: Pantry, line: str, note: str) -> None:
    assert up(p, f"{line}, note={note}").verdict is Verdict.SOUND


@pytest.mark.parametrize("note", ["with fish sauce", "with salted shrimp", "with dried shrimp"])
def test_what_seasons_a_ferment_is_none(p: Pantry, note: str) -> None:
    assert up(p, f"{KRAUT}, note={note}").verdict is not Verdict.UNKNOWN


@pytest.mark.parametrize(
    ("line", "part"),
    [
        (JAM, "2 bottles lemon juice, bought in, larder"),
        (JAM, "4 lb plums, fresh, fridge"),
        ("2 pint jars eggs, fridge pickle, fridge", "4 lb eggs, fresh, fridge"),
        ("2 pint jars herring, fridge pickle, fridge", "4 lb herring, fresh, fridge"),
        ("2 pint jars dill pickles, vinegar pickle, fridge", "4 lb garlic, fresh, fridge"),
        ("2 bottles raspberry vinegar, flavoured vinegar, fridge", "4 lb plums, fresh, fridge"),
    ],
)
def test_what_belongs_into_it_is_none(p: Pantry, line: str, part: str) -> None:
    made = up(p, f"{line}, from half of {up(p, part).code}")
    assert made.verdict in (Verdict.SOUND, Verdict.EAT_SOON)
