"""How a food is kept, out of all that a put-up line says of it: the methods named, words beside the
food's name, the name itself (jam), what it stands in and where."""

from __future__ import annotations

from typing import TYPE_CHECKING

from pantry_tui.core.line.held import Held
from pantry_tui.core.model import FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Method
from pantry_tui.services.batchwork.line_as_is import as_it_is
from pantry_tui.services.batchwork.line_words import FERMENTS, WRAPPED

if TYPE_CHECKING:
    from pantry_tui.services.batchwork.line import Kitchen
    from pantry_tui.services.batchwork.line_food import Food

Why = tuple[str, tuple[str, ...], str]
_JARS = frozenset({"jar", "clip-top jar", "bottle", "tin", "pint", "quart"})
#: A whole crop is weighed or counted.
VOLUMES = frozenset(
    {"pint", "quart", "half-pint", "half-gallon", "gallon", "l", "ml", "litre", "cup"}
)
_CROPS = frozenset({Group.VEGETABLE, Group.FRUIT, Group.NUT})
_JAMS = frozenset({"jam", "jams", "marmalade", "marmalades"})
_BREWS = frozenset({"cider", "wine", "mead", "beer", "elderflower champagne", "sake", "apple wine"})
#: Out of a canner, out of the fridge, or soured by themselves: their lives differ.
_PICKLED = (Method.FRIDGE_PICKLE.value, Method.VINEGAR_PICKLE.value, Method.LACTIC.value)
_SMOKED = frozenset({Method.HOT_SMOKED, Method.COLD_SMOKED})
_CURED = frozenset({Method.HOT_SMOKED, Method.COLD_SMOKED, Method.SALTED})


def settle(
    food: Food,
    named: Method | None,
    climate: Climate | None,
    held: Held,
    kitchen: Kitchen,
) -> tuple[Method | None, Why | None]:
    """The method, or what to ask; (None, None) where nothing is said of it at all."""
    if food.negated:
        choices = tuple(dict.fromkeys(one.value for one in (*food.explicit, *food.said)))
        return None, _asked("not", choices or tuple(Method), "says how it is not kept")
    if named is not None:
        return named, None
    if food.slips:
        return None, _asked(food.method_typed, food.slips, "is no method")
    if not food.name and not food.explicit and food.ask is None:
        return None, None
    if food.method_typed in WRAPPED and not _a_crop(food.facts, climate):
        food.explicit = [one for one in food.explicit if one is not Method.CELLAR]
    own = kitchen.says(food.name) if food.name else None
    if food.facts is None and food.name.split(" ")[-1] in _JAMS:
        own = Method.JAM  # of a fruit that is in no table
    if own is Method.JAM and food.method_typed == "cooked":
        food.explicit = [one for one in food.explicit if one is not Method.MEAL]  # cooked jam
    _as_bought(food, kitchen)
    explicit = list(dict.fromkeys(_ferments(food, method) for method in food.explicit))
    found = _meant(food, explicit, own)
    if isinstance(found, tuple):
        typed = food.method_typed or food.typed
        usual = kitchen.usual(food.facts.name) if food.facts is not None else ()
        likely = tuple(one for one in found if one.value in usual)
        found = likely if len(likely) > 1 else found
        if climate is Climate.FREEZER and Method.FROZEN in found and _CURED & set(found):
            return None, _either(food, tuple(one.value for one in found))
        return None, _asked(typed, tuple(one.value for one in found), "could mean")
    method = found or (_ferments(food, Method.LACTIC) if food.fermenting else None) or own
    if method is not None:
        return _placed(food, method, climate, explicit or bool(food.said))
    implied = _implied(food, climate, held, kitchen)
    if implied is None and food.facts is not None and not explicit and not food.worked:
        implied = as_it_is(food.facts, kitchen.usual(food.facts.name), climate, held)
    if implied is None and food.fresh and food.facts is not None:
        return Method.FRESH, None
    if implied is None and food.name.startswith("pickled "):
        return None, _asked("pickled", _PICKLED, "could mean")
    return implied, None


def _as_bought(food: Food, kitchen: Kitchen) -> None:
    """Smoked salmon that was bought in was not smoked here: it is smoked fish from a shop, and of
    both kinds the cold-smoked one, which is raw."""
    others = {*food.explicit, *food.said} - {Method.BOUGHT}
    if Method.BOUGHT not in food.explicit or not others or not others <= _SMOKED:
        return
    if food.facts is not None and food.facts.group is Group.FISH:
        hot = others == {Method.HOT_SMOKED}
        food.name = "hot-smoked fish" if hot else "cold-smoked fish"
        food.facts = kitchen.composer.called(food.name)
    food.treated = bool(food.said)
    food.explicit, food.said = [Method.BOUGHT], ()


def _a_crop(facts: FoodFacts | None, climate: Climate | None) -> bool:
    cold = climate in (Climate.FREEZER, Climate.FRIDGE)
    return facts is not None and facts.group in _CROPS and not cold


