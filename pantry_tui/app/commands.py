"""The one table of what a person can do: bindings, palette entries and help come from it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from textual.binding import Binding, BindingType

LISTS = frozenset({"due", "shelves", "week", "batch"})
ROOMS = LISTS | {"putup"}
DIGITS = ",".join("0123456789")

_SHOWN = {
    "question_mark": "?",
    "slash": "/",
    "colon": ":",
    "escape": "Esc",
    "enter": "Enter",
    "ctrl+z": "Ctrl+Z",
    "ctrl+p": "Ctrl+P",
    "ctrl+q": "Ctrl+Q",
}


@dataclass(frozen=True, slots=True)
class Command:
    """One thing to do. `key` may name several keys, split by commas; the first one is shown."""

    id: str
    key: str
    action: str
    word: str
    tip: str
    footer: bool = False
    screens: frozenset[str] = ROOMS

    @property
    def keys(self) -> str:
        """All keys as printed on a keyboard."""
        if self.key == DIGITS:
            return "0-9"
        return " ".join(shown(key) for key in self.key.split(","))

    @property
    def first(self) -> str:
        return shown(self.key.split(",")[0])


def shown(key: str) -> str:
    """A key as a person reads it."""
    if key in _SHOWN:
        return _SHOWN[key]
    return key.upper() if key.startswith("f") and key[1:].isdigit() else key


COMMANDS = (
    Command("use", "u", "use", "use", "Use one, the oldest first", True, LISTS),
    Command("open", "o", "open", "open", "Open one: it is judged as open from today", True, LISTS),
    Command("thaw", "t", "thaw", "thaw", "Take one out of the freezer to thaw", False, LISTS),
    Command("move", "m", "move", "move", "Move one to another place", False, LISTS),
    Command("discard", "d", "discard", "discard", "Discard one, with a reason", True, LISTS),
    Command("undo", "z,ctrl+z", "undo", "undo", "Take back the last thing done", True, ROOMS),
    Command("putup", "p,f5", "app.go('putup')", "put up", "Put up a new batch", True, ROOMS),
    Command("find", "slash", "find", "find", "Narrow the list to some words", True, LISTS),
    Command("jump", DIGITS, "jump('{key}')", "lid code", "Go to a lid code", False, LISTS),
    Command("detail", "enter", "detail", "detail", "Show the whole batch", False, LISTS),
    Command("place", "a", "add_place", "add place", "Add a place", True, frozenset({"shelves"})),
    Command("due", "D,f2", "app.go('due')", "due", "What to eat first", False, ROOMS),
    Command("shelves", "S,f3", "app.go('shelves')", "shelves", "What stands where", False, ROOMS),
    Command("week", "W,f4", "app.go('week')", "week", "What to eat this week", False, ROOMS),
    Command("back", "escape", "back", "back", "Go back, or clear the words to find", False, ROOMS),
    Command("palette", "colon,ctrl+p", "app.command_palette", "commands", "All commands by name"),
    Command("help", "question_mark,f1", "app.keys", "help", "All keys of this screen", True, ROOMS),
    Command("quit", "q,ctrl+q", "app.quit", "quit", "Leave; everything is already kept"),
)


def of(screen: str) -> Iterator[Command]:
    """The commands that `screen` has, in table order."""
    return (command for command in COMMANDS if screen in command.screens)


def bindings(screen: str) -> list[BindingType]:
    """The bindings of `screen`. Ctrl+P and Ctrl+Q are the app's own."""
    made: list[BindingType] = []
    for command in of(screen):
        keys = [key for key in command.key.split(",") if key not in ("ctrl+p", "ctrl+q")]
        made += [_bind(command, key) for key in keys]
    return made


def _bind(command: Command, key: str) -> Binding:
    return Binding(
        key,
        command.action.replace("{key}", key),
        command.word,
        show=command.footer,
        tooltip=command.tip,
        id=command.id if command.key != DIGITS else f"{command.id}-{key}",
    )


def palette(screen: str) -> Iterator[Command]:
    """What the palette offers: everything but the palette, the digits and going back."""
    return (item for item in of(screen) if item.id not in ("palette", "jump", "back", "detail"))


def footer(screen: str) -> list[Command]:
    """At most seven."""
    wanted = [command for command in of(screen) if command.footer and command.id != screen]
    if screen == "putup":
        wanted = [
            command for command in of(screen) if command.id in ("due", "undo", "back", "help")
        ]
    if screen == "shelves":
        wanted = [command for command in wanted if command.id != "open"]
    return wanted[:7]
