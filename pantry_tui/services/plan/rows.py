"""The week as it is handed to screens and commands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.plan.appetite import at_table
from pantry_tui.services.stock.rows import DueRow

#: What is to be done on a day of an accepted week for which nothing more is planned.
USE_IT = "What you eat all the same is used by its code (`use CODE`)"
NEXT = f"{USE_IT}; accept the week again (`week --accept`) to plan the days to come."
EAT_OUT = "you eat out."
#: What is said of a day on which nobody eats at home, and in a row of its own.
_BARE = {f"{at_table(0)}.": f"away: {at_table(0)}", EAT_OUT: EAT_OUT.rstrip(".")}
#: How much of it is taken on a day after it was opened.
REST = "rest"


@dataclass(frozen=True, slots=True)
class Take:
    """One line of the week's menu."""

    code: str
    food: str
    place: str
    count: int
    servings: float
    day: date  # of what is only for who wants more: the soonest
    thaw_by: date | None
    reasons: tuple[str, ...]
    containers: tuple[str, ...] = ()  # "7C/1"
    days: tuple[date, ...] = ()
    amount: str = ""  # of a bulk container, for one meal
    dish: str = ""
    why: tuple[str, ...] = ()  # the first of `reasons`: why this week has it, and for how long
    standing: tuple[str, ...] = ()  # the last of `reasons`: said beside any verdict
    method: str = ""
    role: str = ""
    left: str = ""  # what is in it, where it is drawn from
    begun: bool = False  # it stands open, and nobody knows how much of it is left
    open: bool = False  # it was opened before
    now: str = ""  # its verdict, where no plan proposes it by itself: "unknown"

    @property
    def rest_of_one(self) -> str:
        """What is left of the one that was begun, where that is known, else that it is open; "" of
        what is fetched whole."""
        return (self.left or ("1 open" if self.open else "")) if self.count == 1 else ""


class OnDay(NamedTuple):
    """A line of a day: what is opened on it, or the `rest` of what was opened on a day before."""

    day: date
    take: Take
    rest: bool = False


def by_day(takes: Sequence[Take]) -> list[OnDay]:
    """A line for each day on which each is eaten, by day; what was opened before comes last."""
    found = [OnDay(take.day, take) for take in takes]
    found += [OnDay(day, take, True) for take in takes for day in take.days if day > take.day]
    return sorted(found, key=lambda one: (one.day, one.rest))


class Instead(NamedTuple):
    """What could be eaten in the stead of another: a container by its name, "5K/1"."""

    food: str
    name: str
    place: str
    thaw_from: date | None = None


class Fallen(NamedTuple):
    """What of an accepted week is not sound by now, on its next day: what it is instead (`said`)
    and why. `stays` where it may be eaten all the same: nobody knows, and it cannot hurt."""

    day: date
    code: str
    food: str
    containers: tuple[str, ...]
    said: str
    why: str
    instead: Instead | None = None
    dish: str = ""
    stays: bool = False

    @property
    def told(self) -> str:
        """As a sentence, with what comes in its stead or that nothing does."""
        mine = f"{', '.join(self.containers)} {self.food}"
        left = "is in doubt since this week was accepted" if self.stays else "is left out"
        head = f"{dates.say(self.day)}: {mine} {left}: {self.said}."
        return " ".join(filter(None, (head, self.why, self._stead)))

    @property
    def _stead(self) -> str:
        if self.instead is None:
            where = f"in {self.dish}" if self.dish else "that day"
            return f"Nothing stands in for it {where}."
        food, name, place, thaw = self.instead
        thaws = f", to thaw from {dates.say(thaw)}" if thaw else ""
        return f"In its stead: {name} {food} ({place}{thaws})."


