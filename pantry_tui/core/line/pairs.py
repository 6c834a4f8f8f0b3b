"""What a line says as `key=value`: a word, a figure with its unit, words that belong together."""

from __future__ import annotations

import re

from pantry_tui.core.line.tokens import Kind, Line

#: Up to which token a detail reaches, its key and its value.
Found = tuple[int, str, str] | None

SPOONS = frozenset(
    {"tbsp", "tbsps", "tbs", "tablespoon", "tablespoons", "tsp", "tsps", "teaspoon", "teaspoons",
     "ml", "g", "t"}
)  # fmt: skip
_UNITED = re.compile(r".*[\d½¼¾⅓⅔⅛]$", re.DOTALL)
_AFTER = frozenset(
    {"min", "mins", "minutes", "psi", "ft", "feet", "m", "hours", "f", "c", "lb", "lbs", "oz", "g",
     "kg", "ml", "l", "pint", "pints", "quart", "quarts", "gallon", "gallons", "cup", "cups",
     "tbsp", "tsp", "litre", "litres", "%", "‰", "percent", "grain"}
)  # fmt: skip
#: Beside a headspace alone: "in" leads on elsewhere.
_LENGTHS = frozenset({"in", "inch", "inches", "cm", "mm"})
#: Keys of what sours a jar, and the words that it is called by.
_SOUR_KEYS = frozenset({"acid", "acidified", "lemon", "citric"})
_SOUR = frozenset({"bottled", "lemon", "lime", "juice", "citric", "acid", "vinegar"})
_SECOND = {
    ("lemon", "juice"), ("lime", "juice"), ("citric", "acid"), ("hot", "pack"), ("raw", "pack"),
    ("dial", "gauge"), ("weighted", "gauge"), ("boiling", "water"),
}  # fmt: skip


def flag(line: Line, i: int) -> Found:
    """ "minutes=25", "amount=1 1/2 lb", "acid=1 tbsp bottled lemon juice"."""
    found = _pair(line, i)
    if found is None or found[1] not in _SOUR_KEYS:
        return found
    stop, key, value = found
    while width := _more_of_sour(line, stop, line.tokens[i].part):
        value = " ".join([value, *(token.said for token in line.tokens[stop : stop + width])])
        stop += width
    for more in (("added",), ("each",), ("per", "jar"), ("per", "quart"), ("per", "pint")):
        stop += line.says(stop, *more)
    return stop, key, value


def _more_of_sour(line: Line, i: int, part: int) -> int:
    """How many words more of that part say what sours a jar: its name, or how many spoons of it
    ("acid=lemon 1 1/2 tbsp")."""
    numbers = 0
    while (token := line.at(i + numbers)) is not None and token.part == part:
        if token.kind is not Kind.NUMBER:
            spoons = numbers and line.word(i + numbers) in SPOONS
            return numbers + 1 if spoons else int(not numbers and line.word(i) in _SOUR)
        numbers += 1
    return 0


def _pair(line: Line, i: int) -> Found:
    """A key and its value: a word, a figure with its unit, or two words that belong together."""
    token = line.at(i)
    if token is None or token.kind is not Kind.FLAG:
        return None
    key, _, value = token.said.partition("=")
    value, stop = value.strip('"'), i + 1
    after = _AFTER | _LENGTHS if key.lower() == "headspace" else _AFTER
    if _UNITED.match(value):
        rest = line.at(stop)
        broken = rest is not None and rest.kind is Kind.NUMBER and "/" in rest.said
        if rest is not None and broken and line.word(stop + 1) in after:
            return stop + 2, key.lower(), f"{value} {rest.said} {line.tokens[stop + 1].said}"
        if line.word(stop) in after and line.tokens[stop].part == token.part:
            return stop + 1, key.lower(), f"{value} {line.tokens[stop].said}"
    elif (value.lower(), line.word(stop)) in _SECOND:
        return stop + 1, key.lower(), f"{value} {line.tokens[stop].said}"
    return stop, key.lower(), value
