"""The household: what it told of itself, changed one setting at a time."""

from __future__ import annotations

from collections.abc import Callable

from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose, TypeLine, given
from pantry_tui.app.screens.first import UNITS, WHY_HIGH, known_altitude, possible_people, read_high
from pantry_tui.core.safety.metric_jars import JARS_BY
from pantry_tui.services import household
from pantry_tui.services.rows import HouseholdFacts

#: The answers, in the order of `household.ADVICE`.
ADVICE = (
    "usual: United States federal and extension",
    "strictest: whichever country's limit is the earliest",
)

#: The answers, in the order of `household.HALVES`.
HALVES = ("north: crops come in as the tables have it", "south: half a year later")

#: What is asked for in forms of their own (`byname.ALL`).
MORE = {
    "who eats when ...": "table",
    "how much you eat ...": "ceilings",
    "your dishes ...": "dishes",
    "what stands in where a crop fails ...": "stand_ins",
    "foods and rules of your own ...": "own_words",
}

#: The answers, in the order of `JARS_BY`.
JARS = (
    "maker: as their makers' manuals have it, half-pint, pint and quart",
    "strict: the published jar that holds as much or more",
)


class _Home:
    """One question a setting; Esc leaves it as it is."""

    def __init__(self, host: Host, done: Callable[[], None]) -> None:
        self.host, self.done = host, done

    def ask(self) -> None:
        now = household.facts(self.host.pantry)
        ways = (self._altitude, self._people, self._units, self._advice, self._jars, self._half)
        asks = dict(zip(lines(now), ways, strict=True))
        question = Choose("The household: what changes? Esc: nothing.", [*asks, *MORE])

        def chosen(got: str) -> None:
            if got in MORE:
                from pantry_tui.app.screens.byname import ALL

                ALL[MORE[got]](self.host, "", self.done)
            else:
                asks[got](now)

        self.host.push_screen(question, given(chosen))

    def _change(self, **more: object) -> None:
        changed = self.host.attempt(lambda: household.change(self.host.pantry, **more))  # type: ignore[arg-type]
        if changed:
            self.done()

    def _altitude(self, now: HouseholdFacts) -> None:
        known = known_altitude(now.altitude_ft, self.host.units)
        metric = self.host.units.metric
        title = f"How high do you live, in {'metres' if metric else 'feet'}? {WHY_HIGH}"

        def possible(typed: str) -> None:
            if typed != known:
                read_high(typed, metric=metric)

        question = TypeLine(title, "900 ft or 300 m", known, accept=possible)

        def changed(typed: str) -> None:
            if typed != known:  # metres are rounded: what is left as it stood is as it was
                self._change(altitude_ft=read_high(typed, metric=metric))

        then = given(changed)
        self.host.push_screen(question, then)

    def _people(self, now: HouseholdFacts) -> None:
        title = "How many people eat from the store?"
        question = TypeLine(title, "4", str(now.people), accept=possible_people)
        then = given(lambda typed: self._change(people=possible_people(typed)))
        self.host.push_screen(question, then)

    def _units(self, _now: HouseholdFacts) -> None:
        then = given(lambda got: self._change(units=("us", "metric")[UNITS.index(got)]))
        self.host.push_screen(Choose("Which units do you cook in?", UNITS), then)

    def _advice(self, _now: HouseholdFacts) -> None:
        title = "Whose limits are followed? Stricter views are shown beside either."
        then = given(lambda got: self._change(advice=household.ADVICE[ADVICE.index(got)]))
        self.host.push_screen(Choose(title, ADVICE), then)

    def _jars(self, _now: HouseholdFacts) -> None:
        title = "Whose times serve for jars of 250 ml, 500 ml and 1 litre?"
        then = given(lambda got: self._change(jars=JARS_BY[JARS.index(got)]))
        self.host.push_screen(Choose(title, JARS), then)

    def _half(self, _now: HouseholdFacts) -> None:
        title = "In which half of the world do you garden? Harvest months depend on it."
        then = given(lambda got: self._change(half=household.HALVES[HALVES.index(got)]))
        self.host.push_screen(Choose(title, HALVES), then)


def lines(now: HouseholdFacts) -> tuple[str, ...]:
    """One setting a line, as it is."""
    return (
        f"altitude: {household.say_altitude(now.altitude_ft).removeprefix('altitude ')}",
        f"people at table: {now.people}",
        f"units: {UNITS[now.units == 'metric']}",
        f"advice: {ADVICE[household.ADVICE.index(now.advice)]}",
        f"metric jars: {JARS[JARS_BY.index(now.jars)].partition(':')[0]}",
        f"half of the world: {HALVES[household.HALVES.index(now.half)]}",
    )


def change_household(host: Host, done: Callable[[], None]) -> None:
    """Show the settings and change one; `done` is called when something was booked."""
    _Home(host, done).ask()
