"""Correcting the record of a batch: the one thing that may move a date later, because it says
what actually happened. The old record stays in the log."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from contextlib import nullcontext
from datetime import date
from typing import NamedTuple

from pantry_tui.core import dates
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.as_noted import culled_of
from pantry_tui.core.keeping.ladder import Judgement
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import standing
from pantry_tui.core.log.moments import when
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.note_before import names_enough as _named
from pantry_tui.core.safety.note_before import unanswered
from pantry_tui.core.safety.possible import impossible, with_degrees
from pantry_tui.core.safety.process import Doubt
from pantry_tui.core.safety.record import Details, key_named, read_details
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import clean
from pantry_tui.core.vessels import wrong_size
from pantry_tui.core.words import SEVERITY, Method, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork.checked import NOTHING, as_recorded, checked, used_in
from pantry_tui.services.batchwork.prepared import contradicted, named_way, said_anywhere
from pantry_tui.services.batchwork.putup import with_altitude
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.stock.named_in import held_by_note
from pantry_tui.services.stock.pick import batch_named
from pantry_tui.services.stock.recheck import strictest_altitude
from pantry_tui.services.stock.signed import signed_of
from pantry_tui.services.stock.view import note_aside
from pantry_tui.services.stock.whatitis import (
    food_meant,
    method_meant,
    refuse_count,
    refuse_same,
)
from pantry_tui.store import log


@booked
def correct(
    p: Pantry,
    code: str,
    *,
    made: str | None = None,
    size: str | None = None,
    note: str | None = None,
    printed: str | None = None,
    process: Sequence[tuple[str, str]] = (),
    food: str | None = None,
    method: str | None = None,
    count: int | None = None,
) -> Done:
    """Put right what was recorded at the put-up. `process` adds to or replaces single keys.

    Raises BadInput for an unknown code, an impossible day, or nothing to correct; Refused for what
    cannot be put right alone (`whatitis.py`).
    """
    batch = batch_named(p, code)
    if all(one is None for one in (made, size, note, printed, food, method, count)) and not process:
        raise BadInput(
            "Say what to correct: --food, --method, --count, --made, --size, --note, --printed "
            "or --process."
        )
    if count is not None:
        refuse_count(p, batch, count)
    facts = food_meant(p, food) if food is not None else batch.food
    kept = method_meant(p, batch, method) if method is not None else batch.method
    if food is not None or method is not None:
        refuse_same(batch, food or "", facts, kept)
    if note is not None:
        _refuse_unculled(p, batch, note)
    if printed is not None and kept is not Method.BOUGHT:
        raise BadInput("A printed date stands on what was bought in.")
    if odd := wrong_size(size or ""):
        raise BadInput(odd)
    day = _day(p, batch.id, made) if made is not None else None
    details = _details(batch, process)
    said_now = with_degrees(details.pairs, p.bare_degree)
    if wrong := impossible(kept, said_now):
        raise BadInput(wrong[0])
    merged = {**_readable(batch.process), **dict(said_now)}
    left_out = _left_out(note or "", kept, merged) | named_way(method or "")
    record = dict(with_altitude(p, kept, tuple({**merged, **left_out}.items())))
    unsaid = _unsaid(batch, said_now)
    _refuse_unsaid(p, batch, unsaid)
    shown = batch.size if size is None else " ".join(size.split())
    words = None if note is None else " ".join(note.split())
    keys = dict(details.pairs)
    other = bool(process) or any(one is not None for one in (size, food, method))
    against = None
    if other or note is not None:
        on = batch.made if made is None else day
        meant = _Meant(facts, kept, batch.filled or shown, record, on)
        against = _against(p, batch, meant, note, keys, other=other)
    named = signed_of(p, batch)
    # A note alone lifts nothing (core.log.fold); a record does, and here it is the same record.
    lifts = note is not None and any(_named(one, named) for one in batch.doubt)
    before, made_of_it = _judged(p, batch.id), _judged_made(p, batch.id)
    with p.together() if note else nullcontext():
        p.book(
            said.Correct(
                batch.id,
                made=day,
                unknown_day=made is not None and day is None,
                size=None if size is None else shown,
                note=words,
                process=tuple(record.items()) if process or left_out or lifts else None,
                doubt=against.problems if against else None,
                possible=against.still_possible if against else None,
                printed=dates.read_printed(printed, p.today) if printed is not None else None,
                measured="ph" in keys,
                food=facts if food is not None else None,
                method=kept if method is not None else None,
                timed=not {"minutes", "process"}.isdisjoint(keys),
            )
        )
        held = held_by_note(p, p.stock.batches[batch.id], before=batch.note) if note else ()
    milder = _milder(before, _judged(p, batch.id))
    if unsaid and milder:
        raise Refused(_still_counts(batch, unsaid))
    after = p.stock.batches[batch.id]
    day_made = f"made {dates.say(after.made) if after.made else 'unknown'}"
    changed = (
        f"it is {after.food.name}, until now {batch.food.name}" if food is not None else "",
        f"{after.method}, until now {batch.method}" if method is not None else "",
        day_made if made is not None else "",
        f"one is {shown}" if size is not None else "",
        ", ".join(f"{key} {value}" for key, value in details.pairs),
        "" if note is None else f"note {after.note!r}" if after.note else "no note",
        f"printed {dates.say(after.printed)}" if printed is not None and after.printed else "",
    )
    said_so = "; ".join(filter(None, changed)) or day_made
    told = f"Corrected {batch.code} {clean(batch.food.name)}: {clean(said_so)}."
    milder += _changed(p, made_of_it) + "".join(f" {one}" for one in held)
    aside = note_aside(p, after) if note is not None else ""
    return Done(f"{told}{milder}{f' {aside}' if aside else ''}", after.doubt)


class _Meant(NamedTuple):
    """What a batch is by the record as it is put right."""

    food: FoodFacts
    method: Method
    size: str
    record: dict[str, str]
    made: date | None


def _details(batch: Batch, process: Sequence[tuple[str, str]]) -> Details:
    """What is now said of its process. Raises BadInput for what is not understood, or is said in
    another way."""
    details = read_details(process)
    if details.problems:
        raise BadInput(details.problems[0])
    keys = dict(details.pairs)
    if "printed" in keys:
        raise BadInput("Say --printed DATE to correct the printed date.")
    if "amount" in keys:
        raise BadInput(
            f"How much of {batch.code} there is, is counted: count the place where it stands, and "
            "give it what is there."
        )
    return details


def _against(
    p: Pantry, batch: Batch, meant: _Meant, note: str | None, keys: Collection[str], *, other: bool
) -> Doubt:
    """What stands against it as it is put right, `keys` of its record too. Where nothing but its
    note is (no `other`), what stood against it stands: a note lifts nothing."""
    feet, signed = strictest_altitude(p, batch), signed_of(p, batch)
    told = batch.note if note is None else note
    used = used_in(p, batch)

    def judged(record: dict[str, str], note: str) -> Doubt:
        told = meant.method, meant.food, meant.size, record, feet, note, used, meant.made
        return checked(p, *told) or NOTHING

    found = judged(meant.record, told)
    if other:
        stays = unanswered(batch.doubt, told, batch.code, keys, signed)
        possible = found.still_possible or (batch.possible if stays else "")
        return Doubt(tuple(dict.fromkeys((*found.problems, *stays))), possible)
    was = judged(_readable(batch.process), batch.note)
    before = (one for one in (*batch.doubt, *was.problems) if not _named(one, signed))
    every = tuple(dict.fromkeys((*before, *found.problems)))
    return Doubt(every, found.still_possible or batch.possible or was.still_possible)


def _refuse_unculled(p: Pantry, batch: Batch, note: str) -> None:
    """Raises Refused where a note of bad pieces would go, and nobody looked the pile over since."""
    told = culled_of(batch)
    if not told or culled_of(replace(batch, note=note)):
        return
    lying = (one for one in p.containers_of(batch) if one.here)
    if any(one.looked is None or one.looked_at < batch.noted for one in lying):
        raise Refused(
            f"Its note says {told[0]!r}: take the bad ones out first and book "
            f'`sign {batch.code} "looks sound"`; then put the note right.'
        )


def _left_out(note: str, method: Method, record: Mapping[str, str]) -> dict[str, str]:
    """What a note says was left out and the record did not know. Raises BadInput where it says the
    contrary."""
    if wrong := contradicted(note, method, record):
        raise BadInput(wrong)
    told = said_anywhere(note, method)
    return {key: value for key, value in told.items() if is_unknown(record.get(key, ""))}


def _unsaid(batch: Batch, said_now: Sequence[tuple[str, str]]) -> tuple[str, ...]:
    """The keys of which something was told, and of which it is now said that nobody knows."""
    told = {key for key, value in _readable(batch.process).items() if not is_unknown(value)}
    return tuple(key for key, value in said_now if is_unknown(value) and key in told)


def _refuse_unsaid(p: Pantry, batch: Batch, unsaid: Sequence[str]) -> None:
    """What stands against a batch stands until somebody says what was true instead; that nobody
    knows says nothing. Raises Refused."""
    if not unsaid:
        return
    old = _readable(batch.process)
    less = {key: value for key, value in old.items() if key not in unsaid}
    high = strictest_altitude(p, batch)
    was, now = (as_recorded(p, batch, high, one).problems for one in (old, less))
    if not set(was) <= set(now):
        raise Refused(_still_counts(batch, unsaid))


def _still_counts(batch: Batch, unsaid: Sequence[str]) -> str:
    old = _readable(batch.process)
    told = " and ".join(f"{key}={old[key]}" for key in unsaid)
    return (
        f"{told} was told of {batch.code}, and it counts until you say what it was instead: that "
        "nobody knows makes no verdict milder. Leave it out, or write what is true."
    )


def _judged(p: Pantry, batch_id: str) -> dict[str, Judgement]:
    """What is still there of a batch, by container."""
    return {one.id: p.judge(one) for one in p.containers_of(p.stock.batches[batch_id]) if one.here}


def _judged_made(p: Pantry, batch_id: str) -> dict[str, dict[str, Judgement]]:
    """The same of every batch that was made of it, and of what was made of those."""
    found: dict[str, dict[str, Judgement]] = {}
    waiting = [batch_id]
    while waiting:
        for id_ in p.stock.batches[waiting.pop()].into:
            if id_ not in found and id_ in p.stock.batches:
                found[id_] = _judged(p, id_)
                waiting.append(id_)
    return found


def _changed(p: Pantry, before: Mapping[str, Mapping[str, Judgement]]) -> str:
    """A sentence for each batch that was made of it and is judged otherwise by this record."""
    told = []
    for id_, was in before.items():
        now, batch = _judged(p, id_), p.stock.batches[id_]
        told += [
            f" {batch.code} {clean(batch.food.name)}, which was made of it, is {new} by it, until "
            f"now {old}."
            for old, new in otherwise(was, now)
        ]
    return "".join(told)


def otherwise(
    before: Mapping[str, Judgement], after: Mapping[str, Judgement]
) -> Sequence[tuple[str, str]]:
    """What some containers were judged, and are now, each pair once."""
    pairs = ((_told(one), _told(after[box])) for box, one in before.items() if box in after)
    return [*dict.fromkeys(pair for pair in pairs if pair[0] != pair[1])]


def _milder(before: Mapping[str, Judgement], after: Mapping[str, Judgement]) -> str:
    """A sentence where the record makes the verdict of any container milder: it does so only if it
    is true."""
    for id_, was in before.items():
        now = after.get(id_, was)
        if _is_milder(was, now):
            return f" That makes it milder: {_told(was)} until now, {_told(now)} by this record."
    return ""


def _is_milder(before: Judgement, after: Judgement) -> bool:
    order = SEVERITY.index
    last = before.discard_after
    gone = after.verdict is Verdict.DISCARD or (before.usable and not after.usable)
    later = last is not None and not gone and (after.discard_after or date.max) > last
    offered = after.usable and not before.usable
    return later or offered or order(after.verdict) > order(before.verdict)


def _told(one: Judgement) -> str:
    more = [_OFFERED[one.usable]] if one.verdict is Verdict.UNKNOWN else []
    more += [f"discard after {dates.say(one.discard_after)}"] if one.discard_after else []
    return f"{one.verdict} ({', '.join(more)})" if more else one.verdict.value


#: What says something of its record, and is nothing that was done to it.
_NOT_DONE_TO_IT = said.PutUp | said.Correct | said.ClockAhead | said.Relabelled

#: What is unknown is offered where it cannot hurt.
_OFFERED = {True: "offered, last", False: "not offered"}


def _readable(pairs: Sequence[tuple[str, str]]) -> dict[str, str]:
    """The old record under the names that are known today; what is not understood stays as it is
    and so makes a doubt."""
    return {key_named(key) or key: value for key, value in pairs}


def _day(p: Pantry, batch_id: str, made: str) -> date | None:
    """The day made, not after anything else that happened to the batch: on the day on which it was
    put up that is the minute of it, where the hour is known."""
    if made.strip().lower() in ("unknown", "?"):
        return None
    day = dates.read_date(made, p.today)
    began = date.max, 0
    later = [(p.today, p.clock.now.last)]
    for event in standing(log.of_batch(p.store.db, batch_id)):
        if isinstance(event.payload, said.PutUp) and event.payload.batch == batch_id:
            began = event.day, when(event).first
        elif not isinstance(event.payload, _NOT_DONE_TO_IT):
            later.append((event.day, when(event).last))
    first = min(later)
    if day > first[0] or (day == first[0] == began[0] and first[1] < began[1]):
        raise BadInput(f"{dates.say(day)} is after something that was done to it already.")
    return day
