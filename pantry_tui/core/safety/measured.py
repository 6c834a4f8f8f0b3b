"""Times, pressures, jars and canners as people write them, and ways that are no process at all.

A value that is only partly understood is not understood: a word left over makes it None.
"""

from __future__ import annotations

import re

from pantry_tui.core.amounts import figures_spelled, in_decimals, plain_digits
from pantry_tui.core.safety.denial import DENIAL, DENIED, LEFT_OUT, NONE

CANNERS = ("boiling-water", "dial", "weighted")

_ONES = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
    "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
    "nineteen",
)  # fmt: skip
_TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70,
    "eighty": 80, "ninety": 90,
}  # fmt: skip


def spelled_out(text: str) -> str:
    """("twenty-five minutes") -> "25 minutes"; ("half an hour") -> "30 minutes"; ("1½") ->
    "1 1/2"; (".5") -> "0.5"."""
    if plain_digits(text):
        return text
    plain = figures_spelled(text.casefold()).strip()
    plain = re.sub(r"\b(?:a )?half (?:an )?hour\b", "30 minutes", plain)
    plain = re.sub(r"\ban hour\b", "1 hour", plain)
    tens, ones = "|".join(_TENS), "|".join(_ONES)

    def number(match: re.Match[str]) -> str:
        total = _TENS.get(match[1], 0)
        total += _ONES.index(match[2]) if match[2] else 0
        return str(total)

    pair = rf"\b(?:({tens})(?:[\s-]+({'|'.join(_ONES[1:10])}))?)\b"
    plain = re.sub(pair, number, plain)
    plain = re.sub(rf"\b()({ones})\b", number, plain)
    hundreds = re.compile(r"\b(?:(\d) |a )hundred(?: and)?(?: (\d{1,2})\b)?")
    return hundreds.sub(lambda m: str(100 * int(m[1] or 1) + int(m[2] or 0)), plain)


_NUMBER = r"\d+(?:[.,]\d+)?"
_PRESSED = r"psig?|lbs?|pounds?|kpa|bar"
_PSI = rf"(?i)(?:\b(?:at|and)\s+|@\s*)?{_NUMBER}(?:\s*(?:-|–|to)\s*{_NUMBER})?\s*(?:{_PRESSED})\b"
#: Hours with the minutes behind them, or a number by itself.
_TIME = (
    rf"({_NUMBER})\s*(?:h(?:ours?|rs?)?\b|h(?=\d)|:(?=\d\d))"
    rf"(?:\s*(?:and\s+)?([0-5]?\d)(?![\d:]|\s*h))?|({_NUMBER})\s*(m(?:in)?)?"
)
#: Hours and minutes with a colon. No process of jars is published for four hours: "10:00" and
#: "25:30" may be minutes and seconds, and are no time that anybody can count by.
_CLOCKED = r"(?<![\d:.,])[0-3]:[0-5]\d(?![\d:])"
_TIME_WORDS = r"h|hr|hrs|hour|hours|m|min|mins|minute|minutes|to|and|for"
_PRESSURE_WORDS = rf"{_PRESSED}|of|pressure|at|to|gauge"
_EACH = {"k": 0.145038, "b": 14.5038}
#: No gauge of a canner shows more pounds: a larger number by itself is of kPa, the stricter way.
_MOST_PSI = 30.0


def _figure(text: str) -> float:
    return float(text.replace(",", "."))


def _only(text: str, words: str) -> bool:
    """Whether nothing stands beside numbers and these words."""
    strange = re.sub(r"[\d\s.,:;()–+-]+", " ", text).split()
    return all(re.fullmatch(words, one) for one in strange)


