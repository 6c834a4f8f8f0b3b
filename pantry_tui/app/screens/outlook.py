"""Will it last: pace, losses, what runs out, and how much to put up, food by food."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import PurePath
from typing import ClassVar

from rich.text import Text
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import Input, Static

from pantry_tui.app.ahead import outlook_cells, outlook_columns, plot, sentences
from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip
from pantry_tui.app.lines import heading, headings
from pantry_tui.app.screens.page import Page
from pantry_tui.app.screens.stock import PANE, WIDE, StockScreen
from pantry_tui.app.texts import books_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.rowtable import Line, RowTable
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.services.books.losses import losses
from pantry_tui.services.books.rows import FoodAhead, OutlookView
from pantry_tui.services.books.year import years
from pantry_tui.services.plan.outlook import outlook

#: Lines of blocks below a narrow list, and in the pane beside a wide one.
LOW, HIGH = 4, 8

#: Where the screen is lower than this, the list needs every line.
ROOM_FOR_PLOT = 18


class OutlookScreen(StockScreen):
    """The alarms on top, then every food, the groups and the household; supply against time of the
    line under the cursor is drawn below, or beside a wide list."""

    CSS_PATH: ClassVar[str | PurePath | list[str | PurePath] | None] = [
        "stock.tcss",
        "outlook.tcss",
    ]
    here = "outlook"
    holds_stock = False
    BINDINGS = bindings("outlook")
    empty = "Nothing to look ahead to yet: press p and put something up."

    def __init__(self) -> None:
        super().__init__()
        self._shown: dict[str, FoodAhead] = {}

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        with Horizontal(id="middle"):
            yield RowTable()
            with VerticalScroll(id="pane", can_focus=False):
                yield Static(id="detail")
        yield Static(id="plot")
        yield Static(id="word")
        yield Input(id="bar", placeholder="words to find")
        yield SaidLine()
        yield KeyLine(self.here)

    def columns(self, width: int) -> tuple[Column, ...]:
        return outlook_columns(width)

    def start(self, lines: Sequence[Line]) -> int:
        """At first the cursor stands on the most pressing food, whose supply is drawn."""
        return next((i for i, line in enumerate(lines) if line.key in self._shown), 0)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        found = self.host.pantry.once("outlook", lambda: outlook(self.host.pantry))
        words = self.sought.lower().split()
        self._shown = {}
        if not words:
            return [*self._heads(found, columns), *self._rows(found, columns)]
        fits = [
            one for one in found.foods if all(word in f"{one.food} {one.group}" for word in words)
        ]
        return list(self._lines(fits, columns))

    def _heads(self, found: OutlookView, columns: tuple[Column, ...]) -> Iterator[Line]:
        for sign, heads in (("!", found.alarms), (">", found.shifts)):
            for one in heads:
                yield from headings(f"a|{one}", f"{sign} {one}", columns, 2)

    def _rows(self, found: OutlookView, columns: tuple[Column, ...]) -> Iterator[Line]:
        yield from self._lines(found.foods, columns)
        if found.foods:
            yield heading("groups|", "By group, and the whole household", columns)
            yield from self._lines([*found.groups, found.household], columns, "group")

    def _lines(
        self, rows: Sequence[FoodAhead], columns: tuple[Column, ...], kind: str = "food"
    ) -> Iterator[Line]:
        for one in rows:
            key = f"{kind}|{one.food}"
            self._shown[key] = one
            cells = tuple(Text(text) for text in outlook_cells(one, columns))
            yield Line(key, cells, word=" ".join(sentences(one)))

    def say_word(self) -> None:
        """The sentences on the line under the cursor, and its supply against time."""
        super().say_word()
        line = self.table.current
        one = self._shown.get(line.key) if line else None
        low = self.query_one("#plot", Static)
        wide = self.size.width >= WIDE
        low.display = one is not None and not wide and self.size.height >= ROOM_FOR_PLOT
        if one is None:
            return
        today = self.host.pantry.today
        if wide:
            drawn = "\n".join(plot(one, today, PANE - 2, HIGH))
            self.show_detail("\n\n".join([drawn, *sentences(one, whole=True)]))
            self.query_one("#word", Static).update(Content(clip(one.pace_says, 300)))
        else:
            low.update(Content("\n".join(plot(one, today, self.size.width - 2, LOW))))

    def look(self) -> None:
        """Everything that is reckoned of the line, with its supply drawn large."""
        line = self.table.current
        one = self._shown.get(line.key) if line else None
        if one is not None:
            drawn = "\n".join(plot(one, self.host.pantry.today, min(68, self.size.width - 8), HIGH))
            self.app.push_screen(Page("\n\n".join([drawn, *sentences(one, whole=True)])))

    def action_books(self) -> None:
        """What was lost and why, and the year of each food."""
        pantry = self.host.pantry
        self.app.push_screen(Page(books_text(losses(pantry), years(pantry))))
