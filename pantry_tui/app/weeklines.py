"""From a week's menu to the lines of a list."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from rich.cells import cell_len

from pantry_tui.app.format import Column, sentence, take_cells, week_day
from pantry_tui.app.lines import heading
from pantry_tui.app.rowtext import methods_for
from pantry_tui.app.theme import MUTED
from pantry_tui.app.widgets.line import Cell, Key, Line
from pantry_tui.services.rows import Take
from pantry_tui.services.stock.rows import DueRow


@dataclass(frozen=True)
class TakeKey(Key):
    """A container of the menu. The cursor follows it to another day, but for bulk, which comes on
    several: then `day` tells them apart."""

    container: str
    day: date | None


@dataclass(frozen=True)
class ThawKey(Key):
    """What must leave the freezer today."""

    container: str


@dataclass(frozen=True)
class DishKey(Key):
    """The name of a dish above what it takes."""

    dish: str
    day: date


@dataclass(frozen=True)
class DayKey(Key):
    """What was said of a day: who is at table, what else is otherwise."""

    day: date


@dataclass(frozen=True)
class LeftOutKey(Key):
    """A food that is not wanted this week."""

    food: str


def take_lines(
    takes: Iterable[Take],
    columns: Sequence[Column],
    rows: Mapping[str, DueRow],
    marked: Collection[Key],
    *,
    headed: bool = False,
) -> list[Line]:
    """One line a take, with the row of its container; acts are on that very container.

    A day is named once, on its first line (with `headed`, a dish has a heading that names it).
    """
    lines: list[Line] = []
    named = None
    for take in takes:
        key = TakeKey(take.containers[0], take.day if take.amount else None)
        texts = list(take_cells(take, columns, star=key in marked))
        if take.day == named or (headed and take.dish):
            texts[0] = ""
        named = take.day
        said = f"{week_day(take.day)}: {' '.join(sentence(one) for one in take.reasons)}"
        row = rows.get(take.containers[0])
        cells = tuple(
            _food(text, column, row) if column.field == "food" else (text, "")
            for text, column in zip(texts, columns, strict=True)
        )
        lines.append(Line(key, cells, take.containers[0], row, word=said))
    return lines


def _food(text: str, column: Column, row: DueRow | None) -> Cell:
    """The food, and how it is kept where that has room."""
    for method in methods_for(row.method) if row else ():
        tail = f", {method}" if method and method not in text else ""
        if cell_len(text + tail) < column.width:
            return text, "", tail, MUTED
    return text, ""


def thaw_lines(takes: Iterable[Take], rows: Mapping[str, DueRow], today: date) -> list[Line]:
    """What must leave the freezer today: a line each, so that one key thaws it."""
    found = []
    for take in takes:
        if take.thaw_by is None or take.thaw_by > today:
            continue
        ref = take.containers[0]
        said = f"> Thaw today for {week_day(take.day)}: {take.code} {take.food}, {take.place}"
        head = heading(ThawKey(ref), said, "t takes it out to thaw.")
        found.append(Line(head.key, head.cells, ref, rows.get(ref), word=head.word, whole=True))
    return found


def under_dishes(lines: Sequence[Line], takes: Sequence[Take]) -> list[Line]:
    """A line with the name of a dish above what it takes."""
    found: list[Line] = []
    named = ("", date.min)
    for line, take in zip(lines, takes, strict=True):
        if take.dish and (take.dish, take.day) != named:
            named = (take.dish, take.day)
            said = f"{week_day(take.day):<11}{take.dish}, of:"
            may = "e: all of this day is eaten. h: you eat out that day."
            found.append(heading(DishKey(*named), said, may))
        found.append(line)
    return found
