"""Ferments, cures, infusions and what dries: a line of time for each, day n of m."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from pantry_tui.app.draw.spans import Row, Span, fit, padded
from pantry_tui.app.format import week_day
from pantry_tui.app.roles import HEAD, MUTED, STYLE
from pantry_tui.core.text import clean
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.underway import Underway

#: Longest line of time.
LONGEST = 40
DONE, DUE, LATE = "•", "o", "!"


def underway_rows(found: Sequence[Underway], today: date, width: int) -> list[Row]:
    """Three lines a batch: what it is; its time with a tick for each job that was done, is to come
    or is late; what is to be done next."""
    rows: list[Row] = []
    for one in found:
        rows += [fit(row, width) for row in _batch(one, today, width)]
        rows.append(())
    said = f"{DONE} done   {DUE} to do   {LATE} late   ┃ today"
    return [*rows, (Span(said, MUTED),)] if rows else []


def _batch(one: Underway, today: date, width: int) -> Iterator[Row]:
    yield (
        Span(padded(f"{one.code:<5}{one.food}", min(30, width)), HEAD, one.code),
        Span(f" {one.method}, {clean(one.place)}", MUTED),
    )
    yield (Span("     "), *_line(one, today, min(LONGEST, max(width - 44, 8))), Span(_day(one)))
    for job, due in one.jobs[:2]:
        late = due < today
        when = f"late since {week_day(due)}" if late else "today" if due == today else week_day(due)
        role = STYLE[Verdict.NEEDS_CARE] if late else MUTED
        yield (Span(f"     {LATE if late else DUE} {job}: {when}", role),)


def _line(one: Underway, today: date, across: int) -> list[Span]:
    """From the day it was made to the day it should be ready, or to the last job to come."""
    ends = [day for day in (one.day, one.of, *(_day_of(one, due) for _, due in one.jobs)) if day]
    last = max([*ends, 1])
    ticks = {_at(day, last, across): DONE for day in one.done}
    ticks |= {
        _at(_day_of(one, due), last, across): LATE if due < today else DUE for _, due in one.jobs
    }
    now = min(_at(one.day, last, across), across - 1)
    found = []
    for cell in range(across):
        if cell in ticks and cell != now:
            role = STYLE[Verdict.NEEDS_CARE] if ticks[cell] == LATE else ""
            found.append(Span(ticks[cell], role))
        elif cell == now:
            found.append(Span("┃", HEAD))
        else:
            found.append(Span("━" if cell < now else "╌", "" if cell < now else MUTED))
    return found


def _day_of(one: Underway, due: date) -> int:
    return (due - one.made).days


def _at(day: int, last: int, across: int) -> int:
    return max(0, min(across - 1, day * (across - 1) // last))


def _day(one: Underway) -> str:
    if one.of is None:
        return f"  day {one.day}"
    if one.day > one.of:
        return f"  day {one.day}; {one.to} from day {one.of}"
    return f"  day {one.day} of {one.of}, to {one.to}"
