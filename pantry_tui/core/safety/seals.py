"""A lid that did not hold, however it is put: in a record of the seals, or in a person's words of
what was seen. One list of words for both, so that what one of them knows the other knows."""

from __future__ import annotations

import re

from pantry_tui.core.safety.denial import DENIED, DENYING, NOT_IN_SHORT

#: The small job of looking at them, as data/tending.csv calls it, and what is said until then.
CHECK = "check the seals"
FIRST = "Check the seals first (see `jobs`): that they held is not booked yet."
#: What a lid is called.
_LID = frozenset({"seal", "sealed", "lid", "lids", "seals", "cap", "caps"})
#: It did not hold, where a lid is spoken of.
_FAILED = (
    r"fail(?:ed|s|ures?)?|loose(?:ned)?|open(?:ed)?|broken?|unseal(?:ed)?|flex(?:es|ed|ing)?|"
    r"spring(?:s|y|ing)?|lost|gone|gives|gave|off|(?:popped|pops|came|come|is) up|undone|"
    r"lift(?:s|ed|ing)?|(?:came|come|comes) away"
)
#: It did not hold, and more: a record of seals takes it for that; of what is seen it is a sign
#: of its own, which is worse.
_WORSE = (
    r"leak(?:s|y|ed|ing)?|seep(?:s|ed|ing)?|weep(?:s|ing)?|bulg(?:ed|es|ing)|swollen|domed|convex|"
    rf"never|not|{NOT_IN_SHORT}"
)
#: Said of nothing but a lid. Patterns stay text until they are asked: most starts ask none.
_NEVER_HELD = (
    rf"\b{DENIED} (?:longer |properly |fully )?(?:re)?seal(?:ed|ing)?\b|"
    rf"\blids? (?:\w+ )?{DENIED} (?:stay(?:ed|ing)? |go(?:ne)? )?(?:tight|firm|down|held|hold)\b|"
    r"\b(?:no|lost (?:its |the )?) ?vacuum\b(?! (?:seal|pack|bag|machine|pump))|"
    r"\blost (?:its |the )?seal\b"
)
#: Said of nothing else in a note of a batch.
_IN_A_NOTE = (
    r"\bfailed to (?:re)?seal\b|\bseals? failed\b|"
    r"(?<!no )(?<!without )(?<!zero )(?<!\b0 )\bfailed seals?\b|(?<!not )\bunsealed\b|"
    r"\b(?:none|nothing|neither)(?: of (?:them|it|the (?:jars|lids)))? sealed\b"
)
_HOLDING = frozenset({"", "sealed", "held", "tight", "pinged", "good", "ok"})
_UNSEALED = rf"\b(?:{_FAILED}|{_WORSE})\b"
_OF_A_LID = rf"\b(?:{_FAILED})\b"
#: What ends the words about a lid.
_CLAUSES = r"[,;.!]|(?=\b(?:and|but|with)\b)"
#: Off or gone as food is, whatever stands beside it.
_OF_THE_FOOD = (
    r"\b(?:(?:smell\w*|smelt|odou?rs?|tast\w+|looks?|colou?rs?|gone|went|going|turned) off|"
    r"off[- ](?:smell\w*|odou?rs?|colou?r\w*|tast\w*|flavou?rs?|scent)|"
    r"(?:gone|turned|went) (?:bad|black|gr[ae]y|green|brown|soft|mou?ldy|slimy|sour))\b"
)
#: They say nothing but that it did not hold; what springs or flexes is a sign of its own as well.
_PLAINLY = frozenset(
    {"broken", "broke", "failed", "fail", "fails", "loose", "off", "open", "unsealed", "opened",
     "lost", "gone", "undone"}
)  # fmt: skip

#: Not one of them did not hold: "no failures", "none failed", "no lids loose".
_NONE_FAILED = (
    r"(?:no|not|none|nothing|zero|0|neither|never)"
    r"(?: (?:one|a|any|of|them|the|it|lids?|jars?|seals?))*"
    rf" (?:has |have |had |was |were |is |are )?(?:{_FAILED}|leak(?:s|y|ed|ing)?)"
    r"(?: (?:lids?|jars?|seals?))?"
)
#: "All but one sealed", "6 of 7 sealed", "all sealed except two".
_ALL_BUT = r"\ball\b(?: \w+)*? (?:but|except|bar|save|apart from|other than)\b"
_OF_SO_MANY = r"(\d{1,3})\s*(?:/|of|out of)\s*(?:the )?(\d{1,3})\b"


def says_none_failed(value: str) -> bool:
    """("no failures", "none failed", "7 of 7 sealed") Whether a record says that not one failed."""
    plain = " ".join(value.casefold().split())
    if re.fullmatch(_NONE_FAILED, plain):
        return True
    of = re.match(_OF_SO_MANY, plain)
    rest = plain[of.end() :].strip() if of else ""
    return of is not None and int(of[1]) == int(of[2]) > 0 and rest in _HOLDING


