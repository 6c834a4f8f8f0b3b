"""The put-up line: "7 pint jars runner beans, pressure canned, shelf 2, yesterday".

Read by claiming words. Each reader claims the longest run of words it understands; the words
left in one stretch are the food; any other left word is named as unread, never dropped.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.services.rows import PutUpReading

_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
            "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
            "dozen": 12}  # fmt: skip
_SIZES = {"pint", "pints", "quart", "quarts", "half-pint", "half-pints", "half", "half-gallon",
          "half-gallons", "gallon", "gallons", "litre", "litres", "liter", "liters", "l", "ml",
          "lb", "lbs", "kg", "g", "oz"}  # fmt: skip
_VESSELS = {"jar", "jars", "bag", "bags", "pack", "packs", "packet", "packets", "crock", "crocks",
            "crate", "crates", "box", "boxes", "bottle", "bottles", "tub", "tubs", "tray", "trays",
            "sack", "sacks", "net", "nets", "tin", "tins", "bin", "bins", "bucket", "buckets",
            "bunch", "bunches", "head", "heads", "piece", "pieces"}  # fmt: skip
_FILLERS = {"of", "in", "on", "into", "to", "at", "the", "made", "with", "put", "up", "and",
            "for", "from"}  # fmt: skip
_FLAG = re.compile(r"([a-z][a-z-]*)=(\"[^\"]*\"|\S+)")
_VACUUM = re.compile(r"\bvacuum[- ](?:packed|sealed)\b", re.IGNORECASE)
_NOTE = re.compile(r"\bnote(?:=|:)\s*(\"[^\"]*\"|.*)$", re.IGNORECASE | re.DOTALL)


@dataclass
class _Line:
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


def read_line(
    line: str,
    *,
    today: date,
    places: Mapping[str, str],
    find_food: Callable[[str], str | None],
    find_method: Callable[[str], Method | None],
) -> PutUpReading:
    """What `line` says; `places` maps ids to full paths. Never raises."""
    rest, note = _take_note(line)
    rest, flags = _take_flags(rest)
    rest, vacuum = _VACUUM.subn(" ", rest)
    if vacuum:
        flags["vacuum"] = "yes"
    words = _split(rest)
    problems: list[str] = []
    count, size, vessel = _take_count(words, problems)
    place = _take_place(words, places, problems)
    made = _take_date(words, today, problems)
    food, method = _take_food_and_method(words, find_food, find_method)
    if not food:
        food = _leftover(words)
        if food:
            problems.append(f"{food!r} is not in the food table.")
    unread = tuple(
        w for w, free in zip(words.words, words.free, strict=True) if free and w not in _FILLERS
    )
    if not food:
        problems.append("Say which food it is.")
    if method is None:
        problems.append("Say how it is kept, for example: pressure canned, dried, frozen.")
    if not 1 <= count <= 999:
        problems.append("The count must be 1 to 999.")
    group, acidity = flags.pop("group", ""), flags.pop("acidity", "")
    return PutUpReading(
        food, method, count, size, vessel, place, made, tuple(flags.items()), note, group,
        acidity, unread, tuple(problems),
    )  # fmt: skip


def _take_note(line: str) -> tuple[str, str]:
    match = _NOTE.search(line)
    if match is None:
        return line, ""
    return line[: match.start()], match[1].strip().strip('"')


def _take_flags(line: str) -> tuple[str, dict[str, str]]:
    flags = {key.lower(): value.strip('"') for key, value in _FLAG.findall(line)}
    return _FLAG.sub(" ", line), flags


def _split(text: str) -> _Line:
    words: list[str] = []
    part: list[int] = []
    for number, piece in enumerate(re.split(r"[,;]", text)):
        for word in piece.split():
            words.append(word)
            part.append(number)
    lowered = [word.lower() for word in words]
    return _Line(lowered, part, [True] * len(words))


def _take_count(line: _Line, problems: list[str]) -> tuple[int, str, str]:
    """A number, a size ("pint", "5 l") and a vessel ("jars"), wherever they stand together."""
    count, size, vessel = 1, "", ""
    counted = False
    if line.words[:2] in (["a", "dozen"], ["half", "dozen"]):
        line.claim(0, 2)
        count, counted = (12 if line.words[0] == "a" else 6), True
    for i, word in enumerate(line.words):
        if not line.free[i]:
            continue
        if not counted and _counts(line, i):
            count, counted = _NUMBERS.get(word) or int(word[:6]), True
            line.claim(i, i + 1)
            continue
        stop, found = _size_at(line, i)
        if found:
            if (stop < len(line.words) and line.words[stop] in _VESSELS) or word in _SIZES:
                size = found
                line.claim(i, stop)
        elif word in _VESSELS and not vessel:
            vessel = word
            line.claim(i, i + 1)
    return count, size, vessel


def _counts(line: _Line, i: int) -> bool:
    """Whether the word is a number of containers: it opens the line, or one stands behind it."""
    word = line.words[i]
    if not (word.isascii() and word.isdecimal()) and word not in _NUMBERS:
        return False
    after = line.words[i + 1 : i + 4]
    if i == 0:
        return True
    skip = 2 if after[:2] in (["half", "pint"], ["half", "gallon"]) else 1
    return after[:1] != [] and (
        after[0] in _VESSELS or (after[0] in _SIZES and after[skip : skip + 1] != []
                                 and after[skip] in _VESSELS)
    )  # fmt: skip


def _size_at(line: _Line, i: int) -> tuple[int, str]:
    """The size that starts at word `i` and where it stops; "" when there is none."""
    word = line.words[i]
    after = line.words[i + 1] if i + 1 < len(line.words) else ""
    if word == "half" and after in ("pint", "pints", "gallon", "gallons"):
        return i + 2, f"half-{after.rstrip('s')}"
    if word in _SIZES and word != "half" and not word.isdecimal():
        return i + 1, word.rstrip("s") if len(word) > 3 else word
    if re.fullmatch(r"\d+(\.\d+)?(l|ml|lb|kg|g|oz)", word):
        return i + 1, word
    is_number = re.fullmatch(r"\d+(\.\d+)?|\d+/\d+", word) is not None
    if is_number and after in _SIZES and i > 0:
        return i + 2, f"{word} {after}"
    return i, ""


def _path_words(path: str) -> list[str]:
    return path.lower().replace("›", " ").split()


def _take_place(line: _Line, places: Mapping[str, str], problems: list[str]) -> str:
    """The longest run of words that ends a place's path."""
    ends = {id_: _path_words(path) for id_, path in places.items()}
    for start, stop in line.runs(8):
        said = line.words[start:stop]
        hits = [id_ for id_, words in ends.items() if words[-len(said) :] == said]
        exact = [id_ for id_ in hits if len(ends[id_]) == len(said)]
        hits = exact or hits
        named = [id_ for id_ in hits if _names_whole(places[id_], said)]
        if not named:
            continue
        line.claim(start, stop)
        if len(named) > 1:
            both = " or ".join(places[id_] for id_ in named)
            problems.append(f"The place could be {both}: say more of the path.")
            return ""
        return places[named[0]]
    return ""