def all_minutes(text: str) -> list[float]:
    """("1 h 15", "1-2 hours", "20-25 min at 11 psi") -> [75.0], [60.0, 120.0], [20.0, 25.0]: every
    time that is named, in minutes; a pressure beside it is passed over, any other word leaves
    none. A number without a unit that leads up to hours is of hours too, and one that would lead
    down to them of either."""
    if plain_digits(text):
        return [float(text)] if text else []
    plain = re.sub(_PSI, " ", in_decimals(spelled_out(text)))
    if not _only(plain, _TIME_WORDS) or ":" in re.sub(_CLOCKED, " ", plain):
        return []
    found: list[float] = []
    up_to = 0.0
    for hours, minutes, alone, unit in reversed(re.findall(_TIME, plain)):
        if hours:
            up_to = _figure(hours)
            found.append(up_to * 60 + float(minutes or 0))
        else:
            number = _figure(alone)
            of_hours = up_to and not unit
            found += [number * 60] if of_hours else []
            found += [] if of_hours and number < up_to else [number]
            up_to = 0.0
    return found[::-1]


def read_minutes(text: str) -> float | None:
    """("25", "25 min", "1 h 15", "1:15", "twenty", "20-25") -> minutes, the shortest of several;
    None for what `all_minutes` does not read."""
    return min(all_minutes(text), default=None)


def read_psi(text: str) -> float | None:
    """("11", "11 lb", "76 kPa", "0.8 bar") -> pounds per square inch, the least of several; None
    for any other word. A number without a unit has that of the next."""
    if plain_digits(text):
        many = float(text or 0)
        return None if not text else many * (1.0 if many <= _MOST_PSI else _EACH["k"])
    plain = in_decimals(spelled_out(text))
    if not _only(plain, _PRESSURE_WORDS):
        return None
    found, each = [], 1.0
    said = False
    for number, unit in reversed(re.findall(rf"({_NUMBER})\s*({_PRESSED})?", plain)):
        each, said = (_EACH.get(unit[:1], 1.0), True) if unit else (each, said)
        many = _figure(number)
        found.append(many * (each if said or many <= _MOST_PSI else _EACH["k"]))
    return min(found, default=None)


def read_time_and_psi(text: str) -> tuple[float | None, float | None]:
    """("20 min 5 psi", "20 min at 11-5 lb", "25 11") -> (20.0, 5.0), (20.0, 5.0), (25.0, 11.0): the
    shortest time and the least pressure that are said. No time where any word or number is left
    over: half of it understood is not understood."""
    plain = in_decimals(spelled_out(text))
    pair = re.fullmatch(rf"\s*({_NUMBER})[\s,]+({_NUMBER})\s*", plain)
    if pair is not None:
        return _figure(pair[1]), _figure(pair[2])
    pressures = [read_psi(one) for one in re.findall(_PSI, plain)]
    rest = re.sub(r"\b(?:pressure|gauge|of)\b", " ", re.sub(_PSI, " ", plain)).strip(" ,;")
    hours = re.search(rf"\bh\w*\s*(?:and\s+)?{_NUMBER}$|\dh{_NUMBER}$", rest)
    if hours is None and re.search(rf"[a-z@]\W*{_NUMBER}$", rest):
        return None, None  # beside minutes a number without a unit may be of either
    return read_minutes(rest), min((one for one in pressures if one is not None), default=None)


#: Above it the spores of botulism can grow in a sealed jar.
PH_LINE = 4.6
#: No finished vegetable ferment is as sour as this: what reads below it was not measured well.
#: Kraut is published at 3.4 to 3.6 (FDA, Bad Bug Book); below 2.5 lies lemon juice. Our own choice.
PH_LEAST = 2.5


def read_ph(text: str) -> float | None:
    """("4.1", "4 3/4") -> 4.1, 4.75, the highest of several; None where nothing was measured."""
    plain = spelled_out(text)
    both = f"{plain} {in_decimals(plain)}"
    found = re.findall(r"\d+(?:[.,]\d+)?", both)
    return max((float(one.replace(",", ".")) for one in found), default=None)


