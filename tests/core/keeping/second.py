"""A second evaluator, slow and plain: it walks a container's life day by day.

It shares the rule rows with the program and nothing of its reckoning. Where it doubts, it is
strict. It answers three things: the last day that safety allows, whether the whole history is
covered by published figures, and on which day the quality life was spent.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from dateutil.relativedelta import relativedelta

from pantry_tui.core.keeping.rules import Rule
from pantry_tui.core.model import FoodFacts

PER_DAY = {"hours": 1 / 24, "days": 1.0, "weeks": 7.0, "months": 30.4375, "years": 365.25}
COLD = ("fridge", "freezer")
KEEPS_COOLER = {
    "boiling-water canned", "pressure canned", "jam", "vinegar pickle", "dried", "freeze-dried",
    "sugar preserve", "alcohol infusion", "flavoured vinegar", "rendered fat", "alcohol ferment",
    "vinegar ferment",
}  # fmt: skip
WARMEST_FIRST = ["room", "pantry", "cellar", "fridge", "freezer"]


@dataclass
class Day:
    """One day of a container: where, in what state, how warm, thawed how. `passing`: it was
    carried on within the day, so that limits count and a missing figure does not."""

    on: date
    climate: str
    state: str
    warm: float
    thawed: str = ""
    passing: bool = False


@dataclass
class Answer:
    last_safe: date | None
    covered: bool
    spent_on: date | None


def closeness(rule: Rule, food: FoodFacts) -> int:
    if ";" in rule.food:
        mine = {food.name, "group:" + food.group.value}
        if food.acidity.value != "low-acid":
            mine.add("acid:" + food.group.value)
        return 0 if mine & set(rule.food.split(";")) else -1
    if rule.food == food.name:
        return 3
    if rule.food.startswith("class:") and rule.food[6:] in food.classes:
        return 2
    if rule.food == "group:" + food.group.value:
        return 1
    return 0 if rule.food == "*" else -1


def rules_for(rules: list[Rule], food: FoodFacts, method: str, day: Day) -> list[Rule]:
    def here(climate: str, state: str) -> list[Rule]:
        return [
            rule
            for rule in rules
            if rule.method.value == method
            and rule.status.value == "current"
            and rule.state.value == state
            and climate in [c.value for c in rule.climates]
            and closeness(rule, food) >= 0
        ]

    found = here(day.climate, day.state)
    if not found and method in KEEPS_COOLER and day.climate != "freezer":
        for climate in reversed(WARMEST_FIRST[: WARMEST_FIRST.index(day.climate)]):
            warmer = [r for r in here(climate, day.state) if r.kind.value != "refuse"]
            if warmer:
                found = warmer
                break
    if not found and day.climate == "freezer" and day.state in ("open", "thawed"):
        # An opened pack may be frozen where a closed jar may not: it can no longer burst.
        found = [rule for rule in here("freezer", "sealed") if rule.kind.value != "refuse"]
    return found


def strictest(found: list[Rule], food: FoodFacts, kind: str) -> Rule | None:
    """Of the rules closest to the food, the one with the shortest life."""
    kinds = [rule for rule in found if rule.kind.value == kind]
    if not kinds:
        return None
    top = max(closeness(rule, food) for rule in kinds)
    nearest = [rule for rule in kinds if closeness(rule, food) == top]
    return min(nearest, key=lambda r: 1e9 if r.use is None else r.use * PER_DAY[r.unit])


def end_of(start: date, rule: Rule) -> date:
    assert rule.use is not None
    if rule.unit in ("months", "years"):
        return start + relativedelta(months=int(rule.use * (12 if rule.unit == "years" else 1)))
    return start + timedelta(days=int(rule.use * PER_DAY[rule.unit]))


def refused(found: list[Rule], food: FoodFacts) -> bool:
    """A refusal counts unless a figure stands closer to the food."""
    figures = [closeness(r, food) for r in found if r.use is not None]
    nearest = max(figures, default=-1)
    return any(r.kind.value == "refuse" and closeness(r, food) >= nearest for r in found)


def too_warm(found: list[Rule], day: Day) -> bool:
    if day.climate != "fridge":
        return False
    warm_places = {"room", "pantry", "cellar"}
    only_cold = [
        r for r in found if r.use is not None and not warm_places & {c.value for c in r.climates}
    ]
    if not only_cold:
        return False
    asked = [r.temp_f_max for r in only_cold if r.kind.value == "safety" and r.temp_f_max]
    return day.warm > min([40.0] + [max(38.0, temp) for temp in asked])


def evaluate(food: FoodFacts, method: str, rules: list[Rule], days: list[Day]) -> Answer:
    """Walk the days. Every day on which a limit speaks, it counts from the state's first day."""
    first: dict[str, date] = {}
    safe: list[date] = []
    covered = True
    life: dict[str, float] = {}
    known: dict[tuple[str, str], list[Rule]] = {}
    spent_on: date | None = None
    for day in days:
        start = first.setdefault(day.state, day.on)
        where = (day.climate, day.state)
        if where not in known:
            known[where] = rules_for(rules, food, method, day)
        found = known[where]
        if refused(found, food):
            safe.append(day.on - timedelta(days=1))
        limit = strictest(found, food, "safety")
        if limit is not None and limit.use is not None:
            safe.append(end_of(start, limit))
            if too_warm(found, day):
                safe.append(day.on)
        if day.state == "thawed" and day.thawed:
            safe.append(start)
        warm_jar = method in ("boiling-water canned", "pressure canned", "jam", "vinegar pickle")
        warm_jar = warm_jar and day.climate not in COLD and not 32 <= day.warm <= 95
        figure = any(rule.use is not None for rule in found)
        if (
            day.state != "working"
            and not day.passing
            and (not figure or too_warm(found, day) or refused(found, food) or warm_jar)
        ):
            covered = False
        quality = strictest(found, food, "quality")
        if quality is not None and quality.use is not None and not day.passing:
            whole = (end_of(day.on, quality) - day.on).days
            if day.climate == "freezer" and day.warm > 0:
                whole = whole * 0.25 ** (day.warm / 10)
            life[day.state] = life.get(day.state, 0.0) + 1 / max(whole, 1e-9)
            if life[day.state] > 1.02 and spent_on is None:
                spent_on = day.on
    return Answer(min(safe, default=None), covered, spent_on)
