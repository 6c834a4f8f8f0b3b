"""Empty jars, lids and loans: a batch takes them, a used jar comes back, its lid does not."""

from __future__ import annotations

import pytest

from pantry_tui.errors import BadInput, Refused
from pantry_tui.services.batchwork import jars
from pantry_tui.services.batchwork.methods import methods
from pantry_tui.services.batchwork.putup import put_up, read
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.plan.outlook import outlook
from pantry_tui.services.stock import act, undo

PEACHES = "6 pint jars peaches, boiling-water canned, minutes=30, larder, 2026-08-10"


def made(p: Pantry, line: str) -> str:
    return put_up(p, read(p, line)).code


def empty(p: Pantry) -> dict[str, int]:
    return {row.size: row.empty for row in jars.jars(p)}


@pytest.fixture
def p(larder: Pantry) -> Pantry:
    made(larder, PEACHES)
    jars.count(larder, "pint", 20)
    jars.count(larder, "lids", 30)
    return larder


def test_a_batch_takes_jars_and_lids_and_undo_gives_them_back(p: Pantry) -> None:
    assert empty(p) == {"pint": 20, "lids": 30}
    made(p, "7 pint jars plums, boiling-water canned, minutes=25, larder")
    assert empty(p) == {"pint": 13, "lids": 23}
    undo.undo(p)
    assert empty(p) == {"pint": 20, "lids": 30}


def test_other_jars_and_bags_take_none(p: Pantry) -> None:
    made(p, "3 quart jars plums, boiling-water canned, minutes=25, larder")
    made(p, "3 bags apples, dried, larder")
    assert empty(p)["pint"] == 20
    made(p, "3 pint jars apples, dried, larder")
    assert empty(p) == {"pint": 17, "lids": 27}  # three of the lids went on the quarts


def test_a_used_jar_comes_back_and_its_lid_does_not(p: Pantry) -> None:
    code = next(iter(p.stock.batches.values())).code
    act.use(p, code, "2")
    assert empty(p) == {"pint": 22, "lids": 30}
    act.discard(p, code, 1, "mould")
    assert empty(p)["pint"] == 23


@pytest.mark.parametrize("gone", ["give", "missing", "broken"])
def test_what_took_its_jar_along_gives_none_back(p: Pantry, gone: str) -> None:
    code = next(iter(p.stock.batches.values())).code
    if gone == "give":
        act.give(p, code, 2, "Aunt Sunniva")
    elif gone == "missing":
        act.missing(p, code, 2)
    else:
        act.discard(p, code, 2, "broken")
    assert empty(p)["pint"] == 20


def test_loans_go_out_and_come_back(p: Pantry) -> None:
    jars.lend(p, "pints", 6, "to Aunt Sunniva")
    row = jars.jars(p)[0]
    assert (row.empty, row.lent) == (14, {"Aunt Sunniva": 6})
    jars.back(p, "pint jars", 4, "from Aunt Sunniva")
    row = jars.jars(p)[0]
    assert (row.empty, row.lent) == (18, {"Aunt Sunniva": 2})
    with pytest.raises(Refused, match="has 2"):
        jars.back(p, "pint", 3, "Aunt Sunniva")
    with pytest.raises(Refused, match="18"):
        jars.lend(p, "pint", 19, "Maren")
    jars.count(p, "pint", 10)
    row = jars.jars(p)[0]
    assert (row.empty, row.lent) == (10, {"Aunt Sunniva": 2})


def test_what_was_never_counted_is_not_made_up(larder: Pantry) -> None:
    made(larder, PEACHES)
    assert jars.jars(larder) == []
    with pytest.raises(Refused, match="Count"):
        jars.lend(larder, "pint", 1, "Maren")
    with pytest.raises(BadInput, match="no size"):
        jars.count(larder, "bucket", 3)
    with pytest.raises(BadInput, match="Lids"):
        jars.lend(larder, "lids", 3, "Maren")


def test_methods_and_the_outlook_say_whether_there_are_enough(p: Pantry) -> None:
    jars.count(p, "quart", 3)
    way = next(w for w in methods(p.tables, "21 lb tomatoes", p, 500) if "jars" in w.needs)
    assert way.needs["jars"] == "7 quart (3 empty, 4 short; 30 lids)"
    act.use(p, made(p, PEACHES.replace("2026", "2025")), "6")
    notes = " ".join(outlook(p).notes)
    assert "pint jars" in notes
    assert "lids" in notes
