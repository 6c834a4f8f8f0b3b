"""The ways that are published for keeping a food, each with what it gives, lasts and asks for; and
why the others are refused."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from pantry_tui.core.dataclass import dataclass, field
from pantry_tui.core.dates import span
from pantry_tui.core.keeping.rules import closeness
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.process_names import name_key
from pantry_tui.core.vessels import in_jars
from pantry_tui.core.words import Climate, Group, Kind, Method, State
from pantry_tui.errors import BadInput
from pantry_tui.reference.ambiguous import refuse_either
from pantry_tui.reference.batchwork import load_batchwork
from pantry_tui.reference.process import load_not_recommended, processes_named
from pantry_tui.reference.products import load_products
from pantry_tui.reference.tables import Tables
from pantry_tui.services.batchwork import jars
from pantry_tui.services.batchwork.calc.answer import Books
from pantry_tui.services.batchwork.calc.dry import food_of
from pantry_tui.services.batchwork.calc.jars import pounds_of
from pantry_tui.services.batchwork.calc.sentence import BASKETS, Sentence
from pantry_tui.services.batchwork.needs import Glut, needs, yields
from pantry_tui.services.batchwork.offered import instead_of_water
from pantry_tui.services.batchwork.prepared import prepared
from pantry_tui.services.lookup.shelf_life import keeps

if TYPE_CHECKING:
    from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock.ready import ready

_M = Method
_PLANT = (
    *(_M.BOILING_WATER, _M.PRESSURE, _M.JAM, _M.FREEZER_JAM, _M.FRIDGE_PICKLE, _M.VINEGAR_PICKLE),
    *(_M.LACTIC, _M.ALCOHOL_FERMENT, _M.DRIED, _M.SALTED, _M.FROZEN, _M.SUGAR, _M.INFUSION),
    *(_M.IN_OIL, _M.CELLAR, _M.FREEZE_DRIED, _M.FLAVOURED_VINEGAR),
)
_FLESH = (
    _M.PRESSURE, _M.DRIED, _M.SALTED, _M.HOT_SMOKED, _M.COLD_SMOKED, _M.FROZEN, _M.FRIDGE_PICKLE,
)  # fmt: skip
#: What is tried for a food of each group, in the order in which it is told.
WAYS: dict[Group, tuple[Method, ...]] = {
    Group.VEGETABLE: tuple(m for m in _PLANT if m not in (_M.JAM, _M.FREEZER_JAM, _M.SUGAR)),
    Group.FRUIT: tuple(m for m in _PLANT if m is not _M.IN_OIL),
    Group.HERB: (_M.DRIED, _M.FROZEN, _M.IN_OIL, _M.FLAVOURED_VINEGAR, _M.FREEZE_DRIED),
    Group.MEAT: _FLESH,
    Group.FISH: _FLESH,
    Group.EGG: (_M.FRESH, _M.FROZEN, _M.FRIDGE_PICKLE, _M.LIME, _M.FREEZE_DRIED),
    Group.DAIRY: (_M.FRESH, _M.FROZEN, _M.BOILING_WATER, _M.PRESSURE),
    Group.FAT: (_M.RENDERED_FAT, _M.FROZEN, _M.BOILING_WATER),
}
_REST = (_M.BOILING_WATER, _M.PRESSURE, _M.DRIED, _M.FROZEN, _M.FRESH)
#: Only a tested process for jars of this kind lets these stand on a shelf.
_TESTED = {
    _M.BOILING_WATER: ("boiling-water",),
    _M.VINEGAR_PICKLE: ("boiling-water",),
    _M.PRESSURE: ("dial", "weighted"),
}


#: Where a product is named, it is that which is made, and not the crop so called.
_AS_PRODUCT = (_M.JAM, _M.LACTIC, _M.FRIDGE_PICKLE, _M.SALTED)
#: What is only made of the crops for which a product is named.
_ONLY_AS_PRODUCT = (_M.VINEGAR_PICKLE, _M.FLAVOURED_VINEGAR, _M.ALCOHOL_FERMENT, _M.INFUSION)


@dataclass(frozen=True)
class Way:
    """One way to keep a food. `yield_`, `keeps` and `room` are words, None where nothing is
    published or known; `wanted` is what the outlook still asks for."""

    method: Method
    product: str
    allowed: bool
    yield_: str | None = None
    keeps: str | None = None
    room: str | None = None
    wanted: str | None = None
    needs: dict[str, str] = field(default_factory=dict)
    reasons: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()

    def as_data(self) -> dict[str, Any]:
        """The command contract's JSON."""
        return {
            "method": self.method.value,
            "product": self.product,
            "allowed": self.allowed,
            "yield": self.yield_,
            "keeps": self.keeps,
            "needs": dict(self.needs),
            "room": self.room,
            "wanted": self.wanted,
            "reasons": list(self.reasons),
            "cautions": list(self.cautions),
            "sources": list(self.sources),
        }


