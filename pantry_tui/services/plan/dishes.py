"""Dishes of the household's own: a name, and what it takes in servings. They live in the log."""

from __future__ import annotations

import re
from collections.abc import Sequence

from pantry_tui.core.log import payloads as said
from pantry_tui.core.plan.menu import Dish
from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.done import Done
from pantry_tui.services.pantry import Pantry, booked

_EXAMPLE = 'write "bean soup = 4 runner beans, 4 chicken stock"'
_TAKES = re.compile(r"\s*(\d{1,3}(?:\.\d{1,2})?)\s+(.+?)\s*")


def dishes(p: Pantry) -> Sequence[Dish]:
    """All that stand, by name."""
    return [
        Dish(name, tuple((one.food, one.servings) for one in takes))
        for name, takes in sorted(p.home.dishes.items())
    ]


@booked
def keep(p: Pantry, line: str) -> Done:
    """A dish from "bean soup = 4 runner beans, 4 chicken stock"; an older one of that name goes.

    Raises BadInput.
    """
    _, equals, rest = line.partition("=")
    name = name_in(line)
    if not name or not equals or len(name) > 60:
        raise BadInput(f"A dish needs a name and what it takes, in servings: {_EXAMPLE}.")
    takes: dict[str, float] = {}
    for part in rest.split(","):
        food, servings = _take(p, part)
        takes[food] = takes.get(food, 0.0) + servings
    p.book(said.Dish(name, tuple(said.Taken(food, much) for food, much in takes.items())))
    return Done(f"Added the dish {say(Dish(name, tuple(takes.items())))}.")


def name_in(line: str) -> str:
    """ "Bean  soup = 4 runner beans" -> "bean soup"."""
    return " ".join(line.partition("=")[0].lower().split())


def _take(p: Pantry, part: str) -> tuple[str, float]:
    match = _TAKES.fullmatch(part)
    if match is None:
        raise BadInput(f"{part.strip()[:40]!r} is no part of a dish: {_EXAMPLE}.")
    facts = p.facts(match[2])
    if facts is None:
        near = ", ".join(p.tables.index.near(match[2])) or "none"
        raise BadInput(f"{match[2]!r} is no known food; near it: {near}.")
    servings = float(match[1])
    if not 0 < servings <= 200:
        raise BadInput("A dish takes more than 0 and at most 200 servings of a food.")
    return facts.name, servings


@booked
def drop(p: Pantry, name: str) -> Done:
    """Plan it no more. Raises Refused."""
    dish = named(p, name)
    p.book(said.Dish(dish.name))
    return Done(f"The dish {dish.name} is not planned any more.")


def named(p: Pantry, name: str) -> Dish:
    """The dish of that name. Raises Refused."""
    wanted = " ".join(name.lower().split())
    for dish in dishes(p):
        if dish.name == wanted:
            return dish
    known = ", ".join(dish.name for dish in dishes(p)) or f"none yet, {_EXAMPLE}"
    raise Refused(f"There is no dish called {wanted[:60]!r}; there are: {known}.")


def say(dish: Dish) -> str:
    """ "bean soup: 4 servings of runner beans, 4 of chicken stock"."""
    takes = ", ".join(f"{servings:g} {food}" for food, servings in dish.takes)
    return f"{dish.name} ({takes})"
