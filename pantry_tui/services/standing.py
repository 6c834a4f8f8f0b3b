"""What the log leaves: batches and containers, each folded when it is looked at."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Any

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import replace
from pantry_tui.core.keeping.descent import filled
from pantry_tui.core.log.events import Event, standing
from pantry_tui.core.log.fold import fold_batch
from pantry_tui.core.log.payloads import Correct, batch_of, touches
from pantry_tui.core.model import Batch, Container, FoodFacts, Place
from pantry_tui.core.safety.note_before import of_a_changed_note
from pantry_tui.core.words import Acidity, Method
from pantry_tui.store import log
from pantry_tui.store.store import reading

if TYPE_CHECKING:
    from pantry_tui.core.safety.process import Doubt
    from pantry_tui.services.pantry import Pantry

#: A batch with its containers by id; None where its put-up was taken back.
Held = tuple[Batch, dict[str, Container]] | None


class _Batches(Mapping[str, Batch]):
    """All batches by id; one that is looked at is folded then."""

    def __init__(self, held: Stock) -> None:
        self._held = held

    def __getitem__(self, id_: str) -> Batch:
        found = self._held.load(id_)
        if found is None:
            raise KeyError(id_)
        return found[0]

    def __iter__(self) -> Iterator[str]:
        self._held.load_all()
        return (id_ for id_, found in self._held.loaded.items() if found is not None)

    def __len__(self) -> int:
        return sum(1 for _ in self)


class _Containers(Mapping[str, Container]):
    """All containers by id."""

    def __init__(self, held: Stock) -> None:
        self._held = held

    def __getitem__(self, id_: str) -> Container:
        found = self._held.load(batch_of(id_))
        if found is None or id_ not in found[1]:
            raise KeyError(id_)
        return found[1][id_]

    def __iter__(self) -> Iterator[str]:
        self._held.load_all()
        return (id_ for found in self._held.loaded.values() if found for id_ in found[1])

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def values(self) -> Any:
        self._held.load_all()
        return [one for found in self._held.loaded.values() if found for one in found[1].values()]


class Stock:
    """Everything in store, read as it is looked at; `forget` what another window changed."""

    def __init__(self, p: Pantry) -> None:
        self._p = p
        self.loaded: dict[str, Held] = {}
        self._whole = False
        self._stale: set[str] = set()  # to be read again although the whole was read
        self.batches: Mapping[str, Batch] = _Batches(self)
        self.containers: Mapping[str, Container] = _Containers(self)

    @property
    def places(self) -> Mapping[str, Place]:
        return self._p.places

    def all(self) -> tuple[dict[str, Place], dict[str, Batch], dict[str, Container]]:
        """Everything, as it is now."""
        return dict(self.places), dict(self.batches), dict(self.containers)

    def forget(self) -> None:
        self.loaded.clear()
        self._stale.clear()
        self._whole = False

    def changed(self, batches: Sequence[str]) -> None:
        """These are read again when they are looked at."""
        for id_ in batches:
            held = self.loaded.pop(id_, None)
            filled_of = held[0].into if held is not None else ()  # its jar is theirs
            self._stale.update((id_, *filled_of))
            for into in filled_of:
                self.loaded.pop(into, None)
        self._p.judging.changed.update(batches)

    def load(self, id_: str) -> Held:
        """A batch and its containers by id, None when there is none."""
        if id_ not in self.loaded:
            if self._whole and id_ not in self._stale:
                return None
            with reading(self._p.path):
                self._take(id_, standing(log.of_batch(self._p.store.db, id_)))
            self._stale.discard(id_)
        return self.loaded[id_]

    def load_some(self, ids: Iterable[str]) -> None:
        """The same of many that will be looked at, which asks the log once."""
        new = [id_ for id_ in dict.fromkeys(ids) if id_ not in self.loaded and not self._whole]
        with reading(self._p.path):
            for id_, events in log.of_batches(self._p.store.db, new).items() if new else ():
                self._take(id_, standing(events))
                self._stale.discard(id_)

    def load_all(self) -> None:
        """Every batch, each event of the log read once."""
        if not self._whole:
            of: dict[str, list[Event]] = {}
            for event in self._p.standing:
                for batch in touches(event.payload):
                    of.setdefault(batch, []).append(event)
            with reading(self._p.path):
                for id_, events in of.items():
                    if id_ not in self.loaded:
                        self._take(id_, events)
            self._whole = True
            self._stale.clear()
        for id_ in tuple(self._stale):
            self.load(id_)

    def _take(self, id_: str, events: Sequence[Event]) -> None:
        found = fold_batch(id_, events)
        if found is None:
            self.loaded[id_] = None
            return
        batch = self._filled(replace(found[0], food=self._food(found[0].food)))
        mixed = bool(batch.parts) and not batch.carried
        if mixed:
            batch = _without_parts(batch)
        corrected = (isinstance(one.payload, Correct) for one in events)
        if batch.process or batch.note or mixed or any(corrected):
            # What a correction found in doubt was so of the food, the method and the size that it
            # left, and these may have been put right again, or the correction taken back.
            batch = self._checked_today(batch)
        if batch.doubt:
            stands = of_a_changed_note(batch.doubt, batch.note, batch.code)
            batch = replace(batch, doubt=stands)
        self.loaded[id_] = batch, {one.id: one for one in found[1]}

    def _filled(self, batch: Batch) -> Batch:
        """With what it was processed in, where that is what it goes on from."""
        sealed = batch.method in LIDDED or batch.method is Method.BOUGHT
        if not (batch.carried and batch.parts and sealed):
            return batch
        held = self.load(batch_of(batch.parts[0]))
        return batch if held is None else replace(batch, filled=filled(held[0]))

    def _checked_today(self, batch: Batch) -> Batch:
        """With what publications say today against its process too: a check that is new since it
        was put up reaches it. What stood against it then stands."""
        from pantry_tui.services.batchwork.checked import as_recorded, used_in
        from pantry_tui.services.stock.recheck import strictest_altitude

        # A record is like the next one of its food, so that few are looked at.
        told = batch.method, batch.food, batch.processed, batch.process, batch.note
        key = *told, used_in(self._p, batch), batch.made if batch.note else None
        feet = strictest_altitude(self._p, batch)
        known: dict[object, Doubt] = self._p.once("checked", dict)
        if (key, feet) not in known:
            known[key, feet] = as_recorded(self._p, batch, feet)
        found = known[key, feet]
        new = [one for one in found.problems if one not in batch.doubt]
        if not new:
            return batch
        return replace(batch, doubt=(*batch.doubt, *new), possible=found.still_possible)

    def _food(self, food: FoodFacts) -> FoodFacts:
        """Food facts come from the tables of today where these have it, so that a corrected row
        corrects old batches too; where they do not, that it is acid is the household's word."""
        tables = self._p.tables
        if food.known:
            return tables.facts(food.name) or food
        listed = tables.food_called(food.name)
        if listed is not None:
            return listed.facts
        if food.acidity is Acidity.LOW_ACID or food.told:
            return food
        composed = tables.composed(food.name)
        surely = composed is not None and composed.is_acid
        return food if surely else replace(food, told=True)


def _without_parts(batch: Batch) -> Batch:
    """Without what was said of its parts: they are what they are called today."""
    from pantry_tui.core.safety.made_of import says_of_part

    stands = tuple(one for one in batch.doubt if not says_of_part(one))
    return replace(batch, doubt=stands)
