"""What a household adds to the reference: foods and rules of its own.

They live in the log of its store. A rule may only be stricter for safety, is marked as theirs
wherever it shows, and stands beside the published one, never in its place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from pantry_tui.core import dates
from pantry_tui.core.keeping.rules import Rule, speaking
from pantry_tui.core.keeping.warmth import closest
from pantry_tui.core.log.events import Did
from pantry_tui.core.log.own import rule_of
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.names import method_named
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.rows import Done

_SPAN = re.compile(r"\s*(\d{1,3})\s*(day|week|month|year)s?\s*")


def word(kind: Any, text: str, what: str) -> Any:
    """A member of an enum by its word. Raises BadInput naming them all."""
    try:
        return kind(text.strip().lower())
    except ValueError:
        raise BadInput(f"{text!r} is no {what}: one of {', '.join(kind)}.") from None


def add_food(p: Pantry, name: str, group: str, acidity: str, also: Iterable[str] = ()) -> Done:
    """A food that the tables do not have. It is judged by the strictest rule of its group."""
    shown = " ".join(name.lower().split())
    if not shown:
        raise BadInput("A food needs a name.")
    known = p.facts(shown)
    if known is not None:
        raise Refused(f"{shown!r} is known already, as {known.name}.")
    kind, sour = word(Group, group, "food group"), word(Acidity, acidity, "acidity")
    others = [" ".join(one.lower().split()) for one in also if one.strip()]
    p.book(p.event(Did.FOOD_ADDED, name=shown, also=others, group=kind.value, acidity=sour.value))
    return Done(f"Added the food {shown} ({kind}, {sour}), judged by the strictest of its group.")


def add_rule(
    p: Pantry,
    method: str,
    food: str,
    *,
    climate: str,
    keeps: str,
    kind: str,
    state: str = "sealed",
    why: str = "",
) -> Done:
    """A keeping rule of the household's own. Raises Refused where it would loosen safety."""
    how = method_named(method)
    facts = p.facts(food)
    if facts is None:
        raise BadInput(f"{food!r} is no known food: add it first with `pantry-tui own food`.")
    span = _SPAN.fullmatch(keeps.lower())
    if span is None:
        raise BadInput(f"{keeps!r} is no span of time: write 10 days, 3 weeks or 6 months.")
    data = {
        "method": how.value,
        "food": facts.name,
        "state": word(State, state, "state").value,
        "climate": word(Climate, climate, "climate").value,
        "kind": word(Kind, kind, "kind of limit").value,
        "number": int(span[1]),
        "unit": span[2] + "s",
        "why": " ".join(why.split()),
    }
    event = p.event(Did.RULE_ADDED, **data)
    rule = rule_of(event)
    if rule.kind is Kind.REFUSE:
        raise BadInput("A rule of your own is about quality or safety.")
    _refuse_looser(p, facts, rule)
    p.book(event)
    return Done(
        f"Added your own rule: {facts.name}, {how}, {rule.state}, {data['climate']}: "
        f"{dates.span(int(span[1]), rule.unit)} ({rule.kind})."
    )


def _refuse_looser(p: Pantry, food: FoodFacts, rule: Rule) -> None:
    (climate,) = rule.climates
    found = speaking(p.tables.book.of(rule.method), food, rule.method, rule.state, climate)
    if any(one.kind is Kind.REFUSE for one in found):
        raise Refused(f"Publications do not let it stand there: {found[0].wording}")
    published = closest(found, Batch("", "", food, rule.method, None), Kind.SAFETY)
    if published is None or published.use is None or rule.kind is not Kind.SAFETY:
        return
    if rule.days > published.days:
        raise Refused(
            f"For safety your own rule may only be stricter than the published "
            f"{dates.span(published.use, published.unit)}."
        )


def listing(p: Pantry) -> Iterator[str]:
    """The household's foods and rules, a line each."""
    for food in p.own_foods:
        yield f"food: {food.name} ({food.group}, {food.acidity})"
    for rule in p.book_of_rules.own:
        (climate,) = rule.climates
        assert rule.use is not None
        yield (
            f"rule: {rule.food}, {rule.method}, {rule.state}, {climate}: "
            f"{dates.span(rule.use, rule.unit)} ({rule.kind}). {rule.wording}"
        )
