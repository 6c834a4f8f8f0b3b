"""How many jars or packs a crop fills, and the room that is left above the food."""

from __future__ import annotations

from pantry_tui.core.batchwork.balance import full
from pantry_tui.core.batchwork.kitchen import GRAMS
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.jars import JARS
from pantry_tui.core.words import Group, Method
from pantry_tui.errors import BadInput
from pantry_tui.reference.batchwork import Figure
from pantry_tui.reference.process import processes_named
from pantry_tui.reference.yields import Yield, load_yields
from pantry_tui.services.batchwork.calc.answer import Answer, Books, Line, span, tidy
from pantry_tui.services.batchwork.calc.dry import food_of
from pantry_tui.services.batchwork.calc.sentence import BASKETS, Item, Sentence
from pantry_tui.services.plan.servings import per_pint

_POUND = float(GRAMS["lb"])
#: Which way is meant where none is said, the first that has a figure.
_USUAL = (Method.BOILING_WATER, Method.PRESSURE, Method.VINEGAR_PICKLE, Method.LACTIC)


def pounds_of(books: Books, item: Item, food: FoodFacts) -> tuple[float, str]:
    """What a typed amount weighs, in pounds, and where a basket's weight is from. Raises BadInput
    for a volume, or a basket of which no weight is published."""
    if item.unit in GRAMS:
        return item.base / _POUND, ""
    if item.unit in BASKETS:
        rows = books.batch.about("container", food.name)
        if rows:
            share = 1.0 if item.unit == "bushel" else 0.25
            return item.value * rows[0].low * share, books.cite(rows[0])
        raise BadInput(f"No weight of a {item.unit} of {food.name} is published: give pounds.")
    raise BadInput(f"Give {food.name} by weight, like 20 lb, or by the bushel.")


def yield_of(food: str, how: Method | None) -> tuple[Yield, Method] | None:
    """The published yield of a food kept that way, or in the usual one; of a food that is made
    from it where it has none of its own."""
    table = load_yields()
    for method in (how,) if how else (*_USUAL, Method.FROZEN, Method.DRIED):
        if (found := table.get((food, method))) is not None:
            return found, method
    made = [(one, m) for (_, m), one in table.items() if one.crop == food and m in (how, *_USUAL)]
    return made[0] if made and (how is None or made[0][1] is how) else None


def jar_count(books: Books, said: Sentence) -> Answer:
    """Jars out of a crop, or the crop that so many jars take."""
    how = _method(said)
    jar_word = next((one for one in JARS if said.has(f"{one} jars", f"{one}s", one)), None)
    amount = said.take((*GRAMS, *BASKETS))
    wanted = said.take(("pint", "quart"), "jars", "jar", "bags", "of") or said.take(
        ("pint", "quart")
    )
    said.finish()
    food = food_of(books, said, "jars", "jar", "yield", "full", "fresh", "raw", "bags", "from")
    if food is None:
        raise BadInput("Say what: calc yield 20 lb tomatoes.")
    found = yield_of(food.name, how)
    if found is None:
        way = f", {how}" if how else ""
        nothing = f"No yield of {food.name}{way} is published here."
        return Answer(Line("jars", None, "", nothing, ""))
    row, method = found
    if amount is None and wanted is not None:
        return _crop_for(books, row, method, wanted)
    if amount is None:
        raise BadInput("Say how much: calc yield 20 lb tomatoes, or calc yield 7 quarts tomatoes.")
    pounds, basket = pounds_of(books, amount, food)
    jar = jar_word if jar_word in ("half-pint", "pint", "quart") else row.unit
    return _jars(books, row, method, jar, pounds, basket)


