"""Fold a batch out of the log. Pure: the same events always give the same batch.

A batch with its containers, a place (fold_place.py) and the household (home.py) are each folded
from the events that touch them alone, so that one act reads one batch; whole.py folds all.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Sequence
from datetime import date, datetime
from fractions import Fraction

from pantry_tui.core.amounts import Amount
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.packs import came_as
from pantry_tui.core.keeping.thawing import Draw, weighed
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.ahead import Clocks
from pantry_tui.core.log.events import Event
from pantry_tui.core.log.in_turn import follows, opening, ordered, stands
from pantry_tui.core.log.moments import some_time, when
from pantry_tui.core.log.returned import found_at, seen_on, seen_on_found
from pantry_tui.core.log.timing import Process
from pantry_tui.core.model import Batch, Container, Rated, Seen, Turn, When
from pantry_tui.core.vessels import Vessel, contents_of, laid_eggs, vessel_of
from pantry_tui.core.words import State, Verdict

#: Less than this of its unit is no rest: the container is empty. Our own choice.
EMPTY = Fraction(1, 100)

#: What a container holds where nobody said how much that is: itself.
ONE = Amount(Fraction(1))


def _ph(process: Sequence[tuple[str, str]]) -> str:
    return dict(process).get("ph", "")


def fold_batch(id_: str, events: Sequence[Event]) -> tuple[Batch, list[Container]] | None:
    """A batch and its containers from the standing events that touch it, in recorded order; None
    when nothing of it stands (its put-up was taken back).

    Other batches that an event also touches are left alone. Raises LookupError, ValueError or
    TypeError for a log that makes no sense.
    """
    building: _Batch | None = None
    for event in events:
        if isinstance(event.payload, said.PutUp) and event.payload.batch == id_:
            building = _Batch(event, event.payload, Clocks(events))
    if building is None:
        return None
    for event in events:
        building.take(event)
    return building.done()


class _Batch:
    """A batch under construction."""

    def __init__(self, event: Event, payload: said.PutUp, clocks: Clocks) -> None:
        self.id = payload.batch
        self.clocks = clocks
        self.batch = Batch(
            payload.batch,
            payload.code,
            payload.food,
            payload.method,
            self.clocks.made(payload.made, event),
            payload.size,
            payload.process,
            payload.note,
            payload.printed,
            payload.doubt,
            payload.possible,
            parts=tuple(part.container for part in payload.parts),
            booked=self.clocks.day(event),
            carried=payload.carried,
            ph_day=self.clocks.soonest(event) if _ph(payload.process) else None,
        )
        self.amount = payload.amount
        self.event, self.state = event, payload.state
        self.process = Process(clocks)
        self.put_right: datetime | None = None  # when its day made was, by the clock of that hour
        self.first: dict[str, tuple[Event, State, str]] = {}
        self.containers: dict[str, Container] = {}
        self.turns: dict[str, list[Turn]] = defaultdict(list)
        self.drawn: dict[str, list[Turn]] = defaultdict(list)  # each draw of a shut vessel opens
        self.draws: dict[str, list[Draw]] = defaultdict(list)
        self.left: dict[str, When] = {}
        self.came: dict[tuple[str, State, str], Turn] = {}
        for id_ in payload.containers:
            self._new(id_, event, payload.state, payload.place)

    def _new(self, id_: str, event: Event, state: State, place: str) -> None:
        self.first[id_] = (event, state, place)
        number = len(self.containers) + 1
        held, vessel = self._held()
        told = self.amount is not None
        self.containers[id_] = Container(
            id_, self.id, number, state, place, (), held, held, vessel=vessel, told=told
        )

    def _held(self) -> tuple[Amount, Vessel]:
        """What one container of it holds at first, and what it stands in."""
        held = self.amount or contents_of(self.batch.size) or ONE
        mine = self.batch
        whole = laid_eggs(mine.food.name, mine.food.classes)
        return held, vessel_of(mine.method, mine.size, held.unit, whole=whole)

    def take(self, event: Event) -> None:
        """One event; what it says of other batches is passed over."""
        payload = event.payload
        if (ahead := self.clocks.ahead(event)) is not None:
            self.batch = replace(self.batch, ahead=(*self.batch.ahead, ahead))
        match payload:
            case said.Ready() | said.Open() | said.Thaw() | said.Move():
                self._turn(event, payload)
            case said.Use() | said.Discard() | said.Give() | said.Missing():
                for id_ in payload.containers:
                    self._leave(id_, event, said.FATE_OF[type(payload)], payload.amount)
            case said.PutUp():
                mine = [one for one in payload.parts if said.batch_of(one.container) == self.id]
                for part in mine:
                    if part.place:  # opened, and carried there with what is left in it
                        then = self.clocks.when(event)
                        turn = Turn(then, event.id, part.place, State.OPEN)
                        self._add(part.container, event, turn)
                    self._leave(part.container, event, said.Fate.REPACKED, part.amount)
                if mine:
                    into = dict.fromkeys((*self.batch.into, payload.batch))
                    self.batch = replace(self.batch, into=tuple(into))
            case said.Sign():
                self._sign(event, payload)
            case said.Outage():
                for mark in payload.marks:
                    self._seen(mark.container, event, mark.words, mark.verdict)
            case said.Count():
                self._count(event, payload)
            case said.Correct():
                self._correct(event, payload)
            case said.Relabelled() if payload.batch == self.id:
                self.batch = replace(self.batch, code=payload.code)
            case said.Rated():
                one = Rated(self.clocks.day(event), payload.rating, payload.note)
                self.batch = replace(self.batch, rated=(*self.batch.rated, one))
            case said.Timer():
                self.process.take(event, payload)
            case said.Tended():
                done, day = dict(self.batch.tended), self.clocks.soonest(event)
                done[payload.job] = max(day, done.get(payload.job, day))
                self.batch = replace(self.batch, tended=tuple(sorted(done.items())))
            case said.Reserved():
                for id_ in payload.containers:
                    self._change(id_, reserved=payload.kept_for)
        self.process.saw(event)

    def _change(self, id_: str, **fields: object) -> None:
        old = self.containers.get(id_)
        if old is not None:
            self.containers[id_] = replace(old, **fields)  # type: ignore[arg-type]

    def _turn(self, event: Event, payload: said.Ready | said.Open | said.Thaw | said.Move) -> None:
        place = getattr(payload, "place", "") or None
        state = said.state_after(payload)
        how = payload.how if isinstance(payload, said.Thaw) else ""
        if isinstance(payload, said.Move) and state is State.THAWED:
            how = "done"  # it was not said to thaw there, so it counts as thawed
        for id_ in payload.containers:
            self._add(id_, event, Turn(self.clocks.when(event), event.id, place, state, how))
            if state in (State.OPEN, State.THAWED):
                self._change(id_, reserved="")  # what was begun is no gift any more

    def _add(self, id_: str, event: Event, turn: Turn) -> None:
        before = self.turns[id_]
        before.append(turn if event.at is not None else follows(before, turn))

    def _leave(self, id_: str, event: Event, fate: said.Fate, amount: Amount | None) -> None:
        old = self.containers.get(id_)
        if old is None or old.fate:
            return
        if amount is not None and old.left is not None and amount.unit == old.left.unit:
            left = Amount(old.left.number - amount.number, old.left.unit)
            if left.number >= EMPTY:
                self.containers[id_] = replace(old, left=left)
                self.draws[id_].append(Draw(when(event), amount))
                if old.vessel is Vessel.CLOSED:
                    self._open(id_, event)
                return
        # What was in it when it went stays known: a count may find it again.
        self.containers[id_] = replace(old, fate=fate.value, ended=self.clocks.day(event))
        self.left[id_] = self.clocks.when(event)

    def _open(self, id_: str, event: Event) -> None:
        """The first draw opens it; what is in progress goes on being so."""
        mine = [one.state for one in self.turns[id_] if one.state is not None]
        if (mine[-1] if mine else self.first[id_][1]) is not State.IN_PROGRESS:
            turn = Turn(self.clocks.when(event), event.id, None, State.OPEN)
            known = event.at is not None
            self.drawn[id_].append(turn if known else follows(self.turns[id_], turn))
            self._change(id_, reserved="")

    def _seen(self, id_: str, event: Event, words: str, verdict: Verdict) -> None:
        old = self.containers.get(id_)
        if old is not None:
            seen = Seen(self.clocks.day(event), words, verdict, self.clocks.when(event).last)
            self.containers[id_] = replace(old, signs=(*old.signs, seen))

    def _sign(self, event: Event, payload: said.Sign) -> None:
        then = self.clocks.when(event)
        for id_ in payload.containers:
            if payload.sign != "looked":
                self._seen(id_, event, payload.words, payload.verdict)
            elif then.first >= self.batch.suspect_from:
                # A look that may have come before a sign was seen says nothing of it.
                self._change(id_, looked=self.clocks.day(event), looked_at=then.first)
        if payload.suspect:
            # All of a batch is to be looked at, also what was looked at before, or may have been.
            since = max(self.batch.suspect_from, then.last)
            self.batch = replace(self.batch, suspect=payload.suspect, suspect_from=since)
            for id_, old in list(self.containers.items()):
                if old.looked_at <= since:
                    self._change(id_, looked=None)

    def _count(self, event: Event, payload: said.Count) -> None:
        for gone in payload.gone:
            if said.batch_of(gone.container) == self.id:
                self._leave(gone.container, event, gone.fate, gone.amount)
        for back in payload.back:
            if said.batch_of(back.container) == self.id:
                self._back(event, back)
        for found in payload.new:
            if found.batch == self.id:
                # Nothing is known of it but its batch: it stood there so since that was put up.
                state = self.state if self.batch.carried else found.state
                others = seen_on_found(self.batch, self.containers.values())
                for at, id_ in enumerate(found.containers):
                    self._new(id_, self.event, state, found.place)
                    if at < len(others):
                        self._seen(id_, event, others[at], Verdict.UNKNOWN)

    def _back(self, event: Event, back: said.Back) -> None:
        old, now = self.containers.get(back.container), self.clocks.when(event)
        if old is None:
            return
        self._change(old.id, fate="", ended=None)
        then = found_at(self.left.pop(old.id, None), now)
        self.turns[old.id].append(Turn(then, event.id, back.place))
        if seen := seen_on(self.batch, old.fate):
            self._seen(old.id, event, seen, Verdict.UNKNOWN)

    def _retimed(self, process: Sequence[tuple[str, str]]) -> bool:
        return dict(process).get("minutes") != dict(self.batch.process).get("minutes")

    def _correct(self, event: Event, payload: said.Correct) -> None:
        fields = {
            name: value for name in _CORRECTED if (value := getattr(payload, name)) is not None
        }
        if payload.doubt is not None and all(getattr(payload, one) is None for one in _JUDGED):
            # A note, a day, a printed date lift nothing that stands against it.
            new = [one for one in payload.doubt if one not in self.batch.doubt]
            fields["doubt"] = (*self.batch.doubt, *new)
            fields["possible"] = payload.possible or self.batch.possible
        if payload.process is not None and (payload.timed or self._retimed(payload.process)):
            self.process.recorded(event, dict(payload.process))
        if payload.note is not None:
            fields["noted"] = self.clocks.when(event).last
        if payload.unknown_day:
            fields["made"] = None
        if payload.made is not None:
            fields["made"] = self._made(payload.made, event)
        acidity = _ph(payload.process or ())
        if acidity and (payload.measured or acidity != _ph(self.batch.process)):
            fields["ph_day"] = self.clocks.soonest(event)
        self.batch = replace(self.batch, **fields)
        if payload.size is not None or payload.method is not None:
            held, vessel = self._held()
            for id_, one in self.containers.items():
                now = {"left": one.of_new_size(held), "first": held} if payload.size else {}
                self._change(id_, vessel=vessel, **now)
                if one.begun and vessel is Vessel.CLOSED:
                    self._open(id_, event)  # what was drawn from is no shut jar

    def _made(self, told: date, event: Event) -> date | None:
        """The day made as it is put right. By the moment of writing the one before may be the later
        word, where a clock was wrong: then the earlier day counts."""
        written = datetime.fromisoformat(event.recorded)
        day: date | None = min(told, written.date())  # nobody knows of a day that is to come
        if event.id in self.clocks.within:
            return self.clocks.made(day, event)
        if self.put_right is not None and written < self.put_right:
            was = self.batch.made
            return None if was is None or day is None else min(was, day)
        self.put_right = written
        others = tuple(one for one in self.batch.ahead if one.event != self.event.id)
        self.batch = replace(self.batch, ahead=others)
        return day

    def done(self) -> tuple[Batch, list[Container]]:
        """The batch, and its containers with their turns in the order of their moments."""
        return self.process.done(self.batch), [self._container(id_) for id_ in self.containers]

    def _container(self, id_: str) -> Container:
        one = self.containers[id_]
        event, state, place = self.first[id_]
        state = came_as(state, self.batch)
        first = self._came(event, state, place)
        turns: tuple[Turn, ...] = (first,)
        if id_ in self.turns or id_ in self.drawn:
            later = ordered([*self.turns[id_], *opening(self.drawn[id_], self.turns[id_])])
            turns = weighed((first, *later), self.batch.size, one.first, self.draws[id_])
            state = _state_now(turns, {turn.event for turn in self.drawn[id_]})
            place = stands([first, *self.turns[id_]])
        return replace(one, state=State.GONE if one.fate else state, place=place, turns=turns)

    def _came(self, event: Event, state: State, place: str) -> Turn:
        """How those that came together came into the store."""
        key = event.id, state, place
        if key not in self.came:
            made, began = self.batch.made, when(event)
            if self.put_right is None and event.id in self.clocks.within:
                began = self.clocks.began(event, None if self.batch.carried else made)
            elif made is not None and made != began.day and not self.batch.carried:
                began = some_time(made, datetime.fromisoformat(event.recorded), event.day)
            self.came[key] = Turn(began, event.id, place, state)
        return self.came[key]


def _state_now(turns: Sequence[Turn], draws: Collection[str]) -> State:
    """What it is called after these turns. The rest of a pack that was thawed and drawn from is
    thawed still, since that is what tells how long it keeps."""
    said = [turn for turn in reversed(turns) if turn.state is not None]
    state = said[0].state
    assert state is not None
    drawn = state is State.OPEN and said[0].event in draws
    before = next((turn.state for turn in said if turn.event not in draws), state)
    return State.THAWED if drawn and before is State.THAWED else state


#: What a correction may say anew.
_CORRECTED = (
    "made", "size", "note", "process", "doubt", "possible", "printed", "food", "method"
)  # fmt: skip
#: What of it a process is judged by.
_JUDGED = ("size", "process", "food", "method")
