"""The put-up line: nothing typed is dropped, and nothing breaks it."""

from __future__ import annotations

import re
from datetime import date, timedelta
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.amounts import read_amount
from pantry_tui.core.dates import read_printed, say
from pantry_tui.core.words import Climate, Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.compose import composer
from pantry_tui.reference.names import find_method
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.line import Kitchen, read_line
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUpReading
from tests.examples import many

TODAY = date(2026, 11, 25)
PLACES = {
    "a": "basement", "b": "basement › north wall", "c": "basement › north wall › shelf 2",
    "d": "kitchen › shelf 2", "e": "chest freezer", "f": "fridge",
}  # fmt: skip


def says(food: str) -> Method | None:
    known = load_tables().food_called(food)
    return Method(known.says) if known is not None and known.says else None


CLIMATES = {"e": Climate.FREEZER, "f": Climate.FRIDGE}
KITCHEN = Kitchen(
    TODAY, PLACES, composer(load_tables()), find_method, CLIMATES, "us", says
)  # fmt: skip


def read(line: str) -> PutUpReading:
    return read_line(line, KITCHEN)[0]


@pytest.mark.parametrize(
    ("line", "count", "food", "method", "place", "made"),
    [
        ("7 pint jars runner beans, pressure canned, north wall, yesterday", 7, "runner beans",
         Method.PRESSURE, "basement › north wall", date(2026, 11, 24)),
        ("frozen peas, 6 bags, chest freezer", 6, "peas", Method.FROZEN, "chest freezer", TODAY),
        ("six bags of peas frozen in the chest freezer 3 days ago", 6, "peas", Method.FROZEN,
         "chest freezer", date(2026, 11, 22)),
        ("a dozen half-pint jars strawberry jam, kitchen shelf 2, 2026-06-20", 12,
         "strawberry jam", Method.JAM, "kitchen › shelf 2", date(2026, 6, 20)),
        ("12 half pint jars of strawberry jam, jam, kitchen shelf 2", 12, "strawberry jam",
         Method.JAM, "kitchen › shelf 2", TODAY),
        ("1 crock sauerkraut, lactic ferment, basement, 1 nov", 1, "sauerkraut", Method.LACTIC,
         "basement", date(2026, 11, 1)),
        ("9 quart jars crushed tomatoes, boiling-water canned", 9, "crushed tomatoes",
         Method.BOILING_WATER, "", TODAY),
        ("2 jars French beans, pickled, fridge", 2, "dilly beans", None, "fridge", TODAY),
    ],
)  # fmt: skip
def test_a_line_is_read_as_it_is_meant(
    line: str, count: int, food: str, method: Method | None, place: str, made: date
) -> None:
    found = read(line)
    problems = (*found.problems, *found.unread)
    assert (found.food, found.place, found.made) == (food, place, made), problems
    assert found.method is method
    assert found.count == count


def test_a_place_that_could_be_two_is_asked_about() -> None:
    assert any("could be" in one for one in read("2 jars peaches, dried, shelf 2").problems)


def test_two_places_of_other_names_are_not_taken_for_one_that_wants_more_words() -> None:
    problems = " ".join(read("fridge, 2 jars dill pickles, fridge pickle, chest freezer").problems)
    assert "names chest freezer and fridge: leave only" in problems
    assert "path" not in problems


@pytest.mark.parametrize(
    "line",
    [
        "2 packs hot smoked trout, chest freezer",
        "2 packs frozen hot smoked trout, chest freezer",
        "2 packs smoked trout, frozen, chest freezer",
    ],
)
def test_what_is_asked_of_smoked_fish_in_a_freezer_can_be_answered_as_it_is_written(
    line: str,
) -> None:
    asked = " ".join(read(line).problems)
    answers = re.findall(r"'(trout, [^']+)'", asked)
    assert len(answers) > 1, asked
    methods = [read(f"2 packs {answer}, chest freezer") for answer in answers]
    assert {found.method for found in methods} >= {Method.FROZEN, Method.HOT_SMOKED}
    assert not any(found.problems or found.unread for found in methods)


