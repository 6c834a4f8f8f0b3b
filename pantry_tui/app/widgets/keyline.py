"""The keys of a screen in a line or two, where the ready-made footer hides the rest."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from textual.content import Content
from textual.style import Style
from textual.widgets import Static

from pantry_tui.app.commands import DIGITS, Command, Own, of
from pantry_tui.app.footers import LINES, footer

#: Below so many lines of the screen the keys have one, below so many one less than they may.
LOW, MIDDLE = 16, 24
#: What is for the machine itself, and refused in a browser.
_AT_THE_MACHINE = ("backups",)
#: A key and its word; behind them the command whose they are, "" for none.
Instead = tuple[str, str, str]
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
        self._instead: Sequence[Instead] = ()
        self._without: Collection[str] = ()

    def instead(self, keys: Sequence[Instead]) -> None:
        """Show these keys and what they do, and no others, until `usual`."""
        self._instead, self._shown = keys, (0, 0)
        self._fill()

    def without(self, ids: Collection[str]) -> None:
        """Name no key of these commands."""
        if ids != self._without:
            self._without, self._shown = ids, (0, 0)
            self._fill()

    def usual(self) -> None:
        """The keys of the screen again."""
        if self._instead:
            self.instead(())

    def on_mount(self) -> None:
        self._fill()

    def on_resize(self) -> None:
        self._fill()

    def _fill(self) -> None:
        """What has room in the width of the screen."""
        size = self.app.size
        shown = max(size.width - 2, 10), _lines(size.height)
        if shown == self._shown:
            return
        self._shown = shown
        if self._instead:
            own = getattr(self.app, "shown_keys", {})
            self.update(
                Content("  ").join(_said(one, self._screen_id, own) for one in self._instead)
            )
            return
        own = getattr(self.app, "shown_keys", {})
        without = (*self._without, *(_AT_THE_MACHINE if getattr(self.app, "served", False) else ()))
        lines = footer(self._screen_id, *shown, own, without)
        rows = [Content("  ").join(_part(one, self._screen_id) for one in line) for line in lines]
        self.update(Content("\n").join(rows))


def _said(one: Instead, screen_id: str, own: Own) -> Content:
    key, word, id_ = one
    found = next((command for command in of(screen_id, own) if command.id == id_), None)
    if found is None:
        return Content.assemble((key, "bold"), f" {word}".replace(" ", NO_BREAK))
    return _part(replace(found, word=word), screen_id)


def _lines(height: int) -> int:
    return 1 if height < LOW else LINES - (height < MIDDLE)


def _part(command: Command, screen_id: str) -> Content:
    word = f" {command.word}".replace(" ", NO_BREAK)
    if command.key == DIGITS:
        return Content.assemble((command.keys, "bold"), word)
    action = command.action if "." in command.action else f"screen.{command.action}"
    click = Style.from_meta({"@click": action})
    return Content.assemble((command.typed(screen_id), Style(bold=True) + click), (word, click))
