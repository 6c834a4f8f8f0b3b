"""What two logs that had parted need beside their events, so that both come out as one. Pure.

Everything here is made from the events alone, and which of the two logs is called the own one
makes no difference: both households book the same events with the same ids, whoever imports first,
and what each has booked already is made no second time.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from datetime import UTC, datetime
from hashlib import sha256
from itertools import count
from typing import Any, NamedTuple, TypeVar

from pantry_tui.core.dataclass import replace
from pantry_tui.core.lidcode import code_at
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.codec import write
from pantry_tui.core.log.details import both, differ
from pantry_tui.core.log.events import Event, new_id, standing, undone
from pantry_tui.core.log.home import fold_household
from pantry_tui.core.log.one_sided import brought_again
from pantry_tui.core.log.references import names_of
from pantry_tui.core.log.whole import fold
from pantry_tui.core.model import Place, Stock
from pantry_tui.core.words import ASSUMED_F

T = TypeVar("T")
_START = datetime(1970, 1, 1, tzinfo=UTC)


class Parted(NamedTuple):
    """Two logs: what only the one has, what only the other has, what both have."""

    ours: Sequence[Event]
    theirs: Sequence[Event]
    shared: Sequence[Event]

    @property
    def all(self) -> list[Event]:
        return sorted((*self.shared, *self.ours, *self.theirs), key=lambda one: one.id)


def settle(parted: Parted) -> list[Event]:
    """The events that both logs need beside their own: what was taken back under an act of the
    other log, or in one log alone and can only make food judged more strictly, stands again, a
    place with stock in it stands again, of equal lid codes and places of one name the later gets
    another, and of two words on one thing the stricter counts."""
    made = list(brought_again(parted.ours, parted.theirs, parted.shared, after))
    known = {one.id for one in parted.shared}
    for step in (_brought_again, _places_again, _lid_codes, _place_names):
        while found := step([*parted.all, *made], known):
            made += found
    return made + list(_stricter(parted))


def after(base: Sequence[Event], payload: said.Payload) -> Event:
    """An event that is the same wherever it is made: just after the last of `base`."""
    last = max(base, key=lambda one: one.id)
    id_ = new_id(_START, last.id, sha256((last.id + write(payload)).encode()).digest()[:4])
    return Event(id_, max(one.recorded for one in base), max(one.day for one in base), payload)


# -- taken back in one log, rested on in the other -------------------------------------------------


def _brought_again(events: Sequence[Event], shared: set[str]) -> list[Event]:
    """A redo of each undo that takes the ground from an act which stands."""
    gone = undone(events)
    made = {name: one for one in events if one.id in gone for name in _creates(one.payload)}
    for event in standing(events):
        if isinstance(event.payload, said.Relabelled):
            continue
        for name in names_of(event.payload):
            if name in made and (undo := _last_undo(events, made[name].id)) is not None:
                if {undo.id, event.id} <= shared:
                    continue
                assert isinstance(undo.payload, said.Undo)
                return [after([undo], said.Redo(undo.id, undo.payload.events))]
    return []


def _creates(payload: said.Payload) -> tuple[str, ...]:
    match payload:
        case said.PutUp():
            return (payload.batch, *payload.containers)
        case said.Count():
            return tuple(id_ for one in payload.new for id_ in one.containers)
        case said.PlaceAdded():
            return (payload.place,)
    return ()


def _last_undo(events: Iterable[Event], id_: str) -> Event | None:
    undos = [one for one in events if isinstance(one.payload, said.Undo)]
    mine = [one for one in undos if id_ in one.payload.events]  # type: ignore[union-attr]
    return max(mine, key=lambda one: one.id, default=None)


def _places_again(events: Sequence[Event], _shared: set[str]) -> list[Event]:
    """The removal of a place counts no more where something stands in it."""
    stock = fold(events)
    needed = {one.place for one in stock.containers.values() if one.here}
    needed |= {one.parent for one in stock.places.values() if one.parent and not one.gone}
    found = []
    for event in standing(events):
        payload = event.payload
        if isinstance(payload, said.PlaceRemoved) and payload.place in needed:
            place = stock.places.get(payload.place)
            if place is not None and place.gone:
                found.append(after([event], said.Undo((event.id,))))
    return found


# -- one name for two ------------------------------------------------------------------------------


def _lid_codes(events: Sequence[Event], _shared: set[str]) -> list[Event]:
    """Another lid code for each batch whose code one bears that was put up before it; of what was
    taken back none keeps it from one that stands."""
    gone, used = undone(events), set[str]()
    bears: dict[str, str] = {}
    told: dict[str, list[Event]] = defaultdict(list)
    for event in events:
        payload = event.payload
        if isinstance(payload, said.PutUp | said.Relabelled):
            bears[payload.batch] = payload.code
            told[payload.batch].append(event)
            used.add(payload.code)
    by_code: dict[str, list[str]] = defaultdict(list)
    for batch in sorted(bears, key=lambda one: (told[one][0].id in gone, told[one][0].id)):
        by_code[bears[batch]].append(batch)
    free = (code for n in count() if (code := code_at(n)) not in used)
    return [
        after([*told[batch], *told[keeps]], said.Relabelled(batch, next(free), code, keeps))
        for code, (keeps, *others) in by_code.items()
        for batch in others
    ]


def _place_names(events: Sequence[Event], _shared: set[str]) -> list[Event]:
    """ "attic (2)" for the attic that was added later, where two stand in the same place."""
    stand = standing(events)
    told: dict[str, list[Event]] = defaultdict(list)
    for event in stand:
        if isinstance(event.payload, said.PlaceAdded | said.PlaceChanged):
            told[event.payload.place].append(event)
    places = [one for one in fold(stand).places.values() if not one.gone]
    places.sort(key=lambda one: told[one.id][0].id)
    taken: dict[tuple[str | None, str], Place] = {}
    for place in places:
        taken.setdefault(_key(place, place.name), place)
    found = []
    for place in places:
        first = taken[_key(place, place.name)]
        if first.id != place.id:
            names = (f"{place.name} ({n})" for n in count(2))
            name = next(one for one in names if _key(place, one) not in taken)
            taken[_key(place, name)] = place
            base = [*told[place.id], *told[first.id]]
            found.append(after(base, said.PlaceChanged(place.id, name=name)))
    return found


def _key(place: Place, name: str) -> tuple[str | None, str]:
    return place.parent, name.lower()


# -- two words on one thing ------------------------------------------------------------------------


#: In doubt, where each log has put right otherwise what it is or how it is kept.
TWO_RECORDS = "Two records differ in what it is or how it is kept: say which, or do not eat it."


def _stricter(parted: Parted) -> Iterator[Event]:
    """Where both logs have set what verdicts rest on, the word that makes nothing milder."""
    ours = {one.id for one in parted.ours}
    theirs = {one.id for one in parted.theirs}
    stand = standing(parted.all)
    mine = [one for one in stand if one.id in ours]
    come = [one for one in stand if one.id in theirs]
    yield from _of_household(mine, come, stand)
    for batch in _both(mine, come, said.Correct, "batch"):
        yield from _of_batch(*(_about(some, said.Correct, "batch", batch) for some in (mine, come)))
    stock = fold(stand)
    for place in _both(mine, come, said.PlaceChanged, "place"):
        some = [_about(one, said.PlaceChanged, "place", place) for one in (mine, come)]
        yield from _of_place(some[0], some[1], stock, place)


def _both(mine: Iterable[Event], come: Iterable[Event], kind: type, name: str) -> list[str]:
    found = [
        {getattr(one.payload, name) for one in some if isinstance(one.payload, kind)}
        for some in (mine, come)
    ]
    return sorted(found[0] & found[1])


def _about(events: Iterable[Event], kind: type, name: str, id_: str) -> list[Event]:
    return [
        one for one in events if isinstance(one.payload, kind) and getattr(one.payload, name) == id_
    ]


def _last(events: Iterable[Event], name: str) -> Any:
    """The last word of a field, None where nothing was said."""
    said_of = (getattr(one.payload, name) for one in events)
    return next((one for one in reversed(list(said_of)) if one is not None), None)


def _of_household(
    mine: Sequence[Event], come: Sequence[Event], stand: Iterable[Event]
) -> Iterator[Event]:
    some = [[one for one in log if isinstance(one.payload, said.Household)] for log in (mine, come)]
    if not all(some):
        return
    home = fold_household(stand)
    heights = [one for one in (_last(log, "altitude_ft") for log in some) if one is not None]
    change: dict[str, Any] = {}
    if len(heights) == 2 and home.altitude_ft != max(heights):
        change["altitude_ft"] = max(heights)
    for name, strict in (("advice", "strictest"), ("jars", "strict")):
        words = [_last(log, name) for log in some]
        if all(words) and strict in words and getattr(home, name) != strict:
            change[name] = strict
    if change:
        yield after([*some[0], *some[1]], said.Household(**change))


def _of_batch(mine: Sequence[Event], come: Sequence[Event]) -> Iterator[Event]:
    """The earlier day, no day where one knows of none, of each detail of the process the stricter
    word, and what either doubts."""
    change: dict[str, Any] = {}
    made = [_made(log) for log in (mine, come)]
    if all(one is not None for one in made) and made[0] != made[1]:
        if "" in made:
            change["unknown_day"] = True
        else:
            change["made"] = min(made)
    for name, of_both in (("printed", min), ("doubt", _united), ("possible", _joined)):
        words = [_last(log, name) for log in (mine, come)]
        if None not in words and words[0] != words[1]:
            change[name] = of_both(words)
    what = [[_last(log, name) for log in (mine, come)] for name in ("food", "method")]
    against = [_last(log, "doubt") or () for log in (mine, come)]
    if any(None not in words and words[0] != words[1] for words in what):
        against.append((TWO_RECORDS,))
    sizes = {word for log in (mine, come) if (word := _last(log, "size")) is not None}
    if len(sizes) > 1:
        against.append((differ(f"size ({' or '.join(sorted(sizes))})"),))
    days = [one.day for one in (*mine, *come)]
    records = [_last(log, "process") for log in (mine, come)]
    if None not in records and sorted(records[0]) != sorted(records[1]):
        change["process"], doubts = both(*records)
        against.append(doubts)
    if len(against) > 2:
        change["doubt"] = _united(against)
    if change:
        payload = said.Correct(mine[0].payload.batch, **change)  # type: ignore[union-attr]
        # Of two days on which a pH may have been measured the earlier.
        yield replace(after([*mine, *come], payload), day=min(days))


def _made(events: Iterable[Event]) -> Any:
    """The last day said, "" where it was said that nobody knows it, None where nothing was."""
    word: Any = None
    for one in events:
        payload = one.payload
        assert isinstance(payload, said.Correct)
        if payload.unknown_day:
            word = ""
        if payload.made is not None:
            word = payload.made
    return word


def _united(words: Sequence[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(sorted({one for some in words for one in some}))


def _joined(words: Sequence[str]) -> str:
    """Of two possible readings the one that is any; of two that differ both are named."""
    return " / ".join(sorted({one for one in words if one}))


def _of_place(
    mine: Sequence[Event], come: Sequence[Event], stock: Stock, place: str
) -> Iterator[Event]:
    """Of two temperatures that a place was meant to have, the higher."""
    now = stock.places.get(place)
    warmth = [one for one in (_warmth(log) for log in (mine, come)) if one is not None]
    if now is None or len(warmth) < 2:
        return
    _, payload = max(warmth, key=lambda one: (one[0], write(one[1])))
    target = now.target
    if max(one[0] for one in warmth) > target:
        yield after([*mine, *come], payload)


def _warmth(events: Sequence[Event]) -> tuple[float, said.PlaceChanged] | None:
    """The warmest that was said, and the change that says it."""
    found: list[tuple[float, said.PlaceChanged]] = []
    for event in events:
        one = event.payload
        assert isinstance(one, said.PlaceChanged)
        if one.target_f is None and one.climate is None:
            continue
        temp = one.target_f if one.target_f is not None else None
        if temp is None:
            assert one.climate is not None
            temp = ASSUMED_F[one.climate]
        found.append((temp, one._replace(name=None, parent=None, capacity=None)))
    return found[-1] if found else None
