"""From facts and one choice of their unknown hours: a container's life as spans of minutes.

A span is cut wherever its place, its place's climate or warmth, or its own state changes. Warmth
is what was read or, without a reading, what the place is meant to hold.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from math import ceil

from tests.judging import hazards, papers
from tests.judging.places import Moments, Place
from tests.judging.world import (
    COLD_TO_WARM,
    DAY,
    Drawn,
    Fact,
    Left,
    LooksSound,
    Moved,
    Opened,
    PutUp,
    Ready,
    SignSeen,
    Thawed,
    day_of,
)


@dataclass(frozen=True)
class Span:
    start: int
    end: int
    place: str
    climate: str
    temp_f: float
    state: str
    closed: bool
    vacuum: bool
    frozen: bool
    day0: int
    made: int
    arrived: int
    cut: int | None = None


@dataclass
class _Now:
    """What a container is while its life is walked through."""

    place: str
    state: str
    closed: bool
    vacuum: bool
    day0: int
    made: int
    arrived: int
    frozen: bool = False
    thawing: int | None = None


class Life:
    """The walk: facts of the container in the order of their moments, edges of its places."""

    def __init__(
        self,
        facts: Sequence[Fact],
        batch: Fact,
        made: int,
        born: int,
        at: Moments,
        container: str,
        now: int,
        turned: bool = False,
    ) -> None:
        self.put_up = batch.what
        assert isinstance(self.put_up, PutUp)
        self.born, self.made = born, made
        names = {self.put_up.place}
        mine = [f for f in facts if getattr(f.what, "container", None) == container]
        names |= {f.what.place for f in mine if isinstance(f.what, Moved)}
        self.places = {n: Place(facts, at, n, now) for n in names}
        # what was done on one and the same minute may have been done either way round
        mine.sort(key=lambda f: f.id)
        if turned:
            mine = [f for f in reversed(mine) if not _in_turn(f)] + [f for f in mine if _in_turn(f)]
        self.steps = sorted(
            ((max(at[f.id], self.born), f) for f in mine), key=lambda p: (p[0], _rank(p[1]))
        )
        self.tied = any(
            a[0] == b[0]
            and isinstance(a[1].what, Moved)
            and isinstance(b[1].what, Moved)
            and not _in_turn(b[1])
            for a, b in pairwise(self.steps)
        )
        self.now = now
        self.ended: int | None = None
        self.signs: list[tuple[int, str, str]] = []
        self.sound_at: list[int] = []
        self.thaws: list[int] = []
        self.cooked_by: int | None = None
        self.is_ = _Now(
            self.put_up.place,
            self.put_up.state,
            True,
            self.put_up.vacuum,
            made,
            made,
            self.born,
            # put up by freezing, it came frozen, also into a freezer that is too warm
            frozen=self.put_up.method == "frozen"
            and self.places[self.put_up.place].climate_at(self.born)[0] == "freezer",
        )
        self.spans: list[Span] = []
        self._walk()

    def _walk(self) -> None:
        t = self.born
        for at, fact in self.steps:
            self._stay(t, at)
            t = at
            self._happen(at, fact)
            if self.ended is not None:
                return
        self._stay(t, self.now, last=True)

    def _stay(self, a: int, b: int, last: bool = False) -> None:
        """Spans of one stay; one of no length counts (house law 7.1)."""
        place = self.places[self.is_.place]
        edges = sorted({a, b} | {e for e in place.edges() if a < e < b})
        pairs = list(pairwise(edges)) or [(a, a)]
        for x, y in pairs:
            self._piece(place, x, y)
        if last and self.spans and self.spans[-1].end == b and a < b:
            # what it is now, on this very minute: a span of no length
            self._piece(place, b, b)

    def _piece(self, place: Place, x: int, y: int) -> None:
        """One stretch under one warmth; a thaw that ends inside it divides it."""
        climate, temp, cut = place.warmth(x, y)
        self._freeze_or_thaw(x, climate, lasts=x < y)
        done = self._thawed_at()
        if done is not None and x < done < y:
            self._piece(place, x, done)
            self._piece(place, done, y)
            return
        if done is not None and done <= x:
            self._be_thawed(x)
        n = self.is_
        self.spans.append(
            Span(x, y, n.place, climate, temp, n.state, n.closed, n.vacuum and n.closed,
                 n.frozen, n.day0, n.made, n.arrived, cut)
        )  # fmt: skip

    def _freeze_or_thaw(self, t: int, climate: str, lasts: bool) -> None:
        n = self.is_
        if climate == "freezer":
            n.frozen, n.thawing = self._freezes(), None
        elif climate == "fridge" and n.frozen and n.thawing is None and lasts:
            # in no time at all nothing thaws;
            # on a shelf it has two hours, and only its clock is charged
            self._begin_thaw(t)

    def _begin_thaw(self, t: int) -> None:
        """The limit of thawed food runs from here on, and going back to the cold never stops it."""
        self.is_.thawing = t
        self.thaws.append(day_of(t) + self._thaw_days())

    def _freezes(self) -> bool:
        """Dry food, fat and spirits never thaw; a closed jar that froze is no frozen food."""
        assert isinstance(self.put_up, PutUp)
        method = self.put_up.method
        if method in hazards.DRY | {"rendered fat", "flavoured vinegar", "lime-kept"}:
            return False
        return not (method in papers.CANNED | {"jam", "vinegar pickle"} and self.is_.closed)

    def _thaw_days(self) -> int:
        """A day in the fridge for each 5 lb begun, at least one (house law 7.5)."""
        assert isinstance(self.put_up, PutUp)
        return ceil(self.put_up.weight_lb / 5)

    def _thawed_at(self) -> int | None:
        """When it is thawed through, if it is thawing."""
        if self.is_.thawing is None:
            return None
        return self.is_.thawing + DAY * self._thaw_days()

    def _be_thawed(self, t: int) -> None:
        n = self.is_
        if n.frozen:
            n.frozen, n.thawing, n.state, n.day0 = False, None, "thawed", day_of(t)
            self.thaws.append(n.day0)

    def _happen(self, t: int, fact: Fact) -> None:
        n, w = self.is_, fact.what
        if isinstance(w, Moved) and w.place != n.place:
            n.place, n.arrived = w.place, t
        elif isinstance(w, Opened) or (isinstance(w, Drawn) and w.part < 1):
            assert isinstance(self.put_up, PutUp)
            if n.closed and (isinstance(w, Opened) or self.put_up.closed_vessel):
                self._open(t)
        elif isinstance(w, Drawn | Left):
            self.ended = t
        elif isinstance(w, Ready) and n.state == "in progress":
            n.state = "sealed" if n.closed else "open"
            n.day0 = n.made = day_of(t)
        elif isinstance(w, Thawed) and n.frozen:
            if w.how == "fridge":
                # begun where it stands; a freezer goes on freezing it
                if n.thawing is None and self.places[n.place].climate_at(t)[0] != "freezer":
                    self._begin_thaw(t)
            else:
                self._be_thawed(t)
                self._cook_at_once(t, w.how)
        elif isinstance(w, SignSeen):
            self._sign(t, w)
        elif isinstance(w, LooksSound):
            self.sound_at.append(t)

    def _cook_at_once(self, t: int, how: str) -> None:
        if how in ("cold water", "microwave") and self.cooked_by is None:
            self.cooked_by = day_of(t)

    def _open(self, t: int) -> None:
        n = self.is_
        n.closed = False
        if n.state == "sealed":
            n.state = "open"
            n.day0 = day_of(t)

    def _sign(self, t: int, w: SignSeen) -> None:
        n, p = self.is_, self.put_up
        assert isinstance(p, PutUp)
        verdict, _, sign_id = hazards.sign_says(p.method, p.food, n.closed, w.sign)
        self.signs.append((t, verdict, w.sign))
        unsealed = sign_id.startswith("unsealed-within") or sign_id == "unsealed-no-hot-pack"
        if unsealed and n.state == "sealed" and n.closed:
            # A failed seal starts a clock: reprocessed or chilled within the day (README, signs).
            n.state, n.day0, n.vacuum = "in progress", day_of(t), False


def _in_turn(f: Fact) -> bool:
    """Whether it was booked as it happened, so after all that was booked before it."""
    return f.minute is None and f.day == day_of(f.booked)


def _rank(f: Fact) -> int:
    """Of facts on one minute the place first, then what was done there."""
    if isinstance(f.what, Thawed) and f.what.how in ("cold water", "microwave"):
        return -1
    order = (Moved, Thawed, Ready, Opened, Drawn, Left, SignSeen, LooksSound)
    return next((i for i, kind in enumerate(order) if isinstance(f.what, kind)), len(order))


def warmer_or_as_warm(a: str, b: str) -> bool:
    """Whether climate a is no colder than b."""
    return COLD_TO_WARM.index(a) >= COLD_TO_WARM.index(b)


def merged(spans: Sequence[Span]) -> list[Span]:
    """Touching spans that differ in nothing but their place: splitting a stay changes nothing."""
    out: list[Span] = []
    for s in spans:
        if (
            out
            and out[-1].end == s.start
            and replace(s, start=0, end=0, place="", arrived=0)
            == replace(out[-1], start=0, end=0, place="", arrived=0)
        ):
            out[-1] = replace(out[-1], end=s.end)
        else:
            out.append(s)
    return out
