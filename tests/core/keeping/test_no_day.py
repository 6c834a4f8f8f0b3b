"""What stands in the place of a date that food has not."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.keeping.no_day import (
    DOUBT,
    IN_PROGRESS,
    NO_DAY,
    NO_LIMIT,
    NOTHING,
    NOW,
    PROCESS,
    discarded,
    gone_since,
    instead_of_best,
    instead_of_day,
)

MAY, JUNE = date(2027, 5, 1), date(2027, 6, 1)


@pytest.mark.parametrize(
    ("why", "said"),
    [
        (NO_LIMIT, "no set day"), ("", "none"), (NOTHING, "nothing published"),
        (IN_PROGRESS, "in progress"), (PROCESS, "process in doubt"), (NO_DAY, "day unknown"),
        (DOUBT, "in doubt"), (gone_since(date(2027, 5, 1)), "must go since Sat 1 May 2027"),
    ],
)  # fmt: skip
def test_why_there_is_no_last_day(why: str, said: str) -> None:
    assert instead_of_day(why) == said


@pytest.mark.parametrize(
    ("best", "last", "why", "said"),
    [
        (None, None, "", "no published figure"), (None, JUNE, "", "no published figure"),
        (None, None, IN_PROGRESS, "in progress"), (None, None, NOTHING, "no published figure"),
        # The last day comes before it: that one counts.
        (JUNE, MAY, "", "see discard after"), (JUNE, JUNE, "", "in doubt"),
        (MAY, JUNE, "", "in doubt"), (MAY, None, IN_PROGRESS, "in doubt"),
        # What must go has no day at all.
        (JUNE, MAY, NOW, "must go now"), (None, None, NOW, "must go now"),
        (JUNE, None, gone_since(MAY), "must go now"),
    ],
)  # fmt: skip
def test_why_no_best_by_is_said(best: date | None, last: date | None, why: str, said: str) -> None:
    assert instead_of_best(best, last, why) == said


@pytest.mark.parametrize(
    ("day", "why", "said"),
    [
        (MAY, "", "discard after Sat 1 May 2027"), (MAY, NOTHING, "discard after Sat 1 May 2027"),
        (None, "", "no discard date"), (None, NO_LIMIT, "no discard date"),
        (None, NOTHING, "no discard date (nothing published)"),
        (None, DOUBT, "no discard date (in doubt)"), (MAY, NOW, "must go now"),
        (None, gone_since(MAY), "must go since Sat 1 May 2027"),
    ],
)  # fmt: skip
def test_the_last_day_or_why_there_is_none(day: date | None, why: str, said: str) -> None:
    assert discarded(day, why) == said
