"""Two small questions: choose one by its key, or type one line."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from string import ascii_lowercase
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical
from textual.content import Content
from textual.events import Key
from textual.screen import ModalScreen
from textual.widgets import Input, OptionList, Static
from textual.widgets.option_list import Option

from pantry_tui.app.format import clip
from pantry_tui.errors import PantryError
from pantry_tui.services.rows import Done

if TYPE_CHECKING:
    from pantry_tui.app.screens.listing import ListScreen

KEYS = "123456789" + ascii_lowercase


class Choose(ModalScreen[str | None]):
    """One of `options`, by its key, arrow keys or mouse; None when left by Esc.

    Where it may be for several, `+` `-` `*` say for how many of the `most`: `number`.
    """

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "dismiss(None)", "back")]

    def __init__(self, title: str, options: Sequence[str], most: int = 1) -> None:
        super().__init__()
        self._title, self._options = title, list(options)
        self.number, self._most = 1, most

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(self._title, 200)), id="title")
            if self._most > 1:
                yield Static(Content(self._how_many()), id="number")
            shown = [
                Option(Content(f"{KEYS[i] if i < len(KEYS) else ' '}  {clip(one, 60)}"))
                for i, one in enumerate(self._options)
            ]
            yield OptionList(*shown, markup=False)

    def on_key(self, event: Key) -> None:
        """A key of the list chooses at once; plus, minus and star say for how many."""
        wanted = {"+": self.number + 1, "-": self.number - 1, "*": self._most}
        if self._most > 1 and event.character in wanted:
            event.stop()
            self.number = max(1, min(self._most, wanted[event.character]))
            self.query_one("#number", Static).update(Content(self._how_many()))
            return
        place = KEYS.find(event.character) if event.character else -1
        if 0 <= place < len(self._options):
            event.stop()
            self.dismiss(self._options[place])

    def _how_many(self) -> str:
        return f"{self.number} of {self._most}   + more  - fewer  * all"

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        self.dismiss(self._options[event.option_index])


class TypeLine(ModalScreen[str | None]):
    """One typed line; None when left by Esc or empty.

    `accept` does what the line asks for. When it raises PantryError the sentence is shown and the
    line stays, to be mended: nothing typed is lost.
    """

    CSS_PATH = "ask.tcss"
    BINDINGS = [Binding("escape", "dismiss(None)", "back")]

    def __init__(
        self,
        title: str,
        example: str,
        value: str = "",
        *,
        empty: bool = False,
        accept: Callable[[str], object] = str,
    ) -> None:
        super().__init__()
        self._may_be_empty, self._accept = empty, accept
        self._title, self._example, self._value = title, example, value

    def compose(self) -> ComposeResult:
        with Vertical(id="box"):
            yield Static(Content(clip(self._title, 200)), id="title")
            yield Input(self._value, placeholder=self._example)
            yield Static(id="wrong")

    def on_input_submitted(self, event: Input.Submitted) -> None:
        typed = event.value.strip()
        if not typed and not self._may_be_empty:
            self.dismiss(None)
            return
        try:
            self._accept(typed)
        except PantryError as error:
            wrong = self.query_one("#wrong", Static)
            wrong.update(Content(clip(f"Not done: {error.message}", 400)))
            wrong.display = True
        else:
            self.dismiss(typed)


def ask_line(
    screen: ListScreen, title: str, example: str, do: Callable[[str], Done], *, empty: bool = False
) -> None:
    """Ask for a line and do what it says; a line that cannot be done stays to be mended."""
    done: list[Done] = []

    def accept(typed: str) -> None:
        done.append(do(typed))

    def answered(_typed: str) -> None:
        screen.host.report(done[-1])
        screen.settle_list()

    screen.app.push_screen(TypeLine(title, example, empty=empty, accept=accept), given(answered))


def given(then: Callable[[str], None]) -> Callable[[str | None], None]:
    """Calls `then` unless the question was left without an answer."""

    def answered(value: str | None) -> None:
        if value is not None:
            then(value)

    return answered
