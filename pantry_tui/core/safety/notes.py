"""What the note of a batch says of its process, read as its record is: a time, a pressure, an
altitude or a share that the record does not have, and words of heat, pressure, acid or seals by
which it would be doubted. A note makes doubt and lifts none.

No publication is about notes: which words are listened for is a choice of our own, the stricter
one. What they come to is judged where the record is (process.py, strength.py, prepared.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date

from pantry_tui.core.amounts import in_decimals
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety import note_words as terms
from pantry_tui.core.safety.acid import ACID_ADDED
from pantry_tui.core.safety.danger_words import dangers_in_english
from pantry_tui.core.safety.denial import affirmed, spelled_not
from pantry_tui.core.safety.measured import spelled_out
from pantry_tui.core.safety.note_acid import as_asked, by_jar, not_in_each_jar
from pantry_tui.core.safety.note_answers import answered, denies_what_should_be
from pantry_tui.core.safety.note_beans import of_the_soak, unsoaked
from pantry_tui.core.safety.note_before import which
from pantry_tui.core.safety.note_beside import without_what_is_beside
from pantry_tui.core.safety.note_end import cut_short, of_the_process
from pantry_tui.core.safety.note_fallen import as_windfalls
from pantry_tui.core.safety.note_foods import Named, another_food
from pantry_tui.core.safety.note_good import (
    buttered,
    without_a_cleaned_freezer,
    without_a_knob,
    without_the_end,
    without_what_is_well,
)
from pantry_tui.core.safety.note_hours import in_figures
from pantry_tui.core.safety.note_labels import in_words
from pantry_tui.core.safety.note_mixture import (
    another_form,
    half_the_vinegar,
    weakened,
)
from pantry_tui.core.safety.note_numbers import differs
from pantry_tui.core.safety.note_parts import is_of_the_brine, strong_enough
from pantry_tui.core.safety.note_plain import high_up, plainly_said
from pantry_tui.core.safety.note_poison import may_poison
from pantry_tui.core.safety.note_pots import boiled_instead, cooked_first
from pantry_tui.core.safety.note_recipe import meat_in_it, more_of_what_is_low, without_fewer
from pantry_tui.core.safety.note_share import share
from pantry_tui.core.safety.note_some import lacks_in_some
from pantry_tui.core.safety.note_spoilage import spoilt
from pantry_tui.core.safety.note_stages import delayed, gone_wrong
from pantry_tui.core.safety.note_times import how_long
from pantry_tui.core.safety.note_topped import opened_jar, watered
from pantry_tui.core.safety.note_unsure import time_unknown
from pantry_tui.core.safety.note_warned import of_the_animal
from pantry_tui.core.safety.note_ways import another_way
from pantry_tui.core.safety.prepared import PREPARED, not_tested
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.seals import record_says_failed, says_none_failed, without_set_apart
from pantry_tui.core.safety.strength import IN_VINEGAR, SALTED
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import clean
from pantry_tui.core.words import Acidity, Group, Method

#: Whose notes are read: what is safe by its process, its acid or its salt.
READ = LIDDED | IN_VINEGAR | SALTED
#: What parts clauses; a point within "6 p.m." is none.
_BETWEEN = r"[;!?\n]|,(?!\d)|(?<![\d\s][ap]\.m)(?<![\d\s][AP]\.M)\.(?!\d|[mM]\b)|\bbut\b"
#: Of jars it is their lids that rust.
_RUSTY = (
    r"^(?:(?:a|bit|little|slightly|rather|quite|very|some|all|few|1|are|is|they|it|these|gone|"
    r"going|getting|got|went|looks?|now) )*rust(?:y|ed|ing)?(?: (?:in (?:places|spots)|spots?|"
    r"already|now|at the (?:rim|edge)s?|underneath|inside))?$"
)
#: A ring that rusted holds no seal, and a canner is opened when its pressure is down.
_RING = r"(?:screw )?(?:rings?|bands?|screw ?bands?)"
_NO_PRESSURE = (
    r"(?:the )?(?:pressure|gauge|dial|needle) (?:(?:was|were|had|has|is|read|showed|went|came|fell|"
    r"dropped|returned|all|back|gone|completely|fully|down|at|on|to) )*(?:down|gone|zero|0|dropped|"
    r"fallen|released)(?: (?:to|at) (?:zero|0))?(?! (?:to|by|below|under|at|psi))"
)
_UNLOADED = (
    r"\b(?:opened?|opening|unlocked|unloaded|lifted|took|taken|removed?|out of)(?: (?:up|out|off|"
    r"it|the|them|all|of|my|our|we|i|canner|lid|cover|pot|jars|weight|regulator))*"
)
_AS_IT_SHOULD_BE = (
    rf"\brust(?:y|ed) {_RING}\b(?! (?:and|or|&)|\w)|"
    rf"\b{_RING} (?:(?:is|are|were|was|a bit|bit|all|very|gone|went|got|have|had|only) )*"
    r"rust(?:y|ed|ing)\b(?! (?:on|onto|to|through|into))|"
    rf"(?<!lid and )\brust (?:only )?on (?:the |its |1 )?{_RING}\b(?: only| alone)?(?! and)|"
    rf"{_UNLOADED} (?:only )?(?:after|when|once|as soon as) {_NO_PRESSURE}|"
    rf"\b{_NO_PRESSURE} (?:when|before) (?:i |we )?{_UNLOADED}"
)
#: Of which there may be one and a half.
_UNIT = r"(?:hour|hr|day|week|month|minute|min|inche?)"
#: A step that is said to have gone wrong, and not how.
_NOT_RIGHT = (
    r"\b(?:head ?space|recipe|method|altitude|tim(?:e|ing)|steps?|procedure|jars?|batch|process\w*|"
    r"pressure|acid|water level) (?:is |was |were |are |went )?not (?:quite )?right$"
)
#: A mark behind the name of a column, or behind what is answered at once.
_ASKED = r"(?i)\s*\?\s*:\s*|\s*\?\s*(?=(?:yes|no|y|n|true|false|none|not yet)\b\s*(?:$|[;,.!\n]))"
#: An answer that is a question itself.
_MARK = r":\s*\?+(?=\s*(?:$|[;,\n]))"
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
    made: date | None = None,
) -> list[str]:
    """What the note says against a batch beside its record, a sentence each that quotes it.

    `doubted` judges a whole record, as that of the batch was judged, `named` finds a food by any of
    its names. Altitude in feet, None where nobody knows it; `made`: the day it was made."""
    if not note.strip() or method not in READ:
        return []
    details = read_details(record.items()).pairs
    said = {key: value for key, value in details if not is_unknown(value)}
    known = frozenset(doubted(record))
    found: list[str] = []
    kept = answered(
        note,
        lambda one: bool(
            doubted_notes(method, food, size, record, altitude_ft, one, doubted, named)
        ),
    )
    if method in LIDDED and denies_what_should_be(note, acid=by_jar(food)):
        found.append(_not_checked(whole(note), ""))
    sour = method in (Method.FRIDGE_PICKLE, Method.VINEGAR_PICKLE)
    every = of_the_process(method, list(clauses(without_set_apart(kept))), made)
    if sour and strong_enough(method, food, said, every):
        every = [one for one in every if not is_of_the_brine(one[1])]
    together, before = "; ".join(clause for _, clause in every), ""
    for words, clause in every:
        against: list[str] = []
        ours = without_the_end(clause) if method in LIDDED else clause
        named_in_it = tuple(differs(method, size, said, altitude_ft, clause))
        # A time after the end of it is none of its own.
        still = tuple(differs(method, size, said, altitude_ft, ours)) if named_in_it else ()
        for key, value in (one for one in named_in_it if one in still):
            of_else = cooked_first(food, clause) or of_the_soak(food, clause, before)
            if key == "minutes" and of_else:
                continue
            if value is None:
                against.append(_not_checked(words, key))
                continue
            more = [one for one in doubted({**said, key: value}) if one not in known]
            # Most pickles have no recipe of their own for it, and salt keeps none of them.
            more = [one for one in more if key != "form" or "in the form" not in one]
            against += [f"Its note says {words!r}: not checked. {more[0]}"] if more else []
        if "altitude" not in said and high_up(method, altitude_ft, clause):
            against.append(_not_checked(words, "altitude"))
        if not_in_each_jar(method, food, clause, before, together):
            against.append(_not_checked(words, "acid"))
        if method is Method.FRIDGE_PICKLE and (
            weakened(method, re.sub(terms.NO_HARM, " fine ", clause), note)
            or half_the_vinegar(clause, note)
        ):
            against.append(_not_checked(words, "vinegar"))
        if method in SALTED and (affirmed(clause, terms.SALT_CUT) or watered(clause)):
            against.append(_not_checked(words, "salt"))
        if method in LIDDED:
            packed = f"{said.get('pack', '')} {note}".casefold()
            told = _prepared(method, food, ours, packed)
            against += [f"Its note says {words!r}: not checked. {one}" for one in told]
            some = share(ours) > 0
            quoted = whole(note) if some else words
            spoken = ("",) if may_poison(food, ours, note) else ()
            died = any(of_the_animal(food, ours, together, ()))
            spoken = (*spoken, *([""] if died else []), *_speaks_of(method, food, ours, named))
            against += [_not_checked(quoted, key, some) for key in spoken]
        found += against[:1]
        before = clause
    lacks = lacks_in_some(method, food, [clause for _, clause in every])
    if lacks is not None and not found:
        found.append(_not_checked(whole(note), lacks))
    if method in LIDDED and (waited := delayed(_plain(note))):
        found.append(_not_checked(waited, ""))
    if method in PROCESSED and time_unknown(together):
        found.append(_not_checked(whole(note), "minutes"))
    if method in PROCESSED and cut_short(together):
        found.append(_not_checked(whole(note), ""))
    return list(dict.fromkeys(found))


def clauses(note: str) -> Iterator[tuple[str, str]]:
    """The clauses of a note that speak of this batch: as they were typed, cut short, and in small
    letters with every number in figures."""
    note = without_a_cleaned_freezer(note)
    asked = re.sub(_MARK, ": unsure", re.sub(_ASKED, ": ", note))
    every = [(typed, in_words(_plain(typed))) for typed in re.split(_BETWEEN, asked)]
    together = "; ".join(clause for _, clause in every if clause)
    for typed, plain in every:
        clause = without_what_is_beside(plain, together)
        if clause and not re.search(terms.EARLIER, clause):
            yield clean(" ".join(typed.split()))[:80], clause


def whole(note: str) -> str:
    """All of a note as it is quoted where how many it speaks of counts."""
    return clean(" ".join(note.split()))


def _not_checked(words: str, key: str, some: bool = False) -> str:
    """`some`: it is seen on some of the jars, and each may be one of them."""
    if some and key in (terms.SPOILT, "seal"):
        return which(words, of_lids=key == "seal")
    if key == terms.SPOILT:
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
    plain = dangers_in_english(typed.lower())
    plain = re.sub(r"(?<=[a-z])-(?=[a-z])", " ", plain.casefold().replace("’", "'"))
    plain = spelled_not(re.sub(r"(?<=\d),(?=\d{3}\b)", "", plain))
    plain = in_figures(plain)
    plain = re.sub(r"\b(?:three|3) quarters? of an hour\b", "45 minutes", plain)
    plain = re.sub(r"\b(?:a )?quarter (?:of )?(?:an )?hour\b", "15 minutes", plain)
    plain = re.sub(_AS_IT_SHOULD_BE, " ", re.sub(terms.AS_PUBLISHED, " ", plain))
    plain = spelled_out(plain)
    plain = re.sub(rf"\b(\d+) and (?:a )?(?:half|1/2) ({_UNIT}s?)\b", r"\1.5 \2", plain)
    plain = re.sub(rf"\b(\d+) ({_UNIT}s?) and (?:a )?(?:half|1/2)\b", r"\1.5 \2", plain)
    plain = in_decimals(plain)
    plain = re.sub(r"\b(\d+) thousand\b", r"\g<1>000", plain)
    plain = " ".join(how_long(plain).split())
    return " ".join(without_what_is_well(plain).split())


def _prepared(method: Method, food: FoodFacts, clause: str, packed: str) -> list[str]:
    """What is said of how the food was packed, as the record's reader says it."""
    told = re.sub(r"\b(?:far |much )?too ripe\b", "overripe", re.sub(terms.PURPOSE, " ", clause))
    told = told if food.group is Group.VEGETABLE else as_windfalls(told)
    for word in (r"\bwindfalls?\b", r"\bover ?ripe\b"):
        if not affirmed(told, word) or re.search(rf"{word}.*\bwent (?:in)?to\b", clause):
            told = re.sub(word, " ", told)
    # Raw meat makes its own, and is packed without (USDA AIB 539, guide 5).
    raw_meat = food.group is Group.MEAT and "ground" not in food.name and "hot" not in packed
    if food.acidity is not Acidity.LOW_ACID or raw_meat:
        told = re.sub(terms.NO_LIQUID_ADDED, " ", told)
    return not_tested(method, food, {PREPARED: told})


