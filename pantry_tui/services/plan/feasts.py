"""What must be taken out for guests of the next weeks: a whole bird thaws for days."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.thawing import MOST_DAYS
from pantry_tui.core.plan.appetite import at_table, days_from
from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.guests import for_guests
from pantry_tui.core.plan.menu import Candidate, Menu
from pantry_tui.core.words import Role
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.stock.pick import name_of

_NOTHING_LAID = Menu((), ())
#: Guests are looked at for so many days after the week; those to take out for are nearer.
_KNOWN, _SOON = 7 + MOST_DAYS, timedelta(days=MOST_DAYS - 1)


def for_feasts(p: Pantry, draft: WeekDraft, planned: Collection[str]) -> Iterator[str]:
    """The bird for each day of guests soon after this week: when to move it to the fridge, where it
    must begin to thaw within it; or that nobody is there to do it. But for what is `planned`."""
    eats = appetite(p)
    first, after = draft.first(p.today), draft.end + timedelta(days=1)
    days = [day for day in days_from(after, _KNOWN) if eats.sit(day) > eats.people]
    stand = list(_stand(p, draft, planned)) if days else []
    for day in days:
        table = Table(eats, first, frozenset(), (day - first).days + 1)
        found = for_guests(day, dict(enumerate(stand)), table, _NOTHING_LAID)
        if found is None:
            yield from _nobody_takes_out(p, day, stand, table)
            continue
        one = found[1]
        del stand[found[0]]
        out = day - timedelta(days=one.thaw_days)
        if one.thaw_days and first <= out <= draft.end and day <= after + _SOON:
            yield (
                f"{_could_be_the_main(p, one, day)}; move it from {_where(p, one)} to the fridge "
                f"on {dates.say(out)} to thaw."
            )


def for_the_day_after(
    p: Pantry, draft: WeekDraft, coming: Iterable[Candidate], planned: Collection[str]
) -> Iterator[str]:
    """What to take out for the day after this week, where of what is `coming` no main is ready
    without thawing: the next week begins too late for it."""
    eats, day = appetite(p), draft.end + timedelta(days=1)

    def mains_of(some: Iterable[Candidate]) -> list[Candidate]:
        mains = (one for one in some if one.at_table is Role.MAIN and one.fit_on(day))
        return [one for one in mains if one.bulk or one.container not in planned]

    # Some of each food is coming; on the last days of a week nothing of what has to thaw.
    mains = mains_of(coming) or mains_of(_stand(p, draft, planned))
    if not eats.sit(day) or any(not one.thaw_days for one in mains):
        return
    for one in mains:
        out = day - timedelta(days=one.thaw_days)
        if out >= draft.first(p.today) and eats.sit(out) > 0:
            yield (
                f"For {dates.say(day)}, the day after this week: move {_name(p, one)} from "
                f"{_where(p, one)} to the fridge on {dates.say(out)} to thaw, as no main stands "
                "that is ready without."
            )
            return


def _stand(p: Pantry, draft: WeekDraft, planned: Collection[str]) -> Iterator[Candidate]:
    eats, left_out = appetite(p), draft.wishes.left_out
    for one in unasked(p, draft.first(p.today)):
        wanted = one.food not in left_out and eats.eats(one.food, one.group)
        if wanted and one.container not in planned:
            yield one


def _nobody_takes_out(
    p: Pantry, day: date, stand: Sequence[Candidate], table: Table
) -> Iterator[str]:
    """What would be the main of that day, were anybody there to move it to the fridge."""
    thawed = {n: one._replace(thaw_days=0) for n, one in enumerate(stand)}
    found = for_guests(day, thawed, table, _NOTHING_LAID)
    if found is None or not stand[found[0]].thaw_days:
        return
    one = stand[found[0]]
    out = day - timedelta(days=one.thaw_days)
    yield (
        f"{_could_be_the_main(p, one, day)}, but nobody is at home to move it from "
        f"{_where(p, one)} to the fridge on {dates.say(out)}: ask somebody to, or have a main that "
        "thaws sooner."
    )


def _could_be_the_main(p: Pantry, one: Candidate, day: date) -> str:
    seats = at_table(appetite(p).sit(day))
    return f"For {dates.say(day)}, {seats}: {_name(p, one)} could be the main"


def _name(p: Pantry, one: Candidate) -> str:
    return f"{name_of(p, p.stock.containers[one.container])} {one.food}"


def _where(p: Pantry, one: Candidate) -> str:
    return p.where(p.stock.containers[one.container])
