"""The week's menu from the stores: proposed, arranged, accepted, eaten day by day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from itertools import groupby, islice

from pantry_tui.core import dates
from pantry_tui.core.amounts import amount_of
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log.payloads import Eaten, Entry
from pantry_tui.core.model import Container
from pantry_tui.core.plan.appetite import at_table, days_from
from pantry_tui.core.plan.menu import Candidate, Menu, Pick, Why
from pantry_tui.core.plan.roles import BESIDE, role_of
from pantry_tui.core.plan.week import plan
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import candidates, needs
from pantry_tui.services.plan.dishes import dishes
from pantry_tui.services.plan.servings import portion, servings
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.rows import Done, Take, WeekView
from pantry_tui.services.stock import act
from pantry_tui.services.stock.fit import fit
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.view import everything, shown

#: So many containers are named one by one.
_NAMED = 3

#: So many lines of what comes next are shown.
_MORE = 12

#: A week is accepted no longer ahead than this: until it begins it is the one that is shown.
_AHEAD = timedelta(days=7)


def week(p: Pantry, start: date | None = None, *, unknown: bool = False) -> WeekView:
    """Seven days from `start`, or the week that runs, as accepted or as proposed.

    Never proposes what is unsafe or still working, nor on a day after its date; what has no
    published figure only when `unknown` asks for it. Raises BadInput.
    """
    draft = _draft(p, start)
    if draft.plan is not None:
        menu = menu_of(p, replace(draft, plan=None), unknown=unknown)
        return _view(p, draft, _open(p, draft), _next(menu))
    menu = menu_of(p, draft, unknown=unknown)
    return _view(p, draft, _entries(p, menu.picks), menu.more)


def _next(menu: Menu) -> tuple[Candidate, ...]:
    """What a new plan would take, and what comes after it."""
    return (*(pick.candidate for pick in menu.picks), *menu.more)


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
    first = max(draft.start, p.today)
    length = (draft.end - first).days + 1
    asked = {id_ for id_, _ in draft.wishes.pins}
    found = candidates(p, first, unknown=unknown, asked=asked)
    eats = appetite(p)
    need = needs(p, found, eats, first, length)
    if draft.plan is not None:
        found = [one for one in found if one.container in asked or one.must]
    return plan(found, eats, first, need, draft.wishes, dishes(p), length)


@booked
def accept(p: Pantry, start: date | None = None) -> Done:
    """Keep this week's plan. Nothing is booked until it is eaten. Raises BadInput, and Refused for
    a later week while there is still something to eat of an accepted one."""
    draft = _draft(p, start)
    if draft.start - p.today > _AHEAD:
        raise BadInput(f"Accept a week that begins by {dates.say(p.today + _AHEAD)}.")
    now = weekdraft.load(p)
    if now.plan is not None and draft.start > now.start and _view(p, now, _open(p, now)).take:
        raise Refused(
            f"The week to {dates.say(now.end)} is accepted and not all eaten: mark its days "
            "eaten, or replan it, before you accept another."
        )
    entries = _entries(p, menu_of(p, replace(draft, plan=None)).picks)
    _keep(p, draft, entries, "accepted")
    return Done(f"Accepted the week from {dates.say(draft.start)}; mark each day when it is eaten.")


def accept_anew(p: Pantry, draft: WeekDraft, words: str) -> None:
    """An accepted week whose wishes changed: what is eaten stays, the rest is arranged again; what
    lies where it lay keeps its reason."""
    was = {(id_, day): e.why for e in draft.plan or () for id_ in e.containers for day in e.days}
    done = [entry for entry in draft.plan or () if not days_ahead(p, entry)]
    rest = [
        entry._replace(why=was.get((entry.containers[0], entry.days[0]), entry.why))
        for entry in _entries(p, menu_of(p, draft).picks)
    ]
    _keep(p, draft, [*done, *rest], words)


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


@booked
def eaten(p: Pantry, day: date) -> Done:
    """Book all that the accepted week has for a day, in one transaction. Raises Refused.

    What is finished that day is used; what goes on for days is opened, or set to thaw, and used
    on its last day, but for what is partly for the next week: that stays open.
    """
    draft = weekdraft.load(p)
    if draft.plan is None:
        raise Refused("No week is accepted yet: accept it first.")
    todo = [e for e in draft.plan if day in days_ahead(p, e) and _left(p, e)]
    steps = [(name, entry) for entry in todo for name in _names(p, _left(p, entry))]
    if not todo:
        raise Refused(f"Nothing is left to eat for {dates.say(day)}.")
    said = {name: entry for name, entry in steps if _begins(p, name, entry, day) is not None}
    if not said:
        return Done(f"{dates.say(day)}: only what is open already; nothing to book.")
    with p.together():
        done = act.several(p, list(said), lambda ref: _book(p, ref, said[ref], day))
        over = [
            e._replace(booked=(*e.booked, Eaten(day, p.group))) if e in todo else e
            for e in draft.plan
        ]
        weekdraft.save(p, replace(draft, plan=tuple(over)), f"{dates.say(day)} is eaten")
    return Done(
        f"Booked {dates.say(day)} as eaten: {', '.join(said)}.", done.warnings, done.containers
    )


def _begins(p: Pantry, name: str, entry: Entry, day: date) -> str | None:
    """What is booked of a container on a day: "use" on its last; "open" or "thaw" before, once, or
    where some of it is for the next week."""
    if day == entry.days[-1] and (entry.amount or entry.later < 1):
        return "use"
    container = next(
        p.stock.containers[i] for i in entry.containers if name_of(p, p.stock.containers[i]) == name
    )
    if p.stock.places[container.place].climate is Climate.FREEZER:
        return "thaw" if entry.thaw_by else None
    return "open" if container.state is State.SEALED else None


def _book(p: Pantry, ref: str, entry: Entry, day: date) -> Done:
    step = _begins(p, ref, entry, day)
    if step == "use":
        return act.use(p, ref, _meal(p, ref, entry.amount), any_=True)
    return act.open_(p, ref) if step == "open" else act.thaw(p, ref)


def _meal(p: Pantry, ref: str, amount: str) -> str:
    """What is taken of it: the plan's amount, which is rounded, or all that is left."""
    left = containers_named(p, ref)[0].left
    enough = amount and left is not None and amount_of(amount).number <= left.number
    return amount if enough else "all"


