"""How many days food thaws in a refrigerator."""

from __future__ import annotations

import math
import re
from fractions import Fraction

from pantry_tui.core.amounts import Amount

#: A day in the refrigerator thaws so many pounds (USDA FSIS: a day for each 4 to 5 lb; the
#: extension services that carry it say 5).
THAWS_LB_A_DAY = 5
_POUND = {"lb": 1.0, "oz": 1 / 16, "g": 1 / 453.592, "kg": 2.20462}


def thaw_days(size: str, amount: Amount | None) -> int:
    """How many days so much of a size thaws in the refrigerator; one where nobody knows its
    weight."""
    pounds = _pounds(amount) if amount is not None else _pounds_said(size)
    return max(1, math.ceil(round(pounds / THAWS_LB_A_DAY, 6)))


def _pounds(amount: Amount) -> float:
    return float(amount.number) * _POUND.get(amount.unit, 0.0)


def _pounds_said(size: str) -> float:
    """("20 lb bag") -> 20; a volume or nothing is no weight."""
    said = re.search(r"(\d+(?:\.\d+)?)[\s-]*(lb|oz|kg|g)s?\b", size.casefold())
    return _pounds(Amount(Fraction(said[1]), said[2])) if said else 0.0
