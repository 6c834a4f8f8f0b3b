"""One thing into other vessels, or into another thing: `repack 5A "6 quart jars, fridge"`."""

from __future__ import annotations

import re

from pantry_tui.core.dataclass import replace
from pantry_tui.core.lidcode import normal_code
from pantry_tui.core.model import DAY_MIN, Batch
from pantry_tui.core.safety.prepared import IN_SHELL, PREPARED
from pantry_tui.core.words import Method, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.batchwork.out_of import read_as
from pantry_tui.services.batchwork.prepared import as_laid
from pantry_tui.services.batchwork.understood import line_at
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, PutUp, PutUpReading, Source
from pantry_tui.services.stock import act
from pantry_tui.services.stock.pick import batch_named, containers_named
from pantry_tui.services.stock.seen import At, still


@booked
def repack(
    p: Pantry,
    ref: str,
    line: str,
    took: str = "",
    *,
    at: At | None = None,
    saw: str = "",
) -> PutUp:
    """A new batch out of so much of an older one (`took`; "" for one whole container, "all"). The
    line says into what, how many, where; food, method and place stay unless it says others.

    Raises BadInput, Unclear, Refused as `put_up` does, and for what is still in progress.
    """
    still(p, ref, saw)
    first = containers_named(p, ref, ours=True)[0]
    if first.state is State.IN_PROGRESS:
        raise Refused(
            f"{normal_code(ref)} is still in progress: when it is ready, "
            f'`ready {normal_code(ref)} --into "{line}"`.'
        )
    return _repack(p, ref, line, took, at, first.place)


def _repack(p: Pantry, ref: str, line: str, took: str, at: At | None, stood: str) -> PutUp:
    batch = batch_named(p, ref)
    line = line_at(p, line, stood)
    reading = read_as(p, batch, line, putup.read)
    if reading.sources:
        raise BadInput("Say what it is made from once: by the lid code before the line.")
    reading = replace(reading, sources=(Source(normal_code(ref), took),))
    reading = _in_their_shells(batch, reading, line)
    return putup.put_up(p, reading, at=at)


def _in_their_shells(batch: Batch, reading: PutUpReading, line: str) -> PutUpReading:
    """Fresh eggs of which a line says no more than that they go into a freezer: nobody broke them
    on the way."""
    said = {key for key, _ in reading.process}
    fresh = batch.method is Method.FRESH and reading.method is Method.FROZEN
    told = re.search(r"\bfroze(?:n)?\b", line.casefold()) is not None
    if not fresh or told or PREPARED in said or reading.food != batch.food.name:
        return reading
    if not as_laid(batch.food, "", line, reading.note):
        return reading
    return replace(reading, process=(*reading.process, (PREPARED, IN_SHELL)))


def _at_the_latest(p: Pantry, at: At | None) -> At | None:
    """The last moment of that day: it did not stand there ready for hours before, but was found
    ready and filled over at once; what is found ready today is ready now."""
    if at is None or at.minute is not None:
        return at
    return None if at.day == p.today else at._replace(minute=DAY_MIN - 1)


@booked
def ready_into(p: Pantry, ref: str, line: str, *, at: At | None = None, saw: str = "") -> Done:
    """What was in progress is done, and all of it goes into other vessels; one undo takes back
    both. Raises as `ready` and `repack` do."""
    with p.together():
        done = act.ready(p, ref, at=_at_the_latest(p, at), saw=saw)
        stood = containers_named(p, ref, ours=True)[0].place
        made = _repack(p, ref, line, "all", at, stood)
    count = len(made.containers)
    into = f"into {made.code}: write it on {'its lid' if count == 1 else f'all {count} lids'}"
    ready = done.message.partition(". ")[0].rstrip(".")  # what it was in there holds no more
    return Done(f"{ready}. All of it went {into}.", made.cautions, made.containers)