def read_percent(text: str) -> float | None:
    """("1/2 %", "two percent", "1-2%") -> 0.5, 2.0, 1.0, the smallest of several and of a range;
    None without one."""
    number = r"\d+(?:[.,]\d+)?"
    range_ = rf"({number})(?:\s*(?:-|–|to)\s*({number}))?\s*(?:%|per\s?cent\b|brix)"
    plain = in_decimals(spelled_out(text))
    found = [one for pair in re.findall(range_, plain) for one in pair if one]
    return min((float(one.replace(",", ".")) for one in found), default=None)


_DEGREES = r"(?<![\d.,])(-?\d+(?:[.,]\d+)?)\s*(?:°|deg(?:rees)?\b)?\s*(?:([cf])\b)?"


def all_fahrenheit(text: str) -> list[float]:
    """("20-22 C", "160F (71C)") -> [68.0, 71.6], [160.0, 159.8]: every number of degrees in °F. A
    number without a letter has that of the next; those of which nobody says it count as °F."""
    if not text:
        return []
    plain = in_decimals(spelled_out(text))
    plain = re.sub(r"(?<=[\d°cf])\s*[-–]\s*(?=\d)", " to ", plain)  # no line of below nought
    found, celsius = [], False
    for number, unit in reversed(re.findall(_DEGREES, plain)):
        celsius = unit == "c" if unit else celsius
        warm = float(number.replace(",", "."))
        found.append(warm * 9 / 5 + 32 if celsius else warm)
    return found[::-1]


_LENGTH = rf"(?:(\d+)[\s-]+)?(\d{{1,3}})/([1-9]\d?)(?!\d)|({_NUMBER})|\b(cm|mm|in\w*)|\""


def all_inches(text: str) -> list[float]:
    """("1/2 in", "1-1/4", "half an inch", "1 to 2 cm") -> [0.5], [1.25], [0.5], [0.39, 0.79]: every
    length in inches; a number without a unit has that of the next, those of which nobody says it
    count as inches."""
    if not text:
        return []
    plain = re.sub(r"(\d)\s*(cm|mm)\b", r"\1 \2", text.casefold())
    plain = spelled_out(re.sub(r"\bone[\s-]+(?=half|quarter)", "", plain))
    plain = re.sub(r"\b(?:a |an )?half\b", "1/2", plain)
    plain = re.sub(r"\b3[\s-]+quarters?\b", "3/4", plain)
    plain = re.sub(r"\b(?:a |an )?quarter\b", "1/4", plain)
    plain = re.sub(r"(\d)\s*and (?:a )?(?=\d+/)", r"\1 ", plain)
    found, each = [], 1.0
    for whole, above, below, number, unit in reversed(re.findall(_LENGTH, plain)):
        if above:
            found.append((float(whole or 0) + int(above) / int(below)) / each)
        elif number:
            found.append(_figure(number) / each)
        else:
            each = {"c": 2.54, "m": 25.4}.get(unit[:1], 1.0)
    return found[::-1]


def read_inches(text: str) -> float | None:
    """The largest of them, None without a number."""
    return max(all_inches(text), default=None)


#: By a word of it; what comes first counts, but for a gauge beside the other.
_CANNER_WORDS = {
    "atmospheric": "steam",
    "dial": "dial",
    "weight": "weighted",
    "deadweight": "weighted",
    "jiggl": "weighted",
    "rocker": "weighted",
    "pressure": "pressure",
    "steam": "steam",
    "boiling": "boiling-water",
    "water bath": "boiling-water",
    "waterbath": "boiling-water",
}
#: Canners that are none of boiling water or of steam alone.
PRESSURES = frozenset({"dial", "weighted", "pressure"})
#: "No pressure canner", "dial, not vented", "the gauge is broken": it is not as it seems.
_NOT_SO = r"\b(?:instead|fail(?:ed|s)?|broken?|faulty|wrong|lost|unvented|untested|unsure)\b"


