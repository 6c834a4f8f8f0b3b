"""Details of how it was put up, said in words: "25 minutes at 11 pounds, dial", "5 % brine", "hot
pack, in light syrup", "2 tbsp lemon juice each", "best before 2027-05". They become the pairs that
the record of a process knows (core.safety.record)."""

from __future__ import annotations

from fractions import Fraction

from pantry_tui.core.line.heights import altitude_at
from pantry_tui.core.line.pairs import SPOONS, Found, flag
from pantry_tui.core.line.tokens import Line

_TIME = {"min": "min", "mins": "min", "minute": "min", "minutes": "min"}
_HOURS = {"h": "h", "hr": "h", "hrs": "h", "hour": "h", "hours": "h"}
_PRESSURE = {"psi": "psi", "psig": "psi", "kpa": "kPa", "bar": "bar"}
_POUNDS = frozenset({"lb", "lbs", "pound", "pounds"})
#: What the weights of weighted gauges are made for.
_WEIGHTS = (5, 10, 15)
#: Said in a part of its own: before a pack or a bag it is a word of that.
_VACUUM = ("vacuum",)
#: Phrase -> (key, value).
_PHRASES: dict[tuple[str, ...], tuple[str, str]] = {
    ("hot", "pack"): ("pack", "hot"), ("hot", "packed"): ("pack", "hot"),
    ("raw", "pack"): ("pack", "raw"), ("raw", "packed"): ("pack", "raw"),
    ("cold", "pack"): ("pack", "raw"), ("cold", "packed"): ("pack", "raw"),
    ("dial", "gauge"): ("canner", "dial"), ("dial",): ("canner", "dial"),
    ("weighted", "gauge"): ("canner", "weighted"), ("weighted",): ("canner", "weighted"),
    ("jiggler",): ("canner", "weighted"), ("rocker",): ("canner", "weighted"),
    ("vacuum", "packed"): ("vacuum", "yes"), ("vacuum", "sealed"): ("vacuum", "yes"),
    ("vac", "packed"): ("vacuum", "yes"), ("vac", "pac"): ("vacuum", "yes"),
    _VACUUM: ("vacuum", "yes"),
    ("lids", "sealed"): ("seal", "sealed"), ("all", "sealed"): ("seal", "all sealed"),
    ("open", "kettle"): ("process", "open kettle"), ("open", "kettled"): ("process", "open kettle"),
    ("oven", "canned"): ("process", "oven canned"), ("inverted",): ("process", "inverted"),
    ("wide", "mouth"): ("", ""), ("regular", "mouth"): ("", ""), ("narrow", "mouth"): ("", ""),
    ("upside", "down"): ("process", "upside down"), ("wax", "seal"): ("process", "wax seal"),
    ("wax", "sealed"): ("process", "wax seal"),
}  # fmt: skip
_SYRUPS = (
    ("extra", "light", "syrup"), ("very", "light", "syrup"), ("light", "syrup"),
    ("medium", "syrup"), ("heavy", "syrup"), ("extra", "heavy", "syrup"), ("syrup",),
    ("apple", "juice"), ("own", "juice"), ("their", "own", "juice"), ("juice",), ("water",),
    ("honey", "syrup"), ("tomato", "juice"),
)  # fmt: skip
_ACIDS = (
    ("bottled", "lemon", "juice"), ("lemon", "juice"), ("lime", "juice"), ("citric", "acid"),
)  # fmt: skip
#: What has a strength in percent, and the key it is kept under.
_STRONG = {"brine": "salt", "salt": "salt", "vinegar": "vinegar", "syrup": "sugar",
           "sugar": "sugar"}  # fmt: skip
_SOURED = frozenset(
    {"malt", "cider", "apple", "wine", "white", "red", "distilled", "spirit", "rice", "pickling",
     "sherry"}
)  # fmt: skip
_USE_BY = (
    ("expires", "on"), ("expiry", "date"), ("exp", "date"), ("exp", "."), ("exp",),
    ("use", "before"), ("use", "by"), ("expires",), ("expiry",),
)  # fmt: skip
_PRINTED = (
    ("best", "before", "end"), ("bbd",), ("best", "before"), ("best", "by"), ("sell", "by"),
    ("bbe",), ("bb",), *_USE_BY,
)  # fmt: skip


