"""What a screen saw, and when a person says that something happened."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.model import DAY_MIN, When
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.clock import ahead
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import lines

if TYPE_CHECKING:
    from pantry_tui.services.booking import Happened


_NOON = 12 * 60


class At(NamedTuple):
    """The day on which it happened, and the minute of it where the hour is known; `zone` is by how
    many minutes that clock was ahead of Greenwich, where it was said."""

    day: date
    minute: int | None = None
    zone: int | None = None


def when(at: At | None) -> Happened:
    """For `Pantry.book`."""
    if at is None:
        return {"day": None, "at": None, "zone": None}
    return {"day": at.day, "at": at.minute, "zone": at.zone}


def first_minute(p: Pantry, at: At) -> int:
    """The first minute that it may have been, as `When` counts it, by the clock of that day."""
    then = p.clock.told(at.day, at.minute or 0, at.zone) or p.clock.told(at.day, _NOON)
    zone = ahead(then[0]) if then else p.clock.now.zone
    return at.day.toordinal() * DAY_MIN + (at.minute or 0) - zone


def last_minute(p: Pantry, at: At) -> int:
    """The last minute that it may have been."""
    return first_minute(p, at) + (DAY_MIN - 1 if at.minute is None else 0)


def told_moment(p: Pantry, at: At | None) -> When | None:
    """The last minute that it may have been, where that is before now; None where it is now."""
    if at is None:
        return None
    now, last = p.clock.now, last_minute(p, at)
    return When(last, last, at.day, now.zone) if last < now.last else None


def past(p: Pantry, at: At | None) -> At | None:
    """The same, refused where it is still to come. Raises BadInput."""
    if at is not None and at.day > p.today:
        raise BadInput(f"{dates.say(at.day)} is still to come: give the day it happened.")
    return at


def still(p: Pantry, ref: str, saw: str) -> None:
    """Raises Refused, naming what it is now, where a container is not as a screen showed it."""
    if not saw:
        return
    code, _, number = ref.partition("/")
    mine = lines.of_code(p, normal_code(code), all_of_it=False)
    named = [row for row in mine if not number or f"{row.code}/{number}" in row.container_ids]
    if any(row.stamp == saw for row in named):
        return
    if not named:
        raise Refused(f"{ref} is not here any more: look again.")
    now = named[0]
    raise Refused(
        f"{ref} has changed since it was shown: it is {now.state} and in {now.place} now, "
        f"{now.verdict.said}. Look again, then repeat."
    )
