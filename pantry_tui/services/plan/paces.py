"""What stands of a food and till when: the week and the outlook say one pace."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from functools import partial

from pantry_tui.core.plan import pace_words
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.pace import Pace, Portion, pace
from pantry_tui.core.plan.pace_words import SERVINGS, Unit
from pantry_tui.core.plan.roles import A_HEAD
from pantry_tui.core.words import Group, Verdict
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.harvest import next_of
from pantry_tui.services.plan.nouns import noun
from pantry_tui.services.plan.portions import holds
from pantry_tui.services.stock.stands import Stands, stands


def by_food(p: Pantry) -> Mapping[str, Sequence[Stands]]:
    """What is fit to be eaten, by food; also what is kept apart."""

    def find() -> dict[str, list[Stands]]:
        found: dict[str, list[Stands]] = defaultdict(list)
        for one in stands(p):
            if one.usable and one.verdict is not Verdict.UNKNOWN:
                found[one.line.food].append(one)
        return found

    return p.once("standing by food", find)


def portions(p: Pantry, group: Group, ours: Iterable[Stands]) -> tuple[list[Portion], set[date]]:
    """Servings by the day they are best eaten by, and those of the days on which it is a matter of
    safety. What is past its best already cannot be saved by haste: nothing hurries it any more."""
    by_date: dict[date | None, float] = defaultdict(float)
    safety = set()
    for judged in ours:
        last = None if judged.line.hurried else judged.discard_after  # that has hours, no pace
        dated = [day for day in (judged.best_by, last) if day and day >= p.today]
        by_date[min(dated, default=None)] += servings_in(p, group, judged)
        if dated and min(dated) == last:
            safety.add(min(dated))
    return [Portion(servings, day) for day, servings in by_date.items()], safety


def servings_in(p: Pantry, group: Group, one: Stands) -> float:
    """Servings in equal containers now."""
    if one.whole is not None:
        return one.line.n * holds(p)(one.line.food, group, one.method, one.whole)
    kept = past(p)[one.line.batch].kept
    much = partial(holds(p), one.line.food, group, one.method)
    mine = [kept[int(number) - 1] for number in one.line.numbers.split()]
    return sum(much(held.came.held) * held.left for held in mine)


def unit_of(p: Pantry, group: Group, ours: Sequence[Stands]) -> Unit:
    """Containers, where all that stand are of one size and none is drawn from; else servings."""
    if not ours or any(one.line.amount or one.whole is None for one in ours):
        return SERVINGS
    sizes = {(one.line.food, one.method, one.whole or "", one.line.size) for one in ours}
    each = {(holds(p)(food, group, how, whole), noun(size)) for food, how, whole, size in sizes}
    return SERVINGS if len(each) > 1 else Unit(*each.pop())


def most_eaten(p: Pantry, eats: Appetite, food: str, group: Group, until: date | None) -> float:
    """Servings a week that the household can eat of it up to a day: what it says itself, else all
    meals of what the food is at table, else what the charts have. Days away and guests count."""
    usual = min(eats.of_food(food), eats.of_group(group))
    a_head = A_HEAD.get(role_at_table(p, food, group))
    if a_head is not None and food not in eats.foods and group.value not in eats.groups:
        usual = a_head * eats.meals_a_week
    days = 7 if until is None else max(7, (until - p.today).days + 1)
    return usual * eats.factor(p.today, days) * 7 / days


def beyond(p: Pantry, food: str, group: Group) -> str:
    """That more falls due than the household eats, as the outlook says it, or ""."""
    known: dict[str, str] = p.once("beyond its paces", dict)
    if food not in known:
        its, unit, _ = paced(p, food, group)
        parts, _ = portions(p, group, _ours(p, food))
        most = most_eaten(p, appetite(p), food, group, its.tight)
        known[food] = pace_words.beyond(parts, its, most, unit, p.today)
    return known[food]


def _ours(p: Pantry, food: str) -> list[Stands]:
    return [one for one in by_food(p).get(food, ()) if not one.line.reserved]


def paced(p: Pantry, food: str, group: Group) -> tuple[Pace, Unit, date]:
    """The pace of a food as it stands today, what it is counted in, and its next harvest."""
    known: dict[str, tuple[Pace, Unit, date]] = p.once("paces", dict)
    if food not in known:
        ours = _ours(p, food)
        harvest = next_of(p, food, p.today)
        parts, _ = portions(p, group, ours)
        known[food] = pace(parts, harvest, p.today), unit_of(p, group, ours), harvest
    return known[food]
