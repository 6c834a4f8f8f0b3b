"""Lines of stock as lists show them. Light, since every start makes them."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core.keeping.no_day import DOUBT, NOW, good_until, is_gone, why_no_good
from pantry_tui.core.words import State, Verdict

if TYPE_CHECKING:
    from pantry_tui.core.words import Method


class Left(NamedTuple):
    """What is in a container now: how much, and of what ("lb", "pieces"; "" where it is parts of
    the one container)."""

    amount: float
    unit: str


class DueRow(NamedTuple):
    """Equal containers of one batch in one place and state, judged once."""

    code: str
    container_ids: tuple[str, ...]  # "7C/1", what a person types
    food: str
    method: Method
    place: str  # full path
    count: int  # type: ignore[assignment] # the word of the contract; no tuple counts here
    state: State
    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    days_left: int | None  # to the earlier of the two dates that still lies ahead, else past it
    reasons: tuple[str, ...]
    size: str = ""
    amount: str = ""  # what is left in each, where it is drawn from by amount or was begun
    reserved: str = ""  # kept apart, for a gift or for whom
    head: str = ""  # the part of the due list it belongs to
    stamp: str = ""  # what a screen saw of it (services.stock.lines.stamp)
    discard_after_why: str = ""  # why there is no discard_after
    usable: bool = True  # fit to be offered at table
    standing: tuple[str, ...] = ()  # said beside any verdict; the last of `reasons` too
    left: Left = Left(1, "")  # what is in each
    vessel: str = ""  # "jars", "crates", "" where nobody said
    hurried: bool = False  # it stands too warm, and its two hours run
    loose: bool = False  # never opened: a part of it must be named when it is taken
    best_over: bool = False  # its best-by day is over

    @property
    def held(self) -> str:
        """How much stands there: "7" jars, "38 lb", or "3×40 lb" of equal crates."""
        if not self.amount:
            return str(self.count)
        return self.amount if self.count == 1 else f"{self.count}×{self.amount}"

    @property
    def good_until(self) -> date | None:
        """The best-by date as a person may read it."""
        return good_until(self.best_by, self.discard_after, self.verdict)

    @property
    def part(self) -> str:
        """What it stands under where a person reads it: what needs care is apart from what is only
        later."""
        care = self.head == "later" and self.verdict is Verdict.NEEDS_CARE
        return Verdict.NEEDS_CARE.value if care else self.head

    @property
    def why_no_best(self) -> str:
        """Why there is no `good_until`."""
        return why_no_good(self.best_by, self.last_day, self.why_no_last_day, self.verdict)

    @property
    def last_day(self) -> date | None:
        """The day after which it is discarded, as a person may read it: none of what may not be
        eaten before it either."""
        return None if self.in_doubt or self.must_go else self.discard_after

    @property
    def must_go(self) -> bool:
        """Whether it is thrown away whatever day its figures name: a day beside "do not taste", or
        one still to come beside "discard", would say that it may be eaten until then."""
        ahead = self.days_left is None or self.days_left >= 0
        thrown = self.verdict is Verdict.DISCARD and (ahead or is_gone(self.discard_after_why))
        return thrown or self.verdict is Verdict.DO_NOT_TASTE

    @property
    def why_no_last_day(self) -> str:
        """Why there is no `last_day`."""
        if is_gone(self.discard_after_why):
            return self.discard_after_why
        if self.must_go and (self.discard_after or self.best_by):
            return NOW
        return DOUBT if self.in_doubt and self.discard_after else self.discard_after_why

    @property
    def in_doubt(self) -> bool:
        """Whether nobody knows and it may not be eaten on a guess."""
        return self.verdict is Verdict.UNKNOWN and not self.usable

    @property
    def aside(self) -> str:
        """ "for gift", "for Aunt Sunniva", or nothing."""
        return f"for {self.reserved}" if self.reserved else ""

    @property
    def remark(self) -> str:
        """What stands behind the food's name: " (open)", " (for gift)", or nothing."""
        state = "" if self.state is State.SEALED else self.state.value
        said = ", ".join(filter(None, (state, self.aside)))
        return f" ({said})" if said else ""


class Shelf(NamedTuple):
    """One place, in shelf order, with what stands in it."""

    path: str
    climate: str
    temperature_f: float
    capacity: int | None
    count: int  # type: ignore[assignment] # the word of the contract; no tuple counts here
    rows: tuple[DueRow, ...]


def last_told(last: str | None, made: str, why: str) -> tuple[date | None, str]:
    """The day after which a line is discarded, or why none is told; ISO days, "" unknown. What was
    over at once has none: on the day of a power cut it was fit until that came, and before it was
    there it might have been eaten on none."""
    if last is None:
        return None, why
    if last < made:
        return None, NOW
    return (None, why) if is_gone(why) else (date.fromisoformat(last), why)
