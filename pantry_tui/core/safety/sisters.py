"""What a sign on one container says of the others of its batch: it depends on the state in which
it was found. Our reading of the publications that the signs name, on the strict side.

Found sealed, or opened for less than its opened life: what is in it may be in all of them. Opened
longer, or one piece of a pile: it went bad by itself, so it is culled and the rest looked over. A
lid that never sealed, found within a day: the others are tested.
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from pantry_tui.core.model import Batch
from pantry_tui.core.safety.of_all import OF_ALL
from pantry_tui.core.safety.signs import Sign, SignVerdict
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import Group, Method, Verdict


class Sisters(StrEnum):
    """What becomes of the others."""

    NOTHING = ""
    TEST = "test their lids"
    LOOK_OVER = "look them over"
    SUSPECT = "suspect until each was looked at"


class Found(NamedTuple):
    """How a container was when the sign was found: `opened` for how many days, None while sealed
    (or still in progress); `life` how many days it keeps opened, None where none is published;
    `pile`: pieces that lie loose and are drawn one by one."""

    opened: int | None
    life: int | None
    pile: bool


#: What lies loose in a crate, a sack or a string is culled piece by piece.
PILED = frozenset({Method.CELLAR, Method.FRESH})
#: One body, or in each other's juice: what shows on a part of it may be in all of it.
_OF_ONE = frozenset({Group.MEAT, Group.FISH, Group.DAIRY, Group.MEAL})
_THROWN = (SignVerdict.DO_NOT_TASTE, SignVerdict.DISCARD)
#: Signs that a lid never sealed, found while the jar may still be saved.
_WITHIN_A_DAY = ("unsealed within a day",)
_FLOOD = "flood water"
#: What is done with a pile of which some is bad.
CULL = (
    "Take out and discard every piece that shows it, and what it touched if that is wet or soft; "
    "never cut a mouldy piece to save it. Say `looks sound` when the rest is looked over."
)


def lies_loose(batch: Batch) -> bool:
    """Whether it is a pile: pieces of which each is bad by itself."""
    loose = batch.method in PILED and batch.food.group not in _OF_ONE
    return loose and not is_closed(batch.method, batch.size)


def of_sisters(sign: Sign, found: Found) -> Sisters:
    """What the sign says of the others."""
    if sign.words.startswith(_WITHIN_A_DAY):
        return Sisters.TEST
    if sign.suspect_batch and (_FLOOD in sign.words or sign.id in OF_ALL):
        return Sisters.SUSPECT  # it is true of all of them, whatever became of this one
    if found.pile:
        bad = sign.suspect_batch or sign.verdict in _THROWN
        return Sisters.LOOK_OVER if bad else Sisters.NOTHING
    if not sign.suspect_batch:
        return Sisters.NOTHING
    if found.opened is not None and found.life is not None and found.opened > found.life:
        return Sisters.LOOK_OVER
    return Sisters.SUSPECT


#: What happened to all that lies there, and shows on no piece of it.
_TO_ALL = (_FLOOD, "unchilled")


def of_pile(sign: Sign, verdict: Verdict, found: Found) -> Verdict:
    """One bad piece is taken out; the rest wants a hand and is not thrown away for it, unless it
    happened to all of them."""
    thrown = verdict in (Verdict.DO_NOT_TASTE, Verdict.DISCARD)
    to_all = sign.id in OF_ALL or any(one in sign.words for one in _TO_ALL)
    return Verdict.NEEDS_CARE if found.pile and thrown and not to_all else verdict
