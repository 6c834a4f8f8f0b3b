"""The week's menu from the stores: proposed, arranged, accepted, eaten day by day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence
from datetime import date, timedelta
from fractions import Fraction
from itertools import groupby

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.log.payloads import Entry
from pantry_tui.core.plan.appetite import days_from
from pantry_tui.core.plan.menu import Dish, Menu, Pick, Why
from pantry_tui.core.plan.week import plan
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import moved, weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.plan.day_eaten import eaten as eaten
from pantry_tui.services.plan.dishes import dishes
from pantry_tui.services.plan.needs import needs
from pantry_tui.services.plan.rows import WeekView
from pantry_tui.services.plan.servings import portion
from pantry_tui.services.plan.weekdraft import WeekDraft, days_ahead, days_at_home
from pantry_tui.services.plan.weekview import view

#: A week is accepted no longer ahead than this: until it begins it is the one that is shown.
_AHEAD = timedelta(days=7)
#: What is in a week without being asked for; the first of them presses most.
_BY_ITSELF = {why: n for n, why in enumerate((Why.DUE, Why.BEGIN, Why.PACE, Why.TABLE))}


def week(p: Pantry, start: date | None = None, *, unknown: bool = False) -> WeekView:
    """Seven days from `start`, or the week that runs, as accepted or as proposed.

    Never proposes what is unsafe or still working, nor on a day after its date; what has no
    published figure only when `unknown` asks for it. Raises BadInput.
    """
    draft = _draft(p, start)
    if draft.plan is not None:
        menu = menu_of(p, replace(draft, plan=None), unknown=unknown)
        return view(p, draft, _open(p, draft), menu)
    menu = menu_of(p, draft, unknown=unknown)
    return view(p, draft, _entries(p, menu.picks), menu)


def _draft(p: Pantry, start: date | None) -> WeekDraft:
    """The week that runs, or the seven days from `start`. Raises BadInput."""
    if start is None:
        return weekdraft.load(p)
    draft = WeekDraft(start)
    if draft.end < p.today:
        raise BadInput(f"The week from {dates.say(start)} is over: give today or a day ahead.")
    return draft


def menu_of(p: Pantry, draft: WeekDraft, *, unknown: bool = False) -> Menu:
    """The picks for what is left of the week. An accepted week only moves what is in it and what
    has been opened since."""
    first = draft.first(p.today)
    length = (draft.end - first).days + 1
    asked = {id_ for id_, _ in draft.wishes.pins}
    found = unasked(p, first, unknown=unknown, asked=asked)
    eats = appetite(p)
    need = needs(p, found, eats, first, length)
    if draft.plan is not None:
        found = [one for one in found if one.container in asked or one.must]
    now = weekdraft.load(p)
    over = _over(p, now) if now.start == draft.start else {}
    asked_for = {name: day for name, day in draft.wishes.dishes.items() if day not in over}
    wishes = replace(draft.wishes, out=draft.wishes.out | over.keys(), dishes=asked_for)
    cooked = {name for names in over.values() for name in names}
    return plan(found, eats, first, need, wishes, _rested(p, draft, asked_for, cooked), length)


def _over(p: Pantry, draft: WeekDraft) -> dict[date, set[str]]:
    """The days of the accepted week that are eaten, with their dishes: nobody cooks a second dinner
    for one."""
    found: dict[date, set[str]] = defaultdict(set)
    for entry in draft.plan or ():
        for day, group in entry.booked:
            if p.stands(group):
                found[day].add(entry.dish)
    ahead = {day for entry in draft.plan or () for day in days_ahead(p, entry)}
    return {day: names for day, names in found.items() if day not in ahead}


def _rested(p: Pantry, draft: WeekDraft, wished: Collection[str], cooked: set[str]) -> list[Dish]:
    """Own dishes but for those of the week before, and those that are eaten of this one: nobody
    wants the same pot every week. What is asked for comes all the same."""
    was = p.home.week
    lately = set(cooked)
    since = draft.start - was.start if was is not None and was.start is not None else None
    if was is not None and since is not None and timedelta(0) < since <= 2 * _AHEAD:
        lately |= {entry.dish for entry in was.entries or ()}
    return [one for one in dishes(p) if one.name not in lately or one.name in wished]


@booked
def accept(p: Pantry, start: date | None = None) -> Done:
    """Keep this week's plan; of an accepted one rework the days to come, for those who are to sit
    there now. Nothing is booked until it is eaten. Raises BadInput, and Refused for a later week
    while there is still something to eat of an accepted one."""
    draft = _draft(p, start)
    if draft.start - p.today > _AHEAD:
        raise BadInput(f"Accept a week that begins by {dates.say(p.today + _AHEAD)}.")
    now = weekdraft.load(p)
    if now.plan is not None and draft.start == now.start:
        return _rework(p, now)
    if now.plan is not None and draft.start > now.start and view(p, now, _open(p, now), None).take:
        raise Refused(
            f"The week to {dates.say(now.end)} is accepted and not all eaten: mark its days "
            "eaten, or replan it, before you accept another."
        )
    entries = _entries(p, menu_of(p, replace(draft, plan=None)).picks)
    _keep(p, _for_now(p, draft), entries, "accepted")
    return Done(f"Accepted the week from {dates.say(draft.start)}; mark each day when it is eaten.")


def _for_now(p: Pantry, draft: WeekDraft) -> WeekDraft:
    """Planned for those who are to sit at the table now."""
    eats = appetite(p)
    return replace(draft, heads=tuple(map(eats.sit, days_from(draft.start))))


def _rework(p: Pantry, draft: WeekDraft) -> Done:
    """What is eaten, and what is for today, stays; the days after it are planned anew."""
    eats = appetite(p)
    ahead = [(entry, days_at_home(p, eats, entry)) for entry in draft.plan or ()]
    today = [entry for entry, days in ahead if days and days[0] <= p.today <= days[-1]]
    pins = tuple((id_, p.today) for entry in today for id_ in entry.containers)
    free = replace(draft.with_wishes(pins=pins), plan=None)
    was = moved.lying(p, lying(p, draft))
    _accept_rest(p, _for_now(p, draft), menu_of(p, free), "reworked")
    now = moved.lying(p, lying(p, weekdraft.load(p)))
    return Done(
        f"The days to come up to {dates.say(draft.end)} are reworked; today stays as it was.",
        moved.told(was, now),
    )


def accept_anew(p: Pantry, draft: WeekDraft, words: str) -> None:
    """An accepted week whose wishes changed: what is eaten stays, and what lies on a day that is
    gone, as nobody said whether it was eaten; the rest is arranged again."""
    lay = [one for one in draft.plan or () if (ahead := days_ahead(p, one)) and ahead[0] < p.today]
    _accept_rest(p, draft, menu_of(p, draft), words, lay)


def _accept_rest(
    p: Pantry, draft: WeekDraft, menu: Menu, words: str, lay: Sequence[Entry] = ()
) -> None:
    """What is eaten of an accepted week, what `lay` there and stays, and the menu for the rest of
    it; what lies where it lay, or had to make way for something else, keeps its reason."""
    was = {(id_, day): e.why for e in draft.plan or () for id_ in e.containers for day in e.days}
    moved = {id_ for id_, day in draft.wishes.pins if day is None}
    why = {id_: e.why for e in draft.plan or () for id_ in moved.intersection(e.containers)}
    kept = (entry if entry in lay else _done(p, entry) for entry in draft.plan or ())
    done = [entry for entry in kept if entry is not None]
    rest = [
        entry._replace(why=was.get((first, entry.days[0]), why.get(first, entry.why)))
        for entry in _entries(p, menu.picks)
        for first in entry.containers[:1]
    ]
    _keep(p, draft, [*done, *rest], words)


def _done(p: Pantry, entry: Entry) -> Entry | None:
    """What of it is eaten; None where nothing is."""
    ahead = days_ahead(p, entry)
    days = tuple(day for day in entry.days if day not in ahead)
    return entry._replace(days=days) if days else None


def _keep(p: Pantry, draft: WeekDraft, entries: Sequence[Entry], words: str) -> None:
    """The plan itself says from now on what lies where; its dishes stay asked for."""
    cooked = {entry.dish: entry.days[0] for entry in entries if entry.dish}
    wishes = replace(draft.wishes, pins=(), dishes=cooked)
    weekdraft.save(p, replace(draft, wishes=wishes, plan=tuple(entries)), words)


@booked
def forget(p: Pantry) -> Done:
    """Plan anew, without what was wished for."""
    weekdraft.forget(p, "replanned")
    return Done("The week is replanned.")


def accepted(p: Pantry) -> WeekView | None:
    """The accepted week with what of it is still to be eaten and still fit; None without one."""
    return week(p) if weekdraft.load(p).plan is not None else None


def lying(p: Pantry, draft: WeekDraft) -> list[Entry]:
    """What of the week is still to be eaten, as accepted or else as proposed."""
    if draft.plan is not None:
        return _open(p, draft)
    return _entries(p, menu_of(p, draft).picks)


def _open(p: Pantry, draft: WeekDraft) -> list[Entry]:
    """What of an accepted week is not eaten on all its days."""
    return [entry for entry in draft.plan or () if days_ahead(p, entry)]


def _entries(p: Pantry, picks: Sequence[Pick]) -> list[Entry]:
    """Picks of one batch, day and place together, with the reason of the one that presses most:
    two jars for one supper are one line, though the second only comes to feed all."""

    def same(pick: Pick) -> tuple[object, ...]:
        container = p.stock.containers[pick.candidate.container]
        batch = p.stock.batches[container.batch].code
        rest = pick.spare, pick.later, pick.until
        why = Why.TABLE if pick.why in _BY_ITSELF else pick.why
        return pick.days, pick.dish, batch, p.where(container), why, rest

    found = []
    taken: dict[str, Fraction] = defaultdict(Fraction)
    for _, group in groupby(sorted(picks, key=lambda pick: str(same(pick))), key=same):
        several = list(group)
        first = min(several, key=lambda pick: _BY_ITSELF.get(pick.why, 0))
        container = p.stock.containers[first.candidate.container]
        bulk = first.candidate.bulk
        wanted = sum(pick.candidate.servings for pick in several)
        amount = ""
        if bulk:
            part = portion(p, container, wanted, taken[container.id])
            if part is None:
                continue  # the meals before it take all of it
            taken[container.id] += part.number
            amount = str(part)
        found.append(
            Entry(
                days=first.days,
                containers=tuple(dict.fromkeys(pick.candidate.container for pick in several)),
                why=first.why,
                thaw_by=first.thaw_by,
                dish=first.dish,
                amount=amount,
                servings=wanted,
                spare=sum(pick.spare for pick in several),
                later=sum(pick.later for pick in several),
                until=first.until,
            )
        )
    return sorted(found, key=lambda entry: (entry.days[0], entry.dish == "", entry.dish))
