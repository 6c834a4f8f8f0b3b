"""Words of a note on food that no lid and no process keeps: what was put into it, how warm it was,
what was seen on it. Patterns for notes in small letters, one clause at a time, which stay text
until a note is read. A choice of our own."""

from __future__ import annotations

from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_spoilage import COLOUR, GROWN, INFESTED, OFF

#: Plants that are low in acid and bring their own water.
_PLANTS = (
    r"(?:garlic|onions?|shallots?|ginger|turmeric|galangal|horseradish|scallions?|leeks?|ramsons|"
    r"(?:wild )?garlic|chill?i(?:e?s)?|chiles?|jalape[nñ]os?|habaneros?|cayennes?|"
    r"(?:hot |bell |sweet |roasted )peppers?|peppers|mushrooms?|truffles?|porcini|tomatoes|"
    r"olives|herbs?|rosemary|thyme|basil|sage|oregano|marjoram|tarragon|parsley|mint|dill|chives?|"
    r"coriander|cilantro|lavender|bay lea(?:f|ves)|lemon ?(?:peel|zest|grass|balm|verbena)|"
    r"vegetables?|carrots?|nettles?|fennel|scapes?|ramps|wild leeks|bear's garlic|beets?|celery|"
    r"spinach|potato(?:es)?)"
)
#: Bees make honey of their flowers, and none of garlic cloves.
_OF_FLOWERS = (
    r"(?!(?:rosemary|thyme|basil|sage|oregano|marjoram|mint|dill|coriander|lavender|fennel|herbs?|"
    r"lemon ?balm|leeks?|onions?) honey)"
)
#: Of these a powder, a flake or a seed has no water.
PLANTS = (
    rf"(?<!dried )(?<!dry )(?<!powdered )(?<!ground )(?<!smoked )\b{_OF_FLOWERS}{_PLANTS}\b"
    r"(?! (?:powder|flakes?|salt|granules|seeds?|bread|press|bed|harvest|oil|field|patch|flowers?))"
    r"|\b(?:sun )?dried tomatoes\b|"
    # Of garlic; of the spice nobody counts them.
    r"\b(?:an?|one|some|few|whole|raw|\d+) (?:(?:fat|big|small|large|peeled|smashed|crushed|"
    r"whole|raw|fresh) )*cloves?\b"
)
_ANIMAL = (
    r"(?:bacon|ham|meat|beef|pork|chicken|duck|sausages?|chorizo|fish|anchov(?:y|ies)|sardines?|"
    r"tuna|salmon|prawns?|shrimps?|eggs?|yolks?|milk|cream|cheese|feta|mozzarella)"
)
ANIMAL = (
    rf"(?<!dried )(?<!dry )\b{_ANIMAL}\b"
    r"(?! (?:fat|dripping|free|farm|shed|timer|jar|box|powder|sauce|bowl|shop|market))"
)
#: What says that it lies in there.
PUT_IN = (
    r"\b(?:with|plus|added|adding|infus\w*|steep\w*|in (?:it|them|there)|inside|into|cloves?|"
    r"heads?|sprigs?|slices?|sliced|whole|raw|fresh|roasted|chopped|covering|poured over|"
    r"ferment\w*|stirred|beaten|worked|bits?|flavou?red|confit)\b|"
    # So much of it went in; of olives the oil itself is pressed.
    r"\b(?:from|of|off) \d+(?:\.\d+)? ?(?:lbs?|pounds?|kg|g|oz|heads?|bulbs?|bunch(?:es)?) "
    rf"(?:of )?(?!olives)(?:\w+ )?(?!olives){_PLANTS}\b|"
    r"\b(?:put|popped|dropped|stuck|tucked|poked|pushed|threw|stuffed|slipped|placed|laid|sank)\b"
    r"(?! (?:(?:it|them|this|that|away|up|out|right|all) )*(?:next|beside|by|near|behind|under|on|"
    r"at|away|up|down)\b)|"
    r"\b(?:has|have|had|contain(?:s|ed|ing)?|hold(?:s|ing)?)\b"
    r"(?!.*\b(?:notes?|hints?|tast\w*|aroma\w*|smell\w*|scent\w*|flavou?rs?|finish|nose|bite|"
    r"seen|met|touched)\b)|"
    r"\b(?:smashed|crushed|bruised|minced|grated|squashed|peeled|slivered|slivers of|halved|"
    rf"split|torn) (?:(?:red|green|fresh|raw|whole|wild|our|own|garden) )*(?!olives){_PLANTS}\b|"
    r"\bin (?:the|each|every|both|all|my|our) (?:\w+ )?(?:bottles?|jars?|oil|honey|vinegar|butter|"
    r"flasks?|jugs?|crocks?|pots?)\b|\bin$"
)
_ALONE = (
    r"and|of|some|a|few|raw|fresh|honey|butter|oil|vinegar|confit|roast(?:ed)?|whole|peeled|"
    r"\d+(?:\.\d+)?|lbs?|pounds?|kg|g|oz|heads?|bulbs?|cloves?|&|\+|,|\s"
)
ONLY_PLANTS = rf"(?:{_PLANTS}|{_ALONE})+"
ONLY_ANIMAL = rf"(?:{_ANIMAL}|{_PLANTS}|{_ALONE})+"
OIL = (
    r"\b(?:(?:oliven|sonnenblumen|raps|speise)?(?:öl|oel)|oils?|ghee|lard|(?:duck|goose|chicken|"
    r"bacon) fat)\b"
    r"(?! (?:free|press|seed|cloth|tray|lamp|paper|drum|can\b))"
)
#: Oil that food is cooked in, or that does not cover it.
NO_COVER = (
    r"\b(?:fr(?:ied|y|ying)|saut[eé]\w*|roast\w*|bak\w*|cook\w*|grill\w*|brows?n\w*|sear\w*|"
    r"brush\w*|rub(?:bed)?|toss\w*|coat\w*|drop|drizzl\w*|dash|splash|smear\w*|wip\w*|spray\w*|"
    r"greas\w*|massag\w*|essential|mineral|tray|sheet|board|dress\w*|teaspoon|tsp|sweat\w*|"
    r"soft(?:en)?ed|from the oil|out of (?:the )?oil|stir\w*|separat\w*)\b"
)
#: Done to what a shop had sold without it.
OWN_OIL = r"\b(?:topp?(?:ed)?|cover\w*|add\w*|pour\w*|fill\w*|put|own|home|we|i|submerg\w*)\b"

