"""Paper for the cupboard door: sheets and lid labels.

Plain text and HTML that any browser prints. Whatever a person typed is escaped, so that no name
can break a sheet.
"""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from pantry_tui.core import dates
from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.fold_place import cut_fact
from pantry_tui.core.log.payloads import Outage
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import clean
from pantry_tui.core.words import MARK, SEVERITY, Method, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.output.door import BOX, door
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.rows import Label, Sheet
from pantry_tui.services.stock import outage, view
from pantry_tui.services.stock.pick import batch_named, name_of
from pantry_tui.services.stock.rows import DueRow

_STYLE = (
    "body{font-family:sans-serif;margin:1.5em}table{border-collapse:collapse;width:100%}"
    "td,th{border-bottom:1px solid #888;text-align:left;padding:.15em .5em;vertical-align:top}"
    "td:last-child{white-space:nowrap}.part{padding-top:.6em;border-bottom:2px solid #000}"
    ".box{display:inline-block;width:.8em;height:.8em;border:1px solid #000}"
    "@page{margin:10mm}@media print{body{margin:0;font-size:8.5pt}h1{font-size:13pt;margin:0}"
    "tr{break-inside:avoid}}"
    ".labels{display:grid;grid-template-columns:repeat(3,1fr);gap:.4em}"
    ".label{border:1px solid #444;padding:.5em;break-inside:avoid}.code{font-size:1.8em;"
    "font-weight:bold}@media print{.label{border-color:#000}}"
)
HEADS = ("code", "food", "count", "place", "best by", "discard after", "verdict")


def sheet(p: Pantry, what: str) -> Sheet:
    """`due`, `opened`, `week`, `outage`, or the content of a place. Raises BadInput, Refused."""
    wanted = what.strip().lower()
    if wanted == "due":
        return door(p)
    if wanted in ("opened", "open"):
        rows = [row for row in view.due(p) if row.state in (State.OPEN, State.THAWED)]
        return _sheet(p, "Open or thawed: finish these first", rows)
    if wanted == "outage":
        return _outage(p)
    if wanted == "week":
        return _fetch(p)
    place = p.find_place(what)
    rows = view.due(p, place=p.place_paths()[place.id])
    return _sheet(p, p.place_paths()[place.id], sorted(rows, key=lambda r: (r.food, r.code)))


def _sheet(p: Pantry, title: str, rows: Sequence[DueRow]) -> Sheet:
    lines = tuple(_cells(row) for row in rows)
    standing = dict.fromkeys(f"{row.code}: {one}" for row in rows for one in row.standing)
    return Sheet(f"{title}, {dates.say(p.today)}", HEADS, lines, (*standing, CAUTION))


def _fetch(p: Pantry) -> Sheet:
    """The week's fetch list: one trip, place by place, with what starts to thaw when."""
    view_ = weeks.week(p)
    taken = (*view_.take, *view_.beside)
    rows = tuple(
        (
            clean(take.place),
            take.code,
            clean(take.food),
            take.amount or str(take.count),
            dates.say(take.day),
            dates.say(take.thaw_by) if take.thaw_by else "",
        )
        for take in sorted(taken, key=lambda one: (one.place.lower(), one.day, one.code))
    )
    title = f"Fetch list, {dates.say(view_.start)} to {dates.say(view_.end)}"
    standing = dict.fromkeys(f"{take.code}: {one}" for take in taken for one in take.standing)
    notes = (*view_.notes, *standing, CAUTION)
    return Sheet(title, ("place", "code", "food", "count", "eat on", "thaw from"), rows, notes)


def _outage(p: Pantry) -> Sheet:
    """What the last power cut did to every item, what to use first on top."""
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
    title = f"{outage.of_length(cut).capitalize()}, {dates.say(event.day)}"
    return Sheet(title, ("container", "food", "place", "what to do"), cells, (CAUTION,))


def _cells(row: DueRow) -> tuple[str, ...]:
    return tuple(
        clean(cell)
        for cell in (
            row.code,
            row.food + row.remark,
            row.held,
            row.place,
            dates.say(row.good_until) if row.good_until else "none",
            dates.say(row.discard_after)
            if row.discard_after
            else instead_of_day(row.discard_after_why),
            f"{MARK[row.verdict]} {row.verdict}",
        )
    )


