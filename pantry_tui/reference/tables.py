"""Foods, sources and keeping rules: data/*.csv as frozen tables, compiled or read once."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from functools import cache, cached_property
from typing import TYPE_CHECKING, Any

from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.model import Crop, FoodFacts
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.names import Food, FoodIndex, name_keys
from pantry_tui.reference.packing import Lazy, Packing, Rows

if TYPE_CHECKING:
    pass


#: The year of the federal storage table (data/federal.csv): what came later is newer.
FEDERAL_YEAR = 2018


@dataclass(frozen=True, slots=True)
class Source:
    """A publication; rows name it by `id`."""

    id: str
    title: str
    publisher: str
    year: str
    url: str
    note: str

    def __str__(self) -> str:
        return ", ".join(part for part in (self.publisher, self.title, self.year) if part)


@dataclass(frozen=True)
class Tables:
    """All reference data, each part loaded when it is first asked for. `rules` are grouped by
    method, in file order; `keys` are the `name_keys` of the foods, where known already."""

    foods: Sequence[Food]
    sources: Mapping[str, Source]
    rules: Mapping[Method, tuple[Rule, ...]]
    crops: Mapping[str, Crop]
    keys: Mapping[str, int] | None = None
    letters: Mapping[str, Mapping[str, Food]] | None = None

    @cached_property
    def book(self) -> Rulebook:
        """What judging needs."""
        return Rulebook(self.rules, self.crops, cuts=_cuts, wide=_wide, older=self._older)

    @cached_property
    def index(self) -> FoodIndex:
        return FoodIndex(self.foods, self.keys)

    def food_called(self, name: str) -> Food | None:
        """The food of exactly that name, of which no more is loaded than the names that begin with
        its letter."""
        if self.letters is None:
            return self._by_name.get(name)
        return self.letters.get(name[:1], {}).get(name)

    @cached_property
    def _by_name(self) -> Mapping[str, Food]:
        return {food.name: food for food in self.foods}

    def named(self, text: str) -> FoodFacts | None:
        """The food that has this name, words of preparation aside, or None."""
        food = self.food_called(text) or self.index.find(text)
        return None if food is None else food.facts

    def facts(self, text: str) -> FoodFacts | None:
        """The food meant by `text`, by its name or by words beside a name that leave no question
        open ("red onions", "leek powder"), or None."""
        return self.named(text) or self.composed(text)

    def composed(self, text: str) -> FoodFacts | None:
        """A food by words beside the name of one; None also where they say how it is kept."""
        from pantry_tui.reference.compose import composed

        return composed(self, text)

    def _older(self, source: str) -> bool:
        """Whether a publication is known to be no newer than the federal storage table."""
        year = self.sources[source].year[:4]
        return year.isdecimal() and int(year) <= FEDERAL_YEAR

    def cite(self, rule: Rule | OutageRule) -> str:
        """The source with its trust, as a screen shows it."""
        return f"{self.sources[rule.source]} ({rule.trust.shown})"


def _wide(food: str) -> Sequence[Rule]:
    """The figures of the federal storage table, read when no closer one speaks."""
    from pantry_tui.reference.federal import figures_of

    return figures_of(food)


def _cuts() -> Sequence[OutageRule]:
    """The rows for power cuts, read when there was one."""
    from pantry_tui.reference.outage import load_outage

    return load_outage()


_FOOD = Packing(Food, group=Group, acidity=Acidity)
_SOURCE = Packing(Source)
_RULE = Packing(
    Rule, method=Method, state=State, climates=Climate, kind=Kind, status=Status, trust=Trust
)
_CROP = Packing(Crop, trust=Trust)


def pack_tables(tables: Tables) -> dict[str, Any]:
    """The tables as parts of the compiled file; the rules of each method are one of their own."""
    letters: dict[str, dict[str, Any]] = defaultdict(dict)
    packed = tuple(map(_FOOD.pack, tables.foods))
    for cells in packed:
        letters[cells[0][:1]][cells[0]] = cells
    parts = {
        "foods": packed,
        **{f"foods/{letter}": dict(found) for letter, found in letters.items()},
        "letters": tuple(letters),
        "names": name_keys(tables.foods),
        "sources": {key: _SOURCE.pack(source) for key, source in tables.sources.items()},
        "crops": {key: _CROP.pack(crop) for key, crop in tables.crops.items()},
        "rules": tuple(method.value for method in tables.rules),
    }
    for method, rules in tables.rules.items():
        parts[f"rules/{method}"] = tuple(map(_RULE.pack, rules))
    return parts


def unpack_tables(parts: Mapping[str, Any]) -> Tables:
    """The same tables, each part unpacked when it is first asked for."""

    def rules(part: str) -> tuple[Rule, ...]:
        return tuple(map(_RULE.unpack, parts[part]))

    return Tables(
        Rows(lambda: parts["foods"], _FOOD),
        Lazy(lambda: parts["sources"], _SOURCE.unpack),
        Lazy(lambda: {Method(name): f"rules/{name}" for name in parts["rules"]}, rules),
        Lazy(lambda: parts["crops"], _CROP.unpack),
        Lazy(lambda: parts["names"], int),
        Lazy(
            lambda: {letter: f"foods/{letter}" for letter in parts["letters"]},
            lambda part: Lazy(lambda: parts[part], _FOOD.unpack),
        ),
    )


@cache
def load_tables() -> Tables:
    """The tables that ship with the program."""
    parts = compiled()
    if "rules" in parts:
        return unpack_tables(parts)
    from pantry_tui.reference.reading import read_tables

    return read_tables(data_dir())