class Standby(NamedTuple):
    """What needs no thawing for an evening whose main does: a food with the lid code and place of
    its next container and what is said beside it, or a dish of one's own; "" where none stands."""

    day: date
    food: str
    code: str = ""
    place: str = ""
    standing: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WeekView:
    start: date
    end: date
    people: int
    take: tuple[Take, ...]
    beside: tuple[Take, ...]  # opened beside the days, for as long as they keep open
    more: tuple[Take, ...]  # what comes next, for who wants more
    kept: tuple[Take, ...]  # and last, what its group needs to last until more comes
    waiting: tuple[DueRow, ...]
    discard: tuple[DueRow, ...]
    accepted: bool = False
    notes: tuple[str, ...] = ()
    no_main: str = ""  # that no main stands, and what could be one
    table: tuple[tuple[date, str], ...] = ()  # days on which it is otherwise than usual
    left_out: tuple[str, ...] = ()
    stocked: bool = False  # whether anything stands that is fit to eat
    no_thaw: tuple[Standby, ...] = ()
    cautions: tuple[str, ...] = ()
    eaten: tuple[tuple[date, str], ...] = ()  # what was eaten on its days: "5K chicken stock, ..."
    first: date = date.min  # the first of its days that is not gone
    urgent: tuple[str, ...] = ()  # what must be eaten today: the first of `notes`
    fallen: tuple[Fallen, ...] = ()  # of an accepted week: what is not sound by now

    @property
    def to_come(self) -> list[Take]:
        """`take` without the days that are gone."""
        first = self.first
        ahead = [(one, [d for d in one.days or (one.day,) if d >= first]) for one in self.take]
        return [replace(one, day=days[0], days=tuple(days)) for one, days in ahead if days]

    @property
    def later(self) -> Sequence[str]:
        """`notes` without those that are `urgent`."""
        return self.notes[len(self.urgent) :]

    @property
    def bare(self) -> Mapping[date, str]:
        """Its days on which nobody eats at home, each with why: they have a row each. Those of an
        accepted week stay in it when they are gone."""
        bare = ((day, _BARE.get(_but_day(day, said), "")) for day, said in self.table)
        return {day: why for day, why in bare if why and (self.accepted or day >= self.first)}

    @property
    def seats_said(self) -> list[tuple[date, str]]:
        """`table_said` of the days on which somebody does."""
        return spans([one for one in self.table if _but_day(*one) not in _BARE])

    @property
    def nothing(self) -> str:
        """Why nothing is in it, and what to do then; "" where something is."""
        if self.to_come:
            return ""
        if self.accepted:
            return f"Nothing is left to eat of this week's plan. {self.what_next}"
        if self.stocked:
            return "Nothing in store asks to be eaten this week."
        if self.waiting:
            return "Nothing is ready to be eaten yet: see below what needs care."
        return "Nothing to propose: put something up with `pantry-tui putup`."

    @property
    def what_next(self) -> str:
        """What is to be done where an accepted week has nothing more."""
        if not self.stocked:
            return "Nothing else in store is fit to eat."
        if self.first >= self.end:
            return f"{USE_IT}; a new week begins tomorrow."
        return NEXT

    @property
    def table_said(self) -> list[tuple[date, str]]:
        """`table`, with days that follow on each other and say the same in one sentence."""
        return spans(self.table)


def spans(days: Sequence[tuple[date, str]]) -> list[tuple[date, str]]:
    """Of days that follow on each other and say the same of who sits at the table, one sentence:
    [("Sat 28 Nov 2026: nobody at home."), (Sun ...)] -> "Sat 28 Nov 2026 to Sun 29 Nov 2026: nobody
    at home.". With each its first day; what is said of eating out stays day by day."""
    found: list[tuple[date, date, str]] = []
    for day, text in days:
        said = _but_day(day, text)
        if found and found[-1][1:] == (day - timedelta(days=1), said) and said != EAT_OUT:
            found[-1] = found[-1][0], day, said
        else:
            found.append((day, day, said))
    return [(first, f"{_from_to(first, last)}: {said}") for first, last, said in found]


def _but_day(day: date, text: str) -> str:
    return text.removeprefix(f"{dates.say(day)}: ")


def _from_to(first: date, last: date) -> str:
    return dates.say(first) if first == last else f"{dates.say(first)} to {dates.say(last)}"
