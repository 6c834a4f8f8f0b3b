"""Will it last: pace, losses, what runs out, and how much to put up, food by food."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.ahead import outlook_cells, outlook_columns, plot, sentences, what_if_text
from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip
from pantry_tui.app.lines import Heading, heading, headings
from pantry_tui.app.screens.acts import Undoes
from pantry_tui.app.screens.ask import TypeLine, given
from pantry_tui.app.screens.listing import ListScreen
from pantry_tui.app.screens.page import Page
from pantry_tui.app.screens.stock import PANE, Beside
from pantry_tui.app.texts import books_text
from pantry_tui.app.widgets.line import Key, Line, Listed, Source
from pantry_tui.services.books.losses import losses
from pantry_tui.services.books.rows import FoodAhead, OutlookView
from pantry_tui.services.books.year import years
from pantry_tui.services.plan.outlook import outlook

#: Lines of blocks below a narrow list, and in the pane beside a wide one.
LOW, HIGH = 4, 8

#: Where the screen is lower than this, the list needs every line.
ROOM_FOR_PLOT = 18


@dataclass(frozen=True)
class AheadKey(Key):
    """A food, a group, or the whole household."""

    name: str
    food: bool = True


class Books(ListScreen):
    """Shows the loss record and the year of each food."""

    def action_year(self) -> None:
        """What was lost and why, and the year of each food."""
        pantry = self.host.pantry
        self.app.push_screen(Page(books_text(losses(pantry), years(pantry))))


class OutlookScreen(Undoes, Books, Beside):
    """The alarms on top, then every food, the groups and the household; supply against time of the
    line under the cursor is drawn below, or beside a wide list."""

    CSS_PATH = "outlook.tcss"
    here = "outlook"
    BINDINGS = bindings("outlook")
    empty = "Nothing to look ahead to yet: press p and put something up."

    def __init__(self) -> None:
        super().__init__()
        self._shown: dict[Key, FoodAhead] = {}

    def below(self) -> ComposeResult:
        yield Static(id="plot")

    def columns(self, width: int) -> tuple[Column, ...]:
        return outlook_columns(width)

    def start(self) -> int:
        """At first the cursor stands on the most pressing food, whose supply is drawn."""
        source = self.table.source
        lines = source.lines(0, source.total)
        return next((i for i, line in enumerate(lines) if line.key in self._shown), 0)

    def source(self, columns: tuple[Column, ...]) -> Source:
        found = self.host.pantry.once("outlook", lambda: outlook(self.host.pantry))
        words = self.sought.lower().split()
        self._shown = {}
        if not words:
            return Listed([*self._heads(found, columns), *self._rows(found, columns)])
        fits = [
            one for one in found.foods if all(word in f"{one.food} {one.group}" for word in words)
        ]
        return Listed(list(self._lines(fits, columns)))

    def _heads(self, found: OutlookView, columns: tuple[Column, ...]) -> Iterator[Line]:
        for sign, heads in (("!", found.alarms), (">", found.shifts)):
            for one in heads:
                yield from headings(f"{sign} {self.host.said(one)}", columns, 2)

    def _rows(self, found: OutlookView, columns: tuple[Column, ...]) -> Iterator[Line]:
        yield from self._lines(found.foods, columns)
        if found.foods:
            title = "By group, and the whole household"
            yield heading(Heading(title), title)
            yield from self._lines([*found.groups, found.household], columns, food=False)

    def _lines(
        self, rows: Sequence[FoodAhead], columns: tuple[Column, ...], *, food: bool = True
    ) -> Iterator[Line]:
        for one in rows:
            key = AheadKey(one.food, food)
            self._shown[key] = one
            cells = tuple((text, "") for text in outlook_cells(one, columns))
            yield Line(key, cells, word=" ".join(sentences(one)))

    def _ahead(self, line: Line | None) -> FoodAhead | None:
        return self._shown.get(line.key) if line else None

    def word_on(self, line: Line) -> str:
        """All the sentences; beside the drawing, the pace alone."""
        one = self._ahead(line)
        return clip(one.pace_says, 300) if one is not None and self.wide else line.word

    def detail_on(self, line: Line | None) -> str:
        one = self._ahead(line)
        if one is None:
            return ""
        drawn = "\n".join(plot(one, self.host.pantry.today, PANE - 3, HIGH))
        return "\n\n".join([drawn, *sentences(one, whole=True)])

    def say_word(self) -> None:
        """The sentences on the line under the cursor, and its supply against time."""
        super().say_word()
        one, size = self._ahead(self.table.current), self.app.size
        low = self.query_one("#plot", Static)
        low.display = one is not None and not self.wide and size.height >= ROOM_FOR_PLOT
        if one is not None and low.display:
            low.update(Content("\n".join(plot(one, self.host.pantry.today, size.width - 2, LOW))))

    def look(self) -> None:
        """Everything that is reckoned of the line, with its supply drawn large."""
        one = self._ahead(self.table.current)
        if one is not None:
            drawn = "\n".join(plot(one, self.host.pantry.today, min(68, self.size.width - 8), HIGH))
            self.app.push_screen(Page("\n\n".join([drawn, *sentences(one, whole=True)])))

    def action_what_if(self) -> None:
        """Ask what is supposed, and show what would be otherwise."""
        from pantry_tui.services.plan import whatif

        pantry = self.host.pantry
        question = TypeLine(
            f"What if? Parts between commas, as in: {whatif.EXAMPLE}",
            whatif.SHORT,
            accept=lambda typed: whatif.read_line(pantry, typed),
        )

        def show(typed: str) -> None:
            found = whatif.what_if(pantry, whatif.read_line(pantry, typed))
            self.app.push_screen(Page(what_if_text(found, whatif.changed(found))))

        self.app.push_screen(question, given(show))

    def action_months(self) -> None:
        """How much passes a date in each of the months ahead."""
        from pantry_tui.app.screens.pictures import MonthsPicture

        self.app.push_screen(MonthsPicture())

    def action_picture(self) -> None:
        """Every food against one line of time."""
        from pantry_tui.app.screens.pictures import YearPicture

        self.app.push_screen(YearPicture())
