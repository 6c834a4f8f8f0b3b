"""The first start: three questions, then one example line."""

from __future__ import annotations

from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.core.amounts import read_altitude
from pantry_tui.errors import BadInput

UNITS = ("US: pounds, pints, °F", "metric: kilograms, litres, °C")
NEXT = (
    "Now your places: S, then a, and type: shelf 1, pantry, 60F. Then p, and type what you put up: "
    "7 pint jars runner beans, pressure canned, shelf 1."
)


class _Questions:
    """Answers are kept at the end; Esc on any question leaves the rest as it is."""

    def __init__(self, host: Host) -> None:
        self.host = host
        self.altitude, self.people = 0, 2

    def ask_altitude(self, typed: str = "0 ft") -> None:
        title = "Welcome. Three questions. How high do you live? Canning times depend on it."
        self.host.push_screen(TypeLine(title, "900 ft or 300 m", typed), self._altitude)

    def _altitude(self, typed: str | None) -> None:
        if typed is None:
            self._keep(UNITS[0])
        elif self.host.try_(lambda: read_altitude(typed)):
            self.altitude = read_altitude(typed)
            self.ask_people()
        else:
            self.ask_altitude(typed)

    def ask_people(self) -> None:
        self.host.push_screen(
            TypeLine("How many people eat from the store?", "4", "2"), self._people
        )

    def _people(self, typed: str | None) -> None:
        try:
            self.people = int((typed or "2").split()[0])
        except ValueError:
            self.host.tell("Give the number of people, for example 4.", refused=True)
            self.ask_people()
            return
        self.host.push_screen(Choose("Which units do you cook in?", UNITS), self._keep)

    def _keep(self, got: str | None) -> None:
        units = "metric" if got == UNITS[1] else "us"
        try:
            self.host.pantry.settle(self.altitude, self.people, units)
        except BadInput as error:
            self.host.tell(error.message, refused=True)
            self.ask_altitude()
            return
        self.host.tell(NEXT)


def greet(host: Host) -> None:
    """Ask a household that has nothing recorded yet."""
    _Questions(host).ask_altitude()
