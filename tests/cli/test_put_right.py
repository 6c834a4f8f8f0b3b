"""`correct ID`: a reading and a power cut by their ids, a batch by its lid code."""

from __future__ import annotations

import pytest

from tests.cli.conftest import Kitchen


@pytest.fixture
def told(kitchen: Kitchen) -> Kitchen:
    kitchen.answer("place", "add", "cool box", "--climate", "fridge")
    kitchen.answer("putup", "1 pack chicken breast, fresh, cool box")
    return kitchen


def _id(told: Kitchen, kind: str) -> str:
    return next(str(one["id"]) for one in told.answer("log") if one["kind"] == kind)


def _verdict(told: Kitchen) -> str:
    rows = told.answer("due", "--place", "cool box")
    return str(rows[0]["verdict"])


def test_a_reading_by_its_id_and_by_the_end_of_it(told: Kitchen) -> None:
    told.answer("reading", "cool box", "48F", "--since", "3h")
    assert _verdict(told) == "discard"
    code, out, _ = told.run("correct", _id(told, "reading")[-8:], "--temp", "38F")
    assert code == 0
    assert "measured 38 °F in cool box now" in out
    assert _verdict(told) == "eat soon"
    code, out, _ = told.run("log")
    assert "in place of " in out


def test_a_power_cut_by_its_id(told: Kitchen) -> None:
    told.answer("outage", "cool box", "--from", "2026-11-25 00:00", "--to", "2026-11-25 00:30")
    code, out, _ = told.run("correct", _id(told, "outage"), "--ajar", "--half")
    assert code == 0
    assert "power cut of 0.5 h" in out


@pytest.mark.parametrize(
    "words",
    [
        ("{reading}", "--note", "syrup"),
        ("{reading}", "--temp", "38F", "--from", "18:00"),
        ("{reading}",),
        ("2A", "--temp", "38F"),
        ("2A", "--full"),
        ("abcdef123456", "--temp", "38F"),
    ],
)
def test_what_does_not_go_together_is_refused(told: Kitchen, words: tuple[str, ...]) -> None:
    told.answer("reading", "cool box", "38F")
    before = told.booked()
    reading = _id(told, "reading")
    code, _, err = told.run("correct", *(word.format(reading=reading) for word in words))
    assert code == 2
    assert err.count("\n") <= 1
    assert told.booked() == before
