"""Two small questions: choose one by its key, or type one line."""

from __future__ import annotations

from collections.abc import Sequence
from string import ascii_lowercase

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.events import Key
from textual.screen import ModalScreen
from textual.widgets import Input, OptionList, Static
from textual.widgets.option_list import Option

from pantry_tui.app.format import clip

KEYS = "123456789" + ascii_lowercase


class Choose(ModalScreen[str | None]):
    """One of `options`, by its key, arrow keys or mouse; None when left by Esc."""

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "dismiss(None)", "back")]

    def __init__(self, title: str, options: Sequence[str]) -> None:
        super().__init__()
        self._title, self._options = title, list(options)

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(self._title, 200)), id="title")
            shown = [
                Option(Content(f"{KEYS[i] if i < len(KEYS) else ' '}  {clip(one, 60)}"))
                for i, one in enumerate(self._options)
            ]
            yield OptionList(*shown, markup=False)

    def on_key(self, event: Key) -> None:
        """A key of the list chooses at once."""
        place = KEYS.find(event.character) if event.character else -1
        if 0 <= place < len(self._options):
            event.stop()
            self.dismiss(self._options[place])

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self.dismiss(self._options[event.option_index])


class TypeLine(ModalScreen[str | None]):
    """One typed line; None when left by Esc or empty."""

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "dismiss(None)", "back")]

    def __init__(self, title: str, example: str, value: str = "", *, empty: bool = False) -> None:
        super().__init__()
        self._may_be_empty = empty
        self._title, self._example, self._value = title, example, value

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(self._title, 200)), id="title")
            yield Input(self._value, placeholder=self._example)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        typed = event.value.strip()
        self.dismiss(typed if typed or self._may_be_empty else None)
