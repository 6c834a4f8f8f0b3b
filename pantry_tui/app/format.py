"""Pure row text: marks, words, dates, days. No textual here."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from textwrap import wrap

from rich.cells import cell_len, set_cell_size

from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dataclass import replace
from pantry_tui.core.dates import say
from pantry_tui.core.keeping.no_day import instead_of_day
from pantry_tui.core.text import clean, singular
from pantry_tui.core.words import MARK, State, Verdict
from pantry_tui.services.plan.rows import REST
from pantry_tui.services.rows import RoundLine, Take
from pantry_tui.services.stock.rows import Shelf


@dataclass(frozen=True, slots=True)
class Column:
    """A field of a row and how many cells it may fill."""

    field: str
    label: str
    width: int


def clip(text: str, width: int) -> str:
    """At most `width` cells; what is cut off leaves an ellipsis."""
    plain = clean(text)
    if cell_len(plain) <= width:
        return plain
    return set_cell_size(plain, max(width - 1, 0)).rstrip() + "…"


def day(value: date | None) -> str:
    """`Tue 31 Mar 2027`, or `none`."""
    return "none" if value is None else say(value)


def short_day(value: date | None) -> str:
    """`31 Mar 2027`: where a list has no room for the day of the week."""
    return "none" if value is None else say(value).split(" ", 1)[-1]


def last_day(value: date | None, why: str) -> str:
    """The last day on which it may be eaten, in full, or why there is none: no limit, nothing
    published, in progress ..."""
    return instead_of_day(why) if value is None else say(value)


def near_day(value: date | None, days: int | None) -> str:
    """`9 Dec` where it is near, `Feb 2025` where only the month matters: a list has `days` left
    beside it, and the batch has the whole date."""
    if value is None:
        return "none"
    _, number, month, year = say(value).split()
    return f"{number} {month}" if days is not None and abs(days) < 100 else f"{month} {year}"


def week_day(value: date) -> str:
    """`Wed 25 Nov`."""
    return say(value).rsplit(" ", 1)[0]


def hang(text: str, width: int) -> str:
    """`text` in lines of at most `width`, what runs over indented under its beginning: under the
    words behind a label, else two cells in."""
    lines: list[str] = []
    for line in text.split("\n"):
        label = re.match(r"\s*\S.{0,13}?\s{2,}(?=\S)", line)
        indent = len(label[0]) if label else len(line) - len(line.lstrip()) + 2
        lines += wrap(line, max(width, 10), subsequent_indent=" " * min(indent, width // 2)) or [""]
    return "\n".join(lines)


def verdict(value: Verdict) -> str:
    """The mark and the word."""
    return f"{MARK[value]} {value.value}"


def leaf(place: str) -> str:
    """The last part of a place's path."""
    return place.rsplit("›", 1)[-1].strip()


def keep_indent(text: str, width: int) -> str:
    """As `clip`, with the blanks kept that a number stands behind."""
    indent = text[: len(text) - len(text.lstrip(" "))]
    return indent + clip(text, max(width - len(indent), 0))


#: Units as they are written where their word has no room.
_UNITS = {"quart": "qt", "pint": "pt", "gallon": "gal", "ounce": "oz", "pound": "lb"}


def short_unit(text: str, width: int) -> str:
    """("5 1/4 quarts", 11) -> "5 1/4 qt"; as it is where it fits, or where nothing is shorter."""
    number, _, unit = text.rpartition(" ")
    short = _UNITS.get(singular(unit), unit)
    return text if cell_len(text) <= width else f"{number} {short}".strip()


#: Columns of a list take a lid code of so many characters (and one cell of air) at least.
CODE = 4


def code_column(longest: int) -> Column:
    """A lid code is what is typed to find a thing: it is never cut."""
    return Column("code", "code", max(longest, CODE) + 1)


def shelf_title(shelf: Shelf) -> str:
    """`basement › shelf 2 · pantry 60 °F · 14 of 40`."""
    room = f"{shelf.count}"
    if shelf.capacity:
        full = min(10, round(10 * shelf.count / shelf.capacity))
        room = f"{shelf.count} of {shelf.capacity} [{'#' * full}{'.' * (10 - full)}]"
    return clean(f"{shelf.path} · {shelf.climate} {shelf.temperature_f:g} °F · {room}")


def take_columns(width: int, *, longest: int = CODE) -> tuple[Column, ...]:
    """The columns of the week."""
    free, code = width - 2, code_column(longest)
    if width < 60:
        return (
            Column("day", "day", 7),
            code,
            Column("food", "food", max(free - 15 - code.width, 5)),
            Column("count", "take", 8),
        )
    rest = max(free - 13 - code.width - 13 - 7, 20)
    food = rest * 68 // 100
    return (
        Column("day", "day", 13),
        code,
        Column("food", "food, method", food),
        Column("count", "take", 13),
        Column("place", "where", rest - food),
        Column("servings", "serves", 7),
    )


def take_cells(take: Take, columns: Sequence[Column], much: str) -> tuple[str, ...]:
    """The text of one line of the week: `much` of a food, whose own cell is left empty."""
    fields = {
        "day": week_day(take.day) if len(columns) > 4 else week_day(take.day).rsplit(" ", 1)[0],
        "code": take.code,
        "food": "",
        "count": much,
        "place": leaf(take.place),
        "servings": f"{kitchen_count(take.servings):>6}",
    }
    return tuple(
        much if column.field == "count" else keep_indent(fields[column.field], column.width - 1)
        for column in columns
    )


def rest_cells(take: Take, day: date, columns: Sequence[Column]) -> tuple[str, ...]:
    """The same of a day on which the rest of it is eaten: nothing is fetched for it."""
    laid = take_cells(replace(take, day=day), columns, REST)
    bare = ("place", "servings")
    return tuple(
        "" if column.field in bare else text for text, column in zip(laid, columns, strict=True)
    )


def count_columns(width: int, *, longest: int = CODE, place: bool = True) -> tuple[Column, ...]:
    """The columns of a count; without `place` all of it stands in one."""
    free, code = width - 2, code_column(longest)
    if width < 60:
        fixed = (Column("expected", "exp", 4), Column("seen", "seen", 6))
        return (code, Column("food", "food", max(free - 10 - code.width, 8)), *fixed)
    size = 15 if place else 21
    rest = max(free - code.width - 9 - 9 - size, 20)
    food = rest * 55 // 100 if place else rest
    where = (Column("place", "place", rest - food),) if place else ()
    return (
        code,
        Column("food", "food", food),
        Column("size", "size", size),
        *where,
        Column("expected", "expected", 9),
        Column("seen", "counted", 9),
    )


def count_cells(line: RoundLine, columns: Sequence[Column]) -> tuple[str, ...]:
    """The text of one line of a count; a count that differs is marked."""
    agreed = line.seen is None or line.seen == line.expected
    counted = "" if line.seen is None else f"{line.seen}{'' if agreed else ' !'}"
    state = "" if line.state is State.SEALED else f" ({line.state})"
    narrow = all(column.field != "size" for column in columns)
    fields = {
        "code": line.code,
        "food": line.food + (f", {line.holds}" if line.holds and narrow else "") + state,
        "size": line.size or line.holds,
        "place": leaf(line.place),
        "expected": str(line.expected),
        "seen": counted,
    }
    return tuple(clip(fields[column.field], column.width - 1) for column in columns)


def sentence(text: str) -> str:
    """With a full stop."""
    return text if text.endswith((".", "!", "?")) or not text else f"{text}."