def take_process(line: Line, pairs: dict[str, str]) -> None:
    """Claims what it reads and adds it to `pairs`, under a key once; a second value for a key is
    left where it stands."""
    for i in range(len(line.tokens)):
        if not line.free[i]:
            continue
        for read in (
            flag, _printed, _time, _pressure, _percent, _acid, _altitude, _headspace, _phrase,
            _syrup,
        ):  # fmt: skip
            found = read(line, i)
            if found is None:
                continue
            stop, key, value = found
            if key and pairs.get(key, value) != value:
                continue
            if key:
                pairs[key] = _unsure(line, i) + value
            line.claim(i, stop)
            break


def _unsure(line: Line, i: int) -> str:
    """The sign before a number that makes it uncertain ("~5 %", "<25 min"): it belongs to it."""
    before = line.at(i - 1)
    return before.said if before is not None and before.said in _UNSURE else ""


_UNSURE = frozenset("~≈<>≤≥±∼")


def _printed(line: Line, i: int) -> Found:
    from pantry_tui.core.line.days import month_or_day

    lead = next((one for one in _PRINTED if line.says(i, *one)), ())
    if not lead:
        return None
    at = i + len(lead) + line.says(i + len(lead), "date")
    stop, said = month_or_day(line, at)
    key = "expiry" if lead in _USE_BY else "printed"
    return (stop, key, said) if stop > at else None


def _lead(line: Line, i: int) -> int:
    return (
        line.says(i, "for")
        or line.says(i, "at")
        or line.says(i, "processed", "for")
        or (line.says(i, "processed"))
    )


def _time(line: Line, i: int) -> Found:
    at = i + _lead(line, i)
    number = line.number(at)
    if number is None:
        return None
    word = line.word(at + 1)
    if word in _TIME:
        return at + 2, "minutes", line.tokens[at].said
    if word in _HOURS:
        stop, hours = at + 2, number
        more = line.number(stop + line.says(stop, "and"))
        if more is not None and line.word(stop + line.says(stop, "and") + 1) in _TIME:
            stop += line.says(stop, "and") + 2
            return stop, "minutes", f"{_plain(hours * 60 + more)}"
        return stop, "minutes", f"{_plain(hours * 60)}"
    return None


def _plain(number: Fraction) -> str:
    return f"{float(number):g}"


def _pressure(line: Line, i: int) -> Found:
    """ "11 psi", "at 10 lb pressure", "11 lb" beside minutes or a pressure canner."""
    at = i + (line.says(i, "at") or line.says(i, "@"))
    number = line.number(at)
    if number is None:
        return None
    word, said = line.word(at + 1), line.tokens[at].said
    if word in _PRESSURE:
        unit = _PRESSURE[word]
        value = said if unit == "psi" else f"{said} {unit}"
        return at + 2, "psi", value
    if word not in _POUNDS or not 5 <= number <= 20:
        return None
    stop = at + 2 + (line.says(at + 2, "of", "pressure") or line.says(at + 2, "pressure"))
    sure = at > i or stop > at + 2 or _gauged(line, stop)
    return (stop, "psi", said) if sure and _canned(line) else None


def _gauged(line: Line, i: int) -> bool:
    """Whether a gauge, or the end of the line, follows after minutes."""
    if line.word(i) in ("dial", "weighted", "weight", "gauge"):
        return True
    if line.number(i) is not None and line.word(i + 1) in _TIME:
        return True
    timed = any(token.text in _TIME for token in line.tokens[:i])
    ends = line.at(i) is None or line.tokens[i].part != line.tokens[i - 1].part
    return timed and ends


def _canned(line: Line) -> bool:
    words = {token.text for token in line.tokens}
    return "pressure" in words or bool(words & {"psi", "canner", "canned"})


def _percent(line: Line, i: int) -> Found:
    """ "5 % brine", "2.25 % salt", "5% malt vinegar", "30 % syrup", and turned about: "in brine
    10%", "malt vinegar 5 %"."""
    start = i + line.says(i, "in") + (line.says(i, "in", "a") > 0)
    at, said = _share(line, start)
    if said:
        of, word = _strong(line, at)
        of += line.says(of, "by", "weight")
        return (of, _STRONG[word], _as_said(word, said)) if word else None
    at, word = _strong(line, start)
    if not word:
        return None
    stop, said = _share(line, at + (line.says(at, "at") or line.says(at, "of")))
    return (stop, _STRONG[word], _as_said(word, said)) if said else None


