"""What the note of a batch says of its process, read as its record is: a time, a pressure, an
altitude or a share that the record does not have, and words of heat, pressure, acid or seals by
which it would be doubted. A note makes doubt and lifts none.

No publication is about notes: which words are listened for is a choice of our own, the stricter
one. What they come to is judged where the record is (process.py, strength.py, prepared.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence

from pantry_tui.core.amounts import in_decimals, in_digits, read_altitude
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety import note_words as terms
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.denial import affirmed, denies, spelled_not
from pantry_tui.core.safety.jars import of_one_jar, ounces
from pantry_tui.core.safety.measured import all_minutes, read_percent, read_psi, spelled_out
from pantry_tui.core.safety.note_foods import Named, another_food
from pantry_tui.core.safety.note_mixture import (
    REDUCED_SODIUM,
    another_form,
    hardly_sweet,
    weakened,
)
from pantry_tui.core.safety.note_spoilage import spoilt
from pantry_tui.core.safety.note_ways import another_way
from pantry_tui.core.safety.prepared import PREPARED, not_tested
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.salt import says_of_brine
from pantry_tui.core.safety.seals import record_says_failed, says_none_failed, without_set_apart
from pantry_tui.core.safety.strength import IN_VINEGAR, SALTED
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import clean
from pantry_tui.core.words import Acidity, Method
from pantry_tui.errors import BadInput

#: In place of a key: what no record of a process can put right.
SPOILT = "spoilt"
#: Whose notes are read: what is safe by its process, its acid or its salt.
READ = LIDDED | IN_VINEGAR | SALTED
#: A vent of ten minutes precedes every pressure process (USDA AIB 539, guide 1).
_VENT_MINUTES = 10.0
_N = r"\d+(?:\.\d+)?"
_TIMED = rf"(?<![\d.])({_N}(?:\s*(?:-|–|to)\s*{_N})?)\s*(h|hrs?|hours?|mins?|minutes?|m)\b"
_PRESSED = rf"(?<![\d.])({_N})(?:\s*(?:-|–|to)\s*{_N})?\s*(psig?|kpa|bar|lbs?|pounds?|#)(?!\w)"
_HIGH = rf"(?<![\d.])({_N})\s*(ft|feet|foot|m|met(?:er|re)s?)\b"
_HIGH_BARE = rf"\b(?:altitude|elevation)\D{{0,12}}({_N})(?!\s*(?:[a-z%]|\d))"
_SHARE = rf"({_N})\s*(?:%|per\s?cent)"
_PH = rf"\bph\b\D{{0,12}}({_N})"
DEGREES = rf"(?<![\d.])({_N})\s*(?:°|deg(?:rees)?\b)?\s*([cf])\b"
_INCHES = r"((?:\d+ )?\d+/\d+|\d+(?:\.\d+)?)\s*(?:in|inch|inches|cm|mm)\b"
#: The least that can be meant of a height: a row of the garden is shorter.
_LEAST_HIGH = 100.0
_JAR = (
    r"\b((?:half )?gallon|gal|quart|qt|lit(?:re|er))s?\b"
    r"(?=\s*(?:$|jars?\b|and\b|were\b|was\b|size|not\b|did\b|among|in(?:stead)?\b|too\b|as\b))"
)
_AMOUNT_OF_ACID = rf"(?:\d+/\d+|{_N})\s*(?:tsp|tbsp|tbs|teaspoons?|tablespoons?)\b"

#: What a record with one detail more is doubted for, sentence by sentence.
Doubted = Callable[[Mapping[str, str]], Sequence[str]]


def doubted_notes(
    method: Method,
    food: FoodFacts,
    size: str,
    record: Mapping[str, str],
    altitude_ft: int | None,
    note: str,
    doubted: Doubted,
    named: Named,
) -> list[str]:
    """What the note says against a batch beside its record, a sentence each that quotes it.

    `doubted` judges a whole record, as that of the batch was judged, `named` finds a food by any of
    its names. Altitude in feet, None where nobody knows it."""
    if not note.strip() or method not in READ:
        return []
    details = read_details(record.items()).pairs
    said = {key: value for key, value in details if not is_unknown(value)}
    known = frozenset(doubted(record))
    found: list[str] = []
    for words, clause in clauses(without_set_apart(note)):
        against: list[str] = []
        for key, value in _differs(method, size, said, altitude_ft, clause):
            if value is None:
                against.append(_not_checked(words, key))
                continue
            more = [one for one in doubted({**said, key: value}) if one not in known]
            # Most pickles have no recipe of their own for it, and salt keeps none of them.
            more = [one for one in more if key != "form" or "in the form" not in one]
            against += [f"Its note says {words!r}: not checked. {more[0]}"] if more else []
        if method is Method.FRIDGE_PICKLE and weakened(
            method, re.sub(terms.NO_HARM, " fine ", clause)
        ):
            against.append(_not_checked(words, "vinegar"))
        if method in LIDDED:
            told = _prepared(method, food, clause)
            against += [f"Its note says {words!r}: not checked. {one}" for one in told]
            against += [_not_checked(words, key) for key in _speaks_of(method, food, clause, named)]
        found += against[:1]
    return list(dict.fromkeys(found))


def clauses(note: str) -> Iterator[tuple[str, str]]:
    """The clauses of a note that speak of this batch: as they were typed, cut short, and in small
    letters with every number in figures."""
    for typed in re.split(r"[;!?\n]|,(?!\d)|\.(?!\d)|\bbut\b", note):
        clause = _plain(typed)
        if clause and not re.search(terms.EARLIER, clause):
            yield clean(" ".join(typed.split()))[:80], clause


def _not_checked(words: str, key: str) -> str:
    if key == SPOILT:
        return (
            f"Its note says {words!r}, which is a sign of spoilage: not checked. If that is not "
            "so, record the process again, with a note that is right."
        )
    if not key:
        return (
            f"Its note says {words!r}: not checked. If that is not so, record the process again, "
            "with a note that is right."
        )
    return (
        f"Its note says {words!r}: not checked. Record what is true as {key}=..., and put the note "
        "right with it."
    )


def _plain(typed: str) -> str:
    """In small letters, every number in figures."""
    plain = re.sub(r"(?<=[a-z])-(?=[a-z])", " ", typed.casefold().replace("’", "'"))
    plain = spelled_not(re.sub(r"(?<=\d),(?=\d{3}\b)", "", plain))
    plain = in_decimals(spelled_out(plain))
    plain = re.sub(r"\b(\d+) thousand\b", r"\g<1>000", plain)
    return " ".join(plain.split())


_Differs = Iterator[tuple[str, str | None]]


def _differs(
    method: Method, size: str, said: Mapping[str, str], altitude_ft: int | None, clause: str
) -> _Differs:
    """The keys of which the words say a number that is not in the record: with the value, where the
    record has none and it can be judged; None where the two differ."""
    yield from _shares(said, clause)
    if hardly_sweet(method, clause):
        sugar = said.get("sugar", "")
        yield "sugar", None if sugar and not denies(sugar) else "none"
    if method not in LIDDED:
        return
    pickle = method is Method.VINEGAR_PICKLE and "form" not in said
    if pickle and re.search(REDUCED_SODIUM, clause):
        yield "form", "reduced-sodium"
    yield from _times(method, said, clause)
    yield from _pressures(method, said, clause)
    yield from _heights(said, altitude_ft, clause)
    for degrees, unit in re.findall(DEGREES, clause):
        if not re.search(terms.OTHER_DEGREES, clause) and not re.search(terms.DRIED_BEFORE, clause):
            yield "temperature", f"{degrees} {unit}"
    if "head" in clause:
        for inches in re.finditer(_INCHES, clause):
            yield "headspace", inches[0]
    if re.search(terms.ACID, clause) and re.search(_AMOUNT_OF_ACID, clause):
        yield "acid", clause
    own, other = ounces(of_one_jar(said, size)), re.search(_JAR, clause)
    if (
        own
        and other
        and (ounces(other[1]) or 0) > own * 1.1
        and not re.search(terms.FILLED_FROM, clause)
    ):
        yield "jar", None
    bathed = method is Method.PRESSURE and re.search(terms.BATH, clause)
    if bathed:
        yield "canner", None
    if method is Method.BOILING_WATER and "steam canner" in clause:
        yield "canner", "steam"


def _shares(said: Mapping[str, str], clause: str) -> _Differs:
    for share in re.finditer(_SHARE, clause):
        named = next((key for key, words in _OF_A_SHARE if re.search(words, clause)), "")
        if not named:
            continue
        has = read_percent(said.get(named, ""))
        # The share of a brine is not the share of what lies in it.
        brine = " brine" if "brine" in clause else ""
        other = brine and named == "salt" and not says_of_brine(said.get(named, ""))
        if has is None or other:
            yield named, f"{share[1]}%{brine}"
        elif abs(has - float(share[1])) > 0.01:
            yield named, None
    for number in re.findall(_PH, clause):
        if said.get("ph") != number:
            yield "ph", number


_OF_A_SHARE = (
    ("vinegar", r"vinegar|acetic|acidity"), ("salt", r"\b(?:salt|brine)"), ("sugar", r"\bsugar"),
)  # fmt: skip


def _times(method: Method, said: Mapping[str, str], clause: str) -> _Differs:
    for typed, unit in re.findall(_TIMED, clause):
        minutes = all_minutes(f"{typed} {unit}")
        if not minutes or (unit == "m" and min(minutes) >= _LEAST_HIGH):
            continue
        if re.search(r"\b(?:vent|exhaust)", clause):
            if method is Method.PRESSURE and min(minutes) < _VENT_MINUTES:
                yield "", None
            continue
        rested = re.search(terms.RESTED, clause) and "process" not in clause
        of_process = (re.search(terms.OF_PROCESS, clause) and not rested) or re.search(
            terms.ONLY, clause
        )
        if not of_process and (re.search(terms.OTHER_TIME, clause) or method is Method.JAM):
            continue
        recorded = all_minutes(said.get("minutes", ""))
        if not recorded:
            yield "minutes", f"{min(minutes):g}"
        elif not set(minutes) <= set(recorded):
            yield "minutes", None


def _pressures(method: Method, said: Mapping[str, str], clause: str) -> _Differs:
    for found in re.finditer(_PRESSED, clause):
        before, behind = clause[: found.start()], clause[found.end() :]
        if found[2] in ("lb", "lbs", "pound", "pounds", "#"):
            led = re.search(r"(?:\bat|@|\bonly|\breally|\bactually|\bto|\bonto)\s*$", before)
            alone = not behind.strip() or re.search(terms.SUBJECT, clause) or led
            if method is not Method.PRESSURE or not alone or re.search(terms.OTHER_WEIGHT, clause):
                continue
        psi, recorded = read_psi(found[0].replace("#", "lb")), read_psi(said.get("psi", ""))
        if psi is None or method not in PROCESSED:
            continue
        if recorded is None:
            yield "psi", f"{psi:g}"
        elif abs(psi - recorded) > 0.1:
            yield "psi", None


def _heights(said: Mapping[str, str], altitude_ft: int | None, clause: str) -> _Differs:
    try:
        own: int | None = read_altitude(said.get("altitude", ""))
    except BadInput:
        own = altitude_ft
    clause = in_digits(clause)
    heights = [(f"{n} {unit}", float(n)) for n, unit in re.findall(_HIGH, clause)]
    heights += [(f"{n} ft", float(n)) for n in re.findall(_HIGH_BARE, clause)]
    for typed, number in heights:
        try:
            feet = read_altitude(re.sub(r"\s*(?:met\w+|m)$", " m", typed))
        except BadInput:
            continue
        if number < _LEAST_HIGH and not re.search(terms.ALTITUDE, clause):
            continue
        if own is None:
            yield "altitude", f"{feet} ft"
        elif abs(feet - own) > max(30, own * 0.02):
            yield "altitude", None
    left_out = re.search(terms.ALTITUDE_LEFT_OUT, clause) and not re.search(terms.NEED, clause)
    away = re.search(terms.AWAY, clause) and "altitude" not in said
    if left_out or away or (not heights and re.search(terms.HIGH_UP, clause)):
        yield "altitude", None


def _prepared(method: Method, food: FoodFacts, clause: str) -> list[str]:
    """What is said of how the food was packed, as the record's reader says it."""
    told = re.sub(terms.PURPOSE, " ", clause)
    for word in (r"\bwindfalls?\b", r"\bover ?ripe\b"):
        told = told if affirmed(told, word) else re.sub(word, " ", told)
    if food.acidity is not Acidity.LOW_ACID:
        told = re.sub(terms.NO_LIQUID_ADDED, " ", told)
    return not_tested(method, food, {PREPARED: told})


