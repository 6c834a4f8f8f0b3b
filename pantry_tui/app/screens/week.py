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
from pantry_tui.services import week as weeks


class WeekScreen(StockScreen):
    """The menu from the store; below it what waits and what must go."""

    here = "week"
    BINDINGS = bindings("week")
    empty = "Nothing to eat from the stores this week: press p and put something up."

    def columns(self, width: int) -> tuple[Column, ...]:
        return take_columns(width)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        found = weeks.week(self.host.pantry)
        state = "accepted" if found.accepted else "proposed"
        self._span = f"{_short(found.start)} to {_short(found.end)} for {found.people}, {state}"
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

    def action_accept(self) -> None:
        """Keep the plan; on an accepted one, plan anew. Nothing is booked by either."""
        pantry = self.host.pantry
        change = weeks.forget if weeks.accepted(pantry) else weeks.accept
        self.host.attempt(lambda: change(pantry))
        self.reload()

    def action_eaten(self) -> None:
        """Everything of the day under the cursor, in one booking."""
        line = self.table.current
        parts = line.key.split("|") if line else []
        if len(parts) != 4 or parts[0] != "take":
            self.host.tell("Put the cursor on a day of the menu first.", refused=True)
            return
        pantry, day = self.host.pantry, date.fromisoformat(parts[3])
        if weeks.accepted(pantry) is None:
            weeks.accept(pantry)
        self.host.attempt(lambda: weeks.eaten(pantry, day))
        self.reload()
        self.set_focus(self.table)

    def headline(self) -> str:
        return self._span


def _short(value: date) -> str:
    return " ".join(say(value).split()[1:3])
