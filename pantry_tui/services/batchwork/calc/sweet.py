"""Syrups, by weight and as printed by the cup."""

from __future__ import annotations

from pantry_tui.core.batchwork.balance import sugar_for
from pantry_tui.core.batchwork.kitchen import MILLILITRES, to
from pantry_tui.errors import BadInput
from pantry_tui.reference.batchwork import Figure
from pantry_tui.services.batchwork.calc.answer import Answer, Books, Line, other_weight, tidy, weigh
from pantry_tui.services.batchwork.calc.salt import WATER_IS
from pantry_tui.services.batchwork.calc.sentence import Item, Sentence

#: Longest name first: "very light" holds "light".
_NAMES = {"very light": 10, "very heavy": 50, "light": 20, "medium": 30, "heavy": 40}
_LOADS = {"quart": ("quarts", 7), "pint": ("pints", 9)}


def syrup(books: Books, said: Sentence) -> Answer:
    """Sugar for a syrup: by weight, or for so many jars as printed."""
    freezing = said.has("freezing", "frozen", "freezer", "freeze")
    percent = said.share()
    named = next((name for name in _NAMES if said.has(name)), None)
    if percent is None and named is not None:
        percent = float(_NAMES[named])
    if percent is None:
        raise BadInput("Say how sweet: very light, light, medium, heavy, very heavy, or 30 %.")
    water = said.amount("water")
    jars = None
    if water is None:
        jars = said.take(_LOADS, "jars", "jar") or said.take(("quart", "pint"))
        jars = jars or said.metric_jars("jars", "jar")
        water = said.amount() if jars is None else None
    said.finish()
    if jars is not None and jars.unit not in _LOADS:
        raise BadInput("Sugar is printed for pints and quarts: say how much water instead.")
    if jars is not None and not freezing:
        return _for_jars(books, percent, jars)
    unit = water.unit if water else "quart"
    grams = water.base if water else float(MILLILITRES["quart"])
    sugar = sugar_for(grams, percent)
    how = f"{grams:.4g} g water x {percent:g} / (100 - {percent:g}); {WATER_IS}"
    first = weigh("sugar", sugar, unit, how)
    cups = Line(
        "sugar by the cup, rough: weigh it where you can",
        tidy(round(sugar / books.figure("spoon-sugar-cup").low, 1)),
        "cup",
        "200 g of white sugar a cup",
        books.cite(books.figure("spoon-sugar-cup")),
    )
    also = [other_weight("sugar", sugar, unit), cups, *_printed(books, percent, grams)]
    notes = () if water else ("For a US quart of water: no amount was said.",)
    record = {"sugar": f"{percent:g}%"}
    return Answer(first, tuple(also), (*notes, _LABELS), _SYRUP, record)


_LABELS = "The printed cups are rounded: a syrup called 20 % holds about 17 % by weight."
_SYRUP = ("Sugar keeps colour and shape: the process and its time are the same without it.",)


def _printed(books: Books, percent: float, water_g: float) -> list[Line]:
    row = books.batch.figures.get(f"syrup-freeze-{percent:g}")
    if row is None:
        return [Line("printed syrup of that strength", None, "", "None is published.", "")]
    cups = to(water_g, "cup")
    return [
        Line(
            f"as printed for freezing, {row.wording}",
            tidy(row.low * cups / 4),
            "cup",
            f"{row.low:g} cups of sugar to 4 cups of water, {row.high:g} cups of syrup",
            books.cite(row),
        )
    ]


def _for_jars(books: Books, percent: float, jars: Item) -> Answer:
    plural, load = _LOADS[jars.unit]
    row = books.batch.figures.get(f"syrup-{plural}-{percent:g}")
    if row is None:
        nothing = Line("sugar", None, "cup", "No syrup of that strength is published.", "")
        return Answer(nothing, notes=("Published: 10, 20, 30, 40 and 50 %.",))
    return _scaled(books, row, jars, plural, load, percent)


def _scaled(
    books: Books, row: Figure, jars: Item, plural: str, load: int, percent: float
) -> Answer:
    share = jars.value / load
    source = books.cite(row)
    how = f"{row.low:g} cups for a load of {load} {plural} x {jars.value:g} / {load}"
    first = Line("sugar", tidy(row.low * share), "cup", how, source)
    water = Line(
        "water",
        tidy(row.high * share),
        "cup",
        f"{row.high:g} cups for a load of {load} {plural} x {jars.value:g} / {load}",
        source,
    )
    return Answer(first, (water,), (_LABELS,), _SYRUP, {"sugar": f"{percent:g}%"})
