"""What every list of stock has: rows, a word on the row under the cursor, the acts on it.

A screen of stock says which lines it shows (`build`); everything else is here. Each act is one
call of a service; afterwards the list is read again and the cursor stays on its line.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import PurePath
from typing import ClassVar

from rich.text import Text
from textual import on
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import DataTable, Input, Static

from pantry_tui.app.format import Column, caution, clip, due_columns, row_detail, sentence
from pantry_tui.app.screens.ask import Choose, TypeLine
from pantry_tui.app.screens.finding import FindingScreen
from pantry_tui.app.screens.page import Page
from pantry_tui.app.texts import months_text, sign_text
from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.roomline import RoomLine
from pantry_tui.app.widgets.rowtable import Line, RowTable
from pantry_tui.app.widgets.saidline import SaidLine
from pantry_tui.core.words import Taste
from pantry_tui.services import act, reserve, signs, taste, view
from pantry_tui.services.rows import Done

#: One key each; the last asks for words of one's own.
REASONS = (
    "past its date",
    "seal failed",
    "bulging, leaking or spurting",
    "mould",
    "smells or looks wrong",
    "soft, slimy or rotten",
    "thawed by mistake",
    "frost or dried out",
    "nobody would eat it",
    "another reason ...",
)

WIDE = 118
PANE = 38


class StockScreen(FindingScreen):
    """A list of stock. Subclasses set `here` (the command table's screen id) and `build`."""

    CSS_PATH: ClassVar[str | PurePath | list[str | PurePath] | None] = "stock.tcss"
    AUTO_FOCUS = "#list"
    here = "due"
    empty = "Nothing is in store yet."

    def __init__(self) -> None:
        super().__init__()
        self.marked: set[str] = set()

    def compose(self) -> ComposeResult:
        yield RoomLine(self.here)
        with Horizontal(id="middle"):
            yield RowTable()
            with VerticalScroll(id="pane", can_focus=False):
                yield Static(id="detail")
        yield Static(id="word")
        yield Input(id="bar", placeholder="words to find")
        yield KeyLine(self.here)
        yield SaidLine()

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        """The lines to show now."""
        raise NotImplementedError

    def start(self, lines: Sequence[Line]) -> int:
        """Where the cursor stands at first."""
        return 0

    def columns(self, width: int) -> tuple[Column, ...]:
        return due_columns(width)

    def headline(self) -> str:
        """What stands after the rooms on the top line."""
        return self.host.day_text

    # -- showing ---------------------------------------------------------------------------------

    def on_screen_resume(self) -> None:
        self.host.pantry.catch_up()
        self.reload()

    def on_resize(self) -> None:
        self.reload()

    def reload(self) -> None:
        """Read the list again; the cursor stays on its line."""
        wide = self.size.width >= WIDE
        self.query_one("#pane").display = wide
        columns = self.columns(self.size.width - (PANE if wide else 0))
        lines = [_with_mark(one, self.marked, columns) for one in self.build(columns)]
        self.table.fill(columns, lines, self.start(lines), top=self.searching)
        self.query_one(RoomLine).show(self.headline())
        self.say_word()

    @on(DataTable.RowHighlighted)
    def highlighted(self) -> None:
        self.say_word()

    def say_word(self) -> None:
        """A sentence on the line under the cursor: why, and the caution where food can hurt."""
        line = self.table.current
        row = line.row if line else None
        word = line.word if line else ""
        if row is not None:
            why = sentence(clip(row.reasons[0], 300)) if row.reasons else ""
            word = caution(row) or word or why
        elif not self.table.lines:
            word = "Nothing matches these words; Esc shows all." if self.sought else self.empty
        self.query_one("#word", Static).update(Content(word))
        self.show_detail(row_detail(row) if row else "")

    def show_detail(self, text: str) -> None:
        """The pane beside a wide list."""
        self.query_one("#detail", Static).update(Content(text))

    # -- acting ----------------------------------------------------------------------------------

    @property
    def chosen(self) -> list[Line]:
        """The marked lines, else the one under the cursor."""
        marked = [line for line in self.table.lines if line.key in self.marked and line.ref]
        current = self.table.current
        return marked or ([current] if current is not None and current.ref else [])

    def _on_line(self, do: Callable[[str], Done]) -> None:
        refs = [line.ref for line in self.chosen]
        if not refs:
            self.host.tell("Put the cursor on a line of stock first.", refused=True)
            return
        if self.host.attempt(lambda: act.several(self.host.pantry, refs, do)):
            self.marked.clear()
        self.reload()
        self.set_focus(self.table)

    def action_mark(self) -> None:
        """Mark the line, or take its mark away; the next act is for all that are marked."""
        line = self.table.current
        if line is not None and line.ref:
            self.marked ^= {line.key}
            self.reload()
            self.table.action_cursor_down()

    def action_use(self) -> None:
        line = self.chosen[0] if len(self.chosen) == 1 else None
        if line is not None and line.row is not None and line.row.amount:
            title = f"How much of the {line.row.amount}? Leave it empty to use it all up."
            self._ask_line(f"{title} ({clip(line.row.food, 40)})", "2 lb", self._draw, empty=True)
        else:
            self._on_line(lambda ref: act.use(self.host.pantry, ref))

    def _draw(self, amount: str) -> None:
        self._on_line(lambda ref: act.use(self.host.pantry, ref, amount or None))

    def action_give(self) -> None:
        """To whom, in words; they are named when a batch is recalled."""
        self._ask_line("Give one away: to whom?", "Aunt Sunniva", self._give)

    def _give(self, to: str) -> None:
        self._on_line(lambda ref: act.give(self.host.pantry, ref, to=to))

    def action_keep(self) -> None:
        """For whom, in words; what is kept already is free again."""
        kept = [line for line in self.chosen if line.row is not None and line.row.reserved]
        if kept:
            self._on_line(lambda ref: reserve.free(self.host.pantry, ref))
        else:
            self._ask_line("Keep one apart: for whom? Empty means a gift.", "Aunt Sunniva",
                           self._keep, empty=True)  # fmt: skip

    def _keep(self, whom: str) -> None:
        self._on_line(lambda ref: reserve.reserve(self.host.pantry, ref, words=whom or "gift"))

    @property
    def tasted_ref(self) -> str:
        """The batch that was tasted: that of the line."""
        line = self.table.current
        return line.ref if line else ""

    def action_taste(self) -> None:
        """How it was, by one key, then a note."""
        ref = self.tasted_ref.partition("/")[0]
        if not ref:
            self.host.tell("Put the cursor on a line of stock first.", refused=True)
            return

        def note(said: str) -> None:
            self._ask_line(f"{ref}, {said}: a note for next year, or none.", "less salt",
                           lambda words: self._taste(ref, said, words), empty=True)  # fmt: skip

        self.app.push_screen(Choose(f"How was {ref}?", list(Taste)), given(note))

    def _taste(self, ref: str, said: str, words: str) -> None:
        self.host.attempt(lambda: taste.taste(self.host.pantry, ref, said, words))
        self.reload()

    def action_lose(self) -> None:
        self._on_line(lambda ref: act.lose(self.host.pantry, ref))

    def action_months(self) -> None:
        self.app.push_screen(Page(months_text(view.months(self.host.pantry))))

    def action_open(self) -> None:
        self._on_line(lambda ref: act.open_(self.host.pantry, ref))

    def action_thaw(self) -> None:
        self._on_line(lambda ref: act.thaw(self.host.pantry, ref))

    def action_undo(self) -> None:
        self.host.attempt(lambda: act.undo(self.host.pantry))
        self.reload()

    def action_move(self) -> None:
        """Where to, by one key."""
        paths = sorted(self.host.pantry.place_paths().values(), key=str.lower)
        self._ask("Move one to which place?", paths, self._move)

    def _move(self, to: str) -> None:
        self._on_line(lambda ref: act.move(self.host.pantry, ref, to))

    def action_discard(self) -> None:
        """Why, by one key."""
        self._ask("Discard one: why?", REASONS, self._discard)

    def _discard(self, why: str) -> None:
        if why == REASONS[-1]:
            self._ask_line("Discard one: why?", "what is wrong with it", self._discard)
            return
        self._on_line(lambda ref: act.discard(self.host.pantry, ref, why=why))

    def action_sign(self) -> None:
        """What is seen, smelled or heard; the verdict and the disposal follow at once."""
        line = self.table.current
        words = signs.possible_words(self.host.pantry, line.ref) if line and line.ref else []
        self._ask("What do you see?", words, self._sign)

    def _sign(self, words: str) -> None:
        line = self.table.current
        assert line is not None
        said = signs.mark(self.host.pantry, line.ref, words)
        self.reload()
        self.app.push_screen(Page(sign_text(said)))

    def _ask(self, title: str, options: Sequence[str], then: Callable[[str], None]) -> None:
        line = self.table.current
        if line is None or not line.ref or not options:
            self.host.tell("Put the cursor on a line of stock first.", refused=True)
            return
        name = f"{line.ref} {line.row.food if line.row else ''}"
        self.app.push_screen(Choose(f"{title} ({clip(name, 40)})", options), given(then))

    def _ask_line(
        self, title: str, example: str, then: Callable[[str], None], *, empty: bool = False
    ) -> None:
        self.app.push_screen(TypeLine(title, example, empty=empty), given(then))

    # -- looking closer --------------------------------------------------------------------------

    @on(DataTable.RowSelected)
    def selected(self) -> None:
        self.action_detail()

    def action_detail(self) -> None:
        """Enter: what was typed in the field stands, or the line is looked at."""
        if self.focused is self.bar:
            self.settle()
        else:
            self.look()

    def look(self) -> None:
        """Show the whole batch of the line."""
        line = self.table.current
        if line is not None and line.ref:
            self.host.show_batch(line.ref)


def _with_mark(line: Line, marked: set[str], columns: Sequence[Column]) -> Line:
    """A marked line says so with a star, where colour may be missing."""
    if line.key not in marked:
        return line
    at = next((i for i, one in enumerate(columns) if one.field in ("food", "what")), 0)
    cells = list(line.cells)
    cells[at] = Text(clip(f"* {cells[at].plain}", columns[at].width - 1), "bold")
    return replace(line, cells=tuple(cells))


def given(then: Callable[[str], None]) -> Callable[[str | None], None]:
    """Calls `then` unless the question was left without an answer."""

    def answered(value: str | None) -> None:
        if value is not None:
            then(value)

    return answered
