"""The months ahead: how much passes a date in each, split by what happens to it then."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.app.draw.spans import Row, Span, bar, fit
from pantry_tui.app.format import clip
from pantry_tui.app.roles import HEAD, MUTED, STYLE
from pantry_tui.core.words import MARK, Verdict
from pantry_tui.services.stock.months import MonthAhead

_NAME, _COUNT = 10, 5
_TITLE = "What passes a date, month by month"


def month_rows(found: Sequence[MonthAhead], width: int) -> list[Row]:
    """A line a month, its bar filled with the mark of what its containers become. The scale begins
    at nought and is the same for all."""
    most = max((one.best + one.last for one in found), default=0)
    room = max(width - _NAME - _COUNT - 2, 4)
    rows: list[Row] = [(Span(clip(_TITLE, width), HEAD),), ()]
    for one in found:
        count = one.best + one.last
        last = bar(one.last / most if most else 0, room, MARK[Verdict.DISCARD])
        best = bar(one.best / most if most else 0, room - len(last), MARK[Verdict.PAST_BEST])
        rows.append(
            fit(
                (
                    Span(
                        f"{one.name:<{_NAME}}{count:>{_COUNT}}  ", "" if count else MUTED, one.ref
                    ),
                    Span(last, STYLE[Verdict.DISCARD], one.ref),
                    Span(best, STYLE[Verdict.PAST_BEST], one.ref),
                ),
                width,
            )
        )
    said = (
        Span(
            f"{MARK[Verdict.DISCARD]} must be eaten by then, or discarded   ",
            STYLE[Verdict.DISCARD],
        ),
        Span(
            f"{MARK[Verdict.PAST_BEST]} past best from then, still safe", STYLE[Verdict.PAST_BEST]
        ),
    )
    return [*rows, (), *((fit((one,), width)) for one in said)]
