"""What two logs that had parted say differently, in sentences: for each container, and each field
of a batch, a place, the household and the week on which both have spoken since, both words and
which of them counts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterable, Iterator, Sequence
from typing import NamedTuple

from pantry_tui.core.amounts import Amount
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Did, Event, standing
from pantry_tui.core.log.one_sided import only_stricter
from pantry_tui.core.log.parted import Parted
from pantry_tui.core.log.whole import fold
from pantry_tui.core.model import FoodFacts, Stock
from pantry_tui.services.safekeeping.taken_back import counts_again, taken_back

_LEAVE = said.Use | said.Discard | said.Give | said.Missing
_LATER = "the later word counts"


class _Word(NamedTuple):
    """What an event says of a subject: the name of the subject, the words, which of two counts."""

    about: str
    says: str
    counts: str = _LATER


def conflicts(parted: Parted, made: Sequence[Event]) -> list[str]:
    """The sentences; `made` are the events by which the two logs were settled."""
    everything = sorted((*parted.all, *made), key=lambda one: one.id)
    stand = standing(everything)
    names = _Names(stand, everything)
    ours = {one.id for one in parted.ours}
    theirs = {one.id for one in parted.theirs}
    mine = [one for one in stand if one.id in ours]
    come = [one for one in stand if one.id in theirs]
    settled = [*_settled(made, everything, names), *taken_back(parted, made, names)]
    return list(dict.fromkeys((*settled, *_of_containers(mine, come, stand, names)))) + list(
        _of_fields(mine, come, made, names)
    )


class _Names:
    """Of batches, containers and places, as they are called once both logs are one."""

    def __init__(self, stand: Sequence[Event], everything: Iterable[Event]) -> None:
        self.stock: Stock = fold(stand)
        self._codes = {
            one.payload.batch: one.payload.code
            for one in everything
            if isinstance(one.payload, said.PutUp | said.Relabelled)
        }

    def batch(self, id_: str) -> str:
        return self._codes.get(id_, "?")

    def container(self, id_: str) -> str:
        return f"{self.batch(said.batch_of(id_))}/{id_.rpartition('.')[2]}"

    def place(self, id_: str) -> str:
        found = self.stock.places.get(id_)
        return found.name if found else "a place that was taken back"


# -- what was settled ------------------------------------------------------------------------------


def _settled(made: Iterable[Event], everything: Sequence[Event], names: _Names) -> Iterator[str]:
    by_id = {one.id: one for one in everything}
    for event in made:
        match event.payload:
            case said.Redo(_, ids):
                some = [by_id[id_] for id_ in ids if id_ in by_id]
                if all(only_stricter(one.payload) for one in some):
                    yield from (counts_again(one, names) for one in some)
                    continue
                what = ", ".join(_said(one, names) for one in some)
                yield (
                    f"{what} was taken back in one log, and the other rests on it: it counts again."
                )
            case said.Undo((id_,)):
                payload = by_id[id_].payload
                assert isinstance(payload, said.PlaceRemoved)
                yield (
                    f"The place {names.place(payload.place)} was removed in one log, and stock "
                    "stands there by the other: the place stays."
                )
            case said.PlaceChanged(name=str(name)):
                was = name.rpartition(" (")[0]
                yield f"Two places are called {was}: the one that was added later is {name} now."


def _said(event: Event, names: _Names) -> str:
    payload = event.payload
    if isinstance(payload, said.PutUp):
        return f"The put-up of {names.batch(payload.batch)} {payload.food.name}"
    if isinstance(payload, said.PlaceAdded):
        return f"The place {payload.name}"
    return _act(event)


# -- containers ------------------------------------------------------------------------------------


def _of_containers(
    mine: Sequence[Event], come: Sequence[Event], stand: Sequence[Event], names: _Names
) -> Iterator[str]:
    acts = [_acts(mine), _acts(come)]
    told: dict[str, list[str]] = defaultdict(list)
    for id_ in sorted(acts[0].keys() & acts[1].keys()):
        ours, theirs = sorted((acts[0][id_], acts[1][id_]), key=lambda some: some[0].id)
        if words := _container(id_, ours, theirs, stand, names):
            told[words].append(names.container(id_))
    for words, some in told.items():
        yield f"{', '.join(some)} {words}"


def _acts(events: Iterable[Event]) -> dict[str, list[Event]]:
    found: dict[str, list[Event]] = defaultdict(list)
    for event in events:
        for id_ in _containers(event.payload):
            found[id_].append(event)
    return found


def _containers(payload: said.Payload) -> Iterator[str]:
    match payload:
        case said.PutUp():
            yield from dict.fromkeys(part.container for part in payload.parts)
        case said.Count():
            yield from (one.container for one in payload.gone)
            yield from (one.container for one in payload.back)
        case said.Outage() | said.Sign():
            return  # what was seen adds up
        case _:
            yield from getattr(payload, "containers", ())


def _container(
    id_: str, ours: Sequence[Event], theirs: Sequence[Event], stand: Sequence[Event], names: _Names
) -> str:
    """What both did with it and what it is now, "" where both agree."""
    left = [[one for one in some if _whole(one, id_)] for some in (ours, theirs)]
    if all(left):
        first, later = sorted((left[0][0], left[1][0]), key=lambda one: one.id)
        return f"left in both: {_act(first)} counts, {_act(later)} is kept in the log."
    words = [[_does(one, id_, names) for one in some] for some in (ours, theirs)]
    if all(_drawn(one, id_) is not None for one in (*ours, *theirs)):
        return _too_much(id_, words, stand, names)
    if words[0] == words[1]:
        return ""
    return (
        f"was told of in both: {', '.join(words[0])}; and {', '.join(words[1])}: "
        f"all of it counts, and it {_now(id_, names)}."
    )


def _too_much(
    id_: str, words: Sequence[Sequence[str]], stand: Iterable[Event], names: _Names
) -> str:
    one = names.stock.containers.get(id_)
    if one is None or one.first is None:
        return ""
    drawn = [amount for event in stand if (amount := _drawn(event, id_)) is not None]
    total = sum(
        (each.number for each in drawn if each.unit == one.first.unit), start=0 * one.first.number
    )
    if total <= one.first.number:
        return ""
    return (
        f"held {one.first}, and both drew from it: {', '.join(words[0])}; and "
        f"{', '.join(words[1])}: that is more than stood there, so it is empty now."
    )


def _drawn(event: Event, id_: str) -> Amount | None:
    payload = event.payload
    if isinstance(payload, said.PutUp):
        return next((part.amount for part in payload.parts if part.container == id_), None)
    if isinstance(payload, said.Count):
        return next((one.amount for one in payload.gone if one.container == id_), None)
    return payload.amount if isinstance(payload, _LEAVE) else None


def _whole(event: Event, id_: str) -> bool:
    payload = event.payload
    kinds = isinstance(payload, _LEAVE | said.PutUp) or (
        isinstance(payload, said.Count) and any(one.container == id_ for one in payload.gone)
    )
    return kinds and _drawn(event, id_) is None


def _does(event: Event, id_: str, names: _Names) -> str:
    payload, more = event.payload, ""
    if (amount := _drawn(event, id_)) is not None:
        more = f" {amount}"
    elif isinstance(payload, said.Move):
        more = f" to {names.place(payload.place)}"
    elif isinstance(payload, said.Reserved):
        more = f" for {payload.kept_for}" if payload.kept_for else " no more"
    elif isinstance(payload, said.PutUp):
        return f"used for {names.batch(payload.batch)} on {event.day.isoformat()}"
    return f"{event.did.value}{more} on {event.day.isoformat()}"


def _now(id_: str, names: _Names) -> str:
    one = names.stock.containers.get(id_)
    if one is None or not one.here:
        return "is gone"
    kept = f", reserved for {one.reserved}" if one.reserved else ""
    return f"is {one.state.value} in {names.place(one.place)}{kept}"


def _act(event: Event) -> str:
    return f"{event.did.value.replace('_', ' ')} on {event.day.isoformat()}"


# -- fields ----------------------------------------------------------------------------------------


def _of_fields(
    mine: Sequence[Event], come: Sequence[Event], made: Sequence[Event], names: _Names
) -> Iterator[str]:
    told = [dict(_fields(some, names)) for some in (mine, come)]
    strict = dict(_fields(made, names))
    last = {key: max((m, c), key=lambda one: one[0]) for key, m, c in _pairs(told)}
    for key, *two in _pairs(told):
        (_, ours), (_, theirs) = sorted(two, key=lambda one: one[0])
        if ours.says == theirs.says:
            continue
        counts = ours.counts
        if counts == _LATER:
            word = strict[key][1].says if key in strict else last[key][1].says
            word = _stands(key, names) or word
            counts = f"{word} counts" + (", so that nothing is milder" if key in strict else "")
        yield f"Both logs say something of {ours.about}: {ours.says}; and {theirs.says}: {counts}."


_Told = dict[Hashable, tuple[str, _Word]]


def _pairs(
    told: Sequence[_Told],
) -> Iterator[tuple[Hashable, tuple[str, _Word], tuple[str, _Word]]]:
    for key, one in told[0].items():
        if key in told[1]:
            yield key, one, told[1][key]


def _fields(events: Iterable[Event], names: _Names) -> Iterator[tuple[Hashable, tuple[str, _Word]]]:
    """Each field an event speaks of; of one field the last word of a log is the one that stays."""
    for event in events:
        payload = event.payload
        match payload:
            case said.Correct():
                about = names.batch(payload.batch)
                yield from _set(event, payload.batch, f"{about}'s", ("batch",))
            case said.PlaceChanged():
                about = names.place(payload.place)
                yield from _set(event, payload.place, f"the place {about}: its", ("place",))
            case said.Household():
                yield from _set(event, "", "the household: its", ())
            case said.Reading():
                key = (
                    payload.place,
                    event.day,
                    event.at if (event.at or -1) >= 0 else event.recorded[:16],
                )
                about = f"the temperature of {names.place(payload.place)} at one moment"
                both = "both are kept, and the one that harms more counts"
                yield key, (event.id, _Word(about, f"{payload.temp_f:g} F", both))
            case _:
                yield from _single(event)


def _stands(key: Hashable, names: _Names) -> str:
    """A field of a batch or a place as it is now, "" for anything else: of two changes on one
    minute the fold decides, not the log."""
    match key:
        case (Did.CORRECT, str(id_), str(field)) if id_ in names.stock.batches:
            return _shown(field, getattr(names.stock.batches[id_], field))
        case (Did.PLACE_CHANGED, str(id_), str("name" | "climate" | "capacity" as field)):
            return _shown(field, getattr(names.stock.places.get(id_), field, ""))
    return ""


def _single(event: Event) -> Iterator[tuple[Hashable, tuple[str, _Word]]]:
    """Kinds that set one thing whole."""
    payload = event.payload
    match payload:
        case said.Planned():
            word = _Word("the week", payload.said or "a plan")
            yield "week", (event.id, word._replace(says=f"{word.says} on {event.day.isoformat()}"))
        case said.Ceiling():
            most = "as usual" if payload.most is None else f"at most {payload.most:g}"
            yield ("ceiling", payload.what), (event.id, _Word(f"how much {payload.what}", most))
        case said.Table():
            who = "as usual" if payload.people is None else f"{payload.people} people"
            for day in payload.days:
                yield ("table", day), (event.id, _Word(f"the table on {day.isoformat()}", who))
        case said.Substitutes():
            others = ", ".join(payload.others) or "nothing"
            yield (
                ("for", payload.food),
                (event.id, _Word(f"what stands in for {payload.food}", others)),
            )
        case said.Dish():
            takes = ", ".join(f"{one.servings:g} {one.food}" for one in payload.takes) or "dropped"
            yield ("dish", payload.name), (event.id, _Word(f"the dish {payload.name}", takes))
        case said.FoodAdded():
            yield (
                ("food", payload.name.lower()),
                (
                    event.id,
                    _Word(f"the food {payload.name}", f"{payload.group}, {payload.acidity}"),
                ),
            )
        case said.JarsCounted():
            count = f"{payload.empty} empty, {payload.in_use} in use"
            yield ("jars", payload.size), (event.id, _Word(f"the {payload.size} jars", count))


def _set(
    event: Event, id_: str, about: str, but: tuple[str, ...]
) -> Iterator[tuple[Hashable, tuple[str, _Word]]]:
    """The fields that a payload sets; those it leaves as they were are None."""
    for name, value in event.payload._asdict().items():
        if name in but or value is None or value is False:
            continue
        field = "made" if name == "unknown_day" else name
        says = "no day known" if name == "unknown_day" else _shown(name, value)
        words = f"{about} {field.removesuffix('_f').removesuffix('_ft').replace('_', ' ')}"
        yield (event.did, id_, field), (event.id, _Word(words, says))


def _shown(name: str, value: object) -> str:
    if name == "made" and value is None:
        return "no day known"
    if isinstance(value, tuple):
        parts = (" ".join(map(str, one)) if isinstance(one, tuple) else str(one) for one in value)
        return ", ".join(parts) or "nothing"
    if isinstance(value, FoodFacts):
        return value.name
    unit = {"altitude_ft": " ft", "target_f": " F"}.get(name, "")
    return f"{value}{unit}" if value != "" else "nothing"
