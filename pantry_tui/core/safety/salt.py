"""How much salt a record says, as a share of the weight."""

from __future__ import annotations

import re

from pantry_tui.core.safety.measured import read_percent, spelled_out

#: What ferments holds no more than this (Colorado State University Extension, kimchi: 2 to 5 %).
MOST_PERCENT = 5.0
#: A fifth of the whole: one part of salt to four of vegetables keeps them without fermenting
#: (Cruess 1918, a reprint; data/figures.csv salt-heavy).
HEAVY_PERCENT = 20.0
_GRAMS = {"g": 1.0, "kg": 1000.0, "oz": 28.35, "lb": 453.6}
#: Grams of salt in a spoon (data/figures.csv): of flaked or coarse salt as light as it comes.
_SPOONS = {"tsp": 6.0, "tbsp": 18.0, "cup": 292.0}
_LIGHT_SPOONS = {"tsp": 2.8, "tbsp": 8.4, "cup": 134.4}
_UNITS = (
    (r"kg", "kg"), (r"g", "g"), (r"oz|ounces?", "oz"), (r"lbs?|pounds?", "lb"),
    (r"tsps?|teaspoons?", "tsp"), (r"tbsps?|tablespoons?", "tbsp"), (r"cups?", "cup"),
)  # fmt: skip
_UNIT = "|".join(f"(?:{pattern})" for pattern, _ in _UNITS)
_AMOUNT = rf"(\d+(?:[.,]\d+)?)?\s*\b({_UNIT})\b"
#: A share of the water, and nobody knows how much of it there is.
_OF_WATER = r"brine|water|\bl\b|lit(?:re|er)s?|\bml\b|quart|pint"


def read_salt(text: str) -> float | None:
    """("2.5%", "3 tbsp to 5 lb", "1 lb per 4 lb") -> per cent of all together; the smaller of two
    percents, and the smaller of two weights is the salt. None for what says no share of the food:
    nothing, spoons alone, a brine, of which nobody knows how much there is to how much food."""
    plain = spelled_out(text)
    percent = read_percent(plain)
    if percent is not None:
        return None if says_of_brine(plain) else percent
    spaced = _spaced(plain)
    if says_of_brine(plain) or re.search(r"\d\s*/\s*\d", spaced):
        return None
    amounts = re.findall(_AMOUNT, spaced)
    if len(amounts) != 2:
        return None
    salt, food = (_grams(number, unit, plain) for number, unit in amounts)
    if amounts[1][1][:1] in "tc" or food <= 0:
        return None
    return round(100 * min(salt, food) / (salt + food), 1)


def read_brine(text: str) -> float | None:
    """("3% brine", "5 % of the water") -> per cent of the water or of the brine, whichever was
    meant; None where it is not said of them. Of all together the share is less."""
    return read_percent(spelled_out(text)) if says_of_brine(text) else None


def says_of_brine(text: str) -> bool:
    """("3% brine", "30 g to 1 l") Whether it speaks of the water that the food lay in."""
    return re.search(_OF_WATER, _spaced(text.casefold())) is not None


def _spaced(plain: str) -> str:
    return re.sub(r"(\d)(?=[a-z])", r"\1 ", plain)


def _grams(number: str, unit: str, text: str) -> float:
    kind = next(name for pattern, name in _UNITS if re.fullmatch(pattern, unit))
    thousands = kind == "g" and re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", number)
    many = float(re.sub(r"[.,]", "" if thousands else ".", number)) if number else 1.0
    light = re.search(r"kosher|coarse", text) is not None
    return many * (_GRAMS | (_LIGHT_SPOONS if light else _SPOONS))[kind]
