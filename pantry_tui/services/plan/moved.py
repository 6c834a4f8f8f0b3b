"""What a change to the week moves: which food or dish lay on which day, and where it lies now. Said
in one sentence, so that nobody finds on an evening that its supper went to another."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date

from pantry_tui.core.dates import say
from pantry_tui.core.log.payloads import Entry
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.at_table import beside
from pantry_tui.services.plan.weekdraft import WeekDraft, days_ahead

#: So many of them are named.
_NAMED = 4

#: The days on which each is begun, by its name: "5K chicken stock", or a dish.
Lying = Mapping[str, frozenset[date]]


def lying(p: Pantry, entries: Iterable[Entry]) -> Lying:
    """Where all of these lie on the days to come, but for what is opened beside the days."""
    found: dict[str, set[date]] = defaultdict(set)
    for entry in entries:
        if beside(p, entry):
            continue
        for day in [day for day in days_ahead(p, entry) if day >= p.today][:1]:
            found[_name(p, entry)].add(day)
    return {name: frozenset(days) for name, days in found.items()}


def arranged(p: Pantry, draft: WeekDraft) -> Collection[str]:
    """The names of what the household itself has put on a day of a proposed week: what else a
    proposal moves is no more than another proposal."""
    codes = (p.stock.containers.get(id_) for id_, day in draft.wishes.pins if day is not None)
    batches = (p.stock.batches[one.batch] for one in codes if one is not None)
    return {*(f"{one.code} {one.food.name}" for one in batches), *draft.wishes.dishes}


def off_these(
    was: Lying, now: Lying, days: frozenset[date], whole: Collection[str]
) -> tuple[Lying, Lying]:
    """Both with what lay on some `days` alone, and where it lies instead; all of the days of what
    has one of the names of `whole`."""
    none: frozenset[date] = frozenset()
    before = {name: lay if name in whole else lay & days for name, lay in was.items()}
    before = {name: lay for name, lay in before.items() if lay}
    after = {
        name: now.get(name, none) - (none if name in whole else was[name] - days) for name in before
    }
    return before, after


def told(
    was: Lying, now: Lying, only: Collection[str] | None = None, off: date | None = None
) -> tuple[str, ...]:
    """The sentence, "Moved: 5K chicken stock from Sat 28 Nov to Sun 29 Nov; on no day any more: 7H
    carrots of Sat 28 Nov."; none where nothing moved. `only` what has one of these names, and what
    lay on the day `off`."""
    moved, lost = [], []
    for name, days in sorted(was.items(), key=lambda one: (off not in one[1], min(one[1]), one[0])):
        if only is not None and name not in only and off not in days:
            continue
        here = now.get(name, frozenset())
        gone, come = sorted(days - here), sorted(here - days)
        moved += [
            f"{name} from {_short(a)} to {_short(b)}" for a, b in zip(gone, come, strict=False)
        ]
        lost += [f"{name} of {_short(day)}" for day in gone[len(come) :]]
    parts = [("Moved", moved), ("on no day any more", lost)]
    said = "; ".join(f"{head}: {_some(some)}" for head, some in parts if some)
    return (f"{said[:1].upper()}{said[1:]}.",) if said else ()


def _name(p: Pantry, entry: Entry) -> str:
    if entry.dish:
        return entry.dish
    batch = p.stock.batches[p.stock.containers[entry.containers[0]].batch]
    return f"{batch.code} {batch.food.name}"


def _some(names: Sequence[str]) -> str:
    more = f" and {len(names) - _NAMED} more" if len(names) > _NAMED else ""
    return f"{', '.join(names[:_NAMED])}{more}"


def _short(day: date) -> str:
    """Without the year, which is that of the week: "Sat 28 Nov"."""
    return say(day).rpartition(" ")[0]
