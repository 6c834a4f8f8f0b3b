"""What the household eats of its stores: ceilings a week, dislikes, how many sit at the table."""

from __future__ import annotations

from collections.abc import Iterator

from pantry_tui.core.week import CEILING, FOOD_CEILING
from pantry_tui.core.words import Group
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done


def set_ceiling(p: Pantry, what: str, servings: str) -> Done:
    """Servings a person a week of a food group or a food; 0 for what nobody eats."""
    name = what.strip().lower()
    if name not in tuple(Group):
        facts = p.facts(what)
        if facts is None:
            groups = ", ".join(Group)
            raise BadInput(f"{what!r} is no food and no group; the groups are {groups}.")
        name = facts.name
    try:
        most = float(servings)
    except ValueError:
        raise BadInput(f"{servings!r} is no number of servings: write 3 or 0.5.") from None
    if not 0 <= most <= 50:
        raise BadInput("Servings a person a week lie between 0 and 50.")
    p.save({f"appetite:{name}": f"{most:g}"})
    if most == 0:
        return Done(f"{name.capitalize()} will not be proposed any more.")
    return Done(f"{name.capitalize()}: at most {most:g} servings a person a week.")


def set_people(p: Pantry, people: int) -> Done:
    """How many eat from the store, for good or while guests are there."""
    if not 1 <= people <= 100:
        raise BadInput("The household must be 1 to 100 people.")
    p.save({"people": str(people)})
    return Done(f"Planning for {people}.")


def listing(p: Pantry) -> Iterator[str]:
    """Every ceiling, the household's own marked."""
    appetite = p.appetite
    yield f"people: {appetite.people}"
    for group in Group:
        own = " (yours)" if group.value in appetite.groups else ""
        most = appetite.groups.get(group.value, CEILING[group])
        yield f"{group}: {most:g} servings a person a week{own}"
    yield f"any one food: {FOOD_CEILING:g} servings a person a week"
    for food, most in sorted(appetite.foods.items()):
        yield f"{food}: {most:g} servings a person a week (yours)"
