"""Doing: use, open, thaw, finish, move, give, lose, discard. Each books one transaction."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from pantry_tui.core import dates
from pantry_tui.core.amounts import Amount, amount_of, read_amount
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rotation import order_key
from pantry_tui.core.keeping.rules import Rule, speaking
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.moments import some_time
from pantry_tui.core.log.older import reason_of
from pantry_tui.core.model import Container, Place, Turn
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate, Kind, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.fit import badness, fit, refuse_if_none_fits, refuse_unfit
from pantry_tui.services.stock.pick import containers_named, name_of, ordered, standing_of_food
from pantry_tui.services.stock.reserve import suits, was_kept
from pantry_tui.services.stock.seen import At, still, when

Fits = Callable[[Container], bool]


def _left_behind(p: Pantry, taken: Container) -> tuple[str, ...]:
    """Says where a container of the same food stands that should have gone first."""
    batch = p.stock.batches[taken.batch]
    mine = order_key(batch, taken, p.judge(taken))
    said_of: dict[str, str] = {}
    for other in ordered(p, standing_of_food(p, batch.food.name)):
        theirs = p.stock.batches[other.batch]
        if theirs.id in (batch.id, *said_of):
            continue
        judged = p.judge(other)
        if not judged.usable or other.reserved:
            continue
        older = theirs.made is not None and batch.made is not None and theirs.made < batch.made
        what = f"{name_of(p, other)} {theirs.food.name} in {p.where(other)}"
        if order_key(theirs, other, judged) < mine:
            opened = other.state in (State.OPEN, State.THAWED)
            why = f"is {other.state}" if opened else "is older" if older else "falls due first"
            said_of[theirs.id] = f"{what} {why}: take that one first next time."
        elif older:
            why = f"is {taken.state}" if taken.state is State.OPEN else "falls due first"
            said_of[theirs.id] = f"{what} is older, but this one {why}: it is rightly first."
    return tuple(said_of.values())[:2]


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


@booked
def use(
    p: Pantry,
    ref: str,
    amount: str | None = None,
    any_: bool = False,
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Eat the oldest fitting container (or `amount` of a bulk one). Refuses what is unfit.

    `any_` silences the word about an older jar; it never lets unfit food through. `saw` is what a
    screen showed of it: Refused where that has changed since.
    """
    still(p, ref, saw)
    count, bulk = _count(amount)
    refuse_if_none_fits(p, ref, ours=True)
    taken = containers_named(p, ref, count, lambda c: fit(p, c), "be eaten", ours=True)
    batch = p.stock.batches[taken[0].batch]
    warnings = was_kept(p, taken) + (() if any_ else _left_behind(p, taken[0]))
    warnings += tuple(word for c in taken[:1] for word in _doubts(p.judge(c)))
    ids = tuple(c.id for c in taken)
    if not bulk:
        p.book(said.Use(batch.id, ids), **when(at))
        done = f"Used {_say(p, taken)}; {_remaining(p, batch.id)}."
        return Done(done, warnings, _names(p, taken))
    drawn = _drawn(taken[0], bulk)
    p.book(said.Use(batch.id, ids, drawn, bulk), **when(at))
    after = p.stock.containers[taken[0].id]
    rest = f"{after.left} left" if after.here else "it is empty now"
    return Done(f"Used {bulk} of {_say(p, taken)}; {rest}.", warnings, _names(p, taken))


def _doubts(judged: Judgement) -> tuple[str, ...]:
    """What should be known of it before it is eaten."""
    unknown = judged.verdict is Verdict.UNKNOWN
    return (*((f"{judged.reasons[0]} {CAUTION}",) if unknown else ()), *judged.standing)


def _drawn(container: Container, take: str) -> Amount:
    """What is taken, exactly, in the unit of what is there. Raises Refused for more than is."""
    if container.left is None:
        raise Refused("It has no recorded weight or volume: use it whole, or by count.")
    have, wanted = container.left, amount_of(take)
    if not wanted.unit or not have.unit:
        raise BadInput(f"Give the amount with its unit, like 2 {have.unit or 'lb'}.")
    if wanted.unit != have.unit:
        from pantry_tui.measures import convert  # the unit library only where amounts convert

        wanted = Amount(convert(wanted.number, wanted.unit, have.unit), have.unit)
    if wanted.number > have.number:
        raise Refused(f"Only {have} is left: take {have} or less.")
    return wanted


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


