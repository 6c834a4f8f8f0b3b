"""Looking: what is due, what stands where, one batch whole."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator
from datetime import date
from typing import Any

from dateutil.relativedelta import relativedelta

from pantry_tui.core import dates
from pantry_tui.core.keeping.explain import chain
from pantry_tui.core.keeping.exposure import stretches
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rotation import UNFIT
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import SEVERITY, Acidity, Method, State, Verdict
from pantry_tui.services.books.logbook import log
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import BatchView, DueRow, Shelf
from pantry_tui.services.stock.pick import batch_named, name_of

#: The pointer that stands wherever food is judged unfit.
HELP = (
    "Never taste to find out. Ask your local food-safety authority; if anyone feels ill, "
    "get medical help at once."
)


def rows_of(p: Pantry, containers: Iterable[Container]) -> list[DueRow]:
    """Containers of one batch, place, state and history grouped and judged; most urgent first."""
    groups: dict[tuple[object, ...], list[Container]] = defaultdict(list)
    for c in containers:
        if c.here:
            same = (c.batch, c.place, c.state, c.stays, c.amount, c.signs, c.looked, c.reserved)
            groups[same].append(c)
    return sorted((_row(p, group) for group in groups.values()), key=_by_date)


def _row(p: Pantry, group: list[Container]) -> DueRow:
    first = group[0]
    batch = p.stock.batches[first.batch]
    judged = p.judge(first)
    return DueRow(
        code=batch.code,
        container_ids=tuple(name_of(p, c) for c in sorted(group, key=lambda c: c.number)),
        food=batch.food.name,
        method=batch.method,
        place=p.where(first),
        count=len(group),
        state=first.state,
        verdict=judged.verdict,
        best_by=judged.best_by,
        discard_after=judged.discard_after,
        days_left=days_left(judged, p.today),
        reasons=judged.reasons,
        size=" ".join(part for part in (first.amount, batch.size) if part),
        amount=first.amount,
        reserved=first.reserved,
    )


def days_left(judged: Judgement, today: date) -> int | None:
    """Days to the next date that still lies ahead; negative past the last one; None undated."""
    dated = [day for day in (judged.best_by, judged.discard_after) if day is not None]
    if not dated:
        return None
    if judged.discard_after is not None and judged.discard_after < today:
        return (judged.discard_after - today).days
    ahead = [day for day in dated if day >= today]
    return (min(ahead) if ahead else max(dated)).toordinal() - today.toordinal()


def _rank(row: DueRow) -> int:
    if row.verdict in UNFIT:
        return 0
    return 1 if row.state in (State.OPEN, State.THAWED) else 2


def _by_date(row: DueRow) -> tuple[bool, date, int, str, tuple[str, ...]]:
    dated = min(row.best_by or date.max, row.discard_after or date.max)
    rank = _rank(row)
    return (dated == date.max and rank == 2, dated, rank, row.code, row.container_ids)


def eating_order(row: DueRow) -> tuple[object, ...]:
    """What must go first, then what is open or thawed, then the nearest date."""
    return (_rank(row), _by_date(row))


#: How a list of stock may be sorted; the first is the everyday one.
ORDERS: dict[str, Callable[[DueRow], Any]] = {
    "what to eat first": eating_order,
    "date": _by_date,
    "food": lambda row: (row.food, _by_date(row)),
    "place": lambda row: (row.place.lower(), _by_date(row)),
    "verdict": lambda row: (SEVERITY.index(row.verdict), _by_date(row)),
    "method": lambda row: (row.method, _by_date(row)),
}


def months(p: Pantry, ahead: int = 12) -> list[tuple[str, int]]:
    """How many containers pass a date in each of the months ahead: ("Jan 2027", 14)."""
    first = p.today.replace(day=1)
    names = [first + relativedelta(months=n) for n in range(ahead)]
    found = {name: 0 for name in names}
    for row in due(p):
        days = [day for day in (row.best_by, row.discard_after) if day and day >= p.today]
        month = min(days).replace(day=1) if days else None
        if month in found:
            found[month] += row.count
    return [(dates.say(name).split(" ", 2)[2], count) for name, count in found.items()]


def due(p: Pantry, within: int | None = None, place: str | None = None) -> list[DueRow]:
    """Everything sorted by its nearer date; undated last. `within` days keeps what falls due
    by then, and always what is past a date, unfit, open or unknown."""
    rows = everything(p)
    if place:
        paths = p.place_paths()
        within_ = {paths[id_] for id_ in inside(p, p.find_place(place).id)}
        rows = [row for row in rows if row.place in within_]
    if within is None:
        return rows
    return [
        row
        for row in rows
        if (row.days_left is not None and row.days_left <= within)
        or row.verdict not in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.TEND)
    ]


def everything(p: Pantry) -> list[DueRow]:
    """All that stands, by date; reckoned once for each state of the log and each day."""
    here = (c for c in p.stock.containers.values() if c.here)
    return list(p.once("rows", lambda: rows_of(p, here)))


def rows_named(p: Pantry, names: Collection[str]) -> dict[str, DueRow]:
    """The row in which each container stands: "7C/1" -> row."""
    return {name: row for row in everything(p) for name in row.container_ids if name in names}


def inside(p: Pantry, root: str) -> set[str]:
    """A place and all places in it."""
    found = {root}
    for _ in p.stock.places:
        more = {id_ for id_, pl in p.stock.places.items() if pl.parent in found} - found
        if not more:
            break
        found |= more
    return found


def shelves(p: Pantry, place: str | None = None) -> list[Shelf]:
    """Every place in path order with what stands in it itself (not in places inside it)."""
    wanted = set(p.stock.places) if not place else inside(p, p.find_place(place).id)
    standing_in: dict[str, list[DueRow]] = defaultdict(list)
    for row in everything(p):
        standing_in[row.place].append(row)
    paths = p.place_paths()
    found = []
    for id_ in sorted(wanted, key=lambda one: paths[one].lower()):
        here = p.stock.places[id_]
        rows = tuple(standing_in[paths[id_]])
        count = sum(row.count for row in rows)
        found.append(
            Shelf(paths[id_], here.climate.value, here.temperature_f, here.capacity, count, rows)
        )
    return found


def find(p: Pantry, text: str) -> list[DueRow]:
    """Stock whose food, other names, group, method, place, state, verdict, code or note holds
    every word of `text`."""
    words = text.lower().split()
    code = normal_code(text)
    return [
        row
        for row in everything(p)
        if (code and row.code == code) or _holds(_words_of(p, row), words)
    ]


def _holds(hay: str, words: Iterable[str]) -> bool:
    return all(word in hay for word in words)


def _words_of(p: Pantry, row: DueRow) -> str:
    """All by which a row may be found."""
    batch = p.batch(row.code)
    assert batch is not None
    known = p.tables.index.find(batch.food.name)
    names = " ".join(known.aliases) if known else ""
    return (
        f"{row.food} {names} {batch.food.group} {row.method} {row.place} {row.state} "
        f"{row.verdict} {batch.note} {row.code} {row.aside} "
        f"{' '.join(str(one) for one in batch.tasted)}"
    ).lower()


def cautions(batch: Batch, verdicts: Iterable[Verdict]) -> tuple[str, ...]:
    """The short cautions for a batch, where the decision is taken."""
    found = []
    if any(v in (Verdict.DO_NOT_TASTE, Verdict.DISCARD, Verdict.UNKNOWN) for v in verdicts):
        found.append(HELP)
    canned = batch.method in (Method.BOILING_WATER, Method.PRESSURE)
    if canned:
        found.append(
            "Only for jars from a tested process with the seal still tight; a bulging, leaking "
            "or spurting jar stays shut and goes."
        )
    if batch.method is Method.PRESSURE and batch.food.acidity is Acidity.LOW_ACID:
        found.append("Where the process is in doubt, do not open it: ask before you eat.")
    if batch.method is Method.IN_OIL:
        found.append("In oil: refrigerator only and days only; botulism gives no smell.")
    return tuple(found)


def show(p: Pantry, code: str) -> BatchView:
    """One batch with its containers, dates, why, sources and history. Raises BadInput."""
    batch = batch_named(p, code)
    everything = p.containers_of(batch)
    rows = tuple(rows_of(p, everything))
    cited: dict[str, None] = {}
    for c in everything:
        if c.here:
            for rule in p.judge(c).rules:
                cited[f"{p.cite(rule)}: {rule.wording}"] = None
    gone = tuple(
        f"{name_of(p, c)} {c.fate} {dates.say(c.ended) if c.ended else ''}".strip()
        for c in everything
        if not c.here
    )
    return BatchView(
        code=batch.code,
        food=batch.food.name,
        group=batch.food.group.value,
        acidity=batch.food.acidity.value,
        method=batch.method,
        made=batch.made,
        process=batch.process,
        note=batch.note,
        rows=rows,
        gone=gone,
        sources=tuple(cited),
        cautions=cautions(batch, [row.verdict for row in rows]),
        history=tuple(log(p, batch.code)),
        chain=tuple(_chains(p, batch, rows)),
        tasted=tuple(f"{dates.say(one.day)}: {one}" for one in batch.tasted),
    )


def _chains(
    p: Pantry, batch: Batch, rows: Iterable[DueRow]
) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Every step behind the dates of each row, with its source."""
    by_name = {name_of(p, c): c for c in p.containers_of(batch)}
    paths = p.place_paths()
    for row in rows:
        stays = stretches(by_name[row.container_ids[0]].stays, p.stock.places)
        steps = chain(batch, stays, p.book_of_rules, lambda id_: paths.get(id_, "?"), p.cite)
        yield row.container_ids[0], tuple(steps)


def worst(rows: Iterable[DueRow]) -> Verdict | None:
    """The worst verdict among rows."""
    return min((row.verdict for row in rows), key=SEVERITY.index, default=None)
