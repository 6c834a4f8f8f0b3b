"""What a line of the stock tables says: equal containers of a batch in one place, what they are
from their last fact on, day by day."""

from __future__ import annotations

import json
from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from itertools import zip_longest

from pantry_tui.core.dataclass import dataclass, field, replace
from pantry_tui.core.keeping.ladder import Assessment, Judgement
from pantry_tui.core.keeping.weather import moment_of
from pantry_tui.core.log.fold_place import path_of
from pantry_tui.core.model import Batch, Container, When
from pantry_tui.core.words import SEVERITY, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import warmth
from pantry_tui.store.lines import Line

#: At most so many steps after the first does a ladder have.
_STEPS = 4
_FAR = "9999-12-31"


@dataclass(frozen=True, slots=True)
class Ladder:
    """What a container is from its last fact on: its verdicts with their reasons, each from a day
    (the first from the beginning), and its dates."""

    steps: tuple[tuple[str | None, Verdict, tuple[str, ...]], ...]
    standing: tuple[str, ...]
    best_by: date | None
    discard_after: date | None
    why_no_discard: str
    harmless: bool
    again_at: int | None
    hurried: bool  # its two hours run: `discard_after` is the day on which they do
    # When its facts happened does not make it another line.
    facts_min: int = field(compare=False)
    facts_to: date = field(compare=False)


def ladder(p: Pantry, batch: Batch, container: Container) -> Ladder:
    """The verdicts of a container on all days from the last fact on."""
    found = p.assess(container)
    last = _last_moment(p, container)
    if last.last > p.clock.minute_now:
        # Judged as of that minute: what lies ahead counts as now only until it comes.
        found = p.assess_bare(batch, container, When(last.last, last.last, last.day, last.zone))
    days = [day for day, _ in found.steps()]
    said = [since + timedelta(days=1) for since, _ in found.later]
    said += [care.start for care in found.care]
    for day in said:
        if len(days) <= _STEPS and day > days[0] and day not in days:
            days.append(day)
    steps: list[tuple[str | None, Verdict, tuple[str, ...]]] = []
    for day in sorted(days)[: _STEPS + 1]:
        judged = found.on(day)
        since = day.isoformat() if steps else None
        steps.append((since, judged.verdict, judged.reasons))
    return Ladder(
        tuple(steps),
        found.standing,
        found.best_by,
        _last_day(found),
        found.why_no_discard,
        found.harmless,
        found.look_at,
        found.over_from is not None,
        last.last,
        max(found.facts_to, found.now),  # a day before the one it was judged on is looked at anew
    )


def _last_day(found: Assessment) -> date | None:
    """The last day on which it may be eaten. A later one of a table says nothing while it stands
    too warm."""
    if found.over_from is None:
        return found.discard_after
    last = found.over_from - timedelta(days=1)
    return min(last, found.discard_after or last)


def _last_moment(p: Pantry, container: Container) -> When:
    """The latest moment of anything that happened to it or to a place it stood in."""
    moments = [turn.when for turn in container.turns]
    for where in {turn.place for turn in container.turns if turn.place}:
        moments += _last_of_place(p, where)
    return max(moments, key=lambda one: one.last)


def _last_of_place(p: Pantry, where: str) -> list[When]:
    """The latest moment of what is known of a place and of those it stands in."""
    place = p.ever.get(where)
    if place is None:
        return []

    def latest() -> list[When]:
        found = [max(map(moment_of, place.facts), key=lambda one: one.last)]
        return found + (_last_of_place(p, place.parent) if place.parent else [])

    return p.once(f"last of {where}", latest)


def lines_of(p: Pantry, batch: Batch, containers: Iterable[Container]) -> list[Line]:
    """The lines of a batch: equal containers in one place together."""
    ladders: dict[tuple[object, ...], Ladder] = {}

    def of(c: Container) -> tuple[object, ...]:
        waits = bool(batch.suspect) and c.looked is None
        return c.place, c.state, c.amount, c.begun, c.reserved, waits, climb(c)

    def climb(c: Container) -> Ladder:
        key = c.lived, batch.ahead_of(c.id)
        if key not in ladders:
            ladders[key] = ladder(p, batch, c)
        return ladders[key]

    keyed: dict[tuple[object, ...], list[Container]] = {}
    for container in containers:
        if container.here:
            keyed.setdefault(of(container), []).append(container)
    return [_line(p, batch, group, _latest(map(climb, group))) for group in keyed.values()]


def _latest(ladders: Iterable[Ladder]) -> Ladder:
    """Equal ladders as one, that of the last fact of any."""
    mine = list(ladders)
    return replace(
        mine[0],
        facts_min=max(one.facts_min for one in mine),
        facts_to=max(one.facts_to for one in mine),
    )


