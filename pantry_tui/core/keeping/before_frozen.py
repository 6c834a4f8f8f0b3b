"""What was over in the refrigerator before it was frozen, by what its note says: frozen meat, fish,
milk and cooked food are as good as on the day they went in, and no freezer gives a day back (USDA
FSIS, Freezing and food safety). How long it keeps fresh is asked of the same rules as always."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from datetime import date, timedelta

from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.ladder import Assessment
from pantry_tui.core.keeping.wording import BEST, DISCARD
from pantry_tui.core.model import DAY_MIN, Batch, Container, Place, Turn, When
from pantry_tui.core.safety.note_fridge_days import before_the_freezer
from pantry_tui.core.words import Climate, Group, Method, State

_FRIDGE = imagined(Climate.FRIDGE)


def over_before_frozen(
    batch: Batch,
    own: Assessment,
    assess: Callable[[Batch, Container, Mapping[str, Place]], Assessment],
) -> Assessment:
    """Its own assessment, over where it was so before it was frozen; `assess` judges a batch, its
    container and places as if they were all that is known."""
    if batch.made is None or not _frozen(batch, own):
        return own
    for typed, days in before_the_freezer(batch.note):
        if days is None:
            if can_hurt(_as_fresh(batch, batch.made)):
                says = "nobody knows that it was still good when it was frozen. Put the note right."
                why = f"Its note says {typed!r}: {says}"
                own = replace(own, doubt=True, harmless=False, reasons=(why, *own.reasons))
            continue
        began = batch.made - timedelta(days=math.floor(days))
        fresh = _as_fresh(batch, began)
        last = assess(fresh, _in_a_fridge(began), {_FRIDGE.id: _FRIDGE}).discard_after
        if last is None or last >= batch.made:
            continue
        why = (
            f"{DISCARD} {say(last)}: its note says {typed!r}, and by then it was over: it was "
            "frozen too late."
        )
        if own.discard_after is None or last < own.discard_after:
            old = [one for one in own.reasons if not one.startswith((DISCARD, BEST))]
            own = replace(own, discard_after=last, best_by=None, reasons=(why, *old))
    return own


def frozen_late(batch: Batch) -> bool:
    """Whether its note speaks of days before it was frozen."""
    return batch.method is Method.FROZEN and any(before_the_freezer(batch.note))


def _frozen(batch: Batch, own: Assessment) -> bool:
    first = own.spans[0].climate if own.spans else None
    cooked = batch.method in (Method.MEAL, Method.FRESH) and first is Climate.FREEZER
    return batch.method is Method.FROZEN or cooked


def _as_fresh(batch: Batch, made: date) -> Batch:
    food = batch.food
    cooked = food.group is Group.MEAL or bool(food.classes & {"cooked", "stock"})
    method = Method.MEAL if cooked else Method.FRESH
    return replace(batch, method=method, made=made, note="", doubt=(), parts=())


def _in_a_fridge(since: date) -> Container:
    minute = since.toordinal() * DAY_MIN
    turn = Turn(When(minute, minute, since), "", _FRIDGE.id, State.SEALED)
    return Container("", "", 1, State.SEALED, _FRIDGE.id, (turn,))
