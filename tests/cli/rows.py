"""One row a verb: a call that works, one that is refused, one that is not understood.

`{peaches}` and the like stand for lid codes of the small store that `conftest.py` builds.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from tests.cli import shapes as s

Words = tuple[str, ...]


@dataclass(frozen=True)
class Row:
    """`refused` None: this verb can be refused for the store alone. `first` is done before the
    call that works; `storeless`: it needs no store; `endless`: it goes on until it is ended, so the
    call that works is tried elsewhere."""

    works: Words
    shape: Any
    refused: Words | None
    bad: Words
    first: tuple[Words, ...] = ()
    storeless: bool = False
    endless: bool = False


_TIMED = ("timer", "start", "{pears}", "25 min")
_COUNTED = ("jars", "count", "pint", "40")
NOTHING_LEFT = "{rings}"  # a batch of which the last is gone


def _sum(works: Words, bad: Words, refused: Words | None = None) -> Row:
    """A sum of batch arithmetic: it needs no store."""
    return Row(works, s.SUM, refused, bad, storeless=True)


ROWS: dict[str, Row] = {
    # Look
    "due": Row(("--within", "400d"), s.Some(s.DUE), None, ("--within", "soonish")),
    "shelves": Row((), s.Some(s.SHELF), None, ("--place", "attic")),
    "find": Row(("pea",), s.Some(s.DUE), None, ()),
    "show": Row(("{peaches}",), s.BATCH, None, ("9ZZ",)),
    "jobs": Row(("--within", "30d"), s.Some(s.JOB), None, ("--within", "soonish")),
    "log": Row(("{peaches}",), s.Some(s.LOG), None, ("9ZZ",)),
    "recall": Row(("{peaches}",), s.Some(s.GONE), None, ("9ZZ",)),
    # Put up and take
    "putup": Row(
        ("2 pint jars plums, boiling-water canned, shelf 2, yesterday",),
        s.PUTUP,
        ("3 pint jars green beans, boiling-water canned, shelf 2",),
        ("3 pint jars plums, teleported, shelf 2",),
    ),
    "use": Row(("{peaches}", "2"), s.DONE, (NOTHING_LEFT,), ("9ZZ",)),
    "open": Row(("{peaches}",), s.DONE, ("{peaches}/1",), ("9ZZ",)),
    "thaw": Row(
        ("{beef}", "--how", "microwave"), s.DONE, ("{peaches}",), ("{beef}", "--how", "sun")
    ),
    "ready": Row(("{kraut}",), s.DONE, ("{peaches}",), ("9ZZ",)),
    "tend": Row(("{kraut}", "skim"), s.DONE, ("{peaches}",), ("{kraut}", "polish")),
    "record": Row(("{beans}",), s.Some(s.ASKED), None, ("{beans}", "minutes")),
    "jars": Row((), s.Some(s.JARS), None, ("all",), first=(_COUNTED,)),
    "jars count": Row(("pint", "40"), s.DONE, None, ("bucket", "40")),
    "jars lend": Row(
        ("pint", "6", "to", "Aunt", "Sunniva"),
        s.DONE,
        ("pint", "99", "to", "Aunt", "Sunniva"),
        ("pint", "six"),
        first=(_COUNTED,),
    ),
    "jars back": Row(
        ("pint", "6", "from", "Aunt", "Sunniva"),
        s.DONE,
        ("pint", "6", "from", "Maren"),
        ("pint", "six"),
        first=(_COUNTED, ("jars", "lend", "pint", "6", "Aunt Sunniva")),
    ),
    "repeat": Row(
        ("{peaches}", "--count", "4"),
        s.AGAIN,
        None,
        ("{peaches}", "--crop", "a lot"),
    ),
    "timer": Row((), s.Some(s.TIMER), None, ("all",), first=(_TIMED,)),
    "timer start": Row(("{pears}", "25", "min"), s.DONE, None, ("{pears}", "a", "while")),
    "timer drop": Row(("{pears}",), s.DONE, ("{kraut}",), ("9ZZ",), first=(_TIMED,)),
    "timer done": Row(("{pears}", "--early"), s.DONE, ("{kraut}",), ("9ZZ",), first=(_TIMED,)),
    "timer cancel": Row(("{pears}",), s.DONE, ("{kraut}",), ("9ZZ",), first=(_TIMED,)),
    "repack": Row(
        ("{peaches}", "2", "half-pint", "jars,", "fridge"),
        {**s.PUTUP, "from": s.Some({"code": str, "container": str, "took": str, "left": str})},
        (NOTHING_LEFT, "2 pint jars, fridge"),
        ("{peaches}", "2 jars, attic"),
    ),
    "move": Row(
        ("{peaches}", "fridge", "--count", "2"),
        s.DONE,
        (NOTHING_LEFT, "shelf", "2"),
        ("{peaches}", "attic"),
    ),
    "give": Row(
        ("{peaches}", "2", "--to", "Aunt Sunniva"), s.DONE, (NOTHING_LEFT,), ("{peaches}", "two")
    ),
    "missing": Row(("{peaches}",), s.DONE, (NOTHING_LEFT,), ("{peaches}", "two")),
    "discard": Row(
        ("{peaches}/2", "--why", "seal failed"),
        s.DONE,
        (NOTHING_LEFT, "--why", "stale"),
        ("{peaches}",),
    ),
    "reserve": Row(
        ("{peaches}", "2", "--for", "Aunt", "Sunniva"),
        s.DONE,
        ("{peaches}", "--free"),
        ("{peaches}", "--free", "--for", "me"),
    ),
    "rate": Row(("{peaches}", "not-again", "too", "soft"), s.DONE, None, ("{peaches}", "lovely")),
    "correct": Row(("{peaches}", "--note", "syrup"), s.DONE, None, ("{peaches}",)),
    "undo": Row((), s.TOOK_BACK, None, ("nonsense",), first=(("use", "{peaches}"),)),
    "redo": Row(
        (),
        s.TOOK_BACK,
        (),
        ("too", "much"),
        first=(("use", "{peaches}"), ("undo",)),
    ),
    # Signs of spoilage
    "sign": Row(("{peaches}/2", "bulging", "lid"), s.SIGN, None, ("9ZZ", "x")),
    "signs": Row(("jam",), s.Some(s.SIGN_ROW), None, ("teleported",), storeless=True),
    # Places
    "place add": Row(
        ("attic", "--climate", "room", "--temp", "-5F"),
        s.DONE,
        ("shelf", "2", "--climate", "pantry"),
        ("attic", "--climate", "warm"),
    ),
    "place change": Row(
        ("shelf", "2", "--temp", "60F"), s.DONE, None, ("attic", "--climate", "room")
    ),
    "place merge": Row(
        ("shelf", "2", "--into", "fridge"), s.DONE, None, ("attic", "--into", "fridge")
    ),
    "place remove": Row(("shelf", "2", "--to", "fridge"), s.DONE, ("shelf", "2"), ("attic",)),
    "place list": Row((), s.Some(s.PLACE), None, ("all",)),
    "reading": Row(("big", "freezer", "-2F"), s.DONE, None, ("big", "freezer", "cold")),
    "outage": Row(
        ("big", "freezer", "--from", "02:00", "--to", "09:00"),
        s.OUTAGE,
        ("shelf", "2", "--from", "02:00", "--to", "09:00"),
        ("big", "freezer", "--from", "evening", "--to", "09:00"),
    ),
    "count": Row(
        ("shelf", "2", "--seen", "{peaches}=3"),
        {"place": str, "differences": s.Some({"code": str, "seen": int}), "message": str},
        ("shelf", "2", "--seen", "{beef}=1"),
        ("shelf", "2", "--seen", "{peaches}"),
    ),
    # Plan
    "cook": Row(
        ("peaches",),
        s.Some(s.COOKED),
        None,
        ("moon dust",),
        first=(("household", "dish", "add", "fruit bowl = 4 peaches, 2 apples"),),
    ),
    "week": Row((), s.WEEK, ("--eaten", "today"), ("--pin", "{peaches}")),
    "outlook": Row(("--margin", "10%"), s.OUTLOOK, None, ("--years", "9")),
    "year": Row(("peaches",), s.Some(s.YEAR), None, ("moon", "cheese")),
    "losses": Row(("--from", "2026-01-01"), s.LOSSES, None, ("--from", "whenever")),
    # Household
    "household": Row(("--people", "5", "--altitude", "550m"), s.HOUSEHOLD, None, ("--people", "0")),
    "household away": Row(("24", "dec", "to", "27", "dec"), s.DONE, None, ("someday",)),
    "household guests": Row(("6", "on", "friday"), s.DONE, None, ("friday",)),
    "household usual": Row(("friday",), s.DONE, None, ()),
    "household days": Row(
        (),
        s.Some({"day": s.Day, "people": int}),
        None,
        ("all",),
        first=(("household", "guests", "6", "on", "friday"),),
    ),
    "household appetite": Row(("fruit", "3"), s.DONE, None, ("fruit",)),
    "household dish add": Row(
        ("bean", "pot", "=", "4", "runner", "beans"), s.DONE, None, ("soup",)
    ),
    "household dish drop": Row(
        ("bean pot",),
        s.DONE,
        ("soup",),
        (),
        first=(("household", "dish", "add", "bean pot = 4 runner beans"),),
    ),
    "household dish list": Row(
        (),
        s.Some({"name": str, "takes": s.Some(list)}),
        None,
        ("all",),
        first=(("household", "dish", "add", "bean pot = 4 runner beans"),),
    ),
    "household substitute": Row(("peaches", "with", "plums"), s.DONE, None, ("peaches",)),
    "household substitute list": Row(
        (),
        s.Each(s.Some(str)),
        None,
        ("all",),
        first=(("household", "substitute", "peaches", "with", "plums"),),
    ),
    # Look up
    "shelf-life": Row(
        ("in oil", "garlic", "--in", "fridge", "--made", "today"),
        s.SHELF_LIFE,
        None,
        ("dried", "moon", "cheese"),
        storeless=True,
    ),
    "methods": Row(
        ("9", "lb", "beetroot"), s.Some(s.WAY), None, ("moon", "cheese"), storeless=True
    ),
    "process": Row(
        ("peaches", "--jar", "pint", "--canner", "boiling-water", "--pack", "hot"),
        s.PROCESS,
        None,
        ("peaches", "--jar", "bucket", "--canner", "boiling-water"),
        storeless=True,
    ),
    "add-food": Row(
        ("moon", "roots", "--group", "vegetable", "--acidity", "low-acid"),
        s.DONE,
        ("peaches", "--group", "fruit", "--acidity", "acid"),
        ("moon", "roots", "--group", "mineral", "--acidity", "acid"),
    ),
    "add-rule": Row(
        ("dried", "apples", "--in", "pantry", "--lasts", "3 months"),
        s.DONE,
        ("in oil", "garlic", "--in", "fridge", "--lasts", "90 days", "--kind", "safety"),
        ("dried", "apples", "--in", "pantry", "--lasts", "long"),
    ),
    "added": Row(
        (),
        s.Some(str),
        None,
        ("all",),
        first=(("add-food", "moon roots", "--group", "vegetable", "--acidity", "low-acid"),),
    ),
    # Reckon
    "calc brine": _sum(("500g", "water", "3%"), ("--water", "500g", "--percent", "300")),
    "calc drysalt": _sum(("5", "lb", "cabbage"), ("5", "lb", "--percent", "0")),
    "calc vinegar": _sum(("5%", "equal", "parts"), ("2", "cups")),
    "calc syrup": _sum(("light", "--jars", "7 quart"), ("7", "quart", "jars")),
    "calc drying": _sum(("5", "lb", "carrots"), ("1", "kg", "10%", "to", "90%")),
    "calc conditioning": _sum(("apples",), ("moon", "cheese")),
    "calc blanching": _sum(("carrots", "--altitude", "5500ft"), ("--steam",)),
    "calc yield": _sum(("20", "lb", "tomatoes"), ("tomatoes",)),
    "calc headspace": _sum(("peaches", "--jar", "quart"), ("moon", "cheese")),
    "calc packs": _sum(("10", "lb", "broccoli", "--people", "4"), ("broccoli",)),
    "calc infusion": _sum(
        ("--spirit", "500 ml", "--strength", "40", "--fruit", "300 g", "cherries"),
        ("500 ml", "cherries"),
        ("500 ml", "40%", "100 g", "garlic"),
    ),
    "calc cure": _sum(
        ("5", "lb", "ground", "pork"), ("5", "lb"), ("5", "lb", "ground pork", "10%")
    ),
    "calc smoking": _sum(("trout",), ("moon", "cheese")),
    "calc boil": _sum(("--altitude", "1800ft", "--psi", "11"), ("tomatoes",)),
    # Print
    "sheet": Row(("due",), s.SHEET, None, ("attic",)),
    "labels": Row(
        ("{peaches}",), s.Some(s.LABEL), ("--gift", NOTHING_LEFT), ("{peaches}", "--size", "big")
    ),
    "calendar": Row(("{folder}/dates.ics",), s.FILE, ("{folder}/store.db",), ()),
    # The store and the app
    "init": Row(
        ("--store", "{folder}/new.db", "--people", "3"),
        s.STORE,
        (),
        ("--store", "{folder}/new.db", "--people", "many"),
        storeless=True,
    ),
    "demo": Row(
        ("--init", "{folder}/demo.db"),
        s.STORE,
        ("--init", "{folder}"),
        ("--innit",),
        storeless=True,
    ),
    "serve": Row((), s.STORE, ("--port", "99999"), ("--port", "many"), endless=True),
    "export": Row(
        ("{folder}/stock.csv", "--what", "stock"),
        s.WRITTEN,
        ("{folder}/store.db/copy.json",),
        ("{folder}/stock.ods",),
    ),
    "import": Row(
        ("{folder}/log.json",),
        s.MERGED,
        None,
        ("{folder}/nowhere.json",),
        first=(("export", "{folder}/log.json"),),
    ),
    "backup": Row(("{folder}/copy.db",), s.COPIED, ("{folder}/store.db",), ("",)),
    "restore": Row(
        ("{folder}/copy.db",),
        s.RESTORED,
        ("{folder}/store.db",),
        (),
        first=(("backup", "{folder}/copy.db"), ("use", "{peaches}")),
        storeless=True,
    ),
    "verify": Row(("--report",), s.VERIFIED, None, ("everything",)),
    "help": Row(("power-cut",), s.Some(s.GUIDE), None, ("teleporting",), storeless=True),
    "keys": Row((), s.Some(s.KEY), None, ("all",), storeless=True),
}
