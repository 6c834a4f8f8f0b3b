"""What a person says of a container in words that no sign has: the words are kept, and they are
held against it until somebody looked and said that all is well. Nobody knows what they mean, so
nobody may take them for nothing.

Two kinds of words are held against nothing: that all is well ("smells fine", "not mouldy"), and a
reason for throwing away that speaks of the people, the day or the floor and not of the food ("too
old, nobody likes it", "dropped").
"""

from __future__ import annotations

import re
from functools import cache

from pantry_tui.core.safety.caution import OWN
from pantry_tui.core.safety.denial import DENIED, NONE, spelled_not
from pantry_tui.core.safety.said import SAID
from pantry_tui.core.safety.seals import says_seal_failed
from pantry_tui.core.text import clean

#: As the payload of a sign names it.
OWN_ID = "own-words"

_CLAUSE = r"[,;.!?]|\b(?:and|but|then|because|so)\b"
_FILLER = frozenset(
    {"a", "an", "the", "it", "its", "is", "are", "was", "were", "be", "been", "i", "we", "my",
     "our", "this", "that", "these", "those", "they", "them", "all", "of", "in", "on", "at",
     "to", "for", "from", "has", "have", "had", "do", "does", "did", "jar", "jars", "lid",
     "lids", "food", "seal", "contents", "everything", "still", "just", "only", "now", "very",
     "really", "quite", "rather", "any", "some", "one", "ones", "others", "looks", "look",
     "looked", "smells", "smell", "smelled", "seems", "seem", "tastes", "taste", "color",
     "colour", "liquid", "too", "as", "with", "or", "went", "go", "gone", "got",
     "see", "seen", "mean", "there", "here", "bit", "little"}
)  # fmt: skip
_GOOD = frozenset(
    {"fine", "good", "ok", "okay", "well", "sound", "nice", "normal", "perfect", "great",
     "lovely", "clear", "tight", "sealed", "right", "firm", "fresh", "clean", "new", "same",
     "flat", "down", "usual"}
)  # fmt: skip
#: What is only on the outside of a jar and holds nothing, and what becomes of it.
_OUTSIDE = frozenset(
    {"label", "labels", "tag", "tags", "sticker", "ring", "rings", "band", "bands", "dust",
     "dusty", "cobweb", "cobwebs"}
)  # fmt: skip
_WORN = frozenset(
    {"rust", "rusty", "rusted", "smudged", "faded", "torn", "missing", "lost", "off", "fell",
     "fallen", "came", "peeled", "peeling", "wet", "dirty", "stuck", "tight", "old", "outside"}
)  # fmt: skip
_NO = rf"\b(?:{DENIED}|{NONE}|nor|neither|kein\w*|nicht)\b"

#: What a reason for throwing away may be that says nothing of the food in the others.
_ELSEWHERE = (
    r"\b(?:"
    r"(?:too |very |so |just |getting )?old(?:er)?|aged?|years?|months?|expired?|expiry|"
    r"(?:past|over|beyond|out of|after|passed)(?: \w+)?(?: best)? (?:dates?|best|prime|by)|"
    r"out ?dated|best by|use by|best before|used by|"
    r"(?:ate|eaten|used|opened|open|found|kept|stood|stored) (?:it |them |this )?(?:\w+ )?"
    r"(?:too )?(?:late|long|days?|weeks?)|(?:too|so) late|too long|"
    r"drop(?:ped|s)?|fell|fall(?:en)?|knocked|bumped|smash\w*|shatter\w*|br[oe]ke?n?|breakages?|"
    r"crack\w*|chip(?:s|ped)|glass|spil(?:l|led|t|ls)|"
    r"tipped over|"
    r"(?:nobody|no one|noone|none of us|kids?|children|husband|wife|family|he|she|they|we|i)"
    r"(?: \w+)? ?(?:do|does|did|would|will)?(?: not|n['’]?t)? (?:ever )?"
    r"(?:likes?d?|wants?|wanted|eats?|ate|hates?d?|needs?|needed|enjoy\w*|touch\w*|use[sd]?|"
    r"finish\w*|care\w*)|"
    r"(?:not|never|un) ?(?:liked|wanted|eaten|needed|used|finished|popular)|unwanted|disliked?|"
    r"hated?|left ?overs?|left on (?:the )?plates?|"
    r"freezer ?burn\w*|room needed|(?:need|needed|make|made|making|for|no|out of) "
    r"(?:the |more |some )?(?:room|space|jars?|shel\w+)|clear(?:ed|ing)?(?: \w+)? ?out|"
    r"clean(?:ed|ing)?(?: \w+)? ?(?:out|up)|clear ?out|moved? house|moving(?: house)?|"
    r"too (?:much|many|salty|sweet|hot|spicy|bland|dry|hard|tough|thick|thin|runny|big)|"
    r"bland|overcooked|over cooked|burnt|burned|tasteless|boring|surplus|duplicate|mistake|"
    r"by mistake|by accident|wrong (?:jar|one|code|entry)|experiment|test(?:ed)? jar|"
    r"fed to|for the (?:dog|cat|pigs?|hens?|chickens?)|(?:dog|cat|pigs?|hens?|chickens?) "
    r"(?:got|ate|had)|compost(?:ed)?|guests?|gift|given|spoon|"
    r"power ?cut|outage|freezer (?:failed|broke)|other|"
    r"zu alt|abgelaufen|heruntergefallen|runtergefallen|zerbrochen|schmeckt nicht|mag keiner|"
    r"platz gebraucht"
    r")\b"
)


def held(text: str) -> str:
    """The words of the sign that stands in the log."""
    return f'{OWN}"{clean(text.strip())[:120]}"'


def of_own_words(words: str) -> bool:
    """Whether a sign in the log is one that nobody understood."""
    return words.startswith(OWN)


def all_is_well(text: str) -> bool:
    """("smells fine", "not mouldy", "the lid never came off") Whether words say nothing bad."""
    said = [one for one in _clauses(text) if not _words(one) <= _FILLER]
    return (not said and not text.strip()) or (bool(said) and all(map(_well, said)))


def says_nothing_of_others(why: str) -> bool:
    """("too old", "dropped it, broken") Whether a reason is plainly none that the others of the
    batch could share: each part of it."""
    said = [one for one in _clauses(why) if not _words(one) <= _FILLER]
    return bool(said) and all(_well(one) or re.search(_ELSEWHERE, one) for one in said)


def _clauses(text: str) -> list[str]:
    plain = " ".join(spelled_not(text.casefold()).split())
    return [one.strip() for one in re.split(_CLAUSE, plain) if one and one.strip()]


def _well(clause: str) -> bool:
    told = _words(clause)
    if told & _OUTSIDE and told <= _FILLER | _OUTSIDE | _WORN:
        return True
    left, times = re.subn(_NO, " ", clause)
    if not times:
        return _words(clause) <= _FILLER | _GOOD
    if says_seal_failed(left):
        return True
    denied = left = " ".join(re.findall(r"[^\W_]+", left))
    for pattern in _patterns():
        left = pattern.sub(" ", left)
    return denied.split() != left.split() and _words(left) <= _FILLER


@cache
def _patterns() -> tuple[re.Pattern[str], ...]:
    return tuple(re.compile(rf"\b(?:{words})\b") for words, _ in SAID)


def _words(text: str) -> set[str]:
    return set(re.findall(r"[^\W_]+", text))
