"""What every list has: the rooms above it, its lines, a sentence on one of them, the keys.

A screen says which lines it shows (`source`). What may be done there is added by what it is made
of: `Finds` narrows a list and jumps in it, `acts` does things to stock.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import cast

from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.geometry import Size
from textual.screen import Screen
from textual.widget import Widget

from pantry_tui.app.format import Column
from pantry_tui.app.host import Host
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.line import Line, Listed, Source
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.app.widgets.wordline import WordLine
from pantry_tui.errors import PantryError


class ListScreen(Screen[None]):
    """Subclasses set `here` (the command table's screen id), `columns` and `source`."""

    AUTO_FOCUS = "#list"
    here = ""
    empty = ""

    #: The words have just changed: the cursor goes to the first line that fits them.
    searching = False

    #: Commands of the screen that would be refused whatever the cursor stands on: no key is named.
    not_now: Collection[str] = frozenset()

    #: The lid code, or the container, that the act which begins just now is for, "" where it is
    #: for what is marked or under the cursor.
    meant = ""

    def __init__(self) -> None:
        super().__init__()
        self._shown_at = Size(0, 0)  # what the lines were made for
        self._fresh = False

    @property
    def host(self) -> Host:
        return cast(Host, self.app)

    @property
    def table(self) -> LineList:
        return self.query_one("#list", LineList)

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        with Horizontal(id="middle"):
            yield self.make_list()
        yield from self.below()
        yield WordLine()
        yield KeyLine(self.here)

    def make_list(self) -> LineList:
        """What shows the lines: a list, or a picture of them."""
        return LineList()

    def below(self) -> ComposeResult:
        """What stands between the list and the sentence."""
        yield from ()

    def columns(self, width: int) -> tuple[Column, ...]:
        """The columns of a list of that width."""
        raise NotImplementedError

    def source(self, columns: tuple[Column, ...]) -> Source:
        """The lines to show now."""
        raise NotImplementedError

    def start(self) -> int:
        """Where the cursor stands at first."""
        return 0

    def headline(self) -> str:
        """What stands after the rooms on the top line."""
        return self.host.day_text

    def headlines(self) -> Sequence[str]:
        """The same, and what stands there where it has no room."""
        return (self.headline(),)

    # -- showing ---------------------------------------------------------------------------------

    def on_mount(self) -> None:
        """Filled before it is laid out for the first time, and not again when it is shown."""
        self.reload()
        self._fresh = True

    def on_screen_resume(self) -> None:
        fresh, self._fresh = self._fresh, False
        if not fresh:
            self.host.catch_up()
            self.reload()

    def on_screen_suspend(self) -> None:
        """What was said here is read; what is done elsewhere may make it untrue."""
        SaidLine.hush(self)

    def on_resize(self) -> None:
        if self.app.size != self._shown_at:
            self.reload()

    @property
    def list_width(self) -> int:
        """Cells that the list may fill."""
        return self.app.size.width

    def reload(self) -> None:
        """Read the list again; the cursor stays on its line."""
        self._shown_at = self.app.size
        try:
            columns = self.columns(self.list_width)
            source = self.source(columns)
        except PantryError as error:
            # No line that nobody vouches for any more stays on the screen.
            self.table.show(self.table.columns, Listed(()))
            self.say_word()
            self.say(error.message)
            return
        self.table.show(columns, source, self.start, top=self.searching)
        self.query_one(RoomLine).show(*self.headlines())
        self.say_word()

    @on(LineList.Moved)
    def moved(self) -> None:
        self.say_word()

    def say_word(self) -> None:
        """A sentence on the line under the cursor."""
        line = self.table.current
        self.say(self.word_on(line) if line else self.empty)

    def word_on(self, line: Line) -> str:
        """The sentence on a line."""
        return line.word

    def say(self, text: str) -> None:
        """Put a sentence under the list."""
        self.query_one(WordLine).say(text)

    # -- looking closer --------------------------------------------------------------------------

    @on(LineList.Chosen)
    def chosen_line(self) -> None:
        self.look()

    def action_detail(self) -> None:
        """Enter: the line is looked at."""
        self.look()

    def look(self) -> None:
        """Show the whole batch of the line, or all of a sentence that is cut under the list."""
        line = self.table.current
        if line is not None and line.ref:
            self.host.show_batch(line.ref)
        elif cut := self.query_one(WordLine).cut:
            self.host.show_page(cut)

    def action_back(self) -> None:
        """To the first screen."""
        self.host.action_go("due")

    def show_line(self, ref: str) -> None:
        """Put the cursor on a container or lid code, where this list has it."""
        self.table.go_to(ref)

    def settle_list(self) -> None:
        """After an act: the list as it is now has the keys again."""
        self.reload()
        self.set_focus(cast(Widget, self.table))