def process(line: str) -> dict[str, str]:
    return dict(read(line).process)


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("4 jars dill pickles, fridge pickle, fridge", "fridge"),
        ("4 jars dill pickles, fridge, fridge pickle", "fridge"),
        ("2 jars strawberry freezer jam chest freezer", "chest freezer"),
        ("2 jars sun dried tomatoes, in oil, fridge", "fridge"),
    ],
)
def test_a_word_within_a_method_or_food_is_neither_place_nor_day(line: str, place: str) -> None:
    found = read(line)
    assert (found.place, found.made, found.unread, found.problems) == (place, TODAY, (), ())


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("wed 18 nov 2026", date(2026, 11, 18)), ("made Wed 18 Nov 2026", date(2026, 11, 18)),
        ("wed 18.11.2026", date(2026, 11, 18)), ("wed 18 nov at 6 pm", date(2026, 11, 18)),
        ("today 6pm", TODAY), ("today 18:30", TODAY), ("this afternoon", TODAY),
        ("yesterday noon", TODAY - timedelta(days=1)),
        ("yesterday 6 p.m.", TODAY - timedelta(days=1)),
    ],
)  # fmt: skip
def test_a_day_beside_its_weekday_or_hour(said: str, day: date) -> None:
    found = read(f"6 pint jars dill pickles, fridge pickle, fridge, {said}")
    assert (found.made, found.unread, found.problems) == (day, (), ())


def test_a_date_on_another_day_of_the_week_is_asked_about() -> None:
    found = read("6 pint jars dill pickles, fridge pickle, fridge, thu 18 nov 2026")
    assert any("Wed 18 Nov 2026 is no thu" in one for one in found.problems)


@pytest.mark.parametrize(
    "word", ["fridge", "frittata", "monkfish", "sunflower", "satsuma", "wedges", "marrow"]
)
def test_a_word_that_only_begins_like_a_day_is_none(word: str) -> None:
    assert read(f"3 bags {word}, frozen, chest freezer").made == TODAY


@pytest.mark.parametrize(
    ("line", "amount"),
    [
        ("20 lb carrots, cellar-stored, basement", "20 lb"),
        ("carrots, cellar-stored, basement, 20 lbs", "20 lb"),
        ("a crate of carrots, 30 lb, cellar-stored, basement", "30 lb"),
        ("1.5 kg peas, frozen, chest freezer", "1.5 kg"),
        ("1 1/2 lb peas, frozen, chest freezer", "1 1/2 lb"),
        ("½ lb peas, frozen, chest freezer", "1/2 lb"),
        ("500g mushrooms, dried, basement", "500 g"),
        ("carrots, cellar-stored, basement, amount=30 lb", "30 lb"),
        ("carrots, amount=30 lb, cellar-stored, basement", "30 lb"),
        ("carrots, amount=1 1/2 lb, cellar-stored, basement", "1 1/2 lb"),
        ("carrots, amount=30lb, cellar-stored, basement", "30lb"),
    ],
)
def test_a_weight_is_what_one_container_holds(line: str, amount: str) -> None:
    found = read(line)
    assert (found.count, dict(found.process)["amount"]) == (1, amount)
    assert (found.made, found.unread, found.problems) == (TODAY, (), ())


@pytest.mark.parametrize(
    ("line", "count", "size"),
    [
        ("3 5-lb bags carrots, frozen, chest freezer", 3, "5 lb"),
        ("3 5 lb bags carrots, frozen, chest freezer", 3, "5 lb"),
        ("7 x 1 lb bags peas, frozen, chest freezer", 7, "1 lb"),
        ("3 bags of 5 lb carrots, frozen, chest freezer", 3, "5 lb"),
        ("peas, frozen, chest freezer, six 2-lb bags", 6, "2 lb"),
        ("3 8 oz jars strawberry jam, basement", 3, "8 oz"),
        ("6 litre jars tomatoes, boiling-water canned, basement", 6, "litre"),
        ("2 half-gallon jars apple juice, boiling-water canned, basement", 2, "half-gallon"),
    ],
)
def test_a_weight_before_or_after_a_vessel_is_its_size(line: str, count: int, size: str) -> None:
    found = read(line)
    assert (found.count, found.size) == (count, size)
    assert (found.unread, found.problems) == ((), ())
    assert "amount" not in dict(found.process)


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("12 lb bags carrots, frozen, chest freezer", "how many, and how big"),
        ("carrots, frozen, chest freezer, 2 bags, 12 lb", "in each of the 2, or in all"),
    ],
)
def test_a_weight_that_could_be_two_things_is_asked_about(line: str, asked: str) -> None:
    assert any(asked in one for one in read(line).problems)


