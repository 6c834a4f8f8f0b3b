"""What people say of spoilt food, and the words of signs that it may stand for; how it is got rid
of."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.signs import (
    DISPOSAL,
    DISPOSAL_SOURCES,
    Sign,
    SignVerdict,
    also_said,
    likely_sign,
    near_signs,
    sign_words,
)
from pantry_tui.reference.tables import load_tables
from tests.core.safety.test_signs import sign

#: Spellings and forms of one word.
ONE_WORD = """
    mould: mold; mouldy: moldy; colour: color; coloured: colored; grey: gray; smell: odor odour
    leaf: leave; unlabelled: unlabeled; shrivelled: shriveled; leaking: leak leaky
    swollen: bulging bulged domed bloated; floating: float; spurt: spurting; foam: foaming
    slimy: slime
"""
#: What is typed: the beginnings of words of signs that are looked for as well.
MEANT = """
    off: off bad foul rotten sour rancid musty
    smell: smell foul rotten rancid musty; smells: smell foul rotten rancid musty
    stink: smell foul rotten; mold: mould; moldy: mould; mouldy: mould
    furry: fuzzy mould; hairy: fuzzy mould; slimy: slim
    popped: swollen loose lid unsealed springs; pop: swollen loose lid unsealed springs
    bulging: swollen puffed; bloated: swollen puffed; blown: swollen puffed; domed: swollen
    unsealed: unsealed loose; open: open loose unsealed
    fizzing: fizz bubbl hiss spurt foam gas moving; fizzy: fizz bubbl hiss spurt foam gas moving
    bubbling: bubbl fizz moving; foamy: foam froth; mushy: mushy soft slimy
    cloudy: cloud murky milky; murky: murky cloud milky; leaky: leak weep; leaks: leak weep
    dripping: leak weep drops; brown: brown dark faded; dark: dark brown black
    pale: faded unnatural; color: colour; colored: colour; gray: grey; odor: smell
    white: white kahm bloom scum film; film: film scum kahm; scum: scum film kahm
    bugs: insect webbing larvae; moths: insect webbing larvae; weevils: insect webbing larvae
    mice: gnawed tooth droppings; rusty: rust; frozen: froze frozen
    cracked: crack damaged splintered; broken: crack damaged splintered
"""


def lines(table: str) -> list[tuple[str, list[str]]]:
    entries = table.replace("\n", ";").split(";")
    pairs = (entry.partition(":") for entry in entries if entry.strip())
    return [(word.strip(), rest.split()) for word, _, rest in pairs]


@pytest.mark.parametrize(("word", "others"), lines(ONE_WORD))
def test_spellings_of_one_word_are_one(word: str, others: list[str]) -> None:
    for other in others:
        assert sign_words(other) == {word}


@pytest.mark.parametrize("word", ["a", "an", "the", "and", "or", "of", "in", "on", "its", "is"])
def test_words_that_carry_nothing_are_left_out(word: str) -> None:
    assert sign_words(f"lid {word} loose") == {"lid", "loose"}
    assert sign_words("not mouldy") == {"not", "mouldy"}, "no and not are none of them"


@pytest.mark.parametrize(("word", "meant"), lines(MEANT))
def test_what_is_typed_may_stand_for_these(word: str, meant: list[str]) -> None:
    found = also_said(word)
    assert found[0] == word
    assert set(meant) <= set(found)
    assert len(set(found)) == len(found)


def test_a_beginning_stands_for_what_it_may_become_and_one_letter_for_itself() -> None:
    assert set(also_said("bulg")) == {"bulg", "swollen", "puffed"}
    assert also_said("o") == ("o",)
    assert set(also_said("of")) >= {"of", "foul"}
    assert set(also_said("off")) >= {"off", "foul"}
    assert also_said("zzz") == ("zzz",)


def test_what_people_say_comes_before_what_is_only_spelled_like_it() -> None:
    signs: list[Sign] = [sign("insects or webbing"), sign("bubbles rising"), sign("bugle sounds")]
    assert near_signs(signs, "bugs")[0].words == "insects or webbing"
    assert near_signs(signs, "fizzing")[0].words == "bubbles rising"


def test_two_words_and_more_than_half_of_a_mild_sign_mean_it() -> None:
    bloom = sign("white bloom outside", SignVerdict.HARMLESS)
    assert likely_sign([bloom], "white bloom") == bloom
    assert likely_sign([bloom], "bloom") is None, "one word of it is said of mould as well"
    longer = sign("white bloom all over skin", SignVerdict.HARMLESS)
    assert likely_sign([longer], "white bloom") is None


# -- getting rid of it -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("route", "steps"), [("none", 0), ("bin", 2), ("bag", 5), ("gloves-bag", 7), ("compost-ok", 2)]
)
def test_every_route_has_its_steps_and_its_sources(route: str, steps: int) -> None:
    assert len(DISPOSAL[route]) == len(set(DISPOSAL[route])) == steps
    assert bool(DISPOSAL_SOURCES[route]) is (steps > 0)
    assert set(DISPOSAL_SOURCES[route]) <= set(load_tables().sources)


@pytest.mark.parametrize(
    ("route", "sources"),
    [
        ("bin", {"sg-osu-disposal"}), ("compost-ok", {"sg-osu-disposal", "sg-ext-cellar"}),
        ("bag", {"usda-aib-539", "sg-umo-qa157", "sg-wsu-botulism", "sg-monterey-botulism",
                 "sg-osu-disposal", "sg-cdc-spills"}),
        ("gloves-bag", {"sg-wsu-botulism", "sg-clemson-discard-2023", "sg-clemson-detox",
                        "usda-aib-539", "sg-umo-qa157", "sg-osu-disposal", "sg-cdc-spills"}),
    ],
)  # fmt: skip
def test_where_the_steps_come_from(route: str, sources: set[str]) -> None:
    assert set(DISPOSAL_SOURCES[route]) == sources


@pytest.mark.parametrize("route", ["bag", "gloves-bag"])
def test_a_suspect_jar_is_bagged_twice_bleached_and_kept_from_drains_and_animals(
    route: str,
) -> None:
    """US disease agency: 1 part bleach to 8 of water, 15 minutes; Washington State: two bags."""
    said = " ".join(DISPOSAL[route])
    for words in ("second bag", "lidded outdoor bin", "1 part household bleach to 8 parts water",
                  "15 minutes", "Not in the sink", "not to animals", "gloves"):  # fmt: skip
        assert words in said


def test_an_open_jar_is_handled_in_gloves_first_or_boiled_for_half_an_hour() -> None:
    """USDA, as Missouri and Clemson carry it: 8 quarts, 1 inch above, 30 minutes at the boil."""
    first, *rest = DISPOSAL["gloves-bag"]
    assert "gloves" in first
    boiled = next(one for one in rest if "boil it" in one)
    assert "8 quarts" in boiled
    assert "30 minutes" in boiled
    assert "never eat it" in boiled
    assert DISPOSAL["bag"][0].startswith("Keep it closed")
