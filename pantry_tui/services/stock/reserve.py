"""Stock kept apart: for a gift, or for somebody. It is passed over when something is taken, unless
it is named itself; its verdict, its dates and its recall are those of any other container."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.log.payloads import Reserved
from pantry_tui.core.model import Container
from pantry_tui.core.text import clean
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock.fit import fit, refuse_if_none_fits
from pantry_tui.services.stock.pick import batch_named, containers_named, name_of, ordered
from pantry_tui.services.stock.seen import At, when


@booked
def reserve(
    p: Pantry, ref: str, count: int | None = None, words: str = "gift", *, at: At | None = None
) -> Done:
    """Keep `count` (1) containers apart, those that keep longest; or the one that is named.

    Raises BadInput for an unknown code or no words, Refused for what is unfit or begun.
    """
    kept_for = clean(words)
    if not kept_for:
        raise BadInput('Say what for: --for gift, or --for "Aunt Sunniva".')
    if "/" in ref:
        taken = containers_named(p, ref)
        if not _may(p, taken[0]):
            raise Refused(f"{name_of(p, taken[0])} is not fit to be kept for anybody.")
    else:
        taken = _longest(p, ref, 1 if count is None else count)
    batch = p.stock.batches[taken[0].batch]
    ids = [container.id for container in taken]
    p.book(Reserved(batch.id, tuple(ids), kept_for), **when(at))
    names = tuple(name_of(p, container) for container in taken)
    return Done(f"Reserved for {kept_for}: {', '.join(names)} {batch.food.name}.", (), names)


@booked
def free(p: Pantry, ref: str, count: int | None = None, *, at: At | None = None) -> Done:
    """Back to the household's own stock: all that is kept of a batch, `count` of it, or one named.

    Raises Refused when nothing is kept.
    """
    batch = batch_named(p, ref)
    mine = containers_named(p, ref) if "/" in ref else p.containers_of(batch)
    kept = ordered(p, [c for c in mine if c.here and c.reserved])
    if not kept:
        raise Refused(f"Nothing of {clean(ref)} is reserved.")
    if count is not None and not 1 <= count <= len(kept):
        raise Refused(f"Only {len(kept)} of {batch.code} {batch.food.name} are reserved.")
    taken = kept if count is None else kept[:count]
    ids = [container.id for container in taken]
    p.book(Reserved(batch.id, tuple(ids), ""), **when(at))
    names = tuple(name_of(p, container) for container in taken)
    return Done(f"Free again: {', '.join(names)} {batch.food.name}.", (), names)


def was_kept(p: Pantry, taken: Sequence[Container]) -> tuple[str, ...]:
    """Says what was kept for somebody, now that it was taken by its own name."""
    return tuple(f"{name_of(p, c)} was reserved for {c.reserved}." for c in taken if c.reserved)


def suits(container: Container, to: str) -> int:
    """Which one to give first: what is kept for that very person, for any gift, for nobody; what
    is kept for somebody else comes last."""
    kept_for, who = container.reserved.lower(), to.strip().lower()
    if kept_for and kept_for == who:
        return 0
    if kept_for in ("gift", "gifts") or (kept_for and not who):
        return 1
    return 3 if kept_for else 2


def _may(p: Pantry, container: Container) -> bool:
    begun = container.state in (State.OPEN, State.THAWED)
    return not begun and fit(p, container)


def _longest(p: Pantry, ref: str, count: int) -> list[Container]:
    batch = batch_named(p, ref)
    if count < 1:
        raise BadInput("The count must be 1 or more.")
    mine = [c for c in p.containers_of(batch) if c.here and not c.reserved and _may(p, c)]
    if not mine:
        refuse_if_none_fits(p, ref, ours=False)
    if len(mine) < count:
        raise Refused(f"Only {len(mine)} of {batch.code} {batch.food.name} can be set apart.")
    return ordered(p, mine)[-count:]
