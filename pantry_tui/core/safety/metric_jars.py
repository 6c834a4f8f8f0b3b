"""Whose times serve for metric jars: 250 ml, 500 ml, 1 litre.

Canner and jar makers' manuals in Canada print these with the times of half-pint, pint and quart;
the federal guide (USDA AIB 539) does not speak of them, and they are 5.7 % larger. `MAKER` follows
the manuals for acid food, and for low-acid food takes the next larger published jar, 1 litre the
quart's time with a word beside it. `STRICT` takes the published jar that holds as much or more.
"""

from __future__ import annotations

from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.jars import read_size
from pantry_tui.core.words import Method

MAKER, STRICT = "maker", "strict"
#: What a household may say; where it says nothing, its units decide.
JARS_BY = (MAKER, STRICT)
#: Said beside any verdict of low-acid food in a litre.
LITRE = "The jar's time is by a maker's manual; the federal guide has no figure for a litre."

#: By the first letters of a metric unit, how many millilitres it is.
_MILLILITRES = {"ml": 1, "mi": 1, "l": 1000, "li": 1000}
#: Millilitres up to which a jar takes the time of another: acid food and jam, then low-acid food.
_ACID = ((250, "half-pint"), (500, "pint"), (1000, "quart"))
_LOW_ACID = ((250, "pint"), (1000, "quart"))


def in_millilitres(size: str) -> float | None:
    """("1 litre jars") -> 1000; None for a size that is no metric one."""
    found = read_size(size)
    if found is None or found[1] not in _MILLILITRES:
        return None
    number, unit = found
    return number * _MILLILITRES[unit]


def low_acid(method: Method, food: FoodFacts) -> bool:
    """Whether it is food of low acid, kept by heat and pressure alone."""
    return method is Method.PRESSURE and not food.is_acid


def by_maker(size: str, *, low_acid: bool) -> str | None:
    """The published jar whose time a metric one takes by the makers' manuals; None for one that is
    not metric, or that no manual speaks of (above a litre)."""
    holds = in_millilitres(size)
    if holds is None:
        return None
    table = _LOW_ACID if low_acid else _ACID
    return next((jar for most, jar in table if holds <= most), None)


def is_litre(size: str) -> bool:
    """Whether a jar is larger than a quart and no larger than a litre."""
    holds = in_millilitres(size)
    return holds is not None and 946.4 < holds <= 1000
