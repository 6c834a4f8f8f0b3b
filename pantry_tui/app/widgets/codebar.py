"""The line on which a lid code grows, character by character."""

from __future__ import annotations

from collections.abc import Callable

from textual.content import Content
from textual.events import Key
from textual.widgets import Static


class CodeBar(Static, can_focus=True):
    """Has the keys while a lid code is typed. `for_code` is shown each of them and says whether it
    was for the code; what was not goes on to the screen, as if no code were typed."""

    DEFAULT_CSS = """
    CodeBar, CodeBar:focus { height: auto; max-height: 2; padding: 0 1; background: $panel; }
    """

    def __init__(self, for_code: Callable[[Key], bool]) -> None:
        super().__init__(id="code")
        self.typed = ""
        self.display = False
        self._for_code = for_code

    def on_key(self, event: Key) -> None:
        if self._for_code(event):
            event.stop()

    def say(self, typed: str, word: str, *, whole: bool) -> None:
        """What is typed so far, and what it is or how it may go on."""
        self.typed = typed
        self.display = True
        shown = typed if whole else f"{typed}_"
        self.update(Content.assemble("Lid code ", (shown, "reverse bold"), f" {word}"))

    def end(self) -> None:
        """No code is typed any more."""
        self.typed = ""
        self.display = False
