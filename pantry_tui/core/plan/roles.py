"""What comes to the table: each day, by who sits there, one main, one or two sides, fruit.

Relishes and spreads are opened beside the days and eaten for as long as they keep open. Fats,
seasonings, baking, drinks and ingredients come only inside a dish, or to be used up.
"""

from __future__ import annotations

from collections.abc import Collection

from pantry_tui.core.words import Group, Method, Role

#: Servings of each role a head a day. Common practice, no source: the charts speak of weeks.
A_HEAD = {Role.MAIN: 1.0, Role.SIDE: 2.0, Role.FRUIT: 1.0}
#: So many times what is eaten of its kind on a day are no more than its rest can serve.
FILLS = 1.5
#: So much of a main a head is none: a single egg beside the chops. Our own choice.
BITE = 1 / 3
#: Opened beside the days.
BESIDE = frozenset({Role.RELISH, Role.SPREAD})

#: What a food is where nothing more is known of it than its group. Common practice, no source.
_OF_GROUP = {
    Group.VEGETABLE: Role.SIDE,
    Group.FRUIT: Role.FRUIT,
    Group.NUT: Role.INGREDIENT,
    Group.MEAT: Role.MAIN,
    Group.FISH: Role.MAIN,
    Group.EGG: Role.MAIN,
    Group.MEAL: Role.MAIN,
    Group.DAIRY: Role.INGREDIENT,
    Group.GRAIN: Role.BAKING,
    Group.HERB: Role.SEASONING,
    Group.RELISH: Role.RELISH,
    Group.SWEET: Role.SPREAD,
    Group.DRINK: Role.DRINK,
    Group.FAT: Role.FAT,
}


def role_of(group: Group) -> Role:
    """The usual role of a food of that group."""
    return _OF_GROUP.get(group, Role.INGREDIENT)


#: Of what flavours a pot and is stored by the sack (onions) a day takes no more than so much a
#: head. Common practice, no source.
SMALL = 0.5
_SMALL_SIDE = "small side"


def role_said(said: str, group: Group, *, drawn: bool = True) -> Role:
    """The role of a food whose row says "main", "snack" or nothing. A "small side" is one where it
    is `drawn` by the meal; a string of onions or a jar of dried ones only seasons."""
    if said == "seasoning" and group is Group.RELISH:
        return Role.RELISH  # pesto and mustard are opened beside the days
    if said == _SMALL_SIDE:
        return Role.SIDE if drawn else Role.SEASONING
    if said == "snack" and group is Group.FRUIT:
        return Role.FRUIT  # dried fruit is eaten as fruit
    if said in ("ingredient", "snack"):
        return Role.INGREDIENT
    return Role(said) if said else role_of(group)


def eaten_by_the_slice(group: Group, method: Method | None, classes: Collection[str]) -> bool:
    """Whether it is meat that was dried, or sausage that was cured: no meal is made of it alone.
    Common practice, no source."""
    cured = method is Method.SALTED and "sausage" in classes
    return group is Group.MEAT and (cured or method is Method.DRIED)


def a_head(said: str) -> float:
    """The part of a serving that a meal takes a head."""
    return SMALL if said == _SMALL_SIDE else 1.0
