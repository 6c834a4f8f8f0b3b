"""Foods, sources and keeping rules: data/*.csv as frozen tables, compiled or read once; a bad
cell is named by file, row and column."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cache, cached_property
from typing import TYPE_CHECKING, Any

from pantry_tui.core import scope
from pantry_tui.core.dataclass import dataclass
from pantry_tui.core.keeping.rules import Rule, Rulebook, Status
from pantry_tui.core.model import Crop, FoodFacts
from pantry_tui.core.safety.outage import OutageRule
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from pantry_tui.errors import DataError
from pantry_tui.paths import data_dir
from pantry_tui.reference.compiled import compiled
from pantry_tui.reference.names import Food, FoodIndex, name_keys
from pantry_tui.reference.packing import Lazy, Packing, Rows

if TYPE_CHECKING:
    from pathlib import Path

UNITS = ("hours", "days", "weeks", "months", "years")


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
        return Rulebook(self.rules, self.crops, cuts=_cuts)

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

    def cite(self, rule: Rule | OutageRule) -> str:
        """The source with its trust, as a screen shows it."""
        return f"{self.sources[rule.source]} ({rule.trust.shown})"


def _cuts() -> Sequence[OutageRule]:
    """The rows for power cuts, read when there was one."""
    from pantry_tui.reference.outage import load_outage

    return load_outage()


class _Row:
    """A CSV row that can say where a bad cell stands."""

    def __init__(self, path: Path, number: int, cells: dict[str, str]) -> None:
        self.path, self.number, self.cells = path, number, cells

    def bad(self, column: str, why: str) -> DataError:
        return DataError(f"{self.path.name} row {self.number}, column {column}: {why}.")

    def text(self, column: str, *, need: bool = False) -> str:
        value = (self.cells.get(column) or "").strip()
        if need and not value:
            raise self.bad(column, "is empty and must not be")
        return value

    def word(self, column: str, kind: Any) -> Any:
        value = self.text(column, need=True)
        try:
            return kind(value)
        except ValueError:
            raise self.bad(column, f"{value!r} is not one of {', '.join(kind)}") from None

    def number_or_none(self, column: str) -> float | None:
        value = self.text(column)
        if not value:
            return None
        try:
            number = float(value)
        except ValueError:
            raise self.bad(column, f"{value!r} is not a number") from None
        if not number == number or abs(number) > 10_000:
            raise self.bad(column, f"{value!r} is out of range")
        return number

    def words(self, column: str) -> tuple[str, ...]:
        return tuple(part.strip() for part in self.text(column).split(";") if part.strip())


def _rows(path: Path, columns: tuple[str, ...]) -> list[_Row]:
    import csv

    try:
        with path.open(encoding="utf-8", newline="") as handle:
            reader = csv.DictReader(handle)
            missing = [c for c in columns if c not in (reader.fieldnames or ())]
            if missing:
                raise DataError(f"{path.name} row 1: column {missing[0]} is missing.")
            rows = [_Row(path, n, cells) for n, cells in enumerate(reader, start=2)]
    except OSError as error:
        raise DataError(f"{path.name} cannot be read: reinstall the program.") from error
    for row in rows:
        if None in row.cells:
            raise row.bad(columns[-1], "has cells to its right that no column names")
    return rows


def _sources(folder: Path) -> dict[str, Source]:
    found: dict[str, Source] = {}
    columns = ("source_id", "title", "publisher", "year", "url", "note")
    for row in _rows(folder / "sources.csv", columns):
        key = row.text("source_id", need=True)
        if key in found:
            raise row.bad("source_id", f"{key!r} stands twice")
        found[key] = Source(key, *(row.text(column) for column in columns[1:]))
    return found


def _one_of(row: _Row, column: str, words: tuple[str, ...]) -> str:
    found = row.text(column, need=True)
    if found not in words:
        raise row.bad(column, f"{found!r} is not one of {', '.join(words)}")
    return found


def _foods(folder: Path) -> tuple[Food, ...]:
    found = []
    columns = (
        *("name", "aliases", "group", "acidity", "classes", "judged", "says", "parent", "role"),
    )
    for row in _rows(folder / "foods.csv", columns):
        month = row.number_or_none("harvest_month")
        if month is not None and month not in range(1, 13):
            raise row.bad("harvest_month", f"{month:g} is not a month")
        found.append(
            Food(
                row.text("name", need=True),
                row.words("aliases"),
                row.word("group", Group),
                row.word("acidity", Acidity),
                frozenset(row.words("classes")),
                row.number_or_none("servings_per_pint"),
                None if month is None else int(month),
                _one_of(row, "judged", ("name", "group")) == "name",
                row.word("says", Method).value if row.text("says") else "",
                row.text("parent"),
                row.text("role"),
            )
        )
    return tuple(found)


def _rule(row: _Row, sources: dict[str, Source]) -> Rule:
    source = row.text("source_id", need=True)
    if source not in sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    kind: Kind = row.word("kind", Kind)
    use = row.number_or_none("use")
    unit = row.text("unit")
    if use is not None and unit not in UNITS:
        raise row.bad("unit", f"{unit!r} is not one of {', '.join(UNITS)}")
    if use is not None and (use < 0 or kind is Kind.REFUSE):
        raise row.bad("use", "must not be negative, nor stand on a refusal")
    climates = row.words("climate")
    for climate in climates:
        if climate not in tuple(Climate):
            raise row.bad("climate", f"{climate!r} is not a climate")
    return Rule(
        id=row.text("rule_id", need=True),
        method=row.word("method", Method),
        food=row.text("food", need=True),
        state=row.word("state", State),
        climates=frozenset(Climate(c) for c in climates),
        kind=kind,
        least=row.number_or_none("life_min"),
        most=row.number_or_none("life_max"),
        use=use,
        unit=unit,
        temp_f_max=row.number_or_none("temp_f_max"),
        status=row.word("status", Status),
        wording=row.text("wording", need=True),
        source=source,
        trust=row.word("trust", Trust),
        temp_f_min=row.number_or_none("temp_f_min"),
    )


def _crops(folder: Path, sources: dict[str, Source], known: set[str]) -> dict[str, Crop]:
    columns = ("food", "low_f", "high_f", "freezing_f", "chilling_f", "q10", "source_id", "trust")
    found: dict[str, Crop] = {}
    for row in _rows(folder / "cellar.csv", columns):
        food, source = row.text("food", need=True), row.text("source_id", need=True)
        if food not in known or food in found:
            raise row.bad("food", f"{food!r} is no food of foods.csv, or stands twice")
        if source not in sources:
            raise row.bad("source_id", f"{source!r} is not in sources.csv")
        low, high, q10 = (row.number_or_none(c) for c in ("low_f", "high_f", "q10"))
        if low is None or high is None or low > high:
            raise row.bad("high_f", "a range from low_f to high_f is needed")
        if q10 is None or not 2 <= q10 <= 3:
            raise row.bad("q10", "must lie between 2 and 3")
        found[food] = Crop(
            food,
            low,
            high,
            row.number_or_none("freezing_f"),
            row.number_or_none("chilling_f"),
            q10,
            row.text("gives_ethylene"),
            row.text("hurt_by_ethylene"),
            source,
            row.word("trust", Trust),
        )
    return found


def _keys(foods: Iterable[Food]) -> set[str]:
    """What the food column of a rule may hold."""
    found = {"*", "class:vacuum-packed", "class:vacuum-fish"}
    found |= {f"group:{group}" for group in Group}
    for food in foods:
        found |= {food.name} | {f"class:{one}" for one in food.classes}
    return found


def read_tables(folder: Path) -> Tables:
    """All tables under `folder`, checked. Raises DataError naming file, row and column."""
    sources = _sources(folder)
    foods = _foods(folder)
    known = _keys(foods)
    ruled = known | {f"acid:{group}" for group in Group}
    rules: dict[Method, list[Rule]] = defaultdict(list)
    seen: set[str] = set()
    columns = (
        *("rule_id", "method", "food", "state", "climate", "kind", "use", "unit", "status"),
        *("temp_f_min", "temp_f_max"),
    )
    for row in _rows(folder / "keeping.csv", columns):
        rule = _rule(row, sources)
        if rule.id in seen:
            raise row.bad("rule_id", f"{rule.id!r} stands twice")
        for key in (one for name in rule.food.split(";") for one in scope.parts(name)):
            if key not in ruled:
                raise row.bad("food", f"{key!r} is no food, class:, group: or acid: of foods.csv")
        seen.add(rule.id)
        rules[rule.method].append(rule)
    crops = _crops(folder, sources, known)
    by_method = {method: tuple(found) for method, found in rules.items()}
    return Tables(foods, sources, by_method, crops)


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
    return unpack_tables(parts) if "rules" in parts else read_tables(data_dir())
