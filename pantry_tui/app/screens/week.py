"""This week: what to eat on which day, and what to take out of the freezer when."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, take_columns
from pantry_tui.app.lines import due_lines, heading, take_lines
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.dates import say
from pantry_tui.services.week import week


class WeekScreen(StockScreen):
    """The menu from the store; below it what waits and what must go."""

    here = "week"
    BINDINGS = bindings("week")
    empty = "Nothing to eat from the stores this week: press p and put something up."

    def columns(self, width: int) -> tuple[Column, ...]:
        return take_columns(width)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        found = week(self.host.pantry)
        self._span = f"{_short(found.start)} to {_short(found.end)}, for {found.people}"
        words = self.sought.lower().split()
        takes = [
            take
            for take in found.take
            if all(word in f"{take.food} {take.place} {take.code}".lower() for word in words)
        ]
        lines = take_lines(takes, columns)
        for title, rows in (
            ("Must go: never taste, bin it", found.discard),
            ("Needs a look, or no published figure", found.waiting),
        ):
            if rows and not words:
                lines.append(heading(f"head|{title}", title, columns))
                lines += due_lines(rows, columns, title)
        return lines

    def headline(self) -> str:
        return self._span


def _short(value: date) -> str:
    return " ".join(say(value).split()[1:3])
