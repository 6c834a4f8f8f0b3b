"""Pictures in the place of lists: the shelves as they stand, the months ahead."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from pantry_tui.app.ahead import plot, sentences
from pantry_tui.app.bindings import bindings
from pantry_tui.app.draw.months import month_rows
from pantry_tui.app.draw.shelf import shelf_rows
from pantry_tui.app.draw.underway import underway_rows
from pantry_tui.app.draw.year import year_rows
from pantry_tui.app.format import Column, clip, leaf, shelf_title
from pantry_tui.app.rowtext import until
from pantry_tui.app.screens.acts import Acts, Rates, Undoes
from pantry_tui.app.screens.jobs import JobKey, do
from pantry_tui.app.screens.outlook import Books
from pantry_tui.app.screens.page import Page
from pantry_tui.app.screens.stock import Beside, RowWords
from pantry_tui.app.widgets.line import Key, Line, Source
from pantry_tui.app.widgets.linelist import LineList
from pantry_tui.app.widgets.picture import Drawn, Picture
from pantry_tui.core.text import clean
from pantry_tui.core.words import MARK
from pantry_tui.services.batchwork.underway import Underway, underway
from pantry_tui.services.books.rows import FoodAhead
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock.months import MonthAhead, months_ahead
from pantry_tui.services.stock.rows import DueRow, Shelf
from pantry_tui.services.stock.view import shelves

#: Lines of blocks where a food is drawn large.
HIGH = 8


@dataclass(frozen=True)
class CellKey(Key):
    """One container on its shelf."""

    ref: str


@dataclass(frozen=True)
class MonthKey(Key):
    """A month ahead: "2027-01"."""

    ref: str


class Pictured(Beside):
    """A picture instead of a list, with what the cursor stands on said under it or beside it."""

    def make_list(self) -> LineList:
        return Picture()

    def columns(self, width: int) -> tuple[Column, ...]:
        return ()

    @property
    def room(self) -> int:
        """Cells of the picture: the left edge and the bar to scroll are the list's."""
        return self.list_width - 2

    def leave(self) -> None:
        self.dismiss()


class AsList(Pictured):
    """A picture of what a list shows too: the key that drew it goes back to that."""

    def action_picture(self) -> None:
        """The list again."""
        self.dismiss()


class ShelfPicture(Acts, Rates, RowWords, AsList):
    """A cell for each container in walking order; acts are on that very one."""

    here = "picture"
    BINDINGS = bindings("picture")
    empty = "Nothing stands anywhere yet: p puts something up."

    def source(self, columns: tuple[Column, ...]) -> Source:
        words = self.sought.lower().split()
        found = [_fitting(one, words) for one in shelves(self.host.pantry)]
        lines = {ref: line for shelf in found for ref, line in _cells(shelf)}
        marked = {key.ref for key in self.marked if isinstance(key, CellKey)}
        titled = [(shelf_title(one), one) for one in found]
        return Drawn(shelf_rows(titled, self.room, marked), lines)

    def word_on(self, line: Line) -> str:
        row = line.row
        if row is None:
            return line.word
        said = f"{MARK[row.verdict]} {line.ref} {row.food}, {row.method}{row.remark}: {until(row)}"
        amount = f", {row.amount} in it" if row.amount else ""
        return f"{clip(said, 160)}{amount}. {clean(row.reasons[0]) if row.reasons else ''}"

    def headline(self) -> str:
        line = self.table.current
        return clip(leaf(line.row.place), 30) if line and line.row else ""


def _fitting(shelf: Shelf, words: list[str]) -> Shelf:
    """What of a place holds every word."""
    rows = tuple(row for row in shelf.rows if all(word in _text(row) for word in words))
    return shelf._replace(rows=rows)


def _text(row: DueRow) -> str:
    return f"{row.code} {row.food} {row.method} {row.place} {row.state} {row.verdict}".lower()


def _cells(shelf: Shelf) -> Iterator[tuple[str, Line]]:
    for row in shelf.rows:
        for ref in row.container_ids:
            yield ref, Line(CellKey(ref), (), ref, row)


