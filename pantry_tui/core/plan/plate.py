"""What an evening lacks to be a meal: beside a main and a staple something of the garden.

Potatoes alone are no supper while peas stand, though the peas should last until July: who goes
hungry in January saves nothing. Our own choice, as is every number here.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable
from datetime import date
from itertools import takewhile

from pantry_tui.core.plan.appetite import STAPLES
from pantry_tui.core.plan.days import Table
from pantry_tui.core.plan.menu import Candidate, Menu, Why
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.core.plan.roles import A_HEAD, BITE, FILLS
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
    else a side; then anything, but of what a group `keeps` to last. Not what lies there already,
    and what a week has enough of only where it comes before all others: of a crate that goes soft
    once more rather than jars that should last."""
    heads = table.appetite.sit(day)
    on = [(pick.candidate, pick.on(day)) for pick in menu.picks if day in pick.days]
    roles = {one.at_table for one, _ in on}
    wanted = _GARDEN if Role.MAIN in roles else frozenset({Role.SIDE})
    greens = sum(n for one, n in on if is_green(one) and one.at_table in wanted)
    bare = greens + CRUMB < GREENS * heads
    laid = sum(servings / one.a_head for one, servings in on if one.at_table in A_HEAD)
    if not bare and laid + CRUMB >= WHOLE * heads:
        return set()
    there, enough = {one.food for one, _ in on}, _enough(menu, table)
    new = [(n, one) for n, one in coming if one.at_table in _GARDEN and one.food not in there]
    others = {n for n, one in new if one.food not in enough}
    if not bare:
        return others - set(keeps)
    some = [n for n, one in new if is_green(one) and one.at_table in wanted]
    sooner = {n for n in takewhile(lambda n: n not in others, some) if n not in keeps}
    return others & set(some) and sooner | others & set(some)


def more_mains(
    day: date,
    table: Table,
    menu: Menu,
    coming: Iterable[tuple[int, Candidate]],
    keeps: Collection[int],
    pressing: Collection[int],
) -> list[set[int]]:
    """Of the mains `coming` those that an evening could do with and that are not too much for it:
    such as lie there already, then others. Where only a part of the table is fed any but what a
    group `keeps` to last; of those for guests too few of whom are left out no single egg; else what
    is `pressing`, and more than a bite of it."""
    heads, laid = table.appetite.sit(day), menu.laid(day, _MAIN)
    if laid >= heads:
        return []
    fed, guests = laid >= FED * heads, heads > table.appetite.people

    def suits(number: int, one: Candidate) -> bool:
        if one.at_table is not Role.MAIN or laid + one.servings > FILLS * heads:
            return False
        if not fed:
            return number not in keeps
        if guests:
            return number not in keeps and 2 * one.servings >= heads - laid
        return number in pressing and one.servings >= BITE * heads

    mains = [(n, one) for n, one in coming if suits(n, one)]
    if not mains:
        return []
    on = {pick.candidate.food for pick in menu.picks if day in pick.days}
    return [{n for n, one in mains if one.food in on}, {n for n, _ in mains}]


def _enough(menu: Menu, table: Table) -> set[str]:
    """The foods of which as much lies in the week as is eaten in one; what guests eat beside their
    main is more."""
    laid: dict[str, float] = defaultdict(float)
    for pick in (one for one in menu.picks if one.why is not Why.GUESTS):
        laid[pick.candidate.food] += pick.candidate.servings
    most = table.appetite.of_food
    return {
        food for food, servings in laid.items() if servings >= most(food) * max(1, table.factor)
    }


def is_green(one: Candidate) -> bool:
    """Whether it neither fills nor only flavours."""
    return one.food not in STAPLES and one.a_head >= 1


def is_garden(one: Candidate) -> bool:
    """Whether it is of those that are what is green of a meal."""
    return one.at_table in _GARDEN and is_green(one)


def is_meal(one: Candidate) -> bool:
    """Whether a meal is taken out of bulk, and not an onion for the pot."""
    return one.bulk and one.at_table in A_HEAD and one.a_head >= 1
