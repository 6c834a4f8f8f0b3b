"""From the stock to a week: what may be eaten, at which pace, and what must be begun now."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import ceil

from pantry_tui.core.appetite import Appetite
from pantry_tui.core.menu import Candidate, Needs
from pantry_tui.core.model import Batch, Container, Stay
from pantry_tui.core.pace import Portion, next_harvest, pace
from pantry_tui.core.rotation import UNFIT, first_date
from pantry_tui.core.schedule import Ceilings, Lot, pressing
from pantry_tui.core.week import credit
from pantry_tui.core.words import ASSUMED_F, Climate, Group, Method, State, Verdict
from pantry_tui.services.eaten import YEAR, by_week
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.pick import ordered
from pantry_tui.services.servings import servings, weight

#: A full day in the refrigerator for a pack of about a pound and for each 4 lb of a big one
#: (NCHFP, Thawing and Preparing Foods for Serving; USDA on turkey, 4 to 5 lb a day, the stricter).
#: Vegetables and herbs are cooked from frozen.
_LB_A_DAY = 4.0
_NO_THAW = (Group.VEGETABLE, Group.HERB)

#: What was bought keeps its printed date; it is proposed only this many days before.
_BOUGHT_AHEAD = 120

#: Weeks of the log in which a food gathers credit.
_CREDIT_WEEKS = 12


def candidates(
    p: Pantry, start: date, *, unknown: bool = False, asked: Collection[str] = ()
) -> list[Candidate]:
    """Every container that may be eaten in the week from `start`, in eating order.

    Never what is unfit or still working; what has no published figure only when asked for, all of
    it or by the id of a container; what is kept apart for somebody only by its id.
    """
    here = [c for c in p.stock.containers.values() if c.here]
    here = [c for c in here if not c.reserved or c.id in asked]
    fit = [c for c in here if _may(p, c, start, unknown or c.id in asked)]
    opened: dict[str, int | None] = {}
    return [_candidate(p, c, opened) for c in ordered(p, fit)]


def _may(p: Pantry, container: Container, start: date, unknown: bool) -> bool:
    judged = p.judge(container)
    if judged.verdict in UNFIT or judged.verdict is Verdict.TEND:
        return False
    if judged.verdict is Verdict.UNKNOWN and not unknown:
        return False
    if judged.discard_after is not None and judged.discard_after < start:
        return False
    bought = p.stock.batches[container.batch].method is Method.BOUGHT
    if container.state in (State.OPEN, State.THAWED) or not bought:
        return True
    dated = first_date(judged)
    return dated != date.max and (dated - start).days <= _BOUGHT_AHEAD


def _candidate(p: Pantry, container: Container, opened: dict[str, int | None]) -> Candidate:
    batch = p.stock.batches[container.batch]
    judged = p.judge(container)
    ahead = [day for day in (judged.best_by, judged.discard_after) if day and day >= p.today]
    frozen = p.stock.places[container.place].climate is Climate.FREEZER
    if batch.id not in opened:
        opened[batch.id] = _open_days(p, batch, container)
    return Candidate(
        container=container.id,
        food=batch.food.name,
        group=batch.food.group,
        servings=servings(p, container),
        last=min(ahead, default=None),
        must=container.state in (State.OPEN, State.THAWED) and not frozen,
        safe_until=judged.discard_after,
        frozen=frozen,
        thaw_days=_thaw_days(batch) if frozen else 0,
        open_days=opened[batch.id],
        bulk=bool(container.amount),
    )


def _thaw_days(batch: Batch) -> int:
    if batch.food.group in _NO_THAW:
        return 0
    return max(1, ceil((weight(batch.size) or 1.0) / _LB_A_DAY))


def _open_days(p: Pantry, batch: Batch, container: Container) -> int | None:
    """Days that it keeps in a fridge once open; None where nothing short is published."""
    stay = Stay(p.today, "", Climate.FRIDGE, State.OPEN, ASSUMED_F[Climate.FRIDGE])
    as_if = replace(container, state=State.OPEN, stays=(*container.stays, stay), signs=())
    judged = p.judge_bare(batch, as_if)
    after = judged.discard_after
    return max(0, (after - p.today).days) if after is not None else None


def needs(
    p: Pantry, found: Sequence[Candidate], appetite: Appetite, start: date, length: int = 7
) -> Needs:
    """What must be begun in the days from `start`, and the credit of each food at its pace."""
    factor = appetite.factor(start, length)
    paces = {food: rate * factor for food, rate in rates(p, found, appetite, start).items()}
    logs = _logs(p, found, start)
    credits: dict[str, float] = {}
    together: dict[Group, list[_Gathered]] = defaultdict(list)
    for food, log in logs.items():
        credits[food] = credit(paces[food], log.size, log.eaten[len(log.eaten) - log.weeks :])
        together[log.group].append(log)
    groups = {}
    for group, several in together.items():
        rate = sum(paces[log.food] for log in several)
        eaten = [sum(week) for week in zip(*(log.eaten for log in several), strict=True)]
        oldest = max(log.weeks for log in several)
        size = max(log.size for log in several)
        groups[group] = credit(rate, size, eaten[len(eaten) - oldest :])
    return Needs(_begin(found, appetite, start), credits, groups)


@dataclass(frozen=True, slots=True)
class _Gathered:
    """What was eaten of a food, servings a week, since the oldest of it stands: the last `weeks`
    of `eaten`. `size` is its largest container."""

    food: str
    group: Group
    size: float
    weeks: int
    eaten: tuple[float, ...]


def _logs(p: Pantry, found: Sequence[Candidate], start: date) -> dict[str, _Gathered]:
    sizes: dict[str, float] = {}
    since: dict[str, date] = {}
    for one in found:
        size = min(one.servings, float(p.people)) if one.bulk else one.servings
        sizes[one.food] = max(sizes.get(one.food, 0.0), size)
        stays = p.stock.containers[one.container].stays
        since[one.food] = min(since.get(one.food, p.today), stays[0].since)
    logs = by_week(p)
    ahead = max(0, (start - p.today) // timedelta(days=7))
    gathered = {}
    for food, group in {one.food: one.group for one in found}.items():
        weeks = min(_CREDIT_WEEKS, max(0, (p.today - since[food]).days // 7)) + ahead
        log = [*logs.get(food, [0.0] * YEAR), *([0.0] * ahead)]
        gathered[food] = _Gathered(food, group, sizes[food], weeks, tuple(log))
    return gathered


def _begin(found: Sequence[Candidate], appetite: Appetite, start: date) -> Mapping[str, float]:
    lots: dict[tuple[str, str, int], float] = defaultdict(float)
    for one in found:
        if one.last is not None:
            week = max(0, (one.last - start).days // 7)
            lots[one.food, one.group, week] += one.servings
    ceilings = Ceilings(
        {one.food: appetite.of_food(one.food) for one in found},
        {group: appetite.of_group(group) for group in Group},
    )
    return pressing(
        [Lot(food, group, size, week) for (food, group, week), size in lots.items()], ceilings
    )


def rates(
    p: Pantry, found: Sequence[Candidate], appetite: Appetite, start: date
) -> dict[str, float]:
    """Servings a week of each food: as many as it needs or can give, within its ceiling."""
    portions: dict[str, list[Portion]] = defaultdict(list)
    for one in found:
        portions[one.food].append(Portion(one.servings, one.last))
    paces = {}
    for name, parts in portions.items():
        food = p.tables.index.find(name)
        its = pace(parts, next_harvest(food.harvest_month if food else None, start), start)
        paces[name] = min(max(its.needs, its.can), appetite.of_food(name))
    return paces
