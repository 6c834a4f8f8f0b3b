"""Notes of what got into food that is put by, or went over in it: a mouth, an animal, glass, one
heating after another, ants, air that came out of a jar, rust, long sprouts. What only sounds like
them raises nothing, and neither does who is ill of something else."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

STEW = "2 tubs beef stew, cooked meal, fridge"
RICE = "2 boxes cooked rice, cooked meal, fridge"
BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
JAM = "3 half-pint jars strawberry jam, jam, larder, minutes=10"
MILK = "1 carton milk, bought in, fridge"
FROZEN_MILK = "1 carton milk, frozen, freezer"
POTATOES = "20 lb potatoes, cellar-stored, cellar"
TUNA = "2 tins tuna, bought in, larder"
CHEESE = "1 piece cheese 8 oz, bought in, fridge"

_INTO = (
    "the dog licked it", "cat had its face in it", "licked by the cat", "child sneezed in it",
    "somebody coughed on it", "glass chip fell in", "bits of glass in it",
    "a shard of china in there", "eaten from with the spoon", "ate from the tub",
    "licked spoon went in", "reheated twice", "reheated for the third time", "warmed up 3 times",
    "third reheating", "the dog ate from it",
)  # fmt: skip
_NOT_INTO = (
    "eaten from the garden", "the dog ate the bones", "reheated once", "for the dog walkers",
    "glass tub", "in a glass jar", "ate it with chips", "child sneezed at the pan",
    "can be reheated twice", "no glass chips in it", "the cat likes it", "never reheated twice",
    "licked the spoon clean", "for Bob who is ill", "for a friend when she was poorly",
    "the dog got the scraps",
)  # fmt: skip
BAD = {
    STEW: _INTO,
    RICE: _INTO,
    BEANS: (
        "food discoloured and mushy inside", "air came out of the jar hissing in",
        "air hissed out", "ants in it", "a wasp in the jar", "strange colour",
    ),
    JAM: ("ants in it", "ants", "fly in it", "air rushed out"),
    MILK: ("turned", "milk turned", "on the turn", "it has turned", "smelled before freezing"),
    FROZEN_MILK: ("turned", "smelled before freezing"),
    POTATOES: ("sprouts long as fingers and shrivelled", "long sprouts", "shrivelled"),
    TUNA: ("rusty", "rusted"),
}  # fmt: skip
GOOD = {
    STEW: _NOT_INTO,
    RICE: _NOT_INTO,
    BEANS: (
        "air came out with the bubble tool", "air hissed in when opened", "no ants",
        "ants in the kitchen", "good colour", "mushy", "in the pants pocket of a giant",
    ),
    JAM: ("no ants in it", "fruit fly trap beside it", "waspish taste"),
    MILK: ("turned on its side", "smells sweet", "jug turned round"),
    POTATOES: (
        "no sprouts", "short sprouts", "brussels sprouts beside them", "not shrivelled",
        "sprouts rubbed off",
    ),
    TUNA: ("slightly rusty", "a bit of rust", "rust wiped off", "not rusty"),
    CHEESE: ("turned weekly", "turned"),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_got_into_it_has_a_word(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    well = (Verdict.SOUND, Verdict.EAT_SOON)
    assert {note for note, one in found.items() if one.verdict in well} == set()


@pytest.mark.parametrize("line", GOOD)
def test_what_only_sounds_so_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, GOOD[line])
    assert quoted(found) == set()
    same = bare.verdict, bare.discard_after
    assert {n for n, one in found.items() if (one.verdict, one.discard_after) != same} == set()


def test_glass_and_old_potatoes_are_thrown_away(chilled: Pantry) -> None:
    assert tried(chilled, STEW, "glass chip fell in").verdict is Verdict.DISCARD
    old = tried(chilled, POTATOES, "sprouts long and shrivelled")
    assert old.verdict is Verdict.DISCARD
