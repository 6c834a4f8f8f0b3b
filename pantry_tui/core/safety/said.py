"""What people say of spoilt food in words of their own, and which sign of a container it means.

`SAID` is read from the top: the first words that are found are taken out of the text, then the
next. Its second part names signs by id (of a sign that stands twice, for closed and open, the
first id); of the first tier of which this container knows any, the worst counts where all of them
throw it away. Where one keeps it and another does not, nobody is taken to have meant either.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from enum import StrEnum
from functools import cache
from typing import NamedTuple

from pantry_tui.core.safety.denial import DENIED, NONE
from pantry_tui.core.safety.note_spoilage import FOUL, LIKE
from pantry_tui.core.safety.said_lids import LIDS
from pantry_tui.core.safety.signs import (
    THROWN,
    UNSURE,
    Sign,
    find_sign,
    likely_sign,
    sign_words,
    strictness,
)

_SLIME = (
    "canned-slimy pickle-soft ferment-slimy soft-brined-pickles smoked-slimy cured-slime "
    "roots-slimy vinegar-mould potato-soft-rot allium-mushy thawed-fruit-off"
)
#: Mould or a bad smell, of methods of which no publication tells the one from the other.
_SPOILED = "oil-spoiled mould-or-smell salted-spoiled"
_MOULD = (
    "canned-mould jam-mould pickle-mould ferment-mould culture-mould vinegar-mould dry-mould "
    "jerky-mould mouldy-grain syrup-mould tincture-foul soft-mould apple-rot garlic-mould "
    f"squash-cavity cured-deep-mould smoked-slimy honey-foam thawed-fruit-off {_SPOILED}"
)
#: Mould that publications let somebody cut or scrub away, of some foods.
_CUT_AWAY = "firm-mould-spot ham-mould hard-cheese-mould blue-cheese-mould sliced-mould"
_SMELL = (
    "canned-foul-smell pickle-mould ferment-putrid frothy-gassy rancid-butter-gas rancid-dry "
    "dry-winey jerky-rancid mouldy-grain thawed-off rancid-frozen smoked-slimy "
    "allium-mushy potato-soft-rot cured-slime fish-rancid egg-smell honey-foam tincture-foul "
    "fat-rancid"
)
#: A ferment smells sour.
_SOUR_SMELL = _SMELL.replace(" ferment-putrid", "")
_GAS = (
    "spurting rising-bubbles bubbles-alcohol-smell frothy-gassy jam-moving-bubbles vinegar-mould "
    "oil-bubbles working-bubbles cold-fizz honey-foam thawed-fruit-off"
)
_ROT = "apple-rot potato-soft-rot roots-slimy allium-mushy squash-cavity sweet-potato-rot"
_GLASS = "cracked-jar freezer-jar-cracked egg-cracked lime-eggs"
#: It came apart by the gas within, or somebody fell ill: the worst that its kind may show.
_BURST = "spurting swollen-lid puffed-pack canned-foul-smell"
_OFF = (
    r"(?:off|bad|foul|funny|weird|odd|strange|wrong|awful|horrible|nasty|rott(?:en|ing)|putrid|"
    r"rancid|musty|mou?ldy|stale|unpleasant|unusual|sharp|skunky|rank|"
    rf"like butter|of rot|(?!of (?:\w+ )?rot){LIKE}{FOUL})"  # what rotted has a row of its own
)
_BOOZY = r"(?:yeasty|winey|boozy|beery|alcoholic|(?:like|of) (?:alcohol|wine|beer|yeast|cider))"
_SOUR = r"(?:sour|fermented|vinegary|(?:like|of) vinegar)"
_ON_TOP = r"(?:on|at) (?:the )?(?:top|surface)"
_SPOT = r"(?:spots?|specks?|dots?|flecks?|patch(?:es)?|powder|dust)"

_SPOTTED = (
    "sweet-potato-rot fish-dun egg-colour garlic-mould potato-green potato-old ham-specks "
    "cured-deep-mould"
)
_COLOURED = (
    "unnatural-colour thawed-off egg-colour potato-green potato-old metal-pickles dark-pickles "
    "mouldy-grain dark-kraut"
)
_MOULDY_SPOTS = (f"{_MOULD} {_CUT_AWAY} soft-cheese-mould", "spoiled", UNSURE)

#: Words, and the signs they may mean, tier by tier.
SAID: tuple[tuple[str, tuple[str, ...]], ...] = (
    *LIDS,
    (r"explo(?:d\w*|sion)|burst\w*|bl[eo]w(?:n|s|ing)? (?:up|apart|open|out|its (?:lid|top))",
     (_BURST, _GAS, "spoiled", UNSURE)),
    (r"poison\w*|botuli\w*|toxi\w*|(?:made|make|makes|got|fell|felt|feel|was|were) "
     r"(?:(?:me|us|him|her|them|\w+ of us|everyone|somebody|someone|very) )?(?:ill|sick)|"
     r"sick\w*|ill(?:ness)?|vomit\w*|threw up",
     (_BURST, _SMELL, "spoiled", UNSURE)),
    (r"(?:lids? |it )?(?:popped|pops?|popping)(?: up)?(?: lids?)?|(?:lid )?(?:bulg\w*|swollen|"
     r"swell\w*|domed?|doming|bloat\w*|puff\w*|blown(?: up)?|convex)|(?:lid (?:is )?up|raised lid|"
     r"lid (?:is )?raised)",
     ("swollen-lid puffed-pack oil-bubbles swollen-frozen tight-sweet-drink working-bubbles",
      "spoiled", UNSURE)),
    (r"(?:lid )?(?:flex\w*|click\w*|pings?|pinging|springs?|springy|gives)(?: lid)?|"
     r"lid moves", ("springing-lid",)),
    (r"no vacuum|(?:lost|no longer) (?:its |the )?vacuum|vacuum (?:is )?(?:lost|gone)|"
     r"(?:torn|ripped|holed?)(?: in)?(?: the)? (?:bag|pack)|(?:bag|pack) (?:is )?(?:torn|ripped)",
     ("loose-lid", "torn-bag vacuum-lost")),
    (r"dried (?:drips?|streaks?|runs?)|streak\w*|crust\w* (?:on the )?rim|sticky rim|"
     r"dried food on (?:the )?rim", ("dried-streaks",)),
    (r"leak\w*|seep\w*|ooz\w*|dribbl\w*|drip(?:s|ped|ping)?|wet under (?:the )?lid|"
     r"weeping lid|lid (?:is )?weeping", ("leaking-lid squash-cavity", "spoiled", UNSURE)),
    (r"weep\w*", ("leaking-lid weeping-jelly wax-lid allium-mushy",)),
    (r"rust\w* (?:right )?(?:through|inside|in|under|into|at|on) (?:the )?(?:rim|lid rim|seal|lid "
     r"inside|inside)|rust\w* through|rust\w* inside(?: the)?(?: lid)?|(?:deep|eaten) rust\w*",
     ("deep-rust",)),
    (r"rust\w*", ("surface-rust deep-rust",)),
    (r"freezer ?burn\w*|frost\w*|ice crystals?|(?:white|gr[ae]y|dry|leathery) patch(?:es)?|"
     r"dried out", ("freezer-burn loose-frost",)),
    (r"kahm(?: yeast)?", ("kahm",)),
    (rf"(?:pink|red|orange) (?:(?:yeast|film|scum|slime|growth|mou?ld|fuzz)|{_ON_TOP})|slimy pink",
     (f"{_MOULD} {_SLIME}", "spoiled", UNSURE)),
    (r"(?:black|red|green|long|blue) (?:fuzzy |furry )?(?:mou?ld|fuzz|rot)|fuzzy black mou?ld|"
     rf"(?:black\w*|green|blue) {_ON_TOP}|(?:top|surface) (?:is )?black\w*",
     (f"{_MOULD} sliced-mould roots-slimy soft-cheese-mould brie-mould", "spoiled", UNSURE)),
    (r"white (?:film|scum|layer|yeast)|film|scum",
     ("kahm kraut-scum ferment-mould", f"{_MOULD} sliced-mould soft-cheese-mould", "spoiled",
      UNSURE)),
    (r"yellow (?:spots?|specks?|grains?|crystals?)", ("asparagus-crystals",)),
    (r"glass\w* crystals?", ("fish-crystals",)),
    (r"(?:pink|blue) tint", ("pink-blue-fruit",)),
    (rf"(?:black|dark) {_SPOT}",
     ("canned-mould", f"{_SPOTTED} onion-black-powder", *_MOULDY_SPOTS)),
    (rf"(?:green|blue|white|gr[ae]y|red|pink|brown|fawn|yellow) {_SPOT}",
     ("canned-mould", _SPOTTED, *_MOULDY_SPOTS)),
    (r"(?:white )?(?:mou?ld\w*|fuzz\w*|furry|fur|fluff|hairy|cotton\w*)",
     (f"{_MOULD} {_CUT_AWAY} soft-cheese-mould brie-mould onion-black-powder", "spoiled", UNSURE)),
    (rf"(?:smell\w*|odou?rs?|scent) {_OFF}|{_OFF} (?:smell\w*|odou?rs?|scent)|stinks?|stinky|stank|"
     r"stinking|reeks?|putrid|foul|rancid|musty|(?:ammonia|skunky) smell|ammonia",
     (f"{_SMELL} {_SPOILED}", "spoiled", UNSURE)),
    (rf"(?:smell\w*|odou?rs?) {_BOOZY}|{_BOOZY} (?:smell\w*|odou?rs?)|yeasty|winey|flat sour",
     (f"{_SOUR_SMELL} bubbles-alcohol-smell", "spoiled")),
    (rf"(?:smell\w*|odou?rs?) {_SOUR}|{_SOUR} (?:smell\w*|odou?rs?)",
     (f"{_SOUR_SMELL} bubbles-alcohol-smell soft-kraut", "spoiled")),
    (r"bubbling|bubbly|bubbles? (?:rising|moving)|moving bubbles?|fizz\w*|hiss\w*|gas\w*|foam\w*|"
     r"froth\w*|spurt\w*|spray\w*(?: out)?|gush\w*|ferment(?:ed|ing)",
     (_GAS, "dry-winey", "spoiled", UNSURE)),
    (r"bubbles?", (f"{_GAS} jam-still-bubbles", "spoiled", UNSURE)),
    (r"mother|(?:jelly|slimy) disc|jelly|disc|strands", ("mother",)),
    (r"slim\w*|rop[ey]y?|stringy|slipper\w*|gooey", (_SLIME, "spoiled", UNSURE)),
    (r"sticky(?: glass)?|stick\w* together|stuck(?: together)?|clump\w*|lump\w*|caked",
     ("sticky-jar dried-streaks dry-sticking powder-lump smoked-slimy cured-slime jerky-fat",
      "thawed-off", "spoiled")),
    (r"soft (?:and )?bend\w*|limp|bendy|rubbery|wilt\w*",
     ("roots-limp apple-wrinkled cabbage-leaves",)),
    (r"(?:small )?(?:soft|sunken|bruised) spots?", ("squash-soft-spot apple-rot roots-slimy",)),
    (r"soft rot|brown rot", (_ROT, "spoiled")),
    (r"soft\w*|mush\w*|squish\w*|squash(?:ed|y)|collaps\w*|not crisp",
     ("canned-slimy murky-soft pickle-soft soft-brined-pickles ferment-slimy soft-kraut "
      "roots-slimy potato-soft-rot allium-mushy apple-rot squash-soft-spot squash-cavity "
      "dry-softened", "soft-mould")),
    (r"moist", ("absorber-moist", "dry-fog potato-soft-rot squash-cavity")),
    (r"wet|damp|sweat\w*|condens\w*|fog\w*|drops|droplets|soggy",
     ("dry-fog dry-softened potato-soft-rot squash-cavity",)),
    (r"cloudy(?: (?:brine|liquid|water|oil|jelly))?|cloudiness|murky(?: liquid)?|turbid|"
     r"milky(?: (?:brine|liquid))?",
     ("murky-soft", "cloudy-ferment-brine", "pickle-cloudy", "cloudy-jelly-sealed "
      "cloudy-jelly-unsealed", "oil-cloudy", "tincture-milky", "unnatural-colour", "lime-eggs")),
    (rf"(?:dark|brown)\w* {_ON_TOP}|(?:top|surface) (?:is )?(?:dark|brown)\w*",
     ("dark-top jam-faded", "dark-kraut")),
    (r"(?:black|dark) (?:under|inside) (?:the )?lid|(?:dark|black) lid",
     (f"{_MOULD} dark-lid-deposit",)),
    (r"(?:turned|gone|went) (?:gr[ae]y|black|green)", (_COLOURED, "spoiled")),
    (rf"discolou?r\w*|{_OFF} colou?r\w*|(?:turned|gone|went) brown",
     (f"{_COLOURED} jam-faded", "spoiled")),
    (r"dark\w*|brown\w*",
     ("unnatural-colour dark-top dark-kraut jam-faded metal-pickles dark-pickles apple-rot",)),
    (r"faded|no smell|scentless", ("faded-herbs jam-faded",)),
    (r"(?:turned )?blue",
     ("pink-blue-fruit unnatural-colour", "blue-garlic ferment-mould pickle-mould")),
    (r"pink (?:kraut|brine)|(?:turned )?(?:pink|red)",
     ("pink-blue-fruit unnatural-colour pink-kraut pickle-pink-brine egg-colour fish-pink "
      "soft-cheese-mould", )),
    (r"(?:turned )?yellow(?: leaves)?",
     ("yellowed-white-vegetable unnatural-colour cabbage-leaves fish-rancid", "spoiled")),
    (r"worms?|worm holes|wormy|maggots?|larvae?|grubs?|caterpillars?|web\w*|moths?|infest\w*|holes|"
     r"(?:flour |grain )mites?", ("infested", UNSURE)),
    (r"(?:a few )?(?:bugs?|insects?|beetles?|ants?|flies|weevils?|mites?|wireworms?)",
     ("infested few-insects", UNSURE)),
    (r"mice|mouse|rats?|rodents?|gnaw\w*|nibbl\w*|chew\w*|droppings|tooth marks",
     ("rodents gnawed-pack",)),
    (r"(?:cracked|chipped|broken|smashed) (?:glass|jar|shell|rim)|crack\w*|chip(?:s|ped)|dent\w*|"
     r"splinter\w*|smashed", (_GLASS,)),
    (r"broken|glass", (f"{_GLASS} fish-crystals",)),
    (r"dirty", ("egg-cracked",)),
    (r"flood\w*(?: water)?", ("flood-water",)),
    (r"(?:low liquid|liquid (?:is )?low|siphon\w*|liquid loss|lost liquid)",
     ("low-liquid half-liquid-lost",)),
    (r"(?:low brine|brine (?:is )?low|above (?:the )?brine|dry on top|poking out|not covered)",
     ("low-brine",)),
    (r"long sprouts|heavily sprouted|very green", ("potato-old",)),
    (r"sprout\w*|(?:eyes )?growing|green (?:shoots?|sprouts?)",
     ("potato-sprouts potato-old onion-sprouted garlic-sprouted",)),
    (r"green(?: (?:skin|potatoe?s?))?",
     ("potato-green potato-old", "egg-colour", "puffed-pack", "spoiled")),
    (r"shrivel\w*|wrinkl\w*",
     ("potato-old apple-wrinkled roots-limp shrivelled-pickles sweet-potato-rot",)),
    (r"(?:tastes? )?bitter", ("potato-bitter sweet-potato-rot squash-bitter rancid-dry",)),
    (r"float\w*(?: fruit)?", ("egg-floats floating-fruit lime-eggs",)),
    (r"hollow", ("hollow-pickles",)),
    (r"(?:white )?sediment", ("tincture-sediment", "syrup-sand", "pickle-sediment")),
    (r"solid|grainy|set hard|hardened", ("honey-solid jam-sugar-grains syrup-crystals",)),
    (r"crystalli[sz]ed|crystals?",
     ("honey-solid jam-sugar-grains fish-crystals syrup-crystals cheese-crystals "
      "asparagus-crystals spinach-crystals",)),
    (r"refrozen|refroze", ("refrozen-slab", UNSURE)),
    (r"thawed and warm|warm and thawed|thawed warm",
     ("thawed-warm thawed-warm-dairy thawed-warm-vegetable thawed-fruit-off", UNSURE)),
    (r"left (?:out|unchilled)\w*(?: (?:of the fridge|overnight))?|not refrigerated|unchilled|"
     r"out of the fridge",
     ("oil-unchilled smoked-unchilled warm-pickled-eggs sliced-ham-warm", UNSURE)),
    (r"curdled|sour|clumpy|lumpy", ("smoked-slimy", "spoiled")),
    (r"looks? (?:wrong|bad|odd|strange|off|funny|weird)|(?:not|un) ?sure|doubt\w*|"
     r"something (?:is )?(?:off|wrong)|tastes? (?:off|bad|sour|funny|odd|wrong|strange|weird)",
     (UNSURE,)),
    (r"(?:gone|went|going) (?:off|bad)|spoil(?:ed|t|ing)|rott?(?:en|ing|s|ted)?|rotten outer "
     r"leaves|decay\w*",
     (f"{_ROT} ferment-putrid", "spoiled", UNSURE)),
    (r"smelly|(?:smell(?:s|ed)?|smelt)(?= *$| +(?:and|so|when|on)\b)|"
     r"^ *(?:(?:it|they|is|are|was|were|all|a|bit|very|"
     r"quite|too|just|looked|seemed) )*(?:off|bad) *$",
     (f"{_SMELL} {_SPOILED}", "spoiled", UNSURE)),
)  # fmt: skip

#: What may stand beside, and leaves a harmless sign what it is.
_BESIDE = frozenset(
    {"a", "an", "the", "and", "or", "of", "in", "on", "its", "it", "is", "are", "was", "there",
     "has", "have", "had", "got", "with", "my", "this", "that", "some", "bit", "little", "lot",
     "much", "very", "looks", "look", "seems", "now", "top", "inside", "outside", "surface",
     "jar", "jars", "lid", "food", "brine", "liquid", "water", "growing", "all", "around"}
)  # fmt: skip
#: Words around a sign in a reason for throwing something away.
_AROUND = frozenset(
    {"a", "an", "and", "had", "has", "in", "is", "it", "its", "jar", "of", "on", "the", "was"}
)
_DENIED = re.compile(rf"\b(?:{DENIED}|{NONE})\b")


class Kept(StrEnum):
    """What a mention comes to."""

    THROWN = "thrown"
    KEPT = "kept"
    EITHER = "either"


class _Mention(NamedTuple):
    outcome: Kept
    sign: Sign


@cache
def _patterns() -> tuple[re.Pattern[str], ...]:
    return tuple(re.compile(rf"\b(?:{words})\b") for words, _ in SAID)


def meant(signs: Iterable[Sign], text: str, food: str = "", working: bool = False) -> Sign | None:
    """The sign that a person's words mean, None where they may mean one that throws the food away
    and one that keeps it, or say nothing that is known. `working`: it is still fermenting.

    Of several things said the worst counts. A sign that keeps the food needs all words understood
    but for those of the food's own name; what is denied ("not slimy") means nothing."""
    known = tuple(one for one in signs if not working or one.id != "cold-fizz")
    exact = find_sign(known, text)
    likely = exact or likely_sign(known, text)
    if likely is not None and (exact or likely.verdict not in THROWN):
        return likely
    own = _by_words(known, text, food)
    return min((one for one in (likely, own) if one), key=strictness, default=None)


