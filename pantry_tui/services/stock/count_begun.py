"""A count that is begun: what was counted so far is kept in the store after every key, so that it
can be stopped anywhere, survives a killed terminal and goes on later on the same line. All windows
go on with one count of a place, and each says what it saw of it (`saw`)."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Collection, Sequence
from dataclasses import asdict, dataclass, field

from pantry_tui.core.log.returned import UNSEEN
from pantry_tui.core.model import Container, Place
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, RoundLine
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.pick import last_state, name_of


@dataclass(slots=True)
class Draft:
    """A count as far as it got: counts by line key and what was expected then, lines of unlisted
    finds, the present line, and what was done in turn (a line's key, "" for a find)."""

    seen: dict[str, int] = field(default_factory=dict)
    expected: dict[str, int] = field(default_factory=dict)
    finds: list[str] = field(default_factory=list)
    at: str = ""
    turns: list[str] = field(default_factory=list)


def _name(place: Place) -> str:
    return f"round:{place.id}"


def draft(p: Pantry, place: Place) -> Draft:
    """The unfinished count of a place, or an empty one."""
    kept = p.store.draft(_name(place))
    return Draft(**kept) if kept else Draft()


def keep(p: Pantry, place: Place, now: Draft | None) -> None:
    """The count of a place is as far as this; None: there is none."""
    p.store.keep_draft(_name(place), None if now is None else asdict(now))


def lines(p: Pantry, place: Place, *, gone: bool = False) -> list[RoundLine]:
    """What should stand there, in walking order, grouped by batch and state; also what a count of
    today did not find (with `gone`: any count), since it may be counted again."""
    within, paths, now = inside(p, place.id), p.place_paths(), draft(p, place)
    groups: dict[tuple[str, str, State], list[Container]] = defaultdict(list)
    for container in p.stock.containers.values():
        if container.place not in within:
            continue
        unseen = container.fate in UNSEEN and (gone or container.ended == p.today)
        if container.here or unseen:
            groups[container.place, container.batch, last_state(container)].append(container)
    found = []
    for (where, batch_id, state), group in groups.items():
        batch = p.stock.batches[batch_id]
        key = f"{where}|{batch_id}|{state}"
        found.append(
            RoundLine(
                key,
                batch.code,
                batch.food.name,
                batch.method,
                paths[where],
                state,
                batch.size,
                _expected(group),
                now.seen.get(key),
                name_of(p, next((one for one in group if one.here), group[0])),
                _is_pile(group),
                "" if batch.size else _holds(group),
            )
        )
    return sorted(found, key=lambda one: (one.place.lower(), one.food, one.code, one.state))


def _is_pile(group: Sequence[Container]) -> bool:
    """Whether it lies loose and is counted piece by piece."""
    return all(one.vessel is Vessel.PIECES and one.bulk for one in group)


def _holds(group: Sequence[Container]) -> str:
    """What is left of the only lot that is weighed out; "" of anything else."""
    here = [one for one in group if one.here]
    lot = here[0].left if len(here) == 1 else None
    return str(lot) if lot is not None and lot.unit else ""


def _expected(group: Sequence[Container]) -> int:
    if not _is_pile(group):
        return sum(one.here for one in group)
    return sum(math.ceil(one.left.number) for one in group if one.here and one.left)


@booked
def count(p: Pantry, place: Place, key: str, seen: int, *, saw: Draft | None = None) -> None:
    """Keep one line's count; nothing is booked yet. Raises BadInput; Refused where another window
    has counted that line since the count was as in `saw`."""
    if not 0 <= seen <= 999:
        raise BadInput("A count lies between 0 and 999.")
    for line in lines(p, place, gone=True):
        if line.key == key and line.pieces and seen > line.expected:
            raise BadInput(
                f"Only {line.expected} of {line.code} {line.food} are recorded: put up the others "
                "as a batch of their own."
            )
    now = draft(p, place)
    _refuse_if_counted(p, place, now, saw, {key})
    now.seen[key] = seen
    now.expected[key] = next((one.expected for one in lines(p, place) if one.key == key), 0)
    now.at = key
    now.turns = [*(one for one in now.turns if one != key), key]
    keep(p, place, now)


@booked
def uncount(p: Pantry, place: Place, key: str, *, saw: Draft | None = None) -> None:
    """Take one line's count back. Raises Refused as `count` does."""
    now = draft(p, place)
    _refuse_if_counted(p, place, now, saw, {key})
    now.seen.pop(key, None)
    now.expected.pop(key, None)
    now.turns = [one for one in now.turns if one != key]
    keep(p, place, now)


def _refuse_if_counted(
    p: Pantry, place: Place, now: Draft, saw: Draft | None, keys: Collection[str]
) -> None:
    """Raises Refused, naming the first of these lines that another window has counted otherwise
    since the count was as in `saw`."""
    if saw is None:
        return
    for line in lines(p, place, gone=True):
        was = saw.seen.get(line.key)
        if line.key in keys and now.seen.get(line.key) != was:
            counted = "its count was taken back" if line.seen is None else f"it says {line.seen}"
            raise Refused(
                f"{line.code} {line.food} was counted in another window meanwhile: {counted} now. "
                "Look again, then count it."
            )


@booked
def take_back(p: Pantry, place: Place, *, saw: Draft | None = None) -> tuple[Done, str] | None:
    """Take back the last count or find of an unfinished count: what it was, and the key of its
    line; None when nothing was counted. Raises Refused as `finish` does."""
    now = draft(p, place)
    refuse_other(p, place, now, saw)
    if not now.turns:
        return None
    key = now.turns[-1]
    if key:
        food = next((line.food for line in lines(p, place) if line.key == key), "that line")
        uncount(p, place, key)
        return Done(f"Took back the count of {food}."), key
    now.turns.pop()
    found = now.finds.pop()
    keep(p, place, now)
    return Done(f"Took back what stood unlisted: {found}."), key


def add_find(p: Pantry, place: Place, line: str) -> str:
    """Keep something unlisted: a put-up line, the place and an unknown date filled in.

    Returns the line as kept. Raises BadInput when it could not be put up like this.
    """
    shown = line.strip().rstrip(",")
    if "made" not in shown.lower():
        shown += ", made unknown"
    if not putup.read(p, shown).place:
        shown += f", {p.place_paths()[place.id].replace('›', ' ')}"
    reading = putup.read(p, shown)
    if reading.unread or reading.problems:
        first = reading.problems[0] if reading.problems else f"{reading.unread[0]!r} is unclear."
        raise BadInput(first)
    with p.writing():
        now = draft(p, place)
        now.finds.append(shown)
        now.turns.append("")
        keep(p, place, now)
    return shown


def refuse_other(p: Pantry, place: Place, now: Draft, saw: Draft | None) -> None:
    """Raises Refused where another window went on with the count, or ended it."""
    if saw is None or now == saw:
        return
    if not now.turns:
        raise Refused(
            f"The count of {place.name} was ended in another window: nothing is booked from here. "
            "Look at what stands there now."
        )
    _refuse_if_counted(p, place, now, saw, now.seen.keys() | saw.seen.keys())
    raise Refused(
        f"What stands unlisted in {place.name} was changed in another window: look again, then "
        "book it."
    )
