"""Looking: what is due, what stands where, one batch whole."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from typing import TYPE_CHECKING

from pantry_tui.core.safety.caution import CAUTION, COOK_IT, cautioned, must_be_cooked
from pantry_tui.core.words import SEVERITY, Method, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.lines import inside, lines, of_code, rows
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.rows import DueRow, Shelf
from pantry_tui.store.damage import Damaged
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.core.model import Batch


def note_aside(p: Pantry, batch: Batch) -> str:
    """What is said beside a note that decides nothing; "" also of one that is but the food's own
    name as it was typed (mince, which is ground beef here)."""
    from pantry_tui.core.keeping.doubt import of_a_silent_note  # which no list needs
    from pantry_tui.services.batchwork.prepared import said_anywhere

    if said_anywhere(batch.note, batch.method).keys() & dict(batch.process).keys():
        return ""  # it went into the record
    named = p.facts(batch.note) if batch.note else None
    if named is not None and named.name == batch.food.name:
        return ""
    return of_a_silent_note(batch)


def rows_of(p: Pantry, batch: Batch) -> list[DueRow]:
    """The rows of one batch, by date. Raises StoreError where they are not all of what stands of
    it by the log: the index of lid codes and the counts may both be led astray."""
    found = of_code(p, batch.code)
    if not _all_there(p, batch, found):
        if not p.store.writing:  # another window may have written between the two: both again
            p.refresh()
        found = of_code(p, batch.code)
        with reading(p.path):
            if not _all_there(p, batch, found):
                raise Damaged(f"lines of {batch.code} are lost")
    return found


def _all_there(p: Pantry, batch: Batch, found: list[DueRow]) -> bool:
    lying = sum(len(row.container_ids) for row in found)
    return lying == sum(c.here for c in p.containers_of(batch))


def months(p: Pantry, ahead: int = 12) -> list[tuple[str, int]]:
    """How many containers pass a date in each of the months ahead: ("Jan 2027", 14)."""
    from pantry_tui.services.stock.months import months_ahead

    return [(one.name, one.best + one.last) for one in months_ahead(p, ahead)]


def due(p: Pantry, within: int | None = None, place: str | None = None) -> list[DueRow]:
    """Everything under its heads, in each the nearer date first. `within` days keeps what falls
    due by then, and always what is past a date, unfit, open or unknown."""
    source = lines(p, place=place)
    found = list(source.rows(0, source.total))
    if within is None:
        return found
    return [
        row
        for row in found
        if (row.days_left is not None and row.days_left <= within)
        or row.verdict not in (Verdict.SOUND, Verdict.EAT_SOON, Verdict.TEND)
    ]


def everything(p: Pantry) -> list[DueRow]:
    """All that stands, by date; reckoned once for each state of the log and each day."""

    ready(p)
    return list(p.once("rows", lambda: rows(p)))


def shown(p: Pantry) -> Mapping[str, DueRow]:
    """The row in which each container stands that is here: "7C/1" -> what it is, and till when."""
    ready(p)

    def by_name() -> dict[str, DueRow]:
        return {name: row for row in everything(p) for name in row.container_ids}

    return p.once("shown", by_name)


def rows_named(p: Pantry, names: Collection[str]) -> dict[str, DueRow]:
    """The row in which each container stands: "7C/1" -> row."""
    rows = shown(p)
    return {name: rows[name] for name in names if name in rows}


def shelves(p: Pantry, place: str | None = None) -> list[Shelf]:
    """Every place in path order with what stands in it itself (not in places inside it)."""
    # What is due is read off the tables without the model of places.
    from pantry_tui.core.keeping.weather import warmth_f

    wanted = set(p.places) if not place else inside(p, p.find_place(place).id)
    standing_in: dict[str, list[DueRow]] = defaultdict(list)
    paths = p.place_paths()
    twice = len(set(paths.values())) < len(paths)
    for row in everything(p):
        standing_in[_place_of(p, row) if twice else row.place].append(row)
    found = []
    for id_ in sorted(wanted, key=lambda one: paths[one].lower()):
        here = p.places[id_]
        mine = tuple(standing_in[id_ if twice else paths[id_]])
        count = sum(row.count for row in mine)
        found.append(
            Shelf(
                paths[id_], here.climate.value, warmth_f(id_, p.places), here.capacity, count, mine
            )
        )
    return found


def _place_of(p: Pantry, row: DueRow) -> str:
    """The id of the place, where an older merge left two of one name."""
    batch = p.batch(row.code)
    held = p.containers_of(batch) if batch is not None else ()
    number = row.container_ids[0].rpartition("/")[2]
    return next((one.place for one in held if str(one.number) == number), "")


def find(p: Pantry, text: str) -> list[DueRow]:
    """Stock whose food, other names, group, method, place, state, verdict, code or note holds
    every word of `text`."""
    source = lines(p, order="date", text=text)
    return list(source.rows(0, source.total))


def cautions(batch: Batch, judged: Iterable[tuple[Verdict, bool]]) -> tuple[str, ...]:
    """The short cautions for a batch, where the decision is taken; `judged` has each verdict of it
    and whether it is offered at table."""
    from pantry_tui.core.canned import PROCESSED  # the model, which no list needs
    from pantry_tui.core.keeping.harm import is_tin

    found = []
    if any(cautioned(verdict, usable) for verdict, usable in judged):
        found.append(CAUTION)
    canned = batch.method in PROCESSED
    if canned:
        found.append(
            "Only for jars from a tested process with the seal still tight; a bulging, leaking "
            "or spurting jar is not opened: discard it closed, in two bags."
        )
    if batch.method is Method.PRESSURE and not batch.food.is_acid:
        found.append("Where the process is in doubt, do not open it: ask before you eat.")
    if must_be_cooked(batch.food, batch.method) and not is_tin(batch):
        found.append(COOK_IT)
    if batch.method is Method.IN_OIL:
        found.append("In oil: refrigerator only and days only; botulism gives no smell.")
    return tuple(found)


def worst(rows: Iterable[DueRow]) -> Verdict | None:
    """The worst verdict among rows."""
    return min((row.verdict for row in rows), key=SEVERITY.index, default=None)
