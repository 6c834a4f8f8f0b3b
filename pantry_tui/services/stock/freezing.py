"""Into a freezer, to be frozen there now: a batch of its own, since a move makes nothing later."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.dataclass import replace
from pantry_tui.core.model import Container
from pantry_tui.core.text import agreed, clean, singular
from pantry_tui.core.words import Method
from pantry_tui.services.batchwork import putup
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Source
from pantry_tui.services.stock import act
from pantry_tui.services.stock.moving import comes_fresh
from pantry_tui.services.stock.pick import containers_named, name_of
from pantry_tui.services.stock.seen import still


def may_freeze(p: Pantry, ref: str, place: str) -> bool:
    """Whether a move there leaves open what it is from then on: it comes out of no freezer, it is
    good, and frozen there it would be another thing."""
    one = containers_named(p, ref)[0]
    frozen = p.stock.batches[one.batch].method is Method.FROZEN
    return not frozen and comes_fresh(p, one, p.find_place(place))


def freeze(p: Pantry, refs: Sequence[str], place: str, *, saw: str = "") -> Done:
    """Freeze these, each batch of them under one new lid code; what may not be frozen so is moved.
    All of it or none. `saw` is what a screen showed of the first. Raises PantryError."""
    by_batch: dict[str, list[Container]] = {}
    done: list[Done] = []
    with p.together():
        still(p, refs[0], saw)
        for ref in refs:
            if may_freeze(p, ref, place):
                one = containers_named(p, ref)[0]
                by_batch.setdefault(one.batch, []).append(one)
            else:
                done.append(act.move(p, ref, place))
        done += [_frozen(p, some, place) for some in by_batch.values()]
    told = dict.fromkeys(word for one in done for word in one.warnings)
    names = tuple(name for one in done for name in one.containers)
    return Done(" ".join(one.message for one in done), tuple(told), names)


def _frozen(p: Pantry, some: Sequence[Container], place: str) -> Done:
    batch = p.stock.batches[some[0].batch]
    begun = any(one.begun or one.bulk for one in some)
    size = "boxes" if begun or not batch.size else batch.size
    size = size if len(some) > 1 else singular(size)
    food = clean(batch.food.name)
    reading = putup.read(p, f"{len(some)} {size} {food}, frozen, {_typed(place)}")
    sources = tuple(Source(name_of(p, one)) for one in some)
    made = putup.put_up(p, replace(reading, sources=sources))
    each = agreed(len(some), "it", "each of them")
    return Done(
        f"Frozen today: {len(some)} of {batch.code} {food} {agreed(len(some), 'is', 'are')} "
        f"{made.code} in {made.reading.place} now: write {made.code} on {each}.",
        made.cautions,
        made.containers,
    )


def _typed(place: str) -> str:
    """A path as it is typed in a line."""
    return " ".join(place.replace("›", " ").split())
