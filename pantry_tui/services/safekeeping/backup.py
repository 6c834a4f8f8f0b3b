"""Copies of the store, and bringing one back."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.lidcode import is_code, number_of
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.log.payloads import PutUp
from pantry_tui.errors import Refused
from pantry_tui.settings import read_settings
from pantry_tui.store import copies
from pantry_tui.store.replace import (
    codes_given,
    recover,
    refuse_foreign,
    refuse_unsound,
    replace,
)
from pantry_tui.store.salvage import ids_in, salvage


@dataclass(frozen=True, slots=True)
class Copied:
    """Where a copy lies, how many events it holds, which copies are kept beside the store or where
    the settings say, and what of the settings could not be used."""

    path: Path
    events: int
    kept: tuple[Path, ...]
    wrong: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Lost:
    """An event of the store that a backup does not have."""

    id: str
    day: str
    kind: str
    code: str

    @property
    def says(self) -> str:
        """ "25 Nov 2026: use 2A"."""
        what = f"{self.kind.replace('_', ' ')} {self.code}".rstrip()
        return f"{dates.say(dates.iso(self.day))}: {what}"


@dataclass(frozen=True, slots=True)
class Restored:
    """A store as it is, or would be: how many events it has then, where the file is kept that it
    replaced (None: there was none, or nothing was done yet), what is lost and what comes back.
    `lids` are codes that stand on lids and that it does not know: it gives them to nothing else."""

    path: Path
    events: int
    kept: Path | None
    lost: tuple[Lost, ...]
    back: int
    lids: tuple[str, ...] = ()


class Kept(NamedTuple):
    """A copy that was made by itself, and when."""

    path: Path
    made: datetime


def kept(path: Path) -> list[Kept]:
    """The copies that lie beside the store or where the settings say, the newest first."""
    found = copies.made_by_itself(path, copies.folder_of(path))
    moments = ((one, copies.moment_of(path, one.name)) for one in found)
    return [Kept(one, made) for one, made in moments if made is not None]


def backup(path: Path, to: Path | None = None) -> Copied:
    """A sound copy of the store, at `to`, in the folder `to`, or where those lie that are made by
    themselves. Never overwrites. Raises Refused, StoreError."""
    where, events = copies.backup(path, to)
    kept = copies.made_by_itself(path, copies.folder_of(path))
    return Copied(where, events, tuple(kept), read_settings().wrong)


def preview(path: Path, source: Path) -> Restored:
    """What `restore` would do. Raises Refused, StoreError as it does."""
    return _restored(path, source, None, *_compared(path, source))


def restore(path: Path, source: Path) -> Restored:
    """The store becomes what `source` is, at once; the file that it replaces is kept beside it.

    Raises Refused for a source that is not sound or is the store itself, StoreError where it
    cannot be written or another program holds it; then nothing has changed.
    """
    compared = lost, _ = _compared(path, source)
    written = [number_of(one.code) + 1 for one in lost if is_code(one.code)]
    given = max(written, default=0) if not path.exists() else max((codes_given(path), *written))
    return _restored(path, source, replace(path, source, given), *compared)


def _restored(
    path: Path, source: Path, kept: Path | None, lost: Sequence[Lost], back: int
) -> Restored:
    lids = tuple(one.code for one in lost if one.kind == Did.PUT_UP)
    return Restored(path, copies.events_in(source), kept, tuple(lost), back, lids)


def _compared(path: Path, source: Path) -> tuple[list[Lost], int]:
    """What of the store is not in the source, and how much of the source is not in the store."""
    refuse_unsound(path, source)
    if not path.exists():
        return [], copies.events_in(source)
    if path.samefile(source):
        raise Refused(f"{source} is the store itself: name a backup of it.")
    refuse_foreign(path)
    recover(path)
    there = ids_in(source)
    here = salvage(path).events
    codes = codes_of(here)
    lost = [_lost(event, codes) for event in here if event.id not in there]
    return lost, len(there - {event.id for event in here})


def codes_of(events: Sequence[Event]) -> dict[str, str]:
    """Batch -> lid code."""
    return {
        event.payload.batch: event.payload.code
        for event in events
        if isinstance(event.payload, PutUp)
    }


def _lost(event: Event, codes: Mapping[str, str]) -> Lost:
    code = codes.get(event.batch, "")
    return Lost(event.id, event.day.isoformat(), event.did.value, code)
