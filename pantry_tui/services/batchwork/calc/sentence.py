"""Reading a typed sum: "500 g water 3 %", "5 lb carrots 88 % to 10 %", "11 psi at 1800 ft".

The order is free. Every number is taken with its unit and with the words that follow it, up to the
next number; the words before the first number stand alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from pantry_tui.core.amounts import altitudes_in_digits, fractions_spelled
from pantry_tui.core.batchwork.kitchen import SPELLINGS, is_volume, is_weight, size
from pantry_tui.core.safety.metric_jars import by_maker
from pantry_tui.errors import BadInput

#: Beside the kitchen's own, the units of shares, warmth, height, pressure, time and baskets.
_OTHERS = {
    "%": "%", "percent": "%", "per cent": "%", "pct": "%", "grain": "grain", "proof": "proof",
    "°f": "F", "f": "F", "fahrenheit": "F", "°c": "C", "c": "C", "celsius": "C", "ft": "ft",
    "feet": "ft", "foot": "ft", "m": "m", "metres": "m", "meters": "m", "psi": "psi", "kpa": "kPa",
    "bar": "bar", "bushel": "bushel", "bushels": "bushel", "peck": "peck", "pecks": "peck",
    "in": "in", "inch": "in", "inches": "in", "cubic feet": "cubic ft", "cubic foot": "cubic ft",
    "cubic ft": "cubic ft",
}  # fmt: skip
_UNITS = {**SPELLINGS, **_OTHERS}
_STOP = frozenset({"of", "in", "with", "and", "the", "for", "a", "an", "to", "at", "plus", "from"})
_NUMBER = re.compile(r"(?:(\d{1,6}) +)?(\d{1,6})/(\d{1,6})|(\d{1,7}(?:\.\d{1,6})?)")
_SPELLED = sorted(_UNITS, key=len, reverse=True)
_UNIT = re.compile(rf"\s*-?\s*({'|'.join(map(re.escape, _SPELLED))})(?![^\W\d_])\.?")


class Item:
    """A number with its unit ("" for none) and the words after it."""

    __slots__ = ("number", "unit", "words")

    def __init__(self, number: Fraction, unit: str, words: str) -> None:
        self.number, self.unit, self.words = number, unit, words

    @property
    def value(self) -> float:
        return float(self.number)

    @property
    def base(self) -> float:
        """Grams or millilitres."""
        return float(self.number * size(self.unit))

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit}".strip()


class Sentence:
    """What was typed; a calculation takes out what it understands, and what is left is asked
    about by `finish`."""

    def __init__(self, text: str) -> None:
        self.lead, self.items = _read(text)

    def take(self, units: Iterable[str], *near: str) -> Item | None:
        """The first number in one of `units`; with `near`, the first whose words hold one of
        them. It is then used up, its words stay for `words`."""
        wanted = frozenset(units)
        for one in self.items:
            if one.unit in wanted and (not near or _holds(one.words, near)):
                self.items.remove(one)
                self.lead = f"{self.lead} {one.words}".strip()
                return one
        return None

    def metric_jars(self, *near: str) -> Item | None:
        """("7 1-litre jars") -> 7 quarts: the published jar that a metric one stands for, and how
        many."""
        size = self.take(("l", "ml"), *near)
        if size is None:
            return None
        jar = by_maker(f"{size.value:g} {size.unit}", low_acid=False)
        if jar is None:
            raise BadInput(f"A jar of {size.value:g} {size.unit} is larger than any in the tables.")
        many = self.take(("",))
        return Item(many.number if many else Fraction(1), jar, size.words)

    def weight(self, *near: str) -> Item | None:
        return self.take(_WEIGHTS, *near)

    def amount(self, *near: str) -> Item | None:
        """A weight or a volume."""
        return self.take(_AMOUNTS, *near)

    def share(self, *near: str) -> float | None:
        """Per cent."""
        found = self.take(("%",), *near)
        return None if found is None else found.value

    def feet(self) -> int | None:
        """An altitude."""
        found = self.take(("ft", "m"))
        if found is None:
            return None
        return round(found.value if found.unit == "ft" else found.value * 3.28084)

    def has(self, *words: str) -> bool:
        """Whether one of these words was typed, here or behind a number; it is then used up."""
        found = False
        for word in words:
            pattern = rf"(?<![^\W_]){re.escape(word)}(?![^\W_])"
            if re.search(pattern, self.lead):
                self.lead, found = " ".join(re.sub(pattern, " ", self.lead).split()), True
            for one in self.items:
                if re.search(pattern, one.words):
                    one.words, found = " ".join(re.sub(pattern, " ", one.words).split()), True
        return found

    def words(self) -> str:
        """What is left of the words, without those that only join."""
        text = " ".join([self.lead, *(one.words for one in self.items)])
        return " ".join(word for word in text.split() if word not in _STOP)

    def finish(self) -> None:
        """Raises BadInput for a number that nothing asked for."""
        if self.items:
            left = self.items[0]
            raise BadInput(f"{left} {left.words}".rstrip() + " is not understood here: see --help.")


_WEIGHTS = frozenset(unit for unit in SPELLINGS.values() if is_weight(unit))
_VOLUMES = frozenset(unit for unit in SPELLINGS.values() if is_volume(unit))
_AMOUNTS = _WEIGHTS | _VOLUMES
BASKETS = ("bushel", "peck")


def _holds(words: str, near: tuple[str, ...]) -> bool:
    return any(word in words.split() for word in near)


def _read(text: str) -> tuple[str, list[Item]]:
    plain = altitudes_in_digits(fractions_spelled(text.casefold().replace("–", "-")))
    if re.search(r"\d,\d{1,2}(?!\d)", plain):
        raise BadInput(f"{text[:40]!r} could be read two ways: write the number with a point.")
    plain = re.sub(r"(\d),(\d{3})(?!\d)", r"\1\2", plain)
    plain = re.sub(r"(?<![^\W_])(?:half a|a half)(?![^\W_])", "1/2", plain)
    plain = re.sub(rf"(?<![^\W_])an? (?={'|'.join(BASKETS)})", "1 ", plain)
    plain = " ".join(plain.replace(",", " ").replace(":", " ").split())
    items: list[Item] = []
    lead, at = "", 0
    while (match := _NUMBER.search(plain, at)) is not None:
        between = plain[at : match.start()].strip()
        if items:
            items[-1].words = between
        else:
            lead = between
        number = _number(match, text)
        unit = _UNIT.match(plain, match.end())
        at = unit.end() if unit else match.end()
        items.append(Item(number, _UNITS[unit[1]] if unit else "", ""))
    rest = plain[at:].strip()
    if items:
        items[-1].words = rest
    else:
        lead = rest
    return lead, items


def _number(match: re.Match[str], text: str) -> Fraction:
    whole, above, below, decimal = match.groups()
    if decimal is not None:
        number = Fraction(decimal)
    elif int(below) == 0:
        raise BadInput(f"{text[:40]!r} divides by nothing: write another number.")
    else:
        number = Fraction(int(whole or 0)) + Fraction(int(above), int(below))
    if number > 1_000_000:
        raise BadInput(f"{text[:40]!r} is no possible amount: at most 1,000,000.")
    return number