def cold_place(p: Pantry, container: Container, state: State) -> str:
    """Where an opened or thawed container must stand: here if published for it, else a fridge."""
    batch = p.stock.batches[container.batch]
    table = p.tables.book.of(batch.method)

    def covered(climate: Climate) -> bool:
        found = speaking(table, batch.food, batch.method, state, climate)
        refused = any(rule.kind is Kind.REFUSE for rule in found)
        return not refused and any(rule.use is not None for rule in found)

    here = p.stock.places[container.place]
    if covered(here.climate) or (state is State.OPEN and here.climate is Climate.FREEZER):
        return here.id
    fridges = [pl for pl in p.stock.places.values() if pl.climate is Climate.FRIDGE]
    if fridges:
        return min(fridges, key=lambda pl: pl.id).id
    return here.id


def _changed(
    p: Pantry,
    ref: str,
    state: State,
    verb: str,
    fits: Fits,
    payload: Callable[[Container, str], said.Open | said.Thaw],
    at: At | None,
) -> Done:
    taken = containers_named(p, ref, 1, fits, verb, ours=True, first=lambda c: not fit(p, c))
    container = taken[0]
    refuse_unfit(p, container, also="; do not open it")
    place = cold_place(p, container, state)
    if state is State.OPEN and _went_on(p, container, at):
        place = ""  # its later places are told already, and say where it stood until then
    if state is State.THAWED:
        _refuse_state(p, container, place, state)
    warnings = was_kept(p, taken) + _doubts(p.judge(container))
    warnings += _left_behind(p, container) if state is State.OPEN else ()
    p.book(payload(container, place), **when(at))
    after = p.stock.containers[container.id]
    moved = place not in ("", container.place)
    where = f"; it now stands in {p.where(after)}" if moved else ""
    done = {State.OPEN: "Opened", State.THAWED: "Thawed"}[state]
    told = f"{done} {_say(p, [after])}{where}. {_until(p.judge(after))}"
    return Done(told, warnings, _names(p, [after]))


def _went_on(p: Pantry, container: Container, at: At | None) -> bool:
    """Whether it is known to have been moved after that moment."""
    if at is None:
        return False
    then = some_time(at.day, p.clock.recorded)
    last = then.last if at.minute is None else then.first + at.minute
    return any(turn.place is not None and turn.when.first > last for turn in container.turns[1:])


def _until(judged: Judgement) -> str:
    if judged.discard_after is not None:
        return f"Discard after {dates.say(judged.discard_after)}."
    if judged.best_by is not None:
        return f"Best by {dates.say(judged.best_by)}."
    return judged.reasons[0] if judged.reasons else "No published figure."


def _sealed(container: Container) -> bool:
    return container.state is State.SEALED


@booked
def open_(p: Pantry, ref: str, *, at: At | None = None, saw: str = "") -> Done:
    """Open the oldest sealed container; it goes to the fridge where publications ask for that."""
    still(p, ref, saw)

    def opened(c: Container, place: str) -> said.Open:
        return said.Open(c.batch, (c.id,), place)

    return _changed(p, ref, State.OPEN, "be opened", _sealed, opened, at)


def _refuse_state(p: Pantry, container: Container, place: str, state: State) -> None:
    """Refuses a change of state that publications do not allow (a closed vacuum pack of fish)."""
    after = _as_if_moved(p, container, p.stock.places[place], state)
    if after.verdict in UNFIT and any(
        isinstance(rule, Rule) and rule.kind is Kind.REFUSE for rule in after.rules
    ):
        raise Refused(f"{_say(p, [container])}: {after.reasons[0]}")


#: How food is thawed; anything but the refrigerator means cooking it at once.
THAWED_IN = ("fridge", "cold water", "microwave")


