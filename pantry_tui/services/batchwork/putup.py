"""Putting up: read a line, show what it was understood as, and book the batch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_amount
from pantry_tui.core.keeping.limits import Judgement, as_packed, judge
from pantry_tui.core.keeping.rules import speaking
from pantry_tui.core.lidcode import next_code
from pantry_tui.core.log.events import Did, Event
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Stay
from pantry_tui.core.safety.process import CANNED, doubt, recorded
from pantry_tui.core.text import clean
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.names import find_method, method_named, near_methods
from pantry_tui.reference.process import load_not_recommended, load_processes
from pantry_tui.services.batchwork.line import read_line
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUp, PutUpReading
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

    def food_named(text: str) -> str | None:
        facts = p.facts(text)
        return facts.name if facts else None

    reading = read_line(
        line,
        today=p.today,
        places=p.place_paths(),
        find_food=food_named,
        find_method=find_method,
    )
    return _checked(p, reading)


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
    )


def _checked(p: Pantry, reading: PutUpReading) -> PutUpReading:
    """Adds what only the store and the tables can know."""
    problems = list(reading.problems)
    if reading.method is None:
        for word in reading.unread:
            meant = near_methods(word)
            if len(meant) > 1 and any(part in word for part in ("pickl", "cann", "smok")):
                problems.insert(0, f"{word!r} could mean {' or '.join(meant)}: say which.")
                rest = tuple(one for one in reading.unread if one != word)
                reading = replace(reading, unread=rest)
    if reading.food and p.facts(reading.food) is None:
        problems = [one for one in problems if "food table" not in one]
        if not (reading.group and reading.acidity):
            near = ", ".join(p.tables.index.near(reading.food)) or "none"
            problems.append(
                f"{reading.food!r} is not in the food table (near it: {near}): "
                "add group=vegetable acidity=low-acid, or another name."
            )
        else:
            problems += _bad_words(reading)
    problems += _bad_amount(dict(reading.process).get("amount"))
    if reading.place == "" and not any("place" in one or "stand" in one for one in problems):
        if p.stock.places:
            problems.append("Say where it stands: add the name of a place.")
        else:
            problems.append("There is no place yet: add one first (pantry-tui place add).")
    if reading.made is not None and reading.made > p.today:
        said = dates.say(reading.made)
        problems.append(f"{said} is still to come: give the day it was made.")
    return replace(reading, problems=tuple(problems))


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


def _judged(p: Pantry, reading: PutUpReading) -> tuple[Batch, State, Place, Judgement]:
    """The batch as it would stand. Raises BadInput for open problems, Refused for danger."""
    if reading.unread:
        words = ", ".join(repr(word[:40]) for word in reading.unread[:5])
        raise BadInput(f"Not understood: {words}; leave it out, or write it as note=...")
    if reading.problems:
        raise BadInput(reading.problems[0])
    assert reading.method is not None
    place = p.find_place(reading.place)
    food = _facts(p, reading)
    if reading.method is Method.BOILING_WATER and food.acidity is Acidity.LOW_ACID:
        raise Refused(f"{food.name.capitalize()} may not be boiling-water canned. {BOTULISM}")
    if reading.method is Method.FROZEN and place.climate is not Climate.FREEZER:
        raise Refused(f"{place.name} is no freezer: name a freezer for frozen food.")
    state = State.WORKING if reading.method in WORKING else State.SEALED
    if dict(reading.process).get("state") in tuple(State):
        state = State(dict(reading.process)["state"])
    amount = dict(reading.process).get("amount", "")
    size = " ".join(part for part in (reading.size, reading.container) if part)
    doubted = doubt(
        reading.method,
        food,
        size,
        dict(reading.process),
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
        reading.process,
        reading.note,
        doubt=doubted.problems if doubted else (),
        possible=doubted.still_possible if doubted else "",
    )
    since = reading.made or p.today
    stay = Stay(since, place.id, place.climate, state, place.temperature_f)
    trial = Container("", "", 1, state, place.id, (stay,), amount)
    judged = judge(batch, trial, p.book_of_rules, p.today)
    table = p.book_of_rules.of(reading.method)
    packed = as_packed(batch, (stay,)).food
    spoken = speaking(table, packed, reading.method, state, place.climate)
    refused = next((rule for rule in spoken if rule.kind is Kind.REFUSE), None)
    if refused is not None:
        raise Refused(
            f"{food.name.capitalize()} ({reading.method}) may not stand in {place.name}: "
            f"{refused.wording}"
        )
    return batch, state, place, judged


def preview(p: Pantry, reading: PutUpReading) -> PutUp:
    """What putting it up would give, booking nothing. Raises as `put_up` does."""
    batch, _, _, judged = _judged(p, reading)
    return _answer("", (), batch, judged, reading)


def _answer(
    code: str, names: tuple[str, ...], batch: Batch, judged: Judgement, reading: PutUpReading
) -> PutUp:
    said = list(cautions(batch, [judged.verdict]))
    if batch.method in CANNED and not batch.doubt and not recorded(dict(batch.process)):
        said.append(
            "No process is recorded, so time, pressure and altitude are not checked: add "
            "minutes=, psi= and canner=."
        )
    if not batch.food.known:
        said.append("Not in the food table: judged by the strictest rule of its group.")
    return PutUp(
        code,
        names,
        judged.best_by,
        judged.discard_after,
        judged.verdict,
        tuple(said),
        judged.reasons,
        reading,
    )


def put_up(p: Pantry, reading: PutUpReading) -> PutUp:
    """Book a batch; returns its lid code. Raises BadInput (unread), Refused (danger)."""
    judged = _judged(p, reading)[3]
    event = event_of(p, reading)
    p.book(event)
    code = event.data["code"]
    names = tuple(f"{code}/{n}" for n in range(1, reading.count + 1))
    return _answer(code, names, p.stock.batches[event.batch], judged, reading)


def event_of(p: Pantry, reading: PutUpReading, nth: int = 0) -> Event:
    """The put-up as an event, not yet booked; the `nth` of several that are booked together."""
    batch, state, place, _ = _judged(p, reading)
    used = _used_codes(p)
    for _ in range(nth):
        used.add(next_code(used))
    id_ = f"b{p.next_id()}{nth or ''}"
    return p.event(
        Did.PUT_UP,
        batch=id_,
        containers=[f"{id_}.{n}" for n in range(1, reading.count + 1)],
        code=next_code(used),
        food={
            "name": batch.food.name,
            "group": batch.food.group.value,
            "acidity": batch.food.acidity.value,
            "classes": sorted(batch.food.classes),
            "known": batch.food.known,
        },
        method=batch.method.value,
        made=_iso(batch.made),
        size=batch.size,
        process=[list(pair) for pair in batch.process],
        note=batch.note,
        place=place.id,
        state=state.value,
        amount=dict(reading.process).get("amount", ""),
        doubt=list(batch.doubt),
        possible=batch.possible,
    )


def _used_codes(p: Pantry) -> set[str]:
    """Every code ever given, undone batches too: a lid may still carry it."""
    return {event.data["code"] for event in p.events if event.did is Did.PUT_UP}


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None
