"""Random lives of containers: seeded, dangerous, crowded into few days, and carelessly booked.

`random_history(seed)` is the same on every machine. Moments are told in the order in which the
person books them; the stamp on a booking may be wrong (a clock in the past or the future).
"""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import replace
from datetime import date

from tests.judging import hazards, papers
from tests.judging.world import (
    DAY,
    CorrectedMade,
    Counted,
    Cut,
    Drawn,
    Fact,
    Food,
    Happening,
    History,
    Left,
    LooksSound,
    Moved,
    Opened,
    PlaceChanged,
    PlaceOpened,
    PutUp,
    Reading,
    Ready,
    Redo,
    SignSeen,
    Thawed,
    Undo,
)

START = date(2026, 3, 2).toordinal()
EDGES_F = (0.0, 28.0, 29.0, 31.0, 32.0, 36.0, 38.0, 40.0, 40.5, 41.0, 45.0, 50.0, 60.0, 70.0, 95.0)
CLIMATES = ("room", "pantry", "cellar", "fridge", "freezer")
#: Of each kind a few places, so that a move is often from one fridge to another.
PLACES = {
    "room": ("kitchen",),
    "pantry": ("larder",),
    "cellar": ("vault",),
    "fridge": ("fridge", "second fridge"),
    "freezer": ("chest", "second chest"),
}

#: What stands in another place, and its climate: of the same, and an ice box.
WITHIN = {
    "box": ("fridge", "fridge"),
    "drawer": ("box", "fridge"),
    "ice tray": ("second fridge", "freezer"),
    "basket": ("chest", "freezer"),
    "shelf": ("vault", "cellar"),
}

#: What a person would put up this way; the dangerous foods come more than once.
USUAL: dict[str, tuple[str, ...]] = {
    "boiling-water canned": ("peaches", "tomatoes", "tomato juice", "dill pickles", "runner beans"),
    "pressure canned": ("runner beans", "beef", "chickens", "salmon", "chicken soup", "beets"),
    "jam": ("strawberry jam", "low-sugar jams", "melons", "elderberries"),
    "freezer jam": ("strawberries", "raspberries"),
    "fridge pickle": ("cucumbers", "pickled eggs", "pickled fish", "dill pickles"),
    "vinegar pickle": ("dill pickles", "pickled eggs", "pickled fish", "garlic"),
    "lactic ferment": ("sauerkraut", "fermented carrots", "garlic", "kimchi"),
    "vinegar ferment": ("vinegar",),
    "alcohol ferment": ("cider", "mead", "apple juice"),
    "fermented paste": ("miso",),
    "dried": ("jerky", "beef", "eggs", "salmon", "apples", "carrots", "walnuts", "basil"),
    "salted": ("hams", "country hams", "bacon", "corned beef", "salmon", "sausages", "eggs"),
    "hot smoked": ("salmon", "trout", "chickens", "sausages", "bacon"),
    "cold smoked": ("salmon", "bacon", "sausages", "beef"),
    "frozen": (
        "ground beef", "beef", "turkeys", "chickens", "salmon", "shrimp", "liver", "stew",
        "chicken stock", "eggs", "peas", "strawberries", "milk", "butter", "bread", "walnuts",
    ),
    "sugar preserve": ("honey", "elderflower cordial", "molasses"),
    "alcohol infusion": ("sloe gin", "vanilla extract"),
    "in oil": ("garlic", "basil", "pesto", "dried tomatoes", "beef", "mushrooms"),
    "cellar-stored": ("apples", "carrots", "potatoes", "onions"),
    "freeze-dried": ("strawberries", "beef"),
    "lime-kept": ("eggs",),
    "flavoured vinegar": ("herb vinegar", "raspberry vinegar"),
    "rendered fat": ("lard", "ghee"),
    "fresh": ("eggs", "hard-cooked eggs", "ground beef", "beef", "cod", "milk", "butter", "carrots",
              "mushrooms", "hard cheese", "apples"),
    "cooked meal": ("stew", "rice", "curry", "chicken stock", "lasagne", "hard-cooked eggs"),
    "bought in": ("chickens", "milk", "hard cheese", "carrots", "flour", "salmon"),
}  # fmt: skip
WEIGHT = {
    "frozen": 9, "cooked meal": 4, "hot smoked": 4, "cold smoked": 4, "pressure canned": 4,
    "in oil": 3, "salted": 3, "dried": 2, "fresh": 3, "fridge pickle": 2,
}  # fmt: skip
NATURAL = {
    "frozen": "freezer", "freezer jam": "freezer", "cooked meal": "fridge", "in oil": "fridge",
    "hot smoked": "fridge", "cold smoked": "fridge", "fridge pickle": "fridge", "fresh": "fridge",
    "salted": "fridge", "bought in": "fridge", "cellar-stored": "cellar",
}  # fmt: skip
SIGNS = (
    "swollen lid", "leaking lid", "unsealed within a day, tested recipe", "low liquid, tight seal",
    "mould on food or lid", "stood in flood water", "cracked or damaged jar",
)  # fmt: skip
STRANGE = (("hedgehog", "meat"), ("lungfish", "fish"), ("yampah", "vegetable"), ("kumis", "dairy"))


