"""A count: the stock check of one place. Expected against counted, booked in one transaction.

What was counted so far is kept in the store after every key, so a count can be stopped anywhere,
survives a killed terminal and goes on later on the same line.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field

from pantry_tui.core.log.payloads import Back, Count, Fate, Found, Gone
from pantry_tui.core.model import Container, Place
from pantry_tui.core.words import State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Difference, Done, RoundLine
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.pick import batch_named, last_state, name_of
from pantry_tui.services.stock.seen import At, when

#: What a difference is booked as. All gone may stand elsewhere, so it is missing, not eaten.
UNRECORDED, MISSING = Fate.UNRECORDED, Fate.MISSING
FOUND = "found"
#: Fates that a later count may take back: nobody saw it leave.
UNSEEN = (UNRECORDED, MISSING)


@dataclass(slots=True)
class Draft:
    """A count as far as it got: counts by line key, lines of unlisted finds, the present line, and
    what was done in turn (a line's key, "" for a find)."""

    seen: dict[str, int] = field(default_factory=dict)
    finds: list[str] = field(default_factory=list)
    at: str = ""
    turns: list[str] = field(default_factory=list)


def _name(place: Place) -> str:
    return f"round:{place.id}"


def draft(p: Pantry, place: Place) -> Draft:
    """The unfinished count of a place, or an empty one."""
    kept = p.store.draft(_name(place))
    return Draft(**kept) if kept else Draft()


def _keep(p: Pantry, place: Place, now: Draft) -> None:
    p.store.keep_draft(_name(place), asdict(now))


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
                sum(one.here for one in group),
                now.seen.get(key),
                name_of(p, next((one for one in group if one.here), group[0])),
            )
        )
    return sorted(found, key=lambda one: (one.place.lower(), one.food, one.code, one.state))


def count(p: Pantry, place: Place, key: str, seen: int) -> None:
    """Keep one line's count; nothing is booked yet. Raises BadInput."""
    if not 0 <= seen <= 999:
        raise BadInput("A count lies between 0 and 999.")
    now = draft(p, place)
    now.seen[key] = seen
    now.at = key
    now.turns = [*(one for one in now.turns if one != key), key]
    _keep(p, place, now)


def uncount(p: Pantry, place: Place, key: str) -> None:
    """Take one line's count back."""
    now = draft(p, place)
    now.seen.pop(key, None)
    now.turns = [one for one in now.turns if one != key]
    _keep(p, place, now)


def take_back(p: Pantry, place: Place) -> tuple[Done, str] | None:
    """Take back the last count or find of an unfinished count: what it was, and the key of its
    line; None when nothing was counted."""
    now = draft(p, place)
    if not now.turns:
        return None
    key = now.turns[-1]
    if key:
        food = next((line.food for line in lines(p, place) if line.key == key), "that line")
        uncount(p, place, key)
        return Done(f"Took back the count of {food}."), key
    now.turns.pop()
    found = now.finds.pop()
    _keep(p, place, now)
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
    now = draft(p, place)
    now.finds.append(shown)
    now.turns.append("")
    _keep(p, place, now)
    return shown


def differences(p: Pantry, place: Place) -> list[Difference]:
    """Where counted and expected differ, and what each will be booked as."""
    found = [
        Difference(line.code, line.food, line.place, line.expected, line.seen, _kind(line))
        for line in lines(p, place, gone=True)
        if line.seen is not None and line.seen != line.expected
    ]
    finds = (putup.read(p, text) for text in draft(p, place).finds)
    found += [Difference("", one.food, one.place, 0, one.count, FOUND) for one in finds]
    return found


def _kind(line: RoundLine) -> str:
    assert line.seen is not None
    if line.seen > line.expected:
        return FOUND
    return MISSING if line.seen == 0 else UNRECORDED


