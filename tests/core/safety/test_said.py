"""Which sign a person's words name, of which food, where several say the same: the nearest that its
container may show. What publications say of the words themselves stands in tests/published."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.said import meant, without_popped, worst_named
from pantry_tui.core.safety.signs import Sign, SignVerdict, signs_for
from pantry_tui.core.words import Method
from pantry_tui.reference.signs import load_signs
from pantry_tui.reference.tables import load_tables
from tests.core.safety.test_signs import sign

#: Kept as | food | what is said of it, opened -> the sign's id ("ask": it may be either).
NAMED = """
    fridge pickle | pickled onions | domed -> spoiled; weeping lid -> spoiled; hissing -> spoiled;
        bubbles on top -> spoiled; soft rot -> spoiled; yellow grains -> spoiled;
        green top -> spoiled; rotten outer leaves -> spoiled
    fermented paste | miso | domed -> unsure
    pressure canned | snap beans | hole in bag -> loose-lid; weeping lid -> leaking-lid;
        syrup weeping -> leaking-lid; crusty rim -> dried-streaks; rust spots -> deep-rust;
        pink mould -> canned-mould; black mould -> canned-mould; white film -> canned-mould;
        mould spot -> canned-mould; slimy pods -> canned-slimy; cloudy water -> murky-soft;
        blue tips -> unnatural-colour; yellow pods -> unnatural-colour; droppings -> rodents;
        broken seal -> cracked-jar; it refroze -> unsure; thawed and warm -> unsure;
        sticky glass -> dried-streaks
    boiling-water canned | peaches | cloudy water -> unnatural-colour; dark lid -> ask
    lactic ferment | sauerkraut | weeping lid -> unsure; bulging and kahm -> tight-sweet-drink;
        dark on the surface -> dark-kraut; rotten outer leaves -> ferment-putrid
    alcohol ferment | cider | turned blue -> ferment-mould
    vinegar ferment | vinegar | hissing -> unsure; bubbles on top -> unsure
    frozen | pork | pink mould -> spoiled; black mould -> spoiled; white film -> spoiled;
        black powder -> spoiled; brown spots -> spoiled; mould spot -> spoiled;
        sticky lid -> thawed-off; green top -> puffed-pack; it refroze -> refrozen-slab;
        thawed and warm -> thawed-warm
    in oil | garlic | pink yeast -> oil-spoiled; surface black -> oil-spoiled;
        white film -> oil-spoiled; black powder -> oil-spoiled; brown spots -> oil-spoiled
    bought in | hard cheese | black powder -> canned-mould; brown spots -> canned-mould
    cellar-stored | onions | black powder -> onion-black-powder
    cellar-stored | carrots | rancid -> spoiled; smells vinegary -> spoiled
    cellar-stored | potatoes | soft rot -> potato-soft-rot; moist -> potato-soft-rot;
        a bug -> infested; covered in long sprouts -> potato-old; film green -> soft-mould
    cellar-stored | cabbages | not crisp -> soft-mould
    jam | strawberry jam | black powder -> jam-mould; brown spots -> jam-mould;
        cloudy water -> cloudy-jelly-unsealed; black under the lid -> ask; turned black -> ask
    salted | cod | brown spots -> fish-dun
    dried | apples | hissing -> dry-winey; slimy slices -> spoiled; moist inside -> absorber-moist;
        went grey -> spoiled; wrong colour -> spoiled; webs -> infested
    fresh | eggs | a bit dirty -> egg-cracked; green top -> egg-colour
    sugar preserve | maple syrup | white sediment -> syrup-sand
    vinegar pickle | dill pickles | white sediment -> pickle-sediment; black lid -> ask
    fridge pickle | eggs | left out -> warm-pickled-eggs
    hot smoked | trout | curdled -> smoked-slimy
"""
ENTRIES = [
    (method.strip(), food.strip(), *(part.strip() for part in one.split("->")))
    for block in NAMED.strip().replace("\n        ", " ").splitlines()
    for method, food, said in [block.split("|")]
    for one in said.split(";")
]


def known(method: str, food: str) -> list[Sign]:
    facts = load_tables().facts(food)
    assert facts is not None, food
    return signs_for(load_signs(), Method(method), facts, True)


@pytest.mark.parametrize(("method", "food", "words", "id_"), ENTRIES)
def test_words_name_the_nearest_sign_that_shows_on_such_food(
    method: str, food: str, words: str, id_: str
) -> None:
    found = meant(known(method, food), words, food)
    assert (found.id.removesuffix("-open") if found else "ask") == id_


SHOWN = [
    sign("flat white film (kahm)", SignVerdict.HARMLESS, "kahm"),
    sign("foul smell", SignVerdict.DISCARD, "jam-mould"),
    sign("gas", SignVerdict.DO_NOT_TASTE, "spurting"),
]


@pytest.mark.parametrize(
    ("words", "id_"),
    [
        ("kahm, some on top", "kahm"),
        # What is not understood keeps nothing, but for the name of the food itself.
        ("kahm, purple", None), ("kahm on the radishes", "kahm"), ("kahm on a radish", "kahm"),
        ("kahm on my kraut", "kahm"), ("kahm on the pickles and veg", "kahm"),
        # Of two that throw it away the worse; what keeps it is not heard beside them.
        ("mouldy and gassy, kahm too", "spurting"), ("kahm, purple, mouldy", "jam-mould"),
        ("Mouldy!", "jam-mould"), ("not mouldy, gassy", None), ("nothing mouldy", None),
        ("didn't go mouldy", None), ("dont see it mouldy", None), ("without kahm", None),
        ("it went mouldy", "jam-mould"), ("a different mould", "jam-mould"),
        ("foul", "jam-mould"), ("purple", None), ("", None),
    ],
)  # fmt: skip
def test_what_throws_it_away_is_heard_and_what_keeps_it_only_alone(
    words: str, id_: str | None
) -> None:
    found = meant(SHOWN, words, "radishes")
    assert (found.id if found else None) == id_


def test_what_still_ferments_fizzes_and_that_is_no_sign_of_another_state() -> None:
    cold = sign("fizz when cold", SignVerdict.LOOK_AGAIN, "cold-fizz")
    assert meant([*SHOWN, cold], "cold fizz") is cold
    assert meant([*SHOWN, cold], "cold fizz", working=True) is SHOWN[2]
    assert meant([SHOWN[0], cold], "cold fizz", working=True) is None
    assert meant([*SHOWN, cold], "gassy") is None, "of two that differ neither is meant"


def test_a_reason_for_throwing_away_names_the_worst_that_has_its_words() -> None:
    two = [sign("foul smell and slime", id_="a"), sign("foul smell", id_="b")]
    assert worst_named(two, "it had a foul smell, the jar") is two[0]
    assert worst_named(two, "slime on it") is two[0]
    assert worst_named(two, "it was in the jar") is None
    assert worst_named(two, "foul lid") is None


@pytest.mark.parametrize(
    ("words", "left"),
    [("The lid popped up, foul", ", foul"), ("lids popping", ""), ("popped", ""), ("pops up", ""),
     ("popcorn smell", "popcorn smell")],
)  # fmt: skip
def test_that_a_lid_came_up_is_taken_out_of_what_is_said(words: str, left: str) -> None:
    assert without_popped(words).replace("the", "").strip() == left
