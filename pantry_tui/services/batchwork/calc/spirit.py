"""Spirit on fruit, and cure on meat: figures with their cautions, never a licence."""

from __future__ import annotations

from pantry_tui.core.batchwork.balance import nitrite_ppm, spirit_left
from pantry_tui.core.batchwork.kitchen import MILLILITRES, to
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.text import begun
from pantry_tui.core.words import Acidity, Group
from pantry_tui.errors import BadInput, Refused
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
from pantry_tui.services.batchwork.calc.dry import food_of
from pantry_tui.services.batchwork.calc.sentence import Sentence

_SPIRIT_WORDS = (
    *("spirit", "vodka", "rum", "brandy", "gin", "alcohol", "abv"),
    *("fruit", "fresh", "water", "moisture", "on", "over"),
)


def infusion(books: Books, said: Sentence) -> Answer:
    """The strength of a spirit once the water of the fruit is in it."""
    water = said.share("water", "moisture")
    strength = said.share()
    if strength is None and (proof := said.take(("proof",))) is not None:
        strength = proof.value / 2
    spirit, plant = said.take(tuple(MILLILITRES)), said.weight()
    said.finish()
    food = food_of(books, said, *_SPIRIT_WORDS)
    if spirit is None or strength is None or plant is None:
        raise BadInput("Say spirit, strength and fruit: calc infusion 500 ml 40 % 300 g cherries.")
    _refuse_low_acid(food)
    water, source = _water(books, food, water)
    left = spirit_left(spirit.base, strength, plant.base, water)
    whole = f"{spirit.base:.4g} + {plant.base:.4g} x {water:g} %"
    how = f"{strength:g} % x {spirit.base:.4g} ml / ({whole})"
    first = Line("strength in the end", tidy(left), "% alcohol", how, source)
    base, mix = books.figure("infusion-base"), books.figure("infusion-mix")
    cautions = ["Cover the fruit: what stands out of the spirit spoils."]
    if strength < base.low:
        cautions.append(f"The spirit is below the {base.low:g} % that bulletins ask for.")
    if left < mix.low:
        cautions.append(
            f"Below {mix.low:g} % in the end: keep it in the refrigerator, take stronger spirit or "
            "less fruit."
        )
    also = (
        Line("asked of the spirit", base.low, base.unit, base.wording, books.cite(base)),
        Line("asked of the mixture", mix.low, mix.unit, mix.wording, books.cite(mix)),
    )
    notes = ("The water of the plant is taken to mix in whole; a gram of it as a millilitre.",)
    return Answer(first, also, notes, tuple(cautions))


def _refuse_low_acid(food: FoodFacts | None) -> None:
    """Low-acid vegetables and garlic in spirit: no publication keeps them at room warmth."""
    if food is not None and food.group is Group.VEGETABLE and food.acidity is Acidity.LOW_ACID:
        raise Refused(
            f"{begun(food.name)} in spirit: low-acid vegetables are not kept so at room "
            "warmth; freeze or dry them."
        )


def _water(books: Books, food: FoodFacts | None, typed: float | None) -> tuple[float, str]:
    """% of water in the plant, typed or published; all of it where neither is known, which is the
    weaker and so the safer answer."""
    if typed is not None:
        return typed, "Arithmetic: the water is your own figure."
    row = books.batch.drying.get(food.name) if food else None
    if row is not None and row.water_percent is not None:
        return row.water_percent, f"{books.tables.sources[row.source]} (its water from memory)"
    return 100.0, "No published figure for its water: taken as all water, the weaker answer."


# -- cures and smoke -------------------------------------------------------------------------------

_LABEL = (
    "Cure salt is poison in a larger dose: weigh it, keep it coloured, labelled and away from "
    "the kitchen salt, and follow the label of your own cure where it says otherwise.",
    "The ceilings are quoted on a forum from the federal handbook: an aid to check, no recipe.",
)


def cure(books: Books, said: Sentence) -> Answer:
    """Cure for ground meat as the label prints it, and the nitrite that makes. For anything else
    no amount is published here, only the ceilings."""
    typed = said.weight("cure")
    nitrite = said.share()
    meat = said.weight()
    said.finish()
    food = food_of(books, said, "cure", "pink", "salt", "nitrite", "meat", "number", "curing")
    if food is None or meat is None:
        raise BadInput("Say which meat and what it weighs: calc cure 5 lb ground pork.")
    strength = books.figure("cure-nitrite")
    percent = nitrite if nitrite is not None else strength.low
    ceilings = [
        Line("ceiling, nitrite", row.low, row.unit, row.wording, books.cite(row))
        for row in books.batch.about("nitrite ceiling", food.name)
    ]
    rows = books.batch.about("cure", food.name)
    if typed is None and not rows:
        nothing = f"No published table of cure for {food.name} is known here."
        return Answer(Line("cure", None, "g", nothing, ""), tuple(ceilings), cautions=_LABEL)
    if typed is None and abs(percent - strength.low) > 0.01:
        raise Refused("The published table is for a cure with 6.25 % nitrite: read your label.")
    grams = typed.base if typed else meat.base / (25 * 16)
    ppm = nitrite_ppm(grams, percent, meat.base)
    made = Line("nitrite going in", tidy(ppm), "ppm", f"{grams:.4g} g x {percent:g} % / meat")
    over = _over(ppm, ceilings, food.name)
    if typed is not None:
        return Answer(made, tuple(ceilings), cautions=(*over, *_LABEL))
    how = f"{meat} / 25 lb x 1 oz"
    first = weigh("cure", grams, "g", how, books.cite(rows[0]))
    teaspoons = books.figure("cure-ground-spoons")
    spoon = tidy(to(meat.base, "lb") / 5)
    also = (
        other_weight("cure", grams, "g"),
        Line("by the spoon, rough", spoon, "tsp", teaspoons.unit, books.cite(teaspoons)),
        made,
        *ceilings,
    )
    return Answer(first, also, cautions=(*over, *_LABEL), record={"cure": f"{tidy(grams):g} g"})


def _over(ppm: float, ceilings: list[Line], food: str) -> tuple[str, ...]:
    least = min((one.answer for one in ceilings if isinstance(one.answer, float)), default=None)
    if least is None:
        return (f"No published ceiling for nitrite in {food} is known here.",)
    over = ppm > least + 0.5
    return (f"More than the ceiling of {least:g} ppm: do not use it.",) if over else ()


def smoking(books: Books, said: Sentence) -> Answer:
    """What is published of smoking a food at home."""
    said.finish()
    food = food_of(books, said, "hot", "cold", "smoked", "smoking", "smoke", "hot-smoked")
    if food is None:
        raise BadInput("Say what is smoked: calc smoking trout.")
    rows = [
        row
        for topic in ("smoking", "smoking storage")
        for row in books.batch.about(topic, food.name, f"group:{food.group}")
    ]
    if not rows:
        return Answer(Line("temperature inside", None, "°F", NOTHING, ""))
    lines = [
        Line(
            "temperature inside" if row.unit == "°F" else "keeps",
            span(row.low, row.high),
            row.unit,
            row.wording,
            books.cite(row),
        )
        for row in rows
    ]
    cautions = ("Smoke alone keeps nothing: salt, heat and cold do.",)
    return Answer(lines[0], tuple(lines[1:]), cautions=cautions)
