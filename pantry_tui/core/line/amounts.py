"""Weights, volumes and jar sizes in a line: "1 lb 4 oz", "half pints", "a pint and a half"."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core.amounts import UNITS
from pantry_tui.core.line.numbers import in_thousands, read_number
from pantry_tui.core.line.tokens import Kind, Line

#: More spellings than `UNITS` has, and units of other kitchens: unit and how many of it.
_MORE: dict[str, tuple[str, Fraction]] = {
    "pts": ("pint", Fraction(1)), "qts": ("quart", Fraction(1)), "gals": ("gallon", Fraction(1)),
    "kgs": ("kg", Fraction(1)), "kilograms": ("kg", Fraction(1)), "grammes": ("g", Fraction(1)),
    "gramme": ("g", Fraction(1)), "gms": ("g", Fraction(1)), "gm": ("g", Fraction(1)),
    "mls": ("ml", Fraction(1)), "cc": ("ml", Fraction(1)), "millilitres": ("ml", Fraction(1)),
    "milliliters": ("ml", Fraction(1)), "ltr": ("l", Fraction(1)), "ltrs": ("l", Fraction(1)),
    "cl": ("ml", Fraction(10)), "dl": ("ml", Fraction(100)), "ozs": ("oz", Fraction(1)),
    "stone": ("lb", Fraction(14)), "st": ("lb", Fraction(14)), "tonne": ("kg", Fraction(1000)),
    "centilitres": ("ml", Fraction(10)), "floz": ("fl oz", Fraction(1)),
}  # fmt: skip
WEIGHTS = frozenset({"lb", "oz", "g", "kg"})
_HALVES = {"half": Fraction(1, 2), "quarter": Fraction(1, 4)}


class Measured(NamedTuple):
    """An amount and where it stops. `bare`: only a unit was said ("pint jars"), which is one.
    `said` is how it was typed, which is how it is kept; `unsure` is a figure that is a thousand
    times as much in another country."""

    stop: int
    number: Fraction
    unit: str
    bare: bool = False
    said: str = ""
    unsure: str = ""

    @property
    def is_weight(self) -> bool:
        return self.unit in WEIGHTS

    @property
    def text(self) -> str:
        """ "500 ml", "pint", "half-pint", "1 1/2 pint"."""
        if self.unit in ("pint", "gallon") and self.number == Fraction(1, 2):
            return f"half-{self.unit}"
        if self.unit in ("pint", "quart", "gallon") and self.number == 1:
            return self.unit
        if self.unit == "l" and self.bare:
            return "litre"
        return f"{self.said or _say(self.number)} {self.unit}"


def _say(number: Fraction) -> str:
    if number.denominator == 1:
        return str(number.numerator)
    whole, rest = divmod(number, 1)
    if rest.denominator in (2, 3, 4, 8):
        return f"{whole} {rest}" if whole else str(rest)
    return f"{float(number):g}"


def unit_at(line: Line, i: int) -> tuple[int, str, Fraction]:
    """The unit that begins at token `i`: where it stops, its name, how many of it; "" where there
    is none. "fl oz" and "fluid ounces" are a volume."""
    word = line.word(i)
    if word == "fl" and line.word(i + 1) in ("oz", "ozs"):
        return i + 2, "fl oz", Fraction(1)
    if word == "fluid" and line.word(i + 1) in ("ounce", "ounces"):
        return i + 2, "fl oz", Fraction(1)
    if word in ("us", "u") and line.word(i + 1) in UNITS:
        stop, unit, times = unit_at(line, i + 1)
        return stop, unit, times
    if word == "#" and line.tokens[i].joined and i and line.tokens[i - 1].kind is Kind.NUMBER:
        return i + 1, "lb", Fraction(1)
    if word in _MORE:
        return i + 1, *_MORE[word]
    unit = UNITS.get(word, "")
    return (i + 1, unit, Fraction(1)) if unit else (i, "", Fraction(1))


def measure_at(line: Line, i: int) -> Measured | None:
    """The amount that begins at token `i`, its number included; None where there is none."""
    word = line.word(i)
    if word in _HALVES:
        after = i + 1 + line.says(i + 1, "a") + line.says(i + 1, "of", "a")
        stop, unit, times = unit_at(line, after)
        if unit:
            return Measured(stop, _HALVES[word] * times, unit)
    stop, unit, times = unit_at(line, i)
    if unit and times == 1 and len(word) > 1:
        half = line.says(stop, "and", "a", "half") or line.says(stop, "and", "half")
        number = Fraction(3, 2) if half else Fraction(1)
        return Measured(stop + half, number, unit, bare=not half)
    token = line.at(i)
    if token is not None and token.number is not None and in_thousands(token):
        stop, unit, times = unit_at(line, i + 1)
        unsure = "" if unit in ("kg", "l") else token.said
        return Measured(stop, token.number * times, unit, unsure=unsure) if unit else None
    found = read_number(line, i)
    if found is None or found.value is None or found.value <= 0:
        return None
    if found.word and line.word(found.stop) in _HALVES:
        return measure_at(line, found.stop)
    stop, unit, times = unit_at(line, found.stop)
    if not unit:
        return None
    half = line.says(stop, "and", "a", "half")
    number = found.value * times + (Fraction(times) / 2 if half else 0)
    stop += half
    more = _second(line, stop, unit)
    if more is not None:
        stop, number = more.stop, number + more.number / 16
    figures = line.tokens[i : found.stop]
    plain = len(figures) == 1 and figures[0].kind is Kind.NUMBER and times == 1
    figure = figures[0].said
    kept = plain and not half and more is None and "," not in figure and figure.isascii()
    kept = kept and figure[0] != "."
    said = figure.replace("-", " ") if kept else ""
    return Measured(stop, number, unit, said=said)


def _second(line: Line, i: int, unit: str) -> Measured | None:
    """The ounces of "3 lb 4 oz"."""
    if unit != "lb":
        return None
    i += line.says(i, "and")
    number = line.number(i)
    stop, second, times = unit_at(line, i + 1)
    if number is None or second != "oz" or times != 1 or number >= 16:
        return None
    return Measured(stop, number, second)
