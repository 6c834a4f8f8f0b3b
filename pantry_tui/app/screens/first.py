"""The first start: three questions, then one example line."""

from __future__ import annotations

from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.core.amounts import read_altitude
from pantry_tui.core.plan.seats import read_people
from pantry_tui.core.text import clean
from pantry_tui.services.household import said_of as household
from pantry_tui.services.household import say_altitude
from pantry_tui.services.inunits import Units

UNITS = ("US: pounds, pints, °F", "metric: kilograms, litres, °C")
WHY_HIGH = "Canning times depend on it."
NOT_SAID = "not said, which is asked again at the first jar that is canned"
NEXT = (
    "Now your places: S, then a, and type: shelf 1, pantry, 60F. Then p, and type what you put up: "
    "7 pint jars runner beans, pressure canned, shelf 1."
)

NEXT_METRIC = NEXT.replace("60F", "15C").replace("7 pint jars", "7 500 ml jars")


class _Questions:
    """What was answered before Esc is kept; what was not asked stays as it is."""

    def __init__(self, host: Host) -> None:
        self.host = host
        pantry = host.pantry
        self.altitude, self.people = pantry.altitude_ft, pantry.people
        self.units = "metric" if pantry.bare_degree == "C" else "us"

    def ask_units(self) -> None:
        """First, as they decide in what the next question speaks and what a bare number means."""
        title = (
            f"Welcome. {clean(self.host.pantry.path.name)} is a new, empty store. Three questions. "
            "Which units do you cook in?"
        )
        known_first = UNITS if self.units == "us" else UNITS[::-1]
        self.host.push_screen(Choose(title, known_first), self._chosen)

    def _chosen(self, got: str | None) -> None:
        if got is None:
            self.end()
            return
        self.units = ("us", "metric")[UNITS.index(got)]
        self.ask_altitude()

    def ask_altitude(self) -> None:
        """Enter alone keeps what `init` was told; else it leaves it unknown, never sea level."""
        unit = "metres" if self._metric else "feet"
        alone = f"Enter alone: {self._known or NOT_SAID}."
        title = f"How high do you live, in {unit}? {WHY_HIGH} {alone}"
        example = f"for example {'300 m' if self._metric else '900 ft'}"
        question = TypeLine(title, example, accept=self._high, empty=True)

        def then(got: str | None) -> None:
            self.end() if got is None else self.ask_people()

        self.host.push_screen(question, then)

    @property
    def _metric(self) -> bool:
        return self.units == "metric"

    @property
    def _known(self) -> str:
        return known_altitude(self.altitude, Units(self._metric))

    def _high(self, typed: str) -> None:
        if not typed.strip():
            return  # nobody knows it: that is said beside every canned batch
        self.altitude = read_high(typed, metric=self._metric)

    def ask_people(self) -> None:
        """Enter alone keeps the number that stands, as with the height before."""
        title = f"How many people eat from the store? Enter alone: {self.people}."
        question = TypeLine(title, "for example 4", accept=self._many, empty=True)
        self.host.push_screen(question, lambda _got: self.end())

    def _many(self, typed: str) -> None:
        if typed.strip():
            self.people = possible_people(typed)

    def end(self) -> None:
        """Keep what was answered, and say it: the altitude decides how long a jar is canned."""
        self.host.pantry.book(household(self.altitude, self.people, self.units))
        self.host.hear_units()
        next_ = NEXT_METRIC if self.units == "metric" else NEXT
        self.host.tell(f"Noted: {say_altitude(self.altitude)}, {self.people} at table. {next_}")


def read_high(typed: str, *, metric: bool) -> int:
    """An altitude in feet as it is typed into a field: a bare number is in the units that the
    household chose, and what is kept says them. Raises BadInput, also where no place lies that
    high."""
    altitude = read_altitude(typed, "C" if metric else "F")
    household(altitude)
    return altitude


def known_altitude(feet: int | None, units: Units) -> str:
    """What stands in the field already."""
    return "" if feet is None else units.text(f"{feet} ft")


def possible_people(typed: str) -> int:
    """("4", "4 people") -> 4. Raises BadInput."""
    people = read_people(typed)
    household(people=people)  # says how many a household may be
    return people


def greet(host: Host) -> None:
    """Ask a household that has nothing recorded yet."""
    _Questions(host).ask_units()
