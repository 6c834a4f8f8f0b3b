"""A number that begins with its point or comma is not ten times as much, and what parts nothing is
refused by name."""

from __future__ import annotations

from fractions import Fraction

import pytest

from pantry_tui.core.amounts import read_amount
from pantry_tui.core.batchwork.vinegar import weak_vinegar
from pantry_tui.core.safety.acid import too_little_acid
from pantry_tui.core.safety.jars import ounces
from pantry_tui.core.safety.measured import (
    all_fahrenheit,
    read_inches,
    read_minutes,
    read_percent,
    read_psi,
)
from pantry_tui.core.safety.record import read_details
from pantry_tui.core.safety.salt import read_brine, read_salt
from pantry_tui.core.safety.spoons import read_spoons

POINTS = (".", ",", "0.", "0,", "·", "٫")


@pytest.mark.parametrize("point", POINTS)
def test_every_reader_of_a_number_reads_a_point_without_its_nought(point: str) -> None:
    assert read_minutes(f"{point}85") == 0.85
    assert read_psi(f"{point}11") == 0.11
    assert read_percent(f"{point}5%") == 0.5
    assert all_fahrenheit(f"{point}165F") == [0.165]
    assert read_inches(f"{point}5 in") == 0.5
    assert read_salt(f"{point}2%") == 0.2
    assert read_brine(f"{point}5% brine") == 0.5
    assert read_spoons(f"{point}5 tbsp lemon") == [1.5]
    assert ounces(f"{point}5 pint jars") == 8
    assert "0.5 %" in " ".join(weak_vinegar(f"{point}5%"))


def test_a_fraction_may_have_room_round_its_stroke() -> None:
    assert read_spoons("1 / 2 tbsp lemon") == [1.5]
    assert read_spoons("1 1 / 2 tbsp lemon") == [4.5]
    assert read_inches("1 / 2 in") == 0.5
    assert read_percent("1 / 2 %") == 0.5
    assert ounces("1 / 2 pint") == 8
    assert read_amount("1 / 2 lb") == read_amount(".5 lb") == (Fraction(1, 2), "lb")
    assert too_little_acid("1 / 2 tbsp lemon", "pint")


@pytest.mark.parametrize("value", [". 5%", "..5%", "5..5%", "cider.5%", "5 . 5%"])
def test_a_point_that_parts_nothing_is_refused(value: str) -> None:
    assert read_details([("vinegar", value)]).problems


def test_a_point_behind_the_short_form_of_a_word_ends_it() -> None:
    assert not read_details([("minutes", "25 min."), ("acid", "2 tbsp. lemon")]).problems
    assert read_minutes("25 min,11 psi") == 25
