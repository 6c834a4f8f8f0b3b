"""A no, however it is put: in the value of a record, in a note, in what is said of a lid. One list
of words for all who ask, so that what one of them knows the others know."""

from __future__ import annotations

import re

from pantry_tui.core.amounts import fractions_spelled, plain_digits

#: A whole answer.
NO = frozenset({"no", "n", "none", "false"})
#: A not, as it is typed in haste.
NOT_IN_SHORT = (
    r"(?:is|are|was|were|do|does|did|has|have|had|ca|could|wo|would|should|must|need)"
    r"(?:n['’ ]?t|['’ ]nt)"
)
#: The same as two words: what is not as it is typed in haste.
_SHORTENED = (
    r"\b(is|are|was|were|do|does|did|has|have|had|ca|could|wo|would|should|must|need)"
    r"(?:n['’ ]?t|['’ ]nt)\b"
)
#: What turns the words about it; "went" and "different" do not.
DENIED = rf"(?:no|not|never|{NOT_IN_SHORT})"
#: The same as words of their own.
DENYING = frozenset({"no", "not"})
#: There was none of it.
NONE = r"(?:without|none|nothing|zero|nought|minus|sans|w/o)"
#: Whatever turns a word about. "Un-" and "non-" stand before it.
DENIAL = rf"\b(?:{DENIED}|{NONE}|non|nor|neither|cannot)\b"
#: It should have been done or put in, and was not.
LEFT_OUT = (
    r"(?:skip(?:s|ped|ping)?|omit(?:s|ted|ting)?|forg[eo]t(?:s|ten|ting)?|miss(?:ed|ing|es)?|"
    r"lack(?:s|ed|ing)?|(?:left|leave|leaving) (?:it |them |this |that )?out|"
    r"(?:ran|run|running|am|was|were) (?:clean )?out(?: of)?)"
)
_BEGINS = rf"(?:{DENIED}(?!\.?\s*\d)|{NONE}|{LEFT_OUT})(?!\w)"
_LEFT_OUT = rf"\b{LEFT_OUT}\b"
#: "Did not skip", "nothing forgotten": what was left out was not.
_TWICE = rf"(?:{DENIAL}) (?:\w+ )?{LEFT_OUT}\b"
#: What may stand between a no and the thing that there was none of.
_BETWEEN = (
    r"(?:(?:the|any|all|my|our|added|bottled|adding|add|to|put|putting|in|into|use|used|using|of|"
    r"enough|with|extra|much|have(?! to)|got|get|buy) )*"
)
_LINKED = r"(?:(?:was|were|is|are|got|has been|had been|have been|been) )?(?:all )?"
_SMALL = r"(?:juice|powder|i|we|it|was|were|is|has|have|been|at|this|time|added|used|in|put)"
_PUT_IN = r"(?:added|used|put in|in|included|done|needed|there)"


def spelled_not(text: str) -> str:
    """("didn't") -> "did not", in small letters: a pattern that knows "not" knows them all."""
    return re.sub(_SHORTENED, r"\1 not", text)


#: What may stand between a no and a thing that is only spoken of: "no trace of mould".
_BEFORE = (
    r"(?:(?:an?|any|the|bit|1|single|of|signs?|traces?|hints?|more|at|all|really|ever|even|other|"
    r"extra|added|adding|add|to|need(?:ed|s)?|use|used|using|it|them|was|were|been?|is|are|got|get|"
    r"have|had|has|too|very|in|on|or|nor|jars?|lids?|[a-z]+ n?or) )*"
)
_TAKEN_BACK = rf"^(?: free\b| (?:was |were |is |are )?(?:{DENIED}|{LEFT_OUT})(?!\w))"


def affirmed(text: str, things: str) -> bool:
    """("no trace of mould", r"\bmould") -> False. Whether a pattern is found in words in small
    letters, and there at least is not denied."""
    return any(
        not re.search(rf"{DENIAL} {_BEFORE}$", text[: found.start()])
        and not re.search(_TAKEN_BACK, text[found.end() :])
        for found in re.finditer(things, text)
    )


def denies(value: str) -> bool:
    """Whether a value begins with a no, is nought of something, or says that it was left out:
    "none", "without", "forgot it", "0 tbsp lemon juice", "lemon juice omitted"."""
    if plain_digits(value):
        return bool(value) and not value.strip("0")
    plain = fractions_spelled(value.casefold())
    numbers = re.findall(r"\d+", plain)
    if numbers and not any(map(int, numbers)):
        return True
    if plain in NO or re.match(_BEGINS, plain):
        return True
    return re.search(_LEFT_OUT, plain) is not None and not re.search(_TWICE, plain)


def without_denial(value: str) -> str:
    """("forgot the salt") -> "  the salt": what stands beside every word that denies."""
    plain = re.sub(_LEFT_OUT, " ", value.casefold())
    return re.sub(rf"(?<!\w)(?:{DENIED}|{NONE}|zero)(?!\w)", " ", plain)


def lacking(text: str, things: str) -> str:
    """("we ran out of lemon juice", "acid|lemon") -> "lemon": which of the things, a pattern, there
    was none of by somebody's words; "" where none is denied, or it is denied twice."""
    plain = " ".join(re.sub(r"[-_]", " ", text.casefold()).split())
    if re.search(_TWICE, plain):
        return ""
    before = rf"(?<!\w)(?:{DENIED}|{NONE}|{LEFT_OUT}) {_BETWEEN}({things})"
    after = rf"\b({things})(?: juice| acid)? {_LINKED}(?:{DENIED} {_PUT_IN}|{LEFT_OUT})\b"
    found = re.search(before, plain) or re.search(after, plain)
    return found[1] if found else ""


def says_only_lacking(text: str, things: str) -> bool:
    """("skipped the lemon juice", "acid|lemon") Whether words say that, and nothing else."""
    if not lacking(text, things):
        return False
    plain = re.sub(rf"\b(?:{things})\b", " ", without_denial(text))
    return re.fullmatch(rf"\s*{_BETWEEN}(?:{_SMALL} ?)*", " ".join(plain.split()) + " ") is not None
