"""Old words do what the new ones do; nothing is guessed; nothing typed reaches a terminal raw."""

from __future__ import annotations

import pytest

from pantry_tui.cli import registry
from tests.cli.conftest import Kitchen

#: Old words and the same in new ones; `first` is done before both.
SAME: tuple[tuple[str, str], ...] = (
    ("keeps|dried|apples", "shelf-life|dried|apples"),
    ("lose|{peaches}|2", "missing|{peaches}|2"),
    ("finish|{kraut}", "ready|{kraut}"),
    ("round|shelf 2|--seen|{peaches}=3", "count|shelf 2|--seen|{peaches}=3"),
    ("taste|{peaches}|not|again|too soft", "rate|{peaches}|not-again|too soft"),
    (
        "own|food|moon roots|--group|vegetable|--acidity|low-acid",
        "add-food|moon roots|--group|vegetable|--acidity|low-acid",
    ),
    (
        "own|rule|dried|apples|--in|pantry|--keeps|3 months",
        "add-rule|dried|apples|--in|pantry|--lasts|3 months",
    ),
    ("own|list", "added"),
    ("table|away|24 dec|to|27 dec", "household|away|24 dec|to|27 dec"),
    ("table|guests|6|friday", "household|guests|6|on|friday"),
    ("table|usual|friday", "household|usual|friday"),
    ("table|list", "household|days"),
    ("appetite|fruit|3", "household|appetite|fruit|3"),
    ("dish|add|bean pot = 4 runner beans", "household|dish|add|bean pot = 4 runner beans"),
    ("dish|drop|stew", "household|dish|drop|stew"),
    ("dish|list", "household|dish|list"),
    ("substitute|peaches|with|plums", "household|substitute|peaches|with|plums"),
    ("substitute|list", "household|substitute|list"),
    ("week|--anew", "week|--replan"),
    ("week|--keep|{peaches}=friday", "week|--pin|{peaches}=friday"),
    ("week|--drop|peaches", "week|--skip|peaches"),
    ("week|--out|friday", "week|--eat-out|friday"),
    ("calc|brine|500g|--salt|3", "calc|brine|500g|--percent|3"),
    ("calc|brine|500g|--strength|3", "calc|brine|500g|--percent|3"),
    ("calc|brine|500g|3%|--basis|total", "calc|brine|500g|3%|--by|total"),
    ("calc|brine|500g|3%|--of|total", "calc|brine|500g|3%|--by|total"),
    ("calc|drysalt|2%|--vegetables|5lb", "calc|drysalt|2%|--weight|5lb"),
    ("calc|vinegar|--target|5|--acidity|10", "calc|vinegar|--to|5|--acidity|10"),
    ("calc|drying|1kg|--moisture|80|--target|20", "calc|drying|1kg|--from|80|--to|20"),
    ("calc|headspace|peaches|--canner|pressure", "calc|headspace|peaches|--method|pressure"),
    ("calc|infusion|1l|100g|--abv|40", "calc|infusion|1l|100g|--strength|40"),
    ("calc|infusion|1l|40%|--plant|100g", "calc|infusion|1l|40%|--fruit|100g"),
    ("calc|vinegar|--to|5|--percent|10", "calc|vinegar|--to|5|--acidity|10"),
    ("calc|boil|--pressure|11", "calc|boil|--psi|11"),
)


@pytest.mark.parametrize(("old", "new"), SAME)
@pytest.mark.parametrize("json_", [(), ("--json",)], ids=["plain", "json"])
def test_an_old_word_does_what_the_new_one_does(
    kitchen: Kitchen, old: str, new: str, json_: tuple[str, ...]
) -> None:
    kitchen.run("household", "dish", "add", "stew = 2 ground beef")
    store = kitchen.folder / "store.db"
    was = store.read_bytes()

    def done(words: str) -> object:
        store.write_bytes(was)
        said = kitchen.run(*words.split("|"), *json_)
        log = [{**line, "id": ""} for line in kitchen.answer("log")]
        return said, log, kitchen.answer("due"), kitchen.answer("household", "days")

    before = done(new)
    assert done(old) == before
    assert before[0][0] == 0  # type: ignore[index]


def test_every_old_word_is_among_them() -> None:
    typed = {old.replace("|", " ") for old, _ in SAME}

    def tried(word: str) -> bool:
        return any(said == word or said.startswith(f"{word} ") for said in typed)

    assert [old for e in registry.every() for old in e.old if not tried(old)] == []
    flags = {
        flag
        for e in registry.every()
        for field in e.load().arguments.values()
        for flag in field.old
    }
    assert {flag for flag in flags if not any(f" {flag}" in said for said in typed)} == set()


