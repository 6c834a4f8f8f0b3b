"""What a note says against the heating of jars, stage by stage: whether there was any, what burned
under it, pressure, vent, boil, water and time, and how they cooled. The stages themselves are as in
USDA AIB 539, guide 1; which words are doubted is a choice of our own, the stricter one.
"""

from __future__ import annotations

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.safety.denial import DENIED, NONE
from pantry_tui.core.safety.note_words import FAILING, Stage
from pantry_tui.core.words import Method

_PRESSURE = frozenset({Method.PRESSURE})
_IN_WATER = LIDDED - _PRESSURE
#: It was not done, or could not be.
_FAILED = (
    rf"(?:{DENIED}|{NONE}|cannot|hardly|barely|scarcely|fail(?:ed|s)? to|unable to|"
    r"struggl\w* (?:to|with)|fought to|battl\w* to|hard to|difficult to|trouble|refus\w* to|"
    r"neglect\w* to|forg[eo]t\w* (?:to|about)|skip\w*|"
    r"gave up(?: on)?|instead of|rather than|too (?:tired|late|busy|hot|lazy) (?:to|for))"
)
#: Between that and what was not done.
_SO = (
    r"(?: (?:get|got|gotten|getting|round|around|to|bother\w*|with|the|any|them|these|those|it|"
    r"really|even|actually|ever|quite|having|have|had|time|for|manage\w*|been|be|was|were|all|a|an|"
    r"jars?|need\w*|find|found|chance|in|of|up|full|rolling|real|proper(?:ly)?|on|hot)){0,6}"
)
_HEATED = (
    r"(?:process(?:ed|ing)?|(?:water )?bath(?:ed|ing)?|can(?:ned|ning)?(?! \w+ ?more)|canner|"
    r"boil(?:ed|ing)?|sterili[sz]\w*|pasteuri[sz]\w*|heat(?:ed|ing)? treat\w*)"
)
_NO_MORE = (
    r"(?! (?:again|more|longer|over|down|dry|away|twice|any ?more|enough jars|lids?|rings?|salt|"
    r"a |an |such |so |as |better|nicer|the (?:lids?|jars? (?:first|before)|rings?)|corn|"
    r"(?:\w+ ){0,3}(?:before|first|in my life)$))"
)
_MIDWAY = (
    r"\b(?:half ?way|mid ?way|mid (?:run|process)|in the middle|part ?way|for (?:a|some) "
    r"(?:bit|while|time|moment|minutes?)|for \d+ min\w*|brief\w*|by (?:mistake|accident)|"
    r"accident\w*|mistak\w*|too (?:soon|early)|before (?:the |its )?(?:time|end)|back on|"
    r"twice|again|early|without (?:me|us|asking)|behind my back|during|while (?:it|they|i|we))\b"
)
_SOMEBODY = (
    r"\b(?:kids?|child(?:ren)?|son|daughter|husband|wife|someone|somebody|he|she|they|toddler|"
    r"boys?|girls?|mum|mom|dad|gran\w*|guests?|neighbou?rs?|cat|dog|baby|partner|brother|sister)\b"
)
_OVER_NIGHT = (
    r"\b(?:over ?night|all night|(?:un)?till? (?:the )?(?:next )?(?:morning|day|evening)|"
    r"next (?:day|morning|afternoon|evening)|(?:un)?till? (?:mon|tues|wednes|thurs|fri|satur|"
    r"sun)day|(?:the )?(?:day|morning) after|for (?:hours|days)|all (?:day|afternoon)|"
    r"(?:a|1|2|3) days?)\b"
)

