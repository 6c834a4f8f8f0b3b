"""The put-up line: "7 pint jars runner beans, pressure canned, shelf 2, yesterday".

Read by claiming words. Each reader claims the longest run of words it understands; the words
left in one stretch are the food; any other left word is named as unread, never dropped.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import UNITS
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.line_count import Line, take_count
from pantry_tui.services.rows import PutUpReading

_FILLERS = {
    "of",
    "in",
    "on",
    "into",
    "to",
    "at",
    "the",
    "made",
    "with",
    "put",
    "up",
    "and",
    "for",
    "from",
    "x",
    "×",
}
#: `key=value`; a comma or a space ends the value, but for "30 lb" and "1 1/2 kg".
_FLAG = re.compile(r"([a-z][a-z-]*)=(\"[^\"]*\"|(?:[^\s,;]|(?<=\d),(?=\d))+)", re.IGNORECASE)
_UNIT_WORDS = (*UNITS, "min", "mins", "minutes", "psi", "ft", "feet", "m", "hours", "f", "c", "%")
_UNIT_AFTER = re.compile(
    r" +(?:\d+/\d+ +)?(?:" + "|".join(sorted(_UNIT_WORDS, key=len, reverse=True)) + r")(?![\w=-])",
    re.IGNORECASE,
)
#: Values of two words that need no quotes.
_SECOND_WORD = re.compile(
    r"(?:(?<=lemon)|(?<=lime)) +juice\b|(?<=citric) +acid\b|(?:(?<=hot)|(?<=raw)) +pack\b"
    r"|(?:(?<=dial)|(?<=weighted)) +gauge\b|(?<=boiling) +water\b",
    re.IGNORECASE,
)
_VACUUM = re.compile(r"\bvacuum[- ](?:packed|sealed)\b", re.IGNORECASE)
_NOTE = re.compile(r"\bnote(?:=|:)\s*(\"[^\"]*\"|.*)$", re.IGNORECASE | re.DOTALL)


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
    count, size, vessel = take_count(words, problems, flags)
    if re.search(r"\d,\d", rest):
        problems.append("A comma between two figures could be read two ways: write a point.")
    place = _take_place(words, places, problems, find_method)
    made = _take_date(words, today, problems, lambda said: find_food(said) or find_method(said))
    food, method = _take_food_and_method(words, find_food, find_method)
    if method is None and (named := find_method(flags.get("method", ""))) is not None:
        method = named
        del flags["method"]
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
        food,
        method,
        count,
        size,
        vessel,
        place,
        made,
        tuple(flags.items()),
        note,
        group,
        acidity,
        unread,
        tuple(problems),
    )


def _take_note(line: str) -> tuple[str, str]:
    match = _NOTE.search(line)
    if match is None:
        return line, ""
    return line[: match.start()], match[1].strip().strip('"')


def read_pairs(text: str) -> list[tuple[str, str]]:
    """("minutes=20 psi=11") -> the pairs. Raises BadInput for a word that is no pair."""
    rest, pairs = _take_flags(text)
    left = " ".join(rest.replace(",", " ").split())
    if left or not pairs:
        raise BadInput(f"{left[:40]!r} is no detail: write minutes=20 psi=11 canner=dial.")
    return list(pairs.items())


def _take_flags(line: str) -> tuple[str, dict[str, str]]:
    """The `key=value` pairs, and the line without them."""
    flags: dict[str, str] = {}
    rest, done = "", 0
    for match in _FLAG.finditer(line):
        value, stop = match[2], match.end()
        after = _UNIT_AFTER if value[-1] in "0123456789½¼¾⅓⅔⅛" else _SECOND_WORD
        more = after.match(line, stop)
        if more is not None:
            value, stop = f"{value} {' '.join(more[0].split())}", more.end()
        flags[match[1].lower()] = value.strip('"')
        rest, done = f"{rest}{line[done : match.start()]} ", stop
    return rest + line[done:], flags


def _split(text: str) -> Line:
    words: list[str] = []
    part: list[int] = []
    for number, piece in enumerate(re.split(r"[,;]", text)):
        for word in piece.split():
            words.append(word)
            part.append(number)
    lowered = [word.lower() for word in words]
    return Line(lowered, part, [True] * len(words))


def _path_words(path: str) -> list[str]:
    return path.lower().replace("›", " ").split()


def _goes_on(line: Line, start: int, stop: int, means: Callable[[str], object]) -> bool:
    """Whether the run only begins, or stands within, something longer: the fridge of "fridge
    pickle" is no place, the sun of "sun dried tomatoes" no Sunday."""
    longer = (run for run in line.runs(6) if run[0] <= start and run[1] > stop)
    return any(means(" ".join(line.words[a:b])) for a, b in longer)


def _take_place(
    line: Line,
    places: Mapping[str, str],
    problems: list[str],
    find_method: Callable[[str], Method | None],
) -> str:
    """The longest run of words that ends a place's path."""
    ends = {id_: _path_words(path) for id_, path in places.items()}
    for start, stop in line.runs(8):
        if _goes_on(line, start, stop, find_method):
            continue
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


def _take_date(
    line: Line, today: date, problems: list[str], means: Callable[[str], object]
) -> date | None:
    """The first day that is named; `means` says which words are a food or a method."""
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
        if _goes_on(line, start, stop, means):
            continue
        line.claim(start, stop)
        return found
    return today


def _take_food_and_method(
    line: Line,
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
    line: Line, a: int, b: int, find_method: Callable[[str], Method | None]
) -> Method | None:
    """A method word inside the food's own words: "strawberry jam" is jam."""
    for i in range(a, b):
        found = find_method(line.words[i])
        if found is not None:
            return found
    return None


def _leftover(line: Line) -> str:
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
