"""Row and page text as a person reads it: dates, long lines, bars."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.app.format import day, hang, near_day, short_day, week_day
from pantry_tui.app.lines import headings
from pantry_tui.app.rowtext import due_columns

DAY = date(2026, 12, 9)


def test_a_near_date_has_its_day_and_a_far_one_its_year() -> None:
    assert near_day(DAY, 14) == "9 Dec"
    assert near_day(DAY, -99) == "9 Dec"
    assert near_day(DAY, -400) == near_day(DAY, 100) == "Dec 2026"
    assert near_day(None, None) == "none"
    assert (day(None), short_day(None), week_day(DAY)) == ("none", "none", "Wed 9 Dec")


@pytest.mark.parametrize("width", [30, 40, 80, 120])
def test_the_columns_of_a_list_fill_its_width_and_no_more(width: int) -> None:
    for beside in ("place", "method"):
        assert sum(column.width for column in due_columns(width, beside)) <= width - 2


def test_long_lines_hang_under_their_beginning_and_lose_no_word() -> None:
    text = "  Dates\ntake care      one two three four five six\n\nword " + "x" * 50
    hung = hang(text, 30)
    lines = hung.split("\n")
    assert all(len(line) <= 30 for line in lines)
    assert lines[2].startswith(" " * 15)
    assert lines[2].strip()
    assert "".join(hung.split()) == "".join(text.split())


def test_a_long_alarm_takes_two_lines_and_says_all_of_it_below() -> None:
    text = "! " + "potatoes must be eaten soon " * 8
    columns = due_columns(80)
    lines = headings(text, columns, 2)
    assert len(lines) == 2
    assert len({line.key for line in lines}) == 2
    assert all(line.word == text for line in lines)
