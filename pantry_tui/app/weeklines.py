"""From a week's menu to the lines of a list."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from pantry_tui.app.format import Column, clip, rest_cells, sentence, take_cells, week_day
from pantry_tui.app.lines import Heading, heading, headings
from pantry_tui.app.roles import HEAD, MUTED
from pantry_tui.app.rowtext import count_of, food_and_method
from pantry_tui.app.widgets.line import Cell, Key, Line
from pantry_tui.core.dates import say
from pantry_tui.services.plan.rows import Fallen, OnDay
from pantry_tui.services.rows import Take
from pantry_tui.services.stock.rows import DueRow

#: As many cells of a name tell anything.
_LEAST = 8
#: Warnings take no more lines than these from the days.
WARNED = 2


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
class EatenKey(Key):
    """A day that is eaten."""

    day: date


@dataclass(frozen=True)
class LeftOutKey(Key):
    """A food that is not wanted this week."""

    food: str


@dataclass(frozen=True)
class FallenKey(Key):
    """What an accepted week has on a day and is not sound by now."""

    container: str
    day: date


@dataclass(frozen=True)
class WarningKey(Key):
    """More warnings than have room, by all their words; which line of them."""

    words: str = field(compare=False)
    part: int = 0


@dataclass(frozen=True)
class RestKey(Key):
    """What was opened on a day before and is eaten on this one too."""

    container: str
    day: date


def take_lines(
    days: Iterable[OnDay],
    columns: Sequence[Column],
    rows: Mapping[str, DueRow],
    marked: Collection[Key],
    *,
    headed: bool = False,
) -> list[Line]:
    """One line for each day of a take, the first with the row of its container; acts are on that
    very container. What is eaten of it on the days after is its rest.

    A day is named once, on its first line (with `headed`, a dish has a heading that names it).
    """
    lines: list[Line] = []
    named = None
    for day, take, rest in days:
        key: Key = TakeKey(take.containers[0], day if take.amount else None)
        row = rows.get(take.containers[0])
        texts = list(take_cells(take, columns, _much(take, row)))
        if rest:
            key, row = RestKey(take.containers[0], day), None
            texts = list(rest_cells(take, day, columns))
        if day == named or (headed and take.dish):
            texts[0] = ""
        named = day
        said = f"{week_day(day)}: {' '.join(sentence(one) for one in take.reasons)}"
        star = key in marked
        cells = tuple(
            _food(take, row, column.width - 1, star=star, rest=rest)
            if column.field == "food"
            else (text, "")
            for text, column in zip(texts, columns, strict=True)
        )
        lines.append(Line(key, cells, "" if rest else take.containers[0], row, word=said))
    return lines


def _much(take: Take, row: DueRow | None) -> str:
    """What of it is taken: `1.25 lb`, `  2 jars`."""
    if much := take.amount or take.rest_of_one:
        number, _, unit = much.partition(" ")
        return f"{number:>3} {unit}".rstrip()
    return count_of(row, take.count) if row else f"{take.count:>3}"


def _food(take: Take, row: DueRow | None, room: int, *, star: bool, rest: bool) -> Cell:
    """The food, and behind it the day on which it must be taken out to thaw, else how it is kept
    and in which state, as far as that has room."""
    before = "* " if star else "  " if take.dish else ""
    room -= len(before)
    tail = f", {take.now}" if take.now else ""
    tail += f", thaw {week_day(take.thaw_by)}" if take.thaw_by and not rest else ""
    if not tail and row is not None:
        name, tail = food_and_method(row, room)
    elif room - len(tail) >= _LEAST:
        name = clip(take.food, room - len(tail))
    else:
        name, tail = clip(take.food, room), ""
    return f"{before}{name}", "", tail, MUTED


def stock_heading(title: str, columns: Sequence[Column]) -> Line:
    """Over stock that is no part of the menu: the column that says above it what to take says here
    what is left, and is headed so."""
    cells, at = [], 0
    for column in columns:
        text = title[at : at + column.width]
        if column.field == "count" and not text:
            text = "left"
        cells.append((text, HEAD))
        at += column.width
    fits = any(text == "left" for text, _ in cells)
    head = heading(Heading(title), title)
    return replace(head, cells=tuple(cells), whole=False) if fits else head


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


def fallen_lines(
    fallen: Iterable[Fallen],
    rows: Mapping[str, DueRow],
    columns: Sequence[Column],
    said: Callable[[str], str],
) -> list[Line]:
    """What of an accepted week is not sound by now, by day, and what could come in its stead; a key
    acts on that very container."""
    found: list[Line] = []
    for one in fallen:
        ref = one.containers[0]
        first, *more = headings(f"! {said(one.told)}", columns, 4)
        key = FallenKey(ref, one.day)
        found.append(replace(first, key=key, ref=ref, row=rows.get(ref)))
        found += more
    return found


def warning_lines(
    urgent: Sequence[str],
    fallen: Sequence[Fallen],
    rows: Mapping[str, DueRow],
    columns: Sequence[Column],
    said: Callable[[str], str],
) -> tuple[list[Line], list[tuple[date, Line]]]:
    """What must be eaten today and what is not sound by now. It stands whole above the days where
    it has room on two lines; else they say how many warnings there are and the first of them, with
    all of them on a page, and what is not sound stands in a line of its day."""
    whole = [line for one in urgent for line in headings(f"! {said(one)}", columns, WARNED + 1)]
    whole += fallen_lines(fallen, rows, columns, said)
    if len(whole) <= WARNED:
        return whole, []
    told = [said(one) for one in (*urgent, *(one.told for one in fallen))]
    many = f"{len(told)} warnings (Enter shows all), the first: " if told[1:] else ""
    first = headings(f"! {many}{told[0]}", columns, WARNED)
    pages = "\n\n".join(told)
    top = [replace(one, key=WarningKey(pages, n)) for n, one in enumerate(first)]
    width = sum(column.width for column in columns) - 1
    of_days = []
    for one in fallen:
        ref, text = one.containers[0], said(one.told)
        short = clip(f"! {text.replace(say(one.day), week_day(one.day), 1)}", width)
        line = heading(FallenKey(ref, one.day), short, text)
        line = replace(line, ref=ref, row=rows.get(ref))
        of_days.append((one.day, line))
    return top, of_days


def eaten_lines(
    eaten: Iterable[tuple[date, str]], columns: Sequence[Column], bare: Mapping[date, str]
) -> list[Line]:
    """A line for each day that is eaten, what was eaten on it behind the day, and one for each that
    is gone of those on which nobody ate at home."""
    room = sum(column.width for column in columns)
    found = {day: _bare_line(day, why, gone=True) for day, why in bare.items()}
    for day, what in eaten:
        found[day] = Line(
            EatenKey(day),
            ((f"{week_day(day):<11}{clip(f'eaten: {what}', room - 11)}", MUTED),),
            word=f"Eaten on {week_day(day)}: {what}. z takes back the last thing done.",
            whole=True,
        )
    return [line for _, line in sorted(found.items(), key=lambda one: one[0])]


def day_by_day(
    lines: Sequence[Line],
    days: Sequence[OnDay],
    bare: Mapping[date, str],
    warned: Sequence[tuple[date, Line]] = (),
) -> list[Line]:
    """A line with the name of a dish above what it takes, one for each day on which nobody eats at
    home, with why, and what is `warned` of on top of its day."""
    found: list[Line] = []
    left = [(day, _bare_line(day, why)) for day, why in bare.items()]
    left = sorted([*left, *warned], key=lambda one: one[0])
    above = {line.key for _, line in warned}
    named = ("", date.min)
    for line, (day, take, _) in zip(lines, days, strict=True):
        while left and (left[0][0] < day or (left[0][0] == day and left[0][1].key in above)):
            found.append(left.pop(0)[1])
        if take.dish and (take.dish, day) != named:
            named = (take.dish, day)
            said = f"{week_day(day):<11}{take.dish}, of:"
            may = "e: all of this day is eaten. h: you eat out that day."
            found.append(heading(DishKey(*named), said, may))
        found.append(line)
    return [*found, *(line for _, line in left)]


def _bare_line(day: date, why: str, *, gone: bool = False) -> Line:
    word = f"{week_day(day)}: {why}."
    word += "" if gone else " b: who sits at the table; h: you eat out, or at home again."
    return Line(DayKey(day), ((f"{week_day(day):<11}{why}", MUTED),), word=word, whole=True)
