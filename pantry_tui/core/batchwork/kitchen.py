"""What a kitchen measures with, in grams and millilitres, exactly.

Factors: NIST Handbook 44, appendix C; the imperial measures by the UK Weights and Measures Act
(from memory, both exact by definition).
"""

from __future__ import annotations

from fractions import Fraction

_POUND = Fraction(45359237, 100_000)
_GALLON = Fraction(3_785_411_784, 1_000_000)
_UK_GALLON = Fraction(454_609, 100)

#: Weights in grams.
GRAMS: dict[str, Fraction] = {
    "mg": Fraction(1, 1000), "g": Fraction(1), "kg": Fraction(1000), "oz": _POUND / 16,
    "lb": _POUND, "stone": _POUND * 14,
}  # fmt: skip

#: Volumes in millilitres. A cup, a pint, a quart and a gallon are of the US unless named.
MILLILITRES: dict[str, Fraction] = {
    "ml": Fraction(1), "cl": Fraction(10), "dl": Fraction(100), "l": Fraction(1000),
    "tsp": _GALLON / 768, "tbsp": _GALLON / 256, "fl oz": _GALLON / 128, "cup": _GALLON / 16,
    "pint": _GALLON / 8, "quart": _GALLON / 4, "gallon": _GALLON, "metric cup": Fraction(250),
    "uk fl oz": _UK_GALLON / 160, "uk pint": _UK_GALLON / 8, "uk quart": _UK_GALLON / 4,
    "uk gallon": _UK_GALLON,
}  # fmt: skip

#: Every spelling that is taken, and the unit it means.
SPELLINGS: dict[str, str] = {
    "milligram": "mg", "milligrams": "mg", "gram": "g", "grams": "g", "gramme": "g",
    "grammes": "g", "gr": "g", "kilo": "kg", "kilos": "kg", "kilogram": "kg", "kilograms": "kg",
    "ounce": "oz", "ounces": "oz", "lbs": "lb", "pound": "lb", "pounds": "lb", "stones": "stone",
    "millilitre": "ml", "milliliter": "ml", "millilitres": "ml", "milliliters": "ml",
    "litre": "l", "liter": "l", "litres": "l", "liters": "l", "teaspoon": "tsp",
    "teaspoons": "tsp", "tsps": "tsp", "tablespoon": "tbsp", "tablespoons": "tbsp",
    "tbsps": "tbsp", "tbs": "tbsp", "floz": "fl oz", "fluid ounce": "fl oz",
    "fluid ounces": "fl oz", "cups": "cup", "pints": "pint", "pt": "pint", "pts": "pint",
    "quarts": "quart", "qt": "quart", "qts": "quart", "gallons": "gallon", "gal": "gallon",
    "metric cups": "metric cup", "imperial pint": "uk pint", "imperial pints": "uk pint",
    "uk pints": "uk pint", "imperial quart": "uk quart", "imperial quarts": "uk quart",
    "uk quarts": "uk quart", "imperial gallon": "uk gallon", "imperial gallons": "uk gallon",
    "uk gallons": "uk gallon", "uk fluid ounces": "uk fl oz", "imperial fl oz": "uk fl oz",
    **{unit: unit for unit in (*GRAMS, *MILLILITRES)},
}  # fmt: skip


def is_weight(unit: str) -> bool:
    return unit in GRAMS


def is_volume(unit: str) -> bool:
    return unit in MILLILITRES


def size(unit: str) -> Fraction:
    """One of it in grams or millilitres. Raises KeyError for what is neither."""
    return GRAMS[unit] if unit in GRAMS else MILLILITRES[unit]


def to(amount: float | Fraction, unit: str) -> float:
    """Grams or millilitres in `unit`."""
    return (
        float(amount / size(unit)) if isinstance(amount, Fraction) else amount / float(size(unit))
    )
