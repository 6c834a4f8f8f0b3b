"""The week with what the household says of it as wishes; to keep what it says, and tell what that
moves."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from datetime import date

from pantry_tui.core.log.payloads import Entry
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import moved, weekdraft
from pantry_tui.services.plan.week import accept_anew, lying
from pantry_tui.services.plan.weekdraft import WeekDraft, days_ahead


def wished_week(p: Pantry) -> WeekDraft:
    """The week that runs; an accepted one with its plan as wishes, so that only what is asked for
    changes."""
    draft = weekdraft.load(p)
    if draft.plan is None:
        return draft
    return draft.with_wishes(pins=pins_of(p, draft.plan))


def pins_of(p: Pantry, entries: Iterable[Entry]) -> tuple[tuple[str, date], ...]:
    """What is still to be eaten of them, each container on its day; what lies on a day that is gone
    and was not marked stays there until somebody says whether it was eaten."""
    return tuple(
        (id_, days[0])
        for entry in entries
        if (days := days_ahead(p, entry)) and days[0] >= p.today
        for id_ in entry.containers
    )


@booked
def keep_wishes(
    p: Pantry,
    draft: WeekDraft,
    said: str,
    names: Collection[str] = (),
    off: date | None = None,
    but: str = "",
) -> Done:
    """What moves by it is told, with what was asked for by its name; of a proposed week what the
    household itself put on a day, and what lay on the day `off`; nothing of a food `but`, of which
    it is said that none comes."""
    old = weekdraft.load(p)
    was = {name: days for name, days in _lying(p).items() if name.partition(" ")[2] != but}
    words = said.partition(";")[0].rstrip(".")
    if draft.plan is None:
        weekdraft.save(p, draft, words)
    else:
        accept_anew(p, draft, words)
    only = {*moved.arranged(p, old), *names} if draft.plan is None else None
    return Done(said, moved.told(was, _lying(p), only, off))


def _lying(p: Pantry) -> moved.Lying:
    return moved.lying(p, lying(p, weekdraft.load(p)))
