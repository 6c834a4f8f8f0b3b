"""From the command table to the bindings of a screen, and a person's own keys."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from textual.binding import Binding, BindingType

from pantry_tui.app.commands import COMMANDS, DIGITS, SCREENS, Command, of, own_keys
from pantry_tui.settings import Settings

#: Keys that a list keeps for its cursor.
CURSOR_KEYS = frozenset(
    {"up", "down", "pageup", "pagedown", "home", "end", "ctrl+home", "ctrl+end", "tab", "shift+tab"}
)

#: What commands were called before, in settings that were written then.
OLD_IDS = {
    "done": "ready",
    "lose": "missing",
    "notthis": "skip",
    "books": "year",
    "round": "count",
    "finish": "book",
}


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
        show=False,
        tooltip=command.tip,
        id=command.id if command.key != DIGITS else f"{command.id}-{key}",
    )


def keymap(own: Mapping[str, str]) -> tuple[dict[str, str], list[str]]:
    """A person's keys by command id, and a sentence for each that cannot be used.

    Textual takes an unknown id in silence, so ids are checked here. On every screen that has the
    command its key must be free: no other command there may have it, by the table or by another
    key of one's own. Of two that want the same, the first one keeps it.
    """
    own = {OLD_IDS.get(id_, id_): key for id_, key in own.items()}
    known = {command.id: command for command in COMMANDS if command.key != DIGITS}
    good = {id_: key for id_, key in own.items() if id_ in known}
    wrong = [
        f"keys: {id_!r} is no command; `pantry-tui keys` lists them."
        for id_ in own
        if id_ not in known
    ]
    while clash := next(_clashes(good), None):
        id_, taken = clash
        wrong.append(f"keys: {good.pop(id_)!r} is already {taken}; give {id_} another.")
    return good, wrong


def keys_of_settings(mine: Settings) -> tuple[dict[str, str], dict[str, str], list[str]]:
    """A person's keys by command id, those as they are shown, and what cannot be used."""
    keys, wrong = keymap(mine.keys)
    return keys, own_keys(keys, dotted=mine.letters_search), wrong


def _clashes(own: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Each command with a key of one's own that something else on a screen of it has, and what."""
    wanted = list(own)
    for id_ in reversed(wanted):
        mine = set(own[id_].split(","))
        if mine & CURSOR_KEYS:
            yield id_, "the cursor's"
        for screen in SCREENS:
            here = list(of(screen))
            if all(command.id != id_ for command in here):
                continue
            for other in here:
                # A later key of one's own gives way before this one does.
                later = other.id in wanted and wanted.index(other.id) > wanted.index(id_)
                if other.id != id_ and not later and mine & _keys(other, own):
                    yield id_, other.id


def _keys(command: Command, own: Mapping[str, str]) -> set[str]:
    return set(own.get(command.id, command.key).split(","))
