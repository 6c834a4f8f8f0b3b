"""Words of a note that name a day: patterns for notes in small letters, one clause at a time, with
numbers in figures. Why each counts: note_days.py."""

from __future__ import annotations

from pantry_tui.core.words import Method

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTH = rf"(?:(?:{'|'.join(MONTHS)})[a-z]*)"
_WEEKDAY = r"(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day)"
_FEAST = r"(?:christmas(?: day)?|boxing day|new year's (?:day|eve)|halloween)"
_DATED = rf"(?:\d{{1,2}}(?:st|nd|rd|th)? {_MONTH}|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?)(?: \d{{4}})?"
_DAY = rf"(?:(?:last )?{_WEEKDAY}|yesterday|(?:the )?weekend|{_FEAST}|{_DATED})"
#: A meal of which something is left.
_MEAL = (
    r"(?:dinner|supper|lunch|breakfast|brunch|tea|party|roast|meal|barbecue|bbq|night|evening|"
    r"feast|buffet|cook ?out)"
)
_LEFT = r"(?:left ?overs?|remains|rest|remnants|scraps|extras)"

#: What stands there by the name of its day.
_FOOD = (
    r"(?:stew|soup|curry|roast|joint|chicken|beef|pork|lamb|turkey|ham|meat|mince|fish|rice|pasta|"
    r"sauce|chill?i|casserole|stock|gravy|food|batch|cooking|pot|veg\w*|mash|potatoes|beans|"
    r"lentils|dhal|dal|risotto|bolognese|lasagne|pie|goulash|broth|pan|hot ?pot|tagine|one)"
)

