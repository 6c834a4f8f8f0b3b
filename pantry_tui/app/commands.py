"""The one table of what a person can do.

Bindings, palette entries, help, the footer and `pantry-tui keys` come from it; no key exists
outside it. No textual here, so that the command line can print it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

LISTS = frozenset({"due", "shelves", "week", "batch", "picture", "grid"})
LOG = frozenset({"log", "outlook", "months", "year", "underway"})
OUTLOOK = frozenset({"outlook"})
STOCK = frozenset({"due", "shelves", "batch", "picture"})
LISTED, DRAWN = frozenset({"shelves", "week", "outlook"}), frozenset({"picture", "grid", "year"})
PROGRESS = frozenset({"underway"})
WEEK = frozenset({"week", "grid"})
DUE = frozenset({"due"})
SHELVES = frozenset({"shelves"})
COUNT = frozenset({"count"})
PUTUP = frozenset({"putup"})
MARKED = LISTS | COUNT
IMPORT = frozenset({"import"})
ROOMS = LISTS | COUNT | LOG | IMPORT | {"putup"}
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
    "tab": "Tab",
    "pagedown": "Page Down",
    "pageup": "Page Up",
    "up": "Up",
    "down": "Down",
    "enter": "Enter",
    "space": "Space",
    "backspace": "Backspace",
    "plus": "+",
    "minus": "-",
}


class ByName(NamedTuple):
    """What has no key of its own: the palette finds it by these words."""

    id: str
    word: str
    tip: str


#: Each is done by the function of that name in `screens/byname.py`.
BY_NAME = (
    ByName("paper", "print", "The door sheet, the week, a count sheet, labels, a calendar"),
    ByName("list", "import a list", "Your own list of what you have: .csv, .tsv or .xlsx"),
    ByName("recall", "recall", "Where all of a batch is or went, and to whom"),
    ByName("table", "who eats when", "Days away and guests"),
    ByName("ceilings", "how much you eat", "Servings a week at most, main meals"),
    ByName("dishes", "dishes", "Your dishes, and what they take"),
    ByName("stand_ins", "stand-ins", "What stands in where a crop fails"),
    ByName("own_words", "foods and rules of your own", "What the tables do not have"),
    ByName("place", "a place", "Rename, change, merge or remove one"),
)


@dataclass(frozen=True, slots=True)
class Command:
    """One thing to do. `key` may name several keys, split by commas; the first one is shown."""

    id: str
    key: str
    action: str
    word: str
    tip: str
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
    if key.startswith("f") and key[1:].isdigit():
        return key.upper()
    return "+".join(part.capitalize() for part in key.split("+")) if "ctrl+" in key else key


COMMANDS = (
    Command("use", "u", "use", "use", "Use one, the oldest first", LISTS),
    Command("open", "o", "open", "open", "Open one: it is judged as open from today", LISTS),
    Command("thaw", "t", "thaw", "thaw", "Take one out of the freezer to thaw", LISTS),
    Command("move", "m", "move", "move", "Move one to another place", MARKED),
    Command("discard", "d", "discard", "discard", "Discard one, with a reason", LISTS),
    Command("sign", "s", "sign", "sign", "It looks wrong: verdict and disposal", MARKED),
    Command("give", "g", "give", "give", "Give one away", LISTS),
    Command("ready", "f", "ready", "ready", "It is ready: sealed from today", LISTS),
    Command("missing", "n", "missing", "missing", "Not there, nobody knows why", LISTS),
    Command("reserve", "k", "reserve", "reserve", "Set one apart for a gift, or free it", STOCK),
    Command("rate", "h", "rate", "rate", "How was it: again, not again, change", STOCK),
    Command("process", "i", "process", "process", "Record how it was put up", STOCK),
    Command(
        "correct", "w", "correct", "put right", "Put right what is recorded of it", STOCK | {"log"}
    ),
    Command("timer", "e", "timer", "timer", "Time its process, or end the time", STOCK),
    Command(
        "year",
        "b",
        "year",
        "year and waste",
        "What was thrown away, the year of each food",
        OUTLOOK | {"year"},
    ),
    Command("mark", "space", "mark", "mark", "Mark the line, to act on several", LISTS),
    Command("sort", "v", "sort", "sort", "Sort the list another way", DUE),
    Command("whatif", "i", "what_if", "what if", "More at table, guests, away, less", OUTLOOK),
    Command("picture", "v", "picture", "picture", "Drawn, to be walked with the arrows", LISTED),
    Command("aslist", "v", "picture", "as a list", "The same as a list again", DRAWN),
    Command("tended", "f", "tended", "job done", "Its next small job is done", PROGRESS),
    Command("months", "m", "months", "months", "The twelve months ahead", OUTLOOK),
    Command("accept", "a,A", "accept", "accept", "Accept this week (again: replan)", WEEK),
    Command("eaten", "e", "eaten", "eaten", "All of this line's day is eaten", WEEK),
    Command("pin", "k", "pin", "pin", "Pin it to its day, or free it; accepted: to another", WEEK),
    Command("later", "plus", "shift(1)", "later", "Eat it a day later", WEEK),
    Command("earlier", "minus", "shift(-1)", "earlier", "Eat it a day earlier", WEEK),
    Command("swap", "r", "swap", "swap", "Another food of its role at table instead", WEEK),
    Command("skip", "x", "skip", "skip", "None of it this week (again: put it back)", WEEK),
    Command("eatout", "h", "out", "eat out", "Nobody cooks that day (again: undo)", WEEK),
    Command("dish", "i", "dish", "dish", "A dish of yours on that day", WEEK),
    Command("table", "b", "table", "at table", "Days away and guests", WEEK),
    Command("undo", "z,ctrl+z", "undo", "undo", "Take back the last thing done", ROOMS),
    Command("redo", "ctrl+y", "redo", "redo", "Do again what was taken back", ROOMS),
    Command(
        "putup",
        "p,f5",
        "app.go('putup')",
        "put up",
        "Put up a batch; freeze part of one: from half of 2A",
        ROOMS,
    ),
    Command("find", "slash", "find", "find", "Narrow the list to some words", LISTS | LOG),
    Command("jump", DIGITS, "jump('{key}')", "lid code", "Go to a lid code", LISTS | LOG),
    Command("agree", "enter,space", "detail", "agrees", "The count agrees", COUNT),
    Command("digit", DIGITS, "digit('{key}')", "count", "The count, where it differs", COUNT),
    Command("uncount", "backspace", "uncount", "take back", "Take this count back", COUNT),
    Command("unlisted", "plus", "unlisted", "unlisted", "Add what nobody recorded", COUNT),
    Command("book", "f", "finish", "book", "Show the differences and book them", COUNT),
    Command("forget", "x", "forget", "forget", "Forget what was counted here", COUNT),
    Command("detail", "enter", "detail", "detail", "Show the whole batch", LISTS | LOG),
    Command("holds", "enter", "detail", "what it is", "Say what the column is", IMPORT),
    Command("ignore", "x", "ignore", "leave out", "Leave the column out", IMPORT),
    Command("order", "d", "order", "days", "How days are written: day or month first", IMPORT),
    Command(
        "bring", "f", "look_through", "look through", "Look all rows through, then book", IMPORT
    ),
    Command("place", "a", "add_place", "add place", "Add a place", SHELVES),
    Command("reading", "r", "reading", "reading", "Record the temperature of the place", SHELVES),
    Command(
        "outage",
        "x",
        "outage",
        "power cut",
        "The power was off here, or a door ajar",
        SHELVES,
    ),
    Command("due", "D,f2", "app.go('due')", "due", "What to eat first", ROOMS),
    Command("shelves", "S,f3", "app.go('shelves')", "shelves", "What stands where", ROOMS),
    Command("week", "W,f4", "app.go('week')", "week", "What to eat this week", ROOMS),
    Command("count", "c,f6", "app.go('count')", "count", "Count a place, shelf by shelf", ROOMS),
    Command(
        "outlook",
        "y,Y,f8",
        "app.go('outlook')",
        "outlook",
        "Will it last, and how much to put up",
        ROOMS,
    ),
    Command(
        "household",
        "comma,f10",
        "app.household",
        "household",
        "Altitude, people, units, whose advice",
        ROOMS,
    ),
    Command("log", "l,L,f7", "app.go('log')", "log", "What was done, the last on top", ROOMS),
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
        LISTS | LOG,
    ),
    Command(
        "underway",
        "j",
        "app.underway",
        "in progress",
        "Ferments, cures, infusions: day n of m",
        LISTS | LOG,
    ),
    Command(
        "backups", "f12", "app.backups", "print, files", "Print, backups, lists out and in", ROOMS
    ),
    Command("back", "escape", "back", "back", "Go back, or clear the words to find", ROOMS),
    Command("palette", "colon,ctrl+p", "app.command_palette", "commands", "All commands by name"),
    Command("books", "enter", "book", "books it", "Book the line", screens=PUTUP),
    Command("clear", "ctrl+u", "clear", "clear", "Clear the line", screens=PUTUP),
    Command("take", "tab", "take", "as offered", "Take what is offered in grey", screens=PUTUP),
    Command("lineup", "up", "lineup", "earlier", "The line before, to do it again", screens=PUTUP),
    Command("linedown", "down", "linedown", "later line", "The line after", screens=PUTUP),
    Command("readon", "pagedown", "page(1)", "read on", "What stands below", screens=PUTUP),
    Command("readback", "pageup", "page(-1)", "read back", "What stands above", screens=PUTUP),
    Command("help", "question_mark", "app.keys", "more keys", "All keys of this screen"),
    Command("guides", "f1", "app.guides", "guides", "Short guides, searchable", ROOMS),
    Command("quit", "q,ctrl+q", "app.quit", "quit", "Leave; everything is already kept"),
)


#: A person's own keys, by command id, as they are to be shown.
Own = Mapping[str, str]
TABLE: Own = {}


def of(screen: str, own: Own = TABLE) -> Iterator[Command]:
    """The commands that `screen` has, in table order, with a person's `own` keys."""
    return (as_own(command, own) for command in COMMANDS if screen in command.screens)


