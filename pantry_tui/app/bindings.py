"""From the command table to the bindings of a screen, and a person's own keys."""

from __future__ import annotations

from collections.abc import Mapping

from textual.binding import Binding, BindingType

from pantry_tui.app.commands import COMMANDS, DIGITS, Command, of


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


def keymap(own: Mapping[str, str]) -> tuple[dict[str, str], list[str]]:
    """A person's keys by command id, and a sentence for each that cannot be used.

    Textual takes an unknown id in silence, so ids are checked here; a key that a screen already
    has for something else would hide it, so that is refused as well.
    """
    known = {command.id: command for command in COMMANDS if command.key != DIGITS}
    good: dict[str, str] = {}
    wrong: list[str] = []
    for id_, key in own.items():
        command = known.get(id_)
        if command is None:
            wrong.append(f"keys: {id_!r} is no command; `pantry-tui keys` lists them.")
            continue
        taken = next(
            (
                other.id
                for other in COMMANDS
                if other.id != id_
                and other.screens & command.screens
                and set(key.split(",")) & set(other.key.split(","))
            ),
            "",
        )
        if taken:
            wrong.append(f"keys: {key!r} is already {taken}; give {id_} another.")
        else:
            good[id_] = key
    return good, wrong