def read_canner(text: str) -> str | None:
    """One of `CANNERS`, "pressure" (gauge unknown, or either), "steam"; None for any other, for
    water that boils in a pressure canner, and where a word denies something of it."""
    if not text or text in CANNERS:
        return text or None
    found = list(dict.fromkeys(_canners(text)))
    if not found or re.search(rf"{DENIAL}|{_NOT_SO}", text.casefold()):
        return None
    if "boiling-water" in found and not PRESSURES.isdisjoint(found):
        return None
    return "pressure" if {"dial", "weighted"} <= set(found) else found[0]


def _canners(text: str) -> list[str]:
    plain = text.casefold().replace("-", " ")
    words = _CANNER_WORDS.items()
    return [canner for word, canner in words if re.search(rf"(?<![a-z]){word}", plain)]


def one_canner(text: str) -> bool:
    """Whether it says one canner: "dial or weighted" says two, "no dial" none."""
    return read_canner(text) is not None and len(set(_canners(text)) - {"pressure"}) < 2


#: Ways that are no tested process (USDA AIB 539; K-State Research and Extension for inverted
#: jars; National Center for Home Food Preservation for electric multi-cookers and for cookers too
#: small to be canners). Multi-cookers, slow cookers and the sun from memory, which is the
#: stricter choice.
_UNSAFE = (
    (r"open.?kettle|kettle.?cann|hot.?fill",
     "Open-kettle canning is no tested process: it spoils unseen."),
    (r"\bovens?\b|microwave|dishwasher", "Oven, microwave and dishwasher are no tested process."),
    (r"inver[ts]|upside|flipped(?! through)|turned over",
     "Turning jars over is no process: a sealed lid proves nothing."),
    (r"\bwax|paraffin", "A wax seal is not airtight: no tested process."),
    (r"canning powder|aspirin", "Canning powders do not preserve: no tested process."),
    (r"multi.?cooker|electric|instant|slow.?cooker|crock.?pot|air.?fryer|sous.?vide|smart.?canner",
     "No tested process exists for electric multi-cookers and canners."),
    (r"pressure.?(?:cooker|saucepan|pan|pot)\b",
     "A pressure cooker is no pressure canner: it heats and cools too fast for the tested times."),
    (r"\bsun.?cann|in the sun|solar", "The sun is no tested process for jars."),
)  # fmt: skip
#: Said of what is not canned: dry food that was heated in its jars (University of Wisconsin
#: Extension and University of Missouri Extension HES157 on dry canning: what water is left gathers
#: in the jar), and jars filled hot and never processed (USDA AIB 539). An oven that dries is none.
_SEALED_SO = (
    (r"oven.?cann|dry.?cann|cann.*\boven|dishwasher|microwave.?cann",
     "Dry food that is heated in its jars is not canned: water gathers in them and nothing is sure "
     "to be dead."),
    (r"open.?kettle|kettle.?cann|hot.?fill",
     "Open-kettle canning is no tested process: it spoils unseen."),
)  # fmt: skip
_NOT_PROCESSED = (
    rf"0+|n|false|(?:{DENIED}|{NONE}|{LEFT_OUT}|unprocessed)"
    r"(?: (?:the|it|them|any|at|all|was|were|to|of|a|been|done|process(?:ed|ing)?|canned|canning|"
    r"canner|heated|heat|water|bath))*"
)


def unsafe_way(text: str) -> str | None:
    """The sentence against a way of canning, None where nothing speaks against it."""
    if not text or text in CANNERS or (plain_digits(text) and text.strip("0")):
        return None
    if re.fullmatch(_NOT_PROCESSED, text.casefold().strip()):
        return "The record says that it was not processed."
    return danger(text) or sealed_so(text)


def sealed_so(text: str) -> str | None:
    """The sentence against jars of what is not canned that were sealed as if it were."""
    return next((said for found, said in _SEALED_SO if re.search(found, text.casefold())), None)


def danger(text: str) -> str | None:
    """The same, of words that may stand under any key."""
    return next((said for pattern, said in _UNSAFE if re.search(pattern, text.casefold())), None)