HEATING: tuple[Stage, ...] = (
    # Pressure that is not named: it fell, or was let off, before its time.
    Stage(
        ("drop", "fell", "dip", "sank", "it", "needle", "under", "below"),
        r"^(?:(?:it|needle|that|this|just|also|only|then|once|twice|kept|a bit|did) )*"
        r"(?:dropp?(?:ed|ing)|drop|fell|dipp(?:ed|ing)|sank)"
        r"(?: (?:a|bit|little|lot|some|once|twice|again|back|down|away|briefly|slightly|short\w*|"
        r"at|near|towards|the|end|half ?way|mid ?way|in|middle|for|while|"
        r"\d+|times?|min\w*))*$|"
        r"\b(?:dropp?(?:ed|ing)|fell|dipp(?:ed|ing)|sank|slipped|went)(?: \w+)? (?:below|under|"
        r"down to|beneath) \d+(?:\.\d+)?(?: ?(?:lbs?|pounds?|psi))?\b(?! ?(?:°|deg|f\b|c\b|feet|ft|"
        r"in\b|inch|days?|years?))",
        rf"\b(?:{DENIED}|floor|foot|toe|jar (?:fell|dropp)|prices?|temp\w*|leaves|petals|tree)\b",
        methods=_PRESSURE,
    ),
    Stage(
        ("weight", "regulator", "petcock", "rocker", "jiggler", "lid", "vent"),
        r"\b(?:took|taken|tak(?:e|ing)|lift\w*|remov\w*|pull\w*|knock\w*|opened|open|tipp\w*)\b"
        r"(?: \w+){0,3} (?:weight|regulator|petcock|rocker|jiggler|vent)\b(?: \w+){0,2} "
        r"(?:before|early|too (?:early|soon)|while|straight (?:away|off)|right away|at once|"
        r"to (?:speed|hurry|let|cool|bring|drop)|so (?:it|that))\b",
        rf"\b(?:{DENIED} (?:\w+ )?(?:before|until)|waited|after it)\b",
        methods=_PRESSURE,
    ),
    # No process at all.
    Stage(
        (*FAILING, "meant", "intend", "plan", "want", "suppos", "going", "hop", "should", "ought",
         "thought", "only", "could", "superfluous", "overkill", "pointless"),
        rf"\b{_FAILED}{_SO} {_HEATED}\b{_NO_MORE}|"
        r"\b(?:meant|intend\w*|plann\w*|wanted|supposed|going|hoped|(?:should|ought to|could) have)"
        rf"(?: to)?{_SO} (?:process\w*|can|canned|boil\w*|bath\w*|pressure|heat\w*|vent\w*)\b"
        r"(?! (?:more|another|also|some|twice|the rest|less|fewer|\d+|extra|early|earlier|quarts|"
        r"pints))|\bthought (?:that )?(?:i|we|they|these) (?:had|were|did)\b|"
        r"\bonly (?:blanch|cook|heat|boil|scald)\w* (?:and|then) (?:bottl|jarr|pack|fill)|"
        r"\b(?:bath|process\w*|boil\w*|canner)\b.*\b(?:unnecess\w*|not need\w*|superfluous|"
        r"overkill|"
        r"pointless|needless)|\bno (?:boiling|bath|process\w*|cann\w*) (?:need|necess|requir)\w*",
        rf"\b{DENIED} (?:boil\w*|heat\w*) (?:the )?(?:lids?|rings?)|\bneed to (?:can|process)\b|"
        r"\b(?:lids?|rings?|bands?) (?:\w+ )?(?:not|never) boil",
    ),
    Stage(
        ("seal", "self", "lid", "upend", "trust", "rel", "let", "on"),
        r"\bseal\w*\b.*\b(?:(?:on|of) (?:their|its) own|by (?:them|it)sel\w+|themselves|"
        r"without (?:boil|process|cann|heat|a bath|bath|water)\w*|from (?:the|their) (?:own )?heat|"
        r"with (?:the|their) (?:own )?heat|(?:its|their) own heat|without$)|\bself ?seal\w*|"
        r"^sealed (?:them |it )?hot$|"
        r"\b(?:trust|rel[iy])\w* (?:on |in )?(?:the )?(?:own )?(?:heat|vacuum|seals?|sugar)\b|"
        r"\blet (?:them|the jars|the lids) (?:pop|ping)\b|\bon (?:its|their) heads?\b|\bupend\w*|"
        r"\bleft to seal\b|\b(?:went|popped|pulled|sucked) down (?:alone|by themselves|"
        r"on their own|without)\b|\blet (?:them|the jars|it|the lids|these) seal\b",
    ),
    Stage(
        ("just", "simply", "done", "that", "shelf", "shelves", "larder", "pantry", "cupboard",
         "cellar"),
        r"\b(?:just|only) (?:hot )?(?:brine|jam|syrup|juice|liquid) and (?:a )?lids?\b|"
        r"\b(?:lids?|lidded|jars?|brine|poured)\b.*\b(?:that was (?:it|that|all)|and done)\b|"
        r"\b(?:just|simply|only) (?:pour|fill|ladl|jarr|bottl|spoon|lidd|capp|screw)\w*\b|"
        r"\b(?:straight|directly|right|hot|still hot|warm) (?:on|on ?to|to|in|into|"
        r"off to) (?:the |a "
        r"|my )?(?:shelf|shelves|larder|pantry|cupboard|cellar)\b|\b(?:on|to) (?:the )?"
        r"(?:shelf|shelves) (?:\w+ )?(?:hot|warm|straight|at once|same (?:day|evening))\b",
        r"\b(?:then|process\w*|bath\w*|canner|tested|checked|24|next day|just filled (?:7|9|"
        r"\d+) )\b",
    ),
    Stage(
        ("boil", "bath", "instead", "like"),
        r"\b(?:boil|bath|steam)\w*\b(?: \w+){0,3} (?:instead|for a change)\b|\binstead of (?:the )?"
        r"(?:pressure|canner|canning)|\blike (?:the )?jams?\b",
        methods=_PRESSURE,
    ),
    # The heat under it.
    Stage(
        ("turn", "switch", "shut", "knock", "mov", "took", "slid", "pull", "bump", "drag", "put"),
        rf"^(?=.*(?:{_MIDWAY}|{_SOMEBODY})).*\b(?:turn|switch|shut|knock|mov|took|slid|pull|bump|"
        r"dragg|put)\w*\b(?: \w+){0,4} (?:off|down|away|(?:flame|fire|gas|burner|heat) out)\b",
        r"\b(?:after|once|when) (?:\d+|the (?:full|time|timer|end|\d+)|it was done|they were done|"
        r"done|time)|\bat the end\b|\b(?:fan|radio|light|phone|oven|labels?)\b|"
        r"\b(?:took|pulled|knocked|put|slid) (?:the |all )?(?:lids?|rings?|bands?)\b",
    ),
    Stage(
        ("fiddl", "tamper", "mess", "knob", "it", "canner", "pot"),
        r"\b(?:fiddl|tamper|mess)\w* with (?:the )?(?:knobs?|controls?|stove|hob|heat|dial|gauge|"
        r"valve|"
        r"weight|canner)|\b(?:it|canner|pot) (?:went|had gone|was|got) (?:stone |quite )?cold\b",
        r"\b(?:until|till|before|when) (?:it|the)\b|\bday\b|\bnight\b|\boutside\b",
    ),
    Stage(
        ("power", "electric", "current", "fuse", "gas", "flame", "burner", "stove", "hob", "heat",
         "fire", "fuel", "propane", "element", "generator", "wood", "cooker", "bottle", "range",
         "blackout", "brownout", "black", "brown", "outage", "breaker", "plate", "ring", "pilot"),
        r"\b(?:power|electric\w*|current|fuses?|breaker|gas(?: bottle)?|flame|burner|stove|hob|"
        r"heat|"
        r"fire|fuel|propane|element|generator|range|cooker|pilot(?: light)?)(?: \w+){0,2} "
        r"(?:blip\w*|dipped|hiccup\w*|"
        r"(?:cut|timed) out|(?:switched|turned|shut|reset) (?:itself|the)|"
        r"(?:was )?off (?:for a|by accident|by mistake|then|a (?:bit|minute|moment|while))|"
        r"went(?! (?:off|down|up|on|well|"
        r"straight) after)|gone|died|dies|dying|cut|failed|tripped|flicker\w*|blew|quit|stopped|"
        r"dropped|fell|sputter\w*|faded|lost|ran|weak\w*|tripping|(?:was|too|ran|got|running|"
        r"going) low|off and on|twice|up and down|came back|blown|dead|empty)\b|"
        r"\b(?:ran|run|running|was|were) (?:clean )?out of (?:gas|propane|fuel|power|wood|steam|"
        r"heat|electric\w*)\b|\b(?:lost|no) (?:the )?(?:power|gas(?! bubbl)|flame|heat|electric\w*|"
        r"current)\b|\b(?:plate|ring|hob) (?:\w+ )?went cold\b|\bre ?(?:lit|light)\b|\bup and "
        r"down\b|\b(?:propane|gas|bottle) froze\b|"
        r"\b(?:black|brown) ?out\b|\boutage\b|\bpower (?:cut|failure)\b",
        r"\b(?:saved|cheap|bill|price|steady|after (?:they|it|we|the jars|everything) )",
        methods=LIDDED,
    ),
    Stage(
        ("interrupt", "missing", "restart", "resum", "carr", "continu", "picked", "kept", "went",
         "brought", "back",
         "count"),
        r"\b(?:re ?start|resum|carr(?:y|ied) on|continu|picked up|kept on|"
        r"went on)\w*(?: \w+){0,3}? "
        r"(?:where|from where|count\w*|timing|regardless|any ?way|as if|timer|clock)\b|"
        r"\bbrought (?:it|the pressure|her|them) back\b|\binterrupted\b|\bmissing minutes?\b|"
        r"\bcount\w* (?:on\b|through|regardless|"
        r"any ?way)|"
        rf"\b{DENIED} (?:\w+ )?(?:re ?start|start (?:\w+ ){{0,2}}(?:again|over))\w*|"
        r"\bback up (?:to \d+|again|to (?:pressure|the boil))\b",
    ),
    # Pressure, and what shows or holds it.
    Stage(
        ("needle", "dial", "gauge", "pressure", "psi", "rocker", "weight", "jiggl", "petcock",
         "plug", "gasket", "valve", "regulator", "ring", "vent", "steam", "clamp", "pipe", "handle",
         "lug", "wing", "canner", "rock", "rattl", "danc", "rubber", "zone", "green", "range"),
        rf"\b(?:{DENIED}|{NONE})\b(?: \w+){{0,4}} (?:jiggl|rock|rattl|danc)\w*\b(?! (?:bed|road))|"
        r"\b(?:half|less|lower)(?: the| of the)? (?:pressure|psi|pounds)\b|"
        r"\bplug went\b|\bout of (?:the )?(?:green|zone|range)\b|\b(?:canner seal|"
        r"seal of the canner|rubber)\b.*\b(?:perish\w*|crack\w*|hard|split|torn|worn)\b|"
        r"\bgasket\b.*\b(?:old(?:er)?|hard|brittle|dried|dry|leak\w*|shrunk\w*)\b|"
        r"\b(?:gauges?|dials?|weight)\b.*\b(?:disagree\w*|differ\w*|apart|argue\w*)|"
        r"\b(?:pipe|handle|lugs?|wing ?nuts?|canner)\b(?: \w+){0,4} (?:snapp\w*|broke\w*|block\w*|"
        r"clog\w*|bent|crack\w*|plugged)\b|"
        r"\b(?:needle|dial|gauge|pressure(?! (?:can|cook))|psi|rocker|weight|jiggler|petcock|plug|"
        r"gasket|valve|regulator|sealing ring|vent pipe|steam vent|clamps?)\b.*\b(?:sagg?\w*|"
        r"slipp?\w*|split|crack\w*|torn|tore|perish\w*|worn|missing|makeshift|tape\w*|home ?made|"
        r"silent|still as|patchy|jittery|erratic|shaky|fell|slump\w*|yo ?yo\w*|jamm\w*|all over|"
        r"jump\w*|bounc\w*|flicker\w*|"
        r"wobbl\w*|crept|creep\w*|drift\w*|hover\w*|"
        r"swing\w*|gone(?! before)|blow\w*|blew|open(?! after)|flea|second hand|bent|loose|stuck|"
        r"block\w*|clog\w*|never|went (?:away|flat)|stopped|up and down|all over|rust\w*|"
        r"(?:is|are|was|were|do|does|did|ca|could|wo|would|has|had) not)\b|"
        r"\bsteam\b(?: \w+){0,4} (?:past|round|around|from under) the (?:seal|lid|rim|gasket|edge)|"
        r"\b(?:lost|broke|tore|melted|burnt?|ruined|forgot|no|without) (?:the |its |a |my )?"
        r"(?:gasket|weight|rocker|jiggler|regulator|plug|petcock|dial|gauge)\b",
        r"\b(?:until|till|wait\w*|let) (?:\w+ ){0,4}(?:pressure|gone|zero|0)\b|"
        r"\b(?:needle|pressure|gauge) (?:never|not) (?:\w+ )?(?:moved?|budged?|wavered|left|"
        r"fine)\b|"
        r"\bweigh(?:t|ing) of\b|\b(?:opened? (?:the )?petcock|valve opened)\b|\bnever better\b",
        methods=_PRESSURE,
    ),
    Stage(
        ("vent", "exhaust", "weight", "regulator", "petcock", "steam", "rocker", "purg",
         "air"),
        r"\b(?:vent|exhaust|purg)\w*\b(?: \w+){0,2} \b(?:[0-9]|hurr\w*|rush\w*|few|short\w*|"
        r"quick\w*|brief\w*|"
        r"barely|hardly|bit|moment|seconds?|couple|less|half)\b(?! times)|"
        r"\b(?:barely|hardly|briefly|quickly|scarcely|only) (?:vent|exhaust)\w*|"
        r"\b(?:weight|regulator|rocker|petcock|jiggler)(?: (?:was|went|put|set|shut|closed))? "
        r"(?:on|closed|shut|down)?\b.*\b(?:straight|right (?:on|away|off)|at once|immediately|"
        r"as soon|from the (?:start|beginning)|too (?:soon|early)|before (?:the |any )?(?:steam|"
        r"vent)\w*|"
        r"without)\b|\b(?:forgot|missed|skipped) (?:the )?(?:vent|exhaust|weight|petcock)\w*|"
        rf"\b{DENIED} (?:\w+ )?wait\w* (?:for|until|till) (?:the )?(?:steam|vent)|"
        rf"\b(?:{DENIED}|{NONE}) (?:\w+ )?(?:purg|driv|clear|exhaust)\w*\b|"
        r"\b(?:vent|exhaust)\w* (?:\w+ )?(?:skipp|omit|left out|forg)\w*|"
        rf"\bair (?:was )?{DENIED} (?:driven|purged|let|vented|out|cleared)|"
        rf"\bsteam (?:{DENIED}|barely|hardly|scarcely)\b(?: \w+){{0,2}} (?:c[oa]me|flow\w*|"
        r"pour\w*|stead\w*|escap\w*|show\w*)",
        r"\b(?:jiggl\w*|rock\w*) (?:straight|at once|right|as soon)|\b(?:room|window|kitchen)\b|"
        r"\b[7-9] (?:jars|pints|quarts)\b|\bafter\b.*\bvent",
        methods=_PRESSURE,
    ),
    Stage(
        ("open", "unl", "took", "lift", "flick", "knock", "remov", "tipp", "cold", "sink", "snow",
         "tap",
         "ice", "water", "creek", "river", "stream", "pond", "lake", "rain", "running", "fan",
         "wet",
         "damp", "hos", "cool", "rush", "forc", "bled", "let", "releas", "pull"),
        r"\b(?:open|unlock|unload|unlatch)\w*\b(?: \w+){0,4} (?:straight|at once|immediately|"
        r"right (?:away|after|then)|too soon|early|soon|while|under pressure|still)\b|"
        r"\b(?:took|lift\w*|pull\w*|flick\w*|knock\w*|remov\w*|tipp\w*) (?:off )?(?:the |its )?"
        r"(?:weight|rocker|regulator|jiggler|lid)\b(?: off| up)?(?: \w+){0,2}? (?:straight|at once|"
        r"immediately|right (?:away|after)|too soon|early|while|to (?:save|speed|hurry|cool|let|"
        r"release|get|bleed))|\b(?:cold |iced? )?water (?:over|on|onto) (?:it|the (?:canner|lid|"
        r"pot|top))\b|"
        r"\b(?:canner|it|pot|thing) (?:\w+ ){0,3}(?:in|into|under) (?:the |a |some )?(?:cold )?"
        r"(?:sink|snow|tap|stream|pond|water trough|bath of)\b|"
        r"\b(?:wet|damp|cold|iced?) (?:cloths?|towels?|rags?)\b|\bhos(?:e|ed|ing)\b|\b(?:ice|"
        r"snow) (?:on|over|round)\b|"
        r"\bcool\w* (?:\w+ )?(?:too )?(?:fast|quick\w*|rapid\w*|under|in (?:the |a |"
        r"some )?(?:snow|creek|"
        r"stream|river|lake|sink|rain|pond))\b|\b(?:canner|it|pot)\b(?: \w+){0,2} (?:in|into|"
        r"under) (?:the |a )?"
        r"(?:cold water|creek|river|lake|rain|running)|\bopen\w*(?: \w+){0,2} before (?:0|it|"
        r"the pressure|time)\b|\bforc(?:ed|ing) (?:the |it |open |off )*(?:lid|open|off|cool)|"
        r"\brush\w* (?:the )?cool\w*|\b(?:bled|let out|released?) "
        r"(?:off )?(?:the |its )?(?:steam|pressure)\b|\bfan on (?:it|the canner)\b",
        r"\bblanch\w*|\bjars? (?:were )?(?:rins|wash)\w*|\bbefore (?:it|filling|use)|\bby itself|"
        r"\bon its own|\bwash\w*|\bscrub\w*|\bwip\w*|\bice bath\b|\bgarden\b",
        methods=_PRESSURE,
    ),
    Stage(
        (*FAILING, "could", "would", "did"),
        r"\b(?:it|canner|she|pressure|they) (?:would|could|did) not (?:hold|build|climb|keep|"
        r"come up)$|"
        r"\b(?:it|canner|she|pressure|needle) (?:dropped|fell|sank|died|went out)$|"
        r"\brefus\w* to (?:build|hold|climb|come up|boil|rise)\b|\b(?:fought|battled|"
        r"struggled) (?:to|with) (?:keep|hold|the (?:canner|gauge|pressure))|"
        rf"\b{_FAILED}(?: \w+){{0,2}} (?:ke(?:ep|pt)|h[eo]ld|g[eo]t|bring|brought|reach\w*|"
        rf"climb\w*|"
        r"rise|rose|mak\w*|made|c[oa]me|go|went|buil[dt]|stay\w*|maintain\w*|coax\w*)"
        r"(?: (?:it|them|her|the|up|quite|all|way|a|full|steady|back|canner|needle|heat|"
        r"water)){0,4}"
        r"(?: (?:to|at|near|on|up|it))*(?: (?:the|a|full|real|proper|rolling|steady|right|any|"
        r"good))* (?:pressure|boil(?:ing)?|temperature|1[0-5]|[5-9]\b)"
        r"(?!\s*(?:jars|pints|quarts|f\b|c\b|°|lb of|\.?\d))",
        r"\b(?:over|above|past|beyond)\b",
        methods=PROCESSED,
    ),
    # The water over the jars.
    Stage(
        ("float", "bobb", "capsiz", "tipp", "toppl", "fell", "on", "lay", "half", "stuck", "stick",
         "pok", "stood", "stand", "peek"),
        r"\b(?:jars?|lids?|1|some|2|3|few)\b(?: (?:of|them|all|the|kept|was|were|jars?|tall|too|"
        r"even|began|"
        r"started|to|over|and|fell|tipped))* (?:float\w*|bobb\w*|capsiz\w*|tipp\w*|toppl\w*|fell "
        r"over|on (?:its|their) sides?|(?:lay|lying|laid) on (?:its|their) sides?|"
        r"half (?:submerged|covered|under)|(?:stuck|stick\w*|poked|poking|stood|stand\w*|peek\w*) "
        r"(?:out|up|proud))\b",
        r"\b(?:fruit|floating fruit|tops? of the (?:beans|fruit))\b|"
        r"^(?:a )?(?:few|some)(?: of them| pieces| bits)? (?:is |are )?(?:float|bobb)\w*(?: up)?"
        r"(?: (?:at|to|near|on|in) the (?:top|surface|brine|liquid|jars?))?$",
        methods=LIDDED,
    ),
    Stage(
        ("cold", "cool", "half", "canner", "water", "pot", "pan", "kettle", "under", "short"),
        r"\b(?:topp\w*|re ?fill\w*|fill\w*|add\w*)(?: \w+){0,5} (?:cold|cool) (?:tap )?water\b|"
        r"\b(?:topp|re ?fill)\w*(?: \w+){0,4} cold\b|"
        r"\b(?:canner|pot|kettle)\b(?: \w+){0,2} (?:half|quarter) (?:full|empty)\b|"
        r"\b(?:pot|canner|pan|kettle) (?:was |is )?too (?:shallow|small|low)\b|\bhalf (?:submerged|"
        r"under water)|\b(?:lids?|tops?|jars?) (?:were |was )?not (?:\w+ )?under\b|"
        r"\bshort of (?:the )?(?:lids?|tops?|rims?|necks?)\b|"
        r"\bwater (?:had |all |has )?boil\w* (?:off|away)\b|\bno water (?:left )?in (?:it|"
        r"the (?:canner|pot))\b",
        r"\b(?:soak|rins|wash|blanch|chill|cool(?:ed)? in|before heating|to start|beans|cucumbers|"
        r"peaches)\w*\b",
        methods=LIDDED,
    ),
    Stage(
        ("simmer", "boil", "poach", "water", "bath", "warm", "hot", "steep"),
        r"^(?:(?:a|at|only|just|kept|held|gentle|gently|bare|barely|low|slow|mere|on|it|them|they|"
        r"were|was|jars?|the|in|canner|more|of|than|boil\w*|not|really|water|soft)\s)*"
        r"simmer(?:ed|ing)?(?: (?:only|gently|really|in the (?:canner|bath)))?$|"
        r"^(?:a |at a |only |just |on )*(?:low|weak|gentle|lazy|feeble|soft|poor) boil$|"
        r"\bboil (?:was |is )?(?:too )?(?:weak|low|feeble|gentle|poor|lazy)\b|^(?:just|only) hot$|"
        r"\b(?:tepid|luke ?warm|"
        r"hot tap) (?:water )?bath\b|\b(?:bath|water) (?:was )?not (?:\w+ )?(?:hot|warm)\b|"
        r"\bsimmer\w* (?:the jars|them in the (?:canner|bath|water))|"
        r"\bboil\w*(?: \w+)? (?:died|stopped|dropped|fell|ceased|interrupt\w*|slack\w*|faded|lost|"
        r"went off|came and went|on and off|off and on)\b|\blost (?:the|its) boil\b|"
        r"\b(?:just |only |a bit |little )+(?:under|below|short of) (?:the |a )?boil|"
        r"\b(?:just|only|merely) (?:very |quite )?(?:hot|warm) water\b",
        r"\b(?:sauce|brine|syrup|jam|fruit|tomatoes|beans|first)\b",
        methods=_IN_WATER,
    ),
    # After it.
    Stage(
        ("over", "bed", "night", "morning", "next", "hours", "day", "until", "till", "all"),
        r"\b(?:left|stay\w*|sat|sit|stood|kept|cool\w*|forg[eo]t\w*|remain\w*|were|was|still|"
        r"spent)\b(?: \w+){0,4} (?:in|inside) (?:the |my |its |hot )?(?:canner|bath|water bath|"
        r"closed canner|"
        rf"(?:canning )?(?:pot|water|kettle))\b.*{_OVER_NIGHT}|"
        r"\b(?:unload|empti)\w* (?:\w+ ){0,3}(?:next|following) (?:day|morning)|"
        rf"{_OVER_NIGHT}(?: \w+){{0,3}} in(?:side)? (?:the |my )?(?:canner|pot|bath)\b|"
        r"\bcanner (?:\w+ )?cold\b|"
        rf"\bcanner (?:\w+ ){{0,2}}(?:shut|closed|locked)\b.*{_OVER_NIGHT}|"
        rf"\bto bed with\b.*\bcanner|"
        r"\bin (?:the |my )?(?:canner|water bath) (?:over ?night|all night|(?:un)?till? (?:the )?"
        r"(?:next )?(?:morning|day))",
        r"\b(?:soak|steep|macerat|sugar|salt|brin|marinat|ice|beans|cucumbers)\w*\b",
    ),
)  # fmt: skip
