"""What services say in words of the command line, in keys of the app. No textual here."""

from __future__ import annotations

import re

from pantry_tui.app.commands import BY_NAME, COMMANDS, SCREENS, Command, Own, as_own

#: A command between backticks, or one that begins with the program's name (that it "was updated" is
#: no command).
_COMMAND = re.compile(
    r"`(pantry-tui )?([a-z-]+)([^`]*)`"
    r"|\bpantry-tui (?!was\b)([a-z-]+)((?: (?:[a-z-]+\b(?!=)|--?[a-z-]+|[0-9][A-Z]+))*)"
)
_KEPT = "\0\0"
_FLAG = re.compile(r"(?<!\S)--([a-z]+)")
#: Brackets within brackets are read with trouble: "(u (use): all)" is "(u, use: all)".
_TWICE = re.compile(r"\((\S+) \(([a-z :]+)\)")
#: What the app calls a verb that has another name here: a command's id, or a name of the palette
#: behind a colon.
VERBS = {
    "place add": "place", "place change": ":place", "place merge": ":place",
    "place remove": ":place", "place list": "shelves", "show": "detail", "losses": "year",
    "calc": "reckon", "shelf-life": "methods", "add-food": ":own_words", "add-rule": ":own_words",
    "added": ":own_words", "household dish add": ":dishes",
    "household dish drop": ":dishes", "household dish list": ":dishes", "household away": ":table",
    "household guests": ":table", "household usual": ":table", "household days": ":table",
    "household appetite": ":ceilings", "household substitute": ":stand_ins", "sheet": ":paper",
    "labels": ":paper", "calendar": ":paper", "import": ":list", "export": "backups",
    "backup": "backups", "restore": "backups", "record": "process", "tend": "jobs",
    "repack": "putup", "help": "guides", "keys": "help", "cook": ":dishes", "jobs": "jobs",
    "week --accept": "accept", "week --unknown": "pin",
}  # fmt: skip
#: What the form behind w (put right) calls what `correct` has a flag for.
FIELDS = {
    "made": "day made", "size": "size of one", "note": "note", "process": "how it was put up",
    "printed": "printed date", "food": "food", "method": "method", "count": "count",
}  # fmt: skip
#: What no key can say: another hour than now, an act of the log by its id.
_TYPED_ONLY = re.compile(r"--at\b|^undo \S")
_KEYS = {one.id: one for one in COMMANDS}
_NAMES = {one.id: one for one in BY_NAME}
#: Rooms that have keys of their own, and the command that goes there.
_ROOMS = {"shelves": "shelves", "outlook": "outlook", "week": "week", "underway": "underway"}


def in_keys(message: str, own: Own | None = None, screen: str = "") -> str:
    """("... if it shows nothing, `sign 7C/3 looks sound`.") -> "... s (sign): looks sound.", with
    a person's `own` keys, as they are pressed on that screen."""
    if "`" in message or "pantry-tui" in message:
        message = _COMMAND.sub(lambda found: _in_key(found, own or {}, screen), message)
        message = _TWICE.sub(r"(\1, \2", message)
    return (_FLAG.sub(r"\1", message) if "--" in message else message).replace(_KEPT, "--")


def _in_key(found: re.Match[str], own: Own, screen: str) -> str:
    verb, rest = (found[2], found[3]) if found[2] else (found[4], found[5])
    if _TYPED_ONLY.search(f"{verb}{rest}"):
        return f"{_as_typed(found)} (at a command line)"
    said = f"{verb}{rest}".split()
    for size in (3, 2, 1):
        id_ = VERBS.get(" ".join(said[:size]), " ".join(said[:size]))
        name = _NAMES.get(id_.removeprefix(":")) if id_ not in _KEYS else None
        if id_ not in _KEYS and name is None:
            continue
        left = " ".join(said[size:])
        words = re.sub(r"\s*(?:--[a-z-]+|\b[0-9][A-Z]+(?:/\d+)?\b)", "", left).strip()
        if id_ == "putup" and (line := _put_up_line(verb, left)):
            words = line
        key = f"{name.word} (with :)" if name else _key_of(_KEYS[id_], own, screen)
        if id_ == "correct":
            key = ", ".join([key, *(FIELDS[one] for one in _FLAG.findall(left) if one in FIELDS)])
        return f"{key}: {words}" if words else key
    # It has no key: what the command line calls it stays.
    return _as_typed(found)


def _put_up_line(verb: str, left: str) -> str:
    """What is typed in Put up: a line as it is, and of what is repacked the code behind from."""
    if verb != "repack":
        return left
    code, _, line = left.partition(" ")
    line = line.strip('" ')
    return f'"{line}, from {code}"' if line else f"..., from {code}" if code else ""


def _as_typed(found: re.Match[str]) -> str:
    """A command as it is typed, its flags kept from what is said of flags alone."""
    return found[0].strip("`").replace("--", _KEPT)


def _key_of(command: Command, own: Own, screen: str) -> str:
    """ "s (sign)", and the room where the key is another's elsewhere: "a (add place) in Shelves
    (S)"."""
    said = f"{as_own(command, own).typed(screen)} ({command.word})"
    homes = [room for room in _ROOMS if room in command.screens]
    if screen in command.screens or len(command.screens) > 2 or len(homes) != 1:
        return said
    room = as_own(_KEYS[_ROOMS[homes[0]]], own)
    return f"{said} in {SCREENS[homes[0]]} ({room.typed(screen)})"
