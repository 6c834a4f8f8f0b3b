"""Of what is in doubt no answer names a date, and a record that makes food milder says so."""

from __future__ import annotations

import pytest

from pantry_tui.app.rowtext import row_detail
from pantry_tui.cli.printing import stock as printed
from pantry_tui.cli.printing.putup import putup as putup_lines
from pantry_tui.core.words import Verdict
from pantry_tui.services.batchwork.putup import preview, put_up, read
from pantry_tui.services.output import jsonable
from pantry_tui.services.pantry import Pantry
from pantry_tui.services.stock import act, one_batch
from pantry_tui.services.stock.correct import correct
from pantry_tui.services.stock.rows import DueRow


def up(p: Pantry, line: str) -> str:
    return put_up(p, read(p, line)).code


def only(p: Pantry, code: str) -> DueRow:
    (row,) = one_batch.show(p, code).rows
    return row


def test_of_a_ferment_that_was_called_ready_too_soon_no_answer_names_a_date(larder: Pantry) -> None:
    code = up(larder, "2 quart jars sauerkraut, lactic ferment, fridge, salt=2.25%")
    told = act.ready(larder, code).message
    assert "In doubt: Called ready after 0 days" in told
    assert "est by" not in told
    row = only(larder, code)
    assert row.best_by is not None, "what was reckoned, if it were done"
    assert row.good_until is None
    _, line = printed.due([row])
    assert "nothing published" in line
    assert "2027" not in line
    assert "best by        none (in doubt)" in row_detail(row)


def test_the_last_day_of_what_is_in_doubt_is_told_nowhere(larder: Pantry) -> None:
    """A year that was mistyped: nobody knows, and September 2027 would invite eating until then."""
    row = only(larder, up(larder, "1 lb tofu, bought in, fridge, printed=2027-09-01"))
    assert row.verdict is Verdict.UNKNOWN
    assert row.discard_after is not None
    assert (row.last_day, row.why_no_last_day) == (None, "in doubt")
    assert not any("2027" in line for line in printed.due([row]) if "tofu" in line)


def test_what_was_opened_says_the_doubt_before_any_date(larder: Pantry) -> None:
    code = up(larder, "2 jars snap beans, salted, fridge, salt=25%, state=sealed")
    told = act.open_(larder, code).message
    assert "In doubt: No published figure" in told


def test_what_is_known_keeps_its_date(larder: Pantry) -> None:
    line = "2 quart jars sauerkraut, lactic ferment, fridge, 2026-10-01, salt=2.25%, state=sealed"
    code = up(larder, line)
    row = only(larder, code)
    assert row.good_until == row.best_by is not None
    assert "Best by" in act.open_(larder, code).message


@pytest.mark.parametrize(("salt", "says"), [("20%", True), ("25%", True), ("10%", False)])
def test_what_is_offered_from_now_on_is_milder_though_the_word_stays(
    larder: Pantry, salt: str, says: bool
) -> None:
    """Beans under salt are unknown with any salt; with a fifth of it they are offered."""
    code = up(larder, "1 jar snap beans, salted, fridge, salt=12%")
    act.ready(larder, code)
    done = correct(larder, code, process=[("salt", salt)])
    words = "milder: unknown (not offered) until now, unknown (offered, last) by this record"
    assert (words in done.message) is says
    assert only(larder, code).verdict is Verdict.UNKNOWN
    back = correct(larder, code, process=[("salt", "12%")])
    assert "milder" not in back.message


def test_what_becomes_milder_in_one_of_several_containers_is_said(larder: Pantry) -> None:
    code = up(larder, "2 quart jars sauerkraut, lactic ferment, fridge, 2026-11-20, salt=2.25%")
    act.ready(larder, f"{code}/2")
    assert "milder" in correct(larder, code, process=[("ph", "3.6")]).message
    assert {row.verdict for row in one_batch.show(larder, code).rows} == {
        Verdict.NEEDS_CARE,
        Verdict.SOUND,
    }


@pytest.mark.parametrize(
    "line",
    [
        "2 pint jars snap beans, pressure canned, larder, minutes=5 psi=11",
        "1 lb tofu, bought in, fridge, printed=2027-09-01",
    ],
)
def test_putting_it_up_names_no_day_either(larder: Pantry, line: str) -> None:
    for made in (preview(larder, read(larder, line)), put_up(larder, read(larder, line))):
        assert made.verdict is Verdict.UNKNOWN
        said = jsonable.putup(made)
        assert (said["best_by"], said["discard_after"]) == (None, None)
        assert said["discard_after_why"] in ("in doubt", "process in doubt")
        days = [one for one in putup_lines(made) if one.startswith(("best by", "discard after"))]
        assert len(days) == 2
        assert not any(one[-4:].isdecimal() for one in days), "it names no year"