def _went_wrong(plain: str) -> bool:
    """Whether words say that time, water, steam or pressure were not as they should be."""
    if re.search(terms.WITHOUT_MORE, plain) or re.search(terms.WATER_LOW, plain):
        return True
    short = any(
        re.search(one, plain) for one in (terms.TIME_SHORT, terms.TIME_GUESSED, terms.TIMED_FROM)
    )
    if short and not re.search(terms.TIME_ELSEWHERE, plain):
        return True
    return (
        re.search(terms.SUBJECT, plain) is not None and re.search(terms.TROUBLE, plain) is not None
    )


def _speaks_of(method: Method, food: FoodFacts, clause: str, named: Named) -> Iterator[str]:
    """The keys that words without a number put in doubt, "" of what no key says."""
    plain = re.sub(terms.NO_HARM, " fine ", re.sub(terms.LITTLE_LOST, " fine ", clause))
    if another_way(plain) or _went_wrong(plain):
        yield ""
    if spoilt(method, plain):
        yield SPOILT
    if weakened(method, told := re.sub(terms.VINEGAR_OUTSIDE, " ", plain)):
        yield "vinegar"
    lids = (
        re.search(terms.LIDS, plain)
        and not re.search(terms.LIDS_MAY_BE, plain)
        and not says_none_failed(plain)
    )
    if lids and (re.search(terms.SEAL_TROUBLE, plain) or record_says_failed(plain)):
        yield "seal"
    acid = method is Method.VINEGAR_PICKLE or food.acidity is Acidity.ACIDIFIED
    acid = acid or ACID_ADDED in food.classes
    if acid and re.search(terms.ACID, told) and re.search(terms.ACID_SHORT, told):
        yield "acid"
    if "tomato" in food.classes and re.search(terms.FROST_KILLED, plain):
        yield ""
    mixed = re.sub(terms.FAT_REMOVED, " ", re.sub(terms.PURPOSE, " ", clause))
    if another_form(method, food, mixed) or another_food(method, food, mixed, named):
        yield ""
    if method is not Method.JAM and "pie" not in food.name and affirmed(mixed, terms.THICKENED):
        yield ""
    added = re.search(terms.ADDED, mixed) if method in PROCESSED else None
    if added is not None and added[1].rstrip("es") not in food.name:
        yield ""
