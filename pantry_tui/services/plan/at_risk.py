"""What must be eaten in a week and lies on no day of it in time: what it is, and what to do."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date, timedelta
from math import inf

from pantry_tui.core import dates
from pantry_tui.core.amounts import kitchen_count
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import days_from
from pantry_tui.core.text import agreed
from pantry_tui.core.words import Group, Method, State
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import thawed_by
from pantry_tui.services.plan.freezing import freezer
from pantry_tui.services.plan.servings import servings
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.stands import containers_in, stands

#: So long after the week its end is looked beyond.
_SOON = timedelta(days=3)
#: So many containers are named one by one.
_NAMED = 3
#: What is raw, fresh or thawed, and may be frozen once it is cooked (USDA FSIS, "The Big Thaw",
#: from memory). Thawed and raw, its date would run on as it was.
_COOKED_AGAIN = frozenset({Group.MEAT, Group.FISH})
_RAW = frozenset({Method.FRESH, Method.BOUGHT})


def at_risk(
    p: Pantry,
    draft: WeekDraft,
    lies: Mapping[str, Sequence[tuple[date, float]]],
    aside: Collection[str],
) -> Iterable[tuple[date, str]]:
    """What must be eaten in this week and lies on no day in time: nobody is at home, or there is
    more of it than is eaten; each with its last day, the nearest first. `lies` has the days on
    which a container lies, each with the servings that are taken then, all of it as inf; what is
    only open `aside` the meals is on none today."""
    rest: dict[str, float] = {}
    found: dict[tuple[date, str], list[Container]] = defaultdict(list)
    first = draft.first(p.today)
    for one in stands(p):
        last = one.discard_after
        if one.line.hurried and one.usable:
            names = _named_or_counted(p, one.line.code, containers_in(p, one))
            yield (
                p.today,
                f"{names} {one.line.food} stands too warm: put it in the cold at once, or eat it "
                "now. Once its two hours are over, discard it.",
            )
            continue
        if last is None or not first <= last <= draft.end:
            continue
        if one.line.reserved or not one.usable:
            continue
        for container in containers_in(p, one):
            taken = sum(much for day, much in lies.get(container.id, ()) if day <= last)
            laid = taken == inf
            if 0 < taken < inf:
                rest[container.id] = servings(p, container) - taken
                laid = 2 * rest[container.id] < min(p.people, servings(p, container))
            if not laid or (last <= p.today and container.id in aside):
                found[last, one.line.batch].append(container)
    accepted = {id_ for entry in draft.plan or () for id_ in entry.containers}
    for (last, id_), several in sorted(found.items()):
        batch = p.stock.batches[id_]
        what = f"{_named_or_counted(p, batch.code, several)} {batch.food.name}"
        if any(one.id in rest for one in several):
            left = sum(rest.get(one.id, servings(p, one)) for one in several)
            what = f"{kitchen_count(left)} {agreed(left, 'serving', 'servings')} of {what}"
        raw = batch.method in _RAW or any(one.state is State.THAWED for one in several)
        ready = [thawed_by(p, one) for one in several]
        cook = raw and batch.food.group in _COOKED_AGAIN and freezer(p) != ""
        if last <= p.today:
            eat = "eat today, or cook it today and freeze the meal, or" if cook else "eat today or"
            yield last, f"{what}: this is the last safe day, {eat} discard."
        elif _away(p, draft, max([first, *filter(None, ready)]), last):
            ways = "cook it and freeze the meal, or give it away" if cook else "give it away"
            yield (
                last,
                f"{what} must be eaten by {dates.say(last)}, and nobody eats at home until then: "
                f"{ways} before that day, or discard it after it.",
            )
        else:
            ways = "cook it and freeze the meal" if cook else "eat it all the same"
            why = "the week has no room for it in time"
            if batch.food.name in draft.wishes.left_out:
                why = "is left out of this week"
            elif draft.plan is not None and not any(one.id in accepted for one in several):
                why = "the accepted week has no day for it"
                ways = f"accept it again (`week --accept`), {ways}"
            yield (
                last,
                f"{what} must be eaten by {dates.say(last)}, and {why}: {ways}, or give it away; "
                "discard it after that day.",
            )


def soon_after(
    p: Pantry, draft: WeekDraft, lies: Mapping[str, Sequence[tuple[date, float]]]
) -> Iterable[str]:
    """What must be eaten in the first days after the week, where more of it will be left then than
    is eaten in those days, a serving a head."""
    eats, after = appetite(p), draft.end + timedelta(days=1)
    several: dict[tuple[date, str], list[Container]] = defaultdict(list)
    for one in stands(p):
        last = one.discard_after
        if last is None or not draft.end < last <= draft.end + _SOON:
            continue
        if one.usable and not one.line.reserved and not one.line.hurried:
            several[last, one.line.batch] += containers_in(p, one)
    for (last, id_), mine in sorted(several.items()):
        taken = (sum(much for _, much in lies.get(one.id, ())) for one in mine)
        left = sum(max(0.0, servings(p, one) - much) for one, much in zip(mine, taken, strict=True))
        heads = sum(eats.sit(day) for day in days_from(after, (last - draft.end).days))
        if left <= max(heads, p.people):
            continue
        batch = p.stock.batches[id_]
        first = draft.first(p.today)
        eat = "" if _away(p, draft, first, draft.end) else "eat more of it now, "
        yield (
            f"{kitchen_count(left)} servings of {_named_or_counted(p, batch.code, mine)} "
            f"{batch.food.name} will be left after this week, and must be eaten by "
            f"{dates.say(last)}: {eat}give some away, or keep it in another way."
        )


def _away(p: Pantry, draft: WeekDraft, first: date, last: date) -> bool:
    """Whether nobody eats at home on any day up to the last."""
    eats = appetite(p)
    days = days_from(first, (last - first).days + 1)
    return not any(eats.sit(day) and day not in draft.wishes.out for day in days)


def names_of(p: Pantry, containers: Iterable[Container]) -> tuple[str, ...]:
    return tuple(name_of(p, container) for container in containers)


def _named_or_counted(p: Pantry, code: str, several: Sequence[Container]) -> str:
    """ "2A/1, 2A/2", or "7 of 2A" where they are many."""
    few = len(several) <= _NAMED
    return ", ".join(names_of(p, several)) if few else f"{len(several)} of {code}"
