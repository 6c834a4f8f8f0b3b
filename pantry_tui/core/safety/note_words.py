"""Words of a note that speak of a process, of what went wrong with it, and of what is no part of
it: patterns for notes in small letters, one clause at a time, which stay text until a note is read:
most starts of the program read none. A choice of our own."""

from __future__ import annotations

from pantry_tui.core.safety.denial import DENIED, LEFT_OUT, NONE


def _any(words: str) -> str:
    return rf"\b(?:{words})"


#: Of another year's batch, or of the next.
EARLIER = _any(r"(?:next|last|other|another) (?:time|year|batch|season|autumn|summer|fall)\b")
#: What it is for: "for mashed potatoes", "goes well with mushrooms", "to be pureed".
PURPOSE = (
    r"\b(?:for|to (?:eat|serve|go|be|use|make|put)|goes?|good|great|nice|lovely|best|serve[ds]?|"
    r"eat|use in|will|can be|before serving)\b(?! a while).*"
)
#: What was denied, and so is well: "never dropped below 11", "no trouble with the gauge".
NO_HARM = (
    rf"\b(?:{DENIED}|{NONE})(?: (?:a|an|any|once|1|1s|ever|even|really|the|of|them|at|all|"
    r"seals?|lids?|psi|pressure|gauge|jars?|it|to|need|use|using|used|from|with))* "
    r"(?:drop(?:s|ped)?|dip(?:s|ped)?|fall|fell|fallen|sank|below(?: \d+)?|loss|lost|lose|"
    r"problems?|troubles?|issues?|interrupt\w*|stop(?:ped)?|fail\w*|leak\w*|off|low|wrong|broken|"
    r"unsealed|loose(?:ned)?|flex\w*|soft|siphon\w*|fresh|skip\w*|forg\w+|miss\w*|faulty|weak|"
    r"vinegar (?:smell|taste)|short|early|late)\b(?: (?:below|under|in pressure|of pressure))?"
)
#: What a process is made of. A timer that was misread is why a record was put right.
SUBJECT = _any(
    r"pressure|psi|kpa|gauges?|dials?|canners?|steam|burner|stove|flame|propane|gas|power|"
    r"timer(?! misread)|timing|clock|the run|regulator|rocker|jiggler|petcock|"
    r"(?:process\w*|full|canning|real|run|whole) time|the time (?!to|of|i|we|for)|process(?:ing)?|"
    r"water level|boil(?:ing)? water|rolling boil|the boil"
)
TROUBLE = _any(
    r"drop\w*|dip(?:s|ped|ping)?|fell|falls?|falling|fallen|los[et]|loss|losing|low|lower|sank|"
    r"sinks?|went down|below|under|short|shorter|wander\w*|fluctuat\w*|swung|unsteady|uneven|"
    r"wrong|off|out|broken?|fail\w*|stuck|sticks|faulty|inaccurate|error|too (?:high|low)|reads?|"
    r"reading|untested|unchecked|paus\w*|interrupt\w*|stop\w*|restart\w*|earl(?:y|ier)|late|"
    r"cut|died|misread|guess\w*|unsure|uncertain|doubt\w*|not|never|no|none|cannot|without|"
    r"barely|hardly|almost|nearly|not quite|leak\w*|hiss\w*|"
    rf"(?:is|are|was|were|do|does|did|ca|could|wo|would|has|had)n'?t|{LEFT_OUT}|ran out|blew|"
    r"trouble|problem\w*|struggl\w*|counted from|only"
)
#: What needs no other word.
WITHOUT_MORE = (
    r"\b(?:boiled dry|ran dry|(?:came|went|fell) off the boil|(?:stopped|quit) boiling|"
    r"(?:barely|only|hardly) (?:boil|simmer)\w*|simmered in the canner|cut (?:it |them )?short|"
    r"stopped early|(?:too|very) (?:early|soon|short)|not long enough|under ?process\w*|"
    r"lost track|miscount\w*|forgot to (?:time|start|set|turn|vent)|"
    r"(?:took|taken|pulled|removed)(?: \w+){0,2} early|minutes? (?:short|early|counted)|"
    r"siphon\w*|half (?:of )?(?:their|its|the) (?:water|liquid|brine|juice)|"
    r"(?:liquid|water) (?:was |is )?(?:lost|low)|lost (?:\w+ )?(?:of the )?liquid|"
    r"(?:stood|sat|left|waited)\b.*\bbefore (?:process|cann|i |we )\w*|quick releas\w*|"
    r"under (?:the )?(?:cold )?tap|force[ds]? cool\w*|opened (?:\w+ ){0,2}(?:early|soon|hot)|"
    r"to the brim|over ?(?:fill|pack)\w*|too (?:full|tight)\w*|un ?vented|"
    rf"(?:not|never|n't)(?: \w+)? (?:cover|submerg)\w*|never (?:came to|reached)|never boiled)\b|"
    rf"\b(?:{DENIED}|{NONE}|{LEFT_OUT}) (?:\w+ ){{0,2}}(?:vent|exhaust|lock|latch|head ?space)"
)
#: Time, weight and warmth that are of something else.
OTHER_TIME = _any(
    r"rest\w*|stand\w*|stood|sat|sit|soak\w*|simmer\w*|blanch\w*|cook\w*|cool\w*|steep\w*|stir\w*|"
    r"roast\w*|bak\w*|boil(?:ed|s)?|pick\w*|prep\w*|peel\w*|drain\w*|driv\w*|walk\w*|took|takes|"
    r"heated|steril\w*|reheat\w*|serv\w*|wash\w*|chill\w*|freez\w*|marinat\w*|ago|later|until|"
    r"set|work|away|from|late|visit\w*|harvest\w*|shell\w*|chop\w*|per day|ferment\w*|warm\w*"
)
#: Time in the canner after its heat was off (NCHFP rests jars in it for ten minutes).
RESTED = _any(r"rest\w*|stood|stand\w*|sat|sit|cool\w*")
OF_PROCESS = _any(r"process\w*|canner|canned|pressur\w*|psi|water bath|in the (?:bath|pot)")
ONLY = _any(r"only|really|actually|real|instead|truth|not \d|just|under|less than|short")
OTHER_WEIGHT = _any(
    r"pick\w*|harvest\w*|bought|from|yield\w*|weigh\w*|of (?!pressure)|box|bag|bushel|used|made|"
    r"sugar|salt|per|each|bucket|total"
)
FILLED_FROM = _any(r"pick\w*|harvest\w*|bought|from|yield\w*|made|bucket|total|used")
OTHER_DEGREES = _any(
    r"kept|stor\w*|pantry|cellar|room|shelf|outside|outdoors|day|weather|oven|roast\w*|fridge|"
    r"kitchen|freez\w*|jam|set|candy|sheet"
)
ALTITUDE = _any(r"altitude|elevation|above sea|sea level|up at")
HIGH_UP = _any(
    r"high altitude|high elevation|in the mountains|up in the (?:mountains|hills)|"
    r"(?:at|up at) (?:the |our )?(?:cabin|lodge)|different altitude|higher up"
)
#: Jars that stood in water that boils, not food that was covered with it.
BATH = (
    r"(?<!with )(?<!added )(?<!poured )(?<!filled )(?<!of )(?<!on )(?<!over )(?<!cup )"
    r"\bboiling water\b(?! (?:over|poured|on top|added|to cover))|\bwater ?bath(?:ed)?\b"
)
LIDS = _any(r"lids?|seals?|caps?|popped|unsealed|sealing|vacuum")
#: Said of lids, and no failure; nobody looked yet; rings are taken off what is well sealed; and a
#: lid pops down as its jar seals.
LIDS_MAY_BE = (
    r"\b(?:rings?|bands?|label\w*|check\w*|machine|sealer|bag|"
    r"pop\w* (?:down|as|while|in the|right)|one[ -]piece|new lids|colou?r|brand|"
    r"canner lid|recycl\w*)\b|\bhear\w*"
)
SEAL_TROUBLE = (
    r"\b(?:soft|spongy|popp?(?:ed|s|ing)?(?: back)? up|popped(?! down)|sank|came up|"
    r"(?:weak|poor|bad|doubtful|second)(?: \w+)? seal|gave|re ?sealed|re ?used|bent|dented|rust\w*|"
    rf"unsure|un ?even)\b|\b(?:{DENIED}) (?:\w+ )?(?:hold|held|tight|down|stick|stay|seal)"
)
ACID = (
    r"\b(?:lemons?|limes?|citric|acid|vinegar)\b"
    r"(?! (?:peel|zest|rind|grass|balm|thyme|verbena|basil|slices?|wedges?|pepper|taste|smell))"
)
ACID_SHORT = (
    r"\b(?:half|halved|less|only|some|few|last|fresh|freshly|tree|home ?made|own|weak\w*|"
    r"dilut\w*|water(?:ed)?|short|too little|little|instead|first|second|third|except|all but|most|"
    r"substitut\w*|swapp\w*|not (?:in )?(?:all|every|each|enough)|(?:1|2|3) (?:jars?|of)|scant|"
    r"expired|old|unsure|guess\w*|reduced|cut)\b"
)
FROST_KILLED = _any(r"frost|frozen vines?|dead vines?|dying vines?|frost killed|killed vines?")
NO_LIQUID_ADDED = _any(r"(?:no|without)(?: added)? (?:water|liquid|juice)(?: added)?\b")
#: No thickener but the published one (clear modified starch, in pie fillings) is in a tested
#: process (USDA AIB 539, guides 1 and 2), and fat shields spores from heat.
THICKENED = (
    r"\b(?:thicken\w*(?! well)|corn ?starch|corn ?flour|flour(?! sack)|roux|arrowroot|tapioca|"
    r"gravy|noodles?|pasta|macaroni|rice|barley|dumplings?|bread ?crumbs?|cream|milk|butter|"
    r"bacon|lard|cheese|olive oil|oil|fat)\b(?! (?:beans?|sack|squash|smooth|vinegar|chard|"
    r"lettuce|corn))(?<!peanut butter)"
)
ADDED = (
    r"\b(?:with|added|adding|plus|and|extra|threw in|put in|mixed with|topped with)\b"
    r"(?: (?:a|an|some|the|whole|fried|chopped|raw|lots? of|few|handful of|\d+|"
    r"clove of|more|roasted|of|and|dried|fresh|cooked|minced|diced|sliced|green|red|bell|sweet))*"
    r" (onions?|peppers?|garlic|mushrooms?|celery|carrots?|corn|beans|peas|potatoes|squash|"
    r"zucchini|meat|beef|pork|chicken|ham|sausages?|eggplants?|cabbage|lentils|spinach|okra)\b"
)
