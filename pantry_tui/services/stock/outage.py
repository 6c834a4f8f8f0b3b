"""A power cut: every item that stood in a refrigerator or freezer then, judged by the published
tables, as if the cut were booked; and its booking."""

from __future__ import annotations

import math
import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from pantry_tui.core.keeping.limits import after_cut
from pantry_tui.core.keeping.rotation import UNFIT
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.fold import knowing
from pantry_tui.core.log.moments import moment
from pantry_tui.core.model import EVER, Container, Cut, Place
from pantry_tui.core.safety.outage import Triage
from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, OutageRow
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.view import HELP

_TIME = re.compile(r"(?:(\d{4}-\d{2}-\d{2})[T ])?(\d{1,2}):(\d{2})")
#: What a person says who does not know since when.
UNKNOWN = "unknown"


def read_time(text: str, today: date) -> datetime:
    """("2026-11-24 18:00" or "18:00", today) -> that minute. Raises BadInput."""
    match = _TIME.fullmatch(text.strip())
    try:
        if match is None:
            raise ValueError
        day = date.fromisoformat(match[1]) if match[1] else today
        return datetime.combine(day, time(int(match[2]), int(match[3])))
    except ValueError:
        raise BadInput(f"{text[:40]!r} is no time: write 18:00 or 2026-11-24 18:00.") from None


def read_times(start: str, end: str, today: date) -> tuple[datetime | None, datetime]:
    """When it began and ended; a bare start later than the end was the evening before, `unknown`
    is None. Raises BadInput."""
    last = read_time(end, today)
    if start.strip().casefold() == UNKNOWN:
        return None, last
    first = read_time(start, today)
    if first > last and "-" not in start:
        first -= timedelta(days=1)
    if first > last:
        raise BadInput("The power cut ends before it begins: mend --from or --to.")
    return first, last


def hours_between(start: str, end: str, today: date) -> float:
    """Hours from `start` to `end`. Raises BadInput."""
    first, last = read_times(start, end, today)
    if first is None:
        raise BadInput("Say when the power went, as 18:00.")
    return (last - first).total_seconds() / 3600


@dataclass(frozen=True, slots=True)
class Told:
    """What is told of a cut of `place`. It lasted from `start` to `end`; without an end it ended
    just now, after `hours`; with neither start nor hours nobody knows since when. `full` None
    counts as half."""

    place: str
    hours: float | None = None
    start: datetime | None = None
    end: datetime | None = None
    full: bool | None = None
    max_temp_f: float | None = None
    ice: bool | None = None

    @property
    def words(self) -> str:
        if self.hours is None:
            return "power cut since nobody knows when"
        return f"power cut of {round(self.hours, 1):g} h"


def cut_of(
    place: Place,
    hours: float | None = None,
    *,
    start: datetime | None = None,
    end: datetime | None = None,
    full: bool | None = None,
    max_temp_f: float | None = None,
    ice: bool | None = None,
) -> Told:
    """What is told of the cut. Raises Refused for a place without a cold of its own, BadInput for
    hours that are none."""
    if not place.climate.is_cold:
        raise Refused(f"{place.name} is neither refrigerator nor freezer: a cut changes nothing.")
    if start is not None and end is not None:
        hours = (end - start).total_seconds() / 3600
    if hours is not None and not (math.isfinite(hours) and 0 <= hours <= 24 * 366):
        raise BadInput("Give the hours of the cut as a number from 0 to 8,784.")
    return Told(place.id, hours, start, end, full, max_temp_f, ice)


def _payload(p: Pantry, told: Told) -> said.Outage:
    """What would be booked of it, its moments with the offset of the local clock."""
    now = p.clock.now_local
    end = told.end or now
    start = told.start
    if start is None and told.hours is not None:
        start = end - timedelta(hours=told.hours)
    return said.Outage(
        told.place,
        _local(start) if start is not None else "",
        _local(end),
        told.hours or 0.0,
        full=told.full,
        max_temp_f=told.max_temp_f,
        ice=told.ice,
    )


def _local(then: datetime) -> str:
    return then.astimezone().isoformat(timespec="minutes")


