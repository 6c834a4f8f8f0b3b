"""Words of a note that fruit was picked up from the ground, grazed or not. For notes in
small letters, one clause at a time. Which words are listened for is a choice of our own.

Fallen fruit may hold a poison of moulds that no heat destroys (University of Minnesota Extension,
2020), and juice that is not heated keeps the germs of the ground and of animals alive (US FDA, on
juice and on cider; from memory, the stricter choice).
"""

from __future__ import annotations

import re

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.words import Method

_FRUIT = r"(?:apples?|pears?|fruits?|plums?|quinces?|ones|crop|what lay there|them|it)"
_GROUND = (
    r"(?:the |our |my )?(?:orchard |meadow )?(?:ground|grass|floor|meadow|pasture|paddock|soil|"
    r"earth)"
)
_PICKED_UP = (
    rf"\b(?:wind ?falls?|fallen {_FRUIT}|ground (?:fruit|apples|pears)|{_FRUIT} (?:that|which) "
    rf"(?:had "
    rf"|have )?(?:fell|fallen)|(?:picked|gathered|collected|raked|swept|scooped|taken|took|came|"
    rf"were|was|lay|lying|straight)(?: {_FRUIT})?(?: up)?(?: {_FRUIT})? (?:off|from|on|in) "
    rf"{_GROUND}|(?:off|from) {_GROUND}$|picked up (?:what lay|whatever lay)|raked up|"
    rf"{_FRUIT} (?:off|from) {_GROUND})\b"
)
#: Of juice, where nobody drops a jar.
_DROPS = (
    r"(?:^|\b(?:from|of|with|the|our|some|all|mostly|half|only) )(?:the )?(?:drops|drop apples|"
    r"dropped (?:apples|fruit|ones))\b(?! (?:of|in (?:price|october|temp)))"
)


def as_windfalls(clause: str) -> str:
    """The clause with fruit from the ground under its one name."""
    return re.sub(_PICKED_UP, "windfalls", clause) if affirmed(clause, _PICKED_UP) else clause


def of_fallen_fruit(method: Method, food: FoodFacts, clause: str) -> bool:
    """Whether it is juice, of no process, and pressed of such fruit."""
    pressed = "juice" in food.classes and method is not Method.BOUGHT and method not in LIDDED
    return pressed and affirmed(clause, rf"{_PICKED_UP}|{_DROPS}")
