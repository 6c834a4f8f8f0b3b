"""Doing: use, open, thaw, finish, move, give, lose, discard, undo. Each books one transaction."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Any

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_amount
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rotation import UNFIT, order_key
from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.log.events import Did
from pantry_tui.core.log.fold import standing
from pantry_tui.core.model import Container, Place, Stay
from pantry_tui.core.words import Climate, Kind, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.books.logbook import describe
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done
from pantry_tui.services.stock import view
from pantry_tui.services.stock.aside import take_back
from pantry_tui.services.stock.fit import edible, fit, refuse_if_none_fits, refuse_unfit
from pantry_tui.services.stock.pick import containers_named, name_of, ordered
from pantry_tui.services.stock.reserve import suits, was_kept

Fits = Callable[[Container], bool]


def _left_behind(p: Pantry, taken: Container) -> tuple[str, ...]:
    """Says where a container of the same food stands that should have gone first."""
    batch = p.stock.batches[taken.batch]
    mine = order_key(batch, taken, p.judge(taken))
    said: dict[str, str] = {}
    for other in ordered(p, [c for c in p.stock.containers.values() if c.here]):
        theirs = p.stock.batches[other.batch]
        if theirs.id in (batch.id, *said) or theirs.food.name != batch.food.name:
            continue
        judged = p.judge(other)
        if judged.verdict in UNFIT or other.state is State.WORKING or other.reserved:
            continue
        older = theirs.made is not None and batch.made is not None and theirs.made < batch.made
        what = f"{name_of(p, other)} {theirs.food.name} in {p.where(other)}"
        if order_key(theirs, other, judged) < mine:
            opened = other.state in (State.OPEN, State.THAWED)
            why = f"is {other.state}" if opened else "is older" if older else "falls due first"
            said[theirs.id] = f"{what} {why}: take that one first next time."
        elif older:
            why = f"is {taken.state}" if taken.state is State.OPEN else "falls due first"
            said[theirs.id] = f"{what} is older, but this one {why}, so it rightly goes first."
    return tuple(said.values())[:2]


def _count(amount: str | None) -> tuple[int, str]:
    """("2") -> 2 containers; ("2 lb") -> an amount from one bulk container."""
    if amount is None or not amount.strip():
        return 1, ""
    number, unit = read_amount(amount)
    if unit:
        return 1, amount.strip()
    if number.denominator != 1 or number < 1:
        raise BadInput(f"{amount!r} is not a count of containers: give a whole number or a weight.")
    return int(number), ""


def use(p: Pantry, ref: str, amount: str | None = None, any_: bool = False) -> Done:
    """Eat the oldest fitting container (or `amount` of a bulk one). Refuses what is unfit.

    `any_` silences the word about an older jar; it never lets unfit food through.
    """
    count, bulk = _count(amount)
    refuse_if_none_fits(p, ref, ours=True)
    taken = containers_named(p, ref, count, lambda c: fit(p, c), "be eaten", ours=True)
    batch = p.stock.batches[taken[0].batch]
    warnings = was_kept(p, taken) + (() if any_ else _left_behind(p, taken[0]))
    warnings += tuple(_doubts(p.judge(c)) for c in taken[:1] if _doubts(p.judge(c)))
    ids = [c.id for c in taken]
    if not bulk:
        p.book(p.event(Did.USE, batch=batch.id, containers=ids))
        said = f"Used {_say(p, taken)}; {_remaining(p, batch.id)}."
        return Done(said, warnings, _names(p, taken))
    left = _less(taken[0], bulk)
    p.book(p.event(Did.USE, batch=batch.id, containers=ids, amount=bulk, left=left))
    rest = f"{left} left" if left else "it is empty now"
    return Done(f"Used {bulk} of {_say(p, taken)}; {rest}.", warnings, _names(p, taken))


def _doubts(judged: Judgement) -> str:
    if judged.verdict is Verdict.UNKNOWN:
        return f"{judged.reasons[0]} {view.HELP}"
    return ""


def _less(container: Container, take: str) -> str:
    """What is left of a bulk container, "" when it is empty."""
    from pantry_tui.measures import subtract  # pint is loaded only where amounts convert

    if not container.amount:
        raise Refused("It has no recorded weight or volume: use it whole, or by count.")
    left = subtract(container.amount, take)
    return "" if read_left(left) == 0 else left


def read_left(text: str) -> Fraction:
    """The number in "3 lb", 0 when nothing is left."""
    return Fraction(text.split()[0]) if text and text[0].isdigit() else Fraction(0)


def _say(p: Pantry, taken: Sequence[Container]) -> str:
    batch = p.stock.batches[taken[0].batch]
    if len(taken) == 1:
        return f"{name_of(p, taken[0])} {batch.food.name}"
    return f"{len(taken)} of {batch.code} {batch.food.name}"


def _names(p: Pantry, taken: Sequence[Container]) -> tuple[str, ...]:
    return tuple(name_of(p, c) for c in taken)


def _remaining(p: Pantry, batch_id: str) -> str:
    batch = p.stock.batches[batch_id]
    left = sum(c.here for c in p.containers_of(batch))
    return f"{left} left of this batch" if left else "that was the last of this batch"


def _cold_place(p: Pantry, container: Container, state: State) -> str:
    """Where an opened or thawed container must stand: here if published for it, else a fridge."""
    batch = p.stock.batches[container.batch]
    table = p.tables.book.of(batch.method)

    def covered(climate: Climate) -> bool:
        found = speaking(table, batch.food, batch.method, state, climate)
        return any(rule.kind is not Kind.REFUSE and rule.use is not None for rule in found)

    here = p.stock.places[container.place]
    if covered(here.climate) or (state is State.OPEN and here.climate is Climate.FREEZER):
        return here.id
    fridges = [pl for pl in p.stock.places.values() if pl.climate is Climate.FRIDGE]
    if fridges:
        return min(fridges, key=lambda pl: pl.id).id
    return here.id


def _change_state(
    p: Pantry, ref: str, did: Did, state: State, verb: str, fits: Fits, **data: Any
) -> Done:
    taken = containers_named(p, ref, 1, fits, verb, ours=True, first=lambda c: not fit(p, c))
    container = taken[0]
    batch = p.stock.batches[container.batch]
    refuse_unfit(p, container, also="; leave it shut")
    place = _cold_place(p, container, state)
    if did is Did.THAW:
        _refuse_state(p, container, place, state)
    warnings = was_kept(p, taken)
    warnings += _left_behind(p, container) if did is Did.OPEN else ()
    p.book(p.event(did, batch=batch.id, containers=[container.id], place=place, **data))
    after = p.stock.containers[container.id]
    where = f"; it now stands in {p.where(after)}" if place != container.place else ""
    done = {Did.OPEN: "Opened", Did.THAW: "Thawed"}[did]
    return Done(
        f"{done} {_say(p, [after])}{where}. {_until(p.judge(after))}", warnings, _names(p, [after])
    )


def _until(judged: Judgement) -> str:
    if judged.discard_after is not None:
        return f"Discard after {dates.say(judged.discard_after)}."
    if judged.best_by is not None:
        return f"Best by {dates.say(judged.best_by)}."
    return judged.reasons[0] if judged.reasons else "No published figure."


def _sealed(container: Container) -> bool:
    return container.state is State.SEALED


def open_(p: Pantry, ref: str) -> Done:
    """Open the oldest sealed container; it goes to the fridge where publications ask for that."""
    return _change_state(p, ref, Did.OPEN, State.OPEN, "be opened", _sealed)


def _refuse_state(p: Pantry, container: Container, place: str, state: State) -> None:
    """Refuses a change of state that publications do not allow (a closed vacuum pack of fish)."""
    after = _as_if_moved(p, container, p.stock.places[place], state)
    if after.verdict in UNFIT and any(rule.kind is Kind.REFUSE for rule in after.rules):
        raise Refused(f"{_say(p, [container])}: {after.reasons[0]}")


#: How food is thawed; anything but the refrigerator means cooking it at once.
THAWED_IN = ("fridge", "cold water", "microwave")


def thaw(p: Pantry, ref: str, how: str = "fridge") -> Done:
    """Thaw the oldest container that stands in a freezer, in the fridge unless `how` says else."""
    if how not in THAWED_IN:
        raise BadInput(f"{how!r} is no way to thaw: one of {', '.join(THAWED_IN)}.")

    def frozen(c: Container) -> bool:
        return p.stock.places[c.place].climate is Climate.FREEZER

    some = containers_named(p, ref, ours=True, first=lambda c: not frozen(c))[0]
    if not frozen(some):
        raise Refused(f"{name_of(p, some)} does not stand in a freezer: there is no thaw.")
    return _change_state(
        p,
        ref,
        Did.THAW,
        State.THAWED,
        "be thawed",
        lambda c: frozen(c) and c.state in (State.SEALED, State.OPEN),
        how="" if how == "fridge" else how,
    )


def finish(p: Pantry, ref: str) -> Done:
    """A working batch is done: all its working containers are sealed from today."""
    first = containers_named(p, ref, 1, lambda c: c.state is State.WORKING, "be finished")[0]
    batch = p.stock.batches[first.batch]
    working = [c for c in p.containers_of(batch) if c.state is State.WORKING]
    taken = [first] if "/" in ref else working
    p.book(p.event(Did.FINISH, batch=batch.id, containers=[c.id for c in taken]))
    after = p.judge(p.stock.containers[first.id])
    return Done(f"Finished {_say(p, taken)}. {_until(after)}", (), _names(p, taken))


def move(p: Pantry, ref: str, place: str, count: int | None = None) -> Done:
    """Move one named container, or `count` (all when None) of a batch. Refuses a place where
    publications do not let this food stand; out of a freezer counts as thawed."""
    to = p.find_place(place)
    if "/" in ref:
        taken = containers_named(p, ref)
    else:
        here = [
            c
            for c in p.containers_of(p.stock.batches[containers_named(p, ref)[0].batch])
            if c.here and c.place != to.id
        ]
        taken = containers_named(
            p, ref, count or max(1, len(here)), lambda c: c.place != to.id, "be moved there"
        )
    batch = p.stock.batches[taken[0].batch]
    warnings: list[str] = []
    ids = [c.id for c in taken]
    states = {_state_there(p, c, to) for c in taken}
    if len(states) > 1:
        raise Refused("They are in different states: move them one at a time, like 7C/3.")
    state = states.pop()
    refrozen = to.climate is Climate.FREEZER and state is State.THAWED
    if refrozen and any(c.stays[-1].thawed for c in taken):
        raise Refused(
            "What was thawed in cold water or a microwave oven is cooked before it is frozen again."
        )
    if refrozen:
        warnings.append(
            "Refreezing what thawed in the fridge is allowed and costs quality; its discard date "
            "stays as it was, so cook it and put it up as a cooked meal to start anew."
        )
    for container in taken:
        after = _as_if_moved(p, container, to, state)
        if after.verdict in UNFIT and p.judge(container).verdict not in UNFIT:
            why = after.reasons[0] if after.reasons else ""
            raise Refused(f"{_say(p, [container])} may not stand in {to.name}: {why}")
        if after.verdict is Verdict.UNKNOWN:
            warnings.append(after.reasons[0])
    p.book(p.event(Did.MOVE, batch=batch.id, containers=ids, place=to.id, state=state.value))
    path = p.place_paths()[to.id]
    fresh = state is State.THAWED and any(c.state is not State.THAWED for c in taken)
    thawed = " It counts as thawed from today." if fresh else ""
    return Done(
        f"Moved {_say(p, taken)} to {path}.{thawed}",
        tuple(dict.fromkeys(warnings)),
        _names(p, taken),
    )


def _state_there(p: Pantry, container: Container, to: Place) -> State:
    leaves = p.stock.places[container.place].climate is Climate.FREEZER
    if leaves and to.climate is not Climate.FREEZER and container.state is State.SEALED:
        return State.THAWED
    return container.state


def _as_if_moved(p: Pantry, container: Container, to: Place, state: State) -> Judgement:
    stay = Stay(p.today, to.id, to.climate, state, to.temperature_f)
    moved = replace(container, stays=(*container.stays, stay), state=state)
    return p.judge_as(moved)


def _leave(p: Pantry, did: Did, verb: str, ref: str, count: int | None, **data: Any) -> Done:
    return _left(p, did, verb, containers_named(p, ref, 1 if count is None else count), **data)


def _left(p: Pantry, did: Did, verb: str, taken: Sequence[Container], **data: Any) -> Done:
    batch = p.stock.batches[taken[0].batch]
    p.book(p.event(did, batch=batch.id, containers=[c.id for c in taken], **data))
    return Done(f"{verb} {_say(p, taken)}; {_remaining(p, batch.id)}.", (), _names(p, taken))


def give(p: Pantry, ref: str, count: int | None = None, to: str = "") -> Done:
    """Give away, what is kept for a gift first; refuses what is unfit, since it would hurt
    somebody else."""
    refuse_if_none_fits(p, ref, ours=False)
    taken = containers_named(
        p,
        ref,
        1 if count is None else count,
        lambda c: fit(p, c),
        "be given",
        first=lambda c: suits(c, to),
    )
    elsewhere = was_kept(p, [c for c in taken if suits(c, to) == 3])
    return replace(_left(p, Did.GIVE, "Gave away", taken, to=to), warnings=elsewhere)


def lose(p: Pantry, ref: str, count: int | None = None) -> Done:
    """Gone without anyone knowing how."""
    return _leave(p, Did.LOSE, "Booked as lost", ref, count)


def discard(p: Pantry, ref: str, count: int | None = None, why: str = "") -> Done:
    """Thrown away; the reason is required, since next year's plan learns from it."""
    if not why.strip():
        raise BadInput('Say why it goes: --why "seal failed", for example.')
    # The unfit ones of a batch go first: that is what a person is throwing away.
    taken = containers_named(p, ref, 1 if count is None else count, first=lambda c: edible(p, c))
    return _left(p, Did.DISCARD, "Discarded", taken, why=why.strip())


