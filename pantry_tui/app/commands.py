"""The one table of what a person can do.

Bindings, palette entries, help, the footer and `pantry-tui keys` come from it; no key exists
outside it. No textual here, so that the command line can print it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

LISTS = frozenset({"due", "shelves", "week", "batch"})
LOG = frozenset({"log", "outlook"})
OUTLOOK = frozenset({"outlook"})
STOCK = frozenset({"due", "shelves", "batch"})
WEEK = frozenset({"week"})
DUE = frozenset({"due"})
SHELVES = frozenset({"shelves"})
COUNT = frozenset({"count"})
MARKED = LISTS | COUNT
ROOMS = LISTS | COUNT | LOG | {"putup"}
DIGITS = ",".join("0123456789")

_SHOWN = {
    "question_mark": "?",
    "comma": ",",
    "semicolon": ";",
    "full_stop": ".",
    "equals_sign": "=",
    "slash": "/",
    "colon": ":",
    "escape": "Esc",
    "enter": "Enter",
    "ctrl+z": "Ctrl+Z",
    "ctrl+y": "Ctrl+Y",
    "ctrl+p": "Ctrl+P",
    "ctrl+q": "Ctrl+Q",
    "space": "Space",
    "backspace": "Backspace",
    "plus": "+",
    "minus": "-",
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
        return self.keys if self.key == DIGITS else shown(self.key.split(",")[0])

    def typed(self, screen: str) -> str:
        """The key to show on `screen`: where letters go into a line, the other one."""
        return self.keys.split()[-1] if screen == "putup" else self.first


def shown(key: str) -> str:
    """A key as a person reads it."""
    if key in _SHOWN:
        return _SHOWN[key]
    return key.upper() if key.startswith("f") and key[1:].isdigit() else key


COMMANDS = (
    Command("use", "u", "use", "use", "Use one, the oldest first", True, LISTS),
    Command("open", "o", "open", "open", "Open one: it is judged as open from today", True, LISTS),
    Command("thaw", "t", "thaw", "thaw", "Take one out of the freezer to thaw", False, LISTS),
    Command("move", "m", "move", "move", "Move one to another place", False, MARKED),
    Command("discard", "d", "discard", "discard", "Discard one, with a reason", True, LISTS),
    Command("sign", "s", "sign", "sign", "It looks wrong: verdict and disposal", True, MARKED),
    Command("give", "g", "give", "give", "Give one away", False, LISTS),
    Command("ready", "f", "ready", "ready", "It is ready: sealed from today", False, LISTS),
    Command("missing", "n", "missing", "missing", "Not there, nobody knows why", False, LISTS),
    Command(
        "reserve", "k", "reserve", "reserve", "Set one apart for a gift, or free it", False, STOCK
    ),
    Command("rate", "h", "rate", "rate", "How was it: again, not again, change", False, STOCK),
    Command("process", "i", "process", "process", "Record how it was put up", False, STOCK),
    Command("timer", "e", "timer", "timer", "Time its process, or end the time", False, STOCK),
    Command(
        "year",
        "b",
        "year",
        "year and waste",
        "What was thrown away, the year of each food",
        True,
        OUTLOOK,
    ),
    Command("mark", "space", "mark", "mark", "Mark the line, to act on several", False, LISTS),
    Command("sort", "v", "sort", "sort", "Sort the list another way", False, DUE),
    Command(
        "whatif", "i", "what_if", "what if", "More at table, guests, away, less", True, OUTLOOK
    ),
    Command("months", "m", "months", "months", "The twelve months ahead", True, OUTLOOK),
    Command("accept", "a,A", "accept", "accept", "Accept this week (again: replan)", True, WEEK),
    Command("eaten", "e", "eaten", "eaten", "All of this line's day is eaten", True, WEEK),
    Command("pin", "k", "pin", "pin", "Pin it to this day, or to any day again", False, WEEK),
    Command("later", "plus", "shift(1)", "later", "Eat it a day later", True, WEEK),
    Command("earlier", "minus", "shift(-1)", "earlier", "Eat it a day earlier", False, WEEK),
    Command("swap", "r", "swap", "swap", "Another food of its group instead", True, WEEK),
    Command("skip", "x", "skip", "skip", "None of it this week (again: put it back)", True, WEEK),
    Command("eatout", "h", "out", "eat out", "Nobody cooks that day (again: undo)", True, WEEK),
    Command("dish", "i", "dish", "dish", "A dish of yours on that day", False, WEEK),
    Command("table", "b", "table", "at table", "Days away and guests", False, WEEK),
    Command("undo", "z,ctrl+z", "undo", "undo", "Take back the last thing done", True, ROOMS),
    Command("redo", "ctrl+y", "redo", "redo", "Do again what was taken back", False, ROOMS),
    Command("putup", "p,f5", "app.go('putup')", "put up", "Put up a new batch", True, ROOMS),
    Command("find", "slash", "find", "find", "Narrow the list to some words", True, LISTS | LOG),
    Command("jump", DIGITS, "jump('{key}')", "lid code", "Go to a lid code", False, LISTS | LOG),
    Command("agree", "enter,space", "detail", "agrees", "The count agrees", True, COUNT),
    Command("digit", DIGITS, "digit('{key}')", "count", "The count, where it differs", True, COUNT),
    Command("uncount", "backspace", "uncount", "uncount", "Take this count back", False, COUNT),
    Command("unlisted", "plus", "unlisted", "unlisted", "Add what nobody recorded", True, COUNT),
    Command("book", "f", "finish", "book", "Show the differences and book them", True, COUNT),
    Command("detail", "enter", "detail", "detail", "Show the whole batch", False, LISTS | LOG),
    Command("place", "a", "add_place", "add place", "Add a place", True, SHELVES),
    Command(
        "reading", "r", "reading", "reading", "Record the temperature of the place", False, SHELVES
    ),
    Command(
        "outage",
        "x",
        "outage",
        "power cut",
        "The power was off here, or a door ajar",
        False,
        SHELVES,
    ),
    Command("due", "D,f2", "app.go('due')", "due", "What to eat first", False, ROOMS),
    Command("shelves", "S,f3", "app.go('shelves')", "shelves", "What stands where", False, ROOMS),
    Command("week", "W,f4", "app.go('week')", "week", "What to eat this week", False, ROOMS),
    Command(
        "count", "c,f6", "app.go('count')", "count", "Count a place, shelf by shelf", False, ROOMS
    ),
    Command(
        "outlook",
        "y,Y,f8",
        "app.go('outlook')",
        "outlook",
        "Will it last, and how much to put up",
        False,
        ROOMS,
    ),
    Command(
        "household",
        "comma,f10",
        "app.household",
        "household",
        "Altitude, people, units, whose advice",
        False,
        ROOMS,
    ),
    Command(
        "log", "l,L,f7", "app.go('log')", "log", "What was done, the last on top", False, ROOMS
    ),
    Command(
        "reckon", "equals_sign,f9", "app.reckon", "reckon", "Salt, vinegar, syrup, drying, jars ..."
    ),
    Command(
        "methods",
        "semicolon,f11",
        "app.methods",
        "methods",
        "The ways to keep a glut: 9 lb beets",
    ),
    Command(
        "jobs",
        "full_stop",
        "app.jobs",
        "jobs",
        "Small jobs: seals, skimming, sorting ...",
        False,
        LISTS | LOG,
    ),
    Command("backups", "f12", "app.backups", "backups", "Backups, lists out and in", False, ROOMS),
    Command("back", "escape", "back", "back", "Go back, or clear the words to find", False, ROOMS),
    Command("palette", "colon,ctrl+p", "app.command_palette", "commands", "All commands by name"),
    Command("help", "question_mark", "app.keys", "help", "All keys of this screen", True, ROOMS),
    Command("guides", "f1", "app.guides", "guides", "Short guides, searchable", False, ROOMS),
    Command("quit", "q,ctrl+q", "app.quit", "quit", "Leave; everything is already kept", True),
)


def of(screen: str) -> Iterator[Command]:
    """The commands that `screen` has, in table order."""
    return (command for command in COMMANDS if screen in command.screens)


def palette(screen: str) -> Iterator[Command]:
    """What the palette offers: everything but the palette, the digits and going back."""
    return (
        item for item in of(screen) if item.id not in ("palette", "back") and item.key != DIGITS
    )


#: What the key line of each screen leaves to the full list of keys.
_LEFT_OUT = {
    "week": ("open", "find", "discard", "sign", "putup", "eatout"),
    "shelves": ("open", "sign"),
    "count": ("putup",),
}
_TYPING = ("due", "undo", "back", "guides", "quit")

#: Cells that the key line has at 80 columns.
ROOM = 78


def footer(screen: str) -> list[Command]:
    """As many as fit in one line of 80 columns; help before quitting."""
    if screen == "putup":
        return [command for command in of(screen) if command.id in _TYPING]
    left = _LEFT_OUT.get(screen, ())
    wanted = [one for one in of(screen) if one.footer and one.id not in left]
    while sum(len(f"{one.typed(screen)} {one.word}  ") for one in wanted) - 2 > ROOM:
        wanted.pop()
    return wanted


#: What each screen is called where all keys are listed.
SCREENS = {
    "due": "Due list",
    "shelves": "Shelves",
    "week": "This week",
    "batch": "One batch",
    "count": "Count",
    "putup": "Put up",
    "log": "Log",
    "outlook": "Outlook",
}


def page() -> list[dict[str, str]]:
    """The documentation page: every command once, with the screens that have it."""
    return [
        {
            "id": command.id,
            "keys": command.keys,
            "does": command.tip,
            "screens": ", ".join(name for id_, name in SCREENS.items() if id_ in command.screens),
        }
        for command in COMMANDS
    ]
