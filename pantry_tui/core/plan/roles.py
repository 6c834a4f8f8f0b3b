"""What comes to the table: each day, by who sits there, one main, one or two sides, fruit.

Relishes and spreads are opened beside the days and eaten for as long as they keep open. Fats,
seasonings, baking, drinks and ingredients come only inside a dish, or to be used up.
"""

from __future__ import annotations

from pantry_tui.core.words import Group, Role

#: Servings of each role a head a day. Common practice, no source: the charts speak of weeks.
A_HEAD = {Role.MAIN: 1.0, Role.SIDE: 2.0, Role.FRUIT: 1.0}
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


#: Nobody cooks by the row of a table: what is called an ingredient, and a snack of fruit, is a dish
#: by itself where its group is. Common practice, no source.
_BY_GROUP = frozenset({Group.VEGETABLE, Group.FRUIT})


def role_said(said: str, group: Group) -> Role:
    """The role of a food whose row says "main", "snack" or nothing."""
    if said == "seasoning" and group is Group.RELISH:
        return Role.RELISH  # pesto and mustard are opened beside the days
    if said in ("", "ingredient", "snack"):
        plain = not said or group in _BY_GROUP
        return role_of(group) if plain else Role.INGREDIENT
    return Role(said)
