"""Plain notes as people write them, by family: what publications would throw away or doubt is
never silent, and what is well raises nothing."""

from __future__ import annotations

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from tests.services.batchwork.noting import quoted, tried, tried_each

BAD = {
    "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial": (
        "two lids have gone up in the middle", "bubbles rising along the glass",
        "brine looks milky now", "fizzed over when I opened the first one",
        "smell like old socks", "a few never went down, left them on the shelf",
        "lid gives when I press it", "weight jiggled only for the last ten minutes",
        "canner ran dry near the end",
        "dropped under 11 pounds twice and I just carried on",
        "jar weeps when I tip it", "kids both sick after supper", "foam when I took the ring off",
    ),
    "3 pint jars carrots, pressure canned, larder, minutes=25 psi=11 canner=dial": (
        "took the weight off before it had come down", "did not vent, was in a hurry",
        "filled right up to the brim", "white stuff creeping out under one lid",
        "juice running down the side and the lid is sticky",
        "were under water when the basement flooded",
        "stood outside and froze, lids pushed up",
        "jars sat in the canner all night and I took them out in the morning",
        "gone slimy", "tasted one and was ill all night",
    ),
    "3 quart jars beef chunks, pressure canned, larder, minutes=90 psi=11 canner=dial": (
        "my aunt's way, three hours in the big pot", "power went after forty minutes",
        "liquid shot out when I pricked it", "cheesy smell when opened",
        "fuzz on the meat at the top", "lid came off in my hand, no effort",
        "thickened the gravy with flour first", "meat has gone pink and stinks",
        "gauge stuck, guessed it", "cat won't touch it, smells wrong",
    ),
    "3 pint jars dill pickles, vinegar pickle, larder, minutes=15": (
        "cut the vinegar by half, too sharp",
        "used my own cider vinegar, no idea how strong",
        "brine went cloudy and the lid is up", "soft and slippery", "lid bulged on one",
        "spoonful of fluff on top",
        "didn't boil the jars, lids sucked down by themselves",
        "smells yeasty and it fizzes", "doubled the water",
        "turned upside down to seal instead of the bath",
        "pickles squidgy",
    ),
    "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%, 25 oct": (
        "slime all through", "smells like something died", "mouse got in the crock",
        "black and hairy on top", "kraut turned mushy and brown",
        "maggots round the rim", "cut the salt right down for grandad",
        "dry on top for weeks, brown and mouldy",
        "worms in it", "brine all gone", "top is pink",
    ),
    "3 half-pint jars strawberry jam, jam, larder, minutes=10": (
        "furry under the lid", "smells of wine", "fermenting, little bubbles",
        "lid domed on one of them", "wax came loose and it's weeping",
        "scraped the mould off, rest looks ok", "hot filled and flipped, no bath",
        "one exploded in the cupboard",
        "spoon stands in it all week, bits of bread in it and green now",
        "one has a green spot",
    ),
    "2 quart jars cucumbers, fridge pickle, fridge, vinegar=5%": (
        "left out on the counter since Sunday", "slimy cucumbers",
        "forgot them in the car all day", "white fur on the garlic",
        "mixed one cup vinegar to four water",
    ),
    "3 jars dried apples 1 lb, dried, larder": (
        "webs in the jar", "bendy and beaded with wet", "smell musty",
        "green dust on some", "moths about", "drops on the glass inside",
        "stuck in a clump and damp",
        "smells like a damp cellar", "spongy again",
    ),
    "5 bags ground beef 1 lb, frozen, freezer": (
        "freezer door was ajar all weekend, soft", "thawed and I put it back",
        "grey and smells sour", "bag split and it dripped in the fridge",
        "left on the worktop last night", "was in the power cut, two days off",
        "sticky and stinks",
    ),
    "40 lb potatoes, cellar-stored, cellar": (
        "soft and stinking at the bottom", "mice have been at them",
        "frost got to them", "wet rot in the corner of the sack",
    ),
    "20 lb carrots, cellar-stored, cellar": (
        "black and slimy", "rotting, half of them", "mould everywhere",
        "liquid at the bottom of the box and it stinks",
    ),
    "1 jar garlic in oil 1 cup, in oil, fridge": (
        "stood by the stove for a week", "on the shelf since Tuesday", "bubbles in it",
    ),
    "20 lb onions, cellar-stored, cellar": (
        "several have gone to mush", "black and wet inside",
    ),
}  # fmt: skip

