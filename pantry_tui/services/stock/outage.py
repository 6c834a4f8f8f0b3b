"""A power cut: a fact of a place over time, judged by the one judge, item by item, before it is
booked. It strikes whatever stood there then, also what was moved out since."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, time, timedelta, timezone

from pantry_tui.core import dates
from pantry_tui.core.keeping.doubt import unsealed
from pantry_tui.core.keeping.exposure import exposures
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.limits import as_packed
from pantry_tui.core.keeping.outcome import Outcome, after_cuts
from pantry_tui.core.keeping.power import Struck, struck
from pantry_tui.core.keeping.reckoning import Reckoning
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.moments import moment
from pantry_tui.core.model import DAY_MIN, EVER, Container, Cut, Held, Place, Read
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.safety.outage import STRICTNESS, Action, Triage, after_cut
from pantry_tui.core.safety.outage import Cut as Known
from pantry_tui.core.text import counted
from pantry_tui.core.words import SEVERITY, State, Verdict
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.outage import load_outage
from pantry_tui.services.clock import local_times
from pantry_tui.services.judging import Judge
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done, OutageRow
from pantry_tui.services.stock.condemned import disposal as disposal
from pantry_tui.services.stock.condemned import thrown_how, why_of
from pantry_tui.services.stock.cut_hours import as_booked, iso, said_as
from pantry_tui.services.stock.cut_places import was_cold
from pantry_tui.services.stock.elsewhere import ASK, elsewhere
from pantry_tui.services.stock.lines import inside
from pantry_tui.services.stock.pick import name_of

#: What a place with its door ajar is taken to be where nobody read it: as warm as the room.
_AJAR_F = 70.0


def now_of(p: Pantry) -> datetime:
    """This minute on the household's clock; the last one of a day that was only named."""
    now = p.clock.now
    local = now.last + now.zone - p.today.toordinal() * DAY_MIN
    zone = timezone(timedelta(minutes=now.zone))
    return datetime.combine(p.today, time(), zone) + timedelta(minutes=local)


def cut_of(
    p: Pantry,
    place: Place,
    start: datetime | None,
    end: datetime,
    *,
    full: bool | None = None,
    max_temp_f: float | None = None,
    ice: bool | None = None,
    ajar: bool = False,
) -> Cut:
    """What is known of the cut, as a fact of its place. `start` None: nobody knows since when, so
    since it was last read cold. A load that nobody knows counts as half; a door that stood ajar
    promises no hours, and what nobody read was as warm as the room. Raises Refused, BadInput."""
    first = None if start is None else _began(start)
    last = _ended(p, end)
    end_at = moment(iso(last))
    start_at = EVER if first is None else moment(iso(first))
    if not was_cold(p, place, end_at.last if first is None else start_at.first, end_at.last):
        raise Refused(f"{place.name} is neither refrigerator nor freezer: a cut changes nothing.")
    if last > now_of(p):
        raise BadInput(f"{_say(last)} is still to come: give the time at which it was on again.")
    if ajar and max_temp_f is None:
        max_temp_f = _AJAR_F
    return Cut(start_at, end_at, False if ajar else full, max_temp_f, ice)


def lasting(p: Pantry, hours: float) -> tuple[datetime, datetime]:
    """A cut of so many hours that ended just now."""
    end = now_of(p)
    return end - timedelta(hours=hours), end


def _began(start: datetime) -> datetime:
    """The earliest moment that is meant."""
    return start if start.tzinfo is not None else local_times(start)[0]


def _ended(p: Pantry, end: datetime) -> datetime:
    """The latest moment that is meant, and no later than now where an earlier one is not."""
    if end.tzinfo is not None:
        return end
    first, last = local_times(end)
    return last if last <= now_of(p) else min(first, end.replace(tzinfo=_zone(p)))


def _zone(p: Pantry) -> timezone:
    return timezone(timedelta(minutes=p.clock.now.zone))


def _say(then: datetime) -> str:
    return f"{dates.say(then.date())} {then:%H:%M}"


def judge_all(p: Pantry, place: Place, cut: Cut) -> list[OutageRow]:
    """Every item that stood there then: what must go on top, then what to use first."""
    place = p.places.get(place.id, place)
    facts = tuple(sorted((*place.facts, cut), key=_order))
    return _rows(p, place, cut, p.ever, {**p.ever, place.id: replace(place, facts=facts)})


def judge_each(p: Pantry, cold: Sequence[Place], cut: Cut) -> list[tuple[Place, list[OutageRow]]]:
    """The same of each of these places; what one of them tells is no more asked about in
    another."""
    found = [(place, judge_all(p, place, cut)) for place in cold]
    told = {
        id_ for _, rows in found for row in rows if row.action != ASK for id_ in row.container_ids
    }
    return [
        (place, [row for row in rows if row.action != ASK or told.isdisjoint(row.container_ids)])
        for place, rows in found
    ]


