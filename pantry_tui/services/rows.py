"""What services hand to screens and commands. Frozen; `as_json` is in services/jsonable.py."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from pantry_tui.core.words import Method, State, Verdict


@dataclass(frozen=True, slots=True)
class DueRow:
    """Equal containers of one batch in one place and state, judged once."""

    code: str
    container_ids: tuple[str, ...]  # "7C/1", what a person types
    food: str
    method: Method
    place: str  # full path
    count: int
    state: State
    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    days_left: int | None  # to the earlier of the two dates that still lies ahead, else past it
    reasons: tuple[str, ...]
    size: str = ""


@dataclass(frozen=True, slots=True)
class Shelf:
    """One place, in shelf order, with what stands in it."""

    path: str
    climate: str
    temperature_f: float
    capacity: int | None
    count: int
    rows: tuple[DueRow, ...]


@dataclass(frozen=True, slots=True)
class BatchView:
    """One batch whole. `history` lines are oldest first; `sources` carry their trust."""

    code: str
    food: str
    group: str
    acidity: str
    method: Method
    made: date | None
    process: tuple[tuple[str, str], ...]
    note: str
    rows: tuple[DueRow, ...]
    gone: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    history: tuple[str, ...]
    chain: tuple[tuple[str, tuple[str, ...]], ...] = ()  # first container of a row -> its steps


@dataclass(frozen=True, slots=True)
class Done:
    """The answer to an action: one plain sentence, and what else should be known."""

    message: str
    warnings: tuple[str, ...] = ()
    containers: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PutUpReading:
    """What a put-up line was understood as. `unread` words are named, never dropped."""

    food: str = ""
    method: Method | None = None
    count: int = 1
    size: str = ""
    container: str = ""
    place: str = ""
    made: date | None = None
    process: tuple[tuple[str, str], ...] = ()
    note: str = ""
    group: str = ""  # only for a food that is not in the tables
    acidity: str = ""
    unread: tuple[str, ...] = ()
    problems: tuple[str, ...] = ()  # sentences; empty means it can be put up


@dataclass(frozen=True, slots=True)
class PutUp:
    """What putting up gives back; `code` is empty on a dry run."""

    code: str
    containers: tuple[str, ...]
    best_by: date | None
    discard_after: date | None
    verdict: Verdict
    cautions: tuple[str, ...]
    reasons: tuple[str, ...]
    reading: PutUpReading


@dataclass(frozen=True, slots=True)
class Take:
    """One line of the week's menu."""

    code: str
    food: str
    place: str
    count: int
    servings: float
    day: date
    thaw_by: date | None
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class WeekView:
    start: date
    end: date
    people: int
    take: tuple[Take, ...]
    waiting: tuple[DueRow, ...]
    discard: tuple[DueRow, ...]
