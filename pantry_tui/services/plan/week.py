"""The week's menu from the stores: proposed, arranged, accepted, eaten day by day."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from itertools import groupby

from pantry_tui.core import dates
from pantry_tui.core.amounts import amount_of
from pantry_tui.core.dataclass import replace
from pantry_tui.core.log.payloads import Eaten, Entry
from pantry_tui.core.plan.menu import Dish, Menu, Pick
from pantry_tui.core.plan.week import plan
from pantry_tui.core.words import Climate, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.plan.dishes import dishes
from pantry_tui.services.plan.needs import needs
from pantry_tui.services.plan.rows import WeekView
from pantry_tui.services.plan.servings import portion
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.plan.weekview import beside, days_ahead, left_of, names_of, view
from pantry_tui.services.stock.pick import containers_named, name_of

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
    first = max(draft.start, p.today)
    length = (draft.end - first).days + 1
    asked = {id_ for id_, _ in draft.wishes.pins}
    found = unasked(p, first, unknown=unknown, asked=asked)
    eats = appetite(p)
    need = needs(p, found, eats, first, length)
    if draft.plan is not None:
        found = [one for one in found if one.container in asked or one.must]
    return plan(found, eats, first, need, draft.wishes, _rested(p, draft), length)


def _rested(p: Pantry, draft: WeekDraft) -> list[Dish]:
    """Own dishes but for those of the week before: nobody wants the same pot every week. What is
    asked for comes all the same."""
    was = p.home.week
    lately: set[str] = set()
    since = draft.start - was.start if was is not None and was.start is not None else None
    if was is not None and since is not None and timedelta(0) < since <= 2 * _AHEAD:
        lately = {entry.dish for entry in was.entries or ()}
    return [one for one in dishes(p) if one.name not in lately or one.name in draft.wishes.dishes]


@booked
def accept(p: Pantry, start: date | None = None) -> Done:
    """Keep this week's plan. Nothing is booked until it is eaten. Raises BadInput, and Refused for
    a later week while there is still something to eat of an accepted one."""
    draft = _draft(p, start)
    if draft.start - p.today > _AHEAD:
        raise BadInput(f"Accept a week that begins by {dates.say(p.today + _AHEAD)}.")
    now = weekdraft.load(p)
    if now.plan is not None and draft.start > now.start and view(p, now, _open(p, now), None).take:
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
    from pantry_tui.services.stock import act  # which only looking at the week does not need

    draft = weekdraft.load(p)
    if draft.plan is None:
        raise Refused("No week is accepted yet: accept it first.")
    todo = [e for e in draft.plan if day in days_ahead(p, e) and left_of(p, e)]
    if not todo:
        raise Refused(f"Nothing is left to eat for {dates.say(day)}.")
    steps = {name: (entry, step) for entry in todo for name, step in _steps(p, entry, day)}
    said = {name: entry for name, (entry, _) in steps.items()}
    if not said:
        return Done(f"{dates.say(day)}: only what is open already; nothing to book.")
    with p.together():
        done = act.several(p, list(said), lambda ref: _book(p, ref, said[ref], day))
        over = [
            e._replace(booked=(*e.booked, Eaten(day, p.group))) if e in todo else e
            for e in draft.plan
        ]
        weekdraft.save(p, replace(draft, plan=tuple(over)), f"{dates.say(day)} is eaten")
    words = {_with_food(p, name): step for name, (_, step) in steps.items()}
    return Done(_say_eaten(day, words), done.warnings, done.containers)


def _with_food(p: Pantry, name: str) -> str:
    """("5A/1") -> "5A/1 potatoes"."""
    batch = p.batch(name.partition("/")[0])
    return f"{name} {batch.food.name}" if batch else name


def _say_eaten(day: date, steps: Mapping[str, str]) -> str:
    """What was eaten up, and apart from it what was only opened or set to thaw."""
    of = {
        step: ", ".join(name for name, one in steps.items() if one == step)
        for step in ("use", "open", "thaw")
    }
    used, opened, thawed = of["use"], of["open"], of["thaw"]
    found = [f"Booked {dates.say(day)} as eaten{f': {used}' if used else ''}."]
    found += [f"Opened: {opened}."] if opened else []
    found += [f"Set to thaw: {thawed}."] if thawed else []
    return " ".join(found)


def _steps(p: Pantry, entry: Entry, day: date) -> Iterator[tuple[str, str]]:
    """The containers of an entry, and what is booked of each on that day. Beside the meals one
    jar is open at a time."""
    left = left_of(p, entry)
    aside = beside(p, entry)
    if aside and any(one.state is not State.SEALED for one in left):
        return
    for name in names_of(p, left[:1] if aside else left):
        step = _begins(p, name, entry, day)
        if step is not None:
            yield name, step


def _begins(p: Pantry, name: str, entry: Entry, day: date) -> str | None:
    """What is booked of a container on a day: "use" on its last; "open" or "thaw" before, once, or
    where some of it is for the next week; what is opened beside the days is not eaten up by one."""
    aside = beside(p, entry)
    if not aside and day == entry.days[-1] and (entry.amount or entry.later < 1):
        return "use"
    container = next(
        p.stock.containers[i] for i in entry.containers if name_of(p, p.stock.containers[i]) == name
    )
    if p.stock.places[container.place].climate is Climate.FREEZER:
        return "thaw" if entry.thaw_by else None
    return "open" if container.state is State.SEALED else None


def _book(p: Pantry, ref: str, entry: Entry, day: date) -> Done:
    from pantry_tui.services.stock import act

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