def _open(p: Pantry, draft: WeekDraft) -> list[Entry]:
    """What of an accepted week is not eaten on all its days."""
    return [entry for entry in draft.plan or () if days_ahead(p, entry)]


def days_ahead(p: Pantry, entry: Entry) -> tuple[date, ...]:
    """Its days that are not eaten yet; a booking that was taken back does not count."""
    if not entry.booked:
        return entry.days
    eaten = {day for day, group in entry.booked if p.stands(group)}
    return tuple(day for day in entry.days if day not in eaten)


def _left(p: Pantry, entry: Entry) -> list[Container]:
    """Its containers that are still here and fit to eat on its next day."""
    found = (p.stock.containers.get(id_) for id_ in entry.containers)
    day = next(iter(days_ahead(p, entry)), p.today)
    return [c for c in found if c is not None and c.here and _fit_on(p, c, day)]


def _fit_on(p: Pantry, container: Container, day: date) -> bool:
    """Whether it is fit today and its date has not passed on that day."""
    row = shown(p)[name_of(p, container)]
    last = row.discard_after
    return row.usable and (last is None or max(day, p.today) <= last)


def _names(p: Pantry, containers: Iterable[Container]) -> tuple[str, ...]:
    return tuple(name_of(p, container) for container in containers)


def _entries(p: Pantry, picks: Sequence[Pick]) -> list[Entry]:
    """Picks of one batch, day, place and reason together."""

    def same(pick: Pick) -> tuple[object, ...]:
        container = p.stock.containers[pick.candidate.container]
        batch = p.stock.batches[container.batch].code
        rest = pick.spare, pick.later, pick.until
        return pick.days, pick.dish, batch, p.where(container), pick.why, rest

    found = []
    taken: dict[str, Fraction] = defaultdict(Fraction)
    for _, group in groupby(sorted(picks, key=lambda pick: str(same(pick))), key=same):
        several = list(group)
        first = several[0]
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


