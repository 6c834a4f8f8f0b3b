"""For whom something big is taken out to thaw: the guests of the days on which it will keep, or
nobody, and then that it is a lot."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import Appetite, at_table, days_from
from pantry_tui.core.plan.days import BIG
from pantry_tui.core.words import Role
from pantry_tui.services.household import appetite
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.servings import servings

#: So far ahead guests are looked at for whom it was taken out too early.
_AHEAD = timedelta(weeks=5)


def for_whom(p: Pantry, container: Container, thaws: int) -> tuple[str, ...]:
    """Of a main of more servings than the usual table eats of one, `thaws` days from today on; of
    another nothing."""
    batch, last = p.stock.batches[container.batch], p.judge(container).discard_after
    role = role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=False)
    much, eats = servings(p, container), appetite(p, {})  # who sits there is said, not learned
    if role is not Role.MAIN or much <= BIG * eats.people or last is None:
        return ()
    ready = p.today + timedelta(days=thaws)
    days = list(days_from(ready, max(1, (last - ready).days + 1)))
    most = max(days, key=eats.sit)
    if eats.sit(most) > eats.people and much <= BIG * eats.sit(most):
        return (f"It is for {dates.say(most)}: {at_table(eats.sit(most))}.",)
    return (*_too_early(eats, much, last, thaws), _a_lot(eats, much, days))


def _too_early(eats: Appetite, much: float, last: date, thaws: int) -> tuple[str, ...]:
    """That guests come after its last safe day."""
    for day, heads in sorted(eats.table.items()):
        if last < day <= last + _AHEAD and heads > eats.people and much <= BIG * heads:
            return (
                f"For {dates.say(day)}, {at_table(heads)}, that is too early: if it is still "
                f"frozen, `undo` and take it out on {dates.say(day - timedelta(days=thaws))}.",
            )
    return ()


def _a_lot(eats: Appetite, much: float, days: Sequence[date]) -> str:
    eaten = sum(map(eats.sit, days))
    return (
        f"It is about {much:.0f} servings, and about {eaten} of them are eaten by its last safe "
        f"day, {dates.say(days[-1])}: share it, or cook all of it and freeze the rest as a meal."
    )
