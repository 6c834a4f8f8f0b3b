"""What a container's exposures come to: its clocks, its safety limits, what no figure covers.

Being opened, being thawed and having been made each start a clock of their own that never stops:
a later span can add a limit and never takes one away. Over two hours in all above 40 °F, or where
food of its kind is refused, and it is over at once; up to two hours only the clock is charged
(USDA FSIS, the two-hour rule; one hour above 90 °F).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.cases import BOTH_WORLDS_F, Said, Told, sayings
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.packs import packed
from pantry_tui.core.keeping.printed import date_stands_alone
from pantry_tui.core.keeping.quality import Spent, Stretch, end_of
from pantry_tui.core.keeping.rules import (
    BOUGHT_OUT,
    COOK_AT_ONCE,
    SHELF_STABLE,
    Rule,
    Rulebook,
    last_day,
)
from pantry_tui.core.keeping.shop import Shop
from pantry_tui.core.keeping.trouble import (
    Trouble,
    frozen_in_time,
    lasting,
    nothing_against,
    nothing_published,
    trouble,
)
from pantry_tui.core.keeping.warm import HOT_F, WARM_MIN, Warm, charged, passed
from pantry_tui.core.keeping.warmth import Life
from pantry_tui.core.keeping.weather import FOREVER
from pantry_tui.core.model import DAY_MIN, Batch, When
from pantry_tui.core.safety.outage import OutageRule, perishing
from pantry_tui.core.words import ASSUMED_F, Climate, Group, Kind, Method, State

_ONE_DAY = timedelta(days=1)
_SMOKED = frozenset({Method.HOT_SMOKED, Method.COLD_SMOKED})


@dataclass(frozen=True, slots=True)
class Limit:
    """The last good day, day 0, the rule that says so; `text` where a sentence of its own says it
    better than the figure."""

    day: date
    start: date
    rule: Rule | OutageRule | None
    text: str = ""


class Reckoning:
    """The sums over all spans of one container."""

    def __init__(
        self, batch: Batch, spans: Sequence[Span], book: Rulebook, now: When, unsealed: bool = False
    ) -> None:
        """`unsealed`: its lid never sealed, or the cold saved it from a doubtful process."""
        self.batch, self.spans, self.book, self.now, self.home = batch, spans, book, now, now
        self._unsealed = unsealed
        self._hurts = self._two_hours = can_hurt(batch)
        self._shop = Shop(batch, book)
        self.sold, self.method = self._shop.sold, self._shop.method
        self._thaws = self.method not in SHELF_STABLE
        # A closed jar that froze is no frozen food; what was taken out of it and frozen is.
        self._opened_thaws = self._hurts and self.method in LIDDED
        closed = packed(batch.food, batch, False)
        self._closed = sayings(closed, self.method, book, self._shop.heard)
        self._open = (
            self._closed
            if closed is batch.food
            else sayings(packed(batch.food, batch, True), self.method, book, self._shop.heard)
        )
        self._by_span = [(span, tuple(self._of(span))) for span in spans]
        self.told = [one for _, told in self._by_span for one in told]
        self.clocks = self._start_clocks()
        self.warm: list[Warm] = []
        self.limits: list[Limit] = []
        self._reckon()

    # -- what is said of each span --------------------------------------------------------------

    def states(self, span: Span) -> list[State]:
        """All that it is at once; each has a clock and rules of its own."""
        found = [State.IN_PROGRESS] if span.in_progress else []
        if span.opened:
            found.append(State.OPEN)
        if span.thawed is not None and (self._thaws or (self._opened_thaws and span.opened)):
            found.append(State.THAWED)
        if not found:
            found.append(self._shut(span))
        return found

    def _shut(self, span: Span) -> State:
        """Sealed, unless its lid never sealed: then it has a day out of the cold and keeps like an
        opened one in it."""
        if not self._unsealed:
            return State.SEALED
        return State.OPEN if span.climate.is_cold else State.IN_PROGRESS

    def _of(self, span: Span) -> Iterator[Told]:
        for state in self.states(span):
            yield self._told_as(state, span)

    def _told_as(self, state: State, span: Span) -> Told:
        by = self._open if span.opened else self._closed
        return Told(span, state, by.of(state, span.climate, span.taken_f))

    def _start_clocks(self) -> dict[State, date]:
        """Day 0 of each state. What is frozen goes on as frozen when it is opened; its clock
        starts when it is out."""
        found, frozen = dict[State, date](), dict[State, date]()
        for span, state, _ in self.told:
            day = span.day
            if state is State.THAWED:
                assert span.thawed is not None
                day = span.thawed
            elif self._unsealed:
                day = min(day, self.spans[0].day)
            into = frozen if state is State.OPEN and span.frozen else found
            into[state] = min(into.get(state, day), day)
        came = next(iter(self.told), None)
        filled = self.batch.carried or self._open is not self._closed
        if came and came.span.opened and (filled or not came.said.speaks_of(self.batch.food.name)):
            # What came open keeps no longer than it would have shut.
            found.setdefault(State.SEALED, self.batch.made or came.span.day)
        return frozen | found

    # -- safety ---------------------------------------------------------------------------------

    def _reckon(self) -> None:
        for span, state, said in self.told:
            self._run(state, said)
            if state in (State.OPEN, State.THAWED):
                self._run_on(span, state)
            if self._unsealed:
                # A failed seal makes nothing stand where it might not stand sealed.
                self._refused_sealed(span)
            if said.refusal is not None:
                self._refused(span, state, said.refusal)
            elif span.climate is Climate.FREEZER:
                # What may not be frozen may not stand in a freezer that is too warm either.
                self._refused_in_freezer(span, state)
            self._too_warm(span, state, said)
            if span.fast and state is State.THAWED:
                assert span.thawed is not None
                self.limits.append(Limit(span.thawed, span.thawed, COOK_AT_ONCE))

    def printed(self, state: State) -> bool:
        """Whether the date on the pack stands for the figures; once opened it says nothing."""
        bought = self.batch.method is Method.BOUGHT and self.batch.printed is not None
        return bought and state is State.SEALED

    def _run(self, state: State, said: Said) -> None:
        """Start the limits of a state; beside a date that stands alone, the household's own."""
        alone = self.printed(state) and date_stands_alone(self.batch, self.sold)
        own = [rule for rule in said.own if rule.kind is Kind.SAFETY]
        days = () if alone else self._shop.last_days(state, said)
        for rule in (*(() if alone else said.safety), *own, *days):
            if rule.use is not None:
                self._limit(self.clocks[state], rule, rule.use)

    def _limit(self, start: date, rule: Rule, use: float) -> None:
        limit = Limit(last_day(start, use, rule.unit), start, rule)
        if limit not in self.limits:
            self.limits.append(limit)

    def _run_on(self, span: Span, state: State) -> None:
        """What else runs on food that was opened or thawed: what counts from the day it was made,
        unless it was frozen; what is thawed keeps, in any freezer, as in a refrigerator."""
        if not span.relieved and State.SEALED in self.clocks:
            said = self._told_as(State.SEALED, span).said
            self._run(State.SEALED, said)
            if self.told[0].span.opened:  # came open
                self._run(State.SEALED, self._closed.of(State.SEALED, span.climate, span.taken_f))
            self._too_warm(span, State.SEALED, said)
            self._refused_sealed(span)
        if state is State.THAWED:
            by = self._open if span.opened else self._closed
            self._run(state, by.of(state, Climate.FRIDGE, ASSUMED_F[Climate.FRIDGE]))
        elif self._unsealed:
            self._run(state, self._told_as(State.IN_PROGRESS, span).said)

    def _refused_in_freezer(self, span: Span, state: State) -> None:
        by = self._open if span.opened else self._closed
        said = by.of(state, Climate.FREEZER, ASSUMED_F[Climate.FREEZER])
        if said.refusal is not None:
            self._refused(span, state, said.refusal)

    def _refused_sealed(self, span: Span) -> None:
        said = self._told_as(State.SEALED, span).said
        if said.refusal is not None and not span.climate.is_cold:
            self._refused(span, State.SEALED, said.refusal)

    def _refused(self, span: Span, state: State, rule: Rule) -> None:
        """In the warm it has two hours; what is refused in the cold, and smoked fish on a shelf,
        is refused at once."""
        ours = nothing_against(self.batch, state, rule, self.book)
        self._two_hours |= ours
        if ours or self._shop.stands(span, state):
            return
        smoked_fish = self.batch.method in _SMOKED and self.batch.food.group is Group.FISH
        if not (span.climate.is_cold or Climate.FRIDGE in rule.climates or smoked_fish):
            self.warm.append(Warm(span.start, span.end, span.day, span.temperature_f, rule, ""))
        elif span.end > span.start or smoked_fish:
            self.limits.append(Limit(span.day - _ONE_DAY, span.day, rule, rule.wording))

    def _too_warm(self, span: Span, state: State, said: Said) -> None:
        """A refrigerator or freezer that is too warm for what has a safety figure in the cold, or
        for what the table of power cuts throws away after two hours; a shelf, for what was bought
        cold."""
        own = said.coldest if said.perishable else None
        coldest = BOTH_WORLDS_F if own is None else own
        held_cold = self._shop.held_cold(span, state) and not self._shop.stands(span, state)
        if not held_cold or span.temperature_f <= coldest:
            return
        rule: Rule | OutageRule | None
        if own is not None:
            rule = said.safety[0]
        else:
            food = packed(self.batch.food, self.batch, span.opened)
            rule = perishing(food, self.batch.method, state, self.book.cuts())
            if rule is None and not span.climate.is_cold and said.refusal is None:
                rule = BOUGHT_OUT if self._shop.moist(state) else None
            if rule is None:
                return
        how = "Read" if span.measured else "Set"
        where = f"{how} at {span.temperature_f:g} F, above {coldest:g} F"
        self.warm.append(Warm(span.start, span.end, span.day, span.temperature_f, rule, where))

    def refused_here(self) -> str:
        """Why it may not stand where it stands now, "" where it may."""
        found = (
            one.said.refusal
            for one in self.told
            if one.span.end >= FOREVER and not self._shop.stands(one.span, one.state)
        )
        return next((rule.wording for rule in found if rule is not None), "")

    def over(self, now: int) -> Limit | None:
        """The limit that more than two hours of warmth set, up to a minute."""
        lived = [one._replace(end=min(one.end, now)) for one in self.warm]
        found = passed(lived, WARM_MIN)
        if found is None:
            return None
        warm, minute = found
        # What is refused there says so in its own words.
        text = f"{warm.where}, for over two hours in all: discard." if warm.where else ""
        day = max(min(warm.day, self.home.day_of(warm.end)), self.home.day_of(minute))
        return Limit(day - _ONE_DAY, day, warm.rule, text)

    def charged(self, now: int) -> int:
        """How many of the two hours are gone."""
        return charged(one._replace(end=min(one.end, now)) for one in self.warm if one.start < now)

    def runs_out(self, now: int) -> int | None:
        """The minute at which the two hours run out where it stands, which they have not by `now`;
        None where they do not."""
        here = [one for one in self.warm if one.end >= FOREVER]
        if not here:
            return None
        counts = 2 if any(one.temperature_f > HOT_F for one in here) else 1
        return now + (WARM_MIN - self.charged(now)) // counts + 1

    # -- quality and what no figure covers ------------------------------------------------------

    def spent(self) -> Spent | None:
        """The earliest end of the quality life of any of its states."""
        ends = [end for lives in self.lives().values() if (end := end_of(lives)) is not None]
        return min(ends, key=lambda one: one.day, default=None)

    def lives(self) -> dict[State, list[Stretch]]:
        """What quality life it lived in each of its states, in minutes of the local clock: a life
        counts days, and a day begins at home. A stay of which no figure speaks gives no time back:
        it counts as the one before it, a jar that stood in a freezer first as what came after."""
        ahead = self.now.zone
        found: dict[State, list[Stretch]] = {}
        lived: dict[State, Life] = {}
        waiting: dict[State, list[Span]] = {}
        for span, state, said in self.told:
            life = said.quality or lived.get(state)
            if self.printed(state):
                continue
            if life is None:
                if span.frozen:
                    waiting.setdefault(state, []).append(span)
                continue
            lived[state] = life
            found.setdefault(state, []).extend(
                Stretch(one.start + ahead, one.end + ahead, one.day, life)
                for one in (*waiting.pop(state, ()), span)
            )
        return found

    def own_quality(self) -> Limit | None:
        """What the household's own rules say of its quality."""
        found = (
            Limit(last_day(span.day, rule.use, rule.unit), span.day, rule)
            for span, _, said in self.told
            for rule in said.own
            if rule.kind is Kind.QUALITY and rule.use is not None
        )
        return min(found, key=lambda one: one.day, default=None)

    def troubles(self) -> list[Trouble]:
        """Why no published figure covers all of its life, the earliest first."""
        found: list[Trouble] = []
        bare: list[tuple[Span, Trouble]] = []
        for span, told in self._by_span:
            speaks = []
            for one in told:
                _, state, said = one
                wrong = trouble(self.batch, span, said, self.book)
                if wrong is not None:
                    found.append(wrong)
                if state is not State.IN_PROGRESS or self._unsealed:
                    speaks.append(one)
                elif self._hurts and not said.found:
                    found.append(nothing_published(self.batch, state, span.climate, said.found))
            if span.thawed is not None and not span.relieved:
                # It was never frozen: to call it thawed brings no figure for it.
                opened = [one for one in speaks if one.state is State.OPEN]
                speaks = opened or [self._told_as(State.SEALED, span)]
            if speaks and not any(self._speaks(one) for one in speaks):
                last = speaks[-1]
                rules = self._shop.found(*last)
                case = self.batch, last.state, span.climate, rules, self.spans[0].climate
                bare.append((span, nothing_published(*case)))
        warm = [(one.start, one.end) for one in self.warm if self._hurts]
        least = WARM_MIN if self._two_hours else DAY_MIN
        return found + lasting(bare, warm, self.now.last, least, hurts=self._hurts)

    def _speaks(self, told: Told) -> bool:
        """Whether a figure stands for it, or the date on a pack."""
        if frozen_in_time(told, (one.rule for one in self.limits)):
            return True
        if self.batch.method is Method.BOUGHT:
            return self._shop.speaks(told.span, told.state, told.said)
        no = told.said.refusal
        ours = no is not None and nothing_against(self.batch, told.state, no, self.book)
        return told.said.covered or (no is not None and not ours)
