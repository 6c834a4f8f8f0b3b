"""The log out as a document and in again, and two logs that had parted as one.

Everything is tried on a copy first: judged, and looked over as `verify` does. Only what comes out
of that whole is booked, in one transaction.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.document import document, read_document
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.home import fold_household
from pantry_tui.core.log.parted import Parted, after, settle
from pantry_tui.core.log.references import unknown
from pantry_tui.errors import BadInput, PantryError, Refused
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.safekeeping.differing import conflicts
from pantry_tui.services.safekeeping.verify import verify
from pantry_tui.store import rebuild
from pantry_tui.store.files import made_whole, refuse_unreadable
from pantry_tui.store.soundness import copied
from pantry_tui.store.store import check_header

#: A longer file is no log of a household, bytes.
_LONGEST = 500_000_000
#: What a household says of itself once, and what `init` writes of it where nobody typed it.
_SETTINGS = ("altitude_ft", "people", "units", "meals", "advice", "jars", "half")
_BY_ITSELF = {"people": 2, "units": "us"}


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
        replaced = p.is_new
        if replaced:
            made, told = _words_kept(list(mine.values()), theirs)
            new, everything = list(theirs), [*theirs, *made]
            rebuild.start_anew(p.store.db, everything)
        else:
            _refuse_two_stories(mine, theirs)
            new = [event for event in theirs if event.id not in mine]
            made, told = _joined(mine, theirs, new)
            everything = [*mine.values(), *new, *made]
            if new or made:
                rebuild.add(p.store.db, (*new, *made))
        p.store.booked = p.store.booked or bool(new or made)
        p.refresh()
    already = 0 if replaced else len(theirs) - len(new)
    batches = sum(isinstance(event.payload, said.PutUp) for event in new)
    return Merged(len(new), already, batches, replaced, told, _relabels(everything, made))


def _joined(
    mine: Mapping[str, Event], theirs: Sequence[Event], new: Sequence[Event]
) -> tuple[list[Event], tuple[str, ...]]:
    """What is booked beside the events of both, and what both say differently."""
    there = {event.id for event in theirs}
    ours = [event for event in mine.values() if event.id not in there]
    parted = Parted(ours, new, [event for event in mine.values() if event.id in there])
    made = settle(parted)
    return made, tuple(conflicts(parted, made))


def _relabels(everything: Sequence[Event], made: Sequence[Event]) -> tuple[Relabel, ...]:
    put_up = {
        event.payload.batch: event.payload
        for event in standing(everything)
        if isinstance(event.payload, said.PutUp)
    }
    return tuple(
        Relabel(one.was, one.code, put_up[one.batch].food.name, len(put_up[one.batch].containers))
        for one in (event.payload for event in made)
        if isinstance(one, said.Relabelled) and one.batch in put_up
    )


def _words_kept(
    mine: Sequence[Event], theirs: Sequence[Event]
) -> tuple[list[Event], tuple[str, ...]]:
    """What was said in a new store before a log came into it, where that log says otherwise. Of
    two altitudes the higher counts, since canning is checked by it; beside that what was said
    after `init`, which itself writes people and units whether or not anybody typed them."""
    stand = standing(mine)
    here, after_init = fold_household(stand), fold_household(stand[1:])
    log = fold_household(standing(theirs))
    kept: dict[str, Any] = {}
    told = []
    for name in _SETTINGS:
        mine_says, log_says = getattr(here, name), getattr(log, name)
        if mine_says in (log_says, None, _BY_ITSELF.get(name)):
            continue
        stays = getattr(after_init, name) is not None
        if name == "altitude_ft":
            stays = log_says is None or mine_says > log_says
        if stays:
            kept[name] = mine_says
        words, other = name.replace("_ft", ""), "nothing" if log_says is None else log_says
        told.append(
            f"Both say something of the household's {words}: {mine_says} here, {other} in the "
            f"log: {mine_says if stays else other} counts; `pantry-tui household` changes it."
        )
    if not kept:
        return [], tuple(told)
    return [after([*mine, *theirs], said.Household(**kept))], tuple(told)


def _refuse_two_stories(mine: Mapping[str, Event], theirs: Iterable[Event]) -> None:
    """One event is one event: which of two stories is true nobody can say."""
    for event in theirs:
        if event.id in mine and mine[event.id] != event:
            raise Refused(
                f"Event {event.id} ({event.did.value.replace('_', ' ')}, {event.day.isoformat()}) "
                "is another one here: one of the two was changed; verify both stores."
            )
