"""Drying by what it weighs, conditioning, and blanching."""

from __future__ import annotations

from pantry_tui.core.batchwork.balance import dried_g, moisture_now
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.reference.batchwork import BlanchRow, DryingRow, Figure
from pantry_tui.services.batchwork.calc.answer import (
    NOTHING,
    Answer,
    Books,
    Line,
    other_weight,
    span,
    tidy,
    weigh,
)
from pantry_tui.services.batchwork.calc.sentence import Sentence

#: From this altitude on a minute is added (Utah State University Extension).
HIGH_FT = 5000


def food_of(books: Books, said: Sentence, *plain: str) -> FoodFacts | None:
    """The food that the words left over name. Raises BadInput for words that name none."""
    words = " ".join(word for word in said.words().split() if word not in plain)
    if not words:
        return None
    facts = books.tables.facts(words)
    if facts is None:
        near = ", ".join(books.tables.index.near(words, 3)) or "nothing near it"
        raise BadInput(f"{words[:40]!r} is no food of the tables; near it: {near}.")
    return facts


def drying(books: Books, said: Sentence) -> Answer:
    """What a tray weighs when it is dry, with the published hours, air and end test."""
    fresh = said.weight()
    first_share, second_share = said.share(), said.share()
    weighs = said.weight()
    said.finish()
    food = food_of(books, said, "fresh", "moisture", "dried", "prepared", "drying", "water", "now")
    row = books.batch.drying.get(food.name) if food else None
    if fresh is None:
        return _only_table(books, food, row)
    moisture, target, sources = _shares(books, food, row, first_share, second_share)
    grams = dried_g(fresh.base, moisture, target)
    first = weigh(
        "weight when it is dry",
        grams,
        fresh.unit if fresh.unit != "lb" or fresh.value < 1 else "oz",
        f"{fresh} x (100 - {moisture:g}) / (100 - {target:g})",
        "; ".join(dict.fromkeys(sources)) or "Arithmetic of weights: the shares are your own.",
    )
    also = [
        other_weight("weight when it is dry", grams, fresh.unit),
        Line("water to lose", tidy(fresh.base - grams), "g", "fresh weight - dry weight"),
    ]
    if weighs is not None:
        now = moisture_now(fresh.base, moisture, weighs.base)
        also.append(Line("moisture now", tidy(now), "%", "(weight - dry matter) / weight"))
    also += _water_activity(books, food, target) + (_lines(books, row) if row else [])
    notes = ("The fresh weight is what lies on the trays: peeled, cored and cut.",)
    return Answer(first, tuple(also), notes, _meat(books, food))


def _shares(
    books: Books,
    food: FoodFacts | None,
    row: DryingRow | None,
    first: float | None,
    second: float | None,
) -> tuple[float, float, list[str]]:
    """Water at first and in the end, %, as typed, else as published."""
    sources = []
    if first is None:
        if row is None or row.water_percent is None:
            raise BadInput("Say how much water it holds, like 88 % to 10 %: none is published.")
        first = row.water_percent
        sources.append(f"{books.tables.sources[row.source]} (its water from memory)")
    if second is None:
        rows = books.batch.about("target moisture", f"group:{food.group}") if food else ()
        if not rows:
            raise BadInput("Say how dry it is to be, like 88 % to 10 %: none is published.")
        second = rows[0].low
        sources.append(books.cite(rows[0]))
    return first, second, sources


def _only_table(books: Books, food: FoodFacts | None, row: DryingRow | None) -> Answer:
    if food is None:
        raise BadInput("Say what is dried and what it weighs: calc drying 5 lb carrots.")
    if row is None:
        if food.group in (Group.MEAT, Group.FISH):
            return Answer(Line("hours", None, "", NOTHING, ""), cautions=_meat(books, food))
        return Answer(Line("hours", None, "", f"No drying figure for {food.name}.", ""))
    first, *also = _lines(books, row)
    return Answer(first, tuple(also))


def _lines(books: Books, row: DryingRow) -> list[Line]:
    """The published row, line by line."""
    source = books.cite(row)
    found = [
        Line("hours", span(row.hours_min, row.hours_max), "hours", "as printed", source),
        Line("air", span(row.low_f, row.high_f), "°F", "as printed; recalled", source),
        Line("prepared", row.prepare, "", "as printed", source),
        Line("done when", row.end_test, "", "as printed; recalled", source),
    ]
    for what, low, high in (
        ("blanch in water", row.water_min, row.water_max),
        ("blanch in steam", row.steam_min, row.steam_max),
    ):
        if low is not None and high is not None:
            found.append(Line(what, span(low, high), "minutes", "as printed", source))
    return found


def _water_activity(books: Books, food: FoodFacts | None, target: float) -> list[Line]:
    """Published for fruit at 15 to 20 % moisture and for vegetables as they are dried."""
    if food is None:
        return []
    rows: tuple[Figure, ...] = books.batch.about("water activity", food.name, f"group:{food.group}")
    if food.group is Group.FRUIT and not 15 <= target <= 20:
        rows = ()
    if not rows:
        return [Line("water activity", None, "aw", NOTHING, NOTHING)]
    return [
        Line("water activity", span(one.low, one.high), "aw", one.wording, books.cite(one))
        for one in rows
    ]


