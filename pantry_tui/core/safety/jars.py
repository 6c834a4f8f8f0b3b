"""Jars as people write them: how much one holds, and whose published time it takes."""

from __future__ import annotations

import re
from collections.abc import Mapping

from pantry_tui.core.safety.denial import DENIAL
from pantry_tui.core.safety.measured import spelled_out

#: Jars with published processes, smallest first, and their size in US fluid ounces.
JARS = {"half-pint": 8, "pint": 16, "quart": 32, "half-gallon": 64}
BIGGER = "bigger than a half-gallon"

_SIZE = (
    r"(?<![a-z])(oz|ounce|ml|millilitre|milliliter|l|litre|liter|pint|pt|quart|qt|gallon|gal)s?"
    r"(?![a-z])"
)
#: By the first two letters of a unit, how many US fluid ounces it holds.
_OUNCES = {
    "oz": 1.0, "ou": 1.0, "pi": 16.0, "pt": 16.0, "qu": 32.0, "qt": 32.0, "ga": 128.0,
    "ml": 1 / 29.5735, "mi": 1 / 29.5735, "l": 1000 / 29.5735, "li": 1000 / 29.5735,
}  # fmt: skip
#: What is a fifth more of the empire's pints, quarts and gallons (568 ml to 473).
_IMPERIAL, _OF_UK = 1.20095, re.compile(r"\b(?:imperial|imp|uk|british)\b")
_COUNTED = frozenset({"pi", "pt", "qu", "qt"})


def read_size(text: str) -> tuple[float, str] | None:
    """("1½ litre jars") -> (1.5, "li"): how much a jar holds, and the first letters of its unit;
    None without a unit. Of several numbers it is the one before the unit, alone 1."""
    plain = spelled_out(text).replace("half", "1/2")
    one_word = re.search(rf"\d-{_SIZE}", plain) is not None  # a 3-quart jar, and not three
    plain = plain.replace("-", " ")
    unit = re.search(_SIZE, plain)
    if unit is None:
        return None
    kind, before = unit[1][:2], plain[: unit.start()]
    part = re.search(r"(\d{1,3})/([1-9]\d?)(?!\d)", plain)  # behind it too: a pint and a half
    parted = ",." if kind in ("ml", "mi") else ","  # nobody writes a thousandth of a millilitre
    number = _last(before.replace(part[0], "") if part else before, parted)
    if part is not None:
        number = (number or (0 if part[0] in before else 1)) + int(part[1]) / int(part[2])
    elif number is None:
        number = 1
    elif number > 2 and kind in _COUNTED and not one_word:
        several = re.search(r"s\b", plain[unit.start() :])  # "7 pint jars" counts jars
        number = 1 if several else number
    return number * (_IMPERIAL if kind in _COUNTED | {"ga"} and _OF_UK.search(plain) else 1), kind


def _last(text: str, parted: str) -> float | None:
    """The last number. What parts its thousands, `parted`, is no decimal sign before three digits,
    unless it begins with a nought."""
    thousands = rf"[1-9]\d{{0,2}}(?:[{parted}]\d{{3}})+(?!\d)"
    found = re.findall(rf"{thousands}|\d+(?:[.,]\d+)?", text)
    if not found:
        return None
    whole = re.fullmatch(thousands, found[-1]) is not None
    return float(re.sub(r"[.,]", "" if whole else ".", found[-1]))


#: What parts two sizes from each other, and no number from its fraction.
_OTHER_SIZE = r"(?i)\b(?:and|or|to)\b|[,/](?!\d)|[;+&]"


def ounces(text: str) -> float | None:
    """("pint jars", "pints and quarts") -> 16.0, 32.0, what a jar holds in US fluid ounces, of
    several sizes the largest; None without a unit."""
    plain = text.removesuffix("s").removesuffix(" jar")
    if not plain or plain in JARS:  # as nearly all are written, and no pattern need be made
        return float(JARS[plain]) if plain else None
    several = [size for size in map(read_size, re.split(_OTHER_SIZE, text)) if size is not None]
    # "A pint and a half" is of one size.
    sizes = several if len(several) > 1 else [size for size in [read_size(text)] if size]
    return max((_OUNCES[unit] * number for number, unit in sizes), default=None)


def read_jar(text: str) -> str | None:
    """The published jar that holds as much or just more: "500 ml jars" take the quart."""
    holds = ounces(text)
    if holds is None:
        return None
    return next((jar for jar, held in JARS.items() if holds <= held), BIGGER)


def of_one_jar(said: Mapping[str, str], size: str) -> str:
    """The largest jar that a record names, in words: under `jar`, as the `size` of each, or by how
    much was poured into each; "" where nothing says a size. Of two readings the stricter counts.
    Ounces of an amount are a weight."""
    poured = re.sub(r"(?i)(?<!fl )\b(?:oz|ounces?)\b", "", said.get("amount", ""))
    sized = {
        one: holds
        for one in (said.get("jar", ""), size, poured)
        if (holds := ounces(one)) is not None
    }
    return max(sized, key=sized.__getitem__, default="")


def one_jar(text: str) -> bool:
    """Whether it says one size of jar: "pint or quart", "not a quart" do not; "1 quart (32 oz)"
    does."""
    plain = spelled_out(text)
    sizes = [read_jar(part) for part in re.split(r"[(),;]|\b(?:or|and)\b", plain)]
    said = {jar for jar in sizes if jar is not None}
    kinds = {match[1][:2] for match in re.finditer(_SIZE, plain.replace("-", " "))}
    alone = len(kinds) < 2 or len([one for one in sizes if one]) > 1
    denied = re.search(DENIAL, plain) is not None
    return read_jar(text) is not None and len(said) < 2 and alone and not denied
