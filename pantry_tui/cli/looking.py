"""Looking at the stock and at what happened to it."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, maybe, option, word, words
from pantry_tui.cli.verb import Verb
from pantry_tui.core.text import clean
from pantry_tui.services.output import jsonable


class Due(Verb):
    within: str | None = option("--within", "30d", "only what falls due by then, or must go")
    place: str | None = option("--place", "PLACE", "only what stands there")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing import stock as show
        from pantry_tui.core.dates import read_span
        from pantry_tui.services.stock import view

        within = read_span(self.within) if self.within else None
        with call.pantry() as p:
            rows = view.due(p, within, self.place)
        return call.answer(rows, jsonable.due, lambda found: show.due(found, heads=True))


class Shelves(Verb):
    place: str | None = option("--place", "PLACE", "only that one, and what is in it")
    draw: bool = flag("--draw", "as a picture: a mark for each container")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing.places import shelves
        from pantry_tui.services.stock import view

        with call.pantry() as p:
            found = view.shelves(p, self.place)
        if self.draw:
            from pantry_tui.cli.printing import pictures

            return call.answer(found, jsonable.shelves, pictures.shelves)
        return call.answer(found, jsonable.shelves, shelves)


class Find(Verb):
    text: str = words("every word of it must be found")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing import stock as show
        from pantry_tui.services.stock import view

        with call.pantry() as p:
            rows = view.find(p, self.text)
        nothing = [f"Nothing in store matches {clean(self.text)!r}."]
        return call.answer(rows, jsonable.due, lambda found: show.due(found) if found else nothing)


class Show(Verb):
    code: str = word("a lid code")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing import stock as show
        from pantry_tui.services.stock import one_batch

        with call.pantry() as p:
            found = one_batch.show(p, self.code)
        return call.answer(found, jsonable.batch, show.batch)


class Log(Verb):
    code: str | None = maybe("one batch only")

    def run(self, call: Call) -> int:
        from pantry_tui.cli.printing import stock as show
        from pantry_tui.services.books import logbook

        with call.pantry() as p:
            lines = logbook.entries(p, self.code)
        return call.answer(lines, jsonable.plain, show.log)
