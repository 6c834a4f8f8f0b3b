"""Supply against time, per food and group, to the next harvest; both alarms; what to put up."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from datetime import date

from pantry_tui.core import dates
from pantry_tui.core.events import Did
from pantry_tui.core.ledger import standing
from pantry_tui.core.outlook import Ahead, ahead, to_put_up
from pantry_tui.core.pace import Portion, next_harvest
from pantry_tui.core.rotation import UNFIT
from pantry_tui.core.words import Group, Verdict
from pantry_tui.services.appetite import appetite
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import FoodAhead, OutlookView
from pantry_tui.services.servings import servings

#: Weeks of use that the log must hold before the appetite is read from it.
LEARNED_AFTER = 8


def outlook(p: Pantry, until: date | None = None) -> OutlookView:
    """Every food that stands, the most pressing first. `until` replaces all harvests."""
    portions: dict[str, list[Portion]] = defaultdict(list)
    by_group: dict[str, list[Portion]] = defaultdict(list)
    sizes: dict[str, list[float]] = defaultdict(list)
    for container in p.stock.containers.values():
        judged = p.judge(container) if container.here else None
        if judged is None or judged.verdict in UNFIT or judged.verdict is Verdict.UNKNOWN:
            continue
        batch = p.stock.batches[container.batch]
        # What is past its best already cannot be saved by haste: nothing hurries it any more.
        dates_ahead = [
            day for day in (judged.best_by, judged.discard_after) if day and day >= p.today
        ]
        portion = Portion(servings(p, container), min(dates_ahead, default=None))
        portions[batch.food.name].append(portion)
        by_group[batch.food.group].append(portion)
        sizes[batch.food.name].append(portion.servings)
    used = _eaten_a_week(p)
    foods = [
        _food(p, name, parts, sizes[name], used.get(name), until)
        for name, parts in portions.items()
    ]
    foods.sort(key=lambda one: (-one.lost, one.runs_out or date.max, one.food))
    return OutlookView(
        p.today, tuple(foods), tuple(_groups(p, by_group, until)), tuple(_alarms(foods))
    )


def _alarms(foods: Sequence[FoodAhead]) -> list[str]:
    """The worst three that will be lost and the first three that will be gone, in a sentence
    each; what is only a jar or two is no alarm."""
    said = [one for one in foods if one.says]
    lost = [one.says for one in said if one.lost >= 1][:3]
    gone = sorted(
        (one for one in said if one.runs_out and one.lost < 1 and one.servings >= 12),
        key=lambda one: one.runs_out or date.max,
    )
    return lost + [one.says for one in gone[:3]]


def _food(
    p: Pantry,
    name: str,
    parts: Sequence[Portion],
    sizes: Sequence[float],
    eaten: float | None,
    until: date | None,
) -> FoodAhead:
    food = p.tables.index.find(name)
    harvest = until or next_harvest(food.harvest_month if food else None, p.today)
    found = ahead(parts, harvest, p.today, eaten=eaten, ceiling=appetite(p).of_food(name))
    size = sum(sizes) / len(sizes)
    facts = p.facts(name)
    return FoodAhead(
        food=name,
        group=facts.group.value if facts else "",
        servings=round(found.pace.servings, 1),
        pace_need=round(found.pace.needs, 2),
        pace_can=round(found.pace.can, 2),
        rate=round(found.rate, 2),
        harvest=harvest,
        runs_out=found.runs_out,
        lost=round(found.lost, 1),
        left=round(found.left, 1),
        # Without a learned appetite, as much a week as this year's stock can give.
        put_up=to_put_up(found.pace.can if eaten is None else eaten, 52, 1, size, found.left),
        supply=found.supply,
        says=_says(name, found, size, known=eaten is not None),
    )


def _says(name: str, found: Ahead, size: float, *, known: bool) -> str:
    """Both alarms in a sentence: what passes its date, or what runs out at the `known` appetite."""
    if found.lost >= size / 2:
        need = found.pace.needs / size
        tight = f" by {dates.say(found.pace.tight)}" if found.pace.tight else ""
        return (
            f"{name.capitalize()}: eat {need:.1f} a week{tight}, or about "
            f"{max(1, round(found.lost / size))} pass their date."
        )
    if found.runs_out is not None and known:
        return (
            f"{name.capitalize()}: gone about {dates.say(found.runs_out)}; "
            f"{found.pace.can / size:.1f} a week would last to the harvest."
        )
    if found.left >= 3 * size:
        return f"{name.capitalize()}: about {round(found.left / size)} left over at the harvest."
    return ""


def _groups(p: Pantry, by_group: dict[str, list[Portion]], until: date | None) -> list[FoodAhead]:
    """The same for each food group; its year is a year from today."""
    end = until or next_harvest(None, p.today)
    found = []
    for group, parts in sorted(by_group.items()):
        one = ahead(parts, end, p.today, ceiling=appetite(p).of_group(Group(group)))
        found.append(
            FoodAhead(
                food=str(group), group=str(group), servings=round(one.pace.servings, 1),
                pace_need=round(one.pace.needs, 2), pace_can=round(one.pace.can, 2),
                rate=round(one.rate, 2), harvest=end, runs_out=one.runs_out,
                lost=round(one.lost, 1), left=round(one.left, 1), put_up=0, supply=one.supply,
                says="",
            )
        )  # fmt: skip
    return found


def _eaten_a_week(p: Pantry) -> dict[str, float]:
    """Servings a week of each food over the last year, once the log holds weeks enough of it."""
    first: dict[str, date] = {}
    total: dict[str, float] = defaultdict(float)
    for event in standing(p.events):
        if event.did is not Did.USE or (p.today - event.day).days > 365:
            continue
        batch = p.stock.batches.get(event.batch)
        if batch is None:
            continue
        name = batch.food.name
        first[name] = min(first.get(name, event.day), event.day)
        if not event.data.get("left"):
            gone = (p.stock.containers[id_] for id_ in event.containers)
            total[name] += sum(servings(p, container) for container in gone)
    found = {}
    for name, since in first.items():
        weeks = (p.today - since).days / 7
        if weeks >= LEARNED_AFTER:
            found[name] = total[name] / weeks
    return found
