"""Conversion between units: the only room that imports pint, and only when asked.

The registry holds our own few definitions, no prefixes and no constants, so that nothing typed in
a kitchen is taken for a physicist's unit. Figures: NIST Handbook 44, appendix C (from memory).
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from pantry_tui.core.amounts import read_amount, say_amount
from pantry_tui.errors import BadInput, Refused

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


def subtract(have: str, take: str) -> str:
    """What is left of `have` after `take`, in the unit of `have`; "" when nothing is.

    Raises Refused when more is asked than is there.
    """
    there, unit = read_amount(have)
    wanted, other = read_amount(take)
    if not other or not unit:
        raise BadInput(f"Give the amount with its unit, like 2 {unit or 'lb'}.")
    left = there - convert(wanted, other, unit)
    if left < 0:
        raise Refused(f"Only {have} is left: take {have} or less.")
    return say_amount(left, unit) if left >= Fraction(1, 100) else ""