@booked
def thaw(p: Pantry, ref: str, how: str = "fridge", *, at: At | None = None, saw: str = "") -> Done:
    """Thaw the oldest container that stands in a freezer, in the fridge unless `how` says else."""
    still(p, ref, saw)
    if how not in THAWED_IN:
        raise BadInput(f"{how!r} is no way to thaw: one of {', '.join(THAWED_IN)}.")

    def frozen(c: Container) -> bool:
        return p.places[c.place].climate is Climate.FREEZER

    def thawed(c: Container, place: str) -> said.Thaw:
        return said.Thaw(c.batch, (c.id,), place, "" if how == "fridge" else how)

    some = containers_named(p, ref, ours=True, first=lambda c: not frozen(c))[0]
    if not frozen(some):
        raise Refused(f"{name_of(p, some)} does not stand in a freezer: there is no thaw.")
    return _changed(
        p,
        ref,
        State.THAWED,
        "be thawed",
        lambda c: frozen(c) and c.state in (State.SEALED, State.OPEN),
        thawed,
        at,
    )


@booked
def ready(p: Pantry, ref: str, *, at: At | None = None, saw: str = "") -> Done:
    """A working batch is done: all its working containers are sealed from today."""
    still(p, ref, saw)
    first = containers_named(p, ref, 1, lambda c: c.state is State.WORKING, "be finished")[0]
    batch = p.stock.batches[first.batch]
    working = [c for c in p.containers_of(batch) if c.state is State.WORKING]
    taken = [first] if "/" in ref else working
    p.book(said.Ready(batch.id, tuple(c.id for c in taken)), **when(at))
    after = p.judge(p.stock.containers[first.id])
    return Done(f"Finished {_say(p, taken)}. {_until(after)}", (), _names(p, taken))


