"""What people say plainly of jars that were canned, with no word of the trade in it: "took them out
as soon as it boiled", "pops when lifted", "gone to vinegar". For notes in small letters, numbers
in figures, one clause at a time. Which words are listened for is a choice of our own, the stricter
one; what each comes to is judged where the record is (notes.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_words import PURPOSE, SPOILT
from pantry_tui.core.words import Acidity, Group, Method

_THEM = r"(?:them|it|jars?|the jars?|they|all|batch|the batch|everything)"
#: Out as the water boils, counted before the pressure stood, water that was filled up, a weight
#: that hardly moved, a canner forced cold, less time for small jars, processed again too late
#: (within 24 hours: NCHFP, Reprocessing unsealed jars), and what is no canner at all.
_PROCESS = (
    rf"\b(?:took|taken|pulled|lifted|fished|removed) {_THEM}(?: \w+)? (?:as soon as|when|once|the "
    r"moment|right after|just after|just as) (?:it|the water|water|they|the pot)(?: \w+){0,2} "
    r"boil\w*|"
    r"\b(?:start\w*|began|begun|set)(?: \w+){0,2} (?:count\w*|timing|timer|clock)(?: \w+)? "
    r"(?:before|"
    r"while)(?: \w+){0,5} (?:pressure|boil\w*|steam|temperature|heat|hot|warming|heating)\b|"
    r"\b(?:top(?:ped)? up|add(?:ed)?|pour(?:ed)?|refill(?:ed)?)(?: (?!boiling|hot)\w+){0,2} "
    r"(?:the )?water(?: \w+){0,2} (?:in the middle|midway|half ?way|part ?way|during|in between|"
    r"0\.5 way)\b|"
    r"\b(?:weight|rocker|jiggler|regulator)s? (?:only )?(?:rattl|rock|jiggl|mov|danc|sang|hiss)\w* "
    r"(?:only |just )?(?:now and (?:then|again)|once in a while|sometimes|a few times|"
    r"occasionally|rarely|hardly|barely|from time to time)\b|"
    r"\b(?:weight|rocker|jiggler|regulator) (?:hardly|barely|rarely|seldom|scarcely) \w+ed\b|"
    r"\b(?:lowered|brought down|dropped)(?: \w+){0,3} (?:under|with|in)(?: \w+){0,2} "
    r"(?:(?:running|tap) water|cold (?:\w+ )?water|cold tap|the tap|a hose|wet towels?)\b|"
    r"^(?:(?:a bit|bit|much|rather|did it|done|cooked|processed) )*(?:shorter|less long|less "
    r"time)$|"
    r"\b(?:shorter|less time|less long|fewer minutes|cut the time)\b(?:.*\b(?:small\w*|thin|tiny|"
    r"young|soft|tender|half|few)\b)|"
    r"\b(?:re ?process\w*|re ?cann\w*|canned again|processed again|did (?:them|it) again) "
    r"(?:\w+ )?(?:after )?(?:an?|[1-9]\d*|some|several|many|a few|few) (?:days|weeks?|months?)\b|"
    r"\b(?:home ?made|home ?built|self ?built|diy|improvised|makeshift) (?:\w+ )?(?:canner|cooker|"
    r"autoclave|steri\w+)\b|\bcanner (?:made |built )?(?:from|out of) (?:a |an |an old )?(?:keg|"
    r"drum|"
    r"barrel|bucket|pot|boiler|tank)\b|"
    r"\b(?:sealed|sterili[sz]ed|processed|canned|heated|cooked) (?:by|in|with|under) (?:the )?"
    r"(?:sun|sunshine|sunlight|solar \w+)\b(?! (?:room|porch|dried))|"
    # Filled too full.
    r"\bno (?:room|space|gap)(?: left| at all)? (?:at|on|in|under) (?:the )?(?:top|lids?|neck)\b|"
    # Filled hot and shut, and no more.
    r"^(?:just|only|simply) (?:(?:put|poured|filled|ladled|the|some) )*(?:boiling|hot) "
    r"(?:\w+ ){1,2}(?:in|into) (?:\w+ )?jars\b|"
    # Filled up once more when it was over.
    r"\b(?:topp?ed|filled) up\b.*\bafter(?:wards)? (?:the )?(?:bath|process\w*|canning|opening|"
    r"(?:they|it) "
    r"came out)\b|\bafter (?:the )?(?:bath|process\w*|canning|opening)\b.*\b(?:topp?ed|filled) "
    r"up\b|"
    r"\b(?:topp?ed|filled) up from another jar\b|\btopped up after$|\brefilled the (?:low|short) "
    r"\w+|"
    # Forced cold.
    r"\bpulled (?:off )?the (?:weight|regulator|jiggler)\b|\b(?:weight|regulator|jiggler) (?:was )?"
    r"(?:pulled|taken|lifted|knocked) off (?:while )?(?:hot|early|at \d+ ?(?:lb|psi|pounds?))|"
    r"\b(?:took|lifted) the "
    r"(?:weight|regulator|jiggler) off (?:at \d+ ?(?:lb|psi|pounds?)|early|hot|while)|\b(?:let|"
    r"bled|released) "
    r"(?:the )?"
    r"(?:pressure|steam)(?: \w+)? (?:fast|quick\w*|by hand)\b|"
    # A gauge that reads wrong.
    r"\bmanometer broken\b"
)
#: A vacuum holds a lid: one that goes up, or down late, or by its ring alone, holds none.
_SEAL = (
    r"\blids? (?:\w+ )?(?:went|popped|sucked|came|pulled|pinged) (?:down|in)? ?(?:only |just )?"
    r"(?:after|on|the) (?:(?:a|the|[2-9]|some|several|few|second|third) )+(?:days?|week)\b|"
    r"\b(?:pop|click|flex|spring|give|gave)(?:s|ped|ed)?(?: \w+)? (?:when|if|as)(?: \w+){0,2} "
    r"(?:lifted|pressed|pushed|touched|picked up|moved|tapped)\b|"
    r"\b(?:tops?|lids?|centres?|centers?|middles?)(?: of (?:the |1 |a |some |2 )*(?:jars?|lids?))? "
    r"(?:is|are|was|were|looks?|has|have)(?: \w+)? (?:raised|domed|convex|risen|rounded|"
    r"swollen|bowed|curved)\b(?! to)|"
    r"\b(?:lids?|tops?) (?:are |is |was |were )?(?:(?:only|just) (?:held|kept|stay(?:s|ed)?|hold)"
    r"(?: on| down)?|(?:held|kept|stay(?:s|ed)?|hold)(?: on| down)? (?:only|just|solely)) "
    r"(?:by|with|because of) (?:the |a |their |its )?(?:rings?|bands?|clips?|tape|"
    r"rubber bands?)\b|"
    r"\bonly the (?:ring|band)s? (?:holds?|keeps?|held)\b|"
    r"^(?:(?:1|2|3|some|all|both|several|the|a|few|of|with|and|has|have|had|their|its|now|found) )*"
    r"(?:lids?|centres?|centers?|middles?) (?:(?:is|are|was|were|all|now|bit|a|slightly|gone|went|"
    r"came|come|again|straight|well|right) )*up(?: (?:now|again|after(?: it)?|a bit|since))*$|"
    r"\bno (?:suction|vacuum)\b(?! (?:seal\w*|pump|bags?|pack\w*|machine))"
)
_SPOILT = (
    r"\b(?:crud|gunk|gunge|muck|scum|slime|fuzz|growth)\b(?: \w+){0,2} "
    r"(?:under|inside|below|on) (?:the |a |1 |its |of )*(?:lids?|tops?)\b|"
    r"\b(?:turn(?:ed|ing|s)?|gone|went|going)(?: \w+)? (?:in)?to (?:a )?(?:cider|wine|vinegar|"
    r"alcohol|beer|booze)\b|\b(?:cidery|boozy|winey|yeasty)\b"
)
#: Of what no acid was put to.
_SOUR = (
    r"\b(?:vinegary|sour|acid|acidic) (?:smell|whiff|odou?r|nose|reek)\b|"
    r"\bsmell\w*(?: \w+)? (?:vinegary|sour|of vinegar|like vinegar)\b"
)
#: Of jam and fruit.
_WORKING = r"\bferment(?:ed|ing|s)\b(?!.*\b(?:before|then|first)\b)"
#: On a pickle.
_ABOVE = (
    r"\b(?:brine|vinegar|liquid)(?: \w+){0,2} cover\w*(?: \w+)? (?:only |just )?(?:(?:about |3 )*"
    r"(?:three )?quarters?|0\.75|half|0\.5|two thirds|2 thirds|most|part)\b|"
    r"\b(?:skin|film|scum|layer of white|bloom|growth) (?:on|over|across|atop) (?:top of )?"
    r"(?:the |its )?(?:brine|liquid|vinegar|surface|pickles?)\b"
)
_ACID = (
    r"\b(?:jars?|1|2|3|some|few|half)(?: of them)? (?:has|have|had|got|went) (?:none|no "
    r"(?:lemon|acid|citric|vinegar)|without (?:lemon|acid|vinegar))\b|"
    r"\b(?:lemon|acid|citric acid|vinegar)(?: juice)? (?:was|were|is|came)(?: as)? (?:an? )?"
    r"(?:after ?thought|too late|forgotten)\b|"
    r"\b(?:forgot|forgotten|left out|skipped|missed|omitted|no|without|ran out of)(?: \w+)? "
    r"(?:sour|acid|tart) (?:stuff|thing|bit|part|powder|ingredient|agent)\b"
)
#: Where water boils cooler.
_KM = r"(0\.[4-9]|[1-4](?:\.\d+)?) ?(?:km|kilomet\w+)\b"
_HIGH_KM = (
    r"\b(?:kitchen|house|home|cabin|hut|farm|place|village|town|we|chalet|cottage)(?: \w+)? (?:is|"
    r"are|was|were|lies|sits|live)(?: up)?(?: at)? (?:about |around |over |nearly )?"
    rf"{_KM}(?! (?:away|from|off|down|to|along|of|walk|north|south|east|west))|"
    rf"\b{_KM} (?:up(?! the road)|high|above|of altitude)\b"
)
_HIGH_PLACE = (
    r"\b(?:cann|made|mak|done|put|process|bottl|jarr|cook)\w*(?: up| there| it| them)* (?:while )?"
    r"(?:in|up in|at) (?:the )?(?:\w+ )?(?:alps|andes|rockies|himalayas?|pyrenees|sierras?|"
    r"dolomites|carpathians|highlands|mountains?|denver|quito|bogot[aá]|la paz|mexico city|"
    r"addis ababa|nairobi|santa fe|cusco|kathmandu|johannesburg)\b|"
    r"\b(?:cann|made|done|put|process)\w*(?: up)? (?:in|at) (?:a |the |our )?(?:ski|mountain|"
    r"alpine) "
    r"(?:hut|lodge|chalet|cabin|village|resort)\b"
)
#: So high a household is that names such a place as its own, in feet.
_UP_THERE_FT = 3000
_FT_A_KM = 3280.84
_BY_OTHERS = (
    r"\b(?:bought|got|picked up|traded|swapped)(?: \w+){0,3} (?:at|from|in) (?:a |the |our )?"
    r"(?:\w+ )?(?:(?:church|village|school|country|county|craft|charity) (?:\w+ )?(?:fairs?|fetes?|"
    r"sale|bazaar|supper)|fair|fete|bazaar|bake sale|jumble sale|car boot(?: sale)?|yard sale|"
    r"flea market|raffle|tombola)\b|"
    r"^(?:(?:was|it|they|a|an|is|nice|all) )*(?:gift|present|swap|swapped|given(?: to (?:me|us))?)"
    r"(?: \w+)? (?:from|by|with) (?:a |an |the |our |my |her |his )?(?:neighbou?rs?|friends?|"
    r"aunt\w*|"
    r"uncle|colleague|co ?worker|grandm\w+|granny|mother in law|someone|somebody|stranger|cousin)\b"
    r"(?!'s)(?! (?:garden|tree|orchard|plot|allotment|field|land|farm))|"
    r"\b(?:no idea|no clue|nobody knows|not know|unknown) (?:of )?(?:how|who|what way) "
    r"(?:it|they|she|he|was|were|made|canned|processed)\b"
)
#: What was given or bought before it went into jars here.
_THE_CROP = (
    r"\b(?:beans?|tomatoes|cucumbers?|apples|plums|fruit|berries|strawberries|crop|seeds?|"
    r"seedlings|"
    r"recipe|canner|ribbon|prize|award|entered|judge\w*|jars|lids|rings|vegetables|veg|surplus|"
    r"glut|plants?|cabbages?|beets|peppers|"
    r"corn|peas|carrots|potatoes|peaches|pears|produce|basket|crate|bushel|sack|box)\b"
)
#: Another job of the same day.
_OTHER_JOB = (
    r"\b(?:did|canned|made|put up|froze|picked|bought|planted|grew|harvested|ate|served|sold|"
    r"cooked|dried)\b"
)
#: Low in acid, and in plain words in the jar.
_LOW = (
    r"(?:(?:chopped|sliced|fresh|whole|raw|roast(?:ed)?|grilled|black|green|small|little|big|"
    r"more|odd|"
    r"basil|bit|of|chunks?|pieces?|chunk|slices?|cubes?) )*"
    r"(?:pesto|egg ?plants?|aubergines?|mushrooms?|anchov(?:y|ies)|olives?|courgettes?|zucchini|"
    r"squash|pumpkin|carrots?|celery|corn|peas|beans|leeks?|potato(?:es)?|spinach|kale|okra|"
    r"asparagus|artichokes?|beets?|beetroot|sweetcorn|marrow|chickpeas|lentils|tofu|bacon|ham|"
    r"sausages?|chorizo|tuna|cheese|parmesan|garlic oil)"
    r"(?! (?:tomato\w*|patch|bed|harvest|next|tomorrow|day|seeds?|salt|pot|pan|board|jars? (?:next|"
    r"beside)|knife|powder|flakes?))"
)
_ADDED = (
    rf"\b{_LOW}(?: \w+)? (?:too|as well|also|in|inside|in (?:each|every|it|them|there|all|both|"
    r"some|1)"
    rf"(?: jars?| of them)?|thrown in|tossed in|went in|on top|at the bottom)$|"
    rf"\b(?:the odd|an odd|the occasional|a stray) {_LOW}\b|"
    r"\b(?:an?|1|2|some|few|a few|handful|spoon(?:ful)?s?|dollops?|bits?|teaspoons?|"
    r"tablespoons?|tsp|"
    rf"tbsp)(?: of)?(?: the| a)? {_LOW}(?: \w+)? (?:in|into|per|to)(?: (?:the |each |every |it|"
    r"them|all|"
    r"jars?|some|1|both)\b.*)?$|"
    rf"\b{_LOW} (?:per|a) jar\b"
)


def high_up(method: Method, own_ft: int | None, clause: str) -> bool:
    """Whether it was canned higher up than the record, or the household, has it."""
    if method not in PROCESSED and method is not Method.JAM:
        return False
    told = re.sub(PURPOSE, " ", clause)
    for found in re.finditer(_HIGH_KM, told):
        feet = float(found[1] or found[2]) * _FT_A_KM
        if own_ft is None or feet > own_ft * 1.05 + 300:
            return True
    low = own_ft is None or own_ft < _UP_THERE_FT
    return low and affirmed(told, _HIGH_PLACE)


def plainly_said(method: Method, food: FoodFacts, clause: str) -> Iterator[str]:
    """The keys that a clause puts in doubt, "" of what no key says."""
    told = re.sub(PURPOSE, " ", clause)
    if method in PROCESSED or method is Method.JAM:
        if affirmed(told, _PROCESS):
            yield ""
        theirs = affirmed(told, _BY_OTHERS) and not re.search(_THE_CROP, told)
        if theirs or re.search(r"\b(?:no idea|no clue) how$", told):
            yield ""
    if method in LIDDED:
        if affirmed(told, _SEAL):
            yield "seal"
        if affirmed(told, _SPOILT):
            yield SPOILT
        if method is Method.PRESSURE and food.acidity is Acidity.LOW_ACID and affirmed(told, _SOUR):
            yield SPOILT
        if (method is Method.JAM or _may_work(food)) and affirmed(told, _WORKING):
            yield SPOILT
        if method is Method.VINEGAR_PICKLE and affirmed(told, _ABOVE):
            yield SPOILT
    sour = method is Method.VINEGAR_PICKLE or food.acidity is not Acidity.LOW_ACID
    if sour and method in LIDDED and re.search(_ACID, told):
        yield "acid"
    if sour and method in LIDDED and method is not Method.VINEGAR_PICKLE and _low(food, told):
        yield ""


def _may_work(food: FoodFacts) -> bool:
    """Whether it spoils by working: no sauerkraut, which did so before."""
    return food.group is Group.FRUIT or "tomato" in food.classes


def _low(food: FoodFacts, told: str) -> bool:
    own = [one for one in food.name.split() if len(one) > 3]
    if re.search(_OTHER_JOB, told):
        return False
    return affirmed(told, _ADDED) and not any(one.rstrip("s") in told for one in own)