def _either(food: Food, choices: tuple[str, ...]) -> Why:
    """What was cured and stands in a freezer, with the words that settle it: both in one phrase
    would only be asked about again."""
    written = " or ".join(f"'{food.name or food.typed}, {one}'" for one in choices)
    why = f"{food.typed!r} in a freezer could be {' or '.join(choices)}: write {written}."
    return food.typed, choices, why


def _asked(typed: str, choices: tuple[str, ...], what: str) -> Why:
    named = " or ".join(choices[:4])
    if what == "could mean":
        return typed, choices, f"{typed!r} could mean {named}: say which."
    return typed, choices, f"{typed!r} {what}: say how it is kept, for example {named}."


def _ferments(food: Food, method: Method) -> Method:
    """What ferments is a brew, a vinegar, or a lactic ferment, by the food."""
    if method is not Method.LACTIC or food.facts is None:
        return method
    if food.facts.name in _BREWS:
        return Method.ALCOHOL_FERMENT
    return Method.VINEGAR_FERMENT if food.facts.name.endswith("vinegar") else method


def _meant(
    food: Food, explicit: list[Method], own: Method | None
) -> Method | tuple[Method, ...] | None:
    """The one method that all words agree on; those that they leave open; None where none is."""
    said = tuple(_ferments(food, method) for method in food.said)
    if len(explicit) > 1:
        if set(explicit) == {Method.FROZEN, Method.BOUGHT}:
            return Method.FROZEN  # out of a shop's freezer into one's own
        if set(explicit) == {Method.FROZEN, Method.FREEZER_JAM}:
            return Method.FREEZER_JAM
        return tuple(explicit)
    if not explicit:
        if own is not None and own in said and Method.FROZEN not in said:
            return own
        return said if len(said) > 1 else said[0] if said else None
    method = _as_pickled(food.facts, explicit[0])
    if not said or method in said:
        return method
    if {method, *said} == {Method.FROZEN, Method.BOUGHT}:
        return Method.FROZEN
    if len(said) == 1 or method is Method.FROZEN:
        return (method, *said)
    return (method, *said)


def _as_pickled(facts: FoodFacts | None, method: Method) -> Method:
    """Pickles out of a boiling-water canner are processed pickles, and a jam that is sour by the
    lemon or vinegar of its recipe is a jam there: those have no process but that of jams."""
    if method is not Method.BOILING_WATER or facts is None:
        return method
    pickled = facts.name.startswith("pickled ") or facts.name.endswith((" pickle", " pickles"))
    if "jam" in facts.classes and facts.acidity is Acidity.ACIDIFIED:
        return Method.JAM
    return Method.VINEGAR_PICKLE if pickled else method


def _placed(
    food: Food, method: Method, climate: Climate | None, spoken: object
) -> tuple[Method | None, Why | None]:
    """The method where it stands: jam in a freezer may be jam, freezer jam or frozen."""
    if climate is not Climate.FREEZER:
        return method, None
    if method is Method.JAM and not food.explicit:
        choices = (Method.FREEZER_JAM.value, Method.FROZEN.value, Method.JAM.value)
        return None, _asked(food.typed, choices, "in a freezer could be several things")
    if method in _CURED and not food.explicit:
        return None, _either(food, (Method.FROZEN.value, method.value))
    if not spoken and method not in (Method.FREEZER_JAM, Method.DRIED, Method.FREEZE_DRIED):
        return Method.FROZEN, None
    return method, None


def _implied(food: Food, climate: Climate | None, held: Held, kitchen: Kitchen) -> Method | None:
    """By where it stands: in a freezer it is frozen, a raw crop in a cellar is cellar-stored."""
    facts = food.facts
    if climate is Climate.FREEZER:
        return Method.FROZEN
    if facts is None:
        return None
    if FERMENTS & set(food.typed.split()) and Method.LACTIC.value in kitchen.usual(facts.name):
        return Method.LACTIC  # "fermented hot sauce"
    vessel = held.vessel.removeprefix("small ").removeprefix("large ").rstrip("s")
    if facts.name in _BREWS and (food.started or vessel in ("demijohn", "carboy")):
        return Method.ALCOHOL_FERMENT
    jarred = vessel in _JARS or held.size.split(" ")[-1] in VOLUMES
    if climate is Climate.CELLAR and not jarred:
        raw = facts.known and facts.group in (Group.VEGETABLE, Group.FRUIT)
        return Method.CELLAR if raw and not facts.name.startswith(("dried", "pickled")) else None
    if facts.name in ("eggs", "duck eggs", "quail eggs"):
        return Method.FRESH
    if climate is Climate.FRIDGE:
        cooked = facts.group is Group.MEAL or facts.name.startswith(("cooked ", "boiled "))
        return Method.MEAL if cooked else None
    return None
