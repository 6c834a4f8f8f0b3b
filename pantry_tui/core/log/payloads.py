"""What an event says: one frozen class a kind, with only what happened or changed.

Amounts are exact. Ids are opaque; a container's id is its batch's, a point and a number. Fields
that were never said keep their defaults and are not written. The names in the log are in `BY_NAME`.
"""

from __future__ import annotations

from datetime import date
from enum import StrEnum
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log.home_payloads import (
    Ceiling as Ceiling,
)
from pantry_tui.core.log.home_payloads import (
    Dish as Dish,
)
from pantry_tui.core.log.home_payloads import (
    DishDay as DishDay,
)
from pantry_tui.core.log.home_payloads import (
    Eaten as Eaten,
)
from pantry_tui.core.log.home_payloads import (
    Entry as Entry,
)
from pantry_tui.core.log.home_payloads import (
    FoodAdded as FoodAdded,
)
from pantry_tui.core.log.home_payloads import (
    Household as Household,
)
from pantry_tui.core.log.home_payloads import (
    Pin as Pin,
)
from pantry_tui.core.log.home_payloads import (
    Planned as Planned,
)
from pantry_tui.core.log.home_payloads import (
    RuleAdded as RuleAdded,
)
from pantry_tui.core.log.home_payloads import (
    Substitutes as Substitutes,
)
from pantry_tui.core.log.home_payloads import (
    Table as Table,
)
from pantry_tui.core.log.home_payloads import (
    Taken as Taken,
)
from pantry_tui.core.log.place_payloads import (
    Mark as Mark,
)
from pantry_tui.core.log.place_payloads import (
    Outage as Outage,
)
from pantry_tui.core.log.place_payloads import (
    PlaceAdded as PlaceAdded,
)
from pantry_tui.core.log.place_payloads import (
    PlaceChanged as PlaceChanged,
)
from pantry_tui.core.log.place_payloads import (
    PlaceRemoved as PlaceRemoved,
)
from pantry_tui.core.log.place_payloads import (
    Reading as Reading,
)
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import (
    Method,
    Rating,
    State,
    Verdict,
)


class Fate(StrEnum):
    """How a container left."""

    USED = "used"
    DISCARDED = "discarded"
    GIVEN = "given"
    MISSING = "missing"
    UNRECORDED = "unrecorded use"


class Reason(StrEnum):
    """Why something was discarded; `OTHER` with the person's own words beside it."""

    PAST_DATE = "past its date"
    SEAL_FAILED = "seal failed"
    BULGING = "bulging, leaking or spurting"
    MOULD = "mould"
    LOOKED_WRONG = "looked or smelled wrong"
    POWER_CUT = "power cut"
    PROCESS = "process in doubt"
    QUALITY = "nobody wanted it"
    BROKEN = "broken"
    OTHER = "other"


class Part(NamedTuple):
    """What a new batch took of an older one; `amount` None where all of the container went in."""

    container: str
    amount: Amount | None = None


class PutUp(NamedTuple):
    """A batch was put up, or made `parts` of others into one (a repack)."""

    batch: str
    code: str
    containers: tuple[str, ...]
    food: FoodFacts
    method: Method
    place: str
    state: State
    made: date | None = None
    size: str = ""
    amount: Amount | None = None  # what each container holds, where it is drawn from by amount
    process: tuple[tuple[str, str], ...] = ()
    note: str = ""
    printed: date | None = None
    doubt: tuple[str, ...] = ()
    possible: str = ""
    parts: tuple[Part, ...] = ()


class Ready(NamedTuple):
    """Done fermenting, curing, infusing or drying."""

    batch: str
    containers: tuple[str, ...]


class Move(NamedTuple):
    """To another place; `state` where the move changed it (out of a freezer: thawed)."""

    batch: str
    containers: tuple[str, ...]
    place: str
    state: State | None = None


class Open(NamedTuple):
    """Opened; `place` where it stands from then on."""

    batch: str
    containers: tuple[str, ...]
    place: str = ""


class Thaw(NamedTuple):
    """Thawed; `how` is "" in a refrigerator, else "cold water" or "microwave"."""

    batch: str
    containers: tuple[str, ...]
    place: str = ""
    how: str = ""


class Use(NamedTuple):
    """Eaten whole, or an `amount` in the container's own unit; `said` as the person gave it."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    said: str = ""


class Discard(NamedTuple):
    """Thrown away, whole or an `amount`; `why` in the person's words."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    reason: Reason = Reason.OTHER
    why: str = ""