GOOD = {
    "3 pint jars green beans, pressure canned, larder, minutes=20 psi=11 canner=dial": (
        "lost a bit of liquid while cooling", "all pinged",
        "dark stain under the lid, seal tight", "kids helped with trimming",
        "didn't salt these", "bit stringier than last year's",
        "rings off and lids wiped", "second lot of the day", "the row by the fence",
        "checked after a day, all down",
    ),
    "3 pint jars carrots, pressure canned, larder, minutes=25 psi=11 canner=dial": (
        "sealed with a loud pop", "the sixth did not seal, ate it that night",
        "gave one to Tom", "gauge tested in spring",
        "headspace measured with the little tool",
        "hard water, white bloom on the glass", "pack them looser next year",
        "some floating at the top", "cut in coins, kids like those",
        "nice and bright, do again",
    ),
    "3 quart jars beef chunks, pressure canned, larder, minutes=90 psi=11 canner=dial": (
        "from half a steer we shared with Ruth", "layer of fat on top, as always",
        "trimmed well", "browned first", "bit of juice lost, still tight",
        "for stew on busy nights", "one broke in the canner, four left",
        "lids a little scratched outside", "new gasket this year",
        "jelly round the meat when cold",
    ),
    "3 pint jars dill pickles, vinegar pickle, larder, minutes=15": (
        "garlic turned blue", "little white sediment at the bottom",
        "grape leaf in each for crunch", "hot ones, two chillies each",
        "for the barbecue in July", "cucumbers from Jo", "spears this time",
        "bit salty, less next time", "all lids down", "dill heads from the garden",
    ),
    "1 crock sauerkraut 10 lb, lactic ferment, cellar, salt=2.25%, 25 oct": (
        "bubbling nicely", "smells sour and clean", "white film on top, skimmed it",
        "weight and plate on top", "brine well over the cabbage", "caraway in it",
        "tasted it, lovely and tart", "late cabbage, very firm",
    ),
    "3 half-pint jars strawberry jam, jam, larder, minutes=10": (
        "did not set much, good on yoghurt", "foam skimmed", "low sugar pectin",
        "for Lea's birthday", "bit runny", "darker on the top than last year",
        "berries from the pick-your-own", "jar for the neighbour", "seeds sieved out",
        "butter knob for the foam",
    ),
    "2 quart jars cucumbers, fridge pickle, fridge, vinegar=5%": (
        "extra mustard seed", "crisp after a day", "half sour the way Sam likes",
        "brine boiled and cooled first", "for sandwiches",
    ),
    "3 jars dried apples 1 lb, dried, larder": (
        "leathery, no wet when squeezed", "snack for school", "cinnamon on",
        "a bit brown at the edges", "shake the jar this week",
    ),
    "5 bags ground beef 1 lb, frozen, freezer": (
        "from the butcher on the corner", "flat packs, stack well", "lean",
        "little frost inside the bag", "for chilli",
    ),
    "4 bags peas 1 lb, frozen, freezer": (
        "blanched two minutes", "sweet ones", "froze on a tray first",
        "kids shelled them", "some ice in the bag",
    ),
    "40 lb potatoes, cellar-stored, cellar": (
        "earthy, unwashed", "variety from Jane, red skin", "turn the sack now and then",
        "big ones for baking", "few eyes starting",
    ),
    "20 lb carrots, cellar-stored, cellar": (
        "in damp sand", "tops twisted off", "sweet after the frost",
        "from the raised bed",
    ),
    "1 jar garlic in oil 1 cup, in oil, fridge": (
        "for the pizza tonight",
    ),
    "1 crate apples 30 lb, cellar-stored, cellar": (
        "wrapped in paper", "the late keeper, tart", "best after Christmas",
    ),
}  # fmt: skip


@pytest.mark.parametrize("line", BAD)
def test_what_is_bad_has_a_word(chilled: Pantry, line: str) -> None:
    found = tried_each(chilled, line, BAD[line])
    assert quoted(found) == set(found)
    assert Verdict.SOUND not in {one.verdict for one in found.values()}


@pytest.mark.parametrize("line", GOOD)
def test_what_is_well_raises_nothing(chilled: Pantry, line: str) -> None:
    bare = tried(chilled, line)
    found = tried_each(chilled, line, GOOD[line])
    assert {note: one.verdict for note, one in found.items()} == dict.fromkeys(
        GOOD[line], bare.verdict
    )
    assert quoted(found) == set()
