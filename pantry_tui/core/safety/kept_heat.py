"""What a note says of how hot smoked and dried food came, which is what cooks or dries it. A choice
of our own, the stricter one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence

from pantry_tui.core.canned import ANIMAL
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety import kept_words as words
from pantry_tui.core.safety import note_smoke as smoke
from pantry_tui.core.safety.kept_plain import cool_inside
from pantry_tui.core.safety.kept_warm import degrees_of
from pantry_tui.core.safety.measured import all_fahrenheit
from pantry_tui.core.safety.note_look import MOIST, says
from pantry_tui.core.safety.note_words import OTHER_DEGREES, PURPOSE
from pantry_tui.core.safety.notes import clauses
from pantry_tui.core.safety.strength import smoked_f
from pantry_tui.core.words import Group, Method

_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED})
#: °F above which nothing comes inside: it is the air that was never so hot.
_OF_AIR_F = 200.0
_DRY_IT = "Dry it again and condition it; what smells or looks spoilt is discarded."
#: °F inside that jerky reaches before it is dried (USDA FSIS, Jerky and food safety; from memory).
JERKY_F = 160

_Told = Iterator[str]


def smoked(batch: Batch, clause: str) -> _Told:
    """Hot smoke is what cooks it (core.safety.strength has how hot it comes inside)."""
    told = re.sub(PURPOSE, " ", clause)
    if batch.method is Method.COLD_SMOKED:
        if smoke.cold_smoke_failed(told):
            yield "no figure is published for what had less smoke than was meant."
        return
    if smoke.smoke_failed(told):
        if _was_heated(batch):
            yield "nobody says how long it stood warm before it was done."
        else:
            yield "nobody knows that it cooked through, and smoke alone keeps nothing: discard."
    elif re.search(smoke.NEVER_HOT, told):
        if _was_heated(batch):
            yield "nobody knows that it cooked through. Record the warmth inside as temperature=..."
        else:
            yield "nobody knows that it cooked through, and smoke alone keeps nothing: discard."
    elif (smoke.never_so_hot(told) and min(degrees_of(told), default=_OF_AIR_F) < _OF_AIR_F) or (
        not degrees_of(told) and cool_inside(clause) and not _was_heated(batch)
    ):
        yield "nobody knows that it cooked through. Record the warmth inside as temperature=..."
    if says(smoke.SMOKED_COLD, told):
        yield "cold smoke cooks nothing, so the days of hot smoked food are none of its own."


def _was_heated(batch: Batch) -> bool:
    """Whether its record, or another clause of its note, has it as hot as it has to be, or says
    that other heat finished it."""
    every = [clause for _, clause in clauses(batch.note)]
    return hottest(batch) >= smoked_f(batch.food) or smoke.finished_after(every)


def hottest(batch: Batch) -> float:
    """The most °F that its record or its note names."""
    every = [clause for _, clause in clauses(batch.note)]
    hot = all_fahrenheit(dict(batch.process).get("temperature", ""))
    hot += [one for clause in every if not smoke.never_so_hot(clause) for one in degrees_of(clause)]
    return max(hot, default=0.0)


def dry(method: Method, food: FoodFacts, clause: str) -> _Told:
    if method not in _DRY:
        return
    if food.group in ANIMAL and says(words.STILL_MOIST, clause):
        yield f"{MOIST}."
    meat = food.group is Group.MEAT and "jerky" in food.name
    cool = smoke.never_came_to(clause) and food.group is not Group.HERB
    cool = cool or says(smoke.NOT_HOT, clause) is not None
    if meat and (re.search(rf"{words.UNHEATED}|{smoke.NEVER_HOT}", clause) or cool):
        yield f"jerky is heated to {JERKY_F} F inside, poultry to 165 F, before it is dried."
    elif cool or smoke.drying_failed(re.sub(PURPOSE, " ", clause)):
        yield f"nobody knows that it dried through, nor how long it stood warm and moist. {_DRY_IT}"


def too_cool(
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
        if not re.search(OTHER_DEGREES, clause) and (found := degrees_of(clause))
    ]
    if not told:
        return []
    warmest, typed = max(told)
    known = frozenset(doubted(record))
    more = [one for one in doubted({**record, "temperature": f"{warmest:g} F"}) if one not in known]
    return [f"Its note says {typed!r}: not checked. {more[0]}"] if more else []
