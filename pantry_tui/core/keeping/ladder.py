"""The ladder of a container: its dates and reasons, from which the verdict of any day is read by
comparing dates alone."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.fitness import UNFIT, usable
from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import SEVERITY, Verdict

Source = Rule | OutageRule
#: Verdicts with which food is eaten, and which are no milder than that it needs care.
_EATEN = frozenset({Verdict.EAT_SOON, Verdict.PAST_BEST})


@dataclass(frozen=True, slots=True)
class Judgement:
    """A verdict with its dates, its reasons and the rules they rest on.

    `until` is the last day on which the verdict stays what it is, None where no date will turn it.
    `soon_from` is the day from which it is to be eaten first. `why_no_discard` says why there is
    no `discard_after`. `usable`: fit to be offered at table. `standing` is said beside any
    verdict. `refused` says why it may not stand where it stands now, "" where it may.
    """

    verdict: Verdict
    best_by: date | None
    discard_after: date | None
    reasons: tuple[str, ...]
    rules: tuple[Source, ...]
    until: date | None = None
    soon_from: date | None = None
    why_no_discard: str = ""
    usable: bool = False
    standing: tuple[str, ...] = ()
    refused: str = ""


@dataclass(frozen=True, slots=True)
class Fixed:
    """A verdict that no date of the food's own life turns: until a day one, from then another."""

    verdict: Verdict
    until: date | None = None
    then: Verdict | None = None

    def on(self, day: date) -> Verdict:
        return self.then if self.then and self.until and day > self.until else self.verdict


@dataclass(frozen=True, slots=True)
class Care:
    """A small job that is not done makes it need care: from a day, to the last (None: for as long
    as it is not done), and what is said of it then."""

    start: date
    last: date | None
    text: str

    def on(self, day: date) -> bool:
        return self.start <= day and (self.last is None or day <= self.last)


@dataclass(frozen=True, slots=True)
class Assessment:
    """The ladder of a container: all that is known of it up to `now`.

    `facts_to` is the latest day of any fact it rests on; from then on the verdict of a day is a
    comparison of dates. `again_at` is a minute from which it has to be assessed again although
    nothing happened (the two hours run out where it stands), None mostly.
    """

    now: date
    best_by: date | None = None
    discard_after: date | None = None
    began: date = date.min
    fixed: Fixed | None = None
    doubt: bool = False
    in_progress: bool = False
    floor: Verdict = Verdict.SOUND
    over_from: date | None = None
    reasons: tuple[str, ...] = ()
    later: tuple[tuple[date, str], ...] = ()
    rules: tuple[Source, ...] = ()
    why_no_discard: str = ""
    harmless: bool = False
    standing: tuple[str, ...] = ()
    refused: str = ""
    facts_to: date = date.min
    warm_used: int = 0  # minutes of the two hours that are gone
    again_at: int | None = None
    care: tuple[Care, ...] = ()
    care_at: int | None = None  # again at this minute, since what is said of its small jobs changes
    spans: tuple[Span, ...] = ()

    @property
    def look_at(self) -> int | None:
        """The minute from which it is assessed again."""
        return min((one for one in (self.again_at, self.care_at) if one is not None), default=None)

    def on(self, day: date) -> Judgement:
        """The verdict of a day, `facts_to` or later, if nothing else happens until then: of that
        day, where a slow clock asks on the evening before."""
        day = max(day, min(self.now, self.facts_to))
        verdict = self._verdict(day)
        aged = tuple(text for since, text in self.later if day > since)
        late: tuple[str, ...] = ()
        if verdict not in UNFIT:  # nobody tends what has to be discarded
            late = tuple(care.text for care in self.care if care.on(day))
        return Judgement(
            verdict,
            self.best_by,
            self.discard_after,
            (*late, *self.reasons, *aged),  # what it waits for, first
            self.rules,
            self._until(day),
            self.soon_from,
            self.why_no_discard,
            usable(verdict, self.harmless, self.in_progress),
            self.standing,
            self.refused,
        )

    def steps(self) -> tuple[tuple[date, Verdict], ...]:
        """The verdicts from the last fact on, each with the day from which it holds."""
        first = min(self.now, self.facts_to)
        days = [first, *(day + timedelta(days=1) for day in self._turns() if day >= first)]
        found: list[tuple[date, Verdict]] = []
        for day in days:
            verdict = self._verdict(day)
            if not found or found[-1][1] is not verdict:
                found.append((day, verdict))
        return tuple(found)

    @property
    def soon_from(self) -> date | None:
        """The first day on which it is to be eaten before others, None without a date."""
        return min((soon for soon, _ in self._dated()), default=None)

    def _soon(self, day: date, least: int = 1) -> date:
        return day - timedelta(days=max(least, soon_window((day - self.began).days)))

    def _last_days(self, discard_after: date) -> date:
        """From when on a last day of safety is near."""
        return self._soon(discard_after, LAST_DAYS)

    def _dated(self) -> Iterator[tuple[date, date]]:
        """Its dates, each behind the day from which it is to be eaten first because of it."""
        if self.best_by is not None:
            yield self._soon(self.best_by), self.best_by
        if self.discard_after is not None:
            yield self._last_days(self.discard_after), self.discard_after

    def _turns(self) -> list[date]:
        """The last days of all verdicts, in order."""
        turns = {turn for soon, day in self._dated() for turn in (soon - timedelta(days=1), day)}
        if self.over_from is not None:
            turns.add(self.over_from - timedelta(days=1))
        if self.fixed is not None and self.fixed.until is not None:
            turns.add(self.fixed.until)
        turns |= {care.start - timedelta(days=1) for care in self.care}
        turns |= {care.last for care in self.care if care.last is not None}
        return sorted(turns)

    def _until(self, day: date) -> date | None:
        verdict = self._verdict(day)
        later = (turn for turn in self._turns() if turn >= day)
        return next(
            (turn for turn in later if self._verdict(turn + timedelta(days=1)) is not verdict), None
        )

    def _verdict(self, day: date) -> Verdict:
        found = self._by_date(day) if self.fixed is None else self.fixed.on(day)
        found = worse(found, self.floor)
        if self.floor is not Verdict.NEEDS_CARE and not any(care.on(day) for care in self.care):
            return found
        # What can hurt is looked at before anybody eats it, also where its days run out.
        if not self.harmless and found in _EATEN:
            return Verdict.NEEDS_CARE
        return worse(found, Verdict.NEEDS_CARE)

    def _by_date(self, day: date) -> Verdict:
        best_by, discard_after = self.best_by, self.discard_after
        if discard_after is not None and day > discard_after:
            return Verdict.DISCARD
        if self.over_from is not None and day >= self.over_from:
            return Verdict.DISCARD
        if self.doubt:
            return Verdict.UNKNOWN
        if self.in_progress:
            return Verdict.NEEDS_CARE
        if discard_after is not None and day >= self._last_days(discard_after):
            return Verdict.EAT_SOON
        if best_by is not None and day > best_by:
            return Verdict.PAST_BEST
        if best_by is not None and day >= self._soon(best_by):
            return Verdict.EAT_SOON
        return Verdict.SOUND


#: How many days before its last day of safety food is eaten first at least, however short its life:
#: a kitchen plans a few days ahead. A choice of this program, not a published figure.
LAST_DAYS = 3


def soon_window(life_days: int) -> int:
    """How many days before a date food is eaten first: a quarter of its life, 1 to 30 days.
    A choice of this program, not a published figure."""
    return min(30, max(1, life_days // 4))


def worse(one: Verdict, other: Verdict) -> Verdict:
    return min(one, other, key=SEVERITY.index)
