"""What an outlook is reckoned from: what is eaten, at most and really, now or supposed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.suppose import Suppose
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.eaten import eaten_a_week, own_weeks

#: Weeks ahead whose days away and guests are looked at.
_WEEKS = 110


@dataclass(frozen=True, slots=True)
class Basis:
    """`eaten` servings a week where the log tells; `own` the weeks it tells them from; `factors`
    how much is eaten in each week to come against a usual one, () as usual; `mouths` how many
    usually eat against now; `supposed` the foods whose rate is not the log's."""

    appetite: Appetite
    eaten: Mapping[str, float]
    own: Mapping[str, Sequence[float]]
    factors: Sequence[float] = ()
    mouths: float = 1.0
    supposed: frozenset[str] = field(default_factory=frozenset)

    def factors_of(self, food: str) -> Sequence[float]:
        """The same for one food: at a pace that is no log's more mouths eat it up sooner. Fewer eat
        as fast as its dates ask for, as far as they can."""
        if self.mouths <= 1.0 or food in self.eaten:
            return self.factors
        return [self.mouths * one for one in self.factors or [1.0] * _WEEKS]


def as_it_is(p: Pantry) -> Basis:
    """As the household eats now."""
    eats = appetite(p)
    return Basis(eats, eaten_a_week(p), own_weeks(p), _factors(p, eats))


def supposing(p: Pantry, suppose: Suppose) -> Basis:
    """As it would eat then."""
    now = appetite(p)
    eats, mouths = suppose.appetite(now), suppose.mouths(now)
    rates = suppose.rates(eaten_a_week(p), mouths)
    told = frozenset(suppose.eat) | suppose.without
    return Basis(eats, rates, own_weeks(p), _factors(p, eats), mouths, told)


def _factors(p: Pantry, eats: Appetite) -> Sequence[float]:
    return eats.coming(p.today, _WEEKS) if any(day >= p.today for day in eats.table) else ()
