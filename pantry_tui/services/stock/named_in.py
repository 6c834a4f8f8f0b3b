"""A batch in doubt, and what was made with it of which only a note tells: that is held in doubt as
well, until each container of it was looked at."""

from __future__ import annotations

from collections.abc import Iterator

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.caution import OWN
from pantry_tui.core.safety.note_codes import put_in
from pantry_tui.core.safety.own_words import OWN_ID
from pantry_tui.core.words import Verdict
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.seen import At, when


def held_with(p: Pantry, bad: Batch, payload: said.Sign, at: At | None = None) -> tuple[str, ...]:
    """Books the doubt of what notes say was made with a batch on which a sign was seen, and says of
    which."""
    doubted = payload.verdict in UNFIT or payload.suspect or payload.words.startswith(OWN)
    if not doubted:
        return ()
    found = [one for one in p.batches() if one.id != bad.id and bad.code in put_in(one.note)]
    return tuple(told for one in found for told in _hold(p, one, bad, payload.words, at))


def held_by_note(
    p: Pantry, batch: Batch, at: At | None = None, before: str = ""
) -> tuple[str, ...]:
    """The same of a batch that was put up just now, or whose note is another one, of what was seen
    on those that its note names; what else they were on that day is judged (services.named_parts).
    `before`: what its note was; what that named is held already, or was looked at since."""
    told: list[str] = []
    for code in put_in(batch.note):
        if code in put_in(before):
            continue
        other = p.batch(code)
        if other is not None and other.id != batch.id and (why := _doubted(p, other)):
            told += _hold(p, batch, other, why, at)
    return tuple(told)


def _doubted(p: Pantry, batch: Batch) -> str:
    """Why a batch is in doubt, "" where it is not."""
    mine = p.containers_of(batch)
    for one in mine:
        for seen in one.signs:
            if seen.verdict in UNFIT or seen.sign.startswith(OWN):
                return seen.sign
    return batch.suspect


def _hold(p: Pantry, batch: Batch, bad: Batch, why: str, at: At | None) -> Iterator[str]:
    if bad.id in map(batch_of, batch.parts):
        return  # booked out of it, and judged by it
    here = tuple(one.id for one in p.containers_of(batch) if one.here)
    if not here:
        return
    words = f"{OWN}its note says that {bad.code} is in it ({why.removeprefix(OWN)})"
    p.book(said.Sign(batch.id, here, OWN_ID, words, Verdict.UNKNOWN), **when(at))
    yield f"{batch.code} {batch.food.name}: its note says that {bad.code} is in it: in doubt too."
