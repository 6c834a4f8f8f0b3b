"""How many days food thaws in a refrigerator."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from pantry_tui.core.amounts import Amount

#: A day in the refrigerator thaws so many pounds (USDA FSIS: a day for each 4 to 5 lb; the
#: extension services that carry it say 5).
THAWS_LB_A_DAY = 5
#: No times are published for a larger piece (USDA, turkeys of 20 to 24 lb, as quoted): what weighs
#: more is taken for one, and a box of packs thaws sooner than it.
LARGEST_LB = Fraction(24)
_POUND = {
    "lb": Fraction(1),
    "oz": Fraction(1, 16),
    "g": Fraction("0.00220462"),
    "kg": Fraction("2.20462"),
}


def thaw_days(size: str, amount: Amount | None) -> int:
    """How many days so much of a size thaws in the refrigerator; one where nobody knows its
    weight, and none beyond those of `LARGEST_LB`."""
    held = _said(size) if amount is None else amount
    pound = None if held is None else _POUND.get(held.unit)
    if held is None or pound is None:
        return 1
    weighs = min(held.number * pound, LARGEST_LB)
    return max(1, math.ceil(weighs / THAWS_LB_A_DAY))


def _said(size: str) -> Amount | None:
    """("20 lb bag") -> 20 lb; a volume or nothing is no weight."""
    said = re.search(r"(?<![\d.])(\d{1,7}(?:\.\d{1,6})?)[\s-]*(lb|oz|kg|g)s?\b", size.casefold())
    return Amount(Fraction(said[1]), said[2]) if said else None