def told(way: Way) -> list[str]:
    """One way in words, a fact a line."""
    what = f"{way.method}, {way.product}"
    if not way.allowed:
        return [f"{what}: refused", *(f"  why: {one}" for one in way.reasons)]
    facts = {"gives": way.yield_, "keeps": way.keeps, "room": way.room, "wanted": way.wanted}
    lines = [what, *(f"  {name}: {text}" for name, text in facts.items() if text)]
    lines += [
        f"  {name}: {in_jars(text) if name == 'jars' else text}" for name, text in way.needs.items()
    ]
    lines += [f"  note: {one}" for one in way.reasons]
    return lines + [f"  care: {one}" for one in way.cautions]


def methods(
    tables: Tables, typed: str, p: Pantry | None = None, altitude_ft: int | None = None
) -> list[Way]:
    """All ways for "9 lb beetroot", the allowed ones first; with a pantry also whether its places
    have room and what its outlook wants. Raises BadInput for a food that is not in the tables."""
    books = Books(tables, load_batchwork(), altitude_ft)
    glut = _glut(books, typed)
    found = [way for method in _ways(glut.food) for way in _by(books, glut, method, p)]
    found += _never(tables, glut.food)
    return [way for way in found if way.allowed] + [way for way in found if not way.allowed]


def _glut(books: Books, typed: str) -> Glut:
    said = Sentence(typed)
    amount = said.weight() or said.take(BASKETS)
    volume = None if amount else said.amount()
    count = said.take(("",))
    said.finish()
    named = books.tables.index.named(said.words())
    if named is None or named.name != said.words():
        refuse_either(said.words(), books.tables)
    food = food_of(books, said)
    if food is not None and (odd := prepared(said.words(), food, None)[1]):
        raise BadInput(f"Not understood: {odd[0]!r}; ask for {food.name} without it.")
    if food is None:
        raise BadInput("Say what there is too much of: pantry-tui methods beets 9 lb.")
    if volume is not None or count is not None:
        raise BadInput(f"Say how much by weight: pantry-tui methods {food.name} 9 lb.")
    if amount is None:
        return Glut(food, None)
    pounds, _ = pounds_of(books, amount, food)
    return Glut(food, pounds)


def _ways(food: FoodFacts) -> tuple[Method, ...]:
    return WAYS.get(food.group, _REST)


def _by(books: Books, glut: Glut, method: Method, p: Pantry | None) -> Iterator[Way]:
    """What the food becomes by one method: its products, else itself."""
    made = load_products().get((glut.food.name, method), ())
    names = made if made and method in _AS_PRODUCT else (glut.food.name, *made)
    if method in _ONLY_AS_PRODUCT and glut.food.group is not Group.HERB:
        names = made
    for name in dict.fromkeys(names):
        way = _way(books, glut, method, name, p)
        if way is not None:
            yield way


def _way(books: Books, glut: Glut, method: Method, product: str, p: Pantry | None) -> Way | None:
    facts = books.tables.facts(product)
    assert facts is not None  # products.csv names foods of the tables
    against = _against(books.tables, facts, method)
    if against is not None:
        return Way(method, product, False, reasons=against[:1], sources=against[1:])
    spans, refused, sources = _lasts(books.tables, facts, method)
    if not spans and refused:
        return Way(method, product, False, reasons=refused, sources=sources)
    own = product != glut.food.name
    if not spans and not own and not _has_figures(books, glut.food, method):
        return None
    asked = needs(books, glut, method, facts)
    if p is not None and "jars" in asked.needs:
        count, size = asked.needs["jars"].split()
        if short := jars.short(p, size, int(count)):
            asked.needs["jars"] += f" ({short})"
    return Way(
        method,
        product,
        True,
        yields(books, glut, method, facts),
        "; ".join(spans) or "no published figure",
        _room(p, facts, method) if p is not None else None,
        _wanted(p, product) if p is not None else None,
        asked.needs,
        asked.reasons,
        asked.cautions,
        tuple(dict.fromkeys((*sources, *asked.sources))),
    )


def _has_figures(books: Books, food: FoodFacts, method: Method) -> bool:
    """Whether anything else is published for this food by this method."""
    if method is Method.DRIED:
        return food.name in books.batch.drying
    if method is Method.FROZEN:
        return any(row.food == food.name for row in books.batch.blanching)
    return False


