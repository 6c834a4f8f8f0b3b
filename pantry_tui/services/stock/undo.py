"""Taking back and bringing again, by appending to the log. The newest act, or the one named."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.events import Event
from pantry_tui.core.model import Container
from pantry_tui.core.text import begun
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.booking import take_back
from pantry_tui.services.books.logbook import NAMES, describe
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done
from pantry_tui.services.setback import is_still_ahead
from pantry_tui.services.stock.pick import name_of, standing_in
from pantry_tui.services.stock.places import is_taken
from pantry_tui.store import log
from pantry_tui.store.store import reading


def newest(p: Pantry) -> Event | None:
    """The act that `undo` would take back now, whoever booked it."""
    with reading(p.path):
        log.undone(p.store.db)  # none of them is lost
        return _event(p, log.newest(p.store.db))


def say(p: Pantry, event: Event) -> str:
    """An act in words, with how much was booked as one with it."""
    note = isinstance(event.payload, said.ClockAhead)
    of = [one for one in _group(p, event) if note or not isinstance(one.payload, said.ClockAhead)]
    more = len(of) - 1
    return describe(p, event) + (f" and {more} more" if more else "")


@booked
def undo(p: Pantry, event: str | None = None, *, expect: str = "") -> Done:
    """Take back the newest act, or the one of that id. Named in words.

    `expect` is the id of what a person was told it would take back. Raises Refused where there is
    nothing, another act is the newest by now, or later facts rest on it; BadInput for no such id.
    """
    last = named_act(p, event) if event else newest(p)
    if last is None:
        raise Refused("There is nothing to take back.")
    if expect and last.id != expect:
        raise Refused(f"Something newer was booked meanwhile: {say(p, last)}. Press again for it.")
    group = _group(p, last)
    _refuse_if_rested_on(p, group)
    words = say(p, last)
    was = p.altitude_ft
    p.book(said.Undo(tuple(one.id for one in group)))
    take_back(p, group)
    _refuse_if_places_clash(p, group)
    return Done(f"Took back: {words}.", _checked_again(p, group, was))


@booked
def redo(p: Pantry) -> Done:
    """Bring again what the last undo took back, if nothing was booked since."""
    spent = _event(p, log.newest(p.store.db, undone=True))
    if spent is None or not isinstance(spent.payload, said.Undo):
        raise Refused("There is nothing to bring back.")
    ids = spent.payload.events
    group = [one for id_ in ids if (one := _event(p, id_)) is not None]
    was = p.altitude_ft
    p.book(said.Redo(spent.id, ids))
    take_back(p, group)
    _refuse_if_places_clash(p, group)
    return Done(f"Brought back: {say(p, group[-1])}.", _checked_again(p, group, was))


def _checked_again(p: Pantry, group: Sequence[Event], was: int | None) -> tuple[str, ...]:
    """What jars that were canned meanwhile are checked for, where another altitude stands again;
    what was there before is as it was then, so that it can be brought back."""
    said_it = [one for one in group if isinstance(one.payload, said.Household)]
    if not said_it or p.altitude_ft == was:
        return ()
    from pantry_tui.services.stock.recheck import for_altitude

    return for_altitude(p, was, said_it[0])


def _event(p: Pantry, id_: str) -> Event | None:
    found = log.select(p.store.db, "WHERE id = ?", (id_,)) if id_ else []
    return found[0] if found else None


def named_act(p: Pantry, id_: str) -> Event:
    """A standing act by its id, or the end of it. Raises BadInput, Refused."""
    if len(id_) < NAMES:
        raise BadInput(f"{id_!r} names no act: give its id, or the last {NAMES} letters of it.")
    found = log.select(p.store.db, "WHERE id = ? OR id LIKE '%' || ?", (id_, id_))
    if len(found) != 1 or isinstance(found[0].payload, said.Undo | said.Redo):
        raise BadInput(f"{id_[:40]!r} names no act of the log: `pantry-tui log` lists them.")
    if not log.select(
        p.store.db, "WHERE id = ? AND id NOT IN (SELECT event FROM undone)", (found[0].id,)
    ):
        raise Refused(f"{begun(describe(p, found[0]))} is taken back already.")
    return found[0]


def _group(p: Pantry, event: Event) -> list[Event]:
    """What goes with it. That a clock was ahead goes with the word that showed it, but not while
    the clock of now shows it too; named itself it goes alone."""
    if not event.together:
        return [event]
    found = log.together(p.store.db, event.together)
    notes = [one for one in found if isinstance(one.payload, said.ClockAhead)]
    if isinstance(event.payload, said.ClockAhead):
        return notes or [event]
    stay = {one.id for one in notes if is_still_ahead(p, one.payload)}  # type: ignore[arg-type]
    return [one for one in found if one.id not in stay] or [event]


def _refuse_if_rested_on(p: Pantry, group: Sequence[Event]) -> None:
    """Raises Refused where something booked later would lose its ground."""
    mine = {one.id for one in group}
    for event in group:
        for later in _later(p, event):
            if later.id not in mine:
                raise Refused(
                    f"{begun(describe(p, event))} cannot be taken back alone: "
                    f"{describe(p, later)} came after it. Take that back first."
                )
        _refuse_if_in_use(p, event, group)
        if isinstance(event.payload, said.Relabelled):
            raise Refused("A lid code that two batches had cannot be given to both again.")


def _later(p: Pantry, event: Event) -> list[Event]:
    """Standing events of the same containers (of the batch, for a put-up) that came after."""
    about = said.touches(event.payload)
    meant = set(_containers(event))
    whole = isinstance(event.payload, said.PutUp)
    found = []
    for batch in about:
        for later in log.select(
            p.store.db,
            "WHERE id > ? AND id IN (SELECT event FROM of_batch WHERE batch = ?) "
            "AND id NOT IN (SELECT event FROM undone) "
            "AND did NOT IN ('undo', 'redo', 'clock_ahead')",
            (event.id, batch),
        ):
            if whole or meant & set(_containers(later)) or _answered_by(event, later):
                found.append(later)  # noqa: PERF401 - reads better than three loops in one
    return found


def _answered_by(event: Event, later: Event) -> bool:
    """Whether a note that spoke of some jars may have been put right since this sign named one."""
    shown = isinstance(event.payload, said.Sign) and event.payload.verdict in UNFIT
    return shown and isinstance(later.payload, said.Correct) and later.payload.note is not None


def _containers(event: Event) -> tuple[str, ...]:
    payload = event.payload
    if isinstance(payload, said.Count):
        return (
            *(one.container for one in payload.gone),
            *(one.container for one in payload.back),
            *(id_ for one in payload.new for id_ in one.containers),
        )
    if isinstance(payload, said.PutUp):
        return (*event.containers, *(part.container for part in payload.parts))
    return event.containers


def _refuse_if_in_use(p: Pantry, event: Event, group: Sequence[Event]) -> None:
    """What was put up together with its place goes with it, and so does a place made in it."""
    if not isinstance(event.payload, said.PlaceAdded):
        return
    id_ = event.payload.place
    mine = {one.payload.batch for one in group if isinstance(one.payload, said.PutUp)}
    stood = p.store.db.execute("SELECT DISTINCT batch FROM stood WHERE place = ?", (id_,))
    new = {one.payload.place for one in group if isinstance(one.payload, said.PlaceAdded)}
    others = [batch for (batch,) in stood if batch not in mine]
    inside = any(one.parent == id_ and one.id not in new for one in p.places.values())
    name = event.payload.name
    if inside or any(one.here and one.place == id_ for one in _held_by(p, others)):
        raise Refused(f"{name} is in use: move what stands there first.")
    if others:
        raise Refused(
            f"What stood in {name} is judged by the time it was there, so it stays in the log: "
            f"`pantry-tui place remove {name}` takes it off the list of places."
        )


def _held_by(p: Pantry, batches: Iterable[str]) -> Iterable[Container]:
    return (
        one for id_ in batches if (found := p.load(id_)) is not None for one in found[1].values()
    )


def _refuse_if_places_clash(p: Pantry, group: Sequence[Event]) -> None:
    """Raises Refused where what is taken back, or brought again, would leave two places of one name
    beside each other, or stock in a place that is no more."""
    for event in group:
        for batch in said.touches(event.payload):
            found = p.load(batch)
            here = (one for one in found[1].values() if one.here) if found is not None else ()
            _refuse_if_gone(p, here)
        if isinstance(event.payload, said.PlaceAdded | said.PlaceChanged | said.PlaceRemoved):
            place = p.ever.get(event.payload.place)
            if place is not None and place.gone:
                _refuse_if_gone(p, standing_in(p, place.id))
            elif place is not None and is_taken(p, place.name, place.parent, but=place.id):
                raise Refused(
                    f"Another place is called {place.name!r} now: give that one another name first."
                )


def _refuse_if_gone(p: Pantry, containers: Iterable[Container]) -> None:
    for one in containers:
        place = p.ever.get(one.place)
        if place is not None and place.gone:
            raise Refused(f"{name_of(p, one)} would stand in {place.name}, which is no more.")
