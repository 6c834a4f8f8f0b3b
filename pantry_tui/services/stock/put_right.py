"""A reading or a power cut that was booked wrongly: the new word counts in place of the old one,
and the old one again where the new one is taken back."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import TypeVar

from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.keeping.limits import Judgement
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.moments import when as moment_of
from pantry_tui.core.model import DAY_MIN, Cut, Place, Read
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import begun, clean
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.books.logbook import describe
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.stock import cut_hours, outage, readings
from pantry_tui.services.stock.correct import otherwise
from pantry_tui.services.stock.cut_times import spoken
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.seen import At, past, when
from pantry_tui.services.stock.undo import named_act
from pantry_tui.store import log

Kind = TypeVar("Kind", said.Reading, said.Outage)


@dataclass(frozen=True, slots=True)
class Hours:
    """What is said anew of a power cut, as it is typed; "" or None where that stays."""

    start: str = ""
    end: str = ""
    full: bool | None = None
    max_temp: str = ""
    ice: bool | None = None
    ajar: bool = False


@booked
def reading(
    p: Pantry,
    id_: str,
    temp: str = "",
    humidity: float | None = None,
    since: str = "",
    *,
    at: At | None = None,
) -> Done:
    """Put a reading right: how warm it was, how long it had been so, when it was read; what is not
    said stays. Raises BadInput, Refused, Unclear as `readings.read_typed` does."""
    event, old = _act(p, id_, said.Reading)
    place = p.ever[old.place]
    told = past(p, at) or _when(event)
    new = old._replace(instead_of=event.id)
    if temp:
        new = new._replace(temp_f=readings.read_warmth(p, place.climate, temp))
    if humidity is not None:
        new = new._replace(humidity=humidity)
    if since:
        new = new._replace(since=readings.read_since(since, readings.this_minute(p, told)))
    readings.refuse_impossible(new.humidity, new.since)
    if at is None and new._replace(instead_of=old.instead_of) == old:
        raise BadInput("Say what was wrong: --temp, --rh, --since or --at.")
    return _booked(p, place, event, new, told)


@booked
def power_cut(p: Pantry, id_: str, hours: Hours) -> Done:
    """Put a power cut right: its hours, how full it was, how warm it got, its ice; what is not said
    stays. Raises BadInput, Refused as `outage.cut_of` does."""
    event, old = _act(p, id_, said.Outage)
    if hours == Hours():
        raise BadInput("Say what was wrong: --from, --to, --full, --half, --max-temp or --ice.")
    if not old.end:
        raise BadInput(
            f"Of this one nobody wrote down when it was: `undo {event.id}` and book it anew."
        )
    place = p.ever[old.place]
    start = datetime.fromisoformat(old.start) if old.start else None
    end = datetime.fromisoformat(old.end)
    if hours.start or hours.end:
        first = spoken(hours.start, p.today) if hours.start else f"{start:%Y-%m-%d %H:%M}"
        last = spoken(hours.end, p.today) if hours.end else f"{end:%Y-%m-%d %H:%M}"
        _refuse_old_looks(event, old, hours)
        start, end = cut_hours.times(first if start or hours.start else "unknown", last, p.today)
    warm = old.max_temp_f
    if hours.max_temp:
        unknown = is_unknown(hours.max_temp)
        warm = None if unknown else readings.read_warmth(p, place.climate, hours.max_temp)
    cut = outage.cut_of(
        p,
        place,
        start,
        end,
        full=old.full if hours.full is None else hours.full,
        max_temp_f=warm,
        ice=old.ice if hours.ice is None else hours.ice,
        ajar=hours.ajar,
    )
    new = cut_hours.as_booked(place, cut)._replace(instead_of=event.id)
    return _booked(p, place, event, new, At(cut.end.day))


def power_cuts(p: Pantry, ids: Sequence[str], cut: Cut) -> Done:
    """Put power cuts right that were booked as one, by what is told anew of all of it. Raises as
    `power_cut` does."""
    with p.together():
        done = [_cut_anew(p, id_, cut) for id_ in ids]
    told = dict.fromkeys(one for each in done for one in each.warnings)
    last = sorted(told, key=lambda one: one == CAUTION)
    return Done(" ".join(one.message for one in done), tuple(last))


@booked
def _cut_anew(p: Pantry, id_: str, cut: Cut) -> Done:
    event, old = _act(p, id_, said.Outage)
    place = p.ever[old.place]
    new = cut_hours.as_booked(place, cut)._replace(instead_of=event.id)
    return _booked(p, place, event, new, At(cut.end.day))


def now_standing(p: Pantry, id_: str) -> Event:
    """The standing act of that id, or what stands in its place by now. Raises as `named_act`."""
    event = named_act(p, id_)
    while (newer := _in_its_place(p, event)) is not None:
        event = newer
    return event


def booked_with(p: Pantry, event: Event) -> list[Event]:
    """The power cuts that were booked as one with this one and stand as they were, this one
    first."""
    found = log.together(p.store.db, event.together) if event.together else []
    cuts = (one for one in found if isinstance(one.payload, said.Outage) and one.id != event.id)
    return [event, *(one for one in cuts if _in_its_place(p, one) is None)]


def _in_its_place(p: Pantry, event: Event) -> Event | None:
    if not isinstance(event.payload, said.Reading | said.Outage):
        return None
    of_place = standing(log.of_place(p.store.db, event.payload.place))
    return next((o for o in of_place if getattr(o.payload, "instead_of", "") == event.id), None)


def _refuse_old_looks(event: Event, old: said.Outage, hours: Hours) -> None:
    """What was seen at the end that was told says nothing of another one. Raises BadInput."""
    asked = ["--ice or --no-ice"] if old.ice is not None and hours.ice is None else []
    if old.max_temp_f is not None and not hours.max_temp:
        asked.append("--max-temp 45F, or --max-temp unknown")
    if asked:
        raise BadInput(
            f"Of other hours say again what was seen at their end: {'; '.join(asked)}. Where "
            f"nobody knows, `undo {event.id}` and book it anew."
        )


def _act(p: Pantry, id_: str, kind: type[Kind]) -> tuple[Event, Kind]:
    """The standing act of that kind, which nothing puts right yet."""
    event = named_act(p, id_)
    if isinstance(event.payload, said.Reading | said.Outage) and not isinstance(
        event.payload, kind
    ):
        raise BadInput(
            f"{begun(describe(p, event))}: of a reading say --temp, --rh, --since or --at, of a "
            "power cut --from, --to, --full, --half, --max-temp or --ice."
        )
    if not isinstance(event.payload, kind):
        raise BadInput(
            f"{begun(describe(p, event))}: only a reading or a power cut is put right by its id, a "
            f"batch by its lid code. `undo {event.id}` takes it back."
        )
    if (newer := _in_its_place(p, event)) is not None:
        raise Refused(f"It is put right already: `correct {newer.id}`, what stands in its place.")
    return event, event.payload


def _when(event: Event) -> At:
    """When it happened, as far as is known of it."""
    then = moment_of(event)
    minute = (then.first + then.zone) % DAY_MIN if then.first == then.last else None
    return At(then.day, minute, None if minute is None else then.zone)


def _booked(p: Pantry, place: Place, event: Event, new: said.Reading | said.Outage, at: At) -> Done:
    """Books it, and says of what stood there how it is judged by it now."""
    was, before = describe(p, event), _judged(p, place)
    p.book(new, **when(at))
    after = _judged(p, place)
    told = [
        f"{p.stock.batches[id_].code} {clean(p.stock.batches[id_].food.name)} is {now} by it, "
        f"until now {then}."
        for id_, mine in before.items()
        for then, now in otherwise(mine, after[id_])
    ]
    says = describe(p, replace(event, payload=new._replace(instead_of="")))
    there, known = p.ever[place.id], place.facts
    for one in there.facts:
        if isinstance(one, Read) and one not in known:
            told += readings.same_minute(there, one)
    return Done(f"Put right: {was} before, {says} now.", (*told, *((CAUTION,) if told else ())))


def _judged(p: Pantry, place: Place) -> Mapping[str, dict[str, Judgement]]:
    """By batch, the verdict on each container that ever stood there and is here."""
    within = inside(p, place.id, ever=True)
    found: dict[str, dict[str, Judgement]] = defaultdict(dict)
    for one in p.stock.containers.values():
        if one.here and within & outage.has_stood(p, one):
            found[one.batch][one.id] = p.judge(one)
    return found
