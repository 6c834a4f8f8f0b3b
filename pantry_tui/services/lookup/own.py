"""What a household adds to the reference: foods and rules of its own.

They live in the log of its store. A rule may only be stricter for safety, is marked as theirs
wherever it shows, and stands beside the published one, never in its place.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from pantry_tui.core import dates
from pantry_tui.core.keeping.harm import can_hurt
from pantry_tui.core.keeping.rules import Rule, closest, guessed, speaking
from pantry_tui.core.keeping.shop import Shop
from pantry_tui.core.log import payloads as said
from pantry_tui.core.log.own import rule_of
from pantry_tui.core.model import Batch, FoodFacts
from pantry_tui.core.words import Acidity, Climate, Group, Kind, State
from pantry_tui.errors import BadInput, Refused
from pantry_tui.reference.names import method_named
from pantry_tui.services.pantry import Pantry, booked
from pantry_tui.services.rows import Done

_SPAN = re.compile(r"\s*(\d{1,3})\s*(day|week|month|year)s?\s*")


def word(kind: Any, text: str, what: str) -> Any:
    """A member of an enum by its word. Raises BadInput naming them all."""
    try:
        return kind(text.strip().lower())
    except ValueError:
        raise BadInput(f"{text!r} is no {what}: one of {', '.join(kind)}.") from None


@booked
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
    for other in others:
        found = p.facts(other)
        if found is not None:
            raise Refused(f"{other!r} is known already, as {found.name}.")
    p.book(said.FoodAdded(shown, kind, sour, tuple(others)))
    return Done(f"Added the food {shown} ({kind}, {sour}), judged by the strictest of its group.")


@booked
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
    """A keeping rule of the household's own, of bought food under the method by which that is
    judged. Raises Refused where it would loosen safety."""
    facts = p.facts(food)
    if facts is None:
        raise BadInput(f"{food!r} is no known food: add it first with `pantry-tui add-food`.")
    how = Shop(Batch("", "", facts, method_named(method), None), p.tables.book).method
    span = _SPAN.fullmatch(keeps.lower())
    if span is None:
        raise BadInput(f"{keeps!r} is no span of time: write 10 days, 3 weeks or 6 months.")
    added = said.RuleAdded(
        how,
        facts.name,
        word(State, state, "state"),
        word(Climate, climate, "climate"),
        word(Kind, kind, "kind of limit"),
        int(span[1]),
        span[2] + "s",
        " ".join(why.split()),
    )
    rule = rule_of(added)
    if rule.kind is Kind.REFUSE:
        raise BadInput("A rule of your own is about quality or safety.")
    _refuse_looser(p, facts, rule)
    p.book(added)
    return Done(
        f"Added your own rule: {facts.name}, {how}, {rule.state}, {added.climate}: "
        f"{dates.span(int(span[1]), rule.unit)} ({rule.kind})."
    )


def _refuse_looser(p: Pantry, food: FoodFacts, rule: Rule) -> None:
    (climate,) = rule.climates
    found = speaking(p.tables.book.of(rule.method), food, rule.method, rule.state, climate)
    if any(one.kind is Kind.REFUSE for one in found):
        raise Refused(f"Publications do not let it stand there: {found[0].wording}")
    published = closest(found, food, Kind.SAFETY)
    if rule.kind is not Kind.SAFETY:
        return
    if published is None or published.use is None:
        _refuse_made_up(food, rule, found)
        return
    if rule.days > published.days:
        raise Refused(
            f"For safety your own rule may only be stricter than the published "
            f"{dates.span(published.use, published.unit)}."
        )


def _refuse_made_up(food: FoodFacts, rule: Rule, found: Sequence[Rule]) -> None:
    """A last safe day of one's own is stricter than a published life without an end, and on food
    that cannot hurt; where nothing is published of what can, it would be the only figure there is.
    """
    covered = any(one.use is not None and not guessed(one, food) for one in found)
    tried = Batch("", "", food, rule.method, None)
    if not covered and can_hurt(tried, rule.state is State.IN_PROGRESS):
        (climate,) = rule.climates
        raise Refused(
            f"Nothing is published for {food.name}, {rule.method}, {rule.state} in a {climate}, so "
            "no number of days of your own makes it safe there; a rule about quality may be added."
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
