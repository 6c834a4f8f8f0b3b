"""Salt: brines by either basis, dry salting, and the strength once the vegetables gave water."""

from __future__ import annotations

from pantry_tui.core.batchwork import brine as salt
from pantry_tui.core.text import begun
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.calc.answer import (
    NOTHING,
    Answer,
    Books,
    Line,
    other_weight,
    span,
    spoons,
    tidy,
    weigh,
)
from pantry_tui.services.batchwork.calc.sentence import Item, Sentence

WATER_IS = "a millilitre of water taken as a gram"
_BASES = {"water": "of the water", "total": "of the finished brine", "all": "of all of it"}


def _grams(item: Item) -> float:
    """Of water a millilitre is a gram. Raises nothing: `Sentence.amount` gave it."""
    return item.base


def _basis(said: Sentence) -> str | None:
    for name, words in (
        ("all", ("equilibrium", "everything", "vegetable and water", "of all")),
        ("total", ("by total weight", "by total", "total weight", "total", "w/w", "brine weight")),
        ("water", ("by water weight", "by water", "water weight")),
    ):
        if said.has(*words):
            return name
    return None


def brine(books: Books, said: Sentence) -> Answer:
    """Salt for water, and for vegetables in it where they are named."""
    basis = _basis(said)
    percent = said.share()
    water = said.amount("water") or said.take(_volumes())
    vegetables = said.weight() or None
    if water is None and vegetables is not None:
        water, vegetables = vegetables, None
    said.finish()
    food = _food(books, said, ["water", "salt", "brine", "pickle", "vegetables", "by"])
    if water is None:
        raise BadInput("Say how much water: calc brine 500 g water 3 %.")
    if percent is None:
        raise BadInput(_ask_share(books, food))
    water_g, vegetables_g = _grams(water), vegetables.base if vegetables else 0.0
    chosen = basis or ("all" if vegetables else "water")
    lines = _three(water_g, vegetables_g, percent, water.unit)
    grams = lines[chosen][0]
    first = lines[chosen][1]
    also = [line for name, (_, line) in lines.items() if name != chosen]
    also += [
        other_weight("salt", grams, water.unit),
        spoons(books, grams),
        _strength(grams, water_g, vegetables_g),
        *_published(books, food),
        *_old_table(books, percent, chosen),
    ]
    shown = f"{percent:g} % by water weight" if chosen == "water" else f"{percent:g} %"
    return Answer(
        first,
        tuple(also),
        (begun(f"{WATER_IS}; {percent:g} % is taken {_BASES[chosen]}."),),
        _cautions(books, food, grams, water_g, vegetables_g),
        {"salt": shown.replace(" ", "", 1)},
    )


def _volumes() -> tuple[str, ...]:
    from pantry_tui.core.batchwork.kitchen import MILLILITRES

    return tuple(MILLILITRES)


def _three(
    water_g: float, vegetables_g: float, percent: float, like: str
) -> dict[str, tuple[float, Line]]:
    """The salt by each basis that can be reckoned."""
    found = {}
    grams = salt.by_water(water_g, percent)
    how = f"{water_g:.4g} g water x {percent:g} / 100"
    found["water"] = (grams, weigh("salt, by water weight", grams, like, how))
    if percent < salt.SATURATED:
        grams = salt.by_total(water_g, percent)
        how = f"{water_g:.4g} g water x {percent:g} / (100 - {percent:g})"
        found["total"] = (grams, weigh("salt, by total weight of the brine", grams, like, how))
    if vegetables_g:
        grams = salt.by_all(water_g, vegetables_g, percent)
        how = f"({water_g:.4g} g water + {vegetables_g:.4g} g vegetables) x {percent:g} / 100"
        found["all"] = (grams, weigh("salt, by water and vegetables", grams, like, how))
    return found


def _strength(grams: float, water_g: float, vegetables_g: float) -> Line:
    every = f"{grams:.4g} / ({grams:.4g} + {water_g + vegetables_g:.4g}) g"
    what = "strength once it has spread through all" if vegetables_g else "strength by total weight"
    return Line(what, tidy(salt.of_total(grams, water_g + vegetables_g)), "%", every)