def judged_before(p: Pantry, place: Place, cut: Cut) -> list[OutageRow]:
    """The same of a cut that is booked already."""
    facts = tuple(one for one in place.facts if one != cut)
    return _rows(p, place, cut, {**p.ever, place.id: replace(place, facts=facts)}, p.ever)


def _order(fact: Held | Read | Cut) -> tuple[int, int]:
    then = fact.start if isinstance(fact, Cut) else fact.when
    return then.first, then.last


class _Trial:
    """One container with and without the cut."""

    def __init__(
        self, p: Pantry, container: Container, cut: Cut, before: Judge, after: Judge
    ) -> None:
        self.container = container
        self.before, self.after = before.judge(container), after.judge(container)
        cuts = _outcomes(p, container, before)
        old = {one.said for one in cuts}
        new = [one for one in _outcomes(p, container, after) if one.said not in old]
        #: What it had to be discarded for when the power was on again, whatever the cut did.
        self.own: tuple[said.Reason, str] | None = None
        found = before.assess(container)
        if found.on(cut.end.day).verdict in UNFIT:
            batch = p.stock.batches[container.batch]
            self.own = why_of(batch, container, found, self.before, cuts)
        self.met = next((one for one in _struck(p, container, after) if _has(one, cut)), None)
        self.triage = max((one.triage for one in new), key=_strictness, default=None)
        if self.triage is None and self.met is not None:
            self.triage = _kept(p, container, self.met)
        if self.triage is None and self.after.verdict in UNFIT and self.before != self.after:
            # What it was filled from stood there.
            why = self.after.reasons[:1]
            self.triage = Triage(self.after.verdict, Action.DISCARD.value, why, 30, ())

    def ask_about(self, why: str | None) -> None:
        """What stood elsewhere then is not promised to keep: nobody said how it was there."""
        if why and not _goes(self) and (self.triage is None or self.triage.action == Action.KEEP):
            self.triage = Triage(Verdict.UNKNOWN, ASK, (why,), 25, ())


def _rows(
    p: Pantry,
    place: Place,
    cut: Cut,
    without: Mapping[str, Place],
    with_it: Mapping[str, Place],
) -> list[OutageRow]:
    within = inside(p, place.id, ever=True)
    before = Judge(p.judging, without)
    after = Judge(p.judging, with_it)
    groups: dict[tuple[object, ...], list[Container]] = defaultdict(list)
    for c in p.stock.containers.values():
        if c.here and within & has_stood(p, c):
            ahead = p.stock.batches[c.batch].ahead_of(c.id)
            groups[c.batch, c.place, c.state, c.lived, ahead].append(c)
    trials = [(_Trial(p, group[0], cut, before, after), group) for group in groups.values()]
    asked = elsewhere(p, place, cut, within)
    for one, group in trials:
        one.ask_about(asked.get(group[0].id))
    met = [(one, group) for one, group in trials if one.triage is not None]
    met.sort(key=lambda one: (_rank(one[0]), p.stock.batches[one[1][0].batch].code))
    return [_row(p, one, group) for one, group in met]


def has_stood(p: Pantry, container: Container) -> set[str | None]:
    """Where it stood, and where what it was filled from did."""
    found = {turn.place for turn in container.turns}
    for id_ in p.stock.batches[container.batch].parts:
        part = p.stock.containers.get(id_)
        if part is not None:
            found |= has_stood(p, part)
    return found


def _outcomes(p: Pantry, container: Container, judge: Judge) -> list[Outcome]:
    places, now = judge.places, p.clock.now
    batch = p.stock.batches[container.batch]
    spans = exposures(batch, container, places, now)
    reckoning = Reckoning(batch, spans, p.book_of_rules, now, unsealed(batch, container))
    return after_cuts(reckoning, places, now)


def _struck(p: Pantry, container: Container, judge: Judge) -> list[Struck]:
    now = p.clock.now
    batch = p.stock.batches[container.batch]
    return list(struck(exposures(batch, container, judge.places, now), judge.places, now))


def _has(one: Struck, cut: Cut) -> bool:
    """Whether the blackout holds this cut; its start may be the last cold reading by now."""
    return any(piece.cut.end == cut.end for piece in one.blackout.pieces)


def _kept(p: Pantry, container: Container, met: Struck) -> Triage:
    """What the table says of an item that the cut left as it was."""
    batch = p.stock.batches[container.batch]
    food = as_packed(batch, container.state is State.OPEN).food
    full = all(piece.cut.full is True for piece in met.blackout.pieces)
    seen = met.blackout.pieces[-1].cut
    known = Known(met.climate, met.minutes / 60, full, seen.max_temp_f, seen.ice)
    found = after_cut(food, batch.method, container.state, known, load_outage())
    if found.action == Action.KEEP:
        return found
    # It came late and stood there for less than its two hours: only the clock is charged.
    stayed = counted(met.stayed, "minutes")
    why = (
        f"It stood here without power for {stayed}, and only that counts here: "
        "where it stood before is judged by what is booked for that place.",
    )
    return replace(found, verdict=Verdict.SOUND, action=Action.KEEP.value, reasons=why, rank=20)


