"""The week's menu from the stores."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import groupby

from pantry_tui.core.model import Container
from pantry_tui.core.rotation import UNFIT, first_date
from pantry_tui.core.week import Candidate, Pick, plan
from pantry_tui.core.words import Climate, Group, Method, State, Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.pick import ordered
from pantry_tui.services.rows import Take, WeekView
from pantry_tui.services.view import rows_of

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
        frozen=frozen,
        thaw_days=0 if batch.food.group in _NO_THAW else 1,
    )


def week(p: Pantry, start: date | None = None) -> WeekView:
    """Seven days from `start` (today). Never proposes what is unsafe, unknown or still working,
    nor on a day after its date."""
    first = start or p.today
    last = first + timedelta(days=6)
    here = [c for c in p.stock.containers.values() if c.here]
    fit = [c for c in here if _may(p, c, first)]
    picks = plan([_candidate(p, c) for c in ordered(p, fit)], p.people, first)
    rows = rows_of(p, here)
    return WeekView(
        start=first,
        end=last,
        people=p.people,
        take=tuple(_takes(p, picks)),
        waiting=tuple(row for row in rows if row.verdict in (Verdict.TEND, Verdict.UNKNOWN)),
        discard=tuple(row for row in rows if row.verdict in UNFIT),
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
    for (day, code, place), group in groupby(sorted(picks, key=same), key=same):
        several = list(group)
        judged = p.judge(p.stock.containers[several[0].candidate.container])
        found.append(
            Take(
                code=code,
                food=several[0].candidate.food,
                place=place,
                count=len(several),
                servings=sum(pick.candidate.servings for pick in several),
                day=day,
                thaw_by=several[0].thaw_by,
                reasons=judged.reasons[:2],
            )
        )
    return found
