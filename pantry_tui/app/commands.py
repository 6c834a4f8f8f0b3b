"""The one table of what a person can do.

Bindings, palette entries, help, the footer and `pantry-tui keys` come from it; no key exists
outside it. No textual here, so that the command line can print it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
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
    "up": "Up",
    "down": "Down",
    "enter": "Enter",
    "ctrl+z": "Ctrl+Z",
    "ctrl+y": "Ctrl+Y",
    "ctrl+p": "Ctrl+P",
    "ctrl+q": "Ctrl+Q",
    "ctrl+u": "Ctrl+U",
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
    return key.upper() if key.startswith("f") and key[1:].isdigit() else key


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
    Command("correct", "w", "correct", "put right", "Put right what is recorded of it", STOCK),
    Command("timer", "e", "timer", "timer", "Time its process, or end the time", STOCK),
    Command(
        "year",
        "b",
        "year",
        "year and waste",
        "What was thrown away, the year of each food",
        OUTLOOK,
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
    Command("pin", "k", "pin", "pin", "Pin it to this day, or to any day again", WEEK),
    Command("later", "plus", "shift(1)", "later", "Eat it a day later", WEEK),
    Command("earlier", "minus", "shift(-1)", "earlier", "Eat it a day earlier", WEEK),
    Command("swap", "r", "swap", "swap", "Another food of its group instead", WEEK),
    Command("skip", "x", "skip", "skip", "None of it this week (again: put it back)", WEEK),
    Command("eatout", "h", "out", "eat out", "Nobody cooks that day (again: undo)", WEEK),
    Command("dish", "i", "dish", "dish", "A dish of yours on that day", WEEK),
    Command("table", "b", "table", "at table", "Days away and guests", WEEK),
    Command("undo", "z,ctrl+z", "undo", "undo", "Take back the last thing done", ROOMS),
    Command("redo", "ctrl+y", "redo", "redo", "Do again what was taken back", ROOMS),
    Command("putup", "p,f5", "app.go('putup')", "put up", "Put up a new batch", ROOMS),
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
    Command("backups", "f12", "app.backups", "backups", "Print, backups, lists out and in", ROOMS),
    Command("back", "escape", "back", "back", "Go back, or clear the words to find", ROOMS),
    Command("palette", "colon,ctrl+p", "app.command_palette", "commands", "All commands by name"),
    Command("books", "enter", "book", "books it", "Book the line", screens=PUTUP),
    Command("clear", "ctrl+u", "clear", "clear", "Clear the line", screens=PUTUP),
    Command("take", "tab", "take", "as offered", "Take what is offered in grey", screens=PUTUP),
    Command("lineup", "up", "lineup", "earlier", "The line before, to do it again", screens=PUTUP),
    Command("linedown", "down", "linedown", "later line", "The line after", screens=PUTUP),
    Command("help", "question_mark", "app.keys", "more keys", "All keys of this screen"),
    Command("guides", "f1", "app.guides", "guides", "Short guides, searchable", ROOMS),
    Command("quit", "q,ctrl+q", "app.quit", "quit", "Leave; everything is already kept"),
)


def of(screen: str) -> Iterator[Command]:
    """The commands that `screen` has, in table order."""
    return (command for command in COMMANDS if screen in command.screens)


def palette(screen: str) -> Iterator[Command]:
    """What the palette offers: everything but the palette, the digits and going back."""
    return (
        item for item in of(screen) if item.id not in ("palette", "back") and item.key != DIGITS
    )


#: What the key line of each screen shows, what is wanted most first; what has no room there is
#: behind `?`, which always stands there.
_ACTS = "use open thaw move discard sign give missing ready"
_LOOKS = "find jump detail putup undo mark"
_FOOTER = {
    "due": f"{_ACTS} {_LOOKS} sort reserve rate process correct timer",
    "shelves": f"use open thaw move discard sign reading outage place picture {_LOOKS} give "
    "missing ready",
    "batch": f"{_ACTS} rate process correct timer reserve putup undo",
    "picture": f"{_ACTS} aslist mark detail jump undo",
    "grid": "accept eaten later earlier swap skip pin eatout dish aslist use detail undo",
    "months": "detail find jump undo",
    "year": "detail aslist find jump undo",
    "underway": "tended detail find jump undo",
    "week": "accept eaten later earlier swap skip pin eatout dish picture table use open thaw "
    "detail undo find putup discard",
    "count": "agree digit uncount move sign unlisted book undo",
    "log": "detail find jump undo redo putup",
    "outlook": "detail whatif months picture year find jump putup undo",
    "import": "holds ignore order bring back undo",
    "putup": "books take lineup clear undo back guides",
}
_LAST = ("help", "quit")

#: Cells that the key line has at 80 columns, and lines that it may take.
ROOM, LINES = 78, 2


def footer(screen: str, room: int = ROOM, lines: int = LINES) -> list[list[Command]]:
    """The lines of keys of a screen, each of at most `room` cells: what is wanted most that fits,
    then where all the others are, and leaving."""
    known = {one.id: one for one in of(screen)}
    typing = screen == "putup"  # where a question mark is typed
    last = [known[id_] for id_ in _LAST if not (typing and id_ == "help")]
    shown: list[Command] = []
    for id_ in _FOOTER[screen].split():
        if id_ in known and _laid_out([*shown, known[id_], *last], screen, room, lines):
            shown.append(known[id_])
    return _laid_out([*shown, *last], screen, room, lines) or [last]


def _laid_out(
    commands: list[Command], screen: str, room: int, lines: int
) -> list[list[Command]] | None:
    """In lines of at most `room` cells; None where they need more lines."""
    found: list[list[Command]] = [[]]
    used = 0
    for one in commands:
        wide = len(f"{one.typed(screen)} {one.word}")
        if found[-1] and used + 2 + wide > room:
            found.append([])
            used = 0
        used += wide + (2 if found[-1] else 0)
        found[-1].append(one)
    return found if len(found) <= lines else None


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
