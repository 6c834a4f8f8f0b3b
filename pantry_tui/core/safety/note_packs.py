"""What a note says against food in a shop's tin, carton or pack, against what is chilled or frozen,
and against what was cooked: a pack that swelled, leaks or is recalled, food that smells, tastes or
looks spoilt, and food that was never hot enough or warm too long.

What each means on a container: data/signs.csv, with its publications. Which words are listened for
is a choice of our own, the stricter one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.keeping.harm import is_dry
from pantry_tui.core.keeping.warm import WARM_MIN
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_look import says
from pantry_tui.core.safety.note_spoilage import OFF
from pantry_tui.core.safety.note_words import PURPOSE
from pantry_tui.core.words import Group, Method

PACKED = frozenset(
    {Method.BOUGHT, Method.FRESH, Method.FROZEN, Method.MEAL, Method.HOT_SMOKED,
     Method.COLD_SMOKED, Method.SALTED}
)  # fmt: skip
_SMOKED = frozenset({Method.HOT_SMOKED, Method.COLD_SMOKED, Method.SALTED})
_COOKED = frozenset({"cooked", "stock"})
_CROPS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB})
#: "Off" and "sour" as a word of its own, not of sour cream or half price off.
_ENDS = (
    r"(?= *$| (?:and|so|when|now|after|already|by|on opening|to me|in the|at the|round|around|"
    r"along)\b)"
)
_SWOLLEN = (
    r"\b(?:bulg\w*|swollen|swell(?:s|ed|ing)?|domed|doming|bloat\w*|balloon\w*|inflat\w*|"
    r"(?:puffed|puffs|puffing|puffy)(?! (?:rice|pastry|wheat|corn|oats))|convex|blew up|"
    r"(?<!wind )blown(?! (?:away|down|off|over|glass)))\b"
)
#: What swells in cooking, or is blown up to be kept.
_SWOLLEN_OF_ELSE = r"\b(?:soak\w*|cook\w*|rise|risen|oven|dough|air ?bed)\b"
_LEAK = r"\b(?:leak(?:s|ed|ing|y)?|seep\w*|ooz\w*)\b(?! (?:roof|tap|pipe))"
#: Whether a sealed thing gave way by itself, in its seam or by the pressure within.
_SPURT = (
    r"\b(?:hiss(?:ed|es|ing)?|spurt\w*|sprayed|squirted|gush\w*|fizz(?:ed|es|ing)?|explod\w*|"
    r"burst(?! of)|foam(?:ed|s)?(?: \w+)? (?:out|up|over|when|under)|"
    r"foam(?:ed|s|ing|y)?(?= *$)|foam (?:came|shot|ran))\b(?! (?:with|tray|box))"
)
_SPURT_OF_ELSE = r"\b(?:steam\w*|pan|pot|boil\w*|cook\w*|fry\w*|fried|oven|stove|water)\b"
#: Cold food that makes gas.
_GAS = (
    r"\bgas bubbles\b|\b(?:gassy|effervesc\w*|carbonated)\b|\bbubbles (?:rising|coming|moving)\b|"
    r"^(?:(?:it|is|was|has|still|now|already|slightly|a|bit|all|gone|went|started|tiny|small|"
    r"little|some|lots|of) )*(?:bubbling|bubbly|bubbles|fizzing|fizzy)(?: (?:now|slightly|cold|by "
    r"itself|on its own|on top|(?:in|inside|under) (?:the |its )?(?:fridge|tub|box|jar|pack|tin|"
    r"can|lid)|(?:when|as|after) (?:i |we )?open\w*|on opening))*$"
)
#: What works by itself, and is sound.
_WORKS = r"kefir|kimchi|kraut|kombucha|sour ?dough|yeast|starter|natto|tempeh|koji"
_BUTTON = (
    r"\b(?:button|lid|cap)(?: \w+)? (?:up|raised|popped|sprung|springs?|clicks?|clicked|pops)\b|"
    r"\b(?:popped|raised) (?:button|lid|cap)\b"
)
_RUST = (
    r"\brust\w* (?:right |clean |all )?through\b|\b(?:deep|heavy|heavily|bad|badly) rust\w*|"
    r"\brust\w* (?:deep|bad|heav)\w*|\bpin ?holes?\b|\brust\w*.* holes?\b|\beaten by rust\b"
)
#: What wipes off does no harm; of the rest nobody knows how deep it goes (USDA FSIS, Shelf-stable
#: food safety; from memory).
_RUSTY = r"(?<!little )(?<!bit )(?<!slightly )(?<!lightly )(?<!hardly )\brust(?:y|ed)\b"
_WIPED = r"\b(?:wip\w*|rubb\w*|brush\w*|surface|ring|shelf|lid ring|key)\b"
#: Milk and meat that went over.
_TURNED = (
    r"^(?:(?:it|is|has|have|was|milk|cream|meat|fish|soup|stew|just|all|now|already|a|bit|it's|"
    r"beginning|starting|about|began|started|to) )*turn(?:ed|ing)?(?: (?:now|already|on me|"
    r"over ?night|slightly|i think))?$|\bon the turn\b"
)
#: Plain dents do no harm; deep ones and those on a seam or a rim do.
_DENT = r"\b(?:dent\w*|crush\w*|creas\w*|dinged)\b"
_ON_SEAM = r"\b(?:seams?|rims?|deep|deeply|sharp|sharply|badly|bad)\b"
_CLEAR_OF = r"\b(?:away from|clear of|off the|nowhere near|far from)\b"
_RECALL = r"(?<!i )(?<!can )(?<!not )(?<!cannot )\b(?:recall(?:ed)?|called back)\b"
_SOUR = (
    rf"(?<!sweet and )(?<!hot and )(?<!sweet )\bsour{_ENDS}|\bsoured\b(?! cream)|"
    r"\b(?:gone|went|turned|tast\w+|smell\w*) (?:\w+ )?sour\b(?! cream)"
)
_CURDLED = r"\b(?:curdl\w*|lumpy|lumps|clotted(?! cream)|clots|clumpy)\b"
_SMELLS = (
    r"\b(?:smell(?:s|ed)?|smelt|niffs?|pongs?|whiffs?)(?: a (?:bit|little|lot|touch)| slightly| "
    r"strong(?:ly)?| now| already| very)*(?= *$| (?:when|on|after|before) )|\bsmelly\b|\bwhiffy\b"
)
_OFF = (
    r"\b(?:(?:bit|little|touch|slightly|rather|seems?|look(?:s|ed)?|is|are|was|were|definitely|"
    rf"going|gone|went) off{_ENDS}|tast(?:es?|ed|ing)(?: \w+){{0,2}} {OFF}{_ENDS})"
)
_GREEN = (
    r"\b(?:gone|went|going|turn(?:ed|ing|s)?|got|getting)(?: (?:a bit|slightly|all|partly|rather))?"
    rf" green(?:ish)?{_ENDS}|\bgreen(?:ish)? (?:tinge|edges?|patch\w*|spots?|slime|tint)\b"
)
_STICKY = (
    r"^(?:all |a bit |bit |very |quite |gone |slightly )*(?:sticky|tacky|gluey)$|"
    r"\b(?:gone|went|turned|feels?|felt|surface|it is|is|are) (?:\w+ )?(?:sticky|tacky|gluey)"
    rf"{_ENDS}"
)
#: Kept hot, as people put it.
_HELD = r"\b(?:held|kept|keep|holding|stayed|stays|sat|stood|left|sits)\b"
_HELD_OF_ELSE = r"\b(?:sous ?vide|water bath|cold water|ice|to cool|before (?:it|the|cook\w*))\b"
_COOKER = r"(?:slow cooker|crock ?pot|multi ?cooker|rice cooker|cooker|oven|hob|plug|stove|timer)"
_WENT_OFF = (
    rf"\b{_COOKER}\b(?: \w+){{0,3}} (?:off|out|unplugged|died|dead|tripped|failed|stopped|"
    r"pulled)\b|"
    rf"\b(?:unplugged|pulled the plug|switched off)\b.*\b{_COOKER}\b"
)
_OFF_WHEN_DONE = (
    r"\b(?:off|out|stopped) (?:after|when (?:done|it|the)|once|at \d|and (?:chill|cool))"
)
_UNNOTICED = r"\b(?:noticed|while|found|itself|tripped|unplugged|pulled|died|failed)\b"
_RAW_WAITED = (
    rf"\b(?:sat|stood|waited|left|was|lay|stayed) (?:\w+ )?raw\b.*\b{_COOKER}\b|"
    r"\bdelay(?:ed)? (?:start|timer)\b|\btimer (?:\w+ )?(?:began|begin|started|start|kicked)\b"
)
_ON_WARM = (
    r"\bon (?:the )?(?:keep )?warm(?: setting)? (?:from|since) (?:raw|the start|frozen|cold)\b|"
    r"\b(?:cooked|only) (?:\w+ )?on (?:the )?(?:keep )?warm\b|\braw on (?:the )?(?:keep )?warm\b"
)
_WHERE = (
    r"(?:in the (?:middle|centre|center)(?! of)|inside|(?:at|near|round|by) the "
    r"(?:bone|joint|middle|centre|center)|in (?:places|parts))"
)
_UNDER = (
    rf"\b(?:luke ?warm|raw|bloody|cold) {_WHERE}|\b(?:still|half) (?:raw|frozen {_WHERE})\b|"
    r"\b(?:bit|little|slightly|rather|partly|looks?|looked) raw\b|"
    r"\bcould have (?:done with|used|had) (?:\w+ )?(?:longer|more (?:time|cooking))\b|"
    r"\b(?:half|part|partly) (?:cooked|done)\b(?! (?:first|before|then|and (?:then|finish\w*)))|"
    r"\bneed(?:s|ed)? (?:more|longer) (?:cooking|time in the oven|in the oven)\b|"
    rf"\b{DENIED} (?:quite|nearly|fully|properly|really) (?:cooked|done)\b|"
    r"\b(?:blood|bloody) (?:at|near|by|round|inside) |\bbloody juices\b|"
    rf"^(?:still |a bit |quite |it |is |was )*(?:bloody|{DENIED} (?:yet |quite )?done)$|"
    rf"\b{DENIED} (?:quite |fully |properly |really )?(?:cooked|done|hot) "
    r"(?:through|enough|inside)|"
    r"\bunder ?(?:cooked|done)\b|"
    rf"\b{DENIED} (?:\w+ )?(?:got|get|became|reached) (?:\w+ )?hot\b"
)
_PINK = (
    rf"\bpink(?:ish)? {_WHERE}|"
    r"\b(?:still|bit|slightly|little|touch|rather|somewhat|quite|very|too) pink(?:ish)?\b(?! "
    r"(?:pepper\w*|salt|grapefruit|label|lid|sauce|onions?|rhubarb|beans?|from the (?:smoke|cure|"
    r"beet\w*)|on the outside|smoke|ring|edge))|\b(?:chicken|turkey|poultry|pork|meat|burgers?|"
    r"meatballs?|sausages?|mince|thighs?|breasts?|legs?|drumsticks?|juices?|it|they)(?: (?:is|was|"
    r"are|were|still|a|bit|looks?|looked|ran|run|came|out)){1,4} pink(?:ish)?\b(?! (?:from|with|"
    r"on))|^pink(?:ish)?$|\bjuices? (?:(?:still|ran|run|are|were|was|is|all|a|bit) )*(?:pink\w*|"
    r"red|bloody|not clear)\b|"
    rf"\bjuices? (?:did |do |does )?{DENIED} (?:\w+ )?(?:run|ran|come|came)? ?clear\b"
)
_OF_SMOKE = r"\b(?:smok\w*|ring|edges?|rim|skin|cured?|outside|nicely|lovely|beautiful\w*)\b"
#: Of these rare is not done (USDA FSIS, safe minimum internal temperatures).
_RARE = r"^(?:(?:very|quite|a|bit|still|rather|medium|cooked|served|left|kept|done|all) )*rare$"
_NEVER_RARE = r"chicken|turkey|poultry|pork|burger|ground|minced?|meatball|sausage|meatloaf|duck|"
r"goose"
_HARD_PARTS = r"\b(?:potato\w*|carrots?|onions?|rice|pasta|beans?|veg\w*|crust|pastry)\b"
_LOOK = "Look it over, and say what it shows with `sign`."
_SPOILT = "what smells or looks so is spoilt: discard."


class Found(NamedTuple):
    """What was found: the ids of the signs of data/signs.csv it may be, the first that the food has
    counts, and the sentence where it has none of them; "" says nothing then."""

    signs: tuple[str, ...]
    otherwise: str


def of_packs(
    method: Method,
    food: FoodFacts,
    tin: bool,
    clause: str,
    minutes: int | None,
    degrees: Sequence[float],
) -> Iterator[Found]:
    """What a clause says against it, kept by a method that is `PACKED`. `tin`: its pack is one;
    `minutes`: the longest time it names; `degrees`: every temperature, in °F."""
    seen = re.sub(PURPOSE, " ", clause)
    if says(_RECALL, seen):
        # US FDA and USDA FSIS, recalls: what is called back is not eaten.
        yield Found((), "what is recalled is not eaten, whatever it looks like: discard.")
    yield from _pack(method, food, tin, seen)
    yield from _look(method, food, clause, seen)
    yield from _heat(method, food, clause, minutes, degrees)
    yield from _underdone(method, food, clause)


def _perishes(food: FoodFacts) -> bool:
    """Whether a smell or a colour says that it went off. Sprouts, cut crops and what lies in oil
    smell and are green by themselves, so they are none of these."""
    return food.group in ANIMAL or bool(food.classes & (_COOKED | {"animal"}))


def _pack(method: Method, food: FoodFacts, tin: bool, seen: str) -> Iterator[Found]:
    loose = method is Method.FRESH and food.group in _CROPS and not _perishes(food)
    if (is_dry(food) and method is not Method.MEAL and not tin) or loose:
        return
    bought = method is Method.BOUGHT
    works = _perishes(food) and re.search(_WORKS, food.name) is None
    gas = rf"{_SPURT}|{_GAS}" if works or tin else _SPURT
    burst = says(gas, seen) and not re.search(_SPURT_OF_ELSE, seen)
    if burst and food.group is not Group.DRINK:
        yield Found(("spurting", "puffed-pack"), "")
    if says(_SWOLLEN, seen) and not re.search(_SWOLLEN_OF_ELSE, seen):
        if method is Method.FROZEN:
            yield Found(
                (), f"ice swells it, and so does gas from what grew before it froze. {_LOOK}"
            )
        yield Found(("swollen-lid", "puffed-pack"), "")
    if says(_LEAK, seen) and (bought or _perishes(food)) and food.group is not Group.EGG:
        yield Found(
            ("leaking-lid",), f"what leaks is not shut: air and germs get in, or it thawed. {_LOOK}"
        )
    if not bought:
        return
    if says(_RUST, seen):
        yield Found(("deep-rust",), "")
    elif tin and says(_RUSTY, seen) and not re.search(_WIPED, seen):
        yield Found((), f"rust that wipes off does no harm, and any other may go through. {_LOOK}")
    if says(_BUTTON, seen):
        yield Found(("springing-lid",), "")
    dented = says(_DENT, seen) and says(_ON_SEAM, seen) and not re.search(_CLEAR_OF, seen)
    if dented:
        # USDA FSIS, Shelf-stable food safety; from memory.
        yield Found((), "a deep dent, or one on the seam or rim, lets germs in: discard.")


def _look(method: Method, food: FoodFacts, clause: str, seen: str) -> Iterator[Found]:
    """How it smells, tastes and looks; what is said of its use is not in what was `seen`, but a
    smell that is lovely is no bad one."""
    cheesy = re.search(r"cheese|yogh?urt|kefir|butter|sour|cultured|fra[iî]che", food.name)
    if says(_OFF, seen) and (_perishes(food) or method is Method.BOUGHT):
        yield Found(("thawed-off",), _SPOILT if _perishes(food) else f"not checked. {_LOOK}")
    if not _perishes(food) or cheesy:
        return
    if method not in _SMOKED and says(_TURNED, clause) and food.group is not Group.EGG:
        yield Found(("thawed-off",), _SPOILT)
    if says(_SMELLS, clause) or says(_SOUR, seen):
        yield Found(("thawed-off",), _SPOILT)
    if food.group is Group.DAIRY:
        # The cream of coconut sets in the cold, and so does that of thickened milk.
        if says(_CURDLED, seen) and not re.search(r"coconut|condensed|evaporated", food.name):
            yield Found((), _SPOILT)
        return
    if says(_GREEN, seen):
        yield Found(("thawed-off",), _SPOILT)
    if says(_STICKY, seen):
        yield Found((), _SPOILT)


def _to_be_cooked(method: Method, food: FoodFacts) -> bool:
    cooked = method is Method.MEAL or bool(food.classes & _COOKED) or food.group is Group.MEAL
    return cooked and method not in _SMOKED


def _heat(
    method: Method,
    food: FoodFacts,
    clause: str,
    minutes: int | None,
    degrees: Sequence[float],
) -> Iterator[Found]:
    """Food that was to be cooked: USDA FSIS, Slow cookers and food safety, and its two-hour rule
    between 40 and 140 °F; from memory."""
    if not _to_be_cooked(method, food):
        return
    too_long = minutes is None or minutes > WARM_MIN
    warm = [one for one in degrees if 40 < one < 139.9]  # 60 °C is 140 °F
    if says(_HELD, clause) and warm and too_long and not re.search(_HELD_OF_ELSE, clause):
        yield Found((), "germs grow between 40 and 140 F, and two hours are the most: discard.")
    off = says(_WENT_OFF, clause) and not re.search(_OFF_WHEN_DONE, clause)
    told = minutes is not None or re.search(_UNNOTICED, clause)
    if off and told and too_long:
        yield Found((), "food in a cooker that was off for over two hours is not eaten: discard.")
    if says(_RAW_WAITED, clause) and too_long:
        yield Found((), "raw food waits in the cold, two hours at most in the warm: discard.")
    if says(_ON_WARM, clause):
        yield Found((), "the warm setting keeps food hot, and cooks none: discard.")


def _underdone(method: Method, food: FoodFacts, clause: str) -> Iterator[Found]:
    """What was to be cooked through, in the smoke, too. Cured meat and salmon are pink done."""
    smoked = method is Method.HOT_SMOKED and food.group in ANIMAL
    if not smoked and not _to_be_cooked(method, food):
        return
    if says(_UNDER, clause) and not re.search(_HARD_PARTS, clause):
        yield Found((), "what was cooked in part and put by lets germs grow: discard.")
    rare = re.search(_RARE, clause) and re.search(_NEVER_RARE, food.name)
    # Smoke and cure make meat pink; of a bird it is no ring alone where somebody calls it so.
    pink = says(_PINK, clause) is not None and (
        not smoked or ("poultry" in food.classes and not re.search(_OF_SMOKE, clause))
    )
    if pink or (rare and not smoked):
        yield Found((), "colour is no measure of heat: not checked. Only a thermometer tells.")