@pytest.mark.parametrize(
    ("line", "count", "size"),
    [
        ("12 lb ground beef in 1 lb packs, frozen, chest freezer", 12, "1 lb"),
        ("3 kg ground beef, 500 g bags, frozen, chest freezer", 6, "500 g"),
        ("2 lb walnuts, dried, 8 oz bags, north wall", 4, "8 oz"),
    ],
)
def test_so_much_in_packs_of_a_size_is_as_many_as_it_fills(
    line: str, count: int, size: str
) -> None:
    found = read(line)
    assert (found.count, found.size, found.problems) == (count, size, ())
    assert "amount" not in dict(found.process)


@pytest.mark.parametrize("day", ["10/12/26", "12/10/26", "12.10.2026"])
def test_of_two_days_that_figures_could_be_one_to_come_is_not_meant(day: str) -> None:
    found = read(f"5 pints strawberry jam, north wall, {day}")
    assert (found.made, found.problems) == (date(2026, 10, 12), ())


@pytest.mark.parametrize(
    ("line", "made"),
    [
        ("1 jar ketchup, opened nov 1, bought unknown, fridge", None),
        ("1 jar ketchup, opened nov 1, bought sept 3, fridge", date(2026, 9, 3)),
    ],
)
def test_the_day_on_which_it_was_opened_is_no_day_on_which_it_was_made(
    line: str, made: date | None
) -> None:
    found = read(line)
    assert (found.made, found.opened, found.problems) == (made, date(2026, 11, 1), ())


@pytest.mark.parametrize("day", ["12/20", "20.12.", "3/27"])
def test_a_printed_date_in_figures_without_its_year_is_asked_about(day: str) -> None:
    line = f"12 eggs, fridge, bought today, best before {day}"
    found = read(line)
    assert (found.made, found.unread, found.problems) == (TODAY, (), ())
    with pytest.raises(BadInput, match="has no year"):
        read_printed(dict(found.process)["printed"], TODAY)


@pytest.mark.parametrize(
    ("line", "asked"),
    [
        ("1 crock sauerkraut, finished, fridge", "is it still at work"),
        ("1 crock sauerkraut, ready oct 20, fridge, started sept 20", "is not the day it was made"),
    ],
)
def test_a_ferment_that_is_said_to_be_finished_is_asked_about(line: str, asked: str) -> None:
    found = read(line)
    assert any(asked in one for one in found.problems)
    assert found.unread == ()


@pytest.mark.parametrize("how", ["braided onions", "onions, braided", "onions, strung"])
def test_how_a_crop_hangs_is_no_part_of_its_name(how: str) -> None:
    found = read(f"20 lb {how}, cellar-stored, sept 12")
    assert (found.food, found.unread, found.problems) == ("onions", (), ())


def test_bought_unknown_is_bought_nobody_knows_when() -> None:
    found = read("1 jar ketchup, bought unknown, fridge")
    assert (found.made, found.unread, found.problems) == (None, (), ())


@pytest.mark.parametrize("each", ["5 lb", "12 lb", "15 lb"])
def test_what_does_not_come_out_in_packs_is_asked_about(each: str) -> None:
    found = read(f"12 lb ground beef in {each} packs, frozen, chest freezer")
    assert any("how many, and how big" in one for one in found.problems)


def test_a_comma_ends_a_value_and_a_unit_belongs_to_its_number() -> None:
    line = "3 pint jars tomatoes, boiling-water canned, pack=hot, minutes=35 min, altitude=1800 ft"
    assert process(line) == {"pack": "hot", "minutes": "35 min", "altitude": "1800 ft"}
    assert read(line).unread == ()


@pytest.mark.parametrize(
    ("said", "strength"),
    [
        ("5% malt vinegar", "5%"),
        ("3 % white vinegar", "3%"),
        ("malt vinegar 5 %", "5%"),
        ("in 4% distilled white vinegar", "4%"),
    ],
)
def test_the_strength_of_a_named_vinegar_is_read(said: str, strength: str) -> None:
    found = read(f"4 pint jars dill pickles, vinegar pickle, {said}, shelf 2")
    assert (found.food, found.count) == ("dill pickles", 4)
    assert (dict(found.process), found.unread) == ({"vinegar": strength}, ())


SAID = (
    "7 pint jars of runner beans pressure canned shelf 2 yesterday frobnicated , ; basement jam "
    "frozen tomatoes crushed note=spicy minutes=25 1/2/2026 today 12 lb bags fridge ½ (x) [b]"
)
WORDS = st.sampled_from(SAID.split())


