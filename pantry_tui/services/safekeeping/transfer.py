"""The log out as a document and in again, and two logs that had parted as one.

Everything is tried on a copy first: judged, and looked over as `verify` does. Only what comes out
of that whole is booked, in one transaction.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from pantry_tui.core.lidcode import code_at
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.document import document, read_document
from pantry_tui.core.log.events import Event, new_id, standing
from pantry_tui.core.log.references import unknown
from pantry_tui.errors import BadInput, PantryError, Refused
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.store import rebuild
from pantry_tui.store.files import made_whole, refuse_unreadable
from pantry_tui.store.soundness import copied
from pantry_tui.store.store import check_header

#: A longer file is no log of a household, bytes.
_LONGEST = 500_000_000


@dataclass(frozen=True, slots=True)
class Relabel:
    """Containers on whose lids `was` stands and should be `code`."""

    was: str
    code: str
    food: str
    containers: int


@dataclass(frozen=True, slots=True)
class Merged:
    """What an import did, or would do: events that came, events that were here already, whether
    it replaced a log in which nothing was done yet, what both logs say differently, in sentences,
    and which lids are to be written anew."""

    rows: int
    already: int
    batches: int
    replaced: bool
    conflicts: tuple[str, ...]
    relabel: tuple[Relabel, ...]


def export_log(p: Pantry, to: Path) -> int:
    """The whole log as JSON in a new file; returns the number of events. Raises Refused,
    StoreError."""
    text = document(p.events)
    with made_whole(to) as making:
        making.write_text(text, encoding="ascii")
    return len(p.events)


def import_log(path: Path, source: Path, today: date, *, dry_run: bool = False) -> Merged:
    """The events of an exported log come into the store at `path`: all that it has not yet, or, in
    a store in which nothing was done but `init`, those alone.

    Raises BadInput for a file that makes no sense, Refused where both logs tell one event
    differently; nothing is booked then.
    """
    check_header(path)
    events = _read(source)
    with TemporaryDirectory(prefix="pantry-tui-") as folder:
        tried = Path(folder) / "tried.db"
        with open_pantry(path, today) as p:
            pass  # it opens, and is of this version
        copied(path, tried)
        with open_pantry(tried, today) as p:
            p.store.wait_for_no_disk()
            merged = _merge(p, events)
        _refuse_senseless(tried, today)
    if not dry_run:
        with open_pantry(path, today) as p:
            merged = _merge(p, events)
    return merged


def _read(source: Path) -> list[Event]:
    refuse_unreadable(source, _LONGEST)
    try:
        text = source.read_text(encoding="utf-8")
    except OSError as error:
        raise BadInput(f"{source} cannot be read ({error.strerror}): name another file.") from error
    except UnicodeDecodeError as error:
        raise BadInput(f"{source} is no text: name a file that was exported.") from error
    events = read_document(text)
    if bad := {event.id: what for event, what in reversed(list(unknown(events)))}:
        (*_, first) = bad
        more = f" (the first of {len(bad):,} such events)" if len(bad) > 1 else ""
        raise BadInput(f"Event {first} makes no sense: {bad[first]}{more}; nothing is booked.")
    return events


def _refuse_senseless(tried: Path, today: date) -> None:
    """What cannot be folded, judged or read again is not booked anywhere."""
    try:
        found = verify(tried, today)
        what = found.hurt[0].what if found.hurt else ""
    except PantryError as error:
        what = error.message
    except Exception as error:  # a log may say anything; what breaks on it must not be kept
        what = f"{type(error).__name__}: {error}"
    if what:
        short = " ".join(what.partition("; ")[0].split()).replace(str(tried), "it")[:160]
        raise BadInput(f"These events make no sense together ({short}): nothing is booked.")


def _merge(p: Pantry, theirs: Sequence[Event]) -> Merged:
    with p.writing():
        mine = {event.id: event for event in p.events}
        new, relabelled, conflicts = list(theirs), list[Event](), list[str]()
        replaced = p.is_new
        if replaced:
            rebuild.start_anew(p.store.db, theirs)
        else:
            _refuse_two_stories(mine, theirs)
            new = [event for event in theirs if event.id not in mine]
            relabelled = list(_relabelled(p, list(mine.values()), new))
            conflicts = list(_conflicts(p, mine.values(), theirs, new))
        if new and not replaced:
            rebuild.add(p.store.db, (*new, *relabelled))
        p.store.booked = p.store.booked or bool(new)
        p.refresh()
    put_up = {one.payload.batch: one.payload for one in new if isinstance(one.payload, said.PutUp)}
    already = 0 if replaced else len(theirs) - len(new)
    relabel = tuple(_relabel(event.payload, put_up) for event in relabelled)
    return Merged(len(new), already, len(put_up), replaced, tuple(conflicts), relabel)


def _relabel(payload: said.Payload, put_up: Mapping[str, said.PutUp]) -> Relabel:
    assert isinstance(payload, said.Relabelled)
    batch = put_up[payload.batch]
    return Relabel(payload.was, payload.code, batch.food.name, len(batch.containers))


def _refuse_two_stories(mine: Mapping[str, Event], theirs: Iterable[Event]) -> None:
    """One event is one event: which of two stories is true nobody can say."""
    for event in theirs:
        if event.id in mine and mine[event.id] != event:
            raise Refused(
                f"Event {event.id} ({event.did.value.replace('_', ' ')}, {event.day.isoformat()}) "
                "is another one here: one of the two was changed; verify both stores."
            )


def _relabelled(p: Pantry, mine: Sequence[Event], new: Sequence[Event]) -> Iterator[Event]:
    """Another lid code for each batch that comes with one which another bears here."""
    come = _codes(new)
    settled = {one.payload.batch for one in new if isinstance(one.payload, said.Relabelled)}
    given = {code: batch for code, batch in _codes(mine).items() if batch not in settled}
    last = max((event.id for event in (*mine, *new)), default="")
    now, here = datetime.now(UTC), p.clock.recorded.isoformat(timespec="seconds")
    free = (code for n in count() if (code := code_at(n)) not in given and code not in come)
    for was, batch in come.items():
        other = given.get(was, batch)
        if other != batch:
            last = new_id(now, last)
            what = said.Relabelled(batch, next(free), was, other)
            yield Event(last, here, p.today, what)


def _codes(events: Iterable[Event]) -> dict[str, str]:
    """Lid code -> the batch that bears it now."""
    found: dict[str, str] = {}
    for event in events:
        payload = event.payload
        if isinstance(payload, said.PutUp):
            found.setdefault(payload.code, payload.batch)
        elif isinstance(payload, said.Relabelled):
            found |= {payload.was: payload.other, payload.code: payload.batch}
    return found


# -- what both say differently ---------------------------------------------------------------------

_LEAVE = said.Use | said.Discard | said.Give | said.Missing


def _conflicts(
    p: Pantry, mine: Iterable[Event], theirs: Sequence[Event], new: Sequence[Event]
) -> Iterator[str]:
    """Sentences: containers that left in both logs, places and household facts set in both."""
    shared = {event.id for event in theirs}
    ours = [event for event in standing(mine) if event.id not in shared]
    come = standing(new)
    gone = {id_: event for event in ours for id_ in _whole(event)}
    names = _codes_by_batch((*mine, *new))
    for event in come:
        for id_ in _whole(event):
            if id_ in gone:
                name = f"{names.get(said.batch_of(id_), '?')}/{id_.rpartition('.')[2]}"
                first, later = sorted((gone[id_], event), key=lambda one: one.id)
                yield (
                    f"{name} left in both: {_act(first)} counts, {_act(later)} is kept in the log."
                )
    yield from _same_names(p, come)
    for kind, words in ((said.Household, "the household"), (said.Planned, "the week")):
        both = [[one for one in some if isinstance(one.payload, kind)] for some in (ours, come)]
        if all(both):
            yield f"Both logs say something of {words}: the later word counts."


def _whole(event: Event) -> tuple[str, ...]:
    payload = event.payload
    return payload.containers if isinstance(payload, _LEAVE) and payload.amount is None else ()


def _act(event: Event) -> str:
    return f"{event.did.value} on {event.day.isoformat()}"


def _codes_by_batch(events: Iterable[Event]) -> dict[str, str]:
    return {batch: code for code, batch in _codes(events).items()}


def _same_names(p: Pantry, come: Iterable[Event]) -> Iterator[str]:
    here = {one.name.lower(): one.id for one in p.places.values()}
    for event in come:
        payload = event.payload
        if isinstance(payload, said.PlaceAdded) and here.get(payload.name.lower(), "") not in (
            "",
            payload.place,
        ):
            yield (
                f"Two places are called {payload.name} now: give one another name with "
                "`pantry-tui place change`, or name it with the place it stands in."
            )
