"""Histories told in few words, for examples worked by hand.

t = Telling()
t.on(0, 10).put("ground beef", "frozen", "chest")
t.on(5, 12).moved("fridge")
t.judged(6, 12)
"""

from __future__ import annotations

from datetime import date

from tests.judging import papers
from tests.judging.evaluator import judge
from tests.judging.ruling import Ruling
from tests.judging.world import (
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
    moment,
)

START = date(2026, 3, 2).toordinal()
#: Places of a household, opened a year before anything happens.
HOUSE = (
    ("kitchen", "room"),
    ("larder", "pantry"),
    ("vault", "cellar"),
    ("fridge", "fridge"),
    ("second fridge", "fridge"),
    ("chest", "freezer"),
    ("second chest", "freezer"),
)


class Telling:
    """One batch of one or two containers, told fact by fact."""

    def __init__(self, **targets: float) -> None:
        self.facts: list[Fact] = []
        self._day, self._booked = -365, moment(START - 365)
        self._minute: int | None = 0
        for name, climate in HOUSE:
            self._say(PlaceOpened(name, climate, targets.get(name.replace(" ", "_"))))

    def on(
        self, day: int, hour: float | None = None, booked: tuple[int, float] | None = None
    ) -> Telling:
        """Day counted from the first, hour None for unknown; booked then unless told otherwise."""
        self._day = day
        self._minute = None if hour is None else round(hour * 60)
        then = booked or (day, 12 if hour is None else hour)
        self._booked = moment(START + then[0]) + round(then[1] * 60)
        return self

    def _say(self, what: Happening) -> Telling:
        n = f"f{len(self.facts)}"
        self.facts.append(Fact(n, START + self._day, self._minute, self._booked, what))
        return self

    @staticmethod
    def day(n: int) -> int:
        """The ordinal of a day counted from the first."""
        return START + n

    @property
    def last(self) -> str:
        """The id of the last fact."""
        return self.facts[-1].id

    def put(self, food: str | Food, method: str, place: str, **more: object) -> Telling:
        f = papers.food(food) if isinstance(food, str) else food
        return self._say(PutUp("A", f, method, ("A/1", "A/2"), place, **more))  # type: ignore[arg-type]

    def repacked(self, food: str, method: str, place: str, **more: object) -> Telling:
        """All of A/1 into B/1."""
        more |= {"parts": ("A/1",)}
        return self._say(PutUp("B", papers.food(food), method, ("B/1",), place, **more))  # type: ignore[arg-type]

    def moved(self, place: str, container: str = "A/1") -> Telling:
        return self._say(Moved(container, place))

    def opened(self, container: str = "A/1") -> Telling:
        return self._say(Opened(container))

    def thawed(self, how: str = "fridge") -> Telling:
        return self._say(Thawed("A/1", how))

    def drawn(self, part: float) -> Telling:
        return self._say(Drawn("A/1", part))

    def left(self, how: str = "missing", container: str = "A/1") -> Telling:
        return self._say(Left(container, how))

    def counted(self, place: str, n: int) -> Telling:
        return self._say(Counted(place, "A", n))

    def ready(self) -> Telling:
        return self._say(Ready("A/1"))

    def sign(self, sign: str, container: str = "A/1") -> Telling:
        return self._say(SignSeen(container, sign))

    def sound(self, container: str = "A/1") -> Telling:
        return self._say(LooksSound(container))

    def read(self, place: str, temp_f: float, since: int | None = None) -> Telling:
        return self._say(Reading(place, temp_f, since))

    def cut(self, place: str, hours: float, fullness: str | None = None) -> Telling:
        """A cut that began at the moment told and lasted so many hours."""
        start = moment(START + self._day) + (self._minute or 0)
        return self._say(Cut(place, start, start + round(hours * 60), fullness))

    def cut_since_unknown(self, place: str) -> Telling:
        return self._say(Cut(place, None, moment(START + self._day) + (self._minute or 0)))

    def place(
        self, name: str, climate: str | None, parent: str | None = None, target: float | None = None
    ) -> Telling:
        return self._say(PlaceOpened(name, climate, target, parent))

    def change(self, place: str, climate: str | None, target: float | None = None) -> Telling:
        return self._say(PlaceChanged(place, climate, target))

    def made(self, day: int) -> Telling:
        return self._say(CorrectedMade("A", START + day))

    def undo(self, fact: str) -> Telling:
        return self._say(Undo(fact))

    def redo(self, fact: str) -> Telling:
        return self._say(Redo(fact))

    def history(self, day: int, hour: float = 12) -> History:
        return History(tuple(self.facts), moment(START + day) + round(hour * 60))

    def judged(self, day: int, hour: float = 12, container: str = "A/1") -> Ruling:
        """The ruling asked for then."""
        return judge(self.history(day, hour), container)

    def answer(self, day: int, hour: float = 12, container: str = "A/1") -> tuple[int | None, bool]:
        """The last day, counted from the first, and whether it is usable."""
        r = self.judged(day, hour, container)
        return (None if r.discard_after is None else r.discard_after - START, r.usable)
