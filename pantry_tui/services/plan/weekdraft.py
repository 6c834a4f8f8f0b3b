"""The week that is being planned, as the log has it: wishes and the accepted plan.

Nothing in it is booked. It holds for seven days from its first; then a new week begins.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from pantry_tui.core.dataclass import dataclass, field, replace
from pantry_tui.core.log.payloads import DishDay, Entry, Pin, Planned
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import Appetite, days_from
from pantry_tui.core.plan.menu import Wishes
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.stands import of


@dataclass(frozen=True, slots=True)
class WeekDraft:
    """`plan` is None until the week is accepted; `heads` as in `Planned`."""

    start: date
    wishes: Wishes = field(default_factory=Wishes)
    plan: tuple[Entry, ...] | None = None
    heads: tuple[int, ...] = ()

    @property
    def end(self) -> date:
        return self.start + timedelta(days=6)

    def first(self, today: date) -> date:
        """The first of its days that is not gone."""
        return max(self.start, today)

    def with_wishes(self, **changed: Any) -> WeekDraft:
        return replace(self, wishes=replace(self.wishes, **changed))


def load(p: Pantry) -> WeekDraft:
    """The week that runs today or was accepted for days to come, else a fresh one from today."""
    was = p.home.week
    if was is None or was.start is None:
        return WeekDraft(p.today)
    first = was.start
    ahead = p.today < first and was.entries is not None
    if not (ahead or first <= p.today <= first + timedelta(days=6)):
        return WeekDraft(p.today)
    wishes = Wishes(
        tuple((pin.container, pin.day) for pin in was.pins),
        frozenset(was.left_out),
        frozenset(was.out),
        {dish.name: dish.day for dish in was.dishes},
    )
    return WeekDraft(first, wishes, was.entries, was.heads)


def save(p: Pantry, draft: WeekDraft, said: str = "") -> None:
    """It stands in place of the one before; `said` is what was changed."""
    wishes = draft.wishes
    p.book(
        Planned(
            draft.start,
            tuple(Pin(id_, day) for id_, day in wishes.pins),
            tuple(sorted(wishes.left_out)),
            tuple(sorted(wishes.out)),
            tuple(DishDay(name, day) for name, day in wishes.dishes.items()),
            draft.plan,
            said,
            draft.heads if draft.plan is not None else (),
        )
    )


def forget(p: Pantry, said: str = "") -> None:
    """Begin anew."""
    p.book(Planned(said=said))


def days_ahead(p: Pantry, entry: Entry) -> tuple[date, ...]:
    """Its days that are not eaten yet; a booking that was taken back does not count."""
    if not entry.booked:
        return entry.days
    eaten = {day for day, group in entry.booked if p.stands(group)}
    return tuple(day for day in entry.days if day not in eaten)


def days_at_home(p: Pantry, eats: Appetite, entry: Entry) -> tuple[date, ...]:
    """Of these the ones on which somebody eats at home, by what is said of them now."""
    return tuple(day for day in days_ahead(p, entry) if eats.sit(day) > 0)


def planned_for_others(p: Pantry, draft: WeekDraft, eats: Appetite) -> list[tuple[date, int]]:
    """The days to come of an accepted week on which others are to sit at the table than it is
    planned for, each with how many these are."""
    if draft.plan is None:
        return []
    days = zip(days_from(draft.start), draft.heads, strict=False)
    return [(day, heads) for day, heads in days if day >= p.today and eats.sit(day) != heads]


def left_of(p: Pantry, entry: Entry, days: Sequence[date] | None = None) -> list[Container]:
    """Its containers that are still here and fit to eat on the first of `days`: without, on its
    next day."""
    found = (p.stock.containers.get(id_) for id_ in entry.containers)
    day = next(iter(days_ahead(p, entry) if days is None else days), p.today)
    return [c for c in found if c is not None and c.here and fit_on(p, c, day)]


def fit_on(p: Pantry, container: Container, day: date) -> bool:
    """Whether it is fit to eat on a day; of one that is gone, today."""
    return of(p, container).fit_on(max(day, p.today))
