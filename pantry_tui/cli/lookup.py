"""Published figures, and what a household adds to them."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import needed, option, repeated, word, words
from pantry_tui.cli.printing import lookup as show
from pantry_tui.cli.verb import Verb
from pantry_tui.services.output import jsonable


class ShelfLife(Verb):
    method: str = word('how it is kept, like dried or "in oil"')
    food: str = words("what it is")
    climate: str | None = option("--in", "CLIMATE", "room, pantry, cellar, fridge or freezer")
    temp: str | None = option("--temp", "60F", "how warm it is there")
    state: str | None = option(
        "--state", "STATE", "sealed, open, thawed or in-progress; else sealed"
    )
    made: str | None = option("--made", "DATE", "day 0 of that state")

    def run(self, call: Call) -> int:
        from pantry_tui.core.amounts import read_temperature
        from pantry_tui.core.dates import read_date
        from pantry_tui.reference.ambiguous import refuse_either
        from pantry_tui.reference.names import find_method
        from pantry_tui.reference.tables import load_tables
        from pantry_tui.services.lookup.shelf_life import keeps

        refuse_either(self.food, load_tables(), find_method(self.method))
        found = keeps(
            load_tables(),
            self.method,
            self.food,
            climate=self.climate,
            temp_f=read_temperature(self.temp) if self.temp else None,
            state=self.state,
            made=read_date(self.made, call.today) if self.made else None,
            strictest=_strictest(call),
        )
        call.answer(found, jsonable.plain, show.shelf_life)
        return 0 if found["allowed"] else call.refused(found["reasons"])


def _strictest(call: Call) -> bool:
    """Whether the household follows any country's limits; without a store the usual ones."""
    if not call.path.exists():
        return False
    with call.pantry() as p:
        return p.home.advice == "strictest"


class Process(Verb):
    food: str = words("what is canned")
    jar: str = needed("--jar", "SIZE", "half-pint, pint, quart ...")
    canner: str = needed("--canner", "CANNER", "boiling-water, dial or weighted")
    pack: str | None = option("--pack", "PACK", "hot or raw")
    altitude: str | None = option("--altitude", "4500ft", "else your store's, else 1,000 ft")

    def run(self, call: Call) -> int:
        from pantry_tui.reference.ambiguous import refuse_either
        from pantry_tui.reference.tables import load_tables
        from pantry_tui.services.lookup.process import process

        refuse_either(self.food, load_tables())
        feet, jars = self._kitchen(call)
        found = process(load_tables(), self.food, self.jar, self.canner, self.pack, feet, jars)
        call.answer(found, jsonable.plain, lambda answer: show.process(answer, feet))
        return call.refused(found["reasons"]) if found["answer"] == "refused" else 0

    def _kitchen(self, call: Call) -> tuple[int | None, str]:
        """How high it cooks, and whose times serve for its metric jars."""
        from pantry_tui.core.amounts import read_altitude
        from pantry_tui.core.safety.metric_jars import STRICT

        if not call.path.exists():
            return read_altitude(self.altitude) if self.altitude else None, STRICT
        with call.pantry() as p:
            feet = read_altitude(self.altitude, p.bare_degree) if self.altitude else p.altitude_ft
            return feet, p.jars


class AddFood(Verb):
    name: str = words("what you call it")
    group: str = needed("--group", "GROUP", "vegetable, fruit, meat ...")
    acidity: str = needed("--acidity", "WORD", "acid, low-acid or acidified")
    also: tuple[str, ...] = repeated("--also", "NAME", "another name for it")

    def run(self, call: Call) -> int:
        from pantry_tui.services.lookup import own

        return call.done(lambda p: own.add_food(p, self.name, self.group, self.acidity, self.also))


class AddRule(Verb):
    method: str = word('how it is kept, like dried or "in oil"')
    food: str = words("what it is")
    climate: str = needed("--in", "CLIMATE", "room, pantry, cellar, fridge or freezer")
    lasts: str = needed("--lasts", "SPAN", "10 days, 3 weeks, 6 months", old=("--keeps",))
    state: str | None = option(
        "--state", "STATE", "sealed, open, thawed or in-progress; else sealed"
    )
    kind: str | None = option("--kind", "KIND", "quality or safety; else quality")
    why: str | None = option("--why", "WHY", "where you have it from")

    def run(self, call: Call) -> int:
        from pantry_tui.services.lookup import own

        return call.done(
            lambda p: own.add_rule(
                p,
                self.method,
                self.food,
                climate=self.climate,
                keeps=self.lasts,
                kind=self.kind or "quality",
                state=self.state or "sealed",
                why=self.why or "",
            )
        )


class Added(Verb):
    def run(self, call: Call) -> int:
        from pantry_tui.services.lookup import own

        with call.pantry() as p:
            lines = list(own.listing(p))
        return call.answer(lines, jsonable.plain, show.added)