def _view(
    p: Pantry, draft: WeekDraft, entries: Sequence[Entry], coming: Sequence[Candidate] = ()
) -> WeekView:
    rows = everything(p)
    here = [(entry, left) for entry in entries if (left := _left(p, entry))]
    takes = [_take(p, entry, left) for entry, left in here]
    planned = {id_ for entry in entries for id_ in entry.containers}
    beside = {id(take) for take, (e, left) in zip(takes, here, strict=True) if _beside(p, e, left)}
    return WeekView(
        start=draft.start,
        end=draft.end,
        people=p.people,
        take=tuple(take for take in takes if id(take) not in beside),
        beside=tuple(take for take in takes if id(take) in beside),
        more=tuple(islice(_more(p, max(draft.start, p.today), coming, planned), _MORE)),
        waiting=tuple(row for row in rows if row.verdict in (Verdict.TEND, Verdict.UNKNOWN)),
        discard=tuple(row for row in rows if row.verdict in UNFIT),
        accepted=draft.plan is not None,
        notes=(*_dropped(p, draft, entries), *_at_risk(p, draft, entries)),
        table=tuple(_table(p, draft)),
        left_out=tuple(sorted(draft.wishes.left_out)),
        stocked=any(row.usable for row in rows),
        cautions=(CAUTION,),
    )


def _beside(p: Pantry, entry: Entry, left: Sequence[Container]) -> bool:
    """Whether it is opened beside the days: a relish or spread that is in no dish."""
    return not entry.dish and role_of(p.stock.batches[left[0].batch].food.group) in BESIDE


def _more(
    p: Pantry, start: date, coming: Sequence[Candidate], planned: Collection[str]
) -> Iterable[Take]:
    """What comes next, the first of each batch and place, in order."""
    seen: set[tuple[str, str]] = set()
    for one in coming:
        container = p.stock.containers[one.container]
        key = container.batch, container.place
        if one.container in planned or key in seen or not fit(p, container):
            continue
        seen.add(key)
        batch, judged = p.stock.batches[container.batch], p.judge(container)
        yield Take(
            code=batch.code,
            food=batch.food.name,
            place=p.where(container),
            count=1,
            servings=one.servings,
            day=start + timedelta(days=one.thaw_days),
            thaw_by=start if one.thaw_days else None,
            reasons=(*judged.reasons[:1], *judged.standing),
            containers=_names(p, [container]),
            amount=container.amount if one.bulk else "",
            standing=judged.standing,
            method=batch.method,
            role=one.at_table,
            left=container.amount,
        )


def _dropped(p: Pantry, draft: WeekDraft, entries: Sequence[Entry]) -> Iterable[str]:
    """What was put on a day, or accepted, and is left out since it is not fit: with the reason."""
    planned = {id_: days_ahead(p, entry)[0] for entry in entries for id_ in entry.containers}
    asked = {id_: day or draft.end for id_, day in draft.wishes.pins} | (
        planned if draft.plan is not None else {}
    )
    for id_, day in asked.items():
        container = p.stock.containers.get(id_)
        if container is None or not container.here or _fit_on(p, container, day):
            continue
        judged = p.judge(container)
        why = judged.reasons[0] if judged.reasons else ""
        name = f"{name_of(p, container)} {p.stock.batches[container.batch].food.name}"
        if judged.usable and judged.discard_after is not None:
            said = f"its last safe day is {dates.say(judged.discard_after)}"
        else:
            said = f"it is {judged.verdict}"
        yield f"{name} is left out of the week: {said}. {why}".strip()


