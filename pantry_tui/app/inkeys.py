"""What services say in words of the command line, in keys of the app. No textual here."""

from __future__ import annotations

import re

from pantry_tui.app.commands import BY_NAME, COMMANDS, Own, as_own

#: A command between backticks, or one that begins with the program's name (that it "was updated" is
#: no command).
_COMMAND = re.compile(
    r"`(?:pantry-tui )?([a-z-]+)([^`]*)`"
    r"|\bpantry-tui (?!was\b)([a-z-]+)((?: --?[a-z-]+| [0-9][A-Z]+)*)"
)
_FLAG = re.compile(r"(?<!\S)--([a-z]+)")
#: Verbs that have a key under another name.
_AS = {"undo": "undo", "place": "place", "log": "log", "count": "count"}


def in_keys(message: str, own: Own | None = None) -> str:
    """("... if it shows nothing, `sign 7C/3 looks sound`.") -> "... s (sign): looks sound.", with
    a person's `own` keys."""
    if "`" in message or "pantry-tui" in message:
        message = _COMMAND.sub(lambda found: _in_key(found, own or {}), message)
    return _FLAG.sub(r"\1", message) if "--" in message else message


def _in_key(found: re.Match[str], own: Own) -> str:
    verb, rest = (found[1], found[2]) if found[1] else (found[3], found[4])
    id_ = _AS.get(verb, verb)
    command = next((one for one in COMMANDS if one.id == id_), None)
    words = re.sub(r"\s*(?:--[a-z-]+|\b[0-9][A-Z]+(?:/\d+)?\b)", "", rest).strip()
    if command is None and verb in {one.id for one in BY_NAME}:
        return f"{verb} (with :)"
    if command is None:
        return " ".join(filter(None, (verb, words)))
    key = f"{as_own(command, own).first} ({command.word})"
    return f"{key}: {words}" if words else key
