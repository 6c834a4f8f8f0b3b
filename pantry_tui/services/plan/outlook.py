"""Supply against time, per food, per group and for the household, to the next harvest; both
alarms; what to put up next, and which food stands in for a crop that failed."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date

from pantry_tui.core.canned import LIDDED
from pantry_tui.core.dataclass import dataclass, replace
from pantry_tui.core.plan import pace_words as saying
from pantry_tui.core.plan.appetite import Appetite
from pantry_tui.core.plan.outlook import Ahead, ahead, shared, together
from pantry_tui.core.plan.pace import Portion, next_harvest, pace
from pantry_tui.core.words import Group, Verdict
from pantry_tui.services.batchwork import jars
from pantry_tui.services.books.past import Past, past
from pantry_tui.services.books.rating import verdicts
from pantry_tui.services.books.rows import FoodAhead, FoodYear, OutlookView
from pantry_tui.services.books.year import years
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan import putup_next
from pantry_tui.services.plan.appetite import appetite
from pantry_tui.services.plan.eaten import eaten_a_week
from pantry_tui.services.plan.portions import holds, left_in
from pantry_tui.services.plan.putup_next import Ask, Demand, Usual
from pantry_tui.services.plan.substitute import substitutes
from pantry_tui.services.stock.came_of import born
from pantry_tui.services.stock.ready import ready
from pantry_tui.services.stock.stands import Stands, containers_in, stands


@dataclass(frozen=True, slots=True)
class _Food:
    """One food while the outlook is reckoned."""

    name: str
    group: Group
    parts: list[Portion]
    safety: frozenset[date]  # the dates after which it is discarded, not only past its best
    standing: list[Stands]
    reserved: int
    harvest: date
    ahead: Ahead
    way: Usual
    unit: saying.Unit
    wanted: Demand
    eats: bool


def outlook(p: Pantry, until: date | None = None, ask: Ask | None = None) -> OutlookView:
    """Every food that stands or was eaten lately, the most pressing first. `until` replaces all
    harvests. What is kept apart as a gift is no supply, and is counted by itself."""
    ready(p)
    ask = ask or Ask()
    foods = _foods(p, until)
    plans = {one.name: _row(p, one, ask) for one in foods}
    shifts = _shift(p, foods, plans)
    rows = sorted(plans.values(), key=lambda one: (-one.lost, one.runs_out or date.max, one.food))
    groups = [
        _together(p, group.value, [one for one in foods if one.group is group], rows)
        for group in sorted(Group, key=str)
        if any(one.group is group for one in foods)
    ]
    notes = [one.short_lived for one in rows if one.short_lived] if ask.years > 1 else []
    notes += jars.enough(
        p,
        [
            (plans[one.name].container, plans[one.name].put_up, one.way.batch.method in LIDDED)
            for one in foods
        ],
    )
    return OutlookView(
        p.today,
        tuple(rows),
        tuple(groups),
        _together(p, "whole household", foods, rows),
        tuple(_alarms(rows)),
        tuple(shifts),
        tuple(notes),
    )


# -- one food --------------------------------------------------------------------------------------


def _foods(p: Pantry, until: date | None) -> list[_Food]:
    eaten = eaten_a_week(p)
    books: dict[str, list[FoodYear]] = defaultdict(list)
    for year in p.once("years", lambda: years(p)):
        books[year.food].append(year)
    standing: dict[str, list[Stands]] = defaultdict(list)
    for one in stands(p):
        if one.usable and one.verdict is not Verdict.UNKNOWN:
            standing[one.line.food].append(one)
    return [
        _food(p, name, batches, standing[name], eaten.get(name), books[name], until)
        for name, batches in putup_next.by_food(p).items()
        if standing[name] or name in eaten
    ]


def _food(
    p: Pantry,
    name: str,
    batches: Sequence[Past],
    standing: Sequence[Stands],
    eaten: float | None,
    book: Sequence[FoodYear],
    until: date | None,
) -> _Food:
    way = putup_next.usual(p, batches)
    group = way.batch.food.group
    ours = [one for one in standing if not one.line.reserved]
    by_date: dict[date | None, float] = defaultdict(float)
    safety = set()
    for judged in ours:
        # What is past its best already cannot be saved by haste: nothing hurries it any more.
        dated = [day for day in (judged.best_by, judged.discard_after) if day and day >= p.today]
        by_date[min(dated, default=None)] += _left_in(p, group, judged)
        if dated and min(dated) == judged.discard_after:
            safety.add(min(dated))
    parts = [Portion(servings, day) for day, servings in by_date.items()]
    harvest = next_harvest(_harvest_month(p, name), p.today)
    eats = appetite(p)
    ceiling = min(eats.of_food(name), eats.of_group(group))
    coming = ahead(parts, until or harvest, p.today, eaten=eaten, ceiling=ceiling)
    # How far one looks ahead does not change how much the stock gives to its next harvest.
    most = min(pace(parts, harvest, p.today).can, ceiling)
    wanted = putup_next.demand(p, eaten, most, book, way, batches)
    wanted = _as_said(eats, name, group, wanted)
    unit = putup_next.unit_of(p, ours, way)
    return _Food(
        name,
        group,
        parts,
        frozenset(safety),
        ours,
        sum(one.line.n for one in standing if one.line.reserved),
        until or harvest,
        coming,
        way,
        unit,
        wanted,
        eats.eats(name, group),
    )


def _left_in(p: Pantry, group: Group, one: Stands) -> float:
    """Servings in equal containers now."""
    if one.whole is not None:
        return one.line.n * holds(p)(one.line.food, group, one.whole)
    kept = past(p)[one.line.batch].kept
    mine = [kept[int(number) - 1] for number in one.line.numbers.split()]
    return sum(holds(p)(one.line.food, group, held.came.held) * held.left for held in mine)


def _as_said(eats: Appetite, name: str, group: Group, wanted: Demand) -> Demand:
    """No more than the household itself says that it eats."""
    said = [eats.of_food(name)] if name in eats.foods else []
    said += [eats.of_group(group)] if group.value in eats.groups else []
    most = min(said, default=wanted.a_week)
    if wanted.a_week <= most:
        return wanted
    return replace(wanted, a_week=most, source="as you said", known=True)


def _row(p: Pantry, one: _Food, ask: Ask) -> FoodAhead:
    found, known = one.ahead, one.wanted.source == "as eaten"
    unwanted = "" if one.eats else saying.unwanted(one.name, found, one.unit)
    much = unwanted or saying.hoarding(one.name, found, one.unit, one.harvest, p.today)
    little = saying.rationing(one.name, found, one.unit, one.harvest, p.today) if known else ""
    passing = "pass their date" if found.pace.tight in one.safety else "pass their best"
    next_ = putup_next.plan(p, one.name, one.wanted, one.way, found.left, ask)
    return FoodAhead(
        food=one.name,
        group=one.group.value,
        servings=round(found.pace.servings, 1),
        pace_need=round(found.pace.needs, 2),
        pace_can=round(found.pace.can, 2),
        rate=round(found.rate, 2),
        harvest=one.harvest,
        runs_out=found.runs_out,
        lost=round(found.lost, 1),
        left=round(found.left, 1),
        put_up=next_.count,
        supply=found.supply,
        says=much or little,
        pace_says=unwanted
        or saying.pace_in_words(
            one.name, one.parts, found, one.unit, one.harvest, p.today, passing
        ),
        hoarding=much,
        rationing=little,
        container=one.way.batch.size or one.way.unit.one,
        pounds=next_.pounds,
        crop=next_.crop,
        pounds_note=next_.note,
        reckoning=next_.reckoning,
        short_lived=next_.short_lived,
        reserved=one.reserved,
        tasted=verdicts(p, one.name),
        eaten_known=known,
    )


# -- groups and the household ----------------------------------------------------------------------


def _together(p: Pantry, name: str, foods: Sequence[_Food], rows: Sequence[FoodAhead]) -> FoodAhead:
    """The same of several foods: a group by its own ceiling, the household by all of them."""
    mine = {one.name for one in foods}
    groups = {one.group for one in foods}
    ceiling = sum(appetite(p).of_group(group) for group in groups)
    parts = [part for one in foods for part in one.parts]
    found = together([(one.ahead, one.harvest) for one in foods], parts, p.today, ceiling)
    harvest = min((one.harvest for one in foods), default=next_harvest(None, p.today))
    rows = [row for row in rows if row.food in mine]
    weights = [row.pounds for row in rows if row.pounds is not None]
    says = ""
    if found.pace.needs > ceiling and found.lost >= saying.BULK_ALARM:
        says = (
            f"{name.capitalize()}: {found.pace.needs:.0f} servings a week fall due and you eat "
            f"{ceiling:g} at most: about {found.lost:.0f} servings pass their date."
        )
    return FoodAhead(
        food=name,
        group=name if len(groups) == 1 else "",
        servings=round(found.pace.servings, 1),
        pace_need=round(found.pace.needs, 2),
        pace_can=round(found.pace.can, 2),
        rate=round(found.rate, 2),
        harvest=harvest,
        runs_out=found.runs_out,
        lost=round(found.lost, 1),
        left=round(found.left, 1),
        put_up=sum(row.put_up for row in rows),
        supply=found.supply,
        says=says,
        pace_says=saying.pace_in_words(
            name,
            parts,
            found,
            saying.SERVINGS,
            harvest,
            p.today,
            until="the harvest of each",
        ),
        hoarding=says,
        pounds=round(sum(weights), 1) if weights else None,
        reserved=sum(row.reserved for row in rows),
    )


# -- alarms and substitutes ------------------------------------------------------------------------


def _alarms(rows: Sequence[FoodAhead]) -> list[str]:
    """The worst three, in servings lost, left over or missed; where both alarms hold, the worst of
    each kind is among them."""
    much = sorted((r for r in rows if r.hoarding), key=lambda r: -(r.lost + r.left))
    little = sorted((r for r in rows if r.rationing), key=lambda r: -_missed(r))
    ranked = [(r.lost + r.left, r.hoarding) for r in much] + [
        (_missed(r), r.rationing) for r in little
    ]
    ranked.sort(key=lambda one: -one[0])
    worst = [said for _, said in ranked[:3]]
    for kind in ([r.hoarding for r in much], [r.rationing for r in little]):
        if kind and not set(kind) & set(worst):
            worst[-1] = kind[0]
    return worst


def _missed(row: FoodAhead) -> float:
    assert row.runs_out is not None
    return row.rate * (row.harvest - row.runs_out).days / 7


def _shift(p: Pantry, foods: Sequence[_Food], plans: dict[str, FoodAhead]) -> list[str]:
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
        head = f"{name.capitalize()} gave {gave} of {target} {one.way.unit.noun}"
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


def _failed(p: Pantry, one: _Food) -> tuple[int, int] | None:
    """(containers it gave this year, containers wanted), when its harvest is over and it gave less
    than half; None else, and where nobody knows how much of it is eaten."""
    month = _harvest_month(p, one.name)
    if month is None or month >= p.today.month or not one.wanted.known:
        return None
    gave = sum(
        came.n * holds(p)(batch.food, batch.group, came.held)
        for batch in putup_next.by_food(p)[one.name]
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


def _harvest_month(p: Pantry, name: str) -> int | None:
    food = p.tables.index.find(name)
    return food.harvest_month if food else None


def _still_ahead(p: Pantry, name: str) -> bool:
    """Its harvest of this year is to come, or begins this month."""
    month = _harvest_month(p, name)
    return month is not None and month >= p.today.month


def _put_up_more(p: Pantry, other: _Food, plans: dict[str, FoodAhead], servings: float) -> int:
    extra = putup_next.containers(servings, other.way)
    row = plans[other.name]
    count = row.put_up + extra
    pounds, _, _ = putup_next.fresh_pounds(p, other.way, count)
    said = f"{row.reckoning} With {extra} more as a substitute: {count}."
    plans[other.name] = replace(row, put_up=count, pounds=pounds, reckoning=said)
    return extra
