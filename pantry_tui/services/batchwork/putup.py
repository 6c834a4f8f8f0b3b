"""Putting up: read a line, show what it was understood as, and book the batch."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_amount
from pantry_tui.core.canned import LIDDED, low_acid_in_water
from pantry_tui.core.keeping.limits import Judgement, as_packed
from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.moments import some_time
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Turn
from pantry_tui.core.safety.metric_jars import MAKER, by_maker, low_acid
from pantry_tui.core.safety.process import doubt
from pantry_tui.core.safety.record import known, read_details
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import clean
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.ambiguous import asked, choices, either
from pantry_tui.reference.names import method_named, near_methods
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.services.batchwork.contents import booked_amount, size_of, with_contents
from pantry_tui.services.batchwork.kitchen import kitchen
from pantry_tui.services.batchwork.line import read_line
from pantry_tui.services.batchwork.made_from import (
    Descent,
    carry_on,
    descent_of,
    take_sources,
    took,
)
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Ask, PutUp, PutUpReading
from pantry_tui.services.stock.room import overfull
from pantry_tui.services.stock.seen import At, when
from pantry_tui.services.stock.view import cautions

#: Methods that leave the kitchen still working: they need a hand before they keep.
WORKING = frozenset(
    {
        Method.LACTIC, Method.VINEGAR_FERMENT, Method.ALCOHOL_FERMENT, Method.PASTE,
        Method.INFUSION, Method.SALTED,
    }
)  # fmt: skip

BOTULISM = (
    "Low-acid food needs a pressure canner: spores live through boiling water. "
    "Freeze it, or pressure-can it by a tested process."
)


def read(p: Pantry, line: str) -> PutUpReading:
    """What a plain-English line says; problems and unread words are named, nothing is dropped."""
    rest, sources = take_sources(p, line)
    reading, typed = read_line(rest, kitchen(p))
    reading = replace(reading, sources=sources)
    return _checked(p, reading, typed or reading.food)


def read_at(p: Pantry, line: str, place: str) -> PutUpReading:
    """The same of a line that stands under a place, which it need not name again. Raises BadInput
    for a place that is not there."""
    reading = read(p, line)
    named = reading.place or any(ask.about == "place" and ask.typed for ask in reading.asks)
    if named:
        return reading
    path = p.place_paths()[p.find_place(place).id]
    return read(p, f"{line}, {path.replace('›', ' ')}")


def from_flags(
    p: Pantry,
    *,
    food: str = "",
    method: str = "",
    count: int = 1,
    size: str = "",
    container: str = "",
    place: str = "",
    made: str = "",
    process: Mapping[str, str] | Sequence[tuple[str, str]] = (),
    note: str = "",
    group: str = "",
    acidity: str = "",
) -> PutUpReading:
    """The same from flags. Raises BadInput for a method, place or date that cannot be read."""
    food = food if clean(food) else ""
    known = method_named(method) if method else None
    facts = p.facts(food) if food else None
    stands = p.place_paths()[p.find_place(place).id] if place else ""
    pairs = tuple(process.items()) if isinstance(process, Mapping) else tuple(process)
    unknown = made.strip().lower() in ("unknown", "?")
    day = None if unknown else dates.read_date(made, p.today) if made else p.today
    problems: list[str] = []
    if not food:
        problems.append("Say which food it is.")
    if known is None:
        problems.append('Say how it is kept: --method, for example "pressure canned".')
    if not 1 <= count <= 999:
        problems.append("The count must be 1 to 999.")
    name = facts.name if facts else " ".join(food.lower().split())
    return _checked(
        p,
        PutUpReading(
            name,
            known,
            count,
            size,
            container,
            stands,
            day,
            pairs,
            note,
            group,
            acidity,
            (),
            tuple(problems),
        ),
        food,
    )


def _checked(p: Pantry, reading: PutUpReading, typed_food: str) -> PutUpReading:
    """Adds what only the store and the tables can know."""
    details = read_details(reading.process)
    problems = [*reading.problems, *details.problems]
    asks: list[Ask] = list(reading.asks)
    open_ = {one.about for one in asks}
    reading = replace(reading, process=details.pairs)
    meant = either(typed_food, reading.method, p.units) if typed_food else None
    if meant is not None:
        foods = choices(meant, p.tables)
        problems.insert(0, asked(typed_food, foods, meant.why))
        asks.append(Ask("food", typed_food, foods))
    reading = _printed(p, reading, problems)
    if reading.method is None:
        for word in reading.unread:
            ways = near_methods(word)
            if len(ways) > 1 and any(part in word for part in ("pickl", "cann", "smok")):
                problems.insert(0, f"{word!r} could mean {' or '.join(ways)}: say which.")
                asks.append(Ask("method", word, ways))
                rest = tuple(one for one in reading.unread if one != word)
                reading = replace(reading, unread=rest)
    asks += (
        [] if reading.method or "method" in open_ or asks else [Ask("method", "", tuple(Method))]
    )
    asks += [] if reading.food or "food" in open_ else [Ask("food")]
    if reading.food and p.facts(reading.food) is None:
        problems = [one for one in problems if "food table" not in one]
        if not (reading.group and reading.acidity):
            near = p.tables.index.near(reading.food)
            asks.append(Ask("food", reading.food, near))
            named = ", ".join(near) or "none"
            problems.append(
                f"{reading.food!r} is not in the food table (near it: {named}): "
                "add group=vegetable acidity=low-acid, or another name."
            )
        else:
            problems += _bad_words(reading)
    problems += _bad_amount(dict(reading.process).get("amount"))
    asks += (
        []
        if reading.place or "place" in open_
        else [Ask("place", "", tuple(sorted(p.place_paths().values())))]
    )
    if reading.place == "" and not any("place" in one or "stand" in one for one in problems):
        if p.stock.places:
            problems.append("Say where it stands: add the name of a place.")
        else:
            problems.append("There is no place yet: add one first (pantry-tui place add).")
    if reading.made is not None and reading.made > p.today:
        said = dates.say(reading.made)
        problems.append(f"{said} is still to come: give the day it was made.")
    reading = with_contents(reading, p.facts(reading.food) if reading.food else None)
    return replace(reading, problems=tuple(problems), asks=tuple(asks))


def _printed(p: Pantry, reading: PutUpReading, problems: list[str]) -> PutUpReading:
    """The printed date out of the record; a month alone lasts to its end."""
    rest = tuple(pair for pair in reading.process if pair[0] != "printed")
    typed = dict(reading.process).get("printed", "")
    if not typed or is_unknown(typed):
        return replace(reading, process=rest)
    if reading.method not in (None, Method.BOUGHT):
        problems.append("A printed date stands on what was bought in: leave printed= out.")
        return replace(reading, process=rest)
    try:
        if not re.search(r"\d{4}", typed):
            raise BadInput(f"printed={typed[:30]}: give the year too, like printed=2027-03-31.")
        day = dates.read_date(typed, p.today, strict_first=False)
    except BadInput as error:
        problems.append(error.message)
        return replace(reading, process=rest)
    return replace(reading, process=rest, printed=day)


def _bad_amount(amount: str | None) -> list[str]:
    """What is wrong with the amount of a bulk container, which is drawn from by its unit."""
    if amount is None:
        return []
    try:
        _, unit = read_amount(amount)
    except BadInput as error:
        return [error.message]
    return [] if unit else [f"{amount} of what? Give the amount its unit, like amount={amount}lb."]


def _bad_words(reading: PutUpReading) -> list[str]:
    found = []
    if reading.group not in tuple(Group):
        found.append(f"{reading.group!r} is no food group: one of {', '.join(Group)}.")
    if reading.acidity not in tuple(Acidity):
        found.append(f"{reading.acidity!r} is no acidity: one of {', '.join(Acidity)}.")
    return found


def _facts(p: Pantry, reading: PutUpReading) -> FoodFacts:
    known = p.facts(reading.food)
    if known is not None:
        return known
    return FoodFacts(
        reading.food, Group(reading.group), Acidity(reading.acidity), frozenset(), known=False
    )


def _judged(p: Pantry, reading: PutUpReading) -> tuple[Batch, State, Place, Judgement, Descent]:
    """The batch as it would stand, and what it takes of others. Raises BadInput for open problems,
    Refused for danger."""
    if reading.unread:
        words = ", ".join(repr(word[:40]) for word in reading.unread[:5])
        raise BadInput(f"Not understood: {words}; leave it out, or write it as note=...")
    if reading.problems:
        raise BadInput(reading.problems[0])
    assert reading.method is not None
    place = p.find_place(reading.place)
    food = _facts(p, reading)
    if low_acid_in_water(reading.method, food):
        raise Refused(f"{food.name.capitalize()} may not be boiling-water canned. {BOTULISM}")
    if reading.method is Method.FROZEN and place.climate is not Climate.FREEZER:
        raise Refused(f"{place.name} is no freezer: name a freezer for frozen food.")
    state = State.WORKING if reading.method in WORKING else State.SEALED
    descent = descent_of(p, reading)
    if descent.carried:
        state = descent.state
    if "state" in dict(reading.process):
        state = State(dict(reading.process)["state"].casefold())
    size = size_of(reading)
    record = with_altitude(p, reading.method, reading.process)
    doubted = doubt(
        reading.method,
        food,
        size,
        in_tested_jar(p, reading.method, food, size, dict(record)),
        p.altitude_ft,
        load_processes(),
        load_not_recommended(),
    )
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
    )
    batch = carry_on(batch, descent, reading, p.today)
    since = reading.made or p.today
    then = p.clock.now if descent.carried else some_time(since, p.clock.recorded)
    turn = Turn(then, "", place.id, state)
    held = reading.contents
    trial = Container("", "", 1, state, place.id, (turn,), held, held)
    judged = p.assess_bare(batch, trial, p.clock.now).on(p.today)
    table = p.book_of_rules.of(reading.method)
    packed = as_packed(batch, opened=False).food
    spoken = speaking(table, packed, reading.method, state, place.climate)
    refused = next((rule for rule in spoken if rule.kind is Kind.REFUSE), None)
    if refused is not None:
        raise Refused(
            f"{food.name.capitalize()} ({reading.method}) may not stand in {place.name}: "
            f"{refused.wording}"
        )
    return batch, state, place, judged, descent


def with_altitude(
    p: Pantry, method: Method, record: tuple[tuple[str, str], ...]
) -> tuple[tuple[str, str], ...]:
    """The record of a canned batch, which says so where nobody knows the altitude."""
    said = known(record)
    if method not in LIDDED or p.altitude_ft is not None or "altitude" in said or not said:
        return record
    return (*(pair for pair in record if pair[0] != "altitude"), ("altitude", "unknown"))


def in_tested_jar(
    p: Pantry, method: Method, food: FoodFacts, size: str, record: dict[str, str]
) -> dict[str, str]:
    """The record with the published jar whose time its metric one takes, where the household goes
    by the makers' manuals."""
    typed = record.get("jar", "") or size
    jar = by_maker(typed, low_acid=low_acid(method, food)) if p.jars == MAKER else None
    return record if jar is None else {**record, "jar": jar}


