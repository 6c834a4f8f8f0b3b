"""A week is accepted as it is shown: without what was eaten of its first day before."""

from __future__ import annotations

from datetime import date

from pantry_tui.core.dataclass import replace
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import week, weekdraft
from pantry_tui.services.plan.eaten_today import still_asked


@booked
def accept(p: Pantry, start: date | None = None) -> Done:
    """As `week.accept`."""
    with p.together():
        before = weekdraft.load(p)
        done = week.accept(p, start)
        after = weekdraft.load(p)
        if before.plan is None or before.start != after.start:
            asked = still_asked(p, replace(after, plan=None), after.plan or ())
            if asked.eaten:
                weekdraft.save(p, replace(after, plan=asked.entries), "accepted")
        return done
