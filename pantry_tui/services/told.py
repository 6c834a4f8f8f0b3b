"""What an open household was told, read from its log and the tables when it is asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Any, TypeVar

from pantry_tui.errors import BadInput
from pantry_tui.store.store import Store, reading

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path

    from pantry_tui.core.keeping.rules import Rule
    from pantry_tui.core.log.events import Event
    from pantry_tui.core.log.home import Home
    from pantry_tui.core.model import FoodFacts, Place
    from pantry_tui.core.plan.appetite import Appetite
    from pantry_tui.core.safety.outage_rows import OutageRule
    from pantry_tui.reference.tables import Tables

T = TypeVar("T")


class Told:
    """The part of a `Pantry` that only reads: the household, the log, the places."""

    store: Store
    path: Path
    _home: Home | None
    _own: Mapping[frozenset[str], FoodFacts] | None
    _places: tuple[Mapping[str, Place], Mapping[str, Place]] | None
    _events: Sequence[Event] | None
    _made: dict[tuple[str, date], Any]

    @property
    def today(self) -> date:
        raise NotImplementedError

    @cached_property
    def tables(self) -> Tables:
        from pantry_tui.reference.tables import load_tables

        return load_tables()

    def once(self, name: str, make: Callable[[], T]) -> T:
        """What `make` gives, reckoned again only after an event or on a new day."""
        key = (name, self.today)
        if key not in self._made:
            self._made[key] = make()
        made: T = self._made[key]
        return made

    # -- the household ----------------------------------------------------------------------------

    @property
    def home(self) -> Home:
        """What the household said of itself."""
        if self._home is None:
            from pantry_tui.core.log.events import standing
            from pantry_tui.core.log.home import fold_household
            from pantry_tui.store import log

            with reading(self.path):
                self._home = fold_household(standing(log.of_household(self.store.db)))
        return self._home

    @property
    def people(self) -> int:
        return self.home.people or 2

    @property
    def altitude_ft(self) -> int | None:
        """Where the household cooks, feet above the sea; None where nobody said."""
        return self.home.altitude_ft

    @property
    def units(self) -> str:
        """ "us" or "metric"."""
        return self.home.units or "us"

    @property
    def metric(self) -> bool:
        """Whether it is told in metric units. Of a household that never said so nothing is read
        but that."""
        if self._home is None:
            sql = "SELECT 1 FROM log WHERE did = 'household' AND instr(payload, 'metric') LIMIT 1"
            with reading(self.path):
                if self.store.db.execute(sql).fetchone() is None:
                    return False
        return self.units == "metric"

    @property
    def south(self) -> bool:
        """Whether it gardens in the southern half of the world."""
        return self.home.half == "south"

    @property
    def jars(self) -> str:
        """Whose times serve for metric jars: "maker" or "strict"."""
        return self.home.jars or ("maker" if self.units == "metric" else "strict")

    def appetite(self, learned: Mapping[str, float] | None = None) -> Appetite:
        """What the household eats of its stores in a week, at most."""
        from pantry_tui.services.household import appetite

        return appetite(self, learned or {})

    @property
    def bare_degree(self) -> str:
        """How a temperature without a letter is meant here: "F" or "C"."""
        return "C" if self.units == "metric" else "F"

    @property
    def own_foods(self) -> Sequence[FoodFacts]:
        """Foods that only this household has."""
        return tuple(dict.fromkeys(self._own_by_name().values()))

    def _own_by_name(self) -> Mapping[frozenset[str], FoodFacts]:
        if self._own is None:
            from pantry_tui.core.log.own import food_of
            from pantry_tui.reference.names import normal

            added = [food_of(one) for one in self.home.foods]
            self._own = {normal(name): facts for facts, names in added for name in names}
        return self._own

    def facts(self, text: str) -> FoodFacts | None:
        """The food meant: by a published name, then the household's own, then by words beside a
        name that leave no question open."""
        return self.tables.named(text) or self.own_food(text) or self.tables.composed(text)

    def own_food(self, text: str) -> FoodFacts | None:
        """A food that only this household has."""
        if not self.home.foods:
            return None
        from pantry_tui.reference.names import normal

        return self._own_by_name().get(normal(text))

    def cite(self, rule: Rule | OutageRule) -> str:
        """A rule's source with its trust, or that it is the household's own."""
        from pantry_tui.core.words import Trust

        return "your own rule" if rule.trust is Trust.HOUSEHOLD else self.tables.cite(rule)

    # -- what the log says ------------------------------------------------------------------------

    @property
    def events(self) -> Sequence[Event]:
        """The whole log. Long: what needs a part of it asks the store for that part."""
        if self._events is None:
            from pantry_tui.store import log

            with reading(self.path):
                self._events = log.everything(self.store.db)
        return self._events

    @property
    def longest_code(self) -> int:
        """How many characters the longest lid code has that was ever given."""
        sql = "SELECT max(length(code)) FROM codes"
        with reading(self.path):
            return self.once("longest code", lambda: self.store.db.execute(sql).fetchone()[0] or 0)

    @property
    def is_new(self) -> bool:
        """Whether nothing was booked but what kind of household it is."""
        sql = "SELECT 1 FROM log WHERE did <> 'household' LIMIT 1"
        with reading(self.path):
            return self.store.db.execute(sql).fetchone() is None

    @property
    def standing(self) -> Sequence[Event]:
        """The events of the whole log that count."""
        from pantry_tui.core.log.events import standing

        return self.once("standing", lambda: standing(self.events))

    def stands(self, group: str) -> bool:
        """Whether something that was booked under this name (or id) still counts."""
        sql = (
            "SELECT 1 FROM log WHERE ((together = ? AND together <> '') OR id = ?) "
            "AND id NOT IN (SELECT event FROM undone) LIMIT 1"
        )
        with reading(self.path):
            return self.store.db.execute(sql, (group, group)).fetchone() is not None

    @property
    def places(self) -> Mapping[str, Place]:
        """All places that are not gone, by id."""
        return self._all_places()[0]

    @property
    def ever(self) -> Mapping[str, Place]:
        """All places there ever were: what stood in one that is gone has lived there all the
        same."""
        return self._all_places()[1]

    def _all_places(self) -> tuple[Mapping[str, Place], Mapping[str, Place]]:
        if self._places is None:
            from pantry_tui.store import places

            with reading(self.path):
                ever = places.all_of(self.store.db)
            self._places = {id_: one for id_, one in ever.items() if not one.gone}, ever
        return self._places

    def place_paths(self) -> dict[str, str]:
        """Place id -> full path."""
        from pantry_tui.core.log.fold_place import path_of

        return self.once("paths", lambda: {id_: path_of(self.places, id_) for id_ in self.places})

    def find_place(self, text: str) -> Place:
        """The place a person names by its name or the end of its path; what is called exactly so
        goes before what only ends so. Raises BadInput."""
        wanted = _plain(text)
        paths = {id_: _plain(path) for id_, path in self.place_paths().items()}
        whole = [id_ for id_, path in paths.items() if path == wanted]
        whole = whole or [id_ for id_ in paths if _plain(self.places[id_].name) == wanted]
        ends = whole or [id_ for id_, path in paths.items() if (" " + path).endswith(" " + wanted)]
        if len(ends) == 1:
            return self.places[ends[0]]
        if not wanted or not ends:
            known = ", ".join(sorted(self.place_paths().values())[:8])
            hint = f"known places: {known}" if known else "add it with `pantry-tui place add`"
            raise BadInput(f"There is no place called {text!r}; {hint}.")
        both = " or ".join(self.place_paths()[id_] for id_ in ends)
        raise BadInput(f"{text!r} could be {both}: say more of the path.")


def _plain(path: str) -> str:
    return " ".join(path.replace("›", " ").replace(">", " ").lower().split())
