"""The week as a grid of days, with who sits at table; all that the list can do is done here too."""

from __future__ import annotations

from datetime import timedelta

from pantry_tui.app.bindings import bindings
from pantry_tui.app.draw.week import COLUMNS_FROM, week_rows
from pantry_tui.app.format import Column, take_columns
from pantry_tui.app.screens.pictures import AsList
from pantry_tui.app.screens.stock import PANE
from pantry_tui.app.screens.week import WeekScreen
from pantry_tui.app.weeklines import take_lines
from pantry_tui.app.widgets.line import Line, Source
from pantry_tui.app.widgets.picture import Drawn, Picture
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.rows import OnDay
from pantry_tui.services.stock.view import rows_named


class WeekGrid(AsList, WeekScreen):
    """A cell for each thing to eat."""

    here = "grid"
    BINDINGS = bindings("grid")

    @property
    def wide(self) -> bool:
        """A pane only where the days have room beside it: they say more than it."""
        return self.app.size.width >= COLUMNS_FROM + PANE + 2

    def start(self) -> int:
        shown = self.table
        return shown.top_cell if isinstance(shown, Picture) else 0

    def word_on(self, line: Line) -> str:
        """Why it is in the week."""
        return line.word or super().word_on(line)

    def source(self, columns: tuple[Column, ...]) -> Source:
        pantry = self.host.pantry
        found, eats = weeks.week(pantry), appetite(pantry)
        self.span(found)
        takes = [one for one in found.take if self.fits(one)]
        rows = rows_named(pantry, {one.containers[0] for one in takes})
        lines = take_lines(
            [OnDay(take.day, take) for take in takes], take_columns(80), rows, self.marked
        )
        self._days = {line.key: take.day for line, take in zip(lines, takes, strict=True)}
        self._takes = {line.key: take for line, take in zip(lines, takes, strict=True)}
        first = max(found.start, pantry.today)
        days = [first + timedelta(n) for n in range((found.end - first).days + 1)]
        refs = [str(at) for at in range(len(takes))]
        said = dict(found.table) | {day: f"Eaten: {what}." for day, what in found.eaten}
        drawn = week_rows(
            {day: 0 if day in found.bare else eats.sit(day) for day in days},
            dict(zip(refs, takes, strict=True)),
            self.room,
            said,
        )
        return Drawn(drawn, dict(zip(refs, lines, strict=True)))