def _meat(books: Books, food: FoodFacts | None) -> tuple[str, ...]:
    """Meat is heated through before it is dried (USDA FSIS)."""
    if food is None or food.group is not Group.MEAT:
        return ()
    air = books.figure("jerky-air")
    return tuple(
        f"Heat it to {one.low:g} °F inside before it is dried, then keep the air at {air.low:g} to "
        f"{air.high:g} °F ({books.cite(one)})."
        for one in books.batch.about("jerky", food.name)
    ) or ("No published way to dry this meat at home is known here.",)


def conditioning(books: Books, said: Sentence) -> Answer:
    """How long dried food is shaken in its jar before it is stored, and how pests are killed."""
    food = food_of(books, said, "dried", "conditioning", "condition", "jars", "jar", "bags")
    row, other = books.figure("condition-days"), books.figure("condition-days-isu")
    first = Line("days of conditioning", tidy(row.high), "days", row.wording, books.cite(row))
    also = [
        Line("published range", span(other.low, row.high), "days", other.wording, books.cite(other))
    ]
    cool = books.figure("cool-dried")
    also.append(
        Line("let it cool", span(cool.low, cool.high), "minutes", cool.wording, books.cite(cool))
    )
    also += [
        Line("against pests", span(one.low, one.high), one.unit, one.wording, books.cite(one))
        for one in books.batch.about("pasteurising")
    ]
    notes = ("Vegetables are dried until brittle and need none.",)
    return Answer(first, tuple(also), notes if food and food.group is Group.VEGETABLE else ())


def blanching(books: Books, said: Sentence) -> Answer:
    """Minutes of blanching before freezing or drying, with the altitude."""
    for_drying = said.has("drying", "dried", "dry")
    said.has("freezing", "freezer", "frozen", "freeze")
    steam = said.has("steam", "steaming", "steamed")
    feet = said.feet()
    pounds = said.weight()
    said.finish()
    food = food_of(books, said, "blanch", "blanching", "water", "altitude")
    if food is None:
        raise BadInput("Say what is blanched: calc blanching carrots 5500ft.")
    height = feet if feet is not None else books.altitude_ft
    rows = _drying_row(books, food) if for_drying else _freezing_rows(books, food)
    lines = [one for row in rows for one in _minutes(books, row, steam, height or 0)]
    if not lines:
        said_for = "drying" if for_drying else "freezing"
        way = " in steam" if steam else ""
        nothing = f"No blanching time{way} for {food.name} before {said_for} is published here."
        return Answer(Line("blanch", None, "minutes", nothing, ""))
    also = [*lines[1:], *_pot(books, food, pounds.base if pounds else None)]
    notes = [] if height is not None else ["Altitude not said: the time is for below 5,000 ft."]
    notes.append("Cool it in ice water for as long as it was blanched.")
    only = lines[0].answer if len(lines) == 1 else None
    record = {} if only is None or isinstance(only, str) else {"blanched": f"{only:g} min"}
    return Answer(lines[0], tuple(also), tuple(notes), record=record)


def _freezing_rows(books: Books, food: FoodFacts) -> list[BlanchRow | DryingRow]:
    return [row for row in books.batch.blanching if row.food == food.name]


def _drying_row(books: Books, food: FoodFacts) -> list[BlanchRow | DryingRow]:
    row = books.batch.drying.get(food.name)
    return [row] if row else []


def _minutes(books: Books, row: BlanchRow | DryingRow, steam: bool, ft: int) -> list[Line]:
    low, high = (row.steam_min, row.steam_max) if steam else (row.water_min, row.water_max)
    form = row.form if isinstance(row, BlanchRow) else row.prepare
    what = f"blanch {row.food}, {form}"
    if isinstance(row, BlanchRow) and row.cook:
        return [Line(what, row.cook, "", "cooked and not blanched", books.cite(row))]
    if low is None or high is None:
        return []
    if high == 0:
        return [Line(what, 0, "minutes", "none is needed", books.cite(row))]
    more = books.figure("blanch-high")
    if ft < HIGH_FT:
        return [Line(what, span(low, high), "minutes", "as printed", books.cite(row))]
    how = f"as printed, and {more.low:g} minute more {more.wording}"
    source = f"{books.cite(row)}; {books.cite(more)}"
    return [Line(what, span(low + more.low, high + more.low), "minutes", how, source)]


def _pot(books: Books, food: FoodFacts, grams: float | None) -> list[Line]:
    leafy = food.name in ("spinach", "chard", "kale", "collards")
    row = books.figure("blanch-water-leaves" if leafy else "blanch-water")
    pounds = grams / 453.59237 if grams else 1.0
    what = f"boiling water for {pounds:.3g} lb of {row.wording}"
    return [Line(what, tidy(row.low * pounds), "gallon", "a batch at a time", books.cite(row))]
