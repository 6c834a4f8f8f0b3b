"""What must go shows no day beside its verdict: a later one would say that it may be eaten until
then. What cannot hurt and has no figure says so, and never "never taste"."""

from __future__ import annotations

import re
from datetime import timedelta
from pathlib import Path

import pytest

from pantry_tui.app.rowtext import caution, row_detail
from pantry_tui.app.texts import batch_text
from pantry_tui.cli.printing import stock as printing
from pantry_tui.core.dates import say
from pantry_tui.core.safety.caution import CAUTION
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import preview, put_up, read
from pantry_tui.services.lookup import signs
from pantry_tui.services.output import jsonable
from pantry_tui.services.output.labels import labels
from pantry_tui.services.output.spreadsheet import export_table
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, places, view
from pantry_tui.services.stock.one_batch import show

NEVER = "never taste"


def test_a_day_to_come_never_stands_beside_do_not_taste(larder: Pantry) -> None:
    code = put_up(larder, read(larder, "1 pint jar runner beans, pressure canned, larder")).code
    signs.mark(larder, code, "bulging or leaking")
    view = show(larder, code)
    row = view.rows[0]
    assert row.verdict is Verdict.DO_NOT_TASTE
    assert row.good_until is None
    assert row.last_day is None
    told = "\n".join([row_detail(row), batch_text(view), *printing.batch(view)])
    assert "2027" not in told
    assert "discard after Wed" not in told


def test_nor_beside_discard(larder: Pantry) -> None:
    code = put_up(larder, read(larder, "1 tub bean soup, cooked meal, fridge")).code
    dated = show(larder, code).rows[0]
    assert dated.last_day is not None
    signs.mark(larder, code, "mould")
    row = show(larder, code).rows[0]
    assert row.verdict in (Verdict.DISCARD, Verdict.DO_NOT_TASTE)
    assert row.last_day is None
    assert row.why_no_last_day == "must go now"
    assert not any(one.discard_after or one.best_by for one in labels(larder, [code]))


def test_nor_in_json_or_a_spreadsheet(larder: Pantry, tmp_path: Path) -> None:
    code = put_up(larder, read(larder, "1 pint jar runner beans, pressure canned, larder")).code
    signs.mark(larder, code, "bulging or leaking")
    (row,) = jsonable.due(view.due(larder))
    shown = jsonable.batch(show(larder, code))["containers"][0]
    for said in (row, shown):
        assert said["verdict"] == "do not taste"
        assert (said["best_by"], said["discard_after"], said["days_left"]) == (None, None, None)
        assert said["discard_after_why"] == "must go now"
    export_table(larder, tmp_path / "stock.csv", "stock")
    assert "2027" not in (tmp_path / "stock.csv").read_text(encoding="utf-8-sig")


def test_what_was_discarded_by_its_day_still_names_it_in_json(larder: Pantry) -> None:
    put_up(larder, read(larder, "1 tub bean soup, cooked meal, fridge, made 2026-11-01"))
    (row,) = jsonable.due(view.due(larder))
    assert row["verdict"] == "discard"
    assert row["discard_after"] is not None


def test_nor_a_day_before_it_was_there(larder: Pantry) -> None:
    """Over on the day on which it was made: the last day on which it was fit never was."""
    line = "1 2-lb pack hot smoked salmon, hot smoked, fridge"
    made = put_up(larder, read(larder, line))
    act.move(larder, made.code, "larder")
    (row,) = jsonable.due(view.due(larder))
    assert (row["verdict"], row["discard_after"]) == ("discard", None)
    assert row["discard_after_why"] == "must go now"
    told = "\n".join([*printing.batch(show(larder, made.code)), *printing.due(view.due(larder))])
    assert "must go now" in told
    assert say(larder.today - timedelta(days=1)) not in told
    assert (larder.today - timedelta(days=1)).isoformat() not in told


def test_one_answer_has_one_way_to_write_a_day(larder: Pantry) -> None:
    code = put_up(larder, read(larder, "2 pint jars strawberry jam, jam, larder")).code
    told = "\n".join(printing.batch(show(larder, code)))
    assert "best by" in told
    assert not re.search(r"\d{4}-\d\d-\d\d", told)


@pytest.mark.parametrize(
    "line",
    ["1 jar salt, larder", "1 bag sugar, larder, made unknown", "2 lb flour, larder, made unknown",
     "1 jar honey, larder, made unknown", "1 jar allspice, larder, made unknown",
     "2 lb lentils, larder, made unknown", "2 lb dried apples, larder, made unknown"],
)  # fmt: skip
def test_dry_goods_of_which_nothing_is_known_are_offered_without_the_caution(
    larder: Pantry, line: str
) -> None:
    assert CAUTION not in preview(larder, read(larder, line)).cautions
    code = put_up(larder, read(larder, line)).code
    view = show(larder, code)
    row = view.rows[0]
    assert row.verdict is Verdict.UNKNOWN
    assert row.usable
    told = "\n".join([row_detail(row), caution(row), batch_text(view), *printing.due([row])])
    assert NEVER not in told.lower()
    assert "no published figure" in told.lower() or "no date" in told.lower()


def test_what_can_hurt_keeps_the_caution(larder: Pantry) -> None:
    code = put_up(larder, read(larder, "2 packs gravlax, salted, fridge")).code
    row = show(larder, code).rows[0]
    assert row.verdict is Verdict.UNKNOWN
    assert not row.usable
    assert CAUTION in row_detail(row)
    assert CAUTION in show(larder, code).cautions


@pytest.mark.parametrize(
    ("line", "fit"),
    [
        ("2 lb flour, bought in, larder, state=open", True),
        ("2 lb lentils, bought in, larder, state=open", True),
        ("1 tin cocoa, bought in, larder, state=open", True),
        ("1 jar lentils, bought in, larder, state=open", False),  # in a jar they are cooked
        ("1 jar chickpeas, bought in, larder, state=open", False),
        ("1 tin lentils, bought in, larder, state=open", False),
        ("1 tin prunes, bought in, larder, state=open", False),
        ("1 bag cooked lentils, dried, larder, state=open", False),
        ("1 bag bread dough, bought in, larder, state=open", False),
        ("1 bag masa, fresh, larder", False),
    ],
)
def test_the_figure_for_an_opened_pack_is_for_dry_goods(
    larder: Pantry, line: str, fit: bool
) -> None:
    code = put_up(larder, read(larder, line)).code
    row = show(larder, code).rows[0]
    assert (row.verdict is Verdict.SOUND) == fit, row.reasons
    assert row.usable == fit


def test_what_nobody_knows_of_is_not_said_to_last_for_ever(larder: Pantry) -> None:
    """Frozen food has no safety end at 0 °F, and beside "unknown" that would say the opposite."""
    places.add(larder, "freezer", "freezer")
    made = put_up(larder, read(larder, "1 pint jar syrup, frozen, freezer"))
    assert made.verdict is Verdict.UNKNOWN
    (row,) = (one for one in view.due(larder) if one.code == made.code)
    for reasons in (made.reasons, row.reasons):
        assert any("No published figure" in one for one in reasons)
        assert not any("No safety end" in one for one in reasons)
