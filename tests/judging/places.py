"""A place over time: its climate, what it was meant to hold, what was read, and its power cuts.

Built from facts and one choice of their unknown hours; the order of booking plays no part.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

from tests.judging.world import (
    ASSUMED_F,
    Cut,
    Fact,
    Happening,
    PlaceChanged,
    PlaceOpened,
    Reading,
)

#: A fridge with its door shut stays cold for 4 h, a freezer 48 h full and 24 h half full (README).
HOLD = {"fridge": 4 * 60, "full": 48 * 60, "half": 24 * 60}
#: lax: cuts with up to half an hour between them adjoin, and add up (house law 7.2).
ADJOIN = 30
#: The 41 F question: a fridge is not at its end by itself at 40.1 to 41 F.
COLD_F = 41.0
#: Water freezes at 32 F and food a little below (USDA Handbook 66): at 32 F nothing is frozen.
FREEZES_F = 32.0

Moments = Mapping[str, int]


@dataclass(frozen=True)
class Warm:
    """From when to when a place was at that temperature; `cut`: for want of power, since when."""

    start: int
    end: int
    temp_f: float
    cut: int | None = None


class Place:
    """One place over time: climate, target, readings and cuts, whatever the order of booking.

    What stands in another place (a box in a refrigerator, a shelf in a cellar) is in whatever
    strikes that one, for readings, cuts and climates are facts of a place (house law 7.2), and
    what stands in the box stands in the refrigerator:
    - Where nothing else was said of it, its climate is that place's at every moment, and where it
      has that climate its target is that place's (README: "is as the larder is").
    - What was read of that place holds for it while both have one climate. lax: of an ice box in a
      refrigerator a reading of the refrigerator says nothing, nor does one of a cellar say
      anything of a refrigerator in it; a cold reading of either is believed of both.
    - The power of that place is its own, whatever climate it has: it stays cold as long as its own
      kind is promised to. lax: what was said of fullness is believed of both, and the cut of a
      place that is neither refrigerator nor freezer is nobody's.
    """

    def __init__(self, facts: Sequence[Fact], at: Moments, name: str, now: int) -> None:
        mine = sorted(
            (f for f in facts if getattr(f.what, "place", None) == name), key=lambda f: at[f.id]
        )
        above = next((w.parent for f in mine if isinstance(w := f.what, PlaceOpened)), None)
        self.within = None if above is None else Place(facts, at, above, now)
        self.said: list[tuple[int, str | None, float | None]] = []
        self.changed: list[tuple[int, str | None, str]] = []  # from which climate to which
        own_steps = [(at[f.id], 1, f.what) for f in mine]
        above_steps = [(t, 0, (old, new)) for t, old, new in self._above("changed")]
        for t, _, what in sorted([*own_steps, *above_steps], key=lambda one: one[:2]):
            if isinstance(what, tuple):
                self._with_above(t, *what)
            else:
                self._step(t, what)
        self.steps = self._steps()
        readings = [(at[f.id], f.what) for f in mine if isinstance(f.what, Reading)]
        own = [t for t, r in readings if r.temp_f <= 40]
        self.cold = own + [t for t in self._above("cold") if self._as_above(t)]
        first = self.steps[0][0] if self.steps else 0
        self.read = [one for t, r in readings if (one := self._read(t, r, self.cold, first))]
        self.read += [piece for warm in self._above("read") for piece in self._felt(warm, own)]
        self.off = [
            (max(cold_before(self.cold, c.end), first) if c.start is None else c.start, c)
            for f in mine
            if isinstance(c := f.what, Cut)
        ]
        self.off += [one for one in self._above("off") if self._was_cold_above(one[0])]
        self.warm = self.read + self._cuts(self.off, now)

    def _above(self, what: str) -> list[Any]:
        return [] if self.within is None else list(getattr(self.within, what))

    def _as_above(self, t: int) -> bool:
        """Whether it has one climate with what it stands in."""
        return self.within is not None and self.climate_at(t)[0] == self.within.climate_at(t)[0]

    def _felt(self, w: Warm, cold: list[int]) -> Iterator[Warm]:
        """What was read of the place above, since its own last cold reading, while both are of
        one climate."""
        start = max(w.start, cold_before(cold, w.end))
        edges = sorted({start, w.end} | {t for t, _, _ in self.steps if start < t < w.end})
        for a, b in pairwise(edges) if start < w.end else ():
            if self._as_above(a):
                yield replace(w, start=a, end=b)

    def _was_cold_above(self, t: int) -> bool:
        return self.within is not None and self.within.climate_at(t)[0] in ("fridge", "freezer")

    def _step(self, t: int, w: Happening) -> None:
        if isinstance(w, PlaceOpened):
            self.said.append((t, w.climate, w.target_f))
        elif isinstance(w, PlaceChanged) and self.said:
            _, climate, target = self.said[-1]
            if w.climate is not None:
                self.changed.append((t, climate or self._outer(t), w.climate))
                climate, target = w.climate, None
            self.said.append((t, climate, target if w.target_f is None else w.target_f))

    def _outer(self, t: int) -> str | None:
        """The climate above it just before."""
        return None if self.within is None else self.within.climate_at(t - 1)[0]

    def _with_above(self, t: int, old: str | None, new: str) -> None:
        """What it stands in becomes another place: what was like it becomes that too."""
        climate = self.said[-1][1] if self.said else None
        if self.said and climate in (None, old):
            self.said.append((t, None if climate is None else new, None))
            self.changed.append((t, old, new))

    def _steps(self) -> list[tuple[int, str, float]]:
        """Its climate and target from each moment on at which they, or those above it, change."""
        changes = {t for t, _, _ in self.said} | {t for t, _, _ in self._above("steps")}
        found = []
        for t in sorted(changes) if self.said else []:
            by_then = [(c, f) for since, c, f in self.said if since <= t] or [self.said[0][1:]]
            climate, target = by_then[-1]
            if self.within is not None:
                above = self.within.climate_at(t)
                climate = climate or above[0]
                target = above[1] if target is None and climate == above[0] else target
            assert climate is not None
            found.append((t, climate, ASSUMED_F[climate] if target is None else target))
        return found

    def _read(self, t: int, r: Reading, cold: list[int], first: int) -> Warm | None:
        """A reading is a moment; above 40 F it was so since it was told, or the last cold one."""
        if r.temp_f <= 40:
            return None
        since = cold_before(cold, t)
        if r.since is None:
            # lax: what is a room or a pantry by now was read as one; without a told time that says
            # nothing of the refrigerator or freezer it was before (and nobody is asked since when).
            since = max(since, self._cold_no_more(t))
        # lax: a cold reading in between is believed rather than the longer time that was told.
        start = max(since, first if r.since is None else t - r.since)
        return Warm(start, t, r.temp_f)

    def _cold_no_more(self, t: int) -> int:
        """Since when it has been no cold place by `t`; 0 if it is one."""
        by_then = [step for step in self.steps if step[0] <= t]
        found = 0
        for start, climate, _ in reversed(by_then):
            if climate in ("fridge", "freezer"):
                break
            found = start
        return found

    def _cuts(self, told: list[tuple[int, Cut]], now: int) -> list[Warm]:
        """Adjoining cuts as one; warm once the hours of hold are over, until the power is back."""
        off = [(s, min(c.end, now), c.fullness) for s, c in told if min(c.end, now) > s]
        spans = sorted(off, key=lambda one: (one[0], one[1], one[2] or ""))
        groups: list[list[tuple[int, int, str | None]]] = []
        for span in spans:
            if groups and span[0] - max(e for _, e, _ in groups[-1]) <= ADJOIN:
                groups[-1].append(span)
            else:
                groups.append([span])
        return [w for g in groups if (w := self._outage(g))]

    def _outage(self, group: list[tuple[int, int, str | None]]) -> Warm | None:
        start, end = group[0][0], max(e for _, e, _ in group)
        climate = self.climate_at(start)[0]
        if climate not in ("fridge", "freezer"):
            return None
        full = all(f == "full" for _, _, f in group)
        hold = HOLD["fridge"] if climate == "fridge" else HOLD["full" if full else "half"]
        t, left = start, hold
        for a, b, _ in group:
            a = max(a, t)
            if b - a > left:
                # A cold reading in the cut lifts nothing: only what law 7.3 names makes milder.
                return Warm(a + left, end, 50.0, cut=start)
            left -= max(0, b - a)
            t = max(t, b)
        return None

    def climate_at(self, t: int) -> tuple[str, float]:
        """Climate and meant temperature; before it was opened, what it was opened as."""
        found = self.steps[0][1:] if self.steps else ("room", ASSUMED_F["room"])
        for start, climate, target in self.steps:
            if start <= t:
                found = (climate, target)
        return found

    def edges(self) -> set[int]:
        """Every moment at which something about it changes."""
        return {s[0] for s in self.steps} | {e for w in self.warm for e in (w.start, w.end)}

    def warmth(self, a: int, b: int) -> tuple[str, float, int | None]:
        """Climate, temperature and the cut's start over [a, b), which no edge divides."""
        climate, temp = self.climate_at(a)
        cut = None
        for w in self.warm:
            if w.start <= a and b <= w.end and a < b:
                temp = max(temp, w.temp_f)
                cut = w.cut if cut is None else cut
        if climate == "freezer" and self.climate_at(a)[1] >= FREEZES_F:
            climate = "fridge"
        return climate, temp, cut


def cold_before(cold: list[int], t: int) -> int:
    """The last cold reading by then; 0 if none."""
    return max((c for c in cold if c <= t), default=0)
