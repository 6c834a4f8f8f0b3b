"""What the accepted week eats, so that the outlook does not tell anybody to give it away."""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.plan.pace import NOTHING, Portion
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.carried import left_of_week
from pantry_tui.services.plan.weekdraft import days_ahead, left_of, load
from pantry_tui.services.stock.stands import of


def planned(p: Pantry) -> Mapping[str, Portion]:
    """By container, the servings that those who sit there eat of it on the days to come of the
    accepted week, and the last of these days; of what is open by then also what it is finished with
    in the week after. What is more than they can finish is not among them, nor what they would eat
    on a day on which it is fit no more."""

    def find() -> dict[str, Portion]:
        found: dict[str, Portion] = {}
        for entry in load(p).plan or ():
            ahead = [day for day in days_ahead(p, entry) if day >= p.today]
            here = left_of(p, entry) if ahead else []
            for one in here:
                days = [day for day in ahead if of(p, one).fit_on(day)]
                heads = sum(map(appetite(p).sit, days)) / len(here)
                eaten = entry.servings * len(days) / len(entry.days) if entry.amount else heads
                if entry.later and len(days) == len(ahead):
                    eaten += entry.later / len(here)
                    days += [entry.until] if entry.until is not None else []
                before = found.get(one.id, NOTHING)
                much = before.servings + min(eaten, left_of_week(p, one) - before.servings)
                found[one.id] = Portion(much, max(filter(None, (before.by, *days)), default=None))
        return found

    return p.once("planned servings", find)
