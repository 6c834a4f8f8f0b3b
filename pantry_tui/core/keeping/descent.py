"""What was made of something else is never trusted longer than what it was made from.

Where the food goes on as it was (a crock into jars, a big pack into small ones) the judge follows
the part through the whole of its life, its new one included, and the earlier end counts. Where it
became another thing (strawberries jam, thawed beef a stew) its own figures start, if the part was
fit to be eaten at that moment, as all that was ever booked of it says.

Between the two is what no published process begins with (core.keeping.begins: leftovers put under
oil, garlic out of oil dried, opened beans pickled): its own figures start, and a safety limit that
ran on the part runs on. What a person freezes while it is fit is frozen food from then on: food
frozen in time stays safe (USDA FSIS, Freezing and Food Safety), but of what lay in oil, was smoked
or had been opened the days that ran are gone once it is thawed, and what was thawed before keeps
its last day. To say so is to repack it as frozen; a pack
that is only carried into a freezer keeps its date, since no move makes anything later.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import timedelta

from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.begins import begins_with
from pantry_tui.core.keeping.doubt import RESCUE_DAYS, found_unsealed
from pantry_tui.core.keeping.harm import SHELF_READY
from pantry_tui.core.keeping.ladder import Assessment
from pantry_tui.core.keeping.no_day import NOTHING
from pantry_tui.core.keeping.thawing import parted
from pantry_tui.core.keeping.weather import Fact, too_warm, weather
from pantry_tui.core.model import (
    DAY_MIN,
    EVER,
    Batch,
    Container,
    Cut,
    Held,
    Place,
    Read,
    Turn,
    When,
)
from pantry_tui.core.vessels import Vessel
from pantry_tui.core.words import ASSUMED_F, Climate, Group, Method, State

#: Taken out of a closed vessel of these, food goes on as it was: nothing got in that was not there.
AS_IT_WAS = frozenset(
    {Method.FROZEN, Method.DRIED, Method.FREEZE_DRIED, Method.SUGAR, Method.INFUSION}
)


#: What a record says of how food is packed and stands: no part of what was done to it.
PACKING = frozenset({"vacuum", "state"})

#: What only lies in the air, in oil or in a refrigerator: the part goes on in it, wherever that is.
#: What is dried, salted, sealed or soured keeps the date that ran when it was taken.
_MOIST = frozenset(
    {
        Method.FRESH, Method.CELLAR, Method.BOUGHT, Method.IN_OIL, Method.MEAL,
        Method.FRIDGE_PICKLE, Method.HOT_SMOKED, Method.COLD_SMOKED,
    }
)  # fmt: skip
#: Their days count from the day they were made, whatever was done then (data/keeping.csv), and are
#: those of botulism: the freezer gives none of them back.
_FROM_MAKING = frozenset({Method.IN_OIL, Method.HOT_SMOKED, Method.COLD_SMOKED})
#: Where what is taken out of a jar or a freezer stands until it is something dry or sealed.
_CHILLED = Place(
    "chilled",
    "chilled",
    Climate.FRIDGE,
    facts=(Held(EVER, Climate.FRIDGE, ASSUMED_F[Climate.FRIDGE]),),
)


#: No process seals these: jam that was cooked before is no fresh one in the box of a freezer jam,
#: nor are pickles that were ready in the jar of another pickle.
_UNPROCESSED = {
    Method.FREEZER_JAM: frozenset({Method.JAM}),
    Method.FRIDGE_PICKLE: frozenset({Method.VINEGAR_PICKLE}),
}


def runs_on(batch: Batch, of: Batch, begun: frozenset[State]) -> bool:
    """Whether no safety limit of a part ends with what was done to it: no published process begins
    with such food, or nobody knows that the process was one. Raw food that is frozen in time is
    frozen food."""
    if batch.method is not Method.FROZEN:
        return bool(batch.doubt) or not begins_with(batch.method, of)
    return State.THAWED in begun and not begins_with(Method.MEAL, of)


def ends_nothing(batch: Batch, own: Assessment) -> bool:
    """Whether no figure is published for what it became, so that nothing ended a limit that ran;
    what is frozen in time stays safe, whatever it is."""
    return batch.method is not Method.FROZEN and own.why_no_discard == NOTHING


def kept_on(batch: Batch, of: Batch, begun: frozenset[State]) -> bool:
    """Whether it is still what its part was, as far as processes go: none was done to it."""
    return batch.method is Method.FROZEN or goes_on(batch, of, begun) or runs_on(batch, of, begun)


def moist(batch: Batch) -> bool:
    """Whether a part that runs on does so where the new thing stands."""
    return batch.method in _MOIST


def held_back(batch: Batch, of: Batch, begun: frozenset[State]) -> bool:
    """Whether the days that a part had left are all that it has once it is thawed: being opened
    starts a clock that freezing stops and does not take back, and what was made of leftovers that
    no process ended is as old as they were."""
    if batch.method is not Method.FROZEN:
        return False
    if of.method in _FROM_MAKING:
        return True
    return State.OPEN in begun if batch.food == of.food else not begins_with(Method.MEAL, of)


def as_it_was(batch: Batch, of: Batch, begun: frozenset[State]) -> bool:
    """Whether it is the same food, neither cooked nor cured since: what it used of its two hours
    out of the cold is used (USDA FSIS, the two-hour rule)."""
    return batch.food == of.food or runs_on(batch, of, begun)


def goes_on(batch: Batch, of: Batch, begun: frozenset[State]) -> bool:
    """Whether it is the same food, kept in the same way. What was thawed and is only frozen again
    goes on, too: refreezing gives none of its days back, whatever vessel it is in."""
    if batch.method is of.method or of.method in _UNPROCESSED.get(batch.method, ()):
        return True
    if batch.method is Method.BOUGHT:
        return True  # out of another container it was not bought: nothing was done to it
    return batch.method is Method.FROZEN and batch.food == of.food and State.THAWED in begun


def reprocessed(batch: Batch, of: Batch, taken: Container, then: When) -> bool:
    """Whether jars that did not seal, found and taken (`as_taken`) within a day of it, were
    processed anew `then`, for the full time of a record of their own: no opened food, but made that
    day (NCHFP, Recommended jars and lids: within 24 hours; the University of Nebraska-Lincoln
    Extension, Saving home-canned food). It takes a process that nothing speaks against before, and
    a lid of which nothing else was seen."""
    if batch.carried or batch.method is not of.method or batch.method not in PROCESSED:
        return False
    if batch.food != of.food or of.doubt or "minutes" not in dict(batch.process):
        return False
    unsealed = bool(taken.signs) and all(map(found_unsealed, taken.signs))
    if not unsealed or taken.state is not State.SEALED or taken.left != taken.first:
        return False
    start = taken.turns[0].when
    late = then.day > start.day + timedelta(days=RESCUE_DAYS)
    return not late and 0 <= then.last - start.first <= RESCUE_DAYS * DAY_MIN


def begun(taken: Container) -> frozenset[State]:
    """In which of the states that start a clock a part was by the moment on which it was taken
    (`as_taken`); that a part was taken then begins nothing of it."""
    states = {turn.state for turn in taken.turns}
    return frozenset(one for one in (State.OPEN, State.THAWED) if one in states)


def carries_state(batch: Batch, part: Container) -> State:
    """In which state its food goes on elsewhere: out of a closed jar it is open food."""
    if part.state is not State.SEALED:
        return part.state
    return State.OPEN if _lets_in(batch, part) else State.SEALED


def _lets_in(batch: Batch, part: Container) -> bool:
    # A cordial is no candied fruit: once it is open it is for the refrigerator.
    wet = batch.method is Method.SUGAR and batch.food.group is Group.DRINK
    return part.vessel is Vessel.CLOSED and (wet or batch.method not in AS_IT_WAS)


def filled(of: Batch) -> str:
    """The size of the vessel in which what goes on out of `of` was processed, "" where no process
    sealed it: a process belongs to the jar that was processed, a maker's to his tin, whatever it is
    filled into since."""
    bought = of.method is Method.BOUGHT and re.search(SHELF_READY, of.processed.casefold())
    return of.processed if bought or of.method in LIDDED else ""


def carried_on(new: Container, part_of: Batch, part: Container) -> Container:
    """The part as if it had never left: up to the moment on which it was taken its own life, from
    then on that of what holds it now."""
    birth = new.turns[0]
    before = _until(part, birth)
    opened = State.OPEN if _lets_in(part_of, part) or birth.state is State.OPEN else None
    taken = Turn(birth.when, birth.event, birth.place, opened)
    turns = parted((*before, taken, *new.turns[1:]), birth.when, new.first)
    states = [turn.state for turn in turns if turn.state is not None]
    here = State.GONE if new.fate else states[-1]
    return replace(
        _looked(new, part, part_of), turns=turns, state=here, place=new.place, fate=new.fate,
        left=new.first, first=new.first,
    )  # fmt: skip


def as_taken(new: Container, part_of: Batch, part: Container) -> Container:
    """The part as it was at the moment on which it was taken."""
    birth = new.turns[0]
    turns = _until(part, birth)
    states = [turn.state for turn in turns if turn.state is not None]
    return replace(
        _looked(new, part, part_of), turns=turns, state=states[-1], fate="", left=part.first
    )


def taken_out(batch: Batch, part_of: Batch, taken: Container, then: When) -> Container:
    """A part as it was taken, once it is out of its jar or its freezer: that begins its days. Until
    it is dry, salted or sealed it is taken to stand in a refrigerator; freeze-drying thaws nothing.
    """
    if taken.state is not State.SEALED or batch.method is Method.FREEZE_DRIED:
        return taken
    frozen = part_of.method is Method.FROZEN
    if not (frozen or _lets_in(part_of, taken)):
        return taken
    state = State.THAWED if frozen else State.OPEN
    turn = Turn(then, "", _CHILLED.id, state, "done" if frozen else "")
    return replace(taken, turns=(*taken.turns, turn), state=state, place=_CHILLED.id)


def with_chilled(places: Mapping[str, Place]) -> Mapping[str, Place]:
    """The places, and the one in which what `taken_out` gives stands."""
    return {**places, _CHILLED.id: _CHILLED}


def _looked(new: Container, part: Container, part_of: Batch) -> Container:
    """The part, with a look at what was made of it, unless it was suspected after that."""
    if part.looked is not None or new.looked_at < part_of.suspect_from:
        return part
    return replace(part, looked=new.looked, looked_at=new.looked_at)


def _until(part: Container, birth: Turn) -> tuple[Turn, ...]:
    """What happened to it before it was taken; the taking itself is no draw that opens it."""
    first, *later = part.turns
    then = birth.when.last
    return first, *(t for t in later if t.event != birth.event and t.when.first <= then)


def known_then(places: Mapping[str, Place], then: When) -> dict[str, Place]:
    """The places with what had happened there by a moment, whenever it was found out."""

    def by(fact: Held | Read | Cut) -> bool:
        return (fact.start if isinstance(fact, Cut) else fact.when).first <= then.last

    known = {id_: replace(one, facts=tuple(filter(by, one.facts))) for id_, one in places.items()}
    return {
        id_: replace(one, facts=(*one.facts, *_reaching_back(one, places[id_].facts, then)))
        for id_, one in known.items()
    }


def _reaching_back(then_known: Place, facts: Sequence[Fact], then: When) -> Iterator[Read]:
    """What a later reading shows of that moment: it was too warm before it was read, for as long
    as was said, or since nobody knows and no cold reading lies between. Whether it is too warm
    goes by what the place was at that moment, whatever it was made since."""
    later = [fact for fact in facts if isinstance(fact, Read) and fact.when.first > then.last]
    if not later:
        return
    known = weather(then_known.id, {then_known.id: then_known}, then)
    climates = {one.climate for one in known if one.end >= then.first}
    read_cold = False
    for fact in later:
        if not any(too_warm(climate, fact.temp_f) for climate in climates):
            read_cold = True
        elif fact.since is not None:
            if (before := then.last - (fact.when.first - fact.since)) > 0:
                yield fact._replace(when=then, since=before)
        elif not read_cold:
            yield fact._replace(when=then)
