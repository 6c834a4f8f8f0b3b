"""A jar on a day of the week: the day is chosen from those to come, or both are typed."""

from __future__ import annotations

import re
from datetime import date
from typing import TYPE_CHECKING

from pantry_tui.app.format import clip, week_day
from pantry_tui.app.screens.ask import Choose, ask_line, given
from pantry_tui.core.dates import read_coming
from pantry_tui.core.plan.appetite import days_from
from pantry_tui.errors import BadInput
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import weekdraft, wishes
from pantry_tui.services.plan.rows import by_day
from pantry_tui.services.stock.pick import name_of

if TYPE_CHECKING:
    from pantry_tui.app.screens.week import WeekScreen
    from pantry_tui.app.widgets.line import Line

_EXAMPLE = "7C friday"


def ask_pin(screen: WeekScreen, line: Line, container: str) -> None:
    """On which day the `container` of the menu, or what stands on the line; where it stands for
    neither, both are typed."""
    pantry = screen.host.pantry
    what = container or line.ref
    if not what:
        ask_line(
            screen,
            "What on which day? Its lid code, then the day.",
            _EXAMPLE,
            lambda typed: wishes.pin(pantry, *_code_and_day(typed, pantry.today)),
        )
        return
    ref = _meant(screen, line, what)
    days = _days(screen)
    food = f" {line.row.food}" if line.row is not None else ""
    title = clip(f"Put {ref}{food} on which day?", 70)
    then = given(lambda said: screen.do_now(lambda p: wishes.pin(p, ref, days[said])))
    screen.host.push_screen(Choose(title, [*days]), then)


def _meant(screen: WeekScreen, line: Line, name: str) -> str:
    """What is put there: out of bulk one meal more; of jars that stand beside the menu one that is
    on no day yet."""
    pantry, row = screen.host.pantry, line.row
    if row is not None and row.loose:
        return row.code
    if row is None or screen.planned(line) is not None:
        return name
    plan = weekdraft.load(pantry).plan or ()
    laid = [pantry.stock.containers.get(id_) for entry in plan for id_ in entry.containers]
    taken = {name_of(pantry, one) for one in laid if one is not None}
    return next((one for one in row.container_ids if one not in taken), name)


def _days(screen: WeekScreen) -> dict[str, date]:
    """The days to come of the week, each with what is on it."""
    found = weeks.week(screen.host.pantry)
    on: dict[date, list[str]] = {}
    for day, take, _ in by_day(found.take):
        on.setdefault(day, []).append(take.food)
    days = days_from(found.first, (found.end - found.first).days + 1)
    return {f"{week_day(day)}  {', '.join(on.get(day, []))}".strip(): day for day in days}


def _code_and_day(typed: str, today: date) -> tuple[str, date]:
    """("7C friday") -> its code and the day. Raises BadInput."""
    found = re.fullmatch(r"(\S+?)(?:\s*=\s*|\s+(?:on\s+)?)(\S.*)", typed.strip())
    if found is None:
        raise BadInput(f"{typed[:40]!r} names no day: write {_EXAMPLE}.")
    return found[1], read_coming(found[2], today)
