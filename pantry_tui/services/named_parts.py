"""What a note says went into a batch out of another one ("fried in 2A") of which nothing was
booked: what was not fit to be eaten on that day, as all that was ever booked of it says, holds what
was made with it in doubt. Signs are booked where they are seen (services.stock.named_in). A choice
of our own."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import TYPE_CHECKING

from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping import descent
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Assessment, worse
from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Batch, Container, Place, When
from pantry_tui.core.words import State, Verdict

if TYPE_CHECKING:
    from pantry_tui.services.judging import Judging
    from pantry_tui.services.pantry import Pantry

_BAD = UNFIT | {Verdict.UNKNOWN}
#: What looks like a lid code: most notes have none, and none of these is read further.
_LIKE_A_CODE = re.compile(r"[2-79][A-Za-z]")


@lru_cache(maxsize=512)
def codes_in(note: str) -> tuple[str, ...]:
    """The lid codes of what a note says went into it."""
    if not _LIKE_A_CODE.search(note):
        return ()
    from pantry_tui.core.safety.note_codes import put_in  # loaded where a note has one

    return put_in(note)


def named_in(p: Pantry, batch: Batch) -> Iterator[Batch]:
    """The other batches that a batch was made with by its note alone."""
    for code in codes_in(batch.note):
        if code == batch.code or (other := p.batch(code)) is None:
            continue
        if other.id not in {batch.id, *map(batch_of, batch.parts)}:
            yield other


def bounded_by_note(
    judging: Judging,
    own: Assessment,
    batch: Batch,
    new: Container,
    places: Mapping[str, Place],
) -> Assessment:
    """Its own assessment, in doubt where what its note names was so when it was made."""
    for of in named_in(judging.p, batch):
        if of.id in judging.following:
            continue
        judging.following.add(of.id)
        try:
            why = _unfit_then(judging, of, new, places)
        finally:
            judging.following.discard(of.id)
        if why:
            told = (
                f"Its note says that {of.code} is in it, and that was not fit then: {why}".strip()
            )
            floor = worse(own.floor, Verdict.UNKNOWN)
            said = f"{told} If it is not in there, put the note right."
            reasons = (said, *own.reasons)
            own = replace(own, floor=floor, doubt=True, harmless=False, reasons=reasons)
    return own


def key_of(p: Pantry, batch: Batch) -> Iterator[object]:
    """What of those batches its verdict rests on."""
    seen, waiting = {batch.id}, [batch]
    while waiting:
        for of in named_in(p, waiting.pop()):
            if of.id not in seen:
                seen.add(of.id)
                waiting.append(of)
                yield replace(of, rated=())
                yield from p.containers_of(of)


def _unfit_then(judging: Judging, of: Batch, new: Container, places: Mapping[str, Place]) -> str:
    """Why one of the containers that it may have been out of was not fit then, "" where all were.
    What was seen on them is booked of what was made with them."""
    birth = new.turns[0].when
    then = birth._replace(first=birth.last)
    silent = replace(of, suspect="")
    known = descent.known_then(places, then)
    there = [one for one in judging.p.containers_of(of) if _stood_then(one, then)]
    for one in there:
        shadow = _whole(replace(descent.as_taken(new, of, one), signs=()))
        judged = judging.unattended(silent, shadow, then, known).on(birth.day)
        if not judged.usable and judged.verdict in _BAD:
            return judged.reasons[0] if judged.reasons else judged.verdict.said
    return of.doubt[0] if of.doubt and not there else ""


def _stood_then(one: Container, then: When) -> bool:
    came = bool(one.turns) and one.turns[0].when.first <= then.last
    return came and (one.ended is None or one.ended >= then.day)


def _whole(one: Container) -> Container:
    """What was used up on that day, as it was before."""
    turns = tuple(turn for turn in one.turns if turn.state is not State.GONE)
    states = [turn.state for turn in turns if turn.state is not None]
    return replace(one, turns=turns, state=states[-1])