def _names_whole(path: str, said: list[str]) -> bool:
    """Whether `said` covers whole names of the path, not just its last word."""
    names = [name.split() for name in path.lower().split("›")]
    tail: list[str] = []
    for name in reversed(names):
        tail = name + tail
        if len(tail) >= len(said):
            break
    return tail == said


def _take_date(line: _Line, today: date, problems: list[str]) -> date | None:
    for start, stop in line.runs(3):
        said = " ".join(line.words[start:stop])
        if said == "unknown" and stop - start == 1:
            continue
        if said in ("date unknown", "made unknown"):
            line.claim(start, stop)
            return None
        try:
            found = dates.read_date(said, today)
        except BadInput as error:
            if re.search(r"\d[/.-]\d", said):
                line.claim(start, stop)
                problems.append(error.message)
                return None
            continue
        except (ValueError, OverflowError):
            continue
        line.claim(start, stop)
        return found
    return today


def _take_food_and_method(
    line: _Line,
    find_food: Callable[[str], str | None],
    find_method: Callable[[str], Method | None],
) -> tuple[str, Method | None]:
    """The longest method outside the food's words; one run may hold both ("frozen peas")."""
    best: tuple[float, str, Method | None, list[tuple[int, int]]] = (-1, "", None, [])
    runs = line.runs(6)
    foods = [(a, b, f) for a, b in runs if (f := find_food(" ".join(line.words[a:b])))]
    methods = [(a, b, m) for a, b in runs if (m := find_method(" ".join(line.words[a:b])))]
    for a, b, food in foods:
        for c, d, method in methods:
            apart = d <= a or c >= b
            if apart:
                score = (b - a) + (d - c)
                if score > best[0]:
                    best = (score, food, method, [(a, b), (c, d)])
    for a, b, food in foods:
        own = find_method(food) or _method_within(line, a, b, find_method)
        if own is not None and (b - a) + 0.5 > best[0]:
            best = (b - a + 0.5, food, own, [(a, b)])
    if best[2] is None and foods:
        a, b, food = foods[0]
        best = (b - a, food, None, [(a, b)])
    elif best[2] is None and methods:
        a, b, method = methods[0]
        best = (b - a, "", method, [(a, b)])
    for a, b in best[3]:
        line.claim(a, b)
    return best[1], best[2]


def _method_within(
    line: _Line, a: int, b: int, find_method: Callable[[str], Method | None]
) -> Method | None:
    """A method word inside the food's own words: "strawberry jam" is jam."""
    for i in range(a, b):
        found = find_method(line.words[i])
        if found is not None:
            return found
    return None


def _leftover(line: _Line) -> str:
    """The first stretch of unclaimed words within one comma part: an unknown food's name."""
    found: list[str] = []
    part = -1
    for i, word in enumerate(line.words):
        if not line.free[i] or (word in _FILLERS and not found):
            continue
        if found and line.part[i] != part:
            break
        part = line.part[i]
        found.append(word)
        line.free[i] = False
    return " ".join(found)
