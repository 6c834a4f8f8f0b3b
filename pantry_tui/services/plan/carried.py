"""What is left of an open jar whose days were eaten as planned. Nobody measures a serving: the log
holds that it was opened, and the plan says how many ate of it on how many days."""

from __future__ import annotations

from collections.abc import Mapping

from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.model import Container
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import beside
from pantry_tui.services.plan.servings import servings

#: What stands open is never said to be empty: whoever finishes it books it.
_LAST = 1.0


def left_of_week(p: Pantry, container: Container) -> float:
    """Servings in what is open or thawed: what was drawn of it is told, else its days of the last
    accepted week that were marked eaten are taken off."""
    whole = servings(p, container)
    if container.left != container.first:
        return whole
    rest = p.once("left of the week", lambda: _rests(p)).get(container.id)
    return whole if rest is None else max(min(whole, _LAST), min(whole, rest))


def _rests(p: Pantry) -> Mapping[str, float]:
    """By container, what its entry of the week held less what its eaten days took."""
    week = p.home.week
    found: dict[str, float] = {}
    for entry in (week.entries or ()) if week is not None else ():
        if not entry.amount and entry.booked and not beside(p, entry):
            rest = _rest(p, entry)
            found |= dict.fromkeys(entry.containers, rest)
    return found


def _rest(p: Pantry, entry: Entry) -> float:
    """Each container of an entry is eaten by all who sit there, day by day."""
    eaten = {day for day, group in entry.booked if p.stands(group)}
    taken = sum(appetite(p).sit(day) for day in eaten)
    return entry.servings / len(entry.containers) - taken
