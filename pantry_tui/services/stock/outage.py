"""A power cut: every item of a refrigerator or freezer, judged by the published tables."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time, timedelta

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import as_packed
from pantry_tui.core.keeping.rules import SHELF_STABLE
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import Container, Place
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.outage import NO_FIGURE, Cut, Triage, triage
from pantry_tui.core.words import State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.outage import load_outage
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, OutageRow
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.pick import name_of

_TIME = re.compile(r"(?:(\d{4}-\d{2}-\d{2})[T ])?(\d{1,2}):(\d{2})")


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


def hours_between(start: str, end: str, today: date) -> float:
    """Hours from `start` to `end`; a bare start later than the end was the evening before."""
    first, last = read_time(start, today), read_time(end, today)
    if first > last and "-" not in start:
        first -= timedelta(days=1)
    if first > last:
        raise BadInput("The power cut ends before it begins: mend --from or --to.")
    return (last - first).total_seconds() / 3600


def cut_of(
    place: Place,
    hours: float,
    *,
    full: bool = False,
    max_temp_f: float | None = None,
    ice: bool | None = None,
) -> Cut:
    """What is known of the cut. A load that nobody knows counts as half. Raises Refused."""
    if not place.climate.is_cold:
        raise Refused(f"{place.name} is neither refrigerator nor freezer: a cut changes nothing.")
    return Cut(place.climate, hours, full, max_temp_f, ice)


def judge_all(p: Pantry, place: Place, cut: Cut) -> list[OutageRow]:
    """Every item that stands there, what to use first on top, what must go last."""
    groups: dict[tuple[object, ...], list[Container]] = defaultdict(list)
    within = inside(p, place.id)
    for c in p.stock.containers.values():
        if c.here and c.place in within and p.stock.places[c.place].climate is place.climate:
            groups[c.batch, c.place, c.state, c.turns, c.signs].append(c)
    rows = [(_judged(p, group[0], cut), group) for group in groups.values()]
    rows.sort(key=lambda one: (one[0].rank, p.stock.batches[one[1][0].batch].code))
    return [_row(p, found, group) for found, group in rows]


def _judged(p: Pantry, container: Container, cut: Cut) -> Triage:
    batch = p.stock.batches[container.batch]
    food = as_packed(batch, container.state is State.OPEN).food
    found = triage(food, batch.method, container.state, cut, load_outage())
    if NO_FIGURE in found.reasons and batch.method in SHELF_STABLE:
        # It also keeps unrefrigerated, so a cut does not spoil it; still no publication says so.
        why = "No published figure for it; it is kept without the cold elsewhere, so look at it."
        reasons = (*(one for one in found.reasons if one != NO_FIGURE), why)
        return replace(found, verdict=Verdict.UNKNOWN, action="look at it", reasons=reasons)
    return found


def _row(p: Pantry, found: Triage, group: Sequence[Container]) -> OutageRow:
    batch = p.stock.batches[group[0].batch]
    sources = (f"{p.tables.sources[r.source]} ({r.trust})" for r in found.rules)
    before = p.judge(group[0])
    worse = before.verdict in UNFIT
    return OutageRow(
        code=batch.code,
        container_ids=tuple(name_of(p, c) for c in group),
        food=batch.food.name,
        place=p.where(group[0]),
        count=len(group),
        verdict=before.verdict if worse else found.verdict,
        action="discard" if worse else found.action,
        reasons=(*(before.reasons[:1] if worse else ()), *found.reasons),
        sources=tuple(dict.fromkeys(sources)),
    )


@booked
def book(p: Pantry, place: Place, cut: Cut, *, discard: bool = False) -> Done:
    """Book the cut and what it does to every item, in one transaction."""
    rows = judge_all(p, place, cut)
    words = f"power cut of {round(cut.hours, 1):g} h"
    by_name = {name_of(p, c): c for c in p.stock.containers.values()}
    marks: list[said.Mark] = []
    gone: list[said.Discard] = []
    for row in rows:
        containers = [by_name[name] for name in row.container_ids]
        if row.action == "keep":
            continue
        marks += [said.Mark(c.id, row.verdict, f"{words}: {row.action}") for c in containers]
        if discard and row.verdict in UNFIT:
            ids = tuple(c.id for c in containers)
            why = said.Reason.POWER_CUT
            gone.append(said.Discard(containers[0].batch, ids, None, why, words))
    booking = said.Outage(
        place.id,
        hours=cut.hours,
        full=cut.full,
        max_temp_f=cut.max_temp_f,
        ice=cut.ice,
        marks=tuple(marks),
    )
    with p.together():
        p.book(booking)
        for one in gone:
            p.book(one)
    return Done(f"Booked a {words} in {place.name}: {_sum(rows)}.", (CAUTION,) if marks else ())


def _sum(rows: Sequence[OutageRow]) -> str:
    counts: dict[str, int] = defaultdict(int)
    for row in rows:
        counts[row.action] += row.count
    return ", ".join(f"{n} {action}" for action, n in counts.items()) or "nothing stood there"


def must_go(rows: Sequence[OutageRow]) -> int:
    """How many containers must be thrown away."""
    return sum(row.count for row in rows if row.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE))
