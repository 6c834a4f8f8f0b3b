"""Notes in plain words that were swallowed, or raised an alarm where there is none."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, quotes, tried, tried_each

BEANS = "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial"
JAM = "3 jars strawberry jam, larder, minutes=10"
SALSA = "2 pint jars salsa, boiling-water canned, larder, minutes=15"
CHUTNEY = "3 pint jars tomato chutney, vinegar pickle, larder, vinegar=5% minutes=10"
SAUCE = "3 pint jars tomato sauce, boiling-water canned, larder, minutes=40 acid=2 tbsp lemon juice"
PICKLES = "3 pint jars dill pickles, vinegar pickle, larder, vinegar=5% minutes=15"
BEEF = "3 bags ground beef, frozen, freezer"
HONEY = "1 jar honey, bought in, larder"
TROUT = "3 packs hot smoked trout, fridge"
STEW = "2 boxes beef stew, cooked meal, fridge"

QUIET = {
    BEANS: (
        "no dodgy ones", "not dodgy", "nothing dodgy", "none dodgy", "no suspicious lids",
        "timer went off at 20 min", "timer went off after 20 minutes", "no rust", "rusty colour",
        "rusty tin opener", "out of the cold 1 hour", "looks good", "no off smell",
    ),
    JAM: ("looks lovely", "no off flavours", "nothing odd", "none bulging"),
    SALSA: ("onion", "with onion", "with onions and peppers", "has onions in it", "onion, garlic"),
    CHUTNEY: ("with onion", "onions and garlic"),
    PICKLES: ("brined 10 minutes", "salted 20 minutes and rinsed", "timer went off at 15 min"),
    BEEF: ("good seal", "sealed well", "bag of 1 lb", "vacuum sealed"),
    HONEY: ("not for the baby", "for the baby shower", "glaze for baby carrots",
            "for the baby's mother"),
    TROUT: ("brined 1 hour", "brined 30 minutes", "brined 10 minutes, 4 % salt", "for the baby"),
    STEW: ("no dodgy ones", "looks good", "smells wonderful", "tastes great", "sour cream on top"),
}  # fmt: skip
SAID = {
    BEANS: (
        "dodgy", "rusty", "slightly rusty", "strange taste", "tastes strange", "looks bad",
        "timer went off early", "timer never went off", "timer went off at 12 min",
        "process ok: \u2717", "process ok: nope", "process ok: maybe",
    ),
    JAM: ("rusty", "odd smell", "tasted funny"),
    SALSA: ("extra onion", "added onion", "plus onions", "with corn", "with onions and beans"),
    CHUTNEY: ("extra onion",),
    SAUCE: ("with onion",),
    PICKLES: ("timer went off at 8 min",),
    BEEF: ("no seal", "seal broke", "bag not sealed", "off odour", "odd odour", "torn bag"),
    HONEY: ("for the baby", "for our newborn", "gift for an infant"),
    TROUT: ("brined 10 minutes", "10 minutes in brine"),
    STEW: ("strange taste", "looks not right", "smell not right", "off odour", "tastes sour"),
}  # fmt: skip

#: What other cooks wrote of other food: line -> what is judged or asked about, what is neither.
KITCHENS = {
    "2 tubs chicken curry, cooked meal, fridge": (
        ("dished up at seven, remembered it at midnight", "left it to cool and fell asleep",
         "we ate late, pot only went in the fridge when the film ended", "sat in there till 4",
         "potluck from 5 till half past 8, brought the rest home", "been out since eleven",
         "in a hot car from lunch to tea", "room temperature most of the afternoon",
         "carved at one, fridge at six", "delivered at 7, boxed up at 10",
         "fridge two and a half hours later", "cooled on the counter and went to bed"),
        ("cooled in the sink with ice, in the fridge by 7", "left out an hour and a half",
         "ate half at 6, rest fridged by 7:15", "only in the fridge when cool",
         "carved at one, wrapped and chilled at two", "found a bay leaf", "sat down at 4 to eat it",
         "left the recipe with Ann and went to bed", "cooked 7.30 pm, boxed 8.10 pm",
         "stands since 3 in the fridge", "bubbling hot from the oven"),
    ),
    "1 pack hams, bought in, fridge": (
        ("discard by: 2026-11-10", "Discard after 2026-11-10", "good until 2026-11-10",
         "keeps till 2026-11-10", "throw away after 2026-11-10"),
        ("good until 2026-12-30", "keeps well", "good by all means"),
    ),
    "2 boxes coq au vin, cooked meal, fridge": (
        ("buffet for 3 hours", "buffet 3h", "3h buffet"),
        ("buffet 1 hour", "for the buffet, 3 hours in the oven", "made 3 hours before the buffet",
         "buffet for 30 people"),
    ),
    "1 bag deer jerky, dried, larder": (
        ("stood in the rain", "absorbed moisture", "half dried", "semi-dried", "limp",
         "fell in the sink", "part dry"),
        ("the silica packet absorbed moisture", "crisp", "dried on a day of rain", "not limp"),
    ),
    "1 pot lentil soup, cooked meal, fridge": (
        ("has gone fizzy", "bubbling a bit at the edges", "bubbles"),
        ("thick enough to stand a spoon in", "needs salt", "simmered till it bubbled"),
    ),
    "2 boxes paella, cooked meal, fridge": (
        ("game night 8 to midnight on the coffee table", "wrapped warm in towels, 4 hours",
         "set the pot on the back step to cool overnight", "smells eggy"),
        ("kept warm for 1 hour", "set it out on a platter", "set aside for Ann", "egg on top",
         "set the table for six"),
    ),
    "4 packs turkey slices, bought in, fridge": (
        ("best before Monday last", "use by was last Monday", "slippery", "packet puffed"),
        ("best before Monday", "half price sticker", "smoked flavour"),
    ),
    "2 lb shrimp, frozen, freezer": (
        ("bag of ice crystals, stuck in one lump",), ("stuck a label on it", "shells on"),
    ),
    "3 lb chicken thighs, fresh, fridge": (
        ("thawed on the draining board since breakfast", "sat under foil from lunch until Bo left",
         "sat from lunch until the plumber left at 5"),
        ("from the market, 8 pieces", "from lunch, wrapped at once", "in the fridge from lunch"),
    ),
    "2 lb pork chops, fresh, fridge": (
        ("grey-green at the edges", "greenish", "turned green"),
        ("green peppercorns", "rainbow sheen", "in a green marinade"),
    ),
    "5 pint jars peaches, boiling-water canned, larder, minutes=25": (
        ("used the small pot so water only came to the shoulders",
         "liquid gone from half the jars"),
        ("a little foam on top of the syrup", "started 6 pm, out 7 pm",
         "water came to the boil", "all pinged before bed"),
    ),
    "2 packs beef jerky, dried, larder, temperature=160F": (
        ("bends like leather but sticky inside", "dried on the porch in the sun"),
        ("cracks but does not snap", "marinated overnight in the fridge"),
    ),
    "3 packs hot smoked trout, fridge": (
        ("hung on the porch overnight after smoking",),
        ("hung to dry overnight before smoking", "alder chips"),
    ),
    "12 eggs, fresh, fridge": (
        ("washed in cold water then left on the counter a week",), ("from Ida's hens",),
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", KITCHENS)
def test_what_other_cooks_write_is_heard(chilled: Pantry, line: str) -> None:
    said, quiet = KITCHENS[line]
    assert quoted(tried_each(chilled, line, said)) == set(said)
    assert quoted(tried_each(chilled, line, quiet)) == set()


def test_a_brine_that_sank_is_named(chilled: Pantry) -> None:
    crock = "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%"
    assert quotes(tried(chilled, crock, "brine sank, top leaves dry"))


@pytest.mark.parametrize("line", QUIET)
def test_what_is_well_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, QUIET[line])
    assert quoted(found) == set()
    assert {note for note, one in found.items() if one.verdict is not bare.verdict} == set()


@pytest.mark.parametrize("line", SAID)
def test_what_is_not_well_is_judged_or_asked_about(chilled: Pantry, line: str) -> None:
    assert quoted(tried_each(chilled, line, SAID[line])) == set(SAID[line])


def test_honey_stays_honey_for_everybody_else(chilled: Pantry) -> None:
    found = tried(chilled, HONEY, "for the baby")
    assert found.verdict is Verdict.SOUND
    assert any("first birthday" in one for one in found.reasons)


def test_what_has_honey_in_it_is_none_for_a_baby(chilled: Pantry) -> None:
    assert quotes(tried(chilled, STEW, "sweetened with honey, for the baby"))


def test_a_torn_bag_is_used_first_and_stays_safe(chilled: Pantry) -> None:
    assert tried(chilled, BEEF, "torn bag").verdict is Verdict.EAT_SOON


def test_how_warm_food_stood_is_asked_about_by_its_record_too(chilled: Pantry) -> None:
    assert tried(chilled, f"{STEW}, temperature=60F").verdict is Verdict.UNKNOWN
    for well in ("38F", "165F"):
        assert tried(chilled, f"{STEW}, temperature={well}").verdict is Verdict.EAT_SOON