@pytest.mark.parametrize(
    "words",
    [
        ("du",),
        ("shelf",),
        ("plac", "list"),
        ("place", "lis"),
        ("household", "awa", "friday"),
        ("due", "--with", "30d"),
        ("due", "--js"),
        ("--tod", "2026-11-25", "due"),
        ("--sto", "elsewhere.db", "due"),
        ("due", "--within", "30d", "--within", "60d"),
        ("due", "--json=yes"),
        ("--within", "30d", "due"),
        ("place",),
        ("due", "--today", "tomorrow"),
        ("due", "--today", "2026-11-25 24:10"),
        ("--today",),
    ],
)
def test_nothing_is_guessed(kitchen: Kitchen, words: tuple[str, ...]) -> None:
    code, out, err = kitchen.run(*words)
    assert (code, out) == (2, ""), err
    assert err.count("\n") == 1, err


NASTY = "\x1b]0;gone\x07\x1b[2J\u202e"


@pytest.mark.parametrize(
    "words",
    [
        (NASTY,),
        ("due", "--place", NASTY),
        ("due", f"--{NASTY}"),
        ("due", NASTY),
        ("use", NASTY),
        ("household", NASTY),
        ("undo", NASTY),
        ("find", NASTY),
        ("shelf-life", "dried", NASTY),
        ("place", "add", NASTY, "--climate", "room"),
        ("putup", f"3 jars peaches, dried, shelf 2, {NASTY}", "--dry-run"),
        ("add-food", NASTY + "x", "--group", "fruit", "--acidity", "acid"),
        ("household", "dish", "add", f"{NASTY} = 2 peaches"),
        ("reserve", "{peaches}", "--for", NASTY + "x"),
        ("use", "{peaches}", "--at", NASTY),
        ("calendar", f"nowhere/{NASTY}.ics"),
    ],
)
def test_hostile_text_never_reaches_the_terminal(kitchen: Kitchen, words: tuple[str, ...]) -> None:
    _, out, err = kitchen.run(*words)
    after = kitchen.run("place", "list")[1] + kitchen.run("added")[1]
    after += kitchen.run("household", "dish", "list")[1] + kitchen.run("log")[1]
    for text in (out, err, after):
        assert not {"\x1b", "\x07", "\u202e"} & set(text)


@pytest.mark.parametrize(
    ("words", "left"),
    [
        (("runner", "beans"), 5),
        (("runner", "beans", "2"), 4),
        (("runner beans", "2"), 4),
        (("{beans}", "2"), 4),
        (("{beans}", "half"), None),
    ],
)
def test_a_food_of_two_words_needs_no_quotes(
    kitchen: Kitchen, words: tuple[str, ...], left: int | None
) -> None:
    code, out, err = kitchen.run("use", *words)
    assert code == 0, err
    assert left is None or f"{left} left of this batch" in out


def test_a_place_is_called_by_what_it_is_without_where_it_is(kitchen: Kitchen) -> None:
    kitchen.run("place", "add", "chest freezer by the door", "--climate", "deep freezer")
    made = kitchen.answer("putup", "2 bags peas, frozen, chest freezer")
    assert made["read_as"]["place"] == "chest freezer by the door"
    kitchen.run("place", "add", "chest freezer", "--climate", "freezer")
    made = kitchen.answer("putup", "2 bags peas, frozen, chest freezer")
    assert made["read_as"]["place"] == "chest freezer"


def test_a_climate_is_named_by_a_place_that_surely_has_it(kitchen: Kitchen) -> None:
    assert kitchen.run("place", "add", "box", "--climate", "refrigerator")[0] == 0
    code, _, err = kitchen.run("place", "add", "under the roof", "--climate", "attic")
    assert (code, "is no climate" in err) == (2, True)


def test_a_tin_is_asked_about_as_bought_first(kitchen: Kitchen) -> None:
    _, _, err = kitchen.run("putup", "6 tins chickpeas, shelf 2")
    assert "for example: bought" in err


def test_no_two_numbers_stand_side_by_side_in_what_was_put_up(kitchen: Kitchen) -> None:
    out = kitchen.run("putup", "4 2-lb packs pork, frozen, freezer")[1]
    assert "how many: 4 x 2 lb packs" in out
    assert "how many: 3 pint jars" in kitchen.run("putup", "3 pint jars plum jam, jam, shelf 2")[1]


def test_what_must_go_is_not_to_be_labelled(kitchen: Kitchen) -> None:
    out = kitchen.run("putup", "2 lb mince, fresh, fridge, 2026-11-01")[1]
    assert "verdict: discard" in out
    assert "Lid code" in out.splitlines()[0]
    assert "write it" not in out
