"""What if: more at the table, guests, days away, a food that nobody eats, or eats more of."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from pantry_tui.core.dataclass import dataclass, field, replace
from pantry_tui.core.plan.appetite import Appetite


@dataclass(frozen=True, slots=True)
class Suppose:
    """`people` usually eat (None: as now); `table` are days on which so many sit there; of foods in
    `without` nothing is eaten, of those in `eat` so many servings a week by the whole household.
    `says` repeats it in words."""

    people: int | None = None
    table: Mapping[date, int] = field(default_factory=dict)
    without: frozenset[str] = frozenset()
    eat: Mapping[str, float] = field(default_factory=dict)
    says: tuple[str, ...] = ()

    def mouths(self, now: Appetite) -> float:
        """How many usually eat against now."""
        return (self.people or now.people) / now.people

    def appetite(self, now: Appetite) -> Appetite:
        """What is eaten at most then: ceilings are a person's, so they hold for any number."""
        people = self.people or now.people
        foods = dict(now.foods) | {name: most / people for name, most in self.eat.items()}
        foods |= dict.fromkeys(self.without, 0.0)
        return replace(now, people=people, table={**now.table, **self.table}, foods=foods)

    def rates(self, now: Mapping[str, float], mouths: float) -> dict[str, float]:
        """Servings a week of what is known to be eaten, then."""
        found = {name: rate * mouths for name, rate in now.items()} | dict(self.eat)
        return found | {name: 0.0 for name in self.without if name in found}
