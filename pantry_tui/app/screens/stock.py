"""What the lists of stock show: rows, why each is as it is, and all of it beside a wide list."""

from __future__ import annotations

from rich.cells import cell_len
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.format import Column, hang, sentence
from pantry_tui.app.host import Host
from pantry_tui.app.rowtext import (
    ROOMY,
    caution,
    due_columns,
    row_detail,
    said_verdict,
    what_is_left,
)
from pantry_tui.app.screens.finds import Finds
from pantry_tui.app.widgets.inunits import in_words
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Line
from pantry_tui.app.widgets.more import More
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.core.text import clean
from pantry_tui.errors import PantryError
from pantry_tui.services.stock.lines import ORDERS, lines

#: So many lines are looked through for one that may be eaten, some at a time.
LOOKED, _AT_ONCE = 1000, 50

#: From this width on a pane of so many cells stands beside the list.
WIDE = 118
PANE = 38


def longest_place(host: Host) -> int:
    """Cells of the longest name of a place."""
    return max((cell_len(clean(one.name)) for one in host.pantry.places.values()), default=0)


class Pane(Vertical):
    """The line under the cursor in full."""

    DEFAULT_CSS = f"""
    Pane {{ width: {PANE}; height: 100%; background: $surface; }}
    Pane VerticalScroll {{ height: 1fr; padding: 0 1; }}
    """

    def __init__(self) -> None:
        super().__init__(id="pane")
        self._words = Static(id="detail")

    def compose(self) -> ComposeResult:
        yield (text := VerticalScroll(self._words, can_focus=False))
        yield More(text, "Enter shows all of it")

    def say(self, text: str) -> None:
        """Show it, from its beginning."""
        self._words.update(Content(in_words(self, text)))


class RowWords(Finds):
    """The sentence on a row of stock: the caution where it can hurt, else why."""

    def word_on(self, line: Line) -> str:
        row = line.row
        if row is None:
            return line.word
        why = sentence(clean(row.reasons[0])) if row.reasons else ""
        # Where no column says how much is left, the sentence does.
        narrow = self.app.size.width < ROOMY
        left = " ".join(what_is_left(self.host.units.rows(row)).split())
        many = f"{left} of " if narrow and left else ""
        return caution(row) or line.word or f"{said_verdict(row)}: {many}{row.code}. {why}"


class Beside(Finds):
    """A list with a pane beside it where there is room; the pane is made when it is needed."""

    @property
    def wide(self) -> bool:
        return self.app.size.width >= WIDE

    @property
    def list_width(self) -> int:
        return self.app.size.width - (PANE if self.wide else 0)

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        with Horizontal(id="middle"):
            yield self.make_list()
            if self.wide:
                yield Pane()
        yield from self.below()
        yield WordLine()
        yield KeyLine(self.here)

    def detail_on(self, line: Line | None) -> str:
        """What the pane says."""
        text = row_detail(self.host.units.rows(line.row)) if line and line.row else ""
        return hang(in_words(self, text), PANE - 3)

    def on_resize(self) -> None:
        panes = self.query(Pane)
        if panes:
            panes.first().display = self.wide
        elif self.wide:
            self.query_one("#middle").mount(Pane())

    def say_word(self) -> None:
        """Beside a pane the sentence is said there, and not twice."""
        line = self.table.current
        if not self.wide or line is None:
            super().say_word()
            if self.wide:
                self.say_pane("")
            return
        self.say("")
        self.say_pane(self.detail_on(line) or self.word_on(line))
        if line.row:
            self.call_after_refresh(self.say_more, line)

    def say_pane(self, text: str) -> None:
        """Show a text in the pane."""
        for pane in self.query(Pane):
            pane.say(text)

    def say_more(self, line: Line) -> None:
        """What the batch of a line has beside it, once the line itself is on the screen."""
        from pantry_tui.app.texts import pane_text
        from pantry_tui.services.stock.one_batch import show

        now = self.table.current
        if line.row is None or now is None or now.key != line.key:
            return
        try:
            units = self.host.units
            whole = show(self.host.pantry, line.row.code)
            text = pane_text(units.rows(line.row), units.rows(whole))
        except PantryError:  # another window took it back: the list is read again at once
            return
        self.say_pane(hang(in_words(self, text), PANE - 3))


class StockList(RowWords, Beside):
    """Rows of stock from one window, with the columns of a list of stock."""

    empty = "Nothing is in store yet."

    def oldest_found(self) -> int | None:
        """The line of what should be eaten first of all that fits the words; None where nothing
        that does is to be eaten."""
        found = lines(self.host.pantry, order=ORDERS[0], text=self.sought)
        at = 0
        while at < min(found.total, LOOKED):
            for row in found.rows(at, at + _AT_ONCE):
                if row.usable and not row.reserved:
                    return self.table.source.find(row.container_ids[0])
            at += _AT_ONCE
        return None

    def columns(self, width: int) -> tuple[Column, ...]:
        longest, named = self.host.pantry.longest_code, longest_place(self.host)
        return due_columns(width, longest=longest, named=named)
