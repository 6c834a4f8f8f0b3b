"""What a note says of food that no lid and no process keeps is held against it, and lifts nothing.

The sentences that food was judged by are those of the tables: garlic in oil, the two-hour rule, the
signs of spoiling.
"""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import quoted, quotes, tried, tried_each

OIL = "2 bottles olive oil, larder"
DRIED = "3 jars dried tomatoes, larder"
APPLES = "3 jars dried apples, larder"
PICKLE = "2 jars garlic, fridge pickle, fridge"
EGG_PICKLE = "2 jars pickled eggs, fridge pickle, fridge"
HONEY = "2 half-pint jars honey, larder"
SOUP = "2 boxes chicken soup, fridge"
BEEF = "2 packs ground beef, frozen, freezer"
BEANS = "2 bags runner beans, frozen, freezer"
EGGS = "30 eggs, fridge"
MILK = "2 bottles milk, fridge"
YOGURT = "2 jars yogurt, fresh, fridge"
KRAUT = "1 crock sauerkraut, lactic ferment, larder, salt=2.25%"
POTATOES = "20 lb potatoes, cellar-stored, cellar"
TROUT = "3 packs hot smoked trout, fridge"
JERKY = "3 packs jerky, larder"
CANNED_KRAUT = "2 pint jars sauerkraut, boiling-water canned, larder, minutes=20, altitude=500ft"
LARD = "2 jars lard, rendered fat, fridge"