def undo(p: Pantry) -> Done:
    """Take back the last thing done, by appending to the log. Named in words."""
    if (done := take_back(p)) is not None:
        return done
    last = p.last_standing()
    if last is None:
        raise Refused("There is nothing to take back.")
    if last.did is Did.PLACE_ADDED and any(
        stay.place == last.data["id"] for c in p.stock.containers.values() for stay in c.stays
    ):
        raise Refused(f"{last.data['name']} is in use: move what stands there first.")
    group = last.data.get("group")
    back = [e for e in standing(p.events) if e.data.get("group") == group] if group else [last]
    words = describe(p, last) + (f" and {len(back) - 1} more" if len(back) > 1 else "")
    p.book(*p.in_order([p.event(Did.UNDO, event=one.id) for one in back]))
    return Done(f"Took back: {words}.")


def several(p: Pantry, refs: Sequence[str], do: Callable[[str], Done]) -> Done:
    """The same to several containers: all of it or none, and one undo takes it back."""
    with p.together():
        done = [do(ref) for ref in refs]
    warnings = tuple(dict.fromkeys(word for one in done for word in one.warnings))
    said = done[0].message if len(done) == 1 else f"{len(done)} times. {done[-1].message}"
    return Done(said, warnings, tuple(name for one in done for name in one.containers))
