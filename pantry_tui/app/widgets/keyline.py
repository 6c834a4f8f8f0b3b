"""The keys of a screen in one line that wraps, where the ready-made footer hides the rest."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static

from pantry_tui.app.commands import Command, footer


class KeyLine(Static):
    """Key and word, also to be clicked. The words are ours, so markup is safe here."""

    DEFAULT_CSS = """
    KeyLine { dock: bottom; height: auto; max-height: 3; background: $panel; padding: 0 1;
              link-style: none; }
    """

    def __init__(self, screen_id: str) -> None:
        parts = [_part(command, screen_id) for command in footer(screen_id)]
        super().__init__(Content.from_markup("  ".join(parts)))


def _part(command: Command, screen_id: str) -> str:
    action = command.action if "." in command.action else f"screen.{command.action}"
    word = command.word.replace(" ", "\u00a0")
    return f"[@click={action}][b]{command.typed(screen_id)}[/b]\u00a0{word}[/]"
