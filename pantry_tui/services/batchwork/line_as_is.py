"""What is kept as it is, where nothing says how: a crop in its sack, a staple in its bag, milk.

Only where no other reading would be judged more strictly: a crop that is cellar-stored has at least
the figures of a fresh one, and fresh dairy food those of bought dairy food.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from pantry_tui.core.amounts import read_amount
from pantry_tui.core.line.held import Held
from pantry_tui.core.line.vessels import one
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.safety.prepared import is_large
from pantry_tui.core.text import singular
from pantry_tui.core.words import Climate, Group, Method
from pantry_tui.errors import BadInput

_DRY = frozenset({Climate.PANTRY, Climate.ROOM, Climate.CELLAR})
#: What a whole crop lies in.
_OF_CROPS = frozenset(
    {"sack", "net", "crate", "string", "braid", "bunch", "bin", "bushel", "peck", "hundredweight"}
)
#: What may hold a whole crop, or one that is dried or cooked: by how much is in it.
_MAYBE = frozenset({"bag", "box", "bucket", "barrel"})
#: In pounds: so much of a crop is in no bag of dried slices.
_A_BAG = 4
#: In pounds: so much of a large crop may be more than one.
_SEVERAL = 6
#: Yogurt that stands in a fridge is set already, whoever made it, and keeps as bought yogurt does.
_SET = Method.LACTIC.value
#: Flour, oil, spices: nobody does more to them than buy them.
_STAPLES = frozenset({Group.GRAIN, Group.FAT, Group.HERB})
_POUNDS = {
    "lb": Fraction(1),
    "kg": Fraction(22, 10),
    "oz": Fraction(1, 16),
    "g": Fraction(22, 10_000),
}


def as_it_is(
    facts: FoodFacts, usual: tuple[str, ...], climate: Climate | None, held: Held
) -> Method | None:
    """The way a food is kept that nobody has worked on; None where there may be another.

    `usual` are the ways in which households keep it."""
    if climate is None or not usual:
        return None
    if climate in _DRY and Method.CELLAR.value in usual:
        return Method.CELLAR if _whole(held) else None
    if facts.group is Group.DAIRY and _only_bought(usual, _SET):
        # No cheese may stand in a cellar, whether it was bought or not: the refusal says where.
        cold = climate is Climate.FRIDGE
        return Method.FRESH if cold or facts.name.endswith("cheese") else None
    sugar = facts.group is Group.SWEET and "sugar" in facts.classes and _only_bought(usual)
    dry = facts.group in _STAPLES and usual == (Method.BOUGHT.value,)
    dry = dry and not ("bean" in facts.classes and _jarred(held))
    return Method.BOUGHT if climate in _DRY and (sugar or dry) else None


def frozen_as_bought(
    method: Method | None, climate: Climate | None, held: Held, said: Mapping[str, str]
) -> Method | None:
    """The method; that of frozen food for what was bought and came into a freezer shut.

    What is frozen in time stays safe (USDA FSIS, Freezing and Food Safety, a reprint), and bought
    food has no figure of its own there. A printed date speaks for itself, and a tin is no freezer's
    pack."""
    tin = one(held.vessel) in ("tin", "can")
    frozen = method is Method.BOUGHT and climate is Climate.FREEZER and not tin
    return Method.FROZEN if frozen and not {"printed", "state"} & said.keys() else method


def pickled_in_glass(food: str, held: Held) -> str:
    """What a crop is called that no shop puts into a jar or tin but in vinegar (gherkins), "" of
    all else (common practice, no source)."""
    shut = one(held.vessel) in ("jar", "tin", "can", "bottle")
    return "pickled gherkins" if shut and food == "pickling cucumbers" else ""


def several_of(held: Held, facts: FoodFacts | None) -> tuple[str, tuple[str, ...], str] | None:
    """What to ask of a weight of large crops that may be one or several: (typed, choices, why).

    One that is cut does not keep, and of 6 kg of pumpkins nobody knows how many stay whole."""
    if facts is None or not is_large(facts) or held.vessel or held.part or held.piece:
        return None
    if held.count is not None or held.size or _pounds(held.amount) < _SEVERAL:
        return None
    one, many = singular(facts.name), facts.name
    choices = (f"1 {one}, {held.amount}", f"3 {many}, {held.amount} in all", f"1 {held.amount} bin")
    why = (
        f"How many {many} are {held.amount}? One that is cut does not keep as the others do: write "
        f"{choices[0]}, or {choices[1]}, or what they lie in: {choices[2]} {many}."
    )
    return held.amount, choices, why


def _jarred(held: Held) -> bool:
    """Whether it may stand in jars out of a canner."""
    vessel = one(held.vessel.removeprefix("small ").removeprefix("large "))
    return vessel in ("jar", "clip-top jar", "bottle", "tin") or (
        held.size.split(" ")[-1] in ("pint", "quart", "half-pint", "gallon", "half-gallon")
    )


def _only_bought(usual: tuple[str, ...], *more: str) -> bool:
    """Whether a household does nothing to it but buy it, or freeze it, or `more`."""
    return set(usual) <= {Method.BOUGHT.value, Method.FROZEN.value, Method.FRESH.value, *more}


def _whole(held: Held) -> bool:
    """Whether it lies as whole crops lie: in a sack, on a string, counted, by the pound."""
    vessel = one(held.vessel.removeprefix("small ").removeprefix("large ").split(" of ")[0])
    if vessel in _OF_CROPS:
        return True
    if vessel in _MAYBE or not vessel:
        weight = _pounds(held.size or held.amount)
        return weight >= _A_BAG or (vessel in ("", "box") and held.pieces)
    return False


def _pounds(size: str) -> Fraction:
    try:
        number, unit = read_amount(size)
    except BadInput:
        return Fraction(0)
    return number * _POUNDS.get(unit, Fraction(0))
