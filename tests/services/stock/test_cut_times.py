"""How long the cold was off, in the ways a person says it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, datetime
from pathlib import Path

import pytest

from pantry_tui.errors import BadInput
from pantry_tui.services.clock import Clock
from pantry_tui.services.pantry import Pantry, create, open_pantry
from pantry_tui.services.stock import outage, places
from pantry_tui.services.stock.cut_times import read_stretch

TODAY = date(2026, 10, 3)
NOW = "2026-10-03 19:30"


@pytest.fixture
def p(tmp_path: Path) -> Iterator[Pantry]:
    create(tmp_path / "store.db")
    with open_pantry(tmp_path / "store.db", Clock(TODAY, 19 * 60 + 30)) as pantry:
        yield pantry


def _plain(at: datetime | None) -> str:
    return "" if at is None else f"{at:%Y-%m-%d %H:%M}"


@pytest.mark.parametrize(
    ("typed", "start", "end"),
    [
        ("6", "2026-10-03 13:30", NOW),
        ("1,5 hours", "2026-10-03 18:00", NOW),
        ("unknown", "", NOW),
        ("nobody knows", "", NOW),
        ("09:00 to 17:30", "2026-10-03 09:00", "2026-10-03 17:30"),
        ("9:00-17:30", "2026-10-03 09:00", "2026-10-03 17:30"),
        ("from 22:00 until 06:00", "2026-10-02 22:00", "2026-10-03 06:00"),
        ("yesterday 18:00 to 06:00", "2026-10-02 18:00", "2026-10-03 06:00"),
        ("1 oct 18:00 to yesterday 09:00", "2026-10-01 18:00", "2026-10-02 09:00"),
        ("2026-10-01 18:00 to 2026-10-02 09:00", "2026-10-01 18:00", "2026-10-02 09:00"),
        ("since 18:00 until now", "2026-10-03 18:00", NOW),
        ("since 18:00", "2026-10-03 18:00", NOW),
        ("since yesterday 18:00", "2026-10-02 18:00", NOW),
        ("unknown to 06:00", "", "2026-10-03 06:00"),
        ("yesterday 14:00 to 15:00", "2026-10-02 14:00", "2026-10-02 15:00"),
        ("1 oct 6 am to 11 pm", "2026-10-01 06:00", "2026-10-01 23:00"),
        ("yesterday 14:00 to 2026-10-03 15:00", "2026-10-02 14:00", "2026-10-03 15:00"),
        ("since yesterday 14:00 until now", "2026-10-02 14:00", NOW),
        ("yesterday 14:00 to 14:00", "2026-10-02 14:00", "2026-10-03 14:00"),
        ("yesterday 6pm to noon", "2026-10-02 18:00", "2026-10-03 12:00"),
        ("10 pm to midnight", "2026-10-02 22:00", "2026-10-03 00:00"),
        ("midnight to 6 am", "2026-10-03 00:00", "2026-10-03 06:00"),
        ("since 6 pm", "2026-10-03 18:00", NOW),
        ("since noon yesterday", "2026-10-02 12:00", NOW),
        ("Fri 2 Oct 2026 at 18:00 to 06:00", "2026-10-02 18:00", "2026-10-03 06:00"),
    ],
)
def test_a_stretch_as_it_is_said(p: Pantry, typed: str, start: str, end: str) -> None:
    assert tuple(map(_plain, read_stretch(p, typed))) == (start, end)


@pytest.mark.parametrize(
    "typed",
    [
        "long",
        "-3",
        "1001",
        "17:30",
        "25:00 to 26:00",
        "a to b",
        "at 6 to noon",
        "yesterday midnight to 06:00",
    ],
)
def test_what_is_none_says_what_to_write(p: Pantry, typed: str) -> None:
    with pytest.raises(BadInput, match=r"write|number from 0 to 1000|[Gg]ive"):
        read_stretch(p, typed)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("yesterday 14:00 to 15:00", "power cut of 1 h. Read as Fri 2 Oct 2026 14:00 to 15:00."),
        ("yesterday 22:00 to 06:00",
         "power cut of 8 h. Read as Fri 2 Oct 2026 22:00 to Sat 3 Oct 2026 06:00."),
        ("unknown to 06:00",
         "power cut since nobody knows when. Read as until Sat 3 Oct 2026 06:00."),
    ],
)  # fmt: skip
def test_it_is_said_how_it_was_read(p: Pantry, typed: str, said: str) -> None:
    places.add(p, "fridge", "fridge")
    place = p.find_place("fridge")
    cut = outage.cut_of(p, place, *read_stretch(p, typed))
    assert outage.heading(place, cut, ()) == f"fridge: {said}"
