"""From the stock to a week: what may be eaten, and the pace of each food by its log."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from datetime import date, timedelta
from functools import partial

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.rotation import Judged, first_date, order_key
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.model import Batch, Container, Turn
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.menu import Candidate, Needs
from pantry_tui.core.plan.pace import next_harvest
from pantry_tui.core.plan.shares import PutUp, expected
from pantry_tui.core.plan.shares import needs as core_needs
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, Group, Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.eaten import YEAR, by_week
from pantry_tui.services.plan.portions import born, whole
from pantry_tui.services.plan.servings import servings
from pantry_tui.services.stock.act import cold_place
from pantry_tui.services.stock.lines import hurried
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.view import shown

#: Vegetables and herbs are cooked from frozen.
_NO_THAW = (Group.VEGETABLE, Group.HERB)

#: What was bought keeps its printed date; it is proposed only this many days before.
_BOUGHT_AHEAD = 120

#: What is past its best gets no better by waiting: it is wanted within a quarter of a year, once;
#: after that nothing hurries it. Common practice, no source.
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
    rows, late = shown(p), hurried(p)
    eatable = [
        (order_key(p.stock.batches[c.batch], c, row), c, row)
        for c in here
        if _may(p, c, row := rows[name_of(p, c)], start, unknown or c.id in asked, late)
    ]
    eatable.sort(key=lambda one: one[0])
    found: list[Candidate] = []
    like: dict[tuple[object, ...], Callable[[str], Candidate]] = {}
    for _, container, row in eatable:
        # Equal containers are looked at once.
        key = id(row), container.turns, container.left, container.first
        if key not in like:
            like[key] = _candidate(p, container, row)
        found.append(like[key](container.id))
    return [one for one in found if one.open_days is None or one.open_days >= 0]


def _may(
    p: Pantry, container: Container, row: DueRow, start: date, unknown: bool, late: Collection[str]
) -> bool:
    if not row.usable or row.verdict is Verdict.NEEDS_CARE:
        return False
    if container.batch in late and p.assess(container).over_from is not None:
        return False  # its two hours out of the cold run: no plan has so short an end
    if row.verdict is Verdict.UNKNOWN and not unknown:
        return False
    if row.discard_after is not None and row.discard_after < start:
        return False
    if container.state in (State.OPEN, State.THAWED) or row.method is not Method.BOUGHT:
        return True
    dated = first_date(row)
    return dated != date.max and (dated - start).days <= _BOUGHT_AHEAD


def _candidate(p: Pantry, container: Container, row: DueRow) -> Callable[[str], Candidate]:
    """What makes a candidate of a container like that one, by its id."""
    batch = p.stock.batches[container.batch]
    frozen = p.stock.places[container.place].climate is Climate.FREEZER
    thaws = _thaw_days(batch, container) if frozen else 0
    begun = container.state in (State.OPEN, State.THAWED) and not frozen
    drawn = container.bulk and container.vessel is not Vessel.CLOSED
    opens = not begun and (thaws > 0 or not drawn)
    return partial(
        Candidate,
        food=batch.food.name,
        group=batch.food.group,
        servings=servings(p, container),
        last=_wanted_by(row, p.today),
        must=begun,
        safe_until=row.discard_after,
        frozen=frozen,
        thaw_days=thaws,
        open_days=_open_days(p, container, thaws) if opens else None,
        bulk=container.bulk,
        ready=_thawed_by(p, container),
    )


def _wanted_by(judged: Judged, today: date) -> date | None:
    """The nearer of its dates; None where nothing hurries it."""
    best = judged.best_by
    if best is not None and best < today:
        best += _PAST_BEST
        best = None if best < today else best
    return min((day for day in (best, judged.discard_after) if day), default=None)


def _thaw_days(batch: Batch, container: Container) -> int:
    """As the judge reckons it, so that what is planned is what is found."""
    if batch.food.group in _NO_THAW:
        return 0
    held = [one for one in (container.first, container.left) if one is not None]
    return max([thaw_days(batch, one) for one in held] or [thaw_days(batch, None)])


def _thawed_by(p: Pantry, container: Container) -> date | None:
    """The day on which what is thawing is thawed; None for what is not thawing."""
    if container.state is not State.THAWED:
        return None
    days = [span.thawed for span in p.assess(container).spans if span.thawed is not None]
    ahead = [day for day in days if day > p.today]
    return max(ahead, default=None)


def _open_days(p: Pantry, container: Container, thaws: int) -> int | None:
    """How many days it keeps from the day on which it is opened, or fully thawed, where it will
    stand then; None where nothing short is published, -1 where it may not be eaten at all."""
    bare, now = replace(container, signs=()), p.clock.now
    state = State.THAWED if thaws else State.OPEN
    turn = Turn(now, "", cold_place(p, container, state), state)
    found = p.judging.assess_as(bare, turn)
    if thaws and found.on(p.today).verdict in UNFIT:
        # A closed vacuum pack is opened before it thaws.
        before = Turn(now._replace(first=now.first - 1, last=now.last - 1), "", None, State.OPEN)
        found = p.judging.assess_as(bare, before, turn)
    if found.on(p.today).verdict in UNFIT:
        return -1
    if found.again_at is not None:
        return 0  # its two hours run there
    after = found.discard_after
    return None if after is None else (after - p.today).days - thaws


def needs(
    p: Pantry, found: Sequence[Candidate], appetite: Appetite, start: date, length: int = 7
) -> Needs:
    """What the days from `start` have to heed, as the log and the harvests have it."""
    since: dict[str, date] = {}
    for one in found:
        came = p.stock.containers[one.container].turns[0].when.day
        since[one.food] = min(since.get(one.food, p.today), came)
    logs = by_week(p)
    ahead = [0.0] * max(0, (start - p.today) // timedelta(days=7))
    eaten, harvests = {}, {}
    for food, first in since.items():
        weeks = min(_CREDIT_WEEKS, max(0, (p.today - first).days // 7))
        log = logs.get(food, [0.0] * YEAR)
        eaten[food] = [*log[len(log) - weeks :], *ahead]
        facts = p.tables.index.find(food)
        harvests[food] = next_harvest(facts.harvest_month if facts else None, start)
    put_up = _put_up(p)
    # In a first year nobody knows what comes, and to ration by a guess loses more than it saves.
    known = any((start - one.made).days > 7 * YEAR for one in put_up)
    coming = expected(put_up, found, start, harvests) if known else []
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