def says_some_failed(value: str) -> bool:
    """("all but one sealed", "6 of 7 sealed") Whether a record says that not every one held."""
    plain = " ".join(value.casefold().split())
    if re.match(_ALL_BUT, plain) and re.search(
        r"\b(?:sealed|held|tight|pinged|good|ok|fail)", plain
    ):
        return True
    of = re.match(_OF_SO_MANY, plain)
    rest = plain[of.end() :].strip() if of else ""
    return of is not None and int(of[1]) < int(of[2]) and rest in _HOLDING


#: One jar that did not hold, and what became of it; a broken one is gone.
_OF_ONE = (
    r"\b(?:one|1|a single|the (?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|"
    r"eleventh|twelfth|last|other|odd|extra|small|big|\d{1,2}(?:st|nd|rd|th)))"
    r"(?: one)?(?: of (?:them|the \w+))?(?: (?:jar|lid|pint|quart|half[ -]pint|bottle))?"
    r"(?: (?:has|had|was|is|did))? "
)
_ONE_UNSEALED = rf"(?:{DENIED} (?:properly )?seal(?:ed)?|failed(?: to seal)?|unsealed)\b"
_ONE_BROKEN = r"(?:broke|broken|shattered|burst|cracked)\b(?! (?:its|the|seal))"
_DEALT_WITH = (
    r"[^.;!?\n]{0,40}?\b(?:fridge|refrigerat\w*|ate|eaten|frozen?|freezer|re ?process\w*|threw|"
    r"re ?cann\w*|thrown|binned|discard\w*|compost\w*|tossed|used (?:up|at once|first|it|that))\b"
)
#: Not at once, or not in the cold.
_LATER = (
    r"(?![^.;!?\n]*\b(?:months?|weeks?|later|cupboards?|shel(?:f|ves)|pantry|larder|cellar|since|"
    r"january|february|march|april|june|july|august|september|october|november|december|winter|"
    r"christmas|easter|spring|summer|autumn)\b)"
)
_SET_APART = (
    rf"{_OF_ONE}(?:{_ONE_UNSEALED}{_LATER}{_DEALT_WITH}|"
    rf"{_ONE_BROKEN}(?: in (?:the|my|our) (?:canner|pot|bath))?(?:{_DEALT_WITH})?)(?: out)?"
)


def without_set_apart(note: str) -> str:
    """("one jar did not seal, in fridge; sweet") -> " ; sweet": without the one jar that failed
    within the day and stands with the rest no more, which says nothing of the others. Two are not
    one."""
    return re.sub(_SET_APART, " ", note, flags=re.IGNORECASE)


def note_says_unsealed(text: str) -> str:
    """Words of a note that a lid did not hold, "" where it says nothing of that."""
    plain = text.casefold()
    found = re.search(_NEVER_HELD, plain) or re.search(_IN_A_NOTE, plain)
    return found[0] if found else ""


def record_says_failed(value: str) -> bool:
    """("loose", "1 failed") Whether a record of the seals names one that did not hold."""
    plain = value.casefold().strip()
    return re.search(_UNSEALED, plain) is not None or says_seal_failed(plain)


def says_seal_failed(text: str) -> bool:
    """("the lid came off") Whether words say that a lid did not hold, however they say it."""
    plain = text.casefold()
    if re.search(_NEVER_HELD, plain):
        return True
    words = _words(plain)
    if words & (DENYING | {"never"}):
        return False
    return "unsealed" in words or (bool(words & _LID) and re.search(_OF_A_LID, plain) is not None)


def is_of_the_seal(text: str) -> bool:
    """("the seal", "lid") Whether a reason names nothing but what shuts it: it did not hold."""
    return bool(left := _words(text.casefold()) - {"the", "its", "a", "of"}) and left <= _LID


def beside_the_seal(text: str) -> str:
    """What is said beside that a lid did not hold: "broken seal, mouldy" leaves "mouldy", and "no
    vacuum, off smell" the smell, since only what is said of the lid is taken out."""
    plain, times = re.subn(_NEVER_HELD, " , ", text.casefold())
    if not times and not _words(plain) & _PLAINLY:
        return text
    return " ".join(" ".join(map(_not_of_a_lid, re.split(_CLAUSES, plain))).split())


def _not_of_a_lid(clause: str) -> str:
    words = _words(clause)
    if not words & _PLAINLY or not words & (_LID | {"unsealed"}):
        return clause
    left, end = [], 0
    for food in re.finditer(_OF_THE_FOOD, clause):
        left += [*_without_lid(clause[end : food.start()]), food[0]]
        end = food.end()
    return " ".join((*left, *_without_lid(clause[end:])))


def _without_lid(said: str) -> list[str]:
    words = re.findall(r"[^\W_]+(?:['’][^\W_]+)?", said)
    return [one for one in words if one not in _LID | _PLAINLY]


def _words(plain: str) -> set[str]:
    return set(re.findall(r"[^\W_]+", plain))
