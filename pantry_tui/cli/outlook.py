"""Looking ahead to the next harvest."""

from __future__ import annotations

import re

from pantry_tui.cli.call import Call
from pantry_tui.cli.fields import number, option
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

    def run(self, call: Call) -> int:
        until = read_coming(self.until, call.today) if self.until else None
        if until is not None and until <= call.today:
            raise BadInput("Look ahead: give a day after today.")
        years = 1 if self.years is None else self.years
        if not 1 <= years <= 5:
            raise BadInput("Cover 1 to 5 years: write --years 2.")
        with call.pantry() as p:
            found = outlook(p, until, Ask(_share(self.margin), years))
        return call.answer(found, jsonable.plain, show.outlook)


def _share(text: str | None) -> float:
    """("10%") -> 0.1; a bare number is a percentage too."""
    if text is None:
        return 0.0
    match = re.fullmatch(r"\s*([0-9]{1,3}(?:\.[0-9]{1,2})?)\s*%?\s*", text)
    if match is None or float(match[1]) > 200:
        raise BadInput(f"{clean(text)[:40]!r} is no margin: write --margin 10%, up to 200%.")
    return float(match[1]) / 100
