"""The tables read from data/*.csv and checked: what `tables.load_tables` gives where nothing is
compiled, and what is compiled."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import TYPE_CHECKING

from pantry_tui.core import scope
from pantry_tui.core.keeping.rules import Rule, Status
from pantry_tui.core.model import Crop
from pantry_tui.core.words import Acidity, Climate, Group, Kind, Method, State, Trust
from pantry_tui.reference.csvrows import Row, one_of, read_rows
from pantry_tui.reference.names import Food
from pantry_tui.reference.tables import Source, Tables

if TYPE_CHECKING:
    from pathlib import Path

_UNITS = ("hours", "days", "weeks", "months", "years")


def _sources(folder: Path) -> dict[str, Source]:
    found: dict[str, Source] = {}
    columns = ("source_id", "title", "publisher", "year", "url", "note")
    for row in read_rows(folder / "sources.csv", columns):
        key = row.text("source_id", need=True)
        if key in found:
            raise row.bad("source_id", f"{key!r} stands twice")
        found[key] = Source(key, *(row.text(column) for column in columns[1:]))
    return found


def _foods(folder: Path) -> tuple[Food, ...]:
    found = []
    columns = (
        *("name", "aliases", "group", "acidity", "classes", "judged", "says", "parent", "role"),
        "usual_methods",
    )
    for row in read_rows(folder / "foods.csv", columns):
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
                one_of(row, "judged", ("name", "group")) == "name",
                row.word("says", Method).value if row.text("says") else "",
                row.text("parent"),
                row.text("role"),
                row.words("usual_methods"),
                row.number_or_none("servings_per_lb"),
                row.number_or_none("each_lb"),
            )
        )
    return tuple(found)


def _rule(row: Row, sources: dict[str, Source]) -> Rule:
    source = row.text("source_id", need=True)
    if source not in sources:
        raise row.bad("source_id", f"{source!r} is not in sources.csv")
    kind: Kind = row.word("kind", Kind)
    use = row.number_or_none("use")
    unit = row.text("unit")
    if use is not None and unit not in _UNITS:
        raise row.bad("unit", f"{unit!r} is not one of {', '.join(_UNITS)}")
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
    for row in read_rows(folder / "cellar.csv", columns):
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


def rule_keys(foods: Iterable[Food]) -> set[str]:
    """What the food column of a rule may hold."""
    # What core.keeping.packs puts on the food of a pack.
    found = {"*", "class:vacuum-packed", "class:vacuum-fish", "class:cut", "class:half-dried"}
    found |= {"class:canned-acid", "class:canned-low", "class:canned-meat", "class:low-sugar"}
    found |= {f"{kind}:{group}" for group in Group for kind in ("group", "acid", "low")}
    for food in foods:
        found |= {food.name} | {f"class:{one}" for one in food.classes}
    return found


def read_tables(folder: Path) -> Tables:
    """All tables under `folder`, checked. Raises DataError naming file, row and column."""
    sources = _sources(folder)
    foods = _foods(folder)
    known = rule_keys(foods)
    rules: dict[Method, list[Rule]] = defaultdict(list)
    seen: set[str] = set()
    columns = (
        *("rule_id", "method", "food", "state", "climate", "kind", "use", "unit", "status"),
        *("temp_f_min", "temp_f_max"),
    )
    for row in read_rows(folder / "keeping.csv", columns):
        rule = _rule(row, sources)
        if rule.id in seen:
            raise row.bad("rule_id", f"{rule.id!r} stands twice")
        for key in (one for name in rule.food.split(";") for one in scope.parts(name)):
            if key not in known:
                raise row.bad("food", f"{key!r} is no food, class:, group: ... of foods.csv")
        seen.add(rule.id)
        rules[rule.method].append(rule)
    crops = _crops(folder, sources, known)
    by_method = {method: tuple(found) for method, found in rules.items()}
    return Tables(foods, sources, by_method, crops)
