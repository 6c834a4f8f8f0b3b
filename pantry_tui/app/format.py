"""Pure row text: marks, words, dates, days. No textual here."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from textwrap import wrap

from rich.cells import cell_len, set_cell_size

from pantry_tui.core.dates import say
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import clean
from pantry_tui.core.words import MARK, State, Verdict
from pantry_tui.services.rows import RoundLine, Take
from pantry_tui.services.stock.rows import DueRow, Shelf


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
    return why or "none" if value is None else say(value)


def short_last_day(row: DueRow) -> str:
    """The same where a list has no room for the day of the week."""
    if row.discard_after is None:
        return _SHORT_WHY.get(row.discard_after_why, row.discard_after_why) or "none"
    return short_day(row.discard_after)


#: A column of a list holds thirteen cells.
_SHORT_WHY = {"nothing published": "not published", "process in doubt": "doubtful"}


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


def left(days: int | None) -> str:
    """How long until the date, in as few words as tell it."""
    if days is None:
        return ""
    if days == 0:
        return "today"
    size = abs(days)
    text = f"{size} d" if size < 100 else f"{round(size / 30.44)} mo"
    return text if days > 0 else f"{text} ago"


def verdict(value: Verdict) -> str:
    """The mark and the word."""
    return f"{MARK[value]} {value.value}"


def leaf(place: str) -> str:
    """The last part of a place's path."""
    return place.rsplit("›", 1)[-1].strip()


def act_by(row: DueRow) -> date | None:
    """The date that `days_left` counts to: the earlier one ahead, else the last one past."""
    dates = sorted(one for one in (row.best_by, row.discard_after) if one is not None)
    if not dates or row.verdict in UNFIT:
        return row.discard_after
    past_best = len(dates) == 2 and row.verdict is Verdict.PAST_BEST
    return dates[1] if past_best and (row.days_left or 0) >= 0 else dates[0]


#: Columns of a list take a lid code of so many characters (and one cell of air) at least.
CODE = 4


def _code(longest: int) -> Column:
    """A lid code is what is typed to find a thing: it is never cut."""
    return Column("code", "code", max(longest, CODE) + 1)


