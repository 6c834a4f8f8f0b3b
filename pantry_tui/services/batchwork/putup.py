"""Putting up: judge what was understood (understood.py), and book the batch."""

from __future__ import annotations

from dataclasses import replace

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED, WORKING, low_acid_in_water
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.limits import Judgement, as_packed
from pantry_tui.core.keeping.no_day import DOUBT, NOW
from pantry_tui.core.keeping.packs import came_as
from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.moments import some_time
from pantry_tui.core.log.own import told_food
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Turn
from pantry_tui.core.safety.caution import STOOD
from pantry_tui.core.safety.record import known
from pantry_tui.core.text import begun
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork.came_open import open_since
from pantry_tui.services.batchwork.checked import checked
from pantry_tui.services.batchwork.contents import booked_amount, size_of
from pantry_tui.services.batchwork.made_from import (
    Descent,
    as_it_was_kept,
    carry_on,
    descent_of,
    opened,
    took,
    unlike_taken,
    used_of,
    worst,
    would_open,
    would_take,
)
from pantry_tui.services.batchwork.offered import instead_of_water
from pantry_tui.services.batchwork.understood import from_flags as from_flags
from pantry_tui.services.batchwork.understood import read as read
from pantry_tui.services.batchwork.understood import read_at as read_at
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import PutUp, PutUpReading
from pantry_tui.services.stock.room import overfull
from pantry_tui.services.stock.seen import At, told_moment, when
from pantry_tui.services.stock.view import cautions, note_aside
from pantry_tui.services.stock.where import cold_that_keeps, where_it_keeps

BOTULISM = "Low-acid food needs a pressure canner: spores live through boiling water."


def _facts(p: Pantry, reading: PutUpReading) -> FoodFacts:
    known = p.facts(reading.food)
    if known is not None:
        return known
    return told_food(reading.food, Group(reading.group), Acidity(reading.acidity))


def _judged(
    p: Pantry, reading: PutUpReading, at: At | None
) -> tuple[PutUpReading, Batch, State, Place, Judgement, Descent]:
    """The batch as it would stand, and what it takes of others, with the reading of that moment.
    Raises BadInput for open problems, Refused for danger."""
    reading = as_it_was_kept(p, reading)
    if reading.unread:
        words = ", ".join(repr(word[:40]) for word in reading.unread[:5])
        raise BadInput(f"Not understood: {words}; leave it out, or write it as note=...")
    if reading.problems:
        raise BadInput(reading.problems[0])
    assert reading.method is not None
    place = p.find_place(reading.place)
    food = _facts(p, reading)
    if low_acid_in_water(reading.method, food):
        what = STOOD if _stood(p, reading) else instead_of_water(food)
        raise Refused(f"{begun(food.name)} may not be boiling-water canned. {BOTULISM} {what}")
    state = State.WORKING if reading.method in WORKING else State.SEALED
    descent = descent_of(p, reading, at)
    if not descent.carried:  # else it was made when that was of which it is a part
        reading = _told_at(p, reading, at)
    assert reading.method is not None
    if reading.method is Method.FROZEN and place.climate is not Climate.FREEZER:
        _refuse_warm(place, descent)
    if descent.carried:
        state = descent.state
    if "state" in dict(reading.process):
        said = State(dict(reading.process)["state"].casefold())
        state = worst((state, said)) if descent.carried else said
    size = size_of(reading)
    record = with_altitude(p, reading.method, reading.process)
    told = reading.method, food, size, dict(record), p.altitude_ft, reading.note
    doubted = checked(p, *told, used_of(p, descent), reading.made)
    batch = Batch(
        "",
        "",
        food,
        reading.method,
        reading.made,
        size,
        record,
        reading.note,
        reading.printed,
        doubt=doubted.problems if doubted else (),
        possible=doubted.still_possible if doubted else "",
        booked=p.today,
        ph_day=p.today if "ph" in dict(record) else None,
    )
    batch = carry_on(batch, descent, reading, p.today)
    since = reading.made or p.today
    now = told_moment(p, at) or p.clock.now
    then = now if descent.carried else some_time(since, p.clock.recorded, p.today)
    shown = came_as(state, batch)
    now_is = shown if reading.opened is None else State.OPEN
    turns = [Turn(then, "", place.id, shown)]
    if reading.opened is not None:
        day = some_time(reading.opened, p.clock.recorded, p.today)
        turns.append(Turn(day, "", place.id, now_is))
    held = reading.contents
    trial = Container("", "", 1, now_is, place.id, tuple(turns), held, held)
    judged = p.assess_bare(batch, trial, p.clock.now).on(p.today)
    table = p.book_of_rules.of(reading.method)
    packed = as_packed(batch, opened=False).food
    spoken = (
        rule
        for one in dict.fromkeys((state, shown))
        for rule in speaking(table, packed, reading.method, one, place.climate)
    )
    refused = next((rule for rule in spoken if rule.kind is Kind.REFUSE), None)
    # What stands open from a shop is recorded where it stands, and judged.
    if refused is not None and reading.method is not Method.BOUGHT:
        here = f"{begun(food.name)} ({reading.method}) may not stand in {place.name}"
        if _stood(p, reading) and can_hurt(batch, state is State.WORKING):
            raise Refused(f"{here}. If it stood there: {STOOD[0].lower()}{STOOD[1:]}")
        asked = p, reading.method, packed, shown
        fit = where_it_keeps(*asked) or cold_that_keeps(*asked)
        raise Refused(f"{here}: {refused.wording}{f' Say instead: {fit}.' if fit else ''}")
    return reading, batch, state, place, judged, descent


