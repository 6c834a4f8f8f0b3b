"""A lid that did not hold, however it is put: in a record of the seals, or in a person's words of
what was seen. One list of words for both, so that what one of them knows the other knows."""

from __future__ import annotations

import re

#: The small job of looking at them, as data/tending.csv calls it, and what is said until then.
CHECK = "check the seals"
FIRST = "Check the seals first: that they held is not booked yet."
#: A not, as it is typed in haste.
_NOT_IN_SHORT = (
    r"(?:is|are|was|were|do|does|did|has|have|had|ca|could|wo|would|should|must|need)"
    r"(?:n['’ ]?t|['’ ]nt)"
)
#: What turns the words about it; "went" and "different" do not.
DENIED = rf"(?:no|not|never|{_NOT_IN_SHORT})"
#: What a lid is called.
_LID = frozenset({"seal", "sealed", "lid", "lids", "seals", "cap", "caps"})
#: It did not hold, where a lid is spoken of.
_FAILED = (
    r"fail(?:ed|s|ure)?|loose(?:ned)?|open(?:ed)?|broken?|unseal(?:ed)?|flex(?:es|ed|ing)?|"
    r"spring(?:s|y|ing)?|lost|gone|gives|gave|off|(?:popped|pops|came|come|is) up|undone|"
    r"lift(?:s|ed|ing)?|(?:came|come|comes) away"
)
#: It did not hold, and more: a record of seals takes it for that; of what is seen it is a sign
#: of its own, which is worse.
_WORSE = (
    r"leak(?:s|y|ed|ing)?|seep(?:s|ed|ing)?|weep(?:s|ing)?|bulg(?:ed|es|ing)|swollen|domed|convex|"
    rf"never|not|{_NOT_IN_SHORT}"
)
#: Said of nothing but a lid.
_NEVER_HELD = re.compile(
    rf"\b{DENIED} (?:longer |properly |fully )?(?:re)?seal(?:ed|ing)?\b|"
    rf"\blids? (?:\w+ )?{DENIED} (?:stay(?:ed|ing)? |go(?:ne)? )?(?:tight|firm|down|held|hold)\b|"
    r"\b(?:no|lost (?:its |the )?) ?vacuum\b|\blost (?:its |the )?seal\b"
)
_UNSEALED = re.compile(rf"\b(?:{_FAILED}|{_WORSE})\b")
_OF_A_LID = re.compile(rf"\b(?:{_FAILED})\b")
#: What ends the words about a lid.
_CLAUSES = r"[,;.!]|(?=\b(?:and|but|with)\b)"
#: Off or gone as food is, whatever stands beside it.
_OF_THE_FOOD = (
    r"\b(?:(?:smell\w*|smelt|odou?rs?|tast\w+|looks?|colou?rs?|gone|went|going|turned) off|"
    r"off[- ](?:smell\w*|odou?rs?|colou?r\w*|tast\w*|flavou?rs?|scent)|"
    r"(?:gone|turned|went) (?:bad|black|gr[ae]y|green|brown|soft|mou?ldy|slimy|sour))\b"
)
#: Words that turn what is said about.
DENYING = frozenset({"no", "not"})
#: They say nothing but that it did not hold; what springs or flexes is a sign of its own as well.
_PLAINLY = frozenset(
    {"broken", "broke", "failed", "fail", "fails", "loose", "off", "open", "unsealed", "opened",
     "lost", "gone", "undone"}
)  # fmt: skip


def record_says_failed(value: str) -> bool:
    """("loose", "1 failed") Whether a record of the seals names one that did not hold."""
    plain = value.casefold().strip()
    return _UNSEALED.search(plain) is not None or says_seal_failed(plain)


def says_seal_failed(text: str) -> bool:
    """("the lid came off") Whether words say that a lid did not hold, however they say it."""
    plain = text.casefold()
    if _NEVER_HELD.search(plain):
        return True
    words = _words(plain)
    if words & (DENYING | {"never"}):
        return False
    return "unsealed" in words or (bool(words & _LID) and _OF_A_LID.search(plain) is not None)


def is_of_the_seal(text: str) -> bool:
    """("the seal", "lid") Whether a reason names nothing but what shuts it: it did not hold."""
    return bool(left := _words(text.casefold()) - {"the", "its", "a", "of"}) and left <= _LID


def beside_the_seal(text: str) -> str:
    """What is said beside that a lid did not hold: "broken seal, mouldy" leaves "mouldy", and "no
    vacuum, off smell" the smell, since only what is said of the lid is taken out."""
    plain, times = _NEVER_HELD.subn(" , ", text.casefold())
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
