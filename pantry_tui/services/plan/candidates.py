"""From the stock to a week: what may be eaten, and the pace of each food by its log."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import date, timedelta
from math import ceil

from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rotation import first_date
from pantry_tui.core.model import Batch, Container, Stay
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate, Needs
from pantry_tui.core.plan.pace import next_harvest
from pantry_tui.core.plan.shares import PutUp, expected
from pantry_tui.core.plan.shares import needs as core_needs
from pantry_tui.core.words import ASSUMED_F, Climate, Group, Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.eaten import YEAR, by_week
from pantry_tui.services.plan.portions import born, whole
from pantry_tui.services.plan.servings import servings, weight
from pantry_tui.services.stock.fit import fit
from pantry_tui.services.stock.pick import ordered

#: A full day in the refrigerator for a pack of about a pound and for each 4 lb of a big one
#: (NCHFP, Thawing and Preparing Foods for Serving; USDA on turkey, 4 to 5 lb a day, the stricter).
#: Vegetables and herbs are cooked from frozen.
_LB_A_DAY = 4.0
_NO_THAW = (Group.VEGETABLE, Group.HERB)

#: What was bought keeps its printed date; it is proposed only this many days before.
_BOUGHT_AHEAD = 120

#: What is past its best gets no better by waiting: it is wanted within a quarter of a year. Common
#: practice, no source.
_PAST_BEST = timedelta(weeks=13)

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
    eatable = [c for c in here if _may(p, c, start, unknown or c.id in asked)]
    opened: dict[tuple[str, bool], int | None] = {}
    return [_candidate(p, c, opened) for c in ordered(p, eatable)]


def _may(p: Pantry, container: Container, start: date, unknown: bool) -> bool:
    judged = p.judge(container)
    if not fit(p, container) or judged.verdict is Verdict.TEND:
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


def _candidate(
    p: Pantry, container: Container, opened: dict[tuple[str, bool], int | None]
) -> Candidate:  # fmt: skip
    batch = p.stock.batches[container.batch]
    judged = p.judge(container)
    frozen = p.stock.places[container.place].climate is Climate.FREEZER
    thaw_days = _thaw_days(batch) if frozen else 0
    key = batch.id, frozen
    if key not in opened:
        state = State.THAWED if thaw_days else State.OPEN
        opened[key] = _open_days(p, batch, container, state)
    return Candidate(
        container=container.id,
        food=batch.food.name,
        group=batch.food.group,
        servings=servings(p, container),
        last=_wanted_by(judged, p.today),
        must=container.state in (State.OPEN, State.THAWED) and not frozen,
        safe_until=judged.discard_after,
        frozen=frozen,
        thaw_days=thaw_days,
        open_days=opened[key],
        bulk=bool(container.amount),
    )


def _wanted_by(judged: Judgement, today: date) -> date | None:
    """The nearer of its dates; None where nothing hurries it."""
    best = judged.best_by
    if best is not None and best < today:
        best = today + _PAST_BEST
    return min((day for day in (best, judged.discard_after) if day), default=None)


def _thaw_days(batch: Batch) -> int:
    if batch.food.group in _NO_THAW:
        return 0
    return max(1, ceil((weight(batch.size) or 1.0) / _LB_A_DAY))


def _open_days(p: Pantry, batch: Batch, container: Container, state: State) -> int | None:
    """Days that it keeps in a fridge once open or thawed; None where nothing short is published."""
    stay = Stay(p.today, "", Climate.FRIDGE, state, ASSUMED_F[Climate.FRIDGE])
    as_if = replace(container, state=state, stays=(*container.stays, stay), signs=())
    judged = p.judge_bare(batch, as_if)
    after = judged.discard_after
    return max(0, (after - p.today).days) if after is not None else None


def needs(
    p: Pantry, found: Sequence[Candidate], appetite: Appetite, start: date, length: int = 7
) -> Needs:
    """What the days from `start` have to heed, as the log and the harvests have it."""
    since: dict[str, date] = {}
    for one in found:
        stays = p.stock.containers[one.container].stays
        since[one.food] = min(since.get(one.food, p.today), stays[0].since)
    logs = by_week(p)
    ahead = [0.0] * max(0, (start - p.today) // timedelta(days=7))
    eaten, harvests = {}, {}
    for food, first in since.items():
        weeks = min(_CREDIT_WEEKS, max(0, (p.today - first).days // 7))
        log = logs.get(food, [0.0] * YEAR)
        eaten[food] = [*log[len(log) - weeks :], *ahead]
        facts = p.tables.index.find(food)
        harvests[food] = next_harvest(facts.harvest_month if facts else None, start)
    coming = expected(_put_up(p), found, start, harvests)
    return core_needs(found, appetite, start, harvests, eaten, coming, length)


def _put_up(p: Pantry) -> list[PutUp]:
    """All that was ever put up, by batch; what was bought is no harvest."""

    def find() -> list[PutUp]:
        servings: dict[str, float] = defaultdict(float)
        made: dict[str, date] = {}
        for container in p.stock.containers.values():
            batch = p.stock.batches[container.batch]
            if batch.method is not Method.BOUGHT:
                servings[batch.id] += whole(p, container)
                made.setdefault(batch.id, born(batch, container))
        foods = {id_: p.stock.batches[id_].food for id_ in servings}
        return [
            PutUp(foods[id_].name, foods[id_].group, amount, made[id_])
            for id_, amount in servings.items()
        ]

    return p.once("put up", find)
