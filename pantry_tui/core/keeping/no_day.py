"""Why food has no last day, and how that is said where the day would stand."""

from __future__ import annotations

from datetime import date

from pantry_tui.core import dates

#: Why there is no day after which it is discarded.
NO_LIMIT, NOTHING, IN_PROGRESS, PROCESS, NO_DAY, DOUBT, NOW = (
    "no limit",
    "nothing published",
    "in progress",
    "process in doubt",
    "day unknown",
    "in doubt",
    "must go now",
)
#: A reason in the place of that day, where the reason itself is no such word.
_FOR_NO_DAY = {NO_LIMIT: "no set day"}


def instead_of_day(why: str) -> str:
    """Why there is none, as it stands behind "discard after"."""
    return _FOR_NO_DAY.get(why, why) or "none"


def instead_of_best(best: date | None, last: date | None, why: str) -> str:
    """Why a best-by date is not said, as it stands in its place; `why` is the reason for having no
    last day. A date that would stand there otherwise is in doubt."""
    if why == NOW or (why == DOUBT and best is None):
        return why
    if best is not None and last is not None and last < best:
        return "see discard after"
    if best is not None:
        return DOUBT
    return IN_PROGRESS if why == IN_PROGRESS else "no published figure"


def best_or_why(day: date | None, why: str) -> str:
    """ "Mon 1 Mar 2027" or "none (in progress)", as it stands behind "best by"."""
    return dates.say(day) if day is not None else f"none ({why})"


def best_said(day: date | None, why: str) -> str:
    """ "best by Mon 1 Mar 2027", or that it has no such day, and why."""
    return f"best by {dates.say(day)}" if day is not None else f"no best-by day ({why})"


def discarded(day: date | None, why: str) -> str:
    """ "discard after Tue 1 Dec 2026", or that it has no such day, and why."""
    if why == NOW:
        return NOW
    if day is not None:
        return f"discard after {dates.say(day)}"
    return "no discard date" if why in ("", NO_LIMIT) else f"no discard date ({why})"
