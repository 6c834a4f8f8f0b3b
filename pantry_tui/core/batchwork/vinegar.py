"""How strong a vinegar is: it must be known to hold at least 5 % acetic acid; and what water makes
of it."""

from __future__ import annotations

import re

from pantry_tui.core.amounts import in_decimals
from pantry_tui.errors import BadInput

#: The weakest vinegar of a tested recipe, % acetic acid (University of Wisconsin Extension).
VINEGAR_MIN_PERCENT = 5.0
#: "2 cups", "1-2 cups", "1 1/2 of a cup".
_VOLUME = (
    r"(?:\d+(?:[.,/]\d+)?[\s-]*(?:to |or )?)+(?:half |of |an? )*"
    r"(?:cups?|ml|l|lit(?:re|er)s?|quarts?|pints?|tsps?|tbsp?s?|t|teaspoons?|tablespoons?)\b"
)
#: Tenths of a per cent.
_GRAIN = r"(\d+(?:[.,]\d+)?)[\s-]*grain"


def weak_vinegar(said: str) -> list[str]:
    """What is wrong with a vinegar by what was written of it ("4 %", "50 grain", "homemade"): a
    sentence, or none."""
    if not said:
        return []
    text = in_decimals(said.casefold())
    # How much of it there was says nothing of its strength; every other number does.
    bare = re.sub(rf"{_VOLUME}|{_GRAIN}", " ", text)
    percents = [float(one.replace(",", ".")) for one in re.findall(r"\d+(?:[.,]\d+)?", bare)]
    percents += [float(grain.replace(",", ".")) / 10 for grain in re.findall(_GRAIN, text)]
    if percents and min(percents) < VINEGAR_MIN_PERCENT:
        return [f"Vinegar of {min(percents):g} % is too weak: no tested recipe is below 5 %."]
    unsure = r"home.?made|\bown\b|unknown" + ("" if percents else r"|\bwine\b")
    weak = "Homemade or wine vinegar of unknown strength: tested recipes need 5 %."
    return [weak] if re.search(unsure, text) else []


def diluted(vinegar_ml: float, percent: float, water_ml: float) -> float:
    """% acetic acid of vinegar and water mixed, by volume."""
    return percent * vinegar_ml / (vinegar_ml + water_ml)


def water_to_reach(vinegar_ml: float, percent: float, target: float) -> float:
    """Millilitres of water that bring a vinegar down to `target` %. Raises BadInput where it is
    not above it."""
    if not 0 < target <= percent:
        raise BadInput(f"Vinegar of {percent:g} % cannot be brought to {target:g} % with water.")
    return vinegar_ml * (percent / target - 1)
