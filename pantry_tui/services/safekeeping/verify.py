"""Is the store what was written to it? The log is folded again and everything is compared."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from pantry_tui.core.log.events import Event
from pantry_tui.core.log.payloads import Correct, PlaceAdded, PutUp
from pantry_tui.core.log.whole import fold
from pantry_tui.core.text import clean
from pantry_tui.core.vessels import wrong_size
from pantry_tui.errors import PantryError, StoreError
from pantry_tui.reference import rules_fingerprint
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock.came_of import row_of
from pantry_tui.services.stock.ladders import lines_of
from pantry_tui.services.stock.ready import ready
from pantry_tui.store import copies, damage, log, past, places
from pantry_tui.store import lines as table
from pantry_tui.store.lines import Line
from pantry_tui.store.rebuild import fill, new_store
from pantry_tui.store.salvage import salvage
from pantry_tui.store.soundness import Hurt, copied, look
from pantry_tui.store.store import check_header


@dataclass(frozen=True, slots=True)
class Wound:
    """What is hurt: the id of the event ("" where none is), what is wrong, and the lid codes and
    places that it touched."""

    event: str
    what: str
    touched: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Report:
    """What was looked at and what was found. `events` could be read; `notes` are no damage."""

    path: Path
    events: int
    batches: int
    containers: int
    places: int
    lines: int
    hurt: tuple[Wound, ...]
    notes: tuple[str, ...]
    newest_backup: Path | None

    @property
    def ok(self) -> bool:
        return not self.hurt


@dataclass(frozen=True, slots=True)
class Saved:
    """A new store of what could be read: its events, and how many could not."""

    path: Path
    events: int
    lost: int


def verify(path: Path, today: date) -> Report:
    """Everything is read, and nothing is written to the store. Raises StoreError where there is
    no file at all, or one of another program or version.

    What is found hurt is noted beside it, so that nothing writes to it; such a note goes where
    nothing is hurt.
    """
    _refuse_what_is_none(path)
    events, hurt = look(path)
    stock = fold(events) if not hurt else None
    lines = 0
    if stock is not None:
        lines, more = _folded(path, today)
        hurt += more
    _note(path, hurt)
    newest = copies.newest_sound(path)
    return Report(
        path,
        len(events),
        len(stock.batches) if stock else 0,
        len(stock.containers) if stock else 0,
        len(stock.places) if stock else 0,
        lines,
        tuple(_wounds(hurt, events)),
        (*_ahead(events, today), *_odd_sizes(events)),
        newest.path if newest else None,
    )


def _refuse_what_is_none(path: Path) -> None:
    try:
        check_header(path)
    except StoreError:
        known = copies.made_by_itself(path, copies.folder_of(path)) or damage.noted(path)
        if not (path.is_file() and known):
            raise


def _note(path: Path, hurt: Sequence[Hurt]) -> None:
    if hurt:
        damage.note(path, hurt[0].what)
    else:
        damage.forget(path)


def _ahead(events: Iterable[Event], today: date) -> Iterator[str]:
    """Days to come are no damage: a clock was wrong. They count as today until they come."""
    for event in events:
        if event.day > today:
            yield f"event {event.id} is dated {event.day.isoformat()}, which is still to come"


def _odd_sizes(events: Iterable[Event]) -> Iterator[str]:
    """Sizes that no version ought to have taken: such a container counts as one of nobody knows
    how much."""
    for event in events:
        payload = event.payload
        size = payload.size if isinstance(payload, PutUp | Correct) else None
        if size and wrong_size(size):
            code = f" of {payload.code}" if isinstance(payload, PutUp) else ""
            yield f"event {event.id}: the size{code} is not understood ({clean(size)[:30]})"


def _wounds(hurt: Iterable[Hurt], events: Sequence[Event]) -> Iterator[Wound]:
    names: dict[str, str] = {}
    for event in events:
        payload = event.payload
        if isinstance(payload, PutUp):
            names[payload.batch] = payload.code
        elif isinstance(payload, PlaceAdded):
            names[payload.place] = payload.name
    for one in hurt:
        touched = (names.get(id_, id_) for id_ in (*one.batches, *one.places))
        yield Wound(one.event, one.what, tuple(dict.fromkeys(touched)))


# -- folded again ----------------------------------------------------------------------------------


def _folded(path: Path, today: date) -> tuple[int, list[Hurt]]:
    """How many lines of stock were compared, and those that the log does not leave. Done on a
    copy, so that judging what waits for it writes nothing; and on a day before which all of it
    happened and was judged, since a day before that is judged in memory."""
    with TemporaryDirectory(prefix="pantry-tui-") as folder:
        copy = Path(folder) / "store.db"
        copied(path, copy)
        try:
            with open_pantry(copy, today) as p:
                p.store.wait_for_no_disk()
                hurt = list(_places(p))
                p.today = max([today, *map(date.fromisoformat, _last_days(p))])
                ready(p)
                count = p.store.db.execute("SELECT count(*) FROM main.lines").fetchone()[0]
                return count, [*hurt, *_lines(p), *_past(p)]
        except PantryError as error:
            return 0, [Hurt("", f"it cannot be folded: {error.message.partition('; ')[0]}")]


def _last_days(p: Pantry) -> list[str]:
    sql = "SELECT max(day) FROM log UNION ALL SELECT max(facts_to) FROM main.lines"
    return [row[0] for row in p.store.db.execute(sql) if row[0]]


def _places(p: Pantry) -> Iterator[Hurt]:
    db = p.store.db
    stored = places.all_of(db)
    if p.store.meta("rules") != rules_fingerprint():
        return  # of another program: they are made again before anything is shown
    made = fold(log.select(db)).places
    for id_ in sorted(stored.keys() | made.keys()):
        if stored.get(id_) != made.get(id_):
            yield Hurt("", "a place is not as the log leaves it", (), (id_,))


def _lines(p: Pantry) -> Iterator[Hurt]:
    """Batches whose lines say something else than the log does today."""
    day = p.today.isoformat()
    stored: dict[str, list[object]] = {}
    for _, line, verdict, _ in table.rows(p.store.db, day):
        stored.setdefault(line.batch, []).append(_said(line, verdict))
    for id_, batch in p.stock.batches.items():
        made = [
            _said(line, table.verdict_on(line, day))
            for line in lines_of(p, batch, p.containers_of(batch))
        ]
        if sorted(map(repr, made)) != sorted(map(repr, stored.pop(id_, []))):
            yield Hurt("", "its lines are not as the log leaves them", (id_,))
    for id_ in stored:
        yield Hurt("", "lines of a batch that the log does not have", (id_,))


def _past(p: Pantry) -> Iterator[Hurt]:
    """Batches of which the books are told something else than the log says."""
    for row in past.rows(p.store.db) if past.is_ours(p.store.db) else ():
        if row != row_of(p, row.batch):
            yield Hurt("", "its past is not as the log leaves it", (row.batch,))


def _said(line: Line, verdict: int) -> tuple[object, ...]:
    """What a line says today: what it is, its dates, its verdict. How far ahead it was judged, and
    when, is not compared."""
    what = line[: Line._fields.index("harmless") + 2]
    return (*what, line.suspect, verdict)


# -- salvage ---------------------------------------------------------------------------------------


def save(path: Path, to: Path) -> Saved:
    """Every event whose check value holds, in a new store. Never overwrites, and changes nothing
    at `path`. Raises Refused, StoreError."""
    try:
        if not path.is_file():  # a pipe would be waited for
            raise StoreError(f"{path} is no file: name a store file with --store.")
        found = salvage(path)
    except OSError as error:
        raise StoreError(f"{path} cannot be read ({error.strerror}): name another file.") from error
    if not found.events:
        raise StoreError(f"No event can be read out of {path}: restore a backup.")
    count = new_store(to, lambda db: fill(db, found.events))
    return Saved(to, count, found.lost)