@booked
def finish(p: Pantry, place: Place, *, at: At | None = None) -> Done:
    """Book every difference and the day of the check in one transaction."""
    differs = differences(p, place)
    finds = [putup.read(p, text) for text in draft(p, place).finds]
    with p.together():
        p.book(_counted(p, place), **when(at))
        for reading in finds:
            putup.put_up(p, reading)
    p.store.keep_draft(_name(place), None)
    said = "; ".join(_say(one) for one in differs) or "all as expected"
    return Done(f"Checked {p.place_paths()[place.id]}: {said}.")


def give_up(p: Pantry, place: Place) -> Done:
    """Forget an unfinished count; nothing of it is booked."""
    p.store.keep_draft(_name(place), None)
    return Done(f"Forgot the count of {place.name}; nothing was booked.")


def _say(one: Difference) -> str:
    number = abs((one.seen or 0) - one.expected)
    return f"{number} {one.food} {one.booked_as}"


def _counted(p: Pantry, place: Place) -> Count:
    gone: list[Gone] = []
    back: dict[str, str] = {}
    new: list[Found] = []
    known: dict[str, int] = {}
    for line in lines(p, place, gone=True):
        if line.seen is None or line.seen == line.expected:
            continue
        where, batch_id, state = line.key.split("|")
        if line.seen < line.expected:
            fate = MISSING if line.seen == 0 else UNRECORDED
            missing = _standing(p, where, batch_id, state)[: line.expected - line.seen]
            gone += [Gone(one.id, fate) for one in missing]
            continue
        extra = line.seen - line.expected
        mine = p.containers_of(p.stock.batches[batch_id])
        returned = [c.id for c in mine if not c.here and c.fate in UNSEEN and c.id not in back]
        back |= dict.fromkeys(returned[:extra], where)
        count = extra - len(returned[:extra])
        if count:
            number = known.setdefault(batch_id, len(mine))
            known[batch_id] = number + count
            ids = tuple(f"{batch_id}.{number + n}" for n in range(1, count + 1))
            new.append(Found(batch_id, where, State(state), ids))
    return Count(place.id, tuple(gone), tuple(Back(*one) for one in back.items()), tuple(new))


def _standing(p: Pantry, where: str, batch_id: str, state: str) -> list[Container]:
    """The oldest first: what was eaten unseen was most likely taken from the front."""
    found = [
        c
        for c in p.containers_of(p.stock.batches[batch_id])
        if c.here and c.place == where and c.state.value == state
    ]
    return sorted(found, key=lambda c: bool(c.reserved))  # nobody eats a gift unseen


def from_counts(p: Pantry, place: Place, seen: Mapping[str, int]) -> list[Difference]:
    """Counts by lid code, for the command line. Raises BadInput, Refused."""
    for code, number in seen.items():
        batch = batch_named(p, code)
        mine = [line for line in lines(p, place, gone=True) if line.code == batch.code]
        if not mine:
            raise Refused(f"{batch.code} is not known to stand in {place.name}: move it first.")
        _spread(p, place, mine, number)
    return differences(p, place)


def _spread(p: Pantry, place: Place, mine: Sequence[RoundLine], number: int) -> None:
    """One number over several lines of a batch: filled from the first, the rest on the last."""
    left = number
    for line in mine[:-1]:
        count(p, place, line.key, min(left, line.expected))
        left -= min(left, line.expected)
    count(p, place, mine[-1].key, left)


def next_places(p: Pantry) -> list[tuple[Place, int | None]]:
    """Which place to count next: the longest unchecked with the most in it first; the days since
    its last check, None when it never was."""
    standing: dict[str, int] = defaultdict(int)
    for container in p.stock.containers.values():
        if container.here:
            standing[container.place] += 1
    aged = [
        (pl, None if pl.checked is None else (p.today - pl.checked).days)
        for pl in p.stock.places.values()
        if standing[pl.id]
    ]

    def worth(one: tuple[Place, int | None]) -> tuple[float, str]:
        place, days = one
        return (-(400.0 if days is None else days) * standing[place.id], place.name)

    return sorted(aged, key=worth)