def _strictness(found: Triage) -> int:
    known = found.action in tuple(Action)
    return STRICTNESS.index(Action(found.action)) if known else 2


def _goes(one: _Trial) -> bool:
    return one.after.verdict in UNFIT


def _rank(one: _Trial) -> int:
    assert one.triage is not None
    return one.triage.rank % 10 - 10 if _goes(one) else one.triage.rank


def _row(p: Pantry, one: _Trial, group: Sequence[Container]) -> OutageRow:
    assert one.triage is not None
    batch = p.stock.batches[group[0].batch]
    unfit = _goes(one)
    # What must be discarded for another reason says that reason, and nothing of refreezing.
    judged = one.before if one.own is not None else one.after
    other = unfit and (one.own is not None or one.triage.action != Action.DISCARD)
    rules = judged.rules if other else one.triage.rules
    sources = (f"{p.tables.sources[r.source]} ({r.trust.shown})" for r in rules)
    own = (one.own if unfit else None) or (said.Reason.POWER_CUT, "")
    return OutageRow(
        code=batch.code,
        container_ids=tuple(name_of(p, c) for c in group),
        food=batch.food.name,
        place=p.where(group[0]),
        count=len(group),
        # The cut is not all that is known of it.
        verdict=min(one.after.verdict, one.triage.verdict, key=SEVERITY.index),
        action=Action.DISCARD.value if unfit else one.triage.action,
        reasons=judged.reasons[:1] if other else one.triage.reasons,
        sources=tuple(dict.fromkeys(sources)),
        reason=own[0],
        own=own[1],
        disposal=thrown_how(p, group[0], judged) if unfit else (),
    )


@booked
def book_all(p: Pantry, cold: Sequence[Place], cut: Cut, *, discard: bool = False) -> Done:
    """Book the cut in each of these places, and with `discard` what must go, in one transaction.
    What must go and is not discarded yet is said, the first of it with how that is done."""
    words = of_length(cut)
    found = judge_each(p, cold, cut)
    with p.together():
        for place, rows in found:
            p.book(as_booked(place, cut), day=cut.end.day)
            if discard:
                _discard(p, rows, words)
    goes = [row for _, rows in found for row in rows if row.verdict in UNFIT]
    told = ", and ".join(f"in {place.name}: {_sum(rows, discard)}" for place, rows in found)
    hurt = any(row.action != Action.KEEP for _, rows in found for row in rows)
    next_ = disposal(goes) if discard else _next(goes)
    return Done(f"Booked a {words} {told}.", (*next_, *((CAUTION,) if hurt else ())))


def book(p: Pantry, place: Place, cut: Cut, *, discard: bool = False) -> Done:
    """The same of one place."""
    return book_all(p, (place,), cut, discard=discard)


def _discard(p: Pantry, rows: Sequence[OutageRow], words: str) -> None:
    by_name = {name_of(p, c): c for c in p.stock.containers.values()}
    for row in rows:
        if row.verdict in UNFIT:
            taken = [by_name[name] for name in row.container_ids]
            ids = tuple(c.id for c in taken)
            p.book(said.Discard(taken[0].batch, ids, None, row.reason, row.own or words))


def _next(go: Sequence[OutageRow]) -> tuple[str, ...]:
    """What is to be done with what must go."""
    if not go:
        return ()
    first, n = go[0], sum(row.count for row in go)
    name = first.container_ids[0]
    which = "It is" if n == 1 else "The first of them is"
    how = f'`discard {name} --why "{first.own or first.reason}"`'
    return (f"{n} must go. {which} {name} {first.food} in {first.place}: {how}.", *disposal(go))


def of_length(cut: Cut) -> str:
    """ "power cut of 6 h", or since nobody knows when."""
    if cut.start == EVER:
        return "power cut since nobody knows when"
    return f"power cut of {round((cut.end.last - cut.start.first) / 60, 1):g} h"


def heading(place: Place, cut: Cut, rows: Sequence[OutageRow], *, ajar: bool = False) -> str:
    """ "fridge: power cut of 9 h. 2 must go.", and from when to when: what is to be done with the
    rest is in its rows."""
    go = sum(row.count for row in rows if row.verdict in UNFIT)
    told = f" {go} must go." if go else " Nothing must go." if rows else ""
    what = f"{of_length(cut)}{', its door ajar' if ajar else ''}"
    return f"{place.name}: {what}.{told} Read as {said_as(cut)}."


def _sum(rows: Sequence[OutageRow], discarded: bool) -> str:
    counts: dict[str, int] = defaultdict(int)
    for row in rows:
        gone = discarded and row.verdict in UNFIT
        counts["discarded" if gone else row.action] += row.count
    return ", ".join(f"{n} {action}" for action, n in counts.items()) or "nothing stood there"
