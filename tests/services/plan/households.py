"""Households and their weeks as a cook sees them: a generator written from what a kitchen keeps,
and what a cook would laugh at in a plan. Nothing here is taken from the planner.

A household has put up a year of food, cooks from it, follows each week as it is proposed and eats
every day of it. `faults` says in words what is wrong with the weeks.
"""

from __future__ import annotations

import random
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from math import inf
from pathlib import Path
from typing import NamedTuple

from pantry_tui.core.words import Role, State, Verdict
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import dishes, wishes
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.appetite import set_table
from pantry_tui.services.plan.at_table import role_at_table
from pantry_tui.services.plan.paces import paced
from pantry_tui.services.plan.rows import Take, WeekView
from pantry_tui.services.stock import places, view
from pantry_tui.services.stock.rows import DueRow

WEEKS = 12
PLACES = (
    ("larder", "pantry"), ("cellar", "cellar"), ("fridge", "fridge"), ("freezer", "freezer"),
)  # fmt: skip
#: What a kitchen keeps: a line, how many at least and at most for two people, days ago at least and
#: at most that it was put up.
KEPT = (
    (
        "{n} pint jars runner beans, pressure canned, larder, minutes=20 psi=11 canner=dial",
        6,
        30,
        60,
        120,
    ),
    ("{n} quart jars crushed tomatoes, boiling-water canned, larder", 6, 25, 60, 110),
    ("{n} pint jars beets, pressure canned, larder, minutes=30 psi=11 canner=dial", 4, 14, 50, 110),
    (
        "{n} pint jars sweet corn, pressure canned, larder, minutes=55 psi=11 canner=dial",
        4,
        14,
        80,
        120,
    ),
    ("{n} quart jars peaches, boiling-water canned, larder", 4, 20, 80, 130),
    ("{n} pint jars applesauce, boiling-water canned, larder", 4, 20, 40, 80),
    ("{n} half-pint jars strawberry jam, jam, larder", 4, 20, 150, 180),
    ("{n} half-pint jars raspberry jam, jam, larder", 3, 12, 130, 150),
    ("{n} pint jars dill pickles, vinegar pickle, larder, vinegar=5%", 3, 14, 100, 130),
    (
        "{n} pint jars chicken stock, pressure canned, larder, minutes=20 psi=11 canner=dial",
        3,
        10,
        20,
        90,
    ),
    ("{n} 1 lb packs ground beef, frozen, freezer", 4, 24, 10, 60),
    ("{n} 3 lb packs beef roast, frozen, freezer", 1, 6, 10, 90),
    ("{n} 1 lb packs chicken breasts, frozen, freezer", 3, 16, 10, 100),
    ("{n} 5 lb bags chickens, frozen, freezer", 1, 4, 10, 100),
    ("1 16 lb bag turkey, frozen, freezer", 1, 1, 10, 120),
    ("{n} 1 lb packs salmon, frozen, freezer", 2, 8, 5, 40),
    ("{n} quart tubs vegetable soup, frozen, freezer", 2, 8, 5, 50),
    ("{n} pint bags peas, frozen, freezer", 4, 20, 120, 170),
    ("{n} quart bags strawberries, frozen, freezer", 3, 14, 140, 180),
    ("{n} trays lasagne, frozen, freezer", 1, 5, 5, 40),
    ("1 sack potatoes, cellar-stored, cellar, amount={lb} lb", 20, 90, 40, 80),
    ("1 crate carrots, cellar-stored, cellar, amount={lb} lb", 10, 40, 30, 60),
    ("1 crate apples, cellar-stored, cellar, amount={lb} lb", 15, 60, 30, 60),
    ("1 net onions, cellar-stored, larder, amount={lb} lb", 8, 30, 50, 100),
    ("{n} cabbages, cellar-stored, cellar", 2, 8, 20, 40),
    ("1 crock sauerkraut, lactic ferment, cellar, amount={lb} lb", 5, 12, 40, 70),
    ("1 dozen eggs, fresh, fridge", 1, 1, 1, 10),
    ("{n} pint jars lard, rendered fat, fridge", 1, 4, 10, 60),
    ("{n} small jars thyme, dried, larder", 1, 4, 60, 120),
    ("{n} pint jars apples, dried, larder", 2, 8, 40, 70),
    ("2 quart jars honey, bought in, larder", 1, 1, 20, 200),
)
#: Roles that are no meal by themselves.
NO_MEAL = frozenset({Role.FAT, Role.SEASONING, Role.BAKING, Role.DRINK, Role.INGREDIENT})
MEAL = frozenset({Role.MAIN, Role.SIDE, Role.FRUIT})
#: One main, one or two sides, fruit: servings a head a day.
A_HEAD = {Role.MAIN: 1.0, Role.SIDE: 2.0, Role.FRUIT: 1.0}
#: What is so little a head lasts by its pace, and not every day has some of it.
_LITTLE = 21
#: What fills, and what flavours a pot.
_FILLS = frozenset({"potatoes", "onions"})
_STANDS = frozenset({Verdict.SOUND, Verdict.EAT_SOON, Verdict.PAST_BEST})


