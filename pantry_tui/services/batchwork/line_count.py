"""How many, in what and how much: the numbers, sizes and vessels of a put-up line."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from pantry_tui.core.amounts import UNITS

_NUMBERS = {
    "a": 1,
    "an": 1,
    "one": 1,
    "two": 2,
    "three": 3,
    "four": 4,
    "five": 5,
    "six": 6,
    "seven": 7,
    "eight": 8,
    "nine": 9,
    "ten": 10,
    "eleven": 11,
    "twelve": 12,
    "dozen": 12,
}
_SIZES = {
    "pint",
    "pints",
    "quart",
    "quarts",
    "half-pint",
    "half-pints",
    "half",
    "half-gallon",
    "half-gallons",
    "gallon",
    "gallons",
    "litre",
    "litres",
    "liter",
    "liters",
    "l",
    "ml",
    "lb",
    "lbs",
    "kg",
    "g",
    "oz",
}
_VESSELS = {
    "jar",
    "jars",
    "bag",
    "bags",
    "pack",
    "packs",
    "packet",
    "packets",
    "crock",
    "crocks",
    "crate",
    "crates",
    "box",
    "boxes",
    "bottle",
    "bottles",
    "tub",
    "tubs",
    "tray",
    "trays",
    "sack",
    "sacks",
    "net",
    "nets",
    "tin",
    "tins",
    "bin",
    "bins",
    "bucket",
    "buckets",
    "bunch",
    "bunches",
    "head",
    "heads",
    "piece",
    "pieces",
}
#: What weighs or measures. Pints and quarts are not among them: those are jars that are counted.
_MEASURES = {
    spelled: unit
    for spelled, unit in UNITS.items()
    if unit in ("lb", "oz", "g", "kg", "ml", "l", "gallon") and " " not in spelled
}
_NUMBER = r"\d+(?:\.\d+)?|\d+/\d+|\d*[½¼¾⅓⅔⅛]"
_JOINED = re.compile(rf"({_NUMBER})-?({'|'.join(sorted(_MEASURES, key=len, reverse=True))})")
_TIMES = ("x", "×")


@dataclass
class Line:
    """The words of a line, which are claimed, and where commas stood before them."""

    words: list[str]
    part: list[int]
    free: list[bool] = field(default_factory=list)

    def claim(self, start: int, stop: int) -> None:
        for i in range(start, stop):
            self.free[i] = False

    def runs(self, longest: int) -> list[tuple[int, int]]:
        """Every run of free words within one comma part, longest first, then leftmost."""
        found = []
        for size in range(min(longest, len(self.words)), 0, -1):
            for i in range(len(self.words) - size + 1):
                if all(self.free[i : i + size]) and self.part[i] == self.part[i + size - 1]:
                    found.append((i, i + size))
        return found


def take_count(line: Line, problems: list[str], flags: dict[str, str]) -> tuple[int, str, str]:
    """A number, a size ("pint", "5 l") and a vessel ("jars"), wherever they stand together.

    A weight or volume that is no vessel's size is what the one container holds, and becomes the
    flag `amount`: "20 lb carrots" is 20 lb to draw from, not twenty of anything.
    """
    count, vessel = 1, ""
    counted = False
    if line.words[:2] in (["a", "dozen"], ["half", "dozen"]):
        line.claim(0, 2)
        count, counted = (12 if line.words[0] == "a" else 6), True
    size, loose = _take_measures(line, problems)
    for i, word in enumerate(line.words):
        if not line.free[i]:
            continue
        if not counted and _counts(line, i):
            count, counted = _NUMBERS.get(word) or int(word[:6]), True
            line.claim(i, i + 1)
            continue
        stop, found = _jar_at(line, i)
        if found:
            size = size or found
            line.claim(i, stop)
        elif word in _VESSELS and not vessel:
            vessel = word
            line.claim(i, i + 1)
    if loose and count > 1:
        problems.append(
            f"Is {loose} in each of the {count}, or in all? For each, write "
            f"{count} {loose.replace(' ', '-')} {vessel or 'bags'}."
        )
    elif loose:
        flags.setdefault("amount", loose)
    return count, size, vessel


def _take_measures(line: Line, problems: list[str]) -> tuple[str, str]:
    """(the size of each vessel, an amount that is no vessel's), "" where there is none."""
    size = loose = ""
    words = line.words
    for i in range(len(words)):
        stop, found = _measure_at(words, i)
        if not found or not all(line.free[i:stop]):
            continue
        after = words[stop] if stop < len(words) else ""
        counted = _number_before(words, i)
        # "6 litre jars" are six, as with pints; "6 lb bags" could be either and is asked about.
        if after in _VESSELS and not counted and found.endswith((" l", " gallon")):
            continue
        if after in _VESSELS:
            size = size or found
            if after.endswith("s") and not counted:
                problems.append(
                    f"{found} {after}: how many, and how big? Write 3 {found.replace(' ', '-')} "
                    f"{after}, for example."
                )
        elif i >= 2 and words[i - 1] == "of" and words[i - 2] in _VESSELS:
            size = size or found
        elif not loose:
            loose = found
        else:
            continue
        line.claim(i, stop)
    return size, loose


def _measure_at(words: list[str], i: int) -> tuple[int, str]:
    """The measure that starts at word `i`, as "number unit", and where it stops; "" if none."""
    joined = _JOINED.fullmatch(words[i])
    if joined is not None:
        return i + 1, f"{joined[1]} {_MEASURES[joined[2]]}"
    if re.fullmatch(_NUMBER, words[i]) is None and words[i] not in _NUMBERS:
        return i, ""
    number, stop = str(_NUMBERS.get(words[i], words[i])), i + 1
    after = words[stop] if stop < len(words) else ""
    if number.isdecimal() and re.fullmatch(r"\d+/\d+|[½¼¾⅓⅔⅛]", after):
        number, stop = f"{number} {after}", stop + 1
    if words[stop : stop + 2] == ["fl", "oz"]:
        return stop + 2, f"{number} fl oz"
    unit = _MEASURES.get(words[stop], "") if stop < len(words) else ""
    return (stop + 1, f"{number} {unit}") if unit else (i, "")


def _number_before(words: list[str], i: int) -> bool:
    """Whether a count stands before word `i`, as in "3 5-lb bags" or "7 x 1 lb bags"."""
    before = [word for word in words[:i] if word not in _TIMES][-1:]
    return bool(before) and (before[0].isdecimal() or before[0] in _NUMBERS)


def _counts(line: Line, i: int) -> bool:
    """Whether the word is a number of containers: it opens the line, or one stands behind it."""
    word = line.words[i]
    if not (word.isascii() and word.isdecimal()) and word not in _NUMBERS:
        return False
    if i == 0:
        return True
    after = [one for one in line.words[i + 1 : i + 6] if one not in _TIMES]
    stop, found = _measure_at(after, 0) if after else (0, "")
    skip = stop if found else 2 if after[:2] in (["half", "pint"], ["half", "gallon"]) else 1
    return after[:1] != [] and (
        after[0] in _VESSELS
        or (
            (bool(found) or after[0] in _SIZES)
            and after[skip : skip + 1] != []
            and after[skip] in _VESSELS
        )
    )


def _jar_at(line: Line, i: int) -> tuple[int, str]:
    """The jar size that starts at word `i` and where it stops; "" when there is none."""
    word = line.words[i]
    after = line.words[i + 1] if i + 1 < len(line.words) else ""
    if word == "half" and after in ("pint", "pints", "gallon", "gallons"):
        return i + 2, f"half-{after.rstrip('s')}"
    if word in _SIZES and word != "half":
        return i + 1, word.rstrip("s") if len(word) > 3 else word
    return i, ""
