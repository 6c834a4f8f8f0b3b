"""What stands of a food and till when: the week and the outlook say one pace."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date
from functools import partial
from typing import NamedTuple

from pantry_tui.core.plan import pace_words
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.pace import CRUMB, Pace, Portion, pace
from pantry_tui.core.plan.pace_words import SERVINGS, Unit
from pantry_tui.core.plan.past_best import wanted_by
from pantry_tui.core.words import Group, Role, State
from pantry_tui.services.books.past import past
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.accepted import planned
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.harvest import next_of
from pantry_tui.services.plan.nouns import counted_as
from pantry_tui.services.plan.portions import holds
from pantry_tui.services.plan.weekdraft import load
from pantry_tui.services.stock.stands import Stands, stands

#: What goes first in any case.
_RUNS = frozenset({State.OPEN, State.THAWED})


def by_food(p: Pantry) -> Mapping[str, Sequence[Stands]]:
    """What is fit to be eaten, by food; also what is kept apart."""

    def find() -> dict[str, list[Stands]]:
        found: dict[str, list[Stands]] = defaultdict(list)
        for one in stands(p):
            if one.usable and not one.asks:
                found[one.line.food].append(one)
        return found

    return p.once("standing by food", find)


class Portions(NamedTuple):
    """The servings of a food by the day they are best eaten by: the `parts` of which the accepted
    week eats none, and `whole` with what it eats, which is `in_week` with the last day on which it
    does; and the days on which it is a matter of safety, or what is past its best goes `soft`, of
    all that stands."""

    parts: Sequence[Portion]
    safety: frozenset[date]
    soft: frozenset[date]
    in_week: Portion
    whole: Sequence[Portion]


def portions(p: Pantry, group: Group, ours: Sequence[Stands]) -> Portions:
    """What stands, and of each container what is planned. What is past its best already cannot be
    saved by haste: nothing hurries it any more, but that a raw crop goes soft. What is open or
    thawed goes first in any case, and its days say nothing of how fast the shut ones of its food
    must go."""
    stand: dict[date | None, float] = defaultdict(float)
    by_date: dict[tuple[date | None, bool], float] = defaultdict(float)
    safety, soft, eaten, days, today = set(), set(), 0.0, [], p.today
    in_plan, week = planned(p), load(p)
    ends = week.end if week.plan is not None else None
    aside = _RUNS if any(one.state not in _RUNS for one in ours) else frozenset()
    for judged in ours:
        last = None if judged.line.hurried else judged.discard_after  # that has hours, no pace
        best = wanted_by(judged.best_by, judged.method, today)
        dates = () if judged.state in aside else (best, last)
        by = min((day for day in dates if day and day >= today), default=None)
        servings = servings_in(p, group, judged)
        if servings <= CRUMB:
            continue
        stand[by] += servings
        if by is not None and by == last:
            safety.add(by)
        elif by is not None and by != judged.best_by:
            soft.add(by)
        for of_week in _of_week(p, judged, in_plan) if in_plan else ():
            much = min(servings, of_week.servings)
            servings, eaten = servings - much, eaten + much
            days += [of_week.by] if of_week.by is not None else []
        if servings > CRUMB:
            missed = ends is not None and last is not None and last <= ends
            by_date[by, missed] += servings
    return Portions(
        [Portion(servings, day, missed) for (day, missed), servings in by_date.items()],
        frozenset(safety),
        frozenset(soft),
        Portion(eaten, max(days, default=None)),
        [Portion(servings, day) for day, servings in stand.items()],
    )


def _of_week(p: Pantry, one: Stands, in_plan: Mapping[str, Portion]) -> list[Portion]:
    """What is planned of equal containers."""
    batch = past(p)[one.line.batch]
    ids = (batch.id_of(int(number)) for number in one.line.numbers.split())
    return [in_plan[id_] for id_ in ids if id_ in in_plan]


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
    each = {
        (holds(p)(food, group, how, whole), counted_as(food, how, size))
        for food, how, whole, size in sizes
    }
    return SERVINGS if len(each) > 1 else Unit(*each.pop())


def usual_room(p: Pantry, eats: Appetite, food: str, group: Group, until: date | None) -> float:
    """Servings of it in a usual week at most, as the week itself lays them up to a day: its ceiling
    (`Appetite.room`). Of a main where few others stand it is all meals that those leave, as no day
    goes without one for a ceiling of the charts."""
    role = _role(p, food, group)
    most = eats.room(food, group, role)
    if role is not Role.MAIN or food in eats.foods or group.value in eats.groups:
        return most
    weeks = _days(p, until) / 7
    others: dict[Group, float] = defaultdict(float)
    for name, (of, servings) in _mains(p).items():
        if name != food:
            others[of] += min(eats.room(name, of, role), servings / weeks)
    taken = sum(min(much, eats.of_group(of)) for of, much in others.items())
    return max(most, eats.meals_a_week - taken)


def _role(p: Pantry, food: str, group: Group) -> Role:
    """What it is at table as it stands: dried beef is no main, though beef is one."""
    methods = {one.method for one in by_food(p).get(food, ())}
    roles = [role_at_table(p, food, group, method) for method in sorted(methods)]
    usual = role_at_table(p, food, group)
    return usual if usual in roles or not roles else roles[0]


def _mains(p: Pantry) -> Mapping[str, tuple[Group, float]]:
    """The mains that stand: of which group, and how many servings."""

    def find() -> dict[str, tuple[Group, float]]:
        found = {}
        for food, some in by_food(p).items():
            group = past(p)[some[0].line.batch].group
            mine = [one for one in some if role_at_table(p, food, group, one.method) is Role.MAIN]
            servings = sum(servings_in(p, group, one) for one in mine if not one.line.reserved)
            if mine:
                found[food] = group, servings
        return found

    return p.once("mains that stand", find)


def most_eaten(p: Pantry, eats: Appetite, food: str, group: Group, until: date | None) -> float:
    """The same of the weeks up to a day as they are known: days away and guests count."""
    days = _days(p, until)
    return usual_room(p, eats, food, group, until) * eats.factor(p.today, days) * 7 / days


def _days(p: Pantry, until: date | None) -> int:
    return 7 if until is None else max(7, (until - p.today).days + 1)


def beyond(p: Pantry, food: str, group: Group) -> str:
    """That more falls due than the household eats, as the outlook says it, or ""; how much of it
    is lost that way is said there alone."""
    known: dict[str, str] = p.once("beyond its paces", dict)
    if food not in known:
        found = paced(p, food, group)
        most = most_eaten(p, appetite(p), food, group, found.pace.tight)
        known[food] = pace_words.beyond(found.pace, most, found.unit)
    return known[food]


class Paced(NamedTuple):
    """The pace of a food as it stands today, what it is counted in, its next harvest, and the
    servings that it is reckoned of."""

    pace: Pace
    unit: Unit
    harvest: date
    stands: Portions

    @property
    def passing(self) -> str:
        """What happens on the date that presses: it is one of safety, or of quality alone."""
        tight = self.pace.tight
        if tight in self.stands.soft - self.stands.safety:
            return pace_words.GO_SOFT
        return "pass their date" if tight in self.stands.safety else "pass their best"


def paced(p: Pantry, food: str, group: Group) -> Paced:
    """Of all of it that is not kept apart."""
    known: dict[str, Paced] = p.once("paces", dict)
    if food not in known:
        ours = [one for one in by_food(p).get(food, ()) if not one.line.reserved]
        stands, harvest = portions(p, group, ours), next_of(p, food, p.today)
        its = pace_to(p, stands, harvest)
        known[food] = Paced(its, unit_of(p, group, ours), harvest, stands)
    return known[food]


def pace_to(p: Pantry, stands: Portions, end: date) -> Pace:
    """What its dates ask for to the `end`: the same whether a week is accepted or not, but that
    nobody eats more slowly after a week that has less of it."""
    rest = pace(stands.parts, end, p.today, stands.in_week)
    if not stands.in_week.servings:
        return rest
    whole = pace(stands.whole, end, p.today)
    return rest if rest.needs > whole.needs else whole