#: Not offered, with the reason.
DOUBTED = {
    OIL: (
        "with garlic and rosemary inside", "chillies and garlic in it", "garlic infused", "garlic",
        "basil steeped in it", "with sun and raw onions", "some sprigs of thyme",
    ),
    LARD: ("with onions", "roasted garlic added"),
    DRIED: ("topped up with oil and garlic", "covered with olive oil", "in oil", "under oil"),
    PICKLE: ("in oil", "oil poured over the top"),
    HONEY: ("with raw garlic", "infused with ginger and onion", "chillies in it", "garlic cloves"),
    BEEF: (
        "was two days past use-by", "expired last week", "refrozen", "froze it again",
        "freezer was off for a night", "power cut of ten hours", "lid was ajar for a day",
    ),
    SOUP: ("fridge was off", "fridge door left open"),
    MILK: ("raw", "unpasteurised", "straight from the cow", "not pasteurized"),
    EGG_PICKLE: ("pricked", "pierced with a toothpick first"),
    KRAUT: ("not covered by brine", "brine was low", "cabbage above the brine"),
    POTATOES: ("turned green", "some green patches", "green and sprouting", "long and bitter"),
    APPLES: ("still damp", "not quite dry", "still a bit moist"),
    JERKY: ("not heated, air dried", "still moist", "dried at 110 F", "skipped the heating"),
    TROUT: ("smoked at 120 F", "reached 55 C inside"),
    CANNED_KRAUT: ("only fermented 4 days", "2 weeks in the crock", "fermented 20 days"),
}  # fmt: skip
#: Thrown away from the first day.
THROWN = {
    SOUP: (
        "left out overnight", "stood on the counter 5 hours before it went in",
        "cooled overnight on the stove", "sat out for three hours", "forgotten in the car",
        "was left on the hob all night", "not refrigerated for half a day", "stood 4 hours",
        "stood 90 minutes in the sun at 95 F", "mouldy", "mold on top", "back from the picnic",
    ),
    BEEF: (
        "thawed on the counter and frozen again", "defrosted overnight, then refrozen",
        "smelled slightly off", "smelt bad",
    ),
    EGGS: ("cracked", "washed, left out", "dirty"),
    EGG_PICKLE: ("stood at room temperature for a week", "kept on the counter a week"),
    APPLES: ("some mould", "fuzzy spots, mould"),
    KRAUT: ("pink and fuzzy on top", "slimy"),
    TROUT: ("left out overnight",),
}  # fmt: skip
#: Nothing is said against it.
FINE = {
    OIL: (
        "no garlic", "for garlic bread", "good with garlic and rosemary", "first cold pressing",
        "with dried chillies", "chilli flakes added", "without herbs", "from Anna", "served with",
    ),
    LARD: ("from Tom's pigs", "no onions", "for roast potatoes with garlic"),
    DRIED: (
        "no oil", "oil-free", "served with olive oil", "brushed with oil before drying",
        "tossed in a little olive oil", "oiled tray", "leathery", "good in oil later",
    ),
    PICKLE: ("no oil", "with dill", "stood overnight in salt", "brined overnight", "crisp"),
    HONEY: (
        "no garlic", "heather", "from the bees by the garlic bed", "with a cinnamon stick",
        "set hard", "for ginger tea", "lemon added",
    ),
    SOUP: (
        "nothing left out", "left out the cream", "onions left out", "chilled at once",
        "stood 1 hour to cool", "cooled in an ice bath within the hour", "cooled on the counter",
        "cooled overnight in the fridge", "beans soaked overnight", "smells great", "no mould",
        "left half for Jo", "simmered for 5 hours", "skin left on", "kept in the fridge since",
        "chicken marinated overnight", "never left out", "with 5 herbs", "cooled 30 minutes",
        "thawed in the fridge overnight", "not past its date", "with garlic and olive oil",
    ),
    BEEF: (
        "thaw in the fridge overnight", "thaw before use", "not refrozen", "froze at once",
        "well within use-by", "from the Saturday market", "flat packed", "80 percent lean",
    ),
    BEANS: (
        "not blanched", "picked in the sun", "stood 3 hours before blanching", "fuzzy variety",
        "no frost", "past their best", "left whole",
    ),
    EGGS: ("not cracked", "unwashed", "none cracked", "brown", "from Ida's hens", "no dirt"),
    MILK: ("pasteurised", "not raw", "for custard", "whole", "from the farm shop"),
    YOGURT: ("set overnight on the counter", "cultured 8 hours in the warm", "cultured at 110 F"),
    EGG_PICKLE: ("not pricked", "with beetroot", "chilled at once"),
    KRAUT: (
        "under brine", "well covered by brine", "no mould", "not slimy", "bubbling nicely",
        "brine topped up", "fermented on the counter", "white film skimmed", "no kahm",
    ),
    POTATOES: (
        "no green ones", "green sprouts rubbed off", "threw out two rotten ones", "from the green "
        "bed", "small ones", "dug after rain",
    ),
    APPLES: (
        "dried 8 hours at 135 F", "not dried out", "pliable", "no mould", "soft and leathery",
        "lemon dip", "completely dry",
    ),
    JERKY: ("heated to 160 F first, dried at 140 F", "not still moist", "hot", "with soy sauce"),
    CANNED_KRAUT: ("fermented 4 weeks", "fermented 21 days", "fermented in the cellar"),
    TROUT: (
        "not vacuum packed", "smoked at 225 F", "smoked at 120 F first, then 165 F inside",
        "kept at 36 F",
        "with dill",
        "hung 3 hours to form a pellicle", "alder smoke", "left the skin on",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", DOUBTED)
def test_what_a_note_says_is_held_against_it(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, DOUBTED[line])
    assert {note: one.verdict for note, one in found.items()} == dict.fromkeys(
        DOUBTED[line], Verdict.UNKNOWN
    )
    assert quoted(found) == set(found)
    assert [note for note, one in found.items() if one.discard_after is not None] == []


@pytest.mark.parametrize("line", THROWN)
def test_what_is_surely_over_is_thrown_away_at_once(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, THROWN[line])
    assert {note: one.verdict for note, one in found.items()} == dict.fromkeys(
        THROWN[line], Verdict.DISCARD
    )
    assert quoted(found) == set(found)


def test_what_smells_sour_or_stood_in_a_flood_is_not_tasted(chilled: Pantry) -> None:
    for note in ("smells sour", "stood in flood water"):
        assert tried(chilled, BEEF, note).verdict is Verdict.DO_NOT_TASTE
    assert not quotes(tried(chilled, BEEF, "from the farm where the field was flooded"))


@pytest.mark.parametrize("line", FINE)
def test_a_good_note_says_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, FINE[line])
    assert quoted(found) == set()
    dates = bare.verdict, bare.best_by, bare.discard_after
    assert {
        n: o for n, o in found.items() if (o.verdict, o.best_by, o.discard_after) != dates
    } == {}


@pytest.mark.parametrize("note", ["vacuum sealed", "vac packed", "in vacuum bags"])
def test_a_pack_without_air_is_one_by_its_note_too(chilled: Pantry, note: str) -> None:
    airless = tried(chilled, f"{TROUT}, vacuum=yes")
    bare, noted = tried(chilled, TROUT), tried(chilled, TROUT, note)
    assert bare.discard_after is not None
    assert noted.discard_after is not None
    assert noted.discard_after == airless.discard_after
    assert noted.discard_after < bare.discard_after
    assert tried(chilled, f"{TROUT}, vacuum=yes", note).discard_after == airless.discard_after
    assert putup.read(chilled, f'{TROUT}, vacuum=no, note="{note}"').problems


@pytest.mark.parametrize("told", ["note=no salt", "note=unsalted", "salt=none"])
def test_no_smoked_fish_is_published_without_salt(chilled: Pantry, told: str) -> None:
    for way in ("hot", "cold"):
        found = tried(chilled, f"3 packs {way} smoked trout, fridge, {told}")
        assert found.verdict is Verdict.UNKNOWN
        assert "No salt was used" in found.reasons[0]


def test_a_note_makes_nobody_believe_a_later_date_of_a_shop(chilled: Pantry) -> None:
    said = putup.read(chilled, "2 packs pork chops, bought in, fridge, note=vacuum packed")
    assert dict(said.process)["vacuum"] == "unknown"


def test_two_hours_are_the_line(chilled: Pantry) -> None:
    sound = tried(chilled, SOUP).verdict
    assert tried(chilled, SOUP, "stood on the counter 2 hours").verdict is sound
    assert tried(chilled, SOUP, "stood on the counter 121 minutes").verdict is Verdict.DISCARD
    assert tried(chilled, SOUP, "stood outside 60 min at 95 F").verdict is sound
    assert tried(chilled, SOUP, "stood outside 61 min at 95 F").verdict is Verdict.DISCARD


def test_a_note_that_is_put_right_alone_lifts_nothing(chilled: Pantry) -> None:
    putup.put_up(chilled, putup.read(chilled, SOUP))
    (batch,) = chilled.stock.batches.values()
    assert chilled.judge(chilled.containers_of(batch)[0]).verdict is not Verdict.DISCARD
    for note in ("left out overnight", "chilled at once"):
        correct(chilled, batch.code, note=note)
        judged = chilled.judge(chilled.containers_of(chilled.stock.batches[batch.id])[0])
        assert judged.verdict is Verdict.DISCARD
        assert judged.discard_after is not None


def test_a_note_of_before_is_read_too(chilled: Pantry, monkeypatch: pytest.MonkeyPatch) -> None:
    """A new check reaches what was put up before it, with no record beside its note."""
    monkeypatch.setattr(putup, "checked", lambda *_: None)
    putup.put_up(chilled, putup.read(chilled, f"{SOUP}, note=left out overnight"))
    (batch,) = chilled.stock.batches.values()
    assert "left out overnight" in batch.doubt[0]
    assert chilled.judge(chilled.containers_of(batch)[0]).verdict is Verdict.DISCARD
