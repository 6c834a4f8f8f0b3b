"""One measure in metric: a temperature, weight, volume, length, height or pressure."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction
from math import ceil, floor
from typing import NamedTuple

from pantry_tui.core.metric.found import Found, in_steps, measured, nearest, say, way_of

# -- temperatures ---------------------------------------------------------------------------------

#: From this °F on a figure without a word is a heat that food must reach, below it a cold that it
#: must not pass.
_HEAT_F = 110
_TENTH = Fraction(1, 10)
_FURTHER = re.compile(
    r" (?:warmer|colder|cooler|hotter|above boiling|too (?:warm|cold)|apart|more)\b"
)
PER = re.compile(r"(?:\+|\bper|\beach|\bevery|\bby|\bwithin|\boff by)[ +]*$")
_OUTER = re.compile(r"\b(?:stood at|between|danger)\b[^.]*$")


def celsius(fahrenheit: Fraction) -> Fraction:
    """Exactly."""
    return (fahrenheit - 32) * 5 / 9


def temperature(found: Found) -> str:
    if found.high is not None:
        return f"{_degrees_between(found)} °C"
    if PER.search(found.before) or _FURTHER.match(found.after):
        return f"{say(in_steps(found.low * 5 / 9, _TENTH, nearest))} °C"
    heat = found.low >= _HEAT_F
    way = way_of(found, heat=heat)
    if way is None:
        way = nearest if found.close or measured(found) else ceil if heat else floor
    whole = way is floor and found.low <= 10  # a freezer: 0 °F is said as -18 °C
    said = say(in_steps(celsius(found.low), Fraction(1) if whole else _TENTH, way))
    return f"{said}C" if found.close else f"{said} °C"


def _degrees_between(found: Found) -> str:
    """A range that is no wider: in whole degrees, where those hold some of it."""
    assert found.high is not None
    low, high = celsius(found.low), celsius(found.high)
    mid = " to " if found.mid in ("-", "–") else found.mid
    if found.mid == " or " or _OUTER.search(found.before.casefold()):
        ends = in_steps(low, _TENTH, floor), in_steps(high, _TENTH, ceil)
    elif ceil(low) < floor(high):
        ends = Fraction(ceil(low)), Fraction(floor(high))
    else:
        ends = in_steps(low, _TENTH, ceil), in_steps(high, _TENTH, floor)
    return f"{say(ends[0])}{mid}{say(ends[1])}"


# -- everything else ------------------------------------------------------------------------------


class Measure(NamedTuple):
    """A kind of measure: what of the small unit one is, when the large one says it, and in which
    steps each is said up to a size."""

    factors: dict[str, Fraction]
    small: str
    large: str
    of: int  # of the small unit in the large one
    thousand: int  # from so many on the large one says it
    steps: tuple[tuple[int, Fraction], ...]  # up to so many of the small unit, in such steps


_LB = Fraction("453.59237")
WEIGHT = Measure(
    {"lb": _LB, "oz": _LB / 16},
    "g", "kg", 1000, 1000,
    ((200, Fraction(1)), (1000, Fraction(10)), (5000, Fraction(50)), (50_000, Fraction(100)),
     (10**9, Fraction(1000))),
)  # fmt: skip
PINT = Fraction("473.176473")
#: A cup is said as 240 ml everywhere (21 CFR 101.9, the cup of labels), so that cups to cups stay
#: in proportion and what is given in cups is never less.
VOLUME = Measure(
    {"gallon": PINT * 8, "quart": PINT * 2, "pint": PINT, "cup": Fraction(240),
     "fl oz": PINT / 16},
    "ml", "l", 1000, 1000,
    ((100, Fraction(5)), (1000, Fraction(10)), (10_000, Fraction(100)), (10**9, Fraction(1000))),
)  # fmt: skip
LENGTH = Measure(
    {"inch": Fraction("25.4")}, "mm", "cm", 10, 25,
    ((50, Fraction(1)), (10**9, Fraction(5))),
)  # fmt: skip
SPELLED = {
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "oz": "oz", "ounce": "oz",
    "ounces": "oz", "fl oz": "fl oz", "fluid ounce": "fl oz", "fluid ounces": "fl oz",
    "gallon": "gallon", "gallons": "gallon", "gal": "gallon", "quart": "quart", "quarts": "quart",
    "qt": "quart", "pint": "pint", "pints": "pint", "pt": "pint", "cup": "cup", "cups": "cup",
    "inch": "inch", "inches": "inch",
}  # fmt: skip


def of(measure: Measure, found: Found) -> str:
    unit = found.unit.casefold().rstrip(".")
    factor = measure.factors[SPELLED[unit]]
    way = way_of(found)
    if way is None:
        way = floor if measure is LENGTH and found.after.startswith("-") else nearest
    low = found.low * factor
    if found.high is None:
        return sized(measure, low, way)
    high = found.high * factor
    mid = " to " if found.mid in ("-", "–") else found.mid
    if high < measure.thousand or low >= measure.thousand:
        first, _, name = sized(measure, low, way).partition(" ")
        return f"{first}{mid}{sized(measure, high, way).partition(' ')[0]} {name}"
    return f"{sized(measure, low, way)}{mid}{sized(measure, high, way)}"


def sized(measure: Measure, number: Fraction, way: Callable[[Fraction], int]) -> str:
    """So much of the small unit in the steps a kitchen takes, by the larger unit from one on."""
    step = next(step for most, step in measure.steps if number < most)
    shown = in_steps(number, step, way) or step
    if shown >= measure.thousand:
        return f"{say(shown / measure.of)} {measure.large}"
    return f"{say(shown)} {measure.small}"


_FOOT = Fraction("0.3048")


def altitude(found: Found) -> str:
    """Metres: a limit is rounded down, so that no kitchen comes out below one that it is above."""
    way = floor if found.high is not None or way_of(found) else nearest
    low = say(in_steps(found.low * _FOOT, Fraction(1), way))
    if found.high is None:
        return f"{low} m"
    mid = " to " if found.mid in ("-", "–") else found.mid
    return f"{low}{mid}{say(in_steps(found.high * _FOOT, Fraction(1), way))} m"


_KPA = Fraction("6.894757")


def pressure(found: Found) -> str:
    """Kilopascals, never less; how far a gauge may be off is rounded down."""
    off = PER.search(found.before) or re.search(r"off by [^.]*$", found.before)
    way = floor if off else ceil
    low = say(in_steps(found.low * _KPA, Fraction(1), way))
    if found.high is None:
        return f"{low} kPa"
    return f"{low} to {say(in_steps(found.high * _KPA, Fraction(1), way))} kPa"
