"""Words of a note that jars were spoilt, or cracked, when they were put up, for notes in small
letters, one clause at a time. What each means on a jar: data/signs.csv, with its publications."""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.note_fire import in_a_fire
from pantry_tui.core.safety.note_hands import glass_in, off
from pantry_tui.core.words import Method

#: How what is spoilt smells, but for drink.
FOUL = (
    r"(?:cheese|paint|putty|ammonia|vomit|sick|feet|foot|socks?|eggs|rot\w*|sulphur|sulfur|"
    r"sew(?:age|ers?)|drains?|mou?ld|mildew|dead|death|died|corpse|"
    r"carrion|compost|manure|dung|muck|dogs?|wet (?:cloth|carpet)|dish ?cloths?|nappy|nappies|"
    r"diapers?|farts?|glue|solvent|varnish|acetone|nail polish|petrol|gasoline|chemicals?|"
    r"damp|cellars?|swamps?|ponds?|ditch(?:es)?|bins?|garbage|rubbish|trash|silage|barn)"
)
_OF_DRINK = r"(?:beer|yeast|alcohol|wine|booze)"
#: What stands before that.
LIKE = r"(?:like|of) (?:(?:an?|the|old|wet|dirty|rotten|something|that|had|has|went|just|my|his) )*"
OFF = (
    r"(?:off|bad|foul|funny|weird|odd|strange|wrong|awful|horrible|nasty|rott(?:en|ing)|putrid|"
    r"rancid|musty|mou?ldy|yeasty|boozy|winey|cheesy|fizzy|gassy|disgusting|revolting|dreadful|"
    r"terrible|vile|eggy|pongy|whiffy|manky|gross|yucky|"
    rf"{LIKE}(?:{FOUL}|{_OF_DRINK}))"
)
#: Sugar that yeasts worked on, as a smell or a taste; what was made with wine tastes of it.
WORKED = (
    r"\b(?:alcohol(?:ic)?|wine|beer|cider|yeast|booze|boozy|winey|yeasty)(?: \w+)? "
    r"(?:smell|odou?r|whiff|stench|fumes)\b|"
    r"\b(?:odou?r|whiff|stench|reek|tang|fumes)(?: \w+)? of "
    r"(?:alcohol|wine|beer|cider|yeast|booze)\b|"
    r"\btast(?:es?|ed|ing)(?: \w+)? (?:of|like) (?:alcohol|beer|yeast|booze)\b|"
    r"\btast(?:es?|ed|ing)(?: \w+)? (?:fizzy|fermented|winey|boozy|yeasty|alcoholic)\b|"
    r"\bferment(?:ed|y) (?:taste|smell|tang)\b|\btingl\w* (?:on|in)\b|^(?:\w+ )?fizzy$|"
    r"^(?:(?:a|bit|little|slightly|rather|quite|is|has|gone|went|turned|now) )*"
    r"(?:boozy|winey|alcoholic)$"
)
#: Somebody fell ill of it; who was ill when it was made says nothing.
ILL = (
    r"\b(?:made|makes|got|fell|felt|feel|was|were|been|is) (?:(?:(?:my|our|his|her|the) \w+|me|us|"
    r"him|her|them|everyone|both|"
    r"all|very|really|so|quite|violently|\w+ of us) )?(?:ill|sick|poorly|queasy)\b"
    r"(?! (?:in|at|with (?:a |the )?(?:flu|cold)|of (?:it|them|picking|peeling|the sight)))|"
    r"\bmade (?:my|our|his|her|the) (?:\w+ ){1,2}(?:ill|sick)\b|"
    r"\b(?:ill|sick|poorly) (?:all (?:night|day)|after(?:wards)?|that night|next day|"
    r"from (?:it|them|eating))\b|\b(?:vomit\w*|threw up|poison(?:ed|ing)|botulism|"
    r"upset (?:stomach|tummy|belly)|"
    r"(?:stomach|tummy|belly) (?:ache|upset|cramps)|diarrh\w*)\b"
)
#: What the toxin of botulism does (US CDC, "Symptoms of botulism"; from memory). Of somebody who
#: cannot swallow a note may speak for another reason, so it has to follow a meal.
NERVES = (
    r"\b(?:(?:double|blurr(?:ed|y)) (?:vision|sight)|(?:saw|seeing|see|sees) double|"
    r"(?:vision|eyes|sight) (?:was |were |is |went |got )?blurr\w*|eye ?lids? (?:\w+ )?droop\w*|"
    r"droop\w* eye ?lids?|slurr\w* (?:\w+ )?(?:speech|words?)|"
    r"(?:speech|words?) (?:was |were |is |got )?slurr\w*|"
    r"(?:trouble|difficulty|problems?|hard(?:er)?|(?:could|can)(?: not|not|n['’]?t)|unable)"
    r"(?: in| to| with)? (?:swallow\w*|breath\w*|speak\w*|see(?:ing)?)|"
    r"muscle weakness|weak (?:arms|legs|muscles)|paraly[sz]\w*)\b"
)
_AFTER = r"\b(?:day after|next (?:day|morning)|that (?:night|evening)|hours? later|afterwards?)\b"
#: Who was ill when it was made, or of a cold.
_ILL_MEANWHILE = (
    r"\b(?:(?:while|because) (?:\w+ ){1,2}|(?:when|since) (?:i|he|she|we|they) |as i )"
    r"(?:am|is|was|are|were|had been|felt|fell|got) (?:\w+ )?(?:ill|sick|poorly)\b|"
    r"\bhome (?:ill|sick|poorly)\b|"
    r"\bfor (?:\w+ ){1,4}(?:who|that|when|while|as)(?: \w+)? (?:is|are|was|were|feels?|fell|falls?|"
    r"gets?|got|has been|have been)(?: \w+)? (?:ill|sick|poorly)\b|"
    r"\b(?:had|has|have|caught|with|from) (?:a |the |bad )*(?:flu|cold) .*\b(?:ill|sick|poorly)\b"
)
#: Who ate of it, opened it or threw it out was ill of it.
_EATEN = (
    r"\b(?:ate|eat\w*|tast\w*|tried|after\w*|supper|dinner|lunch|breakfast|meal|open\w*|threw|"
    r"throw\w*|discard\w*|binn?(?:ed)?|made (?:me|us|him|her|them|everyone))\b"
)
#: What came out of the jar by itself.
_CAME_OUT = (
    r"\b(?:liquid|juice|brine|syrup|contents|stuff|gunk|goo|foam|food|it|some|top|lid)(?: \w+)? "
    r"(?:shot|squirt\w*|spray\w*|spat|jetted|blew|flew|erupted|exploded|came|creep\w*|crept|"
    r"ooz\w*|push\w*|bubbl\w*|runn?\w*|ran|drip\w*|trickl\w*|coming|seep\w*|weep\w*)(?: \w+)?? "
    r"(?:out(?: (?:when|as|on opening|under|from|of the (?:jar|lid)|round|around|"
    r"at the (?:lid|rim))|$)|everywhere|all over|"
    r"(?:from )?(?:under|past|around|round) (?:the |1 |a )?(?:lids?|rims?|"
    r"seals?)|down (?:the |1 )?(?:side|sides|glass|outside|jars?))\b"
)
_CAME_OUT_OF_ELSE = (
    r"\b(?:canner|pot|pan|pour\w*|fill\w*|ladl\w*|cool\w*|process\w*|boil\w*|siphon\w*|wip\w*|"
    r"steam|knife|bubble tool)\b"
)
COLOUR = r"(?:green|blue|gr[ae]y|black|pink|orange)(?:ish)?"
_OF_LEAVES = r"(?:with|from) (?:beet|cabbage|dill|food)"
_ODD = (
    r"(?:funky|skunky|off|bad|foul|funny|weird|odd|strange|peculiar|suspicious|wrong|nasty|awful|horrible|"
    r"putrid|"
    r"rancid|unpleasant|disgusting|revolting|vile)"
)
_SENSED = r"(?:smell|odou?r|whiff|scent|aroma|taste|after ?taste|tang|flavou?r)"
#: A smell, a taste or a look that is not as it should be, however it is put.
NOT_RIGHT = (
    rf"\b{_ODD} (?:and \w+ )?{_SENSED}s?\b(?! (?:of|from|in the (?:fridge|freezer|kitchen)))|"
    rf"\b(?:smell\w*|smelt|tast(?:es?|ed|ing)|odou?r|flavou?r|aroma|colou?r|appearance)"
    r"(?: (?:is|was|does|did|are|were))? not (?:\w+ )?(?:right|normal|natural|as it should)\b|"
    r"\bnot (?:quite |really )?(?:smell|taste|look)\w* (?:quite |at all )?(?:right|normal)\b|"
    rf"\btast(?:es?|ed|ing)(?: (?:a|bit|little|very|rather|quite|really|slightly|so))* {_ODD}\b"
    r"(?! (?:raw|until|without|before|when raw|on its own|at first|but))|"
    r"^(?:(?:it|they|this|these|all|food|meat|top|surface|inside|contents|jars?|still|now) )*"
    r"look(?:s|ed|ing)?(?: (?:a|bit|little|very|rather|quite|all|really|slightly))* "
    rf"(?:{_ODD}|dodgy|iffy|not (?:quite )?(?:right|normal|well))\b"
    r"(?! (?:shape|sizes?|label|but))"
)
#: Mould, rot, slime and stench on any food, in a jar or out of it.
GROWN = (
    r"\b(?:mou?ld\w*|fuzz\w*(?! (?:variet|sort|peach|skins|skinned))|furry|fur|"
    r"hairy(?! (?:vetch|variet|gooseberr))|fluff|slim[ey]\w*|ropy|rot(?:s|t\w*)?|putrid|rancid|"
    rf"st[iau]nk(?:s|y|ing)?|{COLOUR} (?:dust|powder|growth|film)|pink (?:scum|yeast)|"
    r"black spots? on top|"
    r"(?:black|green|blue|pink|orange)(?: and \w+)? on (?:the )?(?:top|surface)|"
    r"(?:top|surface|brine|scum|film) (?:(?:is|has|gone|went|turned|looks?|all|quite) )+"
    r"(?:pink|red|black|blue|green|orange))\b"
)
#: The same in vaguer words.
GONE_BAD = (
    r"\b(?:reeks?|spoil(?:ed|t)(?! for)|"
    r"fluffy (?:white|gr[ae]y|green|blue|black|stuff|bits?|growth|patch\w*|spots?|layer|top))\b"
)
#: The same of what lies wet or shut in its vessel; a raw crop or meat has spots and colours of its
#: own, and what is frozen has those of the frost.
SPOTTED = (
    rf"\b{COLOUR} (?:spots?|specks?|patch(?:es)?|ring)\b"
    r"(?! (?:of (?:pepper|vanilla|spice)|on (?:the )?(?:lid|skins?|glass|outside)))|"
    r"\b(?:top|surface|brine) (?:\w+ )?(?:is |has |gone |went |turned |looks? )*"
    rf"(?:pink|red|black|blue|green|orange)\b(?! {_OF_LEAVES})"
)
INFESTED = (
    r"\b(?:maggots?|(?<!for )worms(?! (?:bin|castings))|weevils?|moths?|larva\w*|insects?|ants|"
    r"cockroach\w*|(?:fly|flies|wasps?|ant|spider|slug|beetle|bug|bee|earwig)(?: \w+){0,2} "
    r"(?:in|inside|into) (?:it|them|there|1|each|the (?:jar|jam|tub|pot|bottle|honey)))\b"
)
#: What was on the plant and was taken off, or is about the room, is not in the jar.
_NOT_IN_THE_JAR = (
    r"\b(?:(?:pick|wash|rins|sort|cut|trim)\w* (?:\w+ ){0,2}(?:out|off|away)|soak\w*|"
    r"remov\w* (?:the |all |any )*(?:maggots?|worms|weevils?|moths?|larva\w*|insects?)|garden|"
    r"beds?|leaves|plants?|bush(?:es)?|trees?|crop|(?:moth|worm|insect) (?:holes?|damage)|codling|"
    r"(?:in|round|around|about) (?:the |our |my )*(?:cabbages?|larder|pantry|cupboards?|flour|"
    r"shed|house|kitchen)|(?:moths?|insects?) (?:about|around|balls?|traps?)|traps? for)\b"
)
#: Looks so on or about a jar and is not grown in it: rot on the plant, scum that was skimmed, a
#: slice laid on top, the colour of beets, fat, and what hard water and soot leave on the glass.
_LOOKS_SO = (
    r"\b(?:root|blossom end) rot\b|\bpink scum (?:was |all |got )*skimmed\b|"
    r"\bskimm\w*(?: off)?(?: the| all)* pink scum\b|"
    r"\b(?:slices?|sprigs?|rounds?|wedges?) of (?:orange|green) on (?:the )?top\b|"
    r"\b(?:top|surface|brine|scum|film) (?:(?:is|has|gone|went|turned|looks?|all|quite) )+"
    rf"(?:pink|red|black|blue|green|orange) (?={_OF_LEAVES})|\b{COLOUR} film of (?:oil|fat)\b|"
    r"\b(?:black|gr[ae]y)(?:ish)? (?:film on (?:the )?(?:lids?|jars?|glass|outside)|"
    r"dust (?:of (?:pepper|vanilla|spice)|on (?:the )?(?:lid|glass|outside|skins?)))\b"
)
_SPOILT = (
    rf"{GROWN}|{GONE_BAD}|{SPOTTED}|{NOT_RIGHT}|"
    r"^(?:(?:the|1|some|few|several|of|them|these|jars?|tins?|tops?|it|they|all|both|\d+) )*(?:is|"
    r"are|was|were|has|have|looks?|got|gone) (?:(?:a|bit|little|slightly|all|quite|very|now|gone|"
    r"gotten) )*(?:swollen|swelled|puffed(?: up)?|puffy|blown(?: up)?|domed|bloated)$|"
    r"\b(?:green|blue|gr[ae]y|black|pink|orange|white) (?:stuff|gunk|goo|threads?|hairs?|"
    r"whiskers)\b|\b(?:wet|sticky) (?:ring|patch|puddle|spot) (?:around|round|under|below|beneath) "
    r"(?:the |1 |a |2 |some )*(?:jars?|it|them)\b|"
    r"\b(?:swollen lids?|lids? (?:\w+ )?(?:swollen|swelled|domed)|bulg\w*|leak\w*|seep\w*|ooz\w*|"
    r"spurt\w*|gush\w*|fizz\w*|fermenting|(?:start|began|begun)\w* (?:to |of )?ferment\w*|"
    r"(?:gone|going|went) (?:off(?! the)|bad|sour))\b|"
    rf"\b(?:smell\w*|smelt|odou?r)(?: \w+){{0,3}} {OFF}\b|\b{OFF} (?:smell|odou?r)|"
    r"\b(?:jars?|lids?|seals?) (?:\w+ )?weep\w*|\bfoam(?:ed)? (?:when|on opening|came|under|out)\b|"
    r"\b(?:explod\w*|explosion|burst(?:s|ing)? (?:open|in the|on the|overnight|its)|"
    r"blew (?:up|its|the lid|apart|off))\b"
)
#: A jar that broke in the heat, or a timer that went off.
_BURST_OF_ELSE = r"\b(?:canner|bath|pot|freezer|oven|kettle|process\w*|boil\w*|cooling|flavou?r)\b"
#: Of a pickle this is slime, whatever made it.
_SOFTENED = (
    r"\b(?:slipper\w*|mush\w*|squidg\w*|squish\w*|(?:gone|went|going|turned|got) (?:\w+ )?soft)\b"
    r"(?! (?:lids?|seeds?|peas))"
)
SOURED = r"\b(?:smell\w*|smelt)(?: \w+){0,3} sour\b|\bsour smell"
_GAS = (
    r"\b(?:hiss\w*|(?:tiny |small |fine |gas |little )*bubbl\w*|foam(?:s|y|ing)|froth\w*|"
    r"effervesc\w*|pressure (?:under the lid|in the jars?|when (?:i )?open\w*)|gassy|carbonat\w*|"
    r"(?:gone|went|turned) sparkling|sparkling (?:when|on) open\w*|gas (?:under|inside|came|"
    r"escap\w*|build\w*|built|push\w*|in (?:the |"
    r"it|them|each|1 |a )?(?:jars?|lids?|$)?))(?: |$|\b)"
)
#: Air goes into a jar that was sealed, and none comes out; colour and texture together are no
#: mark of heat alone.
_AIR_OUT = (
    r"\b(?:air|gas)(?: \w+)? (?:came|comes|hiss\w*|rush\w*|escap\w*|push\w*|blew|whoosh\w*|"
    r"puff\w*|sigh\w*|shot) (?:\w+ )?out\b"
)
_DISCOLOURED = (
    r"\bdiscolou?r\w*(?: \w+){0,2} (?:mush\w*|slim\w*|soft)|"
    r"\b(?:mush\w*|soft)(?: \w+){0,2} discolou?r\w*|"
    r"\b(?:odd|strange|wrong|unnatural|funny|weird|unusual) colou?r\b"
)
_AIR_OF_ELSE = (
    r"\b(?:bubbl\w*|knife|tool|canner|vent\w*|petcock|steam|pot|weight|gauge|valve|process\w*|"
    r"cool\w*|pump|sealer)\b"
)
#: Steam hisses, what boils bubbles and foams, and air bubbles are let out with a knife.
_GAS_OF_ELSE = (
    r"\b(?:canner|steam|weight|valve|gauge|air|remov\w*|knife|pot|pan|hot|fill\w*|pour\w*|boil\w*|"
    r"cook\w*|skim\w*|stir\w*|heat\w*|water|free|wrap|pectin|butter|released?|jiggl\w*|tools?|"
    r"chopsticks?|skewers?|spatula|spoon|gas (?:stove|hob|burner|mark|ring|cooker)|debubbl\w*|de "
    r"bubbl\w*|bubbled (?:the|each|every|all)(?: the)? jars?|syrup (?:was|is) bubbling|"
    r"(?:tapp|press|work|push|eas|knock|pok|chas|coax)\w* out (?:the |any |all |some |air )*"
    r"bubbles|(?:got|get|"
    r"getting|work\w*|eas\w*|let|knock\w*|press\w*|tapp\w*|pok\w*|push\w*|took|take|taking|ran|"
    r"slid|coax\w*|burp\w*)\b.*\bbubbles?(?: \w+)? (?:out|away|up and out)|bubbles?(?: \w+){0,2} "
    r"(?:tapp|press|work|push|eas|knock|pok|chas|coax|let)\w* out)\b"
)
_GLASS = (
    r"\bcrack\w* (?:\w+ )?(?:jars?|glass|rims?|lids?|bottles?)\b|"
    r"\b(?:jars?|glass|rims?|bottles?)(?: \w+){0,3} (?:crack\w*|chip(?:s|ped)?)\b|"
    r"\bchip\w* (?:on |in |at |the )*(?:rims?|jars?|glass)|\bhair ?line crack"
)
#: Bells and power go off; spoilt fruit was sorted out, and the canner or its gasket leaks steam.
_OF_ELSE = (
    r"\b(?:threw|thrown|throw|toss\w*|sort\w*|culled|discard\w*|compost\w*|picked out|timer|alarm|"
    r"for (?:chips|cracks)|bell|lights?|"
    r"(?:steam|water|gasket|canner|valve) leak\w*|leaky|tap|hens?|pigs?)\b"
)


