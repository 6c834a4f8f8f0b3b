"""The books: the year of each food, what was lost, what was said at table."""

from __future__ import annotations

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import each, maybe_words, option, word
from pantry_tui.cli.printing import books as show
from pantry_tui.cli.verb import Act, Verb
from pantry_tui.services.output import jsonable


class Year(Verb):
    food: str = maybe_words("one food only")

    def run(self, call: Call) -> int:
        from pantry_tui.services.books.year import years

        with call.pantry() as p:
            rows = years(p, self.food or None)
        return call.answer(rows, jsonable.plain, show.years)


class Losses(Verb):
    start: str | None = option("--from", "DATE", "only since that day")

    def run(self, call: Call) -> int:
        from pantry_tui.core.dates import read_date
        from pantry_tui.services.books.losses import losses

        since = read_date(self.start, call.today) if self.start else None
        with call.pantry() as p:
            found = losses(p, since)
        return call.answer(found, jsonable.plain, lambda lost: show.losses(lost, since))


class Rate(Act):
    code: str = word("a lid code")
    said: tuple[str, ...] = each("again, not-again or change, then a note", needed=True)

    def run(self, call: Call) -> int:
        from pantry_tui.services.books import rating

        verdict, note = rating.split(self.said)
        return call.act(self.at, rating.taste, self.code, verdict, note)