def _went_wrong(plain: str) -> bool:
    """Whether words say that time, water, steam or pressure were not as they should be."""
    if re.search(_NOT_RIGHT, plain):
        return True
    if terms.speaks(plain, terms.OF_LOSS) and re.search(terms.WITHOUT_MORE, plain):
        return True
    if terms.speaks(plain, terms.OF_WATER) and re.search(terms.WATER_LOW, plain):
        return True
    short = terms.speaks(plain, terms.OF_TIME) and any(
        re.search(one, plain) for one in (terms.TIME_SHORT, terms.TIME_GUESSED, terms.TIMED_FROM)
    )
    if short and not re.search(terms.TIME_ELSEWHERE, plain):
        return True
    return (
        re.search(terms.SUBJECT, plain) is not None and re.search(terms.TROUBLE, plain) is not None
    )


def _speaks_of(method: Method, food: FoodFacts, clause: str, named: Named) -> Iterator[str]:
    """The keys that words without a number put in doubt, "" of what no key says."""
    plain = re.sub(terms.LITTLE_LOST, " fine ", clause) if "siphon" in clause else clause
    if terms.speaks(plain, terms.OF_DENIAL):
        plain = re.sub(terms.NO_HARM, " fine ", plain)
    if another_way(plain) or _went_wrong(plain) or boiled_instead(method, food, clause):
        yield ""
    if unsoaked(method, food, clause) or opened_jar(method, food, clause):
        yield ""
    if more_of_what_is_low(method, food, clause) or meat_in_it(method, food, clause):
        yield ""
    yield from gone_wrong(method, plain)
    yield from plainly_said(method, food, plain)
    if spoilt(method, plain):
        yield terms.SPOILT
    if weakened(method, told := re.sub(terms.VINEGAR_OUTSIDE, " ", plain)):
        yield "vinegar"
    if affirmed(plain, _RUSTY):
        yield "seal"
    lids = (
        re.search(terms.LIDS, plain)
        and not re.search(terms.LIDS_MAY_BE, plain)
        and not says_none_failed(plain)
    )
    if lids and (re.search(terms.SEAL_TROUBLE, plain) or record_says_failed(plain)):
        yield "seal"
    acid = method is Method.VINEGAR_PICKLE or food.acidity is Acidity.ACIDIFIED
    acid = acid or ACID_ADDED in food.classes
    sour = as_asked(told)
    if acid and re.search(terms.ACID, sour) and re.search(terms.ACID_SHORT, sour):
        yield "acid"
    if "tomato" in food.classes and affirmed(plain, terms.FROST_KILLED):
        yield ""
    mixed = without_a_knob(method, clause)
    if method is Method.JAM and buttered(mixed):
        yield ""
    mixed = re.sub(terms.FAT_REMOVED, " ", re.sub(terms.PURPOSE, " ", mixed))
    mixed = without_fewer(food, mixed)
    meaty = food.group is Group.MEAL and "soup" in food.classes
    if food.group is Group.MEAT or meaty or "stock" in food.classes:
        mixed = re.sub(terms.FAT_OF_ITS_OWN, " ", mixed)
    # Above pH 4.6 a process for acid food is none (USDA AIB 539); which kinds are, nobody can see.
    if food.acidity is not Acidity.LOW_ACID and affirmed(mixed, terms.LOW_ACID):
        yield ""
    if another_form(method, food, mixed) or another_food(method, food, mixed, named):
        yield ""
    if method is not Method.JAM and "pie" not in food.name and affirmed(mixed, terms.THICKENED):
        yield ""
    added = re.search(terms.ADDED, mixed) if method in PROCESSED else None
    if added is not None and added[1].rstrip("es") not in food.name:
        yield ""
