"""Looking ahead to the next harvest."""

from __future__ import annotations

import re
from datetime import date

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import flag, number, option, repeated
from pantry_tui.cli.printing import outlook as show
from pantry_tui.cli.verb import Verb
from pantry_tui.core.dates import read_coming
from pantry_tui.core.text import clean
from pantry_tui.errors import BadInput
from pantry_tui.services.output import jsonable
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.putup_next import Ask


class Outlook(Verb):
    until: str | None = option("--until", "DATE", "instead of each food's next harvest")
    margin: str | None = option("--margin", "10%", "so much on top of what is put up")
    years: int | None = number("--years", "N", "cover so many years, if it lasts; else 1")

    people: int | None = number("--people", "N", "what if so many usually ate")
    guests: tuple[str, ...] = repeated(
        "--guests", "WHEN", 'so many beside you: "6 from 24 dec to 2 jan"'
    )
    away: tuple[str, ...] = repeated("--away", "WHEN", 'nobody is at home: "3 jan to 9 jan"')
    without: tuple[str, ...] = repeated("--without", "FOOD", "nobody eats it")
    eat: tuple[str, ...] = repeated("--eat", "FOOD N", 'so many servings a week: "potatoes 15"')
    draw: bool = flag("--draw", "the year ahead as a picture: a line of time for each food")
    months: bool = flag("--months", "what passes a date in each of the months ahead, as bars")

    def run(self, call: Call) -> int:
        if self.months:
            return self._months(call)
        until = read_coming(self.until, call.today) if self.until else None
        if until is not None and until <= call.today:
            raise BadInput("Look ahead: give a day after today.")
        years = 1 if self.years is None else self.years
        if not 1 <= years <= 5:
            raise BadInput("Cover 1 to 5 years: write --years 2.")
        ask = Ask(_share(self.margin), years)
        if self._supposes():
            return self._what_if(call, until, ask)
        with call.pantry() as p:
            found = outlook(p, until, ask)
        if self.draw:
            from pantry_tui.cli.printing import pictures

            return call.answer(
                found, jsonable.plain, lambda one: pictures.year(one.foods, call.today)
            )
        return call.answer(found, jsonable.plain, show.outlook)

    def _months(self, call: Call) -> int:
        from pantry_tui.cli.printing import pictures
        from pantry_tui.services.stock.months import months_ahead

        with call.pantry() as p:
            found = months_ahead(p)
        return call.answer(found, jsonable.plain, pictures.months)

    def _supposes(self) -> bool:
        lines = self.guests, self.away, self.without, self.eat
        return self.people is not None or any(lines)

    def _what_if(self, call: Call, until: date | None, ask: Ask) -> int:
        from pantry_tui.services.plan.whatif import Typed, changed, read, what_if

        typed = Typed(self.people, self.guests, self.away, self.without, self.eat)
        with call.pantry() as p:
            found = what_if(p, read(p, typed), until, ask)
        return call.answer(found, jsonable.plain, lambda both: show.what_if(both, changed(both)))


def _share(text: str | None) -> float:
    """("10%") -> 0.1; a bare number is a percentage too."""
    if text is None:
        return 0.0
    match = re.fullmatch(r"\s*([0-9]{1,3}(?:\.[0-9]{1,2})?)\s*%?\s*", text)
    if match is None or float(match[1]) > 200:
        raise BadInput(f"{clean(text)[:40]!r} is no margin: write --margin 10%, up to 200%.")
    return float(match[1]) / 100
