"""The top line: the rooms of the app, which one this is, and the day."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.commands import COMMANDS

ROOM_IDS = ("due", "shelves", "week", "putup")


class RoomLine(Static):
    """Clickable names of the rooms with their keys; the present one stands reversed."""

    DEFAULT_CSS = """
    RoomLine { dock: top; height: 1; background: $panel; padding: 0 1; text-wrap: nowrap;
               text-overflow: ellipsis; }
    """

    def __init__(self, here: str) -> None:
        super().__init__(id="rooms")
        self._here = here

    def show(self, note: str) -> None:
        """Rooms, then a note of ours (the day, a count)."""
        parts = [self._part(room) for room in ROOM_IDS]
        self.update(Content(" ").join(parts) + Content(f"   {note}"))

    def _part(self, room: str) -> Content:
        command = next(one for one in COMMANDS if one.id == room)
        style = "reverse bold" if room == self._here else "bold"
        return Content.from_markup(
            f"[@click=app.go('{room}')][{style}] {command.first} {command.word} [/][/]"
        )
