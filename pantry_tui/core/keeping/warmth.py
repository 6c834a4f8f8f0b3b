"""How a place's warmth changes a published quality life. Estimates, shorter only, never safety.

The household defaults: frozen above 0 °F, to a quarter per +10 °F; dried food between two
published temperatures by interpolation in log time, above the warmer one half per +10 °F; cellar
crops above their range by Q10, the factor per +18 °F (respiration table, held within 2 to 3).
Anything cooler keeps no longer than its published life.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from operator import itemgetter
from typing import NamedTuple

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status, closest
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Climate, Kind, Method, State

_WARM_PLACES = frozenset({Climate.ROOM, Climate.PANTRY, Climate.CELLAR})
#: A crop whose respiration nobody tabled: the faster end of the general rule, 2 to 3.
_Q10 = 3.0


class Case(NamedTuple):
    """A food kept by a method, in a state, in a climate at a warmth."""

    food: FoodFacts
    method: Method
    state: State
    climate: Climate
    temperature_f: float


@dataclass(frozen=True, slots=True)
class Life:
    """A quality rule and the share of its published life that a place allows (at most 1)."""

    rule: Rule
    share: float = 1.0
    note: str = ""


def life(case: Case, found: Sequence[Rule], book: Rulebook) -> Life | None:
    """The quality rule among those that speak for a case, and the share of its life there; None
    without a figure."""
    rule = closest(found, case.food, Kind.QUALITY)
    if rule is None or rule.use is None:
        return None
    warm = case.temperature_f
    if case.climate is Climate.FREEZER:
        if warm <= 0:
            return Life(rule)
        return Life(rule, 0.25 ** (warm / 10), f"at {warm:g} F a quarter per 10 F above 0 F")
    if case.method is Method.DRIED and case.climate in _WARM_PLACES:
        return _dried(rule, warm, book.of(case.method))
    if case.method is Method.CELLAR and rule.temp_f_max is not None and warm > rule.temp_f_max:
        return _warm_crop(rule, case, book)
    return Life(rule)


def _warm_crop(rule: Rule, case: Case, book: Rulebook) -> Life:
    """By Q10 from the published temperature; no longer than a figure that was published for the
    same crop at a temperature that is reached (a sweet potato at 70 F, in whatever place)."""
    crop, warm = book.crops.get(case.food.name), case.temperature_f
    q10 = crop.q10 if crop else _Q10
    published = _by_warmth(rule, book.of(case.method))
    found = [_at(one, at, warm, q10) for at, one in published if at <= warm]
    return min(found, key=lambda one: one.rule.days * one.share)


def _by_warmth(rule: Rule, table: Sequence[Rule]) -> list[tuple[float, Rule]]:
    """The quality figures in use for the same food and state that name a temperature, and that."""
    return [
        (one.temp_f_max, one)
        for one in table
        if one.food == rule.food
        and one.state is rule.state
        and one.kind is Kind.QUALITY
        and one.status is Status.CURRENT
        and one.use is not None
        and one.temp_f_max is not None
    ]


def _at(rule: Rule, published_f: float, warm: float, q10: float) -> Life:
    if warm == published_f:
        return Life(rule)
    share = q10 ** ((published_f - warm) / 18)
    return Life(rule, share, f"at {warm:g} F, {published_f:g} F published, Q10 of {q10:g}")


def _dried(rule: Rule, warm: float, table: Sequence[Rule]) -> Life:
    warm_places = (one for one in _by_warmth(rule, table) if one[1].climates & _WARM_PLACES)
    known = sorted(warm_places, key=itemgetter(0))
    if not known:
        return Life(rule)
    (cool_f, cool), (hot_f, hot) = known[0], known[-1]
    if warm <= cool_f:
        return Life(cool)
    if warm == hot_f:
        return Life(hot)
    if warm > hot_f:
        share = 0.5 ** ((warm - hot_f) / 10)
        return Life(hot, share, f"at {warm:g} F half per 10 F above {hot_f:g} F")
    part = (warm - cool_f) / (hot_f - cool_f)
    share = math.exp(math.log(hot.days / cool.days) * part)
    return Life(cool, share, f"at {warm:g} F between {cool_f:g} and {hot_f:g} F in log time")
