"""Canned batches are checked again when the household says where it cooks: those of which nobody
knew the altitude, and, where it is higher than was said before, those that were judged by the lower
one. Nobody knows which of the two was true of a jar, so the stricter counts until its own record
says it (`correct CODE --process altitude=500ft`)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.payloads import Correct
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.record import known
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.checked import as_recorded
from pantry_tui.services.pantry import Pantry
from pantry_tui.store import log

#: How the record of a batch says that nobody knew (core.safety.record).
_UNKNOWN = ("altitude", "unknown")


def strictest_altitude(p: Pantry, batch: Batch) -> int | None:
    """The highest feet that the household said at any time since the batch was put up, what stood
    then among them; None where nobody said."""
    heights: list[int] = []
    for event, feet in p.once("altitudes", lambda: list(_altitudes(p))):
        if _before(event, batch):
            heights.clear()
        heights.append(feet)
    return max(heights, default=None)


def _altitudes(p: Pantry) -> Iterator[tuple[Event, int]]:
    for event in standing(log.of_household(p.store.db)):
        if isinstance(event.payload, said.Household) and event.payload.altitude_ft is not None:
            yield event, event.payload.altitude_ft


def _before(event: Event, batch: Batch) -> bool:
    """Whether it was booked before the batch; by the day alone where the batch came with an id of
    another kind."""
    mine = batch.id[1:]
    if len(mine) == len(event.id):
        return event.id < mine
    return batch.booked is not None and event.day < batch.booked


def for_altitude(p: Pantry, was: int | None, since: Event | None = None) -> tuple[str, ...]:
    """Check each of them for the altitude of the household, which was another one (`was`, None
    where nobody had said); with `since` those alone that were put up after that act. What is said
    of those that it leaves in doubt. Inside the transaction of whoever books the altitude."""
    now = p.altitude_ft
    if now is None:
        return ()
    higher = was is None or now > was
    found: list[str] = []
    for batch in list(p.stock.batches.values()):
        if since is not None and not _before(since, batch):
            continue
        if _UNKNOWN in batch.process:
            found.append(_said_at_last(p, batch))
        elif higher and batch.method in LIDDED and "altitude" not in known(batch.process):
            found.append(_higher(p, batch))
    return tuple(one for one in found if one)


class Canned(NamedTuple):
    """How what was canned and is still there is judged, by container, and what stood against each
    batch; to be held against how it is once another altitude counts."""

    verdicts: Mapping[str, Verdict]
    doubts: Mapping[str, tuple[str, ...]]


def canned(p: Pantry) -> Canned:
    """As it is now."""
    batches = [one for one in p.stock.batches.values() if one.method in LIDDED]
    here = [one for batch in batches for one in p.containers_of(batch) if one.here]
    doubts = {batch.id: batch.doubt for batch in batches}
    return Canned({one.id: p.judge(one).verdict for one in here}, doubts)


def said_of_change(p: Pantry, before: Canned, was: int | None) -> tuple[str, ...]:
    """What another altitude did to the verdicts, how many to what, and how a jar is put right that
    was canned elsewhere; of a lower one, which it leaves as they are."""
    now, after = p.altitude_ft, canned(p)
    if now is None:
        return ()
    pairs = ((before.verdicts.get(id_, new), new) for id_, new in after.verdicts.items())
    moved = Counter((old, new) for old, new in pairs if old is not new)
    told = [
        f"By {now:,} ft {n} canned container{'s' if n > 1 else ''} {'are' if n > 1 else 'is'} "
        f"judged {new}, until now {old}."
        for (old, new), n in moved.items()
    ]
    told += [
        _lower_down(p.stock.batches[id_], new[0])
        for id_, doubt in after.doubts.items()
        if (new := [one for one in doubt if one not in before.doubts.get(id_, doubt)])
    ]
    if was is not None and now < was:
        told += _stays(p, now)
    return tuple(told)


def _lower_down(batch: Batch, why: str) -> str:
    return (
        f"{batch.code} {batch.food.name}: {why} If the household moved and it was canned lower "
        f"down, say so: `pantry-tui correct {batch.code} --process altitude=500ft`, with its own "
        "altitude."
    )


def _stays(p: Pantry, now: int) -> list[str]:
    """What a higher altitude that was said meanwhile holds in doubt."""
    held = []
    for batch in p.stock.batches.values():
        high = strictest_altitude(p, batch) or now
        if batch.method not in LIDDED or high <= now or "altitude" in known(batch.process):
            continue
        here = as_recorded(p, batch, now).problems
        if any(one not in here for one in batch.doubt):
            held.append(
                f"{batch.code} {batch.food.name} stays judged by {high:,} ft, the highest that was "
                "said since it was put up: a lower altitude lifts nothing. Say where it was "
                f"canned: `pantry-tui correct {batch.code} --process altitude={now}ft`."
            )
    return held


def _said_at_last(p: Pantry, batch: Batch) -> str:
    record = tuple(pair for pair in batch.process if pair != _UNKNOWN)
    found = as_recorded(p, batch, p.altitude_ft, dict(record))
    problems = found.problems
    p.book(Correct(batch.id, process=record, doubt=problems, possible=found.still_possible))
    return f"{batch.code} {batch.food.name}: {problems[0]}" if problems else ""


def _higher(p: Pantry, batch: Batch) -> str:
    """What its process was too little for there, beside what was wrong with it before."""
    found = as_recorded(p, batch, p.altitude_ft)
    new = tuple(one for one in found.problems if one not in batch.doubt)
    if not new:
        return ""
    p.book(Correct(batch.id, doubt=(*batch.doubt, *new), possible=found.still_possible))
    return _lower_down(batch, new[0])
