"""Which dishes of the household's own can be cooked from what stands, or lack one thing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from datetime import date, timedelta
from typing import NamedTuple

from pantry_tui.core.plan.menu import Candidate, Dish
from pantry_tui.core.plan.pace import CRUMB
from pantry_tui.errors import BadInput
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.candidates import candidates
from pantry_tui.services.plan.dishes import dishes
from pantry_tui.services.stock.pick import name_of

#: A dish that lacks more than one thing is no dish of today.
MOST_LACKED = 1
#: What falls due within so many days makes its dish come first.
_SOON = timedelta(days=7)


class Taken(NamedTuple):
    """Servings of a food out of which containers, the oldest first; `ready` is the day on which
    the last of it is thawed, if it is taken out today."""

    food: str
    servings: float
    containers: tuple[str, ...]
    place: str
    ready: date | None


class Lacked(NamedTuple):
    """Servings of a food that do not stand."""

    food: str
    servings: float


class Cooked(NamedTuple):
    """A dish: what it takes and what it lacks; `due` servings of it fall due within a week."""

    dish: str
    stands: bool
    takes: tuple[Taken, ...]
    lacks: tuple[Lacked, ...]
    due: float


def cook(p: Pantry, typed: str = "", most: int = MOST_LACKED) -> list[Cooked]:
    """Dishes that take the foods named ("runner beans, stock"; none: all dishes) and lack at `most`
    so many things: those that stand first, then those that use up most. Raises BadInput for a food
    that no dish takes."""
    wanted = _foods(p, typed)
    here: dict[str, list[Candidate]] = defaultdict(list)
    for one in candidates(p, p.today):
        here[one.food].append(one)
    found: list[tuple[int, Cooked]] = []
    for dish in dishes(p):
        named = sum(food in wanted for food, _ in dish.takes)
        cooked = _cooked(p, dish, here)
        if len(cooked.lacks) <= most and (named or not wanted):
            found.append((named, cooked))
    found.sort(key=lambda one: (-one[0], len(one[1].lacks), -one[1].due, one[1].dish))
    return [cooked for _, cooked in found]


def _foods(p: Pantry, typed: str) -> frozenset[str]:
    """The foods of the dishes that "runner beans, stock" or "carrots onions" names, each by its
    name, another name of it, or a part of it. Raises BadInput for what no dish takes."""
    takes = {food for dish in dishes(p) for food, _ in dish.takes}
    found: set[str] = set()
    for part in filter(None, map(str.strip, typed.lower().split(","))):
        for word in [part] if _named(p, part, takes) else part.split():
            named = _named(p, word, takes)
            if not named:
                known = ", ".join(sorted(takes)) or "there are none yet"
                raise BadInput(f"No dish of yours takes {word[:40]!r}; what they take: {known}.")
            found |= named
    return frozenset(found)


def _named(p: Pantry, word: str, takes: Collection[str]) -> set[str]:
    facts = p.facts(word)
    if facts is not None and facts.name in takes:
        return {facts.name}
    return {food for food in takes if word in food}


def _cooked(p: Pantry, dish: Dish, here: Mapping[str, Sequence[Candidate]]) -> Cooked:
    takes: list[Taken] = []
    lacks: list[Lacked] = []
    due = 0.0
    for food, servings in dish.takes:
        mine, short = _enough(here.get(food, ()), servings)
        if mine:
            takes.append(_taken(p, food, servings - short, mine))
            due += sum(one.servings for one in mine if _soon(one, p.today))
        if short > CRUMB:
            lacks.append(Lacked(food, round(short, 2)))
    return Cooked(dish.name, not lacks, tuple(takes), tuple(lacks), round(due, 2))


def _enough(pile: Iterable[Candidate], wanted: float) -> tuple[list[Candidate], float]:
    """The first of a pile that give so many servings, and how many are short then."""
    mine: list[Candidate] = []
    for one in pile:
        if wanted <= CRUMB:
            break
        mine.append(one)
        wanted -= one.servings
    return mine, max(0.0, wanted)


def _taken(p: Pantry, food: str, servings: float, mine: Sequence[Candidate]) -> Taken:
    stock = [p.stock.containers[one.container] for one in mine]
    thaws = [one.ready or p.today + timedelta(one.thaw_days) for one in mine]
    ready = max(thaws, default=p.today)
    places = dict.fromkeys(map(p.where, stock))
    names = tuple(name_of(p, one) for one in stock)
    return Taken(
        food, round(servings, 2), names, ", ".join(places), ready if ready > p.today else None
    )


def _soon(one: Candidate, today: date) -> bool:
    return one.must or (one.last is not None and one.last <= today + _SOON)
