"""A cooler place never keeps a food shorter than what is published for a warmer one; what does is
named here with the publication that says so."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from functools import cache
from itertools import combinations

import pytest

from pantry_tui.core.words import WARM_TO_COLD, Climate, Method, State
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.shelf_life import keeps

DAY_0 = date(2026, 3, 1)
STATES = (State.SEALED, State.OPEN, State.THAWED)

#: method, food, the cooler place -> words of the source that says so.
NAMED = {
    # Salt hastens the turning of fat, so cured meat is shortest in a freezer.
    (Method.SALTED, "country hams", Climate.FREEZER): "Freezer shelf life",
    (Method.SALTED, "hard sausages", Climate.FREEZER): "Freezer shelf life",
    (Method.SALTED, "summer sausages", Climate.FREEZER): "Cold Storage Chart",
    # Eggs burst in their shells.
    (Method.FRESH, "eggs", Climate.FREEZER): "Cold Food Storage Chart",
    # Bought eggs are judged as fresh ones.
    (Method.BOUGHT, "eggs", Climate.FREEZER): "",
}
#: A home refrigerator is drier than a cellar, and chills what grew in summer.
FRIDGE_CROPS = "Cornell University"


@cache
def said(method: Method, food: str, state: State, climate: Climate) -> tuple[bool, str, str, str]:
    """Allowed, best by, discard after (ISO or ""), sources; at the published temperature."""
    found = keeps(load_tables(), method, food, climate=climate.value, state=state.value, made=DAY_0)
    known = any(found["published"].values())  # a day alone is what bounds what nobody published
    dates = (found["best_by"] or "", found["discard_after"] or "") if known else ("", "")
    return found["allowed"], *dates, "; ".join(found["sources"])


def shorter(method: Method) -> Iterator[tuple[str, State, Climate, Climate]]:
    """food, state, the warmer place, the cooler one in which it ends sooner or is refused."""
    for food in load_tables().foods:
        for state in STATES:
            for warm, cool in combinations(WARM_TO_COLD, 2):
                allowed, best, last, _ = said(method, food.name, state, warm)
                also, cool_best, cool_last, _ = said(method, food.name, state, cool)
                if not allowed or not (best or last):
                    continue
                ends = last or best
                worse = (best and cool_best and cool_best < best) or (
                    cool_last and cool_last < ends
                )
                if worse or not also:
                    yield food.name, state, warm, cool


def named(method: Method, food: str, state: State, cool: Climate) -> bool:
    """Whether the exception stands in the table above, by a source that the program shows."""
    sources = said(method, food, state, cool)[3]
    if method is Method.CELLAR and cool is Climate.FRIDGE:
        return FRIDGE_CROPS in sources
    wanted = NAMED.get((method, food, cool))
    return wanted is not None and wanted in sources


@pytest.mark.parametrize("method", list(Method))
def test_a_cooler_place_never_keeps_shorter(method: Method) -> None:
    assert [case for case in shorter(method) if not named(method, case[0], case[1], case[3])] == []


def test_every_named_exception_is_one() -> None:
    for method, food, cool in NAMED:
        assert any(case[0] == food and case[3] is cool for case in shorter(method)), food
