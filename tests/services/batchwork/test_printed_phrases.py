"""The date on a pack, as people say it."""

from __future__ import annotations

from datetime import date

import pytest

from pantry_tui.core.dates import PRINTED_DAYS, read_printed
from pantry_tui.core.words import Method
from pantry_tui.errors import BadInput
from pantry_tui.services.batchwork import putup
from pantry_tui.services.pantry import Pantry

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("best before dec 3", date(2026, 12, 3)),
        ("best before 3 dec", date(2026, 12, 3)),
        ("use by 3rd of december", date(2026, 12, 3)),
        ("use-by jan 9", date(2027, 1, 9)),
        ("expires nov 20", date(2026, 11, 20)),
        ("bb 2026-12-03", date(2026, 12, 3)),
    ],
)
@pytest.mark.parametrize("food", ["1 carton milk", "1 tub yoghurt", "1 pack tofu"])
def test_a_day_on_a_pack_needs_no_year(larder: Pantry, food: str, said: str, day: date) -> None:
    reading = putup.read(larder, f"{food}, fridge, {said}")
    assert not reading.problems
    assert (reading.method, reading.printed, reading.made) == (Method.BOUGHT, day, TODAY)


def test_what_only_the_year_can_say_is_asked_about() -> None:
    back, ahead = PRINTED_DAYS
    assert (back, ahead) == (31, 183)
    assert read_printed("25 may", TODAY) == date(2027, 5, 25)
    assert read_printed("25 october", TODAY) == date(2026, 10, 25)
    for said in ("5 june", "24 october", "may"):
        with pytest.raises(BadInput, match="no year"):
            read_printed(said, TODAY)
    with pytest.raises(BadInput, match="could be"):
        read_printed("3.12.26", TODAY)