def _with(p: Pantry, payload: said.Outage) -> tuple[Mapping[str, Place], int]:
    """The places if the cut had been booked, and the minute on which it ended."""
    start = moment(payload.start) if payload.start else EVER
    cut = Cut(start, moment(payload.end), payload.full, payload.max_temp_f, payload.ice)
    where = knowing(p.places[payload.place], cut)
    return {**p.places, where.id: where}, min(cut.end.last, p.clock.now.last)


def judge_all(p: Pantry, place: Place, told: Told) -> list[OutageRow]:
    """Every item that stood there then, what to use first on top, what must go last."""
    places, end = _with(p, _payload(p, told))
    here = [c for c in p.stock.containers.values() if c.here]
    return _rows(p, place.id, places, end, here)


def of_booked(p: Pantry, booked_as: said.Outage) -> list[OutageRow]:
    """The same for a cut that is booked, with what has gone since."""
    if not booked_as.end:
        return []
    end = moment(booked_as.end)
    here = [
        c
        for c in p.stock.containers.values()
        if c.here or (c.ended is not None and c.ended >= end.day)
    ]
    return _rows(p, booked_as.place, p.places, end.last, here)


def _rows(
    p: Pantry, place: str, places: Mapping[str, Place], end: int, here: Sequence[Container]
) -> list[OutageRow]:
    groups: dict[tuple[object, ...], list[Container]] = defaultdict(list)
    for c in here:
        lived = tuple(turn._replace(event="") for turn in c.turns)
        groups[c.batch, c.place, c.state, c.fate, lived, c.signs, c.looked, c.left].append(c)
    now, book = p.clock.now, p.book_of_rules
    rows: list[tuple[int, OutageRow]] = []
    for group in groups.values():
        first = group[0]
        batch = p.stock.batches[first.batch]
        found = after_cut(batch, first, places, book, now, place, end)
        if found is not None:
            rows.append((found.rank, _row(p, found, group, places)))
    return [row for _, row in sorted(rows, key=lambda one: (one[0], one[1].code))]


def _row(
    p: Pantry, found: Triage, group: Sequence[Container], places: Mapping[str, Place]
) -> OutageRow:
    """What the table says, unless the container is unfit all the same."""
    first = group[0]
    batch = p.stock.batches[first.batch]
    sources = (f"{p.tables.sources[r.source]} ({r.trust})" for r in found.rules)
    after = p.assess_bare(batch, first, p.clock.now, places).on(p.today)
    unfit = after.verdict in UNFIT
    other = unfit and found.verdict is not Verdict.DISCARD
    return OutageRow(
        code=batch.code,
        container_ids=tuple(name_of(p, c) for c in group),
        food=batch.food.name,
        place=p.where(first) if first.here else first.fate,
        count=len(group),
        verdict=after.verdict if unfit else found.verdict,
        action="discard" if unfit else found.action,
        reasons=(*(after.reasons[:1] if other else ()), *found.reasons),
        sources=tuple(dict.fromkeys(sources)),
    )


@booked
def book(p: Pantry, place: Place, told: Told, *, discard: bool = False) -> Done:
    """Book the cut, in one transaction with the discarding of what must go. What it did to every
    item follows from it, also for what is booked late."""
    rows = judge_all(p, place, told)
    by_name = {name_of(p, c): c for c in p.stock.containers.values()}
    with p.together():
        p.book(_payload(p, told))
        for row in rows:
            if discard and row.verdict in UNFIT:
                gone = [by_name[name] for name in row.container_ids]
                ids, why = tuple(c.id for c in gone), said.Reason.POWER_CUT
                p.book(said.Discard(gone[0].batch, ids, None, why, told.words))
    hurt = any(row.action != "keep" for row in rows)
    return Done(f"Booked a {told.words} in {place.name}: {_sum(rows)}.", (HELP,) if hurt else ())


def _sum(rows: Sequence[OutageRow]) -> str:
    counts: dict[str, int] = defaultdict(int)
    for row in rows:
        counts[row.action] += row.count
    return ", ".join(f"{n} {action}" for action, n in counts.items()) or "nothing stood there"


def must_go(rows: Sequence[OutageRow]) -> int:
    """How many containers must be thrown away."""
    return sum(row.count for row in rows if row.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE))