#: Where it is cold, so that what stood there was not in the warm.
COLD_PLACE = (
    r"\b(?:fridge|refrigerator|freezer|ice|iced|icebox|cellar|cold (?!smok)|chiller|chill(?:ed)?|"
    r"cool(?:er| box| bag)|coolbox|snow|frost|larder at)\b"
)
_PLACE = (
    r"(?:shel(?:f|ves)(?! (?:of|in) the (?:fridge|refrigerator|freezer|door))|cupboard|"
    r"counter(?:top)?|worktop|work surface|table|car|boot|trunk|sun|kitchen|porch|bench|stove|"
    r"cooker|hob|sideboard|side|windowsill|garage|shed|radiator|warm|heat|sink|room temp\w*|"
    r"(?:door|front |back )?steps?|door ?mat|patio|terrace|deck|balcony|van|lorry|bus|train|lobby|"
    r"hall(?:way)?|(?:mail|letter|lunch) ?box|parcel|post|back ?pack|rucksack|hamper|tent|"
    r"(?:shopping |school )bag|ambient|buffet|draining board|drainer|desk|trolley|office|"
    r"dash(?:board)?|parcel shelf)"
)
WARM_PLACE = (
    r"\b(?:(?:on|in|at|by|near|under|to|over) (?:the |a |our |my |warm |hot |coffee |kitchen |"
    rf"dining |garden |picnic |work )*{_PLACE})\b"
)
OUT_OF_THE_COLD = (
    r"(?<!ran )(?<!run )(?<!running )\bout of (?:the |our )?(?:fridge|refrigerator|freezer|cold)\b"
    r"(?! (?:bags?|space|room|boxes|tubs|paper|tape|labels?|shelf|shelves))"
)
#: Left where it should not be, in words that need no time beside them.
LEFT_OUT = (
    r"(?:^|\b(?:was|were|got|been|accidentally|it|them|jars?|box(?:es)?|bags?|packs?|pan|pot|tray|"
    r"carton|tubs?|bottles?|all|mistake|and|then|after|soup|stew|meat|eggs?|milk|rice|stock|"
    r"leftovers?|some|one|two|\d+) )(?:left|forgotten|stood|sat) (?:out|outside)"
    r"(?= *(?:$|over|for|on|in|all|too|at|a\b|an\b|\d|to\b|by|since|while|and|un|"
    r"of the (?:fr|re)))|"
    r"\b(?:back|home|over|left|returned|came|leftovers?) from (?:the |a |our )*(?:buffet|party|"
    r"picnic|pot ?luck|barbecue|bbq|cook ?out|fair|bake sale|supper|reception|funeral|wedding)\b|"
    r"\b(?:left|stood|sat|forgotten) (?:out|outside)(?: \w+)? (?:over ?night|all (?:night|day)|"
    r"\d+|for|on the|in the|too long)|"
    r"\b(?:left|stood|standing|sat|sitting|forgot(?:ten)?(?: (?:it|them|this))?|"
    r"kept|stored|stayed|spent|held|was|were|"
    rf"thawed|defrosted)(?: \w+){{0,6}} (?:on|in|at|by|near|under) (?:the |a |our |hot |warm )*"
    rf"{_PLACE}\b|"
    rf"\b(?:un ?refrigerated|un ?chilled|(?:{DENIED}|nobody) (?:\w+ )?(?:refrigerated|chilled|kept "
    r"cold|put in the fridge|in the fridge))\b|"
    rf"{OUT_OF_THE_COLD}|^(?:at )?room temp\w*"
)
#: The same where only a time says that it was too long.
STOOD = (
    r"\b(?:left|stood|standing|sat|sitting|rested|waited|stayed|spent|cooled|cooling|lay|"
    r"thawed|defrosted|(?:kept|wrapped|carried|transported|held|stayed) (?:\w+ )?(?:luke ?)?warm|"
    r"(?<!ran )(?<!run )(?<!went )(?<!going )(?<!burnt )(?<!burned )(?<!sold )"
    r"(?<!gone )(?<!die )(?<!died )out)\b"
)
#: Part of making it: cultured in the warm, or kept hot.
#: At the warmth of a room, whatever was done there.
ROOM = r"\b(?:room|ambient) temp\w*"
AT_ROOM = r"\b(?:at|in) (?:a |the |warm |normal )*(?:room|ambient) temp\w*"
#: Found warm, for nobody knows how long.
FOUND_WARM = (
    r"\b(?:was|were|felt|found (?:it |them )?|gone|went|got|gotten|came(?: home)?|arrived|already|"
    r"is|are|become|became) (?:quite |very |all |too |rather |still |a bit |a little |half )*"
    r"(?:luke ?)?warm(?! from the (?:oven|cow|pot|goat|stove|smoker))\b|"
    r"\b(?:luke ?)?warm (?:when (?:i|we|they) (?:found|got|opened|came|checked|looked|noticed)|"
    r"on arrival|to the touch|inside|through|in the (?:bag|car|box|boot|parcel|post|van)|"
    r"by (?:the time|then|noon|evening))\b|^(?:luke ?)?warm$|"
    rf"\b(?:{DENIED}) (?:\w+ )?cold (?:any ?more|when|enough|to the touch|on arrival|inside)\b|"
    r"\bno longer cold\b"
)
#: It was put by so, and cooled there.
WARM_SO_FAR = (
    r"\b(?:when (?:it|they) (?:went|were put)|went in|put (?:in|up|away)|packed|poured|bottled|"
    r"frozen|filled|cooling|cools?|milking|milked|potted|smoke\w*|jarred)\b"
)
#: A clause that tells somebody what to do.
ASKED = (
    r"(?:please )?(?:thaw|defrost|leave|let|keep|put|take|serve|rest|stand|bring|soak|"
    r"warm (?:through|up|gently|slowly|it|them)|"
    r"marinate|set(?! (?:it|them|the \w+) (?:out|on|by)\b.*\bcool)|store|eat|use)\b"
)
#: Cooking, which keeps it hot.
COOKING = (
    r"\b(?:cook\w*|brais\w*|boil\w*|stew(?:ed|ing)|bak\w*|roast\w*|smok\w*|"
    r"hot(?! (?:car|boot|trunk|van|sun|days?|kitchen|shed|garage|tent|afternoon|weather|bus))|"
    r"infus\w*|"
    r"reduc\w*|bubbl\w*|ris(?:e|en|ing)|brought|bring|render\w*)\b"
)
MADE_SO = (
    r"\b(?:set(?! (?:it|them|the|this|out|on|aside|down|by)\b)|"
    r"cultur\w*|ferment\w*|incubat\w*|sour(?:ed|ing)?|ripen\w*|"
    r"drain(?!ing board|er)\w*|proo?v?(?:ed|ing)|pellicle|"
    r"before (?:smok|cook|roast|bak|fry|boil|brin|cur)\w*|to (?:dry|form)|kept hot|"
    r"simmer\w*|slow cooker|oven|smoker|hung(?!.*\bafter)|rais(?:e|ed|ing)|dough|soak\w*|"
    r"macerat\w*|"
    r"in (?:the |its |their |a )?(?:sugar|salt|brine|cure|vinegar|spices|marinade))\b"
)
#: Where it is soon hotter than a room: a parked car, the sun.
HOT_PLACE = (
    r"\b(?:(?:in|under) (?:the |a |our |my |hot |warm |full |open |parked )*"
    r"(?:car|boot|trunk|van|lorry|bus|sun)|on (?:the |a |our )?(?:dash(?:board)?|parcel shelf))\b"
)
#: Forgotten where it was cooked, which cools down.
LEFT_IN_IT = (
    r"\b(?:left|forgot(?:ten)?|stayed|sat|stood|cooled)(?: (?:it|them|this|this batch))? "
    r"(?:out )?in (?:the |our |a )?(?:smoker|smoke ?house|oven|kiln|barbecue|grill|cooker)\b"
    r"(?!.*\b(?:to (?:cook|smoke|roast|bake|braise|finish)|lit|hot|low|on)\b)"
)
_THAWED = r"(?:thawed|defrosted|had (?:half |partly )?(?:thawed|melted))"
THAWED_WARM = rf"\b{_THAWED}\b.*(?:\b(?:over ?night|outside|out|all (?:day|night))\b|{WARM_PLACE})"
THAWED_SAFELY = r"\b(?:cold water|microwave\w*)\b"
REFROZEN = (
    r"\b(?:re ?froz\w*|re ?freez\w*|(?:froze|frozen)(?: it| them)? (?:again|twice|anew)(?! as)|"
    r"(?:harden\w*|solid|set hard)(?: up)? again|froze back|back to solid)\b|"
    r"\b(?:stuck|clumped|fused|welded)(?: together)? (?:in|into|as) (?:1|a) (?:\w+ )?"
    r"(?:lump|block|slab|mass|brick)\b|"
    r"\b(?:block|clump\w*|lump|slab|stuck|together)\b.*\b(?:(?:were|was|used to be|no longer|not) "
    r"loose|loose before)\b|"
    r"\b(?:second|third|2nd|3rd|another) (?:time|go|stint|spell|trip|round) (?:round )?"
    r"(?:in|into|to|through|for) (?:the |our )?(?:deep )?freez\w*|"
    r"\b(?:back|returned|went back|again) (?:in|into|to) (?:the |our )?(?:deep )?freezer\b"
    r"(?! (?:at once|straight|within|after (?:1|2|\d+) (?:min\w*|hour)\b))|"
    r"\b(?:froze|frozen) (?:for )?(?:the |a )?(?:second|third|2nd|3rd) time\b"
)
#: Of what is frozen now; what it is made with may have been.
FROZEN_BEFORE = (
    r"^(?:(?:it|they|all|this|had|has|have|was|were|been|once|already|sold|bought) )*"
    r"(?:previously frozen|frozen (?:before|once before|once already)|"
    r"thawed (?:once|before|once before|1 time)(?: (?:before|already))?)\b(?! (?:cooking|use|us))"
)
EXPIRED = (
    r"\b(?:past|after|beyond|over)(?: (?:its|the|their|his))? (?:use by|sell by|expir\w*|"
    r"date(?! (?:cake|syrup)))|\b(?:expired|out of date|gone over)\b|"
    r"\b(?:use|sell|best|eat) (?:by|before)(?: date)? (?:was |on |of )?(?:last \w+day|\w+day last|"
    r"yesterday|\d+ \w+ ago)\b|"
    r"\b(?:use by|sell by|expiry)(?: date)? (?:was|has been|had|passed|over|gone|yesterday|last)\b"
)
NOT_PASTEURISED = (
    r"\b(?:un ?pasteuri[sz]ed|(?:not|never|isn't|wasn't)(?: \w+)? pasteuri[sz]ed|raw milk|"
    r"(?:straight|fresh|warm) from the (?:cow|goat|ewe|sheep))\b|^raw\b"
)
SHELL_BROKEN = (
    r"\b(?:crack\w*|broken|chipped|leak\w*|hairline|dirty|soiled|muck\w*|manure|poo\w*)\b"
)
FERMENTED = r"\b(?:ferment\w*|worked|in the crock|bubbled|in brine)\b"
PRICKED = r"\b(?:prick\w*|pierc\w*|pok(?:ed|ing)|punctur\w*|tooth ?pick\w*|needle|skewer\w*|fork)\b"

