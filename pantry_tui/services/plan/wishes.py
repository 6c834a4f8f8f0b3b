"""What the household says of a week: this on that day, not this one, another instead, we eat out,
this dish. Nothing is booked by it; the rest of the week arranges itself anew.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.model import Container
from pantry_tui.core.plan.menu import Candidate, Pick
from pantry_tui.core.text import begun
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.candidates import unasked
from pantry_tui.services.plan.dishes import keep as keep_dish
from pantry_tui.services.plan.dishes import name_in, named
from pantry_tui.services.plan.instead import could_come, soonest
from pantry_tui.services.plan.week import menu_of
from pantry_tui.services.plan.weekdraft import WeekDraft
from pantry_tui.services.plan.wished import keep_wishes, pins_of, wished_week
from pantry_tui.services.stock.pick import batch_named, containers_named, name_of

#: So many foods are named.
_NAMED = 5


@booked
def pin(p: Pantry, ref: str, day: date) -> Done:
    """Eat it on that day; the oldest of a batch, or the very container. Of a batch, what is
    accepted for today stays there while another stands, and out of bulk there is one meal more.
    Refuses what is unfit."""
    draft, on = wished_week(p), _ahead(p, day)
    container = _another(p, draft, ref, on) or _meant(p, draft, ref)
    if draft.plan is not None and container.bulk and "/" not in ref:
        pins = dict.fromkeys((*draft.wishes.pins, (container.id, on)))  # no second meal that day
        changed = draft.with_wishes(pins=tuple(pins))
    else:
        changed = _pinned(draft, container, on)
    one = _candidate(p, container)
    first = soonest(p, draft, one.thaw_days, one.ready)
    if on < first:
        raise Refused(f"{_say(p, container)} cannot be thawed before {dates.say(first)}.")
    if not appetite(p).takes_out(on, one.thaw_days):
        thaw = dates.say(on - timedelta(days=one.thaw_days))
        raise Refused(
            f"{_say(p, container)} must begin to thaw on {thaw}, and nobody is at home then: name "
            "another day."
        )
    if one.safe_until is not None and on > one.safe_until:
        raise Refused(f"{_say(p, container)} must be eaten by {dates.say(one.safe_until)}.")
    if one.care_from is not None and on >= one.care_from:
        code = p.stock.batches[container.batch].code
        raise Refused(
            f"{_say(p, container)} lies on no day from {dates.say(one.care_from)} on until it is "
            f"seen to: check the seals first (`tend {code}`)."
        )
    lies = (
        pick.candidate.container == container.id
        for pick in menu_of(p, changed).picks
        if pick.day == on
    )
    if not any(lies):
        raise Refused(
            f"{_say(p, container)} finds no place on {dates.say(on)}: nobody eats from the stores "
            "then, or the day is eaten already. Name another day."
        )
    name = f"{p.stock.batches[container.batch].code} {p.stock.batches[container.batch].food.name}"
    return keep_wishes(p, changed, f"{_say(p, container)} on {dates.say(on)}.", names=(name,))


def _another(p: Pantry, draft: WeekDraft, ref: str, day: date) -> Container | None:
    """Of a batch of which one is accepted for today, the next that is not: the first of it on a
    later day, else the oldest on none; None where there is none, or the very one is named."""
    if draft.plan is None or "/" in ref or day == p.today:
        return None
    today = {id_ for id_, on in draft.wishes.pins if on == p.today}
    batch = batch_named(p, ref)
    if not any(c.id in today and not c.bulk for c in p.containers_of(batch)):
        return None
    later = [id_ for id_, _ in draft.wishes.pins if id_ not in today]
    others = [p.stock.containers[id_] for id_ in later if id_ in p.stock.containers]
    mine = [c for c in others if c.batch == batch.id]
    free = (p.stock.containers[one.container] for one in unasked(p, p.today, unknown=True))
    mine += [c for c in free if c.batch == batch.id and c.id not in today]
    return mine[0] if mine else None


@booked
def shift(p: Pantry, ref: str, by: int) -> Done:
    """A day later (1) or earlier (-1) than it is planned."""
    draft = wished_week(p)
    pick = _planned(p, draft, ref)
    return pin(p, _name(p, pick), pick.day + timedelta(days=by))


@booked
def unpin(p: Pantry, ref: str) -> Done:
    """It may lie on any day again; of an accepted week it stays a part."""
    draft = wished_week(p)
    container = _meant(p, draft, ref)
    pins = tuple(pin for pin in draft.wishes.pins if pin[0] != container.id)
    if draft.plan is not None and pins != draft.wishes.pins:
        pins = (*pins, (container.id, None))
    return keep_wishes(p, draft.with_wishes(pins=pins), f"{_say(p, container)} on any day again.")


@booked
def keep(p: Pantry, ref: str, day: date) -> Done:
    """It stays on that day, or, kept before, may lie on any again."""
    draft = weekdraft.load(p)
    if draft.plan is not None:
        raise Refused("The week is accepted, so all of it stays where it is: shift it instead.")
    held = _meant(p, draft, ref).id
    pinned = any(id_ == held for id_, _ in draft.wishes.pins)
    return unpin(p, ref) if pinned else pin(p, ref, day)


@booked
def leave_out(p: Pantry, ref: str) -> Done:
    """Nothing of that food this week, or again if it was left out. A lid code or a food."""
    draft = wished_week(p)
    food = _food(p, ref)
    if food in draft.wishes.left_out:
        left = draft.wishes.left_out - {food}
        return keep_wishes(p, draft.with_wishes(left_out=left), f"{begun(food)} may come again.")
    of_food = {
        c.id for c in p.stock.containers.values() if p.stock.batches[c.batch].food.name == food
    }
    pins = tuple(pin for pin in draft.wishes.pins if pin[0] not in of_food)
    left = draft.wishes.left_out | {food}
    said = f"No {food} this week."
    return keep_wishes(p, draft.with_wishes(left_out=left, pins=pins), said, but=food)


def swaps(p: Pantry, ref: str, day: date | None = None) -> list[str]:
    """What could take its place on that day: a container of each food of the same role at table,
    what should go first on top. Out of a crate there are meals on several days: `day` says which,
    else the first. Raises Refused when it is not in the week."""
    draft = wished_week(p)
    could = _instead(p, draft, _planned(p, draft, ref, day))
    return [name_of(p, p.stock.containers[one.container]) for one in could]


@booked
def swap(p: Pantry, ref: str, food: str = "", day: date | None = None) -> Done:
    """Another food of the same role at table on that day (`day` as in `swaps`), the one asked for,
    else the one that should go first; what could come besides is named in its order. The food that
    it takes the place of is left out this week. Raises Refused when there is none."""
    draft = wished_week(p)
    pick = _planned(p, draft, ref, day)
    others = {one.food: one for one in _instead(p, draft, pick)}
    wanted = _food(p, food) if food else next(iter(others), "")
    if wanted not in others:
        role, on = pick.candidate.at_table, dates.say(pick.day)
        if others:
            raise Refused(f"{begun(wanted)} cannot come on {on}: name {_or(others)}.")
        raise Refused(f"No other {role} can be eaten on {on}: leave it out.")
    instead = p.stock.containers[others.pop(wanted).container]
    old = pick.candidate
    gone = {c.candidate.container for c in menu_of(p, draft).picks if c.candidate.food == old.food}
    pins = tuple(pin for pin in draft.wishes.pins if pin[0] not in gone)
    changed = draft.with_wishes(pins=pins, left_out=draft.wishes.left_out | {old.food})
    besides = f"; it could also be {_or(others)}" if others and not food else ""
    on = f"{_say(p, instead)} on {dates.say(pick.day)}"
    said = f"{on} instead of {old.food}, of which comes none this week{besides}."
    return keep_wishes(p, _pinned(changed, instead, pick.day), said, but=old.food)


def _instead(p: Pantry, draft: WeekDraft, pick: Pick) -> Iterator[Candidate]:
    """What could be eaten on its day in its place: the first of each food, in the order in which
    they are wanted, those last of which something lies on another day of the week."""
    role, picks = pick.candidate.at_table, menu_of(p, draft).picks
    that_day = {one.candidate.food for one in picks if pick.day in one.days}
    planned = {one.candidate.container for one in picks if not one.candidate.bulk}
    found: dict[str, Candidate] = {}
    wanted: dict[str, date] = {}
    for one in unasked(p, draft.first(p.today)):
        if one.food in that_day or one.container in planned:
            continue
        if could_come(p, draft, one, role, pick.day):
            found.setdefault(one.food, one)
            wanted[one.food] = min(one.last or date.max, wanted.get(one.food, date.max))
    again = {one.candidate.food for one in picks}
    # By when some of it is wanted, not by what has been past its best for long.
    yield from sorted(
        found.values(), key=lambda one: (one.food in again, not one.must, wanted[one.food])
    )


def _or(foods: Iterable[str]) -> str:
    """ "cod, eggs or salmon"; of many the first."""
    *some, last = list(foods)[:_NAMED]
    return f"{', '.join(some)} or {last}" if some else last


@booked
def out(p: Pantry, day: date) -> Done:
    """Nobody cooks that day; what was planned moves. Said again: at home after all."""
    draft, on = wished_week(p), _ahead(p, day)
    days = draft.wishes.out ^ {on}
    pins = tuple((id_, None if at == on else at) for id_, at in draft.wishes.pins)
    dishes = {name: at for name, at in draft.wishes.dishes.items() if at != on}
    said = f"{dates.say(on)}: you eat out." if on in days else f"{dates.say(on)}: you eat at home."
    return keep_wishes(p, draft.with_wishes(out=days, pins=pins, dishes=dishes), said, off=on)


@booked
def cook(p: Pantry, name: str, day: date) -> Done:
    """A dish on a day; said again for that day, not any more. Raises Refused when it lacks food."""
    draft, on = wished_week(p), _ahead(p, day)
    dish = named(p, name)
    asked = dict(draft.wishes.dishes)
    if asked.pop(dish.name, None) == on:
        said = f"{begun(dish.name)} is not asked for any more."
        return keep_wishes(p, draft.with_wishes(dishes=asked), said)
    changed = _loosened(p, draft, dish.name).with_wishes(dishes={**asked, dish.name: on})
    menu = menu_of(p, replace(changed, plan=None))
    mine = [one for one in menu.picks if one.dish == dish.name and one.day == on]
    if not mine:
        takes = ", ".join(f"{servings:g} {food}" for food, servings in dish.takes)
        raise Refused(
            f"{begun(dish.name)} cannot be made on {dates.say(on)}: it takes {takes} "
            "servings, fit to eat and thawed by then."
        )
    if draft.plan is not None:
        changed = _gathered(changed, [one.candidate.container for one in mine], on)
    return keep_wishes(p, changed, f"{begun(dish.name)} on {dates.say(on)}.", names=(dish.name,))


@booked
def cook_new(p: Pantry, line: str, day: date) -> Done:
    """A dish that is written down, as in `dishes.keep`, on that day; where it cannot be made then,
    it is written down all the same, and why it is not there is said."""
    with p.together():
        kept = keep_dish(p, line)
        name = name_in(line)
        try:
            if weekdraft.load(p).wishes.dishes.get(name) == day:
                return kept  # it is there already, in other words
            on = cook(p, name, day)
        except Refused as why:
            return replace(kept, warnings=(*kept.warnings, why.message))
    return replace(kept, message=f"{kept.message} {on.message}", warnings=on.warnings)


def _loosened(p: Pantry, draft: WeekDraft, dish: str) -> WeekDraft:
    """What an accepted week has in that dish may lie on any day."""
    held = set(pins_of(p, [entry for entry in draft.plan or () if entry.dish == dish]))
    return draft.with_wishes(
        pins=tuple((id_, None if (id_, at) in held else at) for id_, at in draft.wishes.pins)
    )


def _gathered(draft: WeekDraft, containers: Sequence[str], day: date) -> WeekDraft:
    """Those containers on that day; other meals from the same crate stay where they are."""
    others = tuple(
        (id_, at) for id_, at in draft.wishes.pins if id_ not in containers or at not in (None, day)
    )
    return draft.with_wishes(pins=(*others, *((id_, day) for id_ in containers)))


# -- the draft ------------------------------------------------------------------------------------


def _pinned(draft: WeekDraft, container: Container, day: date) -> WeekDraft:
    others = tuple(pin for pin in draft.wishes.pins if pin[0] != container.id)
    return draft.with_wishes(pins=(*others, (container.id, day)))


def _ahead(p: Pantry, day: date) -> date:
    """A day of this week that lies ahead. Raises BadInput."""
    week = weekdraft.load(p)
    last = week.end
    if not week.first(p.today) <= day <= last:
        raise BadInput(
            f"{dates.say(day)} is not ahead in this week: name a day up to {dates.say(last)}."
        )
    return day


def _meant(p: Pantry, draft: WeekDraft, ref: str) -> Container:
    """The container of a reference: of a batch the one that is planned, else the oldest."""
    if "/" not in ref:
        code = batch_named(p, ref).code
        for pick in menu_of(p, draft).picks:
            if _name(p, pick).startswith(f"{code}/"):
                return p.stock.containers[pick.candidate.container]
    return containers_named(p, ref, ours=True)[0]


def _planned(p: Pantry, draft: WeekDraft, ref: str, day: date | None = None) -> Pick:
    """The pick of a reference: that of `day`, where a day that is gone is today, else the first.
    Raises Refused when it is not in the week, or on that day."""
    container = _meant(p, draft, ref)
    mine = [pick for pick in menu_of(p, draft).picks if pick.candidate.container == container.id]
    if not mine:
        raise Refused(f"{_say(p, container)} is not in this week: put it on a day first.")
    on = max(day, p.today) if day is not None else min(pick.day for pick in mine)
    for pick in mine:
        if pick.day == on or on in pick.days:
            return pick
    raise Refused(f"{_say(p, container)} is not on {dates.say(on)}: put it on that day first.")


def _candidate(p: Pantry, container: Container) -> Candidate:
    """As it may be eaten, also when nothing is published on it, since it was asked for.

    Raises Refused when it is unfit.
    """
    for one in unasked(p, p.today, unknown=True, asked={container.id}):
        if one.container == container.id and one.may_open:
            return one
    judged = p.judge(container)
    why = judged.reasons[0] if judged.reasons else ""
    raise Refused(
        f"{_say(p, container)}: {judged.verdict.said}, so it cannot be planned. {why}".strip()
    )


def _food(p: Pantry, ref: str) -> str:
    """The food of a lid code, or the food named."""
    facts = p.facts(ref)
    return facts.name if facts is not None else batch_named(p, ref).food.name


def _name(p: Pantry, pick: Pick) -> str:
    return name_of(p, p.stock.containers[pick.candidate.container])


def _say(p: Pantry, container: Container) -> str:
    return f"{name_of(p, container)} {p.stock.batches[container.batch].food.name}"
