"""How a place's warmth changes a published quality life. Estimates, shorter only, never safety.

The household defaults: frozen above 0 °F, to a quarter per +10 °F; dried food between two
published temperatures by interpolation in log time, above the warmer one half per +10 °F; cellar
crops above their range by Q10, the factor per +18 °F (respiration table, held within 2 to 3).
Anything cooler keeps no longer than its published life.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pantry_tui.core.keeping.rules import Rule, Rulebook, Status, closeness
from pantry_tui.core.model import Batch, Stay
from pantry_tui.core.words import Climate, Kind, Method, State

_WARM_PLACES = frozenset({Climate.ROOM, Climate.PANTRY, Climate.CELLAR})
#: A crop whose respiration nobody tabled: the faster end of the general rule, 2 to 3.
_Q10 = 3.0


@dataclass(frozen=True, slots=True)
class Life:
    """A quality rule and the share of its published life that a place allows (at most 1)."""

    rule: Rule
    share: float = 1.0
    note: str = ""


def spoken(batch: Batch, stay: Stay, book: Rulebook) -> Sequence[Rule]:
    """The published rules for one stay. An opened or thawed pack in the freezer keeps like a
    closed one."""
    found = book.speaking(batch.food, batch.method, stay.state, stay.climate)
    if not found and stay.climate is Climate.FREEZER and stay.state in (State.OPEN, State.THAWED):
        closed = book.speaking(batch.food, batch.method, State.SEALED, stay.climate)
        return [rule for rule in closed if rule.kind is not Kind.REFUSE]
    return found


def closest(found: Sequence[Rule], batch: Batch, kind: Kind) -> Rule | None:
    """The closest current rule of that kind; where equally close, the one with the shortest life.

    data/keeping.csv marks as current only the figure in use, so a food's own row stands for it.
    """
    best = [rule for rule in found if rule.kind is kind]
    if not best:
        return None
    nearest = closeness(best[0], batch.food)
    level = [rule for rule in best if closeness(rule, batch.food) == nearest]
    return min(level, key=lambda rule: rule.days)


def life(batch: Batch, stay: Stay, book: Rulebook) -> Life | None:
    """The quality rule for a stay and the share of its life there; None without a figure."""
    rule = closest(spoken(batch, stay, book), batch, Kind.QUALITY)
    if rule is None or rule.use is None:
        return None
    warm = stay.temperature_f
    if stay.climate is Climate.FREEZER:
        if warm <= 0:
            return Life(rule)
        return Life(rule, 0.25 ** (warm / 10), f"at {warm:g} F a quarter per 10 F above 0")
    if batch.method is Method.DRIED and stay.climate in _WARM_PLACES:
        return _dried(rule, warm, book.of(batch.method))
    if batch.method is Method.CELLAR and rule.temp_f_max is not None and warm > rule.temp_f_max:
        return _warm_crop(rule, warm, batch, book)
    return Life(rule)


def _warm_crop(rule: Rule, warm: float, batch: Batch, book: Rulebook) -> Life:
    """By Q10 from the published temperature; no longer than a figure that was published for the
    same crop at a temperature that is reached (a sweet potato at 70 F, in whatever place)."""
    crop = book.crops.get(batch.food.name)
    q10 = crop.q10 if crop else _Q10
    reached = (
        one
        for one in _at_other_warmths(rule, book.of(batch.method))
        if one.temp_f_max is not None and one.temp_f_max <= warm
    )
    found = [_at(one, warm, q10) for one in reached]
    return min(found, key=lambda one: one.rule.days * one.share)


def _at_other_warmths(rule: Rule, table: Sequence[Rule]) -> list[Rule]:
    """The quality figures in use for the same food and state that name a temperature."""
    return [
        one
        for one in table
        if one.food == rule.food
        and one.state is rule.state
        and one.kind is Kind.QUALITY
        and one.status is Status.CURRENT
        and one.use is not None
        and one.temp_f_max is not None
    ]


def _at(rule: Rule, warm: float, q10: float) -> Life:
    assert rule.temp_f_max is not None
    if warm == rule.temp_f_max:
        return Life(rule)
    share = q10 ** ((rule.temp_f_max - warm) / 18)
    return Life(rule, share, f"at {warm:g} F, {rule.temp_f_max:g} published, Q10 of {q10:g}")


def _dried(rule: Rule, warm: float, table: Sequence[Rule]) -> Life:
    known = sorted(
        (one for one in _at_other_warmths(rule, table) if one.climates & _WARM_PLACES),
        key=lambda one: one.temp_f_max or 0,
    )
    if not known:
        return Life(rule)
    cool, hot = known[0], known[-1]
    assert cool.temp_f_max is not None and hot.temp_f_max is not None
    if warm <= cool.temp_f_max:
        return Life(cool)
    if warm >= hot.temp_f_max:
        share = 0.5 ** ((warm - hot.temp_f_max) / 10)
        note = f"at {warm:g} F half per 10 F above {hot.temp_f_max:g}" if share < 1 else ""
        return Life(hot, share, note)
    part = (warm - cool.temp_f_max) / (hot.temp_f_max - cool.temp_f_max)
    share = math.exp(math.log(hot.days / cool.days) * part)
    note = f"at {warm:g} F between {cool.temp_f_max:g} and {hot.temp_f_max:g} F in log time"
    return Life(cool, share, note)
