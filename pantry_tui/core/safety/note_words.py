"""Words of a note that speak of a process, of what went wrong with it, and of what is no part of
it: patterns for notes in small letters, one clause at a time, which stay text until a note is read:
most starts of the program read none. A choice of our own."""

from __future__ import annotations

from typing import NamedTuple

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.safety.denial import DENIED, LEFT_OUT, NONE
from pantry_tui.core.words import Method


class Stage(NamedTuple):
    """One way in which a stage goes wrong."""

    about: tuple[str, ...]
    """Beginnings of words, one of which a clause must have."""
    wrong: str
    """The pattern of what is doubted."""
    well: str = ""
    """The pattern of what is no part of it, or is well."""
    key: str = ""
    """What of a record it speaks of, "" of nothing that a key says."""
    methods: frozenset[Method] = LIDDED


def speaks(clause: str, of: tuple[str, ...]) -> bool:
    """Whether a word of the clause begins with one of these: asked first, so that a note which
    speaks of nothing is read without a pattern."""
    return any(word.startswith(of) for word in clause.split())


def any_of(words: str) -> str:
    """A pattern of any of these at the beginning of a word."""
    return rf"\b(?:{words})"


#: A proud word that says no more than the figure beside it, and a fault that there was none of.
AS_PUBLISHED = (
    r"\b(?:hardly|barely|scarcely) lost (?:any|a drop)(?: of)?(?: the| their)?(?: \w+)?|"
    r"\b(?:no|not any) (?:liquid|water|juice|brine|syrup) (?:was |is )?(?:lost|gone|missing)|"
    r"\bnot (?:a|1) drop(?: of \w+)? lost|\bmore vinegar than water|(?<=steam)"
    r" (?:(?!not|never|barely|hardly|scarcely)\w+ )?(?:poured|"
    r"came|flow\w*|stream\w*|billow\w*|puff\w*) out"
    r"(?! (?:of|at|round|around|from))|\b(?:turn|switch|"
    r"shut)\w*(?: \w+){0,3} off(?: \w+)? (?:after the (?:full )?"
    r"time|when the timer|when (?:it was|they were|time was)|at the end)(?: \w+)*|"
    # It rang, and what it rang after stands beside it.
    r"(?<!never )(?<!not )\b(?:timer|alarm|buzzer|bell) (?:(?:just|then|had|has) )?"
    r"(?:went|gone|goes|going|rang) off\b"
    r"(?! (?:early|late|too|before|by|half|while|when|twice|for))|"
    # Pressure is let fall by itself, and how long it took to rise is no time of the process.
    r"\b(?:let|allowed) (?:the )?pressure (?:to )?(?:drop|fall|go down|come down|return)(?: to "
    r"(?:0|zero))?(?: all)? (?:by itself|on its own|of its own accord|naturally)\b|"
    r"\b(?:came|come|got) up to pressure (?:in|within|after) (?:about )?\w+ min\w*|"
    # Beside a little that is lost a jar is good; a canner is not always full.
    r"\b(?:a )?(?:little|(?:tiny |wee )?bit of|touch of) (?:the |their )?(?:liquid|water|juice|"
    r"brine|syrup) (?:was |is )?(?:lost|gone|missing)\b(?! (?:from|out of|in) (?:the )?"
    r"(?:canner|pot))|\b\w+ jars? short of a (?:full )?(?:canner|load)\b|"
    r"(?:(?<!not )(?<!quite )\b"
    r"(?:just |exactly )?(?:as|like|by) (?:in |per )?(?:always|usual|ever|(?:the|my|our) "
    r"(?:book|guide|recipe|leaflet|table|chart)s?(?: says?)?|told)|\bexactly)(?!\w)"
)
NUMBER = r"\d+(?:\.\d+)?"
DEGREES = rf"(?<![\d.])({NUMBER})\s*(?:°|deg(?:rees)?\b)?\s*([cf])\b"
#: In place of a key: what no record of a process can put right.
SPOILT = "spoilt"
#: Of another year's batch, or of the next; last year's lids are of this one.
EARLIER = r"(?<!from )(?<!from the )(?<!topped up )(?<!added to )(?<!put to )" + any_of(
    r"(?:next|last|other|another) (?:time|year|batch|season|autumn|summer|fall)\b"
    r"(?!'s (?:lid|seal|flat|brine|vinegar|lemon|gasket))"
)
#: What it is for: "for mashed potatoes", "goes well with mushrooms", "to be pureed".
PURPOSE = (
    r"\b(?:for|to (?:eat|serve|go|be|use|make|put)|goes?|good|great|nice|lovely|best|serve[ds]?|"
    r"toss (?:it |them |hot |cold )*(?:with|in|into|through)|eat|use in|"
    r"went (?:in)?to (?:the )?(?:jam|sauce|juice|compost|hens|pigs|freezer)|will|"
    r"can be|before serving)\b(?! a while).*"
)
#: What was denied, and so is well: "never dropped below 11", "no trouble with the gauge".
NO_HARM = (
    rf"(?<!timer )(?<!alarm )(?<!clock )\b(?:{DENIED}|{NONE})(?: (?:a|an|any|once|1|1s|ever|even|"
    rf"really|the|of|them|at|all|"
    r"seals?|lids?|psi|pressure|gauge|jars?|it|to|need|use|using|used|from|with|went|go|gone|"
    r"came))* (?:drop(?:s|ped)?|dip(?:s|ped)?|fall|fell|fallen|sank|below(?: \d+)?|loss|lost|lose|"
    r"problems?|troubles?|issues?|interrupt\w*|stop(?:ped)?|fail\w*|leak\w*|bulg\w*|swollen|off|"
    r"low|wrong|broken|"
    r"unsealed|loose(?:ned)?|flex\w*|soft|siphon\w*|fresh|skip\w*|forg\w+|miss\w*|faulty|weak|"
    r"vinegar (?:smell|taste)|short|early|late|float\w*|mov\w*|budg\w*|waver\w*|"
    r"falter\w*|stray\w*|flicker\w*|chang\w*|left the (?:stove|kitchen|canner|room))\b"
    r"(?: (?:below|under|in pressure|of pressure))?"
)
#: A sealed jar that lost some of its liquid is sound, unless half of it is gone (National Center
#: for Home Food Preservation, from memory).
LITTLE_LOST = (
    r"\b(?:(?:a )?(?:little|bit of|touch of)|slight|slightly|minor|minimal|hardly any|some)"
    r" siphon\w*\b(?! (?:half|out half))|\bsiphon\w* (?:a )?(?:nothing|none|little|bit|slightly|"
    r"tad)\b"
)
#: What a process is made of. A timer that was misread is why a record was put right.
SUBJECT = any_of(
    r"pressure|psi|kpa|gauges?|dials?|canners?|steam|burner|stove|flame|propane|gas(?! bubbl)|"
    r"power|timer(?! misread)|timing|clock|the run|regulator|rocker|jiggler|petcock|"
    r"(?:process\w*|full|canning|real|run|whole) time|the time (?!to|of|i|we|for)|process(?:ing)?|"
    r"water level|boil(?:ing)? water|rolling boil|the boil"
)
TROUBLE = (
    r"\b(?:drop\w*|dip(?:s|ped|ping)?|fell|falls?|falling|fallen|los[et]|loss|losing|"
    r"(?<!on )low(?! (?:flame|heat|fire))|lower|sank|"
    r"sinks?|(?:went|was) down|below|under|short|shorter|wander\w*|fluctuat\w*|swung|unsteady|"
    r"uneven|"
    r"wrong|off|out|broken?|fail\w*|stuck|sticks|faulty|inaccurate|error|too (?:high|low)|"
    r"reads?(?! (?:true|right|well|correct|accurat|spot|\d+(?! (?:high|low|too|over|under|off))))|"
    r"reading|untested|unchecked|paus\w*|interrupt\w*|stop\w*|restart\w*|earl(?:y|ier)|late|"
    r"cut|died|misread|guess\w*|unsure|uncertain|doubt\w*|not|never|no|none|cannot|without|"
    r"barely|hardly|almost|nearly|not quite|leak\w*|hiss\w*|"
    rf"(?:is|are|was|were|do|does|did|ca|could|wo|would|has|had)n'?t|{LEFT_OUT}|ran out|blew|"
    r"trouble|problem\w*|struggl\w*|counted from|only)(?:\b|(?<!\w))"
)
#: What needs no other word.
WITHOUT_MORE = (
    r"\b(?:(?:came|went|fell) off the boil|(?:stopped|quit) boiling|"
    r"(?:barely|only|hardly) (?:boil|simmer)\w*|simmered in the canner|"
    r"under ?process\w*|lost track|miscount\w*|forgot to (?:time|start|set|turn|vent)|"
    r"(?:cut (?:it |them )?short|stopped early|(?:too|very) (?:early|soon|short)|"
    r"not long enough|minutes? (?:short|early|counted)|"
    r"(?:took|taken|pulled|removed|lifted)(?: \w+){0,4} early(?! (?:in|this|morning|evening)))|"
    r"siphon\w*|half (?:of )?(?:their|its|the) (?:water|liquid|brine|juice)|(?:lost|"
    r"losing) half(?!.*(?:crop|plants|harvest|row|bed))|"
    r"(?:liquid|water) (?:was |is |has )?(?:lost|low|gone)|lost (?:\w+ )?(?:of the )?liquid|"
    r"(?:stood|sat|left|waited|rest(?:ed)?\b.*\bjars)\b.*\bbefore "
    r"(?:(?:they|the jars|it) (?:went|got|could go) in|"
    r"going in|process|cann|(?:i|we) (?!lift|took|take|open|remov|unload|pull))\w*|quick releas\w*|"
    r"under (?:the )?(?:cold )?tap|force[ds]? cool\w*|opened (?:\w+ ){0,2}(?:early|soon|hot)|"
    r"to the brim|over ?(?:fill|pack)\w*|too (?:full|tight)\w*|un ?vented|"
    r"(?:not|never)(?: \w+)? (?:cover|submerg)\w*|never (?:came to|reached)|never boiled)\b|"
    rf"\b(?:{DENIED}|{NONE}|{LEFT_OUT}) (?:\w+ ){{0,2}}(?:vent|exhaust|lock|latch|head ?space)"
)
#: The jars were not under water that boils all the time.
WATER_LOW = (
    r"\b(?:ran?|run|running|boil\w*|went|goes|gone|cooked) dry\b|"
    r"\b(?:stuck|stick\w*|stood|stand\w*|pok\w+|peek\w+|peep\w+|rose|half|partly|part way|was|"
    r"were|is|are)(?: \w+){0,2} (?:out of|above|over) (?:the )?(?:boiling )?water\b|"
    r"(?<!lifted the )(?<!took the )(?<!taken the )(?<!pulled the )(?<!getting the )"
    r"\b(?:lids?|tops?|jars|rims?|caps?|necks?|shoulders?)(?: of the jars)? "
    r"(?:out of|above) (?:the )?water\b|\bnot(?: \w+){0,2} under ?(?:the )?water|"
    r"\bwater\b(?: \w+){0,4} (?:below|under|short of|half ?way up|(?:only|just|up|came) to"
    r"|reached) (?:the )?(?:lids?|tops?|jars?|rims?|necks?|shoulders?)\b|\b(?:at|to) (?:the )?"
    r"(?:neck|shoulder|lid|rim) (?:height|level)|\bpok\w* through\b|"
    r"\bboiled down below|\bwater (?:level )?(?:was |is )?"
    r"(?:too |very )?(?:low|shallow)\b|\b(?:too little|not enough|low) water in the canner"
)
#: Beginnings of words, one of which is in whatever the pattern of that name finds.
OF_DENIAL = ("no", "never", "without", "zero", "minus", "sans", "w/o", "cannot")
FAILING = (
    *OF_DENIAL, "hardly", "barely", "scarcely", "fail", "unable", "struggl", "refus", "neglect",
    "forg", "skip", "omit", "miss", "lack", "left", "leav", "ran", "run", "gave", "instead",
    "rather", "too", "fought", "battl", "hard", "difficult", "trouble", "un",
)  # fmt: skip
OF_LOSS = (
    "came", "went", "fell", "stop", "quit", "barely", "only", "hardly", "simmer", "under", "lost",
    "losing", "miscount", "forgot", "cut", "early", "too", "very", "short", "long", "min", "took",
    "taken", "pulled", "removed", "lifted", "siphon", "half", "liquid", "water", "stood", "sat",
    "left", "waited", "quick", "force", "open", "brim", "over", "full", "tight", "un", "no",
    "never", "without", "skip", "omit", "forg", "miss", "lack", "ran", "run", "leav", "tap", "rest",
)  # fmt: skip
OF_WATER = ("dry", "water", "under", "boiled", "pok", "jar")
OF_TIME = (
    "tim", "min", "hour", "long", "early", "clock", "count", "start", "less", "few", "short",
    "half", "third", "quarter", "part", "guess", "cut", "last", "round",
)  # fmt: skip
#: It had less time than it should, or nobody knows how much.
TIME_SHORT = (
    r"\b(?:not (?:for )?the (?:full|whole) (?:\w+ )?time|"
    r"(?:turned|switched|shut)(?: \w+){0,4} early(?! (?:in|this|morning|evening))|"
    r"(?:minutes?|mins?|hours?|time)(?: or \w+)? (?:too )?(?:short|early|less|fewer|shorter|few)|"
    r"(?:few|less|fewer) (?:minutes|mins|time)|"
    r"(?:half|third|quarter|part) (?:of )?the (?:\w+ )?time|"
    r"(?:half|less|nearly|almost|not quite) (?:as |so )long|"
    r"(?:cut|halved|shortened|reduced|trimmed|shaved|docked|skimped) (?:on )?the (?:\w+ )?time|"
    r"(?:shav|knock|trimm?|drop|dock)\w* (?:\w+ ){1,3}(?:minutes?|mins?) off|"
    r"short of (?:the )?(?:\w+ )?time|rounded? (?:it )?down|shorter (?:time|than)|"
    r"used (?:the )?(?:\w+ ){0,3}?times? (?:for|of|from|off)|used (?:the )?(?:\w+ ){1,2}times?$|"
    r"times? for \w+ (?:by mistake|in \w+)|shortened (?:it|them)|(?:gran\w*|mum|mom|nan|aunt\w*|"
    r"neighbou?r|friend|mother|granny)'s (?:old )?(?:times?|timing|minutes)|"
    r"(?:skipp?ed|left off|left out|missed) the last (?:\d|few|minute|part|quarter|half)\w*)\b"
)
TIME_GUESSED = (
    r"\b(?:tim(?:e|ed|ing)|minutes)\b.*\b(?:guess\w*|by (?:feel|eye|ear|instinct|nose|heart)|"
    r"roughly|unsure|unknown)\b|\bguess\w* (?:at )?(?:the |its )?(?:time|timing|minutes)|"
    r"\bnot timed?\b(?= (?:it|them|the)\b|$)|\bnot (?:watch|look at) the (?:clock|time)|"
    r"\b(?:no|without a) (?:timer|clock)\b"
)
#: The clock runs from the boil, or from full pressure (USDA AIB 539, guide 1).
TIMED_FROM = (
    r"\b(?:start\w* (?:\w+ )?(?:timing|counting|timer|clock)|timed|timing|counted|(?:clock|timer)"
    r"(?: \w+)? (?:started|start|set|ran|running|on))\b(?: \w+)* (?:too early|early|"
    r"before (?:it |they |the |we |i )?(?:\w+ ){0,2}(?:boil|pressure|steam|vent|came|reached|full)|"
    r"(?:from|since|as soon as|when)\b(?! (?:when |it |the |a |they |full |rolling |water |canner "
    r"|pot |had |was |at |needle |dial |gauge |weight |rocker )*"
    r"(?:boil|full|rolling|came|come|reached|pressure|steam|vent|jiggl|rock|danc|hit|showed|read|"
    r"\d+(?! min))))"
)
#: Time that is of something else, or is well: a quick day, and no quick process.
TIME_ELSEWHERE = (
    r"\b(?:blanch|soak|steep|roast|cook(?! ?book)|simmer|took\b|takes\b|peel|pick|driv|drain|"
    r"brown|fry|fri|"
    r"rest(?:ed|ing)?\b|macerat|in half the time|prep|work|than (?:last|the year|in )|"
    r"before serving|set in|stir|wash|chop|spent|for next|vent)"
)
#: Time, weight and warmth that are of something else.
OTHER_TIME = any_of(
    r"rest\w*|stand\w*|stood|sat|sit|soak\w*|simmer\w*|blanch\w*|cook\w*|cool\w*|steep\w*|stir\w*|"
    r"roast\w*|bak\w*|boil(?:ed|s)?|pick\w*|prep\w*|peel\w*|drain\w*|driv\w*|walk\w*|took|takes|"
    r"heated|steril\w*|reheat\w*|serv\w*|wash\w*|chill\w*|freez\w*|marinat\w*|ago|later|until|"
    r"set|work|away|from|late|visit\w*|harvest\w*|shell\w*|chop\w*|per day|ferment\w*|warm\w*|"
    r"wait\w*|dry|dried|drying|dehydrat\w*|brin(?:ed?|ing)|salted|marinat\w*|out of the cold"
)
#: Time in the canner after its heat was off (NCHFP rests jars in it for ten minutes).
RESTED = any_of(r"rest\w*|stood|stand\w*|sat|sit|cool\w*")
OF_PROCESS = any_of(
    r"bath\b|process\w*|canner|canned|pressur\w*|psi|water bath|in the (?:bath|pot)"
)
ONLY = any_of(r"only|really|actually|real|instead|truth|not \d|just|under|less than|short")
OTHER_WEIGHT = any_of(
    r"pick\w*|harvest\w*|bought|from|yield\w*|weigh\w*|of (?!pressure)|box|bag|bushel|used|made|"
    r"sugar|salt|per|each|bucket|total"
)
FILLED_FROM = any_of(
    r"pick\w*|harvest\w*|bought|from|yield\w*|made|bucket|total|"
    r"used(?! (?:the |a |half )*(?:quart|lit|gallon))"
)
OTHER_DEGREES = any_of(
    r"kept|stor\w*|pantry|larder|cupboard|basement|cellar|room|shelf|outside|outdoors|day|"
    r"weather|oven|roast\w*|fridge|"
    r"kitchen|freez\w*|jam|set|candy|sheet"
)
#: Of what lay in a dryer before it went into jars.
DRIED_BEFORE = any_of(r"dried|drying|dehydrat\w*")
ALTITUDE = any_of(r"altitude|elevation|above sea|sea level|up at")
#: Nobody thought of it: "forgot the altitude", "did not adjust for altitude".
ALTITUDE_LEFT_OUT = (
    rf"\b(?:{DENIED}|{LEFT_OUT}|without|ignor\w*|unsure|wrong|guess\w*)\b(?: \w+){{0,4}} "
    rf"(?:altitude|elevation)\b(?!.*\b(?:need|necess|matter))|"
    rf"\b(?:altitude|elevation)\b(?: \w+){{0,2}} (?:{DENIED}|{LEFT_OUT}|ignored|unsure|unknown|"
    r"wrong)(?!\w)"
)
NEED = r"\bnot (?:need|have) to\b|\bno need\b|\bunnecessary\b"
#: Put up in another house, in another town.
AWAY = (
    r"\b(?:cann\w*|process\w*|put up|jarred|bottled|made|done|cooked)\b(?: \w+){0,2} at"
    r"(?: \w+(?:'s)?){1,3}? in (?!the (?:kitchen|garden|yard|evening|morning|afternoon|house|barn)"
    r"|\d|an?\b|my\b|our\b|half\b|batches|time\b|quarts|pints|jars|spring|summer|autumn|fall|"
    r"winter|(?:jan|febr)uary|march|april|may\b|june|july|august|(?:sept|nov|dec)ember|october)\w+"
)
HIGH_UP = any_of(
    r"(?:made|canned|done|put up|processed|live) at altitude|high altitude|high elevation|"
    r"in the (?:\w+ )?mountains|up here|up in the (?:mountains|hills)|"
    r"(?:at|up at) (?:the |our )?(?:cabin|lodge)|different altitude|higher up"
)
#: Jars that stood in water that boils, not food that was covered with it.
BATH = (
    r"(?<!with )(?<!added )(?<!poured )(?<!filled )(?<!of )(?<!on )(?<!over )(?<!cup )"
    r"\bboiling water\b(?! (?:over|poured|on top|added|to (?:cover|within|the|leave|\d)))|"
    r"\bwater ?bath(?:ed)?\b"
)
LIDS = any_of(r"lids?|seals?|caps?|popped|unsealed|sealing|vacuum")
#: Said of lids, and no failure; nobody looked yet; rings are taken off what is well sealed; and a
#: lid pops down as its jar seals.
LIDS_MAY_BE = (
    r"\b(?:rings?|bands?|label\w*|check\w*|machine|sealer|bag|"
    r"pop\w*(?: \w+){0,3} in the (?:night|evening|morning)|pop\w* (?:down|as|while|in the|right|"
    r"at (?:midnight|breakfast|\d+|lunch|supper|dinner|last|"
    r"dawn))|not (?:touched|moved|disturbed)|one[ -]piece|new lids|colou?r|brand|"
    r"not boiled|canner lid|recycl\w*|away from (?:me|us|you|my|the face))\b|\bhear\w*|"
    # The canner's own lid comes off before jars are lifted out (USDA AIB 539, guide 1).
    r"(?<!\ba )(?<!\b1 )(?<!came )(?<!is )(?<!was )\blid off\b(?! (?:a|1|the|in|by|of)\b)|"
    r"\b(?:every|each|all)\b(?: \w+){0,3} popp?(?:ed|ing|s)\b(?! (?:back |right )?(?:up|off|open))"
)
SEAL_TROUBLE = (
    r"\b(?:soft|spongy|popp?(?:ed|s|ing)?(?: back)? up|popped(?! down)|sank|came up|"
    r"(?:weak|poor|bad|doubtful|second)(?: \w+)? seals?|"
    r"gave|re ?sealed|re ?used|bent|dented|rust\w*|"
    rf"unsure|un ?even)\b|\b(?:{DENIED}) (?:\w+ )?(?:hold|held|tight|down|stick|stay|seal)"
)
#: Against lime on the glass, and in no jar.
VINEGAR_OUTSIDE = (
    r"\bvinegar\b(?: \w+){0,2} (?:in|into|to) (?:the )?"
    r"(?:canner|canning|rins\w+|water bath|bath|steamer|kettle)\b(?: water)?"
)
ACID = (
    r"\b(?:lemons?|limes?|citric|acid|vinegar)\b"
    r"(?! (?:peel|zest|rind|grass|balm|thyme|verbena|basil|slices?|wedges?|pepper|taste|smell))"
)
ACID_SHORT = (
    r"\b(?:half|halved|less|only|some|few|last|fresh|freshly|tree|home ?made|own|weak\w*|"
    r"dilut\w*|water(?:ed)?|short|too little|little|instead|the first|first (?:few|load|batch|"
    r"ones|jars?|\d)|second|third|except|all but|most|"
    r"substitut\w*|swapp\w*|not (?:in )?(?:all|every|each|enough)|(?:1|2|3) (?:jars?|of)|scant|"
    rf"squeeze[ds]?|cordial|not bottled|(?:without|no) (?:a |any )?label|splash|dash|drop|wedge|"
    rf"unknown|un ?label\w*|un ?mark\w*|mystery|expired|old|skimp\w*|"
    rf"unsure|guess\w*|reduced|cut|{LEFT_OUT})(?!\w)"
)
LOW_ACID = (
    r"\b(?:low(?:er)? (?:in )?acid\w*|less acid\w*|acid free|not (?:very |at all )?acidic)\b"
    r"(?! (?:foods?|vegetables?|beans))"
)
#: Less of it than the recipe has, or than the record says.
SALT_CUT = (
    r"\b(?:cut|cutting|halv(?:ed|ing)|reduc(?:ed|ing)|half|skimp\w*|lower(?:ed)?|scant|hardly any|"
    r"barely any|short (?:of|on)|easy on|light on|too little|not much|little|ran low on|stint\w*|"
    r"(?:a |one )?(?:third|quarter))(?: (?:on|the|of|its|my|back|down|out|as|much))* "
    r"salt\b(?! (?:water|shaker|box|free|cod|pork))|"
    r"\bless salt than (?:the |it |is |was |my |our )*(?:recipe|says?|written|need\w*|call\w*|"
    r"usual|normal|publish\w*)|"
    r"\bsalt (?:was |is |went )?(?:right |well |way )?(?:down|short|halved|reduced|cut|scant)\b"
)
FROST_KILLED = r"(?<!before )(?<!before the )(?<!ahead of the )(?<!no )" + any_of(
    r"frost|blight\w*|frozen vines?|(?:dead|dying|dried up) (?:vines?|plants?)|frost killed|"
    r"killed vines?"
)
NO_LIQUID_ADDED = any_of(r"(?:no|without)(?: added)? (?:water|liquid|juice)(?: added)?\b")
FAT_REMOVED = (
    r"\b(?:trimm|cut|remov|took|skimm)\w*(?: off)?(?: (?:the|all|most|of|its))* (?:fat|lard)\b|"
    r"\b(?:fat|lard) (?:was |all |is )?(?:trimm|skimm|remov|lift|taken)\w*(?: off)?"
)
#: What rises from meat and stock by itself.
FAT_OF_ITS_OWN = (
    r"\b(?:layer|cap|film|skin|cake|ring|bit|little|some|solid|white) (?:of )?fat\b"
    r"(?! (?:added|put))|"
    r"\bfat (?:has |had |is )?(?:on top|ring|collar|rose|risen|set|cap|layer|at the top|floating)\b"
)
#: No thickener but the published one (clear modified starch, in pie fillings) is in a tested
#: process (USDA AIB 539, guides 1 and 2), and fat shields spores from heat.
THICKENED = (
    r"\b(?:thicken\w*(?! well)|corn ?starch|corn ?flour|flour(?! sack)|roux|arrowroot|tapioca|"
    r"gravy|noodles?|pasta|macaroni|rice|barley|dumplings?|bread ?crumbs?|cream(?:ed)?|milk|"
    r"butter|"
    r"bacon|lard|cheese|olive oil|oil|fat)\b(?! (?:ones|stalks?|stems?|pods|cucumbers|ripe|"
    r"beans?|sack|squash|"
    r"smooth|vinegar|chard|lettuce|corn|yellow))(?<!peanut butter)"
)
ADDED = (
    r"\b(?:with|added|adding|plus|and|extra|threw in|put in|mixed with|topped with)\b"
    r"(?: (?:a|an|some|the|whole|fried|chopped|raw|lots? of|few|handful of|\d+|"
    r"clove of|more|roasted|of|and|dried|fresh|cooked|minced|diced|sliced|green|red|bell|sweet))*"
    r" (onions?|peppers?|garlic|mushrooms?|celery|carrots?|corn|beans|peas|potatoes|squash|"
    r"zucchini|meat|beef|pork|chicken|ham|sausages?|eggplants?|cabbage|lentils|spinach|okra)\b"
)
