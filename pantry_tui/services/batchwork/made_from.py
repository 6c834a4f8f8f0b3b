"""Made from what was in store: which containers, how much of each, and what of them goes on."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from datetime import date
from fractions import Fraction

from pantry_tui.core.amounts import Amount
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.keeping.descent import AS_IT_WAS, PACKING, carries_state, filled, reprocessed
from pantry_tui.core.lidcode import is_code, normal_code
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.fold_place import path_of
from pantry_tui.core.log.moments import some_time
from pantry_tui.core.model import Batch, Container
from pantry_tui.core.safety.jars import read_jar
from pantry_tui.core.safety.made_of import Used
from pantry_tui.core.text import singular
from pantry_tui.core.words import Method, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.measures import convert
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import PutUpReading, Source, Took
from pantry_tui.services.stock.drawing import (
    Part,
    drawn,
    kept_open,
    opens,
    pick_of,
    read_wanted,
    went_along,
)
from pantry_tui.services.stock.fit import badness, fit, refuse_if_none_fits
from pantry_tui.services.stock.pick import batch_named, name_of, ordered
from pantry_tui.services.stock.seen import At, told_moment

#: "2 lb of 2A", "3B/1", "half of 4C".
_ITEM = re.compile(
    r"\s*(?:(?P<much>(?:half|all|a quarter|[\d./½¼¾⅓⅔⅛]+(?: \d+/\d+)?\s*[a-z ]*?))\s+of\s+)?"
    r"(?P<code>\d[a-z0-9]{1,4}(?:/\d{1,4})?)(?![\w=])",
    re.IGNORECASE,
)
_FROM = re.compile(r"[\s,;]*\b(?:made\s+)?from\b", re.IGNORECASE)
_AND = re.compile(r"\s*(?:,\s*and\b|,|\+|\band\b)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Descent:
    """What a put-up takes of older batches. `carried`: all of it is the same food, kept the same
    way, which goes on with its days (`made`, the earliest) and its `state`. `same`: all of it is
    the same food, however it is kept."""

    parts: tuple[Part, ...] = ()
    carried: bool = False
    made: date | None = None
    state: State = State.SEALED
    of: Batch | None = None  # what is carried on
    same: bool = False

    def payload(self, p: Pantry, at: At | None) -> tuple[said.Part, ...]:
        """The parts as they are booked, with where what is left of each goes then."""
        return tuple(
            said.Part(part.container.id, part.amount, kept_open(p, part, at)) for part in self.parts
        )


def take_sources(p: Pantry, line: str) -> tuple[str, tuple[Source, ...]]:
    """The line without its "from 2 lb of 2A, 3B/1", and those; words that name no batch of the
    store are left in it."""
    for match in _FROM.finditer(line):
        stop, found = _sources_at(p, line, match.end())
        if found:
            return f"{line[: match.start()]} {line[stop:]}".strip(), found
    return line, ()


def _sources_at(p: Pantry, line: str, at: int) -> tuple[int, tuple[Source, ...]]:
    found: list[Source] = []
    stop = at
    while (item := _ITEM.match(line, at)) is not None:
        code, slash, number = item["code"].partition("/")
        if p.batch(normal_code(code)) is None and not (is_code(normal_code(code)) and item["much"]):
            break  # "from 2 lb of 9H" names a batch, be it there or not; "from 2 farms" does not
        found.append(Source(f"{normal_code(code)}{slash}{number}", item["much"] or ""))
        stop = item.end()
        between = _AND.match(line, stop)
        if between is None:
            break
        at = between.end()
    return stop, tuple(found)


def descent_of(p: Pantry, reading: PutUpReading, at: At | None = None) -> Descent:
    """What is taken for it, at the moment told: without an amount the whole of one container.
    Raises BadInput, Unclear, and Refused for what is not fit to be used."""
    parts: list[Part] = []
    for source in reading.sources:
        parts += _taken(p, source, {one.container.id for one in parts}, at)
    if not parts:
        return Descent()
    batches = {one.container.batch: p.stock.batches[one.container.batch] for one in parts}
    same = [b for b in batches.values() if b.food == _food(p, reading)]
    if len(same) < len(batches) or any(b.method is not reading.method for b in same):
        return Descent(tuple(parts), same=len(same) == len(batches))
    if _processed_anew(p, reading, parts, at):
        return Descent(tuple(parts), same=True)
    days = [b.made for b in same]
    made = None if None in days else min(day for day in days if day is not None)
    states = [carries_state(p.stock.batches[one.container.batch], one.container) for one in parts]
    return Descent(tuple(parts), True, made, worst(states), same[0], same=True)


def _processed_anew(p: Pantry, reading: PutUpReading, parts: Sequence[Part], at: At | None) -> bool:
    """Whether all of it are jars that did not seal and are processed once more in time."""
    then = told_moment(p, at) or p.clock.now
    if reading.made not in (None, p.today):
        then = some_time(reading.made, p.clock.recorded, p.today)

    def one(part: Part) -> bool:
        of = p.stock.batches[part.container.batch]
        again = replace(of, process=reading.process, carried=False)
        return part.amount is None and reprocessed(again, of, part.container, then)

    return all(map(one, parts))


def as_it_was_kept(p: Pantry, reading: PutUpReading) -> PutUpReading:
    """The same food out of canned jars into others, with no process told, is kept as it was before,
    whatever way its name says: jam in another jar is no jam that was made anew."""
    processed = not {key for key, _ in reading.process} <= PACKING
    if not reading.food or reading.method not in LIDDED or processed:
        return reading
    named = (p.batch(normal_code(one.ref.partition("/")[0])) for one in reading.sources)
    of = [batch for batch in named if batch is not None]
    ways = {batch.method for batch in of}
    same = all(batch.food == _food(p, reading) for batch in of)
    if len(ways) != 1 or not same or not ways <= LIDDED:
        return reading
    return replace(reading, method=of[0].method)


def used_of(p: Pantry, descent: Descent) -> tuple[Used, ...]:
    """What is put into it of other foods, for the checks of what is in it."""
    if descent.same:
        return ()
    of = (p.stock.batches[part.container.batch] for part in descent.parts)
    return tuple(Used(one.food, one.method) for one in of)


#: What is begun stays begun, whatever it is put together with, and whatever it is said to be.
_ORDER = (State.IN_PROGRESS, State.THAWED, State.OPEN, State.SEALED)


def worst(states: Iterable[State]) -> State:
    """Of several states that food may be in, the one that keeps least."""
    return min(states, key=_ORDER.index)


def _food(p: Pantry, reading: PutUpReading) -> object:
    return p.facts(reading.food)


def _taken(p: Pantry, source: Source, before: set[str], at: At | None) -> Iterable[Part]:
    refuse_if_none_fits(p, source.ref, ours=True, at=at)
    _refuse_begun(p, source.ref, at)

    def fits(one: Container) -> bool:
        return one.id not in before and fit(p, one, at)

    pick = pick_of(p, source.ref, fits, "be used", ours=True)
    if not source.amount:
        return [Part(pick(1)[0])]
    return drawn(p, source.ref, read_wanted(source.amount), pick)


def _refuse_begun(p: Pantry, ref: str, at: At | None) -> None:
    """What is open or thawed is what a cook takes: where that must be discarded, another one of its
    batch goes into the pot only by its number. Raises Refused."""
    if "/" in ref:
        return
    batch = batch_named(p, ref)
    here = [one for one in p.containers_of(batch) if one.here and not one.reserved]
    begun = [one for one in here if one.state in (State.OPEN, State.THAWED)]
    over = [one for one in begun if badness(p, one) and not fit(p, one, at)]
    if not over or any(fit(p, one, at) for one in begun):
        return
    good = next(one for one in ordered(p, here) if fit(p, one, at))
    judged, name = p.judge(over[0]), name_of(p, over[0])
    raise Refused(
        f"{name} is {over[0].state} and would be taken first: {judged.verdict.said}. "
        f"{judged.reasons[0] if judged.reasons else ''} If another one goes into it, say which: "
        f"from {name_of(p, good)}."
    )


def carry_on(batch: Batch, descent: Descent, reading: PutUpReading, today: date) -> Batch:
    """The batch with what it has of its parts."""
    if not descent.parts:
        return batch
    ids = tuple(one.container.id for one in descent.parts)
    batch = replace(batch, parts=ids, carried=descent.carried)
    if descent.of is None:
        return batch
    if reading.made != today:
        raise BadInput("It goes on with the day on which it was first made: leave the date out.")
    of = descent.of
    return replace(
        batch,
        made=descent.made,
        process=_record(batch, of),
        filled=filled(of),
        printed=batch.printed or of.printed,
        doubt=of.doubt,
        possible=of.possible,
    )


def _record(batch: Batch, of: Batch) -> tuple[tuple[str, str], ...]:
    """The record of what goes on: that of what it was, where nothing but its packing is said anew.
    Out of a pack without air it is in none, unless that is said. What was processed anew was so in
    its own jars."""
    keys = {key for key, _ in batch.process}
    if keys <= PACKING:
        lost = keys | {"state"} | (set() if of.method in AS_IT_WAS else {"vacuum"})
        return (*(pair for pair in of.process if pair[0] not in lost), *batch.process)
    if of.method not in LIDDED or "jar" in keys or read_jar(batch.size) is None:
        return batch.process
    return (*batch.process, ("jar", batch.size))


#: What is filled may come to so much more than what was taken, or less: nobody measures a jar to
#: the drop. Our own choice.
_MEASURED = Fraction(11, 10)


def unlike_taken(descent: Descent, method: Method, contents: Amount | None, count: int) -> str:
    """Says where more is filled than is taken of the same food, or less of what neither boils down
    nor dries, "" where not; where one is a weight and the other a volume nobody can say."""
    held = [one.amount or one.container.left for one in descent.parts]
    as_much = descent.carried or (descent.same and method is Method.FROZEN)
    if not as_much or contents is None or not contents.unit or None in held:
        return ""
    try:
        taken = sum(
            (convert(one.number, one.unit, contents.unit) for one in held if one is not None),
            Fraction(0),
        )
    except (Refused, BadInput):
        return ""
    filled = contents.number * count
    if filled * _MEASURED < taken:
        rest = Amount(taken - filled, contents.unit)
        return (
            f"{Amount(taken, contents.unit)} was taken and {Amount(filled, contents.unit)} filled: "
            f"{rest} of it is booked nowhere. If it is still there, undo it, and say how much was "
            "taken, or more vessels."
        )
    if filled <= taken * _MEASURED:
        return ""
    return (
        f"{Amount(filled, contents.unit)} came out of {Amount(taken, contents.unit)}: undo it, and "
        "say how much was taken, or fewer or smaller vessels."
    )


def took(p: Pantry, descent: Descent) -> tuple[Took, ...]:
    """What was taken of which container, and what is left there now."""

    def one(part: Part) -> Took:
        now = p.stock.containers[part.container.id]
        much = part.amount or part.container.left
        left = str(now.left) if now.here and part.amount is not None else ""
        code = p.stock.batches[now.batch].code
        return Took(code, name_of(p, now), str(much) if much else "", left)

    return tuple(map(one, descent.parts))


def would_take(p: Pantry, descent: Descent) -> tuple[Took, ...]:
    """What would be taken of which container, and what would be left there."""

    def one(part: Part) -> Took:
        here, much = part.container, part.amount
        left = ""
        if much is not None and here.left is not None:
            left = str(Amount(here.left.number - much.number, here.left.unit))
        code = p.stock.batches[here.batch].code
        return Took(code, name_of(p, here), str(much or here.left or ""), left)

    return tuple(map(one, descent.parts))


def would_open(p: Pantry, descent: Descent, at: At | None) -> tuple[str, ...]:
    """Of each shut vessel of which a part would be taken, that this opens it, and where it goes."""
    found = []
    for part in descent.parts:
        if not opens(part):
            continue
        one = part.container
        batch, to = p.stock.batches[one.batch], kept_open(p, part, at)
        what = ", ".join(
            filter(None, (f"{name_of(p, one)} {batch.food.name}", singular(batch.size)))
        )
        goes = f", and what is left stands in {path_of(p.ever, to)} then" if to else ""
        found.append(f"{what} in {p.where(one)}, is shut: this opens it{goes}.")
    return tuple(found)


def opened(p: Pantry, descent: Descent) -> tuple[str, ...]:
    """Of each vessel that was opened and carried into the cold as a part was taken, that it was."""
    return tuple(
        f"{name_of(p, part.container)} is open now, and stands in {where}."
        for part in descent.parts
        if (where := went_along(p, part.container))
    )


def say_sources(sources: Sequence[Source]) -> str:
    """ "2 lb of 2A, 3B/1"."""
    return ", ".join(f"{one.amount} of {one.ref}" if one.amount else one.ref for one in sources)
