"""What a typed line or flags say of a batch: read, checked against the store and the tables, with
what is open as problems and questions. Nothing is booked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import partial

from pantry_tui.core import dates
from pantry_tui.core.amounts import read_amount
from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.line.givers import says_given, says_where_from
from pantry_tui.core.safety.possible import impossible, with_degrees
from pantry_tui.core.safety.prepared import IN_SHELL, PREPARED
from pantry_tui.core.safety.process import is_form
from pantry_tui.core.safety.record import key_named, read_details
from pantry_tui.core.safety.values import is_unknown
from pantry_tui.core.text import clean, singular
from pantry_tui.core.vessels import wrong_size
from pantry_tui.core.words import Acidity, Group, Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.ambiguous import asked, choices, either
from pantry_tui.reference.names import method_named, near_methods
from pantry_tui.reference.process import processes_named
from pantry_tui.services.batchwork.contents import beyond_any, size_of, with_contents
from pantry_tui.services.batchwork.kitchen import kitchen
from pantry_tui.services.batchwork.line import read_line
from pantry_tui.services.batchwork.made_from import take_sources
from pantry_tui.services.batchwork.out_of import or_out_of_one, read_part, take_part
from pantry_tui.services.batchwork.prepared import (
    as_laid,
    contradicted,
    named_way,
    prepared,
    said_anywhere,
    said_beside,
)
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Ask, PutUpReading


def read(
    p: Pantry, line: str, details: Sequence[tuple[str, str]] = (), *, note: str = ""
) -> PutUpReading:
    """What a plain-English line says, and `details` of its process and a `note` beside it; problems
    and unread words are named, nothing is dropped."""
    rest, sources = take_sources(p, line)
    if not sources and (part := take_part(p, line)) is not None:
        reading = read_part(p, part, partial(read, note=note))
        return replace(reading, process=(*reading.process, *details))
    if note and not sources:
        note, sources = take_sources(p, note)
    reading, typed = read_line(rest, kitchen(p), note)
    reading = replace(reading, sources=sources, process=(*reading.process, *details))
    return or_out_of_one(p, _checked(p, reading, typed or reading.food))


def read_at(p: Pantry, line: str, place: str) -> PutUpReading:
    """The same of a line that stands under a place, which it need not name again. Raises BadInput
    for a place that is not there."""
    return read(p, line_at(p, line, p.find_place(place).id))


def line_at(p: Pantry, line: str, place: str) -> str:
    """The line with the place (an id) in front of it, unless it names one itself. In front, since a
    note without quotes takes all that stands behind it."""
    reading = read(p, line)
    named = reading.place or any(ask.about == "place" and ask.typed for ask in reading.asks)
    return line if named else f"{p.place_paths()[place].replace('›', ' ')}, {line}"


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
    pairs = (*pairs, *named_way(method).items())
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


def _as_prepared(p: Pantry, reading: PutUpReading, typed: str) -> PutUpReading:
    """With what was done to the food before, where the words beside its name say so."""
    if not typed or p.tables.index.named(typed) is not None:
        return reading
    done, odd = prepared(typed, p.facts(reading.food), reading.method)
    process, said = reading.process, {key for key, _ in reading.process}
    if done and PREPARED not in said:
        process = (*process, (PREPARED, done))
    beside = said_beside(typed, reading.method)
    process = (*process, *(pair for pair in beside.items() if pair[0] not in said))
    return replace(reading, process=process, unread=(*reading.unread, *odd))


def _as_laid(p: Pantry, reading: PutUpReading, typed: str) -> PutUpReading:
    """Frozen eggs that are counted as they were laid are recorded as lying in their shells."""
    facts, said = p.facts(reading.food), {key for key, _ in reading.process}
    if reading.method is not Method.FROZEN or facts is None or PREPARED in said:
        return reading
    if not as_laid(facts, size_of(reading), typed, reading.note):
        return reading
    return replace(reading, process=(*reading.process, (PREPARED, IN_SHELL)))


def _told_anywhere(reading: PutUpReading) -> PutUpReading:
    """With what the words that nothing else reads, and the note, say of its process."""
    process, unread, problems = list(reading.process), [], []
    for text in (*reading.unread, reading.note):
        said = {key_named(key): value for key, value in process}
        told = said_anywhere(text, reading.method)
        odd = contradicted(text, reading.method, {key or "": one for key, one in said.items()})
        new = {key: one for key, one in told.items() if is_unknown(said.get(key, ""))}
        process = [*(pair for pair in process if key_named(pair[0]) not in new), *new.items()]
        problems += [odd] if odd else []
        if not told and text is not reading.note:
            unread.append(text)
    return replace(
        reading,
        process=tuple(process),
        unread=tuple(unread),
        problems=(*reading.problems, *problems),
    )


def _where_from(reading: PutUpReading) -> PutUpReading:
    """With what says where it comes from, and nothing else, in its note."""
    canned = reading.method in PROCESSED
    told = [one for one in reading.unread if says_where_from(one, canned=canned)]
    if not told or reading.method is None:
        return reading
    rest = tuple(one for one in reading.unread if one not in told)
    return replace(reading, note="; ".join(filter(None, (reading.note, *told))), unread=rest)


def _by_others(reading: PutUpReading) -> PutUpReading:
    """With who canned it, where the line or its note says in any words that others did."""
    if reading.method not in PROCESSED or any(key_named(key) == "by" for key, _ in reading.process):
        return reading
    given = [one for one in reading.unread if says_given(one, left_over=True)]
    told = given or ([reading.note] if says_given(reading.note) else [])
    if not told:
        return reading
    rest = tuple(one for one in reading.unread if one not in given)
    process = (*reading.process, ("by", "; ".join(told)[:60]))
    return replace(reading, process=process, unread=rest)


def _by_its_form(p: Pantry, reading: PutUpReading) -> PutUpReading:
    """As the food that its form makes of it, where that is listed with a process of its own, and
    the food has none in that form: crushed tomatoes, apple sauce."""
    form = " ".join(dict(reading.process).get("form", "").casefold().split())
    if not form or not reading.food or reading.method not in PROCESSED:
        return reading
    if any(is_form(row, form) for row in processes_named(reading.food)):
        return reading
    listed = p.tables.food_called(reading.food)
    own = (reading.food, *(listed.aliases if listed is not None else ()))
    names = (f"{form} {one}" for one in own)
    for name in (*names, *(f"{singular(one)} {form}" for one in own)):
        found = p.tables.index.named(name)
        if found is not None and found.name != reading.food and processes_named(found.name):
            rest = tuple(pair for pair in reading.process if pair[0] != "form")
            return replace(reading, food=found.name, process=rest)
    return reading


def _checked(p: Pantry, reading: PutUpReading, typed_food: str) -> PutUpReading:
    """Adds what only the store and the tables can know."""
    reading = _by_others(_where_from(_told_anywhere(_as_prepared(p, reading, typed_food))))
    reading = _as_laid(p, reading, typed_food)
    details = read_details(reading.process)
    problems = [*reading.problems, *details.problems]
    asks: list[Ask] = list(reading.asks)
    open_ = {one.about for one in asks}
    pairs = with_degrees(details.pairs, p.bare_degree)
    problems += impossible(reading.method, pairs)
    reading = _by_its_form(p, replace(reading, process=pairs))
    meant = either(typed_food, reading.method, p.units) if typed_food else None
    if meant is not None and "food" not in open_:
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
            named = f" (near it: {', '.join(near)})" if near else ""
            problems.append(
                f"{reading.food!r} is not in the food table{named}: "
                f"add group= ({', '.join(Group)}) and acidity=low-acid or acid, or another name."
            )
        else:
            problems += _bad_words(reading)
    problems += _bad_amount(dict(reading.process).get("amount"))
    problems += filter(None, [wrong_size(size_of(reading))])
    asks += (
        []
        if reading.place or "place" in open_
        else [Ask("place", "", tuple(sorted(p.place_paths().values())))]
    )
    if reading.place == "" and not any("place" in one or "stand" in one for one in problems):
        if p.stock.places:
            problems.append("Say where it stands: add the name of a place.")
        else:
            problems.append("There is no place yet: add one first, with `pantry-tui place add`.")
    if reading.made is not None and reading.made > p.today:
        said = dates.say(reading.made)
        problems.append(f"{said} is still to come: give the day it was made.")
    reading = with_contents(reading, p.facts(reading.food) if reading.food else None)
    problems += beyond_any(reading)
    return replace(reading, problems=tuple(problems), asks=tuple(asks))


def _printed(p: Pantry, reading: PutUpReading, problems: list[str]) -> PutUpReading:
    """The printed date out of the record; a month alone lasts to its end."""
    rest = tuple(pair for pair in reading.process if pair[0] != "printed")
    typed = dict(reading.process).get("printed", "")
    kind, typed = (
        ("use-by", typed.removeprefix("use by ")) if typed.startswith("use by ") else ("", typed)
    )
    if not typed or is_unknown(typed):
        return replace(reading, process=rest)
    if reading.method not in (None, Method.BOUGHT):
        problems.append("A printed date stands on what was bought in: leave printed= out.")
        return replace(reading, process=rest)
    try:
        day = dates.read_printed(typed, p.today)
    except BadInput as error:
        problems.append(error.message)
        return replace(reading, process=rest)
    if kind:
        rest = (*(pair for pair in rest if pair[0] != "dated"), ("dated", kind))
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
