"""The sheet for the cupboard door: the due list as the screen has it, a box before each line.

A sheet hangs for weeks, so a date on it is whole and says its kind. It is to stay one page of A4 or
Letter: much that is only later is counted and not listed, and so is of what is past best and still
safe that which has no room, what has been past it longest being listed first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import clean, counted, singular
from pantry_tui.core.vessels import vessel_word
from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Sheet
from pantry_tui.services.stock import view
from pantry_tui.services.stock.lines import NEAR, PARTS
from pantry_tui.services.stock.rows import DueRow

HEADS = ("", "code", "food", "left", "where", "until")
#: So many lines that are only later are counted and not listed; fewer are listed.
LISTED = 12
#: So many lines fit on a page, their heads with them (page.py).
PAGE = 60
#: What is ticked with a pen.
BOX = "[ ]"
#: In the place of a day, since the two hours may be over before anybody reads it.
TOO_WARM = "too warm: 2 hours only"
IN_DOUBT = "In doubt: do not eat"
OVER = {
    "must go": "Must go: do not eat",
    "open": "Open and thawed",
    "eat soon": "Eat soon",
    "past best": "Past best, still safe",
    "needs care": "Needs care",
    "later": "Later",
    "unknown": "Unknown: no published figure, or in doubt",
}


def door(p: Pantry) -> Sheet:
    """The due list to hang up; what is only later is a note."""
    rows = view.due(p)
    later = [
        row
        for row in rows
        if row.head == "later" and row.verdict is Verdict.SOUND and not _near(p, row)
    ]
    if len(later) < LISTED:
        later = []
    shown = [row for row in rows if row not in later]
    beyond = _beyond(shown)
    shown = [row for row in shown if row not in beyond]
    lines: list[tuple[str, ...]] = []
    parts = []
    for word in PARTS:
        mine = [row for row in shown if row.part == word]
        if mine:
            count = sum(row.count for row in mine)
            parts.append((f"{OVER[word]}: {count}", len(mine)))
            lines += map(cells, mine)
    return Sheet(
        f"What to eat first, {dates.say(p.today)}",
        HEADS,
        tuple(lines),
        (*_beside(shown, later, beyond), CAUTION),
        tuple(parts),
    )


def _near(p: Pantry, row: DueRow) -> bool:
    """Whether it must be eaten within the week for which the sheet hangs at least."""
    return row.discard_after is not None and row.discard_after <= p.today + NEAR


def _beyond(shown: Sequence[DueRow]) -> list[DueRow]:
    """What is past best, still safe, and has no room on the page: what was good the longest."""
    heads = len({row.part for row in shown})
    past = [row for row in shown if row.head == "past best" and row.usable]
    room = max(PAGE - heads - (len(shown) - len(past)), 0)
    return sorted(past, key=lambda row: (row.best_by or date.max, row.code))[room:]


def _beside(
    shown: Sequence[DueRow], later: Sequence[DueRow], beyond: Sequence[DueRow]
) -> Iterator[str]:
    if beyond:
        number = sum(row.count for row in beyond)
        yield f"Past best, still safe, not listed: {counted(number, 'containers')} more."
    if later:
        yield f"Later, not listed: {counted(sum(row.count for row in later), 'containers')}."
    said: dict[str, dict[str, None]] = {}
    for row in shown:
        for one in row.standing:
            said.setdefault(one, {})[row.code] = None
    for one, codes in said.items():
        yield f"{', '.join(codes)}: {one}"


def cells(row: DueRow) -> tuple[str, ...]:
    """One line: a box, what it is, how much is left, where, its date with its kind."""
    where = row.place.rsplit("›", 1)[-1].strip()
    method = "" if row.method.value in row.food else f", {row.method}"
    return tuple(
        clean(cell) if cell != BOX else cell
        for cell in (BOX, row.code, f"{row.food}{method}{row.remark}", left(row), where, until(row))
    )


def left(row: DueRow) -> str:
    """ "7 jars", "38 lb"."""
    if row.amount:
        return row.held
    vessel = vessel_word(row.size)
    return f"{row.count} {singular(vessel) if row.count == 1 else vessel}".rstrip()


def until(row: DueRow) -> str:
    """A whole date with its kind; safety before quality where it comes first."""
    if row.verdict in UNFIT:
        return row.verdict.value
    if row.in_doubt:
        # Why it has no day, in the words of the due list, and what a paper has to add.
        return f"{instead_of_day(row.why_no_last_day)}: do not eat"
    if row.hurried:
        return TOO_WARM
    best, last = row.good_until, row.discard_after
    if last is not None and (best is None or last <= best or row.best_over):
        return f"eat by {dates.say(last)}"
    if best is not None and row.verdict is not Verdict.UNKNOWN:
        return f"best by {dates.say(best)}"
    return instead_of_day(row.discard_after_why)
