"""The keys of a screen in a line or two, where the ready-made footer hides the rest."""

from __future__ import annotations

from textual.content import Content
from textual.style import Style
from textual.widgets import Static

from pantry_tui.app.commands import DIGITS, LINES, Command, footer

#: Below this many lines of the screen the keys have one.
LOW = 16
NO_BREAK = "\u00a0"


class KeyLine(Static):
    """Key and word, also to be clicked."""

    DEFAULT_CSS = """
    KeyLine { dock: bottom; height: auto; max-height: 3; background: $panel; padding: 0 1;
              link-style: none; }
    """

    def __init__(self, screen_id: str) -> None:
        super().__init__()
        self._screen_id = screen_id
        self._shown = (0, 0)

    def on_mount(self) -> None:
        self._fill()

    def on_resize(self) -> None:
        self._fill()

    def _fill(self) -> None:
        """What has room in the width of the screen."""
        size = self.app.size
        shown = max(size.width - 2, 10), 1 if size.height < LOW else LINES
        if shown == self._shown:
            return
        self._shown = shown
        lines = footer(self._screen_id, *shown)
        rows = [Content("  ").join(_part(one, self._screen_id) for one in line) for line in lines]
        self.update(Content("\n").join(rows))


def _part(command: Command, screen_id: str) -> Content:
    word = f" {command.word}".replace(" ", NO_BREAK)
    if command.key == DIGITS:
        return Content.assemble((command.keys, "bold"), word)
    action = command.action if "." in command.action else f"screen.{command.action}"
    click = Style.from_meta({"@click": action})
    return Content.assemble((command.typed(screen_id), Style(bold=True) + click), (word, click))