_SEVERAL = r"(?:an? (?:few|couple of|couple)|few|couple of|some|several)"
#: Before an age that is of the batch, and not of what went into it.
_LEAD = (
    r"(?:(?:it|this|these|they|all|is|are|was|were|already|now|about|nearly|almost|over|more|than|"
    r"at|least|most|by|then|only|just|maybe|perhaps|probably|roughly|around|soup|stew|leftovers?|"
    r"milk|cream|meat|chicken|fish|eggs?|food|batch|the) )*?"
)
AGE = (
    rf"^{_LEAD}(?:(\d+)|(half an?)|({_SEVERAL})|an?)?[ -]?(day|week|month)s? old\b(?!')"
    r"(?= *(?:$|by|now|already|and|today|when|at|so|then)\b| *$)"
)
AGO = rf"(?:({_SEVERAL})|an?) (day|week|month)s? ago"
_THERE = (
    r"(?:in (?:the |our )?(?:fridge|refrigerator|cold|cool|cellar|larder|pantry|ice ?box)|there|"
    r"here)"
)
#: "On day 4" is the third after the first.
DAY_N = r"^(?:now |already |it is |is |on |at )*day (\d+)(?: already| now| today)?$"
AGED = (
    rf"^{_LEAD}(\d+) (day|week|month)s? ago$",
    # "4 days in the fridge" alone may be how long it keeps.
    rf"^(?:it |this |has |have |had |is |was |been |now |already |stood |sat |spent |for |"
    rf"{_THERE} )*(?:been|already|stood|sat|spent|now|over|nearly)(?: (?:{_THERE}|for|"
    rf"in|about|over|nearly|now|already))* (\d+) (day|week|month)s?(?: (?:{_THERE}|now|already|"
    rf"in all))*$",
    rf"^(?:(?:{_THERE}|must|be|about|is|it|for|over|nearly) )*(\d+) (day|week|"
    rf"month)s?(?: {_THERE})? (?:by )?(?:now|already)$",
    DAY_N,
)
#: Since when it stands there.
SINCE = (
    r"^(?:(?:it|this|they|all|we|i|is|are|was|were|has|have|had|been|kept|stored|stood|standing|"
    r"sat|sitting|stays?|lay|cold|chilled|up|them|already|now|in|and|"
    rf"{_THERE}|on (?:the |a )?shelf) )*(?:since|from) (.+)$"
)
#: A day that is over and nothing beside it.
BARE = (
    r"^(?:(?:on|of|dated?|date is|label(?:l?ed)?(?: says)?|says|from|the|it is|is) )*"
    rf"(last {_WEEKDAY}|{_DATED})$"
)
_WHOSE = r"^(?:(?:the|our|some|it is|this is|these are|is|all|just|still) )*"
_LEFTOVERS = (
    # "Sunday's leftovers", "weekend leftovers", "leftovers of the friday dinner".
    rf"{_WHOSE}({_DAY})(?: {_MEAL})? {_LEFT}\b",
    rf"\b{_LEFT} (?:(?:of|from|the|our|after) )*({_DAY})(?: {_MEAL})?$",
)
#: "Sunday's stew"; a meal of that day may be meant for it.
WHOSE_DAY = rf"{_WHOSE}({_DAY}) 's(?: (?:\w+ )?{_FOOD})?$"
REST = {
    Method.FRESH: _LEFTOVERS,
    Method.BOUGHT: _LEFTOVERS,
    Method.MEAL: (
        *_LEFTOVERS,
        rf"{_WHOSE}(?:from|rest of|remains of|left from|left over from) (?:the |our )?({_DAY}) 's "
        r"(?!(?:recipe|paper|market|picking|menu|magazine|show|class|shop|delivery|book)\b)\w+$",
        rf"{_WHOSE}(?:from|left from|left over from|left after) (?:the |our )?(?:{_MEAL} (?:on )?)?"
        rf"({_DAY})(?: {_MEAL})?$",
        rf"^(?:\w+ )?{_FOOD} from (?:the )?({_DAY})(?: {_MEAL})?$",
        WHOSE_DAY,
    ),
}
#: What begins the days that its record counts.
_OUT = (
    r"thawed|defrosted|thawing|defrosting|"
    r"(?:taken |took (?:it |them )?|came |is |been )?(?:out of|from) the freezer|"
)
BEGAN = {
    Method.MEAL: _OUT + (
        r"(?:re ?)?cooked|made|roasted|baked|boiled|fried|stewed|braised|simmered|prepared|grilled|"
        r"carved|left over|left ?overs?|^(?:it |they |all )?(?:is |are |was |were )?from"
    ),
    Method.HOT_SMOKED: _OUT + r"smoked|made|cooked",
    Method.COLD_SMOKED: _OUT + r"smoked|made",
    Method.IN_OIL: _OUT + r"made|put up|mixed|filled|packed|bottled",
    Method.FRIDGE_PICKLE: r"made|put up|mixed|filled|packed|bottled",
    Method.FRESH: _OUT + (
        r"bought|got|picked up|collected|fetched|delivered|milked|laid|caught|landed|minced|ground|"
        r"churned|made|cut|sliced|^from"
    ),
    Method.FROZEN: r"frozen|froze|put in the freezer|in the freezer since",
    Method.BOUGHT: _OUT + r"bought|got|picked up|collected|fetched|delivered|^from",
}  # fmt: skip
OPENED = r"opened|open since|begun|started"
#: What more was put to it.
TOPPED = (
    r"top(?:ped)? (?:it |them )?up|re ?filled|(?:more|some|rest) (?:was |were )?added|added to it|"
    r"added more"
)
#: What may stand between that and the day, and what goes on behind a day.
FILLER = (
    r"(?:it|them|this|all|both|on|in|up|fresh|back|again|late|early|since|from|over|already|way|"
    rf"{_MEAL})"
)
LINK = r"(?:and|with|at|by|in|after|before|when|to|then|so|but)"

