"""What a note says against jars: how full they were and what they lost, their lids, their looks
when they came out, and that nobody knows how it went. Which words are doubted is a choice of our
own, the stricter one; that a lid serves once is of USDA AIB 539, guide 1, from memory.
"""

from __future__ import annotations

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.safety.denial import DENIED, LEFT_OUT, NONE
from pantry_tui.core.safety.note_words import SPOILT, Stage
from pantry_tui.core.words import Method

_LOST = r"(?:gone|lost|missing|came out|boiled out|ran out|spilled|out of the jars?|escaped)"
_LIQUID = r"(?:water|liquid|brine|juice|syrup|broth|stock)"
_OF_WHAT_IS_OVER = (
    r"\b(?:fridge|ate|eaten|freezer|none|drank|drunk|poured off|drained|boiled down|cooked down|"
    rf"{_LIQUID} for)\b"
)

OF_JARS: tuple[Stage, ...] = (
    # What was lost, and how full they were: less than half that boiled out of jars that sealed is
    # no fault (National Center for Home Food Preservation, loss of liquid; from memory).
    Stage(
        ("lost", "losing", "half", "most", "much", "lot", "third", "quarter", "loss", "full",
         "empty",
         "down", "dropped", "sank"),
        r"\b(?:lost|losing) (?:a (?:lot|good bit|fair bit)|lots|most|plenty|too much|much|"
        r"quite "
        rf"a (?:bit|lot)|(?:a )?half)\b(?: \w+){{0,3}} {_LIQUID}\b|"
        r"\b(?:half|most|much|lots|a lot)(?: of)? (?:the |their |its |my )?"
        rf"{_LIQUID} (?:\w+ )?{_LOST}\b|"
        r"\b(?:jars?|came out|they|1|some)\b(?: \w+){0,3} (?:half|nearly|almost) (?:empty|full|"
        r"dry)\b|"
        rf"\b{_LIQUID}\b(?: \w+){{0,4}} (?:down|dropped|fell|sank) (?:by )?(?:half|0\.[5-9]|"
        r"a lot|2|3)|\b(?:2 thirds|2/3|3/4|3 quarters|half|0\.\d+) (?:full|empty)\b|"
        r"\b(?:third|quarter) empty\b|"
        rf"\b{_LIQUID} (?:is |was )?short\b|"
        rf"\b(?:big|much|heavy|lots of|bad|huge|massive|serious) {_LIQUID} loss",
        _OF_WHAT_IS_OVER,
    ),
    Stage(
        ("above", "proud", "higher", "out", "half", "part", "forg", "skip", "omit", "without", "no",
         "brine", "syrup", "juice", "level", "dry", "stick", "stuck", "pok", "peek", "hardly",
         "barely",
         "scarcely", "very", "too", "top"),
        r"\b(?:above|proud of|higher than|out of) (?:the |their )?(?:liquid|brine|syrup|juice)\b|"
        rf"\b{_LIQUID} (?:\w+ ){{0,2}}(?:half|part) ?way (?:up|down)|"
        rf"\b(?:{LEFT_OUT}|{NONE}|no)(?: \w+){{0,3}} {_LIQUID}(?: \w+){{0,2}} (?:to|in|into) "
        r"(?:the )?jars?\b|"
        r"\b(?:brine|syrup|juice|level) (?:is |was )?(?:too )?low\b|\bdry (?:at|on) (?:the )?top\b|"
        rf"\b(?:stick|stuck|pok|peek)\w* out\b|\bst[oa]n?d\w* out of (?:the |their )?{_LIQUID}\b|"
        rf"\b(?:hardly|barely|scarcely|almost no|very little|too little|"
        rf"not enough)(?: any)? {_LIQUID} "
        r"in (?:the |them|each)|\b(?:top half|half of (?:them|it)) (?:is |are )?(?:dry|bare|"
        r"uncovered)",
        rf"{_OF_WHAT_IS_OVER}|\bbubbles?\b",
    ),
    Stage(
        ("head", "room", "space", "hair", "brim"),
        rf"\b(?:{DENIED}|{NONE}|{LEFT_OUT}|little|hardly|barely|scarcely|tiny|hair|too little|"
        rf"less)\b.*"
        r"\b(?:head ?space|head ?room|(?:room|space) (?:on|at|above) )|\bhead ?(?:space|room)\b"
        r"(?: \w+){0,2} (?:forg\w+|skipp?\w*|too (?:small|little)|tight|missing|all over|varied|"
        r"uneven|"
        r"un ?measured)|"
        r"\bhead ?(?:space|room)\b.*\b(?:only|instead)\b|\bonly\b.*\bhead ?(?:space|room)\b|"
        r"\b(?:only )?a hair\b|\bbrim ?ful",
        r"\b(?:problem|trouble|cellar|shelf|shelves|freezer|did not forget|lost)\b",
        key="headspace",
    ),
    Stage(
        ("fill", "pack", "cram", "over", "too", "like", "stuff", "jam", "rim", "top", "brim",
         "squeez", "full",
         "lid",
         "bigger", "larger", "thicker"),
        r"\b(?:fill|pack|top|heap|ladl|pour)\w*\b(?: \w+){0,4} (?:to|up to|at|with|over) the "
        r"(?:very )?(?:rims?|top|brim|lids?|edge|neck)(?! (?:of the (?:beans|fruit|peaches)|"
        r"line))\b|\bto the brim\b|\b(?:very|too|so|really|extra) (?:tight|full|dense)\w*\b|"
        r"\bcramm\w*|\bover ?stuff\w*|\btoo much in (?:each|the|every)\b|\blike sardines\b|"
        r"\bjam packed\b|\bpacked (?:\w+ )?solid\b|"
        r"\b(?:bigger|larger|thicker) (?:chunks?|pieces?|cubes?|cuts?)\b|\bas (?:tight|full|many|"
        r"much) as (?:i|we|would|could|they|it)\b|"
        r"\bsqueez\w* in (?:as|more|extra)|\btouch\w* the lids?\b",
        r"\b(?:rims? (?:wiped|clean)|seal\w*|lids? (?:are|is|were|all)|wip\w*|screw\w*|ring|band|"
        r"canner|shelf|freezer|basket|bucket|crate|kettle)\b",
        methods=LIDDED,
    ),
    # The lids.
    Stage(
        ("lid", "ring", "band", "flats", "seals", "screw", "tight", "retight", "crank", "weights"),
        r"\b(?:re ?us\w*|already used|expired|ancient|hard(?:ened)?$|perished|from (?:19\d\d|"
        r"20[01]\d)|used (?:again|once|twice|before|already)|second ?hand|old(?! fashioned)|"
        r"last year's|(?:from )?(?:the )?(?:jam|shop|bought|store) jars?|once used|been used|saved|"
        r"wobbl\w*|mov(?:e|es|ed)|lift\w* (?:off|easily|right)|dent\w*|bent|buckl\w*|warp\w*|"
        r"rust\w*|chipp\w*|scratch\w*|slid\w*|crooked|askew)\b.*|"
        r"\b(?:push|press)(?:ed)?\b(?: \w+){0,3} (?:down|back)\b|\bsame lids\b|"
        r"\bweights? on (?:top of )?(?:the )?(?:lids?|jars?)|"
        r"\b(?:rings?|bands?)\b(?: \w+){0,4} (?:tight as (?:i|we|it|they)|(?:too|very|full\w*|"
        r"really) (?:tight\w*|loose)|loose|slack)\b|"
        r"\b(?:re ?)?tighten\w*|\bscrew\w*(?: \w+){0,3} (?:hard|tight\w*|down|as (?:tight|hard))\b|"
        r"\b(?:hard|tight\w*|full force|wrench|pliers)\b.*\bscrew|\bcrank\w*",
        r"\b(?:rings?|bands?) (?:\w+ )?(?:off|rust\w*|re ?us\w*|old|wash\w*)\b|\bfinger ?(?:tip)? ?"
        r"tight|\bfingertip|\b(?:no|not 1|none)(?: of)?(?: the| them)? (?:\w+ )?(?:mov|dent|rust|"
        r"bent)\w*|\bcheck\w*|\btest\w*|\bcanner lid|\bold (?:rings?|bands?)|\b(?:tight|down|"
        r"firm)$(?<!ed tight)(?<!ed down)|\bscratch\w*(?: \w+)? (?:outside|on (?:the )?(?:outside|"
        r"top))\b",
        key="seal",
    ),
    Stage(
        ("ping", "pop", "suck", "click", "pull", "seal", "concave", "down", "hold", "take",
         "took", "catch"),
        r"(?:\b(?:1|2|3|few|some|several|half|most|many|one|any)\b(?: \w+){0,3} |\blids? |"
        r"\bjars? |^)"
        rf"(?:{DENIED}|cannot)(?: \w+)? (?:ping\w*|take|took|catch|pop\w*|suck\w*|click\w*|"
        rf"pull(?:ed)? down|seal(?:ed)?|"
        r"(?:go(?:ne)?|went) down|concave|come down|hold)\b(?! (?:up|off|open|back))|"
        r"\b(?:all|every(?: 1)?|most)\b(?: \w+)* (?:ping|pop|suck|seal|click)\w*(?: \w+)? "
        r"(?:but|except|bar|apart from|save)\b",
        r"\bto (?:ping|pop|seal)$",
        key="seal",
    ),
    # A wax seal is no seal (data/signs.csv).
    Stage(
        ("wax", "paraffin"),
        r"\b(?:wax|paraffin)\b.*\b(?:loose|lift\w*|crack\w*|came|come|pull\w*|shr[iu]nk\w*|weep\w*|"
        r"leak\w*|slipp\w*|moved|off)\b",
        r"\bwax (?:paper|beans?|crayon|pencil)\b|\bbees\b",
        key="seal",
    ),
    # Within a day they hold, or they do not (National Center for Home Food Preservation; from
    # memory).
    Stage(
        ("late", "next", "following", "day", "hour"),
        r"\b(?:seal\w*|ping\w*|popp?\w*|pull\w*|suck\w*|snapp\w*|click\w*|went)\b(?: \w+){0,3} "
        r"(?:late\b|(?:a|1|2|3|full|whole) days? (?:later|after)|(?:the )?(?:next|following) "
        r"(?:evening|night|afternoon)|(?:2[4-9]|[3-9]\d) hours? (?:later|after))",
        r"\b(?:within|before|tested|checked|washed|wiped|labell?ed|stored|shelved)\b",
        key="seal",
    ),
    Stage(
        ("froze",),
        r"\bfroze\b|\b(?:got|was|were|been|had|have|it|they|jars) frozen\b",
        r"\b(?:from|some|rest|fruit|berries|corn|peas|before|first|vines?|tops?|ground|garden|"
        r"froze (?:the|what|half|a|our|my|another|more))\b",
        key="seal",
    ),
    Stage(
        ("push", "press", "give", "click", "pop", "move", "spring", "cent"),
        r"\b(?:gives?|clicks?|clicked|pops?|moves?|springs?|flex\w*|bounces?) (?:\w+ )?(?:when|"
        r"if|as|"
        r"under)\b.*\b(?:press|push|touch|tapp?)\w*|\bcent(?:re|er)s? (?:\w+ )?(?:pops?|moves?|"
        r"gives?|springs?|clicks?|flex\w*|up)\b|"
        r"\b(?:push|press)(?:ed)?\b(?: \w+){0,4} down (?:until|till|by hand|myself|so|and) ",
        r"\b(?:under|into|beans|fruit|food|cabbage|cucumbers|liquid|brine|air)\b|"
        rf"\b(?:{DENIED}|{NONE})\b",
        key="seal",
    ),
    Stage(
        ("rim", "caught", "trapp", "between", "under"),
        r"\brims?\b.*\b(?:greas\w*|dirty|sticky|sugary|oily|messy|un ?wiped|chipp\w*|nick\w*|"
        r"rough)\b|\b(?:greas\w*|dirty|sticky|sugary|oily|messy|un ?wiped) rims?\b|"
        rf"\b(?:{DENIED}|{LEFT_OUT}|{NONE})\b(?: \w+){{0,3}} (?:wip\w*|"
        rf"clean\w*)(?: \w+){{0,2}} rims?\b|"
        rf"\brims?\b(?: \w+){{0,2}} {DENIED} (?:\w+ )?(?:wip|clean)\w*|"
        r"\b(?:caught|trapped|stuck|seeds?|pulp|food|bit|string|beans?)\b(?: \w+){0,3} (?:under|"
        r"between|beneath) (?:the |1 |a |2 )?(?:lids?|seals?|rims?)\b",
        rf"\bcheck\w*|\bfor (?:nicks|chips)\b|\b(?:{DENIED}|{NONE}) (?:\w+ )?(?:greas|dirt|stick|"
        rf"food|bit|chip|nick)\w*",
        key="seal",
    ),
    Stage(
        ("open", "fail"),
        r"\b(?:1|2|3|4|few|some|several|jars?)\b(?: \w+){0,2} open (?:next|in the|by|over ?night|"
        r"this|"
        r"when|on)\b|\b(?:1|2|3|4|few|some|several)(?: jars?)? (?:is|was|are|were) (?:\w+ )?open\b|"
        r"^(?:\w+ ){0,2}(?:\d+|some|few|half|several|couple)(?: of (?:them|the \w+))?(?: (?:have|"
        r"had))? failed\b",
        r"\b(?:already|to eat|0 failed|for (?:dinner|lunch|supper))\b",
        key="seal",
    ),
    Stage(
        ("jar", "bottle"),
        r"\b(?:mayo\w*|commercial|shop|store|coffee|baby ?food|(?:pasta|spaghetti) sauce|"
        r"peanut butter|jam|pickle|honey) (?:\w+ )?(?:jars?|bottles?)\b",
        r"\bpickle jars? (?:from|by)\b|\bfrom\b.*\bshop\b|\border\w*\b|\bof (?:jam|pickle)",
        methods=frozenset({Method.PRESSURE}),
    ),
    Stage(
        ("jar",),
        r"\b(?:bigger|larger) jars\b|\bjars? (?:were |are )?(?:bigger|larger) than\b|"
        r"\bin(?:to)? (?:the )?(?:big|large|huge|tall|giant) jars\b",
        key="jar",
    ),
    Stage(
        ("seal", "lid", "ring", "dull", "dimpl"),
        rf"\bdull\b.*\b(?:tap|sound|thud|ring)|\b{DENIED} ring\b|\b(?:is|are|was|were|"
        rf"dimpled) up\b|"
        r"\bseal\w* (?:broke|came|let|gave|slipp|went|lift|peel|is soft|weak)\w*|"
        r"\blids?\b(?: \w+){0,2} (?:peel\w*|came (?:off|away)|slid|in my hand)\b",
        key="seal",
    ),
    Stage(
        ("cloud", "milk", "murk", "turbid"),
        r"\b(?:cloud(?:y|ed)|milky|murky|turbid)\b",
        rf"\b(?:{DENIED}|{NONE}|glass|outside|hard water|day|sky|weather|canner|starch\w*|"
        r"vinegar|apple|cider|less|hardly|a little sediment|milky way)\b",
        key=SPOILT,
        methods=PROCESSED | {Method.VINEGAR_PICKLE},
    ),
    # Lime that stays in a pickle takes the acid from it (National Center for Home Food
    # Preservation, from memory).
    Stage(
        ("lime", "limed", "liming"),
        rf"\blim(?:e|ed|ing)\b.*\b(?:{DENIED}|{LEFT_OUT}|{NONE}|only|barely|hardly) (?:\w+ ){{0,2}}"
        r"(?:rins|wash)\w*|\bun ?(?:rinsed|washed)\b|\brins\w* (?:only )?(?:once|1)\b",
        r"\blime (?:juice|zest|leaves)\b",
        methods=frozenset({Method.VINEGAR_PICKLE}),
    ),
    Stage(
        ("smell", "smelt", "odo", "whiff", "pong", "stench", "tast", "drip", "streak", "dribbl",
         "trickl"),
        r"\b(?:pong|stench)\b|\btast\w* (?:\w+ )?(?:ferment\w*|off|fizzy|yeasty|boozy)\b|"
        r"\b(?:drips?|streaks?|dribbl\w*|trickl\w*) (?:\w+ ){0,2}down\b|"
        r"\b(?:smell\w*|smelt|odou?r|whiff)(?: \w+){1,3} (?:off|bad|foul|funny|weird|odd|strange|"
        r"wrong|awful|nasty|rotten|rancid|musty|yeasty|egg\w*|sulphur\w*)\b",
        rf"\b(?:{DENIED}|{NONE})\b",
        key=SPOILT,
    ),
    Stage(
        ("smell", "odo", "spat", "spit", "spray", "squirt"),
        r"\b(?:ferment\w*|sour|cheesy|winey|beery|yeasty) (?:smell|odou?r)|\b(?:spat|spit|"
        r"spray\w*|squirt\w*)(?: \w+){0,3} open",
        rf"\b(?:{DENIED}|{NONE})\b",
        key=SPOILT,
        methods=LIDDED - {Method.VINEGAR_PICKLE},
    ),
    # Nobody's process but the one who tried it, or one that is not trusted.
    Stage(
        ("own", "my", "our", "experiment", "trial", "book", "made", "trust", "unsafe", "safe",
         "danger",
         "iffy", "dodg", "suspicious", "suspect", "doubtful", "invent", "improvis"),
        r"\b(?:my|our|his|her)(?: own)? (?:own (?:recipe|times?|version|idea)|"
        r"method|invention|experiment|way of (?:cann|"
        r"process))\b(?! (?:beans|"
        r"tomatoes|garden|tree|crop|patch|hens))|\bexperiment\w*|\btrial (?:run|batch)|"
        r"\bimprovis\w*|"
        rf"\b{DENIED} (?:quite |exactly |really )?(?:by|from|as in|like) the (?:book|guide|recipe|"
        rf"table)s?\b|"
        rf"\b(?:made up|invented) (?:the|this|my|a)(?: own)? (?:recipe|time|method|process)|"
        rf"\b{DENIED} (?:\w+ )?(?:trust|rely on|safe)\b|\bunsafe\b|\bdangerous|\b(?:iffy|dodgy|"
        rf"suspicious|"
        r"doubtful)\b",
        r"\b(?:label|knife|peeler|spice|salt|flavou?r)\w*|"
        rf"\b(?:{DENIED}|{NONE}|nor) (?:(?:are|is|was|were|of|them|any|at|all|looks?|seems?) )*"
        r"(?:iffy|dodgy|suspicious|doubtful|unsafe|dangerous)\b",
    ),
)  # fmt: skip
