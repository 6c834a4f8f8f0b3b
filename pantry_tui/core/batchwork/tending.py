"""The small jobs that a batch needs after it was made, each with its day.

A job is done once, or every so many days, for as long as its container is in the state that the job
is for. Of several rows for one job the closest food speaks, at the warmth of the place.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.keeping.ladder import Assessment, Care
from pantry_tui.core.keeping.ripens import Ripe
from pantry_tui.core.model import DAY_MIN, Batch, Container, FoodFacts, When
from pantry_tui.core.safety import seals
from pantry_tui.core.scope import OTHER, near
from pantry_tui.core.words import Method, State, Trust

#: What is said of a job that was not done in time begins so.
LATE = "Late since"
#: What is left to do with a ferment that no day makes ready where it stands.
MEASURE_PH = "measure its pH"


@dataclass(frozen=True, slots=True)
class TendingRow:
    """One row of data/tending.csv. Days count from the day made; `every` None: once; `last` the
    last day on which it is asked for, None while the state lasts; `care` how many days late it may
    be before the batch needs care, None where lateness changes nothing."""

    job: str
    methods: frozenset[Method]
    foods: tuple[str, ...]
    state: State
    low_f: float | None
    high_f: float | None
    after: int
    every: int | None
    last: int | None
    care: int | None
    how: str
    source: str
    trust: Trust

    def at(self, warmth_f: float) -> bool:
        """Whether it is for that warmth, °F."""
        warm = self.low_f is None or warmth_f >= self.low_f
        return warm and (self.high_f is None or warmth_f < self.high_f)

    def close(self, food: FoodFacts) -> int:
        return max(near(one, food) for one in self.foods)


class Job(NamedTuple):
    """A job that lies ahead, or is late. `care_from` is the day from which the batch needs care
    for want of it, `last` the last day on which it is asked for; None too where that is over and
    it is left open."""

    job: str
    due: date
    row: TendingRow
    care_from: date | None = None
    last: date | None = None


def jobs_of(
    batch: Batch,
    container: Container,
    warmth_f: float,
    rows: Iterable[TendingRow],
    today: date,
    ripe: Ripe | None = None,
) -> tuple[Job, ...]:
    """What it needs from `today` on, late jobs among it, the nearest day first. Nothing of a batch
    of which nobody knows the day. `ripe`: when a ferment may be called ready."""
    if batch.made is None or not container.here:
        return ()
    done = dict(batch.tended)
    found = []
    for row in _speaking(rows, batch, container.state, warmth_f, ripe):
        job = _job(batch, batch.made, row, done.get(row.job), today)
        if job is not None:
            found.append(job)
    return tuple(sorted(found, key=lambda one: (one.due, one.job)))


def _speaking(
    rows: Iterable[TendingRow], batch: Batch, state: State, warmth_f: float, ripe: Ripe | None
) -> Iterator[TendingRow]:
    """For each job the rows of the closest food, and of them those for this warmth; what ends a
    ferment not before it may be called ready, and nothing that ends what is in doubt: it is not
    tasted to find out."""
    by_job: dict[str, list[TendingRow]] = {}
    for row in rows:
        if batch.method in row.methods and row.state is state and row.close(batch.food) > OTHER:
            by_job.setdefault(row.job, []).append(row)
    for mine in by_job.values():
        closest = max(row.close(batch.food) for row in mine)
        for row in mine:
            if row.close(batch.food) == closest and row.at(warmth_f):
                if not _ends(row):
                    yield row
                elif not batch.doubt:
                    yield _once_ripe(row, batch, ripe)


def _ends(row: TendingRow) -> bool:
    """Whether it is what is done once to what is in progress, when its time is over."""
    return row.state is State.IN_PROGRESS and row.every is None and row.after > 0


def _once_ripe(row: TendingRow, batch: Batch, ripe: Ripe | None) -> TendingRow:
    """The job on the day from which it may be called ready; where no day makes it so, what does."""
    if ripe is None or batch.made is None:
        return row
    if ripe.day is None:
        return replace(row, job=MEASURE_PH, how=ripe.why)
    return replace(row, after=max(row.after, (ripe.day - batch.made).days))


def _job(batch: Batch, made: date, row: TendingRow, done: date | None, today: date) -> Job | None:
    """When a row's job is due next; None where it is done, or asked for no more."""
    if done is not None and row.every is None:
        return None
    due = made + timedelta(days=row.after)
    if done is not None and row.every is not None:
        due = max(due, done + timedelta(days=row.every))
    booked = batch.booked
    last = None if row.last is None else made + timedelta(days=row.last)
    begun = due
    if booked is not None and due < booked:
        if row.every is None and booked > (last or due + timedelta(days=1)):
            return None  # It came into the store later: whether that was done then, nobody asks.
        begun = booked
    due = due if row.every is None else begun
    if last is not None and max(due, today) > last:
        # It is pressed for no more; but to do nothing until then says nothing of a lid.
        unsaid = row.job == seals.CHECK and row.care is not None
        return Job(row.job, due, row) if unsaid else None
    care = None if row.care is None else begun + timedelta(days=row.care + 1)
    return Job(row.job, due, row, care, last)


def with_care(found: Assessment, jobs: Sequence[Job], now: When) -> Assessment:
    """The ladder of a container with the days on which its jobs, if nobody does them, make it need
    care: never milder, and to be looked at again on each day on which that changes."""
    unchecked = [job for job in jobs if job.job == seals.CHECK]
    lapses = [job for job in jobs if job.care_from is not None]
    turns = [job.last + timedelta(days=1) for job in (*lapses, *unchecked) if job.last is not None]
    turns += [day for day in (job.care_from for job in lapses) if day and day > now.day]
    if not lapses and not unchecked:
        return found
    return replace(
        found,
        standing=(*found.standing, *((seals.FIRST,) if unchecked else ())),
        care=tuple(
            Care(job.care_from, job.last, f"{LATE} {dates.say(job.due)}: {job.job}.")
            for job in lapses
            if job.care_from is not None
        ),
        care_at=min((day.toordinal() * DAY_MIN - now.zone for day in turns), default=None),
    )


def neighbours(
    food: str, others: Iterable[str], gives: Mapping[str, str], hurt: Mapping[str, str]
) -> list[tuple[str, str]]:
    """(which gives off ethylene, which it spoils) between a crop and what lies beside it. `gives`
    and `hurt` hold the published words for each crop: "very high", "high (bitterness)"."""
    found = []
    for other in dict.fromkeys(others):
        for giver, sufferer in ((food, other), (other, food)):
            strong = "high" in gives.get(giver, "")
            if strong and giver != sufferer and _suffers(hurt.get(sufferer, "")):
                if "high" in gives.get(sufferer, ""):
                    continue  # both ripen each other: keeping fruit, not spoiling a root
                found.append((giver, sufferer))
    return found


def _suffers(word: str) -> bool:
    return word.startswith(("high", "medium"))


def ready_after(
    rows: Iterable[TendingRow], batch: Batch, warmth_f: float, ripe: Ripe | None = None
) -> tuple[int, str] | None:
    """Days from the day made to the last job that is done once (to taste, to strain), and that
    job. None where no row has one."""
    speaking = _speaking(rows, batch, State.IN_PROGRESS, warmth_f, ripe)
    return max(((row.after, row.job) for row in speaking if _ends(row)), default=None)
