"""A round: walk along one place and count. One key where the count agrees."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, round_columns
from pantry_tui.app.lines import round_lines
from pantry_tui.app.screens.ask import Choose
from pantry_tui.app.screens.page import GOES_ON, Page
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.texts import difference_text
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.model import Place
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import count as rounds

BOOK = ("book these differences", "go on counting", "forget this round")


class RoundScreen(StockScreen):
    """Every count is kept at once; the round can be left anywhere and goes on later."""

    here = "round"
    BINDINGS = bindings("round")
    empty = "Nothing is recorded here: + adds what stands here unlisted, f ends the round."

    def __init__(self) -> None:
        super().__init__()
        self.place: Place | None = None
        self._asking = False  # the question which place is on the screen
        self._typing = ""  # the line whose count is being typed, digit by digit

    def on_screen_resume(self) -> None:
        super().on_screen_resume()
        if self.place is None and self.is_current:
            self._choose_place()

    def _choose_place(self) -> None:
        if self._asking:
            return
        paths = self.host.pantry.place_paths()
        known = rounds.next_places(self.host.pantry)
        options = {f"{paths[pl.id]}: {_since(days)}": pl for pl, days in known}
        if not options:
            self.host.action_go("due")
            self.host.tell("Nothing stands anywhere yet: put something up first.", refused=True)
            return
        title = "Count which place? The one to count next stands first."
        self._asking = True
        self.app.push_screen(Choose(title, list(options)), lambda got: self._begin(options, got))

    def _begin(self, options: dict[str, Place], got: str | None) -> None:
        self._asking = False
        if got is None:
            self.host.action_go("due")
            return
        self.place = options[got]
        self.reload()
        self.set_focus(self.table)

    def start(self, lines: Sequence[Line]) -> int:
        """Go on after the line that was counted last."""
        if self.place is None:
            return 0
        at = rounds.draft(self.host.pantry, self.place).at
        keys = [line.key for line in lines]
        return min(keys.index(at) + 1, len(keys) - 1) if at in keys else 0

    def columns(self, width: int) -> tuple[Column, ...]:
        return round_columns(width)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        if self.place is None:
            return ()
        found = rounds.lines(self.host.pantry, self.place)
        self._left = sum(line.seen is None for line in found)
        return round_lines(found, columns)

    def headline(self) -> str:
        if self.place is None:
            return self.host.day_text
        return f"{self._left} to go in {self.place.name}"

    def say_word(self) -> None:
        word = "Enter: it agrees. Digits: the count. s sign, m elsewhere, + unlisted, f finish."
        text = word if self.table.lines else self.empty
        self.query_one("#word", Static).update(Content(text))
        current = self.table.current
        if current is not None and current.key != self._typing:
            self._typing = ""

    # -- counting --------------------------------------------------------------------------------

    def _count(self, key: str, seen: int) -> None:
        assert self.place is not None
        if seen <= 999:
            rounds.count(self.host.pantry, self.place, key, seen)
            self.reload()

    def look(self) -> None:
        """Enter: the count agrees, or what was typed stands; on to the next line."""
        line = self.table.current
        if line is None or self.place is None:
            return
        if line.key != self._typing:
            self._count(line.key, line.number)
        self._typing = ""
        self.table.action_cursor_down()

    def action_digit(self, digit: str) -> None:
        """A digit begins a count on this line; more digits go on with it."""
        line = self.table.current
        if line is None or self.place is None:
            return
        seen = rounds.draft(self.host.pantry, self.place).seen.get(line.key, 0)
        more = line.key == self._typing
        self._typing = line.key
        self._count(line.key, seen * 10 + int(digit) if more else int(digit))

    def action_uncount(self) -> None:
        line = self.table.current
        if line is not None and self.place is not None:
            rounds.uncount(self.host.pantry, self.place, line.key)
            self._typing = ""
            self.reload()

    def action_undo(self) -> None:
        """The last count of this round; when none is left, the last thing that was booked."""
        back = rounds.take_back(self.host.pantry, self.place) if self.place else None
        if back is None:
            super().action_undo()
            return
        done, key = back
        self._typing = ""
        self.reload()
        self.table.go_to(lambda line: line.key == key)
        self.host.report(done)

    def action_unlisted(self) -> None:
        place = self.place
        if place is None:
            return
        title = "What stands here unlisted? The day made may stay unknown."
        example = "2 pint jars peaches, boiling-water canned"

        def add(typed: str) -> Done:
            found = rounds.add_find(self.host.pantry, place, typed)
            return Done(f"Stands here unlisted: {found}. f books it, z takes it back.")

        self._ask_act(title, example, add)

    # -- ending ----------------------------------------------------------------------------------

    def action_finish(self) -> None:
        """Show what differs, then book it."""
        if self.place is None:
            return
        found = rounds.differences(self.host.pantry, self.place)
        if self._left and self._left == len(self.table.lines) and not found:
            self.host.tell("Count a line first: Enter where it agrees. Esc leaves.", refused=True)
            return
        text = difference_text(found, self._left)
        self.app.push_screen(
            Page(text, GOES_ON), lambda _: self.app.push_screen(Choose("And now?", BOOK), self._end)
        )

    def _end(self, got: str | None) -> None:
        place = self.place
        if got is None or got == BOOK[1] or place is None:
            return
        finish = rounds.finish if got == BOOK[0] else rounds.give_up
        if self.host.attempt(lambda: finish(self.host.pantry, place)):
            self.place = None
            self.reload()
            self._choose_place()

    def action_back(self) -> None:
        """Leave; the counts are kept."""
        self.place = None
        self.host.action_go("due")


def _since(days: int | None) -> str:
    if days is None:
        return "never counted"
    return "counted today" if days == 0 else f"counted {days} days ago"