def _old_table(books: Books, percent: float, basis: str) -> list[Line]:
    row = books.batch.figures.get(f"brine-{percent:g}")
    if row is None or basis == "all":
        return []
    what = f"an old table, {row.wording}"
    return [Line(what, row.low, row.unit, "as printed", books.cite(row))]


def _food(books: Books, said: Sentence, plain: list[str]) -> str:
    words = " ".join(word for word in said.words().split() if word not in plain)
    if not words:
        return ""
    found = books.tables.index.find(words)
    if found is None:
        raise BadInput(f"{words[:40]!r} is no food of the tables, and no word of this sum.")
    return found.name


def _published(books: Books, food: str) -> list[Line]:
    if not food:
        return []
    rows = [
        row
        for topic in ("salt", "salt spoons", "cover brine", "brine bag", "pickle brine")
        for row in books.batch.about(topic, food)
    ]
    if not rows:
        return [Line(f"published salt for {food}", None, "", NOTHING, NOTHING)]
    return [
        Line(
            f"published for {food}: {row.wording}",
            span(row.low, row.high),
            row.unit,
            "as printed",
            books.cite(row),
        )
        for row in rows
    ]


def _ask_share(books: Books, food: str) -> str:
    rows = books.batch.about("salt", food) if food else ()
    if rows:
        return f"Say how strong: {rows[0].low:g} to {rows[0].high:g} {rows[0].unit} is published."
    what = food or "a brine of no food"
    return f"Say how strong, like 3 %: no figure is published for {what}."


def _cautions(
    books: Books, food: str, grams: float, water_g: float, vegetables_g: float
) -> tuple[str, ...]:
    """Too little salt for what is published is named; more is a matter of taste."""
    found = []
    rows = books.batch.about("salt", food) if food else ()
    share = 100 * grams / (water_g + vegetables_g)
    if rows and vegetables_g and share < rows[0].low:
        found.append(
            f"{share:.3g} % is less than the published {rows[0].low:g} % for {food}: "
            "too little salt lets the wrong germs grow."
        )
    if water_g and salt.of_total(grams, water_g) >= salt.SATURATED:
        found.append(f"More than {salt.SATURATED:g} % does not dissolve.")
    return tuple(found)


def drysalt(books: Books, said: Sentence) -> Answer:
    """Salt rubbed into vegetables that make their own brine."""
    heavy = said.has("heavy", "heavily")
    percent, item = said.share(), said.weight()
    volume = said.take(_volumes())
    said.finish()
    food = _food(books, said, ["salt", "dry", "shredded", "vegetables"])
    if item is None:
        hint = "weigh them" if volume else "calc drysalt 5 lb cabbage"
        raise BadInput(f"Say what the vegetables weigh: {hint}.")
    rows = (
        (books.figure("salt-heavy"),) if heavy else books.batch.about("salt", food) if food else ()
    )
    if percent is None and not rows:
        raise BadInput(_ask_share(books, food))
    used = rows[0].low if percent is None else percent
    source = books.cite(rows[0]) if rows and percent is None else None
    grams = salt.dry(item.base, used)
    how = f"{item.base:.5g} g x {used:g} / 100"
    first = weigh("salt", grams, item.unit, how, *([source] if source else []))
    also = [other_weight("salt", grams, item.unit), spoons(books, grams)]
    if percent is None and rows[0].high != rows[0].low:
        most = salt.dry(item.base, rows[0].high)
        how = f"{item.base:.5g} g x {rows[0].high:g} / 100"
        also.append(weigh("salt, the upper end", most, item.unit, how, books.cite(rows[0])))
    also.append(
        Line(
            "strength once it has spread through all",
            tidy(salt.of_total(grams, item.base)),
            "%",
            "salt / (salt + vegetables)",
        )
    )
    also += _published(books, food)
    return Answer(
        first,
        tuple(also),
        (begun(rows[0].wording) + ".",) if rows and percent is None else (),
        _cautions(books, food, grams, 0.0, item.base),
        {"salt": f"{used:g}%"},
    )
