"""The year ahead, a line for each food: when it is there, runs low, is gone, is harvested."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from pantry_tui.app.ahead import runs_out
from pantry_tui.app.draw.spans import Row, Span, block, fit, joined, padded
from pantry_tui.app.format import clip
from pantry_tui.app.roles import HEAD, MUTED, STYLE
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.dates import say
from pantry_tui.core.words import Verdict
from pantry_tui.services.books.rows import FoodAhead

#: Weeks that are drawn, and for so many there must be enough left that it does not run low.
WEEKS, LOW = 52, 4
_COUNT, _OUT = 6, 13
#: From so many cells on the day on which it runs out has room, else its month.
_DAYS_FROM = 60
THERE, RUNS_LOW, HARVEST = STYLE[Verdict.SOUND], STYLE[Verdict.EAT_SOON], HEAD


def year_rows(foods: Sequence[FoodAhead], today: date, width: int) -> list[Row]:
    """A line a food over one line of time: its height is the part that is left of what is there
    now, from nought; `┊` is where it is harvested next, and nothing is known beyond."""
    name = min(24, max(width // 4, 10))
    dated = _OUT if width >= _DAYS_FROM else _OUT - 3
    across = max(width - name - _COUNT - dated, 12)
    rows: list[Row] = [(Span(f"{'':{name + _COUNT}}{_months(today, across)}", MUTED),)]
    for one in foods:
        gone = runs_out(one, short=width < _DAYS_FROM)
        row = (
            Span(padded(clip(one.food, name - 1), name), "", one.food),
            Span(f"{kitchen_count(one.servings):>{_COUNT - 1}} ", MUTED, one.food),
            *_cells(one, today, across),
            Span(f" {gone}"),
        )
        rows.append(fit(joined(row), width))
    keys = (
        Span("█ there  ", THERE),
        Span(f"█ runs low: under {LOW} weeks  ", RUNS_LOW),
        Span("┊ harvest", HARVEST),
    )
    return [*rows, (), fit(keys, width)] if foods else []


def _cells(one: FoodAhead, today: date, across: int) -> list[Span]:
    """What is left in the weeks of each cell."""
    weeks = (one.servings, *one.supply)
    post = _at(one.harvest, today, across) if one.container and one.harvest else -1
    found = []
    for cell in range(across):
        week = cell * WEEKS // across
        if cell == post:
            found.append(Span("┊", HARVEST))
            continue
        if week >= len(weeks) or (0 <= post < cell):
            found.append(Span(" "))
            continue
        left = weeks[week]
        low = left < LOW * one.rate
        text = block(left / weeks[0] if weeks[0] > 0 else 0)
        found.append(Span(text, RUNS_LOW if low else THERE))
    return found


def _at(day: date, today: date, across: int) -> int:
    """The cell in which a day lies."""
    return round((day - today).days / 7 * across / WEEKS)


def _months(today: date, across: int) -> str:
    """ "now   Jan   Feb ...", each where it begins and where it has room."""
    line = "now "
    first = today.replace(day=1)
    for number in range(1, 13):
        begins = first + relativedelta(months=number)
        at = _at(begins, today, across)
        if len(line) <= at <= across - 3 and begins < today + timedelta(weeks=WEEKS):
            line += f"{'':{at - len(line)}}{say(begins).split()[2]} "
    return f"{line:<{across}}"
