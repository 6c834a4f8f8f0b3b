"""Random stores and their weeks: what a plan must never do, seen with the eyes of each day.

A plan is carried out in thought: what is to be thawed is thawed on the day it says, what is eaten
is opened on its first day, and every container is judged on each of its days, as that day finds it.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

from pantry_tui.core.amounts import amount_of
from pantry_tui.core.keeping.exposure import as_if
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import DAY_MIN, Container, Turn, When
from pantry_tui.core.vessels import is_closed
from pantry_tui.core.words import Climate, State
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan import wishes
from pantry_tui.services.rows import Take
from pantry_tui.services.stock import act, places, view
from pantry_tui.services.stock.act import cold_place

TODAY = date(2026, 11, 25)
PLACES = (("larder", "pantry"), ("cellar", "cellar"), ("fridge", "fridge"), ("freezer", "freezer"))
STOCK = (
    "{n} pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial",
    "{n} pint jars runner beans, pressure canned, larder, by=others",
    "{n} quart jars peaches, boiling-water canned, larder",
    "{n} half-pint jars strawberry jam, jam, larder",
    "{n} 1 lb packs ground beef, frozen, freezer",
    "{n} 9 lb bags beef roast, frozen, freezer",
    "1 20 lb bag turkey, frozen, freezer",
    "{n} pint bags peas, frozen, freezer",
    "1 bag peas, frozen, freezer, amount=5 lb",
    "{n} packs salmon, frozen, freezer, vacuum=yes",
    "{n} tubs lasagne, cooked meal, fridge",
    "{n} tubs lasagne, frozen, freezer",
    "1 crate carrots, cellar-stored, cellar, amount=30 lb",
    "1 bag carrots, cellar-stored, fridge, amount=5 lb",
    "{n} jars garlic, in oil, fridge",
    "{n} packs trout, hot smoked, fridge",
    "{n} jars apples, dried, larder",
    "1 crock sauerkraut, lactic ferment, cellar, amount=10 lb",
    "{n} pint jars dill pickles, vinegar pickle, larder, vinegar=5%",
    "1 dozen eggs, fresh, fridge",
    "{n} tubs chicken stock, frozen, freezer",
)


def build(path: Path, seed: int) -> Pantry:
    """A store of a dozen batches, some of it begun, moved or thawed."""
    dice = random.Random(seed)
    create(path, altitude_ft=dice.choice([None, 0, 1800]), people=dice.randint(1, 6))
    p = open_pantry(path, TODAY)
    for name, climate in PLACES:
        places.add(p, name, climate)
    for line in dice.sample(STOCK, dice.randint(3, 12)):
        far = dice.choice([0, 1, 2, 3, 5, 9, 20, 60, 200, 400])
        made = (TODAY - timedelta(days=dice.randint(0, far))).isoformat()
        text = f"{line.format(n=dice.randint(1, 6))}, {made}"
        try:
            code = putup.put_up(p, putup.read(p, text)).code
        except PantryError:
            continue
        for _ in range(dice.randint(0, 3)):
            _something(p, code, dice)
    return p


def _something(p: Pantry, code: str, dice: random.Random) -> None:
    acts = (
        lambda: act.open_(p, code),
        lambda: act.thaw(p, code),
        lambda: act.use(p, code, "1 lb"),
        lambda: act.move(p, code, dice.choice(PLACES)[0], 1),
        lambda: act.ready(p, code),
        lambda: act.use(p, code),
    )
    try:
        dice.choice(acts)()
    except PantryError:
        return


def faults(p: Pantry, start: date | None, dice: random.Random) -> Iterator[str]:
    """What is wrong with the week from `start`, in words; with a few wishes put on days."""
    if start is None:
        for row in dice.sample(view.due(p), min(2, len(view.due(p)))):
            try:
                wishes.pin(p, row.container_ids[0], p.today + timedelta(days=dice.randint(0, 6)))
            except PantryError:
                continue
    found = weeks.week(p, start)
    first = max(found.start, p.today)
    drawn: dict[str, float] = defaultdict(float)
    begun: dict[str, date] = {}
    by_name = {
        f"{p.stock.batches[c.batch].code}/{c.number}": c for c in p.stock.containers.values()
    }
    for take in found.take:
        for name in take.containers:
            container = by_name[name]
            if take.amount:
                drawn[name] += float(amount_of(take.amount).number)
            begun[name] = min(begun.get(name, date.max), take.day)
            yield from _take_faults(p, take, container, name, begun[name])
        if take.thaw_by is not None and take.thaw_by < first:
            yield f"{take.code} is to be thawed from {take.thaw_by}, before the week"
        if not take.days or not all(found.start <= day <= found.end for day in take.days):
            yield f"{take.code} is eaten on {take.days}"
    for name, amount in drawn.items():
        left = by_name[name].left
        if left is None or amount > float(left.number) + 1e-6:
            yield f"{name}: {amount:g} of {left}"


def _take_faults(
    p: Pantry, take: Take, container: Container, name: str, first: date
) -> Iterator[str]:
    batch = p.stock.batches[container.batch]
    frozen = p.places[container.place].climate is Climate.FREEZER
    then = container
    if frozen and take.thaw_by is not None:
        if is_vacuum(batch.process):
            then = as_if(then, Turn(_at(p, take.thaw_by, 420), "", None, State.OPEN))
        place = cold_place(p, container, State.THAWED)
        then = as_if(then, Turn(_at(p, take.thaw_by, 480), "", place, State.THAWED))
    elif container.state is State.SEALED and is_closed(batch.method, batch.size):
        place = cold_place(p, container, State.OPEN)
        then = as_if(then, Turn(_at(p, first, 720), "", place, State.OPEN))
    for day in take.days:
        now = _at(p, day, DAY_MIN - 1)
        assessed = p.judging.of(batch, then, now)
        judged = assessed.on(day)
        if judged.verdict in UNFIT or not judged.usable:
            yield (
                f"{name} {batch.food.name} ({container.state} in {p.where(container)}) on {day}: "
                f"{judged.verdict}, {judged.discard_after}, {judged.reasons[:1]}, thaw from "
                f"{take.thaw_by}, days {take.days}"
            )
        thawed = [span.thawed for span in assessed.spans if span.thawed is not None]
        if frozen and take.thaw_by is not None and max(thawed, default=day) > day:
            yield f"{name} {batch.food.name} is not thawed on {day}: {thawed}"


def is_vacuum(process: tuple[tuple[str, str], ...]) -> bool:
    return dict(process).get("vacuum") == "yes"


def _at(p: Pantry, day: date, minute: int) -> When:
    zone = p.clock.now.zone
    then = day.toordinal() * DAY_MIN + minute - zone
    if day == p.today:
        then = max(then, p.clock.now.first)
    return When(then, then, day, zone)


def hold(folder: Path, seed: int) -> list[str]:
    """The faults of the weeks of one random store."""
    dice = random.Random(seed)
    with build(folder / f"{seed}.db", seed) as p:
        ahead = TODAY + timedelta(days=dice.randint(1, 20))
        return [f"store {seed}: {one}" for start in (None, ahead) for one in faults(p, start, dice)]
