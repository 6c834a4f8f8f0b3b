"""What a note says of a process is held against it as if the record said so, and lifts nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp
from pantry_tui.services.stock.correct import correct

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
PUMPKIN = "3 pint jars pumpkin, pressure canned, larder, minutes=55 psi=11 canner=dial"
POTATOES = "3 pint jars potatoes, pressure canned, larder, minutes=35 psi=11 canner=dial"
TOMATOES = "3 pint jars tomatoes, boiling-water canned, larder, minutes=85 acid=lemon"
PEACHES = "3 pint jars peaches, boiling-water canned, larder, minutes=30 pack=hot"
JAM = "3 half-pint jars strawberry jam, jam, larder, minutes=10"
DILLS = "3 pint jars dill pickles, vinegar pickle, larder, minutes=15"
KRAUT = "1 quart jar sauerkraut, lactic ferment, fridge"
BARE = "3 pint jars green beans, pressure canned, larder"
AT_500 = ", altitude=500ft"

DOUBTED = {
    BEANS: (
        "packed dry", "never reached pressure", "not vented, steam not exhausted first",
        "pressure dropped below 11 midway, did not restart the clock",
        "gauge fell to 8 psi for a while", "actually done at 10 psi",
        "the gauge reads 3 psi too high",
        "jars were only in boiling water, canner lid would not lock",
        "really only 10 minutes", "real time 15 min", "altitude 6000 ft",
        "canned at 6,000 ft", "at 6 000 ft", "altitude 6,000",
        "two lids popped back up overnight", "lid popped", "seal was soft on one jar",
        "one of them a quart", "gauge was out by two pounds", "power failed during the run",
        "minutes counted from when I lit the stove", "lids flexed when pressed",
        "up at the cabin, 6000 ft", "unsure whether the time was kept",
        "cooled canner under the tap",
        "jars siphoned half of their water", "thickened with flour", "pureed",
        "topped with bacon and a knob of butter",
        "jars stood 2 days on the counter before processing",
        "ran out of gas for ten minutes", "the pressure would not hold", "forgot to vent",
        "steam leaked from the gasket", "dial gauge not tested", "timer was wrong",
        "processed eighteen minutes", "at 9 lb", "psi was low", "70 kPa", "1800 m",
        "elevation 4200",
        "lid would not stay down", "one lid came loose", "vented 3 minutes",
        "opened the canner too early",
        "three quarts among them", "filled to the brim", "with mushrooms",
        "quarter hour short, 5 minutes short",
    ),
    PUMPKIN: ("pureed", "mashed smooth", "thickened with cornstarch"),
    POTATOES: ("packed dry, no water", "skins on", "without liquid"),
    TOMATOES: (
        "with fried mushrooms and garlic", "thickened with cornstarch", "vinegar 3%",
        "half the lemon juice", "lemon juice went into the last two only",
        "used a fresh lemon from the tree", "used vinegar of 3 percent", "with the skins on",
        "tomatoes from frost-killed vines", "overripe ones", "1/4 tsp lemon juice in each",
        "water went off the boil", "boiled dry", "jars not covered with water", "only 160 F",
        "added a whole onion and peppers", "lost track of time", "seal failed on one",
    ),
    PEACHES: ("really 15 minutes", "2000 m", "steam canner, stopped early", "lid popped up"),
    JAM: ("processed 3 minutes", "lids popped up", "pH 4.9"),
    DILLS: ("vinegar 3%", "half vinegar, half water", "processed 4 minutes"),
    KRAUT: ("1% salt", "salt was 1.2 percent"),
    BARE: ("10 min at 8 psi", "processed 12 minutes", "at 6 psi"),
}  # fmt: skip
FINE = {
    BEANS: (
        "gift for Ann", "for 10 minutes rest", "20 min at 11 psi", "altitude 500 ft",
        "garden row 3",
        "rested 10 minutes in the canner water", "picked 12 lb", "11 lb", "beans from row 10",
        "pressure never dropped below 11", "no trouble with the gauge", "all lids sealed",
        "lids popped down as they cooled", "heard all the lids pop", "the seal did not fail",
        "not unsealed", "gauge tested in May", "next time 25 min", "for mashed potatoes",
        "good with bacon", "for soup with noodles", "covered with boiling water",
        "blanched 3 min",
        "vented 10 minutes", "rings off", "new lids, red", "shelled with Ida for 2 hours",
        "Dragon Tongue, second picking", "bed 4, 30 ft long", "canned 20 minutes at 11 pounds",
        "twenty minutes", "shelf 2, box 10", "less salt next time", "100% organic",
        "seals not checked yet",
        "the big canner", "pint jars from Maren", "eat by spring", "hot day, 95 F outside",
    ),
    TOMATOES: (
        "2 lb sugar", "lemon juice was fine", "lemon juice added", "5% vinegar", "no lemon peel",
        "simmered 20 minutes first", "good with garlic and onions", "no water added",
        "85 minutes",
        "did not skip the lemon juice", "didn't use fresh lemon juice, bottled",
        "Amish Paste, half a crate",
        "from the plants by the wall", "for sauce", "made with Tom",
    ),
    PEACHES: (
        "light syrup", "30 min", "a gift", "peeled with Jo", "cooked 5 minutes",
        "3 quarts of syrup",
    ),
    JAM: (
        "boiled 12 minutes", "set in 4 minutes", "a bit sweet", "2 lb sugar",
        "less sugar next time",
    ),
    DILLS: ("vinegar 5%", "with dill and garlic", "crisp, do again", "brine with 2 onions"),
    KRAUT: ("2.5% salt", "cut fine", "row 3"),
    BARE: ("20 min at 11 psi", "from row 3", "25 minutes"),
}  # fmt: skip


def _put_up(larder: Pantry, line: str, note: str) -> PutUp:
    read = putup.read(larder, f'{line}{"" if line == KRAUT else AT_500}, note="{note}"')
    return putup.preview(larder, read)


def _against(larder: Pantry, line: str, note: str) -> list[str]:
    return [one for one in _put_up(larder, line, note).reasons if "Its note says" in one]


def _known(found: PutUp, line: str, larder: Pantry) -> bool:
    bare = putup.preview(larder, putup.read(larder, f"{line}{'' if line == KRAUT else AT_500}"))
    return found.verdict is bare.verdict


@pytest.mark.parametrize("line", DOUBTED)
def test_a_note_is_read_as_a_record(larder: Pantry, line: str) -> None:
    sound = [
        note for note in DOUBTED[line] if _put_up(larder, line, note).verdict is not Verdict.UNKNOWN
    ]
    assert sound == []


@pytest.mark.parametrize("line", FINE)
def test_a_note_of_something_else_says_nothing(larder: Pantry, line: str) -> None:
    doubted = {note: said for note in FINE[line] if (said := _against(larder, line, note))}
    assert doubted == {}
    assert [n for n in FINE[line] if not _known(_put_up(larder, line, n), line, larder)] == []


def test_the_sentence_quotes_the_note_and_says_what_to_do(larder: Pantry) -> None:
    (said,) = _against(larder, BEANS, "good jars; real time 15 min")
    assert "'real time 15 min': not checked" in said
    assert "minutes=..." in said
    (said,) = _against(larder, BEANS, "pressure dropped")
    assert "'pressure dropped': not checked" in said
    assert "record the process again" in said


def test_a_note_that_is_put_right_alone_lifts_nothing(larder: Pantry) -> None:
    putup.put_up(larder, putup.read(larder, f"{BEANS}{AT_500}"))
    (batch,) = larder.stock.batches.values()
    assert not batch.doubt
    correct(larder, batch.code, note="gauge fell to 8 psi")
    assert "8 psi" in larder.stock.batches[batch.id].doubt[0]
    correct(larder, batch.code, note="")
    assert "8 psi" in larder.stock.batches[batch.id].doubt[0]
    correct(larder, batch.code, process=[("psi", "11")], note="the gauge was right")
    assert not larder.stock.batches[batch.id].doubt


def test_a_new_record_beside_the_old_note_lifts_nothing(larder: Pantry) -> None:
    putup.put_up(larder, putup.read(larder, f"{BEANS}{AT_500}, note=lid popped"))
    (batch,) = larder.stock.batches.values()
    correct(larder, batch.code, process=[("minutes", "25")])
    assert "lid popped" in larder.stock.batches[batch.id].doubt[0]