class MonthsPicture(Undoes, Pictured):
    """What passes a date in each of the months ahead; Enter opens the list of a month."""

    here = "months"
    BINDINGS = bindings("months")
    empty = "Nothing passes a date in the twelve months ahead."

    def source(self, columns: tuple[Column, ...]) -> Source:
        found = months_ahead(self.host.pantry, text=self.sought)
        lines = {one.ref: Line(MonthKey(one.ref), (), word=_month_word(one)) for one in found}
        return Drawn(month_rows(found, min(self.room, 100)), lines)

    def look(self) -> None:
        """Enter: the due list of that month."""
        self.call_later(self._list)

    async def _list(self) -> None:
        line = self.table.current
        if line is not None and isinstance(line.key, MonthKey):
            from pantry_tui.app.screens.due import DueScreen

            words = f"{self.sought} month:{line.key.ref}".strip()
            self.host.action_go("due")
            there = self.host.screen
            if isinstance(there, DueScreen):
                await there.seek(words)


def _month_word(one: MonthAhead) -> str:
    if not one.best + one.last:
        return f"Nothing passes a date in {one.name}."
    return (
        f"{one.name}: {one.best} past their best from then, {one.last} to be eaten by then or "
        "discarded. Enter lists them."
    )


@dataclass(frozen=True)
class FoodKey(Key):
    """A food of the year ahead."""

    food: str


class YearPicture(Undoes, Books, AsList):
    """When each food is there, runs low, is gone, is harvested; Enter says all of one."""

    here = "year"
    BINDINGS = bindings("year")
    empty = "Nothing to look ahead to yet: press p and put something up."

    def __init__(self) -> None:
        super().__init__()
        self._foods: dict[str, FoodAhead] = {}

    def source(self, columns: tuple[Column, ...]) -> Source:
        found = self.host.pantry.once("outlook", lambda: outlook(self.host.pantry))
        words = self.sought.lower().split()
        self._foods = {
            one.food: one
            for one in found.foods
            if all(word in f"{one.food} {one.group}".lower() for word in words)
        }
        rows = year_rows(list(self._foods.values()), self.host.pantry.today, self.room)
        return Drawn(
            rows,
            {
                name: Line(FoodKey(name), (), word=" ".join(sentences(one)))
                for name, one in self._foods.items()
            },
        )

    def look(self) -> None:
        line = self.table.current
        one = self._foods.get(line.key.food) if line and isinstance(line.key, FoodKey) else None
        if one is not None:
            drawn = plot(one, self.host.pantry.today, min(68, self.size.width - 8), HIGH)
            said = ["\n".join(drawn), *sentences(one, whole=True)]
            self.host.push_screen(Page("\n\n".join(said)))


class UnderwayPicture(Undoes, Pictured):
    """What is in progress: day n of m, and its small jobs."""

    here = "underway"
    BINDINGS = bindings("underway")
    empty = "Nothing is fermenting, curing, infusing or drying."

    def source(self, columns: tuple[Column, ...]) -> Source:
        found = underway(self.host.pantry, self.sought)
        lines = {
            one.code: Line(
                JobKey(one.code, one.food, one.jobs[0][0] if one.jobs else ""),
                (),
                one.code,
                word=_job_word(one),
            )
            for one in found
        }
        return Drawn(underway_rows(found, self.host.pantry.today, self.room), lines)

    def action_tended(self) -> None:
        """Its next small job is done."""
        line = self.table.current
        if line is None or not isinstance(line.key, JobKey) or not line.key.job:
            self.host.tell(
                "It asks for no small job. In the due list (D) f says that it is ready.",
                refused=True,
            )
            return
        key = line.key
        self.host.attempt(lambda: do(self.host, key.code, key.food, key.job))
        self.settle_list()


def _job_word(one: Underway) -> str:
    if not one.jobs:
        return f"{one.code} {one.food}: no small job to come. Enter shows it whole."
    return f"{one.code} {one.food}: f books {one.jobs[0][0]!r} as done. Enter shows it whole."
