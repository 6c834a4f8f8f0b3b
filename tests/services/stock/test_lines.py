"""Windows over the stock and over the log: every part is what the whole has there."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.words import Verdict
from pantry_tui.errors import BadInput
from pantry_tui.services.books.logbook import log_lines, log_window
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, view
from pantry_tui.services.stock.lines import HEADS, ORDERS, PARTS, Lines, lines, shelves
from pantry_tui.services.stock.rows import DueRow


def whole(found: Lines) -> list[DueRow]:
    return list(found.rows(0, found.total))


def test_the_everyday_order_is_by_heads_then_by_date(demo: Pantry) -> None:
    rows = whole(lines(demo))
    heads = [HEADS.index(row.head) for row in rows]
    assert heads == sorted(heads)
    assert [head for head, _ in lines(demo).heads()] == list(dict.fromkeys(map(part, rows)))
    by_part = [[first(row) for row in rows if part(row) == one] for one in PARTS]
    assert all(days == sorted(days) for days in by_part)


def part(row: DueRow) -> str:
    """What it stands under on the screen, where what needs care comes before what is only later."""
    return "needs care" if row.verdict is Verdict.NEEDS_CARE else row.head


def first(row: DueRow) -> date:
    """The nearer of its dates."""
    return min(row.best_by or date.max, row.discard_after or date.max)


@pytest.mark.parametrize("order", ORDERS)
def test_a_list_in_any_order_in_parts(demo: Pantry, order: str) -> None:
    found = lines(demo, order=order)
    rows = whole(found)
    assert sorted(view.due(demo)) == sorted(rows)
    parts = [row for at in range(0, found.total, 7) for row in found.rows(at, at + 7)]
    assert parts == rows
    assert list(found.rows(-3, 2)) == rows[:2]
    assert not found.rows(found.total, found.total + 9)
    for at, row in enumerate(rows):
        assert {found.where(name) for name in row.container_ids} == {at}
        first = found.where(row.code)
        assert first is not None
        assert first <= at
        assert rows[first].code == row.code
    assert found.where("9Z9") is None


@pytest.mark.parametrize("order", ["food", "place", "verdict", "method"])
def test_the_rows_under_each_head_are_of_that_head(demo: Pantry, order: str) -> None:
    found = lines(demo, order=order)
    at = 0
    for word, count in found.heads():
        assert {str(getattr(row, order)) for row in found.rows(at, at + count)} == {word}
        at += count
    assert at == found.total


def test_words_and_a_place_narrow_it(demo: Pantry) -> None:
    beans = lines(demo, text="runner beans")
    assert beans.total
    assert {row.food for row in whole(beans)} == {"runner beans"}
    inside = whole(lines(demo, place="cellar"))
    assert inside
    assert all(row.place.startswith("cellar") for row in inside)
    both = lines(demo, text="runner beans", place="cellar")
    assert whole(both) == [row for row in whole(beans) if row.place.startswith("cellar")]
    assert sum(row.count for row in whole(lines(demo))) == sum(one.count for one in shelves(demo))
    with pytest.raises(BadInput):
        lines(demo, place="the moon")


def test_the_log_in_parts_is_the_log(demo: Pantry) -> None:
    told = log_lines(demo)
    total, some = log_window(demo, 10, 25)
    assert total == len(told)
    assert some == told[10:25]
    assert log_window(demo, 0, 0) == (total, [])
    assert log_window(demo, total - 2, total + 9)[1] == told[-2:]
    code = told[-1][0]
    assert log_window(demo, 0, 99, code) == (len(log_lines(demo, code)), log_lines(demo, code)[:99])
    fitting = [one for one in told if "put up" in one[1] and "peaches" in one[1]]
    assert log_window(demo, 0, 99, text="Peaches put") == (len(fitting), fitting[:99])
    act.use(demo, next(row.code for row in view.due(demo) if row.food == "peaches"))
    assert log_window(demo, 0, 0)[0] == total + 1