def as_own(command: Command, own: Own) -> Command:
    """With the key that it has here and now."""
    return replace(command, key=own[command.id]) if command.id in own else command


def own_keys(keys: Mapping[str, str], *, dotted: bool) -> dict[str, str]:
    """The keys to show that are not the table's: those of one's own; where letters search
    (`dotted`), each letter behind the full stop that makes it act."""
    found = dict(keys)
    if dotted:
        for one in COMMANDS:
            parts = found.get(one.id, one.key).split(",")
            found[one.id] = ",".join(f".{k}" if len(k) == 1 and k.isalpha() else k for k in parts)
    return found


#: The rooms, by the command that goes there.
_ROOM_KEYS = ("due", "shelves", "week", "count", "outlook", "log")


def in_other_rooms(letter: str, here: str, own: Own = TABLE) -> list[str]:
    """("x", "due") -> ["S (Shelves): power cut", ...]: what a key that means nothing here does in
    the other rooms."""
    goes = {one.id: one for one in of(here, own)}
    found = []
    for room in _ROOM_KEYS:
        does = next((one for one in of(room, own) if letter in one.key.split(",")), None)
        if room != here and does is not None and room in goes:
            found.append(f"{goes[room].first} ({SCREENS[room]}): {does.word}")
    return found


def palette(screen: str, own: Own = TABLE) -> Iterator[Command]:
    """What the palette offers: everything but the palette, the digits and going back."""
    return (
        item
        for item in of(screen, own)
        if item.id not in ("palette", "back") and item.key != DIGITS
    )


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
    "picture": "Shelves, drawn",
    "grid": "This week, as a grid",
    "months": "The months ahead",
    "year": "The year ahead",
    "underway": "In progress",
    "import": "Your own list",
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