def _method(said: Sentence) -> Method | None:
    for text, how in (
        ("boiling-water", Method.BOILING_WATER), ("boiling water", Method.BOILING_WATER),
        ("pressure", Method.PRESSURE), ("frozen", Method.FROZEN), ("freezing", Method.FROZEN),
        ("freezer", Method.FROZEN), ("dried", Method.DRIED), ("drying", Method.DRIED),
        ("pickled", Method.VINEGAR_PICKLE), ("fermented", Method.LACTIC),
    ):  # fmt: skip
        if said.has(text):
            said.has("canned", "canner")
            return how
    said.has("canned", "canner")
    return None


def _jars(books: Books, row: Yield, method: Method, jar: str, pounds: float, basket: str) -> Answer:
    each = row.per_pint * JARS[jar] / JARS["pint"]
    share = JARS[jar] / JARS[row.unit]
    source = books.cite(row) + (f"; {basket}" if basket else "")
    unit = f"{jar} jars" if method not in (Method.FROZEN, Method.DRIED) else f"{jar}s"
    how = f"{pounds:.4g} lb / {tidy(each):g} lb a {jar}"
    first = Line(f"{row.food}, {method}", full(pounds, each), unit, how, source)
    low, high = full(pounds, row.most * share), full(pounds, row.least * share)
    also = [
        Line("published range", span(low, high), unit, "the range of weights a jar", source),
        Line("left over", tidy(pounds % each), "lb", "eat it, or fill a smaller jar"),
    ]
    return Answer(first, tuple(also), _weak(row))


def _weak(row: Yield) -> tuple[str, ...]:
    notes = (f"{row.food}: {row.wording}.",) if row.wording else ()
    return (*notes, "An estimate: the figure is weak.") if row.weak else notes


def _crop_for(books: Books, row: Yield, method: Method, wanted: Item) -> Answer:
    each = row.per_pint * JARS[wanted.unit] / JARS["pint"]
    share = JARS[wanted.unit] / JARS[row.unit]
    how = f"{wanted.value:g} x {tidy(each):g} lb a {wanted.unit}"
    what = f"{row.crop} for {wanted} of {row.food}, {method}"
    first = Line(what, tidy(wanted.value * each), "lb", how, books.cite(row))
    low, high = wanted.value * row.least * share, wanted.value * row.most * share
    also = (Line("published range", span(low, high), "lb", "weight a jar", books.cite(row)),)
    return Answer(first, also, _weak(row))


# -- headspace -------------------------------------------------------------------------------------


def headspace(books: Books, said: Sentence) -> Answer:
    """The room above the food: of the tested process first, else by the method."""
    jar = next((one for one in JARS if said.has(f"{one} jars", f"{one} jar", f"{one}s", one)), "")
    if not jar and (metric := said.metric_jars()) is not None:
        jar = metric.unit
    narrow, wide = said.has("narrow mouth", "narrow"), said.has("wide mouth", "wide")
    if said.has("freezing", "frozen", "freezer", "freeze"):
        return _frozen_head(books, said, jar, narrow, wide)
    method = _head_method(said)
    said.finish()
    food = food_of(books, said, "headspace", "canned", "jars", "jar", "canner", "water")
    lines = _of_process(books, food, method, jar) if food else []
    lines += _of_method(books, food, method)
    if not lines:
        return Answer(Line("headspace", None, "in", "No published figure is known here.", ""))
    record = {"headspace": f"{lines[0].answer} in"}
    return Answer(lines[0], tuple(lines[1:]), record=record)


def _head_method(said: Sentence) -> Method | None:
    for words, how in (
        (("boiling-water canned", "boiling-water", "boiling water"), Method.BOILING_WATER),
        (("pressure canned", "pressure"), Method.PRESSURE),
        (("vinegar pickle", "pickles", "pickled"), Method.VINEGAR_PICKLE),
        (("jams", "jellies", "jam", "jelly"), Method.JAM),
    ):
        if said.has(*words):
            return how
    return None


