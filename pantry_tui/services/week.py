"""The week's menu from the stores."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from itertools import groupby

from pantry_tui.core import dates
from pantry_tui.core.model import Container
from pantry_tui.core.rotation import UNFIT, first_date
from pantry_tui.core.week import Candidate, Pick, begun_first, plan
from pantry_tui.core.words import Climate, Group, Method, State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services import act
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.pick import name_of, ordered
from pantry_tui.services.rows import Done, Take, WeekView
from pantry_tui.services.view import everything

#: Pints in a container by its size word; a container without a known size counts as a pint.
_PINTS = {"half-pint": 0.5, "half pint": 0.5, "pint": 1.0, "quart": 2.0, "half-gallon": 4.0,
          "gallon": 8.0}  # fmt: skip

#: A full day in the refrigerator for a pack of about a pound (NCHFP, Thawing and Preparing Foods
#: for Serving); vegetables are cooked from frozen.
_NO_THAW = (Group.VEGETABLE, Group.HERB)

#: Shown in the week when a container's day is set by appetite alone.
_SHOWN_AHEAD = 120


def servings(p: Pantry, container: Container) -> float:
    """About how many servings stand in it: an estimate from the food table."""
    batch = p.stock.batches[container.batch]
    food = p.tables.index.find(batch.food.name)
    per_pint = food.servings_per_pint if food and food.servings_per_pint else 4.0
    size = batch.size.lower()
    pints = next((n for word, n in _PINTS.items() if size.startswith(word)), 1.0)
    return per_pint * pints


def _candidate(p: Pantry, container: Container) -> Candidate:
    batch = p.stock.batches[container.batch]
    judged = p.judge(container)
    ahead = [day for day in (judged.best_by, judged.discard_after) if day and day >= p.today]
    frozen = p.stock.places[container.place].climate is Climate.FREEZER
    return Candidate(
        container=container.id,
        food=batch.food.name,
        group=batch.food.group,
        servings=servings(p, container),
        last=min(ahead, default=None),
        must=container.state in (State.OPEN, State.THAWED) and not frozen,
        safe_until=judged.discard_after,
        frozen=frozen,
        thaw_days=0 if batch.food.group in _NO_THAW else 1,
    )


_DRAFT = "week"


def week(p: Pantry, start: date | None = None) -> WeekView:
    """Seven days from `start` (today), or the week that was accepted while it lasts.

    Never proposes what is unsafe, unknown or still working, nor on a day after its date.
    """
    kept = accepted(p) if start is None else None
    return kept or proposed(p, start)


def accept(p: Pantry, start: date | None = None) -> Done:
    """Keep this week's plan. Nothing is booked until it is eaten."""
    view = proposed(p, start)
    plan = [
        {"day": take.day.isoformat(), "containers": list(take.containers),
         "thaw": take.thaw_by.isoformat() if take.thaw_by else None}
        for take in view.take
    ]  # fmt: skip
    p.store.keep_draft(_DRAFT, {"from": view.start.isoformat(), "plan": plan})
    return Done(f"Kept the week from {dates.say(view.start)}; mark each day when it is eaten.")


def forget(p: Pantry) -> Done:
    """Plan anew."""
    p.store.keep_draft(_DRAFT, None)
    return Done("The week is planned anew.")


def accepted(p: Pantry) -> WeekView | None:
    """The accepted week with what of it is still to be eaten and still fit; None without one."""
    kept = p.store.draft(_DRAFT)
    if kept is None:
        return None
    first = date.fromisoformat(kept["from"])
    last = first + timedelta(days=6)
    if not first <= p.today <= last:
        return None
    by_name = {name_of(p, c): c for c in p.stock.containers.values() if c.here}
    takes: list[Take] = []
    for entry in kept["plan"]:
        left = [by_name[name] for name in entry["containers"] if name in by_name]
        fit = [c for c in left if p.judge(c).verdict not in UNFIT]
        if fit:
            thaw = date.fromisoformat(entry["thaw"]) if entry["thaw"] else None
            takes.append(_take(p, fit, date.fromisoformat(entry["day"]), thaw))
    return _view(p, first, takes, accepted=True)


def eaten(p: Pantry, day: date) -> Done:
    """Book all that the accepted week has for a day, in one transaction. Raises Refused."""
    view = accepted(p)
    if view is None:
        raise Refused("No week is accepted yet: accept it first.")
    names = [name for take in view.take if take.day == day for name in take.containers]
    if not names:
        raise Refused(f"Nothing is left to eat for {dates.say(day)}.")
    done = act.several(p, names, lambda ref: act.use(p, ref, any_=True))
    return Done(f"Booked {dates.say(day)} as eaten: {', '.join(names)}.", (), done.containers)


def proposed(p: Pantry, start: date | None = None) -> WeekView:
    """A fresh plan of seven days."""
    first = start or p.today
    here = [c for c in p.stock.containers.values() if c.here]
    fit = [c for c in here if _may(p, c, first)]
    candidates = [_candidate(p, c) for c in ordered(p, fit)]
    picks = plan(begun_first(candidates, p.appetite, first), p.appetite, first)
    return _view(p, first, _takes(p, picks))


def _view(p: Pantry, first: date, takes: Sequence[Take], *, accepted: bool = False) -> WeekView:
    rows = everything(p)
    return WeekView(
        start=first,
        end=first + timedelta(days=6),
        people=p.people,
        take=tuple(takes),
        waiting=tuple(row for row in rows if row.verdict in (Verdict.TEND, Verdict.UNKNOWN)),
        discard=tuple(row for row in rows if row.verdict in UNFIT),
        accepted=accepted,
    )


def _may(p: Pantry, container: Container, first: date) -> bool:
    judged = p.judge(container)
    if judged.verdict in UNFIT or judged.verdict in (Verdict.UNKNOWN, Verdict.TEND):
        return False
    if judged.discard_after is not None and judged.discard_after < first:
        return False
    batch = p.stock.batches[container.batch]
    if container.state in (State.OPEN, State.THAWED):
        return True
    dated = first_date(judged)
    keeps_on = dated != date.max and (dated - first).days > _SHOWN_AHEAD
    return not keeps_on or batch.method is not Method.BOUGHT


def _takes(p: Pantry, picks: list[Pick]) -> list[Take]:
    def same(pick: Pick) -> tuple[date, str, str]:
        container = p.stock.containers[pick.candidate.container]
        return pick.day, p.stock.batches[container.batch].code, p.where(container)

    found = []
    for (day, _, _), group in groupby(sorted(picks, key=same), key=same):
        several = list(group)
        containers = [p.stock.containers[pick.candidate.container] for pick in several]
        found.append(_take(p, containers, day, several[0].thaw_by))
    return found


def _take(p: Pantry, containers: Sequence[Container], day: date, thaw_by: date | None) -> Take:
    batch = p.stock.batches[containers[0].batch]
    return Take(
        code=batch.code,
        food=batch.food.name,
        place=p.where(containers[0]),
        count=len(containers),
        servings=sum(servings(p, container) for container in containers),
        day=day,
        thaw_by=thaw_by,
        reasons=p.judge(containers[0]).reasons[:2],
        containers=tuple(name_of(p, container) for container in containers),
    )
