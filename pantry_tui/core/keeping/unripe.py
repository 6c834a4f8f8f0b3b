"""Ferments that were called ready before any publication would: they are not sour yet.

What is finished cannot hurt; what is not can (vegetables without air, not acid enough to hold down
botulism). A person sees bubbles, not acid, so the days count: no fewer than the shortest that is
published for the food (the working times of data/keeping.csv), else for vegetables at all. A
measured pH says more than any day.
"""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.keeping.trouble import Trouble
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.measured import PH_LINE, read_ph
from pantry_tui.core.words import Climate, Method, State

#: Vegetables in brine or salt work for two to seven weeks (UC Master Food Preservers, Ferment).
LEAST_DAYS = 14
_PER = {"hours": 1 / 24, "days": 1, "weeks": 7, "months": 30}


def unripe(batch: Batch, spans: Sequence[Span], book: Rulebook) -> Trouble | None:
    """Why a ferment may not be done though it was called ready, or None."""
    working = [span for span in spans if span.in_progress]
    after = [span for span in spans if not span.in_progress]
    if batch.method is not Method.LACTIC or any(span.end >= FOREVER for span in working):
        return None  # nobody has called it ready
    acidity = read_ph(dict(batch.process).get("ph", ""))
    if acidity is not None:
        return _by_ph(acidity)
    if not working or not after:
        return None
    rules = {climate: _closest(batch, climate, book) for climate in Climate}
    known = [rule for rule in rules.values() if rule is not None]
    least = min((_days(rule) for rule in known), default=LEAST_DAYS)
    began, ready = min(span.day for span in working), min(span.day for span in after)
    # In the cold nothing works but what is published to.
    works = any(rules[span.climate] or not span.climate.is_cold for span in working)
    worked = (ready - began).days if works else 0
    if worked >= least:
        return None
    days = "day" if worked == 1 else "days"
    return Trouble(
        f"Called ready after {worked} {days}; the shortest published time is {least:g}. Measure it "
        f"and record its pH (ph=3.9): above {PH_LINE} it is not done.",
        tuple(dict.fromkeys(known)),
    )


def _by_ph(acidity: float) -> Trouble | None:
    if acidity <= PH_LINE:
        return None
    return Trouble(f"pH {acidity:g} is above {PH_LINE}: it has not fermented enough to be eaten.")


def _closest(batch: Batch, climate: Climate, book: Rulebook) -> Rule | None:
    rules = book.speaking(batch.food, batch.method, State.IN_PROGRESS, climate)
    return next((rule for rule in rules if rule.least is not None), None)


def _days(rule: Rule) -> float:
    assert rule.least is not None
    return rule.least * _PER[rule.unit]
