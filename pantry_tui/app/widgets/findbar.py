"""The field under a list: words that narrow it."""

from __future__ import annotations

from pantry_tui.app.widgets.keyline import KeyLine
from pantry_tui.app.widgets.typing import Typing
from pantry_tui.services.stock.finding import HINT

#: While words are typed no letter is a key, and the foot names none.
_KEYS = (("Enter", "back to the list with these", ""), ("Esc", "shows all", "back"))


class FindBar(Typing):
    """Mounted when it is first asked for."""

    DEFAULT_CSS = """
    FindBar, FindBar:focus { height: 1; border: none; padding: 0 1; background: $panel; }
    """

    def __init__(self) -> None:
        # Focusing selects the text, and the next letter would overwrite the first.
        super().__init__(placeholder=HINT, id="bar", select_on_focus=False)

    def begin(self, value: str) -> None:
        """Ask for words, of which `value` is the beginning; the saved views are named."""
        views = getattr(getattr(self.app, "settings", None), "views", {})
        self.placeholder = ", ".join([HINT, *(f"@{name}" for name in views)])
        self.display = True
        self.value = value
        self.cursor_position = len(value)
        self.screen.set_focus(self)

    def on_focus(self) -> None:
        self.screen.query_one(KeyLine).instead(_KEYS)

    def on_blur(self) -> None:
        self.screen.query_one(KeyLine).usual()

    def end(self) -> None:
        """Nothing is sought any more."""
        self.value = ""
        self.display = False
