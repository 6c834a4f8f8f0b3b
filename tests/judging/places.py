"""A place over time: its climate, what it was meant to hold, what was read, and its power cuts.

Built from facts and one choice of their unknown hours; the order of booking plays no part.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

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
    """One place over time: climate, target, readings and cuts, whatever the order of booking."""

    def __init__(self, facts: Sequence[Fact], at: Moments, name: str, now: int) -> None:
        mine = sorted(
            (f for f in facts if getattr(f.what, "place", None) == name), key=lambda f: at[f.id]
        )
        self.steps: list[tuple[int, str, float]] = []
        for f in mine:
            self._step(at[f.id], f.what)
        readings = [(at[f.id], f.what) for f in mine if isinstance(f.what, Reading)]
        cold = [t for t, r in readings if r.temp_f <= 40]
        first = self.steps[0][0] if self.steps else 0
        self.warm = [w for t, r in readings if (w := self._read(t, r, cold, first))]
        cuts = [
            (max(cold_before(cold, c.end), first) if c.start is None else c.start, c)
            for f in mine
            if isinstance(c := f.what, Cut)
        ]
        self.warm += self._cuts(cuts, now)

    def _step(self, t: int, w: Happening) -> None:
        if isinstance(w, PlaceOpened):
            self.steps.append((t, w.climate, _target(w.climate, w.target_f)))
        elif isinstance(w, PlaceChanged) and self.steps:
            _, climate, target = self.steps[-1]
            if w.climate is not None:
                climate, target = w.climate, _target(w.climate, None)
            self.steps.append((t, climate, target if w.target_f is None else w.target_f))

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


def _target(climate: str, target: float | None) -> float:
    return ASSUMED_F[climate] if target is None else target