#: A date on a pack; that it is to be eaten by a day of the week is a plan.
LAST_BEFORE = (
    r"(?i)\b(?:by|before|until|till|exp\w*|end|bb|bbe|date|dated|out|"
    r"away|discard\w*|bin|toss|bis|mhd|last day)\b\W*$"
)
LAST_DAY = (
    r"\b(?:(?:use|sell|eat|best|consume|best if used|display|used|eaten|good|keeps?|discard|"
    r"throw (?:it )?(?:out|away)|bin)(?: |-)?(?:by|before|until|after|"
    r"till)(?: end(?: of)?)?(?: date)?|expir\w*(?: date)?|exp|bbe?)"
    r"(?: (?:is|was|says|said|of|on|date|the|it|label|pack|has|for))* "
    rf"(?:{_WEEKDAY} )?((?:\d{{1,2}}(?:st|nd|rd|th)? {_MONTH}|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?)"
    r"(?: \d{4})?|\d{4}-\d\d-\d\d)\b"
)
#: All of it is of the year before; a recipe of last year is not.
LAST_YEAR = (
    r"(?i)((?:^|[;,.!?\n])\s*(?:(?:from|our|the|of|it is|these are|some) )*|\b(?:left ?overs?|made|"
    r"cooked|baked|roasted|smoked|bought)(?: (?:from|of|on|in|at))?(?: (?:the|our))? )"
    rf"((?:(?:thanksgiving|xmas|easter|{_FEAST})(?:'s)? "
    r"(?:dinner |day |of |from )*)?last year(?:'s)?)"
    r"(?=\s*(?:$|[;,.!?\n]|left ?overs?\b))"
)
#: A day and a month, in either order, behind a word that has one.
IN_FIGURES = (
    r"(?i)((?:^|\b(?:on|since|from|of|by|before|until|till|date|dated|exp|expir\w+|bb|end|cooked|"
    r"made|bought|opened|smoked|thawed|defrosted|roasted|baked|mixed|put up|got|caught|delivered|"
    r"minced|boiled|fried|stewed|it|says|was|is|label|day|out|away|discard|toss|bin|bis|mhd|frozen|"
    r"purchased|am|cooking|preparation|production)\)?\.?)[ :]{1,2}|"
    r"^)(\d{1,2})([./-])(\d{1,2})(?:\3(\d{4}|\d{2}))?\.?(?![\d./%])(?=\s*(?:$|[,;!?)\n]| (?:and|"
    r"with|at|by|then|so|but|for|last|already)\b))"
)
DOTTED = rf"(?i)\b(\d{{1,2}})\. ?(?={_MONTH}\b)"
#: Parts of a whole, unless a day is surely meant.
FRACTIONS = frozenset({(1, 2), (1, 3), (2, 3), (1, 4), (3, 4), (1, 5), (1, 8), (3, 8)})
SURELY_A_DAY = r"(?i)\b(?:on|since|from|date|dated|by|before|until|till|exp\w*|bb)\b\W*$"
#: The same said otherwise.
SAME = (
    (r"\b(\d+) ?d\b", r"\1 days"),
    (r"\bwks?\b", "week"),
    (r"(?<=over )a (?=week\b)|(?<=nearly )a (?=week\b)|(?<=almost )a (?=week\b)", "1 "),
    (r"\bmon's\b", "monday's"),
    (r"\btues?'s\b", "tuesday's"),
    (r"\bwed(?:s|nes)?'s\b", "wednesday's"),
    (r"\bthu(?:r|rs)?'s\b", "thursday's"),
    (r"\bfri's\b", "friday's"),
    (r"\bsat's\b", "saturday's"),
    (r"\bsun's\b", "sunday's"),
    (r"\bnights? (?=old|ago|back)", "days "),
    (r"\bfortnights?\b", "2 weeks"),
    (r"\ba 2 weeks\b", "2 weeks"),
    (r"\b(days?|weeks?|months?) (?:back|earlier|since|before)$", r"\1 ago"),
    (rf"\b(\d{{1,2}})(?:st|nd|rd|th) (?:of )?(?={_MONTH}\b)", r"\1 "),
    (rf"\b({_MONTH}) (?:the )?(\d{{1,2}})(?:st|nd|rd|th)\b", r"\1 \2"),
    (rf"\b({_WEEKDAY}|yesterday|weekend|{_FEAST})(?:'s|s')(?= {_LEFT}| {_MEAL})", r"\1"),
    (rf"\b({_WEEKDAY}|yesterday|weekend)s(?= {_LEFT}| {_MEAL})", r"\1"),
    (rf"\b({_WEEKDAY}|yesterday|weekend|{_FEAST})'s\b", r"\1 's"),
)  # fmt: skip
