"""The year of a food, from which next year's plan is made.

A food's year runs from its first batch to the next year's first batch:
opening + made - given - lost - unrecorded - repacked - closing = eaten, in containers, a begun one
by the part that is left of it; in pounds or pieces where a food is drawn from by them alone.
"""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter, defaultdict
from collections.abc import Sequence
from datetime import date
from operator import attrgetter

from pantry_tui.core.log.payloads import Fate
from pantry_tui.core.model import Container
from pantry_tui.errors import BadInput
from pantry_tui.services.books.past import Came, Gone, Past, by_food
from pantry_tui.services.books.rows import FoodYear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.portions import MISSING, UNRECORDED

_DAY = attrgetter("day")

#: Fates as the year counts them; "used" is what is left over, so it is checked, not counted.
_GIVEN, _LOST, _UNRECORDED = ("given",), ("discarded", "lost"), (UNRECORDED, MISSING)


def years(p: Pantry, food: str | None = None) -> list[FoodYear]:
    """Every year of every food (or of one), the last one still running. Raises BadInput."""
    wanted = _name(p, food) if food else None
    foods = by_food(p)
    names = sorted(foods) if wanted is None else [wanted] if wanted in foods else []
    return [year for name in names for year in _of_food(name, foods[name])]


def _name(p: Pantry, food: str) -> str:
    facts = p.facts(food)
    if facts is None:
        near = ", ".join(p.tables.index.near(food)) or "none"
        raise BadInput(f"{food!r} is no known food; near it: {near}.")
    return facts.name


def _of_food(name: str, batches: Sequence[Past]) -> list[FoodYear]:
    """From the first batch of each calendar year to the next one's first."""
    came = [one for batch in batches for one in batch.came]
    firsts: dict[int, date] = {}
    for one in came:
        firsts[one.born.year] = min(firsts.get(one.born.year, one.born), one.born)
    starts, unit = sorted(firsts.values()), unit_of(came)
    sums = _Sums(starts, unit)
    for batch in batches:
        sums.count(batch)
    opening, found = 0.0, []
    for n, (start, year) in enumerate(zip(starts, sums.years, strict=True)):
        end = starts[n + 1] if n + 1 < len(starts) else None
        closing = opening + year.made - year.went
        given, lost, unrecorded = year.of(*_GIVEN), year.of(*_LOST), year.of(*_UNRECORDED)
        repacked = year.of(Fate.REPACKED)
        eaten = opening + year.made - given - lost - unrecorded - repacked - closing
        aside = 0 if end else sum(batch.apart for batch in batches)
        found.append(
            FoodYear(
                name,
                start,
                end,
                _tidy(opening),
                _tidy(year.made),
                _tidy(given),
                _tidy(lost),
                _tidy(unrecorded),
                _tidy(closing),
                _tidy(eaten),
                reserved=aside,
                repacked=_tidy(repacked),
                unit=unit,
                tasted=tuple(year.tasted),
            )
        )
        opening = closing
    return found


class _Year:
    """The sums of one year of a food."""

    def __init__(self) -> None:
        self.made = self.went = 0.0
        self.left: dict[str, float] = defaultdict(float)
        self.tasted: list[str] = []

    def of(self, *fates: str) -> float:
        return sum(self.left[fate] for fate in fates)


class _Sums:
    """What came and went in each year of a food, in containers or in `unit`."""

    def __init__(self, starts: Sequence[date], unit: str) -> None:
        self._starts, self._unit = starts, unit
        self.years = [_Year() for _ in starts]
        self._known: dict[date, int] = {}

    def _in(self, day: date) -> int:
        """The number of the year in which a day lies, -1 before the first."""
        if day not in self._known:
            self._known[day] = bisect_right(self._starts, day) - 1
        return self._known[day]

    def _size(self, one: Came) -> float:
        return float(one.first.number) if self._unit else 1.0

    def count(self, batch: Past) -> None:
        said = batch.rated[1]
        for one in batch.came:
            year = self.years[self._in(one.born)]
            year.made += one.n * self._size(one)
            if said and said not in year.tasted[-1:]:
                year.tasted.append(said)
        if len(batch.came) == 1 and not any(gone.number for gone in batch.gone):
            # Nearly all: jars that are alike and left whole, each once.
            alike = Counter((gone.fate, gone.day) for gone in batch.gone)
            for (fate, day), many in alike.items():
                self._goes(batch.came[0], fate, day, many, many)
            return
        left: dict[int, list[Gone]] = defaultdict(list)
        for gone in batch.gone:
            left[gone.at].append(gone)
        for at, parts in left.items():
            came = batch.came_at(at)
            if len(parts) == 1 and parts[0].number is None:
                self._goes(came, parts[0].fate, parts[0].day, 1.0, 1.0)
            else:
                self._went(came, parts)

    def _went(self, one: Came, parts: Sequence[Gone]) -> None:
        """No more of a container goes than there was."""
        before = 0.0
        for gone in sorted(parts, key=_DAY):
            share = 1.0 if gone.number is None else float(gone.number / one.first.number)
            part = min(1.0, before + share) - min(1.0, before)
            self._goes(one, gone.fate, gone.day, share, part)
            before += share

    def _goes(self, one: Came, fate: str, day: date, share: float, part: float) -> None:
        """Of a container a share is said to have left it (of many, all of them), `part` of it was
        there. Nothing goes before it came."""
        size, year = self._size(one), self._in(day)
        came = year if day >= one.born else self._in(one.born)
        self.years[came].went += size * part
        if year >= 0:
            self.years[year].left[fate] += size * share


def unit_of(containers: Sequence[Came] | Sequence[Container]) -> str:
    """What a food is counted in: its containers (""), or the unit in which all of them are drawn
    from ("lb", "pieces")."""
    units = {c.first.unit or "pieces" for c in containers if c.bulk and c.first}
    return units.pop() if len(units) == 1 and all(c.bulk for c in containers) else ""


def _tidy(number: float) -> float:
    """A whole number as one; else two decimals."""
    near = round(number, 2)
    return int(near) if near == int(near) else near
