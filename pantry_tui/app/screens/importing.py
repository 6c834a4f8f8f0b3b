"""A household's own list: each column with what it is taken as, put right by a key, looked through
and then booked all or none."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.content import Content
from textual.widgets import Static

from pantry_tui.app import listtext
from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip
from pantry_tui.app.screens.acts import Undoes
from pantry_tui.app.screens.ask import Choose, given
from pantry_tui.app.screens.busy import run
from pantry_tui.app.screens.fileline import FileLine
from pantry_tui.app.screens.page import Decide, Page
from pantry_tui.app.widgets.line import Key, Line, Listed, Source
from pantry_tui.core.text import agreed, counted
from pantry_tui.errors import PantryError
from pantry_tui.paths import typed_path
from pantry_tui.services.batchwork import mapped
from pantry_tui.services.batchwork.bare_units import read_units
from pantry_tui.services.batchwork.columns import ENDINGS
from pantry_tui.services.batchwork.imported import Imported
from pantry_tui.services.batchwork.mapped import Sheet, Taken
from pantry_tui.services.rows import Ask, Done

if TYPE_CHECKING:
    from pantry_tui.app.host import Host

BOOKS = (("Enter", "books all of them", "True"), ("Esc", "books nothing", "False"))


@dataclass(frozen=True)
class ColumnKey(Key):
    """A column of the list, counted from 0."""

    at: int


def ask_list(host: Host, done: Callable[[], None]) -> None:
    """Which file, then its columns; `done` is called when something was booked."""
    if host.served:
        host.tell("Not in a browser: a list is imported at the machine itself.", refused=True)
        return
    found: list[tuple[Sheet, Taken]] = []

    def accept(typed: str) -> None:
        sheet = mapped.look_at(typed_path(typed))
        found.append((sheet, mapped.begin(host.pantry, sheet)))

    def named(_typed: str) -> None:
        host.push_screen(ImportScreen(*found[-1], done))

    question = FileLine("Which file is your list?", "~/pantry.csv", ENDINGS, accept=accept)
    host.push_screen(question, given(named))


class ImportScreen(Undoes):
    """A line is a column of the list. What is said of one is kept at once, for this list and the
    next with the same headings."""

    CSS_PATH = "importing.tcss"
    here = "import"
    BINDINGS = bindings("import")

    def __init__(self, sheet: Sheet, taken: Taken, done: Callable[[], None]) -> None:
        super().__init__()
        self.sheet, self.taken, self._done = sheet, taken, done

    def below(self) -> ComposeResult:
        yield Static(id="column")
        yield Static(id="written")

    def columns(self, width: int) -> tuple[Column, ...]:
        found = listtext.list_columns(width, len(self.sheet.first))
        return listtext.head_labels(self.sheet, found)

    def source(self, columns: tuple[Column, ...]) -> Source:
        return Listed([self._line(at, columns) for at in range(self.sheet.width)])

    def _line(self, at: int, columns: tuple[Column, ...]) -> Line:
        texts = listtext.list_cells(self.sheet, self.taken, at, columns)
        role = "" if self.taken.field_of(at) else "muted"
        return Line(ColumnKey(at), tuple((text, role) for text in texts))

    def headline(self) -> str:
        return "your own list"

    @property
    def at(self) -> int:
        """The column under the cursor."""
        key = self.table.current.key if self.table.current else None
        return key.at if isinstance(key, ColumnKey) else 0

    def say_word(self) -> None:
        """What is typed in a file stays as it is, whatever the household's units are."""
        column = listtext.column_text(self.sheet, self.taken, self.at)
        self.query_one("#column", Static).update(Content(column))
        written = listtext.written_text(self.sheet, self.taken)
        self.query_one("#written", Static).update(Content(written))

    # -- what a column is --------------------------------------------------------------------------

    def look(self) -> None:
        """Ask what the column is."""
        at = self.at
        cells = ", ".join(row[at] for _, row in self.sheet.first if at < len(row) and row[at])
        title = f"What is {clip(self.sheet.heading(at), 40)!r}: {clip(cells, 90) or 'empty'}?"
        fields = {word: name for name, word in listtext.WORDS.items()}
        question = Choose(title, list(fields))
        self.app.push_screen(question, given(lambda word: self._take(at, fields[word])))

    def action_ignore(self) -> None:
        """The column is left out."""
        self._take(self.at, "")

    def _take(self, at: int, name: str) -> None:
        self._keep(self.taken.but(at, name))

    def action_order(self) -> None:
        """How the days of the list are written."""
        orders = {word: order for order, word in listtext.ORDERS.items()}
        question = Choose("How are the days written?", list(orders))
        self.app.push_screen(question, given(lambda word: self._in_order(orders[word])))

    def _in_order(self, order: str) -> None:
        self._keep(self.taken.in_order(order))

    def _keep(self, taken: Taken) -> None:
        """For this list, and in the store for the next; where that cannot be written it is said."""
        self.taken = taken
        try:
            mapped.keep(self.host.pantry, taken)
        except PantryError as error:
            self.host.tell(error.message, refused=True)
        self.settle_list()

    # -- all rows ----------------------------------------------------------------------------------

    def action_look_through(self) -> None:
        """Look all rows through; what is bad is named, else they may be booked."""
        asks = self.taken.asks()
        if asks:
            self.host.tell(listtext.asked_text(asks[0]), refused=True)
            return
        run(self.host, self.sheet.path, self.taken, self._looked, dry_run=True)

    def _looked(self, found: Imported) -> None:
        if found.asks and found.asks[0].about == "unit":
            self._ask_unit(found.asks[0])
            return
        if found.asks:
            self._ask_order(found.asks[0].typed)
            return
        text = listtext.found_text(found, self.sheet.path.name)
        if found.bad:
            self.app.push_screen(Page(text))
        else:
            self.app.push_screen(Decide(text, BOOKS), self._decided)

    def _ask_order(self, example: str) -> None:
        """Asked once, for all days of the list; then it is looked through."""
        orders = listtext.orders_of(example, self.host.pantry.today)
        question = Choose(
            f"{clip(example, 20)} could be two days. Which comes first?", list(orders)
        )

        def chosen(word: str) -> None:
            self._in_order(orders[word])
            self.action_look_through()

        self.app.push_screen(question, given(chosen))

    def _ask_unit(self, ask: Ask) -> None:
        """Asked once, for all bare numbers of the column; then it is looked through."""
        title = f"{clip(ask.typed, 60)} has no unit. Which is meant in all of the column?"
        by_unit = {one.partition("=")[2]: one for one in ask.choices}

        def chosen(unit: str) -> None:
            self._keep(self.taken.in_units(read_units(by_unit[unit])))
            self.action_look_through()

        self.app.push_screen(Choose(title, list(by_unit)), given(chosen))

    def _decided(self, yes: bool | None) -> None:
        if yes:
            run(self.host, self.sheet.path, self.taken, self._booked, dry_run=False)

    def _booked(self, found: Imported) -> None:
        if not found.booked:  # the file, or the store, has changed since it was looked through
            self._looked(found)
            return
        name = clip(self.sheet.path.name, 60)
        self.dismiss()
        self._done()
        them = agreed(found.batches, "it", "all of them")
        said = f"Put up {counted(found.batches, 'batches')} of {name}: z takes {them} back."
        self.host.call_later(lambda: self.host.report(Done(said)))

    def action_back(self) -> None:
        """Leave the list; what was said of its columns is kept."""
        self.dismiss()
        if self.taken.changed:
            said = "Nothing is booked; what you said of the columns is kept for this list."
            self.host.call_later(lambda: self.host.report(Done(said)))
