"""The small jobs of what is in store: what is to be done by when, and booking that it was done."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import chain
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.batchwork.tending import Job, neighbours
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Checked, Tended
from pantry_tui.core.model import Batch, Container, Place
from pantry_tui.core.text import begun
from pantry_tui.core.words import Climate, Method, State, Trust
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.tending import load_tending
from pantry_tui.services.books.past import past_of
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.pick import Ours, batch_named
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.seen import At, when
from pantry_tui.store import lines

#: A dial gauge is tested before each year's use (PNW 421); a cold place is read off once a month,
#: which is our own choice.
GAUGE_DAYS, THERMOMETER_DAYS = 365, 30
GAUGE = "dial gauge"
_GAUGE_HOW = (
    "Have it tested before the year's canning; off by more than 2 psi it is replaced. A weighted "
    "gauge needs no test."
)
_READ_HOW = "Read the thermometer and type it in: 40 °F or below, 0 °F in a freezer."


class JobRow(NamedTuple):
    """One small job: of a batch (`code`), or of the kitchen (`code` ""; `food` says of what)."""

    code: str
    food: str
    job: str
    due: date
    overdue: bool
    place: str
    how: str
    source: str


def jobs(p: Pantry, within: int = 0) -> list[JobRow]:
    """What is due by today, or within so many days more; the oldest first."""
    ready(p)
    last = p.today + timedelta(days=within)
    known = _found(p)
    every = (*chain.from_iterable(known.rows.values()), *_of_kitchen(p, known.gauge))
    found = [row for row in every if row.due <= last]
    return sorted(found, key=lambda one: (one.due, one.code, one.job, one.place))


def sentences(p: Pantry, start: date, end: date) -> Iterator[str]:
    """The jobs of some days in a sentence, and before it those that are late; those of the kitchen
    itself are no matter of a week."""
    found = [job for job in jobs(p, max((end - p.today).days, 0)) if job.code]
    late = [_short(job) for job in found if job.overdue]
    if late:
        yield f"Late: {', '.join(late)}."
    coming: dict[date, list[str]] = defaultdict(list)
    for job in found:
        if not job.overdue and job.due >= start:
            coming[job.due].append(_short(job))
    if coming:
        days = (f"{dates.say(day)} {', '.join(some)}" for day, some in coming.items())
        yield f"To do: {'; '.join(days)}."


def _short(job: JobRow) -> str:
    return " ".join(filter(None, (job.job, job.code, job.food)))


def of_batch(p: Pantry, batch: Batch, *, may_go: bool = True) -> Sequence[JobRow]:
    """All that a batch still asks for, each job once, the nearest day first. Not `may_go`: nothing
    of it has to be discarded on any day, by its lines."""
    found: dict[str, tuple[Job, str]] = {}
    for container in p.containers_of(batch):
        for job in _jobs(p, batch, container, may_go):
            if job.job not in found or job.due < found[job.job][0].due:
                found[job.job] = job, p.where(container)
    rows = (_row(p, batch, job, place) for job, place in found.values())
    return sorted(rows, key=lambda one: (one.due, one.job))


def _jobs(p: Pantry, batch: Batch, container: Container, may_go: bool) -> tuple[Job, ...]:
    """What it asks for, but nothing on a day on which it has to be discarded."""
    found = p.judging.jobs(batch, container, p.clock.now, p.places) if container.here else ()
    if not found or not may_go:
        return found
    ladder = p.assess(container)
    return tuple(one for one in found if ladder.on(max(one.due, p.today)).verdict not in UNFIT)


#: So many batches that have changed are not asked for by their names.
_MANY = 500


class _Found(NamedTuple):
    """What is known of a day: what each batch asks for, and since when a dial gauge is used."""

    day: date
    rows: dict[str, Sequence[JobRow]]
    gauge: date | None


def _found(p: Pantry) -> _Found:
    """Kept while no place and no rule changes; of batches that have changed it is found anew."""
    known, changed = p.judging.tended, tuple(p.judging.changed)
    if not isinstance(known, _Found) or known.day != p.today or len(changed) > _MANY:
        known = _Found(p.today, _of_batches(p), _gauge_used(p))
    elif changed:
        rows = {id_: one for id_, one in known.rows.items() if id_ not in changed}
        rows |= _of_batches(p, changed)
        gauge = _gauge_used(p) if any(_canned(p, id_) for id_ in changed) else known.gauge
        known = _Found(p.today, rows, gauge)
    p.judging.tended = known
    p.judging.changed.difference_update(changed)
    return known


def _of_batches(p: Pantry, among: Sequence[str] = ()) -> dict[str, Sequence[JobRow]]:
    """Of the batches that can ask for anything: in progress, or so young that a job of their method
    is not over. With `among` of these alone."""
    asked = dict(_asked_since(p.today))
    young = " OR ".join("(method = ? AND made >= ?)" for _ in asked)
    values = [State.IN_PROGRESS.value, *(one for pair in asked.items() for one in pair)]
    goes = " OR ".join(f"v{step} IN ({lines.numbers(*UNFIT)})" for step in range(5))
    sql = (
        "SELECT batch, code, EXISTS (SELECT 1 FROM lines AS all_of_it "
        f"WHERE all_of_it.batch = lines.batch AND ({goes})) "
        f"FROM lines WHERE (state = ? OR {young})"
    )
    sql += f" AND batch IN ({', '.join('?' * len(among))})" if among else ""
    found, asked_for = {}, p.store.db.execute(f"{sql} GROUP BY batch", [*values, *among]).fetchall()
    p.stock.load_some(id_ for id_, _, _ in asked_for)
    for id_, code, may_go in asked_for:
        held = p.load(id_)
        batch = held[0] if held is not None else batch_named(p, Ours(code))
        found[id_] = of_batch(p, batch, may_go=bool(may_go))
    return found


def _canned(p: Pantry, id_: str) -> bool:
    held = p.load(id_)
    return held is None or held[0].method is Method.PRESSURE


def _asked_since(today: date) -> Iterator[tuple[str, str]]:
    """Of each method with jobs for what is closed the day (ISO) since which it was made that is
    asked for one; "" where a job has no end."""
    for method, rows in load_tending().items():
        ends = [row.last for row in rows if row.state is State.SEALED]
        days = [last for last in ends if last is not None]
        if ends:
            all_end = len(days) == len(ends)
            yield method.value, (today - timedelta(max(days))).isoformat() if all_end else ""


def _row(p: Pantry, batch: Batch, job: Job, place: str) -> JobRow:
    return JobRow(
        batch.code,
        batch.food.name,
        job.job,
        job.due,
        job.due < p.today,
        place,
        job.row.how,
        _cited(p, job),
    )


def _cited(p: Pantry, job: Job) -> str:
    return f"{p.tables.sources[job.row.source]} ({job.row.trust.shown})"


def _of_kitchen(p: Pantry, used: date | None) -> Iterator[JobRow]:
    """The dial gauge where one was used within two years, and thermometers."""
    if used is not None:
        # Whether it was tested before the first use that is recorded, nobody knows.
        due = p.home.checked.get(GAUGE, used) + timedelta(days=GAUGE_DAYS)
        source = f"{p.tables.sources['bw-pnw421-gauge']} ({Trust.READ.shown})"
        yield JobRow("", GAUGE, "test it", due, due < p.today, "", _GAUGE_HOW, source)
    for place in p.places.values():
        if place.climate in (Climate.FRIDGE, Climate.FREEZER) and not place.gone:
            yield from _thermometer(p, place)


def _gauge_used(p: Pantry) -> date | None:
    """The first day on which a dial gauge was written into a process, None for none of late."""
    since = (p.today - timedelta(days=2 * GAUGE_DAYS)).isoformat()
    sql = "SELECT DISTINCT batch, made FROM lines WHERE method = ? AND made >= ? ORDER BY made"
    made = dict(p.store.db.execute(sql, (Method.PRESSURE.value, since)).fetchall())
    days = (
        made[one.id] for one in past_of(p, made) if "dial" in dict(one.process).get("canner", "")
    )
    return next(map(date.fromisoformat, days), None)


def _thermometer(p: Pantry, place: Place) -> Iterator[JobRow]:
    """A cold place that has a reading is read off again; one that never had is left alone, since
    nobody reads it off."""
    read = place.reading
    if read is None:
        return
    due = read.when.day + timedelta(days=THERMOMETER_DAYS)
    path = p.place_paths()[place.id]
    source = f"{p.tables.sources['house-practice']} ({Trust.MEMORY.shown})"
    yield JobRow("", path, "read it off", due, due < p.today, path, _READ_HOW, source)


@booked
def tend(p: Pantry, ref: str, job: str | None = None, *, at: At | None = None) -> Done:
    """Book that a job of a batch was done: the named one, else all that are due. `ref` may be
    "gauge". Raises Refused where nothing of it is due, BadInput for a job that it does not have."""
    if ref.casefold().strip() in (GAUGE, "gauge"):
        p.book(Checked(GAUGE), **when(at))
        return Done(f"Checked the {GAUGE}.", ())
    batch = batch_named(p, ref)
    asked = of_batch(p, batch)
    chosen = _chosen(p, batch, asked, job)
    with p.together():
        for one in chosen:
            p.book(Tended(batch.id, one.job), **when(at))
    done = ", ".join(one.job for one in chosen)
    after = [one for one in of_batch(p, p.stock.batches[batch.id]) if one.due > p.today]
    next_ = f"; next {after[0].job} on {dates.say(after[0].due)}" if after else ""
    return Done(f"{batch.code} {batch.food.name}: {done}{next_}.", ())


def _chosen(p: Pantry, batch: Batch, asked: Sequence[JobRow], job: str | None) -> list[JobRow]:
    if job:
        words = job.casefold().split()
        named = [one for one in asked if all(word in one.job for word in words)]
        if not named:
            have = ", ".join(one.job for one in asked) or "none"
            raise BadInput(f"{job[:30]!r} is no job of {batch.code} now: {have}.")
        return named[:1]
    due = [one for one in asked if one.due <= p.today]
    if not due and asked:
        first = asked[0]
        raise Refused(
            f"Nothing of {batch.code} is due: {first.job} is next, on {dates.say(first.due)}."
        )
    if not due:
        raise Refused(f"{batch.code} {batch.food.name} asks for nothing more.")
    return due


def beside(p: Pantry, batch: Batch, place: str) -> tuple[str, ...]:
    """What spoils what, once a crop lies in a place: apples beside carrots. Only raw crops."""
    if batch.method not in (Method.CELLAR, Method.FRESH):
        return ()
    sql = "SELECT DISTINCT code FROM lines WHERE place = ? AND method IN (?, ?) AND code != ?"
    asked = (place, Method.CELLAR.value, Method.FRESH.value, batch.code)
    there = [batch_named(p, Ours(code)).food.name for (code,) in p.store.db.execute(sql, asked)]
    crops = p.tables.crops
    known = [name for name in (batch.food.name, *there) if name in crops]
    gives = {name: crops[name].gives_ethylene for name in known}
    hurt = {name: crops[name].hurt_by_ethylene for name in known}
    return tuple(
        f"{begun(giver)} beside {sufferer}: the gas that ripening fruit gives off spoils "
        f"{sufferer} ({_harm(hurt[sufferer])}); keep them in different places "
        f"({p.tables.sources[crops[sufferer].source]})."
        for giver, sufferer in neighbours(batch.food.name, there, gives, hurt)
    )


def _harm(word: str) -> str:
    """ "high (bitterness)" -> "bitterness"."""
    inside = word.partition("(")[2].rstrip(")")
    return inside or "they age or sprout sooner"
