"""Acid that a tested process asks for: whether it was added, or nobody said.

Tomatoes, figs, tomatillos and Asian pears may be above pH 4.6, so their processes ask for bottled
lemon juice or citric acid in either canner; salsas, relishes and pickles that are canned are safe
by the vinegar or juice of their recipe (USDA AIB 539, guides 2, 3 and 6). So are jams and jellies
of peppers, figs, tomatoes or flowers (guide 7, the recipes with lemon juice or vinegar; from
memory, the stricter choice).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.jars import ounces
from pantry_tui.core.safety.record import known
from pantry_tui.core.safety.spoons import read_spoons
from pantry_tui.core.safety.values import is_tested
from pantry_tui.core.words import Acidity, Method

#: The class of foods whose tested processes all ask for acid.
ACID_ADDED = "acid-added"
NOT_CHECKED = "Acid not recorded: not checked. Record it: acid=lemon, or vinegar=5%."


def acid_unsaid(batch: Batch) -> bool:
    """Whether a jar that is safe by the acid put into it, canned or a jam, says nothing of any."""
    food = batch.food
    jam = food.acidity is Acidity.ACIDIFIED and (
        batch.method is Method.JAM or "jam" in food.classes
    )
    if batch.method not in PROCESSED | {Method.JAM} or not (jam or ACID_ADDED in food.classes):
        return False
    said = known(batch.process)
    added = [value for key, value in batch.process if key in said & {"acid", "vinegar"}]
    recipe = dict(batch.process).get("process", "")
    return all(denies(value) for value in added) and not is_tested(recipe)


#: Teaspoons of acid in a US pint of tomatoes, a quart twice as much: a tablespoon of bottled juice,
#: a quarter teaspoon of citric acid, two tablespoons of vinegar (USDA AIB 539, guide 3, read; for
#: figs Michigan State University Extension, read).
_A_PINT = {"citric": 0.25, "lemon": 3.0, "lime": 3.0, "vinegar": 6.0}
_NAMES = {"citric": "citric acid", "lemon": "lemon juice", "lime": "lime juice"}
#: A maker's 500 ml jar takes the acid of a pint.
_METRIC_JAR = 0.94


def too_little_acid(acid: str, jar: str) -> str:
    """Why a typed amount of one kind of acid is less than a jar takes, by a process that asks for
    acid in each, or ""; a jar of unknown size counts as a quart. Of several amounts the least
    counts; none, or two kinds of acid, is no amount to go by."""
    kinds = [kind for kind in _A_PINT if kind in acid.casefold()]
    doses = read_spoons(acid)
    if len(kinds) != 1 or not doses:
        return ""
    per = re.search(r"\b(?:half[ -])?(?:pint|quart)", acid.casefold())
    holds = ounces(per[0] if per else jar) or 32.0
    kind = kinds.pop()
    a_pint, name = _A_PINT[kind], _NAMES.get(kind, kind)
    if min(doses) >= a_pint * holds / 16 * _METRIC_JAR:
        return ""
    return (
        f"{min(doses):.3g} tsp of {name} is too little: {a_pint:g} tsp are published for a pint, "
        "twice that for a quart."
    )


def unacidified(food: FoodFacts, asked: Sequence[str], acid: str) -> list[str]:
    """What is wrong with the acid that a record names; `asked` is what each of the food's tested
    processes adds. The tested amounts are of bottled juice, since fresh fruit differs."""
    adds = any(re.search("lemon|citric", one) for one in asked)
    if not (adds or (not asked and "tomato" in food.classes)):
        return []
    if denies(acid):
        return [f"No acid was added: {food.name} may be above pH 4.6 without it."]
    if re.search(r"\bfresh\b", acid.casefold()):
        return ["Fresh lemon juice differs in strength: the tested processes take bottled juice."]
    return []
