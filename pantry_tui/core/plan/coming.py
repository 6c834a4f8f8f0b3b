"""What of all that stands should be opened this week next to what is chosen, and what comes after
it, with what presses, what its group keeps and what is too big for the table. Pure."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping, Sequence
from typing import NamedTuple

from pantry_tui.core.plan.beside import one_beside, open_beside
from pantry_tui.core.plan.days import Chosen, Table
from pantry_tui.core.plan.guests import too_big
from pantry_tui.core.plan.lost import eaten_in_time
from pantry_tui.core.plan.lots import by_itself, discarded_by, due_by, lots_of
from pantry_tui.core.plan.menu import Candidate, Needs, Why
from pantry_tui.core.plan.plate import is_garden
from pantry_tui.core.plan.schedule import A_FEW, CALM, choose
from pantry_tui.core.plan.shares import KNOWN
from pantry_tui.core.words import Role


class Coming(NamedTuple):
    """By number: what `should` go with the weeks that its food has to spare, and what comes `next`,
    in order; of that what its group `keeps` to last, what is `pressing`, what is too `big`."""

    should: list[tuple[int, float]]
    next: list[int]
    keeps: set[int]
    pressing: set[int]
    big: dict[int, Candidate]


def what_comes(
    standing: Mapping[int, Candidate], laid: Sequence[Chosen], table: Table, needs: Needs
) -> Coming:
    """First what must be discarded after this week, then what passes its best, both as if an open
    jar that keeps for weeks were not there, then the rest. And what would come next: what would be
    discarded before all others."""
    # What cannot be thawed in the days that are left waits for the next week.
    possible, end = _possible_at_all(table), table.end
    due = {n for n, one in standing.items() if due_by(one, end)}
    begun = {one.candidate.container for one in laid if not one.dish}
    coming = ((n, standing[n]) for n in by_itself(standing.items(), begun, end))
    free = {n: one for n, one in coming if n in due or possible(one)}
    chosen = [one.candidate for one in laid if not _for_guests(one, table)]
    big = too_big(free, table, chosen)
    # What waits for a hand, or for its day, comes only where an evening has nothing else.
    waits = {n: one for n, one in free.items() if n not in due and table.waits(one)}
    free = {n: one for n, one in free.items() if n not in big and n not in waits}
    here = open_beside(one.candidate for one in laid if not one.dish)
    near = [one for one in chosen if due_by(one, end) or not one.must]
    lost = {n: free[n] for n in due if n in free and discarded_by(free[n], end)}
    hurry = [(number, 0.0) for number in eaten_in_time(lost, laid, table)]
    opened = [free[number] for number, _ in hurry]
    best = {n: one for n, one in free.items() if n in due and n not in lost}
    hurry += _fits(best, [*near, *opened], here | open_beside(opened), table, needs).should
    first = {number: free[number] for number, _ in hurry}
    here |= open_beside(first.values())
    late = [n for n in lost if n not in first]
    rest = {n: one for n, one in free.items() if n not in first and n not in lost}
    found = _fits(rest, [*chosen, *first.values()], here, table, needs)
    coming_next = [*found.next, *_ready(rest, [*found.next, *(n for n, _ in found.should)])]
    return Coming(
        [*hurry, *found.should],
        [*late, *coming_next, *waits, *big],
        found.keeps,
        found.pressing | set(late),
        big,
    )


def _possible_at_all(table: Table) -> Callable[[Candidate], bool]:
    """Whether there is any day for it; of thousands that are alike in it one is asked."""
    known: dict[tuple[object, ...], bool] = {}

    def any_day(one: Candidate) -> bool:
        key = one.frozen, one.thaw_days, one.ready, one.safe_until, one.care_from
        if key not in known:
            known[key] = bool(table.possible(one))
        return known[key]

    return any_day


def _ready(rest: Mapping[int, Candidate], named: Collection[int]) -> list[int]:
    """A few more mains of a food of which all that comes has to thaw, and others are ready: for
    tonight."""
    thaw = {rest[n].food for n in named if rest[n].thaw_days}
    thaw -= {rest[n].food for n in named if not rest[n].thaw_days}
    found: dict[str, list[int]] = {food: [] for food in thaw}
    for number, one in rest.items():
        if one.food in found and not one.thaw_days and one.at_table is Role.MAIN:
            found[one.food].append(number)
    return [number for some in found.values() for number in some[:A_FEW]]


def _for_guests(one: Chosen, table: Table) -> bool:
    """The greens that guests eat at once are more than a week has of them for so many heads; what
    the household itself said of them holds."""
    mine = one.candidate
    said = table.appetite.said(mine.food, mine.group)
    return one.why is Why.GUESTS and is_garden(mine) and not said


def _fits(
    free: Mapping[int, Candidate],
    on_table: Sequence[Candidate],
    here: Collection[Role],
    table: Table,
    needs: Needs,
) -> Coming:
    """What of `free` has room beside what is on the table, where of the kinds `here` one is open,
    and the rest in its order."""
    numbers, appetite = list(free), table.appetite
    lots = lots_of(free.values(), table)
    most = appetite.ceilings(one.food for one in (*free.values(), *on_table))
    ahead = [table.factor, *appetite.coming(table.next_week, KNOWN)]
    already = lots_of(on_table, table)
    week, more = choose(lots, most, ahead, already, needs.shares, needs.credits)
    week, held = one_beside(week, [free[n] for n in numbers], table, here)
    coming_next = [*held, *more]
    return Coming(
        [(numbers[opening.lot], opening.spare) for opening in week],
        [numbers[opening.lot] for opening in coming_next],
        {numbers[one.lot] for one in coming_next if one.kept},
        {numbers[one.lot] for one in coming_next if one.spare <= CALM},
        {},
    )
