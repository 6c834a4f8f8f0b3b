"""This week: what to eat on which day, and what to take out of the freezer when."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date

from pantry_tui.app.bindings import bindings
from pantry_tui.app.format import Column, take_columns, week_day
from pantry_tui.app.lines import due_lines, heading, headings, take_lines, thaw_lines
from pantry_tui.app.screens.acting import given
from pantry_tui.app.screens.ask import Choose
from pantry_tui.app.screens.stock import StockScreen
from pantry_tui.app.widgets.rowtable import Line
from pantry_tui.core.dates import say
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import appetite, dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.rows import Done, Take, WeekView
from pantry_tui.services.stock.view import rows_named

_NEW_DISH = "a new dish ..."


class WeekScreen(StockScreen):
    """The menu from the store; below it what was said of the week, what waits, what must go."""

    here = "week"
    BINDINGS = bindings("week")
    empty = "Nothing to eat from the stores this week: press p and put something up."

    def columns(self, width: int) -> tuple[Column, ...]:
        return take_columns(width)

    def build(self, columns: tuple[Column, ...]) -> Sequence[Line]:
        found = weeks.week(self.host.pantry)
        state = "accepted" if found.accepted else "proposed"
        self._span = f"{state} for {found.people} to {_short(found.end)}"
        words = self.sought.lower().split()
        takes = [
            take
            for take in found.take
            if all(
                word in f"{take.food} {take.place} {take.code} {take.dish}".lower()
                for word in words
            )
        ]
        names = {take.containers[0] for take in takes}
        rows = rows_named(self.host.pantry, names)
        lines = take_lines(takes, columns, rows, headed=not words)
        self._days = {line.key: take.day for line, take in zip(lines, takes, strict=True)}
        if not words:
            lines = _under_dishes(lines, takes, columns)
        self._days |= {f"day|{day}": day for day, _ in found.table}
        self._days |= {f"dish|{take.dish}|{take.day}": take.day for take in takes if take.dish}
        if words:
            return lines
        thaw = thaw_lines(takes, columns, rows, self.host.pantry.today)
        self._days |= {f"thaw|{take.containers[0]}": take.day for take in takes}
        return [*thaw, *self._notes(found, columns), *lines, *self._below(found, columns)]

    def start(self, lines: Sequence[Line]) -> int:
        """At first the cursor stands on the first thing to eat."""
        return next((i for i, one in enumerate(lines) if one.key.startswith("take|")), 0)

    def _notes(self, found: WeekView, columns: tuple[Column, ...]) -> Sequence[Line]:
        return [
            line for one in found.notes for line in headings(f"note|{one}", f"! {one}", columns, 2)
        ]

    def _below(self, found: WeekView, columns: tuple[Column, ...]) -> Sequence[Line]:
        lines = [heading(f"day|{day}", f"  {text}", columns) for day, text in found.table]
        lines += [
            heading(f"left|{food}", f"  Not this week: {food} (n brings it back)", columns)
            for food in found.left_out
        ]
        for title, rows in (
            ("Must go: never taste, bin it", found.discard),
            ("Needs a look, or no published figure", found.waiting),
        ):
            if rows:
                lines.append(heading(f"head|{title}", title, columns))
                lines += due_lines(rows, columns, title)
        return lines

    def headline(self) -> str:
        return self._span

    # -- acting ----------------------------------------------------------------------------------

    def _try(self, do: Callable[[Pantry], Done]) -> None:
        self.host.attempt(lambda: do(self.host.pantry))
        self._settle_list()

    def _under(self, *kinds: str) -> str:
        """What the line under the cursor is about, "" when it is of another kind."""
        line = self.table.current
        parts = line.key.split("|") if line else [""]
        if parts[0] in kinds:
            return parts[1]
        self.host.tell("Put the cursor on a line of the menu first.", refused=True)
        return ""

    def _day(self) -> date | None:
        """The day under the cursor; None, and said so, where there is none."""
        line = self.table.current
        day = self._days.get(line.key) if line else None
        if day is None:
            self.host.tell("Put the cursor on a day of the menu first.", refused=True)
        return day

    def action_accept(self) -> None:
        """Keep the plan; on an accepted one, plan anew. Nothing is booked by either."""
        self._try(weeks.forget if weeks.accepted(self.host.pantry) else weeks.accept)

    def action_eaten(self) -> None:
        """Everything of the day under the cursor, in one booking."""
        day = self._day()
        if day is not None:
            if weeks.accepted(self.host.pantry) is None:
                weeks.accept(self.host.pantry)
            self._try(lambda p: weeks.eaten(p, day))

    def action_keep(self) -> None:
        day = self._day()
        if day is not None and (ref := self._under("take", "thaw")):
            self._try(lambda p: wishes.keep(p, ref, day))

    def action_shift(self, by: int) -> None:
        if ref := self._under("take", "thaw"):
            self._try(lambda p: wishes.shift(p, ref, by))

    def action_swap(self) -> None:
        if ref := self._under("take", "thaw"):
            self._try(lambda p: wishes.swap(p, ref))

    def action_leave_out(self) -> None:
        if what := self._under("take", "thaw", "left"):
            self._try(lambda p: wishes.leave_out(p, what))

    def action_out(self) -> None:
        day = self._day()
        if day is not None:
            self._try(lambda p: wishes.out(p, day))

    def action_dish(self) -> None:
        """One of the household's dishes on the day under the cursor."""
        day = self._day()
        if day is not None:
            names = [dish.name for dish in dishes.dishes(self.host.pantry)]
            question = Choose(f"Which dish on {say(day)}?", [*names, _NEW_DISH])
            self.app.push_screen(question, given(lambda name: self._dish(name, day)))

    def _dish(self, name: str, day: date) -> None:
        if name != _NEW_DISH:
            self._try(lambda p: wishes.cook(p, name, day))
            return
        title = "A dish of yours: its name, and the servings of each food it takes."
        self._ask_act(
            title,
            "bean soup = 4 runner beans, 4 chicken stock",
            lambda line: dishes.keep(self.host.pantry, line),
        )

    def action_table(self) -> None:
        """Who sits at the table when."""
        title = "Who eats when? Away, how many in all, or as usual; then the days."
        self._ask_act(
            title, "away 24 dec to 27 dec", lambda line: appetite.read_table(self.host.pantry, line)
        )


def _under_dishes(
    lines: Sequence[Line], takes: Sequence[Take], columns: Sequence[Column]
) -> list[Line]:
    """A line with the name of a dish above what it takes."""
    found: list[Line] = []
    named = ("", date.min)
    for line, take in zip(lines, takes, strict=True):
        if take.dish and (take.dish, take.day) != named:
            named = (take.dish, take.day)
            head = heading(f"dish|{take.dish}|{take.day}", _said(take), columns)
            found.append(
                replace(head, word="e: all of this day is eaten. h: you eat out that day.")
            )
        found.append(line)
    return found


def _said(take: Take) -> str:
    return f"{week_day(take.day):<11}{take.dish}, of:"


def _short(value: date) -> str:
    return " ".join(say(value).split()[1:3])
