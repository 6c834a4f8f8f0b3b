"""What an evening lacks to be a meal: beside a main and a staple something of the garden.

Potatoes alone are no supper while peas stand, though the peas should last until July: who goes
hungry in January saves nothing. Our own choice, as is every number here.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable
from datetime import date

from pantry_tui.core.plan.appetite import STAPLES
from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.menu import Candidate, Menu
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, FILLS
from pantry_tui.core.words import Role

#: Servings a head of all that lies on an evening, and of them such as are neither main nor staple.
WHOLE, GREENS = 1.5, 0.5
#: A main for a smaller part of those who sit there gets another beside it.
FED = 0.75
_MAIN = frozenset({Role.MAIN})
_GARDEN = frozenset({Role.SIDE, Role.FRUIT})


def would_do(
    day: date,
    table: Table,
    menu: Menu,
    coming: Iterable[tuple[int, Candidate]],
    keeps: Collection[int],
) -> set[int]:
    """Of the sides and fruit `coming` those that would make a meal of what lies on that day; none
    where it is one, and then nothing of it is looked at. Beside a main that is a side or fruit,
    else a side; then anything, but of what a group `keeps` to last. Neither what lies there
    already, nor what a week has enough of."""
    heads = table.appetite.sit(day)
    on = [(pick.candidate, pick.on(day)) for pick in menu.picks if day in pick.days]
    roles = {one.at_table for one, _ in on}
    wanted = _GARDEN if Role.MAIN in roles else frozenset({Role.SIDE})
    greens = sum(n for one, n in on if _green(one) and one.at_table in wanted)
    bare = greens + CRUMB < GREENS * heads
    laid = sum(servings / one.a_head for one, servings in on if one.at_table in A_HEAD)
    if not bare and laid + CRUMB >= WHOLE * heads:
        return set()
    no_more = {one.food for one, _ in on} | _enough(menu, table)
    new = [(n, one) for n, one in coming if one.at_table in _GARDEN and one.food not in no_more]
    if bare:
        return {n for n, one in new if _green(one) and one.at_table in wanted}
    return {n for n, _ in new if n not in keeps}


def more_mains(
    day: date,
    table: Table,
    menu: Menu,
    coming: Iterable[tuple[int, Candidate]],
    keeps: Collection[int],
    pressing: Collection[int],
) -> list[set[int]]:
    """Of the mains `coming` those that an evening could do with, of which the next is not too much
    for it: such as lie there already, then others. For guests, and where only a part of the table
    is fed, any but what a group `keeps` to last; else what is `pressing`."""
    heads, laid = table.appetite.sit(day), menu.laid(day, _MAIN)
    if laid >= heads:
        return []
    any_ = heads > table.appetite.people or laid < FED * heads
    mains = [(n, one) for n, one in coming if one.at_table is Role.MAIN]
    mains = [(n, one) for n, one in mains if (n not in keeps if any_ else n in pressing)]
    if not mains or laid + mains[0][1].servings > FILLS * heads:
        return []
    on = {pick.candidate.food for pick in menu.picks if day in pick.days}
    return [{n for n, one in mains if one.food in on}, {n for n, _ in mains}]


def _enough(menu: Menu, table: Table) -> set[str]:
    """The foods of which as much lies in the week as is eaten in one."""
    laid: dict[str, float] = defaultdict(float)
    for pick in menu.picks:
        laid[pick.candidate.food] += pick.candidate.servings
    most = table.appetite.of_food
    return {
        food for food, servings in laid.items() if servings >= most(food) * max(1, table.factor)
    }


def _green(one: Candidate) -> bool:
    """Whether it neither fills nor only flavours."""
    return one.food not in STAPLES and one.a_head >= 1
