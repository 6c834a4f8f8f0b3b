"""Paper for the cupboard door: sheets.

Plain text and HTML that any browser prints. Whatever a person typed is escaped, so that no name
can break a sheet.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from html import escape

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.fold_place import cut_fact
from pantry_tui.core.log.payloads import Outage
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import begun, clean
from pantry_tui.core.words import MARK, SEVERITY, State
from pantry_tui.errors import Refused
from pantry_tui.services.output.door import BOX, IN_DOUBT, OVER, TOO_WARM, door
from pantry_tui.services.output.kitchen import kitchen
from pantry_tui.services.output.page import page
from pantry_tui.services.output.plain_words import plainly
from pantry_tui.services.output.stocktake import PEN, count_sheet
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Sheet
from pantry_tui.services.stock import outage, view
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.rows import DueRow

HEADS = ("code", "food", "count", "place", "best by", "discard after", "verdict")


def sheet(p: Pantry, what: str) -> Sheet:
    """`due`, `opened`, `week`, `outage`, `count`, `count PLACE`, or the content of a place, without
    a word of the command line. Raises BadInput, Refused."""
    return _plain(_sheet_of(p, what))


def _plain(found: Sheet) -> Sheet:
    return replace(
        found,
        rows=tuple(tuple(map(plainly, row)) for row in found.rows),
        notes=tuple(map(plainly, found.notes)),
        more=tuple(map(_plain, found.more)),
    )


def _sheet_of(p: Pantry, what: str) -> Sheet:
    wanted = what.strip().lower()
    if wanted == "due":
        return door(p)
    if wanted in ("opened", "open"):
        return _opened(p)
    if wanted == "outage":
        return _outage(p)
    if wanted == "week":
        return kitchen(p)
    if wanted.partition(" ")[0] == "count":
        return count_sheet(p, what.strip()[len("count") :].strip())
    place = p.find_place(what)
    rows = view.due(p, place=p.place_paths()[place.id])
    return _sheet(p, p.place_paths()[place.id], sorted(rows, key=lambda r: (r.food, r.code)))


def _opened(p: Pantry) -> Sheet:
    """What is to be finished stands first; what must not be eaten has its place under it."""
    rows = [row for row in view.due(p) if row.state in (State.OPEN, State.THAWED)]
    lots = (
        ("", [row for row in rows if row.usable]),
        (IN_DOUBT, [row for row in rows if not row.usable and row.verdict not in UNFIT]),
        (OVER["must go"], [row for row in rows if row.verdict in UNFIT]),
    )
    found = _sheet(p, "Open or thawed: finish these first", [row for _, lot in lots for row in lot])
    return replace(found, parts=tuple((words, len(lot)) for words, lot in lots if lot))


def _sheet(p: Pantry, title: str, rows: Sequence[DueRow]) -> Sheet:
    lines = tuple(_cells(row) for row in rows)
    standing = dict.fromkeys(f"{row.code}: {one}" for row in rows for one in row.standing)
    return Sheet(f"{title}, {dates.say(p.today)}", HEADS, lines, (*standing, CAUTION))


def _outage(p: Pantry) -> Sheet:
    """What the last power cut did to every item, what must go on top."""
    cuts = [event for event in p.standing if isinstance(event.payload, Outage)]
    if not cuts:
        raise Refused("No power cut is booked: see `pantry-tui outage --help`.")
    day, last = cuts[-1].day, cuts[-1].payload
    assert isinstance(last, Outage)
    if not last.marks:
        return _judged_cut(p, cuts[-1])
    rows = []
    for mark in last.marks:
        container = p.stock.containers[mark.container]
        food = p.stock.batches[container.batch].food.name
        where = p.where(container) if container.here else container.fate
        worse = SEVERITY.index(mark.verdict)
        rows.append((worse, name_of(p, container), food, where, mark.words))
    cells = tuple(
        (code, clean(food), clean(where), words)
        for _, code, food, where, words in sorted(rows, reverse=True)
    )
    title = f"Power cut of {last.hours:g} h, {dates.say(day)}"
    return Sheet(title, ("container", "food", "place", "verdict"), cells, (CAUTION,))


def _judged_cut(p: Pantry, event: Event) -> Sheet:
    """The same of a cut that the judge knows by its hours."""
    payload = event.payload
    assert isinstance(payload, Outage)
    place = p.places.get(payload.place)
    if place is None:
        raise Refused("The place of the last power cut is no more.")
    cut = cut_fact(payload)
    cells = tuple(
        (", ".join(row.container_ids), clean(row.food), clean(row.place), row.action)
        for row in outage.judged_before(p, place, cut)
    )
    title = f"{begun(outage.of_length(cut))}, {dates.say(event.day)}"
    return Sheet(title, ("container", "food", "place", "what to do"), cells, (CAUTION,))


def _last_day(row: DueRow) -> str:
    """Of what is in doubt no day is told that would say that it may be eaten until then; why it has
    none is said as the due list says it."""
    if row.hurried and not row.in_doubt:
        return TOO_WARM
    return dates.say(row.last_day) if row.last_day else instead_of_day(row.why_no_last_day)


def _cells(row: DueRow) -> tuple[str, ...]:
    return tuple(
        clean(cell)
        for cell in (
            row.code,
            row.food + row.remark,
            row.held,
            row.place,
            dates.say(row.good_until) if row.good_until else "none",
            _last_day(row),
            f"{MARK[row.verdict]} {row.verdict}",
        )
    )


def sheet_text(found: Sheet) -> str:
    """In columns, for a plain printer."""
    parts = [found.title, "", *_table_text(found), "", *found.notes]
    for one in found.more:
        parts += ["", "", sheet_text(one).rstrip("\n")]
    return "\n".join(parts).rstrip() + "\n"


def _table_text(found: Sheet) -> list[str]:
    if not found.rows:
        return ["Nothing."]
    rows = (found.heads, *found.rows)
    widths = [max(len(row[i]) for row in rows) for i in range(len(found.heads))]
    head, *lines = (
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    )
    over = _over(found)
    body = [head]
    for number, line in enumerate(lines):
        body += [*(["", over[number]] if number in over else []), line]
    return body


def sheet_html(found: Sheet) -> str:
    """A page to print."""
    more = "".join(f"<h2>{escape(one.title)}</h2>{_table(one)}" for one in found.more)
    return page(found.title, _table(found) + more)


def _table(found: Sheet) -> str:
    if not found.rows:
        return "<p>Nothing.</p>" + _notes(found)
    head = "".join(f"<th>{escape(one)}</th>" for one in found.heads)
    over = _over(found)
    body = "".join(
        (_part(over[number], len(found.heads)) if number in over else "")
        + "<tr>"
        + "".join(map(_cell, row))
        + "</tr>"
        for number, row in enumerate(found.rows)
    )
    kind = ' class="loose"' if found.loose else ""
    return f"<table{kind}><tr>{head}</tr>{body}</table>{_notes(found)}"


def _notes(found: Sheet) -> str:
    return "".join(f"<p>{escape(one)}</p>" for one in found.notes)


def _over(found_on: Sheet) -> dict[int, str]:
    """The first row of each part, and what stands over it, where anything does."""
    found: dict[int, str] = {}
    at = 0
    for words, rows in found_on.parts:
        if words:
            found[at] = words
        at += rows
    return found


def _part(words: str, across: int) -> str:
    return f'<tr><th class="part" colspan="{across}">{escape(words)}</th></tr>'


def _cell(cell: str) -> str:
    """A cell: a box to tick and room for a pen are drawn, and no day is broken over two lines."""
    drawn = {BOX: '<span class="box"></span>', PEN: '<span class="pen"></span>'}
    day = ' class="day"' if re.search(r" \d{4}$", cell) else ""
    return f"<td{day}>{drawn.get(cell) or escape(cell)}</td>"