def preview(p: Pantry, reading: PutUpReading) -> PutUp:
    """What putting it up would give, booking nothing. Raises as `put_up` does."""
    batch, _, _, judged, _ = _judged(p, reading)
    return _answer("", (), batch, judged, reading)


def _answer(
    code: str, names: tuple[str, ...], batch: Batch, judged: Judgement, reading: PutUpReading
) -> PutUp:
    told = list(cautions(batch, [judged.verdict]))
    told += judged.standing
    if not batch.food.known:
        told.append("No publication here names it: judged by the strictest rule of its group.")
    return PutUp(
        code,
        names,
        judged.best_by,
        judged.discard_after,
        judged.verdict,
        tuple(told),
        judged.reasons,
        reading,
        "" if judged.discard_after else judged.why_no_discard,
        judged.standing,
    )


@booked
def put_up(p: Pantry, reading: PutUpReading, *, at: At | None = None) -> PutUp:
    """Book a batch; returns its lid code. Raises BadInput (unread), Refused (danger)."""
    batch, state, place, _, descent = _judged(p, reading)
    code, id_ = p.next_code(), f"b{p.next_id()}"
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
            parts=descent.payload,
            carried=descent.carried,
        ),
        **when(at),
    )
    names = tuple(f"{code}/{n}" for n in range(1, reading.count + 1))
    booked_as = p.stock.batches[id_]
    judged = p.judge(p.containers_of(booked_as)[0])
    answer = _answer(code, names, booked_as, judged, reading)
    full = overfull(p, place.id)
    told = (*answer.cautions, full) if full else answer.cautions
    return replace(answer, cautions=told, made_from=took(p, descent))
