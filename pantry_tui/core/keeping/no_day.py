"""Why food has no last day, and how that is said where the day would stand."""

from __future__ import annotations

from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.words import Verdict

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
#: It was over at some hour of a day, which is named: the day before it was no last day.
_SINCE = "must go since "
#: A reason in the place of that day, where the reason itself is no such word.
_FOR_NO_DAY = {NO_LIMIT: "no set day"}


def gone_since(day: date) -> str:
    """The reason of what was over at some hour of a day, of a power cut or of two hours in the
    warm."""
    return f"{_SINCE}{day.isoformat()}"


def is_gone(why: str) -> bool:
    """Whether it has no last day since it must go, whatever its figures name."""
    return why == NOW or why.startswith(_SINCE)


def in_words(why: str) -> str:
    """The reason as a sentence says it: "must go since Wed 25 Nov 2026"."""
    if why.startswith(_SINCE):
        return f"{_SINCE}{dates.say(date.fromisoformat(why.removeprefix(_SINCE)))}"
    return why


def instead_of_day(why: str) -> str:
    """Why there is none, as it stands behind "discard after"."""
    return _FOR_NO_DAY.get(why) or in_words(why) or "none"


def instead_of_best(best: date | None, last: date | None, why: str) -> str:
    """Why a best-by date is not said, as it stands in its place; `why` is the reason for having no
    last day. A date that would stand there otherwise is in doubt."""
    if is_gone(why) or (why == DOUBT and best is None):
        return NOW if is_gone(why) else why
    if best is not None and last is not None and last < best:
        return "see discard after"
    if best is not None:
        return DOUBT
    return IN_PROGRESS if why == IN_PROGRESS else "no published figure"


def good_until(best: date | None, last: date | None, verdict: Verdict) -> date | None:
    """The best-by date as a person may read it: none where the food must go before it, since a
    later date beside an earlier one invites eating, and none of what is in doubt or is thrown
    away."""
    before = best is not None and last is not None and last < best
    none = before or verdict is Verdict.UNKNOWN or verdict in UNFIT
    return None if none else best


def why_no_good(best: date | None, last: date | None, why: str, verdict: Verdict) -> str:
    """Why there is none, as it stands in its place; `last` and `why` as a person reads them."""
    return NOW if verdict in UNFIT else instead_of_best(best, last, why)


def best_or_why(day: date | None, why: str) -> str:
    """ "Mon 1 Mar 2027" or "none (in progress)", as it stands behind "best by"."""
    return dates.say(day) if day is not None else f"none ({why})"


def best_said(day: date | None, why: str) -> str:
    """ "best by Mon 1 Mar 2027", or that it has no such day, and why."""
    return f"best by {dates.say(day)}" if day is not None else f"no best-by day ({why})"


def discarded(day: date | None, why: str) -> str:
    """ "discard after Tue 1 Dec 2026", or that it has no such day, and why."""
    if is_gone(why):
        return in_words(why)
    if day is not None:
        return f"discard after {dates.say(day)}"
    return "no discard date" if why in ("", NO_LIMIT) else f"no discard date ({why})"
