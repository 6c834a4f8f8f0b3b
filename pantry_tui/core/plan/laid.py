"""What is laid on each day of a week, and what still has to find room on one."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from datetime import date
from math import ceil, floor

from pantry_tui.core.dataclass import dataclass, field, replace
from pantry_tui.core.plan.menu import Candidate, Pick
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, BITE
from pantry_tui.core.words import Role


@dataclass(slots=True)
class Laid:
    """What is laid on each day, in servings: of all, and by group, food and role."""

    all: dict[date, float] = field(default_factory=lambda: defaultdict(float))
    of: dict[tuple[date, str], float] = field(default_factory=lambda: defaultdict(float))

    def put(self, pick: Pick) -> None:
        food = pick.candidate
        for day, share in zip(pick.days, pick.parts, strict=True):
            self.all[day] += share
            for what in (food.group, food.food, f"as {food.at_table}"):
                self.of[day, what] += share

    def beside(self, pick: Pick, heads: Callable[[date], int]) -> tuple[float, float]:
        """What would be more of its role than those at table eat, and how full of it its days are
        already: (servings over, days' fill), in halves."""
        role = pick.candidate.at_table
        over = there = 0.0
        for day, share in zip(pick.days, pick.parts, strict=True):
            enough = A_HEAD.get(role, 1.0) * max(1, heads(day))
            laid = self.of[day, f"as {role}"]
            over += max(0.0, laid + share - enough) / enough
            there += laid / enough / len(pick.days)
        return ceil(2 * over - CRUMB) / 2, floor(2 * there + CRUMB) / 2


def over_two(
    pick: Pick, laid: Laid, days: Sequence[date], sit: Callable[[date], int], until: date
) -> Pick:
    """A main for one evening, with what is too much beside the mains that lie there for the next of
    `days`, where it keeps `until` then and that day has room for it: two jars of four for six leave
    two for tomorrow. So little that it is no main stays."""
    food, day = pick.candidate, pick.day
    if food.at_table is not Role.MAIN or food.bulk or pick.dish or len(pick.days) > 1 or pick.later:
        return pick
    over = min(food.servings, laid.of[day, f"as {Role.MAIN}"] + pick.parts[0] - sit(day))
    then = next((other for other in days if day < other <= until), None)
    if then is None or over < max(CRUMB, BITE * sit(then) - CRUMB):
        return pick
    if over > food.servings - CRUMB or laid.of[then, f"as {Role.MAIN}"] + over > sit(then) + CRUMB:
        return pick
    return replace(pick, days=(day, then), parts=(food.servings - over, over))


@dataclass(slots=True)
class Hurried:
    """What must be discarded by the end of the week and lies on no day yet: servings by role and
    last safe day."""

    end: date
    days: Sequence[date]
    sit: Callable[[date], int]
    left: dict[str, dict[date, float]] = field(default_factory=dict)

    def add(self, food: Candidate, servings: float) -> None:
        last = food.safe_until
        if last is not None and last <= self.end:
            days = self.left.setdefault(food.at_table, defaultdict(float))
            days[last] += servings

    def crowded(self, food: Candidate, day: date, laid: Laid) -> float:
        """Servings of it for which there is no room in time once `food` lies on that day."""
        role = food.at_table
        worst = need = 0.0
        for last, servings in sorted(self.left.get(role, {}).items()):
            need += servings
            if day <= last and need > CRUMB:
                free = {
                    d: max(0.0, A_HEAD.get(role, 1.0) * self.sit(d) - laid.of[d, f"as {role}"])
                    for d in self.days
                    if d <= last
                }
                taken = min(food.servings, free.get(day, 0.0))
                worst = max(worst, min(taken, need - sum(free.values()) + taken))
        return worst


def evenings_of(picks: Sequence[Pick], meals: int) -> tuple[frozenset[date], dict[str, date]]:
    """Where `picks` lie on more evenings than `meals` come from the stores, those that should do:
    of what takes several days on end all of its days first, and the first of those by container.
    None where they are no more."""
    at_table = [pick for pick in picks if pick.dish or pick.candidate.at_table in A_HEAD]
    evenings: set[date] = set()
    lies: dict[str, date] = {}
    if len({day for pick in at_table for day in pick.days}) > meals:
        for pick in sorted(at_table, key=lambda one: -len(one.days)):
            if len(evenings) < meals:
                evenings.update(pick.days)
                if len(pick.days) > 1:
                    lies[pick.candidate.container] = pick.day
    return frozenset(evenings), lies
