"""An open household: its store, the tables, the time, and what the log says, read when asked for.

`writing` is the one way to write: lock, catch up, decide, append, keep the stock tables, commit.
What a list shows is read off the stock tables; the log, the rules and the judge are loaded by the
first who asks for them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import cached_property, wraps
from typing import TYPE_CHECKING, Any, Concatenate, ParamSpec, TypeVar

from pantry_tui.services.clock import Clock
from pantry_tui.services.told import Told
from pantry_tui.store.store import Store, create_store, reading

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path
    from types import TracebackType
    from typing import Unpack

    from pantry_tui.core.keeping.ladder import Assessment, Judgement
    from pantry_tui.core.keeping.rules import Rulebook
    from pantry_tui.core.log.events import Event
    from pantry_tui.core.log.home import Home
    from pantry_tui.core.log.payloads import Payload
    from pantry_tui.core.model import Batch, Container, FoodFacts, Place, Turn, When
    from pantry_tui.reference.tables import Tables
    from pantry_tui.services.booking import Happened
    from pantry_tui.services.judging import Judge, Judging
    from pantry_tui.services.standing import Held, Stock

T = TypeVar("T")
R = TypeVar("R")
P = ParamSpec("P")


def booked(do: Callable[Concatenate[Pantry, P], R]) -> Callable[Concatenate[Pantry, P], R]:
    """What a service decides and books is decided under the lock, from the log as it is then. What
    waits to be judged is judged before that, since others may write meanwhile."""

    @wraps(do)
    def doing(p: Pantry, /, *args: P.args, **named: P.kwargs) -> R:
        p.judge_what_waits()
        with p.writing():
            return do(p, *args, **named)

    return doing


def create(
    path: Path,
    *,
    altitude_ft: int | None = None,
    people: int = 2,
    units: str = "us",
    clock: Clock | None = None,
    fill: Callable[[Pantry], None] | None = None,
) -> None:
    """A new store, with what `fill` books: whole, or not there. Raises Refused when the file is
    there, BadInput for impossible numbers."""
    from pantry_tui.services.household import said_of

    home = said_of(altitude_ft, people, units)

    def begin(making: Path) -> None:
        with Pantry(Store(making), clock or Clock()) as p:
            p.book(home)
            if fill is not None:
                fill(p)

    create_store(path, begin)


def open_pantry(path: Path, today: date | Clock) -> Pantry:
    """The store at `path`, seen on a day or by a clock. Raises StoreError."""
    clock = today if isinstance(today, Clock) else Clock(today)
    return Pantry(Store(path), clock)


class Pantry(Told):
    """What every service works on."""

    def __init__(self, store: Store, clock: Clock, tables: Tables | None = None) -> None:
        self.store, self.clock = store, clock
        self.path = store.path
        if tables is not None:
            self.tables = tables
        self.group = ""  # what is booked now carries this in common, "" outside `together`
        self.ready_for: object = None  # services.stock.ready
        self.judged_for: object = None
        self.asks_which = False  # whether a lid code was typed, and may be read off either of two
        self.looked_at: int | None = None  # the version of the store whose lines were looked at
        self.has_judged = False  # the stock tables stand by the rules of this process
        self.booked: set[str] = set()  # the ids of what was booked by this process
        self.leaving: list[Callable[[Pantry], None]] = []  # called before it is closed
        self._depth = 0
        self._touched: set[str] = set()
        self._marked: set[str] = set()
        self._seen = store.version()
        self._home: Home | None = None
        self._own: Mapping[frozenset[str], FoodFacts] | None = None
        self._places: tuple[Mapping[str, Place], Mapping[str, Place]] | None = None
        self._events: Sequence[Event] | None = None
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
        for heard in self.leaving:
            heard(self)
        self.store.close()

    @contextmanager
    def let_go(self) -> Iterator[None]:
        """The file may be replaced meanwhile: nothing of it is open, and all is read anew after."""
        self.store.close()
        try:
            yield
        finally:
            self.store = Store(self.path)
            self._seen = self.store.version()
            self.looked_at, self.has_judged = None, False
            self.refresh()

    # -- time and tables --------------------------------------------------------------------------

    @property
    def today(self) -> date:
        return self.clock.today

    @today.setter
    def today(self, day: date) -> None:
        self.clock = Clock(day)

    @cached_property
    def stock(self) -> Stock:
        from pantry_tui.services.standing import Stock

        return Stock(self)

    def load(self, id_: str) -> Held:
        """A batch and its containers by id, None when there is none."""
        return self.stock.load(id_)

    def batch(self, code: str) -> Batch | None:
        """The batch of a lid code."""
        from pantry_tui.store import codes

        with reading(self.path):
            id_ = codes.batch_of(self.store.db, code)
            found = self.load(id_) if id_ else None
            if found is not None:
                codes.refuse_other(code, found[0].code)
        return found[0] if found else None

    def batches(self) -> Sequence[Batch]:
        return tuple(self.stock.batches.values())

    def containers_of(self, batch: Batch) -> Sequence[Container]:
        found = self.load(batch.id)
        return tuple(found[1].values()) if found else ()

    def where(self, container: Container) -> str:
        return self.place_paths().get(container.place, "")

    # -- verdicts ---------------------------------------------------------------------------------

    @cached_property
    def judging(self) -> Judging:
        from pantry_tui.services.judging import Judging

        return Judging(self)

    @property
    def book_of_rules(self) -> Rulebook:
        """Everything published, and what the household added."""
        return self.judging.book

    def assess(self, container: Container) -> Assessment:
        """All that can be said of a container now."""
        return self.judging.real.assess(container)

    def judge(self, container: Container) -> Judgement:
        """The verdict on one container today."""
        return self.judging.real.judge(container)

    def judge_as(self, container: Container, *turns: Turn) -> Judgement:
        """The verdict today if that had also happened; nothing is kept."""
        return self.judging.as_if(container, *turns)

    def assess_bare(
        self,
        batch: Batch,
        container: Container,
        now: When,
        places: Mapping[str, Place] | None = None,
    ) -> Assessment:
        """Of a batch, container or places as they might be; nothing is kept."""
        return self.judging.of(batch, container, now, places)

    def imagining(self, name: str, places: Callable[[], Mapping[str, Place]]) -> Judge:
        """A judge of the same stock in places that are only thought of."""
        return self.judging.imagining(name, places)

    # -- writing ----------------------------------------------------------------------------------

    @contextmanager
    def writing(self) -> Iterator[None]:
        """The one way to write: what is read inside is as the log stands under the lock, what is
        booked inside is one transaction with the stock tables. Inside another one, a part of it.

        Raises StoreError when the store cannot be written; nothing is booked then.
        """
        if self._depth:
            yield
            return
        import pantry_tui.services.stock.tables  # noqa: F401 - what `settle` asks; others wait then

        before = self.store.booked
        try:
            with self.store.write():
                self._depth = 1
                self.catch_up()
                self._refuse_if_updated()
                yield
                self.settle()
        except BaseException:
            self.store.booked = before
            self.refresh()
            raise
        finally:
            self._depth, self.group = 0, ""
            self._touched, self._marked = set(), set()

    def judge_what_waits(self) -> None:
        """Judge what is marked or has run out, and everything where the rules are others; outside
        `writing`, in which the rows are read as they lie."""
        if not self._depth:
            from pantry_tui.services.stock.ready import ready, run_out, waits

            if waits(self) or run_out(self):
                ready(self)

    def _refuse_if_updated(self) -> None:
        if self.has_judged:
            from pantry_tui.services.stock.ready import refuse_if_updated

            refuse_if_updated(self)

    @contextmanager
    def together(self) -> Iterator[None]:
        """All that is booked inside is one transaction, and one undo takes it back."""
        self.judge_what_waits()
        with self.writing():
            outer, self.group = self.group, self.group or self.next_id()
            yield
            self.group = outer

    def book(self, payload: Payload, **told: Unpack[Happened]) -> Event:
        """Append one event, of today unless a day (and a minute of it) is given."""
        from pantry_tui.services.booking import append

        with self.writing():
            event = append(self, payload, **told)
        self.booked.add(event.id)
        return event

    def next_id(self) -> str:
        """An id that sorts after every event of the log."""
        from pantry_tui.services.booking import next_id

        return next_id(self)

    def next_code(self) -> str:
        """A lid code that was never given, also not to a batch that was taken back."""
        from pantry_tui.services.booking import next_code

        return next_code(self)

    def settle(self) -> None:
        """Bring the stock tables up to what was booked so far inside `writing`."""
        if self._touched or self._marked:
            from pantry_tui.services.stock import tables

            tables.keep(self, self._touched, self._marked)
            self._touched.clear()
            self._marked.clear()

    # -- what is to be read again -----------------------------------------------------------------

    def catch_up(self) -> None:
        """Forget what was read if another window has written since."""
        if self.store.version() != self._seen:
            self._seen = self.store.version()
            self.refresh()

    def refresh(self) -> None:
        """Read everything again."""
        self.ready_for = self.judged_for = None
        self._made.clear()
        self._home = self._own = self._places = self._events = None
        if "stock" in self.__dict__:
            self.stock.forget()
        if "judging" in self.__dict__:
            self.judging.anew(rules=True)

    def refresh_events(self) -> None:
        """Of the log, which events count has changed."""
        self._events = None
        self._made.clear()

    def appended(self, event: Event) -> None:
        """The log is longer by one."""
        if self._events is not None:
            self._events = [*self._events, event]
        self._made.clear()

    def touched(self, batches: Sequence[str]) -> None:
        """These batches have changed."""
        self.stock.changed(batches)
        self._touched.update(batches)

    def mark(self, what: str) -> None:
        """What stands in a place, or stood there ("*": everything), is to be judged again."""
        self._marked.add(what)

    def places_changed(self) -> None:
        self._places = None
        self.judging.anew()

    def home_changed(self, *, rules: bool) -> None:
        """The household has said something of itself; with `rules`, what verdicts rest on."""
        self._home = self._own = None
        if rules:
            self.judging.anew(rules=True)
            self.mark("*")
