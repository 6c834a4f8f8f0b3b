"""A supper that needs no thawing, for each evening of the week whose main has to thaw first: for
when nobody thought of it. And for how long the mains last."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from itertools import accumulate, groupby

from pantry_tui.core import dates
from pantry_tui.core.plan.appetite import MEALS, Appetite, days_from
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.safety import seals
from pantry_tui.core.words import Role
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.dishes import dishes
from pantry_tui.services.plan.portions import leavings_of
from pantry_tui.services.plan.rows import Standby, Take
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.stock.pick import name_of

#: Mains that last longer are no news.
_LONG = timedelta(weeks=8)


def standby(
    p: Pantry, takes: Sequence[Take], coming: Sequence[Candidate], start: date
) -> list[Standby]:
    """For each evening from `start` whose mains must all thaw, also where none can be thawed yet, a
    main or an own dish that needs no thawing and lies on no day before, of what is `coming` and of
    what is planned; the food is "" where none stands."""
    thaws = min((one.thaw_days for one in coming if one.at_table is Role.MAIN), default=0)
    evenings = _evenings(takes, start, start + timedelta(days=thaws))
    if not evenings:
        return []
    eats = appetite(p)
    cooked = {food for dish in dishes(p) for food, _ in dish.takes}
    free = [
        one
        for one in coming
        if not one.thaw_days and (one.at_table is Role.MAIN or one.food in cooked) and one.may_open
    ]
    planned = {
        name: take.days[-1]
        for take in takes
        for name in take.containers
        if take.days and not take.amount
    }
    found = []
    for day in evenings:
        ready = [one for one in free if _ready(one, day, planned.get(_name(p, one), date.max))]
        found.append(_for_evening(p, day, max(1, eats.sit(day)), ready))
    return found


def _evenings(takes: Sequence[Take], start: date, thawed: date) -> list[date]:
    """The days from `start` on which what is cooked must thaw, all of it, for that very day, and
    those before anything is `thawed`; never one that is gone."""
    waits: dict[date, list[bool]] = defaultdict(list)
    for day in {day for take in takes for day in take.days if start <= day < thawed}:
        waits[day] = []
    for take in takes:
        for day in take.days if take.role == Role.MAIN else ():
            if day < start:
                continue
            waits[day].append(take.thaw_by is not None and day == take.day)
    return sorted(day for day, thaws in waits.items() if all(thaws))


def _name(p: Pantry, one: Candidate) -> str:
    return name_of(p, p.stock.containers[one.container])


def _ready(one: Candidate, day: date, eaten: date) -> bool:
    """Whether it stands on that day, fit to be eaten; `eaten` is the last day it is planned on."""
    if eaten <= day or (one.ready is not None and one.ready > day):
        return False
    return one.fit_on(day)


def _for_evening(p: Pantry, day: date, heads: int, ready: Sequence[Candidate]) -> Standby:
    stands: dict[str, float] = defaultdict(float)
    first: dict[str, Candidate] = {}
    for one in ready:
        stands[one.food] += one.servings
        first.setdefault(one.food, one)
    for food, one in first.items():
        if one.at_table is Role.MAIN and stands[food] >= heads / 2:
            container = p.stock.containers[one.container]
            code = p.stock.batches[container.batch].code
            return Standby(day, food, code, p.where(container), p.judge(container).standing)
    return Standby(day, _dish(p, stands))


def _dish(p: Pantry, stands: Mapping[str, float]) -> str:
    """The first dish of one's own of which all stands."""
    for dish in dishes(p):
        if all(stands.get(food, 0.0) >= servings - CRUMB for food, servings in dish.takes):
            return dish.name
    return ""


def sentences(found: Sequence[Standby]) -> Iterator[str]:
    """What stands for which evenings, and for which nothing does."""
    said: dict[str, list[date]] = defaultdict(list)
    for one in found:
        first = "; check the seals first" if seals.FIRST in one.standing else ""
        said[f"{one.food} ({one.code}, {one.place}{first})" if one.code else one.food].append(
            one.day
        )
    none = said.pop("", [])
    if said:
        each = (f"{food} for {_days(days)}" for food, days in said.items())
        yield f"Ready without thawing, if it was not taken out in time: {'; '.join(each)}."
    if none:
        yield f"No main stands that is ready without thawing for {_days(none)}: take out in time."