def _at_risk(p: Pantry, draft: WeekDraft, entries: Sequence[Entry]) -> Iterable[str]:
    """What must be eaten in this week and lies on no day in time: nobody is at home, or there is
    more of it than is eaten."""
    in_time = {id_: days_ahead(p, entry)[0] for entry in entries for id_ in entry.containers}
    found: dict[tuple[date, str], list[Container]] = defaultdict(list)
    rows = shown(p)
    for container in p.stock.containers.values():
        batch = p.stock.batches[container.batch]
        wanted = not container.reserved and batch.food.name not in draft.wishes.left_out
        row = rows[name_of(p, container)] if container.here and wanted else None
        if row is None or not row.usable:
            continue
        last = row.discard_after
        if last is None or not max(draft.start, p.today) <= last <= draft.end:
            continue
        if in_time.get(container.id, date.max) > last:
            found[last, batch.id].append(container)
    for (last, id_), several in sorted(found.items()):
        batch = p.stock.batches[id_]
        few = len(several) <= _NAMED
        names = ", ".join(_names(p, several)) if few else f"{len(several)} of {batch.code}"
        if last <= p.today:
            yield f"{names} {batch.food.name}: this is the last safe day, eat today or discard."
        else:
            yield (
                f"{names} {batch.food.name} must be eaten by {dates.say(last)}, and the week has "
                "no room for it in time: eat it all the same, or discard it after that day."
            )


def _table(p: Pantry, draft: WeekDraft) -> Iterable[tuple[date, str]]:
    """Days on which it is otherwise than usual."""
    eats = appetite(p)
    for day in days_from(draft.start):
        if day in draft.wishes.out:
            yield day, f"{dates.say(day)}: you eat out."
        elif day in eats.table:
            yield day, f"{dates.say(day)}: {at_table(eats.table[day])}."


def _take(p: Pantry, entry: Entry, left: Sequence[Container]) -> Take:
    first = left[0]
    batch = p.stock.batches[first.batch]
    whole = sum(servings(p, container) for container in left)
    part = entry.servings if entry.amount else whole
    why, judged = tuple(_why(entry)), p.judge(first)
    return Take(
        code=batch.code,
        food=batch.food.name,
        place=p.where(first),
        count=len(left),
        servings=part,
        day=days_ahead(p, entry)[0],
        thaw_by=entry.thaw_by,
        reasons=(*why, *judged.reasons[:1], *judged.standing),
        containers=_names(p, left),
        days=tuple(day for day in entry.days if _fit_on(p, first, day)),
        amount=entry.amount,
        dish=entry.dish,
        why=why,
        standing=judged.standing,
        method=batch.method,
        role=role_of(batch.food.group),
        left=first.amount,
    )


def _why(entry: Entry) -> Iterable[str]:
    """Why it is in the week, and what its opening ties up."""
    words = {
        Why.KEPT: "You put it there.",
        Why.MUST: "It is open or thawed: its clock runs.",
        Why.DUE: "It falls due this week.",
        Why.DISH: f"For {entry.dish}.",
        Why.BEGIN: "There is so much of it that it must be begun before others.",
        Why.PACE: "At its pace it comes this week.",
        Why.TABLE: "The day has no other main.",
    }
    yield words[Why(entry.why)]
    if entry.dish and entry.why != Why.DISH:
        yield f"For {entry.dish}."
    if entry.later >= 1:
        by = f": finish it by {dates.say(entry.until)}" if entry.until else ""
        days = f"{len(entry.days)} days" if len(entry.days) > 1 else "that day"
        yield f"It is for {days}, and about {entry.later:.0f} servings for next week{by}."
    elif len(entry.days) > 1:
        yield f"It is for {len(entry.days)} days: finish it by {dates.say(entry.days[-1])}."
    if entry.spare >= 1:
        yield (
            f"About {entry.spare:.0f} servings are more than you can eat by its last safe day: "
            "share them on the first day."
        )
