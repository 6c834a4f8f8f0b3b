"""A typed line with what Tab would add to it, in grey; of a file, what lies there."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from textual.binding import Binding
from textual.suggester import Suggester
from textual.widgets import Input

from pantry_tui.app.filenames import rest_of
from pantry_tui.app.screens.ask import LINE_KEYS, TypeLine
from pantry_tui.app.widgets.typing import Typing


class Offers(Suggester):
    """What Tab would add, in grey behind the cursor."""

    def __init__(self, offered: Callable[[str], str]) -> None:
        super().__init__(use_cache=False, case_sensitive=True)
        self._offered = offered

    async def get_suggestion(self, value: str) -> str | None:
        return value + offer if (offer := self._offered(value)) else None


class FileLine(TypeLine):
    """A file, by its path: Tab adds what lies there, among files with one of the endings."""

    BINDINGS = [Binding("tab", "take", "take what is offered")]
    how = f"[b]Tab[/b] completes   {LINE_KEYS}"

    def __init__(
        self, title: str, example: str, endings: Sequence[str], *, accept: Callable[[str], object]
    ) -> None:
        super().__init__(title, example, accept=accept)
        self._endings = endings

    def make_input(self) -> Input:
        return Typing(placeholder=self._example, suggester=Offers(self._offered))

    def _offered(self, typed: str) -> str:
        return rest_of(typed, self._endings) if typed else ""

    def action_take(self) -> None:
        """What is offered, at the end of the line."""
        line = self.query_one(Input)
        line.value += rest_of(line.value, self._endings)
        line.cursor_position = len(line.value)