def in_cold_water(
    p: Pantry, takes: Sequence[Take], coming: Sequence[Candidate], start: date
) -> Iterator[str]:
    """Where today, as `start`, has no main of a meal from the stores and none that is ready stands,
    the first pack that thaws in time all the same. FSIS, The Big Thaw (reprint): a tight bag, the
    water changed every half hour, about a pound within the hour; it is cooked at once."""
    eats, evenings = appetite(p), {day for take in takes for day in take.days}
    cooks = p.today in evenings or len(evenings) < eats.meals
    mains = [one for one in coming if one.at_table is Role.MAIN and one.may_open]
    if start > p.today or not (cooks and eats.sit(p.today)):
        return
    if any(p.today in take.days for take in takes if take.role == Role.MAIN or take.dish):
        return
    if any(not one.thaw_days and _ready(one, p.today, date.max) for one in mains):
        return
    if _eaten_today(p):
        return
    some = (one for one in mains if one.frozen and not one.bulk)
    small = next((one for one in some if one.thaw_days == 1), None)
    if small is None or small.ready is not None or not small.fit_on(p.today):
        return
    name = _name(p, small)
    place = p.where(p.stock.containers[small.container])
    yield (
        f"For today {name} {small.food} ({place}) can thaw in cold water, in a tight bag, the "
        f"water changed every half hour: a pound takes about an hour. Cook it at once "
        f'(`thaw {name} --how "cold water"`).'
    )


def _eaten_today(p: Pantry) -> bool:
    """Whether a main was used today."""
    used = leavings_of(p, past(p).values(), p.today, {"used"})
    return any(role_at_table(p, one.batch.food, one.batch.group) is Role.MAIN for one in used)


def bare(
    p: Pantry, draft: WeekDraft, takes: Sequence[Take], found: Sequence[Standby], mains: float
) -> Iterator[str]:
    """For which of its evenings to come the week has no main, where some stand and nothing else is
    said of these; none where no meal comes from the stores."""
    eats, first = appetite(p), draft.first(p.today)
    on = {day for take in takes if take.role == Role.MAIN or take.dish for day in take.days}
    evenings = {day for take in takes for day in take.days if day >= first}
    if mains <= CRUMB or (len(evenings | on) >= eats.meals > 0 and eats.meals < MEALS):
        return
    said = on | {one.day for one in found} | draft.wishes.out
    said |= {p.today} if _eaten_today(p) else set()
    days = days_from(first, (draft.end - first).days + 1)
    left = [day for day in days if eats.sit(day) > 0 and day not in said]
    if left and takes:
        yield f"No main is left for {_days(left)}."


def _days(days: Sequence[date]) -> str:
    """ "Mon 30 Nov to Thu 3 Dec", "Sat 5 Dec"; apart where a day lies between."""
    runs = groupby(enumerate(days), key=lambda one: one[1].toordinal() - one[0])
    spans = [[day for _, day in run] for _, run in runs]
    texts = [
        dates.say(span[0]) if len(span) == 1 else f"{dates.say(span[0])} to {dates.say(span[-1])}"
        for span in spans
    ]
    return ", ".join(texts)


def mains_last(eats: Appetite, mains: float, first: date) -> Iterator[str]:
    """How long the mains that stand last, by who sits there, where that is not long."""
    eaten = (eats.sit(day) * eats.meals / 7 for day in days_from(first, _LONG.days + 1))
    enough = sum(1 for laid in accumulate(eaten) if laid <= mains + CRUMB)
    last = first + timedelta(days=enough - 1)
    if mains >= eats.people and last - first < _LONG:
        meals = round(mains / eats.people)
        many = "one main" if meals == 1 else f"{meals} mains"
        yield (
            f"About {many} for {eats.people} stand: at {eats.meals} a week they last to "
            f"{dates.say(last)}."
        )
