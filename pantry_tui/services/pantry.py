"""An open household: its store, the tables, the time, and what the log says, read when asked for.

A batch is folded from the few events that speak of it; `stock` looks like the whole and loads
what is looked at. `writing` is the one way to write: lock, catch up, decide, append, keep the
stock tables, commit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime
from functools import wraps
from pathlib import Path
from types import TracebackType
from typing import Any, Concatenate, ParamSpec, TypeVar

from pantry_tui.core.keeping.exposure import as_if, imagined
from pantry_tui.core.keeping.ladder import Assessment, Judgement
from pantry_tui.core.keeping.limits import assess
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.log.events import Did, Event, new_id, standing
from pantry_tui.core.log.fold import Home, fold_batch, fold_household, fold_place, path_of
from pantry_tui.core.log.own import food_of, rule_of
from pantry_tui.core.log.payloads import (
    Count,
    FoodAdded,
    Household,
    Payload,
    RuleAdded,
    batch_of,
    place_of,
    touches,
)
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Turn, When
from pantry_tui.core.plan.appetite import MEALS, Appetite
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import Climate, Group, State, Trust
from pantry_tui.errors import BadInput
from pantry_tui.reference.names import normal
from pantry_tui.reference.tables import Tables, load_tables
from pantry_tui.services.clock import Clock
from pantry_tui.services.household import HOME_KINDS, said_of
from pantry_tui.store import log
from pantry_tui.store.store import Store, create_store, reading

T = TypeVar("T")
R = TypeVar("R")
P = ParamSpec("P")


def booked(do: Callable[Concatenate[Pantry, P], R]) -> Callable[Concatenate[Pantry, P], R]:
    """What a service decides and books is decided under the lock, from the log as it is then."""

    @wraps(do)
    def doing(p: Pantry, /, *args: P.args, **named: P.kwargs) -> R:
        with p.writing():
            return do(p, *args, **named)

    return doing


def create(
    path: Path,
    *,
    altitude_ft: int = 0,
    people: int = 2,
    units: str = "us",
    clock: Clock | None = None,
) -> None:
    """A new store. Raises Refused when the file is there, BadInput for impossible numbers."""
    home = said_of(altitude_ft, people, units)
    create_store(path)
    with Pantry(Store(path), load_tables(), clock or Clock()) as p:
        p.book(home)


def open_pantry(path: Path, today: date | Clock) -> Pantry:
    """The store at `path`, seen on a day or by a clock. Raises StoreError."""
    clock = today if isinstance(today, Clock) else Clock(today)
    return Pantry(Store(path), load_tables(), clock)


class _Batches(Mapping[str, Batch]):
    """All batches by id; one that is looked at is folded then."""

    def __init__(self, p: Pantry) -> None:
        self._p = p

    def __getitem__(self, id_: str) -> Batch:
        found = self._p.load(id_)
        if found is None:
            raise KeyError(id_)
        return found[0]

    def __iter__(self) -> Iterator[str]:
        self._p.load_all()
        return (id_ for id_, found in self._p.loaded.items() if found is not None)

    def __len__(self) -> int:
        return sum(1 for _ in self)


class _Containers(Mapping[str, Container]):
    """All containers by id."""

    def __init__(self, p: Pantry) -> None:
        self._p = p

    def __getitem__(self, id_: str) -> Container:
        found = self._p.load(batch_of(id_))
        if found is None or id_ not in found[1]:
            raise KeyError(id_)
        return found[1][id_]

    def __iter__(self) -> Iterator[str]:
        self._p.load_all()
        return (id_ for found in self._p.loaded.values() if found for id_ in found[1])

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def values(self) -> Any:
        self._p.load_all()
        return [one for found in self._p.loaded.values() if found for one in found[1].values()]


class Stock:
    """What the log leaves: places, batches, containers, each read when it is looked at."""

    def __init__(self, p: Pantry) -> None:
        self._p = p
        self.batches: Mapping[str, Batch] = _Batches(p)
        self.containers: Mapping[str, Container] = _Containers(p)

    @property
    def places(self) -> Mapping[str, Place]:
        return self._p.places

    def all(self) -> tuple[dict[str, Place], dict[str, Batch], dict[str, Container]]:
        """Everything, as it is now."""
        return dict(self.places), dict(self.batches), dict(self.containers)


class Pantry:
    """What every service works on."""

    def __init__(self, store: Store, tables: Tables, clock: Clock) -> None:
        self.store, self.tables, self.clock = store, tables, clock
        self.path = store.path
        self.stock = Stock(self)
        self.loaded: dict[str, tuple[Batch, dict[str, Container]] | None] = {}
        self._whole = False
        self._group = ""
        self._depth = 0
        self._touched: set[str] = set()
        self._marked: set[str] = set()
        self._seen = store.version()
        self.ready_for: tuple[int, date] | None = None  # services.stock.tables
        self._home: Home | None = None
        self._book: Rulebook | None = None
        self._own: Mapping[frozenset[str], FoodFacts] | None = None
        self._places: Mapping[str, Place] | None = None
        self._events: Sequence[Event] | None = None
        self._assessed: dict[tuple[object, ...], Assessment] = {}
        self._made: dict[tuple[str, date], Any] = {}

    def __enter__(self) -> Pantry:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def close(self) -> None:
        self.store.close()

    # -- time -------------------------------------------------------------------------------------

    @property
    def today(self) -> date:
        return self.clock.today

    @today.setter
    def today(self, day: date) -> None:
        self.clock = Clock(day)

    # -- the household ----------------------------------------------------------------------------

    @property
    def home(self) -> Home:
        """What the household said of itself."""
        if self._home is None:
            with reading(self.path):
                self._home = fold_household(log.of_kinds(self.store.db, HOME_KINDS))
        return self._home

    @property
    def people(self) -> int:
        return self.home.people or 2

    @property
    def altitude_ft(self) -> int:
        """Where the household cooks, feet above the sea."""
        return self.home.altitude_ft or 0

    @property
    def units(self) -> str:
        """ "us" or "metric"."""
        return self.home.units or "us"

    def appetite(self, learned: Mapping[str, float] | None = None) -> Appetite:
        """What the household eats of its stores in a week, at most."""
        asked = self.home.ceilings
        return Appetite(
            self.people,
            {name: most for name, most in asked.items() if name in tuple(Group)},
            {name: most for name, most in asked.items() if name not in tuple(Group)},
            learned or {},
            self.home.meals or MEALS,
            dict(self.home.table),
        )

    @property
    def bare_degree(self) -> str:
        """How a temperature without a letter is meant here: "F" or "C"."""
        return "C" if self.units == "metric" else "F"

    @property
    def book_of_rules(self) -> Rulebook:
        """Everything published, and what the household added."""
        if self._book is None:
            own = tuple(rule_of(added, id_) for id_, added in self.home.rules)
            strict = self.home.advice == "strictest"
            self._book = self.tables.book
            if own or strict:
                self._book = replace(self._book, own=own, strict=strict)
        return self._book

    @property
    def own_foods(self) -> Sequence[FoodFacts]:
        """Foods that only this household has."""
        return tuple(dict.fromkeys(self._own_by_name().values()))

    def _own_by_name(self) -> Mapping[frozenset[str], FoodFacts]:
        if self._own is None:
            added = [food_of(one) for one in self.home.foods]
            self._own = {normal(name): facts for facts, names in added for name in names}
        return self._own

    def facts(self, text: str) -> FoodFacts | None:
        """The food meant: published first, then the household's own."""
        return self.tables.facts(text) or self._own_by_name().get(normal(text))

    def cite(self, rule: Rule | OutageRule) -> str:
        """A rule's source with its trust, or that it is the household's own."""
        return "your own rule" if rule.trust is Trust.HOUSEHOLD else self.tables.cite(rule)

    # -- what the log says ------------------------------------------------------------------------

    @property
    def events(self) -> Sequence[Event]:
        """The whole log. Long: what needs a part of it asks the store for that part."""
        if self._events is None:
            with reading(self.path):
                self._events = log.select(self.store.db)
        return self._events

    @property
    def newest_id(self) -> str:
        """The id of the newest act that stands, "" when there is none."""
        return log.newest(self.store.db)

    @property
    def is_new(self) -> bool:
        """Whether nothing was booked but what kind of household it is."""
        sql = "SELECT 1 FROM log WHERE did <> ? LIMIT 1"
        return self.store.db.execute(sql, (Did.HOUSEHOLD.value,)).fetchone() is None

    @property
    def standing(self) -> Sequence[Event]:
        """The events of the whole log that count."""
        return self.once("standing", lambda: standing(self.events))

    @property
    def places(self) -> Mapping[str, Place]:
        """All places that are not gone, by id."""
        if self._places is None:
            with reading(self.path):
                db = self.store.db
                ids = [row[0] for row in db.execute("SELECT DISTINCT place FROM of_place")]
                found = {id_: fold_place(standing(log.of_place(db, id_))) for id_ in ids}
            self._places = {id_: one for id_, one in found.items() if one and not one.gone}
        return self._places

    def load(self, id_: str) -> tuple[Batch, dict[str, Container]] | None:
        """A batch and its containers by id, None when there is none."""
        if id_ not in self.loaded:
            if self._whole:
                return None
            with reading(self.path):
                self._take(id_, standing(log.of_batch(self.store.db, id_)))
        return self.loaded[id_]

    def load_all(self) -> None:
        """Every batch, each event of the log read once."""
        if self._whole:
            return
        of: dict[str, list[Event]] = {}
        for event in self.standing:
            for batch in touches(event.payload):
                of.setdefault(batch, []).append(event)
        with reading(self.path):
            for id_, events in of.items():
                if id_ not in self.loaded:
                    self._take(id_, events)
        self._whole = True

    def _take(self, id_: str, events: Sequence[Event]) -> None:
        found = fold_batch(id_, events)
        if found is None:
            self.loaded[id_] = None
            return
        batch = found[0]
        # Food facts come from the tables of today where the food is known, so that a corrected
        # table row corrects old batches too.
        facts = self.tables.facts(batch.food.name) if batch.food.known else None
        batch = replace(batch, food=facts) if facts is not None else batch
        self.loaded[id_] = batch, {one.id: one for one in found[1]}

    def batch(self, code: str) -> Batch | None:
        """The batch of a lid code."""
        row = self.store.db.execute("SELECT batch FROM codes WHERE code = ?", (code,)).fetchone()
        found = self.load(row[0]) if row else None
        return found[0] if found else None

    def batches(self) -> Sequence[Batch]:
        return tuple(self.stock.batches.values())

    def containers_of(self, batch: Batch) -> Sequence[Container]:
        found = self.load(batch.id)
        return tuple(found[1].values()) if found else ()

    def where(self, container: Container) -> str:
        return path_of(self.places, container.place)

    def place_paths(self) -> dict[str, str]:
        """Place id -> full path."""
        return self.once("paths", lambda: {id_: path_of(self.places, id_) for id_ in self.places})

    def find_place(self, text: str) -> Place:
        """The place a person names by its name or the end of its path. Raises BadInput."""

        def plain(path: str) -> str:
            return " ".join(path.replace("›", " ").replace(">", " ").lower().split())

        wanted = plain(text)
        paths = {id_: plain(path) for id_, path in self.place_paths().items()}
        whole = [id_ for id_, path in paths.items() if path == wanted]
        ends = whole or [id_ for id_, path in paths.items() if (" " + path).endswith(" " + wanted)]
        if len(ends) == 1:
            return self.places[ends[0]]
        if not wanted or not ends:
            known = ", ".join(sorted(self.place_paths().values())[:8])
            hint = f"known places: {known}" if known else "add it with `pantry-tui place add`"
            raise BadInput(f"There is no place called {text!r}; {hint}.")
        both = " or ".join(self.place_paths()[id_] for id_ in ends)
        raise BadInput(f"{text!r} could be {both}: say more of the path.")

    def once(self, name: str, make: Callable[[], T]) -> T:
        """What `make` gives, reckoned again only after an event or on a new day."""
        key = (name, self.today)
        if key not in self._made:
            self._made[key] = make()
        made: T = self._made[key]
        return made

    # -- verdicts ---------------------------------------------------------------------------------

    def assess(self, container: Container) -> Assessment:
        """All that can be said of a container now; equal histories are assessed once."""
        batch = self.stock.batches[container.batch]
        key = (
            batch,
            _lived(container.turns),
            container.signs,
            container.looked,
            container.left,
            container.first,
            self.today,
        )
        found = self._assessed.get(key)
        if found is None:
            found = self._assessed[key] = self.assess_bare(batch, container, self.clock.now)
        return found

    def judge(self, container: Container) -> Judgement:
        """The verdict on one container today."""
        return self.judge_on(container, self.today)

    def judge_on(self, container: Container, day: date) -> Judgement:
        """The verdict on a day, today or later, if nothing else happens."""
        return self.assess(container).on(day)

    def judge_as(self, container: Container, *turns: Turn) -> Judgement:
        """The verdict today if that had also happened; nothing is kept."""
        for turn in turns:
            container = as_if(container, turn)
        batch = self.stock.batches[container.batch]
        return self.assess_bare(batch, container, self.clock.now).on(self.today)

    def judge_in(self, container: Container, climate: Climate, state: State) -> Judgement:
        """The verdict today if it now stood in a place of that climate, in that state."""
        there = imagined(climate)
        how = "done" if state is State.THAWED else ""  # its days to thaw are planned apart
        moved = as_if(container, Turn(self.clock.now, "", there.id, state, how))
        batch = self.stock.batches[container.batch]
        places = {**self.places, there.id: there}
        return self.assess_bare(batch, moved, self.clock.now, places).on(self.today)

    def assess_bare(
        self,
        batch: Batch,
        container: Container,
        now: When,
        places: Mapping[str, Place] | None = None,
    ) -> Assessment:
        """The same for a batch, container or places as they might be; nothing is kept."""
        where = self.places if places is None else places
        return assess(batch, container, where, self.book_of_rules, now)

    # -- writing ----------------------------------------------------------------------------------

    def catch_up(self) -> None:
        """Forget what was read if another window has written since."""
        if self.store.version() != self._seen:
            self._seen = self.store.version()
            self._forget()

    def refresh(self) -> None:
        """Read everything again."""
        self._forget()

    def _forget(self) -> None:
        self.ready_for = None
        self.loaded.clear()
        self._whole = False
        self._home = None
        self._book = None
        self._own = None
        self._places = None
        self._events = None
        self._assessed.clear()
        self._made.clear()

    @contextmanager
    def writing(self) -> Iterator[None]:
        """The one way to write: what is read inside is as the log stands under the lock, what is
        booked inside is one transaction with the stock tables. Inside another one, a part of it.

        Raises StoreError when the store cannot be written; nothing is booked then.
        """
        if self._depth:
            yield
            return
        with self.store.write():
            self._depth += 1
            try:
                self.catch_up()
                yield
                self._keep_tables()
            except BaseException:
                self._forget()
                raise
            finally:
                self._depth -= 1
                self._touched.clear()
                self._marked.clear()
                self._group = ""

    @contextmanager
    def together(self) -> Iterator[None]:
        """All that is booked inside is one transaction, and one undo takes it back."""
        with self.writing():
            outer, self._group = self._group, self._group or self.next_id()
            yield
            self._group = outer

    @property
    def group(self) -> str:
        """What is booked now carries this in common, "" outside `together`."""
        return self._group

    def stands(self, group: str) -> bool:
        """Whether something that was booked under this name (or id) still counts."""
        sql = (
            "SELECT 1 FROM log WHERE (together = ? OR id = ?) "
            "AND id NOT IN (SELECT event FROM undone) LIMIT 1"
        )
        return self.store.db.execute(sql, (group, group)).fetchone() is not None

    def book(self, payload: Payload, *, day: date | None = None, at: int | None = None) -> Event:
        """Append one event, of today unless a day (and a minute of it) is given."""
        with self.writing():
            event = Event(
                self.next_id(),
                self.clock.recorded.isoformat(timespec="seconds"),
                day or self.today,
                payload,
                at,
                self._group,
            )
            log.append(self.store.db, event)
            self._note(payload)
        return event

    def _note(self, payload: Payload) -> None:
        """What an event changes is read again, and its lines are made again before the commit."""
        self._made.clear()
        self._events = None
        about = touches(payload)
        for batch in about:
            self.loaded.pop(batch, None)
        self._whole = False
        self._touched.update(about)
        if where := place_of(payload):
            self._places = None
            self._assessed.clear()
            if not isinstance(payload, Count):
                self._marked.add(where)
        if not about and not where:
            self._home = self._book = self._own = None
            if isinstance(payload, RuleAdded | FoodAdded | Household):
                self._assessed.clear()
                self._marked.add("*")  # what every verdict rests on has changed

    def touch(self, events: Sequence[Event]) -> None:
        """Events were taken back or brought again: so much is to be read again."""
        for event in events:
            self._note(event.payload)

    def _keep_tables(self) -> None:
        if self._touched or self._marked:
            from pantry_tui.services.stock import tables

            tables.keep(self, self._touched, self._marked)
            self._touched.clear()
            self._marked.clear()

    def settle(self) -> None:
        """Bring the stock tables up to what was booked so far inside `writing`."""
        self._keep_tables()

    def next_id(self) -> str:
        """An id that sorts after every event of the log."""
        return new_id(datetime.now(UTC), log.last_id(self.store.db))

    def next_code(self) -> str:
        """A lid code that was never given, also not to a batch that was taken back."""
        from pantry_tui.core.lidcode import code_at

        db = self.store.db
        number = int(self.store.meta("codes") or "0")
        while True:
            code = code_at(number)
            number += 1
            if db.execute("SELECT 1 FROM codes WHERE code = ?", (code,)).fetchone() is None:
                self.store.set_meta("codes", str(number))
                return code


def _lived(turns: Sequence[Turn]) -> tuple[object, ...]:
    """What happened, whichever events said so."""
    return tuple((turn.when, turn.place, turn.state, turn.how) for turn in turns)
