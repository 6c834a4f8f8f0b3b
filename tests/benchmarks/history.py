"""What happened in a made-up household: any number of jars in store, any length of history.

It puts up batches of 4 to 14 containers year after year and eats them up; a few stand open, some
were moved, given away or thrown out, a few crates are drawn from by the pound, and its places are
read off all the while. What is in store on the last day was put up in the last year, and all of it
may still be eaten, so that every act of the benchmark has something to act on.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from datetime import date, timedelta

#: The day on which every store of the benchmark is looked at.
TODAY = date(2026, 11, 25)


@dataclass(frozen=True, slots=True)
class Size:
    """`live` containers in store, `events` in the log besides `readings`, over so many `years`.

    Without `events`, three of five containers ever put up are gone by now.
    """

    live: int
    events: int | None = None
    readings: int = 1_200
    years: int = 10
    seed: int = 8

    def __str__(self) -> str:
        behind = f" after {self.events:,} events" if self.events else ""
        return f"{self.live:,}{behind}"


@dataclass(frozen=True, slots=True)
class Kind:
    """One line of what the household puts up, in the words of the reference tables."""

    food: str
    group: str
    acidity: str
    method: str
    size: str
    stands: str  # the kind of place it stands in
    process: tuple[tuple[str, str], ...] = ()
    opens: bool = False  # its opened life is weeks, so one may be found open
    amount: str = ""  # what a crate holds at first, in pounds


_BY_DIAL = ("psi", "11"), ("canner", "dial")
KINDS = (
    Kind("runner beans", "vegetable", "low-acid", "pressure canned", "pint jars", "cellar",
         (("minutes", "20"), *_BY_DIAL)),
    Kind("beets", "vegetable", "low-acid", "pressure canned", "pint jars", "cellar",
         (("minutes", "30"), *_BY_DIAL)),
    Kind("peaches", "fruit", "acid", "boiling-water canned", "pint jars", "cellar",
         (("minutes", "25"),)),
    Kind("applesauce", "fruit", "acid", "boiling-water canned", "pint jars", "pantry",
         (("minutes", "15"),)),
    Kind("crushed tomatoes", "vegetable", "acid", "boiling-water canned", "pint jars", "pantry",
         (("minutes", "35"), ("acid", "lemon juice"))),
    Kind("strawberry jam", "relish", "acid", "jam", "half-pint jars", "pantry", opens=True),
    Kind("raspberry jam", "relish", "acid", "jam", "half-pint jars", "pantry", opens=True),
    Kind("dill pickles", "vegetable", "acidified", "vinegar pickle", "quart jars", "pantry",
         (("vinegar", "5%"),), opens=True),
    Kind("apples", "fruit", "acid", "dried", "quart jars", "pantry"),
    Kind("peas", "vegetable", "low-acid", "frozen", "pint bags", "freezer"),
    Kind("strawberries", "fruit", "acid", "frozen", "quart bags", "freezer"),
    Kind("beef", "meat", "low-acid", "frozen", "1 lb packs", "freezer"),
    Kind("chickens", "meat", "low-acid", "frozen", "whole birds", "freezer"),
    Kind("bread-and-butter pickles", "vegetable", "acidified", "fridge pickle", "pint jars",
         "fridge", (("vinegar", "5%"),)),
)  # fmt: skip
CRATES = (
    Kind("carrots", "vegetable", "low-acid", "cellar-stored", "crate", "roots", amount="40"),
    Kind("potatoes", "vegetable", "low-acid", "cellar-stored", "sack", "roots", amount="50"),
    Kind("onions", "vegetable", "low-acid", "cellar-stored", "net", "roots", amount="18"),
)
#: Kinds of places: their climate, target, and how far their readings swing, °F. None is out of the
#: range of what stands there ...
WARMTH = {
    "cellar": ("cellar", 48, 3),
    "roots": ("cellar", 39, 1),
    "pantry": ("pantry", 57, 3),
    "freezer": ("freezer", -4, 3),
    "fridge": ("fridge", 37, 2),
}
#: ... but one, about which the program has something to say on its first screen.
TOO_WARM, BY_F = "board 1", 6


@dataclass(slots=True)
class Place:
    """`number` counts from 0; `inside` is the number of the place around it, `kind` one of
    `WARMTH`."""

    number: int
    name: str
    kind: str
    inside: int | None = None
    id: str = ""

    @property
    def climate(self) -> str:
        return WARMTH[self.kind][0]

    @property
    def target_f(self) -> int:
        return WARMTH[self.kind][1]


@dataclass(slots=True)
class Batch:
    """What was put up in one go, and what of it is left. Containers count from 1."""

    kind: Kind
    made: date
    count: int
    place: Place
    code: str = ""
    id: str = ""


@dataclass(slots=True)
class Fact:
    """One thing that happened. `what` is one of place, put_up, use, open, move, discard, give,
    rated, reading; `pounds` of a `use` is (drawn, left) of a crate."""

    what: str
    day: date
    batch: Batch | None = None
    containers: tuple[int, ...] = ()
    place: Place | None = None
    pounds: tuple[int, int] | None = None
    words: str = ""  # why it was discarded, to whom it was given, what was said of it
    temp_f: float = 0.0
    humidity: float | None = None


def places_of(size: Size) -> list[Place]:
    """A cellar and a larder with shelves, freezers and a fridge: more of them for more jars."""
    more = min(24, max(1, size.live // 1_000))
    found = [
        Place(0, "cellar", "cellar"),
        Place(1, "larder", "pantry"),
        Place(2, "fridge", "fridge"),
        Place(3, "bins", "roots"),
    ]
    for n in range(1, more + 1):
        for name, kind, inside in (("shelf", "cellar", 0), ("board", "pantry", 1),
                                      ("freezer", "freezer", None)):  # fmt: skip
            found.append(Place(len(found), f"{name} {n}", kind, inside))
    for place in found:
        place.id = f"p{place.number}"
    return found


@dataclass(slots=True)
class Household:
    """A history under construction."""

    size: Size
    places: list[Place] = field(init=False)
    facts: list[Fact] = field(default_factory=list)
    chance: random.Random = field(init=False)

    def __post_init__(self) -> None:
        self.chance = random.Random(f"{self.size}{self.size.seed}")
        self.places = places_of(self.size)

    @property
    def begin(self) -> date:
        return TODAY - timedelta(days=365 * self.size.years)

    def live_through(self) -> list[Fact]:
        """All that happened, in the order of the days."""
        self.facts = [Fact("place", self.begin, place=place) for place in self.places]
        gone = self._in_store()
        self._eaten_up(gone)
        self._rate()
        self._read_off()
        self.facts.sort(key=lambda fact: fact.day)  # stable: a batch is put up before it is used
        return self.facts

    def _where(self, kind: str) -> Place:
        return self.chance.choice([one for one in self.places if one.kind == kind])

    def _put_up(self, kind: Kind, made: date, count: int) -> Batch:
        batch = Batch(kind, made, count, self._where(kind.stands))
        self.facts.append(Fact("put_up", made, batch, tuple(range(1, count + 1)), batch.place))
        return batch

    def _in_store(self) -> int:
        """The batches of this year, of which exactly `live` containers are left; how many are
        gone."""
        left, gone, chance = self.size.live, 0, self.chance
        while left:
            if chance.random() < 0.03:
                batch = self._put_up(chance.choice(CRATES), TODAY - timedelta(days=20), 1)
                self._draw(batch)
                left -= 1
                continue
            kind, count = chance.choice(KINDS), chance.randint(4, 14)
            made = TODAY - timedelta(days=chance.randint(1, 40 if kind.stands == "fridge" else 340))
            batch = self._put_up(kind, made, count)
            stay = min(left, chance.randint(1, count))
            self._move_or_open(batch, count)
            self._take(batch, list(range(1, count - stay + 1)))
            left, gone = left - stay, gone + count - stay
        return gone

    def _draw(self, batch: Batch) -> None:
        left = int(batch.kind.amount)
        for n in range(self.chance.randint(0, 5)):
            left -= 2
            day = batch.made + timedelta(days=2 * n + 1)
            self.facts.append(Fact("use", day, batch, (1,), pounds=(2, left)))

    def _move_or_open(self, batch: Batch, last: int) -> None:
        """One batch in eight was moved on the day after; one in twenty has a jar open."""
        if self.chance.random() < 0.125:
            to = self._where(batch.kind.stands)
            every = tuple(range(1, batch.count + 1))
            self.facts.append(Fact("move", batch.made, batch, every, to))
        if batch.kind.opens and self.chance.random() < 0.05:
            day = TODAY - timedelta(days=min(10, (TODAY - batch.made).days))
            self.facts.append(Fact("open", day, batch, (last,), self._where("fridge")))

    def _take(self, batch: Batch, numbers: list[int], within: int = 0) -> None:
        """These are eaten, given away or thrown out between the day made and today."""
        span = within or (TODAY - batch.made).days
        days = sorted(self.chance.randint(0, span) for _ in numbers)
        for number, ago in zip(numbers, days, strict=True):
            day, fate = batch.made + timedelta(days=ago), self.chance.random()
            if fate < 0.06:
                self.facts.append(Fact("discard", day, batch, (number,), words="seal failed"))
            elif fate < 0.1:
                self.facts.append(Fact("give", day, batch, (number,), words="Aunt Sunniva"))
            else:
                self.facts.append(Fact("use", day, batch, (number,)))

    def _eaten_up(self, gone: int) -> None:
        """The batches of the years before, all gone: as many as the size asks for."""
        first = (TODAY - self.begin).days
        wanted = round(self.size.live * 1.5)
        while len(self.facts) < self.size.events if self.size.events else gone < wanted:
            kind, count = self.chance.choice(KINDS), self.chance.randint(4, 14)
            if self.size.events:
                count = max(1, min(count, self.size.events - len(self.facts) - 1))
            made = self.begin + timedelta(days=self.chance.randint(1, max(2, first - 730)))
            self._take(self._put_up(kind, made, count), list(range(1, count + 1)), 365)
            gone += count

    def _rate(self) -> None:
        """Something is said of every tenth batch, while the log has room for it."""
        said = [fact for fact in self.facts if fact.what == "put_up"][::10]
        room = self.size.events - len(self.facts) if self.size.events else len(said)
        for fact in said[: max(0, room)]:
            self.facts.append(Fact("rated", fact.day, fact.batch, words="less salt"))

    def _read_off(self) -> None:
        span = (TODAY - self.begin).days
        for n in range(self.size.readings):
            place = self.places[n % len(self.places)]
            _, target, swing = WARMTH[place.kind]
            day = self.begin + timedelta(days=1 + n * (span - 1) // self.size.readings)
            more = BY_F if place.name == TOO_WARM else 0
            temp = float(target + more + self.chance.randint(-swing, swing))
            humid = float(self.chance.randint(80, 95)) if place.climate == "cellar" else None
            self.facts.append(Fact("reading", day, place=place, temp_f=temp, humidity=humid))
