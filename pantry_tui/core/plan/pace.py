"""The pace: how many servings of a food a week it needs, and how many it can give.

*Needs*: over all its dates d, the largest of (servings that fall due by d) / (weeks until d). Eat
slower, and something passes its date: "two jars a week, or five pass their best".
*Can give*: all its servings over the weeks until that food's next harvest. Eat faster, and it is
gone before there is more. Where it needs more than it can give, some will be lost whatever one
does; where it gives more than it needs, one may take one's time.

A date that is passed asks for its servings within the week that begins today.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from pantry_tui.core.dataclass import dataclass


@dataclass(frozen=True, slots=True)
class Portion:
    """Servings that are best eaten by a day, or that nothing hurries (None); `missed` those that
    must be discarded in the accepted week and lie on no day of it."""

    servings: float
    by: date | None
    missed: bool = False


#: No servings at all.
NOTHING = Portion(0.0, None)
#: Less than this is what a sum leaves of nothing.
CRUMB = 1e-9
#: A food is never further behind its pace, or ahead of it, than so many weeks.
MOST_OWED = 12.0
#: Where nothing hurries a food and nobody knows of a harvest, it counts as due in two years.
FAR = 104


@dataclass(frozen=True, slots=True)
class Pace:
    """Servings a week. `tight` is the date that sets the need, None where nothing hurries."""

    servings: float
    needs: float
    can: float
    tight: date | None


def weeks_until(day: date, today: date) -> float:
    """Weeks left to eat it, at least one; the day itself still counts."""
    return max(1.0, ((day - today).days + 1) / 7)


def _rate(planned: float, due: float, weeks: float) -> float:
    """Servings a week that eat what falls `due` within so many weeks, when more servings are
    `planned` for the first of them in any case."""
    rate = (due + planned) / weeks
    return rate if rate >= planned or weeks <= 1 else due / (weeks - 1)


def pace(
    portions: Iterable[Portion], harvest: date, today: date, planned: Portion = NOTHING
) -> Pace:
    """The pace of one food (or a group, or the household: the same of all its portions). What is
    `planned` stands besides, and is eaten in the first week."""
    dated = sorted((one for one in portions if one.servings > 0), key=lambda o: o.by or date.max)
    whole = sum(one.servings for one in dated) + planned.servings
    needs, tight = 0.0, None
    due = 0.0
    for one in dated:
        if one.by is None:
            break
        due += one.servings
        rate = _rate(planned.servings, due, weeks_until(one.by, today))
        if rate > needs:
            needs, tight = rate, one.by
    can = whole / weeks_until(harvest, today)
    return Pace(whole, needs, can, tight)


def gone_by(portions: Iterable[Portion], end: date, today: date) -> date:
    """The day by which all of them are gone that are gone in the week up to `end`: not after the
    last of their own dates, where each has one that is still ahead; today, where there are none."""
    dates = [one.by for one in portions if one.servings > 0]
    last = max((by or date.max for by in dates), default=today)
    return min(last, end) if last >= today else end


def next_harvest(month: int | None, today: date) -> date:
    """The first day of that month that lies ahead; without one, a year from today."""
    if month is None:
        return date(today.year + 1, today.month, min(today.day, 28))
    year = today.year if month > today.month else today.year + 1
    return date(year, month, 1)


@dataclass(frozen=True, slots=True)
class Credit:
    """Servings that a food has saved at its pace of `rate` servings a week; below 0, more of it was
    eaten than that. In `harvest` weeks there is more of it."""

    saved: float
    rate: float
    harvest: int = FAR

    def weeks(self, eaten: float = 0.0) -> float:
        """Weeks behind its pace (below 0: ahead) when so many servings of it are eaten."""
        if self.rate <= 0:
            return 0.0
        return max(-MOST_OWED, min(MOST_OWED, (self.saved - eaten) / self.rate))
