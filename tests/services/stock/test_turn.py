"""Whose turn it is, read off the stock tables, is what the judge says of the folded log."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from pantry_tui.core.keeping.rotation import order_key
from pantry_tui.core.model import Container
from pantry_tui.core.words import State
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry, open_pantry
from pantry_tui.services.stock import act, view
from pantry_tui.services.stock.pick import name_of, ordered
from pantry_tui.services.stock.turn import in_turn, left_behind

TODAY = date(2026, 11, 25)
DAYS = [TODAY + timedelta(days=days) for days in (0, 40, 400, 2000)]


def by_food(p: Pantry) -> dict[str, list[Container]]:
    found: dict[str, list[Container]] = {}
    for container in p.stock.containers.values():
        if container.here:
            found.setdefault(p.stock.batches[container.batch].food.name, []).append(container)
    return found


@pytest.mark.parametrize("day", DAYS, ids=str)
def test_the_order_of_the_tables_is_that_of_the_judge(demo: Pantry, day: date) -> None:
    with open_pantry(demo.path, day) as p:
        foods = by_food(p)
        assert len(foods) > 20
        for food, containers in foods.items():
            firsts = {
                (line.batch, int(line.numbers.partition(" ")[0])): None for line in in_turn(p, food)
            }
            wanted = [(c.batch, c.number) for c in ordered(p, containers)]
            assert list(firsts) == [one for one in wanted if one in firsts]
            assert next(iter(firsts)) == wanted[0]


def alike(*methods: str) -> bool:
    """Whether what is kept in one of two ways is eaten for what is kept in the other."""
    kinds = (
        {"fresh", "cellar-stored"},
        {"boiling-water canned", "pressure canned"},
        {"dried", "freeze-dried"},
        {"fridge pickle", "vinegar pickle"},
        {"jam", "freezer jam"},
    )
    return len(set(methods)) == 1 or any(kind >= set(methods) for kind in kinds)


def by_the_log(p: Pantry, taken: Container) -> tuple[str, ...]:
    """The same from every container of the food, folded and judged."""
    batch = p.stock.batches[taken.batch]
    mine = order_key(batch, taken, p.judge(taken))
    said: dict[str, str] = {}
    for other in ordered(p, by_food(p)[batch.food.name]):
        theirs, judged = p.stock.batches[other.batch], p.judge(other)
        if theirs.id in (batch.id, *said) or not judged.usable or other.reserved:
            continue
        if not alike(theirs.method, batch.method):
            continue
        older = theirs.made is not None and batch.made is not None and theirs.made < batch.made
        what = f"{name_of(p, other)} {theirs.food.name} in {p.where(other)}"
        if order_key(theirs, other, judged) < mine:
            opened = other.state in (State.OPEN, State.THAWED)
            later = "is older" if older else "falls due first"
            why = f"is {other.state}" if opened else "is begun" if other.begun else later
            said[theirs.id] = f"{what} {why}: take that one first next time."
        elif older:
            closed = "is begun" if taken.begun else "falls due first"
            why = f"is {taken.state}" if taken.state is State.OPEN else closed
            said[theirs.id] = f"{what} is older, but this one {why}: it is rightly first."
    return tuple(said.values())[:2]


@pytest.mark.parametrize("day", DAYS, ids=str)
def test_what_is_left_behind_is_what_the_log_says(demo: Pantry, day: date) -> None:
    with open_pantry(demo.path, day) as p:
        told: set[str] = set()
        for containers in by_food(p).values():
            for container in containers:
                found = left_behind(p, container)
                assert found == by_the_log(p, container)
                told.update(found)
        assert any("first next time" in one for one in told)


def test_an_older_jar_that_is_rightly_passed_over_is_named(larder: Pantry) -> None:
    for made in ("1 may 2026", "today"):
        line = f"2 jars strawberry jam, jam, larder, {made}"
        putup.put_up(larder, putup.read(larder, line))
    newer = larder.batches()[-1].code
    act.open_(larder, f"{newer}/1")
    done = act.use(larder, f"{newer}/1")
    assert any("is older, but this one is open: it is rightly first" in w for w in done.warnings)


def test_what_is_kept_in_another_way_is_not_taken_for_it(larder: Pantry) -> None:
    for line in (
        "6 half-pint jars dried apples, larder, 1 sep 2025",
        "4 quart jars apples, boiling-water canned, larder, 1 sep 2026",
        "40 lb apples, cellar-stored, larder, 1 nov 2026",
        "10 lb apples, cellar-stored, larder, 1 oct 2026",
    ):
        putup.put_up(larder, putup.read(larder, line))
    dried, canned, young, old = (one.code for one in larder.batches()[-4:])
    said = " ".join(act.use(larder, young, "2 lb").warnings)
    assert old in said
    assert dried not in said
    assert canned not in said
    assert not any("first" in one for one in act.use(larder, canned).warnings)


def test_use_reads_the_batches_that_it_speaks_of_and_no_more(larder: Pantry) -> None:
    """Of a food with many batches an act folds its own alone."""
    line = putup.read(larder, "2 jars strawberry jam, jam, larder")
    made = [putup.put_up(larder, line).code for _ in range(30)]
    view.due(larder)
    with open_pantry(larder.path, larder.today) as p:
        act.use(p, made[-1])
        assert len(p.stock.loaded) == 1
        act.use(p, "strawberry jam")
        assert len(p.stock.loaded) == 2
