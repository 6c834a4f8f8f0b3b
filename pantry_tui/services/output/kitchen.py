"""The week as a page for the kitchen: what is eaten on each day, and one trip to fetch it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.text import clean
from pantry_tui.services.output.door import BOX
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.rows import REST, by_day
from pantry_tui.services.rows import Sheet, Take, WeekView


def kitchen(p: Pantry) -> Sheet:
    """The days, with the fetch list on the same paper."""
    view = weeks.week(p)
    taken = sorted((*view.to_come, *view.beside), key=lambda one: (one.day, one.dish, one.role))
    once = {take.containers for take in view.beside}  # of these nobody counts the days
    laid = [one for one in by_day(taken) if not (one.rest and one.take.containers in once)]
    takes: dict[date, list[Take]] = defaultdict(list)
    rows: dict[date, list[tuple[str, ...]]] = {
        day: [("", "", why, "", "", "")] for day, why in view.bare.items()
    }
    for one in laid:
        takes[one.day].append(one.take)
        rows.setdefault(one.day, []).append(_rest(one.take) if one.rest else _eaten(one.take))
    days = sorted(rows)
    title = f"This week, {dates.say(view.start)} to {dates.say(view.end)}"
    standing = dict.fromkeys(f"{take.code}: {one}" for take in taken for one in take.standing)
    return Sheet(
        title,
        ("", "code", "food", "how much", "where", "thaw from"),
        tuple(row for day in days for row in rows[day]),
        (
            *(one.told for one in view.fallen),
            *filter(None, (view.no_main,)),
            *view.notes,
            *standing,
            CAUTION,
        ),
        tuple((_day(day, takes[day], view), len(rows[day])) for day in days),
        (_fetch(taken),),
    )


def _day(day: date, takes: Sequence[Take], view: WeekView) -> str:
    """ "Wed 25 Nov 2026: chicken soup", with who is at table where that is otherwise than usual."""
    dishes = ", ".join(dict.fromkeys(clean(take.dish) for take in takes if take.dish))
    name = f"{dates.say(day)}: "  # it stands before all that is said of the day
    told = () if day in view.bare else view.table
    table = ", ".join(clean(said).removeprefix(name) for one, said in told if one == day)
    said = "; ".join(filter(None, (dishes, table)))
    return f"{dates.say(day)}: {said}" if said else dates.say(day)


def _much(take: Take) -> str:
    return clean(take.amount or take.rest_of_one or str(take.count))


def _food(take: Take) -> str:
    said = f"{clean(take.food)}, {take.now}" if take.now else clean(take.food)
    return f"{said}, for {clean(take.dish)}" if take.dish else said


def _rest(take: Take) -> tuple[str, ...]:
    """Nothing is fetched for it."""
    return (BOX, take.code, _food(take), REST, "", "")


def _eaten(take: Take) -> tuple[str, ...]:
    where = clean(take.place.rsplit("›", 1)[-1].strip())
    return (BOX, take.code, _food(take), _much(take), where, _thaw(take))


def _thaw(take: Take) -> str:
    return dates.say(take.thaw_by) if take.thaw_by else ""


def _fetch(taken: Sequence[Take]) -> Sheet:
    """One trip, with what starts to thaw when; a lid code once, for all its days."""
    lots: dict[tuple[str, str], list[Take]] = {}
    for take in sorted(taken, key=lambda one: (one.place.lower(), one.code, one.day)):
        lots.setdefault((take.place, take.code), []).append(take)
    rows = tuple(
        (clean(place), code, clean(lot[0].food), _all_of(lot), _days(lot), _thaw(_first(lot)))
        for (place, code), lot in lots.items()
    )
    heads = ("place", "code", "food", "count", "eat on", "thaw from")
    return Sheet("Fetch list, place by place", heads, rows, ())


def _all_of(lot: Sequence[Take]) -> str:
    """ "3 × 1.25 lb", or so many containers."""
    amounts: dict[str, int] = {}
    for take in lot:
        much = take.amount or take.rest_of_one
        amounts[much] = amounts.get(much, 0) + (1 if much else take.count)
    said = (
        str(times) if not much else much if times == 1 else f"{times} × {much}"
        for much, times in amounts.items()
    )
    return clean(" + ".join(said))


def _days(lot: Sequence[Take]) -> str:
    """ "Wed 25, Thu 26 Nov 2026": the month and the year stand behind the last."""
    days = [dates.say(day) for day in sorted({take.day for take in lot})]
    return ", ".join([*(day.rsplit(" ", 2)[0] for day in days[:-1]), days[-1]])


def _first(lot: Sequence[Take]) -> Take:
    """The one that has to leave the freezer first."""
    return min(lot, key=lambda one: one.thaw_by or date.max)
