"""Empty jars by size, new lids, and jars that are lent.

What stands empty follows from the last count: a batch takes jars and lids, a jar that was used is
empty again (its lid is not new), what was given away, broken or is missing took its jar along.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import Batch
from pantry_tui.core.safety.jars import JARS, read_jar
from pantry_tui.core.text import agreed, counted
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.store import log
from pantry_tui.store.store import reading

LIDS = "lids"


class JarRow(NamedTuple):
    """One size: how many stand empty, how many are in use, who has how many. Of lids only how many
    are new."""

    size: str
    empty: int
    in_use: int
    lent: dict[str, int]


def jars(p: Pantry) -> list[JarRow]:
    """Every size that was ever counted, the smallest first, then the lids."""
    return p.once("jars", lambda: _reckoned(p))


def _reckoned(p: Pantry) -> list[JarRow]:
    last: dict[str, Event] = {}
    with reading(p.path):
        counted = log.of_kinds(p.store.db, ["jars_counted"])
    for event in counted:
        assert isinstance(event.payload, said.JarsCounted)
        last[event.payload.size] = event
    now = _in_use(p) if last else {}
    return [_row(p, size, last[size], now) for size in (*JARS, LIDS) if size in last]


def _row(p: Pantry, size: str, counted: Event, now: dict[str, int]) -> JarRow:
    told = counted.payload
    assert isinstance(told, said.JarsCounted)
    since = [event for event in p.standing if event.id > counted.id]
    if size == LIDS:
        return JarRow(size, max(0, told.empty - _lids_taken(since)), 0, {})
    lent = _lent(event for event in p.standing if _about(event, size))
    out = sum(_lent(event for event in since if _about(event, size)).values())
    owned = told.empty + told.in_use - _gone(p, size, since)
    return JarRow(size, max(0, owned - now[size] - out), now[size], lent)


def _about(event: Event, size: str) -> bool:
    return isinstance(event.payload, said.JarsLent) and event.payload.size == size


def _lent(events: Iterable[Event]) -> dict[str, int]:
    """Who has how many; nobody who gave all of them back."""
    found: dict[str, int] = defaultdict(int)
    for event in events:
        if isinstance(event.payload, said.JarsLent):
            found[event.payload.to] += event.payload.count
    return {who: count for who, count in found.items() if count}


def _size(batch: Batch) -> str:
    """The size of its jars, "" where it stands in none."""
    if "jar" not in batch.size.casefold():
        return ""
    found = read_jar(batch.size)
    return found if found in JARS else ""


def _in_use(p: Pantry) -> dict[str, int]:
    """Jars that stand full or begun, by size."""
    found: dict[str, int] = defaultdict(int)
    for container in p.stock.containers.values():
        if container.here:
            found[_size(p.stock.batches[container.batch])] += 1
    return found


def _lids_taken(since: Iterable[Event]) -> int:
    """A lid serves once (USDA AIB 539): every jar put up under one takes a new one."""
    return sum(
        len(event.payload.containers)
        for event in since
        if isinstance(event.payload, said.PutUp) and event.payload.method in LIDDED
    )


def _gone(p: Pantry, size: str, since: Iterable[Event]) -> int:
    """Jars that left with what was in them: given, missing, broken."""
    total = 0
    for event in since:
        payload = event.payload
        broken = isinstance(payload, said.Discard) and payload.reason is said.Reason.BROKEN
        if not (broken or isinstance(payload, said.Give | said.Missing)):
            continue
        batch = p.stock.batches.get(event.batch)
        if batch is None or _size(batch) != size:
            continue
        found = [p.stock.containers.get(id_) for id_ in event.containers]
        total += sum(1 for one in found if one is not None and not one.here)
    return total


def _named(text: str) -> str:
    """("pints") -> "pint"; "lids" as it is. Raises BadInput."""
    plain = text.casefold().replace("jars", "").replace("jar", "").strip()
    if plain in ("lid", LIDS):
        return LIDS
    word = "-".join(plain.removesuffix("s").split())
    if word in JARS:
        return word
    found = read_jar(plain)
    if found not in JARS:
        raise BadInput(f"{text[:30]!r} is no size of jar: {', '.join(JARS)}, or lids.")
    return str(found)


@booked
def count(p: Pantry, size: str, empty: int) -> Done:
    """So many of a size stand empty now, or so many new lids are there."""
    name = _named(size)
    in_use = 0 if name == LIDS else _in_use(p)[name]
    p.book(said.JarsCounted(name, empty, in_use))
    jar = agreed(empty, "jar", "jars")
    what = f"new {agreed(empty, 'lid', 'lids')}" if name == LIDS else f"empty {name} {jar}"
    also = f", {in_use} more in use" if in_use else ""
    return Done(f"{empty} {what}{also}.", ())


@booked
def lend(p: Pantry, size: str, number: int, to: str) -> Done:
    """Empty jars went to somebody. Raises Refused for more than stand empty."""
    row, who = _known(p, size), _who(to)
    if number < 1:
        raise BadInput("Say how many, like 6.")
    if number > row.empty:
        raise Refused(
            f"Only {_jars(row.empty, row.size)} {agreed(row.empty, 'stands', 'stand')} empty: "
            "count them again if not."
        )
    p.book(said.JarsLent(row.size, number, who))
    return Done(f"{_jars(number, row.size)} {agreed(number, 'is', 'are')} with {who}.", ())


@booked
def back(p: Pantry, size: str, number: int, who: str) -> Done:
    """They came back. Raises Refused for more than somebody has."""
    row, name = _known(p, size), _who(who)
    has = row.lent.get(name, 0)
    if number < 1:
        raise BadInput("Say how many, like 6.")
    if number > has:
        raise Refused(f"{name} has {_jars(has, row.size)} of yours.")
    p.book(said.JarsLent(row.size, -number, name))
    return Done(f"{_jars(number, row.size)} came back from {name}.", ())


def _jars(number: int, size: str) -> str:
    """ "1 pint jar", "6 half-pint jars"."""
    return f"{number} {size} {agreed(number, 'jar', 'jars')}"


def _who(text: str) -> str:
    words = text.split()
    if words and words[0].casefold() in ("to", "from", "with"):
        words = words[1:]
    if not words:
        raise BadInput("Say who has them, like: to Aunt Sunniva.")
    return " ".join(words)


def _known(p: Pantry, size: str) -> JarRow:
    name = _named(size)
    if name == LIDS:
        raise BadInput("Lids are used once and not lent: name a size of jar.")
    row = next((one for one in jars(p) if one.size == name), None)
    if row is None:
        raise Refused(f"Count your empty {name} jars first: pantry-tui jars count {name} 40.")
    return row


def short(p: Pantry, size: str, wanted: int) -> str:
    """ "22 empty, 18 short", with the lids; "" where nobody ever counted."""
    rows = {one.size: one for one in jars(p)}
    parts = []
    for name, what in ((size, "empty"), (LIDS, "lids")):
        if name in rows:
            missing = wanted - rows[name].empty
            more = f", {missing} short" if missing > 0 else ""
            parts.append(f"{rows[name].empty} {what}{more}")
    return "; ".join(parts)


def enough(p: Pantry, wanted: Sequence[tuple[str, int, bool]]) -> list[str]:
    """Whether the jars and lids are there for a plan of (container, how many, whether it takes a
    lid), in sentences."""
    plan: dict[str, int] = defaultdict(int)
    total = sum(number for _, number, lidded in wanted if lidded)
    for container, number, _ in wanted:
        found = read_jar(container) if "jar" in container.casefold() else None
        if found in JARS:
            plan[str(found)] += number
    found_rows = {one.size: one for one in jars(p)}
    said_of = []
    for size, number in plan.items():
        if number and size in found_rows:
            have = found_rows[size].empty
            verdict = "enough" if have >= number else f"{number - have} short"
            said_of.append(
                f"The plan takes {_jars(number, size)}; {have} "
                f"{agreed(have, 'stands', 'stand')} empty: {verdict}."
            )
    if total and LIDS in found_rows:
        have = found_rows[LIDS].empty
        verdict = "enough" if have >= total else f"{total - have} short"
        said_of.append(
            f"The plan takes {counted(total, 'lids')}; {have} {agreed(have, 'is', 'are')} new: "
            f"{verdict}."
        )
    return said_of
