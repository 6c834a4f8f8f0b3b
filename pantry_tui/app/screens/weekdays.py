"""What is said of a day of the week: who sits there, that all eat out, a dish of one's own. The
cursor stays on that day, wherever its food goes."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.app.screens.ask import Choose, ask_line, given
from pantry_tui.app.screens.meant import WHO_EATS
from pantry_tui.core.dates import say
from pantry_tui.services.done import Done
from pantry_tui.services.plan import appetite, cooking, wishes

if TYPE_CHECKING:
    from pantry_tui.app.screens.week import WeekScreen

_OUT = "eat out that day"
_NEW_DISH = "a new dish ..."


def ask_out(week: WeekScreen, day: date, *, away: bool) -> None:
    """Eat out that day, or no more; where guests are to come it is asked first."""

    def out(_: str = "") -> None:
        week.stays_on = day
        week.do_now(lambda p: wishes.out(p, day))

    heads = appetite.guests_on(week.host.pantry, day)
    if heads and not away:
        title = f"{say(day)}: {heads} at the table. Eat out all the same?"
        week.host.push_screen(Choose(title, [_OUT]), given(out))
    else:
        out()


def ask_seats(week: WeekScreen, day: date | None) -> None:
    """Who sits at the table when."""

    def seat(typed: str) -> Done:
        week.stays_on = day
        return appetite.read_table(week.host.pantry, typed)

    ask_line(week, WHO_EATS, "6 from 24 dec to 2 jan", seat)


def ask_dish(week: WeekScreen, day: date) -> None:
    """One of the household's dishes on that day, or a new one."""
    names = {_stands(one): one.dish for one in cooking.cook(week.host.pantry, most=99)}
    title = f"Which dish on {say(day)}?"
    question = Choose(title, [*names, _NEW_DISH], stays=_NEW_DISH, spelled=True)

    def chosen(said: str) -> None:
        _dish(week, names.get(said, ""), day, question.typed.strip())

    week.app.push_screen(question, given(chosen))


def _dish(week: WeekScreen, name: str, day: date, typed: str) -> None:
    """A dish of that name; else a new one, of which that much is `typed` already."""
    if name:
        week.stays_on = day
        week.do_now(lambda p: wishes.cook(p, name, day))
        return

    def cook(line: str) -> Done:
        week.stays_on = day
        return wishes.cook_new(week.host.pantry, line, day)

    ask_line(
        week,
        f"A dish of yours for {say(day)}: its name, and the servings of each food it takes.",
        "bean soup = 4 runner beans, 4 chicken stock",
        cook,
        value=typed,
    )


def _stands(one: cooking.Cooked) -> str:
    """ "bean soup", or "bean soup, lacks 4 chicken stock"."""
    lacks = ", ".join(f"{part.servings:g} {part.food}" for part in one.lacks)
    return f"{one.dish}, lacks {lacks}" if lacks else one.dish
