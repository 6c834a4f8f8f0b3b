"""What the accepted week eats, so that the outlook does not tell anybody to give it away."""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.carried import left_of_week
from pantry_tui.services.plan.weekview import days_ahead, left_of


def planned(p: Pantry) -> Mapping[str, float]:
    """By container, the servings that those who sit there eat of it on the days to come of the
    accepted week; what is more than they can finish is not among them."""

    def find() -> dict[str, float]:
        found: dict[str, float] = {}
        for entry in weekdraft.load(p).plan or ():
            days = [day for day in days_ahead(p, entry) if day >= p.today]
            here = left_of(p, entry) if days else []
            for one in here:
                heads = sum(map(appetite(p).sit, days)) / len(here)
                eaten = entry.servings * len(days) / len(entry.days) if entry.amount else heads
                before = found.get(one.id, 0.0)
                found[one.id] = before + min(eaten, left_of_week(p, one) - before)
        return found

    return p.once("planned servings", find)
