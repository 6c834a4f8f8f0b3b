"""Vinegar and water: how sour the mixture is, and which tested products take that share.

The strength of a liquid never makes a recipe tested: below 5 % the mixture alone serves only
pickles kept in the refrigerator; a product is named only where its whole recipe prints this share.
"""

from __future__ import annotations

from pantry_tui.core.batchwork.kitchen import MILLILITRES, to
from pantry_tui.core.batchwork.vinegar import VINEGAR_MIN_PERCENT, diluted, water_to_reach
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork.calc.answer import Answer, Books, Line, tidy
from pantry_tui.services.batchwork.calc.sentence import Item, Sentence

_VOLUMES = tuple(MILLILITRES)
#: By volume, as recipes do; the densities of vinegar and water differ by less than 1 %.
_BY_VOLUME = "by volume, as recipes measure it"


def vinegar(books: Books, said: Sentence) -> Answer:
    """The acidity of vinegar mixed with water, or the water that brings it down to one."""
    equal = said.has("equal parts", "half and half", "equal")
    percents = _percents(said)
    sour = said.take(_VOLUMES, "vinegar") or None
    water = said.take(_VOLUMES, "water") or None
    sour = sour or said.take(_VOLUMES)
    water = water or (said.take(_VOLUMES) if sour else None)
    parts = (
        (said.take(("",), "part", "parts", "vinegar"), said.take(("",), "part", "parts", "water"))
        if sour is None
        else (None, None)
    )
    if parts[0] is not None and parts[1] is not None:
        sour, water = parts
    said.finish()
    if not percents:
        raise BadInput("Say how strong the vinegar is, as its label does: calc vinegar 5 % ...")
    strength = percents[0]
    if len(percents) > 1:
        return _to_reach(books, strength, percents[1], sour)
    vinegar_ml, water_ml = _measures(sour, water, equal)
    final = diluted(vinegar_ml, strength, water_ml)
    share = 100 * vinegar_ml / (vinegar_ml + water_ml)
    first = Line(
        "acidity of the mixture",
        tidy(final),
        "% acetic acid",
        f"{strength:g} % x {vinegar_ml:.4g} / ({vinegar_ml:.4g} + {water_ml:.4g}), {_BY_VOLUME}",
    )
    return _with_serving(books, first, strength, share, final)


def _percents(said: Sentence) -> list[float]:
    found = []
    while (item := said.take(("%", "grain"))) is not None:
        found.append(item.value if item.unit == "%" else item.value / 10)
    if any(not 0 < one <= 80 for one in found):
        raise BadInput("That is no strength of a vinegar: its label says 5 % or 50 grain.")
    return found


def _measures(sour: Item | None, water: Item | None, equal: bool) -> tuple[float, float]:
    """Millilitres, or parts, of vinegar and of water."""
    if equal:
        base = _ml(sour) if sour else 1.0
        return base, base
    if sour is None:
        return 1.0, 0.0
    return _ml(sour), _ml(water) if water else 0.0


def _ml(item: Item) -> float:
    return item.value if item.unit == "" else item.base


def _to_reach(books: Books, strength: float, target: float, sour: Item | None) -> Answer:
    vinegar_ml = _ml(sour) if sour else 1000.0
    water = water_to_reach(vinegar_ml, strength, target)
    unit = sour.unit if sour else "ml"
    share = 100 * target / strength
    first = Line(
        f"water to {sour or '1000 ml'} of vinegar",
        tidy(to(water, unit)) if unit else tidy(water),
        unit,
        f"{strength:g} / {target:g} - 1 parts of water to one of vinegar, {_BY_VOLUME}",
    )
    return _with_serving(books, first, strength, share, target)


def _with_serving(books: Books, first: Line, strength: float, share: float, final: float) -> Answer:
    """What the mixture may serve. A vinegar above 5 % brought down to 5 is as one of 5."""
    least = books.figure("vinegar-least")
    record = {"vinegar": f"{strength:g}%"}
    if strength < VINEGAR_MIN_PERCENT:
        why = (
            f"Vinegar of {strength:g} % is too weak for any pickle: every tested recipe takes "
            f"{least.low:g} % or more ({books.cite(least)})."
        )
        return Answer(first, cautions=(why,), record=record)
    as_five = final >= VINEGAR_MIN_PERCENT
    also = _five(books) if as_five else _weaker(books, share * strength / VINEGAR_MIN_PERCENT)
    cautions: tuple[str, ...] = (
        "A product is safe by its whole tested recipe, not by the acidity of its liquid alone: "
        "take the vinegar and the water that the recipe prints, or more vinegar.",
    )
    if not as_five:
        cautions += ("On a shelf this mixture alone is safe for nothing.",)
    return Answer(first, tuple(also), cautions=cautions, record=record)


def _five(books: Books) -> list[Line]:
    row = books.figure("vinegar-least")
    what = "any tested pickle, in the share of the liquid that its recipe prints"
    return [Line("may serve", what, "", row.wording, books.cite(row))]


def _weaker(books: Books, share: float) -> list[Line]:
    """`share` of vinegar of 5 % in the liquid: the refrigerator alone, from equal parts up."""
    fridge = books.figure("share-fridge")
    if share < fridge.low - 0.05:
        nothing = "Weaker than equal parts: not even for pickles kept in the refrigerator."
        found = [Line("may serve", None, "", nothing, "")]
    else:
        found = [Line("may serve", fridge.wording, "", "common practice", books.cite(fridge))]
    return found + [
        Line(
            "printed in a whole tested recipe", row.wording, "", f"{row.low:.3g} %", books.cite(row)
        )
        for row in books.batch.about("vinegar share")
        if abs(row.low - share) <= 0.5
    ]
