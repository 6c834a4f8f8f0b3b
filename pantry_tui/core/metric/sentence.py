"""A whole sentence, measure by measure."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from fractions import Fraction
from math import floor

from pantry_tui.core.amounts import Amount, kitchen
from pantry_tui.core.metric.figures import (
    LENGTH,
    PINT,
    SPELLED,
    VOLUME,
    WEIGHT,
    altitude,
    of,
    pressure,
    sized,
    temperature,
)
from pantry_tui.core.metric.found import CONTEXT, SPAN, Found, N, in_steps, nearest, number_of, say
from pantry_tui.core.text import singular

#: Published jars, and the metric ones that makers' manuals give their times to.
JARS = {"half-pint": "250 ml", "pint": "500 ml", "quart": "1 litre"}


def a_jar(match: re.Match[str]) -> str:
    """A jar of a published table, and the one it stands for: "quart (1 litre)"."""
    word = match[0].casefold()
    return f"{match[0]} ({JARS[word if word in JARS else singular(word)]})"


def jars(match: re.Match[str]) -> str:
    """So many jars that are wanted: "6 quart jars" are "6 jars of 1 litre", which hold a little
    more each, so of many there are fewer."""
    ends = [number_of(match[name]) for name in ("low", "high") if match[name]]
    counts = [
        Fraction(max(1, nearest(end * PINT / 500))) if end == int(end) else end for end in ends
    ]
    said = " to ".join(dict.fromkeys(map(say, counts)))
    what = f"{match['what']} of" if match["what"] else "of"
    return f"{match['key']}{said} {what} {JARS[match['jar'].casefold()]}"


def each(match: re.Match[str]) -> str:
    """ "salt a quart" -> "salt per 940 ml", "a quart of water" -> "940 ml of water": never more of
    what something goes into."""
    unit = match["unit"].casefold()
    much = PINT / 2 if unit == "half-pint" else VOLUME.factors[SPELLED[unit]]
    return sized(VOLUME, much, floor)


# -- the whole sentence ---------------------------------------------------------------------------

#: "55F" is as it is typed; "7F" is a lid code.
_UNIT_F = r"(?: ?° ?F|[ -]F|(?<=\d\d)F|(?<=\.\d)F| degrees F(?:ahrenheit)?)\b"
_UNIT_W = r"[ -]?(?:lbs?|pounds?|oz|ounces?)\b\.?(?! ?oz)"
_UNIT_V = r"[ -]?(?:fl oz|fluid ounces?|gallons?|gal|quarts?|qt|pints?|pt|cups?)\b"
_UNIT_L = r"[ -]?inch(?:es)?\b"
_UNIT_FT = r"[ -]?(?:ft|feet)\b"
#: In "minutes=20 psi=11" it is the key of a record, and the number before it is no pressure.
_UNIT_PSI = r"[ -]?psi\b(?!=)"
_JAR_NEXT = r"(?![ -](?:jars?|bottles?|bags?|tubs?|box(?:es)?|packs?|containers?|mason)\b| \()"


def _rule(unit: str, said: Callable[[Found], str]) -> Callable[[str], str]:
    pattern = re.compile(rf"{SPAN}(?P<unit>{unit})", re.IGNORECASE)

    def replaced(match: re.Match[str]) -> str:
        high = match["high"]
        return said(
            Found(
                number_of(match["low"]),
                number_of(high) if high else None,
                match["mid"] or "",
                match["unit"].strip(" -"),
                match.string[max(0, match.start() - CONTEXT) : match.start()],
                match.string[match.end() : match.end() + CONTEXT],
                match["unit"] == "F",
            )
        )

    return lambda text: pattern.sub(replaced, text)


_RULES = (
    _rule(_UNIT_F, temperature),
    _rule(_UNIT_W, lambda found: of(WEIGHT, found)),
    _rule(_UNIT_V + _JAR_NEXT, lambda found: of(VOLUME, found)),
    _rule(_UNIT_L, lambda found: of(LENGTH, found)),
    _rule(_UNIT_FT, altitude),
    _rule(_UNIT_PSI, pressure),
)
_JARS_OF = re.compile(
    rf"(?P<key>){SPAN}[ -](?P<jar>half-pint|pint|quart)s?[ -]"
    r"(?P<what>jars?|bottles?|bags?|tubs?|box(?:es)?|packs?|containers?)\b",
    re.IGNORECASE,
)
_JARS_KEY = re.compile(
    rf"(?P<key>\bjars: ){SPAN}[ -](?P<jar>half-pint|pint|quart)s?\b(?P<what>)", re.IGNORECASE
)
_VESSEL = r"(?P<unit>half-pint|pint|quart|gallon)s?\b"
_EACH = re.compile(
    r"(?:(?<=\w )(?<!\bin )(?<!\bof )(?<!\bto )(?<!\bfor )(?<!\bfrom )(?<!\bwith )a|\bper|\beach|"
    rf"\bevery) (?:US )?{_VESSEL}" + _JAR_NEXT,
    re.IGNORECASE,
)
_ONE_OF = re.compile(rf"\b(?:an?|one) (?:US )?{_VESSEL}" + _JAR_NEXT, re.IGNORECASE)
_SAID = {
    "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7",
    "eight": "8", "nine": "9", "ten": "10", "eleven": "11", "twelve": "12", "a": "1", "an": "1",
}  # fmt: skip
#: "four ounces", "a pound": the number is a word.
_IN_WORDS = re.compile(
    rf"\b({'|'.join(_SAID)}) (?=(?:pounds?|ounces?|inch|inches|feet)\b)"
    rf"|\b({'|'.join(list(_SAID)[1:12])}) (?=(?:cups|pints|quarts|gallons)\b)",
    re.IGNORECASE,
)
_CUBIC = re.compile(rf"({N}) cubic (?:ft|foot|feet)\b")
_JAR_WORD = re.compile(r"(?<![\w-])(?:half-pint|pint|quart)s?\b(?! \()", re.IGNORECASE)

#: A metric measure that stands beside the same in US ones: "1 inch (2.5 cm)", "900 ft or 300 m".
_METRIC_ONE = rf"-?{N}(?: to -?{N})? ?(?:° ?C|C|kg|g|ml|l|L|litres?|cm|mm|m|kPa)\b"
US_ONE = (
    rf"(?<![\w./,-])-?{N}(?:(?: to |-)-?{N})?"
    rf"(?:{_UNIT_F}|{_UNIT_W}|{_UNIT_V}|{_UNIT_L}|{_UNIT_FT}|{_UNIT_PSI})"
)
_ONE = re.compile(US_ONE, re.IGNORECASE)
_BESIDE = re.compile(rf"({US_ONE}) \(({_METRIC_ONE})\)", re.IGNORECASE)
_EITHER = re.compile(rf"({US_ONE}) or ({_METRIC_ONE})", re.IGNORECASE)
#: "4 cups of vinegar to 2 of water": the second number is of the same.
_CUPS_TO = re.compile(rf"({N} (cups?) of [a-z]+ to {N}) of\b")
#: "psi: 11", as a record has it.
_KEY_PSI = re.compile(rf"\bpsi(:? +)({N})\b(?! ?kPa)")
#: "0.5 in" where nothing follows that could be what it is in.
_KEY_INCH = re.compile(rf"(?<![\w.])({N}) ?in(?=[).,;]|$)", re.MULTILINE)
_PSI_IN_KPA = re.compile(rf"\bpsi(:? +)(?={N} ?kPa)")
_SMALL_PART = re.compile(r"(?<![\w.])0\.(\d+) (kg|l)\b")
_SIGN = re.compile(rf"({SPAN}) F\b")
_ANY = re.compile(r"\d|pint|quart|gallon|pound|ounce|inch|feet", re.IGNORECASE)


def in_metric(text: str, names: Iterable[str] = ()) -> str:
    """A sentence with every US measure in it said in metric ones; `names`, what the household
    itself called its things, stay as they are. Said twice it is the same."""
    if not _ANY.search(text):
        return text
    kept, plain = _hidden(text, (*names, *_choices(text)))
    plain = _EITHER.sub(r"\2", _BESIDE.sub(r"\2", plain))
    plain = _CUPS_TO.sub(r"\1 \2 of", plain)
    plain = _IN_WORDS.sub(lambda found: f"{_SAID[(found[1] or found[2]).casefold()]} ", plain)
    plain = _KEY_PSI.sub(_pressure_key, _PSI_IN_KPA.sub(_pressure_key, plain))
    plain = _CUBIC.sub(_litres, _KEY_INCH.sub(r"\1 inch", plain))
    plain = _EACH.sub(
        lambda found: f"per {each(found)}", _JARS_OF.sub(jars, _JARS_KEY.sub(jars, plain))
    )
    plain = _ONE_OF.sub(each, plain)
    for rule in _RULES:
        plain = rule(plain)
    plain = _JAR_WORD.sub(a_jar, plain)
    plain = _SMALL_PART.sub(_of_a_thousand, plain)
    return _shown(plain, kept)


def in_us(text: str, names: Iterable[str] = ()) -> str:
    """The same in US measures: what stands beside them in metric ones is left out, and a
    temperature has its sign."""
    if not _ANY.search(text):
        return text
    kept, plain = _hidden(text, (*names, *_choices(text)))
    plain = _EITHER.sub(r"\1", _BESIDE.sub(r"\1", plain))
    return _shown(_SIGN.sub(r"\1 °F", plain), kept)


def _choices(text: str) -> list[str]:
    """Two measures that are no translation of each other: "95F or 95C" asks which is meant."""
    found = (match for match in _EITHER.finditer(text) if " or " in text)
    return [match[0] for match in found if not _near(match[1], match[2])]


def _near(american: str, metric: str) -> bool:
    """Whether both say about the same, as examples do: 900 ft or 300 m."""
    for rule in _RULES:
        american = rule(american)
    (mine, *_), (other, *_) = (re.findall(_MAGNITUDE, one) for one in (american, metric))
    here, there = _in_small(mine), _in_small(other)
    return abs(here - there) <= max(abs(there) * Fraction(15, 100), Fraction(1))


_MAGNITUDE = rf"(-?{N}) ?(?:° ?)?([A-Za-z]+)"


def _in_small(measure: tuple[str, str]) -> Fraction:
    number, unit = measure
    return number_of(number) * (1000 if unit in ("kg", "l", "L", "litre", "litres") else 1)


def _pressure_key(match: re.Match[str]) -> str:
    """The key of a record by a word that says no unit; a column keeps its width."""
    gap = match[1] if len(match[1]) < 7 else match[1][5:]
    return f"pressure{gap}{match[2]} psi" if match.re is _KEY_PSI else f"pressure{gap}"


def _litres(match: re.Match[str]) -> str:
    return f"{say(in_steps(number_of(match[1]) * Fraction('28.316847'), Fraction(1), floor))} l"


_CONTENTS = re.compile(rf"(\s*(?:\d+×)?)({N}) (kg|g|l|ml)")


def us_contents(text: str) -> str:
    """("5 l") -> "5 1/4 quart": what a container holds, alone; anything else as it is."""
    match = _CONTENTS.fullmatch(text)
    if match is None:
        return text
    weight = match[3] in ("g", "kg")
    small = number_of(match[2]) * (1000 if match[3] in ("kg", "l") else 1)
    large, little = ("lb", "oz") if weight else ("quart", "pint")
    factors = (WEIGHT if weight else VOLUME).factors
    unit = large if small >= factors[large] else little
    return f"{match[1]}{kitchen(Amount(small / factors[unit], unit))}"


def is_measure(text: str) -> bool:
    """Whether it is a US measure and nothing else: "1 lb"."""
    return _ONE.fullmatch(text.strip()) is not None


def _of_a_thousand(match: re.Match[str]) -> str:
    small = Fraction(f"0.{match[1]}") * 1000
    return f"{say(small)} {'g' if match[2] == 'kg' else 'ml'}"


#: Stand for names while a sentence is read; of no script.
_FIRST, _LAST = 0xE000, 0xF8FF


def _hidden(text: str, names: Iterable[str]) -> tuple[list[str], str]:
    """The sentence with a mark for each name in it, and the names by their marks."""
    kept: list[str] = []
    for name in sorted({one for one in names if one and one in text}, key=len, reverse=True):
        if len(kept) > _LAST - _FIRST:
            break
        text = re.sub(rf"(?<!\w){re.escape(name)}(?!\w)", chr(_FIRST + len(kept)), text)
        kept.append(name)
    return kept, text


def _shown(text: str, kept: list[str]) -> str:
    for number, name in enumerate(kept):
        text = text.replace(chr(_FIRST + number), name)
    return text
