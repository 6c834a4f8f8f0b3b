"""The small jobs: a line above the due list, done with one key, and all of them by `.`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from pantry_tui.app.format import clip, week_day
from pantry_tui.app.roles import HEAD
from pantry_tui.app.screens.ask import Choose, given
from pantry_tui.app.widgets.line import Key, Line
from pantry_tui.core.text import clean
from pantry_tui.services.batchwork import tending
from pantry_tui.services.batchwork.tending import JobRow
from pantry_tui.services.batchwork.timer import TimerRow

if TYPE_CHECKING:
    from pantry_tui.app.host import Host
    from pantry_tui.services.rows import Done

#: Days ahead that the list of all jobs looks.
AHEAD = 7


@dataclass(frozen=True)
class JobKey(Key):
    """A job of a batch, or of the kitchen (no code: its name)."""

    code: str
    food: str
    job: str


def lines(rows: Sequence[JobRow]) -> list[Line]:
    """One line, so that nothing that must go is pushed off the screen: the oldest job, and how
    many more there are."""
    return [_line(rows[0], len(rows) - 1)] if rows else []


def timer_lines(rows: Sequence[TimerRow]) -> list[Line]:
    """What is timed, each on a line."""
    found = []
    for row in rows:
        left = "the pressure is down" if row.down else f"{row.left} of {row.minutes} min left"
        text = f"~ timing {row.code} {clean(row.food)}: {left} (e on its line)"
        found.append(Line(JobKey(row.code, row.food, ""), ((text, HEAD),), word=text, whole=True))
    return found


def _line(row: JobRow, more: int) -> Line:
    since = f"late since {week_day(row.due)}" if row.overdue else "today"
    others = f", {more} more with ." if more else ""
    text = f"~ {row.job}, {row.code or row.food}, {since} (f: done{others})"
    word = f"{row.how} {row.source}."
    key = JobKey(row.code, row.food, row.job)
    return Line(key, ((clip(text, 120), HEAD),), word=word, whole=True)


def said(row: JobRow) -> str:
    """ "skim 5M sauerkraut in cellar"."""
    where = f" in {row.place}" if row.code and row.place else ""
    return clean(f"{row.job}: {row.code} {row.food}".replace("  ", " ") + where)


def do(host: Host, code: str, food: str, job: str) -> Done:
    """Book it as done. Raises Refused for a place, which is read off instead."""
    if code:
        return tending.tend(host.pantry, code, job)
    return tending.tend(host.pantry, food)


def ask(host: Host) -> None:
    """All that is due within a week; the one chosen is done."""
    rows = tending.jobs(host.pantry, AHEAD)
    if not rows:
        host.tell("No small job is due within a week.")
        return
    texts = [f"{week_day(row.due)}  {said(row)}" for row in rows]

    def chosen(text: str) -> None:
        row = rows[texts.index(text)]
        host.attempt(lambda: do(host, row.code, row.food, row.job))
        reload = getattr(host.screen, "reload", None)
        if reload is not None:
            reload()

    host.push_screen(Choose("Which is done?", texts), given(chosen))
