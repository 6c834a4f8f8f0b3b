"""Amounts as people write them: a number and a unit, exact."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.errors import BadInput

#: Every spelling taken, and the unit it means. Ounces are weight; "fl oz" is volume.
UNITS = {
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb", "oz": "oz", "ounce": "oz",
    "ounces": "oz", "g": "g", "gram": "g", "grams": "g", "kg": "kg", "kilo": "kg", "kilos": "kg",
    "kilogram": "kg", "kilograms": "kg", "ml": "ml", "millilitre": "ml", "milliliter": "ml",
    "l": "l", "litre": "l", "liter": "l", "litres": "l", "liters": "l", "cup": "cup",
    "cups": "cup", "pint": "pint", "pints": "pint", "pt": "pint", "quart": "quart",
    "quarts": "quart", "qt": "quart", "gallon": "gallon", "gallons": "gallon", "gal": "gallon",
    "fl oz": "fl oz", "tbsp": "tbsp", "tsp": "tsp",
}  # fmt: skip

#: No household has more of one thing, in any unit.
MOST = 1_000_000

#: Every fraction that Unicode has as one sign, as it is typed otherwise.
VULGAR = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5",
    "⅘": "4/5", "⅙": "1/6", "⅚": "5/6", "⅐": "1/7", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅑": "1/9", "⅒": "1/10",
}  # fmt: skip
_SIGNS = f"[{''.join(VULGAR)}⁄]"
#: Nobody parts a unit finer: 70/80 is a range, and 15/20 may be one.
_MIXED = r"(?:(?<![\d.,])(\d{1,3})\s+)?(?<![\d.,])(\d{1,3})/([2-9]|1[026])(?![\d.,]|\s*/)"
#: A number without its nought, and a raised point; behind a word a comma parts, as in "pint,5".
_NO_NOUGHT = r"(?<![\w.,%)])(?=[.,]\d)"
_RAISED = r"(?<!\w)[·٫](?=\d)|(?<=\d)[·٫](?=\d)"
_PARTED_STROKE = r"(?<=\d)\s*/\s*(?=\d)"
_NUMBER = r"(?:(\d{1,7}) )?(\d{1,7})/(\d{1,7})|(\d{1,7}(?:\.\d{1,6})?)"


def plain_digits(text: str) -> bool:
    """Whether it is nothing, or a whole number as a record has it: most of what readers of figures
    are asked, at every start, and they need not make their patterns for it."""
    return not text or (text.isascii() and text.isdigit())


def fractions_spelled(text: str) -> str:
    """("1½ l") -> "1 1/2 l": fractions that are one sign, and the stroke of those that are set."""
    if text.isascii():
        return text
    return re.sub(_SIGNS, lambda found: f" {VULGAR[found[0]]}" if found[0] in VULGAR else "/", text)


def figures_spelled(text: str) -> str:
    """(".5 %", ",5", "1 / 2 tbsp", "½") -> "0.5 %", "0,5", "1/2 tbsp", " 1/2": every number as the
    readers of numbers know it. Whoever looks for a number calls this first."""
    if plain_digits(text):
        return text
    plain = re.sub(_PARTED_STROKE, "/", fractions_spelled(text))
    return re.sub(_NO_NOUGHT, "0", re.sub(_RAISED, ".", plain))


def in_decimals(text: str) -> str:
    """("1½ %", "2 ½ %", "4 3/4", ".5") -> "1.5 %", "2.5 %", "4.75", "0.5": every fraction as it is
    said otherwise."""
    if plain_digits(text):
        return text
    return re.sub(
        _MIXED,
        lambda found: f"{int(found[1] or 0) + int(found[2]) / int(found[3]):g}",
        figures_spelled(text),
    )


def read_amount(text: str) -> tuple[Fraction, str]:
    """("1½ lb") -> (3/2, "lb"); a bare number has the unit "". Raises BadInput.

    A decimal comma is refused (1,5 could be 15 or one and a half), and so are zero, negative
    and absurd amounts.
    """
    plain = " ".join(figures_spelled(text.lower()).split())
    plain = re.sub(r"^half-(?=(?:pint|gallon)s?$)", "1/2 ", plain)  # the sizes of jars
    if re.search(r"\d,\d", plain):
        thousands = re.search(r"(?<!\d)(\d{1,3}),(\d{3})(?!\d)", plain)
        if thousands is not None:
            low, high = f"{float('.'.join(thousands.groups())):g}", "".join(thousands.groups())
            raise BadInput(
                f"{text[:40]!r} could be read two ways, {low} or {high}: write it plainly."
            )
        raise BadInput(f"{text!r} could be read two ways: write the number with a point.")
    match = re.match(_NUMBER, plain)
    if match is None:
        raise BadInput(f"{text[:40]!r} is no amount: write 2, 1/2 lb or 1.5 kg.")
    whole, above, below, decimal = match.groups()
    if decimal is not None:
        number = Fraction(decimal)
    elif int(below) == 0:
        raise BadInput(f"{text!r} divides by nothing: write another number.")
    else:
        number = Fraction(int(whole or 0)) + Fraction(int(above), int(below))
    unit = plain[match.end() :].strip().rstrip(".")
    if re.match(r"\d{3}(?!\d)", unit) and decimal is not None:
        raise BadInput(
            f"{text[:40]!r} could be {decimal}{unit} or {decimal} of {unit}: write it plainly."
        )
    if unit and unit not in UNITS:
        raise BadInput(f"{unit[:40]!r} is no unit known here: use lb, oz, g, kg, ml, l, cup ...")
    if not 0 < number <= MOST:
        raise BadInput(f"{text[:40]!r} is no possible amount: more than 0, at most 1,000,000.")
    return number, UNITS[unit] if unit else ""


#: What people halve and quarter.
_IN_PARTS = frozenset({"", "cup", "pint", "quart", "gallon", "tbsp", "tsp"})


class Amount(NamedTuple):
    """An exact amount and its unit; pieces have the unit "". As text: "38 lb"."""

    number: Fraction
    unit: str = ""

    def __str__(self) -> str:
        return say_amount(self.number, self.unit)

    @property
    def exact(self) -> str:
        """As the log keeps it: "113/3 lb"."""
        return f"{self.number} {self.unit}".strip()


#: The step in which a kitchen takes a unit: a quarter pound, ten grams, one piece.
_STEP = {
    "g": Fraction(10), "ml": Fraction(10), "kg": Fraction(1, 20), "l": Fraction(1, 20),
    "oz": Fraction(1, 2), "fl oz": Fraction(1, 2), "tsp": Fraction(1, 4), "tbsp": Fraction(1, 4),
}  # fmt: skip


#: Smaller ones where less than two of it are taken: a quarter pound of bacon is many servings.
_SMALL_STEPS = {
    "lb": (Fraction(1, 8), Fraction(1, 16)), "kg": (Fraction(1, 100),), "l": (Fraction(1, 100),),
    "gallon": (Fraction(1, 8), Fraction(1, 16)), "quart": (Fraction(1, 8),),
    "pint": (Fraction(1, 8),),
}  # fmt: skip


def kitchen(amount: Amount) -> Amount:
    """The amount rounded to what a kitchen measures, at least one step of it: 0.276 lb are a
    quarter of a pound, and two ounces are no quarter."""
    step = _STEP.get(amount.unit, Fraction(1, 4))
    for smaller in _SMALL_STEPS.get(amount.unit, ()):
        if step * 2 > amount.number:
            step = smaller
    steps = max(1, round(amount.number / step))
    return Amount(steps * step, amount.unit)


def kitchen_count(number: float) -> str:
    """Servings as a kitchen counts them: whole ones, under three in halves and quarters ("4" for
    4.4092, "2 1/4"); what is a trifle is still a quarter."""
    if number <= 0:
        return "0"
    if number >= 2.875:
        return f"{number:.0f}"
    return say_amount(Fraction(max(1, round(number * 4)), 4), "")


def exact_amount(text: str) -> Amount:
    """("113/3 lb") -> Amount; reads what `Amount.exact` wrote. Raises ValueError."""
    number, _, unit = text.partition(" ")
    # No exponents: "1e999999999" would be a number of a thousand million digits.
    if (unit and unit not in UNITS) or not re.fullmatch(r"-?\d{1,200}(/0*[1-9]\d{0,199})?", number):
        raise ValueError(f"{text[:40]!r} is no amount")
    return Amount(Fraction(number), unit)


def amount_of(text: str) -> Amount:
    """("40lb") -> Amount. Raises BadInput as `read_amount` does."""
    return Amount(*read_amount(text))


def say_amount(number: Fraction, unit: str) -> str:
    """At most two decimals, no trailing noughts: "24 lb", "1.5 kg"; pieces and what is poured from
    a measure in parts: "1/2 pint", "2 1/4"."""
    shown = f"{float(number):.2f}".rstrip("0").rstrip(".")
    if unit in _IN_PARTS and 1 < number.denominator <= 8:
        whole, rest = divmod(number, 1)
        shown = f"{whole} {rest}" if whole else str(rest)
    return f"{shown} {unit}".strip()


def read_temperature(text: str, bare: str = "F") -> float:
    """("55F", "13 C", "-18c") -> °F. A bare number is in `bare`. Raises BadInput."""
    match = re.fullmatch(r"\s*(-?\d{1,3}(?:\.\d{1,3})?)\s*°?\s*([fFcC]?)\s*", text)
    if match is None:
        raise BadInput(f"{text[:40]!r} is no temperature: write 55F or 13C.")
    number = float(match[1])
    fahrenheit = number if (match[2] or bare).upper() == "F" else number * 9 / 5 + 32
    if not -100 <= fahrenheit <= 250:
        raise BadInput(f"{text.strip()} is no temperature of a place: give -100F to 250F.")
    return fahrenheit


#: A whole number whose thousands are set off, as no decimal is written: 4,800 or 4 800.
_PARTED = r"(?<![\d.,])\d{1,3}(?:[ ,'’\u00a0\u202f]\d{3})+(?!\d|[.,'’]\d)"
_HIGH_UNIT = r"(ft\.?|feet|foot|m|metres?|meters?|['’′])"


def in_digits(text: str) -> str:
    """("4,800", "4 800 ft") -> "4800", "4800 ft": for whole numbers alone, since of a weight 1,200
    may be 1.2."""
    return re.sub(_PARTED, lambda found: re.sub(r"\D", "", found[0]), text)


def altitudes_in_digits(text: str) -> str:
    """The same of what stands before feet or metres in a longer text."""
    high = rf"{_PARTED}(?=\s*(?:ft|feet|foot|m|met(?:re|er)s?)\b)"
    return re.sub(high, lambda found: re.sub(r"\D", "", found[0]), text, flags=re.IGNORECASE)


def read_altitude(text: str, degree: str = "F") -> int:
    """("1800ft", "4,800 ft", "550 m", "1.8 km", "1800") -> feet; a bare number is feet, but metres,
    the stricter reading, where a bare `degree` is °C. Raises BadInput, also for 4.800, which could
    be read two ways."""
    far = re.fullmatch(r"\s*(\d{1,2}(?:[.,]\d{1,3})?)\s*(?:km|kilomet(?:re|er)s?)\s*", text.lower())
    if far is not None:
        return round(float(far[1].replace(",", ".")) * 3280.84)
    plain = re.sub(r"\s+(?:above|over) sea[ -]level\s*$", "", in_digits(text.lower()))
    match = re.fullmatch(rf"\s*(-?\d{{1,5}})\s*{_HIGH_UNIT}?\s*", plain)
    if match is None and (either := re.match(r"\s*(\d{1,3})\.(\d{3})(?!\d)", plain)):
        low, high = f"{float(either[0]):g}", either[1] + either[2]
        raise BadInput(f"{text[:40]!r} could be {low} or {high}: write it plainly.")
    if match is None:
        raise BadInput(f"{text[:40]!r} is no altitude: write 1800ft or 550m.")
    number = int(match[1])
    unit = match[2] or ("m" if degree == "C" else "ft")
    return round(number * 3.28084) if unit.startswith("m") else number
