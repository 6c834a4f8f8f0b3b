"""What the note of a batch says against food that no lid and no process keeps: cold, dry, sugared,
in oil. A note makes doubt and lifts none; what is surely over says "discard" at its end, and is so
from the first day (core.keeping.limits).

No publication is about notes: which words are listened for is a choice of our own, the stricter
one.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import partial
from itertools import chain, islice, pairwise

from pantry_tui.core.canned import ANIMAL, LIDDED
from pantry_tui.core.keeping.harm import is_tin
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety import note_smoke as smoke
from pantry_tui.core.safety.denial import affirmed
from pantry_tui.core.safety.kept_heat import JERKY_F, dry, hottest, smoked, too_cool
from pantry_tui.core.safety.kept_plain import off_in_the_oven, out_for_hours, plain_of_kept
from pantry_tui.core.safety.kept_spoilage import as_sign, perishes_by_kind, spoilt, vaguely_bad
from pantry_tui.core.safety.kept_warm import (
    EACH,
    FOR,
    PERHAPS_WARM,
    WARM,
    degrees_of,
    found_warm,
    minutes_of,
    warm,
)
from pantry_tui.core.safety.note_added import animal_in, plants_in
from pantry_tui.core.safety.note_answers import answered
from pantry_tui.core.safety.note_beans import raw_beans
from pantry_tui.core.safety.note_before import QUOTES, which
from pantry_tui.core.safety.note_carried import left_warm, off_or_late
from pantry_tui.core.safety.note_contact import came_in, past_it
from pantry_tui.core.safety.note_cooling import Late, chilled_late
from pantry_tui.core.safety.note_fallen import of_fallen_fruit
from pantry_tui.core.safety.note_finer import finer
from pantry_tui.core.safety.note_labels import EITHER_WAY
from pantry_tui.core.safety.note_look import says
from pantry_tui.core.safety.note_orders import set_aside
from pantry_tui.core.safety.note_packs import PACKED, of_packs
from pantry_tui.core.safety.note_poison import may_poison
from pantry_tui.core.safety.note_raw_egg import NEST_FOUND
from pantry_tui.core.safety.note_salt import unsalted
from pantry_tui.core.safety.note_share import share, to_cull
from pantry_tui.core.safety.note_states import done_of
from pantry_tui.core.safety.note_stood import put_away, stood_out
from pantry_tui.core.safety.note_times import plainly
from pantry_tui.core.safety.note_topped import topped_up
from pantry_tui.core.safety.note_warned import of_the_animal, ours, warned
from pantry_tui.core.safety.note_words import PURPOSE
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
#: Salted, dry or sweet: no two hours run on them.
_SALTED_OR_DRY = frozenset(
    {Method.DRIED, Method.FREEZE_DRIED, Method.SALTED, Method.LACTIC, Method.PASTE, Method.SUGAR}
)
#: Made in the warm of a kitchen: nor on them, but on an egg or a cream liqueur.
_BREWED = frozenset({Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.INFUSION})
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: None of it kills trichinae for certain (US CDC, Trichinellosis; from memory).
_CURED = _DRY | {Method.SALTED, Method.HOT_SMOKED, Method.COLD_SMOKED}
#: The fewest days that these work in the warmest place that is published, 70 to 75 °F (USDA AIB
#: 539, guide 6, fermented foods).
_WORKS = {"sauerkraut": 21, "fermented dill pickles": 21}
#: But what is ground has no water and no air.
_DRIED = (
    r"\b(?:(?:sun|air|oven|freeze|home|well|fully)[ -]?)?(?:dried|dry|dehydrated) "
    r"(?!(?:\w+ )?(?:powder|flakes?|ground|chill?i\w*|chil[ie]s?|peppercorns?))"
)
#: A time and nothing else, which goes with what stands before it.
_HOW_LONG = (
    r"^(?:(?:for|about|over|nearly|all|of|maybe|a|half|the|until|till|0\.5|whole|good) )*"
    r"(?:\d+(?:\.\d+)? )?(?:hours?|hrs?|minutes?|mins?|days?|night|morning|afternoon|"
    r"over ?night)$"
)
_AS_OLD_AS = (
    "its days begin with the oldest that is in it. Record when that was made; if the note means "
    "something else, put it right."
)
_LATE = {
    Late.SURELY: f"{WARM}: discard.",
    Late.PERHAPS: PERHAPS_WARM,
    Late.UNCLEAR: f"a time in it was not understood, and {PERHAPS_WARM}",
}
#: No publication is about it: who wrote so had a reason.
_SET_ASIDE = (
    "somebody set it aside, so nobody eats it. Where it is spoilt or recalled, say so with `sign`."
)
#: Of a list: a cross, a dash or a mark of a question under "OK?".
_EITHER_WAY = "whether that is a yes or a no nobody can tell. Put the note right with one of them."


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
    found = list(found_warm(method, record, perishes))
    if not note.strip():
        return found
    again = partial(
        doubted_kept, method, food, size, {}, perishes=perishes, doubted=doubted, signs=signs
    )
    every = tuple(clauses(answered(note, lambda one: bool(again(note=one)))))
    together = "; ".join(clause for _, clause in every)
    every = tuple((typed, put_away(together, ours(one, together))) for typed, one in every)
    batch = Batch(
        "", "", food, method, None, size, process=tuple(record.items()), note=note.casefold()
    )
    # What is said of pieces of a pile is judged where it lies (core.keeping.as_noted).
    for typed, clause in (one for one in every if not to_cull(batch, one[1])):
        against = chain(
            _unripe(food, clause)
            if method in LIDDED
            else _against(batch, clause, perishes, signs, together),
            (_SET_ASIDE,) if set_aside(clause) else (),
            (_EITHER_WAY,) if clause.endswith(EITHER_WAY) else (),
        )
        some = is_closed(method, size) and share(clause) > 0
        found += [
            which(whole(note), told) if some else f"{QUOTES}{typed!r}: {told}"
            for told in islice(against, 1)
        ]
    if method not in LIDDED:
        if not found and not _in_the_warm(method, food):
            found += _over_several(method, food, every, note, perishes)
        found += too_cool(method, record, every, doubted)
    return list(dict.fromkeys(found))


def needs_cold(method: Method, food: FoodFacts) -> bool:
    """Whether it may be a thing of the refrigerator at all: no whole crop, no fat, no dry food."""
    raw = method in (Method.FRESH, Method.CELLAR, Method.BOUGHT)
    return not raw or perishes_by_kind(food)


_Told = Iterator[str]


def put_in(method: Method, food: FoodFacts, clause: str) -> _Told:
    """What lies in oil, honey, fat or vinegar and brings its own water, as a clause says."""
    yield from _oil(method, food, clause)
    sweet = food.name == "honey" or "syrup" in food.name or method is Method.SUGAR
    if sweet and plants_in(clause):
        yield f"{_IN_HONEY}."
    # Butter is made of milk and cream.
    other = re.sub(r"\b(?:milk|cream)\b", " ", clause) if food.name == "butter" else clause
    if (sweet or _is_fat(food) or food.name == "vinegar") and animal_in(other):
        yield _ANIMAL_IN


def _against(
    batch: Batch,
    clause: str,
    perishes: Callable[[], bool],
    signs: Callable[[], Iterable[Sign]],
    together: str,
) -> _Told:
    method, food = batch.method, batch.food
    yield from put_in(method, food, clause)
    yield from _animal(method, food, clause)
    if told := unsalted(method, food, clause, batch.note):
        yield told
    cured = method in _CURED and food.group is Group.MEAT
    if cured and says(smoke.OF_WILD, re.sub(PURPOSE, " ", clause)) and hottest(batch) < JERKY_F:
        yield (
            f"the worms of bears and wild pigs outlive salt, smoke, drying and the freezer. It is "
            f"heated to {JERKY_F} F inside: record that as temperature=..."
        )
    if method in (Method.HOT_SMOKED, Method.COLD_SMOKED) and food.group in ANIMAL:
        yield from smoked(batch, clause)
    yield from dry(method, food, clause)
    if not _in_the_warm(method, food):
        yield from warm(method, food, clause, perishes)
        cooked = method is Method.MEAL or bool(food.classes & {"cooked", "stock"})
        yield from plain_of_kept(clause, perishes, cooked=cooked)
        if stood_out(clause) and perishes():
            yield PERHAPS_WARM
        yield from left_warm(method, food, clause, together, perishes, cooked=cooked)
    if may_poison(food, clause, batch.note):
        yield "it may poison: discard it, unless who knows the kind for certain has looked at it."
    if topped_up(method, clause, together):
        yield _AS_OLD_AS
    if raw_beans(method, food, clause, together):
        yield "red kidney beans are poisonous until they have boiled 30 minutes: discard."
    if of_fallen_fruit(method, food, clause):
        yield (
            "fallen fruit may hold a poison of moulds that no heat destroys, and its juice the "
            "germs of the ground: discard."
        )
    yield from warned(food, clause, together)
    yield from of_the_animal(food, clause, together, degrees_of(clause))
    yield from spoilt(method, food, clause, signs)
    yield from _touched(method, food, clause, signs)
    if method in PACKED:
        yield from _packs(batch, clause, signs)
    yield from vaguely_bad(method, food, clause, signs)


def _in_the_warm(method: Method, food: FoodFacts) -> bool:
    """Whether it is made or kept in the warm, so that no two hours run on it."""
    brewed = method in _BREWED and not perishes_by_kind(food)
    return method in _SALTED_OR_DRY or brewed


def _over_several(
    method: Method,
    food: FoodFacts,
    every: Sequence[tuple[str, str]],
    note: str,
    perishes: Callable[[], bool],
) -> _Told:
    """Time in the warm that only several clauses together say."""
    late = chilled_late(plainly("; ".join(clause for _, clause in every)))
    if late is not Late.NO and perishes():
        told = _LATE[late]
        yield f"{QUOTES}{whole(note)!r}: {told}"
    together = "; ".join(clause for _, clause in every)
    if off_in_the_oven(together) and perishes():
        yield f"{QUOTES}{whole(note)!r}: {WARM}: discard."
    elif (out_for_hours(together) or off_or_late(together)) and perishes():
        yield f"{QUOTES}{whole(note)!r}: {PERHAPS_WARM}"
    for (_, before), (_, clause) in pairwise(every):
        if re.search(_HOW_LONG, clause):
            for told in islice(warm(method, food, f"{before} {clause}", perishes), 1):
                yield f"{QUOTES}{whole(note)!r}: {told}"


def _touched(
    method: Method, food: FoodFacts, clause: str, signs: Callable[[], Iterable[Sign]]
) -> _Told:
    told = re.sub(PURPOSE, " ", clause)
    cooked = method is Method.MEAL or bool(food.classes & {"cooked", "stock"})
    if into := came_in(clause, told, perishes=cooked or perishes_by_kind(food), cooked=cooked):
        yield into
    whole = method in (Method.CELLAR, Method.FRESH) and food.name in words.GREENS_POISON
    if whole and (seen := past_it(told)):
        yield next(
            (as_sign(one) for one in signs() if one.id == seen),
            "potatoes with long sprouts, or shrivelled ones, are not fit to eat. Discard those; "
            "cut short sprouts and eyes out deeply.",
        )


def _packs(batch: Batch, clause: str, signs: Callable[[], Iterable[Sign]]) -> _Told:
    method, food = batch.method, batch.food
    found = of_packs(method, food, is_tin(batch), clause, minutes_of(clause), degrees_of(clause))
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
        float(many) * EACH[unit] / EACH["d"]
        for many, unit in re.findall(FOR, clause)
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
        # Of what is dry in oil no figure is its own: dried tomatoes and herbs have those of fresh.
        if plants_in(re.sub(_DRIED, "", clause) if "oil" in food.name else clause):
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
    whole = "poultry" in food.classes and not re.search(r"breast|piece|ground", food.name)
    if raw and whole and finer(food, done_of(clause)) == "stuffed":
        yield "stuffed raw poultry is cooked at once: it is neither kept nor frozen."
    if food.group is not Group.EGG:
        return
    if method in (Method.FRESH, Method.BOUGHT) and "hard" not in food.name:
        if says(words.SHELL_BROKEN, clause):
            # US CDC, in a column: the sign of data/signs.csv.
            yield "bacteria get in through a cracked or dirty shell: discard."
        if affirmed(clause, NEST_FOUND):
            # Three to five weeks in the refrigerator, from the day that is known (USDA FSIS).
            yield "no figure begins with eggs of which nobody knows when they were laid."
    elif method is Method.FRIDGE_PICKLE and says(words.PRICKED, clause):
        # A case of botulism (US CDC, MMWR of 2000, Illinois 1997; from memory).
        yield "holes carry spores into the yolk, where no vinegar reaches them."
