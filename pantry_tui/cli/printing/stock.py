"""The stock list, one batch, the log."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.cli.printing.lines import food_of, iso, last_day, table
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import best_said, discarded
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import begun, clean, singular
from pantry_tui.core.words import MARK, Verdict

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.tending import JobRow
    from pantry_tui.services.books.logbook import LogLine
    from pantry_tui.services.rows import BatchView
    from pantry_tui.services.stock.rows import DueRow

_HEADS = ("verdict", "code", "food", "method", "left", "place", "best by", "discard after", "days")
_OVER = {
    "must go": "Must go, do not eat",
    "open": "Open and thawed",
    "past best": "Past best, still safe",
}


def due(rows: Sequence[DueRow], *, heads: bool = False) -> list[str]:
    """The stock list, with `heads` over its parts, and under it why what is unfit must go
    and what stands too warm must be eaten now."""
    if not rows:
        return ["Nothing is in store here: put something up with `pantry-tui putup`."]
    first, *lines = table(_HEADS, map(_due_cells, rows))
    if heads:
        lines = list(_under_heads(lines, rows))
    lines = [first, *lines]
    lines += _standing(rows)
    unfit = [row for row in rows if row.verdict in UNFIT or row.hurried]
    for row in unfit:
        lines.append(f"{row.code} {clean(row.food)}: {row.verdict}. {clean(' '.join(row.reasons))}")
    if unfit:
        lines.append(CAUTION)
    return lines


def _under_heads(lines: Sequence[str], rows: Sequence[DueRow]) -> Iterator[str]:
    """Each part of the list under its head, with how many containers are in it."""
    count = Counter[str]()
    for row in rows:
        count[row.part] += row.count
    shown = ""
    for line, row in zip(lines, rows, strict=True):
        if row.part != shown:
            shown = row.part
            yield f"{begun(_OVER.get(shown, shown))}: {count[shown]}"
        yield line


def _standing(rows: Sequence[DueRow]) -> list[str]:
    """What is said beside any verdict, once for all that it is said of."""
    said: dict[str, dict[str, None]] = {}
    for row in rows:
        for one in row.standing:
            said.setdefault(one, {})[row.code] = None
    return [f"{', '.join(codes)}: {clean(one)}" for one, codes in said.items()]


def _best(row: DueRow) -> str:
    """ "best by Mon 1 Mar 2027", or that it has no such day, and why."""
    return best_said(row.good_until, row.why_no_best)


def _due_cells(row: DueRow) -> tuple[str, ...]:
    doubt = row.verdict is Verdict.UNKNOWN
    left = "" if row.days_left is None or doubt or row.must_go else str(row.days_left)
    verdict = f"{MARK[row.verdict]} {row.verdict}"
    return (
        verdict,
        row.code,
        food_of(row),
        row.method.value,
        _stands(row),
        row.place.rsplit("› ", 1)[-1],
        iso(row.good_until) if row.good_until else row.why_no_best,
        last_day(row.last_day, row.why_no_last_day),
        left,
    )


def _stands(row: DueRow) -> str:
    """ "7 pint jars", "38 lb"."""
    if row.amount:
        return row.held
    *before, vessel = row.size.split() or [""]
    size = " ".join([*before, singular(vessel) if row.count == 1 else vessel])
    times = " x" if size[:1].isdigit() else ""
    return f"{row.count}{times} {size}".rstrip()


def batch(view: BatchView) -> list[str]:
    """One batch whole."""
    made = say(view.made) if view.made else "nobody knows when"
    lines = [
        f"{view.code} {clean(view.food)}, {view.method} ({view.group}, {view.acidity})",
        f"made: {made}",
    ]
    lines += [f"{clean(key)}: {clean(value)}" for key, value in view.process]
    lines += [f"note: {clean(view.note)}"] if view.note else []
    lines += [f"  {view.note_aside}"] if view.note_aside else []
    lines += [f"rated: {clean(one)}" for one in view.tasted]
    for row in view.rows:
        aside = f" {clean(row.aside)}" if row.aside else ""
        lines.append(
            f"{row.count} {row.state}{_left(row)}{aside} in {clean(row.place)} "
            f"({', '.join(row.container_ids)}): "
            f"{row.verdict}; {'' if row.must_go else f'{_best(row)}; '}"
            f"{discarded(row.last_day, row.why_no_last_day)}"
        )
        lines += [f"  why: {clean(reason)}" for reason in row.reasons]
    for first, steps in view.chain:
        lines += [f"step for {first}: {clean(step)}" for step in steps]
    lines += [f"view: {clean(one)}" for one in view.views]
    lines += [f"gone: {clean(one)}" for one in view.gone]
    lines += [f"care: {clean(one)}" for one in view.cautions]
    lines += [f"history: {clean(one)}" for one in view.history]
    lines += [f"source: {clean(one)}" for one in view.sources]
    return lines


def _left(row: DueRow) -> str:
    """How much is in it, where its size does not say so."""
    if not row.amount:
        return ""
    return f" with {row.amount}" + (" each" if row.count > 1 else "")


def log(found: Sequence[LogLine]) -> list[str]:
    """One event a line, its id last: `undo` takes it."""
    return [_event(one) for one in found] or ["Nothing has happened yet."]


def _event(one: LogLine) -> str:
    hour = f" {one.at}" if one.at else ""
    undone = " (undone)" if one.undone else ""
    day = say(date.fromisoformat(one.day))
    return f"{day}{hour}: {clean(one.says)}{undone} [{one.id}]"


def jobs(rows: Sequence[JobRow]) -> list[str]:
    """The small jobs, the oldest first, and under them how each is done."""
    if not rows:
        return ["Nothing is due: `pantry-tui jobs --within 30d` shows what comes."]
    cells = [
        (one.due.isoformat(), "late" if one.overdue else "", one.code, one.food, one.job, one.place)
        for one in rows
    ]
    lines = table(("due", "", "code", "food", "job", "place"), cells)
    how = dict.fromkeys(f"{one.job}: {one.how} {one.source}." for one in rows)
    return [*lines, *map(clean, how)]
