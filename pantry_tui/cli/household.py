"""The household: where it cooks, who is at table when, how much it eats, its dishes."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import each, number, option, words
from pantry_tui.cli.printing import household as show
from pantry_tui.cli.verb import Verb
from pantry_tui.errors import BadInput
from pantry_tui.services.output import jsonable


class Household(Verb):
    altitude: str | None = option("--altitude", "1800ft", "where you cook, above the sea")
    people: int | None = number("--people", "N", "how many usually eat of the stores")
    units: str | None = option("--units", "UNITS", "us or metric")
    jars: str | None = option("--jars", "WHOSE", "maker or strict: whose times for metric jars")
    half: str | None = option("--half", "HALF", "of the world: north or south, for harvests")
    advice: str | None = option("--advice", "WHOSE", "usual, or strictest: any country's limits")

    def run(self, call: Call) -> int:
        from pantry_tui.core.amounts import read_altitude
        from pantry_tui.services import household

        with call.pantry() as p:
            degree = {"metric": "C", "us": "F"}.get(self.units or "", p.bare_degree)
            altitude = read_altitude(self.altitude, degree) if self.altitude else None
            told: tuple[str, ...] = ()
            asked = (altitude, self.people, self.units, self.advice, self.jars, self.half)
            if any(one is not None for one in asked):
                told = household.change(p, *asked).warnings
            found = household.facts(p)
        return call.answer(
            found,
            lambda now: {**jsonable.plain(now), **({"warnings": list(told)} if told else {})},
            lambda now: [*show.facts(now), *told],
        )


class Away(Verb):
    days: str = words("24 dec, or 24 dec to 27 dec")

    def run(self, call: Call) -> int:
        return _at_table(call, f"away {self.days}")


class Guests(Verb):
    line: str = words("how many beside you, and when: 6 on friday")

    def run(self, call: Call) -> int:
        return _at_table(call, self.line, guests=True)


class Usual(Verb):
    days: str = words("24 dec, or 24 dec to 27 dec")

    def run(self, call: Call) -> int:
        return _at_table(call, f"usual {self.days}")


def _at_table(call: Call, line: str, guests: bool = False) -> int:
    from pantry_tui.services.plan import appetite

    return call.done(lambda p: appetite.read_table(p, line, guests))


class Days(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import appetite

        with call.pantry() as p:
            days = list(appetite.table(p))
        return call.answer(
            days,
            lambda found: [{"day": day.isoformat(), "people": n} for day, n in found],
            show.days,
        )


class Eats(Verb):
    what: tuple[str, ...] = each("a food or group, then servings a person a week, or usual")
    people: int | None = number("--people", "N", "how many usually eat of the stores")
    meals: int | None = number("--meals", "N", "main meals a week from the stores")

    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import appetite

        people, meals = self.people, self.meals
        if people is not None:
            return call.done(lambda p: appetite.set_people(p, people))
        if meals is not None:
            return call.done(lambda p: appetite.set_meals(p, meals))
        if len(self.what) >= 2:
            *what, servings = self.what
            return call.done(lambda p: appetite.set_ceiling(p, " ".join(what), servings))
        if self.what:
            raise BadInput(
                "Say how much: pantry-tui household appetite beets 1, or 0 for what nobody eats."
            )
        with call.pantry() as p:
            lines = list(appetite.listing(p))
        return call.answer(lines, jsonable.plain, show.plain)


class AddDish(Verb):
    line: str = words('"bean soup = 4 runner beans, 4 chicken stock", in servings')

    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import dishes

        return call.done(lambda p: dishes.keep(p, self.line))


class DropDish(Verb):
    name: str = words("its name")

    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import dishes

        return call.done(lambda p: dishes.drop(p, self.name))


class Dishes(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import dishes

        with call.pantry() as p:
            found = dishes.dishes(p)
        return call.answer(
            found,
            lambda all_: [{"name": one.name, "takes": jsonable.plain(one.takes)} for one in all_],
            lambda all_: show.dishes([dishes.say(one) for one in all_]),
        )


class Substitute(Verb):
    line: tuple[str, ...] = each("FOOD with FOOD ...; with nothing takes it back", needed=True)

    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import substitute

        return call.done(
            lambda p: substitute.set_substitutes(p, *substitute.read_line(p, self.line))
        )


class Substitutes(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.plan import substitute

        with call.pantry() as p:
            found = substitute.substitutes(p)
            lines = list(substitute.listing(p))
        return call.answer(found, jsonable.plain, lambda _: show.substitutes(lines))
