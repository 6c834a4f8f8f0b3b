"""Mould, rot, slime, stench and insects have one list of words, for jars and for what no lid keeps.
What only sounds like them raises nothing, and neither does who was ill when it was put up."""

from __future__ import annotations

import pytest

from pantry_tui.core.safety.said import meant
from pantry_tui.core.safety.signs import signs_for
from pantry_tui.core.words import Method, Verdict
from pantry_tui.reference.signs import load_signs
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, quotes, tried, tried_each

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
CANNED_BEEF = "3 quart jars beef chunks, pressure canned, larder, minutes=90 psi=11 canner=dial"
PICKLES = "3 pint jars dill pickles, vinegar pickle, larder, minutes=15"
JAM = "3 half-pint jars gooseberry jam, jam, larder, minutes=10"
IN_OIL = "1 jar garlic in oil 1 cup, in oil, fridge"
IN_FRIDGE = "2 quart jars cucumbers, fridge pickle, fridge, vinegar=5%"
YOGURT = "2 jars yogurt, fresh, fridge"
BEEF = "5 bags ground beef 1 lb, frozen, freezer"
PEAS = "4 bags peas 1 lb, frozen, freezer"
RICE = "2 boxes cooked rice, cooked meal, fridge"
APPLES = "3 jars dried apples 1 lb, dried, larder"
CARROTS = "20 lb carrots, cellar-stored, cellar"
CHEESE = "1 piece cheese 8 oz, bought in, fridge"

GROWN = (
    "green film on it", "ropy", "stinky", "scum is green", "black on the top", "worms in one",
    "weevils in it", "green powder on top", "a rot in it", "maggots in it", "fuzzy skin on top",
    "stinks", "black film", "pink scum", "surface is black", "hairy on top", "grey fluff",
    "green growth on the lid", "larvae in the jar", "reeks", "spoiled",
)  # fmt: skip
SPOTS = (
    "green spots", "blue specks", "orange ring", "fluffy white stuff on top", "grey patch",
    "black specks at the rim", "pink patches", "top is orange", "surface gone green",
)  # fmt: skip
ILL = (
    "made us ill", "everyone was sick after", "kids were ill all night", "threw up after one",
    "ate one while I was away and was ill", "opened one when we were ill from it",
    "cold soup made us ill", "threw the first out because we were ill",
)  # fmt: skip
NOT_ILL = (
    "packed these while I was ill", "made while Tom was sick", "rushed because I was ill",
    "put up when she was poorly", "for the ill neighbour", "home sick that day",
    "had a cold and felt ill", "sick of peeling them", "never made us ill",
)  # fmt: skip
SOUND = (
    "no mould", "not slimy", "no rot", "black pepper on top", "with allspice",
    "no sign of worms", "for the worms bin", "stood them on a green mat", "spoilt for choice",
)  # fmt: skip
#: What is well on a line of its own besides.
SOUND_ON = {
    BEANS: (
        "worms in the garden cut out", "moths in the larder", "moth traps up", "root rot took half",
        "grey film on the glass", "insects washed off",
    ),
    CANNED_BEEF: ("orange film of fat on top", "grey film on jars"),
    PICKLES: (
        "pink brine from beets", "blossom end rot on the tomatoes", "black specks of pepper",
        "slice of orange on top", "green tomatoes", "brine is pink from beets",
    ),
    JAM: (
        "hairy gooseberries", "the hairy variety", "pink scum skimmed off", "fuzzy variety",
        "skimmed off the pink scum", "worms in the garden apples cut out",
    ),
    IN_OIL: ("green specks of herbs", "specks of chilli", "film of oil on top"),
    IN_FRIDGE: (
        "red cabbage turned the brine pink", "pink brine from beets", "green specks of dill",
        "beets turned the brine red", "black specks of pepper",
    ),
    YOGURT: ("black specks of vanilla", "orange specks from the carrots"),
    BEEF: ("black spots of the cling film print", "grey patches by frost", "fluffy white frost"),
    PEAS: ("crop was partly spoilt by hail", "fluffy white ice crystals"),
    RICE: ("fluffy white rice", "green specks of parsley", "green tomatoes"),
    APPLES: ("worms sorted out before drying",),
    CARROTS: ("green spots at the shoulder", "black specks of soil"),
    CHEESE: ("nice blue spots", "blue cheese"),
}  # fmt: skip


@pytest.mark.parametrize("line", [BEANS, PICKLES, JAM, IN_OIL, IN_FRIDGE, YOGURT])
def test_what_has_grown_is_heard_on_jars_and_on_all_else(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, (*GROWN, *SPOTS))
    assert quoted(found) == set(found)
    over = {Verdict.UNKNOWN, Verdict.DISCARD, Verdict.DO_NOT_TASTE}
    assert {note: one.verdict for note, one in found.items() if one.verdict not in over} == {}


@pytest.mark.parametrize("line", [BEEF, PEAS, APPLES, RICE])
def test_what_has_grown_is_heard_frozen_dry_and_cooked(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, GROWN)
    assert quoted(found) == set(found)
    assert Verdict.SOUND not in {one.verdict for one in found.values()}


@pytest.mark.parametrize("line", [BEANS, PICKLES, JAM, IN_OIL, IN_FRIDGE, YOGURT, BEEF, CARROTS])
def test_who_fell_ill_of_it_is_heard(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, ILL)
    assert quoted(found) == set(found)
    assert Verdict.SOUND not in {one.verdict for one in found.values()}


@pytest.mark.parametrize("line", SOUND_ON)
def test_what_only_sounds_like_it_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, (*SOUND, *NOT_ILL, *SOUND_ON[line]))
    assert quoted(found) == set()
    assert {note: one.verdict for note, one in found.items()} == dict.fromkeys(found, bare.verdict)


def test_a_colour_makes_nothing_milder_than_what_its_pack_says(chilled: Pantry) -> None:
    stew = "3 boxes beef stew, cooked meal, fridge"
    assert tried(chilled, stew, "green spots").verdict is Verdict.DO_NOT_TASTE
    assert tried(chilled, stew, "lid swelled and it reeks").verdict is Verdict.DO_NOT_TASTE


def test_some_of_a_pile_that_made_somebody_ill_is_no_piece_to_cull(chilled: Pantry) -> None:
    assert tried(chilled, CARROTS, "some are spoiled").verdict is Verdict.NEEDS_CARE
    assert tried(chilled, CARROTS, "ate some rotten ones and was ill").verdict not in (
        Verdict.NEEDS_CARE, Verdict.SOUND,
    )  # fmt: skip


@pytest.mark.parametrize(
    "smell",
    ["like a damp cellar", "of wet dog", "like old socks", "of the drains", "like something died",
     "of compost", "like petrol", "like butter"],
)  # fmt: skip
def test_a_sign_and_a_note_know_the_same_smells(chilled: Pantry, smell: str) -> None:
    beef = chilled.facts("beef")
    assert beef is not None
    signs = signs_for(load_signs(), Method.PRESSURE, beef, open_=False)
    assert meant(signs, f"smells {smell}") is not None
    assert meant(signs, "smells of thyme") is None


def test_none_of_it_is_nothing_seen(chilled: Pantry) -> None:
    for note in ("no sign of green fuzz", "no trace of pink slime", "no black fluff"):
        assert not quotes(tried(chilled, BEEF, note))
