"""What stands against a batch apart from its figures: its process, its lids, its record."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import timedelta

from pantry_tui.core import dates
from pantry_tui.core.canned import LIDDED, PROCESSED
from pantry_tui.core.keeping.cases import sayings
from pantry_tui.core.keeping.exposure import Span
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.keeping.weather import FOREVER, OfFacts, around, moment_of
from pantry_tui.core.model import (
    DAY_MIN,
    EVER,
    Batch,
    Container,
    Cut,
    Held,
    Place,
    Read,
    Seen,
    When,
)
from pantry_tui.core.safety.acid import NOT_CHECKED as NO_ACID_SAID
from pantry_tui.core.safety.acid import acid_unsaid
from pantry_tui.core.safety.jars import of_one_jar
from pantry_tui.core.safety.measured import read_ph
from pantry_tui.core.safety.metric_jars import LITRE, is_litre, low_acid
from pantry_tui.core.safety.note_before import QUOTES
from pantry_tui.core.safety.note_sour import not_sour_enough
from pantry_tui.core.safety.prepared import CROPS, hurts_cut, is_cut, is_large
from pantry_tui.core.safety.record import NEEDED, known
from pantry_tui.core.safety.record import NOT_CHECKED as NO_PROCESS
from pantry_tui.core.safety.record import not_checked as unchecked
from pantry_tui.core.safety.salt import read_brine
from pantry_tui.core.safety.smoke import SALT_NOT_CHECKED, salt_unsaid
from pantry_tui.core.safety.strength import too_weak_a_pickle
from pantry_tui.core.safety.values import is_tested
from pantry_tui.core.words import ASSUMED_F, SEVERITY, Acidity, Climate, Method, State, Verdict

#: Within so many days a jar of doubtful process may still be refrigerated, frozen or processed
#: again (USDA AIB 539, as the extension services repeat it: 24 hours, here by the minute).
RESCUE_DAYS = 1

#: Under a lid, and safe there by nothing but acid.
_BY_ACID = LIDDED - {Method.PRESSURE}
_OURS = frozenset({"", "me", "us", "ours", "own", "myself", "home", "household"})
CUT_OFF = (
    "A part of one was cut off: a crop that is cut is chilled within two hours, and nothing is "
    "published for how long it keeps then."
)
UNKNOWN_ORIGIN = (
    "Low-acid food that somebody else canned, and nobody knows how: it is not offered. Ask how it "
    "was processed and record it, or discard it unopened."
)
UNKNOWN_ACID = (
    "Food that is safe by acid put into it, canned by somebody else, and nobody knows whether it "
    "was: it is not offered. Ask, and record it with acid=lemon or vinegar=5%, or discard it "
    "unopened."
)

OWN_WORD = (
    "No publication names it, and that it is acid is your own word: no process can be checked, so "
    "it is not offered. Within a day of making it, freeze it; else discard it unopened."
)

#: Unprocessed pickles keep in the refrigerator (USDA AIB 539, guide 6).
PICKLE_NOT_CHECKED = (
    "Not said that the jars were processed: not checked. Unprocessed they are for the refrigerator."
)


#: How a sentence of `Batch.doubt` ends that leaves nothing open (core.safety.kept_notes).
_OVER = ((": discard.", Verdict.DISCARD), (": do not taste it.", Verdict.DO_NOT_TASTE))
#: Vegetables that work under a brine, of which only its strength is said.
_FERMENTS = frozenset({Method.LACTIC, Method.PASTE})
BRINE_NOT_CHECKED = (
    "Salt is said of the brine alone: how much of it covers the food is not, so its share of all "
    "together is not checked. Weigh both and record it (salt=2.5%), or its pH (ph=3.9)."
)


def _salt_of_brine_alone(batch: Batch) -> bool:
    said = dict(batch.process)
    return read_brine(said.get("salt", "")) is not None and read_ph(said.get("ph", "")) is None


def by_others(batch: Batch) -> bool:
    """Whether somebody else made it (`by=` in its process record)."""
    return any(key == "by" and value.casefold() not in _OURS for key, value in batch.process)


def not_checked(batch: Batch, spans: Sequence[Span] = ()) -> tuple[str, ...]:
    """The standing reasons of a canned batch whose process could not be checked, or not whole; of
    a pickle in vinegar only where it stands out of the cold; of cold-smoked fish its salt."""
    if batch.doubt:
        return ()
    if salt_unsaid(batch):
        return (SALT_NOT_CHECKED,)
    if batch.method in _FERMENTS and _salt_of_brine_alone(batch):
        return (BRINE_NOT_CHECKED,)
    if batch.method is Method.VINEGAR_PICKLE:
        shelved = any(not span.climate.is_cold for span in spans)
        told = known(batch.process) & {"minutes", "process"}
        if shelved and not told:
            return (PICKLE_NOT_CHECKED,)
        # Said to have been processed, and not for how long; a tested recipe has its time.
        way = dict(batch.process).get("process", "")
        untimed = told == {"process"} and not is_tested(way)
        return (NO_PROCESS,) if shelved and untimed else ()
    litre = low_acid(batch.method, batch.food) and is_litre(
        of_one_jar(dict(batch.process), batch.processed)
    )
    said = unchecked(batch.method, batch.process)
    acid = (NO_ACID_SAID,) if acid_unsaid(batch) else ()
    return (*said, *acid, *((LITRE,) if litre else ()))


def noted(batch: Batch) -> str:
    """What its note says that nobody knows until it was looked at, "" mostly; loaded where there is
    a note."""
    if not batch.note:
        return ""
    from pantry_tui.core.safety.note_look import to_look_at

    return to_look_at(batch)


#: Beside a note of which no word is held against the food: it speaks for nothing either.
NOTE_STANDS = (
    "The note is kept as written and changes no date: what decides how long it keeps goes into "
    "the record"
)


def of_a_silent_note(batch: Batch) -> str:
    """What is said beside a note that is held against nothing, a sentence; "" where there is no
    note, or what it says is told already."""
    sour = batch.method is Method.LACTIC and not_sour_enough(batch.note)
    if not batch.note or sour or noted(batch) or any(QUOTES in one for one in batch.doubt):
        return ""
    from pantry_tui.core.keeping.as_noted import told_beside
    from pantry_tui.core.keeping.packs import LOW_SUGAR, packed

    if told_beside(batch) or LOW_SUGAR in packed(batch.food, batch, opened=False).classes:
        return ""
    return f"{NOTE_STANDS}, `correct {batch.code}`." if batch.code else f"{NOTE_STANDS}."


def over_at_once(why: Sequence[str]) -> Verdict | None:
    """What food is from the first day of which a doubt leaves nothing open, None where all of them
    leave a day."""
    ends = [verdict for one in why for end, verdict in _OVER if one.endswith(end)]
    return min(ends, key=SEVERITY.index, default=None)


def unknown_origin(batch: Batch) -> str:
    """Why a jar is not offered, or "": it is safe by acid of which there is only the household's
    word; or somebody else made it, and nobody knows the time or the pressure of a low-acid one, or
    whether acid was put into one that is safe by it. Half a record cannot be checked."""
    if batch.doubt:  # and the cold saved it, or this is not asked
        from pantry_tui.core.safety.made_of import not_by_cold

        if why := not_by_cold(batch.method, batch.doubt):
            return why
    acid_told = batch.food.told and batch.food.acidity is not Acidity.LOW_ACID
    if acid_told and batch.method in _BY_ACID:
        return OWN_WORD
    if batch.method not in PROCESSED or not by_others(batch):
        return ""
    if not batch.food.is_acid:
        unknown = set(NEEDED[batch.method]) - known(batch.process)
        return UNKNOWN_ORIGIN if unknown else ""
    return UNKNOWN_ACID if acid_unsaid(batch) else ""


def unsealed(batch: Batch, container: Container, asked: Sequence[str] = ()) -> bool:
    """Whether its lid never sealed (found within a day of making it), or the cold alone keeps it,
    which saved it from a doubtful process. `asked`: all that is doubted is of
    which one a note speaks (core.keeping.asked)."""
    seen = any(map(found_unsealed, container.signs))
    return (bool(batch.doubt) and not asked) or (batch.method in LIDDED and seen)


def found_unsealed(seen: Seen) -> bool:
    """Whether its lid was found not to have held within a day of canning."""
    return seen.sign.casefold().startswith("unsealed within")


def rescued(batch: Batch, spans: Sequence[Span], book: Rulebook) -> tuple[Span, ...] | None:
    """Its spans, oldest first, if it went into the cold within a day and stayed in it, from then on
    as an opened jar; None where it did not, or nothing could save it, or nobody knows when it was
    made. Cold saves a jar of which the time or the pressure is in doubt: what has too little acid
    or salt has it in the cold too."""
    cold = [span for span in spans if span.climate.is_cold]
    if batch.made is None or batch.method not in LIDDED or not cold:
        return None
    if too_weak_a_pickle(batch) or not _may_be_saved(batch, book):
        return None
    since = cold[0].start
    out_again = any(span.end > since for span in spans if not span.climate.is_cold)
    late = since - spans[0].start > RESCUE_DAYS * DAY_MIN
    if out_again or late or cold[0].day > batch.made + timedelta(days=RESCUE_DAYS):
        return None
    found = []
    for span in spans:
        if span.climate.is_cold:
            day = batch.made if span.start == since else span.day
            found.append(span._replace(opened=True, day=day))
        elif span.opened or span.in_progress:
            found.append(span)
    return tuple(found)


def _may_be_saved(batch: Batch, book: Rulebook) -> bool:
    """Food that can hurt is saved by the cold only where figures for its sealed jars are
    published: what nobody cans has no process that could have gone wrong."""
    said = sayings(batch.food, batch.method, book)
    shelf = said.of(State.SEALED, Climate.PANTRY, ASSUMED_F[Climate.PANTRY])
    return shelf.covered or not can_hurt(batch)


def still_to_come(container: Container, places: Mapping[str, Place], now: When) -> tuple[str, ...]:
    """What was booked for a moment after now: it counts as now, until its day is put right."""
    found = [turn.when for turn in container.turns]
    for place in around(container.place, places):
        found += map(moment_of, place.facts)
    ahead = min((one for one in found if one.first > now.last), default=None)
    if ahead is None:
        return ()
    said, counts = dates.say(ahead.day), "as today. Put its day right."
    if ahead.day == now.day:
        hour, minute = divmod((ahead.first + ahead.zone) % DAY_MIN, 60)
        said, counts = f"{said} at {hour:02d}:{minute:02d}", "as now. Put its hour right."
    return (f"Something is booked for {said}, which is still to come: it counts {counts}",)


def was_ahead(
    batch: Batch,
    container: Container,
    spans: Sequence[Span],
    places: Mapping[str, Place],
    now: When,
) -> tuple[str, ...]:
    """What of it, or of a place where it stood, was booked by a clock that was ahead. Of a place
    that shows by a moment that nobody knows to the day."""
    found = sorted(batch.ahead_of(container.id), key=lambda one: one.said)
    said = [f"by a clock that was ahead (it said {dates.say(one.said)})" for one in found[:1]]
    stood = dict.fromkeys(span.place for span in spans)
    said += [
        f"of {place.name} by a clock that was ahead"
        for name in stood
        for place in around(name, places)
        if _ANY_VAGUE.of([place], now)
    ]
    if not said:
        return ()
    since = min((one.since for one in found if one.since is not None), default=None)
    until = max((one.until for one in found), default=None)
    between = f", between {dates.say(since)} and {dates.say(until)}" if since and until else ""
    if since == until and since is not None:
        between = f" on {dates.say(since)}"
    put_up = any(one.event == container.turns[0].event for one in found)
    do = "Put right the day on which it was made" if put_up else "Take it back and book it again"
    return (
        f"Something was booked {' and '.join(dict.fromkeys(said))}: it counts as of the strictest "
        f"moment at which it may have been{between}. {do}{'' if put_up else ' with its day'}.",
    )


def _vague(fact: Held | Read | Cut) -> bool:
    """Whether its moment is no one day, an hour longer where clocks were changed."""
    when = moment_of(fact)
    return when != EVER and when.last - when.first > DAY_MIN + 120


_ANY_VAGUE = OfFacts(lambda facts, _: any(map(_vague, facts[0])))


def cut_off(batch: Batch, container: Container) -> bool:
    """Whether a part of one raw crop was drawn, so that what is left of it is no whole one. Of a
    weight nobody knows whether it was taken in whole ones, but for what is large and stands in no
    sack or crate."""
    left = container.left
    if left is None or not _whole_crop(batch):
        return False
    if left.unit:
        return container.begun and is_large(batch.food) and not batch.size
    return left.number.denominator != 1


def taken_whole(batch: Batch, container: Container) -> bool:
    """Whether it is counted in raw crops (heads, squash), of which a part does not keep."""
    left = container.left
    return left is not None and not left.unit and _whole_crop(batch)


def _whole_crop(batch: Batch) -> bool:
    raw = batch.method in (Method.CELLAR, Method.FRESH, Method.BOUGHT)
    return raw and batch.food.group in CROPS and not is_cut(batch)


def cut_hurts(batch: Batch, spans: Sequence[Span]) -> bool:
    """Whether what was cut can hurt: out of the cold any crop, and what lets germs grow there
    too."""
    warm = any(span.end >= FOREVER and not span.climate.is_cold for span in spans)
    return warm or hurts_cut(batch.food)
