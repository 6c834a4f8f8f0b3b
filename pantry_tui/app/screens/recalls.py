"""What Put up remembers: earlier lines by Up and Down, the rest of a word or of the last such batch
by Tab, shown in grey behind the cursor, and a place that is made while its line is typed."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import cast

from textual.screen import Screen
from textual.widgets import Input
from textual.widgets.input import Selection

from pantry_tui.app.host import Host
from pantry_tui.app.screens.ask import Choose
from pantry_tui.core.line.kinds import sensible
from pantry_tui.core.words import Climate
from pantry_tui.errors import PantryError
from pantry_tui.services.rows import Ask, PutUp, PutUpReading

#: What a new place may be like.
LIKE = {
    "pantry: cool and dry": Climate.PANTRY,
    "room: as warm as the house": Climate.ROOM,
    "cellar: cold and damp": Climate.CELLAR,
    "fridge": Climate.FRIDGE,
    "freezer": Climate.FREEZER,
}


class Recalls(Screen[None]):
    """The line of Put up with a memory."""

    @property
    def host(self) -> Host:
        return cast(Host, self.app)

    @property
    def line(self) -> Input:
        return self.query_one("#line", Input)

    def __init__(self) -> None:
        super().__init__()
        self._typed: list[str] = []  # the lines of this sitting: booked, or left unfinished
        self._codes: set[str] = set()  # and the lid codes they got
        self._at = 0  # how many lines back; 0 is what is being typed
        self._draft = ""
        self.filled = ""  # the place that was filled in, where nothing else was typed
        self.filled_at = ""  # its path
        self.shelf = ""  # the id of the place of which the lines are, one after another
        self._before: PutUpReading | None = None  # the line before, of the same place

    def offered(self, value: str) -> str:
        """What Tab adds; nothing while the store cannot be read, which is said elsewhere."""
        from pantry_tui.services.batchwork import recalled

        try:
            before = self._before if self.shelf else None
            line = value.removeprefix(self.filled) if self.filled_in(value)[1] else value
            return recalled.offered(self.host.pantry, line, self.shelf, before)
        except PantryError:
            return ""

    def was(self, food: str) -> Sequence[str]:
        """How it was before."""
        from pantry_tui.services.batchwork import recalled

        try:
            return recalled.before(self.host.pantry, food)
        except PantryError:
            return ()

    def read(self, line: str) -> PutUpReading:
        """As it stands there, where a place was named for all lines; a place that is typed goes
        before the one that was filled in."""
        from pantry_tui.services.batchwork import putup, recalled

        if self.shelf in self.host.pantry.places:
            return recalled.there(self.host.pantry, line, self.shelf)
        if self.filled and line.startswith(self.filled):
            typed = putup.read(self.host.pantry, line.removeprefix(self.filled))
            if typed.place or recalled.place_to_make(typed) is not None:
                return typed
        return putup.read(self.host.pantry, line)

    def filled_in(self, line: str) -> tuple[str, str]:
        """The place that was filled in, "" where none was, and the one that the line names in its
        stead, "" where it counts."""
        from pantry_tui.services.batchwork import recalled

        if not self.filled or not line.startswith(self.filled):
            return "", ""
        reading = self.read(line)
        new = recalled.place_to_make(reading)
        named = reading.place or (new.typed if new is not None else "")
        return self.filled_at, named if named != self.filled_at else ""

    def sure_of(self, line: str, then: Callable[[], None]) -> None:
        """Go on; of a count that is most likely a slip it is asked first, and Enter alone goes on
        with none."""
        from pantry_tui.services.batchwork import recalled
        from pantry_tui.services.batchwork.absurd import absurd_count

        reading = self.read(line)
        whole = not (reading.problems or reading.unread)  # or will be, once its place is made
        asked = absurd_count(self.host.pantry, reading)
        if not asked or not (whole or recalled.place_to_make(reading) is not None):
            then()
            return
        yes = f"{reading.count}, as it is typed"
        question = Choose(asked, (yes, "no: mend the line"), sure=True)
        self.host.push_screen(question, lambda got: then() if got == yes else None)

    def action_take(self) -> None:
        """What is offered, at the end of the line."""
        value = self.line.value
        self.line.value = value + (self.offered(value) if value.strip() else "")
        self.line.cursor_position = len(self.line.value)

    def action_lineup(self) -> None:
        self._bring(self._at + 1)

    def action_linedown(self) -> None:
        self._bring(self._at - 1)

    def _bring(self, at: int) -> None:
        """The line so far back, its count selected: digits take its place, Enter books it as it
        was."""
        from pantry_tui.services.batchwork import recalled

        if self._at == 0:
            self._draft = self.line.value
        before = recalled.earlier(self.host.pantry, self._codes)
        lines = list(dict.fromkeys([*reversed(self._typed), *before]))
        if not 0 <= at <= len(lines):
            return
        self._at = at
        self.line.value = lines[at - 1] if at else self._draft
        digits = len(self.line.value) - len(self.line.value.lstrip("0123456789"))
        end = len(self.line.value)
        self.line.selection = Selection(0, digits) if at and digits else Selection.cursor(end)

    def remember(self, line: str, made: PutUp) -> None:
        """It was booked."""
        self._at, self._draft, self._before = 0, "", made.reading
        self._codes.add(made.code)
        self.keep(line)

    def keep(self, line: str) -> None:
        """Up brings it back."""
        if line.strip():
            self._typed = [one for one in self._typed if one != line] + [line]


def ask_place(host: Host, place: Ask, then: Callable[[str | None, Climate | None], None]) -> None:
    """Which place is meant, or what a new one of that name is like; `then` gets one of the two."""
    nears = {f"it is {one}": one for one in place.choices[:4]}
    words = {one: said for said, one in LIKE.items()}
    like = {words[one]: one for one in sensible(place.typed) if one in words}  # the likeliest first
    title = f"There is no place called {place.typed!r}. Make it? It is like:"

    def chosen(got: str | None) -> None:
        if got is not None:
            then(nears.get(got), like.get(got))

    host.push_screen(Choose(title, [*like, *nears]), chosen)
