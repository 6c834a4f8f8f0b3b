"""To another place: booked wherever it went, since it stands there, and judged by it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.harm import is_wet_pack, kept_as, stands_opened
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.keeping.rules import Rule, speaking
from pantry_tui.core.keeping.sold import opened_dry
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.in_turn import stands
from pantry_tui.core.log.moments import some_time
from pantry_tui.core.model import Batch, Container, Place, Turn, When
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Climate, Group, Kind, Method, State, Verdict
from pantry_tui.errors import Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.room import overfull
from pantry_tui.services.stock.seen import At, first_minute, last_minute, still, when
from pantry_tui.services.stock.telling import names, say_of

#: Kept by being dry, by sugar or by spirit.
_DRY = frozenset({Method.DRIED, Method.FREEZE_DRIED, Method.SUGAR, Method.INFUSION})
_WENT_BACK = "Only if it went back into the cold within two hours, book that too, with its hour."
#: What is bought of these and is not dry is fat or sugared: nut butters, oil, syrups, cakes.
_FATTY = frozenset({Group.FAT, Group.NUT, Group.SWEET, Group.GRAIN})


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
    _refuse_if_there(p, ref, to, at)

    def elsewhere(c: Container) -> bool:
        return _as_it_was(p, c, at).place != to.id

    if "/" in ref:
        taken = containers_named(p, ref)
    else:
        mine = p.containers_of(p.stock.batches[containers_named(p, ref)[0].batch])
        many = count or max(1, sum(c.here and elsewhere(c) for c in mine))
        taken = containers_named(p, ref, many, elsewhere, "be moved there")
    batch = p.stock.batches[taken[0].batch]
    warnings: list[str] = []
    ids = [c.id for c in taken]
    was = [_as_it_was(p, c, at) for c in taken]
    states = {_state_there(p, c, to) for c in was}
    if len(states) > 1:
        raise Refused("They are in different states: move them one at a time, like 7C/3.")
    state = states.pop()
    gone = [c for c in taken if p.judge(c).verdict in UNFIT]
    if to.climate is Climate.FREEZER and state is State.THAWED and not gone:
        warnings.append(_refrozen(p, taken))
    then = _moment(p, taken, at)
    told: dict[str, list[Container]] = {}
    for container in taken:
        if words := _there(p, container, to, state, then):
            told.setdefault(words, []).append(container)
    warnings += [f"{say_of(p, mine)} {words}" for words, mine in told.items()]
    from pantry_tui.services.batchwork.tending import beside  # only where something moves

    warnings += beside(p, batch, to.id)
    p.book(said.Move(batch.id, tuple(ids), to.id, _turned(was, state)), **when(at))
    path, after = p.place_paths()[to.id], p.stock.containers[taken[0].id]
    fresh = state is State.THAWED and any(c.state is not State.THAWED for c in was)
    thawed = _thaws(p, after) if fresh else ""
    # What was moved on since, as it was booked before, stands there and not here.
    on = "" if after.place == to.id else f" It stands in {p.where(after)} since."
    warnings += filter(None, (overfull(p, to.id),))
    return Done(
        f"Moved {say_of(p, taken)} to {path}.{thawed}{on}",
        tuple(dict.fromkeys(warnings)),
        names(p, taken),
    )


def _refuse_if_there(p: Pantry, ref: str, to: Place, at: At | None) -> None:
    """Raises Refused where all that is meant stands, or stood then, there already."""
    first = containers_named(p, ref)[0]
    batch = p.stock.batches[first.batch]
    meant = [first] if "/" in ref else [c for c in p.containers_of(batch) if c.here]
    if all(_as_it_was(p, c, at).place == to.id for c in meant):
        raise Refused(f"{say_of(p, meant)} stands in {p.place_paths()[to.id]} already.")


def _refrozen(p: Pantry, taken: Sequence[Container]) -> str:
    """What is to be known where what was thawed goes into a freezer while it is good."""
    if any(_thawed_fast(one) for one in taken):
        return (
            "What was thawed in cold water or a microwave oven is cooked before it is frozen again."
        )
    last = min((day for one in taken if (day := p.judge(one).discard_after)), default=None)
    stays = f" ({dates.say(last)})" if last is not None else ""
    return (
        "Refreezing what thawed in the fridge is allowed and costs quality; its discard date"
        f"{stays} stays as it was, so cook it and put it up as a cooked meal to start anew."
    )


def _moment(p: Pantry, taken: Sequence[Container], at: At | None) -> When:
    """When it was moved, as far as was said: now where nothing was, or where more has been booked
    since, among which it takes its place only once it is booked."""
    now = p.clock.now
    if at is None or (at.minute is None and at.day == p.today):
        return now
    first = first_minute(p, at)
    if any(turn.when.first > first for one in taken for turn in one.turns):
        return now
    if at.minute is None:
        return some_time(at.day, p.clock.recorded, p.today)
    return When(first, first, at.day, now.zone)


def _there(p: Pantry, container: Container, to: Place, state: State, then: When) -> str:
    """What should be known of its standing there since then, "" for nothing. It is booked all the
    same, since it stands there, and judged by it."""
    before = p.judge(container)
    after = _as_if_moved(p, container, to, state, then)
    if before.verdict in UNFIT and after.verdict in UNFIT:
        reason = before.reasons[0] if before.reasons else before.verdict.said
        return f"must go, wherever it stands: {reason} {CAUTION}"
    why = after.refused or (after.reasons[0] if after.reasons else "")
    if after.verdict in UNFIT:
        if _as_if_moved(p, container, to, state, p.clock.now).verdict not in UNFIT:
            back = "" if to.climate.is_cold else f"{_WENT_BACK} "
            return (
                f"may not stay in {to.name}: {why} By now that is too long: discard it. {back}"
                f"{CAUTION}"
            )
        return (
            f"may not stand in {to.name}: {why} It is booked, since it stands there: discard it. "
            f"`undo` only if it never did. {CAUTION}"
        )
    if (left := _warm_until(p, container, to, state, then)) is not None:
        return (
            f"may not stay in {to.name}: {why} Put it back into the cold within {left} minutes; "
            f"from then on discard it. {CAUTION}"
        )
    if after.refused:
        return f"may not stand in {to.name}: {why} It is booked, since it stands there. {CAUTION}"
    if after.verdict is Verdict.UNKNOWN:
        fresh = _comes_to_freeze(p, container, to, state) and before.usable
        advice = f" To count as frozen food: {_as_frozen(p, container, to)}." if fresh else ""
        return f"in {to.name}: {why}{advice}"
    return _frozen_as_it_is(p, container, to, state, after.discard_after)


def _frozen_as_it_is(
    p: Pantry, container: Container, to: Place, state: State, last: date | None
) -> str:
    """What is put into a freezer as it stands keeps its last day there, since no move makes
    anything later: frozen as food of its own is another thing, and that is said."""
    if last is None or not _comes_to_freeze(p, container, to, state):
        return ""
    return (
        f"keeps its last day there too, {dates.say(last)}. To count as frozen food, as it stands "
        f"now: {_as_frozen(p, container, to)}."
    )


def comes_fresh(p: Pantry, container: Container, to: Place) -> bool:
    """Whether it is good and comes into a freezer in which it may stand as it is, with a last day
    or with no figure: frozen there it would be another thing."""
    state, before = _state_there(p, container, to), p.judge(container)
    if not _comes_to_freeze(p, container, to, state) or not before.usable:
        return False
    after = _as_if_moved(p, container, to, state, p.clock.now)
    if after.refused or {before.verdict, after.verdict} & UNFIT:
        return False
    return after.verdict is Verdict.UNKNOWN or after.discard_after is not None


def _comes_to_freeze(p: Pantry, container: Container, to: Place, state: State) -> bool:
    comes = p.stock.places[container.place].climate is not Climate.FREEZER
    return comes and state is not State.THAWED and to.climate is Climate.FREEZER


def _as_frozen(p: Pantry, container: Container, to: Place) -> str:
    """How it is put up as frozen food where it stands."""
    food = p.stock.batches[container.batch].food.name
    return f'`repack {name_of(p, container)} "1 box {food}, {to.name}"`'


def _turned(was: Sequence[Container], state: State) -> State | None:
    """The state that a move gives to what was as it was, None where it gives none."""
    return state if any(c.state is not state for c in was) else None


def _as_it_was(p: Pantry, container: Container, at: At | None) -> Container:
    """Where it stood and in which state at that moment, which may lie before what is booked."""
    if at is None:
        return container
    last = last_minute(p, at)
    first, *later = container.turns  # which came somewhere, if only later that day
    was = [first, *(turn for turn in later if turn.when.first <= last)]
    if len(was) == len(container.turns):
        return container
    state = next(turn.state for turn in reversed(was) if turn.state is not None)
    return replace(container, place=stands(was), state=state)


def _thawed_fast(container: Container) -> bool:
    """Whether it was last thawed in cold water or a microwave oven."""
    thawed = [turn for turn in container.turns if turn.state is State.THAWED]
    return bool(thawed and thawed[-1].how)


def _state_there(p: Pantry, container: Container, to: Place) -> State:
    leaves = p.stock.places[container.place].climate is Climate.FREEZER
    if leaves and to.climate is not Climate.FREEZER and container.state is State.SEALED:
        return State.THAWED
    return container.state


def _as_if_moved(p: Pantry, container: Container, to: Place, state: State, then: When) -> Judgement:
    turn = Turn(then, "", to.id, state)
    return p.judge_as(container, turn)


def _warm_until(p: Pantry, container: Container, to: Place, state: State, then: When) -> int | None:
    """How many minutes it may stand there until its two hours are over, None for any number."""
    turn = Turn(then, "", to.id, state)
    over = p.judging.assess_as(container, turn).again_at
    return None if over is None else max(0, over - 1 - p.clock.now.last)


def _thaws(p: Pantry, container: Container) -> str:
    """When it will be thawed, as the judge reckons it."""
    days = [span.thawed for span in p.assess(container).spans if span.thawed is not None]
    if not days:
        return ""
    day = max(days)
    if day <= p.today:
        since = "today" if day == p.today else dates.say(day)
        return f" It counts as thawed from {since}."
    return f" It thaws there and counts as thawed from {dates.say(day)}."


def _stays(p: Pantry, batch: Batch) -> bool:
    """Whether what is opened of it stays where it stands: dry, sugared, in spirit, or fat. Wet
    food of those kinds has a figure of its own for the refrigerator, and goes by that."""
    food, book = batch.food, p.tables.book
    method = batch.method
    if method is Method.BOUGHT and any(rule.food == food.name for rule in book.of(Method.SUGAR)):
        method = Method.SUGAR  # honey is what it is, also out of a shop
    if method is Method.BOUGHT:
        fatty = food.group in _FATTY and not is_wet_pack(batch) and kept_as(batch) not in LIDDED
        return stands_opened(batch) or opened_dry(batch, book) or fatty
    if method is Method.RENDERED_FAT:
        return True
    cold = speaking(book.of(method), food, method, State.OPEN, Climate.FRIDGE)
    return method in _DRY and not any(rule.use is not None for rule in cold)


def cold_place(p: Pantry, container: Container, state: State) -> str:
    """Where an opened or thawed container must stand: here if published for it, else a fridge."""
    batch = p.stock.batches[container.batch]
    table = p.tables.book.of(batch.method)

    def spoken(climate: Climate) -> Sequence[Rule]:
        return speaking(table, batch.food, batch.method, state, climate)

    def refused(climate: Climate) -> bool:
        return any(rule.kind is Kind.REFUSE for rule in spoken(climate))

    def covered(climate: Climate) -> bool:
        return not refused(climate) and any(rule.use is not None for rule in spoken(climate))

    here = p.stock.places[container.place]
    if state is State.OPEN and _stays(p, batch) and not refused(here.climate):
        return here.id
    if covered(here.climate) or (state is State.OPEN and here.climate is Climate.FREEZER):
        return here.id
    fridges = [pl for pl in p.stock.places.values() if pl.climate is Climate.FRIDGE]
    if fridges:
        return min(fridges, key=lambda pl: pl.id).id
    return here.id
