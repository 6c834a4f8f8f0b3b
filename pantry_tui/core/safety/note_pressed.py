"""A pressure in a note that went up for a while, or was let down. For notes in small letters,
numbers in figures, one clause at a time.

Where it falls below that of the process the time begins anew (USDA AIB 539, guide 1); above it no
harm is done.
"""

from __future__ import annotations

import re

#: More than its pressure, for a while: no harm comes of that.
_ROSE_TO = (
    r"\b(?:went|crept|rose|climbed|shot|ran|jumped|drifted)(?: right| all the way| briefly)? "
    r"(?:up )?(?:to|past|above|over|as high as)(?: \d+(?:\.\d+)?| (?:psi|lbs?|pounds?))*\s*"
    r"(?:for (?:a )?\w+)?$"
)

#: Not to nothing, as it goes when the time is over.
_LET_DOWN_TO = (
    r"\b(?:took|brought|turned|eased|backed|let|dropped|lowered)(?: (?:it|the \w+|pressure|heat))? "
    r"(?:back |slowly |gently )*down(?: (?:slowly|gently|again|back|a bit|then))* to "
    r"(?:(?:about|around|only|just) )*(\d+(?:\.\d+)?)(?: ?(?:psi|lbs?|pounds?))?$"
)


def rose_to(clause: str) -> bool:
    """Whether the pressure at the end of a clause is one that it went up to."""
    return re.search(_ROSE_TO, clause) is not None


def let_down_to(clause: str) -> float:
    """The pressure that somebody let it down to; where none is told, or it is nothing, a great
    one."""
    found = re.search(_LET_DOWN_TO, clause)
    return (found and float(found[1])) or 1e9
