"""How many a portion serves is the same figure wherever it stands: on the plate of a week, in the
box it is taken from, in the sums."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from pantry_tui.core.amounts import amount_of, kitchen
from pantry_tui.core.words import Group, Method
from pantry_tui.services import household
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week
from pantry_tui.services.plan.appetite import set_ceiling, set_people
from pantry_tui.services.plan.servings import in_amount, per_pint, portion, servings
from pantry_tui.services.stock import places
from tests.services.plan.putting_up import up


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", date(2026, 11, 25)) as pantry:
        for name, climate in (("fridge", "fridge"), ("cellar", "cellar"), ("larder", "pantry")):
            places.add(pantry, name, climate)
        yield pantry


def test_two_thirds_of_a_little_bacon_is_no_quarter_of_a_pound(p: Pantry) -> None:
    made = putup.put_up(p, putup.read(p, "0.5 lb bacon, bought in, fridge"))
    box = next(iter(p.containers_of(next(iter(p.stock.batches.values())))))
    assert made.code == "2A"
    whole = servings(p, box)
    for wanted in (2.0, 3.0, 6.0, 8.0):
        part = portion(p, box, wanted)
        assert part is not None
        serves = in_amount(p, "bacon", Group.MEAT, Method.BOUGHT, part)
        assert abs(serves - wanted) <= 0.25 * wanted, (wanted, part)
    half = in_amount(p, "bacon", Group.MEAT, Method.BOUGHT, amount_of("0.5 lb"))
    assert half == pytest.approx(whole)


@pytest.mark.parametrize("people", [1, 2, 3, 4, 6])
def test_a_week_names_no_portion_that_serves_twice_as_many_as_it_says(
    p: Pantry, people: int
) -> None:
    for line in (
        "0.25 lb bacon, bought in, fridge", "1 lb hard cheese, fridge", "20 lb potatoes, cellar",
        "10 lb carrots, cellar-stored, cellar", "1 lb butter, fridge",
    ):  # fmt: skip
        putup.put_up(p, putup.read(p, line))
    household.change(p, people=people)
    for take in week.week(p).take:
        if " lb" not in str(take.count):
            continue
        batch = next(one for one in p.stock.batches.values() if one.code == take.code)
        held = amount_of(str(take.count))
        serves = in_amount(p, batch.food.name, batch.food.group, batch.method, held)
        whole = sum(servings(p, one) for one in p.containers_of(batch))
        assert serves <= max(1.35 * take.servings, 1) or serves == pytest.approx(whole), take


def test_a_pint_serves_as_many_in_every_sum(p: Pantry) -> None:
    for name in ("peaches", "bacon", "runner beans", "quindles"):
        food = p.tables.index.find(name)
        pint = in_amount(p, name, Group.MEAT, Method.PRESSURE, amount_of("1 pint"))
        assert pint == per_pint(food)
    assert kitchen(amount_of("0.5 pint")) == amount_of("0.5 pint")


def test_two_eggs_are_a_supper_and_the_household_is_told_so(p: Pantry) -> None:
    set_people(p, 2)
    up(p, "12 eggs, fresh, fridge, 2026-11-24")
    found = [take for take in week.week(p).take if take.food == "eggs"]
    assert {(take.amount, take.servings) for take in found} == {("4", 2.0)}
    assert "two eggs are one" in set_ceiling(p, "eggs", "4").message
    assert "two eggs" not in set_ceiling(p, "snap beans", "4").message
