"""Where the mains lie: they stay there, but that a day without one gets one of two of another."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from itertools import chain

from pantry_tui.core.plan.days import Chosen, Table, begun_on, picked, while_open
from pantry_tui.core.plan.menu import Menu, Pick, Why
from pantry_tui.core.plan.plate import FED
from pantry_tui.core.plan.roles import BITE
from pantry_tui.core.words import Role

#: What lies where the household put it, or where guests are.
_ASKED = frozenset({Why.KEPT, Why.GUESTS})


def settle(chosen: Iterable[Chosen], menu: Menu) -> None:
    """Where a main lies it stays, so that what is added for an empty day moves none away."""
    lies: dict[str, list[date]] = defaultdict(list)
    for pick in menu.picks:
        if pick.candidate.at_table is Role.MAIN:
            lies[pick.candidate.container].append(pick.day)
    loose = []
    for one in chosen:
        days = lies[one.candidate.container]
        if one.day is None:
            loose.append((one, days))
        elif one.day in days:
            days.remove(one.day)
    for one, days in loose:
        one.day = days.pop(0) if days else None


def balanced(chosen: Sequence[Chosen], table: Table, menu: Menu, bare: Iterable[date]) -> bool:
    """To each `bare` day goes, of what is chosen and lies as `menu` has it, a main that its own day
    can do without: the smallest that is no worse there. Whether anything moved."""
    mains: dict[date, list[Pick]] = defaultdict(list)
    for pick in menu.picks:
        if pick.candidate.at_table is Role.MAIN:
            for on in pick.days:
                mains[on].append(pick)
    moved = False
    for day in bare if any(len(picks) > 1 for picks in mains.values()) else ():
        found = [
            (pick.candidate.servings, abs((on - day).days), number, on)
            for on, picks in mains.items()
            if len(picks) > 1
            for pick in picks
            if _may_move(pick, picks, table, day)
            for number in chosen_as(chosen, pick, on)
        ]
        if found:
            _, _, number, on = min(found)
            container = chosen[number].candidate.container
            mains[on] = [pick for pick in mains[on] if pick.candidate.container != container]
            chosen[number].day = day
            moved = True
    return moved


def change_places(
    chosen: Sequence[Chosen], table: Table, menu: Menu, day: date, add: Callable[[date], bool]
) -> bool:
    """For a day on which nothing more can come, as all of it has to thaw, the main of another
    evening, where `add` finds another for that. Whether one did."""
    found = [
        (abs((pick.day - day).days), number, pick.day)
        for pick in menu.picks
        if pick.candidate.at_table is Role.MAIN
        and _fits(pick, table, day, several=True)
        and while_open(pick.candidate, day, begun_on(pick.candidate, menu))
        for number in chosen_as(chosen, pick, pick.day)
    ]
    for _, number, other in sorted(found):
        chosen[number].day = day
        if add(other):
            return True
        chosen[number].day = other
    return False


def left_for_later(chosen: Sequence[Chosen], menu: Menu, table: Table) -> Sequence[int]:
    """The places of what is chosen and its evening does not need, where nothing hurries it, or
    where it is a single egg beside chops; the last of them first."""
    found: set[int] = set()
    for pick in chain(_can_wait(menu, table), _odd(menu, table)):
        for number, one in enumerate(chosen):
            same = one.candidate.container == pick.candidate.container
            lies = one.why is pick.why and one.day in (None, pick.day) and not one.dish
            if same and lies and number not in found:
                found.add(number)
                break
    return sorted(found, reverse=True)


def _can_wait(menu: Menu, table: Table) -> Iterator[Pick]:
    """The mains that are there for their pace alone and lie on evenings that have enough without
    them, the last of the week first: of one evening the one that needs most of them goes."""
    mains = [pick for pick in menu.picks if pick.candidate.at_table is Role.MAIN]
    on = {day: menu.laid(day, {Role.MAIN}) for pick in mains for day in pick.days}
    for pick in sorted(mains, key=lambda one: (one.day, len(one.days)), reverse=True):
        enough = all(
            on[day] - share >= table.appetite.sit(day)
            for day, share in zip(pick.days, pick.parts, strict=True)
        )
        if enough and pick.why is Why.PACE and not pick.dish:
            for day, share in zip(pick.days, pick.parts, strict=True):
                on[day] -= share
            yield pick


def _odd(menu: Menu, table: Table) -> Iterator[Pick]:
    """What is no more than a bite a head beside mains that feed those who sit there; of what must
    be discarded by then each is eaten all the same."""
    of: dict[tuple[date, str], float] = defaultdict(float)
    mains = [pick for pick in menu.picks if pick.candidate.at_table is Role.MAIN]
    for pick in mains:
        for day, share in zip(pick.days, pick.parts, strict=True):
            of[day, pick.candidate.food] += share
    for pick in mains:
        mine, heads = of[pick.day, pick.candidate.food], table.appetite.sit(pick.day)
        fed = menu.laid(pick.day, {Role.MAIN}) - mine >= FED * heads
        alone = len(pick.days) == 1 and not pick.dish and not pick.candidate.bulk
        if pick.why in (Why.PACE, Why.BEGIN) and alone and fed and mine < BITE * heads:
            yield pick


def _may_move(pick: Pick, beside: Sequence[Pick], table: Table, day: date) -> bool:
    """Whether another main is enough on its day, and it can lie on `day` as well."""
    rest = sum(p.on(pick.day) for p in beside) - pick.parts[0]
    return rest >= FED * table.appetite.sit(pick.day) and _fits(pick, table, day)


def _fits(pick: Pick, table: Table, day: date, *, several: bool = False) -> bool:
    """Whether it is for one meal (or for `several`), nobody asked for it on its day, and on `day`
    it is enough, in time, and no more of it is wasted."""
    one = pick.candidate
    # What another main there leaves for tomorrow is for one meal all the same.
    many = not several and len(picked(Chosen(one, pick.why), pick.day, table).days) > 1
    if many or pick.dish or pick.why in _ASKED or pick.later:
        return False
    if 2 * one.servings < table.appetite.sit(day):
        return False  # no main for that day
    if not while_open(one, day, [pick.day]):
        return False
    in_time = day in table.possible(one) and day <= table.latest(one)
    return in_time and table.wasted(one, day) <= pick.spare


def chosen_as(chosen: Sequence[Chosen], pick: Pick, on: date) -> Iterator[int]:
    """The places of that meal among the chosen; a dish takes of the same bulk for itself."""
    for number, one in enumerate(chosen):
        alike = one.candidate.container == pick.candidate.container and not one.dish
        if alike and one.day == on:
            yield number
