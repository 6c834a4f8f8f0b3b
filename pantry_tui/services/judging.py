"""Verdicts on what is in store, and on what might be: equal histories are assessed once."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from datetime import date
from typing import TYPE_CHECKING, Any, NamedTuple

from pantry_tui.core.batchwork.tending import Job, jobs_of, with_care
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping import bounds, descent
from pantry_tui.core.keeping.begins import refilled
from pantry_tui.core.keeping.exposure import as_if, exposures
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.keeping.ladder import Assessment, Judgement
from pantry_tui.core.keeping.limits import assess
from pantry_tui.core.keeping.ripens import Ripe, ripe_from
from pantry_tui.core.keeping.rules import Rulebook
from pantry_tui.core.keeping.weather import warmth_f
from pantry_tui.core.log.own import rule_of
from pantry_tui.core.log.payloads import batch_of
from pantry_tui.core.model import Batch, Container, Place, Turn, When
from pantry_tui.core.words import Method, State
from pantry_tui.reference.tending import load_tending
from pantry_tui.services import named_parts

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry


class Judging:
    """The judge of a household: its rules, its places, and what it has said already."""

    def __init__(self, p: Pantry) -> None:
        self._p = p
        self._book: Rulebook | None = None
        self.anew()

    def anew(self, *, rules: bool = False) -> None:
        """A place has changed, or with `rules` what every verdict rests on."""
        self.real = Judge(self)
        self._imagined: dict[str, Judge] = {}
        #: Batches that are followed by their notes just now, which may name each other.
        self.following: set[str] = set()
        #: What services.batchwork.tending has found, and which batches have changed since.
        self.tended: Any = None
        self.changed: set[str] = set()
        if rules:
            self._book = None

    @property
    def book(self) -> Rulebook:
        """Everything published, and what the household added."""
        if self._book is None:
            home = self._p.home
            own = tuple(rule_of(added, id_) for id_, added in home.rules)
            strict = home.advice == "strictest"
            self._book = self._p.tables.book
            if own or strict:
                self._book = replace(self._book, own=own, strict=strict)
        return self._book

    @property
    def p(self) -> Pantry:
        return self._p

    def imagining(self, name: str, places: Callable[[], Mapping[str, Place]]) -> Judge:
        """A judge of the same stock in places that are only thought of, kept under a name until a
        place or a rule changes."""
        if name not in self._imagined:
            self._imagined[name] = Judge(self, places())
        return self._imagined[name]

    def of(
        self,
        batch: Batch,
        container: Container,
        now: When,
        places: Mapping[str, Place] | None = None,
    ) -> Assessment:
        """Of a batch, container or places as they might be; nothing is kept."""
        where = self._p.ever if places is None else places
        found = self.unattended(batch, container, now, where)
        if found.on(now.day).verdict in UNFIT:
            return found  # nobody tends what has to be discarded
        return with_care(found, self.jobs(batch, container, now, where), now)

    def jobs(
        self, batch: Batch, container: Container, now: When, places: Mapping[str, Place]
    ) -> tuple[Job, ...]:
        """The small jobs that it needs from now on, where it stands now."""
        warmth = warmth_f(container.place, places)
        rows = load_tending().get(batch.method, ())
        ripe = self.ripe(batch, container, now, places)
        return jobs_of(batch, container, warmth, rows, now.day, ripe)

    def ripe(
        self, batch: Batch, container: Container, now: When, places: Mapping[str, Place]
    ) -> Ripe | None:
        """When it may be called ready; None of what is not in progress, or not by days."""
        if container.state is not State.IN_PROGRESS:
            return None
        spans = exposures(batch, container, places, now)
        return ripe_from(batch, spans, container.turns[0].when.zone, self.book, now.day)

    def unattended(
        self, batch: Batch, container: Container, now: When, where: Mapping[str, Place]
    ) -> Assessment:
        """The same without its small jobs: what was late of a part is not late of the whole."""
        found = self._bounds(batch, container, now, where)
        used = max((one.used for one in found), default=0)
        own = assess(batch, container, where, self.book, now, used)
        if batch.parts and descent.ends_nothing(batch, own):
            found = self._bounds(batch, container, now, where, ends_nothing=True)
        if batch.into:
            since = container.looked_at if container.looked else 0
            own = bounds.suspected(own, self._of_children(batch, frozenset(), since))
        if batch.note:
            own = named_parts.bounded_by_note(self, own, batch, container, where)
        if not batch.parts:
            return own
        return bounds.bounded(own, found, container.turns[0].when.day)

    def _bounds(
        self,
        batch: Batch,
        new: Container,
        now: When,
        places: Mapping[str, Place],
        *,
        ends_nothing: bool = False,
    ) -> list[bounds.Bound]:
        """What its parts allow."""
        return [
            one
            for id_ in batch.parts
            for one in self._bound(batch, new, id_, now, places, ends_nothing)
        ]

    def _bound(
        self,
        batch: Batch,
        new: Container,
        id_: str,
        now: When,
        places: Mapping[str, Place],
        ends_nothing: bool,
    ) -> Iterator[bounds.Bound]:
        """What one part allows; nothing where its put-up was taken back."""
        held = self._p.load(batch_of(id_))
        if held is None or id_ not in held[1]:
            return
        of, part = held[0], held[1][id_]
        name = f"{of.code}/{part.number}"
        begun = self._begun(new, of, part)
        if descent.goes_on(batch, of, begun) and not self._anew(batch, of, new, part):
            shadow = descent.carried_on(new, of, part)
            yield bounds.Bound(name, self.unattended(of, shadow, now, places), bounds.How.GOES_ON)
            return
        birth = new.turns[0].when
        then = birth._replace(first=birth.last)
        shadow, known = descent.as_taken(new, of, part), descent.known_then(places, then)
        taken = self.unattended(of, shadow, then, known)
        used = taken.warm_used if descent.as_it_was(batch, of, begun) else 0
        left = None
        kept = descent.held_back(batch, of, begun) or self._still_runs(batch, of, part)
        if kept and taken.discard_after is not None:
            left = (taken.discard_after - birth.day).days
        yield bounds.Bound(name, taken, used=used, left=left)
        if self._refilled(batch, of, part):
            again = self.unattended(of, descent.carried_on(new, of, part), now, places)
            yield bounds.Bound(name, again, bounds.How.REFILLED)
        if not (ends_nothing or self._runs_on(batch, of, new, part)):
            return
        if descent.moist(batch):
            running = self.unattended(of, descent.carried_on(new, of, part), now, places)
        else:
            out, where = descent.taken_out(batch, of, shadow, then), descent.with_chilled(known)
            running = replace(self.unattended(of, out, then, where), again_at=None)
        yield bounds.Bound(name, running, bounds.How.RUNS_ON)

    def _begun(self, new: Container, of: Batch, part: Container) -> frozenset[State]:
        """What was begun of a part by the time it was taken, or of what goes on in it."""
        found = descent.begun(descent.as_taken(new, of, part))
        for before, older in self._made_of(of):
            earlier = self._begun(part, before, older)
            if descent.goes_on(of, before, earlier):
                found |= earlier
        return found

    def _made_of(self, batch: Batch) -> Iterator[tuple[Batch, Container]]:
        """The parts of a batch, but for those whose put-up was taken back."""
        for id_ in batch.parts:
            held = self._p.load(batch_of(id_))
            if held is not None and id_ in held[1]:
                yield held[0], held[1][id_]

    def _still_runs(self, batch: Batch, of: Batch, part: Container) -> bool:
        """Whether what is frozen out of a part takes a limit along that ran on to the part itself:
        the freezer only stops it."""
        return batch.method is Method.FROZEN and any(
            self._runs_on(of, before, part, older) for before, older in self._made_of(of)
        )

    def _runs_on(self, batch: Batch, of: Batch, new: Container, part: Container) -> bool:
        """Whether its limit runs on, be it its own or one that ran on to it from what it was made
        of: a limit that one process does not end is not ended by two."""
        anew = self._anew(batch, of, new, part)
        if not anew and descent.runs_on(batch, of, self._begun(new, of, part)):
            return True
        return any(
            descent.kept_on(of, before, self._begun(part, before, older))
            and self._runs_on(batch, before, part, older)
            for before, older in self._made_of(of)
        )

    def _anew(self, batch: Batch, of: Batch, new: Container, part: Container) -> bool:
        """Whether a jar that had not sealed was processed once more in time."""
        taken = descent.as_taken(new, of, part)
        return descent.reprocessed(batch, of, taken, new.turns[0].when)

    def _refilled(self, batch: Batch, of: Batch, part: Container) -> bool:
        """Whether it may be only what its part was, or what that was made of and no process was
        done to."""
        return refilled(batch, of) or any(
            descent.kept_on(of, before, self._begun(part, before, older))
            and self._refilled(batch, before, older)
            for before, older in self._made_of(of)
        )

    def _of_children(self, batch: Batch, seen: frozenset[str], since: int = 0) -> str:
        """Why what was made of a batch makes it be looked at, "" where nothing does, or did after
        it was looked at in the minute `since`."""
        for id_ in batch.into:
            held = self._p.load(id_) if id_ not in seen else None
            if held is None:
                continue
            child = held[0]
            if child.suspect and child.suspect_from >= since:
                return (
                    f"Look at it: {child.code}, made from it, is under suspicion: {child.suspect}."
                )
            if why := self._of_children(child, seen | {batch.id}, since):
                return why
        return ""

    def kin_key(self, batch: Batch) -> tuple[object, ...]:
        """What of other batches its verdicts rest on."""
        found: list[object] = []
        for id_ in batch.parts:
            held = self._p.load(batch_of(id_))
            if held is not None and id_ in held[1]:
                found += [replace(held[0], rated=()), held[1][id_], *self.kin_key(held[0])]
        return (*found, *named_parts.key_of(self._p, batch), self._of_children(batch, frozenset()))

    def as_if(self, container: Container, *turns: Turn) -> Judgement:
        """The verdict today if that had also happened; nothing is kept."""
        return self.assess_as(container, *turns).on(self._p.today)

    def assess_as(self, container: Container, *turns: Turn) -> Assessment:
        """All that could be said of it then."""
        for turn in turns:
            container = as_if(container, turn)
        batch = self._p.stock.batches[container.batch]
        return self.of(batch, container, self._p.clock.now)


def _has_kin(batch: Batch) -> bool:
    """Whether its verdict rests on other batches as well."""
    return bool(batch.parts or batch.into or named_parts.codes_in(batch.note))


class _Said(NamedTuple):
    """What was said of a container on a day; of that very one, so that nothing need be compared."""

    container: Container
    day: date
    found: Assessment
    judged: Judgement


class Judge:
    """Assesses containers of a household, equal histories once."""

    def __init__(self, judging: Judging, places: Mapping[str, Place] | None = None) -> None:
        self._judging, self._places = judging, places
        self._known: dict[tuple[object, ...], tuple[int, Assessment]] = {}
        self._said: dict[int, _Said] = {}

    @property
    def places(self) -> Mapping[str, Place]:
        """Where things stand for it."""
        return self._judging.p.ever if self._places is None else self._places

    def assess(self, container: Container) -> Assessment:
        """All that can be said of a container now."""
        return self._of_today(container).found

    def judge(self, container: Container) -> Judgement:
        """The verdict today."""
        return self._of_today(container).judged

    def _of_today(self, container: Container) -> _Said:
        """A container that anything happened to is read again, and is another one then; one with
        kin may be another for what happened to them."""
        said, today = self._said.get(id(container)), self._judging.p.today
        batch = self._judging.p.stock.batches[container.batch]
        kin = _has_kin(batch)
        if said is None or kin or said.day != today or said.found.again_at is not None:
            found = self._assess(container, today)
            said = _Said(container, today, found, found.on(today))
            self._said[id(container)] = said
        return said

    def _assess(self, container: Container, today: date) -> Assessment:
        p = self._judging.p
        batch = p.stock.batches[container.batch]
        key = (
            batch.id,
            batch.food,
            batch.method,
            batch.suspect,
            batch.made,
            batch.doubt,
            batch.note,
            batch.noted,
            batch.possible,
            batch.printed,
            batch.process,
            batch.size,
            batch.tended,
            batch.ph_day,
            batch.booked,
            container.lived,
            batch.ahead_of(container.id),
            today,
            self._judging.kin_key(batch) if _has_kin(batch) else (),
        )
        now = p.clock.now
        since, found = self._known.get(key, (0, None))
        over = found is not None and found.look_at is not None and found.look_at <= now.first
        if found is None or over or now.first < since:
            found = self._judging.of(batch, container, now, self._places)
            self._known[key] = now.first, found
        return found
