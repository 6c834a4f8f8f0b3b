"""The top line: the rooms of the app, which one this is, and the day."""

from __future__ import annotations

from rich.cells import cell_len
from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.commands import COMMANDS, Command, as_own

ROOM_IDS = ("due", "shelves", "week", "count", "outlook", "log")

#: Where the line is narrower than this, only the present room keeps its word.
WORDS = 70


class RoomLine(Static):
    """Clickable names of the rooms with their keys; the present one stands reversed."""

    DEFAULT_CSS = """
    RoomLine { dock: top; height: 1; background: $panel; padding: 0 1; text-wrap: nowrap;
               text-overflow: ellipsis; link-style: none; }
    """

    def __init__(self, here: str) -> None:
        super().__init__(id="rooms")
        self._here = here
        self._shown: tuple[tuple[str, ...], int] | None = None

    def show(self, *notes: str) -> None:
        """Rooms, then a note of ours (the day, a count): the first that has room, else the last."""
        shown = notes, self.app.size.width
        if shown == self._shown:
            return
        self._shown = shown
        rooms = Content("").join(self._part(one) for one in COMMANDS if one.id in ROOM_IDS)
        room = self.app.size.width - rooms.cell_length - 3
        note = next((one for one in notes if cell_len(one) <= room), notes[-1])
        self.update(rooms + Content(f" {note}"))

    def _part(self, command: Command) -> Content:
        here = command.id == self._here
        own = getattr(self.app, "shown_keys", {})
        key = as_own(command, own).typed(self._here)
        text = f"{key} {command.word}" if here or self.app.size.width >= WORDS else key
        style = "reverse bold" if here else "bold"
        return Content.from_markup(f"[@click=app.go('{command.id}')][{style}] {text} [/][/]")
