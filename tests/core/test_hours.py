"""Hours of the day in words become figures; what could be two hours is asked."""

from __future__ import annotations

import pytest

from pantry_tui.core.hours import day_and_hour, in_figures
from pantry_tui.errors import Unclear


@pytest.mark.parametrize(
    ("said", "figures"),
    [
        ("6pm", "18:00"), ("at 6 pm", "18:00"), ("6.30 p.m.", "18:30"), ("12 pm", "12:00"),
        ("11:59 am", "11:59"), ("12 am", "00:00"), ("12:05 am", "00:05"), ("noon", "12:00"),
        ("12 noon", "12:00"), ("midnight", "00:00"), ("at midnight", "00:00"),
        ("yesterday at noon", "yesterday 12:00"), ("6pm on friday", "friday 18:00"),
        ("18:00 yesterday", "yesterday 18:00"), ("yesterday at 18:00", "yesterday 18:00"),
        ("2026-11-25 6 pm", "2026-11-25 18:00"), ("13 pm", "13 pm"), ("0 am", "0 am"),
        ("25 nov", "25 nov"), ("2026-11-25", "2026-11-25"), ("unknown", "unknown"),
        ("13 o'clock", "13 o'clock"),
    ],
)  # fmt: skip
def test_an_hour_in_words_is_one_in_figures(said: str, figures: str) -> None:
    assert day_and_hour(said) == figures


@pytest.mark.parametrize(
    ("said", "choices"),
    [("at 6", ("06:00", "18:00")), ("6 o'clock", ("06:00", "18:00")),
     ("yesterday at 12", ("12:00", "00:00")), ("friday midnight", ())],
)  # fmt: skip
def test_an_hour_of_either_half_or_midnight_of_a_day_is_asked(
    said: str, choices: tuple[str, ...]
) -> None:
    with pytest.raises(Unclear, match="could be") as asked:
        day_and_hour(said)
    assert asked.value.choices == choices


def test_a_stretch_keeps_its_words_and_midnight() -> None:
    assert in_figures("from 6 pm to midnight") == "from 18:00 to midnight"
