"""Where a crop failed: how much more of its substitutes to put up."""

from __future__ import annotations

from collections.abc import Sequence

from pantry_tui.core.dataclass import replace
from pantry_tui.core.plan.outlook import shared
from pantry_tui.core.text import begun
from pantry_tui.services.books.past import by_food
from pantry_tui.services.books.rows import FoodAhead
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import harvest as harvests
from pantry_tui.services.plan import putup_next
from pantry_tui.services.plan.foods_ahead import OneFood, container_of
from pantry_tui.services.plan.portions import holds, left_in
from pantry_tui.services.plan.substitute import substitutes
from pantry_tui.services.stock.came_of import born
from pantry_tui.services.stock.stands import containers_in


def shift(p: Pantry, foods: Sequence[OneFood], plans: dict[str, FoodAhead]) -> list[str]:
    """Where a crop failed, its substitutes put up more; `plans` is changed. Returns sentences."""
    by_name = {one.name: one for one in foods}
    said = []
    for name, others in substitutes(p).items():
        one = by_name.get(name)
        short = _failed(p, one) if one is not None else None
        if one is None or short is None:
            continue
        gave, target = short
        lying_ahead = [other for other in others if other in plans and _still_ahead(p, other)]
        paces = {other: plans[other].rate for other in lying_ahead}
        head = f"{begun(name)} gave {gave} of {target} {one.way.unit.noun}"
        if not paces:
            said.append(f"{head}; no substitute of it has its harvest still ahead.")
            continue
        missing = (target - gave) * one.way.servings
        more = []
        for other, amount in shared(missing, paces).items():
            more.append(_put_up_more(p, by_name[other], plans, amount))
        noun = by_name[lying_ahead[0]].way.unit.noun
        first = f"{more[0]} more {noun} of {lying_ahead[0]}"
        rest = [
            f"{count} of {other}" for other, count in zip(lying_ahead[1:], more[1:], strict=True)
        ]
        said.append(f"{head}: {', '.join([first, *rest])}.")
    return said


def _failed(p: Pantry, one: OneFood) -> tuple[int, int] | None:
    """(containers it gave this year, containers wanted), when its harvest is over and it gave less
    than half; None else, where nobody knows how much of it is eaten, and of what is only bought."""
    month = harvests.month_of(p, one.name)
    if month is None or month >= p.today.month or not (one.wanted.known and one.puts_up):
        return None
    gave = sum(
        came.n * holds(p)(batch.food, batch.group, batch.method, came.held)
        for batch in by_food(p)[one.name]
        for came in batch.came
        if came.born.year == p.today.year
    )
    older = sum(
        left_in(p, container)
        for stood in one.standing
        for container in containers_in(p, stood)
        if born(p.stock.batches[container.batch], container).year != p.today.year
    )
    wanted = putup_next.target(p, one.wanted, one.way, older)
    if gave >= wanted * one.way.servings / 2:
        return None
    return round(gave / one.way.servings), wanted


def _still_ahead(p: Pantry, name: str) -> bool:
    """Its harvest of this year is to come, or begins this month."""
    month = harvests.month_of(p, name)
    return month is not None and month >= p.today.month


def _put_up_more(p: Pantry, other: OneFood, plans: dict[str, FoodAhead], servings: float) -> int:
    extra = putup_next.containers(servings, other.way)
    row = plans[other.name]
    count = (row.put_up or 0) + extra
    pounds, _, _ = putup_next.fresh_pounds(p, other.way, count)
    said = f"{row.reckoning} With {extra} more as a substitute: {count}."
    plans[other.name] = replace(
        row, put_up=count, pounds=pounds, reckoning=said, container=container_of(other)
    )
    return extra
