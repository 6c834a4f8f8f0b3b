"""The program's limits against the publications, by way of the command contract's `keeps`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from typing import Any

import pytest
from dateutil.relativedelta import relativedelta

from pantry_tui.core.keeping.exposure import imagined
from pantry_tui.core.keeping.limits import judge_fresh
from pantry_tui.core.model import Batch
from pantry_tui.core.words import Climate, Method, State
from pantry_tui.reference.tables import load_tables
from pantry_tui.services.lookup.shelf_life import keeps
from tests.published.limits import REFUSED, TYPED

DAY_0 = date(2026, 3, 1)


def lines(typed: Iterable[tuple[str, str]]) -> Iterator[tuple[str, ...]]:
    for publication, block in typed:
        for line in block.strip().splitlines():
            yield (publication, *(part.strip() for part in line.split("|")))


def asked(method: str, food: str, state: str, where: str) -> dict[str, Any]:
    climate, _, temp = where.partition(" ")
    warmth = float(temp.rstrip("F")) if temp else None
    return keeps(
        load_tables(), method, food, climate=climate, temp_f=warmth, state=state, made=DAY_0
    )


@pytest.mark.parametrize(
    ("publication", "method", "food", "state", "where", "kind", "limit"), list(lines(TYPED))
)
def test_the_limit_is_the_published_one(
    publication: str, method: str, food: str, state: str, where: str, kind: str, limit: str
) -> None:
    said = asked(method, food, state, where)
    assert said["allowed"], said["reasons"]
    shown = said["best_by" if kind == "quality" else "discard_after"]
    if limit == "none":
        assert shown is None, publication
        return
    number, unit = limit.split()
    wanted = DAY_0 + relativedelta(**{unit: int(number)})  # type: ignore[arg-type]
    assert shown == wanted.isoformat(), (publication, said["reasons"])
    least, most, shown_unit = said["published"][kind]
    assert shown_unit == unit
    assert (least if least is not None else most) <= int(number)
    assert most is None or int(number) <= most
    assert said["sources"]


@pytest.mark.parametrize(
    ("publication", "method", "food", "state", "where"), list(lines(REFUSED.items()))
)
def test_what_publications_refuse_is_refused(
    publication: str, method: str, food: str, state: str, where: str
) -> None:
    said = asked(method, food, state, where)
    assert not said["allowed"], publication
    assert said["best_by"] is None
    assert said["discard_after"] is None
    assert said["reasons"]


def test_enough_is_checked() -> None:
    typed = list(lines(TYPED))
    assert len(typed) >= 500
    assert len({(method, food, state, where, kind) for _, method, food, state, where, kind, _
                in typed}) >= 500  # fmt: skip
    assert len({method for _, method, *_ in typed}) >= 20
    assert len({food for _, method, food, *_ in typed if method == "cellar-stored"}) >= 40


#: Older or outlying figures that must never come back: method, food, days it would have allowed.
SUPERSEDED = [
    ("in oil", "garlic", 7, "NCHFP, Garlic-in-Oil, version of 2002"),
    ("in oil", "garlic", 10, "Penn State Extension, Preserving Foods in Oil, undated"),
    ("in oil", "garlic", 21, "Oregon State University Extension, 1990s"),
    ("in oil", "garlic", 90, "Oklahoma State University Extension, an outlier"),
    ("in oil", "basil", 10, "Penn State Extension, Preserving Foods in Oil, undated"),
    ("in oil", "herb oil", 21, "Oregon State University Extension, 1990s"),
    ("in oil", "pesto", 21, "Oregon State University Extension, 1990s"),
    ("hot smoked", "salmon", 30, "University of Wisconsin Sea Grant, an outlier"),
    ("hot smoked", "salmon", 21, "Washington State University Extension, less conservative"),
    ("fridge pickle", "pickled fish", 42, "University of Wisconsin Sea Grant"),
    ("salted", "summer sausages", 100, "USDA Cold Storage Chart, the sealed figure when opened"),
]


@pytest.mark.parametrize(("method", "food", "days", "publication"), SUPERSEDED)
def test_a_superseded_figure_never_gives_a_date(
    method: str, food: str, days: int, publication: str
) -> None:
    state = "open" if "opened" in publication else "sealed"
    said = asked(method, food, state, "fridge")
    assert said["discard_after"] is not None
    allowed = date.fromisoformat(said["discard_after"]) - DAY_0
    assert allowed.days < days, publication


def test_water_glass_of_old_is_refused_everywhere() -> None:
    for climate in Climate:
        assert not asked("lime-kept", "eggs", "sealed", climate.value)["allowed"]


@pytest.mark.parametrize(
    ("made", "method", "food", "where", "best_by"),
    [
        # 12 months from 29 February end on 28 February; from 31 August 6 months on 28 February.
        ("2028-02-29", "jam", "strawberry jam", "pantry", "2029-02-28"),
        ("2026-08-31", "dried", "carrots", "pantry", "2027-02-28"),
        ("2027-08-31", "dried", "carrots", "pantry", "2028-02-29"),
        ("2026-12-31", "fridge pickle", "dill pickles", "fridge", "2027-02-28"),
        ("2026-01-31", "frozen", "ground pork", "freezer", "2026-02-28"),
        ("2028-01-31", "frozen", "ground pork", "freezer", "2028-02-29"),
        ("2026-03-31", "frozen", "ground pork", "freezer", "2026-04-30"),
        ("2026-10-31", "lactic ferment", "dill pickles", "fridge", "2027-02-28"),
        ("2027-02-28", "jam", "strawberry jam", "pantry", "2028-02-28"),
        ("2024-02-29", "dried", "popcorn", "pantry", "2026-02-28"),
        ("2028-02-28", "cellar-stored", "broccoli", "cellar 32F", "2028-03-06"),
    ],
)
def test_month_ends_and_leap_days(
    made: str, method: str, food: str, where: str, best_by: str
) -> None:
    climate, _, temp = where.partition(" ")
    said = keeps(
        load_tables(),
        method,
        food,
        climate=climate,
        temp_f=float(temp.rstrip("F")) if temp else None,
        made=date.fromisoformat(made),
    )
    assert said["best_by"] == best_by


@pytest.mark.parametrize(
    ("food", "climate", "warm", "days", "publication"),
    [
        ("sweet potatoes", "pantry", 70, 7, "University of Missouri MP557: 1 to 2 weeks, 50-70 F"),
        ("potatoes", "cellar", 50, 31, "Michigan State: up to a month at 45 to 50 F"),
        ("onions", "cellar", 55, 31, "Michigan State: 1 to 8 months at 35 to 55 F"),
    ],
)
def test_a_crop_too_warm_keeps_no_longer_than_is_published_for_that_warmth(
    food: str, climate: str, warm: float, days: int, publication: str
) -> None:
    said = keeps(load_tables(), "cellar-stored", food, climate=climate, temp_f=warm, made=DAY_0)
    assert said["best_by"] is not None
    assert (date.fromisoformat(said["best_by"]) - DAY_0).days <= days, publication


def test_vacuum_packed_crops_have_ten_days_cold() -> None:
    """UK Food Standards Agency, Vacuum packing: ten days for chilled food without another hurdle;
    Clemson HGIC, Vacuum packaging: never at room temperature."""
    carrots = load_tables().facts("carrots")
    assert carrots is not None
    for climate, last in ((Climate.FRIDGE, DAY_0 + timedelta(days=10)), (Climate.CELLAR, None)):
        batch = Batch("", "", carrots, Method.CELLAR, DAY_0, process=(("vacuum", "yes"),))
        there = imagined(climate, 38.0)
        judged = judge_fresh(batch, State.SEALED, there, DAY_0, load_tables().book)
        if last is None:
            assert judged.refused
        else:
            assert judged.discard_after == last


@pytest.mark.parametrize("food", ["ground beef", "salmon", "stew", "peas", "hard cheese"])
def test_frozen_food_stands_in_a_freezer_unless_a_place_is_named(food: str) -> None:
    said = keeps(load_tables(), "frozen", food, made=DAY_0)
    assert said["place"] == "freezer"
    assert said["best_by"] is not None
    assert said["discard_after"] is None
