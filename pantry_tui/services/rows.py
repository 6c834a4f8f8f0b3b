"""What services hand to screens and commands. Frozen; JSON of them: services/output/jsonable.py."""

from __future__ import annotations

from datetime import date
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.no_day import good_until, why_no_good
from pantry_tui.core.log.batch_payloads import Reason
from pantry_tui.core.safety import seals
from pantry_tui.core.words import Method, State, Verdict
from pantry_tui.services.done import Done as Done
from pantry_tui.services.plan.rows import Take as Take
from pantry_tui.services.plan.rows import WeekView as WeekView
from pantry_tui.services.stock.rows import DueRow


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
    note_aside: str  # that the note decides nothing, "" where it does or there is none
    rows: tuple[DueRow, ...]
    gone: tuple[str, ...]
    sources: tuple[str, ...]
    cautions: tuple[str, ...]
    history: tuple[str, ...]
    chain: tuple[tuple[str, tuple[str, ...]], ...] = ()  # first container of a row -> its steps
    tasted: tuple[str, ...] = ()  # what was said of it, oldest first
    views: tuple[str, ...] = ()  # stricter and other published views that give no date


@dataclass(frozen=True, slots=True)
class HouseholdFacts:
    """What kind of household it is; `altitude_ft` None where nobody said, `units` "us" or
    "metric", `advice` "usual" (US federal and extension) or "strictest" (any country's)."""

    altitude_ft: int | None
    people: int
    units: str
    advice: str = "usual"
    jars: str = "strict"  # "maker" or "strict": whose times serve for metric jars
    half: str = "north"  # of the world: when crops come in


@dataclass(frozen=True, slots=True)
class SignAnswer:
    """What a sign means for one container: verdict, steps, disposal, sources, and why."""

    code: str
    sign: str
    verdict: Verdict
    do: tuple[str, ...]
    disposal: tuple[str, ...]
    sources: tuple[str, ...]
    reasons: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SignRow:
    """One sign of the table, as a list shows it."""

    id: str
    methods: tuple[str, ...]
    seal: str
    sign: str
    means: str
    verdict: str
    do: tuple[str, ...]
    disposal: str
    source: str
    trust: str


@dataclass(frozen=True, slots=True)
class OutageRow:
    """Equal containers after a power cut: `action` is keep, refreeze, use now or discard. `reason`
    and `own`: why they had to be discarded whatever the cut did, as the log says it, "" where it is
    for the cut; `disposal`: how they are thrown away, where that matters."""

    code: str
    container_ids: tuple[str, ...]
    food: str
    place: str
    count: int
    verdict: Verdict
    action: str
    reasons: tuple[str, ...]
    sources: tuple[str, ...]
    reason: Reason = Reason.POWER_CUT
    own: str = ""
    disposal: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class RoundLine:
    """Equal containers that a count expects; `seen` is the count so far, None when not yet."""

    key: str
    code: str
    food: str
    method: Method
    place: str
    state: State
    size: str
    expected: int
    seen: int | None
    first: str  # the container a single key acts on
    pieces: bool = False  # counted piece by piece, not by containers
    holds: str = ""  # "4 lb": what is left of one lot that is weighed out and has no size


@dataclass(frozen=True, slots=True)
class Difference:
    """What a count found otherwise, and what it is booked as."""

    code: str
    food: str
    place: str
    expected: int
    seen: int | None
    booked_as: str
    ever: int | None = None  # how many were ever put up, where more are counted: perhaps a slip


@dataclass(frozen=True, slots=True)
class Sheet:
    """A table to print: title, heads, rows, and what to take care of below; `parts` are words that
    stand over so many of the rows, one after the other. `more` are tables on the same paper;
    `loose` leaves room between the lines for a pen."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    notes: tuple[str, ...]
    parts: tuple[tuple[str, int], ...] = ()
    more: tuple[Sheet, ...] = ()
    loose: bool = False


@dataclass(frozen=True, slots=True)
class Label:
    """What stands on one lid."""

    code: str
    food: str
    method: str
    made: str
    best_by: str
    caution: str
    discard_after: str = ""  # empty where none is published
    process: str = ""  # how it was processed, or that nobody wrote it down
    opened: str = ""  # of a gift: how it is kept once it is open


@dataclass(frozen=True, slots=True)
class Kept:
    """Where one container of a batch is or went. `to` is whom it was given to."""

    container: str
    state: str
    place: str
    to: str
    ended: date | None
    signs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Ask:
    """Something that must be said, or said more clearly, before a batch can be booked: what about
    ("method"), what was typed for it, and what may be meant."""

    about: str
    typed: str = ""
    choices: tuple[str, ...] = ()


class Source(NamedTuple):
    """What something is made from: "2A" or "3B/1", and how much ("2 lb", "" for one whole)."""

    ref: str
    amount: str = ""


class Took(NamedTuple):
    """What was taken for it: "2A", "2A/1", how much, and what is left there, "" for nothing."""

    code: str
    container: str
    took: str
    left: str


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
    printed: date | None = None  # on what was bought in
    asks: tuple[Ask, ...] = ()  # the same for scripts, where there is a choice to make
    contents: Amount | None = None  # what each container holds, pieces without a unit
    sources: tuple[Source, ...] = ()  # what it is made from
    opened: date | None = None  # on which it was opened, before it came into the store
    made_in: str = ""  # the month or year that was said, of which `made` is the first day


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
    discard_after_why: str = ""  # why there is no discard_after
    standing: tuple[str, ...] = ()  # said beside any verdict
    made_from: tuple[Took, ...] = ()
    note_aside: str = ""  # as in BatchView

    @property
    def unchecked(self) -> str:
        """What stands behind the verdict where something about it is not checked: that it sealed
        is looked at later in any case."""
        found = (one for one in self.standing if one != seals.FIRST)
        first = "" if self.verdict in UNFIT else next(found, "").rstrip(".")
        return first and f", but {first[:1].lower()}{first[1:]}"

    @property
    def good_until(self) -> date | None:
        """The best-by date as a person may read it."""
        return good_until(self.best_by, self.discard_after, self.verdict)

    @property
    def why_no_best(self) -> str:
        """Why there is no `good_until`."""
        last, why = self.discard_after, self.discard_after_why
        return why_no_good(self.best_by, last, why, self.verdict)
