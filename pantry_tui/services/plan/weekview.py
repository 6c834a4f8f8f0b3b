"""The week as it is shown: what is taken when and why, what comes next, what is at risk."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence
from datetime import date, timedelta
from itertools import islice
from math import inf

from pantry_tui.core import dates
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import at_table, days_from
from pantry_tui.core.plan.menu import Candidate, Menu
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Role, State, Verdict
from pantry_tui.services.batchwork import tending
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_risk import at_risk, names_of, soon_after
from pantry_tui.services.plan.at_table import beside, role_at_table
from pantry_tui.services.plan.carried import left_of_week
from pantry_tui.services.plan.eaten_today import still_asked
from pantry_tui.services.plan.feasts import for_feasts, for_the_day_after
from pantry_tui.services.plan.instead import fallen, why_not
from pantry_tui.services.plan.rows import EAT_OUT, Take, WeekView
from pantry_tui.services.plan.standby import bare, in_cold_water, mains_last, sentences, standby
from pantry_tui.services.plan.two_mains import second_mains
from pantry_tui.services.plan.was_eaten import was_eaten
from pantry_tui.services.plan.weekdraft import WeekDraft, days_at_home, fit_on, left_of
from pantry_tui.services.plan.weeknotes import (
    days_gone,
    no_day_until_seen_to,
    no_figure,
    no_main,
    not_booked,
    told_later,
)
from pantry_tui.services.plan.why import reasons
from pantry_tui.services.stock.fit import fit
from pantry_tui.services.stock.lines import rows
from pantry_tui.services.stock.pick import name_of
from pantry_tui.services.stock.rows import DueRow
from pantry_tui.services.stock.stands import of, stands
from pantry_tui.services.stock.warmth import is_frozen

#: So many lines of what comes next are shown, and of what is kept.
_MORE, _KEPT = 12, 6


def view(
    p: Pantry,
    draft: WeekDraft,
    entries: Sequence[Entry],
    menu: Menu | None,
) -> WeekView:
    """`menu` is what a plan of this day takes, and what comes after it."""
    eats = appetite(p)
    asked = still_asked(p, draft, entries)
    entries = asked.entries
    at_home = {entry: days_at_home(p, eats, entry) for entry in entries}
    here = [
        (entry, left)
        for entry, days in at_home.items()
        if days and (left := left_of(p, entry, days))
    ]
    second = second_mains(p, draft, here)
    takes, rests = [], False
    so_far: dict[str, float] = defaultdict(float)
    for entry, left in here:
        food = p.stock.batches[left[0].batch].food.name
        so_far[food] += _part(p, entry, left)
        take = _take(p, entry, left, so_far[food], second.get(entry, ""))
        takes.append((take, beside(p, entry)))
        rests = rests or (take.role == Role.MAIN and entry.later >= 1)
    meals = tuple(take for take, aside in takes if not aside)
    aside = tuple(take for take, aside in takes if aside)
    first = draft.first(p.today)
    planned = {id_ for entry in entries for id_ in entry.containers}
    lies: dict[str, list[tuple[date, float]]] = defaultdict(list)
    for entry, days in at_home.items():
        ahead = [day for day in days if day >= first]
        for id_ in entry.containers if ahead else ():
            lies[id_].append((ahead[0], entry.servings if entry.amount else inf))
    open_aside = {id_ for entry, _ in here if beside(p, entry) for id_ in entry.containers}
    risks = list(at_risk(p, draft, lies, open_aside))
    urgent = tuple(said for last, said in risks if last <= p.today)
    found = menu or Menu((), ())
    picked = tuple(pick.candidate for pick in found.picks)
    # A plan that is accepted already has less of them than one that is made now.
    coming = (*picked, *found.more) if draft.plan is not None else found.more
    more, kept = (_but_open(some, aside) for some in (coming, found.kept))
    stand = (*found.more, *found.kept, *picked)
    no_thaw = standby(p, meals, stand, first)
    return WeekView(
        start=draft.start,
        end=draft.end,
        people=p.people,
        take=meals,
        beside=aside,
        more=tuple(islice(_more(p, first, more, planned), _MORE)),
        kept=tuple(islice(_more(p, first, kept, planned), _KEPT)),
        waiting=_rows(p, (Verdict.TEND, Verdict.UNKNOWN)),
        discard=_rows(p, UNFIT),
        accepted=draft.plan is not None,
        notes=(
            *urgent,
            *not_booked(p, p.today),
            *days_gone(p, draft),
            *told_later(p, draft),
            *_dropped(p, draft),
            *(said for last, said in risks if last > p.today),
            *soon_after(p, draft, lies),
            *for_feasts(p, draft, planned),
            *(() if rests else for_the_day_after(p, draft, (*coming, *found.kept), lies)),
            *mains_last(eats, found.mains, first),
            *sentences(no_thaw),
            *in_cold_water(p, meals, stand, first),
            *bare(p, draft, meals, no_thaw, found.mains),
            *tending.sentences(p, draft.start, draft.end),
            *no_day_until_seen_to(p, draft),
            *no_figure(p, draft, planned, {one.container for one in (*coming, *found.kept)}),
            *_still_open(p, found.over),
        ),
        no_main=no_main(meals, found.mains) if menu else "",
        table=tuple(_table(p, draft)),
        left_out=tuple(sorted(draft.wishes.left_out)),
        stocked=any(one.usable for one in stands(p)),
        no_thaw=tuple(no_thaw),
        cautions=(CAUTION,),
        eaten=tuple(_eaten(p, draft, asked.eaten)),
        first=first,
        urgent=urgent,
        fallen=tuple(fallen(p, draft, draft.plan or (), (*coming, *found.kept))),
    )


def _eaten(p: Pantry, draft: WeekDraft, by_hand: str) -> Iterable[tuple[date, str]]:
    """What was eaten on which of its days, today also `by_hand`."""
    found = dict(was_eaten(p, draft))
    if by_hand:
        said = found.get(p.today, "")
        found[p.today] = ", ".join(filter(None, (by_hand, said)))
    return sorted(found.items())


def _but_open(some: Iterable[Candidate], aside: Sequence[Take]) -> list[Candidate]:
    """Without the kinds of which one is open beside the days."""
    open_now = {take.role for take in aside}
    return [one for one in some if one.at_table not in open_now]


def _rows(p: Pantry, verdicts: Collection[Verdict]) -> tuple[DueRow, ...]:
    """What has one of these verdicts, by date."""
    mine = [one for one in stands(p) if one.verdict in verdicts]
    mine.sort(key=lambda one: (one.line.first_date, one.line.code, one.id))
    return tuple(rows(p, [one.id for one in mine])) if mine else ()


def _more(
    p: Pantry, start: date, coming: Sequence[Candidate], planned: Collection[str]
) -> Iterable[Take]:
    """What comes next, the first of each batch and place, in order."""
    seen: set[tuple[str, str]] = set()
    for one in coming:
        container = p.stock.containers[one.container]
        key = container.batch, container.place
        taken = one.container in planned and not one.bulk
        if taken or key in seen or not fit(p, container) or not one.may_open:
            continue
        seen.add(key)
        batch, judged = p.stock.batches[container.batch], p.judge(container)
        ready = appetite(p).thaws_by(start, one.thaw_days) if one.thaw_days else start
        yield Take(
            code=batch.code,
            food=batch.food.name,
            place=p.where(container),
            count=1,
            servings=one.servings,
            day=ready,
            thaw_by=ready - timedelta(days=one.thaw_days) if one.thaw_days else None,
            reasons=(*judged.reasons[:1], *judged.standing),
            containers=names_of(p, [container]),
            amount=container.amount if one.bulk else "",
            standing=judged.standing,
            method=batch.method,
            role=one.at_table,
            left=container.amount,
        )


def _dropped(p: Pantry, draft: WeekDraft) -> Iterable[str]:
    """What was put on a day and is left out since it is not fit: with the reason."""
    for id_, day in draft.wishes.pins:
        on = day or draft.end
        container = p.stock.containers.get(id_)
        if container is None or not container.here or fit_on(p, container, on):
            continue
        if of(p, container).line.hurried:
            continue  # said below, of all that stands too warm
        name = f"{name_of(p, container)} {p.stock.batches[container.batch].food.name}"
        said, why = why_not(p, container, on)
        yield f"{name} is left out of the week: {said}. {why}".strip()


def _still_open(p: Pantry, over: Sequence[Candidate]) -> Iterable[str]:
    """What should be eaten up by now, as its pace has it: the next of its kind waits for it."""
    if not over:
        return
    named = {one.container: one.food for one in over}  # of one vessel there are several meals
    names = [name_of(p, p.stock.containers[id_]) for id_ in named]
    foods = ", ".join(f"{name} {food}" for name, food in zip(names, named.values(), strict=True))
    yield f"Open for long: {foods}. Book what is eaten up (`use {names[0]} all`)."


def _table(p: Pantry, draft: WeekDraft) -> Iterable[tuple[date, str]]:
    """Days on which it is otherwise than usual."""
    eats = appetite(p)
    for day in days_from(draft.start):
        if day in draft.wishes.out:
            yield day, f"{dates.say(day)}: {EAT_OUT}"
        elif day in eats.table:
            yield day, f"{dates.say(day)}: {at_table(eats.table[day])}."


def _part(p: Pantry, entry: Entry, left: Sequence[Container]) -> float:
    """Servings that the week takes of them."""
    if entry.amount:
        return entry.servings
    return sum(left_of_week(p, container) for container in left)


def _take(p: Pantry, entry: Entry, left: Sequence[Container], so_far: float, second: str) -> Take:
    first = left[0]
    batch = p.stock.batches[first.batch]
    part, judged = _part(p, entry, left), p.judge(first)
    why = tuple(filter(None, (*reasons(p, entry, left, part, judged, so_far), second)))
    ahead = days_at_home(p, appetite(p), entry)
    # What is taken out, or was for a day that is gone, is not to be thawed for it.
    frozen = any(is_frozen(p, one) for one in left)
    return Take(
        code=batch.code,
        food=batch.food.name,
        place=", ".join(dict.fromkeys(p.where(one) for one in left)),
        count=len(left),
        servings=part,
        day=ahead[0],
        thaw_by=entry.thaw_by if frozen and ahead[0] >= p.today else None,
        reasons=tuple(dict.fromkeys((*why, *judged.reasons[:1], *judged.standing))),
        containers=names_of(p, left),
        days=tuple(day for day in ahead if fit_on(p, first, day)),
        amount=entry.amount,
        dish=entry.dish,
        why=why,
        standing=judged.standing,
        method=batch.method,
        role=role_at_table(p, batch.food.name, batch.food.group, batch.method, drawn=first.bulk),
        left=first.amount,
        begun=first.state is State.OPEN and first.left == first.first,
        open=first.state is State.OPEN,
        now=judged.verdict.value if judged.verdict is Verdict.UNKNOWN else "",
    )