def due_columns(width: int, beside: str = "place", *, longest: int = CODE) -> tuple[Column, ...]:
    """The columns of a stock list, as many as `width` holds; `beside` the food stands its place,
    or its method in a list that is by place already. `longest` (here and below): the characters
    of the longest lid code."""
    free, code = width - 2, _code(longest)
    if width < 60:
        fixed = [("mark", "", 2), ("count", "count", 8), ("left", "left", 10)]
        rest = max(free - 20 - code.width, 8)
        columns = [Column(*one) for one in fixed]
        return (columns[0], code, Column("food", "food", rest), *columns[1:])
    two_dates = width >= 118
    fixed_width = 15 + code.width + 8 + 10 + (28 if two_dates else 9)
    rest = max(free - fixed_width, 20)
    food = max(rest * (62 if beside == "place" else 55) // 100, 12)
    dates = (
        [Column("best", "best by", 14), Column("safe", "discard after", 14)]
        if two_dates
        else [Column("by", "act by", 9)]
    )
    return (
        Column("verdict", "verdict", 15),
        code,
        Column("food", "food", food),
        Column("count", "count", 8),
        Column(beside, beside, rest - food),
        Column("left", "left", 10),
        *dates,
    )


def due_cells(row: DueRow, columns: Sequence[Column]) -> tuple[str, ...]:
    """The text of one row, clipped to its columns (one cell of air at the right)."""
    wide = next((column.width for column in columns if column.field == "food"), 40) - 1
    fields = {
        "mark": MARK[row.verdict],
        "verdict": verdict(row.verdict),
        "code": row.code,
        "food": _food(row, wide),
        "count": row.held,
        "place": leaf(row.place),
        "method": row.method.value,
        "left": left(row.days_left),
        "by": near_day(act_by(row), row.days_left),
        "best": short_day(row.good_until),
        "safe": short_last_day(row),
        # Where a row stands among the days of the week, its verdict takes the place of the day;
        # where the word has no room its mark stands alone, since half a word says another thing.
        "day": _whole(verdict(row.verdict), MARK[row.verdict], columns),
        "servings": "",
        "thaw": "",
    }
    return tuple(clip(fields[column.field], column.width - 1) for column in columns)


def _whole(word: str, mark: str, columns: Sequence[Column]) -> str:
    room = next((column.width for column in columns if column.field == "day"), 0) - 1
    return word if cell_len(word) <= room else mark


def _food(row: DueRow, width: int) -> str:
    """The food, in brackets its state where it is not sealed and for whom it is kept; the name
    gives way first, then the person, never the state."""
    if not row.remark:
        return row.food
    state = "" if row.state is State.SEALED else row.state.value
    aside = clip(row.aside, max(width - 10 - len(state), 8)) if row.aside else ""
    remark = f" ({', '.join(filter(None, (state, aside)))})"
    return clip(row.food, max(width - cell_len(remark), 4)) + remark


def shelf_title(shelf: Shelf) -> str:
    """`basement › shelf 2 · pantry 60 °F · 14 of 40`."""
    room = f"{shelf.count}"
    if shelf.capacity:
        full = min(10, round(10 * shelf.count / shelf.capacity))
        room = f"{shelf.count} of {shelf.capacity} [{'#' * full}{'.' * (10 - full)}]"
    return clean(f"{shelf.path} · {shelf.climate} {shelf.temperature_f:g} °F · {room}")


def take_columns(width: int, *, longest: int = CODE) -> tuple[Column, ...]:
    """The columns of the week."""
    free, code = width - 2, _code(longest)
    if width < 60:
        return (
            Column("day", "day", 7),
            code,
            Column("food", "food", max(free - 15 - code.width, 8)),
            Column("count", "count", 8),
        )
    rest = max(free - 15 - code.width - 8 - 9 - 12, 20)
    food = rest * 60 // 100
    return (
        Column("day", "day", 15),
        code,
        Column("food", "food", food),
        Column("count", "count", 8),
        Column("place", "place", rest - food),
        Column("servings", "servings", 9),
        Column("thaw", "thaw from", 12),
    )


def take_cells(take: Take, columns: Sequence[Column], *, star: bool) -> tuple[str, ...]:
    """The text of one line of the week; one that is marked has a star."""
    food = f"  {take.food}" if take.dish else take.food
    fields = {
        "day": week_day(take.day) if len(columns) > 4 else week_day(take.day).rsplit(" ", 1)[0],
        "code": take.code,
        "food": f"* {take.food}" if star else food,
        "count": take.amount or str(take.count),
        "place": leaf(take.place),
        "servings": f"{take.servings:g}",
        "thaw": week_day(take.thaw_by) if take.thaw_by else "",
    }
    return tuple(clip(fields[column.field], column.width - 1) for column in columns)


def count_columns(width: int, *, longest: int = CODE) -> tuple[Column, ...]:
    """The columns of a count."""
    free, code = width - 2, _code(longest)
    if width < 60:
        fixed = (Column("expected", "exp", 4), Column("seen", "seen", 6))
        return (code, Column("food", "food", max(free - 10 - code.width, 8)), *fixed)
    rest = max(free - code.width - 9 - 9 - 15, 20)
    food = rest * 55 // 100
    return (
        code,
        Column("food", "food", food),
        Column("size", "size", 15),
        Column("place", "place", rest - food),
        Column("expected", "expected", 9),
        Column("seen", "counted", 9),
    )


def count_cells(line: RoundLine, columns: Sequence[Column]) -> tuple[str, ...]:
    """The text of one line of a count; a count that differs is marked."""
    agreed = line.seen is None or line.seen == line.expected
    counted = "" if line.seen is None else f"{line.seen}{'' if agreed else ' !'}"
    state = "" if line.state is State.SEALED else f" ({line.state})"
    fields = {
        "code": line.code,
        "food": line.food + state,
        "size": line.size,
        "place": leaf(line.place),
        "expected": str(line.expected),
        "seen": counted,
    }
    return tuple(clip(fields[column.field], column.width - 1) for column in columns)


def caution(row: DueRow) -> str:
    """What to say under the list about food that must not be eaten; empty for all else."""
    if row.verdict not in UNFIT and row.verdict is not Verdict.UNKNOWN:
        return ""
    why = sentence(clip(row.reasons[0], 140)) if row.reasons else ""
    return f"{verdict(row.verdict)}: {row.code}. {why} {CAUTION}"


def sentence(text: str) -> str:
    """With a full stop."""
    return text if text.endswith((".", "!", "?")) or not text else f"{text}."


def row_detail(row: DueRow) -> str:
    """One row in full, for the pane beside a wide list."""
    ids = ", ".join(row.container_ids[:12]) + (" …" if len(row.container_ids) > 12 else "")
    lines = [
        clip(row.food, 300),
        verdict(row.verdict),
        "",
        ", ".join(filter(None, (row.method.value, row.state.value, clip(row.aside, 60)))),
        clip(row.place, 200),
        f"{row.count} {clip(row.size, 40)}".strip() + f": {ids}",
        *([f"left in {'each' if row.count > 1 else 'it'}: {row.amount}"] if row.amount else ()),
        "",
        f"best by        {day(row.good_until)}",
        f"discard after  {last_day(row.discard_after, row.discard_after_why)}",
        "",
        *(clip(reason, 400) for reason in row.reasons),
    ]
    return "\n".join(lines)