class Teller:
    """Draws one history."""

    def __init__(self, seed: int) -> None:
        self.r = random.Random(seed)
        self.facts: list[tuple[int, Fact]] = []
        ahead = range(self.r.choice((2, 4, 4, 30)))
        self.days = sorted(self.r.choices(ahead, k=self.r.choice((1, 2, 2, 3))))
        self.far = self.r.choice((3, 5, 30))
        self.batches: list[PutUp] = []
        self.been: dict[str, list[str]] = {}
        # A generator of its own, so that a household without any is told as it always was.
        nested = random.Random(f"places in places {seed}")
        self.within = WITHIN if nested.random() < 0.4 else {}
        self.kinds_of_place = dict(PLACES)
        for name, (_, climate) in self.within.items():
            self.kinds_of_place[climate] += (name,) * 2

    # -- choices -------------------------------------------------------------------------------

    def place(self, climate: str | None = None) -> str:
        return self.r.choice(self.kinds_of_place[climate or self.r.choice(CLIMATES)])

    def kind_of(self, place: str) -> str:
        """The climate with which it was opened."""
        return next(c for c, names in self.kinds_of_place.items() if place in names)

    def struck(self) -> str:
        """A place to read, cut or change: mostly one where something of the first batch stood."""
        if self.r.random() < 0.8:
            place = self.r.choice(self.been[self.batches[0].containers[0]][-2:])
            while place in self.within and self.r.random() < 0.6:
                place = self.within[place][0]
            return place
        return self.place(self.r.choice(("fridge", "freezer", "freezer", "fridge", "room")))

    def going(self, container: str) -> Moved:
        """Off to another place, mostly one that suits it or is colder."""
        here = self.been[container]
        kind = self.kind_of(here[0])
        cold = kind in ("fridge", "freezer")
        suits = self.r.choice(("fridge", "fridge", "freezer")) if cold else kind
        place = self.place(suits if self.r.random() < 0.75 else None)
        here.append(place)
        return Moved(container, place)

    def container(self) -> str:
        first = self.batches[0]
        if self.r.random() < 0.75:
            return first.containers[0]
        return self.r.choice([c for b in self.batches for c in b.containers])

    def moment(self) -> int:
        """Mostly on one of a few days, often close to another moment, at a full minute."""
        if self.r.random() < 0.4:
            near = self.r.choice([f for _, f in self.facts if not _opens(f.what)])
            return near.at + self.r.choice((0, 1, 5, 30, 61, 119, 121, 240, 1440))
        day = self.r.choice(self.days) if self.r.random() < 0.8 else self.r.randrange(0, self.far)
        return (START + day) * DAY + self.r.randrange(7 * 60, 22 * 60)

    # -- saying --------------------------------------------------------------------------------

    def say(self, at: int, what: Happening) -> None:
        """Book it: mostly at once, sometimes days later, sometimes with a wrong clock."""
        day, minute = at // DAY, at % DAY
        kind = self.r.random()
        if kind < 0.55:
            done, stamp, hour = at, at, self.r.choice((minute, None))
        elif kind < 0.8:
            done = at + self.r.choice((20, 200, 1500, 4500))
            stamp, hour = done, self.r.choice((minute, None, None, None))
        elif kind < 0.9:
            done, hour = at, self.r.choice((minute, None))
            stamp = at + self.r.choice((-800, -3, 3, 900)) * DAY
            day = day if self.r.random() < 0.5 else stamp // DAY
        else:
            done, stamp, hour = at, at, minute
            day += self.r.choice((-30, -2, -1, 1, 2, 300))
        self.facts.append((done, Fact("", day, hour, stamp, what)))

    def open_house(self) -> None:
        for climate, names in PLACES.items():
            for name in names:
                odd = self.r.random() < 0.04
                target = self.r.choice(EDGES_F) if odd else None
                fact = Fact(
                    "", START - 30, 0, (START - 30) * DAY, PlaceOpened(name, climate, target)
                )
                self.facts.append(((START - 30) * DAY, fact))
        for name, (parent, climate) in self.within.items():
            target = self.r.choice(EDGES_F) if self.r.random() < 0.04 else None
            # half of those that are of one climate with what they stand in: nothing was said
            own = self.kind_of(parent) != climate or self.r.random() < 0.5
            opened = PlaceOpened(name, climate if own else None, target, parent)
            self.facts.append(
                ((START - 30) * DAY, Fact("", START - 30, 0, (START - 30) * DAY, opened))
            )

    def put_up(self, n: int) -> None:
        methods = list(USUAL)
        method = self.r.choices(methods, [WEIGHT.get(m, 1) for m in methods])[0]
        food = self.food(method)
        climate = NATURAL.get(method) or self.r.choice(("pantry", "room", "cellar"))
        if self.r.random() < 0.06:
            climate = self.r.choice(CLIMATES)
        label = "ABC"[n]
        batch = PutUp(
            label,
            food,
            method,
            (f"{label}/1", f"{label}/2"),
            self.place(climate),
            state="in progress" if self.may_work(method) else "sealed",
            vacuum=self.r.random() < (0.4 if food.group in ("fish", "meat") else 0.08),
            doubt=method in papers.CANNED and self.r.random() < 0.15,
            printed=START + self.r.randrange(5, 40) if method == "bought in" else None,
            weight_lb=self.r.choice((1.0, 1.0, 4.9, 5.0, 5.1, 12.0, 20.0)),
            closed_vessel=method not in ("lactic ferment", "cellar-stored"),
        )
        self.batches.append(batch)
        self.been |= {c: [batch.place] for c in batch.containers}
        at = START * DAY + self.r.randrange(7 * 60, 22 * 60) - n * DAY
        fact = Fact("", at // DAY, self.r.choice((at % DAY, None)), at, batch)
        self.facts.append((at, fact))

    def food(self, method: str) -> Food:
        if self.r.random() < 0.06:
            name, group = self.r.choice(STRANGE)
            return Food(name, group, "low-acid", known=False)
        if self.r.random() < 0.06:
            return papers.food(self.r.choice(self.r.choice(list(USUAL.values()))))
        return papers.food(self.r.choice(USUAL[method]))

    def may_work(self, method: str) -> bool:
        works = hazards.FERMENTS | {"salted", "vinegar pickle"} | papers.CANNED
        return method in works and self.r.random() < 0.3

    # -- what happens --------------------------------------------------------------------------

    def happen(self) -> None:
        at = self.moment()
        draw = self.r.choices(list(self.kinds()), [w for w, _ in self.kinds().values()])[0]
        for step, what in enumerate(self.kinds()[draw][1](at)):
            self.say(at + step, what)

    def kinds(self) -> dict[str, tuple[int, Callable[[int], list[Happening]]]]:
        r, jar = self.r, self.container
        return {
            "moved": (10, lambda at: [self.going(jar())]),
            "opened": (5, lambda at: [Opened(jar())]),
            "opened, moved": (3, lambda at: self._then_cold(Opened(jar()))),
            "thawed": (5, lambda at: self._then_cold(Thawed(jar(), r.choice(
                ("fridge", "cold water", "microwave", "done"))))),
            "drawn": (2, lambda at: self._then_cold(Drawn(jar(), r.choice((0.25, 0.5, 0.5, 1.0))))),
            "reading": (9, lambda at: [Reading(self.struck(), r.choice(EDGES_F),
                                               r.choice((None, None, 0, 60, 90, 119, 121, 600)))]),
            "cut": (6, self._cut),
            "place changed": (3, lambda at: [PlaceChanged(self.struck(), r.choice(CLIMATES))]),
            "target changed": (3, lambda at: [PlaceChanged(self.struck(), None,
                                                           r.choice(EDGES_F))]),
            "sign": (2, lambda at: [SignSeen(jar(), r.choice(SIGNS))]),
            "looks sound": (1, lambda at: [LooksSound(jar())]),
            "ready": (2, lambda at: [Ready(jar())]),
            "made": (1, lambda at: [CorrectedMade(r.choice(self.batches).batch,
                                                  START + r.choice((-40, -5, -1, 1)))]),
        }  # fmt: skip

    def _then_cold(self, what: Drawn | Opened | Thawed) -> list[Happening]:
        """As a careful person does it: and into the fridge with it; or not."""
        if self.r.random() < 0.3:
            return [what]
        move = Moved(what.container, self.place("fridge"))
        self.been[what.container].append(move.place)
        return [what, move]

    def _cut(self, at: int) -> list[Happening]:
        place, hours = self.struck(), self.r.choice((1, 3.5, 3.9, 4.1, 7, 20, 27, 50))
        fullness = self.r.choice((None, "full", "half"))
        start = None if self.r.random() < 0.1 else at - round(hours * 60)
        cuts: list[Happening] = [Cut(place, start, at, fullness)]
        if self.r.random() < 0.4:
            # another beside it: adjoining, a quarter of an hour apart, overlapping
            again = at + self.r.choice((0, 15, -45, 30))
            cuts.append(Cut(place, again, again + round(hours * 60), fullness))
        return cuts

    def take_back(self) -> None:
        """Now and then an undo, and a redo of what it took back."""
        while self.facts and self.r.random() < 0.18:
            may = [i for i, (_, f) in enumerate(self.facts) if not _rests(f.what)]
            if not may:
                return
            # a move to a better place that never was: the dangerous thing to overlook
            moves = [i for i in may if isinstance(self.facts[i][1].what, Moved)]
            i = self.r.choice(moves if moves and self.r.random() < 0.7 else may)
            when = max(t for t, _ in self.facts) + self.r.choice((1, 60, DAY))
            self.facts.append((when, Fact("", when // DAY, None, when, Undo(f"@{i}"))))
            if self.r.random() < 0.4:
                self.facts.append((when + 1, Fact("", when // DAY, None, when + 1, Redo(f"@{i}"))))

    def _done(self, i: int) -> int:
        """When it is booked: nothing is of a place or container that is in no record yet."""
        done, fact = self.facts[i]
        about = getattr(fact.what, "container", getattr(fact.what, "batch", " "))
        ups = [(t, f.what) for t, f in self.facts if isinstance(f.what, PutUp)]
        filled = [t for t, w in ups if w.batch == about[0]]
        return max([done, (START - 30) * DAY, *filled])

    def tell_it(self) -> None:
        self.open_house()
        for n in range(self.r.choice((1, 1, 2))):
            self.put_up(n)
        for _ in range(self.r.choice((2, 2, 2, 3, 3, 4, 5, 7, 9))):
            self.happen()

    def tell(self, seed: int) -> History:
        self.tell_it()
        self.take_back()
        order = sorted(range(len(self.facts)), key=lambda i: (self._done(i), i))
        name = {i: f"f{n}" for n, i in enumerate(order)}
        facts = tuple(_named(self.facts[i][1], name, i) for i in order)
        last = max(t for t, _ in self.facts)
        now = last + self.r.choice((1, 60, 60, DAY, DAY, 2 * DAY, 5 * DAY, 30 * DAY))
        return History(facts, now, f"seed {seed}")


def _opens(what: Happening) -> bool:
    return isinstance(what, PlaceOpened)


def _rests(what: Happening) -> bool:
    """What others rest on, and what takes back, is not taken back here."""
    return isinstance(what, PlaceOpened | PutUp | Undo | Redo)


def _named(f: Fact, name: dict[int, str], i: int) -> Fact:
    what = f.what
    if isinstance(what, Undo | Redo):
        what = type(what)(name[int(what.fact.removeprefix("@"))])
    return replace(f, id=name[i], what=what)


class _Repacker(Teller):
    """Draws one history in which what was put up is made into something else, and goes on as it."""

    def container(self) -> str:
        last = self.batches[-1]
        if last.parts and self.r.random() < 0.8:
            return self.r.choice(last.containers)
        return super().container()

    def struck(self) -> str:
        last = self.batches[-1]
        if last.parts and self.r.random() < 0.6:
            return self.r.choice(self.been[last.containers[0]][-2:])
        return super().struck()

    def repack(self) -> None:
        """Into the same again, into the freezer, into a meal."""
        old, r = self.batches[-1], self.r
        part = old.containers[0]
        into = r.choice(("", "", "", "frozen", "frozen", "cooked meal", "stew", "fresh", "in oil"))
        method = "cooked meal" if into == "stew" else into or old.method
        food = papers.food("stew") if into == "stew" else old.food
        natural = NATURAL.get(method) or r.choice(("pantry", "cellar", "fridge"))
        label = "ABCD"[len(self.batches)]
        batch = PutUp(
            label,
            food,
            method,
            (f"{label}/1", f"{label}/2"),
            self.place(natural if r.random() < 0.9 else None),
            weight_lb=old.weight_lb,
            closed_vessel=method not in ("lactic ferment", "cellar-stored"),
            parts=(part,),
        )
        at = max(self.moment(), max(f.at for _, f in self.facts if isinstance(f.what, PutUp)) + 30)
        self.batches.append(batch)
        self.been |= {c: [batch.place] for c in batch.containers}
        self.say(at, batch)

    def tell_it(self) -> None:
        self.open_house()
        self.put_up(0)
        for _ in range(self.r.choice((0, 1, 1, 2, 3))):
            self.happen()
        for _ in range(self.r.choice((1, 1, 1, 2))):
            self.repack()
            for _ in range(self.r.choice((0, 1, 2, 2, 3))):
                self.happen()


class _Counter(Teller):
    """Draws one history in which containers leave and a count finds some of them again."""

    def gone(self, container: str) -> Happening:
        how = self.r.choice(("missing", "missing", "given", "used", "discarded"))
        return Drawn(container, 1.0) if how == "used" else Left(container, how)

    def tell_it(self) -> None:
        r = self.r
        self.open_house()
        self.put_up(0)
        both = self.batches[0].containers
        for _ in range(r.choice((1, 1, 2, 3))):
            self.happen()
        for jar in r.choice((both, both, both[:1])):
            self.say(self.moment(), self.gone(jar))
        for _ in range(r.choice((0, 0, 1))):
            self.happen()
        last = max(f.at for _, f in self.facts if not isinstance(f.what, PlaceOpened))
        at = last + r.choice((1, 60, 150, DAY)) if r.random() < 0.8 else self.moment()
        place = r.choice(self.been[r.choice(both)])
        self.say(at, Counted(place, "A", r.choice((1, 1, 2))))
        for _ in range(r.choice((0, 1, 2))):
            self.happen()


def random_count(seed: int) -> History:
    """A history of one batch of which some left and were counted again."""
    return _Counter(seed).tell(seed)


def random_descent(seed: int) -> History:
    """A history of one batch that is repacked, once or twice."""
    return _Repacker(seed).tell(seed)


def random_history(seed: int) -> History:
    """A history of one or two batches, two to nine happenings and what was taken back."""
    return Teller(seed).tell(seed)
