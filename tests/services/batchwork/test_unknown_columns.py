"""A column that is nothing here is kept in the note, and read there as any note is."""

from __future__ import annotations

from pathlib import Path

import pytest

from pantry_tui.core.safety.note_labels import in_words
from pantry_tui.core.words import Verdict
from pantry_tui.services import household
from pantry_tui.services.batchwork.importing import import_list
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import places
from pantry_tui.services.stock.view import due

HEAD = "Item,Method,Qty,Size,Where,Date,Minutes,psi,Canner"
BEANS = "green beans,pressure canned,4,pint jars,larder,2026-11-20,20,11,dial"


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    household.change(larder, altitude_ft=500)
    places.add(larder, "chest", "freezer")
    return larder


def one(p: Pantry, tmp_path: Path, heading: str, cell: str, row: str = BEANS) -> Verdict:
    """How a row with such a column beside is judged."""
    path = tmp_path / "list.csv"
    path.write_text(f'{HEAD},"{heading}"\n{row},"{cell}"\n', encoding="utf-8")
    found = import_list(p, path)
    assert (found.booked, found.bad) == (True, [])
    (line,) = due(p)
    return line.verdict


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Spoiled", "yes"), ("Spoiled", "x"), ("Spoiled?", "TRUE"), ("Problem", "lid bulging"),
        ("Sign", "mould"), ("Observations", "fizzy, leaking"), ("Smell", "off"), ("Smell", "sour"),
        ("Verdict", "throw out"), ("Verdict", "bad"), ("Recipe", "untested"), ("Recipe", "my own"),
        ("Thickener", "flour"), ("Vented", "no"), ("Sealed", "no"), ("Safe to eat", "no"),
        ("Leaking", "yes"), ("Tested recipe", "no"), ("Added", "onions"), ("Lid", "popped"),
        ("Lost pressure", "yes"), ("Remark 2", "never reached pressure"), ("Tags", "mouldy"),
    ],
)  # fmt: skip
def test_what_speaks_against_it_is_held_against_it(
    p: Pantry, tmp_path: Path, heading: str, cell: str
) -> None:
    assert one(p, tmp_path, heading, cell) in (Verdict.UNKNOWN, Verdict.DO_NOT_TASTE)


@pytest.mark.parametrize(
    ("heading", "cell"),
    [
        ("Spoiled", "no"), ("Spoiled", "none"), ("Spoiled", ""), ("Spoiled", "-"),
        ("Problem", "none"),
        ("Problem", "no"), ("Sign", "nothing"), ("Observations", "clear, all good"),
        ("Seal checked", "yes"), ("Sealed", "yes"), ("Smell", "fine"), ("Smell", "no"),
        ("Verdict", "good"), ("Recipe", "USDA"), ("Recipe", "tested"), ("Thickener", "none"),
        ("Vented", "yes"), ("Leaking", "no"), ("Mould", "no"), ("Lost pressure", "no"),
        ("Safe to eat", "yes"), ("Discard", "no"), ("Botulism risk", "no"), ("Rating", "5"),
        ("Category", "Vegetables"), ("Category", "Meat"), ("Supplier", "the corner shop"),
        ("Owner", "Mike"), ("Season", "summer"), ("Variety", "Blue Lake"), ("Servings", "4"),
        ("Purchased", "2026-10-01"), ("Garden bed", "3"), ("Colour", "green"), ("Tags", "winter"),
        ("Opened by", ""), ("Batch ID", "12"), ("Price", "3.50"), ("Photo", "https://x.example/a"),
    ],
)  # fmt: skip
def test_what_does_not_stays_quiet(p: Pantry, tmp_path: Path, heading: str, cell: str) -> None:
    assert one(p, tmp_path, heading, cell) is Verdict.SOUND


def test_frozen_food_of_which_a_column_says_that_it_is_spoiled_is_not_eaten(
    p: Pantry, tmp_path: Path
) -> None:
    row = "ground beef,frozen,2,1 lb bags,chest,2026-11-20,,,"
    assert one(p, tmp_path, "Spoiled", "yes", row) is Verdict.DISCARD


def test_it_stands_in_the_note_with_its_column_beside_what_the_note_says(
    p: Pantry, tmp_path: Path
) -> None:
    path = tmp_path / "list.csv"
    text = f"{HEAD},Remarks,Sign,Oven: top,Price\n{BEANS},for Ann,none,two  racks,3.50\n"
    path.write_text(text, encoding="utf-8")
    found = import_list(p, path)
    assert (found.noted, found.unused) == (["Sign", "Oven: top"], ["Price"])
    (batch,) = p.stock.batches.values()
    assert batch.note == "for Ann; Sign: none; Oven top: two racks"


def test_what_a_person_leaves_out_is_left_out(p: Pantry, tmp_path: Path) -> None:
    path = tmp_path / "list.csv"
    path.write_text(f"{HEAD},Spoiled\n{BEANS},yes\n", encoding="utf-8")
    found = import_list(p, path, columns="out=Spoiled")
    assert (found.noted, found.unused) == ([], ["Spoiled"])
    (batch,) = p.stock.batches.values()
    assert not batch.note


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("spoiled: yes", "spoiled"), ("spoiled: no", "not spoiled"), ("mould: no", "no mould"),
        ("seal checked: no", "seal not checked"), ("tested recipe: no", "recipe not tested"),
        ("smell: slightly off", "slightly off smell"), ("smell: fine", "smell: fine"),
        ("smell: not good", "not good smell"), ("verdict: thrown away", "spoiled"),
        ("verdict: good", "good"), ("edible: no", "spoiled"), ("bad: no", "no bad"),
        ("problem: leaking", "leaking"), ("boiled at 12:30", "boiled at 12:30"),
        ("with garlic", "with garlic"), ("garden: no 3 bed", "garden: no 3 bed"),
    ],
)  # fmt: skip
def test_a_label_is_read_as_words(typed: str, words: str) -> None:
    assert in_words(typed) == words
