"""The spoons of acid that went into a jar, as people write them."""

from __future__ import annotations

import re

from pantry_tui.core.safety.measured import spelled_out

#: Teaspoons in each.
_SPOONS = {"tsp": 1.0, "teaspoon": 1.0, "tbsp": 3.0, "tbs": 3.0, "tablespoon": 3.0, "ml": 0.2,
           "cup": 48.0}  # fmt: skip
#: What may stand between a number and its unit, or between two numbers of one unit.
_BETWEEN = frozenset({"a", "of", "or", "to", "and"})
_JARS = frozenset({"pint", "quart"})
_TOKEN = r"(\d+/[1-9]\d*|\d+(?:[.,]\d+)?)|([^\W\d_]+|%)"


def read_spoons(text: str) -> list[float] | None:
    """("2 tbsp lemon juice", "1-2 tsp", "half a cup per pint") -> [6.0], [1.0, 2.0], [24.0]: every
    amount in teaspoons, a unit alone as one. None where a number is of no spoon, cup or ml and of
    no one jar: "1 lemon", "2 g", "in 7 quart"; how strong it is ("5 %") is passed over."""
    found: list[float] = []
    waiting: list[float] = []
    whole = False
    for figure, word in re.findall(_TOKEN, _in_figures(text)):
        if figure:
            part, number = "/" in figure, _figure(figure)
            if whole and part and number < 1:
                waiting[-1] += number  # one and a half
            else:
                waiting.append(number)
            whole = not part and number == int(number)
            continue
        unit = _SPOONS.get(word.removesuffix("s"), _SPOONS.get(word))
        whole = whole and word in ("and", "a")
        if unit is not None:
            found += [number * unit for number in waiting or [1.0]]
            waiting = []
        elif word == "%" or (word in _JARS and waiting in ([1.0], [0.5])):
            waiting = []
        elif waiting and word not in _BETWEEN:
            return None
    return None if waiting else found


def _in_figures(text: str) -> str:
    """In small letters, T and t as spoons, halves and words as numbers."""
    spoons = re.sub(r"(?<=\d) ?t\b", " tsp", re.sub(r"(?<=\d)T\b|\bT\b", " tbsp", text))
    plain = re.sub(r"\b\d+[\s-]+half\b", "half", spelled_out(spoons))  # "one half" is no 1½
    return plain.replace("half", "1/2")


def _figure(text: str) -> float:
    number, _, of = text.replace(",", ".").partition("/")
    return float(number) / float(of or 1)
