"""How many days food thaws in a refrigerator."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from pantry_tui.core.amounts import Amount

#: A day in the refrigerator thaws so many pounds (USDA FSIS: a day for each 4 to 5 lb; the
#: extension services that carry it say 5).
THAWS_LB_A_DAY = 5
#: So long thaws the largest piece for which times are published (USDA, turkeys of 20 to 24 lb, as
#: quoted): what weighs more is taken for one, and a box of packs thaws sooner than it.
MOST_DAYS = 5
_POUND = {
    "lb": Fraction(1),
    "oz": Fraction(1, 16),
    "g": Fraction("0.00220462"),
    "kg": Fraction("2.20462"),
}


def thaw_days(size: str, amount: Amount | None) -> int:
    """How many days so much of a size thaws in the refrigerator; one where nobody knows its
    weight, and no more than `MOST_DAYS`."""
    held = _said(size) if amount is None else amount
    if held is None:
        return 1
    pound = held.number * _POUND.get(held.unit, 0)
    return min(max(1, math.ceil(pound / THAWS_LB_A_DAY)), MOST_DAYS)


def _said(size: str) -> Amount | None:
    """("20 lb bag") -> 20 lb; a volume or nothing is no weight."""
    said = re.search(r"(?<![\d.])(\d{1,7}(?:\.\d{1,6})?)[\s-]*(lb|oz|kg|g)s?\b", size.casefold())
    return Amount(Fraction(said[1]), said[2]) if said else None