@settings(max_examples=many(200))
@given(st.lists(WORDS, max_size=12))
def test_no_word_is_dropped(words: list[str]) -> None:
    """Every word is taken into a field, a problem, the unread list, or is a filler."""
    line = " ".join(words)
    found = read(line)
    kept = " ".join(
        [str(found), *PLACES.values(), *(m.value for m in Method if m is found.method)]
    ).lower()
    for word in found.unread:
        assert word in line.lower()
    if "frobnicated" in words:
        assert "frobnicated" in kept


@given(st.text(max_size=200))
def test_no_text_breaks_the_line(text: str) -> None:
    assert isinstance(read(text), PutUpReading)


def test_a_value_of_two_words_needs_no_quotes() -> None:
    found = read("8 pint jars tomatoes, acid=lemon juice, pack=hot pack, north wall, minutes=50")
    assert dict(found.process) == {"acid": "lemon juice", "pack": "hot pack", "minutes": "50"}
    assert found.place == "basement › north wall"
    assert not found.unread
    found = read("acid=lemon juicy tomatoes")
    assert dict(found.process) == {"acid": "lemon"}


@pytest.mark.parametrize(
    "acid", ["lemon 1 tbsp", "lemon juice 1 1/2 tbsp", "citric acid 1/2 tsp", "1 tbsp lemon juice"]
)
def test_how_much_of_it_sours_a_jar_belongs_to_it_wherever_it_is_said(acid: str) -> None:
    found = read(f"5 pint jars tomatoes, acid={acid} each, north wall, minutes=50")
    assert dict(found.process) == {"acid": acid, "minutes": "50"}
    assert (found.count, found.size, found.unread) == (5, "pint", ())


def test_the_example_of_a_question_is_understood() -> None:
    """ "Last week" gives a day as an example, with its weekday, and "unknown": both are read."""
    [ask] = [one for one in read("4 jars plum jam, last week").asks if one.about == "made"]
    day = date.fromisoformat(ask.choices[0])
    assert TODAY - timedelta(days=TODAY.weekday() + 7) <= day, "it is in that week"
    assert day < TODAY - timedelta(days=TODAY.weekday())
    assert read(f"4 jars plum jam, {say(day)}").made == day
    assert read(f"4 jars plum jam, {day:%d %b %Y, %A}").made == day
    assert read("4 jars plum jam, unknown").made is None
    wrong = read("4 jars plum jam, Tue 11 Nov 2026")  # which is a Wednesday
    assert [one.about for one in wrong.asks] == ["made"]


def test_a_jam_that_was_cooked_is_jam_and_no_cooked_meal() -> None:
    found = read("6 pint jars plum jam, cooked in august, basement")
    assert (found.method, found.made) == (Method.JAM, date(2026, 8, 1))
    assert read("2 boxes beef stew, cooked, fridge").method is Method.MEAL


@pytest.mark.parametrize("much", ["1/2 gallon of milk", "half gallon of milk", "1/2 gallon milk"])
def test_a_half_gallon_of_milk_is_an_amount(much: str) -> None:
    found = read(f"{much}, fresh, fridge")
    assert (found.food, found.problems, found.unread) == ("milk", (), ())
    assert read_amount(dict(found.process)["amount"]) == (Fraction(1, 2), "gallon")


def test_a_day_behind_a_quoted_note_is_the_day_it_was_made(larder: Pantry) -> None:
    reading = putup.read(larder, '6 jars strawberry jam, larder, note="for Ann", 2026-11-20')
    assert (reading.note, reading.made) == ("for Ann", date(2026, 11, 20))
    assert reading.problems == reading.unread == ()


@pytest.mark.parametrize(
    "note", ['note="for Ann, 2026-11-20', "note=for Ann, 2026-11-20", "note=for Ann, minutes=10"]
)
def test_where_a_note_ends_is_asked_where_nobody_can_tell(larder: Pantry, note: str) -> None:
    reading = putup.read(larder, f"6 jars strawberry jam, larder, {note}")
    assert [ask.about for ask in reading.asks] == ["note"]
    with pytest.raises(BadInput, match="quote"):
        putup.preview(larder, reading)


def test_what_stands_behind_a_quoted_note_is_never_lost(larder: Pantry) -> None:
    reading = putup.read(larder, '6 jars strawberry jam, larder, note="for Ann" blurble')
    assert reading.unread == ("blurble",)
