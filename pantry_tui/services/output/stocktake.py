"""Sheets for a count without a screen: what should stand there in walking order, to be ticked or
written over with a pen."""

from __future__ import annotations

from pantry_tui.core import dates
from pantry_tui.core.text import clean
from pantry_tui.core.words import State
from pantry_tui.services.output.door import BOX
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import RoundLine, Sheet
from pantry_tui.services.stock import count

#: Where a pen writes.
PEN = "______"
HEADS = ("agrees", "code", "food", "size", "expected", "counted", "looks wrong")
#: Lines for what stands there and nobody recorded.
_FREE = 3
_FREE_WORDS = "Stands there, and is not on this sheet"
_HOW = (
    "Tick what agrees; else write how many you see. What bulges, leaks, spurts or has a loose lid: "
    "do not open it, do not taste it, write it down.",
    "Book it afterwards: in a count, or by `count PLACE --seen CODE=N`.",
)


def count_sheet(p: Pantry, what: str) -> Sheet:
    """Of one place, else of all in which something stands. Raises BadInput for no such place."""
    paths = p.place_paths()
    outer = (one for one in p.places.values() if one.parent is None and not one.gone)
    tops = [p.find_place(what)] if what else sorted(outer, key=lambda one: paths[one.id].lower())
    lines = [line for place in tops for line in count.lines(p, place)]
    parts: dict[str, int] = {}
    for line in lines:
        parts[line.place] = parts.get(line.place, 0) + 1
    free = (("", *[PEN] * (len(HEADS) - 1)),) * _FREE
    where = paths[tops[0].id] if what else "all places"
    return Sheet(
        f"Count of {where}, {dates.say(p.today)}",
        HEADS,
        (*map(_cells, lines), *free),
        _HOW,
        (*((clean(path), rows) for path, rows in parts.items()), (_FREE_WORDS, _FREE)),
        loose=True,
    )


def _cells(line: RoundLine) -> tuple[str, ...]:
    state = "" if line.state is State.SEALED else f" ({line.state})"
    food = f"{clean(line.food)}, {line.method}{state}"
    return (BOX, line.code, food, clean(line.size), str(line.expected), PEN, PEN)