def sheet_text(page: Sheet) -> str:
    """In columns, for a plain printer."""
    if not page.rows:
        return f"{page.title}\n\nNothing.\n"
    rows = (page.heads, *page.rows)
    widths = [max(len(row[i]) for row in rows) for i in range(len(page.heads))]
    head, *lines = (
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    )
    over = _over(page)
    body = [head]
    for number, line in enumerate(lines):
        body += [*(["", over[number]] if number in over else []), line]
    return "\n".join([page.title, "", *body, "", *page.notes]).rstrip() + "\n"


def sheet_html(page: Sheet) -> str:
    """A page to print."""
    head = "".join(f"<th>{escape(one)}</th>" for one in page.heads)
    over = _over(page)
    body = "".join(
        (_part(over[number], len(page.heads)) if number in over else "")
        + "<tr>"
        + "".join(f"<td>{_ticked(cell)}</td>" for cell in row)
        + "</tr>"
        for number, row in enumerate(page.rows)
    )
    notes = "".join(f"<p>{escape(one)}</p>" for one in page.notes)
    return _page(page.title, f"<table><tr>{head}</tr>{body}</table>{notes}")


def _over(page: Sheet) -> dict[int, str]:
    """The first row of each part, and what stands over it."""
    found: dict[int, str] = {}
    at = 0
    for words, rows in page.parts:
        found[at] = words
        at += rows
    return found


def _part(words: str, across: int) -> str:
    return f'<tr><th class="part" colspan="{across}">{escape(words)}</th></tr>'


def _ticked(cell: str) -> str:
    """A cell; a box to tick is drawn."""
    return '<span class="box"></span>' if cell == BOX else escape(cell)


def _page(title: str, body: str) -> str:
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}'
        f"</title><style>{_STYLE}</style></head><body><h1>{escape(title)}</h1>{body}</body></html>\n"
    )


def labels(p: Pantry, codes: Sequence[str] = ()) -> list[Label]:
    """One label a container that stands, for these codes or for every batch put up today."""
    if codes:
        batches = [batch_named(p, code) for code in codes]
    else:
        batches = [b for b in p.batches() if b.made == p.today]
        if not batches:
            raise BadInput("Nothing was put up today: name the lid codes to print.")
    found = []
    for batch in batches:
        for container in p.containers_of(batch):
            if not container.here:
                continue
            found.append(_label(batch, p.judge(container)))
    return found


def _label(batch: Batch, judged: Judgement) -> Label:
    """A best-by date that lies behind the discard date is left out: the earlier one counts."""
    best, safe = judged.best_by, judged.discard_after
    if best and safe and safe < best:
        best = None
    return Label(
        batch.code,
        clean(batch.food.name),
        batch.method.value,
        dates.say(batch.made) if batch.made else "unknown",
        dates.say(best) if best else "" if safe else "no published figure",
        " ".join((_caution(batch, judged.verdict), *judged.standing)),
        dates.say(safe) if safe else "",
    )


def _caution(batch: Batch, verdict: Verdict) -> str:
    """The one caution that must stand on the lid."""
    if verdict in UNFIT:
        return f"{verdict.value.upper()}."
    if batch.method in PROCESSED:
        return "Bulging or leaking: do not open."
    if batch.method is Method.IN_OIL:
        return "Keep cold; days only."
    if batch.method in (Method.FROZEN, Method.FREEZER_JAM):
        return "Thaw in the fridge."
    if batch.method.needs_cold:
        return "Keep cold."
    return "Mould or bad smell: discard."


def label_text(found: Sequence[Label]) -> str:
    """Up to six lines a label, an empty line between, for a label printer."""
    lines = (
        (f"{one.code}  {one.food}", one.method, f"made {one.made}", *_dates(one), one.caution)
        for one in found
    )
    return "\n\n".join("\n".join(label) for label in lines) + "\n"


def _dates(label: Label) -> list[str]:
    found = [f"best by {label.best_by}"] if label.best_by else []
    return found + ([f"discard after {label.discard_after}"] if label.discard_after else [])


def label_html(found: Sequence[Label]) -> str:
    """Three labels across."""
    body = "".join(
        f'<div class="label"><div class="code">{escape(one.code)}</div><b>{escape(one.food)}</b>'
        f"<br>{escape(one.method)}<br>made {escape(one.made)}<br>"
        f"{'<br>'.join(map(escape, _dates(one)))}<br>{escape(one.caution)}</div>"
        for one in found
    )
    return _page("Lid labels", f'<div class="labels">{body}</div>')
