"""An open household: the store, the tables, today, and the stock that the log leaves."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path
from types import TracebackType
from typing import Any, TypeVar

from pantry_tui.core.keeping.exposure import stretches
from pantry_tui.core.keeping.limits import Judgement, judge
from pantry_tui.core.keeping.rules import Rule, Rulebook
from pantry_tui.core.log.events import Did, Event, new_id
from pantry_tui.core.log.fold import fold, path_of, standing
from pantry_tui.core.log.own import food_of, rule_of
from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Stock
from pantry_tui.core.plan.appetite import MEALS, Appetite
from pantry_tui.core.words import Group, Trust
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.names import normal
from pantry_tui.reference.tables import Tables, load_tables
from pantry_tui.store.store import Store, create_store, reading

T = TypeVar("T")


def create(path: Path, *, altitude_ft: int = 0, people: int = 2, units: str = "us") -> None:
    """A new store. Raises Refused when the file is there, BadInput for impossible numbers."""
    create_store(path, household(altitude_ft, people, units))


def household(altitude_ft: int, people: int, units: str) -> dict[str, str]:
    """The settings of a household. Raises BadInput for impossible numbers."""
    if not -1500 <= altitude_ft <= 20_000:
        raise BadInput("The altitude must lie between -1,500 and 20,000 ft.")
    if not 1 <= people <= 100:
        raise BadInput("The household must be 1 to 100 people.")
    if units not in ("us", "metric"):
        raise BadInput("Units are us or metric.")
    return {"altitude_ft": str(altitude_ft), "people": str(people), "units": units}


def open_pantry(path: Path, today: date) -> Pantry:
    """The store at `path`, seen on `today`. Raises StoreError."""
    return Pantry(Store(path), load_tables(), today)


class Pantry:
    """What every service works on. `stock` is the fold of the log, refreshed after `book`."""

    def __init__(self, store: Store, tables: Tables, today: date) -> None:
        self.store, self.tables, self.today = store, tables, today
        self.path = store.path
        self._settings = store.settings()
        self._events: list[Event] = []
        self._book = tables.book
        self._judged: dict[tuple[object, ...], Judgement] = {}
        self._seen = store.version()
        self._draft: list[Event] | None = None
        self._group = ""
        self._stock = Stock()
        self._made: dict[tuple[str, date], Any] = {}
        with reading(self.path):
            household(self.altitude_ft, self.people, self._settings.get("units", "us"))
        self.refresh()

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

    @property
    def people(self) -> int:
        return int(self._settings.get("people", "2"))

    @property
    def altitude_ft(self) -> int:
        """Where the household cooks, feet above the sea."""
        return int(self._settings.get("altitude_ft", "0"))

    def marked(self, kind: str) -> dict[str, str]:
        """The settings of a kind ("appetite:fish" is of the kind "appetite"), by their names."""
        return {
            name.removeprefix(f"{kind}:"): value
            for name, value in self._settings.items()
            if name.startswith(f"{kind}:")
        }

    def appetite(self, learned: Mapping[str, float] | None = None) -> Appetite:
        """What the household eats of its stores in a week, at most."""
        asked = {name: float(value) for name, value in self.marked("appetite").items()}
        return Appetite(
            self.people,
            {name: most for name, most in asked.items() if name in tuple(Group)},
            {name: most for name, most in asked.items() if name not in tuple(Group)},
            learned or {},
            int(self._settings.get("meals", str(MEALS))),
            {date.fromisoformat(day): int(n) for day, n in self.marked("table").items()},
        )

    def settings(self) -> dict[str, str]:
        """All of them, as they are kept."""
        return dict(self._settings)

    def save(self, settings: Mapping[str, str | None]) -> None:
        """Change some settings; None forgets one."""
        self.store.save_settings(settings)
        self._settings = self.store.settings()
        self._made.clear()

    def settle(self, altitude_ft: int, people: int, units: str) -> None:
        """Change what kind of household it is. Raises BadInput."""
        self.save(household(altitude_ft, people, units))

    @property
    def bare_degree(self) -> str:
        """How a temperature without a letter is meant here: "F" or "C"."""
        return "C" if self._settings.get("units") == "metric" else "F"

    @property
    def book_of_rules(self) -> Rulebook:
        """Everything published, and what the household added."""
        return self._book

    @property
    def own_foods(self) -> Sequence[FoodFacts]:
        """Foods that only this household has."""
        return tuple(dict.fromkeys(self._own_foods.values()))

    def facts(self, text: str) -> FoodFacts | None:
        """The food meant: published first, then the household's own."""
        return self.tables.facts(text) or self._own_foods.get(normal(text))

    def cite(self, rule: Rule) -> str:
        """A rule's source with its trust, or that it is the household's own."""
        return "your own rule" if rule.trust is Trust.HOUSEHOLD else self.tables.cite(rule)

    @property
    def events(self) -> Sequence[Event]:
        return self._events

    @property
    def stock(self) -> Stock:
        return self._stock

    def refresh(self) -> None:
        """Read the log again and fold it. Raises StoreError for lines that make no sense."""
        self._events = self.store.events()
        with reading(self.path):
            self._fold()

    def catch_up(self) -> None:
        """Read the log again if another window has written since."""
        if self.store.version() != self._seen:
            self._seen = self.store.version()
            self.refresh()

    def once(self, name: str, make: Callable[[], T]) -> T:
        """What `make` gives, reckoned again only after an event or on a new day."""
        key = (name, self.today)
        if key not in self._made:
            self._made[key] = make()
        made: T = self._made[key]
        return made

    def _fold(self, stock: Stock | None = None) -> None:
        stock = stock or fold(self._events)
        self._made.clear()
        if stock.places != self._stock.places:
            self._judged.clear()  # a place grew warmer or colder
        own = [e for e in standing(self._events) if e.did in (Did.FOOD_ADDED, Did.RULE_ADDED)]
        added = [food_of(event) for event in own if event.did is Did.FOOD_ADDED]
        self._own_foods = {normal(name): facts for facts, names in added for name in names}
        rules = tuple(rule_of(event) for event in own if event.did is Did.RULE_ADDED)
        if rules != self._book.own:
            self._book = replace(self.tables.book, own=rules)
            self._judged.clear()
        # Food facts come from the tables of today where the food is known, so that a corrected
        # table row corrects old batches too.
        batches = {id_: self._fresh(batch) for id_, batch in stock.batches.items()}
        self._stock = Stock(stock.places, batches, stock.containers)
        self._by_code = {batch.code: batch for batch in batches.values()}
        self._of: dict[str, list[Container]] = {}
        for container in stock.containers.values():
            self._of.setdefault(container.batch, []).append(container)

    def _fresh(self, batch: Batch) -> Batch:
        facts = self.tables.facts(batch.food.name) if batch.food.known else None
        return replace(batch, food=facts) if facts is not None else batch

    def event(
        self,
        did: Did,
        *,
        batch: str = "",
        containers: Sequence[str] = (),
        **data: Any,
    ) -> Event:
        """A new event of today, not yet booked."""
        return Event(
            self.next_id(),
            datetime.now(UTC).isoformat(timespec="seconds"),
            self.today,
            did,
            batch,
            tuple(containers),
            data,
        )

    def in_order(self, events: Sequence[Event]) -> list[Event]:
        """Events made together, with ids that sort as they stand."""
        found: list[Event] = []
        for event in events:
            after = found[-1].id if found else (self._events[-1].id if self._events else "")
            found.append(replace(event, id=new_id(datetime.now(UTC), after)))
        return found

    def next_id(self) -> str:
        """An id that sorts after every event of the log."""
        return new_id(datetime.now(UTC), self._events[-1].id if self._events else "")

    def book(self, *events: Event) -> None:
        """Append events in one transaction and fold again; nothing is booked that cannot fold.

        When another window has written since, its lines are read first and the whole is refused
        if the containers meant are no longer as they were.
        """
        if self._draft is not None:
            if self._group:
                group = {"group": self._group}
                events = tuple(replace(one, data={**one.data, **group}) for one in events)
            self._draft.extend(events)
            self._events = [*self._events, *events]
            self._fold()
            return
        with self.store.write():
            before = self._seen
            self.catch_up()
            if self._seen != before:
                self._still(events)
            together = [*self._events, *events]
            stock = fold(together)
            self.store.append(events)
        self._events = together
        self._fold(stock)

    @contextmanager
    def drafting(self) -> Iterator[None]:
        """All that is booked inside becomes one transaction, or nothing."""
        self._draft = []
        try:
            yield
            with self.store.write():
                self.store.append(self._draft)
        finally:
            self._draft = None
            self.refresh()

    @contextmanager
    def together(self) -> Iterator[None]:
        """All that is booked inside is one transaction, and one undo takes it back.

        Raises Refused, booking nothing, when another window has written since it was looked at.
        """
        if self.store.version() != self._seen:
            self.catch_up()
            raise Refused("Another window has just changed the store: look again and repeat.")
        self._group = self.next_id()
        try:
            with self.drafting():
                yield
        finally:
            self._group = ""

    def _still(self, events: Sequence[Event]) -> None:
        for event in events:
            for id_ in event.containers:
                container = self.stock.containers.get(id_)
                if event.did is not Did.PUT_UP and (container is None or not container.here):
                    raise Refused("Another window has just changed that: look again and repeat.")

    def last_standing(self) -> Event | None:
        """The event that undo would take back."""
        left = standing(self._events)
        return left[-1] if left else None

    def batch(self, code: str) -> Batch | None:
        return self._by_code.get(code)

    def batches(self) -> Sequence[Batch]:
        return tuple(self._by_code.values())

    def containers_of(self, batch: Batch) -> Sequence[Container]:
        return self._of.get(batch.id, ())

    def where(self, container: Container) -> str:
        return path_of(self.stock.places, container.place)

    def place_paths(self) -> dict[str, str]:
        """Place id -> full path."""
        return {id_: path_of(self.stock.places, id_) for id_ in self.stock.places}

    def find_place(self, text: str) -> Place:
        """The place a person names by its name or the end of its path. Raises BadInput."""

        def plain(path: str) -> str:
            return " ".join(path.replace("›", " ").replace(">", " ").lower().split())

        wanted = plain(text)
        paths = {id_: plain(path) for id_, path in self.place_paths().items()}
        whole = [id_ for id_, path in paths.items() if path == wanted]
        ends = whole or [id_ for id_, path in paths.items() if (" " + path).endswith(" " + wanted)]
        if len(ends) == 1:
            return self.stock.places[ends[0]]
        if not wanted or not ends:
            known = ", ".join(sorted(self.place_paths().values())[:8])
            hint = f"known places: {known}" if known else "add it with `pantry-tui place add`"
            raise BadInput(f"There is no place called {text!r}; {hint}.")
        both = " or ".join(self.place_paths()[id_] for id_ in ends)
        raise BadInput(f"{text!r} could be {both}: say more of the path.")

    def judge(self, container: Container) -> Judgement:
        """The verdict on one container today; equal histories are judged once."""
        batch = self.stock.batches[container.batch]
        key = (batch, container.stays, container.signs, container.looked, self.today)
        found = self._judged.get(key)
        if found is None:
            found = self._judged[key] = self.judge_as(container)
        return found

    def judge_as(self, container: Container) -> Judgement:
        """The same for a container as it might be; nothing is kept."""
        lived = replace(container, stays=stretches(container.stays, self.stock.places))
        return self.judge_bare(self.stock.batches[container.batch], lived)

    def judge_bare(self, batch: Batch, container: Container) -> Judgement:
        """The same, its stays taken as they are: for a place that is only thought of."""
        return judge(batch, container, self.book_of_rules, self.today)