def _by_words(known: Sequence[Sign], text: str, food: str) -> Sign | None:
    rest = " ".join(re.findall(r"[^\W_]+(?:['’][^\W_]+)?", text.casefold()))
    found: list[_Mention] = []
    for pattern, (_, tiers) in zip(_patterns(), SAID, strict=True):
        if pattern.search(rest) and (mention := _mention(known, tiers)) is not None:
            found.append(mention)
            rest = pattern.sub(" ", rest)
    if not found or _DENIED.search(rest):
        return None
    return _worst(found, set(rest.split()) - _BESIDE - _own(food))


def without_popped(text: str) -> str:
    """("the lid popped up, foul smell") What is said beside that a lid came up."""
    return re.sub(r"\b(?:lids? )?pop(?:s|ped|ping)?(?: up)?\b", " ", text.casefold())


def worst_named(known: Sequence[Sign], words: str) -> Sign | None:
    """The first, which is the worst, that has all the words and more."""
    wanted = sign_words(words) - _AROUND
    return next((one for one in known if wanted and wanted <= sign_words(one.words)), None)


def _own(food: str) -> set[str]:
    words = set(re.findall(r"[^\W_]+", food.casefold()))
    return words | {word.removesuffix("s").removesuffix("e") for word in words} | {
        "kraut", "pickles", "veg",
    }  # fmt: skip


def _mention(known: Sequence[Sign], tiers: Sequence[str]) -> _Mention | None:
    for tier in tiers:
        ids = set(tier.split())
        here = [one for one in known if one.id.removesuffix("-open") in ids]
        if not here:
            continue
        thrown = {one.verdict in THROWN for one in here}
        outcome = Kept.EITHER if len(thrown) > 1 else Kept.THROWN if True in thrown else Kept.KEPT
        return _Mention(outcome, min(here, key=strictness))
    return None


def _worst(found: Sequence[_Mention], unread: set[str]) -> Sign | None:
    """The worst of what surely throws it away; else nothing where any may, or words are left."""
    thrown = [one.sign for one in found if one.outcome is Kept.THROWN]
    if thrown:
        return min(thrown, key=strictness)
    if unread or any(one.outcome is Kept.EITHER for one in found):
        return None
    return min((one.sign for one in found), key=strictness)