def _against(tables: Tables, food: FoodFacts, method: Method) -> tuple[str, ...] | None:
    """(why, source) where no tested process allows it; None where nothing is against it."""
    canners = _TESTED.get(method)
    if canners is None:
        return None
    said = keeps(tables, method.value, food.name)
    rows = [row for row in processes_named(food.name) if row.canner in canners]
    low = method is Method.BOILING_WATER and not said["allowed"]
    if rows and not low:
        return None
    key = name_key(food.name)
    advice = next((one for one in load_not_recommended() if key in one.names), None)
    if advice is not None:
        instead = advice.alternative[:1].lower() + advice.alternative[1:]
        why = f"{advice.food}: {advice.reason}. Instead: {instead}."
        return why, f"{tables.sources[advice.source]} ({advice.trust.shown})"
    if low and said["reasons"]:
        return (f"{said['reasons'][0]} {instead_of_water(food)}",)
    return (f"No tested process for {food.name} ({' or '.join(canners)}) is known here.",)


def _lasts(
    tables: Tables, food: FoodFacts, method: Method
) -> tuple[list[str], tuple[str, ...], tuple[str, ...]]:
    """How long where, warmest first, each figure once; else why it may stand nowhere."""
    by_words: dict[str, list[str]] = {}
    refused: dict[str, None] = {}
    sources: dict[str, None] = {}
    for climate in (Climate.FREEZER,) if method is Method.FROZEN else Climate:
        said = keeps(tables, method.value, food.name, climate=climate.value)
        if not said["allowed"]:
            refused |= dict.fromkeys(said["reasons"][:1])
            continue
        quality = said["published"][Kind.QUALITY.value]
        words = [f"{_figure(quality)} at its best"] if quality else []
        words += _safe(tables, food, method, climate)
        if words and not _elsewhere(tables, food, method, climate):
            by_words.setdefault(" and ".join(words), []).append(climate.value)
            sources |= dict.fromkeys(said["sources"][:2])
    spans = [f"{', '.join(where)}: {words}" for words, where in by_words.items()]
    return spans, tuple(refused), tuple(sources)


def _safe(tables: Tables, food: FoodFacts, method: Method, climate: Climate) -> list[str]:
    """The safety figure in use, not its range: the strictest of the closest rows."""
    spoken = tables.book.speaking(food, method, State.SEALED, climate)
    fits = [rule for rule in spoken if rule.kind is Kind.SAFETY and rule.use is not None]
    if not fits:
        return []
    nearest = closeness(fits[0], food)
    rule = min((one for one in fits if closeness(one, food) == nearest), key=lambda one: one.days)
    return [f"{span(rule.use or 0, rule.unit)}, then discard"]


def _figure(found: list[Any]) -> str:
    """The published range: "3 to 4 months"."""
    least, most, unit = found
    if least is None or most is None or least == most:
        return span(most if most is not None else least, unit)
    return f"{least:g} to {span(most, unit)}"


def _elsewhere(tables: Tables, food: FoodFacts, method: Method, climate: Climate) -> bool:
    """Whether the figures are of another climate and only taken over for this one."""
    spoken = tables.book.speaking(food, method, State.SEALED, climate)
    return not any(climate in rule.climates for rule in spoken)


def _never(tables: Tables, food: FoodFacts) -> Iterator[Way]:
    """Other forms of it that publications advise against: mashed, as butter, in quarts."""
    words = set(name_key(food.name))
    for row in load_not_recommended():
        if row.food.startswith(("Method:", "Jar:")) or not words <= set(name_key(row.food)):
            continue
        if name_key(food.name) in row.names:
            continue  # said already, with the method that it is about
        instead = row.alternative[:1].lower() + row.alternative[1:]
        why = f"{row.food}: {row.reason}. Instead: {instead}."
        source = f"{tables.sources[row.source]} ({row.trust.shown})"
        how = _M.IN_OIL if "oil" in row.food else _M.PRESSURE
        yield Way(how, row.food.casefold(), False, reasons=(why,), sources=(source,))


# -- the household ---------------------------------------------------------------------------------


def _room(p: Pantry, food: FoodFacts, method: Method) -> str:
    """The places where it may stand and how many more they hold."""
    ready(p)
    sql = "SELECT place, sum(n) FROM lines GROUP BY place"
    held = dict(p.store.db.execute(sql).fetchall())
    paths, found = p.place_paths(), []
    for place in p.places.values():
        said = keeps(p.tables, method.value, food.name, climate=place.climate.value)
        published = any(said["published"].values())
        if place.gone or not said["allowed"] or not published:
            continue
        if _elsewhere(p.tables, food, method, place.climate):
            continue
        if place.capacity is None:
            found.append(f"{paths[place.id]}: no limit said")
        else:
            left = max(0, place.capacity - held.get(place.id, 0))
            found.append(f"{paths[place.id]}: {left} of {place.capacity} free")
    return "; ".join(found) or "no place of yours suits it"


def _wanted(p: Pantry, product: str) -> str | None:
    """What the outlook still wants of it before the next harvest."""
    from pantry_tui.services.plan.outlook import outlook

    view = p.once("outlook for methods", lambda: outlook(p))
    row = next((one for one in view.foods if one.food == product), None)
    if row is None or row.put_up is None:
        return None
    return f"{row.put_up} {row.container}".strip() if row.put_up else "nothing more of it"
