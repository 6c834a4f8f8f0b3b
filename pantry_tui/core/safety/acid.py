"""Acid that a tested process asks for: whether it was added, or nobody said.

Tomatoes, figs, tomatillos and Asian pears may be above pH 4.6, so their processes ask for bottled
lemon juice or citric acid in either canner; salsas, relishes and pickles that are canned are safe
by the vinegar or juice of their recipe (USDA AIB 539, guides 2, 3 and 6).
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.canned import PROCESSED
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.record import known, no_acid
from pantry_tui.core.safety.values import is_tested

#: The class of foods whose tested processes all ask for acid.
ACID_ADDED = "acid-added"
NOT_CHECKED = "Acid not recorded: not checked. Record it: acid=lemon, or vinegar=5%."


def acid_unsaid(batch: Batch) -> bool:
    """Whether a canned batch that is safe by the acid put into it says nothing of any."""
    if batch.method not in PROCESSED or ACID_ADDED not in batch.food.classes:
        return False
    said = known(batch.process)
    added = [value for key, value in batch.process if key in said & {"acid", "vinegar"}]
    recipe = dict(batch.process).get("process", "")
    return all(no_acid(value) for value in added) and not is_tested(recipe)


def unacidified(food: FoodFacts, asked: Sequence[str], acid: str) -> list[str]:
    """What is wrong with the acid that a record names; `asked` is what each of the food's tested
    processes adds. The tested amounts are of bottled juice, since fresh fruit differs."""
    adds = any(re.search("lemon|citric", one) for one in asked)
    if not (adds or (not asked and "tomato" in food.classes)):
        return []
    if no_acid(acid):
        return [f"No acid was added: {food.name} may be above pH 4.6 without it."]
    if re.search(r"\bfresh\b", acid.casefold()):
        return ["Fresh lemon juice differs in strength: the tested processes take bottled juice."]
    return []
