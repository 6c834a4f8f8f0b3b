"""What is past its best is safe, and gets no better by waiting: it is wanted within a quarter of a
year. Raw crops go soft, all of them. Common practice, no source. Pure."""

from __future__ import annotations

from datetime import date, timedelta

from pantry_tui.core.words import Method

PAST_BEST = timedelta(weeks=13)
RAW = frozenset({Method.CELLAR, Method.FRESH})


def wanted_by(best: date | None, method: Method | None, today: date) -> date | None:
    """Its best-by day while that is ahead; of a raw crop past it the day by which it is wanted;
    None where nothing hurries it any more."""
    if best is None or best >= today:
        return best
    last = best + PAST_BEST
    return last if method in RAW and last >= today else None
