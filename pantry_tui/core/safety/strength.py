"""What keeps food beside time and pressure, where a record says that there was too little of it:
acid, vinegar, salt, sugar, heat, the room above the food. What is typed is judged, or refused.

A sentence each. Amounts in spoons of salt or sugar say nothing without the weight they went to.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from pantry_tui.core.batchwork.vinegar import weak_vinegar
from pantry_tui.core.canned import LIDDED
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.safety.acid import too_little_acid
from pantry_tui.core.safety.denial import denies
from pantry_tui.core.safety.jars import of_one_jar
from pantry_tui.core.safety.measured import (
    PH_LINE,
    all_fahrenheit,
    all_inches,
    read_percent,
    read_ph,
)
from pantry_tui.core.safety.prepared import not_tested
from pantry_tui.core.safety.salt import as_percent, read_brine, read_salt
from pantry_tui.core.safety.smoke import too_little_smoked
from pantry_tui.core.words import Acidity, Group, Method

#: The least salt that any vegetable ferment is published with is 2.25 % of the vegetables
#: (University of Minnesota Extension, Making Sauerkraut), which is 2.2 % of all together.
FERMENT_SALT_PERCENT, OF_VEGETABLES_PERCENT = 2.0, 2.25
#: Soluble solids of a jam by 21 CFR 150.160, per cent; from memory, the stricter choice.
SUGAR_PERCENT = 65.0
#: A jam with less of it has hardly any. A line of our own.
_HARDLY_PERCENT = 10.0
_SUGARLESS = "Hardly any sugar was used: the times for jams are tested with the sugar of a recipe"
#: Inches of the least room above food that any tested process has, of ketchup, and of the most, of
#: raw lima beans and meats (USDA AIB 539; Michigan State University Extension; both as reprints):
#: for food that has no process of its own here.
_HEADSPACE = 0.125, 1.5
#: Beside those of its own process the inches that are published for all of a kind: jams, fruit and
#: tomatoes in boiling water, low-acid food under pressure (USDA AIB 539, as a reprint); pickles
#: (Clemson Cooperative Extension, read).
_ROOM_OF = {
    Method.JAM: (0.25, 0.25),
    Method.BOILING_WATER: (0.5, 0.5),
    Method.VINEGAR_PICKLE: (0.5, 0.5),
    Method.PRESSURE: (1.0, 1.25),
}
#: Inches that nobody measures in a jar: our own choice.
_ABOUT = 0.125
#: °F inside that hot smoking has to reach: fish 160, poultry 165, other meat 145 (USDA FSIS safe
#: minimum temperatures; fish as core/batchwork says it, from memory, the stricter choice).
_SMOKED_F = {Group.FISH: 160.0, Group.MEAT: 145.0}
_POULTRY_F = 165.0
#: Above it, °F, perishable food may stand two hours in all (USDA FSIS).
_THAWS_F = 40.0
#: The coolest air that USDA FSIS (jerky and food safety) dries meat in, °F.
_JERKY_AIR_F = 130.0
SALTED = frozenset({Method.LACTIC, Method.PASTE, Method.SALTED})
#: What lies in vinegar and under no lid.
IN_VINEGAR = frozenset({Method.FRIDGE_PICKLE, Method.FLAVOURED_VINEGAR})


def too_weak(
    method: Method,
    food: FoodFacts,
    size: str,
    said: Mapping[str, str],
    asked: Sequence[str],
    rooms: Collection[float] = (),
) -> list[str]:
    """What the record of a batch says against it, sentence by sentence; `said` has its understood
    details by key, `asked` what each of the food's tested processes adds, `rooms` the inches that
    they leave above the food."""
    return [
        *_acid(method, food, said),
        *_spoons(size, said, asked),
        *_vinegar(method, said, asked),
        *_salt(method, said),
        *_sugar(method, said),
        *_heat(method, food, said),
        *too_little_smoked(method, food, said),
        *_headspace(method, food, said, rooms),
        *not_tested(method, food, said),
        *_ph(method, food, said),
    ]


def _acid(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    acid, vinegar = said.get("acid", ""), said.get("vinegar", "")
    if method is Method.JAM and denies(acid) and food.acidity is Acidity.ACIDIFIED:
        return [f"No acid was added: {food.name} may be above pH 4.6 without it."]
    pickle = method in (Method.VINEGAR_PICKLE, Method.FRIDGE_PICKLE)
    if pickle and denies(acid) and (not vinegar or denies(vinegar)):
        return ["Neither vinegar nor other acid was used: a pickle is safe by its acid."]
    return []


def _spoons(size: str, said: Mapping[str, str], asked: Sequence[str]) -> list[str]:
    """Too little of the acid that a tested process measures by the jar."""
    if not any("Tbsp bottled lemon juice" in one for one in asked):
        return []
    short = too_little_acid(said.get("acid", ""), of_one_jar(said, size))
    return [short] if short else []


def too_weak_a_pickle(batch: Batch) -> bool:
    """Whether its vinegar is too weak for a pickle, or there is none: no place mends that."""
    pickle = batch.method is Method.VINEGAR_PICKLE
    return pickle and bool(_vinegar(batch.method, dict(batch.process), ()))


def _vinegar(method: Method, said: Mapping[str, str], asked: Sequence[str]) -> list[str]:
    """No vinegar, or a weak one, where it is what keeps it, or is put in for the acid asked for."""
    vinegar = said.get("vinegar", "")
    if method is Method.FLAVOURED_VINEGAR and denies(vinegar):
        return ["No vinegar was used: the vinegar is what keeps it."]
    if method in (Method.VINEGAR_PICKLE, Method.FRIDGE_PICKLE) and denies(vinegar):
        acid = said.get("acid", "")
        shelf = method is Method.VINEGAR_PICKLE
        if shelf or not acid or denies(acid):
            where = "a pickle is safe on a shelf by its vinegar" if shelf else "it is no pickle"
            return [f"No vinegar was used: {where}."]
    if method in (LIDDED - {Method.PRESSURE}) | IN_VINEGAR or any("lemon" in one for one in asked):
        acid = said.get("acid", "")
        return weak_vinegar(vinegar) or (weak_vinegar(acid) if "vinegar" in acid.casefold() else [])
    return []


def _salt(method: Method, said: Mapping[str, str]) -> list[str]:
    salt = said.get("salt", "")
    if method not in SALTED:
        return []
    if denies(salt):
        return ["No salt was used: nothing is published that is kept so without it."]
    brine = read_brine(salt)
    if brine is not None and brine < OF_VEGETABLES_PERCENT:
        return [
            f"A brine of {brine:g} % is too little: with what lies in it the share is less, and no "
            f"published ferment has less than {OF_VEGETABLES_PERCENT:g} % of its vegetables."
        ]
    # A number alone may be meant as per cent: of two readings the stricter counts.
    percent = read_salt(as_percent(salt))
    if percent is not None and percent < FERMENT_SALT_PERCENT:
        return [
            f"{percent:g} % of salt is too little: no published ferment has less than "
            f"{OF_VEGETABLES_PERCENT:g} % of its vegetables."
        ]
    return []


def _sugar(method: Method, said: Mapping[str, str]) -> list[str]:
    sugar = said.get("sugar", "")
    if method not in (Method.SUGAR, Method.JAM):
        return []
    percent = read_percent(sugar)
    if method is Method.JAM:
        none = denies(sugar) or (percent is not None and percent < _HARDLY_PERCENT)
        return [f"{_SUGARLESS}."] if none else []
    if denies(sugar) or (percent is not None and percent < SUGAR_PERCENT):
        return [f"Sugar alone keeps nothing that holds less than {SUGAR_PERCENT:g} % of it."]
    return []


def _headspace(
    method: Method, food: FoodFacts, said: Mapping[str, str], rooms: Collection[float]
) -> list[str]:
    """A jar that is filled to its lid pushes food under it, and does not seal; out of one that is
    too empty the air is not driven within the time (USDA AIB 539, guide 1)."""
    room = said.get("headspace", "")
    if method not in LIDDED:
        return []
    if denies(room):
        return ["No room was left above the food: a jar so full may not seal."]
    least, most = _HEADSPACE
    whose, about = "no process is published", 0.0
    if rooms:
        least, most = min(*rooms, *_ROOM_OF[method]), max(*rooms, *_ROOM_OF[method])
        whose, about = f"no process for {food.name} is published", _ABOUT
    for one in all_inches(room):
        if not least - about <= one <= most + about:
            span = f"less than {least:g} or more than {most:g} inches"
            span = f"other than {least:g} inches" if least == most else span
            return [
                f"{one:.3g} inches above the food: so full or so empty a jar may not seal, and "
                f"{whose} with {span}."
            ]
    return []


def _heat(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    every = all_fahrenheit(said.get("temperature", ""))
    if not every:
        return []
    degrees, warmest = min(every), max(every)
    if method is Method.HOT_SMOKED and food.group in _SMOKED_F:
        least = smoked_f(food)
        if degrees < least:
            return [f"{degrees:g} F is too cool: hot-smoked {food.name} reach {least:g} F inside."]
    if method in (Method.FROZEN, Method.FREEZER_JAM) and warmest > _THAWS_F:
        return [f"{warmest:g} F is no freezer: what thaws does not keep as frozen food."]
    if method is Method.DRIED and food.group is Group.MEAT and degrees < _JERKY_AIR_F:
        return [f"{degrees:g} F is too cool: meat is dried in air of {_JERKY_AIR_F:g} F or more."]
    return []


def smoked_f(food: FoodFacts) -> float:
    """°F inside that hot smoke has to bring it to: of what is no meat those of fish."""
    if "poultry" in food.classes:
        return _POULTRY_F
    return _SMOKED_F.get(food.group, _SMOKED_F[Group.FISH])


def _ph(method: Method, food: FoodFacts, said: Mapping[str, str]) -> list[str]:
    """pH 4.6 is the line, whatever the recipe promised. What ferments comes down to it: see
    core.keeping.unripe."""
    value = read_ph(said.get("ph", ""))
    if value is None or value <= PH_LINE or method is Method.PRESSURE:
        return []
    if method in LIDDED:
        return [f"pH {value:g} is above {PH_LINE}: {food.name} needs a pressure canner then."]
    if method in IN_VINEGAR:
        return [f"pH {value:g} is above {PH_LINE}: {food.name} is not kept by its acid then."]
    return []
