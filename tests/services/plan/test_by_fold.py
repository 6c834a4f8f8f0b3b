"""What the week, the outlook and the books read off the tables is what the whole log says, folded
and judged container by container."""

from __future__ import annotations

import random
from datetime import date, timedelta
from pathlib import Path

import pytest

from pantry_tui.core.plan.menu import Candidate
from pantry_tui.services.books.past import past
from pantry_tui.services.books.year import years
from pantry_tui.services.demo import build_demo
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.plan import portions
from pantry_tui.services.plan.candidates import candidates, unasked
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock.came_of import born
from tests.services.books import test_books_laws as histories
from tests.services.plan import by_fold
from tests.services.plan.weeks_at_random import TODAY, build

#: Random stores and random histories of as many.
_STORES = 30


def the_same(p: Pantry) -> None:
    what_left(p)
    what_is_offered(p)
    the_years(p)
    what_stands(p)
    what_came(p)


def what_left(p: Pantry) -> None:
    found = [_left(one) for one in portions.leavings(p)]
    plain = sorted(by_fold.leavings(p), key=lambda one: one.end)
    assert sorted(found) == sorted(tuple(one) for one in plain)
    assert [one[4] for one in found] == [one.end for one in plain]
    since = p.today - timedelta(days=60)
    late = portions.leavings_of(p, past(p).values(), since, ("used", "given"))
    assert sorted(map(_left, late)) == sorted(
        tuple(one) for one in plain if one.end >= since and one.fate in ("used", "given")
    )


def _left(one: portions.Leaving) -> tuple[object, ...]:
    """As `by_fold.Left` has it: by the id of its container."""
    return (one.container, *one[2:])


def what_is_offered(p: Pantry) -> None:
    some = frozenset([*p.stock.containers][::3])
    asked: frozenset[str]
    for start, unknown, asked in (
        (p.today, False, frozenset()),
        (p.today + timedelta(days=9), True, frozenset()),
        (p.today, False, some),
    ):
        found = candidates(p, start, unknown=unknown, asked=asked)
        plain = by_fold.candidates(p, start, unknown=unknown, asked=asked)
        assert [_offered(one) for one in found] == plain
        later = unasked(p, start, unknown=unknown, asked=asked)
        assert [_offered(one) for one in later if one.may_open] == plain


def _offered(one: Candidate) -> by_fold.Offered:
    return by_fold.Offered(*(getattr(one, name) for name in by_fold.Offered._fields))


def the_years(p: Pantry) -> None:
    found, plain = years(p), by_fold.years(p)
    assert len(found) == len(plain)
    for one, other in zip(found, plain, strict=True):
        for name in by_fold.Year._fields:
            is_, was = getattr(one, name), getattr(other, name)
            assert is_ == (pytest.approx(was, abs=0.006) if isinstance(was, float) else was), name


def what_stands(p: Pantry) -> None:
    plain = by_fold.standing(p)
    for row in outlook(p).foods:
        much, apart = plain[row.food]
        assert row.servings == pytest.approx(much, abs=0.051)
        assert row.reserved == apart


def what_came(p: Pantry) -> None:
    batches = past(p)
    assert batches.keys() == p.stock.batches.keys()
    for id_, batch in p.stock.batches.items():
        mine = batches[id_]
        containers = p.containers_of(batch)
        assert [c.id for c in containers] == [mine.id_of(c.number) for c in containers]
        for c, k in zip(containers, mine.kept, strict=True):
            came = born(batch, c), c.turns[0].when.day, c.first, c.bulk
            assert came == (k.came.born, k.came.day, k.came.first, k.came.bulk)
            assert (c.here, bool(c.reserved), c.ended) == k[1:4]
            if c.here and c.left and c.first:
                assert k.left == float(c.left.number / c.first.number)
            assert mine.came_as(c.id) == mine.came_at(c.number - 1) == k.came
        assert mine.apart == sum(c.here and bool(c.reserved) for c in containers)


def test_of_the_demo(tmp_path: Path) -> None:
    build_demo(tmp_path / "demo.db", TODAY)
    with open_pantry(tmp_path / "demo.db", TODAY) as p:
        the_same(p)


@pytest.mark.parametrize("part", range(3))
def test_of_random_stores(tmp_path: Path, part: int) -> None:
    for seed in range(part, _STORES, 3):
        with build(tmp_path / f"{seed}.db", seed) as p:
            the_same(p)


@pytest.mark.parametrize("part", range(3))
def test_of_random_histories_also_on_a_day_before_the_last_fact(part: int) -> None:
    for seed in range(part, _STORES, 3):
        dice = random.Random(seed)
        steps = range(dice.randint(20, 60))
        with histories.store() as p:
            histories.play(p, [_step(dice) for _ in steps])
            the_same(p)
            p.today -= timedelta(days=3)
            what_is_offered(p)
            what_stands(p)


def _step(dice: random.Random) -> tuple[int, int, int]:
    what = dice.randint(-len(histories.LINES), len(histories.STEPS) - 1)
    return what, dice.randint(0, 9), dice.choice([0, 1, 3, 30, 90])


def test_a_day_far_ahead(tmp_path: Path) -> None:
    with build(tmp_path / "s.db", 5) as p:
        p.today = date(2028, 1, 1)
        the_same(p)
