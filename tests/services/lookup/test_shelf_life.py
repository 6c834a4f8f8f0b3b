"""What a look at the shelf life says first agrees with its reasons, in every row and state."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from pantry_tui.cli.printing.lookup import shelf_life
from pantry_tui.core.dates import span
from pantry_tui.core.words import Climate, Method, State
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.shelf_life import keeps

#: Some of each group, and some with figures of their own.
FOODS = (
    "chickens", "ground beef", "trout", "eggs", "lasagne", "carrots", "apples", "basil", "kimchi",
    "dill pickles", "hams", "walnuts", "garlic", "chicken stock",
)  # fmt: skip
KINDS = ("quality", "safety")


def looks(method: Method) -> Iterator[dict[str, object]]:
    tables = load_tables()
    for food in FOODS:
        if tables.index.find(food) is None:
            continue
        for state in State:
            for climate in (None, Climate.PANTRY, Climate.FRIDGE, Climate.FREEZER):
                yield keeps(tables, method.value, food, climate=climate, state=state.value)


@pytest.mark.parametrize("method", list(Method))
def test_the_figure_on_top_is_the_one_that_the_reasons_give(method: Method) -> None:
    for answer in looks(method):
        where = (answer["food"], answer["state"], answer["place"])
        for kind in KINDS:
            used, published = answer["in_use"][kind], answer["published"][kind]  # type: ignore[index]
            assert (used is None) == (published is None), where
            if used is None:
                continue
            line = next(one for one in shelf_life(answer) if one.startswith(f"{kind}: "))
            assert line.startswith(f"{kind}: {span(*used)}"), where
            said = [one for one in answer["reasons"] if one.startswith(f"{kind}: ")]  # type: ignore[attr-defined]
            assert not said or any(one.startswith(f"{kind}: {span(*used)}.") for one in said), where


@pytest.mark.parametrize(
    ("food", "state", "line"),
    [
        ("chickens", "thawed", "safety: 1 day (published: 1 to 2 days)"),
        ("trout", "thawed", "safety: 1 day (published: 1 to 2 days)"),
    ],
)
def test_the_strictest_stands_on_top_and_the_range_beside_it(
    food: str, state: str, line: str
) -> None:
    assert line in shelf_life(keeps(load_tables(), "frozen", food, state=state))