def _share(line: Line, i: int) -> tuple[int, str]:
    """ "5 %", "2,5 per cent": where it stops, and how it is kept."""
    if line.number(i) is None:
        return i, ""
    size = line.says(i + 1, "%") or line.says(i + 1, "percent") or (line.says(i + 1, "per", "cent"))
    return (i + 1 + size, f"{line.tokens[i].said.replace(',', '.')}%") if size else (i, "")


def _strong(line: Line, i: int) -> tuple[int, str]:
    """What has a strength, words of the vinegar in front of it: where it stops, and its name."""
    while line.word(i) in _SOURED:
        i += 1
    word = line.word(i)
    sour = word == "vinegar" or line.word(i - 1) not in _SOURED
    return (i + 1, word) if word in _STRONG and sour else (i, "")


def _as_said(word: str, said: str) -> str:
    return f"{said} brine" if word == "brine" else said


def _acid(line: Line, i: int) -> Found:
    """ "with 2 tbsp lemon juice each", "citric acid 1/4 tsp", "lemon juice added"."""
    at = i + (line.says(i, "with") or line.says(i, "plus") or line.says(i, "and"))
    start = at
    number = line.number(at)
    if number is not None and line.word(at + 1) in SPOONS:
        at += 2 + line.says(at + 2, "of")
    elif number is not None:
        return None
    size = next((len(one) for one in _ACIDS if line.says(at, *one)), 0)
    if not size:
        return None
    stop = at + size
    much = 2 if start == at and line.number(stop) and line.word(stop + 1) in SPOONS else 0
    if start == i == at and not _apart(line, i, stop + much):
        return None  # the lemon juice of "lemon juice, 6 bottles" is a food
    tokens = [*line.tokens[stop : stop + much], *line.tokens[start:stop]]
    stop += much
    value = " ".join(token.said for token in tokens)
    for more in (("added",), ("each",), ("per", "jar"), ("per", "quart"), ("per", "pint")):
        stop += line.says(stop, *more)
    return stop, "acid", value


def _apart(line: Line, start: int, stop: int) -> bool:
    """Whether it stands in a part of its own, and is not the first thing said."""
    if line.word(stop) == "added":
        return True
    before = start > 0 and line.tokens[start - 1].part != line.tokens[start].part
    return before and (
        stop >= len(line.tokens) or line.tokens[stop].part != line.tokens[start].part
    )


def _altitude(line: Line, i: int) -> Found:
    found = altitude_at(line, i)
    return None if found is None else (found[0], "altitude", found[1])


def _headspace(line: Line, i: int) -> Found:
    number = line.number(i)
    unit = line.word(i + 1)
    if number is None or unit not in ("inch", "in", "inches", "cm", "mm"):
        return None
    stop = i + 2
    size = (
        line.says(stop, "headspace")
        or line.says(stop, "head", "space")
        or (line.says(stop, "of", "headspace"))
    )
    named = "in" if unit.startswith("in") else unit
    return (stop + size, "headspace", f"{line.tokens[i].said} {named}") if size else None


def _phrase(line: Line, i: int) -> Found:
    for size in (2, 1):
        said = tuple(line.word(i + n) for n in range(size))
        if said in _PHRASES and (said != _VACUUM or _apart(line, i, i + 1)):
            key, value = _PHRASES[said]
            stop = i + size
            return stop, key, value
    if i > 1 and line.says(i, "weight") and _canned(line):  # "at 10 lb weight", read before
        number, unit = line.tokens[i - 2].number, line.tokens[i - 1].text
        if number in _WEIGHTS and unit in _POUNDS and not line.free[i - 1]:
            return i + 1, "canner", "weighted"
    return None


def _syrup(line: Line, i: int) -> Found:
    """ "in light syrup", "in water"; what it is packed in is kept, sugar where it is syrup."""
    if line.word(i) != "in":
        return _bare_syrup(line, i)
    for words in _SYRUPS:
        if line.says(i + 1, *words):
            stop = i + 1 + len(words)
            if words[-1] == "syrup":
                return stop, "sugar", " ".join(words)
            if line.word(stop) == "bath":
                return None
            return stop, "form", "in " + " ".join(words)
    return None


def _bare_syrup(line: Line, i: int) -> Found:
    """ "light syrup", where it is all that a part says."""
    for words in _SYRUPS:
        stop = i + len(words)
        alone = sum(token.part == line.tokens[i].part for token in line.tokens) == len(words)
        if len(words) > 1 and words[-1] == "syrup" and alone and line.says(i, *words):
            return stop, "sugar", " ".join(words)
    return None
