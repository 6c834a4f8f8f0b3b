"""What the week and the outlook rest on, reckoned plainly from the whole log: every batch folded,
every container judged by itself, every event read. Slow, and what the tables must say too.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.rotation import order_key
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.batch_payloads import FATE_OF
from pantry_tui.core.log.fold import EMPTY, ONE
from pantry_tui.core.model import Container, Turn
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, Group, Method, State, Verdict
from pantry_tui.services.books.year import unit_of
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import left_in, whole
from pantry_tui.services.plan.servings import servings
from pantry_tui.services.stock.came_of import born
from pantry_tui.services.stock.moving import cold_place


class Left(NamedTuple):
    container: str
    fate: str
    servings: float
    start: date
    end: date
    why: str
    share: float
    number: Fraction


def leavings(p: Pantry) -> list[Left]:
    """Everything that ever left, event by event."""
    left: dict[str, Fraction] = {}
    unseen: dict[str, Left] = {}
    counted: dict[str, date] = {}
    found: list[Left] = []

    def take(id_: str, amount: Amount | None, fate: str, start: date, end: date, why: str) -> Left:
        container = p.stock.containers[id_]
        first = container.first or ONE
        there, rest = left.get(id_, first.number), Fraction(0)
        if amount is not None and amount.unit == first.unit and there - amount.number >= EMPTY:
            rest = there - amount.number
        left[id_] = rest
        share = float((there - rest) / first.number)
        much = whole(p, container) * share
        return Left(id_, fate, much, start, end, why, share, there - rest)

    for event in p.standing:
        payload, day = event.payload, event.day
        if isinstance(payload, said.Use | said.Discard | said.Give | said.Missing):
            why = payload.why if isinstance(payload, said.Discard) else ""
            fate = FATE_OF[type(payload)].value
            found += [take(c, payload.amount, fate, day, day, why) for c in payload.containers]
        elif isinstance(payload, said.PutUp):
            for part in payload.parts:
                if part.container in p.stock.containers:
                    fate = said.Fate.REPACKED.value
                    found.append(take(part.container, part.amount, fate, day, day, ""))
        elif isinstance(payload, said.Count):
            for one in payload.gone:
                container = p.stock.containers[one.container]
                made = born(p.stock.batches[container.batch], container)
                since = max(counted.get(payload.place, made), made, day - timedelta(days=365))
                row = take(one.container, one.amount, one.fate.value, min(since, day), day, "")
                if one.amount is None:
                    unseen[one.container] = row
                else:
                    found.append(row)
            for back in payload.back:
                was = unseen.pop(back.container, None)
                if was is not None:
                    left[back.container] = was.number
            if not payload.part:  # not all of the place was looked at
                counted[payload.place] = day
    return [*found, *unseen.values()]


class Year(NamedTuple):
    food: str
    start: date
    end: date | None
    opening: float
    made: float
    given: float
    lost: float
    unrecorded: float
    closing: float
    eaten: float
    reserved: int
    repacked: float
    unit: str


def years(p: Pantry) -> list[Year]:
    """Every year of every food, container by container."""
    gone: dict[str, list[Left]] = defaultdict(list)
    for one in leavings(p):
        gone[one.container].append(one)
    by_food: dict[str, list[Container]] = defaultdict(list)
    for container in p.stock.containers.values():
        by_food[p.stock.batches[container.batch].food.name].append(container)
    return [year for food in sorted(by_food) for year in _years(p, food, by_food[food], gone)]


def _years(
    p: Pantry, food: str, containers: Sequence[Container], gone: dict[str, list[Left]]
) -> Iterator[Year]:
    days = {c.id: born(p.stock.batches[c.batch], c) for c in containers}
    starts = sorted({min(d for d in days.values() if d.year == y.year) for y in days.values()})
    unit = unit_of(containers)

    def size(c: Container) -> float:
        return float(c.first.number) if unit and c.first else 1.0

    def stood(c: Container, on: date) -> float:
        if days[c.id] >= on:
            return 0.0
        return size(c) * (1.0 - min(1.0, sum(one.share for one in gone[c.id] if one.end < on)))

    for start, end in zip(starts, [*starts[1:], None], strict=True):
        last = end or date.max

        def left(*fates: str, start: date = start, last: date = last) -> float:
            return sum(
                size(c) * one.share
                for c in containers
                for one in gone[c.id]
                if start <= one.end < last and one.fate in fates
            )

        opening, closing = (sum(stood(c, on) for c in containers) for on in (start, last))
        made = sum(size(c) for c in containers if start <= days[c.id] < last)
        given, lost = left("given"), left("discarded", "lost")
        unrecorded, repacked = left("unrecorded use", "missing"), left("repacked")
        eaten = opening + made - given - lost - unrecorded - repacked - closing
        kept = 0 if end else sum(c.here and bool(c.reserved) for c in containers)
        yield Year(
            food, start, end, opening, made, given, lost, unrecorded, closing, eaten, kept,
            repacked, unit,
        )  # fmt: skip


class Offered(NamedTuple):
    container: str
    food: str
    group: Group
    servings: float
    must: bool
    safe_until: date | None
    frozen: bool
    thaw_days: int
    open_days: int | None
    bulk: bool


def candidates(
    p: Pantry, start: date, *, unknown: bool = False, asked: frozenset[str] = frozenset()
) -> list[Offered]:
    """Every container that may be eaten in the week from `start`, each judged by itself."""
    here = [c for c in p.stock.containers.values() if c.here and (not c.reserved or c.id in asked)]
    eatable = [c for c in here if _may(p, c, start, unknown or c.id in asked)]
    eatable.sort(key=lambda c: order_key(p.stock.batches[c.batch], c, p.judge(c)))
    found = [_offered(p, c) for c in eatable]
    return [one for one in found if one.open_days is None or one.open_days >= 0]


def _dry_and_open(p: Pantry, container: Container) -> bool:
    """What is dry, was opened and cannot hurt goes on being eaten; nobody says for how long."""
    dried = p.stock.batches[container.batch].method is Method.DRIED
    return dried and container.state is State.OPEN and p.judge(container).usable


def _may(p: Pantry, container: Container, start: date, unknown: bool) -> bool:
    judged = p.judge(container)
    if not judged.usable or judged.verdict is Verdict.NEEDS_CARE:
        return False
    found = p.assess(container)
    if found.over_from is not None:
        return False
    begun = (care.start for care in found.care if care.start <= max(start, p.today))
    if any(found.on(day).verdict is Verdict.NEEDS_CARE for day in begun):
        return False  # nobody looked at its seals by then, and that nobody asks later is no look
    if judged.verdict is Verdict.UNKNOWN and not unknown and not _dry_and_open(p, container):
        return False
    return judged.discard_after is None or judged.discard_after >= start


def _offered(p: Pantry, container: Container) -> Offered:
    batch = p.stock.batches[container.batch]
    frozen = p.stock.places[container.place].climate is Climate.FREEZER
    held = [one for one in (container.first, container.left) if one is not None]
    cooked = batch.food.group in (Group.VEGETABLE, Group.HERB)
    thaws = max(thaw_days(batch.size, one) for one in held) if frozen and not cooked else 0
    begun = container.state in (State.OPEN, State.THAWED) and not frozen
    drawn = container.bulk and container.vessel is not Vessel.CLOSED
    opens = not begun and (thaws > 0 or not drawn)
    return Offered(
        container.id,
        batch.food.name,
        batch.food.group,
        servings(p, container),
        begun,
        p.judge(container).discard_after,
        frozen,
        thaws,
        _open_days(p, container, thaws) if opens else None,
        container.bulk,
    )


def _open_days(p: Pantry, container: Container, thaws: int) -> int | None:
    bare, now = replace(container, signs=()), p.clock.now
    state = State.THAWED if thaws else State.OPEN
    turn = Turn(now, "", cold_place(p, container, state), state)
    found = p.judging.assess_as(bare, turn)
    if thaws and found.on(p.today).verdict in UNFIT:
        before = Turn(now._replace(first=now.first - 1, last=now.last - 1), "", None, State.OPEN)
        found = p.judging.assess_as(bare, before, turn)
    if found.on(p.today).verdict in UNFIT:
        return -1
    if found.again_at is not None:
        return 0
    after = found.discard_after
    return None if after is None else (after - p.today).days - thaws


def standing(p: Pantry) -> dict[str, tuple[float, int]]:
    """Of each food the servings that stand, fit and for the household itself, and how many
    containers are kept apart."""
    found: dict[str, tuple[float, int]] = defaultdict(lambda: (0.0, 0))
    for container in p.stock.containers.values():
        judged = p.judge(container) if container.here else None
        if judged is None or not judged.usable:
            continue
        if judged.verdict is Verdict.UNKNOWN and not _dry_and_open(p, container):
            continue
        food = p.stock.batches[container.batch].food.name
        much, apart = found[food]
        kept = bool(container.reserved)
        found[food] = much + (0.0 if kept else left_in(p, container)), apart + kept
    return found
