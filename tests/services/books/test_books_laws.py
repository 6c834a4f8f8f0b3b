"""What must hold of the books, the week and the plan after any history of a small store."""

from __future__ import annotations

import itertools
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from datetime import date, timedelta
from fractions import Fraction
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pantry_tui.core.amounts import Amount
from pantry_tui.core.keeping.fitness import UNFIT
from pantry_tui.core.model import Container
from pantry_tui.core.words import Verdict
from pantry_tui.errors import PantryError
from pantry_tui.services.batchwork import putup, repack
from pantry_tui.services.books.past import by_food
from pantry_tui.services.books.year import unit_of, years
from pantry_tui.services.lookup import signs
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.plan import week as weeks
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.plan.portions import leavings
from pantry_tui.services.plan.putup_next import life_days, usual
from pantry_tui.services.stock import act, correct, places, reserve, undo
from pantry_tui.services.stock import count as rounds
from pantry_tui.services.stock.fit import suspect
from pantry_tui.services.stock.pick import containers_named
from tests.examples import many

START = date(2024, 2, 29)

LINES = (
    "4 pint jars tomatoes, boiling-water canned, larder",
    "3 pint jars fridge pickles cucumbers, fridge pickle, fridge",
    "2 trays lasagne, cooked meal, fridge",
    "3 1-lb packs ground beef, frozen, chest",
    "20 lb potatoes, cellar-stored, cellar",
    "2 40 lb crates apples, cellar-stored, cellar",
    "9 winter squash, cellar-stored, larder",
)

Step = Callable[[Pantry, str], object]

STEPS: tuple[Step, ...] = (
    act.use,
    lambda p, code: act.use(p, code, "2 lb"),
    lambda p, code: act.use(p, code, "1/3 lb"),
    lambda p, code: act.use(p, code, "half"),
    lambda p, code: act.use(p, code, "2 servings"),
    lambda p, code: act.give(p, code, "1/7", "Aunt Sunniva"),
    lambda p, code: act.discard(p, code, "all", "mould"),
    lambda p, code: undo.redo(p),
    lambda p, code: repack.repack(p, code, "2 jars, fridge"),
    lambda p, code: repack.repack(p, code, "3 jars, chest", "half"),
    act.open_,
    act.thaw,
    lambda p, code: act.give(p, code, 1, "Aunt Sunniva"),
    lambda p, code: act.discard(p, code, 1, "mould"),
    act.missing,
    lambda p, code: reserve.reserve(p, code, 1, "gift"),
    lambda p, code: signs.mark(p, f"{code}/1", "bulging lid"),
    lambda p, code: correct.correct(p, code, made="2024-01-31"),
    lambda p, code: _count(p, code),  # noqa: PLW0108 - it stands below
    lambda p, code: undo.undo(p),
    lambda p, code: weeks.accept(p),
    lambda p, code: weeks.eaten(p, p.today),
)


def _count(p: Pantry, code: str) -> None:
    """One less than should be there."""
    batch = next(b for b in p.batches() if b.code == code)
    here = [c for c in p.containers_of(batch) if c.here]
    if not here:
        return
    place = p.stock.places[here[0].place]
    rounds.from_counts(p, place, {code: len(here) - 1})
    rounds.finish(p, place)


HISTORY = st.lists(
    st.tuples(
        st.integers(-len(LINES), len(STEPS) - 1), st.integers(0, 9), st.sampled_from([0, 1, 3, 90])
    ),
    min_size=5,
    max_size=30,
)


def play(p: Pantry, history: list[tuple[int, int, int]]) -> None:
    """A negative number puts something up, another does something to a batch; days pass."""
    for what, which, days in history:
        codes = [batch.code for batch in p.batches()]
        try:
            if what < 0 or not codes:
                putup.put_up(p, putup.read(p, LINES[what % len(LINES)]))
            else:
                STEPS[what](p, codes[which % len(codes)])
        except PantryError:
            pass
        p.today += timedelta(days=days)


@contextmanager
def store() -> Iterator[Pantry]:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "store.db"
        create(path, people=2)
        with open_pantry(path, START) as p:
            for name, climate in (
                ("larder", "pantry"),
                ("fridge", "fridge"),
                ("chest", "freezer"),
                ("cellar", "cellar"),
            ):
                places.add(p, name, climate)
            yield p


def the_books_add_up(p: Pantry) -> None:
    found = years(p)
    for food, rows in itertools.groupby(found, key=lambda row: row.food):
        mine = list(rows)
        assert mine[0].opening == 0
        assert all(a.closing == b.opening for a, b in itertools.pairwise(mine))
        containers = [
            c for c in p.stock.containers.values() if p.stock.batches[c.batch].food.name == food
        ]
        for row in mine:
            used = [
                c
                for c in containers
                if c.fate == "used" and c.ended and row.start <= c.ended < (row.end or date.max)
            ]
            assert row.eaten >= 0, row
            if not any(c.bulk or c.begun for c in containers):
                assert row.eaten == len(used), row
        assert mine[-1].closing == pytest.approx(stand(containers, lambda c: c.left), abs=0.01)
        assert sum(row.made for row in mine) == stand(containers, lambda c: c.first, gone=True)


def stand(
    containers: Sequence[Container],
    held: Callable[[Container], Amount | None],
    *,
    gone: bool = False,
) -> float:
    """What stands of a food, by part of a container or as it is drawn from."""
    total = Fraction(0)
    for one in containers:
        much = held(one)
        assert much is not None
        assert one.first is not None
        if one.here or gone:
            total += much.number if unit_of(containers) else much.number / one.first.number
    return float(total)


def what_came_in_went_out_or_stands(p: Pantry) -> None:
    """Exactly, container by container: so too by food and unit, whatever was undone."""
    out: dict[str, Fraction] = defaultdict(Fraction)
    for one in leavings(p):
        assert one.number >= 0
        out[one.container] += one.number
    for container in p.stock.containers.values():
        assert container.first is not None
        assert container.left is not None
        stands = container.left.number if container.here else 0
        assert container.first.number == out[container.id] + stands, container


def the_week_is_fit(p: Pantry) -> None:
    found = weeks.week(p)
    for take in found.take:
        for name in take.containers:
            (container,) = containers_named(p, name)
            judged = p.judge(container)
            assert judged.verdict not in (*UNFIT, Verdict.UNKNOWN, Verdict.TEND)
            assert not container.reserved
            assert not suspect(p, container)
            late = judged.discard_after is not None and take.day > judged.discard_after
            assert not late or (found.accepted and any(name in note for note in found.notes))


def nothing_is_put_up_for_longer_than_it_keeps(p: Pantry) -> None:
    for row in outlook(p).foods:
        way = usual(p, by_food(p)[row.food])
        life = life_days(p, way)
        if row.put_up is None or life is None or life >= 364:
            continue
        a_week, _, _ = row.reckoning.partition(" servings a week")
        most = float(a_week) * life / 7 + 0.05 * life / 7  # what is said is rounded
        given = "to give away" in row.reckoning or "spoiled" in row.reckoning
        assert given or (row.put_up - 1) * way.servings <= most, row.reckoning


@settings(max_examples=many(40))
@given(HISTORY)
def test_the_laws_hold_after_any_history(history: list[tuple[int, int, int]]) -> None:
    with store() as p:
        play(p, history)
        what_came_in_went_out_or_stands(p)
        the_books_add_up(p)
        the_week_is_fit(p)
        nothing_is_put_up_for_longer_than_it_keeps(p)
