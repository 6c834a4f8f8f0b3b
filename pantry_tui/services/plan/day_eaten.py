"""A day of the accepted week is eaten: all of it that can be booked, and by name what cannot."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.amounts import amount_of
from pantry_tui.core.dataclass import replace
from pantry_tui.core.log.payloads import Eaten, Entry
from pantry_tui.core.model import Container
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.books.past import past
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.plan import weekdraft
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import beside
from pantry_tui.services.plan.portions import leavings_of
from pantry_tui.services.plan.rows import NEXT
from pantry_tui.services.plan.servings import portion
from pantry_tui.services.plan.weekdraft import WeekDraft, days_ahead, left_of
from pantry_tui.services.stock.fit import fit
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.seen import At
from pantry_tui.services.stock.warm_fridge import said_before
from pantry_tui.services.stock.warmth import is_frozen


class _Step(NamedTuple):
    """What is booked of a container: "use", "open" or "thaw"; `part` is what is taken of one that
    is not eaten up by it."""

    entry: Entry
    container: Container
    name: str
    verb: str
    part: str = ""


class _Booked(NamedTuple):
    """What came of the steps of a day: those that are done, why another is not, by its container,
    and what should be known."""

    steps: list[_Step]
    not_booked: dict[str, str]
    warnings: tuple[str, ...]


@booked
def eaten(p: Pantry, day: date) -> Done:
    """Book what the accepted week has for a day, in one transaction. Raises Refused where nothing
    of it can be booked.

    What is finished that day is used; what goes on for days is opened, or thawed since the day on
    which the plan has it taken out, and used on its last day, but for what is partly for the next
    week: that stays open, or that day's meal is taken of it where it had to thaw. Of what is never
    opened, or stays frozen, that day's meal is taken. What is open already is named, with nothing
    to book. One thing that cannot be booked holds up none of the others: it is named, and stays in
    the week.
    """
    draft = weekdraft.load(p)
    if draft.plan is None:
        raise Refused("No week is accepted yet: accept it first.")
    if not appetite(p).sit(day):
        raise Refused(
            f"Nobody is at home on {dates.say(day)}: say who eats then (`household usual "
            f"{day.isoformat()}`) before you mark it eaten."
        )
    todo = [entry for entry in draft.plan if day in days_ahead(p, entry)]
    gone_off = {one.id: _why_unfit(p, one) for entry in todo for one in _unfit(p, entry, day)}
    todo = [entry for entry in todo if _left(p, entry, day)]
    if not todo:
        nothing = f"This week's plan has nothing more for {dates.say(day)}."
        raise Refused(" ".join([nothing, *(gone_off.values() or [NEXT])]))
    steps = [step for entry in todo for step in _steps(p, entry, day)]
    going_on = _going_on(p, todo, steps, day)
    if not steps and all(beside(p, entry) for entry in todo):
        return Done(f"{dates.say(day)}: nothing to book. {going_on}", tuple(gone_off.values()))
    with p.together():
        done = _book_all(p, steps, day)
        if steps and not done.steps:
            raise Refused(" ".join(done.not_booked.values()))
        _mark(p, draft, todo, done.not_booked, day)
    told = " ".join(filter(None, (_say_eaten(p, day, done.steps), going_on)))
    stays = f"It stays in the week: then mark {dates.say(day)} eaten once more."
    warnings = (*done.warnings, *gone_off.values(), *done.not_booked.values())
    warnings += (stays,) if done.not_booked else ()
    return Done(told, warnings, tuple(one.name for one in done.steps))


def _book_all(p: Pantry, steps: Sequence[_Step], day: date) -> _Booked:
    """Each step that can be booked; an act decides before it writes, so that one that refuses has
    written nothing."""
    done: list[_Step] = []
    not_booked: dict[str, str] = {}
    warnings: dict[str, None] = {}
    for step in steps:
        warm = said_before(p, step.name) if step.verb == "open" else ""
        try:
            if warm and beside(p, step.entry):
                raise Refused(warm)  # nothing that was eaten needs it open
            warnings |= dict.fromkeys((*_book(p, step, day).warnings, *([warm] if warm else [])))
            if step.verb != "use":
                warnings |= dict.fromkeys(_ends(p, step))
        except (Refused, BadInput) as error:
            what = f"{step.name} {_food(p, step.container)}"
            not_booked[step.container.id] = f"Not booked: {what}. {error.message}"
        else:
            done.append(step)
    return _Booked(done, not_booked, tuple(warnings))


def _ends(p: Pantry, step: _Step) -> Iterator[str]:
    """That what was opened or set to thaw must be eaten today, or must not be eaten any more."""
    judged = p.judge(p.stock.containers[step.container.id])
    last, what = judged.discard_after, f"{step.name} {_food(p, step.container)}"
    if not judged.usable:
        yield f"By now {what}: {judged.verdict.said}. {' '.join(judged.reasons[:1])}".strip()
    elif last is not None and last <= p.today:
        yield f"{what}: this is its last safe day, eat it today or discard it."


def _book(p: Pantry, step: _Step, day: date) -> Done:
    """As of the day that was eaten: a clock that it started has run since then. What is for a day
    to come is opened now."""
    from pantry_tui.services.stock import act  # which only looking at the week does not need

    at = At(day) if day < p.today else None
    if step.verb == "use":
        meal = step.part or step.entry.amount
        return act.use(p, step.name, _meal(p, step.name, meal), any_=True, at=at)
    if step.verb == "open":
        return act.open_(p, step.name, at=at)
    begun = step.entry.thaw_by
    if begun is not None and begun < min(day, p.today):  # else it was not eaten on that day
        try:
            return act.thaw(p, step.name, at=At(begun))
        except (Refused, BadInput):  # it stood elsewhere then
            pass
    return act.thaw(p, step.name, at=at)


def _mark(
    p: Pantry, draft: WeekDraft, todo: Sequence[Entry], not_booked: Mapping[str, str], day: date
) -> None:
    """The day is eaten, but for the containers that were not booked."""
    over: list[Entry] = []
    for entry in draft.plan or ():
        rest = tuple(id_ for id_ in entry.containers if id_ in not_booked)
        if entry not in todo:
            over.append(entry)
            continue
        done = tuple(id_ for id_ in entry.containers if id_ not in rest)
        over += [_part(entry, rest)] if rest else []
        marked = (*entry.booked, Eaten(day, p.group))
        over += [_part(entry, done)._replace(booked=marked)] if done else []
    weekdraft.save(p, replace(draft, plan=tuple(over)), f"{dates.say(day)} is eaten")


def _part(entry: Entry, containers: tuple[str, ...]) -> Entry:
    """The entry with some of its containers, and their part of its servings."""
    part = len(containers) / len(entry.containers)
    return entry._replace(
        containers=containers,
        servings=entry.servings * part,
        spare=entry.spare * part,
        later=entry.later * part,
    )


def _left(p: Pantry, entry: Entry, day: date) -> list[Container]:
    """Its containers that may be booked as eaten on that day: of a day that is gone also what was
    in date then and is not by now."""
    found = left_of(p, entry)
    if day >= p.today:
        return found
    known = {one.id for one in found}
    here = (p.stock.containers.get(id_) for id_ in entry.containers)
    then = [one for one in here if one is not None and one.here]
    return [one for one in then if one.id in known or fit(p, one, At(day))]


def _unfit(p: Pantry, entry: Entry, day: date) -> Iterator[Container]:
    """Its containers that stand there and are left out, since they are not fit on that day."""
    left = {one.id for one in _left(p, entry, day)}
    for id_ in entry.containers:
        container = p.stock.containers.get(id_)
        if container is not None and container.here and id_ not in left:
            yield container


def _why_unfit(p: Pantry, container: Container) -> str:
    judged = p.judge(container)
    why = f" {judged.reasons[0]}" if judged.reasons else ""
    what = f"{name_of(p, container)} {_food(p, container)}"
    return f"Not booked: {what}: {judged.verdict.said}.{why} See `show {name_of(p, container)}`."


def _food(p: Pantry, container: Container) -> str:
    return p.stock.batches[container.batch].food.name


def _say_eaten(p: Pantry, day: date, steps: Sequence[_Step]) -> str:
    """What was eaten up or taken, and apart from it what was only opened or set to thaw."""
    of: dict[str, list[str]] = {"use": [], "open": [], "thaw": []}
    for step in steps:
        part = f"{step.part} of " if step.part else ""
        of[step.verb].append(f"{part}{step.name} {_food(p, step.container)}")
    used, opened, thawed = (", ".join(names) for names in of.values())
    found = [f"Booked {dates.say(day)} as eaten{f': {used}' if used else ''}."]
    found += [f"Opened: {opened}."] if opened else []
    found += [f"Set to thaw: {thawed}."] if thawed else []
    return " ".join(found)


def _going_on(p: Pantry, todo: Sequence[Entry], steps: Sequence[_Step], day: date) -> str:
    """What of the day nothing is booked of, and why: it is open already, or nobody knows how much
    is in it."""
    begun = {step.entry for step in steps}
    of: dict[str, list[str]] = {"Open already": [], "How much is in it is not known": []}
    used = []
    for entry in todo:
        for one in _left(p, entry, day) if entry not in begun else ():
            if _used_already(p, one, day):
                used.append(f"{name_of(p, one)} {_food(p, one)}")
                continue
            shut = one.state is State.SEALED
            why = "How much is in it is not known" if shut else "Open already"
            of[why].append(f"{name_of(p, one)} {_food(p, one)}")
    told = [
        f"{why}: {', '.join(names)}; book it when it is eaten up."
        for why, names in of.items()
        if names
    ]
    return " ".join([*([f"Used already: {', '.join(used)}."] if used else []), *told])


def _steps(p: Pantry, entry: Entry, day: date) -> Iterator[_Step]:
    """The containers of an entry, and what is booked of each on that day. Beside the meals one
    jar is open at a time."""
    left = _left(p, entry, day)
    aside = beside(p, entry)
    if aside and any(one.state is not State.SEALED for one in left):
        return
    for container in left[:1] if aside else left:
        if _used_already(p, container, day):
            continue
        name = name_of(p, container)
        if day == entry.days[-1] and (entry.amount or (entry.later < 1 and not aside)):
            yield _Step(entry, container, name, "use")
            continue
        frozen = is_frozen(p, container)
        closed = container.vessel is Vessel.CLOSED
        if frozen and entry.thaw_by:
            yield _Step(entry, container, name, "thaw")
            goes_on = day == entry.days[-1] and not aside  # a bird, whose rest is for the next week
            if goes_on and (part := _part_of(p, container, day)):
                yield _Step(entry, container, name, "use", part)
        elif not aside and (frozen or not closed) and (part := _part_of(p, container, day)):
            yield _Step(entry, container, name, "use", part)
        elif closed and container.state is State.SEALED:
            yield _Step(entry, container, name, "open")


def _used_already(p: Pantry, container: Container, day: date) -> bool:
    """Whether most of that day's meal was taken out of bulk by hand: it is not booked once more."""
    much = portion(p, container, max(1, appetite(p).sit(day))) if container.bulk else None
    if much is None:
        return False
    batch = past(p)[container.batch]
    taken = [
        gone
        for gone in leavings_of(p, [batch], day, ("used",))
        if gone.end == day and gone.container == container.id
    ]
    return 2 * sum(gone.number for gone in taken) >= much.number


def _part_of(p: Pantry, container: Container, day: date) -> str:
    """What those at the table take that day of one that goes on for more days; "" where nobody
    knows how much it holds, or it would be all of it."""
    much = portion(p, container, max(1, appetite(p).sit(day)))
    if much is None or container.left is None or much.number >= container.left.number:
        return ""
    return str(much)


def _meal(p: Pantry, ref: str, amount: str) -> str:
    """What is taken of it: the plan's amount, which is rounded, or all that is left."""
    left = containers_named(p, ref)[0].left
    much = amount_of(amount) if amount else None
    if much is None or left is None or much.number > left.number:
        return "all"
    # A bare half would be half of what is left.
    return f"{much.exact} pieces" if not much.unit and left.number > 1 else amount
