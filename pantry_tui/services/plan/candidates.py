"""From the stock to a week: what may be eaten."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date, timedelta
from functools import cache, partial
from itertools import chain, groupby
from operator import itemgetter

from pantry_tui.core.amounts import Amount, exact_amount
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.doubt import taken_whole
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.rotation import first_date, rank
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Container, Turn
from pantry_tui.core.plan.menu import Candidate
from pantry_tui.core.plan.past_best import PAST_BEST, RAW, wanted_by
from pantry_tui.core.plan.room import UNPUBLISHED
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, Group, Method, State
from pantry_tui.services.books.past import Past, past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.at_table import a_head, role_at_table
from pantry_tui.services.plan.carried import left_of_week
from pantry_tui.services.plan.one_piece import cooked_days, pieces
from pantry_tui.services.plan.portions import holds
from pantry_tui.services.plan.servings import servings
from pantry_tui.services.stock.moving import cold_place
from pantry_tui.services.stock.stands import Stands, containers_in, stands
from pantry_tui.services.stock.warmth import is_frozen

#: Vegetables and herbs are cooked from frozen.
_NO_THAW = (Group.VEGETABLE, Group.HERB)

#: What was bought keeps its printed date; sooner than so many days before it stands by.
_BOUGHT_AHEAD = 120

#: Of what is put up and past its best the first of each food is wanted each quarter, and never
#: before what really presses: it has so many weeks at least. Common practice, no source.
_CALMLY = timedelta(weeks=5)


def candidates(
    p: Pantry, start: date, *, unknown: bool = False, asked: Collection[str] = ()
) -> list[Candidate]:
    """Every container that may be eaten in the week from `start`, in eating order.

    Never what is unfit or still working, or may not be eaten once it is open; what has no published
    figure only when asked for, all of it or by the id of a container; what is kept apart for
    somebody only by its id.
    """
    p.stock.load_all()
    return [one for one in unasked(p, start, unknown=unknown, asked=asked) if one.may_open]


def unasked(
    p: Pantry, start: date, *, unknown: bool = False, asked: Collection[str] = ()
) -> list[Candidate]:
    """The same before the judge was asked what becomes of each once it is open: only for whoever
    asks `may_open` of what is taken, as the plan does."""
    called = {batch_of(id_) for id_ in asked}
    p.stock.load_some(one.line.batch for one in stands(p) if not _alike(one))
    batches = past(p)
    found: list[tuple[tuple[object, ...], list[_Member]]] = []
    for one in stands(p):
        batch = one.line.batch
        freely = not one.line.reserved and _may(one, start, unknown)
        by_id = batch in called and _may(one, start, unknown=True)
        if freely or by_id:
            some = _members(p, one, batches[batch])
            if batch in called:
                some = [m for m in some if (by_id if m[1].container in asked else freely)]
            found.append((_turn(one), some))
    found.sort(key=itemgetter(0))
    # What is alike but for its number comes by its number.
    in_turn = [
        member
        for _, some in groupby(found, key=itemgetter(0))
        for _, member in sorted(chain.from_iterable(map(itemgetter(1), some)), key=itemgetter(0))
    ]
    return _with_wanted(p, in_turn)


def _with_wanted(p: Pantry, in_turn: list[Candidate]) -> list[Candidate]:
    """With the day by which the first of each food that is past its best is wanted."""
    wanted: dict[str, date] = {}
    batches = past(p)
    for past_best in stands(p):
        best = past_best.best_by
        put_up = past_best.method not in RAW
        if put_up and best is not None and best < p.today:
            turns = -((best - p.today) // PAST_BEST)  # a day that stands still until it is there
            food, day = past_best.line.food, max(best + turns * PAST_BEST, p.today + _CALMLY)
            wanted[food] = min(day, wanted.get(food, day))
    for i, one in enumerate(in_turn) if wanted else ():
        if one.food in wanted and batches[batch_of(one.container)].method not in RAW:
            day = wanted.pop(one.food)
            in_turn[i] = one._replace(last=min(day, one.last or day))
    return in_turn


#: A container of a line: its number and the candidate.
_Member = tuple[int, Candidate]


def _turn(one: Stands) -> tuple[object, ...]:
    """As `core.keeping.rotation.order_key`, but for the number."""
    begun = one.state in (State.OPEN, State.THAWED) or bool(one.line.begun)
    return rank(one), not begun, first_date(one), one.line.made, one.line.code


def _alike(one: Stands) -> bool:
    """Whether its containers differ by their number alone."""
    return one.whole is not None and one.state in (State.SEALED, State.IN_PROGRESS)


def _members(p: Pantry, one: Stands, batch: Past) -> list[_Member]:
    whole = one.whole
    if whole is None or not _alike(one):
        return [_single(p, one, container) for container in containers_in(p, one)]
    frozen = p.places[one.line.place].climate is Climate.FREEZER
    thaws = _thaws(batch.group, one.line.size, whole) if frozen else 0
    alike = Candidate(
        "",
        food=batch.food,
        group=batch.group,
        servings=holds(p)(batch.food, batch.group, batch.method, whole),
        last=_wanted_by(one, p.today),
        safe_until=one.discard_after,
        care_from=one.care_from,
        frozen=frozen,
        thaw_days=thaws,
        role=role_at_table(p, batch.food, batch.group, batch.method, drawn=False),
        stands_by=_stands_by(one, p.today),
    )
    like = alike[1:-1]
    return [
        (n, Candidate(id_, *like, partial(_open_days, p, id_, thaws)))
        for n in map(int, one.line.numbers.split())
        for id_ in (batch.id_of(n),)
    ]


def _opened_on(container: Container) -> date | None:
    """The day on which what is open was opened."""
    opened = (turn.when.day for turn in container.turns if turn.state is State.OPEN)
    return next(opened, None)


def _may(one: Stands, start: date, unknown: bool) -> bool:
    return one.fit_on(start) and (unknown or not one.asks)


def _stands_by(one: Stands, today: date) -> bool:
    """Whether it is a tin or a pack from a shop that nothing hurries."""
    if one.state in (State.OPEN, State.THAWED) or one.method is not Method.BOUGHT:
        return False
    dated = first_date(one)
    return dated == date.max or (dated - today).days > _BOUGHT_AHEAD


def _single(p: Pantry, one: Stands, container: Container) -> _Member:
    """Of what is begun, weighed, open or thawed each has its own."""
    batch = p.stock.batches[container.batch]
    frozen = is_frozen(p, container)
    held = [amount for amount in (container.first, container.left) if amount is not None]
    thaws = _thaw_days(batch.food.group, batch.size, *held) if frozen else 0
    # A lump that has to thaw is thawed whole.
    birds = pieces(p, batch, container)
    bulk = container.bulk and not (thaws and container.vessel is Vessel.CLOSED) and birds != 1
    begun = container.state in (State.OPEN, State.THAWED) and not frozen
    drawn = container.bulk and container.vessel is not Vessel.CLOSED
    opens = not begun and (thaws > 0 or not drawn)
    left = container.left
    pieces_left = float(left.number) if bulk and left and taken_whole(batch, container) else 0.0
    if birds > 1 and left and container.first:  # a meal takes whole ones
        pieces_left = float(birds * left.number / container.first.number)
    opened = partial(_open_days, p, container.id, thaws) if opens else UNPUBLISHED
    if birds == 1:
        opened = partial(cooked_days, p, batch)
    return container.number, Candidate(
        container.id,
        food=batch.food.name,
        group=batch.food.group,
        servings=left_of_week(p, container) if begun else servings(p, container),
        last=_wanted_by(one, p.today),
        must=begun,
        safe_until=one.discard_after,
        care_from=one.care_from,
        frozen=frozen,
        thaw_days=thaws,
        bulk=bulk,
        ready=thawed_by(p, container),
        role=role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=bulk),
        since=_opened_on(container) if begun else None,
        a_head=a_head(p, batch.food.name),
        piece=servings(p, container) / pieces_left if pieces_left else 0.0,
        stands_by=_stands_by(one, p.today),
        opened=opened,
    )


def _wanted_by(one: Stands, today: date) -> date | None:
    """The nearer of its dates; None where nothing hurries it."""
    best = wanted_by(one.best_by, one.method, today)
    return min((day for day in (best, one.discard_after) if day), default=None)


def _thaw_days(group: Group, size: str, *held: Amount) -> int:
    """As the judge reckons it, so that what is planned is what is found."""
    if group in _NO_THAW:
        return 0
    return max([thaw_days(size, one) for one in held] or [thaw_days(size, None)])


@cache
def _thaws(group: Group, size: str, whole: str) -> int:
    """The same of one that is whole; asked of many alike."""
    return _thaw_days(group, size, exact_amount(whole))


def thawed_by(p: Pantry, container: Container) -> date | None:
    """The day on which what is thawing is thawed; None for what is not thawing."""
    if container.state is not State.THAWED:
        return None
    days = [span.thawed for span in p.assess(container).spans if span.thawed is not None]
    ahead = [day for day in days if day > p.today]
    return max(ahead, default=None)


def _open_days(p: Pantry, id_: str, thaws: int) -> int | None:
    """How many days it keeps from the day on which it is opened, or fully thawed, where it will
    stand then; None where nothing short is published, -1 where it may not be eaten at all. Equal
    containers are looked at once."""
    known: dict[tuple[object, ...], int | None] = p.once("open days", dict)
    if (id_, thaws) not in known:
        container = p.stock.containers[id_]
        key = container.batch, container.turns, container.left, container.first, thaws
        if key not in known:
            known[key] = _judged_open(p, container, thaws)
        known[id_, thaws] = known[key]
    return known[id_, thaws]


def _judged_open(p: Pantry, container: Container, thaws: int) -> int | None:
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
        return -1 if thaws else 0  # its two hours run there, and are over before it is thawed
    after = found.discard_after
    return None if after is None else (after - p.today).days - thaws
