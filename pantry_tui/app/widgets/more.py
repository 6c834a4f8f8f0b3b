"""The sign under a text that is longer than its room: more stands below, and how to read it."""

from __future__ import annotations

from textual.containers import VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Static


class More(Static):
    """Stands under `text` while some of it is out of sight below; `how`: what shows it."""

    DEFAULT_CSS = """
    More { height: 1; padding: 0 1; text-style: bold; }
    """

    def __init__(self, text: VerticalScroll, how: str) -> None:
        super().__init__(Content(f"↓ more: {how}"), classes="more")
        self._text = text
        self.display = False

    def on_mount(self) -> None:
        self.watch(self._text, "scroll_y", self._look, init=False)
        self.screen.screen_layout_refresh_signal.subscribe(self, self._laid_out)

    def _laid_out(self, _screen: Screen[object]) -> None:
        self._look()

    def _look(self) -> None:
        self.display = self._text.scroll_target_y < self._text.max_scroll_y
