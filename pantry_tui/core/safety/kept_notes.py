"""What the note of a batch says against food that no lid and no process keeps: cold, dry, sugared,
in oil. A note makes doubt and lifts none; what is surely over says "discard" at its end, and is so
from the first day (core.keeping.limits).

No publication is about notes: which words are listened for is a choice of our own, the stricter
one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import islice

from pantry_tui.core.canned import ANIMAL, LIDDED
from pantry_tui.core.keeping.harm import is_tin
from pantry_tui.core.keeping.warm import HOT_F, HOT_MIN, WARM_MIN
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety.kept_spoilage import as_sign, perishes_by_kind, spoilt, vaguely_bad
from pantry_tui.core.safety.measured import all_fahrenheit
from pantry_tui.core.safety.note_added import animal_in, plants_in
from pantry_tui.core.safety.note_before import QUOTES, which
from pantry_tui.core.safety.note_look import MOIST, says
from pantry_tui.core.safety.note_packs import PACKED, of_packs
from pantry_tui.core.safety.note_share import share, to_cull
from pantry_tui.core.safety.note_words import DEGREES, OTHER_DEGREES, PURPOSE
from pantry_tui.core.safety.notes import clauses, whole
from pantry_tui.core.safety.signs import Sign, signs_for
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import Group, Method

#: Oil that covers food: what keeps for a day or two anyhow, or frozen, needs no word of it.
_UNDER_OIL = frozenset(
    {Method.DRIED, Method.FREEZE_DRIED, Method.FRIDGE_PICKLE, Method.SALTED, Method.FRESH,
     Method.CELLAR, Method.BOUGHT, Method.SUGAR, Method.HOT_SMOKED, Method.COLD_SMOKED,
     Method.FLAVOURED_VINEGAR}
)  # fmt: skip
_COVERED = frozenset({Group.VEGETABLE, Group.FRUIT, Group.HERB, Group.RELISH, Group.DAIRY})
#: Fresh food under oil: the refrigerator, four days from mixing (NCHFP, Freezing garlic in oil,
#: 2015), fresh herbs two (North Carolina State Extension).
_IN_OIL = (
    "food under oil is shut off from the air, where botulism grows: on a shelf it is refused, in "
    "the refrigerator it has four days from mixing, fresh herbs two. Put it up as in oil"
)
#: From memory: honey and syrup may hold the spores, and take up the water of what lies in them.
_IN_HONEY = (
    "garlic, onions, roots and herbs are low in acid and give their water to it, which may hold "
    "spores of botulism. No figure is published for it"
)
_ANIMAL_IN = "no figure is published for meat, fish, egg or milk in it, which keep cold alone."
#: USDA FSIS, the two-hour rule: one hour above 90 F, as in a car that stands.
_WARM = "out of the cold, for over two hours in all as far as anybody knows"
#: Salted, dry or sweet: no two hours run on them.
_SALTED_OR_DRY = frozenset(
    {Method.DRIED, Method.FREEZE_DRIED, Method.SALTED, Method.LACTIC, Method.PASTE, Method.SUGAR}
)
#: Made in the warm of a kitchen: nor on them, but on an egg or a cream liqueur.
_BREWED = frozenset({Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.INFUSION})
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: The fewest days that these work in the warmest place that is published, 70 to 75 °F (USDA AIB
#: 539, guide 6, fermented foods).
_WORKS = {"sauerkraut": 21, "fermented dill pickles": 21}
#: Minutes of what people call it.
_SPELLS = (
    (
        r"\b(?:a|all|the whole|half the) (?:week|weekend|month|summer|autumn|fall|winter|spring|"
        r"season|year)\b|\b(?:days|weeks|months|years)\b(?! old)|"
        r"\bsince (?:(?:last )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|"
        r"(?:the |last )*(?:weekend|week))\b",
        3 * 24 * 60,
    ),
    (r"\bover ?night\b|\ball (?:night|day)\b|\b(?:whole|half the) (?:night|day)\b", 8 * 60),
    (
        r"\b(?:a|all) (?:day|morning|afternoon)\b|"
        r"\bsince (?:yesterday|breakfast|(?:this |the |last )*(?:morning|noon|lunch|night))\b",
        5 * 60,
    ),
    (r"\b(?:hours|too long|for ages|a long time)\b", 3 * 60),
)
_EACH = {"m": 1, "h": 60, "d": 24 * 60, "w": 7 * 24 * 60}
_FOR = r"(?<![\d.])(\d+(?:\.\d+)?)\s*(h|m|d|w)(?:(?:rs?|ours?|ins?|inutes?|ays?|eeks?)\b|\b)"
#: Butter may stand out a day or two (USDA FSIS, from memory); the stricter of them.
_BUTTER_MIN = 24 * 60
#: °F from which hot food is kept so (USDA FSIS).
_KEPT_HOT_F = 139.9
#: °F inside that jerky reaches before it is dried (USDA FSIS, Jerky and food safety; from memory).
_JERKY_F = 160


def doubted_kept(
    method: Method,
    food: FoodFacts,
    size: str,
    record: Mapping[str, str],
    note: str,
    *,
    perishes: Callable[[], bool],
    doubted: Callable[[Mapping[str, str]], Sequence[str]],
    signs: Callable[[], Iterable[Sign]],
) -> list[str]:
    """What the note says against a batch of any method, a sentence each that quotes it.

    `perishes`: whether it must go after two hours above 40 °F; `doubted` judges a whole record, as
    that of the batch was judged; `signs` are all that are known."""
    if not note.strip():
        return []
    every = tuple(clauses(note))
    found: list[str] = []
    batch = Batch("", "", food, method, None, size)
    # What is said of pieces of a pile is judged where it lies (core.keeping.as_noted).
    for typed, clause in (one for one in every if not to_cull(batch, one[1])):
        against = (
            _unripe(food, clause) if method in LIDDED else _against(batch, clause, perishes, signs)
        )
        some = is_closed(method, size) and share(clause) > 0
        found += [
            which(whole(note), told) if some else f"{QUOTES}{typed!r}: {told}"
            for told in islice(against, 1)
        ]
    if method not in LIDDED:
        found += _too_cool(method, record, every, doubted)
    return list(dict.fromkeys(found))


def needs_cold(method: Method, food: FoodFacts) -> bool:
    """Whether it may be a thing of the refrigerator at all: no whole crop, no fat, no dry food."""
    raw = method in (Method.FRESH, Method.CELLAR, Method.BOUGHT)
    return not raw or perishes_by_kind(food)


_Told = Iterator[str]


def _against(
    batch: Batch,
    clause: str,
    perishes: Callable[[], bool],
    signs: Callable[[], Iterable[Sign]],
) -> _Told:
    method, food = batch.method, batch.food
    yield from _oil(method, food, clause)
    sweet = food.name == "honey" or "syrup" in food.name or method is Method.SUGAR
    if sweet and plants_in(clause):
        yield f"{_IN_HONEY}."
    # Butter is made of milk and cream.
    other = re.sub(r"\b(?:milk|cream)\b", " ", clause) if food.name == "butter" else clause
    if (sweet or _is_fat(food) or food.name == "vinegar") and animal_in(other):
        yield _ANIMAL_IN
    yield from _animal(method, food, clause)
    if method is Method.HOT_SMOKED:
        yield from _smoked(food, clause)
    yield from _dry(method, food, clause)
    brewed = method in _BREWED and not perishes_by_kind(food)
    if method not in _SALTED_OR_DRY and not brewed:
        yield from _warm(method, food, clause, perishes)
    yield from spoilt(method, food, clause, signs)
    if method in PACKED:
        yield from _packs(batch, clause, signs)
    yield from vaguely_bad(method, food, clause, signs)


def _packs(batch: Batch, clause: str, signs: Callable[[], Iterable[Sign]]) -> _Told:
    method, food = batch.method, batch.food
    found = of_packs(method, food, is_tin(batch), clause, _minutes(clause), _degrees(clause))
    known: dict[str, Sign] = {}
    for ids, otherwise in found:
        known = known or {one.id: one for one in signs_for(signs(), method, food, open_=False)}
        sign = next((known[one] for one in ids if one in known), None)
        if sign or otherwise:
            yield as_sign(sign) if sign else otherwise


def _unripe(food: FoodFacts, clause: str) -> _Told:
    """Fewer days than any published ferment of it works."""
    least = _WORKS.get(food.name)
    worked = re.search(words.FERMENTED, clause)
    if least is None or worked is None or "more" in clause.split():
        return
    days = [
        float(many) * _EACH[unit] / _EACH["d"]
        for many, unit in re.findall(_FOR, clause)
        if unit in "dw"
    ]
    if days and max(days) < least:
        yield f"no {food.name} is published that is sour enough before {least} days."


def _is_fat(food: FoodFacts) -> bool:
    return food.group is Group.FAT or food.name == "butter"


def _oil(method: Method, food: FoodFacts, clause: str) -> _Told:
    if method in (Method.IN_OIL, Method.FROZEN):
        return
    if _is_fat(food):
        if plants_in(clause):
            yield f"{_IN_OIL}."
        return
    if method not in _UNDER_OIL or food.group not in _COVERED or "nut" in food.classes:
        return
    told = re.sub(PURPOSE, " ", clause)
    covered = says(words.OIL, told) and not re.search(words.NO_COVER, told)
    if covered and (method is not Method.BOUGHT or re.search(words.OWN_OIL, told)):
        yield f"{_IN_OIL}."


def _animal(method: Method, food: FoodFacts, clause: str) -> _Told:
    raw = method in (Method.FRESH, Method.BOUGHT, Method.FROZEN)
    milk = food.group is Group.DAIRY and "cheese" not in food.name
    if milk and raw and re.search(words.NOT_PASTEURISED, clause):
        yield "milk that was not pasteurised has no published figure."
    if food.group is not Group.EGG:
        return
    if method in (Method.FRESH, Method.BOUGHT) and "hard" not in food.name:
        if says(words.SHELL_BROKEN, clause):
            # US CDC, in a column: the sign of data/signs.csv.
            yield "bacteria get in through a cracked or dirty shell: discard."
    elif method is Method.FRIDGE_PICKLE and says(words.PRICKED, clause):
        # A case of botulism (US CDC, MMWR of 2000, Illinois 1997; from memory).
        yield "holes carry spores into the yolk, where no vinegar reaches them."


def _smoked(food: FoodFacts, clause: str) -> _Told:
    """Hot smoke is what cooks it (core.safety.strength has how hot it comes inside)."""
    told = re.sub(PURPOSE, " ", clause)
    if food.group in ANIMAL and says(words.SMOKE_FAILED, told):
        yield "nobody knows that it cooked through, and smoke alone keeps nothing: discard."
    if food.group in ANIMAL and says(words.SMOKED_COLD, told):
        yield "cold smoke cooks nothing, so the days of hot smoked food are none of its own."


def _dry(method: Method, food: FoodFacts, clause: str) -> _Told:
    if method not in _DRY:
        return
    if food.group in ANIMAL and says(words.STILL_MOIST, clause):
        yield f"{MOIST}."
    meat = food.group is Group.MEAT and "jerky" in food.name
    if meat and re.search(words.UNHEATED, clause):
        yield f"jerky is heated to {_JERKY_F} F inside, poultry to 165 F, before it is dried."


def _minutes(clause: str) -> int | None:
    """The longest time that is named, None where none is."""
    told = [float(many) * _EACH[unit] for many, unit in re.findall(_FOR, clause)]
    told += [many for pattern, many in _SPELLS if not told and re.search(pattern, clause)]
    return round(max(told)) if told else None


def _warm(method: Method, food: FoodFacts, clause: str, perishes: Callable[[], bool]) -> _Told:
    if says(words.NO_POWER, clause) and perishes():
        yield "book it with `outage`, which says what to do. Until then it is not checked."
    if says(words.EXPIRED, clause) and perishes():
        yield "no figure begins with what was past its last day."
    cold = re.search(words.COLD_PLACE, clause) is not None
    again = says(words.REFROZEN, clause)
    thawed = says(words.THAWED_WARM, clause) and not re.search(words.THAWED_SAFELY, clause)
    if again and not thawed and "fridge" not in clause and perishes():
        yield "only what thawed in the refrigerator is frozen again, and nobody says that it did."
    minutes = _minutes(clause)
    warmest = max(_degrees(clause), default=0.0)
    idle = says(words.LEFT_IN_IT, clause) and method is not Method.COLD_SMOKED
    if idle and minutes and minutes > WARM_MIN and warmest < _KEPT_HOT_F and perishes():
        yield f"{_WARM}: discard."
    if re.search(words.MADE_SO, clause):
        return
    out = re.search(r"\bout of the (?:fridge|refrigerator|freezer|cold)\b", clause)
    if cold and not out and "not" not in clause.split():
        return
    left = bool(thawed) or says(words.LEFT_OUT, clause) is not None
    if not left and method is not Method.FRIDGE_PICKLE:
        left = minutes is not None and says(words.STOOD, clause) is not None
    hot = warmest > HOT_F or re.search(words.HOT_PLACE, clause) is not None
    most = HOT_MIN if hot else WARM_MIN
    asked = re.match(words.ASKED, clause) is not None
    if not left and not asked and not re.search(words.COOKING, clause):
        placed = minutes is not None and re.search(rf"{words.WARM_PLACE}|{words.ROOM}", clause)
        left = bool(placed) or says(words.AT_ROOM, clause) is not None
    found_warm = says(words.FOUND_WARM, clause) and not re.search(words.WARM_SO_FAR, clause)
    if found_warm and not asked and perishes():
        yield f"{_WARM}: discard."
    if food.name == "butter" and not perishes():
        if left and (hot or minutes is None or minutes > _BUTTER_MIN):
            yield "no figure is published for butter that stood out for over a day."
        return
    too_long = left and (minutes is None or minutes > most)
    if too_long and perishes():
        yield f"{_WARM}: discard."
    elif too_long and method is Method.FRIDGE_PICKLE:
        yield "it was not heat processed, so it stays cold. What stood out has no figure."


def _degrees(clause: str) -> list[float]:
    told = [f"{many} {unit}" for many, unit in re.findall(DEGREES, clause)]
    return [one for each in told for one in all_fahrenheit(each)]


def _too_cool(
    method: Method,
    record: Mapping[str, str],
    every: Sequence[tuple[str, str]],
    doubted: Callable[[Mapping[str, str]], Sequence[str]],
) -> list[str]:
    """The warmth of a smoke or of dried meat, held against it as if the record said so: the warmest
    that is named, since it is brought up to that."""
    heated = method in (Method.HOT_SMOKED, Method.COLD_SMOKED, Method.DRIED)
    if not heated or "temperature" in record:
        return []
    told = [
        (max(found), typed)
        for typed, clause in every
        if not re.search(OTHER_DEGREES, clause) and (found := _degrees(clause))
    ]
    if not told:
        return []
    warmest, typed = max(told)
    known = frozenset(doubted(record))
    more = [one for one in doubted({**record, "temperature": f"{warmest:g} F"}) if one not in known]
    return [f"Its note says {typed!r}: not checked. {more[0]}"] if more else []
