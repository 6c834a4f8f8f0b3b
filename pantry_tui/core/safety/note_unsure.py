"""What a note says of a process of which nobody knows the time, or of which somebody only hopes
that it was right: "lost count of the minutes", "timed it with the phone, which died". For notes in
small letters, numbers in figures. Which words are listened for is a choice of our own.
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.safety.denial import DENIED
from pantry_tui.core.safety.note_words import Stage
from pantry_tui.core.words import Method

_TIMED = PROCESSED | {Method.JAM, Method.VINEGAR_PICKLE}
_UNKNOWN = (
    r"(?:forg[eo]t\w*|missed|no idea|unsure|lost track of|cannot (?:say|tell|remember|recall)|"
    rf"{DENIED} (?:sure|know|see|saw|notice\w*|note\w*|remember|recall|certain))"
)
_BEGAN = (
    rf"\b{_UNKNOWN}(?: about)? (?:when|at what time|how long ago) (?:it|they|i|we|the (?:water|pot|"
    r"canner|boil|pressure|time|clock|process))(?: \w+){0,3} (?:boil\w*|came|come|got|start\w*|"
    r"began|begin|steam\w*|pressure|rolling|put|went)\b"
)
_NOT_LOOKED = (
    rf"\b(?:{DENIED}|forgot to|without) (?:note|noting|write|writing|written|look\w*|check\w*|"
    r"watch\w*|read|mark\w*|see|time)(?: (?:down|at|on|for|up))*(?: (?:the|a|my|when|how|its|it|"
    r"full|exact|start\w*|end))* (?:time|minutes?|clock|timer|long|boiled|started)\b|"
    r"\b(?:nobody|no one|none of us) (?:\w+ )?(?:timed|watch\w*|looked|count\w*|kept (?:the )?"
    r"time|saw|noticed when)\b|"
    r"\b(?:fell|dropped|dozed|nodded|drifted) (?:asleep|off)\b.*\b(?:while|during|middle|with "
    r"(?:it|"
    r"the)|before (?:it|the|they)|woke|over it|at the (?:stove|hob))\b|"
    r"\b(?:kids?|child\w*|somebody|someone|he|she|they|it|cat|toddler|husband|wife|power|i)"
    r"(?: \w+)? (?:reset|restarted|stopped|cleared|changed|knocked|fiddled with|un ?plugged|"
    r"cancelled|turned off|switched off) (?:the |my )?(?:timer|clock|alarm)\b(?! (?:when|at the "
    r"end|after|at 0))|\b(?:timer|clock|alarm) (?:was |got |had been )?(?:reset|cancelled|"
    r"cleared)\b"
)
#: As long as something else takes.
_AS_LONG_AS = (
    r"\b(?:as long as|(?:for )?the length of|about|roughly|during|for|through) (?:a|an|1|the|half|"
    r"2)(?: \w+)? (?:films?|movie|episodes?|songs?|programme|news|podcast|radio play|album|"
    r"match|shower|phone call|nap|soap opera|cup of (?:tea|coffee))\b"
)
_EITHER = (
    r"\b(?:either|could (?:be|have been)|may (?:be|have been)|might (?:be|have been)|was it) \d+"
    r"(?: min\w*)?(?: or|; or|;| and)?(?: (?:could|may|might|maybe|perhaps))?(?: (?:be|have been))?"
    r" \d+ ?(?:min\w*)?$"
)
_OF_ELSE = (
    r"\b(?:shell|string|snapp?|pick|peel|chopp?|prep|soak|cool|wait|wash|trimm?|harvest|row|frost|"
    r"label|lids?|keeps?|lasts?|stor|beans|jars|to set|rest(?:ed)?|simmer|cook)\w*\b"
)

UNSURE: tuple[Stage, ...] = (
    # The time.
    Stage(
        ("count", "tim", "clock", "watch", "phone"),
        r"\bcount\w* (?:in )?(?:the )?(?:warm|heat)\w*|\b(?:clock|timer|watch|phone)(?: (?:was|is|"
        r"ran|had))? (?:slow|fast|stopped|dead|died|froze|crashed|broken|wrong)\b|"
        r"\blost count(?! of (?:the )?(?:jars|beans|"
        r"pods|how))|\b(?:count|tim)(?:ed|ing)\b(?: \w+){0,3} (?:at once|straight|right away|"
        r"immediately|from the (?:start|beginning|moment)|as (?:soon|it) )|"
        r"\b(?:clock|timer)\b(?: \w+){0,3} (?:at once|straight away|right away|immediately|"
        r"from the (?:start|beginning)|too soon)\b",
        r"\b(?:after(?:wards)?|later|since|that (?:evening|night)|last (?:week|month|year)|next "
        r"(?:day|"
        r"morning|week)|in the night)\b",
    ),
    Stage(
        ("forg", "miss", "no", "un", "lost", "cannot", "did", "was", "without", "fell", "dropped",
         "dozed", "nodded", "drifted", "kid", "child", "some", "he", "she", "they", "it", "cat",
         "toddler", "husband", "wife", "power", "i", "timer", "clock", "alarm"),
        rf"{_BEGAN}|{_NOT_LOOKED}",
        _OF_ELSE,
        methods=_TIMED,
    ),
    Stage(
        ("as", "for", "the", "about", "roughly", "during", "through"),
        _AS_LONG_AS,
        rf"{_OF_ELSE}|\b(?:watch\w*|listen\w*|radio|tv|party|after|before|stir\w*)\b",
        methods=PROCESSED,
    ),
    Stage(("either", "could", "may", "might", "was"), _EITHER, _OF_ELSE, methods=PROCESSED),
    # Nobody knows, or somebody hopes.
    Stage(
        ("hope", "should", "probab", "guess", "think", "finger", "sure", "unsure", "remember",
         "recall", "believe", "suppose", "eye", "slip", "know", "certain", "risk", "worr", "wonder",
         "forget", "may", "might", "idea",
         "doubt"),
        r"\b(?:should|hope\w*|hopefully|probabl[ey]|guess\w*|think|might|may)(?: \w+){0,4} (?:be |"
        r"was |were )?(?:fine|ok(?:ay)?|safe|enough|all ?right|alright)\b(?! (?:well|nicely|"
        r"until|till|for (?:the|a) (?:year|winter)))|\bfingers crossed\b|\b(?:bit |little )?"
        r"(?:risky|worried|worrying)\b|\beye ?ball\w*|\b(?:timer?|timing|vent\w*|lemon|acid|"
        r"vinegar|altitude|"
        r"weight) slipped my mind|\bguessed (?:the|at|it|when)\b|"
        r"\b(?:think|believe|guess|suppose) (?:that )?(?:i|we|it|they) (?:did|had|was|were|gave|"
        r"got|kept|held|"
        r"put|used|added|remembered|boiled|processed|sealed)\b|^(?:\w+ ){0,2}guess(?:ed|work)?$|"
        rf"\b(?:{DENIED} (?:quite |really |too |entirely )?(?:sure|certain|remember|recall|know)|"
        r"cannot (?:remember|recall|say|be sure)|unsure|no idea|forget|doubt\w*|wonder\w*|"
        r"may have|might have)\b.*\b(?:time\w*|tim(?:ed|ing)|minutes?|long|pressure|psi|lemon|acid|"
        r"vinegar|vent\w*|boil\w*|seal\w*|enough|process\w*|altitude|hot|covered|full|heat|"
        r"start\w*|count\w*|canner|lids?|right)\b",
        r"\bhow long (?:(?:the|they|it|these|we|this|a|my|our) )*(?:\w+ )?(?:(?:will|can|may|"
        r"should) |(?:keep|last|hold|row|stor|grow)\w*\b)|\b(?:will|to) have enough\b|"
        r"\b(?:sweet|salty|spicy|thick|tasty|soft|crisp|crunchy|nice|big|pretty) enough\b|"
        r"\b(?:salt|jars|sugar|spic\w*|set|enough (?:for|to (?:last|eat|share|give))|winter|"
        r"year)\b",
    ),
)  # fmt: skip
#: The clock failed, or somebody only thinks so, in another clause than the time.
_FAILED = (
    r"(?:died|dead|stopped|froze|crashed|ran (?:out|down|flat)|gave up|was (?:slow|wrong|dead|"
    r"fast)|"
    r"switched itself off|shut down|broke(?: down)?|ran out of battery)"
)
_CLOCK_FAILED = (
    r"\b(?:timed|timing|timer|clock|counted|alarm)\b[^;]*; (?:which|that|and it|it|then it|and "
    r"then "
    rf"it)(?: (?:then|had|has|just|promptly))? {_FAILED}\b|"
    rf"\b(?:timed|timing|timer)\b[^;]*\b(?:phone|watch|clock)\b[^;]*(?:which|that) {_FAILED}\b"
)
_ONLY_THOUGHT = (
    r"\b\d+(?:\.\d+)? ?min\w*(?: or (?:so|thereabouts|more|less))?; (?:(?:i|we) (?:think|guess|"
    r"suppose|believe|hope|reckon)|not (?:quite )?sure|maybe|perhaps|probably|possibly|did not "
    r"(?:look|check|time it)|unsure|could be (?:more|less)|more or less|give or take)\b(?=$|;)"
)
_COULD_BE = (
    r"\b(?:could|may|might) (?:be|have been) \d+(?: min\w*)?; (?:(?:or|maybe|perhaps|and) )*"
    r"(?:(?:could|may|might) (?:be|have been) )?\d+ min\w*"
)


def time_unknown(note: str) -> str:
    """The words of a whole note, clauses parted by "; ", that its time is not known."""
    found = re.search(rf"{_CLOCK_FAILED}|{_ONLY_THOUGHT}|{_COULD_BE}", note)
    return found[0] if found is not None else ""