def _line(p: Pantry, batch: Batch, group: Sequence[Container], found: Ladder) -> Line:
    first = group[0]
    held = _had_it_held(p, first)
    flat: list[object] = [SEVERITY.index(found.steps[0][1])]
    for day, verdict, _ in found.steps[1:]:
        assert day is not None
        flat += [day, SEVERITY.index(verdict)]
    flat += [None] * (2 * _STEPS + 1 - len(flat))
    dated = [day.isoformat() for day in (found.best_by, found.discard_after) if day is not None]
    return Line(
        batch=batch.id,
        code=batch.code,
        food=batch.food.name,
        method=batch.method.value,
        place=first.place,
        path=path_of(p.places, first.place),
        state=first.state.value,
        n=len(group),
        numbers=" ".join(str(n) for n in sorted(c.number for c in group)),
        size=batch.size,
        amount=first.amount,
        begun=int(first.begun),
        reserved=first.reserved,
        made=batch.made.isoformat() if batch.made else "",
        best_by=found.best_by.isoformat() if found.best_by else None,
        discard_after=found.discard_after.isoformat() if found.discard_after else None,
        first_date=min(dated, default=_FAR),
        harmless=int(found.harmless),
        why_no_discard=found.why_no_discard,
        again_at=found.again_at,
        hurried=int(found.hurried),
        held_v=None if held is None else SEVERITY.index(held.verdict),
        held_best=held.best_by.isoformat() if held and held.best_by else None,
        held_discard=held.discard_after.isoformat() if held and held.discard_after else None,
        v0=flat[0],  # type: ignore[arg-type]
        d1=flat[1],  # type: ignore[arg-type]
        v1=flat[2],  # type: ignore[arg-type]
        d2=flat[3],  # type: ignore[arg-type]
        v2=flat[4],  # type: ignore[arg-type]
        d3=flat[5],  # type: ignore[arg-type]
        v3=flat[6],  # type: ignore[arg-type]
        d4=flat[7],  # type: ignore[arg-type]
        v4=flat[8],  # type: ignore[arg-type]
        suspect=int(bool(batch.suspect) and first.looked is None),
        reasons=_said(found.standing, *(reasons for _, _, reasons in found.steps)),
        words=_words(p, batch, first),
        facts_to=found.facts_to.isoformat(),
        facts_min=found.facts_min,
    )


def _had_it_held(p: Pantry, container: Container) -> Judgement | None:
    """The verdict, had its place been read at what it should hold; None where it was."""
    place = p.places.get(container.place)
    if place is None or warmth.in_range(place):
        return None
    judge = p.imagining(f"held {place.id}", lambda: warmth.had_it_held(p, place))
    return judge.judge(container)


def _said(standing: Sequence[str], *reasons: Sequence[str]) -> str:
    """What is said beside any verdict, then the reasons of each step, as JSON."""
    return json.dumps([list(standing), *map(list, reasons)], ensure_ascii=False)


def _words(p: Pantry, batch: Batch, container: Container) -> str:
    """All by which a line may be found, but its verdict."""
    known = p.tables.index.find(batch.food.name)
    kept = f"for {container.reserved}" if container.reserved else ""
    rated = " ".join(str(one) for one in batch.rated)
    parts = (
        batch.food.name,
        *(known.aliases if known else ()),
        batch.food.group,
        batch.method,
        path_of(p.places, container.place),
        container.state,
        batch.note,
        batch.code,
        kept,
        rated,
    )
    return " ".join(part for part in parts if part).lower()


def today_only(p: Pantry, line: Line, containers: dict[str, Container]) -> Line:
    """The line as of this day, with what it becomes if nothing else happens."""
    number = int(line.numbers.split()[0])
    container = next(c for c in containers.values() if c.number == number)
    found = p.assess(container)
    judged, last = found.on(p.today), _last_day(found)
    ahead = [day for day, _ in found.steps() if day > p.today][:_STEPS]
    after = [found.on(day) for day in ahead]
    steps: list[object] = []
    for day, then in zip(ahead, after, strict=True):
        steps += [day.isoformat(), SEVERITY.index(then.verdict)]
    names = (f"{what}{number}" for number in range(1, _STEPS + 1) for what in "dv")
    return line._replace(
        **dict(zip_longest(names, steps)),  # type: ignore[arg-type]
        v0=SEVERITY.index(judged.verdict),
        reasons=_said(judged.standing, judged.reasons, *(then.reasons for then in after)),
        best_by=judged.best_by.isoformat() if judged.best_by else None,
        discard_after=last.isoformat() if last else None,
        why_no_discard=judged.why_no_discard,
        harmless=int(found.harmless),
        hurried=int(found.over_from is not None),
    )
