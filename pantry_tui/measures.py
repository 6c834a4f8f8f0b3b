"""Conversion between units: the only room that imports pint, and only when asked.

The registry holds our own few definitions, no prefixes and no constants, so that nothing typed in
a kitchen is taken for a physicist's unit. Figures: NIST Handbook 44, appendix C (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from pantry_tui.errors import Refused

_DEFINITIONS = (
    "g = [mass]",
    "kg = 1000 * g",
    "lb = 45359237/100000 * g",
    "oz = 45359237/1600000 * g",
    "ml = [volume]",
    "l = 1000 * ml",
    "tsp = 4928921594/1000000000 * ml",
    "tbsp = 3 * tsp",
    "fl_oz = 2 * tbsp",
    "cup = 8 * fl_oz",
    "pint = 2 * cup",
    "quart = 2 * pint",
    "gallon = 4 * quart",
)


@cache
def _registry() -> Any:
    from pint import UnitRegistry

    registry: Any = UnitRegistry(None, non_int_type=Fraction)
    for line in _DEFINITIONS:
        registry.define(line)
    return registry


def convert(amount: Fraction, unit: str, to: str) -> Fraction:
    """`amount` of `unit` in `to`, exactly. Raises Refused between weight and volume."""
    if unit == to:
        return amount
    from pint import DimensionalityError

    quantity = _registry().Quantity(amount, unit.replace(" ", "_"))
    try:
        return Fraction(quantity.to(to.replace(" ", "_")).magnitude)
    except DimensionalityError:
        raise Refused(f"{unit} and {to} do not convert: give the amount in {to}.") from None
