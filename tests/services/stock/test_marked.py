"""What is marked is judged a turn at a time, and before an act takes the lock."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, tables, view
from pantry_tui.store import log


@pytest.fixture
def five(larder: Pantry) -> Pantry:
    """Five batches, all of them marked."""
    line = putup.read(larder, "2 jars strawberry jam, jam, larder")
    for _ in range(5):
        putup.put_up(larder, line)
    view.due(larder)
    with larder.writing():
        larder.mark("*")
    return larder


@contextmanager
def transactions(p: Pantry) -> Iterator[list[list[str]]]:
    """The statements of each transaction, in order."""
    found: list[list[str]] = []

    def said(sql: str) -> None:
        if sql.startswith("BEGIN"):
            found.append([])
        elif found:
            found[-1].append(sql)

    p.store.db.set_trace_callback(said)
    try:
        yield found
    finally:
        p.store.db.set_trace_callback(None)


def made(statements: list[str]) -> int:
    return sum(one.startswith("INSERT INTO main.lines") for one in statements)


def test_so_many_at_a_time_that_others_may_write_between(
    five: Pantry, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tables, "_TURN", 2)
    with transactions(five) as found:
        rows = view.due(five)
    assert [made(one) for one in found if made(one)] == [2, 2, 1]
    assert [row.count for row in rows] == [2] * 5
    assert not five.store.db.execute("SELECT * FROM marked").fetchall()


@pytest.mark.parametrize("several", [False, True])
def test_an_act_judges_its_own_batch_alone_under_the_lock(five: Pantry, several: bool) -> None:
    code = five.batches()[0].code
    with transactions(five) as found:
        if several:
            act.several(five, [code], lambda ref: act.use(five, ref))
        else:
            act.use(five, code)
    *before, mine = found
    assert sum(map(made, before)) == 5
    assert made(mine) == 1
    assert any("INSERT INTO log" in one for one in mine)


def test_a_refused_act_leaves_what_was_judged_for_it(five: Pantry) -> None:
    length = len(log.select(five.store.db))
    with pytest.raises(BadInput):
        act.use(five, "9Z9")
    assert len(log.select(five.store.db)) == length
    assert not five.store.db.execute("SELECT * FROM marked").fetchall()
