"""A note that asks and answers itself: "stove off? no, steady", "did they all seal? no". Which
words are listened for is a choice of our own."""

from __future__ import annotations

import re
from collections.abc import Callable

_NO = r"(?:no|nope|nah|not at all|of course not)"
#: Long before: an answer that sets it apart.
_THEN = (
    r"(?:no,? )?(?:that|it) was (?:the )?(?:before|after|another|last (?:year|time|week|batch)|"
    r"next|the other)\b[^;.!?\n]*"
)
_ASKED = re.compile(
    rf"(?i)(?P<asked>[^;,.!?\n:]+)\?\s*(?:(?P<no>{_NO})\b(?=\s*(?:$|[;,.!\n]))|(?P<then>{_THEN}))"
)
#: What should have been: no to it is said against the batch.
_SHOULD_BE = (
    r"\b(?:seal\w*|boil(?:ed|ing)?\b(?! water)|process\w*|vent\w*|covered|pressure|head ?space|"
    r"tested|full time|"
    r"whole time|long enough)\b"
)
#: So many words has the name of a column.
_A_LABEL = 2
_JUST_ASKS = r"\s*(?:did (?:the|it|any)|any|was there|were there|is there) "
_SHOULD_BE_IN = r"\b(?:lemon|acid|citric)\b"
_AND_NOT = (
    r"\b(?:any|trouble|problem|drop|lost|fell|leak|fail|burst|over|dry|off|un|not|never)\w*\b"
)


def answered(note: str, speaks: Callable[[str], bool]) -> str:
    """The note without what it asks and denies itself, where that would have been against it by
    `speaks`."""

    def plain(found: re.Match[str]) -> str:
        asked = found["asked"]
        if speaks(asked.strip()):
            return " "
        curious = re.match(_JUST_ASKS, asked.casefold()) or len(asked.split()) > _A_LABEL
        wanted = re.search(rf"{_SHOULD_BE}|{_SHOULD_BE_IN}|\bsalt|vinegar|soak", asked.casefold())
        return " " if found["no"] and curious and not wanted else found[0]

    return _ASKED.sub(plain, note) if "?" in note else note


def denies_what_should_be(note: str, *, acid: bool) -> bool:
    """Whether it asks for a step of a process and says no; `acid`: that is one of them."""
    wanted = rf"{_SHOULD_BE}|{_SHOULD_BE_IN}" if acid else _SHOULD_BE
    asked = (found["asked"].casefold() for found in _ASKED.finditer(note) if found["no"])
    return any(re.search(wanted, one) and not re.search(_AND_NOT, one) for one in asked)
