"""Sixty ways to type what containers hold: how many, in what, and how much is in each."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

import pytest

from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import places

TODAY = date(2026, 11, 25)
STORED, FROZEN, FERMENT = "cellar-stored", "frozen", "lactic ferment"
#: What is typed -> how many, in what, and how much is in each ("" where nobody said).
READ = {
    # crates, sacks and nets are drawn from
    f"3 40 lb crates potatoes, {STORED}": (3, "crates", "40 lb"),
    f"3 crates of 40 lb potatoes, {STORED}": (3, "crates", "40 lb"),
    f"one 40 lb sack potatoes, {STORED}": (1, "sack", "40 lb"),
    f"a 40 lb sack of potatoes, {STORED}": (1, "sack", "40 lb"),
    f"two sacks of potatoes, 50 lb each, {STORED}": (2, "sacks", "50 lb"),
    f"2 x 25 kg sacks potatoes, {STORED}": (2, "sacks", "25 kg"),
    f"2 25-kg sacks potatoes, {STORED}": (2, "sacks", "25 kg"),
    f"a sack of potatoes 25 kg, {STORED}": (1, "sack", "25 kg"),
    f"half a sack of potatoes, {STORED}, amount=20 lb": (1, "sack", "20 lb"),
    f"1 net of onions, 18 lb, {STORED}": (1, "net", "18 lb"),
    f"20 lb carrots, {STORED}": (1, "", "20 lb"),
    f"1 crate carrots 30 lb, {STORED}": (1, "crate", "30 lb"),
    f"3 trays apples, 20 lb each, {STORED}": (3, "trays", "20 lb"),
    # pieces and strings
    f"10 winter squash, {STORED}": (1, "", "10"),
    f"ten winter squashes, {STORED}": (1, "", "10"),
    f"6 heads cabbages, {STORED}": (1, "", "6"),
    f"2 strings of onions, {STORED}": (2, "strings", ""),
    f"one string of onions 4 kg, {STORED}": (1, "string", "4 kg"),
    f"3 strings of garlic, {STORED}": (3, "strings", ""),
    "1 ham 7 kg, salted": (1, "", "7 kg"),
    # crocks and demijohns
    f"5 gallon crock sauerkraut, {FERMENT}": (1, "crock", "5 gallon"),
    f"a 5 gallon crock of sauerkraut, {FERMENT}": (1, "crock", "5 gallon"),
    f"5 litre crock sauerkraut, {FERMENT}": (1, "crock", "5 l"),
    f"one 5 l crock sauerkraut, {FERMENT}": (1, "crock", "5 l"),
    f"2 crocks sauerkraut of 5 l, {FERMENT}": (2, "crocks", "5 l"),
    "1 demijohn cider 10 l, alcohol ferment": (1, "demijohn", "10 l"),
    # metric jars and bottles, with a decimal comma or in words
    "6 1-litre jars plum jam": (6, "jars", "1 l"),
    "6 1 litre jars plum jam": (6, "jars", "1 l"),
    "6 x 500 ml jars plum jam": (6, "jars", "500 ml"),
    "6 500ml jars plum jam": (6, "jars", "500 ml"),
    "six half-litre jars plum jam": (6, "jars", "0.5 l"),
    "12 quarter-litre jars plum jam": (12, "jars", "0.25 l"),
    "6 0.5 l jars plum jam": (6, "jars", "0.5 l"),
    "6 0,5 l jars plum jam": (6, "jars", "0.5 l"),
    "6 50 cl bottles sloe gin, alcohol infusion": (6, "bottles", "500 ml"),
    "3 75cl bottles cider, alcohol ferment": (3, "bottles", "750 ml"),
    "3 jars honey 500 g, sugar preserve": (3, "jars", "500 g"),
    # pints and quarts
    "7 pint jars runner beans, pressure canned": (7, "jars", "1 pint"),
    "7 pints runner beans, pressure canned": (7, "", "1 pint"),
    f"a quart of sauerkraut, {FERMENT}": (1, "", "1 quart"),
    "1 1/2 pint jar strawberry jam": (1, "jar", "1 1/2 pint"),
    "8 half-pint jars strawberry jam": (8, "jars", "1/2 pint"),
    "8 8-oz jars strawberry jam": (8, "jars", "8 fl oz"),
    "4 12 oz jars strawberry jam": (4, "jars", "12 fl oz"),
    f"6 quart bags strawberries, {FROZEN}": (6, "bags", "1 quart"),
    # packs, bags and tubs by weight
    f"9 1 lb packs ground beef, {FROZEN}": (9, "packs", "1 lb"),
    f"9 packs ground beef, 1 lb each, {FROZEN}": (9, "packs", "1 lb"),
    f"9 packs of 1 lb ground beef, {FROZEN}": (9, "packs", "1 lb"),
    f"9 500 g packs ground beef, {FROZEN}": (9, "packs", "500 g"),
    f"9 packs of 500g ground beef, {FROZEN}": (9, "packs", "500 g"),
    f"3 lb bag of peas, {FROZEN}": (1, "bag", "3 lb"),
    "1 tub lard 2 lb, rendered fat": (1, "tub", "2 lb"),
    f"1 1/2 lb ground beef, {FROZEN}": (1, "", "1.5 lb"),
    f"2.5 kg strawberries, {FROZEN}": (1, "", "2.5 kg"),
    f"2,5 kg strawberries, {FROZEN}": (1, "", "2.5 kg"),
    f"3 lb 8 oz ground beef, {FROZEN}": (1, "", "3.5 lb"),
    "100 g thyme, dried": (1, "", "100 g"),
    # halves as one sign, boxes of so many, and how big in words
    "2 1½ pint jars strawberry jam": (2, "jars", "1 1/2 pint"),
    "2 1½ pint packs strawberries, frozen": (2, "packs", "1 1/2 pint"),
    f"2 1¾ lb packs ground beef, {FROZEN}": (2, "packs", "1.75 lb"),
    "1 box of 12 eggs, fresh": (1, "box of 12", "12"),
    "2 boxes of 12 eggs, fresh": (2, "boxes of 12", "12"),
    "a tray of 30 eggs, fresh": (1, "tray of 30", "30"),
    "a carton of a dozen eggs, fresh": (1, "carton of 12", "12"),
    f"3 packs of six sausages, {FROZEN}": (3, "packs of 6", "6"),
    "a dozen eggs, fresh": (1, "", "12"),
    "1 small jar thyme, dried": (1, "small jar", ""),
    f"2 large tubs vegetable soup, {FROZEN}": (2, "large tubs", ""),
}
#: What could mean two things, or lacks a weight: it is asked about, and nothing is guessed.
ASKED = {
    f"3 crates potatoes of 40 lb, {STORED}": "contents",
    f"two 40 lb sacks of 38 and 42 lb potatoes, {STORED}": "count",
    f"a bushel of apples, {STORED}": "contents",
    f"half a bushel of apples, {STORED}": "contents",
    f"2 bushels apples, {STORED}": "contents",
}


@pytest.fixture(scope="module")
def pantry(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Pantry]:
    path = tmp_path_factory.mktemp("typed") / "store.db"
    create(path, altitude_ft=900)
    with open_pantry(path, TODAY) as p:
        places.add(p, "cellar", "cellar")
        yield p


def held(p: Pantry, line: str) -> tuple[int, str, str]:
    """How many, in what, and how much is in each, as a line is read; nothing is left over."""
    read = putup.read(p, f"{line}, cellar")
    assert (read.problems, read.unread) == ((), ()), line
    return read.count, read.container, str(read.contents) if read.contents is not None else ""


def test_there_are_sixty_ways() -> None:
    assert len(READ) + len(ASKED) >= 60


@pytest.mark.parametrize("line", READ)
def test_contents_are_read_as_they_are_typed(pantry: Pantry, line: str) -> None:
    assert held(pantry, line) == READ[line]


@pytest.mark.parametrize("line", ASKED)
def test_what_could_mean_two_things_is_asked_about(pantry: Pantry, line: str) -> None:
    read = putup.read(pantry, f"{line}, cellar")
    assert read.problems
    assert ASKED[line] in [one.about for one in read.asks]


@pytest.mark.parametrize(
    ("line", "wrong"),
    [
        ("1 100 kg bag pork, frozen, cellar", ""),
        ("1 101 kg bag pork, frozen, cellar", "101 kg in one bag"),
        ("2 500-kg packs beef, frozen, cellar", "500 kg in one pack"),
        ("2 300-quart jars tomatoes, boiling-water canned, cellar", "300 quart in one jar"),
        ("1 400 lb crate apples, cellar-stored, cellar", ""),
        ("1 5000 lb crate apples, cellar-stored, cellar", "5000 lb in one crate"),
    ],
)
def test_more_than_a_container_holds_is_refused(pantry: Pantry, line: str, wrong: str) -> None:
    said = [one for one in putup.read(pantry, line).problems if "cannot be" in one]
    assert [one.partition(" cannot be")[0] for one in said] == ([wrong] if wrong else [])
