"""From what a person types (7C, 7C/3) to batches and containers, oldest fitting one first."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from pantry_tui.core.keeping.rotation import order_key
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.log.payloads import Fate
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused, Unclear
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.ready import ready
from pantry_tui.store.codes import also_written
from pantry_tui.store.store import reading


class Ours(str):
    """A reference that the program made and nobody read off a lid: it never asks which is meant."""

    __slots__ = ()


def batch_named(p: Pantry, ref: str) -> Batch:
    """The batch of a reference. Raises BadInput with near codes."""
    code = normal_code(ref.partition("/")[0])
    typed = code.removesuffix("!")
    batch = p.batch(typed)
    if batch is not None:
        if p.asks_which and typed == code and not isinstance(ref, Ours):
            _ask_which(p, batch)
        return batch
    near = sorted(b.code for b in p.batches() if code and b.code[:1] == code[:1])[:5]
    hint = f"near it: {', '.join(near)}" if near else "`pantry-tui due` lists the codes"
    shown = code if code[:1].isdecimal() else ref.partition("/")[0]
    raise BadInput(f"No batch has the lid code {shown!r}; {hint}.")


def _ask_which(p: Pantry, batch: Batch) -> None:
    """Two stores that had parted gave one code twice: it may stand on either's lids. Raises
    Unclear."""
    with reading(p.path):
        ids = dict.fromkeys(also_written(p.store.db, batch.code))
        found = (p.load(id_) for id_ in ids if id_ != batch.id)
        others = [one[0] for one in found if one]  # what was taken back has no lids
    if not others:
        return
    named = [f"{one.code} ({one.food.name})" for one in others]
    raise Unclear(
        f"{batch.code} stands on the lids of two batches: say {batch.code}! for {batch.food.name}, "
        f"or {', '.join(named)}.",
        "code",
        batch.code,
        (f"{batch.code}!", *(one.code for one in others)),
    )


def ordered(p: Pantry, containers: Sequence[Container]) -> list[Container]:
    """In the order they should be eaten."""
    return sorted(containers, key=lambda c: order_key(p.stock.batches[c.batch], c, p.judge(c)))


def containers_named(
    p: Pantry,
    ref: str,
    count: int = 1,
    fits: Callable[[Container], bool] = lambda _container: True,
    doing: str = "be taken",
    *,
    ours: bool = False,
    first: Callable[[Container], int] = lambda _container: 0,
) -> list[Container]:
    """The `count` containers meant, the oldest fitting ones unless one is named. With `ours`, what
    is kept apart for somebody is passed over, unless it is named, and a food's name will do for a
    code; `first` ranks them before their dates do.

    Raises BadInput for an unknown code or number, Refused when too few are there.
    """
    _, slash, number = ref.partition("/")
    name = _food_named(p, ref) if ours and not slash else None
    batch = _batch_of_food(p, name, fits, first) if name else batch_named(p, ref)
    everything = p.containers_of(batch)
    if slash:
        if count > 1:
            raise BadInput(
                f"{batch.code}/{number} is one container: name the batch alone for {count} of it."
            )
        named = [c for c in everything if str(c.number) == number.strip()]
        if not named:
            raise BadInput(f"{batch.code} has no container {number.strip()!r}.")
        if not named[0].here:
            gone = f"{batch.code}/{number} is already {named[0].fate}"
            raise Refused(f"{gone}{_went_into(p, batch, named)}.")
        if not fits(named[0]):
            raise Refused(f"{batch.code}/{number} is {named[0].state}: it cannot {doing} now.")
        return named
    here = [c for c in everything if c.here]
    fitting = ordered(p, [c for c in here if fits(c)])
    kept = [c for c in fitting if ours and c.reserved]
    fitting = [c for c in fitting if c not in kept]
    if count < 1:
        raise BadInput("The count must be 1 or more.")
    if not here:
        gone = f"Nothing of {batch.code} {batch.food.name} is left"
        raise Refused(f"{gone}{_went_into(p, batch, everything)}.")
    if kept and len(fitting) < count:
        raise Refused(
            f"The rest of {batch.code} {batch.food.name} is reserved for {kept[0].reserved}: "
            f"name the one you mean, like {name_of(p, kept[0])}, or free it with `reserve --free`."
        )
    if not fitting:
        raise Refused(f"No container of {batch.code} can {doing}: all are {here[0].state}.")
    if len(fitting) < count:
        raise Refused(f"Only {len(fitting)} of {batch.code} {batch.food.name} can {doing}.")
    return sorted(fitting, key=first)[:count]


def _went_into(p: Pantry, batch: Batch, gone: Sequence[Container]) -> str:
    """What it was repacked into, and how what happened to it before that is booked still; "" where
    it left in another way."""
    ids = {one.id for one in gone if one.fate == Fate.REPACKED}
    found = [p.stock.batches[id_] for id_ in batch.into if id_ in p.stock.batches]
    new = [one for one in found if ids.intersection(one.parts)]
    if not new:
        return ""
    codes = ", ".join(one.code for one in new)
    event = p.containers_of(new[-1])[0].turns[0].event
    return (
        f": it goes on as {codes}. To book what happened before it was repacked, take that back, "
        f"`undo {event}`, book it, and repack it again"
    )


def _food_named(p: Pantry, ref: str) -> str | None:
    """The food that `ref` names, where it is no lid code."""
    facts = p.facts(ref) if p.batch(normal_code(ref)) is None else None
    return facts.name if facts is not None else None


def _batch_of_food(
    p: Pantry,
    name: str,
    fits: Callable[[Container], bool],
    first: Callable[[Container], int],
) -> Batch:
    """The batch of a food that holds the container to take first. Raises Refused for none."""
    from pantry_tui.services.stock.turn import in_turn

    best: tuple[tuple[bool, bool, int], Batch] | None = None
    for line in in_turn(p, name):
        number = line.numbers.partition(" ")[0]
        held = p.containers_of(p.stock.batches[line.batch])
        container = next(one for one in held if str(one.number) == number)
        rank = not fits(container), bool(container.reserved), first(container)
        if best is None or rank < best[0]:
            best = rank, p.stock.batches[line.batch]
        if rank == (False, False, 0):
            break
    if best is None:
        raise Refused(f"There is nothing of {name} in the store.")
    return best[1]


def standing_in(p: Pantry, place: str) -> list[Container]:
    """What stands in a place itself, by its id."""
    return [c for c in _here(p, "+place = ?", place) if c.place == place]


def _here(p: Pantry, where: str, value: str) -> list[Container]:
    ready(p)
    with reading(p.path):
        rows = p.store.db.execute(f"SELECT DISTINCT batch FROM lines WHERE {where}", (value,))
        batches = [row[0] for row in rows]
    found = (p.load(id_) for id_ in batches)
    return [c for one in found if one for c in one[1].values() if c.here]


def name_of(p: Pantry, container: Container) -> str:
    """ "7C/3"."""
    return Ours(f"{p.stock.batches[container.batch].code}/{container.number}")


def refuse_unless_alike(p: Pantry, ref: str) -> None:
    """Raises Unclear where a batch alone is named, and what is seen on one of its containers would
    not mean the same on another: some are opened, or were on another day, and some are not."""
    if "/" in ref:
        return
    here = [one for one in p.containers_of(batch_named(p, ref)) if one.here]
    begun = {
        one.id: (last_state(one), tuple(t.when.day for t in one.turns if t.state is State.OPEN))
        for one in here
    }
    if len(set(begun.values())) < 2:
        return
    choices = tuple(name_of(p, one) for one in here)
    said = ", ".join(f"{name_of(p, one)} ({last_state(one)})" for one in here[:_ASKED])
    more = f" and {len(here) - _ASKED} more" if len(here) > _ASKED else ""
    raise Unclear(
        f"They are not alike, and it matters on which it is: name one, of {said}{more}.",
        "container",
        ref,
        choices,
    )


#: So many containers are named when it is asked which is meant.
_ASKED = 8


def last_state(container: Container) -> State:
    """Its state, or the one in which it left."""
    if container.here:
        return container.state
    states = [turn.state for turn in container.turns if turn.state is not None]
    return states[-1] if states else State.SEALED
