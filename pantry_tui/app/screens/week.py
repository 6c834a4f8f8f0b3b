"""This week: what to eat on which day, and what to take out of the freezer when."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import date

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, clip, leaf, take_columns
from pantry_tui.app.lines import Heading, due_lines, heading, headings
from pantry_tui.app.rowtext import until, what_is_left
from pantry_tui.app.screens.acts import Acts
from pantry_tui.app.screens.ask import Choose, given
from pantry_tui.app.screens.stock import Beside, RowWords
from pantry_tui.app.screens.weekdays import ask_dish, ask_out, ask_seats
from pantry_tui.app.weeklines import (
    DayKey,
    DishKey,
    EatenKey,
    FallenKey,
    LeftOutKey,
    RestKey,
    TakeKey,
    ThawKey,
    WarningKey,
    day_by_day,
    eaten_lines,
    stock_heading,
    take_lines,
    thaw_lines,
    warning_lines,
)
from pantry_tui.app.widgets.line import Key, Line, Listed, Source
from pantry_tui.core.dates import say
from pantry_tui.core.words import State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.plan.accepting import accept
from pantry_tui.services.plan.rows import by_day
from pantry_tui.services.rows import Done, Take, WeekView
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.view import rows_named

_NOTES = "To know of this week"
_ANEW = "plan it anew: what you arranged in it is forgotten"
_REWORK = "the days to come, for those who sit there now: today stays"


class WeekScreen(Acts, RowWords, Beside):
    """The menu from the store; below it what was said of the week, what waits, what must go."""

    here = "week"
    BINDINGS = bindings("week")
    empty = "Nothing to eat from the stores this week: press p and put something up."

    def __init__(self) -> None:
        super().__init__()
        self._days: dict[Key, date] = {}
        self._takes: dict[Key, Take] = {}
        self._accepted = False
        self.stays_on: date | None = None  # the day on which the cursor stays after an act
        self._bare: frozenset[date] = frozenset()  # days on which nobody eats at home
        self._aside: frozenset[Key] = frozenset()  # what is opened beside the meals

    def columns(self, width: int) -> tuple[Column, ...]:
        return take_columns(width, longest=self.host.pantry.longest_code)

    def source(self, columns: tuple[Column, ...]) -> Source:
        found, self._aside = weeks.week(self.host.pantry), frozenset()
        self.span(found)
        words = self.sought.lower().split()
        takes = [take for take in found.take if self.fits(take)]
        rows = rows_named(self.host.pantry, {take.containers[0] for take in takes})
        laid = by_day(takes)
        lines = take_lines(laid, columns, rows, self.marked, headed=not words)
        self._days = {line.key: one.day for line, one in zip(lines, laid, strict=True)}
        self._takes = {line.key: one.take for line, one in zip(lines, laid, strict=True)}
        if words:
            return Listed(lines)
        self._days |= {ThawKey(take.containers[0]): take.day for take in takes}
        thaw = thaw_lines(takes, rows, self.host.pantry.today)
        below = self._below(found, columns)
        gone = {day: why for day, why in found.bare.items() if day < found.first}
        self._bare = frozenset(found.bare)
        eaten = eaten_lines(found.eaten, columns, gone)
        # What must be eaten today stands above the days, what else is to be known below them.
        mine = rows_named(self.host.pantry, {one.containers[0] for one in found.fallen})
        first, fallen = warning_lines(found.urgent, found.fallen, mine, columns, self.host.said)
        rest = self._notes(filter(None, (found.no_main, *found.later)), columns)
        head = [heading(Heading(_NOTES), _NOTES)] if rest else []
        ahead = {day: why for day, why in found.bare.items() if day not in gone}
        days = day_by_day(lines, laid, ahead, fallen)
        none = headings(self.host.said(found.nothing), columns, 2) if found.nothing else []
        return Listed([*none, *thaw, *first, *eaten, *days, *head, *rest, *below])

    def _notes(self, said: Iterable[str], columns: tuple[Column, ...]) -> list[Line]:
        return [line for one in said for line in headings(f"! {self.host.said(one)}", columns, 2)]

    def span(self, found: WeekView) -> None:
        """Keep for the top line what week it is."""
        state = "accepted" if found.accepted else "proposed"
        self._accepted = found.accepted
        people = "1 person" if found.people == 1 else f"{found.people} people"
        end = _short(found.end)
        self._span = (f"{state} for {people}, to {end}", f"{state}, to {end}", state)

    def fits(self, take: Take) -> bool:
        """Whether it has all the words that are sought."""
        text = f"{take.food} {take.place} {take.code} {take.dish}".lower()
        return all(word in text for word in self.sought.lower().split())

    def start(self) -> int:
        """At first the cursor stands on the first thing to eat."""
        source = self.table.source
        lines = source.lines(0, source.total)
        return next((i for i, one in enumerate(lines) if isinstance(one.key, TakeKey)), 0)

    def _below(self, found: WeekView, columns: tuple[Column, ...]) -> Iterator[Line]:
        for day, text in found.seats_said:
            yield heading(DayKey(day), f"  {text}")
        for food in found.left_out:
            yield heading(LeftOutKey(food), f"  Skipped this week: {food} (x brings it back)")
        for title, takes in (
            ("Open beside the meals", found.beside),
            ("If you want more, these next", found.more),
            ("Better kept, to last until more comes", found.kept),
        ):
            named = rows_named(self.host.pantry, {take.containers[0] for take in takes})
            # Two jars of one line stand there once.
            mine = (named[take.containers[0]] for take in takes if take.containers[0] in named)
            stand = list({row.stamp + row.code: row for row in mine}.values())
            if stand:
                yield stock_heading(title, columns)
                lines = due_lines(stand, columns, self.marked)
                if takes is found.beside:
                    self._aside = frozenset(line.key for line in lines)
                yield from lines
        for title, rows in (
            ("Discard as its own page says, never taste", found.discard),
            ("Needs care, or no published figure", found.waiting),
        ):
            if rows:
                yield stock_heading(title, columns)
                yield from due_lines(rows, columns, self.marked)
        for one in found.cautions:
            yield from headings(f"  {self.host.said(one)}", columns)

    def headline(self) -> str:
        """Accepted or not, for whom and how long, as far as there is room behind the rooms."""
        whole, short, state = self._span
        width = self.app.size.width
        return whole if width >= 100 else short if width >= 70 else state

    def planned(self, line: Line) -> Take | None:
        take = self._takes.get(line.key)
        return take if take is not None and line.ref in take.containers else None

    def look(self) -> None:
        """Enter on the warnings shows all of them."""
        line = self.table.current
        if line is not None and isinstance(line.key, WarningKey):
            self.host.show_page(line.key.words)
        else:
            super().look()

    # -- acting ----------------------------------------------------------------------------------

    def settle_list(self) -> None:
        """After what was said of a day the cursor is on that day, wherever its food went."""
        super().settle_list()
        day, self.stays_on = self.stays_on, None
        line = self.table.current
        if day is None or (line is not None and self._days.get(line.key) == day):
            return
        source = self.table.source
        keys = [*(key for key, on in self._days.items() if on == day), DayKey(day)]
        at = [found for key in keys if (found := source.where(key)) is not None]
        if at:
            self.table.move_cursor(min(at))

    def do_now(self, do: Callable[[Pantry], Done]) -> None:
        self.host.attempt(lambda: do(self.host.pantry))
        self.settle_list()

    def _taken(self) -> str:
        """The container of the menu under the cursor; "", and said so, where there is none."""
        line = self.table.current
        if line is not None and isinstance(line.key, TakeKey | ThawKey | RestKey):
            return line.key.container
        self.host.tell("Put the cursor on a line of the menu first.", refused=True)
        return ""

    def _day(self) -> date | None:
        """The day under the cursor; None, and said so, where there is none."""
        line = self.table.current
        key = line.key if line else None
        day = (
            key.day
            if isinstance(key, DayKey | DishKey | EatenKey | FallenKey)
            else self._days.get(key)
            if key
            else None
        )
        if day is None:
            self.host.tell("Put the cursor on a day of the menu first.", refused=True)
        return day

    def action_picture(self) -> None:
        """Drawn, day by day."""
        from pantry_tui.app.screens.weekgrid import WeekGrid

        self.app.push_screen(WeekGrid())

    def action_accept(self) -> None:
        """Keep the plan; an accepted one is planned anew or reworked if one says so, since what was
        arranged in it is gone then. Nothing is booked by any of it."""
        if weeks.accepted(self.host.pantry) is None:
            self.do_now(accept)
            return
        title = "This week is accepted. Plan it anew? Or only the days to come?"
        ways = {_ANEW: weeks.forget, _REWORK: accept}
        self.host.push_screen(Choose(title, [*ways]), given(lambda said: self.do_now(ways[said])))

    def action_eaten(self) -> None:
        """Everything of the day under the cursor, in one booking; beside the meals what the cursor
        is on is opened, and once it is open it is eaten up."""
        line = self.table.current
        if line is not None and line.row is not None and line.key in self._aside:
            self.acting.open() if line.row.state is State.SEALED else self.acting.use()
            return
        day = self._day()
        if day is not None and day > self.host.pantry.today:
            thaw = f" {line.word}" if line is not None and isinstance(line.key, ThawKey) else ""
            said = f"{say(day)} is still to come: mark it when it is eaten.{thaw}"
            self.host.tell(said, refused=True)
        elif day is not None:
            self.do_now(lambda p: _eaten(p, day))

    def action_pin(self) -> None:
        """In a proposed week what the menu has stays on its day, or is free again; else it is put
        on a day."""
        line = self.table.current
        key = line.key if line is not None else None
        menu = isinstance(key, TakeKey | ThawKey | RestKey)
        if line is not None and (self._accepted or not menu):
            from pantry_tui.app.screens.pinning import ask_pin

            container = key.container if isinstance(key, TakeKey | ThawKey | RestKey) else ""
            ask_pin(self, line, container)
            return
        day = self._day()
        if day is not None and (ref := self._taken()):
            self.do_now(lambda p: wishes.keep(p, ref, day))

    def action_shift(self, by: int) -> None:
        if ref := self._taken():
            self.do_now(lambda p: wishes.shift(p, ref, by))

    def action_swap(self) -> None:
        """What could take its place, what should go first on top, which Enter takes."""
        ref = self._taken()
        if not ref:
            return
        line = self.table.current
        day = self._days.get(line.key) if line is not None else None
        found = wishes.swaps(self.host.pantry, ref, day)
        rows = rows_named(self.host.pantry, set(found))
        ways = {_could(rows[one]): one for one in found if one in rows}
        if not ways:
            self.do_now(lambda p: wishes.swap(p, ref, day=day))  # which says why there is none
            return
        food = clip(line.row.food, 40) if line is not None and line.row is not None else "it"
        question = Choose(f"Instead of {food}{f' on {say(day)}' if day else ''}: which?", [*ways])
        self.host.push_screen(
            question,
            given(lambda said: self.do_now(lambda p: wishes.swap(p, ref, ways[said], day))),
        )

    def action_skip(self) -> None:
        line = self.table.current
        left = line.key.food if line and isinstance(line.key, LeftOutKey) else ""
        if what := left or self._taken():
            self.do_now(lambda p: wishes.leave_out(p, what))

    def action_out(self) -> None:
        day = self._day()
        if day is not None:
            ask_out(self, day, away=day in self._bare)

    def action_dish(self) -> None:
        """One of the household's dishes on the day under the cursor."""
        day = self._day()
        if day is not None:
            ask_dish(self, day)

    def action_table(self) -> None:
        """Who sits at the table when."""
        line = self.table.current
        ask_seats(self, self._days.get(line.key) if line is not None else None)


def _eaten(p: Pantry, day: date) -> Done:
    """What is eaten of a proposed week accepts it; where that is refused the week stays as it was,
    and one undo takes back both."""
    with p.together():
        if weeks.accepted(p) is None:
            accept(p)
        return weeks.eaten(p, day)


def _could(row: DueRow) -> str:
    """ "pears, 7C, 4 jars, larder: best Sep 2027"."""
    left = " ".join(what_is_left(row).split())
    return f"{clip(row.food, 40)}, {row.code}, {left}, {leaf(row.place)}: {until(row)}"


def _short(value: date) -> str:
    return " ".join(say(value).split()[1:3])