def build(path: Path, seed: int) -> Pantry:
    """A household of one to six on some day of the cold half of the year, with half of what a
    kitchen keeps or more."""
    dice = random.Random(seed)
    people = dice.choice([1, 2, 2, 3, 4, 4, 5, 6])
    today = date(2026, 10, 20) + timedelta(days=dice.randint(0, 90))
    create(path, altitude_ft=0, people=people)
    p = open_pantry(path, today)
    for name, climate in PLACES:
        places.add(p, name, climate)
    for line, least, most, late, early in dice.sample(
        KEPT, dice.randint(len(KEPT) // 2, len(KEPT))
    ):
        number = max(1, round(dice.randint(least, most) * (people / 2) ** 0.8))
        made = today - timedelta(days=dice.randint(late, early))
        text = f"{line.format(n=number, lb=number)}, {made.isoformat()}"
        if number == 1:  # "1 pint jar lard": as "1 pint jars" it is asked about
            text = text.replace(" jars ", " jar ", 1).replace(" tubs ", " tub ", 1)
        try:
            putup.put_up(p, putup.read(p, text))
        except PantryError as error:  # a line of ours that is refused is a fault of ours
            raise AssertionError(f"{text}: {error.message}") from error
    if dice.random() < 0.5:
        dishes.keep(p, f"bean pot = {people} runner beans, {people} crushed tomatoes")
    return p


def play(p: Pantry, dice: random.Random, count: int = WEEKS) -> Iterator[str]:
    """So many weeks, each proposed, looked over, accepted and eaten day by day."""
    diary: list[Mapping[str, Line]] = []
    for number in range(count):
        start = p.today
        _life(p, dice, start)
        found = weeks.week(p)
        diary.append(_lines(p, found))
        for fault in week_faults(p, found):
            yield f"week {number + 1} ({start}): {fault}"
        weeks.accept(p)
        for day in range(7):
            p.today = start + timedelta(days=day)
            try:
                weeks.eaten(p, p.today)
            except PantryError:
                continue  # nothing lay on it
        p.today = start + timedelta(days=7)
    yield from idle_faults(diary)


class Line(NamedTuple):
    """A food in one week: servings laid, those of them in no dish, its pace as it lasts to its
    harvest and as its dates ask for, what one container of it holds, what it is at table."""

    laid: float
    plain: float
    lasts: float
    asks: float
    one: float
    role: Role


def _lines(p: Pantry, found: WeekView) -> Mapping[str, Line]:
    laid: dict[str, float] = defaultdict(float)
    plain: dict[str, float] = defaultdict(float)
    for take in (*found.take, *found.beside):
        laid[take.food] += take.servings
        plain[take.food] += 0.0 if take.dish else take.servings
    lines = {}
    for row in view.everything(p):
        batch = p.batch(row.code)
        if batch is None or not row.usable or row.verdict not in _STANDS:
            continue
        name, group = batch.food.name, batch.food.group
        role = role_at_table(p, name, group)
        if role in MEAL and name not in lines:
            pace = paced(p, name, group).pace
            one = float(p.people) if row.loose else max(_servings(row), 1.0)
            late = row.best_by is not None and row.best_by < p.today  # it gets no better
            lines[name] = Line(
                laid[name], plain[name], pace.can, inf if late else pace.needs, one, role
            )
    return lines


def idle_faults(diary: Sequence[Mapping[str, Line]]) -> Iterator[str]:
    """A food that waits for more than twice as long as its pace has it, and a month, while another
    of its role goes at twice its own though nothing hurries it."""
    everywhere = set.intersection(*(set(week) for week in diary)) if diary else set()
    for name in sorted(everywhere):
        waits = 0
        for number, week in enumerate(diary):
            waits = 0 if week[name].laid else waits + 1
            turn = week[name].one / max(week[name].lasts, 0.01)
            owed = sum(w[name].lasts - w[name].laid for w in diary[: number + 1])
            if waits <= 2 * turn + 4 or owed < week[name].one:
                continue  # what was eaten faster before may rest
            since = diary[number - waits + 1 : number + 1]
            fast = [
                other
                for other in everywhere - {name}
                if since[0][other].role == week[name].role and _hasty([w[other] for w in since])
            ]
            if fast:
                turns = f"its turn is every {turn:.1f}"
                yield f"{name} waits {waits} weeks, {turns}; {fast[0]} does not"
                break


def _hasty(lines: Sequence[Line]) -> bool:
    laid, lasts = sum(one.plain for one in lines), sum(one.lasts for one in lines)
    calm = all(one.asks <= one.lasts for one in lines)
    return calm and laid > 2 * lasts + lines[0].one


def _life(p: Pantry, dice: random.Random, start: date) -> None:
    """Now and then guests come, all are away, or they eat out."""
    if dice.random() < 0.15:
        day = start + timedelta(days=dice.randint(2, 6))
        set_table(p, p.people + dice.randint(1, 5), day)
    if dice.random() < 0.1:
        day = start + timedelta(days=dice.randint(1, 4))
        set_table(p, 0, day, day + timedelta(days=dice.randint(0, 2)))
    if dice.random() < 0.2:
        wishes.out(p, start + timedelta(days=dice.randint(0, 6)))


# -- one week --------------------------------------------------------------------------------------


def week_faults(p: Pantry, found: WeekView) -> Iterator[str]:
    """What a cook would laugh at, in words."""
    home = _at_home(p, found)
    laid = _laid(found, home)
    idle = _idle(p, found)
    for day, heads in home.items():
        if laid[day, Role.MAIN] < heads / 2:
            could = [row for row in idle if _could(p, row, found, day, heads, Role.MAIN)]
            if could:
                yield f"{day} has no main for {heads}, and {could[0].code} {could[0].food} stands"
        much = sum(_servings(row) for row in idle)
        if not any(day in take.days for take in found.take) and much > _LITTLE * found.people:
            could = [r for r in idle for role in MEAL if _could(p, r, found, day, heads, role)]
            if could:
                yield f"{day} has no line, and {could[0].code} {could[0].food} stands"
        if not _garden(found, day) and any(day in take.days for take in found.take):
            full = _full(found)
            could = [
                row
                for row in idle
                if row.food not in {*_FILLS, *full} and _could(p, row, found, day, heads, Role.SIDE)
            ]
            if could:
                yield f"{day} has nothing of the garden, and {could[0].code} {could[0].food} stands"
        for role, a_head in A_HEAD.items():
            over = laid[day, role] > 2 * a_head * heads + 0.01
            if over and not _forced(p, found, {day}, role):
                yield f"{day} has {laid[day, role]:.1f} servings of {role} for {heads}"
    for one in found.no_thaw:
        ready = [row for row in idle if _ready_without_thawing(p, row, one.day, home[one.day])]
        if ready and not one.food:
            yield f"{one.day} has nothing ready, and {ready[0].code} {ready[0].food} is"
    for role, a_head in A_HEAD.items():
        much = sum(laid[day, role] for day in home)
        enough = a_head * sum(home.values())
        if much > 1.5 * enough + 0.01 and not _forced(p, found, set(home), role):
            yield f"the week has {much:.0f} servings of {role} for {sum(home.values())} meals"
    for take in found.take:
        if take.role in NO_MEAL and not take.dish and not _pressed(p, take):
            yield f"{take.code} {take.food} is a {take.role} and stands in the week"
        if take.thaw_by is not None:
            first = max(found.start, p.today)
            if take.thaw_by < first:
                yield f"{take.code} {take.food} should have been thawing since {take.thaw_by}"
            elif (take.days[0] - take.thaw_by).days < _thaw_of(_size(p, take)):
                yield f"{take.code} {take.food} has too few days to thaw before {take.days[0]}"
    said: dict[str, set[str]] = defaultdict(set)
    for take in (*found.take, *found.beside):
        said[" ".join(take.why)].add(take.food)
    for words, foods in said.items():
        if len(foods) > 2:  # numbers may be the same by chance
            yield f"the same reason for {', '.join(sorted(foods))}: {words}"


def _garden(found: WeekView, day: date) -> bool:
    """Whether there is a dish, or a side that neither fills nor only flavours; beside a main fruit
    will do."""
    there = [take for take in found.take if day in take.days]
    roles = {take.role for take in there if take.food not in _FILLS}
    main = Role.MAIN in roles and Role.FRUIT in roles
    return main or Role.SIDE in roles or any(take.dish for take in there)


def _full(found: WeekView) -> set[str]:
    """Foods of which as much lies there as the charts have in a week: three servings a person."""
    laid: dict[str, float] = defaultdict(float)
    for take in found.take:
        laid[take.food] += take.servings
    return {food for food, much in laid.items() if much >= 3 * found.people}


def _at_home(p: Pantry, found: WeekView) -> dict[date, int]:
    """The days on which somebody eats at home, and how many."""
    table = p.home.table
    week = p.home.week
    out = set(week.out) if week is not None and week.start is not None else set()
    days = (found.start + timedelta(days=number) for number in range(7))
    heads = {day: table.get(day, found.people) for day in days if day not in out}
    return {day: n for day, n in heads.items() if n}


def _share(take: Take, day: date, home: Mapping[date, int]) -> float:
    """What of it is eaten on a day: an even part, and no more than those who sit there."""
    if day not in take.days:
        return 0.0
    return min(take.servings / len(take.days), float(home.get(day, 0)))


def _laid(found: WeekView, home: Mapping[date, int]) -> Mapping[tuple[date, str], float]:
    laid: dict[tuple[date, str], float] = defaultdict(float)
    for take in found.take:
        for day in take.days:
            laid[day, take.role] += _share(take, day, home)
    return laid


def _forced(p: Pantry, found: WeekView, days: set[date], role: Role) -> bool:
    """Whether something of that role on those days must be eaten now, or is one large container
    without which there would be too little."""
    mine = [take for take in found.take if take.role == role and days & set(take.days)]
    if any(take.dish or _pressed(p, take) for take in mine):
        return True
    people = sum(_at_home(p, found)[day] for day in days)
    much = sum(take.servings for take in mine)
    return any(much - take.servings < A_HEAD[role] * people for take in mine if not take.amount)


def _pressed(p: Pantry, take: Take) -> bool:
    """Whether it must go now: open or thawed, past its best, its date near, or so much of it that
    some would pass its date."""
    batch = p.batch(take.code)
    assert batch is not None
    pace = paced(p, batch.food.name, batch.food.group).pace
    if pace.needs > pace.can:
        return True
    for row in view.everything(p):
        if row.code == take.code and set(row.container_ids) & set(take.containers):
            dates = [day for day in (row.best_by, row.discard_after) if day]
            near = bool(dates) and (min(dates) - p.today).days <= 35
            return row.state in (State.OPEN, State.THAWED) or near
    return False


def _idle(p: Pantry, found: WeekView) -> Sequence[DueRow]:
    """What stands, is sound and lies on no day of the week."""
    planned = {name for take in (*found.take, *found.beside) for name in take.containers}
    return [
        row
        for row in view.everything(p)
        if row.usable
        and not row.reserved
        and row.verdict in _STANDS
        and row.method != "bought in"
        and not set(row.container_ids) <= planned
    ]


def _could(p: Pantry, row: DueRow, found: WeekView, day: date, heads: int, role: Role) -> bool:
    """Whether a cook could have put it there: of that role, thawed by then, not far too large."""
    batch = p.batch(row.code)
    assert batch is not None
    if role_at_table(p, batch.food.name, batch.food.group, batch.method) != role:
        return False
    if row.discard_after is not None and row.discard_after < day:
        return False
    first = max(found.start, p.today)
    frozen = row.place.endswith("freezer")
    thaw = _thaw_of(row.size) if frozen else 0
    if (day - first).days < thaw:
        return False
    if thaw and not p.home.table.get(day - timedelta(days=thaw), p.people):
        return False  # nobody is there to take it out
    if day + timedelta(days=1) not in _at_home(p, found):
        heads = heads * 3 // 4  # tomorrow nobody eats the rest
    return _servings(row) <= 2 * heads


def _ready_without_thawing(p: Pantry, row: DueRow, day: date, heads: int) -> bool:
    batch = p.batch(row.code)
    assert batch is not None
    if role_at_table(p, batch.food.name, batch.food.group, batch.method) != Role.MAIN:
        return False
    last = row.discard_after or date.max
    return last >= day and not row.place.endswith("freezer") and _servings(row) >= heads


def _servings(row: DueRow) -> float:
    """About, by what it holds: four a pound or pint, one a piece."""
    each = {"lb": 4.0, "pint": 4.0, "quart": 8.0, "pieces": 1.0, "": 4.0}
    if row.loose:
        return 0.0  # it is taken from by the meal
    return row.left.amount * each.get(row.left.unit, 4.0)


def _thaw_of(size: str) -> int:
    """A day in the refrigerator for each 5 lb begun (USDA FSIS, the big thaw)."""
    words = size.split()
    pounds = float(words[words.index("lb") - 1]) if "lb" in words[1:] else 1.0
    return max(1, -int(-pounds // 5))


def _size(p: Pantry, take: Take) -> str:
    batch = p.batch(take.code)
    return batch.size if batch else ""


def hold(folder: Path, seed: int, count: int = WEEKS) -> list[str]:
    """What is wrong with the weeks of one household."""
    with build(folder / f"{seed}.db", seed) as p:
        return [f"household {seed}: {one}" for one in play(p, random.Random(seed), count)]
