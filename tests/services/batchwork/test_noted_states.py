"""Food that its note says is something else by now is judged as that, too: cooked, cut, wet,
opened, thawed, damp, eaten into, with another food in it. What is meant for it is not done to it.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act
from pantry_tui.services.stock.correct import correct
from tests.services.batchwork.noting import judged_otherwise, quoted, tried, tried_each

RICE = "2 lb rice, bought in, larder"
OATS = "2 lb oats, bought in, larder"
PASTA = "1 lb pasta, bought in, larder"
LENTILS = "2 lb lentils, bought in, larder"
DRY_BEANS = "2 lb dry beans, dried, larder"
FLOUR = "3 lb flour, bought in, larder"
WALNUTS = "1 lb walnuts, bought in, larder"
APPLES = "2 jars dried apples, larder"
POTATOES = "20 lb potatoes, cellar-stored, cellar"
BEETS = "10 lb beets, cellar-stored, cellar"
ONIONS = "10 lb onions, cellar-stored, cellar"
CABBAGES = "5 heads cabbages, cellar-stored, cellar"
FRESH_APPLES = "10 lb apples, cellar-stored, cellar"
BEEF = "2 packs ground beef, frozen, freezer"
PIE = "2 boxes beef stew, frozen, freezer"
PEAS = "3 bags peas, frozen, freezer"
MILK = "2 bottles milk, fridge"
CREAM = "1 carton cream, fridge"
STOCK = "3 pint jars chicken stock, pressure canned, larder, minutes=20, psi=11, altitude=500ft"
HONEY = "2 jars honey, larder"
OIL = "1 bottle olive oil, larder"
BUTTER = "2 packs butter, fridge"
VINEGAR = "1 bottle vinegar, bought in, larder"
CHICKEN = "1 lb chicken breasts, fresh, fridge"
EGGS = "12 eggs, fridge"

#: Not sound as the record alone would have it, and the note is quoted.
RAISED = {
    RICE: (
        "left over from dinner", "leftovers", "steeped overnight", "roof leaked on it", "musty",
        "cooked", "boiled this morning", "already cooked", "made into congee",
        "soaked overnight", "weevils", "mouse", "mice got at it", "got damp", "bag was wet",
        "some weevils in it",
    ),
    OATS: (
        "porridge", "now porridge", "cooked to porridge", "soaked in milk overnight",
    ),
    PASTA: (
        "cooked", "boiled 8 minutes, cooked", "overcooked",
    ),
    LENTILS: (
        "soaked overnight", "soaking since noon", "sprouted", "cooked with bay",
    ),
    DRY_BEANS: (
        "soaked", "cooked", "rehydrated", "pressure cooked on sunday",
    ),
    FLOUR: (
        "worms", "silverfish", "clumped", "musty", "caked", "water got in", "weevils", "moths",
        "mouse droppings", "got wet", "felt damp", "gnawed corner",
    ),
    WALNUTS: (
        "soaked", "damp", "moths", "boiled",
    ),
    APPLES: (
        "fog on the glass", "soft again", "stuck together", "still bendy and damp", "felt moist",
        "a bit soft in the middle", "rehydrated", "condensation in the jar",
        "mouldy ones picked out", "went sticky", "jar is sweating", "weevils",
    ),
    POTATOES: (
        "halves", "in pieces", "skinned", "soggy", "cut by the spade", "forked", "some peeled",
        "went in wet", "boiled", "mashed", "baked in foil", "roasted", "peeled", "diced",
        "grated", "washed", "washed and bagged", "bruised", "speared with the fork, nicked",
        "cut in half", "peeled in October", "frosted", "blanched",
    ),
    BEETS: (
        "cut in wedges", "sliced into rounds", "boiled", "roasted", "baked in foil", "grated",
        "steamed and peeled",
    ),
    ONIONS: (
        "caramelised", "peeled", "sliced", "fried", "chopped fine", "washed",
    ),
    CABBAGES: (
        "half of one used", "a quarter is gone", "half", "halved", "shredded",
        "cut into quarters", "cut", "braised with apple",
    ),
    FRESH_APPLES: (
        "sliced", "peeled and cored", "bruised", "stewed", "cut", "wormy",
    ),
    BEEF: (
        "had started to thaw", "bag was dripping", "thawing when we got home",
        "not frozen solid", "softened", "lukewarm in the bag", "room temp overnight",
        "on the counter overnight", "soft when it came home", "was warm when I found it",
        "thawed on the way", "marinated at room temperature", "half thawed", "was soft",
        "in the car for 3 hours", "defrosted", "not frozen any more when I looked",
    ),
    PIE: (
        "thawed on the way", "gone soft", "slushy", "on the worktop all day",
    ),
    PEAS: (
        "thawed on the way home", "melted", "half defrosted",
    ),
    MILK: (
        "broached last week", "started on friday", "seal off", "cap loose",
        "in use since friday", "first glass poured on monday", "opened a week ago",
        "open since monday", "opened at christmas", "already open", "half drunk",
        "was warm when I got home", "on the table all morning",
    ),
    CREAM: (
        "opened", "half used", "opened on tuesday", "carton torn",
    ),
    STOCK: (
        "opened a week ago", "open since monday", "half used",
    ),
    HONEY: (
        "knoblauch rein", "bacon bits", "avec de l'oignon", "fermented garlic honey",
        "mit Knoblauch", "à l'ail", "con ajo", "con aglio", "met knoflook", "garlic honey",
        "with egg", "mit Zwiebeln", "avec du thym",
    ),
    OIL: (
        "mit chili", "sun-dried tomatoes in it", "cloves of garlic", "mit Rosmarin", "con aglio",
        "ail", "al basilico", "met kruiden", "con funghi", "anchovies in it", "with feta in it",
        "con ajo y tomillo",
    ),
    BUTTER: (
        "with fresh garlic", "with ramps", "with herbs", "mit Kräutern", "garlic butter",
    ),
    VINEGAR: (
        "with garlic", "con ajo", "tarragon and shallots", "with egg in it",
    ),
    CHICKEN: (
        "on the counter overnight", "was warm when I found it", "not cold when it arrived",
    ),
}  # fmt: skip

#: As the record alone has it.
GOOD = {
    RICE: (
        "started a new bag", "wet harvest", "split peas mixed in", "half of it for Jo",
        "for pudding", "no bugs", "checked for worms, none", "leftover bag from 2025",
        "good cooked with onions", "not cooked", "to be cooked at Easter", "cook 20 minutes",
        "for porridge", "soak before use", "never got damp", "no weevils", "mouse proof tin",
        "lovely boiled", "keep dry", "frozen first against weevils", "best soaked", "parboiled",
        "if cooked keeps a day", "once cooked eat at once", "from the dry shelf",
    ),
    OATS: (
        "for porridge", "good porridge oats", "makes lovely porridge", "rolled",
    ),
    LENTILS: (
        "soak overnight", "need to be soaked", "not soaked", "should be cooked soft",
    ),
    DRY_BEANS: (
        "boil 10 min before eating", "soak before cooking", "picked dry", "soaked if old",
    ),
    FLOUR: (
        "no moths", "stone ground", "for bread", "dry and cool", "not damp",
    ),
    WALNUTS: (
        "roasted", "toasted", "soaked and dried", "cracked in november", "for a cake",
    ),
    APPLES: (
        "a little sticky from the sugar", "damp spring", "some with skins", "Anna cut them",
        "crisp", "not stuck together", "soft but dry", "soaked in lemon juice", "blanched",
        "soft and leathery", "pliable", "picked in the damp",
        "mouldy ones picked out before drying", "no condensation", "not moist", "for stewing",
        "good stewed", "wiped with a damp cloth", "sliced thin", "peeled and cored",
        "cut in rings",
    ),
    POTATOES: (
        "bag split", "salad", "chips well", "washed away some soil", "in two pieces of sacking",
        "was a wet summer", "cut back the tops first", "used half for the party",
        "frosty morning", "packed in straw", "dug wet, then dried", "from the wet field",
        "chitted", "soft sand", "for roasting at Easter", "peel before use", "lovely mashed",
        "never peeled", "unwashed", "opened the clamp in march", "threw out two rotten ones",
        "not washed", "good boiled", "cooked some the same night, lovely", "best roasted",
        "sliced one, white inside", "small ones for mashing", "to be peeled",
        "peeled before use", "none bruised", "no bruised ones", "brush before cooking",
        "should be baked", "dug in dry weather", "great in soup", "cut when needed",
        "boiled a few, waxy",
    ),
    BEETS: (
        "stored in damp sand", "packed in wet sawdust", "tops cut off", "for salad",
        "leaves cut off", "tops twisted off", "for borscht", "good roasted", "not boiled",
    ),
    ONIONS: (
        "for french onion soup", "good cooked with lamb", "cut from the string as needed",
        "cured in the sun", "skins dry", "better fried",
    ),
    CABBAGES: (
        "outer leaves split", "half kept for seed", "cut with a knife", "cut in october",
        "cut with long stalks", "for kraut", "outer leaves removed", "to be shredded", "uncut",
        "harvested before the frost",
    ),
    FRESH_APPLES: (
        "for stewing", "lovely stewed", "not bruised", "bruised ones eaten first",
        "wrapped in paper", "no wormy ones", "pick over monthly", "peel if waxed",
    ),
    BEEF: (
        "melted cheese inside", "thaws in a day", "bought frozen", "never frozen before",
        "warm day when bought", "warm it through slowly", "softens in the pan",
        "soft buns to go with it", "thaw overnight in the fridge", "not thawed", "froze at once",
        "never thawed", "for marinating", "brought home in a cool box", "packed flat",
        "thawed if needed", "serve warm", "soft when cooked",
        "bring to room temperature before cooking",
    ),
    PIE: (
        "softened onions first", "with melted butter", "softened leeks", "lid a bit bent",
        "put in cold", "was frozen warm from the pot", "warm through before serving",
        "not thawed", "crust goes soft", "made with thawed beef",
    ),
    PEAS: (
        "very soft when cooked", "not thawed", "picked young", "to be thawed",
    ),
    MILK: (
        "in use by date thursday", "cream on top", "half fat", "open market",
        "started delivery in may", "starts to turn by friday", "use first", "cap is blue",
        "last bottle of the year", "to be opened at christmas", "not opened", "unopened",
        "open by friday", "opened the new shop on monday", "nothing opened", "never opened",
    ),
    CREAM: (
        "for whipping", "open when needed", "to be opened last", "unopened",
    ),
    STOCK: (
        "opened the canner once it was cool", "to be opened at christmas", "open and boil",
        "opened one, lovely", "never opened",
    ),
    HONEY: (
        "from the herb garden", "set", "fresh from the hive", "started to set", "mixed flowers",
        "ohne Knoblauch", "thyme honey", "lavender honey", "sans ail", "for garlic sauce",
        "milk thistle", "met Anna at the market", "good with cheese",
    ),
    OIL: (
        "mixed olives", "al dente", "con amore", "peppery", "good with fish", "senza aglio",
        "met tom in rome", "for frying eggs", "dried chilli",
    ),
    BUTTER: (
        "fresh cream", "sweet cream", "fresh milk taste", "salted", "unsalted",
        "for garlic bread", "no herbs", "with sea salt", "from Mary",
    ),
    VINEGAR: (
        "for salad with garlic", "ohne Knoblauch", "5 percent", "no herbs",
    ),
    CHICKEN: (
        "to be cooked by friday", "from the market, in a cool box", "for the barbecue",
        "cook through", "kept cold", "not warm",
    ),
    EGGS: (
        "last of the season", "started laying", "half are brown", "for boiling", "to be boiled",
        "good poached", "brown", "never boiled",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", RAISED)
def test_what_the_note_says_it_is_counts(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, RAISED[line])
    assert quoted(found) == set(found)
    assert [note for note, one in found.items() if one.note_aside] == []
    assert judged_otherwise(chilled, line, found) == set(found)


@pytest.mark.parametrize("line", RAISED)
def test_a_note_never_makes_any_day_later(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    for note in (*RAISED[line], *GOOD.get(line, ())):
        one = tried(chilled, line, note)
        assert (one.best_by or date.min) <= (bare.best_by or date.max), note
        if one.discard_after is None and bare.discard_after is not None:
            assert one.verdict in (Verdict.UNKNOWN, Verdict.DISCARD), note
        else:
            assert (one.discard_after or date.max) <= (bare.discard_after or date.max), note


@pytest.mark.parametrize("line", GOOD)
def test_what_is_meant_for_it_says_nothing(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, GOOD[line])
    assert quoted(found) == set()
    assert judged_otherwise(chilled, line, found) == set()
    assert [note for note, one in found.items() if not one.note_aside] == []


def test_cooked_rice_has_the_day_of_cooked_rice(chilled: Pantry) -> None:
    """United Kingdom NHS: a day in the refrigerator; this figure is the one in use."""
    made = tried(chilled, "2 boxes rice, bought in, fridge", "cooked")
    cooked = tried(chilled, "2 boxes cooked rice, cooked meal, fridge")
    assert cooked.discard_after == chilled.today + timedelta(days=1)
    code = putup.put_up(
        chilled, putup.read(chilled, '2 boxes rice, bought in, fridge, note="cooked"')
    ).code
    (batch,) = (one for one in chilled.stock.batches.values() if one.code == code)
    assert chilled.judge(chilled.containers_of(batch)[0]).discard_after == cooked.discard_after
    assert made.verdict in (Verdict.UNKNOWN, Verdict.EAT_SOON)


@pytest.mark.parametrize("line", [RICE, POTATOES, CABBAGES])
def test_what_is_cooked_may_not_stand_out_of_the_cold(chilled: Pantry, line: str) -> None:
    assert tried(chilled, line, "boiled").verdict is Verdict.DISCARD
    assert tried(chilled, line, "boiled").best_by is None


def test_rice_that_is_cooked_on_the_way_to_the_refrigerator(chilled: Pantry) -> None:
    code = putup.put_up(chilled, putup.read(chilled, RICE)).code
    from pantry_tui.services.batchwork.repack import repack

    made = repack(chilled, code, "1 box, fridge, note=cooked", "1 lb")
    assert made.discard_after == chilled.today + timedelta(days=1)
    assert any("cooked rice" in one.lower() for one in made.reasons)
    assert not any("6 months" in one for one in made.reasons)


def test_a_state_goes_with_a_note_that_is_put_right_and_that_is_said(chilled: Pantry) -> None:
    code = putup.put_up(chilled, putup.read(chilled, f'{MILK}, note="opened a week ago"')).code
    (batch,) = chilled.stock.batches.values()
    first = chilled.containers_of(batch)[0]
    assert chilled.judge(first).verdict is Verdict.UNKNOWN
    assert not chilled.judge(first).usable
    assert f"`open {code}`" in chilled.judge(first).reasons[0]
    told = correct(chilled, code, note="from Anna").message
    assert "That makes it milder" in told
    now = chilled.containers_of(chilled.stock.batches[batch.id])
    assert [chilled.judge(one).usable for one in now] == [True, True]


def test_to_open_one_lifts_nothing_of_its_note(chilled: Pantry) -> None:
    code = putup.put_up(chilled, putup.read(chilled, f'{HONEY}, note="opened at christmas"')).code
    (batch,) = chilled.stock.batches.values()
    before = [chilled.judge(one) for one in chilled.containers_of(batch)]
    act.open_(chilled, code)
    after = [chilled.judge(one) for one in chilled.containers_of(chilled.stock.batches[batch.id])]
    assert [one.best_by or date.max for one in after] <= [one.best_by or date.max for one in before]
    assert after[1].verdict is before[1].verdict
