"""What of an accepted week is not sound any more, judged as of now, and what could come in its
stead: told on its day, so that nobody eats it unawares nor finds the day empty."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.log.payloads import Entry, Fate
from pantry_tui.core.model import Container
from pantry_tui.core.plan.menu import Candidate, Why
from pantry_tui.core.words import Role
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_risk import names_of
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.rows import Fallen, Instead
from pantry_tui.services.plan.weekdraft import WeekDraft, days_at_home, fit_on
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.stands import of

#: What became of what was planned and not eaten.
_GONE: dict[str, str] = {
    Fate.DISCARDED: "it was discarded",
    Fate.GIVEN: "it was given away",
    Fate.MISSING: "it is missing",
}


def soonest(p: Pantry, draft: WeekDraft, thaw_days: int, ready: date | None = None) -> date:
    """The first day on which what takes so many days to thaw, or is `ready` on a day, can be
    eaten."""
    first = draft.first(p.today)
    if thaw_days:
        first = appetite(p).thaws_by(first, thaw_days)
    return max(first, ready or first)


def could_come(p: Pantry, draft: WeekDraft, one: Candidate, role: Role, day: date) -> bool:
    """Whether it is of that role at table and can be eaten on that day by this household."""
    eats = appetite(p)
    return (
        one.at_table is role
        and one.food not in draft.wishes.left_out
        and eats.eats(one.food, one.group)
        and soonest(p, draft, one.thaw_days, one.ready) <= day
        and eats.takes_out(day, one.thaw_days)
        and one.fit_on(day)
        and one.may_open
    )


def why_not(p: Pantry, container: Container, day: date) -> tuple[str, str]:
    """In words, why it is not fit on that day: what it is, and the reason."""
    judged, stand = p.judge(container), of(p, container)
    why = judged.reasons[0] if judged.reasons else ""
    if stand.line.hurried and judged.usable:
        return "it stands too warm", ""  # until when is said of all that does
    if judged.usable and stand.needs_care(day):
        return "see to it first", " ".join((*judged.standing, why))
    if judged.usable and judged.discard_after is not None and day > judged.discard_after:
        return f"its last safe day is {dates.say(judged.discard_after)}", why
    return judged.verdict.said, why


def fallen(
    p: Pantry, draft: WeekDraft, entries: Iterable[Entry], coming: Sequence[Candidate]
) -> Iterator[Fallen]:
    """By day, what of the accepted week is gone uneaten, not fit then, or in doubt; with each the
    next of `coming` that could take its place, or that there is none."""
    first = draft.first(p.today)
    eats = appetite(p)
    lies = ((entry, days_at_home(p, eats, entry)) for entry in entries)
    ahead = [(entry, [day for day in days if day >= first]) for entry, days in lies]
    taken = {id_ for entry, _ in ahead for id_ in entry.containers}
    # What the household put there itself it knows of.
    asked = {id_ for entry, _ in ahead if entry.why == Why.KEPT for id_ in entry.containers}
    told: set[tuple[str, tuple[str, ...]]] = set()
    for entry, days in sorted(ahead, key=lambda one: one[1][:1]):
        if not days:
            continue
        found: dict[tuple[str, str, bool], list[Container]] = defaultdict(list)
        for id_ in entry.containers:
            container = p.stock.containers.get(id_)
            if container is not None and container.fate in _GONE:
                found[_GONE[container.fate], "", False].append(container)
            if container is None or not container.here:
                continue
            stays = fit_on(p, container, days[0])
            unknown = of(p, container).asks and id_ not in asked
            if not stays or unknown:
                found[*why_not(p, container, days[0]), stays].append(container)
        for (said, why, stays), some in found.items():
            batch = p.stock.batches[some[0].batch]
            free = [one for one in coming if one.container not in taken]
            other = _instead(p, draft, entry, some[0], days[0], free)
            taken |= {other.container} if other is not None else set()
            names = names_of(p, some)
            once = (why, names) not in told  # of a crate that lies on several days
            told.add((why, names))
            yield Fallen(
                days[0],
                batch.code,
                batch.food.name,
                names,
                said,
                why if once else "",
                _named(p, other, days[0]) if other is not None else None,
                entry.dish,
                stays,
            )


def _instead(
    p: Pantry,
    draft: WeekDraft,
    entry: Entry,
    gone: Container,
    day: date,
    coming: Iterable[Candidate],
) -> Candidate | None:
    """Another of the same food, else the next of its role at table; in a dish only the same."""
    batch = p.stock.batches[gone.batch]
    food = batch.food.name
    role = role_at_table(p, food, batch.food.group, batch.method, drawn=gone.bulk)
    could = [one for one in coming if could_come(p, draft, one, role, day)]
    same = (one for one in could if one.food == food)
    return next(same, None if entry.dish else next(iter(could), None))


def _named(p: Pantry, one: Candidate, day: date) -> Instead:
    container = p.stock.containers[one.container]
    thaws = day - timedelta(days=one.thaw_days) if one.thaw_days else None
    return Instead(one.food, name_of(p, container), p.where(container), thaws)
