"""How much salt a record says, as a share of the weight."""

from __future__ import annotations

import re

from pantry_tui.core.amounts import in_decimals
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
_RANGE = r"(?:(\d+(?:[.,]\d+)?)(?:\s*(?:-|–|to|or)\s*(\d+(?:[.,]\d+)?))?)?\s*"
_AMOUNT = rf"{_RANGE}\b({_UNIT})\b"
_VOLUMES = (
    (r"l|lit(?:re|er)s?", "l"), (r"ml|millilit(?:re|er)s?", "ml"), (r"quarts?|qts?", "quart"),
    (r"pints?|pts?", "pint"), (r"gallons?|gals?", "gallon"),
)  # fmt: skip
_MILLILITRES = {"l": 1000.0, "ml": 1.0, "quart": 946.4, "pint": 473.2, "gallon": 3785.4}
_POURED = rf"{_RANGE}\b({'|'.join(f'(?:{pattern})' for pattern, _ in _VOLUMES)})\b"
#: A share of the water, and nobody knows how much of it there is.
_OF_WATER = r"brine|water|\bl\b|lit(?:re|er)s?|\bml\b|quart|pint"


def read_salt(text: str) -> float | None:
    """("2.5%", "3 tbsp to 5 lb", "1 lb per 4 lb") -> per cent of all together; the smaller of two
    percents, of a range the least salt to the most food, and the smaller of two weights is the
    salt. None for what says no share of the food: nothing, spoons alone, a brine, of which nobody
    knows how much there is to how much food."""
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
    first, second = (_grams(one, plain) for one in amounts)
    if amounts[1][2][:1] in "tc" or max(second) <= 0:
        return None
    salt, food = sorted((first, second))
    return _share(min(salt), max(food))


def read_brine(text: str) -> float | None:
    """("3% brine", "5 % of the water", "30 g to 1 l") -> per cent of the water or of the brine,
    whichever was meant, of a range the least; None where it is not said of them. Of all together
    the share is less."""
    if not says_of_brine(text):
        return None
    plain = spelled_out(as_percent(text))
    percent = read_percent(plain)
    if percent is not None:
        return percent
    spaced = _spaced(in_decimals(plain))
    salt, water = re.findall(_AMOUNT, spaced), re.findall(_POURED, spaced)
    if re.search(r"\d\s*/\s*\d", spaced):
        return None
    if len(salt) == 2 and not water:
        return read_salt(re.sub(r"\b(?:brine|water)\b", "", plain))
    if len(salt) != 1 or len(water) != 1:
        return None
    unit = next(name for pattern, name in _VOLUMES if re.fullmatch(pattern, water[0][2]))
    poured = [float(one.replace(",", ".")) * _MILLILITRES[unit] for one in water[0][:2] if one]
    return _share(min(_grams(salt[0], plain)), max(poured, default=_MILLILITRES[unit]))


def _share(salt: float, of: float) -> float:
    return round(100 * salt / (salt + of), 1)


def as_percent(text: str) -> str:
    """("2", "two") -> "2 %": of a number alone, which may be meant so; else as it is."""
    plain = spelled_out(text)
    number = re.sub(r"\bbrine\b", "", plain)
    bare = re.search(r"\d", number) and not re.search(r"[^\W\d_]|%", number)
    return f"{number.strip()} %{' brine' if number != plain else ''}" if bare else text


def says_no_share(text: str) -> bool:
    """("1 tsp", "20 g") Whether it counts salt, and not to how much of the food or the water."""
    typed = as_percent(text)
    counted = re.search(r"\d", spelled_out(text)) is not None
    return counted and read_salt(typed) is None and read_brine(typed) is None


def says_of_brine(text: str) -> bool:
    """("3% brine", "30 g to 1 l") Whether it speaks of the water that the food lay in."""
    return re.search(_OF_WATER, _spaced(text.casefold())) is not None


def _spaced(plain: str) -> str:
    return re.sub(r"(\d)(?=[a-z])", r"\1 ", plain)


def _grams(amount: tuple[str, str, str], text: str) -> tuple[float, ...]:
    """The grams of one amount, two of a range; a unit alone is one of it."""
    *numbers, unit = amount
    kind = next(name for pattern, name in _UNITS if re.fullmatch(pattern, unit))
    light = re.search(r"kosher|coarse", text) is not None
    each = (_GRAMS | (_LIGHT_SPOONS if light else _SPOONS))[kind]
    found = []
    for number in filter(None, numbers):
        thousands = kind == "g" and re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", number)
        found.append(float(re.sub(r"[.,]", "" if thousands else ".", number)) * each)
    return tuple(found) or (each,)