@booked
def move(
    p: Pantry,
    ref: str,
    place: str,
    count: int | None = None,
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Move one named container, or `count` (all when None) of a batch; out of a freezer counts as
    thawed. Where publications do not let this food stand it is booked all the same, since it does
    stand there, and judged: the warning says what became of it."""
    still(p, ref, saw)
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
    if refrozen and any(_thawed_fast(c) for c in taken):
        warnings.append(
            "What was thawed in cold water or a microwave oven is cooked before it is frozen again."
        )
    elif refrozen:
        warnings.append(
            "Refreezing what thawed in the fridge is allowed and costs quality; its discard date "
            "stays as it was, so cook it and put it up as a cooked meal to start anew."
        )
    told: dict[str, list[Container]] = {}
    for container in taken:
        if words := _there(p, container, to, state):
            told.setdefault(words, []).append(container)
    warnings += [f"{_say(p, mine)} {words}" for words, mine in told.items()]
    p.book(said.Move(batch.id, tuple(ids), to.id, _turned(taken, state)), **when(at))
    path = p.place_paths()[to.id]
    fresh = state is State.THAWED and any(c.state is not State.THAWED for c in taken)
    thawed = " It counts as thawed from today." if fresh else ""
    return Done(
        f"Moved {_say(p, taken)} to {path}.{thawed}",
        tuple(dict.fromkeys(warnings)),
        _names(p, taken),
    )


def _there(p: Pantry, container: Container, to: Place, state: State) -> str:
    """What should be known of its standing there, "" for nothing. It is booked all the same, since
    it stands there, and judged by it."""
    after = _as_if_moved(p, container, to, state)
    if p.judge(container).verdict in UNFIT:
        return ""
    why = after.refused or (after.reasons[0] if after.reasons else "")
    if after.verdict in UNFIT:
        return (
            f"may not stand in {to.name}: {why} It is booked, since it stands there: discard it. "
            f"`undo` only if it never did. {CAUTION}"
        )
    if (until := _warm_until(p, container, to, state)) is not None:
        return (
            f"may not stay in {to.name}: {why} Put it back into the cold within {until} minutes; "
            f"from then on discard it. {CAUTION}"
        )
    if after.refused:
        return f"may not stand in {to.name}: {why} It is booked, since it stands there. {CAUTION}"
    return why if after.verdict is Verdict.UNKNOWN else ""


def _turned(taken: Sequence[Container], state: State) -> State | None:
    """The state that a move gives, None where it gives none."""
    return state if any(c.state is not state for c in taken) else None


def _thawed_fast(container: Container) -> bool:
    """Whether it was last thawed in cold water or a microwave oven."""
    thawed = [turn for turn in container.turns if turn.state is State.THAWED]
    return bool(thawed and thawed[-1].how)


def _state_there(p: Pantry, container: Container, to: Place) -> State:
    leaves = p.stock.places[container.place].climate is Climate.FREEZER
    if leaves and to.climate is not Climate.FREEZER and container.state is State.SEALED:
        return State.THAWED
    return container.state


def _as_if_moved(p: Pantry, container: Container, to: Place, state: State) -> Judgement:
    turn = Turn(p.clock.now, "", to.id, state)
    return p.judge_as(container, turn)


def _warm_until(p: Pantry, container: Container, to: Place, state: State) -> int | None:
    """How many minutes it may stand there until its two hours are over, None for any number."""
    turn = Turn(p.clock.now, "", to.id, state)
    over = p.judging.assess_as(container, turn).again_at
    return None if over is None else max(0, over - p.clock.now.last)


@booked
def give(
    p: Pantry,
    ref: str,
    count: int | None = None,
    to: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Give away, what is kept for a gift first; refuses what is unfit, since it would hurt
    somebody else."""
    still(p, ref, saw)
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
    p.book(said.Give(taken[0].batch, _ids(taken), to=to), **when(at))
    return replace(_gone(p, "Gave away", taken), warnings=elsewhere)


@booked
def missing(
    p: Pantry, ref: str, count: int | None = None, *, at: At | None = None, saw: str = ""
) -> Done:
    """Gone without anyone knowing how."""
    still(p, ref, saw)
    taken = containers_named(p, ref, 1 if count is None else count)
    p.book(said.Missing(taken[0].batch, _ids(taken)), **when(at))
    return _gone(p, "Booked as missing", taken)


@booked
def discard(
    p: Pantry,
    ref: str,
    count: int | None = None,
    why: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> Done:
    """Thrown away; the reason is required, since next year's plan learns from it."""
    still(p, ref, saw)
    if not why.strip():
        raise BadInput('Say why it is discarded: --why "seal failed", for example.')
    # The unfit ones of a batch go first: that is what a person is throwing away.
    taken = containers_named(p, ref, 1 if count is None else count, first=lambda c: -badness(p, c))
    words = why.strip()
    reason = reason_of(words)
    with p.together():
        told = _shown(p, taken, reason, at)
        p.book(said.Discard(taken[0].batch, _ids(taken), None, reason, words), **when(at))
    return replace(_gone(p, "Discarded", taken), warnings=told)


def _shown(
    p: Pantry, taken: Sequence[Container], reason: said.Reason, at: At | None
) -> tuple[str, ...]:
    """A reason that is a sign is booked as one, so that it speaks for the sisters: what is to be
    done with them, and how such a container is thrown away."""
    from pantry_tui.core.safety.signs import DISPOSAL  # only where something is thrown away
    from pantry_tui.services.lookup import signs

    sign = signs.sign_of(p, taken[0], reason)
    if sign is None:
        return ()
    payload, sisters = signs.showing(p, taken, sign, at)
    p.book(payload, **when(at))
    told = signs.about_sisters(name_of(p, taken[0]), sisters)
    return tuple(filter(None, (told, *DISPOSAL.get(sign.disposal, ()))))


def _ids(taken: Sequence[Container]) -> tuple[str, ...]:
    return tuple(c.id for c in taken)


def _gone(p: Pantry, verb: str, taken: Sequence[Container]) -> Done:
    return Done(f"{verb} {_say(p, taken)}; {_remaining(p, taken[0].batch)}.", (), _names(p, taken))


def several(p: Pantry, refs: Sequence[str], do: Callable[[str], Done]) -> Done:
    """The same to several containers: all of it or none, and one undo takes it back."""
    with p.together():
        done = [do(ref) for ref in refs]
    warnings = tuple(dict.fromkeys(word for one in done for word in one.warnings))
    told = done[0].message if len(done) == 1 else f"{len(done)} times. {done[-1].message}"
    return Done(told, warnings, tuple(name for one in done for name in one.containers))