def _of_process(books: Books, food: FoodFacts, how: Method | None, jar: str) -> list[Line]:
    """Every headspace of the tested processes for it, widest first, each said once."""
    found: dict[tuple[float, str], Line] = {}
    for row in processes_named(food.name):
        in_water = row.canner == "boiling-water"
        if row.headspace_in is None or (jar and row.jar != jar):
            continue
        if how is not None and in_water is not (how is not Method.PRESSURE):
            continue
        what = f"headspace, {row.food}, {row.pack} pack, {row.jar}, {row.canner}"
        line = Line(what, tidy(row.headspace_in), "in", "as printed", books.cite(row))
        found.setdefault((row.headspace_in, row.canner), line)
    return [found[key] for key in sorted(found, reverse=True)]


def _of_method(books: Books, food: FoodFacts | None, how: Method | None) -> list[Line]:
    keys = [str(how)] if how else []
    if food is not None and how in (None, Method.PRESSURE):
        keys.append(food.name)
    if food is not None and food.group is Group.DRINK:
        keys.append("juice")
    rows = books.batch.about("headspace", *keys) if keys else ()
    return [_head_line(books, row) for row in rows]


def _head_line(books: Books, row: Figure) -> Line:
    what = f"headspace, {row.wording}"
    return Line(what, span(row.low, row.high), "in", "the general rule", books.cite(row))


def _frozen_head(books: Books, said: Sentence, jar: str, narrow: bool, wide: bool) -> Answer:
    kind = "dry" if said.has("dry pack", "dry") else "juice" if said.has("juice") else "liquid"
    said.has("liquid pack", "liquid", "syrup")
    said.finish()
    rows = [
        row
        for row in books.batch.about("freezing headspace", kind)
        if (not jar or f"-{jar}" in row.id)
        and (not narrow or "narrow" in row.id)
        and (not wide or "wide" in row.id)
    ]
    if not rows:
        return Answer(Line("headspace", None, "in", "Published for pints and quarts only.", ""))
    lines = [
        Line(f"{kind} pack, {row.wording}", tidy(row.low), "in", "as printed", books.cite(row))
        for row in sorted(rows, key=lambda row: -row.low)
    ]
    notes = ("Jars with straight sides: glass that narrows breaks.",) if not wide else ()
    return Answer(lines[0], tuple(lines[1:]), notes)


# -- freezing packs --------------------------------------------------------------------------------


def packs(books: Books, said: Sentence) -> Answer:
    """Packs for one meal of the family each, and what a freezer takes in a day."""
    people = said.take(("",), "people", "persons", "at", "eaters") or None
    amount = said.take((*GRAMS, *BASKETS))
    room = said.take(("cubic ft",))
    said.finish()
    food = food_of(
        books, said, "people", "packs", "pack", "frozen", "freezing", "persons", "family"
    )
    if food is None or amount is None:
        raise BadInput("Say what and how much: calc packs 10 lb broccoli 4 people.")
    found = yield_of(food.name, Method.FROZEN)
    if found is None:
        nothing = f"No yield of frozen {food.name} is published here."
        return Answer(Line("packs", None, "", nothing, ""))
    row = found[0]
    pounds, basket = pounds_of(books, amount, food)
    eaters = int(people.value) if people else books.people or 2
    pints = pounds / row.per_pint
    source = books.cite(row) + (f"; {basket}" if basket else "")
    servings = per_pint(books.tables.index.find(food.name))
    each = eaters / servings
    how = f"{pints:.3g} pints / ({eaters} people / {servings:g} servings a pint)"
    first = Line("packs, one meal each", full(pints, each), "packs", how, source)
    also = [
        Line("in each pack", tidy(each), "pint", f"{eaters} people / {servings:g} servings a pint",
             "servings a pint are an estimate"),
        Line("in all", tidy(pints), "pint", f"{pounds:.4g} lb / {row.per_pint:g}", source),
    ]  # fmt: skip
    load = books.figure("freezer-load")
    cubic = room.value if room else 1.0
    what = f"to freeze in a day in {cubic:g} cubic ft"
    also.append(Line(what, tidy(load.low * cubic), "lb", load.wording, books.cite(load)))
    return Answer(first, tuple(also), _weak(row))
