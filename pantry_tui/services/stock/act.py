"""Doing: use, open, thaw, finish, move, give, lose, discard. Each books one transaction."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import Judgement, as_packed
from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.keeping.thawing import thaw_days
from pantry_tui.core.keeping.trouble import no_figure
from pantry_tui.core.log import payloads as said
from pantry_tui.core.model import Container, Turn
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import Climate, Kind, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.drawing import (
    booked_of,
    drawn,
    opened_in,
    pick_of,
    read_wanted,
    say_drawn,
)
from pantry_tui.services.stock.fit import doubts, fit, refuse_if_none_fits, refuse_unfit
from pantry_tui.services.stock.leaving import discard as discard
from pantry_tui.services.stock.leaving import give as give
from pantry_tui.services.stock.leaving import missing as missing
from pantry_tui.services.stock.leaving import refuse_gift as refuse_gift
from pantry_tui.services.stock.moving import cold_place as cold_place
from pantry_tui.services.stock.moving import move as move
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.reserve import was_kept
from pantry_tui.services.stock.seen import At, still, when
from pantry_tui.services.stock.telling import names, say_of, until
from pantry_tui.services.stock.turn import left_behind, must_go_beside
from pantry_tui.services.stock.warmth import is_frozen
from pantry_tui.services.stock.where import lasts, where_it_keeps

Fits = Callable[[Container], bool]


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
    """Eat the oldest fitting container, or `amount`: so many, 2 lb, half, 2 servings, all
    (services.stock.drawing). Refuses what is unfit. Raises Unclear where the amount must be said.

    `any_` silences the word about an older jar; it never lets unfit food through. `saw` is what a
    screen showed of it: Refused where that has changed since.
    """
    still(p, ref, saw)
    wanted = read_wanted(amount)
    refuse_if_none_fits(p, ref, ours=True, at=at)
    pick = pick_of(p, ref, lambda c: fit(p, c, at), "be eaten", ours=True)
    parts = drawn(p, ref, wanted, pick)
    taken = [part.container for part in parts]
    batch = p.stock.batches[taken[0].batch]
    warnings = must_go_beside(p, taken) + was_kept(p, taken)
    warnings += () if any_ else left_behind(p, taken[0])
    warnings += tuple(word for c in taken[:1] for word in doubts(p.judge(c)))
    # What was typed is what was taken only where all of it came out of one.
    typed = (amount or "").strip() if len(parts) == 1 else ""

    def used(ids: tuple[str, ...], much: Amount | None) -> said.Use:
        return said.Use(batch.id, ids, much, "" if much is None else typed)

    booked_of(p, parts, used, at)
    rest = [one for c in taken if (one := p.stock.containers[c.id]).here]
    warnings += tuple(dict.fromkeys(filter(None, (_hurried(p, one) for one in rest))))
    return Done(f"Used {say_drawn(p, parts)}.", warnings, names(p, taken))


def _hurried(p: Pantry, container: Container) -> str:
    """How long it has where it stands now, if its two hours run there; "" where they do not."""
    judged = p.judge(container)
    runs = judged.usable and p.assess(container).over_from is not None
    return judged.reasons[0] if runs and judged.reasons else ""


def _changed(
    p: Pantry,
    ref: str,
    state: State,
    verb: str,
    fits: Fits,
    payload: Callable[[Container, str], said.Open | said.Thaw],
    at: At | None,
) -> Done:
    taken = containers_named(p, ref, 1, fits, verb, ours=True, first=lambda c: not fit(p, c, at))
    container = taken[0]
    refuse_unfit(p, container, also="; do not open it", at=at)
    if state is State.OPEN:
        place = opened_in(p, container, at)
    else:
        place = cold_place(p, container, state)
        _refuse_state(p, container, place, state)
    warnings = must_go_beside(p, taken) + was_kept(p, taken) + doubts(p.judge(container))
    warnings += left_behind(p, container) if state is State.OPEN else ()
    p.book(payload(container, place), **when(at))
    after = p.stock.containers[container.id]
    moved = place not in ("", container.place)
    where = f"; it now stands in {p.where(after)}" if moved else ""
    done = {State.OPEN: "Opened", State.THAWED: "Thawed"}[state]
    ends = _hurried(p, after) or until(p.judge(after))
    told = f"{done} {say_of(p, [after])}{where}. {ends}"
    return Done(told, warnings, names(p, [after]))


def _sealed(container: Container) -> bool:
    return container.state is State.SEALED and container.vessel is Vessel.CLOSED


@booked
def open_(p: Pantry, ref: str, *, at: At | None = None, saw: str = "") -> Done:
    """Open the oldest sealed container; it goes to the fridge where publications ask for that."""
    still(p, ref, saw)

    some = containers_named(p, ref, ours=True, first=lambda c: not _sealed(c))[0]
    if some.vessel is not Vessel.CLOSED:
        raise Refused(
            f"{say_of(p, [some])}: this is never opened. Take from it: "
            f"`use {name_of(p, some)} half`, or an amount."
        )

    def opened(c: Container, place: str) -> said.Open:
        return said.Open(c.batch, (c.id,), place)

    return _changed(p, ref, State.OPEN, "be opened", _sealed, opened, at)


def _refuse_state(p: Pantry, container: Container, place: str, state: State) -> None:
    """Refuses a change of state that publications do not allow (a closed vacuum pack of fish)."""
    after = p.judge_as(container, Turn(p.clock.now, "", place, state))
    if after.verdict in UNFIT and any(
        isinstance(rule, Rule) and rule.kind is Kind.REFUSE for rule in after.rules
    ):
        raise Refused(f"{say_of(p, [container])}: {after.reasons[0]}")


#: How food is thawed; anything but the refrigerator means cooking it at once.
THAWED_IN = ("fridge", "cold water", "microwave")


@booked
def thaw(p: Pantry, ref: str, how: str = "fridge", *, at: At | None = None, saw: str = "") -> Done:
    """Thaw the oldest container that stands in a freezer, in the fridge unless `how` says else."""
    still(p, ref, saw)
    if how not in THAWED_IN:
        raise BadInput(
            f"{how!r} is no safe way to thaw: one of {', '.join(THAWED_IN)}. What thawed "
            "in the warm is booked as a move to that place."
        )

    def frozen(c: Container) -> bool:
        return p.places[c.place].climate is Climate.FREEZER

    def thawed(c: Container, place: str) -> said.Thaw:
        return said.Thaw(c.batch, (c.id,), place, "" if how == "fridge" else how)

    some = containers_named(p, ref, ours=True, first=lambda c: not frozen(c))[0]
    if not frozen(some):
        raise Refused(f"{name_of(p, some)} does not stand in a freezer: there is no thaw.")
    done = _changed(
        p,
        ref,
        State.THAWED,
        "be thawed",
        lambda c: c.state is not State.IN_PROGRESS and is_frozen(p, c),
        thawed,
        at,
    )
    return done if at is not None or how != "fridge" else _for_whom(p, done)


def _for_whom(p: Pantry, done: Done) -> Done:
    """What is taken out now and thaws for days says for whom it is."""
    one = containers_named(p, done.containers[0])[0]
    days = thaw_days(p.stock.batches[one.batch].size, one.left)
    if days <= 1:
        return done
    from pantry_tui.services.plan.for_whom import for_whom  # a pack on its own day needs no plan

    return replace(done, warnings=(*done.warnings, *for_whom(p, one, days)))


@booked
def ready(p: Pantry, ref: str, *, at: At | None = None, saw: str = "") -> Done:
    """A batch in progress is ready: all of it that is in progress is sealed from today."""
    still(p, ref, saw)
    first = containers_named(p, ref, 1, lambda c: c.state is State.WORKING, "be made ready")[0]
    batch = p.stock.batches[first.batch]
    working = [c for c in p.containers_of(batch) if c.state is State.WORKING]
    taken = [first] if "/" in ref else working
    p.book(said.Ready(batch.id, tuple(c.id for c in taken)), **when(at))
    after = p.judge(p.stock.containers[first.id])
    told = f"Ready: {say_of(p, taken)}. {until(after)}"
    return Done(told, _move_it(p, first.id, after), names(p, taken))


def _move_it(p: Pantry, id_: str, judged: Judgement) -> tuple[str, ...]:
    """What to do where nothing is published for it in its place and there is a place where
    something is; nothing where it is in doubt for more than its place, as a cure is for the time
    in which it was one."""
    one = p.stock.containers[id_]
    batch = p.stock.batches[one.batch]
    nowhere = bool(judged.reasons) and judged.reasons[0].startswith(no_figure(batch))
    if judged.verdict is not Verdict.UNKNOWN or batch.doubt or not nowhere:
        return ()
    food = as_packed(batch, opened=False).food
    here = lasts(p, batch.method, food, one.state, p.stock.places[one.place].climate)
    if here is not None:
        return ()
    fit = where_it_keeps(p, batch.method, food, one.state)
    return (f"Move it to {fit} now: a figure is published for there.",) if fit else ()


def several(p: Pantry, refs: Sequence[str], do: Callable[[str], Done]) -> Done:
    """The same to several containers: all of it or none, and one undo takes it back."""
    with p.together():
        done = [do(ref) for ref in refs]
    warnings = tuple(dict.fromkeys(word for one in done for word in one.warnings))
    named = tuple(name for one in done for name in one.containers)
    return Done(_all_of(done) or _each_of(done, named), warnings, named)


def _each_of(done: Sequence[Done], named: Sequence[str]) -> str:
    """What was done to each: to two by their sentences, to more by their names."""
    if len({name.partition("/")[0] for name in named}) == 1:
        return f"{len(done)} times. {done[-1].message}"
    if len(done) == 2:
        return " ".join(one.message for one in done)
    return f"{len(done)} times: {', '.join(named)}. The last: {done[-1].message}"


def _all_of(done: Sequence[Done]) -> str:
    """ "Moved 3 of 2A peaches to the fridge." where that is all there is to say, else ""."""
    first, *others = done
    if not others:
        return first.message
    if any(len(one.containers) != 1 for one in done):
        return ""
    codes = {one.containers[0].partition("/")[0] for one in done}
    said = {one.message.replace(one.containers[0], "", 1) for one in done}
    if len(codes) > 1 or len(said) > 1:
        return ""
    return first.message.replace(first.containers[0], f"{len(done)} of {codes.pop()}", 1)