class Give(NamedTuple):
    """Given away, whole or an `amount`."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None
    to: str = ""


class Missing(NamedTuple):
    """Gone without anyone knowing how."""

    batch: str
    containers: tuple[str, ...]
    amount: Amount | None = None


class Sign(NamedTuple):
    """Something seen; `sign` is "looked" where it was looked at and shows nothing. `suspect` says
    why the whole batch is to be looked at."""

    batch: str
    containers: tuple[str, ...]
    sign: str
    words: str
    verdict: Verdict
    suspect: str = ""


class Gone(NamedTuple):
    """What a count did not find."""

    container: str
    fate: Fate


class Back(NamedTuple):
    """What a count found again."""

    container: str
    place: str


class Found(NamedTuple):
    """What a count found and nobody had recorded: more containers of a batch."""

    batch: str
    place: str
    state: State
    containers: tuple[str, ...]


class Count(NamedTuple):
    """A stock check of one place."""

    place: str
    gone: tuple[Gone, ...] = ()
    back: tuple[Back, ...] = ()
    new: tuple[Found, ...] = ()


class Rated(NamedTuple):
    """What the household said of a batch at table."""

    batch: str
    rating: Rating
    note: str = ""


class Reserved(NamedTuple):
    """Kept apart for a gift or for somebody; `kept_for` "" frees it."""

    batch: str
    containers: tuple[str, ...]
    kept_for: str = ""


class Correct(NamedTuple):
    """The record of a put-up was wrong. None: as it was. `unknown_day`: nobody knows the day."""

    batch: str
    made: date | None = None
    unknown_day: bool = False
    size: str | None = None
    note: str | None = None
    process: tuple[tuple[str, str], ...] | None = None
    doubt: tuple[str, ...] | None = None
    possible: str | None = None
    printed: date | None = None


class Relabelled(NamedTuple):
    """A batch has another lid code, since `was` is written on the lids of `other` as well: two
    stores that had parted both gave it."""

    batch: str
    code: str
    was: str
    other: str


class Undo(NamedTuple):
    """These events count no more."""

    events: tuple[str, ...]


class Redo(NamedTuple):
    """An undo is taken back: the events that it took back count again."""

    undo: str
    events: tuple[str, ...]


Payload = (
    PutUp
    | Ready
    | Move
    | Open
    | Thaw
    | Use
    | Discard
    | Give
    | Missing
    | Sign
    | Count
    | Rated
    | Reserved
    | Correct
    | Relabelled
    | Reading
    | Outage
    | PlaceAdded
    | PlaceChanged
    | PlaceRemoved
    | FoodAdded
    | RuleAdded
    | Substitutes
    | Dish
    | Household
    | Ceiling
    | Table
    | Planned
    | Undo
    | Redo
)

#: Name in the log -> class. The names are never changed.
BY_NAME: dict[str, type[Payload]] = {
    "put_up": PutUp,
    "ready": Ready,
    "move": Move,
    "open": Open,
    "thaw": Thaw,
    "use": Use,
    "discard": Discard,
    "give": Give,
    "missing": Missing,
    "sign": Sign,
    "count": Count,
    "rated": Rated,
    "reserved": Reserved,
    "correct": Correct,
    "relabelled": Relabelled,
    "reading": Reading,
    "outage": Outage,
    "place_added": PlaceAdded,
    "place_changed": PlaceChanged,
    "place_removed": PlaceRemoved,
    "food_added": FoodAdded,
    "rule_added": RuleAdded,
    "substitutes": Substitutes,
    "dish": Dish,
    "household": Household,
    "ceiling": Ceiling,
    "table": Table,
    "planned": Planned,
    "undo": Undo,
    "redo": Redo,
}
#: Class -> name in the log.
NAME_OF = {kind: name for name, kind in BY_NAME.items()}


def batch_of(container: str) -> str:
    """The batch of a container's id."""
    return container.rpartition(".")[0]


def touches(payload: Payload) -> tuple[str, ...]:
    """The batches whose record an event changes."""
    if isinstance(payload, Count):
        named = [
            batch_of(id_)
            for id_ in (*(g.container for g in payload.gone), *(b.container for b in payload.back))
        ]
        return tuple(dict.fromkeys([*named, *(one.batch for one in payload.new)]))
    if isinstance(payload, Outage):
        return tuple(dict.fromkeys(batch_of(one.container) for one in payload.marks))
    if isinstance(payload, PutUp):
        taken = (batch_of(part.container) for part in payload.parts)
        return tuple(dict.fromkeys([payload.batch, *taken]))
    batch = getattr(payload, "batch", "")
    return (batch,) if batch else ()


def place_of(payload: Payload) -> str:
    """The place whose own record (name, climate, readings, counts) an event changes, "" for
    none."""
    kinds = Reading | Outage | Count | PlaceAdded | PlaceChanged | PlaceRemoved
    return payload.place if isinstance(payload, kinds) else ""