#: What is surely a sign of spoiling, in whatever words the table of signs has for it.
SPOILT = (
    rf"\b{COLOUR} (?:fluff|fur|fuzz)\b|\bpink (?:slime|fuzz\w*)\b|{GROWN}|{INFESTED}|"
    r"^musty\b|\b(?:is|are|was|bit|slightly|rather|gone|got|went) musty\b|"
    r"\b(?:mice|(?:gone|went|going) (?:off|bad)|"
    rf"(?:smell\w*|smelt|odou?r|stench)(?: \w+){{0,3}} {OFF})\b"
)
#: Looks so by what it is, or is of the dish: no sign.
SO_OF_ITSELF = (
    r"\b(?:press\w*|pour\w*|set|fro[sz]e\w*|pack\w*|cast|shaped?) in(?:to)? "
    r"(?:(?:a|the|my|small|silicone|bar|cake|jelly|ice|cube|muffin) )*mou?lds?\b|"
    r"\bfuzz\w* skin\b(?! (?:on|over|across) (?:the|top|it|1|all))|"
    r"\breeks? of (?:garlic|onions?|smoke|vinegar|herbs?|spices?)\b|"
    r"\b(?:crop|harvest|bush|tree|row)s? (?:\w+ ){0,2}spoil(?:ed|t) by\b|"
    r"\bfluffy white (?:rice|flour|bread|mash\w*|potato\w*|sponge|icing|dumplings?|eggs?|frost|"
    r"ice|snow)\b|\b(?:spots?|specks?|patch(?:es)?) (?:of|from) (?:the )?(?:herbs?|dill|parsley|"
    r"chives?|mint|basil|thyme|carrots?|chill?i\w*|peppers?|peppercorns?|vanilla|spices?|garlic "
    r"greens?)\b|\b(?:beet\w*|cabbage|radish(?:es)?|onions?|dill|plums?|berries) "
    r"(?:turn\w*|colou?r\w*|dy\w*|tint\w*|stain\w*|made) (?:the |our |its )*(?:brine|top) "
    r"(?:pink|red|green|orange)\b"
)
#: Few of them are picked out and frozen (data/signs.csv, few insects in good dry goods).
INSECTS = (
    r"\b(?:weevils?|moths?|mites?|grubs?|beetles?|insects?|bugs?|worms|silverfish|larva\w*|"
    r"webbing|webs|ants|"
    r"maggots?|caterpillars?)\b"
)
#: Rodents (data/signs.csv).
RODENTS = (
    r"\b(?:mouse|mice|rats?|rodents?|vole|voles|squirrels?)\b(?! (?:proof|trap|traps|free))|"
    r"\b(?:droppings|gnaw\w*|nibbled|chewed (?:bag|lid|corner|through)|teeth marks|tooth marks)\b"
)
CULLED = r"\b(?:threw|thrown|toss\w*|sort\w*|pick\w*|remov\w*|cull\w*|took out|taken out)\b"
BEFORE_PACKING = (
    r"\b(?:before|first|at once|fruit|on arrival|when (?:picking|sorting|harvest\w*)|"
    r"(?:at|while|during) (?:the )?(?:picking|sorting|harvest\w*))\b"
)
#: What belongs there, or is kept out.
NOT_SPOILT = (
    r"\b(?:koji|tempeh|natto|mother|"
    r"scoby|pellicle|proof|trap|net|blue cheese|rind|against|peach fuzz|fuzz off)\b"
)
GREENED = (
    r"\b(?:turn\w*|gone|went|going|are|is|were|getting|got|bit|some|slightly|very|few|half|mostly) "
    r"green\b|\bgreen(?:ed|ing| patch\w*| spots?| skins?| ones?| shoulders?| tinge\w*)\b|^green$|"
    r"\bgreen (?:and|but|with|all over|where)\b|\band green\b|\bbitter\b"
)
#: Potatoes.
GREENS_POISON = frozenset({"potatoes", "new potatoes"})
#: Of a ferment: poor, or spoilt.
SOFTENED = (
    r"\b(?:mush\w*|slipper\w*|(?:gone|went|going|turned|got|is|are|was|were) (?:\w+ (?:and )?)?"
    r"(?:soft|brown|gr[ae]y|dark|pink(?! (?:from|with|of))))\b(?! (?:sugar|mustard|red|green))"
)
#: Of flesh: slime that has begun (USDA FSIS, The color of meat and poultry; from memory).
STICKY = (
    r"\b(?:sticky|tacky|gluey|slick|slippery)\b"
    r"(?! (?:skin|fish|eel|label|tape|rice|ribs|glaze|sauce|toffee|bun|tag|note|"
    r"weather|when (?:hot|cooked)))"
)
ABOVE_BRINE = (
    rf"\b(?:{DENIED}) (?:\w+ )?(?:cover|submerg|under)\w*|\b(?:above|out of|over) the brine\b|"
    r"\bbrine (?:is |was |ran |got |fell |went |has )?(?:too |all |nearly )?(?:low|below|short|"
    r"gone|evaporat\w*|sank|sunk|dropped|dried)|"
    rf"\b(?:{DENIED}|too little) (?:enough )?brine\b|\bfloat\w* (?:on top|above|up)\b"
)
UNHEATED = (
    r"\b(?:un ?heated|(?:not|never|wasn't|isn't)(?: \w+)? (?:pre ?)?(?:heated|cooked)|"
    r"(?:no|without)(?: any)? (?:pre ?)?(?:heat\w*|cooking)|(?:skipp?ed|forgot|left out) (?:the )?"
    r"(?:pre ?)?heat\w*|air dr\w+|sun dr\w+|"
    r"dried (?:\w+ ){0,4}(?:in the (?:sun|open|wind)|outdoors|outside|on (?:the|a) "
    r"(?:porch|roof|line)))\b"
)
_WEATHER = (
    r" (?:weather|days?|weeks?|months?|year|season|spring|summer|autumn|fall|winter|harvest|july|"
    r"august|september|october|november)\b"
)
_WITHIN = r"(?:middles?|centres?|centers?|core|inside|places|parts|spots)\b"
_MOIST = r"(?:moist|damp|wet|sticky|tacky|clammy|soggy)"
STILL_MOIST = (
    rf"\b(?:felt|feels?|feeling|seems?|got|gone|went|became|turned|is|was|were|are|bit|little|"
    r"slightly|rather|quite|very|too|bendy and|soft and|some|few|still \w+ and) "
    rf"(?:a (?:bit|little) |rather |quite |slightly |all |very |still )*{_MOIST}\b"
    rf"(?!{_WEATHER})(?! (?:when|cloths?|place|cellar|towels?|paper|sand|"
    r"before|from (?:the |its |their )*(?:sugar|honey|juice|wash|dew|rain)))|"
    r"\b(?:soft|bendy|squishy) (?:in the (?:middle|centre|center)|inside|centres?|centers?)\b|"
    r"\b(?:condensation|fogg(?:ed|y)|misted|steamed up|sweat(?:ed|ing|s|y)?|droplets|"
    r"beaded|(?:(?:drops|beads)(?: of (?:water|wet|moisture))?|"
    r"(?<!absorbs )(?<!absorb )(?<!against )(?<!for )(?:water|moisture|wet|dew|mist|steam|fog)) "
    r"(?:in|inside|(?:on|under|below|round) (?:the |its |each |1 |inside |of )*(?:glass|lids?|"
    r"jars?|bags?|sides?|tins?|top|walls?))|water got in|wet lids?|"
    r"lids? (?:is |are |was |were )?wet|fog on|flood\w*|"
    r"(?:leaked|rained|spilled|spilt|dripped) (?:on|in|into|through)|"
    r"clump(?:ed|y|ing|s)?|caked|(?:stuck|sticking|sticks) together|"
    r"(?:gone|went|got|going|turned) soft(?: again)?|soft again|"
    r"no longer (?:crisp|brittle)|spongy)\b|"
    r"\b(?:still (?:a (?:bit|little) |rather |quite |slightly )?(?:moist|damp|wet|sticky|tacky|"
    r"soft|juicy)|(?:not|never|isn't|wasn't|aren't|weren't) (?:quite |fully |completely |all |yet |"
    r"really |properly |entirely )*dr(?:y|ied)"
    rf"(?! (?:out|in(?! (?:the |its |their )?{_WITHIN})|fruit))|under ?dried|"
    r"(?:damp|moist|wet|sticky|tacky|juicy|gummy|raw) "
    r"(?:in the middle|inside|centres?|centers?|spots?)|"
    r"(?:centres?|centers?|middles?|inside) (?:(?:is|are|was|were|still) )*"
    r"(?:damp|moist|wet|juicy)|not crisp any ?more|"
    r"still (?:\w+ )?(?:squidgy|squishy|squashy|mushy|limp)|"
    r"(?:juice|moisture|water|wet|drops) (?:\w+ )?when (?:squeezed|pressed|cut|torn|bitten))\b|"
    rf"^(?:damp|moist|wet)\b(?!{_WEATHER})|"
    rf"^(?:(?:all|very|rather|quite|soft|limp|some) (?:and )?)*(?:sticky|tacky|clammy)"
    rf"(?: and (?:soft|limp|{_MOIST}))?$|^limp$|"
    r"^(?!.*\b(?:silica|sachets?|packets?|desiccant|salt)\b).*\b(?:absorbed|took up|taken up|"
    r"picked up) (?:some |the |a lot of )?(?:moisture|damp|water)\b|"
    r"\b(?:half|semi|part(?:ly|ially)?)[ -]?dr(?:y|ied)\b|"
    r"\b(?:stood|left|out|lay|caught|got|was|were) (?:out )?in the rain\b|"
    r"\b(?:fused|set|stuck|clumped|caked|welded|gone|went)(?: together| hard)? (?:in|into|to|as) "
    r"(?:a|1) (?:\w+ )?(?:lump|block|brick|slab|mass)\b|"
    r"\bfell in(?:to)? (?:the |a )?(?:sink|water|bath|bucket|dish ?water)\b"
)