def _stood(p: Pantry, reading: PutUpReading) -> bool:
    """Whether it may have stood so for more than a day: nothing puts that right any more."""
    return reading.made is None or (p.today - reading.made).days > 1


def _refuse_warm(place: Place, descent: Descent) -> None:
    """Frozen food stands in a freezer; what is thawed may be parted elsewhere."""
    if not descent.carried:
        raise Refused(f"{place.name} is no freezer: name a freezer for frozen food.")
    if descent.state is not State.THAWED:
        raise Refused(f"It is still frozen, and {place.name} is no freezer: thaw it first.")


def with_altitude(
    p: Pantry, method: Method, record: tuple[tuple[str, str], ...]
) -> tuple[tuple[str, str], ...]:
    """The record of a canned batch, which says so where nobody knows the altitude."""
    said = known(record)
    if method not in LIDDED or p.altitude_ft is not None or "altitude" in said or not said:
        return record
    return (*(pair for pair in record if pair[0] != "altitude"), ("altitude", "unknown"))


def _told_at(p: Pantry, reading: PutUpReading, at: At | None) -> PutUpReading:
    """The reading of what was put up at that moment: on its day, where the line names none.

    Raises BadInput where it was made later than that."""
    if at is None or reading.made is None:
        return reading
    if reading.made == p.today:
        return replace(reading, made=at.day)
    if reading.made > at.day:
        made, then = dates.say(reading.made), dates.say(at.day)
        raise BadInput(f"Made on {made}, it was not put up on {then}: leave one of the two out.")
    return reading


def preview(p: Pantry, reading: PutUpReading, *, at: At | None = None) -> PutUp:
    """What putting it up would give, booking nothing. Raises as `put_up` does."""
    reading, batch, _, _, judged, descent = _judged(p, reading, at)
    answer = _answer(p, "", (), batch, judged, reading, descent)
    cautions = *would_open(p, descent, at), *answer.cautions
    return replace(answer, cautions=cautions, made_from=would_take(p, descent))


def _answer(
    p: Pantry,
    code: str,
    names: tuple[str, ...],
    batch: Batch,
    judged: Judgement,
    reading: PutUpReading,
    descent: Descent,
) -> PutUp:
    # Of what is thrown away nobody asks whether its process was checked.
    told = [] if judged.verdict in UNFIT else list(judged.standing)
    told += cautions(batch, [(judged.verdict, judged.usable)])
    told += filter(None, [unlike_taken(descent, batch.method, reading.contents, reading.count)])
    if not batch.food.known:
        told.append("No publication here names it: judged by the strictest rule of its group.")
    # No day is told of what is not eaten whatever its figures name.
    doubtful = judged.verdict is Verdict.UNKNOWN and not judged.usable
    best, last = judged.best_by, judged.discard_after
    never = last is not None and batch.made is not None and last < batch.made
    thrown = never or judged.verdict is Verdict.DO_NOT_TASTE
    why = "" if last else judged.why_no_discard
    if doubtful or thrown:
        why = (NOW if thrown else DOUBT) if best or last else why
        best = last = None
    return PutUp(
        code,
        names,
        best,
        last,
        judged.verdict,
        tuple(told),
        judged.reasons,
        reading,
        why,
        judged.standing,
        note_aside=note_aside(p, batch),
    )


@booked
def put_up(p: Pantry, reading: PutUpReading, *, at: At | None = None) -> PutUp:
    """Book a batch; returns its lid code. Raises BadInput (unread), Refused (danger)."""
    reading, batch, state, place, _, descent = _judged(p, reading, at)
    code, id_ = p.next_code(), f"b{p.next_id()}"
    with p.together():
        p.book(
            said.PutUp(
                id_,
                code,
                tuple(f"{id_}.{n}" for n in range(1, reading.count + 1)),
                batch.food,
                batch.method,
                place.id,
                state,
                batch.made,
                batch.size,
                booked_amount(reading),
                batch.process,
                batch.note,
                batch.printed,
                doubt=batch.doubt,
                possible=batch.possible,
                parts=descent.payload(p, at),
                carried=descent.carried,
            ),
            **when(at),
        )
        if reading.opened is not None:
            open_since(p, code, reading.opened)
        if batch.note:
            from pantry_tui.services.stock.named_in import held_by_note

            held_by_note(p, p.stock.batches[id_], at)
    return _told_of(p, p.stock.batches[id_], reading, place, descent)


def _told_of(
    p: Pantry, batch: Batch, reading: PutUpReading, place: Place, descent: Descent
) -> PutUp:
    """What is said of a batch that was booked just now."""
    names = tuple(f"{batch.code}/{n}" for n in range(1, reading.count + 1))
    judged = p.judge(p.containers_of(batch)[0])
    reading = replace(reading, made=batch.made)  # what goes on keeps the day it was first made
    answer = _answer(p, batch.code, names, batch, judged, reading, descent)
    cautions = *answer.cautions, *opened(p, descent), *_with_neighbours(p, batch, place)
    return replace(answer, cautions=cautions, made_from=took(p, descent))


def _with_neighbours(p: Pantry, batch: Batch, place: Place) -> tuple[str, ...]:
    """What is wrong with its new place: too full, or one crop there spoils the other."""
    from pantry_tui.services.batchwork.tending import beside  # only for a whole crop

    full = overfull(p, place.id)
    return (*beside(p, batch, place.id), *((full,) if full else ()))