#: What stood in flood water (data/signs.csv); a bed that was flooded is none.
FLOOD = (
    r"\bflood\w*|\b(?:creek|river|sea|sewage|sewer|drains?|storm ?water|high water)"
    r"(?: water)? (?:came|rose|got|went|reached|backed|ran)\b|\b(?:was|were|stood|sat|lay) under "
    r"(?:the )?water\b"
)
OF_THE_LAND = r"\b(?:beds?|garden|fields?|allotment|plot|patch|canner|boil\w*|brine|process\w*)\b"


def spoilt(method: Method, clause: str) -> bool:
    """Whether the words say that the food was spoilt, or the glass cracked."""
    if affirmed(clause, ILL) and not ill_of_else(clause):
        return True
    if affirmed(clause, NERVES) and re.search(f"{_EATEN}|{_AFTER}", clause):
        return True
    if in_a_fire(clause) or off(clause) or glass_in(clause):
        return True
    if re.search(_OF_ELSE, clause):
        return False
    if affirmed(clause, FLOOD) and not re.search(OF_THE_LAND, clause):
        return True
    if affirmed(clause, INFESTED) and not re.search(_NOT_IN_THE_JAR, clause):
        return True
    if affirmed(clause, _CAME_OUT) and not re.search(_CAME_OUT_OF_ELSE, clause):
        return True
    if method is Method.VINEGAR_PICKLE and affirmed(clause, _SOFTENED):
        return True
    burst = re.search(r"\b(?:explod|explos|burst|blew)", clause) is not None
    seen = re.sub(_LOOKS_SO, " ", clause)
    if affirmed(seen, _SPOILT) and not (burst and re.search(_BURST_OF_ELSE, clause)):
        return True
    if affirmed(clause, _AIR_OUT) and not re.search(_AIR_OF_ELSE, clause):
        return True
    if affirmed(clause, _DISCOLOURED):
        return True
    if affirmed(clause, _GLASS) or affirmed(clause, WORKED):
        return True
    if method is not Method.VINEGAR_PICKLE and affirmed(clause, SOURED):
        return True
    return gassy(clause)


def gassy(clause: str) -> bool:
    """Whether the words say that it made gas."""
    return affirmed(clause, _GAS) and not re.search(_GAS_OF_ELSE, clause)


def ill_of_else(clause: str) -> bool:
    """Whether who was ill was so when it was made, or of something else."""
    meanwhile = re.search(_ILL_MEANWHILE, clause) is not None
    return meanwhile and not re.search(_EATEN, clause)
